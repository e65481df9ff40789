//! Formulas a household copied from its own publications, rows it confirmed, formulas of its own: what stands of them
//! in the house file.

use almanac::{Almanac, Band, CannerKind, Pack, Part, ProductId};
use batch::clear::{CopiedDraft, CopiedPlace, DraftFormula, DraftProcess, HomeIngredient, Issuer, OwnCopy};
use measure::read_amount;

use super::fault::{DayFaults, FaultKind, Faults, WhichFile};
use super::reader::{Files, Names, Reader};
use super::section::{Entry, Section};
use super::text;

/// The format of the house file that is known.
const FORMAT: &str = "house/1";

const COPIED_KEYS: &[&str] =
    &["name", "issuer", "title", "year", "page", "food", "ingredients", "steps", "process"];
const CONFIRMED_KEYS: &[&str] = &["name", "issuer", "title", "year", "page", "food", "process"];
const OWN_KEYS: &[&str] = &["name", "keep", "ingredients", "steps"];
const INGREDIENT_KEYS: &[&str] = &["what", "amount", "part"];
const PROCESS_KEYS: &[&str] = &["pack", "jar", "canner", "from", "to", "minutes", "pressure", "headspace"];

/// How a household's own formula is kept; a process is none of these.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OwnKeep {
    /// In the refrigerator.
    Chilled,
    /// In the freezer.
    Frozen,
    /// Dried.
    Dried,
}

impl OwnKeep {
    const ALL: &'static [(&'static str, Self)] =
        &[("chilled", Self::Chilled), ("frozen", Self::Frozen), ("dried", Self::Dried)];

    /// The word it is entered by.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Chilled => "chilled",
            Self::Frozen => "frozen",
            Self::Dried => "dried",
        }
    }
}

/// A formula of the household's own.
#[derive(Debug, Clone, PartialEq)]
pub struct OwnFormula {
    /// What the household calls it.
    pub name: String,
    /// How it is kept.
    pub keep: OwnKeep,
    /// What goes in.
    pub ingredients: Vec<HomeIngredient>,
    /// What is done.
    pub steps: Vec<String>,
}

/// What was copied in, with the line of every part of it.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct WrittenCopy {
    pub(crate) draft: CopiedDraft,
    lines: Lines,
}

/// The lines of the house file on which the parts of one copied formula stand.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Lines {
    whole: usize,
    name: usize,
    year: usize,
    food: usize,
    ingredients: Vec<usize>,
    steps: Vec<usize>,
    processes: Vec<usize>,
}

impl WrittenCopy {
    /// The line on which a part stands.
    pub(crate) fn line(&self, place: CopiedPlace) -> usize {
        let of = |lines: &[usize], at: usize| lines.get(at).copied().unwrap_or(self.lines.whole);
        match place {
            CopiedPlace::Whole => self.lines.whole,
            CopiedPlace::Name => self.lines.name,
            CopiedPlace::Year => self.lines.year,
            CopiedPlace::Food => self.lines.food,
            CopiedPlace::Ingredient(at) => of(&self.lines.ingredients, at),
            CopiedPlace::Step(at) => of(&self.lines.steps, at),
            CopiedPlace::Process(at) => of(&self.lines.processes, at),
        }
    }
}

/// What a house file holds of copied, confirmed and own formulas.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct WrittenFormulas {
    pub(crate) copied: Vec<WrittenCopy>,
    pub(crate) own: Vec<OwnFormula>,
}

/// Reads the formulas of a house file. Nothing is judged yet.
///
/// # Errors
/// Everything that cannot be read, with its line.
pub(crate) fn read_written_formulas(
    almanac: &Almanac,
    house_bytes: &[u8],
) -> Result<WrittenFormulas, DayFaults> {
    let house = text::decode(house_bytes);
    let house_text = house.as_deref().ok();
    let mut faults = Faults::of(None, house_text);
    if let Err(problem) = &house {
        let (place, kind) = &**problem;
        faults.add_at(WhichFile::House, *place, kind.clone());
    }
    let root = house_text.and_then(|text| text::parse(text, WhichFile::House, &mut faults));
    let mut reader = Reader { almanac, faults, filled_in: Vec::new(), file_lost: root.is_none() };
    let mut written = WrittenFormulas::default();
    if let Some(root) = &root {
        let files = Files { day: None, house: Some(Section::of_file(WhichFile::House, root)) };
        check_format(files, &mut reader);
        let mut names = Names::of("the copied and own formulas");
        for (key, place, keys) in
            [("copied", "[[copied]]", COPIED_KEYS), ("confirmed", "[[confirmed]]", CONFIRMED_KEYS)]
        {
            for table in tables(files, key, place, &mut reader) {
                table.check_keys(keys, &mut reader.faults);
                written.copied.extend(read_copy(table, key == "copied", &mut names, &mut reader));
            }
        }
        for table in tables(files, "own", "[[own]]", &mut reader) {
            written.own.extend(read_own(table, &mut names, &mut reader));
        }
    }
    match reader.faults.finish() {
        None => Ok(written),
        Some(faults) => Err(faults),
    }
}

