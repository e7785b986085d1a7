/** Numbers as people type them, read only where they can mean one thing. */

/** Why a text is no number: nothing of the kind, or two numbers at once. */
export type Misread = "none" | "thousands";

/** Splits a typed text into its figure and the unit behind it. */
export function split(text: string): [figure: string, unit: string] {
  const parts = /^\s*([+\-−–]?[\d.,\s\u00a0\u202f'’]*\d[.,]?(?:e[+-]?\d+)?)\s*(.*?)\s*$/i.exec(text);
  return parts === null ? [text, ""] : [parts[1] as string, parts[2] as string];
}

/** Whether a comma separates decimals where the browser is at home. */
function commaIsDecimal(): boolean {
  try {
    return new Intl.NumberFormat(navigator.language).format(1.5).includes(",");
  } catch {
    return false;
  }
}

/**
 * Reads a number: a point or a comma for decimals, a minus sign of any kind, thousands in groups.
 *
 * "4,5" is four and a half. "1,500" is a thousand and a half or fifteen hundred: it is not read, and neither is
 * "1.500" where commas separate decimals. "1,500.5", "1 500" and "1,500,000" can mean one thing only.
 */
export function parseNumber(text: string, comma = commaIsDecimal()): number | Misread {
  let plain = text.trim().replace(/[−–]/g, "-").replace(/[\u00a0\u202f'’]/g, " ");
  if (/^[+-]?\d{1,3}( \d{3})+([.,]\d+)?$/.test(plain)) plain = plain.replace(/ /g, "");
  plain = plain.replace(/^([+-]) +/, "$1");
  const sign = /^[+-]/.exec(plain)?.[0] ?? "";
  let body = plain.slice(sign.length);
  const points = (body.match(/\./g) ?? []).length;
  const commas = (body.match(/,/g) ?? []).length;
  if (points > 0 && commas > 0) {
    // The last of the two separates decimals, and the other one groups.
    const decimal = body.lastIndexOf(".") > body.lastIndexOf(",") ? "." : ",";
    const group = decimal === "." ? "," : ".";
    const form = new RegExp(`^\\d{1,3}(\\${group}\\d{3})+\\${decimal}\\d*$`);
    if (!form.test(body)) return "none";
    body = body.replaceAll(group, "").replace(decimal, ".");
  } else if (points + commas > 1) {
    if (!/^[1-9]\d{0,2}([.,]\d{3})+$/.test(body)) return "none";
    body = body.replace(/[.,]/g, "");
  } else if (points + commas === 1) {
    const doubtful = /^[1-9]\d{0,2}[.,]\d{3}$/.test(body);
    if (doubtful && (commas === 1 || comma)) return "thousands";
    body = body.replace(",", ".");
  }
  if (!/^(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(body)) return "none";
  const value = Number(`${sign}${body}`);
  return Number.isFinite(value) ? value : "none";
}
