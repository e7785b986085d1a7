/** The page: what is entered goes in, the answer comes out, once a frame. */
import { property, refrigerants, version, RimewiseError, type Readings } from "rimewise";
import { probe } from "./accepts.js";
import { app, changed, edit, follow, followLater, settle } from "./app.js";
import { showBar, wireBar } from "./bar.js";
import { showCircuit } from "./circuit.js";
import { wireChart } from "./chart.js";
import { diagram } from "./cycle.js";
import { diagramRows, drawDiagram } from "./diagram.js";
import { byId, h } from "./dom.js";
import { wireEntry } from "./entry.js";
import { EXAMPLES } from "./examples.js";
import { FIELDS } from "./fields.js";
import { buildForm, entered, showForm } from "./form.js";
import { restartGuide, wireGuide } from "./guide.js";
import { wireJob } from "./job.js";
import { LANGUAGE, chooseLanguage, type Language } from "./language.js";
import { addSource, type Source } from "./live.js";
import { load } from "./load.js";
import { textReport } from "./plain.js";
import { stopped } from "./row.js";
import { adopt, fromLink, NotOpened, readShared, type Opened } from "./share.js";
import { emptyState, type State } from "./state.js";
import { forgetTab, keepUnits, keepVisit, keptUnits, keptVisit, newId, openVisit, rememberRefrigerant, startBegins, startEnds, takeVisit } from "./store.js";
import { t, translate } from "./text.js";
import { altitudeM, altitudeWrong, type Units } from "./units.js";
import { download, send, wireVisits } from "./visits.js";
import { foldCauses, showAnswer, showVerdict } from "./view.js";
import { goView, isShown, isWide, onView, wireViews } from "./views.js";
import { wireWhatIf } from "./whatif.js";
import "./style.css";

function say(text: string, ...more: (Node | string)[]): void {
  byId("said").replaceChildren(text, ...more);
}

function labelOf(path: string): string {
  return FIELDS.get(path)?.label.toLowerCase() ?? path;
}

function showUnits(): void {
  const { units } = app;
  byId<HTMLSelectElement>("unit-pressure").value = units.pressure;
  byId<HTMLSelectElement>("unit-gauge").value = units.gauge ? "gauge" : "absolute";
  byId<HTMLSelectElement>("unit-altitude").value = units.altitudeUnit;
  byId<HTMLSelectElement>("unit-temperature").value = units.temperature;
  const altitude = byId<HTMLInputElement>("altitude");
  if (document.activeElement !== altitude) altitude.value = units.altitude;
  const pressure = units.gauge
    ? t("altitude_at", { unit: units.pressure, altitude: units.altitude, altitudeUnit: units.altitudeUnit })
    : `${units.pressure} ${t("absolute")}`;
  byId("units-now").textContent = `${pressure}, ${units.temperature === "degC" ? "°C" : "°F"}`;
  const wrong = altitudeWrong(units);
  const plain = units.altitude.trim();
  byId("altitude-note").textContent =
    wrong === undefined
      ? ""
      : wrong === "range"
        ? t("altitude_range")
        : wrong === "thousands"
          ? t("thousands", { one: plain.replace(/[.,]/g, ""), other: String(Number(plain.replace(",", "."))) })
          : t("altitude_none");
  byId("altitude-note").className = wrong === undefined ? "note" : "note wrong";
}

function showFacts(): void {
  const facts = byId("refrigerant-facts");
  facts.textContent = "";
  if (app.state.refrigerant === "") return;
  try {
    const known = property({ refrigerant: app.state.refrigerant });
    const mix = known.composition.length > 1 ? `${known.composition.map((c) => `${c.component} ${c.mass_percent} %`).join(", ")}. ` : "";
    facts.textContent = `${mix}${t("safety_class", { class: known.safety_class ?? t("safety_unknown") })}`;
  } catch (error) {
    if (!(error instanceof RimewiseError)) throw error;
  }
}

function showEntered(): void {
  byId("print-entered").replaceChildren(
    h("h2", {}, t("entered")),
    h("p", {}, `${t("refrigerant")}: ${app.state.refrigerant || t("not_known")}`),
    ...entered().flatMap((group) => [
      h("h3", {}, group.group),
      h("table", {}, h("tbody", {}, ...group.rows.map(([label, text]) => h("tr", {}, h("th", { scope: "row" }, label), h("td", {}, text))))),
    ]),
  );
}

/** Draws the diagram while it is in sight; else it waits until it comes into sight. */
let diagramSeen = false;
let diagramStale = true;

