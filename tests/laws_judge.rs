//! Laws of a job as it is told: nothing that anyone writes makes it panic, what is refused is named, the same is judged
//! the same, and more that is untold turns no verdict into its opposite.

mod support;

use proptest::prelude::*;
use serde_json::{Value, json};
use std::cell::Cell;
use stepboard::judge::{judge, read};
use stepboard::rules::sequence::manner::Manner;
use stepboard::rules::sequence::operation::Operation;
use stepboard::rules::term::{Severity, Term};
use support::any::{USUAL, hold, term};
use support::{content, inputs};

/// A law that sees one verdict alone proves half of it.
#[track_caller]
fn both(accepted: &Cell<u32>, refused: &Cell<u32>) {
    let (accepted, refused) = (accepted.get(), refused.get());
    assert!(accepted > 0 && refused > 0, "{accepted} accepted, {refused} refused");
}

fn hours() -> impl Strategy<Value = f64> {
    prop_oneof![Just(0.0), 0.0..3.0, 0.0..500.0]
}

/// A step as anyone may write it.
fn step(parts: Vec<String>) -> impl Strategy<Value = Value> {
    let manners = proptest::collection::vec(term::<Manner>(), 0..3);
    let part = prop_oneof![3 => Just(None), 1 => proptest::sample::select(parts).prop_map(Some)];
    let numbers = (
        proptest::option::of(hours()),
        proptest::option::of(1_u32..6),
        proptest::option::of(hours()),
        proptest::option::of(80_u32..2_500),
        proptest::option::weighted(0.1, hours()),
    );
    let air = proptest::option::weighted(0.2, (5.0..35.0, 20.0..95.0, 5.0..35.0));
    let untold = proptest::option::weighted(0.1, term::<Manner>());
    let pass = proptest::option::weighted(0.2, (0.0..300.0, 50.0..600.0, 0.0..=1.0_f64, any::<bool>()));
    (term::<Operation>(), part, numbers, manners, air, untold, pass).prop_map(
        |(operation, part, (after, coats, between, grit, mix), manners, air, untold, pass)| {
            let mut step = json!({ "operation": operation.slug() });
            let mut tell = |key: &str, value: Value| {
                if !value.is_null() {
                    step[key] = value;
                }
            };
            tell("part", json!(part));
            tell("after_h", json!(after));
            tell("coats", json!(coats));
            tell("between_h", json!(between));
            tell("grit", json!(grit));
            tell("mix_age_h", json!(mix));
            if let Some((air_c, rh, work_c)) = air {
                tell("air", json!({ "air_c": air_c, "rh": rh, "work_c": work_c }));
            }
            let how: Vec<&str> =
                manners.iter().filter(|one| Some(**one) != untold).map(|one| one.slug()).collect();
            tell("how", json!(how));
            if let Some(untold) = untold {
                tell("untold", json!([untold.slug()]));
            }
            if let Some((wet_um, distance_mm, overlap, standing)) = pass {
                let pass = json!({
                    "wet_um": wet_um, "distance_mm": distance_mm, "overlap": overlap, "standing": standing });
                tell("pass", pass);
            }
            step
        },
    )
}

/// A job of a ticket as anyone may tell it.
fn job() -> impl Strategy<Value = Value> {
    let tickets: Vec<(String, Vec<String>)> = content()
        .tickets
        .iter()
        .map(|ticket| (ticket.slug.clone(), ticket.parts.iter().map(|part| part.slug.clone()).collect()))
        .collect();
    proptest::sample::select(tickets).prop_flat_map(|(ticket, parts)| {
        let steps = proptest::collection::vec(step(parts), 0..14);
        let air = proptest::collection::vec((0.0..400.0, 5.0..35.0, 20.0..95.0), 0..3);
        let detail = proptest::sample::select(vec!["every", "main", "some"]);
        (steps, air, detail, any::<bool>(), 0.0..24.0).prop_map(move |(steps, air, detail, over, start)| {
            let air: Vec<Value> = air
                .iter()
                .map(|(from_h, air_c, rh)| json!({ "from_h": from_h, "air_c": air_c, "rh": rh }))
                .collect();
            json!({ "ticket": ticket, "steps": steps, "air": air, "detail": detail, "handed_over": over,
                "start_h": start })
        })
    })
}

fn each<T: std::fmt::Debug>(strategy: &impl Strategy<Value = T>, law: impl Fn(&T)) {
    hold(inputs(USUAL), strategy, |one| law(&one));
}

