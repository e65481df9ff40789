//! Reading rows: every cell is typed at the door, and every fault is noted with file and line.
//!
//! A reader of cells never stops at a fault. It notes it, hands back a filler so that the rest of the row is read
//! too, and the row is thrown away at its end. No filler leaves this module.

use std::collections::BTreeMap;

use measure::{Fraction, Minutes};

use crate::SourceId;
use crate::closed_list::ClosedList;
use crate::fault::{DataFault, DataProblem};
use crate::source::{Basis, Citation, Rank, Source, latest_year};
use crate::tables::{Table, Tables};

/// The known sources, by id.
pub(crate) type Sources = BTreeMap<SourceId, Source>;

/// What every reading of a table needs, and where the faults are gathered.
pub(crate) struct Reading<'t> {
    pub(crate) tables: &'t Tables,
    pub(crate) sources: Sources,
    pub(crate) faults: Vec<DataFault>,
}

impl Reading<'_> {
    /// Notes a fault that belongs to a line of a table.
    pub(crate) fn note(&mut self, table: Table, line: u64, problem: DataProblem) {
        self.faults.push(DataFault { file: table.file(), line, problem });
    }

    /// Reads a table whose first line must name `columns`.
    pub(crate) fn rows<T>(
        &mut self,
        table: Table,
        columns: &'static [&'static str],
        mut read: impl FnMut(&mut Row<'_>) -> T,
    ) -> Vec<T> {
        let mut reader =
            csv::ReaderBuilder::new().flexible(true).from_reader(self.tables.text(table).as_bytes());
        match reader.headers() {
            Ok(found) if found.iter().eq(columns.iter().copied()) => {}
            Ok(found) => {
                let found = found.iter().collect::<Vec<_>>().join(",");
                self.note(table, 1, DataProblem::ColumnsDiffer { found, expected: columns.join(",") });
                return Vec::new();
            }
            Err(error) => {
                self.note(table, 1, DataProblem::Unreadable { reason: error.to_string() });
                return Vec::new();
            }
        }
        let mut made = Vec::new();
        let mut last = None;
        let mut record = csv::StringRecord::new();
        loop {
            let line = reader.position().line();
            match reader.read_record(&mut record) {
                Ok(false) => return made,
                Ok(true) => {}
                Err(error) => {
                    self.note(table, line, DataProblem::Unreadable { reason: error.to_string() });
                    continue;
                }
            }
            let line = record.position().map_or(line, csv::Position::line);
            if record.len() != columns.len() {
                let reason = format!("{} cells where {} are expected", record.len(), columns.len());
                self.note(table, line, DataProblem::Unreadable { reason });
                continue;
            }
            let mut row = Row {
                record: &record,
                columns,
                next: 0,
                line,
                file: table.file(),
                sources: &self.sources,
                faults: &mut self.faults,
                last: &mut last,
                spoiled: false,
            };
            let value = read(&mut row);
            if !row.spoiled {
                made.push(value);
            }
        }
    }
}

/// One row while it is read.
pub(crate) struct Row<'r> {
    record: &'r csv::StringRecord,
    columns: &'static [&'static str],
    next: usize,
    line: u64,
    file: &'static str,
    sources: &'r Sources,
    faults: &'r mut Vec<DataFault>,
    /// The last citation of this table whose source is known.
    last: &'r mut Option<Citation>,
    spoiled: bool,
}

impl<'r> Row<'r> {
    /// The line of the file the row starts on.
    pub(crate) fn line(&self) -> u64 {
        self.line
    }

    /// Notes what is wrong; the row will be thrown away.
    pub(crate) fn spoil(&mut self, problem: DataProblem) {
        self.spoiled = true;
        self.faults.push(DataFault { file: self.file, line: self.line, problem });
    }

    /// Notes that two cells do not go together, unless one of them could not be read at all.
    pub(crate) fn contradict(&mut self, what: String) {
        if !self.spoiled {
            self.spoil(DataProblem::Contradiction { what });
        }
    }

