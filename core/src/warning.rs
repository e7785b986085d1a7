//! What is suspicious about a visit that is answered all the same.

use crate::field::{Unit, choice};
use crate::measurement::Readings;

choice! {
    /// What is suspicious about an input that is answered all the same.
    WarningKind {
        /// The pressure fits far better after adding one atmosphere.
        ReadsLikeGauge = 1 "reads_like_gauge",
        /// The reading contradicts the others.
        ContradictsOthers = 2 "contradicts_others",
        // 3 and 4 are retired.
        /// The machine has run too short a time to have settled.
        NotSettled = 5 "not_settled",
        /// The refrigerant is not known, so pressures say nothing.
        RefrigerantUnknown = 6 "refrigerant_unknown",
        /// The point lies outside what the machine model can follow.
        OutsideModel = 7 "outside_model",
        /// The record cannot be used.
        RecordUnused = 8 "record_unused",
        /// Two causes explain the readings about equally well; each is named by a warning of its own.
        TwoCausesAlike = 9 "two_causes_alike",
        /// The machine is said to be stopped.
        NotRunning = 10 "not_running",
        /// Two readings stand where the other one belongs; each is named by a warning of its own.
        ReadsLikeTheOther = 11 "reads_like_the_other",
        /// The readings would suit another refrigerant than the one named.
        ReadsLikeAnother = 12 "reads_like_another",
    }
}

/// Something suspicious about one field.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Warning {
    /// The section of the visit: `system`, `readings`, ...
    pub section: &'static str,
    /// The field in it.
    pub field: &'static str,
    /// What is suspicious.
    pub kind: WarningKind,
    /// The value that was read, in `unit`, where the field is a number.
    pub value: Option<f32>,
    /// The limit that it was held against, in `unit`, where there is one.
    pub limit: Option<f32>,
    /// The unit of both.
    pub unit: Unit,
}

/// The warnings of one visit.
pub type Warnings = heapless::Vec<Warning, 16>;

/// Adds a warning; the list holds one of every kind and field that can be meant.
pub(crate) fn warn(warnings: &mut Warnings, section: &'static str, field: &'static str, kind: WarningKind) {
    warn_beyond(warnings, section, field, kind, None);
}

/// Adds a warning about a limit.
pub(crate) fn warn_beyond(
    warnings: &mut Warnings,
    section: &'static str,
    field: &'static str,
    kind: WarningKind,
    limit: Option<f32>,
) {
    let _ = warnings.push(Warning { section, field, kind, value: None, limit, unit: Unit::None });
}

/// Writes beside every warning about a reading what was read.
pub(crate) fn quote(warnings: &mut Warnings, readings: &Readings) {
    for warning in warnings.iter_mut().filter(|warning| warning.section == "readings") {
        for (field, value) in Readings::FIELDS.iter().zip(readings.numbers()) {
            if value.is_some() && field.name == warning.field {
                (warning.value, warning.unit) = (value, field.kind.unit());
            }
        }
    }
}
