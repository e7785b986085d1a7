//! What this machine would show if it were healthy, here and now, with everything that is not known of it.

use crate::estimate::Estimate;
use crate::expected::Expected;
use crate::machine::nuisance::{Nuisance, Other};
use crate::machine::{Fault, Fluid, Jacobian, Machine, Nominal, Run, Unknowns, jacobian, solve};
use crate::readings::{Readings, Visit};
use crate::symptom::{
    self, CHANNELS, CONDITIONS, Conditions, DISCREPANCY, Deviation, Matrix, Measured, Vector,
};
use crate::system::System;
use crate::triangular::Factor;

/// Today's visit beside the nominal machine.
pub(crate) struct Today<'a> {
    pub(crate) fluid: Fluid<'a>,
    pub(crate) nominal: Nominal,
    pub(crate) visit: &'a Visit<'a>,
    /// The readings that count: those of a running machine.
    pub(crate) readings: Readings,
}

impl Today<'_> {
    /// Reads the channels of some readings with today's conditions and instruments.
    pub(crate) fn measured(&self, readings: &Readings) -> Measured {
        Measured::new(self.fluid, &self.nominal, &self.visit.system, readings, &self.visit.uncertainty)
    }
}

/// A machine in balance on one day, and what it shows.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Balance {
    pub(crate) machine: Machine,
    pub(crate) at: Unknowns,
    pub(crate) run: Run,
    pub(crate) jacobian: Jacobian,
    shown: Vector,
}

/// The healthy machine here and now.
#[derive(Clone, Debug)]
pub(crate) struct Expectation {
    /// The nominal machine's balance.
    pub(crate) balance: Balance,
    /// What it shows, channel by channel, with what its record taught.
    pub(crate) mean: Vector,
    /// What is not known of it, without the instruments' part.
    pub(crate) covariance: Matrix,
    /// What the day's conditions move, where they were read.
    pub(crate) conditions: Conditions,
    /// The share of what the model may be wrong about far from the design point that is in the covariance.
    off_share: f32,
}

/// The share of the model's own discrepancy that two days of the same machine have in common (judged: what the model
/// leaves out depends on the day's conditions more than on the machine).
const SHARED: f32 = 0.15;
/// The share of a machine's own differences that stays from the day of its record to today (judged: machines age, and
/// the directions are straight lines where the machine bends).
const SAME_MACHINE: f32 = 0.8;
/// The same share of what the machine was designed for: its sheet may not be known, but it does not change (judged).
const SAME_DESIGN: f32 = 0.97;

impl Balance {
    const NEW: Self = Self {
        machine: Machine::NEW,
        at: [0.0; 4],
        run: Run::NEW,
        jacobian: [[0.0; 4]; 4],
        shown: [0.0; CHANNELS],
    };

    /// Solves the healthy machine; `None` where the model has no balance here.
    fn new(fluid: Fluid<'_>, nominal: &Nominal) -> Option<Self> {
        let machine = Machine::new(fluid, nominal, &Other::NONE)?;
        let (at, run, jacobian) = start(fluid, &machine)?;
        Some(Self { machine, at, run, jacobian, shown: symptom::predicted(fluid, &run) })
    }

    /// How one standard deviation of one unknown direction moves the channels (one Newton step).
    fn direction(&self, fluid: Fluid<'_>, nominal: &Nominal, which: usize) -> Option<Vector> {
        if !Nuisance::acts(which, nominal) {
            return None;
        }
        let attempt = |by: f32| {
            let other = Machine::new(fluid, nominal, &Other::new(which, by))?;
            let off = other.run(fluid, Fault::NONE, &self.at)?;
            let step = crate::machine::eliminate(&self.jacobian, &off.residuals)?;
            let mut x = self.at;
            for ((x, step), longest) in x.iter_mut().zip(step).zip([0.4, 0.4, 12.0, 10.0f32]) {
                *x -= step.max(-longest).min(longest);
            }
            let moved = symptom::predicted(fluid, &other.run(fluid, Fault::NONE, &x)?);
            let mut shift = [0.0; CHANNELS];
            for ((shift, moved), shown) in shift.iter_mut().zip(moved).zip(self.shown) {
                *shift = (moved - shown) / by;
            }
            shift.iter().all(|s| s.is_finite()).then_some(shift)
        };
        // A valve bends on one side only: a smaller one is wide open where the mean one still holds.
        let first = if which == Nuisance::ValveOversize as usize { -1.0 } else { 1.0 };
        attempt(first).or_else(|| attempt(-first)).or_else(|| attempt(0.3 * first))
    }
}

