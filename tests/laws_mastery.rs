//! Laws of the test of sufficient evidence over seeded answers.

mod support;

use stepboard::card::Dice;
use stepboard::learn::mastery::{
    Answer, Attempt, Bounds, Call, Covered, Gates, Guess, Missing, Stand, Standard, State, Walk, beta_below,
    beta_quantile, characteristic,
};
use stepboard::quantity::Fraction;
use support::any::USUAL;
use support::inputs;

const STANDARDS: [Standard; 2] = [Standard::ORDINARY, Standard::SAFETY];

fn guesses() -> Vec<Guess> {
    let orders = (2..=4).filter_map(Guess::order);
    (2..=6).filter_map(Guess::options).chain(orders).chain([Guess::NUMBER]).collect()
}

/// Runs a check on many draws of one name.
fn sweep(name: &str, mut check: impl FnMut(&mut Dice)) {
    let mut dice = Dice::new(name);
    for _ in 0..inputs(USUAL) {
        check(&mut dice);
    }
}

/// True with a chance.
fn happens(dice: &mut Dice, chance: f64) -> bool {
    const GRAIN: u32 = 1_000_000;
    f64::from(dice.below(GRAIN)) < chance * f64::from(GRAIN)
}

/// Answers of somebody who is mostly right.
fn answers(dice: &mut Dice) -> Vec<(Guess, bool)> {
    let all = guesses();
    let count = dice.below(60);
    let wrong = 2 + dice.below(40);
    (0..count).map(|_| (*dice.pick(&all).expect("one"), !dice.one_in(wrong))).collect()
}

fn open(standard: Standard) -> Walk {
    Walk::new(standard, Bounds { fail: f64::NEG_INFINITY, ..standard.undivided() })
}

/// Steps and bounds are worked here from the shares known and not read from the module.
#[test]
fn nobody_passes_with_fewer_right_answers_than_the_bound_allows() {
    sweep("bound", |dice| {
        let (standard, attempt) = (*dice.pick(&STANDARDS).expect("one"), 1 + dice.below(4));
        let (k0, k1) = (standard.not_enough().get(), standard.competent().get());
        let mut walk = Walk::new(standard, standard.attempt(attempt));
        let (mut right, mut wrong, mut largest) = (0.0, 0.0, 0.0_f64);
        for (guess, hit) in answers(dice) {
            if !walk.answer(guess, hit) {
                break;
            }
            let g = guess.chance();
            largest = largest.max(libm::log((k1 + (1.0 - k1) * g) / (k0 + (1.0 - k0) * g)));
            if hit {
                right += 1.0
            } else {
                wrong += 1.0
            }
            let asked = libm::log(f64::from(1_u32 << attempt) / standard.false_pass().get());
            let needed = (asked + wrong * libm::log((1.0 - k0) / (1.0 - k1))) / largest;
            assert!(walk.stand() != Stand::Enough || right >= needed - 1e-6, "{right} of {needed}");
        }
    });
}

#[test]
fn a_wrong_answer_never_raises_evidence_and_a_right_one_never_lowers_it() {
    sweep("steps", |dice| {
        let mut walk = open(*dice.pick(&STANDARDS).expect("one"));
        for (guess, right) in answers(dice) {
            let before = walk.evidence();
            assert!(walk.answer(guess, right));
            assert!(if right { walk.evidence() > before } else { walk.evidence() < before });
        }
    });
}

#[test]
fn the_order_of_answers_does_not_change_the_evidence() {
    sweep("order", |dice| {
        let standard = *dice.pick(&STANDARDS).expect("one");
        let mut answers = answers(dice);
        let evidence = |answers: &[(Guess, bool)]| {
            let mut walk = open(standard);
            assert!(answers.iter().all(|(guess, right)| walk.answer(*guess, *right)));
            walk.evidence().to_bits()
        };
        let before = evidence(&answers);
        dice.shuffle(&mut answers);
        assert_eq!(evidence(&answers), before);
    });
}

#[test]
fn more_luck_makes_a_right_answer_worth_less_and_a_wrong_one_no_better() {
    sweep("luck", |dice| {
        let standard = *dice.pick(&STANDARDS).expect("one");
        let (one, other) = (dice.on_grid(0.0, 0.99, 1e-4), dice.on_grid(0.0, 0.99, 1e-4));
        let steps = |chance| standard.steps(Guess::new(chance).expect("a chance"));
        let (less, more) = (steps(one.min(other)), steps(one.max(other)));
        assert!(less.right >= more.right && less.wrong.to_bits() == more.wrong.to_bits());
    });
}

