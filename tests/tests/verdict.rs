//! What the verdict owes a technician, visit by visit, through the JSON contract.

use rimewise::json::{answer_property, answer_visit};
use serde_json::{Value, json};

fn answer(visit: &Value) -> Value {
    let report: Value = serde_json::from_str(&answer_visit(&visit.to_string())).expect("one JSON object");
    assert_eq!(report["status"], "ok", "{report}");
    report
}

fn freezer(readings: Value) -> Value {
    json!({
        "system": {
            "refrigerant": "R404A", "metering": "capillary", "receiver": false, "duty": "freezer",
            "design": {
                "space_c": -20.0, "ambient_c": 32.0, "evaporator_td_k": 8.0, "condenser_td_k": 12.0,
                "suction_superheat_k": 22.0, "subcooling_k": 4.0
            },
            "compressor": { "rated_load_a": 4.6, "rated_v": 230 }
        },
        "readings": readings
    })
}

/// What the library itself expects of this freezer at a space and an ambient temperature, as exact readings.
fn healthy(space_c: f64, ambient_c: f64) -> Value {
    let report = answer(&freezer(json!({ "space_c": space_c, "ambient_c": ambient_c })));
    let mut readings = json!({ "space_c": space_c, "ambient_c": ambient_c });
    for (reading, key) in [
        ("suction_pressure_kpa", "suction_pressure_kpa"),
        ("discharge_pressure_kpa", "discharge_pressure_kpa"),
        ("evaporator_outlet_c", "evaporator_outlet_c"),
        ("suction_line_c", "suction_line_c"),
        ("discharge_line_c", "discharge_line_c"),
        ("liquid_line_c", "liquid_line_c"),
        ("drier_outlet_c", "drier_outlet_c"),
        ("supply_air_c", "supply_air_c"),
        ("condenser_exhaust_c", "condenser_exhaust_c"),
    ] {
        readings[reading] = report["expected"][key]["value"].clone();
    }
    readings
}

fn probability(report: &Value, cause: &str) -> f64 {
    let causes = report["causes"].as_array().unwrap();
    causes.iter().find(|c| c["cause"] == cause).unwrap()["probability"].as_f64().unwrap()
}

fn fault_decided(report: &Value) -> bool {
    report["decided"] == true && report["leading"] != "none"
}

#[test]
fn a_healthy_freezer_is_cleared_at_its_set_point_and_never_condemned_in_pull_down() {
    let report = answer(&freezer(healthy(-20.0, 28.0)));
    assert_eq!(
        (&report["leading"], &report["decided"]),
        (&json!("none"), &json!(true)),
        "{}",
        report["causes"]
    );
    for above in [5.0, 10.0, 15.0] {
        for ambient in [20.0, 28.0, 36.0] {
            let report = answer(&freezer(healthy(-20.0 + above, ambient)));
            assert!(!fault_decided(&report), "{above} K warm at {ambient}: {}", report["causes"]);
        }
    }
}

#[test]
fn a_warm_freezer_with_a_high_suction_is_not_condemned_without_a_pump_down() {
    // Whether a capillary starves a warm evaporator or feeds it well is not known well enough for that (judged).
    for space_c in [-5.0, 0.0, 5.0] {
        for suction_kpa in [260.0, 300.0, 330.0] {
            let mut visit = freezer(json!({
                "suction_pressure_kpa": suction_kpa, "discharge_pressure_kpa": 1500.0, "suction_line_c": 12.0,
                "liquid_line_c": 38.0, "space_c": space_c, "ambient_c": 30.0
            }));
            visit["system"]["refrigerant"] = json!("R290");
            visit["system"]["design"] = json!({ "space_c": -20.0, "ambient_c": 32.0 });
            let report = answer(&visit);
            assert!(!fault_decided(&report), "{space_c} degC, {suction_kpa} kPa: {}", report["causes"]);
        }
    }
}

#[test]
fn a_suction_gauge_and_a_clamp_never_decide_a_weak_compressor() {
    // Every suction pressure and superheat such a freezer can show, much warmer suction included.
    for kpa in (120..=420).step_by(20) {
        for clamp in (-30..=25).step_by(5) {
            let report = answer(&freezer(json!({ "suction_pressure_kpa": kpa, "suction_line_c": clamp })));
            let decided = report["decided"] == true && report["leading"] == "weak_compressor";
            assert!(!decided, "{kpa} kPa, {clamp} degC: {}", report["causes"]);
        }
    }
}

