//! The start page.

use self_check_core::path::{Path, Stop};
use self_check_core::questions::{Choice, Question};
use yew::prelude::*;

use crate::browser;
use crate::copy::{self, site};
use crate::drawing::{DrawnPattern, Stamp, choice_drawing, key_drawing};
use crate::example;
use crate::route::Route;
use crate::session::{Act, SessionHandle};
use crate::ui::{Forget, Titled};

/// What may have happened, as ways to start. Each answers the first question.
const STARTS: [Choice; 5] = [
    Choice::KeyMissing,
    Choice::SharedAPicture,
    Choice::JustMovedIn,
    Choice::SomeoneHadIt,
    Choice::NumberOnIt,
];

/// The start page: what this is, and the ways into the check.
pub fn start(session: &SessionHandle) -> Html {
    let doors = Doors { session };
    html! {
        <Titled title={site::START_TITLE}>
            if session.answers_gone {
                <p class="notice" role="status">{ site::ANSWERS_GONE }</p>
            }
            <section class="hero">
                <div>
                    <h1 tabindex="-1">{ site::HERO }</h1>
                    <p class="lede">{ site::LEDE }</p>
                    <p class="row">{ doors.main() }</p>
                    <p class="note">{ site::NEVER_TYPE_IT }{ " " }{ site::ANSWERS_WILL_GO }</p>
                </div>
                { hero() }
            </section>
            <section aria-labelledby="happened">
                <h2 id="happened">{ site::WHAT_HAPPENED }</h2>
                <ul class="starts">
                    { for STARTS.into_iter().map(|reason| html! {
                        <li key={reason as usize}>{ doors.direct(reason) }</li>
                    }) }
                </ul>
                <p>{ doors.begin(Some(Choice::WorriedAboutAPerson), "plain", html! { site::WORRIED }) }</p>
            </section>
            <section aria-labelledby="also">
                <h2 id="also">{ site::ALSO_HERE }</h2>
                <ul>
                    <li><a class="alone" href={Route::Picture}>{ site::ALSO_PICTURE }</a></li>
                    <li><a class="alone" href={Route::Keys}>{ site::ALSO_KEYS }</a></li>
                </ul>
                <p class="note">
                    { requests_line() }{ " " }
                    <a href={Route::About}>{ site::HOW_TO_CHECK }</a>
                </p>
            </section>
        </Titled>
    }
}

/// The ways into the check. Opened in a tab of its own, each leads to the first question, because
/// what the session knows stays in this tab.
struct Doors<'a> {
    session: &'a SessionHandle,
}

impl Doors<'_> {
    /// The two main ways in; with answers of one's own, the way back to them.
    fn main(&self) -> Html {
        let furthest = self.session.furthest();
        if furthest == 0 || self.session.is_example {
            let example = self.through(Act::TryExample, example_answers_page());
            return html! {
                <>
                    { self.begin(None, "press", html! { site::CHECK_A_KEY }) }
                    <a class="plain" href={Route::Check { n: 0 }} onclick={example}>{ site::TRY_EXAMPLE }</a>
                </>
            };
        }
        html! {
            <>
                <a class="press" href={Route::Check { n: furthest }}>{ site::GO_ON }</a>
                // The buttons are gone with the answers: the reader stays at the page's heading.
                <Forget onforgotten={|()| browser::arrive()} />
            </>
        }
    }

    /// A start from what happened.
    fn direct(&self, reason: Choice) -> Html {
        let words = site::direct_start(reason);
        let content = html! {
           <>
               { choice_drawing(reason) }
               <b>{ words.title }</b><span>{ words.line }</span>
           </>
        };
        self.begin(Some(reason), "", content)
    }

    /// A check of one's own, with the reason if it is told already.
    fn begin(&self, reason: Option<Choice>, class: &'static str, content: Html) -> Html {
        let onclick = self.through(Act::Begin(reason), usize::from(reason.is_some()));
        html! { <a class={classes!(class)} href={Route::Check { n: 0 }} {onclick}>{ content }</a> }
    }

    /// Acts on the session and goes to page `n` of the check.
    fn through(&self, act: Act, n: usize) -> Callback<MouseEvent> {
        let session = self.session.clone();
        Callback::from(move |event: MouseEvent| {
            if event.meta_key() || event.ctrl_key() || event.shift_key() || event.alt_key() {
                return;
            }
            event.prevent_default();
            session.dispatch(act);
            Route::Check { n }.go();
        })
    }
}

/// The key of the first drawing, with a stamp where one most often stands.
fn hero() -> Html {
    let words = copy::question(Question::Reason);
    let [title, desc] = [words.drawing_title, words.drawing_desc].map(AttrValue::from);
    let drawing = Some((&title, &desc));
    html! {
        <div class="plate">
            { key_drawing(drawing, DrawnPattern::DEMONSTRATION, Stamp::Digits(5), true) }
        </div>
    }
}

/// Where the example starts: its answers, to look over.
fn example_answers_page() -> usize {
    let path = Path::replay(&example::answers());
    path.position(Stop::LookOver).unwrap_or(0)
}

/// What the browser lists as fetched since the page was ready; nothing where it keeps no list.
fn requests_line() -> Option<String> {
    browser::requests().map(|requests| {
        site::requests_since_ready(
            requests.after_ready,
            requests.second_part,
            requests.kept_page,
        )
    })
}
