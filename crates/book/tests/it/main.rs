//! The book as other crates meet it: stores, views, files, and the world gone wrong.

mod files;
mod store;
mod told;
