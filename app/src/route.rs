//! The addresses. They count pages and name none: no address tells a question, a situation or a
//! branch of the check.

use yew_router::Routable;

/// A page of the site.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Routable)]
pub enum Route {
    /// The start page.
    #[at("/")]
    Start,
    /// One page of the check: its place in [`self_check_core::path::Path::stops`].
    #[at("/check/:n")]
    Check { n: usize },
    /// The pages to read.
    #[at("/learn")]
    Learn,
    /// One page to read, from 1.
    #[at("/learn/:n")]
    LearnPage { n: usize },
    /// Who could read a key from where.
    #[at("/distance")]
    Distance,
    /// A picture that exists already.
    #[at("/picture")]
    Picture,
    /// The ruler at true size.
    #[at("/ruler")]
    Ruler,
    /// How to see for oneself that the page sends nothing.
    #[at("/about")]
    About,
    /// An address that leads nowhere.
    #[not_found]
    #[at("/not-found")]
    NotFound,
}
