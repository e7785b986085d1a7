//! Generates the package's TypeScript types from the library's Rust source, and refuses a committed file that differs.
//!
//! Names, order, documentation and units come from the source text of `core`; the few places where the JSON form
//! differs from the Rust struct (a renamed list, a nested part) are written here, in one place.
//! `RIMEWISE_WRITE=1 cargo test -p rimewise-wasm --test types` writes the file.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use syn::parse::{Parse, ParseStream};
use syn::{Attribute, Ident, LitInt, LitStr, Token, Type, braced};

/// One line of an interface: documentation, name, and the Rust type or the field's kind.
struct Member {
    doc: Vec<String>,
    name: String,
    rust: String,
}

/// A struct of the source, however it is declared there.
struct Table {
    doc: Vec<String>,
    members: Vec<Member>,
}

/// A choice of the source: its names with their documentation.
struct Choice {
    doc: Vec<String>,
    variants: Vec<(Vec<String>, String)>,
}

#[derive(Default)]
struct Source {
    tables: BTreeMap<String, Table>,
    choices: BTreeMap<String, Choice>,
}

fn doc_of(attributes: &[Attribute]) -> Vec<String> {
    attributes
        .iter()
        .filter_map(|attribute| match &attribute.meta {
            syn::Meta::NameValue(pair) if pair.path.is_ident("doc") => match &pair.value {
                syn::Expr::Lit(syn::ExprLit { lit: syn::Lit::Str(text), .. }) => Some(
                    text.value()
                        .trim()
                        .replace("[`", "`")
                        .replace("`]", "`")
                        .replace("`None`", "null")
                        .replace("EventKind::", "")
                        .replace("State::", ""),
                ),
                _ => None,
            },
            _ => None,
        })
        .collect()
}

struct NamedChoice(String, Choice);

impl Parse for NamedChoice {
    fn parse(input: ParseStream<'_>) -> syn::Result<Self> {
        let doc = doc_of(&input.call(Attribute::parse_outer)?);
        let name: Ident = input.parse()?;
        let body;
        braced!(body in input);
        let mut variants = Vec::new();
        while !body.is_empty() {
            let doc = doc_of(&body.call(Attribute::parse_outer)?);
            body.parse::<Ident>()?;
            body.parse::<Token![=]>()?;
            body.parse::<LitInt>()?;
            let text: LitStr = body.parse()?;
            body.parse::<Option<Token![,]>>()?;
            variants.push((doc, text.value()));
        }
        Ok(Self(name.to_string(), Choice { doc, variants }))
    }
}

struct NamedTable(String, Table);

impl Parse for NamedTable {
    fn parse(input: ParseStream<'_>) -> syn::Result<Self> {
        let doc = doc_of(&input.call(Attribute::parse_outer)?);
        let name: Ident = input.parse()?;
        let mut members = Vec::new();
        let body;
        braced!(body in input);
        parse_members(&body, &mut members)?;
        if !input.is_empty() {
            input.parse::<Ident>()?;
            let others;
            braced!(others in input);
            parse_members(&others, &mut members)?;
        }
        Ok(Self(name.to_string(), Table { doc, members }))
    }
}

fn parse_members(body: ParseStream<'_>, members: &mut Vec<Member>) -> syn::Result<()> {
    while !body.is_empty() {
        let doc = doc_of(&body.call(Attribute::parse_outer)?);
        let name: Ident = body.parse()?;
        body.parse::<Token![:]>()?;
        let rust: Type = body.parse()?;
        body.parse::<Option<Token![,]>>()?;
        members.push(Member { doc, name: name.to_string(), rust: type_text(&rust) });
    }
    Ok(())
}

