//! `stillroom outage`.

use almanac::Almanac;
use anyhow::Result;
use clap::Args;
use kitchen::after::{
    DoorClock, FoodAnswer, FoodVerdict, Moment, OutageAnswer, OutageWords, judge_outage, say_food, say_outage,
};
use kitchen::wording::{as_sentence, capitalize};

use super::{finish, lay_out_end, lay_out_not_understood, lay_out_section, lay_out_told, place_of, read_now};
use crate::almanac::load_almanac;
use crate::cited::Cited;
use crate::ending::{Answered, wrong_question};
use crate::leaf::Leaf;

const EXAMPLES: &str = "\
Examples:
  stillroom outage --lost \"21:30\"
  stillroom outage --lost \"yesterday 21:30\" --back \"yesterday 23:10\" --freezer half
  stillroom outage milk butter --in refrigerator --temp \"46 F\" --warm \"3 h\"
  stillroom outage \"ground beef\" \"ice cream\" --in freezer --crystals
  stillroom outage \"dry ice\" snow
  stillroom outage \"jars in flood water\"

Exit code 0 when the food may be kept, frozen again or measured, 3 when some of it is thrown
away or nothing is printed for it, 2 when it is not understood; then what can be asked is listed.";

/// Ask what a cut of power or a flood means for the freezer, the refrigerator and each food
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct OutageCommand {
    /// A food or a question, in your own words; may be given several times
    #[arg(value_name = "WORDS")]
    about: Vec<String>,
    /// When the power was lost: "21:30", "yesterday 21:30", "2026-09-12 21:30"
    #[arg(long, value_name = "WHEN")]
    lost: Option<String>,
    /// When it came back; leave it out while it is still off
    #[arg(long, value_name = "WHEN")]
    back: Option<String>,
    /// How full the freezer is: full, half
    #[arg(long, value_name = "LOAD")]
    freezer: Option<String>,
    /// The doors were opened meanwhile
    #[arg(long)]
    opened: bool,
    /// Where the food is: freezer, refrigerator
    #[arg(long = "in", value_name = "PLACE")]
    place: Option<String>,
    /// What a thermometer in the food reads: "46 F", "8 C"
    #[arg(long, allow_hyphen_values = true)]
    temp: Option<String>,
    /// How long it has been warm: "3 h"
    #[arg(long, value_name = "TIME")]
    warm: Option<String>,
    /// Ice crystals are left in it
    #[arg(long)]
    crystals: bool,
    /// Reckon from this moment and not from the clock: "2026-09-12 23:10"
    #[arg(long, value_name = "WHEN")]
    now: Option<String>,
    /// Print outage/1 as JSON
    #[arg(long)]
    json: bool,
}

impl OutageCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let almanac = load_almanac()?;
        let words = OutageWords {
            about: self.about.clone(),
            lost: self.lost.clone(),
            back: self.back.clone(),
            freezer: self.freezer.clone(),
            opened: self.opened,
            place: self.place.clone(),
            temp: self.temp.clone(),
            warm_for: self.warm.clone(),
            crystals: self.crystals,
        };
        let answer =
            judge_outage(&almanac, &words, &read_now(self.now.as_deref())?).map_err(wrong_question)?;
        finish(&answer, answer.is_refusal(), self.json, || lay_out(&almanac, &answer, self.opened))
    }
}

fn lay_out(almanac: &Almanac, answer: &OutageAnswer, opened: bool) -> String {
    let mut leaf = Leaf::head(&say_outage(answer), &said_of(answer));
    let mut cited = Cited::new(almanac);
    lay_out_doors(&mut leaf, &mut cited, &answer.doors, &answer.now);
    if opened && answer.lost.is_some() {
        leaf.section("No clock");
        leaf.line("", "The printed clocks are for a door kept shut. Measure, and ask food by food.");
    }
    for food in &answer.foods {
        lay_out_food(&mut leaf, &mut cited, food);
    }
    lay_out_section(&mut leaf, &mut cited, "Printed on this", &answer.told);
    lay_out_not_understood(&mut leaf, &answer.not_understood);
    leaf.section("Mind");
    leaf.line(
        "",
        "Never taste food to find out. When nobody knows how warm it was or for how long, it goes.",
    );
    lay_out_end(leaf, &cited, answer.is_refusal())
}

/// When it was, and with several foods what becomes of each.
fn said_of(answer: &OutageAnswer) -> Vec<String> {
    let lost = answer.lost.as_ref().map(|lost| format!("power lost {}", lost.in_words()));
    let back = answer.back.as_ref().map(|back| format!("back {}", back.in_words()));
    let now = Some(format!("now {}", answer.now.in_words()));
    let times: Vec<String> = [lost, back, now].into_iter().flatten().collect();
    let mut said = vec![as_sentence(&times.join("; "))];
    if answer.foods.len() > 1 {
        let each = answer.foods.iter();
        said.extend(each.map(|food| {
            format!("- {}, in the {}: {}", capitalize(&food.food), food.place, say_food(food.verdict))
        }));
    }
    said
}

fn lay_out_doors(leaf: &mut Leaf, cited: &mut Cited<'_>, doors: &[DoorClock], now: &Moment) {
    if doors.is_empty() {
        return;
    }
    leaf.section("Door kept shut");
    for door in doors {
        leaf.gap();
        let passed = if door.passed { ", which is past" } else { "" };
        leaf.named("", &format!("{}: until {}{passed}.", capitalize(&door.what), door.until.in_words()));
        let most = door.at_the_most.in_words();
        if door.at_the_most == door.until {
            if door.passed {
                leaf.line("", "Look at each package, measure, and ask food by food.");
            }
        } else if door.at_the_most < *now && door.passed {
            leaf.line(
                "",
                &format!("The longest printed, {most}, is past too: perishable food goes. Ask food by food."),
            );
        } else {
            leaf.line(
                "",
                &format!("From then on measure, or move the food onto ice. At {most} perishable food goes."),
            );
        }
        lay_out_told(leaf, cited, &door.told);
    }
}

fn lay_out_food(leaf: &mut Leaf, cited: &mut Cited<'_>, food: &FoodAnswer) {
    leaf.section(&format!("{}, in the {}", capitalize(&food.food), food.place));
    leaf.line("", &capitalize(say_food(food.verdict)));
    if let Some(before) = &food.before {
        leaf.line("", &format!("Before {}. After that it is thrown away.", before.in_words()));
    }
    for line in &food.chart {
        leaf.line("·", &as_sentence(line));
    }
    for told in food.told.iter().filter(|_| food.verdict == FoodVerdict::Ask) {
        leaf.line("", &as_sentence(&told.text));
    }
    let mut places: Vec<String> = food.told.iter().map(|told| place_of(cited, told)).collect();
    places.dedup();
    leaf.under(&places.join("; "));
}
