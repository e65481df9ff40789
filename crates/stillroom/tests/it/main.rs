//! The program as a person meets it: exit code, standard output, standard error.

mod almanac;
mod canners;
mod clear;
mod day;
mod documented;
mod fit;
mod load;
mod program;
mod serve;
mod world;
