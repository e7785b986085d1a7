/** The form: every input of a visit, in the order a technician meets them. */
import type { CompressorPlate, Design, Observations, Readings, System, Uncertainty } from "rimewise";
import { MEASUREMENT } from "./words.js";

/** What kind of figure a number field takes, which fixes its unit and its conversions. */
export type Kind = "pressure" | "pressure_rise" | "pressure_span" | "temperature" | "difference" | "plain" | "open";

export interface NumberField {
  type: "number";
  path: string;
  label: string;
  kind: Kind;
  /** The unit shown for `plain` and `open` fields. */
  unit?: string;
  /** Whether a minus sign is likely, so that a key for it is offered. */
  signed?: boolean;
  hint?: string;
}

export interface ChoiceField {
  type: "choice";
  path: string;
  label: string;
  options: readonly (readonly [string | boolean, string])[];
  hint?: string;
}

export type Field = NumberField | ChoiceField;

export interface Group {
  id: string;
  title: string;
  /** Whether the group starts open. */
  open: boolean;
  hint?: string;
  fields: readonly Field[];
}

type Row = readonly [kind: Kind, label: string, unit?: string | undefined, hint?: string | undefined];

function numbers<T>(section: string, rows: { [K in keyof T]?: Row }, signedAll = false): NumberField[] {
  return Object.entries<Row | undefined>(rows as Record<string, Row | undefined>).map(([name, row]) => {
    const [kind, label, unit, hint] = row as Row;
    const signed = signedAll || kind === "temperature" || kind === "pressure";
    return {
      type: "number" as const,
      path: `${section}.${name}`,
      label,
      kind,
      signed,
      ...(unit === undefined ? {} : { unit }),
      ...(hint === undefined ? {} : { hint }),
    };
  });
}

type NumberName<T> = Exclude<keyof T, "running" | "pump_down_valve" | "pump_down_ended_by">;

function readings(rows: { [K in NumberName<Readings>]?: readonly [kind: Kind, unit?: string | undefined, hint?: string | undefined] }): NumberField[] {
  const named: Record<string, Row> = {};
  for (const [name, row] of Object.entries(rows)) {
    const [kind, unit, hint] = row as readonly [Kind, string | undefined, string | undefined];
    named[name] = [kind, MEASUREMENT[name as keyof typeof MEASUREMENT], unit, hint];
  }
  return numbers<Readings>("readings", named);
}

function three(name: "line_voltages_v" | "line_currents_a", label: string, unit: string): NumberField[] {
  return [0, 1, 2].map((n) => ({
    type: "number" as const,
    path: `readings.${name}.${n}`,
    label: `${label} ${n + 1}`,
    kind: "plain" as const,
    unit,
    ...(n === 0 ? { hint: "all three count together" } : {}),
  }));
}

const YES_NO = [
  [true, "yes"],
  [false, "no"],
] as const;

const system: Field[] = [
  {
    type: "choice",
    path: "system.duty",
    label: "Duty",
    options: [
      ["freezer", "freezer"],
      ["cooler", "cooler"],
      ["air_conditioning", "air conditioning"],
    ],
  },
  {
    type: "choice",
    path: "system.metering",
    label: "Metering device",
    options: [
      ["capillary", "capillary"],
      ["orifice", "orifice"],
      ["thermostatic_valve", "thermostatic valve"],
      ["electronic_valve", "electronic valve"],
    ],
  },
  { type: "choice", path: "system.receiver", label: "Liquid receiver", options: YES_NO },
  {
    type: "choice",
    path: "system.suction_pressure_regulator",
    label: "Suction pressure regulator",
    options: YES_NO,
  },
];

