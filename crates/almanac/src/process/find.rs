//! Looking a process up: exact food, pack and jar, the band that holds the altitude, and no guess anywhere.

use std::collections::BTreeMap;

use measure::{Altitude, Minutes};

use super::{CannerKind, NoProcess, PrintedLine, Process, ProcessQuestion};
use crate::acid::{AcidPlace, AcidRule};
use crate::jar::JarSize;
use crate::source::{Basis, Citation};
use crate::{Almanac, CannerRule, ProductId, RefusalId, RuleId};

impl Almanac {
    /// The processes printed for a question: one, or several alternatives of which each is enough by itself.
    ///
    /// A row is served only when it was seen in print in a source of full rank. A row of lower rank never adds a
    /// line: where a full-rank row prints the same figure, that row is the one served.
    ///
    /// # Errors
    /// [`NoProcess`] says what is missing or what bars it.
    pub fn find_processes(&self, question: &ProcessQuestion) -> Result<Vec<Process>, NoProcess> {
        let ProcessQuestion { product, pack, jar, canner, altitude } = question;
        let known = self
            .processes
            .product(product)
            .ok_or_else(|| NoProcess::ProductUnknown { product: product.clone() })?;
        let table = if *canner == CannerKind::Steam { CannerKind::BoilingWater } else { *canner };
        let rows = self.processes.rows_of(product);
        let of_canner: Vec<&Process> = rows.iter().filter(|row| row.canner == table).collect();
        if of_canner.is_empty() {
            let barred_by = self.bar_against(*canner);
            return Err(NoProcess::NoRowForCanner { printed: known.canners.clone(), barred_by });
        }
        let of_pack: Vec<&Process> = of_canner.iter().copied().filter(|row| row.pack == *pack).collect();
        if of_pack.is_empty() {
            return Err(NoProcess::PackNotPrinted {
                printed: in_order(of_canner.iter().map(|row| row.pack)),
            });
        }
        let printed = in_order(of_pack.iter().map(|row| row.jar_row));
        let (jar_row, jar_rules) = self.row_for_jar(product, *jar, &printed)?;
        let of_jar: Vec<&Process> = of_pack.into_iter().filter(|row| row.jar_row == jar_row).collect();
        let in_band = rows_in_band(&of_jar, *altitude)?;
        let tested = tested_of(&in_band)?;
        let mut served = strictest_of_each_option(&tested);
        if *canner == CannerKind::Steam {
            served = self.within_steam_limit(served)?;
        }
        let acid_in_each_jar = self.require_acid(product, *jar)?;
        for process in &mut served {
            process.canner = *canner;
            process.jar_rules.clone_from(&jar_rules);
            process.acid_in_each_jar = acid_in_each_jar;
            process.rest = self.rest_after(*canner);
        }
        Ok(served)
    }

