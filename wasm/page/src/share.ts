/** One file, or one link, that holds a visit: what was entered, how, its names, its report and its units. */
import { diagnose, RimewiseError, type Visit } from "rimewise";
import { app } from "./app.js";
import { designation } from "./search.js";
import { emptyState, fromVisit, readState, readUnits, type State } from "./state.js";
import { t } from "./text.js";
import type { Units } from "./units.js";

const FORMAT = "rimewise.visit.1";

/** The longest file or link that is read. */
const LONGEST = 2_000_000;

interface Shared {
  format: typeof FORMAT;
  visit: Visit;
  entered: State;
  units: Units;
  report?: unknown;
}

/** The file of the visit as it stands. */
export function sharedFile(): string {
  const shared: Shared = { format: FORMAT, visit: app.visit, entered: app.state, units: app.units, report: app.report };
  return `${JSON.stringify(shared, null, 2)}\n`;
}

/** What a file held. */
export interface Opened {
  state: State;
  units: Units | undefined;
}

/** Why a file is not opened, in words. */
export class NotOpened extends Error {}

/** Reads a visit, or a file of this page that holds one. What the library refuses is not opened, so nothing is lost in silence. */
export function readShared(text: string): Opened {
  if (text.length > LONGEST) throw new NotOpened(t("no_json"));
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    throw new NotOpened(t("no_json"));
  }
  const shared = value as Partial<Shared> | null;
  const own = typeof shared === "object" && shared !== null && shared.format === FORMAT;
  const visit = (own ? (shared.visit ?? {}) : value) as Visit;
  try {
    diagnose(visit);
  } catch (error) {
    if (error instanceof RimewiseError) throw new NotOpened(`${error.field} ${error.message}`.trim());
    throw error;
  }
  if (own && shared.entered !== undefined) {
    return { state: readState(shared.entered), units: shared.units === undefined ? undefined : readUnits(shared.units, app.units) };
  }
  return { state: adopt(visit), units: undefined };
}

/** Takes a visit over; its refrigerant takes the library's way of writing it. */
export function adopt(visit: Visit): State {
  const state = fromVisit(visit);
  state.refrigerant = designation(state.refrigerant) ?? state.refrigerant;
  return state;
}

async function through(bytes: Uint8Array<ArrayBuffer>, stream: GenericTransformStream): Promise<Uint8Array<ArrayBuffer>> {
  const flow = new Blob([bytes]).stream().pipeThrough(stream as ReadableWritablePair<Uint8Array<ArrayBuffer>, Uint8Array<ArrayBuffer>>);
  const chunks: Uint8Array<ArrayBuffer>[] = [];
  let size = 0;
  const reader = flow.getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    size += value.length;
    // A short link can unpack into anything.
    if (size > LONGEST) throw new NotOpened(t("no_json"));
    chunks.push(value);
  }
  return new Uint8Array(await new Blob(chunks).arrayBuffer());
}

/** A link to this page with the visit behind its #, which browsers never send. */
export async function sharedLink(): Promise<string> {
  const shared: Shared = { format: FORMAT, visit: app.visit, entered: { ...emptyState(), ...app.state }, units: app.units };
  const packed = await through(new TextEncoder().encode(JSON.stringify(shared)), new CompressionStream("deflate-raw"));
  const text = btoa(Array.from(packed, (byte) => String.fromCharCode(byte)).join(""));
  return `${location.origin}${location.pathname}#v=${text.replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "")}`;
}

/** Reads the visit of a link; nothing where the link holds none. */
export async function fromLink(hash: string): Promise<Opened | undefined> {
  const held = /^#v=([\w-]+)$/.exec(hash)?.[1];
  if (held === undefined) return undefined;
  let text: string;
  try {
    const bytes = Uint8Array.from(atob(held.replaceAll("-", "+").replaceAll("_", "/")), (one) => one.charCodeAt(0));
    text = new TextDecoder().decode(await through(bytes, new DecompressionStream("deflate-raw")));
  } catch (error) {
    throw error instanceof NotOpened ? error : new NotOpened(t("no_json"));
  }
  return readShared(text);
}
