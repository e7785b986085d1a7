//! The property compiler's command line.
//!
//! Without arguments: regenerates every table of the library and the error report. `blend FILE [FOLDER]`: compiles a
//! blend of your own into a table (`FOLDER/NAME.table`) and prints its error report. `fit`: fits the pairs without
//! published parameters anew to published bubble and dew points.

use rimewise_tables::{
    blend_file, compile, data::Library, fit, output, pseudo, published, report, stability,
    substance::Substance, uncertainty::Evidence,
};
use std::path::Path;
use std::process::ExitCode;

const USAGE: &str = "usage: rimewise-tables [fit | blend FILE [FOLDER]]";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    let result = match words.as_slice() {
        [] => regenerate(),
        ["fit"] => fit(),
        ["blend", file] => blend(file, "."),
        ["blend", file, folder] => blend(file, folder),
        _ => Err(USAGE.to_string()),
    };
    match result {
        Ok(()) => ExitCode::SUCCESS,
        Err(message) => {
            eprintln!("{message}");
            ExitCode::FAILURE
        }
    }
}

fn regenerate() -> Result<(), String> {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let library = Library::read(&here.join("data"))?;
    let evidence = Evidence::gather(&library)?;
    let all = compile::compile_all(&library, &evidence)?;
    output::write(&here.join("../core/src/refrigerant/data"), &all)?;
    let notes = pseudo::compare(&library, &evidence, &all)? + &stability::notes(&all);
    for (name, text) in [
        ("ERRORS.md", report::all(&all, &evidence, &notes)),
        ("PUBLISHED.md", published::report(&library, &evidence, &all)),
    ] {
        let path = here.join(name);
        std::fs::write(&path, text).map_err(|e| format!("{}: {e}", path.display()))?;
    }
    let missed: Vec<&str> = all
        .iter()
        .filter(|c| !report::misses(c).is_empty())
        .map(|c| c.substance.designation.as_str())
        .collect();
    println!("{} refrigerants, {} with a miss: {}", all.len(), missed.len(), missed.join(", "));
    Ok(())
}

fn fit() -> Result<(), String> {
    let data = Path::new(env!("CARGO_MANIFEST_DIR")).join("data");
    let found = fit::fit(&Library::read(&data)?)?;
    let text = serde_json::to_string_pretty(&found).map_err(|e| e.to_string())? + "\n";
    println!("{text}");
    let path = data.join("fitted.json");
    std::fs::write(&path, text).map_err(|e| format!("{}: {e}", path.display()))
}

fn blend(file: &str, folder: &str) -> Result<(), String> {
    let mut library = Library::read(&Path::new(env!("CARGO_MANIFEST_DIR")).join("data"))?;
    let text = std::fs::read_to_string(file).map_err(|e| format!("{file}: {e}"))?;
    let (blend, measured) = blend_file::read(&library, &text).map_err(|e| format!("{file}: {e}"))?;
    let evidence = Evidence::gather(&library)?;
    if !measured.is_empty() {
        let left = fit::tune(&mut library, &blend, &measured)?;
        let (count, factor) = (measured.len(), library.tuning);
        println!(
            "{count} measured points: gamma_T of the estimated pairs times {factor:.4}; {left:.2} K left (rms)"
        );
    }
    let compiled = compile::compile(&library, &evidence, Substance::blend(&library, &blend)?)?;
    let path = Path::new(folder).join(format!("{}.table", output::identifier(&blend.designation)));
    std::fs::write(&path, &compiled.bytes).map_err(|e| format!("{}: {e}", path.display()))?;
    println!("{}: {} bytes\n\n{}", path.display(), compiled.bytes.len(), report::one(&compiled, &evidence));
    Ok(())
}
