//! The design point: what the plate and sheet say, and what is usual where they are silent.

use crate::machine::fluid::Fluid;
use crate::machine::moist_air;
use crate::readings::{Readings, Uncertainty};
use crate::system::{Duty, Metering, System};

/// A value with its spread, both in the same unit.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Spread {
    pub(crate) mean: f32,
    pub(crate) sd: f32,
}

impl Spread {
    pub(crate) const fn new(mean: f32, sd: f32) -> Self {
        Self { mean, sd }
    }
    fn given(value: Option<f32>, sd: f32, usual: Self) -> Self {
        value.map_or(usual, |mean| Self { mean, sd })
    }
}

/// The nominal machine: its kind, its design point with spreads, and today's conditions.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Nominal {
    pub(crate) metering: Metering,
    pub(crate) receiver: bool,
    pub(crate) regulator: bool,
    /// How far the machine is an air conditioner, 0 to 1: between where nobody said and the space tells it.
    pub(crate) air_conditioning: f32,
    /// Temperatures in kelvin from here on; differences in kelvin.
    pub(crate) design_space_k: f32,
    pub(crate) design_ambient_k: f32,
    pub(crate) evaporating_k: Spread,
    pub(crate) condensing_k: Spread,
    pub(crate) suction_superheat_k: Spread,
    pub(crate) evaporator_superheat_k: Spread,
    pub(crate) subcooling_k: Spread,
    pub(crate) space_k: Spread,
    pub(crate) ambient_k: Spread,
    /// Wet-bulb temperatures of the space, which drive an air conditioner's wet coil.
    pub(crate) design_wet_bulb_k: f32,
    pub(crate) wet_bulb_k: Spread,
    /// Supply voltage over rated voltage.
    pub(crate) voltage: Spread,
}

const CELSIUS: f32 = 273.15;

/// Share of what is not known of the design space that its evaporator follows: a machine is designed near where it is
/// found (judged).
const FOLLOWS_SPACE: f32 = 0.3;
/// Space temperatures between which a machine of unknown duty is as probably the one as the other, and the width over
/// which that turns, degC.
const FREEZER_OR_COOLER_C: f32 = -8.0;
const COOLER_OR_ROOM_C: f32 = 15.0;
const TURNS_K: f32 = 2.0;

/// How probable each duty is: freezer, cooler, air conditioning.
///
/// Where the duty is not said, the design space's (else today's) temperature tells it.
fn duties(system: &System, readings: &Readings) -> [f32; 3] {
    let above = |c: f32, at: f32| 1.0 / (1.0 + libm::expf(((at - c) / TURNS_K).max(-60.0).min(60.0)));
    match (system.duty, system.design.space_c.or(readings.space_c)) {
        (Some(Duty::Freezer), _) => [1.0, 0.0, 0.0],
        (Some(Duty::Cooler), _) | (None, None) => [0.0, 1.0, 0.0],
        (Some(Duty::AirConditioning), _) => [0.0, 0.0, 1.0],
        (None, Some(c)) => {
            let (freezer, room) = (1.0 - above(c, FREEZER_OR_COOLER_C), above(c, COOLER_OR_ROOM_C));
            [freezer, (1.0 - freezer - room).max(0.0), room]
        }
    }
}

/// What is usual where the sheet is silent.
struct Usual {
    air_conditioning: f32,
    space_c: Spread,
    ambient_c: Spread,
    evaporator_td: Spread,
    condenser_td: Spread,
    superheat: Spread,
    subcooling: Spread,
}

