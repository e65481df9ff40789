//! The rows of the tables in `data/`: published examples and recorded values, with their sources.

use std::collections::BTreeMap;

/// A row: what goes in, what must come out, how near.
#[derive(Debug, Clone)]
pub(crate) struct Row {
    pub(crate) id: String,
    pub(crate) inputs: BTreeMap<String, String>,
    pub(crate) want: f64,
    /// As it stands in the table: `0.01`, `2%`; empty where the module says it.
    pub(crate) tolerance: String,
    pub(crate) source: String,
}

impl Row {
    /// One figure of the inputs.
    pub(crate) fn n(&self, key: &str) -> f64 {
        let text = self.inputs.get(key).unwrap_or_else(|| panic!("{} has no {key}", self.id));
        if text == "inf" {
            f64::INFINITY
        } else {
            text.parse().unwrap_or_else(|_| panic!("{}: {key}={text}", self.id))
        }
    }

    /// A list of figures parted by bars.
    pub(crate) fn list(&self, key: &str) -> Vec<f64> {
        self.inputs[key].split('|').map(|figure| figure.parse().unwrap()).collect()
    }

    /// The tolerance of the table as an absolute one.
    pub(crate) fn printed_tolerance(&self) -> f64 {
        match self.tolerance.strip_suffix('%') {
            Some(percent) => self.want.abs() * percent.parse::<f64>().unwrap() / 100.0,
            None => self.tolerance.parse().unwrap_or_else(|_| panic!("{}: {}", self.id, self.tolerance)),
        }
    }
}

fn read(text: &str, value: &str) -> Vec<Row> {
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let header = reader.headers().unwrap().clone();
    let column = |name: &str| header.iter().position(|found| found == name);
    let records: Vec<csv::StringRecord> = reader.records().collect::<Result<_, _>>().unwrap();
    records
        .iter()
        .map(|record| {
            let cell = |name: &str| column(name).and_then(|at| record.get(at)).unwrap_or_default();
            assert!(!cell("source_id").is_empty() && !cell("locator").is_empty(), "{record:?}");
            assert!(["read", "memory", "computed"].contains(&cell("basis")), "{record:?}");
            let inputs = cell("inputs")
                .split(';')
                .filter_map(|part| part.split_once('='))
                .map(|(key, value)| (key.to_owned(), value.to_owned()));
            Row {
                id: record.get(0).unwrap().to_owned(),
                inputs: inputs.collect(),
                want: cell(value).parse().unwrap(),
                tolerance: cell("tolerance").to_owned(),
                source: cell("source_id").to_owned(),
            }
        })
        .collect()
}

/// Published examples with their answers.
pub(crate) fn worked() -> Vec<Row> {
    read(include_str!("data/worked_examples.csv"), "output_value")
}

/// Values computed by other programs, with no publication behind them.
pub(crate) fn anchors() -> Vec<Row> {
    read(include_str!("data/computed_anchors.csv"), "value")
}

/// Values recorded from independent libraries.
pub(crate) fn recorded() -> Vec<Row> {
    read(include_str!("data/recorded.csv"), "value")
}

/// Property tables, row by row.
pub(crate) fn properties() -> Vec<Row> {
    read(include_str!("data/property_tables.csv"), "value")
}
