//! The two marks that a person sets, and the parts of the picture that follow from them alone.

use core::fmt;

/// A place in a picture, in pixels from its left and upper edge. The middle of the first pixel lies
/// at one half.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// From the left edge.
    pub x: f64,
    /// From the upper edge.
    pub y: f64,
}

/// How many pixels a picture has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Size {
    /// Across.
    pub width: u32,
    /// Down.
    pub height: u32,
}

/// A part of a picture, in whole pixels.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rectangle {
    /// First column.
    pub left: u32,
    /// First row.
    pub top: u32,
    /// Number of columns.
    pub width: u32,
    /// Number of rows.
    pub height: u32,
}

/// The marked ends of a blade: shoulder and tip. Cuts are never marked.
///
/// ```
/// use self_check_core::picture::{Marks, MarkError, Point, Size};
/// let size = Size { width: 800, height: 600 };
/// let marks = Marks::new(size, Point { x: 100.0, y: 300.0 }, Point { x: 380.0, y: 300.0 })?;
/// assert_eq!(marks.length_px(), 280.0); // ten pixels a millimetre for a blade of 28 mm
/// let same = Point { x: 5.0, y: 5.0 };
/// assert_eq!(Marks::new(size, same, same), Err(MarkError::OnePoint));
/// # Ok::<(), MarkError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Marks {
    size: Size,
    shoulder: Point,
    tip: Point,
}

/// Why two marks cannot be taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MarkError {
    /// The picture has no pixels.
    EmptyPicture,
    /// A mark lies outside the picture, or nowhere.
    Outside,
    /// Both marks lie on one point.
    OnePoint,
}

impl Marks {
    /// Fewer pixels than this from end to end are not measured: cuts would be some five pixels
    /// apart, and no two edges could be fitted side by side. Our assumption; doubling it would
    /// refuse small pictures that tell a few bits.
    pub const SHORTEST: f64 = 40.0;

    /// Marks in a picture of this size; errs where they do not both lie in it, apart.
    pub fn new(size: Size, shoulder: Point, tip: Point) -> Result<Self, MarkError> {
        if size.width == 0 || size.height == 0 {
            return Err(MarkError::EmptyPicture);
        }
        let is_inside = |point: Point| {
            (0.0..=f64::from(size.width)).contains(&point.x)
                && (0.0..=f64::from(size.height)).contains(&point.y)
        };
        if !is_inside(shoulder) || !is_inside(tip) {
            return Err(MarkError::Outside);
        }
        let marks = Self {
            size,
            shoulder,
            tip,
        };
        if marks.length_px() < 1.0 {
            return Err(MarkError::OnePoint);
        }
        Ok(marks)
    }

    /// How many pixels lie between the ends.
    pub fn length_px(&self) -> f64 {
        libm::hypot(self.tip.x - self.shoulder.x, self.tip.y - self.shoulder.y)
    }

    /// The part of the picture that hides the key if it is covered: the blade with something to
    /// spare, and as much again beyond either mark, where the bow is with what may be stamped on it:
    /// beyond the shoulder, or beyond the tip where the marks were taken for each other.
    /// It follows from the marks; nothing is looked for.
    pub fn cover(&self) -> Rectangle {
        self.around(-BOW, 1.0 + BOW, COVER_TO_A_SIDE)
    }

    /// Whether all that a blade between these marks can take up lies under `covers`: the way from mark
    /// to mark, and as far to either side as a blade is high. What lies outside the picture needs no
    /// cover. It follows from the marks; nothing is looked for.
    ///
    /// ```
    /// use self_check_core::picture::{Marks, Point, Rectangle, Size};
    /// let size = Size { width: 800, height: 600 };
    /// let marks = Marks::new(size, Point { x: 100.0, y: 300.0 }, Point { x: 380.0, y: 300.0 })?;
    /// assert!(marks.blade_is_under(&[marks.cover()]));
    /// // A strip along the middle leaves the cuts bare.
    /// let strip = Rectangle { left: 0, top: 290, width: 800, height: 20 };
    /// assert!(!marks.blade_is_under(&[strip]));
    /// # Ok::<(), self_check_core::picture::MarkError>(())
    /// ```
    pub fn blade_is_under(&self, covers: &[Rectangle]) -> bool {
        let (dx, dy) = (self.tip.x - self.shoulder.x, self.tip.y - self.shoulder.y);
        let shares = |from: f64, to: f64| {
            (0..=PLACES).map(move |place| from + (to - from) * f64::from(place) / f64::from(PLACES))
        };
        let (width, height) = (f64::from(self.size.width), f64::from(self.size.height));
        let mut places = shares(0.0, 1.0)
            .flat_map(|along| {
                shares(-STRIP_TO_A_SIDE, STRIP_TO_A_SIDE).map(move |across| (along, across))
            })
            .map(|(along, across)| Point {
                x: self.shoulder.x + along * dx - across * dy,
                y: self.shoulder.y + along * dy + across * dx,
            })
            .filter(|place| (0.0..=width).contains(&place.x) && (0.0..=height).contains(&place.y));
        places.all(|place| covers.iter().any(|cover| cover.holds(place)))
    }

