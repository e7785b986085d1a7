//! Guided visits: from the complaint, two air temperatures and the plate, one step after the other until a verdict.
//!
//! Three ways through the same visit: what the report asks for next, a careful technician's fixed order, and everything
//! at once. The rig answers what is looked at, measured and done; what a machine or a van does not have can't be taken.

use super::answer::{self, Answer, WORDS};
use super::known_fields;
use super::outcome::{Class, Truth};
use super::report::Answerer;
use super::said;
use super::spoken::{self, Spoken};
use crate::rig::extreme;
use crate::rig::fault::{self, Cause};
use crate::rig::machine::Faults;
use crate::rig::math::Rng;
use crate::rig::pump_down;
use crate::rig::total::{self, Settled};
use crate::rig::visit::{self, Case, Type, round};
use serde_json::{Map, Value, json};
use std::fmt::Write;

/// Steps after which a visit is given up.
const PATIENCE: usize = 40;

/// Minutes of every step (judged; the judge's own, whatever the report says).
fn minutes(name: &str) -> f64 {
    match name {
        "space_c" | "ambient_c" | "supply_air_c" | "condenser_exhaust_c" | "voltage_v" => 1.0,
        "condenser_fan" | "condenser_face" | "evaporator_fan" | "frost_on_compressor" | "sight_glass" => 1.0,
        "coil_iced" | "frost_line" | "oil_traces" | "door_closes" | "calls_for_cooling" => 2.0,
        "start_noise" | "start_sound" | "start_test" => 4.0,
        "suction_pressure_kpa"
        | "discharge_pressure_kpa"
        | "liquid_pressure_kpa"
        | "evaporator_pressure_kpa" => 5.0,
        "pump_down_kpa" | "pump_down_rise_kpa_per_min" => 10.0,
        "standing_pressure_kpa" | "standing_temperature_c" | "stop_and_equalise" => 25.0,
        "recover_and_weigh" | "recovered_kg" => 45.0,
        "leak_search" | "leak_found" => 20.0,
        "defrost_and_reread" => 30.0,
        "clean_and_reread" => 20.0,
        "let_it_settle" => 15.0,
        _ => 2.0,
    }
}

/// What a careful technician does, in this order.
const FIXED_ORDER: [&str; 20] = [
    "condenser_face",
    "condenser_fan",
    "evaporator_fan",
    "coil_iced",
    "frost_line",
    "frost_on_compressor",
    "sight_glass",
    "suction_pressure_kpa",
    "suction_line_c",
    "evaporator_outlet_c",
    "discharge_pressure_kpa",
    "liquid_line_c",
    "discharge_line_c",
    "supply_air_c",
    "condenser_exhaust_c",
    "current_a",
    "drier_outlet_c",
    "evaporator_pressure_kpa",
    "liquid_pressure_kpa",
    "pump_down_kpa",
];

const OBSERVATIONS: [&str; 13] = [
    "condenser_face",
    "condenser_fan",
    "evaporator_fan",
    "coil_iced",
    "frost_line",
    "frost_on_compressor",
    "sight_glass",
    "oil_traces",
    "leak_found",
    "door_closes",
    "calls_for_cooling",
    "start_noise",
    "start_sound",
];

/// A visit that can be played.
pub struct Play {
    /// What is known at the door.
    start: Value,
    /// What the instruments would show, by reading.
    readings: Map<String, Value>,
    /// What would be seen.
    seen: Map<String, Value>,
    /// What the instruments would show once dirt and ice are gone; nothing where that mends nothing.
    cleaned: Option<(&'static str, Map<String, Value>)>,
    /// What can't be taken.
    cannot: Vec<String>,
    /// What is so.
    truth: Truth,
}

/// How a play ended.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum End {
    /// Right: cause, family or job; a healthy machine left alone; mended on the way.
    Right,
    /// Something else was said.
    Wrong,
    /// Nothing was said.
    #[default]
    Open,
}

