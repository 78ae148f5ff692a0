//! Look-alikes whose two faults can be drawn are told apart by eye: each pair is asked about on some card that shows a panel,
//! and a test of pixels or heights holds what decides between the two.

mod support;

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use stepboard::card::{Answer, Card, deal, scene, solve};
use stepboard::content::{Content, World};
use stepboard::picture::Fault;
use support::content;

/// Cards of a family that are dealt. The rarest pair is one of some forty on a card that asks about one in five.
const SEEDS: u32 = 4_000;

/// How a card asks about a pair of faults.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Asked {
    /// Both on one wood, in one finish and colour, side by side.
    Beside,
    /// The same picture until it is wiped, and a wiped band is on it.
    Wiped,
    /// One is on the panel, the other among the answers.
    Offered,
}

/// The faults on the panels of a card, and whether a band was wiped.
fn shown(card: &Card, content: &Content) -> Vec<(&'static str, bool)> {
    let wiped = card.facts.maybe_slug("panel_wiped") == Some("yes");
    let faults = scene::panels(card, content).into_iter().filter_map(|recipe| recipe.fault);
    faults.map(|(fault, _)| (fault.slug(), wiped)).collect()
}

/// How a card asks about a pair, if it does.
fn asks(card: &Card, content: &Content, (a, b): (&str, &str)) -> Option<Asked> {
    let on = shown(card, content);
    let is = |fault: &str| on.iter().any(|(slug, _)| *slug == fault);
    let offers = |fault: &str| card.options.contains(&Answer::term(fault));
    let told_by_name = offers(a) && offers(b) && (is(a) || is(b));
    match on.as_slice() {
        [_, _] => (is(a) && is(b)).then_some(Asked::Beside),
        [(_, true)] => told_by_name.then_some(Asked::Wiped),
        _ => told_by_name.then_some(Asked::Offered),
    }
}

#[test]
fn every_pair_of_faults_that_can_be_drawn_is_asked_about() {
    let content = content();
    let world = World { content: &content, sheet: &content.sheets[0] };
    let cards: Vec<Card> = ["panel-pair", "panel-fault"]
        .iter()
        .flat_map(|family| (0..SEEDS).map(|seed| deal(&world, family, seed).expect("a card")))
        .collect();
    let drawn = |id: &str| Fault::from_slug(id).is_some() && content.panel(id).is_some();
    let pairs: Vec<_> = content.pairs.iter().filter(|pair| drawn(&pair.a) && drawn(&pair.b)).collect();
    let twins =
        |a: &str, b: &str| content.panel(a).is_some_and(|panel| panel.twins.iter().any(|twin| twin == b));
    for pair in &pairs {
        let mut counts: BTreeMap<Asked, usize> = BTreeMap::new();
        for card in &cards {
            if let Some(asked) = asks(card, &content, (&pair.a, &pair.b)) {
                *counts.entry(asked).or_default() += 1;
            }
        }
        println!("{} {} and {}: {counts:?}", pair.id, pair.a, pair.b);
        assert!(!counts.is_empty(), "{}: {} and {} are never asked about", pair.id, pair.a, pair.b);
        // Twins look the same side by side: a card that asks for a name shows what the cloth did, or too little is told.
        if twins(&pair.a, &pair.b) {
            assert!(counts.contains_key(&Asked::Wiped), "{}", pair.id);
            let unwiped = |card: &&Card| asks(card, &content, (&pair.a, &pair.b)) == Some(Asked::Offered);
            for card in cards.iter().filter(unwiped) {
                assert_eq!(solve(card, &world).expect("a question").right, Answer::NotEnough, "{}", pair.id);
            }
        }
        // Where nothing but the fault differs, the two are laid side by side.
        assert_eq!(
            counts.contains_key(&Asked::Beside),
            can_lie_side_by_side(&content, &pair.a, &pair.b) && !twins(&pair.a, &pair.b),
            "{}: {} and {}",
            pair.id,
            pair.a,
            pair.b
        );
    }
    assert!(pairs.len() >= PAIRS_LEAST, "{} pairs are drawn", pairs.len());
}

