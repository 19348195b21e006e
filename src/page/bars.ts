// How far a line can go: a bar beside its amount, and on it a slider that tries another.
import { StateEffect, StateField } from "@codemirror/state";
import { Decoration, type DecorationSet, EditorView, WidgetType } from "@codemirror/view";

import { middle, plain } from "./amounts";
import type { LeewayLine } from "./answers";
import { element } from "./element";

export interface BarHands {
  /** While it is held: what another share would change. */
  trying(line: LeewayLine, share: number): void;
  /** Let go at a share; the same as before changes nothing. */
  letGo(line: LeewayLine, share: number): void;
}

const steps = 200;

class Bar extends WidgetType {
  constructor(readonly line: LeewayLine, readonly hands: BarHands) {
    super();
  }
  override eq(other: Bar) {
    return JSON.stringify(other.line) === JSON.stringify(this.line);
  }
  toDOM() {
    const { least, most, share, material } = this.line;
    const here = middle(share) ?? 0;
    const end = Math.min(100, Math.max(here * 2, Math.min(most.share, here * 4)) * 1.1) || 1;
    const part = (value: number) => Math.min(100, Math.max(0, value / end * 100));
    const value = (at: string) => here === 0 ? 0 : Number(at) / steps * end;
    const slider = element("input", {
      type: "range", class: "bar", min: "0", max: String(steps), tabindex: "-1",
      "aria-label": `${material}: sound from ${plain(least.share, 3)} to ${plain(most.share, 3)} %`,
      title: `${plain(least.share, 3)} to ${plain(most.share, 3)} %`,
      style: `--from: ${part(least.share)}%; --to: ${part(most.share)}%`,
    });
    const start = Math.round(here / end * steps);
    slider.value = String(start);
    slider.setAttribute("aria-valuetext", `${plain(here, 3)} %`);
    slider.addEventListener("input", () => {
      slider.setAttribute("aria-valuetext", `${plain(value(slider.value), 3)} %`);
      this.hands.trying(this.line, value(slider.value));
    });
    slider.addEventListener("change", () => {
      const now = Number(slider.value);
      this.hands.letGo(this.line, now === start ? here : value(slider.value));
    });
    return element("span", { class: "leeway" }, slider);
  }
  override ignoreEvent() {
    return true;
  }
}

const setBars = StateEffect.define<{ lines: LeewayLine[]; hands: BarHands }>();

export const bars = StateField.define<DecorationSet>({
  create: () => Decoration.none,
  update(value, transaction) {
    let out = value.map(transaction.changes);
    const text = transaction.state.doc;
    for (const effect of transaction.effects) {
      if (!effect.is(setBars)) continue;
      const ranges = effect.value.lines
        .filter((one) => one.line >= 1 && one.line <= text.lines)
        .map((one) => Decoration.widget({ widget: new Bar(one, effect.value.hands), side: 1 })
          .range(text.line(one.line).to));
      out = Decoration.set(ranges, true);
    }
    return out;
  },
  provide: (field) => EditorView.decorations.from(field),
});

export function showBars(view: EditorView, lines: LeewayLine[], hands: BarHands): void {
  view.dispatch({ effects: setBars.of({ lines, hands }) });
}
