/** What was entered: kept as it was typed with the scale it was typed on, turned into a visit when asked. */
import { diagnose, type Readings, type Visit } from "rimewise";
import { accepts } from "./accepts.js";
import { FIELDS, type NumberField } from "./fields.js";
import { parseNumber } from "./number.js";
import { get, put, type Tree } from "./tree.js";
import {
  altitudeM,
  contractScale,
  fromContract,
  readTyped,
  sameScale,
  scaleFor,
  show,
  toContract,
  type Scale,
  type Units,
  type Wrong,
} from "./units.js";

/** One entered figure. */
export interface Entry {
  text: string;
  scale: Scale;
}

/** Names that people give: they stay on the device and never go to the library. */
export interface About {
  machine: string;
  place: string;
  date: string;
  notes: string;
}

/** Everything the page knows of the visit. */
export interface State {
  refrigerant: string;
  /** The kind of machine that was picked, for the page's own use. */
  kind: string;
  numbers: Record<string, Entry>;
  choices: Record<string, string | boolean>;
  many: Record<string, string[]>;
  record: { readings: Readings }[];
  /** Readings, looks and actions that cannot be taken on this visit. */
  cannot: string[];
  about: About;
  /** The visit as it was before the job, for the proof. */
  before: Visit | null;
}

export function emptyState(): State {
  return {
    refrigerant: "",
    kind: "",
    numbers: {},
    choices: {},
    many: {},
    record: [],
    cannot: [],
    about: { machine: "", place: "", date: "", notes: "" },
    before: null,
  };
}

/** Whether anything was entered at all. */
export function isEmpty(state: State): boolean {
  return (
    state.refrigerant === "" &&
    Object.keys(state.numbers).length + Object.keys(state.choices).length + Object.keys(state.many).length === 0 &&
    Object.values(state.about).every((text) => text === "")
  );
}

/** A mistake that the page itself sees, or the library's refusal in words. */
export type Mistake = { wrong: Wrong | "three" | "open"; text?: undefined } | { wrong: "refused"; text: string };
export type Mistakes = Map<string, Mistake>;

/** Makes the visit of the contract from what was entered; what cannot be read is left out and said. */
export function toVisit(state: State, units: Units): { visit: Visit; mistakes: Mistakes } {
  const tree: Tree = {};
  const mistakes: Mistakes = new Map();
  const altitude = altitudeM(units);
  if (state.refrigerant !== "") put(tree, "system.refrigerant", state.refrigerant);
  const triples = new Map<string, (number | undefined)[]>();
  for (const [path, field] of FIELDS) {
    if (!accepts(path)) continue;
    if (field.type === "choice") {
      const choice = state.choices[path];
      if (choice !== undefined) put(tree, path, choice);
      continue;
    }
    if (field.type === "many") {
      const chosen = state.many[path];
      if (chosen !== undefined && chosen.length > 0) put(tree, path, chosen);
      continue;
    }
    const entry = state.numbers[path];
    if (entry === undefined || entry.text.trim() === "") continue;
    if (field.kind === "open" && /^(open|abierto)$/i.test(entry.text.trim())) {
      put(tree, path, "open");
      continue;
    }
    const read = readTyped(entry.text, field.kind, entry.scale, field.unit);
    if (typeof read === "string") {
      mistakes.set(path, { wrong: read === "none" && field.kind === "open" ? "open" : read });
      continue;
    }
    const figure = toContract(read.value, read.scale, altitude);
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
        if (value === undefined) mistakes.set(`${path}.${n}`, { wrong: "three" });
      });
    }
  }
  if (state.cannot.length > 0 && accepts("access.cannot")) put(tree, "access.cannot", state.cannot);
  if (state.record.length > 0) put(tree, "system.record", state.record);
  return { visit: tree as Visit, mistakes };
}

