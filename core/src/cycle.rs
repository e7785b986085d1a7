//! What the readings say the machine does: superheats, subcooling, pressure ratio and differences to air.

use crate::estimate::Estimate;

/// The quantities of the cycle, each with its standard uncertainty; `None` where a reading is missing.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Cycle {
    /// Dew temperature at the compressor's suction pressure, degC.
    pub suction_saturation_c: Option<Estimate>,
    /// Dew temperature at the evaporator outlet (its own pressure when given), degC.
    pub evaporator_saturation_c: Option<Estimate>,
    /// Condensing temperature, mean of bubble and dew at the discharge (else liquid) pressure, degC.
    pub condensing_c: Option<Estimate>,
    /// Superheat at the evaporator outlet, K; signed.
    pub superheat_k: Option<Estimate>,
    /// Superheat at the compressor inlet, K; signed.
    pub compressor_superheat_k: Option<Estimate>,
    /// Subcooling, from the liquid pressure, else from discharge with its larger uncertainty, K; signed.
    pub subcooling_k: Option<Estimate>,
    /// Discharge pressure over suction pressure, both absolute.
    pub pressure_ratio: Option<Estimate>,
    /// Space air minus evaporating dew temperature, K.
    pub evaporator_td_k: Option<Estimate>,
    /// Condensing temperature minus ambient, K.
    pub condenser_td_k: Option<Estimate>,
    /// Discharge line above the dew temperature at the discharge pressure, K.
    pub discharge_superheat_k: Option<Estimate>,
    /// Liquid line minus drier outlet, K.
    pub drier_drop_k: Option<Estimate>,
    /// Space air minus supply air, K.
    pub supply_air_drop_k: Option<Estimate>,
    /// Condenser exhaust minus ambient, K.
    pub exhaust_air_rise_k: Option<Estimate>,
}
