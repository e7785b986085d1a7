/** What was entered: kept as it was typed with the scale it was typed on, turned into a visit when asked. */
import type { Readings, Visit } from "rimewise";
import { FIELDS, type NumberField } from "./fields.js";
import {
  altitudeM,
  contractScale,
  parseNumber,
  sameScale,
  scaleFor,
  fromContract,
  show,
  toContract,
  USUAL_UNITS,
  type Scale,
  type Units,
} from "./units.js";

/** One entered figure. */
export interface Entry {
  text: string;
  scale: Scale;
}

/** Everything the page knows of the visit. */
export interface State {
  refrigerant: string;
  numbers: Record<string, Entry>;
  choices: Record<string, string | boolean>;
  record: { readings: Readings }[];
}

export function emptyState(): State {
  return { refrigerant: "", numbers: {}, choices: {}, record: [] };
}

/** A mistake that the page itself sees before the library is asked. */
export type Mistakes = Map<string, string>;

type Tree = Record<string, unknown>;

function put(tree: Tree, path: string, value: unknown): void {
  const steps = path.split(".");
  const last = steps.pop() as string;
  let at = tree;
  for (const step of steps) {
    at = (at[step] ??= {}) as Tree;
  }
  at[last] = value;
}

/** Reads a value at a path, or undefined. */
export function get(tree: unknown, path: string): unknown {
  return path.split(".").reduce<unknown>((at, step) => (at as Tree | null | undefined)?.[step], tree);
}

/** Takes a value out at a path; true where there was one. */
export function take(tree: unknown, path: string): boolean {
  const steps = path.split(".");
  const last = steps.pop() as string;
  const parent = get({ root: tree }, ["root", ...steps].join(".")) as Tree | undefined;
  if (parent === undefined || parent === null || !(last in parent)) return false;
  delete parent[last];
  return true;
}

/** Makes the visit of the contract from what was entered; what cannot be read is left out and said. */
export function toVisit(state: State, units: Units): { visit: Visit; mistakes: Mistakes } {
  const tree: Tree = {};
  const mistakes: Mistakes = new Map();
  const altitude = altitudeM(units);
  if (state.refrigerant !== "") put(tree, "system.refrigerant", state.refrigerant);
  const triples = new Map<string, (number | undefined)[]>();
  for (const [path, field] of FIELDS) {
    if (field.type === "choice") {
      const choice = state.choices[path];
      if (choice !== undefined) put(tree, path, choice);
      continue;
    }
    const entry = state.numbers[path];
    if (entry === undefined || entry.text.trim() === "") continue;
    if (field.kind === "open" && /^open$/i.test(entry.text.trim())) {
      put(tree, path, "open");
      continue;
    }
    const value = parseNumber(entry.text);
    if (value === undefined) {
      mistakes.set(path, field.kind === "open" ? "not a number; write a figure or “open”" : "not a number");
      continue;
    }
    const figure = toContract(value, entry.scale, altitude);
    const triple = /^(.*)\.([012])$/.exec(path);
    if (triple) {
      const list = triples.get(triple[1] as string) ?? [undefined, undefined, undefined];
      list[Number(triple[2])] = figure;
      triples.set(triple[1] as string, list);
    } else {
      put(tree, path, figure);
    }
  }
  for (const [path, list] of triples) {
    if (list.every((value) => value !== undefined)) {
      put(tree, path, list);
    } else {
      list.forEach((value, n) => {
        if (value === undefined) mistakes.set(`${path}.${n}`, "missing: the three count together");
      });
    }
  }
  if (state.record.length > 0) put(tree, "system.record", state.record);
  return { visit: tree as Visit, mistakes };
}

/** Makes the state of a visit that the library has accepted. */
export function fromVisit(visit: Visit): State {
  const state = emptyState();
  state.refrigerant = visit.system?.refrigerant ?? "";
  state.record = structuredClone(visit.system?.record ?? []) as { readings: Readings }[];
  for (const [path, field] of FIELDS) {
    const value = get(visit, path);
    if (value === undefined || value === null) continue;
    if (field.type === "choice") {
      state.choices[path] = value as string | boolean;
    } else {
      state.numbers[path] = { text: String(value), scale: contractScale(field.kind) };
    }
  }
  return state;
}

/** What a field shows: what was typed while its scale is the one in use, else the same figure on the one in use. */
export function shown(field: NumberField, entry: Entry | undefined, units: Units): string {
  if (entry === undefined) return "";
  const scale = scaleFor(field.kind, units);
  const value = parseNumber(entry.text);
  if (value === undefined || sameScale(entry.scale, scale)) return entry.text;
  const altitude = altitudeM(units);
  return show(fromContract(toContract(value, entry.scale, altitude), scale, altitude), scale);
}

const VISIT_KEY = "rimewise.visit";
const UNITS_KEY = "rimewise.units";

/** Keeps what was entered on this device. A browser that keeps nothing only loses the convenience. */
export function keep(state: State, units: Units): void {
  try {
    localStorage.setItem(VISIT_KEY, JSON.stringify(state));
    localStorage.setItem(UNITS_KEY, JSON.stringify(units));
  } catch {
    // Storage is full or switched off.
  }
}

/** Reads what was kept on this device. */
export function kept(): { state: State; units: Units } {
  const read = <T extends object>(key: string, usual: T): T => {
    try {
      const value: unknown = JSON.parse(localStorage.getItem(key) ?? "null");
      return value !== null && typeof value === "object" ? { ...usual, ...value } : usual;
    } catch {
      return usual;
    }
  };
  return { state: read(VISIT_KEY, emptyState()), units: read(UNITS_KEY, USUAL_UNITS) };
}
