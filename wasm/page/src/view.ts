/** Shows the answer: the verdict, the figures, the causes with their evidence, what to do next, the cautions. */
import type { Cause, Caution, Measurement, Report } from "rimewise";
import { accepts } from "./accepts.js";
import { app } from "./app.js";
import { byId, h, refill, write } from "./dom.js";
import { goTo, hasRow } from "./form.js";
import { apartMark, apartText, figures, percent } from "./figures.js";
import { LANGUAGE } from "./language.js";
import { mistakeText, quoted } from "./mistakes.js";
import { nameOf, severity, verdict, type FullReport } from "./report.js";
import { stopped } from "./row.js";
import { t } from "./text.js";
import { figure } from "./units.js";
import { ALARM, CAUSE, CAUTION, CAUTION_ES, EFFORT, FINDING, STEP, measurementName, subject } from "./words.js";
import { FIELDS } from "./fields.js";

/** What one reading says, as odds. */
export function oddsText(weight: number): string {
  const factor = Math.exp(Math.min(Math.abs(weight), 20));
  const times = factor >= 100 ? t("over_100") : figure(factor, factor < 10 ? 1 : 0);
  return t(weight >= 0 ? "odds_for" : "odds_against", { times });
}

const DERIVED = /^(suction_saturation_c|evaporator_saturation_c|condensing_c|pressure_ratio|.*_k)$/;

/** A link to the field of a measurement, or its name where it has no field. */
function named(name: Measurement): HTMLElement {
  if (DERIVED.test(name)) return h("span", {}, measurementName(name));
  const click = () => void ["readings", "observations", "system"].some((section) => goTo(`${section}.${name}`));
  return h("button", { type: "button", class: "link", click }, measurementName(name));
}

function list(names: Measurement[]): (HTMLElement | string)[] {
  return names.flatMap((name, n) => (n === 0 ? [named(name)] : [", ", named(name)]));
}

/** Why a measurement would help: the open causes it would close. */
export function wouldClose(report: FullReport, measurement: string): Cause[] {
  return report.still_open.filter((open) => (open.closed_by as string[]).includes(measurement)).map((open) => open.cause);
}

/** How much a measurement is expected to tell, in words; its bits stand beside. */
export function tells(bits: number): string {
  if (bits >= 0.5) return t("tells_much");
  return t(bits >= 0.1 ? "tells_something" : "tells_little");
}

/** The causes that someone opened or closed: they stay so while readings come in. */
const turned = new Map<Cause, boolean>();

/** Forgets what was opened, for another visit. */
export function foldCauses(): void {
  turned.clear();
}

/** A cause on the page, kept while its figures change. */
interface CauseBox {
  box: HTMLDetailsElement;
  percent: HTMLElement;
  full: HTMLElement;
  body: HTMLElement;
}

const boxes = new Map<Cause, CauseBox>();

function makeBox(cause: Cause): CauseBox {
  const percentage = h("span", { class: "percent" });
  const track = bar(0);
  const body = h("div", {});
  const box = h(
    "details",
    { class: "cause", "data-cause": cause, toggle: () => app.report !== undefined && fillBox(app.report, cause) },
    h("summary", { click: () => void turned.set(cause, !box.open) }, h("span", { class: "name" }, CAUSE[cause]), percentage, track),
    body,
  );
  return { box, percent: percentage, full: track.firstElementChild as HTMLElement, body };
}

/** Fills what is open; what is closed is filled when it is opened. */
function fillBox(report: FullReport, cause: Cause): void {
  const kept = boxes.get(cause);
  if (kept === undefined || !kept.box.open) return;
  const about = [report.evidence.filter((item) => item.cause === cause), severity(report, cause), report.ruled_out.find((item) => item.cause === cause), report.still_open.find((item) => item.cause === cause)];
  refill(kept.body, about, () => causeItems(report, cause));
}

function showCauses(report: FullReport): void {
  const list = byId("causes");
  report.causes.forEach((entry, n) => {
    const kept = boxes.get(entry.cause) ?? makeBox(entry.cause);
    boxes.set(entry.cause, kept);
    const lead = entry.cause === report.leading;
    kept.box.classList.toggle("leading", lead);
    const open = turned.get(entry.cause) ?? lead;
    if (kept.box.open !== open) kept.box.open = open;
    write(kept.percent, percent(entry.probability));
    kept.full.style.width = `${Math.max(0.5, entry.probability * 100).toFixed(1)}%`;
    if (list.children[n] !== kept.box) list.insertBefore(kept.box, list.children[n] ?? null);
    fillBox(report, entry.cause);
  });
}

