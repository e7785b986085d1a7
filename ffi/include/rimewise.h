// Rimewise: diagnostics for small refrigeration machines. The C API.
//
// Written by `cargo run -p rimewise-schema`; do not edit.
//
// THE CONTRACT, which holds for every function and is not repeated below:
//
//  * Names begin with rimewise_, Rimewise or RIMEWISE_.
//  * Every function that can fail returns a RimewiseStatus; 0 is done. A result is written through a pointer, the last
//    argument or arguments, all or nothing: after any other status the result is untouched.
//  * A pointer is NULL or points to memory that is valid for its type. NULL gives RIMEWISE_STATUS_NULL_POINTER, except
//    where a function says what NULL means there.
//  * Units stand in the names: _kpa is kilopascal ABSOLUTE, never gauge; _c degree Celsius; _k kelvin of difference;
//    _a ampere; _v volt; _ohm; _megohm; _uf microfarad; _kg; _w; _nats; _bits. Numbers are binary32.
//  * Going in, NaN means not measured and RIMEWISE_NOT_KNOWN (-1) means not known, and both are normal; the
//    rimewise_..._clear functions set them. In a resistance or capacitance INFINITY means that the meter reads open.
//  * Coming out, no number is NaN. What is absent is 0 with a clear bit in the `valid` mask beside it. The structs of
//    inputs that rimewise_..._clear and rimewise_monitor_readings fill are inputs, and there NaN is not measured.
//  * Codes are int32_t with permanent numbers, never reused. An unknown one gives RIMEWISE_STATUS_UNKNOWN_CODE.
//  * A struct whose first member is `size` may grow at its end; the caller sets `size` to its own sizeof, and a program
//    built with an older header keeps working. A size that the library does not know, which is one that the first
//    release with this struct did not reach or one above the library's own, gives RIMEWISE_STATUS_WRONG_SIZE. A struct
//    without a size never changes within one major version (while that is 0: within one minor version).
//  * RimewiseMonitor, RimewiseWorkspace and RimewiseRefrigerantStorage are memory of the caller with private content:
//    only the functions that take them may write to them.
//  * No allocation, nothing to free, no global state, no last error: every function is re-entrant and may run in any
//    number of threads or interrupts at once, as long as no two write the same memory of the caller.
//  * Texts are UTF-8, end with NUL and live as long as the program. Each list of texts is a constant of its own, such as
//    &rimewise_cause_names, &rimewise_cause_en, &rimewise_cause_es: a program links the lists that it names.
//  * Lists inside a struct have room for more than this release fills; the count beside a list says how many there are.
//    Arrays by cause have RIMEWISE_CAUSES_MAX places, by the number of the RimewiseCause.
//  * The same input gives the same output, to the last bit, on every target.
//
// A refrigerant is a constant: &rimewise_r290 links that one table, rimewise_refrigerant_find() links all of them.
//
// WHAT THIS IS NOT: a safety device. Refrigerant circuits are under pressure, burn by cold, may be flammable or toxic;
// capacitors hold charge; terminals are live and can vent. The report's cautions name what belongs to each step. Local
// codes and licensed practice go before anything this library says. Never bypass a safety control to get a reading.


#ifndef RIMEWISE_H
#define RIMEWISE_H

#include <stdint.h>
#define RIMEWISE_OK RIMEWISE_STATUS_OK

// The device that meters liquid into the evaporator.
enum RimewiseMetering
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // A capillary tube, with or without a suction-liquid exchanger.
    RIMEWISE_METERING_CAPILLARY = 1,
    // A fixed orifice or piston.
    RIMEWISE_METERING_ORIFICE = 2,
    // A thermostatic expansion valve.
    RIMEWISE_METERING_THERMOSTATIC_VALVE = 3,
    // An electronic expansion valve.
    RIMEWISE_METERING_ELECTRONIC_VALVE = 4,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseMetering RimewiseMetering;
#else
typedef int32_t RimewiseMetering;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What the machine is for, which fixes what is usual where its maker's data is missing.
enum RimewiseDuty
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Holds frozen goods, space near -20 degC.
    RIMEWISE_DUTY_FREEZER = 1,
    // Holds chilled goods, space near +3 degC.
    RIMEWISE_DUTY_COOLER = 2,
    // Cools rooms for people, space near 26 degC.
    RIMEWISE_DUTY_AIR_CONDITIONING = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseDuty RimewiseDuty;
#else
typedef int32_t RimewiseDuty;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// How a compressor compresses.
enum RimewiseCompressorKind
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // A piston.
    RIMEWISE_COMPRESSOR_KIND_RECIPROCATING = 1,
    // A rolling piston or vane.
    RIMEWISE_COMPRESSOR_KIND_ROTARY = 2,
    // A scroll, which must not be pulled into vacuum.
    RIMEWISE_COMPRESSOR_KIND_SCROLL = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseCompressorKind RimewiseCompressorKind;
#else
typedef int32_t RimewiseCompressorKind;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// Whether a compressor's speed is fixed.
enum RimewiseDrive
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // It runs at the speed of the supply.
    RIMEWISE_DRIVE_FIXED_SPEED = 1,
    // An inverter sets its speed.
    RIMEWISE_DRIVE_VARIABLE_SPEED = 2,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseDrive RimewiseDrive;
#else
typedef int32_t RimewiseDrive;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What starts a single-phase motor.
enum RimewiseStartGear
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // A relay that the motor's current pulls in.
    RIMEWISE_START_GEAR_CURRENT_RELAY = 1,
    // A relay that the start winding's voltage pulls in.
    RIMEWISE_START_GEAR_POTENTIAL_RELAY = 2,
    // A resistor that switches the start winding off by warming up (positive temperature coefficient).
    RIMEWISE_START_GEAR_PTC = 3,
    // An electronic switch.
    RIMEWISE_START_GEAR_SOLID_STATE = 4,
    // None: a motor on three phases, or one with a run capacitor alone.
    RIMEWISE_START_GEAR_NONE = 5,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseStartGear RimewiseStartGear;
#else
typedef int32_t RimewiseStartGear;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// Which valve was closed for the pump-down test.
enum RimewisePumpDownValve
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // The compressor's suction service valve: only the compressor itself is pumped down.
    RIMEWISE_PUMP_DOWN_VALVE_SUCTION_SERVICE = 1,
    // A liquid-line valve: the whole low side is pumped down, and a rise may be boiling refrigerant or oil.
    RIMEWISE_PUMP_DOWN_VALVE_LIQUID_LINE = 2,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewisePumpDownValve RimewisePumpDownValve;
#else
typedef int32_t RimewisePumpDownValve;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What ended the pump-down test.
enum RimewisePumpDownEnd
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // The pressure fell no further: a measurement of what the compressor can pull.
    RIMEWISE_PUMP_DOWN_END_LIMIT = 1,
    // The low-pressure control stopped it: only an upper bound.
    RIMEWISE_PUMP_DOWN_END_LOW_PRESSURE_CONTROL = 2,
    // The technician stopped it: only an upper bound.
    RIMEWISE_PUMP_DOWN_END_TECHNICIAN = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewisePumpDownEnd RimewisePumpDownEnd;
#else
typedef int32_t RimewisePumpDownEnd;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// How the noise behaves from the moment the compressor starts.
enum RimewiseStartNoise
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // No unusual noise.
    RIMEWISE_START_NOISE_NONE = 0,
    // Loud at first, then fading within minutes.
    RIMEWISE_START_NOISE_FADES = 1,
    // Loud and staying so.
    RIMEWISE_START_NOISE_STAYS = 2,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseStartNoise RimewiseStartNoise;
#else
typedef int32_t RimewiseStartNoise;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What the liquid line's sight glass shows.
enum RimewiseSightGlass
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Clear liquid.
    RIMEWISE_SIGHT_GLASS_CLEAR = 1,
    // Bubbles or flash gas.
    RIMEWISE_SIGHT_GLASS_BUBBLES = 2,
    // There is none.
    RIMEWISE_SIGHT_GLASS_NONE_FITTED = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseSightGlass RimewiseSightGlass;
#else
typedef int32_t RimewiseSightGlass;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What a fan does.
enum RimewiseFan
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // It turns as it should.
    RIMEWISE_FAN_TURNS = 1,
    // It turns too slowly.
    RIMEWISE_FAN_SLOW = 2,
    // It stands still.
    RIMEWISE_FAN_STANDS = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseFan RimewiseFan;
#else
typedef int32_t RimewiseFan;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What the condenser's face looks like.
enum RimewiseCondenserFace
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Clean.
    RIMEWISE_CONDENSER_FACE_CLEAN = 1,
    // Dirty, with air still passing.
    RIMEWISE_CONDENSER_FACE_DIRTY = 2,
    // Blocked.
    RIMEWISE_CONDENSER_FACE_BLOCKED = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseCondenserFace RimewiseCondenserFace;
#else
typedef int32_t RimewiseCondenserFace;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// How far frost or sweat covers the evaporator.
enum RimewiseFrostLine
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // All of it.
    RIMEWISE_FROST_LINE_WHOLE_COIL = 1,
    // Only the part behind the metering device.
    RIMEWISE_FROST_LINE_PART_OF_COIL = 2,
    // Nowhere.
    RIMEWISE_FROST_LINE_NONE = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseFrostLine RimewiseFrostLine;
#else
typedef int32_t RimewiseFrostLine;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What is heard when the compressor is switched on.
enum RimewiseStartSound
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // It starts.
    RIMEWISE_START_SOUND_STARTS = 1,
    // It hums and its protector opens.
    RIMEWISE_START_SOUND_HUMS_AND_TRIPS = 2,
    // Nothing.
    RIMEWISE_START_SOUND_SILENT = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseStartSound RimewiseStartSound;
#else
typedef int32_t RimewiseStartSound;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What the customer complains of.
enum RimewiseComplaint
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // The space is not cold enough.
    RIMEWISE_COMPLAINT_NOT_COLD = 1,
    // The compressor never stops.
    RIMEWISE_COMPLAINT_NEVER_STOPS = 2,
    // It starts and stops too often.
    RIMEWISE_COMPLAINT_SHORT_CYCLES = 3,
    // It does not start.
    RIMEWISE_COMPLAINT_DOES_NOT_START = 4,
    // A breaker, a fuse or a protector trips.
    RIMEWISE_COMPLAINT_TRIPS = 5,
    // It is noisy at the start.
    RIMEWISE_COMPLAINT_NOISY_START = 6,
    // It is noisy while running.
    RIMEWISE_COMPLAINT_NOISY_RUNNING = 7,
    // The evaporator ices up.
    RIMEWISE_COMPLAINT_ICES_UP = 8,
    // Nothing: the visit is for maintenance.
    RIMEWISE_COMPLAINT_MAINTENANCE = 9,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseComplaint RimewiseComplaint;
#else
typedef int32_t RimewiseComplaint;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What is known to have been done to the machine before.
enum RimewiseHistory
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // The compressor was replaced.
    RIMEWISE_HISTORY_COMPRESSOR_REPLACED = 1,
    // The capillary or valve was replaced.
    RIMEWISE_HISTORY_METERING_REPLACED = 2,
    // The circuit was opened.
    RIMEWISE_HISTORY_CIRCUIT_OPENED = 3,
    // Refrigerant was added.
    RIMEWISE_HISTORY_CHARGE_ADDED = 4,
    // It leaked before.
    RIMEWISE_HISTORY_LEAKED_BEFORE = 5,
    // The coil was cleaned.
    RIMEWISE_HISTORY_COIL_CLEANED = 6,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseHistory RimewiseHistory;
#else
typedef int32_t RimewiseHistory;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// A tool that is at hand on the visit.
enum RimewiseTool
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Gauges with hoses.
    RIMEWISE_TOOL_GAUGES = 1,
    // A pipe clamp thermometer.
    RIMEWISE_TOOL_PIPE_CLAMP = 2,
    // An air thermometer.
    RIMEWISE_TOOL_AIR_THERMOMETER = 3,
    // A current clamp.
    RIMEWISE_TOOL_CURRENT_CLAMP = 4,
    // A multimeter.
    RIMEWISE_TOOL_MULTIMETER = 5,
    // An insulation tester.
    RIMEWISE_TOOL_INSULATION_TESTER = 6,
    // A capacitance meter.
    RIMEWISE_TOOL_CAPACITOR_METER = 7,
    // A scale for refrigerant.
    RIMEWISE_TOOL_SCALE = 8,
    // A recovery unit with its cylinder.
    RIMEWISE_TOOL_RECOVERY_UNIT = 9,
    // Dry nitrogen with its regulator.
    RIMEWISE_TOOL_NITROGEN = 10,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseTool RimewiseTool;
#else
typedef int32_t RimewiseTool;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What can be done on a visit beside reading and looking.
enum RimewiseAction
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Switch off, let the pressures equalise, and read the standing pressure.
    RIMEWISE_ACTION_STOP_AND_EQUALISE = 1,
    // Defrost the evaporator, let it settle, and read again.
    RIMEWISE_ACTION_DEFROST_AND_REREAD = 2,
    // Clean the condenser, let it settle, and read again.
    RIMEWISE_ACTION_CLEAN_AND_REREAD = 3,
    // Search for a leak.
    RIMEWISE_ACTION_LEAK_SEARCH = 4,
    // Recover the charge and weigh it.
    RIMEWISE_ACTION_RECOVER_AND_WEIGH = 5,
    // Switch on and watch the start.
    RIMEWISE_ACTION_START_TEST = 6,
    // Let the machine settle and read again.
    RIMEWISE_ACTION_LET_IT_SETTLE = 7,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseAction RimewiseAction;
#else
typedef int32_t RimewiseAction;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// A reading, an observation, or a quantity derived from them.
//
// Readings have numbers from 1, observations from 100, derived quantities from 200. The name of a reading is the name of its input field; the name of a derived quantity is its key in the report.
enum RimewiseMeasurement
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Pressure at the compressor's suction, kPa absolute.
    RIMEWISE_MEASUREMENT_SUCTION_PRESSURE = 1,
    // Pressure at the evaporator outlet, kPa absolute.
    RIMEWISE_MEASUREMENT_EVAPORATOR_PRESSURE = 2,
    // Pressure at the compressor's discharge, kPa absolute.
    RIMEWISE_MEASUREMENT_DISCHARGE_PRESSURE = 3,
    // Pressure at the condenser or receiver outlet, kPa absolute.
    RIMEWISE_MEASUREMENT_LIQUID_PRESSURE = 4,
    // Pipe temperature at the evaporator outlet, degC.
    RIMEWISE_MEASUREMENT_EVAPORATOR_OUTLET = 5,
    // Pipe temperature at the compressor inlet, degC.
    RIMEWISE_MEASUREMENT_SUCTION_LINE = 6,
    // Pipe temperature at the compressor outlet, degC.
    RIMEWISE_MEASUREMENT_DISCHARGE_LINE = 7,
    // Pipe temperature of the liquid line ahead of the drier, degC.
    RIMEWISE_MEASUREMENT_LIQUID_LINE = 8,
    // Pipe temperature behind the drier, degC.
    RIMEWISE_MEASUREMENT_DRIER_OUTLET = 9,
    // Air temperature of the cooled space, onto the evaporator, degC.
    RIMEWISE_MEASUREMENT_SPACE = 10,
    // Air temperature off the evaporator, degC.
    RIMEWISE_MEASUREMENT_SUPPLY_AIR = 11,
    // Air temperature onto the condenser, degC.
    RIMEWISE_MEASUREMENT_AMBIENT = 12,
    // Air temperature off the condenser, degC.
    RIMEWISE_MEASUREMENT_CONDENSER_EXHAUST = 13,
    // Compressor current, A.
    RIMEWISE_MEASUREMENT_CURRENT = 14,
    // Supply voltage while running, V.
    RIMEWISE_MEASUREMENT_VOLTAGE = 15,
    // Lowest suction pressure reached against a closed valve, kPa absolute.
    RIMEWISE_MEASUREMENT_PUMP_DOWN = 16,
    // Rise of that pressure after the compressor stopped, kPa/min.
    RIMEWISE_MEASUREMENT_PUMP_DOWN_RISE = 17,
    // Pressure of the stopped, equalised machine, kPa absolute.
    RIMEWISE_MEASUREMENT_STANDING_PRESSURE = 18,
    // The one temperature of the stopped, equalised machine, degC.
    RIMEWISE_MEASUREMENT_STANDING_TEMPERATURE = 19,
    // Resistance common to run, ohm.
    RIMEWISE_MEASUREMENT_WINDING_RUN = 20,
    // Resistance common to start, ohm.
    RIMEWISE_MEASUREMENT_WINDING_START = 21,
    // Resistance run to start, ohm.
    RIMEWISE_MEASUREMENT_WINDING_RUN_TO_START = 22,
    // Insulation resistance winding to frame, megohm.
    RIMEWISE_MEASUREMENT_WINDING_TO_FRAME = 23,
    // Run capacitor, microfarad.
    RIMEWISE_MEASUREMENT_RUN_CAPACITOR = 24,
    // Start capacitor, microfarad.
    RIMEWISE_MEASUREMENT_START_CAPACITOR = 25,
    // Time since the compressor started, minutes.
    RIMEWISE_MEASUREMENT_MINUTES_RUNNING = 26,
    // Highest current in the first moment after the start, A.
    RIMEWISE_MEASUREMENT_START_CURRENT = 27,
    // Compressor power, W.
    RIMEWISE_MEASUREMENT_POWER = 28,
    // Wet-bulb temperature of the cooled space, degC.
    RIMEWISE_MEASUREMENT_SPACE_WET_BULB = 29,
    // Temperature of the windings when their resistances were measured, degC.
    RIMEWISE_MEASUREMENT_WINDING_TEMPERATURE = 30,
    // Test voltage of the insulation measurement, V.
    RIMEWISE_MEASUREMENT_INSULATION_TEST = 31,
    // Resistance between unmarked terminals 1 and 2, ohm.
    RIMEWISE_MEASUREMENT_TERMINAL12 = 32,
    // Resistance between unmarked terminals 2 and 3, ohm.
    RIMEWISE_MEASUREMENT_TERMINAL23 = 33,
    // Resistance between unmarked terminals 1 and 3, ohm.
    RIMEWISE_MEASUREMENT_TERMINAL13 = 34,
    // Pipe temperature just behind the metering device, degC; stands for the evaporating temperature of a
    // machine without a port.
    RIMEWISE_MEASUREMENT_EVAPORATOR_INLET = 40,
    // Pipe temperature at a return bend in the middle of the condenser, degC; stands for the condensing
    // temperature of a machine without a port.
    RIMEWISE_MEASUREMENT_CONDENSER_MIDDLE = 41,
    // Refrigerant that came out into the recovery cylinder, kg.
    RIMEWISE_MEASUREMENT_RECOVERED = 42,
    // Refrigerant put in on this visit before these readings, kg.
    RIMEWISE_MEASUREMENT_ADDED = 43,
    // Starts of the compressor an hour.
    RIMEWISE_MEASUREMENT_STARTS_PER_HOUR = 44,
    // Time that the machine has been running with hardly a stop, hours.
    RIMEWISE_MEASUREMENT_HOURS_RUNNING = 45,
    // The three line-to-line voltages, V.
    RIMEWISE_MEASUREMENT_LINE_VOLTAGES = 38,
    // The three line currents, A.
    RIMEWISE_MEASUREMENT_LINE_CURRENTS = 39,
    // Whether the compressor runs while the pressures are read; not said: it runs.
    RIMEWISE_MEASUREMENT_RUNNING = 35,
    // Which valve the pump-down was made against.
    RIMEWISE_MEASUREMENT_PUMP_DOWN_VALVE = 36,
    // What ended the pump-down.
    RIMEWISE_MEASUREMENT_PUMP_DOWN_ENDED_BY = 37,
    // How the noise behaves after the start.
    RIMEWISE_MEASUREMENT_START_NOISE = 100,
    // Whether frost or sweat covers the compressor body.
    RIMEWISE_MEASUREMENT_FROST_ON_COMPRESSOR = 101,
    // What the sight glass shows.
    RIMEWISE_MEASUREMENT_SIGHT_GLASS = 102,
    // Whether the evaporator coil is iced over.
    RIMEWISE_MEASUREMENT_COIL_ICED = 103,
    // Whether the condenser's fan turns.
    RIMEWISE_MEASUREMENT_CONDENSER_FAN = 104,
    // Whether the evaporator's fan turns.
    RIMEWISE_MEASUREMENT_EVAPORATOR_FAN = 105,
    // What the condenser's face looks like.
    RIMEWISE_MEASUREMENT_CONDENSER_FACE = 106,
    // How far frost or sweat covers the evaporator.
    RIMEWISE_MEASUREMENT_FROST_LINE = 107,
    // Whether oil stands at joints, fins or floor.
    RIMEWISE_MEASUREMENT_OIL_TRACES = 108,
    // Whether a leak was found.
    RIMEWISE_MEASUREMENT_LEAK_FOUND = 109,
    // Whether thermostat and controls call for cooling.
    RIMEWISE_MEASUREMENT_CALLS_FOR_COOLING = 110,
    // Whether the door closes and its gasket seals.
    RIMEWISE_MEASUREMENT_DOOR_CLOSES = 111,
    // What is heard when the compressor is switched on.
    RIMEWISE_MEASUREMENT_START_SOUND = 112,
    // The derived quantity `suction_saturation_c`.
    RIMEWISE_MEASUREMENT_SUCTION_SATURATION = 200,
    // The derived quantity `superheat_k`.
    RIMEWISE_MEASUREMENT_SUPERHEAT = 201,
    // The derived quantity `compressor_superheat_k`.
    RIMEWISE_MEASUREMENT_COMPRESSOR_SUPERHEAT = 202,
    // The derived quantity `subcooling_k`.
    RIMEWISE_MEASUREMENT_SUBCOOLING = 203,
    // The derived quantity `pressure_ratio`.
    RIMEWISE_MEASUREMENT_PRESSURE_RATIO = 204,
    // The derived quantity `evaporator_saturation_c`.
    RIMEWISE_MEASUREMENT_EVAPORATOR_SATURATION = 205,
    // The derived quantity `condensing_c`.
    RIMEWISE_MEASUREMENT_CONDENSING = 206,
    // The derived quantity `evaporator_td_k`.
    RIMEWISE_MEASUREMENT_EVAPORATOR_DIFFERENCE = 207,
    // The derived quantity `condenser_td_k`.
    RIMEWISE_MEASUREMENT_CONDENSER_DIFFERENCE = 208,
    // The derived quantity `discharge_superheat_k`.
    RIMEWISE_MEASUREMENT_DISCHARGE_SUPERHEAT = 209,
    // The derived quantity `drier_drop_k`.
    RIMEWISE_MEASUREMENT_LIQUID_TEMPERATURE_DROP = 210,
    // The derived quantity `supply_air_drop_k`.
    RIMEWISE_MEASUREMENT_SUPPLY_AIR_DROP = 211,
    // The derived quantity `exhaust_air_rise_k`.
    RIMEWISE_MEASUREMENT_EXHAUST_AIR_RISE = 212,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseMeasurement RimewiseMeasurement;
