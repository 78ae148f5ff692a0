//! What the woods look like against what is known of them: content/looks.toml beside content/woods.toml.

mod support;

use stepboard::picture::Growth;
use stepboard::rules::term::Term;
use support::content;

/// How far the mean width of drawn pores may be from the mean diameter of the wood's vessels.
const WIDTH_TOLERANCE: f64 = 0.35;
const UM: f64 = 1000.0;

#[test]
fn years_are_built_as_the_porosity_says() {
    let content = content();
    for look in &content.looks {
        let wood = content.wood(&look.wood).expect("checked when read");
        let growth = match look.species.growth {
            Growth::Ring => "ring",
            Growth::SemiRing => "semi-ring",
            Growth::Diffuse => "diffuse",
            Growth::Conifer => "none",
        };
        assert_eq!(growth, wood.porosity.slug(), "{}", look.slug);
        assert_eq!(look.species.pores.is_empty(), growth == "none", "{}", look.slug);
    }
}

#[test]
fn large_pores_are_as_wide_as_the_vessels() {
    let content = content();
    let mut checked = 0;
    for look in &content.looks {
        let wood = content.wood(&look.wood).expect("checked when read");
        if let (Some(vessel), Some(pores)) = (wood.vessel_um, look.species.pores.first()) {
            let share = f64::from(pores.width) * UM / vessel;
            assert!((share - 1.0).abs() <= WIDTH_TOLERANCE, "{}: {share} of {vessel} um", look.slug);
            checked += 1;
        }
    }
    assert!(checked >= 9, "{checked} looks with vessels that are known");
}

#[test]
fn open_pored_woods_let_their_pores_show_and_close_pored_ones_do_not() {
    let content = content();
    for look in &content.looks {
        let wood = content.wood(&look.wood).expect("checked when read");
        assert_eq!(look.species.telegraphs, wood.pores.slug() == "large", "{}", look.slug);
    }
    assert!(content.looks.len() >= 16);
}
