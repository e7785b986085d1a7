/** The corners of a cycle on the pressure-enthalpy plane: measured, healthy, and the saturation dome around them. */
import { property, saturation, tableRange, RimewiseError, type Estimate, type Visit } from "rimewise";
import type { FullReport } from "./report.js";

export type CornerName = "evaporator_inlet" | "evaporator_outlet" | "compressor_inlet" | "compressor_outlet" | "liquid_line";

/** One corner of a cycle. */
export interface Corner {
  name: CornerName;
  /** Enthalpy, kJ/kg. */
  h: number;
  /** Pressure, kPa absolute. */
  p: number;
}

/** A cycle as far as it is known: corners in the order of the flow; a gap where a reading is missing. */
export type Cycle = (Corner | null)[];

/** A point of the dome. */
export interface Point {
  h: number;
  p: number;
}

export interface Diagram {
  liquid: Point[];
  vapor: Point[];
  /** Where both curves meet. */
  critical: Point;
  measured: Cycle;
  healthy: Cycle;
  /** The healthy cycle at the edges of its uncertainty, outer and inner. */
  band: [outer: Cycle, inner: Cycle] | undefined;
  /** From dew to the superheated vapor, and from bubble to the subcooled liquid, at their pressures. */
  superheat: [from: Point, to: Point] | undefined;
  subcooling: [from: Point, to: Point] | undefined;
}

/** Runs a property question; nothing where the state has no answer (two phases, outside the table). */
function maybe<T>(ask: () => T): T | undefined {
  try {
    return ask();
  } catch (error) {
    if (error instanceof RimewiseError) return undefined;
    throw error;
  }
}

const DOME_POINTS = 40;

/** The domes already computed: a refrigerant's never changes. */
const domes = new Map<string, { liquid: Point[]; vapor: Point[]; critical: Point } | undefined>();

/** The two saturation curves and the critical point, where they meet. */
function dome(refrigerant: string) {
  if (!domes.has(refrigerant)) domes.set(refrigerant, maybe(() => makeDome(refrigerant)));
  return domes.get(refrigerant);
}

function makeDome(refrigerant: string) {
  const range = tableRange(refrigerant);
  const critical_kpa = property({ refrigerant }).critical_kpa;
  const liquid: Point[] = [];
  const vapor: Point[] = [];
  const low = Math.log(Math.max(range.min_kpa, 20));
  const high = Math.log(range.max_kpa * 0.9999);
  for (let n = 0; n < DOME_POINTS; n++) {
    // Points gather toward the top, where the dome bends.
    const p = Math.exp(low + (high - low) * (1 - (1 - n / (DOME_POINTS - 1)) ** 2));
    const at = maybe(() => saturation(refrigerant, p));
    if (at === undefined) continue;
    liquid.push({ h: at.liquid_enthalpy_kj_kg, p });
    vapor.push({ h: at.vapor_enthalpy_kj_kg, p });
  }
  // The tables end below the critical point. The middle of both curves is nearly straight there (the rule of the
  // rectilinear diameter), so it is carried on to the critical pressure.
  const middle = (n: number) => ((liquid.at(n) as Point).h + (vapor.at(n) as Point).h) / 2;
  const top = (liquid.at(-1) as Point).p;
  const below = (liquid.at(-4) as Point).p;
  const slope = (middle(-1) - middle(-4)) / (top - below);
  const critical = { h: middle(-1) + slope * (Math.max(critical_kpa, top) - top), p: Math.max(critical_kpa, top) };
  return { liquid, vapor, critical };
}

function corner(refrigerant: string, name: CornerName, p: number | undefined, t: number | undefined): Corner | null {
  if (p === undefined || t === undefined) return null;
  const state = maybe(() => property({ refrigerant, pressure_kpa: p, temperature_c: t }));
  return state === undefined || state.phase === "two_phase" ? null : { name, h: state.enthalpy_kj_kg, p };
}

interface Places {
  suction?: number | undefined;
  evaporator?: number | undefined;
  discharge?: number | undefined;
  liquid?: number | undefined;
  evaporatorOutlet?: number | undefined;
  suctionLine?: number | undefined;
  dischargeLine?: number | undefined;
  liquidLine?: number | undefined;
}

