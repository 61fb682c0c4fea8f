//! How far one has come: in words, and as a small measuring rule beside them.

use yew::prelude::*;

use crate::copy::site;
use crate::drawing::ProgressRule;

/// Where one is.
#[derive(Properties, PartialEq)]
pub struct ProgressProps {
    /// The page's place in the path, from 0.
    pub n: usize,
    /// How many pages the path has, as far as the answers tell.
    pub total: usize,
}

/// "Step 3 of 15", and the rule.
#[component]
pub fn Progress(props: &ProgressProps) -> Html {
    let step = props.n + 1;
    html! {
        <>
            <p class="step">{ site::step_of(step, props.total) }</p>
            <ProgressRule done={step} total={props.total} />
        </>
    }
}
