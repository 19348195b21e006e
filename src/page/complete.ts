// What may be written next: names of the catalogue with what they are, units behind an amount, the
// words of statements and what they take. Offered, never written by itself.
import type { Completion, CompletionContext, CompletionResult } from "@codemirror/autocomplete";

import { folded } from "./amounts";
import type { Names } from "./answers";
import { sectionOf } from "./language";

const units = ["%", "g", "kg", "mg", "oz", "lb", "ppm", "parts", "g per kg"];
const sections = ["phase", "premix", "portion", "fragrance", "material", "workshop", "task", "label"];
const taken: Record<string, string[]> = {
  market: ["GB", "EU", "NI", "US", "CA"],
  forming: ["pressed", "hand moulded", "scooped", "rolled", "poured", "loose"],
  water: ["soft", "medium", "hard", "pure"],
  users: ["adults", "children over 3", "children under 3", "sensitive skin", "pregnant or nursing"],
};

function materialOptions(names: Names): Completion[] {
  const out: Completion[] = [];
  for (const material of names.materials) {
    const info = [material.what, material.inci].filter((words) => words !== "").join("; ");
    out.push({ label: material.name, detail: info });
    for (const also of material.also) {
      out.push({ label: also, detail: `${material.name}; ${info}`, boost: -1 });
    }
  }
  return out;
}

function own(context: CompletionContext): Completion[] {
  const out: Completion[] = [];
  for (const found of context.state.doc.toString().matchAll(/^(fragrance|premix)\s+("[^"\n]*")/gm)) {
    out.push({ label: found[2] ?? "", detail: `${found[1]} of this card`, boost: 2 });
  }
  return out;
}

const start = /^(\s*)((?:q\.s\.|(?:\d+(?:\.\d+)?(?:\s*(?:-|to)\s*\d+(?:\.\d+)?)?)\s*(?:%|ppm|mg|kg|g|oz|lb|ml|l|parts?)(?:\s+per\s+(?:mg|kg|g))?)\s+(?:of\s+)?)(\S.*)?$/;

export function completionOf(names: () => Names | undefined) {
  let options: Completion[] | undefined;
  return (context: CompletionContext): CompletionResult | null => {
    const known = names();
    const line = context.state.doc.lineAt(context.pos);
    const before = line.text.slice(0, context.pos - line.from);
    const weighed = start.exec(before);
    if (weighed && known) {
      const typed = weighed[3] ?? "";
      if (typed.length < 2 && !context.explicit) return null;
      options ??= materialOptions(known);
      const wanted = folded(typed);
      const words = wanted.split(" ");
      const found = [...own(context), ...options].filter((option) => {
        const label = folded(`${option.label} ${option.detail ?? ""}`);
        return words.every((word) => label.includes(word));
      });
      const begins = (option: Completion) => Number(folded(option.label).startsWith(wanted));
      found.sort((a, b) => begins(b) - begins(a) || (b.boost ?? 0) - (a.boost ?? 0) ||
                           a.label.length - b.label.length);
      return { from: context.pos - typed.length, options: found.slice(0, 12), filter: false };
    }
    const unit = /^\s*\d+(?:\.\d+)?(\s+(\w*|%))$/.exec(before);
    const section = sectionOf(context.state.doc, line.number);
    if (unit && ["phase", "premix", "portion", "fragrance"].includes(section)) {
      return { from: context.pos - (unit[2] ?? "").length,
               options: units.map((label, at) => ({ label, boost: -at })) };
    }
    const statement = /^\s*(product|market|forming|water|users)\s+(?:.*,\s*)?(\S*)$/.exec(before);
    if (statement && known) {
      const labels = statement[1] === "product" ? known.products.map((one) => one.name)
                                                : taken[statement[1] ?? ""] ?? [];
      return { from: context.pos - (statement[2] ?? "").length,
               options: labels.map((label) => ({ label })) };
    }
    const opening = /^\s*([a-z]+)$/.exec(before);
    if (opening && known) {
      const labels = section === "formula" ? [...known.statements, ...sections] : sections;
      return { from: context.pos - (opening[1] ?? "").length,
               options: labels.map((label) => ({ label })) };
    }
    return null;
  };
}
