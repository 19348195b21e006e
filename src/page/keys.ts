// The keys that do what the buttons do, and the list of them.
import { button, element } from "./element";

export interface Key {
  key: string;
  words: string;
  act(): void;
}

/** Alt and a key, so that no letter is taken from who types; before the card sees it, which would
    move lines by some of them. */
export function listen(keys: Key[]): void {
  document.addEventListener("keydown", (event) => {
    if (event.key === "F1") {
      event.preventDefault();
      showKeys(keys);
      return;
    }
    if (!event.altKey || event.ctrlKey || event.metaKey) return;
    const found = keys.find((one) => one.key === event.key || `Key${one.key.toUpperCase()}` === event.code ||
                                     `Digit${one.key}` === event.code);
    if (!found) return;
    event.preventDefault();
    event.stopPropagation();
    found.act();
  }, { capture: true });
}

const signs: Record<string, string> = { ArrowDown: "↓", ArrowUp: "↑" };

export function showKeys(keys: Key[]): void {
  if (document.querySelector("dialog.keys")) return;
  const close = button("close", () => dialog.close());
  const row = (key: string, words: string) => [element("dt", {}, key), element("dd", {}, words)];
  const dialog = element("dialog", { class: "leaf keys", "aria-label": "The keys",
                                     onclose: () => dialog.remove() },
    element("h2", {}, "The keys"),
    element("dl", {}, ...keys.flatMap((one) => row(`Alt ${signs[one.key] ?? one.key.toUpperCase()}`, one.words)),
      ...row("Ctrl Z", "take back the last change"), ...row("Tab", "out of the card: Esc, then Tab"),
      ...row("F1", "this list")),
    element("p", { class: "actions" }, close));
  document.body.append(dialog);
  dialog.showModal();
}