#[test]
fn a_visit_that_nothing_explains_is_not_decided() {
    // Superheat, subcooling and discharge temperature that contradict each other in every direction at once.
    let mut readings = healthy(-18.0, 28.0);
    readings["suction_pressure_kpa"] = json!(420.0);
    readings["evaporator_outlet_c"] = json!(24.0);
    readings["discharge_pressure_kpa"] = json!(1050.0);
    readings["liquid_line_c"] = json!(49.0);
    readings["discharge_line_c"] = json!(41.0);
    readings["condenser_exhaust_c"] = json!(47.0);
    let report = answer(&freezer(readings));
    assert_eq!(report["decided"], false, "{report}");
    assert!(report["fits"].as_f64().unwrap() < 0.01, "{}", report["fits"]);
}

#[test]
fn the_wrong_refrigerant_lowers_the_fit() {
    // The healthy freezer's temperatures with the pressures that propane would show at them.
    let mut readings = healthy(-20.0, 28.0);
    let right = answer(&freezer(readings.clone()));
    readings["suction_pressure_kpa"] = json!(readings["suction_pressure_kpa"].as_f64().unwrap() * 0.67);
    readings["discharge_pressure_kpa"] = json!(readings["discharge_pressure_kpa"].as_f64().unwrap() * 0.75);
    let wrong = answer(&freezer(readings));
    assert!(wrong["fits"].as_f64().unwrap() < 0.2 * right["fits"].as_f64().unwrap(), "{}", wrong["fits"]);
    assert_eq!(wrong["decided"], false, "{}", wrong["causes"]);
    let named = |report: &Value| {
        report["warnings"].as_array().unwrap().iter().any(|w| w["field"] == "system.refrigerant")
    };
    assert!(named(&wrong) && !named(&right), "{} {}", wrong["warnings"], right["warnings"]);
}

#[test]
fn clamps_on_each_others_pipe_are_named_and_do_not_decide() {
    let mut readings = healthy(-20.0, 28.0);
    let outlet = readings["evaporator_outlet_c"].clone();
    readings["evaporator_outlet_c"] = readings["suction_line_c"].clone();
    readings["suction_line_c"] = outlet;
    let report = answer(&freezer(readings));
    for field in ["readings.evaporator_outlet_c", "readings.suction_line_c"] {
        let named = report["warnings"]
            .as_array()
            .unwrap()
            .iter()
            .any(|w| w["field"] == field && w["code"] == "reads_like_the_other");
        assert!(named, "{field}: {}", report["warnings"]);
    }
    assert_eq!(report["decided"], false, "{}", report["causes"]);
}

#[test]
fn one_gross_misreading_is_named_and_does_not_decide() {
    let mut readings = healthy(-20.0, 28.0);
    readings["discharge_line_c"] = json!(22.0);
    let report = answer(&freezer(readings));
    let named = report["warnings"]
        .as_array()
        .unwrap()
        .iter()
        .any(|w| w["field"] == "readings.discharge_line_c" && w["code"] == "contradicts_others");
    assert!(named, "{}", report["warnings"]);
    assert!(!fault_decided(&report), "{}", report["causes"]);
}

#[test]
fn the_pump_down_moves_a_weak_compressor_as_a_technician_expects() {
    let odds = |extra: Value| {
        // A suction gauge alone, reading a little high: the visit leaves a weak compressor open.
        let kpa = healthy(-20.0, 28.0)["suction_pressure_kpa"].as_f64().unwrap() + 22.0;
        let mut readings = json!({ "space_c": -20.0, "ambient_c": 28.0, "suction_pressure_kpa": kpa });
        for (name, value) in extra.as_object().unwrap() {
            readings[name] = value.clone();
        }
        let p = probability(&answer(&freezer(readings)), "weak_compressor");
        p / (1.0 - p)
    };
    let before = odds(json!({}));
    let test = |kpa: f64, rise: f64, by: &str| {
        json!({ "pump_down_kpa": kpa, "pump_down_rise_kpa_per_min": rise, "pump_down_valve": "suction_service",
                "pump_down_ended_by": by })
    };
    let holds = odds(test(60.0, 0.0, "limit"));
    let stalls = odds(test(160.0, 6.0, "limit"));
    let stopped = odds(json!({ "pump_down_kpa": 150.0, "pump_down_valve": "suction_service",
                               "pump_down_ended_by": "low_pressure_control" }));
    assert!(holds < 0.2 * before, "{holds} against {before}");
    assert!(stalls > 5.0 * before, "{stalls} against {before}");
    assert!((0.2..1.3).contains(&(stopped / before)), "{stopped} against {before}");
}

