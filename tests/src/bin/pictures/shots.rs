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
}

const DARK: Look = Look {
    scheme: Scheme::Dark,
    ..Look::DESKTOP
};

/// Every picture.
pub const SHOTS: &[Shot] = &[
    Shot {
        file: "start.png",
        look: Look::DESKTOP,
        steps: &[],
        whole: true,
    },
    Shot {
        file: "start-dark.png",
        look: DARK,
        steps: &[],
        whole: true,
    },
    Shot {
        file: "start-phone.png",
        look: Look::PHONE,
        steps: &[],
        whole: true,
    },
];
