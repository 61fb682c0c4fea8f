//! What is known of single regions, each row folded under its name.

use self_check_core::regions::{LAST_COMPARED, REGIONS, Region, RegionRow, TenancyRow};
use yew::prelude::*;

use crate::copy::{self, site};
use crate::ui::source_line;

/// The rows, but for the one that stands for everywhere else: the page itself says what to ask.
pub fn regions() -> Html {
    let listed = REGIONS.iter().filter(|row| row.region != Region::Elsewhere);
    html! {
        <>
            <p class="note">{ copy::regions_compared(LAST_COMPARED) }</p>
            { for listed.map(region) }
        </>
    }
}

fn region(row: &RegionRow) -> Html {
    html! {
        <details>
            <summary>{ copy::region(row.region) }</summary>
            <p>{ copy::licensing(row.licensing) }</p>
            if !row.register.is_empty() {
                <p>{ site::REGISTER }{ " " }{ row.register }</p>
            }
            { for row.sources.iter().map(|source| html! { <p class="src">{ source_line(source) }</p> }) }
            { for row.tenancy.iter().map(tenancy) }
        </details>
    }
}

/// The scope stands before the rule, so that nobody takes it for a rule of the whole region.
fn tenancy(row: &TenancyRow) -> Html {
    let scope = copy::tenancy_scope(row.scope);
    html! {
        <>
            <p>
                if let Some(scope) = scope {
                    { scope }{ " " }
                }
                { copy::tenancy_rule(row.rule) }
            </p>
            <p class="src">{ source_line(row.source) }</p>
        </>
    }
}
