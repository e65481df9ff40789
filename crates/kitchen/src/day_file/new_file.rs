//! A commented day file to start from.

use jiff::civil::Date;

/// The page that is handed out, with its date left open.
const PAGE: &str = include_str!("new_day.toml");

/// A commented day file for `date`, of an invented household; it reads without a fault as it stands.
///
/// The altitude is left for the person to find: one of ours, left standing, would choose the wrong minutes.
#[must_use]
pub fn new_day_file(date: Date) -> String {
    PAGE.replacen("date = DATE", &format!("date = {date}"), 1)
}
