//! `stillroom tell`.

use anyhow::Result;
use clap::{Args, ValueEnum};
use kitchen::keep::{TellRow, Told, find_period, say_containers};

use super::{Place, as_json};
use crate::ending::Answered;
use crate::leaf::Leaf;

const EXAMPLES: &str = "\
Examples:
  stillroom tell month
  stillroom tell season --as markdown
  stillroom tell 2026-09-01..2026-09-30 --as csv";

/// What a week, a month, a season, a year came to, in figures and in a paragraph.
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct TellCommand {
    /// week, month, season, year, or FROM..TO
    #[arg(default_value = "month")]
    period: String,
    /// How to print it
    #[arg(long = "as", value_name = "FORM", default_value = "text")]
    form: Form,
    #[command(flatten)]
    place: Place,
}

/// How to print it.
#[derive(Debug, Clone, Copy, ValueEnum)]
enum Form {
    /// For the terminal
    Text,
    /// Markdown
    Markdown,
    /// A table for a spreadsheet
    Csv,
    /// JSON
    Json,
}

impl TellCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let told = self.place.read(|kept, now| Ok(kept.tell(find_period(&self.period, now.date())?)))?;
        Ok(Answered::with(match self.form {
            Form::Text => lay_text(&told),
            Form::Markdown => lay_markdown(&told),
            Form::Csv => lay_csv(&told),
            Form::Json => as_json(&told)?,
        }))
    }
}

/// The number with what it counts: `9 half-pints`, `5400 g`.
fn say_number(row: &TellRow) -> String {
    match (row.size.as_str(), row.how.as_str()) {
        ("", unit @ ("g" | "ml" | "pieces")) => format!("{} {unit}", row.number),
        ("", _) => row.number.to_string(),
        (size, _) => say_containers(row.number, size),
    }
}

fn say_how(row: &TellRow) -> &str {
    if ["g", "ml", "pieces"].contains(&row.how.as_str()) { "" } else { &row.how }
}

fn lay_text(told: &Told) -> String {
    let mut leaf =
        Leaf::head(&format!("{} to {}", told.from, told.to), std::slice::from_ref(&told.paragraph));
    let mut last = "";
    for row in &told.rows {
        if row.verb.as_str() != last {
            last = row.verb.as_str();
            leaf.section(last);
        }
        let how = say_how(row);
        let how = if how.is_empty() { String::new() } else { format!(" ({how})") };
        leaf.line("", &format!("{}: {}{how}", row.name, say_number(row)));
    }
    leaf.finish()
}

fn lay_markdown(told: &Told) -> String {
    let mut text = format!("# {} to {}\n\n{}\n", told.from, told.to, told.paragraph);
    if !told.rows.is_empty() {
        text += "\n| | what | how many | |\n| --- | --- | ---: | --- |\n";
    }
    for row in &told.rows {
        let cell = |text: &str| text.replace('|', "\\|");
        text += &format!(
            "| {} | {} | {} | {} |\n",
            row.verb.as_str(),
            cell(&row.name),
            cell(&say_number(row)),
            cell(say_how(row))
        );
    }
    text
}

fn lay_csv(told: &Told) -> String {
    let mut text = String::from("from,to,what,name,size,how,number\n");
    for row in &told.rows {
        let cells = [&told.from, &told.to, row.verb.as_str(), &row.name, &row.size, &row.how].map(write_cell);
        text += &format!("{},{}\n", cells.join(","), row.number);
    }
    text
}

/// A cell as RFC 4180 has it. What a spreadsheet would take for a sum gets a blank before it.
fn write_cell(text: impl AsRef<str>) -> String {
    let text = text.as_ref();
    let text = if text.starts_with(['=', '+', '-', '@']) { format!(" {text}") } else { text.to_owned() };
    if text.contains([',', '"', '\n', '\r']) { format!("\"{}\"", text.replace('"', "\"\"")) } else { text }
}
