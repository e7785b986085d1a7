/** The units of one's choice: what a typed figure means, and how a figure of the library is shown. */
import {
  differenceFromK,
  differenceToK,
  pressureFromKpa,
  pressureToKpa,
  temperatureFromC,
  temperatureToC,
  type TemperatureUnit,
} from "rimewise";
import type { Kind } from "./fields.js";
import { parseNumber, split, type Misread } from "./number.js";

/** A pressure unit of the page; `inHg` is inches of mercury of vacuum, below the atmosphere. */
export type PressureUnit = "psi" | "bar" | "kPa" | "MPa" | "inHg";

export interface Units {
  pressure: Exclude<PressureUnit, "inHg">;
  gauge: boolean;
  temperature: TemperatureUnit;
  /** Altitude above sea level as typed, and its unit. */
  altitude: string;
  altitudeUnit: "m" | "ft";
}

export const USUAL_UNITS: Units = { pressure: "bar", gauge: true, temperature: "degC", altitude: "0", altitudeUnit: "m" };

/** Regions whose trade reads psig and degF, and psig with degC (common practice). */
const PSI_AND_F = /^(US|LR|BS|BZ|KY|PW|FM|MH|PR|GU|VI|AS|MP)$/;
const PSI_AND_C = /^(CA|MX|GB|IN|AU|NZ|PH|CO|VE|EC|PE|DO|GT|HN|SV|NI|CR|PA|JM|TT|SA|AE|KW|QA|OM|BH|PK|BD|LK|MY|SG|TH|ID|ZA|NG|KE|EG)$/;
const MPA = /^(JP|CN|KR|TW)$/;

/** The units that are usual where the browser says it is. */
export function unitsOfRegion(tag: string): Units {
  let region = "";
  try {
    region = new Intl.Locale(tag).maximize().region ?? "";
  } catch {
    // A tag that is none says nothing.
  }
  if (PSI_AND_F.test(region)) return { ...USUAL_UNITS, pressure: "psi", temperature: "degF", altitudeUnit: "ft" };
  if (PSI_AND_C.test(region)) return { ...USUAL_UNITS, pressure: "psi" };
  if (MPA.test(region)) return { ...USUAL_UNITS, pressure: "MPa" };
  return USUAL_UNITS;
}

const METRES_PER_FOOT = 0.3048;

/** The altitude in metres; sea level where it is not a number. */
export function altitudeM(units: Units): number {
  const typed = parseNumber(units.altitude);
  if (typeof typed !== "number") return 0;
  return units.altitudeUnit === "ft" ? typed * METRES_PER_FOOT : typed;
}

/** What is wrong with the altitude as typed, or nothing. */
export function altitudeWrong(units: Units): Misread | "range" | undefined {
  const typed = parseNumber(units.altitude);
  if (typeof typed !== "number") return typed;
  const metres = altitudeM(units);
  return metres < -500 || metres > 11_000 ? "range" : undefined;
}

/** The scale a figure was typed on. A reading keeps it, so that changing units never rounds what was read. */
export type Scale =
  | { of: "pressure"; unit: PressureUnit; gauge: boolean }
  | { of: "pressure_rise" | "pressure_span"; unit: Units["pressure"] }
  | { of: "temperature" | "difference"; unit: TemperatureUnit }
  | { of: "plain" };

/** The scale on which a field of this kind is shown now. */
export function scaleFor(kind: Kind, units: Units): Scale {
  switch (kind) {
    case "pressure":
      return { of: "pressure", unit: units.pressure, gauge: units.gauge };
    case "pressure_rise":
    case "pressure_span":
      return { of: kind, unit: units.pressure };
    case "temperature":
    case "difference":
      return { of: kind, unit: units.temperature };
    default:
      return { of: "plain" };
  }
}

/** The scale of the contract: kPa absolute, degC, K. */
export function contractScale(kind: Kind): Scale {
  return scaleFor(kind, { ...USUAL_UNITS, pressure: "kPa", gauge: false, temperature: "degC" });
}

export function sameScale(a: Scale, b: Scale): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

/** Kilopascals in an inch of mercury at 0 degC (NIST SP 811, appendix B.8). */
const KPA_PER_INHG = 3.38638;

