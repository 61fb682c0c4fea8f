//! Fields of a form, each with its label. None remembers what was typed, and none is completed or
//! corrected by the browser.

use yew::prelude::*;

use crate::browser;
use crate::copy::Listed;

/// What every field has.
#[derive(Clone, Copy, Debug)]
pub struct Field<'a> {
    /// Its id, one on the page.
    pub id: &'a str,
    /// What is asked.
    pub label: &'a str,
    /// A few words more.
    pub hint: Option<&'a str>,
    /// What is wrong with it.
    pub error: Option<&'a str>,
}

impl<'a> Field<'a> {
    /// A field with its label alone.
    pub const fn new(id: &'a str, label: &'a str) -> Self {
        Self {
            id,
            label,
            hint: None,
            error: None,
        }
    }

    fn around(self, field: Html) -> Html {
        html! {
            <div class="field">
                <label for={self.id.to_owned()}>{ self.label }</label>
                if let Some(hint) = self.hint {
                    <span id={self.hint_id()} class="hint">{ hint }</span>
                }
                if let Some(error) = self.error {
                    <span id={self.error_id()} class="error">{ error }</span>
                }
                { field }
            </div>
        }
    }

    fn hint_id(self) -> String {
        format!("{}-hint", self.id)
    }

    fn error_id(self) -> String {
        format!("{}-error", self.id)
    }

    fn described_by(self) -> Option<String> {
        let hint = self.hint.map(|_| self.hint_id());
        let error = self.error.map(|_| self.error_id());
        match (hint, error) {
            (Some(hint), Some(error)) => Some(format!("{hint} {error}")),
            (hint, error) => hint.or(error),
        }
    }
}

/// One of a closed list.
pub fn choose<T: Listed>(field: Field, now: T, onchoose: Callback<T>) -> Html {
    let list = T::all()
        .iter()
        .map(|one| (one.id().to_owned(), one.words().to_owned()));
    let onvalue = Callback::from(move |id: String| {
        if let Some(one) = T::of(&id) {
            onchoose.emit(one);
        }
    });
    choose_among(field, list.collect(), now.id(), onvalue)
}

/// One of a closed list, or that it is not known.
pub fn choose_if_known<T: Listed>(
    field: Field,
    unknown: &str,
    now: Option<T>,
    onchoose: Callback<Option<T>>,
) -> Html {
    let list = T::all()
        .iter()
        .map(|one| (one.id().to_owned(), one.words().to_owned()));
    let list = std::iter::once((String::new(), unknown.to_owned())).chain(list);
    let onvalue = Callback::from(move |id: String| onchoose.emit(T::of(&id)));
    choose_among(field, list.collect(), now.map_or("", T::id), onvalue)
}

/// One of these, by value and words. The value is set as a property too: once a person has chosen,
/// the marks on the lines alone would no longer move the choice, as undo has to.
pub fn choose_among(
    field: Field,
    list: Vec<(String, String)>,
    now: &str,
    onvalue: Callback<String>,
) -> Html {
    let onchange = Callback::from(move |event: Event| {
        if let Some(value) = browser::chosen_value(&event) {
            onvalue.emit(value);
        }
    });
    field.around(html! {
        <select id={field.id.to_owned()} ~value={now.to_owned()} {onchange} autocomplete="off" aria-describedby={field.described_by()}>
            { options(list, now) }
        </select>
    })
}

/// The lines of a list to choose from.
fn options(list: Vec<(String, String)>, now: &str) -> Html {
    list.into_iter()
        .map(|(value, words)| {
            let selected = value == now;
            html! { <option key={value.clone()} {value} {selected}>{ words }</option> }
        })
        .collect()
}

/// A line of text.
pub fn text_field(field: Field, now: &str, ontext: Callback<String>) -> Html {
    line(field, now, "text", ontext)
}

/// A line for a number.
pub fn count_field(field: Field, now: &str, ontext: Callback<String>) -> Html {
    line(field, now, "numeric", ontext)
}

fn line(field: Field, now: &str, inputmode: &'static str, ontext: Callback<String>) -> Html {
    let oninput = Callback::from(move |event: InputEvent| {
        if let Some(text) = browser::typed_text(&event) {
            ontext.emit(text);
        }
    });
    field.around(html! {
        <input id={field.id.to_owned()} class="input" type="text" {inputmode} value={now.to_owned()} {oninput}
            autocomplete="off" autocorrect="off" autocapitalize="off" spellcheck="false"
            aria-invalid={field.error.map(|_| "true")} aria-describedby={field.described_by()} />
    })
}

/// A box to tick, with its words beside it.
pub fn tick(
    label: impl Into<AttrValue>,
    hint: Option<&str>,
    checked: bool,
    ontick: Callback<bool>,
) -> Html {
    let label: AttrValue = label.into();
    let onchange = Callback::from(move |_: Event| ontick.emit(!checked));
    html! {
        <label class="opt">
            <input type="checkbox" {checked} {onchange} autocomplete="off" />
            <span>
                <b>{ label }</b>
                if let Some(hint) = hint {
                    <small>{ hint }</small>
                }
            </span>
        </label>
    }
}
