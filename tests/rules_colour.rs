//! Filling, staining, sealing and colouring against published statements; each check names its source.

mod support;

use stepboard::content::Content;
use stepboard::quantity::Hours;
use stepboard::rules::filling::{
    self, Face, FillerLook, FillerTone, FingerTest, Flats, StainUnder, UnderFiller, Wipe,
};
use stepboard::rules::sheet::{Setting, Sheet};
use stepboard::rules::staining::{self, ColourCall, ColourState, Fuzz, Ground, Method, Route, Seen, Way};
use stepboard::rules::term::{Filler, Look};
use support::content;

fn base(content: &Content) -> &Sheet {
    &content.sheets[0]
}

fn minutes(minutes: f64) -> Hours {
    Hours::new(minutes / 60.0).expect("a short time")
}

/// NAVEDTRA 14044, wood filler: 5 to 10 minutes until the gloss goes; a ball forms, wipe; it slips, too wet.
#[test]
fn the_finger_ball_decides_when_filler_is_wiped() {
    let content = content();
    let sheet = base(&content);
    let call = |stood, look, finger| {
        filling::wipe(sheet, minutes(stood), look, Some(finger)).expect("all is told").answer
    };
    assert_eq!(call(8.0, FillerLook::Dull, FingerTest::Balls), Wipe::Now);
    assert_eq!(call(8.0, FillerLook::Dull, FingerTest::Slips), Wipe::Wait);
    assert_eq!(call(8.0, FillerLook::Glossy, FingerTest::Slips), Wipe::Wait);
    // An older text allows about 20 minutes to flat: the ball decides, not the end of the window.
    assert_eq!(call(20.0, FillerLook::Dull, FingerTest::Balls), Wipe::Now);
    // Common practice, no source.
    assert_eq!(call(40.0, FillerLook::Dull, FingerTest::Hard), Wipe::Soften);
}

#[test]
fn the_clock_and_the_gloss_can_only_say_too_early() {
    let content = content();
    let untold = |stood, look| filling::wipe(base(&content), minutes(stood), look, None);
    assert_eq!(untold(2.0, FillerLook::Dull).expect("too early").answer, Wipe::Wait);
    assert_eq!(untold(8.0, FillerLook::Glossy).expect("too wet").answer, Wipe::Wait);
    assert_eq!(untold(8.0, FillerLook::Dull).expect_err("a finger is needed").missing, ["finger_test"]);
}

/// FPL-GTR-190 ch. 16, Fillers: mahogany filled, maple not, whatever face; bare faces and binding are common practice,
/// no source.
#[test]
fn every_sprayed_face_of_an_open_wood_is_filled() {
    let content = content();
    let is_filled = |face, wood, look| {
        filling::is_filled(face, content.wood(wood), Some(look)).expect("all is told").answer
    };
    assert!(is_filled(Face::Sprayed, "mahogany", Look::LevelGloss));
    assert!(!is_filled(Face::Sprayed, "mahogany", Look::OpenPore));
    assert!(!is_filled(Face::Sprayed, "hard-maple", Look::LevelGloss));
    assert!(!is_filled(Face::Masked, "mahogany", Look::LevelGloss));
    assert!(!is_filled(Face::Binding, "mahogany", Look::LevelGloss));
    assert!(filling::is_filled(Face::Sprayed, content.wood("mahogany"), None).is_err());
    assert!(filling::is_filled(Face::Sprayed, content.wood("hard-maple"), None).is_ok());
}

/// Two trade articles: a seal keeps the filler's colour in the pores. FPL-GTR-190 ch. 16: filler on dry stain with
/// nothing between. A trade text: coloured filler on unsealed wood stains and fills.
#[test]
fn what_lies_under_filler_follows_colour_and_sheet() {
    let content = content();
    let sheet = base(&content);
    let handbook = sheet.with(Setting::WashcoatBeforeFill, 0.0).expect("a switch");
    let under = |sheet: &Sheet, tone, stain, flats| {
        filling::under_filler(sheet, tone, Some(stain), Some(flats)).expect("all is told").answer
    };
    let (coloured, neutral) = (FillerTone::Coloured, FillerTone::Neutral);
    assert_eq!(under(&handbook, coloured, StainUnder::Fast, Flats::Keep), UnderFiller::Washcoat);
    assert_eq!(under(&handbook, neutral, StainUnder::Fast, Flats::Keep), UnderFiller::Straight);
    assert_eq!(under(sheet, neutral, StainUnder::Fast, Flats::Keep), UnderFiller::Washcoat);
    assert_eq!(under(sheet, coloured, StainUnder::None, Flats::Take), UnderFiller::Straight);
    // Common practice, no source.
    assert_eq!(under(&handbook, neutral, StainUnder::Lifts, Flats::Keep), UnderFiller::Washcoat);
}

