//! The questions of the check: their ids, the choices each offers, and how many may be ticked.
//!
//! No question asks for a code, a depth or free text. The words live with the page.

/// One question.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[repr(u8)]
pub enum Question {
    /// What brings the person here.
    Reason,
    /// How the key went missing.
    MissingHow,
    /// Which doors or things the key opens.
    Opens,
    /// Who may decide about the lock.
    WhoDecides,
    /// Whether the lock was changed since.
    ChangedSince,
    /// Whether every copy is accounted for.
    Copies,
    /// Who has or had a key.
    Holders,
    /// What kind of key it is.
    KeyKind,
    /// What is stamped on it.
    Marking,
    /// What the number on it is.
    NumberIs,
    /// Where else the number stands.
    NumberElsewhere,
    /// Where the key is carried and kept.
    Kept,
    /// Where pictures of it were shown.
    Seen,
    /// What ties the key to its door.
    Link,
    /// How else the person can get in and stay safe.
    OtherWays,
}

/// One choice of one question. "Not sure" is no choice of its own: see
/// [`crate::answers::Answers::give_not_sure`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[repr(u8)]
#[allow(missing_docs, reason = "each name says it; the page holds the words")]
pub enum Choice {
    // Reason
    LookAtMyKeys,
    JustMovedIn,
    KeyMissing,
    SharedAPicture,
    SomeoneHadIt,
    NumberOnIt,
    WorriedAboutAPerson,
    // MissingHow
    MislaidIndoors,
    LostFarAway,
    LostNearHome,
    AwayAndCameBack,
    NotReturned,
    StolenOrTaken,
    // Opens
    HouseDoor,
    FlatDoor,
    BlockEntrance,
    GarageShedOrGate,
    Mailbox,
    PadlockOrCabinet,
    Vehicle,
    WorkOrAnothersHome,
    // WhoDecides
    OwnIt,
    RentPrivately,
    SocialOrEmployersHome,
    SharedBlock,
    LetItOut,
    SharedWithRightHolder,
    // ChangedSince
    ChangedAndCounted,
    ChangedCopiesUnknown,
    NotChanged,
    // Copies
    AllAccountedFor,
    OneOrTwoUnaccounted,
    NeverCounted,
    // Holders
    Household,
    TrustedCircle,
    HelperNow,
    HadItAlone,
    ShortLetGuests,
    NoLongerShould,
    UneasyPerson,
    // KeyKind
    CutsOnOneEdge,
    CutsOnBothEdges,
    Dimples,
    Tube,
    LeverFlag,
    InteriorWarded,
    PlasticHeadWithChip,
    CardFobCodeOrPhone,
    // Marking
    NothingMarked,
    OneToThreeDigits,
    FourOrMoreDigits,
    LettersWithDigits,
    LettersOrPictureOnly,
    WordsAgainstCopying,
    WornMarking,
    // NumberIs
    SameOnOtherKeys,
    OnlyThisLock,
    OnCardOrPaper,
    FlatHolderOrDate,
    // NumberElsewhere
    NumberOnLockFace,
    NumberOnTag,
    NumberOnPapersAtHome,
    NumberNowhereElse,
    // Kept
    PocketOrClosedBag,
    CarriedInView,
    HomeInSight,
    InTheCar,
    HiddenOutside,
    KeySafe,
    // Seen
    NoPicture,
    PictureSharedWithFew,
    PicturePublic,
    SaleListing,
    CallsOrStreams,
    DoorbellCamera,
    // Link
    AddressOnRingOrKey,
    PapersWithIt,
    PictureShowsPlace,
    FoundAtTheDoor,
    ReturnTag,
    NoLink,
    // OtherWays
    SecondLockOtherKey,
    BoltOrChainOnly,
    CodeOrAppToo,
    NoOtherWay,
}

/// What a question offers.
#[derive(Debug)]
pub struct QuestionRow {
    /// The question.
    pub question: Question,
    /// Its choices, in the order in which the page shows them.
    pub choices: &'static [Choice],
    /// Whether several choices may be ticked together.
    pub takes_several: bool,
    /// Choices that stand alone: ticking one clears the others.
    pub alone: &'static [Choice],
}

use Choice::*;

