//! Whether the compressor is on: from its current, or from two pressures that move apart or together.

use super::fixed_point::share;
use super::settings::Plate;

/// What is known of the compressor's supply.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Power {
    /// Not seen yet.
    Unknown,
    /// It stands.
    Off,
    /// It is on, whether or not it turns.
    On,
}

/// Follows the pressures slowly, for streams without a current.
#[derive(Clone, Copy, Debug)]
pub(super) struct Pressures {
    low: i32,
    high: i32,
    /// Mean distance of the pressures from the slow ones.
    scatter: [i32; 2],
    seen: u8,
    apart: u8,
    alone: u8,
}

/// Samples before the slow pressures are trusted.
const SETTLED: u8 = 4;
/// Mean distances by which a pressure moves more than by its scatter: six standard deviations.
const SCATTERS: i32 = 7;
/// Least and most shares of 1/256 by which suction and discharge move when a compressor starts.
const START: [(i32, i32); 2] = [(3, 8), (2, 2)];
/// The same when it stops.
const STOP: [(i32, i32); 2] = [(3, 6), (2, 2)];
/// The same where one sample is enough.
const STRONG: [(i32, i32); 2] = [(3, 8), (2, 4)];
/// Share of 1/256 by which suction moves, and that by which discharge moves with it, where suction moves alone.
const ALONE: (i32, i32) = (4, 1);
/// The same as [`STRONG`] and [`STOP`] where the suction pressure swings already.
const SWINGS: [(i32, i32); 2] = [(12, 12), (4, 4)];
/// Share of 1/256 of suction within which discharge shows a machine that stands.
const EQUAL_RATIO: i32 = 300;
/// Warmth of the discharge line over the air that shows a machine that runs, and one that has stood, 1/256 K.
const HOT: i32 = 15 << 8;
const COLD: i32 = 3 << 8;

/// Part of the voltage that a start takes away at least: one fortieth, four times what a supply wanders in seconds.
const SAG: i32 = 40;

impl Pressures {
    pub(super) const fn new() -> Self {
        Self { low: 0, high: 0, scatter: [0; 2], seen: 0, apart: 0, alone: 0 }
    }

    /// Judges the compressor's supply from the pressures: suction and discharge move in opposite directions when it
    /// starts or stops and in the same direction for everything else (common practice).
    ///
    /// The values of the sample itself are compared with the slow pressures, not the middle of three, which comes one
    /// sample late: a spike in one of them does not move the other. `hot` is the discharge line over the air.
    pub(super) fn judge(
        &mut self,
        power: Power,
        (low, high): (i32, i32),
        (raw_low, raw_high): (i32, i32),
        hot: Option<i32>,
        swings: bool,
    ) -> Power {
        if self.seen == 0 {
            (self.low, self.high) = (low, high);
        }
        // Beyond what the gauges scatter; at least `least`, and `most` is enough, both in 1/256.
        let beyond = |value: i32, of: i32, scatter: i32, (least, most): (i32, i32)| {
            (value - of).abs() > (scatter * SCATTERS).max(share(of, least)).min(share(of, most))
        };
        let falls_apart = |by: [(i32, i32); 2]| {
            beyond(raw_low, self.low, self.scatter[0], by[0])
                && beyond(raw_high, self.high, self.scatter[1], by[1])
        };
        let started = raw_low < self.low && raw_high > self.high && falls_apart(START);
        let stopped =
            raw_low > self.low && raw_high < self.high && falls_apart(if swings { SWINGS } else { STOP });
        let strong = falls_apart(if swings { SWINGS } else { STRONG }) && self.alone < 2;
        // Where suction has moved for a while and discharge has not, the discharge of one sample may be a spike.
        let with_it = if raw_low < self.low { raw_high - self.high } else { self.high - raw_high };
        let alone =
            (raw_low - self.low).abs() > share(self.low, ALONE.0) && with_it < share(self.high, ALONE.1);
        self.alone = if alone { (self.alone + 1).min(2) } else { 0 };
        let turned = match power {
            Power::Unknown => started || stopped,
            Power::Off => started,
            Power::On => stopped,
        };
        self.apart = if turned { self.apart + 1 } else { 0 };
        if self.apart == 0 {
            for (scatter, (raw, slow)) in
                self.scatter.iter_mut().zip([(raw_low, self.low), (raw_high, self.high)])
            {
                let far = (raw - slow).abs().min(slow >> 4);
                *scatter += (far - *scatter + 8) >> 4;
            }
            self.low += (low - self.low + 1) >> 1;
            self.high += (high - self.high + 1) >> 1;
        }
        self.seen = (self.seen + 1).min(SETTLED);
        if self.seen < SETTLED {
            return power;
        }
        // Once is noise, twice is a switch; so is once where both moved by far more than gauges scatter.
        if self.apart >= 2 || (self.apart == 1 && strong) {
            self.apart = 0;
            (self.low, self.high) = (low, high);
            return if started { Power::On } else { Power::Off };
        }
        match power {
            Power::Unknown if high < share(low, EQUAL_RATIO) => Power::Off,
            Power::Unknown if hot.is_some_and(|hot| hot > HOT) => Power::On,
            Power::Unknown if hot.is_some_and(|hot| hot < COLD) => Power::Off,
            _ => power,
        }
    }
}

/// Judges the compressor's supply from the last three currents as measured, the oldest first.
///
/// Two in a row must show it, which one spike never does, with a band in which the supply stays what it was. A meter
/// that averages shows a supply that was cut as one fallen and one empty reading, which is enough as well; but while a
/// motor is `coming_up` its current falls as far by itself.
pub(super) fn from_current(power: Power, last: [i32; 3], coming_up: bool, plate: &Plate) -> Power {
    let (on, off) = plate.on_above();
    let [oldest, newer, newest] = last;
    let fallen = newer <= off || (newer < oldest / 4 && !coming_up);
    if newest <= off && fallen {
        Power::Off
    } else if newest.min(newer) >= on {
        Power::On
    } else {
        power
    }
}

/// Tells a start by its first sample: its current is that of a locked rotor, and it has pulled its supply down.
///
/// A spike moves one channel; a start moves these two at once (common practice: 1 to 5 %). A meter may see no more of
/// a start than that one sample, where the overload opens soon and samples were lost.
pub(super) fn starts_at_once(current: i32, volts: [i32; 3], plate: &Plate) -> bool {
    let [oldest, newer, newest] = volts;
    let before = oldest.min(newer);
    let (least, most) = match plate.locked_at(Some(newest)) {
        locked if locked > 0 => (locked / 2, locked + locked / 2),
        _ if plate.rated > 0 => (plate.rated * 3, plate.rated.saturating_mul(10)),
        _ => return false,
    };
    current >= least && current <= most && newest < before - before / SAG
}
