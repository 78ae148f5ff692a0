//! Cards that are sprayed: a run as the model would do it passes on each, what is done wrongly fails for what was wrong, what
//! is answered is small enough for the journal and read back as it was, and what is no run is refused.

mod support;

use serde_json::{Value, json};
use stepboard::card::sprayed::{good_run, outcome, setup};
use stepboard::card::{Answer, Card, Mark, deal, families, grade};
use stepboard::card::{Kind, luck};
use stepboard::content::{Content, World};
use stepboard::rules::pairs::clashes;
use stepboard::rules::sheet::{Setting, Sheet};
use stepboard::rules::term::Term;
use stepboard::spraying::program::path;
use stepboard::spraying::reading::measure;
use stepboard::spraying::run::{BYTES_MOST, NoRun};
use stepboard::spraying::{Fault, Grid, Outcome, Passes, Path, Point, Run, Setup, Sprayer, good};
use support::{content, near};

fn sprayed(content: &Content) -> Vec<&str> {
    let all = families::all().into_iter().filter(|question| question.kind() == Kind::Spray);
    all.map(|question| question.id).filter(|id| content.family(id).is_some()).collect()
}

fn world(content: &Content) -> World<'_> {
    World { content, sheet: &content.sheets[0] }
}

fn card(world: &World<'_>, family: &str, seed: u32) -> Card {
    deal(world, family, seed).expect("a card")
}

fn hand(sets: &[Passes], setup: &Setup) -> Run {
    Run::hand(&path(sets, setup).expect("a path")).expect("short enough")
}

/// The mark of a run with its slip and what follows.
fn told(card: &Card, world: &World<'_>, run: Run) -> (Mark, Option<&'static str>, Option<&'static str>) {
    let graded = grade(card, world, &Answer::Run(run)).expect("graded");
    (graded.mark, graded.slip, graded.after)
}

/// The run of the model with something done wrongly in each of its passes.
fn wrong(card: &Card, world: &World<'_>, change: impl Fn(&mut Passes)) -> Run {
    let mut sets = good_run(card, world).expect("a good run");
    sets.iter_mut().for_each(change);
    hand(&sets, &setup(card, world).expect("a face"))
}

const RIGHT: (Mark, Option<&str>, Option<&str>) = (Mark::Right, None, None);

#[test]
fn the_model_passes_on_every_card_that_it_deals() {
    /// Seeds of each family on each sheet.
    const SEEDS: u32 = 3;
    let content = content();
    let all = sprayed(&content);
    assert!(all.len() >= 6, "{all:?}");
    for sheet in &content.sheets {
        let world = World { content: &content, sheet };
        for (family, seed) in all.iter().flat_map(|family| (0..SEEDS).map(move |seed| (*family, seed))) {
            let card = card(&world, family, seed);
            let (sets, setup) =
                (good_run(&card, &world).expect("a run"), setup(&card, &world).expect("a face"));
            let at = format!("{family} seed {seed} on {}: {:?}", sheet.slug, card.facts);
            let run = hand(&sets, &setup);
            let findings = outcome(&card, &world, &run).expect("sprayed").findings;
            assert_eq!(told(&card, &world, run), RIGHT, "{at}: {findings:?}");
        }
    }
}

/// What edges add to an endless set of passes, from what the good runs of dealt cards come to: deviations that are independent
/// of each other add as squares. Faces of the other families add no more.
#[test]
fn edges_add_what_is_said_of_them() {
    /// Seeds: most of the pairs of a fan and a height that are dealt are among them.
    const SEEDS: u32 = 40;
    /// The figure is rounded up to five thousandths.
    const STEPS: f64 = 200.0;
    let content = content();
    let world = world(&content);
    let add = |seed: u32| {
        let card = card(&world, "spray-clear", seed);
        let (sets, face) = (good_run(&card, &world).expect("a run"), setup(&card, &world).expect("a face"));
        let whole = Outcome::sprayed(path(&sets, &face).expect("a path"), &face).reading.film.cv;
        (whole.powi(2) - good::unevenness(&face).powi(2)).max(0.0).sqrt()
    };
    let most = (0..SEEDS).map(add).fold(0.0, f64::max);
    near((most * STEPS).ceil() / STEPS, good::EDGES_ADD, 1e-12, "what edges add");
}

