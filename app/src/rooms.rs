//! The second program: the pages to read and to try out. It is loaded when one of them is first
//! opened, stands inside the first program's frame, and keeps what it holds while another page is
//! shown.

use std::cell::RefCell;

use self_check_core::household::Finding;
use yew::AppHandle;
use yew::prelude::*;

use crate::brought::Brought;
use crate::browser::{self, Host};
use crate::household::{HouseholdAct, HouseholdHandle, HouseholdState};
use crate::keeping::{KeepHandle, use_keeping};
use crate::pages::{About, Distance, Keys, KeysPage, Learn, Picture, Read};
use crate::route::Route;
use crate::ui::{Visit, use_address};

/// The program, once it has been entered.
struct Entered {
    element: Host,
    app: AppHandle<Rooms>,
    visits: u32,
}

thread_local! {
    static ENTERED: RefCell<Option<Entered>> = const { RefCell::new(None) };
}

/// Gets ready; nothing is shown before [`enter`].
pub fn start() {
    browser::report_panics();
    set_apart();
    browser::forget_when_left(forget);
}

/// Shows the program in `host`, where the first program has made room for it. `is_first_page` says
/// that the page was loaded at this address, so that nobody has to be taken anywhere; `brought` is
/// what comes over from a check.
pub fn enter(host: &Host, is_first_page: bool, brought: u32) {
    let brought = Brought::of(brought);
    ENTERED.with_borrow_mut(|entered| match entered {
        Some(entered) => entered.again(host, brought),
        None => *entered = Entered::at_first(host, is_first_page, brought),
    });
}

impl Entered {
    fn at_first(host: &Host, is_first_page: bool, brought: Brought) -> Option<Self> {
        browser::set_arrived(!is_first_page);
        let element = browser::room_element()?;
        browser::stand_in(host, &element);
        let visits = 0;
        let props = RoomsProps { visits, brought };
        let app = yew::Renderer::with_root_and_props(element.clone(), props);
        Some(Self {
            element,
            app: app.render(),
            visits,
        })
    }

    fn again(&mut self, host: &Host, brought: Brought) {
        browser::stand_in(host, &self.element);
        self.visits += 1;
        let visits = self.visits;
        self.app.update(RoomsProps { visits, brought });
    }
}

/// Takes the program out of the page and drops what it held.
fn forget() {
    if let Some(entered) = ENTERED.take() {
        browser::take_out(&entered.element);
        entered.app.destroy();
    }
}

/// Yew marks elements that listen with a number that counts the roots of its own program, from 1.
/// Of two programs on one page each would take the other's elements for its own and call whatever
/// it has under the same number, so this one gives its first root away.
fn set_apart() {
    if let Some(element) = browser::room_element() {
        yew::Renderer::<Nothing>::with_root(element)
            .render()
            .destroy();
    }
}

#[component]
fn Nothing() -> Html {
    html! {}
}

#[derive(Properties, PartialEq)]
struct RoomsProps {
    /// How often the reader has come back.
    visits: u32,
    /// What came over with the reader this time.
    brought: Brought,
}

/// The page of the present address.
#[component]
fn Rooms(props: &RoomsProps) -> Html {
    let RoomsProps { visits, brought } = *props;
    // Where safety comes first, nothing else is ever shown before.
    let household = use_reducer(|| HouseholdState::of_visitor(brought.safety_first));
    {
        let household = household.dispatcher();
        use_effect_with(visits, move |_| {
            if brought.safety_first {
                household.dispatch(HouseholdAct::PutSafetyFirst);
            }
            if let Some(found) = brought.found {
                household.dispatch(HouseholdAct::TakeOver {
                    finding: Finding {
                        exposure: found.exposure,
                        safety_first: false,
                    },
                    is_of_begun_key: found.is_of_begun_key,
                });
            }
        });
    }
    let keeping = use_keeping(&household);
    let visit = Visit {
        route: use_address(Route::is_room),
        count: visits,
        is_example: false,
    };
    html! {
        <ContextProvider<HouseholdHandle> context={household}>
            <ContextProvider<KeepHandle> context={keeping}>
                <ContextProvider<Visit> context={visit}>{ page(visit.route) }</ContextProvider<Visit>>
            </ContextProvider<KeepHandle>>
        </ContextProvider<HouseholdHandle>>
    }
}

fn page(route: Route) -> Html {
    match route {
        Route::Learn => html! { <Learn /> },
        Route::LearnPage { n } => html! { <Read {n} /> },
        Route::Distance => html! { <Distance /> },
        Route::Picture => html! { <Picture /> },
        Route::About => html! { <About /> },
        Route::Keys => html! { <Keys /> },
        Route::KeysPage { n } => html! { <KeysPage {n} /> },
        Route::Start | Route::Check { .. } | Route::Ruler | Route::NotFound => html! {},
    }
}
