// Where the notes stand: beside their lines on a desk, under them on a telephone.
import { type EditorState, StateEffect, StateField, type Text } from "@codemirror/state";
import { Decoration, type DecorationSet, EditorView, WidgetType } from "@codemirror/view";

import { at, drawn } from "./element";

export interface PlacedNote {
  line: number;
  element: HTMLElement;
  /** Changes when the element has to be drawn anew. */
  key: string;
}

class UnderLine extends WidgetType {
  constructor(readonly note: PlacedNote) {
    super();
  }
  override eq(other: UnderLine) {
    return other.note.key === this.note.key && other.note.element === this.note.element;
  }
  toDOM() {
    const holder = document.createElement("div");
    holder.className = "under-line";
    holder.append(this.note.element);
    return holder;
  }
  override ignoreEvent() {
    return true;
  }
}

const setUnder = StateEffect.define<PlacedNote[]>();

function under(notes: PlacedNote[], text: Text): DecorationSet {
  const ranges = notes.map((note) => Decoration
    .widget({ widget: new UnderLine(note), block: true, side: 1 })
    .range(text.line(Math.min(Math.max(note.line, 1), text.lines)).to));
  return Decoration.set(ranges, true);
}

export const notesUnderLines = StateField.define<DecorationSet>({
  create: () => Decoration.none,
  update(value, transaction) {
    let out = value.map(transaction.changes);
    for (const effect of transaction.effects) {
      if (effect.is(setUnder)) out = under(effect.value, transaction.state.doc);
    }
    return out;
  },
  provide: (field) => EditorView.decorations.from(field),
});

export const narrow = window.matchMedia("(max-width: 760px)");

function top(view: EditorView, state: EditorState, line: number): number {
  const number = Math.min(Math.max(line, 1), state.doc.lines);
  return view.lineBlockAt(state.doc.line(number).from).top + view.documentPadding.top;
}

/** Tops of blocks of those heights, each as near to where it wants to be as the others let it. */
export function giveWay(wanted: number[], heights: number[], gap: number): number[] {
  interface Pool { from: number; to: number; at: number; height: number; weight: number }
  const pools: Pool[] = [];
  wanted.forEach((want, index) => {
    let pool: Pool = { from: index, to: index, at: Math.max(want, 0),
                       height: (heights[index] ?? 0) + gap, weight: 1 };
    for (let last = pools.at(-1); last && last.at + last.height > pool.at; last = pools.at(-1)) {
      pools.pop();
      // the pools' common place is the mean of what all of them want
      const at = (last.at * last.weight + (pool.at - last.height) * pool.weight) /
                 (last.weight + pool.weight);
      pool = { from: last.from, to: pool.to, at: Math.max(at, 0),
               height: last.height + pool.height, weight: last.weight + pool.weight };
    }
    pools.push(pool);
  });
  const out: number[] = [];
  for (const pool of pools) {
    let at = pool.at;
    for (let index = pool.from; index <= pool.to; ++index) {
      out[index] = at;
      at += (heights[index] ?? 0) + gap;
    }
  }
  return out;
}

/** Puts the notes into the margin, with a thin line from each to its line. */
function intoMargin(view: EditorView, notes: PlacedNote[]): void {
  const margin = at("margin");
  const threads = at("threads");
  const offset = view.dom.getBoundingClientRect().top - margin.getBoundingClientRect().top;
  const here = new Set(notes.map((note) => note.element));
  for (const old of [...margin.querySelectorAll<HTMLElement>(".note")]) if (!here.has(old)) old.remove();
  let before: Element | null = null;
  for (const note of notes) {
    const place: Element | null = before === null ? margin.firstElementChild : before.nextElementSibling;
    if (place !== note.element) margin.insertBefore(note.element, place);
    before = note.element;
  }
  const wanted = notes.map((note) => offset + top(view, view.state, note.line));
  const heights = notes.map((note) => note.element.offsetHeight);
  const tops = giveWay(wanted, heights, 14);
  const lines: SVGElement[] = [];
  let lowest = 0;
  notes.forEach((note, index) => {
    const place = tops[index] ?? 0;
    note.element.style.top = `${place}px`;
    lowest = Math.max(lowest, place + (heights[index] ?? 0));
    const from = (wanted[index] ?? 0) + view.defaultLineHeight / 2;
    const to = place + 11;
    lines.push(drawn("path", { d: `M0 ${from} C 14 ${from}, 18 ${to}, 32 ${to}`,
                               class: `thread ${note.element.className.replace(/\bnote\b/, "")}` }));
  });
  margin.style.minHeight = `${lowest + 8}px`;
  threads.replaceChildren(...lines);
}

/** Shows the notes where the width of the screen wants them. */
export function place(view: EditorView, notes: PlacedNote[]): void {
  if (narrow.matches) {
    at("threads").replaceChildren();
    at("margin").style.minHeight = "";
    for (const note of notes) note.element.style.top = "";
    view.dispatch({ effects: setUnder.of(notes) });
    return;
  }
  view.dispatch({ effects: setUnder.of([]) });
  intoMargin(view, notes);
}
