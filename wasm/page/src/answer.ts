/** Asks the library, as far as the visit can be read, and says what was left out. */
import { diagnose, RimewiseError, type Report, type Visit } from "rimewise";
import { take, type Mistakes } from "./state.js";

export interface Answer {
  /** The report; absent where nothing could be answered. */
  report?: Report;
  /** What is wrong with a field, by its path. */
  mistakes: Mistakes;
  /** A fault that belongs to no field. */
  fault?: string;
}

/** Answers a visit. A field that the library refuses is named, left out, and the rest is answered all the same. */
export function answer(visit: Visit, mistakes: Mistakes): Answer {
  const rest = structuredClone(visit);
  const all: Mistakes = new Map(mistakes);
  // Each turn takes one field out, so the number of fields bounds the turns.
  for (let turn = 0; turn < 200; turn++) {
    try {
      return { report: diagnose(rest), mistakes: all };
    } catch (error) {
      if (!(error instanceof RimewiseError)) throw error;
      if (error.field === "" || !take(rest, error.field)) {
        return { mistakes: all, fault: `${error.field} ${error.message}`.trim() };
      }
      all.set(error.field, error.message);
    }
  }
  return { mistakes: all, fault: "too many fields cannot be read" };
}
