#![allow(clippy::unwrap_used)]

use super::*;
use proptest::prelude::*;

fn metres(value: f64) -> Metres {
    Metres::new(value).unwrap()
}

#[test]
fn scene_id_round_trips_and_figures_are_complete() {
    for scene in Scene::ALL {
        assert_eq!(Scene::from_id(scene.id()), Some(scene));
        for (property, figure) in scene.figures() {
            assert!(figure.value > 0.0, "{scene:?} {property:?}");
            assert!(!figure.source.title.is_empty());
        }
    }
    assert_eq!(Scene::from_id("telescope"), None);
}

#[test]
fn range_holds_every_family_and_observer() {
    for scene in Scene::ALL {
        let range = scene.range(scene.usual_distance(), FamilyChoice::NotSure);
        for family in Family::ALL {
            for observer in Observer::ALL {
                let tries = scene
                    .reading(scene.usual_distance(), family, observer)
                    .reading
                    .tries_even_chance;
                assert!(range.fewest.reading.tries_even_chance <= tries);
                assert!(range.most.reading.tries_even_chance >= tries);
            }
        }
        let known = scene.range(scene.usual_distance(), FamilyChoice::Known(Family::ALL[0]));
        assert!(known.fewest.sigma <= known.most.sigma);
    }
}

#[test]
fn software_reads_at_least_as_well_as_a_person() {
    for scene in Scene::ALL {
        for distance in [0.3, 1.0, 5.0, 30.0] {
            let by = |observer| scene.reading(metres(distance), Family::ALL[0], observer);
            let (person, software) = (by(Observer::Person), by(Observer::Software));
            assert!(software.reading.bits_leaked >= person.reading.bits_leaked);
        }
    }
}

#[test]
fn far_away_nothing_leaks_smoothly() {
    for scene in Scene::ALL {
        let mut before = f64::INFINITY;
        for power in 0..60 {
            let distance = metres(libm::pow(10.0, f64::from(power) / 4.0));
            let found = scene.reading(distance, Family::TenDepthSixCuts, Observer::Software);
            let bits = found.reading.bits_leaked.get();
            assert!(
                bits.is_finite() && bits >= 0.0 && bits <= before,
                "{scene:?} {distance:?}"
            );
            before = bits;
        }
        assert!(before < 1e-9);
        let nowhere = scene.reading(metres(f64::MAX), Family::TenDepthSixCuts, Observer::Person);
        assert!(nowhere.reading.bits_leaked.get() < 1e-9);
    }
}

#[test]
fn cameras_that_show_nothing_leak_nothing() {
    let camera = *Scene::LongLens.camera();
    let zero = Millimetres::new(0.0).unwrap();
    for useless in [
        Camera {
            pixels_across: 0,
            ..camera
        },
        Camera {
            equivalent_focal_length: zero,
            ..camera
        },
        Camera {
            aperture: zero,
            ..camera
        },
        Camera {
            contrast_to_noise: 0.0,
            ..camera
        },
        Camera {
            contrast_to_noise: f64::NAN,
            ..camera
        },
        Camera {
            contrast_to_noise: -3.0,
            ..camera
        },
        Camera {
            frames: 0,
            ..camera
        },
        Camera {
            smear: Millimetres::LARGEST,
            ..camera
        },
    ] {
        for family in Family::ALL {
            let found = useless.view(metres(1.0)).reading(family, Observer::Person);
            assert_eq!(found.reading, Reading::nothing(family), "{useless:?}");
        }
    }
}

/// As of a camera, so of a view put together by hand.
#[test]
fn views_without_a_contrast_leak_nothing() {
    let view = Scene::PhoneAtNextTable.camera().view(metres(0.5));
    let seen = view.reading(Family::ALL[0], Observer::Person).reading;
    assert!(seen.bits_leaked.get() > 10.0);
    for contrast_to_noise in [f64::NAN, -f64::NAN, -3.0, f64::NEG_INFINITY, -0.0, 0.0] {
        let blank = View {
            contrast_to_noise,
            ..view
        };
        for family in Family::ALL {
            let found = blank.reading(family, Observer::Software);
            assert_eq!(found.reading, Reading::nothing(family), "{blank:?}");
            assert_eq!(found.sigma, None);
        }
    }
    let endless = View {
        contrast_to_noise: f64::INFINITY,
        ..view
    };
    let capped = View {
        contrast_to_noise: 100.0,
        ..view
    };
    for family in Family::ALL {
        let by = |view: View| view.reading(family, Observer::Software).reading;
        assert_eq!(by(endless), by(capped));
    }
}

