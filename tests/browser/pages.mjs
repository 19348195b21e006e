// Opens the page of every demo, faulty and hostile formula, and one of every other kind, in
// Chromium: nothing is complained of, nothing fetched, nothing wider than a telephone, no word
// broken at any width, every picture has a name, the accessibility checker finds nothing, on A4 and
// Letter no row is cut, and a sound bar takes six sheets at most. What hangs on the fonts of a
// machine (widths, words, paper) is asked with several sets of them (`fonts.mjs`).
//
//     node pages.mjs PROGRAM SOURCE_FOLDER WORK_FOLDER
//
// Exit status 77 where Chromium, poppler's tools or the packages of package.json are not installed.
import { execFile, spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { promisify } from "node:util";

import { Browser, findChromium } from "./chromium.mjs";
import { fontSets } from "./fonts.mjs";

const here = dirname(fileURLToPath(import.meta.url));
const [program, source, work] = process.argv.slice(2);
const pages = join(work, "pages");
const paper = { A4: [8.27, 11.69], Letter: [8.5, 11] };
const soundBar = "fixtures-formulas-harbour-puck.html";
const mostSheets = 6;
const height = 240; // no layout hangs on it, and what is out of sight is not painted
const axePath = [process.env.SUDSMARK_NODE_MODULES, join(here, "node_modules")]
  .filter(Boolean).map((folder) => join(folder, "axe-core/axe.min.js")).find(existsSync);

function skip(why) {
  console.log(`skipped: ${why}`);
  process.exit(77);
}

const chromium = findChromium();
if (!chromium) skip("chromium is not installed");
if (!axePath) skip("axe-core is not installed (npm ci in tests/browser)");
if (spawnSync("pdftotext", ["-v"]).error) skip("poppler-utils is not installed");

const asked = promisify(execFile);

const scented = "fixtures/formulas/harbour-puck.formula";
const hostile = "tests/report/hostile";
const golden = ["--bare", "--rules", "tests/golden"];
/** Pages: the folder that the program is run in, a name (none: a folder of pages), what it is asked. */
const written = [
  [".", "suggest", "suggest", "fixtures/faulty/glycerin-by-the-cup.formula"],
  [".", "swap", "suggest", "--swap", "SLSA", scented],
  [".", "leeway", "leeway", scented],
  [".", "leeway-map", "leeway", "--line", "polysorbate 80", "--against", "rice bran oil",
    "fixtures/formulas/fen-crumble.formula"],
  [".", "", "check", "fixtures/formulas", "fixtures/faulty", hostile],
  [".", "several", "check", ...golden, "fixtures/formulas",
    "fixtures/malformed/decimal-comma.formula"],
  [".", "bench-sheets", "measure", "--sheet", "fixtures/formulas"],
  [".", "hostile-bench-sheets", "measure", "--sheet", hostile],
  ["tests/golden", "comparison", "compare", "--bare", "--rules", ".", "estuary-tweak.formula"],
  [hostile, "hostile-comparison", "compare", "tweak.formula"],
  ...["label", "measure"].flatMap((command) => [
    [".", command, command, "--market", "GB,EU,US", scented,
      "fixtures/faulty/washing-soda.formula"],
    [".", `hostile-${command}`, command, hostile]]),
  [".", "dossier", "dossier", scented],
  [".", "law", "explain", "law"],
  [".", "drill", "drill", "--papers", "8"],
];

async function write([folder, name, ...words]) {
  const target = join(pages, name === "" ? "" : `${name}.html`);
  const day = ["explain", "drill"].includes(words[0]) ? [] : ["--on", "2026-11-25"];
  const format = ["--format", `html=${target}${name === "" ? "/" : ""}`];
  // a program that found something ends with a status
  const ended = await asked(program, [...words, ...format, ...day],
    { cwd: join(source, folder), maxBuffer: 1 << 28 }).catch((failure) => failure);
  if (![undefined, 1, 2].includes(ended.code)) {
    throw new Error(`${words} ended with ${ended.code}: ${ended.stderr}`);
  }
  if (name !== "" && !existsSync(target)) throw new Error(`${name}.html was not written`);
}

/** Several hands work through a list, each at what comes next. */
async function workThrough(list, hands, job) {
  const rest = list.values();
  await Promise.all(Array.from({ length: hands }, async (_, hand) => {
    for (const one of rest) await job(one, hand);
  }));
}

let faults = 0;
let printed = 0;  // sheets of paper
function fault(page, words) {
  // at once: a run that is ended for its time has told what it found
  console.log(`${page}: ${words}`);
  faults += 1;
}

/** Leaves the first rows of long tables and lists: the others are made alike. */
const inShort = `document.querySelectorAll(
  "tbody tr:nth-child(n+5), .run-in li:nth-child(n+5), .sources li:nth-child(n+5)")
  .forEach((one) => one.remove())`;

/** Words that a line breaks in two; longer ones than a language has may be. */
const brokenWords = `(() => {
  const broken = [];
  // what is there for listeners alone has no lines
  const unseen = [...document.querySelectorAll("thead, caption, details:not([open]) > :not(summary)")]
    .filter((one) => one.matches("details > *") || one.getBoundingClientRect().width <= 1);
  const walker = document.createTreeWalker(document.querySelector("main"), NodeFilter.SHOW_TEXT);
  const range = document.createRange();
  while (walker.nextNode()) {
    const node = walker.currentNode;
    range.selectNodeContents(node);
    const lines = [...range.getClientRects()].filter((one) => one.width > 0.5);
    // a text of one line breaks no word
    if (!lines.some((one) => one.top > lines[0].bottom - 2)) continue;
    if (node.parentElement.closest("svg, code, pre")) continue;
    if (unseen.some((one) => one.contains(node))) continue;
    for (const { 0: word, index } of node.data.matchAll(/[a-zA-Z\u00c0-\u024f0-9]+/g)) {
      if (word.length < 3 || word.length > 20) continue;
      range.setStart(node, index);
      range.setEnd(node, index + word.length);
      const parts = [...range.getClientRects()].filter((one) => one.width > 0.5);
      if (parts.some((one) => one.top > parts[0].bottom - 2)) broken.push(word);
    }
  }
  return broken.slice(0, 5).join(", ");
})()`;

async function fits(page, name) {
  const wide = await page.value(
    "document.documentElement.scrollWidth - document.documentElement.clientWidth");
  if (wide > 0) fault(name, `${wide} px too wide for the screen`);
  // what hostile names are made of are no words
  const broken = name.includes("hostile") ? "" : await page.value(brokenWords);
  if (broken !== "") fault(name, `broken words: ${broken}`);
}

/** What the page is made of, and what it asks of a browser. */
async function look(page, name, url) {
  for (const complaint of page.complaints) fault(name, `the browser says: ${complaint}`);
  for (const request of page.requests) {
    if (request !== url) fault(name, `fetches ${request}`);
  }
  const unnamed = await page.value(`[...document.querySelectorAll("svg")].filter((svg) => {
    if (svg.getAttribute("aria-hidden") === "true") return false;
    const ids = (svg.getAttribute("aria-labelledby") ?? "").split(" ").filter(Boolean);
    const words = ids.map((id) => document.getElementById(id)?.textContent ?? "").join(" ");
    return svg.getAttribute("role") !== "img"
      || (words + (svg.getAttribute("aria-label") ?? "")).trim() === "";
  }).length`);
  if (unnamed > 0) fault(name, `${unnamed} pictures without a name`);
  const active = await page.value(
    `document.querySelectorAll("script, iframe, object, embed, img, form, [onload], [onerror]").length`);
  if (active > 0) fault(name, `${active} elements that could act or fetch`);
}

/** The checker of accessibility, with all of the page or each of its tables `inBrief`. It takes as
 * long as all else together. */
async function judge(page, name, axe, inBrief) {
  if (inBrief) await page.value(inShort);
  await page.value(axe);
  const violations = await page.value(`axe.run(document, { resultTypes: ["violations"] })
    .then((found) => found.violations.map((one) => one.id + " at " + one.nodes[0].target.join(" ")))`);
  for (const violation of violations) fault(name, `accessibility: ${violation}`);
}

/** What every reader of a PDF agrees on: neither spaces, nor the order of scripts, nor quote marks. */
const squashed = (text) => text.replace(/[^\x21-\x7E]+/gu, "");

/** Rows and findings as lists of what stands in their cells, without pictures; what is folded stays
 * so on paper. */
const rowsOfPage = `[...document.querySelectorAll("tr, .finding > .what")].filter((row) =>
  !row.closest(".fold:not([open])")).map((row) => {
  const cells = row.matches("tr") ? [...row.children] : [row];
  return cells.map((cell) => {
    const copy = cell.cloneNode(true);
    copy.querySelectorAll("svg").forEach((svg) => svg.remove());
    return copy.textContent;
  });
})`;

/** The words of each sheet that the page is printed on. */
async function sheetsOf(page, size) {
  const reading = asked("pdftotext", ["-raw", "-", "-"], { maxBuffer: 1 << 26 });
  reading.child.stdin.end(await page.print(...paper[size]));
  const { stdout } = await reading;
  return stdout.split("\f").slice(0, -1).map(squashed);
}

async function print(page, name, sizes, fonts) {
  const rows = await page.value(rowsOfPage);
  for (const size of sizes) {
    const sheets = await sheetsOf(page, size);
    sheets.forEach((sheet, at) => {
      if (!sheet.includes(`${at + 1}of${sheets.length}`)) {
        fault(name, `${size}${fonts}: page ${at + 1} does not say that it is ${at + 1} of ${sheets.length}`);
      }
      if (sheet.length < 50) fault(name, `${size}${fonts}: page ${at + 1} is all but empty`);
    });
    for (const row of rows) {
      const cells = row.map(squashed);
      if (!sheets.some((sheet) => cells.every((cell) => sheet.includes(cell)))) {
        fault(name, `${size}${fonts}: a row is cut: ${row.join(" | ").slice(0, 120)}`);
      }
    }
    if (name === soundBar && sheets.length > mostSheets) {
      fault(name, `${size}${fonts}: ${sheets.length} sheets for a sound bar`);
    }
    printed += sheets.length;
  }
}

/** Opens the page and asks for all that hangs on fonts; on paper of each of those sizes. */
async function measure(page, name, sizes, fonts) {
  const url = pathToFileURL(join(pages, name)).href;
  await page.dark(false);
  await page.size(360, height);
  await page.open(url);
  for (const width of [360, 820, 1440]) {
    await page.size(width, height);
    await fits(page, `${name} at ${width} px${fonts}`);
  }
  await print(page, name, sizes, fonts);
  return url;
}

/** With the first set of fonts: all there is to ask. The checker of accessibility comes last, as it
 * adds to the page, by turns in the light of a telephone and in the dark of a desk. */
async function lookAt(page, name, at, axe) {
  // faulty formulas look alike: each is printed on one paper here, and one of four judged in short
  const faulty = name.startsWith("fixtures-faulty");
  const sizes = faulty ? [at % 4 < 2 ? "A4" : "Letter"] : Object.keys(paper);
  await look(page, name, await measure(page, name, sizes, ""));
  await page.dark(true);
  await page.size(1280, height);
  await fits(page, `${name} at 1280 px`);
  if (faulty && at % 4 > 1) return;
  if (at % 2 === 0) {
    await page.dark(false);
    await page.size(360, height);
  }
  await judge(page, `${name} ${at % 2 === 0 ? "on a telephone" : "in the dark"}`, axe, faulty);
}

rmSync(work, { recursive: true, force: true });
mkdirSync(pages, { recursive: true });
await workThrough(written, 2, write);
const names = readdirSync(pages).filter((name) => name.endsWith(".html")).sort();
const axe = readFileSync(axePath, "utf8");
const sets = fontSets(join(work, "fonts"));
if (sets.length === 0) skip("no set of fonts is installed");
const views = sets.flatMap((set, first) => names.map((name, at) => ({ set, show: (page) =>
  first === 0 ? lookAt(page, name, at, axe) : measure(page, name, [set.paper], ` in ${set.name}`) })));
const hands = [{}, {}];
try {
  await workThrough(views, hands.length, async ({ set, show }, at) => {
    const hand = hands[at];
    if (hand.set !== set) {
      await hand.browser?.close();
      hand.browser = new Browser(chromium, { FONTCONFIG_FILE: set.config });
      hand.page = await hand.browser.page();
      hand.set = set;
    }
    await show(hand.page);
  });
} finally {
  for (const hand of hands) await hand.browser?.close();
}
console.log(`${names.length} pages looked at with ${sets.map((set) => set.name).join(", ")}; ` +
  `${printed} sheets of paper printed, ${faults} faults`);
process.exit(faults === 0 && names.length > 0 ? 0 : 1);
