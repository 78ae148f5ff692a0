//! Faults that come out of the gun, measured from heights and pixels. Where no source is named: common practice, no source.

mod measure;
#[path = "../stains/measure.rs"]
#[expect(dead_code, reason = "not all of what other tests measure is measured here")]
mod panels;

use measure::{Spot, in_line, marked, open_pored, raised, spots};
use panels::{ASIDE, COARSE, Dress, Field, LOW, draw, likeness, recipe, spoiled, spread};
use stepboard_picture::{Finish, Grid, Lamp, Panel, Probe, Recipe, Severity, Species};

const FINE: f32 = 0.25;

fn cleared(species: Species, seed: u32) -> Recipe {
    recipe(species, Finish::Cleared, Dress::Amber, seed)
}

fn whole(spots: &[Spot]) -> Vec<f32> {
    spots.iter().filter(|spot| !spot.cut).map(|spot| spot.across).collect()
}

fn middle(values: &mut [f32]) -> f32 {
    values.sort_by(f32::total_cmp);
    values[values.len() / 2]
}

/// Hollows of a loupe's picture, mm across.
fn hollows(recipe: &Recipe, slug: &str, at: (f32, f32), deeper: f32) -> Vec<f32> {
    const SIDE: usize = 400;
    const LOUPE: f32 = 0.05;
    let grid = Grid::covering(120.0, 90.0, FINE).window(at, SIDE, LOUPE);
    let with = Panel::draw(spoiled(recipe, slug, Severity::Severe), grid);
    let without = Panel::draw(recipe.clone(), grid);
    whole(&spots(&with, |place| with.height()[place] - without.height()[place] < -deeper))
}

/// Fish-eyes are shallow and wide, pops tiny (faults reference). No source gives millimetres: 1.4 to 8 mm and under 1.2 mm are our
/// own recipe, by eye, so that this holds the picture still and checks no size. Both are as large however fine the picture is.
#[test]
fn bowls_are_millimetres_wide_and_pits_pin_size() {
    let mut means = Vec::new();
    for scale in [0.5, 0.25] {
        let mut sizes = Vec::new();
        for seed in 1..7 {
            let (panel, rise) = raised(&cleared(Species::plain(), seed), "fish-eye", Severity::Plain, scale);
            sizes.extend(whole(&spots(&panel, |place| rise[place] < -1.0)));
        }
        assert!(sizes.iter().all(|across| (1.2..9.0).contains(across)), "{sizes:?}");
        means.push(middle(&mut sizes));
    }
    assert!((means[0] / means[1] - 1.0).abs() < 0.1, "{means:?}");
    let recipe = cleared(Species::plain(), 2);
    let pops = marked(&draw(&spoiled(&recipe, "solvent-pop", Severity::Severe), FINE));
    let at = pops[pops.len() / 2];
    let mut pits = hollows(&recipe, "solvent-pop", (at.x, at.y), 12.0);
    assert!(pits.len() > 5 && pits.iter().all(|across| (0.1..1.2).contains(across)), "{pits:?}");
    assert!(means[1] > 5.0 * middle(&mut pits));
}

/// Holes sit in pore lines; bowls and pops take no notice (la-02, la-03).
#[test]
fn pinholes_lie_on_pores_and_behind_each_other() {
    let recipe = cleared(open_pored(), 3);
    let wood = draw(&recipe, FINE);
    let seen = Field::light(&wood, ASIDE, 0);
    let mean = seen.values.iter().sum::<f32>() / seen.values.len() as f32;
    let pores = |spot: &Spot| {
        let at =
            |length: f32, count: usize| (1..count).find(|n| *n as f32 * FINE > length).unwrap_or(count) - 1;
        let (column, row) = (at(spot.x, seen.columns), at(spot.y, seen.rows));
        // The darkest of three pixels across the grain.
        let rows = row.saturating_sub(1)..(row + 2).min(seen.rows);
        rows.map(|row| seen.at(column, row)).fold(255.0, f32::min) < 0.88 * mean
    };
    let found = |slug: &str| {
        let spots = marked(&draw(&spoiled(&recipe, slug, Severity::Plain), FINE));
        let on = spots.iter().filter(|spot| pores(spot)).count() as f32 / spots.len() as f32;
        (spots.len(), on, in_line(&spots))
    };
    let (count, on, line) = found("pore-pinhole");
    let (pops, anywhere, any) = found("solvent-pop");
    assert!(count > 40 && pops > 40, "{count} {pops}");
    assert!(on > 0.85 && anywhere < 0.5, "{on} {anywhere}");
    assert!(line > 0.55 && any < 0.4, "{line} {any}");
}

