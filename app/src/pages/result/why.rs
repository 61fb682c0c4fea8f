//! Every rule with its verdict: why, and why not.

use self_check_core::advice::RuleId;
use self_check_core::sources::SourceKind;
use self_check_core::verdict::Verdict;
use yew::prelude::*;

use crate::copy::{self, site};

/// The whole table, folded: those that apply first, then those that wait for an answer, then those
/// that do not apply.
pub fn why(considered: &[(RuleId, Verdict)]) -> Html {
    let with = |test: fn(Verdict) -> bool| -> Vec<&(RuleId, Verdict)> {
        considered
            .iter()
            .filter(|(_, verdict)| test(*verdict))
            .collect()
    };
    html! {
        <details class="whole-table">
            <summary>{ site::WHY_AND_WHY_NOT }</summary>
            { group(site::RULES_APPLY, &with(|verdict| verdict.is_certain())) }
            { group(site::RULES_UNKNOWN, &with(|verdict| matches!(verdict, Verdict::Unknown(_)))) }
            { group(site::RULES_DO_NOT, &with(|verdict| verdict == Verdict::DoesNotApply)) }
            <h3>{ site::SOURCE_KINDS }</h3>
            <ul class="reasons">{ for SourceKind::ALL.into_iter().map(kind) }</ul>
        </details>
    }
}

/// What the first words of a source mean.
fn kind(kind: SourceKind) -> Html {
    let words = copy::source_kind(kind);
    html! { <li><span><b>{ words.name }</b>{ ": " }{ words.meaning }</span></li> }
}

fn group(title: &'static str, rules: &[&(RuleId, Verdict)]) -> Html {
    if rules.is_empty() {
        return html! {};
    }
    html! {
        <>
            <h3>{ title }</h3>
            <ul class="reasons">{ for rules.iter().map(|(id, verdict)| row(*id, *verdict)) }</ul>
        </>
    }
}

fn row(id: RuleId, verdict: Verdict) -> Html {
    html! {
        <li>
            <span>{ copy::rule(id) }</span>
            if let Verdict::Unknown(question) = verdict {
                <span class="reason-state">{ copy::waits_for(question) }</span>
            }
        </li>
    }
}
