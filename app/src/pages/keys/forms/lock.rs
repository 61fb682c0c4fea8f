//! A lock on a door: its keys, and what the locksmith asks about it.

use std::collections::BTreeSet;
use std::rc::Rc;

use self_check_core::household::{
    Arrangement, Change, CylinderLengths, DoorId, Inside, KeyId, Keyway, Lock, LockId, LockKind,
    Refusal,
};
use yew::prelude::*;

use super::edit::Edit;
use super::filing::{Filing, use_filing};
use super::tick_list::TickList;
use crate::copy::en::household::{self, board as words};
use crate::household::Overview;
use crate::ui::{Field, choose, choose_among, choose_if_known, count_field};

/// Which lock; a new one where there is none.
#[derive(Properties, PartialEq)]
pub struct LockFormProps {
    /// The household.
    pub overview: Rc<Overview>,
    /// The door it is on.
    pub door: DoorId,
    /// The lock.
    pub lock: Option<LockId>,
    /// The form is done with; true where the lock is gone.
    pub onclose: Callback<bool>,
}

#[derive(Clone, Debug, PartialEq)]
struct Draft {
    lock: Lock,
    outside: String,
    inside: String,
}

impl Draft {
    fn of(door: DoorId, lock: Option<&Lock>) -> Self {
        let lock = lock
            .cloned()
            .unwrap_or_else(|| Lock::on(door, LockKind::NotSure));
        let lengths = lock.lengths;
        let text =
            |length: Option<u8>| length.map_or_else(String::new, |length| length.to_string());
        Self {
            outside: text(lengths.map(CylinderLengths::outside_mm)),
            inside: text(lengths.map(CylinderLengths::inside_mm)),
            lock,
        }
    }

    /// Whether its lengths are asked for: only a cylinder that slides out of the door has them.
    fn has_lengths(&self) -> bool {
        self.lock.kind == LockKind::EuropeanProfile
    }

    /// The lengths, or which line is wrong; none where both lines are empty or not asked for.
    fn lengths(&self) -> Result<Option<CylinderLengths>, (&'static str, Refusal)> {
        let (outside, inside) = (self.outside.trim(), self.inside.trim());
        if !self.has_lengths() || outside.is_empty() && inside.is_empty() {
            return Ok(None);
        }
        let read = |field: &'static str, text: &str| {
            let length = text.parse::<u8>().map_err(|_| Refusal::OutOfRange);
            let length = length.and_then(|length| CylinderLengths::new(length, length));
            length.map_err(|refusal| (field, refusal))
        };
        let outside = read(OUTSIDE, outside)?.outside_mm();
        let inside = read(INSIDE, inside)?.inside_mm();
        let lengths = CylinderLengths::new(outside, inside);
        lengths.map(Some).map_err(|refusal| (OUTSIDE, refusal))
    }
}

/// The lines for the lengths.
const OUTSIDE: &str = "lock-outside";
const INSIDE: &str = "lock-inner";

/// The form of a lock.
#[component]
pub fn LockForm(props: &LockFormProps) -> Html {
    let filing = use_filing(&props.onclose);
    let overview = Rc::clone(&props.overview);
    let known = props.lock.and_then(|lock| overview.household.lock(lock));
    let draft = use_state(|| Draft::of(props.door, known));
    let edit = Edit(draft.clone());
    let items = use_memo(overview.household.clone(), |household| {
        let names = &overview.names;
        let keys = household.keys();
        keys.map(|(id, _)| (id.number(), words::key_to(&names.key_in_a_row(id))))
            .collect::<Vec<_>>()
    });
    let title = match props.lock {
        Some(lock) => overview.names.lock(lock).to_owned(),
        None => format!("{}: {}", words::ADD_LOCK, overview.names.door(props.door)),
    };
    let onsave = {
        let (filing, draft, overview, lock) = (
            filing.clone(),
            draft.clone(),
            Rc::clone(&overview),
            props.lock,
        );
        Callback::from(move |()| match draft.lengths() {
            Err((field, refusal)) => {
                filing.refuse(field, household::refusal(refusal, &overview.names));
            }
            Ok(lengths) => {
                let part = Lock {
                    lengths,
                    ..draft.lock.clone()
                };
                let change = match lock {
                    Some(lock) => Change::SetLock(lock, part),
                    None => Change::AddLock(part),
                };
                filing.file(&overview, "lock-arrangement", vec![change]);
            }
        })
    };
    let onremove = props.lock.map(|lock| {
        let (filing, overview) = (filing.clone(), Rc::clone(&overview));
        Callback::from(move |()| filing.remove(&overview, Change::RemoveLock(lock)))
    });
    let arrangement = Field {
        error: filing.wrong_with("lock-arrangement"),
        ..Field::new("lock-arrangement", words::ARRANGEMENT)
    };
    let ticked: BTreeSet<u32> = draft.lock.keys.iter().map(|key| key.number()).collect();
    let ontick = edit.with(|draft: &mut Draft, (key, is_ticked): (u32, bool)| {
        let key = KeyId::new(key);
        if is_ticked {
            draft.lock.keys.insert(key);
        } else {
            draft.lock.keys.remove(&key);
        }
    });
    let fields = html! {
        <>
            { choose(Field::new("lock-kind", words::LOCK_KIND), draft.lock.kind,
                edit.with(|draft: &mut Draft, kind| draft.lock.kind = kind)) }
            { choose(arrangement, draft.lock.arrangement,
                edit.with(|draft: &mut Draft, arrangement: Arrangement| draft.lock.arrangement = arrangement)) }
            if !items.is_empty() {
                <TickList id="lock-keys" legend={words::LOCK_KEYS} {items} {ticked} {ontick} />
            }
            { choose_if_known(Field::new("lock-inside", words::INSIDE), words::NOT_KNOWN, draft.lock.inside,
                edit.with(|draft: &mut Draft, inside: Option<Inside>| draft.lock.inside = inside)) }
            { keyhole(&overview, &draft, &edit) }
            { lengths(&draft, &edit, &filing) }
        </>
    };
    filing.sheet(&title, fields, onsave, onremove)
}

