#![allow(clippy::unwrap_used)]

use super::*;
use crate::distribution::{normal_below, normal_density};
use crate::sight::Scene;
use crate::units::{Metres, Millimetres};

fn view(pixel: f64, blur: f64, contrast_to_noise: f64) -> View {
    View {
        ground_sample: Millimetres::new(pixel).unwrap(),
        blur: Millimetres::new(blur).unwrap(),
        contrast_to_noise,
    }
}

fn mean(shades: &[u8]) -> f64 {
    shades.iter().map(|&shade| f64::from(shade)).sum::<f64>() / shades.len() as f64
}

#[test]
fn pictures_are_the_same_at_every_call_and_differ_between_patterns() {
    let view = view(0.4, 0.3, 20.0);
    for (index, pattern) in DemonstrationPattern::ALL.iter().enumerate() {
        let picture = pattern.picture(&view);
        assert_eq!(picture, pattern.picture(&view));
        let others = DemonstrationPattern::ALL.iter().skip(index + 1);
        assert!(
            others
                .into_iter()
                .all(|other| other.picture(&view) != picture)
        );
    }
}

#[test]
fn pixels_are_those_of_the_camera() {
    for pixel in [0.3, 1.0, 4.0] {
        let picture = DemonstrationPattern::DEMONSTRATION.picture(&view(pixel, 0.7 * pixel, 20.0));
        let across = Picture::WIDTH_AT_KEY.get() / pixel;
        assert_eq!(picture.width, across.ceil() as usize);
        assert!(picture.width > picture.height);
    }
    let near = DemonstrationPattern::DEMONSTRATION.picture(&view(0.001, 0.001, 20.0));
    assert_eq!(near.width, 320);
}

/// Far from any edge only noise is left: its spread over the step is the contrast to noise.
#[test]
fn noise_has_the_spread_of_the_view() {
    let picture = DemonstrationPattern::DEMONSTRATION.picture(&view(0.3, 0.3, 10.0));
    let corner: Vec<u8> = (0..9)
        .flat_map(|row| {
            picture.shades[row * picture.width + 100..row * picture.width + 190].to_vec()
        })
        .collect();
    let middle = mean(&corner);
    assert!((middle - 70.0).abs() < 1.5, "{middle}");
    let squares: f64 = corner
        .iter()
        .map(|&s| (f64::from(s) - middle).powi(2))
        .sum();
    let spread = (squares / corner.len() as f64).sqrt();
    // 810 pixels: the spread is known to one part in forty; rounding to whole shades adds little.
    assert!((spread - 12.0).abs() < 1.2, "{spread}");
}

/// An edge along the back of the blade, free of cuts, rises from a tenth to nine tenths over 2.5631
/// standard deviations of the blur.
#[test]
fn edges_are_as_blurred_as_the_view_says() {
    let (pixel, blur) = (0.2, 1.0);
    let picture = DemonstrationPattern::OTHER.picture(&view(pixel, blur, 100.0));
    // Columns along the first half of the blade, averaged: the back is the lower edge there.
    let rows: Vec<f64> = (0..picture.height)
        .map(|y| {
            let row = y * picture.width;
            let columns = 30.0 / pixel..50.0 / pixel;
            mean(&picture.shades[row + columns.start as usize..row + columns.end as usize])
        })
        .collect();
    let half = rows.len() / 2;
    let crossing = |level: f64| {
        let below = (half..rows.len()).find(|&y| rows[y] < level).unwrap();
        let part = (rows[below - 1] - level) / (rows[below - 1] - rows[below]);
        (below as f64 - 1.0 + part) * pixel
    };
    let rise = crossing(70.0 + 12.0) - crossing(70.0 + 108.0);
    let expected = 2.563_103 * blur;
    assert!((rise / expected - 1.0).abs() < 0.05, "{rise} {expected}");
}

/// The picture without noise beside a sum over small squares of the plane.
#[test]
fn shades_equal_summation_over_the_plane() {
    let pattern = DemonstrationPattern::DEMONSTRATION;
    let field = outline::FIELD;
    let metal_at = |x: f64, y: f64| {
        let inside = |(top, bottom): (f64, f64)| top < y && y < bottom;
        pattern
            .column(x)
            .is_some_and(|column| inside(column.metal) && !column.hole.is_some_and(inside))
    };
    for (pixel, blur) in [(0.5, 0.4), (2.0, 1.5), (6.0, 5.0)] {
        let picture = pattern.picture(&view(pixel, blur, f64::INFINITY));
        for (x, y) in [
            (-18.3, 4.0),
            (-5.0, -1.0),
            (6.0, 1.5),
            (10.0, 2.7),
            (22.0, 2.0),
            (28.0, 6.0),
        ] {
            let (across, down) = (
                ((x - field.left) / pixel) as usize,
                ((y - field.top) / pixel) as usize,
            );
            let centre = |begin: f64, index: usize| begin + (index as f64 + 0.5) * pixel;
            let (x, y) = (centre(field.left, across), centre(field.top, down));
            let square = blur / 20.0;
            let offsets = || (-100..100).map(|k| (f64::from(k) + 0.5) * square);
            let weight = |offset: f64| normal_density(offset / blur) * square / blur;
            let metal: f64 = offsets()
                .map(|dx| {
                    let down = offsets().filter(|dy| metal_at(x + dx, y + dy));
                    weight(dx) * down.map(weight).sum::<f64>()
                })
                .sum();
            let found = f64::from(picture.shades[down * picture.width + across]);
            let expected = 70.0 + 120.0 * metal;
            // Rounding to whole shades is half of one; lines half a blur apart, the rest.
            assert!(
                (found - expected).abs() < 1.5,
                "{pixel} {x} {y}: {found} {expected}"
            );
        }
    }
}

