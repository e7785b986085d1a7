/** Figures of a report for people: their scale, their uncertainty, and how far they are from what they should be. */
import type { Estimate, Report } from "rimewise";
import { t } from "./text.js";
import { altitudeM, fromContract, show, unitName, type Scale, type Units } from "./units.js";
import { measurementName } from "./words.js";

/** The scale of a quantity, which its name carries. */
export function scaleOf(name: string, units: Units): Scale {
  if (name.endsWith("_kpa_per_min") || name === "kpa_per_min") return { of: "pressure_rise", unit: units.pressure };
  if (name === "swing_kpa" || name.endsWith("_span_kpa")) return { of: "pressure_span", unit: units.pressure };
  if (name.endsWith("_kpa")) return { of: "pressure", unit: units.pressure, gauge: units.gauge };
  if (name.endsWith("_c")) return { of: "temperature", unit: units.temperature };
  if (name.endsWith("_k")) return { of: "difference", unit: units.temperature };
  return { of: "plain" };
}

/** The unit of a quantity for people, empty for a ratio. */
export function unitOf(name: string, units: Units): string {
  if (name.endsWith("_a")) return "A";
  return unitName(scaleOf(name, units));
}

/** A figure with its standard uncertainty, in the units of one's choice. */
export function estimate(name: string, value: Estimate | null | undefined, units: Units): string {
  if (value === null || value === undefined) return "–";
  const scale = scaleOf(name, units);
  const spread: Scale =
    scale.of === "pressure" && scale.unit !== "inHg"
      ? { of: "pressure_span", unit: scale.unit }
      : scale.of === "temperature"
        ? { of: "difference", unit: scale.unit }
        : scale;
  const centre = show(fromContract(value.value, scale, altitudeM(units)), scale);
  return `${centre} ± ${show(fromContract(value.u, spread, 0), spread)}`;
}

/** One line of the table of what it does and what it should do. */
export interface FigureRow {
  name: string;
  label: string;
  unit: string;
  does: string;
  should: string;
  /** How many standard deviations apart, signed; absent where one of the two is missing. */
  apart?: number;
}

/** What a technician looks at first; the rest follows in the report's order. */
const FIRST = ["superheat_k", "compressor_superheat_k", "subcooling_k", "suction_saturation_c", "condensing_c", "pressure_ratio"];

/** The figures that can be shown; of a stopped machine only what was read. */
export function figures(report: Pick<Report, "cycle" | "expected">, units: Units, stopped = false): FigureRow[] {
  const cycle = report.cycle as unknown as Record<string, Estimate | null>;
  const expected = stopped ? {} : (report.expected as unknown as Record<string, Estimate | null>);
  const names = [...new Set([...FIRST, ...Object.keys(cycle)])];
  // Without a pressure of its own the evaporator's saturation is the suction's.
  const own = cycle["evaporator_saturation_c"]?.value !== cycle["suction_saturation_c"]?.value;
  return names
    .filter((name) => name !== "evaporator_saturation_c" || own)
    .filter((name) => (cycle[name] ?? null) !== null || (name in cycle && (expected[name] ?? null) !== null))
    .map((name) => {
      const does = cycle[name] ?? null;
      const should = expected[name] ?? null;
      return {
        name,
        label: measurementName(name),
        unit: unitOf(name, units),
        does: estimate(name, does, units),
        should: estimate(name, should, units),
        ...(does !== null && should !== null ? { apart: apartOf(does, should) } : {}),
      };
    });
}

/** How many standard deviations a figure is from what it should be, signed. */
export function apartOf(does: Estimate, should: Estimate): number {
  return (does.value - should.value) / Math.hypot(does.u, should.u);
}

/** How far apart a figure is from what it should be, in words. */
export function apartText(apart: number | undefined): string {
  if (apart === undefined || !Number.isFinite(apart)) return "";
  const way = apart > 0 ? "above" : "below";
  const size = Math.abs(apart);
  if (size < 1) return t("as_it_should");
  return t(size < 2 ? `somewhat_${way}` : size < 4 ? `clearly_${way}` : `far_${way}`);
}

/** The sign of a deviation beside its word: never colour alone. */
export function apartMark(apart: number | undefined): string {
  if (apart === undefined || !Number.isFinite(apart)) return "";
  return Math.abs(apart) < 1 ? "=" : apart > 0 ? "▲" : "▼";
}

export function percent(probability: number): string {
  if (probability < 0.005) return "< 1 %";
  if (probability > 0.995) return "> 99 %";
  return `${Math.round(probability * 100)} %`;
}
