// The main task in Firefox: open the page from a file, read what must change, write a line, take a
// mend and take it back, try the bench sheet.
//
//     node firefox_task.mjs PAGE.html [FOLDER_FOR_PICTURES]
//
// Exit status 77 where Firefox is not installed.
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

import { Firefox, findFirefox } from "./firefox.mjs";

const [file, pictures] = process.argv.slice(2);
const path = findFirefox();
if (!path) {
  console.log("skipped: firefox is not installed");
  process.exit(77);
}
if (pictures) mkdirSync(pictures, { recursive: true });
const browser = await Firefox.start(path);
let fault;

async function picture(name) {
  if (pictures) writeFileSync(join(pictures, `firefox-${name}.png`), await browser.picture());
}
const settled = () => browser.until(
  `document.body.dataset.ready && !document.body.classList.contains("stale")`, "a verdict");
const card = `(() => { const one = document.querySelector(".cm-content");
  return (one.cmTile ?? one.cmView).view.state.doc.toString(); })()`;
const notes = `[...document.querySelectorAll(".note")].map((one) => one.innerText).join("\\n")`;
const click = (words) => browser.value(`[...document.querySelectorAll("button")]
  .find((one) => one.textContent === ${JSON.stringify(words)} && one.offsetParent).click()`);
function expect(true_, words) {
  if (!true_) throw new Error(words);
}

try {
  await browser.size(1440, 1000);
  await browser.open(pathToFileURL(file).href);
  await settled();
  console.log(`firefox: first verdict after ${await browser.value("document.body.dataset.firstVerdict")} ms`);
  expect((await browser.value(notes)).includes("2.4 %"), "the scent's limit stands in a note");
  await browser.until(`Number(document.body.dataset.bars) > 5`, "bars beside the lines");
  await picture("first");

  await browser.value(`document.querySelector(".cm-content").focus()`);
  await browser.control("End");
  await browser.write("\n# seen");
  await settled();
  expect((await browser.value(card)).endsWith("# seen"), "what is typed stands on the card");

  await click("Mend");
  await browser.until(`document.querySelector(".answer .take")`, "an answer");
  await browser.value(`document.querySelector(".answer .take").click()`);
  await browser.until(`!document.querySelector("#pencil").hidden`, "the mend is in pencil");
  await settled();
  expect(!/ 3 %\s+"Sea Fig"/.test(await browser.value(card)), "the scent is lower");
  await picture("mended");
  await click("take back");
  await settled();
  expect(/ 3 %\s+"Sea Fig"/.test(await browser.value(card)), "taken back");

  await click("Bench");
  await browser.until(`(document.querySelector("iframe.sheet")?.contentDocument?.body?.innerText ?? "").length > 300`, "a sheet");
  await picture("bench");
  const complaints = await browser.complaints();
  expect(complaints.length === 0, `the browser says: ${complaints.join("; ")}`);
} catch (one) {
  fault = one;
  await picture("fault").catch(() => {});
}
await browser.close();
console.log(fault ? `firefox: ${fault.message}` : "firefox: read, written, mended, taken back and weighed");
process.exit(fault ? 1 : 0);
