//! What a key may open.

use super::super::view::Ink::{Contour, Fine, Hole, Leather, Metal, Solid};
use super::super::view::Layer::{Draw, Shade};
use super::Scene;

/// A house with its front door.
pub const HOUSE: Scene = &[
    Draw(Hole, "M33 17V8H37.5V20"),
    Draw(Hole, "M8 44V20.5L24 8 40 20.5V44Z"),
    Draw(Contour, "M4.5 23L24 7.6 43.5 23"),
    Shade(
        &[(34.0, 17.5), (40.0, 22.0), (40.0, 44.0), (34.0, 44.0)],
        2.4,
    ),
    Draw(Metal, "M18.5 44V28.5a5.5 5.5 0 0 1 11 0V44Z"),
    Draw(Fine, "M18.5 29H29.5M24 29V23"),
    Draw(Solid, "M25.6 37a1 1 0 1 0 2 0a1 1 0 1 0 -2 0Z"),
    Draw(Contour, "M2 44H46"),
];

/// A flat's door on a landing, its neighbours' doors at the edges.
pub const FLAT: Scene = &[
    Draw(Fine, "M2 8H7V44M46 8H41V44"),
    Draw(Hole, "M12.5 44V4.5H35.5V44Z"),
    Draw(Metal, "M15.5 44V7.5H32.5V44Z"),
    Draw(Fine, "M18.5 11H29.5V22H18.5ZM18.5 27H29.5V40H18.5Z"),
    Draw(Hole, "M22.7 14.8a1.3 1.3 0 1 0 2.6 0a1.3 1.3 0 1 0 -2.6 0Z"),
    Draw(Solid, "M29.6 24.5a1 1 0 1 0 2 0a1 1 0 1 0 -2 0Z"),
    Draw(Contour, "M2 44H46"),
    Draw(Solid, "M16 44.8H32V47H16Z"),
];

/// A building's shared entrance, with its row of bells.
pub const BLOCK: Scene = &[
    Draw(Hole, "M7 44V3.5H41V44Z"),
    Draw(
        Fine,
        "M12 8H17V14.5H12ZM21.5 8H26.5V14.5H21.5ZM31 8H36V14.5H31ZM12 18H17V22H12ZM21.5 18H26.5V22H21.5ZM31 18H36V22H31Z",
    ),
    Draw(Metal, "M14.5 44V28.5H29.5V44Z"),
    Draw(
        Fine,
        "M17 31.5H20V44M24 31.5H27V44M17 31.5V44M24 31.5V44M27 31.5V44M20 31.5V44",
    ),
    Draw(Contour, "M22 28.5V44"),
    Draw(Hole, "M12 25.5H32V28.5H12Z"),
    Draw(Hole, "M33 30H37.5V39.5H33Z"),
    Draw(
        Solid,
        "M34.4 31.6H36.1V32.6H34.4ZM34.4 34.2H36.1V35.2H34.4ZM34.4 36.8H36.1V37.8H34.4Z",
    ),
    Draw(Contour, "M2 44H46"),
];

/// A garage with its up-and-over door.
pub const GARAGE: Scene = &[
    Draw(Hole, "M6 44V20.5L24 11 42 20.5V44Z"),
    Draw(Contour, "M2.5 22.3L24 11 45.5 22.3"),
    Draw(Metal, "M11 44V25H37V44Z"),
    Draw(Fine, "M11 29.75H37M11 34.5H37M11 39.25H37"),
    Draw(Solid, "M21.5 40.6H26.5V42.2H21.5Z"),
    Draw(Contour, "M2 44H46"),
];

/// A mailbox with a letter in its slot.
pub const MAILBOX: Scene = &[
    Draw(Hole, "M14.5 19L17 6.5H37L34.5 19Z"),
    Draw(Fine, "M17.2 7L26 14.5 36.6 7"),
    Draw(
        Metal,
        "M8 16Q8 14 10 14H38Q40 14 40 16V42Q40 44 38 44H10Q8 44 8 42Z",
    ),
    Draw(Hole, "M12 17.5H36V21.5H12Z"),
    Draw(Hole, "M14 17.5L15 12.5H35.5L34.5 17.5Z"),
    Draw(Hole, "M21.3 32a2.7 2.7 0 1 0 5.4 0a2.7 2.7 0 1 0 -5.4 0Z"),
    Draw(Solid, "M23.4 30.2H24.6V33.8H23.4Z"),
    Shade(
        &[(34.5, 23.0), (38.5, 23.0), (38.5, 42.5), (34.5, 42.5)],
        2.2,
    ),
];