/** Makes the state of a visit that the library has accepted. */
export function fromVisit(visit: Visit): State {
  const state = emptyState();
  state.refrigerant = visit.system?.refrigerant ?? "";
  state.record = structuredClone(visit.system?.record ?? []) as { readings: Readings }[];
  const cannot = get(visit, "access.cannot");
  if (Array.isArray(cannot)) state.cannot = cannot.filter((name): name is string => typeof name === "string");
  for (const [path, field] of FIELDS) {
    const value = get(visit, path);
    if (value === undefined || value === null) continue;
    if (field.type === "choice") {
      state.choices[path] = value as string | boolean;
    } else if (field.type === "many") {
      state.many[path] = [...(value as string[])];
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
  if (sameScale(entry.scale, scale) || typeof parseNumber(entry.text) !== "number") return entry.text;
  const value = readTyped(entry.text, field.kind, entry.scale, field.unit);
  if (typeof value === "string") return entry.text;
  const altitude = altitudeM(units);
  return show(fromContract(toContract(value.value, value.scale, altitude), scale, altitude), scale);
}

const LONGEST = { figure: 40, name: 200, notes: 5000, list: 60 } as const;

const isTree = (value: unknown): value is Tree => typeof value === "object" && value !== null && !Array.isArray(value);

function isScale(value: unknown): value is Scale {
  if (!isTree(value)) return false;
  const unit = value["unit"];
  switch (value["of"]) {
    case "pressure":
      return ["psi", "bar", "kPa", "MPa", "inHg"].includes(unit as string) && typeof value["gauge"] === "boolean";
    case "pressure_rise":
    case "pressure_span":
      return ["psi", "bar", "kPa", "MPa"].includes(unit as string);
    case "temperature":
    case "difference":
      return unit === "degC" || unit === "degF";
    default:
      return value["of"] === "plain";
  }
}

/** Reads units that were kept, each by itself; what is of another shape is as usual. */
export function readUnits(value: unknown, usual: Units): Units {
  if (!isTree(value)) return usual;
  const one = <T extends string | boolean>(name: keyof Units, allowed: readonly T[], other: T): T =>
    allowed.includes(value[name] as T) ? (value[name] as T) : other;
  const altitude = value["altitude"];
  return {
    pressure: one("pressure", ["psi", "bar", "kPa", "MPa"], usual.pressure),
    gauge: one("gauge", [true, false], usual.gauge),
    temperature: one("temperature", ["degC", "degF"], usual.temperature),
    altitudeUnit: one("altitudeUnit", ["m", "ft"], usual.altitudeUnit),
    altitude: typeof altitude === "string" && altitude.length <= LONGEST.figure ? altitude : usual.altitude,
  };
}

/** Reads a state that was kept, entry by entry: what is of another shape is left out, the rest comes back. */
export function readState(value: unknown): State {
  const state = emptyState();
  if (!isTree(value)) return state;
  const text = (of: unknown, most: number): string => (typeof of === "string" && of.length <= most ? of : "");
  state.refrigerant = text(value["refrigerant"], LONGEST.figure);
  state.kind = text(value["kind"], LONGEST.figure);
  const section = (name: string): Tree => (isTree(value[name]) ? (value[name] as Tree) : {});
  for (const [path, entry] of Object.entries(section("numbers"))) {
    const field = FIELDS.get(path);
    if (field?.type !== "number" || !isTree(entry) || !isScale(entry["scale"])) continue;
    const typed = entry["text"];
    if (typeof typed === "string" && typed.length <= LONGEST.figure && entry["scale"].of === scaleFor(field.kind, PLAIN_UNITS).of) {
      state.numbers[path] = { text: typed, scale: entry["scale"] };
    }
  }
  for (const [path, chosen] of Object.entries(section("choices"))) {
    const field = FIELDS.get(path);
    if (field?.type === "choice" && field.options.some(([option]) => option === chosen)) {
      state.choices[path] = chosen as string | boolean;
    }
  }
  const names = (of: unknown): string[] =>
    Array.isArray(of) ? of.slice(0, LONGEST.list).filter((name): name is string => typeof name === "string" && name.length <= LONGEST.figure) : [];
  for (const [path, chosen] of Object.entries(section("many"))) {
    const field = FIELDS.get(path);
    if (field?.type !== "many") continue;
    const known = names(chosen).filter((name) => field.options.some(([option]) => option === name));
    if (known.length > 0) state.many[path] = known;
  }
  state.cannot = names(value["cannot"]);
  const about = section("about");
  state.about = {
    machine: text(about["machine"], LONGEST.name),
    place: text(about["place"], LONGEST.name),
    date: text(about["date"], LONGEST.figure),
    notes: text(about["notes"], LONGEST.notes),
  };
  if (Array.isArray(value["record"])) {
    state.record = value["record"].filter((one): one is { readings: Readings } => isVisit({ system: { record: [one] } }));
  }
  if (isVisit(value["before"]) && value["before"] !== null) state.before = value["before"] as Visit;
  return state;
}

const PLAIN_UNITS: Units = { pressure: "kPa", gauge: false, temperature: "degC", altitude: "0", altitudeUnit: "m" };

/** Whether the library takes something as a visit. */
function isVisit(value: unknown): boolean {
  if (!isTree(value)) return false;
  try {
    diagnose(value as Visit);
    return true;
  } catch {
    return false;
  }
}
