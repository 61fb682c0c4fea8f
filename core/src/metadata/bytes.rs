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

/// Where `wanted` first stands in `text`.
pub(super) fn find(text: &[u8], wanted: &[u8]) -> Option<usize> {
    let first = *wanted.first()?;
    let mut from = 0;
    loop {
        let at = from + text.get(from..)?.iter().position(|&byte| byte == first)?;
        if text.get(at..)?.starts_with(wanted) {
            return Some(at);
        }
        from = at + 1;
    }
}
