//! The key with words on it: its parts named, its positions numbered, a cut that hides.
//!
//! Words stand at per cent of the drawing and keep the reader's own size. Where there is no room,
//! letters stand in their place and a list below the drawing says the words.

use yew::prelude::*;

use super::blade::{AXIS, Blade};
use super::key::{Stamp, key, stamp};
use super::path::{Point, circle, number, polyline, rectangle, strokes};
use super::pattern::DrawnPattern;
use super::view::{Ink, Words, draw, image};

/// The parts that can be named, with where the word stands and where its leader points.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// What one holds.
    Bow,
    /// The step against which the key stops in the lock.
    Shoulder,
    /// What goes into the lock.
    Blade,
    /// A dip along the edge.
    Cut,
    /// The groove along the blade.
    Groove,
    /// The end of the blade.
    Tip,
    /// The middle of the blade where it begins.
    FirstEnd,
    /// The middle of the blade where it ends.
    LastEnd,
}

/// A key and the parts to name.
#[derive(Properties, PartialEq)]
pub struct KeyPartsProps {
    /// What the drawing is.
    pub title: AttrValue,
    /// What it shows.
    pub desc: AttrValue,
    /// The parts and their words.
    pub parts: Vec<(Part, AttrValue)>,
    /// Whether the words begin with the letters that stand in their place where there is no room.
    #[prop_or_default]
    pub has_letters: bool,
}

/// A key with its parts named.
#[component]
pub fn KeyParts(props: &KeyPartsProps) -> Html {
    let words: Words = Some((&props.title, &props.desc));
    let content = html! {
        <>
            { geometry(PARTS_BOX, html! {
                <>
                    { key(DrawnPattern::DEMONSTRATION) }
                    { for props.parts.iter().map(|(part, _)| leader(*part)) }
                </>
            }) }
            { for props.parts.iter().zip('A'..).map(|((part, word), letter)| {
                named(PARTS_BOX, part.word_at(), word, letter)
            }) }
        </>
    };
    html! {
        <div class="labelled">
            { image("drawing drawing-parts", None, words, content) }
            <ul class="legend" aria-hidden="true">
                { for props.parts.iter().zip('A'..).map(|((_, word), letter)| html! {
                    <li>if !props.has_letters { <b>{ letter }</b> }{ word }</li>
                }) }
            </ul>
        </div>
    }
}

/// A key with its positions numbered.
#[derive(Properties, PartialEq)]
pub struct NumberedCutsProps {
    /// What the drawing is.
    pub title: AttrValue,
    /// What it shows.
    pub desc: AttrValue,
    /// The invented pattern; a position without a cut of its own is marked.
    #[prop_or(DrawnPattern::DEMONSTRATION)]
    pub pattern: DrawnPattern,
    /// What stands under each position, shoulder first; the position's number where empty.
    #[prop_or_default]
    pub under: Vec<AttrValue>,
    /// What is stamped on the bow.
    #[prop_or_default]
    pub stamp: Stamp,
}

/// A key with a tick and a number over each position, a family's own spacing apart.
#[component]
pub fn NumberedCuts(props: &NumberedCutsProps) -> Html {
    let blade = Blade::new(props.pattern);
    let words: Words = Some((&props.title, &props.desc));
    let cuts = 1..=props.pattern.geometry().cuts;
    let content = html! {
        <>
            { geometry(CUTS_BOX, html! {
                <>
                    { key(props.pattern) }
                    { stamp(props.stamp) }
                    { rule(&blade) }
                    <path class="leader" d={strokes(leaders(props.pattern))} />
                    { for props.pattern.hidden().map(|cut| {
                        draw(Ink::Marked, circle((blade.cut_centre(cut), 0.9), 2.1))
                    }) }
                </>
            }) }
            { for cuts.clone().map(|cut| {
                text_at(CUTS_BOX, (blade.cut_centre(cut), SCALE_TOP - 1.0), html! { { cut } })
            }) }
            { for cuts.zip(&props.under).map(|(cut, word)| {
                text_at(CUTS_BOX, (blade.cut_centre(cut), UNDER), html! { { word } })
            }) }
        </>
    };
    image("drawing drawing-cuts", None, words, content)
}

/// A box in millimetres: left, top, width, height. The style sheet gives the frame the same shape.
type ViewBox = (f64, f64, f64, f64);

const PARTS_BOX: ViewBox = (-26.0, -15.0, 57.0, 36.0);
const CUTS_BOX: ViewBox = (-26.0, -12.0, 57.0, 29.0);
/// Where the brass rule lies above the blade.
const SCALE_TOP: f64 = -7.0;
const SCALE_BOTTOM: f64 = -3.8;
/// Where words stand below the blade.
const UNDER: f64 = 12.4;

