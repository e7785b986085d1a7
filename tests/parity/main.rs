//! Makes one set of visits in every form that an interface takes, and what core answers to them on this machine.
//!
//! `parity FOLDER [VISITS]` writes into the folder
//! * `visits.jsonl`: the visits, one a line, as JavaScript takes them;
//! * `reports.jsonl`: core's answers to these lines, one a line;
//! * `cases.bin`: the visits as the C structs of `tests/parity/answer.c`;
//! * `digests.txt`: a digest of core's report on each case, taken from the report itself and not through the C API.

use rimewise::diagnosis::CauseAndMeasurements;
use rimewise::estimate::Estimate;
use rimewise::field::{Section, Shape, Value as Held};
use rimewise::json::{answer_visit, read_visit};
use rimewise::measurement::Measurement;
use rimewise::plan::{Plan, StepKind, Subject};
use rimewise::readings::{Readings, Visit};
use rimewise::report::Report;
use rimewise::verdict::Statement;
use rimewise_tests::rig::math::Rng;
use rimewise_tests::rig::set;
use serde_json::{Map, Value, json};
use std::collections::{BTreeMap, BTreeSet};
use std::process::ExitCode;
use std::{env, fs, io};

/// Seed of the visits.
const SEED: u64 = 11;
/// Readings of the record that a case has room for.
const RECORD: usize = 2;

fn main() -> ExitCode {
    let args: Vec<String> = env::args().skip(1).collect();
    let Some(folder) = args.first() else {
        eprintln!("parity FOLDER [VISITS]");
        return ExitCode::from(2);
    };
    let visits = args.get(1).and_then(|n| n.parse().ok()).unwrap_or(1000);
    match make(folder, visits) {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            eprintln!("parity: {why}");
            ExitCode::FAILURE
        }
    }
}

fn make(folder: &str, count: u64) -> io::Result<()> {
    fs::create_dir_all(folder)?;
    let run = set::run(&set::types("all"), SEED, count);
    let (mut lines, mut reports, mut cases, mut digests) =
        (String::new(), String::new(), Vec::new(), String::new());
    let mut subsets = BTreeSet::new();
    let mut leading = BTreeMap::new();
    let mut refused = 0;
    for (index, case) in run.cases.iter().enumerate() {
        let visit = thinned(&case.visit, &case.truth, index as u64);
        subsets.insert(visit["readings"].as_object().map(|r| r.keys().cloned().collect::<Vec<_>>()));
        let line = visit.to_string();
        reports += &(answer_visit(&line) + "\n");
        let (image, digest) = match read_visit(&line) {
            Ok(owned) => {
                let visit = owned.visit();
                let designation = owned.refrigerant.map_or("", |r| r.designation());
                let digest = match rimewise::diagnose(owned.refrigerant, &visit) {
                    Ok(report) => {
                        *leading.entry(report.diagnosis.leading.name()).or_insert(0) += 1;
                        format!("{index} report {:08x}", fnv(&report_words(&report)))
                    }
                    Err(invalid) => {
                        refused += 1;
                        format!("{index} invalid {:08x}", fnv(&invalid_words(&invalid)))
                    }
                };
                (image(designation, &visit), digest)
            }
            // What C sees of these is the designation alone: the others do not reach a struct.
            Err(_) => {
                refused += 1;
                (image("R9999", &Visit::default()), format!("{index} unknown"))
            }
        };
        lines += &(line + "\n");
        cases.extend(image);
        digests += &(digest + "\n");
    }
    fs::write(format!("{folder}/visits.jsonl"), lines)?;
    fs::write(format!("{folder}/reports.jsonl"), reports)?;
    fs::write(format!("{folder}/cases.bin"), cases)?;
    fs::write(format!("{folder}/digests.txt"), digests)?;
    println!("{} visits, {} subsets of readings, {refused} refused", run.cases.len(), subsets.len());
    println!("leading: {leading:?}");
    if count >= 1000 {
        let enough = subsets.len() >= 200 && leading.len() == 10 && refused >= 30;
        if !enough {
            return Err(io::Error::other(
                "the set must hold 200 subsets, every cause leading, and 30 refused",
            ));
        }
    }
    Ok(())
}