/// The same coat on maple, or over full filler: bowls and pops as before, no pinhole (la-02, la-03).
#[test]
fn no_pinholes_where_there_are_no_open_pores() {
    let open = cleared(open_pored(), 3);
    let filled = Recipe { filler: Some([74, 50, 32]), ..open.clone() };
    for other in [cleared(Species::plain(), 3), filled] {
        for (slug, some) in [("pore-pinhole", false), ("solvent-pop", true), ("fish-eye", true)] {
            let panel = draw(&spoiled(&other, slug, Severity::Severe), FINE);
            assert_eq!(panel.mask().iter().any(|mask| *mask > 0.0), some, "{slug}");
            if some {
                let same = draw(&spoiled(&open, slug, Severity::Severe), FINE);
                assert_eq!(panel.mask(), same.mask(), "{slug} does not mind the wood");
            }
        }
    }
}

/// [la-01] Fish-eyes are there within seconds, pops come hours later (G2 11.4.2.1; T1): of the coat as it left the gun only
/// the first are seen.
#[test]
fn only_fish_eyes_are_there_at_once() {
    let recipe = Recipe { probe: Probe::Aged, ..cleared(Species::plain(), 5) };
    let most = |slug: &str| {
        let (_, rise) = raised(&recipe, slug, Severity::Severe, FINE);
        rise.iter().fold(0.0, |most: f32, rise| most.max(rise.abs()))
    };
    assert!(most("fish-eye") > 8.0 && most("solvent-pop") < 0.01);
}

/// How alike a face is to itself `(columns, rows)` further.
fn alike(field: &Field, (along, across): (usize, usize)) -> f32 {
    let pairs = (0..field.rows - across).flat_map(|row| {
        (0..field.columns - along).map(move |column| (column, row, column + along, row + across))
    });
    let (here, there): (Vec<f32>, Vec<f32>) =
        pairs.map(|(c, r, c2, r2)| (field.at(c, r), field.at(c2, r2))).unzip();
    likeness(&here, &there)
}

/// Where a face is least like itself along a direction: half of the way from bump to bump, mm.
fn half_way(field: &Field, direction: (usize, usize), scale: f32) -> f32 {
    let steps = 1..14_usize;
    let worst = steps.min_by(|a, b| {
        let at = |n: usize| alike(field, (direction.0 * n, direction.1 * n));
        at(*a).total_cmp(&at(*b))
    });
    scale * worst.unwrap_or(0) as f32 * (direction.0 as f32).hypot(direction.1 as f32)
}

/// Orange peel is even and shallow and has no direction (faults reference); no source gives millimetres: 2 to 5 mm from bump
/// to bump and some micrometres high are our own recipe, by eye, and only held still; grain sink on the same wood runs with
/// the grain, and weeks before it was not there (la-06).
#[test]
fn orange_peel_has_a_wavelength_and_no_direction() {
    let recipe = cleared(open_pored(), 3);
    for severity in Severity::ALL {
        let (panel, rise) = raised(&recipe, "orange-peel", severity, COARSE);
        let mut sorted = rise.clone();
        sorted.sort_by(f32::total_cmp);
        let high = sorted[sorted.len() * 99 / 100] - sorted[sorted.len() / 100];
        assert!((1.0..12.0).contains(&high), "{high}");
        let field = Field::of(&panel, rise);
        let ways = [(1, 0), (0, 1), (1, 1)].map(|way| 2.0 * half_way(&field, way, COARSE));
        assert!(ways.iter().all(|length| (2.0..6.5).contains(length)), "{ways:?}");
        let turned = alike(&field, (2, 0)) / alike(&field, (0, 2));
        assert!((0.8..1.25).contains(&turned), "{turned}");
    }
    let (panel, sink) = raised(&recipe, "grain-sink", Severity::Severe, COARSE);
    let sink = Field::of(&panel, sink);
    assert!(alike(&sink, (2, 0)) > 1.5 * alike(&sink, (0, 2)));
    let before = Recipe { probe: Probe::Aged, ..recipe };
    let moved = |slug: &str| spread(&raised(&before, slug, Severity::Severe, COARSE).1);
    assert!(moved("orange-peel") > 1.0 && moved("grain-sink") < 0.01);
}

