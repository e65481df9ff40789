//! The problem as the solver sees it: numbers for names, and only options that could run on an empty day.
//!
//! Every option gets its longest paths and, from those and the closed times, a window for each step. An option
//! with an empty window, a need above a capacity or more stock than there is can never be chosen and is dropped
//! here, before anything is searched; so is an option worth nothing that nobody asks for.

use crate::problem::{Choice, Problem};

/// A compiled problem.
#[derive(Debug, Clone)]
pub(super) struct Day {
    pub(super) horizon: i32,
    pub(super) rooms: Vec<Room>,
    /// What there is of each stock.
    pub(super) stock: Vec<i32>,
    pub(super) projects: Vec<Project>,
    pub(super) ways: Vec<Way>,
}

/// A resource: its units, the merged intervals in which none may be used, and what is used whatever is chosen.
#[derive(Debug, Clone)]
pub(super) struct Room {
    pub(super) capacity: i32,
    pub(super) shut: Vec<(i32, i32)>,
    pub(super) booked: Vec<Booked>,
}

/// Units of a room in use from `from` to `to`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Booked {
    pub(super) from: i32,
    pub(super) to: i32,
    pub(super) amount: i32,
}

/// A project and the ways left for it.
#[derive(Debug, Clone)]
pub(super) struct Project {
    pub(super) must: bool,
    /// Places in [`Day::ways`].
    pub(super) ways: Vec<usize>,
}

/// An option that could run.
#[derive(Debug, Clone)]
pub(super) struct Way {
    /// Place of its project in the problem.
    pub(super) project: usize,
    /// Place of the option in its project.
    pub(super) option: usize,
    pub(super) value: i32,
    /// What it uses of each stock.
    pub(super) uses: Vec<i32>,
    pub(super) minutes: Vec<i32>,
    /// First start of each step.
    pub(super) lo: Vec<i32>,
    /// Last start of each step.
    pub(super) hi: Vec<i32>,
    /// `start[b] >= start[a] + gap[a][b]`, all that follows from the lags; [`NO_PATH`] where nothing does.
    pub(super) gap: Vec<Vec<i32>>,
    /// The lags themselves: `start[b] >= start[a] + w`.
    pub(super) arcs: Vec<Arc>,
    pub(super) takes: Vec<Take>,
}

/// `start[b] >= start[a] + w`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Arc {
    pub(super) a: usize,
    pub(super) b: usize,
    pub(super) w: i32,
}

/// Units of a room from the start of one step to the end of another (the same one for a need).
#[derive(Debug, Clone, Copy)]
pub(super) struct Take {
    pub(super) room: usize,
    pub(super) amount: i32,
    pub(super) from: usize,
    pub(super) to: usize,
    /// The least time it is taken for.
    pub(super) least: i32,
}

/// Stands in [`Way::gap`] where no path leads; far below any sum of real gaps.
pub(super) const NO_PATH: i32 = i32::MIN / 4;

impl Day {
    /// Compiles a problem without faults.
    pub(super) fn of(problem: &Problem) -> Day {
        let horizon = signed(problem.horizon);
        let rooms = problem.resources.iter().map(|r| Room {
            capacity: signed(r.capacity),
            shut: merge(&r.closed, horizon),
            booked: Vec::new(),
        });
        let mut day = Day {
            horizon,
            rooms: rooms.collect(),
            stock: problem.stock.values().map(|&n| signed(n)).collect(),
            projects: Vec::new(),
            ways: Vec::new(),
        };
        for (p, project) in problem.projects.iter().enumerate() {
            let mut ways = Vec::new();
            for (o, option) in project.options.iter().enumerate() {
                if option.value == 0 && !project.must {
                    continue;
                }
                if let Some(way) = day.way(problem, (p, o), option) {
                    ways.push(day.ways.len());
                    day.ways.push(way);
                }
            }
            let must = project.must;
            day.projects.push(Project { must, ways });
        }
        day.book_ahead();
        day
    }

    /// What must be done, in one way and at one time only, is no choice: it goes into the rooms' books.
    fn book_ahead(&mut self) {
        for project in self.projects.iter().filter(|p| p.must) {
            let &[w] = project.ways.as_slice() else { continue };
            let way = &mut self.ways[w];
            let (lo, hi, minutes) = (&way.lo, &way.hi, &way.minutes);
            way.takes.retain(|take| {
                let fixed = lo[take.from] == hi[take.from] && lo[take.to] == hi[take.to];
                let (from, to) = (lo[take.from], lo[take.to] + minutes[take.to]);
                if fixed && from < to {
                    self.rooms[take.room].booked.push(Booked { from, to, amount: take.amount });
                }
                !fixed
            });
        }
    }

