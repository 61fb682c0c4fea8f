//! The addresses. They count pages and name none: no address tells a question, a situation or a
//! branch of the check.
//!
//! An address is the part after `#`, so that a server never sees it. A link to a page is an
//! ordinary link: `<a href={Route::Start}>`.

use yew::AttrValue;
use yew::html::IntoPropValue;

use crate::browser;

/// A page of the site.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Route {
    /// `#/`: the start page.
    Start,
    /// `#/check/3`: one page of the check, by its place in [`self_check_core::path::Path::stops`].
    Check { n: usize },
    /// `#/learn`: the pages to read.
    Learn,
    /// `#/learn/1`: one page to read, from 1.
    LearnPage { n: usize },
    /// `#/distance`: who could read a key from where.
    Distance,
    /// `#/picture`: a picture that exists already.
    Picture,
    /// `#/keys`: keys and doors, the board.
    Keys,
    /// `#/keys/1`: one page of keys and doors, from 1.
    KeysPage { n: usize },
    /// `#/ruler`: the ruler at true size.
    Ruler,
    /// `#/about`: how to see for oneself that the page sends nothing.
    About,
    /// An address that leads nowhere.
    NotFound,
}

impl Route {
    /// The page at an address, written with or without its `#`.
    pub fn at(address: &str) -> Self {
        let mut parts = address.trim_start_matches('#').split('/');
        let parts = [parts.next(), parts.next(), parts.next(), parts.next()];
        let [Some(""), Some(name), number, None] = parts else {
            return Self::NotFound;
        };
        match (name, number.map(str::parse)) {
            ("", None) => Self::Start,
            ("check", Some(Ok(n))) => Self::Check { n },
            ("learn", None) => Self::Learn,
            ("learn", Some(Ok(n))) => Self::LearnPage { n },
            ("distance", None) => Self::Distance,
            ("picture", None) => Self::Picture,
            ("keys", None) => Self::Keys,
            ("keys", Some(Ok(n))) => Self::KeysPage { n },
            ("ruler", None) => Self::Ruler,
            ("about", None) => Self::About,
            _ => Self::NotFound,
        }
    }

    /// Its address.
    pub fn address(self) -> AttrValue {
        let fixed = match self {
            Self::Check { n } => return numbered("#/check/", n),
            Self::LearnPage { n } => return numbered("#/learn/", n),
            Self::KeysPage { n } => return numbered("#/keys/", n),
            Self::Start => "#/",
            Self::Learn => "#/learn",
            Self::Distance => "#/distance",
            Self::Picture => "#/picture",
            Self::Keys => "#/keys",
            Self::Ruler => "#/ruler",
            Self::About => "#/about",
            Self::NotFound => "#/not-found",
        };
        fixed.into()
    }

    /// Whether the second program shows it; the first shows all others.
    pub fn is_room(self) -> bool {
        match self {
            Self::Learn
            | Self::LearnPage { .. }
            | Self::Distance
            | Self::Picture
            | Self::About
            | Self::Keys
            | Self::KeysPage { .. } => true,
            Self::Start | Self::Check { .. } | Self::Ruler | Self::NotFound => false,
        }
    }

    /// Goes there, as a link would.
    pub fn go(self) {
        browser::go_to(&self.address());
    }

    /// Goes there in place of the present page: "Back" does not come by it again.
    pub fn go_instead(self) {
        browser::go_instead_to(&self.address());
    }
}

fn numbered(before: &str, n: usize) -> AttrValue {
    format!("{before}{n}").into()
}

/// Lets a page be the `href` of a link.
impl IntoPropValue<Option<AttrValue>> for Route {
    fn into_prop_value(self) -> Option<AttrValue> {
        Some(self.address())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const ALL: [Route; 11] = [
        Route::Start,
        Route::Check { n: 12 },
        Route::Learn,
        Route::LearnPage { n: 1 },
        Route::Distance,
        Route::Picture,
        Route::Keys,
        Route::KeysPage { n: 4 },
        Route::Ruler,
        Route::About,
        Route::NotFound,
    ];

    #[test]
    fn address_leads_back_to_its_page() {
        for route in ALL {
            assert_eq!(Route::at(&route.address()), route);
        }
    }

    #[test]
    fn what_is_no_address_leads_nowhere() {
        for address in [
            "",
            "#",
            "#main",
            "main",
            "#/check",
            "#/check/",
            "#/check/x",
            "#/check/-1",
            "#/check/1/2",
            "#/learn/",
            "#/about/1",
            "#/Check/1",
            "#//",
            "#/check/99999999999999999999999",
        ] {
            assert_eq!(Route::at(address), Route::NotFound, "{address:?}");
        }
    }
}
