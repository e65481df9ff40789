//! Closed lists of words: a cell of such a column holds one of them or the table is at fault.

/// An enum whose every value has one fixed word in the tables.
pub(crate) trait ClosedList: Copy + 'static {
    /// Every value, in the order of its declaration.
    const LIST: &'static [Self];

    /// The word that stands for it in the tables.
    fn word(self) -> &'static str;

    /// The value a word stands for.
    fn read_word(word: &str) -> Option<Self> {
        Self::LIST.iter().copied().find(|value| value.word() == word)
    }
}

/// Declares an enum, its words, and both ways between them.
macro_rules! closed_list {
    ($(#[$doc:meta])* $name:ident { $($(#[$value_doc:meta])* $value:ident = $word:literal),+ $(,)? }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $name { $($(#[$value_doc])* $value),+ }

        impl $name {
            /// Every value, in the order of its declaration.
            pub const ALL: &'static [Self] = &[$(Self::$value),+];

            /// The word that stands for it in the tables.
            #[must_use]
            pub const fn as_str(self) -> &'static str {
                match self { $(Self::$value => $word),+ }
            }

            /// The value a word of the tables stands for.
            #[must_use]
            pub fn find(word: &str) -> Option<Self> {
                <Self as $crate::closed_list::ClosedList>::read_word(word)
            }
        }

        impl $crate::closed_list::ClosedList for $name {
            const LIST: &'static [Self] = Self::ALL;
            fn word(self) -> &'static str { self.as_str() }
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result { f.pad(self.as_str()) }
        }
    };
}

pub(crate) use closed_list;
