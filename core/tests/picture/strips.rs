//! Strips whose every figure is known, rendered here, and strips of chance.

use proptest::prelude::*;
use self_check_core::key::{Family, FamilyChoice, LockFace};
use self_check_core::picture::{
    Caveat, Judgement, MarkError, Marks, Measurement, Measuring, Point, Readable, Rectangle, Size,
};
use self_check_core::sight::Observer;

const SIZE: Size = Size {
    width: 420,
    height: 300,
};

fn marks(size: Size) -> Marks {
    let (width, height) = (f64::from(size.width), f64::from(size.height));
    let at = |share: f64| Point {
        x: share * width,
        y: 0.5 * height,
    };
    Marks::new(size, at(0.05), at(0.95)).unwrap()
}

fn measured(marks: Marks, size: Size, grey: impl Fn(u32, u32) -> f64) -> Measurement {
    let mut measuring = Measuring::new(marks, None);
    while let Some(part) = measuring.next_rows() {
        assert!(part.left + part.width <= size.width && part.top + part.height <= size.height);
        let mut colours = Vec::new();
        for y in part.top..part.top + part.height {
            for x in part.left..part.left + part.width {
                let shade = grey(x, y).round().clamp(0.0, 255.0) as u8;
                colours.extend([shade, shade, shade, 255]);
            }
        }
        measuring.give_rows(&colours).unwrap();
    }
    while measuring.work() {}
    measuring.finish()
}

/// A bar across the middle, brighter than the ground, both its edges blurred, leaning a little.
fn bar(blur: f64, contrast: f64) -> impl Fn(u32, u32) -> f64 {
    move |x, y| {
        let middle = 150.0 + 0.08 * (f64::from(x) - 210.0);
        let away = f64::from(y) + 0.5 - middle;
        let below = |t: f64| 0.5 * libm::erfc(-t / blur / 2.0_f64.sqrt());
        60.0 + contrast * (below(away + 40.0) - below(away - 40.0))
    }
}

/// Even noise of this standard deviation, the same at every run.
fn grain(x: u32, y: u32, deviation: f64) -> f64 {
    let mut bits = (u64::from(y) << 32 | u64::from(x)).wrapping_mul(0x9e37_79b9_7f4a_7c15);
    bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    bits ^= bits >> 31;
    let parts = (0..4).map(|part| (bits >> (16 * part) & 0xffff) as f64 / 65_536.0 - 0.5);
    deviation * 3.0_f64.sqrt() * parts.sum::<f64>()
}

/// Tolerance: 3 parts in 100, since nothing but whole grey levels stands between picture and figure;
/// below one pixel a tenth of a pixel, since the edge's slope then falls on one or two pixels.
#[test]
fn blur_and_contrast_of_a_clean_bar_are_recovered() {
    for blur in [0.5, 0.8, 1.2, 2.0, 3.5, 6.0, 10.0] {
        // The edge leans by 4.6 degrees, so that blur across it is a cosine smaller than down it.
        let across = blur * libm::cos(libm::atan(0.08));
        let found = measured(marks(SIZE), SIZE, bar(blur, 120.0));
        let found_blur = found.blur_px().unwrap();
        let tolerance = (0.03 * across).max(0.1 * f64::from(u8::from(blur < 1.0)));
        assert!(
            (found_blur - across).abs() < tolerance,
            "{found_blur} {across}"
        );
        assert!(
            (found.contrast() - 120.0).abs() < 3.6,
            "{}",
            found.contrast()
        );
    }
}

/// Tolerance: 12 parts in 100; the rounding to whole levels adds 0.29 by squares.
#[test]
fn noise_is_recovered_with_edges_in_the_strip() {
    for noise in [1.0, 3.0, 8.0] {
        let bar = bar(1.5, 120.0);
        let found = measured(marks(SIZE), SIZE, |x, y| bar(x, y) + grain(x, y, noise));
        let expected = libm::hypot(noise, 0.29);
        let ratio = found.noise() / expected;
        assert!((ratio - 1.0).abs() < 0.12, "{noise} {ratio}");
    }
}

