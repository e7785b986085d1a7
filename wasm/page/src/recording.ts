/** Reads a recording: any CSV that tells its columns apart, with their units, or that is told which is which. */
import { diagnose, type Sample, type SampleNumbers, type Visit } from "rimewise";
import Papa from "papaparse";
import { parseNumber } from "./number.js";
import { t } from "./text.js";
import { toContract, type Scale, type Units } from "./units.js";
import { MEASUREMENT } from "./words.js";

export const CHANNELS: readonly (keyof SampleNumbers)[] = [
  "suction_pressure_kpa",
  "evaporator_pressure_kpa",
  "discharge_pressure_kpa",
  "liquid_pressure_kpa",
  "evaporator_outlet_c",
  "suction_line_c",
  "discharge_line_c",
  "liquid_line_c",
  "drier_outlet_c",
  "space_c",
  "supply_air_c",
  "ambient_c",
  "condenser_exhaust_c",
  "current_a",
  "voltage_v",
];

/** What a column is: time in seconds, a clock, a reading on a scale, or nothing that is used. */
export type Column = { is: "time"; seconds: number } | { is: "clock" } | { is: keyof SampleNumbers; scale: Scale } | { is: "out" };

export interface Recording {
  visit: Visit;
  samples: Sample[];
  names: (keyof SampleNumbers)[];
}

/** A table of text as it came out of a file. */
export interface Table {
  visit: Visit;
  header: string[];
  /** Cells and the line of the file that they stand on. */
  rows: { line: number; cells: string[] }[];
  /** Whether a comma separates decimals. */
  comma: boolean;
}

/** Splits a file into its cells. Throws an error that says where and why. */
export function readTable(text: string): Table {
  let visit: Visit = {};
  const lines = text.replace(/^\uFEFF/, "").split(/\r\n|\r|\n/);
  const body: { line: number; text: string }[] = [];
  lines.forEach((raw, n) => {
    if (raw.trim() === "") return;
    if (!raw.startsWith("#")) {
      body.push({ line: n + 1, text: raw });
      return;
    }
    const comment = raw.slice(1).trim();
    if (!comment.startsWith("{")) return;
    visit = JSON.parse(comment) as Visit;
    diagnose(visit);
  });
  if (body.length === 0) throw new Error(t("csv_empty"));
  const parsed = Papa.parse<string[]>(body.map((one) => one.text).join("\n"), { delimitersToGuess: [",", ";", "\t", "|"], skipEmptyLines: false });
  const broken = parsed.errors.find((error) => error.type === "Quotes");
  if (broken !== undefined) throw new Error(t("csv_line", { line: body[broken.row ?? 0]?.line ?? 1, why: t("csv_quotes") }));
  const [header, ...rest] = parsed.data;
  if (header === undefined || rest.length === 0) {
    if (header !== undefined && !header.some((name) => guess(name, PLAIN).is === "time")) throw new Error(t("csv_line", { line: body[0]?.line ?? 1, why: t("csv_no_time") }));
    throw new Error(t("csv_empty"));
  }
  const comma = parsed.meta.delimiter !== "," && rest.slice(0, 20).some((cells) => cells.some((cell) => /^\s*-?\d+,\d+\s*$/.test(cell)));
  return {
    visit,
    header: header.map((name) => name.trim()),
    rows: rest.map((cells, n) => ({ line: body[n + 1]?.line ?? n + 2, cells: cells.map((cell) => cell.trim()) })),
    comma,
  };
}

const PLAIN: Units = { pressure: "kPa", gauge: false, temperature: "degC", altitude: "0", altitudeUnit: "m" };

/** The units that may stand in a heading behind a name, in brackets or not. */
const HEADING: readonly (readonly [RegExp, Scale])[] = [
  [/\bpsig?\b/i, { of: "pressure", unit: "psi", gauge: true }],
  [/\bpsia\b/i, { of: "pressure", unit: "psi", gauge: false }],
  [/\bbar ?\(?g\)?\b|\bbarg\b/i, { of: "pressure", unit: "bar", gauge: true }],
  [/\bbar ?a\b|\bbara\b/i, { of: "pressure", unit: "bar", gauge: false }],
  [/\bbar\b/i, { of: "pressure", unit: "bar", gauge: true }],
  [/\bkpa ?g\b/i, { of: "pressure", unit: "kPa", gauge: true }],
  [/\bkpa\b/i, { of: "pressure", unit: "kPa", gauge: false }],
  [/\bmpa ?g?\b/i, { of: "pressure", unit: "MPa", gauge: true }],
  [/°? ?\bf\b|degf|fahrenheit/i, { of: "temperature", unit: "degF" }],
  [/°? ?\bc\b|degc|celsius/i, { of: "temperature", unit: "degC" }],
];

/** What people call the readings, for a first guess that can be changed. */
const CALLED: readonly (readonly [RegExp, keyof SampleNumbers])[] = [
  [/suction.*(press|psi|bar|kpa)|low.?side|baja|presi.n.*succi/i, "suction_pressure_kpa"],
  [/(discharge|head|high).*(press|psi|bar|kpa)|high.?side|alta|presi.n.*descarga/i, "discharge_pressure_kpa"],
  [/liquid.*(press|psi|bar|kpa)/i, "liquid_pressure_kpa"],
  [/evap.*(press|psi|bar|kpa)/i, "evaporator_pressure_kpa"],
  [/evap.*out|salida.*evap/i, "evaporator_outlet_c"],
  [/suction|succi/i, "suction_line_c"],
  [/discharge|descarga/i, "discharge_line_c"],
  [/drier|filter|filtro/i, "drier_outlet_c"],
  [/liquid|l.quido/i, "liquid_line_c"],
  [/supply|off.*evap|impulsi/i, "supply_air_c"],
  [/exhaust|off.*cond/i, "condenser_exhaust_c"],
  [/ambient|outdoor|ambiente/i, "ambient_c"],
  [/space|room|box|return|c.mara|espacio/i, "space_c"],
  [/current|amp|corriente/i, "current_a"],
  [/volt|tensi/i, "voltage_v"],
];

