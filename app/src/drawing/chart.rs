//! A chart with two logarithmic axes: distance across, keys left upwards. Lines differ in dashes as
//! well as colour, with a key to them below; the page shows the same numbers in a table.
//!
//! Heights are in em and places across in per cent, so words keep the reader's own size.

mod levels;
mod plot;

use std::rc::Rc;

use yew::prelude::*;

use super::path::{number, strokes};
use super::view::{self, image};
pub use plot::Plot;
use plot::{Drawn, Legend};

/// What the chart shows.
#[derive(Properties, PartialEq)]
pub struct DistanceChartProps {
    /// What the chart is.
    pub title: AttrValue,
    /// What it says.
    pub desc: AttrValue,
    /// All but the mark.
    pub plot: Rc<Plot>,
    /// Where the reader stands.
    pub you: Tick,
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

/// The chart, with a key to its lines below it. While the reader's mark moves, it alone is drawn anew: it lies below all else, so that no word makes way.
#[component]
pub fn DistanceChart(props: &DistanceChartProps) -> Html {
    let words: view::Words = Some((&props.title, &props.desc));
    let share = props.plot.distance.share(props.you.value);
    let content = html! {
        <>
            <svg x="0" y={em(TOP)} width="100%" height={em(HEIGHT)} viewBox="0 0 1000 1000"
                preserveAspectRatio="none" overflow="visible">
                <path class="chart-you" d={upright(share)} />
            </svg>
            { word_at(share, WORD_ABOVE, "chart-label", &props.you.word) }
            <Drawn plot={Rc::clone(&props.plot)} />
        </>
    };
    html! {
        <>
            { image("chart", None, words, content) }
            <Legend plot={Rc::clone(&props.plot)} />
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

fn upright(share: f64) -> String {
    let x = 1000.0 * share;
    strokes([((x, 0.0), (x, 1000.0))])
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
