// Written from the library's own lists by `cargo run -p rimewise-schema`; do not edit.

/** A field of a visit. */
export interface Field {
  /** The section, empty at the top. */
  section: string;
  /** The name in its section. */
  name: string;
  /** The permanent number. */
  code: number;
  /** What it is. */
  shape: "number" | "three" | "flag" | "choice" | "set";
  /** The kind of a number, such as `Pressure`. */
  kind?: string;
  /** The unit of a number. */
  unit?: string;
  /** The lowest value that a machine can show. */
  min?: number;
  /** The highest value, where there is one. */
  max?: number;
  /** Whether a meter can read open here. */
  open?: true;
  /** What can be chosen. */
  choices?: readonly string[];
  /** The effort of a reading or an observation. */
  effort?: string;
  /** What it holds, in English. */
  doc: string;
}

/** Every field. */
export const FIELDS: readonly Field[] = [
  { section: "system", name: "charge_kg", code: 305, shape: "number", kind: "Mass", unit: "kg", min: 0.001, max: 10000, doc: "Nameplate charge, kg." },
  { section: "system", name: "run_capacitor_tolerance_percent", code: 306, shape: "number", kind: "Percent", unit: "%", min: 0, max: 100, doc: "Tolerance of the run capacitor's plate value, percent; 6 unless given." },
  { section: "system", name: "metering", code: 301, shape: "choice", choices: ["capillary", "orifice", "thermostatic_valve", "electronic_valve"], doc: "The metering device; not known: the diagnosis allows for each kind's spread." },
  { section: "system", name: "receiver", code: 302, shape: "flag", doc: "Whether a liquid receiver stands behind the condenser; not known: usual for the metering." },
  { section: "system", name: "suction_pressure_regulator", code: 303, shape: "flag", doc: "Whether a regulator holds the compressor's inlet pressure down; not known: no." },
  { section: "system", name: "duty", code: 304, shape: "choice", choices: ["freezer", "cooler", "air_conditioning"], doc: "What the machine is for." },
  { section: "system.design", name: "space_c", code: 320, shape: "number", kind: "Temperature", unit: "degC", min: -120, max: 300, doc: "Space air temperature, degC." },
  { section: "system.design", name: "ambient_c", code: 321, shape: "number", kind: "Temperature", unit: "degC", min: -120, max: 300, doc: "Air temperature onto the condenser, degC." },
  { section: "system.design", name: "evaporator_td_k", code: 322, shape: "number", kind: "Difference", unit: "K", min: 0, max: 150, doc: "Space air minus evaporating dew temperature, K." },
  { section: "system.design", name: "condenser_td_k", code: 323, shape: "number", kind: "Difference", unit: "K", min: 0, max: 150, doc: "Condensing temperature (mean of bubble and dew) minus ambient, K." },
  { section: "system.design", name: "suction_superheat_k", code: 324, shape: "number", kind: "Difference", unit: "K", min: 0, max: 150, doc: "Superheat at the compressor inlet, K." },
  { section: "system.design", name: "subcooling_k", code: 325, shape: "number", kind: "Difference", unit: "K", min: 0, max: 150, doc: "Subcooling at the condenser outlet, K." },
  { section: "system.design", name: "suction_pressure_kpa", code: 326, shape: "number", kind: "Pressure", unit: "kPa absolute", min: 0.001, max: 20000, doc: "The maker's target suction pressure, kPa absolute; goes before `evaporator_td_k`." },
  { section: "system.design", name: "discharge_pressure_kpa", code: 327, shape: "number", kind: "Pressure", unit: "kPa absolute", min: 0.001, max: 20000, doc: "The maker's target discharge pressure, kPa absolute; goes before `condenser_td_k`." },
  { section: "system.compressor", name: "rated_load_a", code: 340, shape: "number", kind: "Current", unit: "A", min: 0, max: 5000, doc: "Rated-load current, A; a machine at its design point usually runs below it." },
  { section: "system.compressor", name: "locked_rotor_a", code: 341, shape: "number", kind: "Current", unit: "A", min: 0, max: 5000, doc: "Locked-rotor current at rated voltage, A." },
  { section: "system.compressor", name: "rated_v", code: 342, shape: "number", kind: "Voltage", unit: "V", min: 0, max: 1000, doc: "Rated voltage, V." },
  { section: "system.compressor", name: "phases", code: 343, shape: "number", kind: "Phases", unit: "", min: 1, max: 3, doc: "Number of phases, 1 or 3." },
  { section: "system.compressor", name: "hz", code: 344, shape: "number", kind: "Frequency", unit: "Hz", min: 10, max: 400, doc: "Supply frequency, Hz." },
  { section: "system.compressor", name: "run_winding_ohm", code: 345, shape: "number", kind: "Resistance", unit: "ohm", min: 0, open: true, doc: "Resistance of the run winding (common to run), ohm." },
  { section: "system.compressor", name: "start_winding_ohm", code: 346, shape: "number", kind: "Resistance", unit: "ohm", min: 0, open: true, doc: "Resistance of the start winding (common to start), ohm." },
  { section: "system.compressor", name: "winding_reference_c", code: 347, shape: "number", kind: "Temperature", unit: "degC", min: -120, max: 300, doc: "Temperature the winding resistances refer to, degC." },
  { section: "system.compressor", name: "run_capacitor_uf", code: 348, shape: "number", kind: "Capacitance", unit: "uF", min: 0, open: true, doc: "Rated run capacitor, microfarad." },
  { section: "system.compressor", name: "start_capacitor_uf", code: 349, shape: "number", kind: "Capacitance", unit: "uF", min: 0, open: true, doc: "Rated start capacitor, microfarad." },
  { section: "system.compressor", name: "kind", code: 350, shape: "choice", choices: ["reciprocating", "rotary", "scroll"], doc: "How the compressor compresses." },
  { section: "system.compressor", name: "drive", code: 351, shape: "choice", choices: ["fixed_speed", "variable_speed"], doc: "Whether its speed is fixed." },
  { section: "system.compressor", name: "start_gear", code: 352, shape: "choice", choices: ["current_relay", "potential_relay", "ptc", "solid_state", "none"], doc: "What starts a single-phase motor." },
  { section: "readings", name: "suction_pressure_kpa", code: 1, shape: "number", kind: "Pressure", unit: "kPa absolute", min: 0.001, max: 20000, effort: "valve", doc: "Pressure at the compressor's suction, kPa absolute." },
  { section: "readings", name: "evaporator_pressure_kpa", code: 2, shape: "number", kind: "Pressure", unit: "kPa absolute", min: 0.001, max: 20000, effort: "valve", doc: "Pressure at the evaporator outlet, kPa absolute." },
  { section: "readings", name: "discharge_pressure_kpa", code: 3, shape: "number", kind: "Pressure", unit: "kPa absolute", min: 0.001, max: 20000, effort: "valve", doc: "Pressure at the compressor's discharge, kPa absolute." },
  { section: "readings", name: "liquid_pressure_kpa", code: 4, shape: "number", kind: "Pressure", unit: "kPa absolute", min: 0.001, max: 20000, effort: "valve", doc: "Pressure at the condenser or receiver outlet, kPa absolute." },
  { section: "readings", name: "evaporator_outlet_c", code: 5, shape: "number", kind: "Temperature", unit: "degC", min: -120, max: 300, effort: "clamp", doc: "Pipe temperature at the evaporator outlet, degC." },
  { section: "readings", name: "suction_line_c", code: 6, shape: "number", kind: "Temperature", unit: "degC", min: -120, max: 300, effort: "clamp", doc: "Pipe temperature at the compressor inlet, degC." },
  { section: "readings", name: "discharge_line_c", code: 7, shape: "number", kind: "Temperature", unit: "degC", min: -120, max: 300, effort: "clamp", doc: "Pipe temperature at the compressor outlet, degC." },
  { section: "readings", name: "liquid_line_c", code: 8, shape: "number", kind: "Temperature", unit: "degC", min: -120, max: 300, effort: "clamp", doc: "Pipe temperature of the liquid line ahead of the drier, degC." },
  { section: "readings", name: "drier_outlet_c", code: 9, shape: "number", kind: "Temperature", unit: "degC", min: -120, max: 300, effort: "clamp", doc: "Pipe temperature behind the drier, degC." },
  { section: "readings", name: "space_c", code: 10, shape: "number", kind: "Temperature", unit: "degC", min: -120, max: 300, effort: "look", doc: "Air temperature of the cooled space, onto the evaporator, degC." },
  { section: "readings", name: "supply_air_c", code: 11, shape: "number", kind: "Temperature", unit: "degC", min: -120, max: 300, effort: "look", doc: "Air temperature off the evaporator, degC." },
  { section: "readings", name: "ambient_c", code: 12, shape: "number", kind: "Temperature", unit: "degC", min: -120, max: 300, effort: "look", doc: "Air temperature onto the condenser, degC." },
  { section: "readings", name: "condenser_exhaust_c", code: 13, shape: "number", kind: "Temperature", unit: "degC", min: -120, max: 300, effort: "look", doc: "Air temperature off the condenser, degC." },
  { section: "readings", name: "current_a", code: 14, shape: "number", kind: "Current", unit: "A", min: 0, max: 5000, effort: "meter", doc: "Compressor current, A." },
  { section: "readings", name: "voltage_v", code: 15, shape: "number", kind: "Voltage", unit: "V", min: 0, max: 1000, effort: "meter", doc: "Supply voltage while running, V." },
  { section: "readings", name: "pump_down_kpa", code: 16, shape: "number", kind: "Pressure", unit: "kPa absolute", min: 0.001, max: 20000, effort: "valve", doc: "Lowest suction pressure reached against a closed valve, kPa absolute." },
  { section: "readings", name: "pump_down_rise_kpa_per_min", code: 17, shape: "number", kind: "PressureRise", unit: "kPa/min", min: -1000, max: 10000, effort: "valve", doc: "Rise of that pressure after the compressor stopped, kPa/min." },
  { section: "readings", name: "standing_pressure_kpa", code: 18, shape: "number", kind: "Pressure", unit: "kPa absolute", min: 0.001, max: 20000, effort: "valve", doc: "Pressure of the stopped, equalised machine, kPa absolute." },
  { section: "readings", name: "standing_temperature_c", code: 19, shape: "number", kind: "Temperature", unit: "degC", min: -120, max: 300, effort: "clamp", doc: "The one temperature of the stopped, equalised machine, degC." },
  { section: "readings", name: "winding_run_ohm", code: 20, shape: "number", kind: "Resistance", unit: "ohm", min: 0, open: true, effort: "meter", doc: "Resistance common to run, ohm." },
  { section: "readings", name: "winding_start_ohm", code: 21, shape: "number", kind: "Resistance", unit: "ohm", min: 0, open: true, effort: "meter", doc: "Resistance common to start, ohm." },
  { section: "readings", name: "winding_run_to_start_ohm", code: 22, shape: "number", kind: "Resistance", unit: "ohm", min: 0, open: true, effort: "meter", doc: "Resistance run to start, ohm." },
  { section: "readings", name: "winding_to_frame_megohm", code: 23, shape: "number", kind: "Insulation", unit: "megohm", min: 0, open: true, effort: "meter", doc: "Insulation resistance winding to frame, megohm." },
  { section: "readings", name: "run_capacitor_uf", code: 24, shape: "number", kind: "Capacitance", unit: "uF", min: 0, open: true, effort: "meter", doc: "Run capacitor, microfarad." },
  { section: "readings", name: "start_capacitor_uf", code: 25, shape: "number", kind: "Capacitance", unit: "uF", min: 0, open: true, effort: "meter", doc: "Start capacitor, microfarad." },
  { section: "readings", name: "minutes_running", code: 26, shape: "number", kind: "Minutes", unit: "minutes", min: 0, max: 1000000, effort: "look", doc: "Time since the compressor started, minutes." },
  { section: "readings", name: "start_current_a", code: 27, shape: "number", kind: "Current", unit: "A", min: 0, max: 5000, effort: "meter", doc: "Highest current in the first moment after the start, A." },
  { section: "readings", name: "power_w", code: 28, shape: "number", kind: "Power", unit: "W", min: 0, max: 1000000, effort: "meter", doc: "Compressor power, W." },
  { section: "readings", name: "space_wet_bulb_c", code: 29, shape: "number", kind: "Temperature", unit: "degC", min: -120, max: 300, effort: "look", doc: "Wet-bulb temperature of the cooled space, degC." },
  { section: "readings", name: "winding_c", code: 30, shape: "number", kind: "Temperature", unit: "degC", min: -120, max: 300, effort: "clamp", doc: "Temperature of the windings when their resistances were measured, degC." },
  { section: "readings", name: "insulation_test_v", code: 31, shape: "number", kind: "Voltage", unit: "V", min: 0, max: 1000, effort: "meter", doc: "Test voltage of the insulation measurement, V." },
  { section: "readings", name: "terminal_12_ohm", code: 32, shape: "number", kind: "Resistance", unit: "ohm", min: 0, open: true, effort: "meter", doc: "Resistance between unmarked terminals 1 and 2, ohm." },
  { section: "readings", name: "terminal_23_ohm", code: 33, shape: "number", kind: "Resistance", unit: "ohm", min: 0, open: true, effort: "meter", doc: "Resistance between unmarked terminals 2 and 3, ohm." },
  { section: "readings", name: "terminal_13_ohm", code: 34, shape: "number", kind: "Resistance", unit: "ohm", min: 0, open: true, effort: "meter", doc: "Resistance between unmarked terminals 1 and 3, ohm." },
  { section: "readings", name: "evaporator_inlet_c", code: 40, shape: "number", kind: "Temperature", unit: "degC", min: -120, max: 300, effort: "clamp", doc: "Pipe temperature just behind the metering device, degC; stands for the evaporating temperature of a machine without a port." },
  { section: "readings", name: "condenser_middle_c", code: 41, shape: "number", kind: "Temperature", unit: "degC", min: -120, max: 300, effort: "clamp", doc: "Pipe temperature at a return bend in the middle of the condenser, degC; stands for the condensing temperature of a machine without a port." },
  { section: "readings", name: "recovered_kg", code: 42, shape: "number", kind: "Mass", unit: "kg", min: 0.001, max: 10000, effort: "opens_system", doc: "Refrigerant that came out into the recovery cylinder, kg." },
  { section: "readings", name: "added_kg", code: 43, shape: "number", kind: "Mass", unit: "kg", min: 0.001, max: 10000, effort: "opens_system", doc: "Refrigerant put in on this visit before these readings, kg." },
  { section: "readings", name: "starts_per_hour", code: 44, shape: "number", kind: "PerHour", unit: "an hour", min: 0, max: 3600, effort: "look", doc: "Starts of the compressor an hour." },
  { section: "readings", name: "hours_running", code: 45, shape: "number", kind: "Hours", unit: "hours", min: 0, max: 100000, effort: "look", doc: "Time that the machine has been running with hardly a stop, hours." },
  { section: "readings", name: "line_voltages_v", code: 38, shape: "three", kind: "Voltage", unit: "V", min: 0, max: 1000, effort: "meter", doc: "The three line-to-line voltages, V." },
  { section: "readings", name: "line_currents_a", code: 39, shape: "three", kind: "Current", unit: "A", min: 0, max: 5000, effort: "meter", doc: "The three line currents, A." },
  { section: "readings", name: "running", code: 35, shape: "flag", effort: "look", doc: "Whether the compressor runs while the pressures are read; not said: it runs." },
  { section: "readings", name: "pump_down_valve", code: 36, shape: "choice", choices: ["suction_service", "liquid_line"], effort: "look", doc: "Which valve the pump-down was made against." },
  { section: "readings", name: "pump_down_ended_by", code: 37, shape: "choice", choices: ["limit", "low_pressure_control", "technician"], effort: "look", doc: "What ended the pump-down." },
  { section: "observations", name: "start_noise", code: 100, shape: "choice", choices: ["none", "fades", "stays"], effort: "look", doc: "How the noise behaves after the start." },
  { section: "observations", name: "frost_on_compressor", code: 101, shape: "flag", effort: "look", doc: "Whether frost or sweat covers the compressor body." },
  { section: "observations", name: "sight_glass", code: 102, shape: "choice", choices: ["clear", "bubbles", "none_fitted"], effort: "look", doc: "What the sight glass shows." },
  { section: "observations", name: "coil_iced", code: 103, shape: "flag", effort: "look", doc: "Whether the evaporator coil is iced over." },
  { section: "observations", name: "condenser_fan", code: 104, shape: "choice", choices: ["turns", "slow", "stands"], effort: "look", doc: "Whether the condenser's fan turns." },
  { section: "observations", name: "evaporator_fan", code: 105, shape: "choice", choices: ["turns", "slow", "stands"], effort: "look", doc: "Whether the evaporator's fan turns." },
  { section: "observations", name: "condenser_face", code: 106, shape: "choice", choices: ["clean", "dirty", "blocked"], effort: "look", doc: "What the condenser's face looks like." },
  { section: "observations", name: "frost_line", code: 107, shape: "choice", choices: ["whole_coil", "part_of_coil", "none"], effort: "look", doc: "How far frost or sweat covers the evaporator." },
  { section: "observations", name: "oil_traces", code: 108, shape: "flag", effort: "look", doc: "Whether oil stands at joints, fins or floor." },
  { section: "observations", name: "leak_found", code: 109, shape: "flag", effort: "look", doc: "Whether a leak was found." },
  { section: "observations", name: "calls_for_cooling", code: 110, shape: "flag", effort: "look", doc: "Whether thermostat and controls call for cooling." },
  { section: "observations", name: "door_closes", code: 111, shape: "flag", effort: "look", doc: "Whether the door closes and its gasket seals." },
  { section: "observations", name: "start_sound", code: 112, shape: "choice", choices: ["starts", "hums_and_trips", "silent"], effort: "look", doc: "What is heard when the compressor is switched on." },
  { section: "uncertainty", name: "pressure_percent", code: 360, shape: "number", kind: "Percent", unit: "%", min: 0, max: 100, doc: "Pressure, percent of reading; 1 % and 2 kPa unless given." },
  { section: "uncertainty", name: "pressure_span_kpa", code: 361, shape: "number", kind: "Span", unit: "kPa", min: 0.001, max: 20000, doc: "Span of the gauge, kPa; given, `pressure_percent` is of this span." },
  { section: "uncertainty", name: "line_temperature_k", code: 362, shape: "number", kind: "Spread", unit: "K", min: 0, max: 50, doc: "Pipe temperature, K; 0.7 K unless given, beside the clamp's bias." },
  { section: "uncertainty", name: "air_temperature_k", code: 363, shape: "number", kind: "Spread", unit: "K", min: 0, max: 50, doc: "Air temperature, K; 0.5 K unless given." },
  { section: "uncertainty", name: "current_percent", code: 364, shape: "number", kind: "Percent", unit: "%", min: 0, max: 100, doc: "Current, percent of reading; 1.5 % unless given." },
  { section: "access", name: "suction_port", code: 500, shape: "flag", doc: "Whether there is a port on the suction side." },
  { section: "access", name: "high_side_port", code: 501, shape: "flag", doc: "Whether there is a port on the high side." },
  { section: "access", name: "liquid_port", code: 502, shape: "flag", doc: "Whether there is a port on the liquid line." },
  { section: "access", name: "suction_service_valve", code: 503, shape: "flag", doc: "Whether the compressor has a suction service valve." },
  { section: "access", name: "liquid_line_valve", code: 504, shape: "flag", doc: "Whether there is a valve in the liquid line." },
  { section: "access", name: "tools", code: 505, shape: "set", choices: ["gauges", "pipe_clamp", "air_thermometer", "current_clamp", "multimeter", "insulation_tester", "capacitor_meter", "scale", "recovery_unit", "nitrogen"], doc: "The tools at hand; what is absent from the list is not at hand, no list says nothing." },
  { section: "", name: "complaint_hours", code: 521, shape: "number", kind: "Hours", unit: "hours", min: 0, max: 100000, doc: "How long it has been so, hours." },
  { section: "", name: "complaint", code: 520, shape: "set", choices: ["not_cold", "never_stops", "short_cycles", "does_not_start", "trips", "noisy_start", "noisy_running", "ices_up", "maintenance"], doc: "What the customer complains of." },
  { section: "", name: "history", code: 522, shape: "set", choices: ["compressor_replaced", "metering_replaced", "circuit_opened", "charge_added", "leaked_before", "coil_cleaned"], doc: "What is known to have been done before." },
  { section: "costs", name: "visit", code: 540, shape: "number", kind: "Money", unit: "", min: 0, max: 1000000000, doc: "Coming out once more." },
  { section: "costs", name: "hour", code: 541, shape: "number", kind: "Money", unit: "", min: 0, max: 1000000000, doc: "An hour of work." },
  { section: "costs", name: "compressor", code: 542, shape: "number", kind: "Money", unit: "", min: 0, max: 1000000000, doc: "A new compressor, fitted." },
  { section: "costs", name: "machine", code: 543, shape: "number", kind: "Money", unit: "", min: 0, max: 1000000000, doc: "A new machine, installed." },
  { section: "costs", name: "loss_a_day", code: 544, shape: "number", kind: "Money", unit: "", min: 0, max: 1000000000, doc: "What is lost each day that the machine does not do its work." },
  { section: "costs", name: "horizon_days", code: 545, shape: "number", kind: "Days", unit: "days", min: 0, max: 36500, doc: "Days that the loss is reckoned over." },
  { section: "costs", name: "test", code: 546, shape: "number", kind: "Money", unit: "", min: 0, max: 1000000000, doc: "The next test, its time and parts." },
  { section: "costs", name: "product_at_risk", code: 547, shape: "number", kind: "Money", unit: "", min: 0, max: 1000000000, doc: "What is lost at once when the machine is left with its fault: the goods at risk times the chance that they spoil." },
  { section: "settings", name: "rated_load_a", code: 380, shape: "number", kind: "Current", unit: "A", min: 0, max: 5000, doc: "Rated-load current of the plate, A." },
  { section: "settings", name: "locked_rotor_a", code: 381, shape: "number", kind: "Current", unit: "A", min: 0, max: 5000, doc: "Locked-rotor current of the plate at rated voltage, A." },
  { section: "settings", name: "rated_v", code: 382, shape: "number", kind: "Voltage", unit: "V", min: 0, max: 1000, doc: "Rated voltage of the plate, V." },
  { section: "settings", name: "suction_pressure_regulator", code: 383, shape: "flag", doc: "Whether a regulator holds the compressor's inlet pressure down; not known: no." },
  { section: "settings", name: "pump_down_valve", code: 384, shape: "choice", choices: ["suction_service", "liquid_line"], doc: "Which valve a pump-down will be made against." },
];

