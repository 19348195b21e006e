// Pencilled changes: what the page itself writes shows as pencil on the card first, is one step that
// undo takes back, and becomes ink when the reader keeps it or types on.
import { isolateHistory, undo } from "@codemirror/commands";
import { type ChangeSpec, StateEffect, StateField } from "@codemirror/state";
import { Decoration, type DecorationSet, EditorView } from "@codemirror/view";

import { at, button, element } from "./element";

const setPencil = StateEffect.define<boolean>();

export const pencilled = StateField.define<DecorationSet>({
  create: () => Decoration.none,
  update(value, transaction) {
    let out = value.map(transaction.changes);
    for (const effect of transaction.effects) {
      if (!effect.is(setPencil)) continue;
      if (!effect.value) {
        out = Decoration.none;
        continue;
      }
      const ranges: { from: number; to: number }[] = [];
      transaction.changes.iterChangedRanges((_from, _to, from, to) => {
        if (to > from) ranges.push({ from, to });
      }, true);
      out = Decoration.set(
        ranges.map(({ from, to }) => Decoration.mark({ class: "pencil" }).range(from, to)), true);
    }
    return out;
  },
  provide: (field) => EditorView.decorations.from(field),
});

function hideBar(): void {
  at("pencil").replaceChildren();
  at("pencil").hidden = true;
}

/** Writes changes in pencil, with words for what they are. */
export function pencil(view: EditorView, changes: ChangeSpec, words: string): void {
  const written = view.state.update({ changes, effects: setPencil.of(true), userEvent: "input.pencil",
                                      annotations: isolateHistory.of("full") });
  let first: number | undefined;
  written.changes.iterChangedRanges((_from, _to, from) => { first ??= from; });
  view.dispatch(written);
  // what was written is to be seen
  if (first !== undefined) view.dispatch({ effects: EditorView.scrollIntoView(first, { yMargin: 120 }) });
  const ink = () => {
    view.dispatch({ effects: setPencil.of(false) });
    hideBar();
    view.focus();
  };
  const rub = () => {
    undo(view);
    ink();
  };
  at("pencil").replaceChildren(element("span", {}, words), button("keep", ink),
                               button("take back", rub));
  at("pencil").hidden = false;
}

/** Typing on means that the pencil is kept. */
export const typedOn = EditorView.updateListener.of((update) => {
  if (at("pencil").hidden || !update.docChanged) return;
  const own = update.transactions.some((one) => one.isUserEvent("input.pencil"));
  if (own) return;
  hideBar();
  queueMicrotask(() => update.view.dispatch({ effects: setPencil.of(false) }));
});