/// Exactly, for each kind of card alone, any attempt, and whoever knows no more than the lower standard.
#[test]
fn the_exact_false_pass_is_at_most_alpha() {
    for standard in STANDARDS {
        for guess in guesses() {
            for attempt in 1..=3 {
                let mut before = 0.0;
                for part in [0.0, 0.25, 0.5, 0.75, 0.9, 0.99, 1.0] {
                    let knows = Fraction::saturating(part * standard.not_enough().get());
                    let right = Fraction::saturating(guess.right(knows));
                    let bounds = standard.attempt(attempt);
                    let found =
                        characteristic(standard.steps(guess), bounds, standard.most_answers, right).pass;
                    assert!(found <= standard.alpha(attempt), "{guess:?}, attempt {attempt}: {found}");
                    assert!(found >= before - 1e-15, "who knows more passes no less often");
                    before = found;
                }
            }
        }
    }
}

/// Somebody at the lower standard, with cards picked where the last answer was wrong, over one attempt with all of alpha
/// and over six attempts that halve it.
#[test]
fn the_simulated_false_pass_is_at_most_alpha() {
    /// Standard deviations that a simulated share may lie above the true one.
    const SPREAD: f64 = 3.0;
    let all = guesses();
    for standard in STANDARDS {
        let lives = inputs(4 * USUAL);
        let passes = |name: &str, bounds: &[Bounds]| {
            let mut dice = Dice::new(name);
            let mut passed = 0_u32;
            for _ in 0..lives {
                let one = |dice: &mut Dice, bounds: &Bounds| {
                    let mut walk = Walk::new(standard, *bounds);
                    let mut guess = all[0];
                    while walk.stand() == Stand::Open {
                        let right = happens(dice, guess.right(standard.not_enough()));
                        walk.answer(guess, right);
                        guess = if right { *dice.pick(&all).expect("one") } else { all[0] };
                    }
                    walk.stand() == Stand::Enough
                };
                passed += u32::from(bounds.iter().any(|bounds| one(&mut dice, bounds)));
            }
            f64::from(passed) / f64::from(lives)
        };
        let alpha = standard.false_pass().get();
        let allowed = alpha + SPREAD * (alpha * (1.0 - alpha) / f64::from(lives)).sqrt();
        let once = passes("once", &[standard.undivided()]);
        let ever = passes("ever", &(1..=6).map(|attempt| standard.attempt(attempt)).collect::<Vec<_>>());
        println!("alpha {alpha}: {once} once, {ever} over six attempts, of {lives}");
        assert!(once > 0.0 && once <= allowed, "{once} of {alpha}");
        assert!(ever > 0.0 && ever <= allowed, "{ever} of {alpha}");
    }
}

/// A log as a device keeps it: days go on, at times back or untold; variants come again.
fn log(dice: &mut Dice) -> Vec<Answer> {
    let mut day = 0;
    let all = guesses();
    let wrong = 10 + dice.below(80);
    let days = 4 + dice.below(12);
    let mut made = Vec::new();
    for _ in 0..dice.below(130) {
        if dice.one_in(days) {
            day += i32::try_from(dice.below(7)).expect("few") - 1;
        }
        let guess = *dice.pick(&all).expect("one");
        let day = (!dice.one_in(30)).then_some(day);
        made.push(Answer { guess, right: !dice.one_in(wrong), day, variant: dice.below(400).into() });
    }
    made
}

const OPEN_GATES: Gates = Gates {
    families: Covered { seen: 6, of: 10 },
    safety_families: Covered { seen: 2, of: 2 },
    open_critical: 0,
};

/// Sufficient means all of it, told anew from the log.
#[test]
fn sufficient_means_bound_days_coverage_and_no_open_error() {
    let mut met = 0;
    sweep("gates", |dice| {
        let standard = *dice.pick(&STANDARDS).expect("one");
        let answers = log(dice);
        let attempt = Attempt::replayed(standard, 1, &answers);
        let state = attempt.state(OPEN_GATES, Guess::NUMBER);
        assert_eq!(state.call == Call::GoOn, state.lower.is_none());
        assert!(!state.missing.iter().any(|one| one.count() == 0));
        assert!(state.call != Call::Sufficient || state.missing.is_empty());
        let (mut seen, mut counted, mut latest) = (Vec::new(), Vec::new(), None);
        for answer in &answers {
            if !seen.contains(&answer.variant) {
                seen.push(answer.variant);
                latest = latest.max(answer.day);
                counted.push(answer.day.and(latest));
            }
        }
        counted.truncate(usize::try_from(state.answers).expect("few"));
        let full = |day: &i32| counted.iter().filter(|one| **one == Some(*day)).count() >= 5;
        let mut days: Vec<i32> = counted.iter().flatten().copied().filter(full).collect();
        days.dedup();
        let enough = days.len() >= 3 && days[days.len() - 1] - days[0] >= 7;
        let wanted = attempt.walk().stand() == Stand::Enough && enough;
        assert_eq!(state.call == Call::Sufficient, wanted);
        met += u32::from(wanted);
        for gates in [
            Gates { open_critical: 1, ..OPEN_GATES },
            Gates { families: Covered { seen: 5, of: 10 }, ..OPEN_GATES },
            Gates { safety_families: Covered { seen: 1, of: 2 }, ..OPEN_GATES },
        ] {
            assert_ne!(attempt.state(gates, Guess::NUMBER).call, Call::Sufficient);
        }
        assert_eq!(Attempt::replayed(standard, 1, &answers), attempt, "a replay is the same");
    });
    assert!(met > 0, "no log was sufficient");
}

