//! A crew of 2,000 simulated apprentices at each standard, through the journal: how many pass who should not, and how many who
//! should. `cargo test --test crew -- --nocapture` prints both runs.

mod support;

use stepboard::card::Dice;
use stepboard::content::Content;
use stepboard::learn::evidence::{Asked, Evidence, evidence};
use stepboard::learn::mastery::{Call, Guess, Standard, beta_quantile};
use stepboard::quantity::Fraction;
use stepboard::record::{Event, Step};
use support::log::Log;
use support::table::table;
use support::{content, inputs};

const CREW: u32 = 2_000;
/// One in so many of the crew is followed over weeks.
const CAREERS: u32 = 8;
/// Competencies that stand for the profiles: the second one has nothing but families about safety.
const PLAIN: &str = "pores-filled";
const SAFE: &str = "mask-worn";
/// Confidence of the ranges: of a thousand true values one lies outside.
const CONFIDENCE: f64 = 0.999;

fn share(value: f64) -> Fraction {
    Fraction::new(value).expect("a share")
}

/// Somebody who knows a share of the situations, at cards with four options.
struct Apprentice {
    dice: Dice,
    right: f64,
}

impl Apprentice {
    fn new(name: &str, knows: Fraction) -> Self {
        Self { dice: Dice::new(name), right: Guess::options(4).expect("four").right(knows) }
    }

    fn answers(&mut self) -> bool {
        const GRAIN: u32 = 1_000_000;
        f64::from(self.dice.below(GRAIN)) < self.right * f64::from(GRAIN)
    }
}

/// The range in which the true share lies (C. J. Clopper and E. S. Pearson 1934).
fn range(hits: u32, of: u32) -> (f64, f64) {
    let tail = (1.0 - CONFIDENCE) / 2.0;
    let (x, n) = (f64::from(hits), f64::from(of));
    let low = if hits == 0 { 0.0 } else { beta_quantile(tail, x, n - x + 1.0) };
    let high = if hits == of { 1.0 } else { beta_quantile(1.0 - tail, x + 1.0, n - x) };
    (low, high)
}

/// The standard without the gates of days and coverage, and with alpha doubled, so that a first attempt has the bounds of the
/// computed tables.
fn bare(standard: Standard) -> Standard {
    let doubled = share(2.0 * standard.false_pass().get());
    let mut bare = standard.risking(doubled, share(0.10)).expect("risks");
    (bare.days, bare.days_apart, bare.coverage) = (0, 0, share(0.0));
    bare
}

fn ask<'a>(content: &'a Content, competency: &'a str, standard: Standard) -> Asked<'a> {
    let usual = Asked::usual(content, "Ana", content.competency(competency).expect("ships"));
    Asked { standard, ..usual }
}

/// A first attempt on one day, through the journal.
fn first_attempt(content: &Content, standard: Standard, apprentice: &mut Apprentice) -> Evidence {
    let family = content.evidence_for(PLAIN).next().expect("one").id.clone();
    let mut log = Log::new("a", "Ana");
    log.open("one", &[PLAIN]);
    for _ in 0..standard.most_answers {
        log.answer(&family, apprentice.answers());
    }
    evidence(&log.events, &ask(content, PLAIN, standard))
}

