//! The model of sight against simulated observers: keys of an invented family are drawn, blurred,
//! sampled and made noisy in two dimensions, and read by maximum likelihood or by full inference over
//! every key of the family. Nothing of the model is used but its results.
#![allow(clippy::unwrap_used)]

#[path = "simulated_observer/chance.rs"]
mod chance;
#[path = "simulated_observer/drawing.rs"]
mod drawing;
#[path = "simulated_observer/inference.rs"]
mod inference;

use chance::Chance;
use drawing::{Drawing, Flanks};
use self_check_core::key::Geometry;
use self_check_core::sight::{DepthInformation, View};
use self_check_core::sources::EVERYDAY_SCENES;
use self_check_core::units::{Millimetres, Probability};

fn millimetres(value: f64) -> Millimetres {
    Millimetres::new(value).unwrap()
}

/// Four cuts of four depths, unlike any family of the check.
fn invented() -> Geometry {
    Geometry {
        cuts: 4,
        depths: 4,
        step: millimetres(0.45),
        first_cut: millimetres(5.0),
        pitch: millimetres(4.3),
        flat: millimetres(1.1),
        max_step: 3,
        source: &EVERYDAY_SCENES,
        blade_length: millimetres(27.0),
        blade_length_tolerance: Probability::new(0.1).unwrap(),
        blade_source: &EVERYDAY_SCENES,
    }
}

/// Pixel, blur of lens and light, and contrast: from crisp to a blur near the pitch.
const PICTURES: [(f64, f64, f64); 4] = [
    (0.3, 0.25, 10.0),
    (0.5, 0.6, 8.0),
    (0.8, 1.3, 20.0),
    (1.0, 2.6, 40.0),
];

/// The blur of the model includes the pixel's own width.
fn view(pixel: f64, lens_blur: f64, contrast_to_noise: f64) -> View {
    View {
        ground_sample: millimetres(pixel),
        blur: millimetres((lens_blur * lens_blur + pixel * pixel / 12.0).sqrt()),
        contrast_to_noise,
    }
}

/// Errors of maximum likelihood estimates, weighed by the information that the model states, have
/// mean square 1 if the model is right. For n cuts and N runs that mean has the standard error
/// √(2/(n·N)), 0.025 here. Slopes of the invented keys tilt the edge, which the model leaves out: by
/// trials it is within 4 parts in 100. That and two standard errors make 9 parts in 100.
#[test]
fn scatter_of_maximum_likelihood_readings_is_that_of_the_information() {
    let geometry = invented();
    let cuts = usize::from(geometry.cuts);
    let mut chance = Chance::new(11);
    for (pixel, lens_blur, contrast) in PICTURES {
        let drawing = Drawing::new(&geometry, Flanks::Straight, pixel, lens_blur, contrast);
        let information = DepthInformation::of(&geometry, &view(pixel, lens_blur, contrast));
        let information = information.unwrap();
        let mut sum = 0.0;
        let (keys, runs) = (8, 100);
        for _ in 0..keys {
            let key: Vec<f64> = (0..cuts)
                .map(|_| chance.below(usize::from(geometry.depths)) as f64 * geometry.step.get())
                .collect();
            for _ in 0..runs {
                let picture = chance.with_noise(&drawing.picture(&key));
                let found = drawing.maximum_likelihood(&picture, cuts).unwrap();
                let error: Vec<f64> = found.iter().zip(&key).map(|(a, b)| a - b).collect();
                for i in 0..cuts {
                    for j in 0..cuts {
                        sum += error[i] * information.entry(i, j) * error[j];
                    }
                }
            }
        }
        let mean = sum / f64::from(keys * runs) / cuts as f64;
        assert!(
            (mean - 1.0).abs() < 0.09,
            "pixel {pixel} blur {lens_blur}: {mean}"
        );
    }
}
