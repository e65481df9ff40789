//! When the clock of a process starts, and when it ends.

use almanac::{CannerKind, LoadRuling};
use measure::Minutes;

use super::answer::{ClockMark, LoadAnswer, Outcome};
use super::clock::Report;
use super::draft::Draft;
use super::gap::tell_gap;

pub(super) const OPENING: &str =
    "never open a canner that holds pressure; open it away from your face, and lift no jar with bare hands";

/// The clock starts at a full boil, at steady steam, or at the printed pressure after venting.
pub(super) fn judge_start(mut draft: Draft<'_>) -> LoadAnswer {
    let Some(start) = draft.find_permitting(LoadRuling::Start) else { return tell_gap(draft) };
    let question = draft.question;
    let vent = match vent_until(&mut draft) {
        Vent::NoRule => return tell_gap(draft),
        Vent::None => None,
        Vent::Until(report) => Some(report),
    };
    draft.explain(format!("{}.", start.rule.rule), Some(start.citation()));
    draft.happened(question.begun.as_ref(), reached_words(question.canner));
    if let (Some(vent), Some(begun)) = (&vent, &question.begun)
        && begun.earliest() < vent.latest()
    {
        return tell_not_yet(draft, vent);
    }
    if let (Some(begun), Some(minutes)) = (&question.begun, question.whole_time()) {
        let ends = begun.latest().plus(minutes);
        let text = format!("The whole {} min are over. Not a minute before.", minutes.0);
        draft.mark(&ends, ClockMark::Ends, text);
        say_how_it_ends(&mut draft, minutes);
        return draft.finish(Outcome::Start, format!("The process ends at {}.", ends.clock()));
    }
    draft.act(wait_words(question.canner), Some(start.citation()));
    draft.act("Write that time down. The whole printed time counts from it.", None);
    draft.finish(Outcome::Start, "The clock does not start when the jars go in.")
}

enum Vent {
    /// Nothing is vented, or nobody said since when.
    None,
    /// The vent may be closed from here on.
    Until(Report),
    /// A pressure canner, and no printed venting on file.
    NoRule,
}

fn vent_until(draft: &mut Draft<'_>) -> Vent {
    let question = draft.question;
    if !question.is_under_pressure() {
        return Vent::None;
    }
    let Some(found) = draft.find_permitting(LoadRuling::Vent) else { return Vent::NoRule };
    let Some(minutes) = Draft::minutes_of(found) else { return Vent::NoRule };
    draft.act_with_care(
        format!(
            "Let the steam stream strong and steady out of the open vent for {} min, then close it or set the weight.",
            minutes.0
        ),
        Some(found.citation()),
        Some("steam burns: set the weight with a mitt, from the side"),
    );
    let Some(steam) = &question.steam else { return Vent::None };
    draft.happened(Some(steam), "A full stream of steam comes from the open vent.");
    let until = Report::of(steam.latest().plus(minutes));
    let text = format!("The vent stays open until here: {} min of steam.", minutes.0);
    draft.mark(until.latest(), ClockMark::VentUntil, text);
    Vent::Until(until)
}

fn tell_not_yet(mut draft: Draft<'_>, vent: &Report) -> LoadAnswer {
    draft.explain(
        format!(
            "The pressure was there before {}, so the air was not out of the canner.",
            vent.latest().clock()
        ),
        None,
    );
    draft.act_with_care(
        "Turn the heat off. Let the canner lose its pressure by itself, take the weight off, heat it again, and vent \
         it the whole time from the first full stream of steam.",
        draft.rule("pc-cool-natural").map(|rule| &rule.citation),
        Some(OPENING),
    );
    draft.finish(Outcome::NotYet, "The clock may not start: the canner was not vented its whole time.")
}

/// What is done when the time is up.
pub(super) fn say_how_it_ends(draft: &mut Draft<'_>, minutes: Minutes) {
    let again = match draft.question.canner {
        Some(CannerKind::Dial | CannerKind::Weighted) => ("pressure-lost", draft.rule("pc-restart")),
        Some(CannerKind::Steam) => ("boil-lost", draft.rule("process-interrupted")),
        Some(CannerKind::BoilingWater) | None => ("boil-lost", draft.rule("bw-restart")),
    };
    draft.act(
        format!(
            "Keep it there the whole {} min. If it is lost once more, the whole time counts anew ({}).",
            minutes.0, again.0
        ),
        again.1.map(|rule| &rule.citation),
    );
    let question = draft.question;
    if question.is_under_pressure() {
        let cool = draft.rule("pc-cool-natural").map(|rule| &rule.citation);
        draft.act("Then turn the heat off and let the canner lose its pressure by itself.", cool);
        if let Some(rule) = draft.rule("pc-wait-open")
            && let Some((wait, _)) = rule.value.and_then(|value| value.as_minutes())
        {
            let text =
                format!("When the pressure is at nothing, take the weight off and wait {} min more.", wait.0);
            draft.act_with_care(text, Some(&rule.citation), Some(OPENING));
        }
    } else if question.canner == Some(CannerKind::Steam) {
        let cool = draft.rule("steam-cool").map(|rule| &rule.citation);
        draft.act_with_care(
            "Then turn the heat off, lift the lid, and let the jars cool in still air.",
            cool,
            Some("lift the lid away from your face; hot jars crack on anything cold or wet"),
        );
    } else {
        let rest = draft.rule("bw-rest");
        draft.act_with_care(
            "Then turn the heat off, take the lid off, and let the jars stand before you lift them.",
            rest.map(|rule| &rule.citation),
            Some("lift the lid away from your face; hot jars crack on anything cold or wet"),
        );
    }
    let note = "Write down when the heat went off: every later limit counts from there.";
    draft.act(note, None);
    if question.printed.is_empty() {
        let text = format!(
            "The {} min are the time you gave. Look that it is the whole printed time for your food, pack, jar, canner \
             and altitude (stillroom clear).",
            minutes.0
        );
        draft.explain(text, None);
    } else {
        let longest = question.printed.iter().max_by_key(|process| process.minutes());
        let text = format!("{} min are printed for it.", longest.map_or(minutes, |one| one.minutes()).0);
        draft.explain(text, longest.map(|process| process.citation()));
        if question.said.is_some_and(|said| said < minutes) {
            draft.explain("You gave a shorter time; the printed one counts.", None);
        }
    }
}

/// What has been reached when the clock starts.
pub(super) fn reached_words(canner: Option<CannerKind>) -> &'static str {
    match canner {
        Some(CannerKind::BoilingWater) => "The water was at a full boil.",
        Some(CannerKind::Steam) => "A full plume of steam stood.",
        Some(CannerKind::Dial | CannerKind::Weighted) => "The pressure was reached.",
        None => "The full boil or the pressure was reached.",
    }
}

fn wait_words(canner: Option<CannerKind>) -> &'static str {
    match canner {
        Some(CannerKind::BoilingWater) | None => {
            "Wait until the water boils hard all over, with the lids under water."
        }
        Some(CannerKind::Steam) => "Wait until the air is out and a full, steady plume of steam stands.",
        Some(CannerKind::Dial) => "Wait until the dial shows the pressure you have to hold.",
        Some(CannerKind::Weighted) => "Wait until the weight jiggles or rocks as its maker says.",
    }
}
