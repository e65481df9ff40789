//! Published scheduling instances as days: one project that must be done, in one option.
//!
//! Formats: `.sm` of PSPLIB (R. Kolisch, A. Sprecher, European Journal of Operational Research 96 (1997) 205-216) with
//! precedence alone, and `.sch` of the generator ProGen/max (C. Schwindt, 1998) with least and greatest lags from
//! start to start. Best known bounds stand beside each set in `SET_best_known.csv`.

use std::collections::BTreeMap;
use std::path::Path;

use anyhow::{Context, Result, bail, ensure};
use dayplan::{Choice, Lag, Problem, Project, Resource, Step};

/// An instance with what is known of its shortest schedule.
#[derive(Debug)]
pub(super) struct Instance {
    pub(super) name: String,
    pub(super) problem: Problem,
    pub(super) known: Known,
}

/// What is known of the least finish.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Known {
    NoSchedule,
    Between(u32, u32),
    Nothing,
}

/// All instances of a folder, in the order of their numbers.
pub(super) fn read_set(folder: &Path, table: &Path) -> Result<Vec<Instance>> {
    let known = read_table(table)?;
    let listing =
        std::fs::read_dir(folder).with_context(|| format!("{} cannot be listed", folder.display()))?;
    let mut instances = Vec::new();
    for entry in listing {
        let path = entry?.path();
        let name = path.file_name().unwrap_or_default().to_string_lossy().to_lowercase();
        let text =
            std::fs::read_to_string(&path).with_context(|| format!("{} cannot be read", path.display()))?;
        let network = match name.rsplit('.').next() {
            Some("sm") => read_sm(&text),
            Some("sch") => read_sch(&text),
            _ => continue,
        }
        .with_context(|| format!("{} is not in its format", path.display()))?;
        let known = known.get(&name).copied().unwrap_or(Known::Nothing);
        instances.push(Instance { problem: network.as_problem(&name), name, known });
    }
    instances.sort_by_key(|instance| numbers_of(&instance.name));
    ensure!(!instances.is_empty(), "{} holds no instances", folder.display());
    Ok(instances)
}

/// Activities with their lags from start to start.
struct Network {
    minutes: Vec<u32>,
    demands: Vec<Vec<u32>>,
    capacities: Vec<u32>,
    /// `start(to) >= start(from) + w`.
    arcs: Vec<(usize, usize, i32)>,
}

impl Network {
    fn as_problem(&self, name: &str) -> Problem {
        let steps = self.minutes.iter().zip(&self.demands).enumerate().map(|(k, (&minutes, demands))| Step {
            id: format!("a{k}"),
            minutes,
            needs: (1..).map(|r| format!("r{r}")).zip(demands.iter().copied()).filter(|n| n.1 > 0).collect(),
            ..Step::default()
        });
        let lags = self.arcs.iter().map(|&(from, to, w)| Lag {
            from: format!("a{from}"),
            to: format!("a{to}"),
            min: w - self.minutes[from].cast_signed(),
            max: None,
        });
        let option =
            Choice { id: "only".into(), steps: steps.collect(), lags: lags.collect(), ..Choice::default() };
        let capacities = self.capacities.iter().enumerate();
        Problem {
            horizon: self.horizon(),
            resources: capacities
                .map(|(r, &capacity)| Resource { id: format!("r{}", r + 1), capacity, closed: vec![] })
                .collect(),
            projects: vec![Project { id: name.into(), must: true, options: vec![option] }],
            ..Problem::default()
        }
    }

    /// Each activity at once after the one before, with its longest lag: no shortest schedule is longer.
    fn horizon(&self) -> u32 {
        let longest = |k: usize| {
            let lags = self.arcs.iter().filter(|arc| arc.0 == k).map(|arc| arc.2.max(0).unsigned_abs());
            lags.fold(self.minutes[k], u32::max)
        };
        (0..self.minutes.len()).map(longest).sum()
    }
}

fn read_sm(text: &str) -> Result<Network> {
    let block = |title: &str, skip: usize| -> Vec<Vec<i64>> {
        let lines = text.lines().skip_while(|line| !line.starts_with(title)).skip(1 + skip);
        lines.map(whole_numbers).take_while(|row| !row.is_empty()).collect()
    };
    let (links, loads) = (block("PRECEDENCE RELATIONS", 1), block("REQUESTS/DURATIONS", 2));
    let capacities = block("RESOURCEAVAILABILITIES", 1);
    ensure!(links.len() == loads.len() && capacities.len() == 1, "its blocks do not agree");
    let mut network = Network {
        minutes: Vec::new(),
        demands: Vec::new(),
        capacities: capacities[0].iter().map(|&n| small(n)).collect::<Result<_>>()?,
        arcs: Vec::new(),
    };
    for row in &loads {
        ensure!(row.len() == 3 + network.capacities.len(), "a line of demands has {} numbers", row.len());
        network.minutes.push(small(row[2])?);
        network.demands.push(row[3..].iter().map(|&n| small(n)).collect::<Result<_>>()?);
    }
    for (k, row) in links.iter().enumerate() {
        ensure!(row.len() >= 3, "a line of successors has {} numbers", row.len());
        for &next in &row[3..] {
            let next = small(next)? as usize - 1;
            ensure!(next < network.minutes.len(), "an activity {next} is not there");
            network.arcs.push((k, next, network.minutes[k].cast_signed()));
        }
    }
    Ok(network)
}

