//! How a printed table is written down here, and how it is asked for.

use almanac::{Almanac, CannerKind, JarSize, Pack, ProductId, Verdict};
use batch::clear::{ClearQuestion, Clearance, Gauge, Tested, clear};
use measure::Altitude;

/// The lines of a printed table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lines {
    /// Minutes in a boiling-water canner: three bands or four, as their number says.
    Water(&'static [u32]),
    /// Alternatives on a dial gauge: minutes, and pounds in the four dial bands.
    Dial(&'static [(u32, [u32; 4])]),
    /// Alternatives on a weighted gauge: minutes, pounds to 1,000 ft, pounds above where they are printed.
    Weighted(&'static [(u32, u32, Option<u32>)]),
}

/// A printed table of one food, pack, jar and canner.
#[derive(Debug, Clone, Copy)]
pub struct Printed {
    pub food: &'static str,
    pub pack: &'static str,
    pub jar: &'static str,
    pub lines: Lines,
}

/// Heights asked in each band: its ends, and for the open one a place high up.
const THREE_BANDS: [[u32; 2]; 3] = [[0, 1000], [1001, 6000], [6001, 10_000]];
const FOUR_BANDS: [[u32; 2]; 4] = [[0, 1000], [1001, 3000], [3001, 6000], [6001, 10_000]];
const DIAL_BANDS: [[u32; 2]; 4] = [[0, 2000], [2001, 4000], [4001, 6000], [6001, 8000]];
const WEIGHT_BANDS: [[u32; 2]; 2] = [[0, 1000], [1001, 9000]];

impl Printed {
    /// How many cells of a printed table it holds.
    pub fn cells(&self) -> usize {
        match self.lines {
            Lines::Water(minutes) => minutes.len(),
            Lines::Dial(options) => options.len() * 4,
            Lines::Weighted(options) => {
                options.iter().map(|(_, _, above)| 1 + usize::from(above.is_some())).sum()
            }
        }
    }

    /// Asks every cell at both ends of its band.
    fn check(&self, almanac: &Almanac) {
        match self.lines {
            Lines::Water(minutes) => {
                let bands: &[[u32; 2]] = if minutes.len() == 3 { &THREE_BANDS } else { &FOUR_BANDS };
                assert_eq!(bands.len(), minutes.len(), "{self:?}");
                for (band, minutes) in bands.iter().zip(minutes) {
                    self.serves(almanac, CannerKind::BoilingWater, band, &[(*minutes, None)]);
                }
            }
            Lines::Dial(options) => {
                for (at, band) in DIAL_BANDS.iter().enumerate() {
                    let lines: Vec<_> =
                        options.iter().map(|(minutes, pounds)| (*minutes, Some(pounds[at]))).collect();
                    self.serves(almanac, CannerKind::Dial, band, &lines);
                }
            }
            Lines::Weighted(options) => {
                let low: Vec<_> = options.iter().map(|(minutes, low, _)| (*minutes, Some(*low))).collect();
                let high: Vec<_> = options
                    .iter()
                    .filter_map(|(minutes, _, above)| Some((*minutes, Some((*above)?))))
                    .collect();
                self.serves(almanac, CannerKind::Weighted, &WEIGHT_BANDS[0], &low);
                self.serves(almanac, CannerKind::Weighted, &WEIGHT_BANDS[1], &high);
            }
        }
    }

    fn serves(&self, almanac: &Almanac, canner: CannerKind, feet: &[u32], lines: &[(u32, Option<u32>)]) {
        for feet in feet {
            let clearance = ask(almanac, self.food, self.pack, self.jar, canner, *feet);
            assert_eq!(clearance.verdict, Verdict::Tested, "{self:?} at {feet} ft: {:?}", clearance.because);
            let mut served = served_lines(&clearance);
            let mut wanted = lines.to_vec();
            served.sort_unstable();
            wanted.sort_unstable();
            assert_eq!(served, wanted, "{self:?} at {feet} ft");
        }
    }
}

/// Minutes and pounds of what is served.
pub fn served_lines(clearance: &Clearance) -> Vec<(u32, Option<u32>)> {
    let pounds = |psi: measure::Pressure| {
        assert_eq!(psi.as_psi().fract(), 0.0, "printed pounds are whole");
        psi.as_psi() as u32
    };
    clearance
        .processes
        .iter()
        .map(|line| (line.process().minutes().0, line.process().pressure().map(pounds)))
        .collect()
}

/// Asks one question in the words of the tables, with a gauge tested this year and found right.
pub fn ask(almanac: &Almanac, food: &str, pack: &str, jar: &str, canner: CannerKind, feet: u32) -> Clearance {
    let question = ClearQuestion {
        product: ProductId::from(food),
        pack: Pack::find(pack).expect("a pack of the tables"),
        jar: JarSize::find(jar).expect("a jar of the tables"),
        canner,
        altitude: Altitude::feet(feet),
        gauge: Some(Gauge { error: None, tested: Tested::WithinTheYear }),
        formula: None,
        changes: Vec::new(),
    };
    clear(almanac, &question).expect("the foods here are known")
}

/// Checks every table of a list.
pub fn agree(printed: &[Printed]) {
    let almanac = Almanac::load().expect("the built-in tables load");
    for one in printed {
        one.check(&almanac);
    }
}
