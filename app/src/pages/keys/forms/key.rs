//! A key: what it opens, where its copies are, and copies given to people.

use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

use self_check_core::household::{Change, CopyId, Key, KeyCopy, KeyId, LockId, Place};
use yew::prelude::*;

use super::super::board::place_words;
use super::edit::Edit;
use super::filing::use_filing;
use super::place::{Where, places};
use super::tick_list::TickList;
use crate::browser;
use crate::copy::en::household::board as words;
use crate::household::Overview;
use crate::ui::{Field, choose_among};

/// So many copies can be put down at once.
const MOST_AT_ONCE: u16 = 100;
/// So many copies are shown with each press for more.
const COPIES_SHOWN: usize = 12;

/// The list of copies.
const COPIES: &str = "key-copies";

/// Which key; a new one where there is none.
#[derive(Properties, PartialEq)]
pub struct KeyFormProps {
    /// The household.
    pub overview: Rc<Overview>,
    /// The key.
    pub key_id: Option<KeyId>,
    /// The form is done with.
    pub onclose: Callback<()>,
}

/// What was edited. The rest stays as it is by then: while the form is open a copy can turn up in
/// another row, and its key may have been copied.
#[derive(Clone, Debug, PartialEq)]
struct Draft {
    restricted: Option<Option<bool>>,
    may_be_copied: Option<bool>,
    opens: BTreeMap<LockId, bool>,
    moved: BTreeMap<CopyId, Where>,
    removed: BTreeSet<CopyId>,
    given: Where,
    count: u16,
    shown: usize,
}

impl Draft {
    fn of(key: Option<KeyId>) -> Self {
        Self {
            restricted: None,
            may_be_copied: None,
            opens: BTreeMap::new(),
            moved: BTreeMap::new(),
            removed: BTreeSet::new(),
            given: Where::Home,
            count: u16::from(key.is_none()),
            shown: COPIES_SHOWN,
        }
    }

    /// The key with what was edited.
    fn applied_to(&self, key: Key) -> Key {
        Key {
            restricted: self.restricted.unwrap_or(key.restricted),
            may_be_copied: key
                .may_be_copied
                .filter(|_| self.may_be_copied.unwrap_or(true)),
            ..key
        }
    }

    fn changes(&self, overview: &Overview, id: Option<KeyId>) -> Vec<Change> {
        let household = &overview.household;
        let part = self.applied_to(part(overview, id));
        let (key, first) = match id {
            Some(id) => (id, Change::SetKey(id, part)),
            None => (household.next_key(), Change::AddKey(part)),
        };
        let before = locks_of(overview, key);
        let opened = |opens: bool| move |&lock: &LockId| Change::OpensLock { key, lock, opens };
        let mut changes = vec![first];
        let edited = |opens: bool| {
            let locks = self.opens.iter().filter(move |&(_, &now)| now == opens);
            locks.map(|(lock, _)| lock)
        };
        let shut = edited(false).filter(|lock| before.contains(lock));
        changes.extend(shut.map(opened(false)));
        let newly = edited(true).filter(|lock| !before.contains(lock));
        changes.extend(newly.map(opened(true)));
        changes.extend(self.removed.iter().map(|&copy| Change::RemoveCopy(copy)));
        let moved = self
            .moved
            .iter()
            .filter(|(copy, _)| !self.removed.contains(copy));
        changes.extend(moved.filter_map(|(&copy, to)| {
            let place = household.copy(copy)?.place;
            let to = (*to != Where::of(place)).then(|| to.place(place))?;
            Some(Change::Move { copy, to })
        }));
        let place = self.given.place(Place::AtHome { returned_by: None });
        changes.extend((0..self.count).map(|_| Change::AddCopy(KeyCopy { key, place })));
        changes
    }
}

/// The key as it is; for a new one, as it begins.
fn part(overview: &Overview, key: Option<KeyId>) -> Key {
    let known = key.and_then(|key| overview.household.key(key));
    known.copied().unwrap_or_default()
}

/// The locks that a key turns.
fn locks_of(overview: &Overview, key: KeyId) -> BTreeSet<LockId> {
    let locks = overview.household.locks();
    let turned = locks.filter(|(_, lock)| lock.keys.contains(&key));
    turned.map(|(id, _)| id).collect()
}

