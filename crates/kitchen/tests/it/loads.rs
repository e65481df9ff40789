//! Loads in trouble: the printed arithmetic, the laws of the clock, and that every answer goes away with its row.

use std::collections::BTreeSet;
use std::sync::LazyLock;

use almanac::{Almanac, CannerKind, LoadTrouble, Noticed, Table, Tables};
use jiff::ZonedDateTime;
use jiff::civil::{DateTime, date};
use jiff::tz::TimeZone;
use kitchen::load::{
    ClockMark, LoadAnswer, LoadError, LoadQuestion, LoadWords, Moment, Outcome, answer_load, ask_load,
    list_load_gaps, read_load_question,
};
use measure::Minutes;
use proptest::prelude::*;

/// Read once, as it is long.
fn load() -> &'static Almanac {
    static ALMANAC: LazyLock<Almanac> =
        LazyLock::new(|| Almanac::load().expect("the tables built in have no fault"));
    &ALMANAC
}

fn without(table: Table, rule: &str) -> Almanac {
    let start = format!("{rule},");
    let tables = Tables::embedded().without_lines(table, |line| line.starts_with(&start));
    Almanac::from_tables(&tables).expect("a struck row is no fault")
}

/// The rule of the eastern United States, as POSIX writes it.
fn eastern() -> TimeZone {
    TimeZone::posix("EST5EDT,M3.2.0,M11.1.0").expect("a rule as POSIX writes it")
}

fn at(shown: DateTime) -> ZonedDateTime {
    shown.to_zoned_datetime(eastern()).expect("on the clock")
}

/// Half past two in the afternoon of the day that the examples are of.
fn half_past_two() -> ZonedDateTime {
    at(date(2026, 9, 12).at(14, 30, 0, 0))
}

fn texts(words: &[&str]) -> Vec<String> {
    words.iter().map(|word| (*word).to_owned()).collect()
}

fn interrupted(trouble: &str, canner: &str, lost: &[&str], back: &[&str]) -> LoadWords {
    LoadWords {
        trouble: trouble.into(),
        canner: Some(canner.into()),
        minutes: Some("25".into()),
        begun: Some("13:42".into()),
        lost: texts(lost),
        back: texts(back),
        ..LoadWords::default()
    }
}

fn plain(trouble: &str, heat_off: Option<&str>) -> LoadWords {
    LoadWords {
        trouble: trouble.into(),
        canner: Some("weighted".into()),
        heat_off: heat_off.map(str::to_owned),
        ..LoadWords::default()
    }
}

fn ask(words: &LoadWords, now: &ZonedDateTime) -> LoadAnswer {
    ask_load(load(), words, now).unwrap_or_else(|error| panic!("{words:?}: {error}"))
}

fn clock_of(answer: &LoadAnswer, mark: ClockMark) -> Option<String> {
    answer.time_of(mark).map(|at| format!("{} {}", at.date(), at.clock()))
}

/// Source: US Department of Agriculture, Complete Guide to Home Canning, 2015, Guide 1 p. 1-22, step 5: when the
/// pressure falls below the line, bring it back and begin timing the process over, from the beginning.
#[test]
fn the_whole_time_is_given_again_from_the_return() {
    for (trouble, canner) in [
        ("power-cut", "dial"),
        ("pressure-lost", "weighted"),
        ("boil-lost", "boiling-water"),
        ("boil-lost", "steam"),
        ("power-cut", "boiling-water"),
    ] {
        let answer = ask(&interrupted(trouble, canner, &["13:55"], &["14:20"]), &half_past_two());
        assert_eq!(answer.outcome, Outcome::WholeTimeAgain, "{trouble} {canner}");
        assert_eq!(
            clock_of(&answer, ClockMark::Ends).as_deref(),
            Some("2026-09-12 14:45"),
            "{trouble} {canner}"
        );
        let said = serde_json::to_string(&answer).unwrap();
        assert!(!said.contains("14:32"), "the 12 minutes before never count: {said}");
    }
}

