//! What is no number passes no model, in whatever place it stands; nor does an input far outside the range.

use foodsci::acid::{Acid, AcidGiven, Buffer, Molar, Ph, Pickle, Solution, Vegetable};
use foodsci::air::MoistAir;
use foodsci::canner::Burner;
use foodsci::drying::{DryBasis, DryingLoad, WetRate};
use foodsci::freezing::{Freezes, FrozenShape, Outage, Package};
use foodsci::headspace::{ClosedJar, Contents};
use foodsci::lethality::{BallCooling, Lethal};
use foodsci::pot::Boils;
use foodsci::salt::SalometerDegrees;
use foodsci::sugar::PanPart;
use foodsci::vinegar::PickleMix;
use foodsci::water_activity::Solute;
use foodsci::{
    acid, air, atmosphere, brine, canner, cooling, drying, ferment, freezing, headspace, lethality, pot,
    salt, steam, sugar, syrup, vinegar, water_activity,
};
use measure::{
    AirPressure, Area, Conductivity, Density, Diffusivity, Film, HeatCapacity, HeatLoss, Length, Mass,
    Percent, Power, Pressure, Span, SpecificEnergy, SpecificHeat, Temp, TempDifference, Volume,
};

/// A model with the names of its inputs; it is handed one figure for each and answers whether it gave an answer.
struct Asked {
    name: &'static str,
    sound: &'static [f64],
    answers: fn(&[f64]) -> bool,
}

fn kg(value: f64) -> Mass {
    Mass::kilograms(value)
}

fn pct(value: f64) -> Percent {
    Percent::of_hundred(value)
}

fn c(value: f64) -> Temp {
    Temp::celsius(value)
}

fn food(at: f64) -> Freezes {
    Freezes {
        at: c(at),
        above: SpecificHeat::kilojoules_per_kilogram_kelvin(3.9),
        below: SpecificHeat::kilojoules_per_kilogram_kelvin(1.9),
        latent: SpecificEnergy::kilojoules_per_kilogram(300.0),
    }
}

fn package(v: &[f64]) -> Package {
    Package {
        shape: FrozenShape::Slab,
        thickness: Length::metres(v[0]),
        density: Density::kilograms_per_cubic_metre(v[1]),
        conducts: Conductivity::watts_per_metre_kelvin(v[2]),
        film: Film::watts_per_square_metre_kelvin(v[3]),
        air: c(v[4]),
    }
}

fn mix(v: &[f64]) -> PickleMix {
    PickleMix {
        vinegar: kg(v[0]),
        strength: pct(v[1]),
        water: kg(v[2]),
        vegetables: kg(v[3]),
        vegetable_water: pct(v[4]),
    }
}

fn burner(v: &[f64]) -> Burner {
    Burner {
        power: Power::watts(v[0]),
        passed_on: pct(v[1]),
        loss: HeatLoss::watts_per_kelvin(v[2]),
        room: c(v[3]),
    }
}

