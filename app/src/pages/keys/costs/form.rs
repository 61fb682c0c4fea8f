//! The prices the user was told.

use std::collections::BTreeMap;

use self_check_core::household::{Change, PriceItem, PriceRange, PriceRefusal, Prices};
use yew::prelude::*;

use super::TOTAL;
use crate::browser;
use crate::copy::Listed;
use crate::copy::en::household::{self, plan as words};
use crate::household::HouseholdAct;
use crate::pages::keys::error_box::ErrorBox;
use crate::ui::{Field, choose_among, use_household};

/// So many copies can come with a new key.
const MOST_INCLUDED: u8 = 10;

/// The prices as they are.
#[derive(Properties, PartialEq)]
pub struct PricesFormProps {
    /// The prices.
    pub prices: Prices,
}

/// What stands in the two lines of one price.
type Lines = (String, String);

#[derive(Clone, Debug, PartialEq)]
struct Draft {
    lines: BTreeMap<PriceItem, Lines>,
    included: u8,
}

/// A price that cannot be read: which, in which of its lines, and why.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Unread {
    item: PriceItem,
    end: End,
    why: &'static str,
}

/// A line of a price.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum End {
    Low,
    High,
}

impl End {
    fn words(self) -> &'static str {
        match self {
            Self::Low => words::LOW,
            Self::High => words::HIGH,
        }
    }

    fn field(self, item: PriceItem) -> String {
        let end = match self {
            Self::Low => "low",
            Self::High => "high",
        };
        format!("price-{}-{end}", item.id())
    }
}

impl Draft {
    fn of(prices: &Prices) -> Self {
        let lines = PriceItem::all().iter().map(|&item| {
            let price = prices.of(item);
            let text = |amount: fn(PriceRange) -> u64| {
                price.map_or_else(String::new, |price| plain_amount(amount(price)))
            };
            (item, (text(PriceRange::low), text(PriceRange::high)))
        });
        Self {
            lines: lines.collect(),
            included: prices.copies_included,
        }
    }

    /// The prices, or every line that cannot be read.
    fn prices(&self) -> Result<Prices, Vec<Unread>> {
        let mut prices = Prices::default();
        prices.copies_included = self.included;
        let mut unread = Vec::new();
        for (&item, (low, high)) in &self.lines {
            match range(low, high) {
                Ok(range) => prices = prices.with(item, range),
                Err(ends) => {
                    let ends = ends.into_iter();
                    unread.extend(ends.map(|(end, why)| Unread { item, end, why }));
                }
            }
        }
        if unread.is_empty() {
            Ok(prices)
        } else {
            Err(unread)
        }
    }
}

/// Both ends of a price, or none. One alone is both.
fn range(low: &str, high: &str) -> Result<Option<PriceRange>, Vec<(End, &'static str)>> {
    let is_high_empty = high.trim().is_empty();
    let (low, high) = match (low.trim(), high.trim()) {
        ("", "") => return Ok(None),
        ("", only) | (only, "") if read_amount(only).is_some() => (only, only),
        ends => ends,
    };
    match (read_amount(low), read_amount(high)) {
        (Some(low), Some(high)) => match PriceRange::new(low, high) {
            Ok(price) => Ok(Some(price)),
            Err(refusal) => {
                let end = match refusal {
                    PriceRefusal::TooHigh if !is_high_empty => End::High,
                    PriceRefusal::TooHigh | PriceRefusal::LowAboveHigh => End::Low,
                };
                Err(vec![(end, household::price_refusal(refusal))])
            }
        },
        amounts => {
            let ends = [(End::Low, low, amounts.0), (End::High, high, amounts.1)];
            let unread = ends
                .into_iter()
                .filter(|(_, text, amount)| amount.is_none() && !text.is_empty());
            Err(unread.map(|(end, ..)| (end, words::NO_NUMBER)).collect())
        }
    }
}

