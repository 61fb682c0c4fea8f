//! From Rust to what the browser loads: compile, fit with JavaScript, optimise.

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use anyhow::{Context, Result, bail, ensure};
use wasm_bindgen_cli_support::Bindgen;

use crate::names::Names;
use crate::project::{self, WASM};
use crate::toolchain::WasmTarget;
use crate::{node, page, run, say};

/// What rustc's WebAssembly may use; the optimiser has to be told, since a stripped module does not say so itself.
const FEATURES: [&str; 6] = [
    "--enable-bulk-memory",
    "--enable-multivalue",
    "--enable-mutable-globals",
    "--enable-nontrapping-float-to-int",
    "--enable-reference-types",
    "--enable-sign-ext",
];

/// How the optimiser makes a module small. What it puts in the place of a call, if that is the only one, compresses worse
/// than the call. The last option lets it count on addresses below 1024 not being used: there lies the far end of the
/// stack.
const SMALL: [&str; 4] = [
    "-Oz",
    "--one-caller-inline-max-function-size=0",
    "--low-memory-unused",
    "--minify-imports-and-exports-and-modules",
];

/// A program of the page: JavaScript that loads it, and its WebAssembly.
pub struct Program {
    /// The ES module whose default export starts the program.
    pub script: String,
    /// The same as a plain script, for a page that has everything inside: it gives `wasm_bindgen`.
    pub plain_script: String,
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
    Ok(Programs {
        check: program(&folder.join("check.wasm"), wasm_opt.as_deref())?,
        rooms: program(&folder.join("rooms.wasm"), wasm_opt.as_deref())?,
        optimised: wasm_opt.is_some(),
    })
}

/// Fits one compiled program for the browser, and makes it small where the optimiser is there.
pub fn program(compiled: &Path, wasm_opt: Option<&Path>) -> Result<Program> {
    let fitted = fit(compiled)?;
    match wasm_opt {
        Some(wasm_opt) => fitted.optimised(wasm_opt),
        None => fitted.unoptimised(),
    }
}

/// A program before its size is optimised.
struct Fitted {
    script: String,
    plain_script: String,
    module: PathBuf,
}

/// Runs the bindings generator in memory, once for each kind of script.
fn fit(compiled: &Path) -> Result<Fitted> {
    let (script, module) = bind(compiled, |bindgen| bindgen.web(true))?;
    let (plain_script, same) = bind(compiled, |bindgen| bindgen.no_modules(true))?;
    ensure!(
        module == same,
        "the two kinds of script do not go with one module any more"
    );
    let name = compiled
        .file_name()
        .context("a compiled program is a file")?;
    let fitted = project::tools().join("fitted").join(name);
    std::fs::create_dir_all(project::tools().join("fitted"))?;
    std::fs::write(&fitted, module)
        .with_context(|| format!("cannot write {}", fitted.display()))?;
    Ok(Fitted {
        script,
        plain_script,
        module: fitted,
    })
}

fn bind(
    compiled: &Path,
    kind: impl FnOnce(&mut Bindgen) -> Result<&mut Bindgen>,
) -> Result<(String, Vec<u8>)> {
    let mut bindgen = Bindgen::new();
    let mut output = kind(bindgen.input_path(compiled))?
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
    let script = page::squeeze_script(output.js());
    Ok((script, output.wasm_mut().emit_wasm()))
}

impl Fitted {
    fn unoptimised(self) -> Result<Program> {
        Ok(Program {
            wasm: std::fs::read(&self.module)?,
            script: self.script,
            plain_script: self.plain_script,
        })
    }

    /// Makes the module small, and the names that it shares with its scripts.
    fn optimised(self, wasm_opt: &Path) -> Result<Program> {
        let optimised = self.module.with_extension("optimised.wasm");
        let mut command = Command::new("node");
        command
            .arg(wasm_opt)
            .args(SMALL)
            .args(FEATURES)
            .arg(&self.module)
            .arg("-o")
            .arg(&optimised)
            .stderr(Stdio::inherit());
        let told = run::answer(&mut command).with_context(|| {
            format!("wasm-opt could not make {} smaller", self.module.display())
        })?;
        let names = Names::read(&told)?;
        let (before, wasm) = (std::fs::read(&self.module)?, std::fs::read(&optimised)?);
        say::note(format!(
            "{} KB became {} KB",
            before.len() / 1000,
            wasm.len() / 1000
        ));
        Ok(Program {
            script: names.put_into(&self.script)?,
            plain_script: names.put_into(&self.plain_script)?,
            wasm,
        })
    }
}
