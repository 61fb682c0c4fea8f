//! What a household is made of.

use std::collections::{BTreeMap, BTreeSet};

use crate::advice::Urgency;

use super::kinds::{
    Arrangement, DoorKind, Inside, LockKind, Loss, Material, Reply, Role, WayKind, WhoDecides,
};
use super::{DoorId, Finding, HolderId, KeyId, Label, Refusal, WayId};

/// A door, or a thing that locks like one. Its locks and other ways in name it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Door {
    /// What kind of door.
    pub kind: DoorKind,
    /// An own word for it, where one kind stands for several doors.
    pub label: Option<Label>,
    /// Who may decide about its locks.
    pub who_decides: WhoDecides,
    /// What its leaf is made of, where known.
    pub material: Option<Material>,
}

/// A lock with its cylinder, on one door.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lock {
    /// The door it is on.
    pub door: DoorId,
    /// What kind of lock.
    pub kind: LockKind,
    /// The keys that open it. More than one only where `arrangement` explains it.
    pub keys: BTreeSet<KeyId>,
    /// Why it has as many keys as it has.
    pub arrangement: Arrangement,
    /// What works it from inside, where known.
    pub inside: Option<Inside>,
    /// Its keyway, where known: locks with the same number take the same blank.
    pub keyway: Option<Keyway>,
    /// The outer and inner length of its cylinder, where measured.
    pub lengths: Option<CylinderLengths>,
    /// What came of telling those who decide about it that a key to it is out; absent while they were not
    /// told of all that is out now.
    pub reply: Option<Reply>,
}

/// A keyway by a number of the household's own: the first kind of keyhole, the second and so on.
/// Only locks of one keyway can be keyed alike. It is no catalogue number and says nothing about
/// cuts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Keyway(u8);

/// The length of a European profile cylinder from the fixing screw to either end, in millimetres.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct CylinderLengths {
    outside_mm: u8,
    inside_mm: u8,
}

/// A key: one pattern of cuts, of which there may be several copies. It has no name and no code;
/// it is known by the locks it opens.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Key {
    /// Whether its blank is restricted, so that copies need a card or a contract; where known.
    pub restricted: Option<bool>,
    /// What its check found; absent while it was not checked.
    pub finding: Option<Finding>,
    /// How soon old keys should stop working because a copy was within reach of wrong hands and may
    /// have been copied, where nothing else shows it any more: its key safe has a new code, or it came
    /// back.
    pub may_be_copied: Option<Urgency>,
}

/// One physical copy of a key.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct KeyCopy {
    /// The key it is a copy of.
    pub key: KeyId,
    /// Where it is.
    pub place: Place,
}

/// Where a copy is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// On this holder's ring.
    Held(HolderId),
    /// In this key safe.
    InKeySafe(WayId),
    /// In the home and on nobody's ring: a spare, or a copy that was given back.
    AtHome {
        /// Who gave it back, if it was out.
        returned_by: Option<HolderId>,
    },
    /// Out of the household's hands.
    Lost {
        /// Who had it last, where known.
        by: Option<HolderId>,
        /// How it was lost.
        loss: Loss,
        /// The key safe it lay in, if it went from there.
        from_safe: Option<WayId>,
    },
    /// Destroyed.
    Scrapped {
        /// Who had it last, where known.
        by: Option<HolderId>,
    },
}

/// Somebody who holds keys or knows ways in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Holder {
    /// What they are to the household.
    pub role: Role,
    /// An own word for them, where one role stands for several people.
    pub label: Option<Label>,
    /// Whether they no longer should come in. What they had counts as exposed, returned or not: a
    /// returned key proves nothing, unless only a card can have it copied.
    pub no_longer_should: bool,
    /// The doors they need. Absent while nobody has said: then they are taken to need what they
    /// can open.
    pub needs: Option<BTreeSet<DoorId>>,
}

/// A way in that has no cylinder.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Way {
    /// The door it opens, or beside which the key safe hangs.
    pub door: DoorId,
    /// What kind of way.
    pub kind: WayKind,
    /// Who knows the code, has the remote or is a user of the app.
    pub known_by: BTreeSet<HolderId>,
    /// How the code or a remote came into other hands, if it did and nobody has said by whom.
    pub given_away: Option<Loss>,
    /// Whether that rests on nothing but a copy that went from this key safe, while nobody has said how.
    pub is_assumed: bool,
    /// How each of those who have a remote lost theirs. Of somebody who no longer has one it is part
    /// of [`Way::given_away`].
    pub lost_by: BTreeMap<HolderId, Loss>,
    /// What came of telling those who decide about it that it is in other hands; absent while they were not
    /// told of all of it.
    pub reply: Option<Reply>,
}

impl Door {
    /// A door of this kind that the household decides about.
    pub const fn of(kind: DoorKind) -> Self {
        Self {
            kind,
            label: None,
            who_decides: WhoDecides::Household,
            material: None,
        }
    }
}

impl Lock {
    /// A lock of this kind on a door, with no key yet.
    pub const fn on(door: DoorId, kind: LockKind) -> Self {
        Self {
            door,
            kind,
            keys: BTreeSet::new(),
            arrangement: Arrangement::OneKey,
            inside: None,
            keyway: None,
            lengths: None,
            reply: None,
        }
    }

    /// The lock, opened by this key alone.
    pub fn opened_by(mut self, key: KeyId) -> Self {
        self.keys = BTreeSet::from([key]);
        self
    }
}