#[test]
fn scale_is_the_blades_length_with_its_tolerance() {
    let found = measured(marks(SIZE), SIZE, bar(1.0, 100.0));
    let scale = found.scale(Family::TenDepthFiveCuts);
    assert!((scale.pixels_per_mm - 0.9 * 420.0 / 28.0).abs() < 1e-9);
    // Seven parts in a hundred for the blade, and next to nothing for the marks.
    let share = scale.uncertainty / scale.pixels_per_mm;
    assert!((0.07..0.071).contains(&share), "{share}");
}

#[test]
fn plain_strip_has_no_usable_edge_and_leaks_nothing() {
    let found = measured(marks(SIZE), SIZE, |_, _| 128.0);
    assert!(found.caveats().contains(&Caveat::NoUsableEdge));
    assert_eq!(found.blur_px(), None);
    let choice = FamilyChoice::Known(Family::TenDepthFiveCuts);
    let judgement = found.judge(Family::TenDepthFiveCuts);
    assert_eq!(judgement.readable, Readable::CannotTell);
    let bits = found
        .range(choice, Observer::Person)
        .fewest
        .reading
        .bits_leaked;
    assert_eq!(bits.get(), 0.0);
}

#[test]
fn small_strip_is_not_measured_and_says_so() {
    let size = Size {
        width: 40,
        height: 30,
    };
    let found = measured(marks(size), size, |x, _| f64::from(x % 2) * 200.0);
    assert_eq!(found.caveats()[0], Caveat::TooSmall);
    assert_eq!(found.blur_px(), None);
    assert_eq!(of_any(&found, &Family::ALL).readable, Readable::CannotTell);
}

#[test]
fn sharper_larger_and_cleaner_pictures_are_more_readable() {
    let clean = bar(1.0, 100.0);
    let large = measured(marks(SIZE), SIZE, |x, y| clean(x, y) + grain(x, y, 2.0));
    let judgement = of_any(&large, &Family::ALL);
    assert_eq!(judgement.readable, Readable::Yes);
    assert!(judgement.is_sure);
    // Two pixels a millimetre, blurred over more than a millimetre, in much noise.
    let size = Size {
        width: 60,
        height: 60,
    };
    let small = measured(marks(size), size, |x, y| {
        let below = 0.5 * libm::erfc((f64::from(y) - 30.0) / 2.5 / 2.0_f64.sqrt());
        80.0 + 60.0 * below + grain(x, y, 12.0)
    });
    assert!(small.blur_px().is_some(), "{small:?}");
    let bits = |found: &Measurement| {
        let choice = FamilyChoice::Known(Family::TenDepthFiveCuts);
        let range = found.range(choice, Observer::Person);
        range.fewest.reading.bits_leaked.get()
    };
    assert!(bits(&small) < bits(&large) - 4.0);
}

/// Whatever the picture, a key of three pixels tells next to nothing, and one of nine only a part.
#[test]
fn keys_of_a_few_pixels_are_not_readable_however_clear() {
    let readable = |length: f64| {
        let (y, middle) = (150.0, 200.0);
        let (shoulder, tip) = (
            Point { x: middle, y },
            Point {
                x: middle + length,
                y,
            },
        );
        let marks = Marks::new(SIZE, shoulder, tip).unwrap();
        measured(marks, SIZE, bar(0.5, 180.0))
            .judge(Family::TenDepthFiveCuts)
            .readable
    };
    assert_eq!(readable(3.0), Readable::No);
    assert_eq!(readable(9.0), Readable::Partly);
    assert_eq!(readable(30.0), Readable::CannotTell);
}

fn of_any(found: &Measurement, families: &[Family]) -> Judgement {
    let judgements = families.iter().map(|&family| found.judge(family));
    judgements.reduce(Judgement::or).unwrap()
}

