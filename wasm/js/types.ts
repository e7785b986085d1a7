// Written from the library's own lists by `cargo run -p rimewise-schema`; do not edit.

/**
 * The device that meters liquid into the evaporator.
 * - `capillary`: A capillary tube, with or without a suction-liquid exchanger.
 * - `orifice`: A fixed orifice or piston.
 * - `thermostatic_valve`: A thermostatic expansion valve.
 * - `electronic_valve`: An electronic expansion valve.
 */
export type Metering = "capillary" | "orifice" | "thermostatic_valve" | "electronic_valve";

/**
 * What the machine is for, which fixes what is usual where its maker's data is missing.
 * - `freezer`: Holds frozen goods, space near -20 degC.
 * - `cooler`: Holds chilled goods, space near +3 degC.
 * - `air_conditioning`: Cools rooms for people, space near 26 degC.
 */
export type Duty = "freezer" | "cooler" | "air_conditioning";

/**
 * How a compressor compresses.
 * - `reciprocating`: A piston.
 * - `rotary`: A rolling piston or vane.
 * - `scroll`: A scroll, which must not be pulled into vacuum.
 */
export type CompressorKind = "reciprocating" | "rotary" | "scroll";

/**
 * Whether a compressor's speed is fixed.
 * - `fixed_speed`: It runs at the speed of the supply.
 * - `variable_speed`: An inverter sets its speed.
 */
export type Drive = "fixed_speed" | "variable_speed";

/**
 * What starts a single-phase motor.
 * - `current_relay`: A relay that the motor's current pulls in.
 * - `potential_relay`: A relay that the start winding's voltage pulls in.
 * - `ptc`: A resistor that switches the start winding off by warming up (positive temperature coefficient).
 * - `solid_state`: An electronic switch.
 * - `none`: None: a motor on three phases, or one with a run capacitor alone.
 */
export type StartGear = "current_relay" | "potential_relay" | "ptc" | "solid_state" | "none";

/**
 * Which valve was closed for the pump-down test.
 * - `suction_service`: The compressor's suction service valve: only the compressor itself is pumped down.
 * - `liquid_line`: A liquid-line valve: the whole low side is pumped down, and a rise may be boiling refrigerant or oil.
 */
export type PumpDownValve = "suction_service" | "liquid_line";

/**
 * What ended the pump-down test.
 * - `limit`: The pressure fell no further: a measurement of what the compressor can pull.
 * - `low_pressure_control`: The low-pressure control stopped it: only an upper bound.
 * - `technician`: The technician stopped it: only an upper bound.
 */
export type PumpDownEnd = "limit" | "low_pressure_control" | "technician";

/**
 * How the noise behaves from the moment the compressor starts.
 * - `none`: No unusual noise.
 * - `fades`: Loud at first, then fading within minutes.
 * - `stays`: Loud and staying so.
 */
export type StartNoise = "none" | "fades" | "stays";

/**
 * What the liquid line's sight glass shows.
 * - `clear`: Clear liquid.
 * - `bubbles`: Bubbles or flash gas.
 * - `none_fitted`: There is none.
 */
export type SightGlass = "clear" | "bubbles" | "none_fitted";

/**
 * What a fan does.
 * - `turns`: It turns as it should.
 * - `slow`: It turns too slowly.
 * - `stands`: It stands still.
 */
export type Fan = "turns" | "slow" | "stands";

/**
 * What the condenser's face looks like.
 * - `clean`: Clean.
 * - `dirty`: Dirty, with air still passing.
 * - `blocked`: Blocked.
 */
export type CondenserFace = "clean" | "dirty" | "blocked";

/**
 * How far frost or sweat covers the evaporator.
 * - `whole_coil`: All of it.
 * - `part_of_coil`: Only the part behind the metering device.
 * - `none`: Nowhere.
 */
export type FrostLine = "whole_coil" | "part_of_coil" | "none";

/**
 * What is heard when the compressor is switched on.
 * - `starts`: It starts.
 * - `hums_and_trips`: It hums and its protector opens.
 * - `silent`: Nothing.
 */
export type StartSound = "starts" | "hums_and_trips" | "silent";

/**
 * What the customer complains of.
 * - `not_cold`: The space is not cold enough.
 * - `never_stops`: The compressor never stops.
 * - `short_cycles`: It starts and stops too often.
 * - `does_not_start`: It does not start.
 * - `trips`: A breaker, a fuse or a protector trips.
 * - `noisy_start`: It is noisy at the start.
 * - `noisy_running`: It is noisy while running.
 * - `ices_up`: The evaporator ices up.
 * - `maintenance`: Nothing: the visit is for maintenance.
 */
export type Complaint = "not_cold" | "never_stops" | "short_cycles" | "does_not_start" | "trips" | "noisy_start" | "noisy_running" | "ices_up" | "maintenance";

/**
 * What is known to have been done to the machine before.
 * - `compressor_replaced`: The compressor was replaced.
 * - `metering_replaced`: The capillary or valve was replaced.
 * - `circuit_opened`: The circuit was opened.
 * - `charge_added`: Refrigerant was added.
 * - `leaked_before`: It leaked before.
 * - `coil_cleaned`: The coil was cleaned.
 */
export type History = "compressor_replaced" | "metering_replaced" | "circuit_opened" | "charge_added" | "leaked_before" | "coil_cleaned";

/**
 * A tool that is at hand on the visit.
 * - `gauges`: Gauges with hoses.
 * - `pipe_clamp`: A pipe clamp thermometer.
 * - `air_thermometer`: An air thermometer.
 * - `current_clamp`: A current clamp.
 * - `multimeter`: A multimeter.
 * - `insulation_tester`: An insulation tester.
 * - `capacitor_meter`: A capacitance meter.
 * - `scale`: A scale for refrigerant.
 * - `recovery_unit`: A recovery unit with its cylinder.
 * - `nitrogen`: Dry nitrogen with its regulator.
 */
export type Tool = "gauges" | "pipe_clamp" | "air_thermometer" | "current_clamp" | "multimeter" | "insulation_tester" | "capacitor_meter" | "scale" | "recovery_unit" | "nitrogen";

/**
 * What can be done on a visit beside reading and looking.
 * - `stop_and_equalise`: Switch off, let the pressures equalise, and read the standing pressure.
 * - `defrost_and_reread`: Defrost the evaporator, let it settle, and read again.
 * - `clean_and_reread`: Clean the condenser, let it settle, and read again.
 * - `leak_search`: Search for a leak.
 * - `recover_and_weigh`: Recover the charge and weigh it.
 * - `start_test`: Switch on and watch the start.
 * - `let_it_settle`: Let the machine settle and read again.
 */
export type Action = "stop_and_equalise" | "defrost_and_reread" | "clean_and_reread" | "leak_search" | "recover_and_weigh" | "start_test" | "let_it_settle";

/**
 * A reading, an observation, or a quantity derived from them.
 * Readings have numbers from 1, observations from 100, derived quantities from 200. The name of a reading is the name of its input field; the name of a derived quantity is its key in the report.
 */
