//! A visit: as JSON of the contract, as any text, and as the structs of the Rust interface.

use crate::bytes::Bytes;
use crate::report;
use rimewise::field::{Field, Kind};
use rimewise::json::{answer_visit, write_report};
use rimewise::readings::{PumpDownEnd, PumpDownValve, SightGlass, StartNoise};
use rimewise::refrigerant::{Refrigerant, data};
use rimewise::system::{CompressorPlate, Design, Duty, Metering, System};
use rimewise::{Observations, Readings, Uncertainty, Visit};
use serde_json::{Map, Value, json};
use std::time::Instant;

/// Milliseconds that an answer may take on an idle machine, and microseconds for each byte of its input: twenty times
/// what the slowest visits here took, so that it finds loops that do not end and not a busy machine.
const MOST_MS: u128 = 400;
const MOST_US_A_BYTE: u128 = 20;

/// A visit made of the fields of the contract, with faults in it.
pub fn json(data: &[u8]) {
    let line = visit(&mut Bytes(data)).to_string();
    // What bytes mean is not to be read off them.
    if std::env::var_os("RIMEWISE_FUZZ_SHOW").is_some() {
        eprintln!("{line}");
    }
    report::check(&answered(&line), true);
}

/// Any text, where it is one.
pub fn text(data: &[u8]) {
    if let Ok(text) = std::str::from_utf8(data) {
        report::check(&answered(text), false);
        let property = rimewise::json::answer_property(text);
        assert!(serde_json::from_str::<Value>(&property).is_ok(), "no JSON: {property}");
    }
}

/// Answers a visit in bounded time, and twice alike.
fn answered(line: &str) -> String {
    let most = MOST_MS * 1000 + MOST_US_A_BYTE * line.len() as u128;
    let began = Instant::now();
    let answer = answer_visit(line);
    let mut took = began.elapsed().as_micros();
    // Others use this machine too: only what is slow every time is slow.
    for _ in 0..5 {
        if took <= most {
            return answer;
        }
        let began = Instant::now();
        assert_eq!(answer_visit(line), answer, "another answer the second time: {line}");
        took = took.min(began.elapsed().as_micros());
    }
    panic!("{took} microseconds for {} bytes: {line}", line.len());
}

fn visit(bytes: &mut Bytes<'_>) -> Value {
    let mut visit = Map::new();
    let mut system = Map::new();
    if !bytes.once_in(8) {
        let known = data::ALL[bytes.below(data::ALL.len())].designation();
        let others = ["propane", "R-404a", "R9999", ""];
        let pick = bytes.below(64);
        system.insert("refrigerant".into(), json!(others.get(pick).copied().unwrap_or(known)));
    }
    named(bytes, &mut system, "metering", Metering::ALL, Metering::name);
    named(bytes, &mut system, "duty", Duty::ALL, Duty::name);
    for name in ["receiver", "suction_pressure_regulator"] {
        flag(bytes, &mut system, name);
    }
    if bytes.once_in(2) {
        system.insert("design".into(), numbers(bytes, Design::FIELDS));
    }
    if bytes.once_in(2) {
        system.insert("compressor".into(), numbers(bytes, CompressorPlate::FIELDS));
    }
    if bytes.once_in(8) {
        let count = bytes.below(6);
        let record: Vec<Value> = (0..count).map(|_| json!({ "readings": readings(bytes) })).collect();
        system.insert("record".into(), json!(record));
    }
    visit.insert("system".into(), Value::Object(system));
    visit.insert("readings".into(), readings(bytes));
    let mut seen = Map::new();
    named(bytes, &mut seen, "start_noise", StartNoise::ALL, StartNoise::name);
    named(bytes, &mut seen, "sight_glass", SightGlass::ALL, SightGlass::name);
    flag(bytes, &mut seen, "frost_on_compressor");
    flag(bytes, &mut seen, "coil_iced");
    visit.insert("observations".into(), Value::Object(seen));
    if bytes.once_in(4) {
        visit.insert("uncertainty".into(), numbers(bytes, Uncertainty::FIELDS));
    }
    // Something that does not belong, somewhere.
    if bytes.once_in(16) {
        let odd = [json!(null), json!("open"), json!(-1), json!([1, 2]), json!({}), json!(true), json!(1e39)];
        let value = odd[bytes.below(odd.len())].clone();
        let sections =
            ["system", "readings", "observations", "uncertainty", "complaint", "access", "costs", "x"];
        let section = sections[bytes.below(sections.len())];
        let names =
            ["x", "duty", "current_a", "coil_iced", "refrigerant", "line_voltages_v", "record", "design"];
        match visit.get_mut(section).and_then(Value::as_object_mut) {
            Some(members) => members.insert(names[bytes.below(names.len())].into(), value),
            None => visit.insert(section.into(), value),
        };
    }
    Value::Object(visit)
}

fn readings(bytes: &mut Bytes<'_>) -> Value {
    let mut readings = numbers(bytes, Readings::FIELDS);
    if let Some(members) = readings.as_object_mut() {
        flag(bytes, members, "running");
        named(bytes, members, "pump_down_valve", PumpDownValve::ALL, PumpDownValve::name);
        named(bytes, members, "pump_down_ended_by", PumpDownEnd::ALL, PumpDownEnd::name);
        for (name, high) in [("line_voltages_v", 500.0), ("line_currents_a", 60.0)] {
            if bytes.once_in(8) {
                let three: Vec<f32> = (0..3).map(|_| bytes.within(0.0, high)).collect();
                members.insert(name.into(), json!(three));
            }
        }
    }
    readings
}

