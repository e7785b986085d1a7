//! The JSON contract: wrong input names its field, missing input is normal, later lines are still served.

use rimewise::json::{answer_property, answer_visit};
use serde_json::{Value, json};

fn answer(line: &str) -> Value {
    serde_json::from_str(&answer_visit(line)).expect("an answer is one JSON object")
}

fn full() -> Value {
    json!({
        "system": {
            "refrigerant": "R290", "metering": "capillary", "receiver": false,
            "suction_pressure_regulator": false, "duty": "freezer",
            "design": {
                "space_c": -20.0, "ambient_c": 32.0, "evaporator_td_k": 8.0, "condenser_td_k": 11.0,
                "suction_superheat_k": 20.0, "subcooling_k": 4.0,
                "suction_pressure_kpa": null, "discharge_pressure_kpa": null
            },
            "compressor": {
                "rated_load_a": 3.1, "locked_rotor_a": 21.0, "rated_v": 230, "phases": 1, "hz": 60,
                "run_winding_ohm": 2.4, "start_winding_ohm": 9.8, "winding_reference_c": 25.0,
                "run_capacitor_uf": 15.0, "start_capacitor_uf": 88.0
            }
        },
        "readings": {
            "suction_pressure_kpa": 210.0, "evaporator_pressure_kpa": null, "discharge_pressure_kpa": 1320.0,
            "liquid_pressure_kpa": null, "evaporator_outlet_c": -21.5, "suction_line_c": -4.0,
            "discharge_line_c": 68.0, "liquid_line_c": 33.5, "drier_outlet_c": 33.0,
            "space_c": -17.5, "supply_air_c": -23.0, "ambient_c": 27.0, "condenser_exhaust_c": 34.5,
            "current_a": 2.9, "voltage_v": 228.0,
            "pump_down_kpa": 165.0, "pump_down_rise_kpa_per_min": 6.0, "pump_down_valve": "suction_service",
            "pump_down_ended_by": "limit",
            "standing_pressure_kpa": null, "standing_temperature_c": null,
            "winding_run_ohm": 2.5, "winding_start_ohm": 9.9, "winding_run_to_start_ohm": 12.4,
            "winding_to_frame_megohm": 200.0, "run_capacitor_uf": 14.6, "start_capacitor_uf": 90.0
        },
        "observations": {
            "start_noise": "fades", "frost_on_compressor": false, "sight_glass": "clear", "coil_iced": false
        },
        "uncertainty": { "pressure_percent": 1.0, "line_temperature_k": 1.0 }
    })
}

/// The full visit with one value changed at a path such as `readings.current_a`.
fn with(path: &str, value: Value) -> String {
    let mut visit = full();
    let mut at = &mut visit;
    for name in path.split('.') {
        at = at.as_object_mut().expect("a section").entry(name).or_insert(json!({}));
    }
    *at = value;
    visit.to_string()
}

#[track_caller]
fn names(line: &str, field: &str, code: &str) {
    let answer = answer(line);
    assert_eq!(answer["status"], "error", "{answer}");
    assert_eq!(answer["field"], field, "{answer}");
    assert_eq!(answer["code"], code, "{answer}");
    assert!(answer["error"].as_str().is_some_and(|e| !e.is_empty()), "{answer}");
}

#[test]
fn a_full_visit_is_answered_with_every_fixed_field() {
    let report = answer(&full().to_string());
    assert_eq!(report["status"], "ok", "{report}");
    for key in [
        "cycle",
        "expected",
        "causes",
        "decided",
        "leading",
        "fits",
        "evidence",
        "next",
        "ruled_out",
        "still_open",
        "warnings",
        "electrical",
        "cautions",
    ] {
        assert!(report.get(key).is_some(), "{key} is missing");
    }
    for key in
        ["suction_saturation_c", "superheat_k", "compressor_superheat_k", "subcooling_k", "pressure_ratio"]
    {
        assert!(report["cycle"][key]["value"].is_f64(), "{key}: {}", report["cycle"]);
        assert!(report["cycle"][key]["u"].as_f64().is_some_and(|u| u > 0.0), "{key}: {}", report["cycle"]);
    }
    let causes = report["causes"].as_array().unwrap();
    assert_eq!(causes.len(), 10);
    assert_eq!(causes[0]["cause"], report["leading"]);
    let probabilities: Vec<f64> = causes.iter().map(|c| c["probability"].as_f64().unwrap()).collect();
    assert!(probabilities.windows(2).all(|pair| pair[0] >= pair[1]), "{probabilities:?}");
    for cause in causes {
        assert_eq!(cause["severity"].is_null(), cause["cause"] == "none", "{cause}");
    }
}

#[test]
fn an_empty_visit_is_still_a_visit() {
    let report = answer("{}");
    assert_eq!(report["status"], "ok", "{report}");
    assert_eq!(report["decided"], false);
    assert!(report["cycle"]["superheat_k"].is_null());
}

