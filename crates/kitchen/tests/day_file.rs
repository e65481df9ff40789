//! Day files as people write them: read rightly, or refused with every fault at once.

use std::sync::LazyLock;

use almanac::{Almanac, CannerKind, JarSize, Mouth};
use jiff::civil::{Date, date};
use kitchen::day::{ClockTime, Condition, Day, Liking, Need, Span, Units, Waits, Wish, WishFor};
use kitchen::{DayFaults, FaultKind, WhichFile, new_day_file, read_day, read_day_on};
use measure::{Altitude, Mass, Minutes, Percent, Pressure, Volume};
use proptest::prelude::*;

static ALMANAC: LazyLock<Almanac> = LazyLock::new(|| Almanac::load().expect("the tables of the tree load"));

const DAY: Date = date(2026, 8, 29);

/// Reads a day beside no house file.
fn read(day: &str) -> Result<Day, DayFaults> {
    read_day_on(DAY, day.as_bytes(), None, &ALMANAC)
}

/// Reads a day that has no fault.
fn read_well(day: &str) -> Day {
    read(day).unwrap_or_else(|faults| panic!("{faults}"))
}

/// The faults of a day, as a person sees them.
fn faults_of(day: &str) -> String {
    read(day).expect_err("the day has faults").to_string()
}

/// The faults of a day beside a house, as a person sees them.
fn faults_of_both(day: &str, house: &str) -> String {
    let read = read_day_on(DAY, day.as_bytes(), Some(house.as_bytes()), &ALMANAC);
    read.expect_err("the two have faults").to_string()
}

/// Whether two weights are the same to a tenth of a gram.
fn is_close(one: Mass, other: Mass) -> bool {
    (one.as_grams() - other.as_grams()).abs() < 0.1
}

// ---- What is read ----

#[test]
fn an_empty_day_is_filled_in_and_says_so() {
    let day = read_well("");
    assert_eq!(day.date, DAY);
    assert_eq!(day.altitude, None, "the altitude has no default");
    assert_eq!(day.units, Units::Us);
    let [cook] = day.people.as_slice() else { panic!("{:?}", day.people) };
    assert_eq!(cook.hours, [Span { from: ClockTime(540), to: ClockTime(1020) }]);
    assert_eq!(cook.breaks, [Span { from: ClockTime(750), to: ClockTime(780) }]);
    assert_eq!((day.equipment.burners, day.equipment.strong_burners), (4, 2));
    assert!(day.canners.is_empty());
    insta::assert_snapshot!(day.filled_in.join("\n"));
}

#[test]
fn a_day_without_a_date_is_a_fault_when_nobody_knows_today() {
    let faults = read_day(b"units = \"us\"", None, &ALMANAC).unwrap_err();
    insta::assert_snapshot!(faults);
}

#[test]
fn a_day_that_states_everything_fills_in_nothing() {
    let day = read_well(FULL);
    assert_eq!(day.filled_in, Vec::<String>::new());
    assert_eq!(day.date, date(2026, 9, 3));
    assert_eq!(day.altitude, Some(Altitude::feet(5250)));
    assert_eq!(day.units, Units::Metric);
    assert_eq!(day.people[0].hours.len(), 2);
    assert_eq!(day.people[0].careful_until, Some(ClockTime(16 * 60)));
    assert!(!day.people[0].may_do_careful);
    assert_eq!((day.equipment.dryer_trays, day.equipment.crocks), (7, 10));

    let canner = &day.canners[0];
    assert_eq!((canner.id.as_str(), canner.kind), ("old canner", CannerKind::Dial));
    assert_eq!(canner.holds, [(JarSize::Quart, 7), (JarSize::HalfPint, 12)]);
    assert_eq!(canner.gauge_error, Some(Pressure::psi(-0.5)));
    assert_eq!(canner.gauge_tested, Some(date(2026, 5, 9)));

    let basket = &day.baskets[0];
    assert_eq!(basket.entered, "tomatoes");
    assert!(is_close(basket.net, Mass::kilograms(9.4)), "{:?}", basket.net);
    assert_eq!(basket.weighed, "10,5 kg less the Blue bowl, 1.1 kg");
    assert_eq!(basket.condition, [Condition::Split, Condition::Ripe]);
    assert_eq!((basket.waits, basket.waits_is_ours), (Waits::Tomorrow, false));

    let jars = &day.jars[0];
    assert_eq!((jars.size, jars.mouth, jars.count), (JarSize::PintAndHalf, Mouth::Wide, 9));
    assert_eq!((day.lids[0].mouth, day.lids[0].count), (Mouth::Regular, 12));
    assert_eq!((day.lids[1].mouth, day.lids[1].count), (Mouth::Wide, 0));
}

