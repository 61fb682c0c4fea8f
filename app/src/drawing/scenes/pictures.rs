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

/// The sign of a home for sale, a key hanging from it.
pub const LISTING: Scene = &[
    Draw(Contour, "M6 46V3M3 7H45"),
    Draw(Fine, "M14 7V11M38 7V11"),
    Draw(Hole, "M10 11H42V34H10Z"),
    Draw(Metal, "M18 31V22L26 15 34 22V31Z"),
    Draw(Hole, "M24 31V25.5H28V31Z"),
    Key("translate(20.5 41) scale(.62)"),
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

/// A doorbell with its lens above the push, and a key in its view.
pub const DOORBELL: Scene = &[
    Draw(Fine, "M14 12L46 2M14 14L46 25"),
    Draw(
        Hole,
        "M3 8Q3 3 8 3H17Q22 3 22 8V40Q22 45 17 45H8Q3 45 3 40Z",
    ),
    Draw(Contour, "M7.5 13a5 5 0 1 0 10 0a5 5 0 1 0 -10 0Z"),
    Draw(Solid, "M10.3 13a2.2 2.2 0 1 0 4.4 0a2.2 2.2 0 1 0 -4.4 0Z"),
    Draw(Metal, "M6.5 33a6 6 0 1 0 12 0a6 6 0 1 0 -12 0Z"),
    Draw(Contour, "M9.8 33.6L12.5 31 15.2 33.6V36H9.8Z"),
    Key("translate(32 13.4) scale(.62)"),
];
