//! From Rust to what the browser loads: compile, fit with JavaScript, optimise.

use std::path::{Path, PathBuf};

use anyhow::{Context, Result, bail};
use wasm_bindgen_cli_support::Bindgen;

use crate::project::{self, WASM};
use crate::toolchain::WasmTarget;
use crate::{node, run, say};

/// What rustc's WebAssembly may use; the optimiser has to be told, since a stripped module does not say so itself.
const FEATURES: [&str; 6] = [
    "--enable-bulk-memory",
    "--enable-multivalue",
    "--enable-mutable-globals",
    "--enable-nontrapping-float-to-int",
    "--enable-reference-types",
    "--enable-sign-ext",
];

/// The page's program: JavaScript that loads it, and its WebAssembly.
pub struct Program {
    /// The ES module whose default export starts the program.
    pub script: Vec<u8>,
    /// The module that the script instantiates.
    pub wasm: Vec<u8>,
}

/// Compiles the page for release and fits it for the browser.
pub fn program(target: &WasmTarget) -> Result<Program> {
    say::step("Compile the page (release)");
    let mut cargo = target.cargo("build");
    run::shown(
        "Compiling the page",
        cargo.args(["--release", "--package", "self-check-app"]),
    )?;
    let compiled = target
        .target_dir()
        .join(WASM)
        .join("release/self-check-app.wasm");

    say::step("Fit it with its JavaScript");
    let (script, fitted) = fit(&compiled)?;

    say::step("Optimise its size");
    let wasm = optimise(&fitted)?;
    Ok(Program { script, wasm })
}

/// Runs the bindings generator in memory; gives the script, and the file with the fitted module.
fn fit(compiled: &Path) -> Result<(Vec<u8>, PathBuf)> {
    let mut output = Bindgen::new()
        .input_path(compiled)
        .web(true)?
        .typescript(false)
        .omit_default_module_path(true)
        .remove_name_section(true)
        .remove_producers_section(true)
        .generate_output()
        .context("the compiled page could not be fitted with its JavaScript")?;
    let has_no_snippets = output.snippets().values().all(Vec::is_empty);
    if !(has_no_snippets && output.npm_dependencies().is_empty()) {
        bail!(
            "A dependency brings JavaScript of its own. The page is one script and one module: leave that dependency out."
        );
    }
    let fitted = project::tools().join("fitted.wasm");
    std::fs::create_dir_all(project::tools())?;
    std::fs::write(&fitted, output.wasm_mut().emit_wasm())
        .with_context(|| format!("cannot write {}", fitted.display()))?;
    Ok((output.js().into(), fitted))
}

fn optimise(fitted: &Path) -> Result<Vec<u8>> {
    let before = std::fs::read(fitted)?;
    let Some(mut wasm_opt) = node::wasm_opt() else {
        return Ok(before);
    };
    let optimised = fitted.with_file_name("optimised.wasm");
    wasm_opt
        .args(["-Oz"])
        .args(FEATURES)
        .arg(fitted)
        .arg("-o")
        .arg(&optimised);
    run::shown("wasm-opt", &mut wasm_opt)?;
    let after = std::fs::read(&optimised)?;
    say::note(format!(
        "{} KB became {} KB",
        before.len() / 1000,
        after.len() / 1000
    ));
    Ok(after)
}
