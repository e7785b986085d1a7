//! Writes what the C API takes from core: the codes and their texts, the built-in refrigerants, and the C header.
//!
//! `cargo run -p rimewise-header` after a change of core or of this crate.

use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::{fs, io};

const COMMAND: &str = "cargo run -p rimewise-header";

fn main() -> io::Result<()> {
    let here = &Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let choices = choices(&here.join("../core/src"))?;
    write_formatted(&here.join("src/code.rs"), &codes(&choices))?;
    write_formatted(&here.join("src/refrigerant/built_in.rs"), &built_in())?;

    let mut config = cbindgen::Config::from_file(here.join("cbindgen.toml")).map_err(io::Error::other)?;
    config.export.include.extend(choices.iter().map(|choice| format!("Rimewise{}", choice.name)));
    let header =
        cbindgen::Builder::new().with_crate(here).with_config(config).generate().map_err(io::Error::other)?;
    let mut text = Vec::new();
    header.write(&mut text);
    let text = String::from_utf8(text).map_err(io::Error::other)?;
    fs::write(here.join("include/rimewise.h"), tidy(&text))
}

/// One choice of core: its numbers and names.
struct Choice {
    path: String,
    /// The name in core.
    core_name: String,
    /// The name in C, which says more where the name in core leans on its module.
    name: String,
    doc: Vec<String>,
    variants: Vec<Variant>,
}

struct Variant {
    doc: Vec<String>,
    name: String,
    number: String,
}

/// Says what the figures of an event are, where a variant is one.
fn figures(choice: &str, number: &str) -> Option<String> {
    if choice != "MonitorEventKind" {
        return None;
    }
    let kind = rimewise::monitor::EventKind::from_code(number.parse().ok()?)?;
    let names = kind.value_names();
    let there: Vec<_> = names.into_iter().filter(|name| !name.is_empty()).collect();
    Some(format!("Figures: {}.", there.join(", ")))
}

/// Reads every `choice!` block of core's source, in the order of the files' names.
fn choices(root: &Path) -> io::Result<Vec<Choice>> {
    let mut files = Vec::new();
    collect(root, &mut files)?;
    files.sort();
    let mut all = Vec::new();
    for file in files {
        let relative = file.strip_prefix(root).map_err(io::Error::other)?.with_extension("");
        let module: Vec<_> = relative
            .iter()
            .map(|part| part.to_string_lossy().into_owned())
            .filter(|part| part != "mod" && part != "lib")
            // The files of the monitor are private; its types stand in its module.
            .enumerate()
            .filter(|(depth, _)| *depth == 0 || !relative.starts_with("monitor"))
            .map(|(_, part)| part)
            .collect();
        let text = fs::read_to_string(&file)?;
        let mut lines = text.lines().map(str::trim);
        while let Some(line) = lines.next() {
            if line.ends_with("choice! {") && !line.starts_with("macro_rules!") && !line.starts_with("//") {
                all.push(choice(&mut lines, &module));
            }
        }
    }
    Ok(all)
}

fn collect(folder: &Path, files: &mut Vec<PathBuf>) -> io::Result<()> {
    for entry in fs::read_dir(folder)? {
        let path = entry?.path();
        if path.is_dir() {
            collect(&path, files)?;
        } else if path.extension().is_some_and(|e| e == "rs") {
            files.push(path);
        }
    }
    Ok(())
}

fn choice<'a>(lines: &mut impl Iterator<Item = &'a str>, module: &[String]) -> Choice {
    let mut doc = Vec::new();
    let mut made: Option<Choice> = None;
    for line in lines {
        if let Some(text) = line.strip_prefix("///") {
            doc.push(text.trim().replace("[`", "`").replace("`]", "`"));
        } else if let Some((name, rest)) = line.split_once(" = ") {
            let number = rest.split(' ').next().unwrap_or_default().to_owned();
            let variant = Variant { doc: std::mem::take(&mut doc), name: name.to_owned(), number };
            made.as_mut().expect("a variant stands inside a choice").variants.push(variant);
        } else if let Some(name) = line.strip_suffix(" {") {
            let prefix = match module.first().map(String::as_str) {
                Some("monitor") => "Monitor",
                Some("compressor") => "Compressor",
                _ => "",
            };
            made = Some(Choice {
                path: format!("rimewise::{}", module.join("::")),
                core_name: name.to_owned(),
                name: format!("{prefix}{name}"),
                doc: std::mem::take(&mut doc),
                variants: Vec::new(),
            });
        } else if line == "}" {
            break;
        }
    }
    made.expect("a choice has a name")
}

