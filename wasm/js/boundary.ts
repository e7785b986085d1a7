/** The boundary: loading, errors, and lines of JSON in and out. */
import load, { initSync, type InitInput } from "./glue/rimewise.js";

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

let loading: Promise<void> | undefined;
let ready = false;

/**
 * Loads the module; call it once before anything else, further calls wait for the same load.
 *
 * Without an argument it finds its own `.wasm` file in Node, in a page and behind a bundler. With one it takes the
 * module from there: a URL, a `Response`, the bytes, or a compiled `WebAssembly.Module`.
 */
export function init(source?: InitInput | Promise<InitInput>): Promise<void> {
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

async function start(source?: InitInput | Promise<InitInput>): Promise<void> {
  const own = new URL("./glue/rimewise_bg.wasm", import.meta.url);
  const node = (globalThis as { process?: NodeProcess }).process;
  if (source === undefined && own.protocol === "file:" && node?.getBuiltinModule) {
    const files = node.getBuiltinModule("node:fs");
    if (files) {
      initSync({ module: files.readFileSync(own) });
      ready = true;
      return;
    }
  }
  await load({ module_or_path: source ?? own });
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