/// A visit with some readings left out, electrical readings added, and now and then something no machine can show.
fn thinned(visit: &Value, truth: &Value, index: u64) -> Value {
    let mut rng = Rng::new(SEED ^ 0x5EED, index);
    let mut visit = visit.clone();
    let keep = [1.0, 0.8, 0.6, 0.4][rng.below(4)];
    if let Some(readings) = visit["readings"].as_object_mut() {
        readings.retain(|_, _| rng.chance(keep));
        electrical(readings, &mut rng);
    }
    if rng.chance(0.15) {
        visit["uncertainty"] = json!({ "pressure_percent": 0.5, "line_temperature_k": 0.4 });
    }
    if rng.chance(0.1) {
        visit["system"]["record"] = json!([{ "readings": truth["record"].clone() }]);
    }
    if rng.chance(0.03) {
        visit["system"]["refrigerant"] = Value::Null;
    }
    match rng.below(40) {
        0 => visit["readings"]["suction_pressure_kpa"] = json!(-12.5),
        1 => {
            visit["readings"]["suction_pressure_kpa"] = json!(1900.0);
            visit["readings"]["discharge_pressure_kpa"] = json!(300.0);
        }
        2 => visit["readings"]["ambient_c"] = json!(999.0),
        3 => visit["readings"]["discharge_pressure_kpa"] = json!(19000.0),
        4 if rng.chance(0.5) => visit["system"]["refrigerant"] = json!("R9999"),
        _ => {}
    }
    visit
}

fn electrical(readings: &mut Map<String, Value>, rng: &mut Rng) {
    if rng.chance(0.3) {
        for (name, low, high) in [
            ("winding_run_ohm", 1.5, 3.5),
            ("winding_start_ohm", 6.0, 12.0),
            ("winding_run_to_start_ohm", 8.0, 15.0),
            ("winding_to_frame_megohm", 0.5, 400.0),
            ("run_capacitor_uf", 9.0, 18.0),
        ] {
            let value = rng.between(low, high);
            if rng.chance(0.06) && name != "run_capacitor_uf" {
                readings.insert(name.to_owned(), json!("open"));
            } else if rng.chance(0.8) {
                readings.insert(name.to_owned(), json!(value));
            }
        }
    }
    if rng.chance(0.1) {
        let volts: Vec<f64> = (0..3).map(|_| rng.between(210.0, 240.0)).collect();
        readings.insert("line_voltages_v".to_owned(), json!(volts));
    }
}

/// The little-endian image of one case: 24 bytes of designation, then the C structs.
fn image(designation: &str, visit: &Visit<'_>) -> Vec<u8> {
    let mut bytes = designation.as_bytes().to_vec();
    bytes.resize(24, 0);
    let system = &visit.system;
    let known = |name: &str| {
        if let Some(name) = name.strip_prefix("design_") {
            return words_of(&system.design, name);
        }
        match name.strip_prefix("compressor_") {
            Some(name) => words_of(&system.compressor, name),
            None => words_of(system, name),
        }
    };
    laid(&mut bytes, "System", &known);
    laid(&mut bytes, "Readings", &|name| words_of(&visit.readings, name));
    laid(&mut bytes, "Observations", &|name| words_of(&visit.observations, name));
    laid(&mut bytes, "Uncertainty", &|name| words_of(&visit.uncertainty, name));
    bytes.extend((visit.record.len().min(RECORD) as u32).to_le_bytes());
    for position in 0..RECORD {
        let blank = Readings::default();
        let readings = visit.record.get(position).unwrap_or(&blank);
        laid(&mut bytes, "Readings", &|name| words_of(readings, name));
    }
    bytes
}

/// The order of the members of C's structs.
const LAYOUT: &str = include_str!("../../ffi/layout.txt");

/// Appends a struct in the order that is laid out for C.
fn laid(bytes: &mut Vec<u8>, name: &str, words: &dyn Fn(&str) -> Vec<u32>) {
    let mut lines = LAYOUT.lines();
    lines.by_ref().find(|line| line.split(' ').next() == Some(name)).expect("every struct is laid out");
    let members = lines.map_while(|line| line.strip_prefix("  "));
    let words = std::iter::once(0).chain(members.flat_map(words)).collect();
    sized(bytes, words);
}