impl Usual {
    /// Common practice, with spreads that cover most small machines: condensers stand 8 to 25 K over their air, evaporators 5
    /// to 25 K under theirs. Over the duties, means and spreads of the mixture.
    fn new(duties: &[f32; 3], valve: bool) -> Self {
        let of = |kinds: [(f32, f32); 3]| {
            let mean: f32 = kinds.iter().zip(duties).map(|(kind, share)| share * kind.0).sum();
            let variance: f32 = kinds
                .iter()
                .zip(duties)
                .map(|(kind, share)| share * (kind.1 * kind.1 + (kind.0 - mean) * (kind.0 - mean)))
                .sum();
            Spread::new(mean, libm::sqrtf(variance))
        };
        Self {
            air_conditioning: duties[2],
            space_c: of(if valve {
                [(-20.0, 0.0), (3.0, 0.0), (26.7, 0.0)]
            } else {
                [(-20.0, 0.0), (4.0, 0.0), (26.7, 0.0)]
            }),
            ambient_c: of([(32.0, 0.0), (32.0, 0.0), (35.0, 0.0)]),
            evaporator_td: of(if valve {
                [(7.5, 3.0), (9.0, 3.4), (17.0, 3.2)]
            } else {
                [(9.0, 3.8), (10.0, 4.2), (17.0, 3.2)]
            }),
            condenser_td: of([(13.0, 4.0), (13.0, 4.0), (13.5, 4.2)]),
            superheat: of(if valve {
                [(14.0, 4.3), (11.0, 3.4), (8.0, 2.6)]
            } else {
                [(22.0, 8.0), (16.0, 6.0), (8.0, 3.4)]
            }),
            subcooling: of([(4.0, 2.1), (4.0, 2.1), (6.0, 2.1)]),
        }
    }
}

/// Relative humidity of a conditioned space (common practice: 40 to 60 %), and its spread as wet-bulb temperature, K.
const ROOM_HUMIDITY: f32 = 0.5;
const ROOM_WET_BULB_U_K: f32 = 1.5;

/// Standard uncertainty of a temperature or difference that a maker's sheet gives, K.
///
/// Common practice: sheets are rounded, and one unit differs from the next.
const SHEET_K: f32 = 0.45;

/// Kelvin by which a condenser's liquid leaves above the air's entry at least (common practice).
const LIQUID_ABOVE_AIR_K: f32 = 2.0;

/// Pressure drop of the suction line at the design flow, as kelvin of dew temperature.
///
/// Common practice: suction lines are sized for about 1 K; short ones of self-contained machines lose less.
pub(crate) const SUCTION_DROP_K: Spread = Spread::new(1.0, 0.6);

