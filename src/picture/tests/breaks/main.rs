//! Runs, cracks and what else breaks or thickens a film, measured from heights and pixels. Where no source is named:
//! common practice, no source.

mod edges;
mod measure;

use measure::{brightness, changed, named, panel};
use stepboard_picture::{Grid, Lamp, LampKind, Panel, Probe, Severity};

/// Pixels in a row and rows.
fn shape(panel: &Panel) -> (usize, usize) {
    (panel.grid().columns, panel.grid().rows)
}

/// How much a fault raises each pixel, micrometres.
fn raised(slug: &str, severity: Severity, seed: u32, scale: f32) -> (Panel, Vec<f32>) {
    let (with, without) = (panel(Some((named(slug), severity)), seed, scale), panel(None, seed, scale));
    let rise = with.height().iter().zip(without.height()).map(|(a, b)| a - b).collect();
    (with, rise)
}

/// How strongly the change that a fault makes varies along the grain, against across it.
fn along_against_across(slug: &str, severity: Severity, seed: u32) -> f32 {
    let (with, without) = (panel(Some((named(slug), severity)), seed, 0.25), panel(None, seed, 0.25));
    let lamp = Lamp { x: 500.0, ..Lamp::OVERHEAD };
    let change: Vec<f32> =
        brightness(&with, lamp).iter().zip(brightness(&without, lamp)).map(|(a, b)| a - b).collect();
    let (columns, rows) = shape(&with);
    let (mut along, mut across) = (0.0, 0.0);
    for row in 1..rows {
        for column in 1..columns {
            let here = change[row * columns + column];
            along += (here - change[row * columns + column - 1]).powi(2);
            across += (here - change[(row - 1) * columns + column]).powi(2);
        }
    }
    along / across
}

/// A run hangs down a face (T42; G1 5-30) and is thickest at its lower end.
#[test]
fn a_run_hangs_down_and_is_thickest_at_its_head() {
    for seed in [1, 2, 3] {
        let (panel, rise) = raised("run-sag", Severity::Slight, seed, 0.5);
        let (columns, _) = shape(&panel);
        let on: Vec<(usize, usize, f32)> = rise
            .iter()
            .enumerate()
            .filter(|(_, rise)| **rise > 3.0)
            .map(|(place, rise)| (place % columns, place / columns, *rise))
            .collect();
        let (top, bottom) = (on.iter().map(|p| p.1).min().unwrap(), on.iter().map(|p| p.1).max().unwrap());
        let (left, right) = (on.iter().map(|p| p.0).min().unwrap(), on.iter().map(|p| p.0).max().unwrap());
        assert!(bottom - top > 2 * (right - left), "longer than wide: {left}-{right}, {top}-{bottom}");
        let most = |from: f32, to: f32| {
            let part = |row: usize| (row - top) as f32 / (bottom - top) as f32;
            on.iter().filter(|p| (from..=to).contains(&part(p.1))).map(|p| p.2).fold(0.0, f32::max)
        };
        assert!(most(0.66, 1.0) > 1.3 * most(0.0, 0.4), "thick at the head");
    }
}

/// [la-21, la-22] Cold checks cross the grain (T3); cracks of the wood run with it (G2 11.4.2.6); stars have no direction (T1).
#[test]
fn cracks_run_across_the_grain_along_it_or_every_way() {
    for seed in [1, 2] {
        let ratio = |slug, severity| along_against_across(slug, severity, seed);
        let (check, split) =
            (ratio("cold-check", Severity::Slight), ratio("substrate-crack", Severity::Plain));
        assert!(check > 3.0, "{check}");
        assert!(split < 0.33, "{split}");
        let star = ratio("crows-foot", Severity::Severe);
        assert!((0.6..1.7).contains(&star), "{star}");
    }
}

/// A crow's foot is three short cracks from one point (T1); a check is a line that is longer than any star.
#[test]
fn a_crows_foot_is_a_star_of_three() {
    let marks = |slug| panel(Some((named(slug), Severity::Slight)), 4, 0.25);
    let stars = marks("crows-foot");
    let found = pieces(&stars);
    let threes = found.iter().filter(|piece| arms(&stars, piece) == 3).count();
    assert!(found.len() >= 6 && threes * 10 >= found.len() * 8, "{threes} of {}", found.len());
    let wide = |piece: &Vec<usize>, columns: usize| {
        let span = |part: fn(usize, usize) -> usize| {
            let ends = || piece.iter().map(|n| part(*n, columns));
            (ends().max().unwrap() - ends().min().unwrap()) as f32 * 0.25
        };
        span(|n, columns| n % columns).max(span(|n, columns| n / columns))
    };
    assert!(found.iter().all(|piece| (2.0..11.0).contains(&wide(piece, stars.grid().columns))));
    let checks = marks("cold-check");
    let lines = pieces(&checks);
    assert!(lines.iter().filter(|piece| wide(piece, checks.grid().columns) > 20.0).count() >= 3);
}

