//! Readings that stand where another one belongs.
//!
//! No law forbids a freezer at 28 degC whose condenser stands at -18 degC, and an airflow fault explains such a visit.
//! Two fields filled in the wrong way round explain it better, and two clamps on each other's pipe likewise.

use super::hypothesis::{Hypothesis, Step, Unlisted};
use crate::machine::Nominal;
use crate::readings::Readings;
use crate::report::{Warning, WarningKind};
use crate::symptom::{CHANNELS, Conditions, EVAPORATOR_OUTLET, Measured, SUCTION_LINE, Vector};
use heapless::Vec;

/// Kelvin by which a machine's ambient must be designed above its space for the two to be told apart.
const APART_K: f32 = 15.0;
/// Kelvin about the design space temperature in which the ambient reading looks like that of the space.
const LIKE_SPACE_K: f32 = 6.0;
/// Kelvin about the design ambient temperature in which the space reading looks like that of the ambient.
const LIKE_AMBIENT_K: f32 = 15.0;
/// Prior probability that two readings stand in each other's place (judged).
const EXCHANGED: f32 = 0.005;

/// Whether space and ambient each look like the other by the design alone: so far off, nothing expected of the machine
/// can be relied on.
pub(crate) fn by_design(nominal: &Nominal, readings: &Readings) -> bool {
    readings.space_c.is_some()
        && readings.ambient_c.is_some()
        && nominal.design_ambient_k - nominal.design_space_k > APART_K
        && (nominal.ambient_k.mean - nominal.design_space_k).abs() < LIKE_SPACE_K
        && (nominal.space_k.mean - nominal.design_ambient_k).abs() < LIKE_AMBIENT_K
}

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
pub(crate) fn warn(fields: [&'static str; 2], warnings: &mut Vec<Warning, 16>) {
    for field in fields {
        let kind = WarningKind::ReadsLikeTheOther;
        let _ = warnings.push(Warning { section: "readings", field, kind });
    }
}
