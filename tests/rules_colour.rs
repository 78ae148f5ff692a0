//! Filling, staining, sealing and colouring against published statements; each check names its source.

mod support;

use stepboard::content::Content;
use stepboard::quantity::{Hours, Micrometres, Millimetres, Unit};
use stepboard::rules::colouring::{self, Blemish, ColourKind, ColourStep, PassCall, ScuffCall};
use stepboard::rules::filling::{
    self, Face, FillPlan, FillerLook, FillerTone, FingerTest, Flats, StainUnder, UnderFiller, Wipe,
};
use stepboard::rules::film::Facing;
use stepboard::rules::sealing::{self, Film, FirstCoat, MixedStep, Sealer, SealerCall};
use stepboard::rules::shading::{self, DistanceCall, Pass, ShadeCall, ShadeFace, ShadeUnder, Trim};
use stepboard::rules::sheet::{Setting, Sheet};
use stepboard::rules::staining::{self, ColourCall, ColourState, Fuzz, Ground, Method, Route, Seen, Way};
use stepboard::rules::term::{Filler, Look};
use support::covered::same;
use support::{content, covered};

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
    same!(call(8.0, FillerLook::Dull, FingerTest::Balls), Wipe::Now);
    same!(call(8.0, FillerLook::Dull, FingerTest::Slips), Wipe::Wait);
    same!(call(8.0, FillerLook::Glossy, FingerTest::Slips), Wipe::Wait);
    // An older text allows about 20 minutes to flat: the ball decides, not the end of the window.
    same!(call(20.0, FillerLook::Dull, FingerTest::Balls), Wipe::Now);
    // Common practice, no source.
    assert_eq!(call(40.0, FillerLook::Dull, FingerTest::Hard), Wipe::Soften);
    same!(call(5.0, FillerLook::Dull, FingerTest::Balls), Wipe::Now, "from the fifth minute");
    same!(call(4.9, FillerLook::Dull, FingerTest::Balls), Wipe::Wait);
    let ruling = filling::wipe(sheet, minutes(8.0), FillerLook::Dull, Some(FingerTest::Balls)).expect("told");
    let shown: Vec<(Unit, f64)> =
        ruling.working.iter().map(|step| (step.result.unit, step.result.value.round())).collect();
    assert_eq!(shown, [(Unit::Minute, 8.0), (Unit::Minute, 5.0)], "the working is told in minutes");
    covered::values("filling", "NAVEDTRA 14044");
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
    covered::count();
    covered::values("filling", "FPL-GTR-190 ch. 16");
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
    same!(under(&handbook, coloured, StainUnder::Fast, Flats::Keep), UnderFiller::Washcoat);
    same!(under(&handbook, neutral, StainUnder::Fast, Flats::Keep), UnderFiller::Straight);
    same!(under(sheet, neutral, StainUnder::Fast, Flats::Keep), UnderFiller::Washcoat);
    same!(under(sheet, coloured, StainUnder::None, Flats::Take), UnderFiller::Straight);
    // Common practice, no source.
    same!(under(&handbook, neutral, StainUnder::Lifts, Flats::Keep), UnderFiller::Washcoat);
    covered::values("filling", "FPL-GTR-190 ch. 16");
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
        let once = filling::wait(base(&content), filler).expect("on the sheet").get();
        let twice = filling::filled_twice(base(&content), filler).expect("on the sheet").answer.get();
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
    covered::count();
    covered::values("staining", "trade magazine and articles on blotching");
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
    assert!(!holds(Route::WipeOilBare, "hard-maple"));
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
    covered::count();
    covered::values("staining", "published instrument schedule");
}

fn um(value: f64) -> Micrometres {
    Micrometres::new(value).expect("a film")
}

fn mm(value: f64) -> Millimetres {
    Millimetres::new(value).expect("a length")
}

