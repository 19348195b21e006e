// Practise: what is wrong with this formula, and which line would you change? The checker deals and
// judges; the page only counts.
import type { Exercise } from "./answers";
import type { Checker } from "./checker";
import { button, element } from "./element";

export class Practice {
  readonly element = element("div", { class: "practice" });
  #deal = Math.floor(Math.random() * 1e6) + 1;
  #exercises: Exercise[] = [];
  #number = 0;
  #right = 0;
  #tries = 0;

  constructor(readonly checker: Checker) {}

  async begin(): Promise<void> {
    this.#exercises = await this.checker.deal(this.#deal++);
    this.#number = 0;
    this.#right = 0;
    this.#show();
  }

  #score(): HTMLElement {
    return element("p", { class: "score", role: "status" },
                   `${this.#right} of ${this.#number} right at the first try`);
  }

  #show(): void {
    this.#tries = 0;
    const exercise = this.#exercises[this.#number];
    if (!exercise) {
      this.element.replaceChildren(this.#score(), button("another five", () => void this.begin()));
      return;
    }
    const said = element("div", { class: "said", "aria-live": "polite" });
    const next = button("next", () => { ++this.#number; this.#show(); });
    next.hidden = true;
    const judge = async (typed: string) => {
      const judged = await this.checker.judge(this.#number, typed);
      const settled = judged.judgement === "right" || judged.judgement === "shown";
      if (judged.judgement === "right" && this.#tries === 0) ++this.#right;
      if (judged.judgement === "wrong" || judged.judgement === "hint") ++this.#tries;
      said.replaceChildren(element("p", { class: judged.judgement }, judged.words),
        ...(judged.solution === undefined ? [] : [element("pre", { tabindex: "0" }, judged.solution)]));
      if (!settled) return;
      next.hidden = false;
      for (const one of this.element.querySelectorAll<HTMLButtonElement>(".choices button")) {
        one.disabled = true;
      }
      next.focus();
    };
    const lines = exercise.formula.replace(/\n$/, "").split("\n").map((line, at) =>
      element("li", {}, line.trim() === "" ? "" :
        button(line, () => void judge(String(at + 1)), { "aria-label": `line ${at + 1}: ${line.trim()}` })));
    this.element.replaceChildren(
      element("p", { class: "soft" }, `Exercise ${this.#number + 1} of ${this.#exercises.length}: ${exercise.subject}`),
      element("p", {}, "Which line would you change?"),
      element("ol", { class: "choices paper" }, ...lines),
      element("p", { class: "actions choices" },
        button("nothing is wrong", () => void judge("fine")),
        button("hint", () => void judge("hint")), button("answer", () => void judge("answer"))),
      said, element("p", { class: "actions" }, next), this.#score());
  }
}
