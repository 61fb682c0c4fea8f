//! Where pictures of a key turn up: frames with a key in each.

use super::super::view::Ink::{Contour, Fine, Hole, Metal, Solid};
use super::super::view::Layer::{Draw, Key};
use super::Scene;

/// A message to a few.
pub const MESSAGE: Scene = &[
    Draw(
        Hole,
        "M3 8Q3 6 5 6H43Q45 6 45 8V33Q45 35 43 35H21L13 43V35H5Q3 35 3 33Z",
    ),
    Key("translate(15.5 20.5) scale(.94)"),
];

/// A post that anyone may see.
pub const PUBLIC_POST: Scene = &[
    Draw(Hole, "M7 3H41V45H7Z"),
    Draw(Fine, "M10 12H38V34H10Z"),
    Draw(Solid, "M10 7.5a1.8 1.8 0 1 0 3.6 0a1.8 1.8 0 1 0 -3.6 0Z"),
    Draw(Fine, "M16 7.5H28"),
    Key("translate(17 23) scale(.76)"),
    Draw(
        Solid,
        "M12 39.5a1.4 1.4 0 1 0 2.8 0a1.4 1.4 0 1 0 -2.8 0ZM17 39.5a1.4 1.4 0 1 0 2.8 0a1.4 1.4 0 1 0 -2.8 0ZM22 39.5a1.4 1.4 0 1 0 2.8 0a1.4 1.4 0 1 0 -2.8 0ZM27 39.5a1.4 1.4 0 1 0 2.8 0a1.4 1.4 0 1 0 -2.8 0ZM32 39.5a1.4 1.4 0 1 0 2.8 0a1.4 1.4 0 1 0 -2.8 0Z",
    ),
];

/// A room in a listing, a key on its table.
pub const LISTING: Scene = &[
    Draw(Hole, "M3 7H45V41H3Z"),
    Draw(Fine, "M3 7L12 15H36L45 7M12 15V30M36 15V30M12 30H36"),
    Draw(Hole, "M19 18.5H29V26H19Z"),
    Draw(Metal, "M10 34.5H38L40 38H8Z"),
    Key("translate(19.6 33) scale(.5)"),
    Draw(Contour, "M10 38V41M38 38V41"),
];

/// A video call, a key on the wall behind the speaker.
pub const VIDEO_CALL: Scene = &[
    Draw(
        Hole,
        "M4 7Q4 5 6 5H42Q44 5 44 7V35Q44 37 42 37H6Q4 37 4 35Z",
    ),
    Draw(Hole, "M12 17a5.4 5.4 0 1 0 10.8 0a5.4 5.4 0 1 0 -10.8 0Z"),
    Draw(Hole, "M7.5 37V34Q7.5 25.5 17.4 25.5 27.3 25.5 27.3 34V37Z"),
    Draw(Contour, "M35.5 9.6V12"),
    Key("translate(35.5 14.8) rotate(90) scale(.58)"),
    Draw(Contour, "M24 37V42.5M15 43.5H33"),
];

/// The round view of a doorbell camera: somebody at the door, a key in the hand.
pub const DOORBELL: Scene = &[
    Draw(Hole, "M3 24a21 21 0 1 0 42 0a21 21 0 1 0 -42 0Z"),
    Draw(
        Fine,
        "M6.2 13Q24 20 41.8 13M6.2 13Q10 26 4 30M41.8 13Q38 26 44 30",
    ),
    Draw(
        Hole,
        "M17.4 13.5a6.6 6.6 0 1 0 13.2 0a6.6 6.6 0 1 0 -13.2 0Z",
    ),
    Draw(
        Hole,
        "M9.5 39.4C10 29 15 23.5 24 23.5 33 23.5 38 29 38.5 39.4A21 21 0 0 1 9.5 39.4Z",
    ),
    Key("translate(18.6 34.4) scale(.68)"),
];
