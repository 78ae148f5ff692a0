//! VOC and HAP as applied.

use crate::support::covered::{self, same};
use crate::support::table::{Row, table};
use crate::support::{base, near};
use crate::{EXACT, density, parts, share, work};
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

/// Rows of voc.csv that no rule holds, and why: limits and dates of a regulation that a shop reads for itself.
const NO_RULE: [(&str, &str); 10] = [
    ("voc_def", "the definition of VOC is told by the data sheet"),
    ("voc_tbac", "which solvents are exempt is told by the data sheet"),
    ("jj_app", "whether a shop is a major source is decided by its permit"),
    ("jj_date", "new or existing is decided by the permit"),
    ("jj_ec", "the route of compliant coatings; the rule here is the average"),
    ("jj_t", "thinner on the route of compliant coatings"),
    ("jj_t3", "thinner on the route of compliant coatings"),
    ("jj_fa", "contact adhesives are no finishing material"),
    ("jj_ca", "contact adhesives are no finishing material"),
    ("r59_scope", "the rule for architectural coatings reaches no shop"),
];

/// The number before or behind a word of a cell: `D = 7.36 lb/gal`.
fn figure(row: &Row, from: &str, to: &str) -> f64 {
    let cell = row.text("value").split_once(from).expect("stands there").1;
    cell.split_once(to).map_or(cell, |(first, _)| first).parse().expect("a number")
}

/// voc.csv: COMAR 26.11.19.02, 30 TAC 115.423(1), an air district's guidance, 40 CFR 63.804. Rows from memory are no check.
#[test]
fn the_published_figures_of_voc_and_hap_are_kept() {
    let (mut met, mut left_out, mut remembered) = (0, 0, 0);
    for row in table("voc.csv") {
        let id = row.text("id");
        if row.text("provenance") == "memory" {
            remembered += 1;
            continue;
        }
        if NO_RULE.iter().any(|(named, _)| *named == id) {
            row.left_out("mixing");
            left_out += 1;
            continue;
        }
        let with_water = Litre { solids: 0.2, voc: 0.3, water: 0.25, exempt: 0.1 };
        match id {
            // Exempt solvent and water of the same volume are taken off alike.
            "voc_sub" => {
                let [water, exempt] = [(0.199, 0.0), (0.0, 0.2 * ACETONE)]
                    .map(|(water, exempt)| of_coating(Litre { water, exempt, ..with_water }));
                near(exempt, water, EXACT * water, id);
            }
            "voc_form" => {
                let left = 1.0 - with_water.water / figure(&row, "B/", " ") - with_water.exempt / ACETONE;
                near(of_coating(with_water), with_water.voc / left * 1_000.0, EXACT * 1e3, id);
            }
            "voc_two" => {
                for litre in
                    [lacquer(), with_water, all_voc(0.85), acetone().thinned(lacquer(), parts(1.0, 3.0))]
                {
                    let (material, coating) = (voc_of_material(litre).answer.get(), of_coating(litre));
                    same!(coating >= material, true);
                    same!(coating > material, litre.water + litre.exempt > 0.0);
                }
            }
            "voc_low" => {
                let threshold = row.number("value") * GRAMS_A_LITRE_PER_POUND_A_GALLON / 1_000.0;
                let at = |solids| figure_for_limit(Litre { solids, ..with_water }).answer;
                same!(at(threshold - 0.0001), VocFigure::Material);
                same!(at(threshold + 0.0001), VocFigure::Coating);
            }
            "voc_sol" => {
                let solvent = figure(&row, "D = ", " ");
                let of_solids = |pounds: f64| {
                    let grams = GramsALitre::new(pounds * GRAMS_A_LITRE_PER_POUND_A_GALLON);
                    voc_of_solids(grams.expect("in range"))
                };
                for coating in [1.0, 3.5, 5.5] {
                    let found = of_solids(coating).expect("some solids").answer.get();
                    let wanted = coating / (1.0 - coating / solvent);
                    near(found / GRAMS_A_LITRE_PER_POUND_A_GALLON, wanted, EXACT * wanted, id);
                }
                same!(of_solids(solvent).is_err(), true);
            }
            "jj_e" => {
                let limit = row.number("value");
                near(base().get(Setting::HapMost), limit, EXACT, id);
                same!(within_limit(limit, &base()).answer, HapVerdict::Within);
                same!(within_limit(limit + 0.0001, &base()).answer, HapVerdict::Over);
                // The sheet's ceiling is the federal limit: a shop may only be stricter.
                same!(base().with(Setting::HapMost, limit + 0.1).is_err(), true);
            }
            // The equation with figures of our own: (10 x 0.5 + 30 x 1.2 + 0.1 x 20) / 40.
            "jj_avg" => {
                let kilograms = |value| Kilograms::new(value).expect("a mass");
                let used = [(10.0, 0.5), (30.0, 1.2)]
                    .map(|(solids, vhap)| Finishing { solids: kilograms(solids), vhap });
                let added = AddedThinner { mass: kilograms(20.0), vhap: share(0.1) };
                near(average(&used, &[added]).expect("solids").answer, 1.075, EXACT, id);
            }
            other => panic!("{other} is checked nowhere"),
        }
        row.checked("mixing");
        met += 1;
    }
    assert_eq!((met, left_out, remembered), (7, 10, 5), "every row");
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