/// Some of the fields, mostly with what a machine shows.
fn numbers(bytes: &mut Bytes<'_>, fields: &[Field]) -> Value {
    let mut members = Map::new();
    for field in fields {
        if !bytes.once_in(3) {
            continue;
        }
        let (low, high) = usual(field.kind);
        let value = bytes.number(low, high);
        let value =
            if field.kind.takes_open() && value == f32::INFINITY { json!("open") } else { json!(value) };
        members.insert(field.name.into(), value);
    }
    Value::Object(members)
}

/// What instruments on small machines show.
fn usual(kind: Kind) -> (f32, f32) {
    match kind {
        Kind::Pressure => (10.0, 2600.0),
        Kind::Temperature => (-45.0, 95.0),
        Kind::Difference => (0.0, 40.0),
        Kind::Resistance => (0.5, 30.0),
        Kind::Insulation => (0.1, 500.0),
        Kind::Capacitance => (1.0, 200.0),
        Kind::Current => (0.0, 40.0),
        Kind::Percent | Kind::Spread => (0.0, 5.0),
        _ => {
            let (low, high) = kind.range();
            (low, high.min(1000.0))
        }
    }
}

fn flag(bytes: &mut Bytes<'_>, members: &mut Map<String, Value>, name: &str) {
    match bytes.byte() % 8 {
        0 => members.insert(name.into(), json!(true)),
        1 => members.insert(name.into(), json!(false)),
        _ => None,
    };
}

fn named<T: Copy>(
    bytes: &mut Bytes<'_>,
    members: &mut Map<String, Value>,
    field: &str,
    all: &[T],
    name: impl Fn(T) -> &'static str,
) {
    if bytes.once_in(2) {
        members.insert(field.into(), json!(name(all[bytes.below(all.len())])));
    }
}

/// The structs of the Rust interface, any bits in any number.
pub fn structs(data: &[u8]) {
    let bytes = &mut Bytes(data);
    let refrigerant: Option<&Refrigerant<'_>> =
        (!bytes.once_in(8)).then(|| data::ALL[bytes.below(data::ALL.len())]);
    let mut system = System {
        metering: pick(bytes, Metering::ALL),
        duty: pick(bytes, Duty::ALL),
        receiver: truth(bytes),
        suction_pressure_regulator: truth(bytes),
        ..System::default()
    };
    fill(bytes, Design::FIELDS, |n, value| put(system.design.number_mut(n), value));
    fill(bytes, CompressorPlate::FIELDS, |n, value| put(system.compressor.number_mut(n), value));
    let readings = filled(bytes);
    let mut uncertainty = Uncertainty::default();
    if bytes.once_in(4) {
        fill(bytes, Uncertainty::FIELDS, |n, value| put(uncertainty.number_mut(n), value));
    }
    let observations = Observations {
        start_noise: pick(bytes, StartNoise::ALL),
        sight_glass: pick(bytes, SightGlass::ALL),
        frost_on_compressor: truth(bytes),
        coil_iced: truth(bytes),
        ..Observations::default()
    };
    let record: Vec<Readings> = (0..bytes.below(32).saturating_sub(28)).map(|_| filled(bytes)).collect();
    let visit = Visit { system, readings, observations, uncertainty, record: &record, ..Visit::default() };
    match rimewise::diagnose(refrigerant, &visit) {
        Ok(found) => {
            let line = write_report(&found, rimewise::text::Language::English);
            // JSON writes null for what is no number: that would hide one.
            crate::assert_finite("a report", &found);
            report::check(&line, true);
        }
        Err(invalid) => {
            assert!(!invalid.field.is_empty() && !invalid.section.is_empty(), "{invalid:?} names no field")
        }
    }
}

fn filled(bytes: &mut Bytes<'_>) -> Readings {
    let mut readings = Readings {
        running: truth(bytes),
        pump_down_valve: pick(bytes, PumpDownValve::ALL),
        pump_down_ended_by: pick(bytes, PumpDownEnd::ALL),
        ..Readings::default()
    };
    fill(bytes, Readings::FIELDS, |n, value| put(readings.number_mut(n), value));
    if bytes.once_in(8) {
        readings.line_voltages_v = Some([0; 3].map(|_| bytes.number(0.0, 500.0)));
    }
    readings
}

fn fill(bytes: &mut Bytes<'_>, fields: &[Field], mut put: impl FnMut(usize, f32)) {
    for (position, field) in fields.iter().enumerate() {
        if bytes.once_in(3) {
            let (low, high) = usual(field.kind);
            put(position, bytes.number(low, high));
        }
    }
}

fn put(slot: Option<&mut Option<f32>>, value: f32) {
    *slot.expect("a slot for each field") = Some(value);
}

fn truth(bytes: &mut Bytes<'_>) -> Option<bool> {
    [Some(true), Some(false), None, None, None, None].get(bytes.below(6)).copied().flatten()
}

fn pick<T: Copy>(bytes: &mut Bytes<'_>, all: &[T]) -> Option<T> {
    all.get(bytes.below(2 * all.len())).copied()
}
