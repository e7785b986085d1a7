/** The machine as a picture: the circuit of any textbook, each reading where its clamp or gauge sits. */
import type { Estimate } from "rimewise";
import { accepts } from "./accepts.js";
import { app } from "./app.js";
import { byId, h, s } from "./dom.js";
import { openEntry } from "./entry.js";
import { fieldOf, type Field, type NumberField } from "./fields.js";
import { apartMark, apartOf, apartText, estimate, unitOf } from "./figures.js";
import { isFilled, stopped } from "./row.js";
import { shown } from "./state.js";
import { t } from "./text.js";
import { scaleFor, unitName } from "./units.js";
import { get } from "./tree.js";

/** A place of the circuit: its reading, where its mark is, and where its figure stands. */
interface Place {
  name: string;
  x: number;
  y: number;
  side: "start" | "end" | "middle";
  dx: number;
  dy: number;
}

const at = (name: string, x: number, y: number, side: Place["side"], dx: number, dy: number): Place => ({ name, x, y, side, dx, dy });

/** Every place, in the order of the flow. */
const PLACES: readonly Place[] = [
  at("suction_pressure_kpa", 350, 372, "start", 15, 5),
  at("suction_line_c", 350, 432, "start", 15, 5),
  at("discharge_pressure_kpa", 350, 208, "start", 15, 5),
  at("discharge_line_c", 350, 150, "start", 15, 5),
  at("condenser_middle_c", 240, 80, "middle", 0, -16),
  at("ambient_c", 214, 20, "start", 16, 5),
  at("condenser_exhaust_c", 214, 144, "start", 16, 5),
  at("liquid_pressure_kpa", 130, 112, "end", -15, -2),
  at("liquid_line_c", 130, 168, "end", -15, 5),
  at("drier_outlet_c", 130, 252, "end", -15, 5),
  at("evaporator_inlet_c", 130, 404, "end", -15, 5),
  at("space_c", 214, 562, "start", 16, 5),
  at("supply_air_c", 214, 434, "start", 16, 5),
  at("evaporator_pressure_kpa", 322, 522, "start", 15, 18),
  at("evaporator_outlet_c", 350, 486, "start", 15, 5),
  at("current_a", 322, 290, "end", -18, 5),
];

const LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";

/** How a reading stands: what was read, what a healthy machine would show, and how far apart. */
interface Standing {
  field: NumberField;
  text: string;
  healthy: string;
  apart: number | undefined;
}

function standingOf(name: string): Standing | undefined {
  const field = fieldOf(name);
  if (field?.type !== "number" || !accepts(field.path)) return undefined;
  const unit = field.unit ?? unitName(scaleFor(field.kind, app.units));
  const typed = shown(field, app.state.numbers[field.path], app.units);
  const text = typed === "" ? "" : /[a-z°]/i.test(typed) ? typed : `${typed} ${unit}`;
  const expected = stopped() ? null : ((app.report?.expected as Record<string, Estimate | null> | undefined)?.[name] ?? null);
  const value = get(app.accepted, field.path);
  // The instrument's own share is in the cycle's figures; beside a bare reading a usual one stands (judged).
  const u = field.kind === "pressure" ? 0.01 * Number(value) + 2 : field.kind === "temperature" ? 0.7 : 0.015 * Number(value);
  return {
    field,
    text,
    healthy: expected === null ? "" : `${estimate(name, expected, app.units)} ${unitOf(name, app.units)}`,
    apart: expected !== null && typeof value === "number" ? apartOf({ value, u }, expected) : undefined,
  };
}

const opens = (name: string) => () => {
  const field = fieldOf(name);
  if (field !== undefined) openEntry([field]);
};

function mark(place: Place, letter: string, standing: Standing): SVGElement {
  const state = standing.text === "" ? "empty" : standing.apart === undefined || Math.abs(standing.apart) < 1 ? "fine" : standing.apart > 0 ? "high" : "low";
  const sign = apartMark(standing.apart);
  const value = standing.text === "" ? "" : `${standing.text}${sign === "" ? "" : ` ${sign}`}`;
  // What can be seen comes first in what is said.
  const words = [`${letter} ${value}`.trim(), standing.field.label, value === "" ? t("not_taken") : "", standing.healthy === "" ? "" : t("healthy_is", { value: standing.healthy }), apartText(standing.apart)];
  const press = (event: Event) => {
    if (!["Enter", " "].includes((event as KeyboardEvent).key)) return;
    event.preventDefault();
    opens(place.name)();
  };
  return s(
    "g",
    {
      class: `place ${state}`,
      role: "button",
      tabindex: 0,
      "data-place": place.name,
      click: opens(place.name),
      keydown: press,
    },
    s("title", {}, words.filter((word) => word !== "").join(", ")),
    s("circle", { class: "reach", cx: place.x, cy: place.y, r: 24 }),
    s("circle", { class: "spot", cx: place.x, cy: place.y, r: 11 }),
    s("text", { class: "letter", x: place.x, y: place.y + 4.5, "text-anchor": "middle" }, letter),
    standing.text !== "" && s("text", { class: "value", x: place.x + place.dx, y: place.y + place.dy, "text-anchor": place.side }, value),
  );
}

