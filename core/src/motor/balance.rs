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

/// Fraction of the other two lines' current below which a line carries none: a clamp shows its zero error and the field of
/// its neighbours (judged).
const NO_CURRENT_BELOW: f32 = 0.1;
/// Fraction by which the other two may differ: with one line open the same current goes in by one and out by the other.
const SAME_CURRENT_WITHIN: f32 = 0.1;
/// Fraction of the highest line voltage below which the other two show an open line of a standing motor: its winding
/// holds that terminal between the two others, at half of their voltage each (judged).
const OPEN_LINE_BELOW: f32 = 0.75;

/// Finds the line that carries no current while the other two carry the same: its position, its current, and the limit, A.
///
/// `None` where all three carry current, none does, or the other two differ, which Kirchhoff's current law forbids of a
/// motor without a neutral.
pub(super) fn missing_by_current(amps: [f32; 3]) -> Option<(usize, (f32, f32))> {
    let (line, least, [a, b]) = least_and_others(amps)?;
    let mean = 0.5 * (a + b);
    let limit = NO_CURRENT_BELOW * mean;
    (positive(mean) && least < limit && libm::fabsf(a - b) <= 2.0 * SAME_CURRENT_WITHIN * mean)
        .then_some((line, (least, limit)))
}

/// Finds the line that is open by the voltages of a standing motor: its position, the lower voltage, and the limit, V.
///
/// `volts` between lines 1-2, 2-3 and 1-3. The two that hold the open line are low together. A turning motor holds its
/// open terminal near full voltage, so that nothing is found then: the current tells.
pub(super) fn missing_by_voltage(volts: [f32; 3]) -> Option<(usize, (f32, f32))> {
    // The line that a pair leaves out is at the other end of the list, the middle one apart: 1-2 leaves out 3.
    const LEFT_OUT: [usize; 3] = [2, 0, 1];
    let [v12, v23, v13] = volts;
    let highest = v12.max(v23).max(v13);
    let position = volts.iter().position(|v| *v == highest)?;
    let limit = OPEN_LINE_BELOW * highest;
    let low = volts.iter().filter(|v| **v < limit).count();
    let least = v12.min(v23).min(v13);
    let line = LEFT_OUT.get(position).copied()?;
    (positive(highest) && least >= 0.0 && low == 2).then_some((line, (least, limit)))
}

/// The position and the value of the least of three, and the other two.
fn least_and_others([a, b, c]: [f32; 3]) -> Option<(usize, f32, [f32; 2])> {
    if ![a, b, c].iter().all(|x| x.is_finite() && *x >= 0.0) {
        return None;
    }
    Some(if a <= b && a <= c {
        (0, a, [b, c])
    } else if b <= c {
        (1, b, [a, c])
    } else {
        (2, c, [a, b])
    })
}
