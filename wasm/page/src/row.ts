/** One field wherever it stands, on the sheet, on a card or in the picture: big keys, its unit, what is wrong with it. */
import type { Estimate } from "rimewise";
import { app, edit, settle } from "./app.js";
import { h, idOf, write } from "./dom.js";
import type { ChoiceField, Field, ManyField, NumberField } from "./fields.js";
import { mistakeText, quoted } from "./mistakes.js";
import { shown } from "./state.js";
import { t } from "./text.js";
import { estimate } from "./figures.js";
import { scaleFor, unitName } from "./units.js";

export interface Row {
  element: HTMLElement;
  field: Field;
  /** The element that takes the cursor. */
  focus: HTMLElement;
  /** Shows what is entered and what is to be said of it; the field that is being typed in keeps its text. */
  update(force: boolean): void;
}

/** Whether something was entered in a field. */
export function isFilled(field: Field): boolean {
  if (field.type === "number") return (app.state.numbers[field.path]?.text.trim() ?? "") !== "";
  if (field.type === "many") return (app.state.many[field.path]?.length ?? 0) > 0;
  return app.state.choices[field.path] !== undefined;
}

/** Makes a row; `place` tells the same field's rows apart, `enter` is what the enter key does. */
export function makeRow(field: Field, place: string, enter?: (row: Row) => void): Row {
  switch (field.type) {
    case "number":
      return numberRow(field, place, enter);
    case "choice":
      return choiceRow(field, place);
    case "many":
      return manyRow(field, place);
  }
}

function note(id: string, field: Field, place: string): HTMLElement {
  return h("p", { class: "note", id: `${id}-note`, "data-note": place === "f" ? field.path : undefined });
}

interface Note {
  text: string;
  wrong: boolean;
  odd: boolean;
}

/** What is wrong with a field or odd about it, in words. */
function noteText(field: Field): Note {
  const base = field.path.replace(/\.0$/, "");
  const mistake = app.mistakes.get(field.path) ?? app.mistakes.get(base);
  const typed = field.type === "number" ? (app.state.numbers[field.path]?.text ?? "") : "";
  const odd = (app.report?.warnings ?? []).filter((warning) => warning.field === field.path || warning.field === base);
  const text = [...(mistake === undefined ? [] : [mistakeText(mistake, typed)]), ...odd.map((warning) => quoted(warning.text))].join("; ");
  return { text, wrong: mistake !== undefined, odd: odd.length > 0 };
}

/** Says it beside the field. */
function noteOf(element: HTMLElement, about: Note): void {
  write(element, about.text);
  const name = `note${about.wrong ? " wrong" : about.odd ? " odd" : ""}`;
  if (element.className !== name) element.className = name;
}

