//! Python environments of this clone, for comparisons with what others have written.

use std::path::{Path, PathBuf};
use std::process::Command;

use crate::{project, run, say};

/// A Python with packages of its own, in a folder under target/.
pub struct Environment {
    folder: &'static str,
    /// As their index names them, the main one first.
    packages: &'static [&'static str],
    /// What shows that it is there.
    import: &'static str,
    /// What is left out without it.
    purpose: &'static str,
}

/// SciPy, for the comparison among the measurements.
pub const SCIPY: Environment = Environment {
    folder: "scipy",
    packages: &["scipy"],
    import: "import scipy.integrate",
    purpose: "the comparison with SciPy",
};

/// scikit-image, which renders and blurs pictures and brings photographs; Pillow comes with it and writes files, HEIC
/// with the help of a package of its own.
pub const SCIKIT_IMAGE: Environment = Environment {
    folder: "scikit-image",
    packages: &["scikit-image", "pillow-heif"],
    import: "import skimage.data, scipy.ndimage, PIL.Image, pillow_heif",
    purpose: "the check with pictures made by scikit-image",
};

impl Environment {
    /// Its Python; one line says why where there is none, since nothing else needs it.
    pub fn find_or_install(&self) -> Option<PathBuf> {
        let python = self.python();
        if self.works(&python) {
            return Some(python);
        }
        let Some(system) = ["python3", "python"]
            .into_iter()
            .find(|name| run::is_there(name))
        else {
            say::note(format!(
                "No Python is on this machine: {} is left out.",
                self.purpose
            ));
            return None;
        };
        say::note(format!(
            "Installing {} into target/{}, for {}",
            self.packages.join(" and "),
            self.folder,
            self.purpose
        ));
        let log = project::log(self.folder);
        let mut create = Command::new(system);
        create
            .args(["-m", "venv"])
            .arg(project::target().join(self.folder));
        let mut install = Command::new(&python);
        install
            .args(["-m", "pip", "install", "--quiet"])
            .args(self.packages);
        let installed = run::logged("Creating a Python environment", &mut create, &log, None)
            .and_then(|()| run::logged("Installing Python packages", &mut install, &log, None));
        match installed {
            Ok(()) if self.works(&python) => Some(python),
            Ok(()) => {
                say::note(format!(
                    "{} was installed and does not start: {} is left out.",
                    self.packages[0], self.purpose
                ));
                None
            }
            Err(error) => {
                say::note(format!("{error:#}"));
                say::note(format!(
                    "{} could not be installed: {} is left out.",
                    self.packages[0], self.purpose
                ));
                None
            }
        }
    }

    fn python(&self) -> PathBuf {
        let place = if cfg!(windows) {
            "Scripts/python.exe"
        } else {
            "bin/python"
        };
        project::target().join(self.folder).join(place)
    }

    fn works(&self, python: &Path) -> bool {
        run::answer(Command::new(python).args(["-c", self.import])).is_some()
    }
}