#else
typedef int32_t RimewiseMeasurement;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// The effort a measurement takes.
enum RimewiseEffort
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Look, listen, or read an air thermometer.
    RIMEWISE_EFFORT_LOOK = 1,
    // Put a clamp on a pipe.
    RIMEWISE_EFFORT_CLAMP = 2,
    // Put an electrical meter on terminals.
    RIMEWISE_EFFORT_METER = 3,
    // Attach a gauge or turn a valve at a fitted port.
    RIMEWISE_EFFORT_VALVE = 4,
    // Open the refrigerant circuit, or fit a port that is not there.
    RIMEWISE_EFFORT_OPENS_SYSTEM = 5,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseEffort RimewiseEffort;
#else
typedef int32_t RimewiseEffort;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What makes the machine behave as it does, in the order that breaks ties.
enum RimewiseCause
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Nothing that costs 5 % or more of capacity or COP.
    RIMEWISE_CAUSE_NONE = 0,
    // Less refrigerant than the machine needs.
    RIMEWISE_CAUSE_UNDERCHARGE = 1,
    // More refrigerant than the machine needs.
    RIMEWISE_CAUSE_OVERCHARGE = 2,
    // A restriction in the liquid line: drier, strainer, kinked pipe.
    RIMEWISE_CAUSE_LIQUID_LINE_RESTRICTION = 3,
    // The metering device passes too little.
    RIMEWISE_CAUSE_METERING_UNDERFEED = 4,
    // The metering device passes too much and liquid returns to the compressor.
    RIMEWISE_CAUSE_FLOOD_BACK = 5,
    // The compressor pumps less than it should.
    RIMEWISE_CAUSE_WEAK_COMPRESSOR = 6,
    // Too little air over the condenser.
    RIMEWISE_CAUSE_CONDENSER_AIRFLOW = 7,
    // Too little air over the evaporator.
    RIMEWISE_CAUSE_EVAPORATOR_AIRFLOW = 8,
    // Air or nitrogen in the refrigerant circuit.
    RIMEWISE_CAUSE_NON_CONDENSABLES = 9,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseCause RimewiseCause;
#else
typedef int32_t RimewiseCause;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What is suspicious about an input that is answered all the same.
enum RimewiseWarningKind
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // The pressure fits far better after adding one atmosphere.
    RIMEWISE_WARNING_KIND_READS_LIKE_GAUGE = 1,
    // The reading contradicts the others.
    RIMEWISE_WARNING_KIND_CONTRADICTS_OTHERS = 2,
    // The machine has run too short a time to have settled.
    RIMEWISE_WARNING_KIND_NOT_SETTLED = 5,
    // The refrigerant is not known, so pressures say nothing.
    RIMEWISE_WARNING_KIND_REFRIGERANT_UNKNOWN = 6,
    // The point lies outside what the machine model can follow.
    RIMEWISE_WARNING_KIND_OUTSIDE_MODEL = 7,
    // The record cannot be used.
    RIMEWISE_WARNING_KIND_RECORD_UNUSED = 8,
    // Two causes explain the readings about equally well; each is named by a warning of its own.
    RIMEWISE_WARNING_KIND_TWO_CAUSES_ALIKE = 9,
    // The machine is said to be stopped.
    RIMEWISE_WARNING_KIND_NOT_RUNNING = 10,
    // Two readings stand where the other one belongs; each is named by a warning of its own.
    RIMEWISE_WARNING_KIND_READS_LIKE_THE_OTHER = 11,
    // The readings would suit another refrigerant than the one named.
    RIMEWISE_WARNING_KIND_READS_LIKE_ANOTHER = 12,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseWarningKind RimewiseWarningKind;
#else
typedef int32_t RimewiseWarningKind;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// Why an input cannot be used.
enum RimewiseErrorCode
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // The number is NaN or infinite where it must not be.
    RIMEWISE_ERROR_CODE_NOT_FINITE = 1,
    // The number lies outside what a machine can show.
    RIMEWISE_ERROR_CODE_OUT_OF_RANGE = 2,
    // The number lies outside the refrigerant's table.
    RIMEWISE_ERROR_CODE_OUTSIDE_TABLE = 3,
    // The suction pressure lies above the discharge pressure of a running machine.
    RIMEWISE_ERROR_CODE_ABOVE_DISCHARGE = 4,
    // The number of phases is neither 1 nor 3.
    RIMEWISE_ERROR_CODE_PHASES_UNKNOWN = 5,
    // The integer is not a code that this library knows.
    RIMEWISE_ERROR_CODE_UNKNOWN_CODE = 6,
    // The text is not JSON.
    RIMEWISE_ERROR_CODE_NOT_JSON = 20,
    // The name is given twice.
    RIMEWISE_ERROR_CODE_DUPLICATE = 21,
    // There is no such field.
    RIMEWISE_ERROR_CODE_UNKNOWN_FIELD = 22,
    // The value is of another type than the field's.
    RIMEWISE_ERROR_CODE_WRONG_TYPE = 23,
    // The list has another length than it must have.
    RIMEWISE_ERROR_CODE_WRONG_LENGTH = 24,
    // The name is none of those that the field takes.
    RIMEWISE_ERROR_CODE_UNKNOWN_NAME = 25,
    // There is no refrigerant of this name here.
    RIMEWISE_ERROR_CODE_UNKNOWN_REFRIGERANT = 26,
    // There is no reading, observation or action of this name.
    RIMEWISE_ERROR_CODE_UNKNOWN_MEASUREMENT = 27,
    // The number is too large for this library.
    RIMEWISE_ERROR_CODE_TOO_LARGE = 28,
    // The field is missing, and nothing can be answered without it.
    RIMEWISE_ERROR_CODE_MISSING = 29,
    // The numbers together are none that this question can be answered for.
    RIMEWISE_ERROR_CODE_NOT_USABLE = 30,
    // The state is liquid and vapor together, and pressure and temperature do not fix it.
    RIMEWISE_ERROR_CODE_TWO_PHASE = 31,
    // The state lies in the other phase.
    RIMEWISE_ERROR_CODE_OTHER_PHASE = 32,
    // The state lies above the critical point, where there is no saturation.
    RIMEWISE_ERROR_CODE_TRANSCRITICAL = 33,
    // The state lies so close to the critical point that the table does not know it well enough.
    RIMEWISE_ERROR_CODE_NEAR_CRITICAL = 34,
    // The state lies between bubble and dew of a blend whose temperatures there the table does not have.
    RIMEWISE_ERROR_CODE_BETWEEN_BUBBLE_AND_DEW = 35,
    // The text, or one of its lists, is longer or deeper than any visit.
    RIMEWISE_ERROR_CODE_TOO_LONG = 36,
    // The answer was found and could not be written where it was wanted.
    RIMEWISE_ERROR_CODE_NOT_WRITTEN = 37,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseErrorCode RimewiseErrorCode;
#else
typedef int32_t RimewiseErrorCode;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// One finding of the electrical checks.
enum RimewiseFindingKind
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // The windings agree with each other and with the plate.
    RIMEWISE_FINDING_KIND_WINDINGS_GOOD = 1,
    // A winding is open.
    RIMEWISE_FINDING_KIND_OPEN_WINDING = 2,
    // The internal overload is open; it may close again once the compressor is cool. The value is the temperature of
    // the windings where it is known, the limit the one below which an overload should have closed again.
    RIMEWISE_FINDING_KIND_OVERLOAD_OPEN = 3,
    // A winding reads low enough for shorted turns.
    RIMEWISE_FINDING_KIND_SHORTED_TURNS = 4,
    // A winding leaks to the frame.
    RIMEWISE_FINDING_KIND_WINDING_TO_FRAME = 5,
    // The three winding resistances contradict each other.
    RIMEWISE_FINDING_KIND_WINDINGS_INCONSISTENT = 6,
    // The run capacitor is within its tolerance.
    RIMEWISE_FINDING_KIND_RUN_CAPACITOR_GOOD = 7,
    // The run capacitor is below its tolerance.
    RIMEWISE_FINDING_KIND_RUN_CAPACITOR_LOW = 8,
    // The run capacitor is above its tolerance.
    RIMEWISE_FINDING_KIND_RUN_CAPACITOR_HIGH = 9,
    // The run capacitor is open.
    RIMEWISE_FINDING_KIND_RUN_CAPACITOR_OPEN = 10,
    // The start capacitor is within its tolerance.
    RIMEWISE_FINDING_KIND_START_CAPACITOR_GOOD = 11,
    // The start capacitor is below its tolerance.
    RIMEWISE_FINDING_KIND_START_CAPACITOR_LOW = 12,
    // The start capacitor is above its tolerance.
    RIMEWISE_FINDING_KIND_START_CAPACITOR_HIGH = 13,
    // The start capacitor is open.
    RIMEWISE_FINDING_KIND_START_CAPACITOR_OPEN = 14,
    // The supply voltage is low.
    RIMEWISE_FINDING_KIND_LOW_VOLTAGE = 15,
    // The supply voltage is high.
    RIMEWISE_FINDING_KIND_HIGH_VOLTAGE = 16,
    // The three line voltages differ too much.
    RIMEWISE_FINDING_KIND_VOLTAGE_UNBALANCE = 17,
    // The current is above its rated load.
    RIMEWISE_FINDING_KIND_CURRENT_ABOVE_RATED = 18,
    // The current is below what the pressures ask for.
    RIMEWISE_FINDING_KIND_CURRENT_BELOW_EXPECTED = 19,
    // The current is what the pressures ask for.
    RIMEWISE_FINDING_KIND_CURRENT_NORMAL = 20,
    // The current stays near the locked-rotor current.
    RIMEWISE_FINDING_KIND_LOCKED_ROTOR = 21,
    // A winding reads higher than any plausible temperature explains, as a poor connection does.
    RIMEWISE_FINDING_KIND_HIGH_RESISTANCE_CONNECTION = 22,
    // The three line currents differ too much.
    RIMEWISE_FINDING_KIND_CURRENT_UNBALANCE = 23,
    // The windings are sound against the frame; said where nothing else of the windings was measured.
    RIMEWISE_FINDING_KIND_INSULATION_GOOD = 24,
    // The insulation is between the limits: warm, dry, measure again before anything is condemned.
    RIMEWISE_FINDING_KIND_INSULATION_DOUBTFUL = 25,
    // Start and run of unmarked terminals are too close for this meter to tell apart.
    RIMEWISE_FINDING_KIND_TERMINALS_AMBIGUOUS = 26,
    // The inrush is about the locked-rotor current, as at any start across the line.
    RIMEWISE_FINDING_KIND_START_CURRENT_USUAL = 27,
    // The inrush is far below the locked-rotor current.
    RIMEWISE_FINDING_KIND_START_CURRENT_LOW = 28,
    // The inrush is above the locked-rotor current by more than its tolerance.
    RIMEWISE_FINDING_KIND_START_CURRENT_HIGH = 29,
    // One of three phases is missing: a fuse, a contact or a conductor is open.
    RIMEWISE_FINDING_KIND_SINGLE_PHASING = 30,
    // The relay or other start gear does not bring the start winding in.
    RIMEWISE_FINDING_KIND_START_GEAR_FAILED = 31,
    // There is no supply at the motor: controls, contactor or fuse.
    RIMEWISE_FINDING_KIND_NO_SUPPLY = 32,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseFindingKind RimewiseFindingKind;
#else
typedef int32_t RimewiseFindingKind;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What can hurt.
enum RimewiseCautionCode
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // The circuit is under pressure.
    RIMEWISE_CAUTION_CODE_PRESSURE = 1,
    // Escaping liquid refrigerant burns by cold.
    RIMEWISE_CAUTION_CODE_COLD_BURN = 2,
    // The refrigerant can burn.
    RIMEWISE_CAUTION_CODE_FLAMMABLE = 3,
    // The refrigerant is toxic.
    RIMEWISE_CAUTION_CODE_TOXIC = 4,
    // Refrigerant vapour displaces air.
    RIMEWISE_CAUTION_CODE_ASPHYXIATION = 5,
    // A capacitor holds its charge.
    RIMEWISE_CAUTION_CODE_CAPACITOR = 6,
    // Terminals are live.
    RIMEWISE_CAUTION_CODE_LIVE_TERMINALS = 7,
    // A damaged terminal can blow out of the shell.
    RIMEWISE_CAUTION_CODE_TERMINAL_VENTING = 8,
    // Law asks for recovery and for a licence.
    RIMEWISE_CAUTION_CODE_RECOVERY_LAW = 9,
    // A motor must not be energised or insulation-tested under vacuum.
    RIMEWISE_CAUTION_CODE_NO_VACUUM_ENERGISE = 10,
    // Not every compressor may be pumped down into vacuum.
    RIMEWISE_CAUTION_CODE_NO_VACUUM_PUMP_DOWN = 11,
    // Air must never be compressed with oil and refrigerant.
    RIMEWISE_CAUTION_CODE_AIR_IN_CIRCUIT = 12,
    // A zeotropic blend is charged as liquid.
    RIMEWISE_CAUTION_CODE_BLEND_CHARGE_LIQUID = 13,
    // A pressure control is never bypassed to get a reading.
    RIMEWISE_CAUTION_CODE_KEEP_SAFETY_CONTROLS = 14,
    // Pipes and shell are hot.
    RIMEWISE_CAUTION_CODE_HOT_SURFACE = 15,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseCautionCode RimewiseCautionCode;
#else
typedef int32_t RimewiseCautionCode;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// The step a caution belongs to.
enum RimewiseStep
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Looking and clamping.
    RIMEWISE_STEP_LOOK = 1,
    // Attaching and removing gauges.
    RIMEWISE_STEP_GAUGES = 2,
    // Measuring at electrical terminals.
    RIMEWISE_STEP_ELECTRICAL = 3,
    // Closing valves for the pump-down test.
    RIMEWISE_STEP_PUMP_DOWN = 4,
    // Adding or removing refrigerant.
    RIMEWISE_STEP_CHARGING = 5,
    // Opening the refrigerant circuit.
    RIMEWISE_STEP_OPENS_SYSTEM = 6,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseStep RimewiseStep;
#else
typedef int32_t RimewiseStep;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// The unit of a number.
enum RimewiseUnit
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // There is no number, or it has no unit.
    RIMEWISE_UNIT_NONE = 0,
    // Ohm.
    RIMEWISE_UNIT_OHM = 1,
    // Megohm.
    RIMEWISE_UNIT_MEGOHM = 2,
    // Microfarad.
    RIMEWISE_UNIT_UF = 3,
    // Volt.
    RIMEWISE_UNIT_V = 4,
    // Ampere.
    RIMEWISE_UNIT_A = 5,
    // Percent.
    RIMEWISE_UNIT_PERCENT = 6,
    // Kilopascal, absolute.
    RIMEWISE_UNIT_KPA = 7,
    // Kilopascal of span.
    RIMEWISE_UNIT_KPA_SPAN = 8,
    // Kilopascal a minute.
    RIMEWISE_UNIT_KPA_PER_MIN = 9,
    // Degree Celsius.
    RIMEWISE_UNIT_C = 10,
    // Kelvin of difference.
    RIMEWISE_UNIT_K = 11,
    // Watt.
    RIMEWISE_UNIT_W = 12,
    // Hertz.
    RIMEWISE_UNIT_HZ = 13,
    // Kilogram.
    RIMEWISE_UNIT_KG = 14,
    // Minute.
    RIMEWISE_UNIT_MINUTES = 15,
    // Hour.
    RIMEWISE_UNIT_HOURS = 16,
    // Times an hour.
    RIMEWISE_UNIT_PER_HOUR = 17,
    // Day.
    RIMEWISE_UNIT_DAYS = 18,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseUnit RimewiseUnit;
#else
typedef int32_t RimewiseUnit;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// A language that sentences are written in.
enum RimewiseLanguage
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // English.
    RIMEWISE_LANGUAGE_ENGLISH = 1,
    // Spanish.
    RIMEWISE_LANGUAGE_SPANISH = 2,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseLanguage RimewiseLanguage;
#else
typedef int32_t RimewiseLanguage;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// Which winding or line a finding is about.
enum RimewiseWinding
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // The run winding, common to run.
    RIMEWISE_WINDING_RUN = 1,
    // The start winding, common to start.
    RIMEWISE_WINDING_START = 2,
    // What both windings share: the common terminal, its lead, and the internal overload.
    RIMEWISE_WINDING_COMMON = 3,
    // Line or terminal 1 of a three-phase motor.
    RIMEWISE_WINDING_LINE1 = 4,
    // Line or terminal 2 of a three-phase motor.
    RIMEWISE_WINDING_LINE2 = 5,
    // Line or terminal 3 of a three-phase motor.
    RIMEWISE_WINDING_LINE3 = 6,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseWinding RimewiseWinding;
