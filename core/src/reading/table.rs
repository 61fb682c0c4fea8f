//! Looking a reading up: monotone cubic interpolation over the logarithm of the ratio.

use super::Reading;
use super::tables::{ROWS, STANDARD_ERRORS};
use crate::key::Family;
use crate::units::{Bits, Keys, Probability};

/// Ratios in the table of each family.
pub const GRID_POINTS: usize = 60;

/// What the standard error of the leaked bits must stay under.
pub const LARGEST_STANDARD_ERROR: Bits = Bits::nearest(0.01);

/// The ratio of step and standard deviation that row number `row` of every table stands for: from
/// 0.05 in even steps of the logarithm to 12.
pub fn ratio_of_row(row: usize) -> f64 {
    FIRST_RATIO * libm::exp(row as f64 * log_spacing())
}

/// The largest standard errors in a family's table: of bits, of the binary logarithm of the tries
/// for an even chance, and of the probabilities within one, three and ten guesses.
pub fn largest_standard_errors(family: Family) -> [f64; 5] {
    STANDARD_ERRORS
        .get(family as usize)
        .map_or([0.0; 5], |errors| errors.map(f64::from))
}

/// Columns of a table: bits leaked, binary logarithms of the tries for an even chance and of the
/// probabilities within one, three and ten guesses.
pub(super) type Row = [f32; COLUMNS];
pub(super) const COLUMNS: usize = 5;

pub(super) fn look_up(family: Family, ratio: f64) -> Reading {
    let nothing = Reading::nothing(family);
    if ratio.is_nan() || ratio <= 0.0 {
        return nothing;
    }
    if ratio >= LAST_RATIO {
        return Reading::one_of(family, Keys::ONE);
    }
    let Some(rows) = ROWS.get(family as usize) else {
        return nothing;
    };
    let [bits, tries, first, three, ten] = if ratio < FIRST_RATIO {
        below_the_grid(&nothing, rows, ratio / FIRST_RATIO)
    } else {
        let place = libm::log(ratio / FIRST_RATIO) / log_spacing();
        core::array::from_fn(|column| interpolate(rows, column, place))
    };
    let secrecy = family.secrecy().get();
    let bits = bits.min(secrecy);
    let chance = |log2: f64, least: f64| Probability::nearest(libm::exp2(log2).max(least));
    let first = chance(first, 0.0);
    let within_three = chance(three, first.get());
    Reading {
        bits_leaked: Bits::nearest(bits),
        keys_left: Keys::nearest(libm::exp2(secrecy - bits)),
        tries_even_chance: Keys::nearest(libm::exp2(tries)),
        first_guess: first,
        within_three,
        within_ten: chance(ten, within_three.get()),
    }
}

/// Below the grid the leaked bits fall with the square of the ratio, and the rest goes to its value
/// for no reading at all in proportion to it.
fn below_the_grid(nothing: &Reading, rows: &[Row; GRID_POINTS], part: f64) -> [f64; COLUMNS] {
    let [row, ..] = rows;
    let limits = [
        0.0,
        libm::log2(nothing.tries_even_chance.get()),
        libm::log2(nothing.first_guess.get()),
        libm::log2(nothing.within_three.get()),
        libm::log2(nothing.within_ten.get()),
    ];
    let mut values = limits;
    for (value, entry) in values.iter_mut().zip(row) {
        *value += part * (f64::from(*entry) - *value);
    }
    let ([bits, ..], [entry, ..]) = (&mut values, row);
    *bits = part * part * f64::from(*entry);
    values
}

/// Cubic Hermite interpolation with slopes by the harmonic mean of the neighbouring differences,
/// which keeps it monotone where the table is (F. N. Fritsch and J. Butland, 1984).
fn interpolate(rows: &[Row; GRID_POINTS], column: usize, place: f64) -> f64 {
    let at = |row: usize| {
        let row = rows.get(row.min(GRID_POINTS - 1));
        row.and_then(|row| row.get(column))
            .map_or(0.0, |&value| f64::from(value))
    };
    let low = (place as usize).min(GRID_POINTS - 2);
    let part = (place - low as f64).clamp(0.0, 1.0);
    let (left, right) = (at(low), at(low + 1));
    let rise = right - left;
    let before = if low == 0 { rise } else { left - at(low - 1) };
    let after = if low + 2 < GRID_POINTS {
        at(low + 2) - right
    } else {
        rise
    };
    let (start, end) = (slope(before, rise), slope(rise, after));
    let rest = 1.0 - part;
    left * rest * rest * (1.0 + 2.0 * part)
        + right * part * part * (3.0 - 2.0 * part)
        + start * part * rest * rest
        - end * part * part * rest
}

/// Slope at a point between two differences: none at a turn.
fn slope(before: f64, after: f64) -> f64 {
    if before * after > 0.0 {
        2.0 * before * after / (before + after)
    } else {
        0.0
    }
}

fn log_spacing() -> f64 {
    libm::log(LAST_RATIO / FIRST_RATIO) / (GRID_POINTS - 1) as f64
}

const FIRST_RATIO: f64 = 0.05;
const LAST_RATIO: f64 = 12.0;

#[cfg(test)]
mod tests;
