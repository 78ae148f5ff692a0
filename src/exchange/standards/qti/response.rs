//! What is right, and how a response is scored.

use super::LeftOut;
use super::xml::{element, empty};
use crate::card::{Answer, Card, Kind, Mark, grade, tolerance};
use crate::content::World;

pub(super) const RESPONSE: &str = "RESPONSE";
pub(super) const NOT_ENOUGH: &str = "NOT_ENOUGH";
/// The standard's own template: 1 where the response is the correct one, else 0.
const TEMPLATE: &str = "https://purl.imsglobal.org/spec/qti/v3p0/rptemplates/match_correct.xml";
/// Orders that an item lists at most, our own limit.
const ORDERS_MOST: usize = 24;

/// The identifier of an option.
pub(super) fn letter(place: usize) -> String {
    format!("OPTION_{}", place + 1)
}

/// The declaration of the response with what is right, and the processing that scores it.
pub(super) fn response(world: &World<'_>, card: &Card, right: &Answer) -> Result<(String, String), LeftOut> {
    let named = |option: &Answer| {
        let place = card.options.iter().position(|one| one == option);
        place.map_or_else(|| NOT_ENOUGH.to_owned(), letter)
    };
    let terms = |slugs: &[String]| slugs.iter().map(|slug| named(&Answer::term(slug))).collect::<Vec<_>>();
    match (card.kind, right) {
        (Kind::ChooseAll, Answer::Terms(slugs)) => {
            Ok((declared("multiple", "identifier", &terms(slugs)), templated()))
        }
        (Kind::ChooseAll, _) => {
            Ok((declared("multiple", "identifier", &[NOT_ENOUGH.to_owned()]), templated()))
        }
        (Kind::Order, _) => {
            let orders: Vec<Vec<String>> = accepted(world, card).iter().map(|order| terms(order)).collect();
            let first = orders.first().ok_or(LeftOut::NoCard)?;
            let declaration = declared("ordered", "identifier", first);
            match orders.len() {
                1 => Ok((declaration, templated())),
                2..=ORDERS_MOST => Ok((declaration, scored(&any_of(&orders)))),
                _ => Err(LeftOut::ManyOrders),
            }
        }
        (Kind::Number, Answer::Number(measure)) => {
            let asked = card.unit.map_or(*measure, |unit| measure.in_unit(unit));
            let room = tolerance::room_in(asked);
            // Another program reads a decimal fraction; more places than a double holds would be none.
            let value = asked.value.to_string();
            let room = format!("{room} {room}");
            let equal = [("tolerance-mode", "absolute"), ("tolerance", room.as_str())];
            let number = element("qti-base-value", &[("base-type", "float")], &value);
            let equal = element("qti-equal", &equal, &(number + &given()));
            Ok((declared("single", "float", &[value]), scored(&equal)))
        }
        _ => Ok((declared("single", "identifier", &[named(right)]), templated())),
    }
}

/// What the standard's own template scores.
pub(super) fn templated() -> String {
    empty("qti-response-processing", &[("template", TEMPLATE)])
}

pub(super) fn declared(cardinality: &str, base: &str, values: &[String]) -> String {
    let values: String = values.iter().map(|value| element("qti-value", &[], value)).collect();
    let said = [("identifier", RESPONSE), ("cardinality", cardinality), ("base-type", base)];
    element("qti-response-declaration", &said, &element("qti-correct-response", &[], &values))
}

fn given() -> String {
    empty("qti-variable", &[("identifier", RESPONSE)])
}

/// Scores 1 where an expression holds, else 0.
fn scored(holds: &str) -> String {
    let set = |value: &str| {
        let value = element("qti-base-value", &[("base-type", "float")], value);
        element("qti-set-outcome-value", &[("identifier", "SCORE")], &value)
    };
    let held = element("qti-response-if", &[], &(holds.to_owned() + &set("1")));
    let not = element("qti-response-else", &[], &set("0"));
    element("qti-response-processing", &[], &element("qti-response-condition", &[], &(held + &not)))
}

/// Whether the response is one of several orders.
fn any_of(orders: &[Vec<String>]) -> String {
    let one = |order: &Vec<String>| {
        let values = order.iter().map(|name| element("qti-base-value", &[("base-type", "identifier")], name));
        element("qti-match", &[], &(given() + &element("qti-ordered", &[], &values.collect::<String>())))
    };
    element("qti-or", &[], &orders.iter().map(one).collect::<String>())
}

/// Every order of the items that the model accepts.
fn accepted(world: &World<'_>, card: &Card) -> Vec<Vec<String>> {
    let slugs = card.options.iter().filter_map(|option| match option {
        Answer::Term(slug) => Some(slug.clone()),
        _ => None,
    });
    let mut orders = vec![Vec::new()];
    for slug in slugs {
        let with = |order: &Vec<String>| {
            (0..=order.len())
                .map(|place| {
                    let mut longer = order.clone();
                    longer.insert(place, slug.clone());
                    longer
                })
                .collect::<Vec<_>>()
        };
        orders = orders.iter().flat_map(with).collect();
    }
    orders.retain(|order| {
        let answer = Answer::Order(order.clone());
        grade(card, world, &answer).is_some_and(|graded| graded.mark == Mark::Right)
    });
    orders
}
