//! The project's own commands: `cargo xtask help` lists them.
//!
//! Everything a fresh machine lacks is found or fetched here, step by step and by name, so that git, a C compiler and
//! stable Rust are enough to build, serve and test the page.

mod apt;
mod browser;
mod budget;
mod check;
mod deny;
mod dist;
mod engines;
mod exiftool;
mod hosting;
mod names;
mod node;
mod offline;
mod one_file;
mod page;
mod policy;
mod project;
mod python;
mod report;
mod rivals;
mod run;
mod say;
mod serve;
mod system_rust;
mod tool;
mod toolchain;
mod twice;
mod wasm;
mod wasm_runner;

use std::process::ExitCode;

use anyhow::Result;

const HELP: &str = "\
cargo xtask serve [--port N]   build the page and serve it at http://127.0.0.1:8080/ (or at port N)
cargo xtask build              leave the finished site in dist/
cargo xtask test [STEP ...]    run every check, or only the named steps; sets up the browser it needs
cargo xtask test journeys -- NAME
                               run the browser journeys whose name contains NAME
cargo xtask test engines       walk through the site in Chromium, Firefox and WebKit alike
cargo xtask screenshots        take the pictures in docs/pictures/ from the real page
cargo xtask bench [PART ...]   measure the core and the page, and hold them to what they promise of their speed
cargo xtask bench --page       measure the page in the browser beside two others, as a table
cargo xtask bench --pictures   measure the page on large pictures beside the browser's own decoding
cargo xtask tables             compute the tables of readings anew and write them to core/src/reading/tables.rs
cargo xtask help               this text

Steps of test: format, lint, lint-page, deny, native, outside, wasm, build, twice, journeys; and engines,
which is run when it is named alone.
Parts of bench: core (natively), browser (the core in Chromium), board (the finished page with a small estate),
frames (the slider of the distance page).";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    match command(&arguments) {
        Ok(code) => code,
        Err(error) => {
            say::trouble(&error);
            ExitCode::FAILURE
        }
    }
}

fn command(arguments: &[String]) -> Result<ExitCode> {
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match words.as_slice() {
        [] | ["help" | "--help" | "-h"] => println!("{HELP}"),
        ["serve", options @ ..] => serve::serve(serve::port(options)?)?,
        ["build"] => {
            dist::build(&toolchain::WasmTarget::find_or_install()?)?;
        }
        // The second build of `twice`: what the first weighs, this one does.
        ["build", "--unweighed"] => {
            dist::build_unweighed(&toolchain::WasmTarget::find_or_install()?)?;
        }
        ["test", options @ ..] => return check::test(options),
        ["screenshots"] => check::take_pictures()?,
        ["bench", "--page"] => check::bench::page()?,
        ["bench", "--pictures"] => check::bench::pictures()?,
        ["bench", parts @ ..] => check::bench::all(parts)?,
        ["tables"] => check::bench::tables()?,
        _ => {
            return Err(say::advice(
                format!("There is no command `{}`.", words.join(" ")),
                format!("These are the commands:\n\n{HELP}"),
            ));
        }
    }
    Ok(ExitCode::SUCCESS)
}
