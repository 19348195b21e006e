// Elements in short.

type Child = Node | string | null | undefined | false;
type Attributes = Record<string, string | boolean | undefined | ((event: Event) => void)>;

/** An element with attributes (a function is a listener, e.g. onclick) and children. */
export function element<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag, attributes: Attributes = {}, ...children: Child[]): HTMLElementTagNameMap[Tag] {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === "function") made.addEventListener(name.slice(2), value);
    else if (value === true) made.setAttribute(name, "");
    else if (typeof value === "string") made.setAttribute(name, value);
  }
  for (const child of children) if (child) made.append(child);
  return made;
}

export function button(words: string, onclick: () => void, attributes: Attributes = {}) {
  return element("button", { type: "button", onclick, ...attributes }, words);
}

const svgSpace = "http://www.w3.org/2000/svg";

export function drawn(tag: string, attributes: Record<string, string | number>,
                      ...children: SVGElement[]): SVGElement {
  const made = document.createElementNS(svgSpace, tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, String(value));
  made.append(...children);
  return made;
}

/** What stands in the page at an id; the page is written with it. */
export function at<Kind extends HTMLElement>(id: string): Kind {
  return document.getElementById(id) as Kind;
}
