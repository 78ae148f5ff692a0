//! Gloss and colour against published pairs, standards and values worked from textbook formulas; each check names its
//! source. What a shop lets pass is a setting, not a check.

mod support;

use stepboard::quantity::{Absorbance, Fraction, Micrometres, RefractiveIndex};
use stepboard::rules::optics::difference::{Match, MatchCall, Seen, ciede2000, judge, judge_match, seen};
use stepboard::rules::optics::gloss::{
    self, GlossAngle, GlossCall, MarkCall, angle_for, ceiling, fresnel, judge_mark,
};
use stepboard::rules::optics::lab::{Lab, lightness};
use stepboard::rules::optics::layer::{a_coat, coats_to, over_wood, sanded_through};
use stepboard::rules::optics::opaque::{
    Hiding, coats_to_hide, contrast, hides, judge_card, over_ground, reflected, swallowed,
};
use stepboard::rules::optics::roughness::{height_for, kept};
use stepboard::rules::optics::surface;
use stepboard::rules::sheet::Setting;
use stepboard::rules::spray::fan::{Fan, Section};
use stepboard::rules::spray::overlap::evenness;
use stepboard::rules::staining::Seen as Beside;
use support::binary::{json, refused};
use support::covered::same;
use support::table::table;
use support::{base, covered, near};

/// Formulas without rounding: the last bits.
const EXACT: f64 = 1e-12;
/// Shares printed to four decimals.
const FOURTH: f64 = 6e-5;

fn share(value: f64) -> Fraction {
    Fraction::new(value).expect("a share")
}

fn index(value: f64) -> RefractiveIndex {
    RefractiveIndex::new(value).expect("an index")
}

fn absorbance(value: f64) -> Absorbance {
    Absorbance::new(value).expect("an absorbance")
}

fn lab(l: f64, a: f64, b: f64) -> Lab {
    Lab::new(l, a, b).expect("a colour")
}

const ANGLES: [GlossAngle; 3] = [GlossAngle::Twenty, GlossAngle::Sixty, GlossAngle::EightyFive];

/// ciede2000.csv: the 34 pairs of Sharma, Wu and Dalal (2005), printed to four decimals, and beside them a library's
/// figures to six; either way round.
#[test]
fn the_published_colour_pairs_are_met() {
    let rows = table("ciede2000.csv");
    assert_eq!(rows.len(), 34, "all pairs");
    for row in rows {
        let colour = |n: u8| {
            let of = |axis: &str| row.number(&format!("{axis}{n}"));
            lab(of("L"), of("a"), of("b"))
        };
        let (one, other) = (colour(1), colour(2));
        let found = ciede2000(one, other);
        near(found, row.number("dE00_published"), 1e-4, row.text("pair"));
        near(found, row.number("dE00_library"), 1e-6, row.text("pair"));
        near(ciede2000(other, one), found, 1e-9, row.text("pair"));
        row.checked("optics");
    }
}

/// Equations of Fresnel at the index of the black glass of ISO 2813:2014, computed to six decimals.
#[test]
fn black_glass_mirrors_what_fresnel_says() {
    let glass = index(1.567);
    for (angle, mean, across, within) in [
        (20.0, 0.049_078, 0.057_016, 0.041_140),
        (60.0, 0.100_056, 0.199_159, 0.000_953),
        (85.0, 0.619_148, 0.749_223, 0.489_073),
    ] {
        let mirrored = fresnel(glass, angle);
        near(mirrored.mean(), mean, 1e-6, "mean");
        near(mirrored.across, across, 1e-6, "rs");
        near(mirrored.within, within, 1e-6, "rp");
    }
    near(fresnel(glass, 0.0).mean(), 0.048_788, 1e-6, "square");
    covered::values("optics", "equations of Fresnel, black glass of ISO 2813");
}

/// Gloss of smooth films over black by their index, computed from the same scale (ISO 2813:2014 clause 3.3).
#[test]
fn gloss_of_a_smooth_film_goes_by_its_index() {
    const ROWS: [(f64, [f64; 3]); 9] = [
        (1.400, [57.0, 71.9, 96.6]),
        (1.460, [71.8, 82.4, 98.2]),
        (1.500, [82.0, 89.1, 99.0]),
        (1.510, [84.7, 90.8, 99.2]),
        (1.520, [87.3, 92.4, 99.3]),
        (1.540, [92.7, 95.7, 99.6]),
        (1.567, [100.0, 100.0, 100.0]),
        (1.600, [109.1, 105.2, 100.4]),
        (1.700, [137.6, 120.3, 101.2]),
    ];
    for (n, row) in ROWS {
        for (angle, gloss) in ANGLES.iter().zip(row) {
            near(ceiling(index(n), *angle).answer, gloss, 0.051, &format!("index {n}"));
        }
    }
    covered::values("optics", "gloss scale of ISO 2813, computed");
}

