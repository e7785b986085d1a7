//! Makes cases with the rig and grades what the library says about them.
//!
//! * `grade` writes `tests/GRADES.md` and `tests/grades.json`. `--half setting|grading|all` prints one half only,
//!   `--check` compares with what is committed instead of writing.
//! * `grade -- generate --seed 1 --visits 2000 --out FILE.jsonl` writes cases, one JSON object a line.
//! * `grade -- ladder` works the severities of every cause on every type out anew.
//! * `grade -- continuity` moves every reading of the committed visits and writes `tests/CONTINUITY.md`; `--print`
//!   prints it instead, `--points 40` sweeps finer.
//! * `grade -- worse` follows every cause from mild to total on every machine and writes `tests/SWEEPS.md`; `--print`
//!   prints it instead, `--machine NAME` takes the machines whose name holds NAME, `--out FILE` keeps the visits.
//! * `grade -- guided` plays visits step by step as the report asks; `--trace 20` shows the steps of the first twenty.
//! * `grade -- hard` prints what is missed of the visits written by hand.
//! * `grade -- sweep TYPE` prints every cause's sweep on one type, a CSV.

use rimewise_tests::rig::extreme;
use rimewise_tests::rig::grader::{continuity, extremes, guided, hard, report, value, worse};
use rimewise_tests::rig::set::{self, Run};
use serde_json::{Value, json};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// Seed and number of visits of the committed grades.
const SEED: u64 = 1;
const VISITS: u64 = 2000;
/// Visits of each half that are played step by step.
const GUIDED: usize = 300;
/// How far a committed figure may move before the check fails: shares and nats.
const TOLERANCE: f64 = 0.01;

fn option(args: &[String], name: &str) -> Option<String> {
    args.iter().position(|a| a == name).and_then(|i| args.get(i + 1)).cloned()
}

fn main() -> ExitCode {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let half = option(&args, "--half").unwrap_or_else(|| "all".into());
    let seed: u64 = option(&args, "--seed").and_then(|s| s.parse().ok()).unwrap_or(SEED);
    let visits: u64 = option(&args, "--visits").and_then(|s| s.parse().ok()).unwrap_or(VISITS);
    let result = match args.first().map(String::as_str) {
        Some("generate") => generate(&half, seed, visits, option(&args, "--out")),
        Some("ladder") => {
            println!("{:#}", set::ladder());
            Ok(())
        }
        Some("sweep") => {
            print!("{}", set::sweeps(args.get(1).map_or("", String::as_str)));
            Ok(())
        }
        Some("continuity") => judge_continuity(&args),
        Some("worse") => judge_worse(&args),
        Some("guided") => {
            play_guided(
                &half,
                seed,
                visits,
                option(&args, "--trace").and_then(|s| s.parse().ok()).unwrap_or(0),
            );
            Ok(())
        }
        Some("hard") => {
            let misses = hard::judge_all(&rimewise::json::answer_visit);
            print!("{}", hard::summary(hard::visits().len(), &misses));
            Ok(())
        }
        _ => grade(&half, seed, visits, &args),
    };
    match result {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            eprintln!("grade: {why}");
            ExitCode::FAILURE
        }
    }
}

/// Prints a page or writes it beside `GRADES.md`.
fn publish(args: &[String], name: &str, text: &str) -> Result<(), String> {
    if args.iter().any(|a| a == "--print") {
        print!("{text}");
        return Ok(());
    }
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join(name);
    std::fs::write(&file, text).map_err(|e| format!("{}: {e}", file.display()))
}

fn judge_continuity(args: &[String]) -> Result<(), String> {
    let points = option(args, "--points").and_then(|s| s.parse().ok()).unwrap_or(16);
    let visits = continuity::visits();
    let found = continuity::sweeps(&visits, points, &|_, _| true, &rimewise::json::answer_visit);
    publish(args, "CONTINUITY.md", &found.markdown(visits.len(), 40))
}

fn judge_worse(args: &[String]) -> Result<(), String> {
    let wanted = option(args, "--machine").unwrap_or_default();
    let machines: Vec<_> =
        set::machines_for_sweeps().into_iter().filter(|m| m.spec.name.contains(&wanted)).collect();
    let (ways, falls) = worse::falls(&machines, &rimewise::json::answer_visit);
    if let Some(out) = option(args, "--out") {
        let mut text = String::new();
        for w in &ways {
            for (place, capacity, visit, _) in &w.steps {
                let step = json!({ "machine": w.machine, "cause": w.cause.word(), "way": place, "capacity": capacity, "visit": visit });
                text.push_str(&format!("{step}\n"));
            }
        }
        std::fs::write(&out, text).map_err(|e| format!("{out}: {e}"))?;
    }
    publish(args, "SWEEPS.md", &worse::markdown(&ways, &falls, 60))
}

