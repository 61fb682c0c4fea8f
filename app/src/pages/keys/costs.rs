//! What it costs, by the user's own prices, low to high.

mod form;

use std::rc::Rc;

use self_check_core::household::plan::Plan;
use self_check_core::household::remedy::WhoActs;
use self_check_core::household::{Cost, CostLine, PriceItem, Priced, Prices, plan};
use yew::prelude::*;

use super::bar::Bar;
use super::{COSTS, OverviewProps, example_note, on_paper, pages, safety_note, use_keys_page};
use crate::copy::Listed;
use crate::copy::en::household::plan as words;
use crate::ui::use_household;
use form::PricesForm;

/// The page.
#[component]
pub fn Costs(props: &OverviewProps) -> Html {
    use_keys_page(words::COSTS);
    let state = use_household();
    let overview = &props.overview;
    let costs = use_memo(
        (state.household().clone(), state.choices_to_plan()),
        |(household, choices)| {
            let plan = plan(household, *choices);
            (plan.cost(household), shares_a_key(&plan))
        },
    );
    let (cost, is_alike) = &*costs;
    html! {
        <article class={classes!("narrow", on_paper(&state))}>
            { example_note(&state) }
            <h1 tabindex="-1">{ words::COSTS }</h1>
            <p class="lede">{ words::COSTS_LEDE }</p>
            { safety_note(&state) }
            <Bar overview={Rc::clone(overview)} />
            <section aria-labelledby="sum">
                <h2 id="sum">{ words::SUM }</h2>
                { match cost {
                    Err(_) => html! { <p id={TOTAL} class="error" tabindex="-1">{ words::TOO_MUCH }</p> },
                    Ok(cost) => sum(cost, overview.household.prices()),
                } }
                if *is_alike {
                    <p class="note">{ words::KEYED_ALIKE }</p>
                }
            </section>
            <PricesForm prices={overview.household.prices().clone()} />
            { pages(&state, Some(COSTS)) }
        </article>
    }
}

/// Whether locks are set to share a key.
fn shares_a_key(plan: &Plan) -> bool {
    let takers = |place: usize| {
        let works = plan.works.iter();
        works.filter(move |work| work.who == WhoActs::Household && work.takes.contains(&place))
    };
    (0..plan.keys.len()).any(|place| takers(place).count() > 1)
}

/// Where the sum stands: whoever has it worked out is taken there and hears it.
const TOTAL: &str = "total";

fn sum(cost: &Cost, prices: &Prices) -> Html {
    if cost.lines.is_empty() {
        return html! { <p id={TOTAL} tabindex="-1">{ words::NO_COST }</p> };
    }
    let is_whole = cost.lines.iter().all(|line| line.total.is_some());
    let known = words::price(cost.known);
    let total = if is_whole {
        known
    } else {
        words::at_least(&known)
    };
    html! {
        <>
            <div class="table-scroll" tabindex="0" role="group" aria-label={words::SUM}>
                <table class="table">
                    <thead>
                        <tr>
                            <th scope="col">{ words::WHAT }</th>
                            <th scope="col" class="number">{ words::COUNT }</th>
                            <th scope="col" class="number">{ words::TOGETHER }</th>
                        </tr>
                    </thead>
                    <tbody>{ for cost.lines.iter().map(|one| line(one, prices)) }</tbody>
                </table>
            </div>
            if cost.lines.iter().any(|line| line.what == OPENING) {
                <p class="note">{ words::AT_MOST_IF_SHUT }</p>
            }
            if cost.lines.iter().any(is_more_if_new) {
                <p class="note">{ words::AT_MOST_IF_NEW }</p>
            }
            <p id={TOTAL} class="lede" tabindex="-1"><b>{ words::TOTAL }{ ": " }{ total }</b></p>
            if !cost.missing.is_empty() {
                <p>{ words::MISSING }</p>
                <ul>{ for cost.missing.iter().map(|item| html! { <li>{ item.words() }</li> }) }</ul>
            }
        </>
    }
}

const OPENING: Priced = Priced::Item(PriceItem::Opening);

/// Whether the line grows where a lock cannot be set to a key that stays: visits and openings do not.
fn is_more_if_new(line: &CostLine) -> bool {
    let is_a_visit = matches!(
        line.what,
        OPENING
            | Priced::CallOutAtAnyHour
            | Priced::Item(PriceItem::CallOut | PriceItem::CallOutAfterHours)
    );
    line.count < line.at_most && !is_a_visit
}

fn line(line: &CostLine, prices: &Prices) -> Html {
    html! {
        <tr>
            <th scope="row">
                { words::priced(line.what) }
                if let Some(lacks) = words::line_lacks(line, prices) {
                    <p class="note">{ lacks }</p>
                }
            </th>
            <td class="number">{ words::from_to(line.count, line.at_most) }</td>
            <td class="number">{ words::line_total(line) }</td>
        </tr>
    }
}