function showDiagram(): void {
  if (!diagramSeen || !diagramStale || app.report === undefined) return;
  diagramStale = false;
  const made = diagram(app.accepted, app.report, stopped());
  const drawn = drawDiagram(made, byId("diagram").clientWidth);
  byId("diagram").replaceChildren(...(drawn === undefined ? [] : [drawn]));
  byId("diagram-rows").replaceChildren(...(made === undefined || drawn === undefined ? [] : diagramRows(made)));
}

function watchDiagram(): void {
  const section = byId("diagram-section");
  new IntersectionObserver((seen) => {
    diagramSeen = seen.some((one) => one.isIntersecting);
    showDiagram();
  }, { rootMargin: "100px" }).observe(section);
  follow(() => {
    section.hidden = app.accepted.system?.refrigerant === undefined || app.accepted.system?.refrigerant === null;
    diagramStale = true;
    showDiagram();
  });
  addEventListener("resize", () => {
    diagramStale = true;
    showDiagram();
  });
  const print = () => {
    settle();
    diagramSeen = true;
    showAll();
  };
  addEventListener("beforeprint", print);
  matchMedia("print").addEventListener("change", (event) => event.matches && print());
}

/** Shows everything that follows the answer, seen or not: for paper. */
function showAll(): void {
  showAnswer();
  showDiagram();
  showEntered();
}

/** Puts a visit before this one, which stays kept; one word takes it back. */
function replace(next: State, text: string): void {
  settle();
  keepNow();
  const from = { id: app.id, state: app.state };
  // Nobody else can hold a new name, so nothing has to be waited for.
  const id = newId();
  show(id, next);
  void takeVisit(id);
  say(text, " ", back(from, t("undo"), t("undone")));
}

/** A word that goes back to another visit, and can itself be taken back: nothing that was entered is lost. */
function back(to: { id: string; state: State }, word: string, text: string): HTMLElement {
  const click = async () => {
    settle();
    keepNow();
    const from = { id: app.id, state: app.state };
    await change(to.id, to.state);
    say(text, " ", back(from, word === t("undo") ? t("redo") : t("undo"), text));
  };
  return h("button", { type: "button", class: "link", id: "undo", click: () => void click() }, word);
}

async function change(id: string, state: State): Promise<void> {
  keepNow();
  show(await takeVisit(id), state);
}

function show(id: string, state: State): void {
  app.id = id;
  app.state = state;
  restartGuide();
  foldCauses();
  changed(true);
  settle();
}

function opened(from: Opened, text: string): void {
  if (from.units !== undefined) app.units = from.units;
  replace(from.state, text);
}

/** Opens what a text holds, or says why not. */
function openText(text: string, words: string): void {
  try {
    opened(readShared(text), words);
  } catch (error) {
    if (!(error instanceof NotOpened)) throw error;
    say(t("not_opened", { why: error.message }));
  }
}

function fileInput(id: string, then: (text: string, name: string) => void): void {
  const input = byId<HTMLInputElement>(id);
  input.addEventListener("change", () => {
    const file = input.files?.[0];
    if (file !== undefined) void file.text().then((text) => then(text, file.name));
    input.value = "";
  });
}

function setUnits(units: Partial<Units>): void {
  app.units = { ...app.units, ...units };
  keepUnits(app.units);
  changed(true);
  settle();
}

function wireUnits(): void {
  const select = (id: string, change: (value: string) => Partial<Units>) => byId(id).addEventListener("change", () => setUnits(change(byId<HTMLSelectElement>(id).value)));
  select("unit-pressure", (value) => ({ pressure: value as Units["pressure"] }));
  select("unit-gauge", (value) => ({ gauge: value === "gauge" }));
  select("unit-temperature", (value) => ({ temperature: value as Units["temperature"] }));
  // The height stays what it is when its unit changes.
  select("unit-altitude", (value) => {
    const unit = value as Units["altitudeUnit"];
    const metres = altitudeM(app.units);
    return { altitudeUnit: unit, altitude: String(Math.round(unit === "ft" ? metres / 0.3048 : metres)) };
  });
  byId("altitude").addEventListener("input", () => {
    app.units = { ...app.units, altitude: byId<HTMLInputElement>("altitude").value.slice(0, 40) };
    keepUnits(app.units);
    changed();
  });
  const language = byId<HTMLSelectElement>("language");
  language.value = LANGUAGE;
  language.addEventListener("change", () => {
    settle();
    chooseLanguage(language.value as Language);
  });
  follow(showUnits);
}

const COMMON = ["R290", "R600a", "R134a", "R404A", "R448A", "R449A", "R452A", "R454C", "R455A", "R410A", "R32", "R22"];

