// Lines that a note means are underlined in its ink.
import { StateEffect, StateField } from "@codemirror/state";
import { Decoration, type DecorationSet, EditorView } from "@codemirror/view";

import type { Place, Weight } from "./answers";

export interface Underlined extends Place {
  weight: Weight;
}

export const setUnderlined = StateEffect.define<Underlined[]>();

export const underlines = StateField.define<DecorationSet>({
  create: () => Decoration.none,
  update(value, transaction) {
    let out = value.map(transaction.changes);
    const text = transaction.state.doc;
    for (const effect of transaction.effects) {
      if (!effect.is(setUnderlined)) continue;
      const ranges = effect.value
        .filter((one) => one.line >= 1 && one.line <= text.lines)
        .map((one) => {
          const line = text.line(one.line);
          const begin = line.from + (/^\s*/.exec(line.text)?.[0].length ?? 0);
          const words = line.text.replace(/\s+(#.*)?$/, "");
          return { begin, end: Math.max(line.from + words.length, begin), weight: one.weight };
        })
        .filter((one) => one.end > one.begin)
        .map((one) => Decoration.mark({ class: `means ${one.weight}` }).range(one.begin, one.end));
      out = Decoration.set(ranges, true);
    }
    return out;
  },
  provide: (field) => EditorView.decorations.from(field),
});