/// Every question with its choices, in the order of [`Question`].
pub const QUESTIONS: [QuestionRow; 15] = [
    one(
        Question::Reason,
        &[
            LookAtMyKeys,
            JustMovedIn,
            KeyMissing,
            SharedAPicture,
            SomeoneHadIt,
            NumberOnIt,
            WorriedAboutAPerson,
        ],
    ),
    one(
        Question::MissingHow,
        &[
            MislaidIndoors,
            LostNearHome,
            LostFarAway,
            StolenOrTaken,
            AwayAndCameBack,
            NotReturned,
        ],
    ),
    several(
        Question::Opens,
        &[
            HouseDoor,
            FlatDoor,
            BlockEntrance,
            GarageShedOrGate,
            Mailbox,
            PadlockOrCabinet,
            Vehicle,
            WorkOrAnothersHome,
        ],
        &[],
    ),
    one(
        Question::WhoDecides,
        &[
            OwnIt,
            RentPrivately,
            SocialOrEmployersHome,
            SharedBlock,
            LetItOut,
            SharedWithRightHolder,
        ],
    ),
    one(
        Question::ChangedSince,
        &[ChangedAndCounted, ChangedCopiesUnknown, NotChanged],
    ),
    one(
        Question::Copies,
        &[AllAccountedFor, OneOrTwoUnaccounted, NeverCounted],
    ),
    several(
        Question::Holders,
        &[
            Household,
            TrustedCircle,
            HelperNow,
            HadItAlone,
            NoLongerShould,
            ShortLetGuests,
            UneasyPerson,
        ],
        &[],
    ),
    one(
        Question::KeyKind,
        &[
            CutsOnOneEdge,
            CutsOnBothEdges,
            Dimples,
            Tube,
            LeverFlag,
            InteriorWarded,
            PlasticHeadWithChip,
            CardFobCodeOrPhone,
        ],
    ),
    several(
        Question::Marking,
        &[
            NothingMarked,
            OneToThreeDigits,
            FourOrMoreDigits,
            LettersWithDigits,
            LettersOrPictureOnly,
            WordsAgainstCopying,
            WornMarking,
        ],
        &[NothingMarked],
    ),
    one(
        Question::NumberIs,
        &[
            SameOnOtherKeys,
            OnlyThisLock,
            OnCardOrPaper,
            FlatHolderOrDate,
        ],
    ),
    several(
        Question::NumberElsewhere,
        &[
            NumberOnLockFace,
            NumberOnTag,
            NumberOnPapersAtHome,
            NumberNowhereElse,
        ],
        &[NumberNowhereElse],
    ),
    several(
        Question::Kept,
        &[
            PocketOrClosedBag,
            CarriedInView,
            HomeInSight,
            InTheCar,
            HiddenOutside,
            KeySafe,
        ],
        &[],
    ),
    several(
        Question::Seen,
        &[
            NoPicture,
            PictureSharedWithFew,
            PicturePublic,
            SaleListing,
            CallsOrStreams,
            DoorbellCamera,
        ],
        &[NoPicture],
    ),
    several(
        Question::Link,
        &[
            AddressOnRingOrKey,
            PapersWithIt,
            PictureShowsPlace,
            FoundAtTheDoor,
            ReturnTag,
            NoLink,
        ],
        &[NoLink],
    ),
    several(
        Question::OtherWays,
        &[
            SecondLockOtherKey,
            BoltOrChainOnly,
            CodeOrAppToo,
            NoOtherWay,
        ],
        &[NoOtherWay],
    ),
];

impl Question {
    /// Every question, in the order in which they are declared.
    pub const ALL: [Question; 15] = {
        use Question::*;
        [
            Reason,
            MissingHow,
            Opens,
            WhoDecides,
            ChangedSince,
            Copies,
            Holders,
            KeyKind,
            Marking,
            NumberIs,
            NumberElsewhere,
            Kept,
            Seen,
            Link,
            OtherWays,
        ]
    };

    /// What the question offers.
    pub fn row(self) -> &'static QuestionRow {
        static ROWS: [QuestionRow; 15] = QUESTIONS;
        &ROWS[self as usize]
    }
}

impl Choice {
    /// The question this choice belongs to.
    pub fn question(self) -> Question {
        QUESTION_OF[self as usize]
    }

    /// Whether ticking this choice clears every other tick of its question.
    pub fn stands_alone(self) -> bool {
        let row = self.question().row();
        !row.takes_several || row.alone.contains(&self)
    }
}

/// How many choices there are over all questions.
const CHOICE_COUNT: usize = Choice::NoOtherWay as usize + 1;

/// The question of each choice, filled from [`QUESTIONS`] when the crate is compiled.
const QUESTION_OF: [Question; CHOICE_COUNT] = {
    let mut table = [Question::Reason; CHOICE_COUNT];
    let mut q = 0;
    while q < QUESTIONS.len() {
        let mut c = 0;
        while c < QUESTIONS[q].choices.len() {
            table[QUESTIONS[q].choices[c] as usize] = QUESTIONS[q].question;
            c += 1;
        }
        q += 1;
    }
    table
};

const fn one(question: Question, choices: &'static [Choice]) -> QuestionRow {
    QuestionRow {
        question,
        choices,
        takes_several: false,
        alone: &[],
    }
}

const fn several(
    question: Question,
    choices: &'static [Choice],
    alone: &'static [Choice],
) -> QuestionRow {
    QuestionRow {
        question,
        choices,
        takes_several: true,
        alone,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_stand_in_the_order_of_their_ids() {
        for (index, question) in Question::ALL.into_iter().enumerate() {
            assert_eq!(question as usize, index);
            assert_eq!(question.row().question, question);
        }
    }

    #[test]
    fn choices_each_belong_to_exactly_one_question() {
        let mut owners = [0; CHOICE_COUNT];
        for row in &QUESTIONS {
            for &choice in row.choices {
                owners[choice as usize] += 1;
                assert_eq!(choice.question(), row.question);
            }
        }
        assert_eq!(owners, [1; CHOICE_COUNT]);
    }
}
