//! Words of the page "Who could read it from where": scenes, figures, and what is taken for granted.

use self_check_core::assumptions::{Assumption, Unit};
use self_check_core::key::Dimension;
use self_check_core::sight::{Legibility, Property, Scene};

use super::numbers::{about_keys, at_most_keys};

/// What a scene is called.
pub fn scene(scene: Scene) -> &'static str {
    match scene {
        Scene::PhoneAtNextTable => "Phone at the next table",
        Scene::PhoneAcrossRoom => "Phone across a room",
        Scene::PhoneThroughWindow => "Phone through a shop window",
        Scene::PhoneZoomAcrossStreet => "Phone, zoomed in, across a street",
        Scene::SharedPicture => "Picture that was shared",
        Scene::SaleListing => "Picture of a room in a listing",
        Scene::DoorbellCamera => "Doorbell camera",
        Scene::VideoCall => "Video call",
        Scene::DeskStream => "Broadcast from a desk",
        Scene::SurveillanceCamera => "Camera in a lobby or garage",
        Scene::PocketZoom => "Pocket camera with a long zoom",
        Scene::LongLens => "Long lens from a roof",
        Scene::TelevisionCamera => "Television camera nearby",
    }
}

/// What a figure of a scene is.
pub fn property(property: Property) -> &'static str {
    match property {
        Property::EquivalentFocalLength => "Lens, as on a full-size camera",
        Property::PixelsAcross => "Dots across the picture",
        Property::FrameWidth => "Width of a full-size picture of this shape",
        Property::Aperture => "Width of the lens’s opening",
        Property::ContrastToNoise => "Contrast over noise in each dot",
        Property::Smear => "How far the key moves while the picture is taken",
        Property::Frames => "Pictures taken together",
        Property::UsualDistance => "Usual distance",
    }
}

/// What a figure of the key is.
pub fn dimension(dimension: Dimension) -> &'static str {
    match dimension {
        Dimension::Cuts => "Cuts along the key",
        Dimension::Depths => "Depths (how deep it is) that a cut can have",
        Dimension::Step => "From one depth to the next",
        Dimension::Pitch => "From one cut to the next",
        Dimension::Flat => "Width of the flat at the bottom of a cut",
        Dimension::LargestStep => "Most steps between two cuts side by side",
    }
}

/// What the model takes for granted.
pub fn assumption(assumption: Assumption) -> &'static str {
    match assumption {
        Assumption::LensBlur => "Blur of lens and sensor",
        Assumption::Wavelength => "Wavelength of the light",
        Assumption::DiffractionSpot => "Width of the spot that a perfect lens makes of a point",
        Assumption::SteepFlanks => "What steep sides of a cut add",
        Assumption::FloorOfPerson => "How well a person marks an edge",
        Assumption::FloorOfSoftware => "How well a careful person with software marks an edge",
        Assumption::PoseAndScale => "Error of scale and of how the key is held",
        Assumption::ContrastCap => "Most contrast over noise",
        Assumption::CharacterHeight => "Height of a stamped digit",
        Assumption::CouldBeRead => "Dots up a digit from which it could be read",
        Assumption::EasilyRead => "Dots up a digit from which it is easily read",
        Assumption::Identification => "The same by the published rule, for comparison",
        Assumption::CaliperError => "Error of a caliper",
        Assumption::CopySpread => "Spread that one copying adds",
        Assumption::CopyDrift => "Shift that one copying adds",
        Assumption::CutTolerance => "How far off a cut may be",
        Assumption::PocketfulOfKeys => "Trial keys in a pocket",
    }
}

/// A number with its unit.
pub fn figure_with_unit(value: f64, unit: Unit) -> String {
    let number = plain(value);
    match unit {
        Unit::Millimetres => format!("{number} mm"),
        Unit::Metres => format!("{number} m"),
        Unit::Pixels => format!("{number} dots"),
        Unit::Ratio | Unit::Count => number,
    }
}

/// A distance in metres and feet, to two digits.
pub fn distance(metres: f64) -> String {
    let feet = metres / METRES_IN_A_FOOT;
    format!(
        "{}\u{a0}m ({}\u{a0}ft)",
        two_digits(metres),
        two_digits(feet)
    )
}

