//! How many keys there are of this kind, and how many the exposures leave to try.

use crate::answers::Answers;
use crate::differs;
use crate::exposure::{Exposure, KeyRange, KeysLeft, Standing};
use crate::key::Family;
use crate::questions::Choice;

/// The number of cut positions the owner counted along the blade.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Positions {
    /// Five.
    Five,
    /// Six.
    Six,
}

/// The number of keys before anything was seen, and now.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Count {
    /// It can be counted.
    Counted {
        /// How many different keys the kind allows.
        of: KeyRange,
        /// How many a stranger would try for an even chance, after every exposure that counts.
        left: KeysLeft,
    },
    /// It cannot, and why.
    NotCounted(NoCount),
}

/// Why there is no number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum NoCount {
    /// The model does not know this kind of key or lock well enough: those of mailboxes, padlocks and
    /// cabinets are of many kinds.
    KindNotModelled,
    /// Not a cut key at all: a card, fob, code or phone.
    NoCuts,
    /// The key belongs to a building's system, in which other keys open the same lock.
    SharedSystem,
    /// The lock is a vehicle's.
    Vehicle,
}

impl Count {
    /// How many keys the kind allows: the smallest and the largest over the families it may be of.
    pub(super) fn possible(
        answers: &Answers,
        positions: Option<Positions>,
    ) -> Result<KeyRange, NoCount> {
        use Choice::*;
        if answers.has_any(&[BlockEntrance, SharedBlock, WorkOrAnothersHome]) {
            return Err(NoCount::SharedSystem);
        }
        if answers.has(Vehicle) {
            return Err(NoCount::Vehicle);
        }
        if answers.has(CardFobCodeOrPhone) {
            return Err(NoCount::NoCuts);
        }
        let has_a_door = answers.has_any(&[HouseDoor, FlatDoor, GarageShedOrGate]);
        if !has_a_door && answers.has_any(&[Mailbox, PadlockOrCabinet]) {
            return Err(NoCount::KindNotModelled);
        }
        if answers.has_any(&[
            Dimples,
            Tube,
            LeverFlag,
            InteriorWarded,
            PlasticHeadWithChip,
        ]) {
            return Err(NoCount::KindNotModelled);
        }
        let sizes = Family::ALL
            .into_iter()
            .filter(|family| may_have(*family, positions))
            .filter_map(|family| differs::count(&family.cut_rule()).ok())
            .map(|keys| keys as f64);
        let range = sizes.fold((f64::INFINITY, 0.0_f64), |(fewest, most), keys| {
            (fewest.min(keys), most.max(keys))
        });
        Ok(KeyRange {
            fewest: range.0,
            most: range.1,
        })
    }

    /// The same keys, with the exposures standing otherwise.
    pub(crate) fn recounted(&self, exposures: &[Exposure]) -> Self {
        match *self {
            Self::Counted { of, .. } => Self::after(Ok(of), exposures),
            Self::NotCounted(reason) => Self::NotCounted(reason),
        }
    }

    /// The count after `exposures`. What counts narrows both ends; what is unknown can only lower
    /// the fewest.
    pub(super) fn after(of: Result<KeyRange, NoCount>, exposures: &[Exposure]) -> Self {
        let of = match of {
            Ok(of) => of,
            Err(reason) => return Self::NotCounted(reason),
        };
        let left = exposures.iter().fold(of.untouched(), |left, exposure| {
            match (exposure.keys_left, exposure.standing) {
                (Some(now), Standing::Counts) => KeysLeft {
                    fewest: left.fewest.min(now.fewest),
                    most: left.most.min(now.most),
                },
                (Some(now), Standing::Unknown(_) | Standing::NotRuledOut) => KeysLeft {
                    fewest: left.fewest.min(now.fewest),
                    most: left.most,
                },
                (Some(_), Standing::EndedByChange | Standing::ByChoice) | (None, _) => left,
            }
        });
        Self::Counted { of, left }
    }
}

fn may_have(family: Family, positions: Option<Positions>) -> bool {
    let cuts = family.geometry().cuts;
    positions.is_none_or(|positions| {
        cuts == match positions {
            Positions::Five => 5,
            Positions::Six => 6,
        }
    })
}
