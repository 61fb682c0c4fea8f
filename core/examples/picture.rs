//! How readable a key is in a picture: `picture -- FILE X1 Y1 X2 Y2 FAMILY` prints one figure a line,
//! as `name value`. X1 Y1 is the shoulder and X2 Y2 the tip, in pixels from the upper left corner of
//! the picture as it is shown, turned the way its file asks for. With the family `not-sure` figures
//! that depend on it are a range over the families: fewest keys left, then most.
//!
//! Where no edge could be measured `blur_px` is `nan`; a caveat says why, and what the other figures
//! then are.

use image::metadata::Orientation;
use image::{DynamicImage, ImageDecoder, ImageReader};
use self_check_core::key::FamilyChoice;
use self_check_core::metadata::PictureFile;
use self_check_core::picture::{Marks, Measurement, Measuring, Point, Size};
use self_check_core::sight::Observer;
use std::io::Cursor;
use std::process::ExitCode;

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    match lines(&arguments) {
        Ok(lines) => {
            lines.iter().for_each(|line| println!("{line}"));
            ExitCode::SUCCESS
        }
        Err(message) => {
            eprintln!("{message}");
            ExitCode::from(2)
        }
    }
}

fn lines(arguments: &[String]) -> Result<Vec<String>, String> {
    let [path, numbers @ .., family] = arguments else {
        return Err("Six words are needed: FILE X1 Y1 X2 Y2 FAMILY.".into());
    };
    let numbers: Vec<f64> = numbers
        .iter()
        .map(|text| text.parse())
        .collect::<Result<_, _>>()
        .map_err(|_| "X1 Y1 X2 Y2 must be numbers of pixels.")?;
    let [x1, y1, x2, y2] = numbers[..] else {
        return Err("Six words are needed: FILE X1 Y1 X2 Y2 FAMILY.".into());
    };
    let choice = FamilyChoice::from_id(family).ok_or_else(|| {
        let ids = FamilyChoice::ALL.map(FamilyChoice::id).join(", ");
        format!("No such FAMILY. There are: {ids}.")
    })?;
    let bytes = std::fs::read(path).map_err(|error| format!("{path} cannot be read: {error}."))?;
    let file = PictureFile::read(&bytes).map_err(|error| format!("{path}: {error}."))?;
    let picture = decode(&bytes).map_err(|error| format!("{path} cannot be decoded: {error}."))?;
    let size = Size {
        width: picture.width(),
        height: picture.height(),
    };
    let marks = Marks::new(size, Point { x: x1, y: y1 }, Point { x: x2, y: y2 })
        .map_err(|error| format!("These marks cannot be taken: {error}."))?;
    let measurement = measure(&picture, marks, file.quantisation)?;
    Ok(report(&measurement, choice))
}

fn decode(bytes: &[u8]) -> image::ImageResult<DynamicImage> {
    let reader = ImageReader::new(Cursor::new(bytes)).with_guessed_format()?;
    let mut decoder = reader.into_decoder()?;
    let turned = decoder.orientation().unwrap_or(Orientation::NoTransforms);
    let mut picture = DynamicImage::from_decoder(decoder)?;
    picture.apply_orientation(turned);
    Ok(picture)
}

fn measure(
    picture: &DynamicImage,
    marks: Marks,
    quantisation: Option<f64>,
) -> Result<Measurement, String> {
    let mut measuring = Measuring::new(marks, quantisation);
    while let Some(part) = measuring.next_rows() {
        let rows = picture.crop_imm(part.left, part.top, part.width, part.height);
        measuring
            .give_rows(&rows.to_rgba8())
            .map_err(|error| error.to_string())?;
    }
    Ok(measuring.finish())
}

fn report(measurement: &Measurement, choice: FamilyChoice) -> Vec<String> {
    let range = measurement.range(choice, Observer::Person);
    let readings = match choice {
        FamilyChoice::Known(_) => vec![range.fewest],
        FamilyChoice::NotSure => vec![range.fewest, range.most],
    };
    let mut lines = Vec::new();
    let mut line = |name: &str, values: &[f64]| {
        let values: Vec<String> = values.iter().map(|value| number(*value)).collect();
        lines.push(format!("{name} {}", values.join(" ")));
    };
    let of_each = |value: fn(&self_check_core::sight::SightReading) -> f64| {
        readings.iter().map(value).collect::<Vec<f64>>()
    };
    line(
        "pixels_per_mm",
        &of_each(|reading| 1.0 / reading.view.ground_sample.get()),
    );
    line("blur_px", &[measurement.blur_px().unwrap_or(f64::NAN)]);
    line("noise", &[measurement.noise()]);
    line("contrast", &[measurement.contrast()]);
    line(
        "bits_leaked",
        &of_each(|reading| reading.reading.bits_leaked.get()),
    );
    line(
        "keys_left",
        &of_each(|reading| reading.reading.keys_left.get()),
    );
    let caveats = measurement.caveats().iter();
    lines.extend(caveats.map(|caveat| format!("caveat {}", caveat.id())));
    lines
}

fn number(value: f64) -> String {
    if value.is_nan() {
        "nan".into()
    } else {
        format!("{value:.6}")
    }
}
