//! Keys and doors: the closed lists, and why a change is refused.

pub mod board;
pub mod brief;
mod names;
pub mod plan;

use self_check_core::household::{
    Arrangement, DoorKind, Grouping, Inside, LabelRefusal, Limit, LockKind, Loss, Material,
    PriceItem, PriceRefusal, Refusal, Role, WayKind, WhoDecides,
};

use super::super::Listed;

pub use names::Names;

macro_rules! words {
    ($($kind:ident { $($variant:ident = $words:literal,)* })*) => {
        $(impl Listed for $kind {
            fn all() -> &'static [Self] {
                Self::ALL
            }

            fn id(self) -> &'static str {
                self.id()
            }

            fn words(self) -> &'static str {
                match self { $(Self::$variant => $words,)* }
            }
        })*
    };
}

words! {
    Role {
        Resident = "Resident",
        Child = "Child of the home",
        Flatmate = "Flatmate",
        Lodger = "Lodger",
        Tenant = "Tenant",
        FamilyElsewhere = "Family elsewhere",
        Friend = "Friend",
        Neighbour = "Neighbour",
        Cleaner = "Cleaner",
        Carer = "Carer",
        Sitter = "Sitter",
        DogWalker = "Dog walker",
        Gardener = "Gardener",
        Tradesperson = "Tradesperson",
        WorkshopPartner = "Workshop partner",
        Employee = "Employee",
        Guest = "Guest",
        Caretaker = "Caretaker",
        BuildingManager = "Building manager",
        Landlord = "Landlord",
        Agent = "Agent",
        FormerOccupant = "Former occupant",
        SomebodyElse = "Somebody else",
    }
    DoorKind {
        FrontDoor = "Front door",
        BackDoor = "Back door",
        SideDoor = "Side door",
        PatioDoor = "Patio door",
        FlatDoor = "Flat door",
        BuildingEntrance = "Building entrance",
        CellarDoor = "Cellar door",
        RoomDoor = "Room door",
        Garage = "Garage",
        Workshop = "Workshop",
        Shed = "Shed",
        Store = "Store",
        Gate = "Gate",
        Mailbox = "Mailbox",
        Cabinet = "Cabinet",
        Padlock = "Padlock",
        OtherDoor = "Other door",
    }
    WhoDecides {
        Household = "We do",
        Landlord = "The landlord",
        Manager = "The manager of the building",
        AnotherOwner = "Another owner",
    }
    Material {
        Wood = "Wood",
        Metal = "Metal",
        Plastic = "Plastic",
        Composite = "Layers of several",
        Glass = "Mostly glass",
    }
    LockKind {
        PinTumbler = "Round or oval cylinder (the part the key goes into)",
        EuropeanProfile = "European profile cylinder (slides out of the door)",
        Lever = "Lever lock (flat plates inside)",
        SmallLock = "Padlock, or the small lock of a mailbox or cabinet",
        BuildingSystem = "Part of the building’s key system",
        NotSure = "I am not sure",
    }
    Arrangement {
        OneKey = "One key",
        MasterKeyed = "Its own key, and a master key that opens others too",
        CentralLock = "Many keys, as at a shared entrance",
    }
    Inside {
        ThumbTurn = "A thumb-turn (a knob you turn by hand)",
        Key = "A key",
        Nothing = "Nothing",
    }
    WayKind {
        DoorCode = "Door code",
        KeySafe = "Key safe",
        Remote = "Remote, fob or card",
        App = "App on a phone",
    }
    Loss {
        NotSaid = "I have not said yet",
        MislaidIndoors = "Mislaid indoors: it may turn up",
        FarAway = "Lost far from home",
        NearHome = "Lost near home",
        WithTheAddress = "Lost together with the address",
        Stolen = "Stolen or taken",
        NotReturned = "Not given back",
    }
    Grouping {
        AsNow = "As now",
        AllAlike = "All alike",
        ByNeed = "By need",
    }
    PriceItem {
        CallOut = "A visit in ordinary hours",
        CallOutAfterHours = "A visit at night or at a weekend",
        Opening = "Opening a locked door without damage",
        RekeyedCylinder = "One lock rekeyed (set to a new key)",
        NewCylinder = "One new cylinder (the part the key goes into), fitted",
        LockOrLevers = "One new lever lock (flat plates inside), fitted",
        SmallLock = "One padlock, mailbox or cabinet lock",
        Copy = "One copy of a key",
    }
}

