//! Tables of the crew as CSV files.

use super::card_title::card_title;
use super::done::{came_words, set_title};
use super::stuck::{kinds, reply};
use crate::app::state::{CrewView, SetsContext, Shop};
use crate::device::files;
use crate::exchange::crew::{Field, SetDone, csv};
use crate::learn::items::Report;
use crate::rules::term::Term;

/// People by competencies, then what is misread.
pub(super) fn save_grid(shop: &Shop, sets: &SetsContext, view: &CrewView) {
    let say = |key: &str| Field::text(shop.say(&format!("crew.columns.{key}")).to_string());
    let competencies = shop.content().competencies.iter();
    let names =
        competencies.map(|one| Field::text(shop.text(&format!("competency.{}", one.slug)).to_string()));
    let head = ["number", "name", "answers", "right", "sure", "void", "last"].map(say);
    let mut rows = vec![head.into_iter().chain(names).collect::<Vec<_>>()];
    for one in &view.glances {
        let mut row = vec![
            Field::text(one.number.clone().unwrap_or_default()),
            Field::text(one.name.clone()),
            Field::count(one.answers),
            Field::count(one.right),
            Field::count(one.sure_and_wrong),
            Field::count(one.void),
            Field::text(one.last.map(|day| day.to_string()).unwrap_or_default()),
        ];
        let cells = one.cells.iter().map(|cell| {
            let word = shop.say(&format!("crew.stands.{}", cell.stands.slug()));
            let until = cell.until.map(|until| format!(" {until}")).unwrap_or_default();
            Field::text(format!("{word}{until}"))
        });
        row.extend(cells);
        rows.push(row);
    }
    rows.push(Vec::new());
    rows.push(["words", "reply", "name", "count", "sure", "right-since", "last"].map(say).to_vec());
    for one in view.stuck.iter().flatten() {
        let (kinds, reply) = (kinds(shop, sets, &one.families), reply(shop, &one.misread));
        rows.extend(one.people.iter().map(|who| {
            vec![
                Field::text(kinds.to_string()),
                Field::text(reply.to_string()),
                Field::text(who.name.clone()),
                Field::count(who.count),
                Field::count(who.sure),
                Field::count(who.right_since),
                Field::text(who.last.map(|at| at.to_string()).unwrap_or_default()),
            ]
        }));
    }
    save("stepboard-crew.csv", &rows);
}

/// Sets that people did, a row each time: number and name of the person, then what they did.
pub(super) fn save_done<'a>(
    shop: &Shop,
    sets: &SetsContext,
    people: impl Iterator<Item = (Option<&'a str>, &'a str, &'a [SetDone])>,
) {
    let heads =
        ["number", "name", "set", "set-id", "way", "day", "right", "answered", "cards", "void", "result"];
    let mut rows =
        vec![heads.map(|key| Field::text(shop.say(&format!("crew.columns.{key}")).to_string())).to_vec()];
    for (number, name, done) in people {
        rows.extend(done.iter().map(|one| {
            vec![
                Field::text(number.unwrap_or_default()),
                Field::text(name),
                Field::text(set_title(shop, sets, &one.set).to_string()),
                Field::text(one.set.clone()),
                Field::text(shop.say(&format!("crew.done.way.{}", one.way.slug())).to_string()),
                Field::text(one.day.map(|day| day.to_string()).unwrap_or_default()),
                Field::Number(Some(f64::from(one.right))),
                Field::Number(Some(f64::from(one.answered))),
                Field::Number(Some(f64::from(one.of))),
                Field::Number(Some(f64::from(one.void))),
                Field::text(came_words(shop, one).to_string()),
            ]
        }));
    }
    save("stepboard-sets-done.csv", &rows);
}

/// What the answers say of each family.
pub(super) fn save_cards(shop: &Shop, sets: &SetsContext, report: &Report) {
    let heads = [
        "family",
        "version",
        "words",
        "asked",
        "right",
        "difficulty",
        "with-rest",
        "from",
        "to",
        "upper-lower",
        "sure",
        "look",
    ];
    let mut rows =
        vec![heads.map(|key| Field::text(shop.say(&format!("crew.columns.{key}")).to_string())).to_vec()];
    rows.extend(report.families.iter().map(|one| {
        let range = one.item.range;
        let flags: Vec<&str> = one.flags.iter().map(|flag| flag.slug()).collect();
        vec![
            Field::text(one.family.clone()),
            Field::Number(Some(f64::from(one.version))),
            Field::text(card_title(shop, sets, &one.family).to_string()),
            Field::count(one.item.asked),
            Field::count(one.item.right),
            Field::Number(Some(one.item.difficulty)),
            Field::Number(one.item.with_rest),
            Field::Number(range.map(|range| range.from)),
            Field::Number(range.map(|range| range.to)),
            Field::Number(Some(one.item.upper_less_lower)),
            Field::count(one.sure_and_wrong),
            Field::text(flags.join(" ")),
        ]
    }));
    save("stepboard-cards.csv", &rows);
}

fn save(name: &str, rows: &[Vec<Field>]) {
    if let Err(error) = files::save_csv(name, &csv(rows)) {
        web_sys::console::error_1(&error);
    }
}