/// One played visit.
#[derive(Clone, Debug, Default)]
pub struct Played {
    /// How it ended.
    pub end: End,
    /// Minutes it took.
    pub minutes: f64,
    /// Steps it took.
    pub steps: usize,
    /// Steps asked for that this machine or van does not have.
    pub impossible: usize,
    /// The steps, in order.
    pub taken: Vec<String>,
    /// The last verdict.
    pub verdict: String,
}

fn severity(truth: &Value, cause: &str) -> f64 {
    let list = truth["causes"].as_array();
    let found = list.into_iter().flatten().find(|c| c["cause"] == cause);
    found.and_then(|c| c["severity"].as_f64()).unwrap_or(0.0)
}

/// What eyes and ears report, right nineteen times in twenty; the rest by the truth of the case.
fn seen(kind: &Type, case: &Case, rng: &mut Rng) -> (Map<String, Value>, bool, bool) {
    let t = &case.truth;
    let r = &t["readings"];
    let number = |v: &Value| v.as_f64().unwrap_or(0.0);
    let slip = |rng: &mut Rng, is: bool, rate: f64| if rng.chance(rate) { !is } else { is };
    let valve =
        case.visit["system"]["metering"] != "capillary" && case.visit["system"]["metering"] != "orifice";
    // Half of the blocked coils are dirty, half have a slow fan: the rig's own mixture, drawn anew.
    let (dirt_c, dirt_e) = (rng.chance(0.5), rng.chance(0.5));
    let (c, e) = (severity(t, "condenser_airflow"), severity(t, "evaporator_airflow"));
    let mut m = Map::new();
    let face = match (dirt_c, c) {
        (true, s) if s > 0.6 => "blocked",
        (true, s) if s > 0.15 => "dirty",
        _ => "clean",
    };
    let face = if face == "clean" && rng.chance(0.1) { "dirty" } else { face };
    m.insert("condenser_face".into(), json!(face));
    let fan = |rng: &mut Rng, slow: bool| if slip(rng, slow, 0.03) { "slow" } else { "turns" };
    m.insert("condenser_fan".into(), json!(fan(rng, !dirt_c && c > 0.3)));
    m.insert("evaporator_fan".into(), json!(fan(rng, !dirt_e && e > 0.3)));
    let iced = dirt_e && e > 0.4 && number(&r["evaporator_outlet_c"]) < 1.0;
    m.insert("coil_iced".into(), json!(slip(rng, iced, 0.03)));
    let f = &*kind.machine.fluid;
    let outlet = number(&r["evaporator_outlet_c"]) + 273.15;
    let dew = f.sat(number(&r["evaporator_pressure_kpa"]) * 1000.0).t_dew;
    let line = if dew > 273.15 {
        "none"
    } else if outlet - dew > 8.0 {
        "part_of_coil"
    } else {
        "whole_coil"
    };
    m.insert("frost_line".into(), json!(line));
    let wet = number(&t["quality"]["suction_line"]) < 1.0 && number(&r["suction_line_c"]) < 0.0;
    m.insert("frost_on_compressor".into(), json!(slip(rng, wet, 0.05)));
    let bubbles = slip(rng, number(&t["quality"]["liquid_line"]) > 0.0, 0.07);
    let glass = if !valve {
        "none_fitted"
    } else if bubbles {
        "bubbles"
    } else {
        "clear"
    };
    m.insert("sight_glass".into(), json!(glass));
    let leaks = severity(t, "undercharge") > 0.0;
    let chance = |rng: &mut Rng, p: f64| json!(rng.chance(p));
    m.insert("oil_traces".into(), chance(rng, if leaks { 0.5 } else { 0.03 }));
    m.insert("leak_found".into(), chance(rng, if leaks { 0.85 } else { 0.01 }));
    m.insert("door_closes".into(), json!(true));
    m.insert("calls_for_cooling".into(), json!(true));
    let noise = case.visit["observations"]["start_noise"].as_str().unwrap_or("none");
    m.insert("start_noise".into(), json!(noise));
    m.insert("start_sound".into(), json!("starts"));
    (m, dirt_c, dirt_e)
}

