// What callers hand over: everything is checked before it reaches the module, which trusts its types.
import assert from "node:assert/strict";
import { describe, it } from "node:test";
import vm from "node:vm";
import * as rimewise from "rimewise";

await rimewise.init();
const { RimewiseError, diagnose, diagnoseLine, property, saturation } = rimewise;

/** What is no string, number or plain object, whatever it pretends to be. */
const ODD = [290, new String("R290"), ["R290"], { toString: () => "R290", length: 1e9 }, new Map(), true, null, undefined, Symbol("R290"), 5n, () => "R290"];

describe("a text argument", () => {
  const calls = {
    saturation: (value) => saturation(value, 100),
    tableRange: (value) => rimewise.tableRange(value),
    handling: (value) => rimewise.handling(value),
    vaporTemperatureAtEntropy: (value) => rimewise.vaporTemperatureAtEntropy(value, 100, 2),
    vaporTemperatureAtEnthalpy: (value) => rimewise.vaporTemperatureAtEnthalpy(value, 100, 500),
    standingPressure: (value) => rimewise.standingPressure(value, { pressure_kpa: 500, temperature_c: 20 }),
    hoseContents: (value) => rimewise.hoseContents(value, { length_m: 1, inner_diameter_mm: 6, pressure_kpa: 300, temperature_c: 20 }),
    diagnoseLine: (value) => diagnoseLine(value),
  };
  for (const [name, call] of Object.entries(calls)) {
    it(`${name} refuses what is no string, again and again`, () => {
      // A module that was given a wrong length once keeps the damage: three rounds showed it.
      for (let round = 0; round < 3; round++) {
        for (const value of ODD) assert.throws(() => call(value), RimewiseError, String(typeof value));
      }
      assert.equal(saturation("R290", 100).status, "ok", "the module still answers");
    });
  }

  it("is refused by its length", () => {
    assert.throws(() => saturation("R".repeat(300), 100), { name: "RimewiseError", field: "refrigerant" });
    assert.throws(() => diagnoseLine(" ".repeat(2_000_000)), RimewiseError);
  });
});

describe("a number argument", () => {
  it("is a number and nothing that turns into one", () => {
    for (const value of ["100", new Number(100), [100], null, undefined, true, { valueOf: () => 100 }, 5n]) {
      assert.throws(() => saturation("R290", value), { name: "RimewiseError", field: "pressure_kpa" });
      assert.throws(() => rimewise.atmosphereKpa(value), RimewiseError);
      assert.throws(() => rimewise.pressureToKpa(value, { unit: "bar" }), RimewiseError);
      assert.throws(() => rimewise.temperatureToC(value, "degC"), RimewiseError);
      assert.throws(() => rimewise.unbalancePercent([1, 2, value]), RimewiseError);
      assert.throws(() => rimewise.lockedRotorAt({ locked_rotor_a: 10, rated_v: 230, voltage_v: value }), RimewiseError);
      assert.throws(() => rimewise.rate({ coefficients: [value], scale: "celsius", envelope_c: [] }, { evaporating_c: 0, condensing_c: 40 }), RimewiseError);
    }
  });
});

describe("an object argument", () => {
  const refused = (readings, field) => assert.throws(() => diagnose({ readings }), { name: "RimewiseError", field });

  it("is plain data", () => {
    refused(new Map([["space_c", 3]]), "readings");
    refused(new Date(), "readings");
    refused({ space_c: new Number(3) }, "readings.space_c");
    refused({ get space_c() { return 3; } }, "readings.space_c");
    refused(Object.create({ space_c: 3 }), "readings");
    refused({ [Symbol("space_c")]: 3 }, "readings");
    refused({ line_voltages_v: [400, , 401] }, "readings.line_voltages_v.1");
    refused(JSON.parse('{"__proto__": {"space_c": 3}}'), "readings.__proto__");
    for (const value of [new Map(), new Set(), [], 3, "x", new (class Visit {})()]) assert.throws(() => diagnose(value), RimewiseError);
    assert.throws(() => rimewise.capacitanceUf({ current_a: new Map(), voltage_v: 230, hz: 50 }), RimewiseError);
    assert.throws(() => rimewise.capacitanceUf(null), RimewiseError);
    assert.throws(() => rimewise.weigh(new Map(), {}), RimewiseError);
    assert.throws(() => rimewise.weigh([], new Map([["visit", 1]])), RimewiseError);
  });

  it("may come from another context, and without a prototype", () => {
    const elsewhere = vm.runInNewContext("({ readings: { space_c: 3, line_voltages_v: [400, 401, 402] } })");
    assert.equal(diagnose(elsewhere).status, "ok");
    assert.equal(diagnose(Object.assign(Object.create(null), { readings: { space_c: 3 } })).status, "ok");
  });

  it("speaks for itself, whatever prototypes say", () => {
    const visit = { system: { refrigerant: "R290" }, readings: { suction_pressure_kpa: 210 } };
    const plain = diagnose(visit);
    let answered;
    try {
      Object.prototype.toJSON = () => ({ readings: {} });
      Array.prototype.toJSON = () => [];
      Object.prototype.discharge_pressure_kpa = 900;
      answered = diagnose(visit);
    } finally {
      delete Object.prototype.toJSON;
      delete Array.prototype.toJSON;
      delete Object.prototype.discharge_pressure_kpa;
    }
    assert.deepEqual(answered, plain);
  });

  it("is refused by its size, at once and without a copy", () => {
    const huge = new Array(6_000_000).fill(1.5);
    const deep = JSON.parse(`${"[".repeat(5000)}${"]".repeat(5000)}`);
    const round = {};
    round.readings = round;
    const wide = { readings: Object.fromEntries(Array.from({ length: 30_000 }, (_, n) => [`x${n}`, n])) };
    const before = process.memoryUsage().rss;
    const from = performance.now();
    for (const visit of [{ readings: { line_voltages_v: huge } }, { system: { record: huge } }, deep, round, wide, { system: { refrigerant: "R".repeat(3_000_000) } }]) {
      assert.throws(() => diagnose(visit), RimewiseError);
    }
    assert.throws(() => property({ refrigerant: huge }), RimewiseError);
    assert.ok(performance.now() - from < 1000, `${performance.now() - from} ms`);
    assert.ok(process.memoryUsage().rss - before < 100e6, "no copy was made");
  });
});
