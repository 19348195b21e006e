// The card as the checker reads it: asked again at every keystroke; until the answer is there, the old
// one stays, a little paler.
import type { EditorView } from "@codemirror/view";

import type { Margin } from "./answers";
import { type PlacedNote, place } from "./beside_lines";
import type { Checker } from "./checker";
import { at, element } from "./element";
import { type Gathered, type NoteActions, noteElement, problemElement } from "./note";
import { gathered, graver } from "./notes";
import { stripOf } from "./strip";
import { setUnderlined } from "./underlines";

export class Reading {
  margin: Margin | undefined;
  #asking = false;
  #again = false;
  #open = new Set<string>();
  #placed: PlacedNote[] = [];

  constructor(readonly checker: Checker, readonly view: EditorView, readonly file: () => string,
              readonly actions: NoteActions) {}

  /** Asks, and once more if the card has changed meanwhile. */
  async ask(): Promise<void> {
    document.body.classList.add("stale");
    this.#again = true;
    if (this.#asking) return;
    this.#asking = true;
    while (this.#again) {
      this.#again = false;
      this.margin = await this.checker.margin({ file: this.file(), text: this.view.state.doc.toString() });
    }
    this.#asking = false;
    document.body.classList.remove("stale");
    this.#show();
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
    this.#sentence(margin);
    const cannot = margin.problems.length > 0;
    if (!cannot) at("strip").replaceChildren(...stripOf(margin.limits ?? []));
    at("strip").hidden = at("strip").childElementCount === 0;
    const notes = cannot ? [] : gathered(margin);
    this.#placed = cannot ? this.#problems(margin) : notes.map((one) => this.#note(one));
    place(this.view, this.#placed);
    const meant = notes.filter((one) => graver(one.weight, "note") < 0)
      .flatMap((one) => one.notes.map((note) => ({ ...note, weight: one.weight })));
    const refused = margin.problems.map((one) => ({ ...one, weight: "must" as const }));
    this.view.dispatch({ effects: setUnderlined.of([...refused, ...meant]) });
    const kept = margin.counts?.["kept"];
    at("kept").textContent = kept === undefined || cannot ? "" : `✓ kept: ${kept}`;
  }

  #sentence(margin: Margin): void {
    const { short = "", sentence = "", counts = {} } = margin;
    const tone = margin.problems.length > 0 || counts["must"] ? "must" : counts["should"] ? "should" : "kept";
    const words = margin.problems.length > 0
      ? [element("span", { class: "must" }, "The card cannot be read yet.")]
      : [element("span", { class: tone }, short), sentence.slice(short.length)];
    at("sentence").replaceChildren(element("p", {}, ...words));
  }

  #note(one: Gathered): PlacedNote {
    const open = this.#open.has(one.key);
    const made = noteElement(one, open, this.actions, (now) => {
      if (now) this.#open.add(one.key);
      else this.#open.delete(one.key);
    });
    return { line: one.line, element: made, key: one.key };
  }

  #problems(margin: Margin): PlacedNote[] {
    return margin.problems.map((one) => {
      const elsewhere = one.file !== "" && one.file !== this.file();
      const made = problemElement(elsewhere ? { ...one, words: `${one.file}:${one.line}: ${one.words}` } : one,
                                  this.actions);
      return { line: elsewhere ? 1 : Math.max(one.line, 1), element: made,
               key: `${one.line} ${one.words}` };
    });
  }
}

