//! How each published example is put to the models: one arm for each example, by its id.

use foodsci::acid::{Acid, Molar, find_ideal_ph};
use foodsci::air::{HumidityRatio, MoistAir, find_ratio_of_vapour, find_vapour_pressure};
use foodsci::atmosphere::{find_air_pressure, find_boiling_point};
use foodsci::brine::find_brine_water_activity;
use foodsci::conduction::{Biot, FiniteCylinder, Fourier, Modes, Shape};
use foodsci::cooling::{ThickLayer, find_thick_cooling_time};
use foodsci::drying::{
    AirFlow, CounterflowDryer, DryBasis, DryingLoad, WetRate, find_dried_mass, find_falling_time,
    find_slice_time, find_tray_film, find_water_to_dry, find_wet_rate, find_wet_time,
};
use foodsci::freezing::{
    Freezes, FrozenShape, Package, find_freezing_load, find_latent_heat, find_plank_time,
};
use foodsci::lethality::{Between, Lethal, Reading, add_up_lethality, find_decades};
use foodsci::salt::{SalometerDegrees, find_brine_strength, read_salometer};
use foodsci::steam::{find_boiling_pressure, find_boiling_temp};
use foodsci::sugar::{PanPart, blend, find_jam_yield, find_mass_to_reduce, find_reduced_mass};
use foodsci::vinegar::{Normality, TitratedAcid, Titration, find_titrated_acid};
use foodsci::water_activity::{Solute, find_water_activity};
use measure::{
    AirPressure, Area, Conductivity, Density, Diffusivity, Film, Length, Mass, MassFlow, Percent, Pressure,
    Span, SpecificEnergy, SpecificHeat, Temp, TempDifference, Volume,
};

use crate::rows::Row;

