//! The drawing of each question, made of the key and the small scenes.

use self_check_core::questions::Question;
use yew::prelude::*;

use super::key::{self, digits, key, rim_frame, stamp_frame};
use super::path::{Point, circle, number, rectangle, strokes};
use super::pattern::DrawnPattern;
use super::scenes::{Scene, doors};
use super::view::{Ink, Layer, draw, image, placed, scene};

/// The drawing of a question, with what it is and what it shows; nothing where each choice has its
/// own.
pub fn question_drawing(question: Question, title: &'static str, desc: &'static str) -> Html {
    match drawing(question) {
        Some((view_box, content)) => {
            let (title, desc) = (title.into(), desc.into());
            image("drawing", Some(view_box), Some((&title, &desc)), content)
        }
        None => html! {},
    }
}

/// Whether each choice of this question has its own drawing, so that the question needs none.
pub fn is_drawn_by_choices(question: Question) -> bool {
    drawing(question).is_none()
}

/// View box and drawing; `None` where each choice has its own.
fn drawing(question: Question) -> Option<(&'static str, Html)> {
    let drawing = match question {
        Question::MissingHow => ("0 0 208 60", from_home_to_town()),
        Question::WhoDecides => ("0 0 128 72", scene(SHARED_BUILDING)),
        Question::ChangedSince => ("0 0 182 52", before_and_after()),
        Question::Copies => ("0 0 136 44", four_hooks()),
        Question::Holders => ("0 0 208 96", through_hands()),
        Question::Marking => ("-25.5 -9.6 55.5 26.6", stamp_places()),
        Question::NumberIs => ("0 0 184 92", two_kinds_of_number()),
        Question::OtherWays => ("0 0 96 72", scene(DOOR_FROM_INSIDE)),
        Question::Reason
        | Question::KeyKind
        | Question::Opens
        | Question::Kept
        | Question::NumberElsewhere
        | Question::Seen
        | Question::Link => return None,
    };
    Some(drawing)
}

fn at(x: f64, y: f64, scale: f64, content: Html) -> Html {
    let place = format!(
        "translate({} {}) scale({})",
        number(x),
        number(y),
        number(scale)
    );
    placed(place, content)
}

fn from_home_to_town() -> Html {
    let gone = [
        "translate(18 53) scale(.66)",
        "translate(88 53) scale(.66)",
        "translate(172 53) scale(.66)",
    ];
    let gone = gone.map(|place| placed(place, scene(&[Layer::MissingKey("")])));
    html! {
        <>
            { at(0.0, 0.0, 1.0, scene(doors::HOUSE)) }
            { scene(STREET_AND_TOWN) }
            { for gone }
        </>
    }
}

const STREET_AND_TOWN: &[Layer] = &[
    Layer::Draw(Ink::Contour, "M46 44H206"),
    Layer::Draw(Ink::Contour, "M72 44V33M94 44V33M116 44V33"),
    Layer::Draw(
        Ink::Hole,
        "M64 26a8 8 0 1 0 16 0a8 8 0 1 0 -16 0ZM86 26a8 8 0 1 0 16 0a8 8 0 1 0 -16 0ZM108 26a8 8 0 1 0 16 0a8 8 0 1 0 -16 0Z",
    ),
    Layer::Draw(
        Ink::Fine,
        "M72 33V24M72 29L76 25M94 33V24M94 29L90 25M116 33V24M116 29L120 25",
    ),
    Layer::Draw(
        Ink::Hole,
        "M148 44V22H160V44ZM160 44V8L168 3 176 8V44ZM176 44V17H190V44ZM190 44V27H202V44Z",
    ),
    Layer::Draw(
        Ink::Fine,
        "M152 27H156M152 32H156M152 37H156M165 14H171M165 20H171M165 26H171M165 32H171M180 23H186M180 29H186M180 35H186M194 33H198M194 38H198",
    ),
];

