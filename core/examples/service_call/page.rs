//! A report for people: the compressor and the verdict, the next step, then what it rests on.

use crate::common::Units;
use crate::common::words::{finding_words, reading, words};
use rimewise::cause::Cause;
use rimewise::caution::{Caution, Step as CautionStep};
use rimewise::diagnosis::CauseAndMeasurements;
use rimewise::json::OwnedVisit;
use rimewise::measurement::Effort;
use rimewise::plan::{Change, Step, StepKind, Subject};
use rimewise::report::Report;
use rimewise::text::{Language, Told};
use rimewise::verdict::{CompressorState, Statement};
use rimewise::warning::WarningKind;

/// Most cautions on the short page.
const CAUTIONS: usize = 5;

/// A report in the making, for people.
pub(crate) struct Page<'a> {
    pub(crate) units: &'a Units,
    pub(crate) visit: &'a OwnedVisit,
    pub(crate) report: &'a Report,
    /// Whether everything is written.
    pub(crate) all: bool,
    pub(crate) text: String,
}

impl<'a> Page<'a> {
    pub(crate) fn new(units: &'a Units, visit: &'a OwnedVisit, report: &'a Report, all: bool) -> Self {
        Self { units, visit, report, all, text: String::new() }
    }

    fn line(&mut self, text: &str) {
        self.text.push_str(text);
        self.text.push('\n');
    }
    fn heading(&mut self, text: &str) {
        self.line("");
        self.line(text);
    }

    /// The whole page.
    pub(crate) fn write(mut self) -> String {
        let title = format!("SERVICE CALL: {}", machine(self.visit));
        self.line(&title);
        self.line(&format!("  {}", compressor(self.report)));
        self.line(&format!("  {}", verdict(self.report)));
        for alarm in &self.report.alarms {
            self.line(&format!("  !! {}", alarm.text()));
        }
        if let Some(change) = self.report.plan.change {
            self.line(&format!("  {}", changed(change)));
        }
        self.doubts();
        self.next();
        self.evidence();
        self.doing();
        if self.all {
            self.ways();
            self.excluded();
        }
        self.electrical();
        self.cautions();
        self.text
    }

    fn doubts(&mut self) {
        // Causes alike are named with the verdict.
        for warning in self.report.warnings.iter().filter(|w| w.kind != WarningKind::TwoCausesAlike) {
            let field = if warning.section.is_empty() {
                warning.field.to_owned()
            } else {
                format!("{}.{}", warning.section, warning.field)
            };
            self.line(&format!("  ! {field}: {}", warning.kind.text(Language::English)));
        }
    }

    fn next(&mut self) {
        self.heading("Next step");
        let step = self.report.plan.step;
        for line in step_lines(self.report, &step) {
            self.line(&line);
        }
        for then in &self.report.plan.then {
            let way = way(then.kind, then.subject);
            self.line(&format!("    {} ({}): {way}", then.outcome, percent(then.probability)));
        }
    }

    fn evidence(&mut self) {
        self.heading("Why");
        let diagnosis = &self.report.diagnosis;
        for entry in diagnosis.causes.iter().filter(|c| c.probability >= 0.03).take(4) {
            let severity = entry
                .severity
                .filter(|s| *s >= 0.005)
                .map_or(String::new(), |s| format!("  (about {:.0} % {})", 100.0 * s, amount(entry.cause)));
            self.line(&format!("  {:>9}  {}{severity}", percent(entry.probability), words(entry.cause)));
        }
        let mut any = false;
        for entry in diagnosis.causes.iter().take(2).filter(|c| c.probability >= 0.1) {
            for (says, sign) in [("for", 1.0f32), ("against", -1.0)] {
                let list: Vec<String> = diagnosis
                    .evidence
                    .iter()
                    .filter(|e| e.cause == entry.cause && e.weight_nats * sign > 0.0)
                    .take(4)
                    .map(|e| format!("{} ({})", reading(e.reading), strength(e.weight_nats)))
                    .collect();
                if !list.is_empty() {
                    any = true;
                    self.line(&format!("  {says} {}: {}", words(entry.cause), list.join(", ")));
                }
            }
        }
        if !any {
            self.line("  Nothing measured speaks clearly for or against.");
        }
    }

