//! Answers whose grades are known beforehand: the judge judged.

use super::answer::{Answer, WORDS};
use super::outcome::{Class, Truth};
use super::said::Verdict;
use crate::rig::math::Rng;

fn certain(cause: usize, second: Option<usize>, decided: bool) -> Answer {
    let mut probability = [0.0_f64; 10];
    probability[cause] = 1.0;
    let mut order = vec![cause];
    if let Some(s) = second {
        probability[s] = 1.0;
        order.push(s);
    }
    order.extend((0..10).filter(|i| *i != cause && Some(*i) != second));
    let liquid_feed = (probability[3] + probability[4]).min(1.0);
    let verdict = if decided { Verdict::of_cause(WORDS[cause], 1.0) } else { Verdict::undecided(1.0) };
    let compressor = match (decided, probability[6] > 0.5) {
        (true, true) => "failed",
        (true, false) => "cleared",
        _ => "open",
    };
    Answer {
        probability,
        order,
        leading: cause,
        decided,
        fits: 0.5,
        verdict,
        liquid_feed,
        compressor: compressor.into(),
    }
}

/// Knows the truth.
pub fn perfect(truth: &Truth) -> Answer {
    if truth.class() == Class::Faulty {
        certain(truth.present[0], truth.present.get(1).copied(), true)
    } else {
        certain(0, None, true)
    }
}

/// Clears every machine.
pub fn always_none(_: &Truth) -> Answer {
    certain(0, None, true)
}

/// Knows the truth and never dares to say so.
pub fn never_decides(truth: &Truth) -> Answer {
    Answer { decided: false, verdict: Verdict::undecided(1.0), compressor: "open".into(), ..perfect(truth) }
}

/// Throws a ten-sided coin and is honest about it.
pub fn coin(rng: &mut Rng) -> Answer {
    let first = rng.below(10);
    let mut order: Vec<usize> = (0..10).collect();
    order.swap(0, first);
    for i in 1..9 {
        let j = i + rng.below(10 - i);
        order.swap(i, j);
    }
    Answer {
        probability: [0.1; 10],
        order,
        leading: first,
        decided: true,
        fits: 0.5,
        verdict: Verdict::of_cause(WORDS[first], 0.1),
        liquid_feed: 0.2,
        compressor: if first == 6 { "failed" } else { "open" }.into(),
    }
}
