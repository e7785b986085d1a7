//! Writes what C, TypeScript, the page and the documents take from core: this program links core and asks it.
//!
//! `cargo run -p rimewise-schema` after a change of core or of the C crate.

mod c;
mod document;
mod layout;
mod page;
mod typescript;

use std::fs;
use std::io::{self, Error};
use std::path::Path;

/// What the first line of every file says.
const COMMAND: &str = "cargo run -p rimewise-schema";

fn main() -> io::Result<()> {
    let root = &Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let ffi = &root.join("ffi");
    let generated = &ffi.join("src/generated");
    let layout = layout::read_and_append(&ffi.join("layout.txt"))?;
    write(&generated.join("inputs.rs"), &c::inputs(&layout))?;
    write(&generated.join("quantities.rs"), &c::quantities(&layout)?)?;
    write(&generated.join("fields.rs"), &c::fields())?;
    write(&generated.join("refrigerants.rs"), &c::refrigerants())?;
    write(&generated.join("texts.rs"), &c::texts())?;
    write(&root.join("wasm/js/types.ts"), &typescript::types())?;
    write(&root.join("wasm/page/src/generated/fields.ts"), &page::fields())?;
    write(&root.join("core/CONTRACT.md"), &document::contract())?;

    let mut config = cbindgen::Config::from_file(ffi.join("cbindgen.toml")).map_err(Error::other)?;
    let after = config.after_includes.get_or_insert_default();
    after.push_str(&c::enums());
    let header = cbindgen::Builder::new().with_crate(ffi).with_config(config).generate();
    let mut text = Vec::new();
    header.map_err(Error::other)?.write(&mut text);
    write(&ffi.join("include/rimewise.h"), &tidy(&String::from_utf8(text).map_err(Error::other)?))
}

/// Writes a file; one that has not changed keeps its date, so that nothing is compiled anew for it.
fn write(path: &Path, text: &str) -> io::Result<()> {
    if fs::read_to_string(path).is_ok_and(|before| before == text) {
        return Ok(());
    }
    if let Some(folder) = path.parent() {
        fs::create_dir_all(folder)?;
    }
    fs::write(path, text)
}

/// Ends the file with one newline and leaves no spaces at line ends.
fn tidy(text: &str) -> String {
    let mut out = String::new();
    for line in text.lines() {
        out.push_str(line.trim_end());
        out.push('\n');
    }
    out.trim_end().to_owned() + "\n"
}

/// The lines of a sentence of core, as they read outside of Rust.
fn sentence(doc: &str) -> Vec<String> {
    let plain = doc.replace("[`", "`").replace("`]", "`").replace("`None`", "null");
    let lines: Vec<String> = plain.trim().lines().map(|line| line.trim().to_owned()).collect();
    lines
}

/// A name in small letters with underscores.
fn snake(name: &str) -> String {
    let mut out = String::new();
    for letter in name.chars() {
        if letter.is_uppercase() && !out.is_empty() {
            out.push('_');
        }
        out.extend(letter.to_lowercase());
    }
    out
}