    pub(super) fn strip(&self) -> Strip {
        let length = self.length_px();
        let reach = |share: f64, most: f64| (share * length).min(most);
        let half_width = reach(STRIP_TO_A_SIDE, MOST_HALF_WIDTH);
        Strip {
            middle: Point {
                x: 0.5 * (self.shoulder.x + self.tip.x),
                y: 0.5 * (self.shoulder.y + self.tip.y),
            },
            along: Point {
                x: (self.tip.x - self.shoulder.x) / length,
                y: (self.tip.y - self.shoulder.y) / length,
            },
            half_length: reach(0.5, MOST_HALF_LENGTH),
            half_width,
            middle_band: BAND_TO_A_SIDE * length / half_width,
        }
    }

    /// The whole pixels around the strip, with room for an edge at its border.
    pub(super) fn region(&self) -> Rectangle {
        let strip = self.strip();
        let share = strip.half_length / self.length_px();
        let to_a_side = strip.half_width / self.length_px();
        self.around(0.5 - share, 0.5 + share, to_a_side)
    }

    /// The rectangle around the part of the picture between two shares of the way from shoulder to
    /// tip and a share of the blade's length to either side.
    fn around(&self, from: f64, to: f64, to_a_side: f64) -> Rectangle {
        let (dx, dy) = (self.tip.x - self.shoulder.x, self.tip.y - self.shoulder.y);
        let corners = [
            (from, to_a_side),
            (from, -to_a_side),
            (to, to_a_side),
            (to, -to_a_side),
        ];
        let corners = corners.map(|(along, across)| Point {
            x: self.shoulder.x + along * dx - across * dy,
            y: self.shoulder.y + along * dy + across * dx,
        });
        let span = |place: fn(&Point) -> f64, end: u32| {
            let places = corners.iter().map(place);
            let least = places.clone().fold(f64::INFINITY, f64::min);
            let most = places.fold(f64::NEG_INFINITY, f64::max);
            // At least one pixel, wherever the marks are.
            let first = (libm::floor(least).max(0.0) as u32).min(end - 1);
            let last = (libm::ceil(most).max(0.0) as u32).clamp(first + 1, end);
            (first, last - first)
        };
        let (left, width) = span(|point| point.x, self.size.width);
        let (top, height) = span(|point| point.y, self.size.height);
        Rectangle {
            left,
            top,
            width,
            height,
        }
    }
}

/// The part of a picture that is measured, turned as the blade is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Strip {
    pub(super) middle: Point,
    /// Of length 1, from shoulder to tip.
    pub(super) along: Point,
    pub(super) half_length: f64,
    pub(super) half_width: f64,
    /// As a share of its half width: the band that no blade with cuts fills, wherever in it the marks lie.
    pub(super) middle_band: f64,
}

impl Rectangle {
    /// Whether a place lies in it or on its border.
    fn holds(&self, place: Point) -> bool {
        let within = |at: f64, from: u32, size: u32| {
            (f64::from(from)..=f64::from(from) + f64::from(size)).contains(&at)
        };
        within(place.x, self.left, self.width) && within(place.y, self.top, self.height)
    }
}

impl Strip {
    /// Where a place lies along and across the strip, from -1 to 1 within it.
    pub(super) fn within(&self, x: f64, y: f64) -> Option<(f64, f64)> {
        let (dx, dy) = (x - self.middle.x, y - self.middle.y);
        let along = (dx * self.along.x + dy * self.along.y) / self.half_length;
        let across = (dy * self.along.x - dx * self.along.y) / self.half_width;
        (along.abs() <= 1.0 && across.abs() <= 1.0).then_some((along, across))
    }
}

impl fmt::Display for MarkError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::EmptyPicture => "the picture has no pixels",
            Self::Outside => "a mark lies outside the picture",
            Self::OnePoint => "both marks lie on one point",
        })
    }
}

impl core::error::Error for MarkError {}

/// A blade is about a third as high as it is long, and may lie on either side of the marks.
const STRIP_TO_A_SIDE: f64 = 0.3;

/// A blade is 0.25 to 0.35 times as high as it is long, less at its cuts and at its tip. Marks that lie
/// along its middle have less than this to both sides there; other marks have nothing to one side. Our
/// assumption from the blade sizes of common keys.
const BAND_TO_A_SIDE: f64 = 0.15;

/// Of a key that fills a very large picture the middle is enough: edges are sampled, not followed.
const MOST_HALF_LENGTH: f64 = 800.0;
const MOST_HALF_WIDTH: f64 = 1200.0;

/// Along and across, one more than this many places of a blade are looked at: no cover that a person
/// draws leaves a gap so narrow that it lies between two of them.
const PLACES: u32 = 48;

/// As shares of the blade's length. A bow is about as long as the blade and as wide as half of it
/// to either side; the rest is room for marks set loosely.
const BOW: f64 = 1.0;
const COVER_TO_A_SIDE: f64 = 0.45;
