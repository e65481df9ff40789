//! What speaks against an entry or a change: each veto names its number, its limit, its margin and its source.
//!
//! There is no opposite of a veto. That none is raised means that this check found nothing, and no more.

use std::fmt;

use measure::{Length, Percent, Temp, Volume};

use crate::acid::{LOW_ACID, PhRange, PhSays};
use crate::ferment::{SaltSays, compare_with_band};
use crate::headspace::find_frozen_fill;
use crate::limits::kitchen::SHARE;
use crate::limits::{Figure, Limits, ModelError, limits, require_above};
use crate::syrup::{CRYSTALS_FROM, Crystals, find_supersaturation};
use crate::vinegar::{PickleMix, find_resting_acid};

/// What is wrong.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum VetoKind {
    /// The pH may reach above 4.6.
    PhMayReachLowAcid,
    /// Less acid in the water than the tested formula has.
    AcidWeakerThanTested,
    /// Oil where a process is meant for water.
    OilHoldsHeatBack,
    /// A solid or a jar heats slower than what the process was printed for.
    HeatsSlower,
    /// A ferment's salt outside its printed band.
    SaltOutsideBand,
    /// A syrup that crystallises.
    SyrupCrystallises,
    /// A jar that bursts in the freezer.
    JarBurstsFrozen,
}

/// A veto.
#[derive(Debug, Clone, PartialEq)]
pub struct Veto {
    /// What is wrong.
    pub kind: VetoKind,
    /// What was compared.
    pub quantity: &'static str,
    /// Its value.
    pub value: f64,
    /// What it may not pass.
    pub limit: f64,
    /// The unit of both, with a blank before it.
    pub unit: &'static str,
    /// Whose limit it is.
    pub source: &'static str,
}

impl Veto {
    /// By how much the limit is passed.
    #[must_use]
    pub fn margin(&self) -> f64 {
        (self.value - self.limit).abs()
    }
}

impl fmt::Display for Veto {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let says = match self.kind {
            VetoKind::PhMayReachLowAcid => "may be low-acid, where C. botulinum grows",
            VetoKind::AcidWeakerThanTested => "is weaker than in the tested formula",
            VetoKind::OilHoldsHeatBack => "holds heat back and has no printed process",
            VetoKind::HeatsSlower => "heats slower than what the process was printed for",
            VetoKind::SaltOutsideBand => "is outside the printed band",
            VetoKind::SyrupCrystallises => "will form crystals",
            VetoKind::JarBurstsFrozen => "leaves the ice no room",
        };
        write!(
            f,
            "{} is about {}{}, past the limit of {}{} by {}{}: it {says} ({})",
            self.quantity,
            Figure(self.value),
            self.unit,
            Figure(self.limit),
            self.unit,
            Figure(self.margin()),
            self.unit,
            self.source
        )
    }
}

/// The estimated pH must not reach above 4.6: `high < 4.6`.
#[must_use]
pub fn veto_ph(range: PhRange) -> Option<Veto> {
    (range.says() == PhSays::Vetoed).then_some(Veto {
        kind: VetoKind::PhMayReachLowAcid,
        quantity: "the high end of the estimated pH",
        value: range.high.0,
        limit: LOW_ACID.0,
        unit: "",
        source: "21 CFR 114.3",
    })
}

/// Acid in the water of the whole must not be below that of the tested formula: `acid >= tested`.
///
/// # Errors
///
/// When an amount is none of a kitchen.
pub fn veto_weaker_acid(mix: &PickleMix, tested: &PickleMix) -> Result<Option<Veto>, ModelError> {
    let [has, needs] = [mix, tested].map(find_resting_acid);
    let (has, needs) = (has?.as_percent(), needs?.as_percent());
    // A millionth of a percent is forgiven, so that a formula scaled as a whole stays itself.
    Ok((has < needs - 1e-6).then_some(Veto {
        kind: VetoKind::AcidWeakerThanTested,
        quantity: "acid in the water of jar and vegetables",
        value: has,
        limit: needs,
        unit: " %",
        source: "the tested formula, mass balance",
    }))
}

