//! Loads that may be begun again, refrigerated or frozen until a clock time, and are thrown away after it: two hours
//! after a wrong process, a day after a right one whose jar did not seal.

use almanac::{FoundLoadRule, JarSize, LoadRuling, LoadTrouble, Noticed, Pack};
use measure::{Minutes, write_length_in, write_minutes};

use super::answer::{ClockMark, LoadAnswer, Outcome, word_trouble};
use super::clock::{Moment, Report};
use super::draft::Draft;
use super::gap::tell_gap;
use super::start::OPENING;

const HOT_JARS: &str = "hot food and hot jars burn; hot jars crack on anything cold or wet";

/// Judges a trouble that a limit decides.
pub(super) fn judge_limit(mut draft: Draft<'_>) -> LoadAnswer {
    let Some(found) = draft.find_permitting(LoadRuling::Limit) else { return tell_gap(draft) };
    let Some(most) = Draft::minutes_of(found) else { return tell_gap(draft) };
    draft.explain(format!("{}.", found.rule.rule), Some(&found.rule.citation));
    draft.explain(
        format!(
            "From the moment the heat went off there are {} to can it again, refrigerate or freeze it. Afterwards it is \
             thrown away.",
            write_minutes(most)
        ),
        Some(found.citation()),
    );
    let Some(heat_off) = heat_off_of(&mut draft) else { return tell_no_clock(draft) };
    let limit = heat_off.plus(most);
    if draft.question.now > limit {
        draft.mark(&limit, ClockMark::Limit, "The limit was here.");
        throw_away(&mut draft);
        let says = format!("Too late since {}: throw it away untasted.", limit.clock());
        return draft.finish(Outcome::Discard, says);
    }
    let text = "The last minute to begin canning it again, or to have it in the refrigerator or the freezer.";
    draft.mark(&limit, ClockMark::Limit, text);
    if draft.question.trouble == LoadTrouble::Unsealed {
        say_unsealed(&mut draft, &limit, found);
        let says = format!("You have until {}, {}.", limit.clock(), limit.day_in_words());
        return draft.finish(Outcome::InTime, says);
    }
    say_begin_again(&mut draft, &limit, found);
    let says = format!("Not tested as it is. You have until {}, {}.", limit.clock(), limit.day_in_words());
    draft.finish(Outcome::InTime, says)
}

/// When the heat went off: as reported; and where the load still stands on the heat, now.
fn heat_off_of(draft: &mut Draft<'_>) -> Option<Moment> {
    let question = draft.question;
    if let Some(report) = &question.heat_off {
        draft.happened(Some(report), "The heat went off.");
        return Some(report.earliest().clone());
    }
    if question.noticed != Some(Noticed::During) {
        return None;
    }
    draft.act("Turn the heat off now, and write that time down.", None);
    draft.explain("The limit is counted from now, as if you turned the heat off at once.", None);
    draft.mark(&question.now, ClockMark::Happened, "The heat goes off now.");
    Some(question.now.clone())
}

fn tell_no_clock(mut draft: Draft<'_>) -> LoadAnswer {
    draft.explain(
        "Nobody wrote down when the heat went off, so there is no clock, and it counts as late. If you do know it, ask \
         again with --heat-off.",
        None,
    );
    throw_away(&mut draft);
    draft.finish(Outcome::NoClock, "No time was written down: it counts as late. Throw it away untasted.")
}

/// A wrong process: again from the open jar, with what was wrong put right.
fn say_begin_again(draft: &mut Draft<'_>, limit: &Moment, found: FoundLoadRule<'_>) {
    say_cool_by_itself(draft);
    let hot_pack = draft.rule("reprocess-hot-pack").map(|rule| &rule.citation);
    draft.act_with_care(
        format!(
            "Can it again, begun by {}: open every jar, heat the food to a boil, fill it into clean hot jars by a \
             printed hot-pack line, new lids, the whole printed time. {}",
            limit.clock(),
            put_right(draft.question.trouble)
        ),
        hot_pack,
        Some(HOT_JARS),
    );
    say_keep_cold(draft, limit, found);
}

/// A right process whose jar did not seal.
fn say_unsealed(draft: &mut Draft<'_>, limit: &Moment, found: FoundLoadRule<'_>) {
    let hot_pack = draft.find_permitting(LoadRuling::HotPack);
    match (hot_pack, hot_line(draft)) {
        (None, _) => draft.explain(
            "No rule on file says by which line a jar is begun again, so it is only refrigerated or frozen.",
            None,
        ),
        (Some(rule), HotLine::NotPrinted) => draft.explain(
            "No hot-pack line is printed for this food, this jar and this canner: it is not canned again, only \
             refrigerated or frozen.",
            Some(rule.citation()),
        ),
        (Some(rule), line) => {
            let time = match line {
                HotLine::Printed(Minutes(minutes)) => {
                    format!("the whole {minutes} min printed for the hot pack")
                }
                _ => "the whole printed time (stillroom clear with --pack hot)".to_owned(),
            };
            draft.act_with_care(
                format!(
                    "Can it again, begun by {}: empty the jar, heat the food to a boil, a clean hot jar with a whole rim, \
                     a new lid, by the hot-pack line, {time}. Where the food has no hot-pack line, or is dense like pie \
                     filling or squash, refrigerate or freeze it.",
                    limit.clock()
                ),
                Some(rule.citation()),
                Some(HOT_JARS),
            );
        }
    }
    say_keep_cold(draft, limit, found);
}

