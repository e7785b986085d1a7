/** The units of one's choice: what a typed figure means, and how a figure of the library is shown. */
import {
  differenceFromK,
  differenceToK,
  pressureFromKpa,
  pressureToKpa,
  temperatureFromC,
  temperatureToC,
  type PressureUnit,
  type TemperatureUnit,
} from "rimewise";
import type { Kind } from "./fields.js";

export interface Units {
  pressure: PressureUnit;
  gauge: boolean;
  temperature: TemperatureUnit;
  /** Altitude above sea level as typed, and its unit. */
  altitude: string;
  altitudeUnit: "m" | "ft";
}

export const USUAL_UNITS: Units = { pressure: "bar", gauge: true, temperature: "degC", altitude: "0", altitudeUnit: "m" };

const METRES_PER_FOOT = 0.3048;

/** The altitude in metres; sea level where it is not a number. */
export function altitudeM(units: Units): number {
  const typed = parseNumber(units.altitude) ?? 0;
  return units.altitudeUnit === "ft" ? typed * METRES_PER_FOOT : typed;
}

/** The scale a figure was typed on. A reading keeps it, so that changing units never rounds what was read. */
export type Scale =
  | { of: "pressure"; unit: PressureUnit; gauge: boolean }
  | { of: "pressure_rise" | "pressure_span"; unit: PressureUnit }
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

/** A figure on its scale, in the unit of the contract. Figures already in that unit pass untouched, to the last bit. */
export function toContract(value: number, scale: Scale, altitude_m: number): number {
  switch (scale.of) {
    case "pressure":
      if (scale.unit === "kPa" && !scale.gauge) return value;
      return short(pressureToKpa(value, { unit: scale.unit, gauge: scale.gauge, altitude_m }));
    case "pressure_rise":
    case "pressure_span":
      return scale.unit === "kPa" ? value : short(pressureToKpa(value, { unit: scale.unit }));
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
      return pressureFromKpa(value, { unit: scale.unit, gauge: scale.gauge, altitude_m });
    case "pressure_rise":
    case "pressure_span":
      return pressureFromKpa(value, { unit: scale.unit });
    case "temperature":
      return temperatureFromC(value, scale.unit);
    case "difference":
      return differenceFromK(value, scale.unit);
    case "plain":
      return value;
  }
}

/** How many decimals a scale deserves on screen. */
function decimals(scale: Scale): number {
  if (scale.of === "pressure" || scale.of === "pressure_rise" || scale.of === "pressure_span") {
    return scale.unit === "bar" ? 2 : scale.unit === "psi" ? 1 : 0;
  }
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

/** The name of a scale's unit. */
export function unitName(scale: Scale): string {
  switch (scale.of) {
    case "pressure":
      // As the trade writes it: psig, barg; psia, bara.
      return scale.unit === "kPa" ? `kPa ${scale.gauge ? "g" : "abs"}` : `${scale.unit}${scale.gauge ? "g" : "a"}`;
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

/** Reads what people type: a comma or a point, a minus sign of any kind. Nothing where it is no number. */
export function parseNumber(text: string): number | undefined {
  const plain = text.trim().replace(/[−–]/g, "-").replace(",", ".").replace(/\s+/g, "");
  if (!/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(plain)) return undefined;
  const value = Number(plain);
  return Number.isFinite(value) ? value : undefined;
}

/** The shortest decimal that reads back as the same binary32, so that saved files stay readable. */
export function short(value: number): number {
  for (let digits = 6; digits < 9; digits++) {
    const shorter = Number(value.toPrecision(digits));
    if (Math.fround(shorter) === Math.fround(value)) return shorter;
  }
  return value;
}
