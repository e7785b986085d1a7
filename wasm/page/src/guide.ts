/** The guided way: three taps, then one card at a time of what is best taken now. */
import type { Cause, Effort } from "rimewise";
import { accepts } from "./accepts.js";
import { app, edit, follow, settle } from "./app.js";
import { byId, h } from "./dom.js";
import { openPicker } from "./entry.js";
import { COMPLAINTS, FIELDS, fieldOf, type Field } from "./fields.js";
import { percent } from "./figures.js";
import { KINDS, applyKind, kindOf } from "./kinds.js";
import { say } from "./language.js";
import { quoted } from "./mistakes.js";
import { jobOf, nameOf, verdictOf, type FullReport, type PlanStep } from "./report.js";
import { isFilled, makeRow, stopped, type Row } from "./row.js";
import { matches } from "./search.js";
import { recentRefrigerants, rememberRefrigerant } from "./store.js";
import { t } from "./text.js";
import { figure } from "./units.js";
import { goView, isShown, onView } from "./views.js";
import { cautionText, wouldClose } from "./view.js";
import { CAUSE, CAUTION, JOB, WHERE, measurementName } from "./words.js";

type Stage = "complaint" | "kind" | "refrigerant" | "cards";
const STAGES: readonly Stage[] = ["complaint", "kind", "refrigerant"];

/** One card. */
export interface Card {
  id: string;
  title: string;
  kind: "fields" | "act" | "job";
  fields: Field[];
  /** What the library says of it. */
  text: string;
  minutes: number | null;
  changes: number | null;
  effort: Effort | undefined;
  closes: Cause[];
}

/** The question that someone went back to. */
let asking: Stage | undefined;
/** Questions that were passed over. */
const passed = new Set<Stage>();
/** What was put off; it comes back when nothing else is left, if asked for. */
const skipped = new Set<string>();
/** The card that is being filled: it stays until its reader is done with it. */
let held: Card | undefined;
/** Whether to go on measuring although the verdict stands. */
let further = false;
let rows: Row[] = [];
let drawn = "";

/** Begins anew, for another visit. */
export function restartGuide(): void {
  asking = undefined;
  passed.clear();
  skipped.clear();
  held = undefined;
  further = false;
  drawn = "";
}

function stage(): Stage {
  if (asking !== undefined) return asking;
  if (Object.keys(app.visit.readings ?? {}).length + Object.keys(app.visit.observations ?? {}).length > 0) return "cards";
  const { state } = app;
  if (state.many["complaint"] === undefined && !passed.has("complaint")) return "complaint";
  if (state.kind === "" && state.choices["system.duty"] === undefined && !passed.has("kind")) return "kind";
  if (state.refrigerant === "" && !passed.has("refrigerant")) return "refrigerant";
  return "cards";
}

/** Readings that are taken together: the same place, the same trip, and one says little without the other. */
const TOGETHER: readonly (readonly string[])[] = [
  ["suction_pressure_kpa", "suction_line_c"],
  ["discharge_pressure_kpa", "liquid_line_c"],
  ["evaporator_pressure_kpa", "evaporator_outlet_c"],
  ["current_a", "voltage_v"],
  ["space_c", "supply_air_c"],
  ["ambient_c", "condenser_exhaust_c"],
  ["winding_run_ohm", "winding_start_ohm", "winding_run_to_start_ohm"],
  ["terminal_12_ohm", "terminal_23_ohm", "terminal_13_ohm"],
  ["standing_pressure_kpa", "standing_temperature_c"],
  ["pump_down_kpa", "pump_down_rise_kpa_per_min", "pump_down_valve", "pump_down_ended_by"],
  ["line_voltages_v.0", "line_voltages_v.1", "line_voltages_v.2"],
  ["line_currents_a.0", "line_currents_a.1", "line_currents_a.2"],
];

/** Minutes that an effort takes where the library does not say (judged). */
const MINUTES: Readonly<Record<Effort, number>> = { look: 1, clamp: 2, meter: 4, valve: 5, opens_system: 60 };

const bareName = (field: Field) => field.path.slice(field.path.indexOf(".") + 1);
const base = (name: string) => name.replace(/\.\d$/, "");

/** Whether a field can still be asked for. */
function askable(field: Field | undefined): field is Field {
  if (field === undefined || !accepts(field.path) || isFilled(field)) return false;
  const name = base(bareName(field));
  return !app.state.cannot.includes(name) && !skipped.has(name);
}

