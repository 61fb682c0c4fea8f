//! Everything that can be done to a household, as data.

mod make;
mod remember;
mod reply;

use super::kinds::Loss;
use super::{
    CopyId, Door, DoorId, Finding, Holder, HolderId, Household, Key, KeyCopy, KeyId, Lock, LockId,
    Place, Prices, Refusal, Way, WayId,
};

/// One change. The first half adds, sets and removes single parts; the second says what happened
/// in the words of the household.
#[derive(Clone, Debug, PartialEq, Eq)]
#[allow(
    missing_docs,
    reason = "the parts' own names say it; what is not plain is documented"
)]
pub enum Change {
    AddDoor(Door),
    SetDoor(DoorId, Door),
    /// Also removes its locks and ways in, and it from everybody's needs. Refused while copies lie
    /// in a key safe at it.
    RemoveDoor(DoorId),
    AddLock(Lock),
    SetLock(LockId, Lock),
    RemoveLock(LockId),
    AddKey(Key),
    SetKey(KeyId, Key),
    /// Also removes its copies, and it from every lock.
    RemoveKey(KeyId),
    AddCopy(KeyCopy),
    RemoveCopy(CopyId),
    AddHolder(Holder),
    SetHolder(HolderId, Holder),
    /// Refused while a copy names them.
    RemoveHolder(HolderId),
    AddWay(Way),
    SetWay(WayId, Way),
    /// Refused while copies lie in it.
    RemoveWay(WayId),
    SetPrices(Prices),

    /// The key opens every lock of the door, or none of them.
    Opens {
        key: KeyId,
        door: DoorId,
        opens: bool,
    },
    /// The key opens this lock, or not.
    OpensLock {
        key: KeyId,
        lock: LockId,
        opens: bool,
    },
    /// New copies of the key go to the holder.
    Give {
        key: KeyId,
        to: HolderId,
        copies: u16,
    },
    /// The copy is somewhere else.
    Move {
        copy: CopyId,
        to: Place,
    },
    /// The copy is lost. Whoever had it last is noted.
    Lose {
        copy: CopyId,
        loss: Loss,
    },
    /// The holder's ring is lost: every copy on it, and their remotes, which hang on it too.
    LoseRing {
        holder: HolderId,
        loss: Loss,
    },
    /// The key was checked; or its check is taken back.
    Check {
        key: KeyId,
        finding: Option<Finding>,
    },
    /// The holder needs the door, or does not. A holder whose needs nobody had told starts from
    /// what they can open.
    Needs {
        holder: HolderId,
        door: DoorId,
        needs: bool,
    },
    /// The holder knows the way in, or does not.
    Knows {
        holder: HolderId,
        way: WayId,
        knows: bool,
    },
    /// The holder no longer should come in, or should again.
    NoLongerShould {
        holder: HolderId,
        no_longer: bool,
    },
}

impl Household {
    /// The household with one change, or why it is refused.
    ///
    /// ```
    /// use self_check_core::household::{Change, Door, DoorKind, Household, Refusal};
    /// let home = Household::empty();
    /// let door = home.next_door();
    /// let home = home.with(Change::AddDoor(Door::of(DoorKind::FrontDoor)))?;
    /// let key = home.next_key();
    /// let home = home.with(Change::AddKey(Default::default()))?;
    /// let refused = home.with(Change::Opens { key, door, opens: true });
    /// assert_eq!(refused, Err(Refusal::DoorWithoutCylinder(door)));
    /// # Ok::<(), Refusal>(())
    /// ```
    pub fn with(&self, change: Change) -> Result<Self, Refusal> {
        self.with_all([change])
    }

    /// The household with every change in turn, or why the first that fails is refused.
    pub fn with_all(&self, changes: impl IntoIterator<Item = Change>) -> Result<Self, Refusal> {
        let mut changed = self.clone();
        changes
            .into_iter()
            .try_for_each(|change| changed.make(change))?;
        changed.settle_replies(self);
        Ok(changed)
    }
}
