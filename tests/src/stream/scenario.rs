//! Scripts: what controls and people do to a machine, and the stream that its instruments then show.

use super::fleet::{Half, draw};
use super::meter::{Fitted, Meter, Truth};
use super::plant::{Build, Hands, Metering, Plant, STEP_S};
use super::random::{Random, Wander};
use super::truth::{Doing, Judge};
use rimewise::monitor::{Sample, Settings, State};
use rimewise::refrigerant::Refrigerant;
use rimewise::system::Metering as Device;
use rimewise::system::{CompressorPlate, Design, Duty, System};

/// What a stream shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Story {
    /// The thermostat starts and stops a machine in order.
    Cycling,
    /// A machine in order cools its warm space.
    PullDown,
    /// It starts with liquid in the compressor.
    LiquidOnStart,
    /// Its compressor is tight: current is above the plate and stays there.
    TightCompressor,
    /// Its valve hunts.
    Hunting,
    /// It is pumped down against the suction service valve.
    PumpDownSuction,
    /// It is pumped down against a valve in the liquid line.
    PumpDownLiquid,
    /// Its start gear stays in.
    StartGear,
    /// Its rotor is locked at first: the overload opens and closes.
    LockedRotor,
    /// It makes short runs.
    ShortCycling,
    /// It is defrosted with a heater.
    Defrost,
    /// Its friction grows while it cools.
    GrowingFriction,
    /// It stands until its pressures are equal and at rest, everything at one temperature.
    Standing,
    /// As cycling, and no current is measured.
    PressuresOnly,
}

/// All stories, in the order in which streams take turns.
pub const STORIES: [Story; 14] = [
    Story::Cycling,
    Story::PullDown,
    Story::LiquidOnStart,
    Story::TightCompressor,
    Story::Hunting,
    Story::PumpDownSuction,
    Story::PumpDownLiquid,
    Story::StartGear,
    Story::LockedRotor,
    Story::ShortCycling,
    Story::Defrost,
    Story::GrowingFriction,
    Story::Standing,
    Story::PressuresOnly,
];

/// Something that is done at a time.
#[derive(Clone, Copy, Debug)]
enum Act {
    On,
    Off,
    /// Energised with a locked rotor.
    Locked,
    /// Energised with start gear that stays in.
    Gear,
    /// The start gear drops out late.
    GearOut,
    /// The overload opens.
    Trip,
    CloseSuction,
    CloseLiquid,
    Open,
    Heat(f64),
    Hunt(f64, f64),
    Friction(f64),
    Thermostat(f64, f64),
}

/// A pump-down as it was.
#[derive(Clone, Debug, Default)]
pub struct PumpDownTruth {
    /// When the valve was closed and the compressor stopped, ms.
    pub closed_ms: u64,
    /// When the compressor stopped.
    pub stopped_ms: u64,
    /// Lowest pressure, kPa.
    pub lowest_kpa: f64,
    /// Pressure at every tenth of a second after the stop, kPa.
    pub after: Vec<f64>,
}

/// A stream with its truth.
#[derive(Clone, Debug)]
pub struct Stream {
    /// What it shows.
    pub story: Story,
    /// The number it was drawn with.
    pub seed: u64,
    /// The refrigerant.
    pub refrigerant: &'static Refrigerant<'static>,
    /// What is known of the machine.
    pub system: System,
    /// What the monitor is told.
    pub settings: Settings,
    /// The samples.
    pub samples: Vec<Sample>,
    /// What the samples would be without noise, with the same offsets and lags.
    pub quiet: Vec<Sample>,
    /// The state at each sample, and how long it has been so, s.
    pub states: Vec<(State, f64)>,
    /// When the compressor was energised, ms.
    pub starts: Vec<u64>,
    /// When its supply was cut, ms.
    pub stops: Vec<u64>,
    /// The pump-downs.
    pub pump_downs: Vec<PumpDownTruth>,
    /// Highest current of each start as the model has it, A.
    pub inrush_a: Vec<f64>,
    /// Whether liquid was in the compressor twenty seconds after any start, whatever the story.
    pub liquid: bool,
    /// Period of hunting, s, and the swing of suction in it as a share of its mean, where it hunts.
    pub hunting: Option<(f64, f64)>,
}