function fieldsCard(name: string, more: Partial<Card> = {}): Card | undefined {
  const asked = TOGETHER.find((names) => names.some((one) => base(one) === name)) ?? [name];
  const fields = asked.map(fieldOf).filter(askable);
  const first = fieldOf(name);
  if (!askable(first)) return undefined;
  // The one that was asked for comes first, its companions behind it.
  const ordered = [first, ...fields.filter((field) => field !== first)];
  return {
    id: `fields:${ordered.map((field) => field.path).join(",")}`,
    title: first.path.endsWith(".0") ? measurementName(name) : first.label,
    kind: "fields",
    fields: ordered,
    text: "",
    minutes: null,
    changes: null,
    effort: undefined,
    closes: app.report === undefined ? [] : wouldClose(app.report, name),
    ...more,
  };
}

function stepCard(step: PlanStep, report: FullReport): Card | undefined {
  const more = { text: step.text ?? "", minutes: step.minutes ?? null, changes: step.changes ?? null };
  if (step.kind === "look" || step.kind === "measure") {
    return fieldsCard(step.name, { ...more, effort: report.next.find((item) => item.measurement === step.name)?.effort });
  }
  if (step.kind === "act" || step.kind === "wait") {
    if (skipped.has(step.name) || app.state.cannot.includes(step.name)) return undefined;
    return { id: `act:${step.name}`, title: nameOf(step.name), kind: "act", fields: [], effort: undefined, closes: [], ...more };
  }
  return further ? undefined : jobCard(report);
}

function jobCard(report: FullReport): Card | undefined {
  const job = jobOf(verdictOf(report), app.accepted.system?.metering);
  if (job === undefined) return undefined;
  return { id: `job:${job}`, title: JOB[job] ?? job, kind: "job", fields: [], text: "", minutes: null, changes: null, effort: undefined, closes: [] };
}

/** Complaints of a machine that does not run, where gauges are not the first thing. */
const ELECTRICAL = ["does_not_start", "trips"];

/** Chooses the card: what opens superheat first, then the plan, then what tells most for its minutes. */
function choose(): Card | undefined {
  const report = app.report;
  if (report === undefined) return fieldsCard("suction_pressure_kpa");
  const plan = report.plan ?? null;
  const complaint = app.state.many["complaint"] ?? [];
  const tools = app.state.many["access.tools"];
  const gauges = (tools === undefined || (tools.includes("gauges") && tools.includes("pipe_clamp"))) && app.state.choices["access.suction_port"] !== false;
  const running = gauges && !stopped() && !complaint.some((name) => ELECTRICAL.includes(name));
  if (running && report.cycle.superheat_k === null && report.cycle.compressor_superheat_k === null) {
    const opening = [fieldsCard("suction_pressure_kpa"), fieldsCard("suction_line_c")].find((card) => card !== undefined);
    const pressure = app.state.numbers["readings.suction_pressure_kpa"] !== undefined;
    if (opening !== undefined && (pressure || opening.id.includes("suction_pressure"))) return { ...opening, text: t("guide_first") };
  }
  // The step first; where it cannot be taken, the job of a verdict that stands, then what would be read behind the step.
  const step = plan?.step == null ? undefined : stepCard(plan.step, report);
  if (step !== undefined) return step;
  const job = further ? undefined : jobCard(report);
  if (job !== undefined) return job;
  for (const { kind, name } of plan?.then ?? []) {
    const card = kind === "look" || kind === "measure" ? stepCard({ kind, name }, report) : undefined;
    if (card !== undefined) return card;
  }
  const worth = (item: FullReport["next"][number]) => item.information_bits / ((item as { minutes?: number | null }).minutes ?? MINUTES[item.effort]);
  // Nobody opens a circuit, or pierces a line, for a reading: that is the technician's own choice.
  const open = report.next.filter((item) => item.effort !== "opens_system").sort((a, b) => worth(b) - worth(a));
  for (const item of open) {
    const minutes = (item as { minutes?: number | null }).minutes ?? null;
    const card = fieldsCard(item.measurement, { effort: item.effort, minutes });
    if (card !== undefined) return card;
  }
  return undefined;
}

/** The card that is shown, or would be. */
export function currentCard(): Card | undefined {
  if (held !== undefined) return held;
  return choose();
}

function hold(): void {
  held = choose();
}

/** Leaves the card; what it asked for and did not get is put off. */
function leave(how: "next" | "skip" | "cannot"): void {
  settle();
  const card = held;
  held = undefined;
  if (card !== undefined) {
    const names = card.kind === "fields" ? card.fields.filter((field) => !isFilled(field)).map((field) => base(bareName(field))) : [card.id.slice(card.id.indexOf(":") + 1)];
    if (how === "cannot") edit((state) => (state.cannot = [...new Set([...state.cannot, ...names])]));
    else for (const name of names) skipped.add(name);
  }
  settle();
  hold();
  draw();
  rows[0]?.focus.focus({ preventScroll: true });
  byId("view-guide").scrollIntoView({ block: "nearest" });
}