/// An amount such as 60, 60.5, 60.50 or 60,50, in hundredths.
fn read_amount(text: &str) -> Option<u64> {
    let (whole, rest) = text.split_once(['.', ',']).unwrap_or((text, ""));
    let is_digits = |text: &str| text.bytes().all(|byte| byte.is_ascii_digit());
    if whole.is_empty() || rest.len() > 2 || !is_digits(whole) || !is_digits(rest) {
        return None;
    }
    let hundredths: u64 = format!("{rest:0<2}").parse().ok()?;
    whole
        .parse::<u64>()
        .ok()?
        .checked_mul(100)?
        .checked_add(hundredths)
}

/// An amount as it is typed: without grouping.
fn plain_amount(smallest: u64) -> String {
    match (smallest / 100, smallest % 100) {
        (whole, 0) => whole.to_string(),
        (whole, rest) => format!("{whole}.{rest:02}"),
    }
}

/// The form.
#[component]
pub fn PricesForm(props: &PricesFormProps) -> Html {
    let state = use_household();
    let draft = use_state(|| Draft::of(&props.prices));
    let wrong = use_state(|| (Vec::<Unread>::new(), 0_usize));
    let worked_out = use_state(|| 0_usize);
    {
        // Undo and redo change the prices under the form: what was wrong with them is gone.
        let (draft, wrong) = (draft.clone(), wrong.clone());
        use_effect_with(props.prices.clone(), move |prices| {
            if draft.prices().as_ref() != Ok(prices) {
                draft.set(Draft::of(prices));
            }
            if !wrong.0.is_empty() {
                wrong.set((Vec::new(), wrong.1));
            }
        });
    }
    use_effect_with(*worked_out, |&times| {
        if times > 0 {
            browser::focus_id(TOTAL);
        }
    });
    let onsubmit = {
        let (state, draft, wrong) = (state.clone(), draft.clone(), wrong.clone());
        let worked_out = worked_out.clone();
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            match draft.prices() {
                Ok(prices) => {
                    wrong.set((Vec::new(), 0));
                    // One price told fills both lines.
                    draft.set(Draft::of(&prices));
                    state.dispatch(HouseholdAct::Make(vec![Change::SetPrices(prices)]));
                    worked_out.set(*worked_out + 1);
                }
                Err(unread) => wrong.set((unread, wrong.1 + 1)),
            }
        })
    };
    let included = (0..=MOST_INCLUDED).map(|count| (count.to_string(), count.to_string()));
    let oninclude = {
        let draft = draft.clone();
        Callback::from(move |count: String| {
            draft.set(Draft {
                included: count.parse().unwrap_or(0),
                ..(*draft).clone()
            });
        })
    };
    html! {
        <section aria-labelledby="prices">
            <h2 id="prices">{ words::PRICES }</h2>
            if let [first, ..] = *wrong.0 {
                <ErrorBox message={said(&wrong.0)} field={first.end.field(first.item)} tries={wrong.1} />
            }
            <p class="hint">{ words::PRICES_HINT }</p>
            <form {onsubmit} novalidate=true autocomplete="off">
                { for PriceItem::all().iter().map(|&item| row(&draft, item, &wrong.0)) }
                { choose_among(Field::new("price-included", words::INCLUDED), included.collect(),
                    &draft.included.to_string(), oninclude) }
                <p class="row"><button type="submit" class="press">{ words::SAVE_PRICES }</button></p>
            </form>
        </section>
    }
}

/// What is wrong with which lines.
fn said(wrong: &[Unread]) -> String {
    let lines = wrong
        .iter()
        .map(|unread| words::wrong_price(unread.item.words(), unread.end.words(), unread.why));
    lines.collect::<Vec<_>>().join(" ")
}

