//! Whether copies need a card or a contract, of several keys together.

use super::Key;

/// One key that is restricted decides. That none is, is known only where it is known of every one.
pub(super) fn restricted_among<'a>(keys: impl Iterator<Item = &'a Key>) -> Option<bool> {
    let told: Vec<Option<bool>> = keys.map(|key| key.restricted).collect();
    if told.contains(&Some(true)) {
        return Some(true);
    }
    let is_known = !told.is_empty() && !told.contains(&None);
    is_known.then_some(false)
}