/// The oil in a jar must not exceed what a printed formula has: `oil <= printed`.
///
/// # Errors
///
/// When a share is none.
pub fn veto_oil(oil: Percent, printed: Percent) -> Result<Option<Veto>, ModelError> {
    let has = SHARE.check(oil.as_fraction())? * 100.0;
    let may = SHARE.check(printed.as_fraction())? * 100.0;
    Ok((has > may + 1e-6).then_some(Veto {
        kind: VetoKind::OilHoldsHeatBack,
        quantity: "the share of oil",
        value: has,
        limit: may,
        unit: " %",
        source: "the printed formula",
    }))
}

/// The slowest time of a changed jar must not exceed that of the printed one: `f <= f_printed`, f the time in which the
/// difference at the centre falls to a tenth.
///
/// # Errors
///
/// When a time is nothing.
pub fn veto_slower_heating(
    changed: measure::Span,
    printed: measure::Span,
) -> Result<Option<Veto>, ModelError> {
    const F_MIN: Limits = limits("heating time", " min", 0.1, 10_000.0, "jars and cans");
    let is = F_MIN.check(changed.as_minutes())?;
    let may = F_MIN.check(printed.as_minutes())?;
    Ok((is > may * (1.0 + 1e-9)).then_some(Veto {
        kind: VetoKind::HeatsSlower,
        quantity: "the time in which the difference at the centre falls to a tenth",
        value: is,
        limit: may,
        unit: " min",
        source: "conduction in a finite cylinder",
    }))
}

/// A ferment's salt must lie in its printed band: `least <= salt <= most`.
///
/// # Errors
///
/// When the band stands the wrong way round.
pub fn veto_ferment_salt(
    salt: Percent,
    band: (Percent, Percent),
    source: &'static str,
) -> Result<Option<Veto>, ModelError> {
    let limit = match compare_with_band(salt, band)? {
        SaltSays::Inside => return Ok(None),
        SaltSays::TooLittle { .. } => band.0,
        SaltSays::TooMuch { .. } => band.1,
    };
    Ok(Some(Veto {
        kind: VetoKind::SaltOutsideBand,
        quantity: "the share of salt",
        value: salt.as_percent(),
        limit: limit.as_percent(),
        unit: " %",
        source,
    }))
}

/// A syrup must stay dissolved where it is kept: `S <= 1.15`.
///
/// # Errors
///
/// Outside 0 to 85 % or 0 °C to 100 °C.
pub fn veto_crystals(sugar: Percent, kept_at: Temp) -> Result<Option<Veto>, ModelError> {
    let over = find_supersaturation(sugar, kept_at)?;
    Ok((over.crystals() == Crystals::Likely).then_some(Veto {
        kind: VetoKind::SyrupCrystallises,
        quantity: "sugar over what stays dissolved",
        value: over.0,
        limit: CRYSTALS_FROM.0,
        unit: " times",
        source: "the solubility table of sucrose; the limit is a planning range of ours",
    }))
}

/// A jar for the freezer must have room for its ice: `growth < headspace`.
///
/// # Errors
///
/// When the contents do not fit into the jar.
pub fn veto_bursting(jar: Volume, contents: Volume, water: Percent) -> Result<Option<Veto>, ModelError> {
    let fill = find_frozen_fill(jar, contents, water)?;
    Ok(fill.bursts().then_some(Veto {
        kind: VetoKind::JarBurstsFrozen,
        quantity: "the growth on freezing",
        value: fill.grows.as_millilitres(),
        limit: fill.room.as_millilitres(),
        unit: " ml",
        source: "density of ice and water",
    }))
}

