//! One edge: a Gaussian-blurred step, fitted to the pixels around a place along the edge's own normal.

use super::level::Level;
use crate::distribution::{normal_below, normal_density};

/// A fitted edge. Where it lies is not kept.
#[derive(Clone, Copy, Debug)]
pub(super) struct Step {
    /// Height in grey levels.
    pub height: f64,
    /// Standard deviation of the blur, in pixels of the level, the pixel's own width included.
    pub blur: f64,
    /// Root mean square of what the step leaves unexplained, in grey levels.
    pub misfit: f64,
    /// By how much the picture passes beyond both sides of the step beside the edge, as a share of
    /// the height: nothing for a blurred edge, more for one that was sharpened.
    pub overshoot: f64,
}

/// A pixel near an edge: its place across and along the edge, and its grey level.
struct Pixel {
    across: f64,
    along: f64,
    grey: f64,
}

/// A step at `place`, across whose edge lies the direction `across` (of length 1, towards bright);
/// `None` where the picture ends too near or no step is to be found.
pub(super) fn fit(level: &Level, place: (usize, usize), across: (f64, f64)) -> Option<Step> {
    let pixels = pixels_around(level, place, across)?;
    let mut now = Model::start(&pixels)?;
    let mut misfit = now.misfit(&pixels);
    let mut damping = 1e-3;
    for _ in 0..MOST_ROUNDS {
        let Some(next) = now.improved(&pixels, damping) else {
            break;
        };
        let next_misfit = next.misfit(&pixels);
        if next_misfit < misfit {
            let gained = misfit - next_misfit;
            (now, misfit) = (next, next_misfit);
            damping *= 0.3;
            if gained < 1e-5 * misfit {
                break;
            }
        } else {
            damping *= 8.0;
            if damping > 1e6 {
                break;
            }
        }
    }
    let blur = libm::exp(now.log_blur);
    let is_step = now.height > 0.0
        && blur <= WIDEST
        && now.offset.abs() <= FARTHEST
        && now.turn.abs() <= MOST_TURN;
    is_step.then(|| Step {
        height: now.height,
        blur,
        misfit: (misfit / pixels.len() as f64).sqrt(),
        overshoot: now.overshoot(&pixels),
    })
}

fn pixels_around(
    level: &Level,
    (column, row): (usize, usize),
    (nx, ny): (f64, f64),
) -> Option<Vec<Pixel>> {
    let reach = libm::ceil(libm::hypot(TO_A_SIDE, ALONG)) as usize;
    let mut pixels = Vec::new();
    for y in row.checked_sub(reach)?..=row + reach {
        for x in column.checked_sub(reach)?..=column + reach {
            let (dx, dy) = (x as f64 - column as f64, y as f64 - row as f64);
            let (across, along) = (dx * nx + dy * ny, dy * nx - dx * ny);
            if across.abs() <= TO_A_SIDE && along.abs() <= ALONG {
                let grey = level.at(x, y)?;
                pixels.push(Pixel {
                    across,
                    along,
                    grey,
                });
            }
        }
    }
    Some(pixels)
}

/// Grey = base + height · Φ((across − offset)/blur), its edge turned by a small angle.
#[derive(Clone, Copy)]
struct Model {
    base: f64,
    height: f64,
    offset: f64,
    log_blur: f64,
    turn: f64,
}

impl Model {
    fn start(pixels: &[Pixel]) -> Option<Self> {
        let mean = |keep: fn(f64) -> bool| {
            let kept = pixels.iter().filter(|pixel| keep(pixel.across));
            let (sum, count) = kept.fold((0.0, 0.0), |(s, n), pixel| (s + pixel.grey, n + 1.0));
            (count > 0.0).then_some(sum / count)
        };
        let (dark, bright) = (mean(|across| across < -2.0)?, mean(|across| across > 2.0)?);
        (bright > dark).then_some(Self {
            base: dark,
            height: bright - dark,
            offset: 0.0,
            log_blur: 0.0,
            turn: 0.0,
        })
    }

    /// The edge's frame turned by this model's angle: across and along.
    fn turned(&self, pixel: &Pixel) -> (f64, f64) {
        // To the second order; the angle is small.
        let (cosine, sine) = (1.0 - 0.5 * self.turn * self.turn, self.turn);
        (
            cosine * pixel.across + sine * pixel.along,
            cosine * pixel.along - sine * pixel.across,
        )
    }

