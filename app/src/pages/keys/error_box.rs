//! What is wrong with an entry, at the top of its form. It takes the focus at each try.

use yew::prelude::*;

use crate::ui::{error_summary, go_to_error_summary};

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
