//! A whole key: bow, shoulder and blade, drawn flat, in millimetres.

use yew::prelude::*;

use super::blade::{AXIS, Blade};
use super::path::{Point, circle, hatch, polygon, rectangle, strokes};
use super::pattern::DrawnPattern;
use super::view::{Ink, Words, draw, image, shade};

/// What a key's drawing shows besides the key.
#[derive(Properties, PartialEq)]
pub struct KeyDrawingProps {
    /// What it is; without it the drawing is hidden from assistive technology.
    #[prop_or_default]
    pub title: Option<AttrValue>,
    /// What it shows.
    #[prop_or_default]
    pub desc: AttrValue,
    /// The invented pattern.
    #[prop_or(DrawnPattern::DEMONSTRATION)]
    pub pattern: DrawnPattern,
    /// What is stamped on the bow.
    #[prop_or_default]
    pub stamp: Stamp,
    /// Whether a dashed frame stands round the stamp.
    #[prop_or(false)]
    pub frame: bool,
}

/// What may be stamped on the bow. A stamp is never drawn in digits: filled squares stand for them.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Stamp {
    /// Nothing.
    #[default]
    None,
    /// So many digits.
    Digits(u8),
}

/// A key drawn flat.
#[component]
pub fn KeyDrawing(props: &KeyDrawingProps) -> Html {
    let words: Words = props.title.as_ref().map(|title| (title, &props.desc));
    let content = html! {
        <>
            { key(props.pattern) }
            { stamp(props.stamp) }
            if props.frame {
                { draw(Ink::Marked, stamp_frame()) }
            }
        </>
    };
    image("drawing", Some(VIEW), words, content)
}

/// The view box of a whole key.
pub const VIEW: &str = "-28 -9.5 58 27.4";

/// The bow's outline: round, with the step of the shoulder where the blade begins.
pub const BOW: &str = "M0 -1.9C-1.5 -1.9 -2.3 -2.7 -3.7 -3.2 -5.1 -3.7 -6.1 -4.5 -7.2 -5.6A12 12 0 1 0 -7.2 14C-6.1 12.9 -5.1 12.1 -3.7 11.6 -2.3 11.1 -1.5 10.3 0 10.3Z";

/// The middle of the bow's circle.
pub const BOW_CENTRE: Point = (-14.12, AXIS);
const BOW_RADIUS: f64 = 12.0;
const RIM_RADIUS: f64 = 10.1;
/// Where the ring goes through.
const EYE: (Point, f64) = ((-21.0, AXIS), 2.7);
const STAMP_CENTRE: Point = (-11.2, AXIS);
const DIGIT: f64 = 1.15;
const DIGIT_STEP: f64 = 1.95;

/// The whole key with this pattern.
pub fn key(pattern: DrawnPattern) -> Html {
    html! { <>{ blade(&Blade::new(pattern)) }{ bow() }</> }
}

/// The blade alone.
pub fn blade(blade: &Blade) -> Html {
    html! {
        <>
            { draw(Ink::Metal, polygon(&blade.outline())) }
            { shade(blade.shade()) }
            { draw(Ink::Fine, strokes(blade.groove())) }
        </>
    }
}

/// The bow alone.
pub fn bow() -> Html {
    html! {
        <>
            { draw(Ink::Metal, BOW) }
            { shade(hatch(&crescent(), 0.95)) }
            { draw(Ink::Fine, circle(BOW_CENTRE, RIM_RADIUS)) }
            { draw(Ink::Hole, circle(EYE.0, EYE.1)) }
        </>
    }
}

/// The stamp on the bow.
pub fn stamp(stamp: Stamp) -> Html {
    match stamp {
        Stamp::None => html! {},
        Stamp::Digits(count) => draw(Ink::Solid, digits(STAMP_CENTRE, count)),
    }
}

/// The place on the bow where a stamp most often stands.
pub fn stamp_frame() -> String {
    let (x, y) = STAMP_CENTRE;
    rectangle((x - 6.2, y - 2.4), 12.4, 4.8)
}

/// A row of filled squares, one for each digit.
pub fn digits(centre: Point, count: u8) -> String {
    let first = centre.0 - DIGIT_STEP * (f64::from(count) - 1.0) / 2.0;
    (0..count)
        .map(|digit| first + DIGIT_STEP * f64::from(digit))
        .map(|x| {
            rectangle(
                (x - DIGIT / 2.0, centre.1 - DIGIT / 2.0 - 0.15),
                DIGIT,
                DIGIT + 0.3,
            )
        })
        .collect()
}

/// The shaded side of the bow: between its rim and its edge, below and to the right.
fn crescent() -> Vec<Point> {
    let outer = arc(BOW_RADIUS);
    let inner = arc(RIM_RADIUS);
    outer.into_iter().chain(inner.into_iter().rev()).collect()
}

/// Points on the lower half of a circle about the bow's middle, from the right to the left.
fn arc(radius: f64) -> Vec<Point> {
    // Turned by 6° each time.
    const COS: f64 = 0.994_521_895_368_273_4;
    const SIN: f64 = 0.104_528_463_267_653_46;
    let mut spoke = (0.66 * radius, 0.751_265_598_839_718 * radius);
    let mut points = Vec::new();
    for _ in 0..20 {
        points.push((BOW_CENTRE.0 + spoke.0, BOW_CENTRE.1 + spoke.1));
        spoke = (spoke.0 * COS - spoke.1 * SIN, spoke.0 * SIN + spoke.1 * COS);
    }
    points
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn crescent_lies_between_rim_and_edge() {
        for (x, y) in crescent() {
            let radius = (x - BOW_CENTRE.0).hypot(y - BOW_CENTRE.1);
            assert!((RIM_RADIUS - 1e-6..=BOW_RADIUS + 1e-6).contains(&radius));
        }
    }

    #[test]
    fn bow_is_closed_and_as_long_as_the_shoulder_is_high() {
        assert!(BOW.starts_with("M0 -1.9") && BOW.ends_with("0 10.3Z"));
        // The circle meets both ends of the neck.
        for y in [-5.6, 14.0] {
            let reach = (-7.2 - BOW_CENTRE.0).hypot(y - BOW_CENTRE.1);
            assert!((reach - BOW_RADIUS).abs() < 0.01);
        }
    }

    #[test]
    fn digits_stand_centred_and_inside_the_frame() {
        assert_eq!(digits((0.0, 0.0), 1).matches('Z').count(), 1);
        let five = digits(STAMP_CENTRE, 5);
        assert_eq!(five.matches('Z').count(), 5);
        let half_row = DIGIT_STEP * 2.0 + DIGIT / 2.0;
        assert!(half_row < 6.2);
    }
}
