//! Whole checks, walked from the first question to the result along the real path with answers
//! drawn by a fixed generator. What the laws prove rule by rule is looked at here as the person
//! sees it: settled, with level, headline and count.

mod common;

use common::space::{Whole, is_worse, wholes, with};
use common::{highest, urgency};
use self_check_core::advice::{Action, Urgency, rules};
use self_check_core::answers::Answers;
use self_check_core::assess::{Assessment, Count, Headline, Level, Number, assess};
use self_check_core::exposure::Event;
use self_check_core::path::{Path, Stop};
use self_check_core::questions::{Choice, Question};
use self_check_core::verdict::Verdict;
use self_check_core::what_if::from_today;

const WALKS: u32 = 200_000;

/// SplitMix64: a fixed sequence, the same on every machine.
struct Draws(u64);

impl Draws {
    fn below(&mut self, bound: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((z ^ (z >> 31)) % bound as u64) as usize
    }
}

/// One answer in four has a single tick, so that calm checks are walked too.
fn draw(draws: &mut Draws, question: Question, options: &[Whole]) -> Whole {
    if draws.below(4) == 0 {
        let choices = question.row().choices;
        Whole::Ticked(vec![choices[draws.below(choices.len())]])
    } else {
        options[draws.below(options.len())].clone()
    }
}

fn walk(draws: &mut Draws, options: &[Vec<Whole>]) -> Answers {
    let mut answers = Answers::none();
    loop {
        let path = Path::replay(&answers);
        let Some(Stop::Ask(question)) = path.first_open().map(|open| path.stops()[open]) else {
            return answers;
        };
        let whole = draw(draws, question, &options[question as usize]);
        answers = with(answers, question, &whole);
    }
}

fn assert_sound(answers: &Answers, result: &Assessment) {
    let relevant = Path::replay(answers).relevant(answers);
    let advised = &result.advised;
    let has = |action| urgency(result, action).is_some();
    assert!(
        !advised.actions.is_empty() || !advised.find_out.is_empty(),
        "{relevant:?}"
    );
    if has(Action::NothingToDo) {
        assert_eq!(advised.actions.len(), 1);
        assert!(advised.find_out.is_empty());
        // "Not sure" is never read as safe.
        for (rule, (_, verdict)) in rules().zip(&advised.considered) {
            let is_open = matches!(verdict, Verdict::Unknown(_));
            assert!(
                !is_open || rule.urgency == Urgency::Habit,
                "{:?} {relevant:?}",
                rule.id
            );
        }
    }
    assert!(advised.find_out.len() <= 3);
    let asked = Path::replay(answers).asked();
    assert!(
        advised
            .find_out
            .iter()
            .all(|&question| asked.contains(question))
    );
    assert!(advised.actions.is_sorted_by(|a, b| a.urgency >= b.urgency));

    // Nothing contradicts.
    let one_of = [
        Action::RekeyCylinder,
        Action::ChangeCylinder,
        Action::ChangeLockOrLevers,
    ];
    assert!(one_of.into_iter().filter(|&action| has(action)).count() <= 1);
    let someone_elses = [
        Choice::BlockEntrance,
        Choice::RentPrivately,
        Choice::SocialOrEmployersHome,
    ];
    if relevant.has_any(&someone_elses) || relevant.has(Choice::InteriorWarded) {
        assert!(!has(Action::RekeyCylinder), "{relevant:?}");
    }
    let remedies: Vec<Action> = advised.remedies_due().map(|a| a.action).collect();
    if !remedies.is_empty() {
        assert!(
            !has(Action::CutPlainCopies) && !has(Action::HaveCodeRemoved),
            "{relevant:?}"
        );
    }
    if has(Action::HaveCodeRemoved) {
        assert!(has(Action::KeepNumberApart) && !has(Action::TakePictureDown));
    }
    if relevant.has_any(&someone_elses) || relevant.has(Choice::CardFobCodeOrPhone) {
        assert!(!has(Action::CutPlainCopies) && !has(Action::RestrictedBlank));
    }
    if relevant.has(Choice::KeyMissing) {
        assert!(!has(Action::RestrictedBlank));
        let is_back = relevant.has(Choice::AwayAndCameBack);
        assert!(is_back || !has(Action::TakeAddressOff), "{relevant:?}");
    }
    if !remedies.is_empty() {
        assert!(!has(Action::ReorderByCard), "{relevant:?}");
    }
    // Whoever decides, or pays, is asked before a visit is ordered.
    let place = |action| advised.actions.iter().position(|one| one.action == action);
    let visit = one_of.into_iter().filter_map(place).min();
    for asked_first in [
        Action::AskInsurer,
        Action::TellLandlord,
        Action::TellManager,
        Action::TellTenants,
    ] {
        if let (Some(asked), Some(visit)) = (place(asked_first), visit) {
            let is_as_urgent = advised.actions[asked].urgency >= advised.actions[visit].urgency;
            assert!(
                !is_as_urgent || asked < visit,
                "{asked_first:?} {relevant:?}"
            );
        }
    }

    // The level and the list say the same.
    if result.level == Level::GivenAway {
        assert!(
            highest(result) >= Some(Urgency::WhenConvenient),
            "{relevant:?}"
        );
    }
    if result.level == Level::Kept {
        assert!(remedies.is_empty(), "{relevant:?}");
    }
    if result.safety_first {
        assert_eq!(result.headline, Headline::SafetyFirst);
        assert_eq!(advised.actions[0].action, Action::PlanWithSupport);
        assert!(!has(Action::GetCopiesBack) && !has(Action::CountCopies));
        assert!(!advised.find_out.contains(&Question::Copies));
        if relevant.has(Choice::SharedWithRightHolder) {
            assert!(remedies.is_empty(), "{relevant:?}");
        }
    }
    match &result.headline {
        Headline::CouldHaveCopied { people, also } => {
            assert!(!people.is_empty() || !also.is_empty(), "{relevant:?}");
            let pictures = [Event::PublicPicture, Event::ListingPicture];
            assert!(!people.is_empty() || !pictures.contains(&also[0]));
        }
        Headline::CouldBeRead { readers, .. } => {
            assert!(!readers.is_empty(), "{relevant:?}");
            // Nothing is cut into a card that could be read.
            assert!(!relevant.has(Choice::CardFobCodeOrPhone), "{relevant:?}");
        }
        _ => {}
    }
    let is_the_code = result.number == Number::IsTheCode;
    let is_cut = !relevant.has(Choice::CardFobCodeOrPhone);
    assert_eq!(is_the_code, is_cut && relevant.has(Choice::OnlyThisLock));
    if let Count::Counted { of, left } = result.count {
        let untouched = of.untouched();
        assert!(1.0 <= left.fewest && left.fewest <= left.most);
        assert!(left.fewest <= untouched.fewest && left.most <= untouched.most);
        // Only where somebody has the key who should not, nothing is left to guess.
        assert!(left.most == untouched.most || result.level == Level::GivenAway);
    }

    // With every remedy done, nothing that is past counts.
    if !remedies.is_empty() {
        let all: Vec<Action> = advised.actions.iter().map(|a| a.action).collect();
        let then = from_today(result, &all);
        assert!(then.level <= result.level);
        assert!(then.still_advised.is_empty());
    }
}

