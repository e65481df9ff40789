//! What another jar, a colder fill, a lower boil, a clock started early or a lost boil would do, in words.
//!
//! Each compares the middle of the jar at the same printed end. None turns the difference into minutes.

use almanac::{Almanac, JarSize};
use foodsci::Figure;
use foodsci::atmosphere::find_boiling_point;
use foodsci::jar::Stage;
use measure::{Length, Span, TempDifference};

use super::super::answer::Note;
use super::kitchen::Kitchen;
use super::trace::Traced;
use super::{WhyError, WhyWords, note, read_kitchen};

/// Points of one history; only its values at the printed end are used.
const POINTS: usize = 400;

/// The comparisons alone, for those who want no chart.
///
/// # Errors
///
/// As [`explain_heat`](super::explain_heat).
pub fn compare_histories(almanac: &Almanac, words: &WhyWords) -> Result<Vec<Note>, WhyError> {
    compare(&read_kitchen(almanac, words)?)
}

pub(super) fn compare(kitchen: &Kitchen) -> Result<Vec<Note>, WhyError> {
    let likeliest = kitchen.likeliest();
    let hold = kitchen.hold(&likeliest);
    let as_printed = Traced::of(kitchen, &likeliest, &[hold], POINTS)?;
    let printed = End::of(&as_printed);
    let mut compared = vec![note("what-counts", say_where_it_counts(&as_printed))];
    for (jar, diameter, height) in neighbours(kitchen) {
        let other = Kitchen { jar, diameter, inside_height: height, ..kitchen.clone() };
        let there = End::of(&Traced::of(&other, &likeliest, &[hold], POINTS)?);
        let jars = format!(
            "at the printed end the middle of this {} is at {}, that of a {jar} in the same canner at {}",
            kitchen.jar,
            printed.say(),
            there.say()
        );
        compared.push(note("jar", jars + "; that is why each size has its own row"));
    }
    let colder = Kitchen { filled_at: kitchen.filled_at - TempDifference::kelvins(20.0), ..kitchen.clone() };
    let cold = End::of(&Traced::of(&colder, &likeliest, &[hold], POINTS)?);
    compared.push(note(
        "filled-colder",
        format!(
            "filled 36 F (20 C) colder, the middle would be at {} instead of {} at the printed end, and {} of what kills \
             would have come: fill as hot as the directions say",
            cold.say(),
            printed.say(),
            cold.share_of(&printed)
        ),
    ));
    let early = Stage { lasts: (hold.lasts - likeliest.come_up()).max(Span::ZERO), ..hold };
    let started = End::of(&Traced::of(kitchen, &likeliest, &[early], POINTS)?);
    compared.push(note(
        "clock",
        format!(
            "with the clock started when the jars went in, about {} of what kills would have come: the clock starts at the \
             full boil, or at pressure",
            started.share_of(&printed)
        ),
    ));
    if !kitchen.is_pressure {
        compared.extend(lost_boil(kitchen, hold, &printed)?);
    }
    compared.extend(altitude(kitchen)?);
    Ok(compared)
}

/// The jars on file next to this one in size.
fn neighbours(kitchen: &Kitchen) -> Vec<(JarSize, Length, Length)> {
    let smaller = kitchen.others.iter().filter(|other| other.0 < kitchen.jar).max_by_key(|other| other.0);
    let larger = kitchen.others.iter().filter(|other| other.0 > kitchen.jar).min_by_key(|other| other.0);
    smaller.into_iter().chain(larger).copied().collect()
}

/// What a history comes to at the printed end, and in all.
struct End {
    celsius: f64,
    counted: Span,
}

impl End {
    fn of(traced: &Traced) -> Self {
        Self { celsius: traced.centre(traced.ends).as_celsius(), counted: traced.counted_in_all() }
    }

    fn say(&self) -> String {
        let fahrenheit = self.celsius * 1.8 + 32.0;
        format!("about {fahrenheit:.0} F ({:.0} C)", self.celsius)
    }

    fn share_of(&self, whole: &Self) -> String {
        format!("{} %", Figure(libm::round(100.0 * self.counted.ratio_to(whole.counted))))
    }
}

fn say_where_it_counts(traced: &Traced) -> String {
    let all = traced.counted_in_all();
    let share = |time: Span| libm::round(100.0 * traced.counted(time).ratio_to(all));
    let (before, by_end) = (share(traced.begins), share(traced.ends));
    format!(
        "of all that kills in this history about {before:.0} % comes before the printed minutes begin, {:.0} % while they run, and \
         {:.0} % after: the jar goes on heating in its middle while it rests and cools, so it is left to cool by itself",
        by_end - before,
        100.0 - by_end
    )
}

/// Ten minutes of the boil lost in the middle of the printed ones, the clock running on.
fn lost_boil(kitchen: &Kitchen, hold: Stage, printed: &End) -> Result<Option<Note>, WhyError> {
    const LOST: Span = Span::minutes(10.0);
    if hold.lasts < LOST * 1.5 {
        return Ok(None);
    }
    let cooler = hold.from - TempDifference::kelvins(10.0);
    let part = |lasts: Span, at| Stage { lasts, from: at, to: at, ..hold };
    let half = (hold.lasts - LOST) * 0.5;
    let stages = [part(half, hold.from), part(LOST, cooler), part(half, hold.from)];
    let lost = End::of(&Traced::of(kitchen, &kitchen.likeliest(), &stages, POINTS)?);
    Ok(Some(note(
        "lost-boil",
        format!(
            "with the water 18 F (10 C) under the boil for ten of the minutes and the clock running on, {} of what kills would \
             have come: bring it back to the boil and start the printed minutes again from the beginning",
            lost.share_of(printed)
        ),
    )))
}

/// What the height of the kitchen does to the boil.
fn altitude(kitchen: &Kitchen) -> Result<Option<Note>, WhyError> {
    if kitchen.height <= Length::ZERO {
        return Ok(None);
    }
    let sea = find_boiling_point(Length::ZERO)?;
    let lethal = kitchen.lethal();
    let here = kitchen.boils_at;
    let counts = lethal.rate(here)? / lethal.rate(sea)?;
    let text = if kitchen.is_pressure {
        format!(
            "water boils at {:.0} F here and at {:.0} F at the sea; the same gauge is {:.0} F cooler, so more pressure is printed",
            here.as_fahrenheit(),
            sea.as_fahrenheit(),
            (sea - here).as_fahrenheit_degrees()
        )
    } else {
        format!(
            "water boils at {:.0} F here and at {:.0} F at the sea; a minute at the boil counts for {} of one there, so more \
             minutes are printed",
            here.as_fahrenheit(),
            sea.as_fahrenheit(),
            Figure(counts)
        )
    };
    Ok(Some(note("altitude", text)))
}
