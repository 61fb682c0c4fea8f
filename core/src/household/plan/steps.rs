//! Everything in the order in which it is done.

use std::cmp::Reverse;
use std::collections::BTreeMap;

use crate::advice::{Action, Urgency};

use super::super::index::Index;
use super::super::kinds::{Reply, WayKind};
use super::super::remedy::WhoActs;
use super::super::{CopyId, DoorId, KeyId, LockId, Place, WayId};
use super::days::KeyDays;
use super::losses::Losses;
use super::{Origin, Plan, Recipient, StopGap};

/// One step with how soon it is due.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PlanStep {
    /// What to do.
    pub step: Step,
    /// How soon.
    pub urgency: Urgency,
    /// Whether it may be sooner: how something was lost is not said yet.
    pub may_be_sooner: bool,
}

/// What to do in one go.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Step {
    /// Plan with a local support service before changing anything.
    PlanWithSupport,
    /// Report the theft, or the loss with the address, to the police.
    CallPolice,
    /// See whether somebody can get in at these doors, to which no key is at hand, and have them opened
    /// otherwise.
    GetIn(Vec<DoorId>),
    /// Look again indoors for what was mislaid there.
    LookAgainIndoors {
        /// The copies.
        copies: Vec<CopyId>,
        /// The ways in whose remotes were mislaid.
        remotes: Vec<WayId>,
    },
    /// Bridge the time until the visit, see [`Plan::stop_gaps`].
    StopGap,
    /// Take the keys out of these key safes, whose code is out, and see whether one is gone. Those in which
    /// no copy is put down are left out.
    EmptyKeySafes(Vec<WayId>),
    /// See that nobody who should not opens by these ways in, all of one kind: change the code, remove the
    /// user, delete the remote.
    ChangeWays(WayKind, Vec<WayId>),
    /// Tell whoever's matter these locks and ways are.
    Tell {
        /// Whom: one of the actions that tell somebody or leave it to the system's owner.
        action: Action,
        /// The locks.
        locks: Vec<LockId>,
        /// The ways in.
        ways: Vec<WayId>,
    },
    /// Those who decide about these locks and ways were told: what they make of it, and what is left to do.
    Replied {
        /// What came of it.
        reply: Reply,
        /// The locks.
        locks: Vec<LockId>,
        /// The ways in.
        ways: Vec<WayId>,
    },
    /// Have these locks seen to by a locksmith, in one visit.
    LocksmithVisit(Vec<LockId>),
    /// Replace these small locks.
    ReplaceSmallLocks(Vec<LockId>),
    /// Take the new keys into one's own hands. Where safety comes first that is all that is said of them:
    /// who else gets one is part of the plan made with the service.
    TakeNewKeys,
    /// Have copies cut of these keys, places in [`Plan::keys`]: those of the visit are cut there.
    CutCopies(Vec<usize>),
    /// Hand over these copies, new ones and those handed on: places in [`Plan::keys`], each with how many.
    HandOver(Recipient, Vec<(usize, u32)>),
    /// Have these copies of kept keys handed in by people who will not need them.
    HandIn(Vec<CopyId>),
    /// Ask for these copies back. A returned key proves nothing; the new lock does.
    GetCopiesBack(Vec<CopyId>),
    /// If others change their locks: the new keys come from them, and the old ones go back to them.
    /// Until then the old ones stay in use.
    ChangedByOthers {
        /// The new keys, places in [`Plan::keys`].
        keys: Vec<usize>,
        /// The old keys at hand, of which none is the household's to destroy.
        old: Vec<KeyId>,
    },
    /// Destroy what is left of these keys, once each was tried in every other lock.
    ScrapOldCopies(Vec<KeyId>),
    /// Ask the insurer.
    AskInsurer,
}

