//! Laws of memory over many random inputs: more time, less recall; a right answer shortens no interval; caps hold; the same
//! history gives the same pick.

mod support;

use proptest::prelude::*;
use stepboard::learn::memory::{
    Answered, Candidate, Care, Day, Earlier, Grade, Memory, Reason, Remembered, State, graded, pick,
};
use stepboard::quantity::Fraction;
use stepboard::record::Certainty;
use stepboard::rules::term::Stage;
use support::any::{laws, term};

/// Rounding of a chain of powers.
const DUST: f64 = 1e-12;
const NO_CAP: u32 = 36_500;
const GRADES: [Grade; 4] = [Grade::Missed, Grade::Shaky, Grade::Steady, Grade::Solid];
const FAMILIES: [&str; 6] = ["a", "b", "c", "d", "e", "f"];

fn share(value: f64) -> Fraction {
    Fraction::new(value).expect("a share")
}

/// Stability over the whole range that histories reach, evenly in its logarithm.
fn state() -> impl Strategy<Value = State> {
    (-3.0..=3.5_f64, 1.0..=10.0_f64).prop_map(|(power, hard)| State::new(libm::pow(10.0, power), hard))
}

fn grade() -> impl Strategy<Value = Grade> {
    (0..GRADES.len()).prop_map(|at| GRADES[at])
}

fn care() -> impl Strategy<Value = Care> {
    any::<bool>().prop_map(|safety| if safety { Care::Safety } else { Care::Ordinary })
}

fn history() -> impl Strategy<Value = Vec<Answered>> {
    let seconds = proptest::option::of(0_u32..2_000);
    let one = (0..FAMILIES.len(), 0_u32..20, any::<bool>(), term::<Certainty>(), any::<bool>(), seconds);
    proptest::collection::vec(one, 0..40).prop_map(|answers| {
        let mut day = Day(20_000);
        let answered = |(family, days, right, certainty, helped, active_seconds)| {
            // Several answers a day, then some days off.
            day = day.plus(u32::saturating_sub(days, 10));
            let family: &str = FAMILIES[family];
            Answered { family: family.to_owned(), day, right, certainty, helped, active_seconds }
        };
        answers.into_iter().map(answered).collect()
    })
}

fn candidates() -> impl Strategy<Value = Vec<Candidate<'static>>> {
    let one = (term::<Stage>(), care(), proptest::option::of(19_900_i32..20_500));
    proptest::collection::vec(one, 1..=FAMILIES.len()).prop_map(|drawn| {
        let candidate = |((stage, care, until), family): ((Stage, Care, Option<i32>), &&'static str)| {
            Candidate { family, stage, care, until: until.map(Day) }
        };
        drawn.into_iter().zip(&FAMILIES).map(candidate).collect()
    })
}

fn last_day(history: &[Answered]) -> Day {
    history.last().map_or(Day(20_000), |one| one.day)
}

