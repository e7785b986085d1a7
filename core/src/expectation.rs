//! What this machine would show if it were healthy, here and now, with everything that is not known of it.

use crate::diagnosis::symptom::{self, CHANNELS, DISCREPANCY, Matrix, Measured, Vector};
use crate::estimate::Estimate;
use crate::machine::nuisance::{Deviation, Nuisance};
use crate::machine::{Fault, Fluid, Jacobian, Machine, Nominal, Run, Unknowns, jacobian, solve};
use crate::readings::{Readings, Uncertainty};
use crate::report::Expected;
use crate::system::System;

/// The healthy machine here and now.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Expectation {
    pub(crate) machine: Machine,
    pub(crate) at: Unknowns,
    pub(crate) run: Run,
    /// What it shows, channel by channel.
    pub(crate) mean: Vector,
    /// What is not known of it, without the instruments' part.
    pub(crate) covariance: Matrix,
    /// What is not known of its capacity and COP plays no part in the readings and is not kept.
    pub(crate) jacobian: Jacobian,
}

/// The share of the model's own discrepancy that two days of the same machine have in common.
///
/// Judged: the model is wrong about one machine in mostly the same way from day to day.
const SHARED: f32 = 0.7;

impl Expectation {
    /// Solves the healthy machine; `None` where the model has no balance here.
    pub(crate) fn new(fluid: Fluid<'_>, nominal: &Nominal) -> Option<Self> {
        let machine = Machine::new(fluid, nominal, Deviation::NONE)?;
        let (at, run, jacobian) = start(fluid, &machine)?;
        let mut all = Self {
            machine,
            at,
            run,
            mean: symptom::predicted(fluid, &run),
            covariance: [[0.0; CHANNELS]; CHANNELS],
            jacobian,
        };
        for which in 0..Nuisance::COUNT {
            if let Some(shift) = all.direction(fluid, nominal, which) {
                add_outer(&mut all.covariance, &shift, &shift, 1.0);
            }
        }
        for (direction, sd) in &DISCREPANCY {
            add_outer(&mut all.covariance, direction, direction, sd * sd);
        }
        Some(all)
    }

    /// How one standard deviation of one unknown direction moves the channels (one Newton step).
    fn direction(&self, fluid: Fluid<'_>, nominal: &Nominal, which: usize) -> Option<Vector> {
        let attempt = |by: f32| {
            let other = Machine::new(fluid, nominal, Deviation::new(which, by))?;
            let off = other.run(fluid, Fault::NONE, &self.at)?;
            let step = crate::machine::eliminate(&self.jacobian, &off.residuals)?;
            let mut x = self.at;
            for ((x, step), longest) in x.iter_mut().zip(step).zip([0.4, 0.4, 12.0, 10.0f32]) {
                *x -= step.max(-longest).min(longest);
            }
            let moved = symptom::predicted(fluid, &other.run(fluid, Fault::NONE, &x)?);
            let mut shift = [0.0; CHANNELS];
            for ((shift, moved), mean) in shift.iter_mut().zip(moved).zip(self.mean) {
                *shift = (moved - mean) / by;
            }
            shift.iter().all(|s| s.is_finite()).then_some(shift)
        };
        // A valve bends on one side only: a smaller one is wide open where the mean one still holds.
        let first = if which == Nuisance::ValveOversize as usize { -1.0 } else { 1.0 };
        attempt(first).or_else(|| attempt(-first)).or_else(|| attempt(0.3 * first))
    }

