//! The whole set of types, sized once, with their severities as frozen in `ladder.json`.

use super::fault::{self, CAUSES};
use super::machine::{Faults, Machine, Spec};
use super::visit::{Case, Reason, Type, make};
use super::{fleet, props, sample};
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::sync::Arc;

/// Severities by type and cause, as `grade -- ladder` wrote them.
const LADDER: &str = include_str!("ladder.json");

/// Sizes every type's nominal machine.
pub fn machines() -> Vec<Machine> {
    sized(&fleet::specs(), sample::load())
}

/// Sizes the machines of the sweeps, on twelve refrigerants.
pub fn machines_for_sweeps() -> Vec<Machine> {
    sized(&fleet::specs_for_sweeps(), sample::load_all())
}

fn sized(specs: &[Spec], fluids: Vec<props::Fluid>) -> Vec<Machine> {
    let fluids: Vec<Arc<props::Fluid>> = fluids.into_iter().map(Arc::new).collect();
    specs
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

/// Fingerprint of everything the cases depend on: the rig's own files and the property tables.
fn fingerprint() -> u64 {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut hash: u64 = 0xcbf2_9ce4_8422_2325;
    let mut files = Vec::new();
    for dir in [
        folder.join("src/rig"),
        folder.join("../core/src/refrigerant/data"),
        folder.join("../core/src/refrigerant"),
    ] {
        if let Ok(entries) = std::fs::read_dir(dir) {
            files.extend(entries.flatten().map(|e| e.path()).filter(|p| p.is_file()));
        }
    }
    files.sort();
    for file in files {
        for byte in std::fs::read(file).unwrap_or_default() {
            hash = (hash ^ u64::from(byte)).wrapping_mul(0x100_0000_01b3);
        }
    }
    hash
}

/// Like [`run`] over a half of the types, kept in the target folder for the next time.
pub fn run_cached(half: &str, seed: u64, visits: u64) -> Run {
    let target = std::env::var_os("CARGO_TARGET_DIR").map_or_else(
        || std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../target"),
        std::path::PathBuf::from,
    );
    let file = target.join(format!("rig-{half}-{seed}-{visits}-{:016x}.jsonl", fingerprint()));
    if let Some(run) = std::fs::read_to_string(&file).ok().and_then(|text| parse(&text)) {
        return run;
    }
    let made = run(&types(half), seed, visits);
    let mut text = json!({
        "rejected": made.rejected.iter().map(|(r, n)| (*r as u8, *n)).collect::<Vec<_>>(),
        "imbalance": [made.imbalance.0, made.imbalance.1],
    })
    .to_string();
    for c in &made.cases {
        text.push('\n');
        text.push_str(&json!({"visit": c.visit, "truth": c.truth}).to_string());
    }
    // A cache that cannot be written costs time, nothing else.
    let _ = std::fs::write(&file, text);
    made
}

fn parse(text: &str) -> Option<Run> {
    let mut lines = text.lines();
    let head: Value = serde_json::from_str(lines.next()?).ok()?;
    let mut out = Run::default();
    for pair in head["rejected"].as_array()? {
        let reason = Reason::ALL.get(pair[0].as_u64()? as usize)?;
        out.rejected.insert(*reason, pair[1].as_u64()? as u32);
    }
    out.imbalance = (head["imbalance"][0].as_f64()?, head["imbalance"][1].as_f64()?);
    for line in lines {
        let mut v: Value = serde_json::from_str(line).ok()?;
        out.cases.push(Case {
            visit: v["visit"].take(),
            truth: v["truth"].take(),
            rejected: BTreeMap::new(),
            imbalance: (0.0, 0.0),
        });
    }
    Some(out)
}

/// Every cause's sweep at the design point of one type, as CSV.
pub fn sweeps(name: &str) -> String {
    let mut out = String::from(
        "type,cause,severity,capacity,cop,te_c,tc_c,superheat_k,suction_superheat_k,subcooling_k,discharge_c,liquid_c,drier_c,supply_c,exhaust_c,current_a,flow_g_s\n",
    );
    for kind in types("all").iter().filter(|t| t.machine.spec.name.contains(name)) {
        let m = &kind.machine;
        let f = &*m.fluid;
        for cause in CAUSES {
            for s in fault::sweep(m, cause, 24, 0.55) {
                let mut faults = Faults::default();
                cause.apply(s.severity, fault::MIDDLE, m, kind.leak_share, &mut faults);
                let Some(p) = m.evaluate(&s.x, &m.design_day(), &faults) else { continue };
                let (e, c, l, u) =
                    (f.sat(p.p_evaporator), f.sat(p.p_discharge), f.sat(p.p_liquid), f.sat(p.p_suction));
                let k = 273.15;
                out.push_str(&format!(
                    "{},{},{:.4},{:.4},{:.4},{:.2},{:.2},{:.2},{:.2},{:.2},{:.2},{:.2},{:.2},{:.2},{:.2},{:.3},{:.3}\n",
                    m.spec.name, cause.word(), s.severity, s.capacity, s.cop, e.t_dew - k,
                    0.5 * (c.t_dew + c.t_bubble) - k, p.t_evaporator - e.t_dew, p.t_suction - u.t_dew,
                    l.t_bubble - p.t_liquid, p.t_discharge - k, p.t_liquid - k, p.t_drier - k, p.t_supply - k,
                    p.t_exhaust - k, p.current, p.flow * 1e3
                ));
            }
        }
    }
    out
}
