//! Which keys are exposed, and why.

use std::collections::{BTreeMap, BTreeSet};

use crate::advice::Urgency;
use crate::assess::{Assessment, Level};
use crate::sources::{Source, TRADE_REKEYING, URGENCY_JUDGEMENT};

use super::index::Index;
use super::kinds::{Loss, WayKind};
use super::{CopyId, DoorId, HolderId, Household, KeyId, Place, Way, WayId};

/// What a key's check found, as far as the household needs it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Finding {
    /// Whether old keys should stop working.
    pub exposure: FoundExposure,
    /// Whether the check told of a person who makes somebody uneasy.
    pub safety_first: bool,
}

/// Whether a check found a key exposed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FoundExposure {
    /// It did not.
    NotExposed,
    /// Too little is known to say.
    CannotTell,
    /// Old keys should stop working, this soon.
    Exposed(Urgency),
}

/// A key that could be in wrong hands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ExposedKey {
    /// The key.
    pub key: KeyId,
    /// How soon old keys should stop working: the most urgent of the reasons, as far as a door that it
    /// opens ever is.
    pub urgency: Urgency,
    /// The most urgent that a door it opens ever is.
    pub at_most: Urgency,
    /// Why; never empty.
    pub by: Vec<ExposedBy>,
}

/// One reason why a key is exposed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ExposedBy {
    /// Its check found it so.
    Check(Urgency),
    /// This copy is lost.
    LostCopy(CopyId, Loss),
    /// This copy is or was with somebody who no longer should come in, and may have been copied.
    FormerHolder(CopyId, HolderId),
    /// This copy lies in a key safe whose code is in other hands, or known to somebody who kept back
    /// a key to what it opens or to the same home.
    KeySafe(CopyId, WayId),
    /// A copy was within reach of wrong hands before and may have been copied.
    MayBeCopied(Urgency),
}

impl Finding {
    /// What a check found. A key is exposed where the advice is that old keys stop working; who
    /// was only *seen* with it is not.
    pub fn of(assessment: &Assessment) -> Self {
        let remedies = assessment.advised.remedies_due();
        let urgency = remedies.map(|advice| advice.urgency).max();
        let exposure = match (urgency, assessment.level) {
            (Some(urgency), _) => FoundExposure::Exposed(urgency),
            (None, Level::CannotBeToldYet) => FoundExposure::CannotTell,
            (None, Level::Kept | Level::InDoubt | Level::GivenAway) => FoundExposure::NotExposed,
        };
        Self {
            exposure,
            safety_first: assessment.safety_first,
        }
    }
}

impl Loss {
    /// How soon old keys should stop working; none for a key that may turn up. The same as a check
    /// advises for a key of a home that went missing in this way.
    pub const fn urgency(self) -> Option<Urgency> {
        match self {
            Self::MislaidIndoors => None,
            Self::NotSaid | Self::FarAway => Some(Urgency::WhenConvenient),
            Self::NearHome | Self::NotReturned => Some(Urgency::Soon),
            Self::WithTheAddress | Self::Stolen => Some(Urgency::Today),
        }
    }

    /// The one of the two after which old keys should stop working sooner; this one if both come to
    /// the same.
    #[must_use]
    pub fn graver(self, other: Self) -> Self {
        if other.urgency() > self.urgency() {
            other
        } else {
            self
        }
    }

    /// Whether a copy that comes back may have been copied: somebody had it who meant to keep it. What was
    /// only mislaid or lost may turn up as it was (our judgement).
    pub const fn may_end_in_a_copy(self) -> bool {
        matches!(self, Self::Stolen | Self::NotReturned)
    }

    /// What the urgencies rest on.
    pub const SOURCES: &[&Source] = &[&TRADE_REKEYING, &URGENCY_JUDGEMENT];
}

impl Way {
    /// How soon it has to be changed after it came into other hands in this way. A remote can be as far
    /// from its door as a key, and is as urgent. Whoever has a code or uses an app knows the door and can
    /// walk in at once: today, as for a key lost with the address. Only one with whoever did not give a
    /// key back is as urgent as that key.
    pub const fn urgency_of(&self, loss: Loss) -> Option<Urgency> {
        match (self.kind, loss) {
            (WayKind::Remote, _) | (_, Loss::MislaidIndoors | Loss::NotReturned) => loss.urgency(),
            (WayKind::DoorCode | WayKind::KeySafe | WayKind::App, _) => Some(Urgency::Today),
        }
    }
}

/// The least for a key in a key safe whose code is out: it may have been copied and put back. Whether it
/// is still there is looked at before ([`super::plan::Step::EmptyKeySafes`]); one that is gone is put down
/// as lost, and then that decides.
const IN_AN_OPEN_SAFE: Urgency = Urgency::Soon;

/// A person who no longer should come in may keep a copy: as soon as a check advises it.
pub(super) const FORMER_HOLDER: Urgency = Urgency::Soon;

impl ExposedKey {
    /// Whether it depends on how a copy was lost, which nobody has said yet: the answer can make it
    /// more urgent.
    pub fn may_be_sooner(&self) -> bool {
        let is_open = |by: &ExposedBy| matches!(by, ExposedBy::LostCopy(_, Loss::NotSaid));
        self.urgency < self.at_most && self.by.iter().any(is_open)
    }
}

/// The exposed keys with their reasons, in the order of the keys. A key that opens nothing is none.
pub fn exposed_keys(household: &Household) -> Vec<ExposedKey> {
    exposed(&Index::of(household)).into_values().collect()
}

