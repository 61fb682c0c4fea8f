//! The steps in their order, each with what it is about.

use std::collections::BTreeMap;

use self_check_core::advice::{Action, Urgency};
use self_check_core::household::plan::{Note, Origin, Plan, PlanStep, Recipient, Step, StopGap};
use self_check_core::household::remedy::WhoActs;
use self_check_core::household::{DoorKind, HolderId, KeyCopy, LockId, Place, WayId, WayKind};
use yew::prelude::*;

use super::super::board::due;
use super::super::board::place_words;
use crate::copy::en::household::{board, plan as words};
use crate::copy::{self, site};
use crate::household::Overview;

/// So many lines stand in one step; more are counted.
const MOST_LINES: usize = 24;

/// The list.
pub fn steps(overview: &Overview, plan: &Plan) -> Html {
    html! {
        <section aria-labelledby="steps">
            <h2 id="steps">{ words::STEPS }</h2>
            if plan.safety_first {
                <p class="caution"><strong>{ site::CAUTION }</strong>{ " " }{ site::ONLY_IN_A_PLAN }</p>
            }
            if !plan.safety_first {
                { until_then(overview, plan) }
            }
            <ol class="todo">
                { for together(&plan.steps).map(|steps| match steps {
                    [step] => one(overview, plan, step),
                    steps => handing_over(overview, plan, steps),
                }) }
            </ol>
        </section>
    }
}

/// The steps as they are shown: those that hand keys to one person after the other are one step of
/// the list.
fn together(steps: &[PlanStep]) -> impl Iterator<Item = &[PlanStep]> {
    steps.chunk_by(|one, next| {
        is_for_a_person(&one.step) && is_for_a_person(&next.step) && one.urgency == next.urgency
    })
}

/// How to do it. Where every key of today has gone, none is said to stay in use.
fn how(overview: &Overview, plan: &Plan, step: &Step) -> Option<&'static str> {
    match step {
        Step::HandOver(to, keys)
            if keys
                .iter()
                .all(|&(place, _)| new_for(plan, place, *to) == 0) =>
        {
            Some(words::HAND_ON)
        }
        Step::HandOver(Recipient::Holder(_), _) if !has_a_key_of_today(overview) => {
            Some(words::HAND_OVER)
        }
        Step::Tell { locks, ways, .. } if locks.is_empty() && are_remotes(overview, ways) => {
            Some(words::TELL_OF_A_REMOTE)
        }
        step => words::how(step, is_old_void(overview, plan, step)),
    }
}

fn are_remotes(overview: &Overview, ways: &[WayId]) -> bool {
    let mut ways = ways.iter().filter_map(|&way| overview.household.way(way));
    ways.all(|way| way.kind == WayKind::Remote)
}

fn has_a_key_of_today(overview: &Overview) -> bool {
    let household = &overview.household;
    let is_there = |place: Place| match place {
        Place::Held(by) => household
            .holder(by)
            .is_some_and(|holder| !holder.no_longer_should),
        Place::AtHome { .. } | Place::InKeySafe(_) => true,
        Place::Lost { .. } | Place::Scrapped { .. } => false,
    };
    let mut copies = household.copies();
    copies.any(|(_, copy)| is_there(copy.place) && overview.opens.contains_key(&copy.key))
}

/// Whether there are old keys that open nothing any more; in the key safe, where the step is about one.
fn is_old_void(overview: &Overview, plan: &Plan, step: &Step) -> bool {
    let household = &overview.household;
    let is_void = |copy: &KeyCopy| plan.void.contains(&copy.key);
    match *step {
        Step::HandOver(Recipient::Holder(_), _) => {
            let mut steps = plan.steps.iter();
            steps.any(|step| matches!(step.step, Step::ScrapOldCopies(_)))
        }
        Step::HandOver(Recipient::KeySafe(way), _) => {
            let mut copies = household.copies();
            copies.any(|(_, copy)| copy.place == Place::InKeySafe(way) && is_void(copy))
        }
        _ => false,
    }
}

