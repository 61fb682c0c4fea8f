//! A file that only its passphrase opens.

use self_check_core::household::{Household, file};
use yew::platform::spawn_local;
use yew::prelude::*;

use super::passphrase::{Passphrase, show_box};
use crate::browser;
use crate::copy::keep;
use crate::sealed::{self, SealError};

/// What is to be saved.
#[derive(Properties, PartialEq)]
pub struct SaveLockedProps {
    /// What is on the page.
    pub household: Household,
}

/// How far saving has come.
#[derive(Clone, Copy, PartialEq)]
enum Saving {
    NotAsked,
    TooShort,
    NotTheSame,
    Locking,
    /// The browser has the file.
    Handed,
    Refused(&'static str),
}

/// Two fields and a button.
#[component]
pub fn SaveLocked(props: &SaveLockedProps) -> Html {
    let saving = use_state(|| Saving::NotAsked);
    let is_shown = use_state(|| false);
    let (first, second) = (use_node_ref(), use_node_ref());
    let onsubmit = {
        let (saving, first, second) = (saving.clone(), first.clone(), second.clone());
        let household = props.household.clone();
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            if *saving == Saving::Locking {
                return;
            }
            let passphrase = browser::text_in(&first);
            if passphrase.chars().count() < sealed::LEAST_LETTERS {
                saving.set(Saving::TooShort);
                browser::focus_id("passphrase");
                return;
            }
            if passphrase != browser::text_in(&second) {
                saving.set(Saving::NotTheSame);
                browser::focus_id("passphrase-again");
                return;
            }
            saving.set(Saving::Locking);
            let (saving, fields) = (saving.clone(), [first.clone(), second.clone()]);
            let household = household.clone();
            spawn_local(async move {
                browser::until_shown().await;
                let outcome = lock(&household, &passphrase);
                if outcome == Saving::Handed {
                    fields.iter().for_each(browser::empty_field);
                }
                saving.set(outcome);
            });
        })
    };
    let error = |fault: Saving, words: &'static str| (*saving == fault).then_some(words);
    html! {
        <form {onsubmit} novalidate=true autocomplete="off" aria-labelledby="keep-lock">
            <h3 id="keep-lock">{ keep::LOCK }</h3>
            <p>{ keep::LOCK_HOW }</p>
            <Passphrase id="passphrase" label={keep::PASSPHRASE} hint={keep::PASSPHRASE_HINT}
                error={error(Saving::TooShort, keep::TOO_SHORT)} is_shown={*is_shown} node={first} />
            <Passphrase id="passphrase-again" label={keep::PASSPHRASE_AGAIN}
                error={error(Saving::NotTheSame, keep::NOT_THE_SAME)} is_shown={*is_shown} node={second} />
            { show_box(&is_shown) }
            <p class="row"><button type="submit" class="press">{ keep::SAVE_LOCKED }</button></p>
            { outcome(*saving) }
        </form>
    }
}

fn lock(household: &Household, passphrase: &str) -> Saving {
    let Ok(record) = file::export(household) else {
        return Saving::Refused(keep::CANNOT_WRITE);
    };
    let file = match sealed::seal(passphrase, record.as_bytes()) {
        Ok(file) => file,
        Err(SealError::NoRoom) => return Saving::Refused(keep::NO_ROOM),
        Err(SealError::Failed) => return Saving::Refused(keep::CANNOT_WRITE),
    };
    if browser::save_file(keep::FILE_LOCKED, "application/octet-stream", &file) {
        Saving::Handed
    } else {
        Saving::Refused(keep::CANNOT_SAVE)
    }
}

fn outcome(saving: Saving) -> Html {
    let (status, alert) = match saving {
        Saving::NotAsked | Saving::TooShort | Saving::NotTheSame => ("", ""),
        Saving::Locking => (keep::LOCKING, ""),
        Saving::Handed => (keep::LOCKED, ""),
        Saving::Refused(words) => ("", words),
    };
    super::said(status, alert)
}
