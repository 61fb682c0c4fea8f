//! What to do in the next hour, before any question on a missing key.

use yew::prelude::*;

use crate::copy::{self, site};
use crate::route::Route;
use crate::ui::{Length, PageLinks, Progress, reading, use_page, use_session};

/// Where the page stands.
#[derive(Properties, PartialEq)]
pub struct NextHourProps {
    /// Its place in the path.
    pub n: usize,
    /// How many pages the path has.
    pub length: Length,
}

/// The list for the next hour; the check goes on below it.
#[component]
pub fn NextHour(props: &NextHourProps) -> Html {
    let NextHourProps { n, length } = *props;
    use_page(site::step_title(n + 1));
    let onward = Route::Check {
        n: use_session().after(n),
    };
    html! {
        <div class="narrow">
            <Progress {n} {length} />
            { reading(&copy::next_hour()) }
            <p class="row">
                <a class="press" href={onward}>{ site::CONTINUE }</a>
                <PageLinks {n} />
            </p>
        </div>
    }
}
