// Pictures of one page for the eyes: telephone, tablet, desk, desk in the dark, and its print as a PDF.
//
//     node photograph.mjs PAGE.html FOLDER
import { mkdirSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { pathToFileURL } from "node:url";

import { Browser, findChromium } from "./chromium.mjs";

const [file, folder] = process.argv.slice(2);
const name = basename(file, ".html");
const views = [["phone", 360, 780, false], ["tablet", 820, 1100, false],
  ["desk", 1440, 900, false], ["dark", 1440, 900, true]];

mkdirSync(folder, { recursive: true });
const browser = new Browser(findChromium());
const page = await browser.page();
for (const [view, width, height, dark] of views) {
  await page.dark(dark);
  await page.size(width, height);
  await page.open(pathToFileURL(file).href);
  writeFileSync(join(folder, `${name}-${view}.png`), await page.picture());
}
await page.dark(false);
writeFileSync(join(folder, `${name}-a4.pdf`), await page.print(8.27, 11.69));
writeFileSync(join(folder, `${name}-letter.pdf`), await page.print(8.5, 11));
await browser.close();
