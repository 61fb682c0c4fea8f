//! The empty board: ordinary homes in a few presses, the example, or by hand.

use std::rc::Rc;

use self_check_core::household::{
    Change, Door, DoorKind, Household, LockKind, Refusal, Role, WhoDecides, quick,
};
use yew::prelude::*;

use super::keep::{Keep, KeepNotice, proof};
use super::waiting::Waiting;
use super::{bar::Bar, on_paper, safety_note};
use crate::browser;
use crate::copy::en::household::{self, board as words};
use crate::copy::{Listed, site};
use crate::drawing::DoorDrawing;
use crate::household::{HouseholdAct, Overview};
use crate::keeping::use_kept;
use crate::pages::keys::error_box::ErrorBox;
use crate::ui::{Field, choose, choose_among, use_household};

/// How to start by hand.
#[derive(Properties, PartialEq)]
pub struct QuickStartProps {
    /// The household, which is empty.
    pub overview: Rc<Overview>,
    /// An empty board is wanted.
    pub onhand: Callback<()>,
}

/// An ordinary home.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Home {
    OneDoor,
    TwoAlike,
    TwoDoors,
    Flat,
    FlatInASystem,
}

const HOMES: [Home; 5] = [
    Home::OneDoor,
    Home::TwoAlike,
    Home::TwoDoors,
    Home::Flat,
    Home::FlatInASystem,
];

/// People most homes give a key to, offered first.
const FIRST_ROLES: usize = 8;
const USUAL: [Role; FIRST_ROLES] = [
    Role::Resident,
    Role::Child,
    Role::FamilyElsewhere,
    Role::Friend,
    Role::Neighbour,
    Role::Cleaner,
    Role::Sitter,
    Role::DogWalker,
];

/// How many of one kind can be chosen here. More can be added on the board.
const MOST_OF_A_KIND: usize = 6;

#[derive(Clone, Debug, PartialEq)]
struct Draft {
    home: Home,
    lock: LockKind,
    /// Who decides about the flat door's lock, once that was answered.
    decides: Option<WhoDecides>,
    people: Vec<(Role, usize)>,
}

impl Home {
    fn words(self) -> &'static str {
        match self {
            Self::OneDoor => words::QUICK_ONE,
            Self::TwoAlike => words::QUICK_ALIKE,
            Self::TwoDoors => words::QUICK_TWO,
            Self::Flat => words::QUICK_FLAT,
            Self::FlatInASystem => words::QUICK_SYSTEM,
        }
    }

    fn is_a_flat(self) -> bool {
        matches!(self, Self::Flat | Self::FlatInASystem)
    }

    /// Who decides about the lock of one's own door, until somebody says otherwise.
    fn decides(self) -> WhoDecides {
        match self {
            Self::FlatInASystem => WhoDecides::Manager,
            Self::OneDoor | Self::TwoAlike | Self::TwoDoors | Self::Flat => WhoDecides::Household,
        }
    }

    fn doors(self) -> &'static [DoorKind] {
        match self {
            Self::OneDoor => &[DoorKind::FrontDoor],
            Self::TwoAlike | Self::TwoDoors => &[DoorKind::FrontDoor, DoorKind::BackDoor],
            Self::Flat | Self::FlatInASystem => &[DoorKind::FlatDoor, DoorKind::BuildingEntrance],
        }
    }
}

impl Draft {
    fn new() -> Self {
        Self {
            home: Home::OneDoor,
            lock: LockKind::NotSure,
            decides: None,
            people: vec![(Role::Resident, 1)],
        }
    }

    fn count(&self, role: Role) -> usize {
        let found = self.people.iter().find(|&&(one, _)| one == role);
        found.map_or(0, |&(_, count)| count)
    }

    fn with(&self, role: Role, count: usize) -> Self {
        let others = self.people.iter().copied().filter(|&(one, _)| one != role);
        Self {
            people: others.chain([(role, count)]).collect(),
            ..self.clone()
        }
    }

