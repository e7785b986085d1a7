//! The binary form of one refrigerant's table, the same in flash, in a file and in the program.
//!
//! Little-endian; all numbers are binary32 unless said. A fixed part of [`FIXED`] bytes (magic, version, length,
//! CRC-32 of everything after the checksum, counts, constants, polynomial coefficients), then the pieces of the dew
//! curve, the pieces of the bubble curve (none when the two are one), then the designation and each component as a
//! length byte, its name and, for a component, its mass fraction.

use super::TableError;
pub use super::curve::{PIECE, STEP};
pub use super::potential::{
    GUESS_ROWS, GUESS_TERMS, IDEAL_TERMS, LIQUID_ROWS, LIQUID_TERMS, START_TERMS, VAPOR_ROWS, VAPOR_TERMS,
};

/// The first bytes of every table.
pub const MAGIC: [u8; 4] = *b"RMWT";
/// The format version this library reads and writes.
pub const VERSION: u16 = 3;
/// What stands for a number that no source gives; every such number is positive or 0.
pub const UNKNOWN: f32 = -1.0;

/// Coefficients of the rise of a blend's temperature between bubble and dew.
pub const DOME_TEMPERATURE_TERMS: usize = 12;
/// Coefficients of a blend's quality between bubble and dew.
pub const DOME_QUALITY_TERMS: usize = 6;

/// Offsets of the fixed part.
pub mod at {
    use super::{
        DOME_QUALITY_TERMS, DOME_TEMPERATURE_TERMS, GUESS_TERMS, IDEAL_TERMS, LIQUID_TERMS, START_TERMS,
        VAPOR_TERMS,
    };
    /// Format version, u16.
    pub const VERSION: usize = 4;
    /// Length of the whole table in bytes, u16.
    pub const LENGTH: usize = 6;
    /// CRC-32 (IEEE 802.3) of the bytes from [`FLAGS`] on, u32.
    pub const CHECKSUM: usize = 8;
    /// Bit 0: a binary pair is estimated; bit 1: one curve serves as dew and bubble; bit 2: the shape of the dome between
    /// bubble and dew is not good enough to be used.
    pub const FLAGS: usize = 12;
    /// Number of the safety class, 0 for none.
    pub const SAFETY: usize = 13;
    /// Number of components.
    pub const COMPONENTS: usize = 14;
    /// Number of pieces of the dew curve.
    pub const DEW_PIECES: usize = 15;
    /// Number of pieces of the bubble curve, 0 where the dew curve serves as both.
    pub const BUBBLE_PIECES: usize = 16;
    /// How the octaves of the dew curve below the last are indexed, u16.
    ///
    /// By how many bits those of a share of the highest pressure are shifted right, plus 32 times what is then taken off.
    pub const DEW_OCTAVES: usize = 18;
    /// How the parts of the dew curve's last octave are indexed, u16.
    pub const DEW_LAST: usize = 20;
    /// How the octaves of the bubble curve below the last are indexed, u16.
    pub const BUBBLE_OCTAVES: usize = 22;
    /// How the parts of the bubble curve's last octave are indexed, u16.
    pub const BUBBLE_LAST: usize = 24;
    /// Molar mass, g/mol.
    pub const MOLAR_MASS: usize = 28;
    /// Critical temperature, K.
    pub const CRITICAL_TEMPERATURE: usize = 32;
    /// Critical pressure, Pa.
    pub const CRITICAL_PRESSURE: usize = 36;
    /// Bubble temperature at 101,325 Pa, K.
    pub const NORMAL_BOILING: usize = 40;
    /// Dew minus bubble temperature at 101,325 Pa, K.
    pub const GLIDE: usize = 44;
    /// Lowest saturation temperature, K.
    pub const T_MIN: usize = 48;
    /// Highest saturation temperature, K.
    pub const T_MAX: usize = 52;
    /// Dew pressure at the lowest temperature, Pa.
    pub const DEW_P_MIN: usize = 56;
    /// Dew pressure at the highest temperature, Pa.
    pub const DEW_P_MAX: usize = 60;
    /// Bubble pressure at the lowest temperature, Pa.
    pub const BUBBLE_P_MIN: usize = 64;
    /// Bubble pressure at the highest temperature, Pa.
    pub const BUBBLE_P_MAX: usize = 68;
    /// Specific gas constant, J/(kg K).
    pub const GAS_CONSTANT: usize = 72;
    /// Temperature at the middle of the potentials, K.
    pub const T_CENTER: usize = 76;
    /// Density that reduces the potentials, kg/m3.
    pub const RHO_REDUCING: usize = 80;
    /// T_CENTER over the temperature, at the middle of its range.
    pub const TAU_CENTER: usize = 84;
    /// Reduced density at the middle of the liquid fit.
    pub const LIQUID_CENTER: usize = 88;
    /// What brings a dew pressure to a share of the highest, 1/Pa.
    pub const DEW_SCALE: usize = 92;
    /// What brings a bubble pressure to a share of the highest, 1/Pa.
    pub const BUBBLE_SCALE: usize = 96;
    /// Standard uncertainty of saturation temperatures, K: of the model, not of the fit to it.
    pub const SATURATION_UNCERTAINTY: usize = 100;
    /// Global warming potential over 100 years, IPCC's fifth assessment report.
    pub const GWP_AR5: usize = 104;
    /// Global warming potential over 100 years, IPCC's sixth assessment report.
    pub const GWP_AR6: usize = 108;
    /// Ozone depletion potential, R-11 = 1.
    pub const ODP: usize = 112;
    /// Atmospheric life of a pure substance, years.
    pub const LIFE: usize = 116;
    /// Rise of a blend's temperature between bubble and dew: four powers of the share by three of the dew temperature.
    pub const DOME_TEMPERATURE: usize = 120;
    /// Quality of a blend between bubble and dew: two powers of the share by three of the dew temperature.
    pub const DOME_QUALITY: usize = DOME_TEMPERATURE + 4 * DOME_TEMPERATURE_TERMS;
    /// Ideal-gas polynomial.
    pub const IDEAL: usize = DOME_QUALITY + 4 * DOME_QUALITY_TERMS;
    /// Residual polynomial of the vapor.
    pub const VAPOR: usize = IDEAL + 4 * IDEAL_TERMS;
    /// Residual polynomial of the liquid.
    pub const LIQUID: usize = VAPOR + 4 * VAPOR_TERMS;
    /// Polynomial of the liquid density from which its solution starts.
    pub const START: usize = LIQUID + 4 * LIQUID_TERMS;
    /// Middle of h/(R M), then the polynomial that guesses a vapor's temperature from enthalpy.
    pub const ENTHALPY_GUESS: usize = START + 4 * START_TERMS;
    /// Middle of s/R + ln(share of the highest pressure), then the polynomial from entropy.
    pub const ENTROPY_GUESS: usize = ENTHALPY_GUESS + 4 + 4 * GUESS_TERMS;
    /// End of the fixed part.
    pub const END: usize = ENTROPY_GUESS + 4 + 4 * GUESS_TERMS;
}