#[test]
fn the_last_of_several_returns_counts() {
    let words = interrupted("pressure-lost", "dial", &["13:55", "14:30"], &["14:20", "14:41"]);
    let answer = ask(&words, &half_past_two());
    assert_eq!(clock_of(&answer, ClockMark::Ends).as_deref(), Some("2026-09-12 15:06"));
}

#[test]
fn a_restart_is_right_across_midnight() {
    let words =
        LoadWords { begun: Some("23:40".into()), ..interrupted("power-cut", "dial", &["23:55"], &["0:20"]) };
    let now = at(date(2026, 9, 13).at(0, 25, 0, 0));
    let answer = ask(&words, &now);
    assert_eq!(clock_of(&answer, ClockMark::Ends).as_deref(), Some("2026-09-13 00:45"));
    assert!(answer.clock[0].at.day_in_words().contains("12 September"));
}

#[test]
fn a_clock_set_forward_shortens_no_process() {
    let words = LoadWords {
        begun: Some("2026-03-08 1:20".into()),
        ..interrupted("power-cut", "dial", &["1:30"], &["1:50"])
    };
    let answer = ask(&words, &at(date(2026, 3, 8).at(1, 55, 0, 0)));
    assert_eq!(clock_of(&answer, ClockMark::Ends).as_deref(), Some("2026-03-08 03:15"));
}

#[test]
fn an_hour_shown_twice_is_taken_to_the_side_of_caution() {
    let words = LoadWords {
        begun: Some("2026-11-01 0:50".into()),
        ..interrupted("power-cut", "dial", &["1:00"], &["1:10"])
    };
    let now = at(date(2026, 11, 1).at(3, 0, 0, 0));
    let answer = ask(&words, &now);
    let ends = answer.time_of(ClockMark::Ends).unwrap();
    assert_eq!(ends.clock(), "01:35");
    assert!(ends.day_in_words().contains("second time"), "{}", ends.day_in_words());
    // The same report as a heat that went off: the earlier of the two starts the two hours.
    let answer = ask(&plain("wrong-time", Some("2026-11-01 1:10")), &at(date(2026, 11, 1).at(2, 5, 0, 0)));
    assert_eq!(clock_of(&answer, ClockMark::Limit).as_deref(), Some("2026-11-01 02:10"));
}

#[test]
fn a_process_that_had_ended_is_not_given_again() {
    let answer = ask(&interrupted("power-cut", "dial", &["14:09"], &[]), &half_past_two());
    assert_eq!(answer.outcome, Outcome::Complete);
    assert_eq!(clock_of(&answer, ClockMark::Ends).as_deref(), Some("2026-09-12 14:07"));
    // The same minute may be one too few.
    let answer = ask(&interrupted("power-cut", "dial", &["14:07"], &[]), &half_past_two());
    assert_eq!(answer.outcome, Outcome::WholeTimeAgain);
}

#[test]
fn a_heat_that_is_not_back_has_a_limit_on_the_clock() {
    let answer = ask(&interrupted("power-cut", "dial", &["13:55"], &[]), &half_past_two());
    assert_eq!(answer.outcome, Outcome::WholeTimeAgain);
    assert_eq!(clock_of(&answer, ClockMark::Limit).as_deref(), Some("2026-09-12 15:55"));
    assert_eq!(answer.time_of(ClockMark::Ends), None);
    let late = at(date(2026, 9, 12).at(15, 56, 0, 0));
    assert_eq!(ask(&interrupted("power-cut", "dial", &["13:55"], &[]), &late).outcome, Outcome::Discard);
    let back_late = interrupted("power-cut", "dial", &["13:55"], &["15:56"]);
    assert_eq!(ask(&back_late, &late).outcome, Outcome::Discard);
    let in_time = interrupted("power-cut", "dial", &["13:55"], &["15:55"]);
    assert_eq!(ask(&in_time, &late).outcome, Outcome::WholeTimeAgain);
}