    fn decides(&self) -> WhoDecides {
        self.decides.unwrap_or_else(|| self.home.decides())
    }

    fn household(&self) -> Result<Household, Refusal> {
        let people: Vec<Role> = Role::all()
            .iter()
            .flat_map(|&role| std::iter::repeat_n(role, self.count(role)))
            .collect();
        let home = match self.home {
            Home::OneDoor => quick::one_door(DoorKind::FrontDoor, self.lock, &people),
            Home::TwoAlike => quick::two_doors_alike(self.lock, &people),
            Home::TwoDoors => quick::two_doors(self.lock, &people),
            Home::Flat => quick::flat_and_entrance(self.lock, &people),
            Home::FlatInASystem => quick::flat_in_a_system(&people),
        }?;
        let flat = home
            .doors()
            .find(|(_, door)| door.kind == DoorKind::FlatDoor);
        let Some((flat, door)) = flat.map(|(flat, door)| (flat, door.clone())) else {
            return Ok(home);
        };
        let door = Door {
            who_decides: self.decides(),
            ..door
        };
        home.with(Change::SetDoor(flat, door))
    }
}

/// The empty board.
#[component]
pub fn QuickStart(props: &QuickStartProps) -> Html {
    let state = use_household();
    let kept = use_kept();
    let draft = use_state(Draft::new);
    let refused = use_state(|| (None::<Refusal>, 0_usize));
    let example = {
        let state = state.clone();
        Callback::from(move |_: MouseEvent| state.dispatch(HouseholdAct::TryExample))
    };
    let by_hand = {
        let onhand = props.onhand.clone();
        Callback::from(move |_: MouseEvent| onhand.emit(()))
    };
    let onsubmit = {
        let (state, draft, refused) = (state.clone(), draft.clone(), refused.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            match draft.household() {
                Ok(home) => state.dispatch(HouseholdAct::Become(home)),
                Err(refusal) => refused.set((Some(refusal), refused.1 + 1)),
            }
        })
    };
    html! {
        <div class={classes!("narrow", on_paper(&state))}>
            if let (Some(refusal), tries) = *refused {
                <ErrorBox message={household::refusal(refusal, &props.overview.names)} field="quick-lock" {tries} />
            }
            <h1 tabindex="-1">{ words::TITLE }</h1>
            <p class="lede">{ words::LEDE }</p>
            { safety_note(&state) }
            <p class="note">{ words::PROMISE }{ " " }{ site::NEVER_TYPE_IT }</p>
            { proof(kept.as_ref()) }
            if state.news.told.is_some() {
                <Bar overview={Rc::clone(&props.overview)} />
            } else {
                <KeepNotice />
            }
            if let Some(finding) = state.waiting {
                <Waiting {finding} overview={Rc::clone(&props.overview)} ondone={|_| browser::arrive()} />
            }
            <p class="row">
                <button type="button" class="press-quiet" onclick={example}>{ words::TRY_EXAMPLE }</button>
                <button type="button" class="plain" onclick={by_hand}>{ words::BY_HAND }</button>
            </p>
            <form {onsubmit} novalidate=true autocomplete="off">
                { homes(&draft) }
                if draft.home != Home::FlatInASystem {
                    { lock(&draft) }
                }
                if draft.home.is_a_flat() {
                    { decides(&draft) }
                }
                { people(&draft) }
                <p class="row">
                    <button type="submit" class="press">{ words::QUICK_MAKE }</button>
                </p>
            </form>
            <Keep />
        </div>
    }
}

fn homes(draft: &UseStateHandle<Draft>) -> Html {
    html! {
        <fieldset aria-describedby="quick-hint">
            <legend><h2>{ words::QUICK }</h2></legend>
            <p id="quick-hint" class="hint">{ words::QUICK_HINT }</p>
            <div class="opts">
                { for HOMES.into_iter().map(|home| {
                    let checked = draft.home == home;
                    let draft = draft.clone();
                    let onchange = Callback::from(move |_: Event| {
                        draft.set(Draft { home, ..(*draft).clone() });
                    });
                    html! {
                        <label key={home as usize} class="opt">
                            <input type="radio" name="home" {checked} {onchange} autocomplete="off" />
                            <span><b>{ home.words() }</b></span>
                            <span class="opt-doors">
                                { for home.doors().iter().map(|&kind| html! { <DoorDrawing {kind} /> }) }
                            </span>
                        </label>
                    }
                }) }
            </div>
        </fieldset>
    }
}

