//! Three ways of sharing keys, side by side: drawn, and in numbers.

use std::collections::BTreeSet;

use self_check_core::household::{
    Choices, Comparison, Grouping, HolderComparison, HolderId, Household, LockId, compare,
};
use self_check_core::sources::Source;
use yew::prelude::*;

use super::plan::{needs_assumed, opens_more};
use super::{COMPARE, OverviewProps, example_note, on_paper, pages, safety_note, use_keys_page};
use crate::browser;
use crate::copy::Listed;
use crate::copy::en::household::{self, board, plan as words};
use crate::copy::en::numbers::counted;
use crate::drawing::{DoorDrawing, HungKey};
use crate::household::{HouseholdAct, HouseholdHandle, Overview};
use crate::ui::{source_line, use_household};

/// So many keys of one way are drawn.
const MOST_DRAWN: usize = 8;
/// So many doors of one key are drawn.
const MOST_DOORS: usize = 6;
/// So many key safes that open more are told of one way.
const MOST_SAFES: usize = 3;
/// So many people stand in the table.
const MOST_PEOPLE: usize = 24;

/// The page.
#[component]
pub fn Compare(props: &OverviewProps) -> Html {
    use_keys_page(words::COMPARE);
    let state = use_household();
    let overview = &props.overview;
    let ways = use_memo(state.household().clone(), compare);
    let mut keys = ways.iter().flat_map(|way| &way.keys);
    let has_others = keys.clone().any(|key| !key.is_own);
    let is_empty = !keys.any(|key| key.is_own);
    html! {
        <article class={on_paper(&state)}>
            { example_note(&state) }
            <h1 tabindex="-1">{ words::COMPARE }</h1>
            <p class="lede">{ words::COMPARE_LEDE }</p>
            { safety_note(&state) }
            if is_empty {
                <p>{ words::NOTHING_TO_COMPARE }</p>
            } else {
                if is_all_the_same(&ways) {
                    <p class="notice">{ words::ALL_THE_SAME }</p>
                }
                { needs_assumed(overview) }
                <div class="ways">{ for ways.iter().map(|way| drawn(overview, &state, way)) }</div>
                if has_others {
                    <p class="note">{ words::OTHERS }</p>
                }
                if is_not_alike(&ways) {
                    <p class="notice">{ words::NOT_ALIKE }</p>
                }
                { numbers(overview, &ways) }
                <p class="note">{ words::COUNTED }</p>
                { rings(overview, &ways) }
                <ul class="sources">
                    { for Grouping::SOURCES.iter().map(|&source: &&Source| html! { <li>{ source_line(source) }</li> }) }
                </ul>
            }
            { pages(&state, Some(COMPARE)) }
        </article>
    }
}

/// Whether it makes no difference which way is chosen.
fn is_all_the_same(ways: &[Comparison]) -> bool {
    let mut pairs = ways.windows(2);
    pairs.all(|pair| matches!(pair, [one, other] if one.comes_to_the_same_as(other)))
}

/// Whether the ways are not alike in who opens what they need: somebody lacks a key as now that they are
/// given by another.
fn is_not_alike(ways: &[Comparison]) -> bool {
    let least = ways.iter().map(Comparison::doors_without).min();
    ways.first().map(Comparison::doors_without) > least
}

/// One way: its keys, each with the doors it opens.
fn drawn(overview: &Overview, state: &HouseholdHandle, way: &Comparison) -> Html {
    let name = way.grouping.words();
    let more = way.keys.len().saturating_sub(MOST_DRAWN);
    let by_safes = opens_more(overview, &way.opens_more);
    html! {
        <section class="way" key={way.grouping.id()} aria-label={name}>
            <h2>{ words::picture_of(name, way.keys.len()) }</h2>
            <p class="hint">{ household::grouping_meaning(way.grouping) }</p>
            <ul class="way-keys">
                { for way.keys.iter().take(MOST_DRAWN).map(|key| {
                    let doors = key.locks.iter().filter_map(|&lock| overview.household.lock(lock));
                    let doors = doors.filter_map(|lock| overview.household.door(lock.door));
                    html! {
                        <li>
                            <HungKey />
                            <span>
                                <span class="small-doors">
                                    { for doors.take(MOST_DOORS).map(|door| html! { <DoorDrawing kind={door.kind} /> }) }
                                </span>
                                <small>{ overview.names.locks(key.locks.iter().copied().take(MOST_DOORS)) }
                                    if key.locks.len() > MOST_DOORS {
                                        { ", " }{ board::and_more(key.locks.len() - MOST_DOORS) }
                                    }
                                    if !key.is_own {
                                        { ": " }{ words::NOT_OURS }
                                    }
                                </small>
                            </span>
                        </li>
                    }
                }) }
            </ul>
            if more > 0 {
                <p class="note">{ words::more_keys(more) }</p>
            }
            if !way.keyless.is_empty() {
                <p class="note">{ board::NO_KEY }{ ": " }{ keyless(overview, &way.keyless) }</p>
            }
            { for by_safes.iter().take(MOST_SAFES).map(|safe| html! { <p class="caution">{ safe }</p> }) }
            if by_safes.len() > MOST_SAFES {
                <p class="note">{ board::and_more(by_safes.len() - MOST_SAFES) }</p>
            }
            { choose(state, way.grouping) }
        </section>
    }
}

fn keyless(overview: &Overview, locks: &[LockId]) -> String {
    let named = overview.names.locks(locks.iter().copied().take(MOST_DOORS));
    match locks.len().saturating_sub(MOST_DOORS) {
        0 => named,
        more => format!("{named}, {}", board::and_more(more)),
    }
}

