//! Whether the compressor is on: from its current, or from two pressures that move apart or together.

use super::fixed::share;
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
    seen: u8,
    apart: u8,
}

/// Samples before the slow pressures are trusted.
const SETTLED: u8 = 4;
/// Shares of 1/256 by which suction falls and discharge rises when a compressor starts.
const START: (i32, i32) = (256 - 8, 256 + 2);
/// Shares of 1/256 by which suction rises and discharge falls when it stops.
const STOP: (i32, i32) = (256 + 6, 256 - 2);
/// Share of 1/256 of suction within which discharge shows a machine that stands.
const EQUAL_RATIO: i32 = 300;
/// Warmth of the discharge line over the air that shows a machine that runs, and one that has stood, 1/256 K.
const HOT: i32 = 15 << 8;
const COLD: i32 = 3 << 8;

impl Pressures {
    pub(super) const fn new() -> Self {
        Self { low: 0, high: 0, seen: 0, apart: 0 }
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
    ) -> Power {
        if self.seen == 0 {
            (self.low, self.high) = (low, high);
        }
        let started = raw_low < share(self.low, START.0) && raw_high > share(self.high, START.1);
        let stopped = raw_low > share(self.low, STOP.0) && raw_high < share(self.high, STOP.1);
        let far = |value: i32, of: i32, by: i32| (of >> 8) * by < (value - of).abs();
        let strong = far(raw_low, self.low, 8) && far(raw_high, self.high, 4);
        let turned = match power {
            Power::Unknown => started || stopped,
            Power::Off => started,
            Power::On => stopped,
        };
        self.apart = if turned { self.apart + 1 } else { 0 };
        if self.apart == 0 {
            self.low += (low - self.low + 4) >> 3;
            self.high += (high - self.high + 4) >> 3;
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

/// Judges the compressor's supply from the middle of three currents, with a band in which it stays what it was.
///
/// `last` are the last three currents as measured, the oldest first: a meter that averages shows a supply that was cut
/// as one fallen and one empty reading, which the middle of three would tell one sample later.
pub(super) fn from_current(power: Power, current: i32, last: Option<[i32; 3]>, plate: &Plate) -> Power {
    let (on, off) = plate.on_above();
    if let Some([oldest, newer, newest]) = last
        && newest <= off
        && newer < oldest / 4
    {
        return Power::Off;
    }
    if current >= on {
        Power::On
    } else if current <= off {
        Power::Off
    } else {
        power
    }
}