#[test]
fn what_two_causes_explain_alike_is_said_so_by_name() {
    // An underfed capillary: a plugged tube and a restriction that does not flash look alike.
    let mut readings = healthy(-20.0, 28.0);
    readings["suction_pressure_kpa"] = json!(readings["suction_pressure_kpa"].as_f64().unwrap() - 55.0);
    readings["evaporator_outlet_c"] = json!(-21.0);
    readings["suction_line_c"] = json!(8.0);
    readings["liquid_line_c"] = json!(readings["liquid_line_c"].as_f64().unwrap() - 4.0);
    readings["drier_outlet_c"] = json!(readings["drier_outlet_c"].as_f64().unwrap() - 4.0);
    let report = answer(&freezer(readings));
    let open = |cause: &str| report["still_open"].as_array().unwrap().iter().any(|o| o["cause"] == cause);
    assert!(open("metering_underfeed"), "{}", report["causes"]);
    // Where the family or the job that mends both is stated, nothing is left to part them by.
    let stated = ["family", "job"].iter().any(|level| report["verdict"]["level"] == *level);
    assert!(fault_decided(&report) || stated || !report["next"].as_array().unwrap().is_empty(), "{report}");
}

#[test]
fn a_record_narrows_what_is_expected() {
    let plain = freezer(healthy(-18.0, 26.0));
    let mut with_record = plain.clone();
    with_record["system"]["record"] = json!([{ "readings": healthy(-20.0, 30.0) }]);
    let u = |report: &Value| report["expected"]["suction_saturation_c"]["u"].as_f64().unwrap();
    let (plain, with_record) = (answer(&plain), answer(&with_record));
    assert!(u(&with_record) < 0.8 * u(&plain), "{} against {}", u(&with_record), u(&plain));
    assert_eq!(with_record["leading"], "none");
}

#[test]
fn pressures_that_read_like_gauge_pressures_are_not_acted_on() {
    for (space_c, ambient_c) in [(-20.0, 32.0), (-18.0, 25.0), (-10.0, 30.0)] {
        let mut readings = healthy(space_c, ambient_c);
        for pressure in ["suction_pressure_kpa", "discharge_pressure_kpa"] {
            readings[pressure] = json!(readings[pressure].as_f64().unwrap() - 101.3);
        }
        let report = answer(&freezer(readings));
        let warned = report["warnings"]
            .as_array()
            .unwrap()
            .iter()
            .any(|w| w["field"] == "readings.suction_pressure_kpa" && w["code"] == "reads_like_gauge");
        assert!(warned, "{}", report["warnings"]);
        assert_eq!(report["decided"], false, "{}", report["causes"]);
    }
}

/// No healthy expectation: the condenser or the evaporator of the usual machine lies outside the fluid's equation.
const OUTSIDE: [&str; 2] = ["R1234ze(Z)", "R601b"];

#[test]
fn every_refrigerant_has_a_healthy_machine_of_every_kind_it_is_used_in() {
    let answer = |question: Value| -> Value {
        serde_json::from_str(&answer_property(&question.to_string())).expect("one JSON object")
    };
    let list = answer(json!({ "list": true }));
    let mut machines = 0;
    for refrigerant in list["refrigerants"].as_array().unwrap() {
        let critical_c = answer(json!({ "refrigerant": refrigerant }))["critical_c"].as_f64().unwrap();
        // Below that the usual condenser stands above the critical point: cascades and carbon dioxide.
        if critical_c < 65.0 || refrigerant == "R718" {
            continue;
        }
        let name = refrigerant.as_str().unwrap();
        for (duty, space_c, ambient_c) in
            [("freezer", -18.0, 30.0), ("cooler", 4.0, 28.0), ("air_conditioning", 26.0, 33.0)]
        {
            for metering in ["capillary", "orifice", "thermostatic_valve", "electronic_valve"] {
                let report = self::answer(&json!({
                    "system": { "refrigerant": name, "duty": duty, "metering": metering },
                    "readings": { "space_c": space_c, "ambient_c": ambient_c }
                }));
                let known = !report["expected"]["suction_saturation_c"].is_null();
                let excepted = OUTSIDE.contains(&name);
                assert!(known || excepted, "{name}, {duty}, {metering}: {}", report["warnings"]);
                machines += u32::from(known);
            }
        }
    }
    assert!(machines > 2_000, "{machines}");
}

