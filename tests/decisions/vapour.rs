//! Limits of what is breathed, at and over each of them, and what the figures of a data sheet show.

use crate::support::content;
use stepboard::quantity::{Celsius, ExplosiveLimit, Fraction, PartsPerMillion};
use stepboard::rules::hazard::data_sheet::{SheetHazard, sheet_hazard};
use stepboard::rules::hazard::exposure::{
    Breathed, Ceilings, Exposure, Reading, average_over, ceiling_over, exposure_sum, fire_meter, mixture_over,
};

fn ppm(value: f64) -> PartsPerMillion {
    PartsPerMillion::new(value).expect("in range")
}

/// 29 CFR 1910.1000(a), (b), (d): at the limit is kept, over it is passed.
#[test]
fn at_a_limit_is_kept_and_over_it_is_passed() {
    assert!(!average_over(ppm(200.0), ppm(200.0)).answer && average_over(ppm(200.1), ppm(200.0)).answer);
    assert!(!ceiling_over(ppm(300.0), ppm(300.0)).answer && ceiling_over(ppm(300.1), ppm(300.0)).answer);
    let half = |value| (ppm(value), ppm(200.0));
    assert!(!mixture_over(&[half(100.0), half(100.0)]).answer, "1 is not over 1");
    assert!(mixture_over(&[half(100.0), half(100.1)]).answer);
    let meter = |percent: f64| {
        let share = Fraction::new(percent / 100.0).expect("a share");
        fire_meter(ExplosiveLimit::new(1.0).expect("in range"), share, ppm(200.0), ppm(500.0)).answer
    };
    assert_eq!(meter(2.0), Breathed::NotShown);
    assert_eq!(meter(2.1), Breathed::OverLimit);
    assert_eq!(meter(5.0), Breathed::OverLimit);
    assert_eq!(meter(5.1), Breathed::DangerousAtOnce);
}

/// Toluene (29 CFR 1910.1000 Table Z-2; NIOSH): average 200, ceiling 300, recommended 100 and 150 for 15 minutes.
#[test]
fn verdicts_keep_averages_and_ceilings_apart() {
    let content = content();
    let told = |slug: &str, average: f64, peak: Option<f64>| {
        let solvent = content.solvent(slug).expect("listed");
        exposure_sum(&[Reading { solvent, average: ppm(average), peak: peak.map(ppm) }])
            .expect("a reading")
            .answer
    };
    assert_eq!(told("toluene", 50.0, None).verdict, Some(Exposure::WithinAverages));
    assert_eq!(told("toluene", 50.0, Some(150.0)).verdict, Some(Exposure::WithinLimits));
    assert_eq!(told("toluene", 50.0, Some(151.0)).verdict, Some(Exposure::OverRecommended));
    assert_eq!(
        told("toluene", 50.0, Some(301.0)).verdict,
        Some(Exposure::OverLimit),
        "average far under its limit"
    );
    assert_eq!(told("toluene", 101.0, Some(120.0)).verdict, Some(Exposure::OverRecommended));
    assert_eq!(told("toluene", 201.0, None).verdict, Some(Exposure::OverLimit));
    assert_eq!(told("toluene", 201.0, None).over_pel, ["toluene"]);
    assert_eq!(told("toluene", 50.0, Some(151.0)).over_ceiling, ["toluene"]);
    assert_eq!(told("acetone", 200.0, None).verdict, Some(Exposure::WithinLimits), "no ceiling is published");
    let none = told("pgmea", 1.0, None);
    assert_eq!((none.verdict, none.without_pel), (None, vec!["pgmea".to_owned()]));
    // NIOSH: 350 and 1,800 mg/m3 alone; no reading in parts per million shows that they were kept.
    let spirits = told("stoddard-solvent", 10.0, Some(10.0));
    assert_eq!((spirits.verdict, spirits.ceilings), (None, Ceilings::NotShown));
    assert_eq!(spirits.in_mg, ["stoddard-solvent"]);
    assert!(spirits.without_pel.is_empty());
    assert_eq!(told("stoddard-solvent", 500.0, None).verdict, None);
    assert_eq!(told("stoddard-solvent", 501.0, None).verdict, Some(Exposure::OverLimit));
    assert_eq!(told("vmp-naphtha", 1.0, None).in_mg, ["vmp-naphtha"]);
    assert!(told("toluene", 50.0, None).in_mg.is_empty());
    assert_eq!(exposure_sum(&[]).expect_err("no reading").missing, ["solvent"]);
}

/// Figures of 29 CFR 1910.1000, NIOSH and the data sheets of content/solvents.toml.
#[test]
fn the_figures_of_a_data_sheet_are_read() {
    let content = content();
    let toluene = content.solvent("toluene").expect("listed");
    let flash = toluene.flash_c.expect("published").get();
    let room = |value: f64| Some(Celsius::new(value).expect("in range"));
    let shows = |hazard, slug: &str, at| {
        sheet_hazard(hazard, content.solvent(slug).expect("listed"), at).map(|one| one.answer)
    };
    assert_eq!(shows(SheetHazard::LightsInRoom, "toluene", room(flash)), Ok(true));
    assert_eq!(shows(SheetHazard::LightsInRoom, "toluene", room(flash - 0.1)), Ok(false));
    assert_eq!(shows(SheetHazard::LightsInRoom, "toluene", None).expect_err("unknown").missing, ["air_c"]);
    assert_eq!(
        shows(SheetHazard::LightsInRoom, "cyclohexanone", room(20.0)).expect_err("none").missing,
        ["flash_c"]
    );
    assert_eq!(shows(SheetHazard::ThroughSkin, "methanol", None), Ok(true));
    assert_eq!(shows(SheetHazard::ThroughSkin, "toluene", None), Ok(false));
    assert_eq!(shows(SheetHazard::HasCeiling, "toluene", None), Ok(true));
    assert_eq!(shows(SheetHazard::HasCeiling, "acetone", None), Ok(false));
    assert_eq!(shows(SheetHazard::RecommendedLower, "acetone", None), Ok(true));
    assert_eq!(shows(SheetHazard::RecommendedLower, "ethanol", None), Ok(false));
    assert_eq!(shows(SheetHazard::FireAirDangerous, "toluene", None), Ok(true));
    assert_eq!(shows(SheetHazard::FireAirDangerous, "pgmea", None).expect_err("none").missing.len(), 1);
}
