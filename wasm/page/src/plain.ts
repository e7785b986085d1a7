/** The plain report: the same words as on the page, as text to send. */
import { app } from "./app.js";
import { entered } from "./form.js";
import { apartText, figures, percent } from "./figures.js";
import { quoted } from "./mistakes.js";
import { verdict } from "./report.js";
import { stopped } from "./row.js";
import { t } from "./text.js";
import { bySteps, cautionText, findingText, oddsText } from "./view.js";
import { CAUSE, CAUTION, EFFORT, FINDING, measurementName, subject } from "./words.js";

/** Writes the whole report as plain text; nothing where there is none. */
export function textReport(when: Date): string {
  const { report, state, units } = app;
  if (report === undefined) return "";
  const said = verdict(report);
  const lines = [`${t("report_title")}, ${when.toISOString().slice(0, 16).replace("T", " ")} UTC`, "", said.title, said.text];
  for (const [key, value] of [["machine_name", state.about.machine], ["place_name", state.about.place], ["notes_name", state.about.notes]] as const) {
    if (value !== "") lines.push(`${t(key)}: ${value}`);
  }
  if (state.refrigerant !== "") lines.push("", `${t("refrigerant")}: ${state.refrigerant}`);
  for (const group of entered()) {
    lines.push("", group.group);
    for (const [label, text] of group.rows) lines.push(`  ${label}: ${text}`);
  }
  lines.push("", t("figures_title"));
  for (const row of figures(report, units, stopped())) {
    lines.push(`  ${row.label}: ${row.does} / ${row.should} ${row.unit} ${apartText(row.apart)}`.trimEnd());
  }
  lines.push("", t("causes"));
  for (const entry of report.causes) {
    lines.push(`  ${percent(entry.probability)}  ${CAUSE[entry.cause]}`);
    for (const item of report.evidence.filter((other) => other.cause === entry.cause)) {
      lines.push(`      ${measurementName(item.reading)}: ${oddsText(item.weight_nats)}`);
    }
  }
  if (report.next.length > 0) {
    lines.push("", t("next"));
    for (const item of report.next) lines.push(`  ${measurementName(item.measurement)} (${EFFORT[item.effort]})`);
  }
  if (report.electrical.length > 0) {
    lines.push("", t("electrical"));
    for (const finding of report.electrical) lines.push(`  ${FINDING[finding.finding] ?? finding.finding} ${findingText(finding)}`.trimEnd());
  }
  if (report.warnings.length > 0) {
    lines.push("", t("odd"));
    for (const warning of report.warnings) lines.push(`  ${subject(warning.field)}: ${quoted(warning.text)}`);
  }
  if (report.cautions.length > 0) {
    lines.push("", t("cautions"));
    for (const [step, cautions] of bySteps(report.cautions)) {
      lines.push(`  ${step}`);
      for (const caution of cautions) lines.push(`    ${CAUTION[caution.code] ?? caution.code}. ${cautionText(caution)}`);
    }
  }
  lines.push("", t("disclaimer"), "");
  return lines.join("\n");
}