    /// Sum of squares of what is left unexplained.
    fn misfit(&self, pixels: &[Pixel]) -> f64 {
        let blur = libm::exp(self.log_blur);
        pixels
            .iter()
            .map(|pixel| {
                let (across, _) = self.turned(pixel);
                let grey = self.base + self.height * normal_below((across - self.offset) / blur);
                (pixel.grey - grey) * (pixel.grey - grey)
            })
            .sum()
    }

    /// One damped Gauss-Newton step.
    fn improved(&self, pixels: &[Pixel], damping: f64) -> Option<Self> {
        let blur = libm::exp(self.log_blur);
        let mut normal = [[0.0; PARTS + 1]; PARTS];
        for pixel in pixels {
            let (across, along) = self.turned(pixel);
            let z = (across - self.offset) / blur;
            let (below, slope) = (normal_below(z), self.height * normal_density(z));
            let left = pixel.grey - self.base - self.height * below;
            let parts = [
                1.0,
                below,
                -slope / blur,
                -slope * z,
                slope * along / blur,
                left,
            ];
            for (row, own) in normal.iter_mut().zip(parts) {
                for (sum, other) in row.iter_mut().zip(parts) {
                    *sum += own * other;
                }
            }
        }
        for (at, row) in normal.iter_mut().enumerate() {
            if let Some(own) = row.get_mut(at) {
                *own *= 1.0 + damping;
                *own += 1e-9;
            }
        }
        let [base, height, offset, log_blur, turn] = solved(normal)?;
        Some(Self {
            base: self.base + base,
            height: self.height + height,
            offset: (self.offset + offset).clamp(-TO_A_SIDE, TO_A_SIDE),
            log_blur: (self.log_blur + log_blur.clamp(-0.7, 0.7)).clamp(SHARPEST_LOG, 2.5),
            turn: (self.turn + turn).clamp(-1.0, 1.0),
        })
    }

    fn overshoot(&self, pixels: &[Pixel]) -> f64 {
        let blur = libm::exp(self.log_blur);
        // Near the edge and farther out, on the bright side and, turned round, on the dark one.
        let mut sums = [(0.0, 0.0); 2];
        for pixel in pixels {
            let (across, _) = self.turned(pixel);
            let z = (across - self.offset) / blur;
            let left = pixel.grey - self.base - self.height * normal_below(z);
            let zone = match z.abs() {
                z if (1.3..3.0).contains(&z) => 0,
                z if z >= 4.0 => 1,
                _ => continue,
            };
            if let Some((sum, count)) = sums.get_mut(zone) {
                *sum += left * z.signum();
                *count += 1.0;
            }
        }
        match sums {
            [(near, near_count), (far, far_count)] if near_count > 0.0 && far_count > 0.0 => {
                (near / near_count - far / far_count) / self.height
            }
            _ => 0.0,
        }
    }
}

/// Solves five equations by elimination; `None` where they do not tell the unknowns apart.
fn solved(mut rows: [[f64; PARTS + 1]; PARTS]) -> Option<[f64; PARTS]> {
    for pivot in 0..PARTS {
        let own = *rows.get(pivot)?;
        let divisor = *own.get(pivot)?;
        if divisor.is_nan() || divisor <= 0.0 {
            return None;
        }
        for (at, row) in rows.iter_mut().enumerate() {
            if at == pivot {
                continue;
            }
            let factor = row.get(pivot)? / divisor;
            for (value, own) in row.iter_mut().zip(own) {
                *value -= factor * own;
            }
        }
    }
    let mut found = [0.0; PARTS];
    for (at, slot) in found.iter_mut().enumerate() {
        let row = rows.get(at)?;
        *slot = row.get(PARTS)? / row.get(at)?;
    }
    found.iter().all(|value| value.is_finite()).then_some(found)
}

/// Base, height, offset, blur and turn.
const PARTS: usize = 5;
const MOST_ROUNDS: usize = 20;

/// Pixels across the edge and along it that the step is fitted to, to either side. Seven across show
/// both plateaus of a step blurred by up to three; a short way along keeps to one edge.
const TO_A_SIDE: f64 = 7.0;
const ALONG: f64 = 3.0;

/// The logarithm of a quarter of a pixel: between two plain areas that meet at the edge of a pixel,
/// as a program would draw them, nothing tells how sharp the step is.
const SHARPEST_LOG: f64 = -1.386;

/// A step outside these was not found but made up: wider than the pixels looked at, or elsewhere.
const WIDEST: f64 = 3.0;
const FARTHEST: f64 = 2.0;
const MOST_TURN: f64 = 0.6;
