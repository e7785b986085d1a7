// How fast the page is on a processor four times slower than this machine's, as the browser's own throttle makes it.
//
// Times depend on the machine and on what else runs on it. What is asserted is the goal; `RIMEWISE_WRITE=1` writes what was measured
// into page_speed.json, which is committed with the machine it was measured on.
import assert from "node:assert/strict";
import { writeFileSync } from "node:fs";
import { cpus } from "node:os";
import { join } from "node:path";
import { after, before, describe, it } from "node:test";
import { WASM } from "./tools.mjs";
import { example, openPage, ready } from "./page_tools.mjs";

const SLOWER = 4;
const GOAL = { keystroke_ms: 50, warm_first_result_ms: 1500 };

const quartile = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 4)];
const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];

describe("on a processor four times slower", () => {
  let at;
  const measured = { throttle: SLOWER, processor: cpus()[0]?.model ?? "", node: process.version };
  before(async () => (at = await openPage({ viewport: { width: 390, height: 844 } })));
  after(async () => {
    await at?.close();
    if (process.env.RIMEWISE_WRITE) writeFileSync(join(WASM, "tests/page_speed.json"), `${JSON.stringify(measured, null, 1)}\n`);
  });

  async function slow(page) {
    const client = await at.context.newCDPSession(page);
    await client.send("Emulation.setCPUThrottlingRate", { rate: SLOWER });
    return client;
  }

  /**
   * What a key costs: from its event until what it changed is laid out, by the clock; and the processor time of the
   * page's thread for it, painting included, which other work on the machine does not lengthen.
   */
  async function keystrokes(page, client, selector) {
    const spent = async () => (await client.send("Performance.getMetrics")).metrics.find(({ name }) => name === "TaskDuration").value * 1000;
    await client.send("Performance.enable", { timeDomain: "threadTicks" });
    const before = await spent();
    const clock = await page.evaluate(async (id) => {
      const input = document.querySelector(id);
      input.focus();
      const times = [];
      for (let n = 0; n < 20; n++) {
        await new Promise((done) => setTimeout(done, 120));
        const from = performance.now();
        input.value = String(3 + n / 10);
        input.dispatchEvent(new Event("input", { bubbles: true }));
        await new Promise((done) => queueMicrotask(() => queueMicrotask(done)));
        // What the change cost in layout and style belongs to it.
        document.body.getBoundingClientRect();
        times.push(performance.now() - from);
      }
      return times;
    }, selector);
    return { clock, processor: ((await spent()) - before) / clock.length };
  }

  for (const [what, view, width] of [["on a card of the guide", "guide", 390], ["on the sheet", "sheet", 390], ["beside the answer on a wide screen", "sheet", 1440]]) {
    it(`a key ${what}`, async (t) => {
      const page = await at.fresh({ width, height: 844 });
      await example(page, "short_walk_in_cooler");
      if (width < 960) await page.evaluate(() => (document.querySelector("#menu").open = false));
      await page.click(`#tab-${view}`);
      let selector = "#f-readings-space_c";
      if (view === "guide") {
        // A machine still being read: the first card.
        await page.evaluate(() => document.querySelector("#new").click());
        for (const pick of ["not_cold", "walk_in_cooler", "R448A"]) await page.click(`#guide [data-pick="${pick}"]`);
        await page.fill("#g-readings-suction_line_c", "8");
        selector = "#g-readings-suction_pressure_kpa";
      }
      const client = await slow(page);
      const { clock, processor } = await keystrokes(page, client, selector);
      measured[`keystroke_ms, ${what}`] = { processor: Math.round(processor), clock_median: Math.round(median(clock)), clock_quarter: Math.round(quartile(clock)) };
      t.diagnostic(JSON.stringify(measured[`keystroke_ms, ${what}`]));
      // Other work on the machine lengthens a time: it is told beside its goal, and never failed for.
      t.diagnostic(`goal ${GOAL.keystroke_ms} ms: ${quartile(clock) < GOAL.keystroke_ms ? "reached" : "missed"} by the quickest quarter`);
      assert.equal(clock.length > 0 && clock.every((ms) => ms > 0), true, "no key was answered");
    });
  }

  it("the first result, warm", async (t) => {
    const page = await at.fresh({ width: 390 });
    await page.waitForFunction(() => navigator.serviceWorker.ready.then(() => navigator.serviceWorker.controller !== null));
    await slow(page);
    const times = [];
    for (let n = 0; n < 5; n++) {
      await page.reload();
      await ready(page);
      times.push(await page.evaluate(() => performance.getEntriesByName("first-result")[0].startTime));
    }
    measured.warm_first_result_ms = { median: Math.round(median(times)), worst: Math.round(Math.max(...times)) };
    t.diagnostic(JSON.stringify(measured.warm_first_result_ms));
    t.diagnostic(`goal ${GOAL.warm_first_result_ms} ms: ${median(times) < GOAL.warm_first_result_ms ? "reached" : "missed"}`);
    assert.ok(times.every((ms) => ms > 0), `${times}`);
  });

  it("decoding keeps the page's own thread free", async (t) => {
    const page = await at.fresh({ width: 390 });
    await page.evaluate(async () => {
      for (const name of await caches.keys()) await caches.delete(name);
      for (const worker of await navigator.serviceWorker.getRegistrations()) await worker.unregister();
    });
    await slow(page);
    await page.addInitScript(() => {
      window.long = [];
      new PerformanceObserver((list) => window.long.push(...list.getEntries().map((one) => [one.startTime, one.duration]))).observe({ type: "longtask", buffered: true });
    });
    await page.reload();
    await ready(page);
    const long = await page.evaluate(() => ({ first: performance.getEntriesByName("first-result")[0].startTime, tasks: window.long }));
    const worst = Math.max(0, ...long.tasks.filter(([start]) => start < long.first).map(([, duration]) => duration));
    measured.cold_first_result_ms = Math.round(long.first);
    measured.longest_task_ms = Math.round(worst);
    t.diagnostic(JSON.stringify({ cold: measured.cold_first_result_ms, longest: measured.longest_task_ms }));
    assert.ok(long.first > 0);
  });
});
