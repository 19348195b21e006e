// Practise: what is wrong with this card, why, and what mends it? The checker deals and judges; the
// page only counts.
import type { Exercise, Judged, Solution, Step } from "./answers";
import type { Checker } from "./checker";
import { button, element } from "./element";
import { problemWords } from "./sheets";

const inARow = 5;
/** Wrong answers to one step before the solution is shown, as in the terminal. */
const mostTries = 3;

export class Practice {
  readonly element = element("div", { class: "practice" });
  #seed = Math.floor(Math.random() * 1e6) + 1;
  #number = 0;
  #right = 0;
  #helped = false;
  #hints = 0;

  constructor(readonly checker: Checker, readonly lookUp: (rule: string) => void) {}

  async begin(): Promise<void> {
    ++this.#seed;
    this.#number = 0;
    this.#right = 0;
    await this.#next();
  }

  #score(): HTMLElement {
    return element("p", { class: "score", role: "status" },
                   `Found without help: ${this.#right} of ${this.#number}`);
  }

  async #next(): Promise<void> {
    if (this.#number === inARow) {
      this.element.replaceChildren(this.#score(),
        element("p", { class: "actions" }, button(`another ${inARow}`, () => void this.begin())));
      return;
    }
    this.element.setAttribute("aria-busy", "true");
    const dealt = await this.checker.deal(this.#seed, this.#number + 1);
    this.element.removeAttribute("aria-busy");
    this.#helped = false;
    this.#hints = 0;
    if (Array.isArray(dealt)) this.element.replaceChildren(problemWords(dealt));
    else this.#show(dealt, 0);
  }

  #show(exercise: Exercise, at: number): void {
    const step = exercise.steps[at];
    const said = element("div", { class: "said", "aria-live": "polite" });
    if (!step) {
      void this.#solve(exercise);
      return;
    }
    let tries = 0;
    const judge = async (typed: string) => {
      const judged: Judged = await this.checker.judge(step.step, typed);
      said.replaceChildren(element("p", { class: judged.judgement === "right" ? "kept" : "" }, judged.words));
      if (judged.judgement === "right") {
        this.#show(exercise, at + 1);
        this.element.querySelector(".said")?.replaceChildren(element("p", { class: "kept" }, judged.words));
      } else if (judged.judgement === "wrong") {
        this.#helped = true;
        if (++tries === mostTries || (step.step === "line" && exercise.sound)) void this.#solve(exercise);
      }
    };
    const hint = async () => {
      const hints = await this.checker.hints();
      this.#helped = true;
      const words = hints[this.#hints++] ?? "There are no more hints; answer shows the solution.";
      said.replaceChildren(element("p", {}, words));
    };
    this.element.replaceChildren(
      element("p", { class: "soft" }, `Exercise ${this.#number + 1} of ${inARow}`),
      exercise.preface === "" ? "" : element("p", { class: "preface" }, exercise.preface),
      ...this.#asked(exercise, step, judge), said,
      element("p", { class: "actions help" },
        step.step === "line" ? button("nothing is wrong", () => void judge("fine")) : "",
        button("hint", () => void hint()),
        button("answer", () => { this.#helped = true; void this.#solve(exercise); })),
      this.#score());
    if (at > 0) this.element.querySelector<HTMLElement>(".question")?.focus();
  }

  /** The card with its lines to choose from, or the reasons, or the mends, or a field. */
  #asked(exercise: Exercise, step: Step, judge: (typed: string) => Promise<void>): HTMLElement[] {
    const asks = element("p", { class: "question", tabindex: "-1" },
                         step.step === "line" ? "Which line would you change?" : step.asks);
    if (step.step === "figure") {
      const field = element("input", { inputmode: "decimal", autocomplete: "off", id: "figure", "aria-label": step.asks });
      return [element("form", { class: "ask", onsubmit: (event) => { event.preventDefault(); void judge(field.value); } },
                      asks, field, element("button", { type: "submit" }, "so much"))];
    }
    const card = cardLines(exercise.card, step.step === "line" ? judge : undefined);
    if (step.step === "line") return [asks, card];
    return [card, asks, element("ol", { class: "choices words" }, ...(step.choices ?? []).map((words, index) =>
      element("li", {}, button(words, () => void judge(String(index + 1))))))];
  }

  async #solve(exercise: Exercise): Promise<void> {
    const solution: Solution = await this.checker.solution();
    if (!this.#helped) ++this.#right;
    ++this.#number;
    const next = button(this.#number === inARow ? "to the score" : "next", () => void this.#next());
    this.element.replaceChildren(
      element("p", { class: "soft" }, `Exercise ${this.#number} of ${inARow}: ${exercise.subject}`),
      exercise.preface === "" ? "" : element("p", { class: "preface" }, exercise.preface),
      exercise.card === "" ? "" : cardLines(exercise.card),
      element("dl", { class: "solution" }, ...solution.items.flatMap((one) =>
        [element("dt", {}, one.label), element("dd", {}, one.words)])),
      element("p", { class: "actions" }, next,
        solution.rule === "" ? "" : button("look the rule up", () => this.lookUp(solution.rule))),
      this.#score());
    next.focus();
  }
}

function cardLines(card: string, judge?: (typed: string) => Promise<void>): HTMLElement {
  return element("ol", { class: "choices leaf" }, ...card.replace(/\n$/, "").split("\n").map((line, at) => {
    if (line.trim() === "") return element("li", { class: "blank" });
    if (!judge) return element("li", {}, line);
    return element("li", {}, button(line, () => void judge(String(at + 1)),
                                    { "aria-label": `line ${at + 1}: ${line.trim()}` }));
  }));
}
