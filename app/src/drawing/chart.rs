//! A chart with two logarithmic axes: distance across, keys left upwards. Lines differ in dashes as
//! well as colour and carry their names; the page shows the same numbers in a table.
//!
//! Heights are in em and places across in per cent, so words keep the reader's own size.

use yew::prelude::*;

use super::path::{Point, number, polyline, strokes};
use super::view::{Words, image};

/// What the chart shows.
#[derive(Properties, PartialEq)]
pub struct DistanceChartProps {
    /// What the chart is.
    pub title: AttrValue,
    /// What it says.
    pub desc: AttrValue,
    /// The distances at both ends, in metres.
    pub distance: LogAxis,
    /// The numbers of keys at both ends.
    pub keys: LogAxis,
    /// Distances named under the chart.
    pub distances: Vec<Tick>,
    /// Numbers of keys named at the side.
    pub numbers: Vec<Tick>,
    /// One line for each scene, at most four.
    pub lines: Vec<ChartLine>,
    /// Levels to compare with, named on their line.
    #[prop_or_default]
    pub levels: Vec<Tick>,
    /// Where the reader stands.
    #[prop_or_default]
    pub you: Option<Tick>,
}

/// A logarithmic axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LogAxis {
    /// The value at its beginning, above 0.
    pub from: f64,
    /// The value at its end, above `from`.
    pub to: f64,
}

/// A value with its word.
#[derive(Clone, Debug, PartialEq)]
pub struct Tick {
    /// Where it stands.
    pub value: f64,
    /// What stands there.
    pub word: AttrValue,
}

/// One line.
#[derive(Clone, Debug, PartialEq)]
pub struct ChartLine {
    /// Its name.
    pub name: AttrValue,
    /// Distance and keys left, nearest first.
    pub points: Vec<(f64, f64)>,
}

/// The chart, with a key to its lines below it where there is no room for their names.
#[component]
pub fn DistanceChart(props: &DistanceChartProps) -> Html {
    let words: Words = Some((&props.title, &props.desc));
    let content = html! {
        <>
            <svg x="0" y={em(TOP)} width="100%" height={em(HEIGHT)} viewBox="0 0 1000 1000"
                preserveAspectRatio="none" overflow="visible">
                <path class="chart-grid" d={across(props, &props.numbers)} />
                <path class="chart-level" d={across(props, &props.levels)} />
                <path class="chart-axis" d="M0 1000H1000" />
                { for props.lines.iter().enumerate().map(|(index, line)| html! {
                    <path class={line_class(index)} d={polyline(&on_paper(props, line))} />
                }) }
                if let Some(you) = &props.you {
                    <path class="chart-you" d={upright(props.distance.share(you.value))} />
                }
            </svg>
            { for props.distances.iter().map(|tick| below(props.distance, tick)) }
            { for props.numbers.iter().map(|tick| beside(props, tick, "0")) }
            { for props.levels.iter().map(|tick| beside(props, tick, "5em")) }
            { for props.lines.iter().enumerate().filter_map(|(index, line)| name(props, index, line)) }
            if let Some(you) = &props.you {
                { above(props.distance, you) }
            }
        </>
    };
    html! {
        <>
            { image("chart", None, words, content) }
            <ul class="chart-legend">
                { for props.lines.iter().enumerate().map(|(index, line)| html! {
                    <li>
                        <svg viewBox="0 0 44 12" aria-hidden="true" focusable="false">
                            <path class={line_class(index)} d="M0 6H44" />
                        </svg>
                        { &line.name }
                    </li>
                }) }
            </ul>
        </>
    }
}

/// The plot's upper edge and height, in em.
const TOP: f64 = 1.6;
const HEIGHT: f64 = 19.5;

impl LogAxis {
    /// Where a value stands, from 0 to 1; what is off the axis stands at its end.
    pub fn share(self, value: f64) -> f64 {
        let value = value.clamp(self.from, self.to);
        (value / self.from).ln() / (self.to / self.from).ln()
    }

    /// The value that stands at `share`.
    pub fn value(self, share: f64) -> f64 {
        self.from * (self.to / self.from).powf(share)
    }
}

/// Where a line crosses a number of keys for the first time, read straight between its points on
/// both logarithmic axes.
pub fn crossing(line: &ChartLine, distance: LogAxis, keys: LogAxis, level: f64) -> Option<f64> {
    let height = keys.share(level);
    line.points.windows(2).find_map(|pair| {
        let (low, high) = (keys.share(pair[0].1), keys.share(pair[1].1));
        (low <= height && height < high).then(|| {
            let (near, far) = (distance.share(pair[0].0), distance.share(pair[1].0));
            distance.value(near + (far - near) * (height - low) / (high - low))
        })
    })
}

