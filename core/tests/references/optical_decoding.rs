//! B. Laxton, K. Wang, S. Savage, "Reconsidering Physical Key Secrecy: Teleduplication via Optical
//! Decoding", ACM CCS 2008: keys on a table photographed from a roof 59.4 m away. As quoted by
//! secondary pages, about 80 in 100 worked at the first try and all within three.
//!
//! The quoted figures are rounded ("about", "80 % accurate" in one wording) and the number of keys
//! is not known, so the tolerance is a rounding to the nearest ten in a hundred: 0.75 to 0.85 for
//! the first try, and above 0.95 within three. The paper's smallest difference between depths,
//! about 0.3 mm, is read in the source itself.

use self_check_core::key::Family;
use self_check_core::reading::{Reading, StepOverSigma};
use self_check_core::sight::{Observer, PixelDensity, Scene};
use self_check_core::units::Metres;

#[test]
fn readings_with_four_steps_to_the_error_succeed_as_often_as_published() {
    let ratio = StepOverSigma::new(4.0).unwrap();
    let reading = Reading::of(Family::TenDepthFiveCuts, ratio);
    let first = reading.first_guess.get();
    assert!((0.75..0.85).contains(&first), "{first}");
    assert!(reading.within_three.get() > 0.95);
    assert_eq!(reading.tries_even_chance.get(), 1.0);
}

#[test]
fn the_smallest_published_step_is_near_the_smallest_of_the_families() {
    let smallest = Family::ALL
        .map(|family| family.geometry().step.get())
        .into_iter()
        .fold(f64::INFINITY, f64::min);
    assert!((smallest - 0.3).abs() < 0.1);
}

/// The published distance, with the long lens of the scene. Found, not fitted: the scene's figures
/// are assumptions made beforehand, and only the words "most" and "all" are compared.
#[test]
fn long_lens_from_a_roof_reads_most_at_the_first_try_and_nearly_all_within_three() {
    let roof = Metres::new(59.4).unwrap();
    let found = Scene::LongLens.reading(roof, Family::TenDepthFiveCuts, Observer::Person);
    assert!(found.reading.first_guess.get() > 0.5);
    assert!(found.reading.within_three.get() > 0.95);
}

#[test]
fn long_lens_at_sixty_metres_leaves_fewer_than_ten_keys() {
    let camera = Scene::LongLens.camera();
    assert_eq!(camera.equivalent_focal_length.get(), 1200.0);
    assert_eq!(camera.aperture.get(), 50.0);
    let distance = Metres::new(60.0).unwrap();
    for observer in Observer::ALL {
        let found = Scene::LongLens.reading(distance, Family::TenDepthFiveCuts, observer);
        assert!(found.reading.keys_left.get() < 10.0);
        assert!(found.reading.tries_even_chance.get() < 10.0);
    }
}

#[test]
fn phone_reads_a_key_at_one_metre_and_leaves_more_than_half_at_twenty() {
    let family = Family::TenDepthFiveCuts;
    let camera = Scene::PhoneAtNextTable.camera();
    assert_eq!(camera.equivalent_focal_length.get(), 26.0);
    assert_eq!(camera.pixels_across, 4032);
    let left = |metres, observer| {
        let distance = Metres::new(metres).unwrap();
        let found = Scene::PhoneAtNextTable.reading(distance, family, observer);
        found.reading.keys_left.get() / family.keys().get()
    };
    assert!(left(1.0, Observer::Person) * family.keys().get() < 10.0);
    assert!(left(1.0, Observer::Software) * family.keys().get() < 10.0);
    assert!(left(20.0, Observer::Person) > 0.5);
    // Software that marks edges twice as well as a person gets below the half, not by much.
    assert!((0.4..0.5).contains(&left(20.0, Observer::Software)));
}

/// A camera planned to identify people, 4 mm a pixel, with a contrast of 10 over noise does not
/// resolve a depth step.
#[test]
fn camera_planned_to_identify_people_leaves_more_than_ten_thousand_keys() {
    let camera = Scene::SurveillanceCamera.camera();
    assert_eq!(camera.contrast_to_noise, 10.0);
    assert_eq!(camera.frames, 1);
    let distance = camera.distance_of(PixelDensity::Identify.ground_sample());
    let view = camera.view(distance);
    assert!((view.ground_sample.get() - 4.0).abs() < 1e-12);
    for observer in Observer::ALL {
        let found = view.reading(Family::TenDepthFiveCuts, observer);
        assert!(
            found.reading.keys_left.get() > 10_000.0,
            "{:?}",
            found.reading
        );
    }
}