#[test]
fn any_job_is_judged_and_the_same_job_the_same() {
    let content = content();
    let (accepted, refused) = (Cell::new(0), Cell::new(0));
    each(&job(), |job| {
        let account = read(job, &content).unwrap_or_else(|wrong| panic!("{wrong:?} in {job}"));
        let verdict = judge(&account, &content);
        assert_eq!(verdict, judge(&account, &content));
        let sound = verdict.found.iter().all(|found| found.severity == Severity::Time);
        assert_eq!(verdict.accepted == Some(false), !sound);
        assert_eq!(verdict.accepted.is_none(), sound && !verdict.missing.is_empty());
        assert!(
            verdict.found.windows(2).all(|pair| pair[0].index <= pair[1].index),
            "in the order of the steps"
        );
        for found in &verdict.found {
            let steps = account.plan.steps.len();
            assert!(found.index < steps || (found.left_out.is_some() && found.index == steps));
            assert!(content.rule(found.rule.0).is_some(), "`{}` is explained", found.rule.0);
            assert!(found.faults.iter().all(|fault| content.fault(fault).is_some()), "{:?}", found.faults);
            assert!(found.cost.hours() >= 0.0 && found.cost.hours().is_finite());
        }
        for next in &verdict.coming {
            assert!(next.not_before.is_none_or(|hours| hours >= 0.0));
            assert_eq!(next.at.is_some(), next.not_before.is_some(), "{next:?}");
            let working = next.at.is_none_or(|(day, hour)| {
                let sheet = &account.sheet;
                use stepboard::rules::sheet::Setting::{DayFrom, DayTo};
                day >= 1 && hour >= sheet.get(DayFrom) && hour < sheet.get(DayTo)
            });
            assert!(working, "{:?}", next.at);
        }
        let counter = if verdict.accepted == Some(false) { &refused } else { &accepted };
        counter.set(counter.get() + 1);
    });
    both(&accepted, &refused);
}

/// Any JSON, of the shapes and words that a description has.
fn anything() -> impl Strategy<Value = Value> {
    let words = ["lute-body", "every", "sand-wood", "seal-coat", "top", "oil-stain", "after_h", ""];
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        (-10.0..10_000.0).prop_map(Value::from),
        proptest::sample::select(words.to_vec()).prop_map(Value::from),
    ];
    let keys = proptest::sample::select(vec![
        "ticket",
        "job",
        "steps",
        "air",
        "moisture",
        "settings",
        "detail",
        "operation",
        "how",
        "untold",
        "part",
        "parts",
        "name",
        "wood",
        "after_h",
        "pass",
        "wet_um",
        "other",
    ]);
    leaf.prop_recursive(4, 40, 6, move |inner| {
        let map = proptest::collection::btree_map(keys.clone(), inner.clone(), 0..6);
        prop_oneof![
            proptest::collection::vec(inner, 0..5).prop_map(Value::from),
            map.prop_map(|map| json!(map)),
        ]
    })
}

#[test]
fn whatever_is_written_is_read_or_refused_with_words() {
    let content = content();
    each(&anything(), |document| match read(document, &content) {
        Ok(account) => drop(judge(&account, &content)),
        Err(wrong) => {
            assert!(!wrong.is_empty(), "{document} is refused without a word");
            assert!(wrong.iter().all(|one| one.contains('`') || one.contains("missing")), "{wrong:?}");
        }
    });
}

#[test]
fn one_value_gone_wrong_in_a_good_description_is_named_by_its_place() {
    let content = content();
    let wrong = prop_oneof![Just(json!({})), Just(json!([[]])), Just(json!("no-such-word")), Just(json!(-5))];
    let keys = proptest::sample::select(vec![
        "ticket",
        "settings",
        "moisture",
        "air",
        "detail",
        "start_h",
        "steps",
        "handed_over",
        "sheet",
    ]);
    each(&(job(), keys, wrong), |(job, key, wrong)| {
        let mut job = job.clone();
        job[*key] = wrong.clone();
        if let Err(told) = read(&job, &content) {
            let named = told.iter().any(|one| one.contains(&format!("`{key}")));
            assert!(named || *key == "ticket", "`{key}` is {wrong}: {told:?}");
        }
    });
}

