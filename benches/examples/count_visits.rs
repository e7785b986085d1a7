//! Diagnoses visits one after the other, for an instruction counter: `count_visits FILE.jsonl`.
//!
//! `one_visit` is a function of its own, so that a counter can collect in it alone; reading and writing stay outside. With
//! `sizes` instead of a file it prints the bytes of workspace and report.

use rimewise::report::Report;
use rimewise::{Refrigerant, Visit, Workspace, diagnose_in};
use std::hint::black_box;

#[inline(never)]
fn one_visit(
    workspace: &mut Workspace,
    refrigerant: Option<&Refrigerant<'_>>,
    visit: &Visit<'_>,
    report: &mut Report,
) -> bool {
    black_box(diagnose_in(workspace, refrigerant, visit, report)).is_ok()
}

fn main() {
    let Some(name) = std::env::args().nth(1) else {
        eprintln!("usage: count_visits FILE.jsonl | sizes");
        std::process::exit(2);
    };
    if name == "sizes" {
        println!("workspace {} bytes, report {} bytes", size_of::<Workspace>(), size_of::<Report>());
        return;
    }
    let text = std::fs::read_to_string(&name).expect("a file of visits, one a line");
    let (mut workspace, mut report) = (Workspace::new(), Report::EMPTY);
    let mut answered = 0;
    for line in text.lines() {
        let visit = rimewise::json::read_visit(line).expect("a visit");
        let done = one_visit(&mut workspace, black_box(visit.refrigerant), &visit.visit(), &mut report);
        answered += usize::from(done);
    }
    println!("{answered} visits answered");
}
