//! The book as other crates meet it: stores, views, files, and the world gone wrong.

#![expect(clippy::unwrap_used, reason = "a test ends where the world it made is not as it made it")]

mod asked;
mod faults;
mod files;
mod opened;
mod order;
mod store;
mod told;
mod views;
