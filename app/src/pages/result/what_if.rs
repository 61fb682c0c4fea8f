//! What would be left if some of the advice were followed from today on.

use self_check_core::advice::Action;
use self_check_core::assess::{Assessment, Count};
use self_check_core::what_if::{FromToday, choices, from_today};
use yew::prelude::*;

use super::rule::rule;
use super::verdict::level_line;
use crate::copy::{self, site};

/// The result to play with.
#[derive(Properties, PartialEq)]
pub struct WhatIfProps {
    /// The result as it stands.
    pub assessment: Assessment,
}

/// A box to tick for each action whose effect can be shown, and what would be left.
#[component]
pub fn WhatIf(props: &WhatIfProps) -> Html {
    let done = use_state(Vec::<Action>::new);
    let offered = choices(&props.assessment);
    if offered.is_empty() {
        return html! {};
    }
    let then = (!done.is_empty()).then(|| from_today(&props.assessment, &done));
    html! {
        <section class="what-if screen-only" aria-labelledby="what-if">
            <fieldset>
                <legend><h2 id="what-if">{ site::WHAT_IF }</h2></legend>
                <p class="hint">{ site::WHAT_IF_NOTE }</p>
                <div class="opts">{ for offered.into_iter().filter_map(|action| tick(action, &done)) }</div>
            </fieldset>
            { left(then.as_ref()) }
        </section>
    }
}

fn tick(action: Action, done: &UseStateHandle<Vec<Action>>) -> Option<Html> {
    let words = copy::what_if(action)?;
    let is_done = done.contains(&action);
    let onchange = {
        let done = done.clone();
        Callback::from(move |_: Event| {
            let others = done.iter().copied().filter(|&other| other != action);
            done.set(others.chain((!is_done).then_some(action)).collect());
        })
    };
    Some(html! {
        <label key={action as usize} class="opt">
            <input type="checkbox" checked={is_done} {onchange} autocomplete="off" />
            <span><b>{ words }</b></span>
        </label>
    })
}

/// What would be left. Only its level is read out at each tick; the rest is there to be read.
fn left(then: Option<&FromToday>) -> Html {
    html! {
        <>
            <div role="status">
                if let Some(then) = then {
                    <h3>{ site::WHAT_IF_LEFT }</h3>
                    { level_line(then.level) }
                }
            </div>
            if let Some(then) = then {
                if let Count::Counted { .. } = then.count {
                    { rule(&then.count) }
                }
                if !then.still_advised.is_empty() {
                    <p>{ site::STILL_TO_DO }</p>
                    <ul>
                        { for then.still_advised.iter().map(|advice| html! {
                            <li>{ copy::action(advice.action).title }</li>
                        }) }
                    </ul>
                }
            }
        </>
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use self_check_core::answers::Answers;
    use self_check_core::assess::assess;
    use self_check_core::questions::{Choice, Question};

    /// An action that can be offered and has no words would be left out without a sound.
    #[test]
    fn whatever_is_offered_has_words() {
        let told = [
            Choice::SomeoneHadIt,
            Choice::NoLongerShould,
            Choice::NotChanged,
        ];
        let begun = told
            .into_iter()
            .try_fold(Answers::none(), |answers, choice| {
                answers.give(choice.question(), &[choice])
            });
        let kept = [Choice::CarriedInView, Choice::HiddenOutside];
        let begun = begun.and_then(|answers| answers.give(Question::Kept, &kept));
        let begun = begun.unwrap_or_default();
        let mut offered = Vec::new();
        let opens = Question::Opens.row().choices.iter();
        let opens = opens.flat_map(|&one| [vec![one], vec![one, Choice::FlatDoor]]);
        for opens in opens {
            for &decides in Question::WhoDecides.row().choices {
                for &kind in Question::KeyKind.row().choices {
                    let answers = begun
                        .give(Question::Opens, &opens)
                        .and_then(|answers| answers.give(Question::WhoDecides, &[decides]))
                        .and_then(|answers| answers.give(Question::KeyKind, &[kind]))
                        .unwrap_or_default();
                    offered.extend(choices(&assess(&answers, None)));
                }
            }
        }
        for action in Action::ALL {
            let has_words = copy::what_if(action).is_some();
            assert_eq!(has_words, offered.contains(&action), "{action:?}");
        }
    }
}
