//! What cards on panels offer, tell and reply: nothing gives a twin away, nothing is told of work that was not done yet, and no
//! reply speaks of tests on a card that has none.

mod support;

use std::collections::BTreeSet;
use stepboard::card::{Answer, Card, Kind, Named, Slate, deal, grade, solve};
use stepboard::content::{Content, World};
use stepboard::rules::term::Term;
use support::content;

/// Cards of a family that are dealt: the rarest fault in its rarest finish is one of some hundred and fifty.
const SEEDS: u32 = 3_000;

fn cards(content: &Content, family: &str, seeds: u32) -> Vec<Card> {
    let world = World { content, sheet: &content.sheets[0] };
    (0..seeds).map(|seed| deal(&world, family, seed).expect("a card")).collect()
}

fn fault(card: &Card) -> &str {
    card.facts.maybe_slug("fault").expect("a fault")
}

/// A list in which the twin stands with neither cause nor remedy names the fault without a look or a test.
#[test]
fn what_belongs_to_a_twin_is_always_among_the_options() {
    let content = content();
    let mut met = BTreeSet::new();
    for card in cards(&content, "panel-diagnosis", SEEDS).iter().chain(&cards(&content, "panel-fault", SEEDS))
    {
        for twin in &content.panel(fault(card)).expect("a panel").twins {
            met.insert((card.family.clone(), fault(card).to_owned(), twin.clone()));
            let at = format!("{} seed {}: {} and {twin}", card.family, card.seed, fault(card));
            let Some(offered) = &card.offered else {
                assert!(card.options.contains(&Answer::term(twin)), "{at}");
                continue;
            };
            let first = &content.fault(twin).expect("a fault").causes[0];
            assert!(offered.faults.contains(twin), "{at}: the fault");
            assert!(offered.causes.contains(first), "{at}: the cause");
            assert!(offered.remedies.contains(&format!("{twin}.fix")), "{at}: the remedy");
        }
    }
    assert_eq!(met.len(), 4, "blush and bloom on both families: {met:?}");
}

/// How far a panel has come, in the order of the work.
const STAGES: [&str; 8] = [
    "bare-wood",
    "stained-wood",
    "filled-wood",
    "sealed-film",
    "coloured-film",
    "cleared-film",
    "rubbed-film",
    "buffed-film",
];

/// Levelling and buffing come after the last coat, the first clear after sealer and colour (order of work of the design). A
/// sand-through is made by rubbing between coats too.
#[test]
fn nothing_is_told_of_work_that_was_not_done_yet() {
    let content = content();
    let mut shown = BTreeSet::new();
    for card in cards(&content, "panel-diagnosis", SEEDS) {
        let stage = card.facts.maybe_slug("panel_stage").expect("a stage");
        shown.insert((fault(&card).to_owned(), stage.to_owned()));
        let come = |to: &str| {
            let place = |slug: &str| STAGES.iter().position(|one| *one == slug).expect("a stage");
            place(stage) >= place(to)
        };
        let at = format!("seed {}: {} on {stage}", card.seed, fault(&card));
        let told = |key: &str| card.facts.maybe_slug(key);
        assert!(told("first_clear").is_none() || come("cleared-film"), "{at}: {:?}", told("first_clear"));
        assert!(told("came") != Some("on-rubbing") || come("rubbed-film"), "{at}: it came on rubbing");
        let under = come("cleared-film") && fault(&card) == "sand-through";
        assert!(told("rubbed_before") != Some("rubbed-yes") || come("rubbed-film") || under, "{at}: rubbed");
    }
    let finish = |panel: &stepboard::content::Panel| panel.finishes.clone();
    let cured = |fault: &str| content.fault(fault).is_some_and(|fault| fault.cure.is_some());
    let all: usize =
        content.panels.iter().filter(|panel| cured(&panel.fault)).map(|panel| finish(panel).len()).sum();
    assert_eq!(shown.len(), all, "faults in finishes: {shown:?}");
}

