//! The answer of a sum at 80 columns, and what a sum asks for.

use almanac::Almanac;
use kitchen::reckon::{Input, Kind, Note, Reckoning, SourceLine, Sum, list_sums};
use kitchen::wording::{as_sentence, capitalize};

use super::say_need;
use crate::cited::{Cited, lay_out_sources};
use crate::leaf::Leaf;
use crate::wrap::wrap;

/// The widest line of the help.
const HELP_WIDTH: usize = 78;

/// What a sum asks for, an input on a line.
pub(super) fn list_inputs(sum: &Sum) -> String {
    let mut lines = Vec::new();
    for input in sum.inputs {
        let said = format!(
            "{}={}{}: {}; {}",
            input.key,
            example_of(sum, input),
            say_need(input.need),
            input.what,
            input.how
        );
        let mut wrapped = wrap(&said, HELP_WIDTH - 4).into_iter();
        lines.extend(wrapped.next().map(|line| format!("  {line}")));
        lines.extend(wrapped.map(|line| format!("      {line}")));
    }
    lines.join("\n")
}

/// A command line that answers it, no wider than a page of help.
pub(super) fn example(sum: &Sum) -> String {
    let mut lines = vec![format!("stillroom reckon {}", sum.name)];
    for typed in sum.example {
        let last = lines.last_mut().expect("the list begins with a line");
        if last.len() + typed.len() + 1 > HELP_WIDTH - 4 {
            lines.push(format!("    {typed}"));
        } else {
            *last += &format!(" {typed}");
        }
    }
    lines.join(" \\\n  ")
}

/// Every sum, with what it asks for.
pub(super) fn lay_out_list(sums: &[&Sum]) -> String {
    let mut leaf = Leaf::head(
        "Sums of the kitchen",
        &[
            "stillroom reckon NAME KEY=VALUE ... answers one; stillroom reckon NAME --help shows how it is worked out, in \
             which range, and whose it is."
                .to_owned(),
        ],
    );
    for sum in sums {
        leaf.section(&format!("{}: {}", sum.name, sum.what));
        for input in sum.inputs {
            leaf.line(
                input.key,
                &format!("{}{}: {}", input.what, say_need(input.need), example_of(sum, input)),
            );
        }
    }
    leaf.section("why: heat going into one jar during a printed process");
    leaf.line("", "stillroom reckon why --help");
    leaf.finish()
}

fn example_of(sum: &Sum, input: &Input) -> String {
    match input.kind {
        Kind::Word(words) => words.join(" or "),
        _ => sum.example_of(input),
    }
}

/// The answer of one sum.
pub(super) fn lay_out(almanac: &Almanac, reckoning: &Reckoning) -> String {
    let what = list_sums()
        .into_iter()
        .find(|sum| sum.name == reckoning.name)
        .map_or_else(|| reckoning.name.to_owned(), |sum| capitalize(sum.what));
    let inputs: Vec<String> = reckoning.inputs.iter().map(|(key, typed)| format!("{key} {typed}")).collect();
    let mut leaf = Leaf::head(&what, &[inputs.join(", ")]);
    for veto in &reckoning.vetoes {
        leaf.frame("STOP", &[as_sentence(&veto.text), format!("Instead: {}.", veto.instead)]);
    }
    leaf.section("It comes to");
    for output in &reckoning.outputs {
        leaf.named("", &output.say());
        leaf.under(&output.name);
    }
    lay_out_notes(&mut leaf, &reckoning.notes);
    leaf.section("Worked out as");
    leaf.line("", reckoning.equation);
    leaf.line("", &as_sentence(reckoning.equation_source));
    let mut cited = Cited::new(almanac);
    for source in &reckoning.sources {
        let marked = cite(&mut cited, source);
        leaf.line(&source.basis, &marked);
    }
    lay_out_sources(&mut leaf, &cited.list());
    leaf.finish()
}

/// The place in its publication, with the number it is listed under.
pub(super) fn cite(cited: &mut Cited<'_>, source: &SourceLine) -> String {
    cited.mark_written(&format!("{}: {}", source.id, source.locator))
}

/// Cautions first, then what was taken, then the rest.
pub(super) fn lay_out_notes(leaf: &mut Leaf, notes: &[Note]) {
    for (code, title) in [
        ("caution", "Take care"),
        ("taken", "Filled in for you"),
        ("printed", "As printed"),
        ("to-know", "To know"),
    ] {
        let said: Vec<String> =
            notes.iter().filter(|note| note.code == code).map(|note| as_sentence(&note.text)).collect();
        if !said.is_empty() {
            leaf.section(title);
            leaf.each(&said);
        }
    }
}
