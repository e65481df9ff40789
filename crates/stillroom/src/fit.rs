//! `stillroom fit`.

use almanac::Almanac;
use anyhow::{Context, Result};
use batch::fit::{Fit, FitVerdict, FittedBatch, Keeps};
use clap::Args;
use kitchen::ask::{self, FitWords};
use kitchen::wording::{as_sentence, capitalize, say_amount, say_factor};
use measure::{write_altitude, write_mass_metric};

use crate::almanac::load_almanac;
use crate::amounts::{for_paper, lay_out_amounts};
use crate::cited::{Cited, lay_out_sources};
use crate::ending::{Answered, wrong_question};
use crate::leaf::Leaf;

const EXAMPLES: &str = "\
Examples:
  stillroom fit pickled_jalapeno_rings --have \"2 lb 3 oz\"
  stillroom fit pickled_jalapeno_rings --have 2.3kg --jar pint \\
      --canner boiling-water --altitude 410m --json

Fitting is no permission: ask `stillroom clear` for the process. Exit code 3 when it does not fit.";

/// Fit a formula to what there is: amounts, jars, canner loads, what is left over.
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct FitCommand {
    /// The formula: an id of the almanac or a name
    formula: String,
    /// What there is: a weight of the main produce, or INGREDIENT=WEIGHT; may be given again
    #[arg(long, value_name = "AMOUNT", required = true)]
    have: Vec<String>,
    /// The jars to fill; may be given again
    #[arg(long = "jar", value_name = "JAR")]
    jars: Vec<String>,
    /// The canner: boiling-water, steam, dial, weighted
    #[arg(long)]
    canner: Option<String>,
    /// The height of the kitchen above the sea; only jars with a process there are filled
    #[arg(long, allow_hyphen_values = true)]
    altitude: Option<String>,
    /// Print fit/1 as JSON
    #[arg(long)]
    json: bool,
}

impl FitCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let almanac = load_almanac()?;
        let words = FitWords {
            formula: self.formula.clone(),
            have: self.have.clone(),
            jars: self.jars.clone(),
            canner: self.canner.clone(),
            altitude: self.altitude.clone(),
        };
        let fit = ask::fit(&almanac, &words).map_err(wrong_question)?;
        let text = if self.json {
            serde_json::to_string_pretty(&fit).context("the answer cannot be written as JSON")? + "\n"
        } else {
            lay_out(&almanac, &fit)
        };
        Ok(Answered { text, refused: fit.verdict == FitVerdict::DoesNotFit })
    }
}

fn lay_out(almanac: &Almanac, fit: &Fit) -> String {
    let name =
        almanac.formula(&fit.question.formula).map_or(fit.question.formula.as_str(), |formula| &formula.name);
    let mut leaf = Leaf::head(&capitalize(name), &head_lines(fit));
    let mut told = 0;
    // Batches one after the other that take the same are told once.
    for alike in fit.batches.chunk_by(|one, other| one == other) {
        let batch = &alike[0];
        let (first, last, of) = (told + 1, told + alike.len(), fit.batches.len());
        told = last;
        let which = match (first, last) {
            (first, last) if first == last => format!("Batch {first} of {of}: {}", say_factor(batch.factor)),
            _ => format!("Batches {first} to {last} of {of}, each: {}", say_factor(batch.factor)),
        };
        leaf.section(&which);
        leaf.gap();
        lay_out_amounts(
            &mut leaf,
            &batch.ingredients.iter().map(|line| for_paper(say_amount(line))).collect::<Vec<_>>(),
        );
        leaf.gap();
        lay_out_yield(&mut leaf, batch);
    }
    section(&mut leaf, "Because", fit.because.iter().map(|because| (as_sentence(&because.text), None)));
    let left_over = fit.left_over.iter().map(|left| {
        let amount = left.mass.map(|mass| format!(", {}", write_mass_metric(mass))).unwrap_or_default();
        (format!("{}{amount}. {}", capitalize(&left.what), as_sentence(&left.goes_to)), None)
    });
    section(&mut leaf, "Left over", left_over);
    let mut cited = Cited::new(almanac);
    let notes = fit.notes.iter().map(|note| {
        let source = note.source.as_deref().map(|source| cited.mark_written(source));
        (as_sentence(&note.text), source)
    });
    section(&mut leaf, "To know", notes);
    lay_out_sources(&mut leaf, &cited.list());
    leaf.finish()
}

fn head_lines(fit: &Fit) -> Vec<String> {
    let have: Vec<String> = fit
        .question
        .have
        .iter()
        .map(|have| format!("{} of {}", write_mass_metric(have.mass), have.ingredient))
        .collect();
    let at = fit
        .question
        .altitude_ft
        .map(|feet| format!(", at {}", write_altitude(measure::Altitude::feet(feet))));
    let verdict = match fit.verdict {
        FitVerdict::Fits => "It fits",
        FitVerdict::DoesNotFit => "It does not fit",
    };
    let keeps = match fit.keeps {
        Keeps::ShelfIfCleared => "Keeps on the shelf only if `stillroom clear` gives a process; else cold.",
        Keeps::Cold => "Keeps in the refrigerator.",
        Keeps::Frozen => "Keeps in the freezer.",
        Keeps::Dried => "Keeps dry and airtight.",
    };
    vec![format!("{verdict}: {}{}.", have.join(", "), at.unwrap_or_default()), keeps.to_owned()]
}

fn lay_out_yield(leaf: &mut Leaf, batch: &FittedBatch) {
    let range = |low: u32, likely: u32, high: u32, what: &str| {
        leaf_range(low, high)
            .map_or_else(|| format!("{likely} {what}"), |range| format!("{range} {what}, likely {likely}"))
    };
    for jars in &batch.jars {
        let what = if jars.high == 1 { jars.size.to_string() } else { format!("{}s", jars.size) };
        leaf.line("Makes", &range(jars.low, jars.likely, jars.high, &what));
    }
    if let Some(bags) = &batch.bags {
        leaf.line("Makes", &range(bags.low, bags.likely, bags.high, &format!("{} bags", bags.size)));
    }
    for load in &batch.loads {
        leaf.line(
            "Load",
            &format!(
                "{} {} jars; {} would go into the canner ({})",
                load.jars, load.size, load.holds, load.canner
            ),
        );
    }
}

fn leaf_range(low: u32, high: u32) -> Option<String> {
    (low != high).then(|| format!("{low} to {high}"))
}

fn section(leaf: &mut Leaf, title: &str, lines: impl Iterator<Item = (String, Option<String>)>) {
    let mut lines = lines.peekable();
    if lines.peek().is_none() {
        return;
    }
    leaf.section(title);
    for (sentence, source) in lines {
        leaf.line("", &sentence);
        if let Some(source) = source {
            leaf.under(&source);
        }
    }
}
