//! What goes to the diagnosis: the tests that stood in the stream, and the averages of a machine that holds still.

use super::Monitor;
use super::fixed_point::number;
use super::operating_state::State;
use super::sample::{CHANNELS, SPACE, Sample};
use crate::field::Kind;
use crate::readings::{PumpDownEnd, Readings, Uncertainty};

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

impl Monitor {
    /// Gives what was found by tests in the stream: pump-down, standing pressure, highest current of the start.
    pub fn found(&self) -> Readings {
        let pump_down = &self.found_pump_down;
        let standing = &self.found_standing;
        let mut found = Readings::default();
        if pump_down.lowest_kpa > 0.0 {
            found.pump_down_kpa = Some(pump_down.lowest_kpa);
            found.pump_down_rise_kpa_per_min = pump_down.rise;
            found.pump_down_valve = self.plate.valve;
            // Stopped while the pressure still fell, by whomever: an upper bound.
            let by = if pump_down.at_limit { PumpDownEnd::Limit } else { PumpDownEnd::Technician };
            found.pump_down_ended_by = Some(by);
        }
        if standing.kpa > 0.0 {
            found.standing_pressure_kpa = Some(standing.kpa);
            found.standing_temperature_c = standing.celsius;
        }
        if self.found_start > 0 {
            found.start_current_a = Some(number(self.found_start, 10));
        }
        found
    }

    /// Gives the averaged readings while the machine is steady or pulls down smoothly, with those of [`Self::found`].
    ///
    /// `None` in every other state and until one minute was averaged.
    pub fn readings(&self) -> Option<SteadyReadings> {
        if !matches!(self.state(), State::Steady | State::PullingDown) {
            return None;
        }
        let mut result = SteadyReadings { readings: self.found(), ..SteadyReadings::default() };
        let mut any = false;
        for (channel, noise) in result.noise.iter_mut().enumerate() {
            let Some((mean, u)) = self.averages.mean(channel) else { continue };
            any = true;
            *noise = Some(u);
            if let Some(reading) = result.readings.number_mut(channel) {
                *reading = Some(mean);
            }
        }
        if self.since_known {
            result.readings.minutes_running = Some(self.elapsed() as f32 * (1.0 / 60_000.0));
        }
        result.readings.running = Some(true);
        any.then_some(result)
    }
}
