//! Notices pressures that read like gauge pressures: with one atmosphere added, the visit makes far more sense.

use super::Today;
use super::cause::Cause;
use super::evidence::Factors;
use super::posterior::{Judge, Sum, singles};
use super::signature::Ladder;
use super::symptom::CHANNELS;
use crate::expectation::Expectation;
use crate::readings::Readings;
use crate::report::{Warning, WarningKind};
use heapless::Vec;

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

/// Warns of every pressure where adding one atmosphere to all of them explains the visit far better.
pub(crate) fn notice(
    today: &Today<'_>,
    healthy: &Expectation,
    ladders: &[Ladder; Cause::COUNT - 1],
    factors: &Factors,
    warnings: &mut Vec<Warning, 16>,
) {
    let mut added = today.readings;
    let mut any = false;
    for (_, pressure) in pressures(&mut added) {
        if let Some(kpa) = pressure {
            *kpa += ATMOSPHERE_KPA;
            any = true;
        }
    }
    if !any {
        return;
    }
    let sense = |readings: &Readings| {
        let measured = today.measured(readings);
        let judge = Judge::new(&healthy.mean, &healthy.covariance, &measured, &[true; CHANNELS]);
        let mut sum = Sum::new();
        singles(ladders, |hypothesis| {
            if let Some(likelihood) = judge.likelihood(&hypothesis.shift) {
                let others: f32 = factors.ln_each(hypothesis).iter().sum();
                sum.add(hypothesis.ln_prior + likelihood.ln_clean + others);
            }
        });
        (sum.ln(), judge.channels())
    };
    let (as_read, channels) = sense(&today.readings);
    let (as_gauge, other_channels) = sense(&added);
    // Where the sum leaves the table nothing can be compared.
    if channels != other_channels || as_gauge - as_read < FAR_BETTER_NATS {
        return;
    }
    for (field, pressure) in pressures(&mut added) {
        if pressure.is_some() {
            let _ = warnings.push(Warning { section: "readings", field, kind: WarningKind::ReadsLikeGauge });
        }
    }
}
