//! What happened to a key.

use super::super::view::Ink::{Contour, Fine, Hole, Metal, Solid};
use super::super::view::Layer::{Draw, Key, MissingKey, Shade};
use super::Scene;

const RING: &str =
    "M6 14a9 9 0 1 0 18 0a9 9 0 1 0 -18 0ZM8.4 14a6.6 6.6 0 1 1 13.2 0a6.6 6.6 0 1 1 -13.2 0Z";

/// Two keys on a ring.
pub const KEYS_ON_A_RING: Scene = &[
    Key("translate(16.6 25) rotate(78) scale(.86)"),
    Key("translate(25.6 20.4) rotate(34) scale(.86)"),
    Draw(Contour, "M6 14a9 9 0 1 0 18 0a9 9 0 1 0 -18 0"),
    Draw(
        Contour,
        "M8.4 14a6.6 6.6 0 1 0 13.2 0a6.6 6.6 0 1 0 -13.2 0",
    ),
];

/// A ring that one key is missing from.
pub const KEY_MISSING: Scene = &[
    Key("translate(16.6 25) rotate(78) scale(.86)"),
    MissingKey("translate(25.6 20.4) rotate(34) scale(.86)"),
    Draw(Contour, RING),
];

/// A key in a picture on a telephone.
pub const PICTURE: Scene = &[
    Draw(
        Hole,
        "M11 5Q11 2.5 13.5 2.5H34.5Q37 2.5 37 5V43Q37 45.5 34.5 45.5H13.5Q11 45.5 11 43Z",
    ),
    Draw(Fine, "M13.5 8H34.5V37H13.5Z"),
    Draw(Fine, "M13.5 33L20 26.5 25 32 29 28.5 34.5 34"),
    Key("translate(19.4 18.4) rotate(20) scale(.56)"),
    Draw(Contour, "M22 41.2H26"),
];

/// Moving boxes, and a key handed over with them.
pub const MOVED_IN: Scene = &[
    Key("translate(14 10.4) rotate(-6) scale(.9)"),
    Draw(Hole, "M7 25H41V44H7Z"),
    Draw(Contour, "M7 25L2.5 19.5H20L24 25 28 19.5H45.5L41 25"),
    Draw(Fine, "M21.5 25V34H26.5V25"),
    Shade(
        &[(33.0, 27.0), (39.5, 27.0), (39.5, 42.5), (33.0, 42.5)],
        2.4,
    ),
];

/// A key that goes from one person to another.
pub const SOMEONE_HAD_IT: Scene = &[
    Draw(Hole, "M5.5 9.5a5 5 0 1 0 10 0a5 5 0 1 0 -10 0Z"),
    Draw(Hole, "M2 30V25Q2 17.5 10.5 17.5 19 17.5 19 25V30Z"),
    Draw(Hole, "M32.5 9.5a5 5 0 1 0 10 0a5 5 0 1 0 -10 0Z"),
    Draw(Hole, "M29 30V25Q29 17.5 37.5 17.5 46 17.5 46 25V30Z"),
    Key("translate(16.4 40) scale(.76)"),
    Draw(
        Contour,
        "M7 34V37Q7 40 10 40M38 40Q41 40 41 37V33.5M38.4 36.6L41 33.4 43.6 36.6",
    ),
];

/// A bow with a number on it.
pub const NUMBER_ON_IT: Scene = &[
    Draw(Metal, "M38 18.6H47V29.4H38Z"),
    Draw(
        Metal,
        "M3 24a18.4 18.4 0 1 0 36.8 0a18.4 18.4 0 1 0 -36.8 0Z",
    ),
    Draw(
        Fine,
        "M5.8 24a15.6 15.6 0 1 0 31.2 0a15.6 15.6 0 1 0 -31.2 0Z",
    ),
    Draw(Hole, "M7.5 24a3.6 3.6 0 1 0 7.2 0a3.6 3.6 0 1 0 -7.2 0Z"),
    Draw(
        Solid,
        "M17.6 22.2H20.6V25.8H17.6ZM22.3 22.2H25.3V25.8H22.3ZM27 22.2H30V25.8H27ZM31.7 22.2H34.7V25.8H31.7Z",
    ),
];
