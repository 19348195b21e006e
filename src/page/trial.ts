// Trying an amount: the card as a tweak that sets one line, and which verdicts turn by it.
import type { EditorView } from "@codemirror/view";

import { amountAt, middle, plain, weighedLine, withAmount } from "./amounts";
import type { LeewayLine, Margin, Note, Weight } from "./answers";
import type { BarHands } from "./bars";
import type { Checker } from "./checker";
import { at, element } from "./element";
import { weights } from "./note";
import { graver } from "./notes";
import { pencil } from "./pencil";

function byRule(margin: Margin): Map<string, Note> {
  const out = new Map<string, Note>();
  for (const note of margin.notes ?? []) {
    const key = `${note.rule} ${note.subject} ${note.about}`;
    const before = out.get(key);
    if (!before || graver(note.weight, before.weight) < 0) out.set(key, note);
  }
  return out;
}

/** What is graver or lighter than it was, the gravest first. */
export function turned(before: Margin, after: Margin): { weight: Weight; title: string }[] {
  const was = byRule(before);
  const is = byRule(after);
  const out: { weight: Weight; title: string }[] = [];
  for (const [key, note] of is) {
    if (was.get(key)?.weight !== note.weight) out.push({ weight: note.weight, title: note.title ?? note.rule });
  }
  for (const [key, note] of was) {
    if (!is.has(key)) out.push({ weight: "kept", title: note.title ?? note.rule });
  }
  return out.sort((a, b) => graver(a.weight, b.weight));
}

/** A tweak of the card that sets one line to a share and nothing more. */
function tweakOf(file: string, line: LeewayLine, name: string, share: number): string {
  return `tweak "${line.material.replaceAll('"', "")}" of "${file.replace(/^.*\//, "")}"\n` +
         `  set ${name} to ${plain(share)} %\n`;
}

export function trials(checker: Checker, view: EditorView, file: () => string,
                       now: () => Margin | undefined): BarHands {
  let asking = 0;
  const hide = () => {
    ++asking;
    at("trial").hidden = true;
    at("trial").replaceChildren();
  };
  return {
    async trying(line, share) {
      const turn = ++asking;
      const text = view.state.doc.toString();
      const name = weighedLine(view.state.doc.line(line.line).text)?.name ?? line.material;
      const folder = file().replace(/[^/]*$/, "");
      const answer = await checker.ask<Margin>({
        what: "margin", files: { ...checker.surroundings.files, [file()]: text },
        card: { file: `${folder}trial of one line.formula`, text: tweakOf(file(), line, name, share) } });
      const before = now();
      if (turn !== asking || !before) return;
      const words = answer.problems.length > 0
        ? answer.problems.map((one) => element("li", { class: "must" }, one.words))
        : turned(before, answer).map(({ weight, title }) =>
          element("li", { class: weight }, `${weights[weight].sign} ${weights[weight].words}: ${title}`));
      at("trial").replaceChildren(element("strong", {}, `${line.material} at ${plain(share, 3)} %`),
                                  element("ul", {}, ...words));
      at("trial").hidden = false;
    },
    letGo(line, share) {
      hide();
      const here = middle(line.share);
      const place = view.state.doc.line(line.line);
      const weighed = weighedLine(place.text);
      const written = weighed && amountAt(weighed.amount, here, share);
      if (!weighed || written === undefined || here === share) return;
      pencil(view, { from: place.from, to: place.to, insert: withAmount(weighed, written) },
             `${line.material} at ${written}`);
    },
  };
}
