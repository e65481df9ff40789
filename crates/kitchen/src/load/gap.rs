//! Troubles for which nothing is printed: said so, never filled in.

use almanac::{Almanac, CannerKind, LoadRuling, LoadTrouble, Noticed};

use super::answer::{ClockMark, LoadAnswer, Outcome, word_trouble};
use super::begin_again::{cold_limit, name_trouble, say_cool_by_itself, throw_away};
use super::clock::Report;
use super::draft::Draft;
use super::judge::ruling_needed;

/// A trouble in a canner that no printed rule on file decides.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LoadGap {
    /// The trouble.
    pub trouble: LoadTrouble,
    /// The trouble in a sentence.
    pub words: &'static str,
    /// The canners it stands open for.
    pub canners: Vec<CannerKind>,
    /// What is recalled of it, and only warns.
    pub recalled: Vec<String>,
}

/// Every trouble without a printed rule on file, in the order of the list.
#[must_use]
pub fn list_load_gaps(almanac: &Almanac) -> Vec<LoadGap> {
    let gap_of = |trouble: LoadTrouble| {
        let canners: Vec<CannerKind> =
            canners_of(trouble).into_iter().filter(|canner| is_gap(almanac, trouble, *canner)).collect();
        let recalled = canners.first().map(|canner| recalled_of(almanac, trouble, *canner));
        recalled.map(|recalled| LoadGap { trouble, words: word_trouble(trouble), canners, recalled })
    };
    LoadTrouble::ALL.iter().copied().filter_map(gap_of).collect()
}

/// The canners a trouble can happen in.
pub(super) fn canners_of(trouble: LoadTrouble) -> Vec<CannerKind> {
    use LoadTrouble as T;
    let can_have = |canner: &CannerKind| match trouble {
        T::BoilLost => !canner.is_pressure(),
        T::PressureLost | T::ForcedCooling | T::WrongVent => canner.is_pressure(),
        T::WaterLow | T::WaterBelowLids => *canner == CannerKind::BoilingWater,
        _ => true,
    };
    CannerKind::ALL.iter().copied().filter(can_have).collect()
}

fn is_gap(almanac: &Almanac, trouble: LoadTrouble, canner: CannerKind) -> bool {
    let times: &[Option<Noticed>] = match trouble {
        LoadTrouble::AcidForgotten => &[Some(Noticed::Before), Some(Noticed::During), Some(Noticed::After)],
        LoadTrouble::BoilLost | LoadTrouble::PressureLost | LoadTrouble::PowerCut | LoadTrouble::WaterLow => {
            &[Some(Noticed::During)]
        }
        _ => &[None],
    };
    times.iter().any(|noticed| {
        let needed = ruling_needed(trouble, *noticed);
        // Throwing away takes no permission, so any rule that says it fills the gap.
        let decides = |found: almanac::FoundLoadRule<'_>| {
            found.rule.ruling == needed && (needed == LoadRuling::Discard || found.may_permit())
        };
        !almanac.find_load_rules(trouble, canner, *noticed).any(decides)
    })
}

fn recalled_of(almanac: &Almanac, trouble: LoadTrouble, canner: CannerKind) -> Vec<String> {
    let found = almanac.find_load_rules(trouble, canner, None);
    let warning = found.filter(|found| found.rule.ruling == LoadRuling::Caution);
    warning.map(|found| found.rule.rule.to_string()).collect()
}

/// No printed rule on file: treat as not processed, keep cold or throw away, ask.
pub(super) fn tell_gap(mut draft: Draft<'_>) -> LoadAnswer {
    let question = draft.question;
    draft.explain(
        format!(
            "No printed rule on file says what becomes of a load after {}. What nobody printed is not answered here: the \
             load is treated as not processed.",
            name_trouble(&draft)
        ),
        None,
    );
    let still_on = question.noticed == Some(Noticed::During) && question.heat_off.is_none();
    let heat_off = question.heat_off.clone().or_else(|| still_on.then(|| Report::of(question.now.clone())));
    let lost = question.stops.last().and_then(|stop| stop.lost.clone());
    if still_on {
        draft.act("Turn the heat off now, and write that time down.", None);
    }
    let says =
        "No printed rule on file. Treat the load as not processed: keep it cold or throw it away, and ask.";
    let limit = cold_limit(&draft, heat_off.as_ref().or(lost.as_ref()));
    let Some(limit) = limit.filter(|limit| question.now <= *limit) else {
        if heat_off.is_none() && lost.is_none() {
            draft.explain(
                "Nobody wrote down when the heat went off, so there is no clock, and it counts as late. If you do know it, \
                 ask again with --heat-off.",
                None,
            );
        }
        throw_away(&mut draft);
        return draft.finish(Outcome::NoPrintedRule, says);
    };
    draft.mark(
        &limit,
        ClockMark::Limit,
        "The last minute to have the food in the refrigerator or the freezer.",
    );
    say_cool_by_itself(&mut draft);
    let rule = draft.rule("underprocessed-2h").map(|rule| &rule.citation);
    draft.act_with_care(
        format!(
            "Keep it cold: into the refrigerator or the freezer by {}. What is not cold by then is thrown away untasted.",
            limit.clock()
        ),
        rule,
        Some("hot jars burn, and crack on anything cold or wet; look for broken glass before you reach in"),
    );
    draft.act("Do not put these jars on the shelf, whether they seal or not.", None);
    draft.finish(Outcome::NoPrintedRule, says)
}
