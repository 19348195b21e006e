// A new card: five questions and, if there is one already, a list; and what they come to as text.
import type { Names } from "./answers";
import { button, element } from "./element";
import { linesOfList } from "./paste";

interface Answers {
  name: string;
  product: string;
  markets: string[];
  batch: string;
  piece: string;
  bath: string;
  list: string;
}

/** What is offered until somebody writes another. */
const usualBatch = "2 kg";

export function cardOf(answers: Answers): string {
  const lines = [`formula "${answers.name.replaceAll('"', "").trim() || "New card"}"`];
  const say = (word: string, what: string) => {
    if (what.trim() !== "") lines.push(`  ${word.padEnd(9)} ${what.trim()}`);
  };
  const list = linesOfList(answers.list);
  say("product", answers.product);
  say("market", answers.markets.join(", "));
  // a list of masses is a batch by itself
  if (list.length === 0 || answers.batch.trim() !== usualBatch) say("batch", answers.batch);
  say("piece", answers.piece);
  say("bath", answers.bath);
  const phase = list.length === 0 ? 'phase "dry"\n  ' : `phase "all"\n${list.join("\n")}\n`;
  return `${lines.join("\n")}\n\n${phase}`;
}

function field(label: string, id: string, value: string, hint = ""): HTMLElement {
  const input = element("input", { id, autocomplete: "off", ...(hint ? { "aria-describedby": `${id}-hint` } : {}) });
  input.value = value;
  return element("div", { class: "field" }, element("label", { for: id }, label), input,
                 hint ? element("small", { id: `${id}-hint` }, hint) : null);
}

/** The dialog of the questions; closed without a card, nothing happens. */
export function askForCard(names: Names | undefined, made: (text: string) => void): void {
  const value = (id: string) => dialog.querySelector<HTMLInputElement | HTMLTextAreaElement>(`#${id}`)?.value ?? "";
  const markets = ["GB", "EU", "NI", "US", "CA"].map((market) => {
    const box = element("input", { type: "checkbox", name: "market", value: market });
    box.checked = market === "GB";
    return element("label", {}, box, ` ${market}`);
  });
  const done = () => {
    const chosen = [...dialog.querySelectorAll<HTMLInputElement>("[name=market]:checked")];
    const card = cardOf({ name: value("new-name"), product: products.value,
                          markets: chosen.map((box) => box.value), batch: value("new-batch"),
                          piece: value("new-piece"), bath: value("new-bath"), list: value("new-list") });
    dialog.close();
    made(card);
  };
  const products = element("select", { id: "new-product" },
    ...(names?.products ?? []).map((one) => element("option", {}, one.name)));
  products.value = "bubble bar";
  const list = element("textarea", { id: "new-list", rows: "4", spellcheck: "false",
                                     "aria-describedby": "new-list-hint" });
  const dialog = element("dialog", { class: "leaf", "aria-labelledby": "new-title",
                                     onclose: () => dialog.remove() },
    element("form", { method: "dialog", onsubmit: (event) => { event.preventDefault(); done(); } },
      element("h2", { id: "new-title" }, "A new card"),
      field("Its name", "new-name", ""),
      element("div", { class: "field" }, element("label", { for: "new-product" }, "What is it?"), products),
      element("fieldset", {}, element("legend", {}, "Where is it sold?"), ...markets),
      field("What does one batch weigh?", "new-batch", usualBatch),
      field("What does one piece weigh?", "new-piece", "85 g"),
      field("What goes into one bath?", "new-bath", "1 piece in 150 l at 38 C"),
      element("div", { class: "field" },
        element("label", { for: "new-list" }, "Have you a list already? Paste it."), list,
        element("small", { id: "new-list-hint" },
                "a line each, such as 450 g baking soda; empty, you write the card yourself")),
      element("p", { class: "actions" }, element("button", { type: "submit" }, "begin"),
              button("leave it", () => dialog.close()))));
  document.body.append(dialog);
  dialog.showModal();
}