#[test]
fn a_loss_nobody_timed_is_late_unless_the_start_bounds_it() {
    let words = LoadWords { begun: None, ..interrupted("power-cut", "dial", &[], &["14:20"]) };
    assert_eq!(ask(&words, &half_past_two()).outcome, Outcome::NoClock);
    let words = interrupted("power-cut", "dial", &[], &["14:20"]);
    assert_eq!(ask(&words, &half_past_two()).outcome, Outcome::WholeTimeAgain);
    let words = LoadWords { begun: None, ..interrupted("power-cut", "dial", &[], &[]) };
    assert_eq!(ask(&words, &half_past_two()).outcome, Outcome::NoClock);
}

/// Source: Nebraska Extension, Saving Home Canned Food in Jars That Did Not Seal: two hours to can again after a
/// wrong process; Michigan State University Extension, Preserving Food Safely, 1997, file 01600593: 24 hours for a
/// jar that did not seal.
#[test]
fn two_hours_after_a_wrong_process_and_a_day_after_a_failed_seal() {
    for trouble in [
        "wrong-acid",
        "wrong-time",
        "wrong-pack",
        "wrong-jar",
        "wrong-vent",
        "wrong-canner",
        "wrong-altitude",
    ] {
        let answer = ask(&plain(trouble, Some("13:55")), &half_past_two());
        assert_eq!(answer.outcome, Outcome::InTime, "{trouble}");
        assert_eq!(clock_of(&answer, ClockMark::Limit).as_deref(), Some("2026-09-12 15:55"), "{trouble}");
        let late = ask(&plain(trouble, Some("12:29")), &half_past_two());
        assert_eq!(late.outcome, Outcome::Discard, "{trouble}");
        assert_eq!(ask(&plain(trouble, None), &half_past_two()).outcome, Outcome::NoClock, "{trouble}");
    }
    let answer = ask(&plain("unsealed", Some("2026-09-11 20:15")), &half_past_two());
    assert_eq!(answer.outcome, Outcome::InTime);
    assert_eq!(clock_of(&answer, ClockMark::Limit).as_deref(), Some("2026-09-12 20:15"));
    let late = ask(&plain("unsealed", Some("2026-09-11 14:29")), &half_past_two());
    assert_eq!(late.outcome, Outcome::Discard);
    assert_eq!(ask(&plain("unsealed", None), &half_past_two()).outcome, Outcome::NoClock);
}

#[test]
fn forgotten_acid_depends_on_when_it_was_noticed() {
    let asked = |noticed: &str, heat_off: Option<&str>| {
        let words = LoadWords {
            noticed: Some(noticed.into()),
            food: Some("tomatoes-crushed".into()),
            jar: Some("pint".into()),
            ..plain("acid-forgotten", heat_off)
        };
        ask(&words, &half_past_two())
    };
    let before = asked("before", None);
    assert_eq!(before.outcome, Outcome::AcidFirst);
    assert!(before.acts.iter().any(|act| act.said.text.contains("1 tbsp bottled lemon juice")));
    let during = asked("during", None);
    assert_eq!(during.outcome, Outcome::InTime);
    assert_eq!(clock_of(&during, ClockMark::Limit).as_deref(), Some("2026-09-12 16:30"));
    let after = asked("after", Some("13:00"));
    assert_eq!(clock_of(&after, ClockMark::Limit).as_deref(), Some("2026-09-12 15:00"));
    assert_eq!(asked("after", None).outcome, Outcome::NoClock);
    let words = plain("acid-forgotten", None);
    assert!(matches!(ask_load(load(), &words, &half_past_two()), Err(LoadError::Missing { .. })));
}

