//! Keys and doors: against hand-made cases, against brute force, and under laws that hold for any
//! household.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod common;

#[path = "household/agreement.rs"]
mod agreement;
#[path = "household/any.rs"]
mod any;
#[path = "household/brief.rs"]
mod brief;
#[path = "household/chance.rs"]
mod chance;
#[path = "household/codes.rs"]
mod codes;
#[path = "household/compare.rs"]
mod compare;
#[path = "household/costs.rs"]
mod costs;
#[path = "household/days.rs"]
mod days;
#[path = "household/demonstration.rs"]
mod demonstration;
#[path = "household/estate.rs"]
mod estate;
#[path = "household/homes.rs"]
mod homes;
#[path = "household/keeping.rs"]
mod keeping;
#[path = "household/labels.rs"]
mod labels;
#[path = "household/laws.rs"]
mod laws;
#[path = "household/old_keys.rs"]
mod old_keys;
#[path = "household/order.rs"]
mod order;
#[path = "household/partitions.rs"]
mod partitions;
#[path = "household/plans.rs"]
mod plans;
#[path = "household/reach.rs"]
mod reach;
#[path = "household/record.rs"]
mod record;
#[path = "household/refusals.rs"]
mod refusals;
#[path = "household/remembering.rs"]
mod remembering;
#[path = "household/replies.rs"]
mod replies;
#[path = "household/safes.rs"]
mod safes;
#[path = "household/shut.rs"]
mod shut;
#[path = "household/subsets.rs"]
mod subsets;
#[path = "household/truth.rs"]
mod truth;
