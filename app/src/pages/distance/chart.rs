//! The chart: keys left to try against distance, for the chosen scene and three to compare with.

use std::rc::Rc;

use self_check_core::grades::{GRADES, Grade};
use self_check_core::sight::Scene;
use yew::prelude::*;

use super::{FARTHEST, NEAREST, STEPS, distance_of, range};
use crate::copy::{self, numbers, site};
use crate::drawing::{ChartLine, DistanceChart, LogAxis, Tick};

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
                .filter_map(|metres| {
                    let tries = range(scene, metres)?.fewest.reading.tries_even_chance.get();
                    Some((metres, tries))
                })
                .collect(),
        })
        .collect()
}

/// What the chart shows.
#[derive(Properties, PartialEq)]
pub struct SightChartProps {
    /// The curves.
    pub lines: Rc<Vec<Curve>>,
    /// Where the reader stands.
    pub metres: f64,
}

/// The chart.
#[component]
pub fn SightChart(props: &SightChartProps) -> Html {
    let tick = |value: f64, word: String| Tick {
        value,
        word: word.into(),
    };
    let distances =
        [0.3, 1.0, 3.0, 10.0, 30.0, 100.0].map(|metres| tick(metres, copy::metres(metres)));
    let numbers = [1.0, 10.0, 100.0, 1_000.0, 10_000.0]
        .map(|keys| tick(keys, numbers::about_keys(keys).replace("about ", "")));
    let levels: Vec<Tick> = GRADES
        .chunk_by(|one, next| one.minimum_differs == next.minimum_differs)
        .map(|alike| {
            let numbers: Vec<u8> = alike.iter().map(|grade| grade.number).collect();
            tick(least(alike), site::grades(&numbers))
        })
        .collect();
    let lines: Vec<ChartLine> = props
        .lines
        .iter()
        .map(|curve| ChartLine {
            name: copy::scene(curve.scene).into(),
            points: curve.points.clone(),
        })
        .collect();
    html! {
        <DistanceChart
            title={site::DISTANCE_CHART}
            desc={site::DISTANCE_CHART_DESC}
            distance={LogAxis { from: NEAREST, to: FARTHEST }}
            keys={LogAxis { from: 1.0, to: least(&GRADES[5..]) }}
            distances={distances.to_vec()}
            numbers={numbers.to_vec()}
            {lines}
            {levels}
            you={tick(props.metres, copy::metres(props.metres))}
        />
    }
}

/// The least number of keys that grades with one minimum ask for.
fn least(alike: &[Grade]) -> f64 {
    alike
        .first()
        .map_or(1.0, |grade| grade.minimum_differs.into())
}