#[test]
fn supplies_are_read_in_their_own_units() {
    let supplies = read_well(FULL).supplies;
    assert_eq!(supplies.vinegar[0].kind, "cider");
    assert_eq!(supplies.vinegar[0].strength, Some(Percent::of_hundred(5.0)));
    assert!((supplies.vinegar[0].amount.as_gallons() - 1.5).abs() < 1e-9);
    assert_eq!(supplies.vinegar[1].strength, Some(Percent::of_hundred(4.0)));
    assert_eq!(supplies.bottled_lemon, Some(Volume::millilitres(750.0)));
    assert_eq!(supplies.citric_acid, Some(Mass::grams(50.0)));
    assert_eq!(supplies.sugar, [("white".to_owned(), Mass::kilograms(4.0))]);
    let salts: Vec<&str> = supplies.salt.iter().map(|(kind, _)| kind.as_str()).collect();
    assert_eq!(salts, ["canning", "kosher flake"]);
    assert_eq!(supplies.pectin, [("powdered".to_owned(), 2)]);
    assert_eq!(supplies.bags, Some(30));
    assert_eq!(supplies.freezer, Some(Volume::cubic_feet(2.0)));
    assert_eq!(supplies.other.len(), 2);
}

#[test]
fn wishes_and_errands_are_read_whole() {
    let day = read_well(FULL);
    let formula = |id: &str| WishFor::Formula(id.into());
    assert!(matches!(&day.wishes[0], Wish::Must(what) if *what == formula("tomatoes_crushed")));
    assert!(matches!(&day.wishes[1], Wish::NotToday(WishFor::Unknown(words)) if words == "sunshine in jars"));
    let Wish::Target { what, containers, on_shelf, size } = &day.wishes[2] else {
        panic!("{:?}", day.wishes)
    };
    assert_eq!((what, *containers, *on_shelf, *size), (&formula("applesauce"), 20, 6, JarSize::Quart));
    let Wish::Like { what, how } = &day.wishes[3] else { panic!("{:?}", day.wishes) };
    assert_eq!((what, *how), (&formula("pickled_beets"), Liking::NotEaten));

    let errand = &day.errands[0];
    assert!(!errand.must);
    let step = &errand.steps[0];
    assert_eq!(step.minutes, Minutes(80));
    assert_eq!(step.needs, [Need::Oven, Need::Burner, Need::Burner]);
    assert_eq!((step.earliest, step.done_by), (Some(ClockTime(9 * 60 + 30)), Some(ClockTime(17 * 60))));
    assert_eq!((step.wait_at_least, step.wait_at_most), (Minutes(10), Some(Minutes(30))));
    assert_eq!((errand.steps[1].minutes, errand.steps[1].away), (Minutes(5), true));
}

const FULL: &str = r#"
date = 2026-09-03
altitude = "1600 m"
units = "metric"
[[person]]
name = "Ada"
hours = ["14:00 to 6 pm", "8:00–12:30"]
breaks = []
careful_until = "16:00"
careful = false
[kitchen]
burners = 5
strong_burners = 1
pots = 3
ovens = 2
processors = 1
blenders = 1
dehydrator_trays = 7
sinks = 2
jelly_bags = 3
crocks = 1_0
[[bowl]]
name = "Blue"
tare = "1.1 kg"
[[canner]]
name = "old canner"
kind = "dial"
holds = { quart = 7, half-pints = 12 }
gauge_error = "-0.5 psi"
gauge_tested = "2026-05-09"
[[basket]]
produce = "tomatoes"
gross = "10,5 kg"
bowl = "blue"
condition = ["ripe", "split", "ripe"]
waits = "tomorrow"
[[jars]]
size = "pint and half"
mouth = "wide"
count = 9
[lids]
regular = 12
wide = 0
[supplies]
bottled_lemon = "750 ml"
citric_acid = "50 g"
sugar = "4 kg"
salt = { canning = "1 kg", kosher_flake = "3 lb" }
pectin = { powdered = 2 }
bags = 30
freezer = "2 cubic feet"
other = { "dill seed" = "1 oz", garlic = 3 }
[[supplies.vinegar]]
kind = "cider"
amount = "1 1/2 gal"
strength = "5 %"
[[supplies.vinegar]]
kind = "malt"
amount = "1 l"
strength = 4
[[wish]]
must = "tomatoes_crushed"
[[wish]]
not_today = "sunshine in jars"
[[wish]]
target = "applesauce"
containers = 20
on_shelf = 6
size = "quarts"
[likes]
pickled_beets = "not eaten"
[[errand]]
name = "bread"
must = false
[[errand.step]]
what = "bake"
minutes = "1 h 20 min"
attention = "none"
needs = ["oven", "burner", "burner"]
earliest = "9:30"
done_by = "5 pm"
wait_at_least = 10
wait_at_most = "half an hour"
[[errand.step]]
what = "carry it over"
minutes = 5
away = true
"#;