function cycle(refrigerant: string, at: Places): Cycle {
  const low = at.evaporator ?? at.suction;
  const high = at.liquid ?? at.discharge;
  const liquid = corner(refrigerant, "liquid_line", high, at.liquidLine);
  const inlet: Corner | null = liquid !== null && low !== undefined ? { name: "evaporator_inlet", h: liquid.h, p: low } : null;
  return [
    inlet,
    corner(refrigerant, "evaporator_outlet", low, at.evaporatorOutlet),
    corner(refrigerant, "compressor_inlet", at.suction, at.suctionLine),
    corner(refrigerant, "compressor_outlet", at.discharge, at.dischargeLine),
    liquid,
    inlet,
  ];
}

/** The healthy cycle, its figures moved by so many standard deviations: outward widens it. */
function expectedCycle(refrigerant: string, report: FullReport, outward: number): Cycle {
  const e = report.expected;
  const moved = (value: Estimate | null, way: number) => (value === null ? undefined : value.value + outward * way * value.u);
  return cycle(refrigerant, {
    suction: moved(e.suction_pressure_kpa, -1),
    discharge: moved(e.discharge_pressure_kpa, 1),
    evaporatorOutlet: moved(e.evaporator_outlet_c, 1),
    suctionLine: moved(e.suction_line_c, 1),
    dischargeLine: moved(e.discharge_line_c, 1),
    liquidLine: moved(e.liquid_line_c, -1),
  });
}

/** Makes the diagram of what the library took; nothing where the refrigerant is not known. */
export function diagram(accepted: Visit, report: FullReport, stopped: boolean): Diagram | undefined {
  const refrigerant = accepted.system?.refrigerant;
  if (refrigerant === undefined || refrigerant === null) return undefined;
  const around = dome(refrigerant);
  if (around === undefined) return undefined;
  const r = accepted.readings ?? {};
  const measured: Cycle = stopped
    ? []
    : cycle(refrigerant, {
        suction: r.suction_pressure_kpa ?? undefined,
        evaporator: r.evaporator_pressure_kpa ?? undefined,
        discharge: r.discharge_pressure_kpa ?? undefined,
        liquid: r.liquid_pressure_kpa ?? undefined,
        evaporatorOutlet: r.evaporator_outlet_c ?? undefined,
        suctionLine: r.suction_line_c ?? undefined,
        dischargeLine: r.discharge_line_c ?? undefined,
        liquidLine: r.liquid_line_c ?? undefined,
      });
  const healthy = stopped ? [] : expectedCycle(refrigerant, report, 0);
  const [outer, inner] = stopped ? [[], []] : [expectedCycle(refrigerant, report, 1), expectedCycle(refrigerant, report, -1)];
  const whole = (one: Cycle) => one.length > 0 && one.every((point) => point !== null);
  const find = (name: CornerName) => measured.find((one) => one?.name === name) ?? undefined;
  const hot = find("evaporator_outlet") ?? find("compressor_inlet");
  const cold = find("liquid_line");
  const edge = (p: number, side: "vapor" | "liquid"): Point | undefined => {
    const at = maybe(() => saturation(refrigerant, p));
    return at === undefined ? undefined : { p, h: side === "vapor" ? at.vapor_enthalpy_kj_kg : at.liquid_enthalpy_kj_kg };
  };
  const dew = hot === undefined ? undefined : edge(hot.p, "vapor");
  const bubble = cold === undefined ? undefined : edge(cold.p, "liquid");
  return {
    ...around,
    measured,
    healthy,
    band: whole(outer) && whole(inner) ? [outer, inner] : undefined,
    superheat: dew !== undefined && hot !== undefined ? [dew, hot] : undefined,
    subcooling: bubble !== undefined && cold !== undefined ? [bubble, cold] : undefined,
  };
}

/** A cycle's corners that are known, each once. */
export function corners(of: Cycle): Corner[] {
  return of.filter((one, n): one is Corner => one !== null && of.indexOf(one) === n);
}
