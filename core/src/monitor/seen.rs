//! What one sample shows, beside the samples before it.

use super::sample::{CHANNELS, DISCHARGE, LIQUID, SUCTION};

/// What one sample shows.
#[derive(Debug)]
pub(super) struct Seen {
    /// Its values.
    pub(super) raw: [Option<i32>; CHANNELS],
    /// The middle of the last three values.
    pub(super) middle: [Option<i32>; CHANNELS],
    /// The last three currents, the oldest first.
    pub(super) amps: Option<[i32; 3]>,
    /// The last three voltages.
    pub(super) volts: Option<[i32; 3]>,
    /// How far the suction pressure is from the one before.
    pub(super) step: Option<i32>,
    /// The time of the sample before, ms.
    pub(super) before_ms: u64,
}

impl Seen {
    pub(super) const fn new(before_ms: u64) -> Self {
        Self {
            raw: [None; CHANNELS],
            middle: [None; CHANNELS],
            amps: None,
            volts: None,
            step: None,
            before_ms,
        }
    }

    /// The suction pressure, the middle of three.
    pub(super) fn low(&self) -> Option<i32> {
        self.middle[SUCTION]
    }
    /// The discharge pressure, or that of the liquid, the middle of three.
    pub(super) fn high(&self) -> Option<i32> {
        self.middle[DISCHARGE].or(self.middle[LIQUID])
    }
    /// The suction pressure of the sample itself.
    pub(super) fn raw_low(&self) -> Option<i32> {
        self.raw[SUCTION]
    }
    /// The discharge pressure of the sample itself, or that of the liquid.
    pub(super) fn raw_high(&self) -> Option<i32> {
        self.raw[DISCHARGE].or(self.raw[LIQUID])
    }
}
