//! Pressures that were read from a gauge that shows zero in open air, and told as absolute ones.
//!
//! One atmosphere is missing from each, so that the low side reads far too cold and the high side a little. A machine
//! that is starved reads low as well: which of the two it is, the other readings tell, and both are weighed.

use super::hypothesis::{Hypothesis, Step, Unlisted};
use crate::expectation::Today;
use crate::quantity::ATMOSPHERE_KPA;
use crate::readings::Readings;
use crate::symptom::{
    CHANNELS, DISCHARGE_PRESSURE, EVAPORATOR_PRESSURE, LIQUID_PRESSURE, Measured, SUCTION_PRESSURE,
};
use crate::warning::{WarningKind, Warnings};

/// Prior probability that gauge pressures are told as absolute ones (judged: every front asks which they are).
const GAUGE: f32 = 0.01;

/// The pressures of a visit.
fn pressures(readings: &mut Readings) -> [(&'static str, &mut Option<f32>); 4] {
    [
        ("suction_pressure_kpa", &mut readings.suction_pressure_kpa),
        ("evaporator_pressure_kpa", &mut readings.evaporator_pressure_kpa),
        ("discharge_pressure_kpa", &mut readings.discharge_pressure_kpa),
        ("liquid_pressure_kpa", &mut readings.liquid_pressure_kpa),
    ]
}

/// Calls `each` with a machine, healthy or with something wrong with it, whose pressures lack one atmosphere.
///
/// Nothing where the sum leaves the table.
pub(crate) fn each(
    today: &Today<'_>,
    measured: &Measured,
    something: &[Step<'_>],
    each: &mut dyn FnMut(&Hypothesis, &[Step<'_>]),
) {
    let mut added = today.readings;
    for (_, pressure) in pressures(&mut added) {
        if let Some(kpa) = pressure {
            *kpa += ATMOSPHERE_KPA;
        }
    }
    let whole = today.measured(&added);
    let mut shift = [0.0; CHANNELS];
    let mut any = false;
    for channel in [SUCTION_PRESSURE, EVAPORATOR_PRESSURE, DISCHARGE_PRESSURE, LIQUID_PRESSURE] {
        if let (Some(slot), Some(true), Some(short), Some(full)) = (
            shift.get_mut(channel),
            measured.given.get(channel),
            measured.value.get(channel),
            whole.value.get(channel),
        ) {
            if !whole.given.get(channel).copied().unwrap_or(false) {
                return;
            }
            *slot = short - full;
            any = true;
        }
    }
    if any {
        let hypothesis = Hypothesis::unlisted(Unlisted::Gauge, shift, libm::logf(0.5 * GAUGE));
        each(&hypothesis, &[]);
        each(&hypothesis, something);
    }
}

/// Warns of every pressure that was read.
pub(crate) fn warn(readings: &Readings, warnings: &mut Warnings) {
    let mut readings = *readings;
    for (field, pressure) in pressures(&mut readings) {
        if pressure.is_some() {
            crate::warning::warn(warnings, "readings", field, WarningKind::ReadsLikeGauge);
        }
    }
}