// ---- The two files together ----

#[test]
fn the_day_has_the_last_word() {
    let house = r#"
        altitude = "900 ft"
        units = "metric"
        [[person]]
        name = "Nora"
        [[person]]
        name = "Wim"
        hours = "8:00-12:00"
        [kitchen]
        burners = 6
        pots = 4
        [lids]
        regular = 40
        wide = 10
        [[bowl]]
        name = "blue"
        tare = "1 lb"
        [[bowl]]
        name = "green"
        tare = "2 lb"
        [likes]
        applesauce = "much"
    "#;
    let day = r#"
        altitude = "2,350 ft"
        [[person]]
        name = "Ada"
        hours = "8:00-11:00"
        [kitchen]
        burners = 3
        [lids]
        wide = 2
        [[bowl]]
        name = "Blue"
        tare = "3 lb"
        [[basket]]
        produce = "tomatoes"
        gross = "13 lb"
        bowl = "blue"
        [likes]
        applesauce = "little"
    "#;
    let day = read_day_on(DAY, day.as_bytes(), Some(house.as_bytes()), &ALMANAC).unwrap();
    assert_eq!(day.altitude, Some(Altitude::feet(2350)));
    assert_eq!(day.units, Units::Metric);
    let names: Vec<&str> = day.people.iter().map(|person| person.name.as_str()).collect();
    assert_eq!(names, ["Ada"]);
    assert_eq!((day.equipment.burners, day.equipment.pots), (3, 4));
    let lids: Vec<u32> = day.lids.iter().map(|lids| lids.count).collect();
    assert_eq!(lids, [40, 2]);
    assert_eq!(day.equipment.bowls.len(), 2);
    assert!(is_close(day.baskets[0].net, Mass::pounds(10.0)));
    assert!(matches!(day.wishes.as_slice(), [Wish::Like { how: Liking::Little, .. }]), "{:?}", day.wishes);
    assert!(!day.filled_in.iter().any(|line| line.contains("Nora")), "{:?}", day.filled_in);
}

#[test]
fn a_broken_house_does_not_hide_the_faults_of_the_day() {
    let day =
        "[[basket]]\nproduce = \"tomatoes\"\ngross = \"13 lb\"\nbowl = \"blue\"\n[lids]\nregular = -1\n";
    insta::assert_snapshot!(faults_of_both(day, "[[bowl]]\nname = \"blue\ntare = \"1 lb\"\n"));
}

#[test]
fn a_broken_day_does_not_hide_the_faults_of_the_house() {
    insta::assert_snapshot!(faults_of_both("date = tomorrow\n", "[kitchen]\nburner = 4\n"));
}

#[test]
fn what_belongs_to_one_day_is_refused_in_the_house() {
    let house = "date = 2026-08-29\n[[basket]]\nproduce = \"tomatoes\"\n[[errand]]\nname = \"bread\"\n";
    insta::assert_snapshot!(faults_of_both("", house));
}

// ---- Waits and weights ----

