//! The pages to read outside Learn: the next hour, safety, how to check this page, and what matters
//! more than copying.

use self_check_core::answers::Answers;
use self_check_core::questions::{Choice, Question};
use self_check_core::sources::{
    CRIME_IN_THE_UNITED_STATES, KEYS_OUT_OF_SIGHT, LOSS_PRACTICE, NATURE_OF_BURGLARY,
    SAFETY_PLANNING,
};

use crate::copy::{Block, PageWords};

use Block::{Caution, Heading, List, Paragraph, Source, Steps};

/// What to do in the hour after a key is missed.
pub fn next_hour() -> PageWords {
    PageWords {
        title: "What to do in the next hour",
        lede: "Go through this list first. The questions can wait.",
        blocks: NEXT_HOUR,
    }
}

static NEXT_HOUR: &[Block] = &[
    Steps(&[
        "If someone may be inside your home, stay out and call your emergency number.",
        "Look where you were: pockets, bags, the car, the last rooms you used. Call the shop, the bus or the friend you came from.",
        "Tell the people you live with. One of them may have it.",
        "Was it stolen? Or is it gone with papers or a tag that show your address? Then report it to the police, and after that ask your insurer. Unless a crime is going on, use the police’s number for reports.",
        "Until the lock is seen to, have someone stay in, or use another lock that has a different key.",
        "If other people’s keys hung on the ring, tell them too. If cards, a phone or a fob (a small tag held to a reader) went with it, have them cancelled at once. Other keys of your own were on it? Go through this check for each of them.",
    ]),
    Caution(
        "Use a bolt only while you are awake and inside, with every way out easy. Never glue, wedge or chain a way out. In a fire, everyone must get out at once.",
    ),
    Paragraph(
        "Put up no poster and post nothing about it. Either would tell a finder whose door it opens.",
    ),
    Paragraph(
        "If the lock is yours, ask a locksmith for a visit in ordinary hours: a night visit costs more. If you rent, or the building is shared, call the landlord or manager first. Do not wait for that if the key was stolen, or lost with your address, or if you feel unsafe.",
    ),
    Source(&LOSS_PRACTICE),
];

/// Safety first, before any level. Nothing here asks the person to keep, print or copy anything, to
/// list anyone, or to ask for a key.
pub fn safety() -> PageWords {
    PageWords {
        title: "Your safety comes first",
        lede: "If you are in danger now, call your emergency number.",
        blocks: SAFETY,
    }
}

static SAFETY: &[Block] = &[
    Paragraph(
        "Use a phone or computer that the person cannot see: a friend’s, or one in a library. If they can see this one, press “Leave now” at the top. It empties this page, but the history still shows that you were here.",
    ),
    Paragraph(
        "A local domestic-abuse service can plan with you. You need not be sure of anything, and you need not have decided anything, to talk to them. A doctor, a library or the town hall can tell you how to reach one.",
    ),
    Caution(
        "Talk to them before you change a lock. The person may notice the change. It may also be against the law where they have a right to live there.",
    ),
    Heading("A key is not the only way in"),
    List(&[
        "a shared account for a lock that opens by app",
        "the code of a key safe (a small box with a code) or of a door",
        "cameras, and the accounts they belong to",
        "a tracker on a key ring or in a bag",
        "photos that go to a shared account by themselves",
    ]),
    Paragraph("Leave these as they are until you have a plan. To turn one off can be noticed too."),
    Paragraph("You can go on with the check here, or stop at any time."),
    Source(&SAFETY_PLANNING),
];

/// How to check that the page sends nothing, and what leaving cannot remove. It does not claim to
/// prove itself.
pub fn about() -> PageWords {
    PageWords {
        title: "How to check this page",
        lede: "No page can prove that it is honest. But you can watch what your browser does, and you can cut the line.",
        blocks: ABOUT,
    }
}

