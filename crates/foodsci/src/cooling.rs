//! Cooling a pot through the temperatures in which microbes grow fastest.

use measure::{Area, Conductivity, Diffusivity, Film, HeatCapacity, HeatLoss, Length, Span, Temp};

use crate::conduction::{Biot, Fourier, Modes, Shape};
use crate::limits::kitchen::{HALF_SIZE_M, TEMP_C};
use crate::limits::{Limits, ModelError, limits, require_above, require_below};
use crate::root::find_root;

/// The two stages of the rule for cooling cooked food: from 57.2 to 21.1 °C within 2 h, to 5 °C within 6 h in all (FDA Food
/// Code, 3-501.14: 135 °F, 70 °F, 41 °F).
pub const RULE: CoolingRule = CoolingRule {
    from: Temp::fahrenheit(135.0),
    middle: Temp::fahrenheit(70.0),
    end: Temp::fahrenheit(41.0),
    first_within: Span::hours(2.0),
    both_within: Span::hours(6.0),
};

/// A rule of two stages.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CoolingRule {
    /// Where the clock starts.
    pub from: Temp,
    /// Where the first stage ends.
    pub middle: Temp,
    /// Where the second ends.
    pub end: Temp,
    /// The longest first stage.
    pub first_within: Span,
    /// The longest of both.
    pub both_within: Span,
}

/// How long both stages take.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CoolingTimes {
    /// The first.
    pub first: Span,
    /// Both; `None` where the surroundings are not cold enough for the end.
    pub both: Option<Span>,
}

impl CoolingTimes {
    /// Whether both stages are in time.
    #[must_use]
    pub fn keeps(&self, rule: &CoolingRule) -> bool {
        self.first <= rule.first_within && self.both.is_some_and(|both| both <= rule.both_within)
    }
}

/// How long a stirred pot takes from one temperature to another: `t = C / (hA) ln((T1 - Ta) / (T2 - Ta))`.
///
/// Within 25 %; the whole pot is one temperature because someone stirs.
///
/// # Source
///
/// Newton's law of cooling for one lump.
///
/// # Errors
///
/// When the surroundings are not colder than the end.
pub fn find_stirred_cooling_time(
    capacity: HeatCapacity,
    loss: HeatLoss,
    (from, to): (Temp, Temp),
    around: Temp,
) -> Result<Span, ModelError> {
    const LOSS: Limits = limits("loss of the pot", " W/K", 0.01, 500.0, "pots in air and in ice water");
    let rate = LOSS.check(loss.as_watts_per_kelvin())?;
    for temp in [from, to, around] {
        TEMP_C.check(temp.as_celsius())?;
    }
    require_below(("temperature at the end", to.as_celsius()), ("at the start", from.as_celsius()), " °C")?;
    require_below(("temperature around", around.as_celsius()), ("at the end", to.as_celsius()), " °C")?;
    let seconds = capacity.as_joules_per_kelvin() / rate * libm::log((from - around).ratio_to(to - around));
    Ok(Span::seconds(seconds))
}

/// The loss of a surface with a film.
#[must_use]
pub fn find_loss(film: Film, surface: Area) -> HeatLoss {
    HeatLoss::watts_per_kelvin(film.as_watts_per_square_metre_kelvin() * surface.as_square_metres())
}

/// Thick food that nobody stirs: a layer that cools from both faces, or from one with the other insulated.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ThickLayer {
    /// From the slowest point to a face: half the depth, or all of it where one face is insulated.
    pub half_depth: Length,
    /// How fast heat spreads.
    pub diffusivity: Diffusivity,
    /// How well it conducts.
    pub conducts: Conductivity,
    /// The film at the faces.
    pub film: Film,
}

/// How long the slowest point of thick food takes from one temperature to another, the layer being at the first all through.
///
/// The series of a slab. Time goes with the square of the depth once the film is free. Within a factor of two in a kitchen.
///
/// # Source
///
/// [`Modes`]; C. J. Geankoplis, Transport Processes and Unit Operations, 3rd ed., 1993, section 5.3D.
///
/// # Errors
///
/// When the surroundings are not colder than the end, or the layer is none of a kitchen.
pub fn find_thick_cooling_time(
    layer: &ThickLayer,
    (from, to): (Temp, Temp),
    around: Temp,
) -> Result<Span, ModelError> {
    for temp in [from, to, around] {
        TEMP_C.check(temp.as_celsius())?;
    }
    require_below(("temperature at the end", to.as_celsius()), ("at the start", from.as_celsius()), " °C")?;
    require_below(("temperature around", around.as_celsius()), ("at the end", to.as_celsius()), " °C")?;
    let half = HALF_SIZE_M.check(layer.half_depth.as_metres())?;
    let modes = Modes::find(Shape::Slab, Biot::of(layer.film, layer.half_depth, layer.conducts)?, 40)?;
    let left = (to - around).ratio_to(from - around);
    // The slowest mode alone bounds the time from above.
    let root = modes.roots()[0];
    let most = (libm::log(1.0 / left) + 1.0) / (root * root);
    let fourier = find_root(0.0, most, |number| modes.centre(Fourier::new(number)) - left).ok_or(
        ModelError::Never {
            what: "such a cooling",
            because: "the end lies too near to the start to be told apart",
            hint: "ask for a temperature at least a degree away",
        },
    )?;
    Ok(Span::seconds(fourier * half * half / layer.diffusivity.as_square_metres_per_second()))
}

