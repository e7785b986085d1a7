//! Whole numbers in place of binary32: a meter without a floating-point unit adds them in one instruction.

/// Converts a number to whole units of 2^-places, rounded to the nearest; what does not fit saturates.
///
/// Reads the bits themselves: a multiplication and a conversion cost ten times as much without a floating-point
/// unit. NaN saturates with the sign of its sign bit, so that a range check that follows refuses it.
pub(super) fn fixed(value: f32, places: u32) -> i32 {
    let bits = value.to_bits();
    let exponent = ((bits >> 23) & 0xFF) as i32;
    let mantissa = (bits & 0x007F_FFFF) | 0x0080_0000;
    let shift = exponent - 150 + places as i32;
    let magnitude = match shift {
        7.. => i32::MAX as u32,
        0..=6 => mantissa << shift,
        -24..=-1 => (mantissa + (1 << (-shift - 1))) >> -shift,
        _ => 0,
    };
    if bits >> 31 == 0 { magnitude as i32 } else { -(magnitude as i32) }
}

/// Converts whole units of 2^-places, 10 or 8, back to a number.
pub(super) fn number(value: i32, places: u32) -> f32 {
    // A power of two, so that the product is exact; a division would cost five times as much.
    value as f32 * if places == 10 { 1.0 / 1024.0 } else { 1.0 / 256.0 }
}

/// Finds the middle one of three.
pub(super) fn median(a: i32, b: i32, c: i32) -> i32 {
    a.max(b).min(a.min(b).max(c))
}

/// Finds the share of a whole number, in 1/256.
pub(super) fn share(value: i32, of_256: i32) -> i32 {
    // In two parts, so that nothing overflows.
    (value >> 8) * of_256 + (((value & 0xFF) * of_256) >> 8)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn whole_numbers_are_the_nearest_ones() {
        for value in [0.0f32, 1.0, -1.0, 0.001, 21.37, -40.002, 1320.25, 19_999.9, -119.99, 3.1e-5] {
            let expected = (f64::from(value) * 256.0).round();
            assert!((f64::from(fixed(value, 8)) - expected).abs() <= 0.5, "{value}");
        }
        assert_eq!(fixed(f32::INFINITY, 8), i32::MAX);
        assert_eq!(fixed(f32::NEG_INFINITY, 8), -i32::MAX);
        assert_eq!(fixed(f32::NAN, 10).unsigned_abs(), i32::MAX as u32);
        assert_eq!(fixed(f32::MIN_POSITIVE / 4.0, 10), 0);
        assert_eq!(number(fixed(-12.5, 8), 8), -12.5);
    }

    #[test]
    fn one_spike_never_is_the_middle() {
        assert_eq!(median(5, 900, 6), 6);
        assert_eq!(median(-900, 5, 6), 5);
        assert_eq!(median(7, 7, 1), 7);
    }
}
