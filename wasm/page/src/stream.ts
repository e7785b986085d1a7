/** A recorded stream, played as a meter would see it: the monitor's state and events beside the curves. */
import { diagnose, Monitor, RimewiseError, type MonitorEvent, type Sample, type SampleNumbers, type SteadyReadings, type Visit } from "rimewise";
import uPlot from "uplot";
import liquidOnStart from "../../../core/examples/data/liquid_on_start.csv?url";
import lockedRotor from "../../../core/examples/data/locked_rotor.csv?url";
import pumpDown from "../../../core/examples/data/pump_down.csv?url";
import { byId, h } from "./dom.js";
import { EVENT, STATE, measurementName } from "./words.js";
import { altitudeM, figure, fromContract, show, unitName, type Scale, type Units } from "./units.js";
import { scaleOf } from "./view.js";

/** Invented machines, simulated. */
const EXAMPLES: [id: string, title: string, url: string][] = [
  ["liquid_on_start", "Liquid on start", liquidOnStart],
  ["locked_rotor", "Locked rotor", lockedRotor],
  ["pump_down", "Pump-down", pumpDown],
];

const CHANNELS: readonly (keyof SampleNumbers)[] = [
  "suction_pressure_kpa",
  "evaporator_pressure_kpa",
  "discharge_pressure_kpa",
  "liquid_pressure_kpa",
  "evaporator_outlet_c",
  "suction_line_c",
  "discharge_line_c",
  "liquid_line_c",
  "drier_outlet_c",
  "space_c",
  "supply_air_c",
  "ambient_c",
  "condenser_exhaust_c",
  "current_a",
  "voltage_v",
];

interface Recording {
  visit: Visit;
  samples: Sample[];
  names: string[];
}

/** Reads a recording. Throws an error that says which line and why. */
export function readRecording(text: string): Recording {
  let visit: Visit = {};
  let names: string[] | undefined;
  const samples: Sample[] = [];
  text.split(/\r?\n/).forEach((raw, index) => {
    const line = raw.trim();
    const wrong = (why: string) => new Error(`line ${index + 1}: ${why}`);
    if (line === "") return;
    if (line.startsWith("#")) {
      const comment = line.slice(1).trim();
      if (comment.startsWith("{")) {
        visit = JSON.parse(comment) as Visit;
        diagnose(visit);
      }
      return;
    }
    const cells = line.split(",").map((cell) => cell.trim());
    if (names === undefined) {
      if (!cells.includes("time_s")) throw wrong("there is no column time_s");
      const unknown = cells.find((name) => name !== "time_s" && !(CHANNELS as readonly string[]).includes(name));
      if (unknown !== undefined) throw wrong(`${unknown} is neither time_s nor a reading of a sample`);
      const twice = cells.find((name, n) => cells.indexOf(name) !== n);
      if (twice !== undefined) throw wrong(`${twice} is there twice`);
      names = cells;
      return;
    }
    if (cells.length !== names.length) throw wrong(`the columns are ${names.length}, the values ${cells.length}`);
    const sample: Record<string, number> = { time_ms: 0 };
    names.forEach((name, n) => {
      const cell = cells[n] as string;
      if (cell === "") return;
      const value = Number(cell);
      if (Number.isNaN(value)) throw wrong(`${name}: ${cell} is not a number`);
      if (name === "time_s") sample["time_ms"] = Math.floor(value * 1000 + 0.5);
      else sample[name] = value;
    });
    samples.push(sample as unknown as Sample);
  });
  if (names === undefined || samples.length === 0) throw new Error("it holds no samples");
  return { visit, samples, names: (names as string[]).filter((name) => name !== "time_s") };
}

/** What belongs into one plot, by the ending of its name. */
const PLOTS: [title: string, ending: string][] = [
  ["pressure", "_kpa"],
  ["temperature", "_c"],
  ["current", "_a"],
];

const DASHES = [[], [8, 4], [2, 3], [12, 3, 2, 3], [4, 4], [1, 3], [16, 4], [6, 2, 2, 2], [3, 6]];