/// What is said of a bar so many pixels long, blurred by so much, in a little noise.
fn judged(length: f64, blur: f64) -> Judgement {
    let size = Size {
        width: (1.1 * length) as u32 + 2,
        height: (0.8 * length) as u32 + 2,
    };
    let (left, middle) = (0.05 * length, 0.5 * f64::from(size.height));
    let point = |x: f64| Point { x, y: middle };
    let marks = Marks::new(size, point(left), point(left + length)).unwrap();
    let below = |t: f64| 0.5 * libm::erfc(-t / blur / 2.0_f64.sqrt());
    let found = measured(marks, size, |x, y| {
        let away = f64::from(y) + 0.5 - middle;
        let bar = below(away + 0.14 * length) - below(away - 0.14 * length);
        90.0 + 80.0 * bar + grain(x, y, 5.0)
    });
    found.judge(Family::TenDepthFiveCuts)
}

/// From a key that fills the picture to one that is a speck in it. A band is sure only where nothing that
/// the measurement leaves open leads to another: of a strip too small to be measured, no more than that
/// next to nothing can be read.
#[test]
fn every_band_is_reached_and_is_sure_only_where_nothing_is_left_open() {
    let said = |readable, is_sure| Judgement { readable, is_sure };
    assert_eq!(judged(400.0, 1.0), said(Readable::Yes, true));
    assert_eq!(judged(126.0, 1.5), said(Readable::Yes, true));
    // Few edges can be measured where they are wide, or near each other.
    assert_eq!(judged(126.0, 4.0), said(Readable::Yes, false));
    assert_eq!(judged(60.0, 1.5), said(Readable::Yes, false));
    assert_eq!(judged(6.0, 1.0), said(Readable::Partly, false));
    assert_eq!(judged(3.0, 1.0), said(Readable::No, false));
    assert_eq!(judged(2.0, 1.0), said(Readable::No, true));
    assert_eq!(judged(25.0, 1.0), said(Readable::CannotTell, false));
    assert_eq!(judged(126.0, 12.0), said(Readable::CannotTell, false));
}

/// What may be off by more makes a band less sure, and never another one.
#[test]
fn key_of_no_known_kind_is_no_less_readable_and_no_more_sure() {
    for (length, blur) in [
        (200.0, 1.0),
        (60.0, 2.0),
        (5.0, 1.0),
        (3.0, 1.0),
        (2.0, 1.0),
    ] {
        let size = Size {
            width: 260,
            height: 160,
        };
        let point = |x: f64| Point { x, y: 80.0 };
        let marks = Marks::new(size, point(20.0), point(20.0 + length)).unwrap();
        let found = measured(marks, size, bar(blur, 90.0));
        let all = of_any(&found, &Family::ALL);
        for family in Family::ALL {
            let one = found.judge(family);
            assert!(one.readable <= all.readable, "{length} {one:?} {all:?}");
            let is_other = one.readable != all.readable;
            assert!(
                !(all.is_sure && (is_other || !one.is_sure)),
                "{length} {one:?} {all:?}"
            );
        }
    }
}

#[test]
fn marks_that_cannot_be_are_refused() {
    let point = |x, y| Point { x, y };
    let refused = |shoulder, tip| Marks::new(SIZE, shoulder, tip).unwrap_err();
    let inside = point(10.0, 10.0);
    assert_eq!(refused(inside, inside), MarkError::OnePoint);
    for outside in [
        point(-1.0, 5.0),
        point(421.0, 5.0),
        point(5.0, f64::INFINITY),
        point(f64::NAN, 5.0),
    ] {
        assert_eq!(refused(inside, outside), MarkError::Outside);
        assert_eq!(refused(outside, inside), MarkError::Outside);
    }
    let nothing = Size {
        width: 0,
        height: 9,
    };
    assert_eq!(
        Marks::new(nothing, inside, inside),
        Err(MarkError::EmptyPicture)
    );
}