#[test]
fn an_unsealed_jar_is_canned_again_only_by_a_hot_pack_line() {
    let asked = |food: &str, jar: &str| {
        let words =
            LoadWords { food: Some(food.into()), jar: Some(jar.into()), ..plain("unsealed", Some("13:00")) };
        ask(&words, &half_past_two())
    };
    let again = |answer: &LoadAnswer| answer.acts.iter().any(|act| act.said.text.starts_with("Can it again"));
    assert!(again(&asked("beans-snap", "pint")));
    let almanac = load();
    let raw: Vec<String> = almanac
        .products()
        .filter(|product| almanac.printed_lines(&product.id).all(|line| line.pack() == almanac::Pack::Raw))
        .map(|product| product.id.to_string())
        .collect();
    assert!(!raw.is_empty(), "some food is printed raw only");
    for food in &raw {
        let answer = asked(food, "half-pint");
        assert!(!again(&answer), "{food}");
        assert_eq!(answer.outcome, Outcome::InTime, "{food}: it may still be kept cold");
    }
}

/// Source: USDA Complete Guide to Home Canning, 2015, Guide 4, snap beans, hot pack, pints: 20 minutes.
#[test]
fn the_hot_pack_minutes_are_those_of_the_row() {
    let words = LoadWords {
        food: Some("beans-snap".into()),
        jar: Some("pint".into()),
        altitude: Some("800 ft".into()),
        ..plain("unsealed", Some("13:00"))
    };
    let answer = ask(&words, &half_past_two());
    assert!(answer.acts.iter().any(|act| act.said.text.contains("the whole 20 min")), "{:?}", answer.acts);
}

/// Source: Pacific Northwest Extension, PNW 421: vent 10 minutes; USDA Complete Guide to Home Canning, 2015, Guide 1
/// p. 1-22, step 4: start timing at the pressure.
#[test]
fn the_clock_starts_at_pressure_after_ten_minutes_of_steam() {
    let asked = |steam: Option<&str>, begun: Option<&str>| {
        let words = LoadWords {
            trouble: "start".into(),
            canner: Some("dial".into()),
            minutes: Some("25 min".into()),
            steam: steam.map(str::to_owned),
            begun: begun.map(str::to_owned),
            ..LoadWords::default()
        };
        ask(&words, &half_past_two())
    };
    let answer = asked(Some("13:00"), Some("13:17"));
    assert_eq!(answer.outcome, Outcome::Start);
    assert_eq!(clock_of(&answer, ClockMark::VentUntil).as_deref(), Some("2026-09-12 13:10"));
    assert_eq!(clock_of(&answer, ClockMark::Ends).as_deref(), Some("2026-09-12 13:42"));
    assert_eq!(asked(Some("13:00"), Some("13:09")).outcome, Outcome::NotYet);
    assert_eq!(asked(Some("13:00"), None).time_of(ClockMark::Ends), None);
}

#[test]
fn a_printed_time_longer_than_the_one_said_counts() {
    let words = LoadWords {
        food: Some("tomatoes-crushed".into()),
        pack: Some("hot".into()),
        jar: Some("pint".into()),
        altitude: Some("1,200 ft".into()),
        ..interrupted("boil-lost", "boiling-water", &["13:55"], &["14:20"])
    };
    let answer = ask(&words, &half_past_two());
    // Source: USDA Complete Guide to Home Canning, 2015, Guide 3 p. 3-8: pints, 1,001 to 3,000 ft, 40 minutes.
    assert_eq!(clock_of(&answer, ClockMark::Ends).as_deref(), Some("2026-09-12 15:00"));
}

#[test]
fn what_nobody_printed_is_a_gap_and_recalled_rows_only_warn() {
    let gaps = list_load_gaps(load());
    let named: Vec<&str> = gaps.iter().map(|gap| gap.trouble.as_str()).collect();
    assert_eq!(named, ["boiled-dry", "jar-broke", "water-below-lids", "forced-cooling"]);
    for gap in &gaps {
        for canner in &gap.canners {
            let words = LoadWords {
                canner: Some(canner.to_string()),
                noticed: Some("during".into()),
                ..plain(gap.trouble.as_str(), None)
            };
            let answer = ask(&words, &half_past_two());
            assert_eq!(answer.outcome, Outcome::NoPrintedRule, "{} {canner}", gap.trouble);
            assert_eq!(clock_of(&answer, ClockMark::Limit).as_deref(), Some("2026-09-12 16:30"));
            assert!(answer.says.contains("No printed rule on file"));
        }
    }
}

