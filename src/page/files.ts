// Opening and saving: the same bytes that the terminal reads; a link that carries the card; the last
// card kept in this browser only if the reader allows it.
import type { Checker } from "./checker";
import { element } from "./element";

export interface File {
  file: string;
  text: string;
}

const kept = "sudsmark card";
/** Files whose lines end as Windows ends them; the card itself knows only one end. */
const ended = new Set<string>();

export function save(file: string, text: string): void {
  const written = ended.has(file) ? text.replaceAll("\n", "\r\n") : text;
  const address = URL.createObjectURL(new Blob([written], { type: "text/plain;charset=utf-8" }));
  const link = element("a", { href: address, download: file.replace(/^.*\//, "") });
  document.body.append(link);
  link.click();
  link.remove();
  // not at once: some browsers begin to read only then
  setTimeout(() => URL.revokeObjectURL(address), 10000);
}

/** The text of a file; bytes that are no UTF-8 stay visible as what the checker refuses. */
async function read(from: Blob, path: string): Promise<string> {
  const text = new TextDecoder("utf-8", { ignoreBOM: true }).decode(await from.arrayBuffer());
  if (/\r\n/.test(text) && !/[^\r]\n/.test(text)) ended.add(path);
  return text;
}

/** Asks for files: formulas to open or to include, and rulesets of the reader's own. */
export function choose(whole: boolean, chosen: (files: Map<string, string>) => void): void {
  const input = element("input", { type: "file", ...(whole ? { webkitdirectory: true } : { multiple: true }) });
  input.addEventListener("change", async () => {
    const files = new Map<string, string>();
    for (const file of input.files ?? []) {
      const path = file.webkitRelativePath.replace(/^[^/]*\//, "") || file.name;
      if (/\.(formula|ya?ml)$/i.test(path)) files.set(path, await read(file, path));
    }
    if (files.size > 0) chosen(files);
  });
  input.click();
}

/** Puts files where the checker finds them; answers the formulas among them. */
export function surround(checker: Checker, files: Map<string, string>): string[] {
  const formulas: string[] = [];
  for (const [path, text] of files) {
    if (path.endsWith(".formula")) {
      checker.surroundings.files[path] = text;
      formulas.push(path);
    } else {
      checker.surroundings.rules = checker.surroundings.rules.filter((one) => one.path !== path);
      checker.surroundings.rules.push({ path, text });
    }
  }
  return formulas.sort();
}

/** Longer addresses are cut by programs that pass them on. */
const longestLink = 8000;

/** The card as what stands behind the # of an address; none if it is too long for one. */
export function linkTo({ file, text }: File): string | undefined {
  const bytes = new TextEncoder().encode(`${file}\n${text}`);
  if (bytes.length * 4 / 3 > longestLink) return undefined;
  const words = btoa(String.fromCharCode(...bytes)).replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");
  return `${location.href.replace(/#.*/, "")}#card=${words}`;
}

export function linked(): File | undefined {
  const found = /^#card=([\w-]+)$/.exec(location.hash);
  if (!found?.[1]) return undefined;
  try {
    const letters = atob(found[1].replaceAll("-", "+").replaceAll("_", "/"));
    const words = new TextDecoder("utf-8", { fatal: true })
      .decode(Uint8Array.from(letters, (letter) => letter.charCodeAt(0)));
    const end = words.indexOf("\n");
    return { file: words.slice(0, end), text: words.slice(end + 1) };
  } catch {
    return undefined;
  }
}

/** A browser may keep nothing for a page from a file: then nothing is kept. */
function trying<Value>(act: () => Value, otherwise: Value): Value {
  try {
    return act();
  } catch {
    return otherwise;
  }
}

export const memory = {
  read(): File | undefined {
    return trying(() => {
      const found = JSON.parse(localStorage.getItem(kept) ?? "null") as Partial<File> | null;
      return typeof found?.file === "string" && typeof found.text === "string"
        ? { file: found.file, text: found.text } : undefined;
    }, undefined);
  },
  /** Whether it could be kept. */
  keep(card: File): boolean {
    return trying(() => {
      localStorage.setItem(kept, JSON.stringify(card));
      return true;
    }, false);
  },
  forget(): void {
    trying(() => localStorage.removeItem(kept), undefined);
  },
};
