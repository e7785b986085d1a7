//! Lists the committed tables, and writes a C program that calls every function of the header with drawn arguments.

use std::fmt::Write;
use std::path::{Path, PathBuf};
use std::{env, fs};

fn main() {
    let top = PathBuf::from(env::var("CARGO_MANIFEST_DIR").expect("set by cargo")).join("../..");
    let out = PathBuf::from(env::var("OUT_DIR").expect("set by cargo"));
    tables(&top, &out);

    let header = top.join("ffi/include/rimewise.h");
    println!("cargo::rerun-if-changed={}", header.display());
    println!("cargo::rerun-if-changed=src/c_calls.h");
    let text = fs::read_to_string(&header).expect("the C header");
    let text: String =
        text.lines().map(|line| line.split("//").next().unwrap_or("").to_owned() + "\n").collect();
    let program = program(&text);
    fs::write(out.join("c_calls.c"), program).expect("a writable folder");
    cc::Build::new()
        .file(out.join("c_calls.c"))
        .include(top.join("ffi/include"))
        .include("src")
        .flag_if_supported("-ffp-contract=off")
        .flag_if_supported("-Wno-unused-function")
        .compile("rimewise_fuzz_c");
}

fn tables(top: &Path, out: &Path) {
    let folder = top.join("core/src/refrigerant/data");
    println!("cargo::rerun-if-changed={}", folder.display());
    let mut files: Vec<PathBuf> =
        fs::read_dir(&folder).expect("the folder of tables").flatten().map(|entry| entry.path()).collect();
    files.retain(|path| path.extension().is_some_and(|e| e == "table"));
    files.sort();
    let mut list = String::from("[");
    for file in &files {
        write!(list, "include_bytes!({:?}), ", file.canonicalize().expect("there")).expect("memory");
    }
    fs::write(out.join("tables.rs"), list + "]").expect("a writable folder");
}

/// One parameter: its type without `struct` and spaces around stars, and its name.
struct Parameter {
    kind: String,
    name: String,
}

/// The functions of a header without comments: names and parameters.
fn functions(header: &str) -> Vec<(String, Vec<Parameter>)> {
    let mut found = Vec::new();
    for statement in header.split(';') {
        let Some(begin) = statement.find("RimewiseStatus rimewise_") else { continue };
        let statement = &statement[begin + "RimewiseStatus ".len()..];
        let Some((name, rest)) = statement.split_once('(') else { continue };
        let parameters = rest.trim_end().trim_end_matches(')').split(',').map(|p| {
            let p = p.split_whitespace().filter(|w| *w != "struct").collect::<Vec<_>>().join(" ");
            let at = p.rfind([' ', '*']).map_or(0, |n| n + 1);
            Parameter { kind: p[..at].replace(' ', ""), name: p[at..].to_owned() }
        });
        found.push((name.trim().to_owned(), parameters.collect()));
    }
    found
}

/// Whether a struct of the header begins with its own size.
fn sized(header: &str, name: &str) -> bool {
    let Some(at) = header.find(&format!("typedef struct {name} {{")) else { return false };
    let body = &header[at..];
    let first = body.split_once('{').and_then(|(_, rest)| rest.split(';').next()).unwrap_or("");
    first.split_whitespace().eq(["uint32_t", "size"])
}

/// The function that clears an input struct, if there is one.
fn clears<'a>(all: &'a [(String, Vec<Parameter>)], kind: &str) -> Option<&'a str> {
    all.iter()
        .find(|(name, parameters)| {
            name.ends_with("_clear") && parameters.first().is_some_and(|p| p.kind == format!("{kind}*"))
        })
        .map(|(name, _)| name.as_str())
}

fn program(header: &str) -> String {
    let all = functions(header);
    assert!(all.len() > 50, "only {} functions were read from the header", all.len());
    let mut c = String::from("#include \"rimewise.h\"\n#include \"c_calls.h\"\n\n");
    for (name, parameters) in &all {
        call(&mut c, header, &all, name, parameters);
    }
    c += "static const Call calls[] = {\n";
    for (name, _) in &all {
        writeln!(c, "    call_{name},").expect("memory");
    }
    c += "};\n\nconst char *rimewise_fuzz_c(const uint8_t *data, size_t length)\n{\n";
    c += "    return fuzz_calls(data, length, calls, sizeof calls / sizeof calls[0]);\n}\n";
    c
}

