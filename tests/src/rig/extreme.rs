//! Visits at the ends: limit states of a running machine, the standing pressure of a stopped one, dead motors and bad
//! supplies. They are made and graded apart from the others, whose faults are mild to middling.

use super::fault::{CAUSES, Cause};
use super::limit;
use super::machine::{Faults, Machine};
use super::math::{Rng, root};
use super::total::{self, Settled, Step};
use super::visit::{self, Type, round};
use super::{fleet, solve, unit};
use serde_json::{Map, Value, json};

/// What kind of end a visit is at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Group {
    /// Running, little or nothing cooled.
    LimitState,
    /// Stopped and equalised.
    Standing,
    /// Motor, start gear or supply.
    Electrical,
}

impl Group {
    /// Every group.
    pub const ALL: [Group; 3] = [Group::LimitState, Group::Standing, Group::Electrical];

    /// Its name in a table.
    pub fn name(self) -> &'static str {
        match self {
            Group::LimitState => "limit states",
            Group::Standing => "standing pressure",
            Group::Electrical => "motor and supply",
        }
    }
}

/// What is so, in the words of a verdict.
#[derive(Clone, Debug)]
pub struct Truth {
    /// Group.
    pub group: Group,
    /// What it is, for a table: a cause, `none`, or an electrical fault.
    pub what: String,
    /// `setting` or `grading`.
    pub half: String,
    /// Statements that are right, such as `cause:undercharge` or `electrical:open_winding`; `healthy` where all is well.
    pub right: Vec<String>,
    /// Whether the machine is known not to cool.
    pub dead: bool,
    /// Whether compressor and motor are good.
    pub sound: bool,
    /// Whether the motor must not be put on the supply.
    pub must_not_run: bool,
}

/// A visit at an end.
#[derive(Clone, Debug)]
pub struct Extreme {
    /// The visit.
    pub visit: Value,
    /// What is so.
    pub truth: Truth,
}

/// Places on a way; coarser than a sweep's.
const STEPS: usize = 10;
/// Capacity below which a way has reached its end.
const ENDED: f64 = 0.5;
/// A machine below this share does not cool.
const DEAD: f64 = 0.2;

/// Makes one; `None` where this unit or day has no such state.
pub fn make(types: &[Type], seed: u64, index: u64) -> Option<Extreme> {
    let mut rng = Rng::new(seed ^ 0x00ED, index);
    let kind = types.get(rng.below(types.len()))?;
    let mut made = match index % 4 {
        0 | 1 => limit_state(kind, &mut rng)?,
        2 => standing(kind, &mut rng)?,
        _ => electrical(kind, &mut rng)?,
    };
    made.truth.half = if fleet::is_setting(kind.machine.spec.name) { "setting" } else { "grading" }.into();
    Some(made)
}

/// A unit of a type at work on some day, in good order.
fn at_work(kind: &Type, rng: &mut Rng) -> Option<(Machine, Settled)> {
    let nominal = &kind.machine;
    let machine = unit::vary(nominal, rng);
    let mut day = visit::day(nominal, rng);
    // The set point: how warm the box gets is the machine's own doing.
    day.space = nominal.spec.space + 273.15 + rng.between(-1.5, 1.5);
    day.humidity = nominal.design_day().humidity;
    let good = Faults::default();
    let from = nominal.design_day();
    let x = solve::newton(&machine, &nominal.design, &from, &good).ok()?;
    let point = machine.evaluate(&x, &from, &good)?;
    let start = Settled { x, day: from, point };
    let settled = total::settle(&machine, (&start, &good), &day, &good).ok()?;
    Some((machine, settled))
}

