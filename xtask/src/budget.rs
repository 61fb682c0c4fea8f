//! What a first visit may weigh. The build fails where it weighs more.

use std::io::Write;

use anyhow::{Result, bail};
use flate2::Compression;
use flate2::write::GzEncoder;

use crate::dist::{Files, PAGE, ROOMS};
use crate::say;

/// Bytes on the way for a first visit, compressed by gzip: the page, its style, the start script and the first program.
/// Our own bound: about four seconds on a connection of 400 kbit/s.
const FIRST_VISIT: usize = 200_000;

/// What a file weighs.
#[derive(Clone, Copy, Default)]
struct Weight {
    raw: usize,
    gzip: usize,
    brotli: usize,
}

impl Weight {
    fn of(content: &[u8]) -> Result<Self> {
        Ok(Self {
            raw: content.len(),
            gzip: gzip(content)?,
            brotli: brotli(content)?,
        })
    }

    fn plus(self, other: Self) -> Self {
        Self {
            raw: self.raw + other.raw,
            gzip: self.gzip + other.gzip,
            brotli: self.brotli + other.brotli,
        }
    }

    fn line(self, name: &str) -> String {
        format!(
            "{:>9} {:>9} {:>9}  {name}",
            self.raw, self.gzip, self.brotli
        )
    }
}

/// Prints what the two programs weigh with all that belongs to them, and fails where a first visit weighs too much. A site that could not be optimised is
/// about twice the size, which is told when it is built.
pub fn hold(files: &Files, optimised: bool) -> Result<()> {
    say::note(format!("{:>9} {:>9} {:>9}  bytes", "raw", "gzip", "brotli"));
    let mut first_visit = Weight::default();
    let mut second_program = Weight::default();
    for (name, content) in files {
        let sum = match name {
            name if comes_first(name) => &mut first_visit,
            name if name.starts_with(ROOMS) => &mut second_program,
            _ => continue,
        };
        let weight = Weight::of(content)?;
        say::note(weight.line(name));
        *sum = sum.plus(weight);
    }
    say::note(first_visit.line("a first visit"));
    say::note(second_program.line("the second program"));
    if optimised && first_visit.gzip > FIRST_VISIT {
        bail!(
            "A first visit weighs {} bytes; {FIRST_VISIT} is the most it may. See “What it weighs” in DEVELOPERS.md.",
            first_visit.gzip
        );
    }
    Ok(())
}

/// Whether a browser fetches the file on a first visit: the page, its style, the script that starts the check, and the
/// check. All else it fetches when a person asks for it, or never.
fn comes_first(name: &str) -> bool {
    const FIRST: [&str; 3] = ["style-", "boot-", "check-"];
    name == PAGE || FIRST.iter().any(|stem| name.starts_with(stem))
}

/// `content` as a server sends it that packs by gzip.
pub fn packed(content: &[u8]) -> Result<Vec<u8>> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::best());
    encoder.write_all(content)?;
    Ok(encoder.finish()?)
}

fn gzip(content: &[u8]) -> Result<usize> {
    Ok(packed(content)?.len())
}

fn brotli(content: &[u8]) -> Result<usize> {
    let mut packed = Vec::new();
    let parameters = brotli::enc::BrotliEncoderParams::default();
    brotli::BrotliCompress(&mut &*content, &mut packed, &parameters)?;
    Ok(packed.len())
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    /// Bytes that no program makes smaller: each from the one before, by the generator of Numerical Recipes.
    fn noise(length: usize) -> Vec<u8> {
        let mut state = 1_u32;
        let next = |_| {
            state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            (state >> 24) as u8
        };
        (0..length).map(next).collect()
    }

    fn site(name: &str, length: usize) -> Files {
        Files::from([(name.to_owned(), noise(length))])
    }

    #[test]
    fn first_visit_that_weighs_too_much_fails_the_build() {
        assert!(hold(&site("check-1.wasm", FIRST_VISIT - 1000), true).is_ok());
        let error = hold(&site("check-1.wasm", FIRST_VISIT + 1), true).unwrap_err();
        assert!(
            error.to_string().contains(&FIRST_VISIT.to_string()),
            "{error}"
        );
    }

    #[test]
    fn what_is_asked_for_later_is_no_part_of_a_first_visit() {
        for name in ["rooms-1.wasm", "worker.js", "house-key-self-check-1.html"] {
            assert!(hold(&site(name, 2 * FIRST_VISIT), true).is_ok(), "{name}");
        }
    }

    #[test]
    fn page_is_part_of_a_first_visit() {
        assert!(hold(&site(PAGE, FIRST_VISIT + 1), true).is_err());
    }

    #[test]
    fn what_repeats_weighs_less_on_the_way() {
        let weight = Weight::of(&[b'a'; 10_000]).unwrap();
        assert!(weight.gzip < 100 && weight.brotli < 100);
    }
}
