//! What the refrigerant adds: the superheat of a start, the temperature of a coil that stands.

use super::Monitor;
use super::fixed::fixed;
use super::power::Power;
use super::sample::{CHANNELS, EVAPORATOR_OUTLET, SUCTION, SUCTION_LINE, SUPPLY_AIR};
use crate::quantity::Pressure;
use crate::refrigerant::Refrigerant;

impl Monitor {
    /// Finds the superheat, 1/256 K, while a start is followed.
    pub(super) fn superheat(
        &self,
        refrigerant: Option<&Refrigerant<'_>>,
        middle: &[Option<i32>; CHANNELS],
    ) -> Option<i32> {
        if self.power != Power::On || !self.start.is_open() {
            return None;
        }
        let line = middle[SUCTION_LINE].or(middle[EVAPORATOR_OUTLET])?;
        Some(line - dew(refrigerant?, middle[SUCTION]?)?)
    }

    /// Finds the temperature of the coil of a stopped machine, 1/256 degC, and whether a clamp shows it.
    ///
    /// While it is being warmed, its pressure tells sooner than a clamp; between bubble and dew a blend's dew
    /// temperature lies above the coil by up to its glide. Once it is dry, only the clamp tells that it cools.
    pub(super) fn coil(
        &self,
        refrigerant: Option<&Refrigerant<'_>>,
        middle: &[Option<i32>; CHANNELS],
    ) -> Option<(i32, bool)> {
        let clamp = middle[EVAPORATOR_OUTLET].or(middle[SUPPLY_AIR]);
        if self.off_time.defrost && self.off_time.by_clamp {
            return Some((clamp?, true));
        }
        let saturated = || {
            let (refrigerant, low) = refrigerant.zip(middle[SUCTION])?;
            Some(dew(refrigerant, low)? - fixed(refrigerant.glide().kelvins(), 8))
        };
        Some((saturated().max(clamp)?, clamp.is_some()))
    }
}

/// Finds the dew temperature at a whole-number pressure, 1/256 degC.
fn dew(refrigerant: &Refrigerant<'_>, low: i32) -> Option<i32> {
    // 1/256 kPa in pascal, and 273.15 K in 1/256 K.
    let dew = refrigerant.dew_temperature(Pressure::from_pascals(low as f32 * 3.906_25)).ok()?;
    Some(fixed(dew.kelvins(), 8) - 69_926)
}
