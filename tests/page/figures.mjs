// Figures of the page: its size, the first verdict after opening, a keystroke's verdict for every demo
// formula, and whether anything jumps while a line is typed. Times are printed and judged by people;
// what jumps fails.
//
//     node figures.mjs PAGE.html FOLDER_OF_FORMULAS
import { existsSync, readFileSync, readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

import { Browser, findChromium } from "../browser/chromium.mjs";
import { Hands } from "./hands.mjs";

const [file, folder] = process.argv.slice(2);
const chromium = findChromium();
if (!chromium || !existsSync(file)) {
  console.log("skipped: chromium is not installed, or the page is not built");
  process.exit(77);
}
const url = pathToFileURL(file).href;
const mega = statSync(file).size / 1e6;
const faults = [];
console.log(`the file: ${mega.toFixed(2)} MB (at most 4)`);
if (mega > 4) faults.push("the file is too large");

const browser = new Browser(chromium);
const page = await browser.page();
const hands = new Hands(page);

/** Where the line of the caret stands, as the reader sees it. */
const caretTop = `(() => { const card = document.querySelector(".cm-content");
  const view = (card.cmTile ?? card.cmView).view;
  return view.coordsAtPos(view.state.selection.main.head)?.top ?? NaN; })()`;

async function typed(words) {
  const took = [];
  let jump = 0;
  for (const letter of words) {
    const before = await page.value(caretTop);
    await page.send("Input.insertText", { text: letter });
    await hands.settled();
    took.push(Number(await page.value("document.body.dataset.took")));
    jump = Math.max(jump, Math.abs(await page.value(caretTop) - before));
  }
  return { took, jump };
}

const middle = (all) => all.sort((a, b) => a - b)[all.length >> 1];
const first = [];
for (const [screen, width, height] of [["desk", 1440, 900], ["telephone", 360, 740]]) {
  await page.size(width, height);
  for (let turn = 0; turn < 3; ++turn) {
    await page.open("about:blank");
    await page.open(url);
    await hands.settled();
    first.push(Number(await page.value("document.body.dataset.firstVerdict")));
  }
  // in the middle of the first card
  await page.value(`(() => { const card = document.querySelector(".cm-content");
    const view = (card.cmTile ?? card.cmView).view;
    const at = view.state.doc.toString().indexOf("glycerin") + 8;
    view.focus();
    view.dispatch({ selection: { anchor: at }, scrollIntoView: true });
    // not at the edge, from where any editor moves what is typed into sight
    window.scrollBy(0, view.coordsAtPos(at).top - innerHeight / 2); })()`);
  // by way of names that nobody knows, and of amounts that break limits
  const name = await typed("ine and");
  for (let turn = 0; turn < 7; ++turn) await hands.press("Backspace");
  await page.value(`(() => { const card = document.querySelector(".cm-content");
    const view = (card.cmTile ?? card.cmView).view;
    view.dispatch({ selection: { anchor: view.state.doc.toString().indexOf("2.5 %") } }); })()`);
  const amount = await typed("11");
  const most = Math.max(name.jump, amount.jump);
  console.log(`${screen}: first verdict after ${middle([...first])} ms (at most 1000); ` +
    `the line that is typed moves ${most.toFixed(1)} px`);
  if (!(most < 1)) faults.push(`${screen}: the line that is typed jumps by ${most} px`);
}

await page.size(1440, 900);
const all = [];
for (const name of readdirSync(folder).filter((one) => one.endsWith(".formula")).sort()) {
  const text = `${readFileSync(join(folder, name), "utf8")}\n# `;
  const link = Buffer.from(`${name}\n${text}`).toString("base64url");
  await page.value(`location.hash = "card=${link}"`);
  await hands.until(`document.querySelector("#file-name").textContent === ${JSON.stringify(name)}`, name);
  await hands.settled();
  await page.value(`document.querySelector(".cm-content").focus()`);
  await hands.press("End", "ctrl");
  const { took } = await typed("noted");
  all.push({ name, took: middle(took), most: Math.max(...took) });
}
all.sort((a, b) => a.took - b.took);
const slowest = all.at(-1);
console.log(`a keystroke's verdict (at most 30): ${middle(all.map((one) => one.took))} ms in the middle of ` +
  `${all.length} formulas, ${slowest?.took} ms of the slowest (${slowest?.name})`);
await browser.close();
for (const fault of faults) console.log(fault);
process.exit(faults.length === 0 ? 0 : 1);