export type Measurement = "suction_pressure_kpa" | "evaporator_pressure_kpa" | "discharge_pressure_kpa" | "liquid_pressure_kpa" | "evaporator_outlet_c" | "suction_line_c" | "discharge_line_c" | "liquid_line_c" | "drier_outlet_c" | "space_c" | "supply_air_c" | "ambient_c" | "condenser_exhaust_c" | "current_a" | "voltage_v" | "pump_down_kpa" | "pump_down_rise_kpa_per_min" | "standing_pressure_kpa" | "standing_temperature_c" | "winding_run_ohm" | "winding_start_ohm" | "winding_run_to_start_ohm" | "winding_to_frame_megohm" | "run_capacitor_uf" | "start_capacitor_uf" | "minutes_running" | "start_current_a" | "power_w" | "space_wet_bulb_c" | "winding_c" | "insulation_test_v" | "terminal_12_ohm" | "terminal_23_ohm" | "terminal_13_ohm" | "evaporator_inlet_c" | "condenser_middle_c" | "recovered_kg" | "added_kg" | "starts_per_hour" | "hours_running" | "line_voltages_v" | "line_currents_a" | "running" | "pump_down_valve" | "pump_down_ended_by" | "start_noise" | "frost_on_compressor" | "sight_glass" | "coil_iced" | "condenser_fan" | "evaporator_fan" | "condenser_face" | "frost_line" | "oil_traces" | "leak_found" | "calls_for_cooling" | "door_closes" | "start_sound" | "suction_saturation_c" | "superheat_k" | "compressor_superheat_k" | "subcooling_k" | "pressure_ratio" | "evaporator_saturation_c" | "condensing_c" | "evaporator_td_k" | "condenser_td_k" | "discharge_superheat_k" | "drier_drop_k" | "supply_air_drop_k" | "exhaust_air_rise_k";

/**
 * The effort a measurement takes.
 * - `look`: Look, listen, or read an air thermometer.
 * - `clamp`: Put a clamp on a pipe.
 * - `meter`: Put an electrical meter on terminals.
 * - `valve`: Attach a gauge or turn a valve at a fitted port.
 * - `opens_system`: Open the refrigerant circuit, or fit a port that is not there.
 */
export type Effort = "look" | "clamp" | "meter" | "valve" | "opens_system";

/**
 * What makes the machine behave as it does, in the order that breaks ties.
 * - `none`: Nothing that costs 5 % or more of capacity or COP.
 * - `undercharge`: Less refrigerant than the machine needs.
 * - `overcharge`: More refrigerant than the machine needs.
 * - `liquid_line_restriction`: A restriction in the liquid line: drier, strainer, kinked pipe.
 * - `metering_underfeed`: The metering device passes too little.
 * - `flood_back`: The metering device passes too much and liquid returns to the compressor.
 * - `weak_compressor`: The compressor pumps less than it should.
 * - `condenser_airflow`: Too little air over the condenser.
 * - `evaporator_airflow`: Too little air over the evaporator.
 * - `non_condensables`: Air or nitrogen in the refrigerant circuit.
 */
export type Cause = "none" | "undercharge" | "overcharge" | "liquid_line_restriction" | "metering_underfeed" | "flood_back" | "weak_compressor" | "condenser_airflow" | "evaporator_airflow" | "non_condensables";

/**
 * What is suspicious about an input that is answered all the same.
 * - `reads_like_gauge`: The pressure fits far better after adding one atmosphere.
 * - `contradicts_others`: The reading contradicts the others.
 * - `not_settled`: The machine has run too short a time to have settled.
 * - `refrigerant_unknown`: The refrigerant is not known, so pressures say nothing.
 * - `outside_model`: The point lies outside what the machine model can follow.
 * - `record_unused`: The record cannot be used.
 * - `two_causes_alike`: Two causes explain the readings about equally well; each is named by a warning of its own.
 * - `not_running`: The machine is said to be stopped.
 * - `reads_like_the_other`: Two readings stand where the other one belongs; each is named by a warning of its own.
 * - `reads_like_another`: The readings would suit another refrigerant than the one named.
 */
export type WarningKind = "reads_like_gauge" | "contradicts_others" | "not_settled" | "refrigerant_unknown" | "outside_model" | "record_unused" | "two_causes_alike" | "not_running" | "reads_like_the_other" | "reads_like_another";

/**
 * Why an input cannot be used.
 * - `not_finite`: The number is NaN or infinite where it must not be.
 * - `out_of_range`: The number lies outside what a machine can show.
 * - `outside_table`: The number lies outside the refrigerant's table.
 * - `above_discharge`: The suction pressure lies above the discharge pressure of a running machine.
 * - `phases_unknown`: The number of phases is neither 1 nor 3.
 * - `unknown_code`: The integer is not a code that this library knows.
 * - `not_json`: The text is not JSON.
 * - `duplicate`: The name is given twice.
 * - `unknown_field`: There is no such field.
 * - `wrong_type`: The value is of another type than the field's.
 * - `wrong_length`: The list has another length than it must have.
 * - `unknown_name`: The name is none of those that the field takes.
 * - `unknown_refrigerant`: There is no refrigerant of this name here.
 * - `unknown_measurement`: There is no reading, observation or action of this name.
 * - `too_large`: The number is too large for this library.
 * - `missing`: The field is missing, and nothing can be answered without it.
 * - `not_usable`: The numbers together are none that this question can be answered for.
 * - `two_phase`: The state is liquid and vapor together, and pressure and temperature do not fix it.
 * - `other_phase`: The state lies in the other phase.
 * - `transcritical`: The state lies above the critical point, where there is no saturation.
 * - `near_critical`: The state lies so close to the critical point that the table does not know it well enough.
 * - `between_bubble_and_dew`: The state lies between bubble and dew of a blend whose temperatures there the table does not have.
 * - `too_long`: The text, or one of its lists, is longer or deeper than any visit.
 * - `not_written`: The answer was found and could not be written where it was wanted.
 */
export type ErrorCode = "not_finite" | "out_of_range" | "outside_table" | "above_discharge" | "phases_unknown" | "unknown_code" | "not_json" | "duplicate" | "unknown_field" | "wrong_type" | "wrong_length" | "unknown_name" | "unknown_refrigerant" | "unknown_measurement" | "too_large" | "missing" | "not_usable" | "two_phase" | "other_phase" | "transcritical" | "near_critical" | "between_bubble_and_dew" | "too_long" | "not_written";

