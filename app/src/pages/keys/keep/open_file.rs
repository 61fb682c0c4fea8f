//! Opening a file. Whatever is wrong with it, what is on the page stays as it is.

use std::rc::Rc;

use self_check_core::household::{Household, file};
use yew::platform::spawn_local;
use yew::prelude::*;

use super::passphrase::{Passphrase, show_box};
use crate::browser;
use crate::copy::keep;
use crate::sealed::{self, OpenError};

/// Where the file goes.
#[derive(Properties, PartialEq)]
pub struct OpenFileProps {
    /// What is on the page.
    pub household: Household,
    /// Called with what the file holds.
    pub onload: Callback<Household>,
}

/// How far opening has come.
#[derive(Clone, PartialEq)]
enum Opening {
    NotAsked,
    Reading,
    /// It waits for its passphrase; the one before did not open it.
    Locked(Rc<[u8]>, Option<OpenError>),
    Unlocking(Rc<[u8]>),
    /// It is open, and something else is on the page.
    Asks(Household),
    Opened,
    NotReplaced,
    Refused(AttrValue),
}

impl Opening {
    /// Where the focus goes: to what is asked, and once that is gone to what comes next.
    fn focus(&self) -> Option<&'static str> {
        match self {
            Self::NotAsked | Self::Reading | Self::Unlocking(_) => None,
            Self::Locked(..) => Some(PASSPHRASE),
            Self::Asks(_) => Some(QUESTION),
            Self::Opened | Self::NotReplaced => Some(HEADING),
            Self::Refused(_) => Some(FILE),
        }
    }
}

const HEADING: &str = "keep-open";
const FILE: &str = "keep-file";
const PASSPHRASE: &str = "file-passphrase";
const QUESTION: &str = "keep-replaces";

/// A field for the file and, where it is locked, one for its passphrase.
#[component]
pub fn OpenFile(props: &OpenFileProps) -> Html {
    let opening = use_state(|| Opening::NotAsked);
    let is_shown = use_state(|| false);
    let field = use_node_ref();
    let opener = Opener {
        opening: opening.clone(),
        household: props.household.clone(),
        onload: props.onload.clone(),
    };
    use_effect_with(opening.focus(), |focus| {
        if let Some(id) = focus {
            browser::focus_id(id);
        }
    });
    let choose = {
        let opener = opener.clone();
        Callback::from(move |event: Event| opener.choose(&event))
    };
    html! {
        <div role="group" aria-labelledby={HEADING}>
            <h3 id={HEADING} tabindex="-1">{ keep::OPEN }</h3>
            <p id="keep-open-how">{ keep::OPEN_HOW }</p>
            <div class="field">
                <label for={FILE}>{ keep::CHOOSE }</label>
                <input id={FILE} class="input" type="file" accept=".age,.json" onchange={choose}
                    aria-describedby="keep-open-how" autocomplete="off" />
            </div>
            { opener.asks(&field, &is_shown) }
            { said(&opening) }
        </div>
    }
}

#[derive(Clone)]
struct Opener {
    opening: UseStateHandle<Opening>,
    household: Household,
    onload: Callback<Household>,
}

impl Opener {
    fn choose(&self, event: &Event) {
        let Some(file) = browser::chosen_file(event) else {
            return;
        };
        self.opening.set(Opening::Reading);
        let opener = self.clone();
        spawn_local(async move {
            match browser::read_file(&file, sealed::longest(file::MOST_BYTES)).await {
                Err(trouble) => opener.refuse(keep::file_trouble(trouble)),
                Ok(content) if sealed::is_sealed(&content) => match sealed::examine(&content) {
                    Err(error) => opener.refuse(keep::open_error(error)),
                    Ok(()) => opener.opening.set(Opening::Locked(content.into(), None)),
                },
                Ok(content) => opener.import(&content),
            }
        });
    }

