//! What the diagnosis makes of machines that are just as the library holds them to be.
//!
//! Machines are drawn from its own model with its own spreads, single faults from its own prior, readings with its own
//! instruments. Where the diagnosis is not calibrated on these it is wrong by itself, whatever real machines do; and it
//! will hardly be right more often on machines that it knows less well. `cargo test -p rimewise --lib drawn --
//! --nocapture` prints the figures.

use super::hypothesis::{SIGNATURE_FRACTION, singles};
use super::signature::{Ladder, climb};
use crate::cause::Cause;
use crate::cycle::clamp_bias;
use crate::expectation::{Expectation, balance, off_design};
use crate::machine::nuisance::{Nuisance, Other};
use crate::machine::{Fault, Fluid, Machine, Memo, Nominal, Run, solve};
use crate::readings::{Readings, Uncertainty, Visit};
use crate::refrigerant::{Refrigerant, find};
use crate::symptom::{self, DISCREPANCY, Vector};
use crate::system::{Design, Duty, Metering, System};
use std::println;

/// A permuted congruential generator (O'Neill 2014, PCG-XSH-RR), so that the draws are the same everywhere.
struct Random(u64);

impl Random {
    /// Between 0 and 1.
    fn unit(&mut self) -> f32 {
        let x = self.0;
        self.0 = x.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        let word = ((((x >> 18) ^ x) >> 27) as u32).rotate_right((x >> 59) as u32);
        (word as f32 + 0.5) / 4_294_967_296.0
    }
    fn between(&mut self, low: f32, high: f32) -> f32 {
        low + (high - low) * self.unit()
    }
    /// Standard normal, never beyond 2.5: no unit is that odd.
    fn normal(&mut self) -> f32 {
        loop {
            let sum: f32 = (0..12).map(|_| self.unit()).sum();
            if (sum - 6.0).abs() < 2.5 {
                return sum - 6.0;
            }
        }
    }
}

/// An invented machine with a full sheet.
fn machine(
    refrigerant: &str,
    metering: Metering,
    duty: Duty,
    receiver: bool,
) -> (&'static Refrigerant<'static>, System) {
    let (space, ambient, evaporator, condenser, superheat, subcooling) = match duty {
        Duty::Freezer => (-20.0, 32.0, 8.0, 12.0, if receiver { 14.0 } else { 22.0 }, 4.0),
        Duty::Cooler => (3.0, 32.0, 9.0, 12.0, if receiver { 11.0 } else { 18.0 }, 4.0),
        Duty::AirConditioning => (26.7, 35.0, 17.0, 13.0, 9.0, 6.0),
    };
    let mut system = System {
        metering: Some(metering),
        receiver: Some(receiver),
        duty: Some(duty),
        design: Design {
            space_c: Some(space),
            ambient_c: Some(ambient),
            evaporator_td_k: Some(evaporator),
            condenser_td_k: Some(condenser),
            suction_superheat_k: Some(superheat),
            subcooling_k: Some(if receiver { 2.0 } else { subcooling }),
            ..Design::default()
        },
        ..System::default()
    };
    system.compressor.rated_load_a = Some(5.0);
    (find(refrigerant).unwrap(), system)
}

/// Solves the unit on its day, healthy and with its fault, in steps that Newton's method survives.
fn run(fluid: Fluid<'_>, unit: &Machine, cause: Cause, severity: f32) -> Option<(Run, Run)> {
    let (mut x, healthy) = balance(fluid, unit)?;
    let mut faulty = healthy;
    for step in 1..=6u8 {
        let fault = Fault::new(cause, severity * f32::from(step) / 6.0);
        let (at, run, _) = solve(unit, fluid, fault, &x, None)?;
        (x, faulty) = (at, run);
    }
    Some((healthy, faulty))
}