/// A published answer of 2008: antioxidants of rosewood-group woods stop oxygen-cured coats; an article on oily woods:
/// clean and seal at once with dewaxed shellac. BS 2015 glossary: resin bleeds from knots.
#[test]
fn oily_and_resinous_woods_are_wiped_and_shut_in() {
    let content = content();
    let first = |slug, film| sealing::first_coat(content.wood(slug), Some(film)).expect("all is told").answer;
    for slug in ["cocobolo", "indian-rosewood", "brazilian-rosewood", "teak"] {
        same!(first(slug, Film::OilVarnish), FirstCoat::WipeBarrier, "{slug}");
        same!(first(slug, Film::Lacquer), FirstCoat::WipeBarrier, "{slug}");
        // Common practice, no source: shellac is its own barrier.
        assert_eq!(first(slug, Film::Shellac), FirstCoat::WipeCoat, "{slug}");
    }
    same!(first("southern-pine", Film::Lacquer), FirstCoat::WipeBarrier);
    same!(first("hard-maple", Film::OilVarnish), FirstCoat::Seal);
    assert!(sealing::first_coat(content.wood("cocobolo"), None).is_err());
    assert!(sealing::first_coat(content.wood("hard-maple"), None).is_ok());
    assert!(sealing::first_coat(None, Some(Film::Lacquer)).is_err());
    covered::values("sealing", "published answer 2008, article, BS 2015 glossary");
}

/// A magazine article on sealers: stearate weakens a thick film. One thin coat, two without stearate: trade habit, no
/// source.
#[test]
fn film_is_not_built_with_sealer() {
    let content = content();
    let sheet = base(&content);
    let call = |sealer, coats| sealing::after_sealer(sheet, sealer, coats);
    let (stearated, plain) = (Some(Sealer::Stearated), Some(Sealer::Plain));
    assert_eq!(call(stearated, 0.0).expect("told").answer, SealerCall::Lay);
    assert_eq!(call(stearated, 1.0).expect("told").answer, SealerCall::Build);
    assert_eq!(call(stearated, 2.0).expect("told").answer, SealerCall::TakeOff);
    assert_eq!(call(plain, 2.0).expect("told").answer, SealerCall::Build);
    assert_eq!(call(plain, 3.0).expect("told").answer, SealerCall::TakeOff);
    assert_eq!(call(None, 1.0).expect("any sealer").answer, SealerCall::Build);
    assert_eq!(call(None, 3.0).expect("any sealer").answer, SealerCall::TakeOff);
    assert_eq!(call(None, 2.0).expect_err("the sealer decides").missing, ["sealer"]);
    let roomy = sheet.with(Setting::SealerCoats, 2.0).expect("within the ceiling");
    let second = sealing::after_sealer(&roomy, stearated, 2.0).expect("told").answer;
    assert_eq!(second, SealerCall::Build, "the sheet decides the count");
    covered::count();
    covered::values("sealing", "magazine article on sealers");
}

/// BS 2015 glossary: colour and resin rise from wood into the coat; mist before the wet coat: common practice, no source.
#[test]
fn mixed_woods_are_misted_before_the_wet_coat() {
    let sound = |steps: &[MixedStep]| sealing::mixed_order(steps).answer;
    assert!(sound(&[MixedStep::Sand, MixedStep::Vacuum, MixedStep::Wipe, MixedStep::Mist, MixedStep::Flash]));
    assert!(!sound(&[MixedStep::Wet, MixedStep::Mist]));
    assert!(!sound(&[MixedStep::Wipe, MixedStep::Vacuum]));
    assert!(!sound(&[MixedStep::Mist, MixedStep::Wet, MixedStep::Flash]));
    covered::count();
    covered::values("sealing", "published answer 2008, article, BS 2015 glossary");
}

/// Body coats 8 to 10 in with a conventional gun (a refinishing textbook); shading and light seal passes 12 to 18 in:
/// common practice, no source.
#[test]
fn shading_is_sprayed_from_farther_back_than_body_coats() {
    const INCH: f64 = 25.4;
    let content = content();
    let call = |pass, inches: f64| {
        shading::judge_distance(base(&content), pass, mm(inches * INCH)).map(|ruling| ruling.answer)
    };
    for pass in [Pass::Shading, Pass::LightSeal] {
        assert_eq!(call(Some(pass), 15.0), Ok(DistanceCall::Keep));
        assert_eq!(call(Some(pass), 9.0), Ok(DistanceCall::GoBack));
        assert_eq!(call(Some(pass), 20.0), Ok(DistanceCall::ComeNearer));
    }
    same!(call(Some(Pass::Body), 9.0), Ok(DistanceCall::Keep));
    same!(call(Some(Pass::Body), 15.0), Ok(DistanceCall::ComeNearer));
    same!(call(None, 5.0), Ok(DistanceCall::GoBack), "too near for every pass");
    assert!(call(None, 9.0).is_err(), "the pass decides");
    covered::values("colouring", "refinishing textbook");
}

