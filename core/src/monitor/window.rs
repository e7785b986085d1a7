//! The last two minutes of the channels that tell whether a machine is steady: level, slope and scatter.
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

/// Places of the kept channels.
pub(super) const LOW: usize = 0;
pub(super) const HIGH: usize = 1;
pub(super) const AMPS: usize = 2;
pub(super) const LINE: usize = 3;
pub(super) const COLD: usize = 4;

/// The block means of the kept channels, the newest first.
#[derive(Clone, Copy, Debug)]
pub(super) struct Window {
    means: [[i32; FULL]; KEPT],
    count: [u8; KEPT],
    length_ms: u32,
}

/// The least-squares line through one channel of the window, in the channel's whole units.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Trend {
    /// Mean.
    pub(super) mean: f32,
    /// Slope per minute.
    pub(super) slope: f32,
    /// Variance of the residuals about the line.
    pub(super) variance: f32,
}

impl Window {
    pub(super) const fn new() -> Self {
        Self { means: [[0; FULL]; KEPT], count: [0; KEPT], length_ms: 0 }
    }

    /// Takes the means of a block; a channel that was not measured in it starts anew.
    pub(super) fn push(&mut self, means: &[Option<i32>; CHANNELS], length_ms: u32) {
        let get = |channel: usize| means.get(channel).copied().flatten();
        let kept = [
            get(SUCTION),
            get(DISCHARGE).or(get(LIQUID)),
            get(CURRENT),
            get(EVAPORATOR_OUTLET).or(get(SUCTION_LINE)),
            get(SPACE).or(get(SUPPLY_AIR)),
        ];
        self.length_ms =
            if self.length_ms == 0 { length_ms } else { (self.length_ms * 3).saturating_add(length_ms) / 4 };
        for ((row, count), mean) in self.means.iter_mut().zip(&mut self.count).zip(kept) {
            let Some(mean) = mean else {
                *count = 0;
                continue;
            };
            row.rotate_right(1);
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

    /// Fits the line to a channel, `None` while there are fewer than [`FEWEST`] blocks.
    pub(super) fn trend(&self, channel: usize) -> Option<Trend> {
        let row = self.row(channel);
        if row.len() < FEWEST {
            return None;
        }
        let n = row.len() as i32;
        let mean = row.iter().sum::<i32>().checked_div(n)?;
        // Weights 2i - (n - 1) keep the middle between two blocks whole; their squares sum to n (n^2 - 1) / 3.
        let (mut moment, mut squares) = (0i32, 0i64);
        let mut weight = n - 1;
        for value in row {
            let deviation = (value - mean).clamp(-(1 << 22), 1 << 22);
            moment += weight * deviation;
            squares += i64::from(deviation) * i64::from(deviation);
            weight -= 2;
        }
        let n = n as f32;
        let weights = n * (n * n - 1.0) * (1.0 / 3.0);
        let per_half_block = moment as f32 / weights;
        let variance = (squares as f32 - per_half_block * moment as f32) / (n - 2.0);
        let slope = per_half_block * 120_000.0 / (self.length_ms.max(1) as f32);
        Some(Trend { mean: mean as f32, slope, variance: variance.max(0.0) })
    }
}

impl Trend {
    /// Tells whether the slope stays within a share of the mean per minute.
    pub(super) fn level_within(&self, share: f32) -> bool {
        self.slope.abs() <= share * self.mean
    }
    /// Tells whether the scatter about the line stays within a share of the mean.
    pub(super) fn quiet_within(&self, share: f32) -> bool {
        let limit = share * self.mean;
        self.variance <= limit * limit
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    #[test]
    fn a_line_is_found_as_it_was_drawn() {
        let mut window = Window::new();
        for i in 0..FULL as i32 {
            let mut means = [None; CHANNELS];
            // 256 units up a block and 64 up and down beside it.
            means[SUCTION] = Some(100_000 + 256 * i + if i % 2 == 0 { 64 } else { -64 });
            window.push(&means, 12_000);
            assert_eq!(window.trend(LOW).is_some(), i as usize + 1 >= FEWEST);
            assert_eq!(window.trend(HIGH), None);
        }
        let trend = window.trend(LOW).unwrap();
        assert_relative_eq!(trend.mean, 100_000.0 + 4.5 * 256.0, max_relative = 1e-5);
        // Least squares by hand: five pairs of -64 over the 82.5 of ten points.
        let by_hand = 256.0 - 5.0 * 64.0 / 82.5;
        assert_relative_eq!(trend.slope, by_hand * 5.0, max_relative = 1e-3);
        assert!(trend.variance > 0.8 * 64.0 * 64.0 && trend.variance < 1.4 * 64.0 * 64.0);
    }

    #[test]
    fn a_channel_that_was_missing_starts_anew() {
        let mut window = Window::new();
        let mut means = [None; CHANNELS];
        means[SUCTION] = Some(1000);
        for _ in 0..FULL {
            window.push(&means, 12_000);
        }
        window.push(&[None; CHANNELS], 12_000);
        assert_eq!(window.trend(LOW), None);
        assert!(window.row(LOW).is_empty());
    }
}
