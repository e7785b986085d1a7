//! The graded report: everything counted, as Markdown for people and JSON for comparing.

use super::answer::{self, Answer, WORDS};
use super::extremes;
use super::guided;
use super::mistaken::{self, MISTAKES, Mistaken};
use super::outcome::{Class, Truth};
use super::sets::{self, CHANNELS, SETS, Set};
use super::spoken::{self, SpokenTally};
use super::tally::Tally;
use super::value;
use crate::rig::extreme::Group;
use crate::rig::set::Run;
use crate::rig::visit::Case;
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::fmt::Write;

/// Whoever answers visits: one JSON line in, one out.
pub type Answerer<'a> = &'a (dyn Fn(&str) -> String + Sync);

/// Effect of one channel: mean change of the log probability of the truth, its standard error, cases.
#[derive(Clone, Copy, Debug, Default)]
pub struct Effect {
    /// Mean, nats.
    pub mean: f64,
    /// Standard error, nats.
    pub se: f64,
    /// Cases.
    pub n: u32,
}

/// Everything counted over one half of the types.
#[derive(Clone, Debug, Default)]
pub struct Half {
    /// By reading set.
    pub sets: Vec<(String, Tally)>,
    /// By reading set, at the verdict's level.
    pub spoken: Vec<SpokenTally>,
    /// By machine type, all readings.
    pub types: BTreeMap<String, Tally>,
    /// By cause, all readings; pairs apart.
    pub causes: BTreeMap<String, Tally>,
    /// By cost, all readings, refrigeration and air conditioners apart.
    pub bands: BTreeMap<String, Tally>,
    /// Visits with a pump-down that is a measurement, shown with and without it.
    pub pump_down: [Tally; 2],
    /// Weak compressors among those.
    pub pump_down_weak: [Tally; 2],
    /// Decided (leading) against truth, all readings: rows truth, columns answer, last column undecided.
    pub confusion: [[u32; 11]; 10],
    /// Channel taken out of all readings; channel added to the six.
    pub channels: Vec<(String, Effect, Effect)>,
    /// Healthy visits told wrongly, in the order of [`MISTAKES`]; first as they are.
    pub mistaken: Vec<(String, Mistaken)>,
    /// The visits at the ends, by group and what it is.
    pub extremes: BTreeMap<(Group, String), extremes::Row>,
    /// Guided visits, in the order of [`guided::WAYS`].
    pub guided: [guided::Way; 3],
    /// Value of use.
    pub value: value::Values,
    /// Messages of answers that were errors.
    pub errors: BTreeMap<String, u32>,
}

struct Graded {
    truth: Truth,
    answers: Vec<Result<Answer, String>>,
    pump: Option<(Result<Answer, String>, Result<Answer, String>)>,
    channels: Vec<(usize, Option<f64>, Option<f64>)>,
    mistaken: Vec<(usize, Result<Answer, String>)>,
}

fn grade_one(case: &Case, answer: Answerer<'_>, with_channels: bool) -> Graded {
    let truth = Truth::read(&case.truth);
    let ask = |visit: &Value| answer::read(&answer(&visit.to_string()));
    let answers: Vec<_> = SETS.iter().map(|(s, _)| ask(&sets::show(&case.visit, &case.truth, *s))).collect();
    let measured = case.visit["readings"]["pump_down_ended_by"] == "limit";
    let pump = measured.then(|| (answers[0].clone(), ask(&sets::without(&case.visit, "pump_down"))));
    let mut mistaken = Vec::new();
    if truth.class() == Class::Healthy {
        for (k, (mistake, _)) in MISTAKES.iter().enumerate() {
            if let Some(visit) = mistaken::tell(&case.visit, *mistake) {
                mistaken.push((k, ask(&visit)));
            }
        }
    }
    let mut channels = Vec::new();
    if with_channels && truth.class() != Class::Open {
        let six = sets::show(&case.visit, &case.truth, Set::Six);
        let score = |a: &Result<Answer, String>| a.as_ref().ok().map(|a| truth.log_probability(a));
        let (full, base) = (score(&answers[0]), score(&answers[2]));
        for (k, channel) in CHANNELS.iter().enumerate() {
            if !sets::has(&case.visit, channel) {
                continue;
            }
            let out = score(&ask(&sets::without(&case.visit, channel)));
            let left_out = full.zip(out).map(|(a, b)| a - b);
            let added = if sets::has(&six, channel) {
                None
            } else {
                score(&ask(&sets::with(&six, &case.visit, channel))).zip(base).map(|(a, b)| a - b)
            };
            channels.push((k, left_out, added));
        }
    }
    Graded { truth, answers, pump, channels, mistaken }
}

