//! Loading: every table is read, every reference between tables is checked, and every fault is told at once.

use std::collections::btree_map::Entry;
use std::collections::{BTreeMap, BTreeSet};

use crate::acid::{AcidPlace, AcidRemark, AcidRule, read_acid};
use crate::change::{ChangeRule, FoodFamily, read_changes, read_families};
use crate::elsewhere::{ElsewhereFact, read_elsewhere};
use crate::engineering::{Engineering, read_engineering};
use crate::fault::{DataFault, DataProblem};
use crate::formula::{Formula, read_formulas, read_ingredients, read_steps};
use crate::guess::{Guesses, read_guesses};
use crate::jar::{Jar, JarSize, JarStep, read_jar_steps, read_jars};
use crate::keeping::{KeepingTables, read_keeping};
use crate::load_rule::{LoadRule, read_load_rules};
use crate::matching::{Match, match_name};
use crate::method::{MethodTables, read_methods};
use crate::note::{KitchenRule, MetricFact, read_kitchen_rules, read_metric};
use crate::process::{CannerKind, ProcessRows, Product, read_processes};
use crate::produce::{ProduceTables, read_accepts, read_produce};
use crate::refusal::{NotForCanning, read_refusals};
use crate::row::{Reading, Sources};
use crate::rule::{CannerRule, RuleMissing, read_canner_rules};
use crate::source::{Source, read_sources};
use crate::tables::{Table, Tables};
use crate::{FormulaId, ProductId, RefusalId, RuleId, SourceId};

/// All tables, typed.
#[derive(Debug, Clone)]
pub struct Almanac {
    pub(crate) sources: Sources,
    pub(crate) jars: Vec<Jar>,
    pub(crate) jar_steps: Vec<JarStep>,
    pub(crate) rules: BTreeMap<RuleId, CannerRule>,
    pub(crate) processes: ProcessRows,
    pub(crate) acid: Vec<AcidRule>,
    pub(crate) acid_remarks: Vec<AcidRemark>,
    pub(crate) refusals: BTreeMap<RefusalId, NotForCanning>,
    pub(crate) formulas: BTreeMap<FormulaId, Formula>,
    pub(crate) changes: Vec<ChangeRule>,
    pub(crate) families: Vec<FoodFamily>,
    pub(crate) kitchen_rules: BTreeMap<RuleId, KitchenRule>,
    pub(crate) metric: Vec<MetricFact>,
    pub(crate) load_rules: Vec<LoadRule>,
    pub(crate) elsewhere: Vec<ElsewhereFact>,
    pub(crate) produce: ProduceTables,
    pub(crate) methods: MethodTables,
    pub(crate) guesses: Guesses,
    pub(crate) keeping: KeepingTables,
    pub(crate) engineering: Engineering,
}

impl Almanac {
    /// Reads the tables built into the program.
    ///
    /// # Errors
    /// Every fault of every table, with file and line.
    pub fn load() -> Result<Self, Vec<DataFault>> {
        Self::from_tables(&Tables::embedded())
    }

    /// Reads the tables given.
    ///
    /// # Errors
    /// Every fault of every table, with file and line.
    pub fn from_tables(tables: &Tables) -> Result<Self, Vec<DataFault>> {
        let mut reading = Reading { tables, sources: Sources::new(), faults: Vec::new() };
        let sources = read_sources(&mut reading);
        reading.sources = sources;
        let jars = read_jars(&mut reading);
        let steps = read_jar_steps(&mut reading);
        let rules = read_canner_rules(&mut reading);
        let rules = keyed(&mut reading, Table::CannerRules, rules, |rule| rule.id.clone());
        let processes = read_processes(&mut reading);
        let acid = read_acid(&mut reading);
        let refusals = read_refusals(&mut reading);
        let refusals = keyed(&mut reading, Table::NotForCanning, refusals, |refusal| refusal.id.clone());
        let produce = read_produce(&mut reading, |id| processes.knows(id));
        let formulas = read_whole_formulas(&mut reading, &processes, &produce);
        let changes = read_changes(&mut reading, |id| formulas.contains_key(id), |id| processes.knows(id));
        let changes = unrepeated(&mut reading, Table::ChangeRules, changes, |rule| rule.id.clone());
        let families = read_families(&mut reading, |id| processes.knows(id));
        let families = unrepeated(&mut reading, Table::FoodFamilies, families, |row| row.product.clone());
        let kitchen_rules = read_kitchen_rules(&mut reading);
        let kitchen_rules = keyed(&mut reading, Table::PickleRules, kitchen_rules, |rule| rule.id.clone());
        let metric = read_metric(&mut reading);
        let load_rules = read_load_rules(&mut reading);
        let load_rules = unrepeated(&mut reading, Table::LoadRules, load_rules, |rule| rule.id.clone());
        let elsewhere = read_elsewhere(&mut reading);
        let methods = read_methods(&mut reading);
        let jar_steps = check_jar_steps(&mut reading, steps, &processes);
        let rules_of_acid = place_acid(&mut reading, acid.rules, &processes);
        check_remarks(&mut reading, &acid.remarks, &processes);
        let guesses = read_guesses(&mut reading);
        let keeping = read_keeping(&mut reading, |id| processes.knows(id));
        let engineering = read_engineering(&mut reading);
        if !reading.faults.is_empty() {
            return Err(reading.faults);
        }
        Ok(Self {
            sources: reading.sources,
            jars,
            jar_steps,
            rules,
            processes,
            acid: rules_of_acid,
            acid_remarks: acid.remarks.into_iter().map(|(_, remark)| remark).collect(),
            refusals,
            formulas,
            changes,
            families,
            kitchen_rules,
            metric,
            load_rules,
            elsewhere,
            produce,
            methods,
            guesses,
            keeping,
            engineering,
        })
    }

