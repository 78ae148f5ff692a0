//! Faults of clear film, of levelling and of buffing, measured from pixels and heights: what decides between two look-alikes
//! changes the picture of the one and not of the other. Where no source is named: common practice, no source. Letters and
//! numbers in brackets name the sources of the faults reference.

mod clouds;
mod gloss;
mod measure;
mod worn;

use measure::{
    ASIDE, Face, SCALE, bulb, bytes, change, dark, draw, likeness, porous, probed, sound, spoiled,
};
use stepboard_picture::{Finish, Lamp, Probe, Recipe, Severity};

const SEEDS: [u32; 3] = [1, 2, 3];
/// Change of brightness, of 255, that nobody overlooks.
const SEEN: f32 = 6.0;
const ALL: [&str; 10] = [
    "blush",
    "bloom-haze",
    "buff-swirl",
    "witness-line",
    "sand-through",
    "grey-pore",
    "white-filler-pore",
    "water-spot",
    "filler-haze",
    "buff-burn",
];

fn cleared(seed: u32) -> Recipe {
    sound(dark(), Finish::Cleared, seed)
}

fn buffed(seed: u32) -> Recipe {
    sound(dark(), Finish::Buffed, seed)
}

/// Pixels of pores by their darkness in the sound panel, and pixels round which nothing is darker.
fn pores(recipe: &Recipe) -> (Vec<bool>, Vec<bool>) {
    const AROUND: usize = 2;
    /// Steps of 255 that the light alone varies within them.
    const EVEN: f32 = 1.0;
    let bright = Face::bright(&draw(recipe, SCALE), ASIDE);
    let mut sorted = bright.values.clone();
    sorted.sort_by(f32::total_cmp);
    let wood = sorted[sorted.len() * 3 / 4];
    let (columns, rows) = (bright.grid.columns, bright.grid.rows);
    let flat = |place: usize| {
        let near = |n: usize, most: usize| n.saturating_sub(AROUND)..(n + AROUND + 1).min(most);
        let (across, along) = (near(place / columns, rows), near(place % columns, columns));
        let values = across.flat_map(|row| along.clone().map(move |column| (column, row)));
        let (least, most) = values
            .map(|(column, row)| bright.at(column, row))
            .fold((f32::MAX, 0.0_f32), |(least, most), value| (least.min(value), most.max(value)));
        most - least < EVEN
    };
    let pore = bright.values.iter().map(|value| *value < 0.8 * wood).collect();
    (pore, (0..bright.values.len()).map(flat).collect())
}

/// [la-11; T26] Blush is white between the pores too, grey pores are white in the pores only.
#[test]
fn grey_pores_leave_what_is_between_them() {
    for seed in SEEDS {
        let recipe = sound(porous(), Finish::Buffed, seed);
        let (pore, flat) = pores(&recipe);
        let parts = |slug: &str| {
            let change = change(&recipe, slug, Severity::Severe, ASIDE);
            (change.mean(|place| pore[place]), change.mean(|place| flat[place]))
        };
        let (in_pore, between) = parts("white-filler-pore");
        assert!(in_pore > 5.0 * SEEN && between.abs() < 0.5, "seed {seed}: {in_pore}, {between}");
        let (in_pore, between) = parts("blush");
        assert!(between > 2.0 * SEEN && in_pore > SEEN, "seed {seed}: {in_pore}, {between}");
    }
}

