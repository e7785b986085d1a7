/** The plain report: the same words as on the page, as text to send and as rows to print. */
import type { Report } from "rimewise";
import { entered } from "./form.js";
import type { State } from "./state.js";
import type { Units } from "./units.js";
import { CAUSE, CAUTION, EFFORT, FINDING, measurementName, subject } from "./words.js";
import { apartText, bySteps, figures, findingText, oddsText, percent, verdict } from "./view.js";

export const DISCLAIMER =
  "A probability from the readings entered, not a proof. Refrigerant circuits and live terminals are work for people licensed for it, under the local code; no safety device is ever bypassed to get a reading.";

/** Writes the whole report as plain text. */
export function textReport(state: State, units: Units, report: Report, when: Date): string {
  const said = verdict(report);
  const lines = [`Rimewise visit report, ${when.toISOString().slice(0, 16).replace("T", " ")} UTC`, "", said.title, said.text];
  if (state.refrigerant !== "") lines.push("", `Refrigerant: ${state.refrigerant}`);
  for (const group of entered(state, units)) {
    lines.push("", group.group);
    for (const [label, text] of group.rows) lines.push(`  ${label}: ${text}`);
  }
  lines.push("", "What it does / what it should do");
  for (const row of figures(report, units)) {
    lines.push(`  ${row.label}: ${row.does} / ${row.should} ${row.unit} ${apartText(row.apart)}`.trimEnd());
  }
  lines.push("", "Causes");
  for (const entry of report.causes) {
    lines.push(`  ${percent(entry.probability)}  ${CAUSE[entry.cause]}`);
    for (const item of report.evidence.filter((other) => other.cause === entry.cause)) {
      lines.push(`      ${measurementName(item.reading)}: ${oddsText(item.weight_nats)}`);
    }
  }
  if (report.next.length > 0) {
    lines.push("", "Measure next");
    for (const item of report.next) lines.push(`  ${measurementName(item.measurement)} (${EFFORT[item.effort]})`);
  }
  if (report.electrical.length > 0) {
    lines.push("", "Electrical checks");
    for (const finding of report.electrical) {
      lines.push(`  ${FINDING[finding.finding]} ${findingText(finding)}`.trimEnd());
    }
  }
  if (report.warnings.length > 0) {
    lines.push("", "Odd");
    for (const warning of report.warnings) lines.push(`  ${subject(warning.field)}: ${warning.text}`);
  }
  if (report.cautions.length > 0) {
    lines.push("", "Cautions");
    for (const [step, cautions] of bySteps(report.cautions)) {
      lines.push(`  ${step}`);
      for (const caution of cautions) lines.push(`    ${CAUTION[caution.code]}. ${caution.text}`);
    }
  }
  lines.push("", DISCLAIMER, "");
  return lines.join("\n");
}