    fn doing(&mut self) {
        let rows = readings(self.visit, self.report, self.units);
        if rows.is_empty() {
            return;
        }
        self.heading("Measured, and expected of this machine here and now if it were healthy");
        let all = self.all;
        for (name, seen, healthy) in rows.iter().filter(|(_, seen, _)| all || seen.is_some()) {
            let seen = seen.as_deref().unwrap_or("not measured");
            let healthy = healthy.as_deref().unwrap_or_default();
            self.line(format!("  {name:<26} {seen:<28} {healthy}").trim_end());
        }
        let kind = if self.units.us || self.units.gauge { "gauge" } else { "absolute" };
        self.line(&format!("  (+- is one standard uncertainty; pressures are {kind})"));
    }

    fn ways(&mut self) {
        let plan = &self.report.plan;
        if plan.ways.is_empty() {
            return;
        }
        self.heading("What the ways to go on are expected to cost");
        for one in &plan.ways {
            self.line(&format!("  {:>10.0}  {}", one.expected_cost, way(one.kind, one.subject)));
        }
        if let Some(above) = plan.replace_above {
            self.line(&format!("  A new compressor pays above a probability of {}.", percent(above)));
        }
    }

    fn excluded(&mut self) {
        let joined = |list: &[CauseAndMeasurements], by: &str| -> Vec<String> {
            list.iter()
                .filter(|entry| entry.cause != Cause::None)
                .map(|entry| {
                    let names: Vec<String> = entry.measurements.iter().map(|m| reading(*m)).collect();
                    if names.is_empty() {
                        format!("  {}", words(entry.cause))
                    } else {
                        format!("  {}: {by} {}", words(entry.cause), names.join(", "))
                    }
                })
                .collect()
        };
        let leading = self.report.diagnosis.leading;
        let open: Vec<CauseAndMeasurements> =
            self.report.diagnosis.still_open.iter().filter(|e| e.cause != leading).cloned().collect();
        for (title, list) in [
            ("Ruled out", joined(&self.report.diagnosis.ruled_out, "by")),
            ("Still open", joined(&open, "closed by")),
        ] {
            if !list.is_empty() {
                self.heading(title);
            }
            for line in list {
                self.line(&line);
            }
        }
    }

    fn electrical(&mut self) {
        if self.report.electrical.is_empty() {
            return;
        }
        self.heading("Electrical");
        for finding in &self.report.electrical {
            self.line(&format!("  {}", finding_words(finding)));
        }
    }

    fn cautions(&mut self) {
        if self.report.cautions.is_empty() {
            return;
        }
        if self.all {
            self.heading("Cautions (local codes and licensed practice go first)");
            let mut step = None;
            for caution in &self.report.cautions {
                if step != Some(caution.step) {
                    step = Some(caution.step);
                    self.line(&format!("  {}:", caution.step.name().replace('_', " ")));
                }
                self.line(&format!("    - {}", caution.text()));
            }
            return;
        }
        let list = cautions_of_step(self.report);
        if list.is_empty() {
            return;
        }
        self.heading(
            "Cautions for this step (local codes and licensed practice go first; --all lists the rest)",
        );
        for caution in list {
            self.line(&format!("  - {}", caution.text()));
        }
    }
}

/// The cautions of the step that comes next, as many as a page holds.
pub(crate) fn cautions_of_step(report: &Report) -> Vec<Caution> {
    let step = &report.plan.step;
    let belongs = match (step.kind, step.effort, step.subject) {
        (StepKind::Look, ..) => CautionStep::Look,
        (_, Some(Effort::OpensSystem), _) | (StepKind::ReplaceCompressor | StepKind::ReplaceMachine, ..) => {
            CautionStep::OpensSystem
        }
        (StepKind::Repair, _, Subject::Cause(Cause::CondenserAirflow | Cause::EvaporatorAirflow)) => {
            CautionStep::Look
        }
        (StepKind::Repair, _, Subject::Cause(_)) => CautionStep::OpensSystem,
        (StepKind::Repair, ..) => CautionStep::Electrical,
        (_, Some(Effort::Valve), Subject::Measurement(rimewise::measurement::Measurement::PumpDown)) => {
            CautionStep::PumpDown
        }
        (_, Some(Effort::Valve), _) => CautionStep::Gauges,
        (_, Some(Effort::Meter), _) => CautionStep::Electrical,
        _ => CautionStep::Look,
    };
    report.cautions.iter().filter(|c| c.step == belongs).take(CAUTIONS).copied().collect()
}

