/** Calculations beside the diagnosis: supply, capacitors, windings, rating maps, charge, costs. */
import * as module from "./glue/rimewise.js";
import { answer, fields, flag, line, number, numbersOf, plain, RimewiseError, started, text } from "./boundary.js";
import type { Costs, Decision, Estimate, PumpDownEnd, PumpDownValve, Report } from "./types.js";

/** A figure: exact, or with its standard uncertainty. */
export type Figure = number | Estimate;

function parts(figure: Figure, name: string): [value: number, u: number] {
  const given = plain(figure, name);
  if (typeof given === "number") return [given, 0];
  if (typeof given !== "object" || given === null) throw new RimewiseError("must be a number or an estimate", name);
  return [number(given.value, `${name}.value`), number(given.u, `${name}.u`)];
}

function estimate(pair: Float32Array): Estimate | null {
  const [value, u] = pair;
  return value === undefined || u === undefined ? null : { value, u };
}

function orNull(value: number): number | null {
  return Number.isNaN(value) ? null : value;
}

type Three = [number, number, number];

function three(values: readonly [number, number, number]): Three {
  if (!Array.isArray(values) || values.length !== 3) throw new RimewiseError("must be three numbers", "values");
  return [0, 1, 2].map((n) => number(values[n], `values.${n}`)) as Three;
}

/** Computes the unbalance of three values, percent (NEMA MG 1); null where they are not finite, or all zero. */
export function unbalancePercent(values: readonly [number, number, number]): number | null {
  started();
  return orNull(module.unbalancePercent(...three(values)));
}

/** Computes the fraction of its rating a three-phase motor may carry at a voltage unbalance; null above 5 %. */
export function derating(unbalance_percent: number): number | null {
  started();
  return orNull(module.derating(number(unbalance_percent, "unbalance_percent")));
}

/** Computes a capacitance, microfarad, from the current through it and the voltage across it. */
export function capacitanceUf(of: { current_a: Figure; voltage_v: Figure; hz: number }): Estimate | null {
  started();
  const { current_a, voltage_v, hz } = fields(of, "of");
  return estimate(
    module.capacitance(...parts(current_a, "current_a"), ...parts(voltage_v, "voltage_v"), number(hz, "hz")),
  );
}

/** The constant of a winding's metal, degC: copper (IEEE 112), copper (IEC 60034-1), aluminium. */
export const WINDING_CONSTANT_C = { copper: 234.5, copper_iec: 235, aluminium: 225 } as const;

/** Refers a winding resistance (ohm) from one temperature to another, degC. */
export function windingReferred(of: {
  resistance_ohm: Figure;
  from_c: Figure;
  to_c: number;
  metal?: keyof typeof WINDING_CONSTANT_C;
}): Estimate | null {
  started();
  const { resistance_ohm, from_c, to_c, metal } = fields(of, "of");
  const name = text(metal ?? "copper", "metal");
  if (!Object.hasOwn(WINDING_CONSTANT_C, name)) {
    throw new RimewiseError(`is one of ${Object.keys(WINDING_CONSTANT_C).join(", ")}`, "metal");
  }
  const constant = WINDING_CONSTANT_C[name as keyof typeof WINDING_CONSTANT_C];
  return estimate(
    module.windingReferred(...parts(resistance_ohm, "resistance_ohm"), ...parts(from_c, "from_c"), number(to_c, "to_c"), constant),
  );
}

/** Refers an insulation resistance (megohm) to 40 degC; it halves for every 10 K more. */
export function insulationAt40C(megohm: number, winding_c: number): number | null {
  started();
  return orNull(module.insulationAt40C(number(megohm, "megohm"), number(winding_c, "winding_c")));
}

/** Computes the locked-rotor current at the voltage the motor gets, A. */
export function lockedRotorAt(of: { locked_rotor_a: number; rated_v: number; voltage_v: number }): Estimate | null {
  started();
  const [locked_rotor_a, rated_v, voltage_v] = numbersOf(of, "locked_rotor_a", "rated_v", "voltage_v") as Three;
  return estimate(module.lockedRotorAt(locked_rotor_a, rated_v, voltage_v));
}

/** What the first moments after a start show; null where an input cannot be used. */
export function startVerdict(of: {
  inrush_a: number;
  /** At the voltage it had, see {@link lockedRotorAt}. */
  locked_rotor_a: number;
  /** Until the current fell below half of the inrush. */
  seconds_to_drop: number;
  settled_a: number;
}): "good" | "slow" | "locked_rotor" | "inrush_low" | null {
  started();
  const [inrush, locked, seconds, settled] = numbersOf(of, "inrush_a", "locked_rotor_a", "seconds_to_drop", "settled_a") as [
    ...Three,
    number,
  ];
  const verdict = module.startVerdict(inrush, locked, seconds, settled);
  return (verdict ?? null) as ReturnType<typeof startVerdict>;
}

