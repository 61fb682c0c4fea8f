//! The actions: what to do, who does it, what it may hurt, and what drives its cost.

use self_check_core::advice::{Action, Advice, Call, RuleId, Urgency, rules};
use self_check_core::answers::Answers;
use self_check_core::questions::Choice;

use crate::copy::ActionWords;

const CHECKED_LOCKSMITH: &str =
    "A locksmith you have checked (licensed where your region licenses them).";
const YOU: &str = "You.";
const FREE: &str = "Nothing.";

/// The words on an action as the answers make it meant: what was told of the door's other locks changes
/// how to look after it, a card is refused by itself, and some lines are only for the day it comes up.
pub fn advised(advice: &Advice, answers: &Answers) -> ActionWords {
    let usual = action(advice.action);
    let is_for_later = advice.urgency == Urgency::Habit;
    let is_card = answers.has(Choice::CardFobCodeOrPhone);
    match advice.action {
        Action::StopGap => ActionWords {
            how: until_the_visit(advice),
            ..usual
        },
        Action::TellOwner if is_for_later => ActionWords {
            title: "Keep the key by its owner’s rules",
            how: "If it goes missing, or someone else had it, tell its owner or your employer the same day.",
            ..usual
        },
        Action::SeeVehicleSpecialist if is_for_later => ActionWords {
            title: "If the car key goes missing, ask a vehicle specialist",
            ..usual
        },
        Action::TellTenants if is_for_later => ActionWords {
            title: "Before a lock is changed, tell the people who live there",
            ..usual
        },
        Action::ChangeCodesAndUsers if is_card && is_a_remedy(advice) => ActionWords {
            title: "Have the card or fob cancelled",
            how: "A fob is a small tag held to a reader. Ask whoever runs the system to cancel the one that is gone or was copied. The lock and the other cards can stay. If there was a code or an app with it, change the code and remove that user.",
            who: "You, or whoever runs the system.",
            ..usual
        },
        Action::TellLandlord | Action::TellManager if is_card => ActionWords {
            how: "Ask to have the card or fob (a small tag held to a reader) cancelled: the one that is gone, or that others may have copied. The lock and the other cards can stay. You need not say who or why.",
            cost: "Often little or nothing, and a fee for a new card.",
            ..usual
        },
        Action::ChangeLockOrLevers if answers.has(Choice::InteriorWarded) => ActionWords {
            how: "The simple lock of an inside door is not worth new work. If that room matters, have a better lock fitted.",
            ..usual
        },
        _ => usual,
    }
}

/// Whether some rule calls for the action as what stops the old key.
fn is_a_remedy(advice: &Advice) -> bool {
    rules()
        .filter(|rule| advice.because.contains(&rule.id))
        .any(|rule| rule.calls == Call::Remedy)
}

/// How to carry an action out: what makes haste, the action itself, and what bridges the time.
pub fn how(advice: &Advice, answers: &Answers) -> String {
    let parts = [
        hurry(advice),
        Some(advised(advice, answers).how),
        until_it_is_done(advice.action, answers),
    ];
    let parts: Vec<&str> = parts.into_iter().flatten().collect();
    parts.join(" ")
}

fn until_the_visit(advice: &Advice) -> &'static str {
    let rests_on = |rule| advice.because.contains(&rule);
    match (
        rests_on(RuleId::SecondLockBridgesTheTime),
        rests_on(RuleId::BoltHoldsOnlyBesideSomeone),
    ) {
        (false, false) => action(Action::StopGap).how,
        (true, false) => WITH_A_SECOND_LOCK,
        (false, true) => WITH_A_BOLT,
        (true, true) => WITH_BOTH,
    }
}

const WITH_A_SECOND_LOCK: &str = "Lock the second lock at once, unless its key may be gone too. If it may be, have someone stay in.";
const WITH_A_BOLT: &str = "Your bolt or chain helps only while someone is awake and inside, with every way out easy. So have someone stay in.";
const WITH_BOTH: &str = "Lock the second lock at once, unless its key may be gone too. If it may be, have someone stay in. The bolt or chain is only for when someone is awake and inside, with every way out easy.";

