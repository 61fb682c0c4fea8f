//! Recording a demonstration key: blur, then sample, then noise.

use super::DemonstrationPattern;
use super::outline::{LENGTH_MM, WIDTH_MM};
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
/// such small pixels: there the picture has as many pixels as it shows, with the noise of those it
/// leaves out averaged away.
pub(super) fn of(pattern: DemonstrationPattern, view: &View) -> Picture {
    let across = LENGTH_MM + 2.0 * MARGIN_MM;
    let down = WIDTH_MM + 2.0 * MARGIN_MM;
    let sample = view.ground_sample.get().max(1e-9);
    let pixel = sample.max(across / MOST_ACROSS).min(across);
    // A pixel of this picture averages over its own width.
    let blur = libm::hypot(view.blur.get(), OWN_BLUR_PIXELS * pixel).min(MOST_BLUR_MM);
    let width = (libm::ceil(across / pixel) as usize).max(1);
    let height = (libm::ceil(down / pixel) as usize).max(1);
    let contrast = view.contrast_to_noise * (pixel / sample).max(1.0);
    let noise = if contrast > 0.0 {
        STEP / contrast
    } else {
        STEP
    };
    let columns = Columns::new(pattern, pixel, height, blur);
    let mut shades = vec![0; width * height];
    for x in 0..width {
        let column = columns.blurred_at((x as f64 + 0.5) * pixel - MARGIN_MM);
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
    pub const WIDTH_AT_KEY: Millimetres = Millimetres::literal(LENGTH_MM + 2.0 * MARGIN_MM);
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
    /// Lines half a standard deviation apart carry all that a Gaussian blur leaves.
    fn new(pattern: DemonstrationPattern, pixel: f64, height: usize, blur: f64) -> Self {
        let count = libm::ceil(LENGTH_MM / (0.5 * blur)).max(1.0);
        let spacing = LENGTH_MM / count;
        let mut lines = vec![0.0; count as usize * height];
        for (line, metal) in lines.chunks_exact_mut(height).enumerate() {
            let spans = pattern.metal_at((line as f64 + 0.5) * spacing);
            for (begin, end) in spans.into_iter().flatten() {
                add_step(metal, (begin + MARGIN_MM) / pixel, blur / pixel, 1.0);
                add_step(metal, (end + MARGIN_MM) / pixel, blur / pixel, -1.0);
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

    /// The share of metal down the picture at `x` from the end of the bow, blurred both ways.
    fn blurred_at(&self, x: f64) -> Vec<f64> {
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

/// Empty ground around the key.
const MARGIN_MM: f64 = 3.0;

/// Pixels across a near picture: more than a page shows of it.
const MOST_ACROSS: f64 = 320.0;

/// Standard deviation of a pixel's own width, 1/√12.
const OWN_BLUR_PIXELS: f64 = 0.288_675_134_594_812_9;

/// A wider blur leaves no more of a key this size.
const MOST_BLUR_MM: f64 = 200.0;

/// Standard deviations after which a blurred step or line is complete.
const REACH: f64 = 3.5;

/// Shade of the ground, and by how much metal is brighter.
const GROUND: f64 = 70.0;
const STEP: f64 = 120.0;
