//! Notices pressures that read like gauge pressures: with one atmosphere added, the visit makes far more sense.

use super::evidence::Factors;
use super::hypothesis::singles;
use super::likelihood::ln_clean;
use super::signature::Ladder;
use super::tally::Sum;
use crate::cause::Cause;
use crate::expectation::{Expectation, Today};
use crate::readings::Readings;
use crate::symptom::{
    CHANNELS, DISCHARGE_PRESSURE, Deviation, EVAPORATOR_PRESSURE, LIQUID_PRESSURE, Measured, SUCTION_PRESSURE,
};
use crate::triangular::Factor;
use crate::warning::{WarningKind, Warnings};

/// One standard atmosphere, kPa.
const ATMOSPHERE_KPA: f32 = 101.325;
/// Nats by which the visit must make more sense.
const FAR_BETTER_NATS: f32 = 3.0;

/// The pressures of a visit.
fn pressures(readings: &mut Readings) -> [(&'static str, &mut Option<f32>); 4] {
    [
        ("suction_pressure_kpa", &mut readings.suction_pressure_kpa),
        ("evaporator_pressure_kpa", &mut readings.evaporator_pressure_kpa),
        ("discharge_pressure_kpa", &mut readings.discharge_pressure_kpa),
        ("liquid_pressure_kpa", &mut readings.liquid_pressure_kpa),
    ]
}

/// Warns of every pressure where adding one atmosphere to all of them explains the visit far better; tells whether so.
///
/// Only where some pressure reads well below what a healthy machine shows; the deviation and the factor are scratch.
pub(crate) fn notice(
    today: &Today<'_>,
    work: (&Expectation, &mut Deviation, &mut Factor),
    ladders: &[Ladder; Cause::COUNT - 1],
    factors: &Factors,
    warnings: &mut Warnings,
) -> bool {
    let (healthy, deviation, factor) = work;
    let as_measured = today.measured(&today.readings);
    let low = [SUCTION_PRESSURE, EVAPORATOR_PRESSURE, DISCHARGE_PRESSURE, LIQUID_PRESSURE].iter().any(|c| {
        let (c, spread) = (*c % CHANNELS, healthy.covariance[*c % CHANNELS][*c % CHANNELS]);
        as_measured.given[c] && as_measured.value[c] < healthy.mean[c] - 1.5 * libm::sqrtf(spread.max(0.1))
    });
    if !low {
        return false;
    }
    let mut added = today.readings;
    for (_, pressure) in pressures(&mut added) {
        if let Some(kpa) = pressure {
            *kpa += ATMOSPHERE_KPA;
        }
    }
    let mut sense = |measured: &Measured| {
        deviation.set(&healthy.mean, &healthy.covariance, measured, None);
        let mut sum = Sum::new();
        singles(ladders, &mut |hypothesis, steps| {
            if let Some(ln) = ln_clean(deviation, factor, hypothesis, steps) {
                let others: f32 = factors.ln_each(hypothesis).iter().sum();
                sum.add(hypothesis.ln_prior + ln + others);
            }
        });
        (sum.ln(), deviation.size())
    };
    let (as_read, channels) = sense(&as_measured);
    let (as_gauge, other_channels) = sense(&today.measured(&added));
    // Where the sum leaves the table nothing can be compared.
    if channels != other_channels || as_gauge - as_read < FAR_BETTER_NATS {
        return false;
    }
    for (field, pressure) in pressures(&mut added) {
        if pressure.is_some() {
            crate::warning::warn(warnings, "readings", field, WarningKind::ReadsLikeGauge);
        }
    }
    true
}
