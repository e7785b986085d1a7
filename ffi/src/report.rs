//! The whole answer to one visit.

use crate::boundary::write_member;
use crate::estimate::give_quantities;
use crate::field;
use crate::generated::quantities::{
    RIMEWISE_CYCLE_ROOM, RIMEWISE_EXPECTED_ROOM, RimewiseCycle, RimewiseExpected,
};
use crate::invalid::{RIMEWISE_FACT_LIMIT, RIMEWISE_FACT_VALUE, bit};
use crate::plan::RimewisePlan;
use core::ffi::CStr;
use core::mem::{offset_of, size_of};
use rimewise::alarm::Alarm;
use rimewise::cause::Cause;
use rimewise::diagnosis::CauseAndMeasurements;
use rimewise::estimate::Estimate;
use rimewise::field::{Choice, Unit};
use rimewise::measurement::Measurement;
use rimewise::motor::finding::{Corrected, Finding, Winding};
use rimewise::report::Report;
use rimewise::verdict::{Statement, Verdict};
use rimewise::warning::Warning;

/// Room for causes, `none` included; `cause_count` says how many this library knows.
pub const RIMEWISE_CAUSES_MAX: usize = 16;
/// Most entries of evidence in a report.
pub const RIMEWISE_EVIDENCE_MAX: usize = 48;
/// Most next measurements in a report.
pub const RIMEWISE_NEXT_MAX: usize = 8;
/// Most measurements that rule out one cause, or would.
pub const RIMEWISE_MEASUREMENTS_MAX: usize = 3;
/// Most warnings in a report.
pub const RIMEWISE_WARNINGS_MAX: usize = 16;
/// Most electrical findings in a report.
pub const RIMEWISE_ELECTRICAL_MAX: usize = 16;
/// Room for families in a report.
pub const RIMEWISE_FAMILIES_MAX: usize = 8;
/// Room for jobs in a report.
pub const RIMEWISE_JOBS_MAX: usize = 16;
/// Room for alarms in a report.
pub const RIMEWISE_ALARMS_MAX: usize = 16;
/// Most cautions in a report.
pub const RIMEWISE_CAUTIONS_MAX: usize = 24;

/// The bit of RimewiseReport.valid that says `fits` is there.
pub const RIMEWISE_REPORT_FITS: u32 = 1;
/// The bit of RimewiseCauseProbability.valid that says `severity` is there.
pub const RIMEWISE_CAUSE_SEVERITY: u32 = 1;
/// The bit of RimewiseFinding.valid that says `value` is there.
pub const RIMEWISE_FINDING_VALUE: u32 = 1;
/// The bit of RimewiseFinding.valid that says `limit` is there.
pub const RIMEWISE_FINDING_LIMIT: u32 = 2;

const _: () = assert!(Cause::COUNT <= RIMEWISE_CAUSES_MAX);

/// The probability and the mean severity of one cause.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseCauseProbability {
    /// A RimewiseCause.
    pub cause: i32,
    /// RIMEWISE_CAUSE_SEVERITY where `severity` is there.
    pub valid: u32,
    /// Its probability, from every single cause and every pair that holds it, 0 to 1.
    pub probability: f32,
    /// The fraction lost or added where the cause is present.
    pub severity: f32,
}

/// One reading's word for or against one cause.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseEvidence {
    /// A RimewiseCause.
    pub cause: i32,
    /// A RimewiseMeasurement.
    pub reading: i32,
    /// Log-odds of the cause with all readings minus with this one left out, nats; positive speaks for it.
    pub weight_nats: f32,
}

/// A measurement not yet taken and what it would tell.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseNextMeasurement {
    /// A RimewiseMeasurement.
    pub measurement: i32,
    /// A RimewiseEffort.
    pub effort: i32,
    /// The information expected on the cause, bits.
    pub information_bits: f32,
}

/// A cause and the measurements that rule it out, or would.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseCauseAndMeasurements {
    /// A RimewiseCause.
    pub cause: i32,
    /// Number of entries of `measurements`.
    pub measurement_count: u32,
    /// RimewiseMeasurement numbers, the strongest first; the rest is 0.
    pub measurements: [i32; RIMEWISE_MEASUREMENTS_MAX],
}

