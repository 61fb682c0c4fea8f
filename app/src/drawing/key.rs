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
    let words = props.title.as_ref().map(|title| (title, &props.desc));
    key_drawing(words, props.pattern, props.stamp, props.frame)
}

/// The same for who needs no component.
pub fn key_drawing(words: Words, pattern: DrawnPattern, stamped: Stamp, frame: bool) -> Html {
    let content = html! {
        <>
            { key(pattern) }
            { stamp(stamped) }
            if frame {
                { draw(Ink::Marked, stamp_frame()) }
            }
        </>
    };
    image("drawing", Some(VIEW), words, content)
}

/// The view box of a whole key.
pub const VIEW: &str = "-25.5 -8.6 55.5 25.6";

/// The bow's outline: round, with the step of the shoulder where the blade begins.
pub const BOW: &str = "M0 -1.7C-1.2 -1.7 -2 -2 -2.9 -2.4 -4 -2.9 -4.9 -3.4 -6.2 -4.4A10.8 10.8 0 1 0 -6.2 12.8C-4.9 11.8 -4 11.3 -2.9 10.8 -2 10.4 -1.2 10.1 0 10.1Z";

/// The middle of the bow's circle.
pub const BOW_CENTRE: Point = (-12.73, AXIS);
const BOW_RADIUS: f64 = 10.8;
const RIM_RADIUS: f64 = 9.3;
/// Where the ring goes through.
pub const EYE: (Point, f64) = ((-18.3, AXIS), 2.5);
/// Middle of the place where a stamp most often stands.
pub const STAMP_CENTRE: Point = (-9.4, AXIS);
const DIGIT: f64 = 1.15;
const DIGIT_STEP: f64 = 1.9;

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
            { shade(hatch(&sickle(), 0.8)) }
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
    rectangle((x - 5.6, y - 2.2), 11.2, 4.4)
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

/// A place on the rim, above.
pub fn rim_frame() -> String {
    let spokes = || spokes((-0.5, -0.866_025_403_784_438_6), 11);
    let outer = spokes().map(|spoke| on_spoke(spoke, BOW_RADIUS + 0.9));
    let inner = spokes().map(|spoke| on_spoke(spoke, RIM_RADIUS - 0.9));
    let mut outline: Vec<Point> = outer.collect();
    outline.extend(inner.collect::<Vec<_>>().into_iter().rev());
    polygon(&outline)
}

/// The shaded side of the bow: a sickle between its edge and its rim, below, thickest in its middle.
fn sickle() -> Vec<Point> {
    const COUNT: usize = 25;
    let spokes = || spokes((0.6, 0.8), COUNT);
    let mut outline: Vec<Point> = spokes().map(|spoke| on_spoke(spoke, BOW_RADIUS)).collect();
    let inner = spokes().enumerate().map(|(index, spoke)| {
        let along = index as f64 / (COUNT as f64 - 1.0);
        let thickness = 4.0 * along * (1.0 - along) * (BOW_RADIUS - RIM_RADIUS);
        on_spoke(spoke, BOW_RADIUS - thickness)
    });
    outline.extend(inner.collect::<Vec<_>>().into_iter().rev());
    outline
}

/// Directions from the bow's middle, each turned by 6° from the one before, clockwise on the page.
fn spokes(first: Point, count: usize) -> impl Iterator<Item = Point> {
    const COS: f64 = 0.994_521_895_368_273_3;
    const SIN: f64 = 0.104_528_463_267_653_47;
    let turn = |&(x, y): &Point| Some((x * COS - y * SIN, x * SIN + y * COS));
    std::iter::successors(Some(first), turn).take(count)
}

fn on_spoke((x, y): Point, radius: f64) -> Point {
    (BOW_CENTRE.0 + radius * x, BOW_CENTRE.1 + radius * y)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shading_lies_between_rim_and_edge() {
        for (x, y) in sickle() {
            let radius = (x - BOW_CENTRE.0).hypot(y - BOW_CENTRE.1);
            assert!((RIM_RADIUS - 1e-6..=BOW_RADIUS + 1e-6).contains(&radius));
        }
    }

    #[test]
    fn bow_is_closed_along_the_shoulder_and_its_circle_meets_the_neck() {
        assert!(BOW.starts_with("M0 -1.7") && BOW.ends_with(" 0 10.1Z"));
        for y in [-4.4, 12.8] {
            let reach = (-6.2 - BOW_CENTRE.0).hypot(y - BOW_CENTRE.1);
            assert!((reach - BOW_RADIUS).abs() < 0.01);
        }
    }

    #[test]
    fn digits_stand_centred_and_inside_the_frame() {
        assert_eq!(digits((0.0, 0.0), 1).matches('Z').count(), 1);
        let five = digits(STAMP_CENTRE, 5);
        assert_eq!(five.matches('Z').count(), 5);
        let half_row = DIGIT_STEP * 2.0 + DIGIT / 2.0;
        assert!(half_row < 5.6);
    }
}
