//! Twelve seconds of samples made into one mean of every channel.
//!
//! Everything statistical works on these means: their spacing is known although the samples' is not, and what the
//! noise of neighbouring samples has in common is mostly inside one of them.

use super::sample::{CHANNELS, SUCTION};

/// Length of a block, ms.
const LENGTH_MS: u32 = 12_000;
/// Most samples of a block: the sum of so many whole numbers cannot overflow.
const MOST: u8 = 200;

/// Part of the suction pressure, as a shift, beyond which a step from sample to sample counts no more: a spike.
const MOST_STEP: u32 = 4;

/// The sums of the block being filled.
#[derive(Clone, Copy, Debug)]
pub(super) struct Block {
    sum: [i32; CHANNELS],
    count: [u8; CHANNELS],
    samples: u8,
    since: u32,
    steps: i32,
}

/// The means of a full block.
pub(super) struct Means {
    /// Mean of every channel, `None` where nothing was measured.
    pub(super) of: [Option<i32>; CHANNELS],
    /// How long it took, ms.
    pub(super) length_ms: u32,
    /// Mean step of the suction pressure from sample to sample.
    pub(super) step: i32,
}

impl Block {
    pub(super) const fn new(now: u32) -> Self {
        Self { sum: [0; CHANNELS], count: [0; CHANNELS], samples: 0, since: now, steps: 0 }
    }

    /// Tells whether a sample at this time fills the block.
    pub(super) fn fills(&self, now: u32) -> bool {
        now.wrapping_sub(self.since) >= LENGTH_MS || self.samples >= MOST - 1
    }

    /// Adds the values of a sample and the step of its suction pressure, and gives the means when it fills the block.
    pub(super) fn push(
        &mut self,
        values: &[Option<i32>; CHANNELS],
        step: Option<i32>,
        now: u32,
    ) -> Option<Means> {
        if let (Some(low), Some(step)) = (values[SUCTION], step) {
            self.steps = self.steps.saturating_add(step.min(low >> MOST_STEP));
        }
        for ((sum, count), value) in self.sum.iter_mut().zip(&mut self.count).zip(values) {
            if let Some(value) = value {
                *sum = sum.saturating_add(*value);
                *count += 1;
            }
        }
        if !self.fills(now) {
            self.samples += 1;
            return None;
        }
        let length_ms = now.wrapping_sub(self.since);
        let mut of = [None; CHANNELS];
        // Most channels have the same count: one division serves them all, and a product is cheap.
        let (mut counted, mut reciprocal) = (0, 0);
        for ((mean, sum), count) in of.iter_mut().zip(&self.sum).zip(&self.count) {
            if *count == 0 {
                continue;
            }
            if *count != counted {
                (counted, reciprocal) = (*count, (u32::MAX / u32::from((*count).max(1))) as i64);
            }
            *mean = Some(((i64::from(*sum) * reciprocal + (1 << 31)) >> 32) as i32);
        }
        let step = self.steps.checked_div(i32::from(self.count[SUCTION])).unwrap_or(0);
        *self = Self::new(now);
        Some(Means { of, length_ms: length_ms.max(1), step })
    }
}
