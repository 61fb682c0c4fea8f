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
    /// blade's uncut edge, so many millimetres above the shallowest depth.
    Steep { uncut_edge_mm: f64 },
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
            Flanks::Steep { uncut_edge_mm } => self.steep_edge(key, x, uncut_edge_mm),
        }
    }

    /// What the deepest of all cuts leaves.
    fn steep_edge(&self, key: &[f64], x: f64, uncut_edge_mm: f64) -> f64 {
        let cuts = self.centres.iter().skip(1).zip(key);
        cuts.map(|(centre, depth)| depth - ((x - centre).abs() - self.flat).max(0.0))
            .fold(-uncut_edge_mm, f64::max)
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
            .map(|&x| self.down(self.edge(key, x), ramp))
            .collect();
        self.sampled(&lines)
    }

    /// How the picture changes with each cut's depth: how a line's shades change with its edge, times
    /// how the edge there changes with the depth.
    fn slopes(&self, key: &[f64]) -> Vec<Vec<f64>> {
        let by_edge: Vec<Vec<f64>> = self
            .lines
            .iter()
            .map(|&x| self.down(self.edge(key, x), |t| -below(t / self.blur)))
            .collect();
        let slope = |cut: usize| {
            let moved = |by: f64| {
                let mut key = key.to_vec();
                key[cut] += by;
                key
            };
            let (deeper, shallower) = (moved(0.01), moved(-0.01));
            let lines: Vec<Vec<f64>> = self
                .lines
                .iter()
                .zip(&by_edge)
                .map(|(&x, shades)| {
                    let share = (self.edge(&deeper, x) - self.edge(&shallower, x)) / 0.02;
                    // Most lines lie beyond the neighbours, where nothing changes.
                    let shades = shades.iter().filter(|_| share != 0.0);
                    shades.map(|shade| share * shade).collect()
                })
                .collect();
            self.sampled(&lines)
        };
        (0..key.len()).map(slope).collect()
    }

    /// For every row of a line, the mean over the pixel's height of what has this antiderivative, the
    /// edge lying at 0.
    fn down(&self, edge: f64, antiderivative: impl Fn(f64) -> f64) -> Vec<f64> {
        let ends: Vec<f64> = (0..=self.rows)
            .map(|row| antiderivative(self.top + row as f64 * self.pixel - edge))
            .collect();
        ends.windows(2)
            .map(|pair| (pair[1] - pair[0]) / self.pixel)
            .collect()
    }

    /// Pixels from lines: each the sum over lines by their share, times the contrast.
    fn sampled(&self, lines: &[Vec<f64>]) -> Vec<f64> {
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

    /// The depths of `size` cuts that fit the picture best. Nothing is known of them: the search
    /// begins at a key whose cuts are all of the shallowest depth, and takes Gauss-Newton steps,
    /// each from how the picture drawn last changes with the depths, until they no longer move.
    /// `None` where they do not come to rest.
    pub fn maximum_likelihood(&self, picture: &[f64], size: usize) -> Option<Vec<f64>> {
        let dot = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
        let mut key = vec![0.0; size];
        for _ in 0..MOST_STEPS {
            let drawn = self.picture(&key);
            let slopes = self.slopes(&key);
            let misfit: Vec<f64> = picture.iter().zip(&drawn).map(|(a, b)| a - b).collect();
            let normal = (0..size)
                .map(|i| {
                    let mut row: Vec<f64> =
                        (0..size).map(|j| dot(&slopes[i], &slopes[j])).collect();
                    row.push(dot(&slopes[i], &misfit));
                    row
                })
                .collect();
            let changes = solve(normal);
            // From far off a step may go too far: no farther than the edge is seen from there.
            let farthest = 2.0 * self.blur;
            for (depth, change) in key.iter_mut().zip(&changes) {
                *depth += change.clamp(-farthest, farthest);
            }
            if changes.iter().all(|change| change.abs() < AT_REST_MM) {
                return Some(key);
            }
        }
        None
    }
}

/// Far fewer than these are needed; a hundredth of the least scatter is far less than it matters.
const MOST_STEPS: usize = 60;
const AT_REST_MM: f64 = 1e-4;

#[test]
fn slopes_are_the_differences_of_pictures() {
    let geometry = super::invented();
    let key = [0.2, 1.1, 0.4, 0.9];
    for flanks in [Flanks::Straight, Flanks::Steep { uncut_edge_mm: 0.5 }] {
        let drawing = Drawing::new(&geometry, flanks, 0.5, 0.6, 8.0);
        for (cut, slope) in drawing.slopes(&key).iter().enumerate() {
            let moved = |by: f64| {
                let mut key = key;
                key[cut] += by;
                drawing.picture(&key)
            };
            for ((more, less), slope) in moved(1e-4).iter().zip(moved(-1e-4)).zip(slope) {
                assert!(
                    ((more - less) / 2e-4 - slope).abs() < 0.02,
                    "{flanks:?} {cut}"
                );
            }
        }
    }
}

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