#else
typedef int32_t RimewiseWinding;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What an alarm is about, the most urgent first.
enum RimewiseAlarmCode
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Switch the compressor off.
    RIMEWISE_ALARM_CODE_SWITCH_OFF = 1,
    // Do not energise the motor.
    RIMEWISE_ALARM_CODE_DO_NOT_ENERGISE = 2,
    // The discharge line is too hot.
    RIMEWISE_ALARM_CODE_DISCHARGE_TOO_HOT = 3,
    // The head pressure is above what is usual for the refrigerant.
    RIMEWISE_ALARM_CODE_HEAD_PRESSURE_HIGH = 4,
    // The compression ratio is above what one stage takes.
    RIMEWISE_ALARM_CODE_COMPRESSION_RATIO_HIGH = 5,
    // Liquid refrigerant returns to the compressor.
    RIMEWISE_ALARM_CODE_LIQUID_RETURNING = 6,
    // A circuit with a flammable refrigerant is under vacuum and can draw in air.
    RIMEWISE_ALARM_CODE_VACUUM_WITH_FLAMMABLE = 7,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseAlarmCode RimewiseAlarmCode;
#else
typedef int32_t RimewiseAlarmCode;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// How specific a verdict is.
enum RimewiseLevel
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Nothing can be stated.
    RIMEWISE_LEVEL_UNDECIDED = 0,
    // One of the ten causes.
    RIMEWISE_LEVEL_CAUSE = 1,
    // A family of causes.
    RIMEWISE_LEVEL_FAMILY = 2,
    // A job that mends several causes.
    RIMEWISE_LEVEL_JOB = 3,
    // A finding of the motor, the supply or the start gear.
    RIMEWISE_LEVEL_ELECTRICAL = 4,
    // Nothing that counts is wrong.
    RIMEWISE_LEVEL_HEALTHY = 5,
    // Something is wrong that no listed cause explains.
    RIMEWISE_LEVEL_UNIDENTIFIED = 6,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseLevel RimewiseLevel;
#else
typedef int32_t RimewiseLevel;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// Causes that let the same machine run, so that readings often cannot part them.
enum RimewiseFamily
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // A restriction in the liquid line, or a metering device that passes too little.
    RIMEWISE_FAMILY_LIQUID_FEED = 1,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseFamily RimewiseFamily;
#else
typedef int32_t RimewiseFamily;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// A piece of work that mends several causes alike.
enum RimewiseJob
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Nothing needs mending.
    RIMEWISE_JOB_NONE = 0,
    // Clean the condenser, mend its fan.
    RIMEWISE_JOB_CONDENSER_AIR = 1,
    // Defrost or clean the evaporator, mend its fan.
    RIMEWISE_JOB_EVAPORATOR_AIR = 2,
    // Recover, find the leak or replace drier and capillary, evacuate, charge by weight.
    RIMEWISE_JOB_OPEN_CIRCUIT = 3,
    // Set, clean or replace the expansion valve.
    RIMEWISE_JOB_METERING_VALVE = 4,
    // Replace the compressor.
    RIMEWISE_JOB_COMPRESSOR = 5,
    // Mend the supply, the start gear or a capacitor.
    RIMEWISE_JOB_ELECTRICAL = 6,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseJob RimewiseJob;
#else
typedef int32_t RimewiseJob;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What is said of the compressor with its motor.
enum RimewiseCompressorState
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Nothing can be said yet.
    RIMEWISE_COMPRESSOR_STATE_OPEN = 0,
    // It is not the compressor.
    RIMEWISE_COMPRESSOR_STATE_CLEARED = 1,
    // It pumps less than it should, and still does something.
    RIMEWISE_COMPRESSOR_STATE_FAILING = 2,
    // It is done: its motor, or so much of its pumping that nothing is left to wait for.
    RIMEWISE_COMPRESSOR_STATE_FAILED = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseCompressorState RimewiseCompressorState;
#else
typedef int32_t RimewiseCompressorState;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What kind of step it is.
enum RimewiseStepKind
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Leave the machine as it is.
    RIMEWISE_STEP_KIND_LEAVE = 0,
    // Look or listen.
    RIMEWISE_STEP_KIND_LOOK = 1,
    // Take a reading.
    RIMEWISE_STEP_KIND_MEASURE = 2,
    // Do something to the machine and read again.
    RIMEWISE_STEP_KIND_ACT = 3,
    // Repair.
    RIMEWISE_STEP_KIND_REPAIR = 4,
    // Replace the compressor.
    RIMEWISE_STEP_KIND_REPLACE_COMPRESSOR = 5,
    // Replace the machine.
    RIMEWISE_STEP_KIND_REPLACE_MACHINE = 6,
    // Wait.
    RIMEWISE_STEP_KIND_WAIT = 7,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseStepKind RimewiseStepKind;
#else
typedef int32_t RimewiseStepKind;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What the plate or the owner tells of the machine.
enum RimewisePlanContext
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Which refrigerant it holds.
    RIMEWISE_PLAN_CONTEXT_REFRIGERANT = 1,
    // How it meters.
    RIMEWISE_PLAN_CONTEXT_METERING = 2,
    // What it is for.
    RIMEWISE_PLAN_CONTEXT_DUTY = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewisePlanContext RimewisePlanContext;
#else
typedef int32_t RimewisePlanContext;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What a repair changed.
enum RimewiseChange
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // The machine is cleared after it.
    RIMEWISE_CHANGE_WORKED = 1,
    // The readings are far nearer to a healthy machine's, and it is not cleared.
    RIMEWISE_CHANGE_BETTER = 2,
    // The readings say the same as before.
    RIMEWISE_CHANGE_UNCHANGED = 3,
    // The readings are further from a healthy machine's.
    RIMEWISE_CHANGE_WORSE = 4,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseChange RimewiseChange;
#else
typedef int32_t RimewiseChange;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What happened.
//
// Each kind has up to three figures of its own, with their units in their names.
enum RimewiseMonitorEventKind
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // The compressor started.
    // Figures: minutes_off.
    RIMEWISE_MONITOR_EVENT_KIND_START = 1,
    // The compressor stopped.
    // Figures: minutes_running.
    RIMEWISE_MONITOR_EVENT_KIND_STOP = 2,
    // The current of the start has come down to that of a running motor.
    // Figures: start_current_a, seconds, of_locked_rotor.
    RIMEWISE_MONITOR_EVENT_KIND_INRUSH = 3,
    // The motor did not come up and its supply was cut.
    // Figures: start_current_a, seconds, of_locked_rotor.
    RIMEWISE_MONITOR_EVENT_KIND_FAILED_START = 4,
    // Starts fail one after the other: the overload opens and closes again.
    // Figures: failed_starts, seconds_between.
    RIMEWISE_MONITOR_EVENT_KIND_OVERLOAD_CYCLING = 5,
    // The compressor turns, and its current stays as high as with the start winding or start capacitor still in.
    // Figures: current_a, seconds, of_rated_load.
    RIMEWISE_MONITOR_EVENT_KIND_START_GEAR_STAYS_IN = 6,
    // It started after a long stop with a cold compressor: refrigerant has probably moved into its oil.
    // Figures: minutes_off, discharge_line_c.
    RIMEWISE_MONITOR_EVENT_KIND_MIGRATION_LIKELY = 7,
    // Superheat was collapsed and current high after the start, and both recovered together.
    // Figures: lowest_superheat_k, current_over_recovered, seconds.
    RIMEWISE_MONITOR_EVENT_KIND_LIQUID_ON_START = 8,
    // Current is above the plate's rated load and stays there, with no liquid to explain it.
    // Figures: current_a, of_rated_load, minutes_running.
    RIMEWISE_MONITOR_EVENT_KIND_STAYS_HIGH = 9,
    // The start showed neither liquid nor a current that stays high.
    // Figures: current_a, of_rated_load, minutes_running.
    RIMEWISE_MONITOR_EVENT_KIND_CLEAN_START = 10,
    // The start was unusual, but what was measured does not tell in which way.
    // Figures: current_a, of_rated_load, minutes_running.
    RIMEWISE_MONITOR_EVENT_KIND_START_NOT_TOLD = 11,
    // It is now pulling down.
    // Figures: suction_pressure_kpa, kpa_per_min.
    RIMEWISE_MONITOR_EVENT_KIND_PULLING_DOWN = 12,
    // It is now steady.
    // Figures: suction_pressure_kpa, discharge_pressure_kpa, current_a.
    RIMEWISE_MONITOR_EVENT_KIND_STEADY = 13,
    // The suction pressure swings regularly: the valve hunts.
    // Figures: period_s, swing_kpa.
    RIMEWISE_MONITOR_EVENT_KIND_HUNTING = 14,
    // A valve was closed and the compressor pumps down.
    // Figures: suction_pressure_kpa.
    RIMEWISE_MONITOR_EVENT_KIND_PUMP_DOWN = 15,
    // The pump-down has ended, with the lowest pressure it reached.
    // Figures: pump_down_kpa, seconds, at_limit.
    RIMEWISE_MONITOR_EVENT_KIND_PUMP_DOWN_LOWEST = 16,
    // The rise of pressure after the pump-down was measured; 0 is none beyond the gauge's scatter.
    // Figures: pump_down_rise_kpa_per_min, seconds, u_kpa_per_min.
    RIMEWISE_MONITOR_EVENT_KIND_PUMP_DOWN_RISE = 17,
    // The compressor makes short runs one after the other.
    // Figures: short_runs, seconds_running.
    RIMEWISE_MONITOR_EVENT_KIND_SHORT_CYCLING = 18,
    // The pressures of the stopped machine have become equal.
    // Figures: suction_pressure_kpa, minutes_off.
    RIMEWISE_MONITOR_EVENT_KIND_EQUALIZED = 19,
    // The pressure of the stopped machine has come to rest.
    // Figures: standing_pressure_kpa, standing_temperature_c.
    RIMEWISE_MONITOR_EVENT_KIND_STANDING_PRESSURE = 20,
    // Current rises while both pressures fall.
    // Figures: current_percent_per_min, suction_percent_per_min, voltage_v.
    RIMEWISE_MONITOR_EVENT_KIND_CURRENT_RISES = 21,
    // The coil of the stopped machine is being heated.
    // Figures: coil_c.
    RIMEWISE_MONITOR_EVENT_KIND_DEFROST_BEGINS = 22,
    // The coil is no longer heated.
    // Figures: warmest_coil_c, minutes.
    RIMEWISE_MONITOR_EVENT_KIND_DEFROST_ENDS = 23,
    // Samples were missing for so long that nothing is known across the gap.
    // Figures: seconds.
    RIMEWISE_MONITOR_EVENT_KIND_GAP = 24,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseMonitorEventKind RimewiseMonitorEventKind;
#else
typedef int32_t RimewiseMonitorEventKind;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What the machine does at the moment.
//
// The three running states are statements about the last two minutes (at least one, and none of the first minute
// after a start): steady when nothing measured drifts or scatters beyond its limit, pulling down when the suction
// pressure falls smoothly, unsteady otherwise.
enum RimewiseMonitorState
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Not enough was seen yet, or a gap has just ended.
    RIMEWISE_MONITOR_STATE_UNKNOWN = 0,
    // The compressor is off in the ordinary cycle.
    RIMEWISE_MONITOR_STATE_OFF = 1,
    // The compressor was started less than one minute ago, whether or not it turns.
    RIMEWISE_MONITOR_STATE_STARTING = 2,
    // It runs and the suction pressure falls smoothly.
    RIMEWISE_MONITOR_STATE_PULLING_DOWN = 3,
    // It runs and holds still.
    RIMEWISE_MONITOR_STATE_STEADY = 4,
    // It runs and does neither: not settled yet, hunting, or taking up a load.
    RIMEWISE_MONITOR_STATE_UNSTEADY = 5,
    // It pumps down against a closed valve.
    RIMEWISE_MONITOR_STATE_PUMPING_DOWN = 6,
    // It stands after a pump-down, and no pressure shows yet that the valve was opened.
    RIMEWISE_MONITOR_STATE_HOLDING = 7,
    // It stands and its coil is being heated.
    RIMEWISE_MONITOR_STATE_DEFROST = 8,
    // It stands because its overload opened, or a start failed.
    RIMEWISE_MONITOR_STATE_STOPPED = 9,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseMonitorState RimewiseMonitorState;
#else
typedef int32_t RimewiseMonitorState;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// Why a sample could not be used, whole or in part.
enum RimewiseMonitorSampleProblem
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // The time is that of the sample before: nothing was used.
    RIMEWISE_MONITOR_SAMPLE_PROBLEM_REPEATED_TIME = 1,
    // The time lies before that of a sample already taken: nothing was used.
    RIMEWISE_MONITOR_SAMPLE_PROBLEM_BACKWARD_TIME = 2,
    // No channel holds a number that a machine can show: nothing but the time was used.
    RIMEWISE_MONITOR_SAMPLE_PROBLEM_NOTHING_MEASURED = 3,
    // Some channels hold what no machine can show; they were left out and the others used.
    RIMEWISE_MONITOR_SAMPLE_PROBLEM_SOME_UNUSABLE = 4,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseMonitorSampleProblem RimewiseMonitorSampleProblem;
#else
typedef int32_t RimewiseMonitorSampleProblem;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// The temperature scale a map's coefficients were made for.
enum RimewiseCompressorScale
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Degrees Celsius.
    RIMEWISE_COMPRESSOR_SCALE_CELSIUS = 1,
    // Degrees Fahrenheit.
    RIMEWISE_COMPRESSOR_SCALE_FAHRENHEIT = 2,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseCompressorScale RimewiseCompressorScale;
#else
typedef int32_t RimewiseCompressorScale;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// A bit of the valid mask of RimewiseCycle.
enum RimewiseCycleValid
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // `suction_saturation_c` is there.
    RIMEWISE_CYCLE_VALID_SUCTION_SATURATION_C = 1,
    // `evaporator_saturation_c` is there.
    RIMEWISE_CYCLE_VALID_EVAPORATOR_SATURATION_C = 2,
    // `condensing_c` is there.
    RIMEWISE_CYCLE_VALID_CONDENSING_C = 4,
    // `superheat_k` is there.
    RIMEWISE_CYCLE_VALID_SUPERHEAT_K = 8,
    // `compressor_superheat_k` is there.
    RIMEWISE_CYCLE_VALID_COMPRESSOR_SUPERHEAT_K = 16,
    // `subcooling_k` is there.
    RIMEWISE_CYCLE_VALID_SUBCOOLING_K = 32,
    // `pressure_ratio` is there.
    RIMEWISE_CYCLE_VALID_PRESSURE_RATIO = 64,
    // `evaporator_td_k` is there.
    RIMEWISE_CYCLE_VALID_EVAPORATOR_TD_K = 128,
    // `condenser_td_k` is there.
    RIMEWISE_CYCLE_VALID_CONDENSER_TD_K = 256,
    // `discharge_superheat_k` is there.
    RIMEWISE_CYCLE_VALID_DISCHARGE_SUPERHEAT_K = 512,
    // `drier_drop_k` is there.
    RIMEWISE_CYCLE_VALID_DRIER_DROP_K = 1024,
    // `supply_air_drop_k` is there.
    RIMEWISE_CYCLE_VALID_SUPPLY_AIR_DROP_K = 2048,
    // `exhaust_air_rise_k` is there.
    RIMEWISE_CYCLE_VALID_EXHAUST_AIR_RISE_K = 4096,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseCycleValid RimewiseCycleValid;
#else
typedef uint32_t RimewiseCycleValid;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// A bit of the valid mask of RimewiseExpected.
enum RimewiseExpectedValid
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // `suction_saturation_c` is there.
    RIMEWISE_EXPECTED_VALID_SUCTION_SATURATION_C = 1,
    // `condensing_c` is there.
    RIMEWISE_EXPECTED_VALID_CONDENSING_C = 2,
    // `suction_pressure_kpa` is there.
    RIMEWISE_EXPECTED_VALID_SUCTION_PRESSURE_KPA = 4,
    // `discharge_pressure_kpa` is there.
    RIMEWISE_EXPECTED_VALID_DISCHARGE_PRESSURE_KPA = 8,
    // `superheat_k` is there.
    RIMEWISE_EXPECTED_VALID_SUPERHEAT_K = 16,
    // `compressor_superheat_k` is there.
    RIMEWISE_EXPECTED_VALID_COMPRESSOR_SUPERHEAT_K = 32,
    // `subcooling_k` is there.
    RIMEWISE_EXPECTED_VALID_SUBCOOLING_K = 64,
    // `pressure_ratio` is there.
    RIMEWISE_EXPECTED_VALID_PRESSURE_RATIO = 128,
    // `evaporator_outlet_c` is there.
    RIMEWISE_EXPECTED_VALID_EVAPORATOR_OUTLET_C = 256,
    // `suction_line_c` is there.
    RIMEWISE_EXPECTED_VALID_SUCTION_LINE_C = 512,
    // `discharge_line_c` is there.
    RIMEWISE_EXPECTED_VALID_DISCHARGE_LINE_C = 1024,
    // `liquid_line_c` is there.
    RIMEWISE_EXPECTED_VALID_LIQUID_LINE_C = 2048,
    // `drier_outlet_c` is there.
    RIMEWISE_EXPECTED_VALID_DRIER_OUTLET_C = 4096,
    // `supply_air_c` is there.
    RIMEWISE_EXPECTED_VALID_SUPPLY_AIR_C = 8192,
    // `condenser_exhaust_c` is there.
    RIMEWISE_EXPECTED_VALID_CONDENSER_EXHAUST_C = 16384,
    // `current_a` is there.
    RIMEWISE_EXPECTED_VALID_CURRENT_A = 32768,
    // `pump_down_kpa` is there.
    RIMEWISE_EXPECTED_VALID_PUMP_DOWN_KPA = 65536,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseExpectedValid RimewiseExpectedValid;
#else
typedef uint32_t RimewiseExpectedValid;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus


// Most corners of a rating map's envelope.
#define RIMEWISE_ENVELOPE_MAX 12

// Most ways to go on in a decision.
#define RIMEWISE_ALTERNATIVES_MAX 16

// The bit of RimewiseDecision.valid that says a way is recommended.
#define RIMEWISE_DECISION_RECOMMENDED 1

// The bit of RimewiseAlternative.valid that says `expected_cost` is there.
#define RIMEWISE_ALTERNATIVE_COST 1

// The longest record of a visit.
#define RIMEWISE_RECORD_MAX 4

// Most entries of RimewiseVisit.cannot.
#define RIMEWISE_CANNOT_MAX 32

// In RimewiseVisit.cannot, an action is this and its RimewiseAction; a RimewiseMeasurement stands for itself.
#define RIMEWISE_CANNOT_ACTION 1000

// Room for quantities in RimewiseCycle.
#define RIMEWISE_CYCLE_ROOM 24

// Room for quantities in RimewiseExpected.
#define RIMEWISE_EXPECTED_ROOM 24

// In every integer of the inputs: not known, not measured, not observed.
#define RIMEWISE_NOT_KNOWN -1

// The bit of RimewiseInvalid.valid and RimewiseWarning.valid that says `value` is there.
#define RIMEWISE_FACT_VALUE 1

// The bit of RimewiseInvalid.valid that says `min` is there.
#define RIMEWISE_FACT_MIN 2

// The bit of RimewiseInvalid.valid that says `max` is there.
#define RIMEWISE_FACT_MAX 4

// The bit of RimewiseWarning.valid that says `limit` is there.
#define RIMEWISE_FACT_LIMIT 8

