//! Cards as items of QTI 3.0 (1EdTech Question and Test Interoperability): choice, order and a number, each with frozen
//! numbers. What a card is by the model is lost: another program grades against what was computed when it was exported.

mod body;
mod manifest;
mod own;
mod response;
mod xml;

use super::uuid5;
use crate::card::{Answer, Card, Kind, Voice, deal, solve};
use crate::content::{ENGLISH, Units, World};
use crate::exchange::set::SetCard;
use crate::terms;

terms! {
    /// Why a card is no item.
    LeftOut {
        /// It is looked at, pointed at, tested or sprayed; words alone do not hold it.
        Picture = "picture",
        /// Not enough is told on it, which its kind of item cannot answer.
        NotEnough = "not-enough",
        /// More orders are right than an item lists.
        ManyOrders = "many-orders",
        /// No such card is dealt.
        NoCard = "no-card",
    }
}

/// The files of a package, and what is no part of it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Items {
    /// Paths and texts, `imsmanifest.xml` first.
    pub files: Vec<(String, Vec<u8>)>,
    /// Cards left out, by family and seed.
    pub left_out: Vec<(String, u32, LeftOut)>,
}

/// A package of cards by family and seed, in English and in those units.
#[must_use]
pub fn items(world: &World<'_>, units: Units, cards: &[(String, u32)]) -> Items {
    let voice = Voice::new(world.content, ENGLISH, units);
    let dealt = |(family, seed): &(String, u32)| {
        let made = deal(world, family, *seed).map_err(|_| LeftOut::NoCard);
        (family.clone(), *seed, made.and_then(|card| item(world, &voice, &card)))
    };
    packed(cards.iter().map(dealt))
}

/// A package of the cards that a set deals, the shop's own among them.
#[must_use]
pub fn items_of_set(world: &World<'_>, units: Units, cards: &[SetCard<'_>]) -> Items {
    let voice = Voice::new(world.content, ENGLISH, units);
    let made = |card: &SetCard<'_>| match card {
        SetCard::Computed(card) => (card.family.clone(), card.seed, item(world, &voice, card)),
        SetCard::Own(_, card) => (card.id(), 0, Ok(own::item(card))),
    };
    packed(cards.iter().map(made))
}

/// An item's name and text, or why there is none.
type Made = Result<(String, String), LeftOut>;

fn packed(cards: impl Iterator<Item = (String, u32, Made)>) -> Items {
    let mut package = Items::default();
    let mut names = Vec::new();
    for (family, seed, made) in cards {
        match made {
            Ok((name, text)) if !names.contains(&name) => {
                package.files.push((manifest::path(&name), text.into_bytes()));
                names.push(name);
            }
            Ok(_) => {}
            Err(why) => package.left_out.push((family, seed, why)),
        }
    }
    let manifest = manifest::manifest(&names).into_bytes();
    package.files.insert(0, (manifest::MANIFEST.to_owned(), manifest));
    package
}

fn item(world: &World<'_>, voice: &Voice<'_>, card: &Card) -> Made {
    let info = world.content.family(&card.family).ok_or(LeftOut::NoCard)?;
    if info.facts.iter().any(|draw| draw.on_panel)
        || matches!(card.kind, Kind::Point | Kind::Diagnose | Kind::Spray)
    {
        return Err(LeftOut::Picture);
    }
    let right = solve(card, world).ok_or(LeftOut::NoCard)?.right;
    if right == Answer::NotEnough && matches!(card.kind, Kind::Order | Kind::Number) {
        return Err(LeftOut::NotEnough);
    }
    let (declaration, processing) = response::response(world, card, &right)?;
    let titles = ["title", "ask"].map(|what| format!("card.{}.{what}", card.family));
    let title = voice.texts.first(&[&titles[0], &titles[1]]);
    let named = format!("{}/{}/{}/{}", card.family, card.version, card.seed, card.sheet);
    Ok(whole(&named, &Told { title, declaration, body: body::body(voice, card), processing }))
}

/// The parts of an item, as XML but for its title.
struct Told<'a> {
    title: &'a str,
    declaration: String,
    body: String,
    processing: String,
}

/// An item: its identifier, which is what it is made of as a name of XML, and its text.
fn whole(named: &str, told: &Told<'_>) -> (String, String) {
    let name = format!("card-{}", uuid5(&format!("urn:stepboard:{named}")));
    let mut text = String::from(xml::DECLARATION);
    let item = [
        ("xmlns", "http://www.imsglobal.org/xsd/imsqtiasi_v3p0"),
        ("identifier", name.as_str()),
        ("title", told.title),
        ("time-dependent", "false"),
        ("xml:lang", ENGLISH),
    ];
    let score = [("identifier", "SCORE"), ("cardinality", "single"), ("base-type", "float")];
    let outcome = xml::empty("qti-outcome-declaration", &score);
    let inside = [told.declaration.as_str(), &outcome, &told.body, &told.processing];
    text.push_str(&xml::element("qti-assessment-item", &item, &inside.concat()));
    (name, text)
}
