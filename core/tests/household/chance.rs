//! Numbers that look random and are the same on every run.

/// SplitMix64: Steele, Lea and Flood, "Fast Splittable Pseudorandom Number Generators", 2014.
pub struct Chance(u64);

impl Chance {
    pub fn seeded(seed: u64) -> Self {
        Self(seed)
    }

    /// A number from 0 to below `bound`.
    pub fn below(&mut self, bound: usize) -> usize {
        (self.next() % bound as u64) as usize
    }

    /// True once in `times`.
    pub fn once_in(&mut self, times: usize) -> bool {
        self.below(times) == 0
    }

    pub fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }
}
