//! Which keys can stay when the doors are grouped anew.
//!
//! Each group may keep one key, each key may stay with one group, and each choice has a weight: first
//! of all how many locks stay untouched. The heaviest choice for all groups together is a bipartite
//! matching, found exactly by augmenting along shortest paths (the Hungarian method on a sparse
//! graph), one group at a time: O(groups · locks · log locks).

use std::cmp::Reverse;
use std::collections::BinaryHeap;

/// For each group, its candidates: a key by number and its weight.
pub(in crate::household) type Candidates = Vec<Vec<(usize, i64)>>;

/// The key each group keeps, if any, so that the weights together are as heavy as can be. Keys are
/// numbered from 0 to below `keys`; weights are above 0.
pub(in crate::household) fn best(candidates: &Candidates, keys: usize) -> Vec<Option<usize>> {
    let chosen = Matching::of(candidates, keys).column_of.into_iter();
    chosen
        .map(|column| column.filter(|&column| column < keys))
        .collect()
}

/// A column is a key, or a group's own "keeps none" (column `keys + group`). The cost of a choice
/// is the heaviest weight less its own, so that none is negative and the cheapest is the heaviest.
struct Matching<'a> {
    candidates: &'a Candidates,
    keys: usize,
    heaviest: i64,
    row_price: Vec<i64>,
    column_price: Vec<i64>,
    row_of: Vec<Option<usize>>,
    column_of: Vec<Option<usize>>,
}

impl<'a> Matching<'a> {
    fn of(candidates: &'a Candidates, keys: usize) -> Self {
        let rows = candidates.len();
        let weights = candidates.iter().flatten().map(|&(_, weight)| weight);
        let mut matching = Self {
            candidates,
            keys,
            heaviest: weights.max().unwrap_or(0),
            row_price: vec![0; rows],
            column_price: vec![0; keys + rows],
            row_of: vec![None; keys + rows],
            column_of: vec![None; rows],
        };
        (0..rows).for_each(|row| matching.insert(row));
        matching
    }

    /// The choices of a row with their reduced costs, none of them negative.
    fn choices(&self, row: usize) -> impl Iterator<Item = (usize, i64)> {
        let real = self.candidates[row].iter().copied();
        real.chain([(self.keys + row, 0)])
            .map(move |(column, weight)| {
                let cost = self.heaviest - weight;
                (
                    column,
                    cost - self.row_price[row] - self.column_price[column],
                )
            })
    }

    /// Gives `row` a column by the shortest augmenting path, which its own "keeps none" bounds.
    fn insert(&mut self, row: usize) {
        let columns = self.row_of.len();
        let mut distance = vec![i64::MAX; columns];
        let mut came_from = vec![row; columns];
        let mut done = vec![false; columns];
        let mut queue = BinaryHeap::new();
        let mut next = Some((row, 0));
        loop {
            if let Some((from, so_far)) = next {
                for (column, cost) in self.choices(from) {
                    if so_far + cost < distance[column] {
                        distance[column] = so_far + cost;
                        came_from[column] = from;
                        queue.push(Reverse((so_far + cost, column)));
                    }
                }
            }
            let Some(Reverse((reached, column))) = queue.pop() else {
                return; // cannot be: a row always reaches its own "keeps none"
            };
            if done[column] {
                next = None;
                continue;
            }
            done[column] = true;
            match self.row_of[column] {
                Some(matched) => next = Some((matched, reached)),
                None => {
                    self.reprice(row, reached, &distance, &done);
                    return self.augment(row, column, &came_from);
                }
            }
        }
    }

    fn reprice(&mut self, row: usize, length: i64, distance: &[i64], done: &[bool]) {
        self.row_price[row] += length;
        for (column, _) in done.iter().enumerate().filter(|&(_, &done)| done) {
            let gain = length - distance[column];
            self.column_price[column] -= gain;
            if let Some(matched) = self.row_of[column] {
                self.row_price[matched] += gain;
            }
        }
    }

    fn augment(&mut self, row: usize, end: usize, came_from: &[usize]) {
        let mut free = end;
        loop {
            let taker = came_from[free];
            self.row_of[free] = Some(taker);
            match self.column_of[taker].replace(free) {
                Some(left) if taker != row => free = left,
                _ => return,
            }
        }
    }
}
