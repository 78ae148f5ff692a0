//! Ratios, per cents, weights, washcoat, retarder, strainer.

use crate::support::covered::{self, same};
use crate::support::table::table;
use crate::support::{base, near};
use crate::{EXACT, ML_AN_OUNCE, PERCENT_TOLERANCE, density, fraction, ml, parts, share, work};
use stepboard::quantity::{Grams, Micrometres, Millilitres};
use stepboard::rules::mixing::{
    RetarderDose, Strained, StrainerMove, Thinning, Washcoat, by_parts, retarder_dose, retarder_most,
    strainer, thinned_solids, volume_of, washcoat, weight,
};
use stepboard::rules::sheet::Setting;
use stepboard::rules::term::Term;
/// mixing.csv: washcoat solids and shares of the mix, every row.
#[test]
fn the_published_thinnings_are_met() {
    for row in table("mixing.csv") {
        let thinning = parts(row.number("parts_material"), row.number("parts_thinner"));
        let found = match row.text("kind") {
            "solids" => thinned_solids(fraction(row.number("solids_pct")), thinning).answer.get(),
            _ => thinning.share().get(),
        };
        near(100.0 * found, row.number("expected_pct"), PERCENT_TOLERANCE, &format!("{row:?}"));
        row.checked("mixing");
    }
}

/// Published page on mixing ratios: 4:1:1 with 32 oz of base takes 8 and 8, 48 in all.
#[test]
fn a_three_part_mix_is_shared_out_by_volume() {
    let base = Millilitres::new(32.0 * ML_AN_OUNCE).expect("a volume");
    let mix = by_parts(base, &[4.0, 1.0, 1.0]).expect("in range");
    let ounces: Vec<f64> = mix.iter().map(|part| part.get() / ML_AN_OUNCE).collect();
    for (found, wanted) in ounces.iter().zip([32.0, 8.0, 8.0]) {
        near(*found, wanted, 1e-9, "a part of 4:1:1");
    }
    near(ounces.iter().sum(), 48.0, 1e-9, "the whole of 4:1:1");
    covered::values("mixing", "published page on mixing ratios");
}

/// Popular Woodworking no. 119 (Dec 2000) p. 15: a washcoat is about 3 to 7 % solids. Practitioners agree that a
/// 20 to 25 % sealer at 1:1 is too heavy; without the solids nothing is judged.
#[test]
fn half_and_half_is_too_heavy_and_no_ratio_is_judged_without_solids() {
    let sheet = base();
    for solids in [20.0, 22.0, 25.0] {
        let ruling = washcoat(Some(fraction(solids)), parts(1.0, 1.0), &sheet).expect("solids are told");
        same!(ruling.answer, Washcoat::TooHeavy, "{solids} % at 1:1");
    }
    let band = |solids, thinner| washcoat(Some(fraction(solids)), parts(1.0, thinner), &sheet);
    same!(band(25.0, 4.0).expect("told").answer, Washcoat::InBand);
    same!(band(25.0, 8.0).expect("told").answer, Washcoat::TooThin);
    same!(band(28.0, 3.0).expect("told").answer, Washcoat::InBand, "7 % is within 3 to 7 %");
    let untold = washcoat(None, parts(1.0, 5.0), &sheet).expect_err("no solids");
    same!(untold.missing, ["volume_solids"]);
    covered::values("mixing", "Popular Woodworking no. 119");
}

/// Worked by hand at the base sheet's 10 %, a share of the whole mix: into 1000 mL go 111.1 mL, since they are 10 % of
/// the 1111.1 mL then in the cup; 1000 mL in all may hold 100 mL.
#[test]
fn retarder_is_counted_in_the_mix_that_holds_it() {
    let volume = |value| Millilitres::new(value).expect("a volume");
    let most = |whole| retarder_most(volume(whole), &base()).answer.get();
    near(most(1000.0), 100.0, 1e-9, "1000 mL in all");
    near(most(1000.0 / 0.9), 111.1, 0.05, "into 1000 mL");
    let dose = |retarder, whole| retarder_dose(volume(retarder), volume(whole), &base()).answer;
    assert_eq!(dose(111.0, 1111.0), RetarderDose::Within);
    assert_eq!(dose(111.2, 1111.2), RetarderDose::Over);
}

/// The table of readings of a ratio (computed): ratio, per cent thinned, thinner in the mix, solids left.
#[test]
fn a_ratio_is_read_four_ways() {
    for (material, percent, in_mix, left) in [
        (1.0, 100.0, 50.0, 0.500),
        (2.0, 50.0, 33.3, 0.667),
        (3.0, 33.3, 25.0, 0.750),
        (4.0, 25.0, 20.0, 0.800),
        (10.0, 10.0, 9.1, 0.909),
    ] {
        let thinning = parts(material, 1.0);
        near(thinning.percent(), percent, PERCENT_TOLERANCE, "per cent thinned");
        near(100.0 * thinning.share().get(), in_mix, PERCENT_TOLERANCE, "thinner in the mix");
        near(thinned_solids(share(1.0), thinning).answer.get(), left, 0.000_5, "solids left");
    }
    let half = Thinning::of_share(share(0.5)).expect("half");
    near(half.ratio(), 1.0, EXACT, "50 % thinner in the mix is 1:1 and not 2:1");
    covered::values("mixing", "readings of a ratio, computed");
}