/// Each bump of orange peel keeps its gloss; on dry spray the lamp's image is spread out or gone (la-05).
#[test]
fn peel_is_as_bright_as_the_lamp_and_dry_spray_is_dull() {
    let dark = Species { base: [92, 62, 46], early: [82, 54, 40], ..Species::plain() };
    let recipe = cleared(dark, 4);
    let light = |panel: &Panel| Field::light(panel, Lamp::OVERHEAD, 2).values;
    let clean = light(&draw(&recipe, COARSE));
    let glare = |slug: &str, severity: Severity| {
        let lit = light(&draw(&spoiled(&recipe, slug, severity), COARSE));
        let share = |lit: &[f32]| lit.iter().filter(|part| **part > 215.0).count() as f32 / lit.len() as f32;
        share(&lit) / share(&clean)
    };
    let peel = Severity::ALL.map(|severity| glare("orange-peel", severity));
    let dry = Severity::ALL.map(|severity| glare("dry-spray", severity));
    assert!(peel.iter().all(|share| *share > 0.6), "{peel:?}");
    assert!(dry[0] < 0.9 && dry[1] < 0.5 && dry[2] < 0.1, "{dry:?}");
}

/// Nibs are single points that stand up and can be counted; dry spray is a field (la-07); a bowl is hollow (la-04).
#[test]
fn nibs_stand_up_and_can_be_counted() {
    let recipe = cleared(Species::plain(), 4);
    let (nibs, rise) = raised(&recipe, "dust-nib", Severity::Plain, FINE);
    let count = spots(&nibs, |place| rise[place] > 3.0).len();
    assert!((20..45).contains(&count), "{count}");
    assert!(rise.iter().all(|rise| *rise > -1.0), "nothing is hollow");
    let marks = marked(&nibs);
    assert!(marks.len().abs_diff(count) < 5 && marks.iter().all(|spot| spot.across < 4.0), "{marks:?}");
    let (bowls, sunk) = raised(&recipe, "fish-eye", Severity::Plain, FINE);
    assert!(marked(&bowls).iter().all(|spot| spot.across > 1.2));
    let least = sunk.iter().copied().fold(0.0, f32::min);
    assert!(least < -8.0, "{least}");
    let field = draw(&spoiled(&recipe, "dry-spray", Severity::Plain), FINE);
    let marked = field.mask().iter().filter(|mask| **mask > 0.5).count();
    assert!(marked > field.mask().len() / 3, "an area");
    // Sand under a low lamp: most small pieces of it are uneven, of the nibs' panel hardly one.
    let uneven = |panel: &Panel| {
        let lit = Field::light(panel, LOW, 0).less(&Field::light(&draw(&recipe, FINE), LOW, 0));
        let piece = |column: usize, row: usize| {
            let inside = (0..144).map(|n| lit.at(column + n % 12, row + n / 12));
            spread(&inside.collect::<Vec<f32>>()) > 2.0
        };
        let pieces: Vec<bool> = (0..lit.rows / 12)
            .flat_map(|row| (0..lit.columns / 12).map(move |column| (12 * column, 12 * row)))
            .map(|(column, row)| piece(column, row))
            .collect();
        pieces.iter().filter(|uneven| **uneven).count() as f32 / pieces.len() as f32
    };
    let (sand, single) = (uneven(&field), uneven(&nibs));
    assert!(sand > 0.5 && single < 0.15, "{sand} {single}");
}

/// What is slight can be seen, and what is severe is more.
#[test]
fn the_slightest_can_be_seen() {
    for slug in
        ["fish-eye", "solvent-pop", "pore-pinhole", "dust-nib", "orange-peel", "dry-spray", "soft-film"]
    {
        let recipe = cleared(open_pored(), 3);
        let clean = draw(&recipe, FINE);
        let seen = |severity| {
            let panel = draw(&spoiled(&recipe, slug, severity), FINE);
            let both = [0, 1, 2].map(|part| {
                Field::light(&panel, Lamp::OVERHEAD, part).less(&Field::light(&clean, Lamp::OVERHEAD, part))
            });
            let changed =
                (0..panel.mask().len()).filter(|n| both.iter().any(|part| part.values[*n].abs() > 6.0));
            changed.count() as f32 / panel.mask().len() as f32
        };
        let (slight, severe) = (seen(Severity::Slight), seen(Severity::Severe));
        assert!(slight > 0.002 && severe > 1.4 * slight, "{slug}: {slight}, {severe}");
    }
}

