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
                if browser::one_file().is_some() {
                    <p>{ site::SECOND_PART }</p>
                }
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
                { site::requests_since_ready(requests.after_ready, requests.second_part, requests.kept_page) }{ " " }
                { site::requests_elsewhere(requests.elsewhere) }
            </p>
            <ul class="requests">
                { for requests.all.iter().map(|address| html! { <li><code>{ address }</code></li> }) }
            </ul>
        </>
    }
}

/// What is known of the page in the browser's store.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Kept {
    /// The browser has not said yet.
    Unknown,
    No,
    Yes,
    /// It was, until it was taken away just now.
    Removed,
    /// This browser does not keep it.
    Cannot,
    /// This was asked for and did not come about.
    Failed(Wish),
}

/// The page in the browser's store, and as one file. Where a person is feared neither is offered; what
/// is kept can be removed all the same.
#[component]
fn Keeping() -> Html {
    let kept = use_state_eq(|| Kept::Unknown);
    let at_work = use_state_eq(|| None);
    let wish = {
        let (kept, at_work) = (kept.setter(), at_work.setter());
        move |wish| {
            let (kept, at_work) = (kept.clone(), at_work.clone());
            at_work.set(Some(wish));
            yew::platform::spawn_local(async move {
                kept.set(carried_out(wish).await);
                at_work.set(None);
            });
        }
    };
    {
        let wish = wish.clone();
        use_effect_with((), move |()| wish(Wish::Look));
    }
    let may_offer = browser::may_offer_to_keep();
    html! {
        <>
            <section aria-labelledby="keeping">
                <h2 id="keeping">{ site::KEEPING }</h2>
                if !may_offer {
                    <p>{ site::NOT_OFFERED }</p>
                } else if *kept != Kept::Cannot {
                    <p>{ site::KEEPING_HOW }</p>
                }
                <div role="status">
                    if let Some(text) = told(*kept, *at_work, may_offer) {
                        <p>{ text }</p>
                    }
                </div>
                { press(*kept, at_work.is_some(), may_offer, wish) }
            </section>
            if may_offer {
                { one_file(browser::one_file()) }
            }
        </>
    }
}

fn told(kept: Kept, at_work: Option<Wish>, may_offer: bool) -> Option<&'static str> {
    match (at_work, kept) {
        (Some(Wish::Keep), _) => Some(site::STORING),
        (Some(Wish::Remove), _) => Some(site::REMOVING),
        (_, Kept::Yes) => Some(site::KEPT),
        (_, Kept::Removed) => Some(site::KEPT_NO_LONGER),
        (_, Kept::Failed(Wish::Remove)) => Some(site::REMOVE_FAILED),
        (_, Kept::Failed(_)) if may_offer => Some(site::KEEP_FAILED),
        (_, Kept::Cannot) if may_offer => Some(site::CANNOT_KEEP),
        _ => None,
    }
}

/// One button throughout, so that whoever has pressed it stays where they are.
fn press(kept: Kept, is_busy: bool, may_offer: bool, wish: impl Fn(Wish) + 'static) -> Html {
    let (name, asked, is_open) = match kept {
        Kept::Yes | Kept::Failed(Wish::Remove) => (site::KEEP_NO_LONGER, Wish::Remove, true),
        Kept::Removed if !may_offer => (site::KEEP_NO_LONGER, Wish::Remove, false),
        Kept::No | Kept::Removed if may_offer => (site::KEEP, Wish::Keep, true),
        Kept::Failed(_) if may_offer => (site::TRY_AGAIN, Wish::Keep, true),
        _ => return html! {},
    };
    let is_open = is_open && !is_busy;
    let onclick = Callback::from(move |_: MouseEvent| {
        if is_open {
            wish(asked);
        }
    });
    html! {
        <p class="row">
            <button type="button" class="press-quiet" aria-disabled={(!is_open).to_string()} {onclick}>{ name }</button>
        </p>
    }
}

async fn carried_out(wish: Wish) -> Kept {
    match (browser::is_kept(wish).await, wish) {
        (Some(true), Wish::Look | Wish::Keep) => Kept::Yes,
        (Some(false), Wish::Look) => Kept::No,
        (Some(false), Wish::Remove) => Kept::Removed,
        (None, Wish::Look) => Kept::Cannot,
        (_, wish) => Kept::Failed(wish),
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
                    <li><a href={name.clone()} download={name.clone()}>{ site::ONE_FILE_DOWNLOAD }</a></li>
                    <li><a href="SHA256SUMS" download="SHA256SUMS">{ site::SUMS_DOWNLOAD }</a></li>
                </ul>
                <p>{ site::ONE_FILE_CHECK }</p>
                <ul>
                    <li>{ site::ON_WINDOWS }{ " " }<code>{ format!("certutil -hashfile {name} SHA256") }</code></li>
                    <li>{ site::ON_A_MAC }{ " " }<code>{ format!("shasum -a 256 {name}") }</code></li>
                    <li>{ site::ON_LINUX }{ " " }<code>{ format!("sha256sum {name}") }</code></li>
                </ul>
            </>
        },
    };
    html! {
        <section aria-labelledby="one-file">
            <h2 id="one-file">{ site::ONE_FILE }</h2>
            { content }
            if let Some(number) = browser::build() {
                <p>{ site::build_is(&number) }</p>
            }
        </section>
    }
}
