//! Many states in one call: slices in, slices out, the same bits as one by one.
//!
//! Slices are taken as far as the shortest of them reaches. A state that has no answer is marked at its own place and
//! its numbers are 0; the others are answered.

use super::potential::Place;
use super::table::at;
use super::vapor::{LANES, solve_lanes};
use super::{PropertyError, Refrigerant};
use crate::quantity::{Pressure, Temperature};

/// What became of one element of a batch.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[repr(u8)]
pub enum Outcome {
    /// It is answered.
    #[default]
    Answered = 0,
    /// The pressure lies outside what the table covers.
    Pressure = 1,
    /// The temperature lies outside what the table covers.
    Temperature = 2,
    /// The state lies between bubble and dew.
    TwoPhase = 3,
    /// The state lies in the other phase than the one asked for.
    OtherPhase = 4,
    /// The state lies above the critical point.
    Transcritical = 5,
    /// An input is not a number.
    NotANumber = 6,
    /// The state lies too close to the critical point.
    NearCritical = 7,
    /// The state lies between bubble and dew of a blend whose temperatures there the table does not have.
    Glide = 8,
}

impl From<PropertyError> for Outcome {
    fn from(error: PropertyError) -> Self {
        match error {
            PropertyError::Pressure { .. } => Self::Pressure,
            PropertyError::Temperature { .. } => Self::Temperature,
            PropertyError::TwoPhase => Self::TwoPhase,
            PropertyError::OtherPhase { .. } => Self::OtherPhase,
            PropertyError::Transcritical { .. } => Self::Transcritical,
            PropertyError::NotANumber => Self::NotANumber,
            PropertyError::NearCritical { .. } => Self::NearCritical,
            PropertyError::Glide { .. } => Self::Glide,
        }
    }
}

/// Where a batch of states is written, each slice at the place of its input.
#[derive(Debug)]
pub struct States<'a> {
    /// Mass density, kg/m3.
    pub density_kg_m3: &'a mut [f32],
    /// Specific enthalpy, J/kg.
    pub enthalpy_j_kg: &'a mut [f32],
    /// Specific entropy, J/(kg K).
    pub entropy_j_kg_k: &'a mut [f32],
    /// What became of each.
    pub outcome: &'a mut [Outcome],
}

/// Answers one scalar property for every element.
fn each(
    input: &[f32],
    output: &mut [f32],
    outcome: &mut [Outcome],
    answer: impl Fn(f32) -> Result<f32, PropertyError>,
) {
    for ((input, output), outcome) in input.iter().zip(output).zip(outcome) {
        (*output, *outcome) = match answer(*input) {
            Ok(value) => (value, Outcome::Answered),
            Err(error) => (0.0, error.into()),
        };
    }
}

