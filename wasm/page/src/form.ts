/** The form: one row a field, with big keys, its unit, and what is wrong with it right beside it. */
import { byId, h, idOf } from "./dom.js";
import { FIELDS, GROUPS, type ChoiceField, type Field, type NumberField } from "./fields.js";
import { shown, type Mistakes, type State } from "./state.js";
import { parseNumber, scaleFor, unitName, type Units } from "./units.js";
import { subject } from "./words.js";

export interface FormEvents {
  number(path: string, text: string): void;
  choice(path: string, value: string | boolean | undefined): void;
}

/** Builds the form once. */
export function buildForm(events: FormEvents): void {
  const form = byId("form");
  for (const group of GROUPS) {
    const title = h("summary", {}, h("h2", {}, group.title), h("span", { class: "count", id: `count-${group.id}` }));
    const body = h("div", { class: "fields" });
    if (group.hint !== undefined) body.append(h("p", { class: "hint" }, group.hint));
    if (group.id === "machine") body.append(byId("refrigerant-row"));
    for (const field of group.fields) {
      body.append(field.type === "number" ? numberRow(field, events) : choiceRow(field, events));
    }
    form.append(h("details", { class: "group", id: `group-${group.id}`, open: group.open }, title, body));
  }
}

function numberRow(field: NumberField, events: FormEvents): HTMLElement {
  const id = idOf(field.path);
  const input = h("input", {
    id,
    type: "text",
    inputmode: "decimal",
    autocomplete: "off",
    spellcheck: "false",
    enterkeyhint: "next",
    "aria-describedby": `${id}-note ${id}-unit`,
    input: () => events.number(field.path, input.value),
    keydown: (event) => {
      if ((event as KeyboardEvent).key === "Enter") {
        event.preventDefault();
        next(input);
      }
    },
  });
  const set = (text: string) => {
    input.value = text;
    input.focus();
    events.number(field.path, text);
  };
  // Number pads of phones have no minus sign and no letters; these keys stand in. The keyboard has both, so they
  // stay out of the tab order.
  const sign =
    field.signed &&
    h(
      "button",
      {
        type: "button",
        class: "key",
        tabindex: -1,
        "aria-label": `change the sign of ${field.label}`,
        click: () => set(/^[-−]/.test(input.value) ? input.value.slice(1) : `-${input.value}`),
      },
      "±",
    );
  const open =
    field.kind === "open" &&
    h(
      "button",
      { type: "button", class: "key", tabindex: -1, "aria-label": `${field.label} reads open`, click: () => set("open") },
      "open",
    );
  return h(
    "div",
    { class: "row", "data-path": field.path },
    h(
      "div",
      {},
      h("label", { for: id }, field.label, field.hint !== undefined && h("small", {}, ` ${field.hint}`)),
      field.path.startsWith("readings.") && h("small", { class: "expect", "data-expect": field.path.slice("readings.".length) }),
    ),
    h(
      "div",
      { class: "entry" },
      input,
      sign || undefined,
      open || undefined,
      h("span", { class: "unit", id: `${id}-unit` }, field.unit ?? ""),
    ),
    h("p", { class: "note", id: `${id}-note`, "data-note": field.path }),
  );
}

function choiceRow(field: ChoiceField, events: FormEvents): HTMLElement {
  const id = idOf(field.path);
  const options = [...field.options, ["", "not known"] as const].map(([value, label], n) =>
    h(
      "label",
      { class: "option" },
      h("input", {
        type: "radio",
        name: id,
        value: String(value),
        id: n === 0 ? id : `${id}-${n}`,
        change: () => events.choice(field.path, value === "" ? undefined : value),
      }),
      h("span", {}, label),
    ),
  );
  return h(
    "fieldset",
    { class: "row choice", "data-path": field.path, "aria-describedby": `${id}-note` },
    h("legend", {}, field.label),
    h("div", { class: "options" }, ...options),
    h("p", { class: "note", id: `${id}-note`, "data-note": field.path }),
  );
}