/** Puts the cursor into the card. */
export function showStep(): void {
  settle();
  draw();
  rows[0]?.focus.focus();
}

const button = (text: string, click: () => void, more: Record<string, string> = {}) => h("button", { type: "button", click, ...more }, text);

function setupCard(which: Stage): HTMLElement {
  const n = STAGES.indexOf(which) + 1;
  const done = (change: () => void) => () => {
    change();
    asking = undefined;
    settle();
    hold();
    draw();
    if (stage() === "cards") rows[0]?.focus.focus();
    else byId("guide-title").focus();
  };
  const title = (text: string) => [h("p", { class: "eyebrow" }, t("guide_steps", { n })), h("h2", { id: "guide-title", tabindex: -1 }, text)];
  const pass = button(t("guide_skip"), done(() => void passed.add(which)), { class: "quiet" });
  if (which === "complaint") {
    const pick = (name: string) => done(() => edit((state) => (state.many["complaint"] = [name])));
    return h("section", { class: "card", "data-stage": which }, ...title(t("guide_complaint")), h("div", { class: "picks" }, ...Object.entries(COMPLAINTS).map(([name, text]) => button(say(text), pick(name), { class: "pick", "data-pick": name }))), pass);
  }
  if (which === "kind") {
    return h(
      "section",
      { class: "card", "data-stage": which },
      ...title(t("guide_kind")),
      h("div", { class: "picks" }, ...KINDS.map((one) => button(one.label, done(() => edit((state) => applyKind(state, one))), { class: "pick", "data-pick": one.id }))),
      pass,
    );
  }
  const pick = (name: string) =>
    done(() => {
      rememberRefrigerant(name);
      edit((state) => (state.refrigerant = name));
    });
  const picks = (names: readonly string[]) => names.map((name) => button(name, pick(name), { class: "pick", "data-pick": name }));
  const common = [...new Set([...recentRefrigerants(), ...(kindOf(app.state) ?? (KINDS.at(-1) as (typeof KINDS)[number])).refrigerants])].slice(0, 10);
  const found = h("div", { class: "picks", id: "guide-found", role: "group", "aria-label": t("guide_matches") });
  const search = h("input", {
    type: "search",
    id: "guide-search",
    autocomplete: "off",
    autocapitalize: "off",
    spellcheck: "false",
    maxlength: 40,
    input: () => {
      const names = matches(search.value);
      found.replaceChildren(...picks(names), ...(names.length === 0 && search.value.trim() !== "" ? [h("p", { class: "hint" }, t("guide_no_match"))] : []));
    },
    keydown: (event) => {
      const first = matches(search.value)[0];
      if ((event as KeyboardEvent).key !== "Enter") return;
      event.preventDefault();
      if (first !== undefined) pick(first)();
    },
  });
  return h(
    "section",
    { class: "card", "data-stage": which },
    ...title(t("guide_refrigerant")),
    h("p", { class: "hint" }, t("guide_plate")),
    h("div", { class: "picks small" }, ...picks(common)),
    h("label", { class: "stacked", for: "guide-search" }, t("guide_find")),
    search,
    found,
    button(t("guide_unknown"), done(() => void passed.add(which)), { class: "quiet" }),
  );
}

/** The step of the cautions that an effort is. */
const STEP_OF: Readonly<Record<Effort, string>> = { look: "look", clamp: "look", meter: "electrical", valve: "gauges", opens_system: "opens_system" };

function care(card: Card): HTMLElement | undefined {
  const pumpDown = card.fields.some((field) => field.path.includes("pump_down"));
  const step = pumpDown ? "pump_down" : card.effort === undefined ? (card.fields.some((field) => field.path.endsWith("_kpa")) ? "gauges" : undefined) : STEP_OF[card.effort];
  const cautions = (app.report?.cautions ?? []).filter((caution) => caution.step === step);
  if (cautions.length === 0) return undefined;
  return h(
    "details",
    { class: "care" },
    h("summary", {}, `${t("care")}: ${cautions.map((caution) => CAUTION[caution.code] ?? caution.code).join(" · ")}`),
    h("ul", {}, ...cautions.map((caution) => h("li", {}, cautionText(caution)))),
  );
}