/// Both stages of a rule, by a way of cooling from one temperature to another.
///
/// # Errors
///
/// When the first stage cannot be worked out.
pub fn time_stages(
    rule: &CoolingRule,
    cool: impl Fn(Temp, Temp) -> Result<Span, ModelError>,
) -> Result<CoolingTimes, ModelError> {
    let first = cool(rule.from, rule.middle)?;
    let both = match cool(rule.from, rule.end) {
        Ok(both) => Some(both),
        // Surroundings above the end never bring it there.
        Err(ModelError::Disagrees { .. }) => None,
        Err(other) => return Err(other),
    };
    Ok(CoolingTimes { first, both })
}

/// How many shallow pans of a depth a volume takes: whole pans, rounded up.
///
/// # Errors
///
/// When the pan holds nothing.
pub fn count_pans(volume: measure::Volume, pan: Area, depth: Length) -> Result<u32, ModelError> {
    let each = pan.as_square_metres() * depth.as_metres() * 1000.0;
    require_above(("what a pan holds", each), ("nothing", 0.0), " L")?;
    const PANS: Limits = limits("number of pans", "", 0.0, 1000.0, "what a kitchen can hold");
    let count = PANS.check(libm::ceil(volume.as_litres() / each - 1e-9))?;
    // Never overflows: between 0 and 1000.
    Ok(count as u32)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn layer(half_cm: f64) -> ThickLayer {
        ThickLayer {
            half_depth: Length::millimetres(half_cm * 10.0),
            diffusivity: Diffusivity::square_metres_per_second(1.4e-7),
            conducts: Conductivity::watts_per_metre_kelvin(0.55),
            film: Film::watts_per_square_metre_kelvin(10.0),
        }
    }

    const FROM: Temp = Temp::celsius(57.2);
    const TO: Temp = Temp::celsius(21.1);
    const FRIDGE: Temp = Temp::celsius(3.0);

    #[test]
    fn deeper_food_cools_slower_and_the_law_of_the_lump_holds_for_thin_layers() {
        let of = |half| find_thick_cooling_time(&layer(half), (FROM, TO), FRIDGE).unwrap();
        assert!(of(10.0) > of(5.0) && of(5.0) > of(2.5));
        let thin = of(0.1);
        let capacity = HeatCapacity::joules_per_kelvin(0.001 * 0.55 / 1.4e-7);
        let lump = find_stirred_cooling_time(capacity, HeatLoss::watts_per_kelvin(10.0), (FROM, TO), FRIDGE)
            .unwrap();
        assert!((thin.ratio_to(lump) - 1.0).abs() < 0.01);
    }

    #[test]
    fn doubling_the_depth_under_a_free_film_makes_it_four_times_as_long() {
        let free = |half| ThickLayer { film: Film::watts_per_square_metre_kelvin(1e6), ..layer(half) };
        let of = |half| find_thick_cooling_time(&free(half), (FROM, TO), FRIDGE).unwrap();
        assert!((of(6.0).ratio_to(of(3.0)) - 4.0).abs() < 0.001);
    }

    #[test]
    fn a_warm_room_never_ends_the_second_stage() {
        let capacity = HeatCapacity::joules_per_kelvin(40_000.0);
        let loss = HeatLoss::watts_per_kelvin(30.0);
        let times = time_stages(&RULE, |from, to| {
            find_stirred_cooling_time(capacity, loss, (from, to), Temp::celsius(18.0))
        })
        .unwrap();
        assert_eq!(times.both, None);
        assert!(!times.keeps(&RULE));
        let iced = time_stages(&RULE, |from, to| {
            find_stirred_cooling_time(capacity, loss, (from, to), Temp::celsius(0.5))
        })
        .unwrap();
        assert!(iced.keeps(&RULE));
    }

    #[test]
    fn pans_are_whole() {
        let pan = Area::rectangle(Length::millimetres(325.0), Length::millimetres(265.0));
        let count = count_pans(measure::Volume::litres(8.0), pan, Length::millimetres(50.0));
        assert_eq!(count, Ok(2));
        assert!(count_pans(measure::Volume::litres(8.0), Area::ZERO, Length::millimetres(50.0)).is_err());
    }
}
