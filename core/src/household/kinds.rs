//! The closed lists a household is described with. The words live with the page; the names here
//! stand in records and form fields and never change.

macro_rules! closed {
    ($(#[$doc:meta])* $name:ident { $($(#[$variant_doc:meta])* $variant:ident = $id:literal,)* }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $name { $($(#[$variant_doc])* $variant,)* }

        impl $name {
            /// Every one of them, in the order in which a page offers them.
            pub const ALL: &'static [Self] = &[$(Self::$variant),*];

            /// Its name in records and form fields: stable, never shown.
            pub const fn id(self) -> &'static str {
                match self { $(Self::$variant => $id,)* }
            }

            /// The one of this name, if there is one.
            pub fn from_id(id: &str) -> Option<Self> {
                match id { $($id => Some(Self::$variant),)* _ => None }
            }
        }
    };
}

closed! {
    /// What somebody is to the household. Nobody is named.
    Role {
        /// Lives here.
        Resident = "resident",
        /// A child of the household with a key of their own.
        Child = "child",
        /// Shares the flat.
        Flatmate = "flatmate",
        /// Rents a room in the home.
        Lodger = "lodger",
        /// Rents the whole home.
        Tenant = "tenant",
        /// Family living elsewhere.
        FamilyElsewhere = "family-elsewhere",
        /// A friend.
        Friend = "friend",
        /// A neighbour, often with the spare.
        Neighbour = "neighbour",
        /// Cleans the home.
        Cleaner = "cleaner",
        /// Nurses or cares for somebody in the home.
        Carer = "carer",
        /// Minds children, animals or the house for a while.
        Sitter = "sitter",
        /// Fetches the dog.
        DogWalker = "dog-walker",
        /// Tends the garden.
        Gardener = "gardener",
        /// Builds or repairs.
        Tradesperson = "tradesperson",
        /// Shares the workshop, studio or store.
        WorkshopPartner = "workshop-partner",
        /// Works for the household or its business.
        Employee = "employee",
        /// Guests of a short let.
        Guest = "guest",
        /// Looks after the building.
        Caretaker = "caretaker",
        /// Manages the building or the association.
        BuildingManager = "building-manager",
        /// Owns the home and lets it.
        Landlord = "landlord",
        /// Lets or sells the home for its owner.
        Agent = "agent",
        /// Lived here before.
        FormerOccupant = "former-occupant",
        /// Anybody else.
        SomebodyElse = "somebody-else",
    }
}

closed! {
    /// What kind of door, or thing that locks like one.
    DoorKind {
        /// The front door of a house.
        FrontDoor = "front-door",
        /// The back door.
        BackDoor = "back-door",
        /// A door at the side.
        SideDoor = "side-door",
        /// A glazed door to terrace or garden.
        PatioDoor = "patio-door",
        /// The door of a flat in a block.
        FlatDoor = "flat-door",
        /// The entrance that a block shares.
        BuildingEntrance = "building-entrance",
        /// The door of a cellar.
        CellarDoor = "cellar-door",
        /// A room inside the home.
        RoomDoor = "room-door",
        /// A garage.
        Garage = "garage",
        /// A workshop or studio.
        Workshop = "workshop",
        /// A shed.
        Shed = "shed",
        /// A store for bicycles, bins or goods.
        Store = "store",
        /// A gate.
        Gate = "gate",
        /// A mailbox.
        Mailbox = "mailbox",
        /// A cabinet, cupboard or cash box.
        Cabinet = "cabinet",
        /// A padlock by itself.
        Padlock = "padlock",
        /// Any other door.
        OtherDoor = "other-door",
    }
}

closed! {
    /// Who may decide about the locks of a door.
    WhoDecides {
        /// The household.
        Household = "household",
        /// The landlord or the landlord's agent.
        Landlord = "landlord",
        /// The manager of the building or the association.
        Manager = "manager",
        /// Another owner: an employer, a neighbour.
        AnotherOwner = "another-owner",
    }
}

closed! {
    /// What a door leaf is made of.
    Material {
        /// Wood.
        Wood = "wood",
        /// Steel or aluminium.
        Metal = "metal",
        /// Plastic frame and panel.
        Plastic = "plastic",
        /// A composite leaf.
        Composite = "composite",
        /// Mostly glass.
        Glass = "glass",
    }
}

closed! {
    /// What kind of lock a key turns.
    LockKind {
        /// A pin tumbler cylinder, round or oval, often on a rim lock.
        PinTumbler = "pin-tumbler",
        /// A cylinder of European profile.
        EuropeanProfile = "european-profile",
        /// A lever lock.
        Lever = "lever",
        /// A padlock, or the small lock of a cabinet or mailbox.
        SmallLock = "small-lock",
        /// A cylinder that belongs to a building's key system.
        BuildingSystem = "building-system",
        /// The owner does not know.
        NotSure = "not-sure",
    }
}

