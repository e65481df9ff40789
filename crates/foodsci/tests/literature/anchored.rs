//! How each recorded or tabled value is put to the models: by the beginning of its id.

use foodsci::acid::{Ph, find_undissociated};
use foodsci::air::MoistAir;
use foodsci::atmosphere::{find_boiling_point, find_canner_steam_temp};
use foodsci::brine::{find_brine_density, find_brine_freezing_point, find_brine_water_activity};
use foodsci::canner::find_specific_heat;
use foodsci::conduction::HeatingLag;
use foodsci::conduction::{Biot, Fourier, Modes, Shape, find_slowest_heating};
use foodsci::ferment::{CardinalTemps, GrowthRate, find_growth_rate};
use foodsci::freezing::{
    Freezes, FrozenShape, Package, find_freezing_load, find_latent_heat, find_pham_time, find_unfrozen_share,
};
use foodsci::headspace::{ClosedJar, Contents, find_lid_vacuum, find_water_density};
use foodsci::lethality::{
    BallCooling, Heating, HeatingCurve, Lethal, find_ball_ratio, find_heating_lethality,
};
use foodsci::salt::{find_ferment_salt, find_resting_salt, find_salting_time};
use foodsci::steam::{
    find_boiling_pressure, find_boiling_water_density, find_heat_of_evaporation, find_steam_density,
};
use foodsci::syrup::{find_boiling_rise, find_printed_boiling_rise, find_saturation, find_syrup_density};
use foodsci::vinegar::{
    Normality, PickleMix, TitratedAcid, Titration, find_resting_acid, find_titrated_acid,
};
use foodsci::water_activity::{Solute, find_water_activity};
use measure::{
    AirPressure, Conductivity, Density, Diffusivity, Film, Length, Mass, Percent, Span, SpecificEnergy,
    SpecificHeat, Temp, TempDifference, Volume,
};

use crate::rows::Row;
use crate::worked::{ideal_ph_of_acetic, psi};

