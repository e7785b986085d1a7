//! What the readings say the machine does: superheats, subcooling, pressure ratio and differences to air.

use crate::estimate::Estimate;
use crate::field::quantities;
use crate::quantity::{Pressure, Temperature};
use crate::readings::{Readings, Uncertainty};
use crate::refrigerant::Refrigerant;
use crate::system::System;

/// Standard uncertainty of the subcooling for a condenser pressure drop that is not measured, K (common practice).
const CONDENSER_DROP_U_K: f32 = 0.5;

quantities! {
    /// The quantities of the cycle, each with its standard uncertainty; `None` where a reading is missing.
    Cycle {
        /// Dew temperature at the compressor's suction pressure, degC.
        suction_saturation_c: SuctionSaturation,
        /// Dew temperature at the evaporator outlet (its own pressure when given), degC.
        evaporator_saturation_c: EvaporatorSaturation,
        /// Condensing temperature, mean of bubble and dew at the discharge (else liquid) pressure, degC.
        condensing_c: Condensing,
        /// Superheat at the evaporator outlet, K; signed.
        superheat_k: Superheat,
        /// Superheat at the compressor inlet, K; signed.
        compressor_superheat_k: CompressorSuperheat,
        /// Subcooling, from the liquid pressure, else from discharge with its larger uncertainty, K; signed.
        subcooling_k: Subcooling,
        /// Discharge pressure over suction pressure, both absolute.
        pressure_ratio: PressureRatio,
        /// Space air minus evaporating dew temperature, K.
        evaporator_td_k: EvaporatorDifference,
        /// Condensing temperature minus ambient, K.
        condenser_td_k: CondenserDifference,
        /// Discharge line above the dew temperature at the discharge pressure, K.
        discharge_superheat_k: DischargeSuperheat,
        /// Liquid line minus drier outlet, K.
        drier_drop_k: LiquidTemperatureDrop,
        /// Space air minus supply air, K.
        supply_air_drop_k: SupplyAirDrop,
        /// Condenser exhaust minus ambient, K.
        exhaust_air_rise_k: ExhaustAirRise,
    }
}

/// The usual bias of a pipe clamp toward its surroundings, K, where those are much colder or warmer than the pipe.
///
/// Common practice: an insulated clamp in good contact reads some tenths of a kelvin toward the room.
pub const CLAMP_BIAS_K: f32 = 0.5;

/// The expected bias of a pipe clamp, K: positive where the surroundings are warmer than the pipe.
///
/// It vanishes where pipe and surroundings are equal and reaches [`CLAMP_BIAS_K`] some 10 K apart.
pub fn clamp_bias(pipe_c: f32, surroundings_c: f32) -> f32 {
    let difference = surroundings_c - pipe_c;
    CLAMP_BIAS_K * difference / libm::sqrtf(difference * difference + 4.0 * 4.0)
}

/// Saturation at a pressure reading: the temperature and the uncertainty that the gauge brings, K.
fn saturation(
    curve: impl Fn(Pressure) -> Option<Temperature>,
    kpa: Option<f32>,
    uncertainty: &Uncertainty,
) -> Option<Estimate> {
    let kpa = kpa?;
    let u = uncertainty.pressure_kpa(kpa);
    let at = |kpa: f32| curve(Pressure::from_kilopascals(kpa)).map(Temperature::celsius);
    let middle = at(kpa)?;
    // The sensitivity by a central difference over the gauge's own uncertainty (GUM 5.1.3, note 2), one-sided at
    // the table's ends.
    let (high, low) = (at(kpa + u), at(kpa - u));
    let spread = match (high, low) {
        (Some(high), Some(low)) => 0.5 * (high - low),
        (Some(high), None) => high - middle,
        (None, Some(low)) => middle - low,
        (None, None) => return None,
    };
    Estimate::new(middle, spread)
}

