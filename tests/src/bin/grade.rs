//! Makes cases with the rig and grades what the library says about them.
//!
//! * `grade` writes `tests/GRADES.md` and `tests/grades.json`; `--half setting|grading|all`, `--check` compares only.
//! * `grade -- generate --seed 1 --visits 2000 --out FILE.jsonl` writes cases, one JSON object a line.
//! * `grade -- ladder` works the severities of every cause on every type out anew.

use rimewise_tests::rig::set;
use serde_json::json;
use std::io::Write;

fn option(args: &[String], name: &str) -> Option<String> {
    args.iter().position(|a| a == name).and_then(|i| args.get(i + 1)).cloned()
}

fn main() {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let half = option(&args, "--half").unwrap_or_else(|| "all".into());
    let seed: u64 = option(&args, "--seed").and_then(|s| s.parse().ok()).unwrap_or(1);
    let visits: u64 = option(&args, "--visits").and_then(|s| s.parse().ok()).unwrap_or(2000);
    match args.first().map(String::as_str) {
        Some("generate") => {
            let run = set::run(&set::types(&half), seed, visits);
            let out = option(&args, "--out").unwrap_or_else(|| "visits.jsonl".into());
            let mut text = String::new();
            for c in &run.cases {
                text.push_str(&json!({"visit": c.visit, "truth": c.truth}).to_string());
                text.push('\n');
            }
            let mut file = std::fs::File::create(&out).expect("the file can be created");
            file.write_all(text.as_bytes()).expect("the file can be written");
            println!("{} visits to {out}", run.cases.len());
            for (reason, n) in &run.rejected {
                println!("rejected, {}: {n}", reason.word());
            }
            println!("worst imbalance: energy {:.1e}, mass {:.1e}", run.imbalance.0, run.imbalance.1);
        }
        Some("ladder") => {
            println!("{}", serde_json::to_string_pretty(&set::ladder()).expect("numbers and names only"));
        }
        _ => {}
    }
}
