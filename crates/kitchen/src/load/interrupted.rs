//! A boil, a pressure or the power was lost before the time was up: the whole time again, from the return.

use almanac::{LoadRuling, Noticed};
use measure::{Minutes, write_minutes};

use super::answer::{ClockMark, LoadAnswer, Outcome};
use super::begin_again::throw_away;
use super::clock::Moment;
use super::draft::Draft;
use super::gap::tell_gap;
use super::question::{LoadQuestion, Stop};
use super::start::{reached_words, say_how_it_ends};

/// Judges a process that was interrupted once or more.
pub(super) fn judge_interruption(mut draft: Draft<'_>) -> LoadAnswer {
    let question = draft.question;
    if let Some(ended) = find_whole_run(question) {
        return tell_complete(question, draft, &ended);
    }
    let Some(again) = draft.find_permitting(LoadRuling::WholeTimeAgain) else { return tell_gap(draft) };
    // A load that waits is a short process, so its limit must be on file for it to be begun again at all.
    let limit = draft.find_permitting(LoadRuling::Limit);
    let Some((limit, most)) = limit.and_then(|limit| Some((limit, Draft::minutes_of(limit)?))) else {
        return tell_gap(draft);
    };
    say_what_happened(&mut draft);
    draft.explain(format!("{}.", again.rule.rule), Some(again.citation()));
    draft.explain(
        format!(
            "{}, and has {} from the loss to be begun again, refrigerated or frozen.",
            limit.rule.rule,
            write_minutes(most)
        ),
        Some(limit.citation()),
    );
    let stops = stops_of(question);
    let Some(stop) = stops.last() else { return tell_no_clock(draft) };
    let mut waits = Vec::new();
    for stop in &stops {
        let Some(lost) = &stop.lost else { return tell_no_clock(draft) };
        let latest = lost.earliest().plus(most);
        let end = stop.back.as_ref().map_or(&question.now, |back| back.latest());
        if *end > latest {
            return tell_too_late(draft, lost.earliest(), end, &latest);
        }
        waits.push(latest);
    }
    match (&stop.back, waits.last()) {
        (Some(back), _) => tell_again(draft, back.latest()),
        (None, Some(latest)) => tell_waiting(draft, latest),
        (None, None) => tell_no_clock(draft),
    }
}

/// The stops with the earliest moment each can have begun: where nobody saw the loss, it lies after the start or
/// the return before it.
fn stops_of(question: &LoadQuestion) -> Vec<Stop> {
    let mut since = question.begun.clone();
    let mut stops = Vec::new();
    for stop in &question.stops {
        stops.push(Stop { lost: stop.lost.clone().or(since), back: stop.back.clone() });
        since = stop.back.clone();
    }
    stops
}

/// When a whole run ended, where one had ended before anything was lost. Clocks show minutes, so the loss must lie
/// in a later minute than the end.
fn find_whole_run(question: &LoadQuestion) -> Option<Moment> {
    let minutes = question.whole_time()?;
    let mut start = question.begun.as_ref()?;
    for stop in &question.stops {
        let ends = start.latest().plus(minutes);
        if *stop.lost.as_ref()?.earliest() > ends {
            return Some(ends);
        }
        start = stop.back.as_ref()?;
    }
    None
}

fn say_what_happened(draft: &mut Draft<'_>) {
    let question = draft.question;
    draft.happened(question.begun.as_ref(), reached_words(question.canner));
    for stop in &question.stops {
        draft.happened(stop.lost.as_ref(), "It was lost. The time before does not count.");
        draft.happened(stop.back.as_ref(), "It was back.");
    }
}

fn tell_again(mut draft: Draft<'_>, back: &Moment) -> LoadAnswer {
    let Some(minutes) = draft.question.whole_time() else {
        draft.act(
            format!("Give the whole printed time again, counted from {}.", back.clock()),
            draft.find_permitting(LoadRuling::WholeTimeAgain).map(|found| found.citation()),
        );
        say_care(&mut draft, Some(back));
        return draft.finish(
            Outcome::WholeTimeAgain,
            format!("The whole printed time again, from {}.", back.clock()),
        );
    };
    let ends = back.plus(minutes);
    let text = format!("The whole {} min are over, counted from {}.", minutes.0, back.clock());
    draft.mark(&ends, ClockMark::Ends, text);
    say_care(&mut draft, Some(back));
    say_how_it_ends(&mut draft, minutes);
    let says = format!("The whole {} min again: the process ends at {}.", minutes.0, ends.clock());
    draft.finish(Outcome::WholeTimeAgain, says)
}

fn tell_waiting(mut draft: Draft<'_>, latest: &Moment) -> LoadAnswer {
    let text = "The latest for the full boil or the pressure to be back. Later the load is thrown away.";
    draft.mark(latest, ClockMark::Limit, text);
    let whole = draft.question.whole_time().map_or_else(
        || "the whole printed time".to_owned(),
        |Minutes(minutes)| format!("the whole {minutes} min"),
    );
    draft.act(
        format!(
            "Bring it back as soon as you can, by {} at the latest. Write down when it is back, and give {whole} from \
             there.",
            latest.clock()
        ),
        draft.find_permitting(LoadRuling::WholeTimeAgain).map(|found| found.citation()),
    );
    draft.act(
        format!("If it will not be back by {}, refrigerate or freeze the food before then.", latest.clock()),
        draft.find_permitting(LoadRuling::Limit).map(|found| found.citation()),
    );
    say_care(&mut draft, None);
    draft.finish(Outcome::WholeTimeAgain, "The whole time again, from when the heat is back.")
}

