//! What goes to the diagnosis: the tests seen in the stream, and the averages of a machine that holds still.

use super::Monitor;
use super::fixed::number;
use super::state::State;
use super::steady::SteadyReadings;
use crate::readings::{PumpDownEnd, Readings};

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
