/** What if this reading is wrong? Each one dropped in turn, and whether the verdict stands without it. */
import { RimewiseError } from "rimewise";
import { ask } from "./answer.js";
import { app, follow } from "./app.js";
import { byId, h } from "./dom.js";
import { verdict, verdictOf, type FullReport } from "./report.js";
import { t } from "./text.js";
import { take } from "./tree.js";
import { subject } from "./words.js";

let running = 0;

/** Works it out, one reading a frame, while the box is open. */
function work(): void {
  const turn = ++running;
  const report = app.report;
  const names = [...Object.keys(app.accepted.readings ?? {}).map((name) => `readings.${name}`), ...Object.keys(app.accepted.observations ?? {}).map((name) => `observations.${name}`)];
  byId("whatif-none").hidden = names.length >= 2;
  byId("whatif-table").hidden = names.length < 2;
  byId("whatif-rows").replaceChildren();
  if (report === undefined || names.length < 2) return;
  const now = verdictOf(report);
  const next = (n: number) => {
    const name = names[n];
    if (name === undefined || turn !== running) return;
    const without = structuredClone(app.accepted);
    take(without, name);
    try {
      const other = ask(without) as FullReport;
      const then = verdictOf(other);
      const stands = then.level === now.level && then.name === now.name && other.leading === report.leading;
      byId("whatif-rows").append(
        h(
          "tr",
          { "data-without": name },
          h("th", { scope: "row" }, subject(name)),
          h("td", { class: stands ? "" : "off" }, `${stands ? "=" : "≠"} ${t(stands ? "stands" : "changes")}`),
          h("td", {}, verdict(other).title),
        ),
      );
    } catch (error) {
      if (!(error instanceof RimewiseError)) throw error;
    }
    requestAnimationFrame(() => next(n + 1));
  };
  requestAnimationFrame(() => next(0));
}

export function wireWhatIf(): void {
  const box = byId<HTMLDetailsElement>("whatif");
  box.addEventListener("toggle", () => {
    if (box.open) work();
    else running++;
  });
  let waiting: ReturnType<typeof setTimeout> | undefined;
  follow(() => {
    running++;
    clearTimeout(waiting);
    // Not while someone types: a moment after the last key.
    if (box.open) waiting = setTimeout(work, 400);
  });
}
