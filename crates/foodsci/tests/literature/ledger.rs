//! Checks against the outside, kept so that they can be counted and told.

use crate::rows::Row;

/// One comparison.
#[derive(Debug, Clone)]
pub(crate) struct Check {
    pub(crate) model: &'static str,
    pub(crate) id: String,
    pub(crate) source: String,
    pub(crate) got: f64,
    pub(crate) want: f64,
    pub(crate) tolerance: f64,
}

impl Check {
    /// How much of the tolerance the deviation uses up.
    pub(crate) fn used(&self) -> f64 {
        let off = (self.got - self.want).abs();
        if off == 0.0 { 0.0 } else { off / self.tolerance }
    }

    /// The deviation as a share of the value.
    pub(crate) fn relative(&self) -> f64 {
        let off = (self.got - self.want).abs();
        if self.want == 0.0 { off } else { off / self.want.abs() }
    }
}

/// A check of a row by the tolerance printed in it.
pub(crate) fn check_printed(row: &Row, (model, got): (&'static str, f64)) -> Check {
    check(row, (model, got), row.printed_tolerance())
}

/// A check of a row by a tolerance of the module.
pub(crate) fn check(row: &Row, (model, got): (&'static str, f64), tolerance: f64) -> Check {
    Check { model, id: row.id.clone(), source: row.source.clone(), got, want: row.want, tolerance }
}

/// Fails with every check that is off, not with the first.
pub(crate) fn assert_all(checks: &[Check], at_least: usize) {
    assert!(checks.len() >= at_least, "{} checks, {at_least} expected", checks.len());
    let off: Vec<String> = checks
        .iter()
        .filter(|check| check.used().is_nan() || check.used() > 1.0)
        .map(|check| {
            format!(
                "{} {}: {} is not {} within {}",
                check.model, check.id, check.got, check.want, check.tolerance
            )
        })
        .collect();
    assert!(off.is_empty(), "{} of {} are off:\n{}", off.len(), checks.len(), off.join("\n"));
}
