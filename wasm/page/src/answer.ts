/** Asks the library, as far as the visit can be read, and says what was left out. */
import { diagnose, RimewiseError, type Report, type Visit } from "rimewise";
import { LANGUAGE } from "./language.js";
import { accepts } from "./accepts.js";
import { take } from "./tree.js";
import type { Mistakes } from "./state.js";

export interface Answer {
  /** The report; absent where nothing could be answered. */
  report?: Report;
  /** What the report answers: the visit without what was refused. */
  accepted: Visit;
  /** What is wrong with a field, by its path. */
  mistakes: Mistakes;
  /** A fault that belongs to no field. */
  fault?: string;
}

/** Asks for a report in the page's language, where the library speaks several. */
export function ask(visit: Visit): Report {
  return diagnose((accepts("language") ? { ...visit, language: LANGUAGE } : visit) as Visit);
}

/** Answers a visit. A field that the library refuses is named, left out, and the rest is answered all the same. */
export function answer(visit: Visit, mistakes: Mistakes): Answer {
  const accepted = structuredClone(visit);
  const all: Mistakes = new Map(mistakes);
  // Each turn takes one field out, so the number of fields bounds the turns.
  for (let turn = 0; turn < 200; turn++) {
    try {
      return { report: ask(accepted), accepted, mistakes: all };
    } catch (error) {
      if (!(error instanceof RimewiseError)) throw error;
      if (error.field === "" || !take(accepted, error.field)) {
        return { accepted, mistakes: all, fault: `${error.field} ${error.message}`.trim() };
      }
      all.set(error.field, { wrong: "refused", text: error.message });
    }
  }
  return { accepted, mistakes: all, fault: "too many fields cannot be read" };
}
