/** Draws the pressure-enthalpy diagram: what the machine does, what a healthy one would, and what both mean. */
import { app } from "./app.js";
import { corners, type Corner, type CornerName, type Cycle, type Diagram, type Point } from "./cycle.js";
import { h, s } from "./dom.js";
import { openEntry } from "./entry.js";
import { fieldOf, type Field } from "./fields.js";
import { scaleOf } from "./figures.js";
import { t } from "./text.js";
import { altitudeM, figure, fromContract, scaleFor, show, toContract, unitName, type Scale } from "./units.js";

/** The width of the drawing in its own units, which are a phone's pixels: on a wide screen it grows with its box. */
let W = 480;
const H = 340;
const LEFT = 58;
const RIGHT = 14;
const TOP = 12;
const BOTTOM = 40;

/** The readings that make a corner. */
const READINGS: Readonly<Record<CornerName, readonly string[]>> = {
  evaporator_inlet: ["suction_pressure_kpa", "liquid_line_c"],
  evaporator_outlet: ["suction_pressure_kpa", "evaporator_outlet_c"],
  compressor_inlet: ["suction_pressure_kpa", "suction_line_c"],
  compressor_outlet: ["discharge_pressure_kpa", "discharge_line_c"],
  liquid_line: ["discharge_pressure_kpa", "liquid_line_c"],
};

/** Round figures of a gauge between two pressures, so far apart that they can be read. */
export function pressureTicks(low: number, high: number, y: (kpa: number) => number): { kpa: number; text: string }[] {
  const scale = scaleFor("pressure", app.units) as Extract<Scale, { of: "pressure" }>;
  const altitude = altitudeM(app.units);
  const [from, to] = [fromContract(low, scale, altitude), fromContract(high, scale, altitude)];
  const ticks: { kpa: number; text: string }[] = [];
  const range = Math.max(to - Math.min(from, 0), Number.EPSILON);
  const steps = [1, 2, 5].flatMap((k) => [-3, -2, -1, 0, 1, 2, 3, 4].map((d) => k * 10 ** d)).sort((a, b) => b - a);
  // Coarse figures first; finer ones only where there is room left.
  for (const step of steps) {
    if (step > range || range / step > 60) continue;
    for (let n = Math.ceil(from / step); n * step <= to; n++) {
      const value = n * step;
      const kpa = toContract(value, scale, altitude);
      if (!(kpa > low && kpa < high) || ticks.some((other) => Math.abs(y(other.kpa) - y(kpa)) < 26)) continue;
      ticks.push({ kpa, text: figure(value, step >= 1 ? 0 : step >= 0.1 ? 1 : step >= 0.01 ? 2 : 3) });
    }
  }
  return ticks.sort((a, b) => a.kpa - b.kpa);
}