#[test]
fn one_gauge_gives_a_posterior_and_a_next_measurement() {
    let report = answer(
        r#"{"system":{"refrigerant":"R404A","duty":"freezer"},"readings":{"suction_pressure_kpa":180}}"#,
    );
    assert_eq!(report["status"], "ok", "{report}");
    assert_eq!(report["decided"], false);
    assert!(!report["next"].as_array().unwrap().is_empty(), "{report}");
}

#[test]
fn every_wrong_input_names_its_field() {
    names("this is not JSON", "", "not_json");
    names("{\"system\":", "", "not_json");
    names("[]", "", "wrong_type");
    names("{\"readings\":{\"current_a\":NaN}}", "", "not_json");
    names("{\"readings\":{\"current_a\":1,\"current_a\":2}}", "readings.current_a", "duplicate");
    names("{\"readings\":{\"current_a\":1e400}}", "readings.current_a", "too_large");
    names(
        "{\"readings\":{\"line_voltages_v\":[230,231,-1e400]}}",
        "readings.line_voltages_v[2]",
        "too_large",
    );
    names(&with("system.refrigerant", json!("R9999")), "system.refrigerant", "unknown_refrigerant");
    names(&with("system.refrigerant", json!(404)), "system.refrigerant", "wrong_type");
    names(&with("system.metering", json!("magic")), "system.metering", "unknown_name");
    names(&with("system.receiver", json!("no")), "system.receiver", "wrong_type");
    names(&with("system.design.spaec_c", json!(1.0)), "system.design.spaec_c", "unknown_field");
    names(
        &with("system.design.evaporator_td_k", json!(-8.0)),
        "system.design.evaporator_td_k",
        "out_of_range",
    );
    names(&with("system.compressor.phases", json!(2)), "system.compressor.phases", "phases_unknown");
    names(&with("readings.suction_presure_kpa", json!(1.0)), "readings.suction_presure_kpa", "unknown_field");
    names(
        &with("readings.suction_pressure_kpa", json!(0.0)),
        "readings.suction_pressure_kpa",
        "out_of_range",
    );
    names(
        &with("readings.suction_pressure_kpa", json!(-10.0)),
        "readings.suction_pressure_kpa",
        "out_of_range",
    );
    names(
        &with("readings.suction_pressure_kpa", json!("210")),
        "readings.suction_pressure_kpa",
        "wrong_type",
    );
    names(&with("readings.suction_pressure_kpa", json!(1e300)), "readings.suction_pressure_kpa", "too_large");
    names(
        &with("readings.discharge_pressure_kpa", json!(19000.0)),
        "readings.discharge_pressure_kpa",
        "outside_table",
    );
    names(
        &with("readings.suction_pressure_kpa", json!(1500.0)),
        "readings.suction_pressure_kpa",
        "above_discharge",
    );
    names(&with("readings.space_c", json!(-300.0)), "readings.space_c", "out_of_range");
    names(
        &with("readings.line_voltages_v", json!([230.0, 231.0])),
        "readings.line_voltages_v",
        "wrong_length",
    );
    names(&with("readings.winding_run_ohm", json!("opened")), "readings.winding_run_ohm", "wrong_type");
    names(&with("observations.sight_glass", json!(true)), "observations.sight_glass", "wrong_type");
    names(&with("uncertainty.pressure_percent", json!(-1.0)), "uncertainty.pressure_percent", "out_of_range");
    names(&with("weather", json!({})), "weather", "unknown_field");
    names(&with("access.cannot", json!(["juggle"])), "access.cannot[0]", "unknown_measurement");
    names(&with("language", json!("xx")), "language", "unknown_name");
    names(
        &with("system.record", json!([{ "readings": {} }, { "readings": { "current_a": "x" } }])),
        "system.record[1].readings.current_a",
        "wrong_type",
    );
}

#[test]
fn a_broken_limit_stands_beside_the_value_in_the_language_asked_for() {
    let refused = answer(&with("readings.space_c", json!(-300.0)));
    assert_eq!((&refused["value"], &refused["limit"]), (&json!(-300), &json!(-120)), "{refused}");
    assert_eq!(refused["unit"], "degC");
    let mut visit: Value = serde_json::from_str(&with("readings.space_c", json!(-300.0))).unwrap();
    visit["language"] = json!("es");
    let spanish = answer(&visit.to_string());
    assert_eq!(spanish["code"], refused["code"]);
    assert_ne!(spanish["error"], refused["error"]);
    visit["readings"]["space_c"] = json!(-17.5);
    let report = answer(&visit.to_string());
    visit["language"] = json!("en");
    let english = answer(&visit.to_string());
    let texts = |report: &Value| -> Vec<String> {
        report["cautions"].as_array().unwrap().iter().map(|c| c["text"].to_string()).collect()
    };
    assert!(
        texts(&report).iter().zip(texts(&english)).all(|(es, en)| *es != en) && !texts(&report).is_empty()
    );
    assert_eq!(report["causes"], english["causes"]);
}

