//! Each kind of key, drawn flat in millimetres in one view box.

use self_check_core::questions::Choice;
use yew::prelude::*;

use super::blade::{AXIS, Blade, HEIGHT};
use super::key::{blade, bow, key};
use super::path::{circle, polygon, strokes};
use super::pattern::DrawnPattern;
use super::view::{Ink, Layer, draw, scene};

/// The drawing of a kind of key; nothing for a choice of another question.
pub fn kind(choice: Choice) -> Option<Html> {
    let drawing = match choice {
        Choice::CutsOnOneEdge => key(DrawnPattern::DEMONSTRATION),
        Choice::CutsOnBothEdges => both_edges(),
        Choice::Dimples => dimples(),
        Choice::Tube => scene(TUBE),
        Choice::LeverFlag => scene(LEVER_FLAG),
        Choice::InteriorWarded => scene(INTERIOR_WARDED),
        Choice::PlasticHeadWithChip => plastic_head(),
        Choice::CardFobCodeOrPhone => scene(CARD_FOB_PHONE),
        _ => return None,
    };
    Some(drawing)
}

fn both_edges() -> Html {
    let outline = Blade::new(DrawnPattern::DEMONSTRATION).outline_of_both_edges();
    let end = 28.0;
    html! {
        <>
            { draw(Ink::Metal, polygon(&outline)) }
            { draw(Ink::Fine, strokes([((0.0, AXIS), (end, AXIS))])) }
            { bow() }
        </>
    }
}

/// Hollows stand where a family's cuts stand, in two rows.
fn dimples() -> Html {
    let positions = Blade::new(DrawnPattern::EUROPEAN);
    let hollows = (1..=5_u8).zip(DIMPLES).map(|(cut, (down, radius))| {
        let centre = (positions.cut_centre(cut), HEIGHT * down);
        html! { <>{ draw(Ink::Hole, circle(centre, radius)) }{ draw(Ink::Fine, circle(centre, radius * 0.45)) }</> }
    });
    html! {
        <>
            { draw(Ink::Metal, "M0 0H25.5Q29 .6 29 4.2 29 7.8 25.5 8.4H0Z") }
            { for hollows }
            { draw(Ink::Fine, "M0 7.3H25.6") }
            { bow() }
        </>
    }
}

/// How far down the blade each hollow stands, as a share of its height, and its radius.
const DIMPLES: [(f64, f64); 5] = [
    (0.34, 1.3),
    (0.6, 1.05),
    (0.34, 1.05),
    (0.6, 1.35),
    (0.34, 1.2),
];

fn plastic_head() -> Html {
    html! {
        <>
            { blade(&Blade::new(DrawnPattern::EUROPEAN)) }
            { scene(PLASTIC_HEAD) }
        </>
    }
}

const PLASTIC_HEAD: &[Layer] = &[
    Layer::Draw(
        Ink::Leather,
        "M1.5 -1.6Q1.5 -3 0 -3.6L-8 -7.2Q-9.6 -8 -11.4 -8H-20Q-26.5 -8 -26.5 -1.5V9.9Q-26.5 16.4 -20 16.4H-11.4Q-9.6 16.4 -8 15.6L0 12Q1.5 11.4 1.5 10Z",
    ),
    Layer::Draw(
        Ink::Hole,
        "M-24 4.2a2.4 2.4 0 1 0 4.8 0a2.4 2.4 0 1 0 -4.8 0Z",
    ),
    Layer::Draw(Ink::Hole, "M-13.6 .4H-6V8H-13.6Z"),
    Layer::Draw(
        Ink::Fine,
        "M-13.6 2.9H-11.2V5.5H-13.6M-6 2.9H-8.4V5.5H-6M-11.2 .4V2.9M-8.4 .4V2.9M-11.2 5.5V8M-8.4 5.5V8",
    ),
];

const TUBE: &[Layer] = &[
    Layer::Draw(Ink::Metal, "M0 1.2H15.5V7.2H0Z"),
    Layer::Draw(Ink::Fine, "M0 2.4H15.5M0 6.2H15.5"),
    Layer::Draw(
        Ink::Hole,
        "M12.6 1.2H15.5V2.5H12.6ZM11.4 3.5H15.5V4.9H11.4ZM13.4 5.9H15.5V7.2H13.4Z",
    ),
    Layer::Shade(&[(0.0, 5.0), (11.0, 5.0), (11.0, 7.0), (0.0, 7.0)], 0.9),
    // The open end, seen from the front.
    Layer::Draw(Ink::Metal, "M19.2 4.2a5 5 0 1 0 10 0a5 5 0 1 0 -10 0Z"),
    Layer::Draw(
        Ink::Hole,
        "M21.3 4.2a2.9 2.9 0 1 0 5.8 0a2.9 2.9 0 1 0 -5.8 0Z",
    ),
    Layer::Draw(
        Ink::Solid,
        "M23.5 -1.1H24.9V1.1H23.5ZM27.3 .2L28.4 1.3 26.8 2.7 25.9 1.8ZM21.1 .2L20 1.3 21.6 2.7 22.5 1.8ZM29.4 4.9H27.3V3.5H29.4ZM19 4.9H21.1V3.5H19ZM27.3 8.2L28.4 7.1 26.8 5.7 25.9 6.6ZM21.1 8.2L20 7.1 21.6 5.7 22.5 6.6Z",
    ),
    Layer::Draw(
        Ink::Metal,
        "M0 -1.2V9.6Q-1 10 -2.4 10.6A11.6 11.6 0 1 1 -2.4 -2.2Q-1 -1.6 0 -1.2Z",
    ),
    Layer::Draw(
        Ink::Fine,
        "M-21.8 4.2a9.7 9.7 0 1 0 19.4 0a9.7 9.7 0 1 0 -19.4 0Z",
    ),
    Layer::Draw(
        Ink::Hole,
        "M-21 4.2a2.7 2.7 0 1 0 5.4 0a2.7 2.7 0 1 0 -5.4 0Z",
    ),
];