    /// Whether what is booked ahead already asks more of a room than there is: such a day has no plan.
    pub(super) fn is_overbooked(&self) -> bool {
        self.rooms.iter().any(|room| room.levels().iter().any(|level| level.1 < 0))
    }

    /// The value of the best way of every project together: no plan is worth more.
    pub(super) fn top_value(&self) -> i32 {
        let best = |p: &Project| p.ways.iter().map(|&w| self.ways[w].value).max();
        self.projects.iter().filter_map(best).sum()
    }

    /// No plan with these ways ends earlier: each room must have been open long enough for what they take of it.
    pub(super) fn earliest_finish(&self, ways: &[usize]) -> i32 {
        let of_room = |(r, room): (usize, &Room)| {
            let load: i64 = ways.iter().map(|&w| self.ways[w].load(r)).sum();
            let (mut low, mut high) = (0, self.horizon);
            while low < high {
                let middle = low + (high - low) / 2;
                if room.open_until(middle) >= load {
                    high = middle;
                } else {
                    low = middle + 1;
                }
            }
            low
        };
        self.rooms.iter().enumerate().map(of_room).max().unwrap_or(0)
    }

    /// The same day with no other ways than these; a way's place among them is its place in the new day.
    pub(super) fn restrict(&self, ways: &[usize]) -> Day {
        let kept: Vec<Way> = ways.iter().map(|&w| self.ways[w].clone()).collect();
        let projects = (0..self.projects.len()).map(|p| Project {
            must: false,
            ways: (0..kept.len()).filter(|&k| kept[k].project == p).collect(),
        });
        Day {
            horizon: self.horizon,
            rooms: self.rooms.clone(),
            stock: self.stock.clone(),
            projects: projects.collect(),
            ways: kept,
        }
    }

    fn way(&self, problem: &Problem, place: (usize, usize), option: &Choice) -> Option<Way> {
        let step = |id: &str| option.steps.iter().position(|s| s.id == id);
        let room = |id: &str| problem.resources.iter().position(|r| r.id == id);
        let step = |id: &str| step(id).expect("lags and holds of a problem without faults name steps");
        let room = |id: &str| room(id).expect("needs and holds of a problem without faults name resources");
        let minutes: Vec<i32> = option.steps.iter().map(|s| signed(s.minutes)).collect();
        let mut arcs = Vec::new();
        for lag in &option.lags {
            let (a, b) = (step(&lag.from), step(&lag.to));
            arcs.push(Arc { a, b, w: minutes[a] + lag.min });
            arcs.extend(lag.max.map(|max| Arc { a: b, b: a, w: -minutes[a] - max }));
        }
        let mut takes = Vec::new();
        for (k, s) in option.steps.iter().enumerate() {
            for (id, &amount) in s.needs.iter().filter(|&(_, &n)| n > 0 && s.minutes > 0) {
                let (room, amount, least) = (room(id), signed(amount), minutes[k]);
                if amount > self.rooms[room].capacity {
                    return None;
                }
                takes.push(Take { room, amount, from: k, to: k, least });
            }
        }
        for hold in option.holds.iter().filter(|h| h.amount > 0) {
            let (room, amount) = (room(&hold.resource), signed(hold.amount));
            let (from, to) = (step(&hold.from), step(&hold.to));
            if from == to && minutes[from] == 0 {
                // It ends where it starts: it takes nothing, and no closed time is in its way.
                continue;
            }
            if amount > self.rooms[room].capacity {
                // Only a hold that takes nothing fits: it must end no later than it starts.
                arcs.push(Arc { a: to, b: from, w: minutes[to] });
            } else {
                takes.push(Take { room, amount, from, to, least: 0 });
            }
        }
        let uses: Vec<i32> =
            problem.stock.keys().map(|id| signed(option.consumes.get(id).copied().unwrap_or(0))).collect();
        if uses.iter().zip(&self.stock).any(|(use_, there)| use_ > there) {
            return None;
        }
        let gap = longest_paths(minutes.len(), &arcs, self.horizon)?;
        for take in takes.iter_mut() {
            take.least = (gap[take.from][take.to].saturating_add(minutes[take.to])).max(0);
        }
        arcs.retain(|arc| arc.w >= -self.horizon && arc.a != arc.b);
        let lo = option.steps.iter().map(|s| signed(s.earliest)).collect();
        let last = |s: &crate::problem::Step| {
            signed(s.latest_end.unwrap_or(problem.horizon)).min(self.horizon) - signed(s.minutes)
        };
        let hi = option.steps.iter().map(last).collect();
        let mut way = Way {
            project: place.0,
            option: place.1,
            value: signed(option.value),
            uses,
            minutes,
            lo,
            hi,
            gap,
            arcs,
            takes,
        };
        self.narrow(&mut way).then_some(way)
    }