/// A distance in metres alone, to two digits.
pub fn metres(metres: f64) -> String {
    format!("{}\u{a0}m", two_digits(metres))
}

/// How many keys are left to try, between a skilled observer and another.
pub fn tries_left(fewest: f64, most: f64) -> String {
    let (fewest, most) = (about_keys(fewest), about_keys(most));
    if fewest == most {
        most
    } else {
        format!("{} to {}", fewest, most.trim_start_matches("about "))
    }
}

/// What the chosen scene leaves at the chosen distance.
pub fn seen_from(scene_name: &str, metres: f64, tries: &str, keys: f64) -> String {
    format!(
        "{scene_name}, {} away. At best for the camera, a stranger would try {tries} of at most {} keys for an even chance. That is our own estimate; real pictures tell less.",
        distance(metres),
        at_most_keys(keys)
    )
}

/// A distance and what it leaves, for one who hears the slider.
pub fn distance_and_tries(metres: f64, tries: &str) -> String {
    format!("{}: {tries} keys to try", distance(metres))
}

/// From how far a stamped number can be read, by our figures and by the published one.
pub fn number_legible(found: &Legibility) -> String {
    let [could, easily, published] =
        [found.could_be_read, found.easily_read, found.published].map(|end| end.get());
    if could <= 0.0 {
        return "In this scene a number stamped on the key could not be read at all.".to_owned();
    }
    let easily = match easily > 0.0 {
        true => format!("easily read up to {}", distance(easily)),
        false => "never easily read".to_owned(),
    };
    let published = match published > 0.0 {
        true => format!("that is up to {}", distance(published)),
        false => "it could not be read".to_owned(),
    };
    format!(
        "A number stamped on the key could be read up to {} away. It is {easily}. By a published rule for telling shapes apart, {published}. Whoever reads the number needs to see no cut.",
        distance(could)
    )
}

/// What a camera leaves from where it shows who somebody is.
pub fn planned_to_identify(metres: f64, tries: &str) -> String {
    format!(
        "Such cameras can be planned by a European standard. Where they shall show who a person is, a dot is 4 mm wide. This one does that from {} away, and leaves {tries} keys to try.",
        distance(metres)
    )
}

/// Exact by definition since 1959: the international foot.
const METRES_IN_A_FOOT: f64 = 0.3048;

fn two_digits(value: f64) -> String {
    if value >= 10.0 {
        let step = if value >= 100.0 { 10.0 } else { 1.0 };
        format!("{:.0}", (value / step).round() * step)
    } else {
        format!("{value:.1}").trim_end_matches(".0").to_owned()
    }
}

fn plain(value: f64) -> String {
    if value != 0.0 && value.abs() < 0.001 {
        format!("{value:.5}")
    } else {
        let text = format!("{value:.3}");
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use self_check_core::units::Metres;

    #[test]
    fn distance_is_told_in_metres_and_feet() {
        assert_eq!(distance(1.0), "1\u{a0}m (3.3\u{a0}ft)");
        assert_eq!(distance(59.4), "59\u{a0}m (190\u{a0}ft)"); // 195 ft in the published trial
    }

    #[test]
    fn number_is_told_with_every_distance_or_none() {
        let told = number_legible(&Scene::LongLens.legibility());
        assert_eq!(told.matches("\u{a0}m (").count(), 3, "{told}");
        let told = number_legible(&Scene::DoorbellCamera.legibility());
        assert!(told.contains("never easily") && told.contains("it could not be read"));
        let none = Legibility {
            could_be_read: Metres::ZERO,
            easily_read: Metres::ZERO,
            published: Metres::ZERO,
        };
        assert!(number_legible(&none).contains("not be read at all"));
    }

    #[test]
    fn figures_keep_small_numbers() {
        assert_eq!(figure_with_unit(0.00055, Unit::Millimetres), "0.00055 mm");
        assert_eq!(figure_with_unit(26.0, Unit::Millimetres), "26 mm");
        assert_eq!(figure_with_unit(0.07, Unit::Millimetres), "0.07 mm");
    }

    #[test]
    fn tries_left_reads_as_one_value_or_a_range() {
        assert_eq!(tries_left(1.0, 1.0), "1");
        assert_eq!(tries_left(12.0, 120.0), "about 10 to 100");
    }
}
