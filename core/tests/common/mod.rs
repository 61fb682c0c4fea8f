//! A calm household to start from, and a way to change single answers of it.

#![allow(
    dead_code,
    clippy::expect_used,
    reason = "each test binary uses its part"
)]

pub mod space;
use self_check_core::advice::{Action, Urgency};
use self_check_core::answers::Answers;
use self_check_core::assess::{Assessment, assess};
use self_check_core::questions::{Choice, Question};

use Choice::*;

/// An owner who changed the lock of a house, whose family has the only copies, kept in pockets.
pub const CALM: [Choice; 13] = [
    LookAtMyKeys,
    HouseDoor,
    OwnIt,
    ChangedAndCounted,
    AllAccountedFor,
    Household,
    CutsOnOneEdge,
    NothingMarked,
    PocketOrClosedBag,
    NoPicture,
    NoLink,
    SecondLockOtherKey,
    NumberNowhereElse,
];

/// The calm household, but for these answers: each question told of is answered by them alone.
pub fn but(changes: &[Choice]) -> Answers {
    Question::ALL
        .into_iter()
        .fold(Answers::none(), |answers, question| {
            let of_it = |choices: &[Choice]| -> Vec<Choice> {
                let own = |choice: &Choice| choice.question() == question;
                choices.iter().copied().filter(own).collect()
            };
            let own = match of_it(changes) {
                own if own.is_empty() => of_it(&CALM),
                own => own,
            };
            answers.give(question, &own).unwrap_or(answers)
        })
}

/// Much that can happen to one key, at once: what an assessment has most work with.
pub fn much_at_once() -> Answers {
    but(&[
        KeyMissing,
        StolenOrTaken,
        NotChanged,
        NeverCounted,
        HelperNow,
        FourOrMoreDigits,
        OnlyThisLock,
        CarriedInView,
        PicturePublic,
        AddressOnRingOrKey,
    ])
}

/// How urgent `action` is in the assessment, if it is advised at all.
pub fn urgency(assessment: &Assessment, action: Action) -> Option<Urgency> {
    let mut actions = assessment.advised.actions.iter();
    actions
        .find(|advice| advice.action == action)
        .map(|advice| advice.urgency)
}

/// The highest urgency of anything asked of the person; finding out counts as "when convenient".
pub fn highest(assessment: &Assessment) -> Option<Urgency> {
    let find_out = (!assessment.advised.find_out.is_empty()).then_some(Urgency::WhenConvenient);
    let actions = assessment.advised.actions.iter();
    actions
        .filter(|advice| advice.action != Action::NothingToDo)
        .map(|advice| advice.urgency)
        .chain(find_out)
        .max()
}

/// The assessment of the calm household but for these answers.
pub fn assessed(changes: &[Choice]) -> Assessment {
    assess(&but(changes), None)
}
