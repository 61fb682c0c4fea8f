//! Doors as leaves in their frames, and what locks like one.

use super::super::view::Ink::{Contour, Fine, Hole, Metal, Solid};
use super::super::view::Layer::{Draw, Shade};
use super::Scene;

/// A panelled front door with a light above.
pub const FRONT: Scene = &[
    Draw(Hole, "M10 45V3H38V45Z"),
    Draw(Metal, "M13.5 45V11.500H34.500V45Z"),
    Draw(Fine, "M13.5 8.500H34.500M20.5 3V8.500M27.5 3V8.5"),
    Draw(Fine, "M17 15H31V25H17ZM17 29H31V41H17Z"),
    Shade(
        &[(27.0, 29.5), (31.0, 29.5), (31.0, 41.0), (27.0, 41.0)],
        2.0,
    ),
    Draw(Solid, "M31.3 27a1.1 1.1 0 1 0 2.2 0a1.1 1.1 0 1 0 -2.2 0Z"),
    Draw(Contour, "M4 45H44"),
];

/// A door with a glazed upper half.
pub const GLAZED: Scene = &[
    Draw(Hole, "M11 45V5H37V45Z"),
    Draw(Metal, "M14 45V8H34V45Z"),
    Draw(Hole, "M17 11.500H31V25H17Z"),
    Draw(Fine, "M24 11.500V25M17 18.200H31M17 30H31V41H17Z"),
    Draw(
        Solid,
        "M30.8 27.500a1.1 1.1 0 1 0 2.2 0a1.1 1.1 0 1 0 -2.2 0Z",
    ),
    Draw(Contour, "M4 45H44"),
];

/// Two glass leaves side by side.
pub const PATIO: Scene = &[
    Draw(Metal, "M5 45V6H43V45Z"),
    Draw(
        Hole,
        "M8 41.500V9.500H22.500V41.500ZM25.5 41.500V9.500H40V41.500Z",
    ),
    Draw(
        Fine,
        "M10.5 22L18.5 13M12 26L20 17M28 22L36 13M29.5 26L37.5 17",
    ),
    Draw(Solid, "M22.8 24H25.200V31H22.800Z"),
    Draw(Contour, "M2 45H46"),
];

/// A plain leaf.
pub const PLAIN: Scene = &[
    Draw(Hole, "M11 45V5H37V45Z"),
    Draw(Metal, "M14 45V8H34V45Z"),
    Draw(Fine, "M27.5 26H31.8"),
    Draw(
        Solid,
        "M30.8 26a1.1 1.1 0 1 0 2.2 0a1.1 1.1 0 1 0 -2.2 0ZM31.3 29.500H32.500V31.500H31.300Z",
    ),
    Draw(Contour, "M4 45H44"),
];

/// Steps down to a low door.
pub const CELLAR: Scene = &[
    Draw(Hole, "M12 45V17H36V45Z"),
    Draw(Metal, "M15 45V20H33V45Z"),
    Draw(Fine, "M19.5 20V45M24 20V45M28.5 20V45"),
    Draw(Contour, "M3 8H9V12.500H15V17H33V12.500H39V8H45"),
    Draw(Solid, "M30.2 33a1.1 1.1 0 1 0 2.2 0a1.1 1.1 0 1 0 -2.2 0Z"),
    Draw(Contour, "M4 45H44"),
];

/// A planked double door under a beam.
pub const WORKSHOP: Scene = &[
    Draw(Hole, "M4 11V5H44V11Z"),
    Draw(Metal, "M7 45V11H23.500V45ZM24.5 45V11H41V45Z"),
    Draw(Fine, "M12.5 11V45M18 11V45M30 11V45M35.5 11V45"),
    Draw(
        Hole,
        "M7 17.500H16V20H7ZM7 36.500H16V39H7ZM41 17.500H32V20H41ZM41 36.500H32V39H41Z",
    ),
    Draw(
        Solid,
        "M20.6 28a1.1 1.1 0 1 0 2.2 0a1.1 1.1 0 1 0 -2.2 0ZM25.2 28a1.1 1.1 0 1 0 2.2 0a1.1 1.1 0 1 0 -2.2 0Z",
    ),
    Draw(Contour, "M2 45H46"),
];

/// A shed with a braced door.
pub const SHED: Scene = &[
    Draw(Hole, "M7 45V18H41V45Z"),
    Draw(Contour, "M3.5 20.500L24 6.5 44.5 20.5"),
    Draw(Metal, "M15.5 45V22.500H32.500V45Z"),
    Draw(
        Fine,
        "M15.5 27H32.500M15.5 40.500H32.500M15.5 40.500L32.5 27M21.2 22.500V45M26.8 22.500V45",
    ),
    Draw(Solid, "M29.6 33a1.1 1.1 0 1 0 2.2 0a1.1 1.1 0 1 0 -2.2 0Z"),
    Draw(Contour, "M2 45H46"),
];

/// A gate of bars between posts.
pub const GATE: Scene = &[
    Draw(Hole, "M4 45V12H9V45ZM39 45V12H44V45Z"),
    Draw(Fine, "M3 12H10M38 12H45"),
    Draw(Metal, "M11 20H37V23H11ZM11 38H37V41H11Z"),
    Draw(
        Contour,
        "M14 42.500V15M19 42.500V15M24 42.500V15M29 42.500V15M34 42.500V15",
    ),
    Draw(Solid, "M33 28.500H38.500V33H33Z"),
    Draw(Contour, "M2 45H46"),
];

/// A cabinet with two doors.
pub const CABINET: Scene = &[
    Draw(Hole, "M6 41V9H42V41Z"),
    Draw(Metal, "M9 38V12H23.500V38ZM24.5 38V12H39V38Z"),
    Draw(Fine, "M12 15H20.500V35H12ZM27.5 15H36V35H27.500Z"),
    Draw(
        Solid,
        "M21.4 25a.9 .9 0 1 0 1.8 0a.9 .9 0 1 0 -1.8 0ZM24.8 25a.9 .9 0 1 0 1.8 0a.9 .9 0 1 0 -1.8 0Z",
    ),
    Draw(Contour, "M9 41V45M39 41V45"),
];

/// A store: a leaf of slats.
pub const STORE: Scene = &[
    Draw(Hole, "M8 45V5H40V45Z"),
    Draw(Metal, "M11 45V8H37V45Z"),
    Draw(Fine, "M11 13H37M11 18H37M11 23H37M11 33H37M11 38H37"),
    Draw(Hole, "M29 24.500H35V31.500H29Z"),
    Draw(Solid, "M31.3 26.200H32.700V29.800H31.300Z"),
    Draw(Contour, "M4 45H44"),
];
