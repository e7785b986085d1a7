//! The models beside published boiling and dew points: what the figures of `PUBLISHED.md` must reach.

use rimewise_tables::data::Library;
use rimewise_tables::uncertainty::{Evidence, median};
use std::path::Path;

fn library() -> Library {
    Library::read(&Path::new(env!("CARGO_MANIFEST_DIR")).join("data")).expect("the data files read")
}

/// Blends with estimated pairs, each predicted from a fit without its own point: 0.3 K by the median.
#[test]
fn blends_left_out_of_the_fit_are_met() {
    let library = library();
    let of = |k: usize| median(&library.fitted.left_out.values().map(|e| e[k]).collect::<Vec<_>>());
    assert!(library.fitted.left_out.len() >= 25);
    assert!(of(0) <= 0.3 && of(1) <= 0.3, "bubble {}, dew {}", of(0), of(1));
}

/// Blends whose pairs are all published: 0.2 K by the median, and every row further off than 0.5 K has its reason.
#[test]
fn what_is_far_off_has_its_reason() {
    let library = library();
    let evidence = Evidence::gather(&library).expect("boiling points of all");
    assert!(evidence.differences.len() > 150, "{}", evidence.differences.len());
    for (name, differences) in &evidence.differences {
        let Some(first) = differences.first() else { continue };
        let far = first.bubble.abs().max(first.dew.map_or(0.0, f64::abs));
        let known = library.published.reasons.contains_key(name);
        assert!(far <= 0.5 || known, "{name}: {far} K off and no reason given");
    }
    // 1.4826 times the median.
    assert!(evidence.published_k < 0.3, "{}", evidence.published_k);
}
