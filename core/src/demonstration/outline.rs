//! The shape of a demonstration key, in millimetres of a key of ordinary size.

use super::DemonstrationPattern;

/// Where metal begins and ends along one line across the key; nothing where there is none.
pub(super) type Spans = [Option<(f64, f64)>; 2];

/// From the end of the bow to the tip.
pub(super) const LENGTH_MM: f64 = BOW_MM + SHOULDER_MM + BLADE_MM;

/// Width of the bow.
pub(super) const WIDTH_MM: f64 = BOW_MM;

impl DemonstrationPattern {
    /// Metal on the line across the key at `x` from the end of the bow; 0 is one side of the bow.
    pub(super) fn metal_at(self, x: f64) -> Spans {
        let middle = 0.5 * BOW_MM;
        if (0.0..BOW_MM).contains(&x) {
            let neck = if x > BOW_MM - middle {
                SHOULDER_HALF_MM
            } else {
                0.0
            };
            let half = chord(x - middle, middle).max(neck);
            let hole = chord(x - HOLE_CENTRE_MM, HOLE_MM);
            return if hole > 0.0 {
                [
                    Some((middle - half, middle - hole)),
                    Some((middle + hole, middle + half)),
                ]
            } else {
                [Some((middle - half, middle + half)), None]
            };
        }
        let along = x - BOW_MM;
        if (0.0..SHOULDER_MM).contains(&along) {
            return [
                Some((middle - SHOULDER_HALF_MM, middle + SHOULDER_HALF_MM)),
                None,
            ];
        }
        let along = along - SHOULDER_MM;
        let back = middle + 0.5 * BLADE_HEIGHT_MM;
        let edge = middle - 0.5 * BLADE_HEIGHT_MM + self.cut_away(along);
        if (0.0..=BLADE_MM).contains(&along) && edge < back {
            [Some((edge, back)), None]
        } else {
            [None, None]
        }
    }

    /// How much of the blade's height is cut away at this distance from the shoulder: flats at the
    /// cuts, straight lines between them, a sloping tip.
    fn cut_away(self, along: f64) -> f64 {
        let steps = self.steps();
        let flat = 0.5 * FLAT_MM;
        let mut before = (FIRST_CUT_MM - PITCH_MM, 0.0);
        for (cut, &step) in steps.iter().enumerate() {
            let centre = FIRST_CUT_MM + cut as f64 * PITCH_MM;
            let depth = f64::from(step) * STEP_MM;
            if along <= centre + flat {
                let (from, shallow) = before;
                let part = ((along - from) / (centre - flat - from)).clamp(0.0, 1.0);
                return shallow + part * (depth - shallow);
            }
            before = (centre + flat, depth);
        }
        let (from, depth) = before;
        let to_tip = (along - from) / (BLADE_MM - from);
        depth + to_tip * to_tip * (BLADE_HEIGHT_MM - depth)
    }

    /// The invented numbering: 1 to 7.
    const fn steps(self) -> [u8; 5] {
        match self {
            Self::Waves => [2, 6, 3, 7, 4],
            Self::Stairs => [1, 2, 4, 5, 7],
            Self::Valley => [2, 3, 7, 3, 1],
        }
    }
}

/// Half the chord of a circle at this distance from its centre; 0 outside.
fn chord(distance: f64, radius: f64) -> f64 {
    (radius * radius - distance * distance).max(0.0).sqrt()
}

const BOW_MM: f64 = 23.0;
const SHOULDER_MM: f64 = 1.8;
const SHOULDER_HALF_MM: f64 = 5.2;
const BLADE_MM: f64 = 29.0;
const BLADE_HEIGHT_MM: f64 = 8.0;
const HOLE_CENTRE_MM: f64 = 5.5;
const HOLE_MM: f64 = 2.5;
const FIRST_CUT_MM: f64 = 5.2;
pub(super) const PITCH_MM: f64 = 4.2;
const FLAT_MM: f64 = 1.0;
pub(super) const STEP_MM: f64 = 0.54;
