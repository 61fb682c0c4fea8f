//! What to do, most urgent first.

use self_check_core::advice::{
    Action, Advice, Advised, Call, Doer, RuleId, Urgency, remedy, rules,
};
use self_check_core::answers::Answers;
use self_check_core::sources::Source;
use yew::prelude::*;

use super::letter::letter;
use crate::copy::{self, LearnPage, site};
use crate::drawing::urgency_mark;
use crate::route::Route;
use crate::ui::source_line;

/// The list of actions, each with how, who, what it may hurt, why and where from; nothing where there
/// is only something to find out.
pub fn to_do(advised: &Advised, answers: &Answers, safety_first: bool) -> Html {
    match advised.actions.as_slice() {
        [] => return html! {},
        [only] if only.action == Action::NothingToDo => return nothing_to_do(),
        _ => {}
    }
    let asks_for = |test: fn(&Advice) -> bool| advised.actions.iter().any(test);
    html! {
        <section aria-labelledby="to-do">
            <h2 id="to-do">{ site::TO_DO }</h2>
            if safety_first {
                <p class="caution"><strong>{ site::CAUTION }</strong>{ " " }{ site::ONLY_IN_A_PLAN }</p>
            } else {
                <p class="note">{ for urgencies(advised).into_iter().map(meaning) }</p>
            }
            <ol class="todo">{ for advised.actions.iter().map(|one| advice(one, answers, safety_first)) }</ol>
            { sources_on_paper(advised) }
            if asks_for(|advice| advice.action.doer() == Doer::Locksmith) {
                { to_read(LearnPage::ChoosingALocksmith, site::CHOOSE_A_LOCKSMITH) }
            }
            if asks_for(|advice| matches!(advice.action, Action::TellLandlord | Action::TellTenants)) {
                { to_read(LearnPage::TenantsAndLandlords, site::TENANTS_AND_LANDLORDS) }
            }
        </section>
    }
}

/// Where nothing is to be done, that is said, and no list with a time for it.
fn nothing_to_do() -> Html {
    let words = copy::action(Action::NothingToDo);
    html! {
        <section aria-labelledby="to-do">
            <h2 id="to-do">{ words.title }</h2>
            <p>{ words.how }</p>
        </section>
    }
}

/// The way to a page that says more. Pages are counted from 1.
fn to_read(page: LearnPage, words: &'static str) -> Html {
    let n = page as usize + 1;
    html! { <p class="note screen-only"><a class="alone" href={Route::LearnPage { n }}>{ words }</a></p> }
}

/// When to do it. Where a feared person may be near, nothing has a time: whoever hurried after a mark
/// could be in danger.
fn when(advice: &Advice, safety_first: bool) -> Html {
    if safety_first {
        let when = match advice.action {
            Action::PlanWithSupport => site::WHEN_SAFE,
            _ => site::WITH_THE_SERVICE,
        };
        return html! { <p class="when">{ when }</p> };
    }
    html! {
        <p class={classes!("when", urgency_class(advice.urgency))}>
            { urgency_mark(advice.urgency) }{ copy::urgency(advice.urgency).name }
        </p>
    }
}

/// The urgencies that occur in the list, in its order.
fn urgencies(advised: &Advised) -> Vec<Urgency> {
    let mut found: Vec<Urgency> = advised
        .actions
        .iter()
        .map(|advice| advice.urgency)
        .collect();
    found.dedup();
    found
}

fn meaning(urgency: Urgency) -> Html {
    let words = copy::urgency(urgency);
    html! { <span><b>{ words.name }</b>{ ": " }{ words.meaning }{ " " }</span> }
}

fn advice(advice: &Advice, answers: &Answers, safety_first: bool) -> Html {
    let words = copy::advised(advice, answers);
    // Where somebody may be feared, nothing makes haste.
    let how = match safety_first {
        true => words.how.to_owned(),
        false => copy::how(advice, answers),
    };
    html! {
        <li key={advice.action as usize}>
            { when(advice, safety_first) }
            <h3>{ words.title }</h3>
            <p>{ how }</p>
            if let Some(text) = words.may_hurt {
                <p class="caution"><strong>{ site::CAUTION }</strong>{ " " }{ text }</p>
            }
            <dl class="facts">
                <dt>{ site::WHO_DOES_IT }</dt><dd>{ words.who }</dd>
                <dt>{ site::COST }</dt><dd>{ words.cost }</dd>
            </dl>
            if advice.action == Action::GetCopiesBack {
                <p class="screen-only"><a href={Route::Start}>{ site::TO_WORRIED }</a></p>
            }
            if advice.action == Action::TellLandlord && !safety_first {
                { letter(answers) }
            }
            if !advice.because.is_empty() {
                { because(words.title, &advice.because) }
            }
        </li>
    }
}

/// The claims an action rests on, and where they come from.
fn because(title: &str, rules: &[RuleId]) -> Html {
    html! {
        <details>
            <summary>
                { site::WHY }<span class="visually-hidden">{ ": " }{ title }</span>
            </summary>
            <ul>{ for rules.iter().map(|&id| html! { <li>{ copy::rule(id) }</li> }) }</ul>
            <ul class="sources">
                { for sources(rules).into_iter().map(|source| html! { <li>{ source_line(source) }</li> }) }
            </ul>
        </details>
    }
}

/// On paper the reasons stay folded; where they are known from stands once, below the list.
fn sources_on_paper(advised: &Advised) -> Html {
    let because: Vec<RuleId> = advised
        .actions
        .iter()
        .flat_map(|advice| advice.because.iter().copied())
        .collect();
    let lines: Vec<String> = sources(&because).into_iter().map(source_line).collect();
    if lines.is_empty() {
        return html! {};
    }
    html! { <p class="paper-only src">{ site::KNOWN_FROM }{ " " }{ lines.join("; ") }{ "." }</p> }
}

/// The sources of these rules, each once, in the order of the rules.
pub fn sources(because: &[RuleId]) -> Vec<&'static Source> {
    let mut found: Vec<&'static Source> = Vec::new();
    for rule in rules().filter(|rule| because.contains(&rule.id)) {
        let of_remedy: &[&'static Source] = match rule.calls {
            Call::Remedy => remedy::SOURCES,
            Call::For(_) => &[],
        };
        for source in rule.sources.iter().chain(of_remedy) {
            if !found.contains(source) {
                found.push(source);
            }
        }
    }
    found
}

fn urgency_class(urgency: Urgency) -> &'static str {
    match urgency {
        Urgency::Habit => "when-habit",
        Urgency::WhenConvenient => "when-convenient",
        Urgency::Soon => "when-soon",
        Urgency::Today => "when-today",
    }
}