function numberRow(field: NumberField, place: string, enter?: (row: Row) => void): Row {
  const id = idOf(field.path, place);
  const enterText = (text: string) =>
    edit((state) => {
      if (text.trim() === "") delete state.numbers[field.path];
      else state.numbers[field.path] = { text, scale: scaleFor(field.kind, app.units) };
    });
  const input = h("input", {
    id,
    type: "text",
    inputmode: "decimal",
    autocomplete: "off",
    autocapitalize: "off",
    spellcheck: "false",
    maxlength: 40,
    enterkeyhint: "next",
    "aria-describedby": `${id}-note ${id}-unit`,
    input: () => enterText(input.value),
    keydown: (event) => {
      if ((event as KeyboardEvent).key !== "Enter") return;
      event.preventDefault();
      settle();
      enter?.(row);
    },
  });
  const set = (text: string) => {
    input.value = text;
    input.focus();
    enterText(text);
  };
  // Number pads of phones have no minus sign and no letters; these keys stand in. The keyboard has both, so they
  // stay out of the tab order.
  const key = (text: string, label: string, click: () => void) => h("button", { type: "button", class: "key", tabindex: -1, "aria-label": label, click }, text);
  const unit = h("span", { class: "unit", id: `${id}-unit` });
  const expect = h("small", { class: "expect", "data-expect": place === "f" ? field.path.slice("readings.".length) : undefined });
  const said = note(id, field, place);
  const element = h(
    "div",
    { class: "row", "data-path": field.path },
    h("div", { class: "what" }, h("label", { for: id }, field.label, field.hint !== undefined && h("small", {}, ` ${field.hint}`)), field.path.startsWith("readings.") && expect),
    h(
      "div",
      { class: "entry" },
      input,
      field.signed === true && key("±", t("change_sign", { label: field.label }), () => set(/^[-−]/.test(input.value) ? input.value.slice(1) : `-${input.value}`)),
      field.kind === "open" && key(t("open_key"), t("reads_open", { label: field.label }), () => set(t("open_key"))),
      unit,
    ),
    said,
  );
  const row: Row = {
    element,
    field,
    focus: input,
    update(force) {
      const entry = app.state.numbers[field.path];
      const healthy = stopped() ? null : ((app.report?.expected as Record<string, Estimate | null> | undefined)?.[field.path.slice("readings.".length)] ?? null);
      const about = noteText(field);
      // Most rows stand as they stood: what they show is made anew only where something of it has changed.
      const now = [entry, app.units, about.text, healthy?.value, healthy?.u];
      if (!force && now.every((value, n) => value === before[n])) return;
      before = now;
      const text = shown(field, entry, app.units);
      if ((force || document.activeElement !== input) && input.value !== text) input.value = text;
      write(unit, field.unit ?? unitName(scaleFor(field.kind, app.units)));
      noteOf(said, about);
      if (about.wrong) input.setAttribute("aria-invalid", "true");
      else input.removeAttribute("aria-invalid");
      write(expect, healthy === null ? "" : t("healthy_is", { value: estimate(field.path, healthy, app.units) }));
    },
  };
  let before: unknown[] = [];
  return row;
}

/** Whether the machine was read while its compressor stood. */
export function stopped(): boolean {
  return app.state.choices["readings.running"] === false;
}

function choiceRow(field: ChoiceField, place: string): Row {
  const id = idOf(field.path, place);
  const inputs = [...field.options, ["", t("not_known")] as const].map(([value, label], n) => {
    const input = h("input", {
      type: "radio",
      name: id,
      value: String(value),
      id: n === 0 ? id : `${id}-${n}`,
      change: () =>
        edit((state) => {
          if (value === "") delete state.choices[field.path];
          else state.choices[field.path] = value;
        }),
    });
    return [input, h("label", { class: "option" }, input, h("span", {}, label))] as const;
  });
  return optionRow(field, place, id, inputs, (value) => value === String(app.state.choices[field.path] ?? ""));
}

function manyRow(field: ManyField, place: string): Row {
  const id = idOf(field.path, place);
  const inputs = field.options.map(([value, label], n) => {
    const input = h("input", {
      type: "checkbox",
      value,
      id: n === 0 ? id : `${id}-${n}`,
      change: () =>
        edit((state) => {
          const others = (state.many[field.path] ?? []).filter((other) => other !== value);
          const chosen = input.checked ? [...others, value] : others;
          if (chosen.length === 0) delete state.many[field.path];
          else state.many[field.path] = chosen;
        }),
    });
    return [input, h("label", { class: "option" }, input, h("span", {}, label))] as const;
  });
  return optionRow(field, place, id, inputs, (value) => (app.state.many[field.path] ?? []).includes(value));
}

function optionRow(field: Field, place: string, id: string, inputs: (readonly [HTMLInputElement, HTMLElement])[], on: (value: string) => boolean): Row {
  const said = note(id, field, place);
  return {
    element: h(
      "fieldset",
      { class: "row choice", "data-path": field.path, "aria-describedby": `${id}-note` },
      h("legend", {}, field.label),
      h("div", { class: "options" }, ...inputs.map(([, label]) => label)),
      said,
    ),
    field,
    focus: inputs[0]?.[0] as HTMLElement,
    update() {
      for (const [input] of inputs) if (input.checked !== on(input.value)) input.checked = on(input.value);
      noteOf(said, noteText(field));
    },
  };
}