#[test]
fn whole_checks_are_settled_soundly_and_reach_every_action() {
    let options: Vec<Vec<Whole>> = Question::ALL.into_iter().map(wholes).collect();
    let mut draws = Draws(1);
    let mut reached = Vec::new();
    for _ in 0..WALKS {
        let answers = walk(&mut draws, &options);
        let result = assess(&answers, None);
        assert_sound(&answers, &result);
        for advice in &result.advised.actions {
            if !reached.contains(&advice.action) {
                reached.push(advice.action);
            }
        }
    }
    println!("{WALKS} whole checks walked");
    // Removing a number asks for eleven answers at once: no walk is likely to meet it.
    let own_number = common::but(&[Choice::FourOrMoreDigits, Choice::OnlyThisLock]);
    let result = assess(&own_number, None);
    assert_sound(&own_number, &result);
    reached.extend(result.advised.actions.iter().map(|advice| advice.action));
    let missed = |action: &Action| !reached.contains(action);
    assert_eq!(
        Action::ALL.into_iter().filter(missed).collect::<Vec<_>>(),
        []
    );
}

/// Best answer ≤ not sure ≤ worst answer, for the level and for the highest urgency.
#[test]
fn not_sure_lies_between_the_best_and_the_worst_answer() {
    let options: Vec<Vec<Whole>> = Question::ALL.into_iter().map(wholes).collect();
    let mut draws = Draws(2);
    for _ in 0..WALKS / 50 {
        let answers = walk(&mut draws, &options);
        for question in Path::replay(&answers).asked().iter() {
            let seen = |whole: &Whole| {
                let result = assess(&with(answers, question, whole), None);
                (result.level, highest(&result))
            };
            let (level, urgency) = seen(&Whole::NotSure);
            let known: Vec<_> = options[question as usize]
                .iter()
                .skip(1)
                .map(seen)
                .collect();
            let levels = || known.iter().map(|known| known.0);
            let urgencies = || known.iter().map(|known| known.1);
            assert!(
                levels().min() <= Some(level) && Some(level) <= levels().max(),
                "{question:?} {answers:?}"
            );
            assert!(
                urgencies().min() <= Some(urgency) && Some(urgency) <= urgencies().max(),
                "{question:?} {answers:?}"
            );
        }
    }
}

/// A worse answer never lowers the urgency of any action, except that of one it puts out of place:
/// a relief for the mild case, "nothing to do", and copies of a lock that is then to be changed, if
/// that change is at least as urgent. On the safety branch asking for keys falls silent.
#[test]
fn a_worse_answer_never_lowers_an_action() {
    let options: Vec<Vec<Whole>> = Question::ALL.into_iter().map(wholes).collect();
    let mut draws = Draws(3);
    let mut compared = 0;
    for _ in 0..WALKS / 20 {
        let answers = walk(&mut draws, &options);
        let path = Path::replay(&answers);
        let question = {
            let asked: Vec<Question> = path.asked().iter().collect();
            asked[draws.below(asked.len())]
        };
        let better_whole = draw(&mut draws, question, &options[question as usize]);
        let better = assess(&with(answers, question, &better_whole), None);
        if better.safety_first {
            continue;
        }
        for worse_whole in &options[question as usize] {
            if !is_worse(question, &better_whole, worse_whole) {
                continue;
            }
            let worse = assess(&with(answers, question, worse_whole), None);
            compared += 1;
            let remedy = worse.advised.remedies_due().map(|a| a.urgency).max();
            for advice in &better.advised.actions {
                let now = match advice.action {
                    Action::HaveCodeRemoved | Action::LookAgainIndoors | Action::NothingToDo => {
                        continue;
                    }
                    Action::CutPlainCopies | Action::ReorderByCard => {
                        urgency(&worse, advice.action).max(remedy)
                    }
                    action => urgency(&worse, action),
                };
                assert!(
                    now >= Some(advice.urgency),
                    "{:?} {question:?} {answers:?} {worse_whole:?}",
                    advice.action
                );
            }
        }
    }
    println!("{compared} pairs of a better and a worse answer compared");
    assert!(compared > 1_000);
}