/**
 * One finding of the electrical checks.
 * - `windings_good`: The windings agree with each other and with the plate.
 * - `open_winding`: A winding is open.
 * - `overload_open`: The internal overload is open; it may close again once the compressor is cool. The value is the temperature of the windings where it is known, the limit the one below which an overload should have closed again.
 * - `shorted_turns`: A winding reads low enough for shorted turns.
 * - `winding_to_frame`: A winding leaks to the frame.
 * - `windings_inconsistent`: The three winding resistances contradict each other.
 * - `run_capacitor_good`: The run capacitor is within its tolerance.
 * - `run_capacitor_low`: The run capacitor is below its tolerance.
 * - `run_capacitor_high`: The run capacitor is above its tolerance.
 * - `run_capacitor_open`: The run capacitor is open.
 * - `start_capacitor_good`: The start capacitor is within its tolerance.
 * - `start_capacitor_low`: The start capacitor is below its tolerance.
 * - `start_capacitor_high`: The start capacitor is above its tolerance.
 * - `start_capacitor_open`: The start capacitor is open.
 * - `low_voltage`: The supply voltage is low.
 * - `high_voltage`: The supply voltage is high.
 * - `voltage_unbalance`: The three line voltages differ too much.
 * - `current_above_rated`: The current is above its rated load.
 * - `current_below_expected`: The current is below what the pressures ask for.
 * - `current_normal`: The current is what the pressures ask for.
 * - `locked_rotor`: The current stays near the locked-rotor current.
 * - `high_resistance_connection`: A winding reads higher than any plausible temperature explains, as a poor connection does.
 * - `current_unbalance`: The three line currents differ too much.
 * - `insulation_good`: The windings are sound against the frame; said where nothing else of the windings was measured.
 * - `insulation_doubtful`: The insulation is between the limits: warm, dry, measure again before anything is condemned.
 * - `terminals_ambiguous`: Start and run of unmarked terminals are too close for this meter to tell apart.
 * - `start_current_usual`: The inrush is about the locked-rotor current, as at any start across the line.
 * - `start_current_low`: The inrush is far below the locked-rotor current.
 * - `start_current_high`: The inrush is above the locked-rotor current by more than its tolerance.
 * - `single_phasing`: One of three phases is missing: a fuse, a contact or a conductor is open.
 * - `start_gear_failed`: The relay or other start gear does not bring the start winding in.
 * - `no_supply`: There is no supply at the motor: controls, contactor or fuse.
 */
export type FindingKind = "windings_good" | "open_winding" | "overload_open" | "shorted_turns" | "winding_to_frame" | "windings_inconsistent" | "run_capacitor_good" | "run_capacitor_low" | "run_capacitor_high" | "run_capacitor_open" | "start_capacitor_good" | "start_capacitor_low" | "start_capacitor_high" | "start_capacitor_open" | "low_voltage" | "high_voltage" | "voltage_unbalance" | "current_above_rated" | "current_below_expected" | "current_normal" | "locked_rotor" | "high_resistance_connection" | "current_unbalance" | "insulation_good" | "insulation_doubtful" | "terminals_ambiguous" | "start_current_usual" | "start_current_low" | "start_current_high" | "single_phasing" | "start_gear_failed" | "no_supply";

/**
 * What can hurt.
 * - `pressure`: The circuit is under pressure.
 * - `cold_burn`: Escaping liquid refrigerant burns by cold.
 * - `flammable`: The refrigerant can burn.
 * - `toxic`: The refrigerant is toxic.
 * - `asphyxiation`: Refrigerant vapour displaces air.
 * - `capacitor`: A capacitor holds its charge.
 * - `live_terminals`: Terminals are live.
 * - `terminal_venting`: A damaged terminal can blow out of the shell.
 * - `recovery_law`: Law asks for recovery and for a licence.
 * - `no_vacuum_energise`: A motor must not be energised or insulation-tested under vacuum.
 * - `no_vacuum_pump_down`: Not every compressor may be pumped down into vacuum.
 * - `air_in_circuit`: Air must never be compressed with oil and refrigerant.
 * - `blend_charge_liquid`: A zeotropic blend is charged as liquid.
 * - `keep_safety_controls`: A pressure control is never bypassed to get a reading.
 * - `hot_surface`: Pipes and shell are hot.
 */
export type CautionCode = "pressure" | "cold_burn" | "flammable" | "toxic" | "asphyxiation" | "capacitor" | "live_terminals" | "terminal_venting" | "recovery_law" | "no_vacuum_energise" | "no_vacuum_pump_down" | "air_in_circuit" | "blend_charge_liquid" | "keep_safety_controls" | "hot_surface";

/**
 * The step a caution belongs to.
 * - `look`: Looking and clamping.
 * - `gauges`: Attaching and removing gauges.
 * - `electrical`: Measuring at electrical terminals.
 * - `pump_down`: Closing valves for the pump-down test.
 * - `charging`: Adding or removing refrigerant.
 * - `opens_system`: Opening the refrigerant circuit.
 */
export type Step = "look" | "gauges" | "electrical" | "pump_down" | "charging" | "opens_system";

/** The unit of a number. */
export type Unit = "" | "ohm" | "megohm" | "uF" | "V" | "A" | "%" | "kPa absolute" | "kPa" | "kPa/min" | "degC" | "K" | "W" | "Hz" | "kg" | "minutes" | "hours" | "an hour" | "days";

/**
 * A language that sentences are written in.
 * - `en`: English.
 * - `es`: Spanish.
 */
export type Language = "en" | "es";

/**
 * Which winding or line a finding is about.
 * - `run`: The run winding, common to run.
 * - `start`: The start winding, common to start.
 * - `common`: What both windings share: the common terminal, its lead, and the internal overload.
 * - `line_1`: Line or terminal 1 of a three-phase motor.
 * - `line_2`: Line or terminal 2 of a three-phase motor.
 * - `line_3`: Line or terminal 3 of a three-phase motor.
 */
export type Winding = "run" | "start" | "common" | "line_1" | "line_2" | "line_3";

/**
 * What an alarm is about, the most urgent first.
 * - `switch_off`: Switch the compressor off.
 * - `do_not_energise`: Do not energise the motor.
 * - `discharge_too_hot`: The discharge line is too hot.
 * - `head_pressure_high`: The head pressure is above what is usual for the refrigerant.
 * - `compression_ratio_high`: The compression ratio is above what one stage takes.
 * - `liquid_returning`: Liquid refrigerant returns to the compressor.
 * - `vacuum_with_flammable`: A circuit with a flammable refrigerant is under vacuum and can draw in air.
 */
export type AlarmCode = "switch_off" | "do_not_energise" | "discharge_too_hot" | "head_pressure_high" | "compression_ratio_high" | "liquid_returning" | "vacuum_with_flammable";

/**
 * How specific a verdict is.
 * - `undecided`: Nothing can be stated.
 * - `cause`: One of the ten causes.
 * - `family`: A family of causes.
 * - `job`: A job that mends several causes.
 * - `electrical`: A finding of the motor, the supply or the start gear.
 * - `healthy`: Nothing that counts is wrong.
 * - `unidentified`: Something is wrong that no listed cause explains.
 */
export type Level = "undecided" | "cause" | "family" | "job" | "electrical" | "healthy" | "unidentified";

/**
 * Causes that let the same machine run, so that readings often cannot part them.
 * - `liquid_feed`: A restriction in the liquid line, or a metering device that passes too little.
 */
export type Family = "liquid_feed";

/**
 * A piece of work that mends several causes alike.
 * - `none`: Nothing needs mending.
 * - `condenser_air`: Clean the condenser, mend its fan.
 * - `evaporator_air`: Defrost or clean the evaporator, mend its fan.
 * - `open_circuit`: Recover, find the leak or replace drier and capillary, evacuate, charge by weight.
 * - `metering_valve`: Set, clean or replace the expansion valve.
 * - `compressor`: Replace the compressor.
 * - `electrical`: Mend the supply, the start gear or a capacitor.
 */
export type Job = "none" | "condenser_air" | "evaporator_air" | "open_circuit" | "metering_valve" | "compressor" | "electrical";

/**
 * What is said of the compressor with its motor.
 * - `open`: Nothing can be said yet.
 * - `cleared`: It is not the compressor.
 * - `failing`: It pumps less than it should, and still does something.
 * - `failed`: It is done: its motor, or so much of its pumping that nothing is left to wait for.
 */
