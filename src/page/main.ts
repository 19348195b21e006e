// The page: the card with its margin, and the pages beside it.
import { redo, undo } from "@codemirror/commands";
import { EditorView } from "@codemirror/view";

import type { LeewayLine, Names } from "./answers";
import { type BarHands, showBars } from "./bars";
import { narrow } from "./beside_lines";
import { makeCard, replaceCard } from "./card";
import { Checker } from "./checker";
import { at, button, element } from "./element";
import { choose, linkTo, linked, memory, save, surround } from "./files";
import { showFolder } from "./folder";
import { askForCard } from "./fresh";
import { type Key, listen, showKeys } from "./keys";
import { lookUpPage } from "./lookup";
import { mendPage } from "./mend";
import { packPage } from "./pack";
import { type Page, pages, rowOfPages, show, shownPage } from "./pages";
import { Practice } from "./practise";
import { Reading } from "./reading";
import { benchPage, besidePage, copyButton, signPage } from "./sheets";
import { trials } from "./trial";
import { written } from "./written";

const firstCard = { file: "ebb-line.formula", text: at("first-card").textContent ?? "" };
const sent = linked();
const remembered = memory.read();
const begin = sent ?? remembered ?? firstCard;
let file = begin.file;
let before = { ...begin };
let names: Names | undefined;
let practice: Practice | undefined;
let checker: Checker;
let reading: Reading | undefined;
let hands: BarHands | undefined;
let leeway: LeewayLine[] = [];
let formulas: string[] = [];
// a card that somebody sent takes nothing from the one that is kept
let keeping = remembered !== undefined && sent === undefined;

const view = makeCard(at("card"), begin.text, () => names, () => {
  void reading?.ask();
  const [first = ""] = firstCard.text.split("\n");
  if (!text().startsWith(first)) at("example").hidden = true;
  if (keeping) memory.keep({ file, text: text() });
  measureLater();
});

function text(): string {
  return view.state.doc.toString();
}

let waiting = 0;
/** The bars follow when the hand rests: they take some hundred checks. */
function measureLater(): void {
  window.clearTimeout(waiting);
  waiting = window.setTimeout(async () => {
    const asked = text();
    if (!reading || !hands) return;
    const lines = await checker.leeway({ file, text: asked });
    if (asked !== text()) return;
    leeway = lines;
    showBars(view, lines, hands);
    document.body.dataset["bars"] = String(lines.length);
  }, 700);
}

/** A wide slider for the line that the caret is in. */
function tryLine(): void {
  const here = view.state.doc.lineAt(view.state.selection.main.head).number;
  const line = leeway.find((one) => one.line === here);
  if (line) hands?.asked(line);
}

function open(opened: string, name: string): void {
  // what was changed of another card of the folder stays changed
  if (formulas.includes(file)) checker.surroundings.files[file] = text();
  file = name;
  before = { file, text: opened };
  at("file-name").textContent = file;
  at("example").hidden = true;
  reading?.fresh();
  replaceCard(view, opened);
  folder();
  to("card");
}

function folder(): void {
  showFolder(checker, formulas, file, {
    open: (path) => open(checker.surroundings.files[path] ?? "", path),
    changed: () => {
      folder();
      void reading?.ask();
    },
  });
}

/** Opens the first of the files that is a formula; the others may be included by it. */
function openFiles(files: Map<string, string>, asBase: boolean): void {
  const found = surround(checker, files);
  const [first] = found;
  if (asBase) {
    if (first !== undefined) before = { file: first, text: files.get(first) ?? "" };
    to("beside");
    return;
  }
  if (first !== undefined) {
    formulas = found;
    open(files.get(first) ?? "", first);
    return;
  }
  folder();
  void reading?.ask();
}

/** What a rule that the card breaks wants to hold. */
function titleOf(rule: string): string {
  return reading?.margin?.notes?.find((one) => one.rule === rule)?.title ?? rule;
}