/// Writes the function that draws the arguments, calls, and checks what came out.
fn call(
    c: &mut String,
    header: &str,
    all: &[(String, Vec<Parameter>)],
    name: &str,
    parameters: &[Parameter],
) {
    let (mut draw, mut arguments, mut check) = (String::new(), Vec::new(), String::new());
    for p in parameters {
        let n = &p.name;
        let kind = p.kind.trim_start_matches("const").trim_end_matches('*');
        let (constant, pointer) = (p.kind.starts_with("const"), p.kind.ends_with('*'));
        match p.kind.as_str() {
            "float" => writeln!(draw, "    float {n} = draw_float();"),
            "int32_t" => writeln!(draw, "    int32_t {n} = draw_code();"),
            "uint64_t" => writeln!(draw, "    uint64_t {n} = draw_time();"),
            "uint32_t" if n == "capacity" => writeln!(draw, "    uint32_t {n} = draw_byte() % 65;"),
            "uint32_t" if n == "length" => writeln!(draw, "    uint32_t {n} = bytes_left();"),
            "uint32_t" if n == "size" => {
                let of = parameters[0].kind.trim_end_matches('*');
                writeln!(draw, "    uint32_t {n} = draw_size((uint32_t)sizeof({of}));")
            }
            "uint32_t" => writeln!(draw, "    uint32_t {n} = draw_byte();"),
            "constuint8_t*" => writeln!(draw, "    const uint8_t *{n} = bytes_here();"),
            "constchar*" => writeln!(draw, "    const char *{n} = draw_text();"),
            "constRimewiseTexts*" => writeln!(draw, "    const RimewiseTexts *{n} = draw_texts();"),
            "constRimewiseVisit*" => writeln!(draw, "    const RimewiseVisit *{n} = draw_visit();"),
            "constfloat*" => writeln!(draw, "    const float *{n} = draw_floats();"),
            "constchar**" => {
                writeln!(check, "    if (answered == 0 && out_{n} == 0) return \"{name}: {n} is NULL\";").expect("memory");
                writeln!(draw, "    const char *out_{n} = 0;\n    const char **{n} = draw_null() ? 0 : &out_{n};")
            }
            "char*" => writeln!(draw, "    char out_{n}[64];\n    char *{n} = draw_null() ? 0 : out_{n};"),
            "float*" => {
                writeln!(check, "    if (not_a_number(&out_{n}, 4)) return \"{name}: {n} is NaN\";").expect("memory");
                writeln!(draw, "    float out_{n} = 0;\n    float *{n} = draw_null() ? 0 : &out_{n};")
            }
            "int32_t*" | "uint32_t*" => writeln!(draw, "    {kind} out_{n} = 0;\n    {kind} *{n} = draw_null() ? 0 : &out_{n};"),
            "constRimewiseRefrigerant*" => writeln!(draw, "    const RimewiseRefrigerant *{n} = draw_refrigerant();"),
            "constRimewiseRefrigerant**" => {
                writeln!(draw, "    const RimewiseRefrigerant *out_{n} = 0;\n    const RimewiseRefrigerant **{n} = draw_null() ? 0 : &out_{n};")
            }
            "RimewiseMonitor*" | "constRimewiseMonitor*" => writeln!(draw, "    RimewiseMonitor *{n} = draw_monitor();"),
            "RimewiseWorkspace*" => writeln!(draw, "    static RimewiseWorkspace memory_{n};\n    RimewiseWorkspace *{n} = draw_null() ? 0 : &memory_{n};"),
            "RimewiseRefrigerantStorage*" => {
                writeln!(draw, "    static RimewiseRefrigerantStorage memory_{n};\n    RimewiseRefrigerantStorage *{n} = draw_null() ? 0 : &memory_{n};")
            }
            _ if pointer && kind.starts_with("Rimewise") => {
                // Room for an array wherever one may be meant.
                writeln!(draw, "    static {kind} memory_{n}[64];\n    {kind} *{n} = draw_null() ? 0 : memory_{n};").expect("memory");
                let size = if sized(header, kind) { format!("(uint32_t)sizeof({kind})") } else { "0".to_owned() };
                if constant {
                    if let Some(clear) = clears(all, kind) {
                        writeln!(draw, "    for (unsigned i = 0; i < 4; i++) {{ {clear}(&memory_{n}[i], sizeof({kind})); disturb(&memory_{n}[i], sizeof({kind}), {size}); }}")
                    } else {
                        writeln!(draw, "    fill(memory_{n}, sizeof({kind}), {size});")
                    }
                } else {
                    // What an input struct takes is NaN where it was not measured.
                    let input = clears(all, kind).is_some();
                    writeln!(draw, "    static {kind} before_{n}[64];\n    spoil(memory_{n}, sizeof memory_{n}, sizeof({kind}), {size});\n    memcpy(before_{n}, memory_{n}, sizeof memory_{n});").expect("memory");
                    if kind != "RimewiseInvalid" {
                        writeln!(check, "    if (answered != 0 && memcmp(before_{n}, memory_{n}, sizeof memory_{n})) return \"{name}: {n} was written and the status is not OK\";").expect("memory");
                    }
                    if input { Ok(()) } else { writeln!(check, "    if (answered == 0 && not_a_number(memory_{n}, sizeof memory_{n})) return \"{name}: {n} holds NaN\";") }
                }
            }
            other => panic!("{name}: a parameter of type {other} is not known to the fuzzer"),
        }
        .expect("memory");
        arguments.push(n.clone());
    }
    writeln!(c, "static const char *call_{name}(void)\n{{\n{draw}    RimewiseStatus answered = {name}({});\n    (void)answered;\n{check}    return 0;\n}}\n", arguments.join(", ")).expect("memory");
}
