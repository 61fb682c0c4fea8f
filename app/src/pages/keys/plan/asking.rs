//! Asks how keys and remotes were lost, where the answer decides how soon something is due.

use std::rc::Rc;

use self_check_core::household::plan::Plan;
use self_check_core::household::{Household, Loss, Place};
use yew::prelude::*;

use crate::copy::Listed;
use crate::copy::en::household::{board, plan as words};
use crate::household::{Asked, HouseholdAct, Lost, Overview};
use crate::pages::keys::board::{losses, went};
use crate::ui::{Field, choose_among, use_household};

/// So many rings and remotes are asked about at once; more are counted.
const MOST_ASKED: usize = 8;

/// The household, and the plan that waits for answers or not.
#[derive(Properties, PartialEq)]
pub struct HowLostProps {
    /// The household, turned round.
    pub overview: Rc<Overview>,
    /// The plan.
    pub plan: Rc<Plan>,
}

/// The questions. One that was answered here stays for as long as the page does: who answers by keyboard
/// keeps their place, and can put an answer right. The next takes its place among those that are open.
#[component]
pub fn HowLost(props: &HowLostProps) -> Html {
    let state = use_household();
    let overview = &props.overview;
    let household = &overview.household;
    let plan = &props.plan;
    let decides = plan.exposed.iter().any(|exposed| exposed.may_be_sooner())
        || plan.ways.iter().any(|way| way.may_be_sooner());
    let asked = use_mut_ref(Vec::<(Asked, Lost)>::new);
    let mut asked = asked.borrow_mut();
    asked.retain(|(asked, lost)| said(household, *asked, lost).is_some());
    let open = decides.then(|| overview.losses_not_said());
    for (who, lost) in open.into_iter().flatten() {
        match asked.iter_mut().find(|(other, _)| *other == who) {
            Some((_, known)) => *known = lost,
            None => asked.push((who, lost)),
        }
    }
    if asked.is_empty() {
        return html! {};
    }
    let losses_said = asked
        .iter()
        .map(|(asked, lost)| said(household, *asked, lost).unwrap_or(Loss::NotSaid));
    let (shown, left) = shown(losses_said);
    let ask = |place: usize| {
        let Some((asked, lost)) = asked.get(place) else {
            return html! {};
        };
        let names = &overview.names;
        let label = match *asked {
            Asked::Nobody => board::HOW_LOST.to_owned(),
            Asked::Holder(holder) => format!("{} ({})", board::HOW_LOST, names.holder(holder)),
            Asked::Way(way) => format!("{} ({})", board::HOW_LOST, names.way(way)),
        };
        let (loss, asked) = (
            said(household, *asked, lost).unwrap_or(Loss::NotSaid),
            *asked,
        );
        let onvalue = {
            let (overview, state, lost) = (overview.clone(), state.clone(), lost.clone());
            Callback::from(move |value: String| {
                if let Some(loss) = Loss::of(&value) {
                    state.dispatch(HouseholdAct::Make(went(&overview, asked, &lost, loss)));
                }
            })
        };
        let id = format!("said-{place}");
        html! { <div key={id.clone()}>{ choose_among(Field::new(&id, &label), losses(), loss.id(), onvalue) }</div> }
    };
    html! {
        <section class="screen-only" aria-labelledby="how-lost">
            <h2 id="how-lost">{ words::HOW_LOST }</h2>
            <p>{ words::HOW_LOST_WHY }</p>
            { for shown.into_iter().map(ask) }
            if left > 0 {
                <p class="note">{ board::more_losses(left) }</p>
            }
        </section>
    }
}

/// Which of the questions are shown, by their places, and how many open ones are left: what was answered,
/// and the first that were not.
fn shown(losses: impl Iterator<Item = Loss>) -> (Vec<usize>, usize) {
    let (mut shown, mut open) = (Vec::new(), 0_usize);
    for (place, loss) in losses.enumerate() {
        let is_open = loss == Loss::NotSaid;
        open += usize::from(is_open);
        if !is_open || open <= MOST_ASKED {
            shown.push(place);
        }
    }
    (shown, open.saturating_sub(MOST_ASKED))
}

/// How this went missing, as far as it was said; `None` where it is no longer missing.
fn said(household: &Household, asked: Asked, lost: &Lost) -> Option<Loss> {
    let copies = lost
        .copies
        .iter()
        .filter_map(|&copy| match household.copy(copy)?.place {
            Place::Lost { loss, .. } => Some(loss),
            _ => None,
        });
    let remotes = lost.remotes.iter().filter_map(|&way| {
        let way = household.way(way)?;
        match asked {
            Asked::Holder(holder) => way.lost_by.get(&holder).copied(),
            Asked::Nobody | Asked::Way(_) => way.given_away,
        }
    });
    copies.chain(remotes).next()
}

#[cfg(test)]
mod tests {
    use self_check_core::household::{Change, Role, demonstration};

    use super::*;

    #[test]
    fn every_open_question_gets_its_turn_and_the_rest_are_counted() {
        let asked = |answered: usize, open: usize| {
            let answered = std::iter::repeat_n(Loss::NearHome, answered);
            let (places, left) = shown(answered.chain(std::iter::repeat_n(Loss::NotSaid, open)));
            (places.len(), places.last().copied(), left)
        };
        assert_eq!(asked(0, 8), (8, Some(7), 0));
        assert_eq!(asked(0, 11), (8, Some(7), 3));
        assert_eq!(asked(8, 1), (9, Some(8), 0));
        assert_eq!(asked(3, 8), (11, Some(10), 0));
        assert_eq!(asked(9, 0), (9, Some(8), 0));
        // An answer that is taken back keeps its place; the last open one waits again.
        let all_open = std::iter::repeat_n(Loss::NotSaid, 9);
        assert_eq!(shown(all_open), ((0..8).collect(), 1));
    }

    #[test]
    fn answer_is_read_back_until_what_was_lost_is_found() {
        let home = demonstration::household();
        let partner = home
            .holders()
            .find_map(|(id, holder)| (holder.role == Role::WorkshopPartner).then_some(id));
        let loss = Loss::NotSaid;
        let gone = partner.and_then(|holder| home.with(Change::LoseRing { holder, loss }).ok());
        let gone = gone.unwrap_or_default();
        let overview = Overview::of(&gone);
        let asked = partner.map_or(Asked::Nobody, Asked::Holder);
        let open = overview.losses_not_said();
        let lost = open.get(&asked).cloned().unwrap_or_default();
        assert!(!lost.copies.is_empty() && !lost.remotes.is_empty());
        assert_eq!(said(&gone, asked, &lost), Some(Loss::NotSaid));
        let stolen = gone.with_all(went(&overview, asked, &lost, Loss::Stolen));
        let stolen = stolen.unwrap_or_default();
        assert_eq!(said(&stolen, asked, &lost), Some(Loss::Stolen));
        assert_eq!(said(&home, asked, &lost), None);
    }
}
