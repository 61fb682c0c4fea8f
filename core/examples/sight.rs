//! What a camera reads of a key: `sight -- SCENE DISTANCE_M [FAMILY]` prints one figure a line, as
//! `name value`. Without arguments it lists the scenes, the name of each first on its line. With the
//! family `not-sure` every figure is a range over the families: fewest tries, then most.

use self_check_core::key::{Family, FamilyChoice};
use self_check_core::sight::{Observer, Scene, SightReading};
use self_check_core::units::Metres;
use std::process::ExitCode;

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    if arguments.is_empty() {
        for scene in Scene::ALL {
            println!("{} {} m", scene.id(), scene.usual_distance().get());
        }
        return ExitCode::SUCCESS;
    }
    match lines(&arguments) {
        Ok(lines) => {
            for (name, values) in lines {
                println!("{name} {values}");
            }
            ExitCode::SUCCESS
        }
        Err(message) => {
            eprintln!("{message}");
            ExitCode::from(2)
        }
    }
}

fn lines(arguments: &[String]) -> Result<Vec<(&'static str, String)>, String> {
    let (scene, distance, family) = match arguments {
        [scene, distance] => (scene, distance, Family::TenDepthFiveCuts.id()),
        [scene, distance, family] => (scene, distance, family.as_str()),
        _ => return Err("Two or three words are needed: SCENE DISTANCE_M [FAMILY].".into()),
    };
    let scene = Scene::from_id(scene).ok_or("No such SCENE. Without arguments all are listed.")?;
    let distance = distance
        .parse()
        .ok()
        .and_then(|metres| Metres::new(metres).ok())
        .filter(|distance| distance.get() > 0.0)
        .ok_or("DISTANCE_M must be a number of metres above 0.")?;
    let choice = FamilyChoice::from_id(family).ok_or_else(|| {
        let ids = FamilyChoice::ALL.map(FamilyChoice::id).join(", ");
        format!("No such FAMILY. There are: {ids}.")
    })?;
    let readings = match choice {
        FamilyChoice::Known(family) => vec![scene.reading(distance, family, Observer::Person)],
        FamilyChoice::NotSure => {
            let range = scene.range(distance, choice);
            vec![range.fewest, range.most]
        }
    };
    Ok(NAMES
        .iter()
        .map(|(name, value)| {
            let values: Vec<String> = readings
                .iter()
                .map(|r| format!("{:.6}", value(r)))
                .collect();
            (*name, values.join(" "))
        })
        .collect())
}

type Value = fn(&SightReading) -> f64;

const NAMES: [(&str, Value); 7] = [
    ("gsd_mm", |r| r.view.ground_sample.get()),
    ("blur_mm", |r| r.view.blur.get()),
    ("sigma_mm", |r| {
        r.sigma.map_or(f64::INFINITY, |sigma| sigma.get())
    }),
    ("bits_leaked", |r| r.reading.bits_leaked.get()),
    ("keys_left", |r| r.reading.keys_left.get()),
    ("tries_even_chance", |r| r.reading.tries_even_chance.get()),
    ("first_guess", |r| r.reading.first_guess.get()),
];
