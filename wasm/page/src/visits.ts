/** Visits kept on this device: their names, their photo, the visit before, and ways to hand one on. */
import { app, changed, edit, follow, settle } from "./app.js";
import { byId, h } from "./dom.js";
import { entered } from "./form.js";
import { apartText, figures } from "./figures.js";
import { compareRows } from "./job.js";
import { LANGUAGE } from "./language.js";
import { forgetPhoto, keepPhoto, photoOf } from "./photo.js";
import { textReport } from "./plain.js";
import { jobOf, verdictOf } from "./report.js";
import { stopped } from "./row.js";
import { sharedFile, sharedLink } from "./share.js";
import { toVisit, type About } from "./state.js";
import { forgetVisit, keptVisits, type Kept } from "./store.js";
import { t } from "./text.js";
import { isShown, onView } from "./views.js";
import { cautionText, standing } from "./view.js";
import { CAUTION, JOB } from "./words.js";

const ABOUT: readonly (keyof About)[] = ["machine", "place", "date", "notes"];

function nameOf(kept: Kept): string {
  const { machine, place } = kept.state.about;
  return [machine || t("unnamed"), place, kept.state.refrigerant].filter((part) => part !== "").join(", ");
}

function when(saved: number): string {
  return new Intl.DateTimeFormat(LANGUAGE === "es" && !/^es/i.test(navigator.language) ? "es" : navigator.language, { dateStyle: "medium", timeStyle: "short" }).format(saved);
}

let shownPhoto: string | undefined;

async function showPhoto(): Promise<void> {
  const id = app.id;
  const photo = await photoOf(id);
  if (id !== app.id) return;
  if (shownPhoto !== undefined) URL.revokeObjectURL(shownPhoto);
  shownPhoto = photo === undefined ? undefined : URL.createObjectURL(photo);
  const image = byId<HTMLImageElement>("photo-shown");
  image.hidden = shownPhoto === undefined;
  if (shownPhoto !== undefined) image.src = shownPhoto;
  byId("photo-forget").hidden = shownPhoto === undefined;
}

/** The visit before to a machine of the same name. */
function visitBefore(all: Kept[]): Kept | undefined {
  const machine = app.state.about.machine.trim().toLowerCase();
  if (machine === "") return undefined;
  return all.find((kept) => kept.id !== app.id && kept.state.about.machine.trim().toLowerCase() === machine);
}

function showVisits(force: boolean, open: (kept: Kept) => void): void {
  for (const name of ABOUT) {
    const input = byId<HTMLInputElement>(`about-${name}`);
    if (force || document.activeElement !== input) input.value = app.state.about[name];
  }
  const all = keptVisits();
  const others = all.filter((kept) => kept.id !== app.id);
  byId("visits-none").hidden = others.length > 0;
  byId("visits-list").replaceChildren(
    ...others.map((kept) =>
      h(
        "li",
        { "data-visit": kept.id },
        h("button", { type: "button", class: "visit", "aria-label": t("open_visit", { name: nameOf(kept) }), click: () => open(kept) }, h("strong", {}, nameOf(kept)), h("small", {}, ` ${t("kept_ago", { when: when(kept.saved) })}`)),
        h(
          "button",
          {
            type: "button",
            class: "key",
            "aria-label": t("forget_visit", { name: nameOf(kept) }),
            click: () => {
              forgetVisit(kept.id);
              void forgetPhoto(kept.id);
              showVisits(false, open);
              byId("said").textContent = t("forgotten", { name: nameOf(kept) });
            },
          },
          "×",
        ),
      ),
    ),
  );
  const before = visitBefore(all);
  byId("compare-none").hidden = before !== undefined;
  byId("compare-table").hidden = before === undefined;
  byId("compare-rows").replaceChildren(...(before === undefined ? [] : compareRows(toVisit(before.state, app.units).visit, app.accepted)));
}

