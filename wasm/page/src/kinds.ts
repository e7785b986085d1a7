/** Kinds of machines as people name them, and what is usual on each (common practice, judged). */
import { say, type Pair } from "./language.js";
import type { State } from "./state.js";

interface Kind {
  id: string;
  label: string;
  choices: Readonly<Record<string, string | boolean>>;
  refrigerants: readonly string[];
}

function kind(id: string, label: Pair, duty: string | undefined, metering: string | undefined, receiver: boolean | undefined, refrigerants: readonly string[]): Kind {
  return {
    id,
    label: say(label),
    choices: {
      ...(duty === undefined ? {} : { "system.duty": duty }),
      ...(metering === undefined ? {} : { "system.metering": metering }),
      ...(receiver === undefined ? {} : { "system.receiver": receiver }),
    },
    refrigerants,
  };
}

const SMALL = ["R290", "R600a", "R134a", "R404A", "R452A", "R22"];
const WALK_IN = ["R448A", "R449A", "R404A", "R134a", "R454C", "R455A", "R452A", "R22"];
const COMFORT = ["R410A", "R32", "R454B", "R22", "R407C", "R290"];

export const KINDS: readonly Kind[] = [
  kind("small_freezer", ["Small freezer, capillary", "Congelador chico, capilar"], "freezer", "capillary", false, SMALL),
  kind("small_cooler", ["Small cooler, capillary", "Enfriador chico, capilar"], "cooler", "capillary", false, SMALL),
  kind("walk_in_freezer", ["Walk-in freezer, valve", "Cámara de congelados, válvula"], "freezer", "thermostatic_valve", true, WALK_IN),
  kind("walk_in_cooler", ["Walk-in cooler, valve", "Cámara fría, válvula"], "cooler", "thermostatic_valve", true, WALK_IN),
  kind("display_case", ["Display case, valve", "Exhibidor, válvula"], "cooler", "thermostatic_valve", undefined, WALK_IN),
  kind("ac_orifice", ["Air conditioner, fixed orifice", "Aire acondicionado, orificio fijo"], "air_conditioning", "orifice", false, COMFORT),
  kind("ac_valve", ["Air conditioner, valve", "Aire acondicionado, válvula"], "air_conditioning", "thermostatic_valve", false, COMFORT),
  kind("other", ["Another, or not known", "Otra, o no se sabe"], undefined, undefined, undefined, ["R290", "R134a", "R404A", "R448A", "R410A", "R32", "R22", "R600a"]),
];

/** The kind that was picked. */
export function kindOf(state: State): Kind | undefined {
  return KINDS.find((one) => one.id === state.kind);
}

/** Takes what is usual on a kind over into a visit. */
export function applyKind(state: State, one: Kind): void {
  state.kind = one.id;
  for (const path of ["system.duty", "system.metering", "system.receiver"]) {
    const usual = one.choices[path];
    if (usual === undefined) delete state.choices[path];
    else state.choices[path] = usual;
  }
}
