/** Confirm, do, prove: the cheapest check that confirms, the job with its steps, and the readings before and after. */
import { handling, hoseContents, RimewiseError, weighIn, type Estimate, type Visit } from "rimewise";
import { ask } from "./answer.js";
import { app, edit, followLater, settle } from "./app.js";
import { byId, h } from "./dom.js";
import { estimate, percent, unitOf } from "./figures.js";
import { say, type Pair } from "./language.js";
import { parseNumber } from "./number.js";
import { jobOf, nameOf, verdict, verdictOf, type FullReport } from "./report.js";
import { isShown } from "./views.js";
import { t } from "./text.js";
import { figure } from "./units.js";
import { cautionText } from "./view.js";
import { CAUTION, EFFORT, JOB, measurementName } from "./words.js";

/** The steps of each job (common practice); the library's cautions stand beside them. */
const STEPS: Readonly<Record<string, { steps: readonly Pair[]; cautions: readonly string[] }>> = {
  condenser_air: {
    steps: [
      ["Switch off, lock out.", "Desconecte y bloquee."],
      ["Brush and blow the condenser against the air’s way; wash only where the maker allows it.", "Cepille y sople el condensador en contra del aire; lave solo si el fabricante lo permite."],
      ["Fan: blades, direction, speed, capacitor. Clear what stands in the air’s way.", "Ventilador: aspas, sentido, velocidad, capacitor. Despeje el paso del aire."],
    ],
    cautions: ["electrical"],
  },
  evaporator_air: {
    steps: [
      ["Defrost fully; never chip ice off a coil.", "Descongele por completo; nunca pique hielo del serpentín."],
      ["Fan, door, load and defrost control: find why it iced or blocked.", "Ventilador, puerta, carga y control de descongelación: busque la causa."],
      ["Clean the coil and the drain.", "Limpie el serpentín y el desagüe."],
    ],
    cautions: ["electrical"],
  },
  open_circuit: {
    steps: [
      ["Recover the charge and weigh it: it tells what was in.", "Recupere la carga y pésela: dice cuánto había."],
      ["Find the leak or the blocked part with dry nitrogen; repair it, replace the drier.", "Busque la fuga o la parte tapada con nitrógeno seco; repare, cambie el filtro."],
      ["Pressure test with nitrogen, evacuate until the vacuum holds.", "Pruebe a presión con nitrógeno; vacíe hasta que el vacío se mantenga."],
      ["Charge by weight from the plate.", "Cargue por peso según la placa."],
    ],
    cautions: ["opens_system", "charging"],
  },
  metering_valve: {
    steps: [
      ["Bulb: clean contact, insulated, in the right place. External equaliser open.", "Bulbo: buen contacto, aislado, en su lugar. Igualador externo abierto."],
      ["Superheat: set in quarter turns, wait 15 minutes between them.", "Sobrecalentamiento: ajuste por cuartos de vuelta, espere 15 minutos."],
      ["Only then open the circuit: strainer, cartridge, valve.", "Solo después abra el circuito: malla, cartucho, válvula."],
    ],
    cautions: ["gauges", "opens_system"],
  },
  compressor: {
    steps: [
      ["Rule out start gear, supply and controls first.", "Descarte primero arranque, alimentación y controles."],
      ["Recover; test the oil for acid; find what wore it out.", "Recupere; pruebe acidez del aceite; busque qué lo gastó."],
      ["Replace compressor and drier, evacuate, charge by weight.", "Cambie compresor y filtro, vacíe, cargue por peso."],
    ],
    cautions: ["electrical", "opens_system", "charging"],
  },
  electrical: {
    steps: [
      ["Switch off, lock out, prove dead; discharge capacitors.", "Desconecte, bloquee, compruebe; descargue capacitores."],
      ["Replace what reads outside its limits with the same rating.", "Cambie lo que está fuera de límites por el mismo valor."],
    ],
    cautions: ["electrical"],
  },
  none: { steps: [["Nothing to mend in the circuit: look at load, door, controls, defrost and how it is used.", "Nada que reparar en el circuito: mire carga, puerta, controles, descongelación y uso."]], cautions: [] },
};

/** Readings that no job changes and that are kept when read again. */
const KEPT = /^(winding|terminal|run_capacitor|start_capacitor|insulation)/;

function confirmText(report: FullReport): string {
  const order = ["look", "clamp", "meter", "valve"] as const;
  const cheap = [...report.next].filter((item) => item.effort !== "opens_system").sort((a, b) => order.indexOf(a.effort as "look") - order.indexOf(b.effort as "look"))[0];
  return cheap === undefined ? t("confirm_seen") : t("confirm_with", { name: measurementName(cheap.measurement), effort: EFFORT[cheap.effort] });
}

/** What the ways on cost, from the library's plan. */
function costLines(report: FullReport): string[] {
  const lines: string[] = [];
  const plan = report.plan ?? null;
  const above = plan?.replace_above ?? null;
  const ways = plan?.ways ?? [];
  const cheapest = [...ways].filter((way) => way.expected_cost !== null).sort((a, b) => (a.expected_cost as number) - (b.expected_cost as number))[0];
  if (cheapest !== undefined) {
    lines.push(`${t("cheapest")}: ${nameOf(cheapest.name ?? cheapest.kind)}, ${t("expected_cost", { cost: figure(cheapest.expected_cost as number, 0) })}`);
  }
  if (above !== null) lines.push(t("replace_above", { share: percent(above) }));
  return lines;
}

