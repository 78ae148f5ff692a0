//! The law of cards, over many seeds of every family: exactly the listed answers are right when each option is judged
//! alone, from its displayed text read back after rounding; no family leans on one answer or one situation.

mod support;

use std::collections::{BTreeMap, BTreeSet};
use stepboard::card::sprayed::{good_run, setup};
use stepboard::card::{Answer, Card, Diagnosis, Kind, Mark, Voice, deal, families, grade, solve};
use stepboard::content::{Content, Units, World};
use stepboard::quantity::Measure;
use stepboard::spraying::program::path;
use stepboard::spraying::{Passes, Run};
use support::{at_once, content, seeds};

/// Seeds a family, from the design; `STEPBOARD_LAW_SEEDS` asks for another number (`make long`).
const LAW_SEEDS: u32 = 10_000;
/// Seeds over which variety is counted.
const VARIETY_SEEDS: u32 = 1_000;
const LEAST_RIGHT_ANSWERS: usize = 2;
const LEAST_SITUATIONS: usize = 50;

fn each_family(content: &Content, mut check: impl FnMut(&World<'_>, &str)) {
    for sheet in &content.sheets {
        let world = World { content, sheet };
        for family in &content.families {
            check(&world, &family.id);
        }
    }
}

#[test]
fn every_family_of_content_has_a_question_and_every_question_a_family() {
    let content = content();
    let asked: BTreeSet<&str> = families::all().iter().map(|question| question.id).collect();
    let listed: BTreeSet<&str> = content.families.iter().map(|family| family.id.as_str()).collect();
    assert_eq!(asked, listed);
}

/// An option as shown, read back as a person would read it: numbers from their figures, terms from their words.
fn read_back(card: &Card, voice: &Voice<'_>, option: &Answer) -> Answer {
    let text = voice.answer(&card.family, option);
    match option {
        Answer::Number(measure) => {
            let read = Measure::parse(&text, measure.unit.dimension());
            Answer::Number(read.unwrap_or_else(|| panic!("{}: `{text}` cannot be read back", card.family)))
        }
        _ => {
            let same: Vec<&Answer> =
                card.options.iter().filter(|other| voice.answer(&card.family, other) == text).collect();
            assert_eq!(same.len(), 1, "{} seed {}: two options read `{text}`", card.family, card.seed);
            same[0].clone()
        }
    }
}

fn law_seeds() -> u32 {
    match std::env::var("STEPBOARD_LAW_SEEDS") {
        Ok(text) => {
            let asked = text.parse().expect("STEPBOARD_LAW_SEEDS is a number");
            assert!(asked >= LAW_SEEDS, "STEPBOARD_LAW_SEEDS is {asked}: never fewer than {LAW_SEEDS}");
            asked
        }
        Err(_) => LAW_SEEDS,
    }
}

fn law(world: &World<'_>, voice: &Voice<'_>, family: &str, seed: u32) {
    let card = deal(world, family, seed).unwrap_or_else(|error| panic!("{error}"));
    let solution = solve(&card, world).expect("a dealt card has a question");
    let mark = |answer: &Answer| grade(&card, world, answer).expect("a dealt card is graded").mark;
    let at = format!("{family} seed {seed} sheet {}", world.sheet.slug);
    let enough = solution.right != Answer::NotEnough;
    assert_eq!(mark(&Answer::NotEnough) == Mark::Right, !enough, "{at}");
    assert_eq!(mark(&solution.right), Mark::Right, "{at}: the listed answer is refused");
    assert!(!solution.rules.is_empty(), "{at}: no rule decides");
    match card.kind {
        Kind::ChooseOne => {
            assert!((4..=6).contains(&card.options.len()), "{at}: {} options", card.options.len());
            let right =
                card.options.iter().filter(|o| mark(&read_back(&card, voice, o)) == Mark::Right).count();
            assert_eq!(right, usize::from(enough), "{at}: options judged right");
            if enough {
                let listed = card.options.contains(&solution.right);
                assert!(listed, "{at}: the right answer is not among the options");
            }
        }
        Kind::ChooseAll => {
            let Answer::Terms(right) = &solution.right else {
                assert!(!enough, "{at}");
                return;
            };
            assert!(!right.is_empty(), "{at}");
            for option in &card.options {
                let Answer::Term(slug) = read_back(&card, voice, option) else { panic!("{at}: not a term") };
                let alone = single(&card, world, &slug);
                assert_eq!(alone, right.contains(&slug), "{at}: `{slug}` judged alone");
            }
        }
        Kind::Order => {
            if enough {
                let Answer::Order(order) = &solution.right else { panic!("{at}: no order is accepted") };
                assert_eq!(order.len(), card.options.len(), "{at}");
                assert!(solution.guess < 1.0, "{at}: every order is accepted");
            }
        }
        Kind::Point => assert!(card.options.is_empty() && enough, "{at}"),
        Kind::Diagnose => diagnosis(&card, world, &solution.right, &at),
        Kind::Spray => sprayed(&card, world, &at),
        Kind::Number => {
            if let Answer::Number(right) = solution.right {
                let shown =
                    Measure::parse(&right.text(), right.unit.dimension()).expect("a number reads back");
                assert_eq!(mark(&Answer::Number(shown)), Mark::Right, "{at}: the shown number is refused");
                let far = Measure { value: right.value + right.value.abs() * 0.5 + 7.0, ..right };
                assert_ne!(mark(&Answer::Number(far)), Mark::Right, "{at}");
            }
        }
    }
}

/// Seeds of which each is sprayed: a run takes longer to lay than all other cards to deal. `spray_cards.rs` sprays more.
const SPRAYED: u32 = 2;

/// Any run that passes is right: that of the model passes, and one that leaves out all but its first pass does not.
fn sprayed(card: &Card, world: &World<'_>, at: &str) {
    assert!(card.options.is_empty(), "{at}");
    let sets = good_run(card, world).unwrap_or_else(|| panic!("{at}: no run lays this film"));
    if card.seed >= SPRAYED {
        return;
    }
    let mark = |sets: &[Passes]| {
        let setup = setup(card, world).expect("a face");
        let run = Run::hand(&path(sets, &setup).expect("a path")).expect("short enough");
        grade(card, world, &Answer::Run(run)).expect("graded").mark
    };
    assert_eq!(mark(&sets), Mark::Right, "{at}: the model's own run fails");
    assert_eq!(mark(&sets[..1]), Mark::Wrong, "{at}: one pass of many passes");
}

/// The listed diagnosis is offered, and what differs from it in fault, cause or remedy, or tests everything, is not right.
fn diagnosis(card: &Card, world: &World<'_>, right: &Answer, at: &str) {
    let offered = card.offered.as_ref().expect("a card with tests");
    let Answer::Diagnosis(right) = right else { return };
    assert!(offered.holds(right), "{at}: {right:?} is not offered");
    let mark = |given: Diagnosis| {
        assert!(offered.holds(&given), "{at}: {given:?} is not offered");
        grade(card, world, &Answer::Diagnosis(given)).expect("graded").mark
    };
    for fault in offered.faults.iter().filter(|fault| **fault != right.fault) {
        assert_eq!(mark(Diagnosis { fault: fault.clone(), ..right.clone() }), Mark::Wrong, "{at}: {fault}");
    }
    for cause in offered.causes.iter().filter(|cause| **cause != right.cause) {
        assert_eq!(mark(Diagnosis { cause: cause.clone(), ..right.clone() }), Mark::Partly, "{at}: {cause}");
    }
    for remedy in offered.remedies.iter().filter(|remedy| **remedy != right.remedy) {
        assert_eq!(
            mark(Diagnosis { remedy: remedy.clone(), ..right.clone() }),
            Mark::Partly,
            "{at}: {remedy}"
        );
    }
    assert_eq!(mark(right.clone()), Mark::Right, "{at}");
    let reversed = right.tests.iter().rev().cloned().collect();
    assert_eq!(mark(Diagnosis { tests: reversed, ..right.clone() }), Mark::Right, "{at}: the order of tests");
    // One test is never too many, whatever it tells, where nothing looks the same.
    let one = |test: &String| Diagnosis { tests: vec![test.clone()], ..right.clone() };
    let right_alone = offered.tests.iter().filter(|test| mark(one(test)) == Mark::Right).count();
    let twins = world.content.panel(&right.fault).is_some_and(|panel| !panel.twins.is_empty());
    assert!(twins || right_alone == offered.tests.len(), "{at}: a single test is called needless");
}

/// Whether an item applies, asked on a card that offers it alone.
fn single(card: &Card, world: &World<'_>, slug: &str) -> bool {
    let alone = Card { options: vec![Answer::term(slug)], ..card.clone() };
    matches!(solve(&alone, world).expect("a question").right, Answer::Terms(right) if right == [slug])
}

#[test]
fn exactly_the_listed_answers_are_right() {
    let content = content();
    let metric = Voice::new(&content, "en", Units::METRIC);
    let us = Voice::new(&content, "en", Units::US);
    let share = law_seeds() / u32::try_from(content.sheets.len()).expect("few sheets") + 1;
    at_once::each(&content.families, |family| {
        for sheet in &content.sheets {
            let world = World { content: &content, sheet };
            for seed in seeds(share) {
                law(&world, if seed % 2 == 0 { &metric } else { &us }, &family.id, seed);
            }
        }
    });
}

#[test]
fn every_family_varies_in_answer_and_situation() {
    let content = content();
    let mut poor = Vec::new();
    each_family(&content, |world, id| {
        let (mut right, mut situations) = (BTreeSet::new(), BTreeSet::new());
        for seed in 0..VARIETY_SEEDS {
            let card = deal(world, id, seed).expect("a card");
            if card.kind == Kind::Point {
                // The right place is another on every panel: the mask of the picture knows it.
                right.insert(seed.to_string());
            }
            if let Some(sets) = good_run(&card, world) {
                // What passes moves with the face and the gun.
                right.insert(format!("{sets:?}"));
            }
            let solution = solve(&card, world).expect("a question");
            if solution.right != Answer::NotEnough {
                right.insert(serde_json::to_string(&solution.right).expect("json"));
            }
            let mut options: Vec<String> =
                card.options.iter().map(|o| serde_json::to_string(o).expect("json")).collect();
            options.sort();
            situations.insert(serde_json::to_string(&(&card.facts, options)).expect("json"));
        }
        let counts = (right.len(), situations.len());
        if counts.0 < LEAST_RIGHT_ANSWERS || counts.1 < LEAST_SITUATIONS {
            poor.push((world.sheet.slug.clone(), id.to_owned(), counts));
        }
    });
    assert!(poor.is_empty(), "sheet, family, right answers and situations: {poor:#?}");
}

/// A person who knows nothing and always takes the longest, the first, or the same option must not get far.
#[test]
fn the_text_and_the_place_give_nothing_away() {
    const BET_MOST: f64 = 0.75;
    let content = content();
    let voice = Voice::new(&content, "en", Units::METRIC);
    let world = World { content: &content, sheet: &content.sheets[0] };
    for family in &content.families {
        let (mut cards, mut longest, mut places, mut same) = (0_u32, 0_u32, [0_u32; 6], BTreeMap::new());
        for seed in 0..VARIETY_SEEDS {
            let card = deal(&world, &family.id, seed).expect("a card");
            let right = solve(&card, &world).expect("a question").right;
            let told = format!("{} {}", voice.story(&card), voice.ask(&card)).to_lowercase();
            if card.kind != Kind::ChooseOne || right == Answer::NotEnough {
                continue;
            }
            let text = |option: &Answer| voice.answer(&family.id, option).to_lowercase();
            let words = text(&right);
            assert!(
                words.len() < 12 || !told.contains(&words),
                "{} seed {seed}: the story says `{words}`",
                family.id
            );
            cards += 1;
            // Options of one length, as numbers often are, tell nothing by it.
            let longer = |option: &Answer| *option == right || text(option).len() < words.len();
            longest += u32::from(card.options.iter().all(longer));
            places[card.options.iter().position(|option| *option == right).expect("listed")] += 1;
            *same.entry(words).or_insert(0_u32) += 1;
        }
        let share = |count: u32| f64::from(count) / f64::from(cards.max(1));
        let bets = [longest, places.into_iter().max().unwrap_or(0), same.into_values().max().unwrap_or(0)];
        for (bet, count) in ["the longest option", "one place", "one answer"].into_iter().zip(bets) {
            assert!(
                share(count) <= BET_MOST,
                "{}: {bet} is right on {:.0} %",
                family.id,
                100.0 * share(count)
            );
        }
    }
}

#[test]
fn not_enough_is_told_is_right_on_some_cards_in_every_stage() {
    let content = content();
    let world = World { content: &content, sheet: &content.sheets[0] };
    let mut by_topic: BTreeMap<String, u32> = BTreeMap::new();
    for family in &content.families {
        let count = by_topic.entry(format!("{:?}", family.topic)).or_default();
        for seed in 0..200 {
            let card = deal(&world, &family.id, seed).expect("a card");
            *count += u32::from(solve(&card, &world).expect("a question").right == Answer::NotEnough);
        }
    }
    let never: Vec<&String> =
        by_topic.iter().filter(|(_, count)| **count == 0).map(|(topic, _)| topic).collect();
    assert!(never.is_empty(), "never right in {never:?}");
}

#[test]
fn every_word_that_a_card_can_show_has_a_text() {
    let content = content();
    let voice = Voice::new(&content, "en", Units::METRIC);
    each_family(&content, |world, family| {
        for seed in 0..150 {
            let card = deal(world, family, seed).expect("a card");
            let mut shown = vec![voice.story(&card), voice.ask(&card)];
            shown.extend(voice.facts(&card).into_iter().flat_map(|(name, value)| [name.to_owned(), value]));
            shown.extend(card.options.iter().map(|option| voice.answer(family, option)));
            for text in &shown {
                // A key that has no words is shown as it is; "card." may also end a sentence.
                let key = |word: &str| {
                    ["term.", "card."].iter().any(|list| word.len() > list.len() && word.starts_with(list))
                };
                let gap = text.is_empty() || text.contains('{') || text.split_whitespace().any(key);
                assert!(!gap, "{family} seed {seed}: `{text}`");
            }
            let mut answers = card.options.clone();
            answers.push(Answer::NotEnough);
            for answer in answers {
                let given = match (card.kind, answer) {
                    (Kind::ChooseAll, Answer::Term(slug)) => Answer::Terms(vec![slug]),
                    (_, answer) => answer,
                };
                let graded = grade(&card, world, &given).expect("graded");
                for rule in &graded.solution.rules {
                    assert!(
                        content.rule(rule.0).is_some(),
                        "{family}: rule `{}` is not in content/rules",
                        rule.0
                    );
                }
                for step in &graded.solution.working {
                    let key = format!("working.{}", step.label);
                    assert!(voice.texts.find(&key).is_some(), "{family}: text `{key}` is missing");
                    let told =
                        READ_OFF.contains(&step.label) || step.formula.is_empty() || !step.given.is_empty();
                    assert!(told, "{family}: nothing is put into `{}` of `{}`", step.formula, step.label);
                    let named = |name: &str| {
                        !name.contains('-') || voice.texts.find(&format!("working.{name}")).is_some()
                    };
                    assert!(step.given.iter().all(|given| named(given.name)), "{family}: {:?}", step.given);
                    // Its constants are those of one unit each.
                    let other = Voice { units: Units::US, ..voice };
                    assert_eq!(voice.put_in(step), other.put_in(step), "{family}: `{}`", step.label);
                }
                if let Some(slip) = graded.slip {
                    let key = format!("slip.{slip}");
                    assert!(voice.texts.find(&key).is_some(), "{family}: text `{key}` is missing");
                }
                if let Some(after) = graded.after {
                    assert!(
                        content.consequence(after).is_some(),
                        "{family}: consequence `{after}` is missing"
                    );
                }
            }
        }
    });
}

/// Lines of working whose formula names where a value was read, or sums over more than a line can show.
const READ_OFF: [&str; 14] = [
    "fault-beforehand",
    "fault-fit",
    "fault-now",
    "contrast",
    "colour-difference",
    "hap-added",
    "voc-material",
    "unevenness",
    "thinnest",
    "vessel",
    "coefficient",
    "moisture-from",
    "moisture-to",
    "moisture-reject",
];

/// Consequences that leave the work as it was: time or material is gone, nothing has to be made good.
const HARMLESS: [&str; 5] =
    ["time-lost", "material-lost", "lost-hour", "time-lost-sanding", "asked-for-what-was-told"];

/// Erring towards the longer wait, the wider gap or the finer grade costs time; erring the other way harms the work.
#[test]
fn what_follows_goes_by_the_side_on_which_a_number_errs() {
    let content = content();
    let harmless_above =
        ["dew-point", "warm-enough", "filler-wait", "fill-twice", "level-when", "stain-fuzz"];
    let harmless_below = ["surface-gap", "coats-fit", "coats-today", "fill-batch", "retarder-most"];
    each_family(&content, |world, family| {
        for seed in 0..20 {
            let card = deal(world, family, seed).expect("a card");
            let Answer::Number(right) = solve(&card, world).expect("a question").right else { continue };
            if card.kind != Kind::Number {
                continue;
            }
            let far = right.value.abs() + 1000.0;
            let after = |value: f64| {
                let given = Answer::Number(Measure { value, ..right });
                grade(&card, world, &given).expect("graded").after.expect("a consequence")
            };
            let (below, above) = (after(right.value - far), after(right.value + far));
            assert!(content.consequence(above).is_some(), "{family}: `{above}` is missing");
            assert!(content.consequence(below).is_some(), "{family}: `{below}` is missing");
            if harmless_above.contains(&family) {
                assert!(
                    HARMLESS.contains(&above) && !HARMLESS.contains(&below),
                    "{family}: {below}, {above}"
                );
            }
            if harmless_below.contains(&family) {
                assert!(
                    HARMLESS.contains(&below) && !HARMLESS.contains(&above),
                    "{family}: {below}, {above}"
                );
            }
        }
    });
}

/// Asking for what was told costs an hour on every card, and never the work.
#[test]
fn asking_for_what_was_told_harms_nothing() {
    let content = content();
    each_family(&content, |world, family| {
        for seed in 0..20 {
            let card = deal(world, family, seed).expect("a card");
            let graded = grade(&card, world, &Answer::NotEnough).expect("graded");
            let wanted = (graded.solution.right != Answer::NotEnough).then_some("asked-for-what-was-told");
            assert_eq!(graded.after, wanted, "{family} seed {seed}");
        }
    });
}

/// What a shop would not say or write: tenths of an hour in a long time, one of several, `a` before a vowel.
fn unsaid(text: &str) -> Option<&'static str> {
    let words: Vec<&str> =
        text.split_whitespace().map(|word| word.trim_matches(|c: char| !c.is_alphanumeric())).collect();
    let figure = |word: &str| word.chars().all(|c| c.is_ascii_digit() || c == '.') && !word.is_empty();
    words.windows(2).find_map(|pair| {
        let (first, next) = (pair[0], pair[1]);
        let long = first.split_once('.').is_some_and(|(whole, _)| whole.len() > 1);
        if next == "h" && figure(first) && long {
            return Some("tenths of an hour in a long time");
        }
        if next == "h" && figure(first) && first.starts_with("0.") {
            return Some("a share of an hour in place of minutes");
        }
        if first == "1" && ["days", "coats", "pieces", "faces", "layers"].contains(&next) {
            return Some("one of several");
        }
        // `a unit`, `a used rag`, `a one-part clear` are said so.
        let vowel =
            next.starts_with(['a', 'e', 'i', 'o']) && !next.starts_with("one") && !next.starts_with("eu");
        (first.eq_ignore_ascii_case("a") && vowel && next.len() > 1).then_some("`a` before a vowel")
    })
}

