//! The types of the npm package.

use crate::{COMMAND, sentence};
use rimewise::field::{Choices, Part, Quantities, Shape};
use rimewise::json::objects;
use rimewise::schema::{BESIDES, CHOICES, QUANTITIES, SECTIONS};
use std::fmt::Write as _;

fn jsdoc(out: &mut String, indent: &str, text: &[String]) {
    let lines: Vec<&String> = text.iter().filter(|line| !line.is_empty()).collect();
    match lines.as_slice() {
        [] => {}
        [one] => {
            let _ = writeln!(out, "{indent}/** {one} */");
        }
        many => {
            let _ = writeln!(out, "{indent}/**");
            for line in many {
                let _ = writeln!(out, "{indent} * {line}");
            }
            let _ = writeln!(out, "{indent} */");
        }
    }
}

/// The name of a choice in TypeScript.
pub(crate) fn name_of(choices: &Choices) -> &'static str {
    let named = CHOICES.iter().find(|named| std::ptr::eq(named.choices, choices));
    named.map_or("string", |named| named.name)
}

/// The type of a field.
pub(crate) fn type_of(shape: Shape) -> String {
    match shape {
        Shape::Number(kind) if kind.takes_open() => "number | \"open\"".to_owned(),
        Shape::Number(_) => "number".to_owned(),
        Shape::Three(_) => "[number, number, number]".to_owned(),
        Shape::Flag => "boolean".to_owned(),
        Shape::Choice(choices) => name_of(choices).to_owned(),
        Shape::Set(choices) => format!("{}[]", name_of(choices)),
    }
}

/// Writes the fields of a section, all of which may be left out.
fn fields(out: &mut String, part: &Part) {
    for (_, name, _, text) in BESIDES.iter().filter(|(path, ..)| *path == part.path) {
        let kind = match *name {
            "refrigerant" => "string",
            "record" => "{ readings: Readings }[]",
            "design" => "Design",
            "compressor" => "CompressorPlate",
            "cannot" => "(Measurement | Action)[]",
            "repair" => "{ [cause in Exclude<Cause, \"none\">]?: number | null | undefined }",
            "before" => "{ readings: Readings }",
            "language" => "Language",
            other => panic!("no type is known for {other}"),
        };
        jsdoc(out, "  ", &sentence(text));
        let _ = writeln!(out, "  {name}?: {kind} | null | undefined;");
    }
    for entry in part.entries {
        jsdoc(out, "  ", &sentence(entry.doc));
        let _ = writeln!(out, "  {}?: {} | null | undefined;", entry.name, type_of(entry.shape));
    }
}

fn section(name: &str) -> &'static Part {
    SECTIONS.iter().find(|part| part.name == name).unwrap_or_else(|| panic!("no section {name} in core"))
}

fn quantities(out: &mut String, table: &Quantities) {
    jsdoc(out, "", &sentence(table.doc));
    let _ = writeln!(out, "export interface {} {{", table.name);
    for quantity in table.list {
        jsdoc(out, "  ", &sentence(quantity.doc));
        let _ = writeln!(out, "  {}: Estimate | null;", quantity.name);
    }
    let _ = writeln!(out, "}}\n");
}

/// Writes all types.
pub(crate) fn types() -> String {
    let mut out = format!("// Written from the library's own lists by `{COMMAND}`; do not edit.\n\n");
    for named in CHOICES {
        let mut text = sentence(named.choices.doc);
        // The names of measurements are those of their fields, which carry their own sentences.
        for member in
            named.choices.list.iter().filter(|_| named.name != "Measurement" && named.name != "Unit")
        {
            text.push(format!("- `{}`: {}", member.name, sentence(member.doc).join(" ")));
        }
        jsdoc(&mut out, "", &text);
        let names: Vec<String> =
            named.choices.list.iter().map(|member| format!("{:?}", member.name)).collect();
        let _ = writeln!(out, "export type {} = {};\n", named.name, names.join(" | "));
    }
    for part in SECTIONS.iter().filter(|part| !["Call", "Settings", "Sample"].contains(&part.name)) {
        jsdoc(&mut out, "", &sentence(part.doc));
        let _ = writeln!(out, "export interface {} {{", part.name);
        fields(&mut out, part);
        let _ = writeln!(out, "}}\n");
    }
    out.push_str(
        "/** One visit: what is known of the machine, what was measured and seen, and how well. */\n",
    );
    out.push_str("export interface Visit {\n");
    for part in SECTIONS.iter().filter(|part| !part.path.is_empty() && !part.path.contains('.')) {
        if part.path != "settings" && part.path != "sample" {
            jsdoc(&mut out, "  ", &sentence(part.doc));
            let _ = writeln!(out, "  {}?: {} | null | undefined;", part.path, part.name);
        }
    }
    fields(&mut out, section("Call"));
    let _ = writeln!(out, "}}\n");
    let sample = section("Sample");
    jsdoc(&mut out, "", &sentence(sample.doc));
    let names: Vec<String> = sample.entries.iter().map(|entry| format!("{:?}", entry.name)).collect();
    let _ = writeln!(out, "export type SampleNumbers = Pick<Readings, {}>;\n", names.join(" | "));
    let settings = section("Settings");
    jsdoc(&mut out, "", &sentence(settings.doc));
    out.push_str("export interface MonitorSettings {\n");
    out.push_str("  /** The refrigerant, without which superheat is not known. */\n");
    out.push_str("  refrigerant?: string | null | undefined;\n");
    fields(&mut out, settings);
    let _ = writeln!(out, "}}\n");

    out.push_str("/** A value with its standard uncertainty (k = 1), both in the unit of the name they stand under. */\n");
    out.push_str("export interface Estimate {\n  /** The value. */\n  value: number;\n");
    out.push_str("  /** The standard uncertainty. */\n  u: number;\n}\n\n");
    for table in QUANTITIES {
        quantities(&mut out, table);
    }
    for object in objects() {
        jsdoc(&mut out, "", &sentence(object.doc));
        let _ = writeln!(out, "export interface {} {{", object.name);
        for (name, text, shape) in object.members {
            jsdoc(&mut out, "  ", &sentence(text));
            let _ = writeln!(out, "  {name}: {};", shape());
        }
        let _ = writeln!(out, "}}\n");
    }
    out.trim_end().to_owned() + "\n"
}
