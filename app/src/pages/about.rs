//! How to see for oneself that the page sends nothing, and how to keep the page.

use yew::prelude::*;

use crate::browser::{self, Requests, Wish};
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
            <Keeping />
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

/// How far keeping has come.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Kept {
    /// The browser has not said yet, or is at work.
    Asked,
    No,
    Yes,
    /// This browser does not keep it.
    Cannot,
    /// It was asked to and did not.
    Failed,
}

/// The page in the browser's store, and as one file. Where a person is feared neither is offered; what
/// is kept can be removed all the same.
#[component]
fn Keeping() -> Html {
    let kept = use_state_eq(|| Kept::Asked);
    let wish = {
        let kept = kept.setter();
        move |wish| {
            let kept = kept.clone();
            kept.set(Kept::Asked);
            yew::platform::spawn_local(async move { kept.set(carried_out(wish).await) });
        }
    };
    {
        let wish = wish.clone();
        use_effect_with((), move |()| wish(Wish::Look));
    }
    let press = |name, asked| {
        let wish = wish.clone();
        let onclick = Callback::from(move |_: MouseEvent| wish(asked));
        html! { <p class="row"><button type="button" class="press-quiet" {onclick}>{ name }</button></p> }
    };
    let may_offer = browser::may_offer_to_keep();
    let state = match *kept {
        Kept::Asked => html! {},
        Kept::Yes => html! {
            <><p>{ site::KEPT }</p>{ press(site::KEEP_NO_LONGER, Wish::Remove) }</>
        },
        _ if !may_offer => html! {},
        Kept::No => press(site::KEEP, Wish::Keep),
        Kept::Failed => html! {
            <><p>{ site::KEEP_FAILED }</p>{ press(site::TRY_AGAIN, Wish::Keep) }</>
        },
        Kept::Cannot => html! { <p>{ site::CANNOT_KEEP }</p> },
    };
    html! {
        <>
            <section aria-labelledby="keeping">
                <h2 id="keeping">{ site::KEEPING }</h2>
                if may_offer {
                    <p>{ site::KEEPING_HOW }</p>
                }
                <div role="status">{ state }</div>
            </section>
            if may_offer {
                { one_file(browser::one_file()) }
            }
        </>
    }
}

async fn carried_out(wish: Wish) -> Kept {
    match (browser::is_kept(wish).await, wish) {
        (Some(true), _) => Kept::Yes,
        (Some(false), Wish::Look | Wish::Remove) => Kept::No,
        (None, Wish::Look) => Kept::Cannot,
        (Some(false), Wish::Keep) | (None, _) => Kept::Failed,
    }
}

/// The page as one file, and the sums to compare it by; in that file itself, what it is.
fn one_file(name: Option<String>) -> Html {
    let content = match name {
        None => html! { <p>{ site::IS_ONE_FILE }</p> },
        Some(name) => html! {
            <>
                <p>{ site::ONE_FILE_HOW }</p>
                <ul>
                    <li><a href={name.clone()} download={name}>{ site::ONE_FILE_DOWNLOAD }</a></li>
                    <li><a href="SHA256SUMS" download="SHA256SUMS">{ site::SUMS_DOWNLOAD }</a></li>
                </ul>
            </>
        },
    };
    html! {
        <section aria-labelledby="one-file">
            <h2 id="one-file">{ site::ONE_FILE }</h2>
            { content }
        </section>
    }
}
