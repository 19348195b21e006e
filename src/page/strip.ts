// The strip of limits that a maker knows by name: each on a scale with the band that is kept.
import type { NamedLimit } from "./answers";
import { drawn, element } from "./element";
import { weights } from "./note";

interface Scale {
  at(value: number): number;
}

const width = 150;

function scaleOf(limit: NamedLimit): Scale | undefined {
  const ends = [limit.measured?.low, limit.measured?.high, limit.limit?.low, limit.limit?.high]
    .filter((end): end is number => typeof end === "number");
  if (ends.length === 0) return undefined;
  const low = Math.min(0, ...ends);
  const high = Math.max(...ends);
  const room = (high - low) * 0.15 || 1;
  return { at: (value) => 4 + (width - 8) * (value - low) / (high + room - low) };
}

function picture(limit: NamedLimit): SVGElement {
  const scale = scaleOf(limit);
  const parts = [drawn("line", { x1: 0, x2: width, y1: 8, y2: 8, class: "axis" })];
  if (scale && limit.limit) {
    const from = limit.limit.low === null ? 4 : scale.at(limit.limit.low);
    const to = limit.limit.high === null ? width - 4 : scale.at(limit.limit.high);
    parts.push(drawn("rect", { x: from, y: 5, width: Math.max(to - from, 2), height: 6, rx: 3,
                               class: "band" }));
  }
  const low = limit.measured?.low ?? limit.measured?.high;
  const high = limit.measured?.high ?? limit.measured?.low;
  if (scale && typeof low === "number" && typeof high === "number") {
    const middle = (scale.at(low) + scale.at(high)) / 2;
    if (scale.at(high) - scale.at(low) > 3) {
      parts.push(drawn("line", { x1: scale.at(low), x2: scale.at(high), y1: 8, y2: 8, class: "reach" }));
    }
    parts.push(drawn("path", { d: `M${middle} 2 l5 6 l-5 6 l-5 -6 Z`,
                               class: `stand ${limit.weight}` }));
  }
  return drawn("svg", { viewBox: `0 0 ${width} 16`, class: "scale", "aria-hidden": "true" }, ...parts);
}

/** The figure, with the sign of what is not kept. */
function figure(limit: NamedLimit): HTMLElement {
  const words = limit.words.replace(/;.*/, "");
  return element("span", { class: "figure" },
    limit.weight === "kept" ? null : element("span", { class: "sign", "aria-hidden": "true" }, `${weights[limit.weight].sign} `),
    words);
}

export function stripOf(limits: NamedLimit[]): HTMLElement[] {
  return limits.map((limit) => element("li", { class: `limit ${limit.weight}` },
    element("span", { class: "name" }, limit.name), figure(limit), picture(limit),
    element("span", { class: "unseen" }, `${limit.verdict}: ${limit.words}`)));
}