export const GROUPS: readonly Group[] = [
  { id: "machine", title: "Machine", open: true, fields: system },
  {
    id: "plate",
    title: "Compressor plate and charge",
    open: false,
    fields: [
      ...numbers<CompressorPlate>("system.compressor", {
        rated_load_a: ["plain", "Rated-load current", "A", "a machine at its design point usually runs below it"],
        locked_rotor_a: ["plain", "Locked-rotor current", "A"],
        rated_v: ["plain", "Rated voltage", "V"],
        phases: ["plain", "Phases", "", "1 or 3"],
        hz: ["plain", "Frequency", "Hz"],
        run_winding_ohm: ["open", "Run winding, data sheet", "ohm"],
        start_winding_ohm: ["open", "Start winding, data sheet", "ohm"],
        winding_reference_c: ["temperature", "Data sheet's winding temperature"],
        run_capacitor_uf: ["open", "Run capacitor, rated", "µF"],
        start_capacitor_uf: ["open", "Start capacitor, rated", "µF"],
      } satisfies Record<keyof CompressorPlate, Row>),
      ...numbers<System>("system", {
        run_capacitor_tolerance_percent: ["plain", "Run capacitor tolerance", "%", "6 % unless given"],
        charge_kg: ["plain", "Charge on the plate", "kg"],
      }),
    ],
  },
  {
    id: "design",
    title: "Design point, as far as known",
    open: false,
    hint: "What is left out falls back to what is usual for the duty and metering, with its wide spread.",
    fields: numbers<Design>("system.design", {
      space_c: ["temperature", "Space air"],
      ambient_c: ["temperature", "Air onto the condenser"],
      evaporator_td_k: ["difference", "Space air over evaporating"],
      condenser_td_k: ["difference", "Condensing over ambient"],
      suction_superheat_k: ["difference", "Superheat at the compressor"],
      subcooling_k: ["difference", "Subcooling"],
      suction_pressure_kpa: ["pressure", "Target suction pressure", undefined, "goes before the difference to space air"],
      discharge_pressure_kpa: ["pressure", "Target discharge pressure", undefined, "goes before the difference to ambient"],
    } satisfies Record<keyof Design, Row>),
  },
  {
    id: "pressures",
    title: "Pressures",
    open: true,
    fields: readings({
      suction_pressure_kpa: ["pressure", undefined, "at the compressor"],
      discharge_pressure_kpa: ["pressure", undefined, "at the compressor"],
      evaporator_pressure_kpa: ["pressure", undefined, "at the evaporator outlet"],
      liquid_pressure_kpa: ["pressure", undefined, "at the condenser or receiver outlet"],
    }),
  },
  {
    id: "pipes",
    title: "Pipe temperatures",
    open: true,
    fields: readings({
      evaporator_outlet_c: ["temperature"],
      suction_line_c: ["temperature"],
      discharge_line_c: ["temperature"],
      liquid_line_c: ["temperature"],
      drier_outlet_c: ["temperature"],
    }),
  },
  {
    id: "air",
    title: "Air temperatures",
    open: true,
    fields: readings({
      space_c: ["temperature", undefined, "onto the evaporator"],
      supply_air_c: ["temperature"],
      ambient_c: ["temperature"],
      condenser_exhaust_c: ["temperature"],
      space_wet_bulb_c: ["temperature"],
    }),
  },
  {
    id: "seen",
    title: "Seen and heard",
    open: true,
    fields: [
      {
        type: "choice",
        path: "observations.start_noise",
        label: "Noise at the start",
        options: [
          ["none", "none"],
          ["fades", "loud, fades"],
          ["stays", "loud, stays"],
        ],
      },
      { type: "choice", path: "observations.frost_on_compressor", label: "Frost or sweat on the compressor", options: YES_NO },
      {
        type: "choice",
        path: "observations.sight_glass",
        label: "Sight glass",
        options: [
          ["clear", "clear"],
          ["bubbles", "bubbles"],
          ["none_fitted", "none fitted"],
        ],
      },
      { type: "choice", path: "observations.coil_iced", label: "Evaporator coil iced over", options: YES_NO },
    ] satisfies (Field & { path: `observations.${keyof Observations}` })[],
  },
  {
    id: "running",
    title: "Current, voltage, run time",
    open: true,
    fields: [
      ...readings({
        current_a: ["plain", "A"],
        voltage_v: ["plain", "V"],
        power_w: ["plain", "W"],
        minutes_running: ["plain", "min"],
        start_current_a: ["plain", "A"],
      }),
      {
        type: "choice",
        path: "readings.running",
        label: "While the pressures were read the compressor was",
        options: [
          [true, "running"],
          [false, "stopped"],
        ],
      },
    ],
  },
  {
    id: "phases",
    title: "Three-phase supply",
    open: false,
    fields: [...three("line_voltages_v", "Line voltage", "V"), ...three("line_currents_a", "Line current", "A")],
  },
  {
    id: "windings",
    title: "Windings and capacitors",
    open: false,
    hint: "Power off, locked out and proved dead; capacitors discharged.",
    fields: readings({
      winding_run_ohm: ["open", "ohm"],
      winding_start_ohm: ["open", "ohm"],
      winding_run_to_start_ohm: ["open", "ohm"],
      terminal_12_ohm: ["open", "ohm", "unmarked terminals"],
      terminal_23_ohm: ["open", "ohm"],
      terminal_13_ohm: ["open", "ohm"],
      winding_c: ["temperature"],
      winding_to_frame_megohm: ["open", "megohm"],
      insulation_test_v: ["plain", "V"],
      run_capacitor_uf: ["open", "µF"],
      start_capacitor_uf: ["open", "µF"],
    }),
  },
  {
    id: "tests",
    title: "Pump-down and standing pressure",
    open: false,
    hint: "Only where the maker allows a pump-down: none into vacuum on scroll compressors or with flammable refrigerants.",
    fields: [
      ...readings({
        pump_down_kpa: ["pressure"],
        pump_down_rise_kpa_per_min: ["pressure_rise"],
      }),
      {
        type: "choice",
        path: "readings.pump_down_valve",
        label: "Valve closed for it",
        options: [
          ["suction_service", "suction service valve"],
          ["liquid_line", "liquid-line valve"],
        ],
      },
      {
        type: "choice",
        path: "readings.pump_down_ended_by",
        label: "It ended because",
        options: [
          ["limit", "it fell no further"],
          ["low_pressure_control", "the low-pressure control stopped it"],
          ["technician", "I stopped it"],
        ],
      },
      ...readings({
        standing_pressure_kpa: ["pressure", undefined, "stopped and equalised"],
        standing_temperature_c: ["temperature", undefined, "the one temperature of the whole machine"],
      }),
    ],
  },
  {
    id: "instruments",
    title: "Instruments' standard uncertainty",
    open: false,
    hint: "Left out: 1 % + 2 kPa, 0.7 K on pipes beside the clamp's bias, 0.5 K in air, 1.5 % of current.",
    fields: numbers<Uncertainty>("uncertainty", {
      pressure_percent: ["plain", "Pressure", "%"],
      pressure_span_kpa: ["pressure_span", "Gauge span, when % is of span"],
      line_temperature_k: ["difference", "Pipe temperature"],
      air_temperature_k: ["difference", "Air temperature"],
      current_percent: ["plain", "Current", "%"],
    } satisfies Record<keyof Uncertainty, Row>),
  },
];

/** Every field by its path. */
export const FIELDS: ReadonlyMap<string, Field> = new Map(
  GROUPS.flatMap((group) => group.fields.map((field) => [field.path, field] as const)),
);
