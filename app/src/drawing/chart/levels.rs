//! Where the words of levels stand on a chart: on their own line, where no curve runs through them.
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

/// Width of a letter and height of a row, on a narrow plot. On a wider one words keep a little more
/// room than they need.
const LETTER: f64 = 0.0125;
const ROW: f64 = 0.055;
/// Free space between a word and a curve.
const GAP: f64 = 0.012;
/// Free space at the left, where the scale's own numbers stand.
const MARGIN: f64 = 0.12;

/// How wide a word is at most.
pub fn width(word: &str) -> f64 {
    word.chars().count() as f64 * LETTER
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
    fn a_level_word_makes_way_for_the_lines() {
        let (base, width) = (0.4, 0.25);
        let free = on_level(base, width, &[]);
        assert_eq!(free.left, MARGIN);
        let lines = [rising(0.2, 0.5)];
        let at_the_end = on_level(base, width, &lines);
        assert!((at_the_end.right - 1.0).abs() < 1e-12);
        assert!(misses(&lines[0], &at_the_end));
    }
}
