//! On keys, codes and copies.

use self_check_core::sources::{
    DO_NOT_DUPLICATE, OPTICAL_DECODING, PRINTED_KEYS, TRADE_CODES, TRADE_REKEYING,
};

use crate::copy::{Block, Figure as Drawing};

use Block::{Caution, Figure, List, Paragraph, Source};

pub(super) static CUT_BECOMES_A_NUMBER: &[Block] = &[
    Paragraph(
        "You hold a key by its bow (the part you hold). The blade (the part that goes into the lock) begins at the shoulder (the step that stops the key). Along its edge are the cuts: dips, each at a fixed place.",
    ),
    Figure(Drawing::PartsOfAKey),
    Paragraph(
        "A cut can have only a few depths (how deep it goes). Give each depth a digit, write the digits in order from the shoulder to the tip, and you have the key’s number.",
    ),
    Figure(Drawing::CutsAndNumbers),
    Paragraph(
        "One step of depth is less than a millimetre: about a third of one in some keys, about half in others. A close, sharp picture can show it.",
    ),
    Source(&OPTICAL_DECODING),
    Paragraph(
        "Five cuts with ten depths each would make 100,000 keys. But a very deep cut cannot stand beside a very shallow one, and makers leave some out. So there are at most about 80,000 of them. A sixth cut makes nearly ten times as many.",
    ),
    Paragraph("This page never asks for the number of your key, and never works it out."),
];

pub(super) static STAMP_IS_THE_KEY: &[Block] = &[
    Paragraph("A number on a key can be one of four things:"),
    List(&[
        "The name of the blank (the uncut key). Keys to many doors bear the same one. It tells a stranger nothing.",
        "The key code. All the keys to one lock bear it and no others do, and a key can be cut from it.",
        "A number on a card that came with the lock. A dealer asks for the card before a key is made.",
        "A flat, a holder or a date. It may show which door the key belongs to.",
    ]),
    Figure(Drawing::StampAndKey),
    Paragraph(
        "So a key code is worth keeping: a locksmith can make a clean new key from it when all the copies are worn. Keep the number at home with your papers. Do not send it or photograph it, and carry a key that bears it covered.",
    ),
    Source(&TRADE_CODES),
    Caution(
        "Do not type the number anywhere, not even here. Do not file it off by yourself: metal dust harms eyes and hands, and a key cut too deep can jam in the lock.",
    ),
];

pub(super) static CUTS_THAT_HIDE: &[Block] = &[
    Paragraph(
        "Each cut (a dip in the edge) has its own fixed place. The places are spaced evenly along the blade (the part that goes into the lock). But a very shallow cut between two deep ones shows only as a peak between their dips. There is a cut, and no dip to see.",
    ),
    Figure(Drawing::HiddenCut),
    Paragraph(
        "To count fairly, count places: measure from the shoulder (the step that stops the key) to the first dip, then go on in even steps. The slope at the tip is not a cut.",
    ),
    Paragraph("Such a cut is no secret. Someone who knows the spacing reads it like any other."),
];

pub(super) static COPIES_DRIFT: &[Block] = &[
    Paragraph(
        "No copy is perfect. A copied key often comes out a little deeper than the first. Copy the copy, and the errors add up.",
    ),
    Figure(Drawing::CopiesOfCopies),
    Paragraph("So ask a locksmith:"),
    List(&[
        "to cut from the key code (a key can be cut from it), or from the best first key you have",
        "not to cut from a copy of a copy",
        "to leave the number off the new key",
    ]),
    Paragraph(
        "Try each new key with the door open. If it sticks, do not force it: take it back. A key that breaks in the lock costs far more than a second try.",
    ),
    Source(&TRADE_CODES),
];

pub(super) static WORDS_AGAINST_COPYING: &[Block] = &[
    Paragraph(
        "Some keys bear words that ask shops not to copy them. A locksmiths’ association tells its members that such words are not real security. They mislead, because they make people feel safe without cause.",
    ),
    Source(&DO_NOT_DUPLICATE),
    Paragraph(
        "A few places have laws for certain keys, such as those to public buildings. If you need to know, ask where you live.",
    ),
    Paragraph(
        "What helps more? Know who has a key. When in doubt, have the lock set to a new one. And think of a key that comes with a card when you next choose a lock.",
    ),
];

pub(super) static RESTRICTED_KEYS: &[Block] = &[
    Paragraph(
        "The shop on the corner cannot buy the blank (the uncut key) for such a key. That rests on patents and contracts, and both end one day.",
    ),
    Paragraph(
        "It does not stop everyone. Researchers have made such keys on a desktop printer for solid things.",
    ),
    Source(&PRINTED_KEYS),
    Paragraph(
        "And it does not help after a loss. A key that is gone still opens the door until the lock is rekeyed (set to a new key) or changed.",
    ),
    Source(&TRADE_REKEYING),
    Paragraph("Before you buy, ask:"),
    List(&[
        "Until when is the key protected?",
        "Who may order copies, and what must they show?",
        "What if the dealer closes, or the card is lost?",
        "What does a copy cost, and how long does it take?",
    ]),
];
