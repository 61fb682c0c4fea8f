//! What opens: to a copy, to a ring, to a person.

use std::collections::{BTreeMap, BTreeSet};

use super::index::Index;
use super::kinds::WayKind;
use super::{CopyId, DoorId, HolderId, Household, KeyId, LockId, Place, Refusal, WayId};

/// What somebody can open, each list in the order of the ids.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Reach {
    /// The keys they use.
    pub keys: Vec<KeyId>,
    /// The locks that turn.
    pub locks: Vec<LockId>,
    /// The doors, each with how far it opens.
    pub doors: Vec<DoorReach>,
}

/// One door and how far it opens.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DoorReach {
    /// The door.
    pub door: DoorId,
    /// How far.
    pub opening: Opening,
}

/// How far a door opens.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Opening {
    /// Every lock on it turns.
    Whole,
    /// Some locks on it turn; these others hold it, as long as somebody locks them.
    Part {
        /// The locks that hold; never empty.
        holding: Vec<LockId>,
    },
    /// By a way that has no cylinder, whatever the locks.
    ByWay(WayId),
}

impl Reach {
    /// Whether the door opens wholly, by keys or by another way.
    pub fn opens(&self, door: DoorId) -> bool {
        self.opened().any(|opened| opened == door)
    }

    /// The doors that open wholly.
    pub fn opened(&self) -> impl Iterator<Item = DoorId> {
        self.doors
            .iter()
            .filter(|reach| !matches!(reach.opening, Opening::Part { .. }))
            .map(|reach| reach.door)
    }

    /// What opens to `keys` and to `ways`.
    pub(super) fn of(index: &Index<'_>, keys: BTreeSet<KeyId>, ways: &[WayId]) -> Self {
        let locks: BTreeSet<LockId> = keys
            .iter()
            .flat_map(|&key| index.opened_by(key))
            .copied()
            .collect();
        let mut doors: BTreeMap<DoorId, Opening> = BTreeMap::new();
        for door in locks.iter().filter_map(|&lock| index.door_of(lock)) {
            doors.entry(door).or_insert_with(|| {
                let on_it = index.locks_on(door).iter();
                let holding: Vec<LockId> = on_it
                    .filter(|lock| !locks.contains(lock))
                    .copied()
                    .collect();
                if holding.is_empty() {
                    Opening::Whole
                } else {
                    Opening::Part { holding }
                }
            });
        }
        for &id in ways {
            if let Some(way) = index.household.way(id) {
                let opening = doors.entry(way.door).or_insert(Opening::ByWay(id));
                if matches!(opening, Opening::Part { .. }) {
                    *opening = Opening::ByWay(id);
                }
            }
        }
        Self {
            keys: keys.into_iter().collect(),
            locks: locks.into_iter().collect(),
            doors: doors
                .into_iter()
                .map(|(door, opening)| DoorReach { door, opening })
                .collect(),
        }
    }

    pub(super) fn of_ring(index: &Index<'_>, holder: HolderId) -> Self {
        let keys = index.ring(holder).iter().copied().collect();
        let remotes: Vec<WayId> = index
            .known_to(holder)
            .iter()
            .copied()
            .filter(|&way| is_kind(index, way, WayKind::Remote) && has_it(index, holder, way))
            .collect();
        Self::of(index, keys, &remotes)
    }

    pub(super) fn of_holder(index: &Index<'_>, holder: HolderId) -> Self {
        let mut keys: BTreeSet<KeyId> = index.ring(holder).iter().copied().collect();
        let mut ways = Vec::new();
        let known = index.known_to(holder).iter().copied();
        for way in known.filter(|&way| has_it(index, holder, way)) {
            if is_kind(index, way, WayKind::KeySafe) {
                keys.extend(index.in_safe(way));
            } else {
                ways.push(way);
            }
        }
        Self::of(index, keys, &ways)
    }
}

impl Household {
    /// What opens to whoever has this copy, wherever it is. A scrapped copy opens nothing.
    pub fn reach_of_copy(&self, copy: CopyId) -> Result<Reach, Refusal> {
        let copy = self.copy(copy).ok_or(Refusal::UnknownCopy(copy))?;
        let keys = match copy.place {
            Place::Scrapped { .. } => BTreeSet::new(),
            Place::Held(_) | Place::InKeySafe(_) | Place::AtHome { .. } | Place::Lost { .. } => {
                BTreeSet::from([copy.key])
            }
        };
        Ok(Reach::of(&Index::of(self), keys, &[]))
    }

    /// What opens to whoever finds this holder's ring: the keys on it and their remotes, but for what
    /// was lost before. Codes and apps do not hang on a ring.
    pub fn reach_of_ring(&self, holder: HolderId) -> Result<Reach, Refusal> {
        self.holder(holder).ok_or(Refusal::UnknownHolder(holder))?;
        Ok(Reach::of_ring(&Index::of(self), holder))
    }

    /// What opens to this holder: their ring, every way in they know, and the keys in the key safes
    /// whose code they know. A key safe in which no copy is put down opens nothing.
    pub fn reach_of_holder(&self, holder: HolderId) -> Result<Reach, Refusal> {
        self.holder(holder).ok_or(Refusal::UnknownHolder(holder))?;
        Ok(Reach::of_holder(&Index::of(self), holder))
    }

    /// What each holder can open, for a board that shows everybody at once.
    pub fn reach_of_everybody(&self) -> Vec<(HolderId, Reach)> {
        let index = Index::of(self);
        self.holders()
            .map(|(holder, _)| (holder, Reach::of_holder(&index, holder)))
            .collect()
    }
}

/// Whether the holder has what opens by this way: their remote may be lost.
fn has_it(index: &Index<'_>, holder: HolderId, way: WayId) -> bool {
    let way = index.household.way(way);
    way.is_some_and(|way| !way.lost_by.contains_key(&holder))
}

fn is_kind(index: &Index<'_>, way: WayId, kind: WayKind) -> bool {
    index.household.way(way).is_some_and(|way| way.kind == kind)
}
