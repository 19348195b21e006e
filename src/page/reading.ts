// The card as the checker reads it: asked again at every keystroke; until the answer is there, the old
// one stays, a little paler. What is half typed cannot be read: that is told when the hand rests.
import type { EditorView } from "@codemirror/view";

import { weighedLine } from "./amounts";
import type { Margin } from "./answers";
import { type PlacedNote, place } from "./beside_lines";
import type { Checker } from "./checker";
import { at, element } from "./element";
import { type Gathered, type NoteActions, noteElement, problemElement } from "./note";
import { gathered, graver } from "./notes";
import { stripOf } from "./strip";
import { setUnderlined } from "./underlines";

/** How long a hand rests before it is told that a card cannot be read, in ms. */
const rest = 800;

interface Drawn {
  made: string;
  placed: PlacedNote;
}

export class Reading {
  margin: Margin | undefined;
  #asking = false;
  #again = false;
  #changed = 0;
  #later = 0;
  #readable = true;
  #open = new Set<string>();
  #drawn = new Map<string, Drawn>();
  #placed: PlacedNote[] = [];
  #strip = "";

  constructor(readonly checker: Checker, readonly view: EditorView, readonly file: () => string,
              readonly actions: NoteActions) {}

  /** Asks, and once more if the card has changed meanwhile. */
  async ask(): Promise<void> {
    document.body.classList.add("stale");
    this.#changed = performance.now();
    this.#again = true;
    window.clearTimeout(this.#later);
    if (this.#asking) return;
    this.#asking = true;
    while (this.#again) {
      this.#again = false;
      this.margin = await this.checker.margin({ file: this.file(), text: this.view.state.doc.toString() });
    }
    this.#asking = false;
    const cannot = this.margin?.problems.length !== 0;
    if (cannot && this.#readable && this.view.hasFocus) {
      this.#later = window.setTimeout(() => this.#show(), this.#changed + rest - performance.now());
    } else {
      this.#show();
    }
  }

  /** Another card: nothing of the old one is to stay where it was. */
  fresh(): void {
    this.#readable = false;
    this.#strip = "";
    at("strip").replaceChildren();
    for (const id of ["sentence", "strip"]) at(id).style.minHeight = "";
  }

  replace(): void {
    place(this.view, this.#placed);
  }

  /** Puts the focus on the next note, or on the one before. */
  step(by: number): void {
    const notes = this.#placed.map((one) => one.element);
    if (notes.length === 0) return;
    const here = notes.findIndex((one) => one.contains(document.activeElement));
    const next = notes[(here + by + notes.length + (here < 0 && by < 0 ? 1 : 0)) % notes.length];
    next?.focus();
    next?.scrollIntoView({ block: "nearest" });
  }

  why(): void {
    const note = this.#placed.find((one) => one.element.contains(document.activeElement));
    note?.element.querySelector<HTMLButtonElement>("button.why")?.click();
  }

  #show(): void {
    const margin = this.margin;
    if (!margin) return;
    const cannot = margin.problems.length > 0;
    const begun = !cannot || this.#begun();
    this.#readable = !cannot;
    document.body.classList.toggle("unread", cannot);
    this.#held(() => {
      this.#sentence(margin, begun);
      if (!cannot) this.#limits(margin);
      at("strip").hidden = at("strip").childElementCount === 0;
      const notes = cannot ? [] : gathered(margin);
      this.#placed = cannot ? (begun ? this.#problems(margin) : []) : notes.map((one) => this.#note(one));
      this.#forget();
      place(this.view, this.#placed);
      const meant = notes.filter((one) => graver(one.weight, "note") < 0)
        .flatMap((one) => one.notes.map((note) => ({ ...note, weight: one.weight })));
      const refused = (begun ? margin.problems : []).map((one) => ({ ...one, weight: "must" as const }));
      this.view.dispatch({ effects: setUnderlined.of([...refused, ...meant]) });
      const kept = margin.counts?.["kept"];
      at("kept").textContent = kept === undefined || cannot ? "" : `✓ kept: ${kept}`;
    });
    document.body.classList.remove("stale");
    document.body.dataset["took"] = (performance.now() - this.#changed).toFixed(1);
  }

  /** The line that is being typed stays where it is, whatever comes or goes above it. */
  #held(act: () => void): void {
    const { view } = this;
    if (!view.hasFocus) {
      act();
      return;
    }
    for (const id of ["sentence", "strip"]) at(id).style.minHeight = `${at(id).offsetHeight}px`;
    const where = () => view.coordsAtPos(view.state.selection.main.head)?.top;
    const before = where();
    act();
    const after = where();
    if (before !== undefined && after !== undefined && before !== after) window.scrollBy(0, after - before);
  }

  #limits(margin: Margin): void {
    const limits = JSON.stringify(margin.limits);
    if (limits !== this.#strip) at("strip").replaceChildren(...stripOf(margin.limits ?? []));
    this.#strip = limits;
  }

  /** Whether anything is weighed on the card yet. */
  #begun(): boolean {
    return this.view.state.doc.toString().split("\n").some((line) => weighedLine(line) !== undefined || /^\s*\d/.test(line));
  }

  #sentence(margin: Margin, begun: boolean): void {
    const { short = "", sentence = "", counts = {} } = margin;
    const tone = margin.problems.length > 0 || counts["must"] ? "must" : counts["should"] ? "should" : "kept";
    const words = !begun
      ? [element("span", { class: "soft" }, "Write an amount and a material on each line, such as 450 g baking soda.")]
      : margin.problems.length > 0
      ? [element("span", { class: "must" }, "The card cannot be read yet.")]
      : [element("span", { class: tone }, short), sentence.slice(short.length)];
    const told = element("p", {}, ...words);
    // a screen reader says it again only if it is another
    if (at("sentence").innerHTML !== told.outerHTML) at("sentence").replaceChildren(told);
  }

  /** The element that is there already where nothing of it has changed. */
  #kept(key: string, made: string, line: number, draw: () => HTMLElement): PlacedNote {
    const before = this.#drawn.get(key);
    if (before?.made === made) {
      before.placed.line = line;
      return before.placed;
    }
    const placed = { line, element: draw(), key };
    this.#drawn.set(key, { made, placed });
    return placed;
  }

  #forget(): void {
    const here = new Set(this.#placed);
    for (const [key, { placed }] of this.#drawn) if (!here.has(placed)) this.#drawn.delete(key);
  }

  #note(one: Gathered): PlacedNote {
    return this.#kept(one.key, JSON.stringify(one), one.line, () =>
      noteElement(one, this.#open.has(one.key), this.actions, (now) => {
        if (now) this.#open.add(one.key);
        else this.#open.delete(one.key);
      }));
  }

  #problems(margin: Margin): PlacedNote[] {
    return margin.problems.map((one) => {
      const elsewhere = one.file !== "" && one.file !== this.file();
      const words = elsewhere ? `${one.file}:${one.line}: ${one.words}` : one.words;
      const line = elsewhere ? 1 : Math.max(one.line, 1);
      return this.#kept(`${one.line} ${one.words}`, JSON.stringify(one), line,
                        () => problemElement({ ...one, words }, this.actions));
    });
  }
}
