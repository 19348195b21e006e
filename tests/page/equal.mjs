// Verdicts, figures and refusals of the page are those of the terminal, byte for byte, for every
// fixture.
//
//     node equal.mjs FOLDER_OF_THE_BORDER PROGRAM SOURCE_FOLDER [FOLDER...]
//
// Further folders of formulas are compared beside them.
import { isUtf8 } from "node:buffer";
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync, readdirSync } from "node:fs";
import { resolve } from "node:path";

import { border } from "./border.mjs";

const [folder, program, source, ...further] = process.argv.slice(2);
if (!existsSync(program)) {
  console.log(`skipped: ${program} is not built`);
  process.exit(77);
}
const on = "2026-11-25";
const folders = ["fixtures/formulas", "fixtures/sound", "fixtures/faulty", "fixtures/tweaks",
                 "fixtures/malformed", ...further];
const files = {};
for (const one of folders) {
  for (const name of readdirSync(resolve(source, one), { recursive: true })) {
    if (!String(name).endsWith(".formula")) continue;
    const bytes = readFileSync(resolve(source, one, String(name)));
    // a page is given text; what is none stays with the terminal
    if (isUtf8(bytes)) files[`${one}/${name}`] = bytes.toString();
  }
}

const ask = await border(folder);
let compared = 0;
let refused = 0;
const faults = [];
const times = [];
for (const [file, text] of Object.entries(files)) {
  const terminal = spawnSync(program, ["check", "--format", "json", "--on", on, file],
    { cwd: source, encoding: "utf8", maxBuffer: 1 << 28 });
  const began = performance.now();
  const page = ask({ what: "report", command: "check", format: "json", on, files, card: { file, text } });
  times.push(performance.now() - began);
  if (page.report !== terminal.stdout) {
    const at = [...terminal.stdout].findIndex((letter, index) => letter !== page.report?.[index]);
    faults.push(`${file}: other bytes from ${at} on:\n  terminal ${terminal.stdout.slice(at, at + 90)}\n` +
      `  page     ${page.report?.slice(at, at + 90)}`);
  }
  if (terminal.status === 2) ++refused;
  ++compared;
}
times.sort((a, b) => a - b);
console.log(`${compared} formulas compared, ${refused} of them refused alike, ${faults.length} differ; a whole report takes ` +
  `${times[times.length >> 1].toFixed(1)} ms in the middle, ${times.at(-1).toFixed(0)} ms at most`);
if (compared < 100) faults.push("hardly any fixture was found");
for (const fault of faults) console.log(fault);
process.exit(faults.length === 0 ? 0 : 1);