/// A new lid where a vacuum formed, and the vent once more where air may have come in.
fn say_care(draft: &mut Draft<'_>, back: Option<&Moment>) {
    let interrupted = draft.rule("process-interrupted").map(|rule| &rule.citation);
    draft.act(
        "A jar whose lid had been drawn down already, because the jars cooled, gets a new lid first.",
        interrupted,
    );
    if !draft.question.is_under_pressure() {
        return;
    }
    let vent = draft.rule("pc-vent").map(|rule| &rule.citation);
    let text = match back {
        None => "If the pressure was at nothing or the lid was off, vent the canner its whole time again before you \
                 build the pressure."
            .to_owned(),
        Some(back) => format!(
            "If the pressure was at nothing or the lid was off, the canner is vented its whole time again first. Where \
             it was not, {} does not count: cool it by itself, vent, and begin anew.",
            back.clock()
        ),
    };
    draft.act_with_care(text, vent, Some("never open a canner that holds pressure"));
}

fn tell_too_late(mut draft: Draft<'_>, lost: &Moment, end: &Moment, latest: &Moment) -> LoadAnswer {
    draft.mark(latest, ClockMark::Limit, "The limit was here.");
    let passed = write_minutes(lost.minutes_until(end));
    draft.explain(
        format!("From {} to {} are {passed}, more than the limit.", lost.clock(), end.clock()),
        None,
    );
    throw_away(&mut draft);
    draft
        .finish(Outcome::Discard, format!("Too late since {}: throw the load away untasted.", latest.clock()))
}

fn tell_no_clock(mut draft: Draft<'_>) -> LoadAnswer {
    draft.explain("Nobody wrote down when it was lost, so there is no clock, and it counts as late.", None);
    throw_away(&mut draft);
    draft.finish(
        Outcome::NoClock,
        "No time was written down: the load counts as late. Throw it away untasted.",
    )
}

fn tell_complete(question: &LoadQuestion, draft: Draft<'_>, ended: &Moment) -> LoadAnswer {
    let mut after = Draft::new(draft.almanac, question, Some(Noticed::After));
    let Some(found) = after.find_permitting(LoadRuling::Complete) else { return tell_gap(after) };
    after.happened(question.begun.as_ref(), reached_words(question.canner));
    for stop in &question.stops {
        after.happened(stop.lost.as_ref(), "The heat was lost, after the whole time.");
    }
    after.mark(ended, ClockMark::Ends, "The whole time had run.");
    after.explain(format!("{}.", found.rule.rule), Some(found.citation()));
    if let Some(minutes) = question.whole_time() {
        say_how_it_ends(&mut after, minutes);
    }
    after.act(
        "Leave the jars alone and look at the seals when they are cold. For one that did not seal: unsealed.",
        after.rule("cool-time").map(|rule| &rule.citation),
    );
    let says = format!("The whole time had run at {}, before the heat was lost.", ended.clock());
    after.finish(Outcome::Complete, says)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::load::Report;
    use almanac::LoadTrouble;
    use jiff::civil::date;
    use jiff::tz::TimeZone;

    fn report(hour: u32, minute: u32) -> Report {
        Report::on(&TimeZone::UTC, date(2026, 9, 12), Minutes(hour * 60 + minute)).expect("on the clock")
    }

    fn question(stops: Vec<Stop>) -> LoadQuestion {
        LoadQuestion {
            trouble: LoadTrouble::PowerCut,
            canner: Some(almanac::CannerKind::Dial),
            said: Some(Minutes(25)),
            noticed: None,
            steam: None,
            begun: Some(report(13, 42)),
            stops,
            heat_off: None,
            food: None,
            jar: None,
            printed: Vec::new(),
            now: report(15, 0).latest().clone(),
        }
    }

    #[test]
    fn a_run_is_whole_only_when_the_loss_lies_in_a_later_minute() {
        let lost = |minute| vec![Stop { lost: Some(report(14, minute)), back: None }];
        assert_eq!(find_whole_run(&question(lost(7))), None);
        assert_eq!(find_whole_run(&question(lost(8))).map(|at| at.clock()), Some("14:07".to_owned()));
    }

    #[test]
    fn a_loss_nobody_saw_lies_right_after_the_start_or_the_return_before_it() {
        let back = |hour, minute| Some(report(hour, minute));
        let stops = vec![Stop { lost: None, back: back(14, 0) }, Stop { lost: None, back: back(14, 20) }];
        let found = stops_of(&question(stops));
        assert_eq!(found[0].lost, Some(report(13, 42)));
        assert_eq!(found[1].lost, Some(report(14, 0)));
    }
}