const SHARED_BUILDING: &[Layer] = &[
    Layer::Draw(Ink::Hole, "M12 68V14L64 3 116 14V68Z"),
    Layer::Draw(Ink::Contour, "M12 41H116M64 41V12M47 41V68M81 41V68"),
    Layer::Shade(
        &[
            (12.0, 14.0),
            (64.0, 3.0),
            (116.0, 14.0),
            (116.0, 17.0),
            (12.0, 17.0),
        ],
        2.4,
    ),
    // One home's own door, and the other homes'.
    Layer::Draw(Ink::Metal, "M74 41V22H87V41Z"),
    Layer::Draw(Ink::Solid, "M83.4 32a1 1 0 1 0 2 0a1 1 0 1 0 -2 0Z"),
    Layer::Draw(
        Ink::Fine,
        "M41 41V22H54V41M96 25H108V35H96ZM20 25H32V35H20ZM20 49H36V59H20ZM92 49H108V59H92Z",
    ),
    // The entrance that serves them all.
    Layer::Draw(Ink::Metal, "M54 68V46H74V68Z"),
    Layer::Draw(Ink::Contour, "M64 46V68"),
    Layer::Draw(
        Ink::Solid,
        "M61 57a.9 .9 0 1 0 1.8 0a.9 .9 0 1 0 -1.8 0ZM65.2 57a.9 .9 0 1 0 1.8 0a.9 .9 0 1 0 -1.8 0Z",
    ),
    Layer::Draw(Ink::Contour, "M2 68H126"),
];

/// The front of a cylinder with its keyway, turned or not.
fn lock(x: f64, turned: bool) -> Html {
    let turn = if turned { "rotate(50 24 26)" } else { "" };
    html! {
        <>
            { draw(Ink::Hole, circle((x + 24.0, 26.0), 21.0)) }
            <g transform={format!("translate({} 0)", number(x))}>
                { placed(turn, scene(PLUG)) }
            </g>
        </>
    }
}

const PLUG: &[Layer] = &[
    Layer::Draw(Ink::Metal, "M12 26a12 12 0 1 0 24 0a12 12 0 1 0 -24 0Z"),
    Layer::Draw(
        Ink::Solid,
        "M22.6 17H25.4V23.5L24.2 25 25.4 26.5V34H22.6V28.6L23.6 27.2 22.6 25.6Z",
    ),
];

fn before_and_after() -> Html {
    html! {
        <>
            { lock(0.0, true) }
            { draw(Ink::Contour, "M40 8a24 24 0 0 1 7 13M47.6 14.6L47.2 21.6 41.4 17.6") }
            { at(68.0, 23.2, 0.64, old_key()) }
            { draw(Ink::Fine, "M91 3V49") }
            { lock(95.0, true) }
            { draw(Ink::Contour, "M135 8a24 24 0 0 1 7 13M142.6 14.6L142.2 21.6 136.4 17.6") }
            { at(162.0, 9.6, 0.64, old_key()) }
            { draw(Ink::Marked, "M148 3.5L180 21M180 3.5L148 21") }
            { at(162.0, 36.4, 0.64, key(DrawnPattern::OTHER)) }
        </>
    }
}

/// The key of before, in paper's colour, so that it is told from the new one at a glance.
fn old_key() -> Html {
    html! { <g class="old-key">{ key(DrawnPattern::DEMONSTRATION) }</g> }
}

fn four_hooks() -> Html {
    let hooks = [18.0, 51.0, 84.0, 117.0];
    let keys = hooks[..3].iter().map(|&x| {
        placed(
            format!("translate({} 17) rotate(90)", number(x)),
            scene(&[Layer::Key("scale(1.05)")]),
        )
    });
    html! {
        <>
            { draw(Ink::Hole, rectangle((2.0, 2.0), 132.0, 6.0)) }
            { for keys }
            { placed("translate(117 17) rotate(90)", scene(&[Layer::MissingKey("scale(1.05)")])) }
            { for hooks.map(|x| draw(Ink::Contour, format!("M{0} 8V12.5a3 3 0 0 0 6 0", number(x - 3.0)))) }
        </>
    }
}

fn through_hands() -> Html {
    let hands: [(Point, Scene); 5] = [
        ((0.0, 0.0), doors::HOUSE),
        ((0.0, 52.0), doors::HOUSE),
        ((162.0, 0.0), doors::CAR),
        ((166.0, 52.0), doors::SUITCASE),
        ((83.0, 58.0), doors::TOOLBOX),
    ];
    let ends = [
        (46.0, 24.0),
        (46.0, 74.0),
        (160.0, 26.0),
        (168.0, 74.0),
        (104.0, 66.0),
    ];
    html! {
        <>
            { draw(Ink::Ghost, strokes(ends.map(|end| ((104.0, 38.0), end)))) }
            { for hands.map(|((x, y), layers)| at(x, y, 0.86, scene(layers))) }
            { at(102.0, 33.0, 1.0, key(DrawnPattern::DEMONSTRATION)) }
        </>
    }
}