export type CompressorState = "open" | "cleared" | "failing" | "failed";

/**
 * What kind of step it is.
 * - `leave`: Leave the machine as it is.
 * - `look`: Look or listen.
 * - `measure`: Take a reading.
 * - `act`: Do something to the machine and read again.
 * - `repair`: Repair.
 * - `replace_compressor`: Replace the compressor.
 * - `replace_machine`: Replace the machine.
 * - `wait`: Wait.
 */
export type StepKind = "leave" | "look" | "measure" | "act" | "repair" | "replace_compressor" | "replace_machine" | "wait";

/**
 * What the plate or the owner tells of the machine.
 * - `refrigerant`: Which refrigerant it holds.
 * - `metering`: How it meters.
 * - `duty`: What it is for.
 */
export type PlanContext = "refrigerant" | "metering" | "duty";

/**
 * What a repair changed.
 * - `worked`: The machine is cleared after it.
 * - `better`: The readings are far nearer to a healthy machine's, and it is not cleared.
 * - `unchanged`: The readings say the same as before.
 * - `worse`: The readings are further from a healthy machine's.
 */
export type Change = "worked" | "better" | "unchanged" | "worse";

/**
 * What happened.
 * Each kind has up to three figures of its own, with their units in their names.
 * - `start`: The compressor started.
 * - `stop`: The compressor stopped.
 * - `inrush`: The current of the start has come down to that of a running motor.
 * - `failed_start`: The motor did not come up and its supply was cut.
 * - `overload_cycling`: Starts fail one after the other: the overload opens and closes again.
 * - `start_gear_stays_in`: The compressor turns, and its current stays as high as with the start winding or start capacitor still in.
 * - `migration_likely`: It started after a long stop with a cold compressor: refrigerant has probably moved into its oil.
 * - `liquid_on_start`: Superheat was collapsed and current high after the start, and both recovered together.
 * - `stays_high`: Current is above the plate's rated load and stays there, with no liquid to explain it.
 * - `clean_start`: The start showed neither liquid nor a current that stays high.
 * - `start_not_told`: The start was unusual, but what was measured does not tell in which way.
 * - `pulling_down`: It is now pulling down.
 * - `steady`: It is now steady.
 * - `hunting`: The suction pressure swings regularly: the valve hunts.
 * - `pump_down`: A valve was closed and the compressor pumps down.
 * - `pump_down_lowest`: The pump-down has ended, with the lowest pressure it reached.
 * - `pump_down_rise`: The rise of pressure after the pump-down was measured; 0 is none beyond the gauge's scatter.
 * - `short_cycling`: The compressor makes short runs one after the other.
 * - `equalized`: The pressures of the stopped machine have become equal.
 * - `standing_pressure`: The pressure of the stopped machine has come to rest.
 * - `current_rises`: Current rises while both pressures fall.
 * - `defrost_begins`: The coil of the stopped machine is being heated.
 * - `defrost_ends`: The coil is no longer heated.
 * - `gap`: Samples were missing for so long that nothing is known across the gap.
 */
export type MonitorEventKind = "start" | "stop" | "inrush" | "failed_start" | "overload_cycling" | "start_gear_stays_in" | "migration_likely" | "liquid_on_start" | "stays_high" | "clean_start" | "start_not_told" | "pulling_down" | "steady" | "hunting" | "pump_down" | "pump_down_lowest" | "pump_down_rise" | "short_cycling" | "equalized" | "standing_pressure" | "current_rises" | "defrost_begins" | "defrost_ends" | "gap";

/**
 * What the machine does at the moment.
 * The three running states are statements about the last two minutes (at least one, and none of the first minute
 * after a start): steady when nothing measured drifts or scatters beyond its limit, pulling down when the suction
 * pressure falls smoothly, unsteady otherwise.
 * - `unknown`: Not enough was seen yet, or a gap has just ended.
 * - `off`: The compressor is off in the ordinary cycle.
 * - `starting`: The compressor was started less than one minute ago, whether or not it turns.
 * - `pulling_down`: It runs and the suction pressure falls smoothly.
 * - `steady`: It runs and holds still.
 * - `unsteady`: It runs and does neither: not settled yet, hunting, or taking up a load.
 * - `pumping_down`: It pumps down against a closed valve.
 * - `holding`: It stands after a pump-down, and no pressure shows yet that the valve was opened.
 * - `defrost`: It stands and its coil is being heated.
 * - `stopped`: It stands because its overload opened, or a start failed.
 */
export type MonitorState = "unknown" | "off" | "starting" | "pulling_down" | "steady" | "unsteady" | "pumping_down" | "holding" | "defrost" | "stopped";

/**
 * Why a sample could not be used, whole or in part.
 * - `repeated_time`: The time is that of the sample before: nothing was used.
 * - `backward_time`: The time lies before that of a sample already taken: nothing was used.
 * - `nothing_measured`: No channel holds a number that a machine can show: nothing but the time was used.
 * - `some_unusable`: Some channels hold what no machine can show; they were left out and the others used.
 */
export type MonitorSampleProblem = "repeated_time" | "backward_time" | "nothing_measured" | "some_unusable";

/**
 * The temperature scale a map's coefficients were made for.
 * - `celsius`: Degrees Celsius.
 * - `fahrenheit`: Degrees Fahrenheit.
 */
export type CompressorScale = "celsius" | "fahrenheit";

/** What is known of the machine; its refrigerant is an argument of its own. */
export interface System {
  /** The refrigerant as people write it: R290, R-404A, 404a, propane. */
  refrigerant?: string | null | undefined;
  /** Readings of this same machine when it was good. */
  record?: { readings: Readings }[] | null | undefined;
  /** The design point. */
  design?: Design | null | undefined;
  /** The compressor's plate. */
  compressor?: CompressorPlate | null | undefined;
  /** Nameplate charge, kg. */
  charge_kg?: number | null | undefined;
  /** Tolerance of the run capacitor's plate value, percent; 6 unless given. */
  run_capacitor_tolerance_percent?: number | null | undefined;
  /** The metering device; not known: the diagnosis allows for each kind's spread. */
  metering?: Metering | null | undefined;
  /** Whether a liquid receiver stands behind the condenser; not known: usual for the metering. */
  receiver?: boolean | null | undefined;
  /** Whether a regulator holds the compressor's inlet pressure down; not known: no. */
  suction_pressure_regulator?: boolean | null | undefined;
  /** What the machine is for. */
  duty?: Duty | null | undefined;
}

/**
 * The point the machine was designed for, as far as its maker tells; what is left out falls back to what is
 * usual for the duty and metering, with its wide spread.
 */
export interface Design {
  /** Space air temperature, degC. */
  space_c?: number | null | undefined;
  /** Air temperature onto the condenser, degC. */
  ambient_c?: number | null | undefined;
  /** Space air minus evaporating dew temperature, K. */
  evaporator_td_k?: number | null | undefined;
  /** Condensing temperature (mean of bubble and dew) minus ambient, K. */
  condenser_td_k?: number | null | undefined;
  /** Superheat at the compressor inlet, K. */
  suction_superheat_k?: number | null | undefined;
  /** Subcooling at the condenser outlet, K. */
  subcooling_k?: number | null | undefined;
  /** The maker's target suction pressure, kPa absolute; goes before `evaporator_td_k`. */
  suction_pressure_kpa?: number | null | undefined;
  /** The maker's target discharge pressure, kPa absolute; goes before `condenser_td_k`. */
  discharge_pressure_kpa?: number | null | undefined;
}