/// A shop sheet at the floor, at the ceiling and between both of each value that a face asks it for, as far as its values stay
/// in order: what is dealt on it can be sprayed, and the model's own run passes.
#[test]
fn what_is_dealt_on_an_extreme_sheet_can_be_sprayed() {
    /// Cells of the grid: as coarse as a run can still be told by.
    const COARSE: usize = 80 * 60;
    let content = content();
    let base = &content.sheets[0];
    let (mut sprayed_on, mut failed) = (0, Vec::new());
    for family in sprayed(&content) {
        let came = |sheet: &Sheet| {
            let world = World { content: &content, sheet };
            let card = deal(&world, family, 0).ok()?;
            let setup = setup(&card, &world).expect("a face");
            let run = path(&good_run(&card, &world)?, &setup).ok()?;
            let grid = Grid::over(&setup.outline, setup.held(setup.middle_distance(), 0.0).half_fan, COARSE);
            let reading = measure(&Sprayer::spray(&setup, grid, &run), &run);
            Some(stepboard::spraying::grade(&reading, &setup))
        };
        for setting in base.asked_by(|sheet| drop(came(sheet))) {
            let held = base.held(setting);
            for share in [0.0, 0.25, 0.5, 0.75, 1.0] {
                let value = held.floor + share * (held.ceiling - held.floor);
                let sheet = base.with(setting, value).expect("within floor and ceiling");
                let world = World { content: &content, sheet: &sheet };
                if !clashes(&sheet).is_empty() || deal(&world, family, 0).is_err() {
                    continue;
                }
                sprayed_on += 1;
                if came(&sheet).is_none_or(|findings| !findings.is_empty()) {
                    failed.push((family, setting.slug(), value, came(&sheet)));
                }
            }
        }
    }
    assert!(failed.is_empty(), "{failed:#?}");
    assert!(sprayed_on >= 100, "{sprayed_on} faces");
}

/// Panels as a handbook has them sprayed, without the model's own good run: the gun at the middle of the sheet's distances,
/// the first pass on the upper edge, each aimed at the edge of the one before (half an overlap: an air-board refinish tip
/// sheet; TM 1-1500-344-23-2, A-8.3), the speed from the volume that lands: Q e = v s h.
fn by_the_book(setup: &Setup, gaps: impl Fn(f64) -> f64) -> Vec<Passes> {
    let gun = &setup.task.gun;
    let distance = setup.middle_distance();
    let fan = gun.fan_mm.get() * distance / gun.at_mm.get();
    let (least, most) = setup.outline.bounds();
    let (from, to) = setup.window().expect("an even film");
    let wet_mm = f64::midpoint(from, to) / 1_000.0;
    let landed_mm3_s = gun.flow_ml_min.get() / 60.0 * 1_000.0 * setup.landing().get();
    let wide = most.1 - least.1;
    // The last pass lies on the lower edge, so that all are as far apart.
    let pitch = wide / gaps(wide / fan);
    let speed_mm_s = landed_mm3_s / (pitch * wet_mm);
    let overlap = 1.0 - pitch / fan;
    let line = vec![(least.0, least.1), (most.0, least.1)];
    let lead = gun.thin_mm.get() / 2.0 * distance / gun.at_mm.get() + speed_mm_s * gun.opens_s.get();
    // The gun moves on by 30 mm as it is let go.
    vec![Passes {
        line,
        wide,
        distance,
        speed: speed_mm_s / 1_000.0,
        overlap,
        lead,
        lag: lead,
        wait: 0.0,
        fan: 1.0,
    }]
}

#[test]
fn a_panel_sprayed_by_the_book_passes_and_one_with_gaps_is_in_stripes() {
    let content = content();
    let world = world(&content);
    // spray_check.csv: the unevenness of the shop's fan at half an overlap and at a fifth of it.
    let taper = world.sheet.get(Setting::FanTaper);
    let cv = |overlap: f64| {
        let rows = support::table::table("spray_check.csv");
        let row = rows.iter().find(|row| {
            row.text("profile") == format!("beta{taper}")
                && row.text("quantity") == "cv"
                && row.text("overlap").parse::<f64>().is_ok_and(|value| (value - overlap).abs() < 1e-9)
        });
        row.unwrap_or_else(|| panic!("beta{taper} at {overlap}")).number("value")
    };
    let most = world.sheet.get(Setting::StripesMost) / 100.0;
    assert!(cv(0.5) < most && cv(0.2) > most, "{} and {} beside {most}", cv(0.5), cv(0.2));
    let mut passed = 0;
    for family in ["spray-sealer", "spray-clear", "spray-repair", "spray-stain"] {
        for seed in 0..3 {
            let card = card(&world, family, seed);
            let setup = setup(&card, &world).expect("a face");
            let run = Run::programmed(by_the_book(&setup, |fans| (fans / 0.5).ceil())).expect("short");
            let came = outcome(&card, &world, &run).expect("sprayed");
            assert_eq!(told(&card, &world, run), RIGHT, "{family} {seed}: {:?}", came.findings);
            passed += 1;
            let gaps =
                Run::programmed(by_the_book(&setup, |fans| (fans / 0.8).floor().max(1.0))).expect("short");
            let came = outcome(&card, &world, &gaps).expect("sprayed");
            assert!(came.findings.iter().any(|one| one.fault == Fault::Stripes), "{family} {seed}");
            assert_eq!(told(&card, &world, gaps).0, Mark::Wrong, "{family} {seed}");
        }
    }
    assert_eq!(passed, 12);
}