const LEVER_FLAG: &[Layer] = &[
    Layer::Draw(
        Ink::Metal,
        "M17.2 5.4V13.6H18.7V11.8H20.2V14.4H21.7V12.6H23.2V14H24.7V11.2H26.2V5.4Z",
    ),
    Layer::Shade(&[(17.2, 5.4), (26.2, 5.4), (26.2, 8.0), (17.2, 8.0)], 0.9),
    Layer::Draw(Ink::Metal, "M-2 2.8H27.4Q29 2.8 29 4.2 29 5.6 27.4 5.6H-2Z"),
    Layer::Draw(Ink::Metal, "M.6 1.4H3V7H.6ZM14.4 1.8H16.2V6.6H14.4Z"),
    Layer::Draw(
        Ink::Metal,
        "M-26.5 4.2C-26.5 -3.6 -20.5 -6.8 -14 -6.8 -7.4 -6.8 -4.6 -2.4 -.6 1.6V6.8C-4.6 10.8 -7.4 15.2 -14 15.2 -20.5 15.2 -26.5 12 -26.5 4.2Z",
    ),
    Layer::Draw(
        Ink::Hole,
        "M-22.6 4.2C-22.6 -1 -18.6 -3.2 -14 -3.2 -9.6 -3.2 -7.6 .6 -5 4.2 -7.6 7.8 -9.6 11.6 -14 11.6 -18.6 11.6 -22.6 9.4 -22.6 4.2Z",
    ),
];

const INTERIOR_WARDED: &[Layer] = &[
    Layer::Draw(Ink::Metal, "M18.4 5.4V15H27V5.4Z"),
    Layer::Draw(Ink::Hole, "M22 15V9.4H23.4V15Z"),
    Layer::Draw(
        Ink::Metal,
        "M-4 2.8H27.6Q29.4 2.8 29.4 4.2 29.4 5.6 27.6 5.6H-4Z",
    ),
    Layer::Draw(Ink::Metal, "M-1.4 1.2H1V7.2H-1.4ZM2.2 1.8H3.6V6.6H2.2Z"),
    Layer::Draw(
        Ink::Metal,
        "M-2 4.2C-2 8 -5 9.4 -7.2 9 -6.8 13.4 -9.6 16 -13.2 16 -16.6 16 -19.4 13.4 -18.8 9.4 -23 10 -26.4 8 -26.4 4.2 -26.4 .4 -23 -1.6 -18.8 -1 -19.4 -5 -16.6 -7.6 -13.2 -7.6 -9.6 -7.6 -6.8 -5 -7.2 -.6 -5 -1 -2 .4 -2 4.2Z",
    ),
    Layer::Draw(
        Ink::Hole,
        "M-16 -2.6a2.8 2.8 0 1 0 5.6 0a2.8 2.8 0 1 0 -5.6 0ZM-16 11a2.8 2.8 0 1 0 5.6 0a2.8 2.8 0 1 0 -5.6 0ZM-23.6 4.2a2.8 2.8 0 1 0 5.6 0a2.8 2.8 0 1 0 -5.6 0Z",
    ),
];

const CARD_FOB_PHONE: &[Layer] = &[
    Layer::Draw(
        Ink::Hole,
        "M-26.5 -2.5Q-26.5 -4.5 -24.5 -4.5H-2.5Q-.5 -4.5 -.5 -2.5V11.5Q-.5 13.5 -2.5 13.5H-24.5Q-26.5 13.5 -26.5 11.5Z",
    ),
    Layer::Draw(Ink::Metal, "M-23 1H-17.4V6H-23Z"),
    Layer::Draw(
        Ink::Fine,
        "M-23 3.5H-21.2M-17.4 3.5H-19.2M-21.2 1V6M-19.2 1V6M-23 10H-12",
    ),
    Layer::Draw(
        Ink::Leather,
        "M9 -8C12 -8 13.2 -6 13.2 -3.4 13.2 -1.4 15 .6 15 4.6A6 6 0 0 1 3 4.6C3 .6 4.8 -1.4 4.8 -3.4 4.8 -6 6 -8 9 -8Z",
    ),
    Layer::Draw(Ink::Hole, "M7.5 -4.8a1.5 1.5 0 1 0 3 0a1.5 1.5 0 1 0 -3 0Z"),
    Layer::Draw(
        Ink::Hole,
        "M18.5 -6.5Q18.5 -8 20 -8H28Q29.5 -8 29.5 -6.5V14.9Q29.5 16.4 28 16.4H20Q18.5 16.4 18.5 14.9Z",
    ),
    Layer::Draw(Ink::Fine, "M18.5 -4.6H29.5M18.5 12.4H29.5"),
];