/// Changes of the log probability of the truth: kept in all, added to the six.
type Changes = (Vec<f64>, Vec<f64>);

fn effect(values: &[f64]) -> Effect {
    let n = values.len() as f64;
    if values.len() < 2 {
        return Effect { mean: 0.0, se: 0.0, n: values.len() as u32 };
    }
    let mean = values.iter().sum::<f64>() / n;
    let variance = values.iter().map(|v| (v - mean) * (v - mean)).sum::<f64>() / (n - 1.0);
    Effect { mean, se: libm::sqrt(variance / n), n: values.len() as u32 }
}

/// Every `CHANNEL_STRIDE`th case is also asked channel by channel.
pub const CHANNEL_STRIDE: usize = 4;

/// Grades a run, one half of the types at a time.
pub fn grade(run: &Run, answer: Answerer<'_>) -> BTreeMap<String, Half> {
    let n = run.cases.len();
    let work = |start: usize| -> Vec<(usize, Graded)> {
        (start..n).step_by(2).map(|i| (i, grade_one(&run.cases[i], answer, i % CHANNEL_STRIDE < 2))).collect()
    };
    let (mut graded, odd) = std::thread::scope(|s| {
        let other = s.spawn(|| work(1));
        let even = work(0);
        (even, other.join().unwrap_or_default())
    });
    graded.extend(odd);
    graded.sort_by_key(|g| g.0);
    let mut out: BTreeMap<String, Half> = BTreeMap::new();
    let mut effects: BTreeMap<String, Vec<Changes>> = BTreeMap::new();
    for (_, g) in &graded {
        let half = out.entry(g.truth.half.clone()).or_insert_with(|| Half {
            sets: SETS.iter().map(|(_, name)| (name.to_string(), Tally::default())).collect(),
            spoken: vec![SpokenTally::default(); SETS.len()],
            mistaken: MISTAKES.iter().map(|(_, name)| (name.to_string(), Mistaken::default())).collect(),
            ..Half::default()
        });
        for (tally, a) in half.sets.iter_mut().zip(&g.answers) {
            tally.1.add(&g.truth, a);
        }
        for (tally, a) in half.spoken.iter_mut().zip(&g.answers) {
            tally.add(&g.truth, a);
        }
        for (k, answer) in &g.mistaken {
            half.mistaken[*k].1.add(answer);
        }
        let all = &g.answers[0];
        for a in &g.answers {
            if let Err(why) = a {
                *half.errors.entry(why.clone()).or_insert(0) += 1;
            }
        }
        half.types.entry(g.truth.kind.clone()).or_default().add(&g.truth, all);
        let class = g.truth.class();
        let cause = match (class, g.truth.drawn.as_slice()) {
            (Class::Healthy, _) => "none".to_string(),
            (Class::Open, _) => "pair".to_string(),
            (_, [one]) => WORDS[*one].to_string(),
            _ => "pair".to_string(),
        };
        half.causes.entry(cause).or_default().add(&g.truth, all);
        if class == Class::Faulty {
            let duty = if g.truth.air_conditioner { "air conditioning" } else { "refrigeration" };
            let band = if g.truth.impact >= 0.9 {
                "costing 5-10 %"
            } else if g.truth.impact >= 0.8 {
                "costing 10-20 %"
            } else {
                "costing over 20 %"
            };
            half.bands.entry(format!("{duty}, {band}")).or_default().add(&g.truth, all);
        }
        if let Some((with, without)) = &g.pump {
            half.pump_down[0].add(&g.truth, with);
            half.pump_down[1].add(&g.truth, without);
            if g.truth.present.contains(&6) {
                half.pump_down_weak[0].add(&g.truth, with);
                half.pump_down_weak[1].add(&g.truth, without);
            }
        }
        if let Ok(a) = all {
            let row = match class {
                Class::Open => None,
                Class::Faulty if g.truth.drawn.len() == 2 => None,
                Class::Faulty => Some(g.truth.drawn[0]),
                _ => Some(0),
            };
            if let Some(r) = row {
                half.confusion[r][if a.decided { a.leading } else { 10 }] += 1;
            }
        }
        let e = effects
            .entry(g.truth.half.clone())
            .or_insert_with(|| vec![(Vec::new(), Vec::new()); CHANNELS.len()]);
        for (k, left_out, added) in &g.channels {
            e[*k].0.extend(left_out);
            e[*k].1.extend(added);
        }
    }
    for (name, e) in effects {
        if let Some(half) = out.get_mut(&name) {
            half.channels = CHANNELS
                .iter()
                .zip(e)
                .map(|(c, (left, added))| (c.to_string(), effect(&left), effect(&added)))
                .collect();
        }
    }
    out
}

