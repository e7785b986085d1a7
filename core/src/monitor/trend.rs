//! The last two minutes of the channels that tell whether a machine is steady: level, slope and scatter.
//!
//! Everything statistical works on means of twelve seconds: their spacing is known although the samples' is not, and
//! what the noise of neighbouring samples has in common is mostly inside one of them.
//!
//! The criterion is that of a moving window whose slope and standard deviation both stay below limits, as Kim, Yoon,
//! Domanski and Payne designed it for a residential air conditioner (Int. J. Refrigeration 31 (2008) 790-799; the
//! form of the criterion from memory, the limits are this crate's own). The slope is that of the least-squares line,
//! the standard deviation that of the residuals about it, so that the two say different things.

use super::sample::{
    CHANNELS, CURRENT, DISCHARGE, EVAPORATOR_OUTLET, LIQUID, SPACE, SUCTION, SUCTION_LINE, SUPPLY_AIR,
};

/// Blocks in a full window: two minutes.
pub(super) const FULL: usize = 10;
/// Fewest blocks that are judged: one minute.
pub(super) const FEWEST: usize = 5;
/// Channels kept.
pub(super) const KEPT: usize = 5;

/// Places of the kept channels; the fourth is the line at the evaporator outlet, the fifth the air it cools.
pub(super) const LOW: usize = 0;
pub(super) const HIGH: usize = 1;
pub(super) const AMPS: usize = 2;

/// The block means of the kept channels, the newest first.
#[derive(Clone, Copy, Debug)]
pub(super) struct Window {
    means: [[i32; FULL]; KEPT],
    count: [u8; KEPT],
    length_ms: u32,
    step: i32,
}

/// The least-squares line through one channel of the window.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Trend {
    /// Mean, in the channel's whole units.
    pub(super) mean: i32,
    /// Slope per minute, in 1/16 of a unit.
    pub(super) slope: i32,
    /// Sum of the squared residuals about the line, in squares of 4 units.
    residuals: u32,
    /// Degrees of freedom of the residuals.
    freedom: u32,
    /// Square of the scatter from sample to sample, which the means do not show, in squares of 4 units.
    within: u32,
}

/// Writes a share as the whole number of 1/65536 that the tests of a trend take.
pub(super) const fn share_of(share: f32) -> u32 {
    (share * 65_536.0) as u32
}

impl Window {
    pub(super) const fn new() -> Self {
        Self { means: [[0; FULL]; KEPT], count: [0; KEPT], length_ms: 0, step: 0 }
    }

    /// Takes the means of a block; a channel that was not measured in it starts anew.
    pub(super) fn push(&mut self, means: &Means) {
        let get = |channel: usize| means.of.get(channel).copied().flatten();
        let kept = [
            get(SUCTION),
            get(DISCHARGE).or(get(LIQUID)),
            get(CURRENT),
            get(EVAPORATOR_OUTLET).or(get(SUCTION_LINE)),
            get(SPACE).or(get(SUPPLY_AIR)),
        ];
        if self.length_ms == 0 {
            (self.length_ms, self.step) = (means.length_ms, means.step);
        } else {
            self.length_ms = (self.length_ms * 3).saturating_add(means.length_ms) / 4;
            self.step += (means.step - self.step) >> 2;
        }
        for ((row, count), mean) in self.means.iter_mut().zip(&mut self.count).zip(kept) {
            let Some(mean) = mean else {
                *count = 0;
                continue;
            };
            row.copy_within(..FULL - 1, 1);
            row[0] = mean;
            *count = (*count + 1).min(FULL as u8);
        }
    }

    /// Views the block means of a channel, the newest first.
    pub(super) fn row(&self, channel: usize) -> &[i32] {
        match (self.means.get(channel), self.count.get(channel)) {
            (Some(row), Some(&count)) => row.get(..usize::from(count)).unwrap_or_default(),
            _ => &[],
        }
    }

    /// Fits the lines to all channels, `None` where there are fewer than [`FEWEST`] blocks.
    pub(super) fn trends(&self) -> [Option<Trend>; KEPT] {
        core::array::from_fn(|channel| self.trend(channel))
    }

    /// Fits the line to a channel, `None` while there are fewer than [`FEWEST`] blocks.
    pub(super) fn trend(&self, channel: usize) -> Option<Trend> {
        let row = self.row(channel);
        if row.len() < FEWEST {
            return None;
        }
        let n = row.len() as i32;
        let (of_n, of_squares) = *RECIPROCALS.get(row.len())?;
        let mean = times(row.iter().sum::<i32>(), of_n);
        // Weights 2i - (n - 1) keep the middle between two blocks whole; their squares sum to n (n^2 - 1) / 3.
        let mut moment = 0;
        let mut weight = n - 1;
        for value in row {
            moment += weight * (value - mean).clamp(-MOST_DEVIATION, MOST_DEVIATION);
            weight -= 2;
        }
        // The slope per half block, in 1/16 of a unit.
        let half = times(moment << 4, of_squares);
        let mut residuals = 0;
        let mut weight = n - 1;
        for value in row {
            let residual = value - mean - ((weight * half + 8) >> 4);
            let residual = ((residual + 2) >> 2).clamp(-MOST_RESIDUAL, MOST_RESIDUAL);
            residuals += (residual * residual) as u32;
            weight -= 2;
        }
        // Two halves a block; the length in units of 128 ms.
        let length = (self.length_ms >> 7).clamp(1, 1 << 15) as i32;
        let slope = half.saturating_mul(2 * 60_000 / 128).checked_div(length)?;
        // The mean step of values without memory is 2 / sqrt(pi) of their standard deviation: its square is 4/pi.
        let step = if channel == LOW { (self.step >> 2).clamp(0, MOST_RESIDUAL) as u32 } else { 0 };
        Some(Trend { mean, slope, residuals, freedom: n as u32 - 2, within: ((step * step) >> 2) * 3 })
    }
}