fn row(draft: &UseStateHandle<Draft>, item: PriceItem, wrong: &[Unread]) -> Html {
    let lines = draft.lines.get(&item).cloned().unwrap_or_default();
    let wrong_with = |end: End| {
        let mut wrong = wrong.iter();
        wrong.find(|unread| unread.item == item && unread.end == end)
    };
    let line = |end: End, value: String, put: fn(&mut Lines, String)| {
        let draft = draft.clone();
        let oninput = Callback::from(move |event: InputEvent| {
            if let Some(text) = browser::typed_text(&event) {
                let mut next = (*draft).clone();
                put(next.lines.entry(item).or_default(), text);
                draft.set(next);
            }
        });
        let id = end.field(item);
        let error = format!("{id}-error");
        let why = wrong_with(end);
        html! {
            <span class="price-end">
                <label for={id.clone()}>{ end.words() }</label>
                <input {id} class="input" type="text" inputmode="decimal" {value} {oninput} autocomplete="off"
                    spellcheck="false" aria-invalid={why.map(|_| "true")} aria-describedby={why.map(|_| error)} />
            </span>
        }
    };
    html! {
        <fieldset key={item.id()} class="price">
            <legend>{ item.words() }</legend>
            { for [End::Low, End::High].into_iter().filter_map(wrong_with).map(|unread| html! {
                <p id={format!("{}-error", unread.end.field(item))} class="error">
                    { words::wrong_end(unread.end.words(), unread.why) }
                </p>
            }) }
            { line(End::Low, lines.0, |lines, text| lines.0 = text) }
            { line(End::High, lines.1, |lines, text| lines.1 = text) }
        </fieldset>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn amounts_are_read_as_people_write_them() {
        for (text, amount) in [
            ("60", 6_000),
            ("60.5", 6_050),
            ("60,50", 6_050),
            ("0.05", 5),
        ] {
            assert_eq!(read_amount(text), Some(amount), "{text}");
        }
        for text in [
            "",
            ".5",
            "60.505",
            "-5",
            "6 0",
            "6e3",
            "60.5.0",
            "£60",
            "99999999999999999999",
        ] {
            assert_eq!(read_amount(text), None, "{text}");
        }
    }

    #[test]
    fn typed_amounts_come_back() {
        for amount in [0, 5, 50, 100, 6_050, 123_456_789] {
            assert_eq!(read_amount(&plain_amount(amount)), Some(amount));
        }
    }

    #[test]
    fn one_price_is_both_ends_and_every_line_that_is_no_number_is_named() {
        assert_eq!(range("", " "), Ok(None));
        let both = PriceRange::new(4_050, 4_050).ok();
        assert_eq!(range("40,50", ""), Ok(both));
        assert_eq!(range(" ", "40,50"), Ok(both));
        let no_number =
            |ends: &[End]| Err(ends.iter().map(|&end| (end, words::NO_NUMBER)).collect());
        assert_eq!(range("sixty", "70"), no_number(&[End::Low]));
        assert_eq!(range("", "abc"), no_number(&[End::High]));
        assert_eq!(range("abc", "abc"), no_number(&[End::Low, End::High]));
        let wrong_end = |low, high| range(low, high).map_err(|ends| ends[0].0);
        assert_eq!(wrong_end("200", "100"), Err(End::Low));
        assert_eq!(wrong_end("5", "99999999"), Err(End::High));
        assert_eq!(wrong_end("99999999", "99999999"), Err(End::High));
        assert_eq!(wrong_end("", "99999999"), Err(End::High));
        assert_eq!(wrong_end("99999999", ""), Err(End::Low));
        assert!(range("60", "60").is_ok_and(|price| price.is_some()));
    }

    #[test]
    fn every_price_that_cannot_be_read_is_told_at_once() {
        let mut draft = Draft::of(&Prices::default());
        let ends = |low: &str, high: &str| (low.to_owned(), high.to_owned());
        draft.lines.insert(PriceItem::CallOut, ends("abc", ""));
        draft.lines.insert(PriceItem::Copy, ends("200", "100"));
        draft.lines.insert(PriceItem::SmallLock, ends("40,50", ""));
        let unread = draft.prices().err().unwrap_or_default();
        let items: Vec<PriceItem> = unread.iter().map(|unread| unread.item).collect();
        assert_eq!(items, [PriceItem::CallOut, PriceItem::Copy]);
    }
}