/// A refinishing textbook (2022), pp. 686 to 689: too far lands dry, too slow and too near runs.
#[test]
fn what_is_done_wrongly_fails_for_what_was_wrong() {
    let content = content();
    let world = world(&content);
    let clear = card(&world, "spray-clear", 1);
    let of = |change: fn(&mut Passes)| told(&clear, &world, wrong(&clear, &world, change));
    assert_eq!(of(|_| ()), RIGHT);
    assert_eq!(of(|set| set.distance *= 1.9), (Mark::Wrong, Some("far-lays-finest"), Some("rough-clear")));
    assert_eq!(of(|set| set.speed *= 1.8), (Mark::Wrong, Some("fast-is-fine"), Some("film-too-thin")));
    assert_eq!(of(|set| set.lead = -60.0), (Mark::Wrong, Some("trigger-on-the-work"), Some("film-too-thin")));
    let standing = (0..40).map(|seed| card(&world, "spray-sealer", seed));
    let standing = standing.into_iter().find(|card| card.facts.maybe_slug("facing") == Some("standing"));
    let sealer = standing.expect("a standing face");
    let slow = wrong(&sealer, &world, |set| set.speed /= 2.8);
    assert_eq!(told(&sealer, &world, slow), (Mark::Wrong, Some("slow-is-careful"), Some("soft-base")));
    let colour = card(&world, "spray-colour", 0);
    let mut along = good_run(&colour, &world).expect("a good run");
    along.retain(|set| set.line[0].1 == set.line[1].1);
    let came =
        outcome(&colour, &world, &hand(&along, &setup(&colour, &world).expect("a face"))).expect("sprayed");
    assert!(came.findings.iter().any(|one| one.fault == Fault::NotCrossed));
    let edge = card(&world, "spray-edge", 0);
    let mut half = good_run(&edge, &world).expect("a good run");
    let mut nth = 0;
    half.retain(|_| {
        nth += 1;
        nth % 2 == 1
    });
    let (mark, slip, after) = told(&edge, &world, hand(&half, &setup(&edge, &world).expect("a face")));
    assert_eq!(
        (mark, slip, after),
        (Mark::Wrong, Some("shade-comes-in-one-round"), Some("colour-thin")),
        "one side"
    );
}

/// Nothing of a right answer is stored: what is told of the gun, the face and the film moves what passes.
#[test]
fn each_told_figure_moves_the_good_run() {
    let content = content();
    let world = world(&content);
    for family in sprayed(&content) {
        let info = content.family(family).expect("ships");
        let dealt = card(&world, family, 0);
        for draw in info.facts.iter().filter(|draw| draw.from.is_some()) {
            let mut other = dealt.clone();
            let told = dealt.facts.maybe_number(&draw.fact).expect("told");
            let (from, to) = (draw.from.unwrap_or(0.0), draw.to.unwrap_or(0.0));
            other.facts.set(&draw.fact, if told - from > to - told { from } else { to });
            assert_ne!(good_run(&dealt, &world), good_run(&other, &world), "{family}: {}", draw.fact);
        }
    }
    // On another sheet the same face wants another run.
    let dealt = card(&world, "spray-clear", 0);
    let other = World { content: &content, sheet: &content.sheets[1] };
    assert_ne!(good_run(&dealt, &world), good_run(&dealt, &other));
}

