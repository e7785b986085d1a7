//! What superheat and subcooling say about the charge.
//!
//! Form of Li, H. and Braun, J. E. (2009), "Development, evaluation, and demonstration of a virtual refrigerant
//! charge sensor", HVAC&R Research 15(1) (from memory): (m - m_r)/m_r = [(SC - SC_r) - (k_sh/k_sc)(SH - SH_r)] / k_ch,
//! with 1/k_ch = (1 - a) X / SC_r, a = 0.75 the void share and X = 0.7 the high side's share of the charge as it is
//! rated, and k_sh/k_sc = 1/2.5. Its authors report the charge within 10 % on systems without an accumulator.

use crate::estimate::Estimate;
use crate::normal::{combine, positive, usable};

/// Superheat and subcooling, K.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct State {
    /// Superheat at the compressor inlet.
    pub superheat_k: Estimate,
    /// Subcooling at the condenser outlet.
    pub subcooling_k: Estimate,
}

/// What the machine has that hides its charge.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Blinds {
    /// A liquid receiver: subcooling says little until it is empty or full.
    pub receiver: bool,
    /// A suction accumulator: liquid stored there shows in neither.
    pub accumulator: bool,
    /// A valve that holds the superheat: only subcooling tells, until the valve is wide open.
    pub valve: bool,
}

/// Relative charge deviation for one kelvin of subcooling over the rated subcooling: (1 - a) X.
const CHARGE_GAIN: f32 = 0.25 * 0.7;
/// Weight of superheat against subcooling.
const SUPERHEAT_WEIGHT: f32 = 1.0 / 2.5;
/// Standard uncertainty of the form itself, as a fraction of the charge (10 % reported, taken as k = 2).
const FORM_SPREAD: f32 = 0.05;
/// Relative standard uncertainty of its gain between machines (default parameters, not tuned to this one).
const GAIN_SPREAD: f32 = 0.4;

/// What the charge indicator answers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Charge {
    /// The deviation from the rated charge, as a fraction: -0.2 is a fifth too little.
    Deviation(Estimate),
    /// Only that the charge is not below a limit or that nothing can be said.
    Blind(Blindness),
}

/// Why the charge cannot be told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Blindness {
    /// A receiver takes up the difference.
    Receiver,
    /// An accumulator takes up the difference.
    Accumulator,
    /// No subcooling is left: the condenser outlet may hold vapour, and how much does not show.
    NoSubcooling,
    /// No superheat is left: liquid in the suction line does not show.
    NoSuperheat,
}

/// Estimates the charge's deviation from the rated charge by superheat and subcooling.
///
/// `rated` is the state at the rated charge in conditions like today's. Behind a valve the superheat is left out.
/// `None` where an input is not finite or the rated subcooling not positive.
pub fn estimate(measured: &State, rated: &State, blinds: Blinds) -> Option<Charge> {
    let all = [measured.superheat_k, measured.subcooling_k, rated.superheat_k, rated.subcooling_k];
    if !all.into_iter().all(usable) || !positive(rated.subcooling_k.value) {
        return None;
    }
    let near_zero = |e: Estimate| e.value <= 2.0 * e.u;
    let blind = if blinds.receiver {
        Some(Blindness::Receiver)
    } else if blinds.accumulator {
        Some(Blindness::Accumulator)
    } else if near_zero(measured.subcooling_k) {
        Some(Blindness::NoSubcooling)
    } else if !blinds.valve && near_zero(measured.superheat_k) {
        Some(Blindness::NoSuperheat)
    } else {
        None
    };
    if let Some(why) = blind {
        return Some(Charge::Blind(why));
    }
    let weight = if blinds.valve { 0.0 } else { SUPERHEAT_WEIGHT };
    let per_kelvin = CHARGE_GAIN / rated.subcooling_k.value;
    let kelvin = (measured.subcooling_k.value - rated.subcooling_k.value)
        - weight * (measured.superheat_k.value - rated.superheat_k.value);
    let spread = combine(&[
        measured.subcooling_k.u,
        rated.subcooling_k.u,
        weight * measured.superheat_k.u,
        weight * rated.superheat_k.u,
    ]);
    let value = per_kelvin * kelvin;
    Some(Charge::Deviation(Estimate::new(
        value,
        combine(&[per_kelvin * spread, GAIN_SPREAD * value, FORM_SPREAD]),
    )?))
}
