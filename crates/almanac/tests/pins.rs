//! Every table of `data/` pinned: how many rows, what its columns add up to, and what must hold between rows.
//!
//! A changed figure breaks a pin. Whoever changes one changes the pin in the same commit and says why. The tables of
//! our own first guesses (`work/`) are not pinned here: they are there to be replaced.

use std::collections::{BTreeMap, BTreeSet};

use almanac::{
    Action, Almanac, CannerKind, JarSize, Mouth, Pack, Part, ProductId, Role, ScalesWith, Table, Tables,
};
use measure::{Altitude, Percent, Temp};

/// What a table must add up to.
struct Pin {
    table: Table,
    rows: usize,
    /// Rows seen in print.
    read: usize,
    /// Rows recalled.
    memory: usize,
    /// FNV-1a over every cell, each closed by the byte 0x1f.
    digest: u64,
    /// The sums of the columns that hold numbers only.
    sums: &'static [(&'static str, f64)],
}

/// Pinned: counted and added up outside the program, from the tables as they were checked against their sources.
const PINS: &[Pin] = &[
    Pin {
        table: Table::BoilingWater,
        rows: 756,
        read: 738,
        memory: 18,
        digest: 0xfed3_95cb_a697_d065,
        sums: &[
            ("alt_min_ft", 1820532.0),
            ("alt_max_ft", 1820000.0),
            ("minutes", 18845.0),
            ("headspace_in", 360.875),
        ],
    },
    Pin {
        table: Table::Pressure,
        rows: 1064,
        read: 1062,
        memory: 2,
        digest: 0x378b_f15c_986f_ef8b,
        sums: &[
            ("minutes", 42638.0),
            ("alt_min_ft", 2262696.0),
            ("alt_max_ft", 3674000.0),
            ("psi", 11610.0),
            ("headspace_in", 828.5),
        ],
    },
    Pin {
        table: Table::Acidification,
        rows: 31,
        read: 31,
        memory: 0,
        digest: 0xe9c7_2fe6_f249_9f0b,
        sums: &[("bottled_lemon_juice_tbsp", 44.5), ("citric_acid_tsp", 8.25), ("vinegar_5pct_tbsp", 48.0)],
    },
    Pin {
        table: Table::NotForCanning,
        rows: 48,
        read: 47,
        memory: 1,
        digest: 0xf934_ab78_0946_298d,
        sums: &[],
    },
    Pin {
        table: Table::CannerRules,
        rows: 105,
        read: 97,
        memory: 8,
        digest: 0xbb5a_98a6_c115_e2ad,
        sums: &[("value_min", 2332.95), ("value_max", 2454.2)],
    },
    Pin { table: Table::JarSteps, rows: 9, read: 0, memory: 0, digest: 0xafe5_2e8d_7252_3f23, sums: &[] },
    Pin {
        table: Table::Jars,
        rows: 8,
        read: 8,
        memory: 0,
        digest: 0xf414_1e7a_b48a_bcfe,
        sums: &[("nominal_us_fl_oz", 188.0), ("nominal_ml", 5560.0), ("bw_canner_load", 32.0)],
    },
    Pin {
        table: Table::Procurement,
        rows: 62,
        read: 62,
        memory: 0,
        digest: 0x5b1c_e3f6_2526_26c3,
        sums: &[
            ("container_lb", 1348.0),
            ("lb_per_quart", 116.78),
            ("lb_per_7qt_load", 780.5),
            ("lb_per_9pt_load", 580.5),
            ("yield_min_qt", 419.0),
            ("yield_max_qt", 598.0),
        ],
    },
    Pin {
        table: Table::PickleRules,
        rows: 76,
        read: 68,
        memory: 7,
        digest: 0x6267_9b9d_c535_78d6,
        sums: &[],
    },
    Pin {
        table: Table::Metric,
        rows: 30,
        read: 10,
        memory: 10,
        digest: 0x0d5f_18fd_831f_f359,
        sums: &[("metric", 15964.2)],
    },
    Pin { table: Table::LoadRules, rows: 37, read: 34, memory: 3, digest: 0x459a_20a9_9391_c28d, sums: &[] },
    Pin { table: Table::Elsewhere, rows: 18, read: 12, memory: 5, digest: 0x6605_6ca7_8e0a_063c, sums: &[] },
    Pin {
        table: Table::Formulas,
        rows: 122,
        read: 121,
        memory: 1,
        digest: 0x5fcc_41e9_671c_c8d1,
        sums: &[("yield_min", 638.0), ("yield_max", 682.0), ("headspace_in", 48.875)],
    },
    Pin {
        table: Table::Ingredients,
        rows: 692,
        read: 690,
        memory: 2,
        digest: 0x0809_0a46_ad7f_0f7a,
        sums: &[("amount_min", 2400.415), ("amount_max", 2422.54)],
    },
    Pin {
        table: Table::Steps,
        rows: 2022,
        read: 1850,
        memory: 172,
        digest: 0x10f2_cd37_b73e_8c95,
        sums: &[
            ("order", 19803.0),
            ("minutes_min", 287558.1),
            ("minutes_max", 411714.1),
            ("can_wait_max_min", 0.0),
        ],
    },
    Pin {
        table: Table::IngredientProduce,
        rows: 267,
        read: 0,
        memory: 0,
        digest: 0x5668_f852_4787_24c2,
        sums: &[],
    },
    Pin {
        table: Table::IngredientDensity,
        rows: 156,
        read: 0,
        memory: 0,
        digest: 0x5190_d797_c199_576b,
        sums: &[],
    },
    Pin {
        table: Table::FoodFamilies,
        rows: 70,
        read: 0,
        memory: 0,
        digest: 0xca4d_2617_1c6b_8592,
        sums: &[],
    },
    Pin {
        table: Table::ChangeRules,
        rows: 318,
        read: 313,
        memory: 1,
        digest: 0x0223_c385_16a2_bf20,
        sums: &[],
    },
    Pin {
        table: Table::ProduceNames,
        rows: 123,
        read: 0,
        memory: 0,
        digest: 0xc88d_96ee_a5bb_0b70,
        sums: &[],
    },
    Pin {
        table: Table::Densities,
        rows: 608,
        read: 589,
        memory: 1,
        digest: 0xa756_a159_fa78_3b43,
        sums: &[("grams", 66854.63), ("low", 9924.78), ("high", 13741.13)],
    },
    Pin {
        table: Table::FreshYields,
        rows: 105,
        read: 105,
        memory: 0,
        digest: 0x5fdf_023b_8a2a_c246,
        sums: &[("refuse_pct", 2357.0), ("edible_pct", 8143.0), ("as_purchased_per_edible", 144.779)],
    },
    Pin {
        table: Table::FreshStorage,
        rows: 202,
        read: 161,
        memory: 41,
        digest: 0x5f72_5aa7_fdf5_2f99,
        sums: &[
            ("temp_min_F", 6575.0),
            ("temp_max_F", 6984.0),
            ("rh_min", 15527.0),
            ("rh_max", 16360.0),
            ("life_min_days", 8370.0),
            ("life_max_days", 12295.0),
        ],
    },
    Pin {
        table: Table::Acidity,
        rows: 223,
        read: 191,
        memory: 32,
        digest: 0xf01d_25aa_5d81_c950,
        sums: &[("ph_min", 958.15), ("ph_max", 1033.26)],
    },
    Pin {
        table: Table::WorkRates,
        rows: 106,
        read: 0,
        memory: 0,
        digest: 0x864b_60bc_d45b_90fb,
        sums: &[
            ("minutes_per_kg_low", 359.8),
            ("minutes_per_kg_typical", 632.5),
            ("minutes_per_kg_high", 1058.0),
            ("setup_min", 301.0),
        ],
    },
    Pin {
        table: Table::Blanching,
        rows: 102,
        read: 83,
        memory: 19,
        digest: 0xfbe5_bf68_adfd_0037,
        sums: &[],
    },
    Pin {
        table: Table::Freezing,
        rows: 83,
        read: 58,
        memory: 25,
        digest: 0xaf82_4094_d4c5_7fd6,
        sums: &[
            ("wide_pint_in", 1.5),
            ("wide_quart_in", 2.5),
            ("narrow_pint_in", 2.75),
            ("narrow_quart_in", 3.5),
            ("storage_months_min", 380.0),
            ("storage_months_max", 579.0),
        ],
    },
    Pin {
        table: Table::Drying,
        rows: 98,
        read: 54,
        memory: 44,
        digest: 0x3f41_1514_be2a_0910,
        sums: &[("hours_min", 490.0), ("hours_max", 761.0), ("fresh_lb", 206.0), ("dried_lb", 23.125)],
    },
    Pin {
        table: Table::Fermentation,
        rows: 108,
        read: 98,
        memory: 6,
        digest: 0x9949_5a2a_6d11_18e6,
        sums: &[("value_max", 20183.334)],
    },
    Pin {
        table: Table::Jelly,
        rows: 86,
        read: 81,
        memory: 4,
        digest: 0x95ed_64ef_c215_02a2,
        sums: &[("value_min", 2091.55), ("value_max", 2114.83), ("altitude_ft", 36000.0)],
    },
    Pin {
        table: Table::Syrups,
        rows: 22,
        read: 22,
        memory: 0,
        digest: 0xfa41_8982_4af7_591f,
        sums: &[
            ("percent_sugar_printed", 580.0),
            ("water_cups", 101.75),
            ("sugar_cups", 47.667),
            ("yield_cups", 25.583),
        ],
    },
    Pin { table: Table::Pectin, rows: 10, read: 10, memory: 0, digest: 0x74fc_9047_0f5d_f05f, sums: &[] },
    Pin {
        table: Table::Signs,
        rows: 60,
        read: 50,
        memory: 9,
        digest: 0xa9a0_9e1f_f316_a7a1,
        sums: &[("value_min", 434.5), ("value_max", 461.5)],
    },
    Pin {
        table: Table::Outage,
        rows: 90,
        read: 88,
        memory: 2,
        digest: 0xfdd1_bc93_4d34_3bf4,
        sums: &[("temp_F", 2770.0), ("value_min", 384.0), ("value_max", 385.0)],
    },
    Pin {
        table: Table::Cooling,
        rows: 14,
        read: 14,
        memory: 0,
        digest: 0xa5be_03d3_bb28_3867,
        sums: &[("from_F", 750.6), ("to_F", 288.0), ("value_min", 270.225), ("value_max", 274.725)],
    },
    Pin {
        table: Table::Oil,
        rows: 15,
        read: 15,
        memory: 0,
        digest: 0xe6f4_9630_81aa_b6be,
        sums: &[("value_min", 93.0), ("value_max", 95.0), ("temp_F", 200.0)],
    },
    Pin {
        table: Table::FermentRules,
        rows: 41,
        read: 41,
        memory: 0,
        digest: 0x280e_9b88_627e_b69e,
        sums: &[("from", 664.35), ("to", 746.75)],
    },
    Pin { table: Table::FermentNames, rows: 6, read: 0, memory: 0, digest: 0xc4c0_024c_c64f_9d2a, sums: &[] },
    Pin {
        table: Table::Dried,
        rows: 24,
        read: 21,
        memory: 1,
        digest: 0xc70e_326e_b0e1_1aac,
        sums: &[("value_min", 293.0), ("value_max", 348.0), ("temp_F", 840.0)],
    },
    Pin {
        table: Table::BestBy,
        rows: 108,
        read: 103,
        memory: 5,
        digest: 0xdcd1_935f_a5af_97c6,
        sums: &[("temp_low_F", 2512.0), ("temp_high_F", 2609.0), ("value_min", 568.0), ("value_max", 694.0)],
    },
    Pin {
        table: Table::FoodHeat,
        rows: 39,
        read: 39,
        memory: 0,
        digest: 0xf565_e0a1_b857_7b3d,
        sums: &[
            ("moisture_pct", 2156.22),
            ("freezes_C", -36.4),
            ("heat_above_kJ_kgK", 150.33),
            ("heat_below_kJ_kgK", 75.42),
            ("latent_kJ_kg", 11106.0),
        ],
    },
    Pin {
        table: Table::PlanningRanges,
        rows: 32,
        read: 6,
        memory: 0,
        digest: 0xdb5e_1833_a447_06ef,
        sums: &[("low", 2543.31), ("likely", 3500.85), ("high", 6262.18)],
    },
    Pin {
        table: Table::JarInsides,
        rows: 4,
        read: 0,
        memory: 0,
        digest: 0x4a12_b81b_5de4_0bee,
        sums: &[
            ("inside_diameter_mm", 337.0),
            ("inside_height_mm", 545.0),
            ("glass_g_low", 1594.0),
            ("glass_g_high", 1780.0),
        ],
    },
];

