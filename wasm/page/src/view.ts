/** Shows the answer: the verdict, the figures, the causes with their evidence, what to do next, the cautions. */
import type { Cause, Caution, Estimate, Measurement, Report } from "rimewise";
import { byId, h } from "./dom.js";
import { goTo } from "./form.js";
import { CAUSE, CAUTION, EFFORT, FINDING, SEVERITY, STEP, measurementName } from "./words.js";
import { altitudeM, figure, fromContract, show, unitName, type Scale, type Units } from "./units.js";

/** The scale of a quantity, which its name carries. */
export function scaleOf(name: string, units: Units): Scale {
  if (name.endsWith("_kpa")) return { of: "pressure", unit: units.pressure, gauge: units.gauge };
  if (name.endsWith("_c")) return { of: "temperature", unit: units.temperature };
  if (name.endsWith("_k")) return { of: "difference", unit: units.temperature };
  return { of: "plain" };
}

/** The unit of a quantity for people, empty for a ratio. */
function unitOf(name: string, units: Units): string {
  if (name.endsWith("_a")) return "A";
  return unitName(scaleOf(name, units));
}

/** A figure with its standard uncertainty, in the units of one's choice. */
export function estimate(name: string, value: Estimate | null | undefined, units: Units): string {
  if (value === null || value === undefined) return "–";
  const scale = scaleOf(name, units);
  const spread: Scale =
    scale.of === "pressure"
      ? { of: "pressure_span", unit: scale.unit }
      : scale.of === "temperature"
        ? { of: "difference", unit: scale.unit }
        : scale;
  const centre = show(fromContract(value.value, scale, altitudeM(units)), scale);
  return `${centre} ± ${show(fromContract(value.u, spread, 0), spread)}`;
}

/** One line of the table of what it does and what it should do. */
export interface FigureRow {
  name: string;
  label: string;
  unit: string;
  does: string;
  should: string;
  /** How many standard deviations apart, signed; absent where one of the two is missing. */
  apart?: number;
}

/** What a technician looks at first; the rest follows in the report's order. */
const FIRST = ["superheat_k", "compressor_superheat_k", "subcooling_k", "suction_saturation_c", "condensing_c", "pressure_ratio"];

/** The figures that can be shown. */
export function figures(report: Report, units: Units): FigureRow[] {
  const cycle = report.cycle as unknown as Record<string, Estimate | null>;
  const expected = report.expected as unknown as Record<string, Estimate | null>;
  const names = [...new Set([...FIRST, ...Object.keys(cycle)])];
  // Without a pressure of its own the evaporator's saturation is the suction's.
  const own = cycle["evaporator_saturation_c"]?.value !== cycle["suction_saturation_c"]?.value;
  return names
    .filter((name) => name !== "evaporator_saturation_c" || own)
    .filter((name) => (cycle[name] ?? null) !== null || (name in cycle && (expected[name] ?? null) !== null))
    .map((name) => {
      const does = cycle[name] ?? null;
      const should = expected[name] ?? null;
      return {
        name,
        label: measurementName(name),
        unit: unitOf(name, units),
        does: estimate(name, does, units),
        should: estimate(name, should, units),
        ...(does !== null && should !== null
          ? { apart: (does.value - should.value) / Math.hypot(does.u, should.u) }
          : {}),
      };
    });
}

/** How far apart a figure is from what it should be, in words. */
export function apartText(apart: number | undefined): string {
  if (apart === undefined || !Number.isFinite(apart)) return "";
  const way = apart > 0 ? "above" : "below";
  const size = Math.abs(apart);
  if (size < 1) return "as it should";
  return size < 2 ? `somewhat ${way}` : size < 4 ? `clearly ${way}` : `far ${way}`;
}

export function percent(probability: number): string {
  if (probability < 0.005) return "< 1 %";
  if (probability > 0.995) return "> 99 %";
  return `${Math.round(probability * 100)} %`;
}

export interface Verdict {
  title: string;
  text: string;
  tone: "cleared" | "decided" | "open";
}

/** The verdict in one line and one paragraph, with its doubt. */
export function verdict(report: Report): Verdict {
  const leading = report.causes.find((entry) => entry.cause === report.leading);
  const sure = leading === undefined ? "" : percent(leading.probability);
  const odd =
    report.fits !== null && report.fits < 0.01
      ? "The readings do not fit together under any of the ten causes. Check them against each other, and look at load, door, controls and the refrigerant itself: the ten causes are not the whole world."
      : "";
  if (report.decided && report.leading === "none") {
    return {
      title: `Cleared, ${sure}`,
      text: "Nothing found that costs 5 % or more of capacity or efficiency, as far as these readings tell.",
      tone: "cleared",
    };
  }
  if (report.decided) {
    return {
      title: `${CAUSE[report.leading]}, ${sure}`,
      text: `Sure enough to act on. ${severity(report, report.leading)} Confirm by what you see before parts are ordered.`,
      tone: "decided",
    };
  }
  return {
    title: odd ? "Not decided. No cause explains these readings" : `Not decided. Leading: ${CAUSE[report.leading]}, ${sure}`,
    text: odd || "Not sure enough to act on. What to measure next is listed below.",
    tone: "open",
  };
}

