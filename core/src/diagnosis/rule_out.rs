//! Which causes are excluded and by what, and what would close the others.

use super::cause::Cause;
use super::evidence::Factors;
use super::next_measurement::{CANDIDATES, Information, measurement};
use super::posterior::Posterior;
use super::symptom::{CHANNELS, READING};
use crate::measurement::Measurement;
use crate::report::CauseAndMeasurements;
use heapless::Vec;

/// A cause less probable than this is ruled out.
pub(crate) const RULED_OUT_BELOW: f32 = 0.02;
/// Nats against a cause below which a reading is not named as what excludes it.
const WORTH_NAMING_NATS: f32 = 0.3;
/// Bits below which a measurement is not named as what would close a cause.
const WORTH_TAKING_BITS: f32 = 0.01;

/// Splits the causes into those ruled out, with the readings that did, and those still open.
pub(crate) fn split(
    posterior: &Posterior,
    information: &[Information; CANDIDATES],
) -> (Vec<CauseAndMeasurements, 10>, Vec<CauseAndMeasurements, 10>) {
    let (mut out, mut open) = (Vec::new(), Vec::new());
    for cause in Cause::ALL {
        let probability = posterior.probability.get(cause.index()).copied().unwrap_or(0.0);
        let (list, measurements) = if probability < RULED_OUT_BELOW {
            (&mut out, against(posterior, *cause))
        } else {
            (&mut open, closing(information, *cause))
        };
        // The leading cause is open too, but a certain one has nothing left to close it.
        let _ = list.push(CauseAndMeasurements { cause: *cause, measurements });
    }
    (out, open)
}

/// The readings that speak most against a cause.
fn against(posterior: &Posterior, cause: Cause) -> Vec<Measurement, 3> {
    let mut words: Vec<(Measurement, f32), { CHANNELS + Factors::COUNT }> = Vec::new();
    let channels = READING.iter().zip(&posterior.without_channel);
    let factors = Factors::MEASUREMENT.iter().zip(&posterior.without_factor);
    for (name, word) in channels.chain(factors) {
        let nats = -word.get(cause.index()).copied().unwrap_or(0.0);
        if nats > WORTH_NAMING_NATS {
            let _ = words.push((*name, nats));
        }
    }
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
    words.sort_unstable_by(|a, b| b.1.total_cmp(&a.1));
    words.iter().take(3).map(|(name, _)| *name).collect()
}