/// Families whose times are told as a book keeps them: hours on a set of cartridges are counted in halves.
const KEPT_IN_HALVES: [&str; 1] = ["cartridge-change"];

#[test]
fn a_card_reads_as_a_shop_speaks() {
    let content = content();
    let voice = Voice::new(&content, "en", Units::METRIC);
    let mut found = BTreeMap::new();
    each_family(&content, |world, family| {
        if KEPT_IN_HALVES.contains(&family) {
            return;
        }
        for seed in 0..100 {
            let card = deal(world, family, seed).expect("a card");
            let mut shown = vec![voice.story(&card), voice.ask(&card)];
            shown.extend(voice.facts(&card).into_iter().map(|(_, value)| value));
            shown.extend(card.options.iter().map(|option| voice.answer(family, option)));
            for text in shown {
                if let Some(why) = unsaid(&text) {
                    found.entry((family.to_owned(), why)).or_insert(text);
                }
            }
        }
    });
    assert!(found.is_empty(), "{found:#?}");
}

/// Waits of one length could stand either way, so that part of the order would be no question.
#[test]
fn waits_to_be_put_in_order_differ_in_length() {
    let content = content();
    for sheet in &content.sheets {
        let world = World { content: &content, sheet };
        for seed in 0..150 {
            let card = deal(&world, "order-of-waits", seed).expect("a card");
            let solution = solve(&card, &world).expect("a question");
            if solution.right == Answer::NotEnough {
                continue;
            }
            let orders: f64 = (1..=card.options.len()).map(|n| n as f64).product();
            assert!((solution.guess * orders - 1.0).abs() < 1e-9, "seed {seed} sheet {}", sheet.slug);
        }
    }
}

