//! An address that leads nowhere.

use yew::prelude::*;

use crate::copy::site;
use crate::route::Route;
use crate::ui::Titled;

/// Says so, and leads to the start.
pub fn not_found() -> Html {
    html! {
        <Titled title={site::NOT_FOUND}>
            <div class="narrow">
                <h1 tabindex="-1">{ site::NOT_FOUND }</h1>
                <p class="row"><a class="press" href={Route::Start}>{ site::TO_START }</a></p>
            </div>
        </Titled>
    }
}