/// Something suspicious about one field of the visit.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseWarning {
    /// A RimewiseWarningKind.
    pub code: i32,
    /// The field, for rimewise_field_text.
    pub field: i32,
    /// A RimewiseUnit, of both numbers.
    pub unit: i32,
    /// RIMEWISE_FACT_VALUE, RIMEWISE_FACT_LIMIT.
    pub valid: u32,
    /// The value that was read.
    pub value: f32,
    /// The limit that it was held against.
    pub limit: f32,
}

impl From<&Warning> for RimewiseWarning {
    fn from(warning: &Warning) -> Self {
        Self {
            code: warning.kind.code(),
            field: field::number(warning.section, warning.field),
            unit: warning.unit.code(),
            valid: bit(warning.value, RIMEWISE_FACT_VALUE) | bit(warning.limit, RIMEWISE_FACT_LIMIT),
            value: warning.value.unwrap_or(0.0),
            limit: warning.limit.unwrap_or(0.0),
        }
    }
}

/// An electrical finding with the value it rests on and the limit it was held against.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseFinding {
    /// A RimewiseFindingKind.
    pub finding: i32,
    /// A RimewiseUnit, of both numbers.
    pub unit: i32,
    /// RIMEWISE_FINDING_VALUE and RIMEWISE_FINDING_LIMIT; no value: the meter read open.
    pub valid: u32,
    /// The value.
    pub value: f32,
    /// The limit.
    pub limit: f32,
}

/// The number of a unit by its name; 0 where it is empty.
fn unit_code(name: &str) -> i32 {
    let same = |text: &CStr| text.to_bytes() == name.as_bytes();
    Unit::C_NAMES.iter().find(|(_, text)| same(text)).map_or(0, |(code, _)| *code)
}

impl From<&Finding> for RimewiseFinding {
    fn from(found: &Finding) -> Self {
        Self {
            finding: found.finding.code(),
            unit: unit_code(found.unit),
            valid: bit(found.value, RIMEWISE_FINDING_VALUE) | bit(found.limit, RIMEWISE_FINDING_LIMIT),
            value: found.value.unwrap_or(0.0),
            limit: found.limit.unwrap_or(0.0),
        }
    }
}

/// One caution at the step it belongs to.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseCaution {
    /// A RimewiseCautionCode.
    pub code: i32,
    /// A RimewiseStep.
    pub step: i32,
}

/// The most specific statement that the error rates allow.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseVerdict {
    /// A RimewiseLevel, which says what `name` is.
    pub level: i32,
    /// A RimewiseCause, RimewiseFamily, RimewiseJob or RimewiseFindingKind; 0 at the other levels.
    pub name: i32,
    /// Its probability, 0 to 1.
    pub probability: f32,
}

/// A family or a job with its probability.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseShare {
    /// The family or the job.
    pub name: i32,
    /// Its probability, 0 to 1.
    pub probability: f32,
}

/// What is dangerous, with the reading it rests on.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseAlarm {
    /// A RimewiseAlarmCode.
    pub code: i32,
    /// The RimewiseMeasurement it rests on.
    pub field: i32,
    /// A RimewiseUnit, of both numbers.
    pub unit: i32,
    /// RIMEWISE_FACT_VALUE, RIMEWISE_FACT_LIMIT.
    pub valid: u32,
    /// Its value.
    pub value: f32,
    /// The limit.
    pub limit: f32,
}

impl From<&Alarm> for RimewiseAlarm {
    fn from(alarm: &Alarm) -> Self {
        Self {
            code: alarm.code.code(),
            field: alarm.field.code(),
            unit: unit_code(alarm.unit),
            valid: bit(alarm.value, RIMEWISE_FACT_VALUE) | bit(alarm.limit, RIMEWISE_FACT_LIMIT),
            value: alarm.value.unwrap_or(0.0),
            limit: alarm.limit.unwrap_or(0.0),
        }
    }
}