#[test]
fn the_reasons_say_nothing_twice() {
    let content = content();
    let mut found = BTreeSet::new();
    each_family(&content, |world, family| {
        for seed in 0..60 {
            let card = deal(world, family, seed).expect("a card");
            let solution = solve(&card, world).expect("a question");
            // Two grains may stand in the same ratio: only the very same number is said twice.
            let mut steps = BTreeSet::new();
            for step in &solution.working {
                if !steps.insert((step.label, format!("{:?}", step.result))) {
                    found.insert(format!("{family}: step {}", step.label));
                }
            }
            let mut sentences = BTreeSet::new();
            for rule in &solution.rules {
                if !sentences.insert(content.rule(rule.0).map(|rule| &rule.id)) {
                    found.insert(format!("{family}: rule {}", rule.0));
                }
            }
        }
    });
    assert!(found.is_empty(), "{found:#?}");
}

/// Where the room lies outside the temperatures of the sheet no hours hold: whoever counts hours is told that, and not that the
/// wait is over or is not.
#[test]
fn a_room_outside_the_sheet_is_told_to_whoever_counts_hours() {
    let content = content();
    let world = World { content: &content, sheet: &content.sheets[0] };
    let mut met = 0;
    for card in seeds(2_000).filter_map(|seed| deal(&world, "ready-yet", seed).ok()) {
        if solve(&card, &world).is_none_or(|solved| solved.right != Answer::term("change-room")) {
            continue;
        }
        met += 1;
        for counted in ["leave-it", "go-on"] {
            let slip = grade(&card, &world, &Answer::term(counted)).and_then(|graded| graded.slip);
            assert_eq!(slip, Some("room-outside-overlooked"), "{counted}");
        }
    }
    assert!(met > 10, "{met} cards of such a room");
}
