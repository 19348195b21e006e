// The commonest tasks, done on the page in Chromium by keyboard and by touch, at a desk and on a
// telephone: nothing is complained of, nothing fetched, nothing too wide, and the accessibility
// checker finds nothing.
//
//     node tasks.mjs PAGE.html [FOLDER_FOR_PICTURES [WORDS]]
//
// With words, only tasks whose names hold them.
//
// Exit status 77 where Chromium or the packages of tests/browser are not installed.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

import { Browser, findChromium } from "../browser/chromium.mjs";
import { Hands } from "./hands.mjs";
import { tasks } from "./task_list.mjs";

const here = dirname(fileURLToPath(import.meta.url));
const [file, pictures, words = ""] = process.argv.slice(2);
const chromium = findChromium();
const axePath = join(here, "../browser/node_modules/axe-core/axe.min.js");
if (!chromium || !existsSync(axePath)) {
  console.log("skipped: chromium, or axe-core (npm ci in tests/browser), is not installed");
  process.exit(77);
}
const axe = readFileSync(axePath, "utf8");
const url = pathToFileURL(file).href;
const faults = [];
if (pictures) mkdirSync(pictures, { recursive: true });

/** What is fetched: neither the page itself nor what it makes of itself. */
const fetched = (requests) => requests.filter((one) => !/^(blob:|data:|about:)/.test(one) && !one.startsWith(url));

async function look(page, name) {
  const wide = await page.value(
    "document.documentElement.scrollWidth - document.documentElement.clientWidth");
  if (wide > 0) faults.push(`${name}: ${wide} px too wide for the screen`);
  await page.value(axe);
  const violations = await page.value(`axe.run(document, { iframes: false }).then((found) =>
    found.violations.map((one) => one.id + " at " + one.nodes[0].target.join(" ")
      + ": " + one.nodes[0].failureSummary))`);
  for (const violation of violations) faults.push(`${name}: accessibility: ${violation}`);
  for (const complaint of page.complaints) faults.push(`${name}: the browser says: ${complaint}`);
  for (const request of fetched(page.requests)) faults.push(`${name}: fetches ${request}`);
  await picture(page, name);
}

/** The whole page as a window of that height shows it: the editor draws no line out of sight. */
async function picture(page, name) {
  if (!pictures) return;
  const [width, height] = await page.value("[innerWidth, document.documentElement.scrollHeight]");
  await page.size(width, Math.min(height, 4000));
  await new Promise((resolve) => setTimeout(resolve, 150));
  writeFileSync(join(pictures, `${name.replaceAll(/\W+/g, "-")}.png`), await page.picture(4000));
}

const browser = new Browser(chromium);
const screens = [["desk", 1440, 900, false], ["telephone", 360, 740, true]];
for (const [screen, width, height, finger] of screens) {
  for (const dark of [false, true]) {
    for (const task of tasks) {
      if ((dark && !task.dark) || !task.name.includes(words)) continue;
      const name = `${screen}${dark ? " dark" : ""}: ${task.name}`;
      const page = await browser.page();
      try {
        await page.dark(dark);
        await page.size(width, height);
        if (finger) await page.send("Emulation.setTouchEmulationEnabled", { enabled: true });
        await page.open(url + (task.hash ?? ""));
        const hands = new Hands(page);
        await hands.settled();
        await task.act(hands, finger, url);
        await look(page, name);
        if (task.name === "read the first card") {
          console.log(`${name}: first verdict after ${await page.value("document.body.dataset.firstVerdict")} ms`);
        }
      } catch (fault) {
        faults.push(`${name}: ${fault.message}`);
        await picture(page, `fault ${name}`);
      }
      await page.close();
    }
  }
}
await browser.close();
for (const fault of faults) console.log(fault);
console.log(`${tasks.length} tasks on ${screens.length} screens, ${faults.length} faults`);
process.exit(faults.length === 0 ? 0 : 1);