/// [la-12; T26, T13] Air in a pore changes with the lamp's side; white filler is the same from every angle.
#[test]
fn grey_pores_change_with_the_lamp_and_white_ones_do_not() {
    for seed in SEEDS {
        let recipe = sound(porous(), Finish::Buffed, seed);
        let (pore, _) = pores(&recipe);
        let sides = |slug: &str| {
            let (with, without) =
                (draw(&spoiled(&recipe, slug, Severity::Plain), SCALE), draw(&recipe, SCALE));
            let whiter = |x: f32| {
                let lamp = bulb(x, -30.0);
                Face::bright(&with, lamp).less(&Face::bright(&without, lamp)).mean(|place| pore[place])
            };
            [0.0, 60.0, 120.0].map(whiter)
        };
        let ratio = |[left, _, right]: [f32; 3]| left.max(right) / left.min(right).max(0.1);
        let (grey, white) = (sides("grey-pore"), sides("white-filler-pore"));
        assert!(ratio(grey) > 2.5, "seed {seed}: grey {grey:?}");
        assert!(ratio(white) < 1.15, "seed {seed}: white {white:?}");
        // With the lamp in the middle the two are as strong.
        let alike = grey[1] / white[1];
        assert!((0.6..1.6).contains(&alike), "seed {seed}: {alike}");
    }
}

/// Share of the changes across a face that run toward or from a place: 1 where they are rings round it, half where they have
/// no direction.
fn rings(change: &Face, (x, y): (f32, f32)) -> f32 {
    let (mut round, mut all) = (0.0, 0.0);
    for row in 1..change.grid.rows - 1 {
        for column in 1..change.grid.columns - 1 {
            let (px, py) = change.middle(row * change.grid.columns + column);
            let (rx, ry) = (px - x, py - y);
            let far = rx.hypot(ry);
            if !(12.0..45.0).contains(&far) {
                continue;
            }
            let dx = change.at(column + 1, row) - change.at(column - 1, row);
            let dy = change.at(column, row + 1) - change.at(column, row - 1);
            let toward = (dx * rx + dy * ry) / far;
            round += toward * toward;
            all += dx * dx + dy * dy;
        }
    }
    round / all
}

/// [la-28; T15, T16] Swirl circles the lamp's image and goes with it; a sanding scratch stays where it is.
#[test]
fn swirl_goes_with_the_lamp_and_a_scratch_stays() {
    const LAMPS: [(f32, f32); 2] = [(40.0, 32.0), (82.0, 58.0)];
    for seed in SEEDS {
        let under = |slug: &str| LAMPS.map(|(x, y)| change(&buffed(seed), slug, Severity::Plain, bulb(x, y)));
        let swirl = under("buff-swirl");
        for ((here, there), change) in [(0, 1), (1, 0)].into_iter().zip(&swirl) {
            let (own, other) = (rings(change, LAMPS[here]), rings(change, LAMPS[there]));
            assert!(own > 0.72 && own > other + 0.12, "seed {seed}: {own} round its own lamp, {other} else");
        }
        let scratch = under("sanding-scratch");
        let line = under("witness-line");
        let stays = |[a, b]: &[Face; 2]| likeness(&a.values, &b.values);
        assert!(stays(&swirl) < 0.3, "seed {seed}: swirl {}", stays(&swirl));
        assert!(stays(&scratch) > 0.8, "seed {seed}: scratch {}", stays(&scratch));
        // [la-39; T19] A witness line keeps its place too.
        assert!(stays(&line) > 0.6, "seed {seed}: witness line {}", stays(&line));
    }
}

/// [la-40; B1, T16] Bloom is a veil without lines; a cloth leaves the arcs.
#[test]
fn arcs_stay_when_a_veil_is_wiped() {
    let swirl = |probe: Probe| {
        let recipe = probed(&spoiled(&buffed(1), "buff-swirl", Severity::Plain), probe);
        bytes(&draw(&recipe, SCALE), bulb(50.0, 40.0))
    };
    assert!(swirl(Probe::Wiped) == swirl(Probe::None));
    let steep = |slug: &str| {
        let change = change(&buffed(1), slug, Severity::Severe, bulb(60.0, -30.0));
        let step = |place: usize| (change.values[place + 1] - change.values[place]).abs();
        (0..change.values.len() - 1).map(step).fold(0.0, f32::max) / change.mean(|_| true).max(1.0)
    };
    assert!(
        steep("buff-swirl") > 4.0 * steep("bloom-haze"),
        "{} {}",
        steep("buff-swirl"),
        steep("bloom-haze")
    );
}

