//! The record of a household: a small JSON text that can be kept in a file and read again.
//!
//! ```text
//! {"version":1,"record":"keys-and-doors","next":12,
//!  "doors":  [{"id":1,"kind":"front-door","decides":"household","material":"wood","label":"..."}],
//!  "holders":[{"id":3,"role":"neighbour","needs":[1],"former":true,"label":"..."}],
//!  "keys":   [{"id":2,"restricted":false,"finding":"exposed-soon",
//!              "copied":"soon"}],
//!  "locks":  [{"id":4,"door":1,"kind":"pin-tumbler","keys":[2],"arrangement":"one-key",
//!              "inside":"thumb-turn","keyway":1,"lengths":[30,35],
//!              "reply":"waiting"}],
//!  "ways":   [{"id":5,"door":1,"kind":"key-safe","known":[3],"given_away":"not-said",
//!              "assumed":true,"lost":[{"loss":"stolen","who":[3]}],"reply":"waiting"}],
//!  "copies": [{"id":6,"key":2,"place":"held","who":3}],
//!  "prices": {"included":0,"items":[{"item":"call-out","low":6000,"high":9000}]}}
//! ```
//!
//! `version` stands first and says how to read the rest; `record` marks the text as one of these.
//! `next` is above every id. What is not known is left out. The names of kinds are those of
//! `id()` of each closed list; a finding is `not-exposed`, `cannot-tell` or `exposed-` with how
//! soon; `copied` says how soon of a key that may have been copied; `assumed` says of a key safe that its
//! code counts as out only while nobody has said how a copy went from there. `reply` is `waiting` or
//! `left-as-it-is`, of those who decide about the lock or way. A copy's place is `held` (`who`),
//! `key-safe` (`safe`), `home` (`who`, if it was given back), `lost` (`who` and `safe`, if known, and `loss`) or `scrapped` (`who`, if known).
//!
//! [`import`] takes a text from anywhere. It reads at most [`MOST_BYTES`], at most
//! [`MOST_NESTING`] brackets deep, and admits every part by the same rules as a change made by
//! hand; labels too. What does not fit is refused as a whole.

mod wire;

use core::fmt;

use super::{Household, LabelRefusal, Refusal};

/// The version this crate writes, and the only one so far.
pub const VERSION: u32 = 1;

/// The largest record that is read, in bytes. A household at every limit needs about half of it.
pub const MOST_BYTES: usize = 8 * 1024 * 1024;

/// How deep brackets may stand in each other. A record has four.
pub const MOST_NESTING: usize = 6;

/// Why a text is no record of a household.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ImportError {
    /// More than [`MOST_BYTES`].
    TooLarge,
    /// Brackets deeper than [`MOST_NESTING`].
    TooDeep,
    /// It ends before it is complete.
    CutShort,
    /// It is no JSON, or a field is missing, unknown, twice there or of the wrong kind.
    Damaged,
    /// It is JSON, but no record of a household.
    Foreign,
    /// A record of a version this page cannot read.
    UnknownVersion(u32),
    /// It holds a label that cannot be taken.
    Label(LabelRefusal),
    /// Its parts do not fit together.
    DoesNotFit(Refusal),
}

/// Why no record is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ExportError {
    /// Safety comes first: nothing is kept. See [`Household::puts_safety_first`].
    SafetyFirst,
    /// It could not be written down.
    CouldNotWrite,
}

/// The household as a record.
///
/// ```
/// use self_check_core::household::{demonstration, file};
/// let household = demonstration::household();
/// let text = file::export(&household)?;
/// assert!(text.starts_with(r#"{"version":1,"#));
/// assert_eq!(file::import(text.as_bytes()), Ok(household));
/// assert_eq!(file::import(&text.as_bytes()[..text.len() - 1]), Err(file::ImportError::CutShort));
/// # Ok::<(), file::ExportError>(())
/// ```
pub fn export(household: &Household) -> Result<String, ExportError> {
    if household.puts_safety_first() {
        return Err(ExportError::SafetyFirst);
    }
    serde_json::to_string(&wire::Record::of(household)).map_err(|_| ExportError::CouldNotWrite)
}

/// The household a record tells of. Nothing of it is taken unless all of it fits.
pub fn import(bytes: &[u8]) -> Result<Household, ImportError> {
    if bytes.len() > MOST_BYTES {
        return Err(ImportError::TooLarge);
    }
    if nesting(bytes) > MOST_NESTING {
        return Err(ImportError::TooDeep);
    }
    let head: wire::Head = read(bytes, ImportError::Foreign)?;
    match (head.record, head.version) {
        (Some(mark), Some(VERSION)) if mark == wire::MARK => {}
        (Some(mark), Some(version)) if mark == wire::MARK => {
            return Err(ImportError::UnknownVersion(version));
        }
        _ => return Err(ImportError::Foreign),
    }
    let record: wire::Record = read(bytes, ImportError::Damaged)?;
    record.household()
}

fn read<'b, T: serde::Deserialize<'b>>(
    bytes: &'b [u8],
    misfit: ImportError,
) -> Result<T, ImportError> {
    serde_json::from_slice(bytes).map_err(|error| match error.classify() {
        serde_json::error::Category::Eof => ImportError::CutShort,
        serde_json::error::Category::Data => misfit,
        serde_json::error::Category::Syntax | serde_json::error::Category::Io => {
            ImportError::Damaged
        }
    })
}

/// How deep brackets stand in each other, those inside of texts left out.
fn nesting(bytes: &[u8]) -> usize {
    let (mut depth, mut deepest) = (0_usize, 0);
    let (mut in_text, mut escaped) = (false, false);
    for &byte in bytes {
        match (in_text, byte) {
            (true, _) if escaped => escaped = false,
            (true, b'\\') => escaped = true,
            (_, b'"') => in_text = !in_text,
            (false, b'[' | b'{') => {
                depth += 1;
                deepest = deepest.max(depth);
            }
            (false, b']' | b'}') => depth = depth.saturating_sub(1),
            _ => {}
        }
    }
    deepest
}

impl From<Refusal> for ImportError {
    fn from(refusal: Refusal) -> Self {
        match refusal {
            Refusal::Label(refusal) => Self::Label(refusal),
            refusal => Self::DoesNotFit(refusal),
        }
    }
}

impl fmt::Display for ImportError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "record refused: {self:?}")
    }
}

impl core::error::Error for ImportError {}

impl fmt::Display for ExportError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "no record: {self:?}")
    }
}

impl core::error::Error for ExportError {}
