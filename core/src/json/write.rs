//! Writes reports and errors as one line of JSON.

use super::line::{Answered, Name, Object, line, object};
use super::plan::PlanOfVisit;
use super::read::FieldError;
use crate::alarm::AlarmCode;
use crate::cause::Cause;
use crate::caution::{CautionCode, Step};
use crate::cycle::Cycle;
use crate::diagnosis::CauseAndMeasurements;
use crate::expected::Expected;
use crate::field::Unit;
use crate::invalid::ErrorCode;
use crate::measurement::{Effort, Measurement};
use crate::motor::finding::{FindingKind, Winding};
use crate::text::{Language, Told};
use crate::verdict::{CompressorState, Family, Job, Level};
use crate::warning::WarningKind;

object! {
    /// The probability and the mean severity of one cause.
    CauseProbability {
        /// The cause.
        cause: Name<Cause>,
        /// Its probability, from every single cause and every pair that holds it, 0 to 1.
        probability: f32,
        /// The fraction lost or added where the cause is present; null for none.
        severity: Option<f32>,
    }
}

object! {
    /// One reading's word for or against one cause.
    Evidence {
        /// The cause.
        cause: Name<Cause>,
        /// The reading.
        reading: Name<Measurement>,
        /// Which way the reading speaks: `for` or `against`.
        says: &'static str,
        /// Log-odds of the cause with all readings minus with this one left out, nats; positive speaks for it.
        weight_nats: f32,
    }
}

object! {
    /// A measurement not yet taken and what it would tell.
    NextMeasurement {
        /// What to measure.
        measurement: Name<Measurement>,
        /// The information expected on the cause, bits.
        information_bits: f32,
        /// The effort it takes.
        effort: Name<Effort>,
        /// What it takes, minutes (judged).
        minutes: f32,
    }
}

object! {
    /// A cause and the measurements that rule it out.
    RuledOut {
        /// The cause.
        cause: Name<Cause>,
        /// The measurements, the strongest first.
        by: Vec<Name<Measurement>>,
    }
}

object! {
    /// A cause and the measurements that would rule it out.
    StillOpen {
        /// The cause.
        cause: Name<Cause>,
        /// The measurements, the strongest first.
        closed_by: Vec<Name<Measurement>>,
    }
}

object! {
    /// Something suspicious about one field.
    Warning {
        /// The path of the field.
        field: String,
        /// The same in words, in the language asked for.
        text: &'static str,
        /// What is suspicious.
        code: Name<WarningKind>,
        /// The value that was read, in `unit`; null where it is no number.
        value: Option<f32>,
        /// The limit that it was held against, in `unit`; null where there is none.
        limit: Option<f32>,
        /// The unit of both; null where there is no number.
        unit: Option<&'static str>,
    }
}

object! {
    /// A finding with the value it rests on and the limit it was held against.
    Finding {
        /// What was found.
        finding: Name<FindingKind>,
        /// The value, in `unit`; null where a meter read open.
        value: Option<f32>,
        /// The limit, in `unit`; null where there is none.
        limit: Option<f32>,
        /// The unit of both, such as `uF` or `ohm`.
        unit: &'static str,
        /// Which winding or line; null where it cannot be told.
        winding: Option<Name<Winding>>,
        /// The value referred to the limit's temperature, where that was done.
        corrected: Option<Corrected>,
        /// How probable it is that what the finding says is so, 0 to 1.
        probability: f32,
    }
}

object! {
    /// A value referred to another temperature than it was measured at.
    Corrected {
        /// The value at `to_c`, in the finding's unit.
        value: f32,
        /// The temperature it was measured at, degC.
        from_c: f32,
        /// The temperature it is referred to, degC.
        to_c: f32,
    }
}

object! {
    /// Which of a motor's unmarked terminals is which, by the numbers that the technician gave them.
    Terminals {
        /// The common terminal.
        common: u8,
        /// The run terminal.
        run: u8,
        /// The start terminal.
        start: u8,
        /// How probable it is that this is so, 0 to 1.
        probability: f32,
    }
}

object! {
    /// The most specific statement that the rule's stated error rates allow.
    Verdict {
        /// How specific it is.
        level: Name<Level>,
        /// A cause, a family, a job or an electrical finding, by its level; null where nothing is stated.
        name: Option<&'static str>,
        /// Its probability, 0 to 1.
        probability: f32,
    }
}

object! {
    /// A family of causes that readings often cannot part.
    FamilyProbability {
        /// The family.
        name: Name<Family>,
        /// The probability of its causes together, pairs counted once.
        probability: f32,
        /// Its causes.
        causes: Vec<Name<Cause>>,
    }
}