// Most events that one sample can bring.
#define RIMEWISE_MONITOR_EVENTS_MAX 8

// Room for outcomes of a step.
#define RIMEWISE_THEN_MAX 8

// Room for ways to go on.
#define RIMEWISE_WAYS_MAX 24

// The bit of RimewisePlan.valid that says `replace_above` is there.
#define RIMEWISE_PLAN_REPLACE_ABOVE 1

// The bit of RimewisePlan.valid that says `weigh_in_kg` is there.
#define RIMEWISE_PLAN_WEIGH_IN 2

// The bit of RimewisePlan.valid that says `hose_takes_g` is there.
#define RIMEWISE_PLAN_HOSE 4

// The bit of RimewisePlan.valid that says `hose_takes_percent` is there.
#define RIMEWISE_PLAN_HOSE_PERCENT 8

// Room for causes, `none` included; `cause_count` says how many this library knows.
#define RIMEWISE_CAUSES_MAX 16

// Most entries of evidence in a report.
#define RIMEWISE_EVIDENCE_MAX 48

// Most next measurements in a report.
#define RIMEWISE_NEXT_MAX 8

// Most measurements that rule out one cause, or would.
#define RIMEWISE_MEASUREMENTS_MAX 3

// Most warnings in a report.
#define RIMEWISE_WARNINGS_MAX 16

// Most electrical findings in a report.
#define RIMEWISE_ELECTRICAL_MAX 16

// Room for families in a report.
#define RIMEWISE_FAMILIES_MAX 8

// Room for jobs in a report.
#define RIMEWISE_JOBS_MAX 16

// Room for alarms in a report.
#define RIMEWISE_ALARMS_MAX 16

// Most cautions in a report.
#define RIMEWISE_CAUTIONS_MAX 24

// The bit of RimewiseReport.valid that says `fits` is there.
#define RIMEWISE_REPORT_FITS 1

// The bit of RimewiseCauseProbability.valid that says `severity` is there.
#define RIMEWISE_CAUSE_SEVERITY 1

// The bit of RimewiseFinding.valid that says `value` is there.
#define RIMEWISE_FINDING_VALUE 1

// The bit of RimewiseFinding.valid that says `limit` is there.
#define RIMEWISE_FINDING_LIMIT 2

// Major version; a change breaks callers.
#define RIMEWISE_VERSION_MAJOR 0

// Minor version; while the major version is 0, a change may break callers.
#define RIMEWISE_VERSION_MINOR 1

// Patch version.
#define RIMEWISE_VERSION_PATCH 0

// What a function returns. Every number is permanent.
enum RimewiseStatus
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Done; the results are written.
    RIMEWISE_STATUS_OK = 0,
    // A pointer is NULL that must not be.
    RIMEWISE_STATUS_NULL_POINTER = 1,
    // The `size` of a struct is not one that this library knows.
    RIMEWISE_STATUS_WRONG_SIZE = 2,
    // An integer holds a code that this library does not know.
    RIMEWISE_STATUS_UNKNOWN_CODE = 3,
    // A number is NaN or infinite where it must not be.
    RIMEWISE_STATUS_NOT_FINITE = 4,
    // A number or a count lies outside what the function takes.
    RIMEWISE_STATUS_OUT_OF_RANGE = 5,
    // The caller's buffer is too short; the length needed is written all the same.
    RIMEWISE_STATUS_SHORT_BUFFER = 6,
    // No built-in refrigerant has this designation.
    RIMEWISE_STATUS_UNKNOWN_DESIGNATION = 7,
    // The visit holds a value that no machine can show; RimewiseInvalid names the field.
    RIMEWISE_STATUS_INVALID_INPUT = 8,
    // There is no answer yet: more must be seen first.
    RIMEWISE_STATUS_NOT_YET = 9,
    // The pressure lies outside the refrigerant's table.
    RIMEWISE_STATUS_PRESSURE_OUTSIDE_TABLE = 20,
    // The temperature lies outside the refrigerant's table.
    RIMEWISE_STATUS_TEMPERATURE_OUTSIDE_TABLE = 21,
    // The state is liquid and vapor together; pressure and temperature do not fix it.
    RIMEWISE_STATUS_TWO_PHASE = 22,
    // The state lies in the other phase.
    RIMEWISE_STATUS_OTHER_PHASE = 23,
    // The state lies above the critical point, where there is no saturation.
    RIMEWISE_STATUS_TRANSCRITICAL = 24,
    // The bytes are not a refrigerant table.
    RIMEWISE_STATUS_NOT_A_TABLE = 30,
    // The table has a format version that this library does not know.
    RIMEWISE_STATUS_TABLE_VERSION = 31,
    // The length that the table states is not the length given.
    RIMEWISE_STATUS_TABLE_LENGTH = 32,
    // The table was altered: its checksum does not match.
    RIMEWISE_STATUS_TABLE_CHECKSUM = 33,
    // The parts of the table do not fit together.
    RIMEWISE_STATUS_TABLE_CONTENT = 34,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseStatus RimewiseStatus;
#else
typedef int32_t RimewiseStatus;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// A unit of pressure. The gauge units are above the local atmosphere.
enum RimewisePressureUnit
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Pascal, absolute.
    RIMEWISE_PRESSURE_UNIT_PA = 1,
    // Kilopascal, absolute.
    RIMEWISE_PRESSURE_UNIT_KPA = 2,
    // Bar, absolute.
    RIMEWISE_PRESSURE_UNIT_BAR = 3,
    // Pound per square inch, absolute (psia).
    RIMEWISE_PRESSURE_UNIT_PSI = 4,
    // Kilopascal above the local atmosphere.
    RIMEWISE_PRESSURE_UNIT_KPA_GAUGE = 5,
    // Bar above the local atmosphere.
    RIMEWISE_PRESSURE_UNIT_BAR_GAUGE = 6,
    // Pound per square inch above the local atmosphere (psig).
    RIMEWISE_PRESSURE_UNIT_PSI_GAUGE = 7,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewisePressureUnit RimewisePressureUnit;
#else
typedef int32_t RimewisePressureUnit;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// A unit of temperature or of a temperature difference.
enum RimewiseTemperatureUnit
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Degree Celsius; for a difference the same as kelvin.
    RIMEWISE_TEMPERATURE_UNIT_C = 1,
    // Degree Fahrenheit.
    RIMEWISE_TEMPERATURE_UNIT_F = 2,
    // Kelvin.
    RIMEWISE_TEMPERATURE_UNIT_K = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseTemperatureUnit RimewiseTemperatureUnit;
#else
typedef int32_t RimewiseTemperatureUnit;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// A safety class of ANSI/ASHRAE Standard 34: toxicity A (lower) or B (higher), flammability 1 to 3.
enum RimewiseSafetyClass
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // No source gives one; treat the refrigerant as flammable and toxic.
    RIMEWISE_SAFETY_CLASS_NOT_KNOWN = 0,
    // Lower toxicity, no flame propagation.
    RIMEWISE_SAFETY_CLASS_A1 = 1,
    // Lower toxicity, lower flammability, slow flame.
    RIMEWISE_SAFETY_CLASS_A2L = 2,
    // Lower toxicity, flammable.
    RIMEWISE_SAFETY_CLASS_A2 = 3,
    // Lower toxicity, higher flammability.
    RIMEWISE_SAFETY_CLASS_A3 = 4,
    // Higher toxicity, no flame propagation.
    RIMEWISE_SAFETY_CLASS_B1 = 5,
    // Higher toxicity, lower flammability, slow flame.
    RIMEWISE_SAFETY_CLASS_B2L = 6,
    // Higher toxicity, flammable.
    RIMEWISE_SAFETY_CLASS_B2 = 7,
    // Higher toxicity, higher flammability.
    RIMEWISE_SAFETY_CLASS_B3 = 8,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseSafetyClass RimewiseSafetyClass;
#else
typedef int32_t RimewiseSafetyClass;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// The phase of a state.
enum RimewisePhase
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Warmer than the dew point.
    RIMEWISE_PHASE_VAPOR = 1,
    // Colder than the bubble point.
    RIMEWISE_PHASE_LIQUID = 2,
    // From the bubble point to the dew point.
    RIMEWISE_PHASE_TWO_PHASE = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewisePhase RimewisePhase;
#else
typedef int32_t RimewisePhase;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What a pump-down test says by itself.
enum RimewisePumpDownVerdict
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // It pulls low and holds.
    RIMEWISE_PUMP_DOWN_VERDICT_PULLS_AND_HOLDS = 1,
    // It pulls low and leaks back after it stops.
    RIMEWISE_PUMP_DOWN_VERDICT_PULLS_AND_LEAKS_BACK = 2,
    // It cannot pull as low as a compressor in good order.
    RIMEWISE_PUMP_DOWN_VERDICT_CANNOT_PULL = 3,
    // It reached what it was stopped at; how much lower it can pull is not known.
    RIMEWISE_PUMP_DOWN_VERDICT_REACHED_STOP = 4,
    // The pressure rises, but behind a liquid-line valve that may be refrigerant boiling.
    RIMEWISE_PUMP_DOWN_VERDICT_RISE_UNCLEAR = 5,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewisePumpDownVerdict RimewisePumpDownVerdict;
#else
typedef int32_t RimewisePumpDownVerdict;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What the first moments after a start show.
enum RimewiseStartVerdict
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // The current rose toward the locked-rotor current and fell in time.
    RIMEWISE_START_VERDICT_GOOD = 1,
    // The current fell late: weak start gear or capacitor, low voltage, or a start against pressure.
    RIMEWISE_START_VERDICT_SLOW = 2,
    // The current stays near the locked-rotor current: the rotor stands still. Switch off.
    RIMEWISE_START_VERDICT_LOCKED_ROTOR = 3,
    // The inrush is far below the locked-rotor current: a clamp too slow to catch it, or a poor connection.
    RIMEWISE_START_VERDICT_INRUSH_LOW = 4,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseStartVerdict RimewiseStartVerdict;
#else
typedef int32_t RimewiseStartVerdict;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What three resistances tell about unmarked terminals.
enum RimewiseIdentification
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // All three terminals are told apart, and the resistances agree.
    RIMEWISE_IDENTIFICATION_IDENTIFIED = 1,
    // Two of the terminals are too close for this meter; the assignment is the likelier one.
    RIMEWISE_IDENTIFICATION_AMBIGUOUS = 2,
    // The largest resistance is not the sum of the others within what the meter allows.
    RIMEWISE_IDENTIFICATION_INCONSISTENT = 3,
    // One or more of the three reads open.
    RIMEWISE_IDENTIFICATION_OPEN = 4,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseIdentification RimewiseIdentification;
#else
typedef int32_t RimewiseIdentification;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What a standing pressure says by itself.
enum RimewiseStandingVerdict
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // On the curve, or between dew and bubble: this refrigerant, with liquid left, as far as a pressure can tell.
    RIMEWISE_STANDING_VERDICT_CONSISTENT = 1,
    // Above the bubble curve: non-condensables, or another refrigerant.
    RIMEWISE_STANDING_VERDICT_ABOVE_BUBBLE = 2,
    // Below the dew curve: no liquid left, or another refrigerant.
    RIMEWISE_STANDING_VERDICT_BELOW_DEW = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseStandingVerdict RimewiseStandingVerdict;
#else
typedef int32_t RimewiseStandingVerdict;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What to do at the scale.
enum RimewiseWeighInPlan
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Let `mass_kg` out of the cylinder by the scale.
    RIMEWISE_WEIGH_IN_PLAN_CHARGE = 1,
    // Nothing to add: the machine holds `mass_kg` beyond its nameplate charge.
    RIMEWISE_WEIGH_IN_PLAN_RECOVER = 2,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseWeighInPlan RimewiseWeighInPlan;
#else
typedef int32_t RimewiseWeighInPlan;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What superheat and subcooling tell of the charge.
enum RimewiseChargeAnswer
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // `deviation` tells.
    RIMEWISE_CHARGE_ANSWER_DEVIATION = 1,
    // A receiver takes up the difference.
    RIMEWISE_CHARGE_ANSWER_BLIND_RECEIVER = 2,
    // An accumulator takes up the difference.
    RIMEWISE_CHARGE_ANSWER_BLIND_ACCUMULATOR = 3,
    // No subcooling is left: the condenser outlet may hold vapor, and how much does not show.
    RIMEWISE_CHARGE_ANSWER_BLIND_NO_SUBCOOLING = 4,
    // No superheat is left: liquid in the suction line does not show.
    RIMEWISE_CHARGE_ANSWER_BLIND_NO_SUPERHEAT = 5,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseChargeAnswer RimewiseChargeAnswer;
#else
typedef int32_t RimewiseChargeAnswer;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// A way to go on.
enum RimewiseWay
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Leave the machine as it is.
    RIMEWISE_WAY_LEAVE = 1,
    // Make one more test, then do what is best.
    RIMEWISE_WAY_TEST = 2,
    // Repair the cause that stands beside it.
    RIMEWISE_WAY_REPAIR = 3,
    // Replace the compressor.
    RIMEWISE_WAY_REPLACE_COMPRESSOR = 4,
    // Replace the machine.
    RIMEWISE_WAY_REPLACE_MACHINE = 5,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseWay RimewiseWay;
#else
typedef int32_t RimewiseWay;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What a step or a way is about.
enum RimewiseSubject
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // The machine as a whole.
    RIMEWISE_SUBJECT_MACHINE = 0,
    // A RimewiseMeasurement.
    RIMEWISE_SUBJECT_MEASUREMENT = 1,
    // A RimewiseAction.
    RIMEWISE_SUBJECT_ACTION = 2,
    // A RimewisePlanContext.
    RIMEWISE_SUBJECT_CONTEXT = 3,
    // A RimewiseCause.
    RIMEWISE_SUBJECT_CAUSE = 4,
    // A RimewiseFindingKind.
    RIMEWISE_SUBJECT_FINDING = 5,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum RimewiseSubject RimewiseSubject;
#else
typedef int32_t RimewiseSubject;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// One refrigerant. Opaque: take the address of a built-in one, look one up, or load one from a table.
typedef struct RimewiseRefrigerant RimewiseRefrigerant;

// A list of texts. Opaque: take the address of one, such as &rimewise_cause_names for the names of the contract,
// &rimewise_cause_en for English and &rimewise_cause_es for Spanish sentences.
typedef struct RimewiseTexts RimewiseTexts;

// A value with its standard uncertainty (k = 1), both in the unit of the name they stand under.
typedef struct RimewiseEstimate {
    // The value; 0 where the bit in the valid mask is clear.
    float value;
    // The standard uncertainty; 0 where the bit in the valid mask is clear.
    float u;
} RimewiseEstimate;

// A standing pressure judged.
typedef struct RimewiseStanding {
    // A RimewiseStandingVerdict.
    int32_t verdict;
    // Bubble pressure at the standing temperature, kPa absolute.
    struct RimewiseEstimate bubble_kpa;
    // Dew pressure at the standing temperature, kPa absolute.
    struct RimewiseEstimate dew_kpa;
} RimewiseStanding;

// A weigh-in planned.
typedef struct RimewiseWeighIn {
    // A RimewiseWeighInPlan.
    int32_t plan;
    // The mass of the plan, kg.
    struct RimewiseEstimate mass_kg;
    // Standard uncertainty of the charge in the machine over the nameplate charge, as a fraction.
    //
    // 0 where nothing is to be added.
    float relative_u;
} RimewiseWeighIn;

// The state that tells of a charge, K: measured, or at the rated charge in conditions like today's.
typedef struct RimewiseChargeState {
    // Superheat at the compressor inlet, K.
    struct RimewiseEstimate superheat_k;
    // Subcooling at the condenser outlet, K.
    struct RimewiseEstimate subcooling_k;
} RimewiseChargeState;

// What superheat and subcooling say about the charge.
typedef struct RimewiseCharge {
    // A RimewiseChargeAnswer.
    int32_t answer;
    // The deviation from the rated charge, as a fraction: -0.2 is a fifth too little; 0 where it cannot be told.
    struct RimewiseEstimate deviation;
} RimewiseCharge;

// How to handle a refrigerant when it is charged or has leaked; each is 1 or 0.
typedef struct RimewiseHandling {
    // 1: charge as liquid only, throttled so that no liquid reaches the compressor.
    int32_t charge_as_liquid_only;
    // 1: a partial leak may have changed what is left; recover and weigh in new rather than top up.
    int32_t leak_shifts_composition;
    // 1: what leaks can burn; an unknown safety class counts as 1.
    int32_t flammable;
    // 1: it is of the higher toxicity class; an unknown safety class counts as 1.
    int32_t toxic;
} RimewiseHandling;

// One quantity of a compressor's rating map: ten coefficients over both dew temperatures (AHRI Standard 540).
typedef struct RimewiseRatingMap {
    // The size of this struct; set it before the call.
    uint32_t size;
    // A RimewiseCompressorScale: that of both dew temperatures in the coefficients.
    int32_t scale;
    // C1 to C10 in the order of the standard, in whatever unit the map states.
    float coefficients[10];
    // Standard uncertainty of the map's value, as a fraction; NaN takes the usual 0.025.
    float spread;
    // Number of corners of the envelope, 3 to RIMEWISE_ENVELOPE_MAX; a map without an envelope has no answer.
    uint32_t corner_count;
    // Evaporating dew temperatures of the corners in order around the envelope, degC.
    float corner_evaporating_c[RIMEWISE_ENVELOPE_MAX];
    // Condensing dew temperatures of the corners, degC.
    float corner_condensing_c[RIMEWISE_ENVELOPE_MAX];
} RimewiseRatingMap;

// What is known of the machine; its refrigerant is an argument of its own.
//
// NaN and RIMEWISE_NOT_KNOWN are normal.
typedef struct RimewiseSystem {
    // The size of this struct, which rimewise_system_clear sets.
    uint32_t size;
    // Nameplate charge, kg.
    float charge_kg;
    // Tolerance of the run capacitor's plate value, percent; 6 unless given.
    float run_capacitor_tolerance_percent;
    // The metering device; not known: the diagnosis allows for each kind's spread.
    // A RimewiseMetering.
    int32_t metering;
    // Whether a liquid receiver stands behind the condenser; not known: usual for the metering.
    // 1 or 0.
    int32_t receiver;
    // Whether a regulator holds the compressor's inlet pressure down; not known: no.
    // 1 or 0.
    int32_t suction_pressure_regulator;
    // What the machine is for.
    // A RimewiseDuty.
    int32_t duty;
    // Space air temperature, degC.
    float design_space_c;
    // Air temperature onto the condenser, degC.
    float design_ambient_c;
    // Space air minus evaporating dew temperature, K.
    float design_evaporator_td_k;
    // Condensing temperature (mean of bubble and dew) minus ambient, K.
    float design_condenser_td_k;
    // Superheat at the compressor inlet, K.
    float design_suction_superheat_k;
    // Subcooling at the condenser outlet, K.
    float design_subcooling_k;
    // The maker's target suction pressure, kPa absolute; goes before `evaporator_td_k`.
    float design_suction_pressure_kpa;
    // The maker's target discharge pressure, kPa absolute; goes before `condenser_td_k`.
    float design_discharge_pressure_kpa;
    // Rated-load current, A; a machine at its design point usually runs below it.
    float compressor_rated_load_a;
    // Locked-rotor current at rated voltage, A.
    float compressor_locked_rotor_a;
    // Rated voltage, V.
    float compressor_rated_v;
    // Number of phases, 1 or 3.
    float compressor_phases;
    // Supply frequency, Hz.
    float compressor_hz;
    // Resistance of the run winding (common to run), ohm.
    // INFINITY: the meter reads open.
    float compressor_run_winding_ohm;
    // Resistance of the start winding (common to start), ohm.
    // INFINITY: the meter reads open.
    float compressor_start_winding_ohm;
    // Temperature the winding resistances refer to, degC.
    float compressor_winding_reference_c;
    // Rated run capacitor, microfarad.
    // INFINITY: the meter reads open.
    float compressor_run_capacitor_uf;
    // Rated start capacitor, microfarad.
    // INFINITY: the meter reads open.
    float compressor_start_capacitor_uf;
    // How the compressor compresses.
    // A RimewiseCompressorKind.
    int32_t compressor_kind;
    // Whether its speed is fixed.
    // A RimewiseDrive.
    int32_t compressor_drive;
    // What starts a single-phase motor.
    // A RimewiseStartGear.
    int32_t compressor_start_gear;
} RimewiseSystem;

