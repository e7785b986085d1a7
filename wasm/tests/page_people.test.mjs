// For whoever uses the page: every view at three widths, at twice the text size, in light, dark and forced colours, by
// keyboard alone, offline, in English and Spanish, held against axe.
import assert from "node:assert/strict";
import { after, before, describe, it } from "node:test";
import { axe, begin, example, field, none, openPage, ready, saved, shown, tooWide } from "./page_tools.mjs";

const VIEWS = ["guide", "sheet", "machine", "answer", "chart", "visits", "live"];

/** Shows a view with everything in it opened. */
async function view(page, name) {
  if (name === "answer" && (await page.isHidden("#tab-answer"))) return;
  await page.click(`#tab-${name}`);
  if (name === "live") await page.waitForSelector("#view-live[data-ready]");
  await page.evaluate(() => document.querySelectorAll("main details").forEach((box) => (box.open = true)));
  await shown(page);
}

/**
 * Where each set of colours is held against axe. Layout and words do not depend on colours, and colours not on words:
 * every width in both languages in light, the two layouts in dark, and one in forced colours, where the browser paints.
 */
const COLOURS = {
  "en-IE": { 360: ["light", "dark", "forced"], 768: ["light"], 1440: ["light", "dark"] },
  "es-MX": { 360: ["light"], 768: ["light"], 1440: ["light"] },
};

for (const locale of ["en-IE", "es-MX"]) {
  describe(`every view, ${locale}`, () => {
    let at;
    before(async () => (at = await openPage({ locale })));
    after(() => at?.close());

    for (const width of [360, 768, 1440]) {
      for (const colours of COLOURS[locale][width]) {
        it(`${width} px, ${colours}: nothing sideways, nothing for axe`, async () => {
          const page = await at.fresh({ width, height: 800 });
          await page.emulateMedia(colours === "forced" ? { forcedColors: "active" } : { colorScheme: colours });
          for (const pass of ["empty", "filled"]) {
            if (pass === "filled") {
              await example(page, "short_walk_in_cooler");
              if (width < 960) await page.evaluate(() => (document.querySelector("#menu").open = false));
              await page.evaluate(() => (document.querySelector("#f-readings-drier_outlet_c").value = "wet"));
            }
            for (const name of VIEWS) {
              await view(page, name);
              assert.ok((await tooWide(page)) <= 0, `${name}, ${pass}: ${await tooWide(page)} px too wide`);
              none(await axe(page), `${name}, ${pass}`);
            }
          }
          assert.deepEqual(at.faults, []);
        });
      }

      it(`${width} px at twice the text size: nothing sideways, the bar leaves room`, async () => {
        const page = await at.fresh({ width, height: 800 });
        // The reader's own setting, which media queries in rem follow.
        const client = await at.context.newCDPSession(page);
        await client.send("Page.setFontSizes", { fontSizes: { standard: 32, fixed: 26 } });
        await page.reload();
        await ready(page);
        assert.equal(await page.evaluate(() => getComputedStyle(document.documentElement).fontSize), "32px");
        await example(page, "flooding_capillary_freezer");
        await page.evaluate(() => (document.querySelector("#menu").open = false));
        for (const name of VIEWS) {
          await view(page, name);
          assert.ok((await tooWide(page)) <= 0, `${name}: ${await tooWide(page)} px too wide`);
        }
        const bar = await page.evaluate(() => document.getElementById("bar").getBoundingClientRect().height);
        assert.ok(bar <= 300, `the bar takes ${bar} of 800 px`);
      });
    }

    it("speaks one language", async () => {
      const page = await at.fresh({ width: 1440 });
      await example(page, "short_walk_in_cooler");
      const lang = await page.getAttribute("html", "lang");
      assert.equal(lang, locale.slice(0, 2));
      // Words that only the other language has; the library's own texts come in one language still.
      const other = lang === "es" ? /\b(the|with|measure|reading|pressure|compressor|healthy|next|should)\b/i : /\b(lectura|presión|compresor|sana|debería|siguiente|medir)\b/i;
      for (const name of VIEWS) {
        await view(page, name);
        const lines = await page.evaluate(() => {
          document.querySelectorAll(".note, #homeless, #examples, #language, #refrigerant-facts").forEach((one) => one.remove?.call(one) ?? null);
          return document.body.innerText.split("\n");
        });
        none(lines.filter((line) => other.test(line)), name);
        await page.reload();
        await ready(page);
      }
    });
  });
}

