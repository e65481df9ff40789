//! What the house knows of a canner's gauge, as the clearance asks for it.

use almanac::CannerKind;
use batch::clear::{Gauge, Tested};
use jiff::civil::Date;

use crate::day::Canner;

/// Days that a yearly test lasts.
const A_YEAR: i64 = 365;

/// The gauge of a canner on a date; `None` where there is none to test.
pub(crate) fn of_canner(canner: &Canner, on: Date) -> Option<Gauge> {
    if canner.kind != CannerKind::Dial {
        return None;
    }
    let tested = match canner.gauge_tested {
        None => Tested::Never,
        Some(date) if days_between(date, on).is_some_and(|days| (0..=A_YEAR).contains(&days)) => {
            Tested::WithinTheYear
        }
        Some(_) => Tested::Overdue,
    };
    Some(Gauge { error: canner.gauge_error, tested })
}

/// Whole days from one date to another; `None` beyond the calendar.
fn days_between(from: Date, to: Date) -> Option<i64> {
    from.until(to).ok().map(|span| i64::from(span.get_days()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::civil::date;

    fn dial(tested: Option<Date>) -> Canner {
        Canner {
            id: "dial".into(),
            kind: CannerKind::Dial,
            holds: vec![],
            gauge_error: None,
            gauge_tested: tested,
        }
    }

    #[test]
    fn a_test_lasts_one_year_and_a_test_to_come_counts_for_nothing() {
        let on = date(2026, 8, 29);
        let of = |tested| of_canner(&dial(tested), on).map(|gauge| gauge.tested);
        assert_eq!(of(Some(date(2026, 5, 2))), Some(Tested::WithinTheYear));
        assert_eq!(of(Some(date(2025, 8, 29))), Some(Tested::WithinTheYear));
        assert_eq!(of(Some(date(2025, 8, 28))), Some(Tested::Overdue));
        assert_eq!(of(Some(date(2026, 9, 1))), Some(Tested::Overdue));
        assert_eq!(of(None), Some(Tested::Never));
    }

    #[test]
    fn a_weighted_gauge_needs_no_test() {
        let canner = Canner { kind: CannerKind::Weighted, ..dial(None) };
        assert!(of_canner(&canner, date(2026, 8, 29)).is_none());
    }
}
