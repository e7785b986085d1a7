//! The averaged readings that go to the diagnosis, with what averaging leaves of their uncertainty.

use super::sample::{CHANNELS, SPACE, Sample};
use crate::field::Kind;
use crate::readings::{Readings, Uncertainty};

/// Readings averaged while the machine is steady or pulls down smoothly.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct SteadyReadings {
    /// The averages under the names of the readings, with the results of the tests seen in the stream.
    ///
    /// The tests are the pump-down, the standing pressure and the highest current of the start.
    pub readings: Readings,
    /// Standard uncertainty (k = 1) of each average from noise alone, in the order of [`Sample::FIELDS`].
    ///
    /// In the unit of the channel; correlated noise is counted as such. The instrument's own error comes on top.
    pub noise: [Option<f32>; CHANNELS],
}

/// Usual standard uncertainties where the visit gives none: pressure 1 % and 2 kPa, pipes 0.7 K, air 0.5 K,
/// current 1.5 %.
const USUAL: [f32; 4] = [1.0, 0.7, 0.5, 1.5];
/// Part of an instrument's standard uncertainty that stays the same from reading to reading, so that no average takes
/// it away: its calibration, its clamp. The rest is scatter, which the monitor has measured (common practice).
const BIAS_PART: f32 = 0.9;

impl SteadyReadings {
    /// Gives the uncertainty of the averages: the part of the instruments' that stays, and the noise that is left.
    ///
    /// `of_one` is that of one reading, as a visit states it. The largest of its kind stands for each kind.
    pub fn uncertainty(&self, of_one: &Uncertainty) -> Uncertainty {
        let given = [
            of_one.pressure_percent,
            of_one.line_temperature_k,
            of_one.air_temperature_k,
            of_one.current_percent,
        ];
        let mut worst = [0.0f32; 4];
        let numbers = self.readings.numbers();
        let each = self.noise.iter().zip(numbers).zip(Sample::FIELDS).enumerate();
        for (channel, ((noise, number), field)) in each {
            let (Some(noise), Some(number)) = (*noise, number) else { continue };
            let (kind, noise) = match field.kind {
                Kind::Pressure => {
                    let of = of_one.pressure_span_kpa.unwrap_or(number);
                    (0, 100.0 * noise / of.max(1.0))
                }
                Kind::Temperature if channel < SPACE => (1, noise),
                Kind::Temperature => (2, noise),
                Kind::Current => (3, 100.0 * noise / number.max(0.1)),
                _ => continue,
            };
            if let Some(worst) = worst.get_mut(kind) {
                *worst = worst.max(noise);
            }
        }
        let mut result = *of_one;
        let into = [
            &mut result.pressure_percent,
            &mut result.line_temperature_k,
            &mut result.air_temperature_k,
            &mut result.current_percent,
        ];
        for (((into, given), usual), noise) in into.into_iter().zip(given).zip(USUAL).zip(worst) {
            let bias = BIAS_PART * given.unwrap_or(usual);
            *into = Some(libm::sqrtf(bias * bias + noise * noise));
        }
        result
    }
}
