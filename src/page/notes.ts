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
  if (note.group !== undefined) return note.group;
  if (note.weight === "note") return `${note.line} noted`;
  return `${note.line} ${note.rule} ${note.words}`;
}

export function gathered(margin: Margin): Gathered[] {
  const out = new Map<string, Gathered>();
  for (const note of margin.notes ?? []) {
    const key = keyOf(note);
    const line = Math.max(note.lines?.[0] ?? note.line, 1);
    const beside = out.get(key);
    if (beside) {
      if (beside.notes.some((one) => one.words === note.words)) continue;
      beside.notes.push(note);
      beside.line = Math.min(beside.line, line);
    } else {
      out.set(key, { key, weight: note.weight, line, notes: [note] });
    }
  }
  return [...out.values()].sort((a, b) => a.line - b.line || graver(a.weight, b.weight));
}