/// The machine in a few words.
pub(crate) fn machine(visit: &OwnedVisit) -> String {
    let refrigerant = visit.refrigerant.map_or("unknown refrigerant", |r| r.designation());
    let system = visit.visit().system;
    let metering = system.metering.map_or("metering not said", |m| m.name()).replace('_', " ");
    let duty = system.duty.map_or("machine", |d| d.name()).replace('_', " ");
    format!("{duty}, {refrigerant}, {metering}")
}

/// What is said of the compressor.
pub(crate) fn compressor(report: &Report) -> String {
    let answer = report.compressor;
    let state = match answer.state {
        CompressorState::Open => "OPEN",
        CompressorState::Cleared => "CLEARED",
        CompressorState::Failing => "FAILING",
        CompressorState::Failed => "FAILED",
    };
    format!("COMPRESSOR {state} (at fault: {})", percent(answer.probability))
}

/// What is wrong, and how sure.
pub(crate) fn verdict(report: &Report) -> String {
    let diagnosis = &report.diagnosis;
    let sure = percent(report.verdict.probability);
    match report.verdict.statement {
        Statement::Healthy => format!("CLEARED: no fault that costs 5 % or more ({sure})."),
        Statement::Cause(cause) => format!("DECIDED: {} ({sure}).", words(cause)),
        Statement::Family(family) => {
            format!("DECIDED: {} ({sure}); which of them, the work will show.", joined(family.causes()))
        }
        Statement::Job(job) => {
            let causes = report.jobs.iter().find(|j| j.job == job).map_or(&[][..], |j| j.causes);
            let work = job.name().replace('_', " ");
            format!("DECIDED: {work} ({sure}), for {}.", joined(causes))
        }
        Statement::Electrical(finding) => {
            format!("DECIDED: {} ({sure}).", finding.name().replace('_', " "))
        }
        Statement::Unidentified => "NOT ONE OF THE LISTED CAUSES: none of them explains these readings. Check them \
                                    against each other, then the load, the door, the controls, and the refrigerant on \
                                    the plate."
            .to_owned(),
        Statement::Undecided if report.warnings.iter().any(|w| w.kind == WarningKind::TwoCausesAlike) => {
            let [one, other] = [&diagnosis.causes[0], &diagnosis.causes[1]]
                .map(|c| format!("{} ({})", words(c.cause), percent(c.probability)));
            format!(
                "NOT DECIDED between {one} and {other}: both explain the readings about equally well. Do not replace \
                 anything on this alone."
            )
        }
        Statement::Undecided => format!(
            "NOT DECIDED. Most probable: {} ({}). Do not replace anything on this alone.",
            words(diagnosis.leading),
            percent(diagnosis.causes[0].probability)
        ),
    }
}

fn joined(causes: &[Cause]) -> String {
    causes.iter().map(|cause| words(*cause)).collect::<Vec<_>>().join(", or ")
}

/// Whether a repair helped.
pub(crate) fn changed(change: Change) -> &'static str {
    match change {
        Change::Worked => "AFTER THE CHANGE: it worked, the machine is cleared.",
        Change::Better => "AFTER THE CHANGE: much better, and not yet cleared: let it run and read again.",
        Change::Unchanged => "AFTER THE CHANGE: the readings say the same as before.",
        Change::Worse => "AFTER THE CHANGE: further from a healthy machine than before.",
    }
}

/// A step with its minutes, and with what a hose takes.
pub(crate) fn step_lines(report: &Report, step: &Step) -> Vec<String> {
    let mut lines = vec![match step.kind {
        StepKind::Leave => format!("  {}", step.text()),
        _ => format!("  {} (about {:.0} min)", step.text(), step.minutes),
    }];
    if let Some(hose) = step.hose {
        let share = hose.percent.map_or(String::new(), |p| format!(", {p:.1} % of the charge"));
        lines.push(format!("    The hose takes about {:.1} g{share}.", hose.grams));
    }
    if let Some(kg) = report.plan.weigh_in_kg {
        lines.push(format!(
            "    Charge by weight: the scale falls by {:.0} +- {:.0} g.",
            1000.0 * kg.value,
            1000.0 * kg.u
        ));
    }
    lines
}

