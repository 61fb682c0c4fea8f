//! What the first program brings to the second whenever the reader comes to one of its pages: what a
//! check found, and no answer. It goes over as one number, since the two share no memory.

use self_check_core::advice::Urgency;
use self_check_core::household::FoundExposure;

/// What is brought.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Brought {
    /// What a check found of a key, where the reader wants it taken over.
    pub found: Option<FoundExposure>,
    /// Whether a check told of a person who makes somebody uneasy.
    pub safety_first: bool,
}

/// Everything a check can find. Its place, from 1, is its number on the way over.
const FOUND: [FoundExposure; 5] = [
    FoundExposure::NotExposed,
    FoundExposure::CannotTell,
    FoundExposure::Exposed(Urgency::WhenConvenient),
    FoundExposure::Exposed(Urgency::Soon),
    FoundExposure::Exposed(Urgency::Today),
];

const SAFETY_FIRST: u32 = 8;

impl Brought {
    /// As a number.
    pub fn number(self) -> u32 {
        let place = FOUND
            .iter()
            .zip(1..)
            .find(|&(&one, _)| Some(one) == self.found);
        let safety = if self.safety_first { SAFETY_FIRST } else { 0 };
        place.map_or(0, |(_, place)| place) + safety
    }

    /// From its number. What is no number of anything brings nothing.
    pub fn of(number: u32) -> Self {
        let place = (number % SAFETY_FIRST).checked_sub(1);
        let place = place.and_then(|place| usize::try_from(place).ok());
        Self {
            found: place.and_then(|place| FOUND.get(place).copied()),
            safety_first: number / SAFETY_FIRST == 1,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_brought_arrives() {
        let all = FOUND.into_iter().map(Some).chain([None]);
        for found in all {
            for safety_first in [false, true] {
                let brought = Brought {
                    found,
                    safety_first,
                };
                assert_eq!(Brought::of(brought.number()), brought);
            }
        }
    }

    #[test]
    fn what_is_no_number_of_anything_brings_nothing() {
        for number in [6, 7, 16, u32::MAX] {
            assert_eq!(Brought::of(number), Brought::default(), "{number}");
        }
    }
}
