//! Which of the three running states the last two minutes show.

use super::state::State;
use super::window::{AMPS, COLD, HIGH, LINE, LOW, Trend, Window};

/// Fall of suction pressure per minute, as a share, from which the machine pulls down; 1.5 % is about 0.4 K.
const FALLS: f32 = 0.015;
/// Fall of suction pressure per minute, as a share, in which a machine in order may draw more than its plate says.
const FALLS_FAST: f32 = 0.02;
/// Drift of suction pressure per minute within which it is steady.
const LOW_LEVEL: f32 = 0.015;
/// Drift of discharge pressure per minute within which it is steady.
const HIGH_LEVEL: f32 = 0.015;
/// Drift of current per minute within which it is steady.
const AMPS_LEVEL: f32 = 0.020;
/// Drift of the line temperature within which it is steady, 1/256 K per minute.
const LINE_LEVEL: f32 = 256.0;
/// Scatter of pressures about their lines within which the machine is steady.
const QUIET: f32 = 0.015;
/// Scatter of suction within which a fall is smooth.
const SMOOTH: f32 = 0.030;
/// Scatter of current about its line within which the machine is steady.
const AMPS_QUIET: f32 = 0.03;
/// Scatter of the line temperature within which it is steady, 1/256 K.
const LINE_QUIET: f32 = 256.0;
/// Fall of the air's temperature per minute from which a machine with a regulator pulls down, 1/256 K.
const COLD_FALLS: f32 = 0.15 * 256.0;
/// Factor by which the limits widen while the machine is steady, so that noise at a limit does not toggle it.
const HOLDS: f32 = 1.04;

/// Judges the running state, `None` while the window is too short.
///
/// With a suction pressure regulator the suction gauge shows the regulator: the air tells the pull-down.
pub(super) fn judge(window: &Window, regulator: bool, before: State) -> Option<State> {
    let (low, line, cold) = (window.trend(LOW), window.trend(LINE), window.trend(COLD));
    let falling = if before == State::Steady { HOLDS } else { 1.0 };
    let smooth = if before == State::PullingDown { HOLDS } else { 1.0 };
    let air_falls = |t: Trend| t.slope < -COLD_FALLS * falling;
    let pulls_down = match (low, cold) {
        (_, Some(cold)) if regulator => {
            air_falls(cold) && low.is_none_or(|low| low.quiet_within(QUIET * smooth))
        }
        (Some(low), _) => low.slope < -FALLS * falling * low.mean && low.quiet_within(SMOOTH * smooth),
        (None, Some(cold)) => air_falls(cold),
        (None, None) => return line.map(|_| State::Unsteady),
    };
    if pulls_down {
        return Some(State::PullingDown);
    }
    let k = if before == State::Steady { HOLDS } else { 1.0 };
    let pressure =
        |t: Option<Trend>, level| t.is_none_or(|t| t.level_within(level * k) && t.quiet_within(QUIET * k));
    let amps =
        window.trend(AMPS).is_none_or(|t| t.level_within(AMPS_LEVEL * k) && t.quiet_within(AMPS_QUIET * k));
    let line = line.is_none_or(|t| {
        let quiet = LINE_QUIET * k;
        t.slope.abs() <= LINE_LEVEL * k && t.variance <= quiet * quiet
    });
    let steady = pressure(low, LOW_LEVEL) && pressure(window.trend(HIGH), HIGH_LEVEL) && amps && line;
    Some(if steady { State::Steady } else { State::Unsteady })
}

/// Tells current that rises while both pressures fall: per cent per minute of current and suction.
///
/// Each slope must exceed three times its own standard error as well as a least one.
pub(super) fn current_rises(window: &Window) -> Option<(f32, f32)> {
    let (low, high, amps) = (window.trend(LOW)?, window.trend(HIGH)?, window.trend(AMPS)?);
    let sure = |t: Trend, least: f32| {
        // The standard error of the slope of ten points is s / sqrt(82.5) a block, five blocks a minute.
        let limit = least * t.mean;
        t.slope.abs() > limit && t.slope * t.slope > 9.0 * 25.0 / 82.5 * t.variance
    };
    let told = amps.slope > 0.0
        && low.slope < 0.0
        && high.slope < 0.0
        && sure(amps, 0.02)
        && sure(low, 0.002)
        && sure(high, 0.002);
    told.then(|| (100.0 * amps.slope / amps.mean.max(1.0), 100.0 * low.slope / low.mean.max(1.0)))
}

/// Tells suction that falls so fast that the load will be much smaller soon.
pub(super) fn unsettled(window: &Window) -> bool {
    window.trend(LOW).is_some_and(|low| low.slope < -FALLS_FAST * low.mean)
}