/// What an action due today begins with, so that nobody waits for an ordinary hour, and nobody orders
/// what is not theirs to order.
fn hurry(advice: &Advice) -> Option<&'static str> {
    if advice.urgency != Urgency::Today {
        return None;
    }
    match advice.action {
        Action::RekeyCylinder | Action::ChangeCylinder | Action::ChangeLockOrLevers => {
            Some(FIRST_VISIT)
        }
        Action::TellLandlord | Action::TellManager | Action::TellOwner => Some(CALL_FIRST),
        _ => None,
    }
}

const FIRST_VISIT: &str = "Ask for the first visit you can get: do not wait for ordinary hours. At night or on a holiday it costs more.";
const CALL_FIRST: &str = "Call today: an agreement or a notice in the hall may name a number for nights. If nobody answers, write, and note the time.";

/// What helps until whoever decides, or a locksmith, has acted.
fn until_it_is_done(action: Action, answers: &Answers) -> Option<&'static str> {
    let opens_home = answers.has_any(&[Choice::HouseDoor, Choice::FlatDoor]);
    let empties = answers.has(Choice::Mailbox).then_some(EMPTY_IT_DAILY);
    match action {
        Action::TellLandlord if opens_home => Some(LOCK_WITH_ALL),
        Action::TellLandlord
        | Action::RekeyCylinder
        | Action::ChangeCylinder
        | Action::ChangeLockOrLevers
            if answers.has(Choice::GarageShedOrGate) && !opens_home =>
        {
            Some(LOCK_THE_DOOR_BETWEEN)
        }
        Action::ReplaceSmallLock => empties,
        Action::TellLandlord if !answers.has(Choice::BlockEntrance) => empties,
        _ => None,
    }
}

const LOCK_WITH_ALL: &str = "Until it is done, lock the door each time with all that it has. Ask before you fit one more lock.";
const LOCK_THE_DOOR_BETWEEN: &str = "Until it is done, lock any door that leads from there into your home, and leave nothing of worth there.";
const EMPTY_IT_DAILY: &str = "Until it is done, empty the mailbox every day.";

/// Every sentence that stands around an action for some answers alone, for the tests of the words.
#[cfg(test)]
pub const AROUND_AN_ACTION: [&str; 8] = [
    WITH_A_SECOND_LOCK,
    WITH_A_BOLT,
    WITH_BOTH,
    FIRST_VISIT,
    CALL_FIRST,
    LOCK_WITH_ALL,
    LOCK_THE_DOOR_BETWEEN,
    EMPTY_IT_DAILY,
];