/// Worked example (computed; densities generic): 500 mL of lacquer at 0.95 and 250 mL of thinner at 0.87 weigh 475.0 and
/// 217.5 g; 2:1 read as a ratio by weight would be 237.5 g, 273.0 mL of thinner, 9 % too much.
#[test]
fn a_ratio_by_volume_is_another_one_by_weight() {
    near(weight(ml(500.0), density(0.95)).answer.get(), 475.0, EXACT, "lacquer");
    near(weight(ml(250.0), density(0.87)).answer.get(), 217.5, EXACT, "thinner");
    let mistaken = volume_of(Grams::new(237.5).expect("a mass"), density(0.87)).get();
    near(mistaken, 273.0, 0.05, "thinner when 2:1 is weighed out");
    near(mistaken / 250.0, 1.09, 0.005, "too much by");
    let told = [
        ("base_ml", 500.0),
        ("parts_base", 2.0),
        ("parts_thinner", 1.0),
        ("density_kg_l", 0.95),
        ("thinner_density_kg_l", 0.87),
    ];
    let found = work("weigh", &told, &[]).expect("told").numbers;
    near(found["base_weight"].value, 475.0, EXACT, "lacquer");
    near(found["thinner_weight"].value, 217.5, EXACT, "thinner");
    near(found["scale"].value, 692.5, EXACT, "scale after both");
    covered::values("mixing", "a mix by weight, computed");
}

/// Common practice, no source: no coarser than the sheet's mesh, after thinning and stirring.
#[test]
fn a_strainer_is_fine_enough_and_comes_after_thinning() {
    let sheet = base().with(Setting::StrainerMesh, 190.0).expect("in range");
    let judged = |mesh, strained| strainer(Micrometres::new(mesh).expect("a mesh"), strained, &sheet).answer;
    assert_eq!(judged(190.0, Strained::Next), StrainerMove::Serves);
    assert_eq!(judged(125.0, Strained::Next), StrainerMove::Serves);
    assert_eq!(judged(191.0, Strained::Next), StrainerMove::Finer);
    assert_eq!(judged(190.0, Strained::BeforeThinning), StrainerMove::Again);
    assert_eq!(judged(280.0, Strained::BeforeThinning), StrainerMove::Finer);
}

/// Published page on mixing ratios, through the calculator: 32 oz at 4:1:1 takes 8 and 8, 48 in all.
#[test]
fn the_calculator_shares_out_three_parts() {
    let told = [
        ("base_ml", 32.0 * ML_AN_OUNCE),
        ("parts_base", 4.0),
        ("parts_hardener", 1.0),
        ("parts_thinner", 1.0),
    ];
    let found = work("mix-parts", &told, &[]).expect("told").numbers;
    for (key, ounces) in [("hardener", 8.0), ("thinner", 8.0), ("batch", 48.0)] {
        near(found[key].value / ML_AN_OUNCE, ounces, EXACT, key);
    }
}

/// Parts and per cent say the same mix: 2:1 is 50 %, shown as parts, millilitres and per cent alike. Told both ways and in
/// conflict it is refused; half of a ratio is missing its other half.
#[test]
fn thinning_is_shown_in_parts_millilitres_and_per_cent() {
    let by = |told: &[(&str, f64)]| work("thin", told, &[]);
    let percent = by(&[("base_ml", 500.0), ("percent", 50.0)]).expect("told").numbers;
    let ratio = by(&[("base_ml", 500.0), ("parts_base", 2.0), ("parts_thinner", 1.0)]).expect("told").numbers;
    assert_eq!(percent, ratio);
    for (key, wanted) in [
        ("thinner", 250.0),
        ("batch", 750.0),
        ("parts_base", 2.0),
        ("parts_thinner", 1.0),
        ("percent_thinned", 50.0),
        ("share", 100.0 / 3.0),
    ] {
        near(ratio[key].value, wanted, EXACT, key);
    }
    let over = by(&[("base_ml", 500.0), ("percent", 150.0)]).expect("told").numbers;
    assert_eq!((over["parts_base"].value, over["parts_thinner"].value), (1.0, 1.5));
    let both = [("base_ml", 500.0), ("parts_base", 2.0), ("parts_thinner", 1.0), ("percent", 33.0)];
    assert!(by(&both).expect_err("in conflict").contradicting);
    let alike = [("base_ml", 500.0), ("parts_base", 3.0), ("parts_thinner", 1.0), ("percent", 33.0)];
    near(by(&alike).expect("rounded alike").numbers["thinner"].value, 500.0 / 3.0, EXACT, "parts hold");
    assert_eq!(by(&[("base_ml", 500.0), ("parts_base", 2.0)]).expect_err("half").missing, ["parts_thinner"]);
    let untold = by(&[("base_ml", 500.0)]).expect_err("neither");
    assert_eq!(untold.missing, ["parts_base", "parts_thinner", "percent"]);
    assert!(!untold.contradicting);
}

/// Popular Woodworking no. 119 (Dec 2000) p. 15, through the calculator: 25 % at 1:4 is 5 % solids and a washcoat.
#[test]
fn the_calculator_judges_a_washcoat_by_its_solids() {
    let at = |thinner| {
        let told = [("volume_solids", 25.0), ("parts_sealer", 1.0), ("parts_thinner", thinner)];
        work("washcoat-solids", &told, &[]).expect("told")
    };
    near(at(4.0).numbers["value"].value, 0.05, EXACT, "solids, 0 to 1");
    near(at(4.0).numbers["solids_mixed"].value, 5.0, EXACT, "solids in per cent");
    same!(at(4.0).terms["verdict"], Washcoat::InBand.slug());
    same!(at(1.0).terms["verdict"], Washcoat::TooHeavy.slug());
    same!(at(8.0).terms["verdict"], Washcoat::TooThin.slug());
    covered::values("mixing", "Popular Woodworking no. 119");
}