fn tallies(map: &BTreeMap<String, Tally>) -> Value {
    let mut v = json!({});
    for (k, t) in map {
        v[k] = t.json();
    }
    v
}

fn effect_json(e: &Effect) -> Value {
    let r = |x: f64| libm::round(x * 1e4) / 1e4;
    json!({ "mean": r(e.mean), "two_se": r(2.0 * e.se), "n": e.n })
}

/// The grades as JSON.
pub fn to_json(run: &Run, seed: u64, halves: &BTreeMap<String, Half>) -> Value {
    let mut rejected = json!({});
    for (reason, n) in &run.rejected {
        rejected[reason.word()] = json!(n);
    }
    let mut out = json!({ "seed": seed, "visits": run.cases.len(), "rejected": rejected, "halves": {} });
    for (name, h) in halves {
        let mut sets = json!({});
        for (k, t) in &h.sets {
            sets[k] = t.json();
        }
        let mut spoken = json!({});
        for ((k, _), t) in h.sets.iter().zip(&h.spoken) {
            spoken[k] = t.json();
        }
        let mut channels = json!({});
        for (c, left, added) in &h.channels {
            channels[c] = json!({ "in_all": effect_json(left), "added_to_six": effect_json(added) });
        }
        out["halves"][name] = json!({
            "sets": sets,
            "verdicts": spoken,
            "types": tallies(&h.types),
            "causes": tallies(&h.causes),
            "bands": tallies(&h.bands),
            "pump_down": { "with": h.pump_down[0].json(), "without": h.pump_down[1].json() },
            "pump_down_weak_compressor": { "with": h.pump_down_weak[0].json(), "without": h.pump_down_weak[1].json() },
            "channels": channels,
            "mistaken": mistaken::json(&h.mistaken),
            "value_of_use": value::to_json(&h.value),
            "extremes": extremes::rows_json(&h.extremes),
            "guided": guided::WAYS.iter().zip(&h.guided).map(|(n, w)| (n.to_string(), w.json())).collect::<serde_json::Map<_, _>>(),
            "errors": h.errors,
        });
    }
    out
}

fn share(x: f64) -> String {
    if x == 0.0 { "0".into() } else { format!("{x:.3}") }
}

