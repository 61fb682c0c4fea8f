//! The board: what could be in wrong hands, the keys on their hooks, the people, the doors.

mod door;
mod gaps;
mod key;
mod person;
mod search;

use std::rc::Rc;

use self_check_core::household::{
    CopyId, DoorId, HolderId, KeyCopy, KeyId, LockId, Loss, Place, WayId,
};
use yew::prelude::*;

use super::bar::Bar;
use super::forms::{DoorForm, HolderForm, KeyForm};
use super::keep::{Keep, proof};
use super::waiting::Waiting;
use super::{OverviewProps, example_note, on_paper, pages_without, safety_note};
use crate::browser;
use crate::copy::en::household::board as words;
use crate::household::{HouseholdAct, HouseholdHandle, Overview};
use crate::keeping::use_kept;
use crate::ui::use_household;
pub use key::due;
pub use person::went;
use search::{Search, listed, more, search_line};

/// Which form is open: one at a time.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Open {
    /// A new door.
    NewDoor,
    /// This door.
    Door(DoorId),
    /// A new lock on this door.
    NewLock(DoorId),
    /// This lock.
    Lock(LockId),
    /// A new way in at this door.
    NewWay(DoorId),
    /// This way in.
    Way(WayId),
    /// A new key.
    NewKey,
    /// This key.
    Key(KeyId),
    /// A new person.
    NewPerson,
    /// This person.
    Person(HolderId),
    /// What those need of whom nobody has said it.
    Needs,
}

/// Where the focus goes next: to the first of these that is there by then. The count tells the same
/// place again.
#[derive(Clone, Debug, Default, PartialEq)]
struct Focus {
    ids: Vec<String>,
    count: usize,
}

/// What the rows of the board share: what they show, and what can be done from them.
#[derive(Clone, PartialEq)]
pub struct Desk {
    /// The household, turned round.
    pub overview: Rc<Overview>,
    state: HouseholdHandle,
    open: UseStateHandle<Option<Open>>,
    focus: UseStateHandle<Focus>,
}

impl Desk {
    /// Does something in one press.
    pub fn press(
        &self,
        acts: impl Fn(&Overview) -> HouseholdAct + 'static,
    ) -> Callback<MouseEvent> {
        let desk = self.clone();
        Callback::from(move |_: MouseEvent| desk.state.dispatch(acts(&desk.overview)))
    }

    /// The button with this id opens a form.
    pub fn opener(
        &self,
        open: Open,
        id: String,
        class: &'static str,
        label: &str,
        of: &str,
    ) -> Html {
        let desk = self.clone();
        let onclick = Callback::from(move |_: MouseEvent| {
            desk.open.set(Some(open));
            desk.go_to(FORM_TITLE);
        });
        html! {
            <button type="button" {id} {class} {onclick} aria-label={(!of.is_empty()).then(|| words::about(label, of))}>
                { label }
            </button>
        }
    }

    /// Whether this form is open.
    pub fn is_open(&self, open: Open) -> bool {
        *self.open == Some(open)
    }

    /// Closes the form and gives the focus back to where it was opened from; to its `part` of the board
    /// where that is gone, because what it was about is, or fits no more what was looked for.
    fn closer(&self, opener: String, part: &str) -> Callback<()> {
        let (desk, part) = (self.clone(), part.to_owned());
        Callback::from(move |()| {
            desk.open.set(None);
            desk.go_to_first(&[&opener, &part]);
        })
    }

    /// Moves the focus once the page is as it will be.
    pub fn go_to(&self, id: &str) {
        self.go_to_first(&[id]);
    }

    /// Moves the focus, once the page is as it will be, to the first of these that is there.
    pub fn go_to_first(&self, ids: &[&str]) {
        self.focus.set(Focus {
            ids: ids.iter().map(|&id| id.to_owned()).collect(),
            count: self.focus.count + 1,
        });
    }

