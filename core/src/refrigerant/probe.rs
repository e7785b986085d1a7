//! A look at what a table from outside answers, before anyone relies on it.
//!
//! A checksum tells that bytes arrived whole, not that they describe a fluid. The curves and both phases are asked all
//! over the table, closely enough that a piece of a curve or a potential that is off is met.

use super::{MARGIN, MAX_SUBCOOLING, MAX_SUPERHEAT, PropertyError, Refrigerant, State, TableError};
use crate::quantity::{Pressure, TemperatureDifference};

/// From one probed pressure to the next: 32 in an octave, because the pieces of a curve's last octave are short.
const STEP: f32 = 1.021_897_1;
/// Most probed pressures: sixteen octaves, more than any refrigerant's table covers.
const MOST_STEPS: usize = 512;
/// How far dew may lie below bubble: both curves are fits with a worst error of 0.005 K each.
const ROUNDING_K: f32 = 0.01;
/// How far the mass fractions may be from one in sum; published compositions have four digits.
const FRACTIONS: f32 = 1.0e-3;
/// Most that a curve's temperature may rise from one probed pressure to the next, as a ratio.
///
/// By Clausius and Clapeyron it is STEP to the power of R T / L, which is 0.05 to 0.15 for refrigerants far from and near
/// their critical points (judged); this leaves twice as much.
const STEEPEST: f32 = 1.007;
/// How far a curve's ends may be from the temperatures that the table states, K.
const END_K: f32 = 0.5;
/// How far a pressure read backwards may be from the one it came from, as a share.
const BACK: f32 = 0.005;
/// Kelvin that the outermost asked states lie inside what is answered, so that rounding does not put them outside.
const INSIDE_K: f32 = 0.01;
/// Superheats at which vapor is asked, K, from one end of what is answered to the other.
const SUPERHEATS_K: [f32; 6] =
    [INSIDE_K - MARGIN.kelvins(), 0.0, 10.0, 40.0, 90.0, MAX_SUPERHEAT.kelvins() - INSIDE_K];
/// Subcoolings at which liquid is asked, K.
const SUBCOOLINGS_K: [f32; 5] =
    [INSIDE_K - MARGIN.kelvins(), 0.0, 10.0, 30.0, MAX_SUBCOOLING.kelvins() - INSIDE_K];
/// Lowest and highest temperature of a table, K: helium boils at 4 K and no refrigerant is used above 700 K.
const TEMPERATURES_K: (f32, f32) = (4.0, 700.0);

/// Checks that a table answers as a fluid does.
///
/// Errors: content, where mass fractions do not sum to one, a curve falls, dew lies below bubble, or a density,
/// enthalpy or entropy is none that a vapor or a liquid can have.
pub(super) fn probe(refrigerant: &Refrigerant<'_>) -> Result<(), TableError> {
    if composed(refrigerant) && saturated(refrigerant) { Ok(()) } else { Err(TableError::Content) }
}

fn composed(refrigerant: &Refrigerant<'_>) -> bool {
    let mut sum = 0.0;
    for component in refrigerant.composition() {
        // Written so that NaN fails.
        if !(component.mass_fraction > 0.0) {
            return false;
        }
        sum += component.mass_fraction;
    }
    sum > 1.0 - FRACTIONS && sum < 1.0 + FRACTIONS
}

fn saturated(refrigerant: &Refrigerant<'_>) -> bool {
    let (coldest, warmest) = refrigerant.temperature_range();
    let (coldest, warmest) = (coldest.kelvins(), warmest.kelvins());
    if !(coldest >= TEMPERATURES_K.0 && coldest < warmest && warmest <= TEMPERATURES_K.1) {
        return false;
    }
    // Each curve begins at the lowest temperature, goes up without a jump, and ends at the highest.
    let begins = coldest - END_K;
    let goes_on = |from: f32, to: f32| to > from && to <= from * STEEPEST;
    let ends = |at: f32| (at - warmest).abs() <= END_K;
    let (mut dew_k, mut light, mut bubble_k) = (begins, 0.0, begins);
    // Where a blend has glide, each curve reaches over pressures that the other does not.
    walk(refrigerant.dew_pressure_range(), |p| {
        let (dew, density) = vapor(refrigerant, p)?;
        let rises = goes_on(dew_k, dew) && density > light;
        (dew_k, light) = (dew, density);
        Some(rises)
    }) && ends(dew_k)
        && walk(refrigerant.bubble_pressure_range(), |p| {
            let bubble = liquid(refrigerant, p)?;
            let rises = goes_on(bubble_k, bubble);
            bubble_k = bubble;
            Some(rises)
        })
        && ends(bubble_k)
        && walk(refrigerant.pressure_range(), |p| both(refrigerant, p).ok())
}

/// Whether something holds at every probed pressure of a range; what cannot be told does not hold.
fn walk((low, high): (Pressure, Pressure), mut holds: impl FnMut(Pressure) -> Option<bool>) -> bool {
    if !(low.pascals() > 0.0 && low < high) {
        return false;
    }
    let mut pressure = low;
    for _ in 0..MOST_STEPS {
        if holds(pressure) != Some(true) {
            return false;
        }
        if pressure >= high {
            return true;
        }
        let next = Pressure::from_pascals(pressure.pascals() * STEP);
        pressure = if next < high { next } else { high };
    }
    false
}

