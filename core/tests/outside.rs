//! Pictures and notes made by programs of other people: NumPy, SciPy and scikit-image render and
//! blur, exiftool writes. `cargo xtask test outside` brings them and runs these; a plain `cargo test`
//! leaves them out.
#![allow(clippy::unwrap_used)]

#[path = "outside/notes.rs"]
mod notes;
#[path = "outside/rendered.rs"]
mod rendered;

/// A program named by an environment variable.
fn program(variable: &str) -> std::process::Command {
    let name = std::env::var(variable)
        .unwrap_or_else(|_| panic!("{variable} is not set: run `cargo xtask test outside`"));
    std::process::Command::new(name)
}

/// A folder of its own for this run, emptied first.
fn folder(name: &str) -> std::path::PathBuf {
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).unwrap();
    folder
}
