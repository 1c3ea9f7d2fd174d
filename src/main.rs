//! The binary; see `cli`.

fn main() {}