/** What the compressor's plate and data sheet say. */
export interface CompressorPlate {
  /** Rated-load current, A; a machine at its design point usually runs below it. */
  rated_load_a?: number | null | undefined;
  /** Locked-rotor current at rated voltage, A. */
  locked_rotor_a?: number | null | undefined;
  /** Rated voltage, V. */
  rated_v?: number | null | undefined;
  /** Number of phases, 1 or 3. */
  phases?: number | null | undefined;
  /** Supply frequency, Hz. */
  hz?: number | null | undefined;
  /** Resistance of the run winding (common to run), ohm. */
  run_winding_ohm?: number | "open" | null | undefined;
  /** Resistance of the start winding (common to start), ohm. */
  start_winding_ohm?: number | "open" | null | undefined;
  /** Temperature the winding resistances refer to, degC. */
  winding_reference_c?: number | null | undefined;
  /** Rated run capacitor, microfarad. */
  run_capacitor_uf?: number | "open" | null | undefined;
  /** Rated start capacitor, microfarad. */
  start_capacitor_uf?: number | "open" | null | undefined;
  /** How the compressor compresses. */
  kind?: CompressorKind | null | undefined;
  /** Whether its speed is fixed. */
  drive?: Drive | null | undefined;
  /** What starts a single-phase motor. */
  start_gear?: StartGear | null | undefined;
}

/** What was read on the visit. Pressures are absolute, kPa; temperatures degC. */
export interface Readings {
  /** Pressure at the compressor's suction, kPa absolute. */
  suction_pressure_kpa?: number | null | undefined;
  /** Pressure at the evaporator outlet, kPa absolute. */
  evaporator_pressure_kpa?: number | null | undefined;
  /** Pressure at the compressor's discharge, kPa absolute. */
  discharge_pressure_kpa?: number | null | undefined;
  /** Pressure at the condenser or receiver outlet, kPa absolute. */
  liquid_pressure_kpa?: number | null | undefined;
  /** Pipe temperature at the evaporator outlet, degC. */
  evaporator_outlet_c?: number | null | undefined;
  /** Pipe temperature at the compressor inlet, degC. */
  suction_line_c?: number | null | undefined;
  /** Pipe temperature at the compressor outlet, degC. */
  discharge_line_c?: number | null | undefined;
  /** Pipe temperature of the liquid line ahead of the drier, degC. */
  liquid_line_c?: number | null | undefined;
  /** Pipe temperature behind the drier, degC. */
  drier_outlet_c?: number | null | undefined;
  /** Air temperature of the cooled space, onto the evaporator, degC. */
  space_c?: number | null | undefined;
  /** Air temperature off the evaporator, degC. */
  supply_air_c?: number | null | undefined;
  /** Air temperature onto the condenser, degC. */
  ambient_c?: number | null | undefined;
  /** Air temperature off the condenser, degC. */
  condenser_exhaust_c?: number | null | undefined;
  /** Compressor current, A. */
  current_a?: number | null | undefined;
  /** Supply voltage while running, V. */
  voltage_v?: number | null | undefined;
  /** Lowest suction pressure reached against a closed valve, kPa absolute. */
  pump_down_kpa?: number | null | undefined;
  /** Rise of that pressure after the compressor stopped, kPa/min. */
  pump_down_rise_kpa_per_min?: number | null | undefined;
  /** Pressure of the stopped, equalised machine, kPa absolute. */
  standing_pressure_kpa?: number | null | undefined;
  /** The one temperature of the stopped, equalised machine, degC. */
  standing_temperature_c?: number | null | undefined;
  /** Resistance common to run, ohm. */
  winding_run_ohm?: number | "open" | null | undefined;
  /** Resistance common to start, ohm. */
  winding_start_ohm?: number | "open" | null | undefined;
  /** Resistance run to start, ohm. */
  winding_run_to_start_ohm?: number | "open" | null | undefined;
  /** Insulation resistance winding to frame, megohm. */
  winding_to_frame_megohm?: number | "open" | null | undefined;
  /** Run capacitor, microfarad. */
  run_capacitor_uf?: number | "open" | null | undefined;
  /** Start capacitor, microfarad. */
  start_capacitor_uf?: number | "open" | null | undefined;
  /** Time since the compressor started, minutes. */
  minutes_running?: number | null | undefined;
  /** Highest current in the first moment after the start, A. */
  start_current_a?: number | null | undefined;
  /** Compressor power, W. */
  power_w?: number | null | undefined;
  /** Wet-bulb temperature of the cooled space, degC. */
  space_wet_bulb_c?: number | null | undefined;
  /** Temperature of the windings when their resistances were measured, degC. */
  winding_c?: number | null | undefined;
  /** Test voltage of the insulation measurement, V. */
  insulation_test_v?: number | null | undefined;
  /** Resistance between unmarked terminals 1 and 2, ohm. */
  terminal_12_ohm?: number | "open" | null | undefined;
  /** Resistance between unmarked terminals 2 and 3, ohm. */
  terminal_23_ohm?: number | "open" | null | undefined;
  /** Resistance between unmarked terminals 1 and 3, ohm. */
  terminal_13_ohm?: number | "open" | null | undefined;
  /**
   * Pipe temperature just behind the metering device, degC; stands for the evaporating temperature of a
   * machine without a port.
   */
  evaporator_inlet_c?: number | null | undefined;
  /**
   * Pipe temperature at a return bend in the middle of the condenser, degC; stands for the condensing
   * temperature of a machine without a port.
   */
  condenser_middle_c?: number | null | undefined;
  /** Refrigerant that came out into the recovery cylinder, kg. */
  recovered_kg?: number | null | undefined;
  /** Refrigerant put in on this visit before these readings, kg. */
  added_kg?: number | null | undefined;
  /** Starts of the compressor an hour. */
  starts_per_hour?: number | null | undefined;
  /** Time that the machine has been running with hardly a stop, hours. */
  hours_running?: number | null | undefined;
  /** The three line-to-line voltages, V. */
  line_voltages_v?: [number, number, number] | null | undefined;
  /** The three line currents, A. */
  line_currents_a?: [number, number, number] | null | undefined;
  /** Whether the compressor runs while the pressures are read; not said: it runs. */
  running?: boolean | null | undefined;
  /** Which valve the pump-down was made against. */
  pump_down_valve?: PumpDownValve | null | undefined;
  /** What ended the pump-down. */
  pump_down_ended_by?: PumpDownEnd | null | undefined;
}

