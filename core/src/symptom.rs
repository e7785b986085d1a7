//! The channels in which a machine shows what it does, as one vector, and how far it is from what is expected.

use crate::cycle::clamp_bias;
use crate::machine::{Fluid, Nominal, Run};
use crate::measurement::Measurement;
use crate::readings::{Readings, Uncertainty};
use crate::student::{Factor, ln_student};
use crate::system::System;

/// The number of channels.
pub(crate) const CHANNELS: usize = 13;

/// One number a channel: temperatures in kelvin, current and power as 100 times their natural logarithm.
pub(crate) type Vector = [f32; CHANNELS];
/// A symmetric matrix over the channels.
pub(crate) type Matrix = [[f32; CHANNELS]; CHANNELS];

pub(crate) const SUCTION_PRESSURE: usize = 0;
pub(crate) const EVAPORATOR_PRESSURE: usize = 1;
pub(crate) const DISCHARGE_PRESSURE: usize = 2;
pub(crate) const LIQUID_PRESSURE: usize = 3;
pub(crate) const EVAPORATOR_OUTLET: usize = 4;
pub(crate) const SUCTION_LINE: usize = 5;
pub(crate) const DISCHARGE_LINE: usize = 6;
pub(crate) const LIQUID_LINE: usize = 7;
pub(crate) const DRIER_OUTLET: usize = 8;
pub(crate) const SUPPLY_AIR: usize = 9;
pub(crate) const CONDENSER_EXHAUST: usize = 10;
pub(crate) const CURRENT: usize = 11;
pub(crate) const POWER: usize = 12;

/// The reading behind each channel.
pub(crate) const READING: [Measurement; CHANNELS] = [
    Measurement::SuctionPressure,
    Measurement::EvaporatorPressure,
    Measurement::DischargePressure,
    Measurement::LiquidPressure,
    Measurement::EvaporatorOutlet,
    Measurement::SuctionLine,
    Measurement::DischargeLine,
    Measurement::LiquidLine,
    Measurement::DrierOutlet,
    Measurement::SupplyAir,
    Measurement::CondenserExhaust,
    Measurement::Current,
    Measurement::Power,
];

/// What the model's run shows in every channel.
pub(crate) fn predicted(fluid: Fluid<'_>, run: &Run) -> Vector {
    [
        run.suction_dew_k,
        run.evaporating_dew_k,
        run.condensing_k,
        run.condensing_k,
        run.outlet_k,
        run.inlet_k,
        run.discharge_k(fluid),
        run.liquid_k,
        run.drier_outlet_k,
        run.supply_k,
        run.exhaust_k,
        100.0 * run.ln_current,
        100.0 * run.ln_power,
    ]
}

/// Where the model's structure may be off by itself: the channels it moves together and by how much, K.
///
/// The spreads are judged from how compact models of this kind compare with detailed ones and with published
/// measurements; they stand beside what is not known of the one machine.
pub(crate) const DISCREPANCY: [(Vector, f32); 13] = {
    const fn on(channels: &[usize]) -> Vector {
        let mut v = [0.0; CHANNELS];
        let mut i = 0;
        while i < channels.len() {
            v[channels[i]] = 1.0;
            i += 1;
        }
        v
    }
    [
        (on(&[SUCTION_PRESSURE, EVAPORATOR_PRESSURE, EVAPORATOR_OUTLET, SUCTION_LINE]), 0.6),
        (on(&[EVAPORATOR_PRESSURE, EVAPORATOR_OUTLET]), 0.5),
        (on(&[DISCHARGE_PRESSURE, LIQUID_PRESSURE, DISCHARGE_LINE, LIQUID_LINE, DRIER_OUTLET]), 0.6),
        (on(&[LIQUID_PRESSURE]), 0.5),
        (on(&[LIQUID_LINE, DRIER_OUTLET]), 0.5),
        (on(&[EVAPORATOR_OUTLET]), 2.4),
        (on(&[SUCTION_LINE, DISCHARGE_LINE]), 2.7),
        (on(&[DRIER_OUTLET]), 0.4),
        (on(&[DISCHARGE_LINE]), 4.0),
        (on(&[SUPPLY_AIR]), 0.7),
        (on(&[CONDENSER_EXHAUST]), 0.8),
        (on(&[CURRENT, POWER]), 2.5),
        (on(&[POWER]), 12.0),
    ]
};

/// The same, K of evaporating temperature for each kelvin by which the space stands off its design temperature beyond
/// [`NEAR_DESIGN_K`].
///
/// What a metering device passes far from its design point hangs on the law it follows, and laws differ: a capillary may
/// starve a warm evaporator or feed it well (judged; no compressor should be condemned on that difference).
pub(crate) const OFF_DESIGN: f32 = 0.3;
/// Kelvin off the design temperature of the space that a running machine is in any case.
pub(crate) const NEAR_DESIGN_K: f32 = 3.0;

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

/// What was measured minus what is expected, with its covariance, packed to the channels in use.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Deviation {
    residual: Vector,
    /// Instruments included.
    covariance: Matrix,
    /// The channel at each place.
    at: [u8; CHANNELS],
    size: usize,
    /// What one kelvin in each of the day's conditions moves; zero where the condition was not read.
    conditions: Conditions,
}

