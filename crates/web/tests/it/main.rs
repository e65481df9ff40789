//! The pages, asked as a browser asks.

mod app;
mod ask;
mod door;
mod formulas;