function wireRefrigerant(): void {
  const select = byId<HTMLSelectElement>("refrigerant");
  const all = refrigerants();
  const common = COMMON.filter((name) => all.includes(name));
  const option = (name: string) => h("option", { value: name }, name);
  select.append(...common.map(option), h("hr"), ...all.filter((name) => !common.includes(name)).map(option));
  select.addEventListener("change", () => {
    if (select.value !== "") rememberRefrigerant(select.value);
    edit((state) => (state.refrigerant = select.value));
  });
  follow(showFacts);
}

function wireVisit(): void {
  for (const example of EXAMPLES) {
    const click = () => replace(adopt(example.visit), t("opened_example", { title: example.title }));
    byId("examples").append(h("button", { type: "button", "data-example": example.id, click }, example.title));
  }
  byId("new").addEventListener("click", () => replace(emptyState(), t("new_visit")));
  byId("open").addEventListener("click", () => byId("file").click());
  fileInput("file", (text, name) => openText(text, t("opened", { name })));
  byId("save").addEventListener("click", () => {
    settle();
    download("visit.json", `${JSON.stringify(app.visit, null, 2)}\n`);
    say(app.mistakes.size === 0 ? t("saved") : t("saved_without", { fields: [...app.mistakes.keys()].map(labelOf).join("; ") }));
  });
  byId("save-report").addEventListener("click", () => {
    settle();
    if (app.report !== undefined) download("report.json", `${JSON.stringify(app.report, null, 2)}\n`);
  });
  byId("print").addEventListener("click", () => {
    settle();
    window.print();
  });
  byId("send").addEventListener("click", () => {
    settle();
    void send(t("report_title"), textReport(new Date()), t("sent_clipboard"));
  });
  byId("record-add").addEventListener("click", () => byId("record-file").click());
  fileInput("record-file", (text, name) => {
    try {
      const { state } = readShared(text);
      const visit = state.refrigerant === "" && Object.keys(state.numbers).length === 0 ? {} : (JSON.parse(text) as { visit?: { readings?: Readings }; readings?: Readings });
      edit((now) => (now.record = [...now.record, { readings: ((visit as { visit?: { readings?: Readings } }).visit ?? visit).readings ?? {} }]));
      settle();
      say(t("record_added", { name }));
    } catch (error) {
      if (!(error instanceof NotOpened)) throw error;
      say(t("not_opened", { why: error.message }));
    }
  });
  byId("record-clear").addEventListener("click", () => {
    edit((state) => (state.record = []));
    settle();
  });
  follow(() => {
    const count = app.state.record.length;
    byId("record-count").textContent = count === 0 ? t("record_none") : t("record_some", { count });
    byId("record-clear").hidden = count === 0;
  });
  addEventListener("paste", (event) => {
    if (event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement) return;
    const text = event.clipboardData?.getData("text") ?? "";
    if (text.trim().startsWith("{")) openText(text, t("opened_paste"));
    else if (/#v=[\w-]+$/.test(text.trim())) void openLink(text.trim().slice(text.indexOf("#")));
  });
  addEventListener("dragover", (event) => event.preventDefault());
  addEventListener("drop", (event) => {
    event.preventDefault();
    const file = event.dataTransfer?.files[0];
    if (file !== undefined) void file.text().then((text) => openText(text, t("opened", { name: file.name })));
  });
  addEventListener("hashchange", () => {
    if (location.hash === "#clean") location.reload();
    else void openLink(location.hash);
  });
}

/** Opens the visit that a link holds, and takes it out of the address. */
async function openLink(hash: string): Promise<void> {
  if (!hash.startsWith("#v=")) return;
  history.replaceState(null, "", location.pathname + location.search);
  try {
    const held = await fromLink(hash);
    if (held !== undefined) opened(held, t("opened_link"));
  } catch (error) {
    if (!(error instanceof NotOpened)) throw error;
    say(t("not_opened", { why: error.message }));
  }
}

/** The recordings and what draws them are loaded when they are first asked for. */
let stream: Promise<typeof import("./stream.js")> | undefined;

function openStream(): void {
  if (stream !== undefined) return;
  stream = import("./stream.js");
  void stream.then((loaded) => {
    loaded.wireStream((visit) => replace(adopt(visit), t("stream_used")));
    byId("view-live").dataset["ready"] = "true";
  });
}

function wireTheme(): void {
  byId("theme").addEventListener("click", () => {
    const root = document.documentElement;
    const dark = root.dataset["theme"] === "dark" || (root.dataset["theme"] === undefined && matchMedia("(prefers-color-scheme: dark)").matches);
    root.dataset["theme"] = dark ? "light" : "dark";
    void stream?.then((loaded) => loaded.redrawStream());
  });
}

/** Lets a host of the page add its own sources of live samples. */
function wireHost(): void {
  const host = globalThis as { rimewise?: { addSource(source: Source): void }; rimewiseSources?: Source[] };
  for (const source of host.rimewiseSources ?? []) addSource(source);
  host.rimewise = Object.freeze({ addSource });
}

let keeping: ReturnType<typeof setTimeout> | undefined;

/** Keeps what waits to be kept. */
function keepNow(): void {
  if (keeping === undefined) return;
  clearTimeout(keeping);
  keeping = undefined;
  if (!keepVisit(app.id, app.state)) say(t("full"));
}

function wire(): void {
  // In the order in which they follow the answer: the guide chooses the next step, the bar shows it.
  wireEntry();
  wireGuide();
  wireBar();
  follow(showBar);
  buildForm();
  follow(showVerdict);
  followLater(() => {
    if (isShown("answer")) showAnswer();
  });
  follow(() => {
    if (isShown("machine")) showCircuit();
  });
  watchDiagram();
  wireJob();
  wireWhatIf();
  wireChart();
  wireVisits((kept) => void change(kept.id, kept.state).then(() => goView(isWide() ? "sheet" : "answer", true)));
  wireUnits();
  wireRefrigerant();
  wireVisit();
  wireTheme();
  wireHost();
  // Last: what was entered is kept only once it was answered and drawn, a moment after the last key.
  follow(() => {
    clearTimeout(keeping);
    keeping = setTimeout(keepNow, 150);
  });
  addEventListener("pagehide", keepNow);
  document.addEventListener("visibilitychange", keepNow);
  onView((view) => {
    if (view === "sheet") showForm(false);
    if (view === "machine") showCircuit();
    if (view === "answer") changed();
    if (view === "live") openStream();
  });
  wireViews();
  const menu = byId<HTMLDetailsElement>("menu");
  const open = () => (menu.open = isWide());
  open();
  matchMedia("(min-width: 60rem)").addEventListener("change", open);
}

/** Says once which units were taken from the browser's region, with a way to others. */
function askUnits(): void {
  const click = () => {
    byId<HTMLDetailsElement>("menu").open = true;
    byId<HTMLDetailsElement>("units-box").open = true;
    byId("unit-pressure").focus();
  };
  say(t("units_taken", { units: byId("units-now").textContent ?? "" }), " ", h("button", { type: "button", class: "link", id: "units-change", click }, t("guide_back")));
}

/** Asks whether to open the visit whose last start never came to its end. */
function askStuck(id: string): Promise<boolean> {
  return new Promise((resolve) => {
    const answered = (anyway: boolean) => () => {
      byId("stuck").replaceChildren();
      resolve(anyway);
    };
    byId("verdict-title").textContent = t("no_answer");
    byId("stuck").replaceChildren(
      h("p", {}, t("stuck")),
      h("button", { type: "button", id: "start-clean", click: answered(false) }, t("start_clean")),
      " ",
      h("button", { type: "button", id: "start-anyway", "data-visit": id, click: answered(true) }, t("open_anyway")),
    );
  });
}

async function main(): Promise<void> {
  document.documentElement.lang = LANGUAGE;
  translate(document);
  const stuck = startBegins();
  // A page that hangs never gets here: only its own end is no end of a start.
  addEventListener("pagehide", startEnds);
  await load();
  probe();
  byId("version").textContent = version();
  const kept = keptUnits();
  app.units = kept.units;
  if (location.hash === "#clean") {
    history.replaceState(null, "", location.pathname + location.search);
    forgetTab();
    app.id = await takeVisit(newId());
  } else {
    const first = await openVisit();
    app.id = first.id;
    app.state = first.state;
    if (stuck && keptVisit(first.id) !== undefined && !(await askStuck(first.id))) {
      app.id = await takeVisit(newId());
      app.state = emptyState();
    }
  }
  wire();
  changed(true);
  settle();
  // What was only read has not to be written.
  clearTimeout(keeping);
  keeping = undefined;
  startEnds();
  if (!kept.asked) askUnits();
  keepUnits(app.units);
  performance.mark("first-result");
  document.documentElement.dataset["ready"] = "true";
  await openLink(location.hash);
  if (import.meta.env.PROD && "serviceWorker" in navigator) {
    await navigator.serviceWorker.register("./sw.js").catch(() => say(t("no_offline")));
  }
}

main().catch((error: unknown) => {
  startEnds();
  byId("verdict-title").textContent = t("no_answer");
  byId("verdict-text").textContent = t("could_not_start", { why: String(error) });
  byId("strip").textContent = t("no_answer");
});