proptest! {
    #![proptest_config(laws())]

    #[test]
    fn more_time_is_less_recall(state in state(), a in 0.0..=4_000.0_f64, b in 0.0..=4_000.0_f64) {
        let (sooner, later) = (state.recall(a.min(b)), state.recall(a.max(b)));
        prop_assert!(later <= sooner && later > 0.0 && sooner <= 1.0);
        prop_assert!((a - b).abs() < 1e-6 || later < sooner, "it falls all the time");
        prop_assert!((state.recall(0.0) - 1.0).abs() <= DUST);
        prop_assert!((state.recall(state.stability_days()) - 0.9).abs() <= DUST);
    }

    #[test]
    fn what_lasts_longer_is_recalled_better_and_asked_later(
        a in state(), b in state(), days in 0.0..=4_000.0_f64, target in 0.5..=0.99_f64,
    ) {
        let (less, more) = if a.stability_days() <= b.stability_days() { (a, b) } else { (b, a) };
        prop_assert!(less.recall(days) <= more.recall(days));
        let target = share(target);
        prop_assert!(less.interval_days(target, NO_CAP) <= more.interval_days(target, NO_CAP));
    }

    #[test]
    fn a_higher_target_never_waits_longer(state in state(), a in 0.0..=1.0_f64, b in 0.0..=1.0_f64) {
        let days = |target: f64| state.interval_days(share(target), NO_CAP);
        prop_assert!(days(a.max(b)) <= days(a.min(b)));
    }

    #[test]
    fn a_right_answer_shortens_no_interval_and_a_miss_lengthens_none(
        state in state(), days in 0_u32..400, target in 0.5..=0.99_f64,
    ) {
        let target = share(target);
        let wait = |state: State| state.interval_days(target, NO_CAP);
        for grade in [Grade::Shaky, Grade::Steady, Grade::Solid] {
            let after = state.after(days, grade);
            prop_assert!(after.stability_days() >= state.stability_days(), "{grade:?}");
            prop_assert!(wait(after) >= wait(state), "{grade:?}");
        }
        let missed = state.after(days, Grade::Missed);
        prop_assert!(missed.stability_days() <= state.stability_days());
        prop_assert!(wait(missed) <= wait(state));
    }

    #[test]
    fn a_better_answer_is_never_asked_sooner(state in state(), days in 0_u32..400) {
        let after = GRADES.map(|grade| state.after(days, grade).stability_days());
        prop_assert!(after.is_sorted(), "{after:?}");
        // From a day on the better one lasts longer, unless growth is lost in the last bits.
        if days > 0 && state.recall(f64::from(days)) < 0.999 {
            prop_assert!(after[1] < after[2] && after[2] < after[3], "{after:?}");
        }
    }

    #[test]
    fn what_was_nearer_to_being_forgotten_gains_more(state in state(), a in 1_u32..400, b in 1_u32..400) {
        let gained = |days| state.after(days, Grade::Steady).stability_days();
        prop_assert!(gained(a.min(b)) <= gained(a.max(b)));
    }

    #[test]
    fn difficulty_keeps_its_scale_and_rises_with_trouble(state in state(), days in 0_u32..400) {
        for grade in GRADES {
            let after = state.after(days, grade).difficulty();
            prop_assert!((1.0..=10.0).contains(&after));
            match grade {
                // A thousandth of the way back to the easiest start outweighs a step only next to the top.
                Grade::Missed | Grade::Shaky => prop_assert!(after > state.difficulty() || after > 9.9),
                Grade::Steady | Grade::Solid => prop_assert!(after <= state.difficulty()),
            }
        }
    }

    #[test]
    fn caps_hold(
        state in state(), grade in grade(), care in care(), until in proptest::option::of(-50_i32..400),
    ) {
        let memory = Memory { state, last: Day(0), grade };
        let days = memory.due(care, until.map(Day)).since(Day(0));
        let cap = if care == Care::Safety { 30 } else { 60 };
        prop_assert!(days >= 1 && days <= cap);
        prop_assert!(until.is_none_or(|until| i64::from(days) <= i64::from(until).max(1)));
        prop_assert!(grade != Grade::Missed || days == 1);
        prop_assert!(memory.due(Care::Safety, None) <= memory.due(Care::Ordinary, None));
    }

    #[test]
    fn help_slowness_and_doubt_never_raise_a_grade(history in history(), seconds in 0_u32..2_000) {
        let earlier = Earlier::of(&history);
        let best = Answered {
            family: "a".to_owned(), day: last_day(&history), right: true, certainty: Certainty::OnTheJob,
            helped: false, active_seconds: Some(seconds),
        };
        let sure = graded(&best, &earlier);
        let slower = Answered { active_seconds: Some(seconds.saturating_mul(3)), ..best.clone() };
        let doubted = Answered { certainty: Certainty::TestBoard, ..best.clone() };
        let asked = Answered { certainty: Certainty::AskFirst, ..best.clone() };
        let helped = Answered { helped: true, ..best.clone() };
        let wrong = Answered { right: false, ..best.clone() };
        for lesser in [slower, doubted, asked, helped, wrong] {
            prop_assert!(graded(&lesser, &earlier) <= sure, "{lesser:?}");
        }
    }

    #[test]
    fn a_clock_set_back_makes_no_days(history in history(), back in 1_i32..500) {
        let mut set_back = history.clone();
        let Some(last) = history.last() else { return Ok(()) };
        set_back.push(Answered { day: Day(last.day.0 - back), ..last.clone() });
        let mut same_day = history.clone();
        same_day.push(last.clone());
        let memory = |history: &[Answered]| Remembered::of(history).memory(&last.family).copied();
        prop_assert_eq!(memory(&set_back), memory(&same_day));
    }

    /// The usual time is the median, found again by sorting.
    #[test]
    fn the_usual_time_is_the_median_of_the_right_answers(history in history()) {
        let timed = history.iter().filter(|one| one.right).filter_map(|one| one.active_seconds);
        let mut times: Vec<u32> = timed.map(|seconds| seconds.min(600)).collect();
        times.sort_unstable();
        let twice = (times.len() >= 5).then(|| times[(times.len() - 1) / 2] + times[times.len() / 2]);
        prop_assert_eq!(Earlier::of(&history).twice_usual_seconds(), twice);
    }

    #[test]
    fn a_pick_is_a_candidate_not_twice_running_and_always_the_same(
        candidates in candidates(), history in history(), later in 0_u32..100,
    ) {
        let today = last_day(&history).plus(later);
        let past = Remembered::of(&history);
        let chosen = pick(&candidates, &past, today).expect("there are candidates");
        prop_assert_eq!(Some(chosen), pick(&candidates, &Remembered::of(&history), today), "deterministic");
        let candidate = candidates.iter().find(|one| one.family == chosen.family).expect("a candidate");
        let last = history.last().map(|one| one.family.as_str());
        prop_assert!(candidates.len() == 1 || Some(chosen.family) != last);
        let memory = past.memory(chosen.family);
        let due = memory.is_some_and(|memory| memory.due(candidate.care, candidate.until) <= today);
        match chosen.reason {
            Reason::NotBegun | Reason::NotSeen => prop_assert!(memory.is_none()),
            Reason::Due => prop_assert!(due),
            Reason::MissedOnSafety => prop_assert!(due && candidate.care == Care::Safety),
            Reason::Weakest => prop_assert!(memory.is_some() && !due),
        }
    }

    #[test]
    fn who_is_always_wrong_still_meets_every_family(candidates in candidates(), cards_a_day in 1_u32..8) {
        let ordinary: Vec<Candidate<'_>> =
            candidates.iter().map(|one| Candidate { care: Care::Ordinary, ..*one }).collect();
        let mut history = Remembered::default();
        let mut met = Vec::new();
        for card in 0..2 * u32::try_from(ordinary.len()).expect("few") {
            let day = Day(0).plus(card / cards_a_day);
            let family = pick(&ordinary, &history, day).expect("a card").family.to_owned();
            met.push(family.clone());
            history.take(&Answered {
                family, day, right: false, certainty: Certainty::OnTheJob, helped: false, active_seconds: None,
            });
        }
        for one in &ordinary {
            prop_assert!(met.iter().any(|family| family == one.family), "{} was not met", one.family);
        }
    }
}
