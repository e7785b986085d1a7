//! Which causes are excluded and by what, and what would close the others.

use super::evidence::Factors;
use super::next_measurement::{CANDIDATES, measurement};
use super::posterior::Posterior;
use super::value::Information;
use crate::cause::Cause;

use super::outcome::CauseAndMeasurements;
use crate::measurement::Measurement;
use crate::symptom::{CHANNELS, Deviation, READING};
use heapless::Vec;

/// A cause less probable than this is ruled out.
pub(crate) const RULED_OUT_BELOW: f32 = 0.02;
/// Nats against a cause below which a reading is not named as what excludes it.
const WORTH_NAMING_NATS: f32 = 0.3;
/// Bits below which a measurement is not named as what would close a cause.
const WORTH_TAKING_BITS: f32 = 0.01;

/// Splits the causes into those ruled out, with the readings that did, and those still open; the leading one is open even
/// where something that is no listed cause is far more probable than all of them.
pub(crate) fn split(
    posterior: &Posterior,
    leading: Cause,
    deviation: &Deviation,
    factors: &Factors,
    information: &[Information; CANDIDATES],
    out: &mut Vec<CauseAndMeasurements, 10>,
    open: &mut Vec<CauseAndMeasurements, 10>,
) {
    for cause in Cause::ALL {
        let (list, measurements) = if posterior.probability(*cause) < RULED_OUT_BELOW && *cause != leading {
            (&mut *out, against(posterior, deviation, factors, *cause))
        } else {
            (&mut *open, closing(information, *cause))
        };
        let _ = list.push(CauseAndMeasurements { cause: *cause, measurements });
    }
}

/// Every reading's word on a cause.
pub(crate) fn words(
    posterior: &Posterior,
    deviation: &Deviation,
    factors: &Factors,
    cause: Cause,
) -> Vec<(Measurement, f32), { CHANNELS + Factors::COUNT }> {
    let mut words = Vec::new();
    for (place, channel) in deviation.channels().enumerate() {
        if let Some(name) = READING.get(channel) {
            let _ = words.push((*name, posterior.channel_word(place, cause)));
        }
    }
    for (kind, (name, given)) in Factors::MEASUREMENT.iter().zip(factors.given()).enumerate() {
        if given {
            let _ = words.push((*name, posterior.factor_word(kind, cause)));
        }
    }
    words
}

/// The readings that speak most against a cause.
fn against(
    posterior: &Posterior,
    deviation: &Deviation,
    factors: &Factors,
    cause: Cause,
) -> Vec<Measurement, 3> {
    let mut words = words(posterior, deviation, factors, cause);
    for (_, nats) in &mut words {
        *nats = -*nats;
    }
    words.retain(|(_, nats)| *nats > WORTH_NAMING_NATS);
    strongest(words)
}

/// The measurements that would tell most about a cause.
fn closing(information: &[Information; CANDIDATES], cause: Cause) -> Vec<Measurement, 3> {
    let mut words: Vec<(Measurement, f32), CANDIDATES> = Vec::new();
    for (candidate, bits) in information.iter().enumerate() {
        let bits = bits.each.get(cause.index()).copied().unwrap_or(0.0);
        if bits > WORTH_TAKING_BITS
            && let Some(name) = measurement(candidate)
        {
            let _ = words.push((name, bits));
        }
    }
    strongest(words)
}

fn strongest<const N: usize>(mut words: Vec<(Measurement, f32), N>) -> Vec<Measurement, 3> {
    crate::sort::sort_by(&mut words, |a, b| b.1.total_cmp(&a.1));
    // Pushed one by one: collecting into fixed memory could panic.
    let mut three = Vec::new();
    for (name, _) in words.iter().take(3) {
        let _ = three.push(*name);
    }
    three
}