/// Every lock to be ticked, door by door. One that is alone on its door is called as the door is.
fn locks_to_tick(overview: &Overview) -> Vec<(u32, String)> {
    let doors = overview.household.doors();
    let on_door = |(door, _)| overview.locks.get(&door).into_iter().flatten();
    let name = |&lock: &LockId| (lock.number(), overview.names.lock(lock).to_owned());
    doors.flat_map(on_door).map(name).collect()
}

/// The form of a key.
#[component]
pub fn KeyForm(props: &KeyFormProps) -> Html {
    let filing = use_filing(&props.onclose);
    let overview = Rc::clone(&props.overview);
    let draft = use_state(|| Draft::of(props.key_id));
    let edit = Edit(draft.clone());
    {
        // The press goes with its row, or with the last rows: on to the list.
        let copies = props.key_id.and_then(|key| overview.copies.get(&key));
        let all_shown = copies.is_none_or(|copies| copies.len() <= draft.shown);
        let gone = (draft.removed.len(), draft.shown > COPIES_SHOWN && all_shown);
        use_effect_with(gone, |&(removed, is_more_gone)| {
            if removed > 0 || is_more_gone {
                browser::focus_id(COPIES);
            }
        });
    }
    let items = use_memo(overview.household.clone(), |_| locks_to_tick(&overview));
    let title = match props.key_id {
        Some(key) => words::key_to(&overview.names.key_in_a_row(key)),
        None => words::ADD_KEY.to_owned(),
    };
    let onsave = {
        let (filing, draft, overview, key) = (
            filing.clone(),
            draft.clone(),
            Rc::clone(&overview),
            props.key_id,
        );
        Callback::from(move |()| {
            filing.file(&overview, "key-doors", draft.changes(&overview, key));
        })
    };
    let onremove = props.key_id.map(|key| {
        let (filing, overview) = (filing.clone(), Rc::clone(&overview));
        Callback::from(move |()| filing.remove(&overview, Change::RemoveKey(key)))
    });
    let opened = props.key_id.map(|key| locks_of(&overview, key));
    let opened = opened.unwrap_or_default();
    let kept = opened.iter().filter(|lock| !draft.opens.contains_key(lock));
    let newly = draft.opens.iter().filter(|&(_, &opens)| opens);
    let locks = kept.chain(newly.map(|(lock, _)| lock));
    let ticked: BTreeSet<u32> = locks.map(|lock| lock.number()).collect();
    let ontick = edit.with(|draft: &mut Draft, (lock, is_ticked): (u32, bool)| {
        draft.opens.insert(LockId::new(lock), is_ticked);
    });
    let known = part(&overview, props.key_id);
    let now = draft.applied_to(known);
    let fields = html! {
        <>
            if let Some(wrong) = filing.wrong_with("key-doors") {
                <p class="error">{ wrong.to_owned() }</p>
            }
            if !items.is_empty() {
                <TickList id="key-doors" legend={words::KEY_OPENS} {items} {ticked} {ontick} />
            }
            { restricted(now.restricted, &edit) }
            if known.may_be_copied.is_some() {
                { may_be_copied(now.may_be_copied.is_some(), &edit) }
            }
            if let Some(key) = props.key_id {
                { copies(&overview, key, &draft, &edit) }
            }
            { give(&overview, &draft, &edit) }
        </>
    };
    filing.sheet(&title, fields, onsave, onremove)
}

fn restricted(now: Option<bool>, edit: &Edit<Draft>) -> Html {
    let list = [
        ("", words::NOT_KNOWN),
        ("yes", words::YES),
        ("no", words::NO),
    ];
    let list = list.map(|(value, words)| (value.to_owned(), words.to_owned()));
    let now = match now {
        None => "",
        Some(true) => "yes",
        Some(false) => "no",
    };
    let onvalue = edit.with(|draft: &mut Draft, value: String| {
        draft.restricted = Some(match value.as_str() {
            "yes" => Some(true),
            "no" => Some(false),
            _ => None,
        });
    });
    choose_among(
        Field::new("key-restricted", words::RESTRICTED),
        list.to_vec(),
        now,
        onvalue,
    )
}