function toKpa(value: number, unit: PressureUnit, gauge: boolean, altitude_m: number): number {
  if (unit === "inHg") return pressureToKpa(-Math.abs(value) * KPA_PER_INHG, { unit: "kPa", gauge: true, altitude_m });
  if (unit === "MPa") return pressureToKpa(value * 1000, { unit: "kPa", gauge, altitude_m });
  return pressureToKpa(value, { unit, gauge, altitude_m });
}

function fromKpa(kpa: number, unit: PressureUnit, gauge: boolean, altitude_m: number): number {
  if (unit === "inHg") return -pressureFromKpa(kpa, { unit: "kPa", gauge: true, altitude_m }) / KPA_PER_INHG;
  if (unit === "MPa") return pressureFromKpa(kpa, { unit: "kPa", gauge, altitude_m }) / 1000;
  return pressureFromKpa(kpa, { unit, gauge, altitude_m });
}

/** A figure on its scale, in the unit of the contract. Figures already in that unit pass untouched, to the last bit. */
export function toContract(value: number, scale: Scale, altitude_m: number): number {
  switch (scale.of) {
    case "pressure":
      if (scale.unit === "kPa" && !scale.gauge) return value;
      return short(toKpa(value, scale.unit, scale.gauge, altitude_m));
    case "pressure_rise":
    case "pressure_span":
      return scale.unit === "kPa" ? value : short(toKpa(value, scale.unit, false, 0));
    case "temperature":
      return scale.unit === "degC" ? value : short(temperatureToC(value, scale.unit));
    case "difference":
      return scale.unit === "degC" ? value : short(differenceToK(value, scale.unit));
    case "plain":
      return value;
  }
}

/** A figure of the contract on a scale. */
export function fromContract(value: number, scale: Scale, altitude_m: number): number {
  switch (scale.of) {
    case "pressure":
      return fromKpa(value, scale.unit, scale.gauge, altitude_m);
    case "pressure_rise":
    case "pressure_span":
      return fromKpa(value, scale.unit, false, 0);
    case "temperature":
      return temperatureFromC(value, scale.unit);
    case "difference":
      return differenceFromK(value, scale.unit);
    case "plain":
      return value;
  }
}

/** How many decimals a scale deserves on screen. */
const DECIMALS: Record<PressureUnit, number> = { psi: 1, bar: 2, kPa: 0, MPa: 3, inHg: 1 };

function decimals(scale: Scale): number {
  if (scale.of === "pressure" || scale.of === "pressure_rise" || scale.of === "pressure_span") return DECIMALS[scale.unit];
  return scale.of === "plain" ? 2 : 1;
}

/** A figure as shown on a scale, with a true minus sign. */
export function show(value: number, scale: Scale): string {
  return figure(value, decimals(scale));
}

/** A number with at most so many decimals and a true minus sign. */
export function figure(value: number, places: number): string {
  const text = value.toFixed(places);
  return (Number(text) === 0 ? text.replace("-", "") : text).replace("-", "−");
}

/** A figure of the contract with its unit, as one reads it on one's own instruments; vacuum in inHg beside psi. */
export function reading(value: number, scale: Scale, altitude_m: number): string {
  const shown = fromContract(value, scale, altitude_m);
  if (scale.of === "pressure" && scale.unit === "psi" && scale.gauge && shown < -0.05) {
    const vacuum: Scale = { of: "pressure", unit: "inHg", gauge: true };
    return `${show(fromContract(value, vacuum, altitude_m), vacuum)} ${unitName(vacuum)}`;
  }
  return `${show(shown, scale)} ${unitName(scale)}`.trim();
}

/** The name of a scale's unit. */
export function unitName(scale: Scale): string {
  switch (scale.of) {
    case "pressure":
      // As the trade writes it: psig, barg; psia, bara; vacuum in inches of mercury.
      if (scale.unit === "inHg") return "inHg";
      return scale.unit === "kPa" || scale.unit === "MPa"
        ? `${scale.unit} ${scale.gauge ? "g" : "abs"}`
        : `${scale.unit}${scale.gauge ? "g" : "a"}`;
    case "pressure_rise":
      return `${scale.unit}/min`;
    case "pressure_span":
      return scale.unit;
    case "temperature":
      return scale.unit === "degC" ? "°C" : "°F";
    case "difference":
      return scale.unit === "degC" ? "K" : "°F";
    case "plain":
      return "";
  }
}

