//! One case: a unit of a type, a day, a fault or two, and what a technician's instruments make of it.

use super::fault::{CAUSES, Cause, Manner};
use super::fleet;
use super::machine::{Day, Device, Faults, Machine, Point};
use super::math::Rng;
use super::{air, pump_down, solve, unit};
use serde_json::{Map, Value, json};
use std::collections::BTreeMap;

/// A fault counts when capacity or COP falls below this share of healthy (Yuill and Braun's fault impact ratio).
pub const COUNTS: f64 = 0.95;

/// Why an operating point was thrown away.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Reason {
    /// The equations did not balance.
    NotConverged,
    /// A state left the property tables or the motor stalled.
    BeyondTables,
    /// The high-pressure control would have stopped the machine.
    HighPressure,
    /// The low-pressure control would have stopped the machine, or the low side was in deep vacuum.
    LowPressure,
    /// The compressor's thermal protector would have tripped.
    Hot,
    /// Less than 45 % of healthy capacity or COP: no technician needs telling that.
    Broken,
}

impl Reason {
    /// Every reason, by number.
    pub const ALL: [Reason; 6] = [
        Reason::NotConverged,
        Reason::BeyondTables,
        Reason::HighPressure,
        Reason::LowPressure,
        Reason::Hot,
        Reason::Broken,
    ];

    /// One word for a table.
    pub fn word(self) -> &'static str {
        match self {
            Reason::NotConverged => "not converged",
            Reason::BeyondTables => "beyond the property tables or stalled",
            Reason::HighPressure => "high-pressure control",
            Reason::LowPressure => "low-pressure control",
            Reason::Hot => "thermal protector",
            Reason::Broken => "below 45 % of healthy",
        }
    }
}

impl From<solve::Rejected> for Reason {
    fn from(r: solve::Rejected) -> Reason {
        match r {
            solve::Rejected::NotConverged => Reason::NotConverged,
            solve::Rejected::BeyondTables => Reason::BeyondTables,
        }
    }
}

/// A sized type with its scaled severities.
#[derive(Clone, Debug)]
pub struct Type {
    /// The nominal machine.
    pub machine: Machine,
    /// Share of gas the healthy compressor leaks at design.
    pub leak_share: f64,
    /// Severities by cause and level.
    pub ladder: [[f64; 5]; 9],
}

/// A fault as drawn.
#[derive(Clone, Copy, Debug)]
pub struct Drawn {
    /// The cause.
    pub cause: Cause,
    /// Its level on the ladder, 0 to 4.
    pub level: usize,
    /// Its severity.
    pub severity: f64,
}

/// Checks that a machine would keep running like this.
fn plausible(machine: &Machine, p: &Point) -> Result<(), Reason> {
    let f = &*machine.fluid;
    let condensing = 0.5 * (f.sat(p.p_discharge).t_dew + f.sat(p.p_discharge).t_bubble) - 273.15;
    let limit = match machine.spec.refrigerant {
        "R410A" => 63.0,
        "R404A" => 62.0,
        _ => 67.0,
    };
    if condensing > limit {
        return Err(Reason::HighPressure);
    }
    let design = libm::exp(machine.design[2]);
    let low = if matches!(machine.spec.device, Device::Capillary { .. }) {
        (design * 0.2).max(25_000.0)
    } else {
        design * 0.42
    };
    if p.p_suction < low {
        return Err(Reason::LowPressure);
    }
    if p.t_discharge > 273.15 + 150.0 {
        return Err(Reason::Hot);
    }
    Ok(())
}

pub(super) fn round(x: f64, to: f64) -> f64 {
    let n = libm::round(x / to);
    // Division by a whole number prints as it should: 0.1 K is 1/10.
    if to < 1.0 { n / libm::round(1.0 / to) } else { n * to }
}

