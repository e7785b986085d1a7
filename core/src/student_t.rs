//! Student's t distribution, which stands for the odd machine: its density over several channels, and its tail.

use crate::refrigerant::logarithm;
use crate::symptom::{CHANNELS, Vector};
use crate::triangular::WHOLE_ROWS;

/// Degrees of freedom of the Student distribution that stands for the odd machine.
pub(crate) const FREEDOM: f32 = 8.0;

/// ln of the Student density's factor for d measured channels: lnG((8+d)/2) - lnG(4) - d/2 ln(8 pi).
const LN_FACTOR: [f32; CHANNELS + 1] = [
    0.000000, -0.950109, -1.837877, -2.670203, -3.452611, -4.189626, -4.885023, -5.541995, -6.163284,
    -6.751264, -7.308014, -7.835369, -8.334961, -8.808249, -9.256547, -9.681045,
];

/// ln of a multivariate Student density from its squared distance, number of channels and ln det.
pub(crate) fn ln_student(square: f32, channels: usize, ln_det: f32) -> f32 {
    let factor = LN_FACTOR.get(channels).copied().unwrap_or(0.0);
    factor - 0.5 * ln_det - 0.5 * (FREEDOM + channels as f32) * libm::logf(1.0 + square.max(0.0) / FREEDOM)
}

/// The same of several squared distances at once, each with its own precision lost from the determinant: one channel less,
/// `square` without it.
///
/// Side by side, with a logarithm good to 3e-7 that is made of sums and products alone.
pub(crate) fn ln_students_without(
    squares: &Vector,
    precisions: &Vector,
    channels: usize,
    ln_det: f32,
) -> Vector {
    let factor = LN_FACTOR.get(channels.saturating_sub(1)).copied().unwrap_or(0.0);
    let power = 0.5 * (FREEDOM + channels as f32 - 1.0);
    let mut ln = [0.0; CHANNELS];
    let places = if WHOLE_ROWS { CHANNELS } else { channels };
    for ((ln, square), precision) in ln.iter_mut().zip(squares).zip(precisions).take(places) {
        let spread = ln_det + logarithm(*precision);
        *ln = factor - 0.5 * spread - power * logarithm(1.0 + square.max(0.0) * (1.0 / FREEDOM));
    }
    ln
}

/// The probability of a squared distance at least this large, for this many channels.
///
/// square / d of a multivariate Student variable follows Fisher's F(d, 8); for 8 denominator degrees its upper tail
/// is a finite sum: with z = 8 / (8 + square) the tail is I_z(4, d/2), and
/// I_z(4, b) = 1 - (1-z)^b sum_{k=0}^{3} G(b+k) / (G(b) k!) z^k (Abramowitz and Stegun 26.5.6 and 26.6.2).
pub(crate) fn tail(square: f32, channels: usize) -> f32 {
    if channels == 0 {
        return 1.0;
    }
    let z = FREEDOM / (FREEDOM + square.max(0.0));
    let b = 0.5 * channels as f32;
    let base = if z >= 1.0 { 0.0 } else { libm::expf(b * libm::logf(1.0 - z)) };
    let series = 1.0 + b * z + b * (b + 1.0) / 2.0 * z * z + b * (b + 1.0) * (b + 2.0) / 6.0 * z * z * z;
    (1.0 - base * series).max(0.0).min(1.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    #[test]
    fn the_tail_matches_tables_of_the_f_distribution() {
        // Upper 5 % and 1 % points of F(d, 8), any handbook of statistics: 5.318 (1), 4.066 (3), 3.347 (10); 11.259 (1).
        for (channels, f, p) in [(1, 5.318, 0.05), (3, 4.066, 0.05), (10, 3.347, 0.05), (1, 11.259, 0.01)] {
            assert_relative_eq!(tail(channels as f32 * f, channels), p, max_relative = 2e-3);
        }
        assert_eq!(tail(0.0, 4), 1.0);
    }

    #[test]
    fn the_density_of_one_channel_is_students() {
        // Student's t density with 8 degrees of freedom at 0: G(4.5) / (sqrt(8 pi) G(4)) = 0.386699.
        assert_relative_eq!(libm::expf(ln_student(0.0, 1, 0.0)), 0.386_699, max_relative = 1e-4);
    }
}
