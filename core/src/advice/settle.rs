//! From the rules that apply to one list without contradictions.

use core::cmp::Reverse;

use crate::advice::{Action, Advice, Advised, Call, RuleId, Urgency, remedy, rules};
use crate::answers::Answers;
use crate::facts;
use crate::order::sort_few;
use crate::questions::{Choice, Question};
use crate::verdict::Verdict;

/// Evaluates every rule under the answers of a completed path and settles what they call for.
pub fn advise(answers: &Answers) -> Advised {
    let considered: Vec<(RuleId, Verdict)> = rules::rules()
        .map(|rule| (rule.id, rule.verdict(answers)))
        .collect();
    let mut advised = Advised {
        actions: called_for(answers, &considered),
        find_out: Vec::new(),
        considered,
        remedies: remedy::remedy(answers),
    };
    if facts::is_uneasy(answers).is_certain() {
        leave_out_what_a_feared_person_makes_unsafe(answers, &mut advised);
    }
    ask_before_the_lock_is_changed(&mut advised);
    settle_copies_of_a_lock_to_be_changed(&mut advised);
    leave_copies_to_who_may_order_them(answers, &mut advised.actions);
    advised.find_out = worth_finding_out(answers, &advised);
    if advised.actions.is_empty() && advised.find_out.is_empty() {
        advised.actions.push(Advice {
            action: Action::NothingToDo,
            urgency: Urgency::Habit,
            because: Vec::new(),
        });
    }
    advised
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
    sort_few(actions, |advice| (Reverse(advice.urgency), advice.action));
}

/// The most urgent reason stands first.
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

/// What has to be known, and said, before a lock is changed is as urgent as that: how many keys to
/// order, from the count of the old ones, since afterwards those open nothing; and, to the people who
/// live there, when.
fn ask_before_the_lock_is_changed(advised: &mut Advised) {
    let Some(urgency) = advised.remedies_due().map(|advice| advice.urgency).max() else {
        return;
    };
    for advice in &mut advised.actions {
        let at_most = match advice.action {
            Action::CountCopies => Urgency::Soon,
            Action::TellTenants => Urgency::Today,
            _ => continue,
        };
        advice.urgency = advice.urgency.max(urgency.min(at_most));
    }
    sort(&mut advised.actions);
}

/// Nobody has copies cut or ordered, or a code ground off, for a lock that is about to be changed: the
/// remedy takes over the reasons and the urgency, and the new keys can be plain ones.
fn settle_copies_of_a_lock_to_be_changed(advised: &mut Advised) {
    let remedies: Vec<Action> = advised.remedies_due().map(|advice| advice.action).collect();
    if remedies.is_empty() {
        return;
    }
    let actions = &mut advised.actions;
    actions.retain(|advice| advice.action != Action::HaveCodeRemoved);
    for copies in [Action::CutPlainCopies, Action::ReorderByCard] {
        let place = actions.iter().position(|advice| advice.action == copies);
        if let Some(place) = place {
            let copies = actions.remove(place);
            let due = actions
                .iter_mut()
                .filter(|advice| remedies.contains(&advice.action));
            due.for_each(|remedy| take_over(remedy, &copies));
        }
    }
    sort(actions);
}

/// The remedy stands for the copies too, and for what speaks of the lock among their reasons.
fn take_over(remedy: &mut Advice, copies: &Advice) {
    let is_more_urgent = copies.urgency > remedy.urgency;
    let at = if is_more_urgent {
        0
    } else {
        remedy.because.len()
    };
    let tells_of_the_lock = |rule: &RuleId| *rule != RuleId::PlainCopiesCarryNoCode;
    let because = copies.because.iter().copied().filter(tells_of_the_lock);
    remedy.because.splice(at..at, because);
    remedy.urgency = remedy.urgency.max(copies.urgency);
}

/// Copies, and what kind the next key is, are for whoever decides about the lock: not for a tenant,
/// and not for one home of a shared building. A card, fob, code or phone has nothing cut.
fn leave_copies_to_who_may_order_them(answers: &Answers, actions: &mut Vec<Advice>) {
    if remedy::decides_alone(answers) && !answers.has(Choice::CardFobCodeOrPhone) {
        return;
    }
    actions.retain(|advice| {
        !matches!(
            advice.action,
            Action::CutPlainCopies | Action::RestrictedBlank
        )
    });
}

/// Asking a feared person for keys, telling them of a new lock, or listing who has a key where they
/// may see it, can put somebody in danger. Where they have a right to live there, even a new lock may be unlawful: then it waits
/// for the plan made with a support service. Source: [`crate::sources::SAFETY_PLANNING`].
fn leave_out_what_a_feared_person_makes_unsafe(answers: &Answers, advised: &mut Advised) {
    let has_a_right = answers.has(Choice::SharedWithRightHolder);
    let remedies: Vec<Action> = advised.remedies_due().map(|advice| advice.action).collect();
    advised.actions.retain(|advice| match advice.action {
        Action::GetCopiesBack | Action::CountCopies | Action::TellTenants => false,
        action => !(has_a_right && remedies.contains(&action)),
    });
}

/// At most this many things to find out: a longer list is left lying. Our assumption,
/// [`crate::sources::URGENCY_JUDGEMENT`].
const MOST_TO_FIND_OUT: usize = 3;

/// Which unknowns are worth an effort first: those that decide most of what follows. Our
/// assumption, [`crate::sources::URGENCY_JUDGEMENT`].
const FIND_OUT_ORDER: [Question; 12] = [
    Question::MissingHow,
    Question::Opens,
    Question::WhoDecides,
    Question::ChangedSince,
    Question::Holders,
    Question::NumberIs,
    Question::Marking,
    Question::Copies,
    Question::Seen,
    Question::NumberElsewhere,
    Question::Kept,
    Question::Link,
];

/// The questions whose answer would change what to do. An unknown that could only lead to a habit
/// is not worth the effort, and neither is one whose action is already called for as urgently. Where
/// old keys must stop working, which lock it is and who decides are worth knowing.
fn worth_finding_out(answers: &Answers, advised: &Advised) -> Vec<Question> {
    let Advised {
        actions,
        considered,
        ..
    } = advised;
    let undecided = |question: Question| {
        rules::rules().zip(considered).any(|(rule, &(_, verdict))| {
            verdict == Verdict::Unknown(question)
                && rule.urgency > Urgency::Habit
                && !is_called_for_already(answers, rule.calls, rule.urgency, actions)
        })
    };
    let is_a_remedy_due = advised.remedies_due().next().is_some();
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
        Call::For(Action::CutPlainCopies | Action::ReorderByCard)
            if remedy::remedy(answers).into_iter().any(called) =>
        {
            true
        }
        Call::For(action) => called(action),
        Call::Remedy => remedy::remedy(answers).into_iter().all(called),
    }
}
