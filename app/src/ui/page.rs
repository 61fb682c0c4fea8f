//! What every page does on being shown.

use yew::prelude::*;
use yew_router::prelude::*;

use crate::browser;
use crate::copy::site;
use crate::route::Route;
use crate::session::{Session, SessionHandle};

/// The session, from the nearest provider.
#[hook]
pub fn use_session() -> SessionHandle {
    let own = use_reducer(Session::default);
    use_context::<SessionHandle>().unwrap_or(own)
}

/// Gives the page its title and, whenever the address has changed, takes the reader to its top and
/// its heading.
#[hook]
pub fn use_page(title: String) {
    let title = if use_session().is_example {
        site::example_title(&title)
    } else {
        title
    };
    use_effect_with(title, |title| browser::set_title(&site::full_title(title)));
    let route = use_route::<Route>();
    use_effect_with(route, |_| browser::arrive());
}
