/** The pressure-enthalpy diagram: the saturation dome, this machine's cycle and the healthy one's beside it. */
import {
  pressureFromKpa,
  property,
  saturation,
  tableRange,
  RimewiseError,
  type Report,
  type Visit,
} from "rimewise";
import uPlot from "uplot";
import "uplot/dist/uPlot.min.css";
import { altitudeM, figure, show, type Units } from "./units.js";

/** One corner of a cycle. */
export interface Corner {
  label: string;
  /** Enthalpy, kJ/kg. */
  h: number;
  /** Pressure, kPa absolute. */
  p: number;
  /** Temperature, degC. */
  t?: number;
}

/** A cycle as far as it is known: corners in the order of the flow; a gap where a reading is missing. */
export type Cycle = (Corner | null)[];

export interface Diagram {
  dome: Cycle;
  measured: Cycle;
  healthy: Cycle;
}

/** Runs a property question; nothing where the state has no answer (two phases, outside the table). */
function maybe<T>(ask: () => T): T | undefined {
  try {
    return ask();
  } catch (error) {
    if (error instanceof RimewiseError) return undefined;
    throw error;
  }
}

const DOME_POINTS = 48;

/** The two saturation curves with a gap between them: the tables end just below the critical point. */
function dome(refrigerant: string): Cycle {
  const range = tableRange(refrigerant);
  const liquid: Corner[] = [];
  const vapor: Corner[] = [];
  const low = Math.log(Math.max(range.min_kpa, 20));
  const high = Math.log(range.max_kpa * 0.9999);
  for (let n = 0; n < DOME_POINTS; n++) {
    // Points gather toward the top, where the dome bends.
    const x = 1 - (1 - n / (DOME_POINTS - 1)) ** 2;
    const p = Math.exp(low + (high - low) * x);
    const at = maybe(() => saturation(refrigerant, p));
    if (at === undefined) continue;
    liquid.push({ label: "", h: at.liquid_enthalpy_kj_kg, p });
    vapor.push({ label: "", h: at.vapor_enthalpy_kj_kg, p });
  }
  return [...liquid, null, ...vapor.reverse()];
}

function vaporOrLiquid(refrigerant: string, label: string, p: number | undefined, t: number | undefined): Corner | null {
  if (p === undefined || t === undefined) return null;
  const state = maybe(() => property({ refrigerant, pressure_kpa: p, temperature_c: t }));
  return state === undefined || state.phase === "two_phase" ? null : { label, h: state.enthalpy_kj_kg, p, t };
}

interface Points {
  suction?: number | undefined;
  evaporator?: number | undefined;
  discharge?: number | undefined;
  liquid?: number | undefined;
  evaporatorOutlet?: number | undefined;
  suctionLine?: number | undefined;
  dischargeLine?: number | undefined;
  liquidLine?: number | undefined;
}

function cycle(refrigerant: string, at: Points): Cycle {
  const low = at.evaporator ?? at.suction;
  const high = at.liquid ?? at.discharge;
  const liquid = vaporOrLiquid(refrigerant, "liquid line", high, at.liquidLine);
  const inlet: Corner | null =
    liquid !== null && low !== undefined ? { label: "evaporator inlet", h: liquid.h, p: low } : null;
  return [
    inlet,
    vaporOrLiquid(refrigerant, "evaporator outlet", low, at.evaporatorOutlet),
    vaporOrLiquid(refrigerant, "compressor inlet", at.suction, at.suctionLine),
    vaporOrLiquid(refrigerant, "compressor outlet", at.discharge, at.dischargeLine),
    liquid,
    inlet,
  ];
}

/** Makes the diagram of a visit; nothing where the refrigerant is not known. */
export function diagram(visit: Visit, report: Report): Diagram | undefined {
  const refrigerant = visit.system?.refrigerant;
  if (refrigerant === undefined || refrigerant === null) return undefined;
  const r = visit.readings ?? {};
  const e = report.expected;
  return {
    dome: maybe(() => dome(refrigerant)) ?? [],
    measured: cycle(refrigerant, {
      suction: r.suction_pressure_kpa ?? undefined,
      evaporator: r.evaporator_pressure_kpa ?? undefined,
      discharge: r.discharge_pressure_kpa ?? undefined,
      liquid: r.liquid_pressure_kpa ?? undefined,
      evaporatorOutlet: r.evaporator_outlet_c ?? undefined,
      suctionLine: r.suction_line_c ?? undefined,
      dischargeLine: r.discharge_line_c ?? undefined,
      liquidLine: r.liquid_line_c ?? undefined,
    }),
    healthy: cycle(refrigerant, {
      suction: e.suction_pressure_kpa?.value,
      discharge: e.discharge_pressure_kpa?.value,
      evaporatorOutlet: e.evaporator_outlet_c?.value,
      suctionLine: e.suction_line_c?.value,
      dischargeLine: e.discharge_line_c?.value,
      liquidLine: e.liquid_line_c?.value,
    }),
  };
}

/** A cycle's corners that are known. */
export function corners(cycle: Cycle): Corner[] {
  return cycle.filter((corner, n): corner is Corner => corner !== null && cycle.indexOf(corner) === n);
}

interface Colours {
  ink: string;
  faint: string;
  grid: string;
  measured: string;
  healthy: string;
}

function colours(print: boolean): Colours {
  if (print) return { ink: "#000", faint: "#666", grid: "#ddd", measured: "#000", healthy: "#666" };
  const style = getComputedStyle(document.documentElement);
  const read = (name: string) => style.getPropertyValue(name).trim();
  return {
    ink: read("--ink"),
    faint: read("--soft"),
    grid: read("--line"),
    measured: read("--measured"),
    healthy: read("--healthy"),
  };
}

