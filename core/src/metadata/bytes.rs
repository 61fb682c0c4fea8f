//! Taking numbers and parts out of bytes that may end anywhere.

/// Bytes, read from the front.
#[derive(Clone, Copy)]
pub(super) struct Bytes<'a>(pub &'a [u8]);

impl<'a> Bytes<'a> {
    /// The next `count` bytes; `None`, and nothing taken, where there are fewer.
    pub fn take(&mut self, count: usize) -> Option<&'a [u8]> {
        let (front, rest) = self.0.split_at_checked(count)?;
        self.0 = rest;
        Some(front)
    }

    pub fn array<const N: usize>(&mut self) -> Option<[u8; N]> {
        self.take(N)?.try_into().ok()
    }

    pub fn byte(&mut self) -> Option<u8> {
        self.array().map(|[byte]| byte)
    }

    pub fn u16_be(&mut self) -> Option<u16> {
        self.array().map(u16::from_be_bytes)
    }

    pub fn u16_le(&mut self) -> Option<u16> {
        self.array().map(u16::from_le_bytes)
    }

    pub fn u32_be(&mut self) -> Option<u32> {
        self.array().map(u32::from_be_bytes)
    }

    pub fn u32_le(&mut self) -> Option<u32> {
        self.array().map(u32::from_le_bytes)
    }
}

/// Whether these bytes fill up a file or a part of it, and tell nothing.
pub(super) fn is_padding(bytes: &[u8]) -> bool {
    bytes
        .iter()
        .all(|byte| matches!(byte, 0 | 0xff | b' ' | b'\r' | b'\n'))
}

/// Something to be looked for, once made and looked for often.
///
/// A file of many megabytes is looked through in leaps: the byte under the last of what is wanted tells
/// how far that can be moved on without missing a place.
///
/// Source: R. N. Horspool, "Practical fast searching in strings", 1980 (from memory).
pub(super) struct Wanted<'a> {
    wanted: &'a [u8],
    leaps: [u8; 256],
}

impl<'a> Wanted<'a> {
    pub const fn new(wanted: &'a [u8]) -> Self {
        assert!(wanted.len() < 256, "a leap is told in a byte");
        let mut leaps = [wanted.len() as u8; 256];
        let mut at = 1;
        while at < wanted.len() {
            leaps[wanted[at - 1] as usize] = (wanted.len() - at) as u8;
            at += 1;
        }
        Self { wanted, leaps }
    }

    pub const fn len(&self) -> usize {
        self.wanted.len()
    }

    /// Where it first stands in `text`; nowhere where nothing is wanted.
    pub fn find_in(&self, text: &[u8]) -> Option<usize> {
        let (&last, before) = self.wanted.split_last()?;
        let mut from = 0;
        loop {
            let byte = *text.get(from + before.len())?;
            if byte == last && text.get(from..)?.starts_with(before) {
                return Some(from);
            }
            from += usize::from(*self.leaps.get(usize::from(byte))?);
        }
    }

    pub fn is_in(&self, text: &[u8]) -> bool {
        self.find_in(text).is_some()
    }
}

#[cfg(test)]
mod tests {
    use super::Wanted;
    use proptest::prelude::*;

    fn find(text: &[u8], wanted: &[u8]) -> Option<usize> {
        Wanted::new(wanted).find_in(text)
    }

    #[test]
    fn nothing_is_nowhere_and_all_is_at_the_front() {
        assert_eq!(find(b"abc", b""), None);
        assert_eq!(find(b"", b"a"), None);
        assert_eq!(find(b"abc", b"abc"), Some(0));
        assert_eq!(find(b"abc", b"abcd"), None);
    }

    proptest! {
        /// Few letters, so that parts of `wanted` come again and again.
        #[test]
        fn first_place_is_found(text in "[abc]{0,60}", wanted in "[abc]{1,6}") {
            prop_assert_eq!(find(text.as_bytes(), wanted.as_bytes()), text.find(&wanted));
        }
    }
}