/// Draws a stream.
pub fn stream(half: Half, story: Story, seed: u64) -> Stream {
    let mut random = Random::new(seed ^ if half == Half::Setting { 0 } else { 0x5EED_0000_0000 });
    let metering = match story {
        Story::Hunting | Story::Defrost | Story::PumpDownLiquid | Story::GrowingFriction => {
            Some(Metering::Valve)
        }
        Story::Standing => Some(Metering::Capillary),
        _ => None,
    };
    let build = draw(half, &mut random, metering);
    script(build, story, seed, &mut random)
}

fn script(build: Build, story: Story, seed: u64, random: &mut Random) -> Stream {
    let (set, ambient) = (build.space, build.ambient + random.between(-7.0, 3.0));
    let capacity = build.capacity;
    let gap = |random: &mut Random| random.between(60.0, 200.0);
    let mut acts: Vec<(f64, Act)> = vec![];
    let mut space = set + random.between(0.5, 3.0);
    let mut at = gap(random);
    let first = at;
    let mut slug = 0.0;
    let mut length = 1500.0;
    let run = |random: &mut Random| random.between(420.0, 700.0);
    match story {
        Story::Cycling | Story::PressuresOnly => {
            acts.push((at, Act::Thermostat(set, random.between(2.0, 4.0))));
            length = 2400.0;
        }
        Story::PullDown => {
            space = ambient.min(set + random.between(10.0, 40.0)) - 1.0;
            acts.push((at, Act::On));
            length = 2400.0;
        }
        Story::LiquidOnStart => {
            space = set + random.between(1.0, 6.0);
            slug = random.between(0.25, 0.7);
            acts.push((at, Act::On));
        }
        Story::TightCompressor => {
            space = set + random.between(1.0, 6.0);
            slug = random.between(0.0, 0.02);
            acts.push((at, Act::On));
        }
        Story::Hunting => {
            acts.push((at, Act::On));
            at += run(random);
            acts.push((at, Act::Hunt(random.between(0.2, 0.6), random.between(40.0, 150.0))));
        }
        Story::PumpDownSuction | Story::PumpDownLiquid => {
            acts.push((at, Act::On));
            at += run(random);
            acts.push((
                at,
                if story == Story::PumpDownSuction { Act::CloseSuction } else { Act::CloseLiquid },
            ));
            at += if story == Story::PumpDownSuction {
                random.between(30.0, 150.0)
            } else {
                random.between(120.0, 400.0)
            };
            acts.push((at, Act::Off));
            at += random.between(80.0, 240.0);
            acts.push((at, Act::Open));
            at += random.between(40.0, 120.0);
            acts.push((at, Act::On));
            length = at + 300.0;
        }
        Story::StartGear => {
            acts.push((at, Act::Gear));
            if random.happens(0.5) {
                at += random.between(7.0, 25.0);
                acts.push((at, Act::GearOut));
            } else {
                for _ in 0..2 {
                    at += random.between(7.0, 20.0);
                    acts.push((at, Act::Trip));
                    at += gap(random);
                    acts.push((at, Act::Gear));
                }
                at += random.between(7.0, 12.0);
                acts.push((at, Act::GearOut));
            }
            length = at + 600.0;
        }
        Story::LockedRotor => {
            for _ in 0..3 {
                acts.push((at, Act::Locked));
                at += random.between(6.0, 14.0);
                acts.push((at, Act::Trip));
                at += gap(random);
            }
            if random.happens(0.5) {
                acts.push((at, Act::On));
            }
            length = at + 600.0;
        }
        Story::ShortCycling => {
            for _ in 0..6 {
                acts.push((at, Act::On));
                at += random.between(25.0, 150.0);
                acts.push((at, Act::Off));
                at += random.between(40.0, 180.0);
            }
            length = at + 200.0;
        }
        Story::Defrost => {
            acts.push((at, Act::On));
            at += run(random);
            acts.push((at, Act::Off));
            at += random.between(5.0, 60.0);
            acts.push((at, Act::Heat(capacity * random.between(0.7, 1.2))));
            at += random.between(400.0, 900.0);
            acts.push((at, Act::Heat(0.0)));
            at += random.between(60.0, 180.0);
            acts.push((at, Act::On));
            length = at + 500.0;
        }
        Story::GrowingFriction => {
            space = (set + random.between(12.0, 25.0)).min(ambient - 1.0);
            acts.push((at, Act::On));
            at += random.between(400.0, 500.0);
            acts.push((at, Act::Friction(random.between(0.06, 0.15) / 60.0)));
            length = at + 500.0;
        }
        Story::Standing => {
            space = ambient;
            acts.push((at, Act::On));
            at += random.between(60.0, 120.0);
            acts.push((at, Act::Off));
            length = at + 2700.0;
        }
    }
    let fitted = match story {
        Story::PressuresOnly => Fitted::NoCurrent,
        _ => random.pick(&[Fitted::All, Fitted::Usual, Fitted::Usual]),
    };
    let mut plant = Plant::at_rest(build, space, ambient);
    plant.slug = slug * plant.build.full_mass;
    plant.evaporator_liquid = (plant.evaporator_liquid - 0.5 * plant.slug).max(0.2 * plant.build.full_mass);
    if story == Story::GrowingFriction {
        // Little load, so that the pressures go on falling.
        plant.build.load *= 0.3;
        plant.build.space_heat *= 2.0;
    }
    if story == Story::Standing {
        plant.build.space_heat *= 30.0;
    }
    plant.faults.gear = random.between(1.0, 1.8);
    if matches!(story, Story::PumpDownSuction | Story::PumpDownLiquid) {
        plant.faults.leak = if random.happens(0.3) { 0.0 } else { random.between(0.0007, 0.012) };
    }
    if story == Story::TightCompressor {
        // So tight that it draws 1.12 to 1.45 of its rated load at the design point.
        let b = &plant.build;
        let wanted = random.between(1.12, 1.45) * b.rated;
        let load = (wanted * wanted - b.magnetising * b.magnetising).sqrt() / b.amps_per_watt;
        plant.faults.friction = load / b.design_power - 1.12;
        plant.faults.leak = random.between(0.0, 0.1);
    }
    play(plant, story, seed, &acts, (first, length), ambient, fitted, random)
}