/// The words of one field as C holds it.
fn words_of<S: Section>(section: &S, name: &str) -> Vec<u32> {
    let position = S::ENTRIES.iter().position(|entry| entry.name == name).expect("the layout holds fields");
    let three = matches!(S::ENTRIES[position].shape, Shape::Three(_));
    match (section.get(position), S::ENTRIES[position].shape) {
        (Some(Held::Number(value)), _) => vec![value.to_bits()],
        (Some(Held::Three(values)), _) => values.map(f32::to_bits).to_vec(),
        (Some(Held::Flag(flag)), _) => vec![flag.into()],
        (Some(Held::Choice(code)), _) => vec![code as u32],
        (Some(Held::Set(bits)), _) => vec![bits],
        (None, Shape::Number(_) | Shape::Three(_)) => vec![f32::NAN.to_bits(); if three { 3 } else { 1 }],
        (None, _) => vec![u32::MAX],
    }
}

/// Appends a struct with its size in the first word.
fn sized(bytes: &mut Vec<u8>, mut words: Vec<u32>) {
    words[0] = 4 * words.len() as u32;
    bytes.extend(words.iter().flat_map(|w| w.to_le_bytes()));
}

/// FNV-1a over the little-endian bytes of the words (Fowler, Noll, Vo; 32-bit parameters of RFC 9923).
fn fnv(words: &[u32]) -> u32 {
    words
        .iter()
        .flat_map(|w| w.to_le_bytes())
        .fold(0x811C_9DC5, |hash, byte| (hash ^ u32::from(byte)).wrapping_mul(0x0100_0193))
}

/// The words of a report in the order that `tests/parity/answer.c` takes them.
fn report_words(report: &Report) -> Vec<u32> {
    let mut words = vec![
        u32::from(report.diagnosis.decided),
        report.diagnosis.leading.code() as u32,
        u32::from(report.diagnosis.fits.is_some()),
        report.diagnosis.fits.unwrap_or(0.0).to_bits(),
    ];
    let optional = |words: &mut Vec<u32>, value: Option<f32>| {
        words.push(u32::from(value.is_some()));
        words.push(value.unwrap_or(0.0).to_bits());
    };
    let estimate = |words: &mut Vec<u32>, estimate: Option<Estimate>| {
        words.push(u32::from(estimate.is_some()));
        let Estimate { value, u } = estimate.unwrap_or_default();
        words.extend([value.to_bits(), u.to_bits()]);
    };
    for cause in &report.diagnosis.causes {
        words.extend([cause.cause.code() as u32, cause.probability.to_bits()]);
        optional(&mut words, cause.severity);
    }
    words.push(report.diagnosis.evidence.len() as u32);
    for e in &report.diagnosis.evidence {
        words.extend([e.cause.code() as u32, e.reading.code() as u32, e.weight_nats.to_bits()]);
    }
    words.push(report.diagnosis.next.len() as u32);
    for n in &report.diagnosis.next {
        words.extend([n.measurement.code() as u32, n.effort.code() as u32, n.information_bits.to_bits()]);
        words.push(n.minutes.to_bits());
    }
    for list in [&report.diagnosis.ruled_out[..], &report.diagnosis.still_open[..]] {
        words.push(list.len() as u32);
        for CauseAndMeasurements { cause, measurements } in list {
            words.extend([cause.code() as u32, measurements.len() as u32]);
            words.extend(measurements.iter().map(|m| m.code() as u32));
        }
    }
    words.push(report.warnings.len() as u32);
    for w in &report.warnings {
        words.push(w.kind.code() as u32);
        words.extend(w.field.bytes().map(u32::from));
        words.push(w.unit.code() as u32);
        optional(&mut words, w.value);
        optional(&mut words, w.limit);
    }
    words.push(report.electrical.len() as u32);
    for f in &report.electrical {
        words.push(f.finding.code() as u32);
        words.extend(f.unit.bytes().map(u32::from));
        optional(&mut words, f.value);
        optional(&mut words, f.limit);
    }
    words.push(report.cautions.len() as u32);
    for c in &report.cautions {
        words.extend([c.code.code() as u32, c.step.code() as u32]);
    }
    for (_, quantity) in report.cycle.quantities() {
        estimate(&mut words, quantity);
    }
    for (_, quantity) in report.expected.quantities() {
        estimate(&mut words, quantity);
    }
    let statement = report.verdict.statement;
    let name = match statement {
        Statement::Cause(cause) => cause.code(),
        Statement::Family(family) => family.code(),
        Statement::Job(job) => job.code(),
        Statement::Electrical(finding) => finding.code(),
        Statement::Undecided | Statement::Healthy | Statement::Unidentified => 0,
    };
    words.extend([statement.level().code() as u32, name as u32, report.verdict.probability.to_bits()]);
    words.extend([report.compressor.state.code() as u32, report.compressor.probability.to_bits()]);
    words.push(report.families.len() as u32);
    for share in &report.families {
        words.extend([share.family.code() as u32, share.probability.to_bits()]);
    }
    words.push(report.jobs.len() as u32);
    for share in &report.jobs {
        words.extend([share.job.code() as u32, share.probability.to_bits()]);
    }
    words.push(report.alarms.len() as u32);
    for alarm in &report.alarms {
        words.extend([alarm.code.code() as u32, alarm.field.code() as u32]);
        words.extend(alarm.unit.bytes().map(u32::from));
        optional(&mut words, alarm.value);
        optional(&mut words, alarm.limit);
    }
    match &report.terminals {
        Some(t) => {
            words.extend([u32::from(t.common), u32::from(t.run), u32::from(t.start), t.probability.to_bits()])
        }
        None => words.extend([0; 4]),
    }
    words.extend(plan_words(&report.plan));
    words
}

