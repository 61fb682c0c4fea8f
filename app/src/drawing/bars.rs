//! A row of bars, each with its number above and its name below.
//!
//! Heights are in em and places in per cent, so words keep the reader's own size.

use yew::prelude::*;

use super::path::number;
use super::view::{Words, image};

/// What the bars show.
#[derive(Properties, PartialEq)]
pub struct BarsProps {
    /// What the drawing is.
    pub title: AttrValue,
    /// What it shows.
    pub desc: AttrValue,
    /// The bars, first to last.
    pub bars: Vec<Bar>,
}

/// One bar.
#[derive(Clone, Debug, PartialEq)]
pub struct Bar {
    /// Its height, from 0 to 1.
    pub share: f64,
    /// What stands above it.
    pub above: AttrValue,
    /// What stands below it.
    pub below: AttrValue,
}

/// The bars.
#[component]
pub fn Bars(props: &BarsProps) -> Html {
    let words: Words = Some((&props.title, &props.desc));
    let step = 100.0 / props.bars.len().max(1) as f64;
    let content = html! {
        <>
            { for props.bars.iter().enumerate().map(|(index, bar)| one(step, index as f64, bar)) }
            <line class="bar-base" x1="0" x2="100%" y1={em(BASE)} y2={em(BASE)} />
        </>
    };
    image("bars", None, words, content)
}

/// Where the bars stand and how high the highest is, in em.
const BASE: f64 = 10.5;
const HIGHEST: f64 = 8.5;

fn one(step: f64, index: f64, bar: &Bar) -> Html {
    let height = HIGHEST * bar.share.clamp(0.0, 1.0);
    let middle = step * (index + 0.5);
    html! {
        <>
            <rect class="bar" x={percent(middle - 0.3 * step)} width={percent(0.6 * step)}
                y={em(BASE - height)} height={em(height)} />
            <text class="bar-number" x={percent(middle)} y={em(BASE - height - 0.4)} text-anchor="middle">
                { &bar.above }
            </text>
            <text x={percent(middle)} y={em(BASE + 1.4)} text-anchor="middle">{ &bar.below }</text>
        </>
    }
}

fn percent(value: f64) -> String {
    number(value) + "%"
}

fn em(value: f64) -> String {
    number(value) + "em"
}
