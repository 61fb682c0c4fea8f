//! What to ask a price for.

use crate::advice::Urgency;

use super::super::kinds::PriceItem;
use super::super::plan::{Plan, Work};
use super::super::prices::Quantities;
use super::super::{Household, PriceRange, Priced};
use super::{Brief, BriefChoices, KeyRank, Keying};

/// One price to ask for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Quote {
    /// For what.
    pub item: PriceItem,
    /// How many if everything goes as the plan says.
    pub planned: u64,
    /// How many at most; none for what may not be needed.
    pub count: Option<u64>,
    /// When it comes to more than planned.
    pub only_if: Vec<OnlyIf>,
    /// What the household was told elsewhere, if ticked in.
    pub told: Option<PriceRange>,
}

/// When more of something is needed than planned.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OnlyIf {
    /// The visit cannot wait for ordinary hours.
    VisitCannotWait,
    /// A lock cannot be set to the key that stays.
    CannotTakeTheKeyThatStays,
    /// Locks that are to share a new key have unlike keyholes.
    KeyholesDiffer,
    /// A lock of a kind that nobody knows turns out so.
    KindTurnsOutSo,
}

impl Quote {
    /// Whether more of it comes in place of something else on the list.
    pub fn is_in_place_of_another(&self) -> bool {
        let in_place = matches!(
            self.item,
            PriceItem::CallOutAfterHours | PriceItem::NewCylinder | PriceItem::LockOrLevers
        );
        in_place && !self.only_if.is_empty()
    }
}

impl Brief {
    /// How many locks of the page come to share a key with another lock, which costs extra.
    pub fn keyed_alike(&self) -> usize {
        let shared = self.keys.iter().enumerate().filter(|(_, key)| {
            let opens = key.locks.len() + key.other_doors.len();
            !key.is_left && key.rank != KeyRank::Master && opens > 1
        });
        let shared: Vec<usize> = shared.map(|(place, _)| place).collect();
        let locks = self.locks.iter();
        let alike = locks.filter(|lock| lock.keys.iter().any(|key| shared.contains(key)));
        alike.count()
    }

    /// How many locks of the page go on taking more than one key, which costs extra.
    pub fn master_keyed(&self) -> usize {
        let locks = self.locks.iter();
        let several = locks.filter(|lock| {
            matches!(
                lock.keying,
                Keying::MasterKeyed | Keying::OtherKeysNotTold | Keying::KeysOfMany
            )
        });
        several.count()
    }
}

pub(super) fn quotes(
    household: &Household,
    plan: &Plan,
    opened: u64,
    choices: BriefChoices,
) -> Vec<Quote> {
    let (planned, most) = (plan.quantities(0), plan.quantities_at_most(0));
    // A door to be opened does not wait for ordinary hours.
    let today = (opened > 0).then(|| plan.visit_due(Urgency::Today));
    let due = today.or_else(|| plan.visit());
    let visit = |item: PriceItem| match due {
        Some(Priced::CallOutAtAnyHour) => Some(1),
        Some(Priced::Item(it)) if it == item => Some(1),
        // Its price is asked for in case the visit comes to that.
        Some(_) if item == PriceItem::CallOutAfterHours => None,
        _ => Some(0),
    };
    let count = |item: PriceItem| match item {
        PriceItem::CallOut | PriceItem::CallOutAfterHours => visit(item),
        PriceItem::Opening => Some(opened),
        item => Some(at_most(&most, item)),
    };
    let as_planned = |item: PriceItem| match item {
        PriceItem::CallOutAfterHours if due == Some(Priced::CallOutAtAnyHour) => 0,
        PriceItem::CallOut | PriceItem::CallOutAfterHours => visit(item).unwrap_or_default(),
        PriceItem::Opening => opened,
        item => if_all_goes_well(&planned, item),
    };
    let items = PriceItem::ALL.iter().copied();
    let quotes = items.map(|item| {
        let (planned, count) = (as_planned(item), count(item));
        let only_if = match count {
            Some(count) if count > planned => only_if(plan, item),
            _ => Vec::new(),
        };
        Quote {
            item,
            planned,
            count,
            only_if,
            told: household.prices().of(item).filter(|_| choices.prices),
        }
    });
    quotes.filter(|quote| quote.count != Some(0)).collect()
}

/// Rekeyed, where a lock may be rekeyed.
fn if_all_goes_well(planned: &Quantities, item: PriceItem) -> u64 {
    let surely = planned.of(Priced::Item(item));
    match item {
        PriceItem::RekeyedCylinder => {
            surely + planned.of(Priced::RekeyedOrNew) + planned.of(Priced::KindNotKnown)
        }
        _ => surely,
    }
}

fn at_most(most: &Quantities, item: PriceItem) -> u64 {
    let surely = most.of(Priced::Item(item));
    let not_known = most.of(Priced::KindNotKnown);
    match item {
        PriceItem::RekeyedCylinder | PriceItem::NewCylinder => {
            surely + most.of(Priced::RekeyedOrNew) + not_known
        }
        PriceItem::LockOrLevers => surely + not_known,
        _ => surely,
    }
}

/// What makes it more than planned, where something does.
fn only_if(plan: &Plan, item: PriceItem) -> Vec<OnlyIf> {
    if item == PriceItem::CallOutAfterHours {
        return vec![OnlyIf::VisitCannotWait];
    }
    if item == PriceItem::Copy {
        return vec![OnlyIf::CannotTakeTheKeyThatStays];
    }
    let is_in_doubt = |work: &&Work| work.only_if_keyed_to.is_some();
    let may_come_to = |price: Priced| match price {
        Priced::RekeyedOrNew => item == PriceItem::NewCylinder,
        Priced::KindNotKnown => matches!(item, PriceItem::NewCylinder | PriceItem::LockOrLevers),
        _ => false,
    };
    let doubtful = plan.works.iter().filter(is_in_doubt).map(|work| work.price);
    let keys = plan.keys.iter().filter_map(|key| key.otherwise.as_ref());
    let instead = keys.flat_map(|it| &it.locks).map(|&(_, price)| price);
    let is_instead = |price: Priced| price == Priced::Item(item) || may_come_to(price);
    let may_not_take_it = doubtful.clone().any(may_come_to)
        || instead.clone().any(is_instead)
        || item == PriceItem::RekeyedCylinder;
    let free = plan.works.iter().filter(|work| !is_in_doubt(work));
    let may_turn_out =
        |price: Priced| may_come_to(price) && free.clone().any(|work| work.price == price);
    let all = [
        (OnlyIf::CannotTakeTheKeyThatStays, may_not_take_it),
        (OnlyIf::KeyholesDiffer, may_turn_out(Priced::RekeyedOrNew)),
        (OnlyIf::KindTurnsOutSo, may_turn_out(Priced::KindNotKnown)),
    ];
    let told = all.into_iter().filter(|&(_, is_told)| is_told);
    told.map(|(only_if, _)| only_if).collect()
}
