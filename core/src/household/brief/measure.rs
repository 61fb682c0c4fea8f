//! What has to be measured so that the right lock is brought along.

use super::super::CylinderLengths;
use super::super::kinds::LockKind;
use super::{BriefLock, MatchedLock};

/// What is known of a lock's size, or has to be measured before a new one is bought. Common practice: a
/// cylinder is bought by type and length, a lock in the door's edge by case and backset.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    /// Both lengths are known.
    Known(CylinderLengths),
    /// Both lengths of the cylinder.
    Lengths,
    /// Which type of cylinder it is, and its length.
    TypeAndLength,
    /// How deep the case is and how far the keyhole is from the door's edge; faceplate and hand are noted.
    CaseAndBackset,
    /// The size of a small lock.
    Size,
    /// Nobody knows yet what kind of lock it is.
    KindFirst,
    /// The lock stays as it is.
    Nothing,
}

/// What has to be measured of a lock of this kind, which may turn out to need a new one or not.
pub fn measure(kind: LockKind, lengths: Option<CylinderLengths>, may_be_new: bool) -> Measure {
    match (kind, lengths) {
        (_, Some(lengths)) => Measure::Known(lengths),
        (LockKind::NotSure, None) => Measure::KindFirst,
        (LockKind::EuropeanProfile, None) => Measure::Lengths,
        _ if !may_be_new => Measure::Nothing,
        (LockKind::PinTumbler | LockKind::BuildingSystem, None) => Measure::TypeAndLength,
        (LockKind::Lever, None) => Measure::CaseAndBackset,
        (LockKind::SmallLock, None) => Measure::Size,
    }
}

impl BriefLock {
    /// What has to be measured of it.
    pub fn measure(&self) -> Measure {
        measure(self.kind, self.lengths, self.may_be_new)
    }
}

impl MatchedLock {
    /// What has to be measured of it: whoever brings a lock to match must know what it is matched to, and it
    /// gets a new one itself where none can be.
    pub fn measure(&self) -> Measure {
        measure(self.kind, self.lengths, true)
    }
}
