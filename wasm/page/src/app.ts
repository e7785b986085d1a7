/** What the page works on, and when it works: once a frame, however many keys are pressed in it. */
import type { Visit } from "rimewise";
import { answer } from "./answer.js";
import type { FullReport } from "./report.js";
import { emptyState, toVisit, type Mistakes, type State } from "./state.js";
import { USUAL_UNITS, type Units } from "./units.js";

export interface App {
  /** The name under which this visit is kept. */
  id: string;
  state: State;
  units: Units;
  /** The visit as far as it can be read. */
  visit: Visit;
  /** What of it the library took: what is drawn is drawn from this. */
  accepted: Visit;
  report: FullReport | undefined;
  mistakes: Mistakes;
  fault: string | undefined;
}

export const app: App = {
  id: "",
  state: emptyState(),
  units: USUAL_UNITS,
  visit: {},
  accepted: {},
  report: undefined,
  mistakes: new Map(),
  fault: undefined,
};

/** Shows the answer somewhere; `force` where what is being typed in is replaced too. */
type Show = (force: boolean) => void;

const shows: Show[] = [];

/** Adds a part of the page that follows the answer. Parts are shown in the order they were added. */
export function follow(show: Show): void {
  shows.push(show);
}

const details: Show[] = [];

/** Adds a part that may come a frame after the rest: what stands beside the field that is being typed in. */
export function followLater(show: Show): void {
  details.push(show);
}

let owed = false;

function showDetails(force: boolean): void {
  if (!owed) return;
  owed = false;
  for (const show of details) show(force);
}

let measured = 0;
let waiting = false;
let forced = false;
let last = -Infinity;

/** Answers what is entered, then shows it, then keeps it. */
function work(): void {
  if (!waiting) return;
  waiting = false;
  const force = forced;
  forced = false;
  const began = performance.now();
  const { visit, mistakes } = toVisit(app.state, app.units);
  const answered = answer(visit, mistakes);
  app.visit = visit;
  app.accepted = answered.accepted;
  app.report = answered.report;
  app.mistakes = answered.mistakes;
  app.fault = answered.fault;
  for (const show of shows) show(force);
  owed = true;
  if (force) showDetails(true);
  else requestAnimationFrame(() => setTimeout(showDetails, 0, false));
  last = performance.now();
  // The browser keeps every measure: not more of them than anybody looks at.
  if (++measured % 500 === 0) performance.clearMeasures("answer");
  performance.measure("answer", { start: began, end: last });
}

const FRAME = 16;

/** Asks for the work of a change: at once where none was done in this frame, else with the next one. */
export function changed(force = false): void {
  forced ||= force;
  if (waiting) return;
  waiting = true;
  if (performance.now() - last > FRAME) queueMicrotask(work);
  else requestAnimationFrame(work);
}

/** Does work that waits, now. */
export function settle(): void {
  work();
  showDetails(false);
}

/** Changes what is entered. */
export function edit(change: (state: State) => void): void {
  change(app.state);
  changed();
}