/// A near picture has fewer pixels than the camera: each is the mean of those it stands for. So its
/// noise is as much smaller as its pixels are wider, by the square root of their number.
#[test]
fn near_pictures_average_the_noise_of_the_pixels_they_stand_for() {
    let sample = Picture::WIDTH_AT_KEY.get() / 320.0 / 4.0;
    let picture = DemonstrationPattern::DEMONSTRATION.picture(&view(sample, sample, 2.0));
    assert_eq!(picture.width, 320);
    let corner: Vec<f64> = (0..9)
        .flat_map(|row| &picture.shades[row * 320 + 130..row * 320 + 290])
        .map(|&shade| f64::from(shade))
        .collect();
    let middle = corner.iter().sum::<f64>() / corner.len() as f64;
    let squares: f64 = corner.iter().map(|shade| (shade - middle).powi(2)).sum();
    let spread = (squares / corner.len() as f64).sqrt();
    // 1440 pixels: the spread is known to one part in fifty.
    let expected = 120.0 / 2.0 / 4.0;
    assert!(
        (spread / expected - 1.0).abs() < 0.06,
        "{spread} {expected}"
    );
}

/// The same pictures without noise: every pixel along the back of the blade is the mean of the
/// blurred edge over the pixel's whole height.
#[test]
fn near_pictures_are_as_blurred_as_their_wider_pixels_make_them() {
    let pattern = DemonstrationPattern::DEMONSTRATION;
    let field = outline::FIELD;
    let pixel = field.width / 320.0;
    let blur = 0.42 * pixel;
    let picture = pattern.picture(&view(pixel / 10.0, blur, f64::INFINITY));
    let mut on_the_edge = 0;
    for x in 150..250 {
        let place = field.left + (x as f64 + 0.5) * pixel;
        let (_, back) = pattern.column(place).unwrap().metal;
        for y in 0..picture.height {
            let start = field.top + y as f64 * pixel;
            if (start + 0.5 * pixel - back).abs() > 3.0 * pixel {
                continue;
            }
            let inside: f64 = (0..200)
                .map(|part| start + (f64::from(part) + 0.5) * pixel / 200.0)
                .map(|y| normal_below((back - y) / blur) / 200.0)
                .sum();
            let found = f64::from(picture.shades[y * picture.width + x]);
            let expected = 70.0 + 120.0 * inside;
            // Rounding is half a shade; taking a square pixel for a Gaussian another half.
            assert!(
                (found - expected).abs() < 1.2,
                "{x} {y}: {found} {expected}"
            );
            on_the_edge += usize::from((found - 130.0).abs() < 50.0);
        }
    }
    assert!(on_the_edge >= 100);
}

#[test]
fn blur_keeps_the_amount_of_metal() {
    let sharp = DemonstrationPattern::DEMONSTRATION.picture(&view(0.3, 0.2, 1e9));
    let soft = DemonstrationPattern::DEMONSTRATION.picture(&view(0.3, 0.8, 1e9));
    assert!((mean(&sharp.shades) - mean(&soft.shades)).abs() < 0.5);
}

#[test]
fn any_view_gives_a_picture() {
    for pixel in [0.0, 1e-300, 0.1, 10.0, 1e300] {
        for blur in [0.0, 1e-300, 0.1, 10.0, 1e300] {
            for contrast in [f64::NAN, -1.0, 0.0, 1e-300, 1.0, f64::INFINITY] {
                let picture = DemonstrationPattern::EUROPEAN.picture(&view(pixel, blur, contrast));
                assert!(!picture.shades.is_empty());
                assert_eq!(picture.shades.len(), picture.width * picture.height);
            }
        }
    }
    let far = Metres::new(f64::MAX).unwrap();
    let picture = DemonstrationPattern::EUROPEAN.picture(&Scene::LongLens.camera().view(far));
    assert_eq!((picture.width, picture.height), (1, 1));
}

#[test]
fn every_pattern_keeps_its_familys_rules() {
    for pattern in DemonstrationPattern::ALL {
        let geometry = pattern.geometry();
        let depths = pattern.depths();
        assert_eq!(depths.len(), usize::from(geometry.cuts));
        assert!(depths.iter().all(|&depth| depth < geometry.depths));
        let steps = depths.windows(2).map(|pair| pair[0].abs_diff(pair[1]));
        assert!(steps.max().unwrap() <= geometry.max_step);
    }
}

#[test]
fn hidden_cut_lies_between_two_deep_neighbours() {
    let hidden: Vec<u8> = DemonstrationPattern::HIDDEN_CUT.hidden().collect();
    assert_eq!(hidden, [3]);
    assert_eq!(DemonstrationPattern::DEMONSTRATION.hidden().count(), 0);
}
