//! The finished site in `dist/`: names by content, the filled page, and sums to check a copy by.

use std::collections::BTreeMap;
use std::path::Path;

use anyhow::{Context, Result};
use sha2::{Digest, Sha256};

use crate::toolchain::WasmTarget;
use crate::{budget, page, policy, project, say, wasm};

/// Style sheets in the order they build on each other.
const STYLES: [&str; 5] = ["tokens", "base", "components", "paper", "print"];

/// What the second program's pages use beside these; it comes with that program.
const ROOM_STYLES: [&str; 1] = ["rooms"];

/// Starts the program, or shows the list when it cannot; lives in `public/` and is named by content like the rest.
const BOOT: &str = "boot.js";

/// What the names of the second program's files begin with.
pub const ROOMS: &str = "rooms";

/// The files of a site, by their path in it.
pub type Files = BTreeMap<String, Vec<u8>>;

/// Builds the page and leaves the site in `dist/`.
pub fn build(target: &WasmTarget) -> Result<Files> {
    let programs = wasm::programs(target)?;

    say::step("Lay out the site");
    let optimised = programs.optimised;
    let files = lay_out(programs)?;
    write(&files, &project::root().join("dist"))?;
    budget::hold(&files, optimised)?;
    say::note("The site is in dist/. Any web server can serve it; it needs nothing else.");
    Ok(files)
}

fn lay_out(programs: wasm::Programs) -> Result<Files> {
    let mut files = public_files()?;
    let boot = files
        .remove(BOOT)
        .with_context(|| format!("public/{BOOT} is missing"))?;
    let template = std::fs::read_to_string(project::root().join("index.html"))
        .context("cannot read index.html")?;

    let mut add = |stem: &str, ending: &str, content: Vec<u8>| {
        let sum = Sha256::digest(&content);
        let name = format!("{stem}-{}.{ending}", &hex(&sum)[..16]);
        let asset = Asset {
            name: name.clone(),
            integrity: format!("sha256-{}", base64(&sum)),
        };
        files.insert(name, content);
        asset
    };
    let style = add("style", "css", style_sheet(&STYLES)?.into_bytes());
    let rooms_style = add(ROOMS, "css", style_sheet(&ROOM_STYLES)?.into_bytes());
    let boot = add("boot", "js", boot);
    let mut program = |stem: &str, program: wasm::Program| ProgramFiles {
        script: add(stem, "js", program.script),
        wasm: add(stem, "wasm", program.wasm),
    };
    let check = program("check", programs.check);
    let rooms = program(ROOMS, programs.rooms);

    let pieces = [
        (
            "policy",
            format!(
                "<meta http-equiv=\"Content-Security-Policy\" content=\"{}\">",
                policy::CONTENT_SECURITY
            ),
        ),
        (
            "style",
            format!(
                "<link rel=\"stylesheet\" href=\"{}\" integrity=\"{}\">",
                style.name, style.integrity
            ),
        ),
        ("program", program_tags(&boot, &check, &rooms, &rooms_style)),
    ];
    files.insert(
        "index.html".into(),
        page::fill(&template, &pieces)?.into_bytes(),
    );
    let sums = sums(&files);
    files.insert("SHA256SUMS".into(), sums.into_bytes());
    Ok(files)
}

struct Asset {
    name: String,
    integrity: String,
}

struct ProgramFiles {
    script: Asset,
    wasm: Asset,
}

/// The first program is asked for at once, beside the script that starts it. The second is only named: the browser
/// fetches it when one of its pages is first opened.
fn program_tags(
    boot: &Asset,
    check: &ProgramFiles,
    rooms: &ProgramFiles,
    rooms_style: &Asset,
) -> String {
    format!(
        "<link rel=\"modulepreload\" href=\"{script}\" integrity=\"{script_sum}\">\n\
         <link rel=\"preload\" href=\"{wasm}\" as=\"fetch\" type=\"application/wasm\" crossorigin>\n\
         <script src=\"{boot}\" integrity=\"{boot_sum}\" data-script=\"{script}\" data-wasm=\"{wasm}\" \
         data-rooms-script=\"{rooms_script}\" data-rooms-wasm=\"{rooms_wasm}\" data-rooms-style=\"{rooms_style}\"></script>",
        script = check.script.name,
        script_sum = check.script.integrity,
        wasm = check.wasm.name,
        rooms_script = rooms.script.name,
        rooms_wasm = rooms.wasm.name,
        rooms_style = rooms_style.name,
        boot = boot.name,
        boot_sum = boot.integrity,
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
    let mut files = Files::new();
    collect(&project::root().join("public"), "", &mut files)?;
    Ok(files)
}

/// Reads a folder and all below it; paths within the site are joined by `/`.
fn collect(folder: &Path, prefix: &str, files: &mut Files) -> Result<()> {
    let entries =
        std::fs::read_dir(folder).with_context(|| format!("cannot read {}", folder.display()))?;
    for entry in entries {
        let entry = entry?;
        let name = format!("{prefix}{}", entry.file_name().to_string_lossy());
        if entry.file_type()?.is_dir() {
            collect(&entry.path(), &format!("{name}/"), files)?;
        } else {
            files.insert(name, std::fs::read(entry.path())?);
        }
    }
    Ok(())
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

/// One line a file, as `sha256sum --check` reads them.
fn sums(files: &Files) -> String {
    files
        .iter()
        .map(|(name, content)| format!("{}  {name}\n", hex(&Sha256::digest(content))))
        .collect()
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

fn base64(bytes: &[u8]) -> String {
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
        );
        assert!(
            tags.contains("data-script=\"check-2.js\" data-wasm=\"check-3.wasm\""),
            "{tags}"
        );
        assert!(
            tags.contains("data-rooms-script=\"rooms-2.js\" data-rooms-wasm=\"rooms-3.wasm\""),
            "{tags}"
        );
        assert!(tags.contains("data-rooms-style=\"rooms-4.css\""), "{tags}");
        assert_eq!(
            tags.matches("rooms-").count() - tags.matches("data-rooms-").count(),
            3,
            "the second program is named and not asked for: {tags}"
        );
        assert!(!tags.contains(" style="), "the policy refuses inline style");
    }
}