#[test]
fn codes_are_legible_nearer_by_every_stricter_figure() {
    for scene in Scene::ALL {
        let found = scene.legibility();
        assert!(found.could_be_read > found.easily_read || found.could_be_read == Metres::ZERO);
        assert!(found.easily_read > found.published || found.easily_read == Metres::ZERO);
    }
    let still = Camera {
        smear: Millimetres::new(100.0).unwrap(),
        ..*Scene::LongLens.camera()
    };
    assert_eq!(still.legibility().could_be_read, Metres::ZERO);
}

/// At the distance found, the blur leaves exactly the wanted number of pixels.
#[test]
fn codes_have_the_wanted_pixels_at_their_distance() {
    for scene in Scene::ALL {
        let distance = scene.legibility().could_be_read;
        if distance.get() < 0.06 {
            continue;
        }
        let view = scene.camera().view(distance);
        let effective =
            (view.blur.get() / Assumption::LensBlur.value()).max(view.ground_sample.get());
        let pixels = Assumption::CharacterHeight.value() / effective;
        assert!((pixels - 5.0).abs() < 1e-9, "{scene:?} {pixels}");
    }
}

#[test]
fn two_frames_add_precision() {
    let view = |frames| {
        let camera = Camera {
            frames,
            ..*Scene::PhoneAcrossRoom.camera()
        };
        camera.view(metres(4.0))
    };
    let told = |frames| DepthInformation::of_family(Family::ALL[0], &view(frames)).entry(0, 0);
    assert!((told(2) / told(1) - 2.0).abs() < 1e-12);
    assert_eq!(view(1_000_000).contrast_to_noise, 100.0);
}

#[test]
fn distances_nearer_than_lenses_focus_count_as_five_centimetres() {
    for scene in Scene::ALL {
        let camera = scene.camera();
        let nearest = camera.view(metres(0.05));
        for nearer in [0.0, 0.001, 0.049] {
            assert_eq!(camera.view(metres(nearer)), nearest);
        }
        assert!(camera.view(metres(0.051)).ground_sample > nearest.ground_sample);
    }
}

/// Without contrast there is nothing to read, on the bow as little as on the blade.
#[test]
fn codes_without_a_contrast_are_not_legible() {
    let camera = *Scene::LongLens.camera();
    assert!(camera.legibility().could_be_read.get() > 50.0);
    let none = Legibility {
        could_be_read: Metres::ZERO,
        easily_read: Metres::ZERO,
        published: Metres::ZERO,
    };
    for contrast_to_noise in [0.0, -0.0, -3.0, f64::NAN, f64::NEG_INFINITY] {
        let blank = Camera {
            contrast_to_noise,
            ..camera
        };
        assert_eq!(blank.legibility(), none, "{contrast_to_noise}");
    }
    let never = Camera {
        frames: 0,
        ..camera
    };
    assert_eq!(never.legibility(), none);
}

/// The distance at which an observer needs a hundred tries for an even chance, with the blur of the
/// lens and the observer's floor multiplied.
fn distance_of_a_hundred_tries(scene: Scene, by: Observer, lens: f64, floor: f64) -> f64 {
    let family = Family::TenDepthFiveCuts;
    let tries = |distance: f64| {
        let view = scene.camera().view(metres(distance));
        let pixel = view.ground_sample.get();
        let more = Assumption::LensBlur.value() * pixel * (lens * lens - 1.0).sqrt();
        let view = View {
            blur: Millimetres::new(libm::hypot(view.blur.get(), more)).unwrap(),
            ..view
        };
        let precision = DepthInformation::of_family(family, &view).precision();
        let floor = floor * by.floor_pixels() * pixel;
        let pose = Assumption::PoseAndScale.value();
        let sigma = (1.0 / precision + floor * floor + pose * pose).sqrt();
        Reading::at(family, Millimetres::new(sigma).unwrap()).tries_even_chance
    };
    let (mut near, mut far) = (0.05_f64, 5000.0_f64);
    for _ in 0..60 {
        let middle = (near * far).sqrt();
        if tries(middle).get() < 100.0 {
            near = middle;
        } else {
            far = middle;
        }
    }
    near
}