/// Plays the guided visits alone; traces the first few.
fn play_guided(half: &str, seed: u64, visits: u64, trace: usize) {
    let answer = &rimewise::json::answer_visit;
    let run = set::run_cached("all", seed, visits);
    let types = set::types("all");
    println!("{}", guided::flagship_markdown(&guided::flagship(&types, answer)));
    for name in ["grading", "setting"].iter().filter(|n| half == "all" || half == **n) {
        let of_half = run.cases.iter().filter(|c| c.truth["half"] == *name);
        let cases: Vec<_> = of_half.take(GUIDED).collect();
        let all: Vec<_> = run.cases.iter().filter(|c| c.truth["half"] == *name).collect();
        println!("{name}{}", value::markdown(&value::grade(&types, &all, answer)));
        println!("{name}{}", guided::markdown(&guided::grade(&types, &cases, answer)));
        for case in cases.iter().take(trace) {
            let Some(kind) = types.iter().find(|k| case.truth["type"] == k.machine.spec.name) else {
                continue;
            };
            let play = guided::Play::new(kind, case);
            let p = play.guided(answer);
            println!(
                "{} {}: {:?} {} in {:.0} minutes, {}",
                kind.machine.spec.name,
                play.truth(),
                p.end,
                p.verdict,
                p.minutes,
                p.taken.join(", ")
            );
        }
    }
}

fn lines(run: &Run) -> String {
    run.cases.iter().map(|c| json!({"visit": c.visit, "truth": c.truth}).to_string() + "\n").collect()
}

fn generate(half: &str, seed: u64, visits: u64, out: Option<String>) -> Result<(), String> {
    let run = set::run(&set::types(half), seed, visits);
    let out = out.unwrap_or_else(|| "visits.jsonl".into());
    std::fs::write(&out, lines(&run)).map_err(|e| format!("{out}: {e}"))?;
    println!("{} visits to {out}", run.cases.len());
    for (reason, n) in &run.rejected {
        println!("rejected, {}: {n}", reason.word());
    }
    println!("worst imbalance: energy {:.1e}, mass {:.1e}", run.imbalance.0, run.imbalance.1);
    Ok(())
}

fn grade(half: &str, seed: u64, visits: u64, args: &[String]) -> Result<(), String> {
    let run = set::run_cached(half, seed, visits);
    let mut halves = report::grade(&run, &|line| rimewise::json::answer_visit(line));
    let ends = extreme::run(&set::types(half), seed, visits / 4);
    for (name, rows) in extremes::grade(&ends, &rimewise::json::answer_visit) {
        if let Some(h) = halves.get_mut(&name) {
            h.extremes = rows;
        }
    }
    let types = set::types(half);
    for (name, h) in &mut halves {
        let of_half = run.cases.iter().filter(|c| c.truth["half"] == name.as_str());
        let cases: Vec<_> = of_half.collect();
        let played = &cases[..cases.len().min(GUIDED)];
        h.guided = guided::grade(&types, played, &rimewise::json::answer_visit);
        h.value = value::grade(&types, &cases, &rimewise::json::answer_visit);
    }
    let flagship = guided::flagship(&types, &rimewise::json::answer_visit);
    let mut json = report::to_json(&run, seed, &halves);
    json["flagship_plays_that_will_do"] = json!(flagship.iter().filter(|p| p.3).count());
    let folder = Path::new(env!("CARGO_MANIFEST_DIR"));
    let notes = std::fs::read_to_string(folder.join("src/rig/reading_the_grades.md")).unwrap_or_default();
    if half != "all" || seed != SEED || visits != VISITS {
        if half != "all" {
            halves.retain(|k, _| k == half);
        }
        println!("{}", report::to_markdown(&run, seed, &halves, &notes));
        return Ok(());
    }
    let (text, data): (PathBuf, PathBuf) = (folder.join("GRADES.md"), folder.join("grades.json"));
    if args.iter().any(|a| a == "--check") {
        let old = std::fs::read_to_string(&data).map_err(|e| format!("{}: {e}", data.display()))?;
        let old: Value = serde_json::from_str(&old).map_err(|e| e.to_string())?;
        let mut found = Vec::new();
        report::differences(&old, &json, TOLERANCE, "", &mut found);
        if found.is_empty() {
            println!("the committed grades hold within {TOLERANCE}");
            return Ok(());
        }
        return Err(format!("{} figures moved by more than {TOLERANCE}:\n{}", found.len(), found.join("\n")));
    }
    let page = report::to_markdown(&run, seed, &halves, &notes) + &guided::flagship_markdown(&flagship);
    std::fs::write(&text, page).map_err(|e| e.to_string())?;
    std::fs::write(&data, format!("{json:#}\n")).map_err(|e| e.to_string())?;
    for (name, h) in &halves {
        for (set, t) in &h.sets {
            let (f, a) = (t.faulty_shares(), t.healthy_shares());
            println!(
                "{name:8} {set:45} correct {:.3} misdiagnosed {:.3} missed {:.3}, false alarms {:.3}, first two {:.3}",
                f[0],
                f[1],
                f[2],
                a[1],
                t.first_two_share()
            );
        }
    }
    Ok(())
}
