// Pages that a report of the register is: shown as it is written, to print and to copy.
import type { Card, Checker } from "./checker";
import type { Problem } from "./answers";
import { button, element } from "./element";

export function problemWords(problems: Problem[]): HTMLElement {
  return element("div", {}, ...problems.map((one) =>
    element("p", { class: "must" }, `${one.line > 0 ? `line ${one.line}: ` : ""}${one.words}`)));
}

/** On the screen it is a page of the same paper; printed, it is as it was written. */
const samePaper = `<style>@media screen {
  body { padding: 0; background: none; font-size: 1rem; }
  body > header, main, body > footer { max-width: none; }
  .masthead, body > footer { display: none; }
  .head { padding-top: 0.4rem; }
  h1, .head h1, .head h2, main > h1 { font-size: 1.5rem !important; padding-top: 0.4rem !important; }
  .verdict { font-size: 1rem; }
}</style>`;

/** A report that is a page of its own, as high as it wants to be. */
export function framed(html: string, title: string): HTMLIFrameElement {
  const frame = element("iframe", { title, class: "sheet", sandbox: "allow-same-origin allow-modals" });
  frame.srcdoc = html.replace("</head>", `${samePaper}</head>`);
  const grow = () => {
    const root = frame.contentDocument?.documentElement;
    if (root) frame.style.height = `${root.scrollHeight + 8}px`;
  };
  frame.addEventListener("load", grow);
  window.addEventListener("resize", grow);
  return frame;
}

/** A button that copies; `otherwise` is said where there is nothing to copy. */
export function copyButton(words: string, text: () => string | undefined, otherwise = ""): HTMLButtonElement {
  const say = (said: string) => {
    made.textContent = said;
    setTimeout(() => { made.textContent = words; }, 2000);
  };
  const made: HTMLButtonElement = button(words, async () => {
    const copied = text();
    if (copied === undefined) {
      say(otherwise);
      return;
    }
    try {
      await navigator.clipboard.writeText(copied);
    } catch {
      // a page from a file may not be given the clipboard: the old way then
      const area = element("textarea", { class: "unseen" });
      area.value = copied;
      document.body.append(area);
      area.select();
      document.execCommand("copy");
      area.remove();
    }
    say("copied");
  });
  return made;
}

function printButton(frame: HTMLIFrameElement): HTMLButtonElement {
  return button("print", () => frame.contentWindow?.print());
}

export async function benchPage(checker: Checker, card: Card): Promise<HTMLElement> {
  const [page, lines] = await Promise.all([
    checker.report("sheet", "html", { card }), checker.report("sheet", "text", { card })]);
  if (page.problems?.length || !page.report) return problemWords(page.problems ?? []);
  const frame = framed(page.report, "the bench sheet");
  return element("div", {},
    element("p", { class: "actions" }, printButton(frame), copyButton("copy as text", () => lines.report ?? "")),
    frame);
}

export async function besidePage(checker: Checker, card: Card, before: Card,
                                 choose: () => void): Promise<HTMLElement> {
  const tweak = /^\s*tweak\b/m.test(card.text);
  const row = element("p", { class: "actions" }, button("open its base", choose));
  if (!tweak && before.text === card.text) {
    return element("div", {}, element("p", {},
      "The card is as it was opened. Change it, and the changes stand here beside it as it was; or open another as its base."), row);
  }
  const page = await checker.report("compare", "html", { card, ...(tweak ? {} : { base: before }) });
  if (page.problems?.length || !page.report) return element("div", {}, problemWords(page.problems ?? []), row);
  return element("div", {}, row, framed(page.report, "the card beside its base"));
}

/** All verdicts, or what an assessor asks for. */
export async function signPage(checker: Checker, card: Card): Promise<HTMLElement> {
  const holder = element("div", {});
  const open = async (command: "check" | "dossier") => {
    holder.setAttribute("aria-busy", "true");
    const page = await checker.report(command, "html", { card });
    holder.removeAttribute("aria-busy");
    const other = command === "check" ? button("what an assessor asks for", () => void open("dossier"))
                                      : button("every verdict", () => void open("check"));
    if (page.problems?.length || !page.report) {
      holder.replaceChildren(problemWords(page.problems ?? []));
      return;
    }
    const frame = framed(page.report, command === "check" ? "every verdict, to sign off" : "the dossier");
    holder.replaceChildren(element("p", { class: "actions" }, printButton(frame), other), frame);
  };
  await open("check");
  return holder;
}
