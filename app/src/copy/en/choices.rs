//! The choices: a short label each, and a hint where it helps.

use self_check_core::questions::Choice;

use crate::copy::ChoiceWords;

/// The words on `choice`.
pub fn choice(choice: Choice) -> ChoiceWords {
    match choice {
        Choice::LookAtMyKeys => plain("I want to look at my keys"),
        Choice::JustMovedIn => hinted("We just moved in", "a routine step in any new home"),
        Choice::KeyMissing => hinted("A key is missing", "first, what to do in the next hour"),
        Choice::SharedAPicture => hinted("I shared a picture", "with the key in it"),
        Choice::SomeoneHadIt => hinted(
            "Someone had my key",
            "a cleaner, a repair, a car park, a former flatmate",
        ),
        Choice::NumberOnIt => hinted("There is a number on my key", "is that bad?"),
        Choice::WorriedAboutAPerson => hinted(
            "I am worried about a person",
            "a page about your safety comes first",
        ),

        Choice::MislaidIndoors => hinted("Mislaid indoors", "most likely still at home"),
        Choice::LostNearHome => hinted("Lost near home", "a finder might guess the street"),
        Choice::LostFarAway => hinted("Lost far from home", "on a trip, across town"),
        Choice::StolenOrTaken => {
            hinted("Stolen or taken", "by itself, or with a bag, wallet or car")
        }
        Choice::AwayAndCameBack => hinted(
            "It was away and came back",
            "and I do not know who had it alone",
        ),
        Choice::NotReturned => plain("Someone did not give it back"),

        Choice::HouseDoor => plain("The door of my house"),
        Choice::FlatDoor => hinted("The door of my flat", "inside a building with others"),
        Choice::BlockEntrance => hinted("The entrance of the building", "shared with others"),
        Choice::GarageShedOrGate => plain("A garage, shed or gate"),
        Choice::Mailbox => plain("A mailbox"),
        Choice::PadlockOrCabinet => plain("A padlock, bike lock, cabinet or safe"),
        Choice::Vehicle => hinted("A car or other vehicle", "that is a job for a specialist"),
        Choice::WorkOrAnothersHome => hinted(
            "A place of work, or someone else’s home",
            "its owner decides",
        ),

        Choice::OwnIt => plain("I do: I own the home"),
        Choice::RentPrivately => plain("A private landlord"),
        Choice::SocialOrEmployersHome => {
            plain("A housing association, the council, or my employer")
        }
        Choice::SharedBlock => hinted(
            "The building’s manager or owners together",
            "the lock is part of a shared building",
        ),
        Choice::LetItOut => plain("I do: I let it to someone"),
        Choice::SharedWithRightHolder => hinted(
            "I do, together with someone else",
            "who has a right to live there too",
        ),

        Choice::ChangedAndCounted => plain("Yes, and I know where each new key is"),
        Choice::ChangedCopiesUnknown => plain("Yes, but I do not know where each new key is"),
        Choice::NotChanged => plain("No"),

        Choice::AllAccountedFor => plain("Yes, I know where each one is"),
        Choice::OneOrTwoUnaccounted => plain("One or two I cannot place"),
        Choice::NeverCounted => plain("I never counted them"),

        Choice::Household => plain("I, and anyone who lives with me"),
        Choice::TrustedCircle => plain("Family, friends or neighbours I trust"),
        Choice::HelperNow => hinted(
            "Someone who helps me now",
            "a cleaner, carer, sitter or dog walker",
        ),
        Choice::HadItAlone => hinted(
            "Someone who had it alone for a while",
            "a car park, a repair, building work",
        ),
        Choice::ShortLetGuests => plain("Guests of a short let"),
        Choice::NoLongerShould => hinted(
            "Someone who should no longer have one",
            "a former flatmate, tenant, helper or agent",
        ),
        Choice::UneasyPerson => hinted(
            "A former partner, or anyone who makes me uneasy",
            "a page about your safety comes next",
        ),

        Choice::CutsOnOneEdge => hinted("Cuts along one edge", "cuts are the dips in the blade"),
        Choice::CutsOnBothEdges => plain("Cuts along both edges"),
        Choice::Dimples => plain("Small round hollows on the flat side"),
        Choice::Tube => plain("A round tube"),
        Choice::LeverFlag => hinted(
            "A stem with a flag at its end",
            "often for the second lock of a front door",
        ),
        Choice::InteriorWarded => {
            hinted("A simple key for an inside door", "it may fit many rooms")
        }
        Choice::PlasticHeadWithChip => plain("A thick plastic head with a chip in it"),
        Choice::CardFobCodeOrPhone => hinted(
            "A card, fob, code or phone",
            "a fob is a small tag held to a reader",
        ),

        Choice::NothingMarked => plain("Nothing"),
        Choice::OneToThreeDigits => hinted("One to three digits", "do not type them"),
        Choice::FourOrMoreDigits => hinted("Four or more digits", "do not type them"),
        Choice::LettersWithDigits => plain("Letters mixed with digits"),
        Choice::LettersOrPictureOnly => plain("Only letters, a name or a picture"),
        Choice::WordsAgainstCopying => plain("Words that ask not to copy it"),
        Choice::WornMarking => plain("Something too worn to read"),

        Choice::SameOnOtherKeys => hinted(
            "It is on keys to other doors too",
            "not opened by this key: it names the blank",
        ),
        Choice::OnlyThisLock => hinted(
            "It is only on the keys to this lock",
            "most likely the key code",
        ),
        Choice::OnCardOrPaper => hinted(
            "It is on a card or paper that came with the lock",
            "you show the card to order more keys",
        ),
        Choice::FlatHolderOrDate => hinted(
            "A flat number, a person’s number or a date",
            "it may show which door it is",
        ),

        Choice::NumberOnLockFace => plain("On the front of the lock"),
        Choice::NumberOnTag => plain("On a tag with the keys"),
        Choice::NumberOnPapersAtHome => plain("On papers at home"),
        Choice::NumberNowhereElse => plain("On none of these"),

        Choice::PocketOrClosedBag => {
            hinted("In a pocket or a closed bag", "or out of sight at home")
        }
        Choice::CarriedInView => hinted("In plain view", "on a neck cord, a belt or a desk"),
        Choice::HomeInSight => hinted(
            "At home, where others can see or reach it",
            "from a window, or through the letterbox",
        ),
        Choice::InTheCar => plain("In the car"),
        Choice::HiddenOutside => plain("A spare is hidden outside"),
        Choice::KeySafe => hinted("In a key safe", "a small box with a code"),

        Choice::NoPicture => plain("Nowhere that I know of"),
        Choice::PictureSharedWithFew => plain("With a few people I sent it to"),
        Choice::PicturePublic => hinted("In public", "also if it is down again"),
        Choice::SaleListing => plain("In a listing of the home, for sale or to let"),
        Choice::CallsOrStreams => plain("Often on video calls or streams"),
        Choice::DoorbellCamera => plain("In view of a doorbell camera"),

        Choice::AddressOnRingOrKey => plain("An address or flat number on the ring or key"),
        Choice::PapersWithIt => plain("A wallet, papers or letters with it"),
        Choice::PictureShowsPlace => plain("A picture that shows or names the place"),
        Choice::FoundAtTheDoor => plain("The place: it is, or was, left at or near the door"),
        Choice::ReturnTag => hinted("A return tag", "with no address on it"),
        Choice::NoLink => plain("Nothing"),

        Choice::SecondLockOtherKey => plain("A second lock with another key"),
        Choice::BoltOrChainOnly => plain("Only a bolt or a chain"),
        Choice::CodeOrAppToo => plain("A code, an app or a remote as well"),
        Choice::NoOtherWay => plain("Nothing else"),
    }
}

const fn plain(label: &'static str) -> ChoiceWords {
    ChoiceWords { label, hint: None }
}

const fn hinted(label: &'static str, hint: &'static str) -> ChoiceWords {
    ChoiceWords {
        label,
        hint: Some(hint),
    }
}
