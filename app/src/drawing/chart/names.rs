//! Where the names of lines stand on a chart: beside their own line, on no line and no other word.
//!
//! Everything is in shares of the plot, across from the left and up from the bottom.

use super::super::path::Point;

/// A word's box.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Words {
    /// Its left edge.
    pub left: f64,
    /// Its right edge.
    pub right: f64,
    /// Its base line.
    pub base: f64,
}

/// Width of a letter and height of a row, on the narrowest plot that carries names (see the style
/// sheet). On a wider one names keep a little more room than they need.
const LETTER: f64 = 0.0125;
const ROW: f64 = 0.055;
/// Free space between a word and a line.
const GAP: f64 = 0.012;
/// Free space at the left, where the scale's own numbers stand.
const MARGIN: f64 = 0.12;
/// Heights to try, in the order in which they are liked best.
const HEIGHTS: [f64; 12] = [
    0.7, 0.62, 0.78, 0.54, 0.46, 0.86, 0.38, 0.3, 0.22, 0.14, 0.07, 0.94,
];

/// How wide a word is at most.
pub fn width(word: &str) -> f64 {
    word.chars().count() as f64 * LETTER
}

/// A place for each name in turn, where there is one; `taken` are words that stand there already.
/// Lines run forward across the plot.
pub fn places(lines: &[Vec<Point>], names: &[&str], taken: &[Words]) -> Vec<Option<Words>> {
    let mut taken = taken.to_vec();
    lines
        .iter()
        .zip(names)
        .map(|(line, name)| {
            let place = beside(line, width(name))
                .chain(above_the_end(line, width(name)))
                .find(|words| is_free(words, lines, &taken));
            taken.extend(place);
            place
        })
        .collect()
}

/// Where a level's word stands on its line: at the left, unless a line crosses it there; else at the
/// right end.
pub fn on_level(base: f64, width: f64, lines: &[Vec<Point>]) -> Words {
    let from = |left: f64| Words {
        left,
        right: left + width,
        base,
    };
    let usual = from(MARGIN);
    [usual, from(1.0 - width)]
        .into_iter()
        .find(|words| lines.iter().all(|line| misses(line, words)))
        .unwrap_or(usual)
}

/// Left and right of the line, at each height.
fn beside(line: &[Point], width: f64) -> impl Iterator<Item = Words> {
    HEIGHTS.into_iter().flat_map(move |base| {
        let left = crossing(line, base - ROW / 2.0).map(|x| x - GAP - width);
        let right = crossing(line, base + ROW).map(|x| x + GAP);
        let words = move |left: f64| Words {
            left,
            right: left + width,
            base,
        };
        [left.map(words), right.map(words)].into_iter().flatten()
    })
}

/// Over the last point, for a line that stays low and is too flat to stand beside.
fn above_the_end(line: &[Point], width: f64) -> Option<Words> {
    let end = line.last().filter(|end| end.1 < 0.5);
    end.map(|&(right, height)| Words {
        left: right - width,
        right,
        base: height + 1.5 * GAP,
    })
}

fn is_free(words: &Words, lines: &[Vec<Point>], taken: &[Words]) -> bool {
    let inside = words.left >= MARGIN && words.right <= 1.0;
    let apart = |other: &Words| {
        words.right + GAP < other.left
            || other.right + GAP < words.left
            || (words.base - other.base).abs() > ROW * 1.2
    };
    inside && taken.iter().all(apart) && lines.iter().all(|line| misses(line, words))
}

/// Whether a line keeps clear of a word.
fn misses(line: &[Point], words: &Words) -> bool {
    const SAMPLES: u8 = 40;
    (0..=SAMPLES).all(|sample| {
        let share = f64::from(sample) / f64::from(SAMPLES);
        let x = words.left + share * (words.right - words.left);
        height_at(line, x)
            .is_none_or(|height| height < words.base - GAP || height > words.base + ROW)
    })
}

fn height_at(line: &[Point], x: f64) -> Option<f64> {
    line.windows(2)
        .find(|pair| pair[0].0 <= x && x <= pair[1].0)
        .map(|pair| between((pair[0].0, pair[0].1), (pair[1].0, pair[1].1), x))
}

/// Where a line first rises through a height.
pub fn crossing(line: &[Point], height: f64) -> Option<f64> {
    line.windows(2)
        .find(|pair| pair[0].1 <= height && height < pair[1].1)
        .map(|pair| between((pair[0].1, pair[0].0), (pair[1].1, pair[1].0), height))
}

/// Straight between two points, the second value at the first.
fn between(from: Point, to: Point, at: f64) -> f64 {
    if to.0 == from.0 {
        return from.1;
    }
    from.1 + (to.1 - from.1) * (at - from.0) / (to.0 - from.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rising(from: f64, to: f64) -> Vec<Point> {
        vec![(0.0, 0.0), (from, 0.0), (to, 0.97), (1.0, 0.97)]
    }

    #[test]
    fn crossing_reads_between_two_points() {
        let line = rising(0.2, 0.6);
        assert!(crossing(&line, 0.485).is_some_and(|x| (x - 0.4).abs() < 1e-9));
        assert_eq!(crossing(&line, 0.99), None);
    }

    #[test]
    fn names_touch_no_line_and_no_other_name() {
        let lines = [
            rising(0.1, 0.45),
            rising(0.3, 0.62),
            rising(0.55, 0.95),
            vec![(0.0, 0.0), (1.0, 0.01)],
        ];
        let names = ["a name", "another", "the third of them", "flat"];
        let places = places(&lines, &names, &[]);
        let found: Vec<Words> = places.iter().copied().flatten().collect();
        assert_eq!(found.len(), 4, "{places:?}");
        for (index, words) in found.iter().enumerate() {
            assert!(lines.iter().all(|line| misses(line, words)));
            for other in &found[..index] {
                let apart = words.right < other.left || other.right < words.left;
                assert!(apart || (words.base - other.base).abs() > ROW);
            }
        }
    }

    #[test]
    fn a_level_word_makes_way_for_the_lines() {
        let (base, width) = (0.4, 0.25);
        let free = on_level(base, width, &[]);
        assert_eq!(free.left, MARGIN);
        let lines = [rising(0.2, 0.5)];
        let at_the_end = on_level(base, width, &lines);
        assert!((at_the_end.right - 1.0).abs() < 1e-12);
        assert!(misses(&lines[0], &at_the_end));
    }

    #[test]
    fn a_name_without_room_is_left_to_the_list() {
        let everywhere: Vec<Vec<Point>> = (0..40)
            .map(|x| rising(f64::from(x) / 40.0, f64::from(x + 1) / 40.0))
            .collect();
        let names = vec!["too long to stand between such lines"; 40];
        assert!(places(&everywhere, &names, &[]).iter().all(Option::is_none));
    }
}
