//! The program as a person meets it: exit code, standard output, standard error.

mod almanac;
mod clear;
mod day;
mod documented;
mod fit;
mod program;
mod slip;
mod world;
