//! What was measured minus what is expected, packed to the channels in use.

use super::channel::{CHANNELS, Matrix, Vector};
use super::instrument::Measured;
use crate::measurement::Measurement;
use crate::student_t::ln_student;
use crate::triangular::Factor;

/// What was measured minus what is expected, with its covariance, packed to the channels in use.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Deviation {
    residual: Vector,
    /// Instruments included.
    covariance: Matrix,
    /// The channel at each place.
    at: [u8; CHANNELS],
    size: usize,
    /// What one kelvin in each of the day's conditions moves; zero where the condition was not read.
    conditions: Conditions,
}

/// What one kelvin of space and of ambient temperature moves in every channel.
pub(crate) type Conditions = [Vector; CONDITIONS];
/// The conditions that are read but are no channels: everything expected leans on them.
pub(crate) const CONDITIONS: usize = 2;
/// The reading behind each condition.
pub(crate) const CONDITION: [Measurement; CONDITIONS] = [Measurement::Space, Measurement::Ambient];
/// How far off a grossly wrong space or ambient reading is, K: a thermometer in the sun, in the exhaust, in another
/// room (judged).
const GROSSLY_K: f32 = 8.0;

impl Deviation {
    pub(crate) const NEW: Self = Self {
        residual: [0.0; CHANNELS],
        covariance: [[0.0; CHANNELS]; CHANNELS],
        at: [0; CHANNELS],
        size: 0,
        conditions: [[0.0; CHANNELS]; CONDITIONS],
    };

    /// Packs what was measured.
    pub(crate) fn set(&mut self, mean: &Vector, covariance: &Matrix, measured: &Measured) {
        self.size = 0;
        self.conditions = Self::NEW.conditions;
        for channel in 0..CHANNELS {
            if measured.given[channel]
                && let (Some(at), Some(residual)) =
                    (self.at.get_mut(self.size), self.residual.get_mut(self.size))
            {
                *at = channel as u8;
                *residual = measured.value[channel] - mean[channel];
                self.size += 1;
            }
        }
        for (row, i) in self.covariance.iter_mut().zip(self.at).take(self.size) {
            let i = usize::from(i);
            for (cell, j) in row.iter_mut().zip(self.at).take(self.size) {
                let j = usize::from(j);
                *cell = covariance.get(i).and_then(|row| row.get(j)).copied().unwrap_or(0.0);
                if i == j {
                    *cell += measured.variance.get(i).copied().unwrap_or(0.0);
                }
            }
        }
    }

    /// Lets the space and the ambient reading be doubted as the other readings are.
    pub(crate) fn doubt(&mut self, conditions: &Conditions) {
        self.conditions = conditions.map(|moves| self.packed(&moves));
    }

    /// ln of the density of a whitened residual where one of the conditions is grossly wrong, and its squared length;
    /// none where it was not read.
    ///
    /// The covariance grows by one direction, and its inverse and determinant with it (Sherman and Morrison 1950).
    pub(crate) fn disregarding(
        &self,
        condition: usize,
        factor: &Factor,
        white: &Vector,
        square: f32,
    ) -> Option<(f32, f32)> {
        let moves = self.conditions.get(condition).filter(|moves| moves.iter().any(|k| *k != 0.0))?;
        let (mut along, mut length) = (0.0, 0.0);
        for (direction, white) in factor.whiten(moves).iter().zip(white) {
            along += direction * white;
            length += direction * direction;
        }
        let growth = 1.0 + GROSSLY_K * GROSSLY_K * length;
        let square = square - GROSSLY_K * GROSSLY_K * along * along / growth;
        Some((ln_student(square, self.size, factor.ln_det + libm::logf(growth)), square))
    }

    /// The channels in use, in their packed order.
    pub(crate) fn channels(&self) -> impl Iterator<Item = usize> + '_ {
        self.at.iter().take(self.size).map(|at| usize::from(*at))
    }
    pub(crate) fn size(&self) -> usize {
        self.size
    }
    pub(crate) fn uses(&self, channel: usize) -> bool {
        self.channels().any(|c| c == channel)
    }
    /// Packs a vector over all channels.
    pub(crate) fn packed(&self, v: &Vector) -> Vector {
        let mut out = [0.0; CHANNELS];
        for (out, at) in out.iter_mut().zip(self.at).take(self.size) {
            *out = v.get(usize::from(at)).copied().unwrap_or(0.0);
        }
        out
    }

    /// Factors the covariance with a spread added to every channel and others that move channels together; false where
    /// it is not positive definite.
    pub(crate) fn invert(
        &self,
        factor: &mut Factor,
        spread: &Vector,
        together: impl Iterator<Item = Vector>,
    ) -> bool {
        let n = self.size.min(CHANNELS);
        factor.matrix = self.covariance;
        let spread = self.packed(spread);
        for i in 0..n {
            factor.matrix[i][i] += spread[i] * spread[i];
        }
        for moves in together {
            let moves = self.packed(&moves);
            for (i, (row, a)) in factor.matrix.iter_mut().zip(&moves).enumerate().take(n) {
                // Its lower triangle is all that a factor is made from.
                for (cell, b) in row.iter_mut().zip(&moves).take(i + 1) {
                    *cell += a * b;
                }
            }
        }
        factor.invert(self.size)
    }
    /// A squared distance that none of the channels but one and none of the conditions can explain away: the second largest
    /// of the channels' own, each under everything that may move it.
    pub(crate) fn at_least(
        &self,
        shift: &Vector,
        spread: &Vector,
        together: impl Iterator<Item = Vector>,
    ) -> f32 {
        let mut variance = [0.0; CHANNELS];
        for moves in together {
            for (variance, moves) in variance.iter_mut().zip(moves) {
                *variance += moves * moves;
            }
        }
        let (mut first, mut second) = (0.0f32, 0.0f32);
        for (place, (at, residual)) in self.at.iter().zip(self.residual).enumerate().take(self.size) {
            let at = usize::from(*at);
            let of = |v: &Vector, i: usize| v.get(i).copied().unwrap_or(0.0);
            let own = self.covariance.get(place).map_or(1.0, |row| of(row, place));
            let [space, ambient] = self.conditions.each_ref().map(|moves| GROSSLY_K * of(moves, place));
            let spread = of(spread, at);
            let all = own + spread * spread + of(&variance, at) + space * space + ambient * ambient;
            let off = residual - of(shift, at);
            let square = off * off / all;
            second = second.max(first.min(square));
            first = first.max(square);
        }
        second
    }
    /// The residual that a shift of the expectation leaves, whitened by a factor.
    pub(crate) fn whiten(&self, factor: &Factor, shift: &Vector) -> Vector {
        let mut residual = self.residual;
        for (residual, shift) in residual.iter_mut().zip(self.packed(shift)) {
            *residual -= shift;
        }
        factor.whiten(&residual)
    }
}
