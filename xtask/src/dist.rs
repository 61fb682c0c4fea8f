//! The finished site in `dist/`: names by content, the filled page, and sums to check a copy by.

use std::path::Path;

use anyhow::{Context, Result};
pub use self_check_site::Files;
use self_check_site::HEADERS;
use sha2::{Digest, Sha256};

use crate::toolchain::WasmTarget;
use crate::{budget, hosting, node, offline, one_file, page, policy, project, say, wasm};

/// Style sheets of what comes first, in the order they build on each other.
const STYLES: [&str; 5] = ["tokens", "base", "components", "paper", "print"];

/// Style sheets of what only the second program shows. They stand before the others.
const ROOMS_STYLES: [&str; 2] = ["rooms", "keys"];

/// Starts the program, or shows the list when it cannot; lives in `public/` and is named by content like the rest.
const BOOT: &str = "boot.js";

/// Answers for the page where there is no network; its name stays, since a browser knows a worker by it.
pub const WORKER: &str = "worker.js";

/// The page itself.
pub const PAGE: &str = "index.html";

/// The sums of all files.
pub const SUMS: &str = "SHA256SUMS";

/// What the names of the second program's files begin with.
pub const ROOMS: &str = "rooms";

/// By what the site was made.
const BUILT_WITH: &str = "BUILT_WITH.txt";

/// What stands in the place of an optimiser that was not there.
const NO_OPTIMISER: &str = "wasm-opt: none";

/// Builds the page, leaves the site in `dist/` and holds it to what it may weigh.
pub fn build(target: &WasmTarget) -> Result<Files> {
    let files = build_unweighed(target)?;
    budget::hold(&files, is_optimised(&files))?;
    Ok(files)
}

/// Builds the page and leaves the site in `dist/`.
pub fn build_unweighed(target: &WasmTarget) -> Result<Files> {
    let programs = wasm::programs(target)?;

    say::step("Lay out the site");
    let built_with = built_with(target, programs.optimised)?;
    let files = lay_out(programs, built_with)?;
    write(&files, &project::root().join("dist"))?;
    say::note("The site is in dist/. Any web server can serve it; it needs nothing else.");
    Ok(files)
}

/// Whether the size of its programs was optimised.
pub fn is_optimised(files: &Files) -> bool {
    let told = files
        .get(BUILT_WITH)
        .map(|file| String::from_utf8_lossy(file));
    told.is_some_and(|told| !told.contains(NO_OPTIMISER))
}

/// Beside the source, all that the bytes depend on.
fn built_with(target: &WasmTarget, is_optimised: bool) -> Result<String> {
    let bindgen = project::locked_version("wasm-bindgen")?;
    let optimiser = match is_optimised {
        true => format!("wasm-opt: {}", node::wasm_opt_version()?),
        false => NO_OPTIMISER.to_owned(),
    };
    Ok(format!(
        "compiler: {}\nwasm-bindgen: {bindgen}\n{optimiser}\n",
        target.version()?
    ))
}

fn lay_out(programs: wasm::Programs, built_with: String) -> Result<Files> {
    let mut files = public_files()?;
    let boot = take_script(&mut files, BOOT)?;
    let worker = take_script(&mut files, WORKER)?;
    let template = std::fs::read_to_string(project::root().join("index.html"))
        .context("cannot read index.html")?;
    let style = style_sheet(&STYLES)?;
    let rooms_style = style_sheet(&ROOMS_STYLES)?;
    let both = format!("{rooms_style}{style}");
    let texts = [&template, &both, &boot, &worker, policy::CONTENT_SECURITY];
    let build = build_number(&files, &texts, &programs);
    let whole = one_file::page(&template, &both, &boot, &programs, &build)?;

    let mut add = |stem: &str, ending: &str, content: Vec<u8>| {
        let sum = Sha256::digest(&content);
        let name = format!("{stem}-{}.{ending}", &hex(&sum)[..16]);
        let asset = Asset {
            name: name.clone(),
            integrity: integrity(&content),
        };
        files.insert(name, content);
        asset
    };
    let style = add("style", "css", style.into_bytes());
    let rooms_style = add(ROOMS, "css", rooms_style.into_bytes());
    let boot = add("boot", "js", boot.into_bytes());
    let mut program = |stem: &str, program: wasm::Program| ProgramFiles {
        script: add(stem, "js", program.script.into_bytes()),
        wasm: add(stem, "wasm", program.wasm),
    };
    let check = program("check", programs.check);
    let rooms = program(ROOMS, programs.rooms);

    let pieces = [
        ("policy", policy::meta(policy::CONTENT_SECURITY)),
        (
            "style",
            format!(
                "<link rel=\"stylesheet\" href=\"{}\" integrity=\"{}\">",
                style.name, style.integrity
            ),
        ),
        (
            "program",
            program_tags(&boot, &check, &rooms, &rooms_style, &build),
        ),
    ];
    files.insert(PAGE.into(), page::fill(&template, &pieces)?.into_bytes());
    // The worker keeps all that stands here up to now.
    files.insert(
        WORKER.into(),
        offline::worker(&worker, &files)?.into_bytes(),
    );
    files.insert(one_file::name(&build), whole.into_bytes());
    files.insert(BUILT_WITH.into(), built_with.into_bytes());
    files.insert(SUMS.into(), sums(&files).into_bytes());
    // Not among the sums: a host reads it and serves it to nobody, and may need other paths in it.
    files.insert(HEADERS.into(), hosting::headers_file(&files).into_bytes());
    Ok(files)
}