/// Whether it may have been copied, once something says so: only the household can know better.
fn may_be_copied(now: bool, edit: &Edit<Draft>) -> Html {
    let list = [("yes", words::YES), ("no", words::NO)];
    let list = list.map(|(value, words)| (value.to_owned(), words.to_owned()));
    let now = if now { "yes" } else { "no" };
    let onvalue = edit.with(|draft: &mut Draft, value: String| {
        draft.may_be_copied = Some(value == "yes");
    });
    choose_among(
        Field::new("key-copied", words::MAY_BE_COPIED),
        list.to_vec(),
        now,
        onvalue,
    )
}

/// The copies, each with its place, to be moved or taken off the list.
fn copies(overview: &Overview, key: KeyId, draft: &Draft, edit: &Edit<Draft>) -> Html {
    let copies = overview.copies.get(&key).map_or(&[][..], Vec::as_slice);
    let left = copies.len().saturating_sub(draft.shown);
    let onmore = edit.with(|draft: &mut Draft, _: MouseEvent| draft.shown += COPIES_SHOWN);
    let list = places(overview, true);
    let row = |(index, &id): (usize, &CopyId)| {
        let Some(copy) = overview.household.copy(id) else {
            return html! {};
        };
        if draft.removed.contains(&id) {
            return html! {};
        }
        let now = draft
            .moved
            .get(&id)
            .copied()
            .unwrap_or(Where::of(copy.place));
        let label = format!("{} {}: {}", words::COPY, index + 1, words::WHERE);
        let field = format!("copy-{}", id.number());
        let onvalue = edit.with(move |draft: &mut Draft, value: String| {
            if let Some(place) = Where::read(&value) {
                draft.moved.insert(id, place);
            }
        });
        let onremove = edit.with(move |draft: &mut Draft, _: MouseEvent| {
            draft.removed.insert(id);
        });
        html! {
            <li key={id.number()}>
                { choose_among(Field::new(&field, &label), list.clone(), &now.value(), onvalue) }
                <button type="button" class="plain" onclick={onremove}
                    aria-label={words::about(words::REMOVE, &format!("{} {}, {}", words::COPY, index + 1, place_words(overview, id)))}>
                    { words::REMOVE }
                </button>
            </li>
        }
    };
    html! {
        <>
            <ul id={COPIES} class="copy-list" tabindex="-1" aria-label={words::COPIES}>{ for copies.iter().enumerate().take(draft.shown).map(row) }</ul>
            if left > 0 {
                <p class="row">
                    <button type="button" class="press-quiet" onclick={onmore}>
                        { words::show_more(left.min(COPIES_SHOWN)) }
                    </button>
                </p>
            }
        </>
    }
}

fn give(overview: &Overview, draft: &Draft, edit: &Edit<Draft>) -> Html {
    let counts = (0..=MOST_AT_ONCE).map(|count| (count.to_string(), count.to_string()));
    html! {
        <fieldset>
            <legend>{ words::GIVE }</legend>
            { choose_among(Field::new("give-count", words::HOW_MANY), counts.collect(), &draft.count.to_string(),
                edit.with(|draft: &mut Draft, count: String| draft.count = count.parse().unwrap_or(0))) }
            { choose_among(Field::new("give-to", words::GIVE_TO), places(overview, false), &draft.given.value(),
                edit.with(|draft: &mut Draft, value: String| {
                    if let Some(place) = Where::read(&value) {
                        draft.given = place;
                    }
                })) }
        </fieldset>
    }
}

#[cfg(test)]
mod tests {
    use self_check_core::household::{
        DoorId, DoorKind, Household, Lock, LockKind, Loss, Role, demonstration, quick,
    };

    use super::*;

    #[test]
    fn unchanged_form_changes_nothing() {
        let household = demonstration::household();
        let overview = Overview::of(&household);
        for (key, _) in household.keys() {
            let draft = Draft::of(Some(key));
            let after = household.with_all(draft.changes(&overview, Some(key)));
            assert_eq!(after, Ok(household.clone()));
        }
    }

    #[test]
    fn household_can_say_that_a_key_was_not_copied() {
        let household = demonstration::household();
        let Some((id, key)) = household.keys().next().map(|(id, key)| (id, *key)) else {
            panic!("the example has keys")
        };
        let may_be_copied = Some(self_check_core::advice::Urgency::Soon);
        let out = household.with(Change::SetKey(
            id,
            Key {
                may_be_copied,
                ..key
            },
        ));
        let out = out.unwrap_or_default();
        let overview = Overview::of(&out);
        let mut draft = Draft::of(Some(id));
        assert_eq!(
            draft.applied_to(part(&overview, Some(id))).may_be_copied,
            may_be_copied
        );
        draft.may_be_copied = Some(false);
        let after = out.with_all(draft.changes(&overview, Some(id)));
        assert_eq!(after, Ok(household));
    }

