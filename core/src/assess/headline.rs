//! The one thing the result says first: people and deeds, no number.

use super::Level;
use crate::answers::Answers;
use crate::exposure::{Event, Exposure, Standing};
use crate::facts;
use crate::questions::Choice;
use crate::verdict::Verdict;

/// What the first sentence says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Headline {
    /// Safety first; nothing about keys until asked for.
    SafetyFirst,
    /// The key is a vehicle's and nothing else: for a specialist.
    VehicleOnly,
    /// The key belongs to work or another's home: theirs to decide.
    AnothersDoor,
    /// Both of these, and nothing of the owner's own.
    VehicleAndAnothersDoor,
    /// The key was mislaid indoors and may turn up.
    MayTurnUp,
    /// The key is out of the owner's hands, in this way.
    KeyIsOut(WayOut),
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
    /// The key could be read.
    CouldBeRead {
        /// By these people; never empty.
        readers: Vec<Event>,
        /// Whether nothing told shows any of them its door.
        without_its_door: bool,
    },
    /// Too little is known to say.
    CannotBeToldYet,
    /// The lock was changed after what happened.
    EndedByChange,
    /// Only people the owner chose hold it, some of them from outside the home.
    OnlyByChoice,
    /// Nobody from outside had it, as far as the owner knows.
    NobodyOutside,
}

/// How a key left its owner's hands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum WayOut {
    /// Stolen or taken.
    Stolen,
    /// Not given back by whoever had it.
    NotReturned,
    /// Lost near home.
    LostNearHome,
    /// Lost far from home.
    LostFarAway,
    /// Away with somebody unknown, and back.
    AwayAndCameBack,
    /// Nobody knows how.
    Somehow,
}

impl WayOut {
    /// Every way.
    pub const ALL: [Self; 6] = [
        Self::Stolen,
        Self::NotReturned,
        Self::LostNearHome,
        Self::LostFarAway,
        Self::AwayAndCameBack,
        Self::Somehow,
    ];

    /// The way that an event tells of, if it tells of one.
    fn of(event: Event) -> Option<Self> {
        Some(match event {
            Event::Stolen => Self::Stolen,
            Event::NotReturned => Self::NotReturned,
            Event::LostNearHome => Self::LostNearHome,
            Event::LostFarAway => Self::LostFarAway,
            Event::AwayAndCameBack => Self::AwayAndCameBack,
            Event::MissingSomehow => Self::Somehow,
            _ => return None,
        })
    }

    /// Whether a stranger may find it.
    fn is_lost(self) -> bool {
        matches!(self, Self::LostNearHome | Self::LostFarAway | Self::Somehow)
    }
}

impl Headline {
    /// Whether others decide about all that the key opens. Nothing was asked then of who had it, so
    /// what its secret is worth cannot be told.
    pub fn is_for_others(&self) -> bool {
        matches!(
            self,
            Self::VehicleOnly | Self::AnothersDoor | Self::VehicleAndAnothersDoor
        )
    }

    pub(super) fn of(answers: &Answers, exposures: &[Exposure], level: Level) -> Self {
        use Choice::*;
        if answers.has_any(&[WorriedAboutAPerson, UneasyPerson]) {
            return Self::SafetyFirst;
        }
        if facts::opens_only_what_others_decide(answers) {
            return match (answers.has(Vehicle), answers.has(WorkOrAnothersHome)) {
                (true, true) => Self::VehicleAndAnothersDoor,
                (true, false) => Self::VehicleOnly,
                (false, _) => Self::AnothersDoor,
            };
        }
        let counted = |test: fn(Event) -> bool| -> Vec<Event> {
            exposures
                .iter()
                .filter(|exposure| exposure.standing == Standing::Counts && test(exposure.event))
                .map(|exposure| exposure.event)
                .collect()
        };
        let way = counted(|event| WayOut::of(event).is_some());
        if let Some(way) = way.first().copied().and_then(WayOut::of) {
            return if way.is_lost() && facts::tells_its_door(answers).is_certain() {
                Self::KeyIsOutWithItsDoor
            } else {
                Self::KeyIsOut(way)
            };
        }
        let mut people = counted(is_a_group_of_people);
        if answers.has(JustMovedIn) && people.contains(&Event::FormerOccupants) {
            // Somebody who should no longer have a key to a new home had it before the move.
            people.retain(|&event| event != Event::FormerHolder);
        }
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
            let without_its_door = exposures
                .iter()
                .filter(|exposure| readers.contains(&exposure.event))
                .all(|exposure| exposure.knows_the_door == Verdict::DoesNotApply);
            return Self::CouldBeRead {
                readers,
                without_its_door,
            };
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