async function content(page: Page, topic: string): Promise<HTMLElement | undefined> {
  const card = { file, text: text() };
  switch (page) {
    case "card": return undefined;
    case "mend": return mendPage(checker, view, file, open, () => to("card"), titleOf);
    case "beside":
      return besidePage(checker, card, before, () => choose(false, (files) => openFiles(files, true)));
    case "bench": return benchPage(checker, card);
    case "pack": return packPage(checker, file, card.text);
    case "sign": return signPage(checker, card);
    case "look": return lookUpPage(checker, names, card, topic);
    case "practise":
      if (!practice) {
        practice = new Practice(checker, (rule) => to("look", rule));
        await practice.begin();
      }
      return practice.element;
  }
}

function to(page: Page, topic = ""): void {
  if (page !== shownPage()) window.scrollTo(0, 0);
  show(page);
  if (page === "card") {
    at("other").removeAttribute("aria-busy");
    reading?.replace();
    return;
  }
  at("other").setAttribute("aria-busy", "true");
  void content(page, topic).then((made) => {
    if (shownPage() !== page) return;
    show(page, made);
    at("other").removeAttribute("aria-busy");
  });
}

function tools(keys: Key[]): void {
  const keep = element("input", { type: "checkbox", id: "allow" });
  keep.checked = keeping;
  keep.addEventListener("change", () => {
    keeping = keep.checked && memory.keep({ file, text: text() });
    if (!keep.checked) memory.forget();
    keep.checked = keeping;
  });
  at("tools").replaceChildren(
    button("new card", () => askForCard(names, (fresh) => {
      formulas = [];
      open(fresh, "new-card.formula");
      view.dispatch({ selection: { anchor: view.state.doc.length } });
      view.focus();
    })),
    button("open", () => choose(false, (files) => openFiles(files, false))),
    button("open a folder", () => choose(true, (files) => openFiles(files, false)), { class: "wide" }),
    button("save", () => save(file, text())),
    copyButton("copy a link", () => linkTo({ file, text: text() }), "too long for a link: save it"),
    button("undo", () => { undo(view); view.focus(); }),
    button("keys", () => showKeys(keys), { class: "wide" }),
    element("label", {}, keep, " keep it in this browser"));
}

function listenAll(): void {
  const keys: Key[] = [
    ...pages.map(([page, words], index) => ({ key: String(index + 1), words, act: () => to(page) })),
    { key: "ArrowDown", words: "next note", act: () => reading?.step(1) },
    { key: "ArrowUp", words: "note before", act: () => reading?.step(-1) },
    { key: "w", words: "why, of this note", act: () => reading?.why() },
    { key: "t", words: "try another amount of this line", act: tryLine },
    { key: "c", words: "back to the card", act: () => { to("card"); view.focus(); } },
    { key: "n", words: "new card", act: () => at("tools").querySelector("button")?.click() },
    { key: "z", words: "undo", act: () => void undo(view) },
    { key: "y", words: "do it again", act: () => void redo(view) },
    { key: "s", words: "save", act: () => save(file, text()) },
  ];
  tools(keys);
  listen(keys);
  narrow.addEventListener("change", () => {
    reading?.replace();
    if (hands) showBars(view, leeway, hands);
  });
  new ResizeObserver(() => reading?.replace()).observe(at("card"));
  window.addEventListener("hashchange", () => {
    const other = linked();
    if (!other) return;
    keeping = false;
    tools(keys);
    open(other.text, other.file);
  });
  // a keyboard on the screen came up: the line that is typed is not to be under it
  window.visualViewport?.addEventListener("resize", () => {
    if (!view.hasFocus) return;
    view.dispatch({ effects: EditorView.scrollIntoView(view.state.selection.main.head, { yMargin: 60 }) });
  });
}

async function start(): Promise<void> {
  at("file-name").textContent = file;
  at("example").hidden = begin !== firstCard;
  rowOfPages(to);
  checker = await Checker.start();
  reading = new Reading(checker, view, () => file, {
    ...written(view), mend: () => to("mend"), moved: () => reading?.replace(),
  });
  hands = trials(checker, view, () => file, () => reading?.margin);
  listenAll();
  await reading.ask();
  document.body.dataset["firstVerdict"] = String(Math.round(performance.now()));
  measureLater();
  view.requestMeasure();
  names = await checker.names();
  document.body.dataset["ready"] = "yes";
}

void start();
