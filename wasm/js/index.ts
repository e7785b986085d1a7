/**
 * Diagnostics for small refrigeration machines: a visit in, a report out.
 *
 * Call `await init()` once; every other function is synchronous after it. Nothing leaves the device.
 */
import * as module from "./glue/rimewise.js";
import { answer, fields, flag, line, lineOf, number, RimewiseError, started, text } from "./boundary.js";
import type { Report, Visit } from "./types.js";

export { init, RimewiseError, type ModuleSource } from "./boundary.js";
export * from "./monitor.js";
export * from "./trade.js";
export type * from "./types.js";

/**
 * Diagnoses one visit: what the machine does, what it should do, what is probably wrong and how sure that is.
 *
 * Pressures are absolute, kPa; temperatures degC. What was not measured is left out. Throws a {@link RimewiseError}
 * that names the field for what no machine can show, an unknown field or a wrong type.
 */
export function diagnose(visit: Visit): Report {
  started();
  return answer<Report>(module.answerVisit(line(visit)));
}

/**
 * Answers one line of JSON with one line of JSON, errors included, exactly as the command-line example does.
 *
 * For JSON Lines from a file or a socket; {@link diagnose} is the same for objects. Throws where it is given no string,
 * or one longer than a million characters.
 */
export function diagnoseLine(json: string): string {
  started();
  return module.answerVisit(lineOf(json));
}

/** Bubble and dew temperature at a pressure. */
export interface SaturationTemperatures {
  status: "ok";
  /** Bubble temperature, degC. */
  bubble_c: number;
  /** Dew temperature, degC. */
  dew_c: number;
}

/** Bubble and dew pressure at a temperature. */
export interface SaturationPressures {
  status: "ok";
  /** Bubble pressure, kPa absolute. */
  bubble_kpa: number;
  /** Dew pressure, kPa absolute. */
  dew_kpa: number;
}

/** The state at a pressure and a temperature, outside the two-phase region. */
export interface SinglePhaseState {
  status: "ok";
  phase: "vapor" | "liquid";
  /** Density, kg/m3. */
  density_kg_m3: number;
  /** Specific enthalpy, kJ/kg, IIR reference state. */
  enthalpy_kj_kg: number;
  /** Specific entropy, kJ/(kg K), IIR reference state. */
  entropy_kj_kg_k: number;
}

/** A pressure and a temperature between bubble and dew: they do not fix the state. */
export interface TwoPhaseState {
  status: "ok";
  phase: "two_phase";
}

/** What is known of a refrigerant. */
export interface RefrigerantFacts {
  status: "ok";
  /** The designation as the library writes it. */
  designation: string;
  /** Components by mass. */
  composition: { component: string; mass_percent: number }[];
  /** ASHRAE 34 safety class; null where no source is at hand, and cautions then assume flammable and toxic. */
  safety_class: string | null;
  /** Critical temperature, degC. */
  critical_c: number;
  /** Critical pressure, kPa absolute. */
  critical_kpa: number;
  /** Molar mass, g/mol. */
  molar_mass_g_mol: number;
  /** Whether a pair of components has only estimated mixing parameters. */
  estimated_pair: boolean;
}

/** Bubble and dew temperature of a refrigerant at a pressure, kPa absolute. */
export function property(question: { refrigerant: string; pressure_kpa: number }): SaturationTemperatures;
/** Bubble and dew pressure of a refrigerant at a temperature, degC. */
export function property(question: { refrigerant: string; temperature_c: number }): SaturationPressures;
/** The state of a refrigerant at a pressure (kPa absolute) and a temperature (degC). */
export function property(question: {
  refrigerant: string;
  pressure_kpa: number;
  temperature_c: number;
}): SinglePhaseState | TwoPhaseState;
/** Composition, safety class and critical point of a refrigerant. */
export function property(question: { refrigerant: string }): RefrigerantFacts;
/** Every refrigerant there is a table for. */
export function property(question: { list: true }): { status: "ok"; refrigerants: string[] };
export function property(question: object): unknown {
  started();
  return answer(module.answerProperty(line(question)));
}

/** Both saturated states at one pressure. */
export interface Saturation {
  status: "ok";
  /** Bubble temperature, degC. */
  bubble_c: number;
  /** Dew temperature, degC. */
  dew_c: number;
  /** Density of the saturated liquid, kg/m3. */
  liquid_density_kg_m3: number;
  /** Enthalpy of the saturated liquid, kJ/kg. */
  liquid_enthalpy_kj_kg: number;
  /** Entropy of the saturated liquid, kJ/(kg K). */
  liquid_entropy_kj_kg_k: number;
  /** Density of the saturated vapor, kg/m3. */
  vapor_density_kg_m3: number;
  /** Enthalpy of the saturated vapor, kJ/kg. */
  vapor_enthalpy_kj_kg: number;
  /** Entropy of the saturated vapor, kJ/(kg K). */
  vapor_entropy_kj_kg_k: number;
}

/** Finds both saturated states of a refrigerant at a pressure, kPa absolute. */
export function saturation(refrigerant: string, pressure_kpa: number): Saturation {
  started();
  return answer(module.saturation(text(refrigerant, "refrigerant"), number(pressure_kpa, "pressure_kpa")));
}

