//! One formula fitted to one lot of produce: amounts a cook can measure, jars, loads, and what is left over.
//!
//! The way through: `matching` finds what there is, `weights` turns the printed measures into weights as bought,
//! `jars` asks the process tables which jars may be filled, `batches` chooses how many batches and how large
//! (`factor` finds a share that can be measured), `amounts` works out each line, and `notes`, `liquid` and
//! `leftovers` say the rest. `supplies` reads a finished fit.
//!
//! Nothing here gives a process: a fit says how much, and a clearance says whether and how long.

mod amounts;
mod answer;
mod balance;
mod batches;
mod factor;
mod jars;
mod leftovers;
mod line;
mod liquid;
mod matching;
mod measurable;
mod notes;
mod printed;
mod question;
mod salt;
mod supplies;
mod weights;

use std::collections::BTreeSet;

use almanac::{Almanac, Formula, KeptIn, Match, Method, ScaleRule, YieldUnit};
use measure::{Fraction, Volume};

pub use answer::{
    BagCount, Because, BecauseCode, Fit, FitVerdict, FittedBatch, FittedIngredient, JarCount, Keeps,
    LeftOver, Load, Note, NoteCode, Trail, Understood, UnderstoodHave,
};
pub use measurable::{CookUnit, Measured};
pub use question::{CannerLoad, FitError, FitQuestion, Have, IngredientRef};
pub use supplies::{ShopLine, Stock, Supply, SupplyAmount, SupplyNeed, missing, needs, shop_units};

pub(crate) use balance::PrintedWeights;

use crate::clear::find_doubt;

use amounts::Frame;
use batches::{Lot, PlannedBatch};
use jars::{CannedAs, JarPlan, Yielded};
use line::{Balance, Held, Line};
use weights::{BatchWeight, Scales};

/// Fits a formula to what is there.
///
/// # Errors
/// [`FitError`] when the question cannot be answered as it stands: a formula or an ingredient that is not on file, a
/// weight that is none. A formula that cannot be made of what is there is no error but the answer *does not fit*.
pub fn fit(almanac: &Almanac, question: &FitQuestion) -> Result<Fit, FitError> {
    let formula = require_formula(almanac, question)?;
    let lines = line::read_lines(formula);
    let held = matching::match_haves(formula, &lines, &question.have)?;
    let scales = Scales::new(almanac);
    let task = Task {
        scales,
        almanac,
        question,
        formula,
        balance: line::read_balance(formula),
        lines: &lines,
        held: &held,
    };
    match task.plan_jars()? {
        Ok((plan, notes)) => Ok(task.answer(&plan, &task.weights_of_batch()?, notes)),
        Err(because) => Ok(task.refuse(because, Vec::new(), Vec::new())),
    }
}

fn require_formula<'a>(almanac: &'a Almanac, question: &FitQuestion) -> Result<&'a Formula, FitError> {
    almanac.formula(&question.formula).ok_or_else(|| {
        let nearest = match almanac.find_formula(question.formula.as_str()) {
            Match::One(formula) => vec![formula.id.to_string()],
            Match::Several(formulas) | Match::Nearest(formulas) => {
                formulas.iter().take(3).map(|formula| formula.id.to_string()).collect()
            }
        };
        FitError::UnknownFormula { formula: question.formula.to_string(), nearest }
    })
}

/// A question with everything it points at.
struct Task<'a> {
    almanac: &'a Almanac,
    scales: Scales<'a>,
    question: &'a FitQuestion,
    formula: &'a Formula,
    balance: Balance,
    lines: &'a [Line],
    held: &'a [Held],
}