#[test]
fn wrong_rows_are_refused_and_nothing_is_taken() {
    let mut measuring = Measuring::new(marks(SIZE), None);
    let wanted = measuring.next_rows();
    assert!(measuring.give_rows(&[0; 12]).is_err());
    assert_eq!(measuring.next_rows(), wanted);
}

#[test]
fn key_that_fills_a_huge_picture_is_measured_in_its_middle() {
    let size = Size {
        width: 8000,
        height: 6000,
    };
    let corner = |share: f64| Point {
        x: share * 8000.0,
        y: share * 6000.0,
    };
    let marks = Marks::new(size, corner(0.02), corner(0.98)).unwrap();
    let mut measuring = Measuring::new(marks, None);
    let mut pixels = 0_u64;
    while let Some(part) = measuring.next_rows() {
        let count = u64::from(part.width) * u64::from(part.height);
        pixels += count;
        measuring.give_rows(&vec![90; 4 * count as usize]).unwrap();
    }
    assert!(pixels < 12_000_000, "{pixels}");
}

#[test]
fn cover_holds_blade_and_bow_and_stays_in_the_picture() {
    let shoulder = Point { x: 200.0, y: 150.0 };
    let marks = Marks::new(SIZE, shoulder, Point { x: 300.0, y: 150.0 }).unwrap();
    let cover = marks.cover();
    // From 100 to 400 across and from 105 to 195 down; a rounding may take one pixel more.
    let ends = (cover.left + cover.width, cover.top + cover.height);
    assert!((99..=100).contains(&cover.left) && (104..=105).contains(&cover.top));
    assert!((400..=401).contains(&ends.0) && (195..=196).contains(&ends.1));
    // Marks taken for each other cover the same.
    let swapped = Marks::new(SIZE, Point { x: 300.0, y: 150.0 }, shoulder);
    assert_eq!(swapped.unwrap().cover(), cover);
    let corner = Point { x: 419.0, y: 299.0 };
    let cover = Marks::new(SIZE, corner, Point { x: 10.0, y: 290.0 })
        .unwrap()
        .cover();
    assert!(cover.left + cover.width <= 420 && cover.top + cover.height <= 300);
}

#[test]
fn blade_is_under_covers_that_hold_all_of_it() {
    let marks = marks(SIZE);
    let cover = |left, top, width, height| Rectangle {
        left,
        top,
        width,
        height,
    };
    // The blade takes up 21 to 399 across and 36.6 to 263.4 down at most.
    assert!(marks.blade_is_under(&[cover(21, 36, 378, 228)]));
    assert!(marks.blade_is_under(&[cover(0, 0, 210, 300), cover(210, 0, 210, 300)]));
    assert!(!marks.blade_is_under(&[]));
    assert!(!marks.blade_is_under(&[cover(0, 140, 420, 20)]));
    assert!(!marks.blade_is_under(&[cover(21, 36, 360, 228)]));
    assert!(!marks.blade_is_under(&[cover(0, 0, 200, 300), cover(220, 0, 200, 300)]));
    // Beyond the picture's edge there is nothing to cover.
    let edge = |x| Point { x, y: 0.0 };
    let at_the_edge = Marks::new(SIZE, edge(100.0), edge(200.0)).unwrap();
    assert!(at_the_edge.blade_is_under(&[cover(100, 0, 100, 30)]));
}

/// How far a blade's upper edge lies above its lower one, as a share of its length: six cuts, and a tip.
fn height_of_blade(along: f64, full: f64) -> f64 {
    let (cut, at) = ((6.0 * along) as usize, (6.0 * along).fract());
    let depth = [0.05, 0.12, 0.08, 0.14, 0.1, 0.06][cut.min(5)];
    let cut = depth * (1.0 - 3.0 * (at - 0.5).abs()).max(0.0);
    let tip = 2.0 * (along - 0.9).max(0.0);
    full - cut - tip
}