/// Every question that the words can ask, with and without a time.
fn every_question() -> Vec<LoadWords> {
    let mut all = Vec::new();
    for trouble in LoadTrouble::ALL {
        for canner in CannerKind::ALL {
            for noticed in [None, Some("before"), Some("during"), Some("after")] {
                for heat_off in [None, Some("13:55"), Some("2026-09-10 13:55")] {
                    all.push(LoadWords {
                        canner: Some(canner.to_string()),
                        noticed: noticed.map(str::to_owned),
                        ..plain(trouble.as_str(), heat_off)
                    });
                }
            }
            all.push(interrupted(trouble.as_str(), canner.as_str(), &["13:55"], &["14:20"]));
            all.push(interrupted(trouble.as_str(), canner.as_str(), &["13:55"], &[]));
        }
    }
    all.push(interrupted("power-cut", "dial", &["14:20"], &[]));
    all.push(LoadWords {
        trouble: "start".into(),
        lost: Vec::new(),
        steam: Some("13:35".into()),
        ..interrupted("start", "dial", &[], &[])
    });
    all
}

#[test]
fn no_answer_calls_a_jar_safe_and_each_says_whom_to_ask_and_where_it_stands() {
    let (mut answered, mut outcomes) = (0, BTreeSet::new());
    let almanac = load();
    for words in every_question() {
        let Ok(answer) = ask_load(almanac, &words, &half_past_two()) else { continue };
        let json = serde_json::to_value(&answer).unwrap();
        // The name of a source is its own.
        let said = json.to_string().to_lowercase().replace("preserving-food-safely", "");
        assert!(!said.contains("safe"), "{words:?}: {said}");
        assert!(json["ask"].as_str().unwrap().contains("extension service"), "{words:?}");
        assert!(!answer.acts.is_empty(), "{words:?}");
        assert!(!answer.citations().is_empty(), "{words:?}");
        answered += 1;
        outcomes.insert(answer.outcome);
    }
    assert!(answered > 300, "{answered}");
    assert_eq!(outcomes.len(), 10, "every outcome is met: {outcomes:?}");
}

#[test]
fn each_answer_goes_away_with_its_row() {
    let cases = [
        ("pc-restart", interrupted("pressure-lost", "dial", &["13:55"], &["14:20"])),
        ("bw-restart", interrupted("boil-lost", "boiling-water", &["13:55"], &["14:20"])),
        ("process-interrupted", interrupted("power-cut", "dial", &["13:55"], &["14:20"])),
        ("process-interrupted", interrupted("boil-lost", "steam", &["13:55"], &["14:20"])),
        ("underprocessed-2h", interrupted("power-cut", "dial", &["13:55"], &["14:20"])),
        ("reprocess-window", interrupted("power-cut", "dial", &["14:09"], &[])),
        ("underprocessed-2h", plain("wrong-time", Some("13:55"))),
        ("reprocess-window", plain("unsealed", Some("13:55"))),
        ("pc-vent", LoadWords { canner: Some("dial".into()), ..plain("start", None) }),
        ("pc-start-time", LoadWords { canner: Some("dial".into()), ..plain("start", None) }),
        ("bw-start-time", LoadWords { canner: Some("boiling-water".into()), ..plain("start", None) }),
        (
            "bw-water-boils-down",
            LoadWords { canner: Some("boiling-water".into()), ..plain("water-low", None) },
        ),
    ];
    for (rule, words) in cases {
        let stands = ask(&words, &half_past_two()).outcome;
        assert_ne!(stands, Outcome::NoPrintedRule, "{rule}");
        let struck = ask_load(&without(Table::CannerRules, rule), &words, &half_past_two()).unwrap();
        assert_eq!(struck.outcome, Outcome::NoPrintedRule, "{rule}: {words:?}");
    }
    let struck = without(Table::CannerRules, "reprocess-hot-pack");
    let answer = ask_load(&struck, &plain("unsealed", Some("13:55")), &half_past_two()).unwrap();
    assert!(!answer.acts.iter().any(|act| act.said.text.starts_with("Can it again")));
    for rule in ["wrong-formula-discard", "left-alone-discard", "acid-before", "wrong-jar-limit"] {
        let full = list_load_gaps(load()).len();
        assert_eq!(list_load_gaps(&without(Table::LoadRules, rule)).len(), full + 1, "{rule}");
    }
}

