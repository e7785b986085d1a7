//! A triangular factor of a covariance and what it gives: distances, and each channel left out in turn.

use crate::symptom::{CHANNELS, Matrix, Vector};

/// The inverse of the Cholesky factor of a covariance over the channels that were measured.
///
/// The channels stand packed: the first `size` rows and columns count. Loops run to `size`, which is at most
/// [`CHANNELS`], so that every bounds check falls away.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Factor {
    /// L^-1, lower triangular; while factoring, the covariance and then L.
    pub(crate) matrix: Matrix,
    size: usize,
    /// ln det of the covariance.
    pub(crate) ln_det: f32,
}

impl Factor {
    pub(crate) const NEW: Self = Self { matrix: [[0.0; CHANNELS]; CHANNELS], size: 0, ln_det: 0.0 };

    /// Factors the covariance that stands in `matrix`, in place; false where it is not positive definite.
    pub(crate) fn invert(&mut self, size: usize) -> bool {
        let n = size.min(CHANNELS);
        let l = &mut self.matrix;
        self.size = n;
        self.ln_det = 0.0;
        let mut determinant = 1.0f32;
        let mut reciprocal = [0.0; CHANNELS];
        for i in 0..n {
            for j in 0..i {
                let mut sum = l[i][j];
                for k in 0..j {
                    sum -= l[i][k] * l[j][k];
                }
                l[i][j] = sum * reciprocal[j];
            }
            let mut sum = l[i][i];
            for k in 0..i {
                sum -= l[i][k] * l[i][k];
            }
            if !(sum > 1.0e-6) {
                return false;
            }
            determinant *= sum;
            // One logarithm for a few factors, before their product leaves binary32.
            if !(determinant > 1.0e-12 && determinant < 1.0e12) {
                self.ln_det += libm::logf(determinant);
                determinant = 1.0;
            }
            reciprocal[i] = 1.0 / libm::sqrtf(sum);
        }
        self.ln_det += libm::logf(determinant);
        // Column by column from the right end of each row, what is overwritten is no longer needed.
        for i in 0..n {
            for j in 0..i {
                let mut sum = 0.0;
                for k in j..i {
                    sum += l[i][k] * if k == j { reciprocal[j] } else { l[k][j] };
                }
                // L's own row is still needed to its right; the inverse waits in the upper triangle.
                l[j][i] = -sum * reciprocal[i];
            }
            for j in 0..i {
                l[i][j] = l[j][i];
            }
        }
        for i in 0..n {
            l[i][i] = reciprocal[i];
        }
        true
    }

    /// L^-1 v.
    pub(crate) fn whiten(&self, v: &Vector) -> Vector {
        let mut out = [0.0; CHANNELS];
        // Iterators, because a compiler that builds small does not see that these indices stay inside.
        for (i, (slot, row)) in out.iter_mut().zip(&self.matrix).enumerate().take(self.size) {
            *slot = row.iter().zip(v).take(i + 1).fold(0.0, |sum, (l, v)| sum + l * v);
        }
        out
    }

    /// L^-T w: the inverse covariance times v, where w = L^-1 v.
    pub(crate) fn back(&self, w: &Vector) -> Vector {
        let n = self.size.min(CHANNELS);
        let mut out = [0.0; CHANNELS];
        for i in 0..n {
            let mut sum = 0.0;
            for k in i..n {
                sum += self.matrix[k][i] * w[k];
            }
            out[i] = sum;
        }
        out
    }

    /// The diagonal of the inverse covariance.
    pub(crate) fn precision(&self) -> Vector {
        let n = self.size.min(CHANNELS);
        let mut out = [0.0; CHANNELS];
        for i in 0..n {
            let mut sum = 0.0;
            for k in i..n {
                sum += self.matrix[k][i] * self.matrix[k][i];
            }
            out[i] = sum;
        }
        out
    }
}

/// Degrees of freedom of the Student distribution that stands for the odd machine.
pub(crate) const FREEDOM: f32 = 8.0;

/// ln of the Student density's factor for d measured channels: lnG((8+d)/2) - lnG(4) - d/2 ln(8 pi).
const LN_FACTOR: [f32; CHANNELS + 1] = [
    0.000000, -0.950109, -1.837877, -2.670203, -3.452611, -4.189626, -4.885023, -5.541995, -6.163284,
    -6.751264, -7.308014, -7.835369, -8.334961, -8.808249,
];

/// ln of a multivariate Student density from its squared distance, number of channels and ln det.
pub(crate) fn ln_student(square: f32, channels: usize, ln_det: f32) -> f32 {
    let factor = LN_FACTOR.get(channels).copied().unwrap_or(0.0);
    factor - 0.5 * ln_det - 0.5 * (FREEDOM + channels as f32) * libm::logf(1.0 + square.max(0.0) / FREEDOM)
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

    #[test]
    fn a_factor_gives_back_distances_and_left_out_channels() {
        let mut factor = Factor::NEW;
        let covariance = &mut factor.matrix;
        covariance[2][2] = 1.0;
        // Two channels with correlation 0.6.
        (covariance[0][0], covariance[0][1], covariance[1][0], covariance[1][1]) = (4.0, 1.2, 1.2, 1.0);
        assert!(factor.invert(3));
        assert_relative_eq!(factor.ln_det, libm::logf(4.0 - 1.44), max_relative = 1e-5);
        let mut v = [0.0; CHANNELS];
        (v[0], v[1]) = (2.0, -1.0);
        let white = factor.whiten(&v);
        let square: f32 = white.iter().map(|w| w * w).sum();
        // v^T S^-1 v with S^-1 = [[1, -1.2], [-1.2, 4]] / 2.56.
        assert_relative_eq!(square, (4.0 + 2.0 * 2.4 + 4.0) / 2.56, max_relative = 1e-5);
        let weighted = factor.back(&white);
        let without = square - weighted[0] * weighted[0] / factor.precision()[0];
        assert_relative_eq!(without, 1.0, max_relative = 1e-4);
    }
}
