//! Undo and redo: the household as it was, is, and was before undo.

use super::{Change, Household, Refusal};

/// A household with what it was before, and what it was before that was undone. A pure value, as
/// everything here; at most [`History::MOST`] steps go back.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct History {
    past: Vec<Household>,
    present: Household,
    future: Vec<Household>,
}

impl History {
    /// So many steps can be undone. Our assumption: nobody undoes more one by one. A step keeps whole the
    /// sections that it changed. The largest is that of people: at the limit on needs each change to
    /// a person keeps 1.5 megabytes (measured on 64-bit Linux), a full history 150.
    pub const MOST: usize = 100;

    /// A history that begins with `household`.
    pub fn of(household: Household) -> Self {
        Self {
            present: household,
            ..Self::default()
        }
    }

    /// The household as it is now.
    pub fn present(&self) -> &Household {
        &self.present
    }

    /// After one change; refused as [`Household::with`] refuses.
    pub fn with(&self, change: Change) -> Result<Self, Refusal> {
        Ok(self.then(self.present.with(change)?))
    }

    /// After a step that made the household `next`. What was undone can no longer be redone. A step
    /// that changes nothing is none.
    pub fn then(&self, next: Household) -> Self {
        if next == self.present {
            return self.clone();
        }
        let kept = self.past.len().saturating_sub(Self::MOST - 1);
        let mut past: Vec<Household> = self.past.iter().skip(kept).cloned().collect();
        past.push(self.present.clone());
        Self {
            past,
            present: next,
            future: Vec::new(),
        }
    }

    /// One step back, if there is one.
    pub fn undone(&self) -> Option<Self> {
        let mut past = self.past.clone();
        let mut future = self.future.clone();
        let present = past.pop()?;
        future.push(self.present.clone());
        Some(Self {
            past,
            present,
            future,
        })
    }

    /// One undone step forward again, if there is one.
    pub fn redone(&self) -> Option<Self> {
        let mut past = self.past.clone();
        let mut future = self.future.clone();
        let present = future.pop()?;
        past.push(self.present.clone());
        Some(Self {
            past,
            present,
            future,
        })
    }

    /// The household as it was before the last step: what undo brings back.
    pub fn before(&self) -> Option<&Household> {
        self.past.last()
    }

    /// The household as it was before undo: what redo brings back.
    pub fn after(&self) -> Option<&Household> {
        self.future.last()
    }

    /// How many steps can be undone.
    pub fn steps_back(&self) -> usize {
        self.past.len()
    }

    /// How many undone steps can be redone.
    pub fn steps_forward(&self) -> usize {
        self.future.len()
    }
}