object! {
    /// A job that mends what is wrong.
    JobProbability {
        /// The job.
        name: Name<Job>,
        /// The probability that it mends what is wrong, pairs counted once.
        probability: f32,
        /// The causes that it mends.
        causes: Vec<Name<Cause>>,
    }
}

object! {
    /// Whether it is the compressor.
    CompressorAnswer {
        /// The state.
        state: Name<CompressorState>,
        /// The probability that the compressor or its motor is at fault.
        probability: f32,
    }
}

object! {
    /// What is dangerous, with the reading it rests on.
    Alarm {
        /// What it is about.
        code: Name<AlarmCode>,
        /// The path of the field.
        field: String,
        /// Its value, in `unit`; null where a meter read open or it is no number.
        value: Option<f32>,
        /// The limit, in `unit`; null where there is none.
        limit: Option<f32>,
        /// The unit of both.
        unit: &'static str,
        /// The same in words, in the language asked for.
        text: &'static str,
    }
}

object! {
    /// One caution at the step it belongs to.
    Caution {
        /// What can hurt.
        code: Name<CautionCode>,
        /// The step it belongs to.
        step: Name<Step>,
        /// The same in words, in the language asked for.
        text: &'static str,
    }
}

object! {
    /// The whole answer to one visit.
    Report {
        /// Always `ok`: an error is an answer of its own.
        status: Answered,
        /// What the readings say the machine does.
        cycle: Cycle,
        /// What it would do if healthy.
        expected: Expected,
        /// All causes, most probable first.
        causes: Vec<CauseProbability>,
        /// Whether acting on `leading` is justified by the rule's stated error rates.
        decided: bool,
        /// The most probable cause, `none` included.
        leading: Name<Cause>,
        /// How probable readings as odd as these are under the best explanation; null where nothing could be judged.
        ///
        /// Lowered by the probability that the visit was told wrongly: another refrigerant, readings in each other's place.
        fits: Option<f32>,
        /// The readings' words for and against the leading causes, the strongest first.
        evidence: Vec<Evidence>,
        /// What to measure next, the most telling first.
        next: Vec<NextMeasurement>,
        /// Causes with a probability below 0.02 and what excludes them.
        ruled_out: Vec<RuledOut>,
        /// The other causes and what would close them.
        still_open: Vec<StillOpen>,
        /// What is suspicious about the input.
        warnings: Vec<Warning>,
        /// What the motor and supply readings show.
        electrical: Vec<Finding>,
        /// Which of the motor's unmarked terminals is which; null where they were not measured or do not tell.
        terminals: Option<Terminals>,
        /// The most specific statement that the error rates allow.
        verdict: Verdict,
        /// How probable each family of causes is that readings often cannot part.
        families: Vec<FamilyProbability>,
        /// How probable each job is, the most probable first.
        jobs: Vec<JobProbability>,
        /// Whether it is the compressor.
        compressor: CompressorAnswer,
        /// What is dangerous, the most urgent first.
        alarms: Vec<Alarm>,
        /// What to do next, and what the ways to go on cost.
        plan: PlanOfVisit,
        /// What to take care of, step by step.
        cautions: Vec<Caution>,
    }
}

object! {
    /// An input that cannot be used.
    Refusal {
        /// Always `error`.
        status: &'static str,
        /// The path of the field, such as `readings.suction_pressure_kpa`; empty where no one field is at fault.
        field: String,
        /// What is wrong, in words, in the language asked for.
        error: String,
        /// What is wrong.
        code: Name<ErrorCode>,
        /// The value that was given, in `unit`; null where it is no number.
        value: Option<f32>,
        /// The limit that it broke, in `unit`; null where there is none.
        limit: Option<f32>,
        /// The unit of both; null where there is none.
        unit: Option<&'static str>,
    }
}

/// The objects of a report and of an error.
pub(super) const OBJECTS: &[Object] = &[
    CauseProbability::TABLE,
    Evidence::TABLE,
    NextMeasurement::TABLE,
    RuledOut::TABLE,
    StillOpen::TABLE,
    Warning::TABLE,
    Finding::TABLE,
    Corrected::TABLE,
    Terminals::TABLE,
    Verdict::TABLE,
    FamilyProbability::TABLE,
    JobProbability::TABLE,
    CompressorAnswer::TABLE,
    Alarm::TABLE,
    Caution::TABLE,
    Report::TABLE,
    Refusal::TABLE,
];