impl Nominal {
    /// Reads the nominal machine and today's conditions from what is known.
    ///
    /// `None` where the design point lies outside the refrigerant's table.
    pub(crate) fn new(
        fluid: Fluid<'_>,
        system: &System,
        readings: &Readings,
        u: &Uncertainty,
    ) -> Option<Self> {
        let metering = system.metering.unwrap_or(match system.duty {
            Some(Duty::AirConditioning) => Metering::Orifice,
            Some(Duty::Freezer) => Metering::Capillary,
            _ => Metering::ThermostaticValve,
        });
        let valve = matches!(metering, Metering::ThermostaticValve | Metering::ElectronicValve);
        let design = &system.design;
        let usual = Usual::new(&duties(system, readings), valve);
        let air_conditioning = usual.air_conditioning;
        let design_space_k = design.space_c.unwrap_or(usual.space_c.mean) + CELSIUS;
        // Where the usual ambient would condense this refrigerant above its table (carbon dioxide), a machine of it
        // is built for a cooler place.
        let highest_k = fluid.0.temperature_range().1.kelvins() - 6.0 - usual.condenser_td.mean;
        let design_ambient_k = match design.ambient_c {
            Some(c) => c + CELSIUS,
            None => (usual.ambient_c.mean + CELSIUS).min(highest_k),
        };
        let td = |given, usual: Spread| Spread::given(given, SHEET_K, usual);
        let evaporating_k = match design.suction_pressure_kpa {
            // The sheet's pressure is the compressor's; the evaporator stands above it by the line's drop.
            Some(kpa) => Spread::new(fluid.dew_k(kpa * 1000.0)? + SUCTION_DROP_K.mean, SHEET_K),
            None => {
                let td = td(design.evaporator_td_k, usual.evaporator_td);
                // Where neither the duty nor the space is told, the evaporator's design is no better known than the space's.
                let space_sd = if design.space_c.is_none() { FOLLOWS_SPACE * usual.space_c.sd } else { 0.0 };
                Spread::new(
                    design_space_k - td.mean.max(0.5),
                    libm::sqrtf(td.sd * td.sd + space_sd * space_sd),
                )
            }
        };
        let condensing_k = match design.discharge_pressure_kpa {
            Some(kpa) => Spread::new(fluid.middle_k(kpa * 1000.0)?, SHEET_K),
            None => {
                let td = td(design.condenser_td_k, usual.condenser_td);
                let condensing_k = design_ambient_k + td.mean.max(0.5);
                // Liquid must leave warmer than the air it gave its heat to: a wide glide needs a larger difference.
                let pa = fluid.middle_pa(condensing_k)?;
                let half_glide = condensing_k - fluid.saturation(pa)?.bubble_k;
                let least_k = design_ambient_k + half_glide + usual.subcooling.mean + LIQUID_ABOVE_AIR_K;
                let unknown = design.condenser_td_k.is_none();
                Spread::new(if unknown { condensing_k.max(least_k) } else { condensing_k }, td.sd)
            }
        };
        let suction_superheat_k = Spread::given(design.suction_superheat_k, 2.0 * SHEET_K, usual.superheat);
        // A receiver's liquid lies under its own vapour: it leaves nearly saturated (common practice).
        let receiver = system.receiver.unwrap_or(false);
        let subcooling = if receiver { Spread::new(2.0, 1.7) } else { usual.subcooling };
        let subcooling_k = Spread::given(design.subcooling_k, SHEET_K, subcooling);
        // The sheet gives the superheat at the compressor; the evaporator's own share is what is usual: a valve
        // holds 5 to 7 K, a capillary evaporator ends nearly full and its exchanger adds the rest.
        let share = if valve { 6.0 } else { 4.0 + 2.0 * air_conditioning };
        let td_mean = design_space_k - evaporating_k.mean;
        let evaporator_superheat_k =
            Spread::new(share.min(0.85 * suction_superheat_k.mean).min(0.75 * td_mean).max(0.5), 1.0);
        let air = |reading: Option<f32>, design_k: f32, usual: f32| match reading {
            Some(c) => Spread::new(c + CELSIUS, u.air_k()),
            None => Spread::new(design_k, usual),
        };
        let voltage = match (readings.voltage_v, system.compressor.rated_v) {
            (Some(v), Some(rated)) if rated > 1.0 && v > 0.3 * rated => Spread::new(v / rated, 0.005),
            _ => Spread::new(1.0, 0.04),
        };
        let space_k = air(readings.space_c, design_space_k, 5.0 - 2.5 * air_conditioning);
        let wet_bulb_k = match readings.space_wet_bulb_c {
            // A wick that dries or sits out of the draught reads high by about a kelvin (common practice).
            Some(c) => Spread::new((c + CELSIUS).min(space_k.mean), u.air_k().max(1.0)),
            None => Spread::new(moist_air::wet_bulb_k(space_k.mean, ROOM_HUMIDITY), ROOM_WET_BULB_U_K),
        };
        Some(Self {
            metering,
            receiver,
            regulator: system.suction_pressure_regulator.unwrap_or(false),
            air_conditioning,
            design_space_k,
            design_ambient_k,
            evaporating_k,
            condensing_k,
            suction_superheat_k,
            evaporator_superheat_k,
            subcooling_k,
            space_k,
            design_wet_bulb_k: moist_air::wet_bulb_k(design_space_k, ROOM_HUMIDITY),
            wet_bulb_k,
            ambient_k: air(readings.ambient_c, design_ambient_k - 5.0, 7.0),
            voltage,
        })
    }

    /// Whether a valve, thermostatic or electronic, meters the liquid.
    pub(crate) fn valve(&self) -> bool {
        matches!(self.metering, Metering::ThermostaticValve | Metering::ElectronicValve)
    }
}
