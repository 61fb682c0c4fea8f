//! The page itself, in the order of the visit.

use std::collections::BTreeMap;

use self_check_core::household::brief::{
    Brief, BriefKey, BriefLock, BriefRecipient, KeyRank, MatchedLock, Quote,
};
use self_check_core::household::{DoorId, DoorKind, Household, Label, LockId, Material};
use yew::prelude::*;

use crate::copy::en::household::brief as words;
use crate::copy::en::household::plan as plan_words;
use crate::copy::en::numbers::counted;
use crate::copy::site;
use crate::household::Overview;
use crate::ui::source_line;

/// The sheet.
pub fn sheet(brief: &Brief, overview: &Overview) -> Html {
    let household = &overview.household;
    html! {
        <section class="brief" aria-labelledby="brief">
            <h2 id="brief">{ words::SHEET }</h2>
            if !brief.locks.is_empty() || brief.opened > 0 {
                { first(brief, overview) }
            }
            if !brief.locks.is_empty() {
                { locks(brief, overview) }
            }
            { keys(brief) }
            { quotes(brief, household) }
            <div class="brief-pair">
                <div>
                    <h3>{ words::ASK }</h3>
                    <ul class="to-tick">{ for brief.asked().map(|ask| html! { <li>{ words::ask(ask) }</li> }) }</ul>
                </div>
                if !brief.after.is_empty() {
                    <div>
                        <h3>{ words::AFTER }</h3>
                        <ul class="to-tick">{ for brief.after.iter().map(|&after| html! { <li>{ words::after(after, &brief.old_keys, &brief.outlying) }</li> }) }</ul>
                    </div>
                }
            </div>
            <ul class="sources screen-only">
                { for Brief::SOURCES.iter().map(|source| html! { <li>{ source_line(source) }</li> }) }
            </ul>
            <p class="src">{ site::full_title(words::FOOT) }</p>
        </section>
    }
}

/// Can you get in, is there a working key, does the door shut well: that first.
fn first(brief: &Brief, overview: &Overview) -> Html {
    let readiness = brief.readiness;
    let answer = |answer: Option<bool>| match answer {
        Some(true) => words::YES,
        Some(false) => words::NO,
        None => words::OPEN,
    };
    let with_key = brief.locks.iter().filter(|lock| lock.has_working_key);
    let with_key = with_key.count();
    let working_key = if is_key_in_doubt(brief, with_key > 0) {
        words::ASK_US.to_owned()
    } else {
        words::of(with_key, brief.locks.len())
    };
    html! {
        <>
            <h3>{ words::FIRST }</h3>
            <dl class="brief-first">
                <div><dt>{ words::WE_CAN_GET_IN }</dt><dd>{ answer(readiness.can_get_in) }</dd></div>
                if !brief.locks.is_empty() {
                    <div><dt>{ words::WORKING_KEY_AT_HAND }</dt><dd>{ working_key }</dd></div>
                    <div><dt>{ words::DOOR_SHUTS_WELL }</dt><dd>{ answer(readiness.shuts_well) }</dd></div>
                    <div><dt>{ words::WE_HAVE_PROOF }</dt><dd>{ answer(readiness.has_proof) }</dd></div>
                }
                if let Some(visit) = brief.visit {
                    <div><dt>{ words::VISIT_IS_DUE }</dt><dd>{ words::visit(visit) }</dd></div>
                }
            </dl>
            { to_open(brief, overview) }
            if !brief.locks.is_empty() && readiness.shuts_well != Some(true) {
                <p class="note">{ words::DRAGS }</p>
            }
        </>
    }
}

/// Whether a key that the board tells of helps nobody in just now.
fn is_key_in_doubt(brief: &Brief, is_told_of: bool) -> bool {
    is_told_of && brief.readiness.can_get_in == Some(false)
}

