/** Samples as a meter would see them, recorded or live: the monitor's state and events beside the curves. */
import { Monitor, RimewiseError, type MonitorEvent, type Sample, type SampleNumbers, type SteadyReadings, type Visit } from "rimewise";
import uPlot from "uplot";
import "uplot/dist/uPlot.min.css";
import liquidOnStart from "../../../core/examples/data/liquid_on_start.csv?url";
import lockedRotor from "../../../core/examples/data/locked_rotor.csv?url";
import pumpDown from "../../../core/examples/data/pump_down.csv?url";
import { app, follow } from "./app.js";
import { byId, h, s } from "./dom.js";
import { scaleOf } from "./figures.js";
import { checked, exampleSource, sourcesNow, addSource, type Source } from "./live.js";
import { CHANNELS, guess, isCertain, readTable, samplesOf, type Column, type Recording, type Table } from "./recording.js";
import { t } from "./text.js";
import { altitudeM, figure, fromContract, reading, unitName, type Scale } from "./units.js";
import { EVENT, EVENT_FIGURE, MEASUREMENT, PROBLEM, STATE, measurementName } from "./words.js";

/** Invented machines, simulated. */
const EXAMPLES: [id: string, title: string, url: string][] = [
  ["liquid_on_start", EVENT.liquid_on_start, liquidOnStart],
  ["locked_rotor", EVENT.failed_start, lockedRotor],
  ["pump_down", EVENT.pump_down, pumpDown],
];

/** What belongs into one plot, by the ending of its name. */
const PLOTS: [title: string, ending: string][] = [
  [t("pressure").toLowerCase(), "_kpa"],
  [t("temperature").toLowerCase(), "_c"],
  [MEASUREMENT.current_a.toLowerCase(), "_a"],
];

const DASHES = [[], [8, 4], [2, 3], [12, 3, 2, 3], [4, 4], [1, 3], [16, 4], [6, 2, 2, 2], [3, 6]];

/** The longest live run that is kept for its curves, samples: an hour at one a second. */
const LONGEST = 3600;

/** A piece of a curve for the legend, dashed as the curve is. */
function line(n: number): SVGElement {
  const dash = (DASHES[n % DASHES.length] as number[]).join(" ");
  return s("svg", { width: 36, height: 8, "aria-hidden": "true" }, s("line", { class: `curve-${n % 4}`, x1: 0, y1: 4, x2: 36, y2: 4, "stroke-width": 2, "stroke-dasharray": dash }));
}

class Player {
  readonly #visit: Visit;
  readonly #names: readonly string[];
  readonly #monitor: Monitor;
  /** What is still to come of a recording; a live run has none. */
  readonly #queue: Sample[];
  readonly #seen: Sample[] = [];
  readonly #span: [number, number] | undefined;
  readonly #events: MonitorEvent[] = [];
  readonly #problems = new Map<string, number>();
  #done = 0;
  #plots: { plot: uPlot; names: string[] }[] = [];
  #steady: SteadyReadings | null = null;
  #timer: ReturnType<typeof setInterval> | undefined;
  #waiting = false;

