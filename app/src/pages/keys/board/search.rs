//! Finding one of many: a long list is shown page by page, and can be narrowed by a word.

use yew::prelude::*;

use super::Desk;
use crate::copy::en::household::board as words;
use crate::ui::{Field, text_field, tick};

/// So many rows are shown at first and with each press. Our assumption: more than a person looks
/// through; a page of so many rows is drawn well within a frame.
pub const PAGE: usize = 12;

/// What a list is narrowed to.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Search {
    text: String,
    only_out: bool,
    pages: usize,
}

impl Search {
    /// How many rows are shown.
    pub fn shown(&self) -> usize {
        (self.pages + 1) * PAGE
    }

    /// Whether a row of this name belongs to what is looked for.
    pub fn finds(&self, name: &str, is_out: bool) -> bool {
        (is_out || !self.only_out)
            && (self.text.is_empty() || name.to_lowercase().contains(&self.text.to_lowercase()))
    }
}

/// The line above a long list.
pub fn search_line(id: &str, search: &UseStateHandle<Search>, found: usize, all: usize) -> Html {
    if all <= PAGE {
        return html! {};
    }
    let ontext = {
        let search = search.clone();
        Callback::from(move |text: String| {
            search.set(Search {
                text,
                pages: 0,
                ..(*search).clone()
            });
        })
    };
    let ontick = {
        let search = search.clone();
        Callback::from(move |only_out: bool| {
            search.set(Search {
                only_out,
                pages: 0,
                ..(*search).clone()
            });
        })
    };
    html! {
        <div class="find">
            { text_field(Field::new(&format!("find-{id}"), words::FIND), &search.text, ontext) }
            { tick(words::ONLY_OUT, None, search.only_out, ontick) }
            <p class="note" role="status">
                if found == 0 {
                    { words::NONE_FOUND }
                } else {
                    { words::shown(found.min(search.shown()), found) }
                }
            </p>
        </div>
    }
}

/// The rows to show: the first that were found, and the one with the open form, whether it was found or
/// not. What is written in it must not go by looking for something else. `found` is in the order of ids.
pub fn listed<I: Copy + Ord>(found: &[I], shown: usize, open: Option<I>) -> Vec<I> {
    let mut rows: Vec<I> = found.iter().take(shown).copied().collect();
    if let Some(open) = open
        && let Err(place) = rows.binary_search(&open)
    {
        rows.insert(place, open);
    }
    rows
}

/// The press for more rows. Once it is gone with the last of them, the focus goes on to `next`, in the
/// first row that is new.
pub fn more(
    desk: &Desk,
    search: &UseStateHandle<Search>,
    found: usize,
    next: Option<String>,
) -> Html {
    let left = found.saturating_sub(search.shown());
    if left == 0 {
        return html! {};
    }
    let onclick = {
        let (desk, search) = (desk.clone(), search.clone());
        Callback::from(move |_: MouseEvent| {
            search.set(Search {
                pages: search.pages + 1,
                ..(*search).clone()
            });
            if let Some(next) = next.as_ref().filter(|_| left <= PAGE) {
                desk.go_to(next);
            }
        })
    };
    html! {
        <p class="row">
            <button type="button" class="press-quiet" {onclick}>{ words::show_more(left.min(PAGE)) }</button>
        </p>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn search_finds_by_any_part_of_a_name_and_by_what_is_out() {
        let search = Search {
            text: "DOOR".into(),
            only_out: true,
            pages: 0,
        };
        assert!(search.finds("Front door, workshop", true));
        assert!(!search.finds("Front door, workshop", false));
        assert!(!search.finds("Shed", true));
        assert!(Search::default().finds("Shed", false));
    }

    #[test]
    fn row_with_the_open_form_is_always_shown_in_its_place() {
        let found = [2, 4, 6, 8];
        assert_eq!(listed(&found, 3, None), [2, 4, 6]);
        assert_eq!(listed(&found, 3, Some(4)), [2, 4, 6]);
        assert_eq!(listed(&found, 3, Some(8)), [2, 4, 6, 8]);
        assert_eq!(listed(&found, 3, Some(1)), [1, 2, 4, 6]);
        assert_eq!(listed(&[], 3, Some(5)), [5]);
    }
}