impl Part {
    fn word_at(self) -> Point {
        match self {
            Self::Bow => (-12.7, -12.2),
            Self::Shoulder | Self::FirstEnd => (2.5, -12.2),
            Self::Cut => (17.8, -12.2),
            Self::Groove => (3.5, 18.6),
            Self::Blade => (14.5, 18.6),
            Self::Tip | Self::LastEnd => (26.0, 18.6),
        }
    }

    /// From the word to the part; the last point lies on it.
    fn leader(self) -> [Point; 2] {
        let (x, y) = self.word_at();
        let is_above = y < AXIS;
        let from = (x, if is_above { y + 1.0 } else { y - 2.4 });
        let to = match self {
            Self::Bow => (x, 0.2),
            Self::Shoulder => (0.2, -2.2),
            Self::Cut => (17.77, 3.05),
            Self::Groove => (3.5, 5.5),
            Self::Blade => (14.5, 7.3),
            Self::Tip => (26.9, 6.6),
            Self::FirstEnd => (0.0, AXIS),
            Self::LastEnd => (Blade::new(DrawnPattern::DEMONSTRATION).length, AXIS),
        };
        [from, to]
    }
}

/// A leader with a dot where it points.
fn leader(part: Part) -> Html {
    let line = part.leader();
    html! {
        <>
            <path class="leader" d={polyline(&line)} />
            { draw(Ink::Solid, circle(line[1], 0.32)) }
        </>
    }
}

/// A brass rule along the blade, from the shoulder, with a tick for each millimetre.
fn rule(blade: &Blade) -> Html {
    let plate = rectangle((0.0, SCALE_TOP), blade.length, SCALE_BOTTOM - SCALE_TOP);
    let ticks = (0..=blade.length as u8).map(|millimetre| {
        let length = if millimetre.is_multiple_of(5) {
            1.3
        } else {
            0.7
        };
        let x = f64::from(millimetre);
        ((x, SCALE_BOTTOM), (x, SCALE_BOTTOM - length))
    });
    html! {
        <>
            <path class="rule-plate" d={plate} />
            <path class="rule-ticks" d={strokes(ticks)} />
        </>
    }
}

/// From the rule down to the edge at each position.
fn leaders(pattern: DrawnPattern) -> Vec<(Point, Point)> {
    let geometry = pattern.geometry();
    let depths = pattern
        .depths()
        .iter()
        .map(|&steps| f64::from(steps) * geometry.step.get());
    let centres = geometry.cut_positions().map(|centre| centre.get());
    centres
        .zip(depths)
        .map(|(x, depth)| ((x, SCALE_TOP), (x, depth)))
        .collect()
}

/// The drawn part, filling the frame that words are placed on.
fn geometry(view: ViewBox, content: Html) -> Html {
    let (left, top, width, height) = view;
    let view_box = [left, top, width, height].map(number).join(" ");
    html! { <svg width="100%" height="100%" viewBox={view_box} overflow="visible">{ content }</svg> }
}

fn named(view: ViewBox, point: Point, word: &AttrValue, letter: char) -> Html {
    text_at(
        view,
        point,
        html! {
            <>
                <tspan class="mark-word">{ word }</tspan>
                <tspan class="mark-letter">{ letter }</tspan>
            </>
        },
    )
}

fn text_at(view: ViewBox, point: Point, content: Html) -> Html {
    let (x, y) = in_percent(view, point);
    html! { <text x={number(x) + "%"} y={number(y) + "%"} text-anchor="middle">{ content }</text> }
}

fn in_percent((left, top, width, height): ViewBox, (x, y): Point) -> Point {
    (100.0 * (x - left) / width, 100.0 * (y - top) / height)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_stand_inside_the_frame() {
        for part in [
            Part::Bow,
            Part::Shoulder,
            Part::Blade,
            Part::Cut,
            Part::Groove,
            Part::Tip,
            Part::FirstEnd,
            Part::LastEnd,
        ] {
            let (x, y) = in_percent(PARTS_BOX, part.word_at());
            assert!(
                (5.0..=95.0).contains(&x) && (2.0..=98.0).contains(&y),
                "{part:?}"
            );
        }
    }

    #[test]
    fn a_leader_stands_over_each_position_of_the_family() {
        for pattern in DrawnPattern::ALL {
            let geometry = pattern.geometry();
            let leaders = leaders(pattern);
            assert_eq!(leaders.len(), usize::from(geometry.cuts));
            for (position, (from, to)) in geometry.cut_positions().zip(leaders) {
                assert_eq!((from.0, to.0), (position.get(), position.get()));
            }
        }
    }

    #[test]
    fn cut_leader_ends_over_a_position() {
        let end = Part::Cut.leader()[1];
        let blade = Blade::new(DrawnPattern::DEMONSTRATION);
        let nearest = (1..=5)
            .map(|cut| (blade.cut_centre(cut) - end.0).abs())
            .fold(f64::MAX, f64::min);
        assert!(nearest < 0.1, "{nearest}");
    }
}
