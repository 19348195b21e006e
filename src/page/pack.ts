// Pack: the label, market by market, to copy and to print.
import type { Checker } from "./checker";
import { button, element } from "./element";
import { copyButton, problemWords } from "./sheets";

interface Label {
  market: string;
  ingredients: { name: string }[];
  undecided: string[];
  doubts: string[];
  words: { name: string; words: string; exact: boolean; certain: boolean; condition: string; entry: string }[];
  points: { name: string; what: string; condition: string; entry: string }[];
  duties: { paper: string; why: string; about: string[]; entry: string }[];
}
interface Labels {
  formulas: { name: string; labels: Label[]; papers: { paper: string; why: string; about: string[] }[] }[];
}

function list(title: string, lines: string[]): HTMLElement | null {
  if (lines.length === 0) return null;
  return element("section", {}, element("h3", {}, title),
                 element("ul", {}, ...lines.map((line) => element("li", {}, line))));
}

function under(condition: string, entry: string): string {
  return (condition ? ` (${condition})` : "") + (entry ? ` [${entry}]` : "");
}

function labelElement(label: Label): HTMLElement {
  const ingredients = label.ingredients.map((one) => one.name).join(", ");
  const printed = label.words.filter((one) => one.certain).map((one) => one.words);
  return element("article", { class: "label" },
    element("h2", {}, label.market),
    element("p", { class: "printed" }, ingredients),
    element("p", { class: "actions" },
      copyButton("copy the list", () => ingredients),
      copyButton("copy list and cautions", () => [ingredients, ...printed].join("\n"))),
    list("To print", label.words.map((one) => one.words + under(one.condition, one.entry))),
    list("What a range leaves open", [...label.doubts, ...label.undecided]),
    list("What else stands on the pack", label.points.map((one) => one.what + under(one.condition, one.entry))),
    list("Papers and duties", label.duties.map((one) =>
      `${one.paper}: ${one.why}${one.about.length ? ` (${one.about.join(", ")})` : ""}${under("", one.entry)}`)));
}

export async function packPage(checker: Checker, file: string, text: string): Promise<HTMLElement> {
  const written = await checker.report("label", "json", { card: { file, text } });
  if (written.problems?.length || !written.report) return problemWords(written.problems ?? []);
  const [formula] = (JSON.parse(written.report) as Labels).formulas;
  if (!formula) return element("div", {});
  return element("div", {},
    element("p", { class: "actions" }, button("print", () => window.print())),
    ...formula.labels.map(labelElement),
    list("Papers to ask for", formula.papers.map((one) =>
      `${one.paper}: ${one.why}${one.about.length ? ` (${one.about.join(", ")})` : ""}`)));
}