/// Lacquer caps the 60-degree gloss near 90 over black (computed; the index is the sheet's): a mark of 100 is out of reach.
#[test]
fn no_rub_out_of_lacquer_reads_a_hundred() {
    let sheet = base();
    let most = ceiling(gloss::clear_index(&sheet), GlossAngle::Sixty).answer;
    assert!((88.0..92.0).contains(&most), "{most}");
    covered::count();
    let mark = |gloss, angle| judge_mark(gloss, angle, &sheet).map(|ruling| ruling.answer);
    same!(mark(100.0, Some(GlossAngle::Sixty)), Ok(MarkCall::OutOfReach));
    same!(mark(89.0, Some(GlossAngle::Sixty)), Ok(MarkCall::CanBeMet));
    same!(mark(89.2, Some(GlossAngle::Sixty)), Ok(MarkCall::OutOfReach));
    same!(mark(83.0, Some(GlossAngle::Twenty)), Ok(MarkCall::OutOfReach));
    same!(mark(98.0, Some(GlossAngle::EightyFive)), Ok(MarkCall::CanBeMet));
    same!(mark(80.0, None), Ok(MarkCall::CanBeMet), "at every angle");
    same!(mark(99.5, None), Ok(MarkCall::OutOfReach), "at every angle");
    assert!(mark(90.0, None).is_err() && mark(85.0, None).is_err(), "the angle decides");
    let reads = |reading, sheet| {
        gloss::judge(reading, Some(GlossAngle::Sixty), sheet).expect("the angle of the mark").answer
    };
    assert!(gloss::judge(90.0, None, &sheet).is_err());
    assert!(gloss::judge(90.0, Some(GlossAngle::Twenty), &sheet).is_err(), "another angle, another scale");
    let mark = sheet.get(Setting::GlossPass);
    assert_eq!(reads(mark, &sheet), GlossCall::Passes);
    assert_eq!(reads(mark - 0.1, &sheet), GlossCall::RubOn);
    let proud = sheet.with(Setting::GlossPass, 100.0).expect("allowed");
    assert_eq!(reads(most, &proud), GlossCall::Passes, "no mark lies over what the film can give");
    assert_eq!(reads(most - 0.1, &proud), GlossCall::RubOn);
    covered::values("optics", "gloss scale of ISO 2813, computed");
}

/// ISO 2813:2014 clause 5, visual class 9: one finish of 70 at 60 degrees reads 35 at 20 and 95 at 85. The order of the
/// three follows here from roughness; the limits at which another angle is read are settings.
#[test]
fn steeper_reads_lower_and_the_angle_follows_the_reading() {
    let rough = |angle| {
        let height = Micrometres::new(0.04).expect("a height");
        ceiling(index(1.5), angle).answer * kept(height, angle).answer.get()
    };
    assert!(rough(GlossAngle::Twenty) < rough(GlossAngle::Sixty));
    assert!(rough(GlossAngle::Sixty) < rough(GlossAngle::EightyFive));
    covered::count();
    covered::values("optics", "ISO 2813:2014 clause 5");
    let sheet = base();
    let (low, high) = (sheet.get(Setting::GlossLow), sheet.get(Setting::GlossHigh));
    let angle = |reading| angle_for(reading, &sheet).answer;
    assert_eq!(angle(low - 0.1), GlossAngle::EightyFive);
    assert_eq!(angle(low), GlossAngle::Sixty);
    assert_eq!(angle(high), GlossAngle::Sixty);
    assert_eq!(angle(high + 0.1), GlossAngle::Twenty);
}

/// Bennett and Porteus (1961) with the cosine of Beckmann, at 550 nm, computed to three decimals.
#[test]
fn roughness_takes_gloss_as_published() {
    const ROWS: [(f64, [f64; 3]); 5] = [
        (0.01, [0.955, 0.987, 0.9996]),
        (0.02, [0.832, 0.949, 0.998]),
        (0.05, [0.316, 0.722, 0.990]),
        (0.10, [0.010, 0.271, 0.961]),
        (0.20, [0.000, 0.005, 0.853]),
    ];
    for (sigma, row) in ROWS {
        for (angle, share) in ANGLES.iter().zip(row) {
            let height = Micrometres::new(sigma).expect("a height");
            near(kept(height, *angle).answer.get(), share, 6e-4, &format!("σ {sigma}"));
        }
    }
    for (angle, sigma) in ANGLES.iter().zip([0.015, 0.028, 0.163]) {
        near(height_for(share(0.9), *angle).get(), sigma, 6e-4, "nine tenths of the gloss");
    }
    covered::values("optics", "Bennett and Porteus with Beckmann, computed");
}

