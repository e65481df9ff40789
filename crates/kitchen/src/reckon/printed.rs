//! Every model over every printed row: none may object to what is printed and unchanged.

use almanac::{Almanac, JarSize, SyrupUse};
use foodsci::acid::{Acid, AcidGiven, Buffer, PhSays, Pickle, Vegetable, find_ph_range};
use foodsci::conduction::find_slowest_heating;
use foodsci::sugar::find_syrup_strength;
use foodsci::veto::{veto_bursting, veto_crystals, veto_ferment_salt, veto_slower_heating, veto_weaker_acid};
use foodsci::vinegar::PickleMix;
use measure::{Diffusivity, Length, Mass, Percent, Temp, Volume, VolumeUnit};

use super::why::{WhyWords, trace_likeliest};
use crate::ask::{self, ClearWords, FitWords};

fn load() -> &'static Almanac {
    static LOADED: std::sync::OnceLock<Almanac> = std::sync::OnceLock::new();
    LOADED.get_or_init(|| Almanac::load().expect("the tables built in have no fault"))
}

fn heats(almanac: &Almanac, jar: JarSize) -> Option<measure::Span> {
    let inside = almanac.jar_inside(jar)?;
    let spreads = Diffusivity::square_metres_per_second(1.5e-7);
    let lag = find_slowest_heating(inside.diameter * 0.5, inside.height, spreads).expect("a jar on file");
    Some(lag.f)
}

#[test]
fn no_model_objects_to_a_printed_process_in_its_own_or_a_smaller_jar() {
    let almanac = load();
    let mut compared = 0;
    for product in almanac.products() {
        for line in almanac.printed_lines(&product.id) {
            let Some(printed) = heats(almanac, line.jar()) else { continue };
            for jar in JarSize::ALL.iter().filter(|jar| **jar <= line.jar()) {
                let Some(own) = heats(almanac, *jar) else { continue };
                assert_eq!(
                    veto_slower_heating(own, printed),
                    Ok(None),
                    "{} {jar} by {}",
                    product.id,
                    line.jar()
                );
                compared += 1;
            }
        }
    }
    assert!(compared > 1500, "{compared}");
}

#[test]
fn the_heat_of_every_printed_process_can_be_traced() {
    let almanac = load();
    let mut traced = 0;
    for product in almanac.products() {
        let mut lines: Vec<_> =
            almanac.printed_lines(&product.id).filter(|line| line.process().is_some()).collect();
        // One row for each jar, pack and canner of a food; their bands differ only in minutes and pressure.
        lines.sort_by_key(|line| (line.jar(), line.pack(), line.canner()));
        lines.dedup_by_key(|line| (line.jar(), line.pack(), line.canner()));
        for line in lines {
            if almanac.jar_inside(line.jar()).is_none() {
                continue;
            }
            let words = WhyWords {
                clear: ClearWords {
                    food: product.id.to_string(),
                    pack: Some(line.pack().to_string()),
                    jar: Some(line.jar().to_string()),
                    canner: Some(line.canner().to_string()),
                    altitude: Some(format!("{} ft", line.band().min.as_feet() + 1)),
                    gauge_tested: Some("this-year".to_owned()),
                    ..ClearWords::default()
                },
                filled_at: None,
            };
            match trace_likeliest(almanac, &words) {
                Ok(centre) => {
                    assert!(
                        (40.0..125.0).contains(&centre.as_celsius()),
                        "{} {}: {centre:?}",
                        product.id,
                        line.jar()
                    );
                    traced += 1;
                }
                // Printed, and refused by another rule: nothing to draw.
                Err(super::WhyError::NothingPrinted { .. }) => {}
                Err(error) => panic!("{} {} {}: {error}", product.id, line.jar(), line.canner()),
            }
        }
    }
    assert!(traced > 200, "{traced}");
}

#[test]
fn no_printed_syrup_crystallises_in_the_cellar() {
    let almanac = load();
    let cup = VolumeUnit::Cup.volume_of(measure::Fraction::ONE);
    let mut seen = 0;
    for row in almanac.syrups() {
        let sugar = Mass::grams(200.0) * row.sugar_cups.to_f64();
        let water = Mass::grams(cup.as_millilitres()) * row.water_cups.to_f64();
        let strength = find_syrup_strength(sugar, water).unwrap();
        assert_eq!(veto_crystals(strength, Temp::celsius(10.0)), Ok(None), "{}", row.strength);
        assert!(
            matches!(row.used_for, SyrupUse::Canning | SyrupUse::Freezing) || strength.as_percent() < 60.0
        );
        seen += 1;
    }
    assert!(seen > 15, "{seen}");
}

