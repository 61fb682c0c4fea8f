//! The laws every rule obeys, proved by exhaustion.
//!
//! A rule is shown only the answers to the questions it declares ([`Rule::verdict`] masks the
//! rest), so folding away every other answer loses nothing: all answers to its own questions,
//! "not sure" and every set of ticks that goes together, are the whole answer space as far as that
//! rule can tell. An action is as urgent as the most urgent of its rules, so a law that holds for
//! each rule holds for each action.

mod common;

use common::space::{Whole, each, is_worse, others, wholes, with};
use self_check_core::advice::{Action, Call, Rule, RuleId, Urgency, rules};
use self_check_core::answers::Answers;
use self_check_core::questions::{Choice, Question};
use self_check_core::verdict::Verdict;

/// One law broken, by which rule.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Broken {
    /// A worse answer made a rule fall away.
    WorseAnswerLowers(RuleId),
    /// "Not sure" ranks below every known answer, or above every known answer.
    NotSureLeavesTheRange(RuleId),
    /// With nothing known, a rule asks for more than "when convenient".
    UnknownsAlarm(RuleId),
    /// More than a habit or a free step follows because somebody who cannot tell the door saw the key.
    BeingSeenLeadsToRekeying(RuleId),
    /// A change of the lock did not end what came before it.
    ChangeDoesNotEnd(RuleId),
}

fn rank(verdict: Verdict) -> u8 {
    match verdict {
        Verdict::DoesNotApply => 0,
        Verdict::Unknown(_) => 1,
        Verdict::Applies => 2,
    }
}

/// How a rule ranks under every combination of answers to the questions it needs.
struct Ranks {
    /// The questions with all their answers.
    options: Vec<(Question, Vec<Whole>)>,
    /// Row by row: the last question's answers stand side by side.
    ranks: Vec<u8>,
}

impl Ranks {
    fn of(rule: &Rule) -> Self {
        let questions: Vec<Question> = rule.needs.iter().collect();
        let mut ranks = Vec::new();
        each(&questions, &mut |answers| {
            ranks.push(rank(rule.verdict(&answers)));
        });
        Self {
            options: questions.into_iter().map(|q| (q, wholes(q))).collect(),
            ranks,
        }
    }

    /// Calls `visit` with the ranks of every answer to the question at `place`, for each combination
    /// of answers to the others.
    fn for_each_row(&self, place: usize, visit: &mut impl FnMut(&[u8])) {
        let answers = self.options[place].1.len();
        let later = self.options[place + 1..].iter();
        let step: usize = later.map(|(_, options)| options.len()).product();
        let mut row = vec![0; answers];
        for block in self.ranks.chunks(answers * step) {
            for first in 0..step {
                for (answer, rank) in row.iter_mut().enumerate() {
                    *rank = block[first + answer * step];
                }
                visit(&row);
            }
        }
    }
}

/// Every pair of a better and a worse answer with no third between them: what holds for each such step
/// holds for all that lead from one answer to another.
fn steps_down(question: Question, options: &[Whole]) -> Vec<(usize, usize)> {
    let worse = |a: usize, b: usize| is_worse(question, &options[a], &options[b]);
    let all = 0..options.len();
    let pairs = all
        .clone()
        .flat_map(|a| all.clone().map(move |b| (a, b)))
        .filter(|&(a, b)| worse(a, b));
    pairs
        .filter(|&(a, b)| !all.clone().any(|c| worse(a, c) && worse(c, b)))
        .collect()
}

/// Checks every law for `rule` over all answers to the questions it needs.
fn check(rule: &Rule, states: &mut u64) -> Vec<Broken> {
    let mut broken = Vec::new();
    if !rule.is_a_relief() {
        let ranks = Ranks::of(rule);
        *states += ranks.ranks.len() as u64;
        for (place, (question, options)) in ranks.options.iter().enumerate() {
            let steps = steps_down(*question, options);
            let mut lowers = false;
            let mut leaves = options[0] != Whole::NotSure;
            ranks.for_each_row(place, &mut |row| {
                lowers |= steps.iter().any(|&(a, b)| row[b] < row[a]);
                let known = row[1..].iter();
                let best = known.clone().min().copied().unwrap_or(0);
                let worst = known.max().copied().unwrap_or(2);
                leaves |= row[0] < best || row[0] > worst;
            });
            if lowers {
                broken.push(Broken::WorseAnswerLowers(rule.id));
            }
            if leaves {
                broken.push(Broken::NotSureLeavesTheRange(rule.id));
            }
        }
    }
    broken.extend(check_unknowns(rule));
    broken.extend(check_seen(rule, states));
    broken.extend(check_change(rule, states));
    broken
}