type Facet = [number[], number[]];

/** Draws one path through the points of a series, with gaps, corners marked. */
function path(dash: number[], width: number, marks: boolean, colour: () => string): uPlot.Series.PathBuilder {
  return (u, series) => {
    const [hs, ps] = u.data[series] as unknown as Facet;
    const ctx = u.ctx;
    const ratio = uPlot.pxRatio;
    ctx.save();
    ctx.beginPath();
    ctx.rect(u.bbox.left, u.bbox.top, u.bbox.width, u.bbox.height);
    ctx.clip();
    ctx.strokeStyle = colour();
    ctx.fillStyle = colour();
    ctx.lineWidth = width * ratio;
    ctx.setLineDash(dash.map((n) => n * ratio));
    ctx.lineJoin = "round";
    ctx.beginPath();
    let drawing = false;
    const dots: [number, number][] = [];
    hs.forEach((value, n) => {
      const p = ps[n] as number;
      if (!Number.isFinite(value) || !Number.isFinite(p)) {
        drawing = false;
        return;
      }
      const x = u.valToPos(value, "h", true);
      const y = u.valToPos(p, "p", true);
      if (drawing) ctx.lineTo(x, y);
      else ctx.moveTo(x, y);
      drawing = true;
      dots.push([x, y]);
    });
    ctx.stroke();
    if (marks) {
      ctx.setLineDash([]);
      for (const [x, y] of dots) {
        ctx.beginPath();
        ctx.arc(x, y, 4 * ratio, 0, 2 * Math.PI);
        ctx.fill();
      }
    }
    ctx.restore();
    return null;
  };
}

function facet(points: Cycle, scale: (kpa: number) => number): Facet {
  return [points.map((c) => c?.h ?? Number.NaN), points.map((c) => (c === null ? Number.NaN : scale(c.p)))];
}

/** Labels a logarithmic axis at 1, 2 and 5 of each decade. */
function tick(value: number | null): string {
  if (value === null) return "";
  const first = value.toExponential(3);
  return /^[125]\.000/.test(first) ? String(Number(value.toPrecision(3))) : "";
}

let plot: uPlot | undefined;

/** Draws the diagram into a box; `print` draws it black on white. */
export function draw(box: HTMLElement, made: Diagram | undefined, units: Units, print = false): void {
  plot?.destroy();
  plot = undefined;
  box.replaceChildren();
  if (made === undefined || made.dome.length === 0) return;
  const c = colours(print);
  // The axis is logarithmic, so it is absolute whatever the gauges read.
  const scale = (kpa: number) => pressureFromKpa(kpa, { unit: units.pressure });
  const all = [...corners(made.measured), ...corners(made.healthy)];
  const lowest = Math.min(...all.map((x) => x.p), ...(all.length === 0 ? [150] : []));
  const shownDome = made.dome.filter((x) => x === null || x.p > lowest / 2.2);
  const highest = Math.max(...corners(shownDome).map((x) => x.p));
  const hs = [...corners(shownDome), ...all].map((x) => x.h);
  const margin = (Math.max(...hs) - Math.min(...hs)) * 0.04;
  const width = Math.max(280, box.clientWidth);
  plot = new uPlot(
    {
      mode: 2,
      width,
      height: Math.min(420, Math.max(260, width * 0.62)),
      legend: { show: false },
      cursor: { show: false },
      scales: {
        h: { time: false, range: () => [Math.min(...hs) - margin, Math.max(...hs) + margin] },
        p: { distr: 3, range: () => [scale(lowest / 2), scale(Math.max(highest, ...all.map((x) => x.p)) * 1.15)] },
      },
      axes: [
        { scale: "h", label: "enthalpy, kJ/kg", stroke: c.ink, grid: { stroke: c.grid, width: 0.5 }, ticks: { stroke: c.grid }, labelSize: 22, size: 36 },
        {
          scale: "p",
          side: 3,
          label: `pressure, ${units.pressure} absolute`,
          stroke: c.ink,
          grid: { stroke: c.grid, width: 0.5 },
          ticks: { stroke: c.grid },
          labelSize: 22,
          size: 52,
          filter: (_u: uPlot, splits: (number | null)[]) => splits,
          values: (_u: uPlot, splits: (number | null)[]) => splits.map(tick),
        },
      ],
      series: [
        {},
        ...[
          path([], 1.5, false, () => c.faint),
          path([7, 5], 2.5, true, () => c.healthy),
          path([], 3, true, () => c.measured),
        ].map((paths) => ({ facets: [{ scale: "h", auto: false }, { scale: "p", auto: false }], paths })),
      ],
    } as unknown as uPlot.Options,
    [null, facet(shownDome, scale), facet(made.healthy, scale), facet(made.measured, scale)] as unknown as uPlot.AlignedData,
    box,
  );
}

/** The diagram's corners as rows, for people who do not see it and for print. */
export function rows(made: Diagram, units: Units): { label: string; measured: string; healthy: string }[] {
  const altitude_m = altitudeM(units);
  const text = (corner: Corner | undefined) => {
    if (corner === undefined) return "";
    const scale = { of: "pressure", unit: units.pressure, gauge: units.gauge } as const;
    const p = pressureFromKpa(corner.p, { unit: units.pressure, gauge: units.gauge, altitude_m });
    return `${show(p, scale)} ${units.pressure}, ${figure(corner.h, 0)} kJ/kg`;
  };
  const labels = ["evaporator inlet", "evaporator outlet", "compressor inlet", "compressor outlet", "liquid line"];
  const find = (cycle: Cycle, label: string) => corners(cycle).find((corner) => corner.label === label);
  return labels.map((label) => ({
    label,
    measured: text(find(made.measured, label)),
    healthy: text(find(made.healthy, label)),
  }));
}
