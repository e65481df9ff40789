//! The program as a person meets it: exit code, standard output, standard error.

mod after;
mod almanac;
mod book;
mod canners;
mod clear;
mod copied;
mod day;
mod documented;
mod fit;
mod program;
mod reckon;
mod serve;
mod slip;
mod trouble;
mod world;