impl Play {
    /// A visit to play from a case of the rig.
    pub fn new(kind: &Type, case: &Case) -> Play {
        let t = &case.truth;
        let index = t["index"].as_u64().unwrap_or(0);
        let mut rng = Rng::new(1717, index);
        let truth = Truth::read(t);
        let mut readings = case.visit["readings"].as_object().cloned().unwrap_or_default();
        let (mut seen, dirt_c, dirt_e) = seen(kind, case, &mut rng);
        // What stops, equalises and comes out.
        let m = &kind.machine;
        let charge = m.charge * (1.0 - severity(t, "undercharge") + severity(t, "overcharge"));
        let ambient = t["readings"]["ambient_c"].as_f64().unwrap_or(25.0) + 273.15;
        let gas =
            severity(t, "non_condensables") * libm::exp(m.design[1]) * ambient / (m.spec.ambient + 273.15);
        let standing = (extreme::standing_pressure(m, charge, ambient) + gas) / 1000.0;
        let read = standing * (1.0 + 0.01 * rng.normal()) + 2.0 * rng.normal();
        readings.insert("standing_pressure_kpa".into(), json!(round(read, 0.1)));
        readings.insert(
            "standing_temperature_c".into(),
            json!(round(ambient - 273.15 + 0.7 * rng.normal(), 0.1)),
        );
        readings.insert("recovered_kg".into(), json!(round(charge * (0.97 + 0.01 * rng.normal()), 0.001)));
        readings.insert("minutes_running".into(), json!(240));
        // Bends of the coils, for who has no port: the pressures' own saturation temperatures, pulled by the air.
        let at = |key: &str| t["readings"][key].as_f64().unwrap_or(f64::NAN);
        let clamp =
            |rng: &mut Rng, x: f64, air: f64| json!(round(x + 0.02 * (air - x) + 0.7 * rng.normal(), 0.1));
        let low = m.fluid.sat(at("evaporator_pressure_kpa") * 1.02e3);
        let inlet = low.t_bubble + 0.2 * (low.t_dew - low.t_bubble) - 273.15;
        readings.insert("evaporator_inlet_c".into(), clamp(&mut rng, inlet, at("space_c")));
        let high = m.fluid.sat(at("discharge_pressure_kpa") * 1e3 - gas);
        let middle = 0.5 * (high.t_bubble + high.t_dew) - 273.15;
        readings.insert("condenser_middle_c".into(), clamp(&mut rng, middle, at("ambient_c")));
        // The motor is good on every one of these machines.
        if let Some(a) = case.visit["system"]["compressor"]["locked_rotor_a"].as_f64() {
            readings.insert("start_current_a".into(), json!(round(a * 0.97, 0.1)));
        }
        if m.spec.motor.phases < 2.0 {
            for (key, ohm) in
                [("winding_run_ohm", 3.1), ("winding_start_ohm", 12.2), ("winding_run_to_start_ohm", 15.3)]
            {
                readings.insert(key.into(), json!(ohm));
            }
        }
        readings.insert("winding_to_frame_megohm".into(), json!(180));
        // The van and the machine.
        let capillary = case.visit["system"]["metering"] == "capillary";
        let receiver = case.visit["system"]["receiver"] == true;
        let suction_port = rng.chance(0.95);
        let high_port = rng.chance(if capillary { 0.5 } else { 0.9 });
        let service = readings.contains_key("pump_down_kpa");
        let liquid_port = readings.contains_key("liquid_pressure_kpa") && (receiver || rng.chance(0.5));
        let mut tools = vec!["gauges", "pipe_clamp", "air_thermometer", "multimeter", "scale"];
        for (tool, often) in [
            ("current_clamp", 0.9),
            ("recovery_unit", 0.7),
            ("insulation_tester", 0.6),
            ("capacitor_meter", 0.7),
            ("nitrogen", 0.6),
        ] {
            if rng.chance(often) {
                tools.push(tool);
            }
        }
        let mut cannot: Vec<String> = Vec::new();
        let mut lacks = |is: bool, names: &[&str]| {
            if is {
                cannot.extend(names.iter().map(|n| n.to_string()));
            }
        };
        lacks(!suction_port, &["suction_pressure_kpa", "evaporator_pressure_kpa", "pump_down_kpa"]);
        lacks(!high_port, &["discharge_pressure_kpa"]);
        lacks(!liquid_port, &["liquid_pressure_kpa"]);
        lacks(!service, &["pump_down_kpa", "pump_down_rise_kpa_per_min"]);
        lacks(!suction_port && !high_port, &["standing_pressure_kpa", "stop_and_equalise"]);
        lacks(!tools.contains(&"current_clamp"), &["current_a", "start_current_a", "power_w"]);
        lacks(!tools.contains(&"recovery_unit"), &["recover_and_weigh", "recovered_kg"]);
        // Everybody sees whether there is a port behind the evaporator; nobody carries a wattmeter.
        let mut known: Vec<&str> = vec!["power_w"];
        if !readings.contains_key("evaporator_pressure_kpa") {
            known.push("evaporator_pressure_kpa");
        }
        let access = json!({
            "cannot": known,
            "suction_port": suction_port, "high_side_port": high_port, "liquid_port": liquid_port,
            "suction_service_valve": service, "liquid_line_valve": receiver, "tools": tools,
        });
        let mut system = case.visit["system"].clone();
        system["charge_kg"] = json!(round(m.charge, 0.001));
        let complaint = if truth.class() == Class::Healthy {
            if rng.chance(0.5) { json!(["maintenance"]) } else { json!(["noisy_running"]) }
        } else if t["capacity_ratio"].as_f64().unwrap_or(1.0) < 0.8 {
            json!(["not_cold", "never_stops"])
        } else {
            json!(["never_stops"])
        };
        let start = json!({
            "system": system, "complaint": complaint, "access": access,
            "readings": { "space_c": readings["space_c"], "ambient_c": readings["ambient_c"] },
        });
        let alone = truth.drawn.len() == 1;
        let healthy = t["healthy"].as_object().cloned().unwrap_or_default();
        let cleaned = match truth.drawn.as_slice() {
            [7] if alone && dirt_c => Some(("clean_and_reread", healthy)),
            [8] if alone && dirt_e => Some(("defrost_and_reread", healthy)),
            _ => None,
        };
        seen.retain(|k, _| OBSERVATIONS.contains(&k.as_str()));
        Play { start, readings, seen, cleaned, cannot, truth }
    }