/// Beer-Lambert over wood of 0.45 with 0.08 a coat: reflectance and lightness, computed; lightness by ISO/CIE 11664-4.
#[test]
fn coats_of_toner_darken_as_the_law_says() {
    const ROWS: [(f64, f64, f64); 8] = [
        (0.0, 0.4500, 72.9),
        (1.0, 0.3113, 62.6),
        (2.0, 0.2154, 53.5),
        (3.0, 0.1490, 45.5),
        (4.0, 0.1031, 38.4),
        (5.0, 0.0713, 32.1),
        (6.0, 0.0493, 26.5),
        (8.0, 0.0236, 17.3),
    ];
    let toned = |coats| over_wood(share(0.45), absorbance(0.08), coats).answer;
    for (coats, reflectance, light) in ROWS {
        near(toned(coats).reflectance.get(), reflectance, FOURTH, "reflectance");
        near(toned(coats).lightness, light, 0.051, "lightness");
        let need = coats_to(share(0.45), absorbance(0.08), toned(coats).reflectance).expect("a coat").answer;
        near(need, coats, EXACT, "and back to the coats");
    }
    // Equal steps of colour give slowly shrinking steps of lightness.
    for (nth, step) in [10.3, 9.1, 8.0, 7.1, 6.3].into_iter().enumerate() {
        let n = nth as f64;
        near(toned(n).lightness - toned(n + 1.0).lightness, step, 0.051, "step of lightness");
    }
    covered::values("optics", "Beer-Lambert over wood, computed");
}

/// The same table read back: from 0.45 to 0.3113 in a coat is an absorbance of 0.08; coats only deepen.
#[test]
fn a_coat_is_read_from_before_and_after() {
    near(a_coat(share(0.45), share(0.3113)).expect("it darkens").answer.get(), 0.08, 1e-4, "a coat");
    assert!(a_coat(share(0.45), share(0.45)).is_err() && a_coat(share(0.45), share(0.0)).is_err());
    let sheet = base();
    let band = sheet.get(Setting::ColourBand);
    let call = |difference, beside| judge_match(difference, beside, &sheet).map(|ruling| ruling.answer);
    same!(call(Some(band + 0.1), Some(Beside::Lighter)), Ok(MatchCall::AddPass));
    same!(call(Some(band + 0.1), Some(Beside::Darker)), Ok(MatchCall::GoBack));
    assert_eq!(call(Some(band), None), Ok(MatchCall::Accept));
    assert!(call(None, Some(Beside::Darker)).is_err() && call(Some(band + 0.1), None).is_err());
    assert!(call(Some(band + 0.1), Some(Beside::Same)).expect_err("they differ").contradicting);
    covered::values("optics", "Beer-Lambert over wood, computed");
}

/// Between whole coats one more is needed; nothing to darken needs none (worked by hand from the same law).
#[test]
fn coats_to_a_depth_are_whole() {
    let coats = |wood, coat, wanted| coats_to(share(wood), absorbance(coat), share(wanted));
    same!(coats(0.45, 0.08, 0.20).map(|ruling| ruling.answer), Ok(3.0));
    same!(coats(0.45, 0.08, 0.22).map(|ruling| ruling.answer), Ok(2.0));
    same!(coats(0.45, 0.08, 0.45).map(|ruling| ruling.answer), Ok(0.0));
    same!(coats(0.45, 0.08, 0.60).map(|ruling| ruling.answer), Ok(0.0));
    assert!(coats(0.45, 0.0, 0.2).is_err() && coats(0.45, 0.08, 0.0).is_err());
    covered::values("optics", "Beer-Lambert over wood, computed");
}

/// Stripes of a mean absorbance of 0.4, computed: parabola at half overlap 40.1 to 28.6 about 32.1; beta 3 34.0 to 30.5.
/// So clear coats forgive what colour coats show.
#[test]
fn stripes_show_in_colour() {
    let light = |times: f64| over_wood(share(0.45), absorbance(0.4), times).answer.lightness;
    near(light(1.0), 32.1, 0.051, "the mean");
    for (fan, pale, dark) in [(Fan::Parabola, 40.1, 28.6), (Fan::BetaThree, 34.0, 30.5)] {
        let half = stepboard::quantity::Overlap::new(0.5).expect("an overlap");
        let even = evenness(Section::from(fan), half).answer;
        near(light(even.min_over_mean), pale, 0.051, "where it is thin");
        near(light(even.max_over_mean), dark, 0.051, "where it is heavy");
    }
    covered::values("optics", "stripes in transparent colour, computed");
}

