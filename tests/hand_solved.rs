//! The whole chain from a card over its facts and the rule to the grade, held against answers worked out by hand from
//! named sources (`tests/data/hand_solved.csv`). A row carries the facts of its card, so that it stands when other seeds
//! deal other cards; the card is made from them through the public interface.

mod support;

use std::collections::BTreeSet;
use stepboard::bench::{FactValue, Facts};
use stepboard::card::{Answer, Card, Kind, Mark, deal, grade};
use stepboard::content::{Content, World};
use stepboard::quantity::{Measure, Unit};
use support::content;
use support::table::{Row, table};

/// Rows and families that the table has. Both change only with the table, so that nothing is skipped in silence.
const ROWS: usize = 172;
const FAMILIES: usize = 158;
/// Seeds that are looked through for what a family tells and offers.
const SEEDS: u32 = 100;
/// A figure worked by hand is rounded to its last digit; the card may lie one of that digit off.
const LAST_DIGITS: f64 = 1.0;

fn measure(text: &str) -> Option<Measure> {
    let (figure, unit) = text.split_once(' ')?;
    let decimals = figure.split_once('.').map_or(0, |(_, places)| places.len());
    let unit: Unit = serde_json::from_value(unit.into()).ok()?;
    Some(Measure::new(figure.parse().ok()?, unit, u8::try_from(decimals).ok()?))
}

fn answer(kind: Kind, text: &str) -> Answer {
    let slugs = || text.split(' ').map(str::to_owned).collect();
    match kind {
        _ if text == "not-enough" => Answer::NotEnough,
        Kind::ChooseAll => Answer::Terms(slugs()),
        Kind::Order => Answer::Order(slugs()),
        Kind::Point | Kind::Diagnose | Kind::Spray => {
            panic!("what is seen or sprayed is not worked by hand: `{text}`")
        }
        Kind::ChooseOne | Kind::Number => measure(text).map_or_else(|| Answer::term(text), Answer::Number),
    }
}

fn facts(content: &Content, text: &str) -> Facts {
    let mut facts = Facts::default();
    for pair in text.split_whitespace() {
        let (key, value) = pair.split_once('=').expect("a fact reads key=value");
        let info = content.fact(key).unwrap_or_else(|| panic!("`{key}` is no fact"));
        match info.unit {
            Some(_) => facts.set(key, value.parse().unwrap_or_else(|_| panic!("`{pair}` is no number"))),
            None => facts.set_term(key, value),
        }
    }
    facts
}

/// Whether two sets of facts are the same ones; numbers may differ in the last bits.
fn same(a: &Facts, b: &Facts) -> bool {
    let close = |a: &FactValue, b: &FactValue| match (a, b) {
        (FactValue::Number(a), FactValue::Number(b)) => (a - b).abs() <= 1e-9 * a.abs().max(1.0),
        (a, b) => a == b,
    };
    a.0.len() == b.0.len()
        && a.0.iter().all(|(key, value)| b.0.get(key).is_some_and(|other| close(value, other)))
}

/// The card of a row: its facts and options in the frame that the family deals. Fails where the family cannot tell such
/// facts or offer such options.
fn card(world: &World<'_>, row: &Row) -> Result<(Card, bool), String> {
    let family = row.text("family");
    let at = |seed| deal(world, family, seed).map_err(|error| error.to_string());
    let seed = row.text("seed").parse().map_err(|_| "`seed` is no number".to_owned())?;
    let dealt = at(seed)?;
    let told = facts(world.content, row.text("facts"));
    let offered = row.text("options").split(';').filter(|option| !option.is_empty());
    let options: Vec<Answer> =
        offered.map(|text| measure(text).map_or_else(|| Answer::term(text), Answer::Number)).collect();
    let still = same(&dealt.facts, &told);
    let cards = (0..SEEDS).map(at).collect::<Result<Vec<Card>, String>>()?;
    let tells = |card: &Card| card.facts.0.keys().eq(told.0.keys());
    if !still && !cards.iter().any(tells) {
        return Err("no card of the family tells these facts: work a new card out by hand".to_owned());
    }
    let offers = |option: &Answer| cards.iter().chain([&dealt]).any(|card| card.options.contains(option));
    let terms = options.iter().filter(|option| matches!(option, Answer::Term(_)));
    if let Some(option) = terms.clone().find(|option| !offers(option)) {
        return Err(format!("no card of the family offers {option:?}: work a new card out by hand"));
    }
    if dealt.unit.is_none() && options.is_empty() {
        return Err("a card to choose from has options".to_owned());
    }
    Ok((Card { facts: told, options, ..dealt }, still))
}

/// What is wrong with the program's answer to a row, if anything; else whether its seed still deals the card.
fn judged(world: &World<'_>, row: &Row) -> Result<bool, String> {
    let (card, still) = card(world, row)?;
    let worked = answer(card.kind, row.text("answer"));
    let graded = grade(&card, world, &worked).ok_or("no such family")?;
    let right = &graded.solution.right;
    if graded.mark != Mark::Right {
        return Err(format!("worked by hand: {worked:?}; the program: {right:?}"));
    }
    if let (Answer::Number(worked), Answer::Number(right)) = (&worked, right) {
        let digit = 0.1_f64.powi(i32::from(worked.decimals));
        let found = right.in_unit(worked.unit).value;
        if (worked.value - found).abs() > LAST_DIGITS * digit {
            return Err(format!("worked by hand: {}; the program: {found}", worked.value));
        }
    }
    let wrong = if worked == Answer::NotEnough { Answer::term("none-of-these") } else { Answer::NotEnough };
    if grade(&card, world, &wrong).ok_or("no such family")?.mark == Mark::Right {
        return Err(format!("{wrong:?} is graded right as well"));
    }
    Ok(still)
}

#[test]
fn the_program_answers_cards_as_they_were_worked_by_hand() {
    let content = content();
    let rows = table("hand_solved.csv");
    let (mut families, mut practice, mut dealt, mut faults) = (BTreeSet::new(), 0, 0, Vec::new());
    for row in &rows {
        let sheet = content.sheets.iter().find(|sheet| sheet.slug == row.text("sheet"));
        let world = World { content: &content, sheet: sheet.expect("a sheet that ships") };
        for column in ["working", "source"] {
            assert!(!row.text(column).is_empty(), "{}: no {column}", row.text("family"));
        }
        match row.text("provenance") {
            "fetched" | "computed" => {}
            "common practice" => practice += 1,
            other => panic!("{}: `{other}` is no provenance of a check", row.text("family")),
        }
        families.insert(row.text("family"));
        match judged(&world, row) {
            Ok(still) => {
                dealt += usize::from(still);
                row.checked("card");
            }
            Err(fault) => faults.push(format!("{}, seed {}: {fault}", row.text("family"), row.text("seed"))),
        }
    }
    assert!(faults.is_empty(), "{} of {} rows:\n{}", faults.len(), rows.len(), faults.join("\n"));
    assert_eq!((rows.len(), families.len()), (ROWS, FAMILIES), "rows and families of the table");
    assert!(practice * 4 <= rows.len(), "{practice} of {} rows rest on common practice", rows.len());
    assert!(dealt * 2 >= rows.len(), "only {dealt} of {} seeds still deal their card: deal anew", rows.len());
    println!("{} rows, {practice} on common practice, {dealt} dealt as they were", rows.len());
}