fn lock(draft: &UseStateHandle<Draft>) -> Html {
    let onchoose = {
        let draft = draft.clone();
        Callback::from(move |lock: LockKind| {
            draft.set(Draft {
                lock,
                ..(*draft).clone()
            });
        })
    };
    choose(
        Field::new("quick-lock", words::QUICK_LOCK),
        draft.lock,
        onchoose,
    )
}

fn decides(draft: &UseStateHandle<Draft>) -> Html {
    let onchoose = {
        let draft = draft.clone();
        Callback::from(move |who: WhoDecides| {
            draft.set(Draft {
                decides: Some(who),
                ..(*draft).clone()
            });
        })
    };
    let field = Field {
        hint: Some(words::QUICK_DECIDES_HINT),
        ..Field::new("quick-decides", words::QUICK_DECIDES)
    };
    choose(field, draft.decides(), onchoose)
}

fn people(draft: &UseStateHandle<Draft>) -> Html {
    let others = Role::all()
        .iter()
        .copied()
        .filter(|role| !USUAL.contains(role));
    html! {
        <fieldset aria-describedby="people-hint">
            <legend><h2>{ words::QUICK_PEOPLE }</h2></legend>
            <p id="people-hint" class="hint">{ words::QUICK_PEOPLE_HINT }</p>
            <div class="counts">{ for USUAL.into_iter().map(|role| count(draft, role)) }</div>
            <details>
                <summary>{ words::QUICK_MORE }</summary>
                <div class="counts">{ for others.map(|role| count(draft, role)) }</div>
            </details>
        </fieldset>
    }
}

fn count(draft: &UseStateHandle<Draft>, role: Role) -> Html {
    let onvalue = {
        let draft = draft.clone();
        Callback::from(move |value: String| {
            draft.set(draft.with(role, value.parse().unwrap_or(0)));
        })
    };
    let list = (0..=MOST_OF_A_KIND).map(|count| (count.to_string(), count.to_string()));
    let id = format!("people-{}", role.id());
    let now = draft.count(role).to_string();
    choose_among(Field::new(&id, role.words()), list.collect(), &now, onvalue)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_home_can_be_put_on_the_board_with_its_people() {
        for home in HOMES {
            let draft = Draft {
                home,
                ..Draft::new()
            };
            let draft = draft.with(Role::Sitter, 2).with(Role::Resident, 3);
            let household = draft.household().unwrap_or_default();
            let kinds: Vec<DoorKind> = household.doors().map(|(_, door)| door.kind).collect();
            assert_eq!(kinds, home.doors(), "{home:?}");
            assert_eq!(household.holders().len(), 5, "{home:?}");
            let copies = 5 * household.keys().len();
            assert_eq!(household.copies().len(), copies, "{home:?}");
        }
    }

    #[test]
    fn flat_door_is_whose_it_was_said_to_be_and_the_entrance_stays_the_managers() {
        for home in [Home::Flat, Home::FlatInASystem] {
            for decides in [None, Some(WhoDecides::Landlord), Some(WhoDecides::Manager)] {
                let draft = Draft {
                    home,
                    decides,
                    ..Draft::new()
                };
                let household = draft.household().unwrap_or_default();
                let told: Vec<WhoDecides> = household
                    .doors()
                    .map(|(_, door)| door.who_decides)
                    .collect();
                let flat = decides.unwrap_or_else(|| home.decides());
                assert_eq!(told, [flat, WhoDecides::Manager], "{home:?}");
            }
        }
    }
}
