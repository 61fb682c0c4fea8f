//! The On-Line Encyclopedia of Integer Sequences: strings of n digits over b letters whose
//! neighbours differ by at most k, n = 1 to 7. Integers, so there is no tolerance.
//!
//! `Read` rows were read in the encyclopedia. `Mirror` rows were seen in a public mirror of its
//! terms. `Computed` rows have no entry and were counted by a separate program (transfer matrix and
//! literal enumeration); A383201 and A383202, which count the same strings without a leading zero,
//! stand in for them below.

use Mark::{Computed, Mirror, Read};
use self_check_core::differs::{CutRule, count};
use self_check_core::key::Family;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Mark {
    Read,
    Mirror,
    Computed,
}

struct Row {
    depths: u32,
    max_step: u32,
    sequence: &'static str,
    mark: Mark,
    counts: [u128; 7],
}

#[rustfmt::skip]
const ROWS: [Row; 26] = [
    Row { depths: 10, max_step: 1, sequence: "A126364", mark: Read, counts: [10, 28, 80, 230, 664, 1922, 5574] },
    Row { depths: 10, max_step: 2, sequence: "A126397", mark: Read, counts: [10, 44, 200, 918, 4236, 19598, 90790] },
    Row { depths: 10, max_step: 3, sequence: "A126478", mark: Read, counts: [10, 58, 350, 2130, 12990, 79258, 483646] },
    Row { depths: 10, max_step: 4, sequence: "A126505", mark: Read, counts: [10, 70, 510, 3720, 27142, 198034, 1444904] },
    Row { depths: 10, max_step: 5, sequence: "A126531", mark: Read, counts: [10, 80, 660, 5430, 44692, 367826, 3027314] },
    Row { depths: 10, max_step: 6, sequence: "", mark: Computed, counts: [10, 88, 788, 7042, 62948, 562670, 5029530] },
    Row { depths: 10, max_step: 7, sequence: "", mark: Computed, counts: [10, 94, 890, 8420, 79666, 753754, 7131596] },
    Row { depths: 10, max_step: 8, sequence: "A254599", mark: Read, counts: [10, 98, 962, 9442, 92674, 909602, 8927810] },
    Row { depths: 8, max_step: 1, sequence: "A126362", mark: Mirror, counts: [8, 22, 62, 176, 502, 1436, 4116] },
    Row { depths: 8, max_step: 2, sequence: "A126395", mark: Read, counts: [8, 34, 150, 668, 2986, 13362, 59816] },
    Row { depths: 8, max_step: 3, sequence: "A126476", mark: Mirror, counts: [8, 44, 252, 1446, 8300, 47642, 273466] },
    Row { depths: 8, max_step: 4, sequence: "A126503", mark: Mirror, counts: [8, 52, 348, 2322, 15500, 103462, 690610] },
    Row { depths: 8, max_step: 5, sequence: "A126529", mark: Mirror, counts: [8, 58, 426, 3124, 22914, 168066, 1232708] },
    Row { depths: 8, max_step: 6, sequence: "A287815", mark: Mirror, counts: [8, 62, 482, 3746, 29114, 226274, 1758602] },
    Row { depths: 7, max_step: 1, sequence: "A002714", mark: Read, counts: [7, 19, 53, 149, 421, 1193, 3387] },
    Row { depths: 7, max_step: 2, sequence: "A126394", mark: Mirror, counts: [7, 29, 125, 543, 2363, 10287, 44787] },
    Row { depths: 7, max_step: 3, sequence: "A126475", mark: Mirror, counts: [7, 37, 203, 1111, 6083, 33305, 182349] },
    Row { depths: 7, max_step: 4, sequence: "A126502", mark: Mirror, counts: [7, 43, 269, 1679, 10483, 65449, 408623] },
    Row { depths: 7, max_step: 5, sequence: "A126528", mark: Mirror, counts: [7, 47, 317, 2137, 14407, 97127, 654797] },
    Row { depths: 6, max_step: 1, sequence: "A126360", mark: Mirror, counts: [6, 16, 44, 122, 340, 950, 2658] },
    Row { depths: 6, max_step: 2, sequence: "A126393", mark: Read, counts: [6, 24, 100, 418, 1748, 7310, 30570] },
    Row { depths: 6, max_step: 3, sequence: "A126474", mark: Mirror, counts: [6, 30, 154, 788, 4034, 20650, 105708] },
    Row { depths: 6, max_step: 4, sequence: "A126501", mark: Mirror, counts: [6, 34, 194, 1106, 6306, 35954, 204994] },
    Row { depths: 5, max_step: 1, sequence: "A057960", mark: Mirror, counts: [5, 13, 35, 95, 259, 707, 1931] },
    Row { depths: 5, max_step: 2, sequence: "A126392", mark: Read, counts: [5, 19, 75, 295, 1161, 4569, 17981] },
    Row { depths: 5, max_step: 3, sequence: "A126473", mark: Mirror, counts: [5, 23, 107, 497, 2309, 10727, 49835] },
];

