//! The units against the tables of the National Institute of Standards and Technology.

use measure::{Altitude, Length, Mass, Pressure, Temp, Volume};

/// Holds a factor against a printed one: within half a unit of the last printed digit.
fn check(what: &str, got: f64, printed: &str) {
    let digits: String = printed.chars().filter(|c| *c != ' ').collect();
    let want: f64 = digits.parse().expect("a printed figure is a number");
    let places = digits.split_once('.').map_or(0, |(_, behind)| behind.len());
    let half_unit = 0.5 * 0.1_f64.powi(i32::try_from(places).expect("a printed figure has few digits"));
    assert!((got - want).abs() <= half_unit * (1.0 + 1e-6), "{what}: {got} is not {printed}");
}

/// Source: NIST Special Publication 811, Guide for the Use of the International System of Units, 2008,
/// appendix B.8, factors for units listed alphabetically. The figures were read from the R package NISTunits
/// 1.0.1, which transcribes the 2014 web edition of that table to seven digits, not from the printed page.
/// Tolerance: half a unit of the last printed digit, to which the table is rounded.
#[test]
fn units_agree_with_sp_811() {
    check("pound in kilograms", Mass::pounds(1.0).as_kilograms(), "0.453 592 4");
    check("ounce in grams", Mass::ounces(1.0).as_grams(), "28.349 52");
    check("gallon in litres", Volume::gallons(1.0).as_litres(), "3.785 412");
    check("quart in litres", Volume::quarts(1.0).as_litres(), "0.946 352 9");
    check("pint in litres", Volume::pints(1.0).as_litres(), "0.473 176 5");
    check("cup in litres", Volume::cups(1.0).as_litres(), "0.236 588 2");
    check("fluid ounce in millilitres", Volume::fluid_ounces(1.0).as_millilitres(), "29.573 53");
    check("tablespoon in millilitres", Volume::tablespoons(1.0).as_millilitres(), "14.786 76");
    check("teaspoon in millilitres", Volume::teaspoons(1.0).as_millilitres(), "4.928 922");
    check("cubic foot in cubic metres", Volume::cubic_feet(1.0).as_litres() / 1000.0, "0.028 316 85");
    check("bushel in litres", Volume::bushels(1.0).as_litres(), "35.239 07");
    check("inch in metres", Length::inches(1.0).as_metres(), "0.0254");
    check("foot in metres", Length::feet(1.0).as_metres(), "0.3048");
    check("psi in kilopascals", Pressure::psi(1.0).as_kilopascals(), "6.894 757");
}

/// Source: NIST Special Publication 811, 2008, appendix B.8, where these are printed as exact. The pound's
/// eight digits and the temperature equation are from memory.
#[test]
fn the_exact_definitions_are_kept() {
    let close = |got: f64, want: f64| assert!((got / want - 1.0).abs() < 1e-12, "{got} is not {want}");
    close(Mass::pounds(1.0).as_grams(), 453.592_37);
    close(Length::inches(1.0).as_millimetres(), 25.4);
    close(Length::feet(1.0).as_metres(), 0.3048);
    for (celsius, fahrenheit) in [(100.0, 212.0), (-40.0, -40.0), (121.111_111_111_111_1, 250.0)] {
        close(Temp::celsius(celsius).as_fahrenheit(), fahrenheit);
        close(Temp::fahrenheit(fahrenheit).as_celsius(), celsius);
    }
}

/// Source: NIST Handbook 44, appendix C, general tables of units of measurement: the gallon is 231 cubic
/// inches, the bushel 2150.42 cubic inches struck measure. Both from memory.
#[test]
fn gallon_and_bushel_are_their_cubic_inches() {
    let cubic_inch = 25.4_f64.powi(3) / 1000.0;
    let in_cubic_inches = |volume: Volume| volume.as_millilitres() / cubic_inch;
    assert!((in_cubic_inches(Volume::gallons(1.0)) - 231.0).abs() < 1e-9);
    assert!((in_cubic_inches(Volume::bushels(1.0)) - 2150.42).abs() < 1e-9);
    assert!((in_cubic_inches(Volume::cubic_feet(1.0)) - 1728.0).abs() < 1e-9);
}

/// Source: NIST, Metric Household (web page after NIST Special Publication 430, Household Weights and
/// Measures), table 1, equivalents of the common capacity units used in the kitchen; read there.
/// Tolerance: half a unit of the last printed digit; the table says which figures are rounded.
#[test]
fn kitchen_measures_are_made_of_each_other_as_nist_prints_them() {
    let [teaspoon, tablespoon, fluid_ounce] =
        [Volume::teaspoons(1.0), Volume::tablespoons(1.0), Volume::fluid_ounces(1.0)];
    let [cup, pint, quart] = [Volume::cups(1.0), Volume::pints(1.0), Volume::quarts(1.0)];
    for (large, small, times) in [
        (tablespoon, teaspoon, 3.0),
        (fluid_ounce, teaspoon, 6.0),
        (fluid_ounce, tablespoon, 2.0),
        (cup, teaspoon, 48.0),
        (cup, tablespoon, 16.0),
        (cup, fluid_ounce, 8.0),
        (pint, cup, 2.0),
        (quart, fluid_ounce, 32.0),
        (quart, cup, 4.0),
        (quart, pint, 2.0),
    ] {
        assert!((large.ratio_to(small) - times).abs() < 1e-9, "{large:?} is not {times} times {small:?}");
    }
    check("teaspoon", teaspoon.as_millilitres(), "4.9");
    check("tablespoon", tablespoon.as_millilitres(), "15");
    check("fluid ounce", fluid_ounce.as_millilitres(), "30");
    check("cup", cup.as_millilitres(), "237");
    check("pint", pint.as_millilitres(), "473");
    check("quart", quart.as_millilitres(), "946");
    check("litre in fluid ounces", Volume::litres(1.0).as_fluid_ounces(), "33.8");
    check("litre in cups", Volume::litres(1.0).as_cups(), "4.23");
    check("litre in pints", Volume::litres(1.0).as_pints(), "2.11");
    check("litre in quarts", Volume::litres(1.0).as_quarts(), "1.06");
}

/// Source: the foot of NIST Special Publication 811, 2008, appendix B.8 (0.3048 m), by division:
/// 1,000 m / 0.3048 m = 3,280.84 ft and 1,600 m / 0.3048 m = 5,249.34 ft, taken up to whole feet.
#[test]
fn a_height_in_metres_becomes_the_next_whole_foot() {
    for (metres, feet) in [(1000.0, 3281), (1600.0, 5250), (304.8, 1000), (0.0, 0)] {
        assert_eq!(Altitude::round_up(Length::metres(metres)), Some(Altitude::feet(feet)), "{metres} m");
    }
}
