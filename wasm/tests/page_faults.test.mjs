// Faults that the page once had, each with what brought it about.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { after, before, describe, it } from "node:test";
import { serve } from "./serve.mjs";
import { ROOT, browser } from "./tools.mjs";
import { DIST, example, field, openPage, ready, saved, shown } from "./page_tools.mjs";

let at;
before(async () => (at = await openPage()));
after(() => at?.close());

const bar = { pressure: "bar", gauge: true, temperature: "degC", altitude: "0", altitudeUnit: "m" };
const kept = (state, units = bar) => ({
  "rimewise.visit.old": JSON.stringify({ saved: 1, state }),
  "rimewise.units": JSON.stringify(units),
});

describe("a refused pressure", () => {
  const readings = { discharge_pressure_kpa: "13", liquid_line_c: "33.5" };

  async function enter(page) {
    await page.selectOption("#refrigerant", "R290");
    await page.fill(field("readings.suction_pressure_kpa"), "1.1");
    for (const [name, text] of Object.entries(readings)) await page.fill(field(`readings.${name}`), text);
  }

  it("by the sign key neither hangs the page nor its next start", { timeout: 60_000 }, async () => {
    const page = await at.fresh();
    await enter(page);
    await page.evaluate(() => document.querySelector("#diagram-section").scrollIntoView());
    await page.waitForSelector("#diagram svg");
    await page.click(`[data-path="readings.suction_pressure_kpa"] .key`);
    await shown(page);
    assert.match(await page.textContent('[data-note="readings.suction_pressure_kpa"]'), /bar/);
    await page.evaluate(() => document.querySelector("#diagram-section").scrollIntoView());
    await shown(page);
    await page.reload();
    await ready(page);
    assert.equal(await page.inputValue(field("readings.suction_pressure_kpa")), "-1.1");
    assert.deepEqual(at.faults, []);
  });

  it("in psig neither", { timeout: 60_000 }, async () => {
    const page = await at.fresh({ storage: { "rimewise.units": JSON.stringify({ ...bar, pressure: "psi" }) } });
    await enter(page);
    await page.fill(field("readings.suction_pressure_kpa"), "-15");
    await shown(page);
    assert.match(await page.textContent('[data-note="readings.suction_pressure_kpa"]'), /between .*(psig|inHg)/);
    assert.doesNotMatch(await page.textContent('[data-note="readings.suction_pressure_kpa"]'), /kPa/, "limits stand in one's own units");
    await page.evaluate(() => document.querySelector("#diagram-section").scrollIntoView());
    await shown(page);
    assert.deepEqual(at.faults, []);
  });

  it("says its limits on one's own scale in Spanish too", async () => {
    const mexico = await openPage({ locale: "es-MX" });
    try {
      const page = await mexico.fresh({ storage: { "rimewise.units": JSON.stringify({ ...bar, pressure: "psi" }) } });
      await enter(page);
      await page.fill(field("readings.suction_pressure_kpa"), "9000");
      await shown(page);
      const note = await page.textContent('[data-note="readings.suction_pressure_kpa"]');
      assert.match(note, /entre .*(psi|inHg)/);
      assert.doesNotMatch(note, /kPa|absolut/);
      // The library's limit of 20,000 kPa absolute is 2,886 psi above one atmosphere (1 psi = 6.894757 kPa).
      await page.selectOption("#refrigerant", "");
      await shown(page);
      assert.match((await page.textContent('[data-note="readings.suction_pressure_kpa"]')).replace(/[.,\s]/g, ""), /2886/);
      assert.deepEqual(mexico.faults, []);
    } finally {
      await mexico.close();
    }
  });
});

