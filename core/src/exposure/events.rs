//! Which events the answers tell of.

use super::{Event, Exposure, KeyRange, KeysLeft, Reading, Standing};
use crate::answers::Answers;
use crate::facts;
use crate::order::sort_few;
use crate::questions::{Choice, Question};
use crate::verdict::{Verdict, ticked};

use Choice::*;
use Reading::{CardHeld, CodeSeen, CutsSeen, Held};

/// Where an event is told, and what it let somebody do.
struct Row {
    event: Event,
    told_by: Choice,
    reading: Reading,
    knows_the_door: fn(&Answers) -> Verdict,
}

/// Every event that one choice tells of, weightiest first.
///
/// Whether somebody knows the door is our assumption ([`crate::sources::DOOR_JUDGEMENT`]), put down row
/// by row: former holders, guests and helpers have been there; whoever had the key alone or found it
/// knows only what came with it.
static EVENTS: [Row; 23] = [
    row(Event::Stolen, StolenOrTaken, Held, facts::tells_its_door),
    row(Event::NotReturned, NotReturned, Held, knows),
    row(Event::LostNearHome, LostNearHome, Held, may_guess),
    row(Event::LostFarAway, LostFarAway, Held, facts::tells_its_door),
    row(
        Event::AwayAndCameBack,
        AwayAndCameBack,
        Held,
        facts::tells_its_door,
    ),
    row(Event::UneasyPerson, UneasyPerson, Held, knows),
    row(Event::FormerHolder, NoLongerShould, Held, knows),
    row(Event::HadItAlone, HadItAlone, Held, facts::tells_its_door),
    row(Event::ShortLetGuests, ShortLetGuests, Held, knows),
    row(
        Event::UncountedCopies,
        OneOrTwoUnaccounted,
        Held,
        unknown_copies,
    ),
    row(Event::UncountedCopies, NeverCounted, Held, unknown_copies),
    row(Event::ListingPicture, SaleListing, CutsSeen, knows),
    row(
        Event::PublicPicture,
        PicturePublic,
        CutsSeen,
        picture_shows_place,
    ),
    row(
        Event::PrivatePicture,
        PictureSharedWithFew,
        CutsSeen,
        picture_shows_place,
    ),
    row(Event::NumberOnLockFace, NumberOnLockFace, CodeSeen, knows),
    row(Event::HiddenOutside, HiddenOutside, Held, knows),
    row(Event::OnCalls, CallsOrStreams, CutsSeen, does_not_know),
    row(Event::OnADoorbell, DoorbellCamera, CutsSeen, knows),
    row(Event::CarriedInView, CarriedInView, CutsSeen, does_not_know),
    row(Event::LiesInSight, HomeInSight, CutsSeen, knows),
    row(Event::LiesInSight, InTheCar, CutsSeen, does_not_know),
    row(Event::HelperNow, HelperNow, Held, knows),
    row(Event::TrustedCircle, TrustedCircle, Held, knows),
];

/// What may have given the key's secret away under the answers of a completed path, weightiest
/// first. `of` is how many keys its kind allows, where that can be counted.
pub fn exposures(answers: &Answers, of: Option<KeyRange>) -> Vec<Exposure> {
    let mut found: Vec<Exposure> = Vec::new();
    let former = facts::never_changed_since_taking_over(answers);
    push(
        &mut found,
        answers,
        of,
        Event::FormerOccupants,
        former,
        Held,
        Verdict::Applies,
    );
    if facts::is_unaccounted_for(answers).is_certain() && answers.is_not_sure(Question::MissingHow)
    {
        let door = facts::tells_its_door(answers);
        push(
            &mut found,
            answers,
            of,
            Event::MissingSomehow,
            Verdict::Applies,
            Held,
            door,
        );
    }
    if answers.has(WorriedAboutAPerson) && !answers.has(UneasyPerson) {
        found.push(Exposure {
            event: Event::UneasyPerson,
            reading: held(answers),
            knows_the_door: Verdict::Applies,
            standing: of_a_person_nobody_named(answers),
            keys_left: of.map(|of| keys_left(Event::UneasyPerson, of)),
        });
    }
    for row in &EVENTS {
        let told = match ticked(answers, &[row.told_by]) {
            // Where nobody knows, one unknown event stands for all that its question could tell.
            Verdict::Unknown(_) if !stands_for_the_unknown(row.event) => continue,
            told => told,
        };
        let door = (row.knows_the_door)(answers);
        push(&mut found, answers, of, row.event, told, row.reading, door);
    }
    sort_few(&mut found, |exposure| exposure.event);
    found.dedup_by_key(|exposure| exposure.event);
    found
}

