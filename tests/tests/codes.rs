//! Every code that a caller may have to act on is given by some visit or question: warnings and errors, each at least once.

use rimewise::field::Choice;
use rimewise::invalid::ErrorCode;
use rimewise::json::{answer_property, answer_visit};
use rimewise::warning::WarningKind;
use serde_json::{Value, json};
use std::collections::BTreeSet;

/// An invented freezer in good order, as far as two pressures and three clamps tell.
fn visit() -> Value {
    json!({
        "system": {
            "refrigerant": "R404A", "metering": "capillary", "duty": "freezer",
            "design": {"space_c": -20, "ambient_c": 32, "evaporator_td_k": 8, "condenser_td_k": 11}
        },
        "readings": {
            "suction_pressure_kpa": 210, "discharge_pressure_kpa": 1500, "suction_line_c": -4, "liquid_line_c": 30,
            "discharge_line_c": 72, "space_c": -20, "ambient_c": 27
        }
    })
}

/// The visit with one field of a section.
fn set(path: &str, value: Value) -> Value {
    let mut visit = visit();
    let (section, name) = path.rsplit_once('/').expect("a section and a name");
    let section = visit.pointer_mut(section).and_then(Value::as_object_mut).expect("a section");
    section.insert(name.to_owned(), value);
    visit
}

/// An invented cooler whose capillary or drier is blocked: behind either the same machine stands.
fn alike() -> Value {
    json!({
        "system": {
            "refrigerant": "R134a", "metering": "capillary", "duty": "cooler",
            "compressor": {"rated_load_a": 2.8, "rated_v": 230, "phases": 1}
        },
        "readings": {
            "suction_pressure_kpa": 28, "discharge_pressure_kpa": 748, "space_c": 17, "ambient_c": 25,
            "liquid_line_c": 25, "evaporator_outlet_c": 16, "suction_line_c": 23, "discharge_line_c": 48,
            "condenser_exhaust_c": 25.5, "supply_air_c": 17, "current_a": 1.1
        }
    })
}

/// The pressures of R134a at -28 and 40 degC under the name of another refrigerant.
fn named_wrongly() -> Value {
    json!({
        "system": {"refrigerant": "R404A", "metering": "capillary", "duty": "freezer"},
        "readings": {
            "suction_pressure_kpa": 93, "discharge_pressure_kpa": 1017, "suction_line_c": -8, "evaporator_outlet_c": -24,
            "liquid_line_c": 34, "discharge_line_c": 70, "space_c": -20, "supply_air_c": -24, "ambient_c": 27,
            "condenser_exhaust_c": 34
        }
    })
}

fn warned(visit: &Value) -> BTreeSet<String> {
    let report: Value = serde_json::from_str(&answer_visit(&visit.to_string())).expect("one JSON object");
    assert_eq!(report["status"], "ok", "{report}");
    let warnings = report["warnings"].as_array().expect("a list");
    warnings.iter().map(|w| w["code"].as_str().expect("a code").to_owned()).collect()
}

#[test]
fn a_warning_quotes_what_it_is_about() {
    let visit = set("/readings/minutes_running", json!(4.0));
    let report: Value = serde_json::from_str(&answer_visit(&visit.to_string())).expect("one JSON object");
    let warning = report["warnings"].as_array().unwrap().iter().find(|w| w["code"] == "not_settled");
    let warning = warning.unwrap_or_else(|| panic!("{}", report["warnings"]));
    assert_eq!((&warning["value"], &warning["limit"]), (&json!(4), &json!(15)));
    assert_eq!(
        (&warning["unit"], &warning["field"]),
        (&json!("minutes"), &json!("readings.minutes_running"))
    );
}

#[test]
fn warnings_of_the_visit_itself_are_given() {
    let without = {
        let mut visit = visit();
        visit["system"].as_object_mut().unwrap().remove("refrigerant");
        visit
    };
    for (visit, code) in [
        (without, WarningKind::RefrigerantUnknown),
        (set("/readings/running", json!(false)), WarningKind::NotRunning),
        (set("/readings/minutes_running", json!(4.0)), WarningKind::NotSettled),
        (set("/readings/ambient_c", json!(110)), WarningKind::OutsideModel),
        (alike(), WarningKind::TwoCausesAlike),
        (named_wrongly(), WarningKind::ReadsLikeAnother),
        (set("/system/record", json!([{"readings": {"space_c": -20}}])), WarningKind::RecordUnused),
    ] {
        let codes = warned(&visit);
        assert!(codes.contains(code.name()), "{}: {codes:?}", code.name());
    }
}

/// The codes that only C or a program can bring about: what is read from JSON never reaches them.
const NOT_OF_JSON: [ErrorCode; 4] =
    [ErrorCode::NotFinite, ErrorCode::UnknownCode, ErrorCode::TooLong, ErrorCode::NotWritten];

#[test]
fn every_error_is_given_by_some_visit_or_question() {
    let visits = [
        "no json".to_owned(),
        r#"{"readings":{"space_c":1,"space_c":2}}"#.to_owned(),
        r#"{"weather":1}"#.to_owned(),
        r#"{"readings":[]}"#.to_owned(),
        r#"{"readings":{"line_voltages_v":[1,2]}}"#.to_owned(),
        r#"{"system":{"duty":"toaster"}}"#.to_owned(),
        r#"{"system":{"refrigerant":"R9999"}}"#.to_owned(),
        r#"{"access":{"cannot":["juggle"]}}"#.to_owned(),
        r#"{"readings":{"space_c":1e300}}"#.to_owned(),
        r#"{"readings":{"space_c":-200}}"#.to_owned(),
        r#"{"system":{"compressor":{"phases":2}}}"#.to_owned(),
        set("/readings/suction_pressure_kpa", json!(2500)).to_string(),
        set("/readings/discharge_pressure_kpa", json!(15000)).to_string(),
    ];
    let questions = [
        r#"{"pressure_kpa":300}"#,
        r#"{"refrigerant":"R134a","pressure_kpa":300,"enthalpy_kj_kg":300,"entropy_kj_kg_k":1}"#,
        r#"{"refrigerant":"R134a","pressure_kpa":9000}"#,
    ];
    let answers = visits.iter().map(|visit| answer_visit(visit));
    let given: BTreeSet<String> = answers
        .chain(questions.iter().map(|question| answer_property(question)))
        .map(|line| {
            let answer: Value = serde_json::from_str(&line).expect("one JSON object");
            assert_eq!(answer["status"], "error", "{answer}");
            answer["code"].as_str().expect("a code").to_owned()
        })
        .collect();
    // A state between or near the curves is refused by property calls that no line of JSON makes.
    let others =
        [ErrorCode::TwoPhase, ErrorCode::OtherPhase, ErrorCode::NearCritical, ErrorCode::BetweenBubbleAndDew];
    let missing: Vec<&str> = ErrorCode::CHOICES
        .list
        .iter()
        .filter(|member| !NOT_OF_JSON.iter().chain(&others).any(|code| code.name() == member.name))
        .map(|member| member.name)
        .filter(|name| !given.contains(*name))
        .collect();
    assert!(missing.is_empty(), "no visit or question brings {missing:?}");
}