/// Takes a script out of what `public/` holds, without its comments and indents.
fn take_script(files: &mut Files, name: &str) -> Result<String> {
    let script = files
        .remove(name)
        .with_context(|| format!("public/{name} is missing"))?;
    let script = String::from_utf8(script).with_context(|| format!("public/{name} is no text"))?;
    Ok(page::squeeze_script(&script))
}

/// Tells builds apart: the first digits of the sum of all that a site is made from. It stands in the page, so it cannot be
/// the sum of the page.
fn build_number(public: &Files, texts: &[&str], programs: &wasm::Programs) -> String {
    let mut sum = Sha256::new();
    let mut add = |part: &[u8]| {
        sum.update((part.len() as u64).to_le_bytes());
        sum.update(part);
    };
    for (name, content) in public {
        add(name.as_bytes());
        add(content);
    }
    for text in texts {
        add(text.as_bytes());
    }
    for program in [&programs.check, &programs.rooms] {
        add(program.script.as_bytes());
        add(program.plain_script.as_bytes());
        add(&program.wasm);
    }
    hex(&sum.finalize())[..8].to_owned()
}

struct Asset {
    name: String,
    integrity: String,
}

struct ProgramFiles {
    script: Asset,
    wasm: Asset,
}

/// The first program is asked for at once, beside the script that starts it. The second, the worker and the edition in
/// one file are only named: the browser fetches the second when one of its pages is first opened, and the others when a
/// person asks for them.
fn program_tags(
    boot: &Asset,
    check: &ProgramFiles,
    rooms: &ProgramFiles,
    rooms_style: &Asset,
    build: &str,
) -> String {
    format!(
        "<link rel=\"modulepreload\" href=\"{script}\" integrity=\"{script_sum}\">\n\
         <link rel=\"preload\" href=\"{wasm}\" as=\"fetch\" type=\"application/wasm\" crossorigin>\n\
         <script src=\"{boot}\" integrity=\"{boot_sum}\" data-script=\"{script}\" data-wasm=\"{wasm}\" \
         data-rooms-script=\"{rooms_script}\" data-rooms-wasm=\"{rooms_wasm}\" data-rooms-style=\"{rooms_style}\" \
         data-worker=\"{WORKER}\" data-one-file=\"{one_file}\" data-build=\"{build}\"></script>",
        script = check.script.name,
        script_sum = check.script.integrity,
        wasm = check.wasm.name,
        rooms_script = rooms.script.name,
        rooms_wasm = rooms.wasm.name,
        rooms_style = rooms_style.name,
        boot = boot.name,
        boot_sum = boot.integrity,
        one_file = one_file::name(build),
    )
}

fn style_sheet(names: &[&str]) -> Result<String> {
    let folder = project::root().join("app/styles");
    let mut sheet = String::new();
    for name in names {
        let path = folder.join(format!("{name}.css"));
        let css = std::fs::read_to_string(&path)
            .with_context(|| format!("cannot read {}", path.display()))?;
        sheet.push_str(&page::squeeze_style(&css));
        sheet.push('\n');
    }
    Ok(sheet)
}

fn public_files() -> Result<Files> {
    self_check_site::read(&project::root().join("public")).context("cannot read public/")
}

fn write(files: &Files, folder: &Path) -> Result<()> {
    if folder.exists() {
        std::fs::remove_dir_all(folder).context("cannot clear dist/")?;
    }
    for (name, content) in files {
        let path = folder.join(name);
        if let Some(parent) = path.parent() {
            std::fs::create_dir_all(parent)?;
        }
        std::fs::write(&path, content)
            .with_context(|| format!("cannot write {}", path.display()))?;
    }
    Ok(())
}