    /// Takes a step into the visit; false where it can't be taken.
    fn take(&self, visit: &mut Value, step: &str) -> bool {
        if self.cannot.iter().any(|c| c == step) {
            return false;
        }
        let mut put = |names: &[&str]| {
            let mut any = false;
            for name in names {
                if let Some(x) = self.readings.get(*name) {
                    visit["readings"][*name] = x.clone();
                    any = true;
                }
            }
            any
        };
        match step {
            "current_a" | "voltage_v" => put(&["current_a", "voltage_v"]),
            "pump_down_kpa" | "pump_down_rise_kpa_per_min" => {
                put(&["pump_down_kpa", "pump_down_rise_kpa_per_min", "pump_down_valve", "pump_down_ended_by"])
            }
            "stop_and_equalise" | "standing_pressure_kpa" | "standing_temperature_c" => {
                put(&["standing_pressure_kpa", "standing_temperature_c"])
            }
            "recover_and_weigh" | "recovered_kg" => put(&["recovered_kg"]),
            "let_it_settle" => put(&["minutes_running"]),
            "leak_search" => {
                visit["observations"]["leak_found"] = self.seen["leak_found"].clone();
                true
            }
            "start_test" => {
                visit["observations"]["start_sound"] = json!("starts");
                true
            }
            "clean_and_reread" | "defrost_and_reread" => {
                let mended = self.cleaned.as_ref().filter(|(with, _)| *with == step);
                let after = mended.map_or(&self.readings, |(_, healthy)| healthy);
                if let Some(taken) = visit["readings"].as_object_mut() {
                    for (name, value) in taken.iter_mut() {
                        if let Some(x) = after.get(name) {
                            *value = x.clone();
                        }
                    }
                }
                if step == "clean_and_reread" {
                    visit["observations"]["condenser_face"] = json!("clean");
                } else {
                    visit["observations"]["coil_iced"] = json!(false);
                }
                true
            }
            name if OBSERVATIONS.contains(&name) => {
                visit["observations"][name] = self.seen[name].clone();
                true
            }
            name => put(&[name]),
        }
    }

