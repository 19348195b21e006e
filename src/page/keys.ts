// The keys that do what the buttons do, and the list of them.
import { button, element } from "./element";

export interface Key {
  key: string;
  words: string;
  act(): void;
}

/** Alt and a key, so that no letter is taken from who types. */
export function listen(keys: Key[]): void {
  const list = () => showList(keys);
  document.addEventListener("keydown", (event) => {
    if (event.key === "F1") {
      event.preventDefault();
      list();
      return;
    }
    if (!event.altKey || event.ctrlKey || event.metaKey) return;
    const found = keys.find((one) => one.key === event.key || `Key${one.key.toUpperCase()}` === event.code ||
                                     `Digit${one.key}` === event.code);
    if (!found) return;
    event.preventDefault();
    found.act();
  });
}

function showList(keys: Key[]): void {
  if (document.querySelector("dialog.keys")) return;
  const close = button("close", () => dialog.close());
  const dialog = element("dialog", { class: "paper keys", "aria-label": "The keys",
                                     onclose: () => dialog.remove() },
    element("h2", {}, "The keys"),
    element("dl", {}, ...keys.flatMap((one) =>
      [element("dt", {}, `Alt ${one.key.replace("Arrow", "")}`), element("dd", {}, one.words)]),
      element("dt", {}, "Ctrl Z"), element("dd", {}, "take back the last change"),
      element("dt", {}, "F1"), element("dd", {}, "this list")),
    element("p", { class: "actions" }, close));
  document.body.append(dialog);
  dialog.showModal();
}
