//! What the answers say, as claims that rules and exposures share. Each is a question in three
//! values; none decides what follows.
//!
//! The reason is the person's own starting point, so it holds or does not; a path without it reads
//! as "look at my keys".

use crate::answers::Answers;
use crate::path::comes_before;
use crate::questions::{Choice, Question};
use crate::verdict::{Verdict, ticked};

use Choice::*;

/// Whether the check began with `reason`.
pub(crate) fn began_with(answers: &Answers, reason: Choice) -> Verdict {
    certain(answers.has(reason))
}

/// Whether the lock was changed after what `told_in` tells of. Only a certain "yes" ends anything:
/// an event that is known stays counted while nobody knows of a change.
///
/// What is asked before the change happened before it; what is asked after it, since.
pub(crate) fn ended_by_change(answers: &Answers, told_in: Question) -> Verdict {
    let changed = answers.has_any(&[ChangedAndCounted, ChangedCopiesUnknown]);
    certain(changed && comes_before(told_in, Question::ChangedSince, answers))
}

/// Whether somebody told of in `Holders` under one of `choices` had a key that may still work.
pub(crate) fn held_by(answers: &Answers, choices: &[Choice]) -> Verdict {
    ticked(answers, choices).and_not(ended_by_change(answers, Question::Holders))
}

/// Whether the key is missing in one of these ways, and the lock was not changed since.
pub(crate) fn missing(answers: &Answers, ways: &[Choice]) -> Verdict {
    ticked(answers, ways)
        .and(began_with(answers, KeyMissing))
        .and_not(ended_by_change(answers, Question::MissingHow))
}

/// Whether the key is out of the owner's hands: missing in any way but mislaid indoors, and not back.
/// Certain also where nobody knows how it went.
pub(crate) fn is_unaccounted_for(answers: &Answers) -> Verdict {
    began_with(answers, KeyMissing)
        .and(certain(
            !answers.has_any(&[MislaidIndoors, AwayAndCameBack]),
        ))
        .and_not(ended_by_change(answers, Question::MissingHow))
}

/// Whether a stranger may hold the key: lost, taken, or gone and nobody knows how. What is certain
/// then is that it is gone; the way is not.
pub(crate) fn is_with_a_stranger(answers: &Answers) -> Verdict {
    let gone_somehow =
        is_unaccounted_for(answers).and(certain(answers.is_not_sure(Question::MissingHow)));
    missing(answers, &[LostFarAway, LostNearHome, StolenOrTaken]).or(gone_somehow)
}

/// Whether the key is a card, fob, code or phone: nothing is cut that could be seen, and no code that
/// stands on it is one to cut a key from.
pub(crate) fn is_a_card(answers: &Answers) -> Verdict {
    certain(answers.has(CardFobCodeOrPhone))
}

/// Whether former occupants may hold keys: no change of the lock since the person took over.
/// On a path that began with an event of its own, the question asks about that event instead.
pub(crate) fn never_changed_since_taking_over(answers: &Answers) -> Verdict {
    let about_an_event = answers.has_any(&[
        KeyMissing,
        SharedAPicture,
        SomeoneHadIt,
        WorriedAboutAPerson,
    ]);
    ticked(answers, &[NotChanged])
        .and(certain(!about_an_event))
        .and_not(certain(opens_only_what_others_decide(answers)))
}

/// Whether the key opens nothing but a vehicle, or what belongs to work or another's home. Nothing is
/// asked then of the lock and who has its keys.
pub(crate) fn opens_only_what_others_decide(answers: &Answers) -> bool {
    let elsewhere = [Vehicle, WorkOrAnothersHome];
    answers.has_any(&elsewhere)
        && answers
            .chosen(Question::Opens)
            .all(|choice| elsewhere.contains(&choice))
}

/// Whether something on or with the key tells a finder which door it opens.
pub(crate) fn tells_its_door(answers: &Answers) -> Verdict {
    ticked(answers, &[AddressOnRingOrKey, PapersWithIt, FoundAtTheDoor])
        .or(certain(answers.has(FlatHolderOrDate)))
}

/// Whether a code stands on the key: a number that only the keys to this lock share.
pub(crate) fn carries_a_code(answers: &Answers) -> Verdict {
    let unreadable = if answers.has(WornMarking) || answers.is_not_sure(Question::Marking) {
        Verdict::Unknown(Question::Marking)
    } else {
        Verdict::DoesNotApply
    };
    ticked(answers, &[OnlyThisLock])
        .or(unreadable)
        .and_not(is_a_card(answers))
}

/// Whether a picture of the key, shared in one of these ways, still matters.
pub(crate) fn pictured(answers: &Answers, ways: &[Choice]) -> Verdict {
    ticked(answers, ways)
        .and_not(ended_by_change(answers, Question::Seen))
        .and_not(is_a_card(answers))
}

/// Whether a picture that anybody can see also tells the place.
pub(crate) fn picture_tells_its_door(answers: &Answers) -> Verdict {
    pictured(answers, &[SaleListing])
        .or(pictured(answers, &[PicturePublic]).and(ticked(answers, &[PictureShowsPlace])))
}

/// Whether the person is uneasy about somebody, by either way of saying so.
pub(crate) fn is_uneasy(answers: &Answers) -> Verdict {
    certain(answers.has_any(&[WorriedAboutAPerson, UneasyPerson]))
}

/// Whether a door to a home is among what the key opens, or may be.
pub(crate) fn opens_a_home(answers: &Answers) -> Verdict {
    certain(answers.has_any(&[HouseDoor, FlatDoor]) || answers.is_not_sure(Question::Opens))
}

/// A claim that holds or does not.
pub(crate) fn certain(holds: bool) -> Verdict {
    if holds {
        Verdict::Applies
    } else {
        Verdict::DoesNotApply
    }
}
