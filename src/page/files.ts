// Opening and saving: the same bytes that the terminal reads; a link that carries the card; the last
// card kept in this browser only if the reader allows it.
import type { Checker } from "./checker";
import { element } from "./element";

const kept = "sudsmark card";

export function save(file: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: "text/plain;charset=utf-8" }));
  const link = element("a", { href: address, download: file });
  link.click();
  URL.revokeObjectURL(address);
}

/** Asks for files: formulas to open or to include, and rulesets of the reader's own. */
export function choose(whole: boolean, chosen: (files: Map<string, string>) => void): void {
  const input = element("input", { type: "file", ...(whole ? { webkitdirectory: true } : { multiple: true }) });
  input.addEventListener("change", async () => {
    const files = new Map<string, string>();
    for (const file of input.files ?? []) {
      const path = file.webkitRelativePath.replace(/^[^/]*\//, "") || file.name;
      if (/\.(formula|ya?ml)$/i.test(path)) files.set(path, await file.text());
    }
    chosen(files);
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

/** The card as what stands behind the # of an address. */
export function linkTo(file: string, text: string): string {
  const bytes = new TextEncoder().encode(`${file}\n${text}`);
  const words = btoa(String.fromCharCode(...bytes)).replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");
  return `${location.href.replace(/#.*/, "")}#card=${words}`;
}

export function linked(): { file: string; text: string } | undefined {
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

export const memory = {
  allowed(): boolean {
    try {
      return localStorage.getItem(kept) !== null;
    } catch {
      return false;
    }
  },
  read(): { file: string; text: string } | undefined {
    try {
      return JSON.parse(localStorage.getItem(kept) ?? "null") as { file: string; text: string } ?? undefined;
    } catch {
      return undefined;
    }
  },
  keep(file: string, text: string): void {
    try {
      localStorage.setItem(kept, JSON.stringify({ file, text }));
    } catch {
      // a browser may keep nothing for a page from a file: then nothing is kept
    }
  },
  forget(): void {
    try {
      localStorage.removeItem(kept);
    } catch {
      // nothing was kept
    }
  },
};
