//! Ferments: about how many days until sour, how much gas.

use almanac::FermentRecord;
use foodsci::ferment::{find_closed_pressure, find_days_to_sour, find_gas_range};
use measure::{AirPressure, Percent};

use super::answer::Answer;
use super::spread::Range;
use super::sum::{Kind, Sum, may, must};

pub(super) const SUMS: &[&Sum] = &[&FERMENT_DAYS, &FERMENT_GAS];

/// Atmospheres that a canning jar with its lid screwed down is not made for; a planning figure of ours.
const BURSTS: f64 = 2.0;
const SEA: AirPressure = AirPressure::pascals(101_325.0);

static FERMENT_DAYS: Sum = Sum {
    name: "ferment-days",
    what: "about how many days cut vegetables need until they are sour",
    inputs: &[
        must("at", Kind::Temp, "where the crock stands", "a thermometer beside it"),
        must("percent", Kind::Percent, "its salt", "what you weighed in"),
    ],
    equation: "planning ranges at 18, 22 and 25 C, straight lines between; half as wide again outside 2 to 3 % of salt",
    source: "planning ranges of ours between published time courses of sauerkraut",
    example: &["at=20C", "percent=2.25"],
    answer: |asked, almanac| {
        let days = find_days_to_sour(asked.temp("at")?, asked.percent("percent")?)?;
        let mut answer = Answer::new()
            .range("days until about pH 3.8", Range::ends(days.soonest.as_days(), days.latest.as_days()), "days")
            .caution("above pH 4.6 it is not eaten; a low reading opens nothing, the printed weeks and signs decide")
            .know("under 7 C it takes weeks to months; another flora may never turn sour");
        let weeks = almanac
            .find_ferment("sauerkraut", FermentRecord::TemperatureTime)
            .filter(|fact| &*fact.unit == "weeks" && fact.citation.may_be_called_tested());
        for fact in weeks {
            answer = answer
                .printed(format!(
                    "sauerkraut at {} F is full-fermented in {} to {} weeks",
                    fact.fahrenheit, fact.low, fact.high
                ))
                .from(&fact.citation);
        }
        Ok(answer)
    },
};

static FERMENT_GAS: Sum = Sum {
    name: "ferment-gas",
    what: "how much gas a ferment must be able to vent",
    inputs: &[
        must("produce", Kind::Mass, "the produce", "weigh it"),
        must("at", Kind::Temp, "where it stands", "a thermometer beside it"),
        may("sugar", Kind::Percent, "its sugar", "cabbage 3 to 5 %; 4 % is taken"),
        may(
            "headspace",
            Kind::Volume,
            "the air over it, to show what a closed jar comes to",
            "measure it with water",
        ),
    ],
    equation: "V = share x sugar / 180.16 x R T / p; a fifth to nearly all of it makes gas",
    source: "stoichiometry of the heterolactic fermentation; ideal gas",
    example: &["produce=2kg", "at=20C"],
    answer: |asked, _| {
        let sugar = asked.maybe_percent("sugar")?;
        let (least, most) = find_gas_range(
            asked.mass("produce")?,
            sugar.unwrap_or(Percent::of_hundred(4.0)),
            asked.temp("at")?,
            SEA,
        )?;
        let mut answer = Answer::new()
            .range("gas in all", Range::ends(least.as_litres(), most.as_litres()), "L")
            .know("most of it in the first week; leave room for brine that rises")
            .caution("never in a closed rigid jar: an airlock, a loose lid or a crock");
        if sugar.is_none() {
            answer = answer.taken("4 % of sugar was taken, as of cabbage");
        }
        if let Some(headspace) = asked.maybe_volume("headspace")? {
            let end = |gas| find_closed_pressure(gas, headspace, SEA).map(|air| air.ratio_to(SEA));
            let (low, high) = (end(least)?, end(most)?);
            answer = answer.range("a closed jar would come to", Range::ends(low, high), "atmospheres");
            if high > BURSTS {
                answer = answer.against(
                    "a closed jar of this may burst",
                    "fit an airlock, loosen the lid, or use a crock with a weight",
                );
            }
        }
        Ok(answer)
    },
};