    fn ask(&self, visit: &Value, answer: Answerer<'_>) -> (Value, Option<Answer>) {
        let line = answer(&known_fields::accepted(visit, answer).to_string());
        let report: Value = serde_json::from_str(&line).unwrap_or(Value::Null);
        (report, answer::read(&line).ok())
    }

    fn end(&self, said: Option<&Answer>, mended: bool) -> End {
        let faulty = self.truth.class() == Class::Faulty;
        let Some(a) = said else { return End::Open };
        let minor = self.truth.class() == Class::Minor;
        match spoken::judge(a, &|i| i != 0 && self.truth.drawn.contains(&i)) {
            Spoken::Right | Spoken::RightJob if faulty || minor => End::Right,
            Spoken::Healthy if !faulty || mended => End::Right,
            Spoken::Undecided | Spoken::Unidentified => End::Open,
            _ => End::Wrong,
        }
    }

    /// Plays it as the report says.
    pub fn guided(&self, answer: Answerer<'_>) -> Played {
        let mut visit = self.start.clone();
        let mut p = Played::default();
        let mut mended = false;
        let mut refused: Vec<String> = Vec::new();
        let mut last = None;
        for _ in 0..PATIENCE {
            let (report, said) = self.ask(&visit, answer);
            let verdict = said::verdict(&report);
            p.verdict = format!("{} {}", verdict.level, verdict.name);
            last = said;
            let settled = matches!(verdict.level.as_str(), "cause" | "family" | "electrical" | "healthy");
            if settled || report["status"] != "ok" {
                break;
            }
            let planned = said::first_step(&report).filter(|_| report["plan"].is_object());
            let asked = |name: &String| p.taken.contains(name) || refused.contains(name);
            let step = match planned {
                Some((kind, name)) if matches!(kind.as_str(), "look" | "measure" | "act") => {
                    // A step asked for twice leads nowhere.
                    if asked(&name) { None } else { Some(name) }
                }
                Some(_) => None,
                None => report["next"]
                    .as_array()
                    .into_iter()
                    .flatten()
                    .filter_map(|n| n["measurement"].as_str().map(str::to_string))
                    .find(|n| !asked(n)),
            };
            let Some(step) = step else { break };
            if self.take(&mut visit, &step) {
                p.minutes += minutes(&step);
                p.steps += 1;
                mended |= self.cleaned.as_ref().is_some_and(|(with, _)| *with == step);
                p.taken.push(step);
            } else {
                p.impossible += 1;
                p.minutes += 1.0;
                if let Some(list) = visit["access"]["cannot"].as_array_mut() {
                    list.push(json!(step));
                }
                refused.push(step);
            }
        }
        p.end = self.end(last.as_ref(), mended);
        p
    }