fn limit_state(kind: &Type, rng: &mut Rng) -> Option<Extreme> {
    let (machine, healthy) = at_work(kind, rng)?;
    let cause = CAUSES[rng.below(CAUSES.len())];
    let design =
        kind.machine.evaluate(&kind.machine.design, &kind.machine.design_day(), &Faults::default())?;
    let way: Vec<Step> = total::way(&machine, kind.leak_share, cause, &healthy, STEPS);
    // From where little is left, or the last quarter of what the cause can do to this machine.
    let ended = |s: &Step| s.at.point.capacity < ENDED * healthy.point.capacity;
    let from = way.iter().position(ended).unwrap_or(way.len() * 3 / 4).min(way.len() - 1);
    let step = way.get(from + rng.below(way.len() - from))?;
    let p = limit::clamped(&design, &step.at.day, &step.at.point);
    let shown = visit::readings(&machine, &p, &step.at.day);
    let keep_evaporator = machine.spec.regulator.is_some();
    let keep_liquid = machine.spec.receiver || rng.chance(0.3);
    let mut readings = visit::measured(&shown, rng, keep_evaporator, keep_liquid);
    readings.insert("hours_running".into(), json!(round(rng.between(6.0, 72.0), 1.0)));
    let mut out = json!({ "system": visit::system(&kind.machine, rng), "readings": readings });
    if rng.chance(0.6) {
        out["observations"] = Value::Object(visit::observations(&machine, &p, &[], rng));
    }
    let warm = step.at.day.space - machine.spec.space - 273.15;
    if warm > 2.0 {
        out["complaint"] = json!(["not_cold", "never_stops"]);
    } else {
        out["complaint"] = json!(["never_stops"]);
    }
    out["complaint_hours"] = json!(round(rng.between(4.0, 96.0), 1.0));
    let left = step.at.point.capacity / healthy.point.capacity;
    let word = cause.word();
    let mut right = vec![format!("cause:{word}")];
    if matches!(cause, Cause::LiquidLineRestriction | Cause::MeteringUnderfeed) {
        right.push("family:liquid_feed".into());
    }
    Some(Extreme {
        visit: out,
        truth: Truth {
            group: Group::LimitState,
            what: word.into(),
            half: String::new(),
            right,
            dead: left < DEAD,
            sound: cause != Cause::WeakCompressor,
            must_not_run: false,
        },
    })
}

/// Standing pressure of a charge in a machine at one temperature, Pa.
///
/// Gas fills the whole inside, the oil takes its share; where that holds less than the charge, the rest is liquid and
/// the pressure is that of saturation.
pub fn standing_pressure(machine: &Machine, charge: f64, t: f64) -> f64 {
    let f = &*machine.fluid;
    let saturated = f.dew_pressure(t);
    let c = &machine.compressor;
    let coil =
        |c: &super::exchanger::Coil| core::f64::consts::PI * c.bore * c.bore / 4.0 * c.length * c.circuits;
    let inside =
        machine.volumes.iter().sum::<f64>() + c.volume + coil(&machine.evaporator) + coil(&machine.condenser);
    let held = |p: f64| {
        let v = f.state(&f.sat(p), f.vapor_enthalpy(p, t)).v;
        let part = (p / saturated).min(0.98);
        inside / v + c.oil * 0.45 * part / (1.0 - 0.45 * part)
    };
    let lowest = f.range.0 * 1.1;
    if held(saturated * 0.999) <= charge {
        // A blend with a little liquid stands between its two points.
        return 0.5 * (saturated + f.bubble_pressure(t));
    }
    root(libm::log(lowest), libm::log(saturated * 0.999), |l| held(libm::exp(l)) - charge)
        .map_or(lowest, libm::exp)
}

fn standing(kind: &Type, rng: &mut Rng) -> Option<Extreme> {
    let machine = unit::vary(&kind.machine, rng);
    let t = rng.between(15.0, 32.0) + 273.15;
    let u = rng.unit();
    let mut gas = 0.0;
    let (what, charge) = if u < 0.4 {
        ("none", machine.charge)
    } else if u < 0.75 {
        ("undercharge", machine.charge * rng.between(0.03, 0.6))
    } else {
        gas = rng.between(0.06, 0.5) * machine.fluid.mean_pressure(t);
        ("non_condensables", machine.charge)
    };
    let mut p = standing_pressure(&machine, charge, t) + gas;
    // A leak ends where the room's air stands against it.
    p = p.max(100_000.0);
    let air = |rng: &mut Rng| round(t - 273.15 + 0.5 * rng.normal(), 0.1);
    let mut readings = Map::new();
    readings.insert("running".into(), json!(false));
    let read = p / 1000.0 * (1.0 + 0.01 * rng.normal()) + 2.0 * rng.normal();
    readings.insert("standing_pressure_kpa".into(), json!(round(read, 0.1)));
    readings.insert("standing_temperature_c".into(), json!(air(rng)));
    readings.insert("ambient_c".into(), json!(air(rng)));
    readings.insert("space_c".into(), json!(air(rng)));
    let mut system = visit::system(&kind.machine, rng);
    if rng.chance(0.6) {
        system["charge_kg"] = json!(round(kind.machine.charge, 0.001));
    }
    let mut out = json!({ "system": system, "readings": readings });
    if what != "none" {
        out["complaint"] = json!(["not_cold"]);
        out["complaint_hours"] = json!(24);
    }
    if gas > 0.0 {
        out["history"] = json!(["circuit_opened"]);
    }
    let right = if what == "none" { "healthy".to_string() } else { format!("cause:{what}") };
    Some(Extreme {
        visit: out,
        truth: Truth {
            group: Group::Standing,
            what: what.into(),
            half: String::new(),
            right: vec![right],
            dead: false,
            sound: true,
            must_not_run: false,
        },
    })
}

