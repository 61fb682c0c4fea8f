//! The Rust of Debian and Ubuntu, as another way to WebAssembly.

use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Result, bail};

use crate::{apt, project, run};

/// The system's own Rust, which builds its standard library for the browser from source.
pub struct SystemRust {
    rustc: PathBuf,
    cargo: PathBuf,
    version: String,
}

/// How a system names one of its Rusts: Debian's for the browsers it builds (`rustc-web`), the usual one (`rustc`),
/// Ubuntu's by version (`rustc-1.89`). The first has been tried on Debian 12.
struct Packages {
    rustc: String,
    cargo: String,
    source: String,
    clippy: String,
    llvm: String,
    program_suffix: String,
}

impl Packages {
    fn named(rustc: &str) -> Option<Self> {
        let suffix = rustc.strip_prefix("rustc")?;
        let by_version = suffix.starts_with("-1.");
        if !(suffix.is_empty() || suffix == "-web" || by_version) {
            return None;
        }
        Some(Self {
            rustc: rustc.to_owned(),
            cargo: format!("cargo{suffix}"),
            source: format!("rust{suffix}-src"),
            clippy: format!("rust{suffix}-clippy"),
            llvm: format!("rust{suffix}-llvm"),
            program_suffix: if by_version {
                suffix.to_owned()
            } else {
                String::new()
            },
        })
    }
}

impl SystemRust {
    /// A complete and new enough one that is installed already.
    pub fn find() -> Option<Self> {
        let suffixes = std::fs::read_dir("/usr/bin")
            .ok()?
            .flatten()
            .filter_map(|entry| {
                let name = entry.file_name().into_string().ok()?;
                Some(Packages::named(&name)?.program_suffix)
            });
        suffixes
            .filter_map(|suffix| Self::complete(&suffix))
            .max_by_key(|rust| minor(&rust.version))
    }

    /// Installs the newest one the system offers, with the linker of the same LLVM.
    pub fn install() -> Result<Self> {
        if !Path::new("/usr/bin/apt-get").exists() {
            bail!("this is no Debian or Ubuntu");
        }
        apt::update()?;
        let offered =
            run::answer(Command::new("apt-cache").args(["pkgnames", "rustc"])).unwrap_or_default();
        let mut candidates: Vec<(u32, Packages)> = offered
            .lines()
            .filter_map(|name| Some((offered_version(name)?, Packages::named(name)?)))
            .filter(|(version, packages)| {
                *version >= oldest() && offered_version(&packages.source).is_some()
            })
            .collect();
        candidates.sort_by_key(|(version, _)| *version);
        let Some((_, packages)) = candidates.pop() else {
            bail!(
                "the system offers no Rust of version 1.{} or newer with its source",
                oldest()
            );
        };
        let mut names = vec![&*packages.rustc, &*packages.cargo, &*packages.source];
        let optional = [&*packages.clippy, &*packages.llvm];
        names.extend(
            optional
                .into_iter()
                .filter(|name| offered_version(name).is_some()),
        );
        apt::install("a Rust that builds for the browser", &names)?;
        let rustc = format!("/usr/bin/rustc{}", packages.program_suffix);
        let about = run::answer(Command::new(&rustc).arg("-vV")).unwrap_or_default();
        if let Some(llvm) = about
            .lines()
            .find_map(|line| line.strip_prefix("LLVM version: "))
        {
            let lld = format!("lld-{}", llvm.split('.').next().unwrap_or(llvm));
            apt::install("its linker", &[&lld])?;
        }
        match Self::complete(&packages.program_suffix) {
            Some(rust) => Ok(rust),
            None => bail!("{rustc} is installed, but its source or its cargo is not"),
        }
    }

    /// What it calls itself.
    pub fn version(&self) -> &str {
        &self.version
    }

    /// Its compiler.
    pub fn rustc(&self) -> Command {
        Command::new(&self.rustc)
    }

    /// Its cargo, set to build the standard library too.
    pub fn cargo(&self) -> Command {
        self.prepared(&self.cargo)
    }

