//! What the readings say the machine does.

use crate::boundary::put;
use crate::diagnose::{refuse, visit};
use crate::estimate::{Collector, RimewiseEstimate};
use crate::input::{RimewiseReadings, RimewiseSystem, RimewiseUncertainty};
use crate::invalid::RimewiseInvalid;
use crate::refrigerant::RimewiseRefrigerant;
use crate::status::{RimewiseStatus, RimewiseStatus as Status};
use rimewise::cycle::Cycle;
use rimewise::readings::Visit;

/// A bit of the valid mask of RimewiseCycle.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(u32)]
pub enum RimewiseCycleValid {
    /// `suction_saturation_c` is there.
    SuctionSaturationC = 1,
    /// `evaporator_saturation_c` is there.
    EvaporatorSaturationC = 2,
    /// `condensing_c` is there.
    CondensingC = 4,
    /// `superheat_k` is there.
    SuperheatK = 8,
    /// `compressor_superheat_k` is there.
    CompressorSuperheatK = 16,
    /// `subcooling_k` is there.
    SubcoolingK = 32,
    /// `pressure_ratio` is there.
    PressureRatio = 64,
    /// `evaporator_td_k` is there.
    EvaporatorTdK = 128,
    /// `condenser_td_k` is there.
    CondenserTdK = 256,
    /// `discharge_superheat_k` is there.
    DischargeSuperheatK = 512,
    /// `drier_drop_k` is there.
    DrierDropK = 1024,
    /// `supply_air_drop_k` is there.
    SupplyAirDropK = 2048,
    /// `exhaust_air_rise_k` is there.
    ExhaustAirRiseK = 4096,
}

/// The quantities of the cycle, each with its standard uncertainty. Signed, never clamped.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseCycle {
    /// Which quantities are there, RimewiseCycleValid bits; the others are 0.
    pub valid: u32,
    /// Dew temperature at the compressor's suction pressure, degC.
    pub suction_saturation_c: RimewiseEstimate,
    /// Dew temperature at the evaporator outlet (its own pressure when given), degC.
    pub evaporator_saturation_c: RimewiseEstimate,
    /// Condensing temperature, mean of bubble and dew at the discharge (else liquid) pressure, degC.
    pub condensing_c: RimewiseEstimate,
    /// Superheat at the evaporator outlet, K; signed.
    pub superheat_k: RimewiseEstimate,
    /// Superheat at the compressor inlet, K; signed.
    pub compressor_superheat_k: RimewiseEstimate,
    /// Subcooling, from the liquid pressure, else from discharge with its larger uncertainty, K; signed.
    pub subcooling_k: RimewiseEstimate,
    /// Discharge pressure over suction pressure, both absolute.
    pub pressure_ratio: RimewiseEstimate,
    /// Space air minus evaporating dew temperature, K.
    pub evaporator_td_k: RimewiseEstimate,
    /// Condensing temperature minus ambient, K.
    pub condenser_td_k: RimewiseEstimate,
    /// Discharge line above the dew temperature at the discharge pressure, K.
    pub discharge_superheat_k: RimewiseEstimate,
    /// Liquid line minus drier outlet, K.
    pub drier_drop_k: RimewiseEstimate,
    /// Space air minus supply air, K.
    pub supply_air_drop_k: RimewiseEstimate,
    /// Condenser exhaust minus ambient, K.
    pub exhaust_air_rise_k: RimewiseEstimate,
}

impl From<&Cycle> for RimewiseCycle {
    fn from(cycle: &Cycle) -> Self {
        let mut all = Collector::new();
        let mut value = Self {
            valid: 0,
            suction_saturation_c: all.take(cycle.suction_saturation_c),
            evaporator_saturation_c: all.take(cycle.evaporator_saturation_c),
            condensing_c: all.take(cycle.condensing_c),
            superheat_k: all.take(cycle.superheat_k),
            compressor_superheat_k: all.take(cycle.compressor_superheat_k),
            subcooling_k: all.take(cycle.subcooling_k),
            pressure_ratio: all.take(cycle.pressure_ratio),
            evaporator_td_k: all.take(cycle.evaporator_td_k),
            condenser_td_k: all.take(cycle.condenser_td_k),
            discharge_superheat_k: all.take(cycle.discharge_superheat_k),
            drier_drop_k: all.take(cycle.drier_drop_k),
            supply_air_drop_k: all.take(cycle.supply_air_drop_k),
            exhaust_air_rise_k: all.take(cycle.exhaust_air_rise_k),
        };
        value.valid = all.valid;
        value
    }
}

/// Computes the quantities of the cycle that the readings give, with their standard uncertainties.
///
/// `refrigerant` NULL: not known, so only what needs no saturation. `system`, `uncertainty` NULL: nothing known, usual
/// instruments. `invalid` NULL: the field at fault is not wanted. Errors: INVALID_INPUT, UNKNOWN_CODE (both write
/// `invalid`), WRONG_SIZE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_cycle(
    refrigerant: *const RimewiseRefrigerant,
    system: *const RimewiseSystem,
    readings: *const RimewiseReadings,
    uncertainty: *const RimewiseUncertainty,
    cycle: *mut RimewiseCycle,
    invalid: *mut RimewiseInvalid,
) -> RimewiseStatus {
    if cycle.is_null() {
        return Status::NullPointer;
    }
    // SAFETY: the contract of the header.
    unsafe {
        let mut given = Visit::default();
        if let Err(status) = visit(&mut given, system, readings, core::ptr::null(), uncertainty, invalid) {
            return status;
        }
        let refrigerant = refrigerant.as_ref().map(|r| &r.0);
        if let Err(at_fault) = rimewise::check(refrigerant, &given) {
            return refuse(invalid, at_fault.into(), Status::InvalidInput);
        }
        let found = Cycle::from_readings(refrigerant, &given.system, &given.readings, &given.uncertainty);
        put(cycle, RimewiseCycle::from(&found))
    }
}
