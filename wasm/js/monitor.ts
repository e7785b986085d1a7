/** The monitor: watches a machine run, sample by sample. */
import * as module from "./glue/rimewise.js";
import { answer, fields, RimewiseError, started } from "./boundary.js";
import type {
  MonitorEventKind,
  MonitorSettings,
  MonitorState,
  Readings,
  SampleNumbers,
  MonitorSampleProblem,
  Uncertainty,
} from "./types.js";

/** One sample: a time and whatever was measured at it, under the names of the readings. */
export interface Sample extends SampleNumbers {
  /** Time on any clock that does not run backwards, ms. */
  time_ms: number;
}

/** Something that happened. */
export interface MonitorEvent {
  event: MonitorEventKind;
  /** When, on the clock of the samples, ms. */
  time_ms: number;
  /** Its figures, units in their names; what could not be measured is left out. */
  values: Record<string, number>;
}

/** What one sample brought. */
export interface Pushed {
  status: "ok";
  /** What the machine does now. */
  state: MonitorState;
  /** What happened, in its order. */
  events: MonitorEvent[];
  /** The channels that could not be used. */
  unusable: (keyof SampleNumbers)[];
  /** Why the sample could not be used, whole or in part. */
  problem: MonitorSampleProblem | null;
}

/** Averaged readings, ready for a visit. */
export interface SteadyReadings {
  /** The averages, with the results of the tests seen in the stream. */
  readings: Readings;
  /** The standard uncertainty that noise alone leaves in each average. */
  noise: SampleNumbers;
  /** What to state as the visit's uncertainty: that of usual instruments and the noise that is left. */
  uncertainty: Uncertainty;
}

/** The settings and what each of them is. */
const SETTINGS: Readonly<Record<string, string>> = {
  refrigerant: "string",
  rated_load_a: "number",
  locked_rotor_a: "number",
  rated_v: "number",
  suction_pressure_regulator: "boolean",
  pump_down_valve: "string",
};

/**
 * Watches one machine run, in fixed memory and without a clock of its own.
 *
 * Samples may come at any spacing from 0.1 s to 10 s and with gaps. Call {@link free} when it is no longer needed.
 */
export class Monitor {
  #watch: module.Watch | undefined;
  readonly #fields: readonly string[];
  readonly #values: Float32Array;

  constructor(settings: MonitorSettings = {}) {
    started();
    const given = fields(settings, "settings");
    for (const [name, value] of Object.entries(given)) {
      const type = Object.hasOwn(SETTINGS, name) ? SETTINGS[name] : undefined;
      if (type === undefined) throw new RimewiseError("is not a setting known here", name);
      if (value !== null && value !== undefined && typeof value !== type) {
        throw new RimewiseError(`must be a ${type}`, name);
      }
    }
    const plate = [given.rated_load_a, given.locked_rotor_a, given.rated_v].map((value) => value ?? Number.NaN);
    try {
      this.#watch = new module.Watch(
        given.refrigerant ?? "",
        new Float32Array(plate),
        given.suction_pressure_regulator ?? false,
        given.pump_down_valve ?? "",
      );
    } catch (error) {
      answer(String(error));
      throw error;
    }
    this.#fields = module.sampleFields().split(",");
    this.#values = new Float32Array(this.#fields.length);
  }

  /** Takes one sample and tells what happened. A number no machine can show is named in `unusable`, never guessed. */
  push(sample: Sample): Pushed {
    const watch = this.#alive();
    if (typeof sample !== "object" || sample === null) throw new RimewiseError("must be an object", "sample");
    const time_ms = sample.time_ms;
    if (!Number.isSafeInteger(time_ms) || time_ms < 0) {
      throw new RimewiseError("must be a whole number of milliseconds, not negative", "time_ms");
    }
    this.#values.fill(Number.NaN);
    for (const [name, value] of Object.entries(sample)) {
      if (name === "time_ms" || value === null || value === undefined) continue;
      const at = this.#fields.indexOf(name);
      if (at < 0) throw new RimewiseError("is not a field known here", name);
      if (typeof value !== "number") throw new RimewiseError("must be a number", name);
      // NaN stands for not measured inside; given as a number it is unusable, as infinity is.
      this.#values[at] = Number.isNaN(value) ? Number.POSITIVE_INFINITY : value;
    }
    return answer<Pushed>(watch.push(time_ms, this.#values));
  }

  /** What the machine does, after the last sample. */
  get state(): MonitorState {
    return this.#alive().state() as MonitorState;
  }

  /** How long ago the compressor started or stopped, ms; null where that was not seen. */
  get sinceMs(): number | null {
    const since = this.#alive().sinceMs();
    return Number.isNaN(since) ? null : since;
  }

  /** What was found by tests in the stream: pump-down, standing pressure, highest current of the start. */
  found(): Readings {
    return answer<{ readings: Readings }>(this.#alive().found()).readings;
  }

  /** The averaged readings while the machine is steady or pulls down smoothly; null in every other state. */
  readings(): SteadyReadings | null {
    const { readings, noise, uncertainty } = answer<{ readings: Readings | null } & Omit<SteadyReadings, "readings">>(
      this.#alive().readings(),
    );
    return readings === null ? null : { readings, noise, uncertainty };
  }

  /** Gives its memory back; it can then no longer be used. */
  free(): void {
    this.#watch?.free();
    this.#watch = undefined;
  }

  #alive(): module.Watch {
    if (this.#watch === undefined) throw new RimewiseError("was given back by free()", "monitor");
    return this.#watch;
  }
}
