//! Amounts, jars, processes and times in the words of the house.

use almanac::{CannerKind, Citation, Formula, JarSize, Process, Verdict};
use batch::clear::{AcidDose, ClearedLine};
use batch::fit::{FittedBatch, JarCount, Measured as FittedMeasure};
use measure::{
    Altitude, Mass, Volume, write_altitude, write_length_in, write_length_mm, write_mass_metric,
    write_mass_us,
};
use measure::{write_volume_metric, write_volume_us};

use crate::answer::ProcessLine;
use crate::day::Units;

/// A formula's name without the size that it is printed at: "tomatoes, crushed", not "tomatoes, crushed, 7 quarts".
pub(crate) fn name_of(formula: &Formula) -> String {
    let says_a_size = |part: &&str| {
        part.trim().split_once(' ').is_some_and(|(number, jars)| {
            number.parse::<u32>().is_ok() && matches!(jars, "quarts" | "pints" | "half-pints")
        })
    };
    let parts: Vec<&str> = formula.name.split(',').filter(|part| !says_a_size(part)).collect();
    parts.join(",")
}

/// The three words for permission.
pub(crate) fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Tested => "tested",
        Verdict::NotTested => "not tested",
        Verdict::DoNot => "do not",
    }
}

/// A weight in the units of the house.
pub(crate) fn weight(units: Units, mass: Mass) -> String {
    match units {
        Units::Us => write_mass_us(mass),
        Units::Metric => write_mass_metric(mass),
    }
}

/// A volume in the units of the house.
pub(crate) fn volume(units: Units, volume: Volume) -> String {
    match units {
        Units::Us => write_volume_us(volume),
        Units::Metric => write_volume_metric(volume),
    }
}

/// A measured amount as the formula measures it; a weight in the units of the house.
pub(crate) fn measured(units: Units, amount: &FittedMeasure) -> String {
    if let Some(mass) = amount.mass() {
        return weight(units, mass);
    }
    let number = amount.value;
    let unit = amount.unit.told();
    let one = number.to_f64() <= 1.0;
    match unit {
        "each" => number.to_string(),
        "cup" | "clove" | "stick" | "package" | "pouch" | "ear" | "drop" | "pint" if !one => {
            format!("{number} {unit}s")
        }
        "bunch" if !one => format!("{number} bunches"),
        _ => format!("{number} {unit}"),
    }
}

/// One jar or several: "quart", "quarts".
pub(crate) fn jars(size: JarSize, count: u32) -> String {
    let name = match size {
        JarSize::QuarterPint => "quarter-pint",
        JarSize::HalfPint => "half-pint",
        JarSize::TwelveOunce => "12-ounce jar",
        JarSize::Pint => "pint",
        JarSize::PintAndHalf => "pint-and-a-half jar",
        JarSize::TwentyEightOunce => "28-ounce jar",
        JarSize::Quart => "quart",
        JarSize::HalfGallon => "half-gallon jar",
    };
    if count == 1 { name.to_owned() } else { format!("{name}s") }
}

/// "7 quarts", or "6 to 8 quarts, likely 7".
pub(crate) fn range_of_jars(low: u32, likely: u32, high: u32, name: &str) -> String {
    if low == high { format!("{likely} {name}") } else { format!("{low} to {high} {name}, likely {likely}") }
}

/// What all batches yield in jars or bags, in one phrase, with its low, likely and high; none where nothing counts them.
pub(crate) fn yield_of(batches: &[FittedBatch]) -> (Option<String>, Option<[u32; 3]>) {
    let counts: Vec<&JarCount> = batches.iter().flat_map(|batch| &batch.jars).collect();
    if let Some(first) = counts.first() {
        let sum = |pick: fn(&JarCount) -> u32| counts.iter().map(|count| pick(count)).sum::<u32>();
        let (low, likely, high) = (sum(|c| c.low), sum(|c| c.likely), sum(|c| c.high));
        return (Some(range_of_jars(low, likely, high, &jars(first.size, high))), Some([low, likely, high]));
    }
    let bags: Vec<_> = batches.iter().filter_map(|batch| batch.bags.as_ref()).collect();
    let Some(first) = bags.first() else { return (None, None) };
    let low = bags.iter().map(|bag| bag.low).sum();
    let likely = bags.iter().map(|bag| bag.likely).sum();
    let high = bags.iter().map(|bag| bag.high).sum();
    (Some(range_of_jars(low, likely, high, &format!("{} bags", first.size))), Some([low, likely, high]))
}

