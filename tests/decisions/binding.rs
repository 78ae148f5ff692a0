//! Binding: a published procedure scrapes the colour off before lacquer. The rest is
//! common practice, no source.

use crate::support::base;
use stepboard::rules::binding::{self, LastLaid, Preparing, Scraping, TrimStep};
use stepboard::rules::sheet::{Setting, Sheet};
use stepboard::rules::term::{Binding, Term};

fn without_protective() -> Sheet {
    base().with(Setting::ProtectiveClear, 0.0).expect("a switch")
}

#[test]
fn binding_is_levelled_bare_wood_binding_sealed_and_the_rest_sprayed_over() {
    let found = |binding, coloured, levelled, sealed| {
        let ruling = binding::preparing(binding, coloured, levelled, sealed);
        (ruling.answer, ruling.rules[0].0)
    };
    for coloured in [false, true] {
        for sealed in [false, true] {
            for trim in [Binding::Wood, Binding::Plastic] {
                let first = (Preparing::LevelFirst, "binding.level-while-bare");
                assert_eq!(found(trim, coloured, false, sealed), first, "{trim:?} {coloured} {sealed}");
            }
            for levelled in [false, true] {
                let nothing = (Preparing::Nothing, "binding.nothing-to-scrape");
                assert_eq!(found(Binding::None, coloured, levelled, sealed), nothing);
            }
        }
    }
    for trim in [Binding::Wood, Binding::Plastic] {
        for sealed in [false, true] {
            assert_eq!(found(trim, false, true, sealed).0, Preparing::Nothing, "no colour on {trim:?}");
        }
    }
    assert_eq!(found(Binding::Wood, true, true, false), (Preparing::SealFirst, "binding.wood-sealed-first"));
    let over = (Preparing::ColourOver, "binding.colour-over-sound-trim");
    assert_eq!(found(Binding::Wood, true, true, true), over);
    assert_eq!(found(Binding::Plastic, true, true, false), over);
    assert_eq!(found(Binding::Plastic, true, true, true), over);
}

/// A published procedure: the colour comes off the binding before lacquer. When and over what: common practice, no source.
#[test]
fn colour_is_scraped_off_touch_dry_and_before_the_clear_build() {
    let (sheet, bare) = (base(), without_protective());
    let found = |binding, coloured, last, dry, sheet: &Sheet| {
        let ruling = binding::scraping(binding, coloured, last, dry, sheet);
        (ruling.answer, ruling.rules[0].0)
    };
    for last in LastLaid::ALL {
        for dry in [false, true] {
            let nothing = (Scraping::Nothing, "binding.nothing-to-scrape");
            assert_eq!(found(Binding::None, true, *last, dry, &sheet), nothing);
            assert_eq!(found(Binding::Plastic, false, *last, dry, &sheet), nothing);
        }
    }
    let late = (Scraping::TooLate, "binding.scrape-before-clear-build");
    assert_eq!(found(Binding::Plastic, true, LastLaid::Build, false, &sheet), late);
    assert_eq!(found(Binding::Wood, true, LastLaid::Build, true, &sheet), late);
    for last in [LastLaid::Colour, LastLaid::Protective] {
        let wait = (Scraping::WaitDry, "binding.scrape-touch-dry");
        assert_eq!(found(Binding::Plastic, true, last, false, &sheet), wait, "{last:?}");
        assert_eq!(found(Binding::Plastic, true, last, false, &bare), wait, "{last:?}");
    }
    let guard = (Scraping::ProtectiveFirst, "binding.protective-clear-first");
    assert_eq!(found(Binding::Plastic, true, LastLaid::Colour, true, &sheet), guard);
    let now = (Scraping::Now, "binding.scrape-after-colour");
    assert_eq!(found(Binding::Plastic, true, LastLaid::Colour, true, &bare), now);
    assert_eq!(found(Binding::Plastic, true, LastLaid::Protective, true, &sheet), now);
}

#[test]
fn steps_round_the_binding_are_those_of_the_job_in_their_order() {
    assert_eq!(binding::trim_steps(true), TrimStep::ALL);
    let plain = [TrimStep::Level, TrimStep::Seal, TrimStep::Inspect, TrimStep::Build];
    assert_eq!(binding::trim_steps(false), plain);
    let (sheet, bare) = (base(), without_protective());
    let sound = |steps: &[TrimStep], sheet: &Sheet| {
        let order: Vec<String> = steps.iter().map(|step| step.slug().to_owned()).collect();
        binding::accepts(&order, sheet).expect("all are steps").answer
    };
    assert!(sound(TrimStep::ALL, &sheet) && sound(&plain, &sheet) && sound(&[], &sheet));
    for at in 1..TrimStep::ALL.len() {
        let mut turned = TrimStep::ALL.to_vec();
        turned.swap(at - 1, at);
        let pair = (TrimStep::ALL[at - 1], TrimStep::ALL[at]);
        assert!(!sound(&turned, &sheet), "{pair:?} turned round");
        let free = pair == (TrimStep::Protective, TrimStep::Scrape);
        assert_eq!(sound(&turned, &bare), free, "{pair:?} turned round where no protective clear is laid");
    }
    assert!(!sound(&[TrimStep::Scrape, TrimStep::Seal], &bare), "the seal is not free");
    assert!(
        !sound(&[TrimStep::Build, TrimStep::Seal, TrimStep::Scrape], &sheet),
        "the first stands too early"
    );
    let unknown = binding::accepts(&["step-seal".to_owned(), "no-step".to_owned()], &sheet);
    assert_eq!(unknown.expect_err("no such step").missing, ["order"]);
}
