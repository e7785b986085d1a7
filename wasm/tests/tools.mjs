// What the tests share: where things are, the Rust examples' answers, and a fresh browser.
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, readdirSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

export const WASM = fileURLToPath(new URL("..", import.meta.url));
export const ROOT = fileURLToPath(new URL("../..", import.meta.url));
export const EXAMPLES = join(WASM, "page/examples");

export const exampleNames = readdirSync(EXAMPLES)
  .filter((name) => name.endsWith(".json"))
  .map((name) => name.slice(0, -5))
  .sort();

export function example(name) {
  return readFileSync(join(EXAMPLES, `${name}.json`), "utf8");
}

const TARGET = process.env.CARGO_TARGET_DIR ?? join(ROOT, "target");

/** Runs an example of the Rust crate, built from the same source as the package, on text; gives its lines without their
 * numbers. */
export function rust(name, input, ...flags) {
  const ran = spawnSync(join(TARGET, "release/examples", name), ["-", ...flags], {
    input,
    encoding: "utf8",
    maxBuffer: 1 << 28,
  });
  if (ran.error) throw ran.error;
  if (ran.stdout === "") throw new Error(`${name}: ${ran.stderr}`);
  return ran.stdout.trimEnd().split("\n").map((line) => line.replace(/^\{"line":\d+,/, "{"));
}

export function temporary(name) {
  return mkdtempSync(join(tmpdir(), `rimewise-${name}-`));
}

export function run(command, args, cwd) {
  return execFileSync(command, args, { cwd, encoding: "utf8", stdio: ["ignore", "pipe", "pipe"] });
}

const FLAGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** Opens a browser with a profile of its own. */
export function browser(options = {}) {
  return chromium.launchPersistentContext(temporary("profile"), {
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    headless: true,
    args: FLAGS,
    acceptDownloads: true,
    ...options,
  });
}