    #[test]
    fn copy_that_turns_up_while_the_form_is_open_may_still_have_been_copied() {
        let household = demonstration::household();
        let Some((copy, known)) = household
            .copies()
            .find(|(_, copy)| matches!(copy.place, Place::Held(_)))
        else {
            panic!("somebody has a copy")
        };
        let loss = Loss::Stolen;
        let stolen = household.with(Change::Lose { copy, loss });
        let stolen = stolen.unwrap_or_default();
        let mut draft = Draft::of(Some(known.key));
        draft.restricted = Some(Some(false));
        let to = known.place;
        let back = stolen.with(Change::Move { copy, to }).unwrap_or_default();
        let key = |home: &Household| part(&Overview::of(home), Some(known.key));
        assert!(key(&back).may_be_copied.is_some());
        let saved = back.with_all(draft.changes(&Overview::of(&back), Some(known.key)));
        let restricted = Some(false);
        let expected = Key {
            restricted,
            ..key(&back)
        };
        assert_eq!(key(&saved.unwrap_or_default()), expected);
    }

    #[test]
    fn key_to_the_second_lock_of_a_door_is_ticked_at_that_lock() {
        let people = [Role::Resident];
        let home = quick::one_door(DoorKind::FrontDoor, LockKind::PinTumbler, &people);
        let home = home.unwrap_or_default();
        let door = home.doors().next().map_or(DoorId::new(0), |(id, _)| id);
        let second = home.next_lock();
        let home = home.with(Change::AddLock(Lock::on(door, LockKind::Lever)));
        let home = home.unwrap_or_default();
        let overview = Overview::of(&home);
        let items = locks_to_tick(&overview);
        let names: Vec<&str> = items.iter().map(|(_, name)| name.as_str()).collect();
        assert_eq!(names, ["Front door (lock 1)", "Front door (lock 2)"]);
        let mut draft = Draft::of(None);
        draft.opens = [(second, true)].into();
        let key = home.next_key();
        let after = home.with_all(draft.changes(&overview, None));
        let after = after.unwrap_or_default();
        assert_eq!(locks_of(&Overview::of(&after), key), [second].into());
    }

    #[test]
    fn doors_are_opened_and_shut_by_what_was_ticked() {
        let household = demonstration::household();
        let overview = Overview::of(&household);
        let opening = |count: usize| {
            let mut keys = overview.opens.iter();
            keys.find(|(_, doors)| doors.len() == count)
                .map_or(KeyId::new(0), |(&key, _)| key)
        };
        let key = opening(2);
        let doors = overview.doors_of(key).to_vec();
        let lock = |door: DoorId| overview.locks[&door][0];
        let mut draft = Draft::of(Some(key));
        draft.opens = [(lock(doors[0]), false), (lock(doors[1]), true)].into();
        let after = household.with_all(draft.changes(&overview, Some(key)));
        let after = Overview::of(&after.unwrap_or_default());
        assert_eq!(after.doors_of(key), &doors[1..]);
        let mut draft = Draft::of(None);
        draft.opens = [(lock(doors[0]), false)].into();
        assert!(
            !draft
                .changes(&overview, None)
                .iter()
                .any(|change| matches!(change, Change::OpensLock { .. }))
        );
    }

    #[test]
    fn copy_that_comes_home_remembers_who_gave_it_back() {
        let household = demonstration::household();
        let overview = Overview::of(&household);
        let Some((id, copy)) = household.copies().next() else {
            panic!("the example has copies")
        };
        let mut draft = Draft::of(Some(copy.key));
        draft.moved.insert(id, Where::Home);
        let after = household
            .with_all(draft.changes(&overview, Some(copy.key)))
            .unwrap_or_default();
        let returned_by = copy.place.had_by();
        assert!(returned_by.is_some());
        let place = after.copy(id).map(|copy| copy.place);
        assert_eq!(place, Some(Place::AtHome { returned_by }));
    }
}