/// The words of a plan.
fn plan_words(plan: &Plan) -> Vec<u32> {
    let entry = |kind: StepKind, subject: Subject, number: f32| {
        let (about, name) = match subject {
            Subject::Machine => (0, 0),
            Subject::Measurement(measurement) => (1, measurement.code()),
            Subject::Action(action) => (2, action.code()),
            Subject::Context(context) => (3, context.code()),
            Subject::Cause(cause) => (4, cause.code()),
            Subject::Finding(finding) => (5, finding.code()),
        };
        [kind.code() as u32, about, name as u32, number.to_bits()]
    };
    let step = &plan.step;
    let mut words = entry(step.kind, step.subject, step.changes).to_vec();
    words.extend([step.minutes.to_bits(), step.effort.map_or(0, |effort| effort.code()) as u32]);
    let hose = step.hose;
    for number in [hose.map(|h| h.grams), hose.and_then(|h| h.percent), plan.replace_above] {
        words.extend([u32::from(number.is_some()), number.unwrap_or(0.0).to_bits()]);
    }
    let weigh_in = plan.weigh_in_kg.unwrap_or_default();
    words.push(u32::from(plan.weigh_in_kg.is_some()));
    words.extend([weigh_in.value.to_bits(), weigh_in.u.to_bits()]);
    words.push(plan.change.map_or(0, |change| change.code()) as u32);
    words.push(plan.then.len() as u32);
    words.extend(plan.then.iter().flat_map(|then| entry(then.kind, then.subject, then.probability)));
    words.push(plan.ways.len() as u32);
    words.extend(plan.ways.iter().flat_map(|way| entry(way.kind, way.subject, way.expected_cost)));
    words
}

/// The words of a refusal: the field, the record's position, the problem and its range.
fn invalid_words(invalid: &rimewise::Invalid) -> Vec<u32> {
    let facts = invalid.facts();
    let mut words: Vec<u32> = invalid.field.bytes().map(u32::from).collect();
    let known = Measurement::from_name(invalid.field).map_or(0, Measurement::code);
    words.extend([known as u32, invalid.record.map_or(-1, |n| n as i32) as u32, facts.code.code() as u32]);
    words.push(facts.unit.code() as u32);
    for number in [facts.value.filter(|value| value.is_finite()), facts.min, facts.max] {
        words.extend([u32::from(number.is_some()), number.unwrap_or(0.0).to_bits()]);
    }
    words
}
