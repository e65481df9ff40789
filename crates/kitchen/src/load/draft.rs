//! An answer while it is put together: the rules that were found, and what has been said so far.

use almanac::{Almanac, CannerKind, CannerRule, Citation, FoundLoadRule, LoadRuling, LoadTrouble, Noticed};
use measure::Minutes;

use super::answer::{Act, ClockMark, LoadAnswer, LoadClockLine, Outcome, Said};
use super::clock::{Moment, Report};
use super::question::LoadQuestion;

/// What has been said so far.
pub(super) struct Draft<'a> {
    pub(super) almanac: &'a Almanac,
    pub(super) question: &'a LoadQuestion,
    rules: Vec<FoundLoadRule<'a>>,
    clock: Vec<LoadClockLine>,
    because: Vec<Said>,
    acts: Vec<Act>,
}

impl<'a> Draft<'a> {
    /// With the rules for the trouble, its canner and when it was noticed.
    pub(super) fn new(almanac: &'a Almanac, question: &'a LoadQuestion, noticed: Option<Noticed>) -> Self {
        let canner = canner_for_rules(question);
        let rules = almanac.find_load_rules(question.trouble, canner, noticed).collect();
        Self { almanac, question, rules, clock: Vec::new(), because: Vec::new(), acts: Vec::new() }
    }

    /// The rule that lets something happen; none where it is not on file, recalled, or of lower rank.
    pub(super) fn find_permitting(&self, ruling: LoadRuling) -> Option<FoundLoadRule<'a>> {
        self.rules.iter().find(|found| found.rule.ruling == ruling && found.may_permit()).copied()
    }

    /// A rule that throws away, whatever its rank: it takes no permission to be careful.
    pub(super) fn find_discard(&self) -> Option<FoundLoadRule<'a>> {
        self.rules.iter().find(|found| found.rule.ruling == LoadRuling::Discard).copied()
    }

    /// The minutes of a rule: the shorter end, which is the stricter one for a limit.
    pub(super) fn minutes_of(found: FoundLoadRule<'a>) -> Option<Minutes> {
        found.value()?.as_minutes().map(|(low, _)| low)
    }

    /// A canner rule, where it is on file.
    pub(super) fn rule(&self, id: &str) -> Option<&'a CannerRule> {
        self.almanac.rule(id)
    }

    /// Writes a time on the clock.
    pub(super) fn mark(&mut self, at: &Moment, mark: ClockMark, text: impl Into<String>) {
        self.clock.push(LoadClockLine { at: at.clone(), mark, text: text.into() });
    }

    /// Writes down what happened, as it was reported.
    pub(super) fn happened(&mut self, report: Option<&Report>, text: &str) {
        if let Some(report) = report {
            self.mark(report.earliest(), ClockMark::Happened, text);
        }
    }

    /// Says why.
    pub(super) fn explain(&mut self, text: impl Into<String>, citation: Option<&Citation>) {
        self.because.push(Said { text: text.into(), citation: citation.cloned() });
    }

    /// Says what to do.
    pub(super) fn act(&mut self, text: impl Into<String>, citation: Option<&Citation>) {
        self.act_with_care(text, citation, None);
    }

    /// Says what to do, with what to mind while doing it.
    pub(super) fn act_with_care(
        &mut self,
        text: impl Into<String>,
        citation: Option<&Citation>,
        caution: Option<&'static str>,
    ) {
        let said = Said { text: text.into(), citation: citation.cloned() };
        self.acts.push(Act { said, caution });
    }

    /// The whole answer; what only warns is added, and the clock is put in order.
    pub(super) fn finish(mut self, outcome: Outcome, says: impl Into<String>) -> LoadAnswer {
        let warnings = self.rules.iter().filter(|found| found.rule.ruling == LoadRuling::Caution);
        let warnings = warnings.map(|found| Said {
            text: found.rule.rule.to_string(),
            citation: Some(found.citation().clone()),
        });
        let warnings = warnings.collect();
        self.clock.sort_by(|one, other| (&one.at, one.mark).cmp(&(&other.at, other.mark)));
        LoadAnswer {
            question: self.question.clone(),
            outcome,
            says: says.into(),
            clock: self.clock,
            because: self.because,
            acts: self.acts,
            warnings,
        }
    }
}

/// The canner whose rules are looked up. Where none was said the rules are the same for all that it can be.
fn canner_for_rules(question: &LoadQuestion) -> CannerKind {
    use LoadTrouble as T;
    question.canner.unwrap_or(match question.trouble {
        T::PressureLost | T::ForcedCooling | T::WrongVent => CannerKind::Weighted,
        _ => CannerKind::BoilingWater,
    })
}