/** Hands a text to the device's own way of sharing, else to the clipboard. */
export async function send(title: string, text: string, copied: string): Promise<void> {
  const said = byId("said");
  try {
    if (typeof navigator.share === "function") {
      await navigator.share({ title, text });
    } else {
      await navigator.clipboard.writeText(text);
      said.textContent = copied;
    }
  } catch {
    said.textContent = t("not_sent");
  }
}

/** Writes a file into the downloads. */
export function download(name: string, text: string): void {
  const url = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  const link = h("a", { href: url, download: name });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

/** Prints the one page that stays with the customer. */
function printCustomer(): void {
  settle();
  const { report, state } = app;
  if (report === undefined) return;
  const said = standing();
  const job = jobOf(verdictOf(report), app.accepted.system?.metering);
  const about = [state.about.machine, state.about.place, state.about.date, state.refrigerant].filter((part) => part !== "").join(" · ");
  const rows = figures(report, app.units, stopped()).slice(0, 8);
  byId("customer").replaceChildren(
    h("h1", {}, t("customer")),
    h("p", {}, about),
    h("h2", {}, t("customer_found")),
    h("p", { class: "big" }, said.title),
    h("p", {}, said.text),
    h("h2", {}, t("customer_read")),
    h("ul", { class: "columns" }, ...entered().flatMap((group) => group.rows.map(([label, text]) => h("li", {}, `${label}: ${text}`))).slice(0, 26)),
    h("table", {}, h("tbody", {}, ...rows.map((row) => h("tr", {}, h("th", { scope: "row" }, `${row.label} ${row.unit}`), h("td", {}, row.does), h("td", {}, apartText(row.apart)))))),
    ...(job === undefined ? [] : [h("h2", {}, t("customer_next")), h("p", {}, JOB[job] ?? job)]),
    ...(state.about.notes === "" ? [] : [h("h2", {}, t("notes_name")), h("p", { class: "notes" }, state.about.notes.slice(0, 700))]),
    h("p", { class: "fine" }, report.cautions.slice(0, 6).map((caution) => `${CAUTION[caution.code] ?? caution.code}: ${cautionText(caution)}`).join(" ").slice(0, 700)),
    h("p", { class: "fine" }, t("disclaimer")),
  );
  document.body.dataset["print"] = "customer";
  window.print();
}

export function wireVisits(open: (kept: Kept) => void): void {
  for (const name of ABOUT) {
    const input = byId<HTMLInputElement>(`about-${name}`);
    input.addEventListener("input", () => edit((state) => (state.about[name] = input.value)));
  }
  byId("photo-add").addEventListener("click", () => byId("photo-file").click());
  const file = byId<HTMLInputElement>("photo-file");
  file.addEventListener("change", () => {
    const picked = file.files?.[0];
    file.value = "";
    if (picked === undefined) return;
    keepPhoto(app.id, picked)
      .then(showPhoto)
      .catch(() => (byId("said").textContent = t("photo_bad")));
  });
  byId("photo-forget").addEventListener("click", () => void forgetPhoto(app.id).then(showPhoto));
  byId("share-file").addEventListener("click", () => {
    settle();
    download(`${(app.state.about.machine || "visit").replace(/[^\p{L}\p{N}-]+/gu, "_").slice(0, 40)}.rimewise.json`, sharedFile());
  });
  byId("share-text").addEventListener("click", () => {
    settle();
    void send(t("report_title"), textReport(new Date()), t("sent_clipboard"));
  });
  byId("share-link").addEventListener("click", () => {
    settle();
    void sharedLink().then((link) => send(t("report_title"), link, t("share_copied")));
  });
  byId("share-sheet").addEventListener("click", printCustomer);
  addEventListener("afterprint", () => delete document.body.dataset["print"]);
  let id = "";
  const show = (force: boolean) => {
    if (!isShown("visits")) return;
    showVisits(force, open);
    if (id !== app.id) {
      id = app.id;
      void showPhoto();
    }
  };
  follow(show);
  onView((view) => {
    if (view === "visits") changed();
  });
}
