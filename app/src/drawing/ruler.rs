//! The ruler at true size: where the cut positions of common keys lie along the blade, counted from
//! the shoulder, or from the tip where a key has none. It never measures across the blade.
//!
//! A position is drawn as a band wide enough for every family, for positions cannot tell families
//! apart.

use self_check_core::key::Family;
use yew::prelude::*;

use super::path::number;

/// The short side of a bank card in millimetres. Source: ISO/IEC 7810, size ID-1.
pub const CARD_SHORT_SIDE: f64 = 53.98;

/// Positions the ruler shows: one more than the longest family has, so that the last can be told
/// from a ruler that ends.
const SHOWN: u8 = 7;
/// Free space before the shoulder and after the last band, in millimetres.
const BEFORE: f64 = 3.0;
const AFTER: f64 = 4.0;
/// How high the ruler is, in millimetres.
const HEIGHT: f64 = 9.0;

/// The ruler: what it is and shows, how many pixels of the page go to a millimetre of the screen, and
/// whether the key is laid with its tip, not its shoulder, at the line.
pub fn true_ruler(
    title: &'static str,
    desc: &'static str,
    pixels_per_mm: f64,
    from_the_tip: bool,
) -> Html {
    let px = |mm: f64| number(mm * pixels_per_mm);
    let bands = if from_the_tip {
        from_tip()
    } else {
        from_shoulder()
    };
    html! {
        <svg class="true-ruler" role="img" focusable="false" width={px(length())} height={px(HEIGHT)}>
            <title>{ title }</title>
            <desc>{ desc }</desc>
            <rect class="rule-plate" x="0" y="0" width="100%" height="100%" />
            <line class="ruler-stop" x1={px(BEFORE)} x2={px(BEFORE)} y1="0" y2="100%" />
            { for bands.into_iter().zip(1..).map(|((from, to), place)| html! {
                <g key={place}>
                    <rect class="ruler-band" x={px(BEFORE + from)} width={px(to - from)} y="0" height="55%" />
                    <text class="ruler-number" x={px(BEFORE + (from + to) / 2.0)} y="88%" text-anchor="middle">
                        { place }
                    </text>
                </g>
            }) }
        </svg>
    }
}

/// How long the ruler is, in millimetres.
pub fn length() -> f64 {
    let end = from_shoulder().last().map_or(0.0, |band| band.1);
    BEFORE + end + AFTER
}

/// The bands from the shoulder, in millimetres: the centre of each position over all families.
fn from_shoulder() -> Vec<(f64, f64)> {
    (0..SHOWN)
        .map(|place| {
            let centres = Family::ALL.into_iter().map(|family| {
                let geometry = family.geometry();
                geometry.first_cut.get() + f64::from(place) * geometry.pitch.get()
            });
            span(centres)
        })
        .collect()
}

/// The same bands from the tip, the nearest first, over the blade lengths of the families.
fn from_tip() -> Vec<(f64, f64)> {
    (0..SHOWN)
        .map(|place| {
            let centres = Family::ALL.into_iter().map(|family| {
                let geometry = family.geometry();
                let last = geometry.cut_positions().last().map_or(0.0, |cut| cut.get());
                geometry.blade_length.get() - last + f64::from(place) * geometry.pitch.get()
            });
            span(centres)
        })
        .collect()
}

/// From the smallest to the largest, and half a millimetre more on each side to be seen.
fn span(centres: impl Iterator<Item = f64>) -> (f64, f64) {
    let (from, to) = centres.fold((f64::INFINITY, 0.0_f64), |(from, to), centre| {
        (from.min(centre), to.max(centre))
    });
    (from - 0.5, to + 0.5)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bands_hold_every_familys_positions_and_stay_apart() {
        let bands = from_shoulder();
        for family in Family::ALL {
            for (cut, band) in family.geometry().cut_positions().zip(&bands) {
                assert!(band.0 < cut.get() && cut.get() < band.1, "{family:?}");
            }
        }
        assert!(bands.windows(2).all(|pair| pair[0].1 < pair[1].0));
    }

    #[test]
    fn bands_from_the_tip_stay_in_order() {
        let bands = from_tip();
        assert!(bands.windows(2).all(|pair| pair[0].0 < pair[1].0));
        assert!(bands.iter().all(|band| 0.0 < band.0 && band.0 < band.1));
    }
}
