// Other people's projects: strict TypeScript that must compile, mistakes that must not, and a bundler.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { after, before, describe, it } from "node:test";
import { build } from "vite";
import { diagnose, init } from "rimewise";
import { serve } from "./serve.mjs";
import { WASM, browser, example, exampleNames, run, temporary } from "./tools.mjs";

/** Makes a project that has the package from its tarball and nothing else. */
function project(name) {
  const folder = temporary(name);
  const tarball = readdirSync(join(WASM, "pkg")).find((file) => file.endsWith(".tgz"));
  writeFileSync(join(folder, "package.json"), '{"name":"consumer","private":true,"type":"module"}');
  mkdirSync(join(folder, "node_modules/rimewise"), { recursive: true });
  run("tar", ["xzf", join(WASM, "pkg", tarball), "--strip-components=1", "-C", join(folder, "node_modules/rimewise")], folder);
  return folder;
}

describe("a strict TypeScript project", () => {
  const folder = project("types");
  const tsc = (file, options = []) => {
    const ran = spawnSync(
      join(WASM, "node_modules/.bin/tsc"),
      [
        "--noEmit", "--strict", "--exactOptionalPropertyTypes", "--noUncheckedIndexedAccess", "--target", "es2022",
        "--module", "nodenext", "--lib", "es2022,dom", "--types", "", "--skipLibCheck", "false", "--ignoreConfig", ...options, file,
      ],
      { cwd: folder, encoding: "utf8" },
    );
    return { status: ran.status, text: ran.stdout + ran.stderr };
  };
  const write = (name, code) => writeFileSync(join(folder, name), code);

  it("compiles a visit and a report", () => {
    write(
      "good.ts",
      `import { init, diagnose, property, pressureToKpa, RimewiseError, type Cause, type Visit, type Report, type Estimate } from "rimewise";
await init();
const visit: Visit = {
  system: { refrigerant: "R290", metering: "capillary", duty: "freezer", design: { space_c: -20 } },
  readings: { suction_pressure_kpa: pressureToKpa(1.1, { unit: "bar", gauge: true, altitude_m: 300 }), winding_run_ohm: "open", running: true, line_voltages_v: [230, 231, 229], discharge_pressure_kpa: null },
  observations: { sight_glass: "clear" },
};
const report: Report = diagnose(visit);
const superheat: Estimate | null = report.cycle.superheat_k;
const names: Record<Cause, string> = { none: "", undercharge: "", overcharge: "", liquid_line_restriction: "", metering_underfeed: "", flood_back: "", weak_compressor: "", condenser_airflow: "", evaporator_airflow: "", non_condensables: "" };
console.log(superheat?.value ?? "not measured", names[report.leading], property({ refrigerant: "R290", pressure_kpa: 200 }).dew_c);
const state = property({ refrigerant: "R290", pressure_kpa: 200, temperature_c: 10 });
if (state.phase !== "two_phase") console.log(state.enthalpy_kj_kg);
try { diagnose({}); } catch (error) { if (error instanceof RimewiseError) console.log(error.field); }
`,
    );
    const made = tsc("good.ts");
    assert.equal(made.text, "");
    assert.equal(made.status, 0);
  });

  const mistakes = {
    "a wrong cause name": ['import type { Cause } from "rimewise";\nexport const cause: Cause = "low_charge";\n', /low_charge/],
    "a missing unit suffix": [
      'import type { Visit } from "rimewise";\nexport const visit: Visit = { readings: { suction_pressure: 210 } };\n',
      /suction_pressure/,
    ],
    "a wrong metering name": [
      'import type { Visit } from "rimewise";\nexport const visit: Visit = { system: { metering: "txv" } };\n',
      /txv/,
    ],
    "a wrong measurement name": [
      'import type { Report } from "rimewise";\nexport const asks = (r: Report) => r.next.some((n) => n.measurement === "superheat");\n',
      /superheat/,
    ],
    "a wrong finding name": [
      'import type { Finding } from "rimewise";\nexport const bad = (f: Finding) => f.finding === "run_capacitor_weak";\n',
      /run_capacitor_weak/,
    ],
    "a reading that is text": [
      'import type { Visit } from "rimewise";\nexport const visit: Visit = { readings: { suction_line_c: "cold" } };\n',
      /string/,
    ],
    "open on a pressure": [
      'import type { Visit } from "rimewise";\nexport const visit: Visit = { readings: { suction_pressure_kpa: "open" } };\n',
      /open|string/,
    ],
    "an estimate used as if it were always there": [
      'import { diagnose } from "rimewise";\nexport const superheat: number = diagnose({}).cycle.superheat_k.value;\n',
      /null/,
    ],
    "a wrong pressure unit": ['import { pressureToKpa } from "rimewise";\nexport const p = pressureToKpa(1, { unit: "atm" });\n', /atm/],
  };
  for (const [name, [code, message]] of Object.entries(mistakes)) {
    it(`does not compile ${name}`, () => {
      write("bad.ts", code);
      const made = tsc("bad.ts");
      assert.notEqual(made.status, 0);
      assert.match(made.text, message);
      assert.match(made.text, /^bad\.ts/);
    });
  }

  it("types every report exactly as the library writes it", async () => {
    await init();
    const reports = [...exampleNames.map((name) => JSON.parse(example(name))), {}].map((visit) => diagnose(visit));
    const all = reports.map((report, n) => `export const r${n}: Report = ${JSON.stringify(report)};\n`).join("");
    // A literal with one key too many or too few does not compile.
    write("reports.ts", `import type { Report } from "rimewise";\n${all}`);
    const made = tsc("reports.ts");
    assert.equal(made.text, "");
  });

  it("types every example visit exactly", () => {
    const all = exampleNames.map((name, n) => `export const v${n}: Visit = ${example(name)};\n`).join("");
    write("visits.ts", `import type { Visit } from "rimewise";\n${all}`);
    assert.equal(tsc("visits.ts").text, "");
  });
});