const MODELS: &[Asked] = &[
    Asked {
        name: "boiling pressure",
        sound: &[90.0],
        answers: |v| steam::find_boiling_pressure(c(v[0])).is_ok(),
    },
    Asked {
        name: "boiling temperature",
        sound: &[1e5],
        answers: |v| steam::find_boiling_temp(AirPressure::pascals(v[0])).is_ok(),
    },
    Asked {
        name: "evaporation",
        sound: &[90.0],
        answers: |v| steam::find_heat_of_evaporation(c(v[0])).is_ok(),
    },
    Asked { name: "steam density", sound: &[90.0], answers: |v| steam::find_steam_density(c(v[0])).is_ok() },
    Asked {
        name: "boiling point",
        sound: &[500.0],
        answers: |v| atmosphere::find_boiling_point(Length::metres(v[0])).is_ok(),
    },
    Asked {
        name: "canner steam",
        sound: &[500.0, 11.0],
        answers: |v| atmosphere::find_canner_steam_temp(Length::metres(v[0]), Pressure::psi(v[1])).is_ok(),
    },
    Asked {
        name: "height",
        sound: &[95_000.0],
        answers: |v| atmosphere::find_height_of_pressure(AirPressure::pascals(v[0])).is_ok(),
    },
    Asked {
        name: "gel point",
        sound: &[500.0],
        answers: |v| atmosphere::find_gel_point(Length::metres(v[0])).is_ok(),
    },
    Asked { name: "net", sound: &[3.0, 1.0], answers: |v| salt::weigh_net(kg(v[0]), kg(v[1])).is_ok() },
    Asked {
        name: "ferment salt",
        sound: &[3.0, 2.0],
        answers: |v| salt::find_ferment_salt(kg(v[0]), pct(v[1])).is_ok(),
    },
    Asked {
        name: "brine",
        sound: &[0.1, 1.0],
        answers: |v| salt::find_brine_strength(kg(v[0]), kg(v[1])).is_ok(),
    },
    Asked {
        name: "resting salt",
        sound: &[1.0, 5.0, 1.0],
        answers: |v| salt::find_resting_salt(kg(v[0]), pct(v[1]), kg(v[2])).is_ok(),
    },
    Asked {
        name: "salt in water",
        sound: &[1.0, 5.0, 1.0, 95.0],
        answers: |v| salt::find_resting_salt_in_water(kg(v[0]), pct(v[1]), kg(v[2]), pct(v[3])).is_ok(),
    },
    Asked {
        name: "salometer",
        sound: &[40.0],
        answers: |v| salt::read_salometer(SalometerDegrees(v[0])).is_ok(),
    },
    Asked {
        name: "salting time",
        sound: &[1e-9, 0.01, 90.0],
        answers: |v| {
            let spreads = Diffusivity::square_metres_per_second(v[0]);
            salt::find_salting_time(spreads, Length::metres(v[1]), pct(v[2])).is_ok()
        },
    },
    Asked { name: "brine density", sound: &[5.0], answers: |v| brine::find_brine_density(pct(v[0])).is_ok() },
    Asked {
        name: "brine ice",
        sound: &[5.0],
        answers: |v| brine::find_brine_freezing_point(pct(v[0])).is_ok(),
    },
    Asked {
        name: "brine activity",
        sound: &[5.0],
        answers: |v| brine::find_brine_water_activity(pct(v[0])).is_ok(),
    },
    Asked {
        name: "vinegar",
        sound: &[1.0, 5.0, 1.0],
        answers: |v| vinegar::find_mixed_strength(kg(v[0]), pct(v[1]), kg(v[2])).is_ok(),
    },
    Asked {
        name: "resting acid",
        sound: &[1.0, 5.0, 1.0, 2.0, 95.0],
        answers: |v| vinegar::find_resting_acid(&mix(v)).is_ok(),
    },
    Asked {
        name: "blend",
        sound: &[10.0, 60.0, 40.0, 1.0],
        answers: |v| sugar::blend(pct(v[0]), pct(v[1]), pct(v[2]), kg(v[3])).is_ok(),
    },
    Asked {
        name: "reduced",
        sound: &[1.0, 10.0, 40.0],
        answers: |v| sugar::find_reduced_mass(kg(v[0]), pct(v[1]), pct(v[2])).is_ok(),
    },
    Asked {
        name: "jam",
        sound: &[1.0, 10.0, 65.0],
        answers: |v| {
            let pan = [
                PanPart { mass: kg(v[0]), solids: pct(v[1]) },
                PanPart { mass: kg(1.0), solids: pct(100.0) },
            ];
            sugar::find_jam_yield(&pan, pct(v[2])).is_ok()
        },
    },
    Asked {
        name: "syrup density",
        sound: &[40.0],
        answers: |v| syrup::find_syrup_density(pct(v[0])).is_ok(),
    },
    Asked {
        name: "boiling rise",
        sound: &[40.0, 100.0],
        answers: |v| syrup::find_boiling_rise(pct(v[0]), Length::metres(v[1])).is_ok(),
    },
    Asked { name: "saturation", sound: &[20.0], answers: |v| syrup::find_saturation(c(v[0])).is_ok() },
    Asked {
        name: "supersaturation",
        sound: &[70.0, 20.0],
        answers: |v| syrup::find_supersaturation(pct(v[0]), c(v[1])).is_ok(),
    },
    Asked {
        name: "water activity",
        sound: &[40.0],
        answers: |v| water_activity::find_water_activity(Solute::Sucrose, pct(v[0])).is_ok(),
    },
    Asked {
        name: "jam activity",
        sound: &[1.0, 10.0, 1.0, 1.8],
        answers: |v| water_activity::find_jam_activity(kg(v[0]), pct(v[1]), kg(v[2]), kg(v[3])).is_ok(),
    },
    Asked {
        name: "water density",
        sound: &[20.0],
        answers: |v| headspace::find_water_density(c(v[0])).is_ok(),
    },
    Asked {
        name: "vacuum",
        sound: &[85.0, 20.0, 1e5, 10.0],
        answers: |v| {
            let jar = ClosedJar {
                closed_at: c(v[0]),
                cold: c(v[1]),
                air: AirPressure::pascals(v[2]),
                headspace: pct(v[3]),
            };
            headspace::find_lid_vacuum(&jar, Contents::ShrinkLikeWater).is_ok()
        },
    },
    Asked {
        name: "frozen jar",
        sound: &[473.0, 400.0, 95.0],
        answers: |v| {
            let [jar, contents] = [v[0], v[1]].map(Volume::millilitres);
            headspace::find_frozen_fill(jar, contents, pct(v[2])).is_ok()
        },
    },
    Asked { name: "lethal rate", sound: &[90.0], answers: |v| Lethal::SPORES.rate(c(v[0])).is_ok() },
    Asked {
        name: "Ball",
        sound: &[1.0, 10.0, 100.0, 1.0],
        answers: |v| {
            let [g, z, drop] = [v[0], v[1], v[2]].map(TempDifference::kelvins);
            lethality::find_ball_ratio(g, z, &BallCooling { drop, slope_ratio: v[3] }).is_ok()
        },
    },
    Asked {
        name: "heating time",
        sound: &[2000.0, 70.0, 5.0, 20.0, 60.0, 100.0],
        answers: |v| {
            let capacity = HeatCapacity::joules_per_kelvin(60_000.0);
            canner::find_heating_time(capacity, &burner(v), c(v[4]), c(v[5])).is_ok()
        },
    },
    Asked {
        name: "specific heat",
        sound: &[90.0],
        answers: |v| canner::find_specific_heat(pct(v[0])).is_ok(),
    },
    Asked {
        name: "boil-down",
        sound: &[2.0, 1500.0, 100.0],
        answers: |v| pot::find_boil_down_time(kg(v[0]), Power::watts(v[1]), Length::metres(v[2])).is_ok(),
    },
    Asked {
        name: "boil room",
        sound: &[3.0, 8.0],
        answers: |v| {
            pot::find_boil_room(Volume::litres(v[0]), Volume::litres(v[1]), Boils::FullSugar).is_ok()
        },
    },
    Asked {
        name: "stirred cooling",
        sound: &[40.0, 57.0, 21.0, 4.0],
        answers: |v| {
            let capacity = HeatCapacity::joules_per_kelvin(30_000.0);
            let loss = HeatLoss::watts_per_kelvin(v[0]);
            cooling::find_stirred_cooling_time(capacity, loss, (c(v[1]), c(v[2])), c(v[3])).is_ok()
        },
    },
    Asked { name: "latent heat", sound: &[90.0], answers: |v| freezing::find_latent_heat(pct(v[0])).is_ok() },
    Asked {
        name: "freezing load",
        sound: &[1.0, 20.0, -18.0],
        answers: |v| freezing::find_freezing_load(&food(-1.0), kg(v[0]), c(v[1]), c(v[2])).is_ok(),
    },
    Asked {
        name: "Pham",
        sound: &[0.04, 600.0, 1.4, 8.0, -20.0, 10.0, -18.0],
        answers: |v| freezing::find_pham_time(&package(v), &food(-1.0), c(v[5]), c(v[6])).is_ok(),
    },
    Asked {
        name: "outage",
        sound: &[40.0, 1.0, 22.0, -18.0, -5.0],
        answers: |v| {
            let outage = Outage {
                load: kg(v[0]),
                food: food(-1.0),
                leak: HeatLoss::watts_per_kelvin(v[1]),
                room: c(v[2]),
            };
            freezing::find_outage_time(&outage, c(v[3]), c(v[4])).is_ok()
        },
    },
    Asked {
        name: "unfrozen",
        sound: &[-1.0, -10.0],
        answers: |v| freezing::find_unfrozen_share(c(v[0]), c(v[1])).is_ok(),
    },
    Asked {
        name: "moist air",
        sound: &[25.0, 60.0, 1e5],
        answers: |v| MoistAir::of_humidity(c(v[0]), pct(v[1]), AirPressure::pascals(v[2])).is_ok(),
    },
    Asked {
        name: "wet bulb",
        sound: &[25.0, 18.0, 1e5],
        answers: |v| MoistAir::of_wet_bulb(c(v[0]), c(v[1]), AirPressure::pascals(v[2])).is_ok(),
    },
    Asked { name: "vapour", sound: &[25.0], answers: |v| air::find_vapour_pressure(c(v[0])).is_ok() },
    Asked {
        name: "dried mass",
        sound: &[1.0, 90.0, 10.0],
        answers: |v| drying::find_dried_mass(kg(v[0]), pct(v[1]), pct(v[2])).is_ok(),
    },
    Asked {
        name: "moisture now",
        sound: &[1.0, 90.0, 0.3],
        answers: |v| drying::find_moisture_now(kg(v[0]), pct(v[1]), kg(v[2])).is_ok(),
    },
    Asked {
        name: "wet drying",
        sound: &[1.0, 1.0, 1.0, 3.0, 1.0],
        answers: |v| {
            let load =
                DryingLoad { dry: kg(v[0]), surface: Area::square_metres(v[1]), wet_rate: WetRate(v[2]) };
            drying::find_wet_time(&load, DryBasis(v[3]), DryBasis(v[4])).is_ok()
        },
    },
    Asked {
        name: "slice",
        sound: &[5e-10, 0.006, 9.0, 0.2, 0.05],
        answers: |v| {
            let spreads = Diffusivity::square_metres_per_second(v[0]);
            let moistures = (DryBasis(v[2]), DryBasis(v[3]));
            drying::find_slice_time(spreads, Length::metres(v[1]), moistures, DryBasis(v[4])).is_ok()
        },
    },
    Asked {
        name: "dryer",
        sound: &[500.0],
        answers: |v| drying::find_dryer_bound(Power::watts(v[0])).is_ok(),
    },
    Asked {
        name: "pH",
        sound: &[0.2, 0.01, 0.1],
        answers: |v| {
            let acids = vec![(Acid::Acetic, Molar(v[0]))];
            acid::find_ph(&Solution { acids, base: Some(Molar(v[1])), salt: Some(Molar(v[2])) }).is_ok()
        },
    },
    Asked {
        name: "pH range",
        sound: &[0.05, 1.0, 0.02, 1.0, 95.0, 10.0, 20.0],
        answers: |v| {
            let vegetable =
                Vegetable { mass: kg(v[3]), water: pct(v[4]), buffer: (Buffer(v[5]), Buffer(v[6])) };
            let pickle = Pickle {
                acids: vec![AcidGiven { acid: Acid::Acetic, mass: kg(v[0]) }],
                water: kg(v[1]),
                salt: kg(v[2]),
                vegetables: vec![vegetable],
            };
            acid::find_ph_range(&pickle).is_ok()
        },
    },
    Asked {
        name: "undissociated",
        sound: &[4.76, 4.0],
        answers: |v| acid::find_undissociated(v[0], Ph(v[1])).is_ok(),
    },
    Asked {
        name: "growth",
        sound: &[20.0],
        answers: |v| ferment::find_growth_rate(c(v[0]), &ferment::CardinalTemps::PLANTARUM).is_ok(),
    },
    Asked {
        name: "days to sour",
        sound: &[20.0, 2.25],
        answers: |v| ferment::find_days_to_sour(c(v[0]), pct(v[1])).is_ok(),
    },
    Asked {
        name: "gas",
        sound: &[1.0, 4.0, 20.0, 1e5],
        answers: |v| {
            ferment::find_gas_range(kg(v[0]), pct(v[1]), c(v[2]), AirPressure::pascals(v[3])).is_ok()
        },
    },
    Asked {
        name: "closed jar",
        sound: &[1.0, 0.2],
        answers: |v| {
            let sea = AirPressure::pascals(101_325.0);
            ferment::find_closed_pressure(Volume::litres(v[0]), Volume::litres(v[1]), sea).is_ok()
        },
    },
    Asked {
        name: "jar history",
        sound: &[0.04, 0.11, 1.5e-7, 0.55, 80.0, 20.0, 90.0, 100.0, 260.0],
        answers: |v| {
            let jar = foodsci::jar::Jar {
                radius: Length::metres(v[0]),
                height: Length::metres(v[1]),
                diffusivity: Diffusivity::square_metres_per_second(v[2]),
                conducts: Conductivity::watts_per_metre_kelvin(v[3]),
                filled_at: c(v[4]),
            };
            let stage = foodsci::jar::Stage {
                lasts: Span::minutes(v[5]),
                from: c(v[6]),
                to: c(v[7]),
                film: Film::watts_per_square_metre_kelvin(v[8]),
            };
            foodsci::jar::trace_history(&jar, &[stage], 50).is_ok()
        },
    },
];

