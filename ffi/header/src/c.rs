//! What the C crate and its header take from core.

use crate::layout::{self, INPUTS, ROOM, Struct};
use crate::{COMMAND, sentence, snake};
use rimewise::field::{Choices, Shape};
use rimewise::monitor::EventKind;
use rimewise::schema::{BESIDES, CHOICES, QUANTITIES, SECTIONS};
use rimewise::text::{ADVICE, TABLES};
use std::fmt::Write as _;
use std::io::{self, Error};

fn begin(what: &str) -> String {
    format!("//! {what} Written by `{COMMAND}`; do not edit.\n\n")
}

fn doc(out: &mut String, indent: &str, mark: &str, text: &[String]) {
    for line in text {
        let _ = writeln!(out, "{}", format!("{indent}{mark} {line}").trim_end());
    }
}

/// The name that a choice has in C.
fn c_name(choices: &Choices) -> String {
    let named = CHOICES.iter().find(|named| std::ptr::eq(named.choices, choices));
    format!("Rimewise{}", named.map_or(choices.name, |named| named.name))
}

/// Writes the enums of core's choices into the header: no function takes one, so that they need no Rust.
pub(crate) fn enums() -> String {
    let mut out = String::new();
    for named in CHOICES {
        let members: Vec<_> = named
            .choices
            .list
            .iter()
            .map(|member| {
                let mut lines = sentence(member.doc);
                if named.name == "MonitorEventKind" {
                    let figures =
                        EventKind::from_code(member.code).map(EventKind::value_names).unwrap_or_default();
                    let figures: Vec<_> = figures.into_iter().filter(|name| !name.is_empty()).collect();
                    lines.push(format!("Figures: {}.", figures.join(", ")));
                }
                (member.variant.to_owned(), i64::from(member.code), lines)
            })
            .collect();
        one_enum(&mut out, named.name, "int32_t", &sentence(named.choices.doc), &members);
    }
    for table in QUANTITIES {
        let members: Vec<_> = table
            .list
            .iter()
            .enumerate()
            .map(|(n, quantity)| {
                (quantity.name.to_owned(), 1 << n, vec![format!("`{}` is there.", quantity.name)])
            })
            .collect();
        let text = format!("A bit of the valid mask of Rimewise{}.", table.name);
        one_enum(&mut out, &format!("{}Valid", table.name), "uint32_t", &[text], &members);
    }
    out
}

fn one_enum(
    out: &mut String,
    name: &str,
    repr: &str,
    text: &[String],
    members: &[(String, i64, Vec<String>)],
) {
    let _ = writeln!(out);
    doc(out, "", "//", text);
    let sized = "defined(__cplusplus) || __STDC_VERSION__ >= 202311L";
    let _ = writeln!(out, "enum Rimewise{name}\n#if {sized}\n  : {repr}\n#endif // {sized}\n {{");
    for (member, code, text) in members {
        doc(out, "    ", "//", text);
        let all = format!("RIMEWISE_{}_{}", snake(name), snake(member)).to_uppercase();
        let _ = writeln!(out, "    {all} = {code},");
    }
    let _ = writeln!(out, "}};\n#ifndef __cplusplus\n#if __STDC_VERSION__ >= 202311L");
    let _ =
        writeln!(out, "typedef enum Rimewise{name} Rimewise{name};\n#else\ntypedef {repr} Rimewise{name};");
    let _ = writeln!(out, "#endif // __STDC_VERSION__ >= 202311L\n#endif // __cplusplus");
}

/// Says how a field stands in C, beside its sentence.
fn in_c(shape: Shape) -> Option<String> {
    match shape {
        Shape::Number(kind) if kind.takes_open() => Some("INFINITY: the meter reads open.".to_owned()),
        Shape::Number(_) => None,
        Shape::Three(_) => Some("All NaN where they are not known.".to_owned()),
        Shape::Flag => Some("1 or 0.".to_owned()),
        Shape::Choice(choices) => Some(format!("A {}.", c_name(choices))),
        Shape::Set(choices) => Some(format!("Bit n stands for the {} with the number n.", c_name(choices))),
    }
}

