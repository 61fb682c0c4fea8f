//! Safety first, before any level, where somebody is worried about a person.

use yew::prelude::*;

use crate::copy::{self, site};
use crate::route::Route;
use crate::ui::{Length, PageLinks, Progress, reading, use_page, use_session};

/// Where the page stands.
#[derive(Properties, PartialEq)]
pub struct SafetyProps {
    /// Its place in the path.
    pub n: usize,
    /// How many pages the path has.
    pub length: Length,
}

/// What to think of first. Nothing here offers to keep, print or copy anything.
#[component]
pub fn Safety(props: &SafetyProps) -> Html {
    let SafetyProps { n, length } = *props;
    use_page(site::step_title(n + 1));
    let onward = Route::Check {
        n: use_session().after(n),
    };
    html! {
        <div class="narrow calm">
            <Progress {n} {length} />
            { reading(&copy::safety()) }
            <p class="row">
                <a class="press" href={onward}>{ site::CONTINUE }</a>
                <PageLinks {n} />
            </p>
        </div>
    }
}
