/**
 * Live samples. A source is the host's: a meter over Web Bluetooth, a serial port, a socket. It is added with
 * `rimewise.addSource(source)` once the page has started, or put into `window.rimewiseSources` before.
 */
import type { Sample } from "rimewise";
import { CHANNELS } from "./recording.js";
import { t } from "./text.js";

/** Where samples come from. */
export interface Source {
  /** What people read on its button. */
  name: string;
  /**
   * Begins to deliver. `push` takes one sample: `time_ms` on any clock that does not run backwards, and any of the
   * readings in their contract units (kPa absolute, degC, A, V). `failed` ends it with a reason. Gives what stops it.
   */
  start(push: (sample: Sample) => void, failed: (why: string) => void): Promise<() => void> | (() => void);
}

const sources: Source[] = [];
let told: (() => void) | undefined;

/** Adds a source to the page's list. */
export function addSource(source: Source): void {
  if (typeof source?.name !== "string" || typeof source.start !== "function") throw new TypeError("a source has a name and start()");
  sources.push(source);
  told?.();
}

/** The sources there are; `change` is called when one is added. */
export function sourcesNow(change: () => void): readonly Source[] {
  told = change;
  return sources;
}

/** What a sample must be to be taken; a source's mistakes end it with words, not with a broken page. */
export function checked(sample: Sample): Sample {
  if (typeof sample !== "object" || sample === null || !Number.isSafeInteger(sample.time_ms) || sample.time_ms < 0) {
    throw new TypeError("time_ms must be a whole number of milliseconds, not negative");
  }
  for (const [name, value] of Object.entries(sample)) {
    if (name !== "time_ms" && !(CHANNELS as readonly string[]).includes(name)) throw new TypeError(`${name} is not a reading of a sample`);
    if (value !== null && typeof value !== "number") throw new TypeError(`${name} must be a number`);
  }
  return sample;
}

/** An invented, simulated machine as a source: a recording played ten times as fast as it ran. */
export function exampleSource(url: string, read: (text: string) => Sample[]): Source {
  return {
    name: t("live_example"),
    async start(push, failed) {
      const response = await fetch(url);
      if (!response.ok) {
        failed(String(response.status));
        return () => undefined;
      }
      const samples = read(await response.text());
      let n = 0;
      const timer = setInterval(() => {
        const sample = samples[n++];
        if (sample === undefined) clearInterval(timer);
        else push(sample);
      }, 200);
      return () => clearInterval(timer);
    },
  };
}