describe("what was kept in another shape", () => {
  const shapes = {
    "numbers that are null": { "rimewise.visit": '{"numbers":null}' },
    "a visit that is a list": { "rimewise.visit": "[1,2]" },
    "no JSON": { "rimewise.visit": "{" },
    "an altitude that is no text": { "rimewise.units": '{"altitude":7,"pressure":"atm"}' },
    "units that are null": { "rimewise.units": "null" },
    "a visit without a state": { "rimewise.visit.x": '{"saved":"never"}' },
    "entries of another shape": kept({ refrigerant: 290, numbers: { "readings.space_c": 3, "readings.ambient_c": { text: "27", scale: { of: "temperature", unit: "K" } }, nonsense: {} }, choices: { "system.duty": "oven" }, many: { complaint: "not_cold" }, record: [{ readings: { spice_c: 1 } }, 3], about: [], before: { readings: { space_c: "x" } } }),
  };
  for (const [name, storage] of Object.entries(shapes)) {
    it(`${name}: the page starts`, async () => {
      const page = await at.fresh({ storage });
      assert.equal(await page.textContent("#verdict-title"), "Nothing measured yet");
      assert.deepEqual(at.faults, []);
    });
  }

  it("loses only the entries that cannot be read", async () => {
    const page = await at.fresh({
      storage: kept({ refrigerant: "R290", numbers: { "readings.space_c": { text: "-17", scale: { of: "temperature", unit: "degC" } }, "readings.ambient_c": { text: 27 } } }),
    });
    assert.equal(await page.inputValue(field("readings.space_c")), "-17");
    assert.equal(await page.inputValue(field("readings.ambient_c")), "");
    assert.equal(await page.inputValue("#refrigerant"), "R290");
  });

  it("can always be left for a clean page", async () => {
    const page = await at.fresh({ storage: kept({ numbers: { "readings.space_c": { text: "-17", scale: { of: "temperature", unit: "degC" } } } }) });
    assert.equal(await page.inputValue(field("readings.space_c")), "-17");
    await page.click('a[href="./#clean"]');
    await page.waitForFunction(() => document.querySelector("html[data-ready]") && document.querySelector("#f-readings-space_c").value === "");
    // A start that never came to its end offers the same.
    await page.fill(field("readings.space_c"), "4");
    await shown(page);
    await page.addInitScript(() => sessionStorage.setItem("rimewise.starting", "true"));
    await page.reload();
    await page.click("#start-clean");
    await ready(page);
    assert.equal(await page.inputValue(field("readings.space_c")), "");
  });
});

describe("a thousands separator", () => {
  it("never changes a figure in silence", async () => {
    const page = await at.fresh();
    await page.evaluate(() => (document.querySelector("#units-box").open = true));
    await page.fill("#altitude", "1,500");
    await shown(page);
    assert.match(await page.textContent("#altitude-note"), /1500 or 1\.5/);
    await page.fill("#altitude", "1500");
    await page.evaluate(() => (document.querySelector("#group-windings").open = true));
    for (const [typed, value] of [["1,000", undefined], ["1000", 1000], ["1 000", 1000], ["1,000.5", 1000.5], ["1.000,5", 1000.5], ["4,5", 4.5], ["0,125", 0.125], ["1,5,0", undefined], ["1,000,000", undefined]]) {
      await page.fill(field("readings.winding_to_frame_megohm"), typed);
      const visit = await saved(page, "#save");
      const read = visit.readings?.winding_to_frame_megohm;
      if (typed === "1,000,000") assert.equal(read, 1_000_000);
      else assert.equal(read, value, typed);
    }
    await page.fill(field("readings.winding_to_frame_megohm"), "1,000");
    await shown(page);
    assert.match(await page.textContent('[data-note="readings.winding_to_frame_megohm"]'), /write 1000 or 1/);
  });

  it("is asked for both ways where a comma is the decimal sign", async () => {
    const german = await openPage({ locale: "de-DE" });
    try {
      const page = await german.fresh();
      await page.fill(field("readings.power_w"), "1.500");
      assert.equal((await saved(page, "#save")).readings?.power_w, undefined);
      await page.fill(field("readings.power_w"), "1.5");
      assert.equal((await saved(page, "#save")).readings.power_w, 1.5);
      await page.fill(field("readings.power_w"), "1500,5");
      assert.equal((await saved(page, "#save")).readings.power_w, 1500.5);
    } finally {
      await german.close();
    }
  });
});

describe("pressure ticks", () => {
  for (const [pressure, gauge] of [["psi", true], ["psi", false], ["kPa", true], ["kPa", false], ["bar", true], ["MPa", true]]) {
    it(`have numbers in ${pressure} ${gauge ? "gauge" : "absolute"}`, async () => {
      const page = await at.fresh({ storage: { "rimewise.units": JSON.stringify({ ...bar, pressure, gauge }) } });
      await example(page, "dirty_condenser");
      await page.evaluate(() => document.querySelector("#diagram-section").scrollIntoView());
      await page.waitForSelector("#diagram .measured");
      const ticks = await page.$$eval("#diagram .tick[text-anchor=end]", (all) => all.map((one) => Number(one.textContent.replace("−", "-"))));
      assert.ok(ticks.length >= 4, `${ticks}`);
      assert.ok(ticks.every(Number.isFinite), `${ticks}`);
      assert.equal(new Set(ticks).size, ticks.length, `${ticks}`);
    });
  }
});