    fn unlock(&self, file: Rc<[u8]>, passphrase: String, field: NodeRef) {
        self.opening.set(Opening::Unlocking(Rc::clone(&file)));
        let opener = self.clone();
        spawn_local(async move {
            browser::until_shown().await;
            match sealed::open(&passphrase, &file) {
                Ok(content) => {
                    browser::empty_field(&field);
                    opener.import(&content);
                }
                Err(OpenError::WrongPassphrase) => {
                    let wrong = Some(OpenError::WrongPassphrase);
                    opener.opening.set(Opening::Locked(file, wrong));
                }
                Err(error) => opener.refuse(keep::open_error(error)),
            }
        });
    }

    fn import(&self, content: &[u8]) {
        match file::import(content) {
            Err(error) => self.refuse(keep::not_opened(error)),
            Ok(household) if self.household.is_empty() || self.household == household => {
                self.load(household);
            }
            Ok(household) => self.opening.set(Opening::Asks(household)),
        }
    }

    fn load(&self, household: Household) {
        self.onload.emit(household);
        self.opening.set(Opening::Opened);
    }

    fn refuse(&self, words: impl Into<AttrValue>) {
        self.opening.set(Opening::Refused(words.into()));
    }

    /// What is asked before the file is on the page.
    fn asks(&self, field: &NodeRef, is_shown: &UseStateHandle<bool>) -> Html {
        match &*self.opening {
            Opening::Locked(file, wrong) => self.asks_passphrase(file, *wrong, field, is_shown),
            Opening::Unlocking(file) => self.asks_passphrase(file, None, field, is_shown),
            Opening::Asks(household) => self.asks_whether(household),
            _ => html! {},
        }
    }

    fn asks_passphrase(
        &self,
        file: &Rc<[u8]>,
        wrong: Option<OpenError>,
        field: &NodeRef,
        is_shown: &UseStateHandle<bool>,
    ) -> Html {
        let onsubmit = {
            let (opener, file, field) = (self.clone(), Rc::clone(file), field.clone());
            Callback::from(move |event: SubmitEvent| {
                event.prevent_default();
                if !matches!(*opener.opening, Opening::Unlocking(_)) {
                    opener.unlock(Rc::clone(&file), browser::text_in(&field), field.clone());
                }
            })
        };
        html! {
            <form {onsubmit} novalidate=true autocomplete="off">
                <Passphrase id={PASSPHRASE} label={keep::PASSPHRASE} hint={keep::IS_LOCKED}
                    error={wrong.map(keep::open_error)} is_shown={**is_shown} node={field.clone()} />
                { show_box(is_shown) }
                <p class="row">
                    <button type="submit" class="press-quiet">{ keep::UNLOCK }</button>
                    { self.ends(keep::NOT_THIS) }
                </p>
            </form>
        }
    }

    fn asks_whether(&self, household: &Household) -> Html {
        let replace = {
            let (opener, household) = (self.clone(), household.clone());
            Callback::from(move |_: MouseEvent| opener.load(household.clone()))
        };
        html! {
            <div role="group" aria-labelledby={QUESTION}>
                <p id={QUESTION} tabindex="-1"><strong>{ keep::replaces(household, &self.household) }</strong></p>
                <p class="row">
                    <button type="button" class="press-quiet" onclick={replace}>{ keep::REPLACE }</button>
                    { self.ends(keep::DO_NOT_REPLACE) }
                </p>
            </div>
        }
    }

    fn ends(&self, words: &'static str) -> Html {
        let opening = self.opening.clone();
        let end = Callback::from(move |_: MouseEvent| opening.set(Opening::NotReplaced));
        html! { <button type="button" class="plain" onclick={end}>{ words }</button> }
    }
}

fn said(opening: &Opening) -> Html {
    let (status, alert) = match opening {
        Opening::NotAsked | Opening::Locked(..) | Opening::Asks(_) => ("", ""),
        Opening::Reading => (keep::READING, ""),
        Opening::Unlocking(_) => (keep::UNLOCKING, ""),
        // That is said at the top of the page, and read out from there.
        Opening::Opened => return html! { <p class="notice">{ keep::OPENED }</p> },
        Opening::NotReplaced => (keep::NOT_REPLACED, ""),
        Opening::Refused(words) => ("", words.as_str()),
    };
    super::said(status, alert)
}