fn row(name: &str, t: &Tally) -> String {
    let f = t.faulty_shares();
    let h = t.healthy_shares();
    let dash = |n: u32, s: String| if n == 0 { "-".to_string() } else { s };
    let nf = t.faulty_total();
    let nh: u32 = t.healthy.iter().sum();
    format!(
        "| {name} | {nf} | {} | {} | {} | {} | {nh} | {} | {} | {} | {:.3} | {} | {:.3} |\n",
        dash(nf, share(f[0])),
        dash(nf, share(f[1])),
        dash(nf, share(f[2])),
        dash(nf, share(f[3])),
        dash(nh, share(h[1])),
        dash(nh, share(h[0])),
        dash(t.minor.iter().sum(), format!("{}/{}/{}", t.minor[0], t.minor[1], t.minor[2])),
        t.first_two_share(),
        dash(t.pairs.2, share(f64::from(t.pairs.0) / f64::from(t.pairs.2.max(1)))),
        t.mean_log_probability(),
    )
}

const HEAD: &str = "| | faulty | correct | misdiagnosed | missed | no response | healthy | false alarm | cleared | minor: cleared/named/wrong | truth in first two | both of a pair | mean ln p |\n|---|---|---|---|---|---|---|---|---|---|---|---|---|\n";

/// The grades as Markdown.
pub fn to_markdown(run: &Run, seed: u64, halves: &BTreeMap<String, Half>, unread: &str) -> String {
    let mut m = String::new();
    let _ = writeln!(
        m,
        "# Grades\n\nWritten by `cargo run --release -p rimewise-tests --bin grade`; do not edit. {} visits, seed {seed}.\n",
        run.cases.len()
    );
    m.push_str(unread);
    let _ = writeln!(m, "\n## The rig's run\n\nOperating points thrown away on the way:\n");
    for (reason, n) in &run.rejected {
        let _ = writeln!(m, "* {}: {n}", reason.word());
    }
    let _ = writeln!(
        m,
        "\nWorst relative imbalance of the points kept: energy below {:.0e}, mass and charge below {:.0e}.",
        ceiling(run.imbalance.0),
        ceiling(run.imbalance.1)
    );
    for (name, h) in halves {
        let _ = writeln!(m, "\n## {} half\n\n### By what was measured\n\n{HEAD}", title(name));
        m.truncate(m.trim_end().len());
        m.push('\n');
        for (set, t) in &h.sets {
            m.push_str(&row(set, t));
        }
        let _ = write!(m, "\n### What the verdict says, and the compressor question\n\n{}", spoken::HEAD);
        for ((set, _), t) in h.sets.iter().zip(&h.spoken) {
            m.push_str(&t.row(set));
        }
        for (heading, map) in
            [("By machine type", &h.types), ("By cause", &h.causes), ("By what the fault costs", &h.bands)]
        {
            let _ = write!(m, "\n### {heading}, all readings\n\n{HEAD}");
            for (k, t) in map {
                m.push_str(&row(k, t));
            }
        }
        let _ = write!(m, "\n### With and without a pump-down that was a measurement\n\n{HEAD}");
        m.push_str(&row("every such visit, with", &h.pump_down[0]));
        m.push_str(&row("every such visit, without", &h.pump_down[1]));
        m.push_str(&row("weak compressor, with", &h.pump_down_weak[0]));
        m.push_str(&row("weak compressor, without", &h.pump_down_weak[1]));
        let _ = write!(m, "\n### What was decided, all readings, single causes\n\n| truth |");
        for w in WORDS {
            let _ = write!(m, " {w} |");
        }
        let _ = write!(m, " not decided |\n|---|{}\n", "---|".repeat(11));
        for (i, r) in h.confusion.iter().enumerate() {
            let _ = write!(m, "| {} |", WORDS[i]);
            for c in r {
                let _ = write!(m, " {c} |");
            }
            m.push('\n');
        }
        if let Some((_, all)) = h.sets.first() {
            let _ = writeln!(
                m,
                "\n### Calibration, all readings\n\nExpected error {:.3} for the leading cause, {:.3} over every cause. Each bin: mean probability, share that holds, count.\n\n| probability | leading | every cause |\n|---|---|---|",
                all.calibration_error(),
                all.calibration_error_every()
            );
            for (i, (a, b)) in all.leading.iter().zip(&all.every).enumerate() {
                let cell = |b: &(f64, u32, u32)| {
                    let n = f64::from(b.2.max(1));
                    if b.2 == 0 {
                        "-".to_string()
                    } else {
                        format!("{:.2} / {:.2} ({})", b.0 / n, f64::from(b.1) / n, b.2)
                    }
                };
                let lo = i as f64 / 10.0;
                let _ = writeln!(m, "| {lo:.1}-{:.1} | {} | {} |", lo + 0.1, cell(a), cell(b));
            }
            let _ = writeln!(m, "\nExpected error of the leading cause by what was measured:\n");
            for (set, t) in &h.sets {
                let _ = writeln!(m, "* {set}: {:.3}", t.calibration_error());
            }
        }
        let _ = writeln!(
            m,
            "\n### What one more true reading does\n\nMean change of the log probability of what is so, nats, with two standard errors: the reading kept against left out of all, and added to the six. Every other pair of cases.\n\n| reading | kept in all | n | added to the six | n |\n|---|---|---|---|---|"
        );
        for (c, left, added) in &h.channels {
            let cell = |e: &Effect| {
                if e.n < 2 { "-".to_string() } else { format!("{:+.3} +- {:.3}", e.mean, 2.0 * e.se) }
            };
            let _ = writeln!(m, "| {c} | {} | {} | {} | {} |", cell(left), left.n, cell(added), added.n);
        }
        m.push_str(&mistaken::markdown(&h.mistaken));
        if h.guided[0].visits > 0 {
            m.push_str(&guided::markdown(&h.guided));
            m.push_str(&value::markdown(&h.value));
        }
        if !h.extremes.is_empty() {
            m.push_str(&extremes::markdown(&h.extremes));
        }
        if !h.errors.is_empty() {
            let _ = writeln!(m, "\n### Visits answered with an error\n");
            for (why, n) in &h.errors {
                let _ = writeln!(m, "* {n}: {why}");
            }
        }
    }
    m
}

