//! From the answers to the assessment: the whole pipeline on one screen.

mod count;
mod headline;
mod level;
mod number;

use crate::advice::{Advised, advise};
use crate::answers::Answers;
use crate::exposure::{Exposure, exposures};
use crate::facts::is_uneasy;
use crate::path::Path;

pub use count::{Count, NoCount, Positions};
pub use headline::{Headline, WayOut};
pub use number::Number;

/// What the key's secret is worth today. It speaks of the secret, never of the door.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Level {
    /// Nothing the owner knows of gave it away.
    Kept,
    /// Too little is known to say.
    CannotBeToldYet,
    /// Somebody could have read or copied it.
    InDoubt,
    /// Somebody has it, or anybody may find or see it with its door.
    GivenAway,
}

/// The result of a check.
#[derive(Clone, Debug, PartialEq)]
pub struct Assessment {
    /// Who could have done what, for one sentence.
    pub headline: Headline,
    /// What the secret is worth today.
    pub level: Level,
    /// Whether safety comes first: the level stays hidden until asked for, and nothing offers to
    /// keep, print or copy.
    pub safety_first: bool,
    /// How many keys are left to try.
    pub count: Count,
    /// What the number on the key is.
    pub number: Number,
    /// What may have given the secret away, weightiest first.
    pub exposures: Vec<Exposure>,
    /// What to do, what to find out, why and why not.
    pub advised: Advised,
}

/// Assesses `answers` as they stand. A question on the path that has no answer yet counts as "not
/// sure". `positions` is what the owner counted with the ruler, if they did.
pub fn assess(answers: &Answers, positions: Option<Positions>) -> Assessment {
    let path = Path::replay(answers);
    let answers = path.completed(answers);
    let possible = Count::possible(&answers, positions);
    let exposures = exposures(&answers, possible.ok());
    let level = Level::of(&exposures);
    Assessment {
        headline: Headline::of(&answers, &exposures, level),
        level,
        safety_first: is_uneasy(&answers).is_certain(),
        count: Count::after(possible, &exposures),
        number: Number::of(&answers),
        advised: advise(&answers),
        exposures,
    }
}
