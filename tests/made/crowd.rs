//! Journals of many people as tablets would write them, from a seed: people of different knowledge answer cards of different
//! difficulty (the logistic model of G. Rasch 1960), half of them in checks.

use std::fmt::Write as _;
use std::fs;
use std::path::Path;
use stepboard::card::{Answer, Card, Dice, Kind, Mark, deal, grade, solve};
use stepboard::content::{Content, World};
use stepboard::quantity::Measure;
use stepboard::record::{
    Certainty, Entry, Event, FORMAT, Help, LocalDate, SheetName, Stamp, Step, Turn, Within,
};

/// Cards of a family that are dealt; answers go to these.
const SEEDS: u32 = 50;
/// People who share a tablet.
const ON_A_TABLET: u32 = 10;
/// Answers of a person on one day.
const A_DAY: u32 = 25;
/// First day, days after 1 January 1970: 1 March 2027.
const FIRST_DAY: i32 = 20_878;
/// Families of a check.
const OF_A_CHECK: usize = 12;
/// Sets that are taken.
const SETS: [&str; 4] = ["first-week", "filling", "second-week", "air"];

/// A card with a right and a wrong answer to it.
struct Known {
    card: Card,
    right: Answer,
    wrong: Answer,
    guess: f64,
    /// Logit of its difficulty.
    hard: f64,
}

/// Writes the journals of so many people, so many answers each, a file a tablet.
pub(crate) fn write(content: &Content, folder: &Path, people: u32, answers: u32, seed: u64) {
    let sheet = &content.sheets[0];
    let world = World { content, sheet };
    let families: Vec<Vec<Known>> = content
        .families
        .iter()
        .map(|family| (0..SEEDS).filter_map(|seed| known(&world, &family.id, seed)).collect::<Vec<_>>())
        .filter(|cards| !cards.is_empty())
        .collect();
    let name = SheetName::of(sheet);
    fs::create_dir_all(folder).expect("a folder");
    for tablet in 0..people.div_ceil(ON_A_TABLET) {
        let mut dice = Dice::new(&format!("crowd/{seed}/{tablet}"));
        let mut events: Vec<String> = Vec::new();
        let mut day = 0;
        let theirs: Vec<(u32, f64)> = (tablet * ON_A_TABLET..people.min((tablet + 1) * ON_A_TABLET))
            .map(|person| (person, dice.on_grid(-2.0, 3.0, 0.125)))
            .collect();
        let mut done = 0;
        while done < answers {
            for (person, able) in &theirs {
                let mut desk = Desk { name: &name, tablet, person: *person, day, minute: 0 };
                sit(&mut desk, &families, *able, A_DAY.min(answers - done), &mut dice, &mut events);
            }
            (done, day) = (done + A_DAY.min(answers - done), day + 1);
        }
        let mut text = String::from("[");
        for (place, event) in events.iter().enumerate() {
            let _ = write!(text, "{}\n{event}", if place == 0 { "" } else { "," });
        }
        text.push_str("\n]\n");
        fs::write(folder.join(format!("tablet-{tablet:04}.json")), text).expect("written");
    }
}

fn known(world: &World<'_>, family: &str, seed: u32) -> Option<Known> {
    let card = deal(world, family, seed)
        .ok()
        .filter(|card| matches!(card.kind, Kind::ChooseOne | Kind::ChooseAll | Kind::Order | Kind::Number))?;
    let solution = solve(&card, world)?;
    let mut others = card.options.clone();
    others.push(Answer::NotEnough);
    if let Answer::Number(right) = &solution.right {
        others.insert(0, Answer::Number(Measure { value: right.value * 3.0 + 7.0, ..*right }));
    }
    if let Answer::Terms(right) = &solution.right {
        others.insert(0, Answer::Terms(right.iter().skip(1).cloned().collect()));
    }
    let marked =
        |answer: &Answer| grade(&card, world, answer).is_some_and(|graded| graded.mark != Mark::Right);
    let wrong = others.into_iter().find(marked)?;
    let hard = Dice::new(&format!("hard/{family}")).on_grid(-2.0, 2.0, 0.25);
    Some(Known { right: solution.right, wrong, guess: solution.guess, hard, card })
}

struct Desk<'a> {
    name: &'a SheetName,
    tablet: u32,
    person: u32,
    day: i32,
    minute: u32,
}

impl Desk<'_> {
    fn stamp(&mut self, before: usize) -> Stamp {
        self.minute += 1;
        let date = LocalDate::of_number(FIRST_DAY + self.day).expect("a day");
        let minute = self.minute + 40 * (self.person % ON_A_TABLET);
        Stamp {
            format: FORMAT,
            sequence: u64::try_from(before).expect("few") + 1,
            device: format!("t{:04}", self.tablet),
            at: format!("{date}T{:02}:{:02}:00.000Z", 8 + minute / 60, minute % 60),
            date: Some(date),
            person: format!("a-{:05}", self.person),
        }
    }
}

fn sit(
    desk: &mut Desk<'_>,
    families: &[Vec<Known>],
    able: f64,
    count: u32,
    dice: &mut Dice,
    events: &mut Vec<String>,
) {
    let told = |event: &Event| serde_json::to_string(event).expect("json");
    let in_check = dice.one_in(2);
    let which = dice.below(u32::try_from(SETS.len()).expect("four")) as usize;
    let attempt = format!("{}-{}-{}", desk.tablet, desk.person, desk.day);
    let within = if in_check {
        let step = Step::Opened {
            set: SETS[which].to_owned(),
            competencies: vec!["room-safe".to_owned()],
            taking: None,
        };
        let stamp = desk.stamp(events.len());
        events.push(told(&Turn { stamp, attempt: attempt.clone(), step }.into()));
        Within::Check { attempt, set: SETS[which].to_owned() }
    } else {
        Within::Practice
    };
    for nth in 0..count as usize {
        // A set asks some families, practice all.
        let family = if in_check {
            (which * 17 + nth % OF_A_CHECK) % families.len()
        } else {
            dice.below(u32::try_from(families.len()).expect("few")) as usize
        };
        let cards = &families[family];
        let known = &cards[dice.below(u32::try_from(cards.len()).expect("few")) as usize];
        let chance = 1.0 / (1.0 + libm::exp(known.hard - able));
        let right = dice.on_grid(0.0, 1.0, 0.001) < chance;
        let certainty = match (dice.below(4), right) {
            (0, _) => Certainty::AskFirst,
            (1 | 2, true) | (3, false) => Certainty::OnTheJob,
            _ => Certainty::TestBoard,
        };
        let entry = Entry {
            stamp: desk.stamp(events.len()),
            family: known.card.family.clone(),
            version: known.card.version,
            seed: known.card.seed,
            sheet: desk.name.clone(),
            answer: if right { known.right.clone() } else { known.wrong.clone() },
            certainty,
            mark: if right { Mark::Right } else { Mark::Wrong },
            guess: Some(known.guess),
            active_seconds: (!dice.one_in(9)).then(|| 5 + dice.below(60)),
            help: if dice.one_in(15) { Help::Hint } else { Help::None },
            within: within.clone(),
        };
        events.push(told(&entry.into()));
    }
}