/** What the table of a refrigerant covers. */
export interface TableRange {
  status: "ok";
  /** Lowest saturation temperature, degC. */
  min_c: number;
  /** Highest saturation temperature, degC. */
  max_c: number;
  /** Lowest pressure of both saturation curves, kPa absolute. */
  min_kpa: number;
  /** Highest pressure of both saturation curves, kPa absolute. */
  max_kpa: number;
  /** Bubble temperature at one standard atmosphere, degC. */
  normal_boiling_c: number;
  /** Dew less bubble temperature at one standard atmosphere, K. */
  glide_k: number;
}

/** Reads what the table of a refrigerant covers. */
export function tableRange(refrigerant: string): TableRange {
  started();
  return answer(module.tableRange(text(refrigerant, "refrigerant")));
}

/** Finds the temperature (degC) of superheated vapor from its pressure, kPa absolute, and its entropy, kJ/(kg K). */
export function vaporTemperatureAtEntropy(refrigerant: string, pressure_kpa: number, entropy_kj_kg_k: number): number {
  started();
  return answer<{ temperature_c: number }>(
    module.vaporAtEntropy(text(refrigerant, "refrigerant"), number(pressure_kpa, "pressure_kpa"), number(entropy_kj_kg_k, "entropy_kj_kg_k")),
  ).temperature_c;
}

/** Finds the temperature (degC) of superheated vapor from its pressure, kPa absolute, and its enthalpy, kJ/kg. */
export function vaporTemperatureAtEnthalpy(refrigerant: string, pressure_kpa: number, enthalpy_kj_kg: number): number {
  started();
  return answer<{ temperature_c: number }>(
    module.vaporAtEnthalpy(text(refrigerant, "refrigerant"), number(pressure_kpa, "pressure_kpa"), number(enthalpy_kj_kg, "enthalpy_kj_kg")),
  ).temperature_c;
}

/** The designations of every refrigerant there is a table for. */
export function refrigerants(): string[] {
  return property({ list: true }).refrigerants;
}

/** A pressure unit. */
export type PressureUnit = "kPa" | "bar" | "psi";

/** How a pressure is read: its unit, whether it is a gauge's, and where. */
export interface PressureScale {
  unit: PressureUnit;
  /** Whether the figure is above the local atmosphere; false: absolute. */
  gauge?: boolean;
  /** Altitude above sea level, m (ICAO standard atmosphere); 0 unless given, held within -500 to 11,000 m. */
  altitude_m?: number;
}

const PRESSURE_UNITS: readonly PressureUnit[] = ["kPa", "bar", "psi"];

/** Takes a scale apart: the number of its unit, whether it is a gauge's, and the altitude. */
function scaleParts(scale: PressureScale): [unit: number, gauge: boolean, altitude_m: number] {
  const { unit, gauge, altitude_m } = fields(scale, "scale");
  const index = PRESSURE_UNITS.indexOf(unit);
  if (index < 0) {
    throw new RimewiseError(`the unit is one of ${PRESSURE_UNITS.join(", ")}`, "unit");
  }
  return [index, flag(gauge, "gauge"), number(altitude_m ?? 0, "altitude_m")];
}

/** Turns a pressure as it was read into kPa absolute. */
export function pressureToKpa(value: number, scale: PressureScale): number {
  started();
  return module.pressureToKpa(number(value, "value"), ...scaleParts(scale));
}

/** Turns kPa absolute into the pressure as it reads on a scale. */
export function pressureFromKpa(kpa: number, scale: PressureScale): number {
  started();
  return module.pressureFromKpa(number(kpa, "kpa"), ...scaleParts(scale));
}

/** Pressure of the ICAO standard atmosphere at an altitude (m), kPa. */
export function atmosphereKpa(altitude_m: number): number {
  started();
  return module.atmosphereKpa(number(altitude_m, "altitude_m"));
}

/** A temperature unit. */
export type TemperatureUnit = "degC" | "degF";

function fahrenheit(unit: TemperatureUnit): boolean {
  if (unit !== "degC" && unit !== "degF") {
    throw new RimewiseError("the unit is degC or degF", "unit");
  }
  return unit === "degF";
}

/** Turns a temperature into degC. */
export function temperatureToC(value: number, unit: TemperatureUnit): number {
  started();
  const figure = number(value, "value");
  return fahrenheit(unit) ? module.celsiusFromFahrenheit(figure) : figure;
}

/** Turns degC into a temperature in a unit. */
export function temperatureFromC(celsius: number, unit: TemperatureUnit): number {
  started();
  const figure = number(celsius, "celsius");
  return fahrenheit(unit) ? module.fahrenheitFromCelsius(figure) : figure;
}

/** Turns a temperature difference into K. A difference is not a temperature: 18 degF of superheat are 10 K. */
export function differenceToK(value: number, unit: TemperatureUnit): number {
  started();
  const figure = number(value, "value");
  return fahrenheit(unit) ? module.kelvinsFromFahrenheit(figure) : figure;
}

/** Turns K into a temperature difference in a unit. */
export function differenceFromK(kelvins: number, unit: TemperatureUnit): number {
  started();
  const figure = number(kelvins, "kelvins");
  return fahrenheit(unit) ? module.fahrenheitFromKelvins(figure) : figure;
}

/** The library's version, equal to the package's. */
export function version(): string {
  started();
  return module.version();
}