/** What three resistances tell about unmarked terminals. */
export type Identification =
  | { status: "ok"; identification: "identified" | "ambiguous"; common: number; start: number; run: number }
  | { status: "ok"; identification: "inconsistent" }
  | { status: "ok"; identification: "open"; open: number };

/** Tells common, start and run from the resistances between unmarked terminals, ohm, with a usual hand meter. */
export function identifyTerminals(of: {
  terminal_12_ohm: number | "open";
  terminal_23_ohm: number | "open";
  terminal_13_ohm: number | "open";
}): Identification {
  started();
  const given = fields(of, "of");
  const ohm = (name: keyof typeof given) => {
    const value = given[name];
    return value === "open" ? Number.POSITIVE_INFINITY : number(value, name);
  };
  return answer(module.identifyTerminals(ohm("terminal_12_ohm"), ohm("terminal_23_ohm"), ohm("terminal_13_ohm")));
}

/** What a pump-down says by itself. */
export interface PumpDownAnswer {
  /** How low a compressor in good order pulls, kPa absolute. */
  expected_kpa: Estimate;
  verdict: "pulls_and_holds" | "pulls_and_leaks_back" | "cannot_pull" | "reached_stop" | "rise_unclear" | null;
}

/** Judges a pump-down; without `lowest_kpa` it only says what to expect. Pressures kPa absolute. */
export function pumpDown(of: {
  lowest_kpa?: number;
  rise_kpa_per_min?: number;
  valve?: PumpDownValve;
  ended_by?: PumpDownEnd;
  /** At the end of the test. */
  discharge_kpa: number;
  /** Of this machine running in good order. */
  running_suction_kpa: number;
  /** Of this machine running in good order. */
  running_discharge_kpa: number;
  /** The gauge's standard uncertainty; 2 kPa unless given. */
  gauge_u_kpa?: number;
}): PumpDownAnswer {
  started();
  const given = fields(of, "of");
  const { value, u, verdict } = answer<Estimate & Pick<PumpDownAnswer, "verdict">>(
    module.pumpDown(
      number(given.lowest_kpa ?? Number.NaN, "lowest_kpa"),
      number(given.rise_kpa_per_min ?? Number.NaN, "rise_kpa_per_min"),
      text(given.valve ?? "", "valve"),
      text(given.ended_by ?? "", "ended_by"),
      number(given.discharge_kpa, "discharge_kpa"),
      number(given.running_suction_kpa, "running_suction_kpa"),
      number(given.running_discharge_kpa, "running_discharge_kpa"),
      number(given.gauge_u_kpa ?? 2, "gauge_u_kpa"),
    ),
  );
  return { expected_kpa: { value, u }, verdict };
}

/** Superheat at the compressor inlet and subcooling at the condenser outlet, K. */
export interface ChargeState {
  superheat_k: Figure;
  subcooling_k: Figure;
}

/** Estimates the charge's deviation from the rated charge, as a fraction, or why it cannot be told. */
export function chargeDeviation(
  measured: ChargeState,
  rated: ChargeState,
  has: { receiver?: boolean; accumulator?: boolean; valve?: boolean } = {},
): { deviation: Estimate; blind: null } | { deviation: null; blind: "receiver" | "accumulator" | "no_subcooling" | "no_superheat" } {
  started();
  const states = [fields(measured, "measured"), fields(rated, "rated")];
  const { receiver, accumulator, valve } = fields(has, "has");
  const figures = states.flatMap((state, n) => [
    ...parts(state.superheat_k, `${n === 0 ? "measured" : "rated"}.superheat_k`),
    ...parts(state.subcooling_k, `${n === 0 ? "measured" : "rated"}.subcooling_k`),
  ]);
  const got = answer<Estimate & { blind: "receiver" | "accumulator" | "no_subcooling" | "no_superheat" | null }>(
    module.chargeDeviation(
      new Float32Array(figures),
      flag(receiver, "receiver"),
      flag(accumulator, "accumulator"),
      flag(valve, "valve"),
    ),
  );
  return got.blind === null
    ? { deviation: { value: got.value, u: got.u }, blind: null }
    : { deviation: null, blind: got.blind };
}

/** One rated quantity of a compressor: ten coefficients in the order of AHRI Standard 540, and where they hold. */
export interface RatingMap {
  /** C1 to C10. */
  coefficients: readonly number[];
  /** The scale of both dew temperatures in the coefficients. */
  scale: "celsius" | "fahrenheit";
  /** Corners of the envelope in order around it: evaporating and condensing dew temperature, degC. */
  envelope_c: readonly (readonly [evaporating_c: number, condensing_c: number])[];
  /** Standard uncertainty of a value of the map, as a fraction; 0.025 unless given. */
  spread?: number;
}

function list(values: readonly number[], name: string): Float32Array {
  if (!Array.isArray(values)) throw new RimewiseError("must be a list of numbers", name);
  return new Float32Array(values.map((value, n) => number(value, `${name}.${n}`)));
}