// What was read on the visit. Pressures are absolute, kPa; temperatures degC.
//
// NaN and RIMEWISE_NOT_KNOWN are normal.
typedef struct RimewiseReadings {
    // The size of this struct, which rimewise_readings_clear sets.
    uint32_t size;
    // Pressure at the compressor's suction, kPa absolute.
    float suction_pressure_kpa;
    // Pressure at the evaporator outlet, kPa absolute.
    float evaporator_pressure_kpa;
    // Pressure at the compressor's discharge, kPa absolute.
    float discharge_pressure_kpa;
    // Pressure at the condenser or receiver outlet, kPa absolute.
    float liquid_pressure_kpa;
    // Pipe temperature at the evaporator outlet, degC.
    float evaporator_outlet_c;
    // Pipe temperature at the compressor inlet, degC.
    float suction_line_c;
    // Pipe temperature at the compressor outlet, degC.
    float discharge_line_c;
    // Pipe temperature of the liquid line ahead of the drier, degC.
    float liquid_line_c;
    // Pipe temperature behind the drier, degC.
    float drier_outlet_c;
    // Air temperature of the cooled space, onto the evaporator, degC.
    float space_c;
    // Air temperature off the evaporator, degC.
    float supply_air_c;
    // Air temperature onto the condenser, degC.
    float ambient_c;
    // Air temperature off the condenser, degC.
    float condenser_exhaust_c;
    // Compressor current, A.
    float current_a;
    // Supply voltage while running, V.
    float voltage_v;
    // Lowest suction pressure reached against a closed valve, kPa absolute.
    float pump_down_kpa;
    // Rise of that pressure after the compressor stopped, kPa/min.
    float pump_down_rise_kpa_per_min;
    // Pressure of the stopped, equalised machine, kPa absolute.
    float standing_pressure_kpa;
    // The one temperature of the stopped, equalised machine, degC.
    float standing_temperature_c;
    // Resistance common to run, ohm.
    // INFINITY: the meter reads open.
    float winding_run_ohm;
    // Resistance common to start, ohm.
    // INFINITY: the meter reads open.
    float winding_start_ohm;
    // Resistance run to start, ohm.
    // INFINITY: the meter reads open.
    float winding_run_to_start_ohm;
    // Insulation resistance winding to frame, megohm.
    // INFINITY: the meter reads open.
    float winding_to_frame_megohm;
    // Run capacitor, microfarad.
    // INFINITY: the meter reads open.
    float run_capacitor_uf;
    // Start capacitor, microfarad.
    // INFINITY: the meter reads open.
    float start_capacitor_uf;
    // Time since the compressor started, minutes.
    float minutes_running;
    // Highest current in the first moment after the start, A.
    float start_current_a;
    // Compressor power, W.
    float power_w;
    // Wet-bulb temperature of the cooled space, degC.
    float space_wet_bulb_c;
    // Temperature of the windings when their resistances were measured, degC.
    float winding_c;
    // Test voltage of the insulation measurement, V.
    float insulation_test_v;
    // Resistance between unmarked terminals 1 and 2, ohm.
    // INFINITY: the meter reads open.
    float terminal_12_ohm;
    // Resistance between unmarked terminals 2 and 3, ohm.
    // INFINITY: the meter reads open.
    float terminal_23_ohm;
    // Resistance between unmarked terminals 1 and 3, ohm.
    // INFINITY: the meter reads open.
    float terminal_13_ohm;
    // Pipe temperature just behind the metering device, degC; stands for the evaporating temperature of a
    // machine without a port.
    float evaporator_inlet_c;
    // Pipe temperature at a return bend in the middle of the condenser, degC; stands for the condensing
    // temperature of a machine without a port.
    float condenser_middle_c;
    // Refrigerant that came out into the recovery cylinder, kg.
    float recovered_kg;
    // Refrigerant put in on this visit before these readings, kg.
    float added_kg;
    // Starts of the compressor an hour.
    float starts_per_hour;
    // Time that the machine has been running with hardly a stop, hours.
    float hours_running;
    // The three line-to-line voltages, V.
    // All NaN where they are not known.
    float line_voltages_v[3];
    // The three line currents, A.
    // All NaN where they are not known.
    float line_currents_a[3];
    // Whether the compressor runs while the pressures are read; not said: it runs.
    // 1 or 0.
    int32_t running;
    // Which valve the pump-down was made against.
    // A RimewisePumpDownValve.
    int32_t pump_down_valve;
    // What ended the pump-down.
    // A RimewisePumpDownEnd.
    int32_t pump_down_ended_by;
} RimewiseReadings;

// Standard uncertainties (k = 1) of the instruments; what is left out takes its usual value.
//
// NaN and RIMEWISE_NOT_KNOWN are normal.
typedef struct RimewiseUncertainty {
    // The size of this struct, which rimewise_uncertainty_clear sets.
    uint32_t size;
    // Pressure, percent of reading; 1 % and 2 kPa unless given.
    float pressure_percent;
    // Span of the gauge, kPa; given, `pressure_percent` is of this span.
    float pressure_span_kpa;
    // Pipe temperature, K; 0.7 K unless given, beside the clamp's bias.
    float line_temperature_k;
    // Air temperature, K; 0.5 K unless given.
    float air_temperature_k;
    // Current, percent of reading; 1.5 % unless given.
    float current_percent;
} RimewiseUncertainty;

// The quantities of the cycle, each with its standard uncertainty; null where a reading is missing.
typedef struct RimewiseCycle {
    // Which quantities are there, RimewiseCycleValid bits; the others are 0.
    uint32_t valid;
    // Dew temperature at the compressor's suction pressure, degC.
    struct RimewiseEstimate suction_saturation_c;
    // Dew temperature at the evaporator outlet (its own pressure when given), degC.
    struct RimewiseEstimate evaporator_saturation_c;
    // Condensing temperature, mean of bubble and dew at the discharge (else liquid) pressure, degC.
    struct RimewiseEstimate condensing_c;
    // Superheat at the evaporator outlet, K; signed.
    struct RimewiseEstimate superheat_k;
    // Superheat at the compressor inlet, K; signed.
    struct RimewiseEstimate compressor_superheat_k;
    // Subcooling, from the liquid pressure, else from discharge with its larger uncertainty, K; signed.
    struct RimewiseEstimate subcooling_k;
    // Discharge pressure over suction pressure, both absolute.
    struct RimewiseEstimate pressure_ratio;
    // Space air minus evaporating dew temperature, K.
    struct RimewiseEstimate evaporator_td_k;
    // Condensing temperature minus ambient, K.
    struct RimewiseEstimate condenser_td_k;
    // Discharge line above the dew temperature at the discharge pressure, K.
    struct RimewiseEstimate discharge_superheat_k;
    // Liquid line minus drier outlet, K.
    struct RimewiseEstimate drier_drop_k;
    // Space air minus supply air, K.
    struct RimewiseEstimate supply_air_drop_k;
    // Condenser exhaust minus ambient, K.
    struct RimewiseEstimate exhaust_air_rise_k;
    // Room for quantities of later releases.
    struct RimewiseEstimate reserved[11];
} RimewiseCycle;

// Which field of a visit cannot be used, and why.
typedef struct RimewiseInvalid {
    // The size of this struct; set it before the call.
    uint32_t size;
    // The field, for rimewise_field_text.
    int32_t field;
    // The position in `record` of the readings that hold the field; -1 for the visit itself.
    int32_t record;
    // A RimewiseErrorCode.
    int32_t code;
    // A RimewiseUnit, of all three numbers.
    int32_t unit;
    // RIMEWISE_FACT_VALUE, RIMEWISE_FACT_MIN, RIMEWISE_FACT_MAX.
    uint32_t valid;
    // The value that was given; for an unknown code the code itself is in the caller's struct.
    float value;
    // The lowest value that can be.
    float min;
    // The highest value that can be.
    float max;
} RimewiseInvalid;

// What things cost, in one currency of the caller's choice; null is not known.
//
// NaN and RIMEWISE_NOT_KNOWN are normal.
typedef struct RimewiseCosts {
    // The size of this struct, which rimewise_costs_clear sets.
    uint32_t size;
    // Coming out once more.
    float visit;
    // An hour of work.
    float hour;
    // A new compressor, fitted.
    float compressor;
    // A new machine, installed.
    float machine;
    // What is lost each day that the machine does not do its work.
    float loss_a_day;
    // Days that the loss is reckoned over.
    float horizon_days;
    // The next test, its time and parts.
    float test;
    // What is lost at once when the machine is left with its fault: the goods at risk times the chance that they
    // spoil.
    float product_at_risk;
    // The repair of each cause, by the number of its RimewiseCause; that of none is not looked at.
    float repair[RIMEWISE_CAUSES_MAX];
} RimewiseCosts;

// A way to go on with its expected cost.
typedef struct RimewiseAlternative {
    // A RimewiseWay.
    int32_t action;
    // The RimewiseCause that is repaired; 0 for the other actions.
    int32_t cause;
    // RIMEWISE_ALTERNATIVE_COST where `expected_cost` is there; a cost that it needs may be missing.
    uint32_t valid;
    // The expected cost.
    float expected_cost;
} RimewiseAlternative;

// All ways to go on, and the cheapest.
typedef struct RimewiseDecision {
    // The size of this struct; set it before the call.
    uint32_t size;
    // RIMEWISE_DECISION_RECOMMENDED where a way is recommended.
    uint32_t valid;
    // The recommended RimewiseWay; 0 where no cost is known.
    int32_t recommended;
    // The RimewiseCause whose repair is recommended; 0 for the other actions.
    int32_t recommended_cause;
    // Number of entries of `alternatives`.
    uint32_t alternative_count;
    // Every way to go on.
    struct RimewiseAlternative alternatives[RIMEWISE_ALTERNATIVES_MAX];
} RimewiseDecision;

// What was seen and heard on the visit.
//
// NaN and RIMEWISE_NOT_KNOWN are normal.
typedef struct RimewiseObservations {
    // The size of this struct, which rimewise_observations_clear sets.
    uint32_t size;
    // How the noise behaves after the start.
    // A RimewiseStartNoise.
    int32_t start_noise;
    // Whether frost or sweat covers the compressor body.
    // 1 or 0.
    int32_t frost_on_compressor;
    // What the sight glass shows.
    // A RimewiseSightGlass.
    int32_t sight_glass;
    // Whether the evaporator coil is iced over.
    // 1 or 0.
    int32_t coil_iced;
    // Whether the condenser's fan turns.
    // A RimewiseFan.
    int32_t condenser_fan;
    // Whether the evaporator's fan turns.
    // A RimewiseFan.
    int32_t evaporator_fan;
    // What the condenser's face looks like.
    // A RimewiseCondenserFace.
    int32_t condenser_face;
    // How far frost or sweat covers the evaporator.
    // A RimewiseFrostLine.
    int32_t frost_line;
    // Whether oil stands at joints, fins or floor.
    // 1 or 0.
    int32_t oil_traces;
    // Whether a leak was found.
    // 1 or 0.
    int32_t leak_found;
    // Whether thermostat and controls call for cooling.
    // 1 or 0.
    int32_t calls_for_cooling;
    // Whether the door closes and its gasket seals.
    // 1 or 0.
    int32_t door_closes;
    // What is heard when the compressor is switched on.
    // A RimewiseStartSound.
    int32_t start_sound;
} RimewiseObservations;

// Memory of the caller that a diagnosis works in, so that the stack stays small: 36,864 bytes on every target. Its
// content is private and means nothing between calls; it need not be initialised, and two calls that run at once need
// one each.
typedef struct RimewiseWorkspace {
    // Private.
    uint64_t opaque[4608];
} RimewiseWorkspace;

// The probability and the mean severity of one cause.
typedef struct RimewiseCauseProbability {
    // A RimewiseCause.
    int32_t cause;
    // RIMEWISE_CAUSE_SEVERITY where `severity` is there.
    uint32_t valid;
    // Its probability, from every single cause and every pair that holds it, 0 to 1.
    float probability;
    // The fraction lost or added where the cause is present.
    float severity;
} RimewiseCauseProbability;

// One reading's word for or against one cause.
typedef struct RimewiseEvidence {
    // A RimewiseCause.
    int32_t cause;
    // A RimewiseMeasurement.
    int32_t reading;
    // Log-odds of the cause with all readings minus with this one left out, nats; positive speaks for it.
    float weight_nats;
} RimewiseEvidence;

// A measurement not yet taken and what it would tell.
typedef struct RimewiseNextMeasurement {
    // A RimewiseMeasurement.
    int32_t measurement;
    // A RimewiseEffort.
    int32_t effort;
    // The information expected on the cause, bits.
    float information_bits;
} RimewiseNextMeasurement;

// A cause and the measurements that rule it out, or would.
typedef struct RimewiseCauseAndMeasurements {
    // A RimewiseCause.
    int32_t cause;
    // Number of entries of `measurements`.
    uint32_t measurement_count;
    // RimewiseMeasurement numbers, the strongest first; the rest is 0.
    int32_t measurements[RIMEWISE_MEASUREMENTS_MAX];
} RimewiseCauseAndMeasurements;

// Something suspicious about one field of the visit.
typedef struct RimewiseWarning {
    // A RimewiseWarningKind.
    int32_t code;
    // The field, for rimewise_field_text.
    int32_t field;
    // A RimewiseUnit, of both numbers.
    int32_t unit;
    // RIMEWISE_FACT_VALUE, RIMEWISE_FACT_LIMIT.
    uint32_t valid;
    // The value that was read.
    float value;
    // The limit that it was held against.
    float limit;
} RimewiseWarning;

// An electrical finding with the value it rests on and the limit it was held against.
typedef struct RimewiseFinding {
    // A RimewiseFindingKind.
    int32_t finding;
    // A RimewiseUnit, of both numbers.
    int32_t unit;
    // RIMEWISE_FINDING_VALUE and RIMEWISE_FINDING_LIMIT; no value: the meter read open.
    uint32_t valid;
    // The value.
    float value;
    // The limit.
    float limit;
} RimewiseFinding;

// One caution at the step it belongs to.
typedef struct RimewiseCaution {
    // A RimewiseCautionCode.
    int32_t code;
    // A RimewiseStep.
    int32_t step;
} RimewiseCaution;

// What this machine would show if it were healthy, here and now.
typedef struct RimewiseExpected {
    // Which quantities are there, RimewiseExpectedValid bits; the others are 0.
    uint32_t valid;
    // Saturation (dew) temperature at the compressor's suction, degC.
    struct RimewiseEstimate suction_saturation_c;
    // Condensing temperature (mean of bubble and dew), degC.
    struct RimewiseEstimate condensing_c;
    // Suction pressure, kPa absolute.
    struct RimewiseEstimate suction_pressure_kpa;
    // Discharge pressure, kPa absolute.
    struct RimewiseEstimate discharge_pressure_kpa;
    // Superheat at the evaporator outlet, K.
    struct RimewiseEstimate superheat_k;
    // Superheat at the compressor inlet, K.
    struct RimewiseEstimate compressor_superheat_k;
    // Subcooling, K.
    struct RimewiseEstimate subcooling_k;
    // Discharge pressure over suction pressure.
    struct RimewiseEstimate pressure_ratio;
    // Pipe temperature at the evaporator outlet, degC.
    struct RimewiseEstimate evaporator_outlet_c;
    // Pipe temperature at the compressor inlet, degC.
    struct RimewiseEstimate suction_line_c;
    // Pipe temperature at the compressor outlet, degC.
    struct RimewiseEstimate discharge_line_c;
    // Pipe temperature of the liquid line, degC.
    struct RimewiseEstimate liquid_line_c;
    // Pipe temperature behind the drier, degC.
    struct RimewiseEstimate drier_outlet_c;
    // Air temperature off the evaporator, degC.
    struct RimewiseEstimate supply_air_c;
    // Air temperature off the condenser, degC.
    struct RimewiseEstimate condenser_exhaust_c;
    // Compressor current, A.
    struct RimewiseEstimate current_a;
    // Lowest pump-down pressure of a compressor in good order, kPa absolute.
    struct RimewiseEstimate pump_down_kpa;
    // Room for quantities of later releases.
    struct RimewiseEstimate reserved[7];
} RimewiseExpected;

// The most specific statement that the error rates allow.
typedef struct RimewiseVerdict {
    // A RimewiseLevel, which says what `name` is.
    int32_t level;
    // A RimewiseCause, RimewiseFamily, RimewiseJob or RimewiseFindingKind; 0 at the other levels.
    int32_t name;
    // Its probability, 0 to 1.
    float probability;
} RimewiseVerdict;

// A family or a job with its probability.
typedef struct RimewiseShare {
    // The family or the job.
    int32_t name;
    // Its probability, 0 to 1.
    float probability;
} RimewiseShare;

// What is dangerous, with the reading it rests on.
typedef struct RimewiseAlarm {
    // A RimewiseAlarmCode.
    int32_t code;
    // The RimewiseMeasurement it rests on.
    int32_t field;
    // A RimewiseUnit, of both numbers.
    int32_t unit;
    // RIMEWISE_FACT_VALUE, RIMEWISE_FACT_LIMIT.
    uint32_t valid;
    // Its value.
    float value;
    // The limit.
    float limit;
} RimewiseAlarm;

// What an electrical finding says beside its value and limit.
typedef struct RimewiseFindingDetails {
    // A RimewiseWinding; 0 where it cannot be told.
    int32_t winding;
    // How probable it is that what the finding says is so, 0 to 1.
    float probability;
    // 1 where the value was referred to another temperature, else 0.
    int32_t corrected;
    // The value at `to_c`, in the finding's unit.
    float corrected_value;
    // The temperature it was measured at, degC.
    float from_c;
    // The temperature it is referred to, degC.
    float to_c;
} RimewiseFindingDetails;

// Which of a motor's unmarked terminals is which, by the numbers 1 to 3; all 0 where they do not tell.
typedef struct RimewiseTerminalsFound {
    // The common terminal.
    uint32_t common;
    // The run terminal.
    uint32_t run;
    // The start terminal.
    uint32_t start;
    // How probable it is that this is so, 0 to 1.
    float probability;
} RimewiseTerminalsFound;

// A step, what follows on an outcome, or a way to go on: what kind it is and what it is about.
typedef struct RimewisePlanEntry {
    // A RimewiseStepKind.
    int32_t kind;
    // A RimewiseSubject, which says what `name` is.
    int32_t about;
    // The number of what it is about; 0 for the machine.
    int32_t name;
    // Of an outcome its probability, of a way its expected cost, of the step the probability that it changes what is done.
    float number;
} RimewisePlanEntry;

