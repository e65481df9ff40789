//! Days on which something is missing, weak, too high, too much, or not there at all.

use kitchen::answer::DayAnswer;

use crate::days::{BEANS, COOK, CUCUMBERS, KETTLE, LOW, NO_BAGS, PEACHES, PINTS, dial, lids, plan};
use crate::laws;

const MUST_BEANS: &str = "[[wish]]\nmust = \"snap_beans_canned\"";

fn is_canned(answer: &DayAnswer) -> bool {
    answer.makes.iter().any(|make| make.process.is_some())
}

/// What the answer says of why something is not made, in one text.
fn reasons(answer: &DayAnswer) -> String {
    let not_made = answer.not_made.iter().map(|not_made| not_made.why.clone());
    let refused = answer.refusals.iter().flat_map(|refusal| refusal.because.clone());
    not_made.chain(refused).collect::<Vec<_>>().join("\n").to_lowercase()
}

#[test]
fn without_an_altitude_nothing_is_canned_and_the_rest_goes_on() {
    let cabbage = "[[basket]]\nproduce = \"cabbage\"\nnet = \"12 lb\"";
    let basil = "[[basket]]\nproduce = \"basil\"\nnet = \"8 oz\"";
    let kitchen = "[kitchen]\ndehydrator_trays = 5\ncrocks = 1\n[supplies]\nbags = 20\nfreezer = \"20 l\"";
    let long = "[[person]]\nname = \"Ada\"\nhours = \"7:00-19:00\"\nbreaks = []";
    let planned = plan(&[long, KETTLE, PEACHES, cabbage, basil, PINTS, &lids(16), kitchen]);
    laws::keep(&planned);
    let answer = &planned.answer;
    assert!(!is_canned(answer));
    let refusal = answer.refusals.iter().find(|refusal| refusal.wish == "canning").expect("it is refused");
    let ways = ["map", "extension office", "benchmark"];
    assert!(ways.iter().all(|way| refusal.instead.iter().any(|instead| instead.contains(way))));
    let keeps = |words: &str| answer.makes.iter().any(|make| make.name.contains(words));
    assert!(keeps("dried") || keeps("frozen") || keeps("leather"), "{:?}", answer.makes);
    assert!(answer.makes.iter().any(|make| make.formula.as_deref() == Some("sauerkraut")));
}

#[test]
fn above_the_last_band_of_a_dial_no_beans_are_canned() {
    let good = "gauge_error = \"0 psi\"\ngauge_tested = 2026-05-01";
    let at = |altitude: &str| {
        let height = format!("altitude = \"{altitude}\"");
        plan(&[&height, COOK, &dial(good), BEANS, PINTS, &lids(16), NO_BAGS, MUST_BEANS])
    };
    let below = at("7,500 ft");
    laws::keep(&below);
    assert!(is_canned(&below.answer), "{}", reasons(&below.answer));
    let above = at("8,500 ft");
    laws::keep(&above);
    assert!(!is_canned(&above.answer));
    assert!(reasons(&above.answer).contains("altitude") || reasons(&above.answer).contains("ft"));
}

#[test]
fn a_gauge_untested_overdue_or_a_pound_off_gives_no_process() {
    let with = |gauge: &str| plan(&[LOW, COOK, &dial(gauge), BEANS, PINTS, &lids(16), NO_BAGS, MUST_BEANS]);
    assert!(is_canned(&with("gauge_error = \"+0.5 psi\"\ngauge_tested = 2026-05-01").answer));
    for gauge in [
        "",
        "gauge_error = \"0 psi\"",
        "gauge_error = \"0 psi\"\ngauge_tested = 2024-05-01",
        "gauge_error = \"+1 psi\"\ngauge_tested = 2026-05-01",
        "gauge_error = \"-2 psi\"\ngauge_tested = 2026-05-01",
    ] {
        let planned = with(gauge);
        laws::keep(&planned);
        assert!(!is_canned(&planned.answer), "{gauge}");
        assert!(reasons(&planned.answer).contains("gauge"), "{gauge}: {}", reasons(&planned.answer));
    }
}

#[test]
fn a_gauge_that_reads_high_is_held_higher() {
    let held = |gauge: &str| {
        let planned = plan(&[LOW, COOK, &dial(gauge), BEANS, PINTS, &lids(16), NO_BAGS, MUST_BEANS]);
        let make = planned.answer.makes.iter().find_map(|make| make.process.clone());
        make.and_then(|process| process.hold_psi).expect("beans are canned under a dial")
    };
    let true_gauge = held("gauge_error = \"0 psi\"\ngauge_tested = 2026-05-01");
    let high_gauge = held("gauge_error = \"+0.5 psi\"\ngauge_tested = 2026-05-01");
    assert!(high_gauge >= true_gauge + 0.5, "{high_gauge} against {true_gauge}");
}