    /// A publication.
    #[must_use]
    pub fn source(&self, id: &SourceId) -> Option<&Source> {
        self.sources.get(id)
    }

    /// Every publication, in the order of the ids.
    pub fn sources(&self) -> impl Iterator<Item = &Source> {
        self.sources.values()
    }

    /// What is known of a jar size; none when it has no row.
    #[must_use]
    pub fn jar(&self, size: JarSize) -> Option<&Jar> {
        self.jars.iter().find(|jar| jar.size == size)
    }

    /// Every jar with a row, as the table lists them.
    #[must_use]
    pub fn jars(&self) -> &[Jar] {
        &self.jars
    }

    /// Every food with a printed process, in the order of the ids.
    pub fn products(&self) -> impl Iterator<Item = &Product> {
        self.processes.products()
    }

    /// A food with a printed process.
    #[must_use]
    pub fn product(&self, id: &ProductId) -> Option<&Product> {
        self.processes.product(id)
    }

    /// The food a person means.
    #[must_use]
    pub fn find_product(&self, typed: &str) -> Match<'_, Product> {
        match_name(typed, self.products(), |product| {
            std::iter::once(product.id.as_str()).chain(product.names.iter().map(|name| &**name)).collect()
        })
    }

    /// Every formula, in the order of the ids.
    pub fn formulas(&self) -> impl Iterator<Item = &Formula> {
        self.formulas.values()
    }

    /// A formula.
    #[must_use]
    pub fn formula(&self, id: &FormulaId) -> Option<&Formula> {
        self.formulas.get(id)
    }

    /// The formula a person means.
    #[must_use]
    pub fn find_formula(&self, typed: &str) -> Match<'_, Formula> {
        match_name(typed, self.formulas(), |formula| vec![formula.id.as_str(), &*formula.name])
    }

    /// A canner rule.
    #[must_use]
    pub fn rule(&self, id: &str) -> Option<&CannerRule> {
        self.rules.get(id)
    }

    /// A canner rule that must be on file.
    ///
    /// # Errors
    /// [`RuleMissing`] when its row is not there.
    pub fn require_rule(&self, id: &str) -> Result<&CannerRule, RuleMissing> {
        self.rule(id).ok_or_else(|| RuleMissing { rule: RuleId::from(id) })
    }

    /// Every canner rule, in the order of the ids.
    pub fn rules(&self) -> impl Iterator<Item = &CannerRule> {
        self.rules.values()
    }

    /// Every row of the acid table that names a jar.
    #[must_use]
    pub fn acid_rules(&self) -> &[AcidRule] {
        &self.acid
    }

    /// What the acid table says of foods as such.
    #[must_use]
    pub fn acid_remarks(&self) -> &[AcidRemark] {
        &self.acid_remarks
    }
}

/// Rows by their name; a name that stands twice is a fault.
pub(crate) fn keyed<K: Ord + std::fmt::Display, T>(
    reading: &mut Reading<'_>,
    table: Table,
    rows: Vec<(u64, T)>,
    key: impl Fn(&T) -> K,
) -> BTreeMap<K, T> {
    let mut by_key = BTreeMap::new();
    for (line, row) in rows {
        match by_key.entry(key(&row)) {
            Entry::Vacant(place) => {
                place.insert(row);
            }
            Entry::Occupied(place) => {
                reading.note(table, line, DataProblem::Repeated { key: place.key().to_string() });
            }
        }
    }
    by_key
}

