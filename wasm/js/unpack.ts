/**
 * Unpacks the module. It travels packed by LZMA with its refrigerant tables written column by column, a fifth smaller
 * than by the gzip that registries and servers apply anyway: the tables are dense numbers, and phones load them over
 * poor networks. `pack.mjs` is the other side.
 */

/** Unpacks the module that `pack.mjs` has packed. */
export function unpack(input: Uint8Array): Uint8Array<ArrayBuffer> {
  const all = inflate(input);
  const view = new DataView(all.buffer);
  const [size, tables, fixed, piece] = [16, 12, 8, 4].map((back) => view.getUint32(all.length - back, true)) as [
    number,
    number,
    number,
    number,
  ];
  const column = (byte: number, n: number) => all[all.length - 16 - (8 - byte) * tables + n] as number;
  const number = (byte: number, n: number) => [3, 2, 1, 0].reduce((sum, k) => 256 * sum + column(byte + k, n), 0);
  let before = 0;
  const places = Array.from({ length: tables }, (_, n) => {
    const start = before + number(0, n);
    const end = start + number(4, n);
    before = end;
    const curves = start + fixed;
    // Behind the whole pieces stand names.
    return { start, curves, tail: end - ((end - curves) % piece), end };
  });
  let from = size;
  for (let byte = 0; byte < fixed; byte++) {
    for (const { start } of places) all[start + byte] = all[from++] as number;
  }
  for (let byte = 0; byte < piece; byte++) {
    for (const { curves, tail } of places) {
      for (let at = curves + byte; at < tail; at += piece) all[at] = all[from++] as number;
    }
  }
  for (const { tail, end } of places) {
    for (let at = tail; at < end; at++) all[at] = all[from++] as number;
  }
  return all.subarray(0, size);
}

/** The probability of one bit, in 1/2048; half to begin with. */
function model(size: number): Uint16Array {
  return new Uint16Array(size).fill(1024);
}

/** Lengths of matches: short, middle and long ones, by the place of the output. */
interface Lengths {
  choice: Uint16Array;
  short: Uint16Array;
  middle: Uint16Array;
  long: Uint16Array;
}

function lengths(): Lengths {
  return { choice: model(2), short: model(16 << 3), middle: model(16 << 3), long: model(256) };
}

/** Unpacks an .lzma file that states its size. */
function inflate(input: Uint8Array): Uint8Array<ArrayBuffer> {
  const view = new DataView(input.buffer, input.byteOffset, input.byteLength);
  const properties = view.getUint8(0);
  const lc = properties % 9;
  const lp = Math.floor(properties / 9) % 5;
  const pb = Math.floor(properties / 45);
  const size = view.getUint32(5, true);
  const output = new Uint8Array(size);

  // The range decoder.
  let at = 18;
  let range = 0xffff_ffff;
  let code = view.getUint32(14);
  const normalise = () => {
    if (range < 0x100_0000) {
      range = (range << 8) >>> 0;
      code = ((code << 8) | (input[at++] ?? 0)) >>> 0;
    }
  };
  const bit = (models: Uint16Array, index: number): number => {
    const p = models[index] as number;
    const bound = (range >>> 11) * p;
    let value = 0;
    if (code < bound) {
      range = bound;
      models[index] = p + ((2048 - p) >>> 5);
    } else {
      range -= bound;
      code -= bound;
      models[index] = p - (p >>> 5);
      value = 1;
    }
    normalise();
    return value;
  };
  const tree = (models: Uint16Array, base: number, bits: number): number => {
    let m = 1;
    for (let n = 0; n < bits; n++) m = (m << 1) | bit(models, base + m);
    return m - (1 << bits);
  };
  const reversed = (models: Uint16Array, base: number, bits: number): number => {
    let m = 1;
    let value = 0;
    for (let n = 0; n < bits; n++) {
      const b = bit(models, base + m);
      m = (m << 1) | b;
      value |= b << n;
    }
    return value;
  };
  const plain = (bits: number): number => {
    let value = 0;
    for (let n = 0; n < bits; n++) {
      range >>>= 1;
      const b = code >= range ? 1 : 0;
      if (b === 1) code -= range;
      normalise();
      value = value * 2 + b;
    }
    return value;
  };

  // The models.
  const literals = model(0x300 << (lc + lp));
  const isMatch = model(12 << 4);
  const isRep = model(12);
  const isRep0 = model(12);
  const isRep1 = model(12);
  const isRep2 = model(12);
  const isShortRep = model(12 << 4);
  const slots = model(4 << 6);
  const places = model(116);
  const aligned = model(16);
  const fresh = lengths();
  const again = lengths();
  const length = (models: Lengths, place: number): number => {
    if (bit(models.choice, 0) === 0) return tree(models.short, place << 3, 3);
    if (bit(models.choice, 1) === 0) return 8 + tree(models.middle, place << 3, 3);
    return 16 + tree(models.long, 0, 8);
  };
  const distance = (short: number): number => {
    const slot = tree(slots, Math.min(short, 3) << 6, 6);
    if (slot < 4) return slot;
    const bits = (slot >> 1) - 1;
    const base = (2 | (slot & 1)) * 2 ** bits;
    if (slot < 14) return base + reversed(places, base - slot, bits);
    return base + plain(bits - 4) * 16 + reversed(aligned, 0, 4);
  };

  let state = 0;
  let done = 0;
  let [rep0, rep1, rep2, rep3] = [0, 0, 0, 0];
  while (done < size) {
    const place = done & ((1 << pb) - 1);
    if (bit(isMatch, (state << 4) + place) === 0) {
      const before = done > 0 ? (output[done - 1] as number) : 0;
      const base = 0x300 * (((done & ((1 << lp) - 1)) << lc) + (before >> (8 - lc)));
      let symbol = 1;
      if (state >= 7) {
        let match = output[done - rep0 - 1] as number;
        do {
          const expected = (match >> 7) & 1;
          match <<= 1;
          const b = bit(literals, base + ((1 + expected) << 8) + symbol);
          symbol = (symbol << 1) | b;
          if (expected !== b) break;
        } while (symbol < 0x100);
      }
      while (symbol < 0x100) symbol = (symbol << 1) | bit(literals, base + symbol);
      output[done++] = symbol & 0xff;
      state = state < 4 ? 0 : state < 10 ? state - 3 : state - 6;
      continue;
    }
    let run: number;
    if (bit(isRep, state) === 1) {
      if (bit(isRep0, state) === 0) {
        if (bit(isShortRep, (state << 4) + place) === 0) {
          state = state < 7 ? 9 : 11;
          output[done] = output[done - rep0 - 1] as number;
          done++;
          continue;
        }
      } else if (bit(isRep1, state) === 0) {
        [rep0, rep1] = [rep1, rep0];
      } else if (bit(isRep2, state) === 0) {
        [rep0, rep1, rep2] = [rep2, rep0, rep1];
      } else {
        [rep0, rep1, rep2, rep3] = [rep3, rep0, rep1, rep2];
      }
      run = length(again, place);
      state = state < 7 ? 8 : 11;
    } else {
      [rep1, rep2, rep3] = [rep0, rep1, rep2];
      run = length(fresh, place);
      state = state < 7 ? 7 : 10;
      rep0 = distance(run);
      if (rep0 === 0xffff_ffff) break;
    }
    if (rep0 >= done) throw new Error("the packed module is damaged");
    for (const end = Math.min(done + run + 2, size); done < end; done++) {
      output[done] = output[done - rep0 - 1] as number;
    }
  }
  return output;
}
