//! The rows of the almanac that fitting reads, in the shape it reads them.

use almanac::{Almanac, ProductId};
use measure::{Mass, Percent, Volume};

/// A measure of the density table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum DensityMeasure {
    Teaspoon,
    Tablespoon,
    FluidOunce,
    Cup,
    Each,
    Package,
    Pouch,
}

/// What one measure of something weighs.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct DensityRow {
    pub(crate) form: String,
    pub(crate) measure: DensityMeasure,
    pub(crate) grams: Mass,
}

/// How much of a food goes into jars.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct ProcurementRow {
    pub(crate) quart: Option<Mass>,
    pub(crate) seven_quarts: Option<Mass>,
    pub(crate) nine_pints: Option<Mass>,
    pub(crate) container: Option<Mass>,
    pub(crate) container_quarts: Option<(f64, f64)>,
}

impl DensityMeasure {
    /// The volume, when it is one.
    pub(crate) fn volume(self) -> Option<Volume> {
        match self {
            Self::Teaspoon => Some(Volume::teaspoons(1.0)),
            Self::Tablespoon => Some(Volume::tablespoons(1.0)),
            Self::FluidOunce => Some(Volume::fluid_ounces(1.0)),
            Self::Cup => Some(Volume::cups(1.0)),
            Self::Each | Self::Package | Self::Pouch => None,
        }
    }
}

pub(crate) fn densities(_almanac: &Almanac, _key: &str) -> Vec<DensityRow> {
    Vec::new()
}

pub(crate) fn edible(_almanac: &Almanac, _key: &str) -> Option<Percent> {
    None
}

pub(crate) fn procurement(_almanac: &Almanac, _product: &ProductId) -> Vec<ProcurementRow> {
    Vec::new()
}

pub(crate) fn load_liquid(_almanac: &Almanac) -> Option<super::liquid::LoadLiquid> {
    None
}