/// 2^32 / n and 2^32 / (n (n^2 - 1) / 3): a product is several times as cheap as a division without a divider.
const RECIPROCALS: [(u32, u32); FULL + 1] = {
    let mut all = [(0, 0); FULL + 1];
    let mut n = 2;
    while n <= FULL {
        all[n] =
            ((1u64 << 32).div_ceil(n as u64) as u32, (3u64 << 32).div_ceil((n * (n * n - 1)) as u64) as u32);
        n += 1;
    }
    all
};

/// Finds the product with a reciprocal of 2^32, rounded to the nearest.
fn times(value: i32, reciprocal: u32) -> i32 {
    ((i64::from(value) * i64::from(reciprocal) + (1 << 31)) >> 32) as i32
}

/// Largest deviation of a block from the mean that counts, whole units: nothing overflows with it.
const MOST_DEVIATION: i32 = 1 << 19;
/// Largest residual that counts, in 4 units.
const MOST_RESIDUAL: i32 = 1 << 14;

impl Trend {
    /// Finds a share of the mean in 1/16 of a unit, the share in 1/65536.
    pub(super) fn share(&self, share: u32) -> i32 {
        // (mean / 16) share / 256, in the order in which nothing overflows.
        (((self.mean.max(0) as u32 >> 4) * share) >> 8) as i32
    }
    /// Tells whether the slope stays within a share of the mean per minute.
    pub(super) fn level_within(&self, share: u32) -> bool {
        self.slope.abs() <= self.share(share)
    }
    /// Tells whether the scatter about the line stays within a share of the mean.
    pub(super) fn quiet_within(&self, share: u32) -> bool {
        self.scatters_within(((self.mean.max(0) as u32 >> 2) * share) >> 16)
    }
    /// Tells whether the scatter about the line and within the means stays within a limit, in 4 units.
    pub(super) fn scatters_within(&self, limit: u32) -> bool {
        let limit = limit.min(MOST_RESIDUAL as u32 - 1);
        // No more than 2^28 each, eight times.
        self.residuals.saturating_add(self.within * self.freedom) <= limit * limit * self.freedom
    }
    /// Tells whether the slope is more than three times its own standard error.
    ///
    /// That error is s / sqrt(82.5) a block of a full window, five blocks a minute.
    pub(super) fn is_sure(&self) -> bool {
        let slope = (self.slope.unsigned_abs() >> 4).min(1 << 14);
        // slope^2 > 9 * 25 / 82.5 s^2, s^2 = 16 residuals / 8.
        2 * slope * slope > self.residuals.saturating_mul(11)
    }
}

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

#[cfg(test)]
mod tests {
    use super::super::sample::CHANNELS;
    use super::*;
    use approx::assert_relative_eq;

    #[test]
    fn a_line_is_found_as_it_was_drawn() {
        let mut window = Window::new();
        for i in 0..FULL as i32 {
            let mut means = [None; CHANNELS];
            // 256 units up a block and 64 up and down beside it.
            means[SUCTION] = Some(100_000 + 256 * i + if i % 2 == 0 { 64 } else { -64 });
            window.push(&Means { of: means, length_ms: 12_000, step: 0 });
            assert_eq!(window.trend(LOW).is_some(), i as usize + 1 >= FEWEST);
            assert_eq!(window.trend(HIGH), None);
        }
        let trend = window.trend(LOW).unwrap();
        assert_eq!(trend.mean, 100_000 + 9 * 128);
        // Least squares by hand: five pairs of -64 over the 82.5 of ten points, five blocks a minute.
        let by_hand = (256.0 - 5.0 * 64.0 / 82.5) * 5.0;
        assert_relative_eq!(trend.slope as f32 / 16.0, by_hand, max_relative = 1e-2);
        // Residuals of 64 units but for what the line takes: 16 of 4 units, squared, ten times.
        assert!(trend.residuals > 2400 && trend.residuals < 2700, "{}", trend.residuals);
        assert!(trend.scatters_within(18) && !trend.scatters_within(17));
        assert!(trend.level_within(share_of(0.013)) && !trend.level_within(share_of(0.012)));
        assert!(trend.is_sure());
    }

    #[test]
    fn what_scatters_within_the_means_is_scatter_too() {
        let quiet = |step: i32| {
            let mut window = Window::new();
            let mut of = [None; CHANNELS];
            of[SUCTION] = Some(200 << 8);
            for _ in 0..FULL {
                window.push(&Means { of, length_ms: 12_000, step });
            }
            window.trend(LOW).unwrap().quiet_within(share_of(0.015))
        };
        // 1.5 % of 200 kPa are 3 kPa; without memory neighbours are 1.13 times as far from each other.
        assert!(quiet(33 << 8 >> 4));
        assert!(quiet(3 * 256) && !quiet(4 * 256));
    }

    #[test]
    fn a_channel_that_was_missing_starts_anew() {
        let mut window = Window::new();
        let mut means = [None; CHANNELS];
        means[SUCTION] = Some(1000);
        for _ in 0..FULL {
            window.push(&Means { of: means, length_ms: 12_000, step: 0 });
        }
        window.push(&Means { of: [None; CHANNELS], length_ms: 12_000, step: 0 });
        assert_eq!(window.trend(LOW), None);
        assert!(window.row(LOW).is_empty());
    }
}
