//! A worse fault must not look healthier: one cause from mild to total, and how far its probability falls on the way.

use super::known_fields;
use super::report::Answerer;
use super::said;
use super::sets::{self, SETS};
use crate::rig::fault::{CAUSES, Cause};
use crate::rig::machine::{Device, Faults, Machine, Point};
use crate::rig::math::Rng;
use crate::rig::total::{self, Settled, Step};
use crate::rig::{pump_down, visit};
use serde_json::{Map, Value, json};
use std::collections::BTreeMap;
use std::fmt::Write;

/// How far a probability may fall from its highest.
pub const MAY_FALL: f64 = 0.03;
/// Places looked at on the way to total, those to the state of rest aside.
const STEPS: usize = 20;
/// A box this much warmer than its set point brings a call, K.
const WARM: f64 = 3.0;
/// Air at the condenser while a machine is swept: a common room, and a warm day for air conditioners, degC.
const ROOM: f64 = 26.0;
const WARM_DAY: f64 = 30.0;

/// A visit and its truth at every place of a way.
pub struct Way {
    /// The machine.
    pub machine: String,
    /// The cause.
    pub cause: Cause,
    /// Place on the way, capacity over healthy, visit, truth.
    pub steps: Vec<(f64, f64, Value, Value)>,
}

/// How far a probability fell.
#[derive(Clone, Debug)]
pub struct Fall {
    /// The machine.
    pub machine: String,
    /// The cause.
    pub cause: &'static str,
    /// The set of readings.
    pub set: &'static str,
    /// Highest probability of the family before the fall.
    pub highest: f64,
    /// Lowest after it.
    pub lowest: f64,
    /// Places of the two on the way.
    pub at: (f64, f64),
    /// Capacity over healthy at the two.
    pub capacity: (f64, f64),
    /// What leads where it is lowest.
    pub leads: String,
    /// Answers that were errors.
    pub refused: usize,
}

impl Fall {
    /// How far it fell.
    pub fn size(&self) -> f64 {
        self.highest - self.lowest
    }
}

/// The sheet as found, nothing missing, without target pressures.
fn sheet(machine: &Machine) -> Value {
    // The first stream of random numbers that leaves everything on the sheet but its target pressures.
    let complete = |s: &Value| {
        let d = &s["design"];
        ["evaporator_td_k", "condenser_td_k", "suction_superheat_k", "subcooling_k"]
            .iter()
            .all(|k| d[*k].is_number())
            && d["suction_pressure_kpa"].is_null()
            && s["compressor"]["rated_load_a"].is_number()
    };
    let drawn = (0..200).map(|i| visit::system(machine, &mut Rng::new(5, i))).find(complete);
    drawn.unwrap_or_else(|| panic!("{}: no complete sheet", machine.spec.name))
}

fn observed(machine: &Machine, cause: Cause, p: &Point) -> Value {
    let valve = matches!(machine.spec.device, Device::Thermostatic { .. } | Device::Electronic { .. });
    let glass = match (valve, p.x_liquid > 0.0) {
        (false, _) => "none_fitted",
        (true, true) => "bubbles",
        (true, false) => "clear",
    };
    let cold = p.x_suction < 1.0 && p.t_suction < 273.15;
    let iced = cause == Cause::EvaporatorAirflow && p.t_evaporator < 272.0;
    json!({ "sight_glass": glass, "frost_on_compressor": cold, "coil_iced": iced })
}

/// The visit that a settled machine gives, instruments without noise.
fn told(machine: &Machine, sheet: &Value, cause: Cause, at: &Settled, faults: &Faults) -> Value {
    let mut shown = visit::readings(machine, &at.point, &at.day);
    if machine.spec.regulator.is_none() {
        shown.remove("evaporator_pressure_kpa");
    }
    if !machine.spec.receiver {
        shown.remove("liquid_pressure_kpa");
    }
    let test = pump_down::run(machine, &at.point, &at.day, faults.wear, &mut Rng::new(9, 0));
    if let Some(t) = test.filter(|t| t.lowest < at.point.p_suction) {
        shown.insert("pump_down_kpa".into(), json!(visit::round(t.lowest / 1000.0, 0.1)));
        shown.insert("pump_down_rise_kpa_per_min".into(), json!(visit::round(t.rise / 1000.0, 0.1)));
        shown.insert("pump_down_valve".into(), json!(t.valve));
        shown.insert("pump_down_ended_by".into(), json!(t.ended_by));
    }
    let mut visit =
        json!({ "system": sheet, "readings": shown, "observations": observed(machine, cause, &at.point) });
    if at.day.space > machine.spec.space + 273.15 + WARM {
        visit["complaint"] = json!(["not_cold", "never_stops"]);
        visit["complaint_hours"] = json!(24);
        visit["readings"]["hours_running"] = json!(20.0);
    }
    visit
}