/// A row that was recalled, or stands in a source of lower rank, lets nothing happen.
#[test]
fn a_rule_that_loses_its_print_permits_nothing() {
    for (from, to) in [
        (
            "unl-reseal; isu-mistakes,\"Saving home canned food in jars that did not seal (2 h",
            "extension-general; isu-mistakes,\"Saving (2 h",
        ),
        (
            "the stricter is used\",read\nheadspace-quarter",
            "the stricter is used\",memory\nheadspace-quarter",
        ),
    ] {
        let text = Tables::embedded().text(Table::CannerRules).to_owned();
        assert!(text.contains(from), "{from}");
        let tables = Tables::embedded().with(Table::CannerRules, text.replacen(from, to, 1));
        let almanac = Almanac::from_tables(&tables).expect("still a table");
        let words = plain("wrong-time", Some("13:55"));
        let answer = ask_load(&almanac, &words, &half_past_two()).unwrap();
        assert_eq!(answer.outcome, Outcome::NoPrintedRule, "{from}");
    }
}

#[test]
fn what_is_not_asked_about_is_not_passed_over() {
    let cases = [
        LoadWords { begun: Some("13:00".into()), ..plain("wrong-time", Some("13:55")) },
        LoadWords { minutes: Some("25".into()), ..plain("unsealed", Some("13:55")) },
        LoadWords { heat_off: Some("13:00".into()), ..interrupted("power-cut", "dial", &["13:55"], &[]) },
        interrupted("boil-lost", "dial", &["13:55"], &[]),
        LoadWords { canner: None, ..interrupted("power-cut", "dial", &["13:55"], &[]) },
        interrupted("power-cut", "dial", &["13:55", "14:10"], &["14:00 oclock"]),
        LoadWords { minutes: Some("0".into()), ..interrupted("power-cut", "dial", &["13:55"], &[]) },
        plain("exploded", None),
    ];
    for words in cases {
        let said = ask_load(load(), &words, &half_past_two()).unwrap_err().to_string();
        assert!(said.contains("hint: "), "{said}");
    }
}

