//! The whole set of types, sized once, with their severities as frozen in `ladder.json`.

use super::fault::{self, CAUSES};
use super::machine::{Faults, Machine};
use super::visit::{Case, Reason, Type, make};
use super::{fleet, props, sample};
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::sync::Arc;

/// Severities by type and cause, as `grade -- ladder` wrote them.
const LADDER: &str = include_str!("ladder.json");

/// Sizes every type's nominal machine.
pub fn machines() -> Vec<Machine> {
    let fluids: Vec<Arc<props::Fluid>> = sample::load().into_iter().map(Arc::new).collect();
    fleet::specs()
        .iter()
        .map(|s| {
            let fluid = fluids.iter().find(|f| f.name == s.refrigerant);
            Machine::size(
                s,
                fluid.unwrap_or_else(|| panic!("{}: no refrigerant {}", s.name, s.refrigerant)).clone(),
            )
        })
        .collect()
}

/// Every type with its frozen severities; `half` is `setting`, `grading` or `all`.
pub fn types(half: &str) -> Vec<Type> {
    let ladder: Value = serde_json::from_str(LADDER).unwrap_or(Value::Null);
    machines()
        .into_iter()
        .filter(|m| match half {
            "setting" => fleet::is_setting(m.spec.name),
            "grading" => !fleet::is_setting(m.spec.name),
            _ => true,
        })
        .map(|machine| {
            let mut steps = [[0.0; 5]; 9];
            for (i, cause) in CAUSES.iter().enumerate() {
                for (k, step) in steps[i].iter_mut().enumerate() {
                    *step = ladder[machine.spec.name][cause.word()][k].as_f64().unwrap_or(0.0);
                }
            }
            let design = machine.evaluate(&machine.design, &machine.design_day(), &Faults::default());
            Type { leak_share: design.map_or(0.01, |p| p.leak_share), machine, ladder: steps }
        })
        .collect()
}

/// Works the severities out anew.
pub fn ladder() -> Value {
    let mut out = json!({});
    for m in machines() {
        for c in CAUSES {
            let steps = fault::ladder(&m, c).map(|s| libm::round(s * 1e4) / 1e4);
            out[m.spec.name][c.word()] = json!(steps);
        }
    }
    out
}

/// A run of cases.
#[derive(Clone, Debug, Default)]
pub struct Run {
    /// The cases, in order.
    pub cases: Vec<Case>,
    /// Points thrown away, by reason.
    pub rejected: BTreeMap<Reason, u32>,
    /// Worst energy and mass imbalance.
    pub imbalance: (f64, f64),
}

/// Makes `visits` cases on two threads. The same seed gives the same cases whatever the threads do.
pub fn run(types: &[Type], seed: u64, visits: u64) -> Run {
    let half =
        |start: u64| -> Vec<Case> { (start..visits).step_by(2).map(|i| make(types, seed, i)).collect() };
    let (even, odd) = std::thread::scope(|s| {
        let other = s.spawn(|| half(1));
        let even = half(0);
        (even, other.join().unwrap_or_default())
    });
    let mut out = Run::default();
    let (mut a, mut b) = (even.into_iter(), odd.into_iter());
    for i in 0..visits {
        let Some(case) = (if i % 2 == 0 { a.next() } else { b.next() }) else { break };
        for (reason, n) in &case.rejected {
            *out.rejected.entry(*reason).or_insert(0) += n;
        }
        out.imbalance.0 = out.imbalance.0.max(case.imbalance.0);
        out.imbalance.1 = out.imbalance.1.max(case.imbalance.1);
        out.cases.push(case);
    }
    out
}
