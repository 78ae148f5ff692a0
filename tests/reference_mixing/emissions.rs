//! VOC and HAP as applied.

use crate::support::covered::{self, same};
use crate::support::{base, near};
use crate::{density, parts, share, work};
use stepboard::quantity::{GramsALitre, Kilograms};
use stepboard::rules::mixing::{
    AddedThinner, Finishing, GRAMS_A_LITRE_PER_POUND_A_GALLON, HapVerdict, Litre, Makeup, VocChange,
    VocFigure, average, change_by_thinning, figure_for_limit, thinner_of, voc_of_coating, voc_of_material,
    voc_of_solids, within_limit,
};
use stepboard::rules::sheet::Setting;
use stepboard::rules::term::Term;
/// The lacquer of the worked values: 0.920 kg/L, 22 % solids, 15 % acetone, no water.
fn lacquer() -> Litre {
    let makeup =
        Makeup { density: density(0.920), solids: share(0.22), water: share(0.0), exempt: share(0.15) };
    makeup.litre().expect("shares of a whole")
}

/// Density of acetone, kg/L: the worked values use it.
const ACETONE: f64 = 0.791;

fn of_coating(litre: Litre) -> f64 {
    voc_of_coating(litre, Some(density(ACETONE))).expect("all is known").answer.get()
}

fn all_voc(at: f64) -> Litre {
    thinner_of(density(at), share(0.0), share(0.0)).litre().expect("all VOC")
}

fn acetone() -> Litre {
    thinner_of(density(ACETONE), share(1.0), share(0.0)).litre().expect("all exempt")
}

/// Worked values (mass balance and metric equation of COMAR 26.11.19.02): 579.6 g/L of material, 702.1 of coating; thinned
/// 4:1 with an all-VOC thinner of 0.850 kg/L 736.5; with acetone 702.1, unchanged.
#[test]
fn voc_as_applied_meets_the_worked_values() {
    near(voc_of_material(lacquer()).answer.get(), 579.6, 0.1, "of material");
    near(of_coating(lacquer()), 702.1, 0.5, "of coating");
    let thinned = |thinner| of_coating(lacquer().thinned(thinner, parts(4.0, 1.0)));
    near(thinned(all_voc(0.850)), 736.5, 0.5, "thinned with VOC");
    near(thinned(acetone()), 702.1, 0.5, "thinned with acetone");
    near(thinned(acetone()), of_coating(lacquer()), 1e-9, "exempt thinner changes nothing");
    let plain =
        voc_of_coating(all_voc(0.850), None).expect("no exempt solvent, so its density need not be known");
    near(plain.answer.get(), 850.0, 1e-9, "all VOC");
    covered::values("mixing", "COMAR 26.11.19.02, worked values");
}

/// The same through the calculator, and what is missing or contradicts itself.
#[test]
fn the_voc_calculator_meets_the_worked_values() {
    let can = [("density_kg_l", 0.92), ("solids", 22.0), ("exempt", 15.0), ("exempt_density_kg_l", ACETONE)];
    let found = work("voc", &can, &[]).expect("told");
    near(found.numbers["voc_material"].value, 579.6, 0.1, "of material");
    near(found.numbers["voc_coating"].value, 702.1, 0.5, "of coating");
    assert_eq!(found.terms["limit_on"], VocFigure::Coating.slug());
    let mut thinned = can.to_vec();
    thinned.extend([("parts_base", 4.0), ("parts_thinner", 1.0), ("thinner_density_kg_l", 0.85)]);
    near(work("voc", &thinned, &[]).expect("told").numbers["voc_coating"].value, 736.5, 0.5, "thinned");
    thinned.truncate(6);
    assert_eq!(work("voc", &thinned, &[]).expect_err("no density").missing, ["thinner_density_kg_l"]);
    assert_eq!(work("voc", &can[..3], &[]).expect_err("no density").missing, ["exempt_density_kg_l"]);
    let over = [("density_kg_l", 0.92), ("solids", 90.0), ("water", 20.0)];
    assert!(work("voc", &over, &[]).expect_err("over the whole").contradicting);
    covered::values("mixing", "COMAR 26.11.19.02, worked values");
}

/// 30 TAC 115.423(1), worked value: 5.5 lb of VOC a gallon of coating is 21.76 lb a gallon of solids; at 7.36 lb a gallon
/// nothing but solvent is left.
#[test]
fn voc_of_coating_becomes_voc_of_solids() {
    let pounds = |value: f64| GramsALitre::new(value * GRAMS_A_LITRE_PER_POUND_A_GALLON).expect("in range");
    let solids = voc_of_solids(pounds(5.5)).expect("some solids").answer.get();
    near(solids / GRAMS_A_LITRE_PER_POUND_A_GALLON, 21.76, 0.02, "pounds a gallon of solids");
    assert!(voc_of_solids(pounds(7.36)).is_err());
    covered::values("mixing", "30 TAC 115.423(1), worked value");
}

