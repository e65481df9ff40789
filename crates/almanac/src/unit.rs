//! The units the tables print.

use crate::closed_list::closed_list;

closed_list!(
    /// A US kitchen measure.
    VolumeUnit {
        /// Teaspoon.
        Teaspoon = "tsp",
        /// Tablespoon.
        Tablespoon = "tbsp",
        /// Cup.
        Cup = "cup",
        /// Liquid pint.
        Pint = "pint",
        /// Liquid quart.
        Quart = "qt",
        /// Gallon.
        Gallon = "gal",
    }
);

closed_list!(
    /// A US weight.
    MassUnit {
        /// Ounce.
        Ounce = "oz",
        /// Pound.
        Pound = "lb",
    }
);