/// What stands beside a kind, where it needs a word more.
pub fn grouping_meaning(grouping: Grouping) -> &'static str {
    match grouping {
        Grouping::AsNow => "Every door keeps the keys it has; only what has to change is changed.",
        Grouping::AllAlike => {
            "One key for all the locks that can share one. Few keys to carry, and one loss is all of them."
        }
        Grouping::ByNeed => {
            "Doors that exactly the same people need share a key. Nobody’s ring opens a door they do not need."
        }
    }
}

/// Why a change was refused, and what to do.
pub fn refusal(refusal: Refusal, names: &Names) -> String {
    match refusal {
        Refusal::UnknownDoor(_)
        | Refusal::UnknownLock(_)
        | Refusal::UnknownKey(_)
        | Refusal::UnknownCopy(_)
        | Refusal::UnknownHolder(_)
        | Refusal::UnknownWay(_) => {
            "This is no longer there. Nothing was changed: look at the board again.".to_owned()
        }
        Refusal::DoorWithoutCylinder(door) => format!(
            "{}: there is no lock here that a key could open. Add a lock to the door first.",
            names.door(door)
        ),
        Refusal::SecondKeyUnexplained { lock, opened_by } => format!(
            "{}: one key opens this lock already (the key to {}). If both open it, say first why: press “{}” at that lock and choose a master key or a shared entrance.",
            names.lock(lock),
            names.key_in_a_row(opened_by),
            board::CHANGE_LOCK
        ),
        Refusal::HolderHasCopies(holder) => format!(
            "{}: copies of keys are still noted with this person. Say first where those are.",
            names.holder(holder)
        ),
        Refusal::HolderHadCopies(holder) => format!(
            "{} So do not remove this person: tick “{}” instead.",
            board::had_copies(names.holder(holder)),
            board::NO_LONGER_LABEL
        ),
        Refusal::NotAKeySafe(_) => {
            "A key can lie only in a key safe (a small box with a code). Choose another place."
                .to_owned()
        }
        Refusal::KeySafeHoldsCopies(way) => format!(
            "{}: a key still lies in it. Say first where that key goes.",
            names.way(way)
        ),
        Refusal::OutOfRange => "This number is too small or too large. Measure again.".to_owned(),
        Refusal::Full(limit) => format!(
            "There is no room for so many. The most is {} {}.",
            super::numbers::counted(limit.most()),
            limit_words(limit)
        ),
        Refusal::NoMoreIds => {
            "Too much was added and removed again. Empty the board and start anew.".to_owned()
        }
        Refusal::Label(refusal) => label_refusal(refusal).to_owned(),
        Refusal::Price(refusal) => price_refusal(refusal).to_owned(),
    }
}

/// Why an own word was refused. It never says the word.
pub fn label_refusal(refusal: LabelRefusal) -> &'static str {
    match refusal {
        LabelRefusal::Empty => "Write a word, or leave the line empty.",
        LabelRefusal::TooLong => {
            "This word was too long, so it was not kept. Use at most 24 letters."
        }
        LabelRefusal::TooManyDigits => {
            "This word held more than two digits, so it was not kept. It must not tell a code, an address or a telephone number."
        }
        LabelRefusal::UnseenCharacter => {
            "This word held a sign that cannot be seen, so it was not kept. Type it again by hand."
        }
    }
}

/// Why a price was refused.
pub fn price_refusal(refusal: PriceRefusal) -> &'static str {
    match refusal {
        PriceRefusal::LowAboveHigh => {
            "The low price is above the high one. Put the smaller number first."
        }
        PriceRefusal::TooHigh => "This price is too high to be one. Write it again.",
    }
}

fn limit_words(limit: Limit) -> &'static str {
    match limit {
        Limit::Doors => "doors",
        Limit::Locks => "locks",
        Limit::Keys => "keys",
        Limit::Copies => "copies",
        Limit::Holders => "people",
        Limit::Ways => "other ways in",
        Limit::Openings => "pairs of a key and its lock",
        Limit::Needs => "pairs of a person and a door",
        Limit::Knowers => "pairs of a person and a way in",
    }
}