/** Reads a rating map at two dew temperatures, degC, in the map's unit. Throws outside its envelope. */
export function rate(map: RatingMap, at: { evaporating_c: number; condensing_c: number }): Estimate {
  started();
  const { coefficients, scale, envelope_c, spread } = fields(map, "map");
  const [evaporating_c, condensing_c] = numbersOf(at, "evaporating_c", "condensing_c") as [number, number];
  if (!Array.isArray(envelope_c)) throw new RimewiseError("must be a list of corners", "envelope_c");
  const { value, u } = answer<Estimate>(
    module.rate(
      scale === "fahrenheit",
      list(coefficients, "coefficients"),
      list(envelope_c.flat(), "envelope_c"),
      number(spread ?? Number.NaN, "spread"),
      evaporating_c,
      condensing_c,
    ),
  );
  return { value, u };
}

/** What a standing pressure says by itself. */
export interface StandingAnswer {
  status: "ok";
  /** On the curve, above the bubble curve (another gas or refrigerant), or below the dew curve (no liquid left). */
  verdict: "consistent" | "above_bubble" | "below_dew" | null;
  /** Bubble pressure at this temperature, kPa absolute. */
  bubble_kpa: number;
  /** Dew pressure at this temperature, kPa absolute. */
  dew_kpa: number;
}

/** Judges a standing pressure (kPa absolute) at the one temperature (degC) of a stopped, equalised machine. */
export function standingPressure(
  refrigerant: string,
  of: { pressure_kpa: Figure; temperature_c: Figure },
): StandingAnswer {
  started();
  const name = text(refrigerant, "refrigerant");
  const { pressure_kpa, temperature_c } = fields(of, "of");
  return answer(
    module.standingPressure(name, ...parts(pressure_kpa, "pressure_kpa"), ...parts(temperature_c, "temperature_c")),
  );
}

/** Computes what a charging hose holds; throws where pressure and temperature lie between bubble and dew. */
export function hoseContents(
  refrigerant: string,
  of: { length_m: number; inner_diameter_mm: number; pressure_kpa: number; temperature_c: number },
): { status: "ok"; mass_kg: number; phase: "vapor" | "liquid" } {
  started();
  const name = text(refrigerant, "refrigerant");
  const [length, diameter, pressure, temperature] = numbersOf(
    of,
    "length_m",
    "inner_diameter_mm",
    "pressure_kpa",
    "temperature_c",
  ) as [...Three, number];
  return answer(module.hoseContents(name, length, diameter, pressure, temperature));
}

/** What to do at the scale. */
export type WeighInPlan =
  | {
      plan: "charge";
      /** What the scale should fall by, kg. */
      by_scale_kg: Estimate;
      /** The uncertainty over the nameplate charge, as a fraction. */
      relative_u: number;
    }
  | {
      plan: "recover";
      /** What the machine holds beyond its nameplate, kg. */
      excess_kg: Estimate;
    };

/** Plans a weigh-in: the scale falls by nameplate less residual, with what stays in the hoses. All in kg. */
export function weighIn(of: {
  nameplate_kg: number;
  residual_kg?: Figure;
  left_in_hoses_kg?: Figure;
  scale_u_kg?: number;
}): WeighInPlan {
  started();
  const { nameplate_kg, residual_kg, left_in_hoses_kg, scale_u_kg } = fields(of, "of");
  const got = answer<{ plan: "charge" | "recover"; value: number; u: number; relative_u: number }>(
    module.weighIn(
      number(nameplate_kg, "nameplate_kg"),
      ...parts(residual_kg ?? 0, "residual_kg"),
      ...parts(left_in_hoses_kg ?? 0, "left_in_hoses_kg"),
      number(scale_u_kg ?? 0, "scale_u_kg"),
    ),
  );
  const { plan, value, u, relative_u } = got;
  return plan === "charge" ? { plan, by_scale_kg: { value, u }, relative_u } : { plan, excess_kg: { value, u } };
}

/** What to watch when a refrigerant is charged or has leaked. */
export interface Handling {
  status: "ok";
  /** Whether it is charged as liquid only, throttled so that none reaches the compressor. */
  charge_as_liquid_only: boolean;
  /** Whether a partial leak may have changed what is left: recover and weigh in new rather than top up. */
  leak_shifts_composition: boolean;
  /** Whether it can burn; unknown counts as yes. */
  flammable: boolean;
  /** Whether it is of the higher toxicity class; unknown counts as yes. */
  toxic: boolean;
}

/** Tells how to handle a refrigerant when it is charged or has leaked. */
export function handling(refrigerant: string): Handling {
  started();
  return answer(module.handling(text(refrigerant, "refrigerant")));
}

/** Weighs every way to go on by its expected cost; `test_settles` is the chance that the next test settles it. */
export function weigh(causes: Report["causes"], costs: Costs, test_settles = 0): Decision {
  started();
  if (!Array.isArray(causes)) throw new RimewiseError("must be a report's causes", "causes");
  const probabilities = Object.fromEntries(
    plain(causes, "causes").map(({ cause, probability }) => [cause, number(probability, "causes")]),
  );
  return answer(module.weigh(line({ probabilities, costs, test_settles })));
}