/// What one kelvin of space and of ambient temperature moves in every channel.
pub(crate) type Conditions = [Vector; CONDITIONS];
/// The conditions that are read but are no channels: everything expected leans on them.
pub(crate) const CONDITIONS: usize = 2;
/// The reading behind each condition.
pub(crate) const CONDITION: [Measurement; CONDITIONS] = [Measurement::Space, Measurement::Ambient];
/// How far off a grossly wrong space or ambient reading is, K: a thermometer in the sun, in the exhaust, in another
/// room (judged).
const GROSSLY_K: f32 = 12.0;

impl Deviation {
    pub(crate) const NEW: Self = Self {
        residual: [0.0; CHANNELS],
        covariance: [[0.0; CHANNELS]; CHANNELS],
        at: [0; CHANNELS],
        size: 0,
        conditions: [[0.0; CHANNELS]; CONDITIONS],
    };

    /// Packs what was measured, but for one channel that is left aside.
    pub(crate) fn set(
        &mut self,
        mean: &Vector,
        covariance: &Matrix,
        measured: &Measured,
        aside: Option<usize>,
    ) {
        self.size = 0;
        self.conditions = Self::NEW.conditions;
        for channel in 0..CHANNELS {
            if measured.given[channel]
                && Some(channel) != aside
                && let (Some(at), Some(residual)) =
                    (self.at.get_mut(self.size), self.residual.get_mut(self.size))
            {
                *at = channel as u8;
                *residual = measured.value[channel] - mean[channel];
                self.size += 1;
            }
        }
        for (row, i) in self.covariance.iter_mut().zip(self.at).take(self.size) {
            let i = usize::from(i);
            for (cell, j) in row.iter_mut().zip(self.at).take(self.size) {
                let j = usize::from(j);
                *cell = covariance.get(i).and_then(|row| row.get(j)).copied().unwrap_or(0.0);
                if i == j {
                    *cell += measured.variance.get(i).copied().unwrap_or(0.0);
                }
            }
        }
    }

    /// Lets the space and the ambient reading be doubted as the other readings are.
    pub(crate) fn doubt(&mut self, conditions: &Conditions) {
        self.conditions = conditions.map(|moves| self.packed(&moves));
    }

    /// Takes one of the conditions for grossly wrong: what it moves is no longer known.
    pub(crate) fn disregard(&mut self, condition: usize) {
        let Some(moves) = self.conditions.get_mut(condition) else { return };
        let moves = core::mem::replace(moves, [0.0; CHANNELS]).map(|kelvin| GROSSLY_K * kelvin);
        for (row, a) in self.covariance.iter_mut().zip(&moves) {
            for (cell, b) in row.iter_mut().zip(&moves) {
                *cell += a * b;
            }
        }
    }

    /// ln of the density of a whitened residual where one of the conditions is grossly wrong; none where it was not
    /// read.
    ///
    /// The covariance grows by one direction, and its inverse and determinant with it (Sherman and Morrison 1950).
    pub(crate) fn ln_disregarding(
        &self,
        condition: usize,
        factor: &Factor,
        white: &Vector,
        square: f32,
    ) -> Option<f32> {
        let moves = self.conditions.get(condition).filter(|moves| moves.iter().any(|k| *k != 0.0))?;
        let (mut along, mut length) = (0.0, 0.0);
        for (direction, white) in factor.whiten(moves).iter().zip(white) {
            along += direction * white;
            length += direction * direction;
        }
        let growth = 1.0 + GROSSLY_K * GROSSLY_K * length;
        let square = square - GROSSLY_K * GROSSLY_K * along * along / growth;
        Some(ln_student(square, self.size, factor.ln_det + libm::logf(growth)))
    }

    /// The channels in use, in their packed order.
    pub(crate) fn channels(&self) -> impl Iterator<Item = usize> + '_ {
        self.at.iter().take(self.size).map(|at| usize::from(*at))
    }
    pub(crate) fn size(&self) -> usize {
        self.size
    }
    pub(crate) fn uses(&self, channel: usize) -> bool {
        self.channels().any(|c| c == channel)
    }
    /// Packs a vector over all channels.
    pub(crate) fn packed(&self, v: &Vector) -> Vector {
        let mut out = [0.0; CHANNELS];
        for (out, at) in out.iter_mut().zip(self.at).take(self.size) {
            *out = v.get(usize::from(at)).copied().unwrap_or(0.0);
        }
        out
    }

    /// Factors the covariance with a spread added to every channel and others that move channels together; false where
    /// it is not positive definite.
    pub(crate) fn invert(
        &self,
        factor: &mut Factor,
        spread: &Vector,
        together: impl Iterator<Item = Vector>,
    ) -> bool {
        let n = self.size.min(CHANNELS);
        factor.matrix = self.covariance;
        let spread = self.packed(spread);
        for i in 0..n {
            factor.matrix[i][i] += spread[i] * spread[i];
        }
        for moves in together {
            let moves = self.packed(&moves);
            for (i, (row, a)) in factor.matrix.iter_mut().zip(&moves).enumerate().take(n) {
                // Its lower triangle is all that a factor is made from.
                for (cell, b) in row.iter_mut().zip(&moves).take(i + 1) {
                    *cell += a * b;
                }
            }
        }
        factor.invert(self.size)
    }
    /// The residual that a shift of the expectation leaves, whitened by a factor.
    pub(crate) fn whiten(&self, factor: &Factor, shift: &Vector) -> Vector {
        let mut residual = self.residual;
        for (residual, shift) in residual.iter_mut().zip(self.packed(shift)) {
            *residual -= shift;
        }
        factor.whiten(&residual)
    }
}
