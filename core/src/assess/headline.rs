//! The one thing the result says first: people and deeds, no number.

use super::Level;
use crate::answers::Answers;
use crate::exposure::{Event, Exposure, Standing};
use crate::facts;
use crate::questions::{Choice, Question};

/// What the first sentence says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Headline {
    /// Safety first; nothing about keys until asked for.
    SafetyFirst,
    /// The key is a vehicle's and nothing else: for a specialist.
    VehicleOnly,
    /// The key belongs to work or another's home: theirs to decide.
    AnothersDoor,
    /// The key was mislaid indoors and may turn up.
    MayTurnUp,
    /// The key is out of the owner's hands, in this way.
    KeyIsOut(Event),
    /// The key is lost together with something that tells which door it opens.
    KeyIsOutWithItsDoor,
    /// Somebody could have had a copy made.
    CouldHaveCopied {
        /// The groups of people, weightiest first. No two of them are the same people.
        people: Vec<Event>,
        /// What else gave the key away, by people nobody can count: never empty where `people` is.
        /// Then the first of it is no picture.
        also: Vec<Event>,
    },
    /// A picture shows the key and its door.
    PictureTellsItsDoor,
    /// The key could be read from these, by people who cannot tell its door; never empty.
    CouldBeRead(Vec<Event>),
    /// Too little is known to say.
    CannotBeToldYet,
    /// The lock was changed after what happened.
    EndedByChange,
    /// Only people the owner chose hold it, some of them from outside the home.
    OnlyByChoice,
    /// Nobody from outside had it, as far as the owner knows.
    NobodyOutside,
}

impl Headline {
    pub(super) fn of(answers: &Answers, exposures: &[Exposure], level: Level) -> Self {
        use Choice::*;
        if answers.has_any(&[WorriedAboutAPerson, UneasyPerson]) {
            return Self::SafetyFirst;
        }
        let opens_only = |choice| answers.chosen(Question::Opens).eq([choice]);
        if opens_only(Vehicle) {
            return Self::VehicleOnly;
        }
        if opens_only(WorkOrAnothersHome) {
            return Self::AnothersDoor;
        }
        let counted = |test: fn(Event) -> bool| -> Vec<Event> {
            exposures
                .iter()
                .filter(|exposure| exposure.standing == Standing::Counts && test(exposure.event))
                .map(|exposure| exposure.event)
                .collect()
        };
        if let Some(&event) = counted(is_out).first() {
            let is_lost = matches!(event, Event::LostNearHome | Event::LostFarAway);
            if is_lost && facts::tells_its_door(answers).is_certain() {
                return Self::KeyIsOutWithItsDoor;
            }
            return Self::KeyIsOut(event);
        }
        let people = counted(is_a_group_of_people);
        let mut also = counted(lets_anybody_copy);
        if !people.is_empty() || !also.is_empty() {
            also.extend(counted(is_seen_in_public));
            return Self::CouldHaveCopied { people, also };
        }
        let is_shown_with_its_door = exposures.iter().any(|exposure| {
            exposure.standing == Standing::Counts
                && is_seen_in_public(exposure.event)
                && exposure.knows_the_door.is_certain()
        });
        if is_shown_with_its_door {
            return Self::PictureTellsItsDoor;
        }
        let readers = counted(could_have_read);
        if !readers.is_empty() {
            return Self::CouldBeRead(readers);
        }
        let has = |standing| {
            exposures
                .iter()
                .any(|exposure| exposure.standing == standing)
        };
        if answers.has_any(&[KeyMissing])
            && answers.has(MislaidIndoors)
            && !has(Standing::EndedByChange)
        {
            Self::MayTurnUp
        } else if level == Level::CannotBeToldYet {
            Self::CannotBeToldYet
        } else if has(Standing::EndedByChange) {
            Self::EndedByChange
        } else if has(Standing::ByChoice) {
            Self::OnlyByChoice
        } else {
            Self::NobodyOutside
        }
    }
}

fn is_out(event: Event) -> bool {
    matches!(
        event,
        Event::Stolen
            | Event::NotReturned
            | Event::LostNearHome
            | Event::LostFarAway
            | Event::AwayAndCameBack
            | Event::MissingSomehow
    )
}

fn is_a_group_of_people(event: Event) -> bool {
    matches!(
        event,
        Event::FormerOccupants
            | Event::FormerHolder
            | Event::UneasyPerson
            | Event::HadItAlone
            | Event::ShortLetGuests
    )
}

/// Whether a copy can be made without anybody who could be named: a copy that nobody can place may
/// well be with one of the people, so it is not counted beside them.
fn lets_anybody_copy(event: Event) -> bool {
    matches!(
        event,
        Event::UncountedCopies | Event::HiddenOutside | Event::NumberOnLockFace
    )
}

fn is_seen_in_public(event: Event) -> bool {
    matches!(event, Event::PublicPicture | Event::ListingPicture)
}

fn could_have_read(event: Event) -> bool {
    matches!(
        event,
        Event::PublicPicture
            | Event::ListingPicture
            | Event::PrivatePicture
            | Event::OnCalls
            | Event::OnADoorbell
            | Event::CarriedInView
            | Event::LiesInSight
    )
}
