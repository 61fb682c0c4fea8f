//! The program that runs Rust's WebAssembly tests in a browser, built once for each version.

use std::path::PathBuf;

use anyhow::{Context, Result};

use crate::{project, run, say};

/// The test runner that speaks the locked wasm-bindgen's protocol. Building it takes about two minutes, so it is kept
/// outside the clone, where the next clone finds it. Its own lock file is not followed: a version it names may have been
/// withdrawn from the registry.
pub fn find_or_build() -> Result<PathBuf> {
    say::step("A runner for WebAssembly tests");
    let version = project::locked_version("wasm-bindgen")?;
    let home = cache()?.join(format!("wasm-bindgen-cli-{version}"));
    let runner = home.join("bin").join(format!(
        "wasm-bindgen-test-runner{}",
        std::env::consts::EXE_SUFFIX
    ));
    if runner.exists() {
        say::note(format!("wasm-bindgen-test-runner {version}"));
        return Ok(runner);
    }
    say::note(format!(
        "Building wasm-bindgen-test-runner {version}: about two minutes, once"
    ));
    let mut cargo = project::cargo();
    cargo
        .args([
            "install",
            "wasm-bindgen-cli",
            "--bin",
            "wasm-bindgen-test-runner",
        ])
        .args(["--version", &version, "--root"])
        .arg(&home);
    run::shown("Building wasm-bindgen-test-runner", &mut cargo)?;
    Ok(runner)
}

fn cache() -> Result<PathBuf> {
    let base = std::env::var_os("XDG_CACHE_HOME")
        .filter(|value| !value.is_empty())
        .map(PathBuf::from)
        .or_else(|| std::env::home_dir().map(|home| home.join(".cache")))
        .context("there is no home folder to keep the built tool in; set XDG_CACHE_HOME")?;
    Ok(base.join("house-key-self-check"))
}
