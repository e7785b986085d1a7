/** Makes elements without a framework. */

type Child = Node | string | undefined | false;
type Attributes = Record<string, string | number | boolean | undefined | ((event: Event) => void)>;

/** Makes an element; functions become listeners, true an empty attribute, false and undefined none. */
export function h<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...children: Child[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === "function") element.addEventListener(name, value);
    else if (value === true) element.setAttribute(name, "");
    else if (value !== undefined && value !== false) element.setAttribute(name, String(value));
  }
  element.append(...children.filter((child): child is Node | string => child !== undefined && child !== false));
  return element;
}

/** Finds an element of the page that is always there. */
export function byId<T extends HTMLElement = HTMLElement>(id: string): T {
  const element = document.getElementById(id);
  if (element === null) throw new Error(`no element ${id}`);
  return element as T;
}

/** An id that a path can have; `place` tells the same field's rows apart, `f` is the sheet's. */
export function idOf(path: string, place = "f"): string {
  return `${place}-${path.replace(/\./g, "-")}`;
}

/** Makes an element of a drawing. */
export function s(tag: string, attributes: Attributes = {}, ...children: Child[]): SVGElement {
  const element = document.createElementNS("http://www.w3.org/2000/svg", tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === "function") element.addEventListener(name, value);
    else if (value === true) element.setAttribute(name, "");
    else if (value !== undefined && value !== false) element.setAttribute(name, String(value));
  }
  element.append(...children.filter((child): child is Node | string => child !== undefined && child !== false));
  return element;
}

const made = new WeakMap<Element, string>();

/** Fills an element anew only where what it is made of has changed: a browser lays out what is replaced. */
export function refill(element: Element, from: unknown, make: () => Child[]): void {
  const key = JSON.stringify(from);
  if (made.get(element) === key) return;
  made.set(element, key);
  element.replaceChildren(...make().filter((child): child is Node | string => child !== undefined && child !== false));
}

/** Writes a text where it is another than what stands there. */
export function write(element: Element, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}
