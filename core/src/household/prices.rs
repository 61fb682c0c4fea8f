//! Costs from the household's own prices, low to high. No price is made up: what was not told
//! stays absent, and a sum says what it lacks.

use core::fmt;
use std::collections::{BTreeMap, BTreeSet};

use super::kinds::PriceItem;

/// A price from low to high, in the smallest unit of whatever currency the household uses.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct PriceRange {
    low: u64,
    high: u64,
}

/// Why a price is refused.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum PriceRefusal {
    /// The low end is above the high end.
    LowAboveHigh,
    /// Above [`PriceRange::MOST`].
    TooHigh,
}

/// A sum too large to be counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TooMuch;

/// The prices a household was told.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Prices {
    items: BTreeMap<PriceItem, PriceRange>,
    /// How many copies come with each new lock or cylinder at no charge, as the household was told.
    pub copies_included: u8,
}

/// What a line of the bill is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Priced {
    /// One visit that does not wait for ordinary hours: it costs between the cheaper of a visit in
    /// ordinary hours and one after them, and the dearer.
    CallOutAtAnyHour,
    /// One item.
    Item(PriceItem),
    /// A rekeyed cylinder or a new one: only the locksmith can say which, so it costs between the
    /// cheaper of the two and the dearer.
    RekeyedOrNew,
    /// A lock of a kind that nobody knows: it may be a cylinder or a lever lock, so it costs between the
    /// cheapest of a rekeyed cylinder, a new one and a new lever lock, and the dearest.
    KindNotKnown,
    /// Somebody else pays, or nobody can say who does.
    ByOthers,
}

/// How many of each.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Quantities(BTreeMap<Priced, u64>);

/// What something costs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cost {
    /// Line by line.
    pub lines: Vec<CostLine>,
    /// The sum of all lines with a price, and of the least that others cost. It is the whole only where
    /// nothing is missing.
    pub known: PriceRange,
    /// The prices that were not told; in the order of the list of prices.
    pub missing: Vec<PriceItem>,
}

/// One line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CostLine {
    /// What it is about.
    pub what: Priced,
    /// How many.
    pub count: u64,
    /// How many at most.
    pub at_most: u64,
    /// What they cost together, from so many to at most so many; absent where a price was not told.
    pub total: Option<PriceRange>,
    /// What they cost together at the least, where only that is known: a visit that may have to be at night,
    /// while only the price in ordinary hours was told.
    pub at_least: Option<PriceRange>,
}

impl Priced {
    /// The prices it rests on: any one of several may turn out to be asked. None where others pay.
    pub const fn items(self) -> &'static [PriceItem] {
        use PriceItem::{
            CallOut, CallOutAfterHours, Copy, LockOrLevers, NewCylinder, Opening, RekeyedCylinder,
            SmallLock,
        };
        match self {
            Self::CallOutAtAnyHour => &[CallOut, CallOutAfterHours],
            Self::RekeyedOrNew => &[RekeyedCylinder, NewCylinder],
            Self::KindNotKnown => &[RekeyedCylinder, NewCylinder, LockOrLevers],
            Self::ByOthers => &[],
            Self::Item(CallOut) => &[CallOut],
            Self::Item(CallOutAfterHours) => &[CallOutAfterHours],
            Self::Item(Opening) => &[Opening],
            Self::Item(RekeyedCylinder) => &[RekeyedCylinder],
            Self::Item(NewCylinder) => &[NewCylinder],
            Self::Item(LockOrLevers) => &[LockOrLevers],
            Self::Item(SmallLock) => &[SmallLock],
            Self::Item(Copy) => &[Copy],
        }
    }

    /// Whether it is a new lock or cylinder.
    pub(super) fn is_new(self) -> bool {
        use PriceItem::{LockOrLevers, NewCylinder, SmallLock};
        matches!(self, Self::Item(NewCylinder | LockOrLevers | SmallLock))
    }

    /// Whether it is one, or may turn out to be.
    pub(super) fn may_be_new(self) -> bool {
        self.is_new() || matches!(self, Self::RekeyedOrNew | Self::KindNotKnown)
    }
}

impl PriceRange {
    /// The highest single price: a thousand million of the smallest unit. Our assumption; above it
    /// is a slip.
    pub const MOST: u64 = 1_000_000_000;

    /// A price from `low` to `high`, both included.
    pub const fn new(low: u64, high: u64) -> Result<Self, PriceRefusal> {
        if low > high {
            Err(PriceRefusal::LowAboveHigh)
        } else if high > Self::MOST {
            Err(PriceRefusal::TooHigh)
        } else {
            Ok(Self { low, high })
        }
    }

    /// The low end.
    pub const fn low(self) -> u64 {
        self.low
    }

    /// The high end.
    pub const fn high(self) -> u64 {
        self.high
    }

    fn times(self, count: u64, at_most: u64) -> Result<Self, TooMuch> {
        Ok(Self {
            low: self.low.checked_mul(count).ok_or(TooMuch)?,
            high: self.high.checked_mul(at_most).ok_or(TooMuch)?,
        })
    }