fn ceiling(x: f64) -> f64 {
    let e = libm::ceil(libm::log10(x.max(1e-15)));
    libm::pow(10.0, e)
}

fn title(name: &str) -> String {
    let mut c = name.chars();
    c.next().map_or_else(String::new, |f| f.to_uppercase().collect::<String>() + c.as_str())
}

/// Differences between two sets of grades beyond a tolerance on shares and nats.
pub fn differences(old: &Value, new: &Value, tolerance: f64, path: &str, out: &mut Vec<String>) {
    match (old, new) {
        (Value::Object(a), Value::Object(b)) => {
            for key in a.keys().chain(b.keys().filter(|k| !a.contains_key(*k))) {
                let (x, y) = (a.get(key).unwrap_or(&Value::Null), b.get(key).unwrap_or(&Value::Null));
                differences(x, y, tolerance, &format!("{path}/{key}"), out);
            }
        }
        (Value::Number(a), Value::Number(b)) => {
            let (x, y) = (a.as_f64().unwrap_or(f64::NAN), b.as_f64().unwrap_or(f64::NAN));
            // Shares and nats within the tolerance; counts within it as a share of themselves, one at least.
            let scale =
                if a.is_f64() || b.is_f64() { 1.0f64.max(x.abs()) } else { x.abs().max(1.0 / tolerance) };
            if !((x - y).abs() <= tolerance * scale) {
                out.push(format!("{path}: {x} is now {y}"));
            }
        }
        _ => {
            if old != new {
                out.push(format!("{path}: {old} is now {new}"));
            }
        }
    }
}