#[test]
fn condition_shortens_the_wait_and_the_wait_is_marked_as_ours() {
    let basket = |condition: &str| {
        let text = format!("[[basket]]\nproduce = \"tomatoes\"\nnet = \"5 lb\"\ncondition = {condition}\n");
        let day = read_well(&text);
        assert!(day.baskets[0].waits_is_ours);
        let sentence = day.filled_in.iter().find(|line| line.starts_with("tomatoes")).cloned();
        (day.baskets[0].waits, sentence.unwrap())
    };
    let (waits, sentence) = basket("[\"split\", \"ripe\"]");
    assert_eq!((waits, sentence.as_str()), (Waits::Today, "tomatoes will wait for today only, being split"));
    assert_eq!(basket("\"bruised\"").0, Waits::Tomorrow);
    let (waits, sentence) = basket("[]");
    assert_eq!(waits, Waits::Days);
    assert_eq!(
        sentence,
        "tomatoes will wait two to four days, their shortest printed life in a cold store being 7 days"
    );
    assert_eq!(basket("\"frozen\"").0, Waits::Week);
}

#[test]
fn half_a_bushel_weighs_half_the_printed_bushel_of_its_crop() {
    // 53 lb a bushel of tomatoes, 48 lb of peaches: USDA, Complete Guide to Home Canning (AIB 539), 1994,
    // quantity lines of whole tomatoes and of peaches.
    let weigh = |produce: &str, net: &str| {
        let day = read_well(&format!("[[basket]]\nproduce = \"{produce}\"\nnet = \"{net}\"\n"));
        day.baskets[0].net
    };
    assert!(is_close(weigh("tomatoes", "half a bushel"), Mass::pounds(26.5)));
    assert!(is_close(weigh("peaches", "1 peck"), Mass::pounds(12.0)));
}

#[test]
fn pieces_weigh_what_the_almanac_says_one_weighs_as_it_comes() {
    let day = read_well(
        "[[basket]]\nproduce = \"cabbage\"\ncount = 3\n[[basket]]\nproduce = \"peaches\"\ncount = \"2 dozen\"\n",
    );
    let each =
        |name: &str| ALMANAC.find_produce(name).one().and_then(|produce| produce.each_as_purchased).unwrap();
    assert!(is_close(day.baskets[0].net, each("cabbage") * 3.0));
    assert!(is_close(day.baskets[1].net, each("peaches") * 24.0));
    let weighed: Vec<&str> = day.baskets.iter().map(|basket| basket.weighed.as_str()).collect();
    insta::assert_snapshot!(weighed.join("\n"));
}

#[test]
fn a_wish_names_a_formula_a_produce_or_nothing_tested() {
    let wish = |words: &str| match read_well(&format!("[[wish]]\nmust = \"{words}\"\n")).wishes.remove(0) {
        Wish::Must(what) => what,
        other => panic!("{other:?}"),
    };
    assert_eq!(wish("sauerkraut"), WishFor::Formula("sauerkraut".into()));
    assert_eq!(wish("tomatoes crushed"), WishFor::Formula("tomatoes_crushed".into()));
    assert_eq!(wish("green beans"), WishFor::Produce("snap-beans".into()));
    assert_eq!(wish("Tomatoes"), WishFor::Produce("tomatoes".into()));
    assert_eq!(wish("zucchini relish canned"), WishFor::Unknown("zucchini relish canned".into()));
    assert_eq!(
        wish("pumpkin puree canned in pints"),
        WishFor::Unknown("pumpkin puree canned in pints".into())
    );
}

// ---- Faults ----

#[test]
fn words_that_name_nothing_get_the_nearest_names() {
    insta::assert_snapshot!(faults_of(
        r#"[[basket]]
produce = "tomatos plum"
net = "4 lb"
[[basket]]
produce = "zuchini"
net = "4 lb"
[[basket]]
produce = "beans"
net = "4 lb"
[[basket]]
produce = ""
net = "4 lb"
[[basket]]
produce = "pumpkin"
count = 4
[[basket]]
produce = "rhubarb"
net = "2 bushels"
[[basket]]
produce = "garlic"
net = "3 crates"
[[wish]]
must = "tomatoes_crushd"
[[wish]]
not_today = "jelly"
"#
    ));
}

#[test]
fn every_fault_is_reported_at_once() {
    let faults = read(MANY_FAULTS).unwrap_err();
    assert!(faults.faults.len() >= 12, "{faults}");
    assert!(faults.faults.is_sorted_by_key(|fault| (fault.file, fault.line, fault.column)));
    insta::assert_snapshot!(faults);
}