/// Noise-free readings by the visit's field names, degC, kPa, A, V.
pub fn readings(machine: &Machine, p: &Point, day: &Day) -> Map<String, Value> {
    let c = |t: f64| json!(round(t - 273.15, 0.001));
    let k = |p: f64| json!(round(p / 1000.0, 0.01));
    let mut m = Map::new();
    m.insert("suction_pressure_kpa".into(), k(p.p_suction));
    m.insert("evaporator_pressure_kpa".into(), k(p.p_evaporator));
    m.insert("discharge_pressure_kpa".into(), k(p.p_discharge));
    m.insert("liquid_pressure_kpa".into(), k(p.p_liquid));
    m.insert("evaporator_outlet_c".into(), c(p.t_evaporator));
    m.insert("suction_line_c".into(), c(p.t_suction));
    m.insert("discharge_line_c".into(), c(p.t_discharge));
    m.insert("liquid_line_c".into(), c(p.t_liquid));
    m.insert("drier_outlet_c".into(), c(p.t_drier));
    m.insert("space_c".into(), c(day.space));
    m.insert("supply_air_c".into(), c(p.t_supply));
    m.insert("ambient_c".into(), c(day.ambient));
    m.insert("condenser_exhaust_c".into(), c(p.t_exhaust));
    m.insert("current_a".into(), json!(round(p.current, 0.001)));
    m.insert("voltage_v".into(), json!(round(day.voltage, 0.1)));
    if machine.spec.duty == "air_conditioning" {
        m.insert("space_wet_bulb_c".into(), c(air::wet_bulb(day.space, day.humidity)));
    }
    m
}

pub(super) fn number(m: &Map<String, Value>, key: &str) -> f64 {
    m.get(key).and_then(Value::as_f64).unwrap_or(f64::NAN)
}

/// What the instruments show: noise, and pipe clamps pulled toward what surrounds them.
pub(super) fn measured(
    truth: &Map<String, Value>,
    rng: &mut Rng,
    keep_evaporator: bool,
    keep_liquid: bool,
) -> Map<String, Value> {
    let mut m = Map::new();
    let (space, ambient) = (number(truth, "space_c"), number(truth, "ambient_c"));
    for (key, value) in truth {
        let x = value.as_f64().unwrap_or(f64::NAN);
        let z = rng.normal();
        // Drawn always, so that leaving one reading out does not change the next.
        let pull = rng.between(0.0, 0.04);
        let read = match key.as_str() {
            "evaporator_pressure_kpa" if !keep_evaporator => continue,
            "liquid_pressure_kpa" if !keep_liquid => continue,
            "suction_pressure_kpa"
            | "evaporator_pressure_kpa"
            | "discharge_pressure_kpa"
            | "liquid_pressure_kpa" => {
                let w = rng.normal();
                round(x * (1.0 + 0.01 * z) + 2.0 * w, 0.1)
            }
            "evaporator_outlet_c" => round(x + pull * (space - x) + 0.7 * z, 0.1),
            "suction_line_c" | "discharge_line_c" | "liquid_line_c" | "drier_outlet_c" => {
                round(x + pull * (ambient - x) + 0.7 * z, 0.1)
            }
            "current_a" => round(x * (1.0 + 0.015 * z), 0.01),
            "voltage_v" => round(x * (1.0 + 0.004 * z), 0.1),
            _ => round(x + 0.5 * z, 0.1),
        };
        m.insert(key.clone(), json!(read));
    }
    m
}

/// The `system` object: plate and sheet as found, some of it missing.
pub(super) fn system(nominal: &Machine, rng: &mut Rng) -> Value {
    let s = &nominal.spec;
    let day = nominal.design_day();
    let metering = match s.device {
        Device::Capillary { .. } => "capillary",
        Device::Orifice => "orifice",
        Device::Thermostatic { .. } => "thermostatic_valve",
        Device::Electronic { .. } => "electronic_valve",
    };
    let mut design = Map::new();
    design.insert("space_c".into(), json!(s.space));
    design.insert("ambient_c".into(), json!(s.ambient));
    let p = nominal.evaluate(&nominal.design, &day, &Faults::default());
    let mut plate = Map::new();
    if let Some(p) = p {
        let f = &*nominal.fluid;
        let te = f.sat(p.p_evaporator).t_dew;
        let dis = f.sat(p.p_discharge);
        let tc = 0.5 * (dis.t_dew + dis.t_bubble);
        let entries = [
            ("evaporator_td_k", round(day.space - te, 0.5), 0.10),
            ("condenser_td_k", round(tc - day.ambient, 0.5), 0.10),
            ("suction_superheat_k", round(p.t_suction - f.sat(p.p_suction).t_dew, 1.0), 0.15),
            ("subcooling_k", round(f.sat(p.p_liquid).t_bubble - p.t_liquid, 0.5), 0.15),
        ];
        for (key, value, missing) in entries {
            let gone = rng.chance(missing);
            design.insert(key.into(), if gone { Value::Null } else { json!(value) });
        }
        let given = rng.chance(0.3);
        let kpa = |x: f64| if given { json!(round(x / 1000.0, 5.0)) } else { Value::Null };
        design.insert("suction_pressure_kpa".into(), kpa(p.p_suction));
        design.insert("discharge_pressure_kpa".into(), kpa(p.p_discharge));
        let rated = p.current * rng.between(1.1, 1.5);
        plate.insert("rated_load_a".into(), json!(round(rated, 0.1)));
        plate.insert("locked_rotor_a".into(), json!(round(rated * rng.between(4.5, 6.5), 1.0)));
    }
    plate.insert("rated_v".into(), json!(s.motor.voltage));
    plate.insert("phases".into(), json!(s.motor.phases as u32));
    plate.insert("hz".into(), json!(s.motor.hz));
    if rng.chance(0.1) {
        plate.insert("rated_load_a".into(), Value::Null);
    }
    json!({
        "refrigerant": s.refrigerant,
        "metering": metering,
        "receiver": s.receiver,
        "suction_pressure_regulator": s.regulator.is_some(),
        "duty": s.duty,
        "design": design,
        "compressor": plate,
    })
}

