//! Optics and video surveillance: worked examples of handbooks and standards.
//!
//! Tolerances: the frame widths that stand for full frame are given to three digits (34.6, 36.0,
//! 37.7 mm), so distances and pixels agree to 1 part in 1000. Integrals are compared at 1e-6.

use self_check_core::assumptions::Assumption;
use self_check_core::key::Family;
use self_check_core::sight::{Camera, DepthInformation, FrameShape, PixelDensity, Scene, View};
use self_check_core::units::{Metres, Millimetres};

/// Diagonal of full frame, 36 mm by 24 mm.
const FULL_FRAME_DIAGONAL_MM: f64 = 43.266615;

fn millimetres(value: f64) -> Millimetres {
    Millimetres::new(value).unwrap()
}

/// Pixel pitch, focal length, distance and width of a pixel at the target, all in millimetres: a
/// target far compared with the focal length, straight on (Ground sample distance: d·p/f).
const GROUND_SAMPLES: [(f64, f64, f64, f64); 5] = [
    (1.0e-3, 5.6, 1_000.0, 0.178571),
    (1.0e-3, 5.6, 300.0, 0.053571),
    (0.8e-3, 6.0, 3_000.0, 0.4),
    (4.0e-3, 200.0, 20_000.0, 0.4),
    (4.0e-3, 400.0, 60_000.0, 0.6),
];

#[test]
fn ground_sample_distance_agrees_with_worked_examples_in_every_frame_shape() {
    for (pitch, focal, distance, expected) in GROUND_SAMPLES {
        for (frame, wide, high) in [
            (FrameShape::FourToThree, 4.0_f64, 3.0_f64),
            (FrameShape::ThreeToTwo, 3.0, 2.0),
            (FrameShape::SixteenToNine, 16.0, 9.0),
        ] {
            let pixels_across = 4000;
            let diagonal = pitch * f64::from(pixels_across) * (1.0 + (high / wide).powi(2)).sqrt();
            let camera = Camera {
                equivalent_focal_length: millimetres(focal * FULL_FRAME_DIAGONAL_MM / diagonal),
                pixels_across,
                frame,
                ..*Scene::LongLens.camera()
            };
            let found = camera.view(Metres::new(distance / 1000.0).unwrap());
            let found = found.ground_sample.get();
            assert!(
                (found / expected - 1.0).abs() < 1e-3,
                "{frame:?} {found} {expected}"
            );
        }
    }
}

/// A lens of 26 mm equivalent on a sensor of 7.6 mm by 5.7 mm has 5.7088 mm.
#[test]
fn equivalent_focal_length_goes_by_the_diagonal() {
    let diagonal = 7.6_f64.hypot(5.7);
    assert!((26.0 * diagonal / FULL_FRAME_DIAGONAL_MM - 5.7088).abs() < 1e-4);
    // Straight from the sensor: 4032 pixels on 7.6 mm.
    let from_sensor = 1000.0 * (7.6 / 4032.0) / 5.7088;
    let camera = Scene::PhoneAtNextTable.camera();
    let found = camera.view(Metres::new(1.0).unwrap()).ground_sample.get();
    assert!(
        (found / from_sensor - 1.0).abs() < 1e-3,
        "{found} {from_sensor}"
    );
}

#[test]
fn pixel_densities_are_those_of_the_surveillance_standard() {
    let densities = PixelDensity::ALL.map(PixelDensity::pixels_per_metre);
    assert_eq!(densities, [25.0, 62.5, 125.0, 250.0]);
    assert_eq!(PixelDensity::Recognise.ground_sample().get(), 8.0);
    let camera = Scene::SurveillanceCamera.camera();
    for density in PixelDensity::ALL {
        let distance = camera.distance_of(density.ground_sample());
        let found = camera.view(distance).ground_sample.get();
        assert!((found / density.ground_sample().get() - 1.0).abs() < 1e-12);
    }
}

