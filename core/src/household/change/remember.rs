//! What a change must not make forgotten. A key that was within reach of wrong hands may have been
//! copied: a new code or the copy itself coming back takes away how it was seen, not the copy.

use std::collections::BTreeSet;
use std::sync::Arc;

use crate::advice::Urgency;

use super::super::exposed::{key_in_safe, may_be_copied_by, no_longer_should};
use super::super::index::Index;
use super::super::kinds::{Loss, WayKind};
use super::super::{CopyId, Household, KeyCopy, KeyId, Place, Refusal, Way, WayId};

impl Household {
    /// The way in is another now. The keys in a key safe stay as exposed as they were before.
    pub(super) fn change_way(&mut self, id: WayId, mut way: Way) -> Result<(), Refusal> {
        let was = self.reach_into(id);
        way.is_assumed &= self.is_unsaid_of(id);
        let is_safe = way.kind == WayKind::KeySafe;
        self.put_way(id, way)?;
        if !is_safe {
            self.forget_key_safes();
        }
        self.remember_reach_into(id, was);
        Ok(())
    }

    /// Remembers of the keys in this key safe that they were within reach, if they are so no more.
    pub(super) fn remember_reach_into(&mut self, id: WayId, was: Option<Urgency>) {
        let Some(was) = was.filter(|&was| self.reach_into(id) < Some(was)) else {
            return;
        };
        let inside = self.copies();
        let inside = inside.filter(|(_, copy)| copy.place == Place::InKeySafe(id));
        let keys: Vec<KeyId> = inside.map(|(_, copy)| copy.key).collect();
        for key in keys {
            self.remember(key, was);
        }
    }

    /// How soon old keys should stop working because they lie in this key safe.
    pub(super) fn reach_into(&self, id: WayId) -> Option<Urgency> {
        let holds = self.holds_copies(id);
        holds.then(|| key_in_safe(&Index::of(self), id)).flatten()
    }

    /// The copy is another now, or somewhere else. Where it was out of the household's hands, its key
    /// may have been copied there.
    pub(super) fn change_copy(&mut self, id: CopyId, copy: KeyCopy) -> Result<(), Refusal> {
        let was = *self.copy(id).ok_or(Refusal::UnknownCopy(id))?;
        let out = self.was_out(was, copy.place);
        self.put_copy(id, copy)?;
        if was.place != copy.place {
            self.give_code_away(was.place, copy.place)?;
            self.take_assumption_back(was.place)?;
        }
        if let Some(urgency) = out {
            self.remember(was.key, urgency);
        }
        Ok(())
    }

    /// How soon old keys should stop working because a copy that goes to another place was where it
    /// was. Of one that is lost now its loss tells, but for a key safe whose code was out.
    fn was_out(&self, was: KeyCopy, to: Place) -> Option<Urgency> {
        if was.place == to {
            return None;
        }
        if let Place::InKeySafe(way) = was.place {
            return self.reach_into(way);
        }
        if matches!(to, Place::Lost { .. }) {
            return None;
        }
        let former = was
            .place
            .had_by()
            .filter(|&by| no_longer_should(self, by) && to.had_by() != Some(by));
        let was_taken = matches!(was.place, Place::Lost { loss, .. } if loss.may_end_in_a_copy());
        let is_out = former.is_some() || was_taken;
        is_out.then(|| may_be_copied_by(self, was.key)).flatten()
    }

    /// Whoever took a key out of a key safe has its code; only one that somebody lost who took it out
    /// rightly says nothing of it. While nobody has said how it went, it counts as taken.
    fn give_code_away(&mut self, was: Place, place: Place) -> Result<(), Refusal> {
        let Some((id, loss)) = taken_from_a_safe(place) else {
            return Ok(());
        };
        let mut way = self.way(id).ok_or(Refusal::UnknownWay(id))?.clone();
        if taken_from_a_safe(was).is_some_and(|(was, _)| was == id) && way.given_away.is_none() {
            // The code that went with it has been changed since.
            return Ok(());
        }
        if loss == Loss::NotSaid {
            way.assume_given_away();
        } else {
            way.give_away(Some(loss));
        }
        self.change_way(id, way)
    }

    /// It is said now how a copy went from a key safe, or it is back. Its code counts as out no longer if it
    /// was only assumed so and of no other copy of it nobody has said how it went.
    fn take_assumption_back(&mut self, was: Place) -> Result<(), Refusal> {
        let Some(id) = went_unsaid(was) else {
            return Ok(());
        };
        if self.is_unsaid_of(id) {
            return Ok(());
        }
        let mut way = self.way(id).ok_or(Refusal::UnknownWay(id))?.clone();
        way.take_assumption_back();
        // The keys in it were within nobody's reach: nothing of them is remembered.
        self.put_way(id, way)
    }

    /// Of what was assumed for a copy that is not put down any more, nobody can say anything: it stays so.
    pub(super) fn assume_no_more(&mut self) {
        let copies = self.copies();
        let unsaid: BTreeSet<WayId> = copies
            .filter_map(|(_, copy)| went_unsaid(copy.place))
            .collect();
        if self
            .ways()
            .any(|(id, way)| way.is_assumed && !unsaid.contains(&id))
        {
            for (id, way) in Arc::make_mut(&mut self.ways) {
                way.is_assumed &= unsaid.contains(id);
            }
        }
    }

    /// Whether of a copy from this key safe nobody has said how it went.
    fn is_unsaid_of(&self, id: WayId) -> bool {
        let mut copies = self.copies();
        copies.any(|(_, copy)| went_unsaid(copy.place) == Some(id))
    }

    /// No copy went from a key safe that is none, or none any more.
    pub(super) fn forget_key_safes(&mut self) {
        let ways = &self.ways;
        let is_safe = |id: &WayId| ways.get(id).is_some_and(|way| way.kind == WayKind::KeySafe);
        for copy in Arc::make_mut(&mut self.copies).values_mut() {
            if let Place::Lost { from_safe, .. } = &mut copy.place {
                *from_safe = from_safe.filter(is_safe);
            }
        }
    }

    fn remember(&mut self, key: KeyId, urgency: Urgency) {
        if let Some(key) = Arc::make_mut(&mut self.keys).get_mut(&key) {
            key.may_be_copied = key.may_be_copied.max(Some(urgency));
        }
    }
}

/// The key safe that a lost copy went from, if it was taken or could have been.
fn taken_from_a_safe(place: Place) -> Option<(WayId, Loss)> {
    match place {
        Place::Lost {
            loss,
            from_safe: Some(id),
            ..
        } if loss == Loss::NotSaid || loss.may_end_in_a_copy() => Some((id, loss)),
        _ => None,
    }
}

/// The key safe that a lost copy went from, while nobody has said how.
fn went_unsaid(place: Place) -> Option<WayId> {
    let (id, loss) = taken_from_a_safe(place)?;
    (loss == Loss::NotSaid).then_some(id)
}
