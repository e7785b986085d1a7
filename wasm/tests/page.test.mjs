// The built page in a browser: a visit from start to finish, on a wide screen and on a phone.
import assert from "node:assert/strict";
import { readFileSync, mkdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { after, before, beforeEach, describe, it } from "node:test";
import { diagnose, init } from "rimewise";
import { serve } from "./serve.mjs";
import { WASM, browser, example, exampleNames, rust, temporary } from "./tools.mjs";

await init();
const SHOTS = join(WASM, "page/screenshots");

let server;
let context;
let page;
const faults = [];

before(async () => {
  server = await serve(join(WASM, "page/dist"));
  // Ireland reads bar and degC, with a decimal point.
  context = await browser({ viewport: { width: 1280, height: 900 }, locale: "en-IE" });
});
after(async () => {
  await context?.close();
  await server?.stop();
});
beforeEach(async () => {
  await page?.close();
  page = await context.newPage();
  page.on("console", (message) => ["error", "warning"].includes(message.type()) && faults.push(message.text()));
  page.on("pageerror", (error) => faults.push(String(error)));
  page.on("request", (request) => {
    if (!request.url().startsWith(server.url) && !request.url().startsWith("blob:")) faults.push(`asked ${request.url()}`);
  });
  faults.length = 0;
  await page.addInitScript(() => {
    const make = URL.createObjectURL;
    URL.createObjectURL = (blob) => make.call(URL, (window.written = blob));
  });
  await page.goto(server.url);
  await page.waitForSelector("html[data-ready]");
  await page.evaluate(() => localStorage.clear());
  await page.reload();
  await page.waitForSelector("html[data-ready]");
});

const field = (path) => `#f-${path.replaceAll(".", "-")}`;
/** Opens an example; on a phone it lies behind the head's menu. */
const open = async (name) => {
  // A width that has just changed opens or closes that menu by itself.
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  await page.evaluate(() => (document.querySelector("#menu").open = true));
  await page.click(`[data-example="${name}"]`);
  await page.waitForFunction(() => document.getElementById("undo") !== null);
};

/** Brings a part of the answer into sight: what is not seen is not drawn. */
async function see(id) {
  await page.evaluate((target) => document.querySelector(target).scrollIntoView(), id);
}

/** Opens the view of recordings, which is loaded when it is first asked for. */
async function openLive() {
  await page.click("#tab-live");
  await page.waitForSelector("#view-live[data-ready]");
}

/** The file that a button saves, as it lies in the downloads. */
async function downloaded(button) {
  const [download] = await Promise.all([page.waitForEvent("download"), page.click(button)]);
  return JSON.parse(readFileSync(await download.path(), "utf8"));
}

/** What a button writes into its file; browsers hold back a page that downloads dozens of files in seconds. */
async function saved(button) {
  await page.evaluate(() => (window.written = undefined));
  await page.click(button);
  return JSON.parse(await page.evaluate(() => window.written.text()));
}

async function setUnits({ pressure, gauge, temperature, altitude, altitudeUnit }) {
  await page.evaluate(() => (document.querySelector(".units-box").open = true));
  if (altitudeUnit) await page.selectOption("#unit-altitude", altitudeUnit);
  if (altitude !== undefined) await page.fill("#altitude", altitude);
  if (pressure) await page.selectOption("#unit-pressure", pressure);
  if (gauge) await page.selectOption("#unit-gauge", gauge);
  if (temperature) await page.selectOption("#unit-temperature", temperature);
}

describe("the examples", () => {
  for (const name of exampleNames) {
    it(`${name}: the page's report is the Rust example's`, async () => {
      await open(name);
      // The browser's own downloads once; it holds back a page that saves a dozen files in a few seconds.
      const file = name === exampleNames[0] ? downloaded : saved;
      const shown = await file("#save-report");
      const [line] = rust("service_call", `${JSON.stringify(JSON.parse(example(name)))}\n`, "--json");
      assert.deepEqual(shown, JSON.parse(line));
      assert.deepEqual(await file("#save"), JSON.parse(example(name)), "the visit saved is the visit opened");
      assert.deepEqual(faults, []);
    });
  }

  it("say what they are meant to show", async () => {
    const leading = {};
    for (const name of exampleNames) {
      await open(name);
      leading[name] = (await saved("#save-report")).leading;
    }
    assert.deepEqual(leading, {
      dirty_condenser: "condenser_airflow",
      flooding_capillary_freezer: "flood_back",
      freezer_in_pull_down: "none",
      short_walk_in_cooler: "undercharge",
      tired_compressor: "weak_compressor",
    });
  });

  it("show their figures as the report has them", async () => {
    await open("short_walk_in_cooler");
    const report = diagnose(JSON.parse(example("short_walk_in_cooler")));
    const shown = await page.textContent('[data-figure="superheat_k"] td');
    const minus = (text) => text.replace("-", "−");
    assert.equal(shown, `${minus(report.cycle.superheat_k.value.toFixed(1))} ± ${report.cycle.superheat_k.u.toFixed(1)}`);
    const names = await page.$$eval("#causes [data-cause]", (all) => all.map((one) => one.dataset.cause));
    assert.deepEqual(names, report.causes.map((entry) => entry.cause));
    assert.equal(await page.locator("#next li").count(), report.next.length);
    assert.equal(await page.locator("#cautions li").count(), report.cautions.length);
    assert.ok(report.cautions.length > 0);
    await see("#diagram-section");
    await page.waitForSelector("#diagram svg .measured");
    assert.ok((await page.locator("#diagram-rows tr").allTextContents()).some((row) => /kJ\/kg.*kJ\/kg/.test(row)));
  });

  it("can be taken back", async () => {
    await page.fill(field("readings.space_c"), "-17");
    await open("dirty_condenser");
    await page.click("#undo");
    await page.waitForFunction(() => document.getElementById("said").textContent.startsWith("Back to what was there"));
    assert.equal(await page.inputValue(field("readings.space_c")), "-17");
    assert.equal(await page.inputValue(field("readings.ambient_c")), "");
  });
});

describe("typing", () => {
  it("changes the answer with every reading", async () => {
    await page.selectOption("#refrigerant", "R290");
    await setUnits({ pressure: "kPa", gauge: "absolute" });
    const steps = {
      "readings.suction_pressure_kpa": "210",
      "readings.evaporator_outlet_c": "-21.5",
      "readings.suction_line_c": "-4",
      "readings.discharge_pressure_kpa": "1320",
      "readings.liquid_line_c": "33.5",
      "readings.discharge_line_c": "68",
      "readings.space_c": "-17.5",
      "readings.ambient_c": "27",
    };
    const answers = [JSON.stringify(await saved("#save-report"))];
    const visit = { system: { refrigerant: "R290" }, readings: {} };
    for (const [path, text] of Object.entries(steps)) {
      await page.fill(field(path), text);
      const report = await saved("#save-report");
      visit.readings[path.split(".")[1]] = Number(text);
      const asked = await saved("#save");
      assert.deepEqual(report, diagnose(asked), path);
      answers.push(JSON.stringify(report));
    }
    assert.equal(new Set(answers).size, answers.length, "every reading changed the answer");
    assert.notEqual(await page.textContent('[data-figure="superheat_k"] td'), "–");
    assert.deepEqual(faults, []);
  });

  it("explains wrong input beside its field, and answers the rest", async () => {
    await open("short_walk_in_cooler");
    await page.fill(field("readings.space_c"), "cold");
    assert.equal(await page.textContent('[data-note="readings.space_c"]'), "not a number");
    assert.equal(await page.getAttribute(field("readings.space_c"), "aria-invalid"), "true");
    assert.match(await page.textContent("#left-out"), /air of the cooled space/);
    assert.equal(await page.isVisible("#causes"), true);
    await page.fill(field("readings.space_c"), "400");
    assert.match(await page.textContent('[data-note="readings.space_c"]'), /\d/);
    await page.fill(field("readings.space_c"), "3,5");
    assert.equal(await page.textContent('[data-note="readings.space_c"]'), "");
    assert.equal((await saved("#save")).readings.space_c, 3.5);
  });

  it("takes open windings and three line voltages", async () => {
    await page.click("#group-windings > summary");
    await page.fill(field("readings.winding_run_ohm"), "open");
    await page.click("#group-phases > summary");
    await page.fill(field("readings.line_voltages_v.0"), "400");
    await page.fill(field("readings.line_voltages_v.1"), "401");
    assert.match(await page.textContent('[data-note="readings.line_voltages_v.2"]'), /three/);
    await page.fill(field("readings.line_voltages_v.2"), "380");
    const visit = await saved("#save");
    assert.equal(visit.readings.winding_run_ohm, "open");
    assert.deepEqual(visit.readings.line_voltages_v, [400, 401, 380]);
    assert.ok((await page.locator("#electrical li").count()) > 0);
  });
});

describe("units", () => {
  it("keep the meaning of what was typed", async () => {
    await page.selectOption("#refrigerant", "R404A");
    await setUnits({ pressure: "psi", gauge: "gauge", temperature: "degF", altitude: "0" });
    await page.fill(field("readings.suction_pressure_kpa"), "14");
    await page.fill(field("readings.evaporator_outlet_c"), "-15.5");
    const first = await saved("#save");
    // 14 psig and 14.696 psi of air: 197.85 kPa; -15.5 degF: -26.39 degC.
    assert.ok(Math.abs(first.readings.suction_pressure_kpa - 197.852) < 0.01);
    assert.ok(Math.abs(first.readings.evaporator_outlet_c + 26.3889) < 0.001);
    const superheat = await page.textContent('[data-figure="superheat_k"] td');
    await setUnits({ pressure: "bar", gauge: "absolute", temperature: "degC" });
    assert.equal(await page.inputValue(field("readings.suction_pressure_kpa")), "1.98");
    assert.equal(await page.inputValue(field("readings.evaporator_outlet_c")), "−26.4");
    assert.deepEqual(await saved("#save"), first, "only what is shown changed");
    await setUnits({ pressure: "psi", gauge: "gauge", temperature: "degF" });
    assert.equal(await page.inputValue(field("readings.suction_pressure_kpa")), "14");
    assert.equal(await page.inputValue(field("readings.evaporator_outlet_c")), "-15.5");
    assert.equal(await page.textContent('[data-figure="superheat_k"] td'), superheat);
  });

  it("read a gauge at its altitude, and leave absolute pressures alone", async () => {
    await page.selectOption("#refrigerant", "R404A");
    await setUnits({ pressure: "psi", gauge: "gauge", altitude: "0" });
    await page.fill(field("readings.suction_pressure_kpa"), "14");
    const low = (await saved("#save")).readings.suction_pressure_kpa;
    await setUnits({ altitude: "1600" });
    const high = (await saved("#save")).readings.suction_pressure_kpa;
    assert.equal(await page.inputValue(field("readings.suction_pressure_kpa")), "14", "the gauge still reads what it read");
    // ICAO Doc 7488: 101,325 Pa at sea level, 83,523 Pa at 1,600 m (from memory, 5 digits).
    assert.ok(Math.abs(low - high - (101.325 - 83.523)) < 0.03, `${low} ${high}`);
    await setUnits({ altitudeUnit: "ft" });
    assert.equal(await page.inputValue("#altitude"), "5249");
    await setUnits({ gauge: "absolute" });
    await page.fill(field("readings.discharge_pressure_kpa"), "250");
    const absolute = (await saved("#save")).readings.discharge_pressure_kpa;
    await setUnits({ altitude: "0" });
    assert.equal((await saved("#save")).readings.discharge_pressure_kpa, absolute);
  });
});

describe("keeping", () => {
  it("saves, reloads offline, and loads", async () => {
    await open("tired_compressor");
    const visit = await saved("#save");
    const report = await saved("#save-report");
    await page.waitForFunction(() => navigator.serviceWorker.ready.then(() => navigator.serviceWorker.controller !== null));
    await context.setOffline(true);
    await server.stop();
    try {
      await page.reload();
      await page.waitForSelector("html[data-ready]");
      assert.deepEqual(await saved("#save-report"), report, "kept on the device, answered offline");
      await page.click("#new");
      assert.equal(await page.textContent("#verdict-title"), "Nothing measured yet");
      await page.setInputFiles("#file", { name: "again.json", mimeType: "application/json", buffer: Buffer.from(JSON.stringify(visit)) });
      await page.waitForFunction(() => document.getElementById("said").textContent.startsWith("Opened again.json"));
      assert.deepEqual(await saved("#save-report"), report);
    } finally {
      await context.setOffline(false);
      server = await serve(join(WASM, "page/dist"));
    }
  });

  it("does not open what it cannot read, and keeps what was there", async () => {
    await page.fill(field("readings.space_c"), "-17");
    for (const [text, why] of [
      ["not json", /Not opened: it is no JSON/],
      ['{"readings":{"spice_c":1}}', /Not opened: readings\.spice_c/],
      ["[1,2]", /Not opened/],
    ]) {
      await page.setInputFiles("#file", { name: "x.json", mimeType: "application/json", buffer: Buffer.from(text) });
      await page.waitForFunction(() => document.getElementById("said").textContent.startsWith("Not opened"));
      assert.match(await page.textContent("#said"), why);
      assert.equal(await page.inputValue(field("readings.space_c")), "-17");
      await page.evaluate(() => (document.getElementById("said").textContent = ""));
    }
  });

  it("adds an earlier visit to the machine's record", async () => {
    await open("tired_compressor");
    const before = await saved("#save-report");
    await page.setInputFiles("#record-file", {
      name: "good.json",
      mimeType: "application/json",
      buffer: Buffer.from(example("freezer_in_pull_down")),
    });
    await page.waitForFunction(() => document.getElementById("said").textContent.startsWith("Added good.json"));
    const visit = await saved("#save");
    assert.equal(visit.system.record.length, 1);
    assert.deepEqual(await saved("#save-report"), diagnose(visit));
    await page.click("#record-clear");
    assert.deepEqual(await saved("#save-report"), before);
  });
});

describe("a recording", () => {
  const streams = join(WASM, "../core/examples/data");

  for (const name of ["liquid_on_start", "locked_rotor", "pump_down"]) {
    it(`${name}: the page sees the events that the Rust example sees`, async () => {
      await openLive();
      await page.click(`[data-stream="${name}"]`);
      await page.waitForSelector("#stream-shown:not([hidden])");
      await page.click("#stream-all");
      const seen = await page.$$eval("#stream-events [data-event]", (all) => all.map((one) => one.dataset.event));
      const told = rust("watch", readFileSync(join(streams, `${name}.csv`), "utf8"), "--json")
        .map((line) => JSON.parse(line))
        .filter((line) => "event" in line)
        .map((line) => line.event);
      assert.deepEqual(seen, told);
      assert.ok(seen.length > 0);
      assert.equal(await page.locator("#stream-plots canvas").count(), 3);
      assert.deepEqual(faults, []);
    });
  }

  it("plays, and gives its averages to the visit", async () => {
    await openLive();
    await page.click('[data-stream="liquid_on_start"]');
    await page.waitForSelector("#stream-shown:not([hidden])");
    await page.click("#stream-play");
    await page.waitForFunction(() => Number(document.getElementById("stream-time").textContent) > 20);
    await page.click("#stream-play");
    const paused = await page.textContent("#stream-time");
    await page.waitForTimeout(200);
    assert.equal(await page.textContent("#stream-time"), paused);
    await page.click("#stream-all");
    await page.click("#stream-use");
    const visit = await saved("#save");
    assert.equal(visit.system.refrigerant, "R290");
    assert.ok(visit.readings.suction_pressure_kpa > 0);
    assert.deepEqual(await saved("#save-report"), diagnose(visit));
  });

  it("says which line cannot be read", async () => {
    await openLive();
    for (const [text, why] of [
      ["time_s,space_c\n0,cold\n", /line 2: space_c: cold is not a number/],
      ["space_c\n3\n", /no column time_s/],
      ["", /holds no samples/],
    ]) {
      await page.setInputFiles("#stream-file", { name: "x.csv", mimeType: "text/csv", buffer: Buffer.from(text) });
      await page.waitForFunction(() => document.getElementById("stream-said").textContent !== "");
      assert.match(await page.textContent("#stream-said"), why);
      await page.evaluate(() => (document.getElementById("stream-said").textContent = ""));
    }
  });
});

describe("printing", () => {
  it("shows the report and nothing to press", async () => {
    await open("dirty_condenser");
    await page.emulateMedia({ media: "print" });
    for (const hidden of ["#form", "#new", "#examples", "#strip"]) assert.equal(await page.isVisible(hidden), false, hidden);
    for (const shown of ["#verdict-title", "#print-entered", "#figures-table", "#diagram svg", "#causes", "#cautions"]) {
      assert.equal(await page.isVisible(shown), true, shown);
    }
    assert.match(await page.textContent("#print-entered"), /Discharge pressure/);
    await page.emulateMedia({ media: "screen" });
    const pdf = await page.pdf({ format: "A4" });
    assert.ok(pdf.length > 10_000);
  });

  it("sends the same words as text", async () => {
    await context.grantPermissions(["clipboard-read", "clipboard-write"], { origin: new URL(server.url).origin });
    await open("dirty_condenser");
    await page.evaluate(() => (navigator.share = undefined));
    await page.click("#send");
    await page.waitForFunction(() => document.getElementById("said").textContent.includes("clipboard"));
    const text = await page.evaluate(() => navigator.clipboard.readText());
    assert.match(text, new RegExp((await page.textContent("#verdict-title")).replace(/[.*+?^${}()|[\]\\]/g, "\\$&")));
    assert.match(text, /Cautions/);
    assert.match(text, /not a proof/);
  });
});

describe("people", () => {
  it("works by keyboard alone", async () => {
    const focus = () => page.evaluate(() => document.activeElement.id || document.activeElement.dataset.example || document.activeElement.name);
    const tabTo = async (wanted) => {
      for (let n = 0; n < 120; n++) {
        await page.keyboard.press("Tab");
        if ((await focus()) === wanted) return;
      }
      assert.fail(`Tab never reaches ${wanted}`);
    };
    await page.focus("body");
    await page.keyboard.press("Tab");
    assert.equal(await page.evaluate(() => document.activeElement.className), "skip");
    await tabTo("new");
    await tabTo("tired_compressor");
    await page.keyboard.press("Enter");
    assert.match(await page.textContent("#said"), /Tired compressor/);
    await tabTo("refrigerant");
    await page.keyboard.type("R134a");
    assert.match((await saved("#save")).system.refrigerant, /R134a/i);
    await tabTo("f-readings-suction_pressure_kpa");
    await page.keyboard.press("Control+A");
    await page.keyboard.type("0.9");
    await page.keyboard.press("Enter");
    assert.equal(await focus(), "f-readings-discharge_pressure_kpa");
    const visit = await saved("#save");
    assert.ok(Math.abs(visit.readings.suction_pressure_kpa - 191.325) < 0.01, String(visit.readings.suction_pressure_kpa));
    // A choice is a group of radio buttons: arrows move in it.
    await page.focus("#f-system-metering");
    await page.keyboard.press("ArrowDown");
    assert.notEqual((await saved("#save")).system.metering, visit.system.metering);
    // The focus can be seen.
    await page.keyboard.press("Tab");
    const outline = await page.evaluate(() => {
      const at = document.activeElement;
      const seen = at.matches(".option input") ? at.nextElementSibling : at;
      return getComputedStyle(seen).outlineStyle;
    });
    assert.equal(outline, "solid");
    assert.deepEqual(faults, []);
  });

  it("has targets for gloves and no sideways scrolling on a phone", async () => {
    await page.setViewportSize({ width: 390, height: 844 });
    await open("short_walk_in_cooler");
    const small = await page.$$eval("button:not(.link), select, #form input[type=text], summary", (all) =>
      all.filter((one) => one.offsetParent !== null && one.getBoundingClientRect().height < 44).map((one) => one.id || one.textContent),
    );
    assert.deepEqual(small, []);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    assert.ok(wide <= 0, `${wide} px too wide`);
    await page.setViewportSize({ width: 1280, height: 900 });
  });
});

describe("pictures", () => {
  const shots = [
    ["phone-verdict", 390, 844, "light", "flooding_capillary_freezer", "answer", "#verdict"],
    ["phone-entry", 390, 844, "light", "flooding_capillary_freezer", "sheet", "#group-pressures"],
    ["phone-guide", 390, 844, "light", "", "guide", ""],
    ["phone-machine", 390, 844, "light", "flooding_capillary_freezer", "machine", "#view-machine"],
    ["desktop", 1060, 740, "light", "dirty_condenser", "", ""],
    ["desktop-dark", 1060, 740, "dark", "tired_compressor", "", "#diagram-section"],
  ];
  for (const [name, width, height, scheme, from, view, target] of shots) {
    it(name, async () => {
      const folder = process.env.RIMEWISE_WRITE ? SHOTS : temporary("shots");
      mkdirSync(folder, { recursive: true });
      await page.emulateMedia({ colorScheme: scheme });
      await page.setViewportSize({ width, height });
      if (from) await open(from);
      await page.evaluate((wide) => (document.querySelector("#menu").open = wide), width >= 960);
      if (view) await page.click(`#tab-${view}`);
      if (view === "guide") {
        for (const pick of ["not_cold", "walk_in_cooler", "R448A"]) await page.click(`[data-pick="${pick}"]`);
        await page.fill("#g-readings-suction_pressure_kpa", "52 psig");
        await page.fill("#g-readings-suction_line_c", "44 F");
      }
      await page.evaluate(() => (document.getElementById("said").textContent = ""));
      if (target) await page.evaluate((id) => document.querySelector(id).scrollIntoView(), target);
      else await page.evaluate(() => scrollTo(0, 0));
      const path = join(folder, `${name}.png`);
      await page.screenshot({ path });
      assert.ok(statSync(path).size < 150_000, `${statSync(path).size} bytes`);
      assert.ok(statSync(join(SHOTS, `${name}.png`)).size < 150_000, "kept in the repository");
      await page.setViewportSize({ width: 1280, height: 900 });
      assert.deepEqual(faults, []);
    });
  }
});

describe("time", () => {
  it("to the first result is reported", async (t) => {
    const cold = await browser({ viewport: { width: 390, height: 844 } });
    const first = await cold.newPage();
    await first.goto(server.url);
    await first.waitForSelector("html[data-ready]");
    const ms = await first.evaluate(() => performance.getEntriesByName("first-result")[0].startTime);
    await cold.close();
    t.diagnostic(`first result ${Math.round(ms)} ms after navigation, cold cache, on this machine`);
    assert.ok(ms > 0);
  });
});
