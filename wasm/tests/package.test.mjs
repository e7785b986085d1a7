// The packed package as a Node consumer has it: answers, errors, contents.
import assert from "node:assert/strict";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, it } from "node:test";
import * as rimewise from "rimewise";
import { WASM, example, exampleNames, run, rust, temporary } from "./tools.mjs";

await rimewise.init();

/** Compares two answers with every number as binary32 bits. */
function same(a, b, path = "") {
  if (typeof a === "number" && typeof b === "number") {
    assert.ok(Object.is(Math.fround(a), Math.fround(b)), `${path}: ${a} and ${b}`);
  } else if (a !== null && b !== null && typeof a === "object" && typeof b === "object") {
    assert.deepEqual(Object.keys(a), Object.keys(b), path);
    for (const key of Object.keys(a)) same(a[key], b[key], `${path}.${key}`);
  } else {
    assert.equal(a, b, path);
  }
}

describe("reports", () => {
  for (const name of exampleNames) {
    it(`answers ${name} as the Rust example does, to the last bit`, () => {
      const visit = JSON.parse(example(name));
      const [line] = rust("service_call", `${JSON.stringify(visit)}\n`, "--json");
      same(rimewise.diagnose(visit), JSON.parse(line));
      assert.equal(rimewise.diagnoseLine(JSON.stringify(visit)), line);
    });
  }

  it("answers bad lines as the Rust example does, and the lines after them", () => {
    const lines = [
      "not json",
      '{"system":{"refrigerant":"R9999"}}',
      '{"system":{"refrigerant":"R290"},"readings":{"suction_pressure_kpa":-3}}',
      '{"readings":{"suction_presure_kpa":210}}',
      '{"readings":{"suction_pressure_kpa":"low"}}',
      '{"system":{"refrigerant":"R290"},"readings":{"suction_pressure_kpa":900,"discharge_pressure_kpa":300}}',
      '{"system":{"refrigerant":"propane"},"readings":{"suction_pressure_kpa":210,"evaporator_outlet_c":-20}}',
    ];
    const answered = rust("service_call", `${lines.join("\n")}\n`, "--json");
    assert.deepEqual(lines.map((line) => rimewise.diagnoseLine(line)), answered);
    assert.deepEqual(answered.map((line) => JSON.parse(line).status), ["error", "error", "error", "error", "error", "error", "ok"]);
  });

  it("carries half a visit and an empty one", () => {
    assert.equal(rimewise.diagnose({}).causes.length, 10);
    const half = rimewise.diagnose({ readings: { space_c: -18, ambient_c: undefined, current_a: null } });
    assert.equal(half.status, "ok");
    assert.equal(half.cycle.superheat_k, null);
  });
});

describe("properties", () => {
  it("answers as the Rust example does", () => {
    const questions = [
      { list: true },
      { refrigerant: "R-404A" },
      { refrigerant: "propane", pressure_kpa: 300 },
      { refrigerant: "R134a", temperature_c: -10 },
      { refrigerant: "R410A", pressure_kpa: 300, temperature_c: 20 },
      { refrigerant: "R22", pressure_kpa: 1500, temperature_c: 20 },
      { refrigerant: "R290", pressure_kpa: 99999 },
    ];
    const answered = rust("properties", `${questions.map((q) => JSON.stringify(q)).join("\n")}\n`);
    questions.forEach((question, n) => {
      const expected = JSON.parse(answered[n]);
      if (expected.status === "ok") {
        same(rimewise.property(question), expected);
      } else {
        assert.throws(
          () => rimewise.property(question),
          (error) => error.field === expected.field && error.message === expected.error,
        );
      }
    });
  });

  it("agrees with the published standard cycle", () => {
    // ASHRAE Handbook - Fundamentals 2021, chapter 2, example 2: R-134a between -20 and 30 degC: 132.73 and 770.20 kPa,
    // h1 386.55, h2 423.07, h3 241.72 kJ/kg, discharge 37.8 degC.
    const near = (value, expected, tolerance) =>
      assert.ok(Math.abs(value - expected) <= tolerance, `${value} is not ${expected}`);
    const low = rimewise.property({ refrigerant: "R134a", temperature_c: -20 }).dew_kpa;
    const high = rimewise.property({ refrigerant: "R134a", temperature_c: 30 }).dew_kpa;
    near(low, 132.73, 0.05);
    near(high, 770.2, 0.2);
    const suction = rimewise.saturation("R134a", low);
    near(suction.vapor_enthalpy_kj_kg, 386.55, 0.2);
    near(rimewise.saturation("R134a", high).liquid_enthalpy_kj_kg, 241.72, 0.2);
    const discharge = rimewise.vaporTemperatureAtEntropy("R134a", high, suction.vapor_entropy_kj_kg_k);
    near(discharge, 37.8, 0.15);
    const state = rimewise.property({ refrigerant: "R134a", pressure_kpa: high, temperature_c: discharge });
    near(state.enthalpy_kj_kg, 423.07, 0.3);
    near(rimewise.vaporTemperatureAtEnthalpy("R134a", high, state.enthalpy_kj_kg), discharge, 0.01);
  });

  it("says what a table covers", () => {
    for (const name of rimewise.refrigerants()) {
      const range = rimewise.tableRange(name);
      assert.ok(range.min_c < range.max_c && range.min_kpa < range.max_kpa, name);
    }
  });
});

