//! EN 1303, key-related security, as quoted by secondary pages (four agree on the differs): the
//! scale on which keys left are shown. Whole numbers, so there is no tolerance.

use self_check_core::grades::{GRADES, Mark};
use self_check_core::key::Family;

#[test]
fn grades_have_the_quoted_minimum_of_differs() {
    let differs = GRADES.map(|grade| grade.minimum_differs);
    assert_eq!(differs, [100, 300, 15_000, 30_000, 30_000, 100_000]);
    let identical = GRADES.map(|grade| grade.identical_steps_percent);
    assert_eq!(identical, [100, 70, 60, 60, 60, 50]);
}

#[test]
fn marks_of_the_scale_stand_at_quoted_minima() {
    assert_eq!(Mark::LowestGrade.keys().get(), 100.0);
    assert_eq!(Mark::GradeFour.keys().get(), 30_000.0);
}

/// Before any exposure, by upper bound: makers use fewer keys than the rule allows.
#[test]
fn families_reach_the_grades_their_counts_allow() {
    for (family, grade) in [
        (Family::TenDepthFiveCuts, 5),
        (Family::TenDepthSixCuts, 6),
        (Family::SixDepthFiveCuts, 2),
        (Family::EuropeanFiveCuts, 5),
        (Family::EuropeanSixCuts, 6),
    ] {
        let minima = GRADES.iter().map(|grade| u64::from(grade.minimum_differs));
        let reached = minima.filter(|&least| family.differs() >= least).count();
        assert_eq!(reached, grade, "{}", family.differs());
    }
}
