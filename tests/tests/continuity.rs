//! No probability may jump when a reading moves.
//!
//! `grade -- continuity` sweeps every reading of every visit; here every visit has two of its readings swept, coarsely,
//! so that the test stays short.

use rimewise_tests::rig::grader::continuity::{self, LIMIT};

/// Jumps above [`LIMIT`] that are known, and the largest of them. Wanted: none; these two may only fall.
const KNOWN_JUMPS: usize = 230;
const KNOWN_WORST: f64 = 0.897;

#[test]
fn no_probability_jumps_when_one_reading_moves() {
    let visits = continuity::visits();
    assert_eq!(visits.len(), 100);
    let two = |visit: usize, reading: usize| (reading + visit).is_multiple_of(6);
    let found = continuity::sweeps(&visits, 8, &two, &rimewise::json::answer_visit);
    println!("{}", found.markdown(visits.len(), 20));
    assert!(found.sweeps > 150 && found.answers > 1500, "too little was swept: {found:?}");
    assert!(
        found.jumps.len() <= KNOWN_JUMPS && found.worst() <= KNOWN_WORST + 1e-3,
        "{} jumps above {LIMIT}, the largest {:.3}: more than the {KNOWN_JUMPS} and {KNOWN_WORST} known",
        found.jumps.len(),
        found.worst()
    );
}

#[test]
fn a_step_is_found_where_it_is_and_a_steep_slope_is_no_step() {
    let visit = serde_json::json!({ "readings": { "space_c": 3.0 } });
    let report = |p: f64| {
        serde_json::json!({
            "status": "ok", "causes": [{ "cause": "none", "probability": p }, { "cause": "undercharge", "probability": 1.0 - p }]
        })
        .to_string()
    };
    let space = |line: &str| {
        let visit: serde_json::Value = serde_json::from_str(line).expect("a visit");
        visit["readings"]["space_c"].as_f64().expect("a temperature")
    };
    let step =
        continuity::sweep(&visit, "space_c", 8, &|line| report(if space(line) < 7.25 { 0.2 } else { 0.5 }));
    assert_eq!(step.jumps.len(), 1);
    assert!((step.jumps[0].at - 7.25).abs() < 1e-4 && (step.worst() - 0.3).abs() < 1e-9, "{step:?}");
    // From 0 to 1 within 4 mK.
    let slope = continuity::sweep(&visit, "space_c", 8, &|line| {
        report(((space(line) - 7.0) / 0.004).clamp(0.0, 1.0))
    });
    assert!(slope.jumps.is_empty() && slope.cut_short == 0, "{slope:?}");
}
