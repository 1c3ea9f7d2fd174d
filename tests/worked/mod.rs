//! Cases with figures from outside: published, or derived by hand or with another tool; the source stands
//! in the line above each.

mod adults;
mod arteries;
mod choice;
mod classes;
mod fall;
mod physics;
mod rounding;
mod volumes;
