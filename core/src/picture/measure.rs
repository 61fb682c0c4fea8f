//! Measuring the strip between two marks, piece by piece.

use core::fmt;

use super::Caveat;
use super::edges::{Edges, FEWEST_EDGES, Search, settled};
use super::level::{Level, MOST_HALVINGS, ROWS_TOGETHER, grey_of_colours};
use super::marks::{Marks, Rectangle, Strip};
use super::noise::LEVELS_OF_NOISE;

/// A measurement on its way. Rows of the picture go in, as many as [`Measuring::next_rows`] asks
/// for; then [`Measuring::work`] does a few milliseconds' worth at each call, so that a page can
/// show how far it has come and stop it at any time.
///
/// ```
/// use self_check_core::picture::{Measuring, Marks, Point, Size};
/// // Dark above, bright below, nothing blurred.
/// let size = Size { width: 200, height: 120 };
/// let colour = |row: u32| if row < 60 { [40, 40, 40, 255] } else { [200, 200, 200, 255] };
/// let marks = Marks::new(size, Point { x: 20.0, y: 60.0 }, Point { x: 180.0, y: 60.0 })?;
/// let mut measuring = Measuring::new(marks, None);
/// while let Some(part) = measuring.next_rows() {
///     let rows = part.top..part.top + part.height;
///     let rows = rows.flat_map(|row| colour(row).repeat(part.width as usize));
///     measuring.give_rows(&rows.collect::<Vec<u8>>())?;
/// }
/// while measuring.work() {}
/// let measurement = measuring.finish();
/// assert!(measurement.blur_px().is_some_and(|blur| blur < 0.5));
/// assert!((measurement.contrast() - 160.0).abs() < 1.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub struct Measuring {
    marks: Marks,
    strip: Strip,
    region: Rectangle,
    levels: Vec<Level>,
    searches: Vec<Search>,
    at: (Phase, usize),
    quantisation: Option<f64>,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Phase {
    Looking,
    Fitting,
    Done,
}

/// What a marked strip tells about the picture it is in. Nothing of the key's shape is in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Measurement {
    pub(super) length_px: f64,
    noise: f64,
    edges: Option<Edges>,
    caveats: Vec<Caveat>,
}

/// Rows were given that were not asked for, or not whole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WrongRows;

impl Measuring {
    /// Begins to measure between `marks`. `quantisation` is the mean of the first ten steps to which
    /// a lossy file rounds its grey, where it does
    /// ([`PictureFile::quantisation`](crate::metadata::PictureFile::quantisation)).
    pub fn new(marks: Marks, quantisation: Option<f64>) -> Self {
        let strip = marks.strip();
        let region = marks.region();
        let (width, height) = (region.width as usize, region.height as usize);
        let shortest = 2.0 * strip.half_length;
        let levels: Vec<Level> = (0..=MOST_HALVINGS)
            .filter(|&halvings| halvings == 0 || shortest / (1 << halvings) as f64 >= LEAST_ACROSS)
            .map(|halvings| Level::new(halvings, width, height))
            .collect();
        let searches = levels
            .iter()
            .map(|level| Search::new(level, &strip))
            .collect();
        Self {
            marks,
            strip,
            region,
            levels,
            searches,
            at: (Phase::Looking, 0),
            quantisation,
        }
    }

    /// The rows of the picture that are needed next; `None` once all are there.
    pub fn next_rows(&self) -> Option<Rectangle> {
        let there = self.levels.first().map_or(0, Level::rows);
        let left = (self.region.height as usize).checked_sub(there)?;
        let at_once = BYTES_AT_ONCE / (4 * self.region.width.max(1) as usize * ROWS_TOGETHER);
        let rows = (at_once.max(1) * ROWS_TOGETHER).min(left);
        (rows > 0).then_some(Rectangle {
            top: self.region.top + there as u32,
            height: rows as u32,
            ..self.region
        })
    }

    /// Takes the rows asked for, from left to right and top to bottom, four bytes a pixel: red,
    /// green, blue and one that is not looked at. Errs, and takes nothing, where their number differs.
    pub fn give_rows(&mut self, colours: &[u8]) -> Result<(), WrongRows> {
        let wanted = self.next_rows().ok_or(WrongRows)?;
        if colours.len() != 4 * wanted.width as usize * wanted.height as usize {
            return Err(WrongRows);
        }
        let mut finer: Option<&mut Level> = None;
        let mut first_row = (wanted.top - self.region.top) as usize;
        for level in &mut self.levels {
            match finer {
                None => level.add_grey(grey_of_colours(colours)),
                Some(finer) => {
                    level.add_halved(finer, first_row);
                    first_row /= 2;
                }
            }
            finer = Some(level);
        }
        Ok(())
    }

    /// Does a piece of the work; false once all is done. Rows that were never given count as not
    /// there.
    pub fn work(&mut self) -> bool {
        let (phase, index) = self.at;
        let (Some(level), Some(search)) = (self.levels.get(index), self.searches.get_mut(index))
        else {
            self.at = match phase {
                Phase::Looking if self.marks.length_px() >= Marks::SHORTEST => (Phase::Fitting, 0),
                _ => (Phase::Done, 0),
            };
            return self.at.0 != Phase::Done;
        };
        let goes_on = match phase {
            Phase::Looking => search.look(level, &self.region, &self.strip),
            Phase::Fitting => search.fit(level),
            Phase::Done => return false,
        };
        if !goes_on {
            self.at = (phase, index + 1);
        }
        true
    }

