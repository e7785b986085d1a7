// Answers the visits of a file, one JSON object a line, with the package: one line each.
import { readFileSync } from "node:fs";
import { init, diagnoseLine } from "../../wasm/pkg/index.js";

await init();
const lines = readFileSync(process.argv[2], "utf8").split("\n").filter((line) => line !== "");
let out = "";
for (const line of lines) out += diagnoseLine(line) + "\n";
process.stdout.write(out);
