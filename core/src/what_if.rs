//! What would be left if some of the advice were followed from today on.
//!
//! Nothing done today undoes what was already seen or held. A new lock makes it worthless, though:
//! the old key no longer opens anything. What goes on day by day ends only with its own habit.

use crate::advice::{Action, Advice, RuleId};
use crate::assess::{Assessment, Count, Level};
use crate::exposure::{Event, Exposure, Standing};

/// What would be left.
#[derive(Clone, Debug, PartialEq)]
pub struct FromToday {
    /// What the secret of the key then in use is worth.
    pub level: Level,
    /// How many keys are then left to try.
    pub count: Count,
    /// The exposures, each with how it would stand.
    pub exposures: Vec<Exposure>,
    /// What would still be advised.
    pub still_advised: Vec<Advice>,
}

/// The advised actions whose effect on the secret can be shown, alone or beside the others, in the
/// order of the advice.
pub fn choices(assessment: &Assessment) -> Vec<Action> {
    let actions = assessment.advised.actions.iter();
    let all: Vec<Action> = actions.map(|advice| advice.action).collect();
    let with_all = from_today(assessment, &all);
    all.iter()
        .copied()
        .filter(|&action| {
            let others: Vec<Action> = all.iter().copied().filter(|&one| one != action).collect();
            from_today(assessment, &others).exposures != with_all.exposures
        })
        .collect()
}

/// The assessment as it would be with `done` carried out from today on. Actions that were not
/// advised change nothing.
pub fn from_today(assessment: &Assessment, done: &[Action]) -> FromToday {
    let is_done = |action: Action| done.contains(&action);
    let remedies = assessment.advised.remedies_due();
    let mut remedies = remedies.map(|advice| advice.action).peekable();
    // What others do about a lock of theirs that the same key opens is not known.
    let opens_anothers = assessment
        .advised
        .remedies
        .iter()
        .any(|action| action.is_for_another_to_decide());
    let lock_is_new = remedies.peek().is_some() && remedies.all(is_done) && !opens_anothers;
    let exposures: Vec<Exposure> = assessment
        .exposures
        .iter()
        .map(|exposure| Exposure {
            standing: if lock_is_new && is_over(exposure.event, done) {
                Standing::EndedByChange
            } else {
                exposure.standing
            },
            ..exposure.clone()
        })
        .collect();
    let still_advised = assessment
        .advised
        .actions
        .iter()
        .filter(|advice| !is_done(advice.action))
        .filter(|advice| !(lock_is_new && is_for_the_old_key(advice)))
        .cloned()
        .collect();
    FromToday {
        level: Level::of(&exposures),
        count: assessment.count.recounted(&exposures),
        exposures,
        still_advised,
    }
}

/// Whether an event is past once the lock is new, or goes on with the new key.
fn is_over(event: Event, done: &[Action]) -> bool {
    match event {
        Event::CarriedInView | Event::OnCalls | Event::OnADoorbell | Event::LiesInSight => {
            done.contains(&Action::CarryCovered)
        }
        Event::HiddenOutside => done.contains(&Action::MoveTheSpare),
        Event::HelperNow | Event::TrustedCircle => false,
        Event::Stolen
        | Event::NotReturned
        | Event::LostNearHome
        | Event::LostFarAway
        | Event::AwayAndCameBack
        | Event::MissingSomehow
        | Event::FormerOccupants
        | Event::FormerHolder
        | Event::UneasyPerson
        | Event::HadItAlone
        | Event::ShortLetGuests
        | Event::UncountedCopies
        | Event::PublicPicture
        | Event::ListingPicture
        | Event::PrivatePicture
        | Event::NumberOnLockFace => true,
    }
}

/// A number is the old key's too, but for the card of a lock: whoever orders the new keys guards it.
fn is_for_the_old_key(advice: &Advice) -> bool {
    if advice.action == Action::KeepNumberApart {
        return !advice.because.contains(&RuleId::CardIsGuarded);
    }
    matches!(
        advice.action,
        Action::StopGap
            | Action::GetCopiesBack
            | Action::CountCopies
            | Action::CutPlainCopies
            | Action::HaveCodeRemoved
            | Action::TakePictureDown
    )
}