/// A piece thicker than the printed one must not take its place: `thickness <= printed`; heating goes with its square.
///
/// # Errors
///
/// When a thickness is nothing.
pub fn veto_thicker_pieces(thickness: Length, printed: Length) -> Result<Option<Veto>, ModelError> {
    let (is, may) = (thickness.as_millimetres(), printed.as_millimetres());
    require_above(("thickness", is), ("nothing", 0.0), " mm")?;
    require_above(("printed thickness", may), ("nothing", 0.0), " mm")?;
    Ok((is > may + 1e-9).then_some(Veto {
        kind: VetoKind::HeatsSlower,
        quantity: "the thickness of a piece",
        value: is,
        limit: may,
        unit: " mm",
        source: "the printed formula; time goes with the square of the thickness",
    }))
}

#[cfg(test)]
mod tests {
    use measure::{Mass, Span};

    use super::*;
    use crate::acid::Ph;

    fn mix(vinegar: f64, vegetables: f64) -> PickleMix {
        PickleMix {
            vinegar: Mass::kilograms(vinegar),
            strength: Percent::of_hundred(5.0),
            water: Mass::kilograms(0.5),
            vegetables: Mass::kilograms(vegetables),
            vegetable_water: Percent::of_hundred(92.0),
        }
    }

    #[test]
    fn a_veto_names_number_limit_margin_and_source() {
        let veto = veto_ph(PhRange { low: Ph(4.3), high: Ph(4.9) }).unwrap();
        assert_eq!(
            veto.to_string(),
            "the high end of the estimated pH is about 4.9, past the limit of 4.6 by 0.3: it may be low-acid, where C. \
             botulinum grows (21 CFR 114.3)"
        );
        assert!(veto_ph(PhRange { low: Ph(3.4), high: Ph(4.6) }).is_none());
    }

    #[test]
    fn a_formula_unchanged_or_scaled_as_a_whole_is_never_vetoed() {
        let tested = mix(1.0, 2.0);
        for factor in [0.25, 1.0 / 3.0, 0.7, 1.0] {
            let scaled = PickleMix {
                vinegar: tested.vinegar * factor,
                water: tested.water * factor,
                vegetables: tested.vegetables * factor,
                ..tested
            };
            assert_eq!(veto_weaker_acid(&scaled, &tested), Ok(None));
        }
        assert!(veto_weaker_acid(&mix(0.8, 2.0), &tested).unwrap().is_some());
        assert!(veto_weaker_acid(&mix(1.0, 2.2), &tested).unwrap().is_some());
    }

    #[test]
    fn each_veto_has_a_case_on_either_side_of_its_limit() {
        let percent = Percent::of_hundred;
        assert!(veto_oil(percent(6.0), percent(2.0)).unwrap().is_some());
        assert!(veto_oil(percent(2.0), percent(2.0)).unwrap().is_none());
        assert!(veto_slower_heating(Span::minutes(90.0), Span::minutes(60.0)).unwrap().is_some());
        assert!(veto_slower_heating(Span::minutes(60.0), Span::minutes(60.0)).unwrap().is_none());
        let band = (percent(2.25), percent(2.5));
        assert!(veto_ferment_salt(percent(1.5), band, "a page").unwrap().is_some());
        assert!(veto_ferment_salt(percent(2.4), band, "a page").unwrap().is_none());
        assert!(veto_crystals(percent(76.0), Temp::celsius(15.0)).unwrap().is_some());
        assert!(veto_crystals(percent(60.0), Temp::celsius(15.0)).unwrap().is_none());
        let jar = Volume::millilitres(473.0);
        assert!(veto_bursting(jar, Volume::millilitres(465.0), percent(95.0)).unwrap().is_some());
        assert!(veto_bursting(jar, Volume::millilitres(410.0), percent(95.0)).unwrap().is_none());
        let mm = Length::millimetres;
        assert!(veto_thicker_pieces(mm(12.0), mm(6.0)).unwrap().is_some());
        assert!(veto_thicker_pieces(mm(6.0), mm(6.0)).unwrap().is_none());
        assert!(veto_thicker_pieces(mm(f64::NAN), mm(6.0)).is_err());
    }
}
