//! The worker that answers for the page where there is no network: `public/worker.js` with the sums of what it keeps.

use anyhow::{Result, bail};
use sha2::{Digest, Sha256};

use crate::dist::{Files, PAGE, hex, integrity};

const FILES_PLACE: &str = "{ \"fill\": \"files\" }";
const VERSION_PLACE: &str = "\"fill: version\"";

/// The worker for these files. The page itself is known to it as `./`: some servers lead from its name to its folder.
pub fn worker(template: &str, files: &Files) -> Result<String> {
    let lines: Vec<String> = files
        .iter()
        .map(|(name, content)| {
            let name = if name == PAGE { "./" } else { name };
            format!("\"{name}\": \"{}\"", integrity(content))
        })
        .collect();
    let list = format!("{{\n{}\n}}", lines.join(",\n"));
    // The worker's own text counts too: a worker that is mended stores nothing where the one before it does.
    let version = Sha256::new().chain_update(template).chain_update(&list);
    let version = format!("\"{}\"", &hex(&version.finalize())[..16]);
    let mut worker = template.to_owned();
    for (place, piece) in [(FILES_PLACE, list), (VERSION_PLACE, version)] {
        if worker.matches(place).count() != 1 {
            bail!("public/worker.js must have `{place}` exactly once");
        }
        worker = worker.replace(place, &piece);
    }
    Ok(worker)
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    const TEMPLATE: &str =
        "const FILES = { \"fill\": \"files\" };\nconst VERSION = \"fill: version\";";

    fn site(page: &str) -> Files {
        [("a-1.js", "x"), ("index.html", page)]
            .map(|(name, content)| (name.to_owned(), content.into()))
            .into()
    }

    #[test]
    fn every_file_stands_in_the_worker_with_its_sum() {
        let worker = worker(TEMPLATE, &site("abc")).unwrap();
        // The sum of three bytes "abc" is the example of FIPS 180-4.
        assert!(
            worker.contains("\"./\": \"sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=\""),
            "{worker}"
        );
        assert!(worker.contains("\"a-1.js\": \"sha256-"), "{worker}");
    }

    #[test]
    fn another_page_or_worker_is_another_version() {
        let version = |template: &str, page: &str| {
            let worker = worker(template, &site(page)).unwrap();
            worker.rsplit_once("VERSION = ").unwrap().1.to_owned()
        };
        assert_eq!(version(TEMPLATE, "abc"), version(TEMPLATE, "abc"));
        assert_ne!(version(TEMPLATE, "abc"), version(TEMPLATE, "abd"));
        let other = format!("// mended\n{TEMPLATE}");
        assert_ne!(version(TEMPLATE, "abc"), version(&other, "abc"));
    }

    #[test]
    fn worker_without_its_places_is_refused() {
        assert!(worker("const FILES = {};", &site("abc")).is_err());
    }

    #[test]
    fn manifest_names_icons_that_are_there_and_stays_within_the_site() {
        let public = crate::project::root().join("public");
        let manifest = std::fs::read(public.join("manifest.webmanifest")).unwrap();
        let manifest: serde_json::Value = serde_json::from_slice(&manifest).unwrap();
        for place in ["start_url", "scope"] {
            assert_eq!(
                manifest[place], "./",
                "{place}: the site may stand under any path"
            );
        }
        // It would be resolved against the origin, not against the manifest: two sites at one origin would share one.
        // Without one the address of the start page is taken.
        assert_eq!(manifest["id"], serde_json::Value::Null);
        let icons = manifest["icons"].as_array().unwrap();
        assert_eq!(icons.len(), 5);
        for icon in icons {
            let name = icon["src"].as_str().unwrap();
            let content = std::fs::read(public.join(name)).unwrap();
            if icon["type"] == "image/png" {
                let (width, height) = size(&content);
                let told = icon["sizes"].as_str().unwrap();
                assert_eq!(told, format!("{width}x{height}"), "{name}");
            }
        }
        let boot = std::fs::read_to_string(public.join("boot.js")).unwrap();
        assert!(boot.contains("\"icon-180.png\""));
        let touched = std::fs::read(public.join("icon-180.png")).unwrap();
        assert_eq!(size(&touched), (180, 180));
    }

    /// Width and height of a PNG: the first two numbers of its first part.
    fn size(png: &[u8]) -> (u32, u32) {
        assert!(png.starts_with(b"\x89PNG\r\n\x1a\n"));
        let number = |at: usize| u32::from_be_bytes(png[at..at + 4].try_into().unwrap());
        (number(16), number(20))
    }
}
