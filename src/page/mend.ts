// Mend: the smallest changes that mend the card, each taken with one tap, in pencil.
import type { ChangeSpec, Line, Text } from "@codemirror/state";
import type { EditorView } from "@codemirror/view";

import { amountAt, folded, middle, plain, weighedLine, withAmount } from "./amounts";
import type { Amount, Mend, Suggestion } from "./answers";
import type { Checker } from "./checker";
import { button, element } from "./element";
import { containerOf } from "./language";
import { pencil } from "./pencil";

/** What stands on the line afterwards; none if that cannot be said so. */
function newAmount(written: string, amount: Amount): string | undefined {
  const mass = amount.isMass && /^[\d.]+\s*g$/.test(written) ? middle(amount.isMass) : undefined;
  if (mass !== undefined) return `${plain(mass)} g`;
  // shares of a premix are not shares of the product
  if (amount.in && written.includes("%")) return undefined;
  return amountAt(written, middle(amount.was), middle(amount.is));
}

/** The lines that weigh a material in a premix or portion, or in the phases. */
function linesOf(text: Text, amount: Amount): Line[] {
  const out: Line[] = [];
  for (let number = 1; number <= text.lines && !amount.added; ++number) {
    const line = text.line(number);
    const weighed = weighedLine(line.text);
    if (!weighed || folded(weighed.name) !== folded(amount.material)) continue;
    const { word, name } = containerOf(text, number);
    const here = amount.in ? folded(name) === folded(amount.in) : word === "phase";
    if (here) out.push(line);
  }
  return out;
}

/** The changes of the card's text that an answer comes to; none if it needs a tweak of its own. */
function changesOf(view: EditorView, mend: Mend): ChangeSpec[] | undefined {
  const text = view.state.doc;
  const out: ChangeSpec[] = [];
  for (const amount of mend.amounts) {
    const lines = linesOf(text, amount);
    const [line] = lines;
    const weighed = line && weighedLine(line.text);
    if (!weighed && amount.fills && !amount.added) continue;
    if (!weighed || lines.length !== 1) return undefined;
    if (weighed.amount === "q.s.") continue;
    if (amount.removed) {
      out.push({ from: line.from, to: Math.min(line.to + 1, text.length) });
      continue;
    }
    const written = newAmount(weighed.amount, amount);
    if (written === undefined) return undefined;
    out.push({ from: line.from, to: line.to, insert: withAmount(weighed, written) });
  }
  for (const statement of mend.statements ?? []) {
    const [word = ""] = statement.split(" ");
    let found = false;
    for (let number = 1; number <= text.lines; ++number) {
      const line = text.line(number);
      const stated = new RegExp(`^(\\s*${word}\\s+)([^#]*?)(\\s*(?:#.*)?)$`).exec(line.text);
      if (!stated) continue;
      found = true;
      out.push({ from: line.from, to: line.to,
                 insert: `${stated[1]}${statement.slice(word.length).trim()}${stated[3]}` });
      break;
    }
    if (!found) return undefined;
  }
  return out.length > 0 ? out : undefined;
}

function amountWords(amount: Amount): HTMLElement {
  const share = (figure: Amount["was"]) => {
    const value = middle(figure);
    return value === undefined ? "?" : `${plain(value)} %`;
  };
  return element("tr", {},
    element("th", { scope: "row" }, amount.material, amount.fills ? " (fills up)" : null),
    element("td", {}, amount.added ? "" : element("del", {}, share(amount.was))),
    element("td", {}, amount.removed ? "none" : element("ins", {}, share(amount.is))));
}

/** A verdict that turns, by what the rule wants to hold. */
function turn(one: Mend["verdicts"][number], title: (rule: string) => string): HTMLElement {
  const better = one.direction === "better";
  return element("li", { class: better ? "better" : "worse" },
    `${better ? "✓" : "△"} ${one.after}: ${title(one.rule)}`);
}

function answerElement(mend: Mend, number: number, hands: MendHands): HTMLElement {
  // a scale, a mask or a paper is no change of the card
  const change = mend.edits.length > 0;
  return element("article", { class: "answer" },
    element("h2", {}, mend.inShort),
    mend.amounts.length === 0 ? null : element("table", {},
      element("caption", { class: "unseen" }, "amounts before and after"),
      element("thead", { class: "unseen" }, element("tr", {}, element("th", { scope: "col" }, "material"),
        element("th", { scope: "col" }, "was"), element("th", { scope: "col" }, "is"))),
      element("tbody", {}, ...mend.amounts.map(amountWords))),
    ...(change ? mend.statements ?? [] : []).map((one) => element("p", { class: "figure" }, one)),
    element("ul", { class: "turns" }, ...mend.verdicts.map((one) => turn(one, hands.title)),
      ...mend.left.map((one) => element("li", {}, `left: ${one.message}`))),
    change ? element("p", { class: "actions" }, button("take", () => hands.take(mend, number), { class: "take" }))
           : element("p", { class: "soft" }, "No change of the formula."));
}

export interface MendHands {
  take(mend: Mend, number: number): void;
  /** What a rule wants to hold. */
  title(rule: string): string;
}

function listed(title: string, all: { message: string; remedy: string }[]): HTMLElement | null {
  if (all.length === 0) return null;
  return element("section", {}, element("h2", {}, title),
    ...all.map((one) => element("div", {}, element("p", {}, one.message),
                                element("p", { class: "soft" }, one.remedy))));
}

export async function mendPage(checker: Checker, view: EditorView, file: string,
                               opened: (text: string, file: string) => void,
                               toCard: () => void,
                               title: (rule: string) => string): Promise<HTMLElement> {
  const text = view.state.doc.toString();
  const made = await checker.suggestion({ file, text });
  if (Array.isArray(made)) {
    return element("div", {}, ...made.map((one) => element("p", { class: "must" }, one.words)));
  }
  const suggestion: Suggestion = made;
  const take = async (mend: Mend, number: number) => {
    const changes = changesOf(view, mend);
    toCard();
    if (changes) {
      pencil(view, changes, mend.inShort);
      return;
    }
    // what the lines themselves cannot say is a tweak of the card
    const tweak = await checker.ask<{ text?: string }>({ what: "tweak", number, card: { file, text } });
    if (tweak.text === undefined) return;
    checker.surroundings.files[file] = text;
    opened(tweak.text, file.replace(/\.formula$/, "") + "-mended.formula");
  };
  return element("div", {},
    suggestion.broken.length === 0 ? element("p", {}, "Nothing to mend.") : null,
    ...suggestion.answers.map((mend, number) => answerElement(mend, number, { take, title })),
    listed("Not mended by amounts", suggestion.unmendable),
    listed("Held by other limits", suggestion.blocked),
    listed("Better another way", suggestion.otherwise),
    suggestion.conflict.length === 0 ? null : element("section", {},
      element("h2", {}, "These cannot hold together"),
      element("ul", {}, ...suggestion.conflict.map((one) => element("li", {}, one.words)))));
}