impl Step {
    /// The action of the advice it stands for, if there is just one.
    pub fn action(&self) -> Option<Action> {
        match self {
            Self::PlanWithSupport => Some(Action::PlanWithSupport),
            Self::CallPolice => Some(Action::CallPolice),
            Self::LookAgainIndoors { .. } => Some(Action::LookAgainIndoors),
            Self::StopGap => Some(Action::StopGap),
            Self::ChangeWays(..) => Some(Action::ChangeCodesAndUsers),
            Self::Tell { action, .. } => Some(*action),
            Self::ReplaceSmallLocks(_) => Some(Action::ReplaceSmallLock),
            Self::CutCopies(_) => Some(Action::CutPlainCopies),
            Self::GetCopiesBack(_) => Some(Action::GetCopiesBack),
            Self::AskInsurer => Some(Action::AskInsurer),
            Self::GetIn(_)
            | Self::EmptyKeySafes(_)
            | Self::Replied { .. }
            | Self::TakeNewKeys
            | Self::LocksmithVisit(_)
            | Self::HandOver(..)
            | Self::HandIn(_)
            | Self::ChangedByOthers { .. }
            | Self::ScrapOldCopies(_) => None,
        }
    }

    /// Whether it must not be said beside a person who makes somebody uneasy: it would chase
    /// copies, hand them round or print a list of who has them.
    fn is_unsafe_beside_a_feared_person(&self) -> bool {
        matches!(
            self,
            Self::EmptyKeySafes(_)
                | Self::CutCopies(_)
                | Self::HandOver(..)
                | Self::HandIn(_)
                | Self::GetCopiesBack(_)
                | Self::ChangedByOthers { .. }
        )
    }
}

/// First what cannot wait, of that first what takes minutes, and what has to be asked before work is ordered, then the works by urgency,
/// each before the copies that go with it. Looking again and asking for copies back come before the works,
/// since they may save one, but wait for whatever is more urgent. The old copies are destroyed when
/// everything is done that is as urgent; what others have yet to do comes at the end.
pub(super) fn steps(index: &Index<'_>, plan: &Plan) -> Vec<PlanStep> {
    let losses = Losses::of(index);
    let works = works(index, plan);
    let days = KeyDays::of(plan, &works);
    let (in_minutes, works) = works.into_iter().partition(is_done_in_minutes);
    let mut steps = at_once(index, plan, &losses, in_minutes);
    let before_work = steps.len();
    steps.extend(works);
    steps.extend(days.cut(plan));
    steps.extend(days.hand_in(index, plan));
    steps.extend(days.hand_over(plan));
    // What is due later waits, whatever comes after it today; at the same time locks come before copies
    // and copies, cut or taken in, before handing them over.
    if let Some(later) = steps.get_mut(before_work..) {
        later.sort_by_key(|step| Reverse(step.urgency));
    }
    if !losses.to_get_back.is_empty() {
        let step = PlanStep::due(Step::GetCopiesBack(losses.to_get_back), Urgency::Soon);
        insert_in_time(&mut steps, before_work, step);
    }
    if !losses.mislaid.is_empty() || !losses.mislaid_remotes.is_empty() {
        let step = Step::LookAgainIndoors {
            copies: losses.mislaid,
            remotes: losses.mislaid_remotes,
        };
        insert_in_time(&mut steps, before_work, PlanStep::due(step, LOOK_AGAIN));
    }
    let old = still_there(index, &plan.void);
    if !old.is_empty() {
        let step = last_of(plan, &old).step(Step::ScrapOldCopies(old));
        let last = steps
            .iter()
            .rposition(|other| other.urgency >= step.urgency);
        steps.insert(last.map_or(0, |last| last + 1), step);
    }
    steps.extend(changed_by_others(index, plan));
    if plan.safety_first {
        take_new_keys(&mut steps, plan);
        steps.retain(|step| !step.step.is_unsafe_beside_a_feared_person());
    }
    steps
}

/// A key mislaid indoors is looked for at once, as a check advises: it may save everything else.
const LOOK_AGAIN: Urgency = Urgency::Today;

/// Nobody is left without a key by the new lock: the first step that has new keys cut says only that.
fn take_new_keys(steps: &mut [PlanStep], plan: &Plan) {
    let is_new = |&place: &usize| {
        let key = plan.keys.get(place);
        key.is_some_and(|key| matches!(key.origin, Origin::New { .. }))
    };
    let cuts_new_keys = |step: &&mut PlanStep| match &step.step {
        Step::CutCopies(keys) => keys.iter().any(is_new),
        _ => false,
    };
    if let Some(first) = steps.iter_mut().find(cuts_new_keys) {
        first.step = Step::TakeNewKeys;
    }
}

