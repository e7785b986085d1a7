//! Saturation: one temperature curve over pressure, indexed by the pressure's own bits.
//!
//! The exponent of a binary32 pressure, with its top mantissa bits, is the index of a piece; the rest of the mantissa
//! is the place inside it. No logarithm and no search. A piece is a polynomial of degree 5 in u = m - 1.5, where m in
//! [1, 2) runs over the piece; its ends lie on the equation of state, so that neighbours meet.

/// Bytes of one piece: two binary32 (value and slope at the middle), four 16-bit higher coefficients.
pub const PIECE: usize = 16;
/// Kelvin in one step of a 16-bit coefficient.
pub const STEP: f32 = 1.0 / 512.0;

/// One saturation curve.
#[derive(Clone, Copy, Debug)]
pub(super) struct Curve<'a> {
    pub(super) pieces: &'a [[u8; PIECE]],
    pub(super) first: u32,
    pub(super) resolution: u32,
}

/// The coefficients of one piece.
struct Piece {
    c: [f32; 6],
}

impl Piece {
    #[inline(always)]
    fn read(bytes: &[u8; PIECE]) -> Self {
        let [a0, a1, a2, a3, b0, b1, b2, b3, c0, c1, d0, d1, e0, e1, f0, f1] = *bytes;
        let high = |low, high| f32::from(i16::from_le_bytes([low, high])) * STEP;
        Self {
            c: [
                f32::from_le_bytes([a0, a1, a2, a3]),
                f32::from_le_bytes([b0, b1, b2, b3]),
                high(c0, c1),
                high(d0, d1),
                high(e0, e1),
                high(f0, f1),
            ],
        }
    }
    #[inline(always)]
    fn value(&self, u: f32) -> f32 {
        let [c0, c1, c2, c3, c4, c5] = self.c;
        c0 + u * (c1 + u * (c2 + u * (c3 + u * (c4 + u * c5))))
    }
    #[inline(always)]
    fn slope(&self, u: f32) -> f32 {
        let [_, c1, c2, c3, c4, c5] = self.c;
        c1 + u * (2.0 * c2 + u * (3.0 * c3 + u * (4.0 * c4 + u * 5.0 * c5)))
    }
}

impl Curve<'_> {
    /// Reads the temperature at a pressure; none outside the pieces.
    #[inline(always)]
    pub(super) fn temperature(&self, pressure: f32) -> Option<f32> {
        let (piece, u) = self.locate(pressure)?;
        Some(piece.value(u))
    }

    /// Finds the piece of a pressure and the place in it.
    #[inline(always)]
    fn locate(&self, pressure: f32) -> Option<(Piece, f32)> {
        let bits = pressure.to_bits();
        let shift = 23u32.wrapping_sub(self.resolution) & 31;
        let index = (bits >> shift).wrapping_sub(self.first);
        let bytes = self.pieces.get(index as usize)?;
        let u = f32::from_bits(((bits << (self.resolution & 31)) & 0x007F_FFFF) | 0x3F80_0000) - 1.5;
        Some((Piece::read(bytes), u))
    }

    /// Finds the pressure at which the curve has a temperature; none outside the pieces.
    ///
    /// The inverse of the same polynomials, so that going there and back returns to the start.
    pub(super) fn pressure(&self, temperature: f32) -> Option<f32> {
        // The piece whose middle is the last one not warmer; the answer lies in it or in the next.
        let middle = |bytes: &[u8; PIECE]| f32::from_le_bytes([bytes[0], bytes[1], bytes[2], bytes[3]]);
        let warmer = self.pieces.iter().take_while(|bytes| middle(bytes) <= temperature).count();
        let mut index = warmer.saturating_sub(1);
        let mut piece = Piece::read(self.pieces.get(index)?);
        if temperature > piece.value(0.5) {
            if let Some(next) = self.pieces.get(index + 1) {
                index += 1;
                piece = Piece::read(next);
            }
        }
        let mut u = (temperature - piece.value(0.0)) / piece.slope(0.0).max(1e-3);
        for _ in 0..4 {
            u = u.clamp(-0.5, 0.5);
            u += (temperature - piece.value(u)) / piece.slope(u).max(1e-3);
        }
        let u = u.clamp(-0.5, 0.5);
        // The bits of the pressure: piece index above, mantissa below. u = 0.5 is the start of the next piece.
        let mantissa = ((u + 0.5) * 8_388_608.0) as u32;
        let bits = (((index as u32).wrapping_add(self.first)) << (23u32.wrapping_sub(self.resolution) & 31))
            .wrapping_add(mantissa >> (self.resolution & 31));
        Some(f32::from_bits(bits))
    }
}
