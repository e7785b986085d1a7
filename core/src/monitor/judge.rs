//! What a full block shows: the state of running, and what a stopped machine comes to rest at.

use super::Monitor;
use super::average::Averages;
use super::event::{EventKind, Events};
use super::fixed::number;
use super::power::Power;
use super::pump_down::PumpDown;
use super::running;
use super::sample::VOLTAGE;
use super::state::State;
use super::window::{self, LOW, Window};

/// Blocks in a row that must show current rising while pressures fall.
const RISES_BLOCKS: u8 = 4;

impl Monitor {
    /// Judges the block that was put away last.
    pub(super) fn judge(&mut self, time_ms: u64, events: &mut Events) {
        match self.power {
            Power::On => self.judge_running(time_ms, events),
            Power::Off if matches!(self.pump_down, PumpDown::None) => {
                let off_ms = self.since_known.then(|| self.elapsed());
                let standing = &mut self.found_standing;
                self.off_time.block(&self.window, &self.averages, off_ms, time_ms, standing, events);
            }
            _ => {}
        }
    }

    /// Judges the running state with every block after the first minute.
    fn judge_running(&mut self, time_ms: u64, events: &mut Events) {
        if self.starting || self.pump_down.is_pumping() {
            self.window = Window::new();
            self.averages = Averages::new();
            return;
        }
        let before = self.running;
        let trends = self.window.trends();
        if let Some(mut state) = running::judge(&trends, self.plate.regulator, before) {
            if self.hunting.hunts() {
                state = State::Unsteady;
            }
            self.running = state;
            self.unsettled = !self.plate.regulator && running::unsettled(&trends);
            let mean = |channel: usize, places| Some(number((*trends.get(channel)?)?.mean, places));
            match state {
                State::Steady if before != State::Steady => {
                    let values = [mean(LOW, 8), mean(window::HIGH, 8), mean(window::AMPS, 10)];
                    events.add(EventKind::Steady, time_ms, values);
                }
                State::PullingDown if before != State::PullingDown => {
                    let slope = trends[LOW].map(|low| number(low.slope, 8) * (1.0 / 16.0));
                    events.add(EventKind::PullingDown, time_ms, [mean(LOW, 8), slope, None]);
                }
                _ => {}
            }
        }
        match running::current_rises(&trends) {
            Some((amps, low)) => {
                self.rises = self.rises.saturating_add(1);
                if self.rises == RISES_BLOCKS {
                    let volts = self.averages.whole(VOLTAGE).map(|volts| number(volts, 8));
                    events.add(EventKind::CurrentRises, time_ms, [Some(amps), Some(low), volts]);
                }
            }
            None if self.rises < RISES_BLOCKS => self.rises = 0,
            None => {}
        }
    }
}