/// What cannot wait and takes the household minutes: a code changed, a remote deleted.
fn is_done_in_minutes(step: &PlanStep) -> bool {
    step.urgency == Urgency::Today
        && matches!(step.step, Step::EmptyKeySafes(_) | Step::ChangeWays(..))
}

/// What comes before any work that is ordered.
fn at_once(
    index: &Index<'_>,
    plan: &Plan,
    losses: &Losses,
    in_minutes: Vec<PlanStep>,
) -> Vec<PlanStep> {
    let mut steps = Vec::new();
    if plan.safety_first {
        steps.push(PlanStep::due(Step::PlanWithSupport, Urgency::Today));
    }
    if !plan.shut.is_empty() {
        let step = Step::GetIn(plan.shut.clone());
        steps.push(PlanStep::due(step, Urgency::Today));
    }
    steps.extend(in_minutes);
    if losses.is_for_the_police {
        steps.push(PlanStep::due(Step::CallPolice, Urgency::Today));
    }
    steps.extend(stop_gap(index, plan));
    if losses.is_for_the_police {
        let locks = plan.works.iter().map(|work| work.urgency);
        let asked = locks.chain(plan.ways.iter().map(|way| way.urgency));
        let urgency = asked.fold(Urgency::Soon, Urgency::max);
        steps.push(PlanStep::due(Step::AskInsurer, urgency));
    }
    steps
}

/// Bridging the time is a step where it cannot wait, or where somebody has to get in first.
fn stop_gap(index: &Index<'_>, plan: &Plan) -> Option<PlanStep> {
    let is_bridged = |gap: &&StopGap| {
        let door = index.household.door(gap.door);
        !gap.holding.is_empty() || door.is_some_and(|door| door.kind.leads_into_a_home())
    };
    let gaps = || plan.stop_gaps.iter().filter(|gap| gap.reply.is_none());
    if gaps().any(|gap| gap.urgency == Urgency::Today) {
        return Some(PlanStep::due(Step::StopGap, Urgency::Today));
    }
    let mut due = Due::default();
    for gap in gaps().filter(is_bridged) {
        due.add(gap.urgency, gap.could_be);
    }
    let is_due = due.urgency >= Some(Urgency::Soon) && !plan.shut.is_empty();
    due.of(Step::StopGap).filter(|_| is_due)
}

/// Puts a step in at `from` or, if anything after it is more urgent, behind that.
fn insert_in_time(steps: &mut Vec<PlanStep>, from: usize, step: PlanStep) {
    let more_urgent = steps.iter().rposition(|other| other.urgency > step.urgency);
    let place = more_urgent.map_or(from, |last| from.max(last + 1));
    steps.insert(place.min(steps.len()), step);
}

impl PlanStep {
    /// A step that is due then, whatever is not said yet.
    fn due(step: Step, urgency: Urgency) -> Self {
        Self {
            step,
            urgency,
            may_be_sooner: false,
        }
    }
}

/// How soon a step is due that does several things, and how soon it could turn out to be: as soon as
/// the most urgent of them.
#[derive(Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Due {
    urgency: Option<Urgency>,
    could_be: Option<Urgency>,
}

impl Due {
    pub(super) fn add(&mut self, urgency: Urgency, could_be: Urgency) {
        self.urgency = self.urgency.max(Some(urgency));
        self.could_be = self.could_be.max(Some(could_be));
    }

    /// The step; when convenient where nothing asks for it.
    pub(super) fn step(self, step: Step) -> PlanStep {
        let urgency = self.urgency.unwrap_or(Urgency::WhenConvenient);
        PlanStep {
            step,
            urgency,
            may_be_sooner: self.could_be > Some(urgency),
        }
    }

    /// The step, if it does anything.
    fn of(self, step: Step) -> Option<PlanStep> {
        self.urgency.map(|_| self.step(step))
    }
}