#[test]
fn no_printed_ferment_salt_is_outside_its_own_band() {
    let almanac = load();
    let mut seen = 0;
    for fact in almanac.ferments().iter().filter(|fact| fact.parameter.contains("band served")) {
        let (low, high) = fact.figures().expect("a band has two ends");
        let band = (Percent::of_hundred(low), Percent::of_hundred(high));
        for at in [low, (low + high) / 2.0, high] {
            assert_eq!(veto_ferment_salt(Percent::of_hundred(at), band, "the row"), Ok(None));
        }
        seen += 1;
    }
    assert!(seen >= 1);
}

/// Source: USDA and extension tables of headspace for freezing, as on file: half an inch for a wide pint, one inch for a wide
/// quart, three quarters and an inch and a half for narrow ones.
#[test]
fn no_jar_bursts_at_the_printed_freezer_headspace() {
    let almanac = load();
    for (jar, inches) in
        [(JarSize::Pint, 0.5), (JarSize::Quart, 1.0), (JarSize::Pint, 0.75), (JarSize::Quart, 1.5)]
    {
        let inside = almanac.jar_inside(jar).expect("pint and quart are on file");
        let room = Length::inches(inches).ratio_to(inside.height);
        let brim: Volume = jar.volume();
        let filled = brim * (1.0 - room);
        assert_eq!(veto_bursting(brim, filled, Percent::of_hundred(92.0)), Ok(None), "{jar} {inches} in");
    }
}

/// A pickle as its formula prints it, where every part has a weight.
fn printed_pickle(almanac: &Almanac, formula: &almanac::Formula) -> Option<Pickle> {
    let words = FitWords {
        formula: formula.id.to_string(),
        have: vec!["60 kg".to_owned()],
        jars: Vec::new(),
        canner: None,
        altitude: None,
    };
    let fit = ask::fit(almanac, &words).ok()?;
    let batch = fit.batches.first()?;
    let mut pickle = Pickle { acids: vec![], water: Mass::ZERO, salt: Mass::ZERO, vegetables: vec![] };
    let ingredients = formula.ingredients.iter().zip(&batch.ingredients);
    for (printed, line) in ingredients {
        // What is soaked in and poured away is no part of the jar.
        if printed.prep.contains("soak") || printed.name.contains("lime") {
            continue;
        }
        let name = printed.name.to_lowercase();
        if name.contains("vinegar") {
            let acid = line.weight? * 0.05;
            pickle.acids.push(AcidGiven { acid: Acid::Acetic, mass: acid });
            pickle.water = pickle.water + (line.weight? - acid);
        } else if name.contains("water") {
            pickle.water = pickle.water + line.weight?;
        } else if name.contains("lemon") {
            let acid = line.weight? * 0.05;
            pickle.acids.push(AcidGiven { acid: Acid::Citric, mass: acid });
            pickle.water = pickle.water + (line.weight? - acid);
        } else if printed.part == almanac::Part::LowAcid {
            pickle.vegetables.push(Vegetable {
                mass: line.weight?,
                water: Percent::of_hundred(92.0),
                buffer: (Buffer(10.0), Buffer(35.0)),
            });
        }
    }
    (!pickle.acids.is_empty() && !pickle.vegetables.is_empty()).then_some(pickle)
}

#[test]
fn no_model_objects_to_a_printed_pickle() {
    let almanac = load();
    let mut asked = 0;
    let mut objections = Vec::new();
    let fresh =
        almanac.formulas().filter(|formula| formula.class == Some(almanac::FormulaClass::PickleFresh));
    for formula in fresh {
        let Some(pickle) = printed_pickle(almanac, formula) else { continue };
        let range = find_ph_range(&pickle).unwrap_or_else(|error| panic!("{}: {error}", formula.id));
        if range.says() == PhSays::Vetoed {
            objections.push(format!("{}: {:.2} to {:.2}", formula.id, range.low.0, range.high.0));
        }
        let vegetables: Mass = pickle.vegetables.iter().map(|vegetable| vegetable.mass).sum();
        let acid: Mass = pickle.acids.iter().map(|given| given.mass).sum();
        let mix = PickleMix {
            vinegar: acid * 20.0,
            strength: Percent::of_hundred(5.0),
            water: (pickle.water - acid * 19.0).max(Mass::ZERO),
            vegetables,
            vegetable_water: Percent::of_hundred(92.0),
        };
        assert_eq!(veto_weaker_acid(&mix, &mix), Ok(None), "{}", formula.id);
        asked += 1;
    }
    assert!(objections.is_empty(), "{}", objections.join("\n"));
    assert!(asked > 20, "{asked}");
}