/// What eyes and ears report, right most of the time.
pub(super) fn observations(
    machine: &Machine,
    p: &Point,
    drawn: &[Drawn],
    rng: &mut Rng,
) -> Map<String, Value> {
    let mut m = Map::new();
    let slip = |rng: &mut Rng, is: bool, rate: f64| if rng.chance(rate) { !is } else { is };
    let severe = |c: Cause, from: usize| drawn.iter().any(|d| d.cause == c && d.level >= from);
    let wet = p.x_suction < 1.0;
    let cold = p.t_suction < 273.15 - 4.0;
    let frost = (wet && p.t_suction < 273.15) || (cold && rng.chance(0.25));
    m.insert("frost_on_compressor".into(), json!(slip(rng, frost, 0.05)));
    let iced = severe(Cause::EvaporatorAirflow, 2) && p.t_evaporator < 275.0 && rng.chance(0.6);
    m.insert("coil_iced".into(), json!(slip(rng, iced, 0.04)));
    let glass = if machine.spec.receiver
        || matches!(machine.spec.device, Device::Thermostatic { .. } | Device::Electronic { .. })
    {
        let bubbles = p.x_liquid > 0.0;
        if slip(rng, bubbles, 0.07) { "bubbles" } else { "clear" }
    } else {
        "none_fitted"
    };
    m.insert("sight_glass".into(), json!(glass));
    let liquid_start = p.x_evaporator < 0.97 && rng.chance(0.5);
    let rattles = severe(Cause::WeakCompressor, 2) && rng.chance(0.3);
    let noise = if rattles {
        "stays"
    } else if liquid_start {
        "fades"
    } else if rng.chance(0.05) {
        if rng.chance(0.5) { "fades" } else { "stays" }
    } else {
        "none"
    };
    m.insert("start_noise".into(), json!(noise));
    m
}

/// A case with everything that is known about it.
#[derive(Clone, Debug)]
pub struct Case {
    /// The visit, as a device would send it.
    pub visit: Value,
    /// What is really so.
    pub truth: Value,
    /// Points thrown away on the way here.
    pub rejected: BTreeMap<Reason, u32>,
    /// Worst relative energy and mass imbalance of the accepted points.
    pub imbalance: (f64, f64),
}

pub(super) fn day(nominal: &Machine, rng: &mut Rng) -> Day {
    let s = &nominal.spec;
    let air_conditioner = s.duty == "air_conditioning";
    let u = rng.unit();
    let above = if air_conditioner {
        rng.between(-3.0, s.pull_down)
    } else if u < 0.5 {
        rng.between(-2.0, 2.0)
    } else if u < 0.75 {
        rng.between(2.0, 10.0)
    } else {
        rng.between(10.0, s.pull_down)
    };
    let space = s.space + above + 273.15;
    let humid = (s.humidity * rng.between(0.8, 1.2)).min(0.95);
    Day {
        space,
        humidity: air::humidity(space, humid),
        ambient: rng.between(s.ambient_range.0, s.ambient_range.1) + 273.15,
        voltage: s.motor.voltage * rng.between(0.95, 1.05),
    }
}