impl Expectation {
    pub(crate) const NEW: Self = Self {
        balance: Balance::NEW,
        mean: [0.0; CHANNELS],
        covariance: [[0.0; CHANNELS]; CHANNELS],
        conditions: [[0.0; CHANNELS]; CONDITIONS],
        off_share: 1.0,
    };

    /// Solves the healthy machine; `None` where the model has no balance here.
    pub(crate) fn set(&mut self, fluid: Fluid<'_>, nominal: &Nominal, readings: &Readings) -> Option<()> {
        self.balance = Balance::new(fluid, nominal)?;
        self.mean = self.balance.shown;
        self.covariance = [[0.0; CHANNELS]; CHANNELS];
        self.conditions = [[0.0; CHANNELS]; CONDITIONS];
        let read = [
            (Nuisance::Space, nominal.space_k.sd, readings.space_c),
            (Nuisance::Ambient, nominal.ambient_k.sd, readings.ambient_c),
        ];
        for which in 0..Nuisance::COUNT {
            if let Some(shift) = self.balance.direction(fluid, nominal, which) {
                add_outer(&mut self.covariance, &shift, &shift, 1.0);
                for (slot, (nuisance, sd, reading)) in self.conditions.iter_mut().zip(read) {
                    if nuisance as usize == which && reading.is_some() {
                        *slot = shift.map(|shift| shift / sd.max(0.01));
                    }
                }
            }
        }
        unmodelled(&mut self.covariance, nominal);
        self.off_share = 1.0;
        Some(())
    }

    /// Takes back some of what the model may be wrong about far from the design point, where the suction reads colder than
    /// expected: the wider side is the warmer one.
    pub(crate) fn lean(&mut self, nominal: &Nominal, measured: &Measured) {
        let read = [symptom::SUCTION_PRESSURE, symptom::EVAPORATOR_PRESSURE]
            .into_iter()
            .find(|channel| measured.given.get(*channel).copied().unwrap_or(false));
        let Some(channel) = read else { return };
        let warmer_k =
            measured.value.get(channel).zip(self.mean.get(channel)).map_or(0.0, |(at, mean)| at - mean);
        let colder = 1.0 / (1.0 + libm::expf((warmer_k / OFF_DESIGN_TURNS_K).max(-40.0).min(40.0)));
        let share = 1.0 - (1.0 - OFF_DESIGN_COLDER) * colder;
        let off = off_design(nominal);
        add_outer(&mut self.covariance, &off, &off, share * share - 1.0);
        self.off_share = share;
    }

