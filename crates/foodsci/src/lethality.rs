//! What heat does to microbes, in minutes at one temperature: for showing what a printed process does.
//!
//! Nothing here makes a process. There is no function from a wanted lethality to a time, on purpose.

mod ball;
mod heating;
mod integral;

pub use ball::{BallCooling, find_ball_lethality, find_ball_ratio};
pub use heating::{Heating, HeatingCurve, find_heating_lethality};
pub use integral::find_exponential_integral;

use measure::{Span, Temp, TempDifference};

use crate::limits::{Limits, ModelError, limits, require_above};

const Z_K: Limits = limits("z", " K", 4.0, 20.0, "published z values of spores and vegetative cells");

/// The reference by which lethality is counted: a temperature, and the rise that makes death ten times faster.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lethal {
    /// Minutes at this temperature are counted.
    pub reference: Temp,
    /// The rise for ten times the rate.
    pub z: TempDifference,
}

impl Lethal {
    /// Spores of low-acid food: 121.1 °C, z 10 K.
    pub const SPORES: Self = Self { reference: Temp::celsius(121.1), z: TempDifference::kelvins(10.0) };
    /// Acid food as home canning studies count it: 82.2 °C (180 °F), z 8.9 K (16 °F).
    pub const ACID_FOOD: Self = Self { reference: Temp::celsius(82.2), z: TempDifference::kelvins(8.9) };

    /// How many minutes at the reference one minute at a temperature counts for: `10^((T - T_ref) / z)`.
    ///
    /// Biology makes it right within a factor of two to three; the arithmetic is exact.
    ///
    /// # Source
    ///
    /// W. D. Bigelow and others, Heat penetration in processing canned foods, 1920 (from memory).
    ///
    /// # Errors
    ///
    /// When z is none that was ever published, or the temperature no number.
    ///
    /// # Examples
    ///
    /// ```
    /// use foodsci::lethality::Lethal;
    /// use measure::Temp;
    ///
    /// assert!((Lethal::SPORES.rate(Temp::celsius(111.1)).unwrap() - 0.1).abs() < 1e-12);
    /// ```
    pub fn rate(&self, at: Temp) -> Result<f64, ModelError> {
        const AT_C: Limits = limits("temperature", " °C", -40.0, 160.0, "heat treatment of food");
        let z = Z_K.check(self.z.as_kelvins())?;
        let at = AT_C.check(at.as_celsius())?;
        Ok(libm::exp10((at - self.reference.as_celsius()) / z))
    }
}

/// How the rate runs between two readings.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Between {
    /// The temperature runs in a straight line: the careful reading.
    LinearTemperature,
    /// The rate runs in a straight line, as older books draw it; counts more.
    LinearRate,
    /// The temperature of the first reading is kept: for steps held constant.
    Steps,
}

/// A temperature read at a time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// When.
    pub at: Span,
    /// How hot.
    pub temp: Temp,
}

/// The lethality of a run of readings by the general method: `F = ∫ 10^((T - T_ref) / z) dt`.
///
/// # Source
///
/// Bigelow's general method (C. J. Geankoplis, Transport Processes and Unit Operations, 3rd ed., 1993, section 9.12).
///
/// # Errors
///
/// When a reading is no number, or comes before the one above it.
pub fn add_up_lethality(readings: &[Reading], lethal: &Lethal, between: Between) -> Result<Span, ModelError> {
    let z = Z_K.check(lethal.z.as_kelvins())?;
    let mut seconds = 0.0;
    for pair in readings.windows(2) {
        let (first, second) = (pair[0], pair[1]);
        let (early, late) = (lethal.rate(first.temp)?, lethal.rate(second.temp)?);
        let (from, to) = (first.at.as_seconds(), second.at.as_seconds());
        require_above(("time of a reading", to), ("time of the one before", from - 1e-9), " s")?;
        let mean = match between {
            Between::Steps => early,
            Between::LinearRate => (early + late) / 2.0,
            Between::LinearTemperature => mean_rate(early, late, (second.temp - first.temp).as_kelvins(), z),
        };
        seconds += mean * (to - from);
    }
    Ok(Span::seconds(seconds))
}

/// The mean rate while the temperature runs in a straight line: `(L2 - L1) z / (ln 10 (T2 - T1))`.
fn mean_rate(early: f64, late: f64, rise: f64, z: f64) -> f64 {
    /// Below this rise the quotient of differences loses digits and the mean of the ends is exact enough.
    const SMALL_K: f64 = 1e-4;
    if rise.abs() < SMALL_K {
        (early + late) / 2.0
    } else {
        (late - early) * z / (std::f64::consts::LN_10 * rise)
    }
}

/// How many tenfold falls a lethality is for a microbe: `F / D`.
///
/// # Errors
///
/// When D is nothing.
pub fn find_decades(lethality: Span, d: Span) -> Result<f64, ModelError> {
    require_above(("D", d.as_minutes()), ("nothing", 0.0), " min")?;
    Ok(lethality.ratio_to(d))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn reading(minutes: f64, celsius: f64) -> Reading {
        Reading { at: Span::minutes(minutes), temp: Temp::celsius(celsius) }
    }

    #[test]
    fn a_constant_temperature_counts_by_its_rate() {
        let held = [reading(0.0, 111.1), reading(15.0, 111.1)];
        for between in [Between::LinearTemperature, Between::LinearRate, Between::Steps] {
            let found = add_up_lethality(&held, &Lethal::SPORES, between).unwrap();
            assert!((found.as_minutes() - 1.5).abs() < 1e-12);
        }
    }

    #[test]
    fn a_reading_between_two_on_their_line_changes_nothing() {
        let two = [reading(0.0, 80.0), reading(10.0, 100.0)];
        let three = [reading(0.0, 80.0), reading(4.0, 88.0), reading(10.0, 100.0)];
        let of = |readings: &[Reading]| {
            add_up_lethality(readings, &Lethal::ACID_FOOD, Between::LinearTemperature).unwrap()
        };
        assert!((of(&two) - of(&three)).as_seconds().abs() < 1e-9);
    }

    #[test]
    fn lethality_never_falls_with_time_or_heat() {
        let run = |last| {
            let readings: Vec<_> =
                (0..=last).map(|at| reading(f64::from(at), 60.0 + f64::from(at))).collect();
            add_up_lethality(&readings, &Lethal::ACID_FOOD, Between::LinearTemperature).unwrap()
        };
        assert!((1..40).all(|last| run(last + 1) > run(last)));
    }

    #[test]
    fn readings_out_of_order_and_no_numbers_are_refused() {
        let back = [reading(5.0, 90.0), reading(1.0, 90.0)];
        assert!(add_up_lethality(&back, &Lethal::SPORES, Between::Steps).is_err());
        let none = [reading(0.0, f64::NAN), reading(1.0, 90.0)];
        assert!(add_up_lethality(&none, &Lethal::SPORES, Between::Steps).is_err());
    }
}