fn draw(kind: &Type, rng: &mut Rng) -> Vec<Drawn> {
    let u = rng.unit();
    let one = |rng: &mut Rng, levels: (usize, usize)| {
        let i = rng.below(9);
        let level = levels.0 + rng.below(levels.1 - levels.0);
        // Around the level, so that severities are not five fixed numbers.
        let steps = kind.ladder[i];
        let spacing = if level == 4 { steps[4] - steps[3] } else { steps[level + 1] - steps[level] };
        let severity = steps[level] + spacing * rng.between(-0.25, 0.25);
        Drawn { cause: CAUSES[i], level, severity }
    };
    if u < 0.25 {
        Vec::new()
    } else if u < 0.37 {
        loop {
            let (a, b) = (one(rng, (1, 4)), one(rng, (1, 4)));
            let opposite =
                |x: Cause, y: Cause| (a.cause == x && b.cause == y) || (a.cause == y && b.cause == x);
            if a.cause != b.cause
                && !opposite(Cause::Undercharge, Cause::Overcharge)
                && !opposite(Cause::MeteringUnderfeed, Cause::FloodBack)
            {
                let mut v = vec![a, b];
                v.sort_by_key(|d| d.cause);
                return v;
            }
        }
    } else {
        vec![one(rng, (0, 5))]
    }
}

fn imbalance(p: &Point) -> (f64, f64) {
    let energy = (p.capacity + p.power - p.rejected - p.other).abs() / p.rejected;
    let mass = (p.metering_ratio - 1.0).abs().max(p.residual[3].abs());
    (energy, mass)
}

/// Makes one case from a seed and its place in the run. `types` are the types to draw from.
pub fn make(types: &[Type], seed: u64, index: u64) -> Case {
    let mut rng = Rng::new(seed, index);
    let kind = &types[rng.below(types.len())];
    let nominal = &kind.machine;
    let mut rejected = BTreeMap::new();
    let mut drawn = draw(kind, &mut rng);
    let mut tries = 0;
    loop {
        tries += 1;
        if tries % 8 == 0 {
            drawn = draw(kind, &mut rng);
        }
        match attempt(kind, &drawn, &mut rng) {
            Ok((visit, truth, imbalance)) => {
                let mut truth = truth;
                truth["index"] = json!(index);
                truth["type"] = json!(nominal.spec.name);
                truth["half"] =
                    json!(if fleet::is_setting(nominal.spec.name) { "setting" } else { "grading" });
                return Case { visit, truth, rejected, imbalance };
            }
            Err(why) => *rejected.entry(why).or_insert(0) += 1,
        }
    }
}

type Made = (Value, Value, (f64, f64));