/// Gives the dew temperature in K and the density of saturated vapor, where vapor answers as vapor does.
fn vapor(refrigerant: &Refrigerant<'_>, pressure: Pressure) -> Option<(f32, f32)> {
    let dew = refrigerant.dew_temperature(pressure).ok()?;
    let sound = leads_back(refrigerant.dew_pressure(dew), pressure)
        && SUPERHEATS_K.iter().all(|superheat| {
            let temperature = dew + TemperatureDifference::from_kelvins(*superheat);
            refrigerant.vapor(pressure, temperature).is_ok_and(|state| is_one(&state))
        });
    let density = refrigerant.saturated_vapor(pressure).ok()?.density;
    sound.then_some((dew.kelvins(), density.kg_per_m3()))
}

/// Gives the bubble temperature in K, where liquid answers as liquid does.
fn liquid(refrigerant: &Refrigerant<'_>, pressure: Pressure) -> Option<f32> {
    let bubble = refrigerant.bubble_temperature(pressure).ok()?;
    let sound = leads_back(refrigerant.bubble_pressure(bubble), pressure)
        && SUBCOOLINGS_K.iter().all(|subcooling| {
            // Nothing is answered below the table's lowest temperature.
            refrigerant
                .liquid(pressure, bubble - TemperatureDifference::from_kelvins(*subcooling))
                .map_or(true, |state| is_one(&state))
        });
    sound.then_some(bubble.kelvins())
}

/// Tells whether vapor lies over liquid: in temperature, in lightness and in enthalpy.
fn both(refrigerant: &Refrigerant<'_>, pressure: Pressure) -> Result<bool, PropertyError> {
    let dew = refrigerant.dew_temperature(pressure)?;
    let bubble = refrigerant.bubble_temperature(pressure)?;
    let vapor = refrigerant.saturated_vapor(pressure)?;
    let liquid = refrigerant.saturated_liquid(pressure)?;
    Ok(dew.kelvins() >= bubble.kelvins() - ROUNDING_K
        && vapor.density < liquid.density
        && vapor.enthalpy > liquid.enthalpy)
}

/// Tells whether a curve read backwards leads to where it came from; its ends may round to the other side.
fn leads_back(back: Result<Pressure, PropertyError>, from: Pressure) -> bool {
    match back {
        Ok(p) => (p.pascals() - from.pascals()).abs() <= BACK * from.pascals(),
        Err(error) => matches!(error, PropertyError::Temperature { .. }),
    }
}

/// Tells whether a state is one that a fluid can have.
fn is_one(state: &State) -> bool {
    let density = state.density.kg_per_m3();
    density > 0.0
        && density.is_finite()
        && state.enthalpy.joules_per_kg().is_finite()
        && state.entropy.joules_per_kg_k().is_finite()
}

#[cfg(test)]
mod tests {
    use super::super::table::{FIXED, at, checksum};
    use super::*;

    const TABLE: &[u8] = include_bytes!("data/r404a.table");

    /// The table with a number written over, under a right checksum.
    fn forged(offset: usize, value: f32) -> Result<(), TableError> {
        let mut table = TABLE.to_vec();
        table[offset..offset + 4].copy_from_slice(&value.to_le_bytes());
        let sum = checksum(&table[at::FLAGS..]);
        table[at::CHECKSUM..at::CHECKSUM + 4].copy_from_slice(&sum.to_le_bytes());
        Refrigerant::from_bytes(&table).map(|_| ())
    }

    fn number(offset: usize) -> f32 {
        f32::from_le_bytes(TABLE[offset..offset + 4].try_into().expect("four bytes"))
    }

    #[test]
    fn every_built_in_table_passes() {
        for refrigerant in super::super::data::ALL {
            assert_eq!(probe(refrigerant), Ok(()), "{}", refrigerant.designation());
        }
    }

    #[test]
    fn a_forged_table_is_refused_under_a_right_checksum() {
        assert_eq!(forged(at::T_MIN, number(at::T_MIN)), Ok(()));
        for (offset, value) in [
            // A vapor of negative density, of none, and one heavier than its liquid.
            (at::GAS_CONSTANT, 1.0e30),
            (at::VAPOR, -1.0e6),
            (at::VAPOR, 1.0e6),
            (at::RHO_REDUCING, 1.0e-3),
            // Curves that fall or cross, of the whole table and of its first piece.
            (at::DEW_SCALE, 0.5 * number(at::DEW_SCALE)),
            (at::BUBBLE_SCALE, 0.5 * number(at::BUBBLE_SCALE)),
            (FIXED, -1.0e4),
            // A range upside down.
            (at::T_MIN, number(at::T_MAX) + 1.0),
            (at::DEW_P_MIN, 2.0 * number(at::DEW_P_MAX)),
            // The last component's mass fraction, at the end of the table.
            (TABLE.len() - 4, 2.0 * number(TABLE.len() - 4)),
            (TABLE.len() - 4, -number(TABLE.len() - 4)),
        ] {
            assert_eq!(forged(offset, value), Err(TableError::Content), "{value} at {offset}");
        }
    }
}
