//! The board: keys on their hooks, and the doors they open. Words stand beside each drawing, so
//! the drawings are silent.

use self_check_core::household::DoorKind;
use yew::prelude::*;

use super::key::{EYE, key};
use super::path::number;
use super::pattern::DrawnPattern;
use super::scenes::{Scene, doors, leaves};
use super::view::{Ink, draw, image, placed, scene};

/// Which door.
#[derive(Properties, PartialEq)]
pub struct DoorDrawingProps {
    /// What kind.
    pub kind: DoorKind,
    /// Whether it opens to a key that could be in wrong hands: a broken line stands round it.
    #[prop_or(false)]
    pub is_marked: bool,
}

/// A door.
#[component]
pub fn DoorDrawing(props: &DoorDrawingProps) -> Html {
    let content = html! {
        <>
            { scene(leaf(props.kind)) }
            if props.is_marked {
                { draw(Ink::Marked, "M-1 -1H49V49H-1Z") }
            }
        </>
    };
    image("drawing door", Some("-2 -2 52 52"), None, content)
}

fn leaf(kind: DoorKind) -> Scene {
    match kind {
        DoorKind::FrontDoor => leaves::FRONT,
        DoorKind::BackDoor | DoorKind::SideDoor => leaves::GLAZED,
        DoorKind::PatioDoor => leaves::PATIO,
        DoorKind::FlatDoor => doors::FLAT,
        DoorKind::BuildingEntrance => doors::BLOCK,
        DoorKind::CellarDoor => leaves::CELLAR,
        DoorKind::RoomDoor | DoorKind::OtherDoor => leaves::PLAIN,
        DoorKind::Garage => doors::GARAGE,
        DoorKind::Workshop => leaves::WORKSHOP,
        DoorKind::Shed => leaves::SHED,
        DoorKind::Store => leaves::STORE,
        DoorKind::Gate => leaves::GATE,
        DoorKind::Mailbox => doors::MAILBOX,
        DoorKind::Cabinet => leaves::CABINET,
        DoorKind::Padlock => doors::PADLOCK,
    }
}

/// Which key.
#[derive(Properties, PartialEq)]
pub struct HungKeyProps {
    /// Whether it could be in wrong hands: a broken line stands round it.
    #[prop_or(false)]
    pub is_marked: bool,
}

/// The middle of the drawing, the hook's bend, and the size of the key on it.
const MIDDLE: f64 = 15.0;
const BEND: f64 = 9.0;
const SCALE: f64 = 0.95;

/// The demonstration key on its hook, blade down.
#[component]
pub fn HungKey(props: &HungKeyProps) -> Html {
    let ((eye, axis), _) = EYE;
    // Turned by a quarter, a point (x, y) of the key comes to (-y, x).
    let across = number(MIDDLE + axis * SCALE);
    let down = number(BEND - eye * SCALE);
    let place = format!(
        "translate({across} {down}) rotate(90) scale({})",
        number(SCALE)
    );
    let content = html! {
        <>
            { placed(place, key(DrawnPattern::DEMONSTRATION)) }
            { draw(Ink::Contour, HOOK) }
            if props.is_marked {
                { draw(Ink::Marked, "M.5 1H29.5V59.5H.5Z") }
            }
        </>
    };
    image("drawing hung-key", Some("-.5 0 31 60.5"), None, content)
}

/// From the rail down, round, and up again through the eye.
const HOOK: &str = "M15 0V5M15 5Q19 6 18.5 9 18 11.5 15.5 11 13.500 10.5 13.5 8.5";

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn eye_hangs_on_the_bend_of_the_hook_and_the_tip_stays_in_the_frame() {
        let ((eye, axis), _) = EYE;
        let place = |x: f64, y: f64| {
            let (across, down) = (MIDDLE + axis * SCALE, BEND - eye * SCALE);
            (across - y * SCALE, down + x * SCALE)
        };
        let (across, down) = place(eye, axis);
        assert!((across - MIDDLE).abs() < 1e-9 && (down - BEND).abs() < 1e-9);
        let (_, tip) = place(28.0, axis);
        assert!(tip < 59.0, "{tip}");
        let (_, top) = place(-23.53, axis);
        assert!(top > 1.0, "{top}");
    }
}