/// A cleared process in words.
pub(crate) fn process_line(units: Units, line: &ClearedLine, acid: Option<&AcidDose>) -> ProcessLine {
    let process = line.process();
    ProcessLine {
        words: process_words(process, line.hold().map(measure::Pressure::as_psi)),
        minutes: process.minutes().0,
        hold_psi: line.hold().map(measure::Pressure::as_psi),
        printed_psi: process.pressure().map(measure::Pressure::as_psi),
        headspace: match units {
            Units::Us => write_length_in(process.headspace()),
            Units::Metric => {
                format!("{} ({})", write_length_mm(process.headspace()), write_length_in(process.headspace()))
            }
        },
        band: band_words(process),
        acid: acid.map(|acid| acid_words(units, acid)),
        source: cited(process.citation()),
    }
}

fn process_words(process: &Process, hold: Option<f64>) -> String {
    let minutes = process.minutes().0;
    let printed = process.pressure().map_or(0.0, measure::Pressure::as_psi);
    match process.canner() {
        CannerKind::BoilingWater => format!("boiling water, {minutes} minutes at a full rolling boil"),
        CannerKind::Steam => format!("steam canner, {minutes} minutes of steady steam"),
        CannerKind::Weighted => format!("weighted gauge at {printed} lb, {minutes} minutes"),
        CannerKind::Dial => {
            let hold = hold.unwrap_or(printed);
            if hold > printed {
                format!("dial held at {hold} lb for its error (printed {printed} lb), {minutes} minutes")
            } else {
                format!("dial held at {hold} lb, {minutes} minutes")
            }
        }
    }
}

/// What a process is held at, in words.
pub(crate) fn held_at(line: &ClearedLine) -> String {
    let process = line.process();
    let printed = process.pressure().map_or(0.0, measure::Pressure::as_psi);
    match process.canner() {
        CannerKind::BoilingWater => "a full rolling boil".to_owned(),
        CannerKind::Steam => "steady steam".to_owned(),
        CannerKind::Weighted => format!("{printed} lb weight"),
        CannerKind::Dial => {
            format!("{} lb on the dial", line.hold().map_or(printed, measure::Pressure::as_psi))
        }
    }
}

fn band_words(process: &Process) -> String {
    let band = process.band();
    let feet = |altitude: Altitude| write_altitude(altitude);
    match band.max {
        Some(max) => format!("{} to {}", feet(band.min), feet(max)),
        None => format!("{} and above", feet(band.min)),
    }
}

fn acid_words(units: Units, acid: &AcidDose) -> String {
    let rule = acid.rule();
    let amount = |given: Volume| match units {
        Units::Us => write_volume_us(given),
        Units::Metric => format!("{} ({})", write_volume_us(given), write_volume_metric(given)),
    };
    let mut ways = Vec::new();
    if let Some(lemon) = rule.lemon {
        ways.push(format!("{} bottled lemon juice", amount(lemon)));
    }
    if let Some(citric) = rule.citric {
        ways.push(format!("{} citric acid", amount(citric)));
    }
    if let Some(vinegar) = rule.vinegar {
        ways.push(format!("{} vinegar of 5 %", amount(vinegar)));
    }
    format!("into each {} first: {}", jars(rule.jar, 1), ways.join(", or "))
}

/// Where something is printed.
pub(crate) fn cited(citation: &Citation) -> String {
    format!("{}, {}", citation.source, citation.locator)
}

/// A list in a sentence: "a", "a and b", "a, b and c".
pub(crate) fn and_list(words: &[String]) -> String {
    match words {
        [] => String::new(),
        [only] => only.clone(),
        [most @ .., last] => format!("{} and {last}", most.join(", ")),
    }
}

/// A length of time in words.
pub(crate) fn length(minutes: u32) -> String {
    measure::write_minutes(measure::Minutes(minutes))
}
