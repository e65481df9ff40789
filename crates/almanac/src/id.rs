//! Names of rows: one type for each kind of row, so that a formula is never looked up as a food.

use std::fmt;
use std::sync::Arc;

/// Declares a name of a kind of row.
macro_rules! id {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(Arc<str>);

        impl $name {
            /// The text of the name.
            #[must_use]
            pub fn as_str(&self) -> &str { &self.0 }
        }

        impl From<&str> for $name {
            fn from(text: &str) -> Self { Self(text.into()) }
        }

        impl AsRef<str> for $name {
            fn as_ref(&self) -> &str { &self.0 }
        }

        impl std::borrow::Borrow<str> for $name {
            fn borrow(&self) -> &str { &self.0 }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result { f.pad(&self.0) }
        }
    };
}

id!(
    /// A canned food with a printed process, as the process tables name it.
    ProductId
);
id!(
    /// A tested formula.
    FormulaId
);
id!(
    /// A publication, or another place where a figure was found.
    SourceId
);
id!(
    /// A kind of produce that may stand on the kitchen table.
    ProduceId
);
id!(
    /// A rule of the canner, pickle or change tables.
    RuleId
);
id!(
    /// A food or practice that is refused.
    RefusalId
);