/// A fault has its size in mm: a finer picture shows as much of it.
#[test]
fn a_finer_picture_shows_as_much() {
    const FINE: f32 = 0.2;
    for slug in ALL {
        let share = |scale: f32| {
            let panel = draw(&spoiled(&sound(porous(), Finish::Buffed, 4), slug, Severity::Plain), scale);
            panel.mask().iter().sum::<f32>() / panel.mask().len() as f32
        };
        let (coarse, fine) = (share(SCALE), share(FINE));
        assert!((0.75..1.33).contains(&(coarse / fine)), "{slug}: {coarse} and {fine}");
    }
}

/// What is marked as the fault is what one sees: nothing plain beside it, and little of it unchanged.
#[test]
fn the_mask_covers_what_is_seen_and_no_more() {
    /// So near counts as on it, mm.
    const NEAR: f32 = 1.0;
    for slug in ["blush", "witness-line", "sand-through", "white-filler-pore", "water-spot", "buff-burn"] {
        for seed in SEEDS {
            let recipe = sound(porous(), Finish::Buffed, seed);
            let with = draw(&spoiled(&recipe, slug, Severity::Plain), SCALE);
            let change = Face::bright(&with, ASIDE).less(&Face::bright(&draw(&recipe, SCALE), ASIDE));
            let count =
                |pick: &dyn Fn(usize) -> bool| (0..change.values.len()).filter(|n| pick(*n)).count() as f32;
            let plain = |place: usize| change.values[place].abs() > 2.0 * SEEN;
            let on = |place: usize| {
                let (x, y) = change.middle(place);
                with.is_on_fault(x, y, NEAR)
            };
            let beside = count(&|place| plain(place) && !on(place)) / count(&plain);
            assert!(beside < 0.05, "{slug}, seed {seed}: {beside} of what is seen is not marked");
            let marked = |place: usize| with.mask()[place] > 0.5;
            let same = |place: usize| change.values[place].abs() < 0.5 * SEEN;
            let empty = count(&|place| marked(place) && same(place)) / count(&marked);
            assert!(empty < 0.45, "{slug}, seed {seed}: {empty} of what is marked is as before");
        }
    }
}

/// A slight one is seen where one looks for it, on 0.3 % of a dark, porous face; of a severe one there is more.
#[test]
fn slight_is_seen_and_severe_is_more() {
    const LAMPS: [Lamp; 2] = [Lamp::OVERHEAD, bulb(60.0, 45.0)];
    let lit = |recipe: &Recipe| {
        let panel = draw(recipe, SCALE);
        LAMPS.map(|lamp| Face::bright(&panel, lamp))
    };
    let clean =
        [Finish::Bare, Finish::Buffed].map(|finish| SEEDS.map(|seed| lit(&sound(porous(), finish, seed))));
    for slug in ALL {
        let finish = if slug == "filler-haze" { Finish::Bare } else { Finish::Buffed };
        let [bare, buffed] = &clean;
        let clean = if finish == Finish::Bare { bare } else { buffed };
        let seen = |severity: Severity| {
            let share = |(seed, clean): (u32, &[Face; 2])| {
                let with = lit(&spoiled(&sound(porous(), finish, seed), slug, severity));
                let shares = with.iter().zip(clean).map(|(with, clean)| {
                    let change = with.less(clean);
                    let seen = change.values.iter().filter(|value| value.abs() > SEEN).count();
                    seen as f32 / change.values.len() as f32
                });
                shares.fold(0.0, f32::max)
            };
            SEEDS.into_iter().zip(clean).map(share).collect::<Vec<f32>>()
        };
        let (slight, severe) = (seen(Severity::Slight), seen(Severity::Severe));
        assert!(slight.iter().all(|share| *share > 0.003), "{slug}: {slight:?}");
        assert!(
            severe.iter().sum::<f32>() > 1.3 * slight.iter().sum::<f32>(),
            "{slug}: {slight:?} {severe:?}"
        );
    }
}
