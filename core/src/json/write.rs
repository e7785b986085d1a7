//! Writes reports and errors as one line of JSON.

use super::plan;
use super::read::FieldError;
use crate::cause::Cause;
use crate::diagnosis::CauseAndMeasurements;
use crate::estimate::Estimate;
use crate::motor::finding::{Finding, Winding};
use crate::report::Report;
use std::fmt::Write;

/// One line of JSON in the making.
pub(super) struct Line {
    text: String,
}

impl Line {
    fn new() -> Self {
        Self { text: String::from("{") }
    }
    /// A line that answers.
    pub(super) fn ok() -> Self {
        let mut line = Self::new();
        line.name("status");
        line.text("ok");
        line
    }
    /// Ends the line.
    pub(super) fn end(mut self) -> String {
        self.text.push('}');
        self.text
    }
    fn separate(&mut self) {
        if !self.text.ends_with(['{', '[', ':']) {
            self.text.push(',');
        }
    }
    /// Opens an object.
    pub(super) fn open(&mut self) {
        self.separate();
        self.text.push('{');
    }
    /// Closes an object.
    pub(super) fn close(&mut self) {
        self.text.push('}');
    }
    /// Names the next value.
    pub(super) fn name(&mut self, name: &str) {
        self.separate();
        self.quote(name);
        self.text.push(':');
    }
    /// Writes a string.
    pub(super) fn text(&mut self, text: &str) {
        self.separate();
        self.quote(text);
    }
    fn quote(&mut self, text: &str) {
        // Serialising a string cannot fail.
        self.text.push_str(&serde_json::to_string(text).unwrap_or_default());
    }
    /// Writes a string, or null.
    fn optional_text(&mut self, text: Option<&str>) {
        match text {
            Some(text) => self.text(text),
            None => self.null(),
        }
    }
    /// Writes null.
    pub(super) fn null(&mut self) {
        self.separate();
        self.text.push_str("null");
    }
    /// Writes a boolean.
    pub(super) fn boolean(&mut self, value: bool) {
        self.separate();
        self.text.push_str(if value { "true" } else { "false" });
    }
    /// Writes a number, or null.
    pub(super) fn value(&mut self, value: Option<f32>) {
        match value {
            Some(value) if value.is_finite() => {
                self.separate();
                // Display writes the shortest decimal that reads back as the same binary32. Writing to a string
                // cannot fail.
                let _ = write!(self.text, "{value}");
            }
            _ => self.null(),
        }
    }
    /// Writes a named number.
    pub(super) fn number(&mut self, name: &str, value: f32) {
        self.name(name);
        self.value(Some(value));
    }
    /// Writes an array.
    pub(super) fn list<T>(&mut self, items: impl Iterator<Item = T>, each: impl Fn(&mut Self, T)) {
        self.separate();
        self.text.push('[');
        for item in items {
            each(self, item);
        }
        self.text.push(']');
    }
    /// Writes a named value with its uncertainty, or null.
    pub(super) fn estimate(&mut self, name: &str, estimate: Option<Estimate>) {
        self.name(name);
        match estimate {
            None => self.null(),
            Some(estimate) => {
                self.open();
                self.number("value", estimate.value);
                self.number("u", estimate.u);
                self.close();
            }
        }
    }
}

/// Writes an error line.
pub fn write_error(error: &FieldError) -> String {
    let mut line = Line::new();
    line.name("status");
    line.text("error");
    line.name("field");
    line.text(&error.field);
    line.name("error");
    line.text(&error.error);
    line.end()
}