/// Plane geometry of a fan of fixed angle: the film of a pass from 175 mm falls to 0.70 at 250 mm, 0.583 at 300 mm and
/// 0.389 at 450 mm (computed), so the width grows by the inverse.
#[test]
fn the_pattern_widens_with_distance() {
    for (new, film) in [(250.0, 0.70), (300.0, 0.583), (450.0, 0.389)] {
        let wide = shading::pattern_at(mm(100.0), mm(175.0), mm(new)).expect("told").answer.get();
        assert!((100.0 / wide - film).abs() < 0.001, "{new}: {wide}");
    }
    assert!(shading::pattern_at(mm(100.0), mm(0.0), mm(300.0)).is_err());
    covered::count();
    covered::values("colouring", "plane geometry and momentum balance, computed");
}

/// A trade adviser: 5 mil (127 um) is near running, 6 mil (152 um) and over sags. Colour passes lighter than clear:
/// common practice, no source.
#[test]
fn colour_passes_are_thin_and_near_running_from_five_mil() {
    let content = content();
    let sheet = base(&content);
    let call = |wet, facing| colouring::judge_pass(sheet, um(wet), facing).map(|ruling| ruling.answer);
    assert_eq!(call(55.0, Some(Facing::Standing)), Ok(PassCall::Right));
    assert_eq!(call(100.0, Some(Facing::Standing)), Ok(PassCall::Heavy));
    same!(call(127.0, Some(Facing::Standing)), Ok(PassCall::NearRun));
    same!(call(152.4, Some(Facing::Standing)), Ok(PassCall::Sags));
    assert_eq!(call(152.4, Some(Facing::Lying)), Ok(PassCall::Heavy), "a flat face does not run");
    assert!(call(130.0, None).is_err());
    assert!(call(100.0, None).is_ok());
    assert!(sheet.get(Setting::ColourWet) < sheet.get(Setting::ClearWet));
    covered::values("colouring", "trade adviser on wet film");
}

/// Thin-film momentum balance (textbook): doubling the film gives 8 times the flow; from 50 to 100 um 0.0039 to 0.0311
/// square millimetres a second (computed).
#[test]
fn a_pass_twice_as_wet_flows_eight_times_as_much() {
    let content = content();
    let sheet = base(&content).with(Setting::ColourWet, 50.0).expect("in range");
    let growth = colouring::sag_growth(&sheet, um(100.0)).expect("told").answer;
    assert!((growth - 8.0).abs() < 1e-9);
    assert!((growth - 0.0311 / 0.0039).abs() < 0.05);
    covered::count();
    covered::values("colouring", "plane geometry and momentum balance, computed");
}

/// Worked by hand: 5 passes of 40 um are 200 um; at 60 um that takes 4 passes, 3 would leave 20 um out.
#[test]
fn the_same_film_gives_the_same_colour() {
    let content = content();
    let passes = |count, film| colouring::passes(base(&content), count, um(film)).expect("told").answer;
    assert!((passes(5.0, 40.0) - 4.0).abs() < 1e-9);
    assert!((passes(4.0, 60.0) - 4.0).abs() < 1e-9, "the sheet's own film keeps the count");
    let thinner = base(&content).with(Setting::ColourWet, 40.0).expect("in range");
    let more = colouring::passes(&thinner, 4.0, um(60.0)).expect("told").answer;
    assert!((more - 6.0).abs() < 1e-9);
}

/// A published instrument schedule scuffs solid colour at 320 before clear; toner: common practice, no source.
#[test]
fn opaque_colour_may_be_scuffed_and_toner_not() {
    let call = |kind, hides, blemish| colouring::scuff(kind, hides, blemish).map(|ruling| ruling.answer);
    same!(call(ColourKind::Opaque, Some(true), None), Ok(ScuffCall::Scuff));
    same!(call(ColourKind::Opaque, Some(false), None), Ok(ScuffCall::MoreColour));
    same!(call(ColourKind::Toner, None, Some(Blemish::Nibs)), Ok(ScuffCall::NibOnly));
    same!(call(ColourKind::Toner, None, Some(Blemish::Texture)), Ok(ScuffCall::Lock));
    assert!(call(ColourKind::Opaque, None, None).is_err());
    covered::values("colouring", "published instrument schedule");
}

