// What a note's buttons write on the card, in pencil.
import type { EditorView } from "@codemirror/view";

import type { Place } from "./answers";
import type { NoteActions } from "./note";
import { pencil } from "./pencil";

/** What is begun for a name that nobody knows; what follows comes from its papers. */
const begun = {
  fragrance: "  # from its certificate, such as: limit 2.4 %, category 9, 6 - 8 % linalool\n",
  material: "  # from its bag or safety data sheet, such as: inci \"Zea Mays Starch\"\n",
};

function range(view: EditorView, place: Place): { from: number; to: number } {
  const text = view.state.doc;
  return { from: text.line(place.line).from + place.column - 1,
           to: text.line(place.endLine).from + place.endColumn - 1 };
}

export function written(view: EditorView): Pick<NoteActions, "spell" | "tell"> {
  return {
    spell(place, words) {
      pencil(view, { ...range(view, place), insert: words }, words);
      view.focus();
    },
    tell(place, section) {
      const { from, to } = range(view, place);
      const name = view.state.sliceDoc(from, to).replaceAll('"', "").trim();
      const end = view.state.doc.length;
      const gap = view.state.sliceDoc(end - 1) === "\n" ? "\n" : "\n\n";
      pencil(view, { from: end, insert: `${gap}${section} "${name}"\n${begun[section]}  ` },
             `${section} "${name}"`);
      view.dispatch({ selection: { anchor: view.state.doc.length }, scrollIntoView: true });
      view.focus();
    },
  };
}