#[test]
fn weak_vinegar_is_refused_and_not_counted() {
    let with = |strength: &str| {
        let vinegar =
            format!("[[supplies.vinegar]]\nkind = \"white\"\namount = \"2 gal\"\nstrength = \"{strength}\"");
        plan(&[LOW, COOK, KETTLE, CUCUMBERS, PINTS, &lids(16), &vinegar])
    };
    let to_fetch = |answer: &DayAnswer| answer.to_fetch.iter().any(|line| line.what.contains("inegar"));
    let (strong, weak) = (with("5 %"), with("4 %"));
    laws::keep(&weak);
    for day in [&strong, &weak] {
        assert!(is_canned(&day.answer), "{:?}", day.answer.not_made);
    }
    assert!(!to_fetch(&strong.answer), "two gallons are enough: {:?}", strong.answer.to_fetch);
    assert!(to_fetch(&weak.answer), "{:?}", weak.answer.to_fetch);
    let refused = weak.answer.refusals.iter().find(|refusal| refusal.wish.contains("vinegar of 4 %"));
    assert!(refused.is_some_and(|refusal| refusal.verdict == "do not"), "{:?}", weak.answer.refusals);
    assert!(!strong.answer.refusals.iter().any(|refusal| refusal.wish.contains("vinegar")));
}

#[test]
fn a_must_that_cannot_fit_names_the_clashing_facts() {
    let short = "[[person]]\nname = \"Ada\"\nhours = \"8:00-9:00\"\nbreaks = []";
    let must = "[[wish]]\nmust = \"peaches_halved\"";
    let planned = plan(&[LOW, short, KETTLE, PEACHES, PINTS, &lids(16), must]);
    let answer = &planned.answer;
    assert!(!is_canned(answer));
    assert!(!answer.clash.is_empty(), "{}", reasons(answer));
    assert!(answer.clash.iter().any(|fact| fact.to_lowercase().contains("peach")), "{:?}", answer.clash);
    assert!(
        answer.clash.iter().all(|fact| fact.contains(' ')),
        "facts are told in words: {:?}",
        answer.clash
    );
}

#[test]
fn half_gallon_jars_alone_can_nothing_but_juice() {
    let jars = "[[jars]]\nsize = \"half-gallon\"\nmouth = \"wide\"\ncount = 6\n[lids]\nwide = 6";
    let must = "[[wish]]\nmust = \"peaches_halved\"";
    let planned = plan(&[LOW, COOK, KETTLE, PEACHES, CUCUMBERS, jars, must]);
    laws::keep(&planned);
    assert!(!is_canned(&planned.answer));
    assert!(reasons(&planned.answer).contains("jar"), "{}", reasons(&planned.answer));
}

#[test]
fn words_that_name_nothing_tested_are_refused_and_the_day_goes_on() {
    let wish = "[[wish]]\nmust = \"aunt Zelda's moon marmalade\"";
    let planned = plan(&[LOW, COOK, KETTLE, PEACHES, PINTS, &lids(16), wish]);
    laws::keep(&planned);
    assert!(is_canned(&planned.answer));
    let refusal = planned.answer.refusals.iter().find(|refusal| refusal.wish.contains("moon"));
    assert!(refusal.is_some_and(|refusal| !refusal.instead.is_empty()), "{:?}", planned.answer.refusals);
}

#[test]
fn empty_days_have_empty_plans() {
    let nothing = ["", LOW, "units = \"metric\""];
    for head in nothing {
        let planned = plan(&[head]);
        laws::keep(&planned);
        assert!(planned.answer.makes.is_empty() && planned.answer.clock.is_empty());
        assert_eq!(planned.answer.finish, None);
    }
}

#[test]
fn a_kitchen_without_a_pot_or_a_strong_burner_cans_nothing() {
    let bare = "[kitchen]\nburners = 1\nstrong_burners = 0\npots = 0\ncrocks = 0\ndehydrator_trays = 0";
    let planned = plan(&[LOW, COOK, KETTLE, PEACHES, PINTS, &lids(16), bare]);
    laws::keep(&planned);
    assert!(!is_canned(&planned.answer), "no burner carries a canner");
}

#[test]
fn a_day_with_one_basket_and_no_jars_still_answers() {
    let planned = plan(&[LOW, COOK, KETTLE, PEACHES]);
    laws::keep(&planned);
    assert!(!is_canned(&planned.answer));
    assert!(!planned.answer.not_made.is_empty() || !planned.answer.makes.is_empty());
}

#[test]
fn a_day_on_which_nobody_comes_has_no_plan_and_no_panic() {
    let mut planned = plan(&[LOW, COOK, KETTLE, PEACHES, PINTS, &lids(16)]);
    planned.day.people[0].hours.clear();
    planned.answer = kitchen::plan_day(&crate::days::ALMANAC, &planned.day);
    assert!(planned.answer.makes.is_empty() && planned.answer.clock.is_empty());
    planned.day.people.clear();
    planned.answer = kitchen::plan_day(&crate::days::ALMANAC, &planned.day);
    assert!(planned.answer.makes.is_empty() && planned.answer.people.is_empty());
}