    /// The key whose row has the open form.
    fn open_key(&self) -> Option<KeyId> {
        match *self.open {
            Some(Open::Key(key)) => Some(key),
            _ => None,
        }
    }

    /// The person whose row has the open form.
    fn open_person(&self) -> Option<HolderId> {
        match *self.open {
            Some(Open::Person(holder)) => Some(holder),
            _ => None,
        }
    }

    /// The door whose row has the open form, or to which what is edited belongs.
    fn open_door(&self) -> Option<DoorId> {
        let household = &self.overview.household;
        match (*self.open)? {
            Open::Door(door) | Open::NewLock(door) | Open::NewWay(door) => Some(door),
            Open::Lock(lock) => household.lock(lock).map(|lock| lock.door),
            Open::Way(way) => household.way(way).map(|way| way.door),
            _ => None,
        }
    }
}

/// Where the focus goes when a form opens.
pub const FORM_TITLE: &str = "form-title";

/// The headings of the board's parts.
const KEYS: &str = "keys";
const PEOPLE: &str = "people";
const DOORS: &str = "doors";

/// The board.
#[component]
pub fn Board(props: &OverviewProps) -> Html {
    let state = use_household();
    let kept = use_kept();
    let open = use_state(|| None::<Open>);
    let focus = use_state(Focus::default);
    let keys = use_state(Search::default);
    let people = use_state(Search::default);
    let doors = use_state(Search::default);
    use_effect_with((*focus).clone(), |focus| {
        if focus.count > 0 {
            browser::focus_first(&focus.ids);
        }
    });
    {
        // A form's ids and what was edited in it are nothing in another home.
        let open = open.setter();
        use_effect_with(state.homes, move |_| open.set(None));
    }
    let overview = Rc::clone(&props.overview);
    let desk = Desk {
        overview: Rc::clone(&overview),
        state: state.clone(),
        open,
        focus,
    };
    let mut sections = vec![keys_section(&desk, &keys), people_section(&desk, &people)];
    // A key is known by what it opens: before there is a door it could hardly be named.
    let place = match overview.household.doors().len() {
        0 => 0,
        _ => sections.len(),
    };
    sections.insert(place, doors_section(&desk, &doors));
    html! {
        <article class={classes!("keys", on_paper(&state))}>
            { example_note(&state) }
            { head(&overview, &state) }
            if !overview.household.is_empty() {
                <div class="keys-ways">{ ways_on(&overview, &state) }{ ways_within() }</div>
            }
            if overview.household.is_empty() {
                { proof(kept.as_ref()) }
            }
            <Bar overview={Rc::clone(&overview)} />
            if let Some(finding) = state.waiting {
                <Waiting {finding} overview={Rc::clone(&overview)} ondone={assigned(&desk)} />
            }
            { for sections }
            { gaps::gaps(&desk) }
            <Keep />
        </article>
    }
}

/// Once a finding is given to a key, the reader is taken to that key.
fn assigned(desk: &Desk) -> Callback<Option<KeyId>> {
    let desk = desk.clone();
    Callback::from(move |key: Option<KeyId>| match key {
        Some(key) => desk.go_to_first(&[&key::title_id(key), KEYS]),
        None => desk.go_to(KEYS),
    })
}

/// Whether anything is out: then the way to the plan stands beside what matters most, and nowhere else
/// at the top.
fn is_anything_out(overview: &Overview) -> bool {
    let household = &overview.household;
    let is_lost = |(_, copy): (CopyId, &KeyCopy)| matches!(copy.place, Place::Lost { .. });
    let mut ways = household.ways();
    !overview.exposed.is_empty()
        || !overview.open_to_others.is_empty()
        || household.copies().any(is_lost)
        || ways.any(|(_, way)| way.losses().next().is_some())
}

/// The ways to the other pages, without one that stands above already.
fn ways_on(overview: &Overview, state: &HouseholdHandle) -> Html {
    let above = is_anything_out(overview).then_some(super::PLAN);
    pages_without(state, &[None, above])
}