/// What the instruments show.
fn read(
    random: &mut Random,
    fluid: Fluid<'_>,
    shown: &Vector,
    mut day: Readings,
    only: fn(usize) -> bool,
) -> Option<Readings> {
    use symptom::*;
    let u = Uncertainty::default();
    let line = libm::sqrtf(u.line_k() * u.line_k() + BIAS_U_K * BIAS_U_K);
    for (channel, k) in shown.iter().enumerate().filter(|(channel, _)| only(*channel)) {
        let noise = random.normal();
        let gauge = |pa: f32| pa / 1000.0 + noise * u.pressure_kpa(pa / 1000.0);
        let c = k - 273.15;
        let clamp = |surroundings: Option<f32>| {
            surroundings.map(|surroundings| c + clamp_bias(c, surroundings) + noise * line)
        };
        match channel {
            SUCTION_PRESSURE => day.suction_pressure_kpa = Some(gauge(fluid.dew_pa(*k)?)),
            DISCHARGE_PRESSURE => day.discharge_pressure_kpa = Some(gauge(fluid.middle_pa(*k)?)),
            EVAPORATOR_OUTLET => day.evaporator_outlet_c = clamp(day.space_c),
            SUCTION_LINE => day.suction_line_c = clamp(day.ambient_c),
            DISCHARGE_LINE => day.discharge_line_c = clamp(day.ambient_c),
            LIQUID_LINE => day.liquid_line_c = clamp(day.ambient_c),
            DRIER_OUTLET => day.drier_outlet_c = clamp(day.ambient_c),
            SUPPLY_AIR => day.supply_air_c = Some(c + noise * u.air_k()),
            CONDENSER_EXHAUST => day.condenser_exhaust_c = Some(c + noise * u.air_k()),
            CURRENT => day.current_a = Some(5.0 * libm::expf(k / 100.0 + noise * u.current_fraction())),
            _ => {}
        }
    }
    Some(day)
}

/// One visit with the cause that was drawn, and the cause that counts: the same where it costs 5 % or more. Units and model
/// differ by `scale` of the spreads.
fn draw(
    random: &mut Random,
    refrigerant: &Refrigerant<'_>,
    system: &System,
    only: fn(usize) -> bool,
    scale: f32,
) -> Option<(Readings, Cause, Cause)> {
    let memo = Memo::new();
    let fluid = Fluid::new(refrigerant, &memo);
    let design = system.design;
    let day = Readings {
        space_c: design.space_c.map(|c| c + random.between(-2.0, 4.0)),
        ambient_c: design.ambient_c.map(|c| c + random.between(-12.0, 4.0)),
        ..Readings::default()
    };
    let nominal = Nominal::new(fluid, system, &day, &Uncertainty::default())?;

    // A fault from the library's own prior, its severity anywhere in the node's half step.
    let mut healthy = Expectation::NEW;
    healthy.set(fluid, &nominal, &day)?;
    let mut ladders = [const { Ladder::new() }; Cause::COUNT - 1];
    for (ladder, cause) in ladders.iter_mut().zip(Cause::ALL.iter().skip(1)) {
        climb(ladder, fluid, &nominal, &healthy, *cause);
    }
    let mut whole = 0.0;
    singles(&ladders, &mut |hypothesis, _| whole += libm::expf(hypothesis.ln_prior));
    let at = whole * random.unit();
    let (mut passed, mut fault) = (0.0, (Cause::None, 0.0));
    singles(&ladders, &mut |hypothesis, _| {
        if (..at).contains(&passed) {
            fault = (hypothesis.causes[0].unwrap_or(Cause::None), hypothesis.severities[0]);
        }
        passed += libm::expf(hypothesis.ln_prior);
    });
    let (cause, severity) = fault;
    let severity = severity * random.between(0.85, 1.15);

    let mut z = [0.0; Nuisance::COUNT];
    z.fill_with(|| scale * random.normal());
    let unit = Machine::new(fluid, &nominal, &Other::all(z))?;
    let (good, bad) = run(fluid, &unit, cause, severity)?;
    let (mut shown, base) = (symptom::predicted(fluid, &bad), symptom::predicted(fluid, &good));
    for (shown, base) in shown.iter_mut().zip(base) {
        *shown += scale * SIGNATURE_FRACTION * (*shown - base) * random.normal();
    }
    let off = off_design(&nominal);
    for (direction, sd) in DISCREPANCY.iter().chain([&(off, 1.0)]) {
        let by = scale * sd * random.normal();
        for (shown, direction) in shown.iter_mut().zip(direction) {
            *shown += by * direction;
        }
    }
    let cost = 1.0 - (bad.capacity / good.capacity).min(bad.cop / good.cop);
    let there = if cost >= 0.05 { cause } else { Cause::None };
    Some((read(random, fluid, &shown, day, only)?, cause, there))
}

/// Shares of a run: correct, misdiagnosed and missed of the faulty, false alarms of the others, calibration error.
#[derive(Debug, Default)]
struct Shares {
    correct: f32,
    misdiagnosed: f32,
    missed: f32,
    false_alarms: f32,
    calibration_error: f32,
}