/// A padlock.
pub const PADLOCK: Scene = &[
    Draw(
        Hole,
        "M13.5 23V15a10.5 10.5 0 0 1 21 0V23H30V15a6 6 0 0 0 -12 0V23Z",
    ),
    Draw(
        Metal,
        "M9 22.5Q9 21 10.5 21H37.5Q39 21 39 22.5V41Q39 44 36 44H12Q9 44 9 41Z",
    ),
    Shade(
        &[(33.0, 22.5), (37.5, 22.5), (37.5, 42.0), (33.0, 42.5)],
        2.2,
    ),
    Draw(
        Solid,
        "M24 28.2a2.6 2.6 0 0 1 1.3 4.85V37.5H22.7V33.05A2.6 2.6 0 0 1 24 28.2Z",
    ),
];

/// A car from the side.
pub const CAR: Scene = &[
    Draw(
        Hole,
        "M3 38V31Q3 28.6 5.4 28L11.5 26.6 17.6 18.6Q18.8 17 20.8 17H31Q33 17 34.2 18.6L39 25.8 42.4 26.6Q45 27.4 45 30V38Z",
    ),
    Draw(
        Metal,
        "M14.6 26.6L19.4 20.4Q19.8 20 20.4 20H24.5V26.6ZM27 26.6V20H30.8Q31.5 20 31.9 20.6L35.6 26.6Z",
    ),
    Draw(Fine, "M25.75 27V38M27.5 30.5H30.5M3 33.5H7M45 33.5H42"),
    Draw(
        Hole,
        "M9 38a4.6 4.6 0 1 0 9.2 0a4.6 4.6 0 1 0 -9.2 0ZM30.4 38a4.6 4.6 0 1 0 9.2 0a4.6 4.6 0 1 0 -9.2 0Z",
    ),
    Draw(
        Solid,
        "M12.1 38a1.5 1.5 0 1 0 3 0a1.5 1.5 0 1 0 -3 0ZM33.5 38a1.5 1.5 0 1 0 3 0a1.5 1.5 0 1 0 -3 0Z",
    ),
    Draw(Contour, "M2 42.9H46"),
];

/// An office building beside another's house.
pub const WORK: Scene = &[
    Draw(Hole, "M4 44V5H24V44Z"),
    Draw(
        Fine,
        "M8 9.5H12V14H8ZM16 9.5H20V14H16ZM8 18H12V22.5H8ZM16 18H20V22.5H16ZM8 26.5H12V31H8ZM16 26.5H20V31H16Z",
    ),
    Draw(Metal, "M11 44V35.5H17V44Z"),
    Draw(Hole, "M27.5 44V28L36 20.5 44.5 28V44Z"),
    Draw(Contour, "M25.5 29.7L36 20.5 46.5 29.7"),
    Draw(Metal, "M33.5 44V34H38.5V44Z"),
    Draw(Contour, "M2 44H46"),
];

/// An open toolbox, a hammer and a screwdriver standing in it.
pub const TOOLBOX: Scene = &[
    Draw(Hole, "M15.5 8H18.5V28H15.5Z"),
    Draw(Metal, "M9 3.5H22Q25.5 4.5 26 8.5H9Z"),
    Draw(Hole, "M33.4 15H35.4V28H33.4Z"),
    Draw(Metal, "M32 3.5Q34.4 2 36.8 3.5V15H32Z"),
    Draw(Leather, "M4 24H44L41 44H7Z"),
    Draw(Contour, "M5 29.5H43"),
    Shade(
        &[(34.0, 31.0), (42.0, 31.0), (40.4, 43.0), (34.0, 43.0)],
        2.2,
    ),
];

/// A suitcase on wheels.
pub const SUITCASE: Scene = &[
    Draw(Contour, "M18 12V4H30V12"),
    Draw(
        Leather,
        "M10 15Q10 12 13 12H35Q38 12 38 15V38Q38 41 35 41H13Q10 41 10 38Z",
    ),
    Draw(Contour, "M17 12V41M31 12V41"),
    Draw(
        Hole,
        "M13 42.4a1.9 1.9 0 1 0 3.8 0a1.9 1.9 0 1 0 -3.8 0ZM31.2 42.4a1.9 1.9 0 1 0 3.8 0a1.9 1.9 0 1 0 -3.8 0Z",
    ),
];
