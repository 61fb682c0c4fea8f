//! A door, or several alike with their locks and keys.

use std::collections::BTreeSet;
use std::rc::Rc;

use self_check_core::household::{
    Change, Door, DoorId, DoorKind, Inside, Key, KeyCopy, KeyId, Lock, LockKind, Material,
    WhoDecides,
};
use yew::prelude::*;

use super::edit::Edit;
use super::filing::{label, use_filing};
use crate::copy::en::household::{self, board as words};
use crate::household::Overview;
use crate::ui::{Field, choose, choose_among, choose_if_known, text_field};

/// So many doors can be added at once.
const MOST_AT_ONCE: usize = 100;
/// So many copies of each new key can be put down at once.
const MOST_COPIES: usize = 10;

/// Which door; a new one where there is none.
#[derive(Properties, PartialEq)]
pub struct DoorFormProps {
    /// The household.
    pub overview: Rc<Overview>,
    /// The door.
    pub door: Option<DoorId>,
    /// The form is done with.
    pub onclose: Callback<()>,
}

/// Which key opens a new door.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Opener {
    NewEach,
    NewForAll,
    Key(KeyId),
    Later,
}

#[derive(Clone, Debug, PartialEq)]
struct Draft {
    kind: DoorKind,
    label: String,
    who_decides: WhoDecides,
    material: Option<Material>,
    count: usize,
    lock: Option<LockKind>,
    inside: Option<Inside>,
    opener: Opener,
    copies: usize,
}

impl Draft {
    fn of(door: Option<&Door>) -> Self {
        Self {
            kind: door.map_or(DoorKind::FrontDoor, |door| door.kind),
            label: door
                .and_then(|door| door.label.as_ref())
                .map_or_else(String::new, |label| label.as_str().to_owned()),
            who_decides: door.map_or(WhoDecides::Household, |door| door.who_decides),
            material: door.and_then(|door| door.material),
            count: 1,
            lock: Some(LockKind::NotSure),
            inside: None,
            opener: Opener::NewEach,
            copies: 1,
        }
    }

    fn door(&self) -> Result<Door, self_check_core::household::Refusal> {
        Ok(Door {
            kind: self.kind,
            label: label(&self.label)?,
            who_decides: self.who_decides,
            material: self.material,
        })
    }

    /// The changes that add these doors. `next` is the id that the next part added will have.
    fn added(&self, door: &Door, mut next: u32) -> Vec<Change> {
        let mut changes = Vec::new();
        let mut add = |change: Change| {
            changes.push(change);
            next += 1;
            next - 1
        };
        let new_key = |add: &mut dyn FnMut(Change) -> u32| {
            let key = KeyId::new(add(Change::AddKey(Key::default())));
            for _ in 0..self.copies {
                add(Change::AddCopy(KeyCopy::spare(key)));
            }
            key
        };
        let shared = match (self.lock, self.opener) {
            (Some(_), Opener::NewForAll) => Some(new_key(&mut add)),
            (Some(_), Opener::Key(key)) => Some(key),
            _ => None,
        };
        for _ in 0..self.count {
            let id = DoorId::new(add(Change::AddDoor(door.clone())));
            let Some(kind) = self.lock else { continue };
            let key = match self.opener {
                Opener::NewEach => Some(new_key(&mut add)),
                Opener::NewForAll | Opener::Key(_) | Opener::Later => shared,
            };
            add(Change::AddLock(Lock {
                keys: key.into_iter().collect::<BTreeSet<_>>(),
                inside: self.inside,
                ..Lock::on(id, kind)
            }));
        }
        changes
    }
}

/// The form of a door.
#[component]
pub fn DoorForm(props: &DoorFormProps) -> Html {
    let filing = use_filing(&props.onclose);
    let overview = Rc::clone(&props.overview);
    let known = props.door.and_then(|door| overview.household.door(door));
    let draft = use_state(|| Draft::of(known));
    let title = match props.door {
        Some(door) => overview.names.door(door).to_owned(),
        None => words::ADD_DOOR.to_owned(),
    };
    let onsave = {
        let (filing, draft, overview, door) = (
            filing.clone(),
            draft.clone(),
            Rc::clone(&overview),
            props.door,
        );
        Callback::from(move |()| match draft.door() {
            Err(refusal) => {
                draft.set(Draft {
                    label: String::new(),
                    ..(*draft).clone()
                });
                filing.refuse("door-label", household::refusal(refusal, &overview.names));
            }
            Ok(part) => {
                let changes = match door {
                    Some(door) => vec![Change::SetDoor(door, part)],
                    None => draft.added(&part, overview.household.next_door().number()),
                };
                filing.file(&overview, "door-kind", changes);
            }
        })
    };
    let onremove = props.door.map(|door| {
        let (filing, overview) = (filing.clone(), Rc::clone(&overview));
        Callback::from(move |()| filing.remove(&overview, Change::RemoveDoor(door)))
    });
    let edit = Edit(draft.clone());
    let label = Field {
        hint: Some(words::LABEL_HINT),
        error: filing.wrong_with("door-label"),
        ..Field::new("door-label", words::LABEL)
    };
    let fields = html! {
        <>
            { choose(Field::new("door-kind", words::DOOR_KIND), draft.kind, edit.with(|draft, kind| draft.kind = kind)) }
            { text_field(label, &draft.label, edit.with(|draft, label| draft.label = label)) }
            { choose(Field::new("door-decides", words::WHO_DECIDES), draft.who_decides,
                edit.with(|draft, who| draft.who_decides = who)) }
            { choose_if_known(Field::new("door-material", words::MATERIAL), words::NOT_KNOWN, draft.material,
                edit.with(|draft, material| draft.material = material)) }
            if props.door.is_none() {
                { new_lock(&overview, &draft, &edit) }
            }
        </>
    };
    filing.sheet(&title, fields, onsave, onremove)
}