/// Sanding off a coat of five brings the lightness of four: 38.4 less 32.1 (the table above).
#[test]
fn sanding_through_colour_shows_the_coat_below() {
    let jump = |lost| sanded_through(share(0.45), absorbance(0.40), absorbance(lost)).answer;
    near(jump(0.08), 6.3, 0.06, "one coat of five");
    near(jump(0.40), 72.9 - 32.1, 0.1, "all of it");
    near(jump(0.0), 0.0, EXACT, "nothing");
    near(jump(0.9), jump(0.40), EXACT, "no more than was there");
    covered::values("optics", "Beer-Lambert over wood, computed");
}

/// ISO/CIE 11664-4: white 100, black 0, and the line near black meets the curve at 8.
#[test]
fn lightness_is_the_standard_one() {
    near(lightness(share(1.0)), 100.0, EXACT, "white");
    near(lightness(share(0.0)), 0.0, EXACT, "black");
    near(lightness(share(216.0 / 24_389.0)), 8.0, 1e-9, "where line and curve meet");
    near(lightness(share(0.008)), 7.2262, 1e-3, "on the line");
    near(lightness(share(0.01)), 8.9914, 1e-3, "on the curve");
    covered::values("optics", "ISO/CIE 11664-4");
}

/// K/S = (1 - R)² / (2 R): encyclopaedia article and routines after Allen (1980).
#[test]
fn swallowed_over_scattered_light_is_the_published_one() {
    for (full, ratio) in
        [(0.05, 9.025), (0.1, 4.05), (0.2, 1.6), (0.4, 0.45), (0.5, 0.25), (0.8, 0.025), (0.9, 0.005_556)]
    {
        let found = swallowed(share(full)).expect("not black").answer;
        let tolerance = if full == 0.9 { 5e-7 } else { EXACT };
        near(found, ratio, tolerance, "K/S");
        near(reflected(found).get(), full, 1e-9, "and back");
    }
    assert!(swallowed(share(0.0)).is_err());
    covered::values("optics", "Kubelka-Munk after Allen 1980");
}

/// Textbook form of a film over a ground, at K/S 0.25 over 0 and 0.8, computed to four decimals; contrast to three.
#[test]
fn hiding_grows_with_the_film() {
    const ROWS: [(f64, f64, f64, f64); 6] = [
        (0.5, 0.2991, 0.6584, 0.454),
        (1.0, 0.4114, 0.5793, 0.710),
        (2.0, 0.4811, 0.5184, 0.928),
        (3.0, 0.4958, 0.5042, 0.983),
        (4.0, 0.4991, 0.5009, 0.996),
        (5.0, 0.4998, 0.5002, 0.999),
    ];
    for (film, black, white, ratio) in ROWS {
        near(over_ground(0.25, film, share(0.0)).get(), black, FOURTH, "over black");
        near(over_ground(0.25, film, share(0.8)).get(), white, FOURTH, "over white");
        near(contrast(0.25, film), ratio, 6e-4, "contrast");
    }
    // With nothing swallowed a film over black gives SX / (1 + SX).
    near(over_ground(0.0, 5.0, share(0.0)).get(), 0.8333, FOURTH, "limit");
    near(over_ground(1e-4, 5.0, share(0.0)).get(), 0.8330, FOURTH, "near the limit");
    near(over_ground(0.25, 0.0, share(0.3)).get(), 0.3, EXACT, "no film, the ground");
    covered::values("optics", "Kubelka-Munk film over a ground, computed");
}

/// The same table with the sheet's mark of 0.98: at one S X a coat two coats show the ground, three hide it.
#[test]
fn coats_to_hide_follow_the_mark() {
    let sheet = base();
    let found = |coats| hides(0.25, 1.0, coats, &sheet).answer;
    same!((found(2.0), found(3.0)), (Hiding::Shows, Hiding::Hides));
    same!(coats_to_hide(0.25, 1.0, &sheet).map(|ruling| ruling.answer), Ok(3.0));
    let strict = sheet.with(Setting::HidingLeast, 99.0).expect("allowed");
    same!(coats_to_hide(0.25, 1.0, &strict).map(|ruling| ruling.answer), Ok(4.0));
    let card = |black, white| judge_card(share(black), share(white), &sheet).map(|ruling| ruling.answer);
    same!(card(0.4811, 0.5184), Ok(Hiding::Shows));
    same!(card(0.4958, 0.5042), Ok(Hiding::Hides));
    assert_eq!(card(0.49, 0.50), Ok(Hiding::Hides), "on the mark");
    assert!(card(0.0, 0.0).is_err());
    assert!(coats_to_hide(0.25, 0.0, &sheet).is_err() && coats_to_hide(0.25, 1e-3, &sheet).is_err());
    covered::values("optics", "Kubelka-Munk film over a ground, computed");
}

