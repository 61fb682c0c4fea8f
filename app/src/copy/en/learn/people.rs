//! On locksmiths, tenants, landlords and rules.

use self_check_core::sources::{
    CHOOSING_A_LOCKSMITH as HIRING, MOVING_IN_SURVEY, TEXAS_REKEYING, TRADE_REKEYING,
};

use crate::copy::Block;

use Block::{Caution, Heading, List, Paragraph, Regions, Source};

pub(super) static CHOOSING_A_LOCKSMITH: &[Block] = &[
    Heading("Before you need one"),
    List(&[
        "Ask neighbours, your insurer or the manager of the building.",
        "Check that the address is real. An entry that looks local can lead to a call centre far away.",
        "Where locksmiths need a licence, look for the name in the official register.",
    ]),
    Heading("What to ask on the phone"),
    List(&[
        "What is your full business name and address?",
        "What will it cost in all, with travel, the least charge, and the extra at night?",
        "Are you insured, and do you have a licence if one is needed here?",
        "Would you rekey the lock (have it set to a new key) or change the cylinder (the part the key goes into), and why?",
    ]),
    Heading("At the door"),
    List(&[
        "Ask for a card with a name, and for the licence where one is needed.",
        "See that the name on the van and the name on the bill are the one you called.",
        "Expect to show that you live there. A good locksmith asks.",
        "If the price is no longer the one you were told, let no work begin.",
        "Never sign a form that is not filled in.",
        "Count the new keys, and keep the old part if you paid for a new one.",
    ]),
    Heading("Warning signs"),
    List(&[
        "The phone is answered with just “locksmith”, and no name.",
        "There is no price before the visit, or the price at the door is far higher.",
        "The first idea is to drill the lock.",
        "There is no address, no papers and no bill.",
    ]),
    Paragraph(
        "A dishonest one starts work before you agree, drills a lock that could have been opened, sells the dearest part, and then asks for several times the price. You may say no. Ask for a bill that names each thing, and tell a consumer advice service.",
    ),
    Caution(
        "If someone at your door frightens you, go where there are other people, and call your emergency number if you are in danger.",
    ),
    Source(&HIRING),
];

pub(super) static TENANTS_AND_LANDLORDS: &[Block] = &[
    Heading("If you rent"),
    List(&[
        "Do not change a lock on your own: your agreement or the law may forbid it.",
        "Ask in writing for the lock to be rekeyed (set to a new key). Keep what you wrote.",
        "Say what you need. You need not say why.",
        "If nothing is done, ask a housing advice service where you live.",
        "When you leave, hand in all keys and ask for a note of how many.",
    ]),
    Heading("If you let"),
    List(&[
        "Have the lock rekeyed between tenants. In some places you must: in Texas within seven days of a change of tenant, at the landlord’s cost.",
        "Tell the tenants before any work on a lock, and give them their keys at once.",
        "Label spare keys so that a stranger cannot tell the door.",
    ]),
    Source(&TEXAS_REKEYING),
    Heading("If you just moved in"),
    Paragraph(
        "Nobody can say how many old keys are about. In one survey of about 6,000 people, two thirds had not changed the locks on moving in. It is a routine job, and best done in the first days.",
    ),
    Source(&MOVING_IN_SURVEY),
    Source(&TRADE_REKEYING),
    Caution(
        "Never lock out someone who has a right to live there. That may be against the law, whoever owns the home. Get advice first.",
    ),
];

pub(super) static REGION_NOTES: &[Block] = &[
    Paragraph(
        "Each note says where it comes from, of what date it is, and how far to trust it. Laws change, so look in the official register itself.",
    ),
    Regions,
    Paragraph("If your region has no note, ask:"),
    List(&[
        "a consumer advice service: do locksmiths need a licence here, and where is the register?",
        "a housing advice service: who must have a lock rekeyed (set to a new key) between tenants, and who pays?",
        "the police crime prevention office: which locks do they advise for homes here?",
        "your insurer: which lock does the policy ask for?",
    ]),
];