/// A question with an interruption, by minutes from a start.
fn question(start: DateTime, minutes: u32, ran: u32, gap: u32) -> LoadQuestion {
    let start = at(start);
    let show = |at: &Moment| format!("{} {}", at.date(), at.clock());
    let begun = Moment::of_now(&start);
    let lost = begun.plus(Minutes(ran));
    let back = lost.plus(Minutes(gap));
    let words = LoadWords {
        minutes: Some(format!("{minutes} min")),
        begun: Some(show(&begun)),
        ..interrupted("pressure-lost", "dial", &[&show(&lost)], &[&show(&back)])
    };
    let now = at(date(2027, 1, 1).at(0, 0, 0, 0));
    read_load_question(load(), &words, &now).unwrap_or_else(|error| panic!("{words:?}: {error}"))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, ..ProptestConfig::default() })]

    /// end >= return + whole time, end >= start + whole time, and no gap or run takes a minute off.
    #[test]
    fn an_interruption_never_shortens_a_process(
        day in 0..366_i64, hour in 0..24_i8, minute in 0..60_i8,
        minutes in 1..200_u32, ran in 0..400_u32, gap in 0..120_u32,
    ) {
        let almanac = load();
        let first = date(2026, 1, 1).at(0, 0, 0, 0);
        let shown = first.checked_add(jiff::Span::new().days(day).hours(hour).minutes(minute)).unwrap();
        let asked = question(shown, minutes, ran, gap);
        let answer = answer_load(almanac, &asked);
        let ends = answer.time_of(ClockMark::Ends);
        let begun = asked.begun.as_ref().unwrap();
        match answer.outcome {
            Outcome::Complete => {
                prop_assert!(asked.stops[0].lost.as_ref().unwrap().earliest() > ends.unwrap());
                prop_assert!(*ends.unwrap() >= begun.latest().plus(Minutes(minutes)));
            }
            Outcome::WholeTimeAgain => {
                let back = asked.stops[0].back.as_ref().unwrap();
                prop_assert_eq!(ends.unwrap(), &back.latest().plus(Minutes(minutes)));
                prop_assert!(*ends.unwrap() >= begun.earliest().plus(Minutes(minutes)));
            }
            // An hour that the clock shows twice may put the loss an hour earlier than it was.
            Outcome::Discard => prop_assert!(asked.stops[0].lost.as_ref().unwrap().earliest()
                .minutes_until(asked.stops[0].back.as_ref().unwrap().latest()) > Minutes(120)),
            other => prop_assert!(false, "{other:?}"),
        }
    }

    /// A later return never ends earlier, and a longer process never ends earlier.
    #[test]
    fn the_end_is_monotone(minutes in 1..200_u32, ran in 0..30_u32, gap in 0..119_u32, more in 0..60_u32) {
        let almanac = load();
        let shown = date(2026, 9, 12).at(22, 30, 0, 0);
        let minutes = minutes.max(ran + 1);
        let end = |minutes, gap| {
            answer_load(almanac, &question(shown, minutes, ran, gap)).time_of(ClockMark::Ends).cloned()
        };
        let base = end(minutes, gap).unwrap();
        prop_assert!(end(minutes + more, gap).unwrap() >= base);
        prop_assert!(end(minutes, (gap + more).min(120)).unwrap() >= base);
    }

    /// The limit lies the printed hours after heat off, and nothing asked later is let happen that was refused
    /// earlier.
    #[test]
    fn time_only_ever_closes(heat_off in 0..1440_u32, wait in 0..3000_u32, more in 0..600_u32, unsealed: bool) {
        let almanac = load();
        let off = date(2026, 9, 12).at((heat_off / 60) as i8, (heat_off % 60) as i8, 0, 0);
        let trouble = if unsealed { "unsealed" } else { "wrong-acid" };
        let words = plain(trouble, Some(&format!("{} {:02}:{:02}", off.date(), off.hour(), off.minute())));
        let asked = |wait: u32| {
            let now = at(off).checked_add(jiff::SignedDuration::from_mins(i64::from(wait))).unwrap();
            ask_load(almanac, &words, &now).unwrap().outcome
        };
        let hours = if unsealed { 24 } else { 2 };
        prop_assert_eq!(asked(wait) == Outcome::InTime, wait <= hours * 60);
        if asked(wait) == Outcome::Discard {
            prop_assert_eq!(asked(wait + more), Outcome::Discard);
        }
    }
}

#[test]
fn the_words_for_when_it_was_noticed_are_those_of_the_table() {
    let words: Vec<&str> = Noticed::ALL.iter().map(|noticed| noticed.as_str()).collect();
    assert_eq!(words, ["before", "during", "after"]);
}

/// What the program treats as a gap is named on the page of rules, and nothing else of its kind.
#[test]
fn every_gap_stands_on_the_page_of_rules() {
    let page = include_str!("../../../../docs/methods/clearance.md");
    let listed: Vec<&str> = page.lines().filter(|line| line.starts_with("- a load in trouble, `")).collect();
    let almanac = Almanac::load().expect("the tables built in have no fault");
    let gaps = kitchen::load::list_load_gaps(&almanac);
    assert_eq!(listed.len(), gaps.len(), "{listed:?}");
    for gap in gaps {
        let named = format!("`{}`", gap.trouble);
        assert!(listed.iter().any(|line| line.contains(&named)), "{named}: {listed:?}");
    }
}
