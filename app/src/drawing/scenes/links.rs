//! What ties a key to its door, and where its number may stand.

use super::super::view::Ink::{Contour, Fine, Hole, Leather, Marked, Metal, Solid};
use super::super::view::Layer::{Draw, Key};
use super::Scene;

const TAG: &str = "M3 30.5L11 22.5H43Q45 22.5 45 24.5V42Q45 44 43 44H11L3 36Z";
const TAG_EYE: &str = "M7.4 33.25a2 2 0 1 0 4 0a2 2 0 1 0 -4 0Z";
const STRING: &str = "M9.4 33.2C2 24 4 12 13.6 9.6";

/// A tag with an address.
pub const ADDRESS_TAG: Scene = &[
    Key("translate(19 9.4) scale(.9)"),
    Draw(Hole, TAG),
    Draw(Hole, TAG_EYE),
    Draw(Contour, STRING),
    Draw(Metal, "M16 40V32L22 27 28 32V40Z"),
    Draw(Fine, "M31.5 29H41.5M31.5 33.5H41.5M31.5 38H38"),
];

/// A tag that brings the key back without saying where it belongs.
pub const RETURN_TAG: Scene = &[
    Key("translate(19 9.4) scale(.9)"),
    Draw(Hole, TAG),
    Draw(Hole, TAG_EYE),
    Draw(Contour, STRING),
    Draw(
        Contour,
        "M20 36.5H33.5a4 4 0 0 0 0 -8H22M26 24.9L22 28.5 26 32.1",
    ),
];

/// A wallet and a letter with the key.
pub const PAPERS: Scene = &[
    Draw(Hole, "M15 3.5H45V24H15Z"),
    Draw(Fine, "M15 3.5L30 15 45 3.5"),
    Draw(
        Leather,
        "M3 18Q3 16 5 16H33Q35 16 35 18V35Q35 37 33 37H5Q3 37 3 35Z",
    ),
    Draw(Contour, "M35 22.5H28.5a4 4 0 0 0 0 8H35"),
    Draw(
        Solid,
        "M28.2 26.5a1.2 1.2 0 1 0 2.4 0a1.2 1.2 0 1 0 -2.4 0Z",
    ),
    Key("translate(23 40.4) scale(.78)"),
];

/// A picture that shows the door.
pub const PLACE_IN_PICTURE: Scene = &[
    Draw(Hole, "M3 6H45V42H3Z"),
    Draw(Fine, "M6 9H42V39H6Z"),
    Draw(Metal, "M12 39V25L21 17 30 25V39Z"),
    Draw(Hole, "M18.5 39V30H23.5V39Z"),
    Draw(
        Marked,
        "M35 12.5a5 5 0 0 1 5 5C40 21 35 26.5 35 26.5S30 21 30 17.5A5 5 0 0 1 35 12.5Z",
    ),
    Draw(Solid, "M33.5 17.5a1.5 1.5 0 1 0 3 0a1.5 1.5 0 1 0 -3 0Z"),
];

/// A key lying before a door.
pub const AT_THE_DOOR: Scene = &[
    Draw(Hole, "M12 36V3H36V36Z"),
    Draw(Metal, "M15 36V6H33V36Z"),
    Draw(Fine, "M18.5 9.5H29.5V17.5H18.5ZM18.5 25H29.5V33H18.5Z"),
    Draw(
        Solid,
        "M18.5 20.4H29.5V22H18.5ZM30.4 23.2a1 1 0 1 0 2 0a1 1 0 1 0 -2 0Z",
    ),
    Draw(Contour, "M2 36H46"),
    Key("translate(16 42) scale(.76)"),
];

/// A key alone.
pub const KEY_ALONE: Scene = &[Key("translate(12.5 24) scale(1.35)")];

/// A small lock's front, with a place for a number.
pub const LOCK_FACE: Scene = &[
    Draw(Metal, "M5 24a19 19 0 1 0 38 0a19 19 0 1 0 -38 0Z"),
    Draw(Fine, "M8.5 24a15.5 15.5 0 1 0 31 0a15.5 15.5 0 1 0 -31 0Z"),
    Draw(Solid, "M22.6 14H25.4V25H22.6Z"),
    Draw(
        Solid,
        "M16.9 29.5H19.5V32.7H16.9ZM21 29.5H23.6V32.7H21ZM25.1 29.5H27.7V32.7H25.1ZM29.2 29.5H31.8V32.7H29.2Z",
    ),
    Draw(Marked, "M14 27H34.6V35.2H14Z"),
];

/// A tag on the keys, with a place for a number.
pub const NUMBER_TAG: Scene = &[
    Key("translate(19 9.4) scale(.9)"),
    Draw(Hole, TAG),
    Draw(Hole, TAG_EYE),
    Draw(Contour, STRING),
    Draw(
        Solid,
        "M20.6 31.6H23.2V34.8H20.6ZM25 31.6H27.6V34.8H25ZM29.4 31.6H32V34.8H29.4ZM33.8 31.6H36.4V34.8H33.8Z",
    ),
    Draw(Marked, "M17.4 28.4H39.6V38H17.4Z"),
];

/// A folded paper with a place for a number.
pub const NUMBER_PAPER: Scene = &[
    Draw(Hole, "M9 3H31L40 12V45H9Z"),
    Draw(Contour, "M31 3V12H40"),
    Draw(Fine, "M14 11H26M14 16H35M14 21H35M9 37H40"),
    Draw(
        Solid,
        "M16.6 27.4H19.2V30.6H16.6ZM21 27.4H23.6V30.6H21ZM25.4 27.4H28V30.6H25.4ZM29.8 27.4H32.4V30.6H29.8Z",
    ),
    Draw(Marked, "M13.4 24.6H35.6V33.4H13.4Z"),
];
