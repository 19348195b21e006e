// The amount of a line, read and put in the place of another. No arithmetic of the trade: figures
// come from the checker.

export interface Weighed {
  indent: string;
  amount: string;
  gap: string;
  name: string;
  rest: string;
}

const figure = String.raw`\d+(?:\.\d+)?(?:\/\d+)?`;
const unit = String.raw`(?:%|ppm|mg|kg|g|oz|lb|ml|l|parts?)`;
const weighed = new RegExp(
  String.raw`^(\s*)((?:q\.s\.)|(?:${figure}(?:\s*(?:-|to)\s*${figure})?\s*${unit}` +
  String.raw`(?:\s+${figure}\s*${unit})?(?:\s+per\s+(?:${figure}\s*)?(?:mg|kg|g|oz|lb))?))` +
  String.raw`(\s+(?:of\s+)?)("[^"]*"|[^#,]*?)(\s*(?:,.*|#.*)?)$`);

export function weighedLine(line: string): Weighed | undefined {
  const found = weighed.exec(line);
  if (!found) return undefined;
  const [, indent = "", amount = "", gap = "", name = "", rest = ""] = found;
  return { indent, amount, gap, name, rest };
}

/** The line with another amount, and what follows where it was as far as that can be. */
export function withAmount(line: Weighed, amount: string): string {
  const width = line.amount.length + line.gap.length;
  const gap = line.gap.trim() === "" ? " ".repeat(Math.max(1, width - amount.length)) : line.gap;
  return line.indent + amount + gap + line.name + line.rest;
}

/** As names are matched: without regard to case, quotes, hyphens and runs of blanks. */
export function folded(name: string): string {
  return name.replaceAll('"', "").toLowerCase().replace(/[\s_-]+/g, " ").trim();
}

/** At most so many digits that count, without an exponent. */
export function plain(figure: number, digits = 4): string {
  const rounded = Number(figure.toPrecision(digits));
  return rounded.toFixed(8).replace(/\.?0+$/, "");
}

/** Between both ends; none if one is not known. */
export function middle(figure: { low: number | null; high: number | null }): number | undefined {
  if (figure.low === null || figure.high === null) return undefined;
  return (figure.low + figure.high) / 2;
}

/** An amount as it is written, at another share of the product, in the unit that it has; none if
    that cannot be said so. */
export function amountAt(written: string, was: number | undefined, is: number | undefined): string | undefined {
  if (is === undefined) return undefined;
  if (/^[\d.\/]+\s*%$/.test(written)) return `${plain(is)} %`;
  const found = /^([\d.]+)\s*(mg|kg|g|oz|lb|ppm|parts?)(\s+per\s+.*)?$/.exec(written);
  if (!found || !was) return undefined;
  const [, figure = "", unit = "", dose = ""] = found;
  return `${plain(Number(figure) * is / was)} ${unit}${dose}`;
}
