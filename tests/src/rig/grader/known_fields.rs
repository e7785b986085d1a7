//! Which of the newer inputs the library takes: asked once, so that visits hold nothing it would refuse.

use super::report::Answerer;
use serde_json::{Value, json};
use std::sync::OnceLock;

/// Newer inputs by their path, with a value to ask with.
fn newer() -> Vec<(&'static str, Value)> {
    vec![
        ("complaint", json!(["not_cold"])),
        ("complaint_hours", json!(24)),
        ("history", json!(["circuit_opened"])),
        ("access", json!({ "suction_port": true })),
        ("costs", json!({ "visit": 80.0 })),
        ("system.compressor.kind", json!("reciprocating")),
        ("system.compressor.drive", json!("fixed_speed")),
        ("system.compressor.start_gear", json!("ptc")),
        ("readings.evaporator_inlet_c", json!(-20.0)),
        ("readings.condenser_middle_c", json!(40.0)),
        ("readings.recovered_kg", json!(0.1)),
        ("readings.added_kg", json!(0.1)),
        ("readings.starts_per_hour", json!(4.0)),
        ("readings.hours_running", json!(10.0)),
        ("observations.condenser_fan", json!("turns")),
        ("observations.evaporator_fan", json!("turns")),
        ("observations.condenser_face", json!("clean")),
        ("observations.frost_line", json!("whole_coil")),
        ("observations.oil_traces", json!(false)),
        ("observations.leak_found", json!(false)),
        ("observations.calls_for_cooling", json!(true)),
        ("observations.door_closes", json!(true)),
        ("observations.start_sound", json!("starts")),
    ]
}

fn put(visit: &mut Value, path: &str, value: Value) {
    match path.split_once('.') {
        None => visit[path] = value,
        Some((head, rest)) => put(&mut visit[head], rest, value),
    }
}

fn take(visit: &mut Value, path: &str) {
    let Some(members) = visit.as_object_mut() else { return };
    match path.split_once('.') {
        None => {
            members.shift_remove(path);
        }
        Some((head, rest)) => {
            if let Some(inner) = members.get_mut(head) {
                take(inner, rest);
            }
        }
    }
}

/// The newer inputs that are refused.
fn refused(answer: Answerer<'_>) -> &'static [&'static str] {
    static REFUSED: OnceLock<Vec<&'static str>> = OnceLock::new();
    REFUSED.get_or_init(|| {
        let asked = |path: &str, value: Value| {
            let mut visit = json!({ "readings": {} });
            put(&mut visit, path, value);
            let report: Value = serde_json::from_str(&answer(&visit.to_string())).unwrap_or(Value::Null);
            report["status"] != "ok" && report["field"].as_str().is_some_and(|f| path.starts_with(f))
        };
        newer().into_iter().filter(|(path, value)| asked(path, value.clone())).map(|(path, _)| path).collect()
    })
}

/// The visit without what the library would refuse.
pub fn accepted(visit: &Value, answer: Answerer<'_>) -> Value {
    let mut out = visit.clone();
    for path in refused(answer) {
        take(&mut out, path);
    }
    for section in ["observations", "access", "costs"] {
        if out[section].as_object().is_some_and(serde_json::Map::is_empty) {
            take(&mut out, section);
        }
    }
    out
}

/// Whether the library takes a newer input.
pub fn takes(path: &str, answer: Answerer<'_>) -> bool {
    !refused(answer).contains(&path)
}