/// Window: NAVEDTRA 14044, 5 to 10 minutes. Worked by hand: five faces of 2 and 2 minutes stand 10 minutes each at the
/// wiping of the first; a sixth would make it 12.
#[test]
fn a_batch_stays_inside_the_window() {
    let content = content();
    let batch = |coat, wipe| filling::batch(base(&content), minutes(coat), minutes(wipe)).answer;
    assert_eq!(batch(2.0, 2.0), 5);
    assert_eq!(batch(2.0, 6.0), 0, "5 minutes of waiting and 6 of wiping pass the window");
    assert!(batch(2.0, 3.0) <= batch(2.0, 2.0), "slower wiping never makes the batch larger");
}

/// Common practice, no source: the full wait starts again with the second filling.
#[test]
fn a_second_filling_waits_in_full() {
    let content = content();
    for filler in [Filler::OilPaste, Filler::FastSolvent, Filler::WaterBorne, Filler::TwoPart] {
        let once = filling::wait(base(&content), filler).get();
        let twice = filling::filled_twice(base(&content), filler).answer.get();
        assert!((twice - 2.0 * once).abs() < 1e-9, "{filler:?}");
    }
}

/// A trade magazine, November 2007: oak, ash, walnut and mahogany need no washcoat against blotching; trade articles on
/// blotching name cherry, maple, birch, pine, poplar, aspen and alder.
#[test]
fn washcoat_is_for_wiped_stain_on_woods_that_blotch() {
    let content = content();
    let wants =
        |slug, method| staining::wants_washcoat(content.wood(slug).expect("a known wood"), method).answer;
    for slug in ["red-oak", "white-oak", "white-ash", "black-walnut", "mahogany"] {
        assert!(!wants(slug, Method::Wiped), "{slug}");
    }
    let blotching = [
        "black-cherry",
        "hard-maple",
        "yellow-birch",
        "eastern-white-pine",
        "yellow-poplar",
        "aspen",
        "red-alder",
    ];
    for slug in blotching {
        assert!(wants(slug, Method::Wiped), "{slug}");
        // Common practice, no source: sprayed dye needs no sealer.
        assert!(!wants(slug, Method::Sprayed), "{slug}");
    }
}

/// Common practice, no source: advice differs and is settled by the method.
#[test]
fn a_full_seal_coat_shuts_the_wood_to_stain() {
    let content = content();
    let maple = content.wood("hard-maple");
    let way = |ground, method| staining::colour_on(ground, method, maple).expect("enough is told").answer;
    assert_eq!(way(Ground::Sealed, None), Way::InFilm);
    assert_eq!(way(Ground::Bare, Some(Method::Sprayed)), Way::Stain);
    assert_eq!(way(Ground::Bare, Some(Method::Wiped)), Way::WashcoatFirst);
    assert_eq!(way(Ground::Washcoated, Some(Method::Wiped)), Way::Stain);
    assert!(staining::colour_on(Ground::Bare, Some(Method::Wiped), None).is_err());
    let holds =
        |route, slug: &str| staining::route_holds(route, content.wood(slug).expect("a known wood")).answer;
    assert!(!holds(Route::WipeDyeSealed, "mahogany"));
    assert!(holds(Route::WipeDyeWashcoat, "hard-maple"));
    assert!(holds(Route::WipeOilBare, "mahogany"));
    assert!(!holds(Route::WipeOilBare, "cocobolo"), "oily extractives stop oxygen-cured coats");
}

/// Common practice, no source: stain dries paler than it looks wet and is judged only under clear.
#[test]
fn colour_is_judged_only_under_clear() {
    let call = |state, seen| staining::judge_colour(state, Some(seen)).expect("all is told").answer;
    for seen in [Seen::Lighter, Seen::Same, Seen::Darker] {
        assert_eq!(call(ColourState::Wet, seen), ColourCall::DryFirst);
        assert_eq!(call(ColourState::Dry, seen), ColourCall::TrialClear);
    }
    assert_eq!(call(ColourState::UnderClear, Seen::Same), ColourCall::GoOn);
    assert_eq!(call(ColourState::UnderClear, Seen::Lighter), ColourCall::Deepen);
    assert_eq!(call(ColourState::UnderClear, Seen::Darker), ColourCall::Hold);
}

/// A published instrument schedule: damp, dry, sand again with the same paper. Over dye only the seal is scuffed.
#[test]
fn fuzz_is_sanded_with_the_sheets_own_grits() {
    let content = content();
    for sheet in &content.sheets {
        let grit = |fuzz| staining::fuzz_grit(sheet, fuzz).answer.value;
        assert!((grit(Fuzz::DampedBare) - sheet.get(Setting::LastGrit)).abs() < 1e-9);
        assert!((grit(Fuzz::Sealed) - sheet.get(Setting::ScuffGrit)).abs() < 1e-9);
    }
}