/** A coil as a textbook draws it: a zigzag between two ends. */
function coil(x1: number, x2: number, y: number, height: number, turns: number): string {
  const step = (x2 - x1) / turns;
  let d = `M${x1},${y}`;
  for (let n = 0; n < turns; n++) d += `l${step / 4},${-height / 2}l${step / 2},${height}l${step / 4},${-height / 2}`;
  return d;
}

function metering(): { label: string; drawn: SVGElement[] } {
  switch (app.state.choices["system.metering"]) {
    case "capillary":
      return { label: t("part_capillary"), drawn: [s("path", { class: "pipe thin", d: "M130,300c-34,8 34,14 0,22c-34,8 34,14 0,22c-34,8 34,14 0,22" })] };
    case "orifice":
      return { label: t("part_orifice"), drawn: [s("path", { class: "pipe", d: "M130,300V366" }), s("path", { class: "part", d: "M112,328h14M134,328h14M112,338h14M134,338h14" })] };
    case "thermostatic_valve":
    case "electronic_valve":
      return { label: t("part_valve"), drawn: [s("path", { class: "pipe", d: "M130,300V366" }), s("path", { class: "part solid", d: "M114,316H146L114,350H146Z" })] };
    default:
      return { label: t("part_metering"), drawn: [s("path", { class: "pipe", d: "M130,300V366" }), s("path", { class: "part", d: "M114,316H146V350H114Z" })] };
  }
}

/** Draws the circuit and the list beside it. */
export function showCircuit(): void {
  const device = metering();
  const label = (x: number, y: number, text: string, anchor = "middle") => s("text", { class: "part-name", x, y, "text-anchor": anchor }, text);
  const arrow = (x: number, y: number) => s("path", { class: "air", d: `M${x},${y}v14m-4,-5l4,5l4,-5` });
  const receiver = app.state.choices["system.receiver"] === true;
  const known = PLACES.map((place) => [place, standingOf(place.name)] as const).filter((pair): pair is readonly [Place, Standing] => pair[1] !== undefined);
  byId("circuit").replaceChildren(
    s(
      "svg",
      { viewBox: "30 0 440 590", role: "group", "aria-label": t("machine_circuit") },
      // High side, then low side: the pipes' weight tells them apart without colour.
      s("path", { class: "pipe high", d: "M350,258V80H310M170,80H130V192M130,232V300" }),
      s("path", { class: "pipe low", d: "M130,366V500H170M310,500H350V322" }),
      s("path", { class: "pipe high", d: coil(170, 310, 80, 34, 5) }),
      s("path", { class: "pipe low", d: coil(170, 310, 500, 34, 5) }),
      s("rect", { class: "part", x: 160, y: 50, width: 160, height: 60, rx: 6 }),
      s("rect", { class: "part", x: 160, y: 470, width: 160, height: 60, rx: 6 }),
      s("circle", { class: "part solid", cx: 350, cy: 290, r: 32 }),
      s("path", { class: "part", d: "M336,276L364,290L336,304" }),
      s("rect", { class: "part solid", x: 116, y: 192, width: 28, height: 40, rx: 12 }),
      receiver && s("rect", { class: "part solid", x: 108, y: 122, width: 44, height: 26, rx: 12 }),
      ...device.drawn,
      ...[180, 245, 275, 305].flatMap((x) => [arrow(x, 30), arrow(x, 116), arrow(x, 446), arrow(x, 538)]),
      label(150, 52, t("part_condenser"), "end"),
      label(152, 540, t("part_evaporator"), "end"),
      label(390, 295, t("part_compressor"), "start"),
      label(152, 216, t("part_drier"), "start"),
      receiver && label(158, 139, t("part_receiver"), "start"),
      label(156, 338, device.label, "start"),
      ...known.map(([place, standing], n) => mark(place, LETTERS[n] ?? "", standing)),
    ),
  );
  byId("circuit-list").replaceChildren(
    ...known.map(([place, standing], n) =>
      h(
        "li",
        {},
        h(
          "button",
          { type: "button", class: `place-row${isFilled(standing.field as Field) ? " taken" : ""}`, click: opens(place.name) },
          h("span", { class: "letter" }, LETTERS[n] ?? ""),
          h("span", { class: "name" }, standing.field.label),
          h("span", { class: "value" }, standing.text === "" ? "–" : standing.text),
          h("span", { class: "healthy" }, standing.healthy === "" ? "" : t("healthy_is", { value: standing.healthy })),
          h("span", { class: "mark" }, standing.apart === undefined ? "" : `${apartMark(standing.apart)} ${apartText(standing.apart)}`),
        ),
      ),
    ),
  );
}
