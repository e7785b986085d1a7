//! Measured machines, as published, go through the public interface as visits.

use rimewise::estimate::Estimate;
use rimewise::json::{answer_visit, read_visit};
use rimewise::quantity::{Enthalpy, Pressure, Temperature};
use rimewise::refrigerant::data::R22;
use rimewise::refrigerant::find;
use serde_json::{Value, json};

/// NISTIR 7350 (NIST, public domain), appendix D: measured no-fault cooling tests of an R-410A split heat pump with
/// a thermostatic valve, in the units as printed.
const NIST: &str = include_str!("../data/nistir7350_no_fault.csv");

/// The eight tests, each as a look-up by the printed row's name.
fn nist() -> Vec<impl Fn(&str) -> f32> {
    let rows: Vec<(&str, Vec<f32>)> = NIST
        .lines()
        .filter(|line| !line.starts_with('#') && !line.starts_with("test"))
        .map(|line| {
            let mut cells = line.split(',');
            let name = cells.next().expect("a row has a name");
            (name, cells.map(|c| c.trim().parse().expect("a number")).collect())
        })
        .collect();
    (0..8)
        .map(|test| {
            let rows = rows.clone();
            move |name: &str| rows.iter().find(|(n, _)| *n == name).expect("a known row").1[test]
        })
        .collect()
}

fn kpa(psia: f32) -> f32 {
    Pressure::from_psi(psia).kilopascals()
}
fn celsius(fahrenheit: f32) -> f32 {
    Temperature::from_fahrenheit(fahrenheit).celsius()
}

fn nist_readings(row: &impl Fn(&str) -> f32) -> Value {
    json!({
        "suction_pressure_kpa": kpa(row("comp_suct_P_psia")),
        "evaporator_pressure_kpa": kpa(row("evap_exit_P_psia")),
        "discharge_pressure_kpa": kpa(row("comp_disch_P_psia")),
        "liquid_pressure_kpa": kpa(row("cond_unit_exit_P_psia")),
        "evaporator_outlet_c": celsius(row("evap_exit_T_F")),
        "suction_line_c": celsius(row("comp_suct_T_F")),
        "discharge_line_c": celsius(row("comp_disch_T_F")),
        "liquid_line_c": celsius(row("cond_unit_exit_T_F")),
        "space_c": celsius(row("indoor_db_F")),
        "ambient_c": celsius(row("outdoor_db_F")),
    })
}

fn visit(readings: Value, record: Value) -> String {
    json!({
        "system": {
            "refrigerant": "R410A", "metering": "thermostatic_valve", "receiver": false,
            "duty": "air_conditioning", "record": record
        },
        "readings": readings,
    })
    .to_string()
}

#[test]
fn the_measured_heat_pump_reproduces_its_printed_superheat_and_subcooling() {
    for (n, row) in nist().iter().enumerate() {
        let report: Value =
            serde_json::from_str(&answer_visit(&visit(nist_readings(row), json!([])))).unwrap();
        assert_eq!(report["status"], "ok", "{report}");
        let fahrenheit = |key: &str| 1.8 * report["cycle"][key]["value"].as_f64().unwrap() as f32;
        let superheat = fahrenheit("superheat_k");
        assert!((superheat - row("evap_exit_SH_F")).abs() <= 0.2, "test {n}: superheat {superheat}");
        let subcooling = fahrenheit("subcooling_k");
        assert!((subcooling - row("cond_exit_SC_F")).abs() <= 0.3, "test {n}: subcooling {subcooling}");
    }
}

#[test]
fn with_one_test_as_its_record_the_healthy_heat_pump_has_no_decided_fault() {
    let tests = nist();
    for (a, then) in tests.iter().enumerate() {
        for (b, now) in tests.iter().enumerate() {
            if a == b {
                continue;
            }
            let record = json!([{ "readings": nist_readings(then) }]);
            let report: Value =
                serde_json::from_str(&answer_visit(&visit(nist_readings(now), record))).unwrap();
            let fault = report["decided"] == true && report["leading"] != "none";
            assert!(!fault, "record {a}, test {b}: {} {}", report["leading"], report["causes"]);
        }
    }
}

/// ASHRAE Handbook - Fundamentals 2021, chapter 2, example 5: a measured R-22 machine, kPa and degC.
#[test]
fn the_handbooks_measured_machine_gives_its_superheats_subcoolings_and_flow() {
    let line = json!({
        "system": { "refrigerant": "R22" },
        "readings": {
            "suction_pressure_kpa": 304.0, "evaporator_pressure_kpa": 310.0,
            "discharge_pressure_kpa": 1450.0, "liquid_pressure_kpa": 1410.0,
            "evaporator_outlet_c": -10.0, "suction_line_c": -4.0, "discharge_line_c": 82.0, "liquid_line_c": 34.0
        }
    })
    .to_string();
    let owned = read_visit(&line).unwrap();
    let report = rimewise::diagnose(owned.refrigerant, &owned.visit()).unwrap();
    let value = |e: Option<Estimate>| e.unwrap().value;
    // Printed enthalpies give 3.8 K and 10.3 K of superheat, 2.6 K of subcooling at the condenser outlet.
    assert!((value(report.cycle.superheat_k) - 3.8).abs() <= 0.15, "{:?}", report.cycle.superheat_k);
    assert!((value(report.cycle.compressor_superheat_k) - 10.3).abs() <= 0.15);
    assert!((value(report.cycle.subcooling_k) - 2.6).abs() <= 0.15);
    // At the expansion valve's inlet, 1405 kPa and 33 degC: 3.5 K.
    let inlet = R22.bubble_temperature(Pressure::from_kilopascals(1405.0)).unwrap();
    assert!((inlet.celsius() - 33.0 - 3.5).abs() <= 0.15);

    // 7.0 kW of cooling at 0.04322 kg/s between the evaporator's inlet and outlet states.
    let at = |kpa, c| (Pressure::from_kilopascals(kpa), Temperature::from_celsius(c));
    let (p, t) = at(310.0, -10.0);
    let outlet = R22.vapor(p, t).unwrap().enthalpy;
    let (p, t) = at(1405.0, 33.0);
    let inlet = R22.liquid(p, t).unwrap().enthalpy;
    let effect = Enthalpy::kilojoules_per_kg(outlet) - inlet.kilojoules_per_kg();
    let flow = 7.0 / effect;
    assert!((flow / 0.04322 - 1.0).abs() <= 0.02, "{flow} kg/s");
    assert!((0.04322 * effect / 7.0 - 1.0).abs() <= 0.02);
}

#[test]
fn at_altitude_a_gauge_means_another_saturation_temperature() {
    use rimewise::quantity::Atmosphere;
    let r = find("R404A").unwrap();
    let dew = |atmosphere| r.dew_temperature(Pressure::from_psi_gauge(10.0, atmosphere)).unwrap().celsius();
    let off = dew(Atmosphere::SEA_LEVEL) - dew(Atmosphere::at_altitude_m(1600.0));
    // 17.8 kPa less air at 1,600 m (ICAO Doc 7488): at some 160 kPa and 5.5 kPa/K that is about 3 K.
    assert!((2.0..4.5).contains(&off), "{off} K");
}
