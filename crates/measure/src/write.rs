//! Printing amounts back, so that a person and the readers of this crate can read them.
//!
//! Each function rounds to the nearest step it prints and says which. Nothing here rounds in a direction: an
//! amount that must not grow or shrink is rounded before it is printed. An amount below zero (a difference)
//! is printed with a minus sign; one that is not finite is printed as what it is, never as zero.

use crate::fraction::Fraction;
use crate::quantity::{Altitude, Length, Mass, Minutes, Percent, Pressure, Temp, Volume};
use crate::steps::{KitchenSteps, kitchen_measures_around, scale_steps_around};
use crate::unit::{VolumeUnit, split_off};

/// A mass in pounds and ounces: `2 lb 3 oz`, `8 1/4 oz`, `0.07 oz`.
///
/// To the nearest quarter ounce below 5 lb, the nearest ounce above; hundredths below half an ounce, where
/// salt and spices are.
///
/// # Examples
///
/// ```
/// use measure::{Mass, write_mass_us};
///
/// assert_eq!(write_mass_us(Mass::pounds(2.1875)), "2 lb 3 oz");
/// ```
#[must_use]
pub fn write_mass_us(mass: Mass) -> String {
    if mass < Mass::ZERO {
        return format!("-{}", write_mass_us(mass * -1.0));
    }
    let ounces = mass.as_ounces();
    if ounces < 0.5 {
        return format!("{} oz", decimals(ounces, 2));
    }
    match scale_steps_around(mass, KitchenSteps::Us) {
        Some((below, above))
            if is_nearer(mass.as_grams(), below.mass().as_grams(), above.mass().as_grams()) =>
        {
            below.to_string()
        }
        Some((_, above)) => above.to_string(),
        None => format!("{:.0} lb", mass.as_pounds()),
    }
}

/// A mass in grams or kilograms: `2.5 g`, `850 g`, `2.35 kg`.
///
/// To the nearest tenth of a gram below 10 g, the nearest gram below 1 kg, the nearest 10 g above.
///
/// # Examples
///
/// ```
/// use measure::{Mass, write_mass_metric};
///
/// assert_eq!(write_mass_metric(Mass::grams(2300.0)), "2.3 kg");
/// assert_eq!(write_mass_metric(Mass::grams(850.2)), "850 g");
/// ```
#[must_use]
pub fn write_mass_metric(mass: Mass) -> String {
    write_metric(mass.as_grams(), "g", "kg")
}

/// A volume in spoons, cups and quarts: `1/2 tsp`, `1 tbsp`, `3 3/4 cups`, `2 qt`, `2 qt 1 1/2 cups`.
///
/// To the nearest volume a kitchen can measure ([`kitchen_measures_around`]).
///
/// # Examples
///
/// ```
/// use measure::{Volume, write_volume_us};
///
/// assert_eq!(write_volume_us(Volume::cups(3.75)), "3 3/4 cups");
/// assert_eq!(write_volume_us(Volume::quarts(2.0)), "2 qt");
/// ```
#[must_use]
pub fn write_volume_us(volume: Volume) -> String {
    if volume < Volume::ZERO {
        return format!("-{}", write_volume_us(volume * -1.0));
    }
    let Some((below, above)) = kitchen_measures_around(volume, KitchenSteps::Us) else {
        return format!("{:.0} gal", volume.as_gallons());
    };
    let [low, exact, high] = [below.volume(), volume, above.volume()].map(Volume::as_millilitres);
    let nearest = if is_nearer(exact, low, high) { below } else { above };
    if nearest.unit == VolumeUnit::Cup
        && nearest.value > Fraction::whole(8)
        && let Some((quarts, rest)) = split_off(nearest.value, 4)
    {
        return format!("{quarts} qt {rest} {}", VolumeUnit::Cup.name_behind(rest));
    }
    nearest.to_string()
}

/// A volume in millilitres or litres: `2.5 ml`, `500 ml`, `2.35 L`.
///
/// To the nearest tenth of a millilitre below 10 ml, the nearest millilitre below 1 L, the nearest 10 ml
/// above.
///
/// # Examples
///
/// ```
/// use measure::{Volume, write_volume_metric};
///
/// assert_eq!(write_volume_metric(Volume::cups(1.0)), "237 ml");
/// assert_eq!(write_volume_metric(Volume::litres(2.5)), "2.5 L");
/// ```
#[must_use]
pub fn write_volume_metric(volume: Volume) -> String {
    write_metric(volume.as_millilitres(), "ml", "L")
}