/// Writes the structs of the inputs with the slots that lead to core.
pub(crate) fn inputs(layout: &[Struct]) -> String {
    let mut out = begin("What goes in.");
    out.push_str("use crate::boundary::{Input, Slot, Take};\nuse crate::report::RIMEWISE_CAUSES_MAX;\n");
    out.push_str("use core::mem::size_of;\nuse rimewise::field::{Section, Value};\n\n");
    for (input, parts) in INPUTS {
        let place = layout.iter().find(|place| place.name == *input).expect("every input is laid out");
        let all = layout::members(input);
        let first = layout::section(parts[0].0);
        doc(&mut out, "", "///", &sentence(first.doc));
        let _ = writeln!(
            out,
            "///\n/// NaN and RIMEWISE_NOT_KNOWN are normal.\n#[derive(Clone, Copy, Debug)]\n#[repr(C)]"
        );
        let _ = writeln!(out, "pub struct Rimewise{input} {{");
        let _ = writeln!(
            out,
            "    /// The size of this struct, which rimewise_{}_clear sets.\n    pub size: u32,",
            snake(input)
        );
        let mut slots = String::new();
        for name in &place.members {
            if name == "repair" {
                let _ = writeln!(
                    out,
                    "    /// The repair of each cause, by the number of its RimewiseCause; that of none is not looked at."
                );
                let _ = writeln!(out, "    pub repair: [f32; RIMEWISE_CAUSES_MAX],");
                let code = BESIDES
                    .iter()
                    .find(|(_, name, _, _)| *name == "repair")
                    .map_or(0, |(_, _, code, _)| *code);
                for cause in 0..16 {
                    let _ = writeln!(
                        slots,
                        "        Slot {{ code: {code}, part: 1, position: {cause}, take: Take::Number }},"
                    );
                }
                continue;
            }
            let member = all.iter().find(|member| member.name == *name).expect("checked by the layout");
            let mut text = sentence(member.entry.doc);
            text.extend(in_c(member.entry.shape));
            doc(&mut out, "    ", "///", &text);
            let (rust, take) = match member.entry.shape {
                Shape::Number(_) => ("f32", "Number"),
                Shape::Three(_) => ("[f32; 3]", "Three"),
                Shape::Flag => ("i32", "Flag"),
                Shape::Choice(_) => ("i32", "Code"),
                Shape::Set(_) => ("i32", "Bits"),
            };
            let _ = writeln!(out, "    pub {name}: {rust},");
            let (code, part, position) = (member.entry.code, member.part, member.position);
            let _ = writeln!(
                slots,
                "        Slot {{ code: {code}, part: {part}, position: {position}, take: Take::{take} }},"
            );
        }
        let core = match *input {
            "MonitorSettings" | "Sample" => format!("rimewise::monitor::{}", parts[0].0),
            "System" => "rimewise::system::System".to_owned(),
            "Costs" => "rimewise::decision::Costs".to_owned(),
            other => format!("rimewise::readings::{other}"),
        };
        let _ = writeln!(
            out,
            "}}\n\n// SAFETY: repr(C), its size and the words of its slots, see the assertion below."
        );
        let _ = writeln!(
            out,
            "unsafe impl Input for Rimewise{input} {{\n    const FIRST: u32 = {};\n    type Core = {core};",
            place.first
        );
        let _ = writeln!(out, "    const SLOTS: &'static [Slot] = &[\n{slots}    ];");
        let fields = |from: &str| -> Vec<String> {
            let inner = ["", "design.", "compressor."];
            parts
                .iter()
                .zip(inner)
                .map(|((section, _), path)| {
                    let _ = section;
                    format!("{from}.{path}")
                })
                .collect()
        };
        let arms = |call: &dyn Fn(&str) -> String| -> String {
            let paths = fields("core");
            if *input == "Costs" {
                return format!("if slot.part == 0 {{ {} }} else {{ REPAIR }}", call("core."));
            }
            match paths.as_slice() {
                [one] => call(one),
                many => {
                    let arms: Vec<_> = many
                        .iter()
                        .enumerate()
                        .map(|(n, path)| {
                            let n = if n + 1 == many.len() { "_".to_owned() } else { n.to_string() };
                            format!("{n} => {}", call(path))
                        })
                        .collect();
                    format!("match slot.part {{ {} }}", arms.join(", "))
                }
            }
        };
        let get = arms(&|path| format!("{path}get(slot.position.into())")).replace(
            "REPAIR",
            "core.repair.get(usize::from(slot.position)).copied().flatten().map(Value::Number)",
        );
        let set = arms(&|path| format!("{path}set(slot.position.into(), value)"))
            .replace("REPAIR", "crate::decision::set_repair(core, slot.position, value)");
        let _ = writeln!(
            out,
            "    fn get(core: &Self::Core, slot: &Slot) -> Option<Value> {{\n        {get}\n    }}"
        );
        let _ = writeln!(
            out,
            "    fn set(core: &mut Self::Core, slot: &Slot, value: Option<Value>) -> bool {{\n        {set}\n    }}\n}}\n"
        );
        let words: usize = all.iter().map(|member| layout::words(member.entry.shape)).sum();
        let words = words + if *input == "Costs" { 16 } else { 0 };
        let _ = writeln!(out, "const _: () = assert!(size_of::<Rimewise{input}>() == {});\n", 4 + 4 * words);
    }
    out.trim_end().to_owned() + "\n"
}

