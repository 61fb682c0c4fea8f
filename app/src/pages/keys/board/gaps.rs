//! Who can open what, beside what they need: a table where the home is small, a list where it is
//! not.

use std::rc::Rc;

use self_check_core::household::{DoorId, Gap, HolderId, Opening};
use yew::prelude::*;

use super::super::forms::NeedsForm;
use super::{Desk, Open};
use crate::copy::en::household::board as words;
use crate::household::Overview;

/// The table holds so many doors and people. Larger homes have a list of those whose keys and needs
/// part.
const MOST_DOORS: usize = 12;
const MOST_PEOPLE: usize = 24;
/// So many lines of the list are shown.
const MOST_LINES: usize = 24;
/// So many doors are named in a line.
const MOST_NAMED: usize = 8;

/// So many people are asked about on one sheet.
const MOST_ASKED: usize = 12;
/// The id of the heading.
const HEADING: &str = "gaps";

/// What a person can do at a door.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Access {
    Opens,
    Beyond,
    Without,
    Part,
    Nothing,
}

/// The section.
pub fn gaps(desk: &Desk) -> Html {
    let overview = &desk.overview;
    let household = &overview.household;
    if household.doors().len() == 0 || household.holders().len() == 0 {
        return html! {};
    }
    let is_small =
        household.doors().len() <= MOST_DOORS && household.holders().len() <= MOST_PEOPLE;
    html! {
        <section aria-labelledby={HEADING}>
            <h2 id={HEADING} tabindex="-1">{ words::GAPS }</h2>
            <p class="hint">{ words::GAPS_LEDE }</p>
            if is_small {
                { table(overview) }
            }
            if overview.gaps().is_empty() {
                <p>{ none(overview) }</p>
            } else if !is_small {
                <ul class="took">
                    { for overview.gaps().iter().take(MOST_LINES).map(|gap| line(overview, gap)) }
                </ul>
                if overview.gaps().len() > MOST_LINES {
                    <p class="note">{ words::shown(MOST_LINES, overview.gaps().len()) }</p>
                }
            }
            { not_said(desk) }
        </section>
    }
}

/// What can be claimed where nothing shows: only as much as was said.
fn none(overview: &Overview) -> &'static str {
    let holders = overview.household.holders();
    let asked = holders
        .filter(|(_, holder)| !holder.no_longer_should)
        .count();
    match overview.needs_not_said().count() {
        0 => words::GAPS_NONE,
        not_said if not_said == asked => words::GAPS_NOT_SAID,
        _ => words::GAPS_NONE_SAID,
    }
}

/// Those of whom nobody has said what they need, and the sheet on which it is said.
fn not_said(desk: &Desk) -> Html {
    let overview = &desk.overview;
    let all: Vec<HolderId> = overview.needs_not_said().collect();
    if all.is_empty() {
        return html! {};
    }
    if desk.is_open(Open::Needs) {
        let people: Vec<HolderId> = all.into_iter().take(MOST_ASKED).collect();
        return html! {
            <NeedsForm overview={Rc::clone(overview)} {people} onclose={desk.closer(HEADING.into(), HEADING)} />
        };
    }
    let named = overview.names.holders(all.iter().take(MOST_NAMED).copied());
    let more = all.len().saturating_sub(MOST_NAMED);
    html! {
        <>
            <p class="note">
                { words::NOT_SAID_OF }{ ": " }{ named }
                if more > 0 {
                    { ", " }{ words::and_more(more) }
                }
                { "." }
            </p>
            <p class="row">
                { desk.opener(Open::Needs, "say-needs".into(), "press-quiet", words::SAY_NEEDS, "") }
            </p>
        </>
    }
}

fn line(overview: &Overview, gap: &Gap) -> Html {
    let row = |title: &str, doors: &[DoorId]| {
        if doors.is_empty() {
            return html! {};
        }
        let named = overview.names.doors(doors.iter().take(MOST_NAMED).copied());
        let more = doors.len().saturating_sub(MOST_NAMED);
        html! {
            <p class="note">
                { title }{ ": " }{ named }
                if more > 0 {
                    { ", " }{ words::and_more(more) }
                }
            </p>
        }
    };
    html! {
        <li key={gap.holder.number()}>
            <b>{ overview.names.holder(gap.holder) }</b>
            { row(words::BEYOND, &gap.beyond) }
            { row(words::WITHOUT, &gap.without) }
        </li>
    }
}

fn table(overview: &Overview) -> Html {
    let doors: Vec<DoorId> = overview.household.doors().map(|(id, _)| id).collect();
    let people = overview.household.holders().map(|(id, _)| id);
    html! {
        <>
            <div class="table-scroll" tabindex="0" role="group" aria-label={words::TABLE}>
                <table class="table access">
                    <caption>{ words::TABLE }</caption>
                    <thead>
                        <tr>
                            <th scope="col">{ words::PERSON }</th>
                            { for doors.iter().map(|&door| html! {
                                <th scope="col" class="upright"><span>{ overview.names.door(door) }</span></th>
                            }) }
                        </tr>
                    </thead>
                    <tbody>
                        { for people.map(|holder| html! {
                            <tr key={holder.number()}>
                                <th scope="row">{ overview.names.holder(holder) }</th>
                                { for doors.iter().map(|&door| html! { <td>{ mark(access(overview, holder, door)) }</td> }) }
                            </tr>
                        }) }
                    </tbody>
                </table>
            </div>
            <ul class="access-legend" aria-hidden="true">
                { for [Access::Opens, Access::Beyond, Access::Without, Access::Part].into_iter().map(|access| html! {
                    <li>{ shape(access) }{ access_words(access) }</li>
                }) }
            </ul>
        </>
    }
}

