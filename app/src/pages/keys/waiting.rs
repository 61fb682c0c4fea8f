//! A check's finding that waits to be told which key it is about.

use std::rc::Rc;

use self_check_core::household::{Finding, KeyId};
use yew::prelude::*;

use super::error_box::{ErrorBox, use_error_title};
use crate::copy::en::household::board as words;
use crate::household::{HouseholdAct, Overview};
use crate::ui::{Field, choose_among, use_household, use_visit};

/// The finding, and the keys it can be about.
#[derive(Properties, PartialEq)]
pub struct WaitingProps {
    /// What the check found.
    pub finding: Finding,
    /// The household.
    pub overview: Rc<Overview>,
    /// Called when it waits no more, with the key it was given to.
    pub ondone: Callback<Option<KeyId>>,
}

/// Which key was it? Nothing is chosen beforehand: only the person knows.
#[component]
pub fn Waiting(props: &WaitingProps) -> Html {
    let state = use_household();
    let chosen = use_state(|| None::<Chosen>);
    let tries = use_state(|| 0_usize);
    let visits = use_visit().count;
    use_error_title(*tries > 0);
    {
        // What was chosen for one finding is not chosen for the next.
        let (chosen, tries) = (chosen.setter(), tries.setter());
        use_effect_with((props.finding, visits), move |_| {
            chosen.set(None);
            tries.set(0);
        });
    }
    let onvalue = {
        let chosen = chosen.clone();
        Callback::from(move |value: String| chosen.set(Chosen::read(&value)))
    };
    let onsubmit = {
        let (state, chosen, tries) = (state.clone(), chosen.clone(), tries.clone());
        let (ondone, next) = (props.ondone.clone(), props.overview.household.next_key());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            match *chosen {
                None => tries.set(*tries + 1),
                Some(Chosen::Key(key)) => {
                    state.dispatch(HouseholdAct::Assign(Some(key)));
                    ondone.emit(Some(key));
                }
                Some(Chosen::New) => {
                    state.dispatch(HouseholdAct::Assign(None));
                    ondone.emit(Some(next));
                }
            }
        })
    };
    let let_go = {
        let (state, ondone) = (state.clone(), props.ondone.clone());
        Callback::from(move |_: MouseEvent| {
            state.dispatch(HouseholdAct::LetGo);
            ondone.emit(None);
        })
    };
    let field = Field {
        error: (*tries > 0).then_some(words::WAITING_NOT_CHOSEN),
        ..Field::new(FIELD, words::WAITING_KEY)
    };
    let now = chosen.map_or_else(String::new, Chosen::value);
    html! {
        <section class="notice" aria-labelledby="waiting">
            if *tries > 0 {
                <ErrorBox message={words::WAITING_NOT_CHOSEN} field={FIELD} tries={*tries} />
            }
            <h2 id="waiting">{ words::WAITING }</h2>
            <p>{ words::WAITING_LEDE }{ " " }{ words::finding(Some(props.finding)) }</p>
            <form {onsubmit} novalidate=true autocomplete="off">
                { choose_among(field, lines(&props.overview), &now, onvalue) }
                <p class="row">
                    <button type="submit" class="press">{ words::WAITING_TAKE }</button>
                    <button type="button" class="plain" onclick={let_go}>{ words::WAITING_DROP }</button>
                </p>
            </form>
        </section>
    }
}

/// The list of keys.
const FIELD: &str = "waiting-key";

/// Which key it was.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Chosen {
    Key(KeyId),
    New,
}

impl Chosen {
    const NEW: &'static str = "new";

    fn value(self) -> String {
        match self {
            Self::Key(key) => key.number().to_string(),
            Self::New => Self::NEW.to_owned(),
        }
    }

    fn read(value: &str) -> Option<Self> {
        match value {
            Self::NEW => Some(Self::New),
            number => number
                .parse()
                .ok()
                .map(|number| Self::Key(KeyId::new(number))),
        }
    }
}

/// The lines to choose from; the first says nothing.
fn lines(overview: &Overview) -> Vec<(String, String)> {
    let keys = overview.household.keys();
    let keys = keys.map(|(key, _)| {
        let words = overview.names.key(key).to_owned();
        (Chosen::Key(key).value(), words)
    });
    let nothing = (String::new(), words::WAITING_CHOOSE.to_owned());
    let new = (Chosen::New.value(), words::WAITING_NEW.to_owned());
    std::iter::once(nothing).chain(keys).chain([new]).collect()
}

#[cfg(test)]
mod tests {
    use self_check_core::household::demonstration;

    use super::*;

    #[test]
    fn every_line_but_the_first_says_which_key_it_was() {
        let home = demonstration::household();
        let lines = lines(&Overview::of(&home));
        let read: Vec<Option<Chosen>> =
            lines.iter().map(|(value, _)| Chosen::read(value)).collect();
        let keys = home.keys().map(|(key, _)| Some(Chosen::Key(key)));
        let expected = [None].into_iter().chain(keys).chain([Some(Chosen::New)]);
        assert_eq!(read, expected.collect::<Vec<_>>());
    }
}
