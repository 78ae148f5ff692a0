//! What lies on the work before it begins, or is to come over it: `faults.csv`, fish-eye, peeling, extractive-bleed.

use crate::steps::{go, ready_for_the_gun, rest, up_to, work};
use crate::support::content;
use crate::support::table::table;
use stepboard::content::Content;
use stepboard::rules::sequence::job::Condition;
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::rules::term::{ColourPlan, Stage};
use stepboard::walk::report::{Found, report};
use stepboard::walk::saved::Mode;
use stepboard::walk::start::Start;
use stepboard::walk::{Walk, When};

/// The plain plate of another wood and with something on it.
fn plate(content: &Content, wood: &str, colour: ColourPlan, condition: Condition) -> Walk {
    let mut info = content.walk("plain-plate").expect("it ships").clone();
    info.parts[0].conditions = vec![condition];
    info.ticket.parts[0].wood = wood.to_owned();
    info.ticket.colour = colour;
    let sheet = content.sheet(&info.ticket.sheet).expect("it ships");
    Walk::begin(Start::of(&info, sheet, content).expect("a wood"), Mode::Own, 1)
}

/// What comes of leaving out the one thing that the condition asks for.
fn left_out(walk: &mut Walk, content: &Content, stop: Op, instead: Op, picks: &[(&str, &str)]) -> Vec<Found> {
    up_to(walk, content, |_, next| next.operation() == Some(stop));
    go(walk, ready_for_the_gun(), content);
    let work = work(walk, content, instead, &[], picks);
    go(walk, [work], content);
    let on = rest(walk, content);
    go(walk, on, content);
    report(walk, content).found
}

fn holds(found: &[Found], fault: &str, rule: &str, shows: Option<Stage>, when: When) {
    assert!(table("faults.csv").iter().any(|row| row["id"] == fault));
    let [one] = found else { panic!("{rule}: {found:?}") };
    assert_eq!((one.rule.0, one.faults[0], one.shows_in, one.when), (rule, fault, shows, when));
}

#[test]
fn each_condition_has_a_right_way() {
    let content = content();
    for (wood, colour, condition) in [
        ("hard-maple", ColourPlan::Natural, Condition::Silicone),
        ("hard-maple", ColourPlan::Natural, Condition::OldOil),
        ("african-padauk", ColourPlan::Solid, Condition::LightColour),
    ] {
        let mut walk = plate(&content, wood, colour, condition);
        let on = rest(&walk, &content);
        go(&mut walk, on, &content);
        let told = report(&walk, &content);
        assert!(told.found.is_empty() && told.lapses.is_empty(), "{condition:?}: {:?}", told.found);
    }
}

/// Craters open within seconds of the wet coat; a film that lies on oil lets go in use.
#[test]
fn what_is_not_washed_off_shows_as_its_fault() {
    let content = content();
    let mut walk = plate(&content, "hard-maple", ColourPlan::Natural, Condition::Silicone);
    let found = left_out(&mut walk, &content, Op::SolventWipe, Op::Seal, &[]);
    holds(&found, "fish-eye", "contamination.silicone-washed-off", Some(Stage::Seal), When::AtWork);
    let mut walk = plate(&content, "hard-maple", ColourPlan::Natural, Condition::OldOil);
    let found = left_out(&mut walk, &content, Op::SolventWipe, Op::Seal, &[]);
    holds(&found, "peeling", "contamination.old-oil-washed-off", None, When::After);
}

/// Solvent of a coat takes the colour of the wood up; a barrier coat holds it (`faults.csv`, prevention).
#[test]
fn light_colour_over_a_bleeding_wood_wants_a_barrier() {
    let content = content();
    let mut walk = plate(&content, "african-padauk", ColourPlan::Solid, Condition::LightColour);
    let plain = [("sealer", "plain-sealer")];
    let found = left_out(&mut walk, &content, Op::Seal, Op::Seal, &plain);
    holds(&found, "extractive-bleed", "colouring.barrier-under-light", Some(Stage::Seal), When::AtWork);
    let mut walk = plate(&content, "hard-maple", ColourPlan::Solid, Condition::LightColour);
    assert!(left_out(&mut walk, &content, Op::Seal, Op::Seal, &plain).is_empty(), "it does not bleed");
}