/// What this person can do at this door.
fn access(overview: &Overview, holder: HolderId, door: DoorId) -> Access {
    let gap = overview.gaps().iter().find(|gap| gap.holder == holder);
    let is_in = |doors: fn(&Gap) -> &Vec<DoorId>| gap.is_some_and(|gap| doors(gap).contains(&door));
    if is_in(|gap| &gap.without) {
        return Access::Without;
    }
    if is_in(|gap| &gap.beyond) {
        return Access::Beyond;
    }
    let reach = overview.reach(holder);
    let opening = reach.and_then(|reach| reach.doors.iter().find(|found| found.door == door));
    match opening.map(|found| &found.opening) {
        None => Access::Nothing,
        Some(Opening::Part { .. }) => Access::Part,
        Some(Opening::Whole | Opening::ByWay(_)) => Access::Opens,
    }
}

fn access_words(access: Access) -> &'static str {
    match access {
        Access::Opens => words::MARK_OPENS,
        Access::Beyond => words::MARK_BEYOND,
        Access::Without => words::MARK_WITHOUT,
        Access::Part => words::MARK_PART,
        Access::Nothing => words::MARK_NOTHING,
    }
}

/// The mark of a cell, with its words for those who do not see it.
fn mark(access: Access) -> Html {
    html! { <>{ shape(access) }<span class="visually-hidden">{ access_words(access) }</span></> }
}

/// A shape for each: a filled disc, a diamond, a cross, half a disc, a dash.
fn shape(access: Access) -> Html {
    let content = match access {
        Access::Opens => html! { <path class="solid" d="M3 8a5 5 0 1 0 10 0a5 5 0 1 0 -10 0Z" /> },
        Access::Beyond => html! {
            <>
                <path class="mark-away" d="M8 1.5L14.5 8 8 14.5 1.5 8Z" />
            </>
        },
        Access::Without => html! { <path class="mark-cross" d="M3 3L13 13M13 3L3 13" /> },
        Access::Part => html! {
            <>
                <path class="mark-ring" d="M3 8a5 5 0 1 0 10 0a5 5 0 1 0 -10 0Z" />
                <path class="solid" d="M8 3a5 5 0 0 0 0 10Z" />
            </>
        },
        Access::Nothing => html! { <path class="mark-point" d="M6 8H10" /> },
    };
    html! {
        <svg class="access-mark" viewBox="0 0 16 16" aria-hidden="true" focusable="false">{ content }</svg>
    }
}

/// The people and doors of the example in which they part, for the tests of the table.
#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use self_check_core::household::{Change, DoorKind, LockKind, Role, demonstration, quick};

    use super::*;

    #[test]
    fn nothing_is_claimed_of_needs_that_nobody_told() {
        let people = [Role::Resident, Role::Neighbour];
        let home = quick::two_doors(LockKind::PinTumbler, &people).unwrap_or_default();
        let doors: Vec<DoorId> = home.doors().map(|(id, _)| id).collect();
        let told = |home: &self_check_core::household::Household, at: usize| {
            let holder = home
                .holders()
                .nth(at)
                .map_or(HolderId::new(0), |(id, _)| id);
            let all = doors.iter().map(|&door| Change::Needs {
                holder,
                door,
                needs: true,
            });
            home.with_all(all.collect::<Vec<_>>()).unwrap_or_default()
        };
        let claim = |home| none(&Overview::of(home));
        assert_eq!(claim(&home), words::GAPS_NOT_SAID);
        let one = told(&home, 0);
        assert_eq!(claim(&one), words::GAPS_NONE_SAID);
        assert_eq!(claim(&told(&one, 1)), words::GAPS_NONE);
    }

    #[test]
    fn neighbour_of_the_example_opens_the_workshop_without_need() {
        let overview = Overview::of(&demonstration::household());
        let holder = |role| {
            let found = overview
                .household
                .holders()
                .find(|(_, holder)| holder.role == role);
            found.map_or(HolderId::new(0), |(id, _)| id)
        };
        let door = |kind| {
            let found = overview
                .household
                .doors()
                .find(|(_, door)| door.kind == kind);
            found.map_or(DoorId::new(0), |(id, _)| id)
        };
        let at = |role, kind| access(&overview, holder(role), door(kind));
        assert_eq!(at(Role::Neighbour, DoorKind::Workshop), Access::Beyond);
        assert_eq!(at(Role::Neighbour, DoorKind::FrontDoor), Access::Opens);
        assert_eq!(at(Role::Neighbour, DoorKind::Shed), Access::Nothing);
        let without: BTreeSet<DoorId> = overview
            .gaps()
            .iter()
            .flat_map(|gap| gap.without.iter().copied())
            .collect();
        assert!(!without.is_empty(), "someone lacks a key in the example");
    }
}
