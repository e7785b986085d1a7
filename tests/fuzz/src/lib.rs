//! Fuzz targets: each takes bytes, makes an input of them, and panics where an invariant does not hold.
//!
//! `tests/fuzz/run` drives them: by coverage where that can be built, else by drawing from seeds.

mod blend;
mod bytes;
mod c;
mod monitor;
mod property;
mod recording;
mod report;
mod table;
mod visit;

/// One target: its name and what it does with bytes.
pub type Target = (&'static str, fn(&[u8]));

/// Every target.
pub const TARGETS: [Target; 9] = [
    ("visit_json", visit::json),
    ("visit_text", visit::text),
    ("visit_struct", visit::structs),
    ("table", table::target),
    ("property", property::target),
    ("monitor", monitor::target),
    ("recording", recording::target),
    ("blend", blend::target),
    ("c", c::target),
];

/// Finds a target by its name.
pub fn find(name: &str) -> Option<fn(&[u8])> {
    TARGETS.iter().find(|(n, _)| *n == name).map(|(_, target)| *target)
}

/// Panics where a value's debug text holds a number that is none or endless.
fn assert_finite(what: &str, value: &impl std::fmt::Debug) {
    let text = format!("{value:?}");
    // Rust writes these two so, and "inf" also begins words.
    let endless = |at: usize| !text[at + 3..].starts_with(|c: char| c.is_ascii_alphanumeric());
    let found = text.contains("NaN") || text.match_indices("inf").any(|(at, _)| endless(at));
    assert!(!found, "{what}: {text}");
}
