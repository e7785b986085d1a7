//! The page's list of fields: section, name, kind, unit, range and choices, as data.

use crate::{COMMAND, sentence};
use rimewise::field::{Choices, Shape};
use rimewise::measurement::Measurement;
use rimewise::schema::{CHOICES, SECTIONS};
use std::fmt::Write as _;

fn names(choices: &Choices) -> String {
    let names: Vec<String> = choices.list.iter().map(|member| format!("{:?}", member.name)).collect();
    names.join(", ")
}

/// Writes the list.
pub(crate) fn fields() -> String {
    let mut out = format!("// Written from the library's own lists by `{COMMAND}`; do not edit.\n\n");
    out.push_str(
        "/** A field of a visit. */\nexport interface Field {\n  /** The section, empty at the top. */\n  section: string;\n\
         \x20 /** The name in its section. */\n  name: string;\n  /** The permanent number. */\n  code: number;\n\
         \x20 /** What it is. */\n  shape: \"number\" | \"three\" | \"flag\" | \"choice\" | \"set\";\n\
         \x20 /** The kind of a number, such as `Pressure`. */\n  kind?: string;\n\
         \x20 /** The unit of a number. */\n  unit?: string;\n  /** The lowest value that a machine can show. */\n  min?: number;\n\
         \x20 /** The highest value, where there is one. */\n  max?: number;\n\
         \x20 /** Whether a meter can read open here. */\n  open?: true;\n\
         \x20 /** What can be chosen. */\n  choices?: readonly string[];\n\
         \x20 /** The effort of a reading or an observation. */\n  effort?: string;\n\
         \x20 /** What it holds, in English. */\n  doc: string;\n}\n\n",
    );
    out.push_str("/** Every field. */\nexport const FIELDS: readonly Field[] = [\n");
    for part in SECTIONS.iter().filter(|part| part.path != "sample") {
        for entry in part.entries {
            let _ = write!(
                out,
                "  {{ section: {:?}, name: {:?}, code: {}, shape: ",
                part.path, entry.name, entry.code
            );
            match entry.shape {
                Shape::Number(kind) | Shape::Three(kind) => {
                    let three = matches!(entry.shape, Shape::Three(_));
                    let (min, max) = kind.range();
                    let _ = write!(
                        out,
                        "{:?}, kind: \"{kind:?}\", unit: {:?}, min: {min}",
                        if three { "three" } else { "number" },
                        kind.unit().name()
                    );
                    if max.is_finite() {
                        let _ = write!(out, ", max: {max}");
                    }
                    if kind.takes_open() {
                        out.push_str(", open: true");
                    }
                }
                Shape::Flag => out.push_str("\"flag\""),
                Shape::Choice(choices) => {
                    let _ = write!(out, "\"choice\", choices: [{}]", names(choices));
                }
                Shape::Set(choices) => {
                    let _ = write!(out, "\"set\", choices: [{}]", names(choices));
                }
            }
            let measured = Measurement::from_code(entry.code)
                .filter(|measurement| part.path == "readings" || measurement.section() == Some(part.path));
            if let Some(measurement) = measured {
                let _ = write!(out, ", effort: {:?}", measurement.effort().name());
            }
            let _ = writeln!(out, ", doc: {:?} }},", sentence(entry.doc).join(" "));
        }
    }
    out.push_str(
        "];\n\n/** The names of every choice, in the order of their numbers. */\nexport const CHOICES = {\n",
    );
    for named in CHOICES {
        let _ = writeln!(out, "  {}: [{}],", named.name, names(named.choices));
    }
    out.push_str("} as const;\n");
    out
}