/// What an electrical finding says beside its value and limit.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseFindingDetails {
    /// A RimewiseWinding; 0 where it cannot be told.
    pub winding: i32,
    /// How probable it is that what the finding says is so, 0 to 1.
    pub probability: f32,
    /// 1 where the value was referred to another temperature, else 0.
    pub corrected: i32,
    /// The value at `to_c`, in the finding's unit.
    pub corrected_value: f32,
    /// The temperature it was measured at, degC.
    pub from_c: f32,
    /// The temperature it is referred to, degC.
    pub to_c: f32,
}

impl From<&Finding> for RimewiseFindingDetails {
    fn from(found: &Finding) -> Self {
        let blank = Self {
            winding: found.winding.map_or(0, Winding::code),
            probability: found.probability,
            ..Self::default()
        };
        match found.corrected {
            None => blank,
            Some(Corrected { value, from_c, to_c }) => {
                Self { corrected: 1, corrected_value: value, from_c, to_c, ..blank }
            }
        }
    }
}

/// Which of a motor's unmarked terminals is which, by the numbers 1 to 3; all 0 where they do not tell.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseTerminalsFound {
    /// The common terminal.
    pub common: u32,
    /// The run terminal.
    pub run: u32,
    /// The start terminal.
    pub start: u32,
    /// How probable it is that this is so, 0 to 1.
    pub probability: f32,
}

/// The whole answer to one visit. Entries of an array past its count are 0.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct RimewiseReport {
    /// The size of this struct; set it before the call.
    pub size: u32,
    /// RIMEWISE_REPORT_FITS where `fits` is there.
    pub valid: u32,
    /// 1 where acting on `leading` is justified by the rule's stated error rates, else 0.
    pub decided: i32,
    /// The most probable RimewiseCause, `none` included.
    pub leading: i32,
    /// How probable readings as odd as these are under the best explanation, 0 to 1.
    ///
    /// Lowered by the probability that the visit was told wrongly: another refrigerant, readings in each other's place.
    ///
    /// Below 0.01 nothing is decided: check the readings against each other, the load, the door, the controls and the
    /// refrigerant itself.
    pub fits: f32,
    /// Number of entries of `causes`.
    pub cause_count: u32,
    /// All causes, most probable first.
    pub causes: [RimewiseCauseProbability; RIMEWISE_CAUSES_MAX],
    /// Number of entries of `evidence`.
    pub evidence_count: u32,
    /// The readings' words for and against the leading causes, the strongest first.
    pub evidence: [RimewiseEvidence; RIMEWISE_EVIDENCE_MAX],
    /// Number of entries of `next`.
    pub next_count: u32,
    /// What to measure next, the most telling first.
    pub next: [RimewiseNextMeasurement; RIMEWISE_NEXT_MAX],
    /// Number of entries of `ruled_out`.
    pub ruled_out_count: u32,
    /// Causes with a probability below 0.02 and what excludes them.
    pub ruled_out: [RimewiseCauseAndMeasurements; RIMEWISE_CAUSES_MAX],
    /// Number of entries of `still_open`.
    pub still_open_count: u32,
    /// The other causes and what would close them.
    pub still_open: [RimewiseCauseAndMeasurements; RIMEWISE_CAUSES_MAX],
    /// Number of entries of `warnings`.
    pub warning_count: u32,
    /// What is suspicious about the input.
    pub warnings: [RimewiseWarning; RIMEWISE_WARNINGS_MAX],
    /// Number of entries of `electrical`.
    pub electrical_count: u32,
    /// What the motor and supply readings show.
    pub electrical: [RimewiseFinding; RIMEWISE_ELECTRICAL_MAX],
    /// Number of entries of `cautions`.
    pub caution_count: u32,
    /// What to take care of, step by step.
    pub cautions: [RimewiseCaution; RIMEWISE_CAUTIONS_MAX],
    /// What the readings say the machine does.
    pub cycle: RimewiseCycle,
    /// What it would do if healthy.
    pub expected: RimewiseExpected,
    /// The most specific statement that the error rates allow.
    pub verdict: RimewiseVerdict,
    /// A RimewiseCompressorState: whether it is the compressor.
    pub compressor_state: i32,
    /// The probability that the compressor or its motor is at fault.
    pub compressor_probability: f32,
    /// Number of entries of `families`.
    pub family_count: u32,
    /// RimewiseFamily numbers with their probabilities, pairs counted once.
    pub families: [RimewiseShare; RIMEWISE_FAMILIES_MAX],
    /// Number of entries of `jobs`.
    pub job_count: u32,
    /// RimewiseJob numbers with their probabilities, pairs counted once, the most probable first.
    pub jobs: [RimewiseShare; RIMEWISE_JOBS_MAX],
    /// Number of entries of `alarms`.
    pub alarm_count: u32,
    /// What is dangerous, the most urgent first.
    pub alarms: [RimewiseAlarm; RIMEWISE_ALARMS_MAX],
    /// What each entry of `next` takes, minutes.
    pub next_minutes: [f32; RIMEWISE_NEXT_MAX],
    /// What each entry of `electrical` says beside its value and limit.
    pub electrical_details: [RimewiseFindingDetails; RIMEWISE_ELECTRICAL_MAX],
    /// Which of the motor's unmarked terminals is which.
    pub terminals: RimewiseTerminalsFound,
    /// What to do next, and what the ways to go on cost.
    pub plan: RimewisePlan,
}

