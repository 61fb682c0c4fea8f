//! What of a chart stays as it is while the reader's mark moves: axes, levels, lines and the key to them.

use std::rc::Rc;

use yew::prelude::*;

use super::levels::{self, Words};
use super::{ChartLine, HEIGHT, LogAxis, TOP, Tick, em, percent, word_at};
use crate::drawing::path::{Point, polyline, strokes};

/// A chart without the reader's mark.
#[derive(Clone, Debug, PartialEq)]
pub struct Plot {
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
    pub levels: Vec<Tick>,
}

/// What is drawn.
#[derive(Properties, PartialEq)]
pub struct PlotProps {
    /// All of it.
    pub plot: Rc<Plot>,
}

/// The drawing, to stand in the chart's image. As a component it is left alone while the plot is
/// the same.
#[component]
pub fn Drawn(props: &PlotProps) -> Html {
    let plot = &*props.plot;
    let lines = plot.lines_in_shares();
    let levels = plot.level_places(&lines);
    html! {
        <>
            <svg x="0" y={em(TOP)} width="100%" height={em(HEIGHT)} viewBox="0 0 1000 1000"
                preserveAspectRatio="none" overflow="visible">
                <path class="chart-grid" d={across(plot, &plot.numbers)} />
                <path class="chart-level" d={across(plot, &plot.levels)} />
                <path class="chart-axis" d="M0 1000H1000" />
                { for lines.iter().enumerate().map(|(index, line)| html! {
                    <path class={line_class(index)} d={on_paper(line)} />
                }) }
            </svg>
            { for plot.distances.iter().map(|tick| below(plot.distance, tick)) }
            { for plot.numbers.iter().map(|tick| beside(plot, tick)) }
            { for levels.iter().zip(&plot.levels).map(|(place, tick)| level_word(*place, tick)) }
        </>
    }
}

/// The key to the lines, to stand below the chart: beside their lines, names would stand on others.
#[component]
pub fn Legend(props: &PlotProps) -> Html {
    let plot = &*props.plot;
    html! {
        <ul class="chart-legend">
            { for plot.lines.iter().enumerate().map(|(index, line)| html! {
                <li>
                    <svg viewBox="0 0 44 12" aria-hidden="true" focusable="false">
                        <path class={line_class(index)} d="M0 6H44" />
                    </svg>
                    { &line.name }
                </li>
            }) }
        </ul>
    }
}

impl Plot {
    /// Every line in shares of the plot: across from the left, up from the bottom.
    fn lines_in_shares(&self) -> Vec<Vec<Point>> {
        let point =
            |&(distance, keys): &(f64, f64)| (self.distance.share(distance), self.keys.share(keys));
        self.lines
            .iter()
            .map(|line| line.points.iter().map(point).collect())
            .collect()
    }

    /// The room that each level's word takes on its line.
    fn level_places(&self, lines: &[Vec<Point>]) -> Vec<Words> {
        let place = |level: &Tick| {
            let base = self.keys.share(level.value);
            levels::on_level(base, levels::width(&level.word), lines)
        };
        self.levels.iter().map(place).collect()
    }
}

fn on_paper(shares: &[Point]) -> String {
    let points: Vec<Point> = shares
        .iter()
        .map(|(x, height)| (1000.0 * x, 1000.0 * (1.0 - height)))
        .collect();
    polyline(&points)
}

fn across(plot: &Plot, ticks: &[Tick]) -> String {
    strokes(ticks.iter().map(|tick| {
        let y = 1000.0 * (1.0 - plot.keys.share(tick.value));
        ((0.0, y), (1000.0, y))
    }))
}

fn below(axis: LogAxis, tick: &Tick) -> Html {
    word_at(axis.share(tick.value), TOP + HEIGHT + 1.35, "", &tick.word)
}

/// A number of the scale, on its horizontal line.
fn beside(plot: &Plot, tick: &Tick) -> Html {
    let base = height_in_em(plot.keys.share(tick.value)) - 0.3;
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
