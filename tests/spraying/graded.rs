//! Good runs pass, and bad ones fail for what is wrong with them.

use crate::support::content;
use crate::tries::setup;
use stepboard::rules::term::Term;
use stepboard::spraying::program::path;
use stepboard::spraying::{Advice, Better, Fault, Finding, Passes, Setup, better, good, grade, read};

fn graded(setup: &Setup, sets: &[Passes]) -> (Vec<Finding>, Option<Advice>) {
    let reading = read(setup, &path(sets, setup).expect("a path"));
    let findings = grade(&reading, setup);
    let advice = better(&reading, &findings, setup);
    (findings, advice)
}

/// The good run with something done wrongly in each of its passes.
fn wrong(setup: &Setup, change: impl Fn(usize, &mut Passes)) -> (Vec<Fault>, Option<Better>) {
    let mut sets = good::run(setup).expect("a good run");
    sets.iter_mut().enumerate().for_each(|(nth, set)| change(nth, set));
    let (findings, advice) = graded(setup, &sets);
    (findings.iter().map(|finding| finding.fault).collect(), advice.map(|advice| advice.better))
}

#[test]
fn the_good_run_of_every_task_passes_and_leaves_nothing_to_better() {
    for task in &content().sprays {
        let setup = setup(&task.slug);
        let (findings, advice) = graded(&setup, &good::run(&setup).expect("a good run"));
        assert_eq!((&findings[..], advice), (&[][..], None), "{}", task.slug);
    }
}

/// A refinishing textbook (2022), pp. 686 to 689: too far lands dry, too slow and too near runs.
#[test]
fn a_slow_run_sags_a_far_one_is_dry_and_a_gap_is_missed() {
    for slug in ["sealer-panel", "clear-panel", "horned-body", "cutaway-body"] {
        let setup = setup(slug);
        let (slow, advice) = wrong(&setup, |_, set| set.speed /= 2.5);
        assert_eq!((slow.first(), advice), (Some(&Fault::Runs), Some(Better::Faster)), "{slug}, slow");
        let (far, advice) = wrong(&setup, |_, set| set.distance *= 1.9);
        assert_eq!((far.first(), advice), (Some(&Fault::DrySpray), Some(Better::ComeNearer)), "{slug}, far");
        let (lost, advice) = wrong(&setup, |_, set| set.distance = 480.0);
        assert_eq!((lost.first(), advice), (Some(&Fault::Missed), Some(Better::ComeNearer)), "{slug}, lost");
        let mut sets = good::run(&setup).expect("a good run");
        sets.retain({
            let mut nth = 0;
            move |_| {
                nth += 1;
                nth != 2 && nth != 3
            }
        });
        let (gap, advice) = graded(&setup, &sets);
        let first = gap.first().map(|finding| finding.fault);
        assert_eq!(first, Some(Fault::Missed), "{slug}, gap");
        let advice = advice.map(|advice| advice.better);
        assert_eq!(advice, Some(Better::OverlapMore), "{slug}, gap");
    }
}

#[test]
fn what_is_wrong_with_a_panel_is_told_by_its_cause() {
    let clear = setup("clear-panel");
    let (fast, advice) = wrong(&clear, |_, set| set.speed *= 1.8);
    assert_eq!((fast.first(), advice), (Some(&Fault::Thin), Some(Better::Slower)));
    let (short, advice) = wrong(&clear, |_, set| (set.speed, set.lag) = (set.speed * 1.8, set.lag * 0.4));
    let of_all = (Some(&Fault::Thin), Some(Better::Slower));
    assert_eq!((short.first(), advice), of_all, "the ends of strokes do not make all of a face thin");
    let (near, advice) = wrong(&clear, |_, set| (set.distance, set.speed) = (110.0, set.speed / 1.4));
    assert!(matches!(near.first(), Some(Fault::Runs | Fault::Heavy)), "{near:?}");
    assert_eq!(advice, Some(Better::GoBack));
    let (late, advice) = wrong(&clear, |_, set| set.lead = -60.0);
    assert_eq!((late.first(), advice), (Some(&Fault::Missed), Some(Better::LeadMore)), "pulled late");
    let (early, advice) = wrong(&clear, |_, set| set.lag = -60.0);
    assert_eq!((early.first(), advice), (Some(&Fault::Missed), Some(Better::LeadMore)), "let go early");
    let (long, advice) = wrong(&clear, |_, set| set.lead = 200.0);
    assert_eq!((long.len(), advice), (0, Some(Better::LeadLess)), "{long:?}");
    let colour = setup("colour-crossed");
    let mut along = good::run(&colour).expect("a good run");
    let wide: Vec<Passes> = along.iter().filter(|set| set.line[0].1 == set.line[1].1).cloned().collect();
    along.retain(|set| set.line[0].1 == set.line[1].1);
    let third = wide.len() / 2;
    along.extend(wide.into_iter().take(third));
    let crosses = |sets: &[Passes]| graded(&colour, sets).0.iter().all(|one| one.fault != Fault::NotCrossed);
    assert!(!crosses(&along), "all along");
    // One pass across is no layer across, be it first or last; a band along an edge first takes nothing from layers that cross.
    let good = good::run(&colour).expect("a good run");
    let upright = good.iter().find(|set| set.line[0].0 == set.line[1].0).expect("a pass across").clone();
    let joined = |first: &[Passes], last: &[Passes]| [first, last].concat();
    let one = std::slice::from_ref(&upright);
    assert!(!crosses(&joined(one, &along)) && !crosses(&joined(&along, one)), "one pass across");
    assert!(crosses(&joined(one, &good)), "a band along an edge first");
    // Slower by less, and by more, than a speed is told to be off by.
    let (wet, advice) = wrong(&colour, |_, set| (set.wait, set.speed) = (0.0, set.speed * 0.91));
    assert_eq!((wet.first(), advice), (Some(&Fault::Runs), Some(Better::Wait)), "{wet:?}");
    let (slow, advice) = wrong(&colour, |_, set| (set.wait, set.speed) = (0.0, set.speed * 0.89));
    assert_eq!((slow.first(), advice), (Some(&Fault::Runs), Some(Better::Faster)), "{slow:?}");
}