    /// Its clippy, where that is installed. Started by its own path: rustup's would bring a driver of another version.
    pub fn cargo_clippy(&self) -> Option<Command> {
        let program = self
            .cargo
            .to_str()?
            .replace("bin/cargo", "bin/cargo-clippy");
        Path::new(&program).exists().then(|| {
            let mut command = self.prepared(Path::new(&program));
            command.env("CARGO", &self.cargo).arg("clippy");
            command
        })
    }

    fn prepared(&self, program: &Path) -> Command {
        let mut command = Command::new(program);
        command
            .current_dir(project::root())
            .env("RUSTC", &self.rustc)
            // The standard library can be built with a stable compiler only under this switch.
            .env("RUSTC_BOOTSTRAP", "1")
            .env("CARGO_UNSTABLE_BUILD_STD", "std,panic_abort")
            // Cargo points this at the libraries of the toolchain that started us.
            .env_remove("LD_LIBRARY_PATH");
        command
    }

    fn complete(suffix: &str) -> Option<Self> {
        let rustc = PathBuf::from(format!("/usr/bin/rustc{suffix}"));
        let cargo = PathBuf::from(format!("/usr/bin/cargo{suffix}"));
        // In this folder a `rustc` may be rustup's stand-in; only the system's own keeps its library under /usr.
        let sysroot = run::answer(Command::new(&rustc).args(["--print", "sysroot"]))?;
        let source = Path::new(&sysroot).join("lib/rustlib/src/rust/library/std");
        let version = run::answer(Command::new(&rustc).arg("--version"))?;
        let fits = sysroot.starts_with("/usr")
            && source.exists()
            && cargo.exists()
            && minor(&version)? >= oldest();
        fits.then_some(Self {
            rustc,
            cargo,
            version,
        })
    }
}

/// The oldest Rust this project builds with, as the number behind `1.`.
fn oldest() -> u32 {
    minor(concat!("rustc ", env!("CARGO_PKG_RUST_VERSION"))).unwrap_or(0)
}

/// `96` of `rustc 1.96.0 (ac68faa20 2026-05-25)`.
fn minor(version: &str) -> Option<u32> {
    version
        .split_whitespace()
        .nth(1)?
        .split('.')
        .nth(1)?
        .parse()
        .ok()
}

/// The minor version of the package the system would install, if it offers one.
fn offered_version(package: &str) -> Option<u32> {
    let policy = run::answer(
        Command::new("apt-cache")
            .args(["policy", package])
            .env("LC_ALL", "C"),
    )?;
    candidate_minor(&policy)
}

fn candidate_minor(policy: &str) -> Option<u32> {
    let candidate = policy
        .lines()
        .find_map(|line| line.trim().strip_prefix("Candidate: "))?;
    minor(&format!("rustc {candidate}"))
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn version_is_read_from_what_the_compiler_says() {
        assert_eq!(minor("rustc 1.96.0 (ac68faa20 2026-05-25)"), Some(96));
        assert_eq!(minor("command not found"), None);
    }

    #[test]
    fn candidate_is_read_from_the_package_managers_policy() {
        let policy = "rustc-web:\n  Installed: (none)\n  Candidate: 1.96.0+dfsg1-1~deb12u2\n  Version table:\n";
        assert_eq!(candidate_minor(policy), Some(96));
        assert_eq!(candidate_minor("rustc-web:\n  Candidate: (none)\n"), None);
    }

    #[test]
    fn packages_of_one_rust_are_named_alike() {
        let web = Packages::named("rustc-web").unwrap();
        assert_eq!(
            (&*web.cargo, &*web.source, &*web.program_suffix),
            ("cargo-web", "rust-web-src", "")
        );
        let ubuntu = Packages::named("rustc-1.89").unwrap();
        assert_eq!(
            (&*ubuntu.source, &*ubuntu.program_suffix),
            ("rust-1.89-src", "-1.89")
        );
        assert!(Packages::named("rustc-mozilla").is_none());
    }
}
