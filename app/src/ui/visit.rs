//! Where the reader is: each program follows the one address of the page, and its pages read it here.

use yew::prelude::*;

use crate::browser;
use crate::route::Route;

/// The page that is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Visit {
    /// Its address.
    pub route: Route,
    /// How often the reader has come back to this program from the other.
    pub count: u32,
    /// Whether the answers on it are the invented household's.
    pub is_example: bool,
}

/// The address, for as long as it is one that this program `shows`; then the last that was.
#[hook]
pub fn use_address(shows: fn(Route) -> bool) -> Route {
    let route = use_state_eq(|| Route::at(&browser::address()));
    {
        let route = route.setter();
        use_effect_with((), move |()| {
            let follow = move || {
                let next = Route::at(&browser::address());
                if shows(next) {
                    route.set(next);
                }
            };
            // The address may have changed between the first look at it and now.
            follow();
            let listener = browser::on_move(follow);
            move || drop(listener)
        });
    }
    *route
}

/// The page that is shown, from the program around it.
#[hook]
pub fn use_visit() -> Visit {
    use_context::<Visit>().unwrap_or(Visit {
        route: Route::NotFound,
        count: 0,
        is_example: false,
    })
}