    /// Shrinks the windows until lags and closed times agree with them; false when one is empty.
    fn narrow(&self, way: &mut Way) -> bool {
        let shut: Vec<Vec<(i32, i32)>> = (0..way.minutes.len()).map(|k| self.shut_for(way, k)).collect();
        loop {
            let before = (way.lo.clone(), way.hi.clone());
            for (k, shut) in shut.iter().enumerate() {
                way.lo[k] = skip_forward(way.lo[k], way.minutes[k], shut);
                way.hi[k] = skip_back(way.hi[k], way.minutes[k], shut);
            }
            for a in 0..way.minutes.len() {
                for b in 0..way.minutes.len() {
                    if way.gap[a][b] > NO_PATH {
                        way.lo[b] = way.lo[b].max(way.lo[a] + way.gap[a][b]);
                        way.hi[a] = way.hi[a].min(way.hi[b] - way.gap[a][b]);
                    }
                }
            }
            if way.lo.iter().zip(&way.hi).any(|(lo, hi)| lo > hi) {
                return false;
            }
            if before == (way.lo.clone(), way.hi.clone()) {
                return true;
            }
        }
    }

    /// The closed times of everything that step `k` needs.
    fn shut_for(&self, way: &Way, k: usize) -> Vec<(i32, i32)> {
        let takes = way.takes.iter().filter(|t| t.from == k && t.to == k);
        let all: Vec<(i32, i32)> = takes.flat_map(|t| self.rooms[t.room].shut.iter().copied()).collect();
        merge_signed(all)
    }
}

impl Way {
    /// Unit-minutes it takes of a room at the least.
    pub(super) fn load(&self, room: usize) -> i64 {
        let takes = self.takes.iter().filter(|t| t.room == room);
        takes.map(|t| i64::from(t.amount) * i64::from(t.least)).sum()
    }
}

impl Room {
    /// Unit-minutes there are before `end`.
    pub(super) fn open_until(&self, end: i32) -> i64 {
        let shut: i32 = self.shut.iter().map(|&(a, b)| b.min(end) - a.min(end)).sum();
        let booked =
            self.booked.iter().map(|b| i64::from(b.amount) * i64::from(b.to.min(end) - b.from.min(end)));
        i64::from(self.capacity) * i64::from(end - shut) - booked.sum::<i64>()
    }

    /// The minutes at which what can be had may change, and how much can be had from there on; below 0 where more
    /// is booked than there is.
    pub(super) fn levels(&self) -> Vec<(i32, i32)> {
        let shut = self.shut.iter().map(|&(a, b)| (a, b, self.capacity));
        let booked = self.booked.iter().map(|b| (b.from, b.to, b.amount));
        let mut changes = vec![(0, self.capacity)];
        for (from, to, amount) in shut.chain(booked) {
            changes.extend([(from, -amount), (to, amount)]);
        }
        changes.sort_unstable();
        let mut levels: Vec<(i32, i32)> = Vec::new();
        let mut level = 0i32;
        for (minute, by) in changes {
            // Once this far below zero the room is overbooked, and no later level matters.
            level = level.saturating_add(by);
            match levels.last_mut() {
                Some(last) if last.0 == minute => last.1 = level,
                _ => levels.push((minute, level)),
            }
        }
        levels
    }

    /// The most that can be had at any one time.
    pub(super) fn most(&self) -> i32 {
        self.levels().iter().map(|l| l.1).max().unwrap_or(0)
    }
}

/// Never wraps: the format keeps every number at or below a million.
fn signed(n: u32) -> i32 {
    n as i32
}

/// All that follows from the lags; `None` when they contradict each other or need more than the horizon.
fn longest_paths(n: usize, arcs: &[Arc], horizon: i32) -> Option<Vec<Vec<i32>>> {
    let mut gap = vec![vec![NO_PATH; n]; n];
    for (k, row) in gap.iter_mut().enumerate() {
        row[k] = 0;
    }
    for arc in arcs.iter().filter(|arc| arc.w >= -horizon) {
        gap[arc.a][arc.b] = gap[arc.a][arc.b].max(arc.w);
    }
    for k in 0..n {
        for i in 0..n {
            if gap[i][k] == NO_PATH {
                continue;
            }
            for j in 0..n {
                if gap[k][j] > NO_PATH {
                    let through = gap[i][k] + gap[k][j];
                    if through > horizon {
                        return None;
                    }
                    // Below minus the horizon a path says nothing that the day's ends do not.
                    if through >= -horizon {
                        gap[i][j] = gap[i][j].max(through);
                    }
                }
            }
        }
    }
    let agrees = (0..n).all(|k| gap[k][k] == 0) && gap.iter().flatten().all(|&g| g <= horizon);
    agrees.then_some(gap)
}