/// Every way of every cause on one machine.
pub fn ways(machine: &Machine) -> Vec<Way> {
    let design_day = machine.design_day();
    let good = Faults::default();
    let Some(design) = machine.evaluate(&machine.design, &design_day, &good) else { return Vec::new() };
    let room = if machine.spec.duty == "air_conditioning" { WARM_DAY } else { ROOM };
    let mut day = design_day;
    day.ambient = room + 273.15;
    let at_sheet = Settled { x: machine.design, day: design_day, point: design };
    let Ok(healthy) = total::settle(machine, (&at_sheet, &good), &day, &good) else { return Vec::new() };
    let sheet = sheet(machine);
    let clean = visit::readings(machine, &healthy.point, &day);
    let mut record = Map::new();
    for (key, value) in visit::readings(machine, &design, &design_day) {
        let kept = match key.as_str() {
            "evaporator_pressure_kpa" => machine.spec.regulator.is_some(),
            "liquid_pressure_kpa" => machine.spec.receiver,
            _ => true,
        };
        if kept {
            record.insert(key, value);
        }
    }
    let one = |cause: Cause| -> Way {
        let steps: Vec<Step> = total::way(machine, design.leak_share, cause, &healthy, STEPS);
        let steps = steps
            .iter()
            .map(|s| {
                let faults = total::faults(cause, machine, design.leak_share, s.way);
                let capacity = s.at.point.capacity / healthy.point.capacity;
                let visit = told(machine, &sheet, cause, &s.at, &faults);
                (s.way, capacity, visit, json!({ "index": 3, "record": record, "healthy": clean }))
            })
            .collect();
        Way { machine: machine.spec.name.into(), cause, steps }
    };
    CAUSES.iter().map(|c| one(*c)).collect()
}

/// The largest fall of one way in one set of readings.
pub fn fall(way: &Way, set: usize, answer: Answerer<'_>) -> Option<Fall> {
    let (kind, name) = SETS.get(set)?;
    let mut seen: Vec<(f64, f64, f64, String)> = Vec::new();
    let mut refused = 0;
    for (place, capacity, visit, truth) in &way.steps {
        let line = known_fields::accepted(&sets::show(visit, truth, *kind), answer).to_string();
        let report: Value = serde_json::from_str(&answer(&line)).unwrap_or(Value::Null);
        if report["status"] != "ok" {
            refused += 1;
            continue;
        }
        let leading = report["leading"].as_str().unwrap_or("").to_string();
        let lead = format!("{leading} {:.2}", said::cause(&report, &leading));
        seen.push((*place, *capacity, said::family(&report, way.cause.word()), lead));
    }
    let mut worst: Option<(f64, usize, usize)> = None;
    for (i, a) in seen.iter().enumerate() {
        for (j, b) in seen.iter().enumerate().skip(i) {
            if worst.is_none_or(|w| a.2 - b.2 > w.0) {
                worst = Some((a.2 - b.2, i, j));
            }
        }
    }
    let (_, i, j) = worst?;
    let (a, b) = (seen.get(i)?, seen.get(j)?);
    Some(Fall {
        machine: way.machine.clone(),
        cause: way.cause.word(),
        set: name,
        highest: a.2,
        lowest: b.2,
        at: (a.0, b.0),
        capacity: (a.1, b.1),
        leads: b.3.clone(),
        refused,
    })
}

/// Every fall of every cause on every machine in every set of readings.
pub fn falls(machines: &[Machine], answer: Answerer<'_>) -> (Vec<Way>, Vec<Fall>) {
    let ways: Vec<Way> = machines.iter().flat_map(ways).collect();
    let half = |start: usize| -> Vec<Fall> {
        let chosen = ways.iter().skip(start).step_by(2);
        chosen.flat_map(|w| (0..SETS.len()).filter_map(|s| fall(w, s, answer)).collect::<Vec<_>>()).collect()
    };
    let falls = std::thread::scope(|s| {
        let other = s.spawn(|| half(1));
        let mut all = half(0);
        all.extend(other.join().unwrap_or_default());
        all
    });
    (ways, falls)
}

