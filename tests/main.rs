//! All tests, one binary: each module is one kind of test.

#![allow(
    missing_docs,
    unreachable_pub,
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::float_cmp,
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::print_stdout,
    reason = "a test that cannot go on should stop with a panic that says where"
)]

mod chance;
mod scene;
mod support;
mod demo;
mod direct;
mod worked;
mod worked_pressure;
mod laws_pressure;
mod monte_carlo;
mod gradient;
mod garment_files;

mod cli;
mod layering;
mod laws;
mod readme;
mod sheet;
mod robust;
mod shipped;
mod tables;
mod alarms;
mod explain;
mod findings;
mod guards;
mod hazards;
mod limbs;
mod slips;
mod thresholds;
mod units;
mod malformed;
mod mutations;