// ---- motor, supply and start gear at their own level

/// Alarms of a report by code, in their order.
fn alarms(report: &Value) -> Vec<&str> {
    report["alarms"].as_array().unwrap().iter().map(|a| a["code"].as_str().unwrap()).collect()
}

/// What only a running machine shows, by the names of the contract.
const OF_A_RUNNING_MACHINE: [&str; 17] = [
    "suction_pressure_kpa",
    "evaporator_pressure_kpa",
    "discharge_pressure_kpa",
    "liquid_pressure_kpa",
    "evaporator_outlet_c",
    "suction_line_c",
    "discharge_line_c",
    "liquid_line_c",
    "drier_outlet_c",
    "supply_air_c",
    "condenser_exhaust_c",
    "current_a",
    "voltage_v",
    "power_w",
    "pump_down_kpa",
    "start_current_a",
    "line_currents_a",
];

fn asks_for_a_running_machine(report: &Value) -> bool {
    let named = |name: &Value| OF_A_RUNNING_MACHINE.iter().any(|running| name == running);
    let next = report["next"].as_array().unwrap().iter().any(|n| named(&n["measurement"]));
    let open = report["still_open"].as_array().unwrap();
    next || open.iter().any(|o| o["closed_by"].as_array().unwrap().iter().any(named))
}

/// A freezer whose windings are on its plate: 3.1 and 12.4 ohm at 25 degC.
fn freezer_with_plate(readings: Value) -> Value {
    let mut visit = freezer(readings);
    visit["system"]["compressor"] = json!({
        "rated_load_a": 4.6, "locked_rotor_a": 24.0, "rated_v": 230, "phases": 1, "hz": 50,
        "run_winding_ohm": 3.1, "start_winding_ohm": 12.4, "winding_reference_c": 25.0, "start_capacitor_uf": 88.0
    });
    visit
}

#[test]
fn a_motor_that_must_not_run_leads_the_verdict_and_nothing_is_measured_on_it_running() {
    // Common practice: a grounded, shorted or open winding condemns the compressor, and nobody puts power on it.
    let sound = json!({ "running": false, "winding_run_ohm": 3.1, "winding_start_ohm": 12.4,
        "winding_run_to_start_ohm": 15.5, "winding_c": 25.0 });
    let with = |changes: Value| {
        let mut readings = sound.clone();
        for (name, value) in changes.as_object().unwrap() {
            readings[name] = value.clone();
        }
        answer(&freezer_with_plate(readings))
    };
    for (changes, name) in [
        (json!({ "winding_to_frame_megohm": 0.02 }), "winding_to_frame"),
        (json!({ "winding_run_ohm": 2.2, "winding_run_to_start_ohm": 14.6 }), "shorted_turns"),
        (json!({ "winding_run_ohm": "open", "winding_run_to_start_ohm": "open" }), "open_winding"),
    ] {
        let report = with(changes);
        let verdict = &report["verdict"];
        assert_eq!((&verdict["level"], &verdict["name"]), (&json!("electrical"), &json!(name)), "{verdict}");
        assert!(verdict["probability"].as_f64().unwrap() >= 0.8, "{verdict}");
        assert_eq!(alarms(&report), ["do_not_energise"], "{name}");
        assert_eq!(report["compressor"]["state"], "failed", "{}", report["compressor"]);
        assert_eq!(report["jobs"][0]["name"], "compressor", "{}", report["jobs"]);
        assert_eq!(report["decided"], false);
        assert!(!asks_for_a_running_machine(&report), "{name}: {} {}", report["next"], report["still_open"]);
    }
    let report = with(json!({}));
    assert!(
        alarms(&report).is_empty() && report["verdict"]["level"] != "electrical",
        "{}",
        report["verdict"]
    );
    assert_ne!(report["verdict"]["level"], "healthy", "windings alone clear no machine");
}