// SAFETY: repr(C), begins with its size, 4-byte numbers only.
unsafe impl crate::boundary::Sized4 for RimewiseReport {
    const FIRST: u32 = 2908;
}

fn cause_and_measurements(from: &CauseAndMeasurements) -> RimewiseCauseAndMeasurements {
    let mut to = RimewiseCauseAndMeasurements {
        cause: from.cause.code(),
        measurement_count: 0,
        measurements: [0; RIMEWISE_MEASUREMENTS_MAX],
    };
    for (place, measurement) in to.measurements.iter_mut().zip(&from.measurements) {
        *place = measurement.code();
        to.measurement_count += 1;
    }
    to
}

fn verdict(from: &Verdict) -> RimewiseVerdict {
    let name = match from.statement {
        Statement::Cause(cause) => cause.code(),
        Statement::Family(family) => family.code(),
        Statement::Job(job) => job.code(),
        Statement::Electrical(finding) => finding.code(),
        Statement::Undecided | Statement::Healthy | Statement::Unidentified => 0,
    };
    RimewiseVerdict { level: from.statement.level().code(), name, probability: from.probability }
}

/// A report of the caller, written member by member up to its size.
struct Place {
    at: *mut u8,
    size: usize,
}

impl Place {
    /// Writes one member.
    unsafe fn put<T>(&self, offset: usize, value: T) {
        // SAFETY: as the caller's.
        unsafe { write_member(self.at, self.size, offset, value) };
    }

    /// Writes one list of `N` entries: its count, its entries, and zeros behind them.
    unsafe fn list<F, T: Default, const N: usize>(
        &self,
        count: usize,
        array: usize,
        from: &[F],
        convert: impl Fn(&F) -> T,
        _: Room<T, N>,
    ) {
        if array + size_of::<[T; N]>() > self.size {
            return;
        }
        // SAFETY: as the caller's; the count stands ahead of its list.
        unsafe {
            self.put(count, from.len().min(N) as u32);
            for position in 0..N {
                let entry = from.get(position).map_or_else(T::default, &convert);
                self.put(array + position * size_of::<T>(), entry);
            }
        }
    }

    /// Writes quantities in their room.
    unsafe fn quantities(&self, offset: usize, room: usize, all: &[(Measurement, Option<Estimate>)]) {
        if offset + 4 + 8 * room <= self.size {
            // SAFETY: as the caller's.
            unsafe { give_quantities(self.at.add(offset).cast(), room, all) };
        }
    }
}

/// The type of an array member, from a function that is never called.
type Room<T, const N: usize> = fn(&RimewiseReport) -> &[T; N];

/// Names a list of the report by its two members.
macro_rules! list {
    ($place:ident, $count:ident, $array:ident, $from:expr, $convert:expr) => {
        $place.list(
            offset_of!(RimewiseReport, $count),
            offset_of!(RimewiseReport, $array),
            $from,
            $convert,
            |report| &report.$array,
        )
    };
}

