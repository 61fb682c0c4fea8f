//! Where a key is carried and kept.

use super::super::view::Ink::{Contour, Fine, Hole, Leather, Metal, Solid, Stitch};
use super::super::view::Layer::{Draw, Key, MissingKey, Shade};
use super::Scene;

/// A closed bag; the key inside is only guessed at.
pub const BAG: Scene = &[
    Draw(Contour, "M15 19V13.5a9 9 0 0 1 18 0V19"),
    Draw(
        Leather,
        "M6.5 19Q6.6 17 8.6 17H39.4Q41.4 17 41.5 19L43.5 42Q43.6 45 40.6 45H7.4Q4.4 45 4.5 42Z",
    ),
    Draw(Stitch, "M8 24H40"),
    Draw(Metal, "M34 22.4H38.6V25.6H34Z"),
    MissingKey("translate(17 35) scale(.72)"),
];

/// A key on a cord round the neck.
pub const NECK_CORD: Scene = &[
    Draw(
        Hole,
        "M3 46V27Q3 20 9.5 17.5L17.5 14.5V4H30.5V14.5L38.5 17.5Q45 20 45 27V46Z",
    ),
    Draw(Fine, "M11 46V33M37 46V33M17.5 14.5Q24 20.5 30.5 14.5"),
    Draw(Contour, "M18.2 13.8L24 28 29.8 13.8"),
    Key("translate(24 31) rotate(90) scale(.58)"),
];

/// A key on the sill of a window.
pub const WINDOW: Scene = &[
    Draw(Hole, "M8 4H40V37H8Z"),
    Draw(Contour, "M24 4V37M8 18H40"),
    Draw(Fine, "M11.5 13.5L17 7.5M31 32L37 25M28 31L32 26.5"),
    Key("translate(16 31.2) scale(.72)"),
    Draw(Hole, "M4.5 37H43.5V41.5H4.5Z"),
    Draw(Contour, "M8 41.5V46M40 41.5V46"),
];

/// A key left on a car seat.
pub const CAR_SEAT: Scene = &[
    Draw(
        Hole,
        "M13.4 3Q17.4 2.4 18.2 6L18.8 9.4 12.2 10.6 11.4 7.4Q10.6 3.8 13.4 3Z",
    ),
    Draw(
        Leather,
        "M9.4 13Q16 9.6 20.4 11.4 22.4 12.4 23 15L26 29H38.5Q43 29 43 33.5V37.5H19.5Q15.4 37.5 14.6 33.6L9 15.6Q8.6 13.8 9.4 13Z",
    ),
    Draw(Stitch, "M13.4 15.6L18.2 32.2Q18.8 34 20.8 34H40"),
    Draw(Contour, "M18 37.5L15.5 44M39.5 37.5V44M10 44H45"),
    Key("translate(30 24.6) scale(.56) rotate(8)"),
];

/// A plant pot with a key half under it.
pub const POT: Scene = &[
    Draw(
        Hole,
        "M24 16C23 9.5 17 5.4 9.5 6.2 10.6 13 16.6 16.6 24 16ZM24 16C24.4 8.6 30.6 3.6 38.6 4.6 37.8 12 31.6 16.4 24 16Z",
    ),
    Draw(Fine, "M24 16Q18 9.5 12.4 8.2M24 16Q29.6 8.4 35.4 6.8"),
    Key("translate(41 41.2) rotate(180) scale(.62)"),
    Draw(
        Leather,
        "M13 21H35L32.4 43Q32.2 44 31.2 44H16.8Q15.8 44 15.6 43Z",
    ),
    Draw(Leather, "M10.5 16H37.5V21.5H10.5Z"),
    Shade(
        &[(28.5, 22.5), (34.0, 22.5), (31.8, 43.0), (27.5, 43.0)],
        2.2,
    ),
    Draw(Contour, "M2 44H46"),
];

/// A small box with a code, open, with the key inside.
pub const KEY_SAFE: Scene = &[
    Draw(Contour, "M15 13V9.5a9 9 0 0 1 18 0V13"),
    Draw(
        Metal,
        "M9 16Q9 13 12 13H36Q39 13 39 16V42Q39 45 36 45H12Q9 45 9 42Z",
    ),
    Draw(
        Solid,
        "M14 16.8H17V20.2H14ZM19.7 16.8H22.7V20.2H19.7ZM25.3 16.8H28.3V20.2H25.3ZM31 16.8H34V20.2H31Z",
    ),
    Draw(Hole, "M13 24H35V42H13Z"),
    Key("translate(19.5 33) scale(.62)"),
];