type Told = (&'static str, f64);

/// The model that the row is put to, and its answer in the unit of the row.
pub(crate) fn compute(row: &Row) -> Told {
    let parts: Vec<&str> = row.id.splitn(3, '-').collect();
    match parts[0] {
        "CA" => conduction(row, parts[1]),
        "LA" => lethality(row, parts[1]),
        "AG" => {
            let temp = find_canner_steam_temp(Length::feet(row.n("altitude_ft")), psi(row.n("gauge_psi")));
            ("steam under a gauge", temp.unwrap().as_celsius())
        }
        "AA" => acid_or_altitude(row, parts[1]),
        "FA" => cold_or_ferment(row, parts[1]),
        "DA" | "PL" => air(row, parts[1]),
        "WA" => {
            let solute = match row.inputs["solute"].as_str() {
                "sucrose" => Solute::Sucrose,
                "glycerol" => Solute::Glycerol,
                _ => Solute::Glucose,
            };
            let share = Percent::fraction(row.n("mass_fraction"));
            ("Norrish's equation", find_water_activity(solute, share).unwrap().0)
        }
        "SA" => salt(row, parts[1]),
        "HA" if parts[1] == "rho" => water_density(row),
        "HA" => vacuum(row, parts[2]),
        "LE" => water_density(row),
        "ST" | "SI" => steam(row, parts[1]),
        "BR" | "BP" => brine(row, parts[1]),
        "SP" | "SB" | "SN" | "SS" => syrup(row, parts[0], parts[1]),
        "FP" => food(row, parts[1]),
        other => panic!("no model is asked for {other} ({})", row.id),
    }
}

fn conduction(row: &Row, what: &str) -> Told {
    let shape = |row: &Row| if row.inputs["geometry"] == "slab" { Shape::Slab } else { Shape::Cylinder };
    let biot =
        |row: &Row| if row.n("Bi").is_infinite() { Biot::INFINITE } else { Biot::new(row.n("Bi")).unwrap() };
    match what {
        "root" => ("conduction series", Modes::find(shape(row), biot(row), 1).unwrap().roots()[0]),
        "A1" => ("conduction series", Modes::find(shape(row), biot(row), 1).unwrap().centre_weights()[0]),
        "Y" => {
            let modes = Modes::find(shape(row), biot(row), 50).unwrap();
            ("conduction series", modes.centre(Fourier::new(row.n("Fo"))))
        }
        _ => {
            let n = |key: &str, usual: f64| if row.inputs.contains_key(key) { row.n(key) } else { usual };
            let lag = find_slowest_heating(
                Length::metres(n("D_m", 0.08) / 2.0),
                Length::metres(n("H_m", 0.1)),
                Diffusivity::square_metres_per_second(n("alpha_m2_s", 1.5e-7)),
            )
            .unwrap();
            ("finite cylinder", if what == "fh" { lag.f.as_minutes() } else { lag.j })
        }
    }
}

fn lethality(row: &Row, what: &str) -> Told {
    match what {
        "heat" => {
            let lag = HeatingLag { f: Span::minutes(row.n("fh_min")), j: row.n("jh") };
            let heating = Heating {
                curve: HeatingCurve::Straight(lag),
                start: Temp::celsius(row.n("T0_C")),
                around: Temp::celsius(row.n("TR_C")),
            };
            let f = find_heating_lethality(&heating, Span::minutes(row.n("B_min")), &lethal(row));
            ("lethality while heating", f.unwrap().as_minutes())
        }
        "ball" => {
            let cooling = BallCooling {
                drop: TempDifference::kelvins(row.n("m_plus_g_C")),
                slope_ratio: row.n("fc_over_fh"),
            };
            let [g, z] = ["g_C", "z_C"].map(|key| TempDifference::kelvins(row.n(key)));
            ("Ball's formula", find_ball_ratio(g, z, &cooling).unwrap())
        }
        _ => ("lethal rate", lethal(row).rate(Temp::celsius(row.n("T_C"))).unwrap()),
    }
}

fn lethal(row: &Row) -> Lethal {
    Lethal { reference: Temp::celsius(row.n("Tref_C")), z: TempDifference::kelvins(row.n("z_C")) }
}

fn acid_or_altitude(row: &Row, what: &str) -> Told {
    match what {
        "pH" => ("charge balance", ideal_ph_of_acetic(row.n("acetic_pct_w_v"), row.n("pKa"))),
        "und" => {
            ("undissociated acid", find_undissociated(row.n("pKa"), Ph(row.n("pH"))).unwrap().as_fraction())
        }
        "TA" => {
            let counted_as = match row.n("eq_weight").to_string().as_str() {
                "90.08" => TitratedAcid::Lactic,
                "60.05" => TitratedAcid::Acetic,
                _ => TitratedAcid::Citric,
            };
            let titration = Titration {
                lye: Volume::millilitres(row.n("V_NaOH_mL")),
                normality: Normality(row.n("N")),
                sample: Volume::millilitres(row.n("sample_mL")),
                counted_as,
            };
            ("titration", find_titrated_acid(&titration).unwrap().as_percent())
        }
        "eq" => {
            let mix = PickleMix {
                vinegar: Mass::kilograms(row.n("vinegar_kg")),
                strength: Percent::of_hundred(row.n("vinegar_acid_pct")),
                water: Mass::kilograms(row.n("water_kg")),
                vegetables: Mass::kilograms(row.n("vegetable_kg")),
                vegetable_water: Percent::fraction(row.n("vegetable_water")),
            };
            ("acid at rest", find_resting_acid(&mix).unwrap().as_percent())
        }
        _ => {
            let boils = find_boiling_point(Length::feet(row.n("altitude_ft")));
            ("boiling point by altitude", boils.unwrap().as_celsius())
        }
    }
}

fn cold_or_ferment(row: &Row, what: &str) -> Told {
    match what {
        "ice" => {
            let [freezes, at] = ["Tf_C", "T_C"].map(|key| Temp::celsius(row.n(key)));
            ("unfrozen water", find_unfrozen_share(freezes, at).unwrap().as_fraction())
        }
        "ctmi" => {
            let cardinal = CardinalTemps {
                least: Temp::celsius(row.n("Tmin")),
                best: Temp::celsius(row.n("Topt")),
                most: Temp::celsius(row.n("Tmax")),
                at_best: GrowthRate(row.n("mu_opt")),
            };
            ("growth by temperature", find_growth_rate(Temp::celsius(row.n("T_C")), &cardinal).unwrap().0)
        }
        "load" => {
            let food = Freezes {
                at: Temp::celsius(-1.0),
                above: SpecificHeat::kilojoules_per_kilogram_kelvin(row.n("c_above")),
                below: SpecificHeat::kilojoules_per_kilogram_kelvin(row.n("c_below")),
                latent: SpecificEnergy::kilojoules_per_kilogram(row.n("L_kJ_kg")),
            };
            let load = find_freezing_load(
                &food,
                Mass::kilograms(row.n("m_kg")),
                Temp::celsius(-1.0 + row.n("dT_above")),
                Temp::celsius(-1.0 - row.n("dT_below")),
            );
            ("freezing load", load.unwrap().as_kilojoules() / row.n("time_s"))
        }
        _ => {
            let shape = if row.n("Ef") == 3.0 { FrozenShape::Sphere } else { FrozenShape::Slab };
            let package = Package {
                shape,
                thickness: Length::metres(2.0 * row.n("d_half_m")),
                density: Density::kilograms_per_cubic_metre(row.n("rho")),
                conducts: Conductivity::watts_per_metre_kelvin(row.n("k")),
                film: Film::watts_per_square_metre_kelvin(row.n("h")),
                air: Temp::celsius(row.n("Ta_C")),
            };
            let food = Freezes {
                at: Temp::celsius(-1.0),
                above: SpecificHeat::joules_per_kilogram_kelvin(row.n("cu")),
                below: SpecificHeat::joules_per_kilogram_kelvin(row.n("cf")),
                latent: SpecificEnergy::joules_per_kilogram(row.n("Lf_J_kg")),
            };
            let [from, centre] = ["Ti_C", "Tc_C"].map(|key| Temp::celsius(row.n(key)));
            ("Pham's freezing time", find_pham_time(&package, &food, from, centre).unwrap().as_hours())
        }
    }
}

fn air(row: &Row, what: &str) -> Told {
    let pressure = AirPressure::pascals(row.n("P_Pa"));
    let humidity = Percent::fraction(row.n("RH"));
    let air = MoistAir::of_humidity(Temp::celsius(row.n("Tdb_C")), humidity, pressure).unwrap();
    match what {
        "W" => ("moist air", air.ratio.0),
        "Twb" => ("wet bulb", air.wet_bulb().unwrap().as_celsius()),
        "Tdp" => ("dew point", air.dew_point().unwrap().as_celsius()),
        "h" => ("moist air", air.enthalpy().as_joules_per_kilogram()),
        _ => ("moist air", air.volume().0),
    }
}

fn salt(row: &Row, what: &str) -> Told {
    match what {
        "eq" => {
            let rests = find_resting_salt(
                Mass::kilograms(row.n("brine_kg")),
                Percent::fraction(row.n("brine_salt")),
                Mass::kilograms(row.n("vegetable_kg")),
            );
            ("salt at rest", rests.unwrap().as_percent())
        }
        "kraut" => {
            let salt = find_ferment_salt(
                Mass::grams(row.n("cabbage_g")),
                Percent::fraction(row.n("salt_of_cabbage")),
            );
            ("salt by weight", salt.unwrap().as_grams())
        }
        _ => {
            let time = find_salting_time(
                Diffusivity::square_metres_per_second(row.n("D_m2_s")),
                Length::metres(row.n("radius_m")),
                Percent::of_hundred(90.0),
            );
            ("salting of a piece", time.unwrap().as_hours())
        }
    }
}

fn water_density(row: &Row) -> Told {
    let density = find_water_density(Temp::celsius(row.n("T_C"))).unwrap();
    ("density of water", density.as_kilograms_per_cubic_metre())
}

fn vacuum(row: &Row, what: &str) -> Told {
    let contracts = what.starts_with("contract");
    let jar = ClosedJar {
        closed_at: Temp::celsius(row.n("T_close_C")),
        cold: Temp::celsius(row.n("T_final_C")),
        air: AirPressure::pascals(101_325.0),
        headspace: Percent::of_hundred(10.0),
    };
    let contents = if contracts { Contents::ShrinkLikeWater } else { Contents::Fixed };
    ("vacuum under a lid", find_lid_vacuum(&jar, contents).unwrap().as_inches_of_mercury())
}

fn steam(row: &Row, what: &str) -> Told {
    let at = Temp::celsius(row.n("T_C"));
    match what {
        "p" => ("boiling pressure of water", find_boiling_pressure(at).unwrap().as_pascals()),
        "rl" => (
            "density of boiling water",
            find_boiling_water_density(at).unwrap().as_kilograms_per_cubic_metre(),
        ),
        "rv" => ("density of steam", find_steam_density(at).unwrap().as_kilograms_per_cubic_metre()),
        _ => ("heat of evaporation", find_heat_of_evaporation(at).unwrap().as_joules_per_kilogram()),
    }
}

fn brine(row: &Row, what: &str) -> Told {
    let strength = Percent::of_hundred(row.n("NaCl_pct"));
    match what {
        "aw" => ("water activity of brine", find_brine_water_activity(strength).unwrap().0),
        "rho" => ("density of brine", find_brine_density(strength).unwrap().as_kilograms_per_cubic_metre()),
        _ => ("freezing point of brine", find_brine_freezing_point(strength).unwrap().as_celsius()),
    }
}

fn syrup(row: &Row, table: &str, what: &str) -> Told {
    if table == "SS" {
        return ("solubility of sugar", find_saturation(Temp::celsius(row.n("T_C"))).unwrap().as_percent());
    }
    let sugar = Percent::of_hundred(row.n("sucrose_pct"));
    match (table, what) {
        ("SP", "rho") => {
            ("density of syrup", find_syrup_density(sugar).unwrap().as_kilograms_per_cubic_metre())
        }
        ("SP", "gl") => {
            let density = find_syrup_density(sugar).unwrap();
            ("density of syrup", density.as_kilograms_per_cubic_metre() * sugar.as_fraction())
        }
        ("SB", _) => ("printed boiling rise", find_printed_boiling_rise(sugar).unwrap().as_kelvins()),
        _ => ("boiling rise of syrup", find_boiling_rise(sugar, Length::ZERO).unwrap().as_kelvins()),
    }
}

fn food(row: &Row, what: &str) -> Told {
    let water = Percent::of_hundred(row.n("moisture_pct"));
    match what {
        "L" => ("latent heat of food", find_latent_heat(water).unwrap().as_kilojoules_per_kilogram()),
        _ => {
            ("specific heat of food", find_specific_heat(water).unwrap().as_kilojoules_per_kilogram_kelvin())
        }
    }
}
