//! Changes to a form's draft.

use yew::prelude::*;

/// Makes callbacks that change a draft.
pub struct Edit<D: 'static>(pub UseStateHandle<D>);

impl<D: Clone + 'static> Edit<D> {
    /// A callback that takes a value into the draft.
    pub fn with<T: 'static>(&self, change: impl Fn(&mut D, T) + 'static) -> Callback<T> {
        let draft = self.0.clone();
        Callback::from(move |value: T| {
            let mut next = (*draft).clone();
            change(&mut next, value);
            draft.set(next);
        })
    }
}
