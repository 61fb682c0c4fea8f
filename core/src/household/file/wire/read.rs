//! From the record to the household.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use super::super::super::kinds::{
    Arrangement, DoorKind, Inside, LockKind, Loss, Material, PriceItem, Reply, Role, WayKind,
    WhoDecides,
};
use super::super::super::{
    CopyId, CylinderLengths, Door, DoorId, Finding, FoundExposure, Holder, HolderId, Household,
    Key, KeyCopy, KeyId, Keyway, Label, Lock, LockId, Place, PriceRange, Prices, Refusal, Way,
    WayId,
};
use super::super::ImportError;
use super::{
    Record, WireCopy, WireDoor, WireHolder, WireKey, WireLock, WireLoss, WirePrices, WireWay, Word,
    finding_word, urgency_word,
};
use crate::advice::Urgency;

impl Record<'_> {
    /// The household, admitted part by part. Each part may name only parts that stand before it in
    /// this order: doors, people, keys, locks, ways, copies.
    pub(in super::super) fn household(self) -> Result<Household, ImportError> {
        let mut home = Household::empty();
        if self.next == 0 || self.next > Household::LAST_ID + 1 {
            return Err(ImportError::Damaged);
        }
        home.next = self.next;
        let id = |id: u32| {
            let is_given_out = id > 0 && id < self.next;
            is_given_out.then_some(id).ok_or(ImportError::Damaged)
        };
        for door in self.doors {
            let new = DoorId(id(door.id)?);
            fresh(home.door(new).is_none())?;
            home.put_door(new, door.part()?)?;
        }
        for holder in self.holders {
            let new = HolderId(id(holder.id)?);
            fresh(home.holder(new).is_none())?;
            home.put_holder(new, holder.part()?)?;
        }
        for key in self.keys {
            let new = KeyId(id(key.id)?);
            fresh(home.key(new).is_none())?;
            home.put_key(new, key.part()?)?;
        }
        for lock in self.locks {
            let new = LockId(id(lock.id)?);
            fresh(home.lock(new).is_none())?;
            home.put_lock(new, lock.part()?)?;
        }
        for way in self.ways {
            let new = WayId(id(way.id)?);
            fresh(home.way(new).is_none())?;
            home.put_way(new, way.part()?)?;
        }
        for copy in self.copies {
            let new = CopyId(id(copy.id)?);
            fresh(home.copy(new).is_none())?;
            home.put_copy(new, copy.part()?)?;
        }
        home.prices = Arc::new(self.prices.part()?);
        Ok(home)
    }
}

impl WireDoor<'_> {
    fn part(self) -> Result<Door, ImportError> {
        Ok(Door {
            kind: known(&self.kind, DoorKind::from_id)?,
            label: label(self.label)?,
            who_decides: known(&self.decides, WhoDecides::from_id)?,
            material: maybe(self.material, Material::from_id)?,
        })
    }
}

impl WireHolder<'_> {
    fn part(self) -> Result<Holder, ImportError> {
        Ok(Holder {
            role: known(&self.role, Role::from_id)?,
            label: label(self.label)?,
            no_longer_should: self.former,
            needs: self.needs.map(|needs| set(needs, DoorId)).transpose()?,
        })
    }
}

impl WireKey<'_> {
    fn part(self) -> Result<Key, ImportError> {
        let exposure = maybe(self.finding, finding_of)?;
        Ok(Key {
            restricted: self.restricted,
            finding: exposure.map(|exposure| Finding {
                exposure,
                safety_first: false,
            }),
            may_be_copied: maybe(self.copied, urgency_of)?,
        })
    }
}

impl WireLock<'_> {
    fn part(self) -> Result<Lock, ImportError> {
        let lengths = self
            .lengths
            .map(|[outside, inside]| CylinderLengths::new(outside, inside));
        Ok(Lock {
            door: DoorId(self.door),
            kind: known(&self.kind, LockKind::from_id)?,
            keys: set(self.keys, KeyId)?,
            arrangement: known(&self.arrangement, Arrangement::from_id)?,
            inside: maybe(self.inside, Inside::from_id)?,
            keyway: self.keyway.map(Keyway::new).transpose()?,
            lengths: lengths.transpose()?,
            reply: maybe(self.reply, Reply::from_id)?,
        })
    }
}