    /// The text of a cell, without the blanks around it.
    pub(crate) fn cell(&mut self, column: &'static str) -> &'r str {
        // Cells are mostly read in the order they stand in.
        if self.columns.get(self.next).is_none_or(|name| *name != column) {
            let found = self.columns.iter().position(|name| *name == column);
            self.next = found.expect("readers name only columns of their own table");
        }
        let cell = self.record.get(self.next).unwrap_or_default();
        self.next += 1;
        cell.trim()
    }

    /// A text that must be there.
    pub(crate) fn text(&mut self, column: &'static str) -> &'r str {
        let cell = self.cell(column);
        if cell.is_empty() {
            self.spoil(DataProblem::EmptyCell { column });
        }
        cell
    }

    /// A name that must be there.
    pub(crate) fn id<T: for<'a> From<&'a str>>(&mut self, column: &'static str) -> T {
        T::from(self.text(column))
    }

    /// A text that may be empty.
    pub(crate) fn free_text(&mut self, column: &'static str) -> Box<str> {
        self.cell(column).into()
    }

    /// A number that may be left out.
    pub(crate) fn maybe_number(&mut self, column: &'static str) -> Option<f64> {
        let cell = self.cell(column);
        if cell.is_empty() {
            return None;
        }
        let number = cell.parse::<f64>().ok().filter(|number| number.is_finite());
        if number.is_none() {
            self.spoil(DataProblem::NotANumber { column, text: cell.to_owned() });
        }
        number
    }

    /// A number that must be there.
    pub(crate) fn number(&mut self, column: &'static str) -> f64 {
        self.maybe_number(column).unwrap_or_else(|| {
            self.spoil_if_empty(column);
            0.0
        })
    }

    /// A count that may be left out.
    pub(crate) fn maybe_count(&mut self, column: &'static str) -> Option<u32> {
        let cell = self.cell(column);
        if cell.is_empty() {
            return None;
        }
        let count = cell.parse::<u32>().ok();
        if count.is_none() {
            self.spoil(DataProblem::NotANumber { column, text: cell.to_owned() });
        }
        count
    }

    /// A count that must be there.
    pub(crate) fn count(&mut self, column: &'static str) -> u32 {
        self.maybe_count(column).unwrap_or_else(|| {
            self.spoil_if_empty(column);
            0
        })
    }

    /// A count or a range of counts (`9`, `8-9`) that may be left out.
    pub(crate) fn range(&mut self, column: &'static str) -> Option<(u32, u32)> {
        let cell = self.cell(column);
        if cell.is_empty() {
            return None;
        }
        let (low, high) = cell.split_once('-').unwrap_or((cell, cell));
        let range = low.parse().ok().zip(high.parse().ok()).filter(|(low, high)| low <= high);
        if range.is_none() {
            self.spoil(DataProblem::NotANumber { column, text: cell.to_owned() });
        }
        range
    }

    /// Whole minutes that must be there.
    pub(crate) fn minutes(&mut self, column: &'static str) -> Minutes {
        Minutes(self.count(column))
    }

    /// A kitchen fraction that may be left out.
    pub(crate) fn maybe_fraction(&mut self, column: &'static str) -> Option<Fraction> {
        let cell = self.cell(column);
        if cell.is_empty() {
            return None;
        }
        let fraction = read_fraction(cell);
        if fraction.is_none() {
            self.spoil(DataProblem::NotANumber { column, text: cell.to_owned() });
        }
        fraction
    }

    /// A kitchen fraction that must be there.
    pub(crate) fn fraction(&mut self, column: &'static str) -> Fraction {
        self.maybe_fraction(column).unwrap_or_else(|| {
            self.spoil_if_empty(column);
            Fraction::ZERO
        })
    }

    /// A word of a closed list that may be left out.
    pub(crate) fn maybe_word<T: ClosedList>(&mut self, column: &'static str) -> Option<T> {
        let cell = self.cell(column);
        if cell.is_empty() { None } else { Some(self.word_of(column, cell)) }
    }

    /// A word of a closed list that must be there.
    pub(crate) fn word<T: ClosedList>(&mut self, column: &'static str) -> T {
        let cell = self.cell(column);
        self.word_of(column, cell)
    }

    /// Words of a closed list, parted by `parting`; none for an empty cell.
    pub(crate) fn words<T: ClosedList>(&mut self, column: &'static str, parting: &str) -> Vec<T> {
        let cell = self.cell(column);
        if cell.is_empty() {
            return Vec::new();
        }
        cell.split(parting).map(|word| self.word_of(column, word.trim())).collect()
    }

    /// Names parted by bars; none for an empty cell.
    pub(crate) fn names<T: for<'a> From<&'a str>>(&mut self, column: &'static str) -> Vec<T> {
        let cell = self.cell(column);
        cell.split('|').map(str::trim).filter(|name| !name.is_empty()).map(T::from).collect()
    }

    /// `yes` or `no`.
    pub(crate) fn yes(&mut self, column: &'static str) -> bool {
        match self.cell(column) {
            "yes" => true,
            "no" => false,
            other => {
                let text = other.to_owned();
                self.spoil(DataProblem::NotInList { column, text, list: "yes, no".to_owned() });
                false
            }
        }
    }

    /// Where the row comes from: its last three columns. Of several sources the first is the publication the row
    /// was read off, and the rest print the same.
    pub(crate) fn citation(&mut self) -> Citation {
        let sources = self.text("source_id");
        let locator = self.text("locator");
        let basis: Basis = self.word("basis");
        let (source, witnesses) = sources.split_once("; ").unwrap_or((sources, ""));
        let witnesses = || witnesses.split("; ").filter(|witness| !witness.is_empty());
        // Rows of one printed table follow each other, and share their text.
        if let Some(last) = &self.last
            && last.source.as_str() == source
            && last.witnesses.iter().map(SourceId::as_str).eq(witnesses())
            && &*last.locator == locator
        {
            return Citation { basis, ..last.clone() };
        }
        let known = self.listed_source(source);
        for witness in witnesses() {
            self.listed_source(witness);
        }
        let citation = Citation {
            source: SourceId::from(source),
            witnesses: witnesses().map(SourceId::from).collect(),
            locator: locator.into(),
            basis,
            rank: known.map_or(Rank::Lower, |known| known.rank),
            year: known.and_then(|known| known.year).or_else(|| latest_year(locator)),
        };
        if !self.spoiled {
            *self.last = Some(citation.clone());
        }
        citation
    }

    /// A source as it is listed; none, and a fault, when it is not.
    fn listed_source(&mut self, id: &str) -> Option<&'r Source> {
        let known = self.sources.get(id);
        if known.is_none() {
            let (text, table) = (id.to_owned(), Table::Sources.file());
            self.spoil(DataProblem::UnknownKey { column: "source_id", text, table });
        }
        known
    }

    fn word_of<T: ClosedList>(&mut self, column: &'static str, cell: &str) -> T {
        T::read_word(cell).unwrap_or_else(|| {
            let list = T::LIST.iter().map(|value| value.word()).collect::<Vec<_>>().join(", ");
            self.spoil(DataProblem::NotInList { column, text: cell.to_owned(), list });
            T::LIST[0]
        })
    }

    fn spoil_if_empty(&mut self, column: &'static str) {
        self.next -= 1;
        if self.cell(column).is_empty() {
            self.spoil(DataProblem::EmptyCell { column });
        }
    }
}

/// Reads a decimal as an exact fraction. The tables write thirds with three digits (0.333, 2.667); these, and only
/// these, are read as the thirds they stand for.
pub(crate) fn read_fraction(text: &str) -> Option<Fraction> {
    let (whole, decimals) = text.split_once('.').unwrap_or((text, ""));
    let digits = |part: &str| part.bytes().all(|byte| byte.is_ascii_digit());
    if whole.is_empty() || !digits(whole) || !digits(decimals) || decimals.len() > 6 {
        return None;
    }
    let parts = match decimals {
        "" => Fraction::ZERO,
        "333" => Fraction::new(1, 3)?,
        "667" => Fraction::new(2, 3)?,
        // Never overflows: at most six digits were let through.
        _ => Fraction::new(decimals.parse().ok()?, 10_i64.pow(decimals.len() as u32))?,
    };
    Fraction::whole(whole.parse().ok()?).checked_add(parts)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn thirds_are_read_as_thirds_and_nothing_else_is_guessed() {
        let cases = [
            ("2", Some((2, 1))),
            ("0.125", Some((1, 8))),
            ("17.5", Some((35, 2))),
            ("0.333", Some((1, 3))),
            ("2.667", Some((8, 3))),
            ("0.33", Some((33, 100))),
            ("", None),
            ("1/3", None),
            ("-1", None),
            ("1e3", None),
            ("5000000000", None),
        ];
        for (text, want) in cases {
            assert_eq!(read_fraction(text), want.and_then(|(n, d)| Fraction::new(n, d)), "{text:?}");
        }
    }
}
