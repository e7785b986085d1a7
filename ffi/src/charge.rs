//! The charge: standing pressure, hoses, weigh-in, indicator, handling.

use crate::boundary::put;
use crate::estimate::RimewiseEstimate;
use crate::refrigerant::RimewiseRefrigerant;
use crate::status::{RimewiseStatus, RimewiseStatus as Status};
use rimewise::charge::indicator::{self, Blindness, Blinds, Charge};
use rimewise::charge::standing::{self, Standing};
use rimewise::charge::{composition, hose, weigh_in};
use rimewise::estimate::Estimate;
use rimewise::quantity::{Pressure, Temperature};

/// What a standing pressure says by itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseStandingVerdict {
    /// On the curve, or between dew and bubble: this refrigerant, with liquid left, as far as a pressure can tell.
    Consistent = 1,
    /// Above the bubble curve: non-condensables, or another refrigerant.
    AboveBubble = 2,
    /// Below the dew curve: no liquid left, or another refrigerant.
    BelowDew = 3,
}

/// A standing pressure judged.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseStanding {
    /// A RimewiseStandingVerdict.
    pub verdict: i32,
    /// Bubble pressure at the standing temperature, kPa absolute.
    pub bubble_kpa: RimewiseEstimate,
    /// Dew pressure at the standing temperature, kPa absolute.
    pub dew_kpa: RimewiseEstimate,
}

/// What to do at the scale.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseWeighInPlan {
    /// Let `mass_kg` out of the cylinder by the scale.
    Charge = 1,
    /// Nothing to add: the machine holds `mass_kg` beyond its nameplate charge.
    Recover = 2,
}

/// A weigh-in planned.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseWeighIn {
    /// A RimewiseWeighInPlan.
    pub plan: i32,
    /// The mass of the plan, kg.
    pub mass_kg: RimewiseEstimate,
    /// Standard uncertainty of the charge in the machine over the nameplate charge, as a fraction.
    ///
    /// 0 where nothing is to be added.
    pub relative_u: f32,
}

/// What superheat and subcooling tell of the charge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(i32)]
pub enum RimewiseChargeAnswer {
    /// `deviation` tells.
    Deviation = 1,
    /// A receiver takes up the difference.
    BlindReceiver = 2,
    /// An accumulator takes up the difference.
    BlindAccumulator = 3,
    /// No subcooling is left: the condenser outlet may hold vapor, and how much does not show.
    BlindNoSubcooling = 4,
    /// No superheat is left: liquid in the suction line does not show.
    BlindNoSuperheat = 5,
}

/// The state that tells of a charge, K: measured, or at the rated charge in conditions like today's.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseChargeState {
    /// Superheat at the compressor inlet, K.
    pub superheat_k: RimewiseEstimate,
    /// Subcooling at the condenser outlet, K.
    pub subcooling_k: RimewiseEstimate,
}

/// What superheat and subcooling say about the charge.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct RimewiseCharge {
    /// A RimewiseChargeAnswer.
    pub answer: i32,
    /// The deviation from the rated charge, as a fraction: -0.2 is a fifth too little; 0 where it cannot be told.
    pub deviation: RimewiseEstimate,
}

/// How to handle a refrigerant when it is charged or has leaked; each is 1 or 0.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[repr(C)]
pub struct RimewiseHandling {
    /// 1: charge as liquid only, throttled so that no liquid reaches the compressor.
    pub charge_as_liquid_only: i32,
    /// 1: a partial leak may have changed what is left; recover and weigh in new rather than top up.
    pub leak_shifts_composition: i32,
    /// 1: what leaks can burn; an unknown safety class counts as 1.
    pub flammable: i32,
    /// 1: it is of the higher toxicity class; an unknown safety class counts as 1.
    pub toxic: i32,
}

/// Judges a standing pressure at the one temperature of a stopped, equalised machine.
///
/// `pressure_kpa` absolute and `temperature_c` with their standard uncertainties. Errors: TEMPERATURE_OUTSIDE_TABLE,
/// TRANSCRITICAL, NOT_FINITE, OUT_OF_RANGE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_standing_pressure(
    refrigerant: *const RimewiseRefrigerant,
    pressure_kpa: f32,
    pressure_u_kpa: f32,
    temperature_c: f32,
    temperature_u_k: f32,
    standing: *mut RimewiseStanding,
) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe {
        let Some(RimewiseRefrigerant(r)) = refrigerant.as_ref() else {
            return Status::NullPointer;
        };
        if let Err(error) = r.bubble_pressure(Temperature::from_celsius(temperature_c)) {
            return error.into();
        }
        let pressure = Estimate { value: pressure_kpa, u: pressure_u_kpa };
        let temperature = Estimate { value: temperature_c, u: temperature_u_k };
        let Some(test) = Standing::at(r, pressure, temperature) else {
            return Status::OutOfRange;
        };
        let verdict = match standing::judge(&test) {
            Some(standing::Verdict::Consistent) => RimewiseStandingVerdict::Consistent,
            Some(standing::Verdict::AboveBubble) => RimewiseStandingVerdict::AboveBubble,
            Some(standing::Verdict::BelowDew) => RimewiseStandingVerdict::BelowDew,
            None => return Status::OutOfRange,
        };
        let value = RimewiseStanding {
            verdict: verdict as i32,
            bubble_kpa: test.bubble_kpa.into(),
            dew_kpa: test.dew_kpa.into(),
        };
        put(standing, value)
    }
}