fn choose(state: &HouseholdHandle, grouping: Grouping) -> Html {
    if state.choices.grouping == grouping {
        return html! { <p class="note"><strong>{ words::CHOSEN }</strong></p> };
    }
    let choices = Choices {
        grouping,
        ..state.choices
    };
    let state = state.clone();
    let onclick = Callback::from(move |_: MouseEvent| {
        state.dispatch(HouseholdAct::Choose(choices));
        // The press is gone then.
        browser::arrive();
    });
    html! {
           <p>
               <button type="button" class="press-quiet" {onclick} aria-label={board::about(words::CHOOSE, grouping.words())}>
    { words::CHOOSE }
               </button>
           </p>
       }
}

fn numbers(overview: &Overview, ways: &[Comparison]) -> Html {
    let row = |title: &'static str, cell: &dyn Fn(&Comparison) -> String| {
        html! {
            <tr>
                <th scope="row">{ title }</th>
                { for ways.iter().map(|way| html! { <td class="number">{ cell(way) }</td> }) }
            </tr>
        }
    };
    html! {
        <div class="table-scroll" tabindex="0" role="group" aria-label={words::TABLE}>
            <table class="table compared">
                <caption>{ words::TABLE }</caption>
                { head(ways, html! { <td></td> }) }
                <tbody>
                    { row(words::ROW_KEYS, &|way| counted(way.keys.len())) }
                    { row(words::ROW_CARRIED, &|way| counted(way.most_keys_carried())) }
                    { row(words::ROW_LOST, &|way| counted(way.most_locks_if_lost())) }
                    { row(words::ROW_WITHOUT, &|way| counted(way.doors_without())) }
                    { row(words::ROW_BEYOND, &|way| counted(way.doors_beyond_need())) }
                    { row(words::ROW_SET_UP, &|way| words::from_to(way.locks_to_set_up as u64, way.locks_at_most as u64)) }
                    { row(words::ROW_COST, &|way| cost(&overview.household, way)) }
                </tbody>
            </table>
        </div>
    }
}

fn head(ways: &[Comparison], first: Html) -> Html {
    html! {
        <thead>
            <tr>
                { first }
                { for ways.iter().map(|way| html! { <th scope="col" class="number">{ way.grouping.words() }</th> }) }
            </tr>
        </thead>
    }
}

fn cost(home: &Household, way: &Comparison) -> String {
    match home.prices().cost_between(&way.set_up, &way.set_up_at_most) {
        Err(_) => words::TOO_MUCH_SHORT.to_owned(),
        Ok(cost) if cost.lines.is_empty() => words::amount(0),
        Ok(cost) if cost.lines.iter().all(|line| line.total.is_none()) => {
            words::NO_PRICE.to_owned()
        }
        Ok(cost) => {
            let is_whole = cost.lines.iter().all(|line| line.total.is_some());
            let sum = words::price(cost.known);
            if is_whole {
                sum
            } else {
                words::sum_and_more(&sum)
            }
        }
    }
}

/// What each person's ring would mean, and what keeps the ways from being alike there.
fn rings(overview: &Overview, ways: &[Comparison]) -> Html {
    let all = ways.iter().flat_map(|way| &way.holders);
    let has_a_ring = |row: &&HolderComparison| row.keys_carried > 0 || row.doors_without > 0;
    let people: BTreeSet<HolderId> = all.filter(has_a_ring).map(|row| row.holder).collect();
    html! {
        <div class="table-scroll" tabindex="0" role="group" aria-label={words::RINGS}>
            <table class="table compared">
                <caption>{ words::RINGS }</caption>
                { head(ways, html! { <th scope="col">{ board::PERSON }</th> }) }
                <tbody>
                    { for people.iter().take(MOST_PEOPLE).map(|&id| html! {
                        <tr key={id.number()}>
                            <th scope="row">
                                { overview.names.holder(id) }
                                { for remarks(ways, id).into_iter().map(|remark| html! { <small>{ remark }</small> }) }
                            </th>
                            { for ways.iter().map(|way| html! {
                                <td class="number">{ counted(of(way, id, |row| row.locks_if_lost)) }</td>
                            }) }
                        </tr>
                    }) }
                </tbody>
            </table>
            if people.len() > MOST_PEOPLE {
                <p class="note">{ board::shown(MOST_PEOPLE, people.len()) }</p>
            }
        </div>
    }
}

/// What a person's numbers leave out or count though it is not there: of each way, or once if it is the same
/// of all.
fn remarks(ways: &[Comparison], id: HolderId) -> Vec<String> {
    let mut remarks = told(ways, words::cannot_open, |way| {
        of(way, id, |row| row.doors_without)
    });
    remarks.extend(told(ways, words::counted_though_missing, |way| {
        of(way, id, |row| row.missing)
    }));
    remarks
}

fn told(
    ways: &[Comparison],
    words: impl Fn(Option<&str>, usize) -> String,
    count: impl Fn(&Comparison) -> usize,
) -> Vec<String> {
    let counts: Vec<usize> = ways.iter().map(count).collect();
    match counts.first() {
        Some(&first) if counts.iter().all(|&count| count == first) => (first > 0)
            .then(|| words(None, first))
            .into_iter()
            .collect(),
        _ => {
            let each = ways.iter().zip(counts).filter(|&(_, count)| count > 0);
            each.map(|(way, count)| words(Some(way.grouping.words()), count))
                .collect()
        }
    }
}

fn of(way: &Comparison, id: HolderId, number: impl Fn(&HolderComparison) -> usize) -> usize {
    let found = way.holders.iter().find(|row| row.holder == id);
    found.map_or(0, number)
}
