//! One day for a lock and its keys: copies are due with the step that sees to their locks.

use std::cmp::Reverse;
use std::collections::BTreeMap;

use crate::advice::Urgency;

use super::super::index::Index;
use super::super::remedy::WhoActs;
use super::super::{CopyId, LockId};
use super::steps::Due;
use super::{Origin, Plan, PlanStep, PlannedKey, Recipient, Step};

/// How soon each planned key is due, in their order.
pub(super) struct KeyDays(Vec<Due>);

/// New keys by their place in the plan, each with how many of it.
type NumberedKeys = Vec<(usize, u32)>;

impl KeyDays {
    /// By the steps that see to locks. What one visit sees to is due as soon as the most urgent of it;
    /// a key to several locks is due with the first of them.
    pub(super) fn of(plan: &Plan, works: &[PlanStep]) -> Self {
        let mut locks: BTreeMap<LockId, &PlanStep> = BTreeMap::new();
        for step in works {
            if let Step::LocksmithVisit(seen_to) | Step::ReplaceSmallLocks(seen_to) = &step.step {
                locks.extend(seen_to.iter().map(|&lock| (lock, step)));
            }
        }
        let mut days = vec![Due::default(); plan.keys.len()];
        for work in &plan.works {
            let Some(step) = locks.get(&work.lock) else {
                continue;
            };
            for &place in &work.takes {
                if let Some(day) = days.get_mut(place) {
                    day.add(step.urgency, step.could_be());
                }
            }
        }
        Self(days)
    }

    /// The copies that the household has cut, those of one day in one step.
    pub(super) fn cut(&self, plan: &Plan) -> Vec<PlanStep> {
        let cut = self.own(plan).filter(|(_, key, _)| key.copy_count() > 0);
        let mut days: BTreeMap<Reverse<Due>, Vec<usize>> = BTreeMap::new();
        for (place, _, day) in cut {
            days.entry(Reverse(day)).or_default().push(place);
        }
        let days = days.into_iter();
        days.map(|(day, keys)| day.0.step(Step::CutCopies(keys)))
            .collect()
    }

    /// Everybody's copies of one day together, new ones and those handed on; the home's own spares left
    /// out: those stay where they are.
    pub(super) fn hand_over(&self, plan: &Plan) -> Vec<PlanStep> {
        let mut handed: BTreeMap<_, NumberedKeys> = BTreeMap::new();
        for (place, key, day) in self.own(plan) {
            let mut each: BTreeMap<Recipient, u32> = key.copies.iter().copied().collect();
            each.remove(&Recipient::Spare);
            for &(_, recipient) in &key.handed_on {
                *each.entry(recipient).or_default() += 1;
            }
            for (recipient, count) in each {
                let entry = handed.entry((Reverse(day), recipient)).or_default();
                entry.push((place, count));
            }
        }
        let handed = handed.into_iter();
        handed
            .map(|((day, to), keys)| day.0.step(Step::HandOver(to, keys)))
            .collect()
    }

    /// What people hand in of keys that stay, that of one day in one step: as soon as the locks that are to
    /// be set to that key, else when convenient.
    pub(super) fn hand_in(&self, index: &Index<'_>, plan: &Plan) -> Vec<PlanStep> {
        let mut days: BTreeMap<Reverse<Due>, Vec<CopyId>> = BTreeMap::new();
        for &copy in &plan.hand_in {
            let key = index
                .household
                .copy(copy)
                .map(|copy| Origin::Kept(copy.key));
            let mut keys = self.own(plan);
            let day = keys.find(|(_, planned, _)| Some(&planned.origin) == key.as_ref());
            let day = day.map_or_else(Due::default, |(_, _, day)| day);
            days.entry(Reverse(day)).or_default().push(copy);
        }
        let days = days.into_iter();
        days.map(|(day, copies)| day.0.step(Step::HandIn(copies)))
            .collect()
    }

    fn own<'a>(
        &'a self,
        plan: &'a Plan,
    ) -> impl Iterator<Item = (usize, &'a PlannedKey, Due)> + 'a {
        let keys = plan.keys.iter().zip(&self.0).enumerate();
        keys.filter(|(_, (key, _))| key.who == WhoActs::Household)
            .map(|(place, (key, &day))| (place, key, day))
    }
}

impl PlanStep {
    /// How soon it could turn out to be due, as far as that matters for what goes with it.
    fn could_be(&self) -> Urgency {
        if self.may_be_sooner {
            Urgency::Today
        } else {
            self.urgency
        }
    }
}
