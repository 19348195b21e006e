// The row of pages: the card, and what else there is of the same paper.
import { at, button } from "./element";

export type Page = "card" | "mend" | "beside" | "bench" | "pack" | "sign" | "look" | "practise";

export const pages: [Page, string][] = [
  ["card", "Card"], ["mend", "Mend"], ["beside", "Beside its base"], ["bench", "Bench"],
  ["pack", "Pack"], ["sign", "Sign off"], ["look", "Look up"], ["practise", "Practise"]];

let shown: Page = "card";

export function shownPage(): Page {
  return shown;
}

/** Shows the row; `open` is called with the page that is asked for. */
export function rowOfPages(open: (page: Page) => void): void {
  at("pages").replaceChildren(...pages.map(([page, words]) =>
    button(words, () => open(page), { id: `to-${page}` })));
  mark();
}

function mark(): void {
  for (const [page] of pages) {
    const one = at(`to-${page}`);
    if (page === shown) one.setAttribute("aria-current", "page");
    else one.removeAttribute("aria-current");
  }
  at(`to-${shown}`).scrollIntoView({ block: "nearest", inline: "nearest" });
}

/** The card, or another page with what it is made of. */
export function show(page: Page, content?: HTMLElement | undefined): void {
  shown = page;
  mark();
  at("page-card").hidden = page !== "card";
  at("page-other").hidden = page === "card";
  if (page === "card") {
    at("other").replaceChildren();
    return;
  }
  at("other-title").textContent = pages.find(([one]) => one === page)?.[1] ?? "";
  at("other").replaceChildren(...(content ? [content] : []));
}