/// What the documentation of [`Assumption`] says of doubling figures.
#[test]
fn doubled_figures_change_what_their_documentation_says() {
    let lost = |by: Observer, lens: f64, floor: f64| {
        let shares = Scene::ALL.map(|scene| {
            let now = distance_of_a_hundred_tries(scene, by, 1.0, 1.0);
            100.0 * (1.0 - distance_of_a_hundred_tries(scene, by, lens, floor) / now)
        });
        let least = shares.into_iter().fold(f64::INFINITY, f64::min).round();
        (least, shares.into_iter().fold(0.0, f64::max).round())
    };
    let by = |by| (lost(by, 2.0, 1.0), lost(by, 1.0, 2.0));
    let (person, software) = (by(Observer::Person), by(Observer::Software));
    assert_eq!(person.0, (4.0, 19.0), "{person:?} {software:?}");
    assert_eq!(software.0, (13.0, 26.0), "{person:?} {software:?}");
    assert_eq!(person.1, (33.0, 49.0), "{person:?} {software:?}");
    // Twice the pixels that could be read are those that are easily read.
    let digits = Scene::ALL.map(Scene::legibility);
    let left = |found: &Legibility| found.easily_read.get() / found.could_be_read.get();
    assert_eq!(
        Assumption::EasilyRead.value(),
        2.0 * Assumption::CouldBeRead.value()
    );
    assert!(digits.iter().all(|found| left(found) <= 0.5));
    assert!(left(&Scene::SharedPicture.legibility()) > 0.49);
    assert!(left(&Scene::TelevisionCamera.legibility()) < 0.32);
    assert_eq!(left(&Scene::DoorbellCamera.legibility()), 0.0);
    for scene in Scene::ALL {
        let contrast = scene.camera().view(metres(1.0)).contrast_to_noise;
        assert!(contrast < Assumption::ContrastCap.value());
    }
}

fn any_camera() -> impl Strategy<Value = Camera> {
    (
        10.0_f64..2000.0,
        320_u32..8000,
        0.5_f64..120.0,
        0.2_f64..150.0,
        0.0_f64..3.0,
        1_u32..20,
    )
        .prop_map(
            |(focal, pixels_across, aperture, contrast_to_noise, smear, frames)| Camera {
                equivalent_focal_length: Millimetres::new(focal).unwrap(),
                pixels_across,
                frame: FrameShape::ThreeToTwo,
                aperture: Millimetres::new(aperture).unwrap(),
                contrast_to_noise,
                smear: Millimetres::new(smear).unwrap(),
                frames,
            },
        )
}

proptest! {
    #[test]
    fn nothing_gained_by_distance_smear_noise_or_a_smaller_lens(
        camera in any_camera(),
        family in proptest::sample::select(&Family::ALL[..]),
        distance in 0.1_f64..500.0,
        factor in 1.0_f64..3.0,
    ) {
        let bits = |camera: &Camera, distance: f64| {
            let found = camera.view(metres(distance)).reading(family, Observer::Person);
            found.reading.bits_leaked.get()
        };
        let now = bits(&camera, distance);
        prop_assert!(now >= 0.0 && now <= family.secrecy().get());
        // The overlap's switch to wide spots steps by less than one part in a hundred thousand.
        let no_more = now * (1.0 + 2e-5) + 1e-12;
        let scaled = |value: Millimetres, by: f64| Millimetres::new(value.get() * by).unwrap();
        prop_assert!(bits(&camera, distance * factor) <= no_more);
        let smeared = Camera { smear: scaled(camera.smear, factor), ..camera };
        prop_assert!(bits(&smeared, distance) <= no_more);
        let noisy = Camera { contrast_to_noise: camera.contrast_to_noise / factor, ..camera };
        prop_assert!(bits(&noisy, distance) <= no_more);
        let narrow = Camera { aperture: scaled(camera.aperture, 1.0 / factor), ..camera };
        prop_assert!(bits(&narrow, distance) <= no_more);
    }
}