/// A house file may say its format; one of another format is not read as this one.
pub(super) fn check_format(files: Files<'_>, reader: &mut Reader<'_, '_>) {
    if let Some(entry) = files.house.and_then(|root| root.find("format")) {
        reader.choose(entry, &[(FORMAT, ())]);
    }
}

fn tables<'f>(
    files: Files<'f>,
    key: &str,
    place: &'static str,
    reader: &mut Reader<'_, '_>,
) -> Vec<Section<'f>> {
    files.find(key).flat_map(|entry| entry.sections(place, &mut reader.faults)).collect()
}

fn read_copy(
    table: Section<'_>,
    whole: bool,
    names: &mut Names,
    reader: &mut Reader<'_, '_>,
) -> Option<WrittenCopy> {
    let line_of = |at: usize, reader: &Reader<'_, '_>| reader.faults.place(table.file, at).0;
    let line = |key: &str, reader: &Reader<'_, '_>| {
        line_of(table.find(key).map_or(table.at, |entry| entry.key_at), reader)
    };
    let name = read_name(table, names, reader);
    let issuer = table
        .require("issuer", "issuer = \"extension-or-university\"", &mut reader.faults)
        .and_then(|entry| reader.choose(entry, Issuer::ALL));
    let title = table
        .require("title", "title = \"Pickles and Relishes\"", &mut reader.faults)
        .and_then(|entry| reader.name(entry));
    let year = table
        .require("year", "year = 2009", &mut reader.faults)
        .and_then(|entry| entry.whole(1500, 9999, &mut reader.faults));
    let page =
        table.require("page", "page = \"14\"", &mut reader.faults).and_then(|entry| reader.name(entry));
    let food = if whole {
        table.find("food")
    } else {
        table.require("food", "food = \"applesauce\"", &mut reader.faults)
    };
    let food = food.map(|entry| read_food(entry, reader));
    let (formula, ingredients, steps) = if whole { read_formula(table, reader) } else { Default::default() };
    let (processes, process_lines) = read_processes(table, reader);
    let lines = Lines {
        whole: line_of(table.at, reader),
        name: line("name", reader),
        year: line("year", reader),
        food: line("food", reader),
        ingredients,
        steps,
        processes: process_lines,
    };
    // Never truncates: the year was read as four digits.
    let copy = OwnCopy { issuer: issuer?, title: title?, year: year? as u16, page: page? };
    let draft = CopiedDraft {
        name: name?,
        copy,
        food: food.transpose_some()?,
        formula: if whole { Some(formula?) } else { None },
        processes,
    };
    Some(WrittenCopy { draft, lines })
}

/// A food that was named and not found has a fault already.
trait TransposeSome<T> {
    fn transpose_some(self) -> Option<Option<T>>;
}

impl<T> TransposeSome<T> for Option<Option<T>> {
    fn transpose_some(self) -> Option<Option<T>> {
        match self {
            None => Some(None),
            Some(found) => found.map(Some),
        }
    }
}

fn read_name(table: Section<'_>, names: &mut Names, reader: &mut Reader<'_, '_>) -> Option<String> {
    let entry = table.require("name", "name = \"porch relish\"", &mut reader.faults)?;
    let name = reader.name(entry)?;
    names.check(&name, entry, &mut reader.faults);
    Some(name)
}

fn read_food(entry: Entry<'_>, reader: &mut Reader<'_, '_>) -> Option<ProductId> {
    let typed = reader.name(entry)?;
    let found = reader.almanac.find_product(&typed);
    if let Some(product) = found.one() {
        return Some(product.id.clone());
    }
    let nearest = match found {
        almanac::Match::One(_) => Vec::new(),
        almanac::Match::Several(rows) | almanac::Match::Nearest(rows) => {
            rows.into_iter().map(|product| product.id.to_string()).collect()
        }
    };
    reader.faults.add(entry.file, entry.value_at(), FaultKind::UnknownFood { word: typed, nearest });
    None
}

type ReadFormula = (Option<DraftFormula>, Vec<usize>, Vec<usize>);

fn read_formula(table: Section<'_>, reader: &mut Reader<'_, '_>) -> ReadFormula {
    let (ingredients, ingredient_lines) = read_ingredients(table, reader);
    let (steps, step_lines) = read_steps(table, reader);
    let formula = ingredients.map(|ingredients| DraftFormula { ingredients, steps });
    (formula, ingredient_lines, step_lines)
}

fn read_ingredients(
    table: Section<'_>,
    reader: &mut Reader<'_, '_>,
) -> (Option<Vec<HomeIngredient>>, Vec<usize>) {
    let example = "ingredients = [ { what = \"onions\", amount = \"2 lb\", part = \"low-acid\" } ]";
    let Some(entry) = table.require("ingredients", example, &mut reader.faults) else {
        return (None, Vec::new());
    };
    let items = entry.sections("ingredients = [ { what, amount, part } ]", &mut reader.faults);
    let lines = items.iter().map(|item| reader.faults.place(item.file, item.at).0).collect();
    let read: Vec<_> = items.into_iter().map(|item| read_ingredient(item, reader)).collect();
    (read.into_iter().collect(), lines)
}