/// Layers that cross are as far apart as share the face evenly, each at a speed of its own for the same film.
#[test]
fn a_good_run_that_crosses_has_its_speeds_between_the_slowest_and_the_fastest_pass() {
    let crossed = good::speeds(&setup("colour-crossed")).expect("a good run");
    assert!(crossed.least < crossed.mean && crossed.mean < crossed.most, "{crossed:?}");
    let along = good::speeds(&setup("clear-panel")).expect("a good run");
    assert!(along.least == along.most && (along.mean - along.most).abs() < 1e-9, "{along:?}");
}

/// One layer that is gone over twice is too much of it, and no wait mends that.
#[test]
fn one_layer_gone_over_twice_is_done_once_less() {
    for slug in ["clear-panel", "horned-body", "cutaway-body"] {
        let setup = setup(slug);
        let good = good::run(&setup).expect("a good run");
        let (findings, advice) = graded(&setup, &[&good[..], &good[..]].concat());
        assert_eq!(findings.first().map(|finding| finding.fault), Some(Fault::Runs), "{slug}");
        assert_eq!(advice.map(|advice| advice.better), Some(Better::OnceLess), "{slug}");
    }
}

/// What is thin and what is heavy both lie outside of the window: together they may be too much.
#[test]
fn thin_and_heavy_count_together() {
    let setup = setup("clear-panel");
    let mut reading = read(&setup, &path(&good::run(&setup).expect("a good run"), &setup).expect("a path"));
    let outside = 1.0 - setup.task.limits.in_window.get();
    let mut graded = |thin: f64, heavy: f64| {
        (reading.film.thin, reading.film.heavy) = (thin * outside, heavy * outside);
        reading.film.in_window = 1.0 - reading.film.thin - reading.film.heavy;
        grade(&reading, &setup).iter().map(|finding| finding.fault).collect::<Vec<_>>()
    };
    assert_eq!(graded(0.4, 0.5), []);
    assert_eq!(graded(0.6, 0.7), [Fault::Heavy]);
    assert_eq!(graded(0.7, 0.6), [Fault::Thin]);
}

#[test]
fn a_gun_that_stops_or_a_hand_that_hurries_is_told() {
    use stepboard::spraying::{Path, Point};
    let setup = setup("clear-panel");
    let good = path(&good::run(&setup).expect("a good run"), &setup).expect("a path");
    // The gun stands still for half a second in the middle of one pass.
    let mut stopped: Vec<Point> = Vec::new();
    let mut late = 0.0;
    for pair in good.points().windows(2) {
        let (from, to) = (pair[0], pair[1]);
        stopped.push(Point { t: from.t + late, ..from });
        if late == 0.0 && from.trigger > 0.0 && (to.x - from.x).abs() > 100.0 {
            let middle = from.towards(&to, 0.5);
            stopped.push(middle);
            late = 0.5;
            stopped.push(Point { t: middle.t + late, ..middle });
        }
    }
    let last = good.points()[good.points().len() - 1];
    stopped.push(Point { t: last.t + late, ..last });
    let reading = read(&setup, &Path::new(stopped).expect("a path"));
    let findings = grade(&reading, &setup);
    assert_eq!(findings.first().map(|finding| finding.fault), Some(Fault::Runs));
    let advice = better(&reading, &findings, &setup).expect("something to better");
    assert_eq!((advice.better, advice.rule.0), (Better::KeepMoving, "spray.trigger-held"));
}

/// Every finding and every piece of advice has its words.
#[test]
fn what_is_told_has_words() {
    let content = content();
    let texts = content.texts("en");
    for slug in Fault::ALL.iter().map(|fault| format!("spray.fault.{}", fault.slug())) {
        assert!(texts.find(&slug).is_some(), "{slug}");
    }
    for slug in Better::ALL.iter().map(|better| format!("spray.better.{}", better.slug())) {
        assert!(texts.find(&slug).is_some(), "{slug}");
    }
}