/// Bytes of the fixed part.
pub const FIXED: usize = at::END;
/// Bytes of a guess: the middle of its variable and its polynomial.
const GUESS: usize = 4 + 4 * GUESS_TERMS;
/// The part of a table that guesses a vapor's temperature.
pub(super) type Guess = [u8; GUESS];

/// A table taken apart into its fixed part, its curves and its names.
#[derive(Clone, Copy, Debug)]
pub(super) struct Parts<'a> {
    pub(super) fixed: &'a [u8; FIXED],
    pub(super) dew: &'a [[u8; PIECE]],
    pub(super) bubble: &'a [[u8; PIECE]],
    pub(super) designation: &'a str,
    pub(super) components: &'a [u8],
}

/// Reads a binary32 at an offset of the fixed part or of a part of it.
#[inline(always)]
pub(super) const fn number<const N: usize>(fixed: &[u8; N], offset: usize) -> f32 {
    // Every offset lies inside; what lay beyond would read 0, because a meter has nobody to tell of a panic.
    match fixed.split_at_checked(offset) {
        Some((_, rest)) => match rest.first_chunk::<4>() {
            Some(bytes) => f32::from_le_bytes(*bytes),
            None => 0.0,
        },
        None => 0.0,
    }
}

/// Reads a u16 at an offset of the fixed part.
#[inline(always)]
pub(super) const fn short(fixed: &[u8; FIXED], offset: usize) -> u16 {
    match fixed.split_at_checked(offset) {
        Some((_, rest)) => match rest.first_chunk::<2>() {
            Some(bytes) => u16::from_le_bytes(*bytes),
            None => 0,
        },
        None => 0,
    }
}

/// Reads the guess at an offset of the fixed part.
#[inline(always)]
pub(super) fn guess(fixed: &[u8; FIXED], offset: usize) -> &Guess {
    // Every offset lies inside, as above.
    fixed.get(offset..).and_then(|rest| rest.first_chunk()).unwrap_or(&[0; GUESS])
}

