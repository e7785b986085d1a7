/** The page: what is entered goes in, the answer comes out, at every keystroke. */
import { init, property, refrigerants, version, RimewiseError, diagnose, type Readings, type Report, type Visit } from "rimewise";
import { answer } from "./answer.js";
import { diagram, draw, rows, type Diagram } from "./diagram.js";
import { byId, h } from "./dom.js";
import { EXAMPLES } from "./examples.js";
import { buildForm, entered, showForm, showNotes } from "./form.js";
import { DISCLAIMER, textReport } from "./report.js";
import { emptyState, fromVisit, keep, kept, toVisit, type State } from "./state.js";
import { altitudeM, parseNumber, scaleFor, type Units } from "./units.js";
import { FIELDS } from "./fields.js";
import { wireStream } from "./stream.js";
import { showFault, showReport } from "./view.js";
import "./style.css";

let { state, units } = kept();
let report: Report | undefined;
let drawn: Diagram | undefined;
let before: State | undefined;

function say(text: string): void {
  byId("said").textContent = text;
}

/** Answers the visit as it stands and shows everything. */
function refresh(force = false): void {
  keep(state, units);
  showForm(state, units, force);
  showUnits();
  const { visit, mistakes } = toVisit(state, units);
  const answered = answer(visit, mistakes);
  report = answered.report;
  const homeless = showNotes(answered.mistakes, report?.warnings ?? []);
  byId("homeless").replaceChildren(...homeless.map((text) => h("li", {}, text)));
  if (report === undefined) {
    showFault(answered.fault ?? "");
    return;
  }
  const measured = Object.keys(visit.readings ?? {}).length + Object.keys(visit.observations ?? {}).length > 0;
  const leftOut = [...answered.mistakes.keys()].map(labelOf);
  showReport(report, units, leftOut, !measured);
  drawn = diagram(visit, report);
  byId("diagram-section").hidden = drawn === undefined || drawn.dome.length === 0;
  draw(byId("diagram"), drawn, units);
  byId("diagram-rows").replaceChildren(
    ...(drawn === undefined ? [] : rows(drawn, units)).map((row) =>
      h("tr", {}, h("th", { scope: "row" }, row.label), h("td", {}, row.measured), h("td", {}, row.healthy)),
    ),
  );
  showEntered();
  showFacts();
  byId("record-count").textContent =
    state.record.length === 0
      ? "None. With readings from when it was good, the expectation is this machine’s own."
      : `${state.record.length} set${state.record.length === 1 ? "" : "s"} of readings from when it was good.`;
  byId("record-clear").hidden = state.record.length === 0;
}

function labelOf(path: string): string {
  return FIELDS.get(path)?.label.toLowerCase() ?? path;
}

function showUnits(): void {
  byId<HTMLSelectElement>("unit-pressure").value = units.pressure;
  byId<HTMLSelectElement>("unit-gauge").value = units.gauge ? "gauge" : "absolute";
  byId<HTMLSelectElement>("unit-altitude").value = units.altitudeUnit;
  byId<HTMLSelectElement>("unit-temperature").value = units.temperature;
  const altitude = byId<HTMLInputElement>("altitude");
  if (document.activeElement !== altitude) altitude.value = units.altitude;
  const metres = altitudeM(units);
  byId("units-now").textContent =
    `${units.pressure} ${units.gauge ? `gauge at ${units.altitude} ${units.altitudeUnit}` : "absolute"}, ${units.temperature === "degC" ? "°C" : "°F"}`;
  const wrong = parseNumber(units.altitude) === undefined || metres < -500 || metres > 11000;
  byId("altitude-note").textContent = wrong
    ? parseNumber(units.altitude) === undefined
      ? "not a number: sea level is assumed"
      : "between −500 and 11,000 m"
    : "";
  byId("altitude-note").className = wrong ? "note wrong" : "note";
}

function showFacts(): void {
  const facts = byId("refrigerant-facts");
  facts.textContent = "";
  if (state.refrigerant === "") {
    return;
  }
  try {
    const known = property({ refrigerant: state.refrigerant });
    const mix = known.composition.length > 1 ? `${known.composition.map((c) => `${c.component} ${c.mass_percent} %`).join(", ")}. ` : "";
    facts.textContent = `${mix}Safety class ${known.safety_class ?? "not known: treated as flammable and toxic"}.`;
  } catch (error) {
    if (!(error instanceof RimewiseError)) throw error;
  }
}

function showEntered(): void {
  byId("print-entered").replaceChildren(
    h("h2", {}, "Entered"),
    h("p", {}, `Refrigerant: ${state.refrigerant || "not known"}`),
    ...entered(state, units).flatMap((group) => [
      h("h3", {}, group.group),
      h("table", {}, h("tbody", {}, ...group.rows.map(([label, text]) => h("tr", {}, h("th", { scope: "row" }, label), h("td", {}, text))))),
    ]),
  );
}

function replace(next: State, text: string): void {
  before = state;
  state = next;
  refresh(true);
  say(text);
  byId("said").append(
    " ",
    h(
      "button",
      {
        type: "button",
        class: "link",
        id: "undo",
        click: () => {
          if (before !== undefined) state = before;
          refresh(true);
          say("Back to what was there.");
        },
      },
      "Undo",
    ),
  );
}

