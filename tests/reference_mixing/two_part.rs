//! Two-part materials: hardener, what stands ready, pot life.

use crate::support::covered::{self, same};
use crate::support::{base, near};
use crate::{EXACT, celsius, ml};
use stepboard::quantity::Hours;
use stepboard::rules::hazard::isocyanate::{Hardener, HardenerGuard, guards};
use stepboard::rules::mixing::{
    HardenerDose, MixUse, PotKind, hardener_dose, hardener_for, mix_use, pot_life_in,
};
use stepboard::rules::sheet::Setting;
use stepboard::rules::term::Term;
/// Published page on mixing ratios: examples 2:1, 4:1, 8:1:1. Two per cent is the shop's measure: common practice, no source.
#[test]
fn hardener_is_held_to_the_data_sheets_parts() {
    let sheet = base().with(Setting::MeasureSlack, 2.0).expect("in range");
    near(hardener_for(ml(400.0), 2.0, 1.0).expect("parts").answer.get(), 200.0, EXACT, "2:1");
    near(hardener_for(ml(400.0), 4.0, 1.0).expect("parts").answer.get(), 100.0, EXACT, "4:1");
    let dose = |hardener| hardener_dose(ml(400.0), ml(hardener), (4.0, 1.0), &sheet).expect("parts").answer;
    assert_eq!(dose(98.1), HardenerDose::Right);
    assert_eq!(dose(101.9), HardenerDose::Right);
    assert_eq!(dose(97.9), HardenerDose::Under);
    assert_eq!(dose(102.1), HardenerDose::Over);
    assert!(hardener_for(ml(400.0), 0.0, 1.0).is_err());
}

/// NIOSH Pocket Guide 0320 (HDI): every respirator listed is supplied-air or self-contained; OSHA letter of 13 June 1996:
/// poor warning properties; OSHA STD 01-05-010: draw is about fire. Public fact sheet: sensitisation is for life.
#[test]
fn nothing_stands_in_for_supplied_air_with_isocyanate() {
    let needed = [
        HardenerGuard::SheetsRead,
        HardenerGuard::SuppliedAir,
        HardenerGuard::Medical,
        HardenerGuard::BystandersOut,
        HardenerGuard::SkinCovered,
    ];
    for guard in HardenerGuard::ALL {
        let found = guards(Some(Hardener::Isocyanate), *guard).expect("told").answer;
        same!(found, needed.contains(guard), "{guard:?}");
        // What holds for every hardener, and what helps with none, is known before the hardener is.
        let decides = needed.contains(guard) && *guard != HardenerGuard::SheetsRead;
        assert_eq!(guards(None, *guard).is_err(), decides, "{guard:?}");
    }
    covered::values("mixing", "NIOSH Pocket Guide 0320; OSHA letter of 13 June 1996");
}

/// With no isocyanate in it the safety data sheets still come first and skin is covered as they say; nothing of what some
/// want instead counts for anything. Common practice, no source.
#[test]
fn without_isocyanate_the_sheets_decide() {
    for guard in HardenerGuard::ALL {
        let found = guards(Some(Hardener::NoIsocyanate), *guard).expect("told");
        let wanted = matches!(guard, HardenerGuard::SheetsRead | HardenerGuard::SkinCovered);
        assert_eq!(found.answer, wanted, "{guard:?}");
        if wanted {
            assert_eq!(found.rules[0].0, "hazard.hardener-sheet-first");
        }
    }
}

/// Rule of thumb of published pages: half the pot life for each 10 °C warmer. A cold room never makes it longer (common
/// practice, no source).
#[test]
fn pot_life_halves_for_ten_degrees_and_never_grows() {
    let sheet = base();
    let reference = sheet.get(Setting::WaitReference);
    let life = |warmer: f64| {
        let stated = Hours::new(4.0).expect("a time");
        pot_life_in(stated, celsius(reference + warmer), &sheet).answer.get()
    };
    near(life(10.0), 2.0, EXACT, "10 warmer");
    near(life(20.0), 1.0, EXACT, "20 warmer");
    near(life(0.0), 4.0, EXACT, "as stated");
    near(life(-10.0), 4.0, EXACT, "10 colder");
}

/// Common practice, no source: a one-part mix keeps, a two-part one is used up to its pot life and not after; the shop
/// sheet's shorter time holds.
#[test]
fn a_two_part_mix_is_used_up_to_its_pot_life() {
    let hours = |value| Some(Hours::new(value).expect("a time"));
    let sheet = base();
    let two = |age, life| mix_use(PotKind::TwoPart, hours(age), hours(life), &sheet).expect("told").answer;
    assert_eq!(two(4.0, 4.0), MixUse::Use);
    assert_eq!(two(4.1, 4.0), MixUse::Discard);
    let short = sheet.with(Setting::PotLife, 2.0).expect("in range");
    let shop = mix_use(PotKind::TwoPart, hours(3.0), hours(4.0), &short).expect("told").answer;
    assert_eq!(shop, MixUse::Discard);
    let longer = sheet.with(Setting::PotLife, 6.0).expect("in range");
    let own = mix_use(PotKind::TwoPart, hours(5.0), hours(4.0), &longer).expect("told").answer;
    assert_eq!(own, MixUse::Discard, "the sheet never lengthens what the material's own says");
    assert_eq!(mix_use(PotKind::OnePart, None, None, &sheet).expect("keeps").answer, MixUse::Use);
    assert_eq!(
        mix_use(PotKind::TwoPart, hours(1.0), None, &sheet).expect_err("untold").missing,
        ["pot_life_h"]
    );
    assert_eq!(
        mix_use(PotKind::TwoPart, None, hours(1.0), &sheet).expect_err("untold").missing,
        ["mix_age_h"]
    );
}
