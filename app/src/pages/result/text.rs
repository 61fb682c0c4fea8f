//! The result as plain text.

use std::fmt::Write;

use self_check_core::advice::{Action, Advice};
use self_check_core::answers::Answers;
use self_check_core::assess::{Assessment, Count};
use self_check_core::exposure::Exposure;

use super::to_do::sources;
use crate::copy::{self, site};
use crate::ui::source_line;

/// The result as lines to paste elsewhere. It says what the page says, no answer beyond it.
pub fn as_text(assessment: &Assessment, answers: &Answers, is_example: bool) -> String {
    let level = copy::level(assessment.level);
    let mut text = String::new();
    push(&mut text, &site::full_title(site::RESULT_TITLE));
    if is_example {
        let label = format!("{}. {}", site::EXAMPLE_LABEL, site::EXAMPLE_NOTE);
        push(&mut text, &label);
    }
    push(&mut text, &copy::headline(&assessment.headline));
    if let Some(groups) = copy::headline_groups(&assessment.headline) {
        push(&mut text, &groups);
    }
    if !assessment.headline.is_for_others() {
        let meaning = copy::level_meaning(assessment.level, &assessment.headline);
        push(&mut text, &format!("{}. {meaning}", level.name));
    }
    if let Some(number) = copy::number_on_the_key(assessment.number) {
        push(&mut text, number);
    }
    push(&mut text, &count_line(&assessment.count));
    if !assessment.exposures.is_empty() {
        push(&mut text, &format!("\n{}", site::EXPOSURES));
        for exposure in &assessment.exposures {
            push(&mut text, &exposure_line(exposure));
        }
    }
    match assessment.advised.actions.as_slice() {
        [] => {}
        [only] if only.action == Action::NothingToDo => {
            let words = copy::action(only.action);
            push(&mut text, &format!("\n{}\n{}", words.title, words.how));
        }
        actions => {
            push(&mut text, &format!("\n{}", site::TO_DO));
            for (index, advice) in actions.iter().enumerate() {
                push(&mut text, &advice_lines(index + 1, advice, answers));
            }
        }
    }
    if !assessment.advised.find_out.is_empty() {
        push(&mut text, &format!("\n{}", site::FIND_OUT));
        for &question in &assessment.advised.find_out {
            push(
                &mut text,
                &format!("- {}", copy::find_out_on(question, answers)),
            );
        }
    }
    push(&mut text, &format!("\n{}", site::TEXT_CAUTION));
    text
}

fn exposure_line(exposure: &Exposure) -> String {
    let not_known = if copy::is_open(exposure.standing) {
        format!("{} ", site::NOT_KNOWN)
    } else {
        String::new()
    };
    let line = format!(
        "- {not_known}{}. {}",
        copy::event(exposure.event),
        copy::standing(exposure.standing)
    );
    line.trim_end().to_owned()
}

fn push(text: &mut String, line: &str) {
    // Writing to a string cannot fail.
    let _ = writeln!(text, "{line}");
}

fn count_line(count: &Count) -> String {
    match count {
        Count::Counted { of, left } => site::rule_caption(of, left),
        Count::NotCounted(reason) => copy::no_count(*reason).to_owned(),
    }
}

fn advice_lines(number: usize, advice: &Advice, answers: &Answers) -> String {
    let words = copy::advised(advice, answers);
    let mut lines = format!(
        "{number}. [{}] {}\n   {}\n   {}: {}\n   {}: {}",
        copy::urgency(advice.urgency).name,
        words.title,
        copy::how(advice, answers),
        site::WHO_DOES_IT,
        words.who,
        site::COST,
        words.cost,
    );
    if let Some(caution) = words.may_hurt {
        lines += &format!("\n   {} {caution}", site::CAUTION);
    }
    for source in sources(&advice.because) {
        lines += &format!("\n   {}", source_line(source));
    }
    lines
}
