//! How far one has come: in words, and as a small measuring rule beside them.

use yew::prelude::*;

use crate::copy::site;
use crate::drawing::ProgressRule;

/// How long the check is, as far as the answers tell.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Length {
    /// Its pages.
    pub pages: usize,
    /// Whether an answer still to come may make it shorter.
    pub may_shorten: bool,
}

/// Where one is.
#[derive(Properties, PartialEq)]
pub struct ProgressProps {
    /// The page's place in the path, from 0.
    pub n: usize,
    /// How many pages the path has.
    pub length: Length,
}

/// "Step 3 of at most 15", and the rule.
#[component]
pub fn Progress(props: &ProgressProps) -> Html {
    let step = props.n + 1;
    let Length { pages, may_shorten } = props.length;
    html! {
        <>
            <p class="step">{ site::step_of(step, pages, may_shorten) }</p>
            <ProgressRule done={step} total={pages} />
        </>
    }
}
