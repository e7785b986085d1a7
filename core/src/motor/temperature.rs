//! Resistance of a winding at another temperature, and the temperature that a rise of resistance tells.

use crate::estimate::Estimate;
use crate::normal::{combine, positive, usable};

/// Constant of copper, degC (IEEE 112).
pub const COPPER_IEEE_112_C: f32 = 234.5;
/// Constant of copper, degC (IEC 60034-1).
pub const COPPER_IEC_60034_C: f32 = 235.0;
/// Constant of aluminium, degC (IEC 60034-1).
pub const ALUMINIUM_C: f32 = 225.0;

/// Computes the resistance at `to_c` of a winding measured at `from_c`, ohm.
///
/// R2/R1 = (T2 + k)/(T1 + k), with the constant `k_c` of the metal. `None` where an input is not finite, the
/// resistance is negative, or a temperature lies at or below -k. Source: IEEE 112 and IEC 60034-1.
pub fn refer(resistance_ohm: Estimate, from_c: Estimate, to_c: f32, k_c: f32) -> Option<Estimate> {
    let (from, to) = (from_c.value + k_c, to_c + k_c);
    if !usable(resistance_ohm)
        || !usable(from_c)
        || resistance_ohm.value < 0.0
        || !positive(from)
        || !positive(to)
    {
        return None;
    }
    let value = resistance_ohm.value * to / from;
    Estimate::new(value, combine(&[resistance_ohm.u * to / from, value * from_c.u / from]))
}

/// Computes the temperature of a winding from its resistance cold and hot, degC.
///
/// T2 = R2/R1 (T1 + k) - k. The uncertainty carries both resistances and the cold temperature: 1 % of a resistance
/// is about 3 K. `None` where an input is not finite or a resistance is not positive. Source: IEC 60034-1, 8.6.2.
pub fn by_rise_of_resistance(
    cold_ohm: Estimate,
    cold_c: Estimate,
    hot_ohm: Estimate,
    k_c: f32,
) -> Option<Estimate> {
    let base = cold_c.value + k_c;
    if !usable(cold_ohm) || !usable(cold_c) || !usable(hot_ohm) {
        return None;
    }
    if !positive(cold_ohm.value) || !positive(hot_ohm.value) || !positive(base) {
        return None;
    }
    let ratio = hot_ohm.value / cold_ohm.value;
    let relative = combine(&[cold_ohm.u / cold_ohm.value, hot_ohm.u / hot_ohm.value]);
    Estimate::new(ratio * base - k_c, combine(&[ratio * base * relative, ratio * cold_c.u]))
}
