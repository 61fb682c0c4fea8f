//! The pages under Learn, and the words around their drawings.

mod keys;
mod people;

use crate::copy::{Figure, FigureWords, LearnPage, PageWords};

/// The words of `page`.
pub fn learn(page: LearnPage) -> PageWords {
    match page {
        LearnPage::CutBecomesANumber => PageWords {
            title: "How a cut becomes a number",
            lede: "A key is a number written in metal. Whoever knows the number can have the key made.",
            blocks: keys::CUT_BECOMES_A_NUMBER,
        },
        LearnPage::StampIsTheKey => PageWords {
            title: "Why a stamp can be the key",
            lede: "A number on a key can mean very little, or everything.",
            blocks: keys::STAMP_IS_THE_KEY,
        },
        LearnPage::CutsThatHide => PageWords {
            title: "Why a cut can hide",
            lede: "Count the dips in a key and you may count too few.",
            blocks: keys::CUTS_THAT_HIDE,
        },
        LearnPage::CopiesDrift => PageWords {
            title: "Why copies drift",
            lede: "A copy of a copy of a copy may not open the door.",
            blocks: keys::COPIES_DRIFT,
        },
        LearnPage::WordsAgainstCopying => PageWords {
            title: "What “do not copy” on a key does",
            lede: "Usually nothing in law, and little in a shop.",
            blocks: keys::WORDS_AGAINST_COPYING,
        },
        LearnPage::RestrictedKeys => PageWords {
            title: "What a restricted key can do",
            lede: "It is one that dealers copy only with your card. That stops easy copies, but it does not help after a loss.",
            blocks: keys::RESTRICTED_KEYS,
        },
        LearnPage::ChoosingALocksmith => PageWords {
            title: "How to choose a locksmith",
            lede: "Choose one before you need one, and keep the number at hand.",
            blocks: people::CHOOSING_A_LOCKSMITH,
        },
        LearnPage::TenantsAndLandlords => PageWords {
            title: "If you rent, or let",
            lede: "Ask first, and in writing. The rules differ from place to place.",
            blocks: people::TENANTS_AND_LANDLORDS,
        },
        LearnPage::RegionNotes => PageWords {
            title: "Rules where you live",
            lede: "Whether locksmiths need a licence, and who must pay for a new lock, differs from place to place.",
            blocks: people::REGION_NOTES,
        },
    }
}

/// The words around `figure`.
pub fn figure(figure: Figure) -> FigureWords {
    match figure {
        Figure::PartsOfAKey => FigureWords {
            title: "The parts of a key",
            desc: "A key lies flat. Lines name its parts from left to right: the bow, which you hold; the shoulder, a step; the blade with its cuts; and the tip.",
            caption: "The parts of a key.",
        },
        Figure::CutsAndNumbers => FigureWords {
            title: "From cuts to a number",
            desc: "The blade of the demonstration key, larger than life. Evenly spaced lines run down to each cut. Beside each line stands one letter of an invented numbering: a deep cut has a late letter, a shallow cut an early one.",
            caption: "An invented pattern in an invented numbering, not at true size.",
        },
        Figure::StampAndKey => FigureWords {
            title: "The same key twice",
            desc: "On the left a key with a stamp on the part you hold. On the right a key made from that stamp alone. Their edges match.",
            caption: "The stamp and the edge say the same.",
        },
        Figure::HiddenCut => FigureWords {
            title: "A cut without a dip",
            desc: "The blade of a key with evenly spaced marks along it. At one mark the edge rises to a peak between two dips, so nothing seems to be cut there.",
            caption: "There is a cut at every mark, though one shows no dip.",
        },
        Figure::CopiesOfCopies => FigureWords {
            title: "How many copies still fit",
            desc: "Five bars. They fall from nearly all for the first copy to very few for the fifth, each cut from the one before.",
            caption: "Of 100 copies, so many would still turn in the lock, if each is cut from the one before. No rate has been published: these are our own figures.",
        },
    }
}
