//! The calls that technicians get most and that are hardest on a diagnosis: dead, blocked, empty, hot, healthy but odd.
//!
//! `data/hard_visits.jsonl` has each with what a good technician would conclude and do, and the source of that.
//! `data/hard_misses.txt` lists what the library still misses; a miss that is not listed fails here. Run with
//! `RIMEWISE_WRITE=1` to write the list anew, and look at what changed.

use rimewise::json::{answer_property, answer_visit};
use rimewise_tests::rig::grader::hard::{self, Kind, Miss};
use serde_json::{Value, json};

fn reason(m: &Miss) -> String {
    match m.kind {
        Kind::Alarms if m.why.ends_with("[]") => format!("{} (no alarms in the report yet)", m.why),
        _ => m.why.clone(),
    }
}

#[test]
fn nothing_is_missed_that_is_not_known_to_be() {
    let visits = hard::visits();
    let misses = hard::judge_all(&answer_visit);
    println!("{}", hard::summary(visits.len(), &misses));
    if std::env::var_os("RIMEWISE_WRITE").is_some() {
        let mut list = String::from(
            "# What is missed of data/hard_visits.jsonl: visit, what of its answer, what was said. Wanted: nothing.\n",
        );
        for m in &misses {
            list.push_str(&format!("{}: {}: {}\n", m.name, m.kind.word(), reason(m)));
        }
        let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("data/hard_misses.txt");
        std::fs::write(path, list).expect("the list of misses can be written");
    }
    let known = hard::known();
    let is_known = |m: &&Miss| known.iter().any(|(name, kind)| *name == m.name && kind == m.kind.word());
    let new: Vec<&Miss> = misses.iter().filter(|m| !is_known(m)).collect();
    for (name, kind) in &known {
        if !misses.iter().any(|m| m.name == *name && m.kind.word() == kind) {
            println!("no longer missed, take it from the list: {name}: {kind}");
        }
    }
    assert!(new.is_empty(), "{} misses that are not on the list: {new:#?}", new.len());
    // The list can only shrink.
    assert!(known.len() <= KNOWN_MISSES, "the list of known misses grew to {}", known.len());
}

/// Entries of the list (124 when the visits were written); this may only fall.
const KNOWN_MISSES: usize = 10;

#[test]
fn every_visit_is_told_with_its_source_and_what_may_be_said() {
    let visits = hard::visits();
    assert!(visits.len() >= 60, "{}", visits.len());
    for v in &visits {
        assert!(v.visit["readings"].is_object(), "{}: no readings", v.name);
        assert!(!v.source.is_empty() && !v.truth.is_empty() && !v.technician.is_empty(), "{}", v.name);
        assert!(v.expect["verdict"].as_array().is_some_and(|a| !a.is_empty()), "{}", v.name);
        assert!(v.expect["compressor"].as_array().is_some_and(|a| !a.is_empty()), "{}", v.name);
        assert_eq!(visits.iter().filter(|w| w.name == v.name).count(), 1, "{} twice", v.name);
    }
}

fn saturated(refrigerant: &str, pressure_kpa: f64) -> Option<(f64, f64)> {
    let line = json!({ "refrigerant": refrigerant, "pressure_kpa": pressure_kpa }).to_string();
    let answer: Value = serde_json::from_str(&answer_property(&line)).expect("one JSON object");
    Some((answer["bubble_c"].as_f64()?, answer["dew_c"].as_f64()?))
}

/// What no running machine can show, whatever is wrong with it; the tables give the saturation temperatures.
#[test]
fn every_visit_is_physically_possible() {
    for v in hard::visits() {
        let r = &v.visit["readings"];
        let of = |key: &str| r[key].as_f64();
        let refrigerant = v.visit["system"]["refrigerant"].as_str().expect("a refrigerant");
        let name = &v.name;
        if r["running"] == false {
            continue;
        }
        let suction = of("suction_pressure_kpa").and_then(|p| saturated(refrigerant, p));
        let head = of("discharge_pressure_kpa").and_then(|p| saturated(refrigerant, p));
        if let (Some((_, dew)), Some(outlet)) = (suction, of("evaporator_outlet_c")) {
            assert!(outlet > dew - 1.0, "{name}: evaporator outlet {outlet} below dew {dew}");
        }
        if let (Some((_, dew)), Some(space)) = (suction, of("space_c")) {
            assert!(dew < space, "{name}: evaporating at {dew} in a space at {space}");
        }
        if let (Some(outlet), Some(space)) = (of("evaporator_outlet_c"), of("space_c")) {
            assert!(outlet < space + 0.5, "{name}: evaporator outlet {outlet} warmer than the space {space}");
        }
        if let (Some((bubble, _)), Some(liquid)) = (head, of("liquid_line_c")) {
            // Where no liquid is left the pipe stands at the room's temperature.
            let room = of("ambient_c").unwrap_or(liquid);
            assert!(
                liquid < (bubble + 0.7).max(room + 0.7),
                "{name}: liquid line {liquid}, bubble point {bubble}"
            );
        }
        if let (Some(liquid), Some(room)) = (of("liquid_line_c"), of("ambient_c")) {
            assert!(liquid > room - 0.5, "{name}: liquid line {liquid} colder than the room {room}");
        }
        if let (Some((_, dew)), Some(hot)) = (head, of("discharge_line_c")) {
            assert!(
                hot > dew - 6.0 || hot > of("ambient_c").unwrap_or(0.0),
                "{name}: discharge {hot}, dew {dew}"
            );
        }
        if let (Some(exhaust), Some(room)) = (of("condenser_exhaust_c"), of("ambient_c")) {
            assert!(exhaust > room, "{name}: exhaust {exhaust} in a room at {room}");
            if let Some((_, dew)) = head {
                assert!(exhaust < dew.max(room + 3.0), "{name}: exhaust {exhaust}, condensing {dew}");
            }
        }
    }
}