/// The last name of a type with its arguments, paths dropped: `Option<[f32;3]>`, `Vec<Warning>`.
fn type_text(rust: &Type) -> String {
    match rust {
        Type::Path(path) => {
            let last = path.path.segments.last().expect("a type has a name");
            let mut text = last.ident.to_string();
            if let syn::PathArguments::AngleBracketed(arguments) = &last.arguments {
                let inner: Vec<String> = arguments
                    .args
                    .iter()
                    .filter_map(|argument| match argument {
                        syn::GenericArgument::Type(inner) => Some(type_text(inner)),
                        _ => None,
                    })
                    .collect();
                if !inner.is_empty() {
                    let _ = write!(text, "<{}>", inner.join(","));
                }
            }
            text
        }
        Type::Array(array) => format!("[{}]", type_text(&array.elem)),
        Type::Reference(reference) => type_text(&reference.elem),
        Type::Slice(slice) => format!("[{}]", type_text(&slice.elem)),
        _ => String::from("unknown"),
    }
}

impl Source {
    fn read(&mut self, path: &Path) {
        let text = std::fs::read_to_string(path).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
        let file = syn::parse_file(&text).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
        for item in file.items {
            match item {
                syn::Item::Macro(item) => match item.mac.path.segments.last().map(|s| s.ident.to_string()) {
                    Some(name) if name == "choice" => {
                        let NamedChoice(name, choice) = item.mac.parse_body().expect("a choice");
                        self.choices.insert(name, choice);
                    }
                    Some(name) if name == "optional_numbers" => {
                        let NamedTable(name, table) = item.mac.parse_body().expect("optional numbers");
                        self.tables.insert(name, table);
                    }
                    _ => {}
                },
                syn::Item::Struct(item) => {
                    let members = item
                        .fields
                        .iter()
                        .filter_map(|field| {
                            Some(Member {
                                doc: doc_of(&field.attrs),
                                name: field.ident.as_ref()?.to_string(),
                                rust: type_text(&field.ty),
                            })
                        })
                        .collect();
                    self.tables.insert(item.ident.to_string(), Table { doc: doc_of(&item.attrs), members });
                }
                _ => {}
            }
        }
    }

    fn table(&self, name: &str) -> &Table {
        self.tables.get(name).unwrap_or_else(|| panic!("no struct {name} in the source"))
    }

    /// The TypeScript type of a Rust type or of a field's kind.
    fn typescript(&self, rust: &str) -> String {
        if let Some(inner) = rust.strip_prefix("Option<").and_then(|r| r.strip_suffix('>')) {
            return format!("{} | null", self.typescript(inner));
        }
        if let Some(inner) = rust.strip_prefix("Vec<").and_then(|r| r.strip_suffix('>')) {
            return format!("{}[]", self.typescript(inner));
        }
        match rust {
            "bool" => "boolean".into(),
            "f32" => "number".into(),
            "[f32]" => "[number, number, number]".into(),
            "[CauseProbability]" => "CauseProbability[]".into(),
            "Resistance" | "Insulation" | "Capacitance" => "number | \"open\" | null".into(),
            "str" => "string".into(),
            known if self.choices.contains_key(known) || self.tables.contains_key(known) => known.into(),
            // What is left is a kind of an optional number.
            kind => {
                assert!(KINDS.contains(&kind), "no TypeScript for the Rust type {kind}");
                "number | null".into()
            }
        }
    }
}

/// The kinds of optional numbers that are plain numbers in JSON.
const KINDS: &[&str] = &[
    "Pressure",
    "PressureRise",
    "Temperature",
    "Difference",
    "Current",
    "Voltage",
    "Power",
    "Frequency",
    "Phases",
    "Mass",
    "Minutes",
    "Percent",
    "Spread",
];