fn push(
    found: &mut Vec<Exposure>,
    answers: &Answers,
    of: Option<KeyRange>,
    event: Event,
    told: Verdict,
    reading: Reading,
    knows_the_door: Verdict,
) {
    let standing = match told {
        Verdict::DoesNotApply => return,
        Verdict::Unknown(question) => match standing(answers, event) {
            Standing::EndedByChange => Standing::EndedByChange,
            _ => Standing::Unknown(question),
        },
        Verdict::Applies => standing(answers, event),
    };
    if reading == CutsSeen && facts::is_a_card(answers).is_certain() {
        return;
    }
    let reading = match reading {
        CutsSeen if answers.has(OnlyThisLock) => CodeSeen,
        Held => held(answers),
        reading => reading,
    };
    found.push(Exposure {
        event,
        reading,
        knows_the_door,
        standing,
        keys_left: of.map(|of| keys_left(event, of)),
    });
}

/// What having it in hand was: a card can be refused by itself, a key cannot.
fn held(answers: &Answers) -> Reading {
    if facts::is_a_card(answers).is_certain() {
        CardHeld
    } else {
        Held
    }
}

/// How it stands with the person somebody is worried about, who is not among those told to have had a
/// key. That path asks if the lock was changed since that person last had one.
fn of_a_person_nobody_named(answers: &Answers) -> Standing {
    if answers.has_any(&[ChangedAndCounted, ChangedCopiesUnknown]) {
        Standing::EndedByChange
    } else if answers.is_not_sure(Question::Holders) {
        Standing::Unknown(Question::Holders)
    } else {
        Standing::NotRuledOut
    }
}

fn standing(answers: &Answers, event: Event) -> Standing {
    let ended = |told_in| facts::ended_by_change(answers, told_in).is_certain();
    match event {
        Event::HelperNow | Event::TrustedCircle => Standing::ByChoice,
        Event::Stolen
        | Event::NotReturned
        | Event::LostNearHome
        | Event::LostFarAway
        | Event::AwayAndCameBack
        | Event::MissingSomehow
            if ended(Question::MissingHow) =>
        {
            Standing::EndedByChange
        }
        Event::FormerHolder | Event::UneasyPerson | Event::HadItAlone | Event::ShortLetGuests
            if ended(Question::Holders) =>
        {
            Standing::EndedByChange
        }
        Event::PublicPicture
        | Event::ListingPicture
        | Event::PrivatePicture
        | Event::OnCalls
        | Event::OnADoorbell
            if ended(Question::Seen) =>
        {
            Standing::EndedByChange
        }
        Event::UncountedCopies if answers.has(NeverCounted) => Standing::Unknown(Question::Copies),
        _ => Standing::Counts,
    }
}

/// From one, for who held the key needs no reading and who noted its number may look it up, to as
/// many as if nothing had happened: nobody knows whether a copy was made, whether the maker's list
/// was at hand, or how sharp a glance was. Where somebody has the key who should not, one is left. A key
/// lost far away may never be found.
fn keys_left(event: Event, of: KeyRange) -> KeysLeft {
    let most = if somebody_has_it(event) {
        1.0
    } else {
        of.untouched().most
    };
    KeysLeft { fewest: 1.0, most }
}

/// Whether the event says that somebody has the key who should not.
pub(crate) fn somebody_has_it(event: Event) -> bool {
    matches!(
        event,
        Event::Stolen
            | Event::NotReturned
            | Event::LostNearHome
            | Event::UneasyPerson
            | Event::FormerHolder
    )
}

fn stands_for_the_unknown(event: Event) -> bool {
    matches!(
        event,
        Event::FormerHolder
            | Event::UncountedCopies
            | Event::PublicPicture
            | Event::NumberOnLockFace
            | Event::HiddenOutside
    )
}

fn knows(_: &Answers) -> Verdict {
    Verdict::Applies
}

fn does_not_know(_: &Answers) -> Verdict {
    Verdict::DoesNotApply
}

/// Whoever finds a key near its door may try the doors around.
fn may_guess(answers: &Answers) -> Verdict {
    facts::tells_its_door(answers).or(Verdict::Unknown(Question::MissingHow))
}

fn unknown_copies(_: &Answers) -> Verdict {
    Verdict::Unknown(Question::Copies)
}

fn picture_shows_place(answers: &Answers) -> Verdict {
    ticked(answers, &[PictureShowsPlace])
}

const fn row(
    event: Event,
    told_by: Choice,
    reading: Reading,
    knows_the_door: fn(&Answers) -> Verdict,
) -> Row {
    Row {
        event,
        told_by,
        reading,
        knows_the_door,
    }
}
