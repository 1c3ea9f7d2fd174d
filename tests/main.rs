//! All tests, one binary: each module is one kind of test.

#![allow(
    missing_docs,
    unreachable_pub,
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::float_cmp,
    reason = "a test that cannot go on should stop with a panic that says where"
)]

mod scene;
mod support;
mod direct;
mod worked;

mod cli;
mod layering;
mod readme;
mod shipped;
mod tables;
mod explain;
mod slips;
mod thresholds;
mod malformed;
mod mutations;