/// Which doors may have to be opened first: none where somebody can get in.
fn to_open(brief: &Brief, overview: &Overview) -> Html {
    if brief.opened == 0 {
        return html! {};
    }
    let shut = brief.locks.iter().enumerate();
    let shut = shut.filter(|(_, lock)| lock.is_shut);
    let shut: Vec<usize> = shut.map(|(place, _)| place).collect();
    let locks = (!shut.is_empty()).then(|| words::locks(&shut));
    let others = brief.to_open.iter();
    let others = others.map(|it| door_name(overview, it.door, it.kind, it.label.as_ref()));
    let all: Vec<String> = locks.into_iter().chain(others).collect();
    html! {
        <>
            <p><strong>
                if all.is_empty() {
                    { words::TO_OPEN_ONE }{ "." }
                } else {
                    { words::TO_OPEN }{ " (" }{ all.join("; ") }{ ")." }
                }
            </strong></p>
            if !brief.to_open.is_empty() {
                <p>{ words::OTHERS_DECIDE }</p>
            }
        </>
    }
}

fn locks(brief: &Brief, overview: &Overview) -> Html {
    let kinds: Vec<String> = brief
        .kinds
        .iter()
        .map(|&(kind, count)| words::of_a_kind(words::kind(kind), count))
        .collect();
    html! {
        <>
            <h3>{ words::LOCKS }{ ": " }{ kinds.join("; ") }</h3>
            <div class="table-scroll" tabindex="0" role="group" aria-label={words::LOCKS}>
                <table class="table table-stacks" role="table">
                    <thead role="rowgroup">
                        <tr role="row">
                            <th scope="col" role="columnheader">{ words::LOCK }</th>
                            { for COLUMNS.iter().map(|name| html! {
                                <th scope="col" role="columnheader">{ name }</th>
                            }) }
                        </tr>
                    </thead>
                    <tbody role="rowgroup">
                        { for brief.locks.iter().enumerate().map(|(place, lock)| lock_row(overview, brief, place, lock)) }
                        { for brief.matched.iter().zip(brief.locks.len()..).map(|(lock, place)| matched_row(overview, brief, place, lock)) }
                    </tbody>
                </table>
            </div>
            { same_keyhole(brief) }
        </>
    }
}

/// What is said of each lock.
const COLUMNS: [&str; 6] = [
    words::WORK,
    words::MADE_OF,
    words::INSIDE,
    words::SIZE,
    words::WORKING_KEY,
    words::NEW_KEY,
];

/// What a door is called: as on the board, but for an own word, which stands there only if ticked in.
fn door_name(overview: &Overview, id: DoorId, kind: DoorKind, label: Option<&Label>) -> String {
    let door = overview.household.door(id);
    if door.is_some_and(|door| door.label.is_none()) {
        return overview.names.door(id).to_owned();
    }
    words::door(kind, label.map(Label::as_str))
}

/// What a lock is called: as its door, with the lock's own number where that door has several.
fn lock_name(overview: &Overview, id: LockId, kind: DoorKind, label: Option<&Label>) -> String {
    let Some(lock) = overview.household.lock(id) else {
        return String::new();
    };
    let door = door_name(overview, lock.door, kind, label);
    overview.names.lock_on(id, &door)
}

/// A lock that is not seen to, but to whose key another shall be set. It is counted on after the others,
/// so that rows with the same name are told apart.
fn matched_row(overview: &Overview, brief: &Brief, place: usize, lock: &MatchedLock) -> Html {
    let cells: [Html; COLUMNS.len()] = [
        words::MATCHED.into(),
        made_of(lock.door, lock.material).into(),
        words::inside(lock.inside).into(),
        words::measure(lock.measure()).into(),
        working_key(brief, lock.has_working_key).into(),
        words::key(lock.key).into(),
    ];
    let name = lock_name(overview, lock.lock, lock.door, lock.label.as_ref());
    let remarks = [words::kind(lock.kind).to_owned()];
    row(place, &name, &remarks, cells)
}