/// On a card that is only looked at nothing was found out and nothing was tested.
#[test]
fn no_reply_speaks_of_tests_where_there_are_none() {
    let content = content();
    let world = World { content: &content, sheet: &content.sheets[0] };
    let mut replies = BTreeSet::new();
    for family in ["panel-fault", "panel-pair", "panel-call", "panel-stage"] {
        for card in cards(&content, family, 300) {
            for option in &card.options {
                let graded = grade(&card, &world, option).expect("graded");
                replies.extend(graded.slip.map(|slip| format!("slip.{slip}")));
                let after = graded.after.into_iter();
                replies.extend(
                    after.flat_map(|id| ["now", "later", "fix"].map(|part| format!("after.{id}.{part}"))),
                );
            }
        }
    }
    assert!(replies.len() > 20, "{replies:?}");
    for key in replies {
        let words = content.texts("en").find(&key).unwrap_or_else(|| panic!("no text {key}")).to_lowercase();
        assert!(!words.contains("found out") && !words.contains("tested"), "{key}: {words}");
    }
}

/// Too little rework leaves the fault, too much takes sound film: neither is told of the other.
#[test]
fn too_little_rework_and_too_much_have_consequences_of_their_own() {
    let content = content();
    let world = World { content: &content, sheet: &content.sheets[0] };
    // The answers from the least rework to the most.
    let answers = ["accept-as-is", "rub-or-polish", "level-and-recoat", "recoat-the-face", "strip-it"];
    let size =
        |answer: &Answer| answers.iter().position(|slug| *answer == Answer::term(slug)).expect("a rework");
    let mut seen = BTreeSet::new();
    for card in cards(&content, "panel-call", 300) {
        let right = size(&solve(&card, &world).expect("a question").right);
        for option in &card.options {
            let after = grade(&card, &world, option).expect("graded").after;
            let wanted = match size(option) {
                given if given == right => None,
                0 => Some("fault-missed"),
                given if given < right => Some("rework-too-small"),
                _ => Some("rework-too-large"),
            };
            assert_eq!(after, wanted, "seed {}: {option:?}", card.seed);
            seen.insert(after);
        }
    }
    assert_eq!(seen.len(), 4, "{seen:?}");
}

/// A rework after which nothing has to dry or cure is told without a wait; "0 h" would read as a figure.
#[test]
fn no_wait_of_no_hours_is_told() {
    let content = content();
    let told = |fault| {
        let costs = stepboard::rules::fault::costs(fault, &content.sheets[0]);
        let waits = costs.working.iter().filter(|step| step.label == "rework-wait");
        (costs.answer.1.get(), waits.map(|step| step.result.value).collect::<Vec<_>>())
    };
    let free = content.faults.iter().filter(|fault| told(fault).0 == 0.0).count();
    assert!(free > 0, "a rework without a wait");
    for fault in &content.faults {
        let (wait, waits) = told(fault);
        assert_eq!(waits, if wait > 0.0 { vec![wait] } else { Vec::new() }, "{}", fault.id);
    }
}

/// "Not enough is told" stands until something else is answered: looking at a result again answers nothing.
#[test]
fn looking_again_at_a_result_takes_nothing_back() {
    let content = content();
    let card = cards(&content, "panel-diagnosis", 1).remove(0);
    assert_eq!(card.kind, Kind::Diagnose);
    let offered = card.offered.clone().expect("tests");
    let tested = Named::default().tested(&offered.tests[0]);
    let slate = Slate::for_card(&card).naming(tested.clone()).toggle_not_enough();
    let closed = slate.clone().naming(tested.clone().tested(&offered.tests[0]));
    assert!(closed.not_enough && closed.named.shown.is_none());
    assert!(closed.clone().naming(tested.clone()).not_enough);
    assert_eq!(closed.answer(&card), Some(Answer::NotEnough));
    assert!(!closed.clone().naming(tested.clone().tested(&offered.tests[1])).not_enough);
    assert!(!closed.naming(Named { fault: offered.faults.first().cloned(), ..tested }).not_enough);
}

/// The stages above are all that a panel can have come to, in their order.
#[test]
fn the_stages_are_those_of_panels() {
    let all: Vec<&str> = stepboard::card::scene::PanelStage::ALL.iter().map(|stage| stage.slug()).collect();
    assert_eq!(all, STAGES);
}
