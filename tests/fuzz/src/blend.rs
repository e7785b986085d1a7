//! The text of a blend: what is read has a composition.

use rimewise_tables::blend_file;
use rimewise_tables::data::Library;
use std::path::Path;
use std::sync::LazyLock;

static LIBRARY: LazyLock<Library> = LazyLock::new(|| {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tables/data");
    Library::read(&folder).expect("the data of the equations of state")
});

/// Any text, where it is one.
pub fn target(data: &[u8]) {
    let Ok(text) = std::str::from_utf8(data) else { return };
    match blend_file::read(&LIBRARY, text) {
        Ok((blend, _)) => {
            let parts: Vec<f64> = blend.mass_percent.values().filter_map(serde_json::Value::as_f64).collect();
            let sum: f64 = parts.iter().sum();
            assert!(parts.len() >= 2 && parts.len() == blend.mass_percent.len(), "{parts:?} of {text:?}");
            assert!(parts.iter().all(|p| p.is_finite() && *p > 0.0), "{parts:?} of {text:?}");
            assert!((sum - 100.0).abs() <= 0.05, "{sum} % of {text:?}");
            assert!(!blend.designation.is_empty(), "no name of {text:?}");
        }
        Err(why) => assert!(!why.is_empty(), "nothing is said of {text:?}"),
    }
}