describe("an open recording", () => {
  async function recording(page, text, name = "x.csv") {
    await page.click("#tab-live");
    await page.waitForSelector("#view-live[data-ready]");
    await page.evaluate(() => (document.getElementById("stream-said").textContent = ""));
    await page.setInputFiles("#stream-file", { name, mimeType: "text/csv", buffer: Buffer.from(text) });
  }
  const said = (page) => page.waitForFunction(() => document.getElementById("stream-said").textContent).then((value) => value.jsonValue());
  const EXAMPLE = readFileSync(join(ROOT, "core/examples/data/liquid_on_start.csv"), "utf8");

  it("follows units and theme", async () => {
    const page = await at.fresh();
    await recording(page, EXAMPLE);
    await said(page);
    await page.click("#stream-all");
    await page.waitForFunction(() => document.querySelectorAll("#stream-events li").length > 2);
    const before = await page.textContent("#stream-events");
    const picture = () => page.evaluate(() => document.querySelector("#stream-plots canvas").toDataURL());
    const light = await picture();
    await page.evaluate(() => (document.querySelector("#units-box").open = true));
    await page.selectOption("#unit-pressure", "psi");
    await shown(page);
    const psi = await page.textContent("#stream-events");
    assert.match(psi, /psig/);
    assert.notEqual(psi, before);
    const shownPsi = await picture();
    assert.notEqual(shownPsi, light);
    await page.click("#theme");
    await shown(page);
    assert.notEqual(await picture(), shownPsi);
    assert.doesNotMatch(psi, /_|kpa/, "words, not the names of fields");
    assert.deepEqual(at.faults, []);
  });

  it("may have semicolons, quotes and decimal commas", async () => {
    const page = await at.fresh();
    await recording(page, 'time_s;space_c;"suction_pressure_kpa"\r\n0;"3,5";210,5\r\n2;"3,4";211\r\n');
    assert.match(await said(page), /2 samples/);
    await page.click("#stream-all");
    assert.equal(await page.textContent("#stream-time"), "2");
  });

  it("may have names and units of its own, which are asked for", async () => {
    const page = await at.fresh();
    await recording(page, "Elapsed (min),Suction pressure (psig),Box temp °F,Remark\n0,10,5,begin\n1,11,4,\n");
    await page.waitForSelector("#stream-map:not([hidden])");
    const chosen = await page.$$eval("#stream-columns select", (all) => all.map((one) => one.selectedOptions[0].textContent));
    assert.deepEqual(chosen, ["time, min", "Suction pressure, psig", "Air of the cooled space, °F", "leave out"]);
    await page.click("#stream-map-use");
    assert.match(await said(page), /2 samples/);
    await page.click("#stream-all");
    assert.equal(await page.textContent("#stream-time"), "60");
  });

  it("is refused where its clock runs backwards, where a quote stays open, and says the line", async () => {
    const page = await at.fresh();
    await recording(page, "time_s,space_c\n0,3\n4,3\n2,3\n");
    assert.match(await said(page), /line 4: the clock runs backwards, from 4 to 2 s/);
    await recording(page, 'time_s,space_c\n0,3\n4,"3\n');
    assert.match(await said(page), /line 3: a quotation mark/);
  });
});

describe("a stopped machine", () => {
  it("is not held against one that runs", async () => {
    const page = await at.fresh();
    await example(page, "dirty_condenser");
    assert.ok((await page.locator("#figures td.off").count()) > 0);
    await page.click(`${field("readings.running")}-1 + span, label:has(${field("readings.running")}-1)`);
    await shown(page);
    assert.match(await page.textContent("#figures-none"), /stopped/);
    const should = await page.$$eval("#figures tr td:nth-child(3)", (all) => all.map((one) => one.textContent));
    assert.deepEqual(should.filter((text) => text !== "–"), []);
    assert.deepEqual((await page.$$eval("#form .expect", (all) => all.filter((one) => one.checkVisibility({ contentVisibilityAuto: false })).map((one) => one.textContent))).filter((text) => text !== ""), []);
  });
});

describe("several visits", () => {
  it("survive New and Undo, the second one too", async () => {
    const page = await at.fresh();
    const space = field("readings.space_c");
    await page.fill(space, "-17");
    await page.click("#new");
    await page.waitForFunction(() => document.querySelector("#f-readings-space_c").value === "");
    await page.fill(space, "4");
    await shown(page);
    await page.click("#undo");
    await page.waitForFunction(() => document.querySelector("#f-readings-space_c").value === "-17");
    await page.click("#undo");
    await page.waitForFunction(() => document.querySelector("#f-readings-space_c").value === "4");
    await page.click("#tab-visits");
    await page.waitForFunction(() => document.querySelectorAll("#visits-list li").length === 1);
  });

  it("in two tabs never write over each other", async () => {
    const first = await at.fresh();
    await first.fill(field("readings.space_c"), "-17");
    await shown(first);
    const second = await at.another();
    assert.equal(await second.inputValue(field("readings.space_c")), "");
    await second.fill(field("readings.space_c"), "4");
    await shown(second);
    await first.reload();
    await ready(first);
    assert.equal(await first.inputValue(field("readings.space_c")), "-17");
    await second.reload();
    await ready(second);
    assert.equal(await second.inputValue(field("readings.space_c")), "4");
    assert.deepEqual(at.faults, []);
  });
});

