//! The whole answer to one visit.

use crate::boundary::put;
use crate::cycle::RimewiseCycle;
use crate::expected::RimewiseExpected;
use crate::field;
use crate::status::{RimewiseStatus, RimewiseStatus as Status};
use core::ffi::{CStr, c_char};
use core::mem::offset_of;
use core::mem::size_of;
use core::ptr;
use rimewise::diagnosis::CauseAndMeasurements;
use rimewise::motor::finding::Finding;
use rimewise::report::Report;

/// Number of causes, `none` included.
pub const RIMEWISE_CAUSES: usize = 10;
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

/// The unit of an electrical finding.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseUnit {
    /// The finding has no number.
    None = 0,
    /// Ohm.
    Ohm = 1,
    /// Megohm.
    Megohm = 2,
    /// Microfarad.
    Uf = 3,
    /// Volt.
    V = 4,
    /// Ampere.
    A = 5,
    /// Percent.
    Percent = 6,
}

const UNITS: [(&CStr, RimewiseUnit); 7] = [
    (c"", RimewiseUnit::None),
    (c"ohm", RimewiseUnit::Ohm),
    (c"megohm", RimewiseUnit::Megohm),
    (c"uF", RimewiseUnit::Uf),
    (c"V", RimewiseUnit::V),
    (c"A", RimewiseUnit::A),
    (c"%", RimewiseUnit::Percent),
];

fn unit_code(text: &str) -> i32 {
    UNITS.iter().find(|(t, _)| t.to_bytes() == text.as_bytes()).map_or(0, |(_, code)| *code as i32)
}

/// Gives a unit as text: "uF".
///
/// `code` is a RimewiseUnit. Errors: UNKNOWN_CODE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_unit_text(code: i32, text: *mut *const c_char) -> RimewiseStatus {
    match UNITS.iter().find(|(_, unit)| *unit as i32 == code) {
        // SAFETY: the contract of the header.
        Some((unit, _)) => unsafe { put(text, unit.as_ptr()) },
        None => Status::UnknownCode,
    }
}

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
    pub kind: i32,
    /// The field, for rimewise_field_text.
    pub field: i32,
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

