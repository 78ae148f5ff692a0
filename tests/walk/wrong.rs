//! Wrong ways through the plain plate, the box in a hurry and the shaded lute, each after a published row; and what mending
//! and stripping make of them. How they are held: `case.rs`.

use crate::case::{Case, hold, other_way};
use crate::steps::{begin, does, go, ready_for_the_gun, rest, up_to, up_to_work, wait, work};
use crate::support::content;
use crate::{colour, earlier_finish, weather, woods};
use std::collections::BTreeSet;
use stepboard::content::{Ask, Content};
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::walk::decision::{Decision, Parts, Wait};
use stepboard::walk::report::report;
use stepboard::walk::{RoomAct, Walk, right};

/// Seals over the filler as soon as it is wiped off.
fn seals_wet_filler(walk: &mut Walk, content: &Content) {
    let wipe = up_to_work(walk, content, Op::WipeFiller);
    go(walk, [Decision::Work(wipe), Decision::Room(vec![RoomAct::RagsAway])], content);
    go(walk, ready_for_the_gun(), content);
    does(walk, content, Op::Seal);
}

/// Leaves the scraping until clear lies over the binding.
fn scrapes_late(walk: &mut Walk, content: &Content) {
    up_to_work(walk, content, Op::Scrape);
    go(walk, ready_for_the_gun(), content);
    let clear = work(walk, content, Op::Clear, &[], &[("mix", "retarder")]);
    go(walk, [clear, wait(1.0)], content);
    does(walk, content, Op::Scrape);
}

/// Levels on the morning after the last coat.
fn levels_next_morning(walk: &mut Walk, content: &Content) {
    let coats = walk.start().info.ticket.clear_coats;
    let laid = |walk: &Walk| walk.part(0).is_some_and(|part| part.coats(Op::Clear) >= coats);
    up_to(walk, content, |walk, next| laid(walk) && matches!(next, Decision::Wait(_)));
    go(walk, [Decision::Wait(Wait::Morning)], content);
    does(walk, content, Op::Level);
}

/// Sprays a coat as mixed, in the first hour whose air asks for retarder.
fn sprays_damp(walk: &mut Walk, content: &Content) {
    let damp = |next: &Decision| match next {
        Decision::Work(work) => work.picks.get("mix").is_some_and(|mix| mix == "retarder"),
        _ => false,
    };
    let Decision::Work(mut work) = up_to(walk, content, |_, next| damp(next)) else { unreachable!() };
    work.picks.insert("mix".to_owned(), "as-the-sheet".to_owned());
    go(walk, [Decision::Work(work)], content);
}

/// Coats on over a film of another day that does not melt, with no scuff.
fn coats_unscuffed(walk: &mut Walk, content: &Content) {
    up_to_work(walk, content, Op::Scuff);
    // The sheet's window closes after a day and opens again after three.
    go(walk, [Wait::Morning; 3].map(Decision::Wait), content);
    go(walk, ready_for_the_gun(), content);
    let clear = work(walk, content, Op::Clear, &[], &[("mix", "retarder")]);
    go(walk, [clear], content);
}

fn leaves_out_filler(walk: &mut Walk, content: &Content) {
    up_to_work(walk, content, Op::Fill);
    go(walk, ready_for_the_gun(), content);
    does(walk, content, Op::Seal);
}

fn leaves_out_washcoat(walk: &mut Walk, content: &Content) {
    up_to(walk, content, |walk, next| {
        walk.lines().iter().any(|line| line.operation == Op::Stain) && matches!(next, Decision::Wait(_))
    });
    go(walk, [wait(1.0)], content);
    go(walk, [work(walk, content, Op::Fill, &[], &[("filler-colour", "pore-colour")])], content);
}

fn stains_unwetted(walk: &mut Walk, content: &Content) {
    up_to_work(walk, content, Op::GlueCheck);
    does(walk, content, Op::CleanOff);
    go(walk, [ready_for_the_gun()[0].clone(), work(walk, content, Op::Stain, &[], &[])], content);
}

#[rustfmt::skip]
fn cases() -> Vec<Case> {
    let case = |walk, row, says, wrong| Case { walk, row, says, wrong };
    vec![
        case("shaded-lute", "se-09", "weeks after delivery", seals_wet_filler),
        case("shaded-lute", "se-04", "levelling and buffing", scrapes_late),
        case("shaded-lute", "se-19", "minutes to days", sprays_damp),
        case("shaded-lute", "se-23", "days to weeks", levels_next_morning),
        case("shaded-lute", "se-34", "first coats; weeks after buffing", leaves_out_filler),
        case("plain-plate", "se-17", "tape, impact", coats_unscuffed),
        case("plain-plate", "se-01", "stain, and again in gloss",
            |walk, content| other_way(walk, content, Op::Sand, &[], &[("strokes", "across-the-grain")])),
        case("plain-plate", "se-18", "next coat",
            |walk, content| other_way(walk, content, Op::CleanOff, &[], &[("cloth", "tack-light")])),
        case("plain-plate", "se-32", "stain, scrape test",
            |walk, content| other_way(walk, content, Op::Sand, &[(Ask::LastGrit, 400.0)], &[])),
        case("plain-plate", "run-sag", "seconds to minutes after the coat",
            |walk, content| other_way(walk, content, Op::Clear, &[(Ask::WetFilm, 200.0)], &[("held", "standing")])),
        case("rush-box", "se-02", "stain", stains_unwetted),
        case("rush-box", "se-05", "first seal coat",
            |walk, content| other_way(walk, content, Op::Stain, &[], &[("stain", "water-dye")])),
        case("rush-box", "se-07", "filler wipe", leaves_out_washcoat),
    ]
}

