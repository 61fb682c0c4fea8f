//! The household turned round for the board: what each key opens, where its copies are, what each
//! person has, and what could be in wrong hands. Made once for each household; what only some pages
//! show is made when it is first asked for.

use std::cell::OnceCell;
use std::collections::{BTreeMap, BTreeSet};

use self_check_core::advice::Urgency;
use self_check_core::household::{
    Change, CopyId, DoorId, ExposedBy, ExposedKey, FoundExposure, Gap, HolderId, Household, KeyId,
    LockId, Loss, Place, Reach, WayId, WayKind, exposed_keys, gaps, ways_to_change,
};

use crate::copy::Names;
use crate::copy::en::household::board::Out;

/// What went in one way.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Lost {
    /// Copies of keys.
    pub copies: Vec<CopyId>,
    /// Remotes.
    pub remotes: Vec<WayId>,
}

/// Whose answer is missing: a person's, or for a remote of which nobody has said whose it was.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Asked {
    /// About copies that nobody is known to have had.
    Nobody,
    /// About what this person lost.
    Holder(HolderId),
    /// About this way in.
    Way(WayId),
}

/// What the board shows. All of it follows from the household.
#[derive(Clone, Debug)]
pub struct Overview {
    /// The household.
    pub household: Household,
    /// What everything is called.
    pub names: Names,
    /// The keys that could be in wrong hands.
    pub exposed: BTreeMap<KeyId, ExposedKey>,
    /// The doors at which each key turns a lock.
    pub opens: BTreeMap<KeyId, Vec<DoorId>>,
    /// The copies of each key.
    pub copies: BTreeMap<KeyId, Vec<CopyId>>,
    /// The copies on each ring.
    pub rings: BTreeMap<HolderId, Vec<CopyId>>,
    /// What each person lost, together what went in the same way.
    pub lost: BTreeMap<HolderId, Vec<(Loss, Lost)>>,
    /// The locks on each door.
    pub locks: BTreeMap<DoorId, Vec<LockId>>,
    /// The other ways in at each door.
    pub ways: BTreeMap<DoorId, Vec<WayId>>,
    /// The other ways in that somebody has who should not, each with how soon it has to be changed.
    pub open_ways: BTreeMap<WayId, Urgency>,
    /// The doors that open to a key in wrong hands, or by a way that was given away.
    pub open_to_others: BTreeSet<DoorId>,
    reach: OnceCell<BTreeMap<HolderId, Reach>>,
    gaps: OnceCell<Vec<Gap>>,
}

impl PartialEq for Overview {
    fn eq(&self, other: &Self) -> bool {
        self.household == other.household
    }
}

impl Eq for Overview {}

impl Overview {
    /// Of this household.
    pub fn of(household: &Household) -> Self {
        let mut overview = Self {
            names: Names::of(household),
            exposed: exposed_keys(household)
                .into_iter()
                .map(|exposed| (exposed.key, exposed))
                .collect(),
            opens: BTreeMap::new(),
            copies: BTreeMap::new(),
            rings: BTreeMap::new(),
            lost: BTreeMap::new(),
            locks: BTreeMap::new(),
            ways: BTreeMap::new(),
            open_ways: ways_to_change(household),
            open_to_others: BTreeSet::new(),
            reach: OnceCell::new(),
            gaps: OnceCell::new(),
            household: household.clone(),
        };
        overview.turn_round(household);
        overview
    }

    /// The doors at which a key turns a lock.
    pub fn doors_of(&self, key: KeyId) -> &[DoorId] {
        self.opens.get(&key).map_or(&[], Vec::as_slice)
    }

