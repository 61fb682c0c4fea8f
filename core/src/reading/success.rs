//! The chance of success within a number of tries, over all onlookers.

use super::posterior::Posterior;

/// Numbers of tries at which the chance of success is kept: each one up to [`LISTED`], then eight
/// to the octave up to the number of keys.
pub(super) fn tries_grid(keys: f64) -> Vec<f64> {
    let mut grid: Vec<f64> = (1..=LISTED).map(|tries| tries as f64).collect();
    let mut octave_part = 1;
    loop {
        let tries = LISTED as f64 * libm::exp2(f64::from(octave_part) / 8.0);
        if tries >= keys {
            break;
        }
        grid.push(tries);
        octave_part += 1;
    }
    grid.retain(|&tries| tries < keys);
    grid.push(keys);
    grid
}

/// So many of the likeliest keys are listed one by one; further ones are counted in ranks.
pub(super) const LISTED: usize = 16;

/// For each entry of `grid`, the probability that one of so many likeliest keys is the right one.
pub(super) fn chances(
    posterior: &Posterior<'_>,
    log_total: f64,
    grid: &[f64],
    chances: &mut Vec<f64>,
) {
    chances.clear();
    let mut sum = 0.0;
    for probability in posterior.likeliest(LISTED.min(grid.len()), log_total) {
        sum += probability;
        chances.push(sum.min(1.0));
    }
    // With the listed keys all but certain, the rest need not be ranked.
    if sum < 1.0 - 1e-6 {
        chances_by_rank(posterior, grid.get(chances.len()..).unwrap_or(&[]), chances);
    }
    chances.resize(grid.len(), 1.0);
}

/// Counts keys by how far they fall short of the likeliest one, in 384 steps over the range of all
/// keys or over the first 24 nats of it, by one forward pass over the cuts.
///
/// A step is 1/16 nat at most. Rounding each cut's shortfall to whole steps swaps keys that are
/// nearly alike, which moves one onlooker's chance by less than 0.01 and the mean over onlookers by
/// less than 0.001 (both held by a test); what lies below 24 nats is less than the number of keys
/// times e^-24, 0.00003 for the largest family.
fn chances_by_rank(posterior: &Posterior<'_>, grid: &[f64], chances: &mut Vec<f64>) {
    let depths = posterior.chain.depths;
    let worst = |cut: &[f64]| -cut.iter().copied().fold(0.0, f64::min);
    let range: f64 = posterior.log_weights.chunks_exact(depths).map(worst).sum();
    // The smallest step keeps the readings of no worth, whose keys are all alike, in range.
    let step_nats = range.clamp(1e-9, RANGE_NATS) / STEPS;
    let shortfalls: Vec<usize> = posterior
        .log_weights
        .iter()
        .map(|&log| libm::round((-log / step_nats).min(1e9)) as usize)
        .collect();
    let smallest = smallest_total(posterior, &shortfalls);
    let size = smallest + STEPS as usize + posterior.chain.cuts;
    let counts = counts_by_shortfall(posterior, &shortfalls, depths, size);
    let weight = |step: usize| libm::exp(-((step - smallest) as f64) * step_nats);
    let ranks = counts.iter().enumerate().skip(smallest);
    let ranks: Vec<(f64, f64)> = ranks
        .filter(|&(_, &count)| count > 0.0)
        .map(|(step, &count)| (count, count * weight(step)))
        .collect();
    let total: f64 = ranks.iter().map(|(_, mass)| mass).sum();
    let (mut keys, mut reached) = (0.0, 0.0);
    let mut ranks = ranks.into_iter().peekable();
    for &tries in grid {
        while let Some((count, mass)) = ranks.next_if(|(count, _)| keys + count <= tries) {
            keys += count;
            reached += mass;
        }
        let part = ranks
            .peek()
            .map_or(0.0, |(count, mass)| (tries - keys) / count * mass);
        let chance = ((reached + part) / total).min(1.0);
        chances.push(chances.last().map_or(chance, |last| chance.max(*last)));
    }
}

/// The smallest total shortfall of any key: 0 unless the rule forbids the likeliest depths.
fn smallest_total(posterior: &Posterior<'_>, shortfalls: &[usize]) -> usize {
    let chain = posterior.chain;
    let mut cuts = shortfalls.chunks_exact(chain.depths).rev();
    let mut best = cuts.next().map_or_else(Vec::new, <[usize]>::to_vec);
    for own in cuts {
        best = own
            .iter()
            .enumerate()
            .map(|(depth, shortfall)| {
                let later = best.get(chain.window(depth)).unwrap_or(&[]);
                shortfall + later.iter().min().unwrap_or(&0)
            })
            .collect();
    }
    best.into_iter().min().unwrap_or(0)
}

