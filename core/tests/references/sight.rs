//! From scenes to the error of a reading, in 40 digits: `tests/data/sight.csv`, written by
//! `tests/data/sight.py` with mpmath (adaptive quadrature of the overlaps, eigenvalues of the whole
//! matrix). The columns are printed to 15 digits.
//!
//! Tolerances: pixel and blur are a few multiplications, 1e-12. Overlaps of blurs below a eightieth
//! of the pitch are taken at that blur, off by a thousandth at most; no row is that sharp, but the
//! tail of blurred footprints is cut off at 6.5 standard deviations, 1e-10. Eigenvalues that share
//! nearly all information lose digits to it: 1e-7 for the precision and the error.

use self_check_core::key::Family;
use self_check_core::sight::{Camera, DepthInformation, FrameShape, Observer};
use self_check_core::units::{Metres, Millimetres};

#[test]
fn every_row_agrees_in_pixel_blur_precision_and_error() {
    let mut rows = 0;
    for line in include_str!("../data/sight.csv").lines().skip(1) {
        let (id, figures) = line.split_once(',').unwrap();
        let (observer, figures): (Vec<&str>, Vec<&str>) = figures
            .split(',')
            .partition(|text| text.starts_with(char::is_alphabetic));
        let observer = match observer.as_slice() {
            ["person"] => Observer::Person,
            ["software"] => Observer::Software,
            _ => panic!("{line}"),
        };
        let figures: Vec<f64> = figures.iter().map(|text| text.parse().unwrap()).collect();
        let [
            focal,
            frame,
            pixels,
            aperture,
            contrast,
            smear,
            frames,
            distance,
            expected @ ..,
        ] = figures.as_slice()
        else {
            panic!("{line}");
        };
        let family = Family::from_id(id).unwrap();
        let frame = [
            FrameShape::FourToThree,
            FrameShape::ThreeToTwo,
            FrameShape::SixteenToNine,
        ]
        .into_iter()
        .find(|shape| shape.width_on_full_frame().get() == *frame)
        .unwrap();
        let camera = Camera {
            equivalent_focal_length: Millimetres::new(*focal).unwrap(),
            pixels_across: *pixels as u32,
            frame,
            aperture: Millimetres::new(*aperture).unwrap(),
            contrast_to_noise: *contrast,
            smear: Millimetres::new(*smear).unwrap(),
            frames: *frames as u32,
        };
        let view = camera.view(Metres::new(distance / 1000.0).unwrap());
        let geometry = family.geometry();
        let information = DepthInformation::of(geometry, &view).unwrap();
        let precision = information.precision();
        let sigma = view.reading(family, observer).sigma.unwrap().get();
        let found = [view.ground_sample.get(), view.blur.get(), precision, sigma];
        assert_eq!(expected.len(), found.len());
        let tolerances = [1e-12, 1e-12, 1e-7, 1e-7];
        for ((found, expected), tolerance) in found.iter().zip(expected).zip(tolerances) {
            assert!(
                (found / expected - 1.0).abs() < tolerance,
                "{line}: {found} {expected}"
            );
        }
        rows += 1;
    }
    assert_eq!(rows, 5 * 10 * 2);
}