#[test]
fn single_phasing_and_a_standing_rotor_are_switched_off_first() {
    let three_phase = json!({
        "system": { "refrigerant": "R448A", "metering": "thermostatic_valve", "duty": "cooler",
            "compressor": { "rated_load_a": 10.2, "locked_rotor_a": 52.0, "rated_v": 400, "phases": 3, "hz": 50 } },
        "readings": { "line_voltages_v": [400, 398, 402], "line_currents_a": [0.0, 17.8, 17.6] }
    });
    let report = answer(&three_phase);
    assert_eq!(report["verdict"]["name"], "single_phasing", "{}", report["verdict"]);
    assert_eq!(alarms(&report)[0], "switch_off");
    assert_eq!(report["electrical"][0]["winding"], "line_1", "{}", report["electrical"]);
    assert_eq!(report["jobs"][0]["name"], "electrical", "{}", report["jobs"]);
    assert_ne!(report["compressor"]["state"], "failed", "the fuse is not the compressor");
    assert!(!asks_for_a_running_machine(&report), "{}", report["next"]);
    // 24 A locked: 20 A of a machine that should run is a rotor that stands.
    let stands = answer(&freezer_with_plate(json!({ "current_a": 20.0 })));
    assert_eq!(stands["verdict"]["name"], "locked_rotor", "{}", stands["verdict"]);
    assert_eq!(alarms(&stands)[0], "switch_off");
    // NEMA MG 1, 14.36: no motor runs above 5 % of voltage unbalance; 380/400/420 V are exactly that, 376 more.
    let mut unbalanced = three_phase.clone();
    unbalanced["readings"] = json!({ "line_voltages_v": [376, 400, 424] });
    assert_eq!(alarms(&answer(&unbalanced)), ["switch_off"]);
}

#[test]
fn what_is_heard_at_the_start_points_to_what_was_not_measured_yet() {
    let heard = |sound: &str, readings: Value| {
        let mut visit = freezer_with_plate(readings);
        visit["observations"] = json!({ "start_sound": sound });
        answer(&visit)
    };
    let probability = |report: &Value, finding: &str| {
        let list = report["electrical"].as_array().unwrap();
        list.iter().find(|f| f["finding"] == finding).map_or(0.0, |f| f["probability"].as_f64().unwrap())
    };
    let stopped = json!({ "running": false });
    let hums = heard("hums_and_trips", stopped.clone());
    assert_eq!(alarms(&hums), ["switch_off"], "windings carry the locked-rotor current as long as it hums");
    assert!(probability(&hums, "start_gear_failed") > 0.2, "{}", hums["electrical"]);
    assert_ne!(hums["verdict"]["level"], "electrical", "nothing was measured: {}", hums["verdict"]);
    // Sound windings, capacitor and voltage leave start gear and a seized rotor.
    let measured = json!({ "running": false, "winding_run_ohm": 3.1, "winding_start_ohm": 12.4,
        "winding_run_to_start_ohm": 15.5, "winding_c": 25.0, "start_capacitor_uf": 92.0, "voltage_v": 229.0 });
    let left = heard("hums_and_trips", measured);
    assert!(probability(&left, "start_gear_failed") > 0.4, "{}", left["electrical"]);
    // A failed capacitor explains it: nothing else is suspected.
    let capacitor = heard("hums_and_trips", json!({ "running": false, "start_capacitor_uf": 31.0 }));
    assert_eq!(capacitor["verdict"]["name"], "start_capacitor_low", "{}", capacitor["verdict"]);
    assert_eq!(probability(&capacitor, "start_gear_failed"), 0.0);
    // Silent with the supply there: the overload before a winding.
    let silent = heard("silent", json!({ "running": false, "voltage_v": 229.0 }));
    assert!(probability(&silent, "overload_open") > 0.5, "{}", silent["electrical"]);
    let dead = heard("silent", json!({ "running": false, "voltage_v": 3.0 }));
    assert_eq!(dead["verdict"]["name"], "no_supply", "{}", dead["verdict"]);
}

#[test]
fn supply_and_parts_lead_where_no_cause_is_decided() {
    let low = answer(&freezer_with_plate(json!({ "voltage_v": 196.0 })));
    assert_eq!(low["verdict"]["name"], "low_voltage", "{}", low["verdict"]);
    let capacitor = answer(&freezer_with_plate(json!({ "running": false, "start_capacitor_uf": "open" })));
    assert_eq!(capacitor["verdict"]["name"], "start_capacitor_open", "{}", capacitor["verdict"]);
    assert_eq!(capacitor["jobs"][0]["name"], "electrical", "{}", capacitor["jobs"]);
}

// ---- alarms