fn works(index: &Index<'_>, plan: &Plan) -> Vec<PlanStep> {
    let mut told: BTreeMap<Action, (Due, Vec<LockId>, Vec<WayId>)> = BTreeMap::new();
    let mut replied: BTreeMap<Reply, (Due, Vec<LockId>, Vec<WayId>)> = BTreeMap::new();
    let mut emptied: (Due, Vec<WayId>) = Default::default();
    let mut changed: BTreeMap<WayKind, (Due, Vec<WayId>)> = BTreeMap::new();
    let mut visit: (Due, Vec<LockId>) = Default::default();
    let mut small: (Due, Vec<LockId>) = Default::default();
    for way in &plan.ways {
        // What hangs at another's home is for its owner to see to.
        let Some(kind) = index.household.way(way.way).map(|way| way.kind) else {
            continue;
        };
        if let Some(reply) = way.reply {
            let entry = replied.entry(reply).or_default();
            entry.0.add(way.urgency, way.could_be);
            entry.2.push(way.way);
            continue;
        }
        if kind == WayKind::KeySafe
            && way.action != Action::TellOwner
            && !index.in_safe(way.way).is_empty()
        {
            emptied.0.add(way.urgency, way.could_be);
            emptied.1.push(way.way);
        }
        if way.action == Action::ChangeCodesAndUsers {
            let entry = changed.entry(kind).or_default();
            entry.0.add(way.urgency, way.could_be);
            entry.1.push(way.way);
        } else {
            let entry = told.entry(way.action).or_default();
            entry.0.add(way.urgency, way.could_be);
            entry.2.push(way.way);
        }
    }
    for work in &plan.works {
        if let Some(reply) = work.reply {
            let entry = replied.entry(reply).or_default();
            entry.0.add(work.urgency, work.could_be);
            entry.1.push(work.lock);
            continue;
        }
        if work.who != WhoActs::Household {
            for &action in &work.actions {
                let entry = told.entry(action).or_default();
                entry.0.add(work.urgency, work.could_be);
                entry.1.push(work.lock);
            }
            continue;
        }
        let part = if work.needs_a_locksmith() {
            &mut visit
        } else {
            &mut small
        };
        part.0.add(work.urgency, work.could_be);
        part.1.push(work.lock);
    }
    let mut steps: Vec<PlanStep> = Vec::new();
    steps.extend(emptied.0.of(Step::EmptyKeySafes(emptied.1)));
    for (kind, (due, ways)) in changed {
        steps.extend(due.of(Step::ChangeWays(kind, ways)));
    }
    for (action, (due, locks, ways)) in told {
        steps.extend(due.of(Step::Tell {
            action,
            locks,
            ways,
        }));
    }
    for (reply, (due, locks, ways)) in replied {
        steps.extend(due.of(Step::Replied { reply, locks, ways }));
    }
    steps.extend(visit.0.of(Step::LocksmithVisit(visit.1)));
    steps.extend(small.0.of(Step::ReplaceSmallLocks(small.1)));
    steps.sort_by_key(|step| Reverse(step.urgency));
    steps
}

/// How soon old keys can be destroyed: when the last of the locks that took them no longer does.
fn last_of(plan: &Plan, old: &[KeyId]) -> Due {
    let works = plan.works.iter();
    let of_them = works.filter(|work| work.drops.iter().any(|key| old.contains(key)));
    let last = of_them.min_by_key(|work| (work.urgency, work.could_be));
    let mut due = Due::default();
    if let Some(last) = last {
        due.add(last.urgency, last.could_be);
    }
    due
}

/// New keys from others and old ones for them. It is due no sooner than they can have acted.
fn changed_by_others(index: &Index<'_>, plan: &Plan) -> Option<PlanStep> {
    let is_theirs = |place: &usize| {
        let key = plan.keys.get(*place);
        key.is_some_and(|key| key.who != WhoActs::Household) && !plan.is_left(*place)
    };
    let keys: Vec<usize> = (0..plan.keys.len()).filter(is_theirs).collect();
    let old = still_there(index, &plan.given_back);
    let is_told = !keys.is_empty() || !old.is_empty();
    is_told.then(|| PlanStep::due(Step::ChangedByOthers { keys, old }, Urgency::WhenConvenient))
}

/// The keys of which a copy is anywhere but lost or destroyed.
fn still_there(index: &Index<'_>, keys: &[KeyId]) -> Vec<KeyId> {
    let keys = keys.iter().copied();
    keys.filter(|&key| is_still_there(index, key)).collect()
}

fn is_still_there(index: &Index<'_>, key: KeyId) -> bool {
    let copies = index.copies_of(key).iter();
    let mut places = copies.filter_map(|&copy| index.household.copy(copy));
    places.any(|copy| !matches!(copy.place, Place::Lost { .. } | Place::Scrapped { .. }))
}
