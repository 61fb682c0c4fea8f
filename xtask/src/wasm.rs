//! From Rust to what the browser loads: compile, fit with JavaScript, optimise.

use std::path::{Path, PathBuf};
use std::process::Command;

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

/// A program of the page: JavaScript that loads it, and its WebAssembly.
pub struct Program {
    /// The ES module whose default export starts the program.
    pub script: Vec<u8>,
    /// The module that the script instantiates.
    pub wasm: Vec<u8>,
}

/// The page's two programs.
pub struct Programs {
    /// The start page and the check: loaded with the page.
    pub check: Program,
    /// All other pages: loaded when one of them is first opened.
    pub rooms: Program,
    /// Whether their size has been optimised.
    pub optimised: bool,
}

/// Compiles the page for release and fits it for the browser.
pub fn programs(target: &WasmTarget) -> Result<Programs> {
    say::step("Compile the page (release)");
    let mut cargo = target.cargo("build");
    run::shown(
        "Compiling the page",
        cargo.args(["--release", "--package", "self-check-app", "--bins"]),
    )?;
    let folder = target.target_dir().join(WASM).join("release");

    say::step("Fit it with its JavaScript, optimise its size");
    let wasm_opt = node::wasm_opt();
    let program = |name: &str| -> Result<Program> {
        let (script, fitted) = fit(&folder.join(format!("{name}.wasm")))?;
        let wasm = match &wasm_opt {
            Some(program) => optimise(program, &fitted)?,
            None => std::fs::read(&fitted)?,
        };
        Ok(Program { script, wasm })
    };
    Ok(Programs {
        check: program("check")?,
        rooms: program("rooms")?,
        optimised: wasm_opt.is_some(),
    })
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
            "A dependency brings JavaScript of its own. A program is one script and one module: leave that dependency out."
        );
    }
    let name = compiled
        .file_name()
        .context("a compiled program is a file")?;
    let fitted = project::tools().join("fitted").join(name);
    std::fs::create_dir_all(project::tools().join("fitted"))?;
    std::fs::write(&fitted, output.wasm_mut().emit_wasm())
        .with_context(|| format!("cannot write {}", fitted.display()))?;
    Ok((output.js().into(), fitted))
}

fn optimise(wasm_opt: &Path, fitted: &Path) -> Result<Vec<u8>> {
    let optimised = fitted.with_extension("optimised.wasm");
    let mut command = Command::new("node");
    command
        .arg(wasm_opt)
        .args(["-Oz"])
        .args(FEATURES)
        .arg(fitted)
        .arg("-o")
        .arg(&optimised);
    run::shown("wasm-opt", &mut command)?;
    let (before, after) = (std::fs::read(fitted)?, std::fs::read(&optimised)?);
    say::note(format!(
        "{} KB became {} KB",
        before.len() / 1000,
        after.len() / 1000
    ));
    Ok(after)
}