fn attempt(kind: &Type, drawn: &[Drawn], rng: &mut Rng) -> Result<Made, Reason> {
    let nominal = &kind.machine;
    let machine = unit::vary(nominal, rng);
    let day = day(nominal, rng);
    let manner = Manner { recirculated: rng.unit(), dirt: rng.unit() };
    let good = Faults::default();
    let from = nominal.design_day();
    // The unit at the sheet's point first, then the day, then the faults.
    let start = solve::newton(&machine, &nominal.design, &from, &good)?;
    let x = solve::follow(&machine, &start, (&from, &good), (&day, &good))?;
    let healthy = machine.evaluate(&x, &day, &good).ok_or(Reason::BeyondTables)?;
    plausible(&machine, &healthy)?;
    let mut faults = good;
    for d in drawn {
        d.cause.apply(d.severity, manner, nominal, kind.leak_share, &mut faults);
    }
    let mut worst = imbalance(&healthy);
    let (point, mut causes) = if drawn.is_empty() {
        (healthy, Vec::new())
    } else {
        let y = solve::follow(&machine, &x, (&day, &good), (&day, &faults))?;
        let p = machine.evaluate(&y, &day, &faults).ok_or(Reason::BeyondTables)?;
        plausible(&machine, &p)?;
        let w = imbalance(&p);
        worst = (worst.0.max(w.0), worst.1.max(w.1));
        let mut causes = Vec::new();
        for d in drawn {
            // What each of a pair would cost alone on this unit and day.
            let (capacity, cop) = if drawn.len() == 1 {
                (p.capacity / healthy.capacity, p.cop / healthy.cop)
            } else {
                let mut single = good;
                d.cause.apply(d.severity, manner, nominal, kind.leak_share, &mut single);
                let z = solve::follow(&machine, &x, (&day, &good), (&day, &single))?;
                let q = machine.evaluate(&z, &day, &single).ok_or(Reason::BeyondTables)?;
                (q.capacity / healthy.capacity, q.cop / healthy.cop)
            };
            causes.push((d, capacity, cop));
        }
        (p, causes)
    };
    let (capacity, cop) = (point.capacity / healthy.capacity, point.cop / healthy.cop);
    if capacity.min(cop) < 0.45 {
        return Err(Reason::Broken);
    }
    causes.sort_by(|a, b| a.1.min(a.2).total_cmp(&b.1.min(b.2)));
    let true_readings = readings(&machine, &point, &day);
    let healthy_readings = readings(&machine, &healthy, &day);
    let regulated = machine.spec.regulator.is_some();
    let keep_evaporator = regulated || rng.chance(0.2);
    let keep_liquid = machine.spec.receiver || rng.chance(0.3);
    let mut shown = measured(&true_readings, rng, keep_evaporator, keep_liquid);
    let sheet = system(nominal, rng);
    // The test is possible on compressors with pistons; half of the technicians make it.
    let tested = rng.chance(0.5);
    let mut wear = faults.wear;
    wear.valve_leak = wear.valve_leak.max(0.0);
    let pump = pump_down::run(&machine, &point, &day, wear, rng);
    let mut pumped = Value::Null;
    if let (true, Some(t)) = (tested, pump) {
        let noisy = t.lowest / 1000.0 * (1.0 + 0.01 * rng.normal()) + 2.0 * rng.normal();
        shown.insert("pump_down_kpa".into(), json!(round(noisy.max(1.0), 0.1)));
        let rise = t.rise / 1000.0 * (1.0 + 0.05 * rng.normal()) + 0.3 * rng.normal();
        shown.insert("pump_down_rise_kpa_per_min".into(), json!(round(rise.max(0.0), 0.1)));
        shown.insert("pump_down_valve".into(), json!(t.valve));
        shown.insert("pump_down_ended_by".into(), json!(t.ended_by));
        pumped = json!({"lowest_kpa": round(t.lowest / 1000.0, 0.01), "rise_kpa_per_min": round(t.rise / 1000.0, 0.01)});
    }
    // What somebody wrote down when this unit was good, on another day.
    let mut then = self::day(nominal, rng);
    then.space = 0.5 * (then.space + nominal.spec.space + 273.15);
    then.humidity = air::humidity(then.space, nominal.spec.humidity);
    let z = solve::follow(&machine, &start, (&from, &good), (&then, &good))?;
    let commissioned = machine.evaluate(&z, &then, &good).ok_or(Reason::BeyondTables)?;
    let record = measured(&readings(&machine, &commissioned, &then), rng, regulated, false);
    let looked = rng.chance(0.6);
    let seen = observations(&machine, &point, drawn, rng);
    let mut visit = json!({ "system": sheet, "readings": shown });
    if looked {
        visit["observations"] = Value::Object(seen);
    }
    let fault_impact = capacity.min(cop);
    let list: Vec<Value> = causes
        .iter()
        .map(|(d, q, c)| {
            json!({
                "cause": d.cause.word(), "severity": round(d.severity, 0.0001), "level": d.level,
                "capacity_ratio": round(*q, 0.0001), "cop_ratio": round(*c, 0.0001),
                "present": q.min(*c) < COUNTS,
            })
        })
        .collect();
    let above = day.space - 273.15 - nominal.spec.space;
    let truth = json!({
        "causes": list,
        "capacity_ratio": round(capacity, 0.0001),
        "cop_ratio": round(cop, 0.0001),
        "impact": round(fault_impact, 0.0001),
        "space_above_design_k": round(above, 0.01),
        "readings": true_readings,
        "healthy": healthy_readings,
        "pump_down": pumped,
        "record": record,
        "quality": { "evaporator_outlet": round(point.x_evaporator, 0.0001), "suction_line": round(point.x_suction, 0.0001),
                     "liquid_line": round(point.x_liquid, 0.0001), "receiver": round(point.level, 0.0001) },
    });
    Ok((visit, truth, worst))
}