fn check_unknowns(rule: &Rule) -> Option<Broken> {
    let nothing_known = rule
        .needs
        .iter()
        .fold(Answers::none(), Answers::give_not_sure);
    (rule.verdict(&nothing_known) == Verdict::Applies && rule.urgency > Urgency::WhenConvenient)
        .then_some(Broken::UnknownsAlarm(rule.id))
}

/// Being seen by people who cannot tell the door adds nothing but habits and what is free: whatever
/// else was answered, every other rule says the same as if nobody had seen the key.
fn check_seen(rule: &Rule, states: &mut u64) -> Option<Broken> {
    use Choice::*;
    let is_free = matches!(
        rule.calls,
        Call::For(Action::TakePictureDown | Action::CarryCovered | Action::KeepNumberApart)
    );
    if is_free || rule.urgency == Urgency::Habit || rule.is_a_relief() {
        return None;
    }
    let seen_in: [(Question, Choice, &[Choice]); 2] = [
        // The room in a listing tells its door, and so does a picture with its place.
        (Question::Seen, NoPicture, &[SaleListing]),
        // A spare outside and a key in a safe are held, not seen.
        (Question::Kept, PocketOrClosedBag, &[HiddenOutside, KeySafe]),
    ];
    let mut breaks = false;
    for (question, unseen, more_than_seen) in seen_in {
        if !rule.needs.contains(question) {
            continue;
        }
        let only_seen: Vec<Whole> = wholes(question)
            .into_iter()
            .filter(|whole| match whole {
                Whole::NotSure => false,
                Whole::Ticked(ticks) => !ticks.iter().any(|tick| more_than_seen.contains(tick)),
            })
            .collect();
        let unseen = Whole::Ticked(vec![unseen]);
        *states += each(&others(rule.needs, question), &mut |answers| {
            if answers.has(PictureShowsPlace) || answers.is_not_sure(Question::Link) {
                return;
            }
            let before = rank(rule.verdict(&with(answers, question, &unseen)));
            breaks |= only_seen
                .iter()
                .any(|seen| rank(rule.verdict(&with(answers, question, seen))) > before);
        });
    }
    breaks.then_some(Broken::BeingSeenLeadsToRekeying(rule.id))
}

/// On a path that begins with an event, a changed lock makes everything as if it had not been,
/// whatever else was answered. Habits, a code the person knew, and safety go on.
fn check_change(rule: &Rule, states: &mut u64) -> Option<Broken> {
    use Choice::*;
    let goes_on = matches!(
        rule.calls,
        Call::For(Action::PlanWithSupport | Action::ChangeCodesAndUsers)
    );
    if goes_on || rule.urgency == Urgency::Habit || rule.is_a_relief() {
        return None;
    }
    let began = [
        (SomeoneHadIt, Question::Holders, Household),
        (SharedAPicture, Question::Seen, NoPicture),
        (KeyMissing, Question::MissingHow, MislaidIndoors),
    ];
    let mut breaks = false;
    for (reason, told_in, nothing) in began {
        if !rule.needs.contains(told_in) {
            continue;
        }
        let happenings = wholes(told_in);
        let rest: Vec<Question> = others(rule.needs, told_in)
            .into_iter()
            .filter(|question| !matches!(question, Question::Reason | Question::ChangedSince))
            .collect();
        for changed in [ChangedAndCounted, ChangedCopiesUnknown] {
            *states += each(&rest, &mut |answers| {
                let begun = with(answers, Question::Reason, &Whole::Ticked(vec![reason]));
                let base = with(begun, Question::ChangedSince, &Whole::Ticked(vec![changed]));
                let quiet = rank(rule.verdict(&with(base, told_in, &Whole::Ticked(vec![nothing]))));
                breaks |= happenings
                    .iter()
                    .any(|told| rank(rule.verdict(&with(base, told_in, told))) > quiet);
            });
        }
    }
    breaks.then_some(Broken::ChangeDoesNotEnd(rule.id))
}

