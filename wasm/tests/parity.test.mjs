// Whatever C offers, JavaScript offers: every function of the C header stands here with its counterpart.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, it } from "node:test";
import * as rimewise from "rimewise";
import { ROOT } from "./tools.mjs";

/** The counterpart of a C function: an export of the package, or why there is none. */
const COUNTERPART = {
  atmosphere_at_altitude: "atmosphereKpa",
  bubble_pressure: "property",
  bubble_temperature: "property",
  capacitance: "capacitanceUf",
  charge_estimate: "chargeDeviation",
  compressor_rate: "rate",
  cycle: "diagnose", // in the report
  decide: "weigh",
  derating: "derating",
  dew_pressure: "property",
  dew_temperature: "property",
  diagnose: "diagnose",
  diagnose_visit: "diagnose",
  difference_from_k: "differenceFromK",
  difference_to_k: "differenceToK",
  handling: "handling",
  hose_contents: "hoseContents",
  identify_terminals: "identifyTerminals",
  insulation_at_40c: "insulationAt40C",
  liquid: "property",
  locked_rotor_at: "lockedRotorAt",
  monitor_found: "Monitor",
  monitor_push: "Monitor",
  monitor_readings: "Monitor",
  monitor_since: "Monitor",
  monitor_start: "Monitor",
  monitor_state: "Monitor",
  motor_examine: "diagnose", // electrical, in the report
  phase: "property",
  pressure_from_kpa: "pressureFromKpa",
  pressure_to_kpa: "pressureToKpa",
  pump_down_expected: "pumpDown",
  pump_down_judge: "pumpDown",
  refrigerant_at: "refrigerants",
  refrigerant_component: "property",
  refrigerant_designation: "property",
  refrigerant_find: "property",
  refrigerant_info: "property",
  saturated_liquid: "saturation",
  saturated_vapor: "saturation",
  standing_pressure: "standingPressure",
  start_judge: "startVerdict",
  temperature_from_c: "temperatureFromC",
  temperature_to_c: "temperatureToC",
  unbalance: "unbalancePercent",
  vapor: "property",
  vapor_temperature_at_enthalpy: "vaporTemperatureAtEnthalpy",
  vapor_temperature_at_entropy: "vaporTemperatureAtEntropy",
  version: "version",
  weigh_in: "weighIn",
  winding_referred: "windingReferred",
};

/** What JavaScript has no need of: names of numbers (it has the names), and structs to clear (objects start empty). */
const NOT_NEEDED = /(^|_)(text|clear)$/;
/** What JavaScript does not offer yet: a user's own table, loaded from bytes. */
const MISSING = ["refrigerant_load"];

describe("parity with the C header", () => {
  const header = readFileSync(join(ROOT, "ffi/include/rimewise.h"), "utf8");
  const declared = [...new Set([...header.matchAll(/\brimewise_([a-z0-9_]+)\(/g)].map((match) => match[1]))];

  it("finds the functions of the header", () => {
    assert.ok(declared.length > 40, `${declared.length}`);
  });

  it("names a counterpart for every one of them", () => {
    const lost = declared.filter((name) => !NOT_NEEDED.test(name) && !(name in COUNTERPART) && !MISSING.includes(name));
    assert.deepEqual(lost, []);
  });

  it("has no counterpart of what is no longer there", () => {
    assert.deepEqual([...Object.keys(COUNTERPART), ...MISSING].filter((name) => !declared.includes(name)), []);
  });

  it("exports every counterpart", () => {
    const wanted = [...new Set(Object.values(COUNTERPART))];
    assert.deepEqual(wanted.filter((name) => typeof rimewise[name] !== "function"), []);
  });
});