impl Refrigerant<'_> {
    /// Finds the dew temperature, K, of every pressure, Pa; as [`Self::dew_temperature`].
    pub fn dew_temperatures(&self, pascals: &[f32], kelvins: &mut [f32], outcome: &mut [Outcome]) {
        each(pascals, kelvins, outcome, |p| Ok(self.dew_temperature(Pressure::from_pascals(p))?.kelvins()));
    }
    /// Finds the bubble temperature, K, of every pressure, Pa; as [`Self::bubble_temperature`].
    pub fn bubble_temperatures(&self, pascals: &[f32], kelvins: &mut [f32], outcome: &mut [Outcome]) {
        each(pascals, kelvins, outcome, |p| {
            Ok(self.bubble_temperature(Pressure::from_pascals(p))?.kelvins())
        });
    }
    /// Finds the dew pressure, Pa, of every temperature, K; as [`Self::dew_pressure`].
    pub fn dew_pressures(&self, kelvins: &[f32], pascals: &mut [f32], outcome: &mut [Outcome]) {
        each(kelvins, pascals, outcome, |t| Ok(self.dew_pressure(Temperature::from_kelvins(t))?.pascals()));
    }
    /// Finds the bubble pressure, Pa, of every temperature, K; as [`Self::bubble_pressure`].
    pub fn bubble_pressures(&self, kelvins: &[f32], pascals: &mut [f32], outcome: &mut [Outcome]) {
        each(kelvins, pascals, outcome, |t| {
            Ok(self.bubble_pressure(Temperature::from_kelvins(t))?.pascals())
        });
    }

    /// Finds the vapor state at every pressure, Pa, and temperature, K; as [`Self::vapor`].
    pub fn vapor_states(&self, pascals: &[f32], kelvins: &[f32], states: States<'_>) {
        let States { density_kg_m3, enthalpy_j_kg, entropy_j_kg_k, outcome } = states;
        let inputs = pascals.chunks(LANES).zip(kelvins.chunks(LANES));
        let outputs = density_kg_m3
            .chunks_mut(LANES)
            .zip(enthalpy_j_kg.chunks_mut(LANES))
            .zip(entropy_j_kg_k.chunks_mut(LANES))
            .zip(outcome.chunks_mut(LANES));
        for ((pascals, kelvins), (((density, enthalpy), entropy), outcome)) in inputs.zip(outputs) {
            self.vapor_lanes(
                pascals,
                kelvins,
                States { density_kg_m3: density, enthalpy_j_kg: enthalpy, entropy_j_kg_k: entropy, outcome },
            );
        }
    }

    /// Answers up to [`LANES`] states.
    fn vapor_lanes(&self, pascals: &[f32], kelvins: &[f32], states: States<'_>) {
        let fixed = self.parts.fixed;
        let (gas, rho) = (self.number(at::GAS_CONSTANT), self.number(at::RHO_REDUCING));
        // A lane without a state of its own solves one that there is.
        let (spare_p, spare_t) = (self.number(at::DEW_P_MIN), self.number(at::T_MIN));
        let mut marks = [Outcome::Answered; LANES];
        let (mut p, mut t) = ([spare_p; LANES], [spare_t; LANES]);
        for ((((p, t), mark), pascals), kelvins) in
            p.iter_mut().zip(&mut t).zip(&mut marks).zip(pascals).zip(kelvins)
        {
            match self.check_vapor(Pressure::from_pascals(*pascals), Temperature::from_kelvins(*kelvins)) {
                Ok(()) => (*p, *t) = (*pascals, *kelvins),
                Err(error) => *mark = error.into(),
            }
        }
        let (mut tau, mut place, mut reduced) = ([0.0; LANES], [0.0; LANES], [0.0; LANES]);
        for ((((tau, place), reduced), p), t) in
            tau.iter_mut().zip(&mut place).zip(&mut reduced).zip(&p).zip(&t)
        {
            let at = Place::of(fixed, *t);
            (*tau, *place) = (at.tau, at.t);
            *reduced = *p / (rho * (gas * *t));
        }
        let mut solved = solve_lanes(fixed, &tau, &place, &reduced);
        let numbers = solved.d.iter_mut().zip(&mut solved.enthalpy).zip(&mut solved.entropy);
        for (((d, h), s), t) in numbers.zip(&t) {
            (*d, *h, *s) = (*d * rho, gas * *t * *h, gas * *s);
        }
        let outputs = states.density_kg_m3.iter_mut().zip(states.enthalpy_j_kg).zip(states.entropy_j_kg_k);
        let numbers = solved.d.iter().zip(&solved.enthalpy).zip(&solved.entropy);
        for ((((density, enthalpy), entropy), ((d, h), s)), mark) in outputs.zip(numbers).zip(&marks) {
            let answered = *mark == Outcome::Answered;
            *density = if answered { *d } else { 0.0 };
            *enthalpy = if answered { *h } else { 0.0 };
            *entropy = if answered { *s } else { 0.0 };
        }
        for (outcome, mark) in states.outcome.iter_mut().zip(&marks) {
            *outcome = *mark;
        }
    }
}