fn is_for_a_person(step: &Step) -> bool {
    matches!(step, Step::HandOver(Recipient::Holder(_), _))
}

/// New keys for several people: a line for all who get the same.
fn handing_over(overview: &Overview, plan: &Plan, steps: &[PlanStep]) -> Html {
    let Some(first) = steps.first() else {
        return html! {};
    };
    let mut each: BTreeMap<HolderId, Vec<String>> = BTreeMap::new();
    for step in steps {
        if let Step::HandOver(Recipient::Holder(holder), _) = &step.step {
            let keys = each.entry(*holder).or_default();
            keys.extend(about(overview, plan, &step.step));
        }
    }
    let people = each.len();
    let mut places: BTreeMap<Vec<String>, usize> = BTreeMap::new();
    let mut alike: Vec<(Vec<String>, Vec<HolderId>)> = Vec::new();
    for (holder, keys) in each {
        let place = *places.entry(keys.clone()).or_insert(alike.len());
        match alike.get_mut(place) {
            Some((_, people)) => people.push(holder),
            None => alike.push((keys, vec![holder])),
        }
    }
    let line = |(keys, people): &(Vec<String>, Vec<HolderId>)| {
        html! {
            <li>
                <b>{ overview.names.holders(people.iter().copied()) }</b>{ ". " }
                if people.len() > 1 {
                    { words::EACH }{ ": " }
                }
                { keys.join("; ") }
            </li>
        }
    };
    let is_new = |step: &PlanStep| how(overview, plan, &step.step) != Some(words::HAND_ON);
    let told = steps.iter().find(|step| is_new(step)).unwrap_or(first);
    html! {
        <li>
            { due(first.urgency, first.may_be_sooner) }
            <h3>{ words::keys_for(people) }</h3>
            <ul class="about-lines">{ for alike.iter().map(line) }</ul>
            if let Some(how) = how(overview, plan, &told.step) {
                <p>{ how }</p>
            }
        </li>
    }
}

fn one(overview: &Overview, plan: &Plan, step: &PlanStep) -> Html {
    let advice = step.step.action().map(copy::action);
    let how = how(overview, plan, &step.step).or(advice.map(|advice| advice.how));
    let cautions = cautions(overview, plan, &step.step);
    let asks_for_a_copy = is_without_a_key(overview, plan, &step.step);
    html! {
        <li>
            { due(step.urgency, step.may_be_sooner) }
            <h3>{ words::step(&step.step, &overview.names) }</h3>
            { lines(about(overview, plan, &step.step)) }
            if let Some(how) = how {
                <p>{ how }</p>
            }
            if asks_for_a_copy {
                <p>{ words::ASK_FOR_A_COPY }</p>
            }
            { for cautions.into_iter().map(|caution| html! {
                <p class="caution"><strong>{ site::CAUTION }</strong>{ " " }{ caution }</p>
            }) }
        </li>
    }
}

