//! What is still free of each room, minute by minute, and where an option fits into it.

use super::day::{Day, NO_PATH, Take, Way};

/// Units free of each room at each minute.
#[derive(Debug, Clone)]
pub(super) struct Calendar {
    free: Vec<Vec<i32>>,
}

/// Starts tried for one option before it is given up: each try moves a step later, so most fit in a few.
const TRIES_MAX: u32 = 400;

impl Calendar {
    pub(super) fn new(day: &Day) -> Calendar {
        let minutes = usize::try_from(day.horizon).expect("the horizon is not negative");
        let free = day.rooms.iter().map(|room| {
            let mut free = vec![room.capacity; minutes];
            for &(a, b) in &room.shut {
                free[a as usize..b as usize].fill(0);
            }
            for b in &room.booked {
                free[b.from as usize..b.to as usize].iter_mut().for_each(|f| *f -= b.amount);
            }
            free
        });
        Calendar { free: free.collect() }
    }

    /// Early starts of a way beside what is already taken: from its earliest starts, whatever does not fit is moved
    /// past the trouble, and everything tied to it with it. May miss a fit that exists. Counts its work.
    pub(super) fn fit(&mut self, way: &Way, work: &mut u64) -> Option<Vec<i32>> {
        let mut starts = way.lo.clone();
        for _ in 0..TRIES_MAX {
            *work += way.takes.len() as u64 / 8 + 1;
            let Some((step, start)) = self.first_trouble(way, &starts) else {
                return Some(starts);
            };
            if !push(way, &mut starts, step, start) {
                return None;
            }
        }
        None
    }

    /// Takes what a way uses at these starts.
    pub(super) fn book(&mut self, way: &Way, starts: &[i32]) {
        for take in &way.takes {
            self.change(take, way, starts, -take.amount);
        }
    }

    /// Gives back what [`Calendar::book`] took.
    pub(super) fn release(&mut self, way: &Way, starts: &[i32]) {
        for take in &way.takes {
            self.change(take, way, starts, take.amount);
        }
    }

    /// The first take, in order of time, that does not fit: the step to move and where to.
    fn first_trouble(&mut self, way: &Way, starts: &[i32]) -> Option<(usize, i32)> {
        let mut order: Vec<&Take> = way.takes.iter().collect();
        order.sort_by_key(|t| starts[t.from]);
        let mut booked = 0;
        let mut trouble = None;
        for take in &order {
            if let Some(minute) = self.last_over(take, way, starts) {
                trouble = Some((take.from, minute + 1));
                break;
            }
            self.change(take, way, starts, -take.amount);
            booked += 1;
        }
        for take in &order[..booked] {
            self.change(take, way, starts, take.amount);
        }
        trouble
    }

    /// The last minute of a take at which too little is free.
    fn last_over(&self, take: &Take, way: &Way, starts: &[i32]) -> Option<i32> {
        let (a, b) = run(take, way, starts);
        let free = &self.free[take.room];
        (a..b).rev().find(|&t| free[t as usize] < take.amount)
    }

    fn change(&mut self, take: &Take, way: &Way, starts: &[i32], by: i32) {
        let (a, b) = run(take, way, starts);
        if a < b {
            for free in &mut self.free[take.room][a as usize..b as usize] {
                *free += by;
            }
        }
    }
}

/// Moves a step to `start` or later, with all that its lags drag along; false when a window is left.
fn push(way: &Way, starts: &mut [i32], step: usize, start: i32) -> bool {
    let mut fits = true;
    for (b, s) in starts.iter_mut().enumerate() {
        if way.gap[step][b] > NO_PATH {
            *s = (*s).max(start + way.gap[step][b]);
            fits &= *s <= way.hi[b];
        }
    }
    fits
}

/// The minutes `[a, b)` of a take. Never outside the day: starts keep their windows.
fn run(take: &Take, way: &Way, starts: &[i32]) -> (i32, i32) {
    (starts[take.from], starts[take.to] + way.minutes[take.to])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::problem::Problem;

    fn day() -> Day {
        let text = r#"{"format":"day-problem/1","horizon":60,
            "resources":[{"id":"hands","capacity":1},{"id":"pot","capacity":1,"closed":[[40,50]]}],
            "projects":[
              {"id":"p","options":[{"id":"o","value":1,"steps":[{"id":"a","minutes":10,"needs":{"hands":1}}]}]},
              {"id":"q","options":[{"id":"o","value":1,
                "steps":[{"id":"a","minutes":5,"needs":{"hands":1}},{"id":"b","minutes":5,"needs":{"hands":1}}],
                "lags":[{"from":"a","to":"b","min":20,"max":20}],
                "holds":[{"resource":"pot","amount":1,"from":"a","to":"b"}]}]}]}"#;
        Day::of(&Problem::from_json(text).unwrap())
    }

    #[test]
    fn steps_tied_together_move_together() {
        let day = day();
        let mut calendar = Calendar::new(&day);
        calendar.book(&day.ways[0], &[0]);
        let mut work = 0;
        assert_eq!(calendar.fit(&day.ways[1], &mut work), Some(vec![10, 35]));
        assert!(work > 0);
    }

    #[test]
    fn what_fits_nowhere_is_refused_and_leaves_no_trace() {
        let day = day();
        let mut calendar = Calendar::new(&day);
        calendar.book(&day.ways[0], &[32]);
        assert_eq!(calendar.fit(&day.ways[1], &mut 0), Some(vec![0, 25]));
        calendar.book(&day.ways[0], &[20]);
        // Now the second step runs into one of the two from any start that gives the pot back before it closes.
        assert_eq!(calendar.fit(&day.ways[1], &mut 0), None);
        calendar.release(&day.ways[0], &[20]);
        assert_eq!(calendar.fit(&day.ways[1], &mut 0), Some(vec![0, 25]));
    }
}