function severity(report: Report, cause: Cause): string {
  const entry = report.causes.find((other) => other.cause === cause);
  if (cause === "none" || entry?.severity === null || entry?.severity === undefined) return "";
  if (entry.severity < 0.005) return "";
  return `Most likely about ${figure(entry.severity * 100, 0)} % ${SEVERITY[cause]}.`;
}

/** What one reading says, as odds. */
export function oddsText(weight: number): string {
  const factor = Math.exp(Math.min(Math.abs(weight), 20));
  const times = factor >= 100 ? "more than 100" : figure(factor, factor < 10 ? 1 : 0);
  return `${weight >= 0 ? "for" : "against"}, odds ${weight >= 0 ? "×" : "÷"} ${times}`;
}

/** A link to the field of a measurement, or its name where it has no field. */
function reading(name: Measurement): HTMLElement {
  const path = ["readings", "observations"].map((section) => `${section}.${name}`);
  return h(
    "button",
    {
      type: "button",
      class: "link",
      click: () => {
        path.some(goTo);
      },
    },
    measurementName(name),
  );
}

const DERIVED = /^(suction_saturation_c|evaporator_saturation_c|condensing_c|pressure_ratio|.*_k)$/;

function named(name: Measurement): HTMLElement {
  return DERIVED.test(name) ? h("span", {}, measurementName(name)) : reading(name);
}

function list(names: Measurement[]): (HTMLElement | string)[] {
  return names.flatMap((name, n) => (n === 0 ? [named(name)] : [", ", named(name)]));
}

/** Why a measurement would help: the open causes it would close. */
export function wouldClose(report: Report, measurement: Measurement): Cause[] {
  return report.still_open.filter((open) => open.closed_by.includes(measurement)).map((open) => open.cause);
}

/** How much a measurement is expected to tell, in words; its bits stand beside. */
export function tells(bits: number): string {
  if (bits >= 0.5) return "tells much";
  if (bits >= 0.1) return "tells something";
  return "tells little";
}

function showCauses(report: Report): void {
  byId("causes").replaceChildren(
    ...report.causes.map((entry) => {
      const evidence = report.evidence.filter((item) => item.cause === entry.cause);
      const out = report.ruled_out.find((item) => item.cause === entry.cause);
      const open = report.still_open.find((item) => item.cause === entry.cause);
      const items: HTMLElement[] = [];
      const how = severity(report, entry.cause);
      if (how !== "") items.push(h("p", {}, how));
      if (evidence.length > 0) {
        items.push(
          h(
            "ul",
            { class: "evidence" },
            ...evidence.map((item) =>
              h("li", { class: item.says }, named(item.reading), h("span", { class: "odds" }, oddsText(item.weight_nats))),
            ),
          ),
        );
      }
      if (out !== undefined) items.push(h("p", {}, "Ruled out", ...(out.by.length > 0 ? [" by: ", ...list(out.by)] : []), "."));
      if (open !== undefined && open.closed_by.length > 0) {
        items.push(h("p", {}, "Still open; would be settled by: ", ...list(open.closed_by), "."));
      }
      if (items.length === 0) items.push(h("p", {}, "No single reading speaks clearly for or against it."));
      const bar = h("span", { class: "bar", "aria-hidden": "true" }, h("span", { class: "fill" }));
      (bar.firstChild as HTMLElement).style.width = `${Math.max(0.5, entry.probability * 100)}%`;
      const lead = entry.cause === report.leading;
      return h(
        "details",
        { class: `cause${lead ? " leading" : ""}`, "data-cause": entry.cause, open: lead },
        h(
          "summary",
          {},
          h("span", { class: "name" }, CAUSE[entry.cause]),
          h("span", { class: "percent" }, percent(entry.probability)),
          bar,
        ),
        ...items,
      );
    }),
  );
}

function showFigures(report: Report, units: Units): void {
  const rows = figures(report, units);
  byId("figures").replaceChildren(
    ...rows.map((row) =>
      h(
        "tr",
        { "data-figure": row.name },
        h("th", { scope: "row" }, row.label, row.unit === "" ? "" : h("small", {}, ` ${row.unit}`)),
        h("td", {}, row.does),
        h("td", {}, row.should),
        h("td", { class: Math.abs(row.apart ?? 0) >= 2 ? "off" : "" }, apartText(row.apart)),
      ),
    ),
  );
  byId("figures-none").hidden = rows.length > 0;
  byId("figures-table").hidden = rows.length === 0;
}

function showNext(report: Report): void {
  byId("next").replaceChildren(
    ...report.next.map((item) => {
      const closes = wouldClose(report, item.measurement);
      return h(
        "li",
        {},
        named(item.measurement),
        h("span", { class: "how" }, `${EFFORT[item.effort]}; ${tells(item.information_bits)} (${figure(item.information_bits, 2)} bit)`),
        closes.length > 0 && h("span", { class: "why" }, `could settle: ${closes.map((cause) => CAUSE[cause].toLowerCase()).join("; ")}`),
      );
    }),
  );
  byId("next-none").hidden = report.next.length > 0;
}

