//! SciPy in a Python environment of this clone, for the comparison among the measurements.

use std::path::PathBuf;
use std::process::Command;

use crate::{project, run, say};

/// A Python that has SciPy; one line says why where there is none, since nothing else needs it.
pub fn find_or_install() -> Option<PathBuf> {
    let python = environment_python();
    if has_scipy(&python) {
        return Some(python);
    }
    let Some(system) = ["python3", "python"]
        .into_iter()
        .find(|name| run::is_there(name))
    else {
        say::note("No Python is on this machine: the comparison with SciPy is left out.");
        return None;
    };
    say::note("Installing SciPy into target/scipy, for the comparison");
    let log = project::log("scipy");
    let mut create = Command::new(system);
    create
        .args(["-m", "venv"])
        .arg(project::target().join("scipy"));
    let mut install = Command::new(&python);
    install.args(["-m", "pip", "install", "--quiet", "scipy"]);
    let installed = run::logged("Creating a Python environment", &mut create, &log, None)
        .and_then(|()| run::logged("Installing SciPy", &mut install, &log, None));
    match installed {
        Ok(()) if has_scipy(&python) => Some(python),
        Ok(()) => {
            say::note("SciPy was installed and does not start: the comparison is left out.");
            None
        }
        Err(error) => {
            say::note(format!("{error:#}"));
            say::note("SciPy could not be installed: the comparison is left out.");
            None
        }
    }
}

fn environment_python() -> PathBuf {
    let place = if cfg!(windows) {
        "Scripts/python.exe"
    } else {
        "bin/python"
    };
    project::target().join("scipy").join(place)
}

fn has_scipy(python: &PathBuf) -> bool {
    run::answer(Command::new(python).args(["-c", "import scipy.integrate"])).is_some()
}
