//! Averages of every channel with the uncertainty that averaging honestly leaves.
//!
//! The noise of neighbouring readings has much in common, so the mean of n of them is not sqrt(n) times as good as one.
//! The differences of neighbouring block means, less their drift, tell the noise and its lag-1 autocorrelation r: for a
//! first-order autoregressive noise of variance s2 they have the variance D = 2 s2 (1 - r) and their neighbours the
//! covariance C = -s2 (1 - r)^2, hence r = 1 + 2 C / D. The mean of n such values has the variance
//! s2 / n (1 + r) / (1 - r) (the usual effective sample count), and an exponentially weighted mean of weight a the
//! variance s2 a / (2 - a) (1 + b r) / (1 - b r) with b = 1 - a.

use super::fixed_point::number;
use super::sample::{CHANNELS, places};

/// Blocks after which the mean forgets: from then on each new block weighs 1 / FULL.
const FULL: i32 = 8;
/// Fewest blocks of a mean that is given out: one minute.
pub(super) const FEWEST: u8 = 5;
/// Extra binary places of the squares.
const SQUARE_PLACES: u32 = 4;
/// Largest difference of block means that is squared, in whole units: 32 of the channel's own unit.
const LARGEST: i32 = (1 << 13) - 1;
/// Added to the autocorrelation found: eight blocks show too little of it, by about (1 + 3 r) / n (Marriott and Pope,
/// Biometrika 41 (1954), from memory).
const LOST_CORRELATION: f32 = 0.2;

/// Highest autocorrelation from block to block that counts as noise; what goes on more smoothly is the machine's drift,
/// and its average is what is asked for.
const MOST_CORRELATION: f32 = 0.6;

/// Running mean of every channel and the noise of its block means.
#[derive(Clone, Copy, Debug)]
pub(super) struct Averages {
    mean: [i32; CHANNELS],
    last: [i16; CHANNELS],
    drift: [i16; CHANNELS],
    step: [i16; CHANNELS],
    square: [i32; CHANNELS],
    product: [i32; CHANNELS],
    count: [u8; CHANNELS],
}

impl Averages {
    pub(super) const fn new() -> Self {
        Self {
            mean: [0; CHANNELS],
            last: [0; CHANNELS],
            drift: [0; CHANNELS],
            step: [0; CHANNELS],
            square: [0; CHANNELS],
            product: [0; CHANNELS],
            count: [0; CHANNELS],
        }
    }

    /// Takes the means of a block; a channel that was not measured in it starts anew.
    pub(super) fn push(&mut self, means: &[Option<i32>; CHANNELS]) {
        let first = self.mean.iter_mut().zip(&mut self.last).zip(&mut self.drift).zip(&mut self.step);
        let second = self.square.iter_mut().zip(&mut self.product).zip(&mut self.count);
        for ((value, (((mean, last), drift), step)), ((square, product), count)) in
            means.iter().zip(first).zip(second)
        {
            let Some(value) = *value else {
                *count = 0;
                continue;
            };
            let n = i32::from(*count) + 1;
            if n == 1 {
                (*mean, *last, *drift, *step, *square, *product) = (value, 0, 0, 0, 0, 0);
            } else {
                let difference = (value - (*mean + i32::from(*last))).clamp(-LARGEST, LARGEST);
                let new_drift = i32::from(*drift) + part(difference - i32::from(*drift), n - 1);
                let new_step = (difference - new_drift).clamp(-LARGEST, LARGEST);
                *square += slow_part(((new_step * new_step) << SQUARE_PLACES) - *square, n - 1);
                if n > 2 {
                    *product += slow_part(((new_step * i32::from(*step)) << SQUARE_PLACES) - *product, n - 2);
                }
                (*drift, *step) = (new_drift as i16, new_step as i16);
                *mean += part(value - *mean, n);
                *last = (value - *mean).clamp(-32_767, 32_767) as i16;
            }
            *count = n.min(200) as u8;
        }
    }

    /// Finds the mean of a channel in whole units, `None` while it was never measured.
    pub(super) fn whole(&self, channel: usize) -> Option<i32> {
        (*self.count.get(channel)? > 0).then_some(*self.mean.get(channel)?)
    }