/// A pointer that tells 120 places a second, never quite straight: what is kept of it lays the same film.
fn unsteady(sets: &[Passes], setup: &Setup) -> Path {
    let whole = path(sets, setup).expect("a path");
    let points = whole.points();
    let mut dense: Vec<Point> = Vec::new();
    for pair in points.windows(2) {
        let (from, to) = (pair[0], pair[1]);
        dense.push(from);
        let between = ((to.t - from.t) * 120.0 * from.trigger).floor();
        let mut nth = 1.0;
        while nth < between {
            let mut point = from.towards(&to, nth / between);
            (point.x, point.y) =
                (point.x + 4.0 * (point.t * 5.0).sin(), point.y + 3.0 * (point.t * 7.0).cos());
            dense.push(point);
            nth += 1.0;
        }
    }
    dense.extend(points.last());
    Path::new(dense).expect("a path")
}

#[test]
fn what_is_kept_of_a_hand_is_small_and_lays_the_same_film() {
    let content = content();
    let world = world(&content);
    for family in sprayed(&content).into_iter().filter(|family| *family != "spray-edge") {
        let card = card(&world, family, 0);
        let setup = setup(&card, &world).expect("a face");
        let whole = unsteady(&good_run(&card, &world).expect("a run"), &setup);
        let run = Run::hand(&whole).expect("short enough");
        let kept = run.path(&setup).expect("a path");
        assert!(kept.points().len() * 4 < whole.points().len(), "{family}: {}", kept.points().len());
        let bytes = run.told().to_string().len();
        assert!(bytes < BYTES_MOST, "{family}: {bytes} bytes");
        // The same path told as finely as it came, never thinned.
        let of = |path: Path| Outcome::sprayed(path, &setup).reading;
        let (fine, kept) = (of(whole), of(kept));
        near(kept.film.mean, fine.film.mean, fine.film.mean * 0.01, "the mean film");
        near(kept.film.cv, fine.film.cv, 0.005, "its spread");
        near(kept.paint.sprayed, fine.paint.sprayed, fine.paint.sprayed * 0.001, "what was sprayed");
        // Read back it is the same run, and kept again it is no other.
        let text = serde_json::to_string(&Answer::Run(run.clone())).expect("json");
        assert_eq!(serde_json::from_str::<Answer>(&text).expect("an answer"), Answer::Run(run.clone()));
    }
}

#[test]
fn programmed_passes_are_kept_as_they_were_told() {
    let content = content();
    let world = world(&content);
    let card = card(&world, "spray-clear", 0);
    let run = Run::programmed(good_run(&card, &world).expect("a run")).expect("short");
    let back: Answer = serde_json::from_value(json!(Answer::Run(run.clone()))).expect("an answer");
    assert_eq!(back, Answer::Run(run.clone()));
    assert_eq!(told(&card, &world, run), RIGHT);
}