function download(name: string, text: string): void {
  const url = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  const link = h("a", { href: url, download: name });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

/** Reads a visit from text; what the library refuses is not opened, so that nothing is lost in silence. */
function read(text: string): Visit | undefined {
  let visit: Visit;
  try {
    visit = JSON.parse(text) as Visit;
    diagnose(visit);
  } catch (error) {
    const why = error instanceof RimewiseError ? `${error.field} ${error.message}` : "it is no JSON";
    say(`Not opened: ${why.trim()}.`);
    return undefined;
  }
  return visit;
}

function fileInput(id: string, then: (visit: Visit, name: string) => void): void {
  const input = byId<HTMLInputElement>(id);
  input.addEventListener("change", () => {
    const file = input.files?.[0];
    if (file === undefined) return;
    void file.text().then((text) => {
      const visit = read(text);
      if (visit !== undefined) then(visit, file.name);
      input.value = "";
    });
  });
}

/** Changes units; the altitude keeps its height when its unit changes. */
function setUnits(change: Partial<Units>): void {
  units = { ...units, ...change };
  refresh(true);
}

function wire(): void {
  for (const name of refrigerants()) byId("refrigerant").append(h("option", { value: name }, name));
  byId("refrigerant").addEventListener("change", () => {
    state.refrigerant = byId<HTMLSelectElement>("refrigerant").value;
    refresh();
  });
  buildForm({
    number(path, text) {
      const field = FIELDS.get(path);
      if (field?.type !== "number") return;
      if (text.trim() === "") delete state.numbers[path];
      else state.numbers[path] = { text, scale: scaleFor(field.kind, units) };
      refresh();
    },
    choice(path, value) {
      if (value === undefined) delete state.choices[path];
      else state.choices[path] = value;
      refresh();
    },
  });
  byId("form").addEventListener("submit", (event) => event.preventDefault());

  const select = (id: string, change: (value: string) => Partial<Units>) =>
    byId(id).addEventListener("change", () => setUnits(change(byId<HTMLSelectElement>(id).value)));
  select("unit-pressure", (value) => ({ pressure: value as Units["pressure"] }));
  select("unit-gauge", (value) => ({ gauge: value === "gauge" }));
  select("unit-temperature", (value) => ({ temperature: value as Units["temperature"] }));
  select("unit-altitude", (value) => {
    const unit = value as Units["altitudeUnit"];
    const metres = altitudeM(units);
    return { altitudeUnit: unit, altitude: String(Math.round(unit === "ft" ? metres / 0.3048 : metres)) };
  });
  byId("altitude").addEventListener("input", () => {
    units = { ...units, altitude: byId<HTMLInputElement>("altitude").value };
    refresh();
  });

  for (const example of EXAMPLES) {
    byId("examples").append(
      h(
        "button",
        {
          type: "button",
          "data-example": example.id,
          click: () => replace(adopt(example.visit), `Opened the invented example: ${example.title}.`),
        },
        example.title,
      ),
    );
  }
  byId("new").addEventListener("click", () => replace(emptyState(), "A new visit."));
  byId("open").addEventListener("click", () => byId("file").click());
  fileInput("file", (visit, name) => replace(adopt(visit), `Opened ${name}.`));
  byId("save").addEventListener("click", () => {
    const { visit, mistakes } = toVisit(state, units);
    download("visit.json", `${JSON.stringify(visit, null, 2)}\n`);
    say(mistakes.size === 0 ? "Saved." : `Saved without what could not be read: ${[...mistakes.keys()].map(labelOf).join("; ")}.`);
  });
  byId("save-report").addEventListener("click", () => {
    if (report !== undefined) download("report.json", `${JSON.stringify(report, null, 2)}\n`);
  });
  byId("print").addEventListener("click", () => window.print());
  byId("send").addEventListener("click", () => void send());
  byId("record-add").addEventListener("click", () => byId("record-file").click());
  fileInput("record-file", (visit, name) => {
    state.record = [...state.record, { readings: (visit.readings ?? {}) as Readings }];
    refresh(true);
    say(`Added ${name} to this machine’s record.`);
  });
  byId("record-clear").addEventListener("click", () => {
    state.record = [];
    refresh(true);
  });
  byId("theme").addEventListener("click", () => {
    const root = document.documentElement;
    const dark = root.dataset["theme"] === "dark" || (root.dataset["theme"] === undefined && matchMedia("(prefers-color-scheme: dark)").matches);
    root.dataset["theme"] = dark ? "light" : "dark";
    draw(byId("diagram"), drawn, units);
  });
  wireStream(
    () => units,
    (visit) => replace(adopt(visit), "The averages of the recording are in the visit."),
  );
  addEventListener("beforeprint", () => draw(byId("diagram"), drawn, units, true));
  addEventListener("afterprint", () => draw(byId("diagram"), drawn, units));
  addEventListener("resize", () => draw(byId("diagram"), drawn, units));
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => draw(byId("diagram"), drawn, units));
}

/** Takes a visit over; its refrigerant takes the library's way of writing it. */
function adopt(visit: Visit): State {
  const next = fromVisit(visit);
  if (next.refrigerant !== "") next.refrigerant = property({ refrigerant: next.refrigerant }).designation;
  return next;
}

async function send(): Promise<void> {
  if (report === undefined) return;
  const text = textReport(state, units, report, new Date());
  try {
    if (typeof navigator.share === "function") {
      await navigator.share({ title: "Rimewise visit report", text });
    } else {
      await navigator.clipboard.writeText(text);
      say("The report is on the clipboard, as text.");
    }
  } catch {
    say("Not sent. Print, or save the report instead.");
  }
}

async function main(): Promise<void> {
  byId("disclaimer").textContent = DISCLAIMER;
  await init();
  byId("version").textContent = version();
  wire();
  refresh(true);
  performance.mark("first-result");
  document.documentElement.dataset["ready"] = "true";
  if (import.meta.env.PROD && "serviceWorker" in navigator) {
    await navigator.serviceWorker.register("./sw.js").catch(() => say("This browser keeps no copy for offline use."));
  }
}

main().catch((error: unknown) => showFault(`The page could not start: ${String(error)}`));