    fn plus(self, other: Self) -> Result<Self, TooMuch> {
        Ok(Self {
            low: self.low.checked_add(other.low).ok_or(TooMuch)?,
            high: self.high.checked_add(other.high).ok_or(TooMuch)?,
        })
    }
}

impl Prices {
    /// The price of an item, if it was told.
    pub fn of(&self, item: PriceItem) -> Option<PriceRange> {
        self.items.get(&item).copied()
    }

    /// The prices with that of `item` told, or taken back.
    pub fn with(&self, item: PriceItem, price: Option<PriceRange>) -> Self {
        let mut told = self.clone();
        match price {
            Some(price) => told.items.insert(item, price),
            None => told.items.remove(&item),
        };
        told
    }

    /// What `quantities` cost.
    ///
    /// ```
    /// use self_check_core::household::{PriceItem, PriceRange, Priced, Prices, Quantities};
    /// let prices = Prices::default()
    ///     .with(PriceItem::CallOut, Some(PriceRange::new(6_000, 9_000)?))
    ///     .with(PriceItem::RekeyedCylinder, Some(PriceRange::new(2_000, 3_000)?));
    /// let mut visit = Quantities::default();
    /// visit.add(Priced::Item(PriceItem::CallOut), 1);
    /// visit.add(Priced::Item(PriceItem::RekeyedCylinder), 2);
    /// visit.add(Priced::Item(PriceItem::Copy), 5);
    /// let cost = prices.cost(&visit).map_err(|_| "too much")?;
    /// assert_eq!((cost.known.low(), cost.known.high()), (10_000, 15_000));
    /// assert_eq!(cost.missing, [PriceItem::Copy]);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn cost(&self, quantities: &Quantities) -> Result<Cost, TooMuch> {
        self.cost_between(quantities, quantities)
    }

    /// What between `quantities` and `at_most` costs, which is no less of anything.
    pub fn cost_between(
        &self,
        quantities: &Quantities,
        at_most: &Quantities,
    ) -> Result<Cost, TooMuch> {
        let mut cost = Cost {
            lines: Vec::new(),
            known: PriceRange::default(),
            missing: Vec::new(),
        };
        let mut missing = BTreeSet::new();
        for (what, at_most) in at_most.iter() {
            let count = quantities.of(what);
            let items = what.items().iter().copied();
            missing.extend(items.filter(|&item| self.of(item).is_none()));
            let together = |each: Option<PriceRange>| {
                let all = each.map(|each| each.times(count, at_most));
                all.transpose()
            };
            let total = together(self.each(what))?;
            let at_least = together(self.each_at_least(what).filter(|_| total.is_none()))?;
            cost.known = cost.known.plus(total.or(at_least).unwrap_or_default())?;
            cost.lines.push(CostLine {
                what,
                count,
                at_most,
                total,
                at_least,
            });
        }
        cost.missing.extend(missing);
        Ok(cost)
    }

    /// From the cheapest of the prices that one rests on to the dearest; none while one was not told.
    fn each(&self, what: Priced) -> Option<PriceRange> {
        let told: Option<Vec<PriceRange>> =
            what.items().iter().map(|&item| self.of(item)).collect();
        told?.into_iter().reduce(|one, other| PriceRange {
            low: one.low.min(other.low),
            high: one.high.max(other.high),
        })
    }

    /// What one costs at the least, whatever the prices are that were not told. Our assumption: nobody asks
    /// less for a visit at night than for the same in ordinary hours. Of a rekeyed lock and a new one
    /// either may be the cheaper, so that one price alone says nothing of the other.
    fn each_at_least(&self, what: Priced) -> Option<PriceRange> {
        match what {
            Priced::CallOutAtAnyHour => self.of(PriceItem::CallOut),
            Priced::Item(_) | Priced::RekeyedOrNew | Priced::KindNotKnown | Priced::ByOthers => {
                None
            }
        }
    }
}

impl Quantities {
    /// So many more of one.
    pub fn add(&mut self, what: Priced, count: u64) {
        if count > 0 {
            let entry = self.0.entry(what).or_default();
            *entry = entry.saturating_add(count);
        }
    }

    /// How many of one.
    pub fn of(&self, what: Priced) -> u64 {
        self.0.get(&what).copied().unwrap_or(0)
    }

    /// Each with its count, none of them nought.
    pub fn iter(&self) -> impl Iterator<Item = (Priced, u64)> {
        self.0.iter().map(|(&what, &count)| (what, count))
    }
}

impl fmt::Display for PriceRefusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::LowAboveHigh => "the low price is above the high one",
            Self::TooHigh => "the price is too high to be one",
        })
    }
}

impl core::error::Error for PriceRefusal {}

impl fmt::Display for TooMuch {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("too much to be counted")
    }
}

impl core::error::Error for TooMuch {}
