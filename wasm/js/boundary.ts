/** The boundary: loading, errors, and lines of JSON in and out. */
import { initSync } from "./glue/rimewise.js";

/** An error as the module writes it. */
interface Refusal {
  error?: string;
  field?: string;
  code?: string;
  value?: number | null;
  limit?: number | null;
  unit?: string | null;
}

/** What the library refuses, with the field that it refuses. */
export class RimewiseError extends Error {
  /** The path of the field, such as `readings.suction_pressure_kpa`; empty where no one field is at fault. */
  readonly field: string;
  /** What kind of mistake it is, where the library tells. */
  readonly code: string | undefined;
  /** The refused value, where a limit was broken. */
  readonly value: number | undefined;
  /** The limit that was broken. */
  readonly limit: number | undefined;
  /** The unit of both. */
  readonly unit: string | undefined;

  constructor(message: string, field: string, told: Refusal = {}) {
    super(message);
    this.name = "RimewiseError";
    this.field = field;
    this.code = told.code;
    this.value = told.value ?? undefined;
    this.limit = told.limit ?? undefined;
    this.unit = told.unit ?? undefined;
  }
}

type PackedSource = string | URL | Request | Response | BufferSource;

/** Where the module can be taken from. */
export type ModuleSource = PackedSource | WebAssembly.Module;

let loading: Promise<void> | undefined;
let ready = false;

/**
 * Loads the module; call it once before anything else, further calls wait for the same load.
 *
 * Without an argument it finds its own file in Node, in a page and behind a bundler. With one it takes the
 * module from there: a URL, a `Response`, the bytes, or a compiled `WebAssembly.Module`.
 */
export function init(source?: ModuleSource | Promise<ModuleSource>): Promise<void> {
  loading ??= start(source).catch((error: unknown) => {
    loading = undefined;
    throw error;
  });
  return loading;
}

/** The part of Node's `process` that reads a local file without an import that bundlers would follow. */
interface NodeProcess {
  getBuiltinModule?: (name: string) => { readFileSync(path: URL): Uint8Array<ArrayBuffer> } | undefined;
}

/** Reads the bytes of a source. */
async function bytesOf(source: PackedSource): Promise<Uint8Array<ArrayBuffer>> {
  if (source instanceof ArrayBuffer) return new Uint8Array(source);
  if (ArrayBuffer.isView(source)) {
    return new Uint8Array(source.buffer as ArrayBuffer, source.byteOffset, source.byteLength);
  }
  const node = (globalThis as { process?: NodeProcess }).process;
  if (source instanceof URL && source.protocol === "file:" && node?.getBuiltinModule) {
    const files = node.getBuiltinModule("node:fs");
    if (files) return files.readFileSync(source);
  }
  const response = source instanceof Response ? source : await fetch(source as RequestInfo | URL);
  if (!response.ok) throw new RimewiseError(`the module cannot be loaded: ${response.status} from ${response.url}`, "");
  return new Uint8Array(await response.arrayBuffer());
}