    /// Whether keys in wrong hands turn some of the door's locks, and others hold it.
    pub fn is_held(&self, door: DoorId) -> bool {
        let ways = self.ways.get(&door).into_iter().flatten();
        let mut open = ways.filter(|way| self.open_ways.contains_key(way));
        let is_open_way = open.any(|&way| {
            let way = self.household.way(way);
            way.is_some_and(|way| way.kind != WayKind::KeySafe)
        });
        let locks = self.locks.get(&door).into_iter().flatten();
        let mut locks = locks.filter_map(|&lock| self.household.lock(lock));
        let holds = locks.any(|lock| !lock.keys.iter().any(|key| self.exposed.contains_key(key)));
        holds && !is_open_way && self.open_to_others.contains(&door)
    }

    /// What opens to a person.
    pub fn reach(&self, holder: HolderId) -> Option<&Reach> {
        let everybody = || self.household.reach_of_everybody().into_iter().collect();
        self.reach.get_or_init(everybody).get(&holder)
    }

    /// What could be in wrong hands, counted. Remotes are counted one by one as far as somebody said that
    /// theirs is out.
    pub fn out(&self) -> Out {
        let mut out = Out {
            keys: self.exposed.len(),
            is_only_copied: self.is_only_copied(),
            ..Out::default()
        };
        for id in self.open_ways.keys() {
            let way = self.household.way(*id);
            match way.filter(|way| way.kind == WayKind::Remote) {
                Some(remote) => {
                    let lost = remote.losses().filter(|loss| loss.urgency().is_some());
                    out.remotes += lost.count().max(1);
                }
                None => out.ways += 1,
            }
        }
        out
    }

    /// Whether every key that could be in wrong hands came back, and only a copy of it may be out.
    fn is_only_copied(&self) -> bool {
        let is_back = |copy: CopyId| {
            let place = self.household.copy(copy).map(|copy| copy.place);
            matches!(place, Some(Place::AtHome { .. } | Place::Scrapped { .. }))
        };
        let mut by = self.exposed.values().flat_map(|exposed| &exposed.by);
        by.all(|by| match *by {
            ExposedBy::MayBeCopied(_) => true,
            ExposedBy::FormerHolder(copy, _) => is_back(copy),
            ExposedBy::Check(_) | ExposedBy::LostCopy(..) | ExposedBy::KeySafe(..) => false,
        })
    }

    /// Who opens more or less than they need.
    pub fn gaps(&self) -> &[Gap] {
        self.gaps.get_or_init(|| gaps(&self.household))
    }

    /// Who has a copy of this key and does not live in the home, where its check found nothing: the check
    /// knows nothing of the board, and its answers may have left them out.
    pub fn left_out_by_the_check(&self, key: KeyId) -> Vec<HolderId> {
        let finding = self.household.key(key).and_then(|key| key.finding);
        let is_calm = finding.is_some_and(|found| {
            found.exposure == FoundExposure::NotExposed && !found.safety_first
        });
        let copies = self.household.copies_of(key).filter(|_| is_calm);
        let mut people: Vec<HolderId> = Vec::new();
        for (_, copy) in copies {
            if let Place::Held(holder) = copy.place
                && let Some(part) = self.household.holder(holder)
                && !part.role.lives_here()
                && !people.contains(&holder)
            {
                people.push(holder);
            }
        }
        people
    }

