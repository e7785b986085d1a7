//! What the monitor is told about the machine it watches.

use super::fixed_point::fixed;
use crate::field::{Kind, section};
use crate::invalid::{Invalid, Problem};
use crate::readings::PumpDownValve;
use crate::system::System;

section! {
    /// What is known of the machine; all of it optional, all of it from the compressor's plate or the technician.
    Settings at "settings" {
        /// Rated-load current of the plate, A.
        rated_load_a: Current = 380,
        /// Locked-rotor current of the plate at rated voltage, A.
        locked_rotor_a: Current = 381,
        /// Rated voltage of the plate, V.
        rated_v: Voltage = 382,
    }
    others {
        /// Whether a regulator holds the compressor's inlet pressure down; not known: no.
        suction_pressure_regulator: bool = 383,
        /// Which valve a pump-down will be made against.
        pump_down_valve: PumpDownValve = 384,
    }
}

impl Settings {
    /// Takes what the monitor needs from what is known of the machine.
    pub fn of(system: &System) -> Self {
        Self {
            rated_load_a: system.compressor.rated_load_a,
            locked_rotor_a: system.compressor.locked_rotor_a,
            rated_v: system.compressor.rated_v,
            suction_pressure_regulator: system.suction_pressure_regulator,
            pump_down_valve: None,
        }
    }

    /// Checks the settings.
    ///
    /// Errors: a current or voltage that is not above zero, or that no plate can show, with the field's name.
    pub(super) fn whole(&self) -> Result<Plate, Invalid> {
        let check = |field: &'static str, kind: Kind, value: Option<f32>, places: u32| match value {
            None => Ok(0),
            Some(value) if !value.is_finite() => {
                Err(Invalid::new("settings", field, kind.unit(), Problem::NotFinite))
            }
            Some(value) => {
                let (min, max) = (0.01, kind.range().1);
                if value >= min && value <= max {
                    Ok(fixed(value, places))
                } else {
                    let problem = Problem::OutOfRange { value, min, max };
                    Err(Invalid::new("settings", field, kind.unit(), problem))
                }
            }
        };
        Ok(Plate {
            rated: check("rated_load_a", Kind::Current, self.rated_load_a, 10)?,
            locked: check("locked_rotor_a", Kind::Current, self.locked_rotor_a, 10)?,
            volts: check("rated_v", Kind::Voltage, self.rated_v, 8)?,
            regulator: self.suction_pressure_regulator.unwrap_or(false),
            valve: self.pump_down_valve,
        })
    }
}

/// The settings in whole numbers; 0 is not known.
#[derive(Clone, Copy, Debug)]
pub(super) struct Plate {
    /// Rated-load current, 1/1024 A.
    pub(super) rated: i32,
    /// Locked-rotor current at rated voltage, 1/1024 A.
    pub(super) locked: i32,
    /// Rated voltage, 1/256 V.
    pub(super) volts: i32,
    pub(super) regulator: bool,
    pub(super) valve: Option<PumpDownValve>,
}

impl Plate {
    /// Finds the current above which the compressor is taken to be on, and that below which it is off.
    ///
    /// A compressor draws at least a third of its rated load when it turns unloaded, its magnetising current; what
    /// flows when it stands is a crankcase heater or the meter's own zero (common practice). 0.3 A where the plate
    /// is not known.
    pub(super) fn on_above(&self) -> (i32, i32) {
        if self.rated > 0 { (self.rated / 4, self.rated * 3 / 16) } else { (307, 230) }
    }

    /// Finds the locked-rotor current at a voltage, with which it scales; 0 where the plate is not known.
    pub(super) fn locked_at(&self, volts: Option<i32>) -> i32 {
        match volts {
            Some(volts) if self.locked > 0 && self.volts > 0 => (i64::from(self.locked) * i64::from(volts)
                / i64::from(self.volts))
            .min(i64::from(i32::MAX)) as i32,
            _ => self.locked,
        }
    }
}
