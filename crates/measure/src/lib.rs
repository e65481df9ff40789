//! Amounts, units and kitchen fractions.
