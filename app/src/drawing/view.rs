//! What all drawings share: the frame with its title and description, the inks, and static scenes.

use yew::prelude::*;

use super::path::{Point, hatch, strokes};

/// What a drawing shows, in words; a drawing without words is hidden from assistive technology
/// because the text beside it says the same.
pub type Words<'a> = Option<(&'a AttrValue, &'a AttrValue)>;

/// With what a path is drawn: one class of the style sheet each.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ink {
    /// Outline alone.
    Contour,
    /// The brass of a key.
    Metal,
    /// A hole, or paper laid on something.
    Hole,
    /// Leather.
    Leather,
    /// A fine line.
    Fine,
    /// Filled with ink.
    Solid,
    /// A seam.
    Stitch,
    /// What is not there.
    Ghost,
    /// What to look at.
    Marked,
}

/// One layer of a static scene.
#[derive(Clone, Copy, Debug)]
pub enum Layer {
    /// Path data.
    Draw(Ink, &'static str),
    /// Shading through a shape, with the gap between its strokes.
    Shade(&'static [Point], f64),
    /// A small key, placed by an SVG transform.
    Key(&'static str),
    /// The outline of a small key that is not there.
    MissingKey(&'static str),
}

/// A small key: the middle of its bow at the origin, the blade to the right, 22 long.
const SMALL_KEY: &str = "M6 -1.7A6.2 6.2 0 1 0 6 1.7H21.2L22.6 .2 21 -1.7H19.6L18.2 -.4 17 -1.7H15.8L14.2 .3 12.4 -1.7H11.4L10 -.7 8.8 -1.7Z";
const SMALL_KEY_HOLE: &str = "M-4.4 0a1.6 1.6 0 1 0 3.2 0a1.6 1.6 0 1 0 -3.2 0Z";

/// An SVG image of `view_box`, or of the size its class gives it.
pub fn image(
    class: &'static str,
    view_box: Option<&'static str>,
    words: Words,
    content: Html,
) -> Html {
    match words {
        Some((title, desc)) => html! {
            <svg {class} viewBox={view_box} role="img" focusable="false">
                <title>{ title }</title>
                <desc>{ desc }</desc>
                { content }
            </svg>
        },
        None => html! {
            <svg {class} viewBox={view_box} aria-hidden="true" focusable="false">{ content }</svg>
        },
    }
}

/// One path.
pub fn draw(ink: Ink, d: impl Into<AttrValue>) -> Html {
    html! { <path class={ink.class()} d={d.into()} /> }
}

/// Shading made of `lines`.
pub fn shade(lines: Vec<(Point, Point)>) -> Html {
    html! { <path class="hatch" d={strokes(lines)} /> }
}

/// A static scene.
pub fn scene(layers: &'static [Layer]) -> Html {
    layers.iter().map(layer).collect()
}

/// `content` moved and scaled by an SVG transform.
pub fn placed(transform: impl Into<AttrValue>, content: Html) -> Html {
    html! { <g transform={transform.into()}>{ content }</g> }
}

impl Ink {
    fn class(self) -> &'static str {
        match self {
            Self::Contour => "contour",
            Self::Metal => "metal",
            Self::Hole => "hole",
            Self::Leather => "leather",
            Self::Fine => "fine",
            Self::Solid => "solid",
            Self::Stitch => "stitch",
            Self::Ghost => "ghost",
            Self::Marked => "marked",
        }
    }
}

fn layer(layer: &'static Layer) -> Html {
    match *layer {
        Layer::Draw(ink, d) => draw(ink, d),
        Layer::Shade(outline, gap) => shade(hatch(outline, gap)),
        Layer::Key(transform) => placed(
            transform,
            html! { <>{ draw(Ink::Metal, SMALL_KEY) }{ draw(Ink::Hole, SMALL_KEY_HOLE) }</> },
        ),
        Layer::MissingKey(transform) => placed(transform, draw(Ink::Ghost, SMALL_KEY)),
    }
}
