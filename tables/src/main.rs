//! Regenerates every table of the library and the error report.

use rimewise_tables::{compile, data::Library, output};
use std::path::Path;

fn main() -> Result<(), String> {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let library = Library::read(&here.join("data"))?;
    let all = compile::compile_all(&library)?;
    output::write(&here.join("../core/src/refrigerant/data"), &all)?;
    for c in &all {
        let e = &c.errors;
        println!("{:12} {:5} B res {} dew {:.4} bub {:.4} jump {:.5} pr {:.1e} vap {:.4} hot {:.4} liq {:.4} near {:.3} miss {} {} {} {} {}", c.substance.designation, c.bytes.len(), c.bytes[15], e.dew, e.bubble, e.jump, e.pressure, e.vapor.worst(), e.hot_vapor.worst(), e.liquid.worst(), e.near_critical.worst(), e.missing, e.vapor.missing, e.hot_vapor.missing, e.liquid.missing, e.near_critical.missing);
    }
    Ok(())
}