/** Rows of a comparison: the figures and the verdict of two visits side by side. */
export function compareRows(before: Visit, after: Visit): HTMLElement[] {
  let reports: [FullReport, FullReport];
  try {
    reports = [ask(before) as FullReport, ask(after) as FullReport];
  } catch (error) {
    if (error instanceof RimewiseError) return [];
    throw error;
  }
  const [was, is] = reports;
  const names = ["superheat_k", "compressor_superheat_k", "subcooling_k", "suction_saturation_c", "condensing_c", "pressure_ratio", "discharge_superheat_k", "supply_air_drop_k"] as const;
  const row = (label: string, a: string, b: string) => h("tr", {}, h("th", { scope: "row" }, label), h("td", {}, a), h("td", {}, b));
  const cycle = (report: FullReport, name: (typeof names)[number]) => (report.cycle as unknown as Record<string, Estimate | null>)[name] ?? null;
  return [
    row(t("verdict"), verdict(was).title, verdict(is).title),
    ...names
      .filter((name) => cycle(was, name) !== null || cycle(is, name) !== null)
      .map((name) => row(`${measurementName(name)} ${unitOf(name, app.units)}`.trim(), estimate(name, cycle(was, name), app.units), estimate(name, cycle(is, name), app.units))),
  ];
}

function showJob(): void {
  const report = app.report;
  if (report === undefined) return;
  const code = verdictOf(report);
  const job = jobOf(code, app.accepted.system?.metering);
  const sure = job !== undefined && STEPS[job] !== undefined;
  byId("cdp-none").hidden = sure || app.state.before !== null;
  byId("cdp-body").hidden = !sure;
  if (sure) {
    const { steps, cautions } = STEPS[job] as (typeof STEPS)[string];
    byId("cdp-confirm").textContent = confirmText(report);
    byId("cdp-job").textContent = JOB[job] ?? job;
    byId("cdp-steps").replaceChildren(...steps.map((step) => h("li", {}, say(step))));
    byId("cdp-care").replaceChildren(
      ...report.cautions.filter((caution) => cautions.includes(caution.step)).map((caution) => h("li", {}, h("strong", {}, `${CAUTION[caution.code] ?? caution.code}. `), cautionText(caution))),
    );
    byId("cdp-costs").replaceChildren(...costLines(report).map((line) => h("li", {}, line)));
  }
  const before = app.state.before;
  byId("prove-table").hidden = before === null;
  byId("prove-forget").hidden = before === null;
  byId("prove-rows").replaceChildren(...(before === null ? [] : compareRows(before, app.accepted)));
}

const weighed = { left: "0", length: "1.5", bore: "4.8" };

/** The charge to weigh in, with what stays in the hose at the pressures of this place. */
function showWeighIn(): void {
  const out = byId("weigh-out");
  const plate = app.accepted.system?.charge_kg ?? null;
  const refrigerant = app.accepted.system?.refrigerant ?? null;
  const [left, length, bore] = [parseNumber(weighed.left), parseNumber(weighed.length), parseNumber(weighed.bore)];
  if (plate === null || refrigerant === null || typeof left !== "number" || typeof length !== "number" || typeof bore !== "number") {
    out.textContent = t("weigh_need");
    return;
  }
  try {
    const ambient = app.accepted.readings?.ambient_c ?? 25;
    const pressure = app.accepted.readings?.suction_pressure_kpa ?? 300;
    const hose = hoseContents(refrigerant, { length_m: length, inner_diameter_mm: bore, pressure_kpa: pressure, temperature_c: ambient }).mass_kg;
    const plan = weighIn({ nameplate_kg: plate, residual_kg: left, left_in_hoses_kg: hose });
    const grams = (kg: number) => figure(kg * 1000, 0);
    const liquid = handling(refrigerant).charge_as_liquid_only ? ` ${CAUTION["blend_charge_liquid"] ?? ""}.` : "";
    out.textContent =
      plan.plan === "charge"
        ? `${t("weigh_charge", { grams: grams(plan.by_scale_kg.value), u: grams(plan.by_scale_kg.u), hose: grams(hose) })}${liquid}`
        : t("weigh_recover", { grams: grams(plan.excess_kg.value) });
  } catch (error) {
    if (!(error instanceof RimewiseError)) throw error;
    out.textContent = error.message;
  }
}

export function wireJob(): void {
  byId("prove-again").addEventListener("click", () => {
    edit((state) => {
      state.before = structuredClone(app.accepted);
      for (const path of Object.keys(state.numbers)) {
        const name = path.replace("readings.", "");
        if (path.startsWith("readings.") && !KEPT.test(name)) delete state.numbers[path];
      }
      for (const path of Object.keys(state.choices)) if (path.startsWith("observations.")) delete state.choices[path];
    });
    settle();
    byId("said").textContent = t("prove_started");
  });
  byId("prove-forget").addEventListener("click", () => edit((state) => (state.before = null)));
  for (const [id, name] of [["weigh-left", "left"], ["weigh-length", "length"], ["weigh-bore", "bore"]] as const) {
    const input = byId<HTMLInputElement>(id);
    input.value = weighed[name];
    input.addEventListener("input", () => {
      weighed[name] = input.value;
      showWeighIn();
    });
  }
  followLater(() => {
    if (!isShown("answer")) return;
    showJob();
    if (byId<HTMLDetailsElement>("weigh").open) showWeighIn();
  });
  byId("weigh").addEventListener("toggle", showWeighIn);
}