fn read_ingredient(item: Section<'_>, reader: &mut Reader<'_, '_>) -> Option<HomeIngredient> {
    item.check_keys(INGREDIENT_KEYS, &mut reader.faults);
    let parts: Vec<_> = Part::ALL.iter().map(|&part| (part.as_str(), part)).collect();
    let what =
        item.require("what", "what = \"onions\"", &mut reader.faults).and_then(|entry| reader.name(entry));
    let part = item
        .require("part", "part = \"low-acid\"", &mut reader.faults)
        .and_then(|entry| reader.choose(entry, &parts));
    let written = item.find("amount");
    let amount = written.and_then(|entry| reader.amount(entry, "\"2 lb\" or \"3 cups\"", read_amount));
    if written.is_some() && amount.is_none() {
        return None;
    }
    Some(HomeIngredient { what: what?, amount, part: part? })
}

fn read_steps(table: Section<'_>, reader: &mut Reader<'_, '_>) -> (Vec<String>, Vec<usize>) {
    let Some(entry) = table.require("steps", "steps = [ \"chop\", \"boil 30 minutes\" ]", &mut reader.faults)
    else {
        return (Vec::new(), Vec::new());
    };
    let items = entry.list();
    let lines = items.iter().map(|item| reader.faults.place(item.file, item.value_at()).0).collect();
    (items.into_iter().filter_map(|item| reader.name(item)).collect(), lines)
}

fn read_processes(table: Section<'_>, reader: &mut Reader<'_, '_>) -> (Vec<DraftProcess>, Vec<usize>) {
    let example = "[[copied.process]] with pack, jar, canner, from, to, minutes";
    let Some(entry) = table.require("process", example, &mut reader.faults) else {
        return (Vec::new(), Vec::new());
    };
    let items = entry.sections("[[copied.process]]", &mut reader.faults);
    let read = items.into_iter().filter_map(|item| {
        let line = reader.faults.place(item.file, item.at).0;
        Some((read_process(item, reader)?, line))
    });
    read.unzip()
}

fn read_process(item: Section<'_>, reader: &mut Reader<'_, '_>) -> Option<DraftProcess> {
    item.check_keys(PROCESS_KEYS, &mut reader.faults);
    let packs: Vec<_> = Pack::ALL.iter().map(|&pack| (pack.as_str(), pack)).collect();
    let canners: Vec<_> = CannerKind::ALL.iter().map(|&canner| (canner.as_str(), canner)).collect();
    let pack = item
        .require("pack", "pack = \"hot\"", &mut reader.faults)
        .and_then(|entry| reader.choose(entry, &packs));
    let jar = item.require("jar", "jar = \"pint\"", &mut reader.faults).and_then(|entry| {
        let words = entry.words("a jar in quotes", &mut reader.faults)?;
        reader.jar_size_named(words.text, words.file, words.at)
    });
    let canner = item
        .require("canner", "canner = \"boiling-water\"", &mut reader.faults)
        .and_then(|entry| reader.choose(entry, &canners));
    let height = "\"1,001 ft\" or \"305 m\"";
    let from = item
        .require("from", "from = \"0 ft\"", &mut reader.faults)
        .and_then(|entry| reader.amount(entry, height, measure::read_altitude));
    let to = item.find("to").map(|entry| reader.amount(entry, height, measure::read_altitude));
    let minutes = item
        .require("minutes", "minutes = 15", &mut reader.faults)
        .and_then(|entry| reader.amount_or_number(entry, "15", "min", measure::read_minutes));
    let pressure =
        item.find("pressure").map(|entry| reader.amount(entry, "\"11 psi\"", measure::read_pressure));
    let headspace =
        item.find("headspace").map(|entry| reader.amount(entry, "\"1/2 in\"", measure::read_length));
    Some(DraftProcess {
        pack: pack?,
        jar: jar?,
        canner: canner?,
        band: Band { min: from?, max: to.transpose_some()? },
        minutes: minutes?,
        pressure: pressure.transpose_some()?,
        headspace: headspace.transpose_some()?,
    })
}

fn read_own(table: Section<'_>, names: &mut Names, reader: &mut Reader<'_, '_>) -> Option<OwnFormula> {
    table.check_keys(OWN_KEYS, &mut reader.faults);
    let name = read_name(table, names, reader);
    let keep = table
        .require("keep", "keep = \"chilled\", or frozen, dried", &mut reader.faults)
        .and_then(|entry| reader.choose(entry, OwnKeep::ALL));
    let (ingredients, _) = read_ingredients(table, reader);
    let steps = table.find("steps").map(|_| read_steps(table, reader).0).unwrap_or_default();
    Some(OwnFormula { name: name?, keep: keep?, ingredients: ingredients?, steps })
}
