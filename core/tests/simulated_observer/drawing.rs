//! Drawing a key's edge in two dimensions as a camera records it, and reading it back.

use self_check_core::key::Geometry;

/// A camera and the place of a key's cuts before it.
pub struct Drawing {
    /// Centres of the cuts, with a neighbour of known depth at either end.
    centres: Vec<f64>,
    flat: f64,
    flanks: Flanks,
    pixel: f64,
    blur: f64,
    contrast: f64,
    rows: usize,
    top: f64,
    lines: Vec<f64>,
    /// For each column of pixels, the share of every line.
    weights: Vec<Vec<f64>>,
}

/// How the blade's edge runs between two cuts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Flanks {
    /// In straight lines from flat to flat: what the model takes them to be.
    Straight,
    /// As a cutter leaves them whose sides stand at a right angle: up to the next cut's, or to the
    /// uncut edge, half a millimetre above the shallowest depth.
    Steep,
}

impl Drawing {
    pub fn new(geometry: &Geometry, flanks: Flanks, pixel: f64, blur: f64, contrast: f64) -> Self {
        let pitch = geometry.pitch.get();
        let centres: Vec<f64> = (0..geometry.cuts + 2)
            .map(|place| f64::from(place) * pitch)
            .collect();
        let span = f64::from(geometry.depths) * geometry.step.get();
        let top = -(5.0 * blur + span);
        let rows = ((2.0 * -top + span) / pixel).ceil() as usize;
        let (left, right) = (-5.0 * blur, centres.last().unwrap() + 5.0 * blur);
        let spacing = (pixel / 4.0).min(blur / 4.0);
        let lines: Vec<f64> = (0..((right - left + 10.0 * blur) / spacing) as usize)
            .map(|line| left - 5.0 * blur + (line as f64 + 0.5) * spacing)
            .collect();
        let weights = (0..((right - left) / pixel) as usize)
            .map(|column| {
                let start = left + column as f64 * pixel;
                lines
                    .iter()
                    .map(|line| {
                        let share =
                            below((start + pixel - line) / blur) - below((start - line) / blur);
                        share * spacing / pixel
                    })
                    .collect()
            })
            .collect();
        Self {
            centres,
            flat: 0.5 * geometry.flat.get(),
            flanks,
            pixel,
            blur,
            contrast,
            rows,
            top,
            lines,
            weights,
        }
    }

    fn edge(&self, key: &[f64], x: f64) -> f64 {
        match self.flanks {
            Flanks::Straight => self.straight_edge(key, x),
            Flanks::Steep => self.steep_edge(key, x),
        }
    }

    /// What the deepest of all cuts leaves.
    fn steep_edge(&self, key: &[f64], x: f64) -> f64 {
        let cuts = self.centres.iter().skip(1).zip(key);
        cuts.map(|(centre, depth)| depth - ((x - centre).abs() - self.flat).max(0.0))
            .fold(-UNCUT_EDGE_MM, f64::max)
    }

    /// Flats at the cuts, straight lines between them.
    fn straight_edge(&self, key: &[f64], x: f64) -> f64 {
        let known = 0.0;
        let depth = |place: usize| {
            place
                .checked_sub(1)
                .and_then(|cut| key.get(cut).copied())
                .unwrap_or(known)
        };
        for (place, pair) in self.centres.windows(2).enumerate() {
            if x <= pair[1] {
                let (from, to) = (pair[0] + self.flat, pair[1] - self.flat);
                let part = ((x - from) / (to - from)).clamp(0.0, 1.0);
                return depth(place) + part * (depth(place + 1) - depth(place));
            }
        }
        known
    }