/// What a step is about, line by line.
fn about(overview: &Overview, plan: &Plan, step: &Step) -> Vec<String> {
    let names = &overview.names;
    let copy = |id: &_| {
        let key = overview.household.copy(*id).map(|copy| copy.key);
        let key = key.map(|key| names.key_in_a_row(key)).unwrap_or_default();
        format!("{}: {}", board::key_to(&key), place_words(overview, *id))
    };
    let planned = |place: usize| key_name(overview, plan, place);
    match step {
        Step::LocksmithVisit(locks) | Step::ReplaceSmallLocks(locks) => locks
            .iter()
            .map(|&lock| work_line(overview, plan, lock))
            .collect(),
        Step::EmptyKeySafes(ways) => ways.iter().map(|&way| names.way(way).to_owned()).collect(),
        Step::ChangeWays(_, ways) => ways
            .iter()
            .map(|&way| way_line(overview, plan, way))
            .collect(),
        Step::Tell { locks, ways, .. } | Step::Replied { locks, ways, .. } => {
            let locks = locks.iter().map(|&lock| names.lock(lock).to_owned());
            locks
                .chain(ways.iter().map(|&way| names.way(way).to_owned()))
                .collect()
        }
        Step::LookAgainIndoors { copies, remotes } => {
            let remotes = remotes.iter().map(|&way| names.way(way).to_owned());
            copies.iter().map(copy).chain(remotes).collect()
        }
        Step::HandIn(copies) | Step::GetCopiesBack(copies) => copies.iter().map(copy).collect(),
        Step::CutCopies(places) => places
            .iter()
            .map(|&place| {
                let key = plan.keys.get(place);
                let included = overview.household.prices().copies_included;
                let included = plan.copies_that_come_with_it(place, included);
                let total = key.map_or(0, |key| key.copy_count());
                format!(
                    "{}: {}",
                    planned(place),
                    words::copies_with(total, included)
                )
            })
            .collect(),
        Step::HandOver(to, keys) => keys
            .iter()
            .map(|&(place, _)| {
                let copies = sources(overview, plan, place, *to);
                format!("{}: {}", planned(place), words::copies_from(&copies))
            })
            .collect(),
        Step::ChangedByOthers { keys, old } => {
            let new = keys
                .iter()
                .map(|&place| format!("{}: {}", words::FROM_THEM, planned(place)));
            let old = old.iter().map(|&key| {
                let key = board::key_to(&names.key_in_a_row(key));
                format!("{}: {key}", words::BACK_TO_THEM)
            });
            new.chain(old).collect()
        }
        Step::ScrapOldCopies(keys) => keys
            .iter()
            .map(|&key| board::key_to(&names.key_in_a_row(key)))
            .collect(),
        Step::GetIn(doors) => doors
            .iter()
            .map(|&door| names.door(door).to_owned())
            .collect(),
        Step::StopGap => gap_lines(overview, plan, |gap| gap.reply.is_none()),
        Step::PlanWithSupport | Step::CallPolice | Step::AskInsurer | Step::TakeNewKeys => {
            Vec::new()
        }
    }
}

/// How many copies of a planned key are cut for somebody.
fn new_for(plan: &Plan, place: usize, to: Recipient) -> u64 {
    let copies = plan.keys.get(place).map(|key| key.copies.iter());
    let own = copies
        .into_iter()
        .flatten()
        .filter(|(for_whom, _)| *for_whom == to);
    own.map(|&(_, count)| u64::from(count)).sum()
}

/// Where the copies of a planned key for somebody come from.
fn sources(
    overview: &Overview,
    plan: &Plan,
    place: usize,
    to: Recipient,
) -> Vec<(words::Source, u64)> {
    let handed_on = plan.keys.get(place).map(|key| key.handed_on.iter());
    let own = handed_on
        .into_iter()
        .flatten()
        .filter(|&&(_, for_whom)| for_whom == to);
    let (mut from_home, mut handed_in) = (0, 0);
    for &(copy, _) in own {
        match overview.household.copy(copy).map(|copy| copy.place) {
            Some(Place::Held(_)) => handed_in += 1,
            _ => from_home += 1,
        }
    }
    let all = [
        (words::Source::New, new_for(plan, place, to)),
        (words::Source::Home, from_home),
        (words::Source::HandedIn, handed_in),
    ];
    all.into_iter().filter(|&(_, count)| count > 0).collect()
}

