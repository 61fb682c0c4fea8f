//! The claims of the rule table, each a sentence that reads the same where it holds and where not.

use self_check_core::advice::RuleId;

/// The claim.
pub fn rule(rule: RuleId) -> &'static str {
    match rule {
        RuleId::StolenKeyIsOut => "A stolen key works until the lock is set to a new one.",
        RuleId::StolenKeyIsReported => "A theft is for the police to know about.",
        RuleId::KeyWithTheAddressIsOut => {
            "A key lost together with its address tells the finder which door it opens."
        }
        RuleId::KeyWithTheAddressIsReported => {
            "A report helps if a key and an address were lost together."
        }
        RuleId::InsurerMayPayAfterTheft => "An insurer may pay after a theft, if told in time.",
        RuleId::InsurerMayPayAfterLossWithAddress => {
            "An insurer may pay when a key is lost with the address, if told in time."
        }
        RuleId::StolenKeyNeedsCareUntilTheVisit => {
            "After a theft, the time until the locksmith comes needs care."
        }
        RuleId::KeyWithTheAddressNeedsCareUntilTheVisit => {
            "With key and address gone together, the time until the locksmith comes needs care."
        }
        RuleId::SecondLockBridgesTheTime => {
            "A second lock with another key keeps the old key out until the visit."
        }
        RuleId::BoltHoldsOnlyBesideSomeone => {
            "A bolt or chain helps only while someone is at home and awake."
        }
        RuleId::SharedEntranceKeyIsOut => {
            "A lost key to a shared entrance touches every home in the building."
        }
        RuleId::LandlordHearsOfTheSharedEntrance => {
            "A landlord should know when a tenant’s key to a shared entrance is lost."
        }
        RuleId::KeyNearHomeIsOut => {
            "Whoever has a key and may know its street can try the doors there."
        }
        RuleId::KeyWasAwayWithTheAddress => {
            "A key that was away with its address can be copied and tied to its door."
        }
        RuleId::KeyWasAway => "Someone unknown who had a key can have had it copied.",
        RuleId::KeyWasNotReturned => "Whoever keeps a key can use it.",
        RuleId::UnreturnedKeyIsAskedBack => {
            "A key that comes back is one less to think of, though it proves nothing about copies."
        }
        RuleId::KeyIsUnaccountedFor => "A key that is out of your hands works for whoever has it.",
        RuleId::MislaidKeyMayTurnUp => "A key mislaid indoors may well turn up.",

        RuleId::SafetyComesFirst => {
            "When a person makes you uneasy, your safety comes before any lock."
        }
        RuleId::UneasyPersonMayKeepACopy => "A person who makes you uneasy may have a copy.",
        RuleId::FormerHolderMayKeepACopy => {
            "Someone who should no longer have a key may have a copy."
        }
        RuleId::FormerHolderIsAskedForCopies => {
            "Fewer keys in other hands means less doubt, though a returned key proves nothing."
        }
        RuleId::FormerOccupantsMayKeepCopies => {
            "After a move, people who lived there before may have keys."
        }
        RuleId::FormerOccupantsAreAskedForKeys => {
            "Whoever hands over a home can be asked for every key to it."
        }
        RuleId::HadItAloneWithTheAddress => {
            "Someone who had the key alone, and the address too, can copy it and knows the door."
        }
        RuleId::HadItAloneMayKeepACopy => {
            "Someone who had the key alone for a while can have had it copied."
        }
        RuleId::OnlyNeededKeysAreHandedOver => "A key that is not handed over cannot be copied.",
        RuleId::GuestsMayKeepCopies => "Paying guests come and go, and a key may be copied.",
        RuleId::LockWasNeverChanged => {
            "In a lock that was never changed, keys from before still work."
        }
        RuleId::CopiesAreUnaccountedFor => "A count shows which copies are really gone.",
        RuleId::UnaccountedCopiesMayBeOut => "A copy that you cannot place may be in other hands.",
        RuleId::CopiesWereNeverCounted => "Without a count, nobody can say if a copy is gone.",
        RuleId::FormerHolderKnowsTheCode => {
            "Someone who should no longer come in may still know a code or use an app."
        }

        RuleId::CodeWasWithOutsiders => {
            "Someone from outside the home had a key with its number on it."
        }
        RuleId::CodeIsTheKey => "With the number alone, a key can be made.",
        RuleId::PlainCopiesCarryNoCode => "A copy without the number gives no number away.",
        RuleId::UnseenCodeMayBeRemoved => {
            "A number on your own plain key may go, if nobody you do not trust has seen it."
        }
        RuleId::NumberHangsWithTheKeys => "A number on a tag is read together with the keys.",
        RuleId::NumberStandsOnTheLock => {
            "Anyone who walks past can read a number on the front of a lock."
        }
        RuleId::NumberTiesTheKeyToItsDoor => {
            "A flat number, a name or a date can tie a key to its door."
        }
        RuleId::CardCutsTheCopies => "A card that came with the lock is the way to more keys.",
        RuleId::CardIsGuarded => "Whoever has the card may be able to order a key.",
        RuleId::WordsDoNotStopCopying => "Words that ask not to copy a key are no real security.",

        RuleId::PictureTellsItsDoor => {
            "A picture of both the key and its place can lead to a copy that fits."
        }
        RuleId::PictureWithItsDoorIsTakenDown => {
            "While it is up, a picture of the key and its place can be seen by more people."
        }
        RuleId::PublicPictureIsTakenDown => "A public picture may be sharp enough to read a key.",
        RuleId::SharedPictureIsTakenBack => "A picture sent to a few people can travel on.",
        RuleId::CameraSeesTheKey => "A camera that sees the key often will sometimes see it well.",

        RuleId::AddressHangsOnTheKey => "An address on a key leads a finder to the door.",
        RuleId::PapersTravelWithTheKey => {
            "Papers carried with the key show the address if both are lost."
        }
        RuleId::SpareIsHiddenOutside => "A spare outside works for anyone who finds it.",
        RuleId::SafeCodeGoesRound => "A code that many people know is no longer a secret.",
        RuleId::KeyIsCarriedInView => "A key in plain view can be read from a picture.",
        RuleId::KeyLiesInSight => {
            "A key in sight of a window, in reach of the letterbox or in a car can be seen or taken."
        }

        RuleId::TenantsNeedTheirWayIn => {
            "People who live in a let home must know of a new lock, and get its keys."
        }
        RuleId::AnothersKeyIsOut => {
            "A missing key to someone else’s door is for its owner to act on."
        }
        RuleId::AnothersKeyWasShared => {
            "If someone else’s key was shown or handed on, its owner should know."
        }
        RuleId::AnothersKeyFollowsTheirRules => {
            "A key to someone else’s door is kept by their rules."
        }
        RuleId::VehicleKeyIsOut => "A car can be told to refuse a key that is gone.",
        RuleId::VehicleKeyIsForASpecialist => "A vehicle’s key is a matter for a specialist.",
    }
}
