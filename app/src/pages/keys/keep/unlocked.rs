//! A file that anyone can read, folded away behind its caution.

use self_check_core::household::{Household, file};
use yew::prelude::*;

use crate::browser;
use crate::copy::{keep, site};

/// What is to be saved.
#[derive(Properties, PartialEq)]
pub struct SaveUnlockedProps {
    /// What is on the page.
    pub household: Household,
}

/// A caution and a button.
#[component]
pub fn SaveUnlocked(props: &SaveUnlockedProps) -> Html {
    let said = use_state(|| ("", ""));
    let save = {
        let said = said.clone();
        let household = props.household.clone();
        Callback::from(move |_: MouseEvent| said.set(save(&household)))
    };
    html! {
        <details>
            <summary>{ keep::UNLOCKED }</summary>
            <p class="caution"><strong>{ site::CAUTION }</strong>{ " " }{ keep::UNLOCKED_CAUTION }</p>
            <p class="row">
                <button type="button" class="press-quiet" onclick={save}>{ keep::SAVE_UNLOCKED }</button>
            </p>
            { super::said(said.0, said.1) }
        </details>
    }
}

/// What is said afterwards, and what is wrong.
fn save(household: &Household) -> (&'static str, &'static str) {
    match file::export(household) {
        Err(_) => ("", keep::CANNOT_WRITE),
        Ok(record) => {
            if browser::save_file(keep::FILE_UNLOCKED, "application/json", record.as_bytes()) {
                (keep::SAVED, "")
            } else {
                ("", keep::CANNOT_SAVE)
            }
        }
    }
}
