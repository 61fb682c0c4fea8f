//! The blade of a cut key, in millimetres from the shoulder, from the family's own spacing.
//!
//! Only spacing, flats and steps come from the family. The blade's height, the slope of the flanks
//! and the tip are a drawing's proportions and belong to no real blank: depths are drawn from the
//! blank's edge, so a drawing never carries a real depth.

use self_check_core::order::sort_few;

use super::path::{Point, hatch};
use super::pattern::DrawnPattern;

/// Height of the blade.
pub const HEIGHT: f64 = 8.4;
/// Middle of the blade, and of the key.
pub const AXIS: f64 = HEIGHT / 2.0;

/// How steeply the flanks of a cut rise: a cutter whose sides stand at a right angle.
const FLANK: f64 = 1.0;
const TIP_LENGTH: f64 = 4.6;
const TIP_SLOPE: f64 = 1.05;
const TIP_CHAMFER: f64 = 2.4;
/// The groove that lets the key into its keyway.
const GROOVE: (f64, f64) = (4.9, 6.1);

/// The blade of one drawn pattern.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Blade {
    pattern: DrawnPattern,
    /// From the shoulder to the tip.
    pub length: f64,
}

/// A straight piece of the edge: where it begins and ends along the blade, how deep it is at its
/// beginning, and how much deeper it gets for each millimetre.
#[derive(Clone, Copy)]
struct Piece {
    from: f64,
    to: f64,
    depth: f64,
    slope: f64,
}

impl Blade {
    /// The blade of `pattern`, as long as its family's.
    pub fn new(pattern: DrawnPattern) -> Self {
        Self {
            pattern,
            length: pattern.geometry().blade_length.get(),
        }
    }

    /// The centre of cut number `cut`, counted from 1.
    pub fn cut_centre(&self, cut: u8) -> f64 {
        let geometry = self.pattern.geometry();
        geometry
            .cut_position(cut)
            .map_or(0.0, |centre| centre.get())
    }

    /// The cut edge from the shoulder to the tip, corner by corner.
    pub fn edge(&self) -> Vec<Point> {
        let pieces = self.pieces();
        let mut places = vec![0.0, self.length];
        for (index, piece) in pieces.iter().enumerate() {
            places.extend([piece.from, piece.to]);
            places.extend(
                pieces[..index]
                    .iter()
                    .filter_map(|other| piece.meets(other)),
            );
        }
        places.retain(|place| (0.0..=self.length).contains(place));
        sort_few(&mut places, |place| *place);
        places.dedup_by(|a, b| (*a - *b).abs() < 1e-6);
        let corners = places
            .into_iter()
            .map(|place| (place, depth_at(&pieces, place)));
        without_straight_corners(corners.collect())
    }

    /// The whole blade, closed along the shoulder.
    pub fn outline(&self) -> Vec<Point> {
        let mut outline = self.edge();
        outline.extend([
            (self.length, HEIGHT - TIP_CHAMFER),
            (self.length - TIP_CHAMFER, HEIGHT),
            (0.0, HEIGHT),
        ]);
        outline
    }

    /// The blade with the same cuts along both edges.
    pub fn outline_of_both_edges(&self) -> Vec<Point> {
        // The two ramps of the tip stop short of each other.
        let upper = self.edge().into_iter().map(|(x, y)| (x, y.min(AXIS - 0.8)));
        let mut outline: Vec<Point> = upper.collect();
        let lower: Vec<Point> = outline
            .iter()
            .rev()
            .map(|&(x, y)| (x, HEIGHT - y))
            .collect();
        outline.extend(lower);
        outline
    }

    /// The two lines of the groove.
    pub fn groove(&self) -> [(Point, Point); 2] {
        let (top, bottom) = GROOVE;
        [
            ((0.0, top), (self.length, top)),
            ((0.0, bottom), (self.length, bottom)),
        ]
    }

    /// Shading in the groove.
    pub fn shade(&self) -> Vec<(Point, Point)> {
        let (top, bottom) = GROOVE;
        let end = self.length;
        hatch(&[(0.0, top), (end, top), (end, bottom), (0.0, bottom)], 0.9)
    }

    fn pieces(&self) -> Vec<Piece> {
        let geometry = self.pattern.geometry();
        let half_flat = geometry.flat.get() / 2.0;
        let tip = self.length - TIP_LENGTH;
        let mut pieces = vec![Piece {
            from: tip,
            to: self.length,
            depth: 0.0,
            slope: TIP_SLOPE,
        }];
        for (cut, &steps) in (1..).zip(self.pattern.depths()) {
            let depth = f64::from(steps) * geometry.step.get();
            let (left, right) = (
                self.cut_centre(cut) - half_flat,
                self.cut_centre(cut) + half_flat,
            );
            let reach = depth / FLANK;
            pieces.extend([
                Piece {
                    from: left - reach,
                    to: left,
                    depth: 0.0,
                    slope: FLANK,
                },
                Piece {
                    from: left,
                    to: right,
                    depth,
                    slope: 0.0,
                },
                Piece {
                    from: right,
                    to: right + reach,
                    depth,
                    slope: -FLANK,
                },
            ]);
        }
        pieces
    }
}

