//! Pipes, colours, completions, and what is no command at all.

use std::io::Read;
use std::process::{Command, Stdio};

use crate::program::{program, read, run};

#[test]
fn a_closed_pipe_is_no_fault() {
    let mut child = Command::new(assert_cmd::cargo::cargo_bin("stillroom"))
        .args(["almanac", "sources"])
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the program starts");
    drop(child.stdout.take());
    let mut err = String::new();
    child.stderr.take().expect("it was asked for").read_to_string(&mut err).expect("it is text");
    let status = child.wait().expect("the program ends");
    assert_eq!((status.code(), err.as_str()), (Some(0), ""));
}

#[test]
fn text_is_plain_in_a_pipe_and_where_no_color_is_set() {
    let words = ["almanac", "source", "USDA539_15"];
    let piped = run(&words);
    assert!(!piped.out.contains('\u{1b}'), "{}", piped.out);
    let forced = read(program(&words).env("CLICOLOR_FORCE", "1").output().expect("the program starts"));
    assert!(forced.out.contains('\u{1b}'), "a terminal gets bold headings: {}", forced.out);
    let plain =
        program(&words).env("NO_COLOR", "1").env("CLICOLOR_FORCE", "0").output().expect("the program starts");
    assert_eq!(read(plain).out, piped.out);
}

#[test]
fn completions_name_the_commands() {
    for shell in ["bash", "elvish", "fish", "powershell", "zsh"] {
        let ran = run(&["completions", shell]);
        assert_eq!(ran.code, 0, "{shell}");
        assert!(ran.out.contains("almanac"), "{shell}");
    }
}

#[test]
fn what_is_no_command_ends_with_two() {
    for words in
        [["frobnicate"].as_slice(), &["day"], &["day", "solve"], &["fit", "x"], &["completions", "tcl"]]
    {
        let ran = run(words);
        assert_eq!((ran.code, ran.out.as_str()), (2, ""), "{words:?}");
        assert!(!ran.err.is_empty(), "{words:?}");
    }
}