/// Marked pixels that hang together, each group a list of places; specks are left out.
fn pieces(panel: &Panel) -> Vec<Vec<usize>> {
    let (columns, rows) = shape(panel);
    let mut free: Vec<bool> = panel.mask().iter().map(|mask| *mask > 0.05).collect();
    let mut pieces = Vec::new();
    for start in 0..free.len() {
        let (mut open, mut piece) = (vec![start], Vec::new());
        while let Some(place) = open.pop() {
            if !std::mem::replace(&mut free[place], false) {
                continue;
            }
            piece.push(place);
            let (column, row) = (place % columns, place / columns);
            for (c, r) in (row.saturating_sub(1)..(row + 2).min(rows))
                .flat_map(|r| (column.saturating_sub(1)..(column + 2).min(columns)).map(move |c| (c, r)))
            {
                open.push(r * columns + c);
            }
        }
        if piece.len() > 10 {
            pieces.push(piece);
        }
    }
    pieces
}

/// Arms that cross a circle of 1.3 mm round the thickest point of a piece.
fn arms(panel: &Panel, piece: &[usize]) -> usize {
    let columns = panel.grid().columns;
    let at = |place: usize| ((place % columns) as f32, (place / columns) as f32);
    let near = |(column, row): (f32, f32), reach: f32| {
        let within = |n: &&usize| (at(**n).0 - column).hypot(at(**n).1 - row) <= reach;
        piece.iter().filter(within).map(|n| panel.mask()[*n]).sum::<f32>()
    };
    let middle = piece.iter().max_by(|a, b| near(at(**a), 3.0).total_cmp(&near(at(**b), 3.0)));
    let (column, row) = at(*middle.unwrap());
    let radius = 1.3 / panel.grid().scale;
    let round: Vec<bool> = (0..60)
        .map(|step| step as f32 / 60.0 * std::f32::consts::TAU)
        .map(|angle| near((column + radius * angle.cos(), row + radius * angle.sin()), 0.9) > 0.1)
        .collect();
    (0..60).filter(|n| round[*n] && !round[(n + 1) % 60]).count()
}

/// Severe checks close into cells: ground that is cut off on every side, as in crazing. A few cracks cut nothing off.
#[test]
fn severe_checks_are_a_net_of_closed_cells() {
    let cells = |severity| closed_cells(&panel(Some((named("cold-check"), severity)), 2, 0.25));
    assert_eq!(cells(Severity::Slight), 0);
    let net = cells(Severity::Severe);
    assert!(net >= 60, "{net} cells");
}

/// Areas of more than 1 square mm that are not marked and do not reach the rim of the panel.
fn closed_cells(panel: &Panel) -> usize {
    let (columns, rows) = shape(panel);
    let pixel = panel.grid().scale * panel.grid().scale;
    let mut seen: Vec<bool> = panel.mask().iter().map(|mask| *mask > 0.05).collect();
    let mut cells = 0;
    for start in 0..seen.len() {
        let (mut open, mut area, mut inside) = (vec![start], 0.0, true);
        while let Some(place) = open.pop() {
            if std::mem::replace(&mut seen[place], true) {
                continue;
            }
            area += pixel;
            let (column, row) = (place % columns, place / columns);
            if column == 0 || row == 0 || column + 1 == columns || row + 1 == rows {
                inside = false;
                continue;
            }
            open.extend([place - 1, place + 1, place - columns, place + columns]);
        }
        cells += usize::from(inside && area >= 1.0);
    }
    cells
}

/// What is slight can be seen, and what is severe is more.
#[test]
fn the_slightest_can_be_seen() {
    for slug in [
        "run-sag",
        "cold-check",
        "peeling",
        "wrinkle-lift",
        "substrate-crack",
        "crows-foot",
        "fat-edge",
        "edge-pullback",
    ] {
        let clean = panel(None, 3, 0.25);
        let seen = |severity| changed(&panel(Some((named(slug), severity)), 3, 0.25), &clean, Lamp::OVERHEAD);
        let (slight, severe) = (seen(Severity::Slight), seen(Severity::Severe));
        assert!(slight > 0.003 && severe > 2.0 * slight, "{slug}: {slight}, {severe}");
    }
}

