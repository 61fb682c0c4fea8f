//! The brass rule: a logarithmic scale from one key to a million, on which "keys left to try" is
//! read. What was lost is a dotted run between two pointers; a range is a bar between two.
//!
//! Heights are in em and places along the rule in per cent, so words keep the reader's own size at
//! every width.

use yew::prelude::*;

use super::path::{Point, number, strokes};
use super::view::{Words, image};

/// What is read on the rule.
#[derive(Clone, Debug)]
pub struct BrassRule {
    /// Keys left: the fewest and the most; equal where the result is one number.
    pub now: (f64, f64),
    /// The word above the pointer.
    pub now_word: &'static str,
    /// Keys before anything was lost, and the word above that pointer.
    pub before: Option<(f64, &'static str)>,
    /// The scale's own numbers from 1 to a million, one for each power of ten.
    pub numbers: [&'static str; 7],
    /// Marks under the rule, top row first.
    pub marks: Vec<RuleMark>,
}

/// A mark under the rule.
#[derive(Clone, Copy, Debug)]
pub struct RuleMark {
    /// Where it stands.
    pub keys: f64,
    /// What it is.
    pub word: &'static str,
}

/// The brass rule, with what it is and what it says in a sentence with the numbers.
pub fn brass_rule(rule: &BrassRule, words: Words) -> Html {
    let content = html! {
        <>
            { plate(&rule.numbers) }
            { for rule.marks.iter().enumerate().map(|(row, mark)| below(row, mark)) }
            { pointers(rule) }
        </>
    };
    image("rule", None, words, content)
}

/// Powers of ten on the rule.
const DECADES: f64 = 6.0;
/// Free brass at each end, as a share of the rule.
const MARGIN: f64 = 0.03;
/// Where the plate begins and how high it is, in em.
const PLATE: f64 = 3.5;
const PLATE_HEIGHT: f64 = 3.6;
/// First row of words under the rule, and the step to the next, in em.
const BELOW: f64 = 8.5;
const ROW: f64 = 1.3;

/// Where a number of keys stands, as a share of the rule's whole length; what is off the scale
/// stands at its end.
pub fn place(keys: f64) -> f64 {
    let decades = keys.max(1.0).log10().min(DECADES);
    MARGIN + (1.0 - 2.0 * MARGIN) * decades / DECADES
}

/// The ticks in a box 1000 long and 100 high: nine to a decade, the first and fifth longer.
fn ticks() -> Vec<(Point, Point)> {
    let decade =
        |power: i32| (1..=9).map(move |count| (count, f64::from(count) * 10_f64.powi(power)));
    let last = [(1, 10_f64.powi(DECADES as i32))];
    let all = (0..DECADES as i32).flat_map(decade).chain(last);
    all.map(|(count, keys)| {
        let length = match count {
            1 => 42.0,
            5 => 28.0,
            _ => 16.0,
        };
        let x = 1000.0 * place(keys);
        ((x, 0.0), (x, length))
    })
    .collect()
}

fn plate(numbers: &[&'static str; 7]) -> Html {
    html! {
        <>
            <rect class="rule-plate" x="0" y={em(PLATE)} width="100%" height={em(PLATE_HEIGHT)} />
            <svg x="0" y={em(PLATE)} width="100%" height={em(PLATE_HEIGHT)} viewBox="0 0 1000 100"
                preserveAspectRatio="none">
                <path class="rule-ticks" d={strokes(ticks())} />
                <path class="rule-ticks" d="M4 91H996" />
            </svg>
            { for [0.014, 0.986].map(rivet) }
            { for numbers.iter().zip(0..).map(|(word, power)| {
                let room = match power {
                    0 | 6 => None,
                    2 | 4 => Some("rule-number-inner"),
                    _ => Some("rule-number-odd"),
                };
                let at = place(10_f64.powi(power));
                text(classes!("rule-number", room), at, PLATE + PLATE_HEIGHT - 0.85, word)
            }) }
        </>
    }
}

fn rivet(at: f64) -> Html {
    html! {
        <svg x={percent(at)} y={em(PLATE + 0.85)} width="1em" height="1em" viewBox="0 0 10 10"
            overflow="visible">
            <path class="rule-rivet" d="M-2 0a2 2 0 1 0 4 0a2 2 0 1 0 -4 0Z" />
        </svg>
    }
}

/// Marks step down one row each, with the word towards the middle of the rule, so that words never
/// meet, however long.
fn below(row: usize, mark: &RuleMark) -> Html {
    let at = place(mark.keys);
    let base = BELOW + ROW * row as f64;
    let (anchor, nudge) = if at < 0.5 {
        ("start", "0.4em")
    } else {
        ("end", "-0.4em")
    };
    html! {
        <>
            <line class="rule-mark" x1={percent(at)} x2={percent(at)}
                y1={em(PLATE + PLATE_HEIGHT)} y2={em(base)} />
            <text class="rule-mark-word" x={percent(at)} dx={nudge} y={em(base)} text-anchor={anchor}>
                { mark.word }
            </text>
        </>
    }
}

fn pointers(rule: &BrassRule) -> Html {
    let (low, high) = (place(rule.now.0), place(rule.now.1));
    html! {
        <>
            if let Some((keys, word)) = rule.before {
                <line class="rule-lost" x1={percent(high)} x2={percent(place(keys))}
                    y1={em(PLATE - 0.55)} y2={em(PLATE - 0.55)} />
                { pointer("rule-was", place(keys)) }
                <line class="rule-stem" x1={percent(place(keys))} x2={percent(place(keys))}
                    y1="1.1em" y2={em(PLATE - 0.9)} />
                { text(classes!("rule-was-word"), place(keys), 0.85, word) }
            }
            if high > low {
                <line class="rule-band" x1={percent(low)} x2={percent(high)}
                    y1={em(PLATE - 0.55)} y2={em(PLATE - 0.55)} />
                { pointer("rule-now", high) }
            }
            { pointer("rule-now", low) }
            { text(classes!("rule-now-word"), low, 2.15, rule.now_word) }
        </>
    }
}

fn pointer(class: &'static str, at: f64) -> Html {
    html! {
        <svg class="rule-pointer" x={percent(at)} y={em(PLATE)} width="1em" height="1em"
            viewBox="0 0 10 10" overflow="visible">
            <path {class} d="M0 0L-5 -9H5Z" />
        </svg>
    }
}

/// Words near an end of the rule grow inwards from it.
fn text(class: Classes, at: f64, base: f64, word: &'static str) -> Html {
    let anchor = if at < 0.18 {
        "start"
    } else if at > 0.82 {
        "end"
    } else {
        "middle"
    };
    let nudge = match anchor {
        "start" => "-0.3em",
        "end" => "0.3em",
        _ => "0",
    };
    html! {
        <text {class} x={percent(at)} dx={nudge} y={em(base)} text-anchor={anchor}>{ word }</text>
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

    #[test]
    fn decades_stand_evenly_from_margin_to_margin() {
        assert!((place(1.0) - MARGIN).abs() < 1e-12);
        assert!((place(1e6) - (1.0 - MARGIN)).abs() < 1e-12);
        assert!((place(1e3) - 0.5).abs() < 1e-12);
        let step = place(1e2) - place(1e1);
        assert!((place(1e5) - place(1e4) - step).abs() < 1e-12);
    }

    #[test]
    fn what_is_off_the_scale_stands_at_its_end() {
        assert_eq!(place(0.0), place(1.0));
        assert_eq!(place(1e9), place(1e6));
    }

    #[test]
    fn ticks_are_nine_to_a_decade_and_in_order() {
        let ticks = ticks();
        assert_eq!(ticks.len(), 9 * 6 + 1);
        assert!(ticks.windows(2).all(|pair| pair[0].0.0 < pair[1].0.0));
        assert_eq!(ticks.iter().filter(|tick| tick.1.1 == 42.0).count(), 7);
    }
}