impl Piece {
    fn depth_at(&self, place: f64) -> f64 {
        if (self.from..=self.to).contains(&place) {
            self.depth + (place - self.from) * self.slope
        } else {
            0.0
        }
    }

    /// Where two pieces that are not parallel cross.
    fn meets(&self, other: &Self) -> Option<f64> {
        let turn = self.slope - other.slope;
        if turn == 0.0 {
            return None;
        }
        let here = self.depth - self.from * self.slope;
        let there = other.depth - other.from * other.slope;
        Some((there - here) / turn)
    }
}

/// Where several cuts overlap, the deepest has taken the metal away.
fn depth_at(pieces: &[Piece], place: f64) -> f64 {
    pieces
        .iter()
        .map(|piece| piece.depth_at(place))
        .fold(0.0, f64::max)
}

fn without_straight_corners(corners: Vec<Point>) -> Vec<Point> {
    let mut kept: Vec<Point> = Vec::with_capacity(corners.len());
    for corner in corners {
        if let [.., before, middle] = kept[..]
            && is_straight(before, middle, corner)
        {
            kept.pop();
        }
        kept.push(corner);
    }
    kept
}

fn is_straight(a: Point, b: Point, c: Point) -> bool {
    let cross = (b.0 - a.0) * (c.1 - a.1) - (b.1 - a.1) * (c.0 - a.0);
    cross.abs() < 1e-6
}

#[cfg(test)]
mod tests {
    use super::*;

    fn blades() -> impl Iterator<Item = (DrawnPattern, Blade)> {
        DrawnPattern::ALL
            .into_iter()
            .map(|pattern| (pattern, Blade::new(pattern)))
    }

    #[test]
    fn cut_centres_stand_a_pitch_apart_from_the_first() {
        for (pattern, blade) in blades() {
            let geometry = pattern.geometry();
            for cut in 1..=geometry.cuts {
                let due = geometry.first_cut.get() + f64::from(cut - 1) * geometry.pitch.get();
                assert!((blade.cut_centre(cut) - due).abs() < 1e-9);
            }
        }
    }

    #[test]
    fn edge_is_as_deep_at_each_centre_as_the_pattern_says() {
        for (pattern, blade) in blades() {
            let step = pattern.geometry().step.get();
            let pieces = blade.pieces();
            for (cut, &steps) in (1..).zip(pattern.depths()) {
                let depth = depth_at(&pieces, blade.cut_centre(cut));
                // A neighbour's flank may reach deeper than a shallow cut, never less deep.
                assert!(depth >= f64::from(steps) * step - 1e-9);
            }
        }
        let blade = Blade::new(DrawnPattern::DEMONSTRATION);
        let depth = depth_at(&blade.pieces(), blade.cut_centre(2));
        assert!((depth - 7.0 * 0.381).abs() < 1e-9);
    }

    #[test]
    fn edge_runs_forward_from_the_shoulder_to_the_tip() {
        for (_, blade) in blades() {
            let edge = blade.edge();
            assert_eq!(edge[0].0, 0.0);
            assert_eq!(edge[edge.len() - 1].0, blade.length);
            assert!(edge.windows(2).all(|pair| pair[0].0 < pair[1].0));
            assert!(
                edge.iter()
                    .all(|corner| (0.0..AXIS + 1.0).contains(&corner.1))
            );
        }
    }

    #[test]
    fn hidden_cut_leaves_the_edge_untouched_between_its_neighbours() {
        let pattern = DrawnPattern::HIDDEN_CUT;
        let blade = Blade::new(pattern);
        let pieces = blade.pieces();
        assert_eq!(depth_at(&pieces, blade.cut_centre(3)), 0.0);
        let valleys = |blade: &Blade| {
            let edge = blade.edge();
            let deeper = |pair: &&[Point]| pair[1].1 > pair[0].1 + 1e-9;
            edge.windows(2).filter(deeper).count() - 1 // the tip's ramp is no cut
        };
        assert_eq!(valleys(&blade), 4);
        assert_eq!(valleys(&Blade::new(DrawnPattern::DEMONSTRATION)), 5);
    }

    #[test]
    fn both_edges_mirror_each_other() {
        let outline = Blade::new(DrawnPattern::DEMONSTRATION).outline_of_both_edges();
        let half = outline.len() / 2;
        for (upper, lower) in outline[..half].iter().zip(outline[half..].iter().rev()) {
            assert_eq!(upper.0, lower.0);
            assert!((upper.1 + lower.1 - HEIGHT).abs() < 1e-9);
        }
    }
}
