//! Owns the client's pages: plain words, no pressures, worded by urgency, in a language of choice.
//!
//! Source: the warnings follow published case reports (numbness at a tight edge: Saudi J Anaesth
//! 2016;10:462) and the consensus on infection of a swollen limb; care lines are common practice.

mod garment;
mod none;
mod matters;
mod clinic;
mod warnings;
mod leaf;

pub(super) use leaf::client;