/// A way to go on in words.
pub(crate) fn way(kind: StepKind, subject: Subject) -> String {
    match (kind, subject) {
        (StepKind::Leave, Subject::Machine) => "not decided".to_owned(),
        (StepKind::Leave, _) => "leave the circuit alone".to_owned(),
        (StepKind::ReplaceCompressor, _) => "replace the compressor".to_owned(),
        (StepKind::ReplaceMachine, _) => "replace the machine".to_owned(),
        (_, Subject::Cause(cause)) => format!("repair: {}", words(cause)),
        (_, Subject::Measurement(measurement)) => format!("go on with {}", reading(measurement)),
        (_, subject) => format!("go on with {}", subject.name().replace('_', " ")),
    }
}

pub(crate) fn percent(p: f32) -> String {
    if p > 0.99 { "over 99 %".to_owned() } else { format!("{:.0} %", 100.0 * p) }
}

/// How strongly a reading speaks.
pub(crate) fn strength(nats: f32) -> &'static str {
    match nats.abs() {
        n if n >= 1.5 => "strong",
        n if n >= 0.6 => "some",
        _ => "little",
    }
}

type Row = (&'static str, Option<String>, Option<String>);

/// What was measured or derived beside what is expected of the healthy machine.
pub(crate) fn readings(visit: &OwnedVisit, report: &Report, units: &Units) -> Vec<Row> {
    let visit = visit.visit();
    let (cycle, expected, readings) = (&report.cycle, &report.expected, &visit.readings);
    let pressure = |v: Option<f32>| v.map(|kpa| units.pressure(kpa));
    let temperature = |c: Option<f32>| c.map(|c| units.temperature(c));
    let mut rows: Vec<Row> = vec![
        (
            "suction pressure",
            pressure(readings.suction_pressure_kpa),
            expected.suction_pressure_kpa.map(|e| units.pressure_pm(e)),
        ),
        (
            "discharge pressure",
            pressure(readings.discharge_pressure_kpa),
            expected.discharge_pressure_kpa.map(|e| units.pressure_pm(e)),
        ),
        (
            "evaporating temp. (SST)",
            cycle.suction_saturation_c.map(|e| units.temperature_pm(e)),
            expected.suction_saturation_c.map(|e| units.temperature_pm(e)),
        ),
        (
            "condensing temp. (SCT)",
            cycle.condensing_c.map(|e| units.temperature_pm(e)),
            expected.condensing_c.map(|e| units.temperature_pm(e)),
        ),
    ];
    for (name, seen, healthy) in [
        ("superheat, evaporator", cycle.superheat_k, expected.superheat_k),
        ("superheat, compressor", cycle.compressor_superheat_k, expected.compressor_superheat_k),
        ("subcooling", cycle.subcooling_k, expected.subcooling_k),
    ] {
        rows.push((name, seen.map(|e| units.difference_pm(e)), healthy.map(|e| units.difference_pm(e))));
    }
    for (name, seen, healthy) in [
        ("discharge line", readings.discharge_line_c, expected.discharge_line_c),
        ("liquid line", readings.liquid_line_c, expected.liquid_line_c),
        ("supply air", readings.supply_air_c, expected.supply_air_c),
        ("condenser exhaust air", readings.condenser_exhaust_c, expected.condenser_exhaust_c),
    ] {
        rows.push((name, temperature(seen), healthy.map(|e| units.temperature_pm(e))));
    }
    rows.push((
        "pressure ratio",
        cycle.pressure_ratio.map(|e| format!("{:.1} +- {:.1}", e.value, e.u)),
        expected.pressure_ratio.map(|e| format!("{:.1} +- {:.1}", e.value, e.u)),
    ));
    rows.push((
        "current",
        readings.current_a.map(|a| format!("{a:.2} A")),
        expected.current_a.map(|e| format!("{:.2} +- {:.2} A", e.value, e.u)),
    ));
    rows.push((
        "pump-down reached",
        pressure(readings.pump_down_kpa),
        expected.pump_down_kpa.map(|e| units.pressure_pm(e)),
    ));
    rows.retain(|(_, seen, healthy)| seen.is_some() || healthy.is_some());
    rows
}

/// What the severity of a cause is a fraction of.
fn amount(cause: Cause) -> &'static str {
    match cause {
        Cause::Undercharge => "of the charge missing",
        Cause::Overcharge => "too much charge",
        Cause::LiquidLineRestriction | Cause::MeteringUnderfeed => "of the flow area lost",
        Cause::FloodBack => "too much flow",
        Cause::WeakCompressor => "of the flow lost",
        Cause::CondenserAirflow | Cause::EvaporatorAirflow => "of the airflow lost",
        Cause::NonCondensables => "excess pressure",
        Cause::None => "",
    }
}