/// A height above the sea: `3,200 ft`.
///
/// # Examples
///
/// ```
/// use measure::{Altitude, write_altitude};
///
/// assert_eq!(write_altitude(Altitude::feet(3200)), "3,200 ft");
/// assert_eq!(write_altitude(Altitude::feet(800)), "800 ft");
/// ```
#[must_use]
pub fn write_altitude(altitude: Altitude) -> String {
    let feet = altitude.as_feet().to_string();
    let mut written = String::new();
    for (place, digit) in feet.chars().enumerate() {
        if place > 0 && (feet.len() - place).is_multiple_of(3) {
            written.push(',');
        }
        written.push(digit);
    }
    format!("{written} ft")
}

/// A span of time: `35 min`, `1 h 20 min`, `47 h`, `2 days 4 h`. Days from 48 hours on.
///
/// # Examples
///
/// ```
/// use measure::{Minutes, write_minutes};
///
/// assert_eq!(write_minutes(Minutes(80)), "1 h 20 min");
/// assert_eq!(write_minutes(Minutes(2 * 24 * 60)), "2 days");
/// ```
#[must_use]
pub fn write_minutes(span: Minutes) -> String {
    let hours = span.0 / 60;
    let (days, hours) = if hours >= 48 { (hours / 24, hours % 24) } else { (0, hours) };
    let parts: Vec<String> = [(days, "days"), (hours, "h"), (span.0 % 60, "min")]
        .into_iter()
        .filter(|(number, _)| *number > 0)
        .map(|(number, unit)| format!("{number} {unit}"))
        .collect();
    if parts.is_empty() { "0 min".to_owned() } else { parts.join(" ") }
}

/// A time of day from minutes since midnight: `13:05`. Later days begin again at `00:00`; the caller says
/// which day it is.
///
/// # Examples
///
/// ```
/// use measure::{Minutes, write_clock};
///
/// assert_eq!(write_clock(Minutes(13 * 60 + 5)), "13:05");
/// assert_eq!(write_clock(Minutes(24 * 60 + 30)), "00:30");
/// ```
#[must_use]
pub fn write_clock(since_midnight: Minutes) -> String {
    format!("{:02}:{:02}", since_midnight.0 / 60 % 24, since_midnight.0 % 60)
}

/// A length in inches, to the nearest sixteenth: `1/2 in`, `1 1/4 in`.
///
/// # Examples
///
/// ```
/// use measure::{Length, write_length_in};
///
/// assert_eq!(write_length_in(Length::inches(0.5)), "1/2 in");
/// ```
#[must_use]
pub fn write_length_in(length: Length) -> String {
    let inches = length.as_inches();
    match Fraction::nearest(inches, 16) {
        Some(parts) => format!("{parts} in"),
        None => format!("{inches:.0} in"),
    }
}

/// A length to the nearest millimetre: `12 mm`.
///
/// # Examples
///
/// ```
/// use measure::{Length, write_length_mm};
///
/// assert_eq!(write_length_mm(Length::inches(0.5)), "13 mm");
/// ```
#[must_use]
pub fn write_length_mm(length: Length) -> String {
    format!("{} mm", decimals(length.as_millimetres(), 0))
}

/// A temperature to the nearest degree Fahrenheit: `180 °F`.
///
/// # Examples
///
/// ```
/// use measure::{Temp, write_temp_fahrenheit};
///
/// assert_eq!(write_temp_fahrenheit(Temp::celsius(100.0)), "212 °F");
/// ```
#[must_use]
pub fn write_temp_fahrenheit(temp: Temp) -> String {
    format!("{} °F", decimals(temp.as_fahrenheit(), 0))
}

/// A temperature to the nearest degree Celsius: `82 °C`.
///
/// # Examples
///
/// ```
/// use measure::{Temp, write_temp_celsius};
///
/// assert_eq!(write_temp_celsius(Temp::fahrenheit(180.0)), "82 °C");
/// ```
#[must_use]
pub fn write_temp_celsius(temp: Temp) -> String {
    format!("{} °C", decimals(temp.as_celsius(), 0))
}

/// A pressure to the nearest tenth of a pound per square inch: `11 psi`, `-0.5 psi`.
///
/// # Examples
///
/// ```
/// use measure::{Pressure, write_pressure};
///
/// assert_eq!(write_pressure(Pressure::psi(11.0)), "11 psi");
/// ```
#[must_use]
pub fn write_pressure(pressure: Pressure) -> String {
    format!("{} psi", decimals(pressure.as_psi(), 1))
}

/// A share to the nearest tenth of a percent: `5 %`, `2.5 %`.
///
/// # Examples
///
/// ```
/// use measure::{Percent, write_percent};
///
/// assert_eq!(write_percent(Percent::of_hundred(2.5)), "2.5 %");
/// ```
#[must_use]
pub fn write_percent(percent: Percent) -> String {
    format!("{} %", decimals(percent.as_percent(), 1))
}