#[test]
fn each_alarm_is_raised_by_its_reading_and_carries_its_limit() {
    let one = |visit: Value, code: &str| {
        let report = answer(&visit);
        let list = report["alarms"].as_array().unwrap().clone();
        list.into_iter().find(|a| a["code"] == code).unwrap_or(Value::Null)
    };
    // 225 degF at the line some 15 cm from the shell (common practice).
    let hot = one(freezer(json!({ "discharge_line_c": 125.0 })), "discharge_too_hot");
    assert_eq!(
        (&hot["field"], hot["limit"].as_f64()),
        (&json!("readings.discharge_line_c"), Some(107.0)),
        "{hot}"
    );
    assert!(!hot["text"].as_str().unwrap().is_empty() && hot["unit"] == "degC");
    assert!(one(freezer(json!({ "discharge_line_c": 106.0 })), "discharge_too_hot").is_null());
    // R-404A at 60 degC: bubble 2886, dew 2877 kPa (CoolProp 8.0, to four digits).
    let head = one(freezer(json!({ "discharge_pressure_kpa": 3000.0 })), "head_pressure_high");
    assert!((head["limit"].as_f64().unwrap() - 2881.0).abs() < 0.01 * 2881.0, "{head}");
    assert!(one(freezer(json!({ "discharge_pressure_kpa": 2700.0 })), "head_pressure_high").is_null());
    // Above the critical pressure of 3729 kPa (ASHRAE Fundamentals 2021, chapter 29, table 5) it is answered all the same.
    let above =
        one(freezer(json!({ "discharge_pressure_kpa": 4200.0, "ambient_c": 40.0 })), "head_pressure_high");
    assert_eq!(above["value"].as_f64(), Some(4200.0), "{above}");
    // A machine without a port shows it in the middle of its condenser.
    let sealed = one(freezer(json!({ "condenser_middle_c": 66.0 })), "head_pressure_high");
    assert_eq!(sealed["field"], "readings.condenser_middle_c");
    // A starved R-134a cooler: 748 over 28 kPa.
    let mut starved = freezer(json!({ "suction_pressure_kpa": 28.0, "discharge_pressure_kpa": 748.0 }));
    starved["system"]["refrigerant"] = json!("R134a");
    let ratio = one(starved, "compression_ratio_high");
    assert_eq!(
        (&ratio["field"], ratio["limit"].as_f64()),
        (&json!("cycle.pressure_ratio"), Some(15.0)),
        "{ratio}"
    );
    assert!((ratio["value"].as_f64().unwrap() - 26.71).abs() < 0.01);
    // Suction gas at its dew temperature: R-404A at 220 kPa is at -28 degC.
    let wet = json!({ "suction_pressure_kpa": 220.0, "suction_line_c": -28.0 });
    assert!(!one(freezer(wet.clone()), "liquid_returning").is_null());
    let dry = json!({ "suction_pressure_kpa": 220.0, "suction_line_c": -28.0, "discharge_pressure_kpa": 1500.0,
        "discharge_line_c": 75.0 });
    assert!(one(freezer(dry), "liquid_returning").is_null(), "a discharge 43 K above dew comes from dry gas");
}

#[test]
fn vacuum_is_an_alarm_where_the_refrigerant_burns_and_runs_above_the_atmosphere() {
    let visit = |refrigerant: &str, readings: Value| {
        let mut visit = freezer(readings);
        visit["system"]["refrigerant"] = json!(refrigerant);
        visit["system"]["design"] = json!({});
        alarms(&answer(&visit)).contains(&"vacuum_with_flammable")
    };
    let vacuum = json!({ "suction_pressure_kpa": 70.0, "space_c": -5.0, "ambient_c": 25.0 });
    assert!(visit("R290", vacuum.clone()));
    assert!(!visit("R404A", vacuum), "it does not burn");
    // Isobutane boils at -11.7 degC: a freezer with it runs in vacuum when it is well.
    assert!(!visit("R600a", json!({ "suction_pressure_kpa": 54.0, "space_c": -19.0, "ambient_c": 25.0 })));
    // A pump-down into vacuum is one all the same.
    assert!(visit("R600a", json!({ "pump_down_kpa": 20.0, "space_c": -19.0, "ambient_c": 25.0 })));
    assert!(!visit("R290", json!({ "pump_down_kpa": 130.0, "space_c": -5.0, "ambient_c": 25.0 })));
}

// ---- verdict, jobs and the compressor question

