//! How far one has come: in words, and as a small measuring rule beside them.

use yew::prelude::*;

use crate::copy::site;
use crate::drawing::progress_rule;

/// How long the check is, as far as the answers tell.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Length {
    /// Its pages.
    pub pages: usize,
    /// Whether an answer still to come may make it shorter.
    pub may_shorten: bool,
}

/// "Step 3 of at most 15", and the rule, for page `n` of the path, from 0.
pub fn progress(n: usize, length: Length) -> Html {
    let step = n + 1;
    let Length { pages, may_shorten } = length;
    html! {
        <>
            <p class="step">{ site::step_of(step, pages, may_shorten) }</p>
            { progress_rule(step, pages) }
        </>
    }
}