fn merge(closed: &[(u32, u32)], horizon: i32) -> Vec<(i32, i32)> {
    let cut = closed.iter().map(|&(a, b)| (signed(a).min(horizon), signed(b).min(horizon)));
    merge_signed(cut.collect())
}

fn merge_signed(mut intervals: Vec<(i32, i32)>) -> Vec<(i32, i32)> {
    intervals.sort_unstable();
    let mut merged: Vec<(i32, i32)> = Vec::new();
    for (a, b) in intervals.into_iter().filter(|(a, b)| a < b) {
        match merged.last_mut() {
            Some(last) if a <= last.1 => last.1 = last.1.max(b),
            _ => merged.push((a, b)),
        }
    }
    merged
}

/// The first start at or after `t` at which a run of `minutes` touches nothing shut.
fn skip_forward(mut t: i32, minutes: i32, shut: &[(i32, i32)]) -> i32 {
    for &(a, b) in shut {
        if a < t + minutes && t < b {
            t = b;
        }
    }
    t
}

/// The last start at or before `t` at which a run of `minutes` touches nothing shut.
fn skip_back(mut t: i32, minutes: i32, shut: &[(i32, i32)]) -> i32 {
    for &(a, b) in shut.iter().rev() {
        if a < t + minutes && t < b {
            t = a - minutes;
        }
    }
    t
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::problem::Problem;

    /// One project of one option with these steps, lags and holds, beside hands that are closed from 20 to 30.
    fn day(steps: &str, lags: &str, holds: &str) -> Day {
        let text = format!(
            r#"{{"format":"day-problem/1","horizon":60,"stock":{{"jar":2}},
                "resources":[{{"id":"hands","capacity":1,"closed":[[20,25],[22,30]]}},{{"id":"pot","capacity":1}}],
                "projects":[{{"id":"p","options":[{{"id":"o","value":1,"steps":{steps},"lags":{lags},"holds":{holds}}}]}}]}}"#
        );
        Day::of(&Problem::from_json(&text).unwrap())
    }

    #[test]
    fn windows_step_over_closed_times() {
        let day =
            day(r#"[{"id":"a","minutes":15,"needs":{"hands":1},"earliest":10,"latest_end":46}]"#, "[]", "[]");
        assert_eq!((day.ways[0].lo[0], day.ways[0].hi[0]), (30, 31));
        assert_eq!(day.rooms[0].shut, vec![(20, 30)]);
        assert_eq!(day.rooms[0].open_until(60), 50);
        assert_eq!(day.rooms[0].open_until(25), 20);
    }

    #[test]
    fn the_finish_waits_for_open_hands() {
        let day = day(
            r#"[{"id":"a","minutes":15,"needs":{"hands":1}},{"id":"b","minutes":8,"needs":{"hands":1}}]"#,
            "[]",
            "[]",
        );
        assert_eq!(day.earliest_finish(&[]), 0);
        assert_eq!(day.earliest_finish(&[0]), 33, "23 minutes of work, and ten closed before minute 30");
    }

    #[test]
    fn windows_follow_lags_both_ways() {
        let steps = r#"[{"id":"a","minutes":10},{"id":"b","minutes":5,"latest_end":40}]"#;
        let day = day(steps, r#"[{"from":"a","to":"b","min":3,"max":7}]"#, "[]");
        let way = &day.ways[0];
        assert_eq!((way.lo[0], way.hi[0]), (0, 22));
        assert_eq!((way.lo[1], way.hi[1]), (13, 35));
        assert_eq!((way.gap[0][1], way.gap[1][0]), (13, -17));
    }

    #[test]
    fn options_that_can_never_run_are_dropped() {
        let one = r#"[{"id":"a","minutes":10}]"#;
        let two = r#"[{"id":"a","minutes":10},{"id":"b","minutes":5}]"#;
        for (steps, lags, holds) in [
            (r#"[{"id":"a","minutes":61}]"#, "[]", "[]"),
            (r#"[{"id":"a","minutes":1,"needs":{"hands":2}}]"#, "[]", "[]"),
            (r#"[{"id":"a","minutes":31,"needs":{"hands":1}}]"#, "[]", "[]"),
            (r#"[{"id":"a","minutes":1,"earliest":40,"latest_end":40}]"#, "[]", "[]"),
            (two, r#"[{"from":"a","to":"b","min":5,"max":4}]"#, "[]"),
            (two, r#"[{"from":"a","to":"b"},{"from":"b","to":"a"}]"#, "[]"),
            (two, r#"[{"from":"a","to":"b","min":50}]"#, "[]"),
            (one, "[]", r#"[{"resource":"pot","amount":2,"from":"a","to":"a"}]"#),
        ] {
            assert_eq!(day(steps, lags, holds).ways.len(), 0, "{steps} {lags} {holds}");
        }
    }

    #[test]
    fn a_hold_above_the_capacity_may_still_take_nothing() {
        let steps = r#"[{"id":"a","minutes":10},{"id":"b","minutes":5}]"#;
        let day = day(steps, "[]", r#"[{"resource":"pot","amount":2,"from":"b","to":"a"}]"#);
        assert_eq!(day.ways[0].gap[0][1], 10, "it ends before it starts only if b starts after a");
    }

    #[test]
    fn a_hold_over_a_step_of_no_minutes_takes_nothing_even_in_a_closed_time() {
        let steps = r#"[{"id":"a","minutes":0,"earliest":25,"latest_end":25}]"#;
        let day = day(steps, "[]", r#"[{"resource":"hands","amount":1,"from":"a","to":"a"}]"#);
        assert_eq!((day.ways[0].lo[0], day.ways[0].hi[0], day.ways[0].takes.len()), (25, 25, 0));
    }

    #[test]
    fn what_can_run_at_one_time_only_is_booked_ahead() {
        let text = r#"{"format":"day-problem/1","horizon":60,
            "resources":[{"id":"hands","capacity":2,"closed":[[20,30]]}],
            "projects":[{"id":"away","must":true,"options":[{"id":"o","value":0,"steps":[
              {"id":"a","minutes":10,"needs":{"hands":1},"latest_end":10},
              {"id":"b","minutes":10,"needs":{"hands":1}}]}]}]}"#;
        let day = Day::of(&Problem::from_json(text).unwrap());
        let room = &day.rooms[0];
        assert_eq!(room.booked, vec![Booked { from: 0, to: 10, amount: 1 }]);
        assert_eq!(day.ways[0].takes.len(), 1, "the step that can move is still placed");
        assert_eq!(room.levels(), vec![(0, 1), (10, 2), (20, 0), (30, 2)]);
        assert_eq!((room.open_until(5), room.open_until(40)), (5, 50));
        assert!(!day.is_overbooked());
        let free = Day::of(&Problem::from_json(&text.replace("true", "false")).unwrap());
        assert_eq!(free.rooms[0].booked, vec![], "what may be left out is not booked");
    }

    #[test]
    fn a_room_that_is_booked_beyond_what_it_has_is_noticed() {
        let must = |holds: &str| {
            let text = format!(
                r#"{{"format":"day-problem/1","horizon":60,
                    "resources":[{{"id":"hands","capacity":2,"closed":[[20,30]]}}],
                    "projects":[{{"id":"away","must":true,"options":[{{"id":"o","value":0,"steps":[
                      {{"id":"a","minutes":10,"needs":{{"hands":1}},"latest_end":10}},
                      {{"id":"b","minutes":5,"earliest":40,"latest_end":45}}],"holds":[{holds}]}}]}}]}}"#
            );
            Day::of(&Problem::from_json(&text).unwrap())
        };
        let hold = |amount: u32, to: &str| {
            format!(r#"{{"resource":"hands","amount":{amount},"from":"a","to":"{to}"}}"#)
        };
        assert!(!must(&hold(1, "a")).is_overbooked());
        assert!(must(&hold(2, "a")).is_overbooked(), "the hold comes on top of the step's own need");
        assert!(must(&hold(1, "b")).is_overbooked(), "it lasts over a closed time");
    }

    #[test]
    fn a_restricted_day_keeps_only_the_ways_asked_for() {
        let text = r#"{"format":"day-problem/1","horizon":60,"resources":[],
            "projects":[{"id":"p","must":true,"options":[{"id":"o","value":1,"steps":[]}]},
              {"id":"q","options":[{"id":"o","value":2,"steps":[]},{"id":"r","value":3,"steps":[]}]}]}"#;
        let day = Day::of(&Problem::from_json(text).unwrap()).restrict(&[2]);
        assert_eq!((day.ways.len(), day.ways[0].value, day.ways[0].project), (1, 3, 1));
        assert_eq!((day.projects[0].ways.len(), day.projects[1].ways.len()), (0, 1));
    }
}