/// The words on `action`.
pub fn action(action: Action) -> ActionWords {
    match action {
        Action::PlanWithSupport => ActionWords {
            title: "Plan with a local support service first",
            how: "A domestic-abuse service can help you plan, and you need not be sure of anything to ask. Talk to them before you change a lock, a code or an account.",
            who: "You and a service you trust. Use a phone or computer the person cannot see.",
            may_hurt: Some(
                "A change that the person notices can make things worse. Where they have a right to live there, it may be against the law. If you are in danger now, call your emergency number.",
            ),
            cost: "Ask them: such help is often free.",
        },
        Action::CallPolice => ActionWords {
            title: "Report it to the police",
            how: "Say what is gone, and whether your address went with it. Unless a crime is going on, use the number for reports. Keep the report’s reference: an insurer or landlord may ask for it.",
            who: YOU,
            may_hurt: Some(
                "If someone may be inside your home, do not go in. Go where you are safe and call your emergency number.",
            ),
            cost: FREE,
        },
        Action::TellLandlord => ActionWords {
            title: "Tell your landlord and ask in writing",
            how: "Say that you would like the lock set to a new key, and by when. Ask in writing, so that it can be shown later. You need not say who it is about. If your own key is lost, say that: your contract may ask you to.",
            who: "You ask; the landlord has the work done. What they must do differs from place to place: a local housing advice service knows.",
            may_hurt: Some(
                "Do not change the lock yourself without a yes: it may break your agreement.",
            ),
            cost: "Who pays depends on your agreement and on local law. Ask before any work.",
        },
        Action::TellManager => ActionWords {
            title: "Tell the manager of the building",
            how: "Say which door the key opens and that someone else may have it. The manager or the owners’ association decides what is done. Ask what you should do until then.",
            who: "You tell; they act. A shared lock is not yours to change.",
            may_hurt: Some("A shared lock changed alone can shut out neighbours and helpers."),
            cost: "A lock for many homes can cost far more than one. Ask who pays, and ask your insurer.",
        },
        Action::TellOwner => ActionWords {
            title: "Tell the owner or employer",
            how: "It is their door, so it is their choice what to do. If anything happened to the key, say what and when. Follow their rules.",
            who: "You tell; they act.",
            may_hurt: None,
            cost: "Ask before you agree to pay: rules differ.",
        },
        Action::TellTenants => ActionWords {
            title: "Tell the people who live there",
            how: "Before the lock is changed, tell them when, and ask if the time suits them. Hand each of them a new key the same day. If nobody lives there now, leave this out.",
            who: "You, or whoever looks after the home for you.",
            may_hurt: Some(
                "A lock changed without a word can shut out someone with a right to be there. In many places that is against the law: a housing advice service knows.",
            ),
            cost: "A key for each of them. Who pays depends on the agreement and on local law.",
        },
        Action::StopGap => ActionWords {
            title: "Look after the door until the lock is changed",
            how: "Have someone stay in until then. Use a bolt only while you are awake and inside, with every way out easy.",
            who: YOU,
            may_hurt: Some(
                "Never glue, wedge or chain a way out. In a fire, everyone must get out at once and in the dark.",
            ),
            cost: FREE,
        },
        Action::RekeyCylinder => ActionWords {
            title: "Have the lock rekeyed",
            how: "Rekeyed means set to a new key: the lock stays, and the old keys stop working. Have every lock done that this key opens. In many countries a new cylinder (the part the key goes into) is usual and cheaper: ask. Ask for plain keys, with no number on them, and try each with the door open. If a card came with the lock, have it at hand.",
            who: CHECKED_LOCKSMITH,
            may_hurt: Some(
                "The door must still open with ease from inside. If the lock may not be yours, or someone else has a right to live there, ask before you change it.",
            ),
            cost: "The visit and its hour, the number of locks, and the number of new keys. Several locks in one visit cost less than several visits.",
        },
        Action::ChangeCylinder => ActionWords {
            title: "Have the cylinder changed",
            how: "The cylinder is the part the key goes into. Where it slides out of the door (European profile), a new one is usual and often cheaper than other work. Have it measured, so that it stands flush. Try each new key with the door open.",
            who: CHECKED_LOCKSMITH,
            may_hurt: Some(
                "Where the door is a way out, ask for a thumb-turn (a knob you turn by hand), so that nobody looks for a key in a fire. Ask first if there is glass beside the lock. If the lock may not be yours, or someone else has a right to live there, ask before you change it.",
            ),
            cost: "The size and kind of the cylinder, the number of keys, and the hour of the visit.",
        },
        Action::ChangeLockOrLevers => ActionWords {
            title: "Have the lock or its levers changed",
            how: "In a lever lock, flat plates hold the bolt; a locksmith can fit new ones, or a new lock of the same size. Try each new key with the door open.",
            who: CHECKED_LOCKSMITH,
            may_hurt: Some(
                "Every room must open from inside without a search for a key. If the lock may not be yours, or someone else has a right to live there, ask before you change it.",
            ),
            cost: "The kind and size of the lock, the number of keys, and the hour of the visit.",
        },
        Action::ReplaceSmallLock => ActionWords {
            title: "Replace the small lock",
            how: "A new mailbox lock, padlock or cabinet lock often costs less than work on the old one. Choose one with no number on its front, or keep that number out of sight.",
            who: "You, or a locksmith for a safe. Ask the landlord, the manager or the post office first if the mailbox is not yours.",
            may_hurt: Some(
                "Do not drill or saw a lock yourself: chips fly. Leave that to someone with the tools and eye guards.",
            ),
            cost: "The price of the lock.",
        },
        Action::OwnerOfSystemActs => ActionWords {
            title: "Leave the change to the owner of the key system",
            how: "Your door belongs to a building where some keys open several doors. Its owner keeps the plan and orders the new part. Tell them which key it is.",
            who: "The owner or manager, with their own locksmith.",
            may_hurt: Some(
                "A lock changed outside the plan can shut out those who must reach you in a fire.",
            ),
            cost: "The size of the system. Ask who pays, and ask your insurer.",
        },
        Action::SeeVehicleSpecialist => ActionWords {
            title: "Ask a vehicle specialist",
            how: "Many car keys hold a chip. A specialist can tell the car to refuse the old key and accept a new one. This check is for house keys and can say no more.",
            who: "A vehicle locksmith or workshop you have checked.",
            may_hurt: None,
            cost: "The make and age of the car. Ask your insurer first.",
        },
        Action::TakePictureDown => ActionWords {
            title: "Take the picture down, or replace it",
            how: "Delete it wherever you shared it, in old posts too. If it is down already, see whether others passed it on. Check what else it shows: a house number, a number plate, a label. Taken down is not unseen, so the other steps still count.",
            who: "You. If it is in a listing, ask the agent. If friends posted it, ask them.",
            may_hurt: Some(
                "If someone put it up to harm you, first note where and when it stood. The police may ask.",
            ),
            cost: FREE,
        },
        Action::TakeAddressOff => ActionWords {
            title: "Keep your address away from the key",
            how: "Take off any tag that shows your address, flat or name. Carry letters and papers apart from the key. A return tag with no address may stay.",
            who: YOU,
            may_hurt: None,
            cost: FREE,
        },
        Action::KeepNumberApart => ActionWords {
            title: "Keep the number away from its door",
            how: "Keep a card or tag with the number among your house papers, away from the door. If the number is on the key you use, carry it covered, show the number to nobody, and ask for keys without it next time. Do not photograph it or send it.",
            who: YOU,
            may_hurt: None,
            cost: FREE,
        },
        Action::ChangeCodesAndUsers => ActionWords {
            title: "Change the code and remove old users",
            how: "Give the key safe (a small box with a code) or the door a new code, not a date or a house number. In its app, look through the users and remove those who should no longer open it.",
            who: "You, or whoever runs the account.",
            may_hurt: Some(
                "Others notice a change, or an app tells them. If a person makes you uneasy, plan with a support service first.",
            ),
            cost: "Mostly nothing.",
        },
        Action::MoveTheSpare => ActionWords {
            title: "Bring in the spare",
            how: "Leave a spare with someone you trust, not under a pot or a stone. If it must stay outside, use a key safe (a small box with a code), fixed well and out of sight.",
            who: YOU,
            may_hurt: Some("First make sure that nobody who relies on it is shut out."),
            cost: "Nothing, or the price of the box.",
        },
        Action::AskInsurer => ActionWords {
            title: "Ask your insurer",
            how: "Ask what they pay after a lost or stolen key, by when you must tell them, and what proof they want. Ask before you order work, and keep the bills.",
            who: YOU,
            may_hurt: None,
            cost: "Ask what part you pay yourself.",
        },
        Action::GetCopiesBack => ActionWords {
            title: "Ask for the copies back",
            how: "Ask whoever should no longer have one. A friendly request is enough. After a move, ask the seller, landlord or agent for all keys, cards and codes. A returned key proves nothing: only rekeying (having the lock set to a new key) ends the doubt.",
            who: YOU,
            may_hurt: Some(
                "Ask only a person you feel safe with. If someone makes you uneasy, choose “Worried about a person?” on the start page first.",
            ),
            cost: FREE,
        },
        Action::CountCopies => ActionWords {
            title: "Count the copies",
            how: "Lay out all you have, and note by role who has the others: partner, neighbour, cleaner. Then you know how many new keys to order. Keep the note at home and leave the key’s number off it.",
            who: YOU,
            may_hurt: None,
            cost: FREE,
        },
        Action::CutPlainCopies => ActionWords {
            title: "Have plain copies cut",
            how: "Plain means without the number. Have them made from the key code (a key can be cut from it) or from the best first key, never from a copy of a copy. Try each with the door open.",
            who: CHECKED_LOCKSMITH,
            may_hurt: None,
            cost: "The kind of key and how many.",
        },
        Action::HaveCodeRemoved => ActionWords {
            title: "Have the number removed",
            how: "Only from a plain key of your own, not one that comes with a card, and only if nobody you do not trust has seen the number. First put the number with your house papers. It is ground off the bow (the part you hold). Nothing is ground near the shoulder (the step that stops the key), the blade (the part that goes into the lock) or the tip. Have the key cleaned before it goes into a lock.",
            who: "A locksmith you have checked (licensed where your region licenses them). Never do this to a landlord’s key.",
            may_hurt: Some(
                "Grinding throws metal dust: it needs eye guards and gloves, with no children near. Wash your hands after you touch the key.",
            ),
            cost: "A few minutes of work. A new plain copy may cost less.",
        },
        Action::ReorderByCard => ActionWords {
            title: "Order new keys with the card",
            how: "The card that came with the lock proves that you may order keys. Keep it at home, show it only to the dealer, and leave the key as it is: never have its number filed off.",
            who: "You, with a dealer for that lock.",
            may_hurt: None,
            cost: "The kind of key. Such keys cost more and take longer.",
        },
        Action::RestrictedBlank => ActionWords {
            title: "Think of a restricted key next time",
            how: "A restricted key is one that dealers copy only with your card. It stops easy copies in a shop. It is no answer to a loss: a key that is gone still opens the door.",
            who: CHECKED_LOCKSMITH,
            may_hurt: None,
            cost: "More for the lock and for each key. Ask how long new keys take.",
        },
        Action::CarryCovered => ActionWords {
            title: "Carry and keep the key covered",
            how: "Use a pocket, a pouch or a closed bag. At home, hang keys out of sight of the window and out of reach of the letterbox.",
            who: "Everyone who has the key.",
            may_hurt: Some(
                "If the door needs a key from inside, keep one near it where all who live there can find it in a fire.",
            ),
            cost: FREE,
        },
        Action::HandOverWithoutHouseKey => ActionWords {
            title: "Hand over only the key that is needed",
            how: "Take the house key off the ring before you hand over the car or a single lock.",
            who: YOU,
            may_hurt: None,
            cost: FREE,
        },
        Action::LookAgainIndoors => ActionWords {
            title: "Look again indoors",
            how: "Go through pockets, bags, beds and the car once more, with someone to help. If it does not turn up in a day or two, answer again as lost.",
            who: "You and the people you live with.",
            may_hurt: None,
            cost: FREE,
        },
        Action::NothingToDo => ActionWords {
            title: "Nothing to do now",
            how: "Leave things as they are. Look again when something changes: you move, a key goes missing, a helper leaves, a picture is shared.",
            who: "No one.",
            may_hurt: None,
            cost: FREE,
        },
    }
}

/// An action as it continues "What if, from today…": those whose effect on the secret can be shown.
pub fn what_if(action: Action) -> Option<&'static str> {
    Some(match action {
        Action::TellLandlord => {
            "…the landlord has the lock set to a new key, or the card cancelled"
        }
        Action::TellManager => "…the manager has the lock changed",
        Action::RekeyCylinder => "…the lock is set to a new key",
        Action::ChangeCylinder => "…the part the key goes into is changed",
        Action::ChangeLockOrLevers => "…the lock or its inner plates are changed",
        Action::ReplaceSmallLock => "…the small lock is replaced",
        Action::OwnerOfSystemActs => "…the owner of the key system acts",
        Action::ChangeCodesAndUsers => "…the code is new, and old users or cards are removed",
        Action::MoveTheSpare => "…the spare is inside",
        Action::CarryCovered => "…the key is carried and kept covered",
        _ => return None,
    })
}
