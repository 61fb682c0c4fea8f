//! Where to look for edges, and what those that are found say together.

use super::level::Level;
use super::marks::{Rectangle, Strip};
use super::noise::NoiseCounts;
use super::step::{Step, fit};

/// One level of the strip while it is looked through.
pub(super) struct Search {
    cells: Vec<Candidate>,
    columns: usize,
    rows: usize,
    next_row: usize,
    pub noise: NoiseCounts,
    /// Pixels in the strip, and those of them that are plain black or white.
    pub pixels: u32,
    pub clipped: u32,
    /// The darkest and the brightest pixel in the strip's middle band.
    middle: Option<(u16, u16)>,
    next_cell: usize,
    steepest: f64,
    pub steps: Vec<Step>,
}

/// The steepest place of a cell.
#[derive(Clone, Copy, Default)]
struct Candidate {
    slope: f64,
    place: (usize, usize),
    direction: (f64, f64),
}

impl Search {
    pub fn new(level: &Level, strip: &Strip) -> Self {
        let cells = |half: f64, most: f64| {
            let fitting = 2.0 * half / (SMALLEST_CELL * level.side() as f64);
            libm::floor(fitting).clamp(1.0, most) as usize
        };
        let columns = cells(strip.half_length, MOST_COLUMNS);
        let rows = cells(strip.half_width, MOST_ROWS);
        Self {
            cells: vec![Candidate::default(); columns * rows],
            columns,
            rows,
            next_row: 1,
            noise: NoiseCounts::new(level.halvings),
            pixels: 0,
            clipped: 0,
            middle: None,
            next_cell: 0,
            steepest: 0.0,
            steps: Vec::new(),
        }
    }

    /// Looks through some more rows for the steepest place of each cell; false once there are none.
    pub fn look(&mut self, level: &Level, region: &Rectangle, strip: &Strip) -> bool {
        let rows = (PIXELS_AT_ONCE / level.width.max(1)).max(1);
        let end = (self.next_row + rows).min(level.height.saturating_sub(1));
        for row in self.next_row..end {
            self.look_along(row, level, region, strip);
        }
        self.next_row = end.max(self.next_row);
        self.next_row + 1 < level.height
    }

    fn look_along(&mut self, row: usize, level: &Level, region: &Rectangle, strip: &Strip) {
        let side = level.side() as f64;
        let y = f64::from(region.top) + (row as f64 + 0.5) * side;
        let rows = [level.row(row - 1), level.row(row), level.row(row + 1)];
        for column in 1..level.width.saturating_sub(1) {
            let x = f64::from(region.left) + (column as f64 + 0.5) * side;
            let Some((along, across)) = strip.within(x, y) else {
                continue;
            };
            let Some(square) = square(&rows, column) else {
                continue;
            };
            self.pixels += 1;
            let [_, [_, own, _], _] = square;
            if level.halvings == 0 && (own == 0 || own == 255) {
                self.clipped += 1;
            }
            if along.abs() <= BAND_ALONG && across.abs() <= strip.middle_band {
                let (least, most) = self.middle.unwrap_or((own, own));
                self.middle = Some((least.min(own), most.max(own)));
            }
            self.noise.add(&square);
            let (gx, gy) = slope(&square);
            let slope = gx * gx + gy * gy;
            let cell = |place: f64, count: usize| {
                ((0.5 * (place + 1.0) * count as f64) as usize).min(count - 1)
            };
            let at = cell(across, self.rows) * self.columns + cell(along, self.columns);
            if let Some(best) = self.cells.get_mut(at)
                && slope > best.slope
            {
                *best = Candidate {
                    slope,
                    place: (column, row),
                    direction: (gx, gy),
                };
                self.steepest = self.steepest.max(slope);
            }
        }
    }

