//! What may have given the key's secret away: each event with who, what they could read, whether
//! they can tell which door the key opens, and how it stands today.

mod events;

use crate::questions::Question;
use crate::verdict::Verdict;

pub use events::exposures;
pub(crate) use events::somebody_has_it;

/// Something that happened to the key, or goes on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Event {
    /// The key was stolen or taken.
    Stolen,
    /// Whoever had it did not return it.
    NotReturned,
    /// Lost near home.
    LostNearHome,
    /// Lost far from home.
    LostFarAway,
    /// It was away with somebody unknown and came back.
    AwayAndCameBack,
    /// Missing, nobody knows how.
    MissingSomehow,
    /// A former partner or another person who makes the owner uneasy.
    UneasyPerson,
    /// Former occupants and those they gave keys to.
    FormerOccupants,
    /// Somebody who no longer should have it.
    FormerHolder,
    /// Somebody had it alone for a while.
    HadItAlone,
    /// Guests of a short let.
    ShortLetGuests,
    /// Copies that nobody can account for.
    UncountedCopies,
    /// A spare is hidden outside.
    HiddenOutside,
    /// A picture of it is public.
    PublicPicture,
    /// A picture of it stands in a property or sale listing.
    ListingPicture,
    /// A picture of it was shared with few.
    PrivatePicture,
    /// It shows on calls or streams.
    OnCalls,
    /// A doorbell camera sees it.
    OnADoorbell,
    /// It is carried in view.
    CarriedInView,
    /// It lies at home or in a car where it can be seen.
    LiesInSight,
    /// Its number stands on the lock's face.
    NumberOnLockFace,
    /// A helper has it now.
    HelperNow,
    /// Trusted family, friends or neighbours have it.
    TrustedCircle,
}

impl Event {
    /// Every event.
    pub const ALL: [Self; 23] = [
        Self::Stolen,
        Self::NotReturned,
        Self::LostNearHome,
        Self::LostFarAway,
        Self::AwayAndCameBack,
        Self::MissingSomehow,
        Self::UneasyPerson,
        Self::FormerOccupants,
        Self::FormerHolder,
        Self::HadItAlone,
        Self::ShortLetGuests,
        Self::UncountedCopies,
        Self::HiddenOutside,
        Self::PublicPicture,
        Self::ListingPicture,
        Self::PrivatePicture,
        Self::OnCalls,
        Self::OnADoorbell,
        Self::CarriedInView,
        Self::LiesInSight,
        Self::NumberOnLockFace,
        Self::HelperNow,
        Self::TrustedCircle,
    ];
}

/// What the event let somebody read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reading {
    /// They held it: a copy needs no reading at all.
    Held,
    /// They held a card, fob or phone, which can be refused by itself.
    CardHeld,
    /// They could note the code that stands on it.
    CodeSeen,
    /// They saw the cuts, more or less sharply.
    CutsSeen,
}

/// How an event stands today.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// It counts.
    Counts,
    /// It would count, depending on this answer.
    Unknown(Question),
    /// Nobody said that it happened, and nobody said that it did not.
    NotRuledOut,
    /// The lock was changed since; the old key no longer opens it.
    EndedByChange,
    /// The owner gave it out knowingly and still trusts them.
    ByChoice,
}

/// How many different keys a kind of key allows: the smallest and the largest of the families it
/// may be of, at most, since makers leave some out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct KeyRange {
    /// The fewest.
    pub fewest: f64,
    /// The most.
    pub most: f64,
}

impl KeyRange {
    /// What a stranger who knows nothing but the kind would try for an even chance: half of them,
    /// each being as likely as any other.
    pub fn untouched(self) -> KeysLeft {
        KeysLeft {
            fewest: (self.fewest / 2.0).max(1.0),
            most: (self.most / 2.0).max(1.0),
        }
    }
}

/// How many keys a stranger would still have to try, for an even chance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct KeysLeft {
    /// The fewest the answers allow; at least one.
    pub fewest: f64,
    /// The most the answers allow.
    pub most: f64,
}

/// One event and what it means for the secret.
#[derive(Clone, Debug, PartialEq)]
pub struct Exposure {
    /// What happened.
    pub event: Event,
    /// What it let somebody read.
    pub reading: Reading,
    /// Whether that somebody can tell which door the key opens.
    pub knows_the_door: Verdict,
    /// How it stands today.
    pub standing: Standing,
    /// Keys left to whoever took part in it; absent for kinds of key without a count.
    pub keys_left: Option<KeysLeft>,
}

#[cfg(test)]
mod tests {
    use super::Event;

    #[test]
    fn every_event_stands_in_its_place() {
        for (place, event) in Event::ALL.into_iter().enumerate() {
            assert_eq!(event as usize, place);
        }
        assert_eq!(Event::ALL.last(), Some(&Event::TrustedCircle));
    }
}
