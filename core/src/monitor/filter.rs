//! The middle of the last three values of every channel, which one spike never is.

use super::fixed_point::median;
use super::sample::{CHANNELS, CURRENT, DISCHARGE, LIQUID, SUCTION, VOLTAGE};

/// The last two values of every channel.
#[derive(Clone, Copy, Debug)]
pub(super) struct Filter {
    older: [i32; CHANNELS],
    newer: [i32; CHANNELS],
    held: [u8; CHANNELS],
}

impl Filter {
    pub(super) const fn new() -> Self {
        Self { older: [0; CHANNELS], newer: [0; CHANNELS], held: [0; CHANNELS] }
    }

    /// Gives the last three values of a channel with the newest, the oldest first, `None` until there are three.
    fn last_three(&self, channel: usize, newest: Option<i32>) -> Option<[i32; 3]> {
        (*self.held.get(channel)? >= 2).then_some([
            *self.older.get(channel)?,
            *self.newer.get(channel)?,
            newest?,
        ])
    }

    /// Gives how far a channel is from its value before, `None` until there is one.
    fn step(&self, channel: usize, newest: Option<i32>) -> Option<i32> {
        (*self.held.get(channel)? >= 1).then_some((newest? - *self.newer.get(channel)?).abs())
    }

    /// Takes the values of a sample and adds what they are beside the ones before: nothing until a channel was measured
    /// often enough.
    pub(super) fn push(&mut self, seen: &mut Filtered) {
        seen.amps = self.last_three(CURRENT, seen.raw[CURRENT]);
        seen.volts = self.last_three(VOLTAGE, seen.raw[VOLTAGE]);
        seen.step = self.step(SUCTION, seen.raw[SUCTION]);
        let kept = self.older.iter_mut().zip(&mut self.newer).zip(&mut self.held);
        for ((value, middle), ((older, newer), held)) in seen.raw.iter().zip(&mut seen.middle).zip(kept) {
            let Some(value) = *value else { continue };
            if *held < 2 {
                *held += 1;
            } else {
                *middle = Some(median(*older, *newer, value));
            }
            *older = *newer;
            *newer = value;
        }
    }
}

/// What one sample shows.
#[derive(Debug)]
pub(super) struct Filtered {
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

impl Filtered {
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
