//! The room under a lid: what shrinks, what draws the lid down, what bursts a jar in the freezer.

use measure::{AirPressure, Density, Percent, Temp, Volume};

use crate::limits::kitchen::SHARE;
use crate::limits::{Limits, ModelError, limits, require_above, require_below};
use crate::steam::find_boiling_pressure;

const WATER_C: Limits =
    limits("temperature of the water", " °C", 0.0, 100.0, "G. S. Kell's density of water");

/// The density of water at 1 atm.
///
/// Kell's quotient of polynomials. Argument: 0 °C to 100 °C.
///
/// # Source
///
/// G. S. Kell, Density, thermal expansivity, and compressibility of liquid water, Journal of Chemical and Engineering
/// Data 20, 1975 (coefficients from memory), within 0.02 kg/m3 of IAPWS-95.
///
/// # Errors
///
/// Outside 0 °C to 100 °C.
pub fn find_water_density(at: Temp) -> Result<Density, ModelError> {
    let t = WATER_C.check(at.as_celsius())?;
    let above = 999.839_52
        + t * (16.945_176
            + t * (-7.987_040_1e-3 + t * (-46.170_461e-6 + t * (105.563_02e-9 - t * 280.542_53e-12))));
    Ok(Density::kilograms_per_cubic_metre(above / (1.0 + 16.879_85e-3 * t)))
}

/// How much a watery content shrinks between filling and cold, as a share of its hot volume: `1 - ρ_hot / ρ_cold`.
///
/// # Errors
///
/// Outside 0 °C to 100 °C.
pub fn find_shrinkage(hot: Temp, cold: Temp) -> Result<Percent, ModelError> {
    let [hot, cold] = [hot, cold].map(find_water_density);
    Ok(Percent::fraction(1.0 - hot?.ratio_to(cold?)))
}

/// A jar closed hot.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClosedJar {
    /// Its temperature when the lid closed.
    pub closed_at: Temp,
    /// Its temperature when cold.
    pub cold: Temp,
    /// The pressure of the air when it closed.
    pub air: AirPressure,
    /// The room under the lid as a share of the jar.
    pub headspace: Percent,
}

/// Whether the contents shrink away from the lid.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Contents {
    /// They keep their volume.
    Fixed,
    /// They shrink like water.
    ShrinkLikeWater,
}

/// How far below the air outside the pressure in a cold jar is: the most its vacuum can be.
///
/// Air under the lid cools as an ideal gas and steam condenses: `p = (p_air - p_sat,hot) V_hot T_cold / (V_cold T_hot) +
/// p_sat,cold`. Real lids flex, so that the answer is an upper bound.
///
/// # Source
///
/// Ideal gas and IAPWS R7-97(2012), region 4.
///
/// # Errors
///
/// When the jar closed colder than it is, or hotter than water boils in that air.
pub fn find_lid_vacuum(jar: &ClosedJar, contents: Contents) -> Result<AirPressure, ModelError> {
    const HEADSPACE: Limits = limits("headspace", "", 0.005, 0.9, "a filled jar");
    const AIR_PA: Limits = limits("pressure of the air", " Pa", 20_000.0, 120_000.0, "kitchens");
    let share = HEADSPACE.check(jar.headspace.as_fraction())?;
    let (hot, cold) = (jar.closed_at, jar.cold);
    require_above(
        ("temperature at closing", hot.as_celsius()),
        ("temperature when cold", cold.as_celsius()),
        " °C",
    )?;
    let steam_hot = find_boiling_pressure(hot)?.as_pascals();
    let steam_cold = find_boiling_pressure(cold)?.as_pascals();
    let air = AIR_PA.check(jar.air.as_pascals())?;
    require_below(("pressure of the steam", steam_hot), ("pressure of the air", air), " Pa")?;
    let grown = match contents {
        Contents::Fixed => share,
        Contents::ShrinkLikeWater => share + (1.0 - share) * find_shrinkage(hot, cold)?.as_fraction(),
    };
    let inside = (air - steam_hot) * share / grown * cold.as_kelvins() / hot.as_kelvins() + steam_cold;
    Ok(AirPressure::pascals(air - inside))
}

/// What a jar of food does in the freezer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FrozenFill {
    /// How much the contents grow.
    pub grows: Volume,
    /// The room under the lid.
    pub room: Volume,
}

impl FrozenFill {
    /// Whether the ice needs more room than there is.
    #[must_use]
    pub fn bursts(self) -> bool {
        self.grows >= self.room
    }
}

/// How much the contents of a jar grow when they freeze, against the room they have.
///
/// `growth = contents × water share × (ρ_water / ρ_ice - 1)`, 9 % of the water. The published headspace for freezing is
/// larger and is the one to keep.
///
/// # Source
///
/// Density of ice 916.7 kg/m3 at 0 °C (handbook value from memory), of water [`find_water_density`].
///
/// # Errors
///
/// When the contents do not fit into the jar, or the share of water is none.
pub fn find_frozen_fill(jar: Volume, contents: Volume, water: Percent) -> Result<FrozenFill, ModelError> {
    const ICE_KG_M3: f64 = 916.7;
    const JAR_ML: Limits = limits("size of the jar", " ml", 1.0, 2e4, "a jar");
    let whole = JAR_ML.check(jar.as_millilitres())?;
    let filled = contents.as_millilitres();
    require_above(("size of the jar", whole), ("contents", filled - 1e-9), " ml")?;
    require_above(("contents", filled), ("nothing", 0.0), " ml")?;
    let share = SHARE.check(water.as_fraction())?;
    let water_density = find_water_density(Temp::celsius(0.0))?.as_kilograms_per_cubic_metre();
    Ok(FrozenFill { grows: contents * (share * (water_density / ICE_KG_M3 - 1.0)), room: jar - contents })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn jar(closed_at: f64) -> ClosedJar {
        ClosedJar {
            closed_at: Temp::celsius(closed_at),
            cold: Temp::celsius(20.0),
            air: AirPressure::pascals(101_325.0),
            headspace: Percent::of_hundred(10.0),
        }
    }

    #[test]
    fn a_hotter_fill_draws_the_lid_down_harder() {
        let of = |at| find_lid_vacuum(&jar(at), Contents::ShrinkLikeWater).unwrap();
        assert!(of(90.0) > of(80.0) && of(80.0) > of(60.0));
        assert!(find_lid_vacuum(&jar(90.0), Contents::Fixed).unwrap() < of(90.0));
        assert!(find_lid_vacuum(&jar(10.0), Contents::Fixed).is_err());
        assert!(find_lid_vacuum(&jar(101.0), Contents::Fixed).is_err());
    }

    #[test]
    fn a_full_jar_bursts_and_one_with_room_does_not() {
        let of = |filled| {
            find_frozen_fill(
                Volume::millilitres(473.0),
                Volume::millilitres(filled),
                Percent::of_hundred(95.0),
            )
            .unwrap()
        };
        assert!(of(470.0).bursts());
        assert!(!of(400.0).bursts());
        assert!(
            find_frozen_fill(Volume::millilitres(100.0), Volume::millilitres(200.0), Percent::ZERO).is_err()
        );
    }
}
