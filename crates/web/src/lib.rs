//! The kitchen's pages, served from the household's own machine.
//!
//! Each page is a thin way to say a sentence of `kitchen`: a form becomes its words, its answer becomes a view struct,
//! a template sets the view on the leaf. Pages work without scripts and without any other machine.

mod ask;
mod asset;
mod choice;
mod door;
mod formula;
mod leaf;
mod pages;
mod serve;

pub use pages::{Pages, build_pages};
pub use serve::{ServeError, Settings, serve};
