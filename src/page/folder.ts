// What was opened together: several formulas, each one tap away, and rulesets of the reader's own.
import type { Checker } from "./checker";
import { at, button, element } from "./element";

export interface FolderHands {
  open(path: string): void;
  /** The rulesets are others now. */
  changed(): void;
}

/** Shows formulas and own rulesets above the card; nothing where there is one card alone. */
export function showFolder(checker: Checker, formulas: string[], here: string, hands: FolderHands): void {
  const { rules } = checker.surroundings;
  const cards = formulas.length < 2 ? null :
    element("p", { class: "actions" }, element("span", { class: "soft" }, "in this folder"),
      ...formulas.map((one) => button(one, () => hands.open(one), one === here ? { "aria-current": "true" } : {})));
  const own = rules.length === 0 ? null :
    element("p", { class: "actions" },
      element("span", { class: "soft" }, "own rules"),
      ...rules.map((one) => element("span", {}, one.path, " ",
        button("leave out", () => {
          checker.surroundings.rules = rules.filter((other) => other !== one);
          hands.changed();
        }, { "aria-label": `leave out ${one.path}` }))));
  at("folder").replaceChildren(...[cards, own].filter((one) => one !== null));
  at("folder").hidden = at("folder").childElementCount === 0;
}