type Told = (&'static str, f64);

/// The model that the example is put to, and its answer in the unit of the row. No arm is a number of the row itself.
pub(crate) fn compute(row: &Row) -> Told {
    let stem: String = row.id.chars().take(5).collect();
    match stem.as_str() {
        "TH-01" | "TH-02" | "TH-03" | "TH-04" | "TH-05" | "TH-06" | "TH-07" | "TH-08" | "TH-09" => {
            lethality(row, &stem)
        }
        "HC-01" | "HC-02" | "HC-03" | "HC-04" | "HC-05" | "HC-06" => conduction(row, &stem),
        "AL-01" | "AL-02" | "AL-03" | "AL-04" | "AL-05" => altitude(row, &stem),
        "FZ-01" | "FZ-02" | "FZ-03" | "FZ-04" | "FZ-05" | "FZ-06" => freezing(row, &stem),
        "DR-01" | "DR-02" | "DR-03" | "DR-04" | "DR-16" | "DR-17" | "DR-18" => air(row, &stem),
        _ if stem.starts_with("DR-") => drying(row, &stem),
        _ => small_sums(row, &stem),
    }
}

fn celsius(value: f64) -> Temp {
    Temp::celsius(value)
}

fn lethal_of(row: &Row) -> Lethal {
    if row.inputs.contains_key("Tref_F") {
        Lethal {
            reference: Temp::fahrenheit(row.n("Tref_F")),
            z: TempDifference::fahrenheit_degrees(row.n("z_F")),
        }
    } else {
        Lethal { reference: celsius(row.n("Tref_C")), z: TempDifference::kelvins(row.n("z_C")) }
    }
}

fn lethality(row: &Row, stem: &str) -> Told {
    match stem {
        "TH-01" | "TH-02" => {
            let unit = if stem == "TH-01" { "C" } else { "F" };
            let of = if stem == "TH-01" { Temp::celsius } else { Temp::fahrenheit };
            let mut at = 0.0;
            let mut readings = Vec::new();
            for step in 1..=3 {
                let temp = of(row.n(&format!("T{step}_{unit}")));
                readings.push(Reading { at: Span::minutes(at), temp });
                at += row.n(&format!("t{step}_min"));
                readings.push(Reading { at: Span::minutes(at), temp });
            }
            (
                "general method",
                add_up_lethality(&readings, &lethal_of(row), Between::Steps).unwrap().as_minutes(),
            )
        }
        "TH-03" => {
            let readings: Vec<Reading> = row
                .list("t_min")
                .iter()
                .zip(row.list("T_F"))
                .map(|(at, temp)| Reading { at: Span::minutes(*at), temp: Temp::fahrenheit(temp) })
                .collect();
            (
                "general method",
                add_up_lethality(&readings, &lethal_of(row), Between::LinearRate).unwrap().as_minutes(),
            )
        }
        "TH-04" => {
            let decades = find_decades(Span::minutes(row.n("F_min")), Span::minutes(row.n("D_min"))).unwrap();
            ("decades of reduction", decades)
        }
        "TH-05" => {
            // F of twelve decades is the time whose decades are twelve.
            let d = Span::minutes(row.n("D121_min"));
            let f = d * row.n("decades");
            assert!((find_decades(f, d).unwrap() - row.n("decades")).abs() < 1e-12);
            ("decades of reduction", f.as_minutes())
        }
        "TH-06" => {
            let d = Span::minutes(row.n("F121_min") / 6.0);
            let lethal = Lethal { reference: celsius(121.0), z: TempDifference::kelvins(row.n("z_C")) };
            let at = d * (row.n("decades") / lethal.rate(celsius(row.n("T_C"))).unwrap());
            ("lethal rate", at.as_minutes())
        }
        "TH-07" => {
            let temp = celsius(row.n("T_C"));
            let held = [0.0, row.n("t_min")].map(|at| Reading { at: Span::minutes(at), temp });
            let f = add_up_lethality(&held, &lethal_of(row), Between::LinearTemperature).unwrap();
            ("general method", f.as_minutes())
        }
        "TH-08" => {
            let f = Span::minutes(row.n("Fref_min"));
            let at = Temp::fahrenheit(row.n("T_F"));
            ("lethal rate", f.as_minutes() / lethal_of(row).rate(at).unwrap())
        }
        _ => {
            let lethal = Lethal {
                reference: Temp::fahrenheit(150.0),
                z: TempDifference::fahrenheit_degrees(row.n("z_F")),
            };
            let f = Span::minutes(row.n("D150_min") * row.n("decades"));
            ("lethal rate", f.as_minutes() / lethal.rate(Temp::fahrenheit(row.n("T_F"))).unwrap())
        }
    }
}

fn conduction(row: &Row, stem: &str) -> Told {
    match stem {
        "HC-01" => {
            let radius = Length::metres(row.n("D_m") / 2.0);
            let biot = Biot::of(
                Film::watts_per_square_metre_kelvin(row.n("h_W_m2K")),
                radius,
                Conductivity::watts_per_metre_kelvin(row.n("k_W_mK")),
            );
            let modes = Modes::find(Shape::Cylinder, biot.unwrap(), 50).unwrap();
            let spreads = Diffusivity::square_metres_per_second(row.n("alpha_m2_s"));
            let left = modes.centre(Fourier::of(spreads, Span::seconds(row.n("t_s")), radius));
            ("conduction series", row.n("T1_C") + left * (row.n("T0_C") - row.n("T1_C")))
        }
        "HC-02" => {
            let can = FiniteCylinder::new(
                Length::metres(row.n("D_m") / 2.0),
                Length::metres(row.n("H_m")),
                Diffusivity::square_metres_per_second(row.n("alpha_m2_s")),
                (
                    Film::watts_per_square_metre_kelvin(row.n("h_W_m2K")),
                    Conductivity::watts_per_metre_kelvin(row.n("k_W_mK")),
                ),
                50,
            );
            let centre = can.unwrap().find_centre_temp(
                celsius(row.n("T0_C")),
                celsius(row.n("T1_C")),
                Span::seconds(row.n("t_s")),
            );
            ("finite cylinder", centre.unwrap().as_celsius())
        }
        "HC-03" => {
            let conducts = Conductivity::watts_per_metre_kelvin(row.n("k_W_mK"));
            let layer = ThickLayer {
                half_depth: Length::metres(row.n("thickness_m") / 2.0),
                diffusivity: Diffusivity::square_metres_per_second(
                    row.n("k_W_mK") / (row.n("rho") * row.n("cp_J_kgK")),
                ),
                conducts,
                film: Film::watts_per_square_metre_kelvin(row.n("h_W_m2K")),
            };
            let time = find_thick_cooling_time(
                &layer,
                (celsius(row.n("Ti_C")), celsius(row.n("T_centre_C"))),
                celsius(row.n("Tf_C")),
            );
            ("cooling of thick food", time.unwrap().as_hours())
        }
        "HC-04" => {
            let half = Length::metres(row.n("half_thickness_m"));
            let spreads =
                Diffusivity::square_metres_per_second(row.n("k_W_mK") / (row.n("rho") * row.n("cp_J_kgK")));
            let biot = Biot::of(
                Film::watts_per_square_metre_kelvin(row.n("h_W_m2K")),
                half,
                Conductivity::watts_per_metre_kelvin(row.n("k_W_mK")),
            );
            let modes = Modes::find(Shape::Slab, biot.unwrap(), 50).unwrap();
            let place = row.n("x_from_insulated_face_m") / half.as_metres();
            let left = modes.at(Fourier::of(spreads, Span::seconds(row.n("t_s")), half), place);
            ("conduction series", row.n("T1_K") + left * (row.n("T0_K") - row.n("T1_K")))
        }
        "HC-05" => {
            let can = FiniteCylinder::new(
                Length::metres(row.n("radius_m")),
                Length::metres(2.0 * row.n("half_height_m")),
                Diffusivity::square_metres_per_second(row.n("alpha_m2_s")),
                (
                    Film::watts_per_square_metre_kelvin(row.n("h_W_m2K")),
                    Conductivity::watts_per_metre_kelvin(row.n("k_W_mK")),
                ),
                50,
            )
            .unwrap();
            let time = Span::seconds(row.n("t_s"));
            let left = if row.id.ends_with('a') { can.left_at_centre(time) } else { can.left_at_end(time) };
            ("finite cylinder", row.n("Tinf_C") + left * (row.n("Ti_C") - row.n("Tinf_C")))
        }
        _ => {
            let radius = Length::metres(row.n("radius_m"));
            let biot = Biot::of(
                Film::watts_per_square_metre_kelvin(row.n("h_W_m2K")),
                radius,
                Conductivity::watts_per_metre_kelvin(row.n("k_W_mK")),
            );
            let modes = Modes::find(Shape::Sphere, biot.unwrap(), 50).unwrap();
            let spreads = Diffusivity::square_metres_per_second(row.n("alpha_m2_s"));
            let left = (row.n("T_centre_C") - row.n("Tinf_C")) / (row.n("Ti_C") - row.n("Tinf_C"));
            let minutes = bisect(0.5, 120.0, |minutes| {
                modes.centre(Fourier::of(spreads, Span::minutes(minutes), radius)) - left
            });
            ("conduction series", minutes)
        }
    }
}

/// The zero of a falling or rising function.
pub(crate) fn bisect(mut low: f64, mut high: f64, function: impl Fn(f64) -> f64) -> f64 {
    let rises = function(high) > function(low);
    for _ in 0..200 {
        let middle = (low + high) / 2.0;
        if (function(middle) > 0.0) == rises { high = middle } else { low = middle }
    }
    (low + high) / 2.0
}

fn altitude(row: &Row, stem: &str) -> Told {
    match stem {
        "AL-01" => (
            "standard atmosphere",
            find_air_pressure(Length::metres(row.n("altitude_m"))).unwrap().as_pascals(),
        ),
        "AL-02" => {
            let under = AirPressure::pascals(row.n("p_MPa") * 1e6);
            ("boiling temperature of water", find_boiling_temp(under).unwrap().as_kelvins())
        }
        "AL-03" => {
            let at = Temp::kelvins(row.n("T_K"));
            ("boiling pressure of water", find_boiling_pressure(at).unwrap().as_pascals() / 1e6)
        }
        "AL-04" => {
            // The printed table is of an isothermal atmosphere: its pressure, our boiling point.
            let metres = Length::feet(row.n("altitude_ft")).as_metres();
            let air = AirPressure::pascals(row.n("p0_Pa") * libm::exp(-row.n("a_per_m") * metres));
            ("boiling temperature of water", find_boiling_temp(air).unwrap().as_fahrenheit())
        }
        _ => {
            let height = Length::feet(row.n("altitude_ft"));
            ("boiling point by altitude", find_boiling_point(height).unwrap().as_fahrenheit())
        }
    }
}

fn freezing(row: &Row, stem: &str) -> Told {
    match stem {
        "FZ-01" | "FZ-02" | "FZ-03" => {
            let latent = match stem {
                "FZ-03" => row.n("L_J_kg"),
                _ => row.n("L_water_J_kg") * row.n("water_fraction"),
            };
            let temp = |name: &str| {
                if stem == "FZ-01" {
                    Temp::kelvins(row.n(&format!("{name}_K")))
                } else {
                    celsius(row.n(&format!("{name}_C")))
                }
            };
            let (shape, size) = if stem == "FZ-01" {
                (FrozenShape::Slab, "thickness_m")
            } else {
                (FrozenShape::Sphere, "diameter_m")
            };
            let package = Package {
                shape,
                thickness: Length::metres(row.n(size)),
                density: Density::kilograms_per_cubic_metre(row.n("rho")),
                conducts: Conductivity::watts_per_metre_kelvin(row.n("k_W_mK")),
                film: Film::watts_per_square_metre_kelvin(row.n("h_W_m2K")),
                air: temp("Ta"),
            };
            let time = find_plank_time(&package, SpecificEnergy::joules_per_kilogram(latent), temp("Tf"));
            ("Plank's freezing time", time.unwrap().as_hours())
        }
        "FZ-04" => {
            // The three parts of the load of one kilogram, each over one kelvin.
            let food = Freezes {
                at: celsius(0.0),
                above: SpecificHeat::joules_per_kilogram_kelvin(row.n("dH_above_J_kg")),
                below: SpecificHeat::joules_per_kilogram_kelvin(row.n("dH_below_J_kg")),
                latent: SpecificEnergy::joules_per_kilogram(row.n("L_J_kg")),
            };
            let load = find_freezing_load(&food, Mass::kilograms(1.0), celsius(1.0), celsius(-1.0));
            ("freezing load", load.unwrap().as_joules())
        }
        "FZ-05" => {
            let water = row.n("water_fraction");
            let mix = |solid: f64, wet: f64| {
                SpecificHeat::kilojoules_per_kilogram_kelvin(water * wet + (1.0 - water) * solid)
            };
            let food = Freezes {
                at: celsius(row.n("Tf_C")),
                above: mix(row.n("cp_solid_fresh"), row.n("cp_water")),
                below: mix(row.n("cp_solid_frozen"), row.n("cp_ice")),
                latent: SpecificEnergy::kilojoules_per_kilogram(row.n("L_kJ_kg") * water),
            };
            let load = find_freezing_load(
                &food,
                Mass::kilograms(row.n("mass_kg")),
                celsius(row.n("T1_C")),
                celsius(row.n("T2_C")),
            );
            ("freezing load", load.unwrap().as_kilojoules() / row.n("time_s") / row.n("COP"))
        }
        _ => {
            let latent = find_latent_heat(Percent::of_hundred(row.n("water_pct"))).unwrap();
            ("latent heat of food", latent.as_kilojoules_per_kilogram())
        }
    }
}

fn air(row: &Row, stem: &str) -> Told {
    let sea = AirPressure::pascals(101_325.0);
    match stem {
        "DR-01" => {
            let kpa = |name: &str| AirPressure::kilopascals(row.n(name));
            let ratio = |name: &str| find_ratio_of_vapour(kpa(name), kpa("P_kPa")).unwrap().0;
            let value = match row.id.as_str() {
                "DR-01a" => ratio("p_kPa"),
                "DR-01b" => ratio("psat_kPa"),
                "DR-01c" => 100.0 * ratio("p_kPa") / ratio("psat_kPa"),
                _ => 100.0 * kpa("p_kPa").ratio_to(kpa("psat_kPa")),
            };
            ("moist air", value)
        }
        "DR-02" => {
            if row.id == "DR-02c" {
                let vapour = find_vapour_pressure(celsius(row.n("Tdew_C"))).unwrap();
                return ("moist air", find_ratio_of_vapour(vapour, sea).unwrap().0);
            }
            let temp = if row.id == "DR-02b" { celsius(row.n("T_C")) } else { celsius(20.0) };
            let air = MoistAir { temp, ratio: HumidityRatio(row.n("H")), pressure: sea };
            let value = if row.id == "DR-02a" {
                air.humid_heat().as_kilojoules_per_kilogram_kelvin()
            } else {
                air.volume().0
            };
            ("moist air", value)
        }
        "DR-03" => {
            let air =
                MoistAir { temp: celsius(row.n("Tdb_C")), ratio: HumidityRatio(row.n("H")), pressure: sea };
            let wet = air.wet_bulb().unwrap();
            if row.id == "DR-03a" {
                return ("wet bulb", wet.as_celsius());
            }
            ("wet bulb", find_ratio_of_vapour(find_vapour_pressure(wet).unwrap(), sea).unwrap().0)
        }
        "DR-04" | "DR-16" => {
            let air = MoistAir::of_wet_bulb(celsius(row.n("Tdb_C")), celsius(row.n("Twb_C")), sea).unwrap();
            let value = match row.id.as_str() {
                "DR-04" | "DR-16a" => air.ratio.0,
                "DR-16b" => air.dew_point().unwrap().as_celsius(),
                "DR-16c" => air.humidity().unwrap().as_fraction(),
                "DR-16d" => air.enthalpy().as_kilojoules_per_kilogram(),
                _ => air.volume().0,
            };
            ("moist air", value)
        }
        "DR-17" => ("vapour pressure", find_vapour_pressure(celsius(row.n("T_C"))).unwrap().as_pascals()),
        _ => {
            let vapour = find_vapour_pressure(celsius(row.n("T_C"))).unwrap();
            ("moist air", find_ratio_of_vapour(vapour, sea).unwrap().0)
        }
    }
}

fn drying(row: &Row, stem: &str) -> Told {
    let load = |dry: f64, surface: f64, rate: f64| DryingLoad {
        dry: Mass::kilograms(dry),
        surface: Area::square_metres(surface),
        wet_rate: WetRate(rate),
    };
    match stem {
        "DR-05" => {
            let load = load(row.n("Ls_per_A"), 1.0, row.n("Rc"));
            let time = find_wet_time(&load, DryBasis(row.n("X1")), DryBasis(row.n("X2")));
            ("drying while wet", time.unwrap().as_hours())
        }
        "DR-06" => {
            let (humidity, volume) = (row.n("H"), row.n("humid_volume"));
            let flow = AirFlow(row.n("v_m_s") * 3600.0 * (1.0 + humidity) / volume);
            let rate = find_wet_rate(
                find_tray_film(flow).unwrap(),
                celsius(row.n("Tdb_C")),
                celsius(row.n("Twb_C")),
                SpecificEnergy::kilojoules_per_kilogram(row.n("lambda_kJ_kg")),
            );
            ("rate of a wet tray", rate.unwrap().0 * row.n("A_m2"))
        }
        "DR-07" => {
            let load = load(row.n("Ls_kg"), row.n("A_m2"), row.n("Rc"));
            let critical = DryBasis(row.n("Xc"));
            let time = find_falling_time(&load, critical, (critical, DryBasis(row.n("X2"))), DryBasis(0.0));
            ("drying at a falling rate", time.unwrap().as_hours())
        }
        "DR-08" => {
            let time = find_slice_time(
                Diffusivity::square_metres_per_hour(row.n("D_m2_h")),
                Length::metres(row.n("thickness_m")),
                (DryBasis(row.n("Xt1")), DryBasis(row.n("Xt"))),
                DryBasis(row.n("Xe")),
            );
            ("drying of a slice", time.unwrap().as_hours())
        }
        "DR-09" => {
            let dryer = CounterflowDryer {
                dry: MassFlow::kilograms_per_hour(row.n("Ls_kg_h")),
                moisture: (DryBasis(row.n("X1")), DryBasis(row.n("X2"))),
                solid: (celsius(row.n("Ts1_C")), celsius(row.n("Ts2_C"))),
                air: (celsius(row.n("Tg_in_C")), celsius(row.n("Tg_out_C"))),
                humidity_in: HumidityRatio(row.n("H_in")),
                specific: SpecificHeat::kilojoules_per_kilogram_kelvin(row.n("cpS")),
            };
            ("counterflow dryer", dryer.find_air().unwrap().as_kilograms_per_hour())
        }
        "DR-10" => {
            // On 1000 kg of dried product.
            let [wet, dry] = ["water_in_wb", "water_out_wb"].map(|key| Percent::fraction(row.n(key)));
            let kept = find_dried_mass(Mass::kilograms(1000.0), wet, dry).unwrap();
            let feed = Mass::kilograms(1000.0) * Mass::kilograms(1000.0).ratio_to(kept);
            ("dried weight", find_water_to_dry(feed, wet, dry).unwrap().as_kilograms())
        }
        "DR-11" => {
            // The book counts its shares on the dry matter.
            let basis = |key: &str| DryBasis(row.n(key));
            let (critical, rest) = (basis("wc"), basis("we"));
            // Both dryings go at one rate of wet surface; the first gives it.
            let whole = |from: DryBasis, to: DryBasis| {
                let load = load(1.0, 1.0, 1.0);
                find_wet_time(&load, from, critical).unwrap()
                    + find_falling_time(&load, critical, (critical, to), rest).unwrap()
            };
            let first = whole(basis("w1"), basis("w2"));
            (
                "drying at a falling rate",
                row.n("t_ks") * whole(basis("new_w1"), basis("new_w2")).ratio_to(first),
            )
        }
        "DR-12" => {
            let [wet, dry] = ["water_wb_in", "water_wb_out"]
                .map(|key| DryBasis::of_wet(Percent::fraction(row.n(key))).unwrap());
            let load = load(1.0, row.n("area_m2_per_kg_dry"), row.n("rate_kg_m2s") * 3600.0);
            ("drying while wet", find_wet_time(&load, wet, dry).unwrap().as_seconds() / 1000.0)
        }
        "DR-13" => {
            let whole = row.n("water_kg") + row.n("dry_kg");
            let wet = Percent::fraction(row.n("water_kg") / whole);
            let ends =
                find_dried_mass(Mass::kilograms(whole), wet, Percent::fraction(row.n("final_wb"))).unwrap();
            ("dried weight", ends.as_kilograms() - row.n("dry_kg"))
        }
        "DR-14" => {
            let wet = DryBasis(row.n("moisture_db_pct") / 100.0).wet();
            ("wet and dry basis", row.n("mass_kg") * wet.as_fraction())
        }
        _ => {
            let food = Mass::grams(row.n("food_g"));
            let wet = Percent::of_hundred(row.n("water_pct"));
            let left = row.n("water_pct") * (1.0 - row.n("removed_pct_of_water") / 100.0);
            let end = Percent::fraction(left / (left + 100.0 - row.n("water_pct")));
            ("dried weight", find_water_to_dry(food, wet, end).unwrap().as_grams())
        }
    }
}

fn small_sums(row: &Row, stem: &str) -> Told {
    match stem {
        "AC-01" => (
            "titration",
            find_titrated_acid(&Titration {
                lye: Volume::millilitres(row.n("V_NaOH_mL")),
                normality: Normality(row.n("N")),
                sample: Volume::millilitres(row.n("sample_mL")),
                counted_as: TitratedAcid::Lactic,
            })
            .unwrap()
            .as_percent(),
        ),
        "AC-02" => {
            let titration = Titration {
                lye: Volume::millilitres(row.n("V_NaOH_mL")),
                normality: Normality(row.n("N")),
                sample: Volume::millilitres(row.n("sample_mL")),
                counted_as: TitratedAcid::Acetic,
            };
            ("titration", find_titrated_acid(&titration).unwrap().as_percent() * row.n("sample_mL"))
        }
        "AW-01" => {
            let salt = row.n("m_mol_kg") * 0.058_443;
            let percent = Percent::fraction(salt / (1.0 + salt));
            ("water activity of brine", find_brine_water_activity(percent).unwrap().0)
        }
        "AW-02" => {
            let share = Percent::fraction(row.n("mass_fraction"));
            ("Norrish's equation", find_water_activity(Solute::Sucrose, share).unwrap().0)
        }
        "SU-01" => {
            let part = |mass: f64, solids: f64| PanPart {
                mass: Mass::kilograms(mass),
                solids: Percent::of_hundred(solids),
            };
            let pan = [
                part(row.n("fruit_kg"), row.n("fruit_TSS_pct")),
                part(row.n("sugar_kg"), 100.0),
                part(row.n("pectin_kg"), 100.0),
                part(row.n("acid_kg"), 100.0),
            ];
            (
                "yield of a pan",
                find_jam_yield(&pan, Percent::of_hundred(row.n("final_Brix"))).unwrap().as_kilograms(),
            )
        }
        "SU-02" => {
            let [low, high, target] =
                ["low_pct", "high_pct", "target_pct"].map(|key| Percent::of_hundred(row.n(key)));
            let parts = blend(low, high, target, Mass::kilograms(1.0)).unwrap();
            ("blending", parts.weaker.ratio_to(parts.stronger))
        }
        "SU-03" => {
            let [low, high, target] =
                ["low_Brix", "high_Brix", "target_Brix"].map(|key| Percent::of_hundred(row.n(key)));
            let total = if row.id.ends_with('a') { row.n("total_kg") } else { 52.0 };
            let parts = blend(low, high, target, Mass::kilograms(total)).unwrap();
            let wanted = if row.id.ends_with('a') { parts.weaker } else { parts.stronger };
            ("blending", wanted.as_kilograms())
        }
        "SU-04" => {
            // 45 of fruit to 55 of sugar, boiled until a third of it is water.
            let pan = [
                PanPart { mass: Mass::kilograms(45.0), solids: Percent::fraction(row.n("fruit_solids")) },
                PanPart { mass: Mass::kilograms(55.0), solids: Percent::of_hundred(100.0) },
            ];
            let end = Percent::fraction(1.0 - row.n("residue_water_fraction"));
            ("yield of a pan", 45.0 / find_jam_yield(&pan, end).unwrap().as_kilograms())
        }
        "SU-05" => {
            let [start, end] = ["fresh_solids", "product_solids"].map(|key| Percent::fraction(row.n(key)));
            let fresh = find_mass_to_reduce(Mass::kilograms(row.n("product_kg")), start, end);
            ("boiling down", fresh.unwrap().as_kilograms())
        }
        "SU-06" => {
            let pan = [
                PanPart { mass: Mass::kilograms(45.0), solids: Percent::fraction(row.n("fruit_SS")) },
                PanPart { mass: Mass::kilograms(55.0), solids: Percent::of_hundred(100.0) },
            ];
            let yields = find_jam_yield(&pan, Percent::fraction(row.n("final_SS"))).unwrap().as_kilograms();
            let part = if row.id.ends_with('a') { 45.0 } else { 55.0 };
            ("yield of a pan", part * row.n("product_kg") / yields)
        }
        "SU-07" => {
            let [start, end] = ["solids_in_pct", "solids_out_pct"].map(|key| Percent::of_hundred(row.n(key)));
            let left = find_reduced_mass(Mass::kilograms(row.n("feed_kg")), start, end);
            ("boiling down", left.unwrap().as_kilograms())
        }
        "SA-01" => {
            ("salometer", read_salometer(SalometerDegrees(row.n("salinometer_deg"))).unwrap().as_percent())
        }
        "SA-02" => {
            let water = Density::kilograms_per_cubic_metre(998.2).mass_of(Volume::pints(row.n("water_pint")));
            let strength = find_brine_strength(Mass::pounds(row.n("salt_lb")), water);
            ("strength of a brine", strength.unwrap().as_percent())
        }
        "HS-01" => {
            // Air outside against what is left under the lid, both in centimetres of mercury.
            let [air, inside] = ["P_atm_cmHg", "P_headspace_cmHg"]
                .map(|key| AirPressure::millimetres_of_mercury(10.0 * row.n(key)));
            ("units of pressure", (air - inside).as_inches_of_mercury() * 2.54)
        }
        other => panic!("no model is asked for {other} ({})", row.id),
    }
}

/// Used by the anchors of acid: one acid at a strength in grams a decilitre.
pub(crate) fn ideal_ph_of_acetic(grams_per_100_ml: f64, pka: f64) -> f64 {
    let molar = Molar(grams_per_100_ml * 10.0 / 60.05);
    find_ideal_ph(&[(Acid::Acetic, molar)], Some(&[pka])).unwrap().0
}

/// A gauge pressure, so that the anchors need not know the unit.
pub(crate) fn psi(value: f64) -> Pressure {
    Pressure::psi(value)
}