/** Moves on to the next number of the form that can be seen. */
function next(input: HTMLInputElement): void {
  const all = [...document.querySelectorAll<HTMLInputElement>("#form input[type=text]")].filter(
    (other) => other.offsetParent !== null,
  );
  all[all.indexOf(input) + 1]?.focus();
}

/** Opens the group of a field and puts the cursor there. */
export function goTo(path: string): boolean {
  const target = document.getElementById(idOf(path)) ?? document.getElementById(idOf(`${path}.0`));
  if (target === null) return false;
  const group = target.closest("details");
  if (group !== null) group.open = true;
  target.focus();
  target.closest(".row")?.scrollIntoView({ block: "center" });
  return true;
}

/** Shows the state in the form; the field that is being typed in keeps its text. */
export function showForm(state: State, units: Units, force: boolean): void {
  byId<HTMLSelectElement>("refrigerant").value = state.refrigerant;
  for (const [path, field] of FIELDS) {
    if (field.type === "number") {
      const input = byId<HTMLInputElement>(idOf(path));
      if (force || document.activeElement !== input) input.value = shown(field, state.numbers[path], units);
      const unit = field.unit ?? unitName(scaleFor(field.kind, units));
      byId(`${idOf(path)}-unit`).textContent = unit;
    } else {
      const value = String(state.choices[path] ?? "");
      for (const radio of document.querySelectorAll<HTMLInputElement>(`input[name="${idOf(path)}"]`)) {
        radio.checked = radio.value === value;
      }
    }
  }
  for (const group of GROUPS) {
    const filled = group.fields.filter((field) => isFilled(field, state)).length;
    byId(`count-${group.id}`).textContent = filled === 0 ? "" : `${filled} filled`;
  }
}

/** Whether something was entered in a field. */
export function isFilled(field: Field, state: State): boolean {
  return field.type === "number"
    ? (state.numbers[field.path]?.text.trim() ?? "") !== ""
    : state.choices[field.path] !== undefined;
}

/** Puts mistakes and warnings beside their fields. Gives those that have no field of their own. */
export function showNotes(mistakes: Mistakes, warnings: { field: string; text: string }[]): string[] {
  const homeless: string[] = [];
  for (const note of document.querySelectorAll<HTMLElement>("[data-note]")) {
    note.textContent = "";
    note.className = "note";
  }
  for (const input of document.querySelectorAll("[aria-invalid]")) input.removeAttribute("aria-invalid");
  const put = (path: string, text: string, kind: "wrong" | "odd") => {
    const note =
      document.querySelector<HTMLElement>(`[data-note="${CSS.escape(path)}"]`) ??
      document.querySelector<HTMLElement>(`[data-note="${CSS.escape(`${path}.0`)}"]`);
    if (note === null) {
      homeless.push(`${subject(path)}: ${text}`);
      return;
    }
    note.textContent = `${note.textContent === "" ? "" : `${note.textContent}; `}${text}`;
    note.classList.add(kind);
    const group = note.closest("details");
    if (kind === "wrong" && group !== null) group.open = true;
    if (kind === "wrong") document.getElementById(idOf(path))?.setAttribute("aria-invalid", "true");
  };
  for (const [path, text] of mistakes) put(path, text, "wrong");
  for (const warning of warnings) put(warning.field, warning.text, "odd");
  return homeless;
}

/** What was entered as rows of label, figure and unit, for the report. */
export function entered(state: State, units: Units): { group: string; rows: [string, string][] }[] {
  return GROUPS.map((group) => ({
    group: group.title,
    rows: group.fields
      .filter((field) => isFilled(field, state))
      .map((field): [string, string] => {
        if (field.type === "choice") {
          const chosen = field.options.find(([value]) => value === state.choices[field.path]);
          return [field.label, chosen?.[1] ?? String(state.choices[field.path])];
        }
        const text = shown(field, state.numbers[field.path], units);
        const unit = field.unit ?? unitName(scaleFor(field.kind, units));
        return [field.label, parseNumber(text) === undefined ? text : `${text} ${unit}`.trim()];
      }),
  })).filter((group) => group.rows.length > 0);
}
