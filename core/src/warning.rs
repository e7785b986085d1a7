//! What is suspicious about a visit that is answered all the same.

use crate::field::choice;

choice! {
    /// What is suspicious about an input that is answered all the same.
    WarningKind {
        /// The pressure fits far better after adding one atmosphere.
        ReadsLikeGauge = 1 "reads like a gauge pressure",
        /// The reading contradicts the others.
        ContradictsOthers = 2 "contradicts the other readings: check it",
        // 3 and 4 are retired.
        /// The machine has run too short a time to have settled.
        NotSettled = 5 "too short after the start for a settled reading: wait before acting on this",
        /// The refrigerant is not known, so pressures say nothing.
        RefrigerantUnknown = 6 "not given: pressures are not interpreted",
        /// The point lies outside what the machine model can follow.
        OutsideModel = 7 "outside the machine model at today's air temperatures, so nothing is weighed: check both",
        /// The record cannot be used.
        RecordUnused = 8 "says too little about this machine to be used as its record",
        /// Two causes explain the readings about equally well; each is named by a warning of its own.
        TwoCausesAlike = 9 "one of two causes that explain the readings about equally well",
        /// The machine is said to be stopped.
        NotRunning = 10 "the machine is stopped: running readings are not judged",
        /// Two readings stand where the other one belongs; each is named by a warning of its own.
        ReadsLikeTheOther = 11 "reads as if it and another reading were swapped: check both",
        /// The readings would suit another refrigerant than the one named.
        ReadsLikeAnother = 12 "the readings would suit another refrigerant: check the plate and what was charged",
    }
}

/// Something suspicious about one field.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Warning {
    /// The section of the visit: `system`, `readings`, ...
    pub section: &'static str,
    /// The field in it.
    pub field: &'static str,
    /// What is suspicious.
    pub kind: WarningKind,
}

/// The warnings of one visit.
pub type Warnings = heapless::Vec<Warning, 16>;

/// Adds a warning; the list holds one of every kind and field that can be meant.
pub(crate) fn warn(warnings: &mut Warnings, section: &'static str, field: &'static str, kind: WarningKind) {
    let _ = warnings.push(Warning { section, field, kind });
}
