//! The middle of the last three values of every channel, which one spike never is.

use super::fixed::median;
use super::sample::CHANNELS;

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

    /// Gives the last three values of a channel with that of this sample, the oldest first, `None` until there are three.
    pub(super) fn last_three(&self, channel: usize, values: &[Option<i32>; CHANNELS]) -> Option<[i32; 3]> {
        let newest = (*values.get(channel)?)?;
        (*self.held.get(channel)? >= 2).then_some([
            *self.older.get(channel)?,
            *self.newer.get(channel)?,
            newest,
        ])
    }

    /// Takes the values of a sample and gives the middle ones, `None` until a channel was measured three times.
    pub(super) fn push(&mut self, values: &[Option<i32>; CHANNELS], middle: &mut [Option<i32>; CHANNELS]) {
        let kept = self.older.iter_mut().zip(&mut self.newer).zip(&mut self.held);
        for ((value, middle), ((older, newer), held)) in values.iter().zip(middle).zip(kept) {
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
