//! An address that leads nowhere.

use yew::prelude::*;

use crate::copy::site;
use crate::route::Route;
use crate::ui::use_page;

/// Says so, and leads to the start.
#[component]
pub fn NotFound() -> Html {
    use_page(site::NOT_FOUND.to_owned());
    html! {
        <div class="narrow">
            <h1 tabindex="-1">{ site::NOT_FOUND }</h1>
            <p class="row">
                <a class="press" href={Route::Start}>{ site::TO_START }</a>
            </p>
        </div>
    }
}