impl RimewiseReport {
    /// Writes a report straight into the caller's memory, because a second copy would not fit a meter's stack.
    ///
    /// # Safety
    /// `to` has room for `size` bytes, which `boundary::writable` has given.
    pub(crate) unsafe fn write(from: &Report, to: *mut Self, size: usize) {
        let to = Place { at: to.cast::<u8>(), size };
        let diagnosis = &from.diagnosis;
        // SAFETY: every place lies within the caller's size; a caller's struct may be unaligned.
        unsafe {
            to.put(offset_of!(Self, valid), bit(diagnosis.fits, RIMEWISE_REPORT_FITS));
            to.put(offset_of!(Self, decided), u32::from(diagnosis.decided));
            to.put(offset_of!(Self, leading), diagnosis.leading.code());
            to.put(offset_of!(Self, fits), diagnosis.fits.unwrap_or(0.0));
            list!(to, cause_count, causes, &diagnosis.causes, |c| RimewiseCauseProbability {
                cause: c.cause.code(),
                valid: bit(c.severity, RIMEWISE_CAUSE_SEVERITY),
                probability: c.probability,
                severity: c.severity.unwrap_or(0.0),
            });
            list!(to, evidence_count, evidence, &diagnosis.evidence, |e| RimewiseEvidence {
                cause: e.cause.code(),
                reading: e.reading.code(),
                weight_nats: e.weight_nats,
            });
            list!(to, next_count, next, &diagnosis.next, |n| RimewiseNextMeasurement {
                measurement: n.measurement.code(),
                effort: n.effort.code(),
                information_bits: n.information_bits,
            });
            list!(to, ruled_out_count, ruled_out, &diagnosis.ruled_out, cause_and_measurements);
            list!(to, still_open_count, still_open, &diagnosis.still_open, cause_and_measurements);
            list!(to, warning_count, warnings, &from.warnings, |w| RimewiseWarning::from(w));
            list!(to, electrical_count, electrical, &from.electrical, |f| RimewiseFinding::from(f));
            list!(to, caution_count, cautions, &from.cautions, |c| RimewiseCaution {
                code: c.code.code(),
                step: c.step.code(),
            });
            to.quantities(offset_of!(Self, cycle), RIMEWISE_CYCLE_ROOM, &from.cycle.quantities());
            to.put(offset_of!(Self, verdict), verdict(&from.verdict));
            to.put(offset_of!(Self, compressor_state), from.compressor.state.code());
            to.put(offset_of!(Self, compressor_probability), from.compressor.probability);
            list!(to, family_count, families, &from.families, |f| RimewiseShare {
                name: f.family.code(),
                probability: f.probability,
            });
            list!(to, job_count, jobs, &from.jobs, |j| RimewiseShare {
                name: j.job.code(),
                probability: j.probability,
            });
            list!(to, alarm_count, alarms, &from.alarms, |a| RimewiseAlarm::from(a));
            for position in 0..RIMEWISE_NEXT_MAX {
                let minutes = diagnosis.next.get(position).map_or(0.0, |next| next.minutes);
                to.put(offset_of!(Self, next_minutes) + 4 * position, minutes);
            }
            for position in 0..RIMEWISE_ELECTRICAL_MAX {
                let details = from.electrical.get(position).map_or_else(Default::default, |f| f.into());
                let step = position * size_of::<RimewiseFindingDetails>();
                to.put::<RimewiseFindingDetails>(offset_of!(Self, electrical_details) + step, details);
            }
            let terminals = from.terminals.map_or_else(Default::default, |found| RimewiseTerminalsFound {
                common: found.common.into(),
                run: found.run.into(),
                start: found.start.into(),
                probability: found.probability,
            });
            to.put(offset_of!(Self, terminals), terminals);
            if offset_of!(Self, plan) + size_of::<RimewisePlan>() <= to.size {
                RimewisePlan::write(&from.plan, to.at.add(offset_of!(Self, plan)));
            }
            to.quantities(offset_of!(Self, expected), RIMEWISE_EXPECTED_ROOM, &from.expected.quantities());
        }
    }
}
