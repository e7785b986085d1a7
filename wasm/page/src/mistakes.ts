/** What is wrong with a field, in the page's language and on the user's own scale. */
import { app } from "./app.js";
import { split } from "./number.js";
import type { Mistake } from "./state.js";
import { t } from "./text.js";
import { altitudeM, fromContract, reading, scaleFor, show, unitName, type Scale } from "./units.js";

/** Says a mistake; `typed` is what stands in the field. */
export function mistakeText(mistake: Mistake, typed: string): string {
  switch (mistake.wrong) {
    case "none":
      return t("none");
    case "open":
      return t("open_or_number");
    case "unit":
      return t("unit_wrong");
    case "three":
      return t("three");
    case "thousands": {
      const figure = split(typed)[0];
      return t("thousands", { one: figure.replace(/[.,]/g, ""), other: String(Number(figure.replace(",", "."))) });
    }
    case "refused":
      return refusal(mistake.text);
  }
}

const FIGURE = "(-?\\d+(?:\\.\\d+)?(?:e[+-]?\\d+)?)";
// Longest first: what is a pressure must not be read as a difference of two.
const UNITS = "kPa absolutos?|kPa absolute|kPa/min|kPa|degC|K";
const UNIT = `(?: (${UNITS})\\b)?`;

/** The scale a unit of the library is shown on. */
function scaleOfUnit(unit: string | undefined): Scale {
  switch (unit) {
    case "kPa absolute":
    case "kPa absoluto":
    case "kPa absolutos":
      return scaleFor("pressure", app.units);
    case "kPa/min":
      return scaleFor("pressure_rise", app.units);
    case "kPa":
      return scaleFor("pressure_span", app.units);
    case "degC":
      return scaleFor("temperature", app.units);
    case "K":
      return scaleFor("difference", app.units);
    default:
      return { of: "plain" };
  }
}

function onScale(figure: string, unit: string | undefined): string {
  if (unit === undefined) return figure;
  return reading(Number(figure), scaleOfUnit(unit), altitudeM(app.units));
}

/** The library's refusal with its limits as one's own instruments read them. */
function refusal(text: string): string {
  if (/^(is above the discharge pressure|supera la presión de descarga)/.test(text)) return t("above_discharge");
  const between = new RegExp(`^(?:must lie between|debe estar entre) ${FIGURE} (?:and|y) ${FIGURE}${UNIT}(, (?:the range of|el alcance de).*)?`).exec(text);
  if (between !== null) {
    const [, low, high, unit, table] = between;
    return t(table === undefined ? "between" : "between_table", { low: onScale(low as string, unit), high: onScale(high as string, unit) });
  }
  const least = new RegExp(`^(?:must be at least|debe ser al menos) ${FIGURE}${UNIT}`).exec(text);
  if (least !== null) return t("at_least", { low: onScale(least[1] as string, least[2]) });
  return quoted(text);
}

/** A text of the library with every pressure and temperature in it on the user's scale. */
export function quoted(text: string): string {
  return text.replace(new RegExp(`${FIGURE} (${UNITS})\\b`, "g"), (_whole, figure: string, unit: string) => onScale(figure, unit));
}

/** A figure alone on a scale, with its unit. */
export function onOwnScale(value: number, scale: Scale): string {
  return `${show(fromContract(value, scale, altitudeM(app.units)), scale)} ${unitName(scale)}`.trim();
}
