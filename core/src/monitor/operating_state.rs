//! Which state the machine is in: what a full block of the last two minutes shows of a running or a stopped one.

use super::Monitor;
use super::average::Averages;
use super::event::{EventKind, Events};
use super::fixed_point::number;
use super::power::Power;
use super::pump_down::PumpDown;
use super::sample::VOLTAGE;
use super::trend::{AMPS, HIGH, KEPT, LOW, Trend, Window, share_of};
use crate::field::choice;

choice! {
    /// What the machine does at the moment.
    ///
    /// The three running states are statements about the last two minutes (at least one, and none of the first minute
    /// after a start): steady when nothing measured drifts or scatters beyond its limit, pulling down when the suction
    /// pressure falls smoothly, unsteady otherwise.
    State {
        /// Not enough was seen yet, or a gap has just ended.
        Unknown = 0 "unknown",
        /// The compressor is off in the ordinary cycle.
        Off = 1 "off",
        /// The compressor was started less than one minute ago, whether or not it turns.
        Starting = 2 "starting",
        /// It runs and the suction pressure falls smoothly.
        PullingDown = 3 "pulling_down",
        /// It runs and holds still.
        Steady = 4 "steady",
        /// It runs and does neither: not settled yet, hunting, or taking up a load.
        Unsteady = 5 "unsteady",
        /// It pumps down against a closed valve.
        PumpingDown = 6 "pumping_down",
        /// It stands after a pump-down, and no pressure shows yet that the valve was opened.
        Holding = 7 "holding",
        /// It stands and its coil is being heated.
        Defrost = 8 "defrost",
        /// It stands because its overload opened, or a start failed.
        Stopped = 9 "stopped",
    }
}

/// Fall of suction pressure per minute, as a share, from which the machine pulls down; 1.5 % is about 0.4 K.
const FALLS: u32 = share_of(0.015);
/// Fall of suction pressure per minute, as a share, in which a machine in order may draw more than its plate says.
const FALLS_FAST: u32 = share_of(0.02);
/// Drift of suction pressure per minute within which it is steady.
const LOW_LEVEL: u32 = share_of(0.015);
/// Drift of discharge pressure per minute within which it is steady.
const HIGH_LEVEL: u32 = share_of(0.015);
/// Drift of current per minute within which it is steady.
const AMPS_LEVEL: u32 = share_of(0.020);
/// Drift of the line temperature within which it is steady, 1/16 of 1/256 K per minute: 1 K.
const LINE_LEVEL: u32 = 16 << 8;
/// Scatter of pressures about their lines within which the machine is steady.
const QUIET: u32 = share_of(0.015);
/// Scatter of suction within which a fall is smooth.
const SMOOTH: u32 = share_of(0.030);
/// Scatter of current about its line within which the machine is steady.
const AMPS_QUIET: u32 = share_of(0.03);
/// Scatter of the line temperature within which it is steady, 4/256 K: 1 K.
const LINE_QUIET: u32 = 256 / 4;
/// Fall of the air's temperature per minute from which a machine with a regulator pulls down, 1/16 of 1/256 K: 0.15 K.
const COLD_FALLS: u32 = 614;
/// Widens a limit while the machine is steady, so that noise at the limit does not toggle it: by 4 %.
fn held(limit: u32, holds: bool) -> u32 {
    if holds { limit + limit / 25 } else { limit }
}

/// Judges the running state, `None` while the window is too short.
///
/// With a suction pressure regulator the suction gauge shows the regulator: the air tells the pull-down.
fn running_state(trends: &[Option<Trend>; KEPT], regulator: bool, before: State) -> Option<State> {
    let [low, high, amps, line, cold] = *trends;
    let (was_steady, was_falling) = (before == State::Steady, before == State::PullingDown);
    let air_falls = |t: Trend| t.slope < -(held(COLD_FALLS, was_steady) as i32);
    let pulls_down = match (low, cold) {
        (_, Some(cold)) if regulator => {
            air_falls(cold) && low.is_none_or(|low| low.quiet_within(held(QUIET, was_falling)))
        }
        (Some(low), _) => {
            low.slope < -low.share(held(FALLS, was_steady)) && low.quiet_within(held(SMOOTH, was_falling))
        }
        (None, Some(cold)) => air_falls(cold),
        (None, None) => return line.map(|_| State::Unsteady),
    };
    if pulls_down {
        return Some(State::PullingDown);
    }
    let within = |t: Option<Trend>, level, quiet| {
        t.is_none_or(|t| t.level_within(held(level, was_steady)) && t.quiet_within(held(quiet, was_steady)))
    };
    let steady = within(low, LOW_LEVEL, QUIET)
        && within(high, HIGH_LEVEL, QUIET)
        && within(amps, AMPS_LEVEL, AMPS_QUIET)
        && line.is_none_or(|t| {
            t.slope.unsigned_abs() <= held(LINE_LEVEL, was_steady)
                && t.scatters_within(held(LINE_QUIET, was_steady))
        });
    Some(if steady { State::Steady } else { State::Unsteady })
}

/// Least rise of current per minute, as a share, that is told while pressures fall, and least fall of the pressures.
const AMPS_RISE: u32 = share_of(0.02);
const PRESSURES_FALL: u32 = share_of(0.002);

/// Tells current that rises while both pressures fall: per cent per minute of current and suction.
fn current_rises(trends: &[Option<Trend>; KEPT]) -> Option<(f32, f32)> {
    let [Some(low), Some(high), Some(amps), ..] = *trends else { return None };
    let falls = |t: Trend| t.slope < -t.share(PRESSURES_FALL) && t.is_sure();
    if amps.slope <= amps.share(AMPS_RISE) || !amps.is_sure() || !falls(low) || !falls(high) {
        return None;
    }
    let percent = |t: Trend| t.slope as f32 * (100.0 / 16.0) / t.mean.max(1) as f32;
    Some((percent(amps), percent(low)))
}

/// Tells suction that falls so fast that the load will be much smaller soon.
fn falls_fast(trends: &[Option<Trend>; KEPT]) -> bool {
    trends[LOW].is_some_and(|low| low.slope < -low.share(FALLS_FAST))
}

/// Blocks in a row that must show current rising while pressures fall.
const RISES_BLOCKS: u8 = 4;

impl Monitor {
    /// Judges the block that was put away last.
    pub(super) fn judge_block(&mut self, time_ms: u64, events: &mut Events) {
        match self.power {
            Power::On => self.judge_running(time_ms, events),
            Power::Off if matches!(self.pump_down, PumpDown::None) => {
                let off_ms = self.since_known.then(|| self.elapsed());
                let standing = &mut self.found_standing;
                self.standstill.block(&self.window, &self.averages, off_ms, time_ms, standing, events);
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
        if let Some(mut state) = running_state(&trends, self.plate.regulator, before) {
            if self.hunting.hunts() {
                state = State::Unsteady;
            }
            self.running = state;
            self.unsettled = !self.plate.regulator && falls_fast(&trends);
            let mean = |channel: usize, places| Some(number((*trends.get(channel)?)?.mean, places));
            match state {
                State::Steady if before != State::Steady => {
                    let values = [mean(LOW, 8), mean(HIGH, 8), mean(AMPS, 10)];
                    events.add(EventKind::Steady, time_ms, values);
                }
                State::PullingDown if before != State::PullingDown => {
                    let slope = trends[LOW].map(|low| number(low.slope, 8) * (1.0 / 16.0));
                    events.add(EventKind::PullingDown, time_ms, [mean(LOW, 8), slope, None]);
                }
                _ => {}
            }
        }
        match current_rises(&trends) {
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