fn agrees(row: &Row) {
    for (cuts, expected) in (1..).zip(row.counts) {
        let rule = CutRule::new(cuts, row.depths, row.max_step);
        assert_eq!(count(&rule).unwrap(), expected, "{} {rule:?}", row.sequence);
    }
}

#[test]
fn every_row_read_in_the_encyclopedia_is_counted_exactly() {
    let read: Vec<_> = ROWS.iter().filter(|row| row.mark == Read).collect();
    assert_eq!(read.len(), 10);
    for row in read {
        assert!(!row.sequence.is_empty());
        agrees(row);
    }
}

#[test]
fn every_row_seen_in_a_mirror_or_computed_elsewhere_is_counted_exactly() {
    for row in ROWS.iter().filter(|row| row.mark != Read) {
        agrees(row);
    }
}

/// A383201 and A383202: strings of decimal digits without a leading zero, neighbours at most 6 and
/// at most 7 apart. Strings that do start with zero are those counted by taking the zero's
/// followers, 0 to k, as first digits; both halves are counted here by brute recursion over the
/// crate's own rule: all strings, less those whose first digit is zero.
#[test]
fn strings_without_a_leading_zero_are_counted_exactly() {
    let published: [(u32, [u128; 7]); 2] = [
        (6, [9, 81, 724, 6_472, 57_851, 517_112, 4_622_299]),
        (7, [9, 86, 813, 7_693, 72_786, 688_661, 6_515_721]),
    ];
    for (max_step, counts) in published {
        for (cuts, expected) in (1..).zip(counts) {
            let all = count(&CutRule::new(cuts, 10, max_step)).unwrap();
            let with_zero_first = starting_with(0, cuts, max_step);
            assert_eq!(all - with_zero_first, expected, "k {max_step} n {cuts}");
        }
    }
}

/// Literal enumeration of the strings that start with `digit`.
fn starting_with(digit: u32, cuts: u32, max_step: u32) -> u128 {
    if cuts == 1 {
        return 1;
    }
    (0..10_u32)
        .filter(|next| next.abs_diff(digit) <= max_step)
        .map(|next| starting_with(next, cuts - 1, max_step))
        .sum()
}

/// The rows that are families of the check.
#[test]
fn families_have_the_counted_number_of_keys() {
    let expected = [
        (Family::TenDepthFiveCuts, 79_666),
        (Family::TenDepthSixCuts, 753_754),
        (Family::SixDepthFiveCuts, 6_306),
    ];
    for (family, keys) in expected {
        assert_eq!(count(&family.cut_rule()).unwrap(), keys);
    }
}

/// Two rows that the encyclopedia files under other titles, by the recurrences printed there.
#[test]
fn rows_under_other_titles_follow_their_recurrence() {
    for depths in [8_u128, 10] {
        let at = |cuts| count(&CutRule::new(cuts, depths as u32, depths as u32 - 2)).unwrap();
        for cuts in 3..=7 {
            let expected = (depths - 1) * at(cuts - 1) + (depths - 2) * at(cuts - 2);
            assert_eq!(at(cuts), expected);
        }
    }
}