/// The difference of two independent estimates (GUM 5.1.2).
fn difference(a: Option<Estimate>, b: Option<Estimate>) -> Option<Estimate> {
    let (a, b) = (a?, b?);
    Estimate::new(a.value - b.value, libm::sqrtf(a.u * a.u + b.u * b.u))
}

impl Cycle {
    /// Computes what the readings say; without a refrigerant only what needs no saturation.
    pub fn from_readings(
        refrigerant: Option<&Refrigerant<'_>>,
        system: &System,
        readings: &Readings,
        uncertainty: &Uncertainty,
    ) -> Self {
        let dew = |p: Pressure| refrigerant.and_then(|r| r.dew_temperature(p).ok());
        let bubble = |p: Pressure| refrigerant.and_then(|r| r.bubble_temperature(p).ok());
        let middle = |p: Pressure| {
            let (dew, bubble) = (dew(p)?, bubble(p)?);
            Some(Temperature::from_kelvins(0.5 * (dew.kelvins() + bubble.kelvins())))
        };
        // A clamp's bias is not corrected here, where the reading is shown as it is; it widens the uncertainty.
        let line_u = libm::sqrtf(uncertainty.line_k() * uncertainty.line_k() + CLAMP_BIAS_K * CLAMP_BIAS_K);
        let line = |c: Option<f32>| c.and_then(|c| Estimate::new(c, line_u));
        let air = |c: Option<f32>| c.and_then(|c| Estimate::new(c, uncertainty.air_k()));

        let suction = saturation(dew, readings.suction_pressure_kpa, uncertainty);
        let regulated = system.suction_pressure_regulator == Some(true);
        let evaporator = match readings.evaporator_pressure_kpa {
            Some(kpa) => saturation(dew, Some(kpa), uncertainty),
            // Behind a regulator the suction gauge says nothing of the evaporator.
            None if regulated => None,
            None => suction,
        };
        let high_side = readings.discharge_pressure_kpa.or(readings.liquid_pressure_kpa);
        let condensing = saturation(middle, high_side, uncertainty);
        let liquid_bubble = match readings.liquid_pressure_kpa {
            Some(kpa) => saturation(bubble, Some(kpa), uncertainty),
            None => saturation(bubble, readings.discharge_pressure_kpa, uncertainty).map(|t| Estimate {
                // The pressure drop of the condenser is not known: common practice takes it as a kelvin or less.
                u: libm::sqrtf(t.u * t.u + CONDENSER_DROP_U_K * CONDENSER_DROP_U_K),
                ..t
            }),
        };
        let ratio = || {
            let (low, high) = (readings.suction_pressure_kpa?, readings.discharge_pressure_kpa?);
            let (ul, uh) = (uncertainty.pressure_kpa(low) / low, uncertainty.pressure_kpa(high) / high);
            Estimate::new(high / low, high / low * libm::sqrtf(ul * ul + uh * uh))
        };
        let space = air(readings.space_c);
        let ambient = air(readings.ambient_c);
        let liquid = line(readings.liquid_line_c);
        Self {
            suction_saturation_c: suction,
            evaporator_saturation_c: evaporator,
            condensing_c: condensing,
            superheat_k: difference(line(readings.evaporator_outlet_c), evaporator),
            compressor_superheat_k: difference(line(readings.suction_line_c), suction),
            subcooling_k: difference(liquid_bubble, liquid),
            pressure_ratio: ratio(),
            evaporator_td_k: difference(space, evaporator),
            condenser_td_k: difference(condensing, ambient),
            discharge_superheat_k: difference(
                line(readings.discharge_line_c),
                saturation(dew, readings.discharge_pressure_kpa, uncertainty),
            ),
            drier_drop_k: difference(liquid, line(readings.drier_outlet_c)),
            supply_air_drop_k: difference(space, air(readings.supply_air_c)),
            exhaust_air_rise_k: difference(air(readings.condenser_exhaust_c), ambient),
        }
    }
}
