//! From the rules that apply to one list without contradictions.

use crate::advice::{Action, Advice, Advised, Call, RuleId, Urgency, remedy, rules};
use crate::answers::Answers;
use crate::facts;
use crate::questions::Question;
use crate::verdict::Verdict;

/// Evaluates every rule under the answers of a completed path and settles what they call for.
pub fn advise(answers: &Answers) -> Advised {
    let considered: Vec<(RuleId, Verdict)> = rules::rules()
        .map(|rule| (rule.id, rule.verdict(answers)))
        .collect();
    let mut actions = called_for(answers, &considered);
    if facts::is_uneasy(answers).is_certain() {
        actions.retain(|advice| !is_unsafe_beside_a_feared_person(advice.action));
    }
    settle_copies_of_a_lock_to_be_changed(&mut actions);
    let find_out = worth_finding_out(answers, &considered, &actions);
    if actions.is_empty() && find_out.is_empty() {
        actions.push(Advice {
            action: Action::NothingToDo,
            urgency: Urgency::Habit,
            because: Vec::new(),
        });
    }
    Advised {
        actions,
        find_out,
        considered,
    }
}

/// The actions of all rules that apply, each once, most urgent first, then in the order of the
/// table.
fn called_for(answers: &Answers, considered: &[(RuleId, Verdict)]) -> Vec<Advice> {
    let mut actions: Vec<Advice> = Vec::new();
    for (rule, (_, verdict)) in rules::rules().zip(considered) {
        if !verdict.is_certain() {
            continue;
        }
        match rule.calls {
            Call::For(action) => add(&mut actions, action, rule.urgency, rule.id),
            Call::Remedy => {
                let urgency = rule.urgency.min(remedy::most_urgent(answers));
                for action in remedy::remedy(answers) {
                    add(&mut actions, action, urgency, rule.id);
                }
            }
        }
    }
    sort(&mut actions);
    actions
}

/// Most urgent first; equals in the order in which they are best done.
fn sort(actions: &mut [Advice]) {
    actions.sort_by_key(|advice| (core::cmp::Reverse(advice.urgency), advice.action));
}

fn add(actions: &mut Vec<Advice>, action: Action, urgency: Urgency, rule: RuleId) {
    match actions.iter_mut().find(|advice| advice.action == action) {
        Some(advice) if urgency > advice.urgency => {
            advice.urgency = urgency;
            advice.because.insert(0, rule);
        }
        Some(advice) => advice.because.push(rule),
        None => actions.push(Advice {
            action,
            urgency,
            because: vec![rule],
        }),
    }
}

/// Nobody has copies cut, or a code ground off, for a lock that is about to be changed: the remedy
/// takes over the reasons and the urgency, and the new keys can be plain ones.
fn settle_copies_of_a_lock_to_be_changed(actions: &mut Vec<Advice>) {
    if !actions.iter().any(|advice| advice.action.is_remedy()) {
        return;
    }
    actions.retain(|advice| advice.action != Action::HaveCodeRemoved);
    let Some(place) = actions
        .iter()
        .position(|advice| advice.action == Action::CutPlainCopies)
    else {
        return;
    };
    let copies = actions.remove(place);
    for remedy in actions
        .iter_mut()
        .filter(|advice| advice.action.is_remedy())
    {
        remedy.urgency = remedy.urgency.max(copies.urgency);
        remedy.because.extend(&copies.because);
    }
    sort(actions);
}

/// Asking a feared person for keys, or listing who has one where they may see it, can put somebody
/// in danger. Source: [`crate::sources::SAFETY_PLANNING`].
fn is_unsafe_beside_a_feared_person(action: Action) -> bool {
    matches!(action, Action::GetCopiesBack | Action::CountCopies)
}

/// At most this many things to find out: a longer list is left lying. Our assumption,
/// [`crate::sources::URGENCY_JUDGEMENT`].
const MOST_TO_FIND_OUT: usize = 3;

/// Which unknowns are worth an effort first: those that decide most of what follows. Our
/// assumption, [`crate::sources::URGENCY_JUDGEMENT`].
const FIND_OUT_ORDER: [Question; 10] = [
    Question::MissingHow,
    Question::Opens,
    Question::WhoDecides,
    Question::ChangedSince,
    Question::Holders,
    Question::NumberIs,
    Question::Marking,
    Question::Copies,
    Question::Seen,
    Question::Link,
];

/// The questions whose answer would change what to do. An unknown that could only lead to a habit
/// is not worth the effort, and neither is one whose action is already called for as urgently. Where
/// old keys must stop working, which lock it is and who decides are worth knowing.
fn worth_finding_out(
    answers: &Answers,
    considered: &[(RuleId, Verdict)],
    actions: &[Advice],
) -> Vec<Question> {
    let undecided = |question: Question| {
        rules::rules().zip(considered).any(|(rule, &(_, verdict))| {
            verdict == Verdict::Unknown(question)
                && rule.urgency > Urgency::Habit
                && !is_called_for_already(answers, rule.calls, rule.urgency, actions)
        })
    };
    let is_a_remedy_due = actions.iter().any(|advice| advice.action.is_remedy());
    let decides_the_remedy = |question: Question| {
        matches!(question, Question::Opens | Question::WhoDecides)
            && answers.is_not_sure(question)
            && is_a_remedy_due
    };
    FIND_OUT_ORDER
        .into_iter()
        .filter(|&question| undecided(question) || decides_the_remedy(question))
        .take(MOST_TO_FIND_OUT)
        .collect()
}

fn is_called_for_already(
    answers: &Answers,
    calls: Call,
    urgency: Urgency,
    actions: &[Advice],
) -> bool {
    let called = |action: Action| {
        actions
            .iter()
            .any(|advice| advice.action == action && advice.urgency >= urgency)
    };
    match calls {
        // For a lock to be changed, the remedy stands in for new copies.
        Call::For(Action::CutPlainCopies) if remedy::remedy(answers).into_iter().any(called) => {
            true
        }
        Call::For(action) => called(action),
        Call::Remedy => remedy::remedy(answers).into_iter().all(called),
    }
}
