//! How large a household may grow. How quick everything is was measured up to a small estate
//! (`benches/household.rs`); at the limits only the record is tested: it can be written and read.
//!
//! The sizes are our assumption: a small estate has about 500 doors, 2,000 copies and 300 holders;
//! the limits are twice that, and five times for copies, because grouping by need cuts many for
//! people who need many doors. Doubling them doubles the largest record.

use super::Refusal;

/// Something of which a household may have only so many.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Limit {
    /// Doors.
    Doors,
    /// Locks.
    Locks,
    /// Keys.
    Keys,
    /// Copies of keys.
    Copies,
    /// Holders.
    Holders,
    /// Ways in without a cylinder.
    Ways,
    /// Pairs of a key and a lock it opens.
    Openings,
    /// Pairs of a holder and a door they need.
    Needs,
    /// Pairs of a holder and a way in they know.
    Knowers,
}

impl Limit {
    /// How many there may be.
    pub const fn most(self) -> usize {
        match self {
            Self::Doors | Self::Ways => 1_000,
            Self::Locks | Self::Keys => 2_000,
            Self::Copies => 10_000,
            Self::Holders => 600,
            Self::Openings => 20_000,
            Self::Needs => 200_000,
            Self::Knowers => 50_000,
        }
    }
}

pub(super) const fn within(count: usize, limit: Limit) -> Result<(), Refusal> {
    if count <= limit.most() {
        Ok(())
    } else {
        Err(Refusal::Full(limit))
    }
}
