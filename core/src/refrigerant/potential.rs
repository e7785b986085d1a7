//! One reduced Helmholtz potential for each phase, from which density, enthalpy and entropy follow.
//!
//! a/(R T) is the potential, d the reduced density, tau = M/T with M the middle of the temperatures, and t = tau less its
//! middle. The vapor's potential is ln d + Q(t) + A(t, d): Q is the ideal gas with the reference state in it, the rows
//! of A are powers of d from the first on, as virial coefficients are. The liquid's is one polynomial with all of it in,
//! whose rows are powers of d less the middle of its densities. Both are fitted as a whole. All three properties come
//! from derivatives of one function, so the Maxwell relations hold by construction.

use super::table::{FIXED, at, number};

/// The fixed part of a table.
pub(super) type Fixed = [u8; FIXED];

/// Coefficients of the vapor's row that does not depend on density.
pub const IDEAL_TERMS: usize = 8;
/// Degrees in t of the vapor's rows d^1, d^2, ...
pub const VAPOR_ROWS: [usize; 5] = [5, 4, 2, 1, 0];
/// Coefficients of the vapor's rows.
pub const VAPOR_TERMS: usize = 17;
/// Degrees in t of the liquid's rows, from power 0 on.
pub const LIQUID_ROWS: [usize; 6] = [5, 4, 3, 1, 0, 0];
/// Coefficients of the liquid.
pub const LIQUID_TERMS: usize = 19;
/// Coefficients of the polynomial that starts the liquid density.
pub const START_TERMS: usize = 5;

/// Degrees in the dew temperature of the rows of a polynomial that guesses a vapor's temperature.
pub const GUESS_ROWS: [usize; 4] = [4, 3, 2, 1];
/// Coefficients of a polynomial that guesses a vapor's temperature.
pub const GUESS_TERMS: usize = 14;

/// Newton steps taken at most.
pub(super) const STEPS: u32 = 8;

/// A temperature as the potentials take it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Place {
    pub(super) tau: f32,
    pub(super) t: f32,
}

impl Place {
    /// Places a temperature in K.
    #[inline(always)]
    pub(super) fn of(fixed: &Fixed, temperature: f32) -> Self {
        let tau = number(fixed, at::T_CENTER) / temperature;
        Self { tau, t: tau - number(fixed, at::TAU_CENTER) }
    }
}

/// A solved state without its units.
#[derive(Clone, Copy, Debug)]
pub(super) struct Solved {
    /// Reduced density.
    pub(super) d: f32,
    /// h/(R T).
    pub(super) enthalpy: f32,
    /// s/R.
    pub(super) entropy: f32,
}

/// Natural logarithm of a positive normal number, to 3e-7.
///
/// Source: the series of artanh, ln m = 2 artanh((m-1)/(m+1)), after taking out the exponent; the last
/// coefficient, 2/5 in the series, takes over the terms after it.
#[inline(always)]
pub(crate) fn logarithm(x: f32) -> f32 {
    let bits = x.to_bits();
    // The exponent where it stands, so taken that the mantissa lies in [sqrt(1/2), sqrt(2)).
    let exponent = bits.wrapping_sub(0x3F35_04F3) & 0xFF80_0000;
    let m = f32::from_bits(bits.wrapping_sub(exponent));
    let s = (m - 1.0) / (m + 1.0);
    let s2 = s * s;
    let series = s * (2.0 + s2 * (2.0 / 3.0 + s2 * 0.41));
    exponent as i32 as f32 * (core::f32::consts::LN_2 / 8_388_608.0) + series
}
