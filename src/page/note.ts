// A note of the margin: what, what to do, one or two buttons; why opens in place.
import type { Note, Place, Problem, Weight } from "./answers";
import { button, element } from "./element";

/** The words and the sign of each weight; a colour never stands alone. */
export const weights: Record<Weight, { sign: string; words: string }> = {
  must: { sign: "✕", words: "must change" },
  should: { sign: "△", words: "should change" },
  depends: { sign: "≈", words: "depends" },
  open: { sign: "?", words: "not known" },
  note: { sign: "○", words: "worth knowing" },
  paper: { sign: "□", words: "not known" },
  kept: { sign: "✓", words: "kept" },
};

/** Of a quiet note, before it is opened. */
const mostShown = 3;

export interface NoteActions {
  /** Puts other words at the note's place. */
  spell(place: Place, words: string): void;
  /** Begins the section that tells of the name at the note's place. */
  tell(place: Place, section: "fragrance" | "material"): void;
  mend(): void;
  /** The note became taller or shorter. */
  moved(): void;
}

function head(weight: Weight, rule: string, ...buttons: HTMLElement[]): HTMLElement {
  const { sign, words } = weights[weight];
  return element("div", { class: "top" },
    element("span", { class: "weight", title: rule },
            element("span", { class: "sign", "aria-hidden": "true" }, sign), ` ${words}`), ...buttons);
}

function because(note: Note): HTMLElement {
  return element("div", { class: "because" },
    note.title ? element("p", { class: "title" }, note.title) : null,
    note.why ? element("p", {}, note.why) : null,
    note.whole ? element("p", {}, note.whole) : null,
    note.sum ? element("p", { class: "sum" }, note.sum) : null,
    note.sources.length === 0 ? null :
      element("ul", { class: "sources" }, ...note.sources.map((one) => element("li", {}, one))));
}

/** Notes of one line that weigh alike are one note; `also` are the others. */
export interface Gathered {
  key: string;
  weight: Weight;
  line: number;
  notes: Note[];
}

export function noteElement(gathered: Gathered, open: boolean, actions: NoteActions,
                            toggled: (open: boolean) => void): HTMLElement {
  const made = element("aside", {
    class: `note ${gathered.weight}`, "aria-label": `line ${gathered.line}, ${weights[gathered.weight].words}`,
    tabindex: "-1",
  });
  made.classList.toggle("opened", open);
  const [first] = gathered.notes;
  if (!first) return made;
  const grave = first.weight === "must" || first.weight === "should";
  const quiet = first.weight === "note" || first.weight === "paper" || first.weight === "kept";
  made.classList.toggle("quiet", quiet);
  const more = gathered.notes.length - mostShown;
  const rest = quiet ? more : 0;
  const reasons = element("div", {}, ...gathered.notes.map(because));
  reasons.hidden = !open;
  const why = button("why", () => {
    reasons.hidden = !reasons.hidden;
    why.setAttribute("aria-expanded", String(!reasons.hidden));
    made.classList.toggle("opened", !reasons.hidden);
    toggled(!reasons.hidden);
    actions.moved();
  }, { class: "why", "aria-expanded": String(open) });
  const buttons: HTMLElement[] = [why];
  if (rest > 0) why.textContent = `why, and ${rest} more`;
  if (grave) buttons.unshift(button("mend", () => actions.mend(), { class: "mend" }));
  if (first.spelling) {
    const spelling = first.spelling;
    buttons.unshift(button(`write ${spelling}`, () => actions.spell(first, spelling)));
  }
  made.append(head(gathered.weight, gathered.notes.map((note) => note.rule).join(", "), ...buttons));
  for (const note of gathered.notes) {
    made.append(element("p", { class: "what" }, note.words));
    if (note.allowed !== undefined) made.append(element("p", { class: "remedy" }, `because "${note.allowed}"`));
    if (note.remedy && grave) made.append(element("p", { class: "remedy" }, note.remedy));
  }
  made.append(reasons);
  return made;
}

/** Of a name that nobody knows. */
const unknownName = "is not a material, premix or fragrance that is known";

/** What may stand in its place: "perhaps 'Lavender oil' or 'lavender'". */
function spellings(problem: Problem): string[] {
  if (problem.spelling) return [problem.spelling];
  const near = /perhaps ([^;]*)/.exec(problem.words)?.[1] ?? "";
  return [...near.matchAll(/'([^']+)'/g)].map((found) => found[1] ?? "");
}

export function problemElement(problem: Problem, actions: NoteActions): HTMLElement {
  const near = spellings(problem);
  // a name that is near to none is one of the maker's own
  const unknown = near.length === 0 && problem.words.includes(unknownName);
  return element("aside", { class: "note must", "aria-label": `line ${problem.line}, cannot be read`,
                            tabindex: "-1" },
    element("div", { class: "top" },
      element("span", { class: "weight" },
              element("span", { class: "sign", "aria-hidden": "true" }, "✕"), " cannot be read"),
      ...near.map((one) => button(`write ${one}`, () => actions.spell(problem, one))),
      unknown ? button("it is a scent", () => actions.tell(problem, "fragrance")) : null,
      unknown ? button("a material", () => actions.tell(problem, "material")) : null),
    element("p", { class: "what" }, problem.words));
}
