// The packed package as a Node consumer has it: answers, errors, contents.
import assert from "node:assert/strict";
import { readFileSync, writeFileSync } from "node:fs";
import { gzipSync } from "node:zlib";
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

describe("the trade's calculations", () => {
  const near = (value, expected, tolerance) =>
    assert.ok(Math.abs(value - expected) <= tolerance, `${value} is not ${expected}`);

  it("agree with published figures", () => {
    // NEMA MG 1: 462, 463 and 455 V are 1.09 % unbalanced; 203, 210, 212 V 2.56 %.
    near(rimewise.unbalancePercent([462, 463, 455]), 1.09, 0.005);
    near(rimewise.unbalancePercent([203, 210, 212]), 2.56, 0.005);
    assert.equal(rimewise.unbalancePercent([0, 0, 0]), null);
    assert.equal(rimewise.derating(6), null);
    // C = I / (2 pi f V): 2652 I/V microfarad at 60 Hz, 3183 at 50 Hz.
    near(rimewise.capacitanceUf({ current_a: 1, voltage_v: 100, hz: 60 }).value, 26.52, 0.01);
    near(rimewise.capacitanceUf({ current_a: { value: 1, u: 0.01 }, voltage_v: 100, hz: 50 }).value, 31.83, 0.01);
    // IEEE 112: R2/R1 = (T2 + 234.5)/(T1 + 234.5).
    near(rimewise.windingReferred({ resistance_ohm: 2, from_c: 20, to_c: 75 }).value, (2 * 309.5) / 254.5, 1e-5);
    // IEEE 43: halves for every 10 K.
    near(rimewise.insulationAt40C(100, 20), 25, 1e-3);
    near(rimewise.lockedRotorAt({ locked_rotor_a: 20, rated_v: 230, voltage_v: 207 }).value, 18, 1e-4);
  });

  it("read a rating map inside its envelope only", () => {
    // X = C1 + C2 S + C3 D by the form of AHRI Standard 540, an invented map.
    const map = {
      coefficients: [1000, 20, -5, 0, 0, 0, 0, 0, 0, 0],
      scale: "celsius",
      envelope_c: [[-30, 25], [0, 25], [0, 55], [-30, 55]],
    };
    near(rimewise.rate(map, { evaporating_c: -10, condensing_c: 40 }).value, 600, 1e-3);
    assert.throws(() => rimewise.rate(map, { evaporating_c: 20, condensing_c: 40 }), { name: "RimewiseError", field: "evaporating_c" });
    assert.throws(() => rimewise.rate({ ...map, coefficients: [1] }, { evaporating_c: -10, condensing_c: 40 }), { field: "coefficients" });
  });

  it("judge standing pressure, hoses, weigh-ins and handling", () => {
    const at25 = rimewise.property({ refrigerant: "R134a", temperature_c: 25 }).dew_kpa;
    const judged = (kpa) =>
      rimewise.standingPressure("R134a", {
        pressure_kpa: { value: kpa, u: 5 },
        temperature_c: { value: 25, u: 0.5 },
      }).verdict;
    assert.equal(judged(at25), "consistent");
    assert.equal(judged(at25 + 120), "above_bubble");
    assert.equal(judged(at25 - 200), "below_dew");
    const hose = { length_m: 1.5, inner_diameter_mm: 4.8, pressure_kpa: 800, temperature_c: 20 };
    const full = rimewise.hoseContents("R134a", hose);
    const density = rimewise.property({ refrigerant: "R134a", pressure_kpa: 800, temperature_c: 20 }).density_kg_m3;
    assert.equal(full.phase, "liquid");
    near(full.mass_kg, density * Math.PI * 0.0024 ** 2 * 1.5, 1e-5);
    const plan = rimewise.weighIn({ nameplate_kg: 0.5, left_in_hoses_kg: { value: 0.02, u: 0.005 }, scale_u_kg: 0.002 });
    near(plan.by_scale_kg.value, 0.52, 1e-6);
    assert.equal(rimewise.weighIn({ nameplate_kg: 0.5, residual_kg: 0.6 }).plan, "recover");
    assert.equal(rimewise.handling("R290").flammable, true);
    assert.equal(rimewise.handling("R407C").charge_as_liquid_only, true);
    assert.equal(rimewise.handling("R134a").charge_as_liquid_only, false);
  });

  it("judge starts, terminals, pump-downs and charge", () => {
    const begun = { inrush_a: 17, locked_rotor_a: 18, seconds_to_drop: 0.4, settled_a: 2.5 };
    assert.equal(rimewise.startVerdict(begun), "good");
    assert.equal(rimewise.startVerdict({ ...begun, settled_a: 16 }), "locked_rotor");
    assert.equal(rimewise.startVerdict({ ...begun, inrush_a: -1 }), null);
    // The pair with the sum of the other two is start to run; the larger of those is the start winding (practice).
    assert.deepEqual(
      rimewise.identifyTerminals({ terminal_12_ohm: 2.4, terminal_23_ohm: 12.2, terminal_13_ohm: 9.8 }),
      { status: "ok", identification: "identified", common: 1, start: 3, run: 2 },
    );
    assert.equal(
      rimewise.identifyTerminals({ terminal_12_ohm: "open", terminal_23_ohm: 12.2, terminal_13_ohm: "open" }).open,
      2,
    );
    const against = { discharge_kpa: 1000, running_suction_kpa: 200, running_discharge_kpa: 1000 };
    const expected = rimewise.pumpDown(against);
    assert.equal(expected.verdict, null);
    assert.ok(expected.expected_kpa.value > 5 && expected.expected_kpa.value < 100);
    assert.equal(rimewise.pumpDown({ ...against, lowest_kpa: 190, ended_by: "limit", valve: "suction_service" }).verdict, "cannot_pull");
    assert.throws(() => rimewise.pumpDown({ ...against, discharge_kpa: -1 }), { name: "RimewiseError", field: "discharge_kpa" });
    const rated = { superheat_k: 8, subcooling_k: 5 };
    // (1 - a) X ((SC - SC_r) - (SH - SH_r) / 2.5) / SC_r with a = 0.75 and X = 0.7 (Li and Braun 2009).
    near(rimewise.chargeDeviation({ superheat_k: 18, subcooling_k: 3 }, rated).deviation.value, (0.175 * (-2 - 4)) / 5, 1e-5);
    assert.equal(rimewise.chargeDeviation(rated, rated, { receiver: true }).blind, "receiver");
  });

  it("weigh ways to go on, and recommend nothing where no cost is known", () => {
    const { causes } = rimewise.diagnose(JSON.parse(example("tired_compressor")));
    const repair = Object.fromEntries(causes.map((entry) => [entry.cause, 150]).filter(([name]) => !["none", "weak_compressor"].includes(name)));
    const all = { visit: 80, test: 20, repair, compressor: 600, product_at_risk: 2000 };
    const decided = rimewise.weigh(causes, all, 0.1);
    assert.equal(decided.recommended.action, "replace_compressor");
    assert.equal(rimewise.weigh(causes, {}, 0.1).recommended, null);
    assert.throws(() => rimewise.weigh(causes, { repair: { low_charge: 3 } }), { field: "costs.repair.low_charge", code: "unknown_field" });
  });
});

