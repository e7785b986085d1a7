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
const START: (i32, i32) = (256 - 10, 256 + 2);
/// Shares of 1/256 by which suction rises and discharge falls when it stops.
const STOP: (i32, i32) = (256 + 8, 256 - 2);
/// Share of 1/256 of suction that discharge exceeds in a machine that runs when the stream begins.
const RUNNING_RATIO: i32 = 2 * 256;

impl Pressures {
    pub(super) const fn new() -> Self {
        Self { low: 0, high: 0, seen: 0, apart: 0 }
    }

    /// Judges the compressor's supply from the pressures: suction and discharge move in opposite directions when it
    /// starts or stops and in the same direction for everything else (common practice).
    pub(super) fn judge(&mut self, power: Power, low: i32, high: i32) -> Power {
        if self.seen == 0 {
            (self.low, self.high) = (low, high);
        }
        let beyond = |(low_share, high_share): (i32, i32), starts: bool| {
            let (low_limit, high_limit) = (share(self.low, low_share), share(self.high, high_share));
            if starts { low < low_limit && high > high_limit } else { low > low_limit && high < high_limit }
        };
        let turned = match power {
            Power::Unknown => false,
            Power::Off => beyond(START, true),
            Power::On => beyond(STOP, false),
        };
        self.low += (low - self.low + 4) >> 3;
        self.high += (high - self.high + 4) >> 3;
        self.seen = (self.seen + 1).min(SETTLED);
        self.apart = if turned { self.apart + 1 } else { 0 };
        match power {
            _ if self.seen < SETTLED => power,
            Power::Unknown if high > share(low, RUNNING_RATIO) => Power::On,
            Power::Unknown => Power::Off,
            // Once is noise; the middle of three has already taken single spikes away.
            _ if self.apart < 2 => power,
            Power::Off => Power::On,
            Power::On => Power::Off,
        }
    }
}

/// Judges the compressor's supply from its current, with a band in which it stays what it was.
pub(super) fn from_current(power: Power, current: i32, plate: &Plate) -> Power {
    let (on, off) = plate.on_above();
    if current >= on {
        Power::On
    } else if current <= off {
        Power::Off
    } else {
        power
    }
}
