//! The middle of the last three values of every channel, which one spike never is.

use super::fixed::median;
use super::sample::{CHANNELS, CURRENT, SUCTION, VOLTAGE};
use super::seen::Seen;

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
    pub(super) fn push(&mut self, seen: &mut Seen) {
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