    /// Learns from readings of this same machine when it was good.
    ///
    /// The record's deviation from what the nominal machine should have shown on its day is carried to today
    /// through the directions that both days share (conditioning of a joint normal distribution). Gives false
    /// where the record says too little to be used. The deviation and the factors are scratch.
    pub(crate) fn learn(
        &mut self,
        today: &Today<'_>,
        deviation: &mut Deviation,
        scratch: &mut [Factor; 2],
    ) -> bool {
        let (fluid, visit) = (today.fluid, today.visit);
        let Some(day) = nearest(visit.record, &today.nominal) else { return false };
        if turned_round(day) {
            return false;
        }
        let Some(nominal) = Nominal::new(fluid, &visit.system, day, &visit.uncertainty) else { return false };
        let Some(then) = Balance::new(fluid, &nominal) else { return false };
        let measured = Measured::new(fluid, &nominal, &visit.system, day, &visit.uncertainty);
        let [factor, spare] = scratch;
        let (own, cross) = (&mut factor.matrix, &mut spare.matrix);
        (*own, *cross) = ([[0.0; CHANNELS]; CHANNELS], [[0.0; CHANNELS]; CHANNELS]);
        for which in 0..Nuisance::COUNT {
            let Some(shift_then) = then.direction(fluid, &nominal, which) else { continue };
            add_outer(own, &shift_then, &shift_then, 1.0);
            let of_the_day = [Nuisance::Space, Nuisance::Ambient, Nuisance::WetBulb, Nuisance::Voltage];
            if of_the_day.iter().any(|n| *n as usize == which) {
                continue;
            }
            if let Some(shift_now) = self.balance.direction(fluid, &today.nominal, which) {
                let same = if Nuisance::of_the_design(which) { SAME_DESIGN } else { SAME_MACHINE };
                add_outer(cross, &shift_now, &shift_then, same);
            }
        }
        unmodelled(own, &nominal);
        add_outer(cross, &off_design(&today.nominal), &off_design(&nominal), SAME_MACHINE * self.off_share);
        for (direction, sd) in &DISCREPANCY {
            add_outer(cross, direction, direction, SHARED * sd * sd);
        }
        deviation.set(&then.shown, own, &measured);
        if deviation.size() < 2 {
            return false;
        }
        // mean += C_tr C_rr^-1 off; covariance -= C_tr C_rr^-1 C_rt, both through the triangular factor.
        if !deviation.invert(factor, &[0.0; CHANNELS], core::iter::empty()) {
            return false;
        }
        let off = deviation.whiten(factor, &[0.0; CHANNELS]);
        let whitened = &mut spare.matrix;
        for row in whitened.iter_mut() {
            *row = factor.whiten(&deviation.packed(row));
        }
        for i in 0..CHANNELS {
            self.mean[i] += dot(&whitened[i], &off);
            for j in 0..CHANNELS {
                self.covariance[i][j] -= dot(&whitened[i], &whitened[j]);
            }
            // Rounding must not leave a variance that no machine has.
            self.covariance[i][i] = self.covariance[i][i].max(0.04);
        }
        true
    }

    /// What to print beside the readings.
    pub(crate) fn expect(&self, fluid: Fluid<'_>, system: &System, out: &mut Expected) {
        use crate::symptom::*;
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
        // What no machine can show is outside the model, not a number.
        let at = |channel: usize| mean.get(channel).copied().unwrap_or(0.0);
        let (space_k, ambient_k) = (self.balance.machine.space_k, self.balance.machine.ambient_k);
        let (cold_k, hot_k) = (at(SUCTION_PRESSURE) - SHOWN_SLACK_K, at(DISCHARGE_PRESSURE) + SHOWN_SLACK_K);
        let compresses = at(SUCTION_PRESSURE) < at(DISCHARGE_PRESSURE);
        let celsius_within = |channel: usize, low_k: f32, high_k: f32| {
            let shown = compresses && low_k <= at(channel) && at(channel) <= high_k;
            if shown { celsius(channel) } else { None }
        };
        let pressure = |channel, middle| if compresses { pressure(channel, middle) } else { None };
        let warmest_k = space_k.max(ambient_k) + SHOWN_SLACK_K;
        let coolest_k = space_k.min(ambient_k) - SHOWN_SLACK_K;
        let outlet = celsius_within(EVAPORATOR_OUTLET, cold_k, space_k + SHOWN_SLACK_K);
        let suction_line = celsius_within(SUCTION_LINE, cold_k, warmest_k);
        let liquid_line = celsius_within(LIQUID_LINE, coolest_k, hot_k);
        let low = pressure(SUCTION_PRESSURE, false);
        let high = pressure(DISCHARGE_PRESSURE, true);
        let ratio = || {
            let (low, high) = (low?, high?);
            let (ul, uh) = (low.u / low.value, high.u / high.value);
            let value = high.value / low.value;
            Estimate::new(value, value * libm::sqrtf(ul * ul + uh * uh))
        };
        // The bubble point stands half the glide below the mean condensing temperature.
        let half_glide = self.balance.run.condensing_k - self.balance.run.bubble_k;
        let subcooling = sum(&[(DISCHARGE_PRESSURE, 1.0), (LIQUID_LINE, -1.0)])
            .and_then(|e| Estimate::new(e.value - half_glide, e.u))
            .filter(|_| liquid_line.is_some());
        let current = || {
            let rated = system.compressor.rated_load_a?;
            let e = sum(&[(CURRENT, 1.0)])?;
            let amps = rated * libm::expf(e.value / 100.0);
            Estimate::new(amps, amps * e.u / 100.0)
        };
        *out = Expected {
            suction_saturation_c: celsius(SUCTION_PRESSURE).filter(|_| compresses),
            condensing_c: celsius(DISCHARGE_PRESSURE).filter(|_| compresses),
            suction_pressure_kpa: low,
            discharge_pressure_kpa: high,
            superheat_k: sum(&[(EVAPORATOR_OUTLET, 1.0), (EVAPORATOR_PRESSURE, -1.0)])
                .filter(|_| outlet.is_some()),
            compressor_superheat_k: sum(&[(SUCTION_LINE, 1.0), (SUCTION_PRESSURE, -1.0)])
                .filter(|_| suction_line.is_some()),
            subcooling_k: subcooling,
            pressure_ratio: ratio(),
            evaporator_outlet_c: outlet,
            suction_line_c: suction_line,
            discharge_line_c: celsius_within(DISCHARGE_LINE, at(SUCTION_PRESSURE), HOTTEST_SHOWN_K),
            liquid_line_c: liquid_line,
            drier_outlet_c: celsius_within(DRIER_OUTLET, cold_k, hot_k),
            supply_air_c: celsius_within(SUPPLY_AIR, cold_k, space_k + SHOWN_SLACK_K),
            condenser_exhaust_c: celsius_within(CONDENSER_EXHAUST, ambient_k - SHOWN_SLACK_K, hot_k),
            current_a: current(),
            pump_down_kpa: None,
        };
    }
}