/** A piece of a curve for the legend, dashed as the curve is. */
function line(colour: string, dash: readonly number[]): SVGElement {
  const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  const stroke = document.createElementNS("http://www.w3.org/2000/svg", "line");
  for (const [name, value] of Object.entries({ width: 36, height: 8, "aria-hidden": "true" })) svg.setAttribute(name, String(value));
  const attributes = { x1: 0, y1: 4, x2: 36, y2: 4, stroke: colour, "stroke-width": 2, "stroke-dasharray": dash.join(" ") };
  for (const [name, value] of Object.entries(attributes)) stroke.setAttribute(name, String(value));
  svg.append(stroke);
  return svg;
}

class Player {
  readonly #recording: Recording;
  readonly #units: Units;
  readonly #monitor: Monitor;
  #done = 0;
  #plots: { plot: uPlot; names: string[] }[] = [];
  #steady: SteadyReadings | null = null;
  #timer: ReturnType<typeof setInterval> | undefined;

  constructor(recording: Recording, units: Units) {
    this.#recording = recording;
    this.#units = units;
    const system = recording.visit.system ?? {};
    const plate = system.compressor ?? {};
    this.#monitor = new Monitor({
      refrigerant: system.refrigerant,
      rated_load_a: plate.rated_load_a,
      locked_rotor_a: plate.locked_rotor_a,
      rated_v: plate.rated_v,
      suction_pressure_regulator: system.suction_pressure_regulator,
    });
    byId("stream-events").replaceChildren();
    this.#draw();
    this.#show();
  }

  get playing(): boolean {
    return this.#timer !== undefined;
  }

  play(): void {
    if (this.#done === this.#recording.samples.length) return;
    const a = Math.max(1, Math.ceil(this.#recording.samples.length / 300));
    this.#timer = setInterval(() => {
      this.push(a);
      if (this.#done === this.#recording.samples.length) this.pause();
    }, 50);
    byId("stream-play").textContent = "Pause";
  }

  pause(): void {
    clearInterval(this.#timer);
    this.#timer = undefined;
    byId("stream-play").textContent = "Play";
  }

  stop(): void {
    this.pause();
    this.#monitor.free();
    for (const { plot } of this.#plots) plot.destroy();
  }

  /** Pushes so many samples, and shows what they brought. */
  push(count: number): void {
    const upTo = Math.min(this.#done + count, this.#recording.samples.length);
    for (; this.#done < upTo; this.#done++) {
      const pushed = this.#monitor.push(this.#recording.samples[this.#done] as Sample);
      for (const event of pushed.events) byId("stream-events").append(this.#item(event));
      this.#steady = this.#monitor.readings() ?? this.#steady;
    }
    this.#show();
  }

  /** A visit of the averages, with what tests in the stream have found; nothing where nothing was steady. */
  visit(): Visit | undefined {
    const found = this.#monitor.found();
    if (this.#steady === null && Object.keys(found).length === 0) return undefined;
    return {
      ...this.#recording.visit,
      readings: { ...this.#steady?.readings, ...found },
      ...(this.#steady === null ? {} : { uncertainty: this.#steady.uncertainty }),
    };
  }

  #item(event: MonitorEvent): HTMLElement {
    const values = Object.entries(event.values).map(([name, value]) => {
      const scale = scaleOf(name, this.#units);
      if (scale.of === "plain") return `${name.replaceAll("_", " ")} ${figure(value, 2)}`;
      return `${measurementName(name)} ${show(fromContract(value, scale, altitudeM(this.#units)), scale)} ${unitName(scale)}`;
    });
    return h("li", { "data-event": event.event }, `${figure(event.time_ms / 1000, 0)} s: `, h("strong", {}, EVENT[event.event] ?? event.event), ` ${values.join(", ")}`);
  }

  #scale(name: string): Scale {
    return scaleOf(name, this.#units);
  }

  #data(names: string[]): uPlot.AlignedData {
    const seen = this.#recording.samples.slice(0, Math.max(1, this.#done)) as unknown as Record<string, number>[];
    const altitude = altitudeM(this.#units);
    return [
      seen.map((sample) => (sample["time_ms"] as number) / 1000),
      ...names.map((name) => {
        const scale = this.#scale(name);
        return seen.map((sample) => {
          const value = sample[name];
          return value === undefined ? null : fromContract(value, scale, altitude);
        });
      }),
    ] as uPlot.AlignedData;
  }

  #draw(): void {
    const box = byId("stream-plots");
    box.replaceChildren();
    const style = getComputedStyle(document.documentElement);
    const read = (name: string) => style.getPropertyValue(name).trim();
    const colours = [read("--measured"), read("--healthy"), read("--ink"), read("--soft")];
    const samples = this.#recording.samples;
    const span: [number, number] = [(samples[0] as Sample).time_ms / 1000, (samples.at(-1) as Sample).time_ms / 1000];
    for (const [title, ending] of PLOTS) {
      const names = this.#recording.names.filter((name) => name.endsWith(ending));
      if (names.length === 0) continue;
      const unit = title === "current" ? "A" : unitName(this.#scale(names[0] as string));
      const axis = { stroke: read("--ink"), grid: { stroke: read("--line"), width: 0.5 }, ticks: { stroke: read("--line") } };
      const plot = new uPlot(
        {
          width: Math.max(280, box.clientWidth),
          height: title === "temperature" ? 230 : 170,
          scales: { x: { time: false, range: () => span } },
          legend: { show: false },
          cursor: { show: false },
          axes: [axis, { ...axis, label: `${title}, ${unit}`, labelSize: 20, size: 50 }],
          series: [
            { label: "s" },
            ...names.map((name, n) => ({
              label: measurementName(name),
              stroke: colours[n % colours.length] as string,
              dash: DASHES[n % DASHES.length] as number[],
              width: 2,
              points: { show: false },
            })),
          ],
        },
        this.#data(names),
        box,
      );
      box.append(
        h(
          "p",
          { class: "legend" },
          ...names.map((name, n) =>
            h("span", {}, line(colours[n % colours.length] as string, DASHES[n % DASHES.length] as number[]), ` ${measurementName(name)}`),
          ),
        ),
      );
      this.#plots.push({ plot, names });
    }
  }

  #show(): void {
    for (const { plot, names } of this.#plots) plot.setData(this.#data(names));
    const last = this.#recording.samples[Math.max(0, this.#done - 1)] as Sample;
    byId("stream-time").textContent = figure(last.time_ms / 1000, 0);
    byId("stream-state").textContent = STATE[this.#monitor.state];
    byId<HTMLButtonElement>("stream-use").disabled = this.visit() === undefined;
  }
}

/** Wires the section of the page; `use` takes a visit made of a recording. */
export function wireStream(units: () => Units, use: (visit: Visit) => void): void {
  let player: Player | undefined;
  const open = (text: string, title: string) => {
    try {
      const recording = readRecording(text);
      player?.stop();
      byId("stream-shown").hidden = false;
      player = new Player(recording, units());
      byId("stream-said").textContent = `${title}: ${recording.samples.length} samples.`;
    } catch (error) {
      const why = error instanceof RimewiseError ? `${error.field} ${error.message}` : error instanceof Error ? error.message : "";
      byId("stream-said").textContent = `Not opened: ${why}.`;
    }
  };
  for (const [id, title, url] of EXAMPLES) {
    byId("stream-examples").append(
      h(
        "button",
        {
          type: "button",
          "data-stream": id,
          click: () => void fetch(url).then(async (response) => open(await response.text(), `Invented, simulated: ${title}`)),
        },
        title,
      ),
    );
  }
  byId("stream-open").addEventListener("click", () => byId("stream-file").click());
  const input = byId<HTMLInputElement>("stream-file");
  input.addEventListener("change", () => {
    const file = input.files?.[0];
    if (file !== undefined) void file.text().then((text) => open(text, file.name));
    input.value = "";
  });
  byId("stream-play").addEventListener("click", () => (player?.playing ? player.pause() : player?.play()));
  byId("stream-all").addEventListener("click", () => {
    player?.pause();
    player?.push(Number.POSITIVE_INFINITY);
  });
  byId("stream-use").addEventListener("click", () => {
    const visit = player?.visit();
    if (visit !== undefined) use(visit);
  });
}