/// Whether somebody for whom these others would make a new key has none of today's.
fn is_without_a_key(overview: &Overview, plan: &Plan, step: &Step) -> bool {
    let (Step::Tell { locks, .. } | Step::Replied { locks, .. }) = step else {
        return false;
    };
    let has_one = |holder: HolderId, locks: &[LockId]| {
        let mut copies = overview.household.copies();
        copies.any(|(_, copy)| {
            let opens = |id: &LockId| {
                let lock = overview.household.lock(*id);
                lock.is_some_and(|lock| lock.keys.contains(&copy.key))
            };
            copy.place == Place::Held(holder) && locks.iter().any(opens)
        })
    };
    let theirs = plan.keys.iter().filter(|key| {
        key.who != WhoActs::Household && key.locks.iter().any(|lock| locks.contains(lock))
    });
    theirs.into_iter().any(|key| {
        key.copies.iter().any(|&(recipient, _)| {
            matches!(recipient, Recipient::Holder(holder) if !has_one(holder, &key.locks))
        })
    })
}

/// A key of the plan: a new one by its number and what it opens, a kept one by what it opens.
pub fn key_name(overview: &Overview, plan: &Plan, place: usize) -> String {
    let Some(key) = plan.keys.get(place) else {
        return String::new();
    };
    match key.origin {
        Origin::Kept(key) => board::key_to(&overview.names.key_in_a_row(key)),
        Origin::New { .. } => {
            let keys = plan.keys.iter().enumerate().take(place + 1);
            let numbered = keys.filter(|&(place, key)| {
                matches!(key.origin, Origin::New { .. }) && !plan.is_left(place)
            });
            let number = numbered.count();
            let locks = overview
                .names
                .locks(key.locks.iter().copied().take(MOST_LINES));
            format!("{} ({})", words::new_key(number), locks)
        }
    }
}

fn work_line(overview: &Overview, plan: &Plan, lock: LockId) -> String {
    let name = overview.names.lock(lock);
    let work = plan.works.iter().find(|work| work.lock == lock);
    let verbs = work.into_iter().flat_map(|work| work.actions.iter());
    let kind = overview.household.lock(lock).map(|lock| lock.kind);
    let verbs: Vec<&str> = verbs.map(|&action| words::verb_for(action, kind)).collect();
    let kept = work.and_then(|work| work.only_if_keyed_to);
    let kept = kept.map(|key| board::key_to(&overview.names.key_in_a_row(key)));
    let only = kept.map(|key| format!(", but {}", words::only_if_keyed_to(&key)));
    format!("{name}: {}{}", verbs.join("; "), only.unwrap_or_default())
}

fn way_line(overview: &Overview, plan: &Plan, way: WayId) -> String {
    let names = &overview.names;
    let work = plan.ways.iter().find(|work| work.way == way);
    let (Some(work), Some(part)) = (work, overview.household.way(way)) else {
        return names.way(way).to_owned();
    };
    let named = |people: &mut dyn Iterator<Item = HolderId>| {
        let people: Vec<HolderId> = people.take(MOST_LINES).collect();
        (!people.is_empty()).then(|| names.holders(people))
    };
    let has_lost = |holder: &HolderId| part.lost_by.contains_key(holder);
    let stays = work.stays_with.iter().copied();
    let lines = [
        (words::WITHOUT, named(&mut work.without.iter().copied())),
        (
            match part.given_away {
                Some(_) if part.kind == WayKind::Remote => words::SOME_STILL_HAVE_IT,
                _ => words::stays_with(part.kind),
            },
            named(&mut stays.clone().filter(|holder| !has_lost(holder))),
        ),
        (words::NEW_ONE_FOR, named(&mut stays.filter(has_lost))),
    ];
    // On the safety branch nobody is told anything here.
    let told = if plan.safety_first { 1 } else { lines.len() };
    let mut line = names.way(way).to_owned();
    for (title, people) in lines.into_iter().take(told) {
        if let Some(people) = people {
            line += &format!(". {title}: {people}");
        }
    }
    line
}