#[test]
fn a_verdict_says_no_more_than_the_causes_allow() {
    let healthy_visit = answer(&freezer(healthy(-20.0, 28.0)));
    assert_eq!(healthy_visit["verdict"]["level"], "healthy");
    assert!(healthy_visit["verdict"]["name"].is_null());
    let empty = answer(&json!({}));
    assert_eq!(empty["verdict"]["level"], "undecided");
    assert_eq!(empty["compressor"]["state"], "open");
    // Nothing is decided beside a doubt of the whole visit.
    let mut readings = healthy(-20.0, 28.0);
    readings["minutes_running"] = json!(3.0);
    let early = answer(&freezer(readings));
    assert_eq!((&early["decided"], &early["verdict"]["level"]), (&json!(false), &json!("undecided")));
    assert_eq!(early["compressor"]["state"], "open", "{}", early["compressor"]);
    // An alarm stands beside no clearance unless the machine is built to run there.
    let mut readings = healthy(-20.0, 28.0);
    readings["frost_on_compressor"] = Value::Null;
    readings.as_object_mut().unwrap().remove("frost_on_compressor");
    readings["discharge_line_c"] = json!(125.0);
    let hot = answer(&freezer(readings));
    assert_ne!(hot["verdict"]["level"], "healthy", "{}", hot["verdict"]);
    assert!(alarms(&hot).contains(&"discharge_too_hot"));
}

#[test]
fn a_union_is_at_least_its_likeliest_cause_and_at_most_their_sum() {
    let mut readings = healthy(-20.0, 28.0);
    readings["suction_pressure_kpa"] = json!(readings["suction_pressure_kpa"].as_f64().unwrap() - 55.0);
    readings["suction_line_c"] = json!(8.0);
    let report = answer(&freezer(readings));
    let lists = [report["families"].as_array().unwrap(), report["jobs"].as_array().unwrap()];
    for entry in lists.into_iter().flatten().filter(|e| e["name"] != "electrical") {
        let p = entry["probability"].as_f64().unwrap();
        let causes = entry["causes"].as_array().unwrap();
        let of: Vec<f64> = causes.iter().map(|c| probability(&report, c.as_str().unwrap())).collect();
        let (sum, most) = (of.iter().sum::<f64>(), of.iter().copied().fold(0.0, f64::max));
        // The compressor's own question may lower its cause: it was seen to pump.
        let least = if entry["name"] == "compressor" { 0.0 } else { most };
        assert!(p >= least - 1e-3 && p <= sum + 1e-3, "{entry} of {of:?}");
    }
    let jobs = report["jobs"].as_array().unwrap();
    assert!(
        jobs.windows(2).all(|j| j[0]["probability"].as_f64() >= j[1]["probability"].as_f64()),
        "{jobs:?}"
    );
    assert_eq!(jobs.len(), 7);
}

#[test]
fn a_valve_is_mended_by_itself_and_a_capillary_in_the_open_circuit() {
    let job = |metering: &str, name: &str| -> Vec<String> {
        let mut visit = freezer(json!({ "space_c": -20.0, "ambient_c": 28.0 }));
        visit["system"]["metering"] = json!(metering);
        let report = answer(&visit);
        let jobs = report["jobs"].as_array().unwrap();
        let job = jobs.iter().find(|j| j["name"] == name).unwrap();
        job["causes"].as_array().unwrap().iter().map(|c| c.as_str().unwrap().to_owned()).collect()
    };
    assert!(job("capillary", "metering_valve").is_empty());
    assert!(job("capillary", "open_circuit").contains(&"metering_underfeed".to_owned()));
    assert_eq!(job("thermostatic_valve", "metering_valve"), ["metering_underfeed", "flood_back"]);
    assert!(!job("thermostatic_valve", "open_circuit").contains(&"metering_underfeed".to_owned()));
}