/// Draws and diagnoses visits; the shares with and without the two causes that starve the evaporator alike.
fn grade(only: fn(usize) -> bool, scale: f32) -> [Shares; 2] {
    let kinds = [
        machine("R290", Metering::Capillary, Duty::Freezer, false),
        machine("R134a", Metering::Capillary, Duty::Cooler, false),
        machine("R404A", Metering::ThermostaticValve, Duty::Freezer, true),
        machine("R448A", Metering::ThermostaticValve, Duty::Cooler, true),
        machine("R410A", Metering::Orifice, Duty::AirConditioning, false),
        machine("R32", Metering::ElectronicValve, Duty::AirConditioning, false),
    ];
    let mut random = Random(20_260_101);
    let mut shares = [Shares::default(), Shares::default()];
    let (mut faulty, mut healthy) = ([0.0f32; 2], [0.0f32; 2]);
    let mut bins = [[(0.0f32, 0.0f32); 10]; 2];
    let mut visits = 0;
    while visits < 1_200 {
        let (refrigerant, system) = &kinds[visits % kinds.len()];
        let Some((readings, drawn, there)) = draw(&mut random, refrigerant, system, only, scale) else {
            continue;
        };
        let visit = Visit { system: *system, readings, ..Visit::default() };
        // Beyond the table or with the suction above the discharge: nobody would have read that.
        let Ok(report) = crate::answer::diagnose(Some(refrigerant), &visit) else { continue };
        visits += 1;
        let alike = [Cause::LiquidLineRestriction, Cause::MeteringUnderfeed].contains(&there);
        for (i, shares) in shares.iter_mut().enumerate().filter(|(i, _)| *i == 0 || !alike) {
            let leading = &report.diagnosis.causes[0];
            if let Some(bin) = bins[i].get_mut((10.0 * leading.probability) as usize) {
                bin.0 += leading.probability;
                bin.1 += f32::from(u8::from(leading.cause == there));
            }
            let of = if there == Cause::None { &mut healthy[i] } else { &mut faulty[i] };
            *of += 1.0;
            let named = leading.cause != Cause::None;
            match (report.diagnosis.decided, there) {
                (false, _) => {}
                // What is there but too mild to count may be named.
                (true, Cause::None) => {
                    shares.false_alarms += f32::from(u8::from(named && leading.cause != drawn));
                }
                (true, cause) if cause == leading.cause => shares.correct += 1.0,
                (true, _) if named => shares.misdiagnosed += 1.0,
                (true, _) => shares.missed += 1.0,
            }
        }
    }
    for (i, shares) in shares.iter_mut().enumerate() {
        for count in [&mut shares.correct, &mut shares.misdiagnosed, &mut shares.missed] {
            *count /= faulty[i];
        }
        shares.false_alarms /= healthy[i];
        let off: f32 = bins[i].iter().map(|(said, held)| (said - held).abs()).sum();
        shares.calibration_error = off / (faulty[i] + healthy[i]);
    }
    shares
}

fn everything(channel: usize) -> bool {
    channel != symptom::EVAPORATOR_PRESSURE && channel != symptom::LIQUID_PRESSURE
}

fn two_pressures_and_two_clamps(channel: usize) -> bool {
    use symptom::*;
    [SUCTION_PRESSURE, DISCHARGE_PRESSURE, SUCTION_LINE, LIQUID_LINE].contains(&channel)
}

#[test]
fn machines_that_are_as_the_model_says_are_judged_as_surely_as_it_says() {
    for (name, only) in [
        ("all readings", everything as fn(usize) -> bool),
        ("two pressures, two clamps, space, ambient", two_pressures_and_two_clamps),
    ] {
        let [all, told_apart] = grade(only, 1.0);
        println!("{name}: {all:?}\n  without restriction and underfeed: {told_apart:?}");
        assert!(all.calibration_error < 0.04, "{name}: {all:?}");
        assert!(all.misdiagnosed < 0.05 && all.false_alarms < 0.03, "{name}: {all:?}");
        assert!(told_apart.correct > 0.55, "{name}: {told_apart:?}");
    }
}

#[test]
fn machines_nearer_to_their_sheet_than_the_spreads_say_are_judged_no_worse() {
    let [all, told_apart] = grade(everything, 0.4);
    println!(
        "all readings, 0.4 of the spreads: {all:?}\n  without restriction and underfeed: {told_apart:?}"
    );
    assert!(all.misdiagnosed < 0.02 && all.false_alarms < 0.02, "{all:?}");
    assert!(told_apart.correct > 0.7, "{told_apart:?}");
}
