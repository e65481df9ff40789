//! `stillroom own`.

use anyhow::{Context, Result};
use clap::Args;
use kitchen::copied::{Beside, OwnFormula, lay_beside};
use kitchen::wording::capitalize;

use crate::almanac::load_almanac;
use crate::ending::{Answered, wrong_question};
use crate::house::HouseFile;
use crate::leaf::Leaf;

const EXAMPLES: &str = "\
Examples:
  stillroom own
  stillroom own \"corn and pepper jam\" --house house.toml --json

A formula of your own may be chilled, frozen or dried; no shelf process is printed for it. Exit code 3,
since nothing here is tested.";

/// Lay a formula of your own beside the nearest tested one, line by line.
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct OwnCommand {
    /// The formula as the house file names it; without it, all of them
    formula: Option<String>,
    #[command(flatten)]
    house: HouseFile,
    /// Print the comparison as JSON
    #[arg(long)]
    json: bool,
}

impl OwnCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let almanac = load_almanac()?;
        let formulas = self.house.read_formulas(&almanac)?;
        let chosen = self.choose(&formulas.own)?;
        let beside: Vec<Beside> = chosen.into_iter().map(|own| lay_beside(&almanac, own)).collect();
        let text = if self.json {
            serde_json::to_string_pretty(&serde_json::json!({ "format": "own/1", "own": beside }))
                .context("the comparison cannot be written as JSON")?
                + "\n"
        } else {
            self.lay_out(&beside)
        };
        Ok(Answered { text, refused: !beside.is_empty() })
    }

    fn choose<'a>(&self, all: &'a [OwnFormula]) -> Result<Vec<&'a OwnFormula>> {
        let Some(named) = self.formula.as_deref() else { return Ok(all.iter().collect()) };
        let found = all.iter().find(|own| own.name.eq_ignore_ascii_case(named.trim()));
        found.map(|own| vec![own]).ok_or_else(|| {
            let names: Vec<&str> = all.iter().map(|own| own.name.as_str()).collect();
            let hint =
                if names.is_empty() { "write it there as [[own]]".to_owned() } else { names.join(", ") };
            let file = self.house.path().display();
            wrong_question(format!("{file} has no formula of your own called {named:?}; hint: {hint}"))
        })
    }

    fn lay_out(&self, beside: &[Beside]) -> String {
        if beside.is_empty() {
            let line =
                "Write a formula of your own into the file as [[own]]; the guide shows how.".to_owned();
            return Leaf::head(&format!("Your own: {}", self.house.path().display()), &[line]).finish();
        }
        beside.iter().map(lay_out_one).collect::<Vec<_>>().join("\n")
    }
}

fn lay_out_one(beside: &Beside) -> String {
    let kept = format!(
        "{}: your own, kept {}. No process is printed for it, and it goes on no shelf.",
        capitalize(&beside.name),
        beside.keep
    );
    let mut leaf = Leaf::head("Not tested.", &[kept]);
    match &beside.nearest {
        None => leaf.section("No tested formula shares its food"),
        Some(id) => {
            leaf.section(&format!("Beside the nearest tested one: {} ({id})", beside.nearest_name));
            leaf.under(&beside.source);
        }
    }
    for line in &beside.lines {
        leaf.gap();
        leaf.line("yours", if line.yours.is_empty() { "nothing like it" } else { &line.yours });
        if beside.nearest.is_some() {
            leaf.line("printed", if line.printed.is_empty() { "nothing like it" } else { &line.printed });
        }
        if !line.change.is_empty() {
            leaf.line("to change", &line.change);
        }
    }
    if !beside.shares.is_empty() {
        leaf.section("Of the food and acid by weight");
        for share in &beside.shares {
            let sentence = format!("yours {}, printed {}", share.yours, share.printed);
            leaf.line("", &format!("{}: {sentence}.", capitalize(share.what)));
        }
    }
    leaf.section("Instead");
    if let Some(id) = &beside.nearest {
        leaf.line("", &format!("Make {id} as it is printed and ask `stillroom clear --with {id}`."));
    }
    leaf.line("", "Or keep yours in the refrigerator or freezer, or dry it.");
    leaf.line("", "Ask your local extension service before it goes into any jar for the shelf.");
    leaf.finish()
}