/// Against the light a blade is one plain black, and none the harder to read. Wherever marks lie on it, it
/// is not taken for a cover.
#[test]
fn cover_is_told_from_a_black_blade() {
    let marks = marks(SIZE);
    let length = marks.length_px();
    let found = |grey: &dyn Fn(f64, f64) -> f64| {
        let found = measured(marks, SIZE, |x, y| {
            let along = (f64::from(x) + 0.5 - 21.0) / length;
            let across = (f64::from(y) + 0.5 - 150.0) / length;
            grey(along, across)
        });
        let is_one_colour = found.caveats().contains(&Caveat::OneColour);
        let judged = found.judge(Family::ALL[0]);
        assert!(!is_one_colour || judged == Judgement::CANNOT_TELL);
        is_one_colour
    };
    for full in [0.25, 0.3, 0.35] {
        for mark in [0.0, 0.25, 0.5, 0.75, 1.0] {
            let lower = full * mark;
            let blade = |along: f64, across: f64| {
                let upper = lower - height_of_blade(along, full);
                let is_blade = (0.0..=1.0).contains(&along) && (upper..=lower).contains(&across);
                if is_blade { 0.0 } else { 255.0 }
            };
            assert!(!found(&blade), "{full} {mark}");
        }
    }
    let cover = |half: f64, loss: f64| {
        found(&|along: f64, across: f64| {
            let ground = 120.0 + 60.0 * libm::sin(40.0 * along) + 20.0 * across;
            let (x, y) = ((1e3 * along) as i32 as u32, (1e3 * across) as i32 as u32);
            if across.abs() <= half {
                20.0 + grain(x, y, loss).clamp(-3.0, 3.0)
            } else {
                ground
            }
        })
    };
    assert!(cover(0.45, 0.0) && cover(0.18, 0.0) && cover(0.18, 2.0));
    assert!(!cover(0.12, 0.0));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    #[test]
    fn strips_of_chance_give_finite_figures(
        width in 1_u32..160, height in 1_u32..160,
        ends in prop::array::uniform4(0.0_f64..=1.0),
        seed in any::<u32>(), kind in 0_u8..4, quantisation in prop::option::of(0.0_f64..200.0),
    ) {
        let size = Size { width, height };
        let point = |x: f64, y: f64| Point { x: x * f64::from(width), y: y * f64::from(height) };
        let [x1, y1, x2, y2] = ends;
        let Ok(marks) = Marks::new(size, point(x1, y1), point(x2, y2)) else { return Ok(()) };
        let mut measuring = Measuring::new(marks, quantisation);
        let mut state = seed | 1;
        while let Some(part) = measuring.next_rows() {
            let count = 4 * part.width as usize * part.height as usize;
            let colours: Vec<u8> = (0..count).map(|at| {
                state ^= state << 13;
                state ^= state >> 17;
                state ^= state << 5;
                match kind {
                    0 => state as u8,
                    1 => u8::MAX * u8::from(state & 64 != 0),
                    2 => (at / 7) as u8,
                    _ => 255,
                }
            }).collect();
            measuring.give_rows(&colours).unwrap();
        }
        let found = measuring.finish();
        prop_assert!(found.noise().is_finite() && found.noise() > 0.0);
        prop_assert!((0.0..=520.0).contains(&found.contrast()), "{}", found.contrast());
        prop_assert!(found.blur_px().is_none_or(|blur| blur.is_finite() && blur > 0.0));
        for choice in FamilyChoice::ALL {
            let range = found.range(choice, Observer::Person);
            let (fewest, most) = (range.fewest.reading, range.most.reading);
            prop_assert!(fewest.tries_even_chance <= most.tries_even_chance);
        }
        for face in LockFace::ALL {
            let judgement = of_any(&found, face.families());
            prop_assert!(judgement.readable != Readable::CannotTell || !judgement.is_sure);
        }
    }
}