#[test]
fn pressures_nearly_equal_with_little_current_are_broken_valves_and_a_vacuum_is_not() {
    // Common practice: no compression and few amperes are a compressor that is done.
    let broken =
        answer(&freezer_with_plate(json!({ "suction_pressure_kpa": 820.0, "discharge_pressure_kpa": 950.0,
        "space_c": 14.0, "ambient_c": 27.0, "current_a": 1.9 })));
    assert_eq!(broken["compressor"]["state"], "failed", "{}", broken["compressor"]);
    assert_eq!(broken["jobs"][0]["name"], "compressor");
    // Without current the motor does not run, and nothing is said of its valves.
    let off =
        answer(&freezer_with_plate(json!({ "suction_pressure_kpa": 820.0, "discharge_pressure_kpa": 850.0,
        "space_c": 14.0, "ambient_c": 27.0, "current_a": 0.0 })));
    assert_ne!(off["compressor"]["state"], "failed", "{}", off["compressor"]);
    // A suction in vacuum against a blocked tube proves that the compressor pumps.
    let mut blocked = freezer_with_plate(
        json!({ "suction_pressure_kpa": 28.0, "discharge_pressure_kpa": 748.0,
        "space_c": 17.0, "ambient_c": 25.0, "current_a": 1.1, "suction_line_c": 23.0, "liquid_line_c": 25.0 }),
    );
    blocked["system"]["refrigerant"] = json!("R134a");
    blocked["system"]["duty"] = json!("cooler");
    blocked["system"]["design"] = json!({});
    let blocked = answer(&blocked);
    assert!(blocked["compressor"]["probability"].as_f64().unwrap() < 0.02, "{}", blocked["compressor"]);
    assert!(!["failing", "failed"].contains(&blocked["compressor"]["state"].as_str().unwrap()));
}

#[test]
fn the_cautions_of_the_next_step_come_first() {
    let grounded = answer(&freezer_with_plate(json!({ "running": false, "winding_to_frame_megohm": 0.02 })));
    assert_eq!(grounded["cautions"][0]["step"], "electrical", "{}", grounded["cautions"]);
    let steps = |report: &Value| {
        let list = report["cautions"].as_array().unwrap();
        let steps: Vec<String> = list.iter().map(|c| c["step"].as_str().unwrap().to_owned()).collect();
        steps
    };
    // Each step's cautions stay together, and none is lost by the order.
    let pressures =
        answer(&freezer(json!({ "suction_pressure_kpa": 220.0, "space_c": -18.0, "ambient_c": 28.0 })));
    let mut seen = steps(&pressures);
    assert!(seen.iter().any(|s| s == "gauges") && seen.iter().any(|s| s == "opens_system"), "{seen:?}");
    seen.dedup();
    let count = seen.len();
    seen.sort();
    seen.dedup();
    assert_eq!(count, seen.len(), "a step stands in two places");
}

#[test]
fn what_is_weighed_of_a_finding_does_not_jump_at_its_limit() {
    // Sweeps across the limits of insulation, shorted turns, locked rotor, supply, overload temperature, vacuum and ratio.
    let sweep = |from: f64, to: f64, visit: &dyn Fn(f64) -> Value| {
        let said = |x: f64| {
            let report = answer(&visit(x));
            let jobs = report["jobs"].as_array().unwrap();
            let electrical = jobs.iter().find(|j| j["name"] == "electrical").unwrap();
            [
                report["compressor"]["probability"].as_f64().unwrap(),
                electrical["probability"].as_f64().unwrap(),
            ]
        };
        // Halved until the two ends agree, or lie so close that what is left between them is a jump.
        let mut open = vec![(from, said(from), to, said(to))];
        while let Some((a, at_a, b, at_b)) = open.pop() {
            if (at_a[0] - at_b[0]).abs().max((at_a[1] - at_b[1]).abs()) <= 0.02 {
                continue;
            }
            assert!(b - a > 1e-6 * (to - from), "{at_a:?} to {at_b:?} between {a} and {b}");
            let middle = 0.5 * (a + b);
            let at = said(middle);
            open.extend([(a, at_a, middle, at), (middle, at, b, at_b)]);
        }
    };
    let stopped = |changes: Value| {
        let mut readings = json!({ "running": false });
        for (name, value) in changes.as_object().unwrap() {
            readings[name] = value.clone();
        }
        freezer_with_plate(readings)
    };
    sweep(0.05, 50.0, &|megohm| stopped(json!({ "winding_to_frame_megohm": megohm })));
    sweep(2.2, 3.2, &|ohm| stopped(json!({ "winding_run_ohm": ohm, "winding_c": 25.0 })));
    sweep(20.0, 80.0, &|c| {
        stopped(
            json!({ "winding_run_ohm": "open", "winding_start_ohm": "open", "winding_run_to_start_ohm": 15.5,
            "winding_c": c }),
        )
    });
    sweep(60.0, 95.0, &|uf| stopped(json!({ "start_capacitor_uf": uf })));
    sweep(100.0, 260.0, &|volts| stopped(json!({ "voltage_v": volts })));
    sweep(10.0, 24.0, &|amps| freezer_with_plate(json!({ "current_a": amps })));
}
