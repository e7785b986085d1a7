/**
 * Visits kept on this device, one entry each. Every tab works on a visit of its own: a second tab never writes over
 * the first one's.
 */
import { readState, readUnits, isEmpty, type State } from "./state.js";
import { unitsOfRegion, type Units } from "./units.js";

const VISIT = "rimewise.visit.";
const UNITS = "rimewise.units";
const RECENT = "rimewise.recent";
const STARTING = "rimewise.starting";
/** Where an earlier page kept its only visit. */
const EARLIER = "rimewise.visit";

/** A visit as it lies in the store. */
export interface Kept {
  id: string;
  /** When it was last changed, ms since 1970. */
  saved: number;
  state: State;
}

function read(storage: () => Storage, key: string): unknown {
  try {
    return JSON.parse(storage().getItem(key) ?? "null") as unknown;
  } catch {
    return null;
  }
}

/** Writes, where the browser keeps anything; one that keeps nothing only loses the convenience. */
function write(storage: () => Storage, key: string, value: unknown): boolean {
  try {
    if (value === null) storage().removeItem(key);
    else storage().setItem(key, JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}

const device = () => localStorage;
const tab = () => sessionStorage;

export function newId(): string {
  return `${Date.now().toString(36)}-${Math.random().toString(36).slice(2, 8)}`;
}

function keptIds(): string[] {
  try {
    return Object.keys(localStorage)
      .filter((key) => key.startsWith(VISIT))
      .map((key) => key.slice(VISIT.length));
  } catch {
    return [];
  }
}

/** Reads one visit; nothing where there is none. */
export function keptVisit(id: string): Kept | undefined {
  const value = read(device, VISIT + id);
  if (typeof value !== "object" || value === null) return undefined;
  const saved = (value as { saved?: unknown }).saved;
  return { id, saved: typeof saved === "number" ? saved : 0, state: readState((value as { state?: unknown }).state) };
}

/** Every visit kept, the latest first. */
export function keptVisits(): Kept[] {
  return keptIds()
    .map(keptVisit)
    .filter((visit): visit is Kept => visit !== undefined && !isEmpty(visit.state))
    .sort((a, b) => b.saved - a.saved);
}

/** Keeps a visit; false where the device is full or keeps nothing. */
export function keepVisit(id: string, state: State): boolean {
  return write(device, VISIT + id, isEmpty(state) ? null : { saved: Date.now(), state });
}

export function forgetVisit(id: string): void {
  write(device, VISIT + id, null);
}

/** Holds a visit for this tab as long as it lives; false where another tab holds it. */
async function hold(id: string): Promise<boolean> {
  if (!("locks" in navigator)) return true;
  return new Promise((resolve) => {
    navigator.locks
      .request(VISIT + id, { ifAvailable: true }, (lock) => {
        resolve(lock !== null);
        // Held until the tab goes, or the visit is let go.
        return lock === null ? undefined : new Promise<void>((release) => (letGo = release));
      })
      .catch(() => resolve(true));
  });
}

let letGo: (() => void) | undefined;

/** Makes a visit this tab's own; gives the id it then has, a new one where another tab holds the visit. */
export async function takeVisit(id: string): Promise<string> {
  letGo?.();
  letGo = undefined;
  let own = id;
  if (!(await hold(own))) {
    own = newId();
    await hold(own);
  }
  write(tab, "rimewise.tab", own);
  return own;
}

/** Takes a visit whose page before may not have gone yet, as at a reload. */
async function takeAgain(wanted: string): Promise<string> {
  let id = await takeVisit(wanted);
  for (let turn = 0; turn < 3 && id !== wanted; turn++) {
    await new Promise((resolve) => setTimeout(resolve, 60));
    id = await takeVisit(wanted);
  }
  return id;
}

/** Opens the visit that belongs into this tab: its own, else the latest that no other tab holds, else a new one. */
export async function openVisit(): Promise<{ id: string; state: State }> {
  const earlier = read(device, EARLIER);
  if (earlier !== null) {
    const id = newId();
    write(device, VISIT + id, { saved: Date.now(), state: readState(earlier) });
    write(device, EARLIER, null);
  }
  const own = read(tab, "rimewise.tab");
  if (typeof own === "string") {
    const kept = keptVisit(own);
    return { id: await takeAgain(own), state: kept?.state ?? readState(null) };
  }
  const latest = keptVisits()[0];
  if (latest !== undefined) {
    const id = await takeAgain(latest.id);
    if (id === latest.id) return { id, state: latest.state };
  }
  const id = await takeVisit(newId());
  return { id, state: readState(null) };
}

/** The units that were chosen, else those of the browser's region; `asked` tells whether they were chosen. */
export function keptUnits(): { units: Units; asked: boolean } {
  const usual = unitsOfRegion(navigator.language);
  const value = read(device, UNITS);
  return { units: readUnits(value, usual), asked: value !== null };
}

export function keepUnits(units: Units): void {
  write(device, UNITS, units);
}

/** The refrigerants picked lately, the last first. */
export function recentRefrigerants(): string[] {
  const value = read(device, RECENT);
  return Array.isArray(value) ? value.filter((name): name is string => typeof name === "string").slice(0, 4) : [];
}

export function rememberRefrigerant(name: string): void {
  write(device, RECENT, [name, ...recentRefrigerants().filter((other) => other !== name)].slice(0, 4));
}

/** Says that a start has begun; the next load sees when it never came to its end. */
export function startBegins(): boolean {
  const before = read(tab, STARTING) === true;
  write(tab, STARTING, true);
  return before;
}

export function startEnds(): void {
  write(tab, STARTING, null);
}

/** Lets go of everything this page keeps on the device. */
export function forgetTab(): void {
  write(tab, "rimewise.tab", newId());
  write(tab, STARTING, null);
}
