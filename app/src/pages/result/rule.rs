//! How many keys are left to try, read on the brass rule.

use self_check_core::assess::Count;
use self_check_core::exposure::{KeyRange, KeysLeft};
use self_check_core::grades::Mark;
use yew::prelude::*;

use crate::copy::{self, site};
use crate::drawing::{BrassRule, RuleMark, brass_rule};

/// What is marked below the rule, top row first: most keys first, so that no line runs through
/// another's word, however narrow the rule.
const MARKED: [(Mark, &str); 3] = [
    (Mark::GradeFour, site::MARK_GRADE_4),
    (Mark::LowestGrade, site::MARK_LOWEST),
    (Mark::PocketfulOfKeys, site::MARK_POCKETFUL),
];

/// The rule with its caption, or why this key has no number.
pub fn rule(count: &Count) -> Html {
    match count {
        Count::Counted { of, left } => counted(of, left),
        Count::NotCounted(reason) => html! { <p class="note">{ copy::no_count(*reason) }</p> },
    }
}

fn counted(of: &KeyRange, left: &KeysLeft) -> Html {
    let caption = AttrValue::from(site::rule_caption(of, left));
    let before = of.untouched();
    let is_less = left.most < before.most;
    let marks = MARKED
        .into_iter()
        .map(|(mark, word)| RuleMark {
            keys: mark.keys().get(),
            word,
        })
        .collect();
    let rule = BrassRule {
        now: (left.fewest, left.most),
        now_word: site::RULE_NOW,
        before: is_less.then_some((before.most, site::RULE_BEFORE)),
        numbers: site::RULE_NUMBERS,
        marks,
    };
    html! {
        <figure class="plate instrument">
            { brass_rule(&rule, Some((&site::COUNT.into(), &caption))) }
            <figcaption>{ caption }</figcaption>
        </figure>
    }
}