function bar(share: number): HTMLElement {
  const full = h("span", { class: "fill" });
  full.style.width = `${Math.max(0.5, share * 100)}%`;
  return h("span", { class: "bar", "aria-hidden": "true" }, full);
}

function causeItems(report: FullReport, cause: Cause): HTMLElement[] {
  const evidence = report.evidence.filter((item) => item.cause === cause);
  const out = report.ruled_out.find((item) => item.cause === cause);
  const open = report.still_open.find((item) => item.cause === cause);
  const items: HTMLElement[] = [];
  const how = severity(report, cause);
  if (how !== "") items.push(h("p", {}, how));
  if (evidence.length > 0) {
    const said = evidence.map((item) => h("li", { class: item.says }, named(item.reading), h("span", { class: "odds" }, oddsText(item.weight_nats))));
    items.push(h("ul", { class: "evidence" }, ...said));
  }
  if (out !== undefined) items.push(h("p", {}, out.by.length > 0 ? t("ruled_out_by") : t("ruled_out"), ...list(out.by), "."));
  if (open !== undefined && open.closed_by.length > 0) items.push(h("p", {}, t("still_open"), ...list(open.closed_by), "."));
  if (items.length === 0) items.push(h("p", {}, t("no_reading")));
  return items;
}

function showFigures(report: FullReport): void {
  const rows = figures(report as Report, app.units, stopped());
  const cells = (row: (typeof rows)[number]) => [row.does, row.should, apartText(row.apart) === "" ? "" : `${apartMark(row.apart)} ${apartText(row.apart)}`];
  const list = byId("figures");
  refill(list, rows.map((row) => [row.name, row.unit]), () =>
    rows.map((row) =>
      h("tr", { "data-figure": row.name }, h("th", { scope: "row" }, row.label, row.unit === "" ? "" : h("small", {}, ` ${row.unit}`)), h("td", {}), h("td", {}), h("td", {})),
    ),
  );
  rows.forEach((row, n) => {
    const tr = list.children[n] as HTMLElement;
    cells(row).forEach((text, at) => write(tr.children[at + 1] as Element, text));
    (tr.children[3] as Element).classList.toggle("off", Math.abs(row.apart ?? 0) >= 2);
  });
  byId("figures-none").hidden = rows.length > 0 && !stopped();
  byId("figures-none").textContent = t(stopped() ? "figures_stopped" : "figures_none");
  byId("figures-table").hidden = rows.length === 0;
}