/// Takes a table apart after checking its magic, version, length and layout, not its checksum or its numbers.
pub(super) const fn split(bytes: &[u8]) -> Result<Parts<'_>, TableError> {
    let Some((fixed, rest)) = bytes.split_first_chunk::<FIXED>() else {
        return Err(match bytes.first_chunk::<8>() {
            Some([b'R', b'M', b'W', b'T', _, _, low, high]) => {
                TableError::Length { stated: u16::from_le_bytes([*low, *high]) as usize, given: bytes.len() }
            }
            _ => TableError::NotATable,
        });
    };
    if !matches!(fixed.first_chunk::<4>(), Some(b"RMWT")) {
        return Err(TableError::NotATable);
    }
    let found = short(fixed, at::VERSION);
    if found != VERSION {
        return Err(TableError::Version { found });
    }
    let stated = short(fixed, at::LENGTH) as usize;
    if stated != bytes.len() {
        return Err(TableError::Length { stated, given: bytes.len() });
    }
    let Some((dew, rest)) = rest.split_at_checked(fixed[at::DEW_PIECES] as usize * PIECE) else {
        return Err(TableError::Content);
    };
    let Some((bubble, rest)) = rest.split_at_checked(fixed[at::BUBBLE_PIECES] as usize * PIECE) else {
        return Err(TableError::Content);
    };
    let Some((length, rest)) = rest.split_first() else {
        return Err(TableError::Content);
    };
    let Some((designation, components)) = rest.split_at_checked(*length as usize) else {
        return Err(TableError::Content);
    };
    let Ok(designation) = core::str::from_utf8(designation) else {
        return Err(TableError::Content);
    };
    let dew = dew.as_chunks::<PIECE>().0;
    let one_curve = fixed[at::FLAGS] & 2 != 0;
    let bubble = if one_curve { dew } else { bubble.as_chunks::<PIECE>().0 };
    if dew.is_empty() || bubble.is_empty() {
        return Err(TableError::Content);
    }
    Ok(Parts { fixed, dew, bubble, designation, components })
}

/// Checks that the names are whole and that every number of the fixed part and of the curves is finite.
pub(super) fn verify(parts: &Parts<'_>) -> Result<(), TableError> {
    let (numbers, _) = parts.fixed.as_chunks::<4>();
    if numbers.iter().skip(at::MOLAR_MASS / 4).any(|n| !f32::from_le_bytes(*n).is_finite()) {
        return Err(TableError::Content);
    }
    for piece in parts.dew.iter().chain(parts.bubble) {
        let [a, b, c, d, e, f, g, h, ..] = *piece;
        if !f32::from_le_bytes([a, b, c, d]).is_finite() || !f32::from_le_bytes([e, f, g, h]).is_finite() {
            return Err(TableError::Content);
        }
    }
    for offset in [
        at::MOLAR_MASS,
        at::CRITICAL_TEMPERATURE,
        at::CRITICAL_PRESSURE,
        at::GAS_CONSTANT,
        at::T_MIN,
        at::T_CENTER,
        at::RHO_REDUCING,
        at::DEW_P_MIN,
        at::BUBBLE_P_MIN,
        at::DEW_SCALE,
        at::BUBBLE_SCALE,
    ] {
        if number(parts.fixed, offset) <= 0.0 {
            return Err(TableError::Content);
        }
    }
    let mut rest = parts.components;
    for _ in 0..parts.fixed[at::COMPONENTS] {
        rest = component(rest).ok_or(TableError::Content)?.2;
    }
    if rest.is_empty() { Ok(()) } else { Err(TableError::Content) }
}

/// Reads one component: its name, its mass fraction, and the bytes after it.
pub(super) fn component(bytes: &[u8]) -> Option<(&str, f32, &[u8])> {
    let (length, rest) = bytes.split_first()?;
    let (name, rest) = rest.split_at_checked(usize::from(*length))?;
    let (fraction, rest) = rest.split_first_chunk::<4>()?;
    Some((core::str::from_utf8(name).ok()?, f32::from_le_bytes(*fraction), rest))
}

/// Computes the CRC-32 of IEEE 802.3 (reflected polynomial 0xEDB88320).
pub fn checksum(bytes: &[u8]) -> u32 {
    let mut crc = !0u32;
    for byte in bytes {
        crc ^= u32::from(*byte);
        for _ in 0..8 {
            crc = (crc >> 1) ^ (0xEDB8_8320 & (crc & 1).wrapping_neg());
        }
    }
    !crc
}