fn read_sch(text: &str) -> Result<Network> {
    let mut lines = text.lines().map(whole_numbers).filter(|row| !row.is_empty());
    let mut row = || lines.next().context("it ends too early");
    let head = row()?;
    ensure!(head.len() >= 2, "its first line is too short");
    let (activities, rooms) = (small(head[0])? as usize + 2, small(head[1])? as usize);
    let mut network =
        Network { minutes: Vec::new(), demands: Vec::new(), capacities: Vec::new(), arcs: Vec::new() };
    for k in 0..activities {
        let row = row()?;
        let n = small(*row.get(2).context("a line of successors is too short")?)? as usize;
        ensure!(row.len() == 3 + 2 * n, "the lags of activity {k} are not one for each successor");
        for j in 0..n {
            let (to, lag) = (small(row[3 + j])? as usize, i32::try_from(row[3 + n + j])?);
            ensure!(to < activities, "an activity {to} is not there");
            network.arcs.push((k, to, lag));
        }
    }
    for _ in 0..activities {
        let row = row()?;
        ensure!(row.len() == 3 + rooms, "a line of demands has {} numbers", row.len());
        network.minutes.push(small(row[2])?);
        network.demands.push(row[3..].iter().map(|&n| small(n)).collect::<Result<_>>()?);
    }
    network.capacities = row()?.iter().take(rooms).map(|&n| small(n)).collect::<Result<_>>()?;
    Ok(network)
}

/// The whole numbers of a line; empty for a line that begins with anything else.
fn whole_numbers(line: &str) -> Vec<i64> {
    let plain = line.replace(['[', ']'], " ");
    let words: Vec<&str> = plain.split_whitespace().collect();
    words.iter().map_while(|word| word.parse().ok()).collect()
}

fn small(n: i64) -> Result<u32> {
    u32::try_from(n).with_context(|| format!("{n} is negative or too large"))
}

fn read_table(path: &Path) -> Result<BTreeMap<String, Known>> {
    let mut table =
        csv::Reader::from_path(path).with_context(|| format!("{} cannot be read", path.display()))?;
    let headers = table.headers()?.clone();
    let place =
        |name: &str| headers.iter().position(|h| h == name).with_context(|| format!("no column {name}"));
    let (name, low, high, status) =
        (place("instance")?, place("lower_bound")?, place("upper_bound")?, place("status")?);
    let mut known = BTreeMap::new();
    for row in table.records() {
        let row = row?;
        let what = match (&row[status], row[low].parse(), row[high].parse()) {
            ("infeasible", ..) => Known::NoSchedule,
            (_, Ok(low), Ok(high)) if low <= high => Known::Between(low, high),
            (_, Ok(low), Ok(high)) => bail!("{}: {low} is above {high}", &row[name]),
            _ => Known::Nothing,
        };
        known.insert(row[name].to_lowercase(), what);
    }
    Ok(known)
}

/// The runs of digits in a name, so that `psp10` comes after `psp9`.
fn numbers_of(name: &str) -> Vec<u64> {
    name.split(|c: char| !c.is_ascii_digit()).filter_map(|digits| digits.parse().ok()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn precedence_is_read_from_start_to_start() {
        let text = "head\nPRECEDENCE RELATIONS:\njobnr. #modes\n 1 1 1 2\n 2 1 1 3\n 3 1 0\n****\n\
            REQUESTS/DURATIONS:\njobnr.\n------\n 1 1 0 0\n 2 1 5 2\n 3 1 0 0\n****\nRESOURCEAVAILABILITIES:\n R 1\n 4\n****\n";
        let network = read_sm(text).unwrap();
        assert_eq!(network.arcs, vec![(0, 1, 0), (1, 2, 5)]);
        let problem = network.as_problem("x");
        assert_eq!((problem.horizon, problem.resources[0].capacity), (5, 4));
        assert_eq!(problem.faults(), vec![]);
    }

    #[test]
    fn greatest_lags_are_negative_arcs_backwards() {
        let text = "1\t1\t0\t0\n0\t1\t1\t1\t[0]\n1\t1\t2\t2\t0\t[3]\t[-4]\n2\t1\t0\n\
            0\t1\t0\t0\n1\t1\t3\t1\n2\t1\t0\t0\n2\n";
        let network = read_sch(text).unwrap();
        assert_eq!(network.arcs, vec![(0, 1, 0), (1, 2, 3), (1, 0, -4)]);
        let lags = &network.as_problem("x").projects[0].options[0].lags;
        assert_eq!((lags[2].min, lags[2].max), (-7, None));
    }

    #[test]
    fn names_are_ordered_by_their_numbers() {
        assert!(numbers_of("j301_10.sm") > numbers_of("j301_9.sm"));
        assert!(numbers_of("psp10.sch") > numbers_of("psp9.sch"));
    }
}
