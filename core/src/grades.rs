//! EN 1303's grades of key-related security as data: the marks on the scale on which a number of
//! keys is shown. They are the standard's minimum for new cylinders, not a grade of anyone's lock.

use crate::assumptions::Assumption;
use crate::sources::{self, Source};
use crate::units::Keys;

/// One grade of key-related security, the seventh digit of a cylinder's classification.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Grade {
    /// 1, the lowest, to 6.
    pub number: u8,
    /// Effective differs a cylinder of this grade has at least.
    pub minimum_differs: u32,
    /// Share of steps of a key that may be identical, in percent.
    pub identical_steps_percent: u8,
    /// Where the figures come from.
    pub source: &'static Source,
}

/// The grades, lowest first. The standard's own text was not seen; four secondary pages agree on the
/// differs and three on the identical steps, none says for which edition.
///
/// ```
/// use self_check_core::grades::GRADES;
/// assert_eq!(GRADES[3].minimum_differs, 30_000);
/// ```
pub const GRADES: [Grade; 6] = [
    grade(1, 100, 100),
    grade(2, 300, 70),
    grade(3, 15_000, 60),
    grade(4, 30_000, 60),
    grade(5, 30_000, 60),
    grade(6, 100_000, 50),
];

/// A mark on the scale of keys left to try.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// As many trial keys as fit in a pocket.
    PocketfulOfKeys,
    /// The standard's lowest minimum.
    LowestGrade,
    /// The minimum of its grade 4.
    GradeFour,
}

impl Mark {
    /// The marks, fewest keys first.
    pub const ALL: [Self; 3] = [Self::PocketfulOfKeys, Self::LowestGrade, Self::GradeFour];

    /// Where on the scale the mark stands.
    pub const fn keys(self) -> Keys {
        match self {
            Self::PocketfulOfKeys => Keys::nearest(Assumption::PocketfulOfKeys.value()),
            Self::LowestGrade => Keys::nearest(GRADES[0].minimum_differs as f64),
            Self::GradeFour => Keys::nearest(GRADES[3].minimum_differs as f64),
        }
    }

    /// Where the mark comes from.
    pub const fn source(self) -> &'static Source {
        match self {
            Self::PocketfulOfKeys => Assumption::PocketfulOfKeys.figure().source,
            Self::LowestGrade => GRADES[0].source,
            Self::GradeFour => GRADES[3].source,
        }
    }
}

impl Grade {
    /// How many of `cuts` cuts may share one depth.
    pub const fn cuts_sharing_a_depth(&self, cuts: u8) -> u32 {
        cuts as u32 * self.identical_steps_percent as u32 / 100
    }
}

const fn grade(number: u8, minimum_differs: u32, identical_steps_percent: u8) -> Grade {
    Grade {
        number,
        minimum_differs,
        identical_steps_percent,
        source: &sources::EN_1303,
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::differs::count;
    use crate::key::Family;

    #[test]
    fn grades_and_marks_stand_in_order() {
        for pair in GRADES.windows(2) {
            assert!(pair[0].minimum_differs <= pair[1].minimum_differs);
            assert!(pair[0].identical_steps_percent >= pair[1].identical_steps_percent);
            assert_eq!(pair[0].number + 1, pair[1].number);
        }
        assert_eq!(
            Mark::ALL.map(|mark| mark.keys().get()),
            [10.0, 100.0, 30_000.0]
        );
    }

    /// Even with the standard's own limit on identical steps the two ten-depth families stay above
    /// the minimum of grades 4 and 6.
    #[test]
    fn families_with_the_limit_on_identical_steps_keep_their_grade() {
        let limited = |family: Family, number| {
            let grade = GRADES.iter().find(|grade| grade.number == number).unwrap();
            let cuts = family.geometry().cuts;
            let rule = family
                .cut_rule()
                .sharing_at_most(grade.cuts_sharing_a_depth(cuts));
            let keys = count(&rule).unwrap();
            assert!(keys >= u128::from(grade.minimum_differs));
            keys
        };
        // At most three of five alike leaves out 10 keys with all five alike, and those with four
        // alike: five places for the odd one, 84 ordered pairs of depths in reach of each other.
        assert_eq!(limited(Family::TenDepthFiveCuts, 4), 79_666 - 10 - 5 * 84);
        assert!(limited(Family::TenDepthSixCuts, 6) < 753_754);
    }

    #[test]
    fn sharing_follows_the_percentage() {
        assert_eq!(GRADES[0].cuts_sharing_a_depth(5), 5);
        assert_eq!(GRADES[1].cuts_sharing_a_depth(5), 3);
        assert_eq!(GRADES[3].cuts_sharing_a_depth(5), 3);
        assert_eq!(GRADES[5].cuts_sharing_a_depth(6), 3);
    }
}