#[test]
fn sound_figures_are_answered() {
    for model in MODELS {
        assert!((model.answers)(model.sound), "{}", model.name);
    }
}

#[test]
fn what_is_no_number_passes_no_model_in_any_place() {
    let mut tried = 0;
    let mut taken = Vec::new();
    for model in MODELS {
        for at in 0..model.sound.len() {
            for spoiled in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
                let mut figures = model.sound.to_vec();
                figures[at] = spoiled;
                if (model.answers)(&figures) {
                    taken.push(format!("{} takes {spoiled} in place {at}", model.name));
                }
                tried += 1;
            }
        }
    }
    assert!(taken.is_empty(), "{}", taken.join("\n"));
    assert!(tried > 400, "{tried}");
}

#[test]
fn what_is_far_too_large_passes_no_model_either() {
    let mut taken = Vec::new();
    for model in MODELS {
        for at in 0..model.sound.len() {
            let mut figures = model.sound.to_vec();
            figures[at] = 1e12;
            if (model.answers)(&figures) {
                taken.push(format!("{} takes 1e12 in place {at}", model.name));
            }
        }
    }
    assert!(taken.is_empty(), "{}", taken.join("\n"));
}

#[test]
fn a_refusal_says_what_to_do() {
    let error = steam::find_boiling_pressure(c(-40.0)).unwrap_err();
    assert!(error.to_string().contains("hint: "), "{error}");
}