/// Computes what a charging hose holds at its pressure and temperature.
///
/// `pressure_kpa` absolute. Writes `mass_kg` and `phase`, a RimewisePhase. Errors: OUT_OF_RANGE (length or diameter not
/// positive), TWO_PHASE (the fill cannot be told), PRESSURE_OUTSIDE_TABLE, TEMPERATURE_OUTSIDE_TABLE, TRANSCRITICAL,
/// NOT_FINITE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_hose_contents(
    refrigerant: *const RimewiseRefrigerant,
    length_m: f32,
    inner_diameter_mm: f32,
    pressure_kpa: f32,
    temperature_c: f32,
    mass_kg: *mut f32,
    phase: *mut i32,
) -> RimewiseStatus {
    if mass_kg.is_null() || phase.is_null() {
        return Status::NullPointer;
    }
    // SAFETY: the contract of the header.
    unsafe {
        let Some(RimewiseRefrigerant(r)) = refrigerant.as_ref() else {
            return Status::NullPointer;
        };
        let hose = hose::Hose { length_m, inner_diameter_mm };
        let pressure = Pressure::from_kilopascals(pressure_kpa);
        match hose::contents(&hose, r, pressure, Temperature::from_celsius(temperature_c)) {
            Ok(contents) => {
                put(mass_kg, contents.mass_kg);
                put(phase, contents.phase as i32)
            }
            Err(hose::NoContents::State(error)) => error.into(),
            Err(hose::NoContents::Hose) => Status::OutOfRange,
        }
    }
}

/// Plans a weigh-in: what to let out of the cylinder so that the machine ends at its nameplate charge.
///
/// `residual_kg` is what is still in the machine, `left_in_hoses_kg` what the hoses hold at the end, each with its
/// standard uncertainty; `scale_u_kg` is the scale's. Errors: OUT_OF_RANGE where an input is not finite or negative, or
/// the nameplate charge not positive.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_weigh_in(
    nameplate_kg: f32,
    residual_kg: f32,
    residual_u_kg: f32,
    left_in_hoses_kg: f32,
    left_in_hoses_u_kg: f32,
    scale_u_kg: f32,
    plan: *mut RimewiseWeighIn,
) -> RimewiseStatus {
    let start = weigh_in::WeighIn {
        nameplate_kg,
        residual_kg: Estimate { value: residual_kg, u: residual_u_kg },
        left_in_hoses_kg: Estimate { value: left_in_hoses_kg, u: left_in_hoses_u_kg },
        scale_u_kg,
    };
    let value = match weigh_in::plan(&start) {
        Some(weigh_in::Plan::Charge { by_scale_kg, relative_u }) => RimewiseWeighIn {
            plan: RimewiseWeighInPlan::Charge as i32,
            mass_kg: by_scale_kg.into(),
            relative_u,
        },
        Some(weigh_in::Plan::Recover { excess_kg }) => RimewiseWeighIn {
            plan: RimewiseWeighInPlan::Recover as i32,
            mass_kg: excess_kg.into(),
            relative_u: 0.0,
        },
        None => return Status::OutOfRange,
    };
    // SAFETY: the contract of the header.
    unsafe { put(plan, value) }
}

/// Estimates the charge's deviation from the rated charge by superheat and subcooling.
///
/// `receiver`, `accumulator` and `valve` (one that holds the superheat) are 1 or 0. Errors: UNKNOWN_CODE,
/// OUT_OF_RANGE where an input is not finite or the rated subcooling not positive.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_charge_estimate(
    measured: *const RimewiseChargeState,
    rated: *const RimewiseChargeState,
    receiver: i32,
    accumulator: i32,
    valve: i32,
    charge: *mut RimewiseCharge,
) -> RimewiseStatus {
    if measured.is_null() || rated.is_null() {
        return Status::NullPointer;
    }
    if [receiver, accumulator, valve].iter().any(|flag| *flag != 0 && *flag != 1) {
        return Status::UnknownCode;
    }
    let blinds = Blinds { receiver: receiver == 1, accumulator: accumulator == 1, valve: valve == 1 };
    // SAFETY: the contract of the header.
    unsafe {
        let state = |from: RimewiseChargeState| indicator::State {
            superheat_k: from.superheat_k.into(),
            subcooling_k: from.subcooling_k.into(),
        };
        let (measured, rated) = (state(measured.read_unaligned()), state(rated.read_unaligned()));
        let blind = RimewiseEstimate::default();
        let (answer, deviation) = match indicator::estimate(&measured, &rated, blinds) {
            Some(Charge::Deviation(deviation)) => (RimewiseChargeAnswer::Deviation, deviation.into()),
            Some(Charge::Blind(Blindness::Receiver)) => (RimewiseChargeAnswer::BlindReceiver, blind),
            Some(Charge::Blind(Blindness::Accumulator)) => (RimewiseChargeAnswer::BlindAccumulator, blind),
            Some(Charge::Blind(Blindness::NoSubcooling)) => (RimewiseChargeAnswer::BlindNoSubcooling, blind),
            Some(Charge::Blind(Blindness::NoSuperheat)) => (RimewiseChargeAnswer::BlindNoSuperheat, blind),
            None => return Status::OutOfRange,
        };
        put(charge, RimewiseCharge { answer: answer as i32, deviation })
    }
}

/// Tells how to handle a refrigerant when it is charged or has leaked.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rimewise_handling(
    refrigerant: *const RimewiseRefrigerant,
    handling: *mut RimewiseHandling,
) -> RimewiseStatus {
    // SAFETY: the contract of the header.
    unsafe {
        let Some(RimewiseRefrigerant(r)) = refrigerant.as_ref() else {
            return Status::NullPointer;
        };
        let told = composition::handling_of(r);
        let liquid_only = told.charge_as == composition::ChargeAs::LiquidOnly;
        let value = RimewiseHandling {
            charge_as_liquid_only: liquid_only.into(),
            leak_shifts_composition: told.leak_shifts_composition.into(),
            flammable: told.flammable.into(),
            toxic: told.toxic.into(),
        };
        put(handling, value)
    }
}