/// Kelvin by which an expected value may lie beyond what bounds it: clamps lean, records teach (judged).
const SHOWN_SLACK_K: f32 = 5.0;
/// No discharge line is expected hotter: the oil burns long before (judged).
const HOTTEST_SHOWN_K: f32 = 453.0;

/// Whether a day's low side was written above its high side: such a day teaches nothing.
fn turned_round(day: &Readings) -> bool {
    let low = day.suction_pressure_kpa.into_iter().chain(day.evaporator_pressure_kpa);
    let high = || day.discharge_pressure_kpa.into_iter().chain(day.liquid_pressure_kpa);
    low.into_iter().any(|low| high().any(|high| low >= high))
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

/// Finds the healthy balance.
pub(crate) fn balance(fluid: Fluid<'_>, machine: &Machine) -> Option<(Unknowns, Run)> {
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

/// Share of [`OFF_DESIGN`](symptom::OFF_DESIGN) that holds toward colder (judged: a space off its design lets the suction
/// rise more or less, but it does not starve an evaporator).
const OFF_DESIGN_COLDER: f32 = 0.4;
/// Kelvin over which the one turns into the other.
const OFF_DESIGN_TURNS_K: f32 = 2.0;

/// Adds the model's own discrepancy.
fn unmodelled(covariance: &mut Matrix, nominal: &Nominal) {
    for (direction, sd) in &DISCREPANCY {
        add_outer(covariance, direction, direction, sd * sd);
    }
    let off = off_design(nominal);
    add_outer(covariance, &off, &off, 1.0);
}

/// One standard deviation of what the model may be wrong about far from the design point.
pub(crate) fn off_design(nominal: &Nominal) -> Vector {
    let off_k = nominal.space_k.mean - nominal.design_space_k;
    let beyond = off_k - off_k.max(-symptom::NEAR_DESIGN_K).min(symptom::NEAR_DESIGN_K);
    let mut moves = [0.0; CHANNELS];
    moves[symptom::SUCTION_PRESSURE] = symptom::OFF_DESIGN * beyond;
    moves[symptom::EVAPORATOR_PRESSURE] = symptom::OFF_DESIGN * beyond;
    moves[symptom::EVAPORATOR_INLET] = symptom::OFF_DESIGN * beyond;
    moves
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