/// The face of the bow, its rim, and a place beside the shoulder.
fn stamp_places() -> Html {
    html! {
        <>
            { key(DrawnPattern::DEMONSTRATION) }
            { draw(Ink::Solid, digits(key::STAMP_CENTRE, 5)) }
            { draw(Ink::Marked, stamp_frame()) }
            { draw(Ink::Marked, rim_frame()) }
            { draw(Ink::Marked, "M-3.2 6.6H8V9.2H-3.2Z") }
        </>
    }
}

/// Above, the keys to two doors bear the same mark. Below, one bears a mark that the other lacks.
fn two_kinds_of_number() -> Html {
    let beside_its_door = |x: f64, y: f64, door: Scene, pattern: DrawnPattern, marks: Html| {
        let marked = html! { <>{ key(pattern) }{ marks }</> };
        html! {
            <>
                { at(x, y, 0.82, scene(door)) }
                { at(x + 62.0, y + 17.0, 0.84, marked) }
            </>
        }
    };
    let digits = || draw(Ink::Solid, THREE_DIGITS);
    let code = html! {
        <>
            { draw(Ink::Contour, LETTER) }
            { draw(Ink::Solid, THREE_AFTER_IT) }
        </>
    };
    let (one, other) = (DrawnPattern::DEMONSTRATION, DrawnPattern::OTHER);
    html! {
        <>
            { beside_its_door(0.0, 0.0, doors::HOUSE, one, digits()) }
            { beside_its_door(96.0, 0.0, doors::GARAGE, other, digits()) }
            { draw(Ink::Fine, "M0 46H184") }
            { beside_its_door(0.0, 52.0, doors::HOUSE, one, code) }
            { beside_its_door(96.0, 52.0, doors::GARAGE, other, html! {}) }
        </>
    }
}

// Bigger than to scale, so that a small drawing still shows them; the two marks differ in shape.
const THREE_DIGITS: &str = "M-14.2 2.4H-11.8V6H-14.2ZM-10.6 2.4H-8.2V6H-10.6ZM-7 2.4H-4.6V6H-7Z";
const LETTER: &str = "M-15.4 6L-13.9 2.4 -12.4 6Z";
const THREE_AFTER_IT: &str = "M-11.4 2.4H-9.4V6H-11.4ZM-8.4 2.4H-6.4V6H-8.4ZM-5.4 2.4H-3.4V6H-5.4Z";

const DOOR_FROM_INSIDE: &[Layer] = &[
    Layer::Draw(Ink::Hole, "M18 70V3H66V70Z"),
    Layer::Draw(Ink::Metal, "M22 70V7H62V70Z"),
    Layer::Draw(Ink::Fine, "M27 12H49V32H27ZM27 42H49V64H27Z"),
    // A second lock, the main lock with its handle, and the bolt.
    Layer::Draw(
        Ink::Hole,
        "M53.4 20a3.6 3.6 0 1 0 7.2 0a3.6 3.6 0 1 0 -7.2 0Z",
    ),
    Layer::Draw(Ink::Hole, "M54 34H60V48H54Z"),
    Layer::Draw(Ink::Contour, "M57 38H48.6"),
    Layer::Draw(
        Ink::Solid,
        "M56.2 18.4H57.8V21.6H56.2ZM56.2 42H57.8V45.4H56.2Z",
    ),
    Layer::Draw(Ink::Hole, "M50 56H60V60.4H50ZM66 55H71V61.4H66Z"),
    Layer::Draw(Ink::Contour, "M53 58.2H68M54.6 58.2V53.6"),
    // A pad with buttons beside it.
    Layer::Draw(Ink::Hole, "M75 24H91V47H75Z"),
    Layer::Draw(
        Ink::Solid,
        "M78 28H80.6V30.6H78ZM81.8 28H84.4V30.6H81.8ZM85.6 28H88.2V30.6H85.6ZM78 32.4H80.6V35H78ZM81.8 32.4H84.4V35H81.8ZM85.6 32.4H88.2V35H85.6ZM78 36.8H80.6V39.4H78ZM81.8 36.8H84.4V39.4H81.8ZM85.6 36.8H88.2V39.4H85.6ZM81.8 41.2H84.4V43.8H81.8Z",
    ),
    Layer::Draw(Ink::Contour, "M2 70H94"),
];