#[test]
fn an_open_winding_is_a_reading() {
    let report = answer(&with("readings.winding_start_ohm", json!("open")));
    assert_eq!(report["status"], "ok", "{report}");
}

#[test]
fn a_gauge_pressure_is_answered_with_a_warning() {
    // The freezer's suction and discharge as a gauge shows them at sea level, taken for absolute.
    let mut visit = full();
    visit["readings"]["suction_pressure_kpa"] = json!(183.0 - 101.3);
    visit["readings"]["discharge_pressure_kpa"] = json!(1290.0 - 101.3);
    visit["readings"]["pump_down_kpa"] = json!(null);
    visit["readings"]["pump_down_rise_kpa_per_min"] = json!(null);
    visit["readings"]["evaporator_outlet_c"] = json!(-23.0);
    visit["readings"]["suction_line_c"] = json!(-7.0);
    visit["readings"]["liquid_line_c"] = json!(33.5);
    let report = answer(&visit.to_string());
    assert_eq!(report["status"], "ok", "{report}");
    let warned = report["warnings"]
        .as_array()
        .unwrap()
        .iter()
        .any(|w| w["field"] == "readings.suction_pressure_kpa" && w["code"] == "reads_like_gauge");
    assert!(warned, "{}", report["warnings"]);
}

#[test]
fn space_and_ambient_the_wrong_way_round_are_not_decided_on() {
    let mut visit = full();
    let readings = visit["readings"].as_object_mut().unwrap();
    let (space, ambient) = (readings["space_c"].clone(), readings["ambient_c"].clone());
    readings.insert("space_c".into(), ambient);
    readings.insert("ambient_c".into(), space);
    // Air temperatures that would then lie on the wrong side of the coil are an answer of their own.
    readings.remove("supply_air_c");
    readings.remove("condenser_exhaust_c");
    let report = answer(&visit.to_string());
    assert_eq!(report["status"], "ok", "{report}");
    assert_eq!(report["decided"], false, "{report}");
    for field in ["readings.space_c", "readings.ambient_c"] {
        let warned = report["warnings"].as_array().unwrap().iter();
        let swapped = |w: &&Value| w["field"] == field && w["code"] == "reads_like_the_other";
        assert_eq!(warned.filter(swapped).count(), 1, "{}", report["warnings"]);
    }
}

#[test]
fn property_questions_are_answered_or_refused_by_field() {
    let ask =
        |line: &str| -> Value { serde_json::from_str(&answer_property(line)).expect("one JSON object") };
    let saturation = ask(r#"{"refrigerant":"r-404a","pressure_kpa":300.0}"#);
    assert_eq!(saturation["status"], "ok", "{saturation}");
    assert!(saturation["bubble_c"].as_f64().unwrap() < saturation["dew_c"].as_f64().unwrap());
    let back = ask(&format!(r#"{{"refrigerant":"404A","temperature_c":{}}}"#, saturation["dew_c"]));
    assert!((back["dew_kpa"].as_f64().unwrap() - 300.0).abs() < 0.2, "{back}");
    let vapor = ask(r#"{"refrigerant":"propane","pressure_kpa":300.0,"temperature_c":20.0}"#);
    assert_eq!(vapor["phase"], "vapor", "{vapor}");
    let liquid = ask(r#"{"refrigerant":"R290","pressure_kpa":1500.0,"temperature_c":20.0}"#);
    assert_eq!(liquid["phase"], "liquid", "{liquid}");
    let identity = ask(r#"{"refrigerant":"R404A"}"#);
    assert_eq!(identity["safety_class"], "A1", "{identity}");
    // ASHRAE 34: R-125/143a/134a, 44/52/4 % by mass.
    let share = |name: &str| {
        let parts = identity["composition"].as_array().unwrap();
        parts.iter().find(|part| part["component"] == name).map(|part| part["mass_percent"].as_f64().unwrap())
    };
    assert_eq!((share("R125"), share("R143a"), share("R134a")), (Some(44.0), Some(52.0), Some(4.0)));
    assert!(ask(r#"{"list":true}"#)["refrigerants"].as_array().unwrap().len() >= 5);
    for (line, field) in [
        ("nonsense", ""),
        (r#"{"pressure_kpa":300.0}"#, "refrigerant"),
        (r#"{"refrigerant":"R404A","pressure_kpa":30000.0}"#, "pressure_kpa"),
        (r#"{"refrigerant":"R404A","temperature_c":290.0}"#, "temperature_c"),
        (r#"{"refrigerant":"R404A","presure_kpa":300.0}"#, "presure_kpa"),
        (r#"{"refrigerant":"R404A","pressure_kpa":"high"}"#, "pressure_kpa"),
    ] {
        let refused = ask(line);
        assert_eq!(refused["status"], "error", "{refused}");
        assert_eq!(refused["field"], field, "{refused}");
    }
}
