/** The invented examples: machines and readings made up for this page, none of a real maker. */
import type { Visit } from "rimewise";
import { say } from "./language.js";
import floodingFreezer from "../examples/flooding_capillary_freezer.json";
import shortCooler from "../examples/short_walk_in_cooler.json";
import tiredCompressor from "../examples/tired_compressor.json";
import dirtyCondenser from "../examples/dirty_condenser.json";
import pullDown from "../examples/freezer_in_pull_down.json";

export interface Example {
  id: string;
  title: string;
  visit: Visit;
}

export const EXAMPLES: Example[] = [
  { id: "flooding_capillary_freezer", title: say(["Flooding capillary freezer", "Congelador capilar con retorno de líquido"]), visit: floodingFreezer as Visit },
  { id: "short_walk_in_cooler", title: say(["Walk-in cooler short of charge", "Cámara fría falta de carga"]), visit: shortCooler as Visit },
  { id: "tired_compressor", title: say(["Tired compressor", "Compresor cansado"]), visit: tiredCompressor as Visit },
  { id: "dirty_condenser", title: say(["Dirty condenser", "Condensador sucio"]), visit: dirtyCondenser as Visit },
  { id: "freezer_in_pull_down", title: say(["Freezer in pull-down", "Congelador bajando temperatura"]), visit: pullDown as Visit },
];
