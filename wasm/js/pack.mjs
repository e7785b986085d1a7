// Packs a module: pack.mjs IN OUT. What `unpack.ts` undoes: the refrigerant tables, which are alike in their layout and
// dense in their numbers, are taken out and written column by column; then all of it is packed by LZMA.
import { execFileSync } from "node:child_process";
import { readFileSync, rmSync, writeFileSync } from "node:fs";

const [from, to] = process.argv.slice(2);
const module = readFileSync(from);

/** The layout of a table, from the source that defines it; another layout would only pack less well. */
const layout = {};
for (const name of ["potential", "curve", "table"]) {
  const source = readFileSync(new URL(`../../core/src/refrigerant/${name}.rs`, import.meta.url), "utf8");
  for (const [, constant, terms] of source.matchAll(/pub const (\w+): usize = ([\w +*]+);/g)) {
    // Sums of products of numbers and constants that stand before.
    layout[constant] = terms
      .split("+")
      .map((product) => product.split("*").map((factor) => layout[factor.trim()] ?? Number(factor)))
      .reduce((sum, factors) => sum + factors.reduce((a, b) => a * b, 1), 0);
  }
}
const { END: FIXED, PIECE, LENGTH } = layout;
if (![FIXED, PIECE, LENGTH].every(Number.isInteger)) {
  throw new Error("the layout of a refrigerant table is not where it was");
}

const tables = [];
for (let at = module.indexOf("RMWT"); at >= 0; at = module.indexOf("RMWT", at + 4)) {
  const length = module.readUInt16LE(at + LENGTH);
  // Behind the pieces stand names; those that fill a piece go along as one.
  const pieces = Math.floor((length - FIXED) / PIECE);
  const last = tables.at(-1);
  const apart = last === undefined || at >= last.at + last.length;
  if (apart && length >= FIXED && at + length <= module.length) tables.push({ at, length, pieces });
}

if (tables.length < 100) throw new Error(`only ${tables.length} refrigerant tables were found in the module`);

const columns = [];
for (let byte = 0; byte < FIXED; byte++) for (const table of tables) columns.push(module[table.at + byte]);
for (let byte = 0; byte < PIECE; byte++) {
  for (const table of tables) {
    for (let piece = 0; piece < table.pieces; piece++) columns.push(module[table.at + FIXED + PIECE * piece + byte]);
  }
}
for (const table of tables) {
  for (let byte = FIXED + PIECE * table.pieces; byte < table.length; byte++) columns.push(module[table.at + byte]);
}

// Where each table lies, behind the end of the one before, and its length, byte by byte in columns too.
const places = Buffer.alloc(8 * tables.length);
let before = 0;
tables.forEach(({ at, length }, n) => {
  const place = Buffer.alloc(8);
  place.writeUInt32LE(at - before, 0);
  place.writeUInt32LE(length, 4);
  place.forEach((byte, column) => (places[column * tables.length + n] = byte));
  before = at + length;
});
const rest = Buffer.from(module);
for (const table of tables) rest.fill(0, table.at, table.at + table.length);
const end = Buffer.alloc(16);
[module.length, tables.length, FIXED, PIECE].forEach((number, n) => end.writeUInt32LE(number, 4 * n));
const all = Buffer.concat([rest, Buffer.from(columns), places, end]);

const file = `${to}.plain`;
writeFileSync(file, all);
// Neither code nor columns of bytes are aligned, so the place of a byte tells nothing (pb=0).
const packed = execFileSync("xz", ["--format=lzma", "--lzma1=preset=9e,pb=0", "--stdout", file], { maxBuffer: 1 << 26 });
rmSync(file);
// The packer leaves the size open and ends with a mark; the reader wants to know the size beforehand.
packed.writeBigUInt64LE(BigInt(all.length), 5);
writeFileSync(to, packed);