/// Pairs of which both can be drawn.
const PAIRS_LEAST: usize = 37;

/// Whether some wood, finish and colour shows both.
fn can_lie_side_by_side(content: &Content, a: &str, b: &str) -> bool {
    let (Some(a), Some(b)) = (content.panel(a), content.panel(b)) else { return false };
    let share = |a: &[String], b: &[String]| a.iter().any(|one| b.contains(one));
    share(&a.looks, &b.looks)
        && share(&a.dresses, &b.dresses)
        && a.finishes.iter().any(|finish| b.finishes.contains(finish))
}

/// Pairs that no panel can show together, and why: a shared panel for any other pair is missing by mistake.
const APART: [(&str, &str); 2] = [
    ("la-13", "pale filler lies in filled pores, pinholes open over pores that were left open"),
    ("la-15", "filler haze is left between large pores; the woods that blotch have none"),
];

#[test]
fn pairs_share_a_panel_unless_the_work_forbids_it() {
    let content = content();
    for pair in &content.pairs {
        if content.panel(&pair.a).is_none() || content.panel(&pair.b).is_none() {
            continue;
        }
        let apart = APART.iter().find(|(id, _)| *id == pair.id);
        let beside = can_lie_side_by_side(&content, &pair.a, &pair.b);
        assert_eq!(beside, apart.is_none(), "{}: {} and {}: {apart:?}", pair.id, pair.a, pair.b);
    }
}

/// For each pair, where the picture shows what decides, the file under `src/picture/tests` and its test. What the picture
/// shows stands for the probe: a hole for the powder that stays in it, bare wood before stain for a rag that rubs it clear.
const HELD: [(&str, &str, &str); 35] = [
    ("la-01", "sprayed/main.rs", "only_fish_eyes_are_there_at_once"),
    ("la-02", "sprayed/main.rs", "no_pinholes_where_there_are_no_open_pores"),
    ("la-03", "sprayed/main.rs", "pinholes_lie_on_pores_and_behind_each_other"),
    ("la-04", "sprayed/main.rs", "a_low_lamp_tells_hollows_from_bumps"),
    ("la-05", "sprayed/main.rs", "peel_is_as_bright_as_the_lamp_and_dry_spray_is_dull"),
    ("la-06", "sprayed/main.rs", "orange_peel_has_a_wavelength_and_no_direction"),
    ("la-07", "sprayed/main.rs", "nibs_stand_up_and_can_be_counted"),
    ("la-08", "told_apart/main.rs", "fibres_lie_with_the_grain_and_grit_does_not"),
    ("la-09", "clear/clouds.rs", "a_damp_cloth_takes_bloom_and_leaves_blush"),
    ("la-11", "told_apart/main.rs", "grey_lies_in_the_pores_and_blush_between_them_too"),
    ("la-12", "clear/main.rs", "grey_pores_change_with_the_lamp_and_white_ones_do_not"),
    ("la-13", "told_apart/main.rs", "pale_filler_lies_level_and_pinholes_are_holes"),
    ("la-15", "told_apart/main.rs", "wood_without_stain_shows_filler_and_no_blotch"),
    ("la-16", "stains/wood.rs", "glue_has_a_hard_edge_and_blotch_a_soft_one"),
    ("la-17", "told_apart/main.rs", "glue_was_there_before_the_paper_and_a_sand_through_was_not"),
    ("la-18", "clear/worn.rs", "naphtha_hides_a_witness_line_and_not_a_sand_through"),
    ("la-19", "breaks/main.rs", "what_was_there_before_tells_look_alikes_apart"),
    ("la-20", "clear/worn.rs", "a_burn_has_a_lip_and_sanding_has_none"),
    ("la-21", "breaks/main.rs", "cracks_run_across_the_grain_along_it_or_every_way"),
    ("la-22", "breaks/main.rs", "cracks_run_across_the_grain_along_it_or_every_way"),
    ("la-23", "breaks/main.rs", "what_was_there_before_tells_look_alikes_apart"),
    ("la-24", "breaks/main.rs", "wrinkles_are_soft_folds_many_times_higher_than_peel"),
    ("la-25", "breaks/main.rs", "a_fat_edge_is_an_even_bead_and_a_run_is_on_the_face"),
    ("la-26", "told_apart/main.rs", "dye_runs_down_and_extractives_along_the_grain"),
    ("la-27", "stains/bleeds.rs", "bleed_under_tape_is_fingers_from_a_line_and_bleeding_dye_spreads"),
    ("la-28", "clear/main.rs", "swirl_goes_with_the_lamp_and_a_scratch_stays"),
    ("la-29", "told_apart/decides.rs", "scratches_are_thin_and_random_and_chatter_is_broad_and_even"),
    ("la-30", "stains/wood.rs", "bare_wood_shows_chatter_and_no_stripes"),
    ("la-32", "told_apart/decides.rs", "a_thumbnail_dents_soft_film_and_not_sunk_film"),
    ("la-33", "told_apart/decides.rs", "cloth_prints_into_soft_film_and_not_under_bloom"),
    ("la-34", "breaks/main.rs", "peeled_film_is_missing_and_checked_film_is_not"),
    ("la-36", "clear/clouds.rs", "water_spots_are_drops_and_blush_is_not"),
    ("la-38", "told_apart/main.rs", "pinholes_have_sides_and_dips_have_none"),
    ("la-39", "clear/main.rs", "swirl_goes_with_the_lamp_and_a_scratch_stays"),
    ("la-40", "clear/main.rs", "arcs_stay_when_a_veil_is_wiped"),
];

