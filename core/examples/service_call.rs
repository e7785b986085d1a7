//! A service call: from what was measured to what is wrong, how sure that is, and what to measure next.
//!
//! `service_call` answers a built-in visit; `service_call FILE` or `service_call -` reads one visit as JSON, or
//! visits as JSON Lines. `--json` writes JSON Lines; `--us` writes psi (gauge) and degF beside bar and degC, at the
//! altitude given with `--altitude METRES`.

mod common;

use common::words::{finding_words, reading, words};
use common::{Input, Units, arguments, lines};
use rimewise::cause::Cause;
use rimewise::diagnosis::CauseAndMeasurements;
use rimewise::json::{OwnedVisit, answer_visit, read_visit, write_error};
use rimewise::report::Report;
use rimewise::text::{Language, Told};
use rimewise::warning::WarningKind;
use std::process::ExitCode;

/// An invented freezer: a tired compressor on a warm day, with its pump-down test done.
const BUILT_IN: &str = include_str!("data/tired_freezer.json");

fn main() -> ExitCode {
    let options = match arguments(std::env::args().skip(1)) {
        Ok(options) => options,
        Err(message) => {
            eprintln!("service_call: {message}");
            eprintln!("usage: service_call [FILE | -] [--json] [--us] [--altitude METRES]");
            return ExitCode::from(2);
        }
    };
    let input = match &options.input {
        Input::BuiltIn => Ok(BUILT_IN.as_bytes().to_vec()),
        given => given.read(),
    };
    let input = match input {
        Ok(input) => input,
        Err(message) => {
            eprintln!("service_call: {message}");
            return ExitCode::from(2);
        }
    };
    let lines = lines(&input);
    if lines.is_empty() {
        eprintln!("service_call: the input holds no visit");
    }
    for line in lines {
        let text = match (&line, options.json) {
            (Ok(line), true) => answer_visit(line),
            (Ok(line), false) => for_people(line, &options.units),
            (Err(error), true) => write_error(error),
            (Err(error), false) => format!("This line cannot be read: {error}.\n"),
        };
        if !common::print(&text) {
            break;
        }
    }
    ExitCode::SUCCESS
}

fn for_people(line: &str, units: &Units) -> String {
    let visit = match read_visit(line) {
        Ok(visit) => visit,
        Err(error) => return format!("This visit cannot be read: {error}.\n"),
    };
    match rimewise::diagnose(visit.refrigerant, &visit.visit()) {
        Ok(report) => Page { units, visit: &visit, report: &report, text: String::new() }.write(),
        Err(error) => format!("This visit cannot be answered: {error}.\n"),
    }
}

/// A report in the making, for people.
struct Page<'a> {
    units: &'a Units,
    visit: &'a OwnedVisit,
    report: &'a Report,
    text: String,
}