/** The scale of a channel in a heading, else the user's. */
function scaleIn(name: keyof SampleNumbers, heading: string, units: Units): Scale {
  const found = HEADING.find(([form]) => form.test(heading))?.[1];
  if (name.endsWith("_kpa")) return found?.of === "pressure" ? found : { of: "pressure", unit: units.pressure, gauge: units.gauge };
  if (name.endsWith("_c")) return found?.of === "temperature" ? found : { of: "temperature", unit: units.temperature };
  return { of: "plain" };
}

/** Guesses what a column is from its heading. The library's own names are certain. */
export function guess(heading: string, units: Units): Column {
  const name = heading.trim();
  if (name === "time_s") return { is: "time", seconds: 1 };
  const own = CHANNELS.find((channel) => channel === name);
  if (own !== undefined) {
    return { is: own, scale: own.endsWith("_kpa") ? { of: "pressure", unit: "kPa", gauge: false } : own.endsWith("_c") ? { of: "temperature", unit: "degC" } : { of: "plain" } };
  }
  if (/^(time|t|elapsed|tiempo)\b.*(\bms\b|milli)/i.test(name)) return { is: "time", seconds: 0.001 };
  if (/^(time|t|elapsed|tiempo)\b.*(\bmin)/i.test(name)) return { is: "time", seconds: 60 };
  if (/^(time|t|elapsed|tiempo|seconds)\b.*(\(?s\)?|sec)?$/i.test(name)) return { is: "time", seconds: 1 };
  if (/date|clock|stamp|fecha|hora/i.test(name)) return { is: "clock" };
  const spoken = name.replaceAll("_", " ");
  const called = CALLED.find(([form]) => form.test(spoken))?.[1] ?? CHANNELS.find((channel) => MEASUREMENT[channel]?.toLowerCase() === spoken.toLowerCase());
  return called === undefined ? { is: "out" } : { is: called, scale: scaleIn(called, spoken, units) };
}

/** Whether every column is known for certain, so that nobody has to be asked. */
export function isCertain(table: Table): boolean {
  return table.header.every((name) => name === "time_s" || (CHANNELS as readonly string[]).includes(name));
}

/** Turns a table into samples. Throws an error that says which line and why. */
export function samplesOf(table: Table, columns: Column[], altitude_m: number): Recording {
  const wrong = (line: number, why: string) => new Error(t("csv_line", { line, why }));
  if (!columns.some((column) => column.is === "time" || column.is === "clock")) throw wrong(1, t("csv_no_time"));
  const used = columns.map((column) => (column.is === "clock" ? "time" : column.is)).filter((is) => is !== "out");
  const twice = used.find((is, n) => used.indexOf(is) !== n);
  if (twice !== undefined) throw wrong(1, t("csv_twice", { name: twice === "time" ? t("map_time") : (MEASUREMENT[twice] ?? twice) }));
  const samples: Sample[] = [];
  let start: number | undefined;
  let before = -Infinity;
  for (const { line, cells } of table.rows) {
    if (cells.every((cell) => cell === "")) continue;
    if (cells.length !== table.header.length) throw wrong(line, t("csv_count", { columns: table.header.length, values: cells.length }));
    const sample: Record<string, number> = { time_ms: Number.NaN };
    columns.forEach((column, n) => {
      const cell = cells[n] as string;
      if (column.is === "out" || cell === "") return;
      if (column.is === "clock") {
        const clock = Date.parse(cell);
        if (Number.isNaN(clock)) throw wrong(line, t("csv_number", { name: table.header[n] as string, cell }));
        start ??= clock;
        sample["time_ms"] = clock - start;
        return;
      }
      const read = parseNumber(table.comma ? cell.replaceAll(".", "").replace(",", ".") : cell, false);
      if (typeof read !== "number") throw wrong(line, t("csv_number", { name: table.header[n] as string, cell }));
      if (column.is === "time") sample["time_ms"] = Math.floor(read * column.seconds * 1000 + 0.5);
      else sample[column.is] = toContract(read, column.scale, altitude_m);
    });
    const time = sample["time_ms"] as number;
    if (Number.isNaN(time)) throw wrong(line, t("csv_no_time"));
    if (time < before) throw wrong(line, t("csv_backward", { before: before / 1000, now: time / 1000 }));
    before = time;
    samples.push(sample as unknown as Sample);
  }
  const first = samples[0];
  if (first === undefined) throw new Error(t("csv_empty"));
  // The monitor's clock begins at nothing; one that began before, as a clock of the day may, is moved there.
  const begin = first.time_ms;
  if (begin < 0) for (const sample of samples) sample.time_ms -= begin;
  return { visit: table.visit, samples, names: columns.map((column) => column.is).filter((is): is is keyof SampleNumbers => (CHANNELS as readonly string[]).includes(is)) };
}