/// The hot-pack line of the food.
enum HotLine {
    /// This long.
    Printed(Minutes),
    /// There is none.
    NotPrinted,
    /// Too little was said to look it up.
    NotAsked,
}

fn hot_line(draft: &Draft<'_>) -> HotLine {
    let question = draft.question;
    let Some(food) = &question.food else { return HotLine::NotAsked };
    if let Some(minutes) = question.whole_time() {
        return HotLine::Printed(minutes);
    }
    let may_be = |jar: JarSize| question.jar.is_none_or(|asked| asked <= jar);
    let is_hot = draft.almanac.printed_lines(food).any(|line| {
        line.pack() == Pack::Hot
            && may_be(line.jar())
            && question.canner.is_none_or(|canner| canner == line.canner())
            && line.process().is_some()
    });
    if is_hot { HotLine::NotAsked } else { HotLine::NotPrinted }
}

fn say_keep_cold(draft: &mut Draft<'_>, limit: &Moment, found: FoundLoadRule<'_>) {
    let citation = found.citation();
    draft.act(
        format!("Or into the refrigerator by {}, and first in the line to be eaten.", limit.clock()),
        Some(citation),
    );
    let room = draft.rule("freeze-headspace");
    let inches = room.and_then(|rule| rule.value?.as_length()).map(|(_, most)| write_length_in(most));
    draft.act_with_care(
        match inches {
            Some(room) => format!(
                "Or into the freezer by {}: pour off until {room} are empty under the rim, or use freezer bags.",
                limit.clock()
            ),
            None => format!("Or into the freezer by {}, in freezer bags.", limit.clock()),
        },
        room.map(|rule| &rule.citation),
        Some("let glass cool before it goes into the freezer"),
    );
    draft.act(
        format!("If nothing of it is begun by {}, throw it away untasted.", limit.clock()),
        Some(citation),
    );
}

/// A pressure canner is not opened to gain time; the limit runs on meanwhile.
pub(super) fn say_cool_by_itself(draft: &mut Draft<'_>) {
    if !draft.question.is_under_pressure() {
        return;
    }
    draft.act_with_care(
        "If the jars are still in it, let the canner lose its pressure by itself. The limit runs on meanwhile.",
        draft.rule("pc-cool-natural").map(|rule| &rule.citation),
        Some(OPENING),
    );
}

/// How food of doubt is thrown away.
pub(super) fn throw_away(draft: &mut Draft<'_>) {
    say_cool_by_itself(draft);
    draft.act_with_care(
        "Throw the food away, out of reach of children and animals.",
        draft.rule("discard-signs").map(|rule| &rule.citation),
        Some("never taste it: what makes it dangerous cannot be seen, smelled or tasted"),
    );
    let Some(rule) = draft.rule("discard-low-acid-spoiled") else { return };
    let boil = rule.value.and_then(|value| value.as_minutes()).map(|(_, most)| most.0);
    let boil = boil.map_or_else(|| "are boiled".to_owned(), |minutes| format!("are boiled {minutes} min"));
    draft.act(
        format!(
            "Vegetables, meat, fish, soups and tomatoes: leave sealed jars shut and bag them for the bin; open or leaking \
             ones {boil} under water before they go, and what they touched is disinfected."
        ),
        Some(&rule.citation),
    );
}

/// What is done otherwise this time.
fn put_right(trouble: LoadTrouble) -> &'static str {
    use LoadTrouble as T;
    match trouble {
        T::AcidForgotten | T::WrongAcid => {
            "This time the whole printed acid goes into each jar before the food (stillroom clear shows it)."
        }
        T::WrongTime => "This time the whole time, counted from the full boil or the pressure.",
        T::WrongPack => "This time packed as printed.",
        T::WrongJar => "This time in a printed size of jar.",
        T::WrongVent => "This time vent the canner its whole time first.",
        T::WrongCanner => "This time in the canner that is printed for the food.",
        T::WrongAltitude => "This time by the line of your own altitude.",
        _ => "",
    }
}

/// The limit after which a load that is treated as not processed is not even kept cold, where it is on file.
pub(super) fn cold_limit(draft: &Draft<'_>, heat_off: Option<&Report>) -> Option<Moment> {
    let rule = draft.rule("underprocessed-2h")?;
    let (most, _) = rule.value?.as_minutes()?;
    Some(heat_off?.earliest().plus(most))
}

/// A sentence on what the trouble is, for an answer that refuses.
pub(super) fn name_trouble(draft: &Draft<'_>) -> &'static str {
    word_trouble(draft.question.trouble)
}
