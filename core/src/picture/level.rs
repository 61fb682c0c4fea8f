//! A part of a picture at full size and at halves of it, as it comes in row by row.

/// Halvings: at the last level a pixel stands for 16 by 16.
pub(super) const MOST_HALVINGS: usize = 4;

/// Rows come in whole numbers of these, but for the last.
pub(super) const ROWS_TOGETHER: usize = 1 << MOST_HALVINGS;

/// The picture, each pixel the mean of a square of `2^halvings` pixels. Means are kept as sums, which
/// are whole: 256 pixels of 255 still fit.
pub(super) struct Level {
    pub halvings: usize,
    pub width: usize,
    pub height: usize,
    sums: Vec<u16>,
}

impl Level {
    pub fn new(halvings: usize, full_width: usize, full_height: usize) -> Self {
        let (width, height) = (full_width >> halvings, full_height >> halvings);
        Self {
            halvings,
            width,
            height,
            sums: Vec::with_capacity(width * height),
        }
    }

    /// How many pixels of the picture a pixel is wide.
    pub fn side(&self) -> usize {
        1 << self.halvings
    }

    /// Adds rows of the picture in grey.
    pub fn add_grey(&mut self, grey: impl Iterator<Item = u8>) {
        self.sums.extend(grey.map(u16::from));
    }

    /// Adds what rows from `first_row` on of the level above make here.
    pub fn add_halved(&mut self, finer: &Self, first_row: usize) {
        for row in first_row / 2..finer.rows() / 2 {
            let (upper, lower) = (finer.row(2 * row), finer.row(2 * row + 1));
            let pairs = upper.chunks_exact(2).zip(lower.chunks_exact(2));
            let halved =
                pairs.map(|(upper, lower)| upper.iter().chain(lower).copied().sum::<u16>());
            self.sums.extend(halved.take(self.width));
        }
    }

    /// How many rows are there already.
    pub fn rows(&self) -> usize {
        self.sums.len().checked_div(self.width).unwrap_or(0)
    }

    /// The sums of a row; empty where there is no such row.
    pub fn row(&self, row: usize) -> &[u16] {
        self.sums
            .get(row * self.width..(row + 1) * self.width)
            .unwrap_or(&[])
    }

    /// The mean in grey levels.
    pub fn at(&self, column: usize, row: usize) -> Option<f64> {
        if column >= self.width {
            return None;
        }
        let sum = self.sums.get(row * self.width + column)?;
        Some(f64::from(*sum) * self.grey_of_a_sum())
    }

    pub fn grey_of_a_sum(&self) -> f64 {
        1.0 / (self.side() * self.side()) as f64
    }
}

/// Grey levels of rows of colours, four bytes a pixel; the weights are those of JPEG's own grey
/// (Rec. ITU-R BT.601).
pub(super) fn grey_of_colours(colours: &[u8]) -> impl Iterator<Item = u8> + '_ {
    colours.chunks_exact(4).map(|pixel| {
        let part = |index: usize| pixel.get(index).copied().map_or(0, u32::from);
        ((299 * part(0) + 587 * part(1) + 114 * part(2) + 500) / 1000) as u8
    })
}
