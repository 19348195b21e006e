// Which notes stand beside which lines. What is alike on every card, and what is not known, is one
// quiet note each; what must or should change stands alone.
import type { Margin, Note, Weight } from "./answers";
import type { Gathered } from "./note";

const order: Weight[] = ["must", "should", "depends", "open", "note", "paper", "kept"];

export function graver(one: Weight, other: Weight): number {
  return order.indexOf(one) - order.indexOf(other);
}

/** Which note it becomes a part of. */
function keyOf(note: Note): string {
  if (note.weight === "paper") return "not known";
  const caution = note.weight === "note" && note.sum === undefined;
  if (caution && note.subject === "material") return "cautions";
  if (note.weight === "note" || note.weight === "open") return `${note.line} ${note.weight}`;
  return `${note.line} ${note.rule} ${note.words}`;
}

/** What it says; what is said already is not said again. */
function said(note: Note): string {
  if (note.weight === "paper") return note.missing?.join() ?? note.words;
  return note.subject === "material" && note.weight === "note" ? note.rule : note.words;
}

export function gathered(margin: Margin): Gathered[] {
  const out = new Map<string, Gathered>();
  const told = new Set<string>();
  for (const note of margin.notes ?? []) {
    if (note.allowed !== undefined) continue;
    const key = keyOf(note);
    const words = `${key} ${said(note)}`;
    if (told.has(words)) continue;
    told.add(words);
    const line = Math.max(note.line, 1);
    const beside = out.get(key);
    if (beside) {
      beside.notes.push(note);
      beside.line = Math.min(beside.line, line);
    } else {
      out.set(key, { key, weight: note.weight, line, notes: [note] });
    }
  }
  return [...out.values()].sort((a, b) => a.line - b.line || graver(a.weight, b.weight));
}
