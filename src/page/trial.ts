// Trying an amount: the card as a tweak that sets one line, and which verdicts turn by it.
import type { EditorView } from "@codemirror/view";

import { amountAt, middle, plain, weighedLine, withAmount } from "./amounts";
import type { LeewayLine, Margin, Note, Weight } from "./answers";
import { type BarHands, BarScale, sliderOf } from "./bars";
import type { Checker } from "./checker";
import { at, button, element } from "./element";
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

/** What the panel says: the line at an amount, and which verdicts turn. */
function told(line: LeewayLine, share: number, words: HTMLElement[]): HTMLElement[] {
  return [element("strong", {}, `${line.material} at ${plain(share, 3)} %`),
          element("ul", {}, ...(words.length > 0 ? words : [element("li", { class: "soft" }, "no verdict turns")]))];
}

export function trials(checker: Checker, view: EditorView, file: () => string,
                       now: () => Margin | undefined): BarHands {
  let asking = 0;
  const panel = at("trial");
  const hide = () => {
    ++asking;
    panel.hidden = true;
    panel.replaceChildren();
  };
  /** The verdicts at a share, as list items; none if another share was asked for meanwhile. */
  const turnedBy = async (line: LeewayLine, share: number): Promise<HTMLElement[] | undefined> => {
    const turn = ++asking;
    const text = view.state.doc.toString();
    const name = weighedLine(view.state.doc.line(line.line).text)?.name ?? line.material;
    const folder = file().replace(/[^/]*$/, "");
    const answer = await checker.ask<Margin>({
      what: "margin", files: { ...checker.surroundings.files, [file()]: text },
      card: { file: `${folder}trial of one line.formula`, text: tweakOf(file(), line, name, share) } });
    const before = now();
    if (turn !== asking || !before) return undefined;
    return answer.problems.length > 0
      ? answer.problems.map((one) => element("li", { class: "must" }, one.words))
      : turned(before, answer).map(({ weight, title }) =>
        element("li", { class: weight }, `${weights[weight].sign} ${weights[weight].words}: ${title}`));
  };
  const letGo = (line: LeewayLine, share: number) => {
    hide();
    const here = middle(line.share);
    const place = view.state.doc.line(line.line);
    const weighed = weighedLine(place.text);
    const written = weighed && amountAt(weighed.amount, here, share);
    if (!weighed || written === undefined || here === share) return;
    pencil(view, { from: place.from, to: place.to, insert: withAmount(weighed, written) },
           `${line.material} at ${written}`);
  };
  return {
    letGo,
    async trying(line, share) {
      const words = await turnedBy(line, share);
      if (!words) return;
      panel.replaceChildren(...told(line, share, words));
      panel.hidden = false;
    },
    asked(line) {
      hide();
      const scale = new BarScale(line);
      const words = element("div", { role: "status" });
      const show = async (share: number) => {
        const found = share === scale.here ? [] : await turnedBy(line, share);
        if (found) words.replaceChildren(...told(line, share, found));
      };
      const slider = sliderOf(line, scale, (share) => void show(share));
      const leave = () => {
        hide();
        view.focus();
      };
      void show(scale.here);
      panel.replaceChildren(words, slider,
        element("p", { class: "soft" }, `sound from ${scale.words()}`),
        element("p", { class: "actions" },
          button("write it", () => letGo(line, scale.share(slider.value))), button("leave it", leave)));
      panel.onkeydown = (event) => {
        if (event.key === "Escape") leave();
        if (event.key === "Enter" && event.target === slider) letGo(line, scale.share(slider.value));
      };
      panel.hidden = false;
      slider.focus();
    },
  };
}
