//! Places where a table is easily misread.

use almanac::{Almanac, CannerKind, Verdict};
use batch::clear::Because;

use crate::table::{ask, served_lines};

fn almanac() -> Almanac {
    Almanac::load().expect("the built-in tables load")
}

/// Source: Michigan State University Extension, Preserving Food Safely, file 01600353, 1997 (seen): the second and
/// the third band of pints share their minutes, those of quarts do not.
#[test]
fn applesauce_pints_stand_still_for_one_band() {
    let almanac = almanac();
    let minutes =
        |jar, feet| served_lines(&ask(&almanac, "applesauce", "hot", jar, CannerKind::BoilingWater, feet));
    assert_eq!(minutes("pint", 3000), minutes("pint", 3001));
    assert_ne!(minutes("quart", 3000), minutes("quart", 3001));
}

/// Source: USDA, AIB 539, 1994, Pickled beets, table 1, a typed copy (seen), prints 45 between 30 and 40; the 2015
/// revision and Michigan State 1997 print 35. The slip is not served.
#[test]
fn the_slip_in_the_old_beet_table_is_not_served() {
    let almanac = almanac();
    let served =
        served_lines(&ask(&almanac, "beets-pickled", "hot", "quart", CannerKind::BoilingWater, 2000));
    assert_eq!(served, [(35, None)]);
}

/// Source: Pacific Northwest Extension PNW 421, altitude list (seen): a dial steps at 2,000, 4,000 and 6,000 ft, a
/// weight at 1,000 ft only.
#[test]
fn dial_and_weight_step_at_different_heights() {
    let almanac = almanac();
    let pounds = |canner, feet| served_lines(&ask(&almanac, "carrots", "raw", "pint", canner, feet))[0].1;
    assert_eq!(pounds(CannerKind::Dial, 1500), Some(11));
    assert_eq!(pounds(CannerKind::Weighted, 1500), Some(15));
    assert_eq!(pounds(CannerKind::Weighted, 1000), Some(10));
}

/// Source: USDA, Complete Guide to Home Canning, 2015, dial tables end at 8,000 ft (from memory).
#[test]
fn above_the_last_dial_band_nothing_is_served() {
    let almanac = almanac();
    let above = ask(&almanac, "beans-snap", "hot", "pint", CannerKind::Dial, 8001);
    assert_eq!(above.verdict, Verdict::NotTested);
    assert_eq!(above.because[0].code, Because::AltitudeAboveLastBand);
    assert!(above.processes.is_empty());
    // The weight has no such end.
    let weight = ask(&almanac, "beans-snap", "hot", "pint", CannerKind::Weighted, 8001);
    assert_eq!(served_lines(&weight), [(20, Some(15))]);
}

/// Source: Michigan State University Extension, Preserving Food Safely, file 01600828, 1997 (seen): the 15 lb
/// line of tomatoes in juice is not recommended above 1,000 ft.
#[test]
fn the_fifteen_pound_line_of_tomatoes_stops_at_a_thousand_feet() {
    let almanac = almanac();
    let lines = |feet| {
        let mut lines =
            served_lines(&ask(&almanac, "tomatoes-whole-juice", "raw", "quart", CannerKind::Weighted, feet));
        lines.sort_unstable();
        lines
    };
    assert_eq!(lines(1000), [(15, Some(15)), (25, Some(10)), (40, Some(5))]);
    assert_eq!(lines(1001), [(25, Some(15)), (40, Some(10))]);
}

/// Source: a third-party reprint of USDA 2015, Guide 3 p. 3-9 (seen), sets "15 min" beside Pints and "10 min"
/// beside Quarts; the cell is "pints or quarts" with two lines (University of Florida IFAS FCS8186, from memory).
#[test]
fn two_lines_of_one_cell_are_not_a_line_for_each_jar() {
    let almanac = almanac();
    for jar in ["pint", "quart"] {
        let served = served_lines(&ask(&almanac, "tomatoes-whole-water", "hot", jar, CannerKind::Dial, 0));
        assert_eq!(served.len(), 2, "{jar}");
    }
}

/// Source: USDA, AIB 539, 1994, Apple juice and Grape juice, table 1 (seen): half-gallons for these two only.
#[test]
fn half_gallons_are_served_for_the_two_juices_and_refused_else() {
    let almanac = almanac();
    for food in ["apple-juice", "grape-juice"] {
        let served = ask(&almanac, food, "hot", "half-gallon", CannerKind::BoilingWater, 500);
        assert_eq!(served_lines(&served), [(10, None)], "{food}");
    }
    for food in ["tomato-juice", "applesauce", "apple-butter"] {
        let refused = ask(&almanac, food, "hot", "half-gallon", CannerKind::BoilingWater, 500);
        assert_eq!(refused.verdict, Verdict::DoNot, "{food}");
        assert_eq!(refused.because[0].code, Because::JarTooLarge, "{food}");
        assert!(refused.processes.is_empty());
    }
}

/// Source: the process lines of green pepper jelly above 1,000 ft stand in no sheet that was seen (Ohio State
/// University Extension HYG-5350 has no altitude table): a recalled row shows its place and no figure.
#[test]
fn a_recalled_band_shows_no_figure() {
    let almanac = almanac();
    let low = ask(&almanac, "jelly-pepper-green", "hot", "half-pint", CannerKind::BoilingWater, 800);
    assert_eq!(served_lines(&low), [(5, None)]);
    let high = ask(&almanac, "jelly-pepper-green", "hot", "half-pint", CannerKind::BoilingWater, 1200);
    assert_eq!(high.verdict, Verdict::NotTested);
    assert_eq!(high.because[0].code, Because::OnFileUnverified);
    assert!(high.processes.is_empty());
    assert!(!high.because[0].text.contains("10"), "{}", high.because[0].text);
}