/// An amount of a small unit, or of the thousand times larger one from a thousand on.
fn write_metric(small: f64, small_unit: &str, large_unit: &str) -> String {
    let size = small.abs();
    // The limits are where the rounded figure would reach the next step.
    if size < 9.95 {
        format!("{} {small_unit}", decimals(small, 1))
    } else if size < 999.5 {
        format!("{} {small_unit}", decimals(small, 0))
    } else {
        format!("{} {large_unit}", decimals(small / 1000.0, 2))
    }
}

/// A number rounded to the nearest of so many decimal places (at most 6), trailing zeros left out.
fn decimals(number: f64, places: u32) -> String {
    match Fraction::nearest(number, 10_u32.pow(places)) {
        Some(parts) => parts.to_decimal(places),
        None => format!("{number:.0}"),
    }
}

/// Whether a value is nearer to the one below it than to the one above it; halfway goes up.
fn is_nearer(value: f64, below: f64, above: f64) -> bool {
    value - below < above - value
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn masses_are_written_in_pounds_and_ounces() {
        for (mass, want) in [
            (Mass::ounces(35.0), "2 lb 3 oz"),
            (Mass::pounds(2.0), "2 lb"),
            (Mass::ounces(8.3), "8 1/4 oz"),
            (Mass::ounces(15.9), "1 lb"),
            (Mass::grams(2.0), "0.07 oz"),
            (Mass::ZERO, "0 oz"),
            (Mass::pounds(12.0) + Mass::ounces(0.6), "12 lb 1 oz"),
            (Mass::ounces(-35.0), "-2 lb 3 oz"),
            (Mass::grams(f64::NAN), "NaN lb"),
            (Mass::kilograms(20_000.0), "44092 lb"),
        ] {
            assert_eq!(write_mass_us(mass), want, "{mass:?}");
        }
    }

    #[test]
    fn metric_amounts_change_unit_at_a_thousand() {
        for (grams, want) in [
            (0.0, "0 g"),
            (2.54, "2.5 g"),
            (9.96, "10 g"),
            (850.4, "850 g"),
            (999.4, "999 g"),
            (999.6, "1 kg"),
            (2300.0, "2.3 kg"),
            (2345.0, "2.35 kg"),
            (-120.0, "-120 g"),
            (f64::INFINITY, "inf kg"),
        ] {
            assert_eq!(write_mass_metric(Mass::grams(grams)), want, "{grams}");
        }
        assert_eq!(write_volume_metric(Volume::millilitres(999.7)), "1 L");
    }

    #[test]
    fn volumes_are_written_as_cooks_measure_them() {
        for (volume, want) in [
            (Volume::teaspoons(0.5), "1/2 tsp"),
            (Volume::tablespoons(1.0), "1 tbsp"),
            (Volume::cups(3.75), "3 3/4 cups"),
            (Volume::cups(1.0 / 3.0), "1/3 cup"),
            (Volume::cups(1.01), "1 cup"),
            (Volume::quarts(1.0), "1 qt"),
            (Volume::cups(5.5), "5 1/2 cups"),
            (Volume::quarts(2.0), "2 qt"),
            (Volume::cups(9.5), "2 qt 1 1/2 cups"),
            (Volume::cups(8.25), "2 qt 1/4 cup"),
            (Volume::gallons(3.0), "3 gal"),
            (Volume::cups(-0.5), "-1/2 cup"),
            (Volume::cups(f64::NAN), "NaN gal"),
        ] {
            assert_eq!(write_volume_us(volume), want, "{volume:?}");
        }
    }

    #[test]
    fn heights_and_times_are_written_plainly() {
        for (feet, want) in [(0, "0 ft"), (800, "800 ft"), (1000, "1,000 ft"), (12_345, "12,345 ft")] {
            assert_eq!(write_altitude(Altitude::feet(feet)), want);
        }
        for (minutes, want) in [
            (0, "0 min"),
            (35, "35 min"),
            (60, "1 h"),
            (80, "1 h 20 min"),
            (2879, "47 h 59 min"),
            (2880, "2 days"),
            (3125, "2 days 4 h 5 min"),
        ] {
            assert_eq!(write_minutes(Minutes(minutes)), want);
        }
        for (minutes, want) in [(0, "00:00"), (785, "13:05"), (1439, "23:59"), (1440, "00:00")] {
            assert_eq!(write_clock(Minutes(minutes)), want);
        }
    }

    #[test]
    fn headspaces_are_written_in_sixteenths() {
        for (inches, want) in
            [(0.25, "1/4 in"), (0.5, "1/2 in"), (1.25, "1 1/4 in"), (0.0, "0 in"), (0.07, "1/16 in")]
        {
            assert_eq!(write_length_in(Length::inches(inches)), want);
        }
    }
}