fn read_whole_formulas(
    reading: &mut Reading<'_>,
    processes: &ProcessRows,
    produce: &ProduceTables,
) -> BTreeMap<FormulaId, Formula> {
    let rows = read_formulas(reading);
    for (line, formula) in &rows {
        if let Some(product) = formula.product.as_ref().filter(|id| processes.product(id).is_none()) {
            let (text, table) = (product.to_string(), "a process table");
            let problem = DataProblem::UnknownKey { column: "canning_product_id", text, table };
            reading.note(Table::Formulas, *line, problem);
        }
    }
    let mut formulas = keyed(reading, Table::Formulas, rows, |formula| formula.id.clone());
    let unknown = |id: &FormulaId| DataProblem::UnknownKey {
        column: "formula_id",
        text: id.to_string(),
        table: Table::Formulas.file(),
    };
    for (line, id, ingredient) in read_ingredients(reading) {
        match formulas.get_mut(&id) {
            Some(formula) => formula.ingredients.push(ingredient),
            None => reading.note(Table::Ingredients, line, unknown(&id)),
        }
    }
    for (line, id, step) in read_steps(reading) {
        let Some(formula) = formulas.get_mut(&id) else {
            reading.note(Table::Steps, line, unknown(&id));
            continue;
        };
        let next = formula.steps.len() as u32 + 1;
        if step.order != next {
            let what = format!("step {} of {id} stands where step {next} should", step.order);
            reading.note(Table::Steps, line, DataProblem::Contradiction { what });
        }
        formula.steps.push(step);
    }
    for (line, id, name, accepted) in read_accepts(reading, produce) {
        let mut lines =
            formulas.get_mut(&id).map(|formula| formula.ingredients.as_mut_slice()).into_iter().flatten();
        match lines.find(|ingredient| ingredient.name == name) {
            Some(ingredient) => ingredient.accepts = accepted,
            None => {
                let (text, table) = (format!("{id}, {name}"), Table::Ingredients.file());
                let problem = DataProblem::UnknownKey { column: "ingredient", text, table };
                reading.note(Table::IngredientProduce, line, problem);
            }
        }
    }
    formulas
}

/// Rows in the order of the file; a name that stands twice is a fault.
fn unrepeated<K: Ord + std::fmt::Display, T>(
    reading: &mut Reading<'_>,
    table: Table,
    rows: Vec<(u64, T)>,
    key: impl Fn(&T) -> K,
) -> Vec<T> {
    let mut seen = BTreeSet::new();
    let mut kept = Vec::with_capacity(rows.len());
    for (line, row) in rows {
        let key = key(&row);
        let problem = DataProblem::Repeated { key: key.to_string() };
        if seen.insert(key) {
            kept.push(row);
        } else {
            reading.note(table, line, problem);
        }
    }
    kept
}

fn check_jar_steps(
    reading: &mut Reading<'_>,
    steps: Vec<(u64, JarStep)>,
    processes: &ProcessRows,
) -> Vec<JarStep> {
    for (line, step) in &steps {
        for product in step.products.iter().filter(|product| processes.product(product).is_none()) {
            let (text, table) = (product.to_string(), "a process table");
            reading.note(Table::JarSteps, *line, DataProblem::UnknownKey { column: "products", text, table });
        }
    }
    steps.into_iter().map(|(_, step)| step).collect()
}

/// Acid belongs inside the formula where the boiling-water table says that none is added jar by jar.
fn place_acid(
    reading: &mut Reading<'_>,
    rules: Vec<(u64, AcidRule)>,
    processes: &ProcessRows,
) -> Vec<AcidRule> {
    let mut placed = Vec::with_capacity(rules.len());
    for (line, mut rule) in rules {
        let Some(product) = processes.product(&rule.product) else {
            let (text, table) = (rule.product.to_string(), "a process table");
            reading.note(
                Table::Acidification,
                line,
                DataProblem::UnknownKey { column: "product_id", text, table },
            );
            continue;
        };
        let boiled = product.canners.contains(&CannerKind::BoilingWater);
        if boiled && !processes.asks_for_acid(&rule.product) {
            rule.place = AcidPlace::InFormula;
        }
        placed.push(rule);
    }
    placed
}

