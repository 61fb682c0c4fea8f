//! The invented household of the demonstration: a terraced house with a workshop behind it, one key
//! for both, a spare with the neighbour and one with the dog walker. Nobody lives there.

use self_check_core::answers::Answers;
use self_check_core::questions::{Choice, Question};

/// What this household would answer.
pub fn answers() -> Answers {
    use Choice::*;
    let ticks = [
        LookAtMyKeys,
        HouseDoor,
        GarageShedOrGate,
        OwnIt,
        NotChanged,
        OneOrTwoUnaccounted,
        Household,
        TrustedCircle,
        HelperNow,
        HadItAlone,
        CutsOnOneEdge,
        FourOrMoreDigits,
        OnlyThisLock,
        NumberOnPapersAtHome,
        PocketOrClosedBag,
        CarriedInView,
        PictureSharedWithFew,
        NoLink,
        BoltOrChainOnly,
    ];
    Question::ALL
        .into_iter()
        .fold(Answers::none(), |answers, question| {
            let own: Vec<Choice> = ticks
                .into_iter()
                .filter(|choice| choice.question() == question)
                .collect();
            answers.give(question, &own).unwrap_or(answers)
        })
}

#[cfg(test)]
mod tests {
    use super::*;
    use self_check_core::path::Path;

    #[test]
    fn answers_fill_the_whole_path() {
        let path = Path::replay(&answers());
        assert_eq!(path.first_open(), None);
    }
}
