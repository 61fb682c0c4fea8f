//! What two households differ in, and what a step from one to the other did, as far as that can be said in
//! a few words.

use self_check_core::household::{Household, Key, Lock, Place, Way};

/// Something in which two households differ.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "each name says it; the pages hold the words")]
pub enum Part {
    Doors,
    Locks,
    Keys,
    /// What a check found of a key, and whether it may have been copied.
    Checks,
    /// Which copies there are.
    Copies,
    /// Where the copies are, being the same.
    Places,
    People,
    Ways,
    /// What others said who decide about locks and ways in.
    Replies,
    Prices,
}

/// What a step did.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Did {
    /// It put the first thing on an empty board.
    Began,
    /// Copies went missing.
    Lost,
    /// It said how they went missing.
    SaidHow,
    /// They turned up.
    TurnedUp,
    /// A plan was carried out.
    Worked,
    /// It changed this, and what hangs on it.
    Changed(Part),
    /// It did several things at once.
    Several,
}

/// Everything in which two households differ.
pub fn parts(one: &Household, other: &Household) -> Vec<Part> {
    let bare = |key: &Key| Key {
        finding: None,
        may_be_copied: None,
        ..*key
    };
    let keys = |home: &Household| -> Vec<_> {
        let keys = home.keys();
        keys.map(|(id, key)| (id, bare(key))).collect()
    };
    let copies = |home: &Household| -> Vec<_> {
        let copies = home.copies();
        copies.map(|(id, copy)| (id, copy.key)).collect()
    };
    let locks = |home: &Household| -> Vec<_> {
        let locks = home.locks();
        let said = locks.map(|(id, lock)| {
            (
                id,
                Lock {
                    reply: None,
                    ..lock.clone()
                },
            )
        });
        said.collect()
    };
    let ways = |home: &Household| -> Vec<_> {
        let ways = home.ways();
        let said = ways.map(|(id, way)| {
            (
                id,
                Way {
                    reply: None,
                    ..way.clone()
                },
            )
        });
        said.collect()
    };
    let replies = |home: &Household| -> Vec<_> {
        let of_locks = home
            .locks()
            .filter_map(|(id, lock)| Some((id.number(), lock.reply?)));
        let of_ways = home
            .ways()
            .filter_map(|(id, way)| Some((id.number(), way.reply?)));
        of_locks.chain(of_ways).collect()
    };
    let are_keys_alike = keys(one) == keys(other);
    let are_copies_alike = copies(one) == copies(other);
    let all = [
        (Part::Doors, one.doors().ne(other.doors())),
        (Part::Locks, locks(one) != locks(other)),
        (Part::Keys, !are_keys_alike),
        (Part::Checks, are_keys_alike && one.keys().ne(other.keys())),
        (Part::Copies, !are_copies_alike),
        (
            Part::Places,
            are_copies_alike && one.copies().ne(other.copies()),
        ),
        (Part::People, one.holders().ne(other.holders())),
        (Part::Ways, ways(one) != ways(other)),
        (Part::Replies, replies(one) != replies(other)),
        (Part::Prices, one.prices() != other.prices()),
    ];
    let differing = all.into_iter().filter(|&(_, differs)| differs);
    differing.map(|(part, _)| part).collect()
}

/// What a step did; none where it did nothing.
pub fn did(before: &Household, after: &Household) -> Option<Did> {
    if before.is_empty() {
        return Some(Did::Began);
    }
    let mut parts = parts(before, after);
    // That a key may have been copied is noted beside what was done.
    if parts.len() > 1 && are_checks_alike(before, after) {
        parts.retain(|&part| part != Part::Checks);
    }
    // So is that others have to be told anew.
    if parts.len() > 1 {
        parts.retain(|&part| part != Part::Replies);
    }
    match *parts {
        [] => None,
        [Part::Places] | [Part::Places, Part::Ways] => Some(moved(before, after)),
        [only] => Some(Did::Changed(only)),
        [Part::Doors, ref rest @ ..] if !rest.contains(&Part::People) => {
            Some(Did::Changed(Part::Doors))
        }
        [Part::Copies, Part::People] => Some(Did::Changed(Part::People)),
        [Part::Locks, Part::Keys, ..] if is_work(before, after) => Some(Did::Worked),
        [Part::Locks, Part::Keys] | [Part::Locks, Part::Keys, Part::Copies] => {
            Some(Did::Changed(Part::Keys))
        }
        [Part::Keys, Part::Copies] => Some(Did::Changed(Part::Keys)),
        _ => Some(Did::Several),
    }
}

