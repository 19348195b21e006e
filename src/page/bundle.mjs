// Puts the page into one file: the checker packed, the worker, the editor, the style, and the first
// card, which is the one of the README.
//
//     node bundle.mjs FOLDER_OF_THE_BORDER SOURCE_FOLDER PAGE.html
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { deflateRawSync } from "node:zlib";

import { build } from "esbuild";

const [border, source, page] = process.argv.slice(2);

async function bundled(entry) {
  const { outputFiles } = await build({
    entryPoints: [entry], bundle: true, minify: true, format: "iife", target: "es2022",
    write: false, legalComments: "none", charset: "utf8",
  });
  return outputFiles[0].text;
}

/** Nothing inside a script element may look like its end. */
const inScript = (text) => text.replace(/<\/(script)/gi, "<\\/$1").replace(/<!--/g, "<\\!--");

/** Four bytes as five letters, as packed.ts reads them. */
function lettered(bytes) {
  const whole = Buffer.concat([bytes, Buffer.alloc((4 - bytes.length % 4) % 4)]);
  const out = Buffer.alloc(whole.length / 4 * 5);
  for (let at = 0, to = 0; at < whole.length; at += 4, to += 5) {
    let value = whole.readUInt32BE(at);
    for (let place = 4; place >= 0; --place) {
      const digit = value % 85;
      value = Math.floor(value / 85);
      out[to + place] = digit + (digit + 35 >= 60 ? 36 : 35);
    }
  }
  return out.toString("latin1");
}

const packed = deflateRawSync(readFileSync(join(border, "sudsmark_border.wasm")), { level: 9 });
const readme = readFileSync(join(source, "README.md"), "utf8");
const card = /^```formula ebb-line\.formula\n([\s\S]*?)^```$/m.exec(readme)[1];
const results = readFileSync(join(source, "include/sudsmark/results.h"), "utf8");
const reminder = [.../reminder =((?:\s*"[^"]*")+);/.exec(results)[1].matchAll(/"([^"]*)"/g)]
  .map(([, words]) => words).join("");

const parts = {
  style: (await build({ entryPoints: ["style.css"], minify: true, write: false })).outputFiles[0].text,
  checker: lettered(packed),
  bytes: String(packed.length),
  worker: inScript(readFileSync(join(border, "sudsmark_border.js"), "utf8") + await bundled("worker.ts")),
  page: inScript(await bundled("main.ts")),
  card,
  reminder,
};
const html = readFileSync("index.html", "utf8")
  .replace(/\{\{(\w+)\}\}/g, (_, name) => parts[name]);
const most = 4e6;
if (Buffer.byteLength(html) > most) throw new Error(`the page has more than ${most} bytes`);
writeFileSync(page, html);
console.log(`${page}: ${(Buffer.byteLength(html) / 1e6).toFixed(2)} MB`);
