//! Readings that stand where another one belongs.
//!
//! No law forbids a freezer at 28 degC whose condenser stands at -18 degC, and an airflow fault explains such a visit.
//! Two fields filled in the wrong way round explain it better, and two clamps on each other's pipe likewise.

use super::hypothesis::{Hypothesis, Step, Unlisted};
use crate::machine::Nominal;
use crate::symptom::{CHANNELS, Conditions, EVAPORATOR_OUTLET, Measured, SUCTION_LINE, Vector};
use crate::warning::{WarningKind, Warnings};

/// Prior probability that two readings stand in each other's place (judged).
const EXCHANGED: f32 = 0.005;

/// Calls `each` with a healthy machine of which two readings are exchanged, for each two that people mix up.
pub(crate) fn each(
    nominal: &Nominal,
    conditions: &Conditions,
    measured: &Measured,
    each: &mut dyn FnMut(&Hypothesis, &[Step<'_>]),
) {
    let ln_prior = libm::logf(EXCHANGED);
    let [space, ambient] = conditions;
    let given = |moves: &Vector| moves.iter().any(|k| *k != 0.0);
    if given(space) && given(ambient) {
        let apart_k = nominal.ambient_k.mean - nominal.space_k.mean;
        let mut shift = [0.0; CHANNELS];
        for ((shift, space), ambient) in shift.iter_mut().zip(space).zip(ambient) {
            *shift = apart_k * (space - ambient);
        }
        each(&Hypothesis::unlisted(Unlisted::SpaceAndAmbient, shift, ln_prior), &[]);
    }
    if measured.given[EVAPORATOR_OUTLET] && measured.given[SUCTION_LINE] {
        let apart_k = measured.value[SUCTION_LINE] - measured.value[EVAPORATOR_OUTLET];
        let mut shift = [0.0; CHANNELS];
        shift[SUCTION_LINE] = apart_k;
        shift[EVAPORATOR_OUTLET] = -apart_k;
        each(&Hypothesis::unlisted(Unlisted::OutletAndSuctionLine, shift, ln_prior), &[]);
    }
}

/// Warns of both readings.
pub(crate) fn warn(fields: [&'static str; 2], warnings: &mut Warnings) {
    for field in fields {
        crate::warning::warn(warnings, "readings", field, WarningKind::ReadsLikeTheOther);
    }
}