/// The rows of a table, by column.
type Rows = Vec<BTreeMap<String, String>>;

fn rows_of(text: &str) -> Rows {
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let columns = reader.headers().expect("a line of columns").clone();
    let named = |record: csv::StringRecord| {
        columns.iter().zip(record.iter()).map(|(column, cell)| (column.to_owned(), cell.to_owned())).collect()
    };
    reader.records().map(|record| named(record.expect("a row"))).collect()
}

fn rows(table: Table) -> Rows {
    rows_of(Tables::embedded().text(table))
}

fn digest_of(text: &str) -> u64 {
    let mut digest = 0xcbf2_9ce4_8422_2325_u64;
    let mut take = |byte: u8| digest = (digest ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
    for record in csv::Reader::from_reader(text.as_bytes()).records() {
        for cell in &record.expect("a row") {
            cell.bytes().for_each(&mut take);
            take(0x1f);
        }
    }
    digest
}

fn sum_of(rows: &Rows, column: &str) -> f64 {
    let number = |row: &BTreeMap<String, String>| match row[column].as_str() {
        "" => 0.0,
        cell => cell.parse::<f64>().unwrap_or_else(|_| panic!("{column} holds {cell:?}")),
    };
    rows.iter().map(number).sum()
}

/// What is wrong with a table, measured against its pin.
fn broken_pins(pin: &Pin, text: &str) -> Vec<String> {
    let rows = rows_of(text);
    let of_basis = |basis: &str| rows.iter().filter(|row| row["basis"] == basis).count();
    let mut broken = Vec::new();
    let mut hold = |what: &str, got: String, pinned: String| {
        if got != pinned {
            broken.push(format!("{}: {what} {got}, pinned {pinned}", pin.table));
        }
    };
    hold("rows", rows.len().to_string(), pin.rows.to_string());
    hold("rows read", of_basis("read").to_string(), pin.read.to_string());
    hold("rows recalled", of_basis("memory").to_string(), pin.memory.to_string());
    for (column, sum) in pin.sums {
        hold(column, format!("{:.5}", sum_of(&rows, column)), format!("{sum:.5}"));
    }
    hold("digest", format!("{:#018x}", digest_of(text)), format!("{:#018x}", pin.digest));
    broken
}

fn almanac() -> Almanac {
    Almanac::load().expect("the built-in tables hold no fault")
}

#[test]
fn every_table_is_as_pinned() {
    let tables = Tables::embedded();
    let broken: Vec<String> = PINS.iter().flat_map(|pin| broken_pins(pin, tables.text(pin.table))).collect();
    assert!(broken.is_empty(), "{}", broken.join("\n"));
}

#[test]
fn every_published_table_has_a_pin() {
    let pinned: BTreeSet<Table> = PINS.iter().map(|pin| pin.table).collect();
    let bare = Table::ALL.iter().filter(|table| !pinned.contains(table));
    let bare: Vec<&str> = bare.map(|table| table.file()).filter(|file| !file.starts_with("work/")).collect();
    assert_eq!(bare, ["sources.toml"]);
    assert_eq!(almanac().sources().count(), SOURCES);
}

/// Pinned: counted in `sources.toml`.
const SOURCES: usize = 276;

#[test]
fn one_flipped_figure_breaks_a_pin_in_every_table() {
    for pin in PINS {
        let text = Tables::embedded().text(pin.table).to_owned();
        // The last digit of the table: it may be a figure or a page.
        let at = text.rfind(|mark: char| mark.is_ascii_digit());
        let at = at.unwrap_or_else(|| text.rfind('a').expect("a letter"));
        let flipped = match &text[at..=at] {
            "9" => "8",
            "a" => "b",
            digit => &(digit.parse::<u8>().expect("a digit") + 1).to_string(),
        };
        let changed = format!("{}{flipped}{}", &text[..at], &text[at + 1..]);
        assert!(!broken_pins(pin, &changed).is_empty(), "{}", pin.table);
    }
    let minutes = PINS.iter().find(|pin| pin.table == Table::BoilingWater).expect("pinned");
    let text = Tables::embedded().text(Table::BoilingWater).replacen(",0,1000,15,", ",0,1000,14,", 1);
    assert!(broken_pins(minutes, &text).iter().any(|broken| broken.contains("minutes")));
}

/// A band of a printed line: its edges in feet, its minutes, its pounds.
type PrintedBand = (u32, Option<u32>, f64, f64);

/// Rows of a process table that differ only by band.
fn printed_lines(rows: &Rows) -> BTreeMap<Vec<String>, Vec<PrintedBand>> {
    let mut lines: BTreeMap<Vec<String>, Vec<PrintedBand>> = BTreeMap::new();
    for row in rows {
        let cell = |column: &str| row.get(column).cloned().unwrap_or_default();
        let key = ["product_id", "pack", "jar", "gauge", "option"].map(cell).to_vec();
        let feet = |column: &str| row[column].parse().ok();
        let minutes = row["minutes"].parse().expect("minutes");
        let psi = cell("psi").parse().unwrap_or(0.0);
        lines.entry(key).or_default().push((
            feet("alt_min_ft").expect("feet"),
            feet("alt_max_ft"),
            minutes,
            psi,
        ));
    }
    for bands in lines.values_mut() {
        bands.sort_by_key(|band| band.0);
    }
    lines
}

#[test]
fn boiling_water_bands_join_from_the_sea_to_an_open_top_and_minutes_never_fall() {
    let lines = printed_lines(&rows(Table::BoilingWater));
    assert_eq!(lines.len(), 224);
    for (line, bands) in &lines {
        assert_eq!(bands[0].0, 0, "{line:?}");
        assert_eq!(bands[bands.len() - 1].1, None, "{line:?}");
        for pair in bands.windows(2) {
            assert_eq!(pair[0].1.map(|top| top + 1), Some(pair[1].0), "{line:?}");
            assert!(pair[0].2 <= pair[1].2, "{line:?}");
        }
    }
}

#[test]
fn pressure_bands_and_pounds_are_those_of_their_gauge() {
    let lines = printed_lines(&rows(Table::Pressure));
    for (line, bands) in &lines {
        let psi: Vec<f64> = bands.iter().map(|band| band.3).collect();
        let edges: Vec<(u32, Option<u32>)> = bands.iter().map(|band| (band.0, band.1)).collect();
        assert!(bands.iter().all(|band| (band.2 - bands[0].2).abs() < 1e-9), "minutes change in {line:?}");
        match line[3].as_str() {
            "dial" => {
                let dial = [(0, Some(2000)), (2001, Some(4000)), (4001, Some(6000)), (6001, Some(8000))];
                assert_eq!(edges, dial, "{line:?}");
                assert!(psi == [11.0, 12.0, 13.0, 14.0] || psi == [6.0, 7.0, 8.0, 9.0], "{line:?}: {psi:?}");
            }
            "weighted" if line[4].starts_with("15 lb") => {
                assert_eq!(
                    (edges.as_slice(), psi.as_slice()),
                    (&[(0, Some(1000))][..], &[15.0][..]),
                    "{line:?}"
                );
            }
            "weighted" => {
                assert_eq!(edges, [(0, Some(1000)), (1001, None)], "{line:?}");
                assert!(psi == [10.0, 15.0] || psi == [5.0, 10.0], "{line:?}: {psi:?}");
            }
            gauge => panic!("{gauge} is no gauge"),
        }
    }
    let pairs = |gauge: &str| -> BTreeSet<Vec<String>> {
        lines.keys().filter(|line| line[3] == gauge).map(|line| line[..3].to_vec()).collect()
    };
    assert_eq!(pairs("dial"), pairs("weighted"), "every pressure food, pack and jar has both gauges");
}

#[test]
fn minutes_never_fall_with_a_larger_jar() {
    for table in [Table::BoilingWater, Table::Pressure] {
        let mut by_jar: BTreeMap<Vec<String>, Vec<(JarSize, f64)>> = BTreeMap::new();
        for row in rows(table) {
            let cell = |column: &str| row.get(column).cloned().unwrap_or_default();
            let key = ["product_id", "pack", "gauge", "option", "alt_min_ft"].map(cell).to_vec();
            let jar = JarSize::find(&row["jar"]).expect("a jar");
            by_jar.entry(key).or_default().push((jar, row["minutes"].parse().expect("minutes")));
        }
        for (key, mut jars) in by_jar {
            jars.sort_by_key(|(jar, _)| *jar);
            assert!(jars.windows(2).all(|pair| pair[0].1 <= pair[1].1), "{key:?}: {jars:?}");
        }
    }
}

#[test]
fn every_food_that_asks_for_acid_has_an_amount_for_each_printed_jar() {
    let almanac = almanac();
    let asking: BTreeSet<(String, String)> = rows(Table::BoilingWater)
        .into_iter()
        .filter(|row| row["acidification_required"] == "yes")
        .map(|row| (row["product_id"].clone(), row["jar"].clone()))
        .collect();
    assert!(asking.len() >= 20, "{}", asking.len());
    for (product, jar) in asking {
        let jar = JarSize::find(&jar).expect("a jar");
        let acid = almanac.acid_for(&ProductId::from(product.as_str()), jar);
        assert!(acid.is_some_and(|acid| acid.mandatory && acid.jar == jar), "{product} in a {jar}");
    }
}

#[test]
fn no_vegetable_meat_or_soup_is_boiled() {
    let groups: BTreeSet<String> =
        rows(Table::BoilingWater).into_iter().map(|row| row["food_group"].clone()).collect();
    assert!(groups.is_disjoint(&["vegetable", "meat", "soup"].map(str::to_owned).into()), "{groups:?}");
    for product in almanac().products().filter(|product| product.canners.contains(&CannerKind::Steam)) {
        assert!(product.canners.contains(&CannerKind::BoilingWater), "{}", product.id);
    }
}

#[test]
fn the_rules_that_permit_are_on_file_and_read() {
    let almanac = almanac();
    for id in [
        "jar-next-size-up",
        "jar-half-pint-as-pint",
        "jar-odd-sizes",
        "jar-fish-small",
        "jar-not-larger",
        "jar-no-formula",
        "steam-max",
        "bw-rest",
        "pc-wait-open",
        "pc-vent",
        "sterile-jars-under-10",
        "gauge-threshold-used",
    ] {
        let rule = almanac.require_rule(id).expect("on file");
        assert!(rule.citation.may_be_called_tested() || id == "gauge-threshold-used", "{id}");
    }
    assert_eq!(almanac.require_rule("no-such-rule").map(|_| ()).unwrap_err().rule.as_str(), "no-such-rule");
}

#[test]
fn every_formula_has_ingredients_steps_and_a_process_it_can_reach() {
    let almanac = almanac();
    let mut without_process = Vec::new();
    let mut actions = BTreeSet::new();
    for formula in almanac.formulas() {
        assert!(!formula.ingredients.is_empty() && formula.steps.len() >= 4, "{}", formula.id);
        actions.extend(formula.steps.iter().map(|step| step.action));
        let canned = !formula.packs.is_empty() && !formula.jars.is_empty();
        let Some(product) = &formula.product else {
            if canned {
                without_process.push(formula.id.as_str());
            }
            continue;
        };
        for line in almanac.printed_lines(product).filter(|line| formula.packs.contains(&line.pack())) {
            let headspace = formula.headspace.map(|length| length.as_inches());
            assert!(headspace.is_some(), "{} {:?}", formula.id, line.pack());
        }
        let packs: BTreeSet<Pack> = almanac.printed_lines(product).map(|line| line.pack()).collect();
        assert!(formula.packs.iter().all(|pack| packs.contains(pack)), "{}: {packs:?}", formula.id);
    }
    assert_eq!(without_process, ["pickled_horseradish", "summer_squash_relish"]);
    assert_eq!(actions.len(), Action::ALL.len(), "every verb of the closed list is used");
}

#[test]
fn every_produce_line_says_what_it_accepts() {
    let almanac = almanac();
    let listed: BTreeSet<(String, String)> = rows(Table::IngredientProduce)
        .into_iter()
        .map(|row| (row["formula_id"].clone(), row["ingredient"].clone()))
        .collect();
    for formula in almanac.formulas() {
        for ingredient in formula.ingredients.iter().filter(|ingredient| ingredient.role == Role::Produce) {
            let key = (formula.id.to_string(), ingredient.name.to_string());
            assert!(listed.contains(&key), "{key:?}");
        }
        for id in formula.ingredients.iter().flat_map(|ingredient| &ingredient.accepts) {
            assert!(
                !id.as_str().starts_with("white-peach")
                    || !formula.methods.contains(&almanac::Method::BoilingWater)
            );
        }
    }
}

#[test]
fn amounts_beside_jars_juice_and_water_do_not_grow_with_the_batch() {
    let almanac = almanac();
    let of = |formula: &str, name: &str| {
        let formula = almanac.find_formula(formula).one().expect("a formula");
        let line = formula.ingredients.iter().find(|line| &*line.name == name).expect("a line");
        line.unit.scales_with()
    };
    assert_eq!(of("tomatoes_crushed", "bottled lemon juice"), ScalesWith::Jars(JarSize::Quart));
    assert_eq!(of("apple_jelly", "sugar"), ScalesWith::Juice);
    assert_eq!(of("apple_jelly", "water"), ScalesWith::Produce);
    assert_eq!(of("applesauce", "ascorbic acid"), ScalesWith::Liquid);
    assert_eq!(of("peaches_halved", "syrup, water, apple or white grape juice"), ScalesWith::Loads);
    assert_eq!(of("kimchi_napa", "salt"), ScalesWith::Weight);
    assert_eq!(of("chile_salsa", "tomatoes"), ScalesWith::Batch);
}

#[test]
fn jars_hold_and_load_as_printed() {
    let almanac = almanac();
    assert_eq!(almanac.jars().len(), JarSize::ALL.len());
    for jar in almanac.jars() {
        let off = (jar.nominal.as_millilitres() - jar.size.volume().as_millilitres()).abs();
        assert!(off < 1.0, "{}", jar.size);
    }
    let quart = almanac.jar(JarSize::Quart).expect("a row");
    assert_eq!(quart.mouths, [Mouth::Regular, Mouth::Wide]);
    assert_eq!(quart.boiling_water_load.map(|load| (load.low, load.high)), Some((7, 7)));
    let pint = almanac.jar(JarSize::Pint).expect("a row");
    assert_eq!(pint.pressure_load.map(|load| (load.low, load.high)), Some((8, 9)));
}

/// Source: US Department of Agriculture, Complete Guide to Home Canning, 1994, Guide 7, gel points by altitude.
#[test]
fn the_gel_point_falls_with_altitude_and_is_not_read_off_above_the_table() {
    let almanac = almanac();
    let gel = |feet| almanac.find_gel_point(Altitude::feet(feet)).map(|(temp, _)| temp);
    assert_eq!(gel(0), Some(Temp::fahrenheit(220.0)));
    assert_eq!(gel(1000), Some(Temp::fahrenheit(218.0)));
    assert_eq!(gel(1200), Some(Temp::fahrenheit(216.0)));
    assert_eq!(gel(8000), Some(Temp::fahrenheit(205.0)));
    assert_eq!(gel(8001), None);
}

/// Source: US Department of Agriculture, National Nutrient Database for Standard Reference, Release 28 (2016), NDB
/// 11167 (sweet corn, refuse 64 percent, a medium ear yields 102 g); Complete Guide to Home Canning, 1994 (a bushel
/// of tomatoes is 53 lb).
#[test]
fn ears_and_bushels_are_weighed() {
    let almanac = almanac();
    let corn = almanac.find_produce("ears of corn").one().expect("on the list");
    let ear = corn.each_as_purchased.expect("an ear is weighed").as_grams();
    assert!((ear - 102.0 / 0.36).abs() < 0.5, "{ear}");
    let tomatoes = almanac.find_produce("tomatoes").one().expect("on the list");
    assert!(tomatoes.containers.iter().any(|(_, weight)| (weight.as_pounds() - 53.0).abs() < 1e-9));
}

#[test]
fn storage_yields_rates_and_methods_are_found_by_name() {
    let almanac = almanac();
    let beans = almanac.find_produce("green beans").one().expect("on the list");
    let storage = almanac.find_storage(beans);
    assert!(storage.len() >= 2 && storage[0].life.is_some_and(|life| life.min == 7), "{storage:?}");
    let onions = almanac.find_produce("onions").one().expect("on the list");
    let edible = almanac.find_yield(onions).expect("printed").edible;
    assert_eq!(edible, Percent::of_hundred(90.0));
    assert_eq!(almanac.find_work_rates(almanac::Task::Chop, onions).len(), 2);
    assert!(almanac.find_blanching("snap beans").iter().any(|row| {
        row.method == almanac::BlanchMethod::Water
            && row.minutes.as_ref().is_some_and(|minutes| &*minutes.printed == "3")
    }));
    assert!(almanac.find_drying("apples").iter().any(|row| row.hours.is_some()));
    assert!(!almanac.find_freezing("strawberries").is_empty());
    let (dry, _) = almanac.find_freezer_headspace("dry").expect("printed");
    assert!((dry.wide_quart.as_inches() - 0.5).abs() < 1e-9);
    assert_eq!(almanac.find_syrups(almanac::SyrupUse::Canning, "light").count(), 2);
    assert!(
        almanac
            .find_ferment("sauerkraut", almanac::FermentRecord::Salt)
            .any(|row| row.figures() == Some((2.25, 2.5)))
    );
    assert!(!almanac.find_acidity("carrots").is_empty() && almanac.find_acidity("").is_empty());
}

#[test]
fn every_acid_part_is_guarded_where_acid_keeps_the_jar() {
    use almanac::FormulaClass::{JamNoPectin, JamPectin, Jelly};
    for formula in almanac().formulas().filter(|formula| formula.product.is_some()) {
        // In a sweet spread the sugar keeps, and the lemon is there to make it set.
        let sweet = matches!(formula.class, Some(JamPectin | JamNoPectin | Jelly));
        for line in formula.ingredients.iter().filter(|line| line.part == Part::Acid && !line.optional) {
            assert!(line.safety_critical || sweet, "{}: {}", formula.id, line.name);
        }
    }
}