/// Pairs whose deciding test no picture shows, and why: the card tells in words how it comes out.
const IN_WORDS: [(&str, &str); 2] = [
    (
        "la-14",
        "when a veil came is asked: a panel with blush is drawn as the coat left the gun, not as it was before that coat",
    ),
    ("la-37", "tape that is pulled off is not drawn: whether the film comes with it is told"),
];

/// The words of a test of pictures, with what stands above it.
fn words<'a>(text: &'a str, test: &str) -> Option<&'a str> {
    let (before, after) = text.split_once(&format!("fn {test}("))?;
    let first = before.rfind("\n\n").unwrap_or(0);
    let length = after.find("\n}\n").unwrap_or(after.len());
    text.get(first..text.len() - after.len() + length)
}

/// It holds that the test named for a pair speaks of that pair and draws both of its faults; that it passes is its own business.
#[test]
fn what_decides_between_two_that_can_be_drawn_is_held_in_the_picture() {
    let content = content();
    let drawn = |id: &str| Fault::from_slug(id).is_some();
    let pairs = content.pairs.iter().filter(|pair| drawn(&pair.a) && drawn(&pair.b));
    let pairs: Vec<&str> = pairs.map(|pair| pair.id.as_str()).collect();
    let mut named: Vec<&str> = HELD.iter().map(|(id, ..)| *id).chain(IN_WORDS.map(|(id, _)| id)).collect();
    named.sort_unstable();
    assert_eq!(pairs, named);
    let tests = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/picture/tests");
    for (id, file, test) in HELD {
        let text = fs::read_to_string(tests.join(file)).expect("a test of pictures");
        let words = words(&text, test).unwrap_or_else(|| panic!("{id}: no `{test}` in {file}"));
        assert!(words.contains(id), "{id}: `{test}` in {file} does not name it");
        let pair = content.pairs.iter().find(|pair| pair.id == id).expect("a pair");
        for fault in [&pair.a, &pair.b] {
            assert!(words.contains(&format!("\"{fault}\"")), "{id}: `{test}` in {file} draws no {fault}");
        }
    }
}