/** What was seen and heard on the visit. */
export interface Observations {
  /** How the noise behaves after the start. */
  start_noise?: StartNoise | null | undefined;
  /** Whether frost or sweat covers the compressor body. */
  frost_on_compressor?: boolean | null | undefined;
  /** What the sight glass shows. */
  sight_glass?: SightGlass | null | undefined;
  /** Whether the evaporator coil is iced over. */
  coil_iced?: boolean | null | undefined;
  /** Whether the condenser's fan turns. */
  condenser_fan?: Fan | null | undefined;
  /** Whether the evaporator's fan turns. */
  evaporator_fan?: Fan | null | undefined;
  /** What the condenser's face looks like. */
  condenser_face?: CondenserFace | null | undefined;
  /** How far frost or sweat covers the evaporator. */
  frost_line?: FrostLine | null | undefined;
  /** Whether oil stands at joints, fins or floor. */
  oil_traces?: boolean | null | undefined;
  /** Whether a leak was found. */
  leak_found?: boolean | null | undefined;
  /** Whether thermostat and controls call for cooling. */
  calls_for_cooling?: boolean | null | undefined;
  /** Whether the door closes and its gasket seals. */
  door_closes?: boolean | null | undefined;
  /** What is heard when the compressor is switched on. */
  start_sound?: StartSound | null | undefined;
}

/** Standard uncertainties (k = 1) of the instruments; what is left out takes its usual value. */
export interface Uncertainty {
  /** Pressure, percent of reading; 1 % and 2 kPa unless given. */
  pressure_percent?: number | null | undefined;
  /** Span of the gauge, kPa; given, `pressure_percent` is of this span. */
  pressure_span_kpa?: number | null | undefined;
  /** Pipe temperature, K; 0.7 K unless given, beside the clamp's bias. */
  line_temperature_k?: number | null | undefined;
  /** Air temperature, K; 0.5 K unless given. */
  air_temperature_k?: number | null | undefined;
  /** Current, percent of reading; 1.5 % unless given. */
  current_percent?: number | null | undefined;
}

/** What this machine lets be reached, and what is at hand. */
export interface Access {
  /** Readings, observations and actions that this visit cannot take. */
  cannot?: (Measurement | Action)[] | null | undefined;
  /** Whether there is a port on the suction side. */
  suction_port?: boolean | null | undefined;
  /** Whether there is a port on the high side. */
  high_side_port?: boolean | null | undefined;
  /** Whether there is a port on the liquid line. */
  liquid_port?: boolean | null | undefined;
  /** Whether the compressor has a suction service valve. */
  suction_service_valve?: boolean | null | undefined;
  /** Whether there is a valve in the liquid line. */
  liquid_line_valve?: boolean | null | undefined;
  /** The tools at hand; what is absent from the list is not at hand, no list says nothing. */
  tools?: Tool[] | null | undefined;
}

/** What things cost, in one currency of the caller's choice; null is not known. */
export interface Costs {
  /** The repair of each cause. */
  repair?: { [cause in Exclude<Cause, "none">]?: number | null | undefined } | null | undefined;
  /** Coming out once more. */
  visit?: number | null | undefined;
  /** An hour of work. */
  hour?: number | null | undefined;
  /** A new compressor, fitted. */
  compressor?: number | null | undefined;
  /** A new machine, installed. */
  machine?: number | null | undefined;
  /** What is lost each day that the machine does not do its work. */
  loss_a_day?: number | null | undefined;
  /** Days that the loss is reckoned over. */
  horizon_days?: number | null | undefined;
  /** The next test, its time and parts. */
  test?: number | null | undefined;
  /**
   * What is lost at once when the machine is left with its fault: the goods at risk times the chance that they
   * spoil.
   */
  product_at_risk?: number | null | undefined;
}

/** One visit: what is known of the machine, what was measured and seen, and how well. */
export interface Visit {
  /** What is known of the machine; its refrigerant is an argument of its own. */
  system?: System | null | undefined;
  /** What was read on the visit. Pressures are absolute, kPa; temperatures degC. */
  readings?: Readings | null | undefined;
  /** What was seen and heard on the visit. */
  observations?: Observations | null | undefined;
  /** Standard uncertainties (k = 1) of the instruments; what is left out takes its usual value. */
  uncertainty?: Uncertainty | null | undefined;
  /** What this machine lets be reached, and what is at hand. */
  access?: Access | null | undefined;
  /** What things cost, in one currency of the caller's choice; null is not known. */
  costs?: Costs | null | undefined;
  /** Readings of this visit before something was changed. */
  before?: { readings: Readings } | null | undefined;
  /** The language of the sentences in the answer; English unless given. */
  language?: Language | null | undefined;
  /** How long it has been so, hours. */
  complaint_hours?: number | null | undefined;
  /** What the customer complains of. */
  complaint?: Complaint[] | null | undefined;
  /** What is known to have been done before. */
  history?: History[] | null | undefined;
}

/**
 * What was measured at one moment, under the names of the readings; not measured is null.
 * A value that arrives more slowly than the others is best repeated with its latest value: superheat is only
 * known at a sample that holds both its pressure and its temperature.
 */
export type SampleNumbers = Pick<Readings, "suction_pressure_kpa" | "evaporator_pressure_kpa" | "discharge_pressure_kpa" | "liquid_pressure_kpa" | "evaporator_outlet_c" | "suction_line_c" | "discharge_line_c" | "liquid_line_c" | "drier_outlet_c" | "space_c" | "supply_air_c" | "ambient_c" | "condenser_exhaust_c" | "current_a" | "voltage_v">;

/** What is known of the machine; all of it optional, all of it from the compressor's plate or the technician. */
export interface MonitorSettings {
  /** The refrigerant, without which superheat is not known. */
  refrigerant?: string | null | undefined;
  /** Rated-load current of the plate, A. */
  rated_load_a?: number | null | undefined;
  /** Locked-rotor current of the plate at rated voltage, A. */
  locked_rotor_a?: number | null | undefined;
  /** Rated voltage of the plate, V. */
  rated_v?: number | null | undefined;
  /** Whether a regulator holds the compressor's inlet pressure down; not known: no. */
  suction_pressure_regulator?: boolean | null | undefined;
  /** Which valve a pump-down will be made against. */
  pump_down_valve?: PumpDownValve | null | undefined;
}

/** A value with its standard uncertainty (k = 1), both in the unit of the name they stand under. */
export interface Estimate {
  /** The value. */
  value: number;
  /** The standard uncertainty. */
  u: number;
}

/** The quantities of the cycle, each with its standard uncertainty; null where a reading is missing. */
export interface Cycle {
  /** Dew temperature at the compressor's suction pressure, degC. */
  suction_saturation_c: Estimate | null;
  /** Dew temperature at the evaporator outlet (its own pressure when given), degC. */
  evaporator_saturation_c: Estimate | null;
  /** Condensing temperature, mean of bubble and dew at the discharge (else liquid) pressure, degC. */
  condensing_c: Estimate | null;
  /** Superheat at the evaporator outlet, K; signed. */
  superheat_k: Estimate | null;
  /** Superheat at the compressor inlet, K; signed. */
  compressor_superheat_k: Estimate | null;
  /** Subcooling, from the liquid pressure, else from discharge with its larger uncertainty, K; signed. */
  subcooling_k: Estimate | null;
  /** Discharge pressure over suction pressure, both absolute. */
  pressure_ratio: Estimate | null;
  /** Space air minus evaporating dew temperature, K. */
  evaporator_td_k: Estimate | null;
  /** Condensing temperature minus ambient, K. */
  condenser_td_k: Estimate | null;
  /** Discharge line above the dew temperature at the discharge pressure, K. */
  discharge_superheat_k: Estimate | null;
  /** Liquid line minus drier outlet, K. */
  drier_drop_k: Estimate | null;
  /** Space air minus supply air, K. */
  supply_air_drop_k: Estimate | null;
  /** Condenser exhaust minus ambient, K. */
  exhaust_air_rise_k: Estimate | null;
}