/// Writes the structs of quantities with the room that is left in them.
pub(crate) fn quantities(layout: &[Struct]) -> io::Result<String> {
    let mut out = begin("Quantities with their uncertainties.");
    out.push_str("use crate::estimate::RimewiseEstimate;\n\n");
    for table in QUANTITIES {
        let place = layout.iter().find(|place| place.name == table.name).expect("every struct is laid out");
        // Core gives them by position.
        if !table.list.iter().map(|quantity| quantity.name).eq(place.members.iter().map(String::as_str)) {
            return Err(Error::other(format!("{}: a new quantity stands behind the others", table.name)));
        }
        let name = table.name;
        let upper = snake(name).to_uppercase();
        let _ = writeln!(
            out,
            "/// Room for quantities in Rimewise{name}.\npub const RIMEWISE_{upper}_ROOM: usize = {ROOM};\n"
        );
        doc(&mut out, "", "///", &sentence(table.doc));
        let _ = writeln!(out, "#[derive(Clone, Copy, Debug)]\n#[repr(C)]\npub struct Rimewise{name} {{");
        let _ = writeln!(
            out,
            "    /// Which quantities are there, Rimewise{name}Valid bits; the others are 0.\n    pub valid: u32,"
        );
        for quantity in table.list {
            doc(&mut out, "    ", "///", &sentence(quantity.doc));
            let _ = writeln!(out, "    pub {}: RimewiseEstimate,", quantity.name);
        }
        let left =
            ROOM.checked_sub(table.list.len()).ok_or_else(|| Error::other(format!("{name} is full")))?;
        let _ = writeln!(
            out,
            "    /// Room for quantities of later releases.\n    pub reserved: [RimewiseEstimate; {left}],\n}}\n"
        );
    }
    Ok(out.trim_end().to_owned() + "\n")
}

/// Writes the numbers of the fields that are not readings or observations.
pub(crate) fn fields() -> String {
    let mut out = begin("The fields that are not readings or observations: section, then number and name.");
    out.push_str("use crate::text::c_text;\nuse core::ffi::CStr;\nuse rimewise::field::Texts;\n\n");
    out.push_str("pub(crate) const OTHERS: &[(&CStr, &Texts)] = &[\n");
    for part in SECTIONS.iter().filter(|part| !["readings", "observations", "sample"].contains(&part.path)) {
        let _ = writeln!(out, "    (c_text!({:?}), &[", part.path);
        let own = part.entries.iter().map(|entry| (entry.name, entry.code));
        let besides =
            BESIDES.iter().filter(|(path, ..)| *path == part.path).map(|(_, name, code, _)| (*name, *code));
        for (name, code) in own.chain(besides) {
            let _ = writeln!(out, "        ({code}, c_text!({name:?})),");
        }
        out.push_str("    ]),\n");
    }
    out.push_str("];\n");
    out
}

/// Writes one symbol for each built-in refrigerant.
pub(crate) fn refrigerants() -> String {
    let mut out = begin("The built-in refrigerants by name.");
    out.push_str("#![allow(non_upper_case_globals)]\n\n");
    let all = rimewise::refrigerant::data::ALL;
    if !all.is_empty() {
        out.push_str("use crate::refrigerant::RimewiseRefrigerant;\nuse rimewise::refrigerant::data;\n\n");
    }
    for refrigerant in all {
        let designation = refrigerant.designation();
        let mut name = String::new();
        for letter in designation.chars() {
            match letter {
                'a'..='z' | 'A'..='Z' | '0'..='9' => name.extend(letter.to_lowercase()),
                '(' | '/' => name.push('_'),
                _ => {}
            }
        }
        let constant = name.to_uppercase();
        let kind = if refrigerant.composition().count() > 1 { "a blend" } else { "a pure fluid" };
        let class = refrigerant.safety_class().map_or("not known", |class| class.name());
        let _ = writeln!(out, "/// {designation}: {kind}, safety class {class}.");
        let _ = writeln!(
            out,
            "#[unsafe(no_mangle)] pub static rimewise_{name}: RimewiseRefrigerant = RimewiseRefrigerant(data::{constant});"
        );
    }
    out
}

/// Writes one symbol for each list of names and for each list of sentences in a language.
pub(crate) fn texts() -> String {
    let mut out = begin("The lists of texts.");
    out.push_str("#![allow(non_upper_case_globals)]\n\nuse crate::text::RimewiseTexts;\nuse rimewise::schema::CHOICES;\nuse rimewise::text;\n\n");
    let mut symbol = |doc: &str, name: &str, from: &str| {
        let _ = writeln!(out, "/// {doc}");
        let _ = writeln!(
            out,
            "#[unsafe(no_mangle)] pub static rimewise_{name}: RimewiseTexts = RimewiseTexts({from});"
        );
    };
    for (n, named) in CHOICES.iter().enumerate() {
        let name = snake(named.name);
        let text = format!("The names of Rimewise{} in the contract.", named.name);
        symbol(&text, &format!("{name}_names"), &format!("CHOICES[{n}].c_names"));
        if let Some(table) = TABLES.iter().find(|table| std::ptr::eq(table.choices, named.choices)) {
            for (language, room) in [("English", "en"), ("Spanish", "es")] {
                let text = format!("What a Rimewise{} says, in {language}.", named.name);
                symbol(&text, &format!("{name}_{room}"), &format!("text::{room}::{}", table.name));
            }
        }
    }
    for table in ADVICE {
        let (name, choice) = (table.name.to_lowercase(), c_name(table.choices));
        for (language, room) in [("English", "en"), ("Spanish", "es")] {
            let text = format!("What to do about a {choice}, in {language}; not every one has a sentence.");
            symbol(&text, &format!("{name}_{room}"), &format!("text::{room}::{}", table.name));
        }
    }
    out
}