static ABOUT: &[Block] = &[
    Heading("Cut the line"),
    Steps(&[
        "Open the start page and wait until it is there.",
        "Turn the network off: flight mode on a phone, or no cable and no wireless on a computer.",
        "Go through the check, from the start page to the result. It works just the same, for it needs nothing from outside. Keys and doors, Check a picture and the pages under Learn work, too, if you opened one of them before.",
        "Close the page, then turn the network on.",
    ]),
    Heading("Watch the list"),
    Paragraph(
        "A browser lists all that a page fetches. On a computer, open its developer tools from the menu and choose Network. While you answer, no line should be added. The number on the start page comes from a list of the same kind, but a false page could show any number. So look for yourself.",
    ),
    Heading("What the page forbids itself"),
    Paragraph(
        "The page hands your browser a rule, its content security policy, and your browser holds it to that. It may fetch from no other address. It may send no form. It may run no script but its own. The rule stands at the top of the page’s source, where you can read it.",
    ),
    Paragraph(
        "Such a rule cannot forbid all. A page can still send you on to another address, or call another browser. This page does neither, and where you have cut the line none of it can.",
    ),
    Heading("How to tell a false copy"),
    Paragraph(
        "A true copy never asks for the number. It never asks for your name, your address or money. If a page that looks like this one does, close it.",
    ),
    Heading("What is kept"),
    Paragraph(
        "Your answers stay in the memory of this one page. They are not in its address, in its title or in the browser’s store. When you close or reload the page, they are gone.",
    ),
    Paragraph(
        "Your keys and doors are kept on this device only if you turn that on, on their own page. There, “Empty everything” takes them away and shows what the browser still holds.",
    ),
    Heading("What “Leave now” does"),
    Paragraph(
        "It empties this page, takes away all that was kept on this device and opens an empty page. Back then finds no answers. It cannot remove:",
    ),
    List(&[
        "this page in other tabs and windows: press “Leave now” in each",
        "the browser’s history, which shows that you were here",
        "files you downloaded and pages you printed",
        "text you copied, which other programs may keep",
        "what a person, or a program on this device, saw while you read",
    ]),
    Heading("What this check cannot know"),
    Paragraph(
        "It sees neither your key nor your door. It goes by what you answer. The law where you live, your landlord, your insurer and a locksmith you have checked all come before it.",
    ),
];

/// What matters more than copying, with base rates. Without a score.
pub fn matters_more() -> PageWords {
    PageWords {
        title: "What matters more than copying",
        lede: "As far as anyone counts, copied keys are a small part of the picture. These things do more for most homes:",
        blocks: MATTERS_MORE,
    }
}

static MATTERS_MORE: &[Block] = &[
    List(&[
        "Lock the door every time, with a full turn, even for a short trip.",
        "Close and lock windows that can be reached.",
        "Have a sound frame and a deadbolt (a bolt that does not spring back).",
        "See that the cylinder (the part the key goes into) does not stand proud of its plate.",
        "Keep keys out of sight, and out of reach of the letterbox. Hang no spare inside it.",
    ]),
    Caution(
        "Everyone inside must still get out fast. If the door needs a key from inside, keep one near it, where all who live there can find it.",
    ),
    Source(&KEYS_OUT_OF_SIGHT),
    Paragraph(
        "In England and Wales, in the year to March 2020, a key was used in 6 of 100 burglaries. In 33 the lock was forced, and in 15 the door was not locked. A key may have been lost, stolen, lent or copied: nobody counted copies apart. The pages that quote these figures do not say if they count all burglaries, or only those through a door.",
    ),
    Source(&NATURE_OF_BURGLARY),
    Paragraph(
        "In the United States, in 2014, the police knew of about 1.7 million burglaries. About 73 of 100 were of homes. Of all of them, 58 of 100 used force, 35 needed none, and 7 were tries with force. The figures do not say how often a key was used.",
    ),
    Source(&CRIME_IN_THE_UNITED_STATES),
];

/// A tenant's neutral letter: no finding, no address, nobody's name. It asks for the locks that the
/// key opens.
pub fn landlord_letter(answers: &Answers) -> [&'static str; 5] {
    let home = [Choice::HouseDoor, Choice::FlatDoor];
    let request = if answers.has(Choice::CardFobCodeOrPhone) {
        "Please have all cards, fobs and codes cancelled that are not in use by my household. Please tell me how many are left, and by when this will be done."
    } else if answers.has_any(&home) || answers.is_not_sure(Question::Opens) {
        "Please have the lock of my home set to a new key by ________, or allow me to have this done by a locksmith. Please do the same for any other lock of my home that the same key opens."
    } else if answers.has(Choice::BlockEntrance) {
        "Please have the lock of the building’s entrance seen to by ________, so that keys from before no longer open it. If someone else decides about that lock, please tell me who."
    } else if answers.has(Choice::Mailbox) {
        "Please have the lock of my mailbox replaced by ________, or allow me to have this done."
    } else {
        "Please have the lock of my garage, shed or gate set to a new key by ________. Or allow me to have this done by a locksmith."
    };
    [
        "Dear landlord,",
        request,
        "Please tell me when the work can be done, who pays for it, and how many keys I will get. I will hand in the keys I have now as soon as no lock that I use takes them. If the same key opens other locks of the building, please tell me what will be done about those.",
        "Please answer in writing.",
        "With kind regards",
    ]
}
