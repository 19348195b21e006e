// The page: the card with its margin, and the pages beside it.
import { redo, undo } from "@codemirror/commands";

import type { Names } from "./answers";
import { type BarHands, showBars } from "./bars";
import { narrow } from "./beside_lines";
import { makeCard, replaceCard } from "./card";
import { Checker } from "./checker";
import { at, button, element } from "./element";
import { choose, linkTo, linked, memory, save, surround } from "./files";
import { askForCard } from "./fresh";
import { listen } from "./keys";
import { lookUpPage } from "./lookup";
import { mendPage } from "./mend";
import { packPage } from "./pack";
import { type Page, pages, rowOfPages, show, shownPage } from "./pages";
import { pencil } from "./pencil";
import { Practice } from "./practise";
import { Reading } from "./reading";
import { benchPage, besidePage, copyButton, signPage } from "./sheets";
import { trials } from "./trial";

const opened = performance.now();
const firstCard = { file: "ebb-line.formula", text: at("first-card").textContent ?? "" };
const begin = linked() ?? memory.read() ?? firstCard;
let file = begin.file;
let before = { ...begin };
let names: Names | undefined;
let practice: Practice | undefined;
let checker: Checker;
let reading: Reading | undefined;
let hands: BarHands | undefined;

function remember(): void {
  if (memory.allowed()) memory.keep(file, view.state.doc.toString());
}

const view = makeCard(at("card"), begin.text, () => names, () => {
  void reading?.ask();
  remember();
  measureLater();
});

let waiting = 0;
/** The bars follow when the hand rests: they take some hundred checks. */
function measureLater(): void {
  window.clearTimeout(waiting);
  waiting = window.setTimeout(async () => {
    const text = view.state.doc.toString();
    if (!reading || !hands) return;
    const lines = await checker.leeway({ file, text });
    if (text === view.state.doc.toString()) showBars(view, lines, hands);
  }, 700);
}

function open(text: string, name: string): void {
  file = name;
  before = { file, text };
  at("file-name").textContent = file;
  replaceCard(view, text);
  to("card");
}

/** Opens the first of the files that is a formula; the others may be included by it. */
function openFiles(files: Map<string, string>, asBase: boolean): void {
  const formulas = surround(checker, files);
  const [first] = formulas;
  if (asBase) {
    if (first !== undefined) before = { file: first, text: files.get(first) ?? "" };
    to("beside");
    return;
  }
  if (first !== undefined) open(files.get(first) ?? "", first);
  else void reading?.ask();
  drawer(formulas);
}

/** Several formulas that were opened together, each one tap away. */
function drawer(formulas: string[]): void {
  at("drawer")?.remove();
  if (formulas.length < 2) return;
  at("tools").after(element("p", { id: "drawer", class: "actions" }, ...formulas.map((one) =>
    button(one, () => open(checker.surroundings.files[one] ?? "", one)))));
}

async function content(page: Page): Promise<HTMLElement | undefined> {
  const text = view.state.doc.toString();
  switch (page) {
    case "card": return undefined;
    case "mend": return mendPage(checker, view, file, open, () => to("card"));
    case "beside":
      return besidePage(checker, file, text, before, () => choose(false, (files) => openFiles(files, true)));
    case "bench": return benchPage(checker, file, text);
    case "pack": return packPage(checker, file, text);
    case "sign": return signPage(checker, file, text);
    case "look": return lookUpPage(checker, names, { file, text }, "");
    case "practise":
      if (!practice) {
        practice = new Practice(checker);
        await practice.begin();
      }
      return practice.element;
  }
}

function to(page: Page): void {
  show(page);
  if (page === "card") {
    reading?.replace();
    return;
  }
  at("other").setAttribute("aria-busy", "true");
  void content(page).then((made) => {
    if (shownPage() !== page) return;
    show(page, made);
    at("other").removeAttribute("aria-busy");
  });
}

function tools(): void {
  const allow = element("input", { type: "checkbox", id: "allow" });
  allow.checked = memory.allowed();
  allow.addEventListener("change", () => {
    if (allow.checked) memory.keep(file, view.state.doc.toString());
    else memory.forget();
  });
  at("tools").replaceChildren(
    button("new card", () => askForCard(names, (text) => {
      open(text, "new-card.formula");
      view.dispatch({ selection: { anchor: view.state.doc.length } });
      view.focus();
    })),
    button("open", () => choose(false, (files) => openFiles(files, false))),
    button("open a folder", () => choose(true, (files) => openFiles(files, false))),
    button("save", () => save(file, view.state.doc.toString())),
    copyButton("copy a link", () => linkTo(file, view.state.doc.toString())),
    button("undo", () => { undo(view); view.focus(); }),
    element("label", {}, allow, " keep this card in this browser"));
}

async function start(): Promise<void> {
  at("file-name").textContent = file;
  rowOfPages(to);
  tools();
  checker = await Checker.start();
  reading = new Reading(checker, view, () => file, {
    spell(place, words) {
      const from = view.state.doc.line(place.line).from + place.column - 1;
      const end = view.state.doc.line(place.endLine).from + place.endColumn - 1;
      pencil(view, { from, to: end, insert: words }, words);
      view.focus();
    },
    mend: () => to("mend"),
    moved: () => reading?.replace(),
  });
  hands = trials(checker, view, () => file, () => reading?.margin);
  await reading.ask();
  measureLater();
  document.body.dataset["firstVerdict"] = String(Math.round(performance.now() - opened));
  view.requestMeasure();
  names = await checker.names();
  document.body.dataset["ready"] = "yes";
  narrow.addEventListener("change", () => reading?.replace());
  new ResizeObserver(() => reading?.replace()).observe(at("card"));
  listen([
    ...pages.map(([page, words], index) => ({ key: String(index + 1), words, act: () => to(page) })),
    { key: "ArrowDown", words: "next note", act: () => reading?.step(1) },
    { key: "ArrowUp", words: "note before", act: () => reading?.step(-1) },
    { key: "w", words: "why, of this note", act: () => reading?.why() },
    { key: "c", words: "back to the card", act: () => { to("card"); view.focus(); } },
    { key: "z", words: "undo", act: () => void undo(view) },
    { key: "y", words: "do it again", act: () => void redo(view) },
    { key: "s", words: "save", act: () => save(file, view.state.doc.toString()) },
  ]);
}

void start();