/// For each total shortfall below `size`, the number of keys. Whole numbers below 2^53, so that
/// adding and taking away are exact.
fn counts_by_shortfall(
    posterior: &Posterior<'_>,
    shortfalls: &[usize],
    depths: usize,
    size: usize,
) -> Vec<f64> {
    let mut cuts = shortfalls.chunks_exact(depths);
    let mut ending = vec![0.0; depths * size];
    for (ends, &shortfall) in ending
        .chunks_exact_mut(size)
        .zip(cuts.next().unwrap_or(&[]))
    {
        if let Some(slot) = ends.get_mut(shortfall) {
            *slot = 1.0;
        }
    }
    let mut longer = vec![0.0; depths * size];
    let mut window_sum = vec![0.0; size];
    for own in cuts {
        window_sum.fill(0.0);
        let mut window = 0..0;
        let row = |depth: usize| ending.get(depth * size..(depth + 1) * size).unwrap_or(&[]);
        for (depth, (longer, &shortfall)) in longer.chunks_exact_mut(size).zip(own).enumerate() {
            let wanted = posterior.chain.window(depth);
            for entering in window.end..wanted.end {
                add(&mut window_sum, row(entering), 1.0);
            }
            for leaving in window.start..wanted.start {
                add(&mut window_sum, row(leaving), -1.0);
            }
            window = wanted;
            let (before, after) = longer.split_at_mut(shortfall.min(size));
            before.fill(0.0);
            after
                .iter_mut()
                .zip(&window_sum)
                .for_each(|(slot, count)| *slot = *count);
        }
        core::mem::swap(&mut ending, &mut longer);
    }
    let mut sum = vec![0.0; size];
    ending
        .chunks_exact(size)
        .for_each(|ends| add(&mut sum, ends, 1.0));
    sum
}

fn add(sum: &mut [f64], values: &[f64], sign: f64) {
    sum.iter_mut()
        .zip(values)
        .for_each(|(slot, value)| *slot += sign * value);
}

/// The number of tries, not necessarily whole, at which the chance reaches one half.
pub(super) fn tries_for_an_even_chance(grid: &[f64], chances: &[f64]) -> f64 {
    let mut before: Option<(f64, f64)> = None;
    for (&tries, &chance) in grid.iter().zip(chances) {
        if chance >= 0.5 {
            let Some((fewer, lower)) = before else {
                return tries;
            };
            let part = (0.5 - lower) / (chance - lower);
            return if tries <= LISTED as f64 {
                fewer + part * (tries - fewer)
            } else {
                fewer * libm::exp(part * libm::log(tries / fewer))
            };
        }
        before = Some((tries, chance));
    }
    grid.last().copied().unwrap_or(1.0)
}

const STEPS: f64 = 384.0;
const RANGE_NATS: f64 = 24.0;

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::super::best_first::tests::all_sorted;
    use super::*;
    use crate::differs::CutRule;
    use crate::reading::chain::Chain;
    use crate::reading::sample::Sample;

    #[test]
    fn chances_by_rank_equal_a_sorted_list_of_all_keys() {
        let chain = Chain::new(&CutRule::new(5, 8, 4)).unwrap();
        let grid = tries_grid(chain.keys());
        let sample = Sample {
            points: 48,
            shifts: 1,
            seed: 8,
        };
        for ratio in [0.05, 0.3, 1.0, 2.0, 4.0] {
            let mut mean_difference = vec![0.0; grid.len()];
            for point in sample.points(0) {
                let mut key = [0; 5];
                chain.key(|cut| point.coordinate(cut), &mut key);
                let pairs = [
                    point.normal_pair(5),
                    point.normal_pair(7),
                    point.normal_pair(9),
                ];
                let errors = [pairs[0].0, pairs[0].1, pairs[1].0, pairs[1].1, pairs[2].0];
                let posterior = Posterior::new(&chain, &key, &errors, ratio);
                let all = all_sorted(&posterior);
                let mut found = Vec::new();
                let log_total = posterior.uncertainty().log_total;
                chances(&posterior, log_total, &grid, &mut found);
                for ((tries, chance), mean) in grid.iter().zip(&found).zip(&mut mean_difference) {
                    let whole = tries.floor() as usize;
                    let sum: f64 = all.iter().take(whole).sum();
                    let next = all.get(whole).map_or(0.0, |p| p * tries.fract());
                    let difference = chance - sum - next;
                    let tolerance = if whole <= LISTED { 1e-12 } else { 1e-2 };
                    assert!(
                        difference.abs() < tolerance,
                        "{ratio} {tries}: {difference}"
                    );
                    *mean += difference / f64::from(sample.points);
                }
            }
            assert!(
                mean_difference.iter().all(|mean| mean.abs() < 1e-3),
                "{mean_difference:?}"
            );
        }
    }

    #[test]
    fn tries_grid_ends_at_the_number_of_keys() {
        assert_eq!(tries_grid(3.0), [1.0, 2.0, 3.0]);
        assert_eq!(tries_grid(1.0), [1.0]);
        let grid = tries_grid(79_666.0);
        assert_eq!(grid.last(), Some(&79_666.0));
        assert!(grid.windows(2).all(|pair| pair[0] < pair[1]));
    }

    #[test]
    fn even_chance_is_interpolated_between_tries() {
        let grid = tries_grid(100.0);
        let mut chances = vec![1.0; grid.len()];
        assert_eq!(tries_for_an_even_chance(&grid, &chances), 1.0);
        chances[0] = 0.4;
        chances[1] = 0.6;
        assert!((tries_for_an_even_chance(&grid, &chances) - 1.5).abs() < 1e-12);
    }
}
