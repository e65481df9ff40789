//! Foods and practices named in words: what bars them and what to do instead.

use almanac::{Almanac, Basis, Formula, NotForCanning, Verdict};
use serde::Serialize;

use super::answer::{Because, Cited, Instead, Reason, write_verdict};
use super::findings::Findings;
use super::judge::judge_formula;

/// The refusals that match what a person named in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct RefusedWords {
    /// The strictest of the refusals.
    #[serde(serialize_with = "write_verdict")]
    pub verdict: Verdict,
    /// What bars it.
    pub because: Vec<Reason>,
    /// What to do instead.
    pub instead: Vec<Instead>,
    /// Where all this stands.
    pub sources: Vec<Cited>,
}

/// The refusals that match a food or practice named in words, such as "pumpkin puree" or "garlic in oil". `None`
/// when none matches, which permits nothing.
#[must_use]
pub fn refuse_words(almanac: &Almanac, words: &str) -> Option<RefusedWords> {
    let mut findings = Findings::new();
    for refusal in almanac.find_refusals(words) {
        let verdict = verdict_of(refusal);
        let code = match verdict {
            Verdict::DoNot => Because::BannedPractice,
            Verdict::Tested | Verdict::NotTested => Because::NoRow,
        };
        add_refusal(refusal, verdict, code, &mut findings);
    }
    if findings.because.is_empty() {
        return None;
    }
    let Findings { verdict, because, instead, sources, .. } = findings;
    Some(RefusedWords { verdict, because, instead, sources })
}

/// Why a formula without a food in the process tables gets no process, and what it is kept in instead.
#[must_use]
pub fn refuse_formula(almanac: &Almanac, formula: &Formula) -> RefusedWords {
    let mut findings = Findings::new();
    judge_formula(almanac, formula, &mut findings);
    let Findings { verdict, because, instead, sources, .. } = findings;
    RefusedWords { verdict, because, instead, sources }
}

/// A refusal seen in print is printed as wrong. One that says only that nothing was found is *not tested*: its
/// row was not read anywhere.
fn verdict_of(refusal: &NotForCanning) -> Verdict {
    if refusal.citation.basis == Basis::Read { Verdict::DoNot } else { Verdict::NotTested }
}

/// Notes a refusal, its reason and its way out.
pub(crate) fn add_refusal(refusal: &NotForCanning, verdict: Verdict, code: Because, findings: &mut Findings) {
    let text = format!("{}: {}", refusal.item, refusal.reason);
    findings.refuse(verdict, code, text, Some(&refusal.citation));
    findings.offer("instead", &*refusal.instead, Some(&refusal.citation));
}