impl WireWay<'_> {
    fn part(self) -> Result<Way, ImportError> {
        Ok(Way {
            door: DoorId(self.door),
            kind: known(&self.kind, WayKind::from_id)?,
            known_by: set(self.known, HolderId)?,
            given_away: maybe(self.given_away, Loss::from_id)?,
            is_assumed: self.assumed,
            lost_by: lost_by(self.lost)?,
            reply: maybe(self.reply, Reply::from_id)?,
        })
    }
}

/// Each person with how they lost theirs, nobody twice.
fn lost_by(lost: Vec<WireLoss<'_>>) -> Result<BTreeMap<HolderId, Loss>, ImportError> {
    let mut by = BTreeMap::new();
    for WireLoss { loss, who } in lost {
        let loss = known(&loss, Loss::from_id)?;
        for holder in who {
            fresh(by.insert(HolderId(holder), loss).is_none())?;
        }
    }
    Ok(by)
}

impl WireCopy<'_> {
    fn part(self) -> Result<KeyCopy, ImportError> {
        let who = self.who.map(HolderId);
        let loss = maybe(self.loss, Loss::from_id)?;
        let place = match (&*self.place, who, self.safe, loss) {
            ("held", Some(holder), None, None) => Place::Held(holder),
            ("key-safe", None, Some(safe), None) => Place::InKeySafe(WayId(safe)),
            ("home", returned_by, None, None) => Place::AtHome { returned_by },
            ("lost", by, from_safe, Some(loss)) => Place::Lost {
                by,
                loss,
                from_safe: from_safe.map(WayId),
            },
            ("scrapped", by, None, None) => Place::Scrapped { by },
            _ => return Err(ImportError::Damaged),
        };
        let key = KeyId(self.key);
        Ok(KeyCopy { key, place })
    }
}

impl WirePrices<'_> {
    fn part(self) -> Result<Prices, ImportError> {
        let mut prices = Prices::default();
        prices.copies_included = self.included;
        for told in self.items {
            let item = known(&told.item, PriceItem::from_id)?;
            fresh(prices.of(item).is_none())?;
            let price = PriceRange::new(told.low, told.high).map_err(Refusal::Price)?;
            prices = prices.with(item, Some(price));
        }
        Ok(prices)
    }
}

fn finding_of(word: &str) -> Option<FoundExposure> {
    let findings = [
        FoundExposure::NotExposed,
        FoundExposure::CannotTell,
        FoundExposure::Exposed(Urgency::Habit),
        FoundExposure::Exposed(Urgency::WhenConvenient),
        FoundExposure::Exposed(Urgency::Soon),
        FoundExposure::Exposed(Urgency::Today),
    ];
    findings
        .into_iter()
        .find(|&finding| finding_word(finding) == word)
}

fn urgency_of(word: &str) -> Option<Urgency> {
    let all = [
        Urgency::Habit,
        Urgency::WhenConvenient,
        Urgency::Soon,
        Urgency::Today,
    ];
    let mut all = all.into_iter();
    all.find(|&urgency| urgency_word(urgency) == word)
}

fn known<T>(word: &str, from_id: fn(&str) -> Option<T>) -> Result<T, ImportError> {
    from_id(word).ok_or(ImportError::Damaged)
}

fn maybe<T>(
    word: Option<Word<'_>>,
    from_id: fn(&str) -> Option<T>,
) -> Result<Option<T>, ImportError> {
    word.map(|word| known(&word, from_id)).transpose()
}

fn label(text: Option<Word<'_>>) -> Result<Option<Label>, ImportError> {
    let label = text.map(|text| Label::new(&text).map_err(ImportError::Label));
    label.transpose()
}

/// A list without repetitions as a set.
fn set<I: Ord>(ids: Vec<u32>, id: fn(u32) -> I) -> Result<BTreeSet<I>, ImportError> {
    let count = ids.len();
    let set: BTreeSet<I> = ids.into_iter().map(id).collect();
    fresh(set.len() == count)?;
    Ok(set)
}

fn fresh(is_fresh: bool) -> Result<(), ImportError> {
    is_fresh.then_some(()).ok_or(ImportError::Damaged)
}
