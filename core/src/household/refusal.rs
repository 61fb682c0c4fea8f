//! Why a change is refused.

use core::fmt;

use super::limits::Limit;
use super::{CopyId, prices::PriceRefusal};
use super::{DoorId, HolderId, KeyId, LabelRefusal, LockId, WayId};

/// Why a household stays as it is. It names parts by id and never repeats a text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// There is no such door.
    UnknownDoor(DoorId),
    /// There is no such lock.
    UnknownLock(LockId),
    /// There is no such key.
    UnknownKey(KeyId),
    /// There is no such copy.
    UnknownCopy(CopyId),
    /// There is no such holder.
    UnknownHolder(HolderId),
    /// There is no such way in.
    UnknownWay(WayId),
    /// The door has no lock that a key could open.
    DoorWithoutCylinder(DoorId),
    /// A second key for a lock that one key opens: say first whether it is master keyed or a
    /// central lock.
    SecondKeyUnexplained {
        /// The lock.
        lock: LockId,
        /// A key that opens it already.
        opened_by: KeyId,
    },
    /// Copies name the holder: say first where those are.
    HolderHasCopies(HolderId),
    /// All copies that the holder had are back or destroyed, and say who had them: one may have been
    /// copied before.
    HolderHadCopies(HolderId),
    /// A copy was put into a way in that is no key safe.
    NotAKeySafe(WayId),
    /// Copies lie in the key safe: say first where they go.
    KeySafeHoldsCopies(WayId),
    /// A number is outside the range it may have.
    OutOfRange,
    /// There are as many as there may be.
    Full(Limit),
    /// Every id was given out.
    NoMoreIds,
    /// A label cannot be taken.
    Label(LabelRefusal),
    /// A price cannot be taken.
    Price(PriceRefusal),
}

impl From<LabelRefusal> for Refusal {
    fn from(refusal: LabelRefusal) -> Self {
        Self::Label(refusal)
    }
}

impl From<PriceRefusal> for Refusal {
    fn from(refusal: PriceRefusal) -> Self {
        Self::Price(refusal)
    }
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "household refuses: {self:?}")
    }
}

impl core::error::Error for Refusal {}
