//! What the first program brings to the second whenever the reader comes to one of its pages: what a
//! check found, and no answer. It goes over as one number, since the two share no memory.

use self_check_core::advice::Urgency;
use self_check_core::household::FoundExposure;

/// What is brought.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Brought {
    /// What a check found of a key, where the reader wants it taken over.
    pub found: Option<Carried>,
    /// Whether a check told of a person who makes somebody uneasy.
    pub safety_first: bool,
}

/// What a check found, on its way to keys and doors.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Carried {
    /// What it found.
    pub exposure: FoundExposure,
    /// Whether that check was begun from a key on the board, and no other has been begun since.
    pub is_of_begun_key: bool,
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
const OF_BEGUN_KEY: u32 = 16;

impl Brought {
    /// As a number.
    pub fn number(self) -> u32 {
        let place = FOUND
            .iter()
            .zip(1..)
            .find(|&(&one, _)| self.found.is_some_and(|found| found.exposure == one));
        let mark = |is_so: bool, mark: u32| if is_so { mark } else { 0 };
        let of_begun_key = self.found.is_some_and(|found| found.is_of_begun_key);
        place.map_or(0, |(_, place)| place)
            + mark(self.safety_first, SAFETY_FIRST)
            + mark(of_begun_key, OF_BEGUN_KEY)
    }

    /// From its number. What is no number of anything brings nothing.
    pub fn of(number: u32) -> Self {
        let place = (number % SAFETY_FIRST).checked_sub(1);
        let place = place.and_then(|place| usize::try_from(place).ok());
        let exposure = place.and_then(|place| FOUND.get(place).copied());
        let is_known = number < 2 * OF_BEGUN_KEY;
        Self {
            found: exposure.filter(|_| is_known).map(|exposure| Carried {
                exposure,
                is_of_begun_key: number >= OF_BEGUN_KEY,
            }),
            safety_first: is_known && number % OF_BEGUN_KEY >= SAFETY_FIRST,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_brought_arrives() {
        let carried = |exposure| {
            [false, true].map(|is_of_begun_key| Carried {
                exposure,
                is_of_begun_key,
            })
        };
        let all = FOUND.into_iter().flat_map(carried).map(Some).chain([None]);
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
        for number in [6, 7, 16, 22, 32, 33, 40, u32::MAX] {
            assert_eq!(Brought::of(number), Brought::default(), "{number}");
        }
    }
}