#[test]
fn a_wrong_way_comes_to_what_its_row_says() {
    hold(&cases());
}

/// Those of every file.
fn all() -> Vec<Case> {
    let others = [woods::cases(), weather::cases(), earlier_finish::cases(), colour::cases()];
    others.into_iter().flatten().chain(cases()).collect()
}

#[test]
fn each_walk_that_ships_has_three_wrong_ways() {
    let cases = all();
    for info in &content().walks {
        let rows: BTreeSet<&str> =
            cases.iter().filter(|case| case.walk == info.slug).map(|case| case.row).collect();
        assert!(rows.len() >= 3, "{}: {rows:?}", info.slug);
    }
}

/// A run is cut down once it had its wait, then recoated (`faults.csv`, run-sag, rework): a published instrument schedule lets
/// it stand 24 h first.
#[test]
fn a_run_is_mended_by_real_operations_and_stays_told() {
    let content = content();
    let mut walk = begin(&content, "ash-lyre");
    other_way(&mut walk, &content, Op::Clear, &[(Ask::WetFilm, 200.0)], &[("held", "standing")]);
    assert_eq!(walk.shown().len(), 1);
    go(
        &mut walk,
        [Decision::Room(vec![RoomAct::GunCleaned]), Decision::Wait(Wait::Morning), wait(8.0)],
        &content,
    );
    does(&mut walk, &content, Op::Rework);
    assert_eq!(report(&walk, &content).found[0].left, [Some(Op::Clear)]);
    go(&mut walk, ready_for_the_gun(), &content);
    let coat = work(&walk, &content, Op::Clear, &[], &[("mix", "retarder")]);
    go(&mut walk, [coat], &content);
    let turn = walk.turns().last().expect("a turn");
    assert_eq!((turn.mended.as_slice(), walk.shown()[0].mended), (&[0][..], Some(walk.turns().len() - 1)));
    let told = report(&walk, &content);
    assert_eq!((told.found.len(), told.lost_h()), (1, 0.0), "{:?}", told.found);
    let mut soon = begin(&content, "plain-plate");
    other_way(&mut soon, &content, Op::Clear, &[(Ask::WetFilm, 200.0)], &[("held", "standing")]);
    go(&mut soon, [wait(1.0)], &content);
    does(&mut soon, &content, Op::Rework);
    let on = rest(&soon, &content);
    go(&mut soon, on, &content);
    assert!(soon.shown().iter().any(|shown| shown.defect.rule().0 == "se-23"), "mended too soon");
}

/// Whatever shows at the work can be mended there: the first thing that mends it is done, or what comes before it is named.
#[test]
fn what_shows_at_the_work_can_be_mended() {
    let content = content();
    let mut seen = 0;
    for case in all() {
        let mut walk = begin(&content, case.walk);
        (case.wrong)(&mut walk, &content);
        while walk.shown().is_empty() && !walk.is_over() {
            let next = right::next(&walk, &content).expect("a right way on");
            go(&mut walk, [next], &content);
        }
        let all = report(&walk, &content).found;
        let Some(left) = all.iter().find_map(|one| one.left.first()).filter(|_| !walk.is_over()) else {
            continue;
        };
        let parts: Vec<usize> = (0..walk.start().parts()).collect();
        let clean = walk.room().gun_dirty().then(|| Decision::Room(vec![RoomAct::GunCleaned]));
        go(&mut walk, clean.into_iter().chain([Wait::Morning; 2].map(Decision::Wait)), &content);
        let mend = match left {
            Some(operation) => work(&walk, &content, *operation, &[], &[]),
            None => Decision::Strip(Parts { parts }),
        };
        // Raised grain is scuffed off the first coat: what has to lie there first is named.
        let no = walk.decide(mend, &content).err();
        let leads_on = no.as_ref().is_none_or(|no| no.first().is_some());
        assert!(leads_on, "{} {}: {left:?} {:?}", case.walk, case.row, no.map(|no| no.why));
        seen += 1;
    }
    assert!(seen > 20, "{seen} faults are mended");
}

/// Scratches are sanded out of bare wood, which is then re-coloured (`faults.csv`, sanding-scratch, rework).
#[test]
fn a_scratch_under_stain_is_mended_in_the_bare_wood() {
    let content = content();
    let mut walk = begin(&content, "rush-box");
    other_way(&mut walk, &content, Op::Sand, &[], &[("strokes", "across-the-grain")]);
    up_to_work(&mut walk, &content, Op::Washcoat);
    let found = report(&walk, &content).found;
    assert_eq!(found[0].left, [None, Some(Op::Sand), Some(Op::Stain)]);
    go(&mut walk, [Decision::Strip(Parts { parts: vec![0] })], &content);
    let on = rest(&walk, &content);
    go(&mut walk, on, &content);
    let told = report(&walk, &content);
    assert!(told.found.len() == 1 && told.found[0].mended.is_some(), "{:?}", told.found);
}

/// What was stripped is gone, showing or not: a stripped part is bare wood (common practice, no source).
#[test]
fn stripping_takes_with_it_what_was_wrong() {
    let content = content();
    let mut walk = begin(&content, "rush-box");
    seals_wet_filler(&mut walk, &content);
    assert!(walk.shown().is_empty(), "grey pores show weeks after delivery");
    go(&mut walk, [Decision::Room(vec![RoomAct::GunCleaned]), Decision::Wait(Wait::Morning)], &content);
    go(&mut walk, [Decision::Strip(Parts { parts: vec![0] })], &content);
    assert!(walk.part(0).is_some_and(|part| part.laid.is_empty() && part.done.is_empty()));
    let on = rest(&walk, &content);
    go(&mut walk, on, &content);
    assert!(report(&walk, &content).found.is_empty(), "{:?}", walk.shown());
}