/// What comes with a new door: its lock, its key, and how many such doors there are.
fn new_lock(overview: &Overview, draft: &Draft, edit: &Edit<Draft>) -> Html {
    let counts = |from: usize, to: usize| -> Vec<(String, String)> {
        (from..=to)
            .map(|count| (count.to_string(), count.to_string()))
            .collect()
    };
    let mut keys = vec![
        (
            "each".to_owned(),
            if draft.count > 1 {
                words::NEW_KEY_EACH
            } else {
                words::NEW_KEY
            }
            .to_owned(),
        ),
        ("later".to_owned(), words::NO_KEY_CHOICE.to_owned()),
    ];
    if draft.count > 1 {
        keys.push(("all".to_owned(), words::NEW_KEY_FOR_ALL.to_owned()));
    }
    keys.extend(overview.household.keys().map(|(id, _)| {
        (
            id.number().to_string(),
            words::key_to(&overview.names.key_in_a_row(id)),
        )
    }));
    let now = match draft.opener {
        Opener::NewEach => "each".to_owned(),
        Opener::NewForAll => "all".to_owned(),
        Opener::Later => "later".to_owned(),
        Opener::Key(key) => key.number().to_string(),
    };
    let onopener = edit.with(|draft, value: String| {
        draft.opener = match value.as_str() {
            "each" => Opener::NewEach,
            "all" => Opener::NewForAll,
            "later" => Opener::Later,
            number => number
                .parse()
                .map_or(Opener::Later, |number| Opener::Key(KeyId::new(number))),
        };
    });
    let is_new = matches!(draft.opener, Opener::NewEach | Opener::NewForAll);
    html! {
        <>
            { choose_if_known(Field::new("door-lock", words::LOCK_KIND), words::NO_LOCK_CHOICE, draft.lock,
                edit.with(|draft, lock| draft.lock = lock)) }
            if draft.lock.is_some() {
                { choose_if_known(Field::new("door-inside", words::INSIDE), words::NOT_KNOWN, draft.inside,
                    edit.with(|draft, inside: Option<Inside>| draft.inside = inside)) }
                { choose_among(Field::new("door-key", words::WHICH_KEY), keys, &now, onopener) }
                if is_new {
                    { choose_among(Field::new("door-copies", words::COPIES_AT_HOME), counts(0, MOST_COPIES),
                        &draft.copies.to_string(),
                        edit.with(|draft, count: String| draft.copies = count.parse().unwrap_or(0))) }
                }
            }
            { choose_among(Field::new("door-count", words::HOW_MANY_DOORS), counts(1, MOST_AT_ONCE),
                &draft.count.to_string(),
                edit.with(|draft, count: String| draft.count = count.parse().unwrap_or(1))) }
        </>
    }
}

#[cfg(test)]
mod tests {
    use self_check_core::household::Household;

    use super::*;

    fn added(draft: &Draft, household: &Household) -> Household {
        let door = Door::of(draft.kind);
        let changes = draft.added(&door, household.next_door().number());
        household.with_all(changes).unwrap_or_default()
    }

    #[test]
    fn doors_added_at_once_have_a_key_each_or_one_for_all() {
        let draft = Draft {
            count: 5,
            copies: 2,
            ..Draft::of(None)
        };
        let each = added(&draft, &Household::empty());
        assert_eq!(
            (each.doors().len(), each.keys().len(), each.copies().len()),
            (5, 5, 10)
        );
        let alike = Draft {
            opener: Opener::NewForAll,
            ..draft
        };
        let all = added(&alike, &each);
        assert_eq!(
            (all.doors().len(), all.keys().len(), all.copies().len()),
            (10, 6, 12)
        );
        assert!(all.locks().all(|(_, lock)| lock.keys.len() == 1));
    }

    #[test]
    fn door_without_a_lock_brings_no_key() {
        let draft = Draft {
            lock: None,
            ..Draft::of(None)
        };
        let home = added(&draft, &Household::empty());
        assert_eq!(
            (home.doors().len(), home.locks().len(), home.keys().len()),
            (1, 0, 0)
        );
    }
}