  constructor(visit: Visit, names: readonly string[], queue: Sample[], live: boolean) {
    this.#visit = visit;
    this.#names = names;
    this.#queue = queue;
    const [first, last] = [queue[0], queue.at(-1)];
    this.#span = live || first === undefined || last === undefined ? undefined : [first.time_ms / 1000, last.time_ms / 1000];
    const system = visit.system ?? {};
    const plate = system.compressor ?? {};
    this.#monitor = new Monitor({
      refrigerant: system.refrigerant,
      rated_load_a: plate.rated_load_a,
      locked_rotor_a: plate.locked_rotor_a,
      rated_v: plate.rated_v,
      suction_pressure_regulator: system.suction_pressure_regulator,
    });
    this.redraw();
  }

  get playing(): boolean {
    return this.#timer !== undefined;
  }

  get count(): number {
    return this.#done;
  }

  get state(): string {
    return STATE[this.#monitor.state];
  }

  play(): void {
    if (this.#done === this.#queue.length) return;
    const a = Math.max(1, Math.ceil(this.#queue.length / 300));
    this.#timer = setInterval(() => {
      this.push(a);
      if (this.#done === this.#queue.length) this.pause();
    }, 50);
    byId("stream-play").textContent = t("stream_pause");
  }

  pause(): void {
    clearInterval(this.#timer);
    this.#timer = undefined;
    byId("stream-play").textContent = t("stream_play");
  }

  stop(): void {
    this.pause();
    this.#monitor.free();
    this.#clear();
  }

  /** Takes so many samples of the recording, and shows what they brought. */
  push(count: number): void {
    const upTo = Math.min(this.#done + count, this.#queue.length);
    while (this.#done < upTo) this.#take(this.#queue[this.#done] as Sample);
    this.#show();
  }

  /** Takes one live sample; it is shown with the next frame. */
  live(sample: Sample): void {
    this.#take(sample);
    if (this.#seen.length > LONGEST) this.#seen.splice(0, LONGEST / 10);
    if (this.#waiting) return;
    this.#waiting = true;
    requestAnimationFrame(() => {
      this.#waiting = false;
      this.#show();
    });
  }

  #take(sample: Sample): void {
    const pushed = this.#monitor.push(sample);
    this.#done++;
    this.#seen.push(sample);
    for (const event of pushed.events) {
      this.#events.push(event);
      byId("stream-events").append(this.#item(event));
    }
    if (pushed.problem !== null) this.#problems.set(pushed.problem, (this.#problems.get(pushed.problem) ?? 0) + 1);
    this.#steady = this.#monitor.readings() ?? this.#steady;
  }

  /** A visit of the averages, with what tests in the stream have found; nothing where nothing was steady. */
  visit(): Visit | undefined {
    const found = this.#monitor.found();
    if (this.#steady === null && Object.keys(found).length === 0) return undefined;
    return {
      ...this.#visit,
      readings: { ...this.#steady?.readings, ...found },
      ...(this.#steady === null ? {} : { uncertainty: this.#steady.uncertainty }),
    };
  }

  #item(event: MonitorEvent): HTMLElement {
    const values = Object.entries(event.values).map(([name, value]) => {
      const scale = scaleOf(name, app.units);
      const words = EVENT_FIGURE[name] ?? MEASUREMENT[name] ?? name.replaceAll("_", " ");
      const unit = name.endsWith("_a") ? " A" : name.endsWith("_v") ? " V" : "";
      return scale.of === "plain" ? `${words} ${figure(value, 2)}${unit}` : `${words} ${reading(value, scale, altitudeM(app.units))}`;
    });
    return h("li", { "data-event": event.event }, `${figure(event.time_ms / 1000, 0)} s: `, h("strong", {}, EVENT[event.event] ?? event.event), ` ${values.join(", ")}`);
  }

  #data(names: string[]): uPlot.AlignedData {
    const seen = (this.#seen.length > 0 ? this.#seen : this.#queue.slice(0, 1)) as unknown as Record<string, number>[];
    const altitude = altitudeM(app.units);
    return [
      seen.map((sample) => (sample["time_ms"] as number) / 1000),
      ...names.map((name) => {
        const scale = scaleOf(name, app.units);
        return seen.map((sample) => {
          const value = sample[name];
          return value === undefined || value === null ? null : fromContract(value, scale, altitude);
        });
      }),
    ] as uPlot.AlignedData;
  }

  #clear(): void {
    for (const { plot } of this.#plots) plot.destroy();
    this.#plots = [];
    byId("stream-plots").replaceChildren();
  }

  /** Draws everything anew: other units, another theme, another width. */
  redraw(): void {
    this.#clear();
    byId("stream-events").replaceChildren(...this.#events.map((event) => this.#item(event)));
    const box = byId("stream-plots");
    const style = getComputedStyle(document.documentElement);
    const read = (name: string) => style.getPropertyValue(name).trim();
    const colours = [read("--measured"), read("--healthy"), read("--ink"), read("--soft")];
    for (const [title, ending] of PLOTS) {
      const names = this.#names.filter((name) => name.endsWith(ending));
      if (names.length === 0) continue;
      const unit = ending === "_a" ? "A" : unitName(scaleOf(names[0] as string, app.units));
      const axis = { stroke: read("--ink"), grid: { stroke: read("--line"), width: 0.5 }, ticks: { stroke: read("--line") } };
      const span = this.#span;
      const plot = new uPlot(
        {
          width: Math.max(260, box.clientWidth),
          height: ending === "_c" ? 230 : 170,
          scales: { x: { time: false, ...(span === undefined ? {} : { range: () => span }) } },
          legend: { show: false },
          cursor: { show: false },
          axes: [axis, { ...axis, label: `${title}, ${unit}`, labelSize: 20, size: 54 }],
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
      box.append(h("p", { class: "legend" }, ...names.map((name, n) => h("span", {}, line(n), ` ${measurementName(name)}`))));
      this.#plots.push({ plot, names });
    }
    this.#show();
  }

  #show(): void {
    for (const { plot, names } of this.#plots) plot.setData(this.#data(names));
    const last = this.#seen.at(-1) ?? this.#queue[0];
    byId("stream-time").textContent = figure((last?.time_ms ?? 0) / 1000, 0);
    byId("stream-state").textContent = this.state;
    byId<HTMLButtonElement>("stream-use").disabled = this.visit() === undefined;
    const problems = [...this.#problems].filter(([name]) => name !== "nothing_measured");
    byId("stream-problems").textContent = problems
      .map(([name, count]) => t("csv_unusable", { count, why: PROBLEM[name as keyof typeof PROBLEM] ?? name }))
      .join(" ");
  }
}

let player: Player | undefined;
let stopLive: (() => void) | undefined;

function begin(visit: Visit, names: readonly string[], queue: Sample[], live = false): Player {
  player?.stop();
  byId("stream-map").hidden = true;
  byId("stream-shown").hidden = false;
  byId("stream-events").replaceChildren();
  byId("stream-play").hidden = live;
  byId("stream-all").hidden = live;
  player = new Player(visit, names, queue, live);
  return player;
}

function why(error: unknown): string {
  if (error instanceof RimewiseError) return `${error.field} ${error.message}`;
  return error instanceof Error ? error.message : String(error);
}

function play(recording: Recording, title: string): void {
  begin(recording.visit, recording.names, recording.samples);
  byId("stream-said").textContent = t("stream_samples", { title, count: recording.samples.length });
}

function open(text: string, title: string): void {
  endLive();
  byId("stream-map").hidden = true;
  try {
    const table = readTable(text);
    const columns = table.header.map((name) => guess(name, app.units));
    if (isCertain(table)) play(samplesOf(table, columns, altitudeM(app.units)), title);
    else askColumns(table, columns, title);
  } catch (error) {
    byId("stream-said").textContent = t("not_opened", { why: why(error) });
  }
}

/** What a column can be, as values of a choice. */
function options(): [value: string, label: string, column: Column][] {
  const scales = (name: keyof SampleNumbers): [string, Scale][] => {
    if (name.endsWith("_kpa")) {
      const all = (["psi", "bar", "kPa", "MPa"] as const).flatMap((unit) => [true, false].map((gauge) => ({ of: "pressure", unit, gauge }) as const));
      return all.map((scale) => [unitName(scale), scale]);
    }
    if (name.endsWith("_c")) return (["degC", "degF"] as const).map((unit) => [unitName({ of: "temperature", unit }), { of: "temperature", unit }]);
    return [["", { of: "plain" }]];
  };
  return [
    ["out", t("map_leave"), { is: "out" }],
    ["time 1", `${t("map_time")}, s`, { is: "time", seconds: 1 }],
    ["time 60", `${t("map_time")}, min`, { is: "time", seconds: 60 }],
    ["time 0.001", `${t("map_time")}, ms`, { is: "time", seconds: 0.001 }],
    ["clock", t("map_clock"), { is: "clock" }],
    ...CHANNELS.flatMap((name) => scales(name).map(([unit, scale]): [string, string, Column] => [`${name} ${unit}`, `${measurementName(name)}${unit === "" ? "" : `, ${unit}`}`, { is: name, scale }])),
  ];
}

/** Asks which column is what; what could be guessed is chosen already. */
function askColumns(table: Table, columns: Column[], title: string): void {
  player?.stop();
  player = undefined;
  byId("stream-shown").hidden = true;
  byId("stream-said").textContent = "";
  const known = options();
  const same = (a: Column, b: Column) => JSON.stringify(a) === JSON.stringify(b);
  const selects = table.header.map((name, n) => {
    const chosen = known.find(([, , column]) => same(column, columns[n] as Column))?.[0] ?? "out";
    const id = `stream-column-${n}`;
    const select = h("select", { id }, ...known.map(([value, label]) => h("option", { value, selected: value === chosen }, label)));
    const sample = table.rows.slice(0, 2).map((row) => row.cells[n] ?? "").join(", ");
    return { select, row: h("div", { class: "row" }, h("label", { for: id }, name, h("small", {}, ` ${sample}`)), select) };
  });
  byId("stream-columns").replaceChildren(...selects.map(({ row }) => row));
  byId("stream-map").hidden = false;
  byId("stream-map-use").onclick = () => {
    try {
      const picked = selects.map(({ select }) => known.find(([value]) => value === select.value)?.[2] ?? ({ is: "out" } as const));
      play(samplesOf(table, picked, altitudeM(app.units)), title);
    } catch (error) {
      byId("stream-said").textContent = t("not_opened", { why: why(error) });
    }
  };
  selects[0]?.select.focus();
}

function endLive(): void {
  stopLive?.();
  stopLive = undefined;
  byId("live-stop").hidden = true;
}

async function startLive(source: Source): Promise<void> {
  endLive();
  const said = byId("stream-said");
  const system = app.accepted.system;
  const running = begin(system === undefined ? {} : { system }, CHANNELS, [], true);
  byId("live-stop").hidden = false;
  let ended = false;
  const failed = (reason: string) => {
    if (ended) return;
    ended = true;
    endLive();
    said.textContent = t("live_failed", { name: source.name, why: reason });
  };
  try {
    const stop = await source.start((sample) => {
      if (ended) return;
      try {
        running.live(checked(sample));
        said.textContent = t("live_running", { name: source.name, count: running.count, state: running.state });
      } catch (error) {
        failed(why(error));
      }
    }, failed);
    stopLive = () => {
      ended = true;
      stop();
    };
    if (ended) stop();
  } catch (error) {
    failed(why(error));
  }
}

function showSources(): void {
  const list = sourcesNow(showSources);
  byId("live-sources").replaceChildren(...list.map((source) => h("button", { type: "button", click: () => void startLive(source) }, t("live_start", { name: source.name }))));
}

/** Redraws what a recording or a live run shows, after a change of theme or width. */
export function redrawStream(): void {
  player?.redraw();
}

/** Wires the view; `use` takes a visit made of a recording. */
export function wireStream(use: (visit: Visit) => void): void {
  for (const [id, title, url] of EXAMPLES) {
    byId("stream-examples").append(
      h("button", { type: "button", "data-stream": id, click: () => void fetch(url).then(async (response) => open(await response.text(), t("stream_invented", { title }))) }, title),
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
  byId("live-stop").addEventListener("click", endLive);
  addSource(
    exampleSource(liquidOnStart, (text) => {
      const table = readTable(text);
      return samplesOf(table, table.header.map((name) => guess(name, app.units)), 0).samples;
    }),
  );
  showSources();
  let units = JSON.stringify(app.units);
  follow(() => {
    if (units === JSON.stringify(app.units)) return;
    units = JSON.stringify(app.units);
    redrawStream();
  });
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", redrawStream);
  addEventListener("resize", redrawStream);
}