// What to do next, and what the ways to go on cost.
typedef struct RimewisePlan {
    // RIMEWISE_PLAN_... bits of the numbers that are there.
    uint32_t valid;
    // The next step.
    struct RimewisePlanEntry step;
    // What the step takes, minutes.
    float minutes;
    // The RimewiseEffort of the step; 0 for what is no measurement.
    int32_t effort;
    // What a hose takes from the charge, g.
    float hose_takes_g;
    // The same over the nameplate charge, percent.
    float hose_takes_percent;
    // The probability of a weak compressor above which replacing it pays.
    float replace_above;
    // What to let out of the cylinder by the scale after an evacuation, kg.
    struct RimewiseEstimate weigh_in_kg;
    // A RimewiseChange: whether what was changed on this visit helped; 0 without readings from before.
    int32_t change;
    // Number of entries of `then`.
    uint32_t then_count;
    // What follows on each outcome of the step.
    struct RimewisePlanEntry then[RIMEWISE_THEN_MAX];
    // Number of entries of `ways`.
    uint32_t way_count;
    // The ways to go on, the cheapest first.
    struct RimewisePlanEntry ways[RIMEWISE_WAYS_MAX];
} RimewisePlan;

// The whole answer to one visit. Entries of an array past its count are 0.
typedef struct RimewiseReport {
    // The size of this struct; set it before the call.
    uint32_t size;
    // RIMEWISE_REPORT_FITS where `fits` is there.
    uint32_t valid;
    // 1 where acting on `leading` is justified by the rule's stated error rates, else 0.
    int32_t decided;
    // The most probable RimewiseCause, `none` included.
    int32_t leading;
    // How probable readings as odd as these are under the best explanation, 0 to 1.
    //
    // Lowered by the probability that the visit was told wrongly: another refrigerant, readings in each other's place.
    //
    // Below 0.01 nothing is decided: check the readings against each other, the load, the door, the controls and the
    // refrigerant itself.
    float fits;
    // Number of entries of `causes`.
    uint32_t cause_count;
    // All causes, most probable first.
    struct RimewiseCauseProbability causes[RIMEWISE_CAUSES_MAX];
    // Number of entries of `evidence`.
    uint32_t evidence_count;
    // The readings' words for and against the leading causes, the strongest first.
    struct RimewiseEvidence evidence[RIMEWISE_EVIDENCE_MAX];
    // Number of entries of `next`.
    uint32_t next_count;
    // What to measure next, the most telling first.
    struct RimewiseNextMeasurement next[RIMEWISE_NEXT_MAX];
    // Number of entries of `ruled_out`.
    uint32_t ruled_out_count;
    // Causes with a probability below 0.02 and what excludes them.
    struct RimewiseCauseAndMeasurements ruled_out[RIMEWISE_CAUSES_MAX];
    // Number of entries of `still_open`.
    uint32_t still_open_count;
    // The other causes and what would close them.
    struct RimewiseCauseAndMeasurements still_open[RIMEWISE_CAUSES_MAX];
    // Number of entries of `warnings`.
    uint32_t warning_count;
    // What is suspicious about the input.
    struct RimewiseWarning warnings[RIMEWISE_WARNINGS_MAX];
    // Number of entries of `electrical`.
    uint32_t electrical_count;
    // What the motor and supply readings show.
    struct RimewiseFinding electrical[RIMEWISE_ELECTRICAL_MAX];
    // Number of entries of `cautions`.
    uint32_t caution_count;
    // What to take care of, step by step.
    struct RimewiseCaution cautions[RIMEWISE_CAUTIONS_MAX];
    // What the readings say the machine does.
    struct RimewiseCycle cycle;
    // What it would do if healthy.
    struct RimewiseExpected expected;
    // The most specific statement that the error rates allow.
    struct RimewiseVerdict verdict;
    // A RimewiseCompressorState: whether it is the compressor.
    int32_t compressor_state;
    // The probability that the compressor or its motor is at fault.
    float compressor_probability;
    // Number of entries of `families`.
    uint32_t family_count;
    // RimewiseFamily numbers with their probabilities, pairs counted once.
    struct RimewiseShare families[RIMEWISE_FAMILIES_MAX];
    // Number of entries of `jobs`.
    uint32_t job_count;
    // RimewiseJob numbers with their probabilities, pairs counted once, the most probable first.
    struct RimewiseShare jobs[RIMEWISE_JOBS_MAX];
    // Number of entries of `alarms`.
    uint32_t alarm_count;
    // What is dangerous, the most urgent first.
    struct RimewiseAlarm alarms[RIMEWISE_ALARMS_MAX];
    // What each entry of `next` takes, minutes.
    float next_minutes[RIMEWISE_NEXT_MAX];
    // What each entry of `electrical` says beside its value and limit.
    struct RimewiseFindingDetails electrical_details[RIMEWISE_ELECTRICAL_MAX];
    // Which of the motor's unmarked terminals is which.
    struct RimewiseTerminalsFound terminals;
    // What to do next, and what the ways to go on cost.
    struct RimewisePlan plan;
} RimewiseReport;

// Why the technician was called, and what was done before.
//
// NaN and RIMEWISE_NOT_KNOWN are normal.
typedef struct RimewiseCall {
    // The size of this struct, which rimewise_call_clear sets.
    uint32_t size;
    // How long it has been so, hours.
    float complaint_hours;
    // What the customer complains of.
    // Bit n stands for the RimewiseComplaint with the number n.
    int32_t complaint;
    // What is known to have been done before.
    // Bit n stands for the RimewiseHistory with the number n.
    int32_t history;
} RimewiseCall;

// What this machine lets be reached, and what is at hand.
//
// NaN and RIMEWISE_NOT_KNOWN are normal.
typedef struct RimewiseAccess {
    // The size of this struct, which rimewise_access_clear sets.
    uint32_t size;
    // Whether there is a port on the suction side.
    // 1 or 0.
    int32_t suction_port;
    // Whether there is a port on the high side.
    // 1 or 0.
    int32_t high_side_port;
    // Whether there is a port on the liquid line.
    // 1 or 0.
    int32_t liquid_port;
    // Whether the compressor has a suction service valve.
    // 1 or 0.
    int32_t suction_service_valve;
    // Whether there is a valve in the liquid line.
    // 1 or 0.
    int32_t liquid_line_valve;
    // The tools at hand; what is absent from the list is not at hand, no list says nothing.
    // Bit n stands for the RimewiseTool with the number n.
    int32_t tools;
} RimewiseAccess;

// One visit: what is known of the machine, what was measured and seen, and how well. NULL: nothing of that is known.
typedef struct RimewiseVisit {
    // The size of this struct; set it before the call, and everything that is not used to zero.
    uint32_t size;
    // Number of entries of `record`, at most RIMEWISE_RECORD_MAX.
    uint32_t record_count;
    // Number of entries of `cannot`, at most RIMEWISE_CANNOT_MAX.
    uint32_t cannot_count;
    // Zero.
    uint32_t reserved;
    // What is known of the machine.
    const struct RimewiseSystem *system;
    // What was measured; must be there.
    const struct RimewiseReadings *readings;
    // What was seen and heard.
    const struct RimewiseObservations *observations;
    // How well the instruments measure; NULL: as usual.
    const struct RimewiseUncertainty *uncertainty;
    // Why the technician was called, and what was done before.
    const struct RimewiseCall *call;
    // What the machine lets be reached, and what is at hand.
    const struct RimewiseAccess *access;
    // What things cost.
    const struct RimewiseCosts *costs;
    // Readings of this same machine when it was good, each of its own `size`.
    const struct RimewiseReadings *record;
    // What this visit cannot take or do: RimewiseMeasurement, or RIMEWISE_CANNOT_ACTION and a RimewiseAction.
    const int32_t *cannot;
} RimewiseVisit;

// What is known of the machine; all of it optional, all of it from the compressor's plate or the technician.
//
// NaN and RIMEWISE_NOT_KNOWN are normal.
typedef struct RimewiseMonitorSettings {
    // The size of this struct, which rimewise_monitor_settings_clear sets.
    uint32_t size;
    // Rated-load current of the plate, A.
    float rated_load_a;
    // Locked-rotor current of the plate at rated voltage, A.
    float locked_rotor_a;
    // Rated voltage of the plate, V.
    float rated_v;
    // Whether a regulator holds the compressor's inlet pressure down; not known: no.
    // 1 or 0.
    int32_t suction_pressure_regulator;
    // Which valve a pump-down will be made against.
    // A RimewisePumpDownValve.
    int32_t pump_down_valve;
} RimewiseMonitorSettings;

// What was measured at one moment, under the names of the readings; not measured is null.
//
// A value that arrives more slowly than the others is best repeated with its latest value: superheat is only
// known at a sample that holds both its pressure and its temperature.
//
// NaN and RIMEWISE_NOT_KNOWN are normal.
typedef struct RimewiseSample {
    // The size of this struct, which rimewise_sample_clear sets.
    uint32_t size;
    // Pressure at the compressor's suction, kPa absolute.
    float suction_pressure_kpa;
    // Pressure at the evaporator outlet, kPa absolute.
    float evaporator_pressure_kpa;
    // Pressure at the compressor's discharge, kPa absolute.
    float discharge_pressure_kpa;
    // Pressure at the condenser or receiver outlet, kPa absolute.
    float liquid_pressure_kpa;
    // Pipe temperature at the evaporator outlet, degC.
    float evaporator_outlet_c;
    // Pipe temperature at the compressor inlet, degC.
    float suction_line_c;
    // Pipe temperature at the compressor outlet, degC.
    float discharge_line_c;
    // Pipe temperature of the liquid line ahead of the drier, degC.
    float liquid_line_c;
    // Pipe temperature behind the drier, degC.
    float drier_outlet_c;
    // Air temperature of the cooled space, onto the evaporator, degC.
    float space_c;
    // Air temperature off the evaporator, degC.
    float supply_air_c;
    // Air temperature onto the condenser, degC.
    float ambient_c;
    // Air temperature off the condenser, degC.
    float condenser_exhaust_c;
    // Compressor current, A, without fans and heaters.
    float current_a;
    // Supply voltage, V.
    float voltage_v;
} RimewiseSample;

// One monitor of one machine, in the caller's memory. Its content is private: rimewise_monitor_start fills it, and
// nothing but the functions of the monitor may write to it.
typedef struct RimewiseMonitor {
    // Private.
    uint64_t opaque[128];
} RimewiseMonitor;

// One event.
typedef struct RimewiseMonitorEvent {
    // When, on the clock of the samples, ms, the lower 32 bits.
    uint32_t time_ms_low;
    // The upper 32 bits of the time.
    uint32_t time_ms_high;
    // A RimewiseMonitorEventKind, which says what the figures are.
    int32_t kind;
    // Bit n is set where `values[n]` is there.
    uint32_t valid;
    // The figures.
    float values[3];
} RimewiseMonitorEvent;

// What one sample brought.
typedef struct RimewiseMonitorEvents {
    // The size of this struct; set it before the call.
    uint32_t size;
    // A RimewiseMonitorSampleProblem: why the sample could not be used, whole or in part; 0 for none.
    int32_t problem;
    // The channels that could not be used: bit n is the n-th number of RimewiseSample, from 0.
    uint32_t unusable;
    // Number of entries of `events`.
    uint32_t count;
    // What happened, in its order.
    struct RimewiseMonitorEvent events[RIMEWISE_MONITOR_EVENTS_MAX];
} RimewiseMonitorEvents;

// The terminals of a single-phase motor by the number a technician gave them.
typedef struct RimewiseTerminals {
    // A RimewiseIdentification.
    int32_t identification;
    // The common terminal, 1 to 3; 0 where the terminals could not be told.
    uint32_t common;
    // The start terminal, likewise.
    uint32_t start;
    // The run terminal, likewise.
    uint32_t run;
    // Number of open readings.
    uint32_t open_count;
    // Resistance of the run winding, common to run, ohm; 0 where the terminals could not be told.
    struct RimewiseEstimate run_ohm;
    // Resistance of the start winding, common to start, ohm; 0 where the terminals could not be told.
    struct RimewiseEstimate start_ohm;
    // The largest resistance minus the sum of the others, ohm; 0 where one reads open.
    struct RimewiseEstimate residual_ohm;
} RimewiseTerminals;

// Density, enthalpy and entropy of one state; enthalpy and entropy are on the IIR reference state.
typedef struct RimewiseState {
    // Mass density, kg/m3.
    float density_kg_m3;
    // Specific enthalpy, kJ/kg.
    float enthalpy_kj_kg;
    // Specific entropy, kJ/(kg K).
    float entropy_kj_kg_k;
} RimewiseState;

// Memory of the caller for a refrigerant that is loaded from a table. Its content is private.
typedef struct RimewiseRefrigerantStorage {
    // Private.
    const void *opaque[12];
} RimewiseRefrigerantStorage;

// What a refrigerant's table says of the refrigerant itself.
typedef struct RimewiseRefrigerantInfo {
    // The size of this struct; set it before the call.
    uint32_t size;
    // A RimewiseSafetyClass, 0 where no source gives one.
    int32_t safety_class;
    // 1 where a binary pair of the blend had no published parameters and was estimated, else 0.
    int32_t estimated_pair;
    // Number of components; 1 for a pure fluid.
    uint32_t component_count;
    // Molar mass, g/mol.
    float molar_mass_g_mol;
    // Critical temperature, degC.
    float critical_c;
    // Critical pressure, kPa absolute.
    float critical_kpa;
    // Bubble temperature at one standard atmosphere, degC.
    float normal_boiling_c;
    // Dew minus bubble temperature at one standard atmosphere, K; 0 for a pure fluid.
    float glide_k;
    // Lowest saturation temperature of the table, degC.
    float temperature_min_c;
    // Highest saturation temperature of the table, degC.
    float temperature_max_c;
    // Lowest pressure that both saturation curves cover, kPa absolute.
    float pressure_min_kpa;
    // Highest pressure that both saturation curves cover, kPa absolute.
    float pressure_max_kpa;
} RimewiseRefrigerantInfo;