impl Keyway {
    /// The keyway of this number, from 1 to [`Keyway::MOST`]; else [`Refusal::OutOfRange`].
    pub const fn new(number: u8) -> Result<Self, Refusal> {
        if number >= 1 && number <= Self::MOST {
            Ok(Self(number))
        } else {
            Err(Refusal::OutOfRange)
        }
    }

    /// The largest number; a home has few kinds of keyhole.
    pub const MOST: u8 = 26;

    /// The number.
    pub const fn number(self) -> u8 {
        self.0
    }
}

impl CylinderLengths {
    /// The two lengths in millimetres, each from [`Self::SHORTEST_MM`] to [`Self::LONGEST_MM`];
    /// else [`Refusal::OutOfRange`].
    pub const fn new(outside_mm: u8, inside_mm: u8) -> Result<Self, Refusal> {
        const fn fits(length: u8) -> bool {
            length >= CylinderLengths::SHORTEST_MM && length <= CylinderLengths::LONGEST_MM
        }
        if fits(outside_mm) && fits(inside_mm) {
            Ok(Self {
                outside_mm,
                inside_mm,
            })
        } else {
            Err(Refusal::OutOfRange)
        }
    }

    /// The shortest length taken. Our assumption: below it is a slip of the ruler; a half cylinder
    /// has about ten millimetres on its blind side.
    pub const SHORTEST_MM: u8 = 10;

    /// The longest length taken. Our assumption: doors thicker than this are no house doors.
    pub const LONGEST_MM: u8 = 120;

    /// From the fixing screw to the outer end, in millimetres.
    pub const fn outside_mm(self) -> u8 {
        self.outside_mm
    }

    /// From the fixing screw to the inner end, in millimetres.
    pub const fn inside_mm(self) -> u8 {
        self.inside_mm
    }
}

impl KeyCopy {
    /// A copy on a holder's ring.
    pub const fn held(key: KeyId, holder: HolderId) -> Self {
        Self {
            key,
            place: Place::Held(holder),
        }
    }

    /// A spare in the home.
    pub const fn spare(key: KeyId) -> Self {
        Self {
            key,
            place: Place::AtHome { returned_by: None },
        }
    }
}

impl Place {
    /// The key safe it lies in, or went from.
    pub const fn key_safe(self) -> Option<WayId> {
        match self {
            Self::InKeySafe(way) => Some(way),
            Self::Lost { from_safe, .. } => from_safe,
            Self::Held(_) | Self::AtHome { .. } | Self::Scrapped { .. } => None,
        }
    }

    /// Who has it, or had it last.
    pub const fn had_by(self) -> Option<HolderId> {
        match self {
            Self::Held(holder) => Some(holder),
            Self::InKeySafe(_) => None,
            Self::AtHome { returned_by } => returned_by,
            Self::Lost { by, .. } | Self::Scrapped { by } => by,
        }
    }
}

impl Holder {
    /// Somebody in this role, whose needs nobody has told yet.
    pub const fn of(role: Role) -> Self {
        Self {
            role,
            label: None,
            no_longer_should: false,
            needs: None,
        }
    }
}

impl Way {
    /// A way of this kind at a door, known by nobody yet.
    pub const fn at(door: DoorId, kind: WayKind) -> Self {
        Self {
            door,
            kind,
            known_by: BTreeSet::new(),
            given_away: None,
            is_assumed: false,
            lost_by: BTreeMap::new(),
            reply: None,
        }
    }

    /// Every way in which it came into other hands.
    pub fn losses(&self) -> impl Iterator<Item = Loss> {
        self.given_away
            .into_iter()
            .chain(self.lost_by.values().copied())
    }

    /// Notes that this holder lost their remote. A lesser loss takes back no graver one.
    pub(super) fn lose(&mut self, holder: HolderId, loss: Loss) {
        let noted = self.lost_by.entry(holder).or_insert(loss);
        *noted = noted.graver(loss);
    }

    /// It is in other hands by this loss too, if there is one. A lesser one takes back no graver one.
    pub(super) fn give_away(&mut self, loss: Option<Loss>) {
        let given = self.given_away.into_iter().chain(loss);
        self.given_away = given.reduce(Loss::graver);
        self.is_assumed &= loss.is_none();
    }

    /// A copy went from this key safe, and nobody has said how: its code counts as out until then.
    pub(super) fn assume_given_away(&mut self) {
        let is_out = self.given_away.and_then(Loss::urgency).is_some();
        if !is_out {
            self.given_away = Some(Loss::NotSaid);
            self.is_assumed = true;
        }
    }

    /// Nothing speaks any more for what was only assumed.
    pub(super) fn take_assumption_back(&mut self) {
        if self.is_assumed {
            self.given_away = None;
            self.is_assumed = false;
        }
    }

    /// What was lost by people who are no longer known to have it stays lost, without their names; so
    /// does what is no remote any more.
    pub(super) fn settled(mut self) -> Self {
        let lost_by = std::mem::take(&mut self.lost_by);
        for (holder, loss) in lost_by {
            if self.kind == WayKind::Remote && self.known_by.contains(&holder) {
                self.lost_by.insert(holder, loss);
            } else {
                self.give_away(Some(loss));
            }
        }
        self.is_assumed &= self.kind == WayKind::KeySafe && self.given_away == Some(Loss::NotSaid);
        self
    }

    /// Nothing of it is in other hands any more: it has been changed.
    pub fn take_back(&mut self) {
        self.given_away = None;
        self.is_assumed = false;
        self.lost_by.clear();
        self.reply = None;
    }
}