describe("reading", () => {
  it("at twice the text size breaks no label letter by letter", async () => {
    const page = await at.fresh({ width: 360 });
    await page.addStyleTag({ content: "html { font-size: 200%; }" });
    await page.click("#tab-sheet");
    await page.evaluate(() => document.querySelectorAll("#form details").forEach((box) => (box.open = true)));
    const narrow = await page.$$eval("#form label[for], #form legend", (all) =>
      all
        .filter((one) => one.offsetParent !== null)
        .filter((one) => {
          // The longest word has to fit on a line of its own.
          const probe = document.createElement("span");
          probe.style.cssText = "position:absolute;visibility:hidden;white-space:nowrap";
          one.append(probe);
          const widest = Math.max(...one.textContent.split(/\s+/).map((word) => ((probe.textContent = word), probe.getBoundingClientRect().width)));
          probe.remove();
          return one.getBoundingClientRect().width < Math.min(widest, 300) - 1;
        })
        .map((one) => one.textContent),
    );
    assert.deepEqual(narrow, []);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    assert.ok(wide <= 0, `${wide} px too wide`);
  });

  it("a cause that was opened stays open while readings come in", async () => {
    const page = await at.fresh();
    await example(page, "dirty_condenser");
    const opened = '[data-cause="undercharge"]';
    await page.click(`${opened} summary`);
    await page.fill(field("readings.space_c"), "3.1");
    await page.fill(field("readings.space_c"), "3.12");
    await shown(page);
    assert.equal(await page.evaluate((id) => document.querySelector(id).open, opened), true);
    const lead = await page.evaluate(() => document.querySelector(".cause.leading").dataset.cause);
    await page.click(`[data-cause="${lead}"] summary`);
    await page.fill(field("readings.space_c"), "3.1");
    await shown(page);
    assert.equal(await page.evaluate((id) => document.querySelector(`[data-cause="${id}"]`).open, lead), false);
  });

  it("several keys in one frame are one piece of work, and the diagram waits until it is seen", async () => {
    const page = await at.fresh();
    await example(page, "dirty_condenser");
    const counts = await page.evaluate(async () => {
      await new Promise((done) => setTimeout(done, 100));
      performance.clearMeasures("answer");
      const input = document.querySelector("#f-readings-space_c");
      let drawn = 0;
      new MutationObserver(() => drawn++).observe(document.querySelector("#diagram"), { childList: true });
      for (const text of ["3", "3.", "3.1", "3.14", "3.141"]) {
        input.value = text;
        input.dispatchEvent(new Event("input", { bubbles: true }));
      }
      await new Promise((done) => setTimeout(done, 100));
      return { works: performance.getEntriesByName("answer").length, drawn };
    });
    assert.equal(counts.works, 1);
    assert.equal(counts.drawn, 0);
    assert.equal((await saved(page, "#save")).readings.space_c, 3.141);
  });
});

describe("the service worker", () => {
  it("leaves the caches of other scopes alone", async () => {
    const server = await serve(DIST);
    const context = await browser({ locale: "en-IE" });
    try {
      const page = await context.newPage();
      await page.goto(`${server.url}manifest.webmanifest`);
      await page.evaluate(async () => {
        for (const name of ["rimewise-0123456789abcdef", "rimewise-page:/elsewhere/:0123456789abcdef", "somebody-else"]) {
          await (await caches.open(name)).put("/x", new Response("kept"));
        }
        await (await caches.open(`rimewise-page:${new URL("./", location.href).pathname}:old`)).put("/x", new Response("old"));
      });
      await page.goto(server.url);
      await ready(page);
      await page.waitForFunction(() => navigator.serviceWorker.ready.then(() => navigator.serviceWorker.controller !== null));
      const names = await page.evaluate(() => caches.keys());
      for (const name of ["rimewise-0123456789abcdef", "rimewise-page:/elsewhere/:0123456789abcdef", "somebody-else"]) assert.ok(names.includes(name), name);
      assert.ok(!names.some((name) => name.endsWith(":old")), "its own older one is gone");
    } finally {
      await context.close();
      await server.stop();
    }
  });
});