#[allow(clippy::too_many_arguments)]
fn play(
    mut plant: Plant,
    story: Story,
    seed: u64,
    acts: &[(f64, Act)],
    (first, length): (f64, f64),
    ambient: f64,
    fitted: Fitted,
    random: &mut Random,
) -> Stream {
    let b = &plant.build;
    let system = system(b);
    let settings = Settings::of(&system);
    let mut out = Stream {
        story,
        seed,
        refrigerant: b.fluid.table,
        system,
        settings,
        samples: vec![],
        quiet: vec![],
        states: vec![],
        starts: vec![],
        stops: vec![],
        pump_downs: vec![],
        inrush_a: vec![],
        liquid: false,
        hunting: None,
    };
    let mut meter = Meter::draw(fitted, random);
    let mut judge = Judge::new(b.regulator.is_some());
    let mut supply = Wander::new(0.012 * b.volts, 60.0, random);
    let mean_volts = b.volts * random.between(0.95, 1.04);
    let mut hands = Hands {
        on: false,
        locked: false,
        gear_in: false,
        suction_valve: true,
        liquid_valve: true,
        heater: 0.0,
        fan: 1.0,
        valve: 1.0,
        volts: mean_volts,
        ambient,
        door: 0.0,
    };
    let mut tripped = false;
    let mut hunt: Option<(f64, f64, f64)> = None;
    let mut friction_rate = 0.0;
    let mut thermostat: Option<(f64, f64)> = None;
    let mut next_act = 0;
    let mut last_switch = f64::NEG_INFINITY;
    // Before the stream the machine stands for a while, so that its parts agree with each other.
    let mut tick: i64 = -3000;
    let ticks = |seconds: f64| (seconds / STEP_S).round() as i64;
    let mut next_sample = random.between(0.0, 1.0);
    let mut last_sample = 0.0;
    let mut state = (State::Off, 0.0);
    let mut peak = 0.0f64;
    let mut holding_kpa = f64::INFINITY;
    let mut swing = (f64::INFINITY, 0.0f64);
    while tick < ticks(length) {
        let time = tick as f64 * STEP_S;
        let time_ms = (time * 1000.0).round() as u64;
        let was_on = hands.on;
        while let Some((_, act)) = acts.get(next_act).filter(|(at, _)| ticks(*at) <= tick) {
            next_act += 1;
            match *act {
                Act::On => (hands.on, hands.locked, hands.gear_in, tripped) = (true, false, false, false),
                Act::Off => hands.on = false,
                Act::Locked => (hands.on, hands.locked, tripped) = (true, true, false),
                Act::Gear => (hands.on, hands.locked, hands.gear_in, tripped) = (true, false, true, false),
                Act::GearOut => hands.gear_in = false,
                Act::Trip => (hands.on, hands.locked, hands.gear_in, tripped) = (false, false, false, true),
                Act::CloseSuction | Act::CloseLiquid => {
                    if matches!(*act, Act::CloseSuction) {
                        hands.suction_valve = false;
                    } else {
                        hands.liquid_valve = false;
                    }
                    out.pump_downs.push(PumpDownTruth {
                        closed_ms: time_ms,
                        lowest_kpa: f64::INFINITY,
                        ..PumpDownTruth::default()
                    });
                }
                Act::Open => (hands.suction_valve, hands.liquid_valve) = (true, true),
                Act::Heat(watts) => (hands.heater, hands.fan) = (watts, if watts > 0.0 { 0.03 } else { 0.2 }),
                Act::Hunt(size, period) => hunt = Some((size, period, time)),
                Act::Friction(rate) => friction_rate = rate,
                Act::Thermostat(set, band) => thermostat = Some((set, band)),
            }
        }
        if let Some((set, band)) = thermostat
            && time - last_switch > 100.0
        {
            if !hands.on && plant.space > set + band / 2.0 {
                hands.on = true;
            } else if hands.on && plant.space < set - band / 2.0 {
                hands.on = false;
            }
        }
        if hands.on {
            hands.fan = 1.0;
        }
        if hands.on != was_on {
            last_switch = time;
            if tick >= 0 {
                if hands.on {
                    out.starts.push(time_ms);
                    peak = 0.0;
                } else {
                    out.stops.push(time_ms);
                    out.inrush_a.push(peak);
                    if let Some(pump_down) = out.pump_downs.last_mut()
                        && !(hands.suction_valve && hands.liquid_valve)
                    {
                        pump_down.stopped_ms = time_ms;
                    }
                }
            }
        }
        if let Some((size, period, since)) = hunt {
            hands.valve = 1.0 + size * (std::f64::consts::TAU * (time - since) / period).sin();
            if time > since + 2.0 * period && time < since + 3.2 * period {
                swing = (swing.0.min(plant.suction / 1000.0), swing.1.max(plant.suction / 1000.0));
                out.hunting = Some((period, 2.0 * (swing.1 - swing.0) / (swing.1 + swing.0)));
            }
        }
        plant.faults.friction += friction_rate * STEP_S;
        if tick % 10 == 0 {
            hands.volts = mean_volts + supply.step(1.0, random);
            // A starting motor pulls its supply down.
            if hands.on && plant.current > 3.0 * plant.build.rated {
                hands.volts *= 0.96;
            }
        }
        plant.step(&hands);
        let suction_kpa = plant.suction / 1000.0;
        if hands.on {
            if plant.running > 20.0 && plant.running < 60.0 {
                out.liquid |= plant.slug > 0.1 * plant.build.full_mass;
            }
            peak = peak.max(plant.current);
        }
        let closed = !(hands.suction_valve && hands.liquid_valve);
        // Opening a valve ends the holding when the pressure shows it.
        if closed {
            holding_kpa = suction_kpa;
        } else if hands.on || suction_kpa > 1.25 * holding_kpa + 10.0 {
            holding_kpa = f64::INFINITY;
        }
        let held = closed || (!hands.on && holding_kpa.is_finite());
        if let Some(pump_down) = out.pump_downs.last_mut()
            && closed
        {
            if hands.on {
                pump_down.lowest_kpa = pump_down.lowest_kpa.min(suction_kpa);
            } else {
                pump_down.after.push(suction_kpa);
            }
        }
        let seen = truth(&plant, &hands);
        meter.follow(&seen, STEP_S);
        if tick >= 0 && tick % 10 == 0 {
            let doing = Doing { on: hands.on, closed: held, heated: hands.heater > 0.0, tripped };
            let values = [suction_kpa, plant.discharge / 1000.0, plant.current, plant.outlet, plant.space];
            let now = judge.second(time, doing, values);
            if now != state.0 {
                state = (now, time);
            }
        }
        if tick >= 0 && time >= next_sample {
            let (sample, quiet) = meter.read(time_ms + 1_000_000, time - last_sample, random);
            out.samples.push(sample);
            out.quiet.push(quiet);
            out.states.push((state.0, time - state.1));
            last_sample = time;
            next_sample += meter.wait(random);
        }
        tick += 1;
    }
    if hands.on {
        out.inrush_a.push(peak);
    }
    // The clock of the instruments is not that of the model.
    for time in out.starts.iter_mut().chain(&mut out.stops) {
        *time += 1_000_000;
    }
    for pump_down in &mut out.pump_downs {
        pump_down.closed_ms += 1_000_000;
        pump_down.stopped_ms += 1_000_000;
    }
    debug_assert!(first > 0.0);
    out
}

