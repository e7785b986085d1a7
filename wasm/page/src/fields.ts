/** The form: every input of a visit, in the order a technician meets them. */
import { say, type Pair } from "./language.js";
import { measurementName } from "./words.js";

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

/** Several of a list, or none of it. */
export interface ManyField {
  type: "many";
  path: string;
  label: string;
  options: readonly (readonly [string, string])[];
  hint?: string;
}

export type Field = NumberField | ChoiceField | ManyField;

export interface Group {
  id: string;
  title: string;
  /** Whether the group starts open. */
  open: boolean;
  hint?: string;
  fields: Field[];
}

type Row = readonly [kind: Kind, label?: Pair | undefined, unit?: string | undefined, hint?: Pair | undefined];

function numbers(section: string, rows: Readonly<Record<string, Row>>): NumberField[] {
  return Object.entries(rows).map(([name, [kind, label, unit, hint]]) => ({
    type: "number",
    path: `${section}.${name}`,
    label: label === undefined ? measurementName(name) : say(label),
    kind,
    signed: kind === "temperature" || kind === "pressure",
    ...(unit === undefined ? {} : { unit }),
    ...(hint === undefined ? {} : { hint: say(hint) }),
  }));
}

const readings = (rows: Readonly<Record<string, readonly [kind: Kind, unit?: string | undefined, hint?: Pair | undefined]>>) =>
  numbers("readings", Object.fromEntries(Object.entries(rows).map(([name, [kind, unit, hint]]) => [name, [kind, undefined, unit, hint] as Row])));

function three(name: "line_voltages_v" | "line_currents_a", label: Pair, unit: string): NumberField[] {
  return [0, 1, 2].map((n) => ({
    type: "number",
    path: `readings.${name}.${n}`,
    label: `${say(label)} ${n + 1}`,
    kind: "plain",
    unit,
    ...(n === 0 ? { hint: say(["all three count together", "las tres cuentan juntas"]) } : {}),
  }));
}

type Options = readonly (readonly [string | boolean, Pair])[];

function choice(path: string, label: Pair | undefined, options: Options): ChoiceField {
  const name = path.slice(path.lastIndexOf(".") + 1);
  return {
    type: "choice",
    path,
    label: label === undefined ? measurementName(name) : say(label),
    options: options.map(([value, text]) => [value, say(text)] as const),
  };
}

function many(path: string, label: Pair, options: Readonly<Record<string, Pair>>, hint?: Pair): ManyField {
  return {
    type: "many",
    path,
    label: say(label),
    options: Object.entries(options).map(([value, text]) => [value, say(text)] as const),
    ...(hint === undefined ? {} : { hint: say(hint) }),
  };
}

const YES_NO: Options = [
  [true, ["yes", "sí"]],
  [false, ["no", "no"]],
];
const FAN: Options = [
  ["turns", ["turns", "gira"]],
  ["slow", ["slow", "lento"]],
  ["stands", ["stands", "parado"]],
];

export const COMPLAINTS: Readonly<Record<string, Pair>> = {
  not_cold: ["Not cold enough", "No enfría lo suficiente"],
  never_stops: ["Never stops", "Nunca para"],
  short_cycles: ["Starts and stops often", "Arranca y para seguido"],
  does_not_start: ["Does not start", "No arranca"],
  trips: ["Trips its protection", "Dispara su protección"],
  noisy_start: ["Noisy at the start", "Ruido al arrancar"],
  noisy_running: ["Noisy while running", "Ruido en marcha"],
  ices_up: ["Ices up", "Se llena de hielo"],
  maintenance: ["Maintenance, no complaint", "Mantenimiento, sin queja"],
};

const COSTS: Readonly<Record<string, Row>> = {
  visit: ["plain", ["Coming out once more", "Otra visita"]],
  hour: ["plain", ["An hour of work", "Una hora de trabajo"]],
  compressor: ["plain", ["New compressor, fitted", "Compresor nuevo, instalado"]],
  machine: ["plain", ["New machine, in place", "Máquina nueva, instalada"]],
  loss_a_day: ["plain", ["Loss for each day it stands", "Pérdida por día parada"]],
  horizon_days: ["plain", ["Days that count", "Días que cuentan"]],
};

