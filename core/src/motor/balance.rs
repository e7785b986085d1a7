//! Balance of three phases: voltage, current and winding resistance, and what unbalance costs.

use crate::normal::positive;

/// Voltage unbalance above which the supply is put right before the motor is judged, percent (common practice).
///
/// NEMA MG 1 derates from 1 % and forbids running above 5 %.
pub const VOLTAGE_LIMIT_PERCENT: f32 = 2.0;
/// Current unbalance that asks for a look at supply and contactor, percent (common practice).
pub const CURRENT_LIMIT_PERCENT: f32 = 10.0;
/// Unbalance of winding resistance that asks for a closer look, percent; no standard sets one (common practice 2-5 %).
pub const RESISTANCE_LIMIT_PERCENT: f32 = 5.0;

/// Computes the unbalance of three values, percent: the largest distance from their mean, over the mean.
///
/// `None` where a value is not a finite number at or above zero, or all are zero. Source: NEMA MG 1, 14.36.
pub fn unbalance_percent(values: [f32; 3]) -> Option<f32> {
    if values.iter().any(|v| !v.is_finite() || *v < 0.0) {
        return None;
    }
    // Thirds before the sum, so that three huge values do not overflow.
    let mean: f32 = values.iter().map(|v| v / 3.0).sum();
    if !positive(mean) {
        return None;
    }
    let farthest = values.iter().map(|v| libm::fabsf(v - mean)).fold(0.0, f32::max);
    Some(100.0 * (farthest / mean)).filter(|p| p.is_finite())
}

/// Computes the fraction of its rating that a three-phase motor may carry at a voltage unbalance in percent.
///
/// `None` above 5 %, where the motor should not run at all, and for what is not a number at or above zero.
/// Source: NEMA MG 1, 14.36, figure 14-1, read at whole percents (from memory, two digits), linear between.
pub fn derating(unbalance_percent: f32) -> Option<f32> {
    const AT: [(f32, f32); 5] = [(1.0, 1.0), (2.0, 0.95), (3.0, 0.88), (4.0, 0.82), (5.0, 0.75)];
    if unbalance_percent.is_nan() || !(0.0..=5.0).contains(&unbalance_percent) {
        return None;
    }
    let mut factor = 1.0;
    for ((x0, y0), (x1, y1)) in AT.iter().zip(AT.iter().skip(1)) {
        if unbalance_percent > *x0 {
            factor = y0 + (y1 - y0) * ((unbalance_percent - x0) / (x1 - x0)).min(1.0);
        }
    }
    Some(factor)
}

/// Tells the range of current unbalance, percent, that a voltage unbalance alone explains.
///
/// Six to ten times the voltage unbalance (NEMA MG 1, 14.36, from memory); more comes from motor or contactor.
/// `None` for what is not a finite number at or above zero.
pub fn current_unbalance_explained(voltage_unbalance_percent: f32) -> Option<(f32, f32)> {
    let (low, high) = (6.0 * voltage_unbalance_percent, 10.0 * voltage_unbalance_percent);
    (voltage_unbalance_percent >= 0.0 && high.is_finite()).then_some((low, high))
}