/// [la-34] Peeled film is gone: where it is missing the surface lies deeper by a whole film and mirrors no lamp, and all of that is
/// marked (appearance of peeling: flakes or sheets, to the wood). Where a check cracked it, the film holds.
#[test]
fn peeled_film_is_missing_and_checked_film_is_not() {
    let missing = |slug: &str| {
        let (panel, rise) = raised(slug, Severity::Plain, 5, 0.5);
        let deep: Vec<bool> = rise.iter().map(|rise| *rise < -20.0).collect();
        let marked = deep.iter().zip(panel.mask()).all(|(deep, mask)| !*deep || *mask > 0.05);
        (panel, deep, marked)
    };
    let (peeled, gone, marked) = missing("peeling");
    assert!(marked, "what is gone is marked");
    let share = gone.iter().filter(|gone| **gone).count() as f32 / gone.len() as f32;
    assert!((0.02..0.3).contains(&share), "{share}");
    // The lamp laid right over it and taken away: bare wood hardly differs, film does.
    let over = |panel: &Panel| {
        let at = |y: f32| brightness(panel, Lamp { kind: LampKind::Tubes, x: 60.0, y, turn: 0.0 });
        let lit = [10.0, 20.0, 30.0, 40.0, 50.0, 60.0, 70.0, 80.0].map(at);
        let most = |place: usize| lit.iter().map(|lit| lit[place]).fold(0.0, f32::max);
        let least = |place: usize| lit.iter().map(|lit| lit[place]).fold(255.0, f32::min);
        let changes: Vec<f32> = (0..gone.len()).filter(|n| gone[*n]).map(|n| most(n) - least(n)).collect();
        changes.iter().sum::<f32>() / changes.len() as f32
    };
    let (bare, whole) = (over(&peeled), over(&panel(None, 5, 0.5)));
    assert!(bare < 12.0 && whole > 3.0 * bare, "{bare} {whole}");
    assert!(missing("cold-check").1.iter().all(|gone| !gone), "cracks first stay stuck");
}

/// From the foot to the top within 6 mm, in the middle of all such squares, micrometres.
fn peak_to_valley(panel: &Panel, rise: &[f32]) -> f32 {
    const SIDE: usize = 24;
    let (columns, rows) = shape(panel);
    let square = |column: usize, row: usize| {
        let part = (row..row + SIDE).flat_map(|row| (column..column + SIDE).map(move |c| row * columns + c));
        let ends = part.fold((f32::MAX, f32::MIN), |(a, b), n| (a.min(rise[n]), b.max(rise[n])));
        ends.1 - ends.0
    };
    let mut heights: Vec<f32> = (0..rows / SIDE)
        .flat_map(|row| (0..columns / SIDE).map(move |column| (SIDE * column, SIDE * row)))
        .map(|(column, row)| square(column, row))
        .collect();
    heights.sort_by(f32::total_cmp);
    heights[heights.len() / 2]
}

/// [la-24] Wrinkles stand many times higher than orange peel, and their sides are soft: no step from pixel to pixel as at a crack.
#[test]
fn wrinkles_are_soft_folds_many_times_higher_than_peel() {
    let (panel, rise) = raised("wrinkle-lift", Severity::Severe, 6, 0.25);
    let (columns, _) = shape(&panel);
    let middle = peak_to_valley(&panel, &rise);
    assert!((25.0..70.0).contains(&middle), "peak to valley {middle}");
    let (peeled, peel) = raised("orange-peel", Severity::Severe, 6, 0.25);
    let peel = peak_to_valley(&peeled, &peel);
    assert!(peel > 1.0 && middle > 4.0 * peel, "{middle} against {peel}");
    let mut steps: Vec<f32> = rise
        .windows(2)
        .enumerate()
        .filter(|(n, _)| (n + 1) % columns != 0)
        .map(|(_, w)| (w[0] - w[1]).abs())
        .collect();
    steps.sort_by(f32::total_cmp);
    let steep = steps[steps.len() * 98 / 100];
    assert!(steep < 0.4 * middle, "soft sides: {steep} of {middle}");
}

/// Distance of a place from the nearest edge of a panel, mm.
fn from_edge(panel: &Panel, place: usize) -> f32 {
    let (columns, rows) = shape(panel);
    let (column, row) = (place % columns, place / columns);
    column.min(row).min(columns - 1 - column).min(rows - 1 - row) as f32 * panel.grid().scale
}

