//! A pot that boils: what goes off as steam, how long until it is down to a volume, and whether it boils over.

use measure::{Density, Length, Mass, MassFlow, Percent, Power, Span, Volume};

use crate::atmosphere::find_boiling_point;
use crate::limits::kitchen::{MASS_KG, POWER_W, VOLUME_L};
use crate::limits::{Limits, ModelError, limits, require_above};
use crate::steam::find_heat_of_evaporation;

/// What goes off from a boiling pot: `m' = P / h_fg`, h_fg at the boiling point of the place.
///
/// Argument: the heat that arrives in the pot and is not lost from its walls. Within 10 % with a learned burner, 30 % else.
///
/// # Source
///
/// [`find_heat_of_evaporation`]; 1.595 kg/h for each kW at sea level.
///
/// # Errors
///
/// When the power is none a burner gives, or the height outside the atmosphere's range.
///
/// # Examples
///
/// ```
/// use foodsci::pot::find_evaporation;
/// use measure::{Length, Power};
///
/// let off = find_evaporation(Power::kilowatts(1.0), Length::ZERO).unwrap();
/// assert!((off.as_kilograms_per_hour() - 1.595).abs() < 0.002);
/// ```
pub fn find_evaporation(net: Power, height: Length) -> Result<MassFlow, ModelError> {
    const SECONDS_PER_HOUR: f64 = 3600.0;
    let watts = POWER_W.check(net.as_watts())?;
    let latent = find_heat_of_evaporation(find_boiling_point(height)?)?;
    Ok(MassFlow::kilograms_per_hour(watts * SECONDS_PER_HOUR / latent.as_joules_per_kilogram()))
}

/// How long a boiling pot takes to lose a mass of water.
///
/// # Errors
///
/// When nothing goes off.
pub fn find_boil_down_time(water_off: Mass, net: Power, height: Length) -> Result<Span, ModelError> {
    MASS_KG.check(water_off.as_kilograms())?;
    let flow = find_evaporation(net, height)?.as_kilograms_per_hour();
    if flow <= 0.0 {
        return Err(ModelError::Never {
            what: "boiling down",
            because: "no heat is left over to make steam",
            hint: "take the lid off and turn the burner up",
        });
    }
    Ok(Span::hours(water_off.as_kilograms() / flow))
}

/// What must go off for a pot to come from one volume to another: the volume of water that is missing.
///
/// # Errors
///
/// When the end is larger than the start.
pub fn find_water_off(from: Volume, to: Volume) -> Result<Mass, ModelError> {
    /// Water near its boiling point (IAPWS-95 at 99 °C: 959.07 kg/m3).
    const HOT_WATER: Density = Density::kilograms_per_cubic_metre(959.0);
    let (start, end) = (VOLUME_L.check(from.as_litres())?, VOLUME_L.check(to.as_litres())?);
    require_above(("volume at the start", start), ("volume at the end", end), " L")?;
    Ok(HOT_WATER.mass_of(from - to))
}

/// How many times its quiet volume a pot of something swells to when it boils hard.
///
/// No published law was found; planning ranges of ours.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Boils {
    /// Fruit, sauce, plain juice.
    PlainFruit,
    /// Jam or jelly with all its sugar, with pectin, skins or scum.
    FullSugar,
    /// Milk, starch, cornmeal.
    Milky,
}

impl Boils {
    /// The least and the most it swells to, as multiples of the quiet volume.
    #[must_use]
    pub const fn swells(self) -> (f64, f64) {
        match self {
            Self::PlainFruit => (1.5, 2.0),
            Self::FullSugar => (2.0, 4.0),
            Self::Milky => (1.5, 3.0),
        }
    }
}

/// Whether a pot holds what boils in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BoilRoom {
    /// The volume it may swell to at most.
    pub swollen: Volume,
    /// The volume it swells to at least.
    pub swollen_least: Volume,
    /// The pot.
    pub pot: Volume,
    /// The most that may stand quiet in this pot.
    pub quiet_at_most: Volume,
}

impl BoilRoom {
    /// Whether it may boil over.
    #[must_use]
    pub fn may_boil_over(&self) -> bool {
        self.swollen > self.pot
    }

    /// Whether it boils over even at the least it swells.
    #[must_use]
    pub fn boils_over(&self) -> bool {
        self.swollen_least > self.pot
    }
}

/// Compares a pot with what boils in it.
///
/// # Errors
///
/// When a volume is none a kitchen holds, or the pot is full before it is hot.
pub fn find_boil_room(quiet: Volume, pot: Volume, boils: Boils) -> Result<BoilRoom, ModelError> {
    let holds = VOLUME_L.check(pot.as_litres())?;
    let filled = VOLUME_L.check(quiet.as_litres())?;
    require_above(("size of the pot", holds), ("what is in it", filled), " L")?;
    let (least, most) = boils.swells();
    Ok(BoilRoom {
        swollen: quiet * most,
        swollen_least: quiet * least,
        pot,
        quiet_at_most: pot * (1.0 / most),
    })
}

/// Whether the water over the lids of a canner lasts for a time at the boil.
///
/// # Errors
///
/// When the burner or the pot is none of a kitchen.
pub fn find_water_lost(net: Power, height: Length, time: Span) -> Result<Volume, ModelError> {
    const HOURS: Limits = limits("time at the boil", " h", 0.0, 24.0, "a day in the kitchen");
    let hours = HOURS.check(time.as_hours())?;
    let lost = Mass::kilograms(find_evaporation(net, height)?.as_kilograms_per_hour() * hours);
    Ok(Density::kilograms_per_cubic_metre(959.0).volume_of(lost))
}

/// The share of the heat in an open boiling pot that its walls lose: a planning range of ours, 5 to 15 %.
pub const WALLS_LOSE: (Percent, Percent) = (Percent::of_hundred(5.0), Percent::of_hundred(15.0));

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn time_and_water_off_are_the_same_sum() {
        let off = find_water_off(Volume::litres(6.0), Volume::litres(4.0)).unwrap();
        let net = Power::kilowatts(1.5);
        let time = find_boil_down_time(off, net, Length::metres(500.0)).unwrap();
        let lost = find_water_lost(net, Length::metres(500.0), time).unwrap();
        assert!((lost.as_litres() - 2.0).abs() < 1e-9);
        assert!(find_water_off(Volume::litres(4.0), Volume::litres(6.0)).is_err());
        assert!(find_boil_down_time(off, Power::ZERO, Length::ZERO).is_err());
    }

    #[test]
    fn a_higher_kitchen_boils_off_a_little_less() {
        let of = |metres| find_evaporation(Power::kilowatts(1.0), Length::metres(metres)).unwrap();
        assert!(of(1600.0) < of(0.0));
    }

    #[test]
    fn six_litres_of_jelly_do_not_boil_in_an_eight_litre_pot() {
        let room = find_boil_room(Volume::litres(6.0), Volume::litres(8.0), Boils::FullSugar).unwrap();
        assert!(room.boils_over() && room.may_boil_over());
        assert!((room.quiet_at_most.as_litres() - 2.0).abs() < 1e-12);
        let plain = find_boil_room(Volume::litres(3.0), Volume::litres(8.0), Boils::PlainFruit).unwrap();
        assert!(!plain.may_boil_over());
        assert!(find_boil_room(Volume::litres(9.0), Volume::litres(8.0), Boils::PlainFruit).is_err());
    }
}