describe("the bar", () => {
  let at;
  before(async () => (at = await openPage()));
  after(() => at?.close());

  it("never leaves the screen, and holds compressor, verdict, superheat, subcooling and the next step", async () => {
    for (const width of [360, 768, 1440]) {
      const page = await at.fresh({ width, height: 780 });
      await example(page, "flooding_capillary_freezer");
      if (width < 960) await page.evaluate(() => (document.querySelector("#menu").open = false));
      for (const name of VIEWS) {
        await view(page, name);
        await page.evaluate(() => scrollTo(0, document.body.scrollHeight));
        await shown(page);
        const seen = await page.evaluate(() =>
          ["strip", "bar-compressor-state", "bar-sh", "bar-sc", "bar-next"].map((id) => {
            const box = document.getElementById(id).getBoundingClientRect();
            return box.top >= 0 && box.bottom <= innerHeight && box.height > 0 && document.getElementById(id).textContent.trim() !== "";
          }),
        );
        assert.deepEqual(seen, [true, true, true, true, true], `${name} at ${width}`);
      }
    }
  });

  it("takes no more than a quarter of a phone's screen", async () => {
    const page = await at.fresh({ width: 360, height: 780 });
    await begin(page, "not_cold", "walk_in_cooler", "R448A");
    await page.fill(field("readings.suction_pressure_kpa", "g"), "3.4");
    await page.fill(field("readings.suction_line_c", "g"), "8");
    await shown(page);
    const bar = await page.evaluate(() => document.getElementById("bar").getBoundingClientRect().height);
    assert.ok(bar <= 195, `${bar} px`);
    const inputs = await page.$$eval("#guide input", (all) => all.map((one) => one.getBoundingClientRect().bottom));
    assert.ok(inputs.every((bottom) => bottom < 780 - 46), `both inputs can be seen: ${inputs}`);
  });
});

describe("by keyboard alone", () => {
  let at;
  before(async () => (at = await openPage()));
  after(() => at?.close());

  const focus = (page) => page.evaluate(() => document.activeElement.id || document.activeElement.dataset.pick || document.activeElement.dataset.place || document.activeElement.tagName);
  async function tabTo(page, wanted) {
    for (let n = 0; n < 150; n++) {
      await page.keyboard.press("Tab");
      if ((await focus(page)) === wanted) return;
    }
    assert.fail(`Tab never reaches ${wanted}`);
  }

  it("the guide, from the first question to superheat", async () => {
    const page = await at.fresh({ width: 360 });
    for (const pick of ["not_cold", "walk_in_freezer", "R404A"]) {
      await tabTo(page, pick);
      await page.keyboard.press("Enter");
      await shown(page);
    }
    assert.equal(await focus(page), "g-readings-suction_pressure_kpa");
    await page.keyboard.type("1.2");
    await page.keyboard.press("Enter");
    assert.equal(await focus(page), "g-readings-suction_line_c");
    await page.keyboard.type("-8");
    await shown(page);
    assert.match(await page.textContent("#bar-sh"), /K/);
    await page.keyboard.press("Enter");
    await shown(page);
    assert.doesNotMatch(await page.getAttribute("#guide .card", "data-card"), /suction_pressure/);
    assert.match(await focus(page), /^g-/, "the cursor is in the next card");
  });

  it("the picture, a place of it, and the way back", async () => {
    const page = await at.fresh({ width: 1440 });
    await page.selectOption("#refrigerant", "R290");
    await page.click("#tab-machine");
    await page.focus("#tab-machine");
    await tabTo(page, "suction_pressure_kpa");
    await page.keyboard.press("Enter");
    assert.equal(await focus(page), "d-readings-suction_pressure_kpa");
    await page.keyboard.type("1.1");
    await page.keyboard.press("Enter");
    assert.equal(await page.evaluate(() => document.getElementById("entry").open), false);
    assert.match(await page.textContent('[data-place="suction_pressure_kpa"] .value'), /1\.1 barg/);
    assert.ok((await saved(page, "#save")).readings.suction_pressure_kpa > 200);
  });
});

describe("offline", () => {
  it("every view works, recordings too", async () => {
    const at = await openPage();
    try {
      const page = await at.fresh({ width: 360 });
      await page.waitForFunction(() => navigator.serviceWorker.ready.then(() => navigator.serviceWorker.controller !== null));
      await at.context.setOffline(true);
      await at.server.stop();
      await page.reload();
      await ready(page);
      await example(page, "tired_compressor");
      for (const name of VIEWS) await view(page, name);
      await page.click('[data-stream="pump_down"]');
      await page.waitForSelector("#stream-shown:not([hidden])");
      await page.click("#stream-all");
      assert.ok((await page.locator("#stream-events li").count()) > 0);
      assert.deepEqual(at.faults, []);
    } finally {
      await at.context.close();
      await at.server.stop().catch(() => undefined);
    }
  });
});