/// [la-25] A fat edge is an even bead along an arris and nothing elsewhere; a run is on the face (T42; G1 5-30).
#[test]
fn a_fat_edge_is_an_even_bead_and_a_run_is_on_the_face() {
    for seed in [1, 2, 3, 4] {
        let (panel, rise) = raised("fat-edge", Severity::Slight, seed, 0.5);
        let (columns, rows) = shape(&panel);
        let inner = (0..rise.len()).filter(|n| from_edge(&panel, *n) > 9.0);
        assert!(inner.map(|n| rise[n].abs()).fold(0.0, f32::max) < 1.0);
        let deep = 16;
        let crests: [Vec<f32>; 4] = [
            (0..columns).map(|c| (0..deep).map(|r| rise[r * columns + c]).fold(0.0, f32::max)).collect(),
            (0..columns)
                .map(|c| (rows - deep..rows).map(|r| rise[r * columns + c]).fold(0.0, f32::max))
                .collect(),
            (0..rows).map(|r| (0..deep).map(|c| rise[r * columns + c]).fold(0.0, f32::max)).collect(),
            (0..rows)
                .map(|r| (columns - deep..columns).map(|c| rise[r * columns + c]).fold(0.0, f32::max))
                .collect(),
        ];
        let even = crests.iter().filter(|crests| {
            let (low, high) =
                crests.iter().fold((f32::MAX, 0.0_f32), |(low, high), c| (low.min(*c), high.max(*c)));
            low > 15.0 && high < 1.6 * low
        });
        assert_eq!(even.count(), 1, "one even bead, seed {seed}");
        let (panel, rise) = raised("run-sag", Severity::Slight, seed, 0.5);
        let edge = (0..rise.len()).filter(|n| from_edge(&panel, *n) < 3.0);
        assert!(edge.map(|n| rise[n].abs()).fold(0.0, f32::max) < 1.0);
    }
}

/// Film drew back from the arris: all of the fault lies along it, the film is gone there, and no paper has dulled what lies
/// beside it (N7; appearance of edge pull-back).
#[test]
fn an_edge_that_film_drew_back_from_is_bare_and_not_scuffed() {
    for severity in Severity::ALL {
        let (panel, rise) = raised("edge-pullback", severity, 2, 0.25);
        let clean = measure::panel(None, 2, 0.25);
        let marked: Vec<usize> = (0..rise.len()).filter(|n| panel.mask()[*n] > 0.5).collect();
        assert!(marked.len() * 200 > rise.len(), "{severity:?}: {}", marked.len());
        assert!(marked.iter().all(|n| from_edge(&panel, *n) < 6.0 && rise[*n] < -1.0));
        let beside = (0..rise.len()).filter(|n| panel.mask()[*n] == 0.0);
        assert!(beside.map(|n| (panel.rough()[n] - clean.rough()[n]).abs()).fold(0.0, f32::max) < 0.002);
    }
}

/// [la-19, la-23] Looked at as it was before: an edge that film drew back from was bare before any sanding, one that was cut
/// through was not (N7); folds stood within the hour, checks came later, on dry film (T21; G1 5-20). What came later leaves
/// no trace.
#[test]
fn what_was_there_before_tells_look_alikes_apart() {
    let seen = |fault: Option<&str>, probe| {
        let recipe = stepboard_picture::Recipe {
            probe,
            ..measure::recipe(fault.map(|slug| (named(slug), Severity::Plain)), 9)
        };
        brightness(&Panel::draw(recipe, Grid::covering(120.0, 90.0, 0.5)), Lamp::OVERHEAD)
    };
    let clean = seen(None, Probe::None);
    for (later, at_once) in [("sand-through", "edge-pullback"), ("cold-check", "wrinkle-lift")] {
        assert!(
            seen(Some(later), Probe::None) != clean && seen(Some(later), Probe::Aged) == clean,
            "{later}"
        );
        let now = seen(Some(at_once), Probe::None);
        assert!(now != clean && seen(Some(at_once), Probe::Aged) == now, "{at_once}");
    }
}

/// Sizes are in mm: what is marked on the panel is marked in a window that is drawn twice as fine, and the other way round.
#[test]
fn a_finer_picture_has_the_fault_in_the_same_place() {
    const SIDE: usize = 320;
    const AT: (f32, f32) = (60.0, 45.0);
    const REACH: f32 = 0.6;
    for slug in ["run-sag", "cold-check", "peeling", "wrinkle-lift", "substrate-crack", "crows-foot"] {
        let recipe = measure::recipe(Some((named(slug), Severity::Severe)), 3);
        let grid = Grid::covering(120.0, 90.0, 0.25);
        let whole = Panel::draw(recipe.clone(), grid);
        let fine = Panel::draw(recipe, grid.window(AT, SIDE, 0.125));
        let (mut marked, mut met) = ([0.0, 0.0], [0.0, 0.0]);
        for n in 0..SIDE * SIDE {
            let along = |n: usize, middle: f32| middle + (n as f32 + 0.5 - 0.5 * SIDE as f32) * 0.125;
            let (x, y) = (along(n % SIDE, AT.0), along(n / SIDE, AT.1));
            let (here, there) = (fine.is_on_fault(x, y, 0.0), whole.is_on_fault(x, y, 0.0));
            for (part, (one, other)) in [(here, &whole), (there, &fine)].into_iter().enumerate() {
                marked[part] += f32::from(u8::from(one));
                met[part] += f32::from(u8::from(one && other.is_on_fault(x, y, REACH)));
            }
        }
        for part in [0, 1] {
            assert!(
                marked[part] > 1_000.0 && met[part] > 0.97 * marked[part],
                "{slug}: {met:?} of {marked:?}"
            );
        }
    }
}