/** What this machine would show if it were healthy, here and now. */
export interface Expected {
  /** Saturation (dew) temperature at the compressor's suction, degC. */
  suction_saturation_c: Estimate | null;
  /** Condensing temperature (mean of bubble and dew), degC. */
  condensing_c: Estimate | null;
  /** Suction pressure, kPa absolute. */
  suction_pressure_kpa: Estimate | null;
  /** Discharge pressure, kPa absolute. */
  discharge_pressure_kpa: Estimate | null;
  /** Superheat at the evaporator outlet, K. */
  superheat_k: Estimate | null;
  /** Superheat at the compressor inlet, K. */
  compressor_superheat_k: Estimate | null;
  /** Subcooling, K. */
  subcooling_k: Estimate | null;
  /** Discharge pressure over suction pressure. */
  pressure_ratio: Estimate | null;
  /** Pipe temperature at the evaporator outlet, degC. */
  evaporator_outlet_c: Estimate | null;
  /** Pipe temperature at the compressor inlet, degC. */
  suction_line_c: Estimate | null;
  /** Pipe temperature at the compressor outlet, degC. */
  discharge_line_c: Estimate | null;
  /** Pipe temperature of the liquid line, degC. */
  liquid_line_c: Estimate | null;
  /** Pipe temperature behind the drier, degC. */
  drier_outlet_c: Estimate | null;
  /** Air temperature off the evaporator, degC. */
  supply_air_c: Estimate | null;
  /** Air temperature off the condenser, degC. */
  condenser_exhaust_c: Estimate | null;
  /** Compressor current, A. */
  current_a: Estimate | null;
  /** Lowest pump-down pressure of a compressor in good order, kPa absolute. */
  pump_down_kpa: Estimate | null;
}

/** The probability and the mean severity of one cause. */
export interface CauseProbability {
  /** The cause. */
  cause: Cause;
  /** Its probability, from every single cause and every pair that holds it, 0 to 1. */
  probability: number;
  /** The fraction lost or added where the cause is present; null for none. */
  severity: number | null;
}

/** One reading's word for or against one cause. */
export interface Evidence {
  /** The cause. */
  cause: Cause;
  /** The reading. */
  reading: Measurement;
  /** Which way the reading speaks: `for` or `against`. */
  says: string;
  /** Log-odds of the cause with all readings minus with this one left out, nats; positive speaks for it. */
  weight_nats: number;
}

/** A measurement not yet taken and what it would tell. */
export interface NextMeasurement {
  /** What to measure. */
  measurement: Measurement;
  /** The information expected on the cause, bits. */
  information_bits: number;
  /** The effort it takes. */
  effort: Effort;
  /** What it takes, minutes (judged). */
  minutes: number;
}

/** A cause and the measurements that rule it out. */
export interface RuledOut {
  /** The cause. */
  cause: Cause;
  /** The measurements, the strongest first. */
  by: Measurement[];
}

/** A cause and the measurements that would rule it out. */
export interface StillOpen {
  /** The cause. */
  cause: Cause;
  /** The measurements, the strongest first. */
  closed_by: Measurement[];
}

/** Something suspicious about one field. */
export interface Warning {
  /** The path of the field. */
  field: string;
  /** The same in words, in the language asked for. */
  text: string;
  /** What is suspicious. */
  code: WarningKind;
  /** The value that was read, in `unit`; null where it is no number. */
  value: number | null;
  /** The limit that it was held against, in `unit`; null where there is none. */
  limit: number | null;
  /** The unit of both; null where there is no number. */
  unit: string | null;
}

/** A finding with the value it rests on and the limit it was held against. */
export interface Finding {
  /** What was found. */
  finding: FindingKind;
  /** The value, in `unit`; null where a meter read open. */
  value: number | null;
  /** The limit, in `unit`; null where there is none. */
  limit: number | null;
  /** The unit of both, such as `uF` or `ohm`. */
  unit: string;
  /** Which winding or line; null where it cannot be told. */
  winding: Winding | null;
  /** The value referred to the limit's temperature, where that was done. */
  corrected: Corrected | null;
  /** How probable it is that what the finding says is so, 0 to 1. */
  probability: number;
}

/** A value referred to another temperature than it was measured at. */
export interface Corrected {
  /** The value at `to_c`, in the finding's unit. */
  value: number;
  /** The temperature it was measured at, degC. */
  from_c: number;
  /** The temperature it is referred to, degC. */
  to_c: number;
}

/** Which of a motor's unmarked terminals is which, by the numbers that the technician gave them. */
export interface Terminals {
  /** The common terminal. */
  common: number;
  /** The run terminal. */
  run: number;
  /** The start terminal. */
  start: number;
  /** How probable it is that this is so, 0 to 1. */
  probability: number;
}

/** The most specific statement that the rule's stated error rates allow. */
export interface Verdict {
  /** How specific it is. */
  level: Level;
  /** A cause, a family, a job or an electrical finding, by its level; null where nothing is stated. */
  name: string | null;
  /** Its probability, 0 to 1. */
  probability: number;
}

/** A family of causes that readings often cannot part. */
export interface FamilyProbability {
  /** The family. */
  name: Family;
  /** The probability of its causes together, pairs counted once. */
  probability: number;
  /** Its causes. */
  causes: Cause[];
}

/** A job that mends what is wrong. */
export interface JobProbability {
  /** The job. */
  name: Job;
  /** The probability that it mends what is wrong, pairs counted once. */
  probability: number;
  /** The causes that it mends. */
  causes: Cause[];
}

/** Whether it is the compressor. */
export interface CompressorAnswer {
  /** The state. */
  state: CompressorState;
  /** The probability that the compressor or its motor is at fault. */
  probability: number;
}

/** What is dangerous, with the reading it rests on. */
export interface Alarm {
  /** What it is about. */
  code: AlarmCode;
  /** The path of the field. */
  field: string;
  /** Its value, in `unit`; null where a meter read open or it is no number. */
  value: number | null;
  /** The limit, in `unit`; null where there is none. */
  limit: number | null;
  /** The unit of both. */
  unit: string;
  /** The same in words, in the language asked for. */
  text: string;
}

/** One caution at the step it belongs to. */
export interface Caution {
  /** What can hurt. */
  code: CautionCode;
  /** The step it belongs to. */
  step: Step;
  /** The same in words, in the language asked for. */
  text: string;
}