/// Air district, VOC Calculations: under one pound of solids a gallon (119.8 g/L) VOC of material is used.
#[test]
fn low_solids_are_held_to_the_figure_of_material() {
    let at = |solids: f64| {
        let makeup =
            Makeup { density: density(1.0), solids: share(solids), water: share(0.0), exempt: share(0.0) };
        figure_for_limit(makeup.litre().expect("shares")).answer
    };
    same!(at(0.1197), VocFigure::Material);
    same!(at(0.1199), VocFigure::Coating);
    covered::values("mixing", "air district, VOC calculations");
}

/// EPA memorandum of 29 June 1983: exempt solvent is taken off like water. COMAR equation, worked by hand: with acetone or
/// water the coating figure stays and the material figure falls; with a thinner of more VOC than the coating both rise.
#[test]
fn an_exempt_thinner_leaves_the_coating_figure_and_lowers_the_material_figure() {
    let change = |figure, thinner| {
        change_by_thinning(figure, lacquer(), thinner, parts(4.0, 1.0), Some(density(ACETONE)))
            .expect("all is known")
            .answer
    };
    let water = thinner_of(density(0.995), share(0.0), share(1.0)).litre().expect("water");
    for thinner in [acetone(), water] {
        same!(change(VocFigure::Coating, thinner), VocChange::Stays);
        same!(change(VocFigure::Material, thinner), VocChange::Falls);
    }
    same!(change(VocFigure::Coating, all_voc(0.85)), VocChange::Rises);
    same!(change(VocFigure::Material, all_voc(0.85)), VocChange::Rises);
    same!(change(VocFigure::Coating, all_voc(0.65)), VocChange::Falls);
    covered::values("mixing", "EPA memorandum of 29 June 1983");
}

/// 40 CFR 63.804(a)(1), equation 1, worked value: 100 kg of sealer solids at 0.9, 150 of topcoat at 0.7, 10 of stain at
/// 1.4 and 40 kg of thinner at 8 % average 0.8162, which meets 1.0 (existing source); 0.8 (new source, from memory) is
/// only a sheet's choice.
#[test]
fn the_hap_average_meets_the_worked_value() {
    let kilograms = |value| Kilograms::new(value).expect("a mass");
    let used = |solids, vhap| Finishing { solids: kilograms(solids), vhap };
    let materials = [used(100.0, 0.9), used(150.0, 0.7), used(10.0, 1.4)];
    let thinner = AddedThinner { mass: kilograms(40.0), vhap: share(0.08) };
    let found = average(&materials, &[thinner]).expect("solids").answer;
    near(found, 0.8162, 0.000_5, "E");
    assert_eq!(within_limit(found, &base()).answer, HapVerdict::Within);
    let strict = base().with(Setting::HapMost, 0.8).expect("in range");
    assert_eq!(within_limit(found, &strict).answer, HapVerdict::Over);
    assert_eq!(within_limit(1.0, &base()).answer, HapVerdict::Within, "no greater than 1.0");
    assert_eq!(within_limit(1.000_1, &base()).answer, HapVerdict::Over);
    assert!(average(&[], &[thinner]).is_err(), "no solids, no average");
    let told = [
        ("sealer_solids_kg", 100.0),
        ("sealer_vhap", 0.9),
        ("topcoat_solids_kg", 150.0),
        ("topcoat_vhap", 0.7),
        ("stain_solids_kg", 10.0),
        ("stain_vhap", 1.4),
        ("thinner_kg", 40.0),
        ("thinner_vhap", 8.0),
    ];
    let outcome = work("hap", &told, &[]).expect("told");
    near(outcome.numbers["value"].value, 0.8162, 0.000_5, "E by the calculator");
    assert_eq!(outcome.terms["verdict"], "hap-within");
    assert_eq!(work("hap", &told[..7], &[]).expect_err("half told").missing, ["thinner_vhap"]);
    covered::values("mixing", "40 CFR 63.804(a)(1), worked value");
}

/// The sheet's ceiling is the federal limit: no shop may set more than 1.0.
#[test]
fn no_sheet_may_raise_the_hap_limit() {
    assert!(base().with(Setting::HapMost, 1.1).is_err());
}