/// The first dark ring of a round opening lies at 1.2196698912665 λ/D (first zero of the Bessel
/// function J1, over π). The brightness inside it, (2·J1(v)/v)², is nearest to a Gaussian of
/// standard deviation 0.42 λ/D: least squares over the radius, found here by trying.
#[test]
fn diffraction_spot_is_nearest_to_the_gaussian_assumed() {
    let brightness = |v: f64| {
        if v == 0.0 {
            1.0
        } else {
            (2.0 * libm::j1(v) / v).powi(2)
        }
    };
    let zero = std::f64::consts::PI * 1.2196698912665;
    assert!(libm::j1(zero).abs() < 1e-12);
    let misfit = |sigma: f64| -> f64 {
        (0..4000)
            .map(|k| f64::from(k) * 0.0025 * std::f64::consts::PI / 10.0)
            .map(|v| {
                let radius = v / std::f64::consts::PI;
                let gaussian = (-0.5 * (radius / sigma).powi(2)).exp();
                (brightness(v) - gaussian).powi(2)
            })
            .sum()
    };
    let best = (300..600)
        .map(|k| f64::from(k) / 1000.0)
        .min_by(|a, b| misfit(*a).total_cmp(&misfit(*b)))
        .unwrap();
    assert!(
        (best - Assumption::DiffractionSpot.value()).abs() < 0.01,
        "{best}"
    );
}

/// Rayleigh radii at the key for four openings, worked with 1.2196698912665 λ/D at 550 nm; the
/// blur the model uses for diffraction alone is the same fraction of each.
#[test]
fn diffraction_blur_is_a_fixed_share_of_the_rayleigh_radius() {
    for (aperture, distance, rayleigh) in [
        (3.0, 0.5, 0.111803),
        (3.0, 3.0, 0.670818),
        (50.0, 30.0, 0.402491),
        (127.0, 60.0, 0.316922),
    ] {
        let camera = Camera {
            aperture: millimetres(aperture),
            // So many pixels that the lens's own blur vanishes.
            pixels_across: 4_000_000_000,
            smear: millimetres(0.0),
            ..*Scene::LongLens.camera()
        };
        let blur = camera.view(Metres::new(distance).unwrap()).blur.get();
        let share = Assumption::DiffractionSpot.value() / 1.2196698912665;
        assert!((blur / (share * rayleigh) - 1.0).abs() < 1e-5, "{blur}");
    }
}

/// A. Gatherer, "The Cramer Rao Bound for Discrete-Time Edge Position", 1993, for a Gaussian step:
/// a row of pixels places an edge no better than 1.8827925276·(n/A)·√s pixels, s the blur and n/A
/// the noise over the step. Moving all cuts together moves a whole edge: its rows are the length
/// over which the footprints add to 1, their flanks at either end counting for a third.
#[test]
fn information_of_a_whole_edge_is_the_published_bound_over_its_rows() {
    for family in Family::ALL {
        let geometry = family.geometry();
        let view = View {
            ground_sample: millimetres(0.05),
            blur: millimetres(0.06),
            contrast_to_noise: 50.0,
        };
        let information = DepthInformation::of(geometry, &view).unwrap();
        let cuts = usize::from(geometry.cuts);
        let total: f64 = (0..cuts * cuts)
            .map(|pair| information.entry(pair / cuts, pair % cuts))
            .sum();
        let flank = geometry.pitch.get() - geometry.flat.get();
        let between = (cuts - 1) as f64 * geometry.pitch.get();
        let length = between + geometry.flat.get() + 2.0 * flank / 3.0;
        let pixel = view.ground_sample.get();
        let rows = length / pixel;
        let blur_pixels = view.blur.get() / pixel;
        let bound = 1.8827925276 / view.contrast_to_noise * blur_pixels.sqrt() / rows.sqrt();
        let found = 1.0 / (total.sqrt() * pixel);
        assert!(
            (found / bound - 1.0).abs() < 1e-3,
            "{family:?} {found} {bound}"
        );
    }
}

/// Johnson's 6.4 line pairs across a target, two pixels each.
#[test]
fn published_legibility_is_that_of_identification() {
    assert_eq!(Assumption::Identification.value(), 2.0 * 6.4);
}
