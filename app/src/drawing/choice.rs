//! The drawing beside a choice. Its words stand there too, so it is silent.

use self_check_core::questions::Choice;
use yew::prelude::*;

use super::key;
use super::kinds::kind;
use super::marking::{self, marking};
use super::scenes::{Scene, doors, happenings, keeping, links, pictures};
use super::view::{image, scene};

/// The drawing beside a choice; nothing where a drawing would not help to recognise anything.
pub fn choice_drawing(choice: Choice) -> Html {
    if let Some(drawing) = kind(choice) {
        return image("drawing opt-drawing", Some(key::VIEW), None, drawing);
    }
    if let Some(drawing) = marking(choice) {
        return image(
            "drawing opt-drawing opt-bow",
            Some(marking::VIEW),
            None,
            drawing,
        );
    }
    match scene_of(choice) {
        Some(layers) => image(
            "drawing opt-drawing opt-scene",
            Some("0 0 48 48"),
            None,
            scene(layers),
        ),
        None => html! {},
    }
}

fn scene_of(choice: Choice) -> Option<Scene> {
    let scene = match choice {
        Choice::LookAtMyKeys => happenings::KEYS_ON_A_RING,
        Choice::JustMovedIn => happenings::MOVED_IN,
        Choice::KeyMissing => happenings::KEY_MISSING,
        Choice::SharedAPicture => happenings::PICTURE,
        Choice::SomeoneHadIt => happenings::SOMEONE_HAD_IT,
        Choice::NumberOnIt => happenings::NUMBER_ON_IT,
        Choice::HouseDoor => doors::HOUSE,
        Choice::FlatDoor => doors::FLAT,
        Choice::BlockEntrance => doors::BLOCK,
        Choice::GarageShedOrGate => doors::GARAGE,
        Choice::Mailbox => doors::MAILBOX,
        Choice::PadlockOrCabinet => doors::PADLOCK,
        Choice::Vehicle => doors::CAR,
        Choice::WorkOrAnothersHome => doors::WORK,
        Choice::PocketOrClosedBag => keeping::BAG,
        Choice::CarriedInView => keeping::NECK_CORD,
        Choice::HomeInSight => keeping::WINDOW,
        Choice::InTheCar => keeping::CAR_SEAT,
        Choice::HiddenOutside => keeping::POT,
        Choice::KeySafe => keeping::KEY_SAFE,
        Choice::PictureSharedWithFew => pictures::MESSAGE,
        Choice::PicturePublic => pictures::PUBLIC_POST,
        Choice::SaleListing => pictures::LISTING,
        Choice::CallsOrStreams => pictures::VIDEO_CALL,
        Choice::DoorbellCamera => pictures::DOORBELL,
        Choice::NumberOnLockFace => links::LOCK_FACE,
        Choice::NumberOnTag => links::NUMBER_TAG,
        Choice::NumberOnPapersAtHome => links::NUMBER_PAPER,
        Choice::AddressOnRingOrKey => links::ADDRESS_TAG,
        Choice::PapersWithIt => links::PAPERS,
        Choice::PictureShowsPlace => links::PLACE_IN_PICTURE,
        Choice::FoundAtTheDoor => links::AT_THE_DOOR,
        Choice::ReturnTag => links::RETURN_TAG,
        Choice::NoLink => links::KEY_ALONE,
        _ => return None,
    };
    Some(scene)
}

#[cfg(test)]
mod tests {
    use self_check_core::questions::Question;

    use super::super::question::is_drawn_by_choices;
    use super::*;

    fn has_drawing(choice: Choice) -> bool {
        kind(choice).is_some() || marking(choice).is_some() || scene_of(choice).is_some()
    }

    #[test]
    fn a_question_without_a_drawing_has_one_beside_most_of_its_choices() {
        for question in Question::ALL
            .into_iter()
            .filter(|&question| is_drawn_by_choices(question))
        {
            let choices = question.row().choices;
            let bare = choices
                .iter()
                .filter(|&&choice| !has_drawing(choice))
                .count();
            // "Nowhere", and the quiet line about a person, have none.
            assert!(bare <= 1, "{question:?}");
        }
    }
}