describe("the monitor", () => {
  it("sees a start, a steady run and a stop in an invented stream", () => {
    const monitor = new rimewise.Monitor({ refrigerant: "R134a", rated_load_a: 3, locked_rotor_a: 18, rated_v: 230 });
    assert.equal(monitor.state, "unknown");
    const seen = [];
    for (let second = 0; second < 900; second++) {
      const on = second >= 30 && second < 840;
      const ran = second - 30;
      const pushed = monitor.push({
        time_ms: second * 1000,
        current_a: on ? (ran < 2 ? 14 : 2.4) : 0,
        voltage_v: 230,
        suction_pressure_kpa: on ? 170 + 430 * Math.exp(-ran / 40) : 600,
        discharge_pressure_kpa: on ? 1000 - 400 * Math.exp(-ran / 40) : 600,
        evaporator_outlet_c: on ? -3 + 20 * Math.exp(-ran / 60) : 17,
        space_c: 4,
        ambient_c: 25,
      });
      seen.push(...pushed.events.map((event) => event.event));
      if (second === 800) {
        assert.equal(monitor.state, "steady");
        const averaged = monitor.readings();
        assert.ok(Math.abs(averaged.readings.suction_pressure_kpa - 170) < 1);
        assert.ok(averaged.noise.suction_pressure_kpa >= 0);
        const report = rimewise.diagnose({ system: { refrigerant: "R134a", duty: "cooler" }, readings: averaged.readings });
        assert.equal(report.status, "ok");
        assert.ok(monitor.sinceMs > 700_000);
      }
    }
    for (const event of ["start", "steady", "stop"]) assert.ok(seen.includes(event), `${event} in ${seen.join(" ")}`);
    assert.ok(monitor.found().start_current_a > 10);
    monitor.free();
  });

  it("names what it cannot use and never guesses", () => {
    const monitor = new rimewise.Monitor();
    const odd = monitor.push({ time_ms: 0, suction_pressure_kpa: Number.NaN, space_c: 3 });
    assert.deepEqual([odd.unusable, odd.problem], [["suction_pressure_kpa"], "some_unusable"]);
    assert.equal(monitor.push({ time_ms: 0, space_c: 3 }).problem, "repeated_time");
    assert.equal(monitor.push({ time_ms: 1000 }).problem, "nothing_measured");
    assert.throws(() => monitor.push({ time_ms: 2000, suction_kpa: 1 }), { name: "RimewiseError", field: "suction_kpa" });
    assert.throws(() => monitor.push({ time_ms: -1 }), { field: "time_ms" });
    assert.throws(() => monitor.push({ time_ms: 2000, space_c: "cold" }), { field: "space_c" });
    assert.throws(() => new rimewise.Monitor({ rated_load_a: -1 }), { name: "RimewiseError", field: "rated_load_a" });
    assert.throws(() => new rimewise.Monitor({ refrigerant: "R9999" }), { field: "refrigerant" });
    assert.throws(() => new rimewise.Monitor({ rated_amps: 3 }), { field: "rated_amps" });
    assert.throws(() => new rimewise.Monitor({ rated_load_a: "3" }), { field: "rated_load_a" });
    assert.throws(() => new rimewise.Monitor({ suction_pressure_regulator: "yes" }), { field: "suction_pressure_regulator" });
    assert.throws(() => new rimewise.Monitor({ refrigerant: 290 }), { name: "RimewiseError", field: "refrigerant" });
    assert.throws(() => new rimewise.Monitor(null), { name: "RimewiseError", field: "settings" });
    assert.throws(() => monitor.push(), { name: "RimewiseError", field: "sample" });
    monitor.free();
    monitor.free();
    assert.throws(() => monitor.push({ time_ms: 3000, space_c: 3 }), { name: "RimewiseError", field: "monitor" });
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
    const allowed = /^(package\.json|README\.md|LICENSE-(MIT|APACHE)|(index|boundary|monitor|trade)\.(js|d\.ts)|types\.d\.ts|glue\/(rimewise\.js|rimewise\.wasm))$/;
    assert.deepEqual(files.filter((file) => !allowed.test(file)), []);
    for (const needed of ["README.md", "LICENSE-MIT", "LICENSE-APACHE", "index.js", "index.d.ts", "glue/rimewise.wasm"]) {
      assert.ok(files.includes(needed), needed);
    }
    const manifest = JSON.parse(readFileSync(join(WASM, "pkg/package.json"), "utf8"));
    assert.equal(manifest.scripts, undefined);
    assert.equal(manifest.dependencies, undefined);
    assert.equal(manifest.sideEffects, false);
  });

  it("is within its limit gzipped, every refrigerant included", (t) => {
    const { wanted, limit } = JSON.parse(readFileSync(join(WASM, "size.json"), "utf8"));
    t.diagnostic(`${pack.size} bytes; wanted were ${wanted}`);
    assert.ok(pack.size <= limit, `${pack.size} bytes`);
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

  it("takes its module from bytes, plain and gzipped", async () => {
    const file = join(temporary("bytes"), "bytes.mjs");
    const entry = JSON.stringify(join(WASM, "node_modules/rimewise/index.js"));
    const plain = join(WASM, "node_modules/rimewise/glue/rimewise.wasm");
    const gzipped = join(WASM, "tests/out/rimewise.wasm.gz");
    writeFileSync(gzipped, gzipSync(readFileSync(plain)));
    for (const bytes of [plain, gzipped]) {
      writeFileSync(
        file,
        `import { readFileSync } from "node:fs";\nimport { diagnose, init } from ${entry};\nawait init(readFileSync(${JSON.stringify(bytes)}));\nconsole.log(diagnose({}).status);\n`,
      );
      assert.equal(run("node", [file], WASM), "ok\n");
    }
  });
});
