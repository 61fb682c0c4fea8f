//! Putting a few things in order.

/// Puts `items` in order by what `key` gives of each; equals keep their order.
///
/// It inserts one after the other, which is as quick as any way for a dozen. The standard library's
/// way is for long lists; the page would carry some four kilobytes of it for each kind of item.
///
/// ```
/// let mut words = ["pear", "fig", "plum"];
/// self_check_core::order::sort_few(&mut words, |word| word.len());
/// assert_eq!(words, ["fig", "pear", "plum"]);
/// ```
pub fn sort_few<T, K: PartialOrd>(items: &mut [T], key: impl Fn(&T) -> K) {
    for end in 1..items.len() {
        let mut place = end;
        while place > 0 && key(&items[place]) < key(&items[place - 1]) {
            items.swap(place, place - 1);
            place -= 1;
        }
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    proptest! {
        #[test]
        fn order_is_that_of_the_standard_library(mut items in prop::collection::vec((0_u8..8, any::<u8>()), 0..40)) {
            let mut expected = items.clone();
            expected.sort_by_key(|item| item.0);
            sort_few(&mut items, |item| item.0);
            prop_assert_eq!(items, expected);
        }
    }
}