    /// Plays it in the fixed order; the report is asked after each step, or only at the end.
    pub fn fixed(&self, each: bool, answer: Answerer<'_>) -> Played {
        let mut visit = self.start.clone();
        let mut p = Played::default();
        let mut last = None;
        for (k, step) in FIXED_ORDER.iter().enumerate() {
            // Whoever goes by a fixed order does not ask for what is not there.
            if self.take(&mut visit, step) {
                p.minutes += minutes(step);
                p.steps += 1;
                p.taken.push(step.to_string());
            }
            if each || k + 1 == FIXED_ORDER.len() {
                let (report, said) = self.ask(&visit, answer);
                let verdict = said::verdict(&report);
                p.verdict = format!("{} {}", verdict.level, verdict.name);
                last = said;
                if matches!(verdict.level.as_str(), "cause" | "family" | "electrical" | "healthy") {
                    break;
                }
            }
        }
        p.end = self.end(last.as_ref(), false);
        p
    }

    /// What is so, in words.
    pub fn truth(&self) -> String {
        let names: Vec<&str> = self.truth.drawn.iter().filter_map(|i| WORDS.get(*i).copied()).collect();
        if names.is_empty() { "none".into() } else { names.join(" and ") }
    }
}

/// The plays of one small capillary freezer without a high-side port: name, causes with their place on the way to total.
const FLAGSHIP: [(&str, &[(Cause, f64)]); 14] = [
    ("healthy", &[]),
    ("weak", &[(Cause::WeakCompressor, 0.25)]),
    ("broken valve", &[(Cause::WeakCompressor, 0.97)]),
    ("mild leak", &[(Cause::Undercharge, 0.2)]),
    ("severe leak", &[(Cause::Undercharge, 0.7)]),
    ("half plugged", &[(Cause::MeteringUnderfeed, 0.08)]),
    ("fully plugged", &[(Cause::MeteringUnderfeed, 1.0)]),
    ("drier", &[(Cause::LiquidLineRestriction, 0.42)]),
    ("blocked condenser", &[(Cause::CondenserAirflow, 0.4)]),
    ("iced coil", &[(Cause::EvaporatorAirflow, 0.5)]),
    ("overcharge", &[(Cause::Overcharge, 0.6)]),
    ("overfeed", &[(Cause::FloodBack, 0.35)]),
    ("migration only", &[]),
    ("leak with weak valves", &[(Cause::Undercharge, 0.25), (Cause::WeakCompressor, 0.2)]),
];

/// The type of the flagship.
const FREEZER: &str = "capillary freezer R404A";

/// One flagship case: a settled machine, instruments without noise.
fn flagship_case(kind: &Type, name: &str, causes: &[(Cause, f64)]) -> Option<Case> {
    let m = &kind.machine;
    let design = m.design_day();
    let good = Faults::default();
    let mut day = design;
    day.ambient = 27.0 + 273.15;
    let start = Settled { x: m.design, day: design, point: m.evaluate(&m.design, &design, &good)? };
    let healthy = total::settle(m, (&start, &good), &day, &good).ok()?;
    let at = match causes {
        [] => healthy,
        [(cause, place)] => {
            let way = total::way(m, kind.leak_share, *cause, &healthy, 20);
            let near = |s: &&total::Step| (s.way - place).abs();
            way.iter().min_by(|a, b| near(a).total_cmp(&near(b)))?.at
        }
        _ => {
            let mut both = good;
            for (cause, place) in causes {
                cause.apply(total::severity(*cause, m, *place), fault::MIDDLE, m, kind.leak_share, &mut both);
            }
            total::settle(m, (&healthy, &good), &day, &both).ok()?
        }
    };
    let shown = visit::readings(m, &at.point, &at.day);
    let capacity = at.point.capacity / healthy.point.capacity;
    let list: Vec<Value> = causes
        .iter()
        .map(|(c, place)| {
            let severity = total::severity(*c, m, *place).min(1.0);
            json!({ "cause": c.word(), "severity": severity, "present": true })
        })
        .collect();
    let mut readings = shown.clone();
    readings.remove("evaporator_pressure_kpa");
    readings.remove("liquid_pressure_kpa");
    let mut wear = Faults::default();
    for (cause, place) in causes {
        cause.apply(total::severity(*cause, m, *place), fault::MIDDLE, m, kind.leak_share, &mut wear);
    }
    let tested = pump_down::run(m, &at.point, &at.day, wear.wear, &mut Rng::new(9, 0));
    if let Some(t) = tested.filter(|t| t.lowest < at.point.p_suction) {
        readings.insert("pump_down_kpa".into(), json!(round(t.lowest / 1000.0, 0.1)));
        readings.insert("pump_down_rise_kpa_per_min".into(), json!(round(t.rise / 1000.0, 0.1)));
        readings.insert("pump_down_valve".into(), json!(t.valve));
        readings.insert("pump_down_ended_by".into(), json!(t.ended_by));
    }
    let noise = if name == "migration only" { "fades" } else { "none" };
    let sheet = visit::system(m, &mut Rng::new(5, 1));
    Some(Case {
        visit: json!({ "system": sheet, "readings": readings, "observations": { "start_noise": noise } }),
        truth: json!({
            "index": 4, "type": m.spec.name, "half": "setting", "causes": list, "impact": capacity,
            "capacity_ratio": capacity, "readings": shown,
            "healthy": visit::readings(m, &healthy.point, &healthy.day),
            "quality": { "suction_line": at.point.x_suction, "liquid_line": at.point.x_liquid },
        }),
        rejected: Default::default(),
        imbalance: (0.0, 0.0),
    })
}