/// `mastery_check.csv`, M33, M34, M36, M37: exact chances of passing at k0 and at k1, by forward recursion in Python.
#[test]
fn a_crew_passes_as_often_as_computed() {
    let content = content();
    let rows = table("mastery_check.csv");
    let exact = |id: &str| rows.iter().find(|row| row.text("id") == id).expect("a row").number("value");
    for (standard, at_k0, at_k1) in
        [(Standard::ORDINARY, exact("M33"), exact("M34")), (Standard::SAFETY, exact("M36"), exact("M37"))]
    {
        for (knows, wanted) in [(standard.not_enough(), at_k0), (standard.competent(), at_k1)] {
            let (mut passed, mut answers) = (0, 0);
            for nth in 0..inputs(CREW) {
                let mut one = Apprentice::new(&format!("crew {nth}"), knows);
                let found = first_attempt(&content, bare(standard), &mut one);
                assert_ne!(found.state.call, Call::GoOn, "an attempt of all its answers is decided");
                passed += u32::from(found.suffices());
                answers += found.state.answers;
            }
            let (low, high) = range(passed, inputs(CREW));
            let (share, mean) =
                (f64::from(passed) / f64::from(inputs(CREW)), f64::from(answers) / f64::from(inputs(CREW)));
            println!(
                "knows {:.2}: {share:.4} pass, range {low:.4} to {high:.4}, computed {wanted:.6}; {mean:.1} answers",
                knows.get()
            );
            assert!(low <= wanted && wanted <= high, "knows {}: {share}, computed {wanted}", knows.get());
        }
    }
}

/// How somebody goes about it: sittings on several days, new attempts after failed ones, errors passed again as they come.
fn career(content: &Content, competency: &str, apprentice: &mut Apprentice) -> Evidence {
    const SITTINGS: u32 = 9;
    const A_DAY: usize = 14;
    const DAYS_BETWEEN: u32 = 4;
    let families: Vec<String> = content.evidence_for(competency).map(|family| family.id.clone()).collect();
    let standard = Standard::of(content.competency(competency).expect("ships").profile);
    let mut log = Log::new("a", "Ana");
    let mut found = evidence(&[], &ask(content, competency, standard));
    let mut next = 0;
    for sitting in 0..SITTINGS {
        log.on(sitting * DAYS_BETWEEN);
        let failed = matches!(found.state.call, Call::BackToStudy | Call::NotYet);
        if sitting == 0 || failed {
            let earlier = log.events.iter().filter(|event| matches!(event, Event::Attempt(_))).count();
            if failed {
                log.step(&format!("attempt-{}", earlier / 2), Step::Closed);
            }
            log.open(&format!("attempt-{}", earlier.div_ceil(2)), &[competency]);
        }
        let again: Vec<String> = found.hazards.iter().map(|hazard| hazard.family.clone()).collect();
        for family in again.iter().flat_map(|family| [family, family]) {
            log.answer(family, apprentice.answers());
        }
        for _ in 0..A_DAY {
            log.answer(&families[next % families.len()], apprentice.answers());
            next += 1;
        }
        found = evidence(&log.events, &ask(content, competency, standard));
        if found.suffices() {
            break;
        }
    }
    found
}

/// With the gates and halved alpha, over some weeks and as many attempts as they leave: what is reported, and that alpha holds.
#[test]
fn with_the_gates_no_more_pass_who_should_not() {
    let content = content();
    for competency in [PLAIN, SAFE] {
        let standard = Standard::of(content.competency(competency).expect("ships").profile);
        for (name, knows) in [("k0", standard.not_enough()), ("k1", standard.competent())] {
            let crew = inputs(CREW) / CAREERS;
            let (mut passed, mut attempts, mut open) = (0, 0, 0);
            for nth in 0..crew {
                let found =
                    career(&content, competency, &mut Apprentice::new(&format!("career {nth}"), knows));
                passed += u32::from(found.suffices());
                attempts += found.attempt;
                open += u32::from(!found.hazards.is_empty());
            }
            let of = |count: u32| f64::from(count) / f64::from(crew);
            println!(
                "{competency} at {name}: {:.3} suffice, {:.2} attempts, {:.3} with an error open",
                of(passed),
                of(attempts),
                of(open)
            );
            if name == "k0" {
                let (low, _) = range(passed, crew);
                assert!(low <= standard.false_pass().get(), "{competency}: {passed} of {crew} pass");
            } else {
                assert!(of(passed) > 0.5, "{competency}: {passed} of {crew} pass who should");
            }
        }
    }
}