#[test]
fn an_answer_to_a_known_variant_changes_no_evidence() {
    sweep("repeats", |dice| {
        let answers = log(dice);
        let Some(again) = dice.pick(&answers).copied() else { return };
        let mut attempt = Attempt::replayed(Standard::ORDINARY, 1, &answers);
        let before = attempt.state(OPEN_GATES, Guess::NUMBER);
        attempt.answer(Answer { right: !again.right, day: again.day.map(|day| day + 30), ..again });
        let after = attempt.state(OPEN_GATES, Guess::NUMBER);
        assert_eq!(after.repeats, before.repeats + 1);
        assert_eq!(State { repeats: before.repeats, ..after }, before);
    });
}

#[test]
fn the_answers_that_are_missing_are_just_enough() {
    sweep("missing", |dice| {
        let standard = *dice.pick(&STANDARDS).expect("one");
        let guess = *dice.pick(&guesses()).expect("one");
        let mut attempt = Attempt::new(standard, 1 + dice.below(3));
        let mut variant = 0;
        let mut give = |attempt: &mut Attempt, guess, right| {
            variant += 1;
            attempt.answer(Answer { guess, right, day: Some(0), variant });
        };
        for _ in 0..dice.below(20) {
            give(&mut attempt, guess, !dice.one_in(20));
        }
        let told = attempt.state(OPEN_GATES, guess).missing.iter().find_map(|one| match one {
            Missing::Answers(count) => Some(*count),
            _ => None,
        });
        let room = standard.most_answers - attempt.walk().answers();
        if attempt.walk().stand() != Stand::Open || told.is_none_or(|count| count > room) {
            return;
        }
        for _ in 0..told.unwrap_or(0) {
            assert_eq!(attempt.walk().stand(), Stand::Open);
            give(&mut attempt, guess, true);
        }
        assert_eq!(attempt.walk().stand(), Stand::Enough);
    });
}

#[test]
fn the_beta_distribution_is_rising_symmetric_and_found_again() {
    sweep("beta", |dice| {
        let (a, b) = (dice.on_grid(0.5, 120.0, 0.5), dice.on_grid(0.5, 120.0, 0.5));
        let (one, other) = (dice.on_grid(0.0, 1.0, 1e-4), dice.on_grid(0.0, 1.0, 1e-4));
        let (low, high) = (beta_below(one.min(other), a, b), beta_below(one.max(other), a, b));
        assert!((0.0..=1.0 + 1e-12).contains(&low) && low <= high + 1e-12);
        assert!((beta_below(one, a, b) + beta_below(1.0 - one, b, a) - 1.0).abs() < 1e-10);
        let share = dice.on_grid(0.01, 0.99, 1e-4);
        assert!((beta_below(beta_quantile(share, a, b), a, b) - share).abs() < 1e-10);
    });
}

/// When all answers are given, days can no longer be met, an open error can.
#[test]
fn a_full_attempt_ends_unless_only_an_error_is_open() {
    let standard = Standard::ORDINARY;
    let all_right = |days: i32| {
        let answer = |n: u32| Answer {
            guess: Guess::NUMBER,
            right: true,
            day: Some(4 * (i32::try_from(n).expect("few") % days)),
            variant: n.into(),
        };
        let mut answers: Vec<Answer> = (0..standard.most_answers).map(answer).collect();
        answers.sort_by_key(|answer| answer.day);
        Attempt::replayed(standard, 1, &answers)
    };
    let error = Gates { open_critical: 1, ..OPEN_GATES };
    let told = |attempt: &Attempt, gates| {
        let state = attempt.state(gates, Guess::NUMBER);
        (state.call, state.missing)
    };
    let one_day = all_right(1);
    assert_eq!(
        told(&one_day, OPEN_GATES),
        (Call::NotYet, vec![Missing::Days(2), Missing::DaysApart(standard.days_apart)])
    );
    let three_days = all_right(3);
    assert_eq!(told(&three_days, error), (Call::GoOn, vec![Missing::CriticalErrors(1)]));
    assert_eq!(told(&three_days, OPEN_GATES), (Call::Sufficient, vec![]));
    let fewer = Gates { families: Covered { seen: 3, of: 9 }, ..OPEN_GATES };
    assert_eq!(told(&three_days, fewer), (Call::NotYet, vec![Missing::Families(3)]));
}
