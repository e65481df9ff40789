//! What has been found so far: the verdict only ever gets stricter.

use almanac::{Citation, Verdict};

use super::answer::{Because, Cited, Instead, Reason, Rider, name_of};

/// Gathers reasons, offers, riders and sources while a question is judged.
#[derive(Debug)]
pub(crate) struct Findings {
    pub(crate) verdict: Verdict,
    pub(crate) because: Vec<Reason>,
    pub(crate) instead: Vec<Instead>,
    pub(crate) riders: Vec<Rider>,
    pub(crate) sources: Vec<Cited>,
}

impl Findings {
    pub(crate) fn new() -> Self {
        Self {
            verdict: Verdict::Tested,
            because: Vec::new(),
            instead: Vec::new(),
            riders: Vec::new(),
            sources: Vec::new(),
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
        let reason = Reason { code, text };
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

    /// Notes a source, once.
    pub(crate) fn cite(&mut self, citation: &Citation) {
        let cited = Cited(citation.clone());
        if !self.sources.contains(&cited) {
            self.sources.push(cited);
        }
    }
}