/** The names of every choice, in the order of their numbers. */
export const CHOICES = {
  Metering: ["capillary", "orifice", "thermostatic_valve", "electronic_valve"],
  Duty: ["freezer", "cooler", "air_conditioning"],
  CompressorKind: ["reciprocating", "rotary", "scroll"],
  Drive: ["fixed_speed", "variable_speed"],
  StartGear: ["current_relay", "potential_relay", "ptc", "solid_state", "none"],
  PumpDownValve: ["suction_service", "liquid_line"],
  PumpDownEnd: ["limit", "low_pressure_control", "technician"],
  StartNoise: ["none", "fades", "stays"],
  SightGlass: ["clear", "bubbles", "none_fitted"],
  Fan: ["turns", "slow", "stands"],
  CondenserFace: ["clean", "dirty", "blocked"],
  FrostLine: ["whole_coil", "part_of_coil", "none"],
  StartSound: ["starts", "hums_and_trips", "silent"],
  Complaint: ["not_cold", "never_stops", "short_cycles", "does_not_start", "trips", "noisy_start", "noisy_running", "ices_up", "maintenance"],
  History: ["compressor_replaced", "metering_replaced", "circuit_opened", "charge_added", "leaked_before", "coil_cleaned"],
  Tool: ["gauges", "pipe_clamp", "air_thermometer", "current_clamp", "multimeter", "insulation_tester", "capacitor_meter", "scale", "recovery_unit", "nitrogen"],
  Action: ["stop_and_equalise", "defrost_and_reread", "clean_and_reread", "leak_search", "recover_and_weigh", "start_test", "let_it_settle"],
  Measurement: ["suction_pressure_kpa", "evaporator_pressure_kpa", "discharge_pressure_kpa", "liquid_pressure_kpa", "evaporator_outlet_c", "suction_line_c", "discharge_line_c", "liquid_line_c", "drier_outlet_c", "space_c", "supply_air_c", "ambient_c", "condenser_exhaust_c", "current_a", "voltage_v", "pump_down_kpa", "pump_down_rise_kpa_per_min", "standing_pressure_kpa", "standing_temperature_c", "winding_run_ohm", "winding_start_ohm", "winding_run_to_start_ohm", "winding_to_frame_megohm", "run_capacitor_uf", "start_capacitor_uf", "minutes_running", "start_current_a", "power_w", "space_wet_bulb_c", "winding_c", "insulation_test_v", "terminal_12_ohm", "terminal_23_ohm", "terminal_13_ohm", "evaporator_inlet_c", "condenser_middle_c", "recovered_kg", "added_kg", "starts_per_hour", "hours_running", "line_voltages_v", "line_currents_a", "running", "pump_down_valve", "pump_down_ended_by", "start_noise", "frost_on_compressor", "sight_glass", "coil_iced", "condenser_fan", "evaporator_fan", "condenser_face", "frost_line", "oil_traces", "leak_found", "calls_for_cooling", "door_closes", "start_sound", "suction_saturation_c", "superheat_k", "compressor_superheat_k", "subcooling_k", "pressure_ratio", "evaporator_saturation_c", "condensing_c", "evaporator_td_k", "condenser_td_k", "discharge_superheat_k", "drier_drop_k", "supply_air_drop_k", "exhaust_air_rise_k"],
  Effort: ["look", "clamp", "meter", "valve", "opens_system"],
  Cause: ["none", "undercharge", "overcharge", "liquid_line_restriction", "metering_underfeed", "flood_back", "weak_compressor", "condenser_airflow", "evaporator_airflow", "non_condensables"],
  WarningKind: ["reads_like_gauge", "contradicts_others", "not_settled", "refrigerant_unknown", "outside_model", "record_unused", "two_causes_alike", "not_running", "reads_like_the_other", "reads_like_another"],
  ErrorCode: ["not_finite", "out_of_range", "outside_table", "above_discharge", "phases_unknown", "unknown_code", "not_json", "duplicate", "unknown_field", "wrong_type", "wrong_length", "unknown_name", "unknown_refrigerant", "unknown_measurement", "too_large", "missing", "not_usable", "two_phase", "other_phase", "transcritical", "near_critical", "between_bubble_and_dew", "too_long", "not_written"],
  FindingKind: ["windings_good", "open_winding", "overload_open", "shorted_turns", "winding_to_frame", "windings_inconsistent", "run_capacitor_good", "run_capacitor_low", "run_capacitor_high", "run_capacitor_open", "start_capacitor_good", "start_capacitor_low", "start_capacitor_high", "start_capacitor_open", "low_voltage", "high_voltage", "voltage_unbalance", "current_above_rated", "current_below_expected", "current_normal", "locked_rotor", "high_resistance_connection", "current_unbalance", "insulation_good", "insulation_doubtful", "terminals_ambiguous", "start_current_usual", "start_current_low", "start_current_high", "single_phasing", "start_gear_failed", "no_supply"],
  CautionCode: ["pressure", "cold_burn", "flammable", "toxic", "asphyxiation", "capacitor", "live_terminals", "terminal_venting", "recovery_law", "no_vacuum_energise", "no_vacuum_pump_down", "air_in_circuit", "blend_charge_liquid", "keep_safety_controls", "hot_surface"],
  Step: ["look", "gauges", "electrical", "pump_down", "charging", "opens_system"],
  Unit: ["", "ohm", "megohm", "uF", "V", "A", "%", "kPa absolute", "kPa", "kPa/min", "degC", "K", "W", "Hz", "kg", "minutes", "hours", "an hour", "days"],
  Language: ["en", "es"],
  Winding: ["run", "start", "common", "line_1", "line_2", "line_3"],
  AlarmCode: ["switch_off", "do_not_energise", "discharge_too_hot", "head_pressure_high", "compression_ratio_high", "liquid_returning", "vacuum_with_flammable"],
  Level: ["undecided", "cause", "family", "job", "electrical", "healthy", "unidentified"],
  Family: ["liquid_feed"],
  Job: ["none", "condenser_air", "evaporator_air", "open_circuit", "metering_valve", "compressor", "electrical"],
  CompressorState: ["open", "cleared", "failing", "failed"],
  StepKind: ["leave", "look", "measure", "act", "repair", "replace_compressor", "replace_machine", "wait"],
  PlanContext: ["refrigerant", "metering", "duty"],
  Change: ["worked", "better", "unchanged", "worse"],
  MonitorEventKind: ["start", "stop", "inrush", "failed_start", "overload_cycling", "start_gear_stays_in", "migration_likely", "liquid_on_start", "stays_high", "clean_start", "start_not_told", "pulling_down", "steady", "hunting", "pump_down", "pump_down_lowest", "pump_down_rise", "short_cycling", "equalized", "standing_pressure", "current_rises", "defrost_begins", "defrost_ends", "gap"],
  MonitorState: ["unknown", "off", "starting", "pulling_down", "steady", "unsteady", "pumping_down", "holding", "defrost", "stopped"],
  MonitorSampleProblem: ["repeated_time", "backward_time", "nothing_measured", "some_unusable"],
  CompressorScale: ["celsius", "fahrenheit"],
} as const;
