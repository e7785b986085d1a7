//! The contract's reference page.

use crate::typescript::type_of;
use crate::{COMMAND, sentence};
use rimewise::field::{Kind, Shape, Unit};
use rimewise::json::objects;
use rimewise::schema::{BESIDES, CHOICES, QUANTITIES, SECTIONS};
use std::fmt::Write as _;

fn line(text: &str) -> String {
    sentence(text).join(" ").replace('|', "\\|")
}

/// Writes the page.
pub(crate) fn contract() -> String {
    let mut out = String::from("# The contract: every field, choice and code\n\n");
    let _ = writeln!(out, "<!-- Written from the library's own lists by `{COMMAND}`; do not edit. -->\n");
    out.push_str(
        "One visit, one JSON object; one report or error, one line. Whatever is not known or not measured is left out or \
         null. Names and units are the same in Rust, C, JavaScript and JSON; numbers of fields and codes are those of C, \
         permanent and never reused. Pressures are absolute.\n\n## What goes in\n",
    );
    for part in SECTIONS {
        let path = match part.path {
            "" => "at the top of a visit".to_owned(),
            "sample" | "settings" => format!("`{}` of the monitor", part.path),
            path => format!("`{path}`"),
        };
        let _ = writeln!(
            out,
            "\n### {} ({path})\n\n{}\n\n| field | number | takes | what |\n|---|---|---|---|",
            part.name,
            line(part.doc)
        );
        for (_, name, code, text) in BESIDES.iter().filter(|(at, ..)| *at == part.path) {
            let _ = writeln!(out, "| `{name}` | {code} | | {} |", line(text));
        }
        for entry in part.entries {
            let takes = match entry.shape {
                Shape::Number(kind) | Shape::Three(kind) => format!("{kind:?}"),
                other => type_of(other),
            };
            let three = if matches!(entry.shape, Shape::Three(_)) { ", three" } else { "" };
            let _ =
                writeln!(out, "| `{}` | {} | {takes}{three} | {} |", entry.name, entry.code, line(entry.doc));
        }
    }
    out.push_str(
        "\n### Kinds of numbers\n\n| kind | unit | lowest | highest | open |\n|---|---|---|---|---|\n",
    );
    for kind in Kind::ALL {
        let (min, max) = kind.range();
        let unit = if kind.unit() == Unit::None { "" } else { kind.unit().name() };
        let max = if max.is_finite() { max.to_string() } else { String::new() };
        let open = if kind.takes_open() { "`\"open\"`" } else { "" };
        let _ = writeln!(out, "| {kind:?} | {unit} | {min} | {max} | {open} |");
    }
    out.push_str("\n## What comes out\n");
    for table in QUANTITIES {
        let _ = writeln!(
            out,
            "\n### {}\n\n{} Each is an `Estimate`: `value` and its standard uncertainty `u`.\n\n| quantity | what |\n|---|---|",
            table.name,
            line(table.doc)
        );
        for quantity in table.list {
            let _ = writeln!(out, "| `{}` | {} |", quantity.name, line(quantity.doc));
        }
    }
    for object in objects() {
        let _ = writeln!(
            out,
            "\n### {}\n\n{}\n\n| member | type | what |\n|---|---|---|",
            object.name,
            line(object.doc)
        );
        for (name, text, shape) in object.members {
            let _ = writeln!(out, "| `{name}` | `{}` | {} |", shape().replace('|', "\\|"), line(text));
        }
    }
    out.push_str("\n## Choices and codes\n");
    for named in CHOICES {
        let _ = writeln!(
            out,
            "\n### {}\n\n{}\n\n| number | name | what |\n|---|---|---|",
            named.name,
            line(named.choices.doc)
        );
        for member in named.choices.list {
            let _ = writeln!(out, "| {} | `{}` | {} |", member.code, member.name, line(member.doc));
        }
    }
    out
}