    /// Finds the mean of a channel and its standard uncertainty from noise alone, in the channel's own unit.
    pub(super) fn mean(&self, channel: usize) -> Option<(f32, f32)> {
        let count = *self.count.get(channel)?;
        if count < FEWEST {
            return None;
        }
        let square = (*self.square.get(channel)?).max(1) as f32;
        let product = *self.product.get(channel)? as f32;
        let r = (1.0 + 2.0 * product / square + LOST_CORRELATION).clamp(0.0, MOST_CORRELATION);
        // The differences of differences have the variance 2 (D - C) = 2 s2 (1 - r) (3 - r); a bend of the drift is not
        // in them. Few blocks may show too little of it by chance.
        let bends = (2.0 * (square - product)).max(square * 0.25);
        let noise = bends / (2.0 * (1.0 - r) * (3.0 - r));
        let n = f32::from(count);
        let left = if i32::from(count) < FULL {
            (1.0 + r) / ((1.0 - r) * n)
        } else {
            let a = 1.0 / FULL as f32;
            let b = (1.0 - a) * r;
            a / (2.0 - a) * (1.0 + b) / (1.0 - b)
        };
        let unit = 1.0 / (1u32 << places(channel)) as f32;
        let u = libm::sqrtf(noise * left / (1u32 << SQUARE_PLACES) as f32) * unit;
        Some((number(*self.mean.get(channel)?, places(channel)), u))
    }
}

/// Finds the power of two that divides a difference for a mean of n values: 1, 1/2, 1/4, 1/4, 1/8 and so on.
///
/// Close to 1/n, and it costs no division; the variance of the mean is within 8 % of that of equal weights.
const fn shift(n: i32) -> u32 {
    match n {
        ..=1 => 0,
        2 => 1,
        3 | 4 => 2,
        _ => 3,
    }
}

/// Finds the part of a difference that a mean of n values takes over, rounded to the nearest.
fn part(difference: i32, n: i32) -> i32 {
    round_shift(difference, shift(n))
}

/// Finds the part of a difference that a noise of n values takes over: it remembers twice as long as the mean.
fn slow_part(difference: i32, n: i32) -> i32 {
    round_shift(difference, if n > FULL { 4 } else { shift(n) })
}

fn round_shift(value: i32, shift: u32) -> i32 {
    (value + ((1 << shift) >> 1)) >> shift
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A small generator of even numbers from -0.5 to 0.5; shared with nothing.
    struct Noise(u64);
    impl Noise {
        fn even(&mut self) -> f64 {
            self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (self.0 >> 11) as f64 / (1u64 << 53) as f64 - 0.5
        }
        fn normal(&mut self) -> f64 {
            (0..12).map(|_| self.even()).sum()
        }
    }

    /// Runs many averages over noise of a correlation between blocks and gives the spread of (error / stated u).
    fn spread_of_errors(correlation: f64, drift: f64) -> f64 {
        let mut noise = Noise(7);
        let mut squares = 0.0;
        let runs = 4000;
        for _ in 0..runs {
            let mut averages = Averages::new();
            let (mut state, mut truth) = (noise.normal(), 0.0);
            for i in 0..20 {
                state = correlation * state + libm::sqrt(1.0 - correlation * correlation) * noise.normal();
                let line = drift * f64::from(i);
                let mut means = [None; CHANNELS];
                means[0] = Some(libm::round((300.0 + line + 0.4 * state) * 256.0) as i32);
                averages.push(&means);
                // The same weights on the drift alone: what the mean would be without noise.
                truth += (line - truth) / f64::from(1 << shift(i + 1));
            }
            let (mean, u) = averages.mean(0).unwrap();
            let error = ((f64::from(mean) - 300.0 - truth) / f64::from(u)).abs();
            squares += error * error;
        }
        libm::sqrt(squares / f64::from(runs))
    }

    #[test]
    fn the_uncertainty_of_a_mean_is_what_its_errors_show() {
        // From white noise to noise that has a third in common from block to block, standing and drifting.
        for (correlation, drift) in [(0.0, 0.0), (0.3, 0.0), (0.0, 2.0), (0.3, 2.0)] {
            let spread = spread_of_errors(correlation, drift);
            assert!(spread > 0.7 && spread < 1.2, "r = {correlation}, drift {drift}: {spread}");
        }
        // Twenty blocks cannot show all of a stronger correlation: the uncertainty is up to half too small there.
        let spread = spread_of_errors(0.6, 0.0);
        assert!(spread > 1.2 && spread < 2.0, "{spread}");
    }
}