/// Tells what a technician would know of a machine.
fn system(b: &Build) -> System {
    let space = b.space as f32;
    System {
        metering: Some(match b.metering {
            Metering::Capillary => Device::Capillary,
            Metering::Valve => Device::ThermostaticValve,
        }),
        receiver: Some(b.metering == Metering::Valve),
        suction_pressure_regulator: Some(b.regulator.is_some()),
        duty: Some(if space < -10.0 {
            Duty::Freezer
        } else if space < 15.0 {
            Duty::Cooler
        } else {
            Duty::AirConditioning
        }),
        design: Design {
            space_c: Some(space),
            ambient_c: Some(b.ambient as f32),
            evaporator_td_k: Some((b.space - b.evaporating) as f32),
            condenser_td_k: Some((b.condensing - b.ambient) as f32),
            ..Design::default()
        },
        compressor: CompressorPlate {
            rated_load_a: Some(b.rated as f32),
            locked_rotor_a: Some(b.locked as f32),
            rated_v: Some(b.volts as f32),
            ..CompressorPlate::default()
        },
        ..System::default()
    }
}

fn truth(plant: &Plant, hands: &Hands) -> Truth {
    let supply_air = plant.space - 0.5 * (plant.space - plant.evaporator_wall);
    [
        plant.suction / 1000.0,
        plant.evaporator / 1000.0,
        plant.discharge / 1000.0,
        plant.discharge / 1000.0 * 0.985,
        plant.outlet,
        plant.line,
        plant.discharge_line,
        plant.liquid_line,
        plant.liquid_line - 0.3,
        plant.space,
        supply_air,
        hands.ambient,
        hands.ambient + 0.5 * (plant.condenser_wall - hands.ambient),
        plant.current,
        hands.volts,
    ]
}