    /// How much of the work is done, roughly, from 0 to 1.
    pub fn share(&self) -> f64 {
        let (phase, index) = self.at;
        // A level has a quarter of the pixels of the one before it, and as many edges.
        let levels = self.levels.len().max(1) as f64;
        match phase {
            Phase::Looking => {
                let first = self.searches.first().zip(self.levels.first());
                0.5 * first.map_or(0.0, |(search, level)| search.share_looked(level))
            }
            Phase::Fitting => 0.5 + 0.5 * index as f64 / levels,
            Phase::Done => 1.0,
        }
    }

    /// What was measured.
    pub fn finish(mut self) -> Measurement {
        while self.work() {}
        let noise = self.noise();
        let steps: Vec<_> = self
            .levels
            .iter()
            .zip(&self.searches)
            .map(|(level, search)| (level.halvings, search.steps.as_slice()))
            .collect();
        let edges = settled(&steps, noise);
        Measurement {
            length_px: self.marks.length_px(),
            noise,
            edges,
            caveats: self.caveats(edges.as_ref()),
        }
    }

    /// Noise of one pixel, as a standard deviation in grey levels.
    ///
    /// Compression smooths the finest noise away, so that coarser means are looked at too and the
    /// most counts. The rounding of the file's own steps, of width Δ, and of whole grey levels, of
    /// width 1, each add the square of their width over 12.
    ///
    /// Means of squares so large that cuts fill the operator's reach would count shape as noise: they
    /// are left out, sooner where nothing was compressed.
    fn noise(&self) -> f64 {
        let levels = self.levels.iter().zip(&self.searches).take(LEVELS_OF_NOISE);
        let reach = match self.quantisation {
            Some(_) => NOISE_REACH,
            None => 0.5 * NOISE_REACH,
        };
        let measured = levels
            .filter(|(level, _)| {
                level.halvings == 0 || 3.0 * level.side() as f64 <= reach * self.marks.length_px()
            })
            .filter_map(|(level, search)| search.noise.of_one_pixel(level))
            .fold(0.0, f64::max);
        let steps = self.quantisation.unwrap_or(0.0);
        (measured * measured + steps * steps / 12.0 + 1.0 / 12.0).sqrt()
    }

    fn caveats(&self, edges: Option<&Edges>) -> Vec<Caveat> {
        let whole = self.searches.first();
        let clipped = whole.is_some_and(|search| {
            f64::from(search.clipped) > CLIPPED_SHARE * f64::from(search.pixels)
        });
        let is_small = self.marks.length_px() < Marks::SHORTEST;
        let edge = |holds: fn(&Edges) -> bool| edges.is_some_and(holds);
        let level = whole.zip(self.levels.first());
        let is_one_colour =
            level.is_some_and(|(search, level)| search.is_one_colour(level, &self.strip));
        let all = [
            (Caveat::TooSmall, is_small),
            (Caveat::NoUsableEdge, !is_small && edges.is_none()),
            (Caveat::OneColour, !is_small && is_one_colour),
            (Caveat::ScaleFromBladeLength, true),
            (
                Caveat::FewEdges,
                edge(|edges| edges.count < 5 * FEWEST_EDGES),
            ),
            (Caveat::UnevenBlur, edge(|edges| edges.spread > UNEVEN)),
            (Caveat::Sharpened, edge(|edges| edges.overshoot > OVERSHOOT)),
            (Caveat::Compressed, self.quantisation.is_some()),
            (Caveat::Clipped, clipped),
        ];
        all.into_iter()
            .filter_map(|(caveat, holds)| holds.then_some(caveat))
            .collect()
    }
}

impl Measurement {
    /// Blur of the edges, as a standard deviation in pixels, the pixel's own width included; `None`
    /// where no edge was measured ([`Caveat::TooSmall`], [`Caveat::NoUsableEdge`]).
    pub fn blur_px(&self) -> Option<f64> {
        self.edges.map(|edges| edges.blur_px)
    }

    /// Noise of one pixel, as a standard deviation in grey levels of 255.
    pub fn noise(&self) -> f64 {
        self.noise
    }

    /// Height of the edges in grey levels of 255: nothing where no edge stands out of the noise, all
    /// 255 where none was looked for.
    pub fn contrast(&self) -> f64 {
        match &self.edges {
            Some(edges) => edges.height,
            None if self.is_too_small() => 255.0,
            None => 0.0,
        }
    }

    /// Whether the strip has fewer pixels than are measured ([`Caveat::TooSmall`]).
    pub(super) fn is_too_small(&self) -> bool {
        self.length_px < Marks::SHORTEST
    }

    /// Range of the middle half of the edges' blurs, over their median; none where there are no edges.
    pub(super) fn blur_spread(&self) -> f64 {
        self.edges.map_or(0.0, |edges| edges.spread)
    }

    /// What may make these figures differ from the truth.
    pub fn caveats(&self) -> &[Caveat] {
        &self.caveats
    }
}

impl fmt::Display for WrongRows {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("not the rows asked for")
    }
}

impl core::error::Error for WrongRows {}

/// A level with fewer pixels from end to end has no edges apart from each other.
const LEAST_ACROSS: f64 = 40.0;

/// Rows given together: a quarter of a megabyte is read and taken in a few milliseconds.
const BYTES_AT_ONCE: usize = 1 << 18;

/// The operator's reach, as a share of the blade: less than half the way from cut to cut.
const NOISE_REACH: f64 = 0.06;

/// Caveats hold beyond these; our assumptions, each from looking at pictures of either kind.
const CLIPPED_SHARE: f64 = 0.1;
const UNEVEN: f64 = 0.6;
const OVERSHOOT: f64 = 0.04;
