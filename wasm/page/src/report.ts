/** The report with what a later library adds to it, and what stands in for that where it is absent. */
import type { Cause, Report } from "rimewise";
import { t } from "./text.js";
import { ACTION, CAUSE, FAMILY, FINDING, JOB, SEVERITY, measurementName } from "./words.js";
import { figure } from "./units.js";
import { percent } from "./figures.js";

export type Level = "cause" | "family" | "job" | "electrical" | "healthy" | "unidentified" | "undecided";

export interface VerdictCode {
  level: Level;
  name: string | null;
  probability: number | null;
}

export interface Union {
  name: string;
  probability: number;
  causes: Cause[];
}

export type CompressorState = "cleared" | "open" | "failing" | "failed";

export interface Alarm {
  code: string;
  field?: string | null;
  value?: number | null;
  limit?: number | null;
  unit?: string | null;
  text?: string;
}

export interface PlanStep {
  kind: "look" | "measure" | "act" | "repair" | "replace_compressor" | "replace_machine" | "wait" | "leave";
  name: string;
  minutes?: number | null;
  changes?: number | null;
  text?: string | null;
}

export interface Plan {
  step: PlanStep | null;
  /** What follows on each outcome of the step. */
  then?: { outcome: string; probability: number; kind: PlanStep["kind"]; name: string }[];
  ways?: { kind: string; name: string | null; expected_cost: number | null }[];
  replace_above?: number | null;
}

/** What a report may hold beyond the first edition of the contract. */
export interface Added {
  verdict?: VerdictCode | null;
  families?: Union[];
  jobs?: Union[];
  compressor?: { state: CompressorState; probability: number } | null;
  alarms?: Alarm[];
  plan?: Plan | null;
}

export type FullReport = Omit<Report, keyof Added> & Added;

/** The most specific statement that is sure enough; from `decided` and `leading` where the library has no verdict. */
export function verdictOf(report: FullReport): VerdictCode {
  if (report.verdict !== undefined && report.verdict !== null) return report.verdict;
  const probability = report.causes.find((entry) => entry.cause === report.leading)?.probability ?? null;
  if (!report.decided) return { level: "undecided", name: null, probability };
  if (report.leading === "none") return { level: "healthy", name: "none", probability };
  return { level: "cause", name: report.leading, probability };
}

const BURNT = new Set(["open_winding", "shorted_turns", "winding_to_frame"]);

/** The compressor's state, from its cause and the windings where the library does not say. */
export function compressorOf(report: FullReport): { state: CompressorState; probability: number | null } {
  if (report.compressor !== undefined && report.compressor !== null) return report.compressor;
  const probability = report.causes.find((entry) => entry.cause === "weak_compressor")?.probability ?? null;
  if (report.electrical.some((finding) => BURNT.has(finding.finding))) return { state: "failed", probability };
  if (report.decided && report.leading === "weak_compressor") return { state: "failing", probability };
  if (report.ruled_out.some((out) => out.cause === "weak_compressor")) return { state: "cleared", probability };
  return { state: "open", probability };
}

/** The job that mends a cause. */
const JOB_OF: Readonly<Record<Cause, string>> = {
  none: "none",
  undercharge: "open_circuit",
  overcharge: "open_circuit",
  liquid_line_restriction: "open_circuit",
  metering_underfeed: "open_circuit",
  flood_back: "metering_valve",
  weak_compressor: "compressor",
  condenser_airflow: "condenser_air",
  evaporator_airflow: "evaporator_air",
  non_condensables: "open_circuit",
};

/** The job that a verdict asks for; nothing while it is not sure. */
export function jobOf(verdict: VerdictCode, metering: string | null | undefined): string | undefined {
  switch (verdict.level) {
    case "cause": {
      // A capillary that passes too much or too little is replaced with the circuit open; a valve can be set.
      const valve = metering === "thermostatic_valve" || metering === "electronic_valve";
      if (verdict.name === "metering_underfeed" && valve) return "metering_valve";
      if (verdict.name === "flood_back" && !valve) return "open_circuit";
      return JOB_OF[verdict.name as Cause];
    }
    case "family":
      return "open_circuit";
    case "job":
      return verdict.name ?? undefined;
    case "electrical":
      return "electrical";
    case "healthy":
      return "none";
    default:
      return undefined;
  }
}

/** The name of whatever a verdict or a step names. */
export function nameOf(name: string): string {
  return CAUSE[name] ?? FAMILY[name] ?? JOB[name] ?? FINDING[name] ?? ACTION[name] ?? measurementName(name);
}

export interface Said {
  title: string;
  text: string;
  tone: "cleared" | "decided" | "open";
}

/** The verdict in one line and one paragraph, with its doubt. */
export function verdict(report: FullReport): Said {
  const code = verdictOf(report);
  const sure = code.probability === null ? "" : percent(code.probability);
  if (code.level === "healthy") return { title: t("cleared", { sure }), text: t("cleared_text"), tone: "cleared" };
  if (code.level === "unidentified") return { title: t("unidentified"), text: t("odd_text"), tone: "open" };
  if (code.level !== "undecided" && code.name !== null) {
    const how = code.level === "cause" ? severity(report, code.name as Cause) : "";
    return {
      title: t("decided", { cause: nameOf(code.name), sure }),
      text: t("decided_text", { severity: how }).replace("  ", " "),
      tone: "decided",
    };
  }
  if (report.fits !== null && report.fits < 0.01) return { title: t("odd_title"), text: t("odd_text"), tone: "open" };
  const leading = report.causes.find((entry) => entry.cause === report.leading);
  return {
    title: t("open_title", { cause: CAUSE[report.leading], sure: leading === undefined ? "" : percent(leading.probability) }),
    text: t("open_text"),
    tone: "open",
  };
}

/** How much of it is lost or too much, in words; nothing where that is not known. */
export function severity(report: FullReport, cause: Cause): string {
  const entry = report.causes.find((other) => other.cause === cause);
  if (cause === "none" || entry?.severity === null || entry?.severity === undefined || entry.severity < 0.005) return "";
  return t("severity", { percent: figure(entry.severity * 100, 0), of: SEVERITY[cause] });
}