    /// Whether the middle band of the strip has one plain colour, as far as saving with loss leaves one.
    /// Of a strip of the largest pictures that is narrower than the band, that cannot be told.
    pub fn is_one_colour(&self, level: &Level, strip: &Strip) -> bool {
        let grey = level.grey_of_a_sum();
        let is_plain = |(least, most): (u16, u16)| f64::from(most - least) * grey <= ONE_COLOUR;
        strip.middle_band <= 1.0 && self.middle.is_some_and(is_plain)
    }

    /// How much of the level was looked through, from 0 to 1.
    pub fn share_looked(&self, level: &Level) -> f64 {
        (self.next_row as f64 / level.height.max(1) as f64).min(1.0)
    }

    /// Fits steps at some more of the steepest places; false once there are none.
    pub fn fit(&mut self, level: &Level) -> bool {
        let end = (self.next_cell + FITS_AT_ONCE).min(self.cells.len());
        let faintest = FAINTEST_SLOPE * FAINTEST_SLOPE * self.steepest;
        let cells = self.cells.get(self.next_cell..end).unwrap_or(&[]);
        for candidate in cells {
            if candidate.slope <= 0.0 || candidate.slope < faintest {
                continue;
            }
            let length = candidate.slope.sqrt();
            let (gx, gy) = candidate.direction;
            self.steps
                .extend(fit(level, candidate.place, (gx / length, gy / length)));
        }
        self.next_cell = end;
        end < self.cells.len()
    }
}

/// What the edges of a strip say together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Edges {
    /// Median blur, as a standard deviation in pixels of the picture.
    pub blur_px: f64,
    /// Median height, in grey levels.
    pub height: f64,
    /// How many edges.
    pub count: usize,
    /// Range of the middle half of blurs, over their median.
    pub spread: f64,
    /// Median overshoot, as a share of the height.
    pub overshoot: f64,
}

/// The edges of the finest level on which they are narrow enough for a fit to show both their sides,
/// or of the last that has any; `None` where no edge stands out anywhere. `noise` is that of one pixel of the picture.
pub(super) fn settled(levels: &[(usize, &[Step])], noise: f64) -> Option<Edges> {
    let kept: Vec<(usize, Vec<Step>)> = levels
        .iter()
        .map(|(halvings, steps)| (*halvings, usable(steps, noise / (1 << halvings) as f64)))
        .collect();
    let most = kept.iter().map(|(_, steps)| steps.len()).max()?;
    let enough = FEWEST_EDGES.max(most / 4);
    let is_rich = |steps: &[Step]| steps.len() >= enough;
    let is_narrow = |steps: &[Step]| median(steps.iter().map(|step| step.blur)) <= WIDEST_MEDIAN;
    let (halvings, steps) = kept
        .iter()
        .find(|(_, steps)| is_rich(steps) && is_narrow(steps))
        .or_else(|| kept.iter().rfind(|(_, steps)| is_rich(steps)))?;
    let side = (1_u32 << halvings) as f64;
    // A level's pixel is the mean of a square of pixels, which blurs by their spread.
    let own = (side * side - 1.0) / 12.0;
    let in_picture = |blur: f64| {
        (side * side * blur * blur - own)
            .max(SHARPEST_SQUARED)
            .sqrt()
    };
    let mut blurs: Vec<f64> = steps.iter().map(|step| in_picture(step.blur)).collect();
    blurs.sort_by(f64::total_cmp);
    let at = |share: f64| {
        let index = (share * (blurs.len() - 1) as f64) as usize;
        blurs.get(index).copied().unwrap_or(0.0)
    };
    let blur_px = median(blurs.iter().copied());
    Some(Edges {
        blur_px,
        height: median(steps.iter().map(|step| step.height)),
        count: steps.len(),
        spread: (at(0.75) - at(0.25)) / blur_px,
        overshoot: median(steps.iter().map(|step| step.overshoot)),
    })
}