const MANY_FAULTS: &str = r#"colour = "red"
altitude = 2350
units = "imperial"
[[person]]
name = "Ada"
hours = ["17:00-9:00"]
[kitchen]
burners = 3
strong_burners = 4
oven = 1
[[basket]]
produse = "tomatoes"
net = "4 lb"
[[basket]]
produce = "cucumbers"
net = "4 stone"
[[jars]]
size = "gallon"
count = 4
[[wish]]
not_today = "applesauce"
[[wish]]
must = "applesauce"
[[errand]]
name = "stock"
[[errand.step]]
what = "boil bones"
minutes = 90
needs = ["dial canner", "stove"]
"#;

#[test]
fn a_basket_says_what_is_wrong_with_its_weight() {
    insta::assert_snapshot!(faults_of(
        r#"[[bowl]]
name = "blue"
tare = "2 lb"
[[bowl]]
name = "unweighed"
[[bowl]]
name = "paper"
tare = "0 oz"
[[basket]]
produce = "tomatoes"
gross = "9 lb"
net = "7 lb"
bowl = "blue"
[[basket]]
produce = "tomatoes"
gross = "9 lb"
[[basket]]
produce = "tomatoes"
gross = "9 lb"
bowl = "red"
[[basket]]
produce = "tomatoes"
gross = "9 lb"
bowl = "unweighed"
[[basket]]
produce = "tomatoes"
gross = "2 lb"
bowl = "blue"
[[basket]]
produce = "tomatoes"
net = "2 lb"
bowl = "blue"
[[basket]]
produce = "tomatoes"
[[basket]]
produce = "tomatoes"
net = "0 lb"
[[basket]]
produce = "tomatoes"
net = 12
[[basket]]
produce = "tomatoes"
net = "12"
[[basket]]
produce = "tomatoes"
net = "2 lb 3 fathoms"
[[basket]]
produce = "tomatoes"
net = "2,300 kg"
[[basket]]
produce = "tomatoes"
net = "4 lb"
condition = ["sound", "split", "mouldy"]
waits = "tommorow"
"#
    ));
}

#[test]
fn people_say_what_is_wrong_with_their_hours() {
    insta::assert_snapshot!(faults_of(
        r#"[[person]]
hours = "8:00-12:00"
[[person]]
name = "Ada"
hours = ["8:00-12:00", "11:00-14:00"]
breaks = ["15:00-15:30"]
[[person]]
name = "Ada"
hours = []
[[person]]
name = "Tom"
hours = "all day"
careful_until = "25:00"
[[person]]
name = "  "
hours = [8, "9:00-10:61"]
careful = "yes"
"#
    ));
}

#[test]
fn canners_and_jars_say_what_is_wrong_with_them() {
    insta::assert_snapshot!(faults_of(
        r#"[[canner]]
name = "kettle"
kind = "boiling water"
gauge_error = "+0.5 psi"
holds = { litre = 5, pint = 101 }
[[canner]]
name = "dial"
kind = "dail"
gauge_error = 0.5
[[canner]]
name = "Dial"
kind = "dial"
gauge_tested = 2026-12-01
holds = 7
[[jars]]
size = "pint"
mouth = "narrow"
count = 12.5
[[jars]]
size = "quart"
count = 1
[[jars]]
size = "quart"
mouth = "regular"
count = 2
[lids]
regular = 20000
golden = 3
"#
    ));
}

#[test]
fn supplies_and_wishes_say_what_is_wrong_with_them() {
    insta::assert_snapshot!(faults_of(
        r#"[supplies]
sugar = "12 cups"
salt = "3 lb"
bags = "many"
freezer = 40
pectin = { powder = 1 }
[[supplies.vinegar]]
strength = "140 %"
[[wish]]
containers = 4
[[wish]]
must = "applesauce"
target = "applesauce"
[[wish]]
target = "applesauce"
on_shelf = -2
[[wish]]
must = "applesauce"
size = "pint"
[likes]
applesauce = "very"
tomatoes_crushd = "much"
"#
    ));
}

#[test]
fn errands_say_what_is_wrong_with_them() {
    insta::assert_snapshot!(faults_of(
        r#"[[errand]]
name = "nothing"
[[errand]]
name = "dinner"
[[errand.step]]
what = "roast"
minutes = 120
needs = ["oven", "oven"]
earliest = "16:00"
done_by = "17:30"
[[errand.step]]
what = "fetch the children"
minutes = 0
attention = "none"
away = true
[[errand.step]]
what = "rest"
minutes = "a while"
[[errand.step]]
what = "boil jars"
minutes = 10
needs = "jars"
wait_at_least = "1 h"
wait_at_most = 30
"#
    ));
}