/// What could hurt somebody: once for each kind of work in the step.
fn cautions(overview: &Overview, plan: &Plan, step: &Step) -> Vec<String> {
    let mut actions: Vec<Action> = step.action().into_iter().collect();
    if let Step::LocksmithVisit(locks) = step {
        for work in plan.works.iter().filter(|work| locks.contains(&work.lock)) {
            actions.extend(
                work.actions
                    .iter()
                    .filter(|action| !actions.contains(action))
                    .copied()
                    .collect::<Vec<_>>(),
            );
        }
    }
    let mut cautions: Vec<String> = Vec::new();
    for action in actions {
        let Some(caution) = copy::action(action).may_hurt else {
            continue;
        };
        let caution = match (action, ways_out(overview, plan)) {
            (Action::ChangeCylinder, Some(locks)) => {
                format!("{} {caution}", words::thumb_turn(&locks))
            }
            _ => caution.to_owned(),
        };
        if !cautions.contains(&caution) {
            cautions.push(caution);
        }
    }
    cautions
}

/// The locks that get a new cylinder and whose doors may be ways out, where a thumb-turn is wanted.
fn ways_out(overview: &Overview, plan: &Plan) -> Option<String> {
    let locks = plan.notes.iter().filter_map(|note| match note {
        Note::ThumbTurn(lock) => Some(*lock),
        _ => None,
    });
    let locks: Vec<LockId> = locks.collect();
    let named = overview.names.locks(locks.iter().copied().take(MOST_LINES));
    match (locks.len(), locks.len().saturating_sub(MOST_LINES)) {
        (0, _) => None,
        (_, 0) => Some(named),
        (_, more) => Some(format!("{named}, {}", board::and_more(more))),
    }
}

fn lines(lines: Vec<String>) -> Html {
    if lines.is_empty() {
        return html! {};
    }
    let more = lines.len().saturating_sub(MOST_LINES);
    html! {
        <ul class="about-lines">
            { for lines.into_iter().take(MOST_LINES).map(|line| html! { <li>{ line }</li> }) }
            if more > 0 {
                <li>{ board::and_more(more) }</li>
            }
        </ul>
    }
}

/// What holds each door until the visit, before the steps it bridges. Where a door cannot wait, it is
/// a step of the list. A door that can wait long needs nothing; nor does anybody stay in for a shed.
fn until_then(overview: &Overview, plan: &Plan) -> Html {
    let is_a_step = plan.steps.iter().any(|step| step.step == Step::StopGap);
    let all = gap_lines(overview, plan, |gap| gap.reply.is_some() || !is_a_step);
    if all.is_empty() {
        return html! {};
    }
    html! {
        <>
            <h3 class="until-then">{ words::UNTIL_THEN }</h3>
            { lines(all) }
            if let Some(caution) = copy::action(Action::StopGap).may_hurt {
                <p class="caution"><strong>{ site::CAUTION }</strong>{ " " }{ caution }</p>
            }
        </>
    }
}

fn gap_lines(overview: &Overview, plan: &Plan, is_told: impl Fn(&StopGap) -> bool) -> Vec<String> {
    let gaps = plan.stop_gaps.iter().filter(|gap| is_told(gap));
    let told = gaps.filter(|gap| gap.could_be >= Urgency::Soon);
    let line = |gap: &StopGap| {
        let what = until_its_day(overview, gap)?;
        Some(format!("{}: {what}", overview.names.door(gap.door)))
    };
    told.filter_map(line).collect()
}

/// What bridges the time at a door, if anything does.
fn until_its_day(overview: &Overview, gap: &StopGap) -> Option<&'static str> {
    let kind = overview.household.door(gap.door)?.kind;
    if !gap.holding.is_empty() {
        return Some(words::LOCK_THESE);
    }
    match kind {
        // Until others act, nobody can stay in for ever.
        kind if kind.leads_into_a_home()
            && (gap.could_be < Urgency::Today || gap.reply.is_some()) =>
        {
            Some(words::NOT_ALONE)
        }
        kind if kind.leads_into_a_home() => Some(words::STAY_IN),
        DoorKind::Workshop
        | DoorKind::Shed
        | DoorKind::Store
        | DoorKind::Garage
        | DoorKind::Cabinet => Some(words::TAKE_OUT),
        _ => None,
    }
}