/// The steps that stand out of the noise and are at least a quarter as high as the strongest of them;
/// of these the half that is explained best. Thin lines and corners look like narrower steps and are
/// explained worse, so that they would make a picture seem crisper than it is.
fn usable(steps: &[Step], noise: f64) -> Vec<Step> {
    let stands_out = |step: &&Step| {
        let allowed = MOST_MISFIT * step.height;
        let from_noise = 1.5 * noise;
        step.height >= OUT_OF_NOISE * noise
            && step.misfit * step.misfit <= allowed * allowed + from_noise * from_noise
    };
    let sound: Vec<&Step> = steps.iter().filter(stands_out).collect();
    let strongest = sound.iter().map(|step| step.height).fold(0.0, f64::max);
    let mut strong: Vec<Step> = sound
        .into_iter()
        .filter(|step| step.height >= SHARE_OF_STRONGEST * strongest)
        .copied()
        .collect();
    strong.sort_by(|a, b| (a.misfit / a.height).total_cmp(&(b.misfit / b.height)));
    let best = (strong.len() / 2).max(FEWEST_EDGES);
    strong.truncate(best);
    strong
}

fn median(values: impl Iterator<Item = f64>) -> f64 {
    let mut values: Vec<f64> = values.collect();
    values.sort_by(f64::total_cmp);
    let middle = values.len() / 2;
    match values.get(middle) {
        None => 0.0,
        Some(upper) if values.len() % 2 == 1 => *upper,
        Some(upper) => 0.5 * (upper + values.get(middle - 1).unwrap_or(upper)),
    }
}

fn square(rows: &[&[u16]; 3], column: usize) -> Option<[[u16; 3]; 3]> {
    let three = |row: &[u16]| row.get(column - 1..=column + 1)?.try_into().ok();
    let [upper, middle, lower] = rows;
    Some([three(upper)?, three(middle)?, three(lower)?])
}

/// How steeply the sums rise across and down, by the smoothed differences of a square.
fn slope(square: &[[u16; 3]; 3]) -> (f64, f64) {
    let [[a, b, c], [d, _, f], [g, h, i]] = square.map(|row| row.map(i32::from));
    let across = c + 2 * f + i - a - 2 * d - g;
    let down = g + 2 * h + i - a - 2 * b - c;
    (f64::from(across), f64::from(down))
}

/// A cover may end at the marks, where it is blurred.
const BAND_ALONG: f64 = 0.95;

/// Grey levels that saving with loss leaves in a plain colour, away from its border; our assumption, from
/// looking at covers saved as JPEG, where most were off by three to either side.
const ONE_COLOUR: f64 = 8.0;

/// Steps below this share of the strongest are texture, scratches and noise (a trial over simulated
/// and real pictures; doubling it leaves too few edges).
const SHARE_OF_STRONGEST: f64 = 0.25;

/// A place less steep than this share of the steepest is not fitted at all.
const FAINTEST_SLOPE: f64 = 0.1;

/// A step must be this many times as high as the noise of its level.
const OUT_OF_NOISE: f64 = 4.0;

/// What a step may leave unexplained, as a share of its height: corners and second edges leave more.
const MOST_MISFIT: f64 = 0.12;

/// Fewer edges are none.
pub(super) const FEWEST_EDGES: usize = 4;

/// With a wider median blur the next level shows more of both sides of each edge.
const WIDEST_MEDIAN: f64 = 2.2;

/// The square of a quarter of a pixel: no camera's pixel is narrower.
const SHARPEST_SQUARED: f64 = 0.0625;

/// Cells along and across the strip, and the least width of one, in pixels of the level.
const MOST_COLUMNS: f64 = 24.0;
const MOST_ROWS: f64 = 14.0;
const SMALLEST_CELL: f64 = 6.0;

/// So that one piece of work takes a few milliseconds on a slow phone.
const PIXELS_AT_ONCE: usize = 30_000;
const FITS_AT_ONCE: usize = 6;
