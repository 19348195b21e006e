// How the lines of a card look: what heads a section, what a statement says, what is weighed. Only
// for the eye; what a line means is the checker's to say.
import { RangeSetBuilder, type Text } from "@codemirror/state";
import { Decoration, type DecorationSet, type EditorView, ViewPlugin } from "@codemirror/view";

const sections =
  /^\s*(formula|phase|premix|portion|fragrance|material|workshop|task|label|tweak|include)\b/;
const amount = /^\s*(q\.s\.|(?:below|above)?\s*[\d.]+(?:\s*\/\s*\d+)?(?:\s*(?:-|to)\s*[\d.]+)?\s*(?:%|ppm|mg|g|kg|oz|lb|ml|l|parts?|\w+)?(?:\s+per\s+(?:[\d.]+\s*)?\w+)?)/;

export type LineKind = "section" | "weighed" | "statement" | "comment" | "blank";

export function kindOf(line: string): LineKind {
  if (/^\s*$/.test(line)) return "blank";
  if (/^\s*#/.test(line)) return "comment";
  if (sections.test(line)) return "section";
  return amount.test(line) ? "weighed" : "statement";
}

/** The name of the section that a line belongs to; empty before the first. */
export function sectionOf(text: Text, line: number): string {
  for (let at = line; at >= 1; --at) {
    const found = sections.exec(text.line(at).text);
    if (found?.[1]) return found[1];
  }
  return "";
}

/** In which phase, premix or portion a line stands: the word and the name, if it has one. */
export function containerOf(text: Text, line: number): { word: string; name: string } {
  for (let at = line; at >= 1; --at) {
    const found = /^\s*(\w+)\b(?:\s+"([^"]*)")?/.exec(text.line(at).text);
    if (found && sections.test(text.line(at).text)) return { word: found[1] ?? "", name: found[2] ?? "" };
  }
  return { word: "", name: "" };
}

function looks(view: EditorView): DecorationSet {
  const builder = new RangeSetBuilder<Decoration>();
  for (const { from, to } of view.visibleRanges) {
    for (let at = from; at <= to;) {
      const line = view.state.doc.lineAt(at);
      builder.add(line.from, line.from, Decoration.line({ class: `line-${kindOf(line.text)}` }));
      const comment = /(^|\s)#[^"]*$/.exec(line.text);
      if (comment && kindOf(line.text) !== "comment") {
        builder.add(line.from + comment.index, line.to, Decoration.mark({ class: "comment" }));
      }
      at = line.to + 1;
    }
  }
  return builder.finish();
}

export const lineLooks = ViewPlugin.fromClass(class {
  decorations: DecorationSet;
  constructor(view: EditorView) {
    this.decorations = looks(view);
  }
  update(update: { docChanged: boolean; viewportChanged: boolean; view: EditorView }) {
    if (update.docChanged || update.viewportChanged) this.decorations = looks(update.view);
  }
}, { decorations: (plugin) => plugin.decorations });
