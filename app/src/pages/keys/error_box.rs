//! What is wrong with an entry, at the top of its form. It takes the focus at each try.

use yew::prelude::*;

use crate::browser;
use crate::copy::en::household::board as words;
use crate::copy::site;
use crate::ui::{error_summary, go_to_error_summary, use_household};

/// What is wrong, and where.
#[derive(Properties, PartialEq)]
pub struct ErrorBoxProps {
    /// What is wrong and what to do about it.
    pub message: AttrValue,
    /// The id of the field to go to.
    pub field: AttrValue,
    /// How often it was tried: each try takes the reader to the box again.
    pub tries: usize,
}

/// The box.
#[component]
pub fn ErrorBox(props: &ErrorBoxProps) -> Html {
    use_effect_with(props.tries, |_| go_to_error_summary());
    error_summary(&props.message, props.field.clone())
}

/// Says in the board's title that something is wrong with an entry, for as long as it is.
#[hook]
pub fn use_error_title(is_wrong: bool) {
    let title = if use_household().is_example {
        site::example_title(words::TITLE)
    } else {
        words::TITLE.to_owned()
    };
    use_effect_with((is_wrong, title), |(is_wrong, title)| {
        let after = is_wrong.then(|| site::full_title(title));
        if *is_wrong {
            browser::set_title(&site::full_title(&site::error_page_title(title)));
        }
        move || {
            if let Some(title) = after {
                browser::set_title(&title);
            }
        }
    });
}
