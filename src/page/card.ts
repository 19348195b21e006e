// The card: an editor that looks like paper.
import { autocompletion, completionKeymap } from "@codemirror/autocomplete";
import { defaultKeymap, history, historyKeymap } from "@codemirror/commands";
import { EditorState } from "@codemirror/state";
import { EditorView, drawSelection, keymap, lineNumbers } from "@codemirror/view";

import type { Names } from "./answers";
import { bars } from "./bars";
import { notesUnderLines } from "./beside_lines";
import { completionOf } from "./complete";
import { at } from "./element";
import { lineLooks, sectionOf } from "./language";
import { listAsLines } from "./paste";
import { pencil, pencilled, typedOn } from "./pencil";
import { underlines } from "./underlines";

/** A pasted list comes in as lines of a card, in pencil. */
const pastedList = EditorView.domEventHandlers({
  paste(event, view) {
    const lines = listAsLines(event.clipboardData?.getData("text/plain") ?? "");
    if (!lines) return false;
    event.preventDefault();
    const { from, to } = view.state.selection.main;
    const line = view.state.doc.lineAt(from);
    // where nothing is weighed, a phase begins
    const weighed = ["phase", "premix", "portion"].includes(sectionOf(view.state.doc, line.number));
    const words = [...(weighed ? [] : ['phase "all"']), ...lines].join("\n");
    const alone = line.text.slice(0, from - line.from).trim() === "";
    const change = { from: alone ? line.from : from, to, insert: alone ? words : `\n${words}` };
    pencil(view, change, `${lines.length} lines out of a list`);
    view.dispatch({ selection: { anchor: change.from + change.insert.length } });
    return true;
  },
});

export function makeCard(parent: HTMLElement, text: string, names: () => Names | undefined,
                         changed: () => void): EditorView {
  return new EditorView({
    parent,
    state: EditorState.create({
      doc: text,
      extensions: [
        history(),
        drawSelection(),
        lineNumbers(),
        EditorView.lineWrapping,
        EditorView.scrollMargins.of(() => ({ top: 8, bottom: at("pencil").offsetHeight + 8 })),
        lineLooks, underlines, pencilled, bars, notesUnderLines, typedOn, pastedList,
        autocompletion({ override: [completionOf(names)], icons: false, maxRenderedOptions: 12 }),
        keymap.of([...completionKeymap, ...historyKeymap, ...defaultKeymap]),
        EditorView.contentAttributes.of({
          "aria-label": "The card", spellcheck: "false", autocorrect: "off", autocapitalize: "off",
        }),
        EditorView.updateListener.of((update) => {
          if (update.docChanged) changed();
        }),
      ],
    }),
  });
}

/** Another card in the place of this one: one step that undo takes back. */
export function replaceCard(view: EditorView, text: string): void {
  view.dispatch({ changes: { from: 0, to: view.state.doc.length, insert: text },
                  selection: { anchor: 0 }, scrollIntoView: true });
}
