//! Whether what was done helped: readings before and after it, held against the healthy machine.

use crate::cause::Cause;
use crate::diagnosis::{CLEAR_AT, Diagnosis};
use crate::estimate::Estimate;
use crate::expected::Expected;
use crate::field::choice;
use crate::measurement::Readings;
use crate::readings::Uncertainty;

choice! {
    /// What a repair changed.
    Change {
        /// The machine is cleared after it.
        Worked = 1 "worked",
        /// The readings are far nearer to a healthy machine's, and it is not cleared.
        Better = 2 "better",
        /// The readings say the same as before.
        Unchanged = 3 "unchanged",
        /// The readings are further from a healthy machine's.
        Worse = 4 "worse",
    }
}

/// Mean squared distance, over that before, below which readings are far nearer (judged: half the way in every reading
/// is a quarter of the squared distance).
const NEARER: f32 = 0.4;
/// The same above which they are further.
const FURTHER: f32 = 2.0;
/// Mean squared distance that a healthy machine shows by itself.
const OWN: f32 = 1.0;

/// One reading before and after, what a healthy machine shows, and the instrument's standard uncertainty.
type Row = (Option<f32>, Option<f32>, Option<Estimate>, f32);

/// Judges the readings after a change against those before it on the same machine and day.
///
/// Nothing where no reading that a healthy machine is known by was taken both times.
pub(crate) fn judge(
    before: &Readings,
    after: &Readings,
    uncertainty: &Uncertainty,
    expected: &Expected,
    diagnosis: &Diagnosis,
) -> Option<Change> {
    let line = uncertainty.line_k();
    let pressure = |kpa: Option<f32>| kpa.map_or(0.0, |kpa| uncertainty.pressure_kpa(kpa));
    let rows: [Row; 7] = [
        (
            before.suction_pressure_kpa,
            after.suction_pressure_kpa,
            expected.suction_pressure_kpa,
            pressure(after.suction_pressure_kpa),
        ),
        (
            before.discharge_pressure_kpa,
            after.discharge_pressure_kpa,
            expected.discharge_pressure_kpa,
            pressure(after.discharge_pressure_kpa),
        ),
        (before.discharge_line_c, after.discharge_line_c, expected.discharge_line_c, line),
        (before.liquid_line_c, after.liquid_line_c, expected.liquid_line_c, line),
        (before.supply_air_c, after.supply_air_c, expected.supply_air_c, uncertainty.air_k()),
        (
            before.condenser_exhaust_c,
            after.condenser_exhaust_c,
            expected.condenser_exhaust_c,
            uncertainty.air_k(),
        ),
        (
            before.current_a,
            after.current_a,
            expected.current_a,
            after.current_a.map_or(0.0, |a| a * uncertainty.current_fraction()),
        ),
    ];
    let (mut was, mut is, mut count) = (0.0, 0.0, 0.0);
    for (before, after, expected, instrument) in rows {
        if let (Some(before), Some(after), Some(expected)) = (before, after, expected) {
            let variance = (expected.u * expected.u + instrument * instrument).max(1.0e-6);
            was += (before - expected.value) * (before - expected.value) / variance;
            is += (after - expected.value) * (after - expected.value) / variance;
            count += 1.0;
        }
    }
    if count < 1.0 {
        return None;
    }
    let healthy = diagnosis.causes.iter().find(|c| c.cause == Cause::None).map_or(0.0, |c| c.probability);
    let ratio = (is / count).max(OWN) / (was / count).max(OWN);
    Some(if healthy >= CLEAR_AT {
        Change::Worked
    } else if ratio < NEARER {
        Change::Better
    } else if ratio > FURTHER {
        Change::Worse
    } else {
        Change::Unchanged
    })
}
