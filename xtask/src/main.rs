//! Project commands.
fn main() {}