impl From<&Finding> for RimewiseFinding {
    fn from(found: &Finding) -> Self {
        Self {
            finding: found.finding.code(),
            unit: unit_code(found.unit),
            valid: (u32::from(found.value.is_some()) * RIMEWISE_FINDING_VALUE)
                | (u32::from(found.limit.is_some()) * RIMEWISE_FINDING_LIMIT),
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
    /// All causes, most probable first.
    pub causes: [RimewiseCauseProbability; RIMEWISE_CAUSES],
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
    pub ruled_out: [RimewiseCauseAndMeasurements; RIMEWISE_CAUSES],
    /// Number of entries of `still_open`.
    pub still_open_count: u32,
    /// The other causes and what would close them.
    pub still_open: [RimewiseCauseAndMeasurements; RIMEWISE_CAUSES],
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
}

// SAFETY: repr(C), begins with its size, 4-byte numbers only.
unsafe impl crate::boundary::Sized4 for RimewiseReport {
    const FIRST: u32 = size_of::<Self>() as u32;
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

/// Writes one list into the caller's report: its count, its entries, and zeros behind them.
unsafe fn list<F, T: Default>(
    count: *mut u32,
    array: *mut T,
    capacity: usize,
    from: &[F],
    convert: impl Fn(&F) -> T,
) {
    // SAFETY: the caller passes an array of `capacity` entries.
    unsafe {
        ptr::write_unaligned(count, from.len().min(capacity) as u32);
        for position in 0..capacity {
            let entry = from.get(position).map_or_else(T::default, &convert);
            ptr::write_unaligned(array.add(position), entry);
        }
    }
}

impl RimewiseReport {
    /// Writes a report straight into the caller's memory, because a second copy would not fit a meter's stack.
    ///
    /// # Safety
    /// `to` has room for `size` bytes, which `boundary::writable` has given.
    pub(crate) unsafe fn write(from: &Report, to: *mut Self, size: usize) {
        // A later release that appends a field writes it only where it ends within `size`.
        debug_assert_eq!(size, size_of::<Self>());
        // SAFETY: every place lies within the struct; a caller's struct may be unaligned.
        unsafe {
            let at = |offset: usize| to.cast::<u8>().add(offset);
            let number = |offset, value: u32| ptr::write_unaligned(at(offset).cast::<u32>(), value);
            number(offset_of!(Self, valid), u32::from(from.diagnosis.fits.is_some()) * RIMEWISE_REPORT_FITS);
            number(offset_of!(Self, decided), u32::from(from.diagnosis.decided));
            number(offset_of!(Self, leading), from.diagnosis.leading.code() as u32);
            number(offset_of!(Self, fits), from.diagnosis.fits.unwrap_or(0.0).to_bits());
            let causes = at(offset_of!(Self, causes)).cast::<RimewiseCauseProbability>();
            for (position, cause) in from.diagnosis.causes.iter().enumerate() {
                let entry = RimewiseCauseProbability {
                    cause: cause.cause.code(),
                    valid: u32::from(cause.severity.is_some()) * RIMEWISE_CAUSE_SEVERITY,
                    probability: cause.probability,
                    severity: cause.severity.unwrap_or(0.0),
                };
                ptr::write_unaligned(causes.add(position), entry);
            }
            list(
                at(offset_of!(Self, evidence_count)).cast(),
                at(offset_of!(Self, evidence)).cast(),
                RIMEWISE_EVIDENCE_MAX,
                &from.diagnosis.evidence,
                |e| RimewiseEvidence {
                    cause: e.cause.code(),
                    reading: e.reading.code(),
                    weight_nats: e.weight_nats,
                },
            );
            list(
                at(offset_of!(Self, next_count)).cast(),
                at(offset_of!(Self, next)).cast(),
                RIMEWISE_NEXT_MAX,
                &from.diagnosis.next,
                |n| RimewiseNextMeasurement {
                    measurement: n.measurement.code(),
                    effort: n.effort.code(),
                    information_bits: n.information_bits,
                },
            );
            list(
                at(offset_of!(Self, ruled_out_count)).cast(),
                at(offset_of!(Self, ruled_out)).cast(),
                RIMEWISE_CAUSES,
                &from.diagnosis.ruled_out,
                cause_and_measurements,
            );
            list(
                at(offset_of!(Self, still_open_count)).cast(),
                at(offset_of!(Self, still_open)).cast(),
                RIMEWISE_CAUSES,
                &from.diagnosis.still_open,
                cause_and_measurements,
            );
            list(
                at(offset_of!(Self, warning_count)).cast(),
                at(offset_of!(Self, warnings)).cast(),
                RIMEWISE_WARNINGS_MAX,
                &from.warnings,
                |w| RimewiseWarning { kind: w.kind.code(), field: field::number(w.section, w.field) },
            );
            list(
                at(offset_of!(Self, electrical_count)).cast(),
                at(offset_of!(Self, electrical)).cast(),
                RIMEWISE_ELECTRICAL_MAX,
                &from.electrical,
                |f| RimewiseFinding::from(f),
            );
            list(
                at(offset_of!(Self, caution_count)).cast(),
                at(offset_of!(Self, cautions)).cast(),
                RIMEWISE_CAUTIONS_MAX,
                &from.cautions,
                |c| RimewiseCaution { code: c.code.code(), step: c.step.code() },
            );
            ptr::write_unaligned(at(offset_of!(Self, cycle)).cast(), RimewiseCycle::from(&from.cycle));
            ptr::write_unaligned(
                at(offset_of!(Self, expected)).cast(),
                RimewiseExpected::from(&from.expected),
            );
        }
    }
}
