//! Which of the three running states the last two minutes show.

use super::state::State;
use super::window::{KEPT, LOW, Trend, share_of};

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
pub(super) fn judge(trends: &[Option<Trend>; KEPT], regulator: bool, before: State) -> Option<State> {
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
pub(super) fn current_rises(trends: &[Option<Trend>; KEPT]) -> Option<(f32, f32)> {
    let [Some(low), Some(high), Some(amps), ..] = *trends else { return None };
    let falls = |t: Trend| t.slope < -t.share(PRESSURES_FALL) && t.is_sure();
    if amps.slope <= amps.share(AMPS_RISE) || !amps.is_sure() || !falls(low) || !falls(high) {
        return None;
    }
    let percent = |t: Trend| t.slope as f32 * (100.0 / 16.0) / t.mean.max(1) as f32;
    Some((percent(amps), percent(low)))
}

/// Tells suction that falls so fast that the load will be much smaller soon.
pub(super) fn unsettled(trends: &[Option<Trend>; KEPT]) -> bool {
    trends[LOW].is_some_and(|low| low.slope < -low.share(FALLS_FAST))
}
