//! The outline of a whole demonstration key, column by column, in millimetres from the shoulder.
//!
//! Only spacing, flats and steps come from the family. Height of the blade, slope of the flanks, tip
//! and bow are a drawing's proportions and belong to no real blank: depths are taken from the
//! blank's edge, so that no picture carries a real depth.

use super::DemonstrationPattern;

/// What a picture of a whole key shows: from left to right and from top to bottom.
pub(super) const FIELD: Field = Field {
    left: -28.0,
    top: -9.5,
    width: 61.0,
    height: 27.4,
};

/// A rectangle in the plane of the key.
pub(super) struct Field {
    pub left: f64,
    pub top: f64,
    pub width: f64,
    pub height: f64,
}

/// The metal along one column: from the first value down to the second, without the hole for the
/// ring.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Column {
    pub metal: (f64, f64),
    pub hole: Option<(f64, f64)>,
}

impl DemonstrationPattern {
    /// The column at `place` from the shoulder, the bow lying at negative places; `None` beside the
    /// key.
    pub(super) fn column(self, place: f64) -> Option<Column> {
        let length = self.geometry().blade_length.get();
        if place > length || place < BOW_CENTRE - BOW_RADIUS {
            return None;
        }
        if place >= 0.0 {
            let chamfer = (place - (length - CHAMFER)).max(0.0);
            let metal = (self.depth_at(place), HEIGHT - chamfer);
            return Some(Column { metal, hole: None });
        }
        let half = if place > NECK_BEGINS {
            neck_half_height(place)
        } else {
            half_chord(place - BOW_CENTRE, BOW_RADIUS)?
        };
        let hole = half_chord(place - EYE_CENTRE, EYE_RADIUS);
        Some(Column {
            metal: (AXIS - half, AXIS + half),
            hole: hole.map(|half| (AXIS - half, AXIS + half)),
        })
    }

    /// How far the blade's edge lies below the blank's at `place` from the shoulder. Where several
    /// cuts overlap, the deepest has taken the metal away.
    pub(super) fn depth_at(self, place: f64) -> f64 {
        let geometry = self.geometry();
        let half_flat = geometry.flat.get() / 2.0;
        let cuts = geometry.cut_positions().zip(self.depths());
        let deepest = cuts
            .map(|(centre, &steps)| {
                let depth = f64::from(steps) * geometry.step.get();
                let beside = ((place - centre.get()).abs() - half_flat).max(0.0);
                depth - beside * FLANK_SLOPE
            })
            .fold(0.0, f64::max);
        let tip = (place - (geometry.blade_length.get() - TIP_LENGTH)) * TIP_SLOPE;
        deepest.max(tip)
    }
}

fn half_chord(from_centre: f64, radius: f64) -> Option<f64> {
    let square = radius * radius - from_centre * from_centre;
    (square > 0.0).then(|| square.sqrt())
}

/// Two straight pieces from the bow to the shoulder.
fn neck_half_height(place: f64) -> f64 {
    let between = |from: (f64, f64), to: (f64, f64)| {
        from.1 + (to.1 - from.1) * (place - from.0) / (to.0 - from.0)
    };
    let [bow, middle, shoulder] = NECK;
    if place < middle.0 {
        between(bow, middle)
    } else {
        between(middle, shoulder)
    }
}

/// Height of the blade, and the middle of the key.
const HEIGHT: f64 = 8.4;
const AXIS: f64 = HEIGHT / 2.0;
/// A cutter whose sides stand at a right angle.
const FLANK_SLOPE: f64 = 1.0;
const TIP_LENGTH: f64 = 4.6;
const TIP_SLOPE: f64 = 1.05;
const CHAMFER: f64 = 2.4;
const BOW_CENTRE: f64 = -12.73;
const BOW_RADIUS: f64 = 10.8;
const EYE_CENTRE: f64 = -18.3;
const EYE_RADIUS: f64 = 2.5;
/// Places of the neck and half its height there.
const NECK: [(f64, f64); 3] = [(NECK_BEGINS, 8.6), (-2.9, 6.6), (0.0, 5.9)];
const NECK_BEGINS: f64 = -6.2;

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn cuts_are_as_deep_at_their_centres_as_the_pattern_says() {
        for pattern in DemonstrationPattern::ALL {
            let geometry = pattern.geometry();
            for (centre, &steps) in geometry.cut_positions().zip(pattern.depths()) {
                let depth = pattern.depth_at(centre.get());
                // A neighbour's flank may reach deeper than a shallow cut, never less deep.
                assert!(depth >= f64::from(steps) * geometry.step.get() - 1e-12);
            }
        }
        let second = DemonstrationPattern::DEMONSTRATION.depth_at(5.867 + 3.967);
        assert!((second - 7.0 * 0.381).abs() < 1e-9);
    }

    #[test]
    fn whole_key_lies_in_the_field() {
        for pattern in DemonstrationPattern::ALL {
            assert_eq!(pattern.column(FIELD.left), None);
            let places = (0..=610).map(|step| FIELD.left + f64::from(step) * 0.1);
            for column in places.filter_map(|place| pattern.column(place)) {
                let (top, bottom) = column.metal;
                assert!(FIELD.top < top && top <= bottom && bottom < FIELD.top + FIELD.height);
                if let Some(hole) = column.hole {
                    assert!(top < hole.0 && hole.1 < bottom);
                }
            }
        }
    }

    #[test]
    fn bow_and_neck_meet() {
        let pattern = DemonstrationPattern::DEMONSTRATION;
        let before = pattern.column(NECK_BEGINS - 1e-9).unwrap().metal;
        let after = pattern.column(NECK_BEGINS + 1e-9).unwrap().metal;
        assert!((before.0 - after.0).abs() < 0.01 && (before.1 - after.1).abs() < 0.01);
    }
}