/// Common practice, no source.
#[test]
fn shade_over_a_seal_can_be_wiped_back_and_on_wood_not() {
    let call = |under, lifts| shading::too_dark(under, lifts).map(|ruling| ruling.answer);
    assert_eq!(call(ShadeUnder::Sealed, Some(true)), Ok(ShadeCall::WipeBack));
    assert_eq!(call(ShadeUnder::Sealed, Some(false)), Ok(ShadeCall::WidenToSeal));
    assert_eq!(call(ShadeUnder::Raw, None), Ok(ShadeCall::WidenToWood));
    assert!(call(ShadeUnder::Sealed, None).is_err());
}

/// A published procedure scrapes the colour off the binding before lacquer; seats masked: common practice, no source.
#[test]
fn binding_is_masked_only_where_colour_would_soak_in() {
    let masked = |face, trim, sealed| shading::is_masked(face, trim, sealed).map(|ruling| ruling.answer);
    same!(masked(ShadeFace::Binding, Some(Trim::Plastic), None), Ok(false));
    same!(masked(ShadeFace::Binding, Some(Trim::PaleWood), Some(true)), Ok(false));
    same!(masked(ShadeFace::Binding, Some(Trim::PaleWood), Some(false)), Ok(true));
    assert!(masked(ShadeFace::Binding, Some(Trim::PaleWood), None).is_err());
    assert_eq!(masked(ShadeFace::Bare, None, None), Ok(true));
    assert_eq!(masked(ShadeFace::Sprayed, None, None), Ok(false));
    covered::values("binding", "published procedure");
}

/// Edges first: a refinish tip sheet. One direction and then across, protective clear before scraping: common practice,
/// no source.
#[test]
fn colour_goes_on_edges_first_and_crossed_and_is_protected() {
    let content = content();
    let sound = |steps: &[ColourStep]| colouring::colour_order(steps).answer;
    let (along, across) = (ColourStep::Along, ColourStep::Across);
    assert!(sound(&[
        ColourStep::Edges,
        along,
        across,
        ColourStep::Look,
        ColourStep::Protect,
        ColourStep::Scrape
    ]));
    assert!(sound(&[ColourStep::Edges, across, along]), "either direction may come first");
    assert!(!sound(&[along, across, ColourStep::Edges]));
    assert!(!sound(&[ColourStep::Scrape, ColourStep::Protect]));
    let bare = base(&content).with(Setting::ProtectiveClear, 0.0).expect("a switch");
    assert!(!colouring::colour_steps(&bare, true).contains(&ColourStep::Protect));
    assert!(colouring::colour_steps(base(&content), true).contains(&ColourStep::Protect));
    assert!(!colouring::colour_steps(base(&content), false).contains(&ColourStep::Scrape));
    covered::count();
    covered::values("colouring", "refinish tip sheet");
}

/// FPL-GTR-190 ch. 16, Fillers: mahogany filled, maple and spruce not; an open-pore look leaves the pores open.
#[test]
fn a_job_of_mixed_woods_is_filled_part_by_part() {
    let content = content();
    let plan = |woods: [&str; 2], look| {
        filling::plan(&woods.map(|slug| content.wood(slug)), look).expect("all is told").answer
    };
    same!(plan(["hard-maple", "mahogany"], Look::LevelGloss), FillPlan::OpenOnly);
    same!(plan(["sitka-spruce", "hard-maple"], Look::LevelGloss), FillPlan::CloseNone);
    same!(plan(["mahogany", "mahogany"], Look::LevelGloss), FillPlan::All);
    same!(plan(["white-ash", "mahogany"], Look::OpenPore), FillPlan::PoresOpen);
    assert!(filling::plan(&[content.wood("hard-maple"), None], Look::LevelGloss).is_err());
    assert!(filling::plan(&[None, None], Look::OpenPore).is_ok());
    covered::values("filling", "FPL-GTR-190 ch. 16");
}
