//! The program that runs Rust's WebAssembly tests in a browser.

use std::path::PathBuf;

use anyhow::Result;

use crate::tool::Tool;
use crate::{project, say};

/// The test runner that speaks the locked wasm-bindgen's protocol. Its own lock file is not followed: a version it names
/// may have been withdrawn from the registry.
pub fn find_or_build() -> Result<PathBuf> {
    say::step("A runner for WebAssembly tests");
    Tool {
        package: "wasm-bindgen-cli",
        program: "wasm-bindgen-test-runner",
        version: &project::locked_version("wasm-bindgen")?,
        options: &["--debug"],
        takes: "a minute",
    }
    .find_or_build()
}