export const GROUPS: readonly Group[] = [
  {
    id: "complaint",
    title: say(["Complaint and history", "Queja e historia"]),
    open: false,
    fields: [
      many("complaint", ["Complaint", "Queja"], COMPLAINTS),
      ...numbers("", { complaint_hours: ["plain", ["For how long", "Desde hace"], "h"] }).map((field) => ({ ...field, path: "complaint_hours" })),
      many("history", ["Known to have been done", "Trabajos anteriores"], {
        compressor_replaced: ["compressor replaced", "compresor cambiado"],
        metering_replaced: ["metering device replaced", "expansión cambiada"],
        circuit_opened: ["circuit opened", "circuito abierto"],
        charge_added: ["charge added", "carga agregada"],
        leaked_before: ["leaked before", "fugas anteriores"],
        coil_cleaned: ["coil cleaned", "serpentín limpiado"],
      }),
    ],
  },
  {
    id: "machine",
    title: say(["Machine", "Máquina"]),
    open: true,
    fields: [
      choice("system.duty", ["Duty", "Uso"], [
        ["freezer", ["freezer", "congelador"]],
        ["cooler", ["cooler", "enfriador"]],
        ["air_conditioning", ["air conditioning", "aire acondicionado"]],
      ]),
      choice("system.metering", ["Metering device", "Dispositivo de expansión"], [
        ["capillary", ["capillary", "capilar"]],
        ["orifice", ["orifice", "orificio"]],
        ["thermostatic_valve", ["thermostatic valve", "válvula termostática"]],
        ["electronic_valve", ["electronic valve", "válvula electrónica"]],
      ]),
      choice("system.receiver", ["Liquid receiver", "Recibidor de líquido"], YES_NO),
      choice("system.suction_pressure_regulator", ["Suction pressure regulator", "Regulador de presión de succión"], YES_NO),
    ],
  },
  {
    id: "plate",
    title: say(["Compressor plate and charge", "Placa del compresor y carga"]),
    open: false,
    fields: [
      choice("system.compressor.kind", ["Compressor", "Compresor"], [
        ["reciprocating", ["reciprocating", "alternativo"]],
        ["rotary", ["rotary", "rotativo"]],
        ["scroll", ["scroll", "scroll"]],
      ]),
      choice("system.compressor.drive", ["Drive", "Accionamiento"], [
        ["fixed_speed", ["fixed speed", "velocidad fija"]],
        ["variable_speed", ["variable speed", "velocidad variable"]],
      ]),
      choice("system.compressor.start_gear", ["Start gear", "Sistema de arranque"], [
        ["current_relay", ["current relay", "relé de corriente"]],
        ["potential_relay", ["potential relay", "relé de tensión"]],
        ["ptc", ["PTC", "PTC"]],
        ["solid_state", ["solid state", "electrónico"]],
        ["none", ["none", "ninguno"]],
      ]),
      ...numbers("system.compressor", {
        rated_load_a: ["plain", ["Rated-load current", "Corriente nominal de carga"], "A", ["a machine at its design point usually runs below it", "en su punto de diseño suele marchar por debajo"]],
        locked_rotor_a: ["plain", ["Locked-rotor current", "Corriente de rotor bloqueado"], "A"],
        rated_v: ["plain", ["Rated voltage", "Tensión nominal"], "V"],
        phases: ["plain", ["Phases", "Fases"], "", ["1 or 3", "1 o 3"]],
        hz: ["plain", ["Frequency", "Frecuencia"], "Hz"],
        run_winding_ohm: ["open", ["Run winding, data sheet", "Devanado de marcha, hoja de datos"], "ohm"],
        start_winding_ohm: ["open", ["Start winding, data sheet", "Devanado de arranque, hoja de datos"], "ohm"],
        winding_reference_c: ["temperature", ["Data sheet’s winding temperature", "Temperatura del devanado en la hoja"]],
        run_capacitor_uf: ["open", ["Run capacitor, rated", "Capacitor de marcha, nominal"], "µF"],
        start_capacitor_uf: ["open", ["Start capacitor, rated", "Capacitor de arranque, nominal"], "µF"],
      }),
      ...numbers("system", {
        run_capacitor_tolerance_percent: ["plain", ["Run capacitor tolerance", "Tolerancia del capacitor de marcha"], "%", ["6 % unless given", "6 % si no se indica"]],
        charge_kg: ["plain", ["Charge on the plate", "Carga en placa"], "kg"],
      }),
    ],
  },
  {
    id: "design",
    title: say(["Design point, as far as known", "Punto de diseño, si se conoce"]),
    open: false,
    hint: say(["What is left out falls back to what is usual for the duty and metering, with its wide spread.", "Lo que falta se toma como lo usual para el uso y la expansión, con su amplia dispersión."]),
    fields: numbers("system.design", {
      space_c: ["temperature", ["Space air", "Aire del espacio"]],
      ambient_c: ["temperature", ["Air onto the condenser", "Aire al condensador"]],
      evaporator_td_k: ["difference", ["Space air over evaporating", "Aire del espacio sobre evaporación"]],
      condenser_td_k: ["difference", ["Condensing over ambient", "Condensación sobre ambiente"]],
      suction_superheat_k: ["difference", ["Superheat at the compressor", "Sobrecalentamiento en el compresor"]],
      subcooling_k: ["difference", ["Subcooling", "Subenfriamiento"]],
      suction_pressure_kpa: ["pressure", ["Target suction pressure", "Presión de succión objetivo"], undefined, ["goes before the difference to space air", "vale antes que la diferencia con el aire"]],
      discharge_pressure_kpa: ["pressure", ["Target discharge pressure", "Presión de descarga objetivo"], undefined, ["goes before the difference to ambient", "vale antes que la diferencia con el ambiente"]],
    }),
  },
  {
    id: "access",
    title: say(["At hand on this visit", "A mano en esta visita"]),
    open: false,
    hint: say(["What a given list leaves out is not asked for.", "Lo que falta en una lista dada no se pide."]),
    fields: [
      many("access.tools", ["Tools", "Herramientas"], {
        gauges: ["gauges", "manómetros"],
        pipe_clamp: ["pipe clamp", "pinza de tubo"],
        air_thermometer: ["air thermometer", "termómetro de aire"],
        current_clamp: ["current clamp", "pinza amperimétrica"],
        multimeter: ["multimeter", "multímetro"],
        insulation_tester: ["insulation tester", "medidor de aislamiento"],
        capacitor_meter: ["capacitor meter", "capacímetro"],
        scale: ["scale", "balanza"],
        recovery_unit: ["recovery unit", "recuperadora"],
        nitrogen: ["nitrogen", "nitrógeno"],
      }),
      choice("access.suction_port", ["Suction port", "Toma de succión"], YES_NO),
      choice("access.high_side_port", ["High-side port", "Toma de alta"], YES_NO),
      choice("access.liquid_port", ["Liquid port", "Toma de líquido"], YES_NO),
      choice("access.suction_service_valve", ["Suction service valve", "Válvula de servicio de succión"], YES_NO),
      choice("access.liquid_line_valve", ["Liquid-line valve", "Válvula de línea de líquido"], YES_NO),
    ],
  },
  {
    id: "pressures",
    title: say(["Pressures", "Presiones"]),
    open: true,
    fields: readings({
      suction_pressure_kpa: ["pressure", undefined, ["at the compressor", "en el compresor"]],
      discharge_pressure_kpa: ["pressure", undefined, ["at the compressor", "en el compresor"]],
      evaporator_pressure_kpa: ["pressure", undefined, ["at the evaporator outlet", "a la salida del evaporador"]],
      liquid_pressure_kpa: ["pressure", undefined, ["at the condenser or receiver outlet", "a la salida del condensador o recibidor"]],
    }),
  },
  {
    id: "pipes",
    title: say(["Pipe temperatures", "Temperaturas de tubo"]),
    open: true,
    fields: readings({
      evaporator_outlet_c: ["temperature"],
      suction_line_c: ["temperature"],
      discharge_line_c: ["temperature"],
      liquid_line_c: ["temperature"],
      drier_outlet_c: ["temperature"],
      evaporator_inlet_c: ["temperature"],
      condenser_middle_c: ["temperature"],
    }),
  },
  {
    id: "air",
    title: say(["Air temperatures", "Temperaturas de aire"]),
    open: true,
    fields: readings({
      space_c: ["temperature", undefined, ["onto the evaporator", "hacia el evaporador"]],
      supply_air_c: ["temperature"],
      ambient_c: ["temperature"],
      condenser_exhaust_c: ["temperature"],
      space_wet_bulb_c: ["temperature"],
    }),
  },
  {
    id: "seen",
    title: say(["Seen and heard", "Visto y oído"]),
    open: true,
    fields: [
      choice("observations.start_noise", undefined, [
        ["none", ["none", "ninguno"]],
        ["fades", ["loud, fades", "fuerte, cede"]],
        ["stays", ["loud, stays", "fuerte, sigue"]],
      ]),
      choice("observations.frost_on_compressor", undefined, YES_NO),
      choice("observations.sight_glass", undefined, [
        ["clear", ["clear", "claro"]],
        ["bubbles", ["bubbles", "burbujas"]],
        ["none_fitted", ["none fitted", "no tiene"]],
      ]),
      choice("observations.coil_iced", undefined, YES_NO),
      choice("observations.condenser_fan", undefined, FAN),
      choice("observations.evaporator_fan", undefined, FAN),
      choice("observations.condenser_face", undefined, [
        ["clean", ["clean", "limpia"]],
        ["dirty", ["dirty", "sucia"]],
        ["blocked", ["blocked", "tapada"]],
      ]),
      choice("observations.frost_line", undefined, [
        ["whole_coil", ["whole coil", "todo el serpentín"]],
        ["part_of_coil", ["part of the coil", "parte del serpentín"]],
        ["none", ["none", "ninguna"]],
      ]),
      choice("observations.oil_traces", undefined, YES_NO),
      choice("observations.leak_found", undefined, YES_NO),
      choice("observations.calls_for_cooling", undefined, YES_NO),
      choice("observations.door_closes", undefined, YES_NO),
      choice("observations.start_sound", undefined, [
        ["starts", ["starts", "arranca"]],
        ["hums_and_trips", ["hums and trips", "zumba y dispara"]],
        ["silent", ["silent", "silencio"]],
      ]),
    ],
  },
  {
    id: "running",
    title: say(["Current, voltage, run time", "Corriente, tensión, tiempo en marcha"]),
    open: true,
    fields: [
      ...readings({
        current_a: ["plain", "A"],
        voltage_v: ["plain", "V"],
        power_w: ["plain", "W"],
        minutes_running: ["plain", "min"],
        start_current_a: ["plain", "A"],
        starts_per_hour: ["plain", ""],
        hours_running: ["plain", "h"],
      }),
      choice("readings.running", ["While the pressures were read the compressor was", "Mientras se leían las presiones el compresor estaba"], [
        [true, ["running", "en marcha"]],
        [false, ["stopped", "parado"]],
      ]),
    ],
  },
  {
    id: "phases",
    title: say(["Three-phase supply", "Alimentación trifásica"]),
    open: false,
    fields: [...three("line_voltages_v", ["Line voltage", "Tensión de línea"], "V"), ...three("line_currents_a", ["Line current", "Corriente de línea"], "A")],
  },
  {
    id: "windings",
    title: say(["Windings and capacitors", "Devanados y capacitores"]),
    open: false,
    hint: say(["Power off, locked out and proved dead; capacitors discharged.", "Sin tensión, bloqueado y comprobado; capacitores descargados."]),
    fields: readings({
      winding_run_ohm: ["open", "ohm"],
      winding_start_ohm: ["open", "ohm"],
      winding_run_to_start_ohm: ["open", "ohm"],
      terminal_12_ohm: ["open", "ohm", ["unmarked terminals", "terminales sin marca"]],
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
    title: say(["Pump-down and standing pressure", "Vaciado y presión en reposo"]),
    open: false,
    hint: say(["Only where the maker allows a pump-down: none into vacuum on scroll compressors or with flammable refrigerants.", "Solo donde el fabricante permite vaciar: nunca hasta vacío en scroll ni con refrigerantes inflamables."]),
    fields: [
      ...readings({ pump_down_kpa: ["pressure"], pump_down_rise_kpa_per_min: ["pressure_rise"] }),
      choice("readings.pump_down_valve", ["Valve closed for it", "Válvula cerrada"], [
        ["suction_service", ["suction service valve", "válvula de servicio de succión"]],
        ["liquid_line", ["liquid-line valve", "válvula de línea de líquido"]],
      ]),
      choice("readings.pump_down_ended_by", ["It ended because", "Terminó porque"], [
        ["limit", ["it fell no further", "no bajó más"]],
        ["low_pressure_control", ["the low-pressure control stopped it", "lo paró el control de baja"]],
        ["technician", ["I stopped it", "lo paré yo"]],
      ]),
      ...readings({
        standing_pressure_kpa: ["pressure", undefined, ["stopped and equalised", "parada e igualada"]],
        standing_temperature_c: ["temperature", undefined, ["the one temperature of the whole machine", "la única temperatura de toda la máquina"]],
      }),
    ],
  },
  {
    id: "charge",
    title: say(["Refrigerant in and out", "Refrigerante que entra y sale"]),
    open: false,
    fields: readings({ recovered_kg: ["plain", "kg"], added_kg: ["plain", "kg"] }),
  },
  {
    id: "costs",
    title: say(["Costs", "Costos"]),
    open: false,
    hint: say(["In one currency of your choice; what is left out is not known.", "En una sola moneda a elección; lo que falta no se conoce."]),
    fields: numbers("costs", COSTS),
  },
  {
    id: "instruments",
    title: say(["Instruments’ standard uncertainty", "Incertidumbre típica de los instrumentos"]),
    open: false,
    hint: say(["Left out: 1 % + 2 kPa, 0.7 K on pipes beside the clamp’s bias, 0.5 K in air, 1.5 % of current.", "Si falta: 1 % + 2 kPa, 0,7 K en tubos más el sesgo de la pinza, 0,5 K en aire, 1,5 % de corriente."]),
    fields: numbers("uncertainty", {
      pressure_percent: ["plain", ["Pressure", "Presión"], "%"],
      pressure_span_kpa: ["pressure_span", ["Gauge span, when % is of span", "Alcance del manómetro, si el % es del alcance"]],
      line_temperature_k: ["difference", ["Pipe temperature", "Temperatura de tubo"]],
      air_temperature_k: ["difference", ["Air temperature", "Temperatura de aire"]],
      current_percent: ["plain", ["Current", "Corriente"], "%"],
    }),
  },
];

/** Every field by its path. */
export const FIELDS: ReadonlyMap<string, Field> = new Map(
  GROUPS.flatMap((group) => group.fields.map((field) => [field.path, field] as const)),
);

/** The field of a measurement, an observation or a fact of the machine by its bare name. */
export function fieldOf(name: string): Field | undefined {
  for (const section of ["readings", "observations", "system"]) {
    const field = FIELDS.get(`${section}.${name}`) ?? FIELDS.get(`${section}.${name}.0`);
    if (field !== undefined) return field;
  }
  return undefined;
}