/// The ways to the parts of the board, which on a long one lie many presses of the tab key apart.
fn ways_within() -> Html {
    let parts = [
        (DOORS, words::DOORS),
        (KEYS, words::KEYS),
        (PEOPLE, words::PEOPLE),
    ];
    let link = |(id, name): (&'static str, &'static str)| {
        let onclick = Callback::from(move |event: MouseEvent| {
            // The page's address is no place in it.
            event.prevent_default();
            browser::focus_id(id);
        });
        html! { <li key={id}><a href={format!("#{id}")} {onclick}>{ name }</a></li> }
    };
    html! {
        <nav class="keys-pages screen-only" aria-label={words::PARTS}>
            <ul class="row">{ for parts.into_iter().map(link) }</ul>
        </nav>
    }
}

/// What matters most: what could be in wrong hands, and what that opens.
fn head(overview: &Overview, state: &HouseholdHandle) -> Html {
    let household = &overview.household;
    let out = overview.out();
    let (held, open): (Vec<DoorId>, Vec<DoorId>) = overview
        .open_to_others
        .iter()
        .partition(|&&door| overview.is_held(door));
    let named = |doors: &[DoorId]| {
        let named = doors.iter().take(MOST_NAMED).copied();
        let named = overview.names.doors_within(named);
        match doors.len().saturating_sub(MOST_NAMED) {
            0 => named,
            more => format!("{named}, {}", words::and_more(more)),
        }
    };
    html! {
        <header class="keys-head">
            <h1 tabindex="-1">{ words::headline(out, household.keys().len()) }</h1>
            <p class="lede">
                { words::headline_doors(&named(&open), open.len(), out) }
                if !held.is_empty() {
                    { " " }{ words::headline_held(&named(&held)) }
                }
            </p>
            { safety_note(state) }
            if is_anything_out(overview) {
                <p class="row">
                    <a class="press" href={super::route(Some(super::PLAN))}>{ words::SEE_PLAN }</a>
                </p>
            }
            <p class="note">
                { words::sizes(household.doors().len(), household.keys().len(),
                    household.copies().len(), household.holders().len()) }
            </p>
        </header>
    }
}

/// So many doors are named; more are counted.
const MOST_NAMED: usize = 8;

fn keys_section(desk: &Desk, search: &UseStateHandle<Search>) -> Html {
    let overview = &desk.overview;
    let all = overview.household.keys().map(|(id, _)| id);
    let found: Vec<KeyId> = all
        .filter(|&key| search.finds(overview.names.key(key), overview.exposed.contains_key(&key)))
        .collect();
    let open = desk
        .open_key()
        .filter(|&key| overview.household.key(key).is_some());
    let shown = listed(&found, search.shown(), open);
    let next = found.get(search.shown()).map(|&key| key::opener_id(key));
    html! {
        <section key={KEYS} aria-labelledby={KEYS}>
            <h2 id={KEYS} tabindex="-1">{ words::KEYS }</h2>
            if !found.is_empty() {
                <p class="note">{ words::CHECK_FORGETS }</p>
            }
            { search_line(KEYS, search, found.len(), overview.household.keys().len()) }
            <ul class="hooks">{ for shown.into_iter().map(|key| key::row(desk, key)) }</ul>
            { more(desk, search, found.len(), next) }
            if desk.is_open(Open::NewKey) {
                <KeyForm overview={Rc::clone(overview)} key_id={None::<KeyId>} onclose={desk.closer("add-key".into(), KEYS)} />
            } else {
                <p class="row">{ desk.opener(Open::NewKey, "add-key".into(), "press-quiet", words::ADD_KEY, "") }</p>
            }
        </section>
    }
}

