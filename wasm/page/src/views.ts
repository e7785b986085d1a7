/** The ways of working, one at a time on a phone; on a wide screen the answer stands beside each. */
import { byId } from "./dom.js";

export const VIEWS = ["guide", "machine", "sheet", "answer", "chart", "visits", "live"] as const;
export type View = (typeof VIEWS)[number];

const WIDE = matchMedia("(min-width: 60rem)");

let view: View = WIDE.matches ? "sheet" : "guide";
const opened: ((view: View) => void)[] = [];

/** Whether a view can be seen. */
export function isShown(which: View): boolean {
  return view === which || (which === "answer" && WIDE.matches);
}

export function isWide(): boolean {
  return WIDE.matches;
}

/** Adds what is to be done when a view comes into sight. */
export function onView(then: (view: View) => void): void {
  opened.push(then);
}

/** Brings a view into sight. */
export function goView(which: View, top = false): void {
  const same = view === which;
  view = which === "answer" && WIDE.matches ? view : which;
  mark();
  if (!same) for (const then of opened) then(view);
  if (top) scrollTo({ top: 0 });
}

function mark(): void {
  document.body.dataset["view"] = view;
  for (const one of VIEWS) {
    const tab = byId(`tab-${one}`);
    if (one === view) tab.setAttribute("aria-current", "page");
    else tab.removeAttribute("aria-current");
  }
}

/** Wires the row of views. */
export function wireViews(): void {
  for (const one of VIEWS) {
    byId(`tab-${one}`).addEventListener("click", () => goView(one, true));
  }
  WIDE.addEventListener("change", () => {
    if (WIDE.matches && view === "answer") view = "sheet";
    mark();
    for (const then of opened) then(view);
    if (WIDE.matches) for (const then of opened) then("answer");
  });
  mark();
}