    /// Learns from readings of this same machine when it was good.
    ///
    /// The record's deviation from what the nominal machine should have shown on its day is carried to today
    /// through the directions that both days share (conditioning of a joint normal distribution). Gives false
    /// where the record says too little to be used.
    pub(crate) fn learn(
        &mut self,
        fluid: Fluid<'_>,
        system: &System,
        record: &[Readings],
        u: &Uncertainty,
        today: &Nominal,
    ) -> bool {
        let Some(day) = nearest(record, today) else { return false };
        let Some(nominal) = Nominal::new(fluid, system, day, u) else { return false };
        let Some(machine) = Machine::new(fluid, &nominal, Deviation::NONE) else { return false };
        let Some((at, run, jacobian)) = start(fluid, &machine) else { return false };
        let then = Self {
            machine,
            at,
            run,
            mean: symptom::predicted(fluid, &run),
            covariance: [[0.0; CHANNELS]; CHANNELS],
            jacobian,
        };
        let measured = Measured::new(fluid, &nominal, system, day, u);
        if measured.given.iter().filter(|g| **g).count() < 2 {
            return false;
        }
        let mut own = [[0.0; CHANNELS]; CHANNELS];
        let mut cross = [[0.0; CHANNELS]; CHANNELS];
        for which in 0..Nuisance::COUNT {
            let Some(shift_then) = then.direction(fluid, &nominal, which) else { continue };
            add_outer(&mut own, &shift_then, &shift_then, 1.0);
            let of_the_day = [Nuisance::Space, Nuisance::Ambient, Nuisance::Voltage];
            if of_the_day.iter().any(|n| *n as usize == which) {
                continue;
            }
            if let Some(shift_now) = self.direction(fluid, today, which) {
                add_outer(&mut cross, &shift_now, &shift_then, 1.0);
            }
        }
        for (direction, sd) in &DISCREPANCY {
            add_outer(&mut own, direction, direction, sd * sd);
            add_outer(&mut cross, direction, direction, SHARED * sd * sd);
        }
        let mut off = [0.0; CHANNELS];
        for i in 0..CHANNELS {
            if measured.given[i] {
                own[i][i] += measured.variance[i];
                off[i] = measured.value[i] - then.mean[i];
            } else {
                for j in 0..CHANNELS {
                    own[i][j] = 0.0;
                    own[j][i] = 0.0;
                    cross[j][i] = 0.0;
                }
                own[i][i] = 1.0;
            }
        }
        let Some(factor) = crate::diagnosis::student::Factor::new(&own) else { return false };
        // mean += C_tr C_rr^-1 off; covariance -= C_tr C_rr^-1 C_rt, both through the triangular factor.
        let whitened_off = factor.whiten(&off);
        let mut whitened = [[0.0; CHANNELS]; CHANNELS];
        for (row, cross) in whitened.iter_mut().zip(&cross) {
            *row = factor.whiten(cross);
        }
        for i in 0..CHANNELS {
            self.mean[i] += dot(&whitened[i], &whitened_off);
            for j in 0..CHANNELS {
                self.covariance[i][j] -= dot(&whitened[i], &whitened[j]);
            }
        }
        // The record's own independent part stays with today.
        for i in 0..CHANNELS {
            self.covariance[i][i] = self.covariance[i][i].max(0.04);
        }
        true
    }

