//! Who needs which door: several people on one sheet, each with what they can open ticked.

use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

use self_check_core::household::{Change, DoorId, Holder, HolderId};
use yew::prelude::*;

use super::edit::Edit;
use super::filing::use_filing;
use super::tick_list::TickList;
use crate::copy::en::household::board as words;
use crate::household::Overview;

/// The people.
#[derive(Properties, PartialEq)]
pub struct NeedsFormProps {
    /// The household.
    pub overview: Rc<Overview>,
    /// Whose needs are asked for.
    pub people: Vec<HolderId>,
    /// The form is done with.
    pub onclose: Callback<()>,
}

type Needs = BTreeMap<HolderId, BTreeSet<DoorId>>;

/// What everybody is taken to need until they say so: what they can open.
fn taken_to_need(overview: &Overview, people: &[HolderId]) -> Needs {
    let needs = |&holder: &HolderId| {
        let needs = overview.household.needs_of(holder).unwrap_or_default();
        (holder, needs)
    };
    people.iter().map(needs).collect()
}

/// The changes that say what these people need.
fn changes(overview: &Overview, needs: &Needs) -> Vec<Change> {
    let changes = needs.iter().filter_map(|(&id, needs)| {
        let holder = Holder {
            needs: Some(needs.clone()),
            ..overview.household.holder(id)?.clone()
        };
        Some(Change::SetHolder(id, holder))
    });
    changes.collect()
}

/// The form.
#[component]
pub fn NeedsForm(props: &NeedsFormProps) -> Html {
    let filing = use_filing(&props.onclose);
    let overview = Rc::clone(&props.overview);
    let draft = use_state(|| taken_to_need(&overview, &props.people));
    let edit = Edit(draft.clone());
    let doors = use_memo(overview.household.clone(), |household| {
        let doors = household.doors();
        doors
            .map(|(id, _)| (id.number(), overview.names.door(id).to_owned()))
            .collect::<Vec<_>>()
    });
    let onsave = {
        let (filing, draft, overview) = (filing.clone(), draft.clone(), Rc::clone(&overview));
        Callback::from(move |()| {
            filing.file(&overview, FIELD, changes(&overview, &draft));
        })
    };
    let list = |(place, &holder): (usize, &HolderId)| {
        let ticked = draft.get(&holder).into_iter().flatten();
        let ticked: BTreeSet<u32> = ticked.map(|door| door.number()).collect();
        let ontick = edit.with(move |draft: &mut Needs, (door, is_ticked): (u32, bool)| {
            let needs = draft.entry(holder).or_default();
            if is_ticked {
                needs.insert(DoorId::new(door));
            } else {
                needs.remove(&DoorId::new(door));
            }
        });
        let id = match place {
            0 => FIELD.to_owned(),
            _ => format!("{FIELD}-{}", holder.number()),
        };
        html! {
            <TickList key={holder.number()} {id} legend={words::needs_of(overview.names.holder(holder))}
                items={Rc::clone(&doors)} {ticked} {ontick} />
        }
    };
    let fields = html! {
        <>
            <p class="hint">{ words::NEEDS_HINT }</p>
            { for props.people.iter().enumerate().map(list) }
        </>
    };
    filing.sheet(words::SAY_NEEDS, fields, onsave, None)
}

/// The first list: where a refusal leads.
const FIELD: &str = "needs";

#[cfg(test)]
mod tests {
    use self_check_core::household::{LockKind, Role, quick};

    use super::*;

    #[test]
    fn everybody_on_the_sheet_is_said_to_need_what_is_ticked() {
        let people = [Role::Resident, Role::Neighbour];
        let home = quick::two_doors(LockKind::NotSure, &people).unwrap_or_default();
        let overview = Overview::of(&home);
        let asked: Vec<HolderId> = overview.needs_not_said().collect();
        let mut needs = taken_to_need(&overview, &asked);
        assert!(needs.values().all(|doors| doors.len() == 2), "{needs:?}");
        let neighbour = asked.last().copied().unwrap_or_else(|| home.next_holder());
        let front = home.doors().next().map(|(id, _)| id);
        needs.insert(neighbour, front.into_iter().collect());
        let after = home
            .with_all(changes(&overview, &needs))
            .unwrap_or_default();
        let overview = Overview::of(&after);
        assert_eq!(overview.needs_not_said().count(), 0);
        assert_eq!(
            overview.gaps().len(),
            1,
            "the neighbour opens the back door"
        );
    }
}
