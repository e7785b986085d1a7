//! Writes the compiled tables into the library's source.

use crate::common;
use crate::compile::Compiled;
use std::fmt::Write as _;
use std::path::Path;

/// File name and static name of a designation: `r1234ze_e`, `R1234ZE_E`.
pub fn identifier(designation: &str) -> String {
    designation
        .chars()
        .filter(|c| *c != ')')
        .map(|c| if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { '_' })
        .collect()
}

/// Writes one binary file a refrigerant and the module that names them.
pub fn write(folder: &Path, all: &[Compiled]) -> Result<(), String> {
    let put = |name: &str, bytes: &[u8]| {
        let path = folder.join(name);
        // What has not changed keeps its date, so that nothing is compiled anew for it.
        if std::fs::read(&path).is_ok_and(|before| before == bytes) {
            return Ok(());
        }
        std::fs::write(path, bytes).map_err(|e| format!("{name}: {e}"))
    };
    let mut statics = String::new();
    let mut list = String::new();
    let mut names = String::new();
    let mut name_count = 0;
    for c in all {
        let s = &c.substance;
        let id = identifier(&s.designation);
        let upper = id.to_ascii_uppercase();
        put(&format!("{id}.table"), &c.bytes)?;
        let _ = writeln!(statics, "/// {}", describe(c));
        let _ = writeln!(
            statics,
            "pub static {upper}: Refrigerant<'static> = Refrigerant::built_in(include_bytes!(\"{id}.table\"));"
        );
        let _ = writeln!(list, "    &{upper},");
        for name in &s.names {
            let _ = writeln!(names, "    (\"{name}\", &{upper}),");
            name_count += 1;
        }
    }
    let module = format!(
        "//! The built-in refrigerants. Written by `cargo run --release -p rimewise-tables`; do not edit.\n\n\
         pub(crate) mod common;\n\nuse super::Refrigerant;\n\n{statics}\n\
         /// Every built-in refrigerant, in the order of the numbers of their designations.\n\
         #[rustfmt::skip]\n\
         pub static ALL: [&Refrigerant<'static>; {}] = [\n{list}];\n\n\
         /// Common names of pure refrigerants.\n\
         #[rustfmt::skip]\n\
         pub(crate) static NAMES: [(&str, &Refrigerant<'static>); {name_count}] = [\n{names}];\n",
        all.len()
    );
    put("common.rs", common::module(all)?.as_bytes())?;
    put("mod.rs", module.as_bytes())
}

fn describe(c: &Compiled) -> String {
    let s = &c.substance;
    if s.is_pure() {
        let name = s.names.first().map_or(String::new(), |n| format!(", {n}"));
        return format!("{}{name}.", s.designation);
    }
    let parts: Vec<String> =
        s.components.iter().map(|(n, f)| format!("{n} {}", (f * 1e5).round() / 1e3)).collect();
    format!("{}: {} % by mass.", s.designation, parts.join(", "))
}
