/** A pocket chart: saturation both ways with its glide, in the user's units. */
import { property, RimewiseError, tableRange } from "rimewise";
import { app, follow } from "./app.js";
import { byId, h } from "./dom.js";
import { t } from "./text.js";
import { altitudeM, figure, fromContract, readTyped, reading, scaleFor, show, toContract, unitName, type Scale } from "./units.js";
import { isShown, onView } from "./views.js";

const typed = { pressure: "", temperature: "" };

const pressureScale = () => scaleFor("pressure", app.units);
const temperatureScale = () => scaleFor("temperature", app.units);
const text = (value: number, scale: Scale) => reading(value, scale, altitudeM(app.units));

function glide(kelvin: number): string {
  if (Math.abs(kelvin) < 0.05) return "";
  const scale: Scale = { of: "difference", unit: app.units.temperature };
  return `, ${t("glide")} ${show(fromContract(kelvin, scale, 0), scale)} ${unitName(scale)}`;
}

/** Answers one question of the chart; where the table ends, says where. */
function answerTo(kind: "pressure" | "temperature"): string {
  const scale = kind === "pressure" ? pressureScale() : temperatureScale();
  const read = readTyped(typed[kind], kind, scale);
  if (typed[kind].trim() === "") return "";
  if (typeof read === "string") return t(read === "unit" ? "unit_wrong" : "none");
  const value = toContract(read.value, read.scale, altitudeM(app.units));
  const refrigerant = app.state.refrigerant;
  try {
    if (kind === "pressure") {
      const at = property({ refrigerant, pressure_kpa: value });
      return `${t("dew")} ${text(at.dew_c, temperatureScale())}, ${t("bubble")} ${text(at.bubble_c, temperatureScale())}${glide(at.dew_c - at.bubble_c)}`;
    }
    const at = property({ refrigerant, temperature_c: value });
    return `${t("dew")} ${text(at.dew_kpa, pressureScale())}, ${t("bubble")} ${text(at.bubble_kpa, pressureScale())}`;
  } catch (error) {
    if (!(error instanceof RimewiseError)) throw error;
    const range = tableRange(refrigerant);
    const [low, high] = kind === "pressure" ? [range.min_kpa, range.max_kpa] : [range.min_c, range.max_c];
    return t("chart_outside", { low: text(low, scale), high: text(high, scale) });
  }
}

function rows(refrigerant: string): HTMLElement[] {
  const range = tableRange(refrigerant);
  const fahrenheit = app.units.temperature === "degF";
  const step = fahrenheit ? 10 : 5;
  const [low, high] = [Math.max(range.min_c, -50), Math.min(range.max_c, 75)].map((c) => fromContract(c, temperatureScale(), 0)) as [number, number];
  const made: HTMLElement[] = [];
  for (let value = Math.ceil(low / step) * step; value <= high; value += step) {
    try {
      const at = property({ refrigerant, temperature_c: toContract(value, temperatureScale(), 0) });
      made.push(h("tr", {}, h("th", { scope: "row" }, figure(value, 0)), h("td", {}, text(at.dew_kpa, pressureScale())), h("td", {}, text(at.bubble_kpa, pressureScale()))));
    } catch (error) {
      if (!(error instanceof RimewiseError)) throw error;
    }
  }
  return made;
}

let drawn = "";

function showChart(): void {
  const { refrigerant } = app.state;
  byId("chart-none").hidden = refrigerant !== "";
  byId("chart-body").hidden = refrigerant === "";
  if (refrigerant === "") return;
  const key = `${refrigerant}|${JSON.stringify(app.units)}`;
  if (key !== drawn) {
    drawn = key;
    byId("chart-title").textContent = `${t("chart")}: ${refrigerant}`;
    byId("chart-head").textContent = unitName(temperatureScale());
    byId("chart-rows").replaceChildren(...rows(refrigerant));
    byId("chart-pressure-unit").textContent = unitName(pressureScale());
    byId("chart-temperature-unit").textContent = unitName(temperatureScale());
  }
  byId("chart-pressure-out").textContent = answerTo("pressure");
  byId("chart-temperature-out").textContent = answerTo("temperature");
}

export function wireChart(): void {
  for (const kind of ["pressure", "temperature"] as const) {
    const input = byId<HTMLInputElement>(`chart-${kind}`);
    input.addEventListener("input", () => {
      typed[kind] = input.value;
      showChart();
    });
  }
  follow(() => {
    if (isShown("chart")) showChart();
  });
  onView((view) => {
    if (view === "chart") showChart();
  });
}