/// Files of strangers: each is refused with what is wrong in it, and nothing is sprayed for it.
#[test]
fn what_is_no_run_is_refused_with_what_is_wrong() {
    let refused = |told: Value| Run::try_from(told).expect_err("no run").to_string();
    let first = json!([0, 0, 0, 90, 100, 200, 0]);
    let swing = |nth: i64| json!([1, 0, 0, 90, 100, if nth % 2 == 0 { 50 } else { 1000 }]);
    let swings: Vec<Value> = [first.clone()].into_iter().chain((0..12).map(swing)).collect();
    for (told, says) in [
        (json!({}), "one of `passes` and `hand`"),
        (json!({ "hand": [], "passes": [] }), "one of `passes` and `hand`"),
        (json!({ "path": [] }), "one of `passes` and `hand`"),
        (json!("good-run"), "one of `passes` and `hand`"),
        (json!({ "hand": 7 }), "`hand` is 7"),
        (json!({ "hand": [[1, 0, 0]] }), "`hand[0]`"),
        (json!({ "hand": [first, [1, 0]] }), "`hand[1]`"),
        (json!({ "hand": [first, [1, 0.5, 0]] }), "`hand[1]`"),
        (json!({ "hand": [first, [1, "0", 0]] }), "`hand[1]`"),
        (json!({ "hand": [first, [i64::MAX, 0, 0], [i64::MAX, 0, 0]] }), "`hand[2]`"),
        (json!({ "hand": [first] }), "2 to"),
        (json!({ "hand": [first, [-5, 0, 0]] }), "point 1"),
        (json!({ "hand": [first, [3_600_001, 0, 0]] }), "t_s"),
        (json!({ "hand": [first, [5, 20_001, 0]] }), "x_mm"),
        (json!({ "hand": [first, [5, 0, 0, 90, 100, 20]] }), "distance_mm"),
        (json!({ "hand": [first, [5, 0, 0, 90, 101]] }), "trigger"),
        // A few bytes that would keep a tablet busy for minutes.
        (json!({ "hand": swings }), "`distance_mm` changes by 1"),
        (json!({ "passes": [] }), "`passes` is empty"),
        (json!({ "passes": {} }), "a list"),
        (json!({ "passes": [{ "line_mm": [[0, 0], [1, 0]], "distance_mm": 10 }] }), "distance_mm"),
        (json!({ "passes": [{ "line_mm": [[0, 0], [1, 0]], "more": 1 }] }), "more"),
    ] {
        let said = refused(told.clone());
        assert!(said.contains(says), "`{says}` is not in `{said}` of {told}");
    }
    let long = json!({ "hand": vec![first; BYTES_MOST / 10] });
    assert_eq!(Run::try_from(long.clone()), Err(NoRun::Long(long.to_string().len())));
    // A path of an hour that never keeps still is too long to be handed in.
    let wild = |nth: u32| Point {
        t: f64::from(nth) / 30.0,
        x: f64::from(nth % 7) * 50.0,
        y: f64::from(nth % 5) * 60.0,
        distance: 200.0,
        tilt: 0.0,
        fan: 90.0,
        trigger: 1.0,
        wide: 1.0,
    };
    let wild = Path::new((0..108_000).map(wild).collect()).expect("a path");
    assert!(matches!(Run::hand(&wild), Err(NoRun::Long(_))));
    // Passes that take longer than a path may are no answer that is right, and spray nothing.
    let content = content();
    let world = world(&content);
    let card = card(&world, "spray-clear", 0);
    let slow = Passes {
        line: vec![(-1_000.0, 0.0), (1_000.0, 0.0)],
        wide: 2_000.0,
        distance: 50.0,
        speed: 0.02,
        overlap: 0.95,
        lead: 0.0,
        lag: 0.0,
        wait: 0.0,
        fan: 1.0,
    };
    let endless = Run::programmed(vec![slow]).expect("short");
    assert!(outcome(&card, &world, &endless).is_none());
    assert_eq!(told(&card, &world, endless).0, Mark::Wrong);
}

#[test]
fn a_run_on_another_card_and_another_answer_on_this_one_are_wrong() {
    let content = content();
    let world = world(&content);
    let face = card(&world, "spray-clear", 0);
    let chosen = card(&world, "wants-filler", 0);
    let run = Run::programmed(good_run(&face, &world).expect("a run")).expect("short");
    assert_eq!(grade(&chosen, &world, &Answer::Run(run)).expect("graded").mark, Mark::Wrong);
    for answer in [Answer::NotEnough, Answer::term("koa"), Answer::OnTheFault] {
        assert_eq!(grade(&face, &world, &answer).expect("graded").mark, Mark::Wrong, "{answer:?}");
    }
    let luck = luck(&face, &world).expect("a chance");
    assert!(luck > 0.0 && luck <= 0.05, "{luck}");
}

/// Words for each misconception and each consequence, over all that can be done better.
#[test]
fn each_thing_to_do_better_names_a_misconception() {
    let content = content();
    let texts = content.texts("en");
    let world = world(&content);
    let clear = card(&world, "spray-clear", 1);
    type Changed = (fn(&mut Passes), Option<&'static str>);
    let changes: [Changed; 8] = [
        (|set| set.distance *= 1.9, Some("far-lays-finest")),
        (|set| (set.distance, set.speed) = (110.0, set.speed / 1.4), Some("near-lays-best")),
        (|set| set.speed *= 1.8, Some("fast-is-fine")),
        (|set| set.speed /= 2.5, Some("slow-is-careful")),
        (|set| set.lead = -60.0, Some("trigger-on-the-work")),
        (|set| set.lag = -60.0, Some("trigger-on-the-work")),
        (|set| set.fan = 0.4, Some("narrow-fan-lays-the-same")),
        (|set| set.line.truncate(2), None),
    ];
    for (nth, (change, wanted)) in changes.into_iter().enumerate() {
        let (_, slip, after) = told(&clear, &world, wrong(&clear, &world, change));
        assert_eq!(slip, wanted, "change {nth}");
        assert!(slip.is_none_or(|id| texts.find(&format!("slip.{id}")).is_some()), "{slip:?}");
        assert!(after.is_none_or(|id| content.consequence(id).is_some()), "{after:?}");
    }
}
