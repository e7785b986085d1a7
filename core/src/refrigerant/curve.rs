//! Saturation: one temperature curve over pressure, indexed by the pressure's own bits.
//!
//! The pressure is brought to a share of the curve's highest pressure. The exponent of that binary32 is the index of a
//! piece, one an octave; the last octave, where the curve bends most, may be cut finer by the top mantissa bits. The
//! rest of the mantissa is the place inside a piece. No logarithm and no search. A piece is a polynomial of degree 5 in
//! v = 2 m - 3, where m in [1, 2) runs over the piece; its ends lie on the equation of state, so that neighbours meet.

use super::limit::{at_least, between};

/// Bytes of one piece: two binary32 (value and slope at the middle), four 16-bit higher coefficients.
pub const PIECE: usize = 16;
/// Kelvin in one step of a 16-bit coefficient.
pub const STEP: f32 = 1.0 / 2048.0;

/// One saturation curve.
#[derive(Clone, Copy, Debug)]
pub(super) struct Curve<'a> {
    pub(super) pieces: &'a [[u8; PIECE]],
    /// One over the highest pressure, less a few roundings.
    pub(super) scale: f32,
    /// How the octaves below the last are indexed: by how many bits those of a share are shifted right, plus 32 times
    /// what is then taken off.
    pub(super) octaves: u16,
    /// How the parts of the last octave are indexed.
    pub(super) last: u16,
}

/// The bits of one half: where the last octave of shares begins.
const HALF: u32 = 0x3F00_0000;

/// The coefficients of one piece.
struct Piece {
    low: [f32; 2],
    /// In steps.
    high: [f32; 4],
}

impl Piece {
    #[inline(always)]
    fn read(bytes: &[u8; PIECE]) -> Self {
        let [a0, a1, a2, a3, b0, b1, b2, b3, c0, c1, d0, d1, e0, e1, f0, f1] = *bytes;
        let high = |low, high| f32::from(i16::from_le_bytes([low, high]));
        Self {
            low: [f32::from_le_bytes([a0, a1, a2, a3]), f32::from_le_bytes([b0, b1, b2, b3])],
            high: [high(c0, c1), high(d0, d1), high(e0, e1), high(f0, f1)],
        }
    }
    #[inline(always)]
    fn value(&self, v: f32) -> f32 {
        let [c0, c1] = self.low;
        let [k2, k3, k4, k5] = self.high;
        c0 + v * (c1 + v * STEP * (k2 + v * (k3 + v * (k4 + v * k5))))
    }
    #[inline(always)]
    fn slope(&self, v: f32) -> f32 {
        let [_, c1] = self.low;
        let [k2, k3, k4, k5] = self.high;
        c1 + v * STEP * (2.0 * k2 + v * (3.0 * k3 + v * (4.0 * k4 + v * 5.0 * k5)))
    }
}

impl Curve<'_> {
    /// Reads the temperature at a pressure; none outside the pieces.
    #[inline(always)]
    pub(super) fn temperature(&self, pressure: f32) -> Option<f32> {
        let (piece, v) = self.locate(pressure)?;
        Some(piece.value(v))
    }

    /// Finds the piece of a pressure and the place in it.
    #[inline(always)]
    fn locate(&self, pressure: f32) -> Option<(Piece, f32)> {
        let bits = (pressure * self.scale).to_bits();
        let word = u32::from(if bits >= HALF { self.last } else { self.octaves });
        let index = (bits >> (word & 31)).wrapping_sub(word >> 5);
        let bytes = self.pieces.get(index as usize)?;
        // The bits below the index come to the top of a mantissa: a number in [2, 4), less 3. The few bits under them
        // are the top of the index, less than a rounding.
        let v = f32::from_bits((bits.rotate_right(word & 31) >> 9) | 0x4000_0000) - 3.0;
        Some((Piece::read(bytes), v))
    }

    /// Finds the pressure at which the curve has a temperature; none outside the pieces.
    ///
    /// The inverse of the same polynomials, so that going there and back returns to the start.
    pub(super) fn pressure(&self, temperature: f32) -> Option<f32> {
        // The piece whose middle is the last one not warmer; the answer lies in it or in the next.
        let middle = |bytes: &[u8; PIECE]| f32::from_le_bytes([bytes[0], bytes[1], bytes[2], bytes[3]]);
        let warmer = self.pieces.iter().take_while(|bytes| middle(bytes) <= temperature).count();
        let mut index = warmer.saturating_sub(1);
        let piece = loop {
            let piece = Piece::read(self.pieces.get(index)?);
            if temperature <= piece.value(1.0) || index + 1 >= self.pieces.len() {
                break piece;
            }
            index += 1;
        };
        let mut v = 0.0;
        for _ in 0..5 {
            v = between(-1.0, v + (temperature - piece.value(v)) / at_least(1e-3, piece.slope(v)), 1.0);
        }
        // The bits of the pressure: piece index above, mantissa below. v = 1 is the start of the next piece.
        let mantissa = ((v + 1.0) * 4_194_304.0) as u32;
        let index = index as u32;
        let above = |word: u16| index.wrapping_add(u32::from(word >> 5)) << (word & 31);
        let octave = above(self.octaves);
        let (bits, word) = if octave < HALF { (octave, self.octaves) } else { (above(self.last), self.last) };
        let bits = bits.wrapping_add(mantissa >> (23u32.wrapping_sub(u32::from(word)) & 31));
        Some(f32::from_bits(bits) / self.scale)
    }
}
