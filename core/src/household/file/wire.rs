//! The record as it stands in the text, apart from the household it tells of.

mod read;
mod write;

use std::borrow::Cow;

use serde::{Deserialize, Serialize};

use super::super::FoundExposure;
use crate::advice::Urgency;

pub(super) const MARK: &str = "keys-and-doors";

/// Written without a copy; read, it is one, for nothing of a record outlives its reading.
type Word<'a> = Cow<'a, str>;

/// What tells a record from other texts.
#[derive(Deserialize)]
pub(super) struct Head<'a> {
    pub(super) version: Option<u32>,
    pub(super) record: Option<Word<'a>>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Record<'a> {
    version: u32,
    record: Word<'a>,
    next: u32,
    doors: Vec<WireDoor<'a>>,
    holders: Vec<WireHolder<'a>>,
    keys: Vec<WireKey<'a>>,
    locks: Vec<WireLock<'a>>,
    ways: Vec<WireWay<'a>>,
    copies: Vec<WireCopy<'a>>,
    prices: WirePrices<'a>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct WireDoor<'a> {
    id: u32,
    kind: Word<'a>,
    decides: Word<'a>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    material: Option<Word<'a>>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    label: Option<Word<'a>>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct WireHolder<'a> {
    id: u32,
    role: Word<'a>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    needs: Option<Vec<u32>>,
    #[serde(default, skip_serializing_if = "is_false")]
    former: bool,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    label: Option<Word<'a>>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct WireKey<'a> {
    id: u32,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    restricted: Option<bool>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    finding: Option<Word<'a>>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    copied: Option<Word<'a>>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct WireLock<'a> {
    id: u32,
    door: u32,
    kind: Word<'a>,
    keys: Vec<u32>,
    arrangement: Word<'a>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    inside: Option<Word<'a>>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    keyway: Option<u8>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    lengths: Option<[u8; 2]>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    reply: Option<Word<'a>>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct WireWay<'a> {
    id: u32,
    door: u32,
    kind: Word<'a>,
    known: Vec<u32>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    given_away: Option<Word<'a>>,
    #[serde(default, skip_serializing_if = "is_false")]
    assumed: bool,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    lost: Vec<WireLoss<'a>>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    reply: Option<Word<'a>>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct WireLoss<'a> {
    loss: Word<'a>,
    who: Vec<u32>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct WireCopy<'a> {
    id: u32,
    key: u32,
    place: Word<'a>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    who: Option<u32>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    safe: Option<u32>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    loss: Option<Word<'a>>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct WirePrices<'a> {
    included: u8,
    items: Vec<WirePrice<'a>>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct WirePrice<'a> {
    item: Word<'a>,
    low: u64,
    high: u64,
}

const fn finding_word(exposure: FoundExposure) -> &'static str {
    match exposure {
        FoundExposure::NotExposed => "not-exposed",
        FoundExposure::CannotTell => "cannot-tell",
        FoundExposure::Exposed(Urgency::Habit) => "exposed-habit",
        FoundExposure::Exposed(Urgency::WhenConvenient) => "exposed-when-convenient",
        FoundExposure::Exposed(Urgency::Soon) => "exposed-soon",
        FoundExposure::Exposed(Urgency::Today) => "exposed-today",
    }
}

const fn urgency_word(urgency: Urgency) -> &'static str {
    match urgency {
        Urgency::Habit => "habit",
        Urgency::WhenConvenient => "when-convenient",
        Urgency::Soon => "soon",
        Urgency::Today => "today",
    }
}

fn is_false(value: &bool) -> bool {
    !value
}
