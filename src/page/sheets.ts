// Pages that a report of the register is: shown as it is written, to print and to copy.
import type { Checker } from "./checker";
import type { Problem } from "./answers";
import { button, element } from "./element";

export function problemWords(problems: Problem[]): HTMLElement {
  return element("div", {}, ...problems.map((one) =>
    element("p", { class: "must" }, `${one.line > 0 ? `line ${one.line}: ` : ""}${one.words}`)));
}

/** A report that is a page of its own, as high as it wants to be. */
function framed(html: string, title: string): HTMLIFrameElement {
  const frame = element("iframe", { title, class: "sheet", sandbox: "allow-same-origin allow-modals" });
  frame.srcdoc = html;
  const grow = () => {
    const root = frame.contentDocument?.documentElement;
    if (root) frame.style.height = `${root.scrollHeight + 8}px`;
  };
  frame.addEventListener("load", grow);
  window.addEventListener("resize", grow);
  return frame;
}

export function copyButton(words: string, text: () => string): HTMLButtonElement {
  const made: HTMLButtonElement = button(words, async () => {
    try {
      await navigator.clipboard.writeText(text());
    } catch {
      // a page from a file may not be given the clipboard: the old way then
      const area = element("textarea", { class: "unseen" });
      area.value = text();
      document.body.append(area);
      area.select();
      document.execCommand("copy");
      area.remove();
    }
    made.textContent = "copied";
    setTimeout(() => { made.textContent = words; }, 1500);
  });
  return made;
}

export async function benchPage(checker: Checker, file: string, text: string): Promise<HTMLElement> {
  const card = { file, text };
  const [page, lines] = await Promise.all([
    checker.report("sheet", "html", { card }), checker.report("sheet", "text", { card })]);
  if (page.problems?.length || !page.report) return problemWords(page.problems ?? []);
  const frame = framed(page.report, "the bench sheet");
  return element("div", {},
    element("p", { class: "actions" },
      button("print", () => frame.contentWindow?.print()),
      copyButton("copy as text", () => lines.report ?? "")),
    frame);
}

export async function besidePage(checker: Checker, file: string, text: string,
                                 before: { file: string; text: string },
                                 choose: () => void): Promise<HTMLElement> {
  const tweak = /^\s*tweak\b/m.test(text);
  const page = await checker.report("compare", "html", {
    card: { file, text }, ...(tweak ? {} : { base: before }) });
  const row = element("p", { class: "actions" }, button("open its base", choose));
  if (page.problems?.length || !page.report) return element("div", {}, problemWords(page.problems ?? []), row);
  return element("div", {}, row, framed(page.report, "the card beside its base"));
}

export async function signPage(checker: Checker, file: string, text: string): Promise<HTMLElement> {
  const page = await checker.report("check", "html", { card: { file, text } });
  if (page.problems?.length || !page.report) return problemWords(page.problems ?? []);
  const frame = framed(page.report, "every verdict, to sign off");
  return element("div", {},
    element("p", { class: "actions" }, button("print", () => frame.contentWindow?.print())), frame);
}
