/** What the loaded library takes: inputs it does not know are kept on the page and never sent. */
import { diagnose, RimewiseError, type Visit } from "rimewise";
import { take } from "./tree.js";

/** One value for every input that an earlier library does not know; none of them says anything odd. */
const PROBE = {
  language: "en",
  complaint: ["not_cold"],
  complaint_hours: 24,
  history: ["coil_cleaned"],
  access: {
    suction_port: true,
    high_side_port: true,
    liquid_port: true,
    suction_service_valve: true,
    liquid_line_valve: true,
    tools: ["gauges"],
    cannot: ["sight_glass"],
  },
  costs: { visit: 100, hour: 50, compressor: 500, machine: 3000, loss_a_day: 20, horizon_days: 30 },
  system: { compressor: { kind: "reciprocating", drive: "fixed_speed", start_gear: "ptc" } },
  readings: { evaporator_inlet_c: -10, condenser_middle_c: 40, recovered_kg: 0.2, added_kg: 0.1, starts_per_hour: 3, hours_running: 12 },
  observations: {
    condenser_fan: "turns",
    evaporator_fan: "turns",
    condenser_face: "clean",
    frost_line: "whole_coil",
    oil_traces: false,
    leak_found: false,
    calls_for_cooling: true,
    door_closes: true,
    start_sound: "starts",
  },
};

const refused = new Set<string>();

/** Asks the library once, at the start. */
export function probe(): void {
  const visit = structuredClone(PROBE);
  // Each turn takes one field out, so the number of fields bounds the turns.
  for (let turn = 0; turn < 60; turn++) {
    try {
      diagnose(visit as unknown as Visit);
      return;
    } catch (error) {
      if (!(error instanceof RimewiseError)) throw error;
      const path = error.field.replace(/(\.\d+|\[\d+\]).*$/, "");
      if (path === "" || !take(visit, path)) return;
      refused.add(path);
    }
  }
}

/** Whether the library takes an input. */
export function accepts(path: string): boolean {
  for (let end = path.length; end > 0; end = path.lastIndexOf(".", end - 1)) {
    if (refused.has(path.slice(0, end))) return false;
  }
  return true;
}
