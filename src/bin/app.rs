//! The web entry.

fn main() {}
