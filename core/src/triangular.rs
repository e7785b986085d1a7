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

/// Whether rows are worked on whole, of which only the first places count: registers that hold four numbers are quicker so.
/// What counts has the same bits either way.
pub(crate) const WHOLE_ROWS: bool = cfg!(any(target_arch = "x86_64", target_arch = "aarch64"));

/// Adds a multiple of another row to the first places of a row; behind them stands what does not count.
#[inline(always)]
fn add_part<const ROW: usize>(row: &mut Vector, times: f32, other: &Vector, places: usize) {
    let places = if WHOLE_ROWS { ROW } else { places };
    for (cell, other) in row.iter_mut().zip(other).take(places) {
        *cell += times * other;
    }
}

impl Factor {
    pub(crate) const NEW: Self = Self { matrix: [[0.0; CHANNELS]; CHANNELS], size: 0, ln_det: 0.0 };

    /// Factors the covariance that stands in `matrix`, in place; false where it is not positive definite.
    pub(crate) fn invert(&mut self, size: usize) -> bool {
        let n = size.min(CHANNELS);
        match n {
            0..=4 if WHOLE_ROWS => self.invert_within::<4>(n),
            5..=8 if WHOLE_ROWS => self.invert_within::<8>(n),
            9..=12 if WHOLE_ROWS => self.invert_within::<12>(n),
            _ => self.invert_within::<CHANNELS>(n),
        }
    }

    /// The same in rows of a known length, which holds all that counts.
    fn invert_within<const ROW: usize>(&mut self, size: usize) -> bool {
        let n = size.min(ROW);
        let rows = &mut self.matrix;
        self.size = n;
        self.ln_det = 0.0;
        let mut determinant = 1.0f32;
        let mut reciprocal = [0.0; CHANNELS];
        // Column by column, each taken off what is right of it.
        for k in 0..n {
            let pivot = rows[k][k];
            if !(pivot > 1.0e-6) {
                return false;
            }
            determinant *= pivot;
            // One logarithm for a few factors, before their product leaves binary32.
            if !(determinant > 1.0e-12 && determinant < 1.0e12) {
                self.ln_det += libm::logf(determinant);
                determinant = 1.0;
            }
            reciprocal[k] = 1.0 / libm::sqrtf(pivot);
            let mut column = [0.0; CHANNELS];
            for i in k + 1..n {
                column[i] = rows[i][k] * reciprocal[k];
            }
            for i in k + 1..n {
                add_part::<ROW>(&mut rows[i], -column[i], &column, i + 1);
                rows[i][k] = column[i];
            }
        }
        self.ln_det += libm::logf(determinant);
        // Row by row, each from those above it.
        for i in 0..n {
            let lower = rows[i];
            let mut sum = [0.0; CHANNELS];
            for k in 0..i {
                add_part::<ROW>(&mut sum, lower[k], &rows[k], k + 1);
            }
            // Nothing stands right of the diagonal.
            for (cell, sum) in rows[i].iter_mut().zip(&sum) {
                *cell = -sum * reciprocal[i];
            }
            rows[i][i] = reciprocal[i];
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
        let mut out = [0.0; CHANNELS];
        for (i, (row, w)) in self.matrix.iter().zip(w).enumerate().take(self.size) {
            add_part::<CHANNELS>(&mut out, *w, row, i + 1);
        }
        out
    }

    /// The diagonal of the inverse covariance.
    pub(crate) fn precision(&self) -> Vector {
        let mut out = [0.0; CHANNELS];
        for (i, row) in self.matrix.iter().enumerate().take(self.size) {
            let places = if WHOLE_ROWS { CHANNELS } else { i + 1 };
            for (sum, cell) in out.iter_mut().zip(row).take(places) {
                *sum += cell * cell;
            }
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