/** A finding's figure and limit for people. */
export function findingText(finding: Report["electrical"][number]): string {
  const unit = finding.unit === "uF" ? "µF" : finding.unit;
  // What is left over between windings that agree: which way it leans says nothing to people.
  const agree = finding.finding === "windings_good";
  const number = (value: number) => `${figure(agree ? Math.abs(value) : value, 2)} ${unit}`;
  const value = finding.value === null ? "" : `${agree ? "to " : ""}${number(finding.value)}`;
  const limit = finding.limit === null ? "" : `held against ${number(finding.limit)}`;
  return [value, limit].filter((text) => text !== "").join(", ");
}

const GOOD = new Set([
  "windings_good",
  "run_capacitor_good",
  "start_capacitor_good",
  "current_normal",
  "insulation_good",
  "start_current_usual",
]);

function showElectrical(report: Report): void {
  byId("electrical").replaceChildren(
    ...report.electrical.map((finding) =>
      h(
        "li",
        { class: GOOD.has(finding.finding) ? "good" : "bad" },
        h("strong", {}, FINDING[finding.finding] ?? finding.finding),
        ` ${findingText(finding)}`,
      ),
    ),
  );
  byId("electrical-none").hidden = report.electrical.length > 0;
}

/** The cautions by the step they belong to. */
export function bySteps(cautions: Caution[]): [string, Caution[]][] {
  const steps = new Map<string, Caution[]>();
  for (const caution of cautions) {
    const title = STEP[caution.step] ?? caution.step;
    steps.set(title, [...(steps.get(title) ?? []), caution]);
  }
  return [...steps];
}

function showCautions(report: Report): void {
  byId("cautions").replaceChildren(
    ...bySteps(report.cautions).flatMap(([step, cautions]) => [
      h("h3", {}, step),
      h(
        "ul",
        {},
        ...cautions.map((caution) => h("li", {}, h("strong", {}, `${CAUTION[caution.code] ?? caution.code}. `), caution.text)),
      ),
    ]),
  );
}

/** The hazards of the refrigerant itself, in one line beside the verdict. */
function hazard(report: Report): string {
  const codes = new Set(report.cautions.map((caution) => caution.code));
  const kinds = [codes.has("flammable") && "can burn", codes.has("toxic") && "is toxic"].filter((kind) => kind !== false);
  return kinds.length === 0
    ? ""
    : `This refrigerant ${kinds.join(" and ")}, or has to be treated so: read “Take care” before anything is opened.`;
}

/** Shows beside each reading what a healthy machine would show here and now. */
function showExpected(report: Report, units: Units): void {
  const expected = report.expected as unknown as Record<string, Estimate | null>;
  for (const place of document.querySelectorAll<HTMLElement>("[data-expect]")) {
    const name = place.dataset["expect"] ?? "";
    const value = expected[name] ?? null;
    place.textContent = value === null ? "" : `healthy ${estimate(name, value, units)}`;
  }
}

/** Shows a report. */
export function showReport(report: Report, units: Units, leftOut: string[], nothingMeasured: boolean): void {
  const said: Verdict = nothingMeasured
    ? {
        title: "Nothing measured yet",
        text: "Enter what you have: one gauge and one clamp are a visit. What is expected shows as soon as it can be computed.",
        tone: "open",
      }
    : verdict(report);
  const box = byId("verdict");
  box.className = `verdict ${said.tone}`;
  byId("verdict-title").textContent = said.title;
  byId("verdict-text").textContent = said.text;
  byId("hazard").textContent = hazard(report);
  byId("strip").textContent = said.title;
  byId("left-out").textContent =
    leftOut.length === 0 ? "" : `Answered without what could not be read: ${leftOut.join("; ")}.`;
  byId("fits").textContent =
    nothingMeasured || report.fits === null || report.fits >= 0.05
      ? ""
      : `Readings as odd as these come up in ${percent(report.fits)} of visits under the best explanation.`;
  byId("causes-section").hidden = nothingMeasured;
  showFigures(report, units);
  showExpected(report, units);
  showCauses(report);
  showNext(report);
  byId("next-none").textContent = nothingMeasured
    ? "Start with what is at hand: the refrigerant, the air temperatures, one gauge, one clamp."
    : report.causes.some((entry) => entry.probability > 0.02 && entry.cause !== report.leading)
      ? "No single further reading is expected to tell more; look at the machine itself."
      : "Nothing left to measure would tell more.";
  showElectrical(report);
  showCautions(report);
}

/** Shows that nothing could be answered, and why. */
export function showFault(fault: string): void {
  byId("verdict").className = "verdict open";
  byId("verdict-title").textContent = "No answer yet";
  byId("verdict-text").textContent = fault;
  byId("strip").textContent = "No answer yet";
}
