// Look up: a rule, a measure, a material or a kind of product in full; what could stand in a
// material's place.
import type { Names, Written } from "./answers";
import type { Checker } from "./checker";
import { button, element } from "./element";
import { framed, problemWords } from "./sheets";

export function lookUpPage(checker: Checker, names: Names | undefined,
                           card: { file: string; text: string }, first: string): HTMLElement {
  const answer = element("div", { class: "told", "aria-live": "polite" });
  const field = element("input", { id: "topic", type: "search", list: "topics", autocomplete: "off",
                                   autocapitalize: "off" });
  field.value = first;
  const show = async (ask: Promise<Written>, shown: (report: string) => HTMLElement) => {
    const { report, problems } = await ask;
    answer.replaceChildren(report === undefined ? problemWords(problems ?? []) : shown(report));
  };
  const explain = () => {
    const name = field.value.trim();
    if (name === "") return;
    void show(checker.report("explain", "html", { name }), (report) => framed(report, name));
  };
  const swap = () => {
    const name = field.value.trim();
    if (name === "") return;
    void show(checker.report("swap", "text", { name, card }), (report) => element("pre", { tabindex: "0" }, report));
  };
  const form = element("form", { class: "ask", onsubmit: (event) => { event.preventDefault(); explain(); } },
    element("label", { for: "topic" }, "A rule, a measure, a material, a kind of product"), field,
    element("datalist", { id: "topics" },
      ...(names?.materials ?? []).map((one) => element("option", { value: one.name }))),
    element("button", { type: "submit" }, "explain"),
    button("what could stand in its place", swap));
  if (first !== "") explain();
  return element("div", {}, form, answer);
}