    /// Every pixel's shade, noise having the standard deviation 1.
    pub fn picture(&self, key: &[f64]) -> Vec<f64> {
        // Mean of a blurred step over a pixel's height, by its antiderivative.
        let ramp = |t: f64| t * below(t / self.blur) + self.blur * density(t / self.blur);
        let lines: Vec<Vec<f64>> = self
            .lines
            .iter()
            .map(|&x| {
                let edge = self.edge(key, x);
                (0..self.rows)
                    .map(|row| {
                        let start = self.top + row as f64 * self.pixel - edge;
                        (ramp(start + self.pixel) - ramp(start)) / self.pixel
                    })
                    .collect()
            })
            .collect();
        let mut shades = Vec::with_capacity(self.rows * self.weights.len());
        for weights in &self.weights {
            let mut column = vec![0.0; self.rows];
            for (line, weight) in lines.iter().zip(weights) {
                if *weight > 1e-12 {
                    for (sum, shade) in column.iter_mut().zip(line) {
                        *sum += self.contrast * weight * shade;
                    }
                }
            }
            shades.append(&mut column);
        }
        shades
    }

    /// How the picture changes with each cut's depth, by differences.
    pub fn slopes(&self, key: &[f64]) -> Vec<Vec<f64>> {
        (0..key.len())
            .map(|cut| {
                let moved = |by: f64| {
                    let mut key = key.to_vec();
                    key[cut] += by;
                    self.picture(&key)
                };
                let (more, less) = (moved(0.01), moved(-0.01));
                more.iter()
                    .zip(&less)
                    .map(|(a, b)| (a - b) / 0.02)
                    .collect()
            })
            .collect()
    }

    /// The depths that fit the picture best, found from `start` by Gauss-Newton steps.
    pub fn maximum_likelihood(
        &self,
        picture: &[f64],
        start: &[f64],
        slopes: &[Vec<f64>],
    ) -> Vec<f64> {
        let size = start.len();
        let dot = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
        let mut key = start.to_vec();
        for _ in 0..2 {
            let drawn = self.picture(&key);
            let misfit: Vec<f64> = picture.iter().zip(&drawn).map(|(a, b)| a - b).collect();
            let normal = (0..size)
                .map(|i| {
                    let mut row: Vec<f64> =
                        (0..size).map(|j| dot(&slopes[i], &slopes[j])).collect();
                    row.push(dot(&slopes[i], &misfit));
                    row
                })
                .collect();
            for (depth, change) in key.iter_mut().zip(solve(normal)) {
                *depth += change;
            }
        }
        key
    }
}

/// How far the blade's uncut edge lies above the shallowest depth.
const UNCUT_EDGE_MM: f64 = 0.5;

/// Every key of the family whose neighbours differ by at most `max_step`.
pub fn all_keys(geometry: &Geometry, max_step: usize) -> Vec<Vec<f64>> {
    let (cuts, depths) = (u32::from(geometry.cuts), usize::from(geometry.depths));
    (0..depths.pow(cuts))
        .map(|number| {
            (0..cuts)
                .map(|cut| number / depths.pow(cut) % depths)
                .collect()
        })
        .filter(|key: &Vec<usize>| {
            key.windows(2)
                .all(|pair| pair[0].abs_diff(pair[1]) <= max_step)
        })
        .map(|key| {
            key.iter()
                .map(|&depth| depth as f64 * geometry.step.get())
                .collect()
        })
        .collect()
}

/// Solves a linear system given with its right-hand side as last column, by elimination with
/// pivoting.
pub fn solve(mut rows: Vec<Vec<f64>>) -> Vec<f64> {
    let size = rows.len();
    for column in 0..size {
        let pivot = (column..size)
            .max_by(|&a, &b| rows[a][column].abs().total_cmp(&rows[b][column].abs()))
            .unwrap();
        rows.swap(column, pivot);
        let pivot = rows[column].clone();
        for (other, row) in rows.iter_mut().enumerate() {
            if other != column {
                let factor = row[column] / pivot[column];
                row.iter_mut()
                    .zip(&pivot)
                    .for_each(|(entry, pivot)| *entry -= factor * pivot);
            }
        }
    }
    (0..size)
        .map(|row| rows[row][size] / rows[row][row])
        .collect()
}

fn below(z: f64) -> f64 {
    0.5 * libm::erfc(-z / std::f64::consts::SQRT_2)
}

fn density(z: f64) -> f64 {
    (-0.5 * z * z).exp() / std::f64::consts::TAU.sqrt()
}
