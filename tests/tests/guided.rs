//! The guided visits: the judge is fair, and the flagship's plays do not get worse.

use rimewise_tests::rig::grader::answer::WORDS;
use rimewise_tests::rig::grader::guided::{self, End, Play};
use rimewise_tests::rig::grader::known_fields;
use rimewise_tests::rig::set;
use rimewise_tests::rig::visit::make;
use serde_json::{Value, json};

/// Of the flagship's 28 plays, those that will do. Wanted: all; this may only rise.
const WILL_DO: usize = 9;

#[test]
fn the_flagships_plays_do_not_get_worse() {
    let types = set::types("setting");
    let plays = guided::flagship(&types, &rimewise::json::answer_visit);
    println!("{}", guided::flagship_markdown(&plays));
    assert_eq!(plays.len(), 28);
    let good = plays.iter().filter(|p| p.3).count();
    assert!(good >= WILL_DO, "{good} of 28 will do");
}

/// A report that decides on a cause, or asks for one thing after another.
fn report(leading: &str, decided: bool, asks: &[&str]) -> String {
    let causes: Vec<Value> = WORDS
        .iter()
        .map(|w| json!({ "cause": w, "probability": if *w == leading { 0.91 } else { 0.01 } }))
        .collect();
    let next: Vec<Value> = asks.iter().map(|a| json!({ "measurement": a })).collect();
    json!({ "status": "ok", "causes": causes, "leading": leading, "decided": decided, "fits": 0.5, "next": next })
        .to_string()
}

#[test]
fn the_judge_of_guided_visits_is_fair() {
    // Which of the newer inputs are taken is asked once; let it be the library that answers.
    let library_takes = known_fields::takes("complaint", &rimewise::json::answer_visit);
    println!("complaints are taken: {library_takes}");
    let types = set::types("grading");
    let faulty = (0..200)
        .map(|i| make(&types, 1, i))
        .find(|c| c.truth["causes"].as_array().is_some_and(|l| l.len() == 1 && l[0]["present"] == true))
        .expect("a machine with one fault");
    let kind = types.iter().find(|k| faulty.truth["type"] == k.machine.spec.name).expect("its type");
    let cause = faulty.truth["causes"][0]["cause"].as_str().expect("its word").to_string();
    let play = Play::new(kind, &faulty);
    assert_eq!(play.truth(), cause);
    // Whoever knows it at the door needs no minute; whoever knows it wrong is wrong.
    let knows = play.guided(&|_| report(&cause, true, &[]));
    assert_eq!((knows.end, knows.minutes, knows.steps), (End::Right, 0.0, 0));
    let other = if cause == "overcharge" { "undercharge" } else { "overcharge" };
    assert_eq!(play.guided(&|_| report(other, true, &[])).end, End::Wrong);
    assert_eq!(play.guided(&|_| report("none", true, &[])).end, End::Wrong);
    assert_eq!(play.guided(&|_| report(&cause, false, &[])).end, End::Open);
    // What is asked for is given once and then stands in the visit; what nobody has is counted and not asked again.
    let asks = ["suction_line_c", "no_such_reading", "liquid_line_c"];
    let lines = std::sync::Mutex::new(Vec::new());
    let asked = play.guided(&|line| {
        lines.lock().expect("no other thread").push(line.to_string());
        report(&cause, false, &asks)
    });
    assert_eq!((asked.end, asked.steps, asked.impossible), (End::Open, 2, 1));
    assert_eq!(asked.taken, ["suction_line_c", "liquid_line_c"]);
    assert_eq!(asked.minutes, 5.0);
    let lines = lines.into_inner().expect("no other thread");
    let last: Value = serde_json::from_str(lines.last().expect("asked at least once")).expect("JSON");
    assert!(
        last["readings"]["suction_line_c"].is_number() && last["readings"]["liquid_line_c"].is_number(),
        "{last}"
    );
    assert!(last["readings"]["suction_pressure_kpa"].is_null(), "{last}");
    // The fixed order asks after each step, or once.
    let once = std::sync::atomic::AtomicUsize::new(0);
    let count = |_: &str| {
        once.fetch_add(1, std::sync::atomic::Ordering::Relaxed);
        report(&cause, false, &[])
    };
    let all = play.fixed(false, &count);
    let asked_once = once.swap(0, std::sync::atomic::Ordering::Relaxed);
    let each = play.fixed(true, &count);
    let asked_each = once.load(std::sync::atomic::Ordering::Relaxed);
    assert_eq!(asked_once, 1);
    assert!(asked_each >= 15, "{asked_each}");
    assert_eq!((all.minutes, all.steps), (each.minutes, each.steps));
}