/** Draws the diagram for a box so wide; nothing where there is none. */
export function drawDiagram(made: Diagram | undefined, width: number): SVGElement | undefined {
  W = Math.min(480, Math.max(300, width));
  if (made === undefined || made.liquid.length < 5) return undefined;
  const all: Point[] = [...corners(made.measured), ...corners(made.healthy), ...(made.band?.flatMap(corners) ?? [])];
  const lowest = Math.min(...(all.length === 0 ? [made.critical.p / 20] : all.map((point) => point.p))) / 1.8;
  const highest = Math.max(made.critical.p, ...all.map((point) => point.p)) * 1.12;
  const inside = (points: Point[]) => points.filter((point) => point.p >= lowest);
  const [liquid, vapor] = [inside(made.liquid), inside(made.vapor)];
  const hs = [...liquid, ...vapor, ...all].map((point) => point.h);
  const margin = (Math.max(...hs) - Math.min(...hs)) * 0.05;
  const [left, right] = [Math.min(...hs) - margin, Math.max(...hs) + margin];
  if (![lowest, highest, left, right].every(Number.isFinite) || lowest <= 0) return undefined;
  const x = (value: number) => LEFT + ((value - left) / (right - left)) * (W - LEFT - RIGHT);
  const y = (kpa: number) => H - BOTTOM - (Math.log(kpa / lowest) / Math.log(highest / lowest)) * (H - TOP - BOTTOM);
  const at = (point: Point) => `${x(point.h).toFixed(1)},${y(point.p).toFixed(1)}`;

  const grid = pressureTicks(lowest, highest, y).flatMap(({ kpa, text }) => [
    s("line", { class: "grid", x1: LEFT, x2: W - RIGHT, y1: y(kpa), y2: y(kpa) }),
    s("text", { class: "tick", x: LEFT - 6, y: y(kpa) + 4, "text-anchor": "end" }, text),
  ]);
  const span = right - left;
  const step = [10, 20, 25, 50, 100, 200].find((one) => span / one <= 6) ?? 500;
  const across: SVGElement[] = [];
  for (let value = Math.ceil(left / step) * step; value <= right; value += step) {
    across.push(s("line", { class: "grid", x1: x(value), x2: x(value), y1: TOP, y2: H - BOTTOM }), s("text", { class: "tick", x: x(value), y: H - BOTTOM + 15, "text-anchor": "middle" }, figure(value, 0)));
  }
  // Between the tables' end and the critical point the dome is drawn as a round cap, not computed.
  const cap = (from: Point, side: number) => `Q${(x(from.h) * 0.45 + x(made.critical.h) * 0.55 + side).toFixed(1)},${y(made.critical.p).toFixed(1)} ${at(made.critical)}`;
  const curve = (points: Point[]) => points.map((point, n) => `${n === 0 ? "M" : "L"}${at(point)}`).join("");
  const dome = [
    s("path", { class: "dome", d: `${curve(liquid)}${cap(liquid.at(-1) as Point, -2)}` }),
    s("path", { class: "dome", d: `${curve(vapor)}${cap(vapor.at(-1) as Point, 2)}` }),
    s("circle", { class: "critical", cx: x(made.critical.h), cy: y(made.critical.p), r: 2.5 }, s("title", {}, t("critical"))),
  ];
  const ring = (cycle: Cycle) => `${corners(cycle).map((point, n) => `${n === 0 ? "M" : "L"}${at(point)}`).join("")}Z`;
  const band = made.band === undefined ? [] : [s("path", { class: "band", "fill-rule": "evenodd", d: made.band.map(ring).join("") })];
  const path = (cycle: Cycle) => cycle.map((point, n) => (point === null ? "" : `${n === 0 || cycle[n - 1] === null ? "M" : "L"}${at(point)}`)).join("");

  const scale = scaleOf("superheat_k", app.units);
  const length = (name: "superheat_k" | "compressor_superheat_k" | "subcooling_k") => {
    const value = app.report?.cycle[name] ?? null;
    return value === null ? undefined : `${show(fromContract(value.value, scale, 0), scale)} ${unitName(scale)}`;
  };
  // Above the high side and below the low side, where the cycle itself leaves room; words turn at the drawing's edge.
  const bracket = (ends: [Point, Point] | undefined, text: string | undefined, label: string, way: number): SVGElement[] => {
    if (ends === undefined || text === undefined) return [];
    const [a, b] = [x(ends[0].h), x(ends[1].h)];
    const line = y(ends[0].p) + way * 13;
    const middle = (a + b) / 2;
    const anchor = middle > W - 110 ? "end" : middle < LEFT + 80 ? "start" : "middle";
    const where = anchor === "end" ? Math.min(W - RIGHT, Math.max(a, b) + 20) : anchor === "start" ? Math.max(LEFT + 2, Math.min(a, b) - 20) : middle;
    return [
      s("path", { class: "length", d: `M${a},${line - 5}v10M${a},${line}H${b}M${b},${line - 5}v10` }),
      s("text", { class: "length-text", x: where, y: line + (way > 0 ? 17 : -8), "text-anchor": anchor }, `${label} ${text}`),
    ];
  };
  const lengths = [
    ...bracket(made.superheat, length("superheat_k") ?? length("compressor_superheat_k"), t("sh"), 1),
    ...bracket(made.subcooling, length("subcooling_k"), t("sc"), -1),
  ];
  const axis = unitName(scaleFor("pressure", app.units));
  return s(
    "svg",
    { viewBox: `0 0 ${W} ${H}`, role: "group", "aria-label": t("diagram_about") },
    ...grid,
    ...across,
    s("text", { class: "axis", x: (LEFT + W - RIGHT) / 2, y: H - 6, "text-anchor": "middle" }, t("enthalpy")),
    s("text", { class: "axis", x: 12, y: (TOP + H - BOTTOM) / 2, "text-anchor": "middle", transform: `rotate(-90 12 ${(TOP + H - BOTTOM) / 2})` }, t("pressure_axis", { unit: axis })),
    ...dome,
    ...band,
    s("path", { class: "healthy", d: path(made.healthy) }),
    s("path", { class: "measured", d: path(made.measured) }),
    ...lengths,
    ...corners(made.healthy).filter((one) => !corners(made.measured).some((other) => other.name === one.name)).map((one) => dot(one, "missing", x, y)),
    ...corners(made.measured).map((one) => dot(one, "taken", x, y)),
  );
}

/** A corner that can be tapped to enter its readings. */
function dot(one: Corner, kind: "taken" | "missing", x: (h: number) => number, y: (p: number) => number): SVGElement {
  const open = () => openEntry(READINGS[one.name].map(fieldOf).filter((field): field is Field => field !== undefined));
  const press = (event: Event) => {
    if (!["Enter", " "].includes((event as KeyboardEvent).key)) return;
    event.preventDefault();
    open();
  };
  const [cx, cy] = [x(one.h), y(one.p)];
  return s(
    "g",
    { class: `corner ${kind}`, role: "button", tabindex: 0, "aria-label": `${t(one.name)}${kind === "missing" ? `, ${t("not_taken")}` : ""}`, "data-corner": one.name, click: open, keydown: press },
    s("circle", { class: "reach", cx, cy, r: 20 }),
    s("circle", { class: "spot", cx, cy, r: 5 }),
  );
}

/** The diagram's corners as rows, for people who do not see it and for print. */
export function diagramRows(made: Diagram): HTMLElement[] {
  const scale = scaleFor("pressure", app.units);
  const text = (corner: Corner | undefined) =>
    corner === undefined ? "" : `${show(fromContract(corner.p, scale, altitudeM(app.units)), scale)} ${unitName(scale)}, ${figure(corner.h, 0)} kJ/kg`;
  const find = (cycle: Cycle, name: CornerName) => corners(cycle).find((one) => one.name === name);
  return (Object.keys(READINGS) as CornerName[]).map((name) =>
    h("tr", {}, h("th", { scope: "row" }, t(name)), h("td", {}, text(find(made.measured, name))), h("td", {}, text(find(made.healthy, name)))),
  );
}