    /// What to print beside the readings.
    pub(crate) fn expected(&self, fluid: Fluid<'_>, system: &System) -> Expected {
        use crate::diagnosis::symptom::*;
        let mean = &self.mean;
        let sum = |parts: &[(usize, f32)]| {
            let (mut value, mut variance) = (0.0, 0.0);
            for (i, a) in parts {
                value += a * mean[*i % CHANNELS];
                for (j, b) in parts {
                    variance += a * b * self.covariance[*i % CHANNELS][*j % CHANNELS];
                }
            }
            Estimate::new(value, libm::sqrtf(variance.max(0.0)))
        };
        let celsius = |channel: usize| {
            let e = sum(&[(channel, 1.0)])?;
            Estimate::new(e.value - 273.15, e.u)
        };
        let pressure = |channel: usize, middle: bool| {
            let e = sum(&[(channel, 1.0)])?;
            let at = |k: f32| if middle { fluid.middle_pa(k) } else { fluid.dew_pa(k) };
            let here = at(e.value)?;
            let u = at(e.value + 0.5)? - at(e.value - 0.5)?;
            Estimate::new(here / 1000.0, u * e.u / 1000.0)
        };
        let low = pressure(SUCTION_PRESSURE, false);
        let high = pressure(DISCHARGE_PRESSURE, true);
        let ratio = || {
            let (low, high) = (low?, high?);
            let (ul, uh) = (low.u / low.value, high.u / high.value);
            let value = high.value / low.value;
            Estimate::new(value, value * libm::sqrtf(ul * ul + uh * uh))
        };
        // The bubble point stands half the glide below the mean condensing temperature.
        let half_glide = self.run.condensing_k - self.run.bubble_k;
        let subcooling = sum(&[(DISCHARGE_PRESSURE, 1.0), (LIQUID_LINE, -1.0)])
            .and_then(|e| Estimate::new(e.value - half_glide, e.u));
        let current = || {
            let rated = system.compressor.rated_load_a?;
            let e = sum(&[(CURRENT, 1.0)])?;
            let amps = rated * libm::expf(e.value / 100.0);
            Estimate::new(amps, amps * e.u / 100.0)
        };
        Expected {
            suction_saturation_c: celsius(SUCTION_PRESSURE),
            condensing_c: celsius(DISCHARGE_PRESSURE),
            suction_pressure_kpa: low,
            discharge_pressure_kpa: high,
            superheat_k: sum(&[(EVAPORATOR_OUTLET, 1.0), (EVAPORATOR_PRESSURE, -1.0)]),
            compressor_superheat_k: sum(&[(SUCTION_LINE, 1.0), (SUCTION_PRESSURE, -1.0)]),
            subcooling_k: subcooling,
            pressure_ratio: ratio(),
            evaporator_outlet_c: celsius(EVAPORATOR_OUTLET),
            suction_line_c: celsius(SUCTION_LINE),
            discharge_line_c: celsius(DISCHARGE_LINE),
            liquid_line_c: celsius(LIQUID_LINE),
            drier_outlet_c: celsius(DRIER_OUTLET),
            supply_air_c: celsius(SUPPLY_AIR),
            condenser_exhaust_c: celsius(CONDENSER_EXHAUST),
            current_a: current(),
            pump_down_kpa: None,
        }
    }
}

/// The record whose space and ambient temperatures come nearest to today's.
fn nearest<'a>(record: &'a [Readings], today: &Nominal) -> Option<&'a Readings> {
    let distance = |day: &Readings| {
        let space = day.space_c.map_or(4.0, |c| c + 273.15 - today.space_k.mean);
        let ambient = day.ambient_c.map_or(4.0, |c| c + 273.15 - today.ambient_k.mean);
        space * space + ambient * ambient
    };
    record.iter().min_by(|a, b| distance(a).total_cmp(&distance(b)))
}

/// Finds the healthy balance with its slopes, going to today's conditions in steps where one step is too long.
fn start(fluid: Fluid<'_>, machine: &Machine) -> Option<(Unknowns, Run, Jacobian)> {
    let (x, run) = balance(fluid, machine)?;
    // The unknown directions lean on these slopes, so they are taken anew at the balance.
    Some((x, run, jacobian(machine, fluid, Fault::NONE, &x, &run)?))
}

fn balance(fluid: Fluid<'_>, machine: &Machine) -> Option<(Unknowns, Run)> {
    let guess = machine.first_guess();
    if let Some((x, run, _)) = solve(machine, fluid, Fault::NONE, &guess, None) {
        return Some((x, run));
    }
    let (mut x, mut found) = (guess, None);
    for step in 1..=6u8 {
        let part = f32::from(step) / 6.0;
        let mut between = *machine;
        between.space_k = machine.design_space_k + part * (machine.space_k - machine.design_space_k);
        between.ambient_k = machine.design_ambient_k + part * (machine.ambient_k - machine.design_ambient_k);
        let (at, run, _) = solve(&between, fluid, Fault::NONE, &x, None)?;
        (x, found) = (at, Some(run));
    }
    found.map(|run| (x, run))
}

fn dot(a: &Vector, b: &Vector) -> f32 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

/// Adds weight times a b^T.
fn add_outer(matrix: &mut Matrix, a: &Vector, b: &Vector, weight: f32) {
    for (row, a) in matrix.iter_mut().zip(a) {
        for (cell, b) in row.iter_mut().zip(b) {
            *cell += weight * a * b;
        }
    }
}
