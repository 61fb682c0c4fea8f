//! Which pictures there are, and how to come to what each shows. To add one, add a row.

use self_check_tests::{Look, Scheme};

/// A picture.
pub struct Shot {
    /// Its file in `docs/pictures/`.
    pub file: &'static str,
    /// How the page is looked at.
    pub look: Look,
    /// What is done from the start page to come there.
    pub steps: &'static [Step],
    /// Whether it shows the whole page, top to bottom, or the window alone.
    pub whole: bool,
}

/// One thing to do.
#[allow(dead_code, reason = "a row may use any of them")]
pub enum Step {
    /// Click the element of this role and name.
    Click(&'static str, &'static str),
    /// Wait until this text is to be seen.
    See(&'static str),
    /// Open the site at this fragment.
    Open(&'static str),
    /// Give the page a drawn key and mark its ends.
    Give,
}

const DARK: Look = Look {
    scheme: Scheme::Dark,
    ..Look::DESKTOP
};

const EXAMPLE: &[Step] = &[
    Step::Click("link", "Try it with an example"),
    Step::See("Look over your answers"),
    Step::Click("link", "See the result"),
    Step::See("Do this"),
];
const QUESTION: &[Step] = &[
    Step::Click("link", "There is a number on my key"),
    Step::See("Is anything stamped on the metal?"),
];
const DISTANCE: &[Step] = &[Step::Open("#/distance"), Step::See("Choose a scene")];
const BOARD: &[Step] = &[
    Step::Open("#/keys"),
    Step::Click("button", "Try it with an example"),
    Step::See("Two keys could be in wrong hands"),
];
const PLAN: &[Step] = &[
    Step::Open("#/keys"),
    Step::Click("button", "Try it with an example"),
    Step::See("Two keys could be in wrong hands"),
    Step::Click("button", "This ring is lost: Sitter"),
    Step::Click("link", "See what to do now: Sitter"),
    Step::See("Step by step"),
];
const PICTURE: &[Step] = &[
    Step::Open("#/picture"),
    Step::See("Choose a picture"),
    Step::Give,
];

/// Every picture.
pub const SHOTS: &[Shot] = &[
    shot("start-desktop.png", Look::DESKTOP, &[], true),
    shot("start-dark.png", DARK, &[], true),
    shot("start-phone.png", Look::PHONE, &[], true),
    shot("question-desktop.png", Look::DESKTOP, QUESTION, true),
    shot("question-dark.png", DARK, QUESTION, true),
    shot("question-phone.png", Look::PHONE, QUESTION, true),
    shot("result-desktop.png", Look::DESKTOP, EXAMPLE, false),
    shot("result-dark.png", DARK, EXAMPLE, false),
    shot("result-phone.png", Look::PHONE, EXAMPLE, false),
    shot("distance-desktop.png", Look::DESKTOP, DISTANCE, true),
    shot("keys-desktop.png", Look::DESKTOP, BOARD, false),
    shot("keys-dark.png", DARK, BOARD, false),
    shot("keys-phone.png", Look::PHONE, BOARD, false),
    shot("plan-desktop.png", Look::DESKTOP, PLAN, false),
    shot("picture-desktop.png", Look::DESKTOP, PICTURE, false),
    shot("picture-dark.png", DARK, PICTURE, false),
    shot("picture-phone.png", Look::PHONE, PICTURE, false),
];

const fn shot(file: &'static str, look: Look, steps: &'static [Step], whole: bool) -> Shot {
    Shot {
        file,
        look,
        steps,
        whole,
    }
}
