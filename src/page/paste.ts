// A list out of a spreadsheet or a web page ("450 g baking soda", "Citric acid<tab>225g") as lines
// of a card. Only its form is changed: what nobody weighs stays for the checker to refuse, and no
// line is left out silently.

const fractions: Record<string, string> = { "½": "1/2", "¼": "1/4", "¾": "3/4", "⅓": "1/3", "⅔": "2/3" };
const units: Record<string, string> = {
  gram: "g", grams: "g", gm: "g", gms: "g", gr: "g", g: "g", kilogram: "kg", kilograms: "kg",
  kilo: "kg", kilos: "kg", kg: "kg", kgs: "kg", mg: "mg", milligrams: "mg", ounce: "oz", ounces: "oz",
  oz: "oz", pound: "lb", pounds: "lb", lb: "lb", lbs: "lb", "%": "%", percent: "%", ml: "ml",
  millilitre: "ml", millilitres: "ml", milliliter: "ml", milliliters: "ml", l: "l", litre: "l",
  litres: "l", ppm: "ppm", part: "parts", parts: "parts", cup: "cup", cups: "cup", tsp: "tsp",
  teaspoon: "tsp", teaspoons: "tsp", tbsp: "tbsp", tablespoon: "tbsp", tablespoons: "tbsp",
  drop: "drops", drops: "drops", pinch: "pinch", handful: "handful",
};
const number = String.raw`\d+(?:[.,]\d+)?(?:\s*\/\s*\d+)?`;
const words = Object.keys(units).sort((a, b) => b.length - a.length)
  .map((word) => word.replace("%", "\\%")).join("|");
const first = new RegExp(String.raw`^(${number})\s*(${words})\.?(?=\s|$)\s*(?:of\s+)?(.+)$`, "i");
const last = new RegExp(String.raw`^(.+?)[\s:,;–—-]+\(?(${number})\s*(${words})\.?\)?$`, "i");

function tidied(line: string): string {
  return line
    .replace(/[½¼¾⅓⅔]/g, (sign) => fractions[sign] ?? sign)
    .replace(/^[\s•*·▢☐–-]+/, "")
    .replace(/\s+/g, " ")
    .trim();
}

/** A line of the list as a line of a card; none if it names no amount. */
function listed(line: string): string | undefined {
  const tidy = tidied(line);
  const front = first.exec(tidy);
  const found = front ? [front[1], front[2], front[3]] : (() => {
    const back = last.exec(tidy);
    return back ? [back[2], back[3], back[1]] : undefined;
  })();
  if (!found) return undefined;
  const [amount = "", unit = "", name = ""] = found;
  const clean = name.trim().replace(/[,;:.]+$/, "");
  const quoted = /[,#"()]/.test(clean) ? `"${clean.replaceAll('"', "")}"` : clean;
  return `  ${`${amount.replace(/\s/g, "")} ${units[unit.toLowerCase()] ?? unit}`.padEnd(9)} ${quoted}`;
}

/** What names no amount: a heading is a comment, all else stays as it is and is refused. */
function unlisted(line: string): string {
  const tidy = tidied(line);
  const heading = tidy.endsWith(":") || !/\p{L}|\d/u.test(tidy);
  return heading ? `  # ${tidy}` : `  ${tidy}`;
}

/** Every line of a list that is not blank, as a line of a card. */
export function linesOfList(list: string): string[] {
  return list.split(/\r?\n/).filter((line) => line.trim() !== "").map((line) => listed(line) ?? unlisted(line));
}

/** A pasted list as lines of a card; none if it is no list, or a card already. */
export function listAsLines(pasted: string): string[] | undefined {
  if (/^\s*(formula|tweak|phase|premix|portion|fragrance|material)\b/m.test(pasted)) return undefined;
  const lines = pasted.split(/\r?\n/).filter((line) => line.trim() !== "");
  const weighed = lines.filter((line) => listed(line) !== undefined).length;
  if (weighed < 2 || weighed * 2 < lines.length) return undefined;
  return linesOfList(pasted);
}
