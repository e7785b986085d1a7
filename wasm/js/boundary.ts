/** The boundary: loading, errors, and lines of JSON in and out. */
import { initSync } from "./glue/rimewise.js";
import { unpack } from "./unpack.js";

/** What the library refuses, with the field that it refuses. */
export class RimewiseError extends Error {
  /** The path of the field, such as `readings.suction_pressure_kpa`; empty where no one field is at fault. */
  readonly field: string;

  constructor(message: string, field: string) {
    super(message);
    this.name = "RimewiseError";
    this.field = field;
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

async function start(source?: ModuleSource | Promise<ModuleSource>): Promise<void> {
  const from = (await source) ?? new URL("./glue/rimewise.module", import.meta.url);
  if (from instanceof WebAssembly.Module) {
    initSync({ module: from });
  } else {
    const bytes = await bytesOf(from as PackedSource);
    // A module that somebody has unpacked already begins with a zero byte and "asm".
    const unpacked = bytes[0] === 0 && bytes[1] === 0x61 ? bytes : unpack(bytes);
    initSync({ module: await WebAssembly.compile(unpacked) });
  }
  ready = true;
}

/** Refuses to go on before the module is loaded. */
export function started(): void {
  if (!ready) {
    throw new RimewiseError("call `await init()` before anything else", "");
  }
}

/** Writes a value as one line of JSON, and refuses what JSON would silently turn into null or drop. */
export function line(value: unknown): string {
  refuse(value, "");
  return JSON.stringify(value) ?? "null";
}

/** Refuses numbers and values that JSON cannot hold, with the path to them. */
export function refuse(value: unknown, path: string): void {
  switch (typeof value) {
    case "number":
      if (!Number.isFinite(value)) {
        throw new RimewiseError(`${value} is not a reading; leave out what was not measured`, path);
      }
      break;
    case "bigint":
    case "function":
    case "symbol":
      throw new RimewiseError(`a ${typeof value} is not a reading`, path);
    case "object":
      for (const [key, inner] of Object.entries(value ?? {})) {
        refuse(inner, path === "" ? key : `${path}.${key}`);
      }
  }
}

/** Reads an answer, or throws the error it is. */
export function answer<T>(text: string): T {
  const answered = JSON.parse(text) as { status: string; error?: string; field?: string };
  if (answered.status !== "ok") {
    throw new RimewiseError(answered.error ?? "no answer", answered.field ?? "");
  }
  return answered as T;
}