type Typed = { scale: Scale; factor?: number };

const PRESSURES: readonly (readonly [RegExp, PressureUnit, boolean | undefined])[] = [
  [/^(psig|lbs?|#)$/, "psi", true],
  [/^psia$/, "psi", false],
  [/^psi$/, "psi", undefined],
  [/^bar ?\(?g\)?$/, "bar", true],
  [/^bar ?\(?a(bs)?\)?$/, "bar", false],
  [/^bar$/, "bar", undefined],
  [/^kpa ?\(?g\)?$/, "kPa", true],
  [/^kpa ?\(?a(bs)?\)?$/, "kPa", false],
  [/^kpa$/, "kPa", undefined],
  [/^mpa ?\(?g\)?$/, "MPa", true],
  [/^mpa ?\(?a(bs)?\)?$/, "MPa", false],
  [/^mpa$/, "MPa", undefined],
  [/^(in ?hg|" ?hg|inches|in)( vac(uum)?)?$/, "inHg", true],
];

/** What may stand behind a plain figure: the field's unit itself, and a few that turn into it. */
const PLAIN: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  A: { a: 1, amp: 1, amps: 1, ma: 0.001 },
  V: { v: 1, volt: 1, volts: 1 },
  W: { w: 1, kw: 1000 },
  min: { min: 1, h: 60, s: 1 / 60 },
  h: { h: 1, min: 1 / 60 },
  Hz: { hz: 1 },
  ohm: { ohm: 1, ohms: 1, "ω": 1, kohm: 1000, "kω": 1000 },
  megohm: { megohm: 1, megohms: 1, mohm: 1, "mω": 1, "m": 1, gohm: 1000, "gω": 1000 },
  "µF": { "µf": 1, "μf": 1, uf: 1, mfd: 1 },
  kg: { kg: 1, g: 0.001, lb: 0.45359237, lbs: 0.45359237, oz: 0.028349523125 },
  "%": { "%": 1 },
};

/** What a unit behind a figure means for a field; nothing where it is none of the field's. */
function typedUnit(unit: string, kind: Kind, scale: Scale, plain: string | undefined): Typed | undefined {
  const name = unit.toLowerCase().replace(/\s+/g, " ").trim();
  if (kind === "pressure") {
    const found = PRESSURES.find(([form]) => form.test(name));
    if (found === undefined) return undefined;
    const usual = scale.of === "pressure" ? scale.gauge : true;
    return { scale: { of: "pressure", unit: found[1], gauge: found[2] ?? usual } };
  }
  if (kind === "pressure_rise" || kind === "pressure_span") {
    const found = PRESSURES.find(([form]) => form.test(name.replace(/ ?\/ ?min$/, "")));
    return found === undefined || found[1] === "inHg" ? undefined : { scale: { of: kind, unit: found[1] } };
  }
  if (kind === "temperature" || kind === "difference") {
    if (/^(°|deg|º)? ?f$/.test(name)) return { scale: { of: kind, unit: "degF" } };
    if (/^(°|deg|º)? ?c$/.test(name) || (kind === "difference" && name === "k")) return { scale: { of: kind, unit: "degC" } };
    return undefined;
  }
  const factor = PLAIN[plain ?? ""]?.[name];
  return factor === undefined ? undefined : { scale: { of: "plain" }, factor };
}

/** Why a typed text is no figure of a field. */
export type Wrong = Misread | "unit";

/** Reads what was typed in a field: a figure, with a unit of its own ("30 psi") or on the scale it was typed on. */
export function readTyped(text: string, kind: Kind, scale: Scale, plain?: string): { value: number; scale: Scale } | Wrong {
  const [digits, unit] = split(text);
  const value = parseNumber(digits);
  if (typeof value !== "number") return value;
  if (unit === "") return { value, scale };
  const typed = typedUnit(unit, kind, scale, plain);
  return typed === undefined ? "unit" : { value: value * (typed.factor ?? 1), scale: typed.scale };
}

/** The shortest decimal that reads back as the same binary32, so that saved files stay readable. */
export function short(value: number): number {
  for (let digits = 6; digits < 9; digits++) {
    const shorter = Number(value.toPrecision(digits));
    if (Math.fround(shorter) === Math.fround(value)) return shorter;
  }
  return value;
}
