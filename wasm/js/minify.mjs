// Minifies modules in place, keeping what they export: minify.mjs FILE...
import { readFileSync, writeFileSync } from "node:fs";
import { minifySync } from "rolldown/utils";

for (const file of process.argv.slice(2)) {
  const made = minifySync(file, readFileSync(file, "utf8"), { module: true });
  if (made.errors.length > 0) throw new Error(`${file}: ${made.errors.map((error) => error.message).join("; ")}`);
  writeFileSync(file, `${made.code}\n`);
}
