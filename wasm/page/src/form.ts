/** The whole sheet: every field in its group. */
import { accepts } from "./accepts.js";
import { app, follow } from "./app.js";
import { byId, h, idOf, write } from "./dom.js";
import { FIELDS, GROUPS } from "./fields.js";
import { makeRow, isFilled, type Row } from "./row.js";
import { shown } from "./state.js";
import { t } from "./text.js";
import { parseNumber, split } from "./number.js";
import { scaleFor, unitName } from "./units.js";
import { goView, isShown } from "./views.js";

/**
 * What the page uses itself, whether or not the library asks for it: the complaint and what is at hand steer the guide,
 * costs are weighed beside the job. Nothing else is asked for in vain.
 */
const OWN_USE = /^(complaint$|access\.(tools|suction_port)$|costs\.)/;

const groups: { box: HTMLDetailsElement; count: HTMLElement; rows: Row[] }[] = [];
let stale = true;

/** Builds the sheet once. */
export function buildForm(): void {
  const form = byId("form");
  for (const group of GROUPS) {
    const fields = group.fields.filter((field) => accepts(field.path) || OWN_USE.test(field.path));
    if (fields.length === 0) continue;
    const made = fields.map((field) => makeRow(field, "f", next));
    const body = h("div", { class: "fields" });
    if (group.hint !== undefined) body.append(h("p", { class: "hint" }, group.hint));
    if (group.id === "machine") body.append(byId("refrigerant-row"));
    body.append(...made.map((row) => row.element));
    const count = h("span", { class: "count", id: `count-${group.id}` });
    const box = h(
      "details",
      { class: "group", id: `group-${group.id}`, open: group.open, toggle: () => box.open && made.forEach((row) => row.update(false)) },
      h("summary", {}, h("h2", {}, group.title), count),
      body,
    );
    groups.push({ box, count, rows: made });
    form.append(box);
  }
  form.addEventListener("submit", (event) => event.preventDefault());
  follow((force) => {
    stale = true;
    if (isShown("sheet")) showForm(force);
  });
}

/** Moves on to the next number of the sheet that can be seen. */
function next(row: Row): void {
  const all = [...document.querySelectorAll<HTMLInputElement>("#form input[type=text]")].filter((other) => other.offsetParent !== null);
  all[all.indexOf(row.focus as HTMLInputElement) + 1]?.focus();
}

/** Opens the group of a field on the sheet and puts the cursor there. */
export function goTo(path: string): boolean {
  const target = document.getElementById(idOf(path)) ?? document.getElementById(idOf(`${path}.0`));
  if (target === null) return false;
  goView("sheet");
  const group = target.closest("details");
  if (group !== null) group.open = true;
  target.focus();
  target.closest(".row")?.scrollIntoView({ block: "center" });
  return true;
}

/** Shows what is entered on the sheet, with what is wrong beside each field. */
export function showForm(force: boolean): void {
  if (!stale && !force) return;
  stale = false;
  byId<HTMLSelectElement>("refrigerant").value = app.state.refrigerant;
  for (const { box, count, rows: own } of groups) {
    if (own.some((row) => app.mistakes.has(row.field.path)) && !box.open) box.open = true;
    // What is closed is shown when it is opened.
    if (box.open || force) for (const row of own) row.update(force);
    const filled = own.filter((row) => isFilled(row.field)).length;
    write(count, filled === 0 ? "" : t("filled", { count: filled }));
  }
}

/** Whether a mistake or warning has a field of its own to stand beside. */
export function hasRow(path: string): boolean {
  return path === "system.refrigerant" || FIELDS.has(path) || FIELDS.has(`${path}.0`);
}

/** What was entered as rows of label, figure and unit, for the report. */
export function entered(): { group: string; rows: [string, string][] }[] {
  return GROUPS.map((group) => ({
    group: group.title,
    rows: group.fields.filter(isFilled).map((field): [string, string] => {
      if (field.type === "choice") {
        const chosen = field.options.find(([value]) => value === app.state.choices[field.path]);
        return [field.label, chosen?.[1] ?? String(app.state.choices[field.path])];
      }
      if (field.type === "many") {
        const chosen = app.state.many[field.path] ?? [];
        return [field.label, field.options.filter(([value]) => chosen.includes(value)).map(([, label]) => label).join(", ")];
      }
      const text = shown(field, app.state.numbers[field.path], app.units);
      const unit = field.unit ?? unitName(scaleFor(field.kind, app.units));
      const bare = split(text)[1] === "" && typeof parseNumber(text) === "number";
      return [field.label, bare ? `${text} ${unit}`.trim() : text];
    }),
  })).filter((group) => group.rows.length > 0);
}