/// The falls as a page.
pub fn markdown(ways: &[Way], falls: &[Fall], rows: usize) -> String {
    let mut m = format!(
        "# Sweeps from mild to total\n\nWritten by `cargo run --release -p rimewise-tests --bin grade -- worse`; do not edit.\n\n\
         One cause at a time grows until it is total ({} ways: nine causes on {} machines, twelve refrigerants), the box\n\
         as warm as such a machine leaves it after hours, instruments without noise, the sheet complete. For every set of\n\
         readings: the largest fall of the probability of the true family (restriction and underfeed are one) from its\n\
         highest. Wanted: no fall above {MAY_FALL}.\n",
        ways.len(),
        ways.len() / CAUSES.len().max(1)
    );
    let above = |f: &&Fall| f.size() > MAY_FALL;
    let _ = writeln!(
        m,
        "\n* sweeps: {}\n* answers: {}, of them refused: {}\n* sweeps with a fall above {MAY_FALL}: {}\n* above 0.2: {}\n* the largest: {:.3}",
        falls.len(),
        ways.iter().map(|w| w.steps.len()).sum::<usize>() * SETS.len(),
        falls.iter().map(|f| f.refused).sum::<usize>(),
        falls.iter().filter(above).count(),
        falls.iter().filter(|f| f.size() > 0.2).count(),
        falls.iter().map(Fall::size).fold(0.0, f64::max)
    );
    let _ = write!(m, "\n## By cause and set: largest fall (sweeps above {MAY_FALL})\n\n| cause |");
    for (_, name) in SETS {
        let _ = write!(m, " {name} |");
    }
    let _ = write!(m, "\n|---|{}\n", "---|".repeat(SETS.len()));
    for cause in CAUSES {
        let _ = write!(m, "| {} |", cause.word());
        for (_, name) in SETS {
            let here: Vec<&Fall> =
                falls.iter().filter(|f| f.cause == cause.word() && f.set == name).collect();
            let worst = here.iter().map(|f| f.size()).fold(0.0, f64::max);
            let _ = write!(m, " {worst:.2} ({}) |", here.iter().filter(|f| f.size() > MAY_FALL).count());
        }
        m.push('\n');
    }
    let mut by_machine: BTreeMap<&str, (usize, f64)> = BTreeMap::new();
    for f in falls {
        let e = by_machine.entry(f.machine.as_str()).or_default();
        e.0 += usize::from(f.size() > MAY_FALL);
        e.1 = e.1.max(f.size());
    }
    let _ = write!(m, "\n## By machine\n\n| machine | sweeps above {MAY_FALL} | largest |\n|---|---|---|\n");
    for (name, (n, worst)) in by_machine {
        let _ = writeln!(m, "| {name} | {n} | {worst:.2} |");
    }
    let _ = write!(m, "\n## How far each way goes: capacity left at its end, the box then\n\n| machine |");
    for cause in CAUSES {
        let _ = write!(m, " {} |", cause.word());
    }
    let _ = write!(m, "\n|---|{}\n", "---|".repeat(CAUSES.len()));
    for chunk in ways.chunks(CAUSES.len()) {
        let _ = write!(m, "| {} |", chunk.first().map_or("", |w| w.machine.as_str()));
        for w in chunk {
            let last = w.steps.last();
            let _ = write!(
                m,
                " {:.2}, {:.0} degC |",
                last.map_or(f64::NAN, |s| s.1),
                last.and_then(|s| s.2["readings"]["space_c"].as_f64()).unwrap_or(f64::NAN)
            );
        }
        m.push('\n');
    }
    let mut worst: Vec<&Fall> = falls.iter().filter(above).collect();
    worst.sort_by(|a, b| b.size().total_cmp(&a.size()));
    let _ = write!(
        m,
        "\n## The largest {}\n\n| machine | cause | set | highest | at capacity | lowest | at capacity | leading there |\n|---|---|---|---|---|---|---|---|\n",
        rows.min(worst.len())
    );
    for f in worst.iter().take(rows) {
        let _ = writeln!(
            m,
            "| {} | {} | {} | {:.2} | {:.2} | {:.2} | {:.2} | {} |",
            f.machine, f.cause, f.set, f.highest, f.capacity.0, f.lowest, f.capacity.1, f.leads
        );
    }
    m
}