/// An electrical fault: its name, what may be said of it, whether compressor and motor are good, whether it must stay
/// off the supply.
type Fault = (&'static str, &'static [&'static str], bool, bool);

const AT_REST: [Fault; 9] = [
    ("nothing electrical", &["healthy"], true, false),
    ("run winding open", &["electrical:open_winding"], false, true),
    ("start winding open", &["electrical:open_winding"], false, true),
    ("overload open, hot", &["electrical:overload_open"], true, false),
    ("turns shorted", &["electrical:shorted_turns"], false, true),
    ("winding to frame", &["electrical:winding_to_frame"], false, true),
    ("start capacitor open", &["electrical:start_capacitor_open"], true, false),
    ("run capacitor low", &["electrical:run_capacitor_low"], true, false),
    ("rotor locked", &["electrical:locked_rotor"], false, false),
];

const THREE_PHASES: [Fault; 4] = [
    ("nothing electrical", &["healthy"], true, false),
    ("winding to frame", &["electrical:winding_to_frame"], false, true),
    ("voltage unbalance", &["electrical:voltage_unbalance", "electrical:current_unbalance"], true, false),
    ("single phasing", &["electrical:current_unbalance", "electrical:voltage_unbalance"], true, true),
];

fn electrical(kind: &Type, rng: &mut Rng) -> Option<Extreme> {
    let machine = &kind.machine;
    let three = machine.spec.motor.phases > 2.0;
    let (what, right, sound, must_not_run) =
        if three { THREE_PHASES[rng.below(THREE_PHASES.len())] } else { AT_REST[rng.below(AT_REST.len())] };
    let mut system = visit::system(machine, rng);
    // Without these on the plate nobody can tell.
    let rated = system["compressor"]["rated_load_a"].as_f64().unwrap_or(5.0);
    system["compressor"]["rated_load_a"] = json!(rated);
    let locked = round(rated * rng.between(4.5, 6.5), 1.0);
    system["compressor"]["locked_rotor_a"] = json!(locked);
    let volts = machine.spec.motor.voltage;
    let near = |rng: &mut Rng, x: f64, to: f64| round(x * (1.0 + 0.01 * rng.normal()), to);
    let mut r = Map::new();
    r.insert("ambient_c".into(), json!(round(rng.between(15.0, 35.0), 0.1)));
    let mut complaint = vec!["does_not_start", "trips"];
    let mut observations = Map::new();
    let running = what == "single phasing" || what == "voltage unbalance";
    if !running {
        r.insert("running".into(), json!(false));
    }
    let frame = if what == "winding to frame" { rng.between(0.01, 0.3) } else { rng.between(40.0, 400.0) };
    if three {
        let ohm = rng.between(0.8, 4.0);
        if !running {
            for pair in ["terminal_12_ohm", "terminal_23_ohm", "terminal_13_ohm"] {
                r.insert(pair.into(), json!(near(rng, ohm, 0.01)));
            }
            r.insert("winding_to_frame_megohm".into(), json!(round(frame, 0.001)));
            r.insert("insulation_test_v".into(), json!(500));
        }
        let off = match what {
            "voltage unbalance" => rng.between(0.045, 0.08),
            _ => 0.0,
        };
        let lines: Vec<f64> = [1.0 - off, 1.0 + 0.3 * off, 1.0 + 0.3 * off]
            .iter()
            .map(|x| round(volts * x * (1.0 + 0.002 * rng.normal()), 0.1))
            .collect();
        if running {
            r.insert("line_voltages_v".into(), json!(lines));
            let a = rated * 0.8;
            let amps = if what == "single phasing" {
                // Root three and a little more in the two that are left.
                vec![0.0, near(rng, a * 1.85, 0.1), near(rng, a * 1.85, 0.1)]
            } else {
                // Current unbalance is six to ten times that of the voltage (from memory).
                let k = 7.0 * off;
                vec![
                    near(rng, a * (1.0 - k), 0.1),
                    near(rng, a * (1.0 + 0.6 * k), 0.1),
                    near(rng, a * (1.0 + 0.4 * k), 0.1),
                ]
            };
            r.insert("line_currents_a".into(), json!(amps));
            complaint = vec!["trips"];
        }
    } else {
        let run = round(rng.between(1.2, 12.0), 0.1);
        let start = round(run * rng.between(2.2, 5.0), 0.1);
        system["compressor"]["run_winding_ohm"] = json!(run);
        system["compressor"]["start_winding_ohm"] = json!(start);
        system["compressor"]["winding_reference_c"] = json!(25);
        system["compressor"]["start_capacitor_uf"] = json!(88);
        system["compressor"]["run_capacitor_uf"] = json!(20);
        let hot = what == "overload open, hot";
        let t = if hot { rng.between(60.0, 95.0) } else { rng.between(15.0, 45.0) };
        let warm = (t + 234.5) / (25.0 + 234.5);
        let shorted = if what == "turns shorted" { rng.between(0.4, 0.7) } else { 1.0 };
        let (a, b) = (run * warm * shorted, start * warm);
        let open = |is: bool, x: f64| if is { json!("open") } else { json!(x) };
        let (ro, so) = (what == "run winding open", what == "start winding open");
        r.insert("winding_run_ohm".into(), open(ro || hot, near(rng, a, 0.01)));
        r.insert("winding_start_ohm".into(), open(so || hot, near(rng, b, 0.01)));
        r.insert("winding_run_to_start_ohm".into(), open(ro || so, near(rng, a + b, 0.01)));
        r.insert("winding_to_frame_megohm".into(), json!(round(frame, 0.001)));
        r.insert("winding_c".into(), json!(round(t + 2.0 * rng.normal(), 1.0)));
        match what {
            "start capacitor open" => {
                r.insert("start_capacitor_uf".into(), json!("open"));
                observations.insert("start_sound".into(), json!("hums_and_trips"));
            }
            "run capacitor low" => {
                r.insert("run_capacitor_uf".into(), json!(round(20.0 * rng.between(0.3, 0.8), 0.1)));
                complaint = vec!["trips"];
            }
            "rotor locked" => {
                r.insert("start_current_a".into(), json!(near(rng, locked, 0.1)));
                r.insert("start_capacitor_uf".into(), json!(near(rng, 90.0, 0.1)));
                r.insert("run_capacitor_uf".into(), json!(near(rng, 20.0, 0.1)));
                r.insert("voltage_v".into(), json!(near(rng, volts, 1.0)));
                observations.insert("start_sound".into(), json!("hums_and_trips"));
            }
            "nothing electrical" => complaint = vec!["maintenance"],
            _ => {
                observations.insert("start_sound".into(), json!("silent"));
            }
        }
    }
    if what == "nothing electrical" {
        complaint = vec!["maintenance"];
    }
    let mut out = json!({ "system": system, "readings": r, "complaint": complaint });
    if !observations.is_empty() {
        out["observations"] = Value::Object(observations);
    }
    Some(Extreme {
        visit: out,
        truth: Truth {
            group: Group::Electrical,
            what: what.into(),
            half: String::new(),
            right: right.iter().map(|s| s.to_string()).collect(),
            dead: !running && what != "nothing electrical" && what != "run capacitor low",
            sound,
            must_not_run,
        },
    })
}

/// Makes a run on two threads; places that have no such state are left out.
pub fn run(types: &[Type], seed: u64, visits: u64) -> Vec<Extreme> {
    let half = |start: u64| -> Vec<(u64, Extreme)> {
        (start..visits).step_by(2).filter_map(|i| Some((i, make(types, seed, i)?))).collect()
    };
    let mut all = std::thread::scope(|s| {
        let other = s.spawn(|| half(1));
        let mut even = half(0);
        even.extend(other.join().unwrap_or_default());
        even
    });
    all.sort_by_key(|e| e.0);
    all.into_iter().map(|e| e.1).collect()
}