    /// Those of whom nobody has said what they need: they count as needing what they can open.
    pub fn needs_not_said(&self) -> impl Iterator<Item = HolderId> + '_ {
        let holders = self.household.holders();
        holders
            .filter(|(_, holder)| !holder.no_longer_should && holder.needs.is_none())
            .map(|(id, _)| id)
    }

    /// What is out without anybody having said how, where the answer decides how soon it is due.
    pub fn losses_not_said(&self) -> BTreeMap<Asked, Lost> {
        let mut losses: BTreeMap<Asked, Lost> = BTreeMap::new();
        for (id, copy) in self.household.copies() {
            if let Place::Lost { by, loss, .. } = copy.place
                && loss == Loss::NotSaid
                && self.exposed.contains_key(&copy.key)
            {
                let asked = by.map_or(Asked::Nobody, Asked::Holder);
                losses.entry(asked).or_default().copies.push(id);
            }
        }
        let ways = self.household.ways();
        for (id, way) in ways.filter(|(_, way)| way.kind == WayKind::Remote) {
            let given = way.given_away.map(|loss| (Asked::Way(id), loss));
            let lost = way.lost_by.iter();
            let lost = lost.map(|(&holder, &loss)| (Asked::Holder(holder), loss));
            let open = lost.chain(given).filter(|&(_, loss)| loss == Loss::NotSaid);
            for (asked, _) in open {
                losses.entry(asked).or_default().remotes.push(id);
            }
        }
        losses
    }

    /// What opens to whoever found this of what the person lost: exactly those keys and remotes.
    pub fn reach_of_lost(&self, holder: HolderId, lost: &Lost) -> Reach {
        let put_back = lost.copies.iter().map(|&copy| Change::Move {
            copy,
            to: Place::Held(holder),
        });
        let held = self.rings.get(&holder).into_iter().flatten();
        let laid_aside = held.map(|&copy| Change::Move {
            copy,
            to: Place::AtHome { returned_by: None },
        });
        let kept = self.household.ways().filter(|(id, way)| {
            way.kind == WayKind::Remote
                && !lost.remotes.contains(id)
                && way.known_by.contains(&holder)
        });
        let kept = kept.map(|(way, _)| Change::Knows {
            holder,
            way,
            knows: false,
        });
        let found = lost.remotes.iter().filter_map(|&id| {
            let mut way = self.household.way(id)?.clone();
            way.lost_by.remove(&holder);
            Some(Change::SetWay(id, way))
        });
        let changes = put_back.chain(laid_aside).chain(kept).chain(found);
        let changes: Vec<Change> = changes.collect();
        self.household
            .with_all(changes)
            .and_then(|as_if| as_if.reach_of_ring(holder))
            .unwrap_or_default()
    }

    /// Where to note what this person lost in this way.
    fn lost_in(&mut self, holder: HolderId, loss: Loss) -> Option<&mut Lost> {
        let losses = self.lost.entry(holder).or_default();
        if losses.iter().all(|&(known, _)| known != loss) {
            losses.push((loss, Lost::default()));
        }
        let mut losses = losses.iter_mut();
        losses.find_map(|(known, lost)| (*known == loss).then_some(lost))
    }

    fn turn_round(&mut self, household: &Household) {
        for (id, lock) in household.locks() {
            self.locks.entry(lock.door).or_default().push(id);
            for &key in &lock.keys {
                let doors = self.opens.entry(key).or_default();
                if !doors.contains(&lock.door) {
                    doors.push(lock.door);
                }
                if self.exposed.contains_key(&key) {
                    self.open_to_others.insert(lock.door);
                }
            }
        }
        for (id, copy) in household.copies() {
            self.copies.entry(copy.key).or_default().push(id);
            match copy.place {
                Place::Held(holder) => self.rings.entry(holder).or_default().push(id),
                Place::Lost {
                    by: Some(holder),
                    loss,
                    ..
                } => {
                    if let Some(lost) = self.lost_in(holder, loss) {
                        lost.copies.push(id);
                    }
                }
                Place::Lost { by: None, .. }
                | Place::InKeySafe(_)
                | Place::AtHome { .. }
                | Place::Scrapped { .. } => {}
            }
        }
        for (id, way) in household.ways() {
            self.ways.entry(way.door).or_default().push(id);
            for (&holder, &loss) in &way.lost_by {
                if let Some(lost) = self.lost_in(holder, loss) {
                    lost.remotes.push(id);
                }
            }
            // A key safe opens what lies in it: that is told by its keys.
            if self.open_ways.contains_key(&id) && way.kind != WayKind::KeySafe {
                self.open_to_others.insert(way.door);
            }
        }
    }
}
