//! The order of the members of C's structs, which is written down once and only ever grows at its end.

use rimewise::field::{Entry, Part, Shape};
use rimewise::schema::{QUANTITIES, SECTIONS};
use std::fmt::Write as _;
use std::io::{self, Error};
use std::path::Path;

/// An input of C: its name, and the sections that it is made of, each with the prefix of its members.
pub(crate) const INPUTS: &[(&str, &[(&str, &str)])] = &[
    ("System", &[("System", ""), ("Design", "design_"), ("CompressorPlate", "compressor_")]),
    ("Readings", &[("Readings", "")]),
    ("Observations", &[("Observations", "")]),
    ("Uncertainty", &[("Uncertainty", "")]),
    ("Call", &[("Call", "")]),
    ("Access", &[("Access", "")]),
    ("Costs", &[("Costs", "")]),
    ("MonitorSettings", &[("Settings", "")]),
    ("Sample", &[("Sample", "")]),
];

/// Room of each struct of quantities, which stands inside the report and so cannot grow.
pub(crate) const ROOM: usize = 24;

/// A struct as it is laid out.
pub(crate) struct Struct {
    pub(crate) name: String,
    /// The size of its first release, in bytes.
    pub(crate) first: usize,
    /// Its members in their order.
    pub(crate) members: Vec<String>,
}

pub(crate) fn section(name: &str) -> &'static Part {
    SECTIONS.iter().find(|part| part.name == name).unwrap_or_else(|| panic!("no section {name} in core"))
}

/// A member of an input: its name in C, its field, and where that stands in core.
pub(crate) struct Member {
    pub(crate) name: String,
    pub(crate) entry: &'static Entry,
    pub(crate) part: usize,
    pub(crate) position: usize,
}

/// Everything that core has for an input.
pub(crate) fn members(input: &str) -> Vec<Member> {
    let (_, parts) = INPUTS.iter().find(|(name, _)| *name == input).expect("an input of the list");
    let mut all = Vec::new();
    for (part, (name, prefix)) in parts.iter().enumerate() {
        for (position, entry) in section(name).entries.iter().enumerate() {
            all.push(Member { name: format!("{prefix}{}", entry.name), entry, part, position });
        }
    }
    all
}

pub(crate) fn words(shape: Shape) -> usize {
    if matches!(shape, Shape::Three(_)) { 3 } else { 1 }
}

/// Reads the committed order, appends what core has beyond it, and writes it back.
pub(crate) fn read_and_append(path: &Path) -> io::Result<Vec<Struct>> {
    let text = std::fs::read_to_string(path).unwrap_or_default();
    let mut known: Vec<Struct> = Vec::new();
    for line in text.lines().filter(|line| !line.starts_with('#') && !line.is_empty()) {
        match line.strip_prefix("  ") {
            Some(member) => match known.last_mut() {
                Some(last) => last.members.push(member.to_owned()),
                None => return Err(Error::other("the layout begins with a member")),
            },
            None => {
                let (name, first) =
                    line.split_once(' ').ok_or_else(|| Error::other("a struct without a size"))?;
                let first = first.parse().map_err(Error::other)?;
                known.push(Struct { name: name.to_owned(), first, members: Vec::new() });
            }
        }
    }
    let inputs = INPUTS.iter().map(|(name, _)| {
        let all = members(name);
        let bytes = 4 + 4 * all.iter().map(|member| words(member.entry.shape)).sum::<usize>();
        let extra: &[&str] = if *name == "Costs" { &["repair"] } else { &[] };
        let names = all.into_iter().map(|member| member.name).chain(extra.iter().map(|e| (*e).to_owned()));
        (*name, bytes + 64 * extra.len(), names.collect::<Vec<_>>())
    });
    let quantities = QUANTITIES.iter().map(|table| {
        let names = table.list.iter().map(|quantity| quantity.name.to_owned()).collect::<Vec<_>>();
        (table.name, 4 + 8 * ROOM, names)
    });
    for (name, bytes, all) in inputs.chain(quantities) {
        let place = match known.iter_mut().find(|place| place.name == name) {
            Some(place) => place,
            None => {
                known.push(Struct { name: name.to_owned(), first: bytes, members: Vec::new() });
                known.last_mut().expect("just pushed")
            }
        };
        if let Some(gone) = place.members.iter().find(|member| !all.contains(member)) {
            return Err(Error::other(format!("{name}.{gone} is laid out for C and gone from core")));
        }
        let new: Vec<String> = all.into_iter().filter(|member| !place.members.contains(member)).collect();
        place.members.extend(new);
    }
    let mut out = String::from(
        "# The members of C's structs in their order, and the size of each struct in its first release, in bytes.\n\
         # A line never moves and never goes: `cargo run -p rimewise-schema` appends what core has beyond these.\n",
    );
    for Struct { name, first, members } in &known {
        let _ = writeln!(out, "{name} {first}");
        for member in members {
            let _ = writeln!(out, "  {member}");
        }
    }
    super::write(path, &out)?;
    Ok(known)
}