#[test]
fn rules_obey_every_law_over_all_answers() {
    let mut states = 0;
    let mut broken = Vec::new();
    for rule in rules() {
        broken.extend(check(rule, &mut states));
    }
    println!("{states} states checked over {} rules", rules().count());
    assert_eq!(broken, []);
    assert!(
        states > 1_000_000,
        "the space is no longer folded as described: {states}"
    );
}

/// The checks can fail: each law is broken by a rule made for it.
#[test]
#[allow(
    clippy::expect_used,
    reason = "a rule missing from the table fails the test"
)]
fn a_mutated_rule_is_found_by_the_law_it_breaks() {
    let find = |id: RuleId, change: fn(&mut Rule)| {
        let original = rules().find(|rule| rule.id == id).expect("in the table");
        let mut mutated = *original;
        change(&mut mutated);
        check(&mutated, &mut 0)
    };
    use RuleId::*;
    assert!(
        find(FormerHolderMayKeepACopy, |rule| rule.applies = |answers| {
            self_check_core::verdict::ticked(answers, &[Choice::NoLongerShould]).negated()
        })
        .contains(&Broken::WorseAnswerLowers(FormerHolderMayKeepACopy))
    );
    assert!(
        find(CopiesWereNeverCounted, |rule| rule.applies = |answers| {
            if answers.is_not_sure(Question::Copies) {
                Verdict::Applies
            } else {
                Verdict::DoesNotApply
            }
        })
        .contains(&Broken::NotSureLeavesTheRange(CopiesWereNeverCounted))
    );
    assert!(
        find(KeyIsCarriedInView, |rule| {
            rule.urgency = Urgency::Today;
            rule.applies = |_| Verdict::Applies;
        })
        .contains(&Broken::UnknownsAlarm(KeyIsCarriedInView))
    );
    let seen = Broken::BeingSeenLeadsToRekeying;
    assert!(
        find(KeyIsCarriedInView, |rule| {
            rule.calls = Call::Remedy;
            rule.urgency = Urgency::WhenConvenient;
        })
        .contains(&seen(KeyIsCarriedInView))
    );
    assert!(
        find(SharedPictureIsTakenBack, |rule| rule.calls = Call::Remedy)
            .contains(&seen(SharedPictureIsTakenBack))
    );
    let change = Broken::ChangeDoesNotEnd;
    for id in [FormerHolderMayKeepACopy, FormerHolderIsAskedForCopies] {
        assert!(
            find(id, |rule| rule.applies = |answers| {
                self_check_core::verdict::ticked(answers, &[Choice::NoLongerShould])
            })
            .contains(&change(id))
        );
    }
    // A change after which some copies are unknown ends what came before it as well.
    assert!(
        find(GuestsMayKeepCopies, |rule| rule.applies = |answers| {
            let guests = self_check_core::verdict::ticked(answers, &[Choice::ShortLetGuests]);
            if answers.has(Choice::ChangedAndCounted) {
                Verdict::DoesNotApply
            } else {
                guests
            }
        })
        .contains(&change(GuestsMayKeepCopies))
    );
    assert!(
        find(CodeWasWithOutsiders, |rule| rule.applies = |answers| {
            let code = self_check_core::verdict::ticked(answers, &[Choice::OnlyThisLock]);
            code.and(self_check_core::verdict::ticked(
                answers,
                &[Choice::HadItAlone],
            ))
        })
        .contains(&change(CodeWasWithOutsiders))
    );
}

/// Every action is called for by some rule, by the remedy of some lock, or by having nothing to do.
#[test]
fn every_action_is_reachable() {
    let called: Vec<Action> = rules()
        .filter_map(|rule| match rule.calls {
            Call::For(action) => Some(action),
            Call::Remedy => None,
        })
        .collect();
    let mut remedies = Vec::new();
    each(
        &self_check_core::advice::remedy::NEEDS
            .iter()
            .collect::<Vec<_>>(),
        &mut |answers| {
            for action in self_check_core::advice::remedy::remedy(&answers) {
                if !remedies.contains(&action) {
                    remedies.push(action);
                }
            }
        },
    );
    for action in Action::ALL {
        assert!(
            called.contains(&action) || remedies.contains(&action) || action == Action::NothingToDo,
            "{action:?}"
        );
    }
}