#[test]
fn a_table_that_is_none_is_told_how_it_is_written() {
    insta::assert_snapshot!(faults_of("basket = \"tomatoes\"\nkitchen = 4\n[person]\nname = \"Ada\"\n"));
}

#[test]
fn the_column_counts_letters_and_points_into_the_text() {
    let faults = read("[[basket]]\nproduce = \"tomatoes\"\nnet = \"½ kg 3 q\" # ½\n").unwrap_err();
    let fault = &faults.faults[0];
    assert_eq!((fault.file, fault.line, fault.column), (WhichFile::Day, 3, 15), "{faults}");
    assert!(matches!(fault.kind, FaultKind::UnreadableAmount { .. }));
}

// ---- Bytes of every kind ----

#[test]
fn a_byte_order_mark_and_carriage_returns_change_nothing() {
    let plain = "units = \"metric\"\n[[basket]]\nproduce = \"tomatoes\"\nnet = \"2 kg\"\n";
    let crlf = plain.replace('\n', "\r\n");
    let with_mark = format!("\u{FEFF}{crlf}");
    let little: Vec<u8> = with_mark.encode_utf16().flat_map(u16::to_le_bytes).collect();
    let big: Vec<u8> = with_mark.encode_utf16().flat_map(u16::to_be_bytes).collect();
    for bytes in [plain.as_bytes(), crlf.as_bytes(), with_mark.as_bytes(), &little, &big] {
        let day = read_day_on(DAY, bytes, None, &ALMANAC).unwrap();
        assert_eq!(day.units, Units::Metric);
        assert!(is_close(day.baskets[0].net, Mass::kilograms(2.0)));
    }
}

#[test]
fn what_is_no_text_is_refused_in_one_sentence() {
    let ten_megabytes = vec![b'#'; 10 * 1024 * 1024];
    let cases: [&[u8]; 6] = [
        &ten_megabytes,
        b"units = \"us\"\n\0",
        b"u\0n\0i\0t\0s\0",
        b"units = \"us\"\nname = \"caf\xE9\"\n",
        b"\xFF\xFEa\0b",
        b"\x7FELF\x02\x01\x01\xFF\xFE\x00\x80",
    ];
    let refuse = |bytes: &&[u8]| read_day_on(DAY, bytes, None, &ALMANAC).unwrap_err().to_string();
    let told: Vec<String> = cases.iter().map(refuse).collect();
    insta::assert_snapshot!(told.join("\n"));
}

#[test]
fn nesting_without_end_is_refused_and_does_not_panic() {
    for text in
        ["a.".repeat(400_000) + "a = 1", "a = ".to_owned() + &"[".repeat(900_000), "{".repeat(900_000)]
    {
        let faults = read(&text).unwrap_err();
        assert!(matches!(faults.faults[0].kind, FaultKind::Syntax { .. }), "{faults}");
    }
}

#[test]
fn thousands_of_faults_are_counted_rather_than_listed() {
    let faults = read(&"[[basket]]\n".repeat(5_000)).unwrap_err();
    assert_eq!(faults.faults.len(), DayFaults::MOST);
    // Each lacks its produce and its weight.
    assert_eq!(faults.more, 2 * 5_000 - DayFaults::MOST);
    assert!(faults.to_string().ends_with("and 9900 more faults"));
}

proptest! {
    #[test]
    fn arbitrary_bytes_never_panic(
        day in prop::collection::vec(any::<u8>(), 0..400),
        house in prop::collection::vec(any::<u8>(), 0..200),
    ) {
        let _ = read_day_on(DAY, &day, Some(&house), &ALMANAC);
    }

    #[test]
    fn arbitrary_text_never_panics(day in "[\\[\\]{}a-z=\"'#,.0-9\\n ½é]{0,300}") {
        let _ = read_day_on(DAY, day.as_bytes(), None, &ALMANAC);
    }

}

