//! The chart: keys left to try against distance, for the chosen scene and three to compare with.

use self_check_core::grades::{GRADES, Grade};
use self_check_core::sight::Scene;

use super::{FARTHEST, NEAREST, STEPS, distance_of, fewest_tries};
use crate::copy::{self, numbers, site};
use crate::drawing::{ChartLine, LogAxis, Plot, Tick};

/// Scenes far apart in what they can read, to compare the chosen one with.
const COMPARED: [Scene; 4] = [
    Scene::PhoneAtNextTable,
    Scene::PhoneZoomAcrossStreet,
    Scene::LongLens,
    Scene::DoorbellCamera,
];
/// Lines the chart can tell apart.
const LINES: usize = 4;
/// Every so many steps of the slider a line has a point.
const STRIDE: u32 = 2;

/// One scene's tries for an even chance by distance, for whichever observer needs the fewest: the
/// cautious side.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// The scene.
    pub scene: Scene,
    /// Distance in metres and tries, nearest first.
    pub points: Vec<(f64, f64)>,
}

/// The curve of the chosen scene, then of those it is compared with.
pub fn curves(chosen: Scene) -> Vec<Curve> {
    let others = COMPARED.into_iter().filter(|&scene| scene != chosen);
    std::iter::once(chosen)
        .chain(others)
        .take(LINES)
        .map(|scene| Curve {
            scene,
            points: (0..=STEPS)
                .step_by(STRIDE as usize)
                .map(distance_of)
                .filter_map(|metres| Some((metres, fewest_tries(scene, metres)?)))
                .collect(),
        })
        .collect()
}

/// What the chart shows of these curves, whatever the distance the reader looks at.
pub fn plot(curves: &[Curve]) -> Plot {
    // So few that their words keep apart on a phone; the table has more.
    let distances = [1.0, 3.0, 10.0, 30.0, 100.0, 1_000.0];
    let numbers = [1.0, 10.0, 100.0, 1_000.0, 10_000.0]
        .map(|keys| tick(keys, numbers::about_keys(keys).replace("about ", "")));
    let levels: Vec<Tick> = GRADES
        .chunk_by(|one, next| one.minimum_differs == next.minimum_differs)
        .map(|alike| {
            let numbers: Vec<u8> = alike.iter().map(|grade| grade.number).collect();
            tick(least(alike), site::grades(&numbers))
        })
        .collect();
    let lines = curves.iter().map(|curve| ChartLine {
        name: copy::scene(curve.scene).into(),
        points: curve.points.clone(),
    });
    Plot {
        distance: LogAxis {
            from: NEAREST,
            to: FARTHEST,
        },
        keys: LogAxis {
            from: 1.0,
            to: least(&GRADES[5..]),
        },
        distances: distances.map(at_distance).to_vec(),
        numbers: numbers.to_vec(),
        lines: lines.collect(),
        levels,
    }
}

/// A distance with its word.
pub fn at_distance(metres: f64) -> Tick {
    tick(metres, copy::metres(metres))
}

fn tick(value: f64, word: String) -> Tick {
    Tick {
        value,
        word: word.into(),
    }
}

/// The least number of keys that grades with one minimum ask for.
fn least(alike: &[Grade]) -> f64 {
    alike
        .first()
        .map_or(1.0, |grade| grade.minimum_differs.into())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pages::distance::FAMILY;

    /// What the chart's description says of every line.
    #[test]
    fn every_line_rises_from_a_few_keys_towards_half_of_all() {
        let half = FAMILY.keys().get() / 2.0;
        for scene in Scene::ALL {
            let curves = curves(scene);
            let points = &curves[0].points;
            assert!(points.windows(2).all(|pair| pair[0].1 <= pair[1].1));
            let (first, last) = (points[0], points[points.len() - 1]);
            assert!((last.0 - FARTHEST).abs() < 1e-9, "{scene:?}");
            assert!(first.1 < 10.0, "{scene:?} {first:?}");
            assert!(last.1 > 0.1 * half && last.1 <= half, "{scene:?} {last:?}");
        }
    }
}
