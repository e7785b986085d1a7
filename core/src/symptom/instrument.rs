//! What was measured, channel by channel, with what the instruments bring.

use super::channel::*;
use crate::cycle::clamp_bias;
use crate::machine::{Fluid, Nominal};
use crate::readings::{Readings, Uncertainty};
use crate::system::System;

/// What was measured, channel by channel; channels that were not measured are clear in `given`.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Measured {
    pub(crate) value: Vector,
    /// Variance that the instrument brings.
    pub(crate) variance: Vector,
    pub(crate) given: [bool; CHANNELS],
}

/// Standard uncertainty of a clamp's bias about its expected value, K.
pub(crate) const BIAS_U_K: f32 = 0.3;

impl Measured {
    pub(crate) const EMPTY: Self =
        Self { value: [0.0; CHANNELS], variance: [1.0; CHANNELS], given: [false; CHANNELS] };

    /// Reads the channels; pressures become saturation temperatures, and clamps lose their expected bias.
    pub(crate) fn new(
        fluid: Fluid<'_>,
        nominal: &Nominal,
        system: &System,
        readings: &Readings,
        u: &Uncertainty,
    ) -> Self {
        let mut all = Self::EMPTY;
        let dew = |pa: f32| fluid.dew_k(pa);
        let middle = |pa: f32| fluid.middle_k(pa);
        all.pressure(SUCTION_PRESSURE, readings.suction_pressure_kpa, u, dew);
        all.pressure(EVAPORATOR_PRESSURE, readings.evaporator_pressure_kpa, u, dew);
        all.pressure(DISCHARGE_PRESSURE, readings.discharge_pressure_kpa, u, middle);
        all.pressure(LIQUID_PRESSURE, readings.liquid_pressure_kpa, u, middle);
        let space_c = nominal.space_k.mean - 273.15;
        let ambient_c = nominal.ambient_k.mean - 273.15;
        let line = u.line_k() * u.line_k() + BIAS_U_K * BIAS_U_K;
        for (channel, reading, surroundings_c) in [
            (EVAPORATOR_OUTLET, readings.evaporator_outlet_c, space_c),
            (SUCTION_LINE, readings.suction_line_c, ambient_c),
            (DISCHARGE_LINE, readings.discharge_line_c, ambient_c),
            (LIQUID_LINE, readings.liquid_line_c, ambient_c),
            (DRIER_OUTLET, readings.drier_outlet_c, ambient_c),
            (EVAPORATOR_INLET, readings.evaporator_inlet_c, space_c),
            (CONDENSER_MIDDLE, readings.condenser_middle_c, ambient_c),
        ] {
            all.put(channel, reading.map(|c| c - clamp_bias(c, surroundings_c) + 273.15), line);
        }
        let air = u.air_k() * u.air_k();
        all.put(SUPPLY_AIR, readings.supply_air_c.map(|c| c + 273.15), air);
        all.put(CONDENSER_EXHAUST, readings.condenser_exhaust_c.map(|c| c + 273.15), air);
        let percent = 100.0 * u.current_fraction();
        let rated = system.compressor.rated_load_a.filter(|a| *a > 0.0);
        if let (Some(amps), Some(rated)) = (readings.current_a.filter(|a| *a > 0.0), rated) {
            all.put(CURRENT, Some(100.0 * libm::logf(amps / rated)), percent * percent);
        }
        if let (Some(watts), Some(rated), Some(volts)) =
            (readings.power_w.filter(|w| *w > 0.0), rated, system.compressor.rated_v.filter(|v| *v > 0.0))
        {
            // Design power from the plate: rated amperes over their usual excess, at the usual power factor.
            let phases = if system.compressor.phases == Some(3.0) { 1.732 } else { 1.0 };
            let design = phases * volts * rated / 1.25 * 0.85;
            all.put(POWER, Some(100.0 * libm::logf(watts / design)), percent * percent);
        }
        all
    }

    fn put(&mut self, channel: usize, value: Option<f32>, variance: f32) {
        if let Some(value) = value.filter(|v| v.is_finite())
            && let (Some(slot), Some(noise), Some(given)) =
                (self.value.get_mut(channel), self.variance.get_mut(channel), self.given.get_mut(channel))
        {
            *slot = value;
            // A perfect instrument does not exist; the floor also keeps the matrices well-conditioned.
            *noise = variance.max(0.01);
            *given = true;
        }
    }

    fn pressure(
        &mut self,
        channel: usize,
        kpa: Option<f32>,
        u: &Uncertainty,
        saturation: impl Fn(f32) -> Option<f32>,
    ) {
        let Some(kpa) = kpa else { return };
        let Some(here) = saturation(kpa * 1000.0) else { return };
        let spread = u.pressure_kpa(kpa);
        let up = saturation((kpa + spread) * 1000.0).map(|k| k - here);
        let down = saturation((kpa - spread) * 1000.0).map(|k| here - k);
        let kelvin = match (up, down) {
            (Some(up), Some(down)) => 0.5 * (up + down),
            (Some(one), None) | (None, Some(one)) => one,
            (None, None) => return,
        };
        self.put(channel, Some(here), kelvin * kelvin);
    }
}