fn lock_row(overview: &Overview, brief: &Brief, place: usize, lock: &BriefLock) -> Html {
    let work = html! {
        <>
            { words::work(lock.action, lock.kind) }
            if let Some(key) = lock.only_if_keyed_to {
                <small>{ words::only_if_keyed_to(&words::key(key)) }</small>
            }
        </>
    };
    let cells: [Html; COLUMNS.len()] = [
        work,
        made_of(lock.door, lock.material).into(),
        inside(lock).into(),
        words::measure(lock.measure()).into(),
        working_key(brief, lock.has_working_key).into(),
        keys_after(brief, lock).into(),
    ];
    let name = lock_name(overview, lock.lock, lock.door, lock.label.as_ref());
    row(place, &name, &remarks(brief, lock), cells)
}

/// What stands below a lock's name: its kind, and what to mind.
fn remarks(brief: &Brief, lock: &BriefLock) -> Vec<String> {
    let of_the_visit = brief.visit.map(|visit| visit.due);
    let other_date = lock.due.filter(|_| !lock.is_of_the_visit);
    let other_date = other_date.filter(|&due| of_the_visit != Some(due));
    let thumb_turn = lock.wants_a_thumb_turn().then_some(words::THUMB_TURN);
    let remarks = [
        Some(words::kind(lock.kind)),
        lock.restricted.map(words::restricted),
        words::keying(lock.keying),
        thumb_turn,
    ];
    let remarks = remarks.into_iter().flatten().map(str::to_owned);
    remarks
        .chain(other_date.map(words::not_of_the_visit))
        .collect()
}

/// On a phone the cells stand below one another, each with the name of its column.
fn row(place: usize, name: &str, remarks: &[String], cells: [Html; COLUMNS.len()]) -> Html {
    html! {
        <tr key={place} role="row">
            <th scope="row" role="rowheader">
                { words::numbered(place, name) }
                { for remarks.iter().map(|remark| html! { <small>{ remark }</small> }) }
            </th>
            { for COLUMNS.iter().zip(cells).map(|(name, cell)| html! {
                <td role="cell"><span class="cell-name" aria-hidden="true">{ name }</span><span>{ cell }</span></td>
            }) }
        </tr>
    }
}

fn made_of(door: DoorKind, material: Option<Material>) -> String {
    match (door, material) {
        (DoorKind::Padlock, None) => words::NONE.to_owned(),
        (_, material) => words::material(material),
    }
}

fn inside(lock: &BriefLock) -> &'static str {
    match lock.inside {
        None if lock.has_no_inside() => words::NONE,
        inside => words::inside(inside),
    }
}

fn working_key(brief: &Brief, is_told_of: bool) -> &'static str {
    match is_told_of {
        told if is_key_in_doubt(brief, told) => words::ASK_US,
        true => words::YES,
        false => words::NO,
    }
}

/// Every key that opens the lock afterwards.
fn keys_after(brief: &Brief, lock: &BriefLock) -> String {
    let keys = lock.keys.iter().map(|&place| {
        let rank = brief.keys.get(place).map(|key| key.rank);
        let is_several = lock.keys.len() > 1;
        let rank = rank.filter(|_| is_several).unwrap_or(KeyRank::Alone);
        words::key_after(&words::key(place), rank)
    });
    let many = lock.keeps_many_keys.then(|| words::AND_MANY.to_owned());
    let keys: Vec<String> = keys.chain(many).collect();
    keys.join(", ")
}

fn same_keyhole(brief: &Brief) -> Html {
    let groups = brief.can_share_as_they_are();
    let groups: Vec<String> = groups.iter().map(|locks| words::locks(locks)).collect();
    if groups.is_empty() && !brief.is_about_sharing() {
        return html! {};
    }
    html! {
        <p class="note">
            if !groups.is_empty() {
                { words::SAME_KEYHOLE }{ " " }{ groups.join("; ") }{ ". " }
            }
            if brief.is_about_sharing() {
                { words::NO_SAME_KEYHOLE }
            }
        </p>
    }
}

fn keys(brief: &Brief) -> Html {
    if brief.keys.is_empty() {
        return html! {};
    }
    html! {
        <>
            <h3>{ words::KEYS }</h3>
            <ul class="brief-keys">
                { for brief.keys.iter().enumerate().map(|(place, key)| html! { <li key={place}>{ key_line(place, key) }</li> }) }
            </ul>
        </>
    }
}