pub(super) fn exposed(index: &Index<'_>) -> BTreeMap<KeyId, ExposedKey> {
    let household = index.household;
    let mut found: BTreeMap<KeyId, ExposedKey> = BTreeMap::new();
    let mut add = |key: KeyId, by: ExposedBy, urgency: Option<Urgency>| {
        let Some(urgency) = urgency else {
            return;
        };
        if index.opened_by(key).is_empty() {
            return;
        }
        let at_most = index.most_urgent_door_of(key);
        let urgency = urgency.min(at_most);
        let entry = found.entry(key).or_insert_with(|| ExposedKey {
            key,
            urgency,
            at_most,
            by: Vec::new(),
        });
        entry.urgency = entry.urgency.max(urgency);
        entry.by.push(by);
    };
    for (id, key) in household.keys() {
        if let Some(FoundExposure::Exposed(urgency)) = key.finding.map(|found| found.exposure) {
            add(id, ExposedBy::Check(urgency), Some(urgency));
        }
        if let Some(urgency) = key.may_be_copied {
            add(id, ExposedBy::MayBeCopied(urgency), Some(urgency));
        }
    }
    let mut in_safes: BTreeMap<WayId, Option<Urgency>> = BTreeMap::new();
    for (id, copy) in household.copies() {
        match copy.place {
            Place::Lost { loss, .. } => {
                add(copy.key, ExposedBy::LostCopy(id, loss), loss.urgency());
            }
            Place::InKeySafe(way) => {
                let in_safe = in_safes.entry(way);
                let urgency = *in_safe.or_insert_with(|| key_in_safe(index, way));
                add(copy.key, ExposedBy::KeySafe(id, way), urgency);
            }
            Place::Held(_) | Place::AtHome { .. } | Place::Scrapped { .. } => {}
        }
        if let Some(holder) = copy.place.had_by()
            && no_longer_should(household, holder)
        {
            let by = ExposedBy::FormerHolder(id, holder);
            add(copy.key, by, of_a_former_holder(household, id));
        }
    }
    found
}

/// The ways in that somebody has who should not, each with how soon it has to be changed.
pub fn ways_to_change(household: &Household) -> BTreeMap<WayId, Urgency> {
    open_ways(&Index::of(household))
}

pub(super) fn open_ways(index: &Index<'_>) -> BTreeMap<WayId, Urgency> {
    let ways = index.household.ways();
    let open = ways.filter_map(|(id, way)| {
        let urgency = way_to_change(index, way, &index.doors_by(id))?;
        Some((id, urgency))
    });
    open.collect()
}

/// How soon a way in that leads to these doors has to be changed; none while it is in good hands.
pub(super) fn way_to_change(
    index: &Index<'_>,
    way: &Way,
    doors: &BTreeSet<DoorId>,
) -> Option<Urgency> {
    let lost = way.losses().filter_map(|loss| way.urgency_of(loss)).max();
    lost.max(known_wrongly(index, way, doors))
}

/// How soon old keys should stop working because one lies in this key safe; none while its code is in
/// good hands.
pub(super) fn key_in_safe(index: &Index<'_>, id: WayId) -> Option<Urgency> {
    let way = index.household.way(id)?;
    let lost = way.losses().filter_map(Loss::urgency).max();
    let lost = lost.map(|urgency| urgency.max(IN_AN_OPEN_SAFE));
    lost.max(known_wrongly(index, way, &index.doors_by(id)))
}

/// How soon a way in to these doors has to be changed because of those who know it.
fn known_wrongly(index: &Index<'_>, way: &Way, doors: &BTreeSet<DoorId>) -> Option<Urgency> {
    let knows = way.known_by.iter();
    let known = knows.filter_map(|&holder| must_not_know(index, holder, doors));
    known.max()
}

/// How soon a way in to these doors has to be changed because this holder knows it: they no longer
/// should come in, or did not give back a key to one of the doors. None where they may know it.
pub(super) fn must_not_know(
    index: &Index<'_>,
    holder: HolderId,
    doors: &BTreeSet<DoorId>,
) -> Option<Urgency> {
    let former = no_longer_should(index.household, holder).then_some(FORMER_HOLDER);
    let kept_back = index.kept_a_key_back_to(holder, doors);
    former.max(Loss::NotReturned.urgency().filter(|_| kept_back))
}

/// How soon old keys should stop working because somebody who no longer should come in had this copy. What
/// they have still, as soon as a check advises it. One that came back or was destroyed may have been copied
/// before, which can wait (our judgement); none of a key that only the household's card can have copied.
fn of_a_former_holder(household: &Household, copy: CopyId) -> Option<Urgency> {
    let copy = household.copy(copy)?;
    match copy.place {
        Place::AtHome { .. } | Place::Scrapped { .. } => may_be_copied_by(household, copy.key),
        Place::Held(_) | Place::Lost { .. } | Place::InKeySafe(_) => Some(FORMER_HOLDER),
    }
}

/// How soon old keys should stop working because a copy came back from wrong hands: where no card is
/// needed for it, it may have been copied.
pub(super) fn may_be_copied_by(household: &Household, key: KeyId) -> Option<Urgency> {
    let needs_a_card = household.key(key)?.restricted == Some(true);
    (!needs_a_card).then_some(Urgency::WhenConvenient)
}

/// Whether a copy of this key came back from somebody who no longer should come in.
pub(super) fn came_back(index: &Index<'_>, key: KeyId) -> bool {
    let copies = index.copies_of(key).iter();
    let mut copies = copies.filter_map(|&copy| index.household.copy(copy));
    copies.any(|copy| {
        let had_by = copy.place.had_by();
        matches!(copy.place, Place::AtHome { .. } | Place::Scrapped { .. })
            && had_by.is_some_and(|holder| no_longer_should(index.household, holder))
    })
}

pub(super) fn no_longer_should(household: &Household, holder: HolderId) -> bool {
    household
        .holder(holder)
        .is_some_and(|holder| holder.no_longer_should)
}