/// Writes the codes as C enums and a text function for each.
fn codes(choices: &[Choice]) -> String {
    let mut out = format!("//! The codes of core and their texts. Written by `{COMMAND}`; do not edit.\n\n");
    out.push_str(
        "use crate::boundary::put;\nuse crate::status::{RimewiseStatus, RimewiseStatus as Status};\n",
    );
    out.push_str("use core::ffi::c_char;\n\n");
    for choice in choices {
        let Choice { path, core_name, name, .. } = choice;
        for line in &choice.doc {
            let _ = writeln!(out, "/// {line}");
        }
        let _ = writeln!(out, "#[derive(Clone, Copy, Debug, PartialEq, Eq)]\n#[repr(i32)]");
        let _ = writeln!(out, "pub enum Rimewise{name} {{");
        for Variant { doc, name: variant, number } in &choice.variants {
            for line in doc {
                let _ = writeln!(out, "    /// {line}");
            }
            if let Some(figures) = figures(name, number) {
                let _ = writeln!(out, "    /// {figures}");
            }
            let _ = writeln!(out, "    {variant} = {number},");
        }
        let function = snake(name);
        let _ = writeln!(out, "}}\n");
        let _ = writeln!(
            out,
            "/// Gives the name of a Rimewise{name} as text that lives as long as the program."
        );
        let _ = writeln!(out, "///\n/// Errors: UNKNOWN_CODE.\n#[unsafe(no_mangle)]");
        let _ = writeln!(
            out,
            "pub unsafe extern \"C\" fn rimewise_{function}_text(code: i32, text: *mut *const c_char) -> RimewiseStatus {{"
        );
        let _ = writeln!(out, "    match {path}::{core_name}::from_code(code) {{");
        let _ = writeln!(out, "        // SAFETY: the contract of the header.");
        let _ = writeln!(out, "        Some(known) => unsafe {{ put(text, known.c_name().as_ptr()) }},");
        let _ = writeln!(out, "        None => Status::UnknownCode,\n    }}\n}}\n");
    }
    out
}

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

/// Writes one symbol for each built-in refrigerant.
fn built_in() -> String {
    let mut out = format!("//! The built-in refrigerants by name. Written by `{COMMAND}`; do not edit.\n\n");
    let _ = writeln!(out, "#![allow(non_upper_case_globals)]\n");
    if !rimewise::refrigerant::data::ALL.is_empty() {
        let _ = writeln!(out, "use super::RimewiseRefrigerant;\nuse rimewise::refrigerant::data;\n");
    }
    for refrigerant in rimewise::refrigerant::data::ALL {
        let designation = refrigerant.designation();
        let mut name = String::new();
        for letter in designation.chars() {
            match letter {
                'a'..='z' | 'A'..='Z' | '0'..='9' => name.extend(letter.to_lowercase()),
                '(' => name.push('_'),
                _ => {}
            }
        }
        let constant = name.to_uppercase();
        let kind = if refrigerant.composition().count() > 1 { "a blend" } else { "a pure fluid" };
        let class = refrigerant.safety_class().map_or("not known", |class| class.name());
        let _ = writeln!(out, "/// {designation}: {kind}, safety class {class}.");
        let _ = writeln!(out, "#[unsafe(no_mangle)]");
        let _ = writeln!(
            out,
            "pub static rimewise_{name}: RimewiseRefrigerant = RimewiseRefrigerant(data::{constant});\n"
        );
    }
    out
}

/// Writes a source file as rustfmt has it.
///
/// What has not changed keeps its date, so that nothing is compiled anew for it.
fn write_formatted(path: &Path, text: &str) -> io::Result<()> {
    let before = fs::read(path).ok();
    let dated = fs::metadata(path).and_then(|m| m.modified()).ok();
    fs::write(path, text)?;
    let status = Command::new("rustfmt").args(["--edition", "2024"]).arg(path).status()?;
    if !status.success() {
        return Err(io::Error::other("rustfmt failed"));
    }
    if let (Some(before), Some(dated)) = (before, dated)
        && before == fs::read(path)?
    {
        fs::File::options().write(true).open(path)?.set_modified(dated)?;
    }
    Ok(())
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