function showNext(report: FullReport): void {
  refill(byId("next"), [report.next, report.still_open], () =>
    report.next.map((item) => {
      const closes = wouldClose(report, item.measurement);
      const minutes = (item as { minutes?: number | null }).minutes ?? null;
      const how = [EFFORT[item.effort], ...(minutes === null ? [] : [t("minutes", { minutes: figure(minutes, 0) })]), `${tells(item.information_bits)} (${figure(item.information_bits, 2)} bit)`];
      return h(
        "li",
        {},
        named(item.measurement),
        h("span", { class: "how" }, how.join("; ")),
        closes.length > 0 && h("span", { class: "why" }, t("could_settle", { causes: closes.map((cause) => CAUSE[cause].toLowerCase()).join("; ") })),
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
  const value = finding.value === null ? "" : `${agree ? `${t("to")} ` : ""}${number(finding.value)}`;
  const limit = finding.limit === null ? "" : t("held_against", { limit: number(finding.limit) });
  return [value, limit].filter((text) => text !== "").join(", ");
}

const GOOD = new Set(["windings_good", "run_capacitor_good", "start_capacitor_good", "current_normal", "insulation_good", "start_current_usual"]);

function showElectrical(report: FullReport): void {
  refill(byId("electrical"), report.electrical, () =>
    report.electrical.map((finding) =>
      h("li", { class: GOOD.has(finding.finding) ? "good" : "bad" }, h("strong", {}, FINDING[finding.finding] ?? finding.finding), ` ${findingText(finding)}`),
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

/** The text of a caution in the page's language. */
export function cautionText(caution: { code: string; text: string }): string {
  return LANGUAGE === "es" && !accepts("language") ? (CAUTION_ES[caution.code] ?? caution.text) : caution.text;
}

function showCautions(report: FullReport): void {
  refill(byId("cautions"), report.cautions, () =>
    bySteps(report.cautions).flatMap(([step, cautions]) => [
      h("h3", {}, step),
      h("ul", {}, ...cautions.map((caution) => h("li", {}, h("strong", {}, `${CAUTION[caution.code] ?? caution.code}. `), cautionText(caution)))),
    ]),
  );
}

/** What has to be done at once, in words. */
export function alarmTexts(report: FullReport): string[] {
  return (report.alarms ?? []).map((alarm) => [ALARM[alarm.code] ?? alarm.code, quoted(alarm.text ?? "")].filter((text) => text !== "").join(". "));
}

/** The hazards of the refrigerant itself, in one line beside the verdict. */
function hazard(report: FullReport): string {
  const codes = new Set(report.cautions.map((caution) => caution.code));
  const kinds = [codes.has("flammable") && t("can_burn"), codes.has("toxic") && t("is_toxic")].filter((kind) => kind !== false);
  return kinds.length === 0 ? "" : t("hazard", { kinds: kinds.join(` ${t("and")} `) });
}

/** Families and jobs, where the library weighs causes together. */
function showUnions(report: FullReport): void {
  const unions = [...(report.families ?? []), ...(report.jobs ?? [])].filter((one) => one.name !== "none" && one.probability >= 0.02);
  byId("unions-section").hidden = unions.length === 0;
  refill(byId("unions"), unions, () => unions.map((one) => h("li", {}, t("job_share", { name: nameOf(one.name), share: percent(one.probability) }), bar(one.probability))));
}

/** Whether anything was measured or seen. */
export function isMeasured(): boolean {
  return Object.keys(app.visit.readings ?? {}).length + Object.keys(app.visit.observations ?? {}).length > 0;
}

/** The verdict as it stands, also where nothing was measured or nothing could be answered. */
export function standing(): { title: string; text: string; tone: string } {
  if (app.report === undefined) return { title: t("no_answer"), text: app.fault ?? "", tone: "open" };
  return isMeasured() ? verdict(app.report) : { title: t("nothing_yet"), text: t("nothing_text"), tone: "open" };
}

/** Shows the verdict with its doubts, and what could not be read. */
export function showVerdict(): void {
  const report = app.report;
  const said = standing();
  const name = `verdict ${said.tone}`;
  if (byId("verdict").className !== name) byId("verdict").className = name;
  const put = (id: string, text: string) => write(byId(id), text);
  put("verdict-title", said.title);
  put("verdict-text", said.text);
  const homeless = [
    ...[...app.mistakes].filter(([path]) => !hasRow(path)).map(([path, mistake]) => `${subject(path)}: ${mistakeText(mistake, "")}`),
    ...(report?.warnings ?? []).filter((warning) => !hasRow(warning.field)).map((warning) => `${subject(warning.field)}: ${quoted(warning.text)}`),
  ];
  refill(byId("homeless"), homeless, () => homeless.map((text) => h("li", {}, text)));
  if (report === undefined) return;
  const alarms = alarmTexts(report);
  refill(byId("alarms"), alarms, () => alarms.map((text) => h("li", {}, text)));
  put("hazard", hazard(report));
  const leftOut = [...app.mistakes.keys()].map((path) => FIELDS.get(path)?.label.toLowerCase() ?? path);
  put("left-out", leftOut.length === 0 ? "" : t("left_out", { fields: leftOut.join("; ") }));
  put("fits", !isMeasured() || report.fits === null || report.fits >= 0.05 ? "" : t("odd_share", { share: percent(report.fits) }));
}

/** Shows the rest of the answer. */
export function showAnswer(): void {
  const report = app.report;
  if (report === undefined) return;
  const measured = isMeasured();
  byId("causes-section").hidden = !measured;
  showFigures(report);
  showCauses(report);
  showUnions(report);
  showNext(report);
  const more = report.causes.some((entry) => entry.probability > 0.02 && entry.cause !== report.leading);
  write(byId("next-none"), t(!measured ? "next_start" : more ? "next_look" : "next_none"));
  showElectrical(report);
  showCautions(report);
}
