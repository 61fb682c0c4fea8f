//! Recording a demonstration key: blur, then sample, then noise.

use super::DemonstrationPattern;
use super::outline::{Column, FIELD};
use crate::distribution::{normal_below, normal_density, scatter};
use crate::sight::View;
use crate::units::Millimetres;

/// A small grey picture.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Picture {
    /// Pixels across.
    pub width: usize,
    /// Pixels down.
    pub height: usize,
    /// Rows from the top, pixels from the left: 0 black, 255 white.
    pub shades: Vec<u8>,
}

/// A pixel is as wide at the key as the view's, but for near views, where a screen would not show
/// such small pixels: there the picture has as many pixels as it shows, each the mean of those it
/// stands for.
pub(super) fn of(pattern: DemonstrationPattern, view: &View) -> Picture {
    let sample = view.ground_sample.get().max(SMALLEST_MM);
    let pixel = sample.clamp(FIELD.width / MOST_ACROSS, FIELD.width);
    // The view's blur holds its own pixel's width; a larger pixel adds what it is wider.
    let wider = (pixel * pixel - sample * sample).max(0.0) / 12.0;
    let least = LEAST_BLUR_PIXELS * pixel;
    let blur = libm::hypot(view.blur.get(), wider.sqrt()).clamp(least, MOST_BLUR_MM);
    let width = pixels_in(FIELD.width, pixel);
    let height = pixels_in(FIELD.height, pixel);
    let contrast = view.contrast_to_noise * (pixel / sample).max(1.0);
    let noise = if contrast > 0.0 {
        (STEP / contrast).min(MOST_NOISE)
    } else {
        MOST_NOISE
    };
    let columns = Columns::new(pattern, pixel, height, blur);
    let mut shades = vec![0; width * height];
    for x in 0..width {
        let column = columns.blurred_at(FIELD.left + (x as f64 + 0.5) * pixel);
        for (y, (row, metal)) in shades.chunks_exact_mut(width).zip(column).enumerate() {
            let grain = scatter((y as u64) << 32 | x as u64);
            let shade = GROUND + STEP * metal + noise * grain;
            if let Some(slot) = row.get_mut(x) {
                *slot = (shade + 0.5) as u8;
            }
        }
    }
    Picture {
        width,
        height,
        shades,
    }
}

impl Picture {
    /// The width of the picture at the key, from which a page takes its scale.
    pub const WIDTH_AT_KEY: Millimetres = Millimetres::literal(FIELD.width);
}

/// The key on lines across it, blurred along the lines.
struct Columns {
    spacing: f64,
    height: usize,
    /// How far a line reaches to either side by the blur, in lines.
    reach: i64,
    blur: f64,
    lines: Vec<f64>,
}

impl Columns {
    /// Lines half a standard deviation apart carry all that a Gaussian blur leaves, as long as no
    /// detail of the key falls between them.
    fn new(pattern: DemonstrationPattern, pixel: f64, height: usize, blur: f64) -> Self {
        let count = libm::ceil(FIELD.width / (0.5 * blur).min(WIDEST_SPACING_MM));
        let spacing = FIELD.width / count;
        let mut lines = vec![0.0; count as usize * height];
        let row = |y: f64| (y - FIELD.top) / pixel;
        for (line, metal) in lines.chunks_exact_mut(height).enumerate() {
            let place = FIELD.left + (line as f64 + 0.5) * spacing;
            let Some(Column {
                metal: (top, bottom),
                hole,
            }) = pattern.column(place)
            else {
                continue;
            };
            let mut steps = vec![(top, 1.0), (bottom, -1.0)];
            steps.extend(
                hole.into_iter()
                    .flat_map(|(top, bottom)| [(top, -1.0), (bottom, 1.0)]),
            );
            for (edge, sign) in steps {
                add_step(metal, row(edge), blur / pixel, sign);
            }
        }
        Self {
            spacing,
            height,
            reach: libm::ceil(REACH * blur / spacing) as i64,
            blur,
            lines,
        }
    }

    /// The share of metal down the picture at `place` from the shoulder, blurred both ways.
    fn blurred_at(&self, place: f64) -> Vec<f64> {
        let x = place - FIELD.left;
        let mut sum = vec![0.0; self.height];
        let middle = libm::floor(x / self.spacing) as i64;
        for line in middle - self.reach..=middle + self.reach {
            let Ok(index) = usize::try_from(line) else {
                continue;
            };
            let Some(metal) = self
                .lines
                .get(index * self.height..(index + 1) * self.height)
            else {
                break;
            };
            let apart = ((line as f64 + 0.5) * self.spacing - x) / self.blur;
            let weight = normal_density(apart) * self.spacing / self.blur;
            for (sum, metal) in sum.iter_mut().zip(metal) {
                *sum += weight * metal;
            }
        }
        sum
    }
}

/// Adds a blurred step of height `sign` that rises at `edge`, all in pixels from the top.
fn add_step(metal: &mut [f64], edge: f64, blur: f64, sign: f64) {
    let pixel = |at: f64| (at.max(0.0) as usize).min(metal.len());
    let (start, end) = (pixel(edge - REACH * blur), pixel(edge + REACH * blur + 1.0));
    for (y, slot) in metal.iter_mut().enumerate().take(end).skip(start) {
        *slot += sign * normal_below((y as f64 + 0.5 - edge) / blur);
    }
    metal.iter_mut().skip(end).for_each(|slot| *slot += sign);
}

/// How many pixels cover a length.
fn pixels_in(length: f64, pixel: f64) -> usize {
    (libm::ceil(length / pixel - 1e-9) as usize).max(1)
}

/// Pixels across a near picture: more than a page shows of it.
const MOST_ACROSS: f64 = 320.0;

/// No camera's pixel is smaller at the key.
const SMALLEST_MM: f64 = 1e-9;

/// A blur below a third of a pixel would leave to chance which pixel holds an edge.
const LEAST_BLUR_PIXELS: f64 = 1.0 / 3.0;

/// The key has no detail narrower than this.
const WIDEST_SPACING_MM: f64 = 0.25;

/// Noise beyond this is white or black anyway.
const MOST_NOISE: f64 = 1e3;

/// A wider blur leaves no more of a key this size.
const MOST_BLUR_MM: f64 = 200.0;

/// Standard deviations after which a blurred step or line is complete.
const REACH: f64 = 3.5;

/// Shade of the ground, and by how much metal is brighter.
const GROUND: f64 = 70.0;
const STEP: f64 = 120.0;
