//! What changes with the sheet: the families that are found are those that a reader of the rules expects. What is expected is
//! reasoned from the rules beside each check; nothing outside tells it.

mod support;

use stepboard::card::sprayed::in_figures;
use stepboard::card::{Answer, Change, Example, changed};
use stepboard::content::{Content, Topic, World};
use stepboard::rules::sheet::Setting;
use stepboard::rules::term::Term;
use stepboard::spraying::Run;
use support::{base, content};

/// What changes of a family where one value of the base sheet is set anew.
fn change(content: &Content, family: &str, setting: Setting, value: f64) -> Change {
    let before = base();
    let after = before.with(setting, value).expect("allowed");
    changed(family, &World { content, sheet: &before }, &World { content, sheet: &after })
}

fn example(content: &Content, family: &str, setting: Setting, value: f64) -> Example {
    match change(content, family, setting, value) {
        Change::Turned { turned, looked, example } => {
            assert!((1..=looked).contains(&turned), "{turned} of {looked}");
            *example
        }
        other => panic!("{family}: {other:?}"),
    }
}

/// The families of topics that no rule on that value stands behind.
fn untouched(content: &Content, topics: &[Topic], setting: Setting, value: f64) {
    let families: Vec<&str> = content
        .families
        .iter()
        .filter(|one| topics.contains(&one.topic))
        .map(|one| one.id.as_str())
        .collect();
    assert!(families.len() >= topics.len());
    for family in families {
        assert_eq!(change(content, family, setting, value), Change::Same, "{family} by {}", setting.slug());
    }
}

/// Four hours between clear coats instead of one: fewer coats fit into a day, a coat that waited between one and four hours is
/// now laid too soon, and one that rested four hours has not rested longer than the sheet says. Wood, air and masks do not
/// know the wait.
#[test]
fn the_wait_between_clear_coats_turns_waits_and_recoating() {
    let (content, waits) = (content(), Setting::ClearWait);
    let fit = example(&content, "coats-today", waits, 4.0);
    let (Answer::Number(before), Answer::Number(after)) = (fit.before, fit.after) else { panic!("numbers") };
    assert!(after.value < before.value, "{} then {}", before.text(), after.text());
    let soon = example(&content, "recoat-now", waits, 4.0);
    assert_eq!((soon.before, soon.after), (Answer::term("open"), Answer::term("too-soon")));
    let hours = soon.card.facts.maybe_number("hours_since").expect("told");
    assert!(hours >= 1.0, "open after {hours} h where the sheet says 1 h and more in the cold");
    example(&content, "longer-than-sheet", waits, 4.0);
    untouched(&content, &[Topic::ReadWood, Topic::Sand, Topic::BoothAir], waits, 4.0);
}

/// Half the air's humidity as the limit instead of 65 %: air that was fit to spray is not. The wait of a coat does not ask.
#[test]
fn the_humidity_limit_turns_the_spray_gate() {
    let content = content();
    let gate = example(&content, "spray-decision", Setting::HumidityLimit, 50.0);
    let humidity = gate.card.facts.maybe_number("rh").expect("told");
    assert!((50.0..=65.0).contains(&humidity), "{humidity} %");
    example(&content, "what-stops", Setting::HumidityLimit, 50.0);
    untouched(&content, &[Topic::ReadWood, Topic::Dry], Setting::HumidityLimit, 50.0);
}

/// P320 as the last grit instead of P240: wood that was ready for stain is sanded on. Spraying does not ask.
#[test]
fn the_last_grit_turns_sanding() {
    let content = content();
    let ready = example(&content, "ready-for-stain", Setting::LastGrit, 320.0);
    assert_eq!((ready.before, ready.after), (Answer::term("ready"), Answer::term("go-finer")));
    example(&content, "next-grit", Setting::LastGrit, 320.0);
    untouched(&content, &[Topic::Clear, Topic::Dry], Setting::LastGrit, 320.0);
}

/// Three quarters of the wet film: the speed that lays it is four thirds, by the balance of volumes; pitch and distance stay.
#[test]
fn another_wet_film_turns_a_face_that_is_sprayed_and_tells_both_runs() {
    let content = content();
    let wet = base().get(Setting::ClearWet);
    let clear = example(&content, "spray-clear", Setting::ClearWet, wet * 0.75);
    let (Answer::Run(Run::Passes(before)), Answer::Run(Run::Passes(after))) = (clear.before, clear.after)
    else {
        panic!("runs")
    };
    assert_eq!(before.len(), after.len());
    let share = after[0].speed / before[0].speed;
    assert!((share - 4.0 / 3.0).abs() < 1e-9, "{share}");
    assert_ne!(in_figures(&before), in_figures(&after));
    untouched(&content, &[Topic::ReadWood, Topic::Sand], Setting::ClearWet, wet * 0.75);
}

#[test]
fn a_sheet_and_itself_differ_in_nothing() {
    let (content, sheet) = (content(), base());
    let world = World { content: &content, sheet: &sheet };
    for family in content.families.iter().step_by(5) {
        assert_eq!(changed(&family.id, &world, &world), Change::Same, "{}", family.id);
    }
}

/// A family that there is not is said to be unknown and not the same.
#[test]
fn what_cannot_be_compared_says_so() {
    let (content, sheet) = (content(), base());
    let world = World { content: &content, sheet: &sheet };
    assert_eq!(changed("no-such", &world, &world), Change::Unknown { before: false, after: false });
}
