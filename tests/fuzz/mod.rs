//! Fuzzing in process: bytes → files → assessment → every form of the report, over all kinds and commands, with the
//! laws of one truth held against every report that comes out.
//!
//! `TAPELINE_FUZZ_COUNT=1000000 TAPELINE_FUZZ_FROM=1 TAPELINE_FUZZ_KEEP=target/found cargo test --profile proof fuzz_long -- --ignored --nocapture`
//! runs longer; each turn is made of its number alone, so `FROM=n COUNT=1` is that turn again. What breaks a law is
//! written to the folder of `KEEP` as files with a note.

mod case;
mod corpus;
mod found;
mod laws;
mod more;
mod mutate;
mod program;
mod run;
mod shape;
mod texts;
mod turns;
