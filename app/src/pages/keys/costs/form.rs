//! The prices the user was told.

use std::collections::BTreeMap;

use self_check_core::household::{Change, PriceItem, PriceRange, Prices};
use yew::prelude::*;

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

/// A price that cannot be read: which, and why.
type Unread = (PriceItem, &'static str);

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

    fn prices(&self) -> Result<Prices, Unread> {
        let mut prices = Prices::default();
        prices.copies_included = self.included;
        for (&item, (low, high)) in &self.lines {
            prices = prices.with(item, range(low, high).map_err(|why| (item, why))?);
        }
        Ok(prices)
    }
}

/// Both ends, or none.
fn range(low: &str, high: &str) -> Result<Option<PriceRange>, &'static str> {
    match (low.trim(), high.trim()) {
        ("", "") => Ok(None),
        ("", _) | (_, "") => Err(words::ONE_END),
        (low, high) => {
            let low = read_amount(low).ok_or(words::NO_NUMBER)?;
            let high = read_amount(high).ok_or(words::NO_NUMBER)?;
            let price = PriceRange::new(low, high).map_err(household::price_refusal)?;
            Ok(Some(price))
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
    let wrong = use_state(|| (None::<Unread>, 0_usize));
    {
        // Undo and redo change the prices under the form.
        let draft = draft.clone();
        use_effect_with(props.prices.clone(), move |prices| {
            if draft.prices().as_ref() != Ok(prices) {
                draft.set(Draft::of(prices));
            }
        });
    }
    let onsubmit = {
        let (state, draft, wrong) = (state.clone(), draft.clone(), wrong.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            match draft.prices() {
                Ok(prices) => {
                    wrong.set((None, 0));
                    state.dispatch(HouseholdAct::Make(vec![Change::SetPrices(prices)]));
                }
                Err(unread) => wrong.set((Some(unread), wrong.1 + 1)),
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
            if let (Some((item, why)), tries) = *wrong {
                <ErrorBox message={format!("{}: {why}", item.words())} field={low_id(item)} {tries} />
            }
            <p class="hint">{ words::PRICES_HINT }</p>
            <form {onsubmit} novalidate=true autocomplete="off">
                { for PriceItem::all().iter().map(|&item| row(&draft, item, wrong.0)) }
                { choose_among(Field::new("price-included", words::INCLUDED), included.collect(),
                    &draft.included.to_string(), oninclude) }
                <p class="row"><button type="submit" class="press">{ words::SAVE_PRICES }</button></p>
            </form>
        </section>
    }
}

fn low_id(item: PriceItem) -> String {
    format!("price-{}-low", item.id())
}

fn row(draft: &UseStateHandle<Draft>, item: PriceItem, wrong: Option<Unread>) -> Html {
    let why = wrong.filter(|&(one, _)| one == item).map(|(_, why)| why);
    let lines = draft.lines.get(&item).cloned().unwrap_or_default();
    let error = format!("price-{}-error", item.id());
    let line = |id: String, label: &'static str, value: String, put: fn(&mut Lines, String)| {
        let draft = draft.clone();
        let oninput = Callback::from(move |event: InputEvent| {
            if let Some(text) = browser::typed_text(&event) {
                let mut next = (*draft).clone();
                put(next.lines.entry(item).or_default(), text);
                draft.set(next);
            }
        });
        html! {
            <span class="price-end">
                <label for={id.clone()}>{ label }</label>
                <input {id} class="input" type="text" inputmode="decimal" {value} {oninput} autocomplete="off"
                    spellcheck="false" aria-invalid={why.map(|_| "true")}
                    aria-describedby={why.map(|_| error.clone())} />
            </span>
        }
    };
    html! {
        <fieldset key={item.id()} class="price">
            <legend>{ item.words() }</legend>
            if let Some(why) = why {
                <p id={error.clone()} class="error">{ why }</p>
            }
            { line(low_id(item), words::LOW, lines.0, |lines, text| lines.0 = text) }
            { line(format!("price-{}-high", item.id()), words::HIGH, lines.1, |lines, text| lines.1 = text) }
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
    fn range_needs_both_ends_in_order() {
        assert_eq!(range("", " "), Ok(None));
        assert_eq!(range("60", ""), Err(words::ONE_END));
        assert_eq!(range("sixty", "70"), Err(words::NO_NUMBER));
        assert!(range("70", "60").is_err());
        assert!(range("60", "60").is_ok_and(|price| price.is_some()));
    }
}