/// A remark is about a food, or about a family spelled `...-any`.
fn check_remarks(reading: &mut Reading<'_>, remarks: &[(u64, AcidRemark)], processes: &ProcessRows) {
    let known: BTreeSet<&str> = processes.products().map(|product| product.id.as_str()).collect();
    for (line, remark) in remarks {
        if !known.contains(&*remark.about) && !remark.about.ends_with("-any") {
            let (text, table) = (remark.about.to_string(), "a process table");
            let problem = DataProblem::UnknownKey { column: "product_id", text, table };
            reading.note(Table::Acidification, *line, problem);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn told(tables: &Tables) -> Vec<String> {
        let faults = Almanac::from_tables(tables).err().unwrap_or_default();
        faults.iter().map(|fault| fault.to_string().lines().next().unwrap_or_default().to_owned()).collect()
    }

    /// The tables with one piece of text replaced in one of them.
    fn with(tables: Tables, table: Table, from: &str, to: &str) -> Tables {
        let text = tables.text(table);
        assert!(text.contains(from), "{from:?} is not in {table}");
        let text = text.replacen(from, to, 1);
        tables.with(table, text)
    }

    #[test]
    fn the_built_in_tables_load_without_a_fault() {
        assert_eq!(told(&Tables::embedded()), Vec::<String>::new());
    }

    #[test]
    fn faults_of_one_row_and_of_other_tables_are_told_at_once() {
        let mut tables = Tables::embedded();
        tables = with(tables, Table::Jars, "quarter-pint,4,118,regular", "quarter-pint,four,118,narrow");
        tables = with(
            tables,
            Table::Syrups,
            "canning,very light,10,9-pint load,6.5",
            "canning,very light,10,9-pint load,",
        );
        tables = with(tables, Table::Formulas, ",jalapeno-rings-pickled,", ",no-such-food,");
        assert_eq!(
            told(&tables),
            [
                "data/processes/jars.csv:2: nominal_us_fl_oz is \"four\", not a number in range",
                "data/processes/jars.csv:2: mouths is \"narrow\", which is none of: regular, wide",
                "data/formulas/formulas.csv:2: canning_product_id is \"no-such-food\", which a process table does not hold",
                "data/methods/syrups.csv:2: water_cups is empty",
            ]
        );
    }

    #[test]
    fn an_unknown_source_is_told_where_it_is_named() {
        let tables = with(Tables::embedded(), Table::Pectin, ",PSU_PECTINBLOG,", ",NOBODY,");
        assert_eq!(
            told(&tables),
            ["data/methods/pectin.csv:6: source_id is \"NOBODY\", which sources.toml does not hold"]
        );
    }

    #[test]
    fn a_gap_between_bands_is_a_fault() {
        let tables = with(
            Tables::embedded(),
            Table::BoilingWater,
            "hot,half-pint,1001,6000,10",
            "hot,half-pint,1002,6000,10",
        );
        assert_eq!(
            told(&tables),
            [
                "data/processes/boiling_water.csv:3: the bands of apple-butter, hot, half-pint, boiling-water do not join at 1002 ft"
            ]
        );
    }

    #[test]
    fn another_order_of_columns_is_a_fault_and_nothing_is_read_askew() {
        let tables = with(Tables::embedded(), Table::Pressure, "minutes,gauge", "gauge,minutes");
        let told = told(&tables);
        assert!(
            told[0].starts_with("data/processes/pressure.csv:1: the columns are product_id,"),
            "{}",
            told[0]
        );
    }

    #[test]
    fn a_row_cut_short_and_a_file_that_is_no_toml_are_faults() {
        let tables = Tables::embedded().with(Table::Sources, "[\"a\"]\ntitle = 3\n");
        assert!(told(&tables)[0].starts_with("data/sources.toml:2: cannot be read"), "{}", told(&tables)[0]);
        let text = Tables::embedded().text(Table::Jars).to_owned() + "pint,16\n";
        let tables = Tables::embedded().with(Table::Jars, text);
        assert_eq!(
            told(&tables),
            ["data/processes/jars.csv:10: cannot be read: 2 cells where 11 are expected"]
        );
    }

    #[test]
    fn a_name_that_stands_twice_is_a_fault() {
        let tables = Tables::embedded();
        let text = tables.text(Table::CannerRules);
        let line = text.lines().last().expect("a row").to_owned();
        let tables = Tables::embedded().with(Table::CannerRules, format!("{text}{line}\n"));
        assert_eq!(
            told(&tables),
            ["data/processes/canner_rules.csv:107: \"vinegar-unknown\" stands in this table twice"]
        );
    }
}
