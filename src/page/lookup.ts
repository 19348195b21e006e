// Look up: a rule, a measure, a material or a kind of product in full; what could stand in a
// material's place.
import type { Names } from "./answers";
import type { Checker } from "./checker";
import { button, element } from "./element";
import { problemWords } from "./sheets";

export function lookUpPage(checker: Checker, names: Names | undefined,
                           card: { file: string; text: string }, first: string): HTMLElement {
  const answer = element("div", { class: "told", "aria-live": "polite" });
  const field = element("input", { id: "topic", type: "search", list: "topics", autocomplete: "off",
                                   autocapitalize: "off" });
  field.value = first;
  const show = async (ask: Promise<{ report?: string; problems?: { words: string }[] }>) => {
    const { report, problems } = await ask;
    answer.replaceChildren(report === undefined
      ? problemWords((problems ?? []) as Parameters<typeof problemWords>[0])
      : element("pre", { tabindex: "0" }, report));
  };
  const explain = () => {
    if (field.value.trim() === "") return;
    void show(checker.report("explain", "text", { name: field.value.trim() }));
  };
  const swap = () => {
    if (field.value.trim() === "") return;
    void show(checker.report("swap", "text", { name: field.value.trim(), card }));
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
