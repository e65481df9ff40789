//! The answer about a load at 80 columns: the clock first, then what to do, then why.

use almanac::{Almanac, Basis, Rank};
use kitchen::load::{ClockMark, LoadAnswer, Said, WHOM_TO_ASK, word_trouble};

use crate::cited::{Cited, lay_out_sources};
use crate::leaf::Leaf;
use kitchen::wording::as_sentence;

/// Lays out the whole answer.
pub(super) fn lay_out_load(almanac: &Almanac, answer: &LoadAnswer) -> String {
    let asked = format!("About {}.", word_trouble(answer.question.trouble));
    let mut leaf = Leaf::head(&answer.says, &[asked]);
    let mut cited = Cited::new(almanac);
    lay_out_clock(&mut leaf, answer);
    leaf.section("Now");
    for (at, act) in answer.acts.iter().enumerate() {
        leaf.gap();
        leaf.line(&(at + 1).to_string(), &as_sentence(&act.said.text));
        if let Some(caution) = act.caution {
            leaf.line("!", &as_sentence(caution));
        }
        mark(&mut leaf, &mut cited, &act.said);
    }
    lay_out_said(&mut leaf, &mut cited, "Why", &answer.because);
    lay_out_said(&mut leaf, &mut cited, "Warned of", &answer.warnings);
    leaf.section("Whom to ask");
    leaf.line("", WHOM_TO_ASK);
    lay_out_sources(&mut leaf, &cited.list());
    leaf.finish()
}

fn lay_out_clock(leaf: &mut Leaf, answer: &LoadAnswer) {
    if answer.clock.is_empty() {
        return;
    }
    leaf.section("The clock");
    let mut day = String::new();
    for line in &answer.clock {
        let its_day = line.at.day_in_words();
        if its_day != day {
            leaf.gap();
            leaf.line("", &format!("{its_day}:"));
            day = its_day;
        }
        match line.mark {
            ClockMark::Happened => leaf.line(&line.at.clock(), &line.text),
            ClockMark::VentUntil | ClockMark::Ends | ClockMark::Limit => {
                leaf.named(&line.at.clock(), &line.text);
            }
        }
    }
}

fn lay_out_said(leaf: &mut Leaf, cited: &mut Cited<'_>, title: &str, said: &[Said]) {
    if said.is_empty() {
        return;
    }
    leaf.section(title);
    for one in said {
        leaf.gap();
        leaf.line("", &as_sentence(&one.text));
        mark(leaf, cited, one);
    }
}

/// Where it stands, and whether that is less than print.
fn mark(leaf: &mut Leaf, cited: &mut Cited<'_>, said: &Said) {
    let Some(citation) = &said.citation else { return };
    let place = cited.mark(citation);
    match (citation.basis, citation.rank) {
        (Basis::Memory, _) => leaf.under(&format!("Recalled, not seen in print; it only warns. {place}")),
        (_, Rank::Lower) => leaf.under(&format!("A source of lower rank; it only warns. {place}")),
        (_, Rank::Full) => leaf.under(&place),
    }
}
