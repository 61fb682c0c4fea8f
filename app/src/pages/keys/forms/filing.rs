//! What every form does: file its changes, or say what is wrong.

use self_check_core::household::{Change, Label, Refusal};
use yew::prelude::*;

use super::super::board::FORM_TITLE;
use crate::copy::en::household::{self, board as words};
use crate::household::{HouseholdAct, HouseholdHandle, Overview};
use crate::pages::keys::error_box::{ErrorBox, use_error_title};
use crate::ui::use_household;

/// What is wrong, and with which field.
#[derive(Clone, Debug, PartialEq)]
pub struct Wrong {
    /// Which field.
    pub field: &'static str,
    /// What, and what to do.
    pub message: String,
}

/// The filing of one form.
#[derive(Clone, PartialEq)]
pub struct Filing {
    state: HouseholdHandle,
    wrong: UseStateHandle<(Option<Wrong>, usize)>,
    onclose: Callback<()>,
}

/// A form's filing.
#[hook]
pub fn use_filing(onclose: &Callback<()>) -> Filing {
    let state = use_household();
    let wrong = use_state(|| (None::<Wrong>, 0_usize));
    {
        // What was wrong may be so no more once the household is another, as after undo.
        let wrong = wrong.clone();
        use_effect_with(state.household().clone(), move |_| {
            if wrong.0.is_some() {
                wrong.set((None, wrong.1));
            }
        });
    }
    use_error_title(wrong.0.is_some());
    Filing {
        state,
        wrong,
        onclose: onclose.clone(),
    }
}

impl Filing {
    /// Whether safety comes first.
    pub fn is_careful(&self) -> bool {
        self.state.puts_safety_first()
    }

    /// Makes the changes in one step and closes the form; or says what is wrong with `field`.
    pub fn file(&self, overview: &Overview, field: &'static str, changes: Vec<Change>) {
        match overview.household.with_all(changes.clone()) {
            Ok(_) => {
                self.state.dispatch(HouseholdAct::Make(changes));
                self.onclose.emit(());
            }
            Err(refusal) => self.refuse(field, household::refusal(refusal, &overview.names)),
        }
    }

    /// Takes away what the form is about.
    pub fn remove(&self, overview: &Overview, change: Change) {
        match overview.household.with(change.clone()) {
            Ok(_) => {
                self.state.dispatch(HouseholdAct::Make(vec![change]));
                self.onclose.emit(());
            }
            // The tick that stands for removing them is not offered then.
            Err(Refusal::HolderHadCopies(holder)) if self.is_careful() => {
                self.refuse(FORM_TITLE, words::had_copies(overview.names.holder(holder)));
            }
            Err(refusal) => self.refuse(FORM_TITLE, household::refusal(refusal, &overview.names)),
        }
    }

    /// Says what is wrong.
    pub fn refuse(&self, field: &'static str, message: String) {
        let wrong = Wrong { field, message };
        self.wrong.set((Some(wrong), self.wrong.1 + 1));
    }

    /// What is wrong with this field.
    pub fn wrong_with(&self, field: &str) -> Option<&str> {
        let wrong = self.wrong.0.as_ref().filter(|wrong| wrong.field == field);
        wrong.map(|wrong| wrong.message.as_str())
    }

    /// The form around its fields.
    pub fn sheet(
        &self,
        title: &str,
        fields: Html,
        onsave: Callback<()>,
        onremove: Option<Callback<()>>,
    ) -> Html {
        let onsubmit = Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            onsave.emit(());
        });
        let cancel = {
            let onclose = self.onclose.clone();
            Callback::from(move |_: MouseEvent| onclose.emit(()))
        };
        html! {
                   <form class="sheet-form" {onsubmit} novalidate=true autocomplete="off" aria-labelledby={FORM_TITLE}>
                       if let (Some(wrong), tries) = (*self.wrong).clone() {
                           <ErrorBox message={wrong.message} field={wrong.field} {tries} />
                       }
                       <h3 id={FORM_TITLE} tabindex="-1">{ title }</h3>
                       { fields }
                       <p class="row">
                           <button type="submit" class="press">{ words::SAVE }</button>
                           <button type="button" class="plain" onclick={cancel}>{ words::CANCEL }</button>
                           if let Some(onremove) = onremove {
                               <button type="button" class="plain" onclick={Callback::from(move |_: MouseEvent| onremove.emit(()))} aria-label={words::about(words::REMOVE, title)}>
        { words::REMOVE }
                               </button>
                           }
                       </p>
                   </form>
               }
    }
}

/// The own word in a line, if there is one.
pub fn label(text: &str) -> Result<Option<Label>, Refusal> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    Ok(Some(Label::new(text)?))
}