/// Saunderson's correction with 0.04 and 0.6, as public routines after Allen (1980) give it.
#[test]
fn the_surface_pales_dark_colours() {
    let seen = |within| surface::seen(share(within), share(0.04), share(0.6)).answer.get();
    for (within, outside) in [(0.05, 0.0598), (0.2, 0.1273), (0.5, 0.3143), (0.8, 0.6308)] {
        near(seen(within), outside, FOURTH, "outside the surface");
    }
    near(surface::seen(share(1.0), share(0.04), share(1.0)).answer.get(), 1.0, EXACT, "all thrown back");
    // Square on, a film of index 1.5 mirrors 0.04 (Fresnel).
    near(fresnel(index(1.5), 0.0).mean(), 0.04, EXACT, "k1");
    covered::values("optics", "Saunderson after Allen 1980");
}

/// The shop's band and its words are settings: both sides of each limit, over pairs that differ in lightness alone.
#[test]
fn bands_of_difference_are_the_sheets() {
    let sheet = base();
    let (noticed, plain) = (sheet.get(Setting::DifferenceNoticed), sheet.get(Setting::DifferencePlain));
    let words = |difference| seen(difference, &sheet).answer;
    assert_eq!(words(noticed - 0.01), Seen::Same);
    assert_eq!(words(noticed), Seen::Slight);
    assert_eq!(words(plain), Seen::Slight);
    assert_eq!(words(plain + 0.01), Seen::Plain);
    let (one, other) = (lab(50.0, 20.0, 10.0), lab(51.0, 20.0, 11.0));
    let difference = ciede2000(one, other);
    let at = |band: f64| {
        let sheet = sheet.with(Setting::ColourBand, band).expect("allowed");
        judge(one, other, &sheet).answer
    };
    assert_eq!(at(difference + 1e-9), Match::Within);
    assert_eq!(at(difference - 1e-9), Match::Outside);
    assert!(Lab::new(100.1, 0.0, 0.0).is_err() && Lab::new(50.0, 201.0, 0.0).is_err());
    assert!(Lab::new(-0.1, 0.0, 0.0).is_err() && Lab::new(50.0, 0.0, -201.0).is_err());
}

/// The gloss scale, a published pair and the toner table above, as scripts ask for them.
#[test]
fn the_command_answers_gloss_and_colour() {
    let value = |words: &[&str]| json(words)["value"].as_f64().expect("a number");
    near(value(&["work", "gloss", "index=1.5", "angle=60"]), 89.1, 0.051, "lacquer at 60");
    near(value(&["work", "gloss", "index=1.567", "angle=20"]), 100.0, 1e-9, "black glass");
    let scratched = value(&["work", "gloss", "index=1.567", "angle=20", "scratch_um=0.05"]);
    near(scratched, 31.6, 0.06, "with scratches");
    same!(json(&["work", "gloss", "index=1.5", "angle=60"])["unit"], "GU");
    let pair = |b2: &str| {
        json(&["work", "colour-difference", "l1=50", "a1=2.6772", "b1=-79.7751", "l2=50", "a2=0", b2])
    };
    let found = pair("b2=-82.7485");
    near(found["value"].as_f64().expect("a number"), 2.0425, 1e-4, "pair 1");
    assert_eq!((&found["verdict"], &found["seen"]), (&"match-outside-band".into(), &"seen-slight".into()));
    assert_eq!(json(&["work", "colour-difference", "l1=50"])["verdict"], "cannot-be-judged");
    let toned = json(&["work", "layer-colour", "wood_reflectance=0.45", "coat_absorbance=0.08", "coats=3"]);
    near(toned["reflectance"]["value"].as_f64().expect("a number"), 0.1490, FOURTH, "three coats");
    near(toned["lightness"]["value"].as_f64().expect("a number"), 45.5, 0.051, "three coats");
    refused(&["work", "gloss", "index=1.5", "angle=45"], "", &["`angle` is `45`; allowed: 20 60 85"]);
    refused(&["work", "colour-difference", "l1=101"], "", &["`l1` is `101`"]);
}