/// Whether a file's name carries the sum of what is in it: sixteen digits after its last hyphen.
pub fn is_named_by_content(name: &str) -> bool {
    let stem = name.rsplit_once('.').map_or(name, |(stem, _)| stem);
    stem.rsplit_once('-').is_some_and(|(_, sum)| {
        sum.len() == 16 && sum.bytes().all(|digit| digit.is_ascii_hexdigit())
    })
}

/// One line a file, as `sha256sum --check` reads them.
fn sums(files: &Files) -> String {
    files
        .iter()
        .map(|(name, content)| format!("{}  {name}\n", hex(&Sha256::digest(content))))
        .collect()
}

/// What a page says of a file that it loads, so that the browser refuses any other.
pub fn integrity(content: &[u8]) -> String {
    format!("sha256-{}", base64(&Sha256::digest(content)))
}

pub fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

pub fn base64(bytes: &[u8]) -> String {
    const DIGITS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let mut text = String::new();
    for group in bytes.chunks(3) {
        let bits = group
            .iter()
            .fold(0_u32, |bits, byte| bits << 8 | u32::from(*byte))
            << (8 * (3 - group.len()));
        for place in 0..4 {
            let digit = DIGITS[(bits >> (18 - 6 * place) & 63) as usize];
            text.push(if place > group.len() {
                '='
            } else {
                char::from(digit)
            });
        }
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn base64_agrees_with_the_vectors_of_rfc_4648() {
        for (bytes, text) in [
            ("", ""),
            ("f", "Zg=="),
            ("fo", "Zm8="),
            ("foo", "Zm9v"),
            ("foobar", "Zm9vYmFy"),
        ] {
            assert_eq!(base64(bytes.as_bytes()), text);
        }
    }

    #[test]
    fn whatever_is_changed_makes_another_build() {
        let program = |script: &str| wasm::Program {
            script: script.to_owned(),
            plain_script: String::new(),
            wasm: Vec::new(),
        };
        let number = |icon: &str, text: &str, script: &str| {
            let public = Files::from([("icon.svg".to_owned(), icon.into())]);
            let programs = wasm::Programs {
                check: program(script),
                rooms: program(""),
                optimised: true,
            };
            build_number(&public, &[text], &programs)
        };
        let one = number("a", "b", "c");
        assert_eq!(one.len(), 8);
        assert_eq!(one, number("a", "b", "c"));
        for other in [
            number("x", "b", "c"),
            number("a", "x", "c"),
            number("a", "b", "x"),
        ] {
            assert_ne!(one, other);
        }
    }

    #[test]
    fn name_by_content_ends_in_a_sum() {
        assert!(is_named_by_content("check-0123456789abcdef.wasm"));
        for name in [
            "index.html",
            "worker.js",
            "house-key-self-check-0.1.0-01234567.html",
            "a-0123456789abcde.js",
        ] {
            assert!(!is_named_by_content(name), "{name}");
        }
    }

    #[test]
    fn sums_are_lines_that_sha256sum_reads() {
        // The sum of three bytes "abc" is the example of FIPS 180-4.
        let files = Files::from([("a.txt".to_owned(), b"abc".to_vec())]);
        assert_eq!(
            sums(&files),
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad  a.txt\n"
        );
    }

    #[test]
    fn program_is_named_once_for_each_use() {
        let asset = |name: &str| Asset {
            name: name.into(),
            integrity: "sha256-x".into(),
        };
        let program = |name: &str| ProgramFiles {
            script: asset(&format!("{name}-2.js")),
            wasm: asset(&format!("{name}-3.wasm")),
        };
        let tags = program_tags(
            &asset("boot-1.js"),
            &program("check"),
            &program(ROOMS),
            &asset("rooms-4.css"),
            "5",
        );
        assert!(
            tags.contains("data-script=\"check-2.js\" data-wasm=\"check-3.wasm\""),
            "{tags}"
        );
        assert!(
            tags.contains("data-rooms-script=\"rooms-2.js\" data-rooms-wasm=\"rooms-3.wasm\" data-rooms-style=\"rooms-4.css\""),
            "{tags}"
        );
        assert_eq!(
            tags.matches("rooms-").count() - tags.matches("data-rooms-").count(),
            3,
            "the second program is named and not asked for: {tags}"
        );
        assert!(
            tags.contains("data-worker=\"worker.js\""),
            "so is the worker: {tags}"
        );
        assert!(!tags.contains(" style="), "the policy refuses inline style");
    }
}