/// One flagship play: its name, where it starts, how it went, whether that will do.
pub type Flagship = (String, &'static str, Played, bool);

/// Plays the flagship from the door, and with the gauge and two clamps already on.
pub fn flagship(types: &[Type], answer: Answerer<'_>) -> Vec<Flagship> {
    let Some(kind) = types.iter().find(|k| k.machine.spec.name == FREEZER) else { return Vec::new() };
    let mut out = Vec::new();
    for (name, causes) in FLAGSHIP {
        let Some(case) = flagship_case(kind, name, causes) else { continue };
        for start in ["at the door", "gauge and clamps on"] {
            let mut play = Play::new(kind, &case);
            play.start["access"] = json!({
                "suction_port": true, "high_side_port": false, "liquid_port": false,
                "suction_service_valve": true, "liquid_line_valve": false,
                "tools": ["gauges", "pipe_clamp", "air_thermometer", "current_clamp", "multimeter", "scale",
                    "recovery_unit", "capacitor_meter", "insulation_tester", "nitrogen"],
                "cannot": ["evaporator_pressure_kpa", "power_w"],
            });
            play.cannot = vec!["discharge_pressure_kpa".into(), "liquid_pressure_kpa".into()];
            if start != "at the door" {
                for step in ["suction_pressure_kpa", "suction_line_c", "liquid_line_c"] {
                    let mut visit = play.start.clone();
                    play.take(&mut visit, step);
                    play.start = visit;
                }
            }
            let played = play.guided(answer);
            let identified = played.verdict.trim() != "unidentified" || causes.is_empty();
            let will_do = (played.end == End::Right || !identified) && played.impossible == 0;
            out.push((name.to_string(), start, played, will_do));
        }
    }
    out
}

/// The table of the flagship's plays.
pub fn flagship_markdown(plays: &[Flagship]) -> String {
    let good = plays.iter().filter(|p| p.3).count();
    let mut m = format!(
        "\n## Fourteen plays of one freezer\n\nA small capillary freezer without a high-side port, from two starts. Will do: the right verdict or job, or\n\"unidentified\" on a faulty one, without a step asked for that can't be taken. {good} of {} will do.\n\n| play | start | ends | minutes | steps | can't be taken | will do |\n|---|---|---|---|---|---|---|\n",
        plays.len()
    );
    for (name, start, p, will_do) in plays {
        let yes = if *will_do { "yes" } else { "no" };
        let _ = writeln!(
            m,
            "| {name} | {start} | {} | {:.0} | {} | {} | {yes} |",
            p.verdict.trim(),
            p.minutes,
            p.taken.join(", "),
            p.impossible
        );
    }
    m
}

/// Sums of one way through the visits.
#[derive(Clone, Debug, Default)]
pub struct Way {
    /// Visits.
    pub visits: u32,
    /// Right, wrong, open.
    pub ends: [u32; 3],
    /// Minutes in all.
    pub minutes: f64,
    /// Steps in all.
    pub steps: usize,
    /// Steps that could not be taken.
    pub impossible: usize,
}

impl Way {
    fn add(&mut self, p: &Played) {
        self.visits += 1;
        self.ends[p.end as usize] += 1;
        self.minutes += p.minutes;
        self.steps += p.steps;
        self.impossible += p.impossible;
    }

    /// The figures as JSON.
    pub fn json(&self) -> Value {
        let r = |x: f64| libm::round(x * 1e3) / 1e3;
        let n = f64::from(self.visits.max(1));
        json!({
            "visits": self.visits, "right": r(f64::from(self.ends[0]) / n), "wrong": r(f64::from(self.ends[1]) / n),
            "open": r(f64::from(self.ends[2]) / n), "minutes": r(self.minutes / n),
            "steps": r(self.steps as f64 / n), "impossible": self.impossible,
        })
    }

    fn row(&self, name: &str) -> String {
        let v = self.json();
        let f = |k: &str| v[k].as_f64().unwrap_or(0.0);
        format!(
            "| {name} | {} | {:.3} | {:.3} | {:.3} | {:.1} | {:.1} | {} |\n",
            self.visits,
            f("right"),
            f("wrong"),
            f("open"),
            f("minutes"),
            f("steps"),
            self.impossible
        )
    }
}

/// The ways through one half's visits.
pub const WAYS: [&str; 3] =
    ["as the report says", "fixed order, until it decides", "everything, then one question"];

/// Plays the first visits of a half in each way.
pub fn grade(types: &[Type], cases: &[&Case], answer: Answerer<'_>) -> [Way; 3] {
    let plays: Vec<Play> = cases
        .iter()
        .filter_map(|c| {
            let kind = types.iter().find(|k| c.truth["type"] == k.machine.spec.name)?;
            let play = Play::new(kind, c);
            (play.truth.class() != Class::Open).then_some(play)
        })
        .collect();
    let half = |start: usize| -> [Way; 3] {
        let mut out: [Way; 3] = Default::default();
        for p in plays.iter().skip(start).step_by(2) {
            out[0].add(&p.guided(answer));
            out[1].add(&p.fixed(true, answer));
            out[2].add(&p.fixed(false, answer));
        }
        out
    };
    std::thread::scope(|s| {
        let other = s.spawn(|| half(1));
        let mut all = half(0);
        for (a, b) in all.iter_mut().zip(other.join().unwrap_or_default()) {
            a.visits += b.visits;
            for k in 0..3 {
                a.ends[k] += b.ends[k];
            }
            a.minutes += b.minutes;
            a.steps += b.steps;
            a.impossible += b.impossible;
        }
        all
    })
}

/// The table.
pub fn markdown(ways: &[Way; 3]) -> String {
    let mut m = String::from(
        "\n### Guided visits\n\nEach begins with the complaint, two air temperatures and what the plate says; ports, valves and tools are drawn at\nrandom. Minutes are the judge's own (judged). Right: cause, family or job; a healthy machine left alone. Wanted: at\nmost half the minutes of the fixed order, as many right, 0.02 wrong.\n\n| | visits | right | wrong | open | minutes | steps | steps that can't be taken |\n|---|---|---|---|---|---|---|---|\n",
    );
    for (name, way) in WAYS.iter().zip(ways) {
        let _ = write!(m, "{}", way.row(name));
    }
    m
}