fn people_section(desk: &Desk, search: &UseStateHandle<Search>) -> Html {
    let overview = &desk.overview;
    let all = overview.household.holders();
    let found: Vec<HolderId> = all
        .filter(|(id, holder)| {
            let is_out = holder.no_longer_should || overview.lost.contains_key(id);
            search.finds(overview.names.holder(*id), is_out)
        })
        .map(|(id, _)| id)
        .collect();
    let open = desk
        .open_person()
        .filter(|&holder| overview.household.holder(holder).is_some());
    let shown = listed(&found, search.shown(), open);
    let next = found
        .get(search.shown())
        .map(|&holder| person::opener_id(holder));
    html! {
        <section key={PEOPLE} aria-labelledby={PEOPLE}>
            <h2 id={PEOPLE} tabindex="-1">{ words::PEOPLE }</h2>
            { search_line(PEOPLE, search, found.len(), overview.household.holders().len()) }
            <ul class="holders">{ for shown.into_iter().map(|holder| person::row(desk, holder)) }</ul>
            { more(desk, search, found.len(), next) }
            if desk.is_open(Open::NewPerson) {
                <HolderForm overview={Rc::clone(overview)} holder={None::<HolderId>} onclose={desk.closer("add-person".into(), PEOPLE)} />
            } else {
                <p class="row">{ desk.opener(Open::NewPerson, "add-person".into(), "press-quiet", words::ADD_PERSON, "") }</p>
            }
        </section>
    }
}

fn doors_section(desk: &Desk, search: &UseStateHandle<Search>) -> Html {
    let overview = &desk.overview;
    let all = overview.household.doors().map(|(id, _)| id);
    let found: Vec<DoorId> = all
        .filter(|door| {
            search.finds(
                overview.names.door(*door),
                overview.open_to_others.contains(door),
            )
        })
        .collect();
    let open = desk
        .open_door()
        .filter(|&door| overview.household.door(door).is_some());
    let shown = listed(&found, search.shown(), open);
    let next = found.get(search.shown()).map(|&door| door::opener_id(door));
    html! {
        <section key={DOORS} aria-labelledby={DOORS}>
            <h2 id={DOORS} tabindex="-1">{ words::DOORS }</h2>
            if overview.household.doors().len() == 0 {
                <p>{ words::DOORS_FIRST }</p>
            }
            { search_line(DOORS, search, found.len(), overview.household.doors().len()) }
            <ul class="leaves">{ for shown.into_iter().map(|door| door::row(desk, door)) }</ul>
            { more(desk, search, found.len(), next) }
            if desk.is_open(Open::NewDoor) {
                <DoorForm overview={Rc::clone(overview)} door={None::<DoorId>} onclose={desk.closer("add-door".into(), DOORS)} />
            } else {
                <p class="row">{ desk.opener(Open::NewDoor, "add-door".into(), "press-quiet", words::ADD_DOOR, "") }</p>
            }
        </section>
    }
}

/// The list of ways in which something can be lost, as the value and words of a list.
pub fn losses() -> Vec<(String, String)> {
    use crate::copy::Listed;
    Loss::all()
        .iter()
        .map(|loss| (loss.id().to_owned(), loss.words().to_owned()))
        .collect()
}

/// Where a copy is, in words.
pub fn place_words(overview: &Overview, copy: CopyId) -> String {
    let names = &overview.names;
    let with = |words: &str, by: Option<HolderId>| match by {
        Some(holder) => format!("{words} ({})", names.holder(holder)),
        None => words.to_owned(),
    };
    match overview.household.copy(copy).map(|copy| copy.place) {
        None => String::new(),
        Some(Place::Held(holder)) => names.holder(holder).to_owned(),
        Some(Place::InKeySafe(way)) => names.way(way).to_owned(),
        Some(Place::AtHome { returned_by: None }) => words::AT_HOME.to_owned(),
        Some(Place::AtHome {
            returned_by: Some(holder),
        }) => format!(
            "{}, {} {}",
            words::AT_HOME,
            words::CAME_BACK,
            names.holder(holder)
        ),
        Some(Place::Lost { by, loss, .. }) => with(words::gone(loss), by),
        Some(Place::Scrapped { by }) => with(words::SCRAPPED, by),
    }
}