impl Task<'_> {
    /// What a printed batch takes of each held line; a held line with a printed measure that has no weight is refused.
    fn weights_of_batch(&self) -> Result<Vec<Option<BatchWeight>>, FitError> {
        self.held
            .iter()
            .filter_map(|held| self.lines.get(held.index))
            .map(|line| {
                let found = self.scales.of_one_batch(line, self.juice_cups());
                match (&line.amount, found) {
                    (line::PrintedAmount::PerBatch { low, unit, .. }, None) => Err(FitError::NotWeighable {
                        ingredient: line.name.clone(),
                        printed: format!("{low} {}", unit.told()),
                    }),
                    (_, found) => Ok(found),
                }
            })
            .collect()
    }

    /// The cups of juice a printed batch is counted by.
    fn juice_cups(&self) -> Option<Fraction> {
        self.formula.yield_.as_ref()?.per.strip_suffix(" cups juice")?.parse().ok()
    }

    fn canned_as(&self) -> Option<CannedAs> {
        let product = self.formula.product.clone().filter(|_| find_doubt(self.formula).is_none())?;
        Some(CannedAs { product, packs: self.formula.packs.clone() })
    }

    /// The sizes that may be filled, in the order wished, or why none may.
    fn plan_jars(&self) -> Result<Result<(JarPlan, Vec<Note>), Because>, FitError> {
        let mut wished = self.question.jars.clone();
        wished.dedup();
        let own = self.own_sizes();
        let is_own = wished.is_empty();
        if is_own {
            wished.clone_from(&own);
        }
        let canned = self.canned_as();
        let kind = self.question.canner.as_ref().map(|canner| canner.kind);
        let permits = |size| match &canned {
            Some(canned) => jars::is_jar_permitted(self.almanac, canned, size, kind, self.question.altitude),
            None => true,
        };
        let (permitted, refused): (Vec<_>, Vec<_>) = wished.iter().copied().partition(|&size| permits(size));
        if permitted.is_empty() && !wished.is_empty() {
            let names: Vec<String> = refused.iter().map(ToString::to_string).collect();
            let text = format!(
                "no process is on file for {} in {} {}; `clear` says what is missing and what may be done instead",
                self.formula.name,
                names.join(" or "),
                if kind.is_some() { "in this canner" } else { "here" }
            );
            return Ok(Err(Because { code: BecauseCode::JarNotPermitted, text }));
        }
        let mut notes = Vec::new();
        notes.extend(notes::not_tested(self.formula));
        if !is_own {
            notes.extend(refused.iter().map(|size| Note {
                code: NoteCode::JarSize,
                text: format!("{size} is left out: no process is on file for it"),
                source: None,
            }));
            notes.extend(
                permitted.iter().filter(|size| !own.contains(size) && !self.formula.jars.contains(size)).map(
                    |size| Note {
                        code: NoteCode::JarSize,
                        text: format!("{size} is not printed with the formula; a printed line serves it"),
                        source: None,
                    },
                ),
            );
        }
        // Of its own sizes one is filled; a person who wants two says so.
        let mut sizes = if is_own { permitted.into_iter().take(1).collect() } else { permitted };
        notes.extend(self.drop_sizes_that_do_not_mix(&mut sizes, canned.as_ref()));
        Ok(Ok((self.with_loads(&sizes, canned.is_some())?, notes)))
    }

    /// The size the yield is printed in, then the other printed ones.
    fn own_sizes(&self) -> Vec<almanac::JarSize> {
        if !matches!(self.formula.kept_in, KeptIn::CanningJar | KeptIn::Refrigerator) {
            return Vec::new();
        }
        let mut sizes = Vec::new();
        if let Some(YieldUnit::Jar(size)) = self.formula.yield_.as_ref().map(|yielded| yielded.unit) {
            sizes.push(size);
        }
        sizes.extend(
            self.formula.jars.iter().copied().filter(|size| !sizes.contains(size)).collect::<Vec<_>>(),
        );
        sizes
    }

    fn drop_sizes_that_do_not_mix(
        &self,
        sizes: &mut Vec<almanac::JarSize>,
        canned: Option<&CannedAs>,
    ) -> Option<Note> {
        let (first, second) = (sizes.first().copied()?, sizes.get(1).copied()?);
        // The rest of a batch fills the smaller jar.
        if second > first {
            sizes.swap(0, 1);
        }
        sizes.truncate(2);
        let kind = self.question.canner.as_ref().map(|canner| canner.kind);
        let mixes = canned.is_none_or(|canned| {
            jars::may_share_a_load(self.almanac, canned, (first, second), kind, self.question.altitude)
        });
        let text = if mixes {
            format!("{first} and {second} may stand in one load: the same line is printed for both")
        } else {
            sizes.clear();
            sizes.push(first);
            format!(
                "{first} and {second} have different printed lines and do not stand in one load; {first} is filled"
            )
        };
        Some(Note { code: NoteCode::MixedJars, text, source: None })
    }

    fn with_loads(&self, sizes: &[almanac::JarSize], is_canned: bool) -> Result<JarPlan, FitError> {
        // A ferment and what has no process go into no canner on the day they are made.
        let loads = is_canned && self.goes_into_a_canner();
        let canner = self.question.canner.as_ref();
        let pressure = canner.map_or_else(
            || self.formula.methods.first() == Some(&Method::Pressure),
            |canner| canner.kind.is_pressure(),
        );
        let held: Vec<jars::SizeHeld> = sizes
            .iter()
            .map(|&size| jars::SizeHeld {
                size,
                holds: if loads { jars::load_of(self.almanac, size, canner, pressure) } else { None },
            })
            .filter(|held| !loads || held.holds.is_some())
            .collect();
        if let (true, Some(canner)) = (held.is_empty() && !sizes.is_empty(), canner) {
            let jars: Vec<String> = sizes.iter().map(ToString::to_string).collect();
            return Err(FitError::CannerHoldsNone { canner: canner.id.clone(), jars: jars.join(" or ") });
        }
        let usual = if pressure { "pressure" } else { "boiling-water" };
        Ok(JarPlan {
            sizes: held,
            canner: loads.then(|| canner.map_or_else(|| usual.to_owned(), |canner| canner.id.clone())),
            usual_load: canner.is_none(),
        })
    }

    fn goes_into_a_canner(&self) -> bool {
        self.formula.methods.iter().any(|method| matches!(method, Method::BoilingWater | Method::Pressure))
    }

    /// What a printed batch gives, in volume of jars; `None` where no jars are printed.
    fn yielded(&self) -> Option<Yielded> {
        let printed = self.formula.yield_.as_ref()?;
        let YieldUnit::Jar(size) = printed.unit else { return None };
        let volume = |jars: Fraction| size.volume() * jars.to_f64();
        let yielded = Yielded { low: volume(printed.min), high: volume(printed.max) };
        Some(self.juice_cups().map_or(yielded, |juice| self.within_what_goes_in(juice, yielded)))
    }

    /// Three printed jelly yields are more than juice and sugar come to; they are cut to what boiling down leaves of
    /// them. The shares are those of the printed apple jelly: 4 cups of juice and 3 of sugar, 5.5 cups in all, give 4
    /// to 5 cups (USDA, Complete Guide to Home Canning, 1994, guide 7).
    fn within_what_goes_in(&self, juice: Fraction, printed: Yielded) -> Yielded {
        const LEAST_LEFT: f64 = 4.0 / 5.5;
        const MOST_LEFT: f64 = 5.0 / 5.5;
        let sugar = self.lines.iter().find(|line| line.part == almanac::Part::Sugar);
        let per_cup = sugar.and_then(|line| match &line.amount {
            line::PrintedAmount::Per { high, .. } => Some(high.to_f64()),
            _ => None,
        });
        let in_all = juice.to_f64() * (1.0 + per_cup.unwrap_or(0.0) * 0.5);
        if printed.high <= Volume::cups(in_all) {
            return printed;
        }
        Yielded { low: Volume::cups(in_all * LEAST_LEFT), high: Volume::cups(in_all * MOST_LEFT) }
    }

    fn answer(&self, plan: &JarPlan, of_batch: &[Option<BatchWeight>], mut notes: Vec<Note>) -> Fit {
        let salt = salt::salt_by_weight(self.almanac, self.lines, self.balance);
        let lot = Lot {
            almanac: self.almanac,
            scales: &self.scales,
            formula: self.formula,
            lines: self.lines,
            balance: self.balance,
            held: self.held,
            of_batch,
            plan,
            yielded: self.yielded(),
            most: self.question.most_batches,
            salted_by_weight: salt.is_some(),
        };
        let scarce = batches::scarcest(&lot).map(|(_, index)| index);
        notes.extend(notes::note_weights(self.lines, self.held, of_batch, scarce));
        let sizes: Vec<almanac::JarSize> = plan.sizes.iter().map(|held| held.size).collect();
        let planned = match batches::plan_batches(&lot) {
            Ok(planned) => planned,
            Err(because) => return self.refuse(because, sizes, notes),
        };
        let load = liquid::read_load(self.almanac);
        let percent = salt.as_ref().map(|salt| salt.percent);
        let mut batches: Vec<FittedBatch> = Vec::with_capacity(planned.len());
        for (at, batch) in planned.iter().enumerate() {
            // Full batches are alike, and weighing one takes a walk through the tables.
            let fitted = match at.checked_sub(1).filter(|&before| planned[before] == *batch) {
                Some(before) => batches[before].clone(),
                None => self.work_out(batch, plan, percent, load.as_ref()),
            };
            batches.push(fitted);
        }
        notes.extend(notes::note_recalled(self.formula));
        notes.extend(notes::note_scale(self.formula, &planned));
        notes.extend(notes::note_amounts(self.lines, self.balance, &batches));
        notes.extend(notes::note_jars(self.almanac, self.formula, &batches, plan.usual_load));
        notes.extend(salt.as_ref().map(salt::note_salt));
        let mut left_over = leftovers::produce_left(self.formula, self.lines, self.held, &batches);
        let spare: u32 = planned.iter().map(|batch| batch.spare).sum();
        left_over.extend(leftovers::spare_jars(spare));
        if let Some(load) = &load {
            let (liquid_notes, liquid) = self.judge_liquid(load, &batches);
            notes.extend(liquid_notes);
            left_over.extend(liquid.as_ref().map(leftovers::liquid_left));
        }
        let mut cited = self.cited_for_weights(&batches);
        cited.extend(salt.iter().filter_map(|salt| salt.citation.as_ref()).map(Trail::from));
        cited.extend(
            load.iter()
                .filter(|_| notes.iter().any(|note| note.code == NoteCode::CoverLiquid))
                .map(|load| Trail::from(&load.citation)),
        );
        let mut fit = Fit { left_over, batches, ..self.empty(FitVerdict::Fits, sizes, notes) };
        cited.extend(std::mem::take(&mut fit.sources));
        fit.sources = cited.into_iter().collect();
        fit
    }

    fn work_out(
        &self,
        batch: &PlannedBatch,
        plan: &JarPlan,
        salt_percent: Option<f64>,
        load: Option<&liquid::LoadLiquid>,
    ) -> FittedBatch {
        let frame = Frame {
            almanac: self.almanac,
            scales: &self.scales,
            lines: self.lines,
            balance: self.balance,
            product: self.formula.product.as_ref(),
            factor: batch.factor,
            jars: &batch.jars,
            juice_cups: self.juice_cups().and_then(|cups| cups.checked_mul(batch.factor)),
            held: self.held,
            by_weight: &batch.by_weight,
            salt_percent,
            cover: load.and_then(|load| liquid::cover_for(load, &batch.jars)),
        };
        FittedBatch {
            factor: batch.factor,
            ingredients: amounts::fit_amounts(&frame),
            loads: plan.loads(&batch.jars),
            jars: batch.jars.clone(),
            bags: batch.bags,
        }
    }

    fn judge_liquid(
        &self,
        load: &liquid::LoadLiquid,
        batches: &[FittedBatch],
    ) -> (Vec<Note>, Option<liquid::SpareLiquid>) {
        if let Some(line) = self.lines.iter().find(|line| line.amount == line::PrintedAmount::SyrupOfLoad) {
            let cover =
                batches.iter().flat_map(|batch| &batch.ingredients).find(|fitted| fitted.index == line.index);
            let note = cover.and_then(|fitted| fitted.measured).map(|cover| liquid::note_syrup(load, cover));
            return (note.into_iter().collect(), None);
        }
        if !liquid::is_poured_over_pieces(self.formula) {
            return (Vec::new(), None);
        }
        match liquid::judge_brine(self.lines, batches, load) {
            Some((note, spare)) => (vec![note], spare),
            None => (Vec::new(), None),
        }
    }

    fn refuse(&self, because: Because, sizes: Vec<almanac::JarSize>, notes: Vec<Note>) -> Fit {
        let left_over = leftovers::produce_left(self.formula, self.lines, self.held, &[]);
        Fit { because: vec![because], left_over, ..self.empty(FitVerdict::DoesNotFit, sizes, notes) }
    }

    fn empty(&self, verdict: FitVerdict, jars: Vec<almanac::JarSize>, notes: Vec<Note>) -> Fit {
        let have = self
            .held
            .iter()
            .filter_map(|held| {
                let line = self.lines.get(held.index)?;
                Some(UnderstoodHave { index: held.index, ingredient: line.name.clone(), mass: held.mass })
            })
            .collect();
        Fit {
            format: "fit/1",
            verdict,
            question: Understood {
                formula: self.formula.id.clone(),
                have,
                jars,
                canner: self.question.canner.as_ref().map(|canner| canner.id.clone()),
                altitude_ft: self.question.altitude.map(measure::Altitude::as_feet),
            },
            batches: Vec::new(),
            keeps: keeps_of(self.formula),
            left_over: Vec::new(),
            because: Vec::new(),
            notes,
            sources: self.trail(),
        }
    }

    /// Where the formula and its lines are printed.
    fn trail(&self) -> Vec<Trail> {
        let lines = self.formula.ingredients.iter().map(|ingredient| &ingredient.citation);
        let cited: BTreeSet<Trail> =
            std::iter::once(&self.formula.citation).chain(lines).map(Trail::from).collect();
        cited.into_iter().collect()
    }

    /// Where the weights beside the measures and the weights of jars come from.
    fn cited_for_weights(&self, batches: &[FittedBatch]) -> BTreeSet<Trail> {
        // The last batch is measured as the others are.
        let fitted = batches.last().into_iter().flat_map(|batch| &batch.ingredients);
        let mut cited: BTreeSet<Trail> = fitted
            .filter(|fitted| fitted.weight.is_some())
            .filter_map(|fitted| self.scales.weigh_by_row(self.lines.get(fitted.index)?, fitted.measured?))
            .map(|(_, citation)| Trail::from(citation))
            .collect();
        if self.formula.scale == ScaleRule::ByJar {
            let printed = self.lines.first().and_then(|line| self.scales.of_one_batch(line, None));
            let rows = printed
                .iter()
                .flat_map(|printed| weights::procurement_of(self.almanac, self.formula, printed.enough()));
            cited.extend(rows.map(|row| Trail::from(&row.citation)));
        }
        cited
    }
}

fn keeps_of(formula: &Formula) -> Keeps {
    let any = |wanted: &[Method]| formula.methods.iter().any(|method| wanted.contains(method));
    if any(&[Method::Freeze]) {
        Keeps::Frozen
    } else if any(&[Method::Dry]) {
        Keeps::Dried
    } else if formula.product.is_some()
        && find_doubt(formula).is_none()
        && any(&[Method::BoilingWater, Method::Pressure, Method::Ferment])
    {
        Keeps::ShelfIfCleared
    } else {
        Keeps::Cold
    }
}