/// A unit's name where there is a unit.
fn unit(unit: Unit) -> Option<&'static str> {
    (unit != Unit::None).then(|| unit.name())
}

/// Writes an error line.
pub fn write_error(error: &FieldError) -> String {
    let facts = error.facts;
    line(&Refusal {
        status: "error",
        field: error.field.clone(),
        error: error.text(),
        code: Name(facts.code),
        value: facts.value,
        limit: facts.limit(),
        unit: unit(facts.unit),
    })
}

fn measurements(list: &[Measurement]) -> Vec<Name<Measurement>> {
    list.iter().map(|measurement| Name(*measurement)).collect()
}

/// Writes a report as one line, with its sentences in a language.
pub fn write_report(report: &crate::report::Report, language: Language) -> String {
    let diagnosis = &report.diagnosis;
    let causes = diagnosis.causes.iter().map(|entry| CauseProbability {
        cause: Name(entry.cause),
        probability: entry.probability,
        severity: entry.severity,
    });
    let evidence = diagnosis.evidence.iter().map(|entry| Evidence {
        cause: Name(entry.cause),
        reading: Name(entry.reading),
        says: if entry.weight_nats >= 0.0 { "for" } else { "against" },
        weight_nats: entry.weight_nats,
    });
    let next = diagnosis.next.iter().map(|next| NextMeasurement {
        measurement: Name(next.measurement),
        information_bits: next.information_bits,
        effort: Name(next.effort),
        minutes: next.minutes,
    });
    let ruled_out = |entry: &CauseAndMeasurements| RuledOut {
        cause: Name(entry.cause),
        by: measurements(&entry.measurements),
    };
    let still_open = |entry: &CauseAndMeasurements| StillOpen {
        cause: Name(entry.cause),
        closed_by: measurements(&entry.measurements),
    };
    let warnings = report.warnings.iter().map(|warning| Warning {
        field: format!("{}.{}", warning.section, warning.field),
        text: warning.kind.text(language),
        code: Name(warning.kind),
        value: warning.value,
        limit: warning.limit,
        unit: unit(warning.unit),
    });
    let electrical = report.electrical.iter().map(|finding| Finding {
        finding: Name(finding.finding),
        value: finding.value,
        limit: finding.limit,
        unit: finding.unit,
        winding: finding.winding.map(Name),
        corrected: finding.corrected.map(|corrected| Corrected {
            value: corrected.value,
            from_c: corrected.from_c,
            to_c: corrected.to_c,
        }),
        probability: finding.probability,
    });
    let names = |causes: &[Cause]| causes.iter().map(|cause| Name(*cause)).collect();
    let families = report.families.iter().map(|family| FamilyProbability {
        name: Name(family.family),
        probability: family.probability,
        causes: names(family.family.causes()),
    });
    let jobs = report.jobs.iter().map(|job| JobProbability {
        name: Name(job.job),
        probability: job.probability,
        causes: names(job.causes),
    });
    let alarms = report.alarms.iter().map(|alarm| Alarm {
        code: Name(alarm.code),
        field: format!("{}.{}", alarm.field.section().unwrap_or("cycle"), alarm.field.name()),
        value: alarm.value,
        limit: alarm.limit,
        unit: alarm.unit,
        text: alarm.code.text(language),
    });
    let cautions = report.cautions.iter().map(|caution| Caution {
        code: Name(caution.code),
        step: Name(caution.step),
        text: caution.code.text(language),
    });
    line(&Report {
        status: Answered,
        cycle: report.cycle,
        expected: report.expected,
        causes: causes.collect(),
        decided: diagnosis.decided,
        leading: Name(diagnosis.leading),
        fits: diagnosis.fits,
        evidence: evidence.collect(),
        next: next.collect(),
        ruled_out: diagnosis.ruled_out.iter().map(ruled_out).collect(),
        still_open: diagnosis.still_open.iter().map(still_open).collect(),
        warnings: warnings.collect(),
        electrical: electrical.collect(),
        terminals: report.terminals.map(|found| Terminals {
            common: found.common,
            run: found.run,
            start: found.start,
            probability: found.probability,
        }),
        verdict: Verdict {
            level: Name(report.verdict.statement.level()),
            name: report.verdict.statement.name(),
            probability: report.verdict.probability,
        },
        families: families.collect(),
        jobs: jobs.collect(),
        compressor: CompressorAnswer {
            state: Name(report.compressor.state),
            probability: report.compressor.probability,
        },
        alarms: alarms.collect(),
        plan: PlanOfVisit::of(&report.plan, language),
        cautions: cautions.collect(),
    })
}
