//! What the person was not sure of: first what is worth finding out, because the answer would change
//! what to do, then the rest.

use self_check_core::answers::Answers;
use self_check_core::path::{Path, Stop};
use self_check_core::questions::Question;
use yew::prelude::*;

use crate::copy::{self, site};
use crate::route::Route;

/// The list, each entry a link to its question; nothing where the person was sure of everything.
pub fn find_out(worth_it: &[Question], answers: &Answers, path: &Path) -> Html {
    let rest = left_open(worth_it, answers, path);
    if worth_it.is_empty() && rest.is_empty() {
        return html! {};
    }
    let heading = if worth_it.is_empty() {
        site::NOT_SURE_OF
    } else {
        site::FIND_OUT
    };
    html! {
        <section aria-labelledby="find-out">
            <h2 id="find-out">{ heading }</h2>
            if !worth_it.is_empty() {
                <p>{ site::FIND_OUT_LEDE }</p>
                <ul class="find-out">
                    { for worth_it.iter().map(|&question| to_find_out(question, answers, path)) }
                </ul>
            }
            if !rest.is_empty() {
                <p>{ site::NOT_SURE_EITHER }</p>
                <ul>
                    { for rest.into_iter().map(|question| html! {
                        <li key={question as usize}>{ linked(question, path) }</li>
                    }) }
                </ul>
            }
        </section>
    }
}

/// What the person was not sure of and is not told to find out.
fn left_open(worth_it: &[Question], answers: &Answers, path: &Path) -> Vec<Question> {
    path.asked()
        .iter()
        .filter(|&question| answers.is_not_sure(question) && !worth_it.contains(&question))
        .collect()
}

fn to_find_out(question: Question, answers: &Answers, path: &Path) -> Html {
    html! {
        <li key={question as usize}>
            <h3>{ linked(question, path) }</h3>
            <p>{ copy::find_out_on(question, answers) }</p>
        </li>
    }
}

fn linked(question: Question, path: &Path) -> Html {
    let name = copy::short(question);
    match path.position(Stop::Ask(question)) {
        Some(n) => html! { <a class="alone" href={Route::Check { n }}>{ name }</a> },
        None => html! { <b>{ name }</b> },
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use self_check_core::questions::Choice;

    #[test]
    fn what_is_not_worth_finding_out_is_named_if_it_was_asked() {
        let not_asked = Question::MissingHow;
        let answers = [
            Question::Copies,
            Question::KeyKind,
            Question::Kept,
            not_asked,
        ]
        .into_iter()
        .fold(Answers::none(), Answers::give_not_sure)
        .give(Question::Reason, &[Choice::LookAtMyKeys])
        .and_then(|answers| answers.give(Question::Opens, &[Choice::HouseDoor]))
        .unwrap_or_default();
        let path = Path::replay(&answers);
        let rest = left_open(&[Question::Copies], &answers, &path);
        assert_eq!(rest, [Question::KeyKind, Question::Kept]);
    }
}