describe("a bundled page", () => {
  const folder = project("vite");
  let server;
  let context;
  before(async () => {
    writeFileSync(join(folder, "index.html"), '<!doctype html><title>consumer</title><script type="module" src="/main.js"></script>');
    writeFileSync(
      join(folder, "main.js"),
      'import { init, diagnoseLine } from "rimewise";\nawait init();\nwindow.ask = diagnoseLine;\ndocument.title = "ready";\n',
    );
    await build({ root: folder, logLevel: "silent", build: { outDir: join(folder, "dist"), target: "es2022" } });
    server = await serve(join(folder, "dist"));
    context = await browser();
  });
  after(async () => {
    await context?.close();
    await server?.stop();
  });

  it("answers in the browser what the package answers in Node", async () => {
    await init();
    const page = await context.newPage();
    const errors = [];
    page.on("console", (message) => message.type() === "error" && !/favicon/.test(message.location().url) && errors.push(message.text()));
    page.on("pageerror", (error) => errors.push(String(error)));
    await page.goto(server.url);
    await page.waitForFunction(() => document.title === "ready");
    for (const name of exampleNames) {
      const line = JSON.stringify(JSON.parse(example(name)));
      assert.deepEqual(JSON.parse(await page.evaluate((text) => window.ask(text), line)), diagnose(JSON.parse(line)));
    }
    assert.deepEqual(errors, []);
  });

  it("works without a bundler, straight from the unpacked package", async () => {
    const plain = temporary("plain");
    cpSync(join(folder, "node_modules/rimewise"), join(plain, "rimewise"), { recursive: true });
    writeFileSync(
      join(plain, "index.html"),
      '<!doctype html><title>plain</title><link rel="icon" href="data:,"><script type="module">import { init, diagnose } from "./rimewise/index.js"; await init(); document.title = diagnose({}).status;</script>',
    );
    const own = await serve(plain);
    const page = await context.newPage();
    await page.goto(own.url);
    await page.waitForFunction(() => document.title === "ok");
    await page.close();
    await own.stop();
  });
});