describe("units", () => {
  it("reads gauges at their altitude", () => {
    // ICAO Doc 7488, table 1: 83,523 Pa at 1,600 m (from memory, 5 digits); 1 psi = 6.894757 kPa.
    const kpa = rimewise.pressureToKpa(10, { unit: "psi", gauge: true, altitude_m: 1600 });
    assert.ok(Math.abs(kpa - (68.94757 + 83.523)) < 0.02, String(kpa));
    assert.ok(Math.abs(rimewise.atmosphereKpa(0) - 101.325) < 1e-4);
  });

  it("turns back what it turned", () => {
    for (const unit of ["kPa", "bar", "psi"]) {
      for (const gauge of [false, true]) {
        const scale = { unit, gauge, altitude_m: 750 };
        const back = rimewise.pressureFromKpa(rimewise.pressureToKpa(12.5, scale), scale);
        assert.ok(Math.abs(back - 12.5) < 1e-4, `${unit} ${gauge} ${back}`);
      }
    }
    assert.equal(rimewise.temperatureToC(-40, "degF").toFixed(3), "-40.000");
    assert.equal(rimewise.differenceToK(18, "degF").toFixed(4), "10.0000");
    assert.equal(rimewise.differenceFromK(10, "degF").toFixed(4), "18.0000");
    assert.equal(rimewise.temperatureFromC(100, "degF").toFixed(3), "212.000");
  });

  it("refuses a unit it does not know", () => {
    assert.throws(() => rimewise.pressureToKpa(1, { unit: "atm" }), { name: "RimewiseError", field: "unit" });
    assert.throws(() => rimewise.temperatureToC(1, "K"), { name: "RimewiseError", field: "unit" });
  });
});

describe("errors", () => {
  const refused = (visit, field) =>
    assert.throws(
      () => rimewise.diagnose(visit),
      (error) => error instanceof rimewise.RimewiseError && error instanceof Error && error.field === field && error.message !== "",
    );

  it("name the field", () => {
    refused({ readings: { suction_presure_kpa: 1 } }, "readings.suction_presure_kpa");
    refused({ readings: { suction_pressure_kpa: "low" } }, "readings.suction_pressure_kpa");
    refused({ system: { refrigerant: "R9999" } }, "system.refrigerant");
    refused({ system: { refrigerant: "R290" }, readings: { suction_pressure_kpa: -2 } }, "readings.suction_pressure_kpa");
  });

  it("come for what JSON would turn into null in silence", () => {
    refused({ readings: { suction_pressure_kpa: Number.NaN } }, "readings.suction_pressure_kpa");
    refused({ readings: { suction_pressure_kpa: Number.POSITIVE_INFINITY } }, "readings.suction_pressure_kpa");
    refused({ readings: { space_c: 5n } }, "readings.space_c");
    refused({ readings: { line_voltages_v: [230, Number.NaN, 231] } }, "readings.line_voltages_v.1");
  });
});

describe("the package", () => {
  const pack = JSON.parse(run("npm", ["pack", "--dry-run", "--json"], join(WASM, "pkg")))[0];

  it("holds only what a consumer needs", () => {
    const files = pack.files.map((file) => file.path).sort();
    const allowed = /^(package\.json|README\.md|LICENSE-(MIT|APACHE)|index\.js|index\.d\.ts|types\.d\.ts|glue\/rimewise(_bg)?\.(js|d\.ts|wasm))$/;
    assert.deepEqual(files.filter((file) => !allowed.test(file)), []);
    for (const needed of ["README.md", "LICENSE-MIT", "LICENSE-APACHE", "index.js", "index.d.ts", "glue/rimewise_bg.wasm"]) {
      assert.ok(files.includes(needed), needed);
    }
    const manifest = JSON.parse(readFileSync(join(WASM, "pkg/package.json"), "utf8"));
    assert.equal(manifest.scripts, undefined);
    assert.equal(manifest.dependencies, undefined);
    assert.equal(manifest.sideEffects, false);
  });

  it("is at most 220 kB gzipped", () => {
    assert.ok(pack.size <= 220_000, `${pack.size} bytes`);
  });

  it("has the version of the library", () => {
    const manifest = JSON.parse(readFileSync(join(WASM, "pkg/package.json"), "utf8"));
    assert.equal(rimewise.version(), manifest.version);
  });

  it("answers with the code of its README", async () => {
    const readme = readFileSync(join(WASM, "pkg/README.md"), "utf8");
    const code = /```js\n([\s\S]*?)```/.exec(readme)[1];
    const file = join(WASM, "tests/out/readme.mjs");
    run("mkdir", ["-p", join(WASM, "tests/out")]);
    writeFileSync(file, code);
    const printed = run("node", [file], WASM);
    assert.match(printed, /value/);
  });

  it("asks for init first", () => {
    const file = join(WASM, "tests/out/early.mjs");
    writeFileSync(
      file,
      'import { diagnose, init } from "rimewise";\ntry { diagnose({}); } catch (error) { console.log(error.name, error.message); }\nawait Promise.all([init(), init()]);\nconsole.log(diagnose({}).status);\n',
    );
    assert.match(run("node", [file], WASM), /^RimewiseError call `await init\(\)` before anything else\nok\n$/);
  });

  it("takes its module from bytes, too", () => {
    const file = join(temporary("bytes"), "bytes.mjs");
    const entry = JSON.stringify(join(WASM, "node_modules/rimewise/index.js"));
    const bytes = JSON.stringify(join(WASM, "node_modules/rimewise/glue/rimewise_bg.wasm"));
    writeFileSync(
      file,
      `import { readFileSync } from "node:fs";\nimport { diagnose, init } from ${entry};\nawait init(readFileSync(${bytes}));\nconsole.log(diagnose({}).status);\n`,
    );
    assert.equal(run("node", [file], WASM), "ok\n");
  });
});
