// The border of the page, loaded into node as the worker of the page loads it.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";

/** A function from a question to its answer. */
export async function border(folder) {
  const require = createRequire(import.meta.url);
  const made = await require(join(folder, "sudsmark_border.js"))(
    { wasmBinary: readFileSync(join(folder, "sudsmark_border.wasm")) });
  return (question) => {
    const words = JSON.stringify(question);
    const bytes = made.lengthBytesUTF8(words) + 1;
    const at = made._malloc(bytes);
    made.stringToUTF8(words, at, bytes);
    const answer = JSON.parse(made.UTF8ToString(made._sudsmark_answer(at)));
    made._free(at);
    return answer;
  };
}