/// The keyhole by a number of the home's own: those in use, and one more.
fn keyhole(overview: &Overview, draft: &Draft, edit: &Edit<Draft>) -> Html {
    let used = overview
        .household
        .locks()
        .filter_map(|(_, lock)| lock.keyway);
    let highest = used.map(Keyway::number).max().unwrap_or(0);
    let numbers = 1..=(highest + 1).clamp(2, Keyway::MOST);
    let list = std::iter::once((String::new(), words::NOT_KNOWN.to_owned()))
        .chain(numbers.map(|number| (number.to_string(), number.to_string())));
    let now = draft
        .lock
        .keyway
        .map_or_else(String::new, |keyway| keyway.number().to_string());
    let field = Field {
        hint: Some(words::KEYWAY_HINT),
        ..Field::new("lock-keyhole", words::KEYWAY)
    };
    let onvalue = edit.with(|draft: &mut Draft, value: String| {
        let number = value.parse::<u8>().ok();
        draft.lock.keyway = number.and_then(|number| Keyway::new(number).ok());
    });
    choose_among(field, list.collect(), &now, onvalue)
}

/// The lengths of a cylinder that slides out of the door.
fn lengths(draft: &Draft, edit: &Edit<Draft>, filing: &Filing) -> Html {
    if !draft.has_lengths() {
        return html! {};
    }
    let field = |id: &'static str, label: &'static str| Field {
        error: filing.wrong_with(id),
        ..Field::new(id, label)
    };
    html! {
        <>
            { count_field(field(OUTSIDE, words::OUTSIDE_MM), &draft.outside,
                edit.with(|draft: &mut Draft, text| draft.outside = text)) }
            { count_field(field(INSIDE, words::INSIDE_MM), &draft.inside,
                edit.with(|draft: &mut Draft, text| draft.inside = text)) }
        </>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn draft(kind: LockKind, outside: &str, inside: &str) -> Draft {
        let lock = Lock::on(DoorId::new(1), kind);
        Draft {
            lock,
            outside: outside.to_owned(),
            inside: inside.to_owned(),
        }
    }

    #[test]
    fn lengths_are_both_there_or_none_and_the_line_that_is_wrong_is_named() {
        let lengths_of =
            |outside, inside| draft(LockKind::EuropeanProfile, outside, inside).lengths();
        assert_eq!(lengths_of("", " "), Ok(None));
        assert_eq!(
            lengths_of("30", " 35"),
            Ok(CylinderLengths::new(30, 35).ok())
        );
        for (outside, inside, field) in [
            ("30", "", INSIDE),
            ("30", "3", INSIDE),
            ("30", "200", INSIDE),
            ("", "35", OUTSIDE),
            ("3", "35", OUTSIDE),
            ("30 mm", "35", OUTSIDE),
            ("300", "35", OUTSIDE),
            ("3", "4", OUTSIDE),
        ] {
            assert_eq!(
                lengths_of(outside, inside),
                Err((field, Refusal::OutOfRange)),
                "{outside} {inside}"
            );
        }
    }

    #[test]
    fn lock_that_has_no_lengths_keeps_none_and_none_stand_in_its_way() {
        for (outside, inside) in [("3", ""), ("30", "35")] {
            let draft = draft(LockKind::Lever, outside, inside);
            assert_eq!(draft.lengths(), Ok(None), "{outside} {inside}");
        }
    }
}