fn jsdoc(out: &mut String, indent: &str, doc: &[String]) {
    let lines: Vec<&str> = doc.iter().map(String::as_str).filter(|line| !line.is_empty()).collect();
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

fn choice(out: &mut String, source: &Source, rust: &str, typescript: &str) {
    let choice = source.choices.get(rust).unwrap_or_else(|| panic!("no choice {rust} in the source"));
    let mut doc = choice.doc.clone();
    doc.push(String::new());
    // The names of measurements are those of their fields, which carry their own documentation.
    for (variant_doc, text) in choice.variants.iter().filter(|_| rust != "Measurement") {
        doc.push(format!("- `{text}`: {}", variant_doc.join(" ")));
    }
    jsdoc(out, "", &doc);
    let names: Vec<String> = choice.variants.iter().map(|(_, text)| format!("  | {text:?}")).collect();
    let _ = writeln!(out, "export type {typescript} =\n{};\n", names.join("\n"));
}

/// Writes an interface of the input: everything may be absent, null or undefined.
fn input(out: &mut String, source: &Source, name: &str, extra: &[(&str, &str, &str)], skip: &[&str]) {
    input_named(out, source, name, name, extra, skip);
}

/// The same under another name than the Rust struct's.
fn input_named(
    out: &mut String,
    source: &Source,
    rust: &str,
    name: &str,
    extra: &[(&str, &str, &str)],
    skip: &[&str],
) {
    let table = source.table(rust);
    jsdoc(out, "", &table.doc);
    let _ = writeln!(out, "export interface {name} {{");
    for (field, typescript, doc) in extra {
        jsdoc(out, "  ", &[(*doc).to_owned()]);
        let _ = writeln!(out, "  {field}?: {typescript} | null | undefined;");
    }
    for member in table.members.iter().filter(|member| !skip.contains(&member.name.as_str())) {
        jsdoc(out, "  ", &member.doc);
        let typescript = source.typescript(&member.rust);
        let null = if typescript.ends_with("| null") { "" } else { " | null" };
        let _ = writeln!(out, "  {}?: {typescript}{null} | undefined;", member.name);
    }
    let _ = writeln!(out, "}}\n");
}

/// Writes an interface of the output: every member is there, null where it is absent.
fn output(
    out: &mut String,
    source: &Source,
    rust: &str,
    name: &str,
    rename: &[(&str, &str, &str)],
    extra: &[(&str, &str, &str)],
) {
    let table = source.table(rust);
    jsdoc(out, "", &table.doc);
    let _ = writeln!(out, "export interface {name} {{");
    for (field, typescript, doc) in extra {
        jsdoc(out, "  ", &[(*doc).to_owned()]);
        let _ = writeln!(out, "  {field}: {typescript};");
    }
    for member in &table.members {
        let renamed = rename.iter().find(|(from, _, _)| *from == member.name);
        let (field, typescript) = match renamed {
            Some((_, "", _)) => continue,
            Some((_, to, typescript)) => (*to, (*typescript).to_owned()),
            None => (member.name.as_str(), source.typescript(&member.rust)),
        };
        jsdoc(out, "  ", &member.doc);
        let _ = writeln!(out, "  {field}: {typescript};");
    }
    let _ = writeln!(out, "}}\n");
}

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

fn generate() -> String {
    let mut source = Source::default();
    for file in [
        "field.rs",
        "estimate.rs",
        "system.rs",
        "readings.rs",
        "measurement.rs",
        "cycle.rs",
        "caution.rs",
        "report.rs",
        "diagnosis/cause.rs",
        "motor/finding.rs",
        "monitor/event.rs",
        "monitor/sample.rs",
        "monitor/settings.rs",
        "monitor/state.rs",
    ] {
        source.read(&root().join("core/src").join(file));
    }

    let mut out = String::from(
        "// Generated from the Rust source by `RIMEWISE_WRITE=1 cargo test -p rimewise-wasm --test types`; do not edit.\n\n",
    );
    for (rust, typescript) in [
        ("Metering", "Metering"),
        ("Duty", "Duty"),
        ("PumpDownValve", "PumpDownValve"),
        ("PumpDownEnd", "PumpDownEnd"),
        ("StartNoise", "StartNoise"),
        ("SightGlass", "SightGlass"),
        ("Cause", "Cause"),
        ("Measurement", "Measurement"),
        ("Effort", "Effort"),
        ("FindingKind", "FindingKind"),
        ("CautionCode", "CautionCode"),
        ("Step", "Step"),
        ("EventKind", "MonitorEventKind"),
        ("State", "MonitorState"),
        ("SampleProblem", "SampleProblem"),
    ] {
        choice(&mut out, &source, rust, typescript);
    }

    input(&mut out, &source, "Design", &[], &[]);
    input(&mut out, &source, "CompressorPlate", &[], &[]);
    let refrigerant = (
        "refrigerant",
        "string",
        "The refrigerant as people write it: R290, R-404A, 404a, propane; absent: not known.",
    );
    let record = (
        "record",
        "{ readings: Readings }[]",
        "Readings of this same machine when it was good, if there are any.",
    );
    input(&mut out, &source, "System", &[refrigerant, record], &[]);
    input(&mut out, &source, "Readings", &[], &[]);
    input(&mut out, &source, "Observations", &[], &[]);
    input(&mut out, &source, "Uncertainty", &[], &[]);
    input(&mut out, &source, "Visit", &[], &["record"]);
    let sample = source.table("Sample");
    jsdoc(&mut out, "", &sample.doc);
    let names: Vec<String> = sample
        .members
        .iter()
        .filter(|member| member.name != "time_ms")
        .map(|member| format!("  | \"{}\"\n", member.name))
        .collect();
    let _ = writeln!(out, "export type SampleNumbers = Pick<\n  Readings,\n{}>;\n", names.concat());
    let refrigerant = ("refrigerant", "string", "The refrigerant, without which superheat is not known.");
    input_named(&mut out, &source, "Settings", "MonitorSettings", &[refrigerant], &[]);

    let text = ("text", "string", "The same in words, English.");
    output(&mut out, &source, "Estimate", "Estimate", &[], &[]);
    output(&mut out, &source, "Cycle", "Cycle", &[], &[]);
    output(&mut out, &source, "Expected", "Expected", &[], &[]);
    output(&mut out, &source, "CauseProbability", "CauseProbability", &[], &[]);
    let says = ("says", "\"for\" | \"against\"", "Which way the reading speaks.");
    output(&mut out, &source, "Evidence", "Evidence", &[], &[says]);
    output(&mut out, &source, "NextMeasurement", "NextMeasurement", &[], &[]);
    let by = [("measurements", "by", "Measurement[]")];
    output(&mut out, &source, "CauseAndMeasurements", "RuledOut", &by, &[]);
    let closed_by = [("measurements", "closed_by", "Measurement[]")];
    output(&mut out, &source, "CauseAndMeasurements", "StillOpen", &closed_by, &[]);
    let warning = [("section", "", ""), ("kind", "", "")];
    output(&mut out, &source, "Warning", "Warning", &warning, &[text]);
    output(&mut out, &source, "Finding", "Finding", &[], &[]);
    output(&mut out, &source, "Caution", "Caution", &[], &[text]);
    let report = [("ruled_out", "ruled_out", "RuledOut[]"), ("still_open", "still_open", "StillOpen[]")];
    let status = ("status", "\"ok\"", "Always `ok`: an error is thrown, not returned.");
    output(&mut out, &source, "Report", "Report", &report, &[status]);
    out.truncate(out.trim_end().len());
    out.push('\n');
    out
}

#[test]
fn the_committed_types_are_those_of_the_source() {
    let path = root().join("wasm/js/types.ts");
    let made = generate();
    if std::env::var_os("RIMEWISE_WRITE").is_some() {
        std::fs::write(&path, &made).expect("wasm/js is writable");
    }
    let committed = std::fs::read_to_string(&path).unwrap_or_default();
    assert!(made == committed, "wasm/js/types.ts is out of date: run with RIMEWISE_WRITE=1");
}