impl Page<'_> {
    fn line(&mut self, text: &str) {
        self.text.push_str(text);
        self.text.push('\n');
    }
    fn heading(&mut self, text: &str) {
        self.line("");
        self.line(text);
    }

    fn write(mut self) -> String {
        self.machine();
        self.doing();
        self.wrong();
        self.next();
        self.excluded();
        self.electrical();
        self.cautions();
        self.text
    }

    fn machine(&mut self) {
        let visit = self.visit.visit();
        let system = &visit.system;
        let refrigerant = self.visit.refrigerant.map_or("unknown refrigerant", |r| r.designation());
        let metering = system.metering.map_or("metering not said", |m| m.name()).replace('_', " ");
        let duty = system.duty.map_or("machine", |d| d.name()).replace('_', " ");
        self.line(&format!("SERVICE CALL: {duty}, {refrigerant}, {metering}"));
    }

    fn doing(&mut self) {
        self.heading("What it does, and what it would show here and now if healthy");
        let visit = self.visit.visit();
        let (cycle, expected) = (&self.report.cycle, &self.report.expected);
        let readings = &visit.readings;
        let mut rows: Vec<(&str, Option<String>, Option<String>)> = Vec::new();
        let units = self.units;
        let pressure = |v: Option<f32>| v.map(|kpa| units.pressure(kpa));
        rows.push((
            "suction pressure",
            pressure(readings.suction_pressure_kpa),
            expected.suction_pressure_kpa.map(|e| units.pressure_pm(e)),
        ));
        rows.push((
            "discharge pressure",
            pressure(readings.discharge_pressure_kpa),
            expected.discharge_pressure_kpa.map(|e| units.pressure_pm(e)),
        ));
        rows.push((
            "evaporating (dew)",
            cycle.suction_saturation_c.map(|e| units.temperature_pm(e)),
            expected.suction_saturation_c.map(|e| units.temperature_pm(e)),
        ));
        rows.push((
            "condensing (middle)",
            cycle.condensing_c.map(|e| units.temperature_pm(e)),
            expected.condensing_c.map(|e| units.temperature_pm(e)),
        ));
        for (name, seen, healthy) in [
            ("superheat, evaporator", cycle.superheat_k, expected.superheat_k),
            ("superheat, compressor", cycle.compressor_superheat_k, expected.compressor_superheat_k),
            ("subcooling", cycle.subcooling_k, expected.subcooling_k),
        ] {
            rows.push((name, seen.map(|e| units.difference_pm(e)), healthy.map(|e| units.difference_pm(e))));
        }
        let temperature = |c: Option<f32>| c.map(|c| units.temperature(c));
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
        for (name, seen, healthy) in rows {
            if seen.is_none() && healthy.is_none() {
                continue;
            }
            let seen = seen.unwrap_or_else(|| "not measured".to_owned());
            let healthy = healthy.unwrap_or_default();
            self.line(format!("  {name:<22} {seen:<34} {healthy}").trim_end());
        }
        self.line("  (+- is one standard uncertainty; pressures are absolute unless marked gauge)");
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

    fn wrong(&mut self) {
        self.heading("What is wrong, and how sure");
        let report = self.report;
        let leading = report.diagnosis.leading;
        let percent = |p: f32| {
            if p > 0.99 { "over 99 %".to_owned() } else { format!("{:.0} %", 100.0 * p) }
        };
        let probability =
            report.diagnosis.causes.iter().find(|c| c.cause == leading).map_or(0.0, |c| c.probability);
        let odd = report.diagnosis.fits.is_some_and(|fits| fits < rimewise::diagnosis::FITS_AT_LEAST);
        let verdict = match (report.diagnosis.decided, leading) {
            (true, Cause::None) => {
                format!("CLEARED: nothing that costs 5 % or more ({}).", percent(probability))
            }
            (true, cause) => format!("DECIDED: {} ({}).", words(cause), percent(probability)),
            (false, _) if odd => "NOT DECIDED: none of the causes explains these readings.".to_owned(),
            (false, _) if report.warnings.iter().any(|w| w.kind == WarningKind::TwoCausesAlike) => {
                let [one, other] = [&report.diagnosis.causes[0], &report.diagnosis.causes[1]]
                    .map(|c| format!("{} ({})", words(c.cause), percent(c.probability)));
                format!(
                    "NOT DECIDED between {one} and {other}: both explain the readings about equally well. Do not \
                     replace anything on this alone."
                )
            }
            (false, cause) => format!(
                "NOT DECIDED. Most probable: {} ({}). Do not replace anything on this alone.",
                words(cause),
                percent(probability)
            ),
        };
        self.line(&format!("  {verdict}"));
        if odd {
            self.line(
                "  Check them against each other, then the load, the door, the controls, and whether this is the",
            );
            self.line("  refrigerant on the plate.");
        }
        for entry in report.diagnosis.causes.iter().filter(|c| c.probability >= 0.03).take(5) {
            let severity = entry
                .severity
                .filter(|s| *s >= 0.005)
                .map_or(String::new(), |s| format!("  (about {:.0} % {})", 100.0 * s, amount(entry.cause)));
            self.line(&format!("  {:>9}  {}{severity}", percent(entry.probability), words(entry.cause)));
        }
        self.heading("Why");
        let mut any = false;
        for entry in report.diagnosis.causes.iter().take(2).filter(|c| c.probability >= 0.1) {
            for (says, sign) in [("for", 1.0f32), ("against", -1.0)] {
                let list: Vec<String> = report
                    .diagnosis
                    .evidence
                    .iter()
                    .filter(|e| e.cause == entry.cause && e.weight_nats * sign > 0.0)
                    .take(4)
                    .map(|e| format!("{} ({:+.1})", reading(e.reading), e.weight_nats))
                    .collect();
                if !list.is_empty() {
                    any = true;
                    self.line(&format!("  {says} {}: {}", words(entry.cause), list.join(", ")));
                }
            }
        }
        self.line(if any {
            "  (log-odds in nats: 1 makes the odds 2.7 times better, 3 makes them 20 times)"
        } else {
            "  Nothing measured speaks clearly for or against."
        });
    }

    fn next(&mut self) {
        self.heading("What to measure next");
        let list: Vec<String> = self
            .report
            .diagnosis
            .next
            .iter()
            .take(4)
            .map(|n| {
                let effort = n.effort.name().replace('_', " ");
                format!("  {} ({:.2} bit, effort: {effort})", reading(n.measurement), n.information_bits)
            })
            .collect();
        if list.is_empty() {
            self.line("  Nothing that is left would change the answer.");
        }
        for line in list {
            self.line(&line);
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
        let out = joined(&self.report.diagnosis.ruled_out, "by");
        let leading = self.report.diagnosis.leading;
        let open: Vec<CauseAndMeasurements> =
            self.report.diagnosis.still_open.iter().filter(|e| e.cause != leading).cloned().collect();
        let open = joined(&open, "closed by");
        if !out.is_empty() {
            self.heading("Ruled out");
            for line in out {
                self.line(&line);
            }
        }
        if !open.is_empty() {
            self.heading("Still open");
            for line in open {
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
        self.heading("Cautions (local codes and licensed practice go first)");
        let mut step = None;
        for caution in &self.report.cautions {
            if step != Some(caution.step) {
                step = Some(caution.step);
                self.line(&format!("  {}:", caution.step.name().replace('_', " ")));
            }
            self.line(&format!("    - {}", caution.text()));
        }
    }
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
