//! Closed lists of the core with their words, so that one kind of field serves all of them.

/// A member of a closed list.
pub trait Listed: Copy + PartialEq + 'static {
    /// Every one, in the order in which a page offers them.
    fn all() -> &'static [Self];

    /// Its name in a form field: stable, never shown.
    fn id(self) -> &'static str;

    /// The words a person reads.
    fn words(self) -> &'static str;

    /// The one of this id.
    fn of(id: &str) -> Option<Self> {
        Self::all().iter().copied().find(|one| one.id() == id)
    }
}