proptest! {
    // Each case reads a whole day of every key, names and all.
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn a_day_with_a_spoilt_line_never_panics(line in 0_usize..100, spoilt in "[ -~½é]{0,30}") {
        let mut lines: Vec<&str> = FULL.lines().collect();
        let at = line % lines.len();
        lines[at] = &spoilt;
        let _ = read(&lines.join("\n"));
    }

    #[test]
    fn a_day_with_a_spoilt_value_never_panics(
        line in 0_usize..100,
        value in "[ !#-~½é]{0,20}",
        bare in any::<bool>(),
    ) {
        let mut lines: Vec<String> = FULL.lines().map(str::to_owned).collect();
        let at = line % lines.len();
        let value = if bare { value } else { format!("\"{}\"", value.replace('\\', "/")) };
        if let Some((key, _)) = lines[at].split_once('=') {
            lines[at] = format!("{key}= {value}");
        }
        let _ = read(&lines.join("\n"));
    }
}

// ---- The files that come along ----

#[test]
fn the_new_day_file_reads_without_a_fault_and_leaves_the_altitude_open() {
    let page = new_day_file(date(2026, 9, 3));
    let day = read_day(page.as_bytes(), None, &ALMANAC).unwrap_or_else(|faults| panic!("{faults}"));
    assert_eq!(day.date, date(2026, 9, 3));
    assert_eq!(day.altitude, None);
    assert_eq!(day.baskets.len(), 2);
    assert!(page.lines().all(|line| line.chars().count() <= 120));
}

/// Reads one of the demo days.
fn read_demo(folder: &str) -> Day {
    let open = |name: &str| {
        let path = format!("{}/../../demo/{folder}{name}", env!("CARGO_MANIFEST_DIR"));
        std::fs::read(&path).unwrap_or_else(|error| panic!("{path}: {error}"))
    };
    let read = read_day(&open("day.toml"), Some(&open("house.toml")), &ALMANAC);
    read.unwrap_or_else(|faults| panic!("{faults}"))
}

#[test]
fn the_demo_day_holds_what_makes_it_a_day_of_choices() {
    let day = read_demo("");
    assert_eq!(day.altitude, Some(Altitude::feet(2350)));
    assert_eq!(day.people.len(), 2);
    assert_eq!(day.people[1].hours, [Span { from: ClockTime(15 * 60), to: ClockTime(18 * 60) }]);
    assert!(day.baskets.len() >= 7);
    let conditions: Vec<Condition> =
        day.baskets.iter().flat_map(|basket| basket.condition.iter().copied()).collect();
    assert!(conditions.contains(&Condition::Split) && conditions.contains(&Condition::Overgrown));
    assert!(day.baskets.iter().any(|basket| basket.net < Mass::ounces(8.0)), "one is too little for a batch");
    let untested = |wish: &Wish| matches!(wish, Wish::Must(WishFor::Unknown(_)));
    assert!(day.wishes.iter().any(untested), "{:?}", day.wishes);
    let dial = day.canners.iter().find(|canner| canner.kind == CannerKind::Dial).unwrap();
    assert_eq!(dial.gauge_error, Some(Pressure::psi(0.5)));
    assert_eq!(dial.gauge_tested.map(Date::year), Some(day.date.year()));
    let wide_jars: u32 =
        day.jars.iter().filter(|jars| jars.mouth == Mouth::Wide).map(|jars| jars.count).sum();
    let wide_lids: u32 =
        day.lids.iter().filter(|lids| lids.mouth == Mouth::Wide).map(|lids| lids.count).sum();
    assert!(wide_lids < wide_jars);
    assert!(day.errands[0].steps.iter().filter(|step| step.minutes >= Minutes(50)).count() >= 2);
    insta::assert_snapshot!(day.filled_in.join("\n"));
}

#[test]
fn the_metric_demo_day_is_a_kitchen_at_1600_m_with_a_weighted_gauge() {
    let day = read_demo("metric/");
    assert_eq!(day.altitude, Some(Altitude::feet(5250)));
    assert_eq!(day.units, Units::Metric);
    assert!(day.canners.iter().any(|canner| canner.kind == CannerKind::Weighted));
}

#[test]
fn the_club_demo_day_has_thirty_baskets_and_six_people() {
    let day = read_demo("club/");
    assert_eq!((day.baskets.len(), day.people.len()), (30, 6));
    for &kind in CannerKind::ALL {
        assert_eq!(day.canners.iter().filter(|canner| canner.kind == kind).count(), 2, "{kind}");
    }
}
