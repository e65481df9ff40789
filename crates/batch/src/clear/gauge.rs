//! What a dial gauge's error and its last test mean for a process. A gauge may refuse and may raise the reading
//! that is held; it never lowers it. A weighted gauge is never corrected.

use almanac::{Almanac, CannerKind, Process, Verdict};
use measure::Pressure;

use super::answer::Because;
use super::findings::Findings;
use super::question::{ClearError, ClearQuestion, Gauge, Tested};

/// The largest error that is taken for one: no home canner's dial runs past it.
const LARGEST_ERROR: Pressure = Pressure::psi(30.0);

/// How readings are held on the gauge asked about.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Holding {
    /// There is no dial.
    NoDial,
    /// The printed reading.
    AsPrinted,
    /// The printed reading and the error, up to the next whole pound.
    Above(Pressure),
}

impl Holding {
    /// The reading to keep for a process, never below the printed one.
    pub(crate) fn reading_for(self, process: &Process) -> Option<Pressure> {
        self.reading_at(process.pressure()?)
    }

    /// The reading to keep for a pressure, never below it; none without a dial.
    pub(crate) fn reading_at(self, printed: Pressure) -> Option<Pressure> {
        match self {
            Self::NoDial => None,
            Self::AsPrinted => Some(printed),
            Self::Above(error) => Some(round_up_to_whole_pound(printed + error).max(printed)),
        }
    }
}

/// Refuses an error that no gauge has.
pub(crate) fn require_plausible(question: &ClearQuestion) -> Result<(), ClearError> {
    let Some(error) = question.gauge.and_then(|gauge| gauge.error) else { return Ok(()) };
    let psi = error.as_psi();
    if psi.is_finite() && psi.abs() <= LARGEST_ERROR.as_psi() {
        return Ok(());
    }
    Err(ClearError::GaugeErrorOutOfRange { psi, limit: LARGEST_ERROR.as_psi() })
}

/// Judges the gauge by the rules on file.
pub(crate) fn judge_gauge(
    almanac: &Almanac,
    canner: CannerKind,
    gauge: Option<Gauge>,
    findings: &mut Findings,
) -> Holding {
    if canner != CannerKind::Dial {
        return Holding::NoDial;
    }
    let Gauge { error, tested } = gauge.unwrap_or(Gauge { error: None, tested: Tested::NotSaid });
    if matches!(tested, Tested::Overdue | Tested::Never) {
        refuse_untested(almanac, tested, findings);
    }
    let error = error.unwrap_or(Pressure::ZERO);
    if error == Pressure::ZERO {
        return Holding::AsPrinted;
    }
    if refuse_far_off(almanac, error, findings) {
        return Holding::AsPrinted;
    }
    if error > Pressure::ZERO {
        hold_above(almanac, error, findings)
    } else {
        hold_printed(almanac, error, findings)
    }
}

fn refuse_untested(almanac: &Almanac, tested: Tested, findings: &mut Findings) {
    let Some(rule) = almanac.rule("gauge-untested") else { return };
    let when = if tested == Tested::Never { "was never tested" } else { "is overdue for its yearly test" };
    let text = format!("the dial gauge {when}, so its reading says nothing; have it tested first");
    findings.refuse(Verdict::NotTested, Because::GaugeUntested, text, Some(&rule.citation));
    let check = almanac.rule("pc-gauge-check").map(|rule| &rule.citation);
    findings.offer(
        "gauge",
        "have the gauge tested, often free of charge at the local extension office",
        check,
    );
    offer_weight(almanac, findings);
}

/// Whether the gauge is off by as much as calls for a new one. Without that rule no error can be judged.
fn refuse_far_off(almanac: &Almanac, error: Pressure, findings: &mut Findings) -> bool {
    let rule = almanac.rule("gauge-threshold-used");
    let limit = rule.and_then(|rule| rule.value?.as_pressure()).map(|(low, _)| low);
    let text = match limit {
        Some(limit) if error.as_psi().abs() < limit.as_psi() => return false,
        Some(limit) => format!(
            "the dial gauge is off by {} psi; at {} psi or more it is replaced, not corrected",
            error.as_psi().abs(),
            limit.as_psi()
        ),
        None => "no rule on file says how far a dial gauge may be off".to_owned(),
    };
    findings.refuse(Verdict::NotTested, Because::GaugeOff, text, rule.map(|rule| &rule.citation));
    findings.offer("gauge", "replace the gauge", rule.map(|rule| &rule.citation));
    offer_weight(almanac, findings);
    true
}

fn hold_above(almanac: &Almanac, error: Pressure, findings: &mut Findings) -> Holding {
    let Some(rule) = almanac.rule("gauge-reads-high") else {
        let text = "no rule on file says how to hold a gauge that reads high".to_owned();
        findings.refuse(Verdict::NotTested, Because::GaugeOff, text, None);
        return Holding::AsPrinted;
    };
    let text = format!(
        "the gauge reads {} psi high: keep the reading named to hold, which is the printed one and the error, up \
         to the next whole pound",
        error.as_psi()
    );
    findings.remind("gauge-reads-high", text, Some(&rule.citation));
    Holding::Above(error)
}

fn hold_printed(almanac: &Almanac, error: Pressure, findings: &mut Findings) -> Holding {
    let Some(rule) = almanac.rule("gauge-reads-low") else {
        let text = "no rule on file says how to hold a gauge that reads low".to_owned();
        findings.refuse(Verdict::NotTested, Because::GaugeOff, text, None);
        return Holding::AsPrinted;
    };
    let low = error.as_psi().abs();
    let text = format!("the gauge reads {low} psi low: nothing is taken off, keep the printed reading");
    findings.remind("gauge-reads-low", text, Some(&rule.citation));
    Holding::AsPrinted
}

fn offer_weight(almanac: &Almanac, findings: &mut Findings) {
    if let Some(rule) = almanac.rule("gauge-weighted") {
        findings.offer("canner", "a weighted gauge needs no test", Some(&rule.citation));
    }
}

fn round_up_to_whole_pound(pressure: Pressure) -> Pressure {
    /// What adding two readings may leave in the last digits; far below what a dial shows.
    const DUST: f64 = 1e-9;
    Pressure::psi((pressure.as_psi() - DUST).ceil())
}