/// A step with one of the things that it tells untold: one of its values, or a remark that holds.
fn less(step: &Value, which: prop::sample::Index) -> Option<Value> {
    let told = step.as_object()?;
    let values = VALUES.iter().filter(|key| told.contains_key(**key)).map(|key| (*key).to_owned());
    let remarks =
        step["how"].as_array().into_iter().flatten().filter_map(|one| one.as_str().map(str::to_owned));
    let untold = step["untold"].as_array().cloned().unwrap_or_default();
    let open: Vec<String> = values.chain(remarks).filter(|one| !untold.contains(&json!(one))).collect();
    let gone = open.get(which.index(open.len().max(1)))?;
    // Coats that are told apart are two at least.
    if gone == "coats" && step["coats"] == 1 && told.contains_key("between_h") {
        return None;
    }
    let mut step = step.clone();
    let told = step.as_object_mut()?;
    told.remove(gone);
    if let Some(how) = told["how"].as_array_mut() {
        how.retain(|one| one != gone);
    }
    step["untold"] = json!([untold, vec![json!(gone)]].concat());
    Some(step)
}

/// What may be untold of a step besides its remarks.
const VALUES: [&str; 6] = ["after_h", "coats", "between_h", "grit", "mix_age_h", "air"];

#[test]
fn leaving_something_untold_turns_no_verdict_into_its_opposite() {
    let content = content();
    let (refused, accepted) = (Cell::new(0), Cell::new(0));
    each(&(job(), any::<prop::sample::Index>(), any::<prop::sample::Index>()), |(job, at, which)| {
        let steps = job["steps"].as_array().expect("steps");
        if steps.is_empty() {
            return;
        }
        let at = at.index(steps.len());
        let Some(step) = less(&steps[at], *which) else { return };
        let mut untold = job.clone();
        untold["steps"][at] = step;
        let verdict = |job: &Value| judge(&read(job, &content).expect("good"), &content).accepted;
        let Some(told) = verdict(job) else { return };
        assert_ne!(verdict(&untold), Some(!told), "{untold}");
        let counter = if told { &accepted } else { &refused };
        counter.set(counter.get() + 1);
    });
    both(&accepted, &refused);
}

/// The job of a ticket as its sheet asks, every wait kept, in one room: the air of the gun apart, it is accepted where the
/// sheet gives an estimate of waits and cannot be judged where it gives none; it is never told to wait longer.
#[test]
fn a_job_as_the_sheet_asks_is_never_told_to_wait_longer() {
    use stepboard::content::World;
    use stepboard::rules::sequence::error::{Mend, OrderError};
    use stepboard::rules::sequence::route;
    use stepboard::rules::sheet::Setting::{WaitModelFrom, WaitModelTo};
    let content = content();
    let tickets = proptest::sample::select(content.tickets.clone());
    let (inside, outside) = (Cell::new(0), Cell::new(0));
    each(&(tickets, 10.0..40.0), |(ticket, air_c)| {
        let air = json!([{ "from_h": 0, "air_c": air_c, "rh": 45, "work_c": air_c }]);
        let job = json!({ "ticket": ticket.slug, "air": air, "steps": [], "handed_over": true });
        let mut account = read(&job, &content).expect("a description");
        let world = World { content: &content, sheet: &account.sheet };
        account.plan = route::plan(&world.job(ticket).expect("a job"), &account.sheet);
        account.passes = vec![Default::default(); account.plan.steps.len()];
        let verdict = judge(&account, &content);
        let of_the_gun = [OrderError::AirOutsideWindow.slug(), OrderError::ColdWork.slug()];
        let waits = verdict.found.iter().filter(|one| one.mend == Mend::Wait);
        let waits: Vec<&str> =
            waits.map(|one| one.rule.0).filter(|rule| !of_the_gun.contains(rule)).collect();
        assert!(waits.is_empty(), "{} at {air_c} °C: {waits:?}", ticket.slug);
        let model = account.sheet.get(WaitModelFrom)..=account.sheet.get(WaitModelTo);
        let unsure = verdict.missing.iter().any(|one| one == "drying.outside-model");
        assert_eq!(unsure, !model.contains(air_c), "{} at {air_c} °C", ticket.slug);
        if unsure {
            assert_ne!(verdict.accepted, Some(true));
        }
        let counter = if unsure { &outside } else { &inside };
        counter.set(counter.get() + 1);
    });
    assert!(inside.get() > 0 && outside.get() > 0, "{} inside, {} outside", inside.get(), outside.get());
}
