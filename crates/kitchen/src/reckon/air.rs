//! The air over a kitchen: where water boils, how hot a canner's steam is, what a barometer says of the height.

use foodsci::atmosphere::{
    WEATHER_SHARE, find_air_pressure, find_boiling_point, find_canner_steam_temp, find_height_of_pressure,
};

use super::answer::Answer;
use super::spread::Range;
use super::sum::{Kind, Sum, must};

pub(super) const SUMS: &[&Sum] = &[&BOILING_POINT, &CANNER_STEAM, &HEIGHT_BY_BAROMETER];

const HOW_HIGH: &str = "a topographic map, a phone outdoors, or the county extension office";

static BOILING_POINT: Sum = Sum {
    name: "boiling-point",
    what: "where water boils at a height, and the pressure of the air there",
    inputs: &[must("altitude", Kind::Altitude, "the height of the kitchen", HOW_HIGH)],
    equation: "p = 101325 (1 - 2.25577e-5 z)^5.25588; boiling temperature by IAPWS-IF97, region 4",
    source: "ASHRAE Fundamentals, 2017, chapter 1, equation 3; IAPWS R7-97(2012)",
    example: &["altitude=\"5,000 ft\""],
    answer: |asked, _| {
        let height = asked.height("altitude")?;
        let boils = find_boiling_point(height)?;
        let air = find_air_pressure(height)?;
        Ok(Answer::new()
            .out("water boils at", boils.as_fahrenheit(), "F")
            .out("water boils at (Celsius)", boils.as_celsius(), "C")
            .out("air pressure", air.as_hectopascals(), "hPa")
            .out("air pressure (mercury)", air.as_inches_of_mercury(), "inHg")
            .know("weather moves it by about 1 F either way")
            .caution("cooler water needs the longer printed time; nothing here turns one time into another"))
    },
};

static CANNER_STEAM: Sum = Sum {
    name: "canner-steam",
    what: "how hot pure steam is under a gauge at a height",
    inputs: &[
        must("altitude", Kind::Altitude, "the height of the kitchen", HOW_HIGH),
        must("gauge", Kind::Gauge, "what a true gauge shows", "read it; correct a dial by its last test"),
    ],
    equation: "boiling temperature at (air + gauge)",
    source: "ASHRAE Fundamentals, 2017, chapter 1; IAPWS R7-97(2012)",
    example: &["altitude=\"2,000 ft\"", "gauge=11psi"],
    answer: |asked, _| {
        let steam = find_canner_steam_temp(asked.height("altitude")?, asked.gauge("gauge")?)?;
        Ok(Answer::new()
            .out("steam", steam.as_fahrenheit(), "F")
            .out("steam (Celsius)", steam.as_celsius(), "C")
            .know("a gauge shows only what is above the air outside; that is why the printed pressure rises with the height")
            .caution("air left in the canner makes it cooler than this: vent it as printed")
            .caution("this explains the printed pressures and is no process"))
    },
};

static HEIGHT_BY_BAROMETER: Sum = Sum {
    name: "height-by-barometer",
    what: "about how high a place is, from the pressure of the air at it",
    inputs: &[must(
        "station",
        Kind::Air,
        "the pressure at the place itself",
        "a barometer that was never set to sea level, or the sensor of a phone; never a weather report",
    )],
    equation: "z = (1 - (p / 101325)^(1 / 5.25588)) / 2.25577e-5",
    source: "ASHRAE Fundamentals, 2017, chapter 1, equation 3; weather moves a barometer by 2 %",
    example: &["station=845hPa"],
    answer: |asked, _| {
        let station = asked.air("station")?;
        let likely = find_height_of_pressure(station)?.as_feet();
        let end = |share: f64| find_height_of_pressure(station * (1.0 + share));
        // Where the weather's margin leaves the range of kitchens, the height itself is the end.
        let low = end(WEATHER_SHARE).map_or(likely, |height| height.as_feet());
        let high = end(-WEATHER_SHARE).map_or(likely, |height| height.as_feet());
        Ok(Answer::new()
            .range("height", Range::around(low, likely, high), "ft")
            .caution("a weather report is reduced to sea level and would say 0 ft everywhere")
            .caution("this never stands in for the altitude of the kitchen: look it up on a map"))
    },
};
