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

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

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
