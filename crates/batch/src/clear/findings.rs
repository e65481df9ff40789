//! What has been found so far: the verdict only ever gets stricter.

use almanac::{Citation, RuleId, Verdict};

use super::answer::{Because, Cited, Instead, Reason, Rider, name_of};

/// Gathers reasons, offers, riders and sources while a question is judged.
#[derive(Debug)]
pub(crate) struct Findings {
    pub(crate) verdict: Verdict,
    pub(crate) because: Vec<Reason>,
    pub(crate) instead: Vec<Instead>,
    pub(crate) riders: Vec<Rider>,
    pub(crate) sources: Vec<Cited>,
    /// The change rules that decided.
    pub(crate) rules: Vec<RuleId>,
}

impl Findings {
    pub(crate) fn new() -> Self {
        Self {
            verdict: Verdict::Tested,
            because: Vec::new(),
            instead: Vec::new(),
            riders: Vec::new(),
            sources: Vec::new(),
            rules: Vec::new(),
        }
    }

    /// Notes a reason against, with the verdict it brings.
    pub(crate) fn refuse(
        &mut self,
        verdict: Verdict,
        code: Because,
        text: String,
        citation: Option<&Citation>,
    ) {
        self.verdict = self.verdict.max(verdict);
        let reason = Reason { code, text, source: citation.map(name_of) };
        if !self.because.contains(&reason) {
            self.because.push(reason);
        }
        if let Some(citation) = citation {
            self.cite(citation);
        }
    }

    /// Notes what may be done instead.
    pub(crate) fn offer(&mut self, what: &'static str, text: impl Into<String>, citation: Option<&Citation>) {
        let offer = Instead { what, text: text.into(), source: citation.map(name_of) };
        if !self.instead.contains(&offer) {
            self.instead.push(offer);
        }
        if let Some(citation) = citation {
            self.cite(citation);
        }
    }

    /// Notes a hazard or condition.
    pub(crate) fn remind(
        &mut self,
        code: &'static str,
        text: impl Into<String>,
        citation: Option<&Citation>,
    ) {
        let rider = Rider { code, text: text.into(), source: citation.map(name_of) };
        if !self.riders.contains(&rider) {
            self.riders.push(rider);
        }
        if let Some(citation) = citation {
            self.cite(citation);
        }
    }

    /// Notes a change rule that decided.
    pub(crate) fn rule(&mut self, id: &RuleId) {
        if !self.rules.contains(id) {
            self.rules.push(id.clone());
        }
    }

    /// Takes in everything another judging found, each thing once.
    pub(crate) fn take_in(&mut self, other: &Self) {
        self.verdict = self.verdict.max(other.verdict);
        take_in_new(&mut self.because, &other.because);
        take_in_new(&mut self.instead, &other.instead);
        take_in_new(&mut self.riders, &other.riders);
        take_in_new(&mut self.sources, &other.sources);
        take_in_new(&mut self.rules, &other.rules);
    }

    /// Notes a source, once.
    pub(crate) fn cite(&mut self, citation: &Citation) {
        let cited = Cited(citation.clone());
        if !self.sources.contains(&cited) {
            self.sources.push(cited);
        }
    }
}

fn take_in_new<T: Clone + PartialEq>(all: &mut Vec<T>, more: &[T]) {
    for one in more {
        if !all.contains(one) {
            all.push(one.clone());
        }
    }
}