fn are_checks_alike(before: &Household, after: &Household) -> bool {
    let checks = |home: &Household| -> Vec<_> {
        let keys = home.keys();
        keys.map(|(id, key)| (id, key.finding)).collect()
    };
    checks(before) == checks(after)
}

/// Whether new keys took the place of old ones, as only a plan has it in one step.
fn is_work(before: &Household, after: &Household) -> bool {
    let has_more = |one: &Household, other: &Household| {
        let mut keys = one.keys();
        keys.any(|(id, _)| other.key(id).is_none())
    };
    has_more(before, after) && has_more(after, before)
}

/// What happened to copies of which none came or went.
fn moved(before: &Household, after: &Household) -> Did {
    let is_lost = |place: Place| matches!(place, Place::Lost { .. });
    let mut all = before.copies().filter_map(|(id, copy)| {
        let now = after.copy(id)?.place;
        (now != copy.place).then(|| match (is_lost(copy.place), is_lost(now)) {
            (false, true) => Did::Lost,
            (true, true) => Did::SaidHow,
            (true, false) => Did::TurnedUp,
            (false, false) => Did::Changed(Part::Places),
        })
    });
    let first = all.next();
    match first {
        Some(did) if all.all(|other| other == did) => did,
        _ => Did::Changed(Part::Places),
    }
}

#[cfg(test)]
mod tests {
    use self_check_core::household::{
        Change, Choices, DoorKind, Loss, PriceItem, PriceRange, Prices, Role, demonstration, plan,
    };

    use super::*;

    fn sitter(home: &Household) -> self_check_core::household::HolderId {
        let found = home
            .holders()
            .find(|(_, holder)| holder.role == Role::Sitter);
        found.map_or_else(|| home.next_holder(), |(id, _)| id)
    }

    fn made(home: &Household, change: Change) -> Household {
        home.with(change).unwrap_or_default()
    }

    #[test]
    fn steps_are_told_apart() {
        let home = demonstration::household();
        let holder = sitter(&home);
        let lose = |home, loss| made(home, Change::LoseRing { holder, loss });
        let lost = lose(&home, Loss::NotSaid);
        let stolen = lose(&home, Loss::Stolen);
        assert_eq!(did(&Household::empty(), &home), Some(Did::Began));
        assert_eq!(did(&home, &lost), Some(Did::Lost));
        assert_eq!(did(&lost, &stolen), Some(Did::SaidHow));
        assert_eq!(did(&stolen, &home), Some(Did::TurnedUp));
        let plan = plan(&stolen, Choices::default());
        let done = plan.carried_out(&stolen).unwrap_or_default();
        assert_eq!(did(&stolen, &done), Some(Did::Worked));
        let price = PriceRange::new(1, 2).ok();
        let prices = Prices::default().with(PriceItem::Copy, price);
        let priced = made(&home, Change::SetPrices(prices));
        assert_eq!(did(&home, &priced), Some(Did::Changed(Part::Prices)));
        let door = self_check_core::household::Door::of(DoorKind::Gate);
        let more = made(&home, Change::AddDoor(door));
        assert_eq!(did(&home, &more), Some(Did::Changed(Part::Doors)));
        assert_eq!(did(&home, &home), None);
        let several = made(
            &more,
            Change::NoLongerShould {
                holder,
                no_longer: true,
            },
        );
        assert_eq!(did(&home, &several), Some(Did::Several));
    }

    #[test]
    fn what_others_said_is_a_step_of_its_own_and_goes_with_the_next() {
        use self_check_core::household::{Reply, Role, quick};
        let home = quick::flat_in_a_system(&[Role::Sitter]).unwrap_or_default();
        let holder = sitter(&home);
        let lost = made(
            &home,
            Change::LoseRing {
                holder,
                loss: Loss::NotSaid,
            },
        );
        let plan = plan(&lost, Choices::default());
        let told = plan.replied(&lost, &plan.actors(), Reply::Waiting);
        assert_eq!(did(&lost, &told), Some(Did::Changed(Part::Replies)));
        let (copy, _) = told
            .copies()
            .next()
            .unwrap_or_else(|| panic!("there is a copy"));
        let loss = Loss::Stolen;
        let stolen = made(&told, Change::Lose { copy, loss });
        assert_eq!(parts(&told, &stolen), [Part::Places, Part::Replies]);
        assert_eq!(did(&told, &stolen), Some(Did::SaidHow));
    }

    #[test]
    fn households_that_count_alike_may_differ() {
        let home = demonstration::household();
        let holder = sitter(&home);
        let loss = Loss::Stolen;
        let lost = made(&home, Change::LoseRing { holder, loss });
        assert_eq!(parts(&home, &lost), [Part::Places]);
        assert!(parts(&home, &home).is_empty());
    }
}