closed! {
    /// Why the keys that open a lock are as many as they are.
    Arrangement {
        /// One key opens it.
        OneKey = "one-key",
        /// Its own key opens it, and a master key that opens others too.
        MasterKeyed = "master-keyed",
        /// Many own keys open it, as at the entrance of a block (a central lock, maison keying).
        CentralLock = "central-lock",
    }
}

closed! {
    /// What works a lock from inside.
    Inside {
        /// A thumb-turn.
        ThumbTurn = "thumb-turn",
        /// A key.
        Key = "key",
        /// Nothing.
        Nothing = "nothing",
    }
}

closed! {
    /// A way in that has no cylinder.
    WayKind {
        /// A code at the door.
        DoorCode = "door-code",
        /// A key safe beside the door, with a key in it.
        KeySafe = "key-safe",
        /// A remote control, fob or card.
        Remote = "remote",
        /// An app on somebody's phone.
        App = "app",
    }
}

closed! {
    /// How a copy, or a remote, went out of the household's hands.
    Loss {
        /// Lost; nobody has said how.
        NotSaid = "not-said",
        /// Mislaid indoors: it may turn up.
        MislaidIndoors = "mislaid-indoors",
        /// Lost far from home.
        FarAway = "far-away",
        /// Lost near home.
        NearHome = "near-home",
        /// Lost together with something that shows the address.
        WithTheAddress = "with-the-address",
        /// Stolen or taken.
        Stolen = "stolen",
        /// Whoever had it did not return it.
        NotReturned = "not-returned",
    }
}

closed! {
    /// What came of telling those who decide about a lock or a way in that it should be changed.
    Reply {
        /// They were told and have not acted yet.
        Waiting = "waiting",
        /// They leave it as it is.
        LeftAsItIs = "left-as-it-is",
    }
}

closed! {
    /// A way of grouping the doors by key.
    Grouping {
        /// As they are.
        AsNow = "as-now",
        /// One key for all that can share one.
        AllAlike = "all-alike",
        /// Doors that exactly the same people need share a key.
        ByNeed = "by-need",
    }
}

closed! {
    /// What a locksmith or a shop puts a price on.
    PriceItem {
        /// Coming out in ordinary hours.
        CallOut = "call-out",
        /// Coming out at night or at a weekend.
        CallOutAfterHours = "call-out-after-hours",
        /// Opening a door to which no key is left.
        Opening = "opening",
        /// Rekeying one cylinder.
        RekeyedCylinder = "rekeyed-cylinder",
        /// A new cylinder, fitted.
        NewCylinder = "new-cylinder",
        /// A new lever lock, or new levers, fitted.
        LockOrLevers = "lock-or-levers",
        /// A padlock, mailbox lock or cabinet lock.
        SmallLock = "small-lock",
        /// One key cut.
        Copy = "copy",
    }
}

impl Role {
    /// Whether they live in the home. Common sense put down row by row.
    pub const fn lives_here(self) -> bool {
        matches!(
            self,
            Self::Resident | Self::Child | Self::Flatmate | Self::Lodger | Self::Tenant
        )
    }
}

impl DoorKind {
    /// Whether it leads into a home. Common sense put down row by row.
    pub const fn leads_into_a_home(self) -> bool {
        match self {
            Self::FrontDoor
            | Self::BackDoor
            | Self::SideDoor
            | Self::PatioDoor
            | Self::FlatDoor
            | Self::BuildingEntrance
            | Self::CellarDoor
            | Self::OtherDoor => true,
            Self::RoomDoor
            | Self::Garage
            | Self::Workshop
            | Self::Shed
            | Self::Store
            | Self::Gate
            | Self::Mailbox
            | Self::Cabinet
            | Self::Padlock => false,
        }
    }

    /// Whether people leave by it in a fire, so that it must open from inside without searching
    /// for a key. Common sense put down row by row.
    pub const fn is_a_way_out(self) -> bool {
        matches!(
            self,
            Self::FrontDoor
                | Self::BackDoor
                | Self::SideDoor
                | Self::PatioDoor
                | Self::FlatDoor
                | Self::BuildingEntrance
                | Self::Workshop
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    macro_rules! ids_lead_back {
        ($($kind:ident),*) => {
            $(for &one in $kind::ALL {
                assert_eq!($kind::from_id(one.id()), Some(one));
            }
            assert_eq!($kind::from_id("no such thing"), None);)*
        };
    }

    #[test]
    fn ids_lead_back_to_what_they_name() {
        ids_lead_back!(
            Role,
            DoorKind,
            WhoDecides,
            Material,
            LockKind,
            Arrangement,
            Inside,
            WayKind,
            Loss,
            Reply,
            Grouping,
            PriceItem
        );
    }
}
