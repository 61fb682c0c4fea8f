//! A chart with two logarithmic axes: distance across, keys left upwards. Lines differ in dashes as
//! well as colour and carry their names; the page shows the same numbers in a table.
//!
//! Heights are in em and places across in per cent, so words keep the reader's own size.

mod names;

use yew::prelude::*;

use super::path::{Point, number, polyline, strokes};
use super::view::{self, image};
use names::Words;

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
    let words: view::Words = Some((&props.title, &props.desc));
    let lines: Vec<Vec<Point>> = props
        .lines
        .iter()
        .map(|line| in_shares(props, line))
        .collect();
    let levels = level_places(props, &lines);
    let places = name_places(props, &lines, &levels);
    // Where one name found no room, the list below the chart is there at every width.
    let legend_class = if places.iter().all(Option::is_some) {
        "chart-legend"
    } else {
        "chart-legend chart-legend-needed"
    };
    let content = html! {
        <>
            <svg x="0" y={em(TOP)} width="100%" height={em(HEIGHT)} viewBox="0 0 1000 1000"
                preserveAspectRatio="none" overflow="visible">
                <path class="chart-grid" d={across(props, &props.numbers)} />
                <path class="chart-level" d={across(props, &props.levels)} />
                <path class="chart-axis" d="M0 1000H1000" />
                { for lines.iter().enumerate().map(|(index, line)| html! {
                    <path class={line_class(index)} d={on_paper(line)} />
                }) }
                if let Some(you) = &props.you {
                    <path class="chart-you" d={upright(props.distance.share(you.value))} />
                }
            </svg>
            { for props.distances.iter().map(|tick| below(props.distance, tick)) }
            { for props.numbers.iter().map(|tick| beside(props, tick)) }
            { for levels.iter().zip(&props.levels).map(|(place, tick)| level_word(*place, tick)) }
            { for places.iter().zip(&props.lines).filter_map(|(place, line)| Some(name((*place)?, line))) }
            if let Some(you) = &props.you {
                { above(props.distance, you) }
            }
        </>
    };
    html! {
        <>
            { image("chart", None, words, content) }
            <ul class={legend_class}>
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

/// Where the word above the plot stands, in em: clear of a level's word on the plot's upper edge.
const WORD_ABOVE: f64 = 1.2;

/// The plot's upper edge and height, in em.
const TOP: f64 = 3.1;
const HEIGHT: f64 = 19.5;

impl LogAxis {
    /// Where a value stands, from 0 to 1; what is off the axis stands at its end.
    pub fn share(self, value: f64) -> f64 {
        let value = value.clamp(self.from, self.to);
        (value / self.from).ln() / (self.to / self.from).ln()
    }
}

/// A line in shares of the plot: across from the left, up from the bottom.
fn in_shares(props: &DistanceChartProps, line: &ChartLine) -> Vec<Point> {
    let point =
        |&(distance, keys): &(f64, f64)| (props.distance.share(distance), props.keys.share(keys));
    line.points.iter().map(point).collect()
}

fn on_paper(shares: &[Point]) -> String {
    let points: Vec<Point> = shares
        .iter()
        .map(|(x, height)| (1000.0 * x, 1000.0 * (1.0 - height)))
        .collect();
    polyline(&points)
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
        WORD_ABOVE,
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

/// A number of the scale, on its horizontal line.
fn beside(props: &DistanceChartProps, tick: &Tick) -> Html {
    let base = height_in_em(props.keys.share(tick.value)) - 0.3;
    html! { <text x="0" y={em(base)}>{ &tick.word }</text> }
}

/// A level's word, on its horizontal line.
fn level_word(place: Words, tick: &Tick) -> Html {
    let at_the_end = place.right >= 1.0;
    let (x, anchor) = if at_the_end {
        (1.0, "end")
    } else {
        (place.left, "start")
    };
    let base = height_in_em(place.base) - 0.3;
    html! {
        <text class="chart-level-word" x={percent(x)} y={em(base)} text-anchor={anchor}>
            { &tick.word }
        </text>
    }
}

/// Where each line's name has room.
fn name_places(
    props: &DistanceChartProps,
    lines: &[Vec<Point>],
    taken: &[Words],
) -> Vec<Option<Words>> {
    let words: Vec<&str> = props.lines.iter().map(|line| line.name.as_str()).collect();
    names::places(lines, &words, taken)
}

/// The room that each level's word takes on its line.
fn level_places(props: &DistanceChartProps, lines: &[Vec<Point>]) -> Vec<Words> {
    let you = props
        .you
        .as_ref()
        .map(|you| props.distance.share(you.value));
    let place = |level: &Tick| {
        let base = props.keys.share(level.value);
        names::on_level(base, names::width(&level.word), you, lines)
    };
    props.levels.iter().map(place).collect()
}

fn name(place: Words, line: &ChartLine) -> Html {
    let middle = (place.left + place.right) / 2.0;
    html! {
        <text class="chart-label chart-name" x={percent(middle)} y={em(height_in_em(place.base))}
            text-anchor="middle">
            { &line.name }
        </text>
    }
}

fn height_in_em(share: f64) -> f64 {
    TOP + HEIGHT * (1.0 - share)
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
    fn axis_places_powers_of_ten_evenly() {
        assert!((DISTANCE.share(1.0) - 0.25).abs() < 1e-12);
        assert!((DISTANCE.share(100.0) - 0.75).abs() < 1e-12);
        assert_eq!(DISTANCE.share(0.0), 0.0);
        assert_eq!(DISTANCE.share(1e9), 1.0);
        assert!((KEYS.share(1000.0) - 0.6).abs() < 1e-12);
    }
}
