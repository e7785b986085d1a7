/** Enters readings where one stands: a small sheet over the page for one place of the machine. */
import { accepts } from "./accepts.js";
import { follow } from "./app.js";
import { byId, h } from "./dom.js";
import { GROUPS, type Field } from "./fields.js";
import { isFilled, makeRow, type Row } from "./row.js";
import { t } from "./text.js";
import { WHERE } from "./words.js";

let rows: Row[] = [];

/** Opens the sheet for a few fields, the cursor in the first. */
export function openEntry(fields: Field[]): void {
  if (fields.length === 0) return;
  const box = byId<HTMLDialogElement>("entry");
  rows = fields.map((field, n) =>
    makeRow(field, "d", () => {
      const after = rows[n + 1];
      if (after === undefined) box.close();
      else after.focus.focus();
    }),
  );
  const where = fields.map((field) => WHERE[field.path.replace(/^readings\./, "")]).filter((text) => text !== undefined);
  byId("entry-body").replaceChildren(...rows.map((row) => row.element), ...where.map((text) => h("p", { class: "hint" }, text)));
  byId("entry-title").textContent = (fields[0] as Field).label;
  for (const row of rows) row.update(true);
  if (!box.open) box.showModal();
  rows[0]?.focus.focus();
}

/** Opens the sheet to choose what to enter. */
export function openPicker(): void {
  const box = byId<HTMLDialogElement>("entry");
  rows = [];
  byId("entry-title").textContent = t("guide_pick");
  const groups = GROUPS.filter((group) => group.fields.some((field) => /^(readings|observations)\./.test(field.path)));
  byId("entry-body").replaceChildren(
    ...groups.flatMap((group) => [
      h("h3", {}, group.title),
      h(
        "div",
        { class: "options" },
        ...group.fields
          .filter((field) => accepts(field.path))
          .map((field) =>
            h("button", { type: "button", class: isFilled(field) ? "pick taken" : "pick", click: () => openEntry([field]) }, `${isFilled(field) ? "✓ " : ""}${field.label}`),
          ),
      ),
    ]),
  );
  if (!box.open) box.showModal();
}

export function wireEntry(): void {
  byId("entry-close").addEventListener("click", () => byId<HTMLDialogElement>("entry").close());
  follow((force) => {
    if (byId<HTMLDialogElement>("entry").open) for (const row of rows) row.update(force);
  });
  byId("entry").addEventListener("close", () => (rows = []));
}