function stepElement(card: Card): HTMLElement {
  rows = card.fields.map((field, n) =>
    makeRow(field, "g", () => {
      const after = rows[n + 1];
      if (after === undefined) leave("next");
      else after.focus.focus();
    }),
  );
  const where = card.fields.map((field) => WHERE[base(bareName(field))]).filter((text): text is string => text !== undefined);
  const minutes = card.minutes === null ? "" : ` · ${t("minutes", { minutes: figure(card.minutes, 0) })}`;
  const why = [
    ...(card.changes === null ? [] : [t("guide_changes", { share: percent(card.changes) })]),
    ...(card.closes.length === 0 ? [] : [t("could_settle", { causes: card.closes.slice(0, 3).map((cause) => CAUSE[cause].toLowerCase()).join("; ") })]),
  ];
  const job = card.kind === "job";
  const main = job
    ? [button(t("cdp"), () => showJob(), { class: "main", id: "guide-job" }), button(t("guide_now"), () => ((further = true), (held = undefined), hold(), draw()), { id: "guide-further" })]
    : [
        button(t(card.kind === "act" ? "guide_done" : "guide_next"), () => leave("next"), { class: "main", id: "guide-next" }),
        button(t("guide_cannot"), () => leave("cannot"), { id: "guide-cannot" }),
        button(t("guide_skip"), () => leave("skip"), { id: "guide-skip" }),
        button(t("cdp"), () => showJob(), { id: "guide-to-job" }),
      ];
  return h(
    "section",
    { class: "card", "data-card": card.id },
    h("p", { class: "eyebrow" }, `${t(card.kind === "fields" ? "guide_now" : "guide_do_now")}${minutes}`),
    h("h2", { id: "guide-title", tabindex: -1 }, card.title),
    card.text !== "" && h("p", {}, quoted(card.text)),
    ...rows.map((row) => row.element),
    ...where.map((text) => h("p", { class: "hint" }, text)),
    why.length > 0 && h("p", { class: "why" }, why.join(". ")),
    care(card),
    h("div", { class: "actions" }, ...main),
  );
}

/** Brings the job into sight. */
function showJob(): void {
  goView("answer", true);
  byId("cdp").scrollIntoView({ block: "start" });
}

function endElement(): HTMLElement {
  const again = [...skipped, ...app.state.cannot];
  return h(
    "section",
    { class: "card", "data-card": "end" },
    h("h2", { id: "guide-title", tabindex: -1 }, t("guide_all")),
    again.length > 0 && h("p", {}, t("guide_cannot_list", { names: again.map(measurementName).join(", ") })),
    again.length > 0 &&
      button(t("guide_again"), () => {
        skipped.clear();
        edit((state) => (state.cannot = []));
        settle();
        hold();
        draw();
      }),
  );
}

/** What was answered already, to go back to. */
function chips(): HTMLElement {
  const { state } = app;
  const complaint = (state.many["complaint"] ?? []).map((name) => say(COMPLAINTS[name] ?? [name, name])).join(", ");
  const duty = FIELDS.get("system.duty");
  const kind = kindOf(state)?.label ?? (duty?.type === "choice" ? duty.options.find(([value]) => value === state.choices["system.duty"])?.[1] : undefined);
  const chip = (which: Stage, text: string | undefined, missing: string) =>
    h(
      "button",
      {
        type: "button",
        class: text === undefined || text === "" ? "chip empty" : "chip",
        "data-chip": which,
        click: () => {
          asking = which;
          draw();
          byId("guide-title").focus();
        },
      },
      text === undefined || text === "" ? missing : text,
    );
  return h(
    "div",
    { class: "chips", role: "group", "aria-label": t("guide_back") },
    chip("complaint", complaint, t("guide_complaint")),
    chip("kind", kind, t("guide_kind")),
    chip("refrigerant", state.refrigerant, t("guide_refrigerant")),
  );
}

/** Draws the guide where what it shows has changed; else only what stands in it. */
function draw(force = false): void {
  const at = stage();
  if (at === "cards" && held === undefined) hold();
  // A card whose readings came in elsewhere is done.
  const busy = byId("guide").contains(document.activeElement);
  if (at === "cards" && held?.kind === "fields" && !busy && held.fields.every(isFilled)) hold();
  if (at === "cards" && held !== undefined && held.kind !== "fields") hold();
  const key = [at, at === "cards" ? (held?.id ?? "end") : "", app.state.refrigerant, app.state.kind, app.state.many["complaint"]].join("|");
  if (key !== drawn || force) {
    drawn = key;
    rows = [];
    const card = at !== "cards" ? setupCard(at) : held === undefined ? endElement() : stepElement(held);
    byId("guide").replaceChildren(...(at === "complaint" && asking === undefined ? [] : [chips()]), card);
    byId("guide-have").hidden = at !== "cards";
  }
  const toJob = document.getElementById("guide-to-job");
  if (toJob !== null) toJob.hidden = app.report === undefined || jobCard(app.report) === undefined;
  for (const row of rows) row.update(force);
}

export function wireGuide(): void {
  byId("guide-have").addEventListener("click", openPicker);
  byId("guide-sheet").addEventListener("click", () => goView("sheet", true));
  follow((force) => {
    if (force) held = undefined;
    if (isShown("guide")) draw(force);
  });
  onView((view) => {
    if (view === "guide") draw();
  });
}
