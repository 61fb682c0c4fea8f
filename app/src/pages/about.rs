//! How to see for oneself that the page sends nothing.

use yew::prelude::*;

use crate::browser::{self, Requests};
use crate::copy::{self, site};
use crate::ui::{reading, use_page};

/// What the browser lists, how to check it, and what this page cannot prove or remove.
#[component]
pub fn About() -> Html {
    let words = copy::about();
    use_page(words.title.to_owned());
    let found = use_state(browser::requests);
    let look_again = {
        let found = found.clone();
        Callback::from(move |_: MouseEvent| found.set(browser::requests()))
    };
    html! {
        <div class="narrow prose">
            { reading(&words) }
            <section aria-labelledby="requests">
                <h2 id="requests">{ site::REQUESTS }</h2>
                <div role="status">{ listed((*found).as_ref()) }</div>
                <p class="row">
                    <button type="button" class="plain" onclick={look_again}>{ site::LOOK_AGAIN }</button>
                </p>
            </section>
        </div>
    }
}

fn listed(requests: Option<&Requests>) -> Html {
    let Some(requests) = requests else {
        return html! { <p>{ site::NO_REQUEST_LIST }</p> };
    };
    html! {
        <>
            <p>
                { site::requests_since_ready(requests.after_ready, requests.second_part) }{ " " }
                { site::requests_elsewhere(requests.elsewhere) }
            </p>
            <ul class="requests">
                { for requests.all.iter().map(|address| html! { <li><code>{ address }</code></li> }) }
            </ul>
        </>
    }
}