/** Unpacks a module that lies gzipped on a host that does not say so; a plain one begins with a zero byte and "asm". */
async function plainModule(bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array<ArrayBuffer>> {
  if (bytes[0] !== 0x1f || bytes[1] !== 0x8b) return bytes;
  const unpacked = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Uint8Array(await new Response(unpacked).arrayBuffer());
}

async function start(source?: ModuleSource | Promise<ModuleSource>): Promise<void> {
  const from = (await source) ?? new URL("./glue/rimewise.wasm", import.meta.url);
  if (from instanceof WebAssembly.Module) {
    initSync({ module: from });
  } else {
    const bytes = await bytesOf(from as PackedSource);
    initSync({ module: await WebAssembly.compile(await plainModule(bytes)) });
  }
  ready = true;
}

/** Refuses to go on before the module is loaded. */
export function started(): void {
  if (!ready) {
    throw new RimewiseError("call `await init()` before anything else", "");
  }
}

/** How much one call takes. A visit of every field with ten records stays below a twentieth of each. */
const LIMIT = {
  /** Values in one argument, containers included. */
  values: 20_000,
  /** Characters of text in one argument. */
  characters: 1_000_000,
  /** Objects inside one another. */
  depth: 12,
} as const;

/** Counts what an argument holds, so that a large one is refused before it is copied. */
interface Budget {
  values: number;
  characters: number;
}

/** Writes a value as one line of JSON, and refuses what JSON would silently turn into null, drop or make up. */
export function line(value: unknown): string {
  return JSON.stringify(plain(value, "")) ?? "null";
}

/**
 * Copies plain data: numbers, strings, booleans, null, arrays and objects of them.
 *
 * Refused, with the path to it: numbers JSON cannot hold, boxed values, maps, dates and instances of classes, getters,
 * inherited and symbol keys, holes of arrays, and more than one call takes. The copy has no prototype, so that nothing
 * of the caller's runs or speaks when it is written. What is undefined is left out.
 */
export function plain<T>(value: T, path: string): T {
  return copy(value, path, 0, { values: LIMIT.values, characters: LIMIT.characters }) as T;
}

function copy(value: unknown, path: string, depth: number, budget: Budget): unknown {
  budget.values -= 1;
  switch (typeof value) {
    case "number":
      if (!Number.isFinite(value)) {
        throw new RimewiseError(`${value} is not a reading; leave out what was not measured`, path);
      }
      return value;
    case "string":
      budget.characters -= value.length;
      if (budget.characters < 0) throw tooLarge(path);
      return value;
    case "object":
      break;
    case "boolean":
    case "undefined":
      return value;
    default:
      throw new RimewiseError(`a ${typeof value} is not a reading`, path);
  }
  if (value === null) return null;
  if (depth >= LIMIT.depth) throw new RimewiseError("holds too many objects inside one another", path);
  const at = (key: string) => (path === "" ? key : `${path}.${key}`);
  if (Array.isArray(value)) {
    if (value.length > budget.values) throw tooLarge(path);
    const list: unknown[] = [];
    for (let n = 0; n < value.length; n++) {
      const item = own(value, String(n), at(String(n)));
      if (item === undefined) throw new RimewiseError("is missing", at(String(n)));
      list.push(copy(item, at(String(n)), depth + 1, budget));
    }
    // Whatever writes lists elsewhere on the page has no say here.
    return Object.defineProperty(list, "toJSON", { value: undefined });
  }
  // An object of another page or context has a root of its own, which is a root all the same.
  const prototype = Object.getPrototypeOf(value) as object | null;
  if (prototype !== null && (Object.getPrototypeOf(prototype) !== null || !("hasOwnProperty" in prototype))) {
    throw new RimewiseError("must be a plain object, not an instance of a class", path);
  }
  const keys = Reflect.ownKeys(value);
  if (keys.length > budget.values) throw tooLarge(path);
  const made = Object.create(null) as Record<string, unknown>;
  for (const key of keys) {
    if (typeof key === "symbol") throw new RimewiseError("a symbol is not the name of a field", path);
    budget.characters -= key.length;
    const item = copy(own(value, key, at(key)), at(key), depth + 1, budget);
    if (item !== undefined) made[key] = item;
  }
  if (budget.values < 0 || budget.characters < 0) throw tooLarge(path);
  return made;
}

/** Reads an own value of an object; a getter is refused, since it may answer differently the next time. */
function own(of: object, key: string, path: string): unknown {
  const held = Object.getOwnPropertyDescriptor(of, key);
  if (held === undefined) return undefined;
  if (!("value" in held)) throw new RimewiseError("is a getter, not a value", path);
  return held.value as unknown;
}

function tooLarge(path: string): RimewiseError {
  return new RimewiseError("is larger than any visit", path);
}

/** Takes a text, and refuses everything else: the module reads a text's characters as it is given them. */
export function text(value: unknown, path: string, most = 200): string {
  if (typeof value !== "string") throw new RimewiseError("must be a string", path);
  if (value.length > most) throw tooLarge(path);
  return value;
}

/** Takes one line of JSON, the longest that is read. */
export function lineOf(value: unknown): string {
  return text(value, "", LIMIT.characters);
}

/** Takes a number, not finite ones included, which the calculations answer with nothing; refuses everything else. */
export function number(value: unknown, path: string): number {
  if (typeof value !== "number") throw new RimewiseError("must be a number", path);
  return value;
}

/** Takes true, false or, where it was not said, false. */
export function flag(value: unknown, path: string): boolean {
  if (value === undefined || value === null) return false;
  if (typeof value !== "boolean") throw new RimewiseError("must be true or false", path);
  return value;
}

/** Takes an argument object as a plain copy, apart from its caller. */
export function fields<T extends object>(value: T, path: string): T {
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    throw new RimewiseError("must be an object", path);
  }
  return plain(value, "");
}

/** Reads numbers of an argument object by their names, in their order. */
export function numbersOf<T extends object>(of: T, ...names: (keyof T & string)[]): number[] {
  const given = fields(of, "of");
  return names.map((name) => number(given[name], name));
}

/** Reads an answer, or throws the error it is. */
export function answer<T>(text: string): T {
  const answered = JSON.parse(text) as { status: string } & Refusal;
  if (answered.status !== "ok") {
    throw new RimewiseError(answered.error ?? "no answer", answered.field ?? "", answered);
  }
  return answered as T;
}