#ifdef __cplusplus
extern "C" {
#endif // __cplusplus

// R11: a pure fluid, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r11;

// R12: a pure fluid, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r12;

// R13: a pure fluid, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r13;

// R13I1: a pure fluid, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r13i1;

// R14: a pure fluid, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r14;

// R21: a pure fluid, safety class B1.
extern const struct RimewiseRefrigerant rimewise_r21;

// R22: a pure fluid, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r22;

// R23: a pure fluid, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r23;

// R32: a pure fluid, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r32;

// R40: a pure fluid, safety class B2.
extern const struct RimewiseRefrigerant rimewise_r40;

// R41: a pure fluid, safety class not known.
extern const struct RimewiseRefrigerant rimewise_r41;

// R50: a pure fluid, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r50;

// R113: a pure fluid, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r113;

// R114: a pure fluid, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r114;

// R115: a pure fluid, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r115;

// R116: a pure fluid, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r116;

// R123: a pure fluid, safety class B1.
extern const struct RimewiseRefrigerant rimewise_r123;

// R124: a pure fluid, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r124;

// R125: a pure fluid, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r125;

// R134a: a pure fluid, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r134a;

// R141b: a pure fluid, safety class not known.
extern const struct RimewiseRefrigerant rimewise_r141b;

// R142b: a pure fluid, safety class A2.
extern const struct RimewiseRefrigerant rimewise_r142b;

// R143a: a pure fluid, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r143a;

// RE143a: a pure fluid, safety class not known.
extern const struct RimewiseRefrigerant rimewise_re143a;

// R152a: a pure fluid, safety class A2.
extern const struct RimewiseRefrigerant rimewise_r152a;

// R161: a pure fluid, safety class not known.
extern const struct RimewiseRefrigerant rimewise_r161;

// R170: a pure fluid, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r170;

// RE170: a pure fluid, safety class A3.
extern const struct RimewiseRefrigerant rimewise_re170;

// R218: a pure fluid, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r218;

// R227ea: a pure fluid, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r227ea;

// R236ea: a pure fluid, safety class not known.
extern const struct RimewiseRefrigerant rimewise_r236ea;

// R236fa: a pure fluid, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r236fa;

// R245ca: a pure fluid, safety class not known.
extern const struct RimewiseRefrigerant rimewise_r245ca;

// R245fa: a pure fluid, safety class B1.
extern const struct RimewiseRefrigerant rimewise_r245fa;

// RC270: a pure fluid, safety class not known.
extern const struct RimewiseRefrigerant rimewise_rc270;

// R290: a pure fluid, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r290;

// RC318: a pure fluid, safety class A1.
extern const struct RimewiseRefrigerant rimewise_rc318;

// R365mfc: a pure fluid, safety class not known.
extern const struct RimewiseRefrigerant rimewise_r365mfc;

// R400(50/50): a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r400_50_50;

// R400(60/40): a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r400_60_40;

// R401A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r401a;

// R401B: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r401b;

// R401C: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r401c;

// R402A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r402a;

// R402B: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r402b;

// R403A: a blend, safety class A2.
extern const struct RimewiseRefrigerant rimewise_r403a;

// R403B: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r403b;

// R404A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r404a;

// R405A: a blend, safety class not known.
extern const struct RimewiseRefrigerant rimewise_r405a;

// R406A: a blend, safety class A2.
extern const struct RimewiseRefrigerant rimewise_r406a;

// R407A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r407a;

// R407B: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r407b;

// R407C: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r407c;

// R407D: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r407d;

// R407E: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r407e;

// R407F: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r407f;

// R407G: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r407g;

// R407H: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r407h;

// R407I: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r407i;

// R408A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r408a;

// R409A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r409a;

// R409B: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r409b;

// R410A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r410a;

// R410B: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r410b;

// R411A: a blend, safety class A2.
extern const struct RimewiseRefrigerant rimewise_r411a;

// R411B: a blend, safety class A2.
extern const struct RimewiseRefrigerant rimewise_r411b;

// R412A: a blend, safety class A2.
extern const struct RimewiseRefrigerant rimewise_r412a;

// R413A: a blend, safety class A2.
extern const struct RimewiseRefrigerant rimewise_r413a;

// R414A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r414a;

// R414B: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r414b;

// R415A: a blend, safety class A2.
extern const struct RimewiseRefrigerant rimewise_r415a;

// R415B: a blend, safety class A2.
extern const struct RimewiseRefrigerant rimewise_r415b;

// R416A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r416a;

// R417A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r417a;

// R417B: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r417b;

// R417C: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r417c;

// R418A: a blend, safety class A2.
extern const struct RimewiseRefrigerant rimewise_r418a;

// R419A: a blend, safety class A2.
extern const struct RimewiseRefrigerant rimewise_r419a;

// R419B: a blend, safety class A2.
extern const struct RimewiseRefrigerant rimewise_r419b;

// R420A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r420a;

// R421A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r421a;

// R421B: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r421b;

// R422A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r422a;

// R422B: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r422b;

// R422C: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r422c;

// R422D: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r422d;

// R422E: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r422e;

// R423A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r423a;

// R424A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r424a;

// R425A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r425a;

// R426A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r426a;

// R427A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r427a;

// R427C: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r427c;

// R428A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r428a;

// R429A: a blend, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r429a;

// R430A: a blend, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r430a;

// R431A: a blend, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r431a;

// R432A: a blend, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r432a;

// R433A: a blend, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r433a;

// R433B: a blend, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r433b;

// R433C: a blend, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r433c;

// R434A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r434a;

// R435A: a blend, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r435a;

// R436A: a blend, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r436a;

// R436B: a blend, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r436b;

// R436C: a blend, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r436c;

// R437A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r437a;

// R438A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r438a;

// R439A: a blend, safety class A2.
extern const struct RimewiseRefrigerant rimewise_r439a;

// R440A: a blend, safety class A2.
extern const struct RimewiseRefrigerant rimewise_r440a;

// R441A: a blend, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r441a;

// R442A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r442a;

// R443A: a blend, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r443a;

// R444A: a blend, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r444a;

// R444B: a blend, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r444b;

// R445A: a blend, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r445a;

// R446A: a blend, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r446a;

// R447A: a blend, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r447a;

// R447B: a blend, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r447b;

// R448A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r448a;

// R448B: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r448b;

// R449A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r449a;

// R449B: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r449b;

// R449C: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r449c;

// R450A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r450a;

// R451A: a blend, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r451a;

// R451B: a blend, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r451b;

// R452A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r452a;

// R452B: a blend, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r452b;

// R452C: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r452c;

// R453A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r453a;

// R454A: a blend, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r454a;

// R454B: a blend, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r454b;

// R454C: a blend, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r454c;

// R455A: a blend, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r455a;

// R456A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r456a;

// R457A: a blend, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r457a;

// R457B: a blend, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r457b;

// R457C: a blend, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r457c;

// R458A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r458a;

// R459A: a blend, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r459a;

// R459B: a blend, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r459b;

// R460A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r460a;

// R460B: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r460b;

// R460C: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r460c;

// R461A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r461a;

// R462A: a blend, safety class A2.
extern const struct RimewiseRefrigerant rimewise_r462a;

// R463A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r463a;

// R464A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r464a;

// R465A: a blend, safety class A2.
extern const struct RimewiseRefrigerant rimewise_r465a;

// R466A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r466a;

// R467A: a blend, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r467a;

// R469A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r469a;

// R470A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r470a;

// R470B: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r470b;

// R471A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r471a;

// R472A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r472a;

// R472B: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r472b;

// R474A: a blend, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r474a;

// R475A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r475a;

// R476A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r476a;

// R477A: a blend, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r477a;

// R480A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r480a;

// R500: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r500;

// R501: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r501;

// R502: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r502;

// R503: a blend, safety class not known.
extern const struct RimewiseRefrigerant rimewise_r503;

// R504: a blend, safety class not known.
extern const struct RimewiseRefrigerant rimewise_r504;

// R507A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r507a;

// R508A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r508a;

// R508B: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r508b;

// R509A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r509a;

// R510A: a blend, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r510a;

// R511A: a blend, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r511a;

// R512A: a blend, safety class A2.
extern const struct RimewiseRefrigerant rimewise_r512a;

// R513A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r513a;

// R513B: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r513b;

// R514A: a blend, safety class B1.
extern const struct RimewiseRefrigerant rimewise_r514a;

// R515A: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r515a;

// R515B: a blend, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r515b;

// R516A: a blend, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r516a;

// R600: a pure fluid, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r600;

// R600a: a pure fluid, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r600a;

// R601: a pure fluid, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r601;

// R601a: a pure fluid, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r601a;

// R601b: a pure fluid, safety class not known.
extern const struct RimewiseRefrigerant rimewise_r601b;

// R610: a pure fluid, safety class not known.
extern const struct RimewiseRefrigerant rimewise_r610;

// R717: a pure fluid, safety class B2L.
extern const struct RimewiseRefrigerant rimewise_r717;

// R718: a pure fluid, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r718;

// R744: a pure fluid, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r744;

// R744A: a pure fluid, safety class not known.
extern const struct RimewiseRefrigerant rimewise_r744a;

// R764: a pure fluid, safety class B1.
extern const struct RimewiseRefrigerant rimewise_r764;

// R1123: a pure fluid, safety class not known.
extern const struct RimewiseRefrigerant rimewise_r1123;

// R1130(E): a pure fluid, safety class B1.
extern const struct RimewiseRefrigerant rimewise_r1130_e;

// R1132(E): a pure fluid, safety class not known.
extern const struct RimewiseRefrigerant rimewise_r1132_e;

// R1140: a pure fluid, safety class B2.
extern const struct RimewiseRefrigerant rimewise_r1140;

// R1150: a pure fluid, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r1150;

// R1224yd(Z): a pure fluid, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r1224yd_z;

// R1233zd(E): a pure fluid, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r1233zd_e;

// R1234yf: a pure fluid, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r1234yf;

// R1234ze(E): a pure fluid, safety class A2L.
extern const struct RimewiseRefrigerant rimewise_r1234ze_e;

// R1234ze(Z): a pure fluid, safety class not known.
extern const struct RimewiseRefrigerant rimewise_r1234ze_z;

// R1243zf: a pure fluid, safety class not known.
extern const struct RimewiseRefrigerant rimewise_r1243zf;

// R1270: a pure fluid, safety class A3.
extern const struct RimewiseRefrigerant rimewise_r1270;

// R1336mzz(E): a pure fluid, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r1336mzz_e;

// R1336mzz(Z): a pure fluid, safety class A1.
extern const struct RimewiseRefrigerant rimewise_r1336mzz_z;

// R7146: a pure fluid, safety class not known.
extern const struct RimewiseRefrigerant rimewise_r7146;

// The names of RimewiseMetering in the contract.
extern const struct RimewiseTexts rimewise_metering_names;

// The names of RimewiseDuty in the contract.
extern const struct RimewiseTexts rimewise_duty_names;

// The names of RimewiseCompressorKind in the contract.
extern const struct RimewiseTexts rimewise_compressor_kind_names;

// The names of RimewiseDrive in the contract.
extern const struct RimewiseTexts rimewise_drive_names;

// The names of RimewiseStartGear in the contract.
extern const struct RimewiseTexts rimewise_start_gear_names;

// The names of RimewisePumpDownValve in the contract.
extern const struct RimewiseTexts rimewise_pump_down_valve_names;

// The names of RimewisePumpDownEnd in the contract.
extern const struct RimewiseTexts rimewise_pump_down_end_names;

// The names of RimewiseStartNoise in the contract.
extern const struct RimewiseTexts rimewise_start_noise_names;

// The names of RimewiseSightGlass in the contract.
extern const struct RimewiseTexts rimewise_sight_glass_names;

// The names of RimewiseFan in the contract.
extern const struct RimewiseTexts rimewise_fan_names;

// The names of RimewiseCondenserFace in the contract.
extern const struct RimewiseTexts rimewise_condenser_face_names;

// The names of RimewiseFrostLine in the contract.
extern const struct RimewiseTexts rimewise_frost_line_names;

// The names of RimewiseStartSound in the contract.
extern const struct RimewiseTexts rimewise_start_sound_names;

// The names of RimewiseComplaint in the contract.
extern const struct RimewiseTexts rimewise_complaint_names;

// The names of RimewiseHistory in the contract.
extern const struct RimewiseTexts rimewise_history_names;

// The names of RimewiseTool in the contract.
extern const struct RimewiseTexts rimewise_tool_names;

// The names of RimewiseAction in the contract.
extern const struct RimewiseTexts rimewise_action_names;

// The names of RimewiseMeasurement in the contract.
extern const struct RimewiseTexts rimewise_measurement_names;

// The names of RimewiseEffort in the contract.
extern const struct RimewiseTexts rimewise_effort_names;

// What a RimewiseEffort says, in English.
extern const struct RimewiseTexts rimewise_effort_en;

// What a RimewiseEffort says, in Spanish.
extern const struct RimewiseTexts rimewise_effort_es;

// The names of RimewiseCause in the contract.
extern const struct RimewiseTexts rimewise_cause_names;

// What a RimewiseCause says, in English.
extern const struct RimewiseTexts rimewise_cause_en;

// What a RimewiseCause says, in Spanish.
extern const struct RimewiseTexts rimewise_cause_es;

// The names of RimewiseWarningKind in the contract.
extern const struct RimewiseTexts rimewise_warning_kind_names;

// What a RimewiseWarningKind says, in English.
extern const struct RimewiseTexts rimewise_warning_kind_en;

// What a RimewiseWarningKind says, in Spanish.
extern const struct RimewiseTexts rimewise_warning_kind_es;

// The names of RimewiseErrorCode in the contract.
extern const struct RimewiseTexts rimewise_error_code_names;

// What a RimewiseErrorCode says, in English.
extern const struct RimewiseTexts rimewise_error_code_en;

// What a RimewiseErrorCode says, in Spanish.
extern const struct RimewiseTexts rimewise_error_code_es;

// The names of RimewiseFindingKind in the contract.
extern const struct RimewiseTexts rimewise_finding_kind_names;

// What a RimewiseFindingKind says, in English.
extern const struct RimewiseTexts rimewise_finding_kind_en;

// What a RimewiseFindingKind says, in Spanish.
extern const struct RimewiseTexts rimewise_finding_kind_es;

// The names of RimewiseCautionCode in the contract.
extern const struct RimewiseTexts rimewise_caution_code_names;

// What a RimewiseCautionCode says, in English.
extern const struct RimewiseTexts rimewise_caution_code_en;

// What a RimewiseCautionCode says, in Spanish.
extern const struct RimewiseTexts rimewise_caution_code_es;

// The names of RimewiseStep in the contract.
extern const struct RimewiseTexts rimewise_step_names;

// What a RimewiseStep says, in English.
extern const struct RimewiseTexts rimewise_step_en;

// What a RimewiseStep says, in Spanish.
extern const struct RimewiseTexts rimewise_step_es;

// The names of RimewiseUnit in the contract.
extern const struct RimewiseTexts rimewise_unit_names;

// What a RimewiseUnit says, in English.
extern const struct RimewiseTexts rimewise_unit_en;

// What a RimewiseUnit says, in Spanish.
extern const struct RimewiseTexts rimewise_unit_es;

// The names of RimewiseLanguage in the contract.
extern const struct RimewiseTexts rimewise_language_names;

// The names of RimewiseWinding in the contract.
extern const struct RimewiseTexts rimewise_winding_names;

// The names of RimewiseAlarmCode in the contract.
extern const struct RimewiseTexts rimewise_alarm_code_names;

// What a RimewiseAlarmCode says, in English.
extern const struct RimewiseTexts rimewise_alarm_code_en;

// What a RimewiseAlarmCode says, in Spanish.
extern const struct RimewiseTexts rimewise_alarm_code_es;

// The names of RimewiseLevel in the contract.
extern const struct RimewiseTexts rimewise_level_names;

// The names of RimewiseFamily in the contract.
extern const struct RimewiseTexts rimewise_family_names;

// The names of RimewiseJob in the contract.
extern const struct RimewiseTexts rimewise_job_names;

// The names of RimewiseCompressorState in the contract.
extern const struct RimewiseTexts rimewise_compressor_state_names;

// The names of RimewiseStepKind in the contract.
extern const struct RimewiseTexts rimewise_step_kind_names;

// The names of RimewisePlanContext in the contract.
extern const struct RimewiseTexts rimewise_plan_context_names;

// The names of RimewiseChange in the contract.
extern const struct RimewiseTexts rimewise_change_names;

// The names of RimewiseMonitorEventKind in the contract.
extern const struct RimewiseTexts rimewise_monitor_event_kind_names;

// The names of RimewiseMonitorState in the contract.
extern const struct RimewiseTexts rimewise_monitor_state_names;

// The names of RimewiseMonitorSampleProblem in the contract.
extern const struct RimewiseTexts rimewise_monitor_sample_problem_names;

// The names of RimewiseCompressorScale in the contract.
extern const struct RimewiseTexts rimewise_compressor_scale_names;

// What to do about a RimewiseMeasurement, in English; not every one has a sentence.
extern const struct RimewiseTexts rimewise_measure_en;

// What to do about a RimewiseMeasurement, in Spanish; not every one has a sentence.
extern const struct RimewiseTexts rimewise_measure_es;

// What to do about a RimewiseAction, in English; not every one has a sentence.
extern const struct RimewiseTexts rimewise_act_en;

// What to do about a RimewiseAction, in Spanish; not every one has a sentence.
extern const struct RimewiseTexts rimewise_act_es;

// What to do about a RimewisePlanContext, in English; not every one has a sentence.
extern const struct RimewiseTexts rimewise_ask_en;

// What to do about a RimewisePlanContext, in Spanish; not every one has a sentence.
extern const struct RimewiseTexts rimewise_ask_es;

// What to do about a RimewiseCause, in English; not every one has a sentence.
extern const struct RimewiseTexts rimewise_remedy_en;

// What to do about a RimewiseCause, in Spanish; not every one has a sentence.
extern const struct RimewiseTexts rimewise_remedy_es;

// What to do about a RimewiseFindingKind, in English; not every one has a sentence.
extern const struct RimewiseTexts rimewise_mend_en;

// What to do about a RimewiseFindingKind, in Spanish; not every one has a sentence.
extern const struct RimewiseTexts rimewise_mend_es;

// What a RimewiseStatus says, in English.
extern const struct RimewiseTexts rimewise_status_en;

// What a RimewiseStatus says, in Spanish.
extern const struct RimewiseTexts rimewise_status_es;

// Judges a standing pressure at the one temperature of a stopped, equalised machine.
//
// `pressure_kpa` absolute and `temperature_c` with their standard uncertainties. Errors: TEMPERATURE_OUTSIDE_TABLE,
// TRANSCRITICAL, NOT_FINITE, OUT_OF_RANGE.
RimewiseStatus rimewise_standing_pressure(const struct RimewiseRefrigerant *refrigerant,
                                          float pressure_kpa,
                                          float pressure_u_kpa,
                                          float temperature_c,
                                          float temperature_u_k,
                                          struct RimewiseStanding *standing);

// Computes what a charging hose holds at its pressure and temperature.
//
// `pressure_kpa` absolute. Writes `mass_kg` and `phase`, a RimewisePhase. Errors: OUT_OF_RANGE (length or diameter not
// positive), TWO_PHASE (the fill cannot be told), PRESSURE_OUTSIDE_TABLE, TEMPERATURE_OUTSIDE_TABLE, TRANSCRITICAL,
// NOT_FINITE.
RimewiseStatus rimewise_hose_contents(const struct RimewiseRefrigerant *refrigerant,
                                      float length_m,
                                      float inner_diameter_mm,
                                      float pressure_kpa,
                                      float temperature_c,
                                      float *mass_kg,
                                      int32_t *phase);

// Plans a weigh-in: what to let out of the cylinder so that the machine ends at its nameplate charge.
//
// `residual_kg` is what is still in the machine, `left_in_hoses_kg` what the hoses hold at the end, each with its
// standard uncertainty; `scale_u_kg` is the scale's. Errors: OUT_OF_RANGE where an input is not finite or negative, or
// the nameplate charge not positive.
RimewiseStatus rimewise_weigh_in(float nameplate_kg,
                                 float residual_kg,
                                 float residual_u_kg,
                                 float left_in_hoses_kg,
                                 float left_in_hoses_u_kg,
                                 float scale_u_kg,
                                 struct RimewiseWeighIn *plan);

// Estimates the charge's deviation from the rated charge by superheat and subcooling.
//
// `receiver`, `accumulator` and `valve` (one that holds the superheat) are 1 or 0. Errors: UNKNOWN_CODE,
// OUT_OF_RANGE where an input is not finite or the rated subcooling not positive.
RimewiseStatus rimewise_charge_estimate(const struct RimewiseChargeState *measured,
                                        const struct RimewiseChargeState *rated,
                                        int32_t receiver,
                                        int32_t accumulator,
                                        int32_t valve,
                                        struct RimewiseCharge *charge);

// Tells how to handle a refrigerant when it is charged or has leaked.
RimewiseStatus rimewise_handling(const struct RimewiseRefrigerant *refrigerant,
                                 struct RimewiseHandling *handling);

// Reads a rating map at evaporating and condensing dew temperature, degC.
//
// Writes the value in the map's unit. Errors: UNKNOWN_CODE (scale), NOT_FINITE, OUT_OF_RANGE: outside the envelope, no
// envelope, or no positive value.
RimewiseStatus rimewise_compressor_rate(const struct RimewiseRatingMap *map,
                                        float evaporating_c,
                                        float condensing_c,
                                        struct RimewiseEstimate *value);

// Estimates the lowest suction pressure that a compressor in good order pulls against a closed valve, kPa absolute.
//
// `discharge_kpa` at the end of the test, `running_suction_kpa` and `running_discharge_kpa` of the machine running in
// good order, `gauge_u_kpa` the gauge's standard uncertainty. Errors: OUT_OF_RANGE where an input is not finite and
// positive, or the suction not below the discharge.
RimewiseStatus rimewise_pump_down_expected(float discharge_kpa,
                                           float running_suction_kpa,
                                           float running_discharge_kpa,
                                           float gauge_u_kpa,
                                           struct RimewiseEstimate *lowest_kpa);

// Judges a pump-down.
//
// `lowest_kpa` the lowest suction pressure, absolute; `rise_kpa_per_min` NaN where it was not watched; `valve` a
// RimewisePumpDownValve and `ended_by` a RimewisePumpDownEnd or RIMEWISE_NOT_KNOWN; the rest as in
// rimewise_pump_down_expected. Writes a RimewisePumpDownVerdict. Errors: UNKNOWN_CODE, OUT_OF_RANGE.
RimewiseStatus rimewise_pump_down_judge(float lowest_kpa,
                                        float rise_kpa_per_min,
                                        int32_t valve,
                                        int32_t ended_by,
                                        float discharge_kpa,
                                        float running_suction_kpa,
                                        float running_discharge_kpa,
                                        float gauge_u_kpa,
                                        int32_t *verdict);

// Computes the locked-rotor current at the voltage the motor gets, A.
//
// It is stated at rated voltage and follows the voltage. Errors: OUT_OF_RANGE where an input is not finite and
// positive.
RimewiseStatus rimewise_locked_rotor_at(float locked_rotor_a,
                                        float rated_v,
                                        float voltage_v,
                                        struct RimewiseEstimate *current_a);

// Judges a start.
//
// `inrush_a` the highest current, `locked_rotor_a` at the voltage it had (see rimewise_locked_rotor_at),
// `seconds_to_drop` until the current fell below half of it, `settled_a` the current after that. Writes a
// RimewiseStartVerdict. Errors: OUT_OF_RANGE where an input is not finite, or negative.
RimewiseStatus rimewise_start_judge(float inrush_a,
                                    float locked_rotor_a,
                                    float seconds_to_drop,
                                    float settled_a,
                                    int32_t *verdict);

// Computes the quantities of the cycle that the readings give, with their standard uncertainties.
//
// `refrigerant` NULL: not known, so only what needs no saturation. `system`, `uncertainty` NULL: nothing known, usual
// instruments. `invalid` NULL: the field at fault is not wanted. Errors: INVALID_INPUT, UNKNOWN_CODE (both write
// `invalid`), WRONG_SIZE.
RimewiseStatus rimewise_cycle(const struct RimewiseRefrigerant *refrigerant,
                              const struct RimewiseSystem *system,
                              const struct RimewiseReadings *readings,
                              const struct RimewiseUncertainty *uncertainty,
                              struct RimewiseCycle *cycle,
                              struct RimewiseInvalid *invalid);

// Weighs every way to go on by its expected cost.
//
// `probabilities` are `count` numbers by the number of their RimewiseCause, such as those of a report; they are scaled
// to sum to one, and those of causes past the end are 0. `test_settles` is the chance, 0 to 1, that the next test
// settles the cause. A cost that is not known stands in its usual ratio to those that are; nothing is recommended where
// none is. Errors: WRONG_SIZE, OUT_OF_RANGE where `count` is above the library's causes.
RimewiseStatus rimewise_decide(const float *probabilities,
                               uint32_t count,
                               const struct RimewiseCosts *costs,
                               float test_settles,
                               struct RimewiseDecision *decision);

// Diagnoses one visit.
//
// `refrigerant` NULL: not known, so pressures are not interpreted. `system`, `observations`, `uncertainty` NULL:
// nothing known, nothing observed, usual instruments. `readings` must be there. `report->size` must be set before the
// call. `invalid` NULL: the field at fault is not wanted; else `invalid->size` must be set.
// Errors: INVALID_INPUT and UNKNOWN_CODE (both write `invalid`), WRONG_SIZE, OUT_OF_RANGE where `workspace` is not
// aligned for 64-bit integers.
RimewiseStatus rimewise_diagnose(const struct RimewiseRefrigerant *refrigerant,
                                 const struct RimewiseSystem *system,
                                 const struct RimewiseReadings *readings,
                                 const struct RimewiseObservations *observations,
                                 const struct RimewiseUncertainty *uncertainty,
                                 struct RimewiseWorkspace *workspace,
                                 struct RimewiseReport *report,
                                 struct RimewiseInvalid *invalid);

// Diagnoses one visit with everything that can be told of it, a record of the machine included.
//
// As rimewise_diagnose. What is known is used in the order record, target pressures, temperature differences, what is
// usual. `visit->size` must be set before the call. Errors: as rimewise_diagnose, OUT_OF_RANGE also where a count is
// above its limit.
RimewiseStatus rimewise_diagnose_visit(const struct RimewiseRefrigerant *refrigerant,
                                       const struct RimewiseVisit *visit,
                                       struct RimewiseWorkspace *workspace,
                                       struct RimewiseReport *report,
                                       struct RimewiseInvalid *invalid);

// Gives the section and the name of a field of the visit: "readings" and "suction_pressure_kpa".
//
// `field` is the number in RimewiseInvalid or RimewiseWarning. A reading has the number of its RimewiseMeasurement,
// and so has an observation; the fields of the system have numbers from 300, those of the uncertainty from 360,
// the settings of a monitor from 380. A warning may also name a cause: 400 and the number of the RimewiseCause, in the
// section "causes". A field that stands at the top of the visit has an empty section.
// Errors: UNKNOWN_CODE.
RimewiseStatus rimewise_field_text(int32_t field,
                                   const char **section,
                                   const char **name);

// Makes a system of which nothing is known.
//
// `size` is sizeof(*system), which is also stored in the struct. Errors: WRONG_SIZE.
RimewiseStatus rimewise_system_clear(struct RimewiseSystem *system, uint32_t size);

// Makes readings of which nothing was measured.
//
// `size` is sizeof(*readings), which is also stored in the struct. Errors: WRONG_SIZE.
RimewiseStatus rimewise_readings_clear(struct RimewiseReadings *readings, uint32_t size);

// Makes observations of which nothing was looked at.
//
// `size` is sizeof(*observations), which is also stored in the struct. Errors: WRONG_SIZE.
RimewiseStatus rimewise_observations_clear(struct RimewiseObservations *observations, uint32_t size);

// Makes uncertainties that take the usual values.
//
// `size` is sizeof(*uncertainty), which is also stored in the struct. Errors: WRONG_SIZE.
RimewiseStatus rimewise_uncertainty_clear(struct RimewiseUncertainty *uncertainty, uint32_t size);

// Makes an access of which nothing is known.
//
// `size` is sizeof(*access), which is also stored in the struct. Errors: WRONG_SIZE.
RimewiseStatus rimewise_access_clear(struct RimewiseAccess *access, uint32_t size);

// Makes a call of which nothing is known.
//
// `size` is sizeof(*call), which is also stored in the struct. Errors: WRONG_SIZE.
RimewiseStatus rimewise_call_clear(struct RimewiseCall *call, uint32_t size);

// Makes costs of which none is known.
//
// `size` is sizeof(*costs), which is also stored in the struct. Errors: WRONG_SIZE.
RimewiseStatus rimewise_costs_clear(struct RimewiseCosts *costs, uint32_t size);

// Makes settings of which nothing is known.
//
// `size` is sizeof(*settings), which is also stored in the struct. Errors: WRONG_SIZE.
RimewiseStatus rimewise_monitor_settings_clear(struct RimewiseMonitorSettings *settings, uint32_t size);

// Makes a sample of which nothing was measured.
//
// `size` is sizeof(*sample), which is also stored in the struct. Errors: WRONG_SIZE.
RimewiseStatus rimewise_sample_clear(struct RimewiseSample *sample, uint32_t size);

// Starts a monitor that has seen nothing yet.
//
// `settings` NULL: nothing known. `invalid` NULL: the field at fault is not wanted. Errors: INVALID_INPUT and
// UNKNOWN_CODE (both write `invalid`), WRONG_SIZE, OUT_OF_RANGE where `monitor` is not aligned for 64-bit numbers.
RimewiseStatus rimewise_monitor_start(struct RimewiseMonitor *monitor,
                                      const struct RimewiseMonitorSettings *settings,
                                      struct RimewiseInvalid *invalid);

// Takes one sample and tells what happened.
//
// `refrigerant` gives superheat, without which liquid on start cannot be told; NULL: not known. `time_ms` is the time
// of the sample on any clock that does not run backwards. `events->size` must be set before the call. A sample that
// cannot be used is no error: `events->problem` says so. Errors: WRONG_SIZE.
RimewiseStatus rimewise_monitor_push(struct RimewiseMonitor *monitor,
                                     const struct RimewiseRefrigerant *refrigerant,
                                     uint64_t time_ms,
                                     const struct RimewiseSample *sample,
                                     struct RimewiseMonitorEvents *events);

// Tells what the machine does, after the last sample.
//
// Writes a RimewiseMonitorState.
RimewiseStatus rimewise_monitor_state(const struct RimewiseMonitor *monitor, int32_t *state);

// Tells how long ago the compressor started or stopped, ms.
//
// Errors: NOT_YET where that was not seen.
RimewiseStatus rimewise_monitor_since(const struct RimewiseMonitor *monitor, uint32_t *since_ms);

// Gives the averaged readings while the machine is steady or pulls down smoothly, for rimewise_diagnose.
//
// With them go the results of the tests seen in the stream: pump-down, standing pressure, highest current of the
// start. `of_one` is the uncertainty of one reading (NULL: usual instruments); `uncertainty` takes that of the
// averages. `readings->size` and `uncertainty->size` must be set before the call. Errors: NOT_YET in every other state
// and until one minute was averaged, WRONG_SIZE.
RimewiseStatus rimewise_monitor_readings(const struct RimewiseMonitor *monitor,
                                         const struct RimewiseUncertainty *of_one,
                                         struct RimewiseReadings *readings,
                                         struct RimewiseUncertainty *uncertainty);

// Gives what tests in the stream have found so far: pump-down, standing pressure, highest current of the start.
//
// In every state, also when rimewise_monitor_readings has none; everything else in `readings` is not measured.
// `readings->size` must be set before the call. Errors: WRONG_SIZE.
RimewiseStatus rimewise_monitor_found(const struct RimewiseMonitor *monitor,
                                      struct RimewiseReadings *readings);

// Lists what the motor and supply readings show, without a refrigerant or a diagnosis.
//
// The plate stands for the current that today's pressures ask for; rimewise_diagnose knows better. `system` and
// `uncertainty` NULL: nothing known, usual instruments. `findings` has room for RIMEWISE_ELECTRICAL_MAX entries, of
// which `count` are written. `invalid` NULL: the field at fault is not wanted. Errors: INVALID_INPUT, UNKNOWN_CODE
// (both write `invalid`), WRONG_SIZE.
RimewiseStatus rimewise_motor_examine(const struct RimewiseSystem *system,
                                      const struct RimewiseReadings *readings,
                                      const struct RimewiseUncertainty *uncertainty,
                                      struct RimewiseFinding *findings,
                                      uint32_t *count,
                                      struct RimewiseInvalid *invalid);

// Computes the unbalance of three values, percent: the largest distance from their mean over the mean.
//
// Errors: OUT_OF_RANGE where a value is not finite or negative, or the mean is zero.
RimewiseStatus rimewise_unbalance(float a, float b, float c, float *percent);

// Computes the fraction of its rating that a three-phase motor may carry at a voltage unbalance, percent.
//
// Errors: OUT_OF_RANGE where the unbalance is not finite, negative, or too large for any load.
RimewiseStatus rimewise_derating(float unbalance_percent, float *fraction);

// Computes a running capacitor's capacitance, microfarad, from its current and voltage.
//
// Each with its standard uncertainty (0 for none), at the supply frequency `hz`. Errors: OUT_OF_RANGE.
RimewiseStatus rimewise_capacitance(float current_a,
                                    float current_u_a,
                                    float voltage_v,
                                    float voltage_u_v,
                                    float hz,
                                    struct RimewiseEstimate *capacitance_uf);

// Refers a winding's resistance from its temperature to another.
//
// `resistance_ohm` and `from_c` with their standard uncertainties; `constant_c` is the metal's: 234.5 degC for copper,
// 225 degC for aluminium (IEC 60034-1). Errors: OUT_OF_RANGE.
RimewiseStatus rimewise_winding_referred(float resistance_ohm,
                                         float resistance_u_ohm,
                                         float from_c,
                                         float from_u_k,
                                         float to_c,
                                         float constant_c,
                                         struct RimewiseEstimate *referred_ohm);

// Refers an insulation resistance from the winding's temperature to 40 degC, megohm.
//
// Errors: OUT_OF_RANGE where an input is not finite or the resistance negative.
RimewiseStatus rimewise_insulation_at_40c(float resistance_megohm, float winding_c, float *referred_megohm);

// Tells common, start and run from the resistances between three unmarked terminals, ohm.
//
// INFINITY is an open reading. A usual hand meter with nulled leads is taken. Motors whose windings differ by less
// than the meter can tell are ambiguous, never guessed. Errors: OUT_OF_RANGE where a reading is NaN or negative.
RimewiseStatus rimewise_identify_terminals(float terminal_12_ohm,
                                           float terminal_23_ohm,
                                           float terminal_13_ohm,
                                           struct RimewiseTerminals *terminals);

// Finds the dew temperature at a pressure: where the last liquid has evaporated.
//
// `pressure_kpa` absolute. Writes `temperature_c`. Superheat is a pipe temperature minus this. Errors:
// PRESSURE_OUTSIDE_TABLE, TRANSCRITICAL, NOT_FINITE.
RimewiseStatus rimewise_dew_temperature(const struct RimewiseRefrigerant *refrigerant,
                                        float pressure_kpa,
                                        float *temperature_c);

// Finds the bubble temperature at a pressure: where the first bubble forms.
//
// `pressure_kpa` absolute. Writes `temperature_c`. Subcooling is this minus a pipe temperature. Errors:
// PRESSURE_OUTSIDE_TABLE, TRANSCRITICAL, NOT_FINITE.
RimewiseStatus rimewise_bubble_temperature(const struct RimewiseRefrigerant *refrigerant,
                                           float pressure_kpa,
                                           float *temperature_c);

// Finds the dew pressure at a temperature.
//
// Writes `pressure_kpa`, absolute. Errors: TEMPERATURE_OUTSIDE_TABLE, TRANSCRITICAL, NOT_FINITE.
RimewiseStatus rimewise_dew_pressure(const struct RimewiseRefrigerant *refrigerant,
                                     float temperature_c,
                                     float *pressure_kpa);

// Finds the bubble pressure at a temperature.
//
// Writes `pressure_kpa`, absolute. Errors: TEMPERATURE_OUTSIDE_TABLE, TRANSCRITICAL, NOT_FINITE.
RimewiseStatus rimewise_bubble_pressure(const struct RimewiseRefrigerant *refrigerant,
                                        float temperature_c,
                                        float *pressure_kpa);

// Tells the phase at a pressure and a temperature.
//
// `pressure_kpa` absolute. Writes `phase`, a RimewisePhase. Errors: PRESSURE_OUTSIDE_TABLE, TRANSCRITICAL,
// NOT_FINITE.
RimewiseStatus rimewise_phase(const struct RimewiseRefrigerant *refrigerant,
                              float pressure_kpa,
                              float temperature_c,
                              int32_t *phase);

// Finds the properties of vapor at a pressure and a temperature.
//
// `pressure_kpa` absolute. Answers from 2 K below the dew point to 160 K above it. Errors: PRESSURE_OUTSIDE_TABLE,
// TEMPERATURE_OUTSIDE_TABLE, TWO_PHASE, OTHER_PHASE, TRANSCRITICAL, NOT_FINITE.
RimewiseStatus rimewise_vapor(const struct RimewiseRefrigerant *refrigerant,
                              float pressure_kpa,
                              float temperature_c,
                              struct RimewiseState *state);

// Finds the properties of liquid at a pressure and a temperature.
//
// `pressure_kpa` absolute. Answers from 2 K above the bubble point to 60 K below it, not below the table's lowest
// temperature. Errors: as rimewise_vapor.
RimewiseStatus rimewise_liquid(const struct RimewiseRefrigerant *refrigerant,
                               float pressure_kpa,
                               float temperature_c,
                               struct RimewiseState *state);

// Finds the properties of saturated vapor at a pressure, at its dew temperature.
//
// `pressure_kpa` absolute. Errors: PRESSURE_OUTSIDE_TABLE, TRANSCRITICAL, NOT_FINITE.
RimewiseStatus rimewise_saturated_vapor(const struct RimewiseRefrigerant *refrigerant,
                                        float pressure_kpa,
                                        struct RimewiseState *state);

// Finds the properties of saturated liquid at a pressure, at its bubble temperature.
//
// `pressure_kpa` absolute. Errors: PRESSURE_OUTSIDE_TABLE, TRANSCRITICAL, NOT_FINITE.
RimewiseStatus rimewise_saturated_liquid(const struct RimewiseRefrigerant *refrigerant,
                                         float pressure_kpa,
                                         struct RimewiseState *state);

// Finds the temperature of vapor from its pressure and enthalpy.
//
// `pressure_kpa` absolute. The inverse of rimewise_vapor. Errors: PRESSURE_OUTSIDE_TABLE, TWO_PHASE (an enthalpy
// below that of vapor), TEMPERATURE_OUTSIDE_TABLE, TRANSCRITICAL, NOT_FINITE.
RimewiseStatus rimewise_vapor_temperature_at_enthalpy(const struct RimewiseRefrigerant *refrigerant,
                                                      float pressure_kpa,
                                                      float enthalpy_kj_kg,
                                                      float *temperature_c);

// Finds the temperature of vapor from its pressure and entropy.
//
// `pressure_kpa` absolute. With the discharge pressure and the entropy at the compressor's inlet this is the
// isentropic discharge temperature. Errors: as rimewise_vapor_temperature_at_enthalpy.
RimewiseStatus rimewise_vapor_temperature_at_entropy(const struct RimewiseRefrigerant *refrigerant,
                                                     float pressure_kpa,
                                                     float entropy_kj_kg_k,
                                                     float *temperature_c);

// Finds a built-in refrigerant by its designation or common name, as people write it.
//
// `designation` ends with NUL: "R404A", "R-404A", "r404a", "404A", "R290", "propane". Writes the refrigerant, which
// lives as long as the program. Links every built-in table: where the refrigerant is fixed, name its constant
// instead. Errors: UNKNOWN_DESIGNATION.
RimewiseStatus rimewise_refrigerant_find(const char *designation,
                                         const struct RimewiseRefrigerant **refrigerant);

// Gives the built-in refrigerant at a position of the list, from 0, in the order of the designations.
//
// Links every built-in table. Errors: OUT_OF_RANGE past the end, which is how a loop over all ends.
RimewiseStatus rimewise_refrigerant_at(uint32_t position, const struct RimewiseRefrigerant **refrigerant);

// Loads a refrigerant from a table that the property compiler wrote, after checking all of it.
//
// The table stays where it is (flash or RAM): `table` and `storage` must both outlive every use of the refrigerant,
// and neither may be changed meanwhile. Writes the refrigerant, whose address is that of `storage`.
// Errors: NOT_A_TABLE, TABLE_VERSION, TABLE_LENGTH, TABLE_CHECKSUM, TABLE_CONTENT.
RimewiseStatus rimewise_refrigerant_load(const uint8_t *table,
                                         uint32_t length,
                                         struct RimewiseRefrigerantStorage *storage,
                                         const struct RimewiseRefrigerant **refrigerant);

// Tells what a refrigerant is: safety class, critical point, range of its table.
//
// `info->size` must be set before the call.
RimewiseStatus rimewise_refrigerant_info(const struct RimewiseRefrigerant *refrigerant,
                                         struct RimewiseRefrigerantInfo *info);

// Writes a refrigerant's designation, such as "R404A", ended by NUL.
//
// `capacity` is the size of `buffer` in bytes; 24 hold every built-in designation. Writes `length`, without the NUL.
// Errors: SHORT_BUFFER, with nothing written but `length`.
RimewiseStatus rimewise_refrigerant_designation(const struct RimewiseRefrigerant *refrigerant,
                                                char *buffer,
                                                uint32_t capacity,
                                                uint32_t *length);

// Writes one component of a refrigerant: its designation, ended by NUL, and its mass fraction, 0 to 1.
//
// `position` counts from 0 to `component_count` - 1. `buffer`, `capacity` and `length` as in
// rimewise_refrigerant_designation. Errors: OUT_OF_RANGE, SHORT_BUFFER.
RimewiseStatus rimewise_refrigerant_component(const struct RimewiseRefrigerant *refrigerant,
                                              uint32_t position,
                                              char *buffer,
                                              uint32_t capacity,
                                              uint32_t *length,
                                              float *mass_fraction);

// Gives the text of a number of the enum that a list is of, in UTF-8; it lives as long as the program.
//
// The sentences of RimewiseErrorCode have places in braces, such as {min}, for the members of RimewiseInvalid.
// Errors: UNKNOWN_CODE.
RimewiseStatus rimewise_text(const struct RimewiseTexts *texts,
                             int32_t code,
                             const char **text);

// Finds the pressure of the standard atmosphere at an altitude.
//
// `altitude_m` in metres above sea level, held at the nearer end of -500 m to 11,000 m. Writes `pressure_kpa`,
// absolute. Errors: NOT_FINITE. Source: ICAO Doc 7488, manual of the standard atmosphere.
RimewiseStatus rimewise_atmosphere_at_altitude(float altitude_m,
                                               float *pressure_kpa);

// Converts a pressure from a unit into kPa absolute.
//
// `unit` is a RimewisePressureUnit. `atmosphere_kpa` is the local atmosphere, from
// rimewise_atmosphere_at_altitude or a barometer (station pressure), and is not used for the absolute units.
// Errors: UNKNOWN_CODE, NOT_FINITE.
RimewiseStatus rimewise_pressure_to_kpa(float value, int32_t unit, float atmosphere_kpa, float *pressure_kpa);

// Converts a pressure from kPa absolute into a unit.
//
// `unit` and `atmosphere_kpa` as in rimewise_pressure_to_kpa. A gauge value is negative under vacuum.
// Errors: UNKNOWN_CODE, NOT_FINITE.
RimewiseStatus rimewise_pressure_from_kpa(float pressure_kpa,
                                          int32_t unit,
                                          float atmosphere_kpa,
                                          float *value);

// Converts a temperature from a unit into degC.
//
// `unit` is a RimewiseTemperatureUnit. Errors: UNKNOWN_CODE, NOT_FINITE.
RimewiseStatus rimewise_temperature_to_c(float value, int32_t unit, float *temperature_c);

// Converts a temperature from degC into a unit.
//
// `unit` is a RimewiseTemperatureUnit. Errors: UNKNOWN_CODE, NOT_FINITE.
RimewiseStatus rimewise_temperature_from_c(float temperature_c, int32_t unit, float *value);

// Converts a temperature difference from K into a unit: 10 K are 18 degF of difference.
//
// `unit` is a RimewiseTemperatureUnit. Errors: UNKNOWN_CODE, NOT_FINITE.
RimewiseStatus rimewise_difference_from_k(float difference_k, int32_t unit, float *value);

// Converts a temperature difference from a unit into K.
//
// `unit` is a RimewiseTemperatureUnit. Errors: UNKNOWN_CODE, NOT_FINITE.
RimewiseStatus rimewise_difference_to_k(float value, int32_t unit, float *difference_k);

// Gives the version of the library that is linked: major * 65536 + minor * 256 + patch.
//
// A program built from this header was built for RIMEWISE_VERSION_MAJOR, _MINOR and _PATCH.
uint32_t rimewise_version(void);

#ifdef __cplusplus
}  // extern "C"
#endif  // __cplusplus

#endif  /* RIMEWISE_H */
