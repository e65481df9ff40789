//! What may be drawn, and what may not.

use super::*;

fn words(food: &str, jar: &str, canner: &str, altitude: &str) -> WhyWords {
    WhyWords {
        clear: ClearWords {
            food: food.into(),
            pack: Some("hot".into()),
            jar: Some(jar.into()),
            canner: Some(canner.into()),
            altitude: Some(altitude.into()),
            ..ClearWords::default()
        },
        filled_at: None,
    }
}

fn load() -> &'static Almanac {
    static LOADED: std::sync::OnceLock<Almanac> = std::sync::OnceLock::new();
    LOADED.get_or_init(|| Almanac::load().expect("the tables built in have no fault"))
}

fn draw(words: &WhyWords) -> HeatHistory {
    explain_heat(load(), words).unwrap_or_else(|error| panic!("{error}"))
}

#[test]
fn a_history_is_headed_by_what_it_cannot_do_and_bears_no_mark() {
    let history = draw(&words("tomatoes-crushed", "pint", "boiling-water", "1,200 ft"));
    assert_eq!(history.explains_only, EXPLAINS_ONLY);
    assert_eq!(history.printed_minutes, 40);
    let json = serde_json::to_value(&history).unwrap();
    let keys: Vec<&String> = json["lines"][0].as_object().unwrap().keys().collect();
    for barred in ["target", "done", "reached", "enough"] {
        assert!(keys.iter().all(|key| !key.contains(barred)), "{keys:?}");
        assert!(!json.to_string().contains(&format!("\"{barred}")), "{barred}");
    }
}

#[test]
fn the_band_holds_its_middle_and_what_is_counted_only_grows() {
    let history = draw(&words("tomatoes-crushed", "quart", "boiling-water", "1,200 ft"));
    assert!(history.lines.len() > 20);
    for line in &history.lines {
        assert!(line.centre_low <= line.centre && line.centre <= line.centre_high, "{line:?}");
        assert!(line.counted_low <= line.counted && line.counted <= line.counted_high, "{line:?}");
        assert!(line.centre_high <= history.around_celsius + 5.0, "{line:?}");
    }
    assert!(history.lines.windows(2).all(|pair| pair[1].counted >= pair[0].counted - 1e-9));
    let at = |minute: i32| history.lines.iter().find(|line| line.minute >= minute).unwrap();
    assert!(at(40).centre > at(10).centre);
}

#[test]
fn a_larger_jar_is_colder_in_its_middle_at_the_same_minute() {
    let centre = |jar| {
        let history = draw(&words("tomatoes-crushed", jar, "boiling-water", "1,200 ft"));
        history.lines.iter().find(|line| line.minute >= 30).unwrap().centre
    };
    assert!(centre("quart") < centre("pint"));
}

#[test]
fn what_it_says_in_words_covers_size_fill_clock_and_lost_boil() {
    let history = draw(&words("tomatoes-crushed", "pint", "boiling-water", "3,200 ft"));
    let codes: Vec<&str> = history.compared.iter().map(|note| note.code).collect();
    assert_eq!(codes, ["what-counts", "jar", "jar", "filled-colder", "clock", "lost-boil", "altitude"]);
    // No comparison turns a difference into minutes of another process.
    for note in history.compared.iter().filter(|note| note.code == "jar") {
        assert!(!note.text.contains("minute"), "{}", note.text);
    }
}

/// Source: P. Willmore and others, Food Protection Trends 35(3), 2015, abstract: in home jars of acid food, cooling in air
/// gave 48 % (a thin sauce) to 95 % (applesauce) of the lethality at 180 F.
/// Tolerance: the printed range itself; jars, fills and foods of the study are not printed.
#[test]
fn cooling_in_air_gives_as_much_as_was_measured() {
    for jar in ["pint", "quart"] {
        let history = draw(&words("tomatoes-crushed", jar, "boiling-water", "200 ft"));
        let at_end = history.lines.iter().rfind(|line| line.minute <= 35).unwrap();
        let after = 100.0 - at_end.counted;
        assert!((48.0..=95.0).contains(&after), "{jar}: {after}");
    }
}

#[test]
fn a_pressure_process_is_counted_by_its_spores() {
    let raw = WhyWords {
        clear: ClearWords {
            gauge_tested: Some("this-year".into()),
            ..words("beans-snap-italian", "pint", "weighted", "800 ft").clear
        },
        filled_at: Some("180 F".into()),
    };
    let history = draw(&raw);
    assert!(history.printed_psi.is_some());
    assert!(history.around_celsius > 112.0);
    assert!(history.compared.iter().all(|note| note.code != "lost-boil"));
}

#[test]
fn nothing_is_drawn_where_nothing_is_printed() {
    let almanac = load();
    for (food, jar) in
        [("tomatoes-crushed", "half-gallon"), ("pumpkin puree", "pint"), ("garlic in oil", "half-pint")]
    {
        let error = explain_heat(almanac, &words(food, jar, "boiling-water", "1,200 ft")).unwrap_err();
        assert!(matches!(error, WhyError::NothingPrinted { .. }), "{food}: {error}");
        assert!(error.to_string().contains("stillroom clear"));
    }
    let no_height = WhyWords {
        clear: ClearWords { altitude: None, ..words("tomatoes-crushed", "pint", "boiling-water", "").clear },
        filled_at: None,
    };
    assert!(matches!(explain_heat(almanac, &no_height), Err(WhyError::Asked(_))));
    let weighs = WhyWords {
        filled_at: Some("4 kg".into()),
        ..words("tomatoes-crushed", "pint", "boiling-water", "0 ft")
    };
    assert!(matches!(explain_heat(almanac, &weighs), Err(WhyError::Reckoned(_))));
}
