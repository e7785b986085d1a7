//! Writes the JavaScript glue of a compiled module: `rimewise-bindgen IN.wasm OUT_DIR NAME`.

use std::process::ExitCode;

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [input, out_dir, name] = arguments.as_slice() else {
        eprintln!("usage: rimewise-bindgen IN.wasm OUT_DIR NAME");
        return ExitCode::from(2);
    };
    let mut bindgen = wasm_bindgen_cli_support::Bindgen::new();
    let made = bindgen
        .input_path(input)
        .out_name(name)
        .typescript(true)
        .omit_default_module_path(true)
        .remove_name_section(true)
        .remove_producers_section(true)
        .web(true)
        .and_then(|bindgen| bindgen.generate(out_dir));
    match made {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("rimewise-bindgen: {error:?}");
            ExitCode::FAILURE
        }
    }
}