    /// Every line of the process tables for a food; figures are seen only on lines that may be called tested.
    pub fn printed_lines(&self, product: &ProductId) -> impl Iterator<Item = PrintedLine<'_>> {
        self.processes.lines(product)
    }

    /// The acid printed for a food and jar; a smaller jar gets the amount of the next larger printed one, so that
    /// it never gets less. None when no acid is printed jar by jar.
    ///
    /// None does not say that none is needed: [`Almanac::find_processes`] refuses when it is needed and not printed.
    #[must_use]
    pub fn acid_for(&self, product: &ProductId, jar: JarSize) -> Option<AcidRule> {
        let rows: Vec<&AcidRule> = self
            .acid
            .iter()
            .filter(|rule| rule.product == *product && rule.citation.may_be_called_tested())
            .collect();
        let printed = in_order(rows.iter().map(|rule| rule.jar));
        let (jar_row, _) = self.row_for_jar(product, jar, &printed).ok()?;
        rows.into_iter().find(|rule| rule.jar == jar_row).cloned()
    }

    /// Whether acid must go into each jar of a food, which is refused when no amount is on file for the jar.
    fn require_acid(&self, product: &ProductId, jar: JarSize) -> Result<bool, NoProcess> {
        let flagged = self.processes.rows_of(product).iter().find(|row| row.acid_in_each_jar);
        let ruled = self
            .acid
            .iter()
            .find(|rule| rule.product == *product && rule.mandatory && rule.place == AcidPlace::EachJar);
        let asks = flagged.map(|row| &row.citation).or(ruled.map(|rule| &rule.citation));
        match asks {
            None => Ok(false),
            Some(_) if self.acid_for(product, jar).is_some() => Ok(true),
            Some(citation) => Err(NoProcess::AcidNotPrinted { citation: citation.clone() }),
        }
    }

    /// The printed jar whose row serves a jar, and the rules that say so: none for the jar's own row, else those
    /// that lead to the next larger printed jar.
    fn row_for_jar(
        &self,
        product: &ProductId,
        jar: JarSize,
        printed: &[JarSize],
    ) -> Result<(JarSize, Vec<RuleId>), NoProcess> {
        if printed.contains(&jar) {
            return Ok((jar, Vec::new()));
        }
        let next = self.nearest_printed(product, jar, printed);
        if let Some((jar_row, rules)) = next
            && rules.iter().all(|rule| self.permitting_rule(rule.as_str()).is_some())
        {
            return Ok((jar_row, rules));
        }
        match printed.last() {
            Some(largest) if jar > *largest => {
                let barred_by = self.rule("jar-not-larger").map(|rule| rule.citation.clone());
                Err(NoProcess::JarTooLarge { largest: *largest, barred_by })
            }
            _ => Err(NoProcess::JarNotPrinted { printed: printed.to_vec() }),
        }
    }

    /// The smallest printed jar that the steps lead to, whether or not their rules are on file: a missing rule
    /// refuses the jar, it does not send it on to a jar that is larger still.
    fn nearest_printed(
        &self,
        product: &ProductId,
        jar: JarSize,
        printed: &[JarSize],
    ) -> Option<(JarSize, Vec<RuleId>)> {
        self.steps_for(product)
            .filter(|step| step.jar == jar)
            .filter_map(|step| {
                let rule = step.rule.clone();
                if printed.contains(&step.as_jar) {
                    return Some((step.as_jar, vec![rule]));
                }
                if step.only_if_listed {
                    return None;
                }
                // Ends: every step leads to a larger jar.
                let (jar_row, mut rules) = self.nearest_printed(product, step.as_jar, printed)?;
                rules.insert(0, rule);
                Some((jar_row, rules))
            })
            .min_by_key(|(jar_row, _)| *jar_row)
    }

    /// The steps a food goes by: its own where a rule names it, else those for every food.
    fn steps_for(&self, product: &ProductId) -> impl Iterator<Item = &crate::jar::JarStep> {
        let own = self.jar_steps.iter().any(|step| step.products.contains(product));
        self.jar_steps.iter().filter(move |step| match own {
            true => step.products.contains(product),
            false => step.products.is_empty(),
        })
    }

    /// A rule that may permit something: on file, seen in print, from a source of full rank.
    fn permitting_rule(&self, id: &str) -> Option<&CannerRule> {
        self.rule(id).filter(|rule| rule.citation.may_be_called_tested())
    }

    fn within_steam_limit(&self, processes: Vec<Process>) -> Result<Vec<Process>, NoProcess> {
        let rule = self.permitting_rule("steam-max");
        let limit = rule.and_then(|rule| rule.value?.as_minutes()).map(|(_, longest)| longest);
        let shortest = processes.iter().map(|process| process.minutes).min().unwrap_or_default();
        let within: Vec<Process> = processes
            .into_iter()
            .filter(|process| limit.is_some_and(|limit| process.minutes <= limit))
            .collect();
        if within.is_empty() {
            let barred_by = rule.map(|rule| rule.citation.clone());
            return Err(NoProcess::SteamLimit { minutes: shortest, limit, barred_by });
        }
        Ok(within)
    }

    fn rest_after(&self, canner: CannerKind) -> Option<Minutes> {
        let id = if canner.is_pressure() { "pc-wait-open" } else { "bw-rest" };
        self.permitting_rule(id)?.value?.as_minutes().map(|(_, longest)| longest)
    }

    /// The refusal against a canner that heats no further than the boiling point of water.
    fn bar_against(&self, canner: CannerKind) -> Option<(RefusalId, Citation)> {
        let id = match canner {
            CannerKind::BoilingWater => "low-acid-in-boiling-water",
            CannerKind::Steam => "steam-canner-low-acid",
            CannerKind::Dial | CannerKind::Weighted => return None,
        };
        self.refusal(id).map(|refusal| (refusal.id.clone(), refusal.citation.clone()))
    }
}

fn rows_in_band<'a>(rows: &[&'a Process], altitude: Altitude) -> Result<Vec<&'a Process>, NoProcess> {
    let held: Vec<&Process> = rows.iter().copied().filter(|row| row.band.holds(altitude)).collect();
    if held.is_empty() {
        let last = rows.iter().max_by_key(|row| row.band.max).expect("a printed jar has at least one row");
        // Bands start at 0 and join, so a height outside all of them lies above a last band that ends.
        let top = last.band.max.unwrap_or(altitude);
        return Err(NoProcess::AboveLastBand { last: top, citation: last.citation.clone() });
    }
    Ok(held)
}

fn tested_of<'a>(rows: &[&'a Process]) -> Result<Vec<&'a Process>, NoProcess> {
    let tested: Vec<&Process> =
        rows.iter().copied().filter(|row| row.citation.may_be_called_tested()).collect();
    if !tested.is_empty() {
        return Ok(tested);
    }
    let read = rows.iter().find(|row| row.citation.basis == Basis::Read);
    Err(match (read, rows.first()) {
        (Some(row), _) => NoProcess::OnFileLowerRank { citation: row.citation.clone() },
        (None, Some(row)) => NoProcess::OnFileUnverified { citation: row.citation.clone() },
        (None, None) => unreachable!("a band with no row was refused before"),
    })
}

/// Where sources disagree about one line, the strictest holds: the longest time, then the highest pressure.
fn strictest_of_each_option(rows: &[&Process]) -> Vec<Process> {
    let strength = |row: &Process| (row.minutes, row.pressure.map_or(0.0, |pressure| pressure.as_psi()));
    let mut options: BTreeMap<&str, &Process> = BTreeMap::new();
    let mut order: Vec<&str> = Vec::new();
    for row in rows {
        let held = options.entry(&row.option).or_insert_with(|| {
            order.push(&row.option);
            row
        });
        if strength(row) > strength(held) {
            *held = row;
        }
    }
    order.into_iter().map(|option| options[option].clone()).collect()
}

/// The different values, in their own order.
fn in_order<T: Ord>(values: impl Iterator<Item = T>) -> Vec<T> {
    values.collect::<std::collections::BTreeSet<T>>().into_iter().collect()
}

#[cfg(test)]
mod tests;
