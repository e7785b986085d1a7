// The recorded streams, watched in JavaScript and by the Rust example: the same events to the last bit.
import assert from "node:assert/strict";
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { before, describe, it } from "node:test";
import { init, Monitor } from "rimewise";
import { ROOT, rust } from "./tools.mjs";

const STREAMS = join(ROOT, "core/examples/data");

/** Reads a recorded stream: what is known of the machine, and its samples. */
function read(text) {
  const lines = text.split("\n").filter((line) => line !== "");
  const { system } = JSON.parse(lines.find((line) => line.startsWith("# {")).slice(2));
  const [names, ...rows] = lines.filter((line) => !line.startsWith("#")).map((line) => line.split(","));
  const samples = rows.map((cells) => {
    const sample = { time_ms: Math.round(Number(cells[0]) * 1000) };
    for (let at = 1; at < names.length; at++) {
      if (cells[at] !== "") sample[names[at]] = Number(cells[at]);
    }
    return sample;
  });
  return { system, samples };
}

before(() => init());

describe("recorded streams", () => {
  const names = readdirSync(STREAMS).filter((name) => name.endsWith(".csv"));

  it("are there", () => assert.ok(names.length >= 3));

  for (const name of names) {
    it(`${name} brings the events that Rust tells`, () => {
      const text = readFileSync(join(STREAMS, name), "utf8");
      const { system, samples } = read(text);
      const { rated_load_a, locked_rotor_a, rated_v } = system.compressor;
      const monitor = new Monitor({ refrigerant: system.refrigerant, rated_load_a, locked_rotor_a, rated_v });
      const told = samples.flatMap((sample) =>
        monitor.push(sample).events.map(({ event, time_ms, values }) => ({ time_s: time_ms / 1000, event, ...values })),
      );
      monitor.free();
      const expected = rust("watch", text, "--json").map((line) => JSON.parse(line)).filter((line) => "event" in line);
      assert.ok(expected.length >= 3);
      assert.deepEqual(told, expected);
    });
  }
});
