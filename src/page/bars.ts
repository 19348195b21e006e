// How far a line can go: a bar beside its amount, and on it a slider that tries another.
import { StateEffect, StateField } from "@codemirror/state";
import { Decoration, type DecorationSet, EditorView, WidgetType } from "@codemirror/view";

import { middle, plain } from "./amounts";
import type { LeewayLine } from "./answers";
import { narrow } from "./beside_lines";
import { button, element } from "./element";

export interface BarHands {
  /** While it is held: what another share would change. */
  trying(line: LeewayLine, share: number): void;
  /** Let go at a share; the same as before changes nothing. */
  letGo(line: LeewayLine, share: number): void;
  /** A wide slider for what is too small for a finger. */
  asked(line: LeewayLine): void;
}

const steps = 200;

/** What a line's bar shows: from nothing to a good deal more than there is. */
export class BarScale {
  readonly here: number;
  readonly end: number;
  readonly start: number;

  constructor(readonly line: LeewayLine) {
    this.here = middle(line.share) ?? 0;
    this.end = Math.min(100, Math.max(this.here * 2, Math.min(line.most.share, this.here * 4)) * 1.1) || 1;
    this.start = Math.round(this.here / this.end * steps);
  }

  share(value: string): number {
    return Number(value) === this.start ? this.here : Number(value) / steps * this.end;
  }
  words(): string {
    return `${plain(this.line.least.share, 3)} to ${plain(this.line.most.share, 3)} %`;
  }
  style(): string {
    const part = (share: number) => Math.min(100, Math.max(0, share / this.end * 100)).toFixed(1);
    return `--from: ${part(this.line.least.share)}%; --to: ${part(this.line.most.share)}%; ` +
           `--here: ${part(this.here)}%`;
  }
}

export function sliderOf(line: LeewayLine, scale: BarScale, trying: (share: number) => void): HTMLInputElement {
  const slider = element("input", {
    type: "range", class: "bar", min: "0", max: String(steps), style: scale.style(), title: scale.words(),
    "aria-label": `${line.material}: sound from ${scale.words()}`,
  });
  slider.value = String(scale.start);
  slider.setAttribute("aria-valuetext", `${plain(scale.here, 3)} %`);
  slider.addEventListener("input", () => {
    slider.setAttribute("aria-valuetext", `${plain(scale.share(slider.value), 3)} %`);
    trying(scale.share(slider.value));
  });
  return slider;
}

class Bar extends WidgetType {
  constructor(readonly line: LeewayLine, readonly hands: BarHands) {
    super();
  }
  override eq(other: Bar) {
    return JSON.stringify(other.line) === JSON.stringify(this.line);
  }
  toDOM() {
    const scale = new BarScale(this.line);
    if (narrow.matches) {
      return element("span", { class: "leeway" }, button("", () => this.hands.asked(this.line), {
        class: "bar", tabindex: "-1", style: scale.style(),
        "aria-label": `${this.line.material}: sound from ${scale.words()}; try another amount` }));
    }
    const slider = sliderOf(this.line, scale, (share) => this.hands.trying(this.line, share));
    slider.tabIndex = -1;
    slider.addEventListener("change", () => this.hands.letGo(this.line, scale.share(slider.value)));
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
