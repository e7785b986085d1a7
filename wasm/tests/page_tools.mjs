// What the tests of the page share: a served build, a browser at home somewhere, and short ways to do things on it.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { serve } from "./serve.mjs";
import { WASM, browser } from "./tools.mjs";

/** The built page; RIMEWISE_PAGE names another folder of it. */
export const DIST = process.env.RIMEWISE_PAGE ?? join(WASM, "page/dist");
const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** The field of a path on the sheet, or elsewhere by its place. */
export const field = (path, place = "f") => `#${place}-${path.replaceAll(".", "-")}`;

/**
 * Opens the page for a suite. Ireland reads bar and degC with a decimal point. Every fault the page reports, and every
 * request that leaves it, is collected.
 */
export async function openPage(options = {}) {
  const server = await serve(DIST);
  const context = await browser({ viewport: { width: 1280, height: 900 }, bypassCSP: true, locale: "en-IE", ...options });
  const faults = [];
  const pages = new Set();
  const watch = (page) => {
    pages.add(page);
    page.on("console", (message) => {
      // Asked for by the browser itself where a file of no page is shown.
      if (message.location().url.endsWith("/favicon.ico")) return;
      if (["error", "warning"].includes(message.type())) faults.push(message.text());
    });
    page.on("pageerror", (error) => faults.push(String(error.stack)));
    page.on("request", (request) => {
      if (!/^(blob|data):/.test(request.url()) && !request.url().startsWith(server.url)) faults.push(`asked ${request.url()}`);
    });
    return page;
  };
  return {
    server,
    context,
    faults,
    /** A tab with nothing kept before it. */
    async fresh({ width, height, hash = "", storage = {} } = {}) {
      for (const page of pages) await page.close();
      pages.clear();
      faults.length = 0;
      const page = watch(await context.newPage());
      if (width) await page.setViewportSize({ width, height: height ?? 800 });
      await page.goto(`${server.url}manifest.webmanifest`);
      await page.evaluate((kept) => {
        localStorage.clear();
        for (const [key, value] of Object.entries(kept)) localStorage.setItem(key, value);
      }, storage);
      await page.goto(`${server.url}${hash}`);
      await ready(page);
      return page;
    },
    async another() {
      const page = watch(await context.newPage());
      await page.goto(server.url);
      await ready(page);
      return page;
    },
    async close() {
      await context.close();
      await server.stop();
    },
  };
}

export const ready = (page) => page.waitForSelector("html[data-ready]", { timeout: 15_000 });

/** What a button writes into its file. */
export async function saved(page, button) {
  await page.evaluate(() => {
    window.written = undefined;
    window.makeUrl ??= URL.createObjectURL;
    URL.createObjectURL = (blob) => window.makeUrl.call(URL, (window.written = blob));
  });
  await page.evaluate((selector) => document.querySelector(selector).click(), button);
  return JSON.parse(await page.evaluate(() => window.written.text()));
}

/** Taps through the three questions of the guide. */
export async function begin(page, ...picks) {
  for (const pick of picks) await page.click(`#guide [data-pick="${pick}"]`);
}

/** Opens an invented example. */
export async function example(page, name) {
  await page.evaluate((id) => document.querySelector(`[data-example="${id}"]`).click(), name);
  await page.waitForFunction(() => document.getElementById("undo") !== null);
}

/** Waits until the work of the last change is shown. */
export const shown = (page) => page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 5)))));

/** Every finding of axe on what the page shows now, as lines. */
export async function axe(page) {
  await page.evaluate(AXE);
  const found = await page.evaluate(() => window.axe.run(document, { resultTypes: ["violations"] }));
  return found.violations.map((fault) => `${fault.id}: ${fault.nodes.map((node) => node.target.join(" ")).join("; ")}`);
}

/** How far the page is wider than the screen, px. */
export const tooWide = (page) => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

export function none(list, what) {
  assert.deepEqual(list, [], what);
}