fn on_paper(props: &DistanceChartProps, line: &ChartLine) -> Vec<Point> {
    let point = |&(distance, keys): &(f64, f64)| {
        (
            1000.0 * props.distance.share(distance),
            1000.0 * (1.0 - props.keys.share(keys)),
        )
    };
    line.points.iter().map(point).collect()
}

fn across(props: &DistanceChartProps, ticks: &[Tick]) -> String {
    strokes(ticks.iter().map(|tick| {
        let y = 1000.0 * (1.0 - props.keys.share(tick.value));
        ((0.0, y), (1000.0, y))
    }))
}

fn upright(share: f64) -> String {
    let x = 1000.0 * share;
    strokes([((x, 0.0), (x, 1000.0))])
}

fn below(axis: LogAxis, tick: &Tick) -> Html {
    word_at(axis.share(tick.value), TOP + HEIGHT + 1.35, "", &tick.word)
}

fn above(axis: LogAxis, tick: &Tick) -> Html {
    word_at(
        axis.share(tick.value),
        TOP - 0.45,
        "chart-label",
        &tick.word,
    )
}

/// Words near an end grow inwards from it.
fn word_at(share: f64, base: f64, class: &'static str, word: &AttrValue) -> Html {
    let anchor = if share < 0.06 {
        "start"
    } else if share > 0.94 {
        "end"
    } else {
        "middle"
    };
    html! {
        <text {class} x={percent(share)} y={em(base)} text-anchor={anchor}>{ word }</text>
    }
}

/// A word that sits on its horizontal line.
fn beside(props: &DistanceChartProps, tick: &Tick, dx: &'static str) -> Html {
    let base = TOP + HEIGHT * (1.0 - props.keys.share(tick.value)) - 0.3;
    html! { <text x="0" {dx} y={em(base)}>{ &tick.word }</text> }
}

/// A line's name, left of it, each a step lower than the one before so that names never meet.
fn name(props: &DistanceChartProps, index: usize, line: &ChartLine) -> Option<Html> {
    let height = 0.72 - 0.16 * index as f64;
    let level = props.keys.value(height);
    let lowest = line.points.iter().map(|point| point.1).fold(0.0, f64::max);
    let level = level.min(lowest * 0.6);
    let at = props
        .distance
        .share(crossing(line, props.distance, props.keys, level)?);
    let base = TOP + HEIGHT * (1.0 - props.keys.share(level)) - 0.3;
    Some(html! {
        <text class="chart-label chart-name" x={percent(at)} dx="-0.8em" y={em(base)} text-anchor="end">
            { &line.name }
        </text>
    })
}

fn line_class(index: usize) -> &'static str {
    match index {
        0 => "chart-line chart-line-1",
        1 => "chart-line chart-line-2",
        2 => "chart-line chart-line-3",
        _ => "chart-line chart-line-4",
    }
}

fn percent(share: f64) -> String {
    number(100.0 * share) + "%"
}

fn em(value: f64) -> String {
    number(value) + "em"
}

#[cfg(test)]
mod tests {
    use super::*;

    const DISTANCE: LogAxis = LogAxis {
        from: 0.1,
        to: 1000.0,
    };
    const KEYS: LogAxis = LogAxis {
        from: 1.0,
        to: 100_000.0,
    };

    #[test]
    fn axis_places_powers_of_ten_evenly_and_inverts() {
        assert!((DISTANCE.share(1.0) - 0.25).abs() < 1e-12);
        assert!((DISTANCE.share(100.0) - 0.75).abs() < 1e-12);
        assert_eq!(DISTANCE.share(0.0), 0.0);
        assert_eq!(DISTANCE.share(1e9), 1.0);
        assert!((KEYS.value(KEYS.share(300.0)) - 300.0).abs() < 1e-9);
    }

    #[test]
    fn crossing_reads_between_two_points_on_both_scales() {
        let line = ChartLine {
            name: AttrValue::default(),
            points: vec![(1.0, 1.0), (10.0, 100.0), (100.0, 10_000.0)],
        };
        let at = |level| crossing(&line, DISTANCE, KEYS, level);
        assert!(at(10.0).is_some_and(|distance| (distance - 10_f64.sqrt()).abs() < 1e-9));
        assert!(at(1000.0).is_some_and(|distance| (distance - 1000_f64.sqrt()).abs() < 1e-9));
        assert_eq!(at(50_000.0), None);
    }
}