fn key_line(place: usize, key: &BriefKey) -> String {
    let mut line = words::key_of(&words::key(place), key);
    if !key.locks.is_empty() {
        line += &format!(" {} {}", words::OPENS, words::locks(&key.locks));
    }
    if !key.is_new {
        let and = if key.locks.is_empty() { "" } else { "," };
        let stays = if key.is_left {
            words::STAYS_IN_USE
        } else {
            words::STAYS
        };
        line += &format!("{and} {stays}{}", bring(key));
    }
    if key.copies.is_empty() {
        return format!("{line}.");
    }
    // Those who get the same number of copies stand together, counted where their role is the same.
    let mut alike: BTreeMap<u32, BTreeMap<BriefRecipient, usize>> = BTreeMap::new();
    for &(recipient, each) in &key.copies {
        *alike.entry(each).or_default().entry(recipient).or_default() += 1;
    }
    let people = alike
        .into_iter()
        .map(|(each, recipients)| plan_words::Alike {
            each,
            people: recipients.values().sum(),
            names: recipients
                .into_iter()
                .map(|(recipient, people)| words::recipient(recipient, people))
                .collect(),
        });
    let people: Vec<plan_words::Alike> = people.collect();
    format!("{line}. {}.", plan_words::for_whom(key.total, &people))
}

/// A key of today is brought along, if somebody has it.
fn bring(key: &BriefKey) -> &'static str {
    match (key.is_at_hand, key.copies.is_empty()) {
        (false, _) => "",
        (true, true) => words::BRING,
        (true, false) => words::BRING_TO_COPY,
    }
}

fn quotes(brief: &Brief, household: &Household) -> Html {
    let has_told = brief.quotes.iter().any(|quote| quote.told.is_some());
    let included = household.prices().copies_included;
    let extras = extras(brief);
    html! {
        <>
            <h3>{ words::QUOTES }</h3>
            <div class="table-scroll" tabindex="0" role="group" aria-label={words::QUOTES}>
                <table class="table">
                    <thead>
                        <tr>
                            <th scope="col">{ words::FOR }</th>
                            <th scope="col" class="number">{ words::COUNT }</th>
                            if has_told {
                                <th scope="col" class="number">{ words::TOLD }</th>
                            }
                            <th scope="col" class="number">{ words::YOUR_PRICE }</th>
                        </tr>
                    </thead>
                    <tbody>
                        { for brief.quotes.iter().map(|quote| html! {
                            <tr key={quote.item.id()}>
                                <th scope="row">
                                    { words::price_of(quote.item) }
                                    { for words::if_more(quote).into_iter().map(|more| html! { <small>{ more }</small> }) }
                                </th>
                                <td class="number">{ words::planned(quote) }</td>
                                if has_told {
                                    <td class="number">{ quote.told.map(plan_words::price).unwrap_or_default() }</td>
                                }
                                <td class="number to-fill"></td>
                            </tr>
                        }) }
                        { for extras.into_iter().map(|(name, count)| html! {
                            <tr key={name}>
                                <th scope="row">{ name }</th>
                                <td class="number">{ count }</td>
                                if has_told {
                                    <td></td>
                                }
                                <td class="number to-fill"></td>
                            </tr>
                        }) }
                    </tbody>
                </table>
            </div>
            if brief.quotes.iter().any(Quote::is_in_place_of_another) {
                <p class="note">{ words::INSTEAD }</p>
            }
            if has_told && included > 0 {
                <p class="note">{ words::included(included) }</p>
            }
        </>
    }
}

/// What costs extra, and the whole: lines that a price of our own list never stands for.
fn extras(brief: &Brief) -> Vec<(&'static str, String)> {
    let extra = |name, count: usize| (count > 0).then(|| (name, counted(count)));
    let lines = [
        extra(words::KEYED_ALIKE, brief.keyed_alike()),
        extra(words::MASTER_KEYED, brief.master_keyed()),
        (brief.quotes.len() > 1).then(|| (words::TOTAL, String::new())),
    ];
    lines.into_iter().flatten().collect()
}
