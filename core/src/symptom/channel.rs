//! The channels in which a machine shows what it does, as one vector.

use crate::machine::{Fluid, Run};
use crate::measurement::Measurement;

/// The number of channels.
pub(crate) const CHANNELS: usize = 15;

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
pub(crate) const EVAPORATOR_INLET: usize = 13;
pub(crate) const CONDENSER_MIDDLE: usize = 14;

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
    Measurement::EvaporatorInlet,
    Measurement::CondenserMiddle,
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
        run.evaporator_inlet_k,
        run.condenser_middle_k,
    ]
}