/// A cloth prints its weave into soft film: the dents repeat evenly, as bumps of peel do not, and are as many on wood without
/// pores, where nothing sinks (la-32). The print does not wipe off as bloom does (la-33).
#[test]
fn a_weave_repeats_and_does_not_wipe_off() {
    let recipe = recipe(Species::plain(), Finish::Buffed, Dress::Amber, 6);
    let repeats = |slug: &str| {
        let (panel, rise) = raised(&recipe, slug, Severity::Severe, FINE);
        let field = Field::of(&panel, rise);
        let ways = (0..11_u8).flat_map(|along| (0..11_u8).map(move |across| (along, across)));
        let ring = ways.filter(|way| (6.0..11.0).contains(&f32::from(way.0).hypot(f32::from(way.1))));
        ring.map(|way| alike(&field, (way.0.into(), way.1.into()))).fold(-1.0, f32::max)
    };
    let (weave, peel) = (repeats("soft-film"), repeats("orange-peel"));
    assert!(weave > 0.4 && peel < 0.3, "{weave} {peel}");
    assert_eq!(spread(&raised(&recipe, "grain-sink", Severity::Severe, COARSE).1), 0.0);
    let wiped = |slug: &str, probe: Probe| {
        let panel = draw(&Recipe { probe, ..spoiled(&recipe, slug, Severity::Severe) }, COARSE);
        Field::light(&panel, Lamp::OVERHEAD, 0).values
    };
    let changes = |slug: &str| wiped(slug, Probe::Wiped) != wiped(slug, Probe::None);
    assert!(!changes("soft-film") && changes("bloom-haze"));
}

/// Under a low lamp from the left a bowl is dark on its left, a nib is bright there: hollow or bump (la-04).
#[test]
fn a_low_lamp_tells_hollows_from_bumps() {
    let recipe = cleared(Species::plain(), 8);
    let clean = Field::light(&draw(&recipe, FINE), LOW, 0);
    let left = |slug: &str| {
        let panel = draw(&spoiled(&recipe, slug, Severity::Plain), FINE);
        let change = Field::light(&panel, LOW, 0).less(&clean);
        let sides = marked(&panel).into_iter().filter(|spot| !spot.cut).map(|spot| {
            // Brightness of the left half over that of the right, within the spot.
            let lean = |(column, row): (usize, usize)| {
                let (x, y) = ((column as f32 + 0.5) * FINE - spot.x, (row as f32 + 0.5) * FINE - spot.y);
                if x.hypot(y) < 0.5 * spot.across { -x.signum() * change.at(column, row) } else { 0.0 }
            };
            let places =
                (0..change.rows).flat_map(|row| (0..change.columns).map(move |column| (column, row)));
            places.map(lean).sum::<f32>()
        });
        let sides: Vec<f32> = sides.collect();
        sides.iter().filter(|side| **side > 0.0).count() as f32 / sides.len() as f32
    };
    let (bowls, nibs) = (left("fish-eye"), left("dust-nib"));
    assert!(bowls < 0.1 && nibs > 0.75, "{bowls} {nibs}");
}

/// What is marked covers what one sees: of all pixels that a fault changes, nearly all are marked.
#[test]
fn what_is_seen_is_marked() {
    let recipe = cleared(open_pored(), 9);
    let clean = Field::light(&draw(&recipe, FINE), Lamp::OVERHEAD, 1);
    for slug in ["fish-eye", "solvent-pop", "pore-pinhole", "dust-nib", "dry-spray", "soft-film"] {
        let panel = draw(&spoiled(&recipe, slug, Severity::Plain), FINE);
        let change = Field::light(&panel, Lamp::OVERHEAD, 1).less(&clean);
        let seen: Vec<usize> = (0..change.values.len()).filter(|n| change.values[*n].abs() > 8.0).collect();
        let beside = seen.iter().filter(|n| {
            let (x, y) = ((*n % change.columns) as f32 * FINE, (*n / change.columns) as f32 * FINE);
            !panel.is_on_fault(x, y, 0.5)
        });
        let share = beside.count() as f32 / seen.len() as f32;
        assert!(share < 0.12, "{slug}: {share}");
    }
}

/// Powder of dry spray rubs off, its roughness stays (la-08): the wood is less dull in the wiped band, the lamp is not back.
#[test]
fn powder_wipes_off_but_the_gloss_stays_lost() {
    let recipe = cleared(Species { base: [92, 62, 46], early: [82, 54, 40], ..Species::plain() }, 4);
    let clean = Field::light(&draw(&recipe, COARSE), ASIDE, 2);
    let sprayed = |probe: Probe| {
        let panel = draw(&Recipe { probe, ..spoiled(&recipe, "dry-spray", Severity::Severe) }, COARSE);
        let dull = Field::light(&panel, ASIDE, 2).less(&clean).means().1;
        (dull, panel.rough().iter().copied().fold(f32::MAX, f32::min), draw(&recipe, COARSE).rough()[0])
    };
    let ((before, _, _), (after, least, gloss)) = (sprayed(Probe::None), sprayed(Probe::Wiped));
    let gain = before.iter().zip(&after).map(|(before, after)| before - after).fold(0.0, f32::max);
    assert!(gain > 3.0, "{gain}");
    assert!(least > 3.0 * gloss, "{least} {gloss}");
}