/// Writes a report as one line.
pub fn write_report(report: &Report) -> String {
    let mut line = Line::ok();
    line.name("cycle");
    line.open();
    for (quantity, estimate) in report.cycle.quantities() {
        line.estimate(quantity.name(), estimate);
    }
    line.close();
    line.name("expected");
    line.open();
    for (quantity, estimate) in report.expected.quantities() {
        line.estimate(quantity.name(), estimate);
    }
    line.close();
    line.name("causes");
    line.list(report.diagnosis.causes.iter(), |line, cause| {
        line.open();
        line.name("cause");
        line.text(cause.cause.name());
        line.number("probability", cause.probability);
        line.name("severity");
        line.value(cause.severity);
        line.close();
    });
    line.name("decided");
    line.boolean(report.diagnosis.decided);
    line.name("leading");
    line.text(report.diagnosis.leading.name());
    line.name("fits");
    line.value(report.diagnosis.fits);
    line.name("evidence");
    line.list(report.diagnosis.evidence.iter(), |line, evidence| {
        line.open();
        line.name("cause");
        line.text(evidence.cause.name());
        line.name("reading");
        line.text(evidence.reading.name());
        line.name("says");
        line.text(if evidence.weight_nats >= 0.0 { "for" } else { "against" });
        line.number("weight_nats", evidence.weight_nats);
        line.close();
    });
    line.name("next");
    line.list(report.diagnosis.next.iter(), |line, next| {
        line.open();
        line.name("measurement");
        line.text(next.measurement.name());
        line.number("information_bits", next.information_bits);
        line.name("effort");
        line.text(next.effort.name());
        line.number("minutes", next.minutes);
        line.close();
    });
    let causes = |line: &mut Line, key: &str, by: &str, list: &[CauseAndMeasurements]| {
        line.name(key);
        line.list(list.iter(), |line, entry| {
            line.open();
            line.name("cause");
            line.text(entry.cause.name());
            line.name(by);
            line.list(entry.measurements.iter(), |line, m| line.text(m.name()));
            line.close();
        });
    };
    causes(&mut line, "ruled_out", "by", &report.diagnosis.ruled_out);
    causes(&mut line, "still_open", "closed_by", &report.diagnosis.still_open);
    line.name("warnings");
    line.list(report.warnings.iter(), |line, warning| {
        line.open();
        line.name("field");
        line.text(&format!("{}.{}", warning.section, warning.field));
        line.name("text");
        line.text(warning.kind.name());
        line.close();
    });
    line.name("electrical");
    line.list(report.electrical.iter(), |line, finding| {
        line.open();
        line.name("finding");
        line.text(finding.finding.name());
        line.name("value");
        line.value(finding.value);
        line.name("limit");
        line.value(finding.limit);
        line.name("unit");
        line.text(finding.unit);
        write_finding_details(line, finding);
        line.close();
    });
    write_statements(&mut line, report);
    plan::write(&mut line, &report.plan);
    line.name("cautions");
    line.list(report.cautions.iter(), |line, caution| {
        line.open();
        line.name("code");
        line.text(caution.code.name());
        line.name("step");
        line.text(caution.step.name());
        line.name("text");
        line.text(caution.text());
        line.close();
    });
    line.end()
}

/// What a finding says beside its value and limit: which winding, the value referred to another temperature, how sure.
fn write_finding_details(line: &mut Line, finding: &Finding) {
    line.name("winding");
    line.optional_text(finding.winding.map(Winding::name));
    line.name("corrected");
    match finding.corrected {
        None => line.null(),
        Some(corrected) => {
            line.open();
            line.number("value", corrected.value);
            line.number("from_c", corrected.from_c);
            line.number("to_c", corrected.to_c);
            line.close();
        }
    }
    line.number("probability", finding.probability);
}

/// What stands above the causes: terminals, verdict, families, jobs, compressor, alarms.
fn write_statements(line: &mut Line, report: &Report) {
    line.name("terminals");
    match report.terminals {
        None => line.null(),
        Some(found) => {
            line.open();
            line.number("common", f32::from(found.common));
            line.number("run", f32::from(found.run));
            line.number("start", f32::from(found.start));
            line.number("probability", found.probability);
            line.close();
        }
    }
    line.name("verdict");
    line.open();
    line.name("level");
    line.text(report.verdict.statement.level().name());
    line.name("name");
    line.optional_text(report.verdict.statement.name());
    line.number("probability", report.verdict.probability);
    line.close();
    let causes = |line: &mut Line, causes: &[Cause]| {
        line.name("causes");
        line.list(causes.iter(), |line, cause| line.text(cause.name()));
    };
    line.name("families");
    line.list(report.families.iter(), |line, family| {
        line.open();
        line.name("name");
        line.text(family.family.name());
        line.number("probability", family.probability);
        causes(line, family.family.causes());
        line.close();
    });
    line.name("jobs");
    line.list(report.jobs.iter(), |line, job| {
        line.open();
        line.name("name");
        line.text(job.job.name());
        line.number("probability", job.probability);
        causes(line, job.causes);
        line.close();
    });
    line.name("compressor");
    line.open();
    line.name("state");
    line.text(report.compressor.state.name());
    line.number("probability", report.compressor.probability);
    line.close();
    line.name("alarms");
    line.list(report.alarms.iter(), |line, alarm| {
        line.open();
        line.name("code");
        line.text(alarm.code.name());
        line.name("field");
        let section = alarm.field.section().unwrap_or("cycle");
        line.text(&format!("{section}.{}", alarm.field.name()));
        line.name("value");
        line.value(alarm.value);
        line.name("limit");
        line.value(alarm.limit);
        line.name("unit");
        line.text(alarm.unit);
        line.name("text");
        line.text(alarm.text());
        line.close();
    });
}
