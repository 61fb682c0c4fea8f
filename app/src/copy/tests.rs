//! Every text of the product, gathered page by page, and what must hold for all of them.

mod gathered;
mod keys;
mod readability;
mod wording;