/** The whole answer to one visit. */
export interface Report {
  /** Always `ok`: an error is an answer of its own. */
  status: "ok";
  /** What the readings say the machine does. */
  cycle: Cycle;
  /** What it would do if healthy. */
  expected: Expected;
  /** All causes, most probable first. */
  causes: CauseProbability[];
  /** Whether acting on `leading` is justified by the rule's stated error rates. */
  decided: boolean;
  /** The most probable cause, `none` included. */
  leading: Cause;
  /**
   * How probable readings as odd as these are under the best explanation; null where nothing could be judged.
   * Lowered by the probability that the visit was told wrongly: another refrigerant, readings in each other's place.
   */
  fits: number | null;
  /** The readings' words for and against the leading causes, the strongest first. */
  evidence: Evidence[];
  /** What to measure next, the most telling first. */
  next: NextMeasurement[];
  /** Causes with a probability below 0.02 and what excludes them. */
  ruled_out: RuledOut[];
  /** The other causes and what would close them. */
  still_open: StillOpen[];
  /** What is suspicious about the input. */
  warnings: Warning[];
  /** What the motor and supply readings show. */
  electrical: Finding[];
  /** Which of the motor's unmarked terminals is which; null where they were not measured or do not tell. */
  terminals: Terminals | null;
  /** The most specific statement that the error rates allow. */
  verdict: Verdict;
  /** How probable each family of causes is that readings often cannot part. */
  families: FamilyProbability[];
  /** How probable each job is, the most probable first. */
  jobs: JobProbability[];
  /** Whether it is the compressor. */
  compressor: CompressorAnswer;
  /** What is dangerous, the most urgent first. */
  alarms: Alarm[];
  /** What to do next, and what the ways to go on cost. */
  plan: PlanOfVisit;
  /** What to take care of, step by step. */
  cautions: Caution[];
}

/** An input that cannot be used. */
export interface Refusal {
  /** Always `error`. */
  status: string;
  /** The path of the field, such as `readings.suction_pressure_kpa`; empty where no one field is at fault. */
  field: string;
  /** What is wrong, in words, in the language asked for. */
  error: string;
  /** What is wrong. */
  code: ErrorCode;
  /** The value that was given, in `unit`; null where it is no number. */
  value: number | null;
  /** The limit that it broke, in `unit`; null where there is none. */
  limit: number | null;
  /** The unit of both; null where there is none. */
  unit: string | null;
}

/** The next step of a visit. */
export interface PlanStep {
  /** What kind of step it is. */
  kind: StepKind;
  /**
   * What it is about: a measurement, an observation, a cause, an action, an electrical finding, or what the plate
   * tells.
   */
  name: string;
  /** What it takes, minutes (judged). */
  minutes: number;
  /** The probability that its outcome changes what is done, 0 to 1. */
  changes: number;
  /** The effort; null for what is no measurement. */
  effort: Effort | null;
  /** What a hose takes from the charge, where one goes on, g. */
  hose_takes_g: number | null;
  /** The same over the nameplate charge, percent. */
  hose_takes_percent: number | null;
  /** The same in words, in the language asked for. */
  text: string;
}

/** What follows on one outcome of the step. */
export interface PlanThen {
  /** The outcome. */
  outcome: string;
  /** Its probability, 0 to 1. */
  probability: number;
  /** What is then the best way to go on. */
  kind: StepKind;
  /** What that is about. */
  name: string;
}

/** A way to go on with what it is expected to cost. */
export interface PlanWay {
  /** What kind of way it is. */
  kind: StepKind;
  /** What it is about. */
  name: string;
  /** The expected cost, in the visit's currency. */
  expected_cost: number;
}

/** What to do next, and what the ways to go on cost. */
export interface PlanOfVisit {
  /** The next step. */
  step: PlanStep;
  /** What follows on each outcome of the step. */
  then: PlanThen[];
  /** The ways to go on, the cheapest first; empty where no costs were told. */
  ways: PlanWay[];
  /** The probability of a weak compressor above which replacing it pays. */
  replace_above: number | null;
  /** What to let out of the cylinder by the scale after an evacuation, where the step ends with a charge by weight. */
  weigh_in_kg: Estimate | null;
  /** What was changed on this visit and whether it helped; null without readings from before. */
  change: Change | null;
}

/** A way to go on. */
export interface Way {
  /** What kind of way it is: `leave`, `test`, `repair`, `replace_compressor`, `replace_machine`. */
  action: string;
  /** The cause that is repaired. */
  cause: Cause | null;
}

/** A way to go on with its expected cost. */
export interface Alternative {
  /** What kind of way it is: `leave`, `test`, `repair`, `replace_compressor`, `replace_machine`. */
  action: string;
  /** The cause that is repaired. */
  cause: Cause | null;
  /** The expected cost; null where it is not known. */
  expected_cost: number | null;
}

/** All ways to go on with their expected costs, and the cheapest where a cost is known. */
export interface Decision {
  /** Always `ok`. */
  status: "ok";
  /** Every way. */
  alternatives: Alternative[];
  /** The cheapest way; null where none can be recommended. */
  recommended: Way | null;
}

/** Bubble and dew temperature at a pressure. */
export interface SaturationTemperatures {
  /** Always `ok`. */
  status: "ok";
  /** Bubble temperature, degC. */
  bubble_c: number;
  /** Dew temperature, degC. */
  dew_c: number;
}

/** Bubble and dew pressure at a temperature. */
export interface SaturationPressures {
  /** Always `ok`. */
  status: "ok";
  /** Bubble pressure, kPa absolute. */
  bubble_kpa: number;
  /** Dew pressure, kPa absolute. */
  dew_kpa: number;
}

/** The state at a pressure and a temperature, outside the two-phase region. */
export interface SinglePhaseState {
  /** Always `ok`. */
  status: "ok";
  /** The phase. */
  phase: string;
  /** Density, kg/m3. */
  density_kg_m3: number;
  /** Specific enthalpy, kJ/kg, IIR reference state. */
  enthalpy_kj_kg: number;
  /** Specific entropy, kJ/(kg K), IIR reference state. */
  entropy_kj_kg_k: number;
  /** Isobaric heat capacity, kJ/(kg K); null near the critical point. */
  heat_capacity_kj_kg_k: number | null;
  /** Speed of sound, m/s; null where it is not known. */
  speed_of_sound_m_s: number | null;
}

/** The state at a pressure and an enthalpy or an entropy. */
export interface HeatState {
  /** Always `ok`. */
  status: "ok";
  /** The phase. */
  phase: string;
  /** The temperature, degC. */
  temperature_c: number;
  /** The share of vapor by mass between bubble and dew; null outside. */
  quality: number | null;
}

/** A pressure and a temperature between bubble and dew: they do not fix the state. */
export interface TwoPhaseState {
  /** Always `ok`. */
  status: "ok";
  /** The phase. */
  phase: string;
}

/** A component of a refrigerant. */
export interface Component {
  /** Its designation. */
  component: string;
  /** Its share by mass, percent. */
  mass_percent: number;
}

/** What is known of a refrigerant. */
export interface RefrigerantFacts {
  /** Always `ok`. */
  status: "ok";
  /** The designation as the library writes it. */
  designation: string;
  /** Components by mass. */
  composition: Component[];
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
  /** Standard uncertainty of the saturation temperature by the model itself, K. */
  saturation_uncertainty_k: number;
  /** Global warming potential over 100 years, by the fifth assessment report; null where there is no source. */
  gwp_ar5: number | null;
  /** The same by the sixth assessment report. */
  gwp_ar6: number | null;
  /** Ozone depletion potential; null where there is no source. */
  odp: number | null;
  /** Life in the atmosphere, years; null where there is no source. */
  atmospheric_life_years: number | null;
}

/** Every refrigerant there is a table for. */
export interface RefrigerantList {
  /** Always `ok`. */
  status: "ok";
  /** The designations. */
  refrigerants: string[];
}
