//! Every blend is stable against a third phase at points along both of its curves.

use rimewise_tables::data::Library;
use rimewise_tables::saturation::Specification;
use rimewise_tables::stability::excess;
use rimewise_tables::substance::Substance;
use std::path::Path;

/// Blends whose model parts the liquid in two at the coldest temperatures, and where that has ended, K.
///
/// The report names the temperatures; the tables go on with the one liquid.
const SPLIT: [(&str, f64); 3] = [("R430A", 207.0), ("R504", 222.0), ("R514A", 242.0)];

#[test]
fn no_third_phase_forms_along_bubble_and_dew_curves() {
    let data = Path::new(env!("CARGO_MANIFEST_DIR")).join("data");
    let library = Library::read(&data).expect("the data files read");
    for blend in &library.blends {
        let s = Substance::blend(&library, blend).expect("a substance");
        let boundary = s.boundary().expect("a boundary");
        let from = SPLIT.iter().find(|(name, _)| *name == s.designation).map_or(s.t_min, |(_, t)| *t);
        for share in [0.0, 0.35, 0.7, 0.93] {
            let t = from + share * (s.t_max - from);
            for branch in [&boundary.bubble, &boundary.dew] {
                let point = branch.at(&s.mixture, &s.z, Specification::Temperature(t)).expect("a point");
                let found = excess(&s.mixture, &s.z, t, point.p, point.bulk);
                assert!(found < 1e-6, "{} at {t:.1} K: {found:.2e}", s.designation);
            }
        }
    }
}
