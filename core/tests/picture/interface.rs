//! What may leave a measurement: the names and functions of `self_check_core::picture`, held to a list.
//!
//! None gives a position or a height along a blade, or anything that there is one of for each cut. Add
//! to the list only what keeps to that; the reason is at the head of the module.

use self_check_core::picture::{Caveat, Marks, Measurement, Measuring, Point, Size};

/// The module and those of its parts whose types are handed out.
const PARTS: [&str; 4] = [
    include_str!("../../src/picture.rs"),
    include_str!("../../src/picture/marks.rs"),
    include_str!("../../src/picture/measure.rs"),
    include_str!("../../src/picture/readable.rs"),
];

const HANDED_OUT: [&str; 3] = [
    "pub use marks::{MarkError, Marks, Point, Rectangle, Size};",
    "pub use measure::{Measurement, Measuring, WrongRows};",
    "pub use readable::{Judgement, Readable, Scale};",
];

/// Functions, constants and fields with what they give.
const LIST: [&str; 39] = [
    // the marks, which the person sets, and what follows from them alone
    "pub x: f64,",
    "pub y: f64,",
    "pub width: u32,",
    "pub height: u32,",
    "pub left: u32,",
    "pub top: u32,",
    "pub width: u32,",
    "pub height: u32,",
    "pub const SHORTEST: f64 = 40.0;",
    "pub fn new(size: Size, shoulder: Point, tip: Point) -> Result<Self, MarkError> {",
    "pub fn length_px(&self) -> f64 {",
    "pub fn cover(&self) -> Rectangle {",
    "pub fn blade_is_under(&self, covers: &[Rectangle]) -> bool {",
    // pixels go in
    "pub fn new(marks: Marks, quantisation: Option<f64>) -> Self {",
    "pub fn next_rows(&self) -> Option<Rectangle> {",
    "pub fn give_rows(&mut self, colours: &[u8]) -> Result<(), WrongRows> {",
    "pub fn work(&mut self) -> bool {",
    "pub fn share(&self) -> f64 {",
    "pub fn finish(mut self) -> Measurement {",
    // medians over the whole strip come out
    "pub fn blur_px(&self) -> Option<f64> {",
    "pub fn noise(&self) -> f64 {",
    "pub fn contrast(&self) -> f64 {",
    "pub fn caveats(&self) -> &[Caveat] {",
    "pub const ALL: [Self; 9] = [",
    "pub const fn id(self) -> &'static str {",
    "pub const SOURCES: [&Source; 2] = [&sources::PICTURE_BANDS, &sources::BLADE_LENGTHS];",
    "pub const METHOD: [&Source; 2] = [&sources::PICTURE_MEASUREMENT, &sources::NOISE_ESTIMATION];",
    // and what the model makes of them
    "pub pixels_per_mm: f64,",
    "pub uncertainty: f64,",
    "pub fn scale(&self, family: Family) -> Scale {",
    "pub fn view(&self, family: Family) -> View {",
    "pub fn reading(&self, family: Family, observer: Observer) -> SightReading {",
    "pub fn range(&self, choice: FamilyChoice, observer: Observer) -> SightRange {",
    "pub readable: Readable,",
    "pub is_sure: bool,",
    "pub const CANNOT_TELL: Self = Self {",
    "pub fn or(self, other: Self) -> Self {",
    "pub fn judge(&self, family: Family) -> Judgement {",
    "pub struct WrongRows;",
];

/// What is public in a part, but for types, whose fields stand on lines of their own.
fn public_lines() -> Vec<&'static str> {
    PARTS
        .iter()
        .flat_map(|part| part.lines())
        .map(str::trim)
        .filter(|line| line.starts_with("pub "))
        .filter(|line| !(line.ends_with('{') && is_type(line)))
        .collect()
}

fn is_type(line: &str) -> bool {
    ["pub struct ", "pub enum ", "pub(super)"]
        .iter()
        .any(|kind| line.starts_with(kind))
}

#[test]
fn nothing_is_handed_out_that_is_not_on_the_list() {
    let mut left = LIST.to_vec();
    let mut strangers = Vec::new();
    for line in public_lines() {
        if HANDED_OUT.contains(&line) {
            continue;
        }
        match left.iter().position(|listed| *listed == line) {
            Some(at) => {
                left.remove(at);
            }
            None => strangers.push(line),
        }
    }
    assert!(strangers.is_empty(), "{strangers:#?}");
    assert!(left.is_empty(), "no longer there: {left:#?}");
}

/// All modules are private, so that only what is handed out can be reached.
#[test]
fn parts_are_private_and_their_types_handed_out_by_name() {
    let [module, ..] = PARTS;
    let lines = |start: &'static str| module.lines().filter(move |line| line.starts_with(start));
    assert_eq!(lines("pub mod").count(), 0);
    assert!(lines("mod ").count() >= 7);
    assert_eq!(lines("pub use").collect::<Vec<_>>(), HANDED_OUT);
}

/// A measurement is as large for a blade with many cuts as for one with none: it holds nothing of which
/// there is one for each.
#[test]
fn measurement_is_no_larger_where_there_is_more_to_see() {
    let size = Size {
        width: 900,
        height: 400,
    };
    let point = |x: f64| Point { x, y: 200.0 };
    let measured = |teeth: u32| -> Measurement {
        let marks = Marks::new(size, point(20.0), point(880.0)).unwrap();
        let mut measuring = Measuring::new(marks, None);
        while let Some(part) = measuring.next_rows() {
            let rows = part.top..part.top + part.height;
            let colours: Vec<u8> = rows
                .flat_map(|y| (part.left..part.left + part.width).map(move |x| (x, y)))
                .flat_map(|(x, y)| {
                    let dip = if teeth > 0 && x * teeth / 450 % 2 == 1 {
                        60
                    } else {
                        0
                    };
                    let grey = if y < 120 + dip || y > 280 { 50 } else { 190 };
                    [grey, grey, grey, 255]
                })
                .collect();
            measuring.give_rows(&colours).unwrap();
        }
        measuring.finish()
    };
    // Every value but the first of a list or a structure follows a comma.
    let commas = |found: &Measurement| {
        assert!(found.blur_px().is_some(), "{found:?}");
        let text = format!("{found:?}");
        let (figures, caveats) = text.split_once("caveats: ").unwrap();
        assert!(found.caveats().len() <= Caveat::ALL.len());
        assert_eq!(
            caveats.matches(',').count(),
            found.caveats().len() - 1,
            "{text}"
        );
        figures.matches(',').count()
    };
    assert_eq!(commas(&measured(0)), commas(&measured(9)));
}
