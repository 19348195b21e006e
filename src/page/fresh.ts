// A new card: five questions, and what they come to as text.
import type { Names } from "./answers";
import { button, element } from "./element";

interface Answers {
  name: string;
  product: string;
  markets: string[];
  batch: string;
  piece: string;
  bath: string;
}

export function cardOf(answers: Answers): string {
  const lines = [`formula "${answers.name.replaceAll('"', "") || "New card"}"`];
  const say = (word: string, what: string) => {
    if (what.trim() !== "") lines.push(`  ${word.padEnd(9)} ${what.trim()}`);
  };
  say("product", answers.product);
  say("market", answers.markets.join(", "));
  say("batch", answers.batch);
  say("piece", answers.piece);
  say("bath", answers.bath);
  return `${lines.join("\n")}\n\nphase "dry"\n  `;
}

function field(label: string, id: string, value: string, hint: string): HTMLElement {
  const input = element("input", { id, autocomplete: "off", "aria-describedby": `${id}-hint` });
  input.value = value;
  return element("div", { class: "field" }, element("label", { for: id }, label), input,
                 element("small", { id: `${id}-hint` }, hint));
}

/** The dialog of the five questions; closed without a card, nothing happens. */
export function askForCard(names: Names | undefined, made: (text: string) => void): void {
  const value = (id: string) => dialog.querySelector<HTMLInputElement>(`#${id}`)?.value ?? "";
  const markets = ["GB", "EU", "NI", "US", "CA"].map((market) => {
    const box = element("input", { type: "checkbox", name: "market", value: market });
    box.checked = market === "GB";
    return element("label", {}, box, ` ${market}`);
  });
  const done = () => {
    const chosen = [...dialog.querySelectorAll<HTMLInputElement>("[name=market]:checked")];
    dialog.close();
    made(cardOf({ name: value("new-name"), product: value("new-product"),
                  markets: chosen.map((box) => box.value), batch: value("new-batch"),
                  piece: value("new-piece"), bath: value("new-bath") }));
  };
  const products = element("select", { id: "new-product" },
    ...(names?.products ?? []).map((one) => element("option", {}, one.name)));
  products.value = "bubble bar";
  const dialog = element("dialog", { class: "paper", "aria-labelledby": "new-title",
                                     onclose: () => dialog.remove() },
    element("form", { method: "dialog", onsubmit: (event) => { event.preventDefault(); done(); } },
      element("h2", { id: "new-title" }, "A new card"),
      field("Its name", "new-name", "", ""),
      element("div", { class: "field" }, element("label", { for: "new-product" }, "What is it?"), products),
      element("fieldset", {}, element("legend", {}, "Where is it sold?"), ...markets),
      field("What does one batch weigh?", "new-batch", "2 kg", "such as 2 kg"),
      field("What does one piece weigh?", "new-piece", "85 g", "such as 85 g"),
      field("What goes into one bath?", "new-bath", "1 piece in 150 l at 38 C", "such as 1 piece in 150 l at 38 C"),
      element("p", { class: "actions" }, element("button", { type: "submit" }, "begin"),
              button("leave it", () => dialog.close()))));
  document.body.append(dialog);
  dialog.showModal();
}
