//! Cards as items of QTI 3.0 (1EdTech Question and Test Interoperability): choice, order and a number, each with frozen
//! numbers. What a card is by the model is lost: another program grades against what was computed when it was exported.

mod body;
mod manifest;
mod response;
mod xml;

use super::uuid5;
use crate::card::{Answer, Card, Kind, Voice, deal, solve};
use crate::content::{Units, World};
use crate::terms;

terms! {
    /// Why a card is no item.
    LeftOut {
        /// It is looked at, pointed at or tested; words alone do not hold it.
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
    let voice = Voice::new(world.content, "en", units);
    let mut package = Items::default();
    let mut names = Vec::new();
    for (family, seed) in cards {
        match item(world, &voice, family, *seed) {
            Ok((name, text)) if !names.contains(&name) => {
                package.files.push((manifest::path(&name), text.into_bytes()));
                names.push(name);
            }
            Ok(_) => {}
            Err(why) => package.left_out.push((family.clone(), *seed, why)),
        }
    }
    let manifest = manifest::manifest(&names).into_bytes();
    package.files.insert(0, (manifest::MANIFEST.to_owned(), manifest));
    package
}

fn item(world: &World<'_>, voice: &Voice<'_>, family: &str, seed: u32) -> Result<(String, String), LeftOut> {
    let info = world.content.family(family).ok_or(LeftOut::NoCard)?;
    if info.facts.iter().any(|draw| draw.on_panel) {
        return Err(LeftOut::Picture);
    }
    let card = deal(world, family, seed).map_err(|_| LeftOut::NoCard)?;
    if matches!(card.kind, Kind::Point | Kind::Diagnose) {
        return Err(LeftOut::Picture);
    }
    let right = solve(&card, world).ok_or(LeftOut::NoCard)?.right;
    if right == Answer::NotEnough && matches!(card.kind, Kind::Order | Kind::Number) {
        return Err(LeftOut::NotEnough);
    }
    let (declaration, processing) = response::response(world, &card, &right)?;
    let name = name(&card);
    let titles = [format!("card.{family}.title"), format!("card.{family}.ask")];
    let mut text = String::from(xml::DECLARATION);
    let item = [
        ("xmlns", "http://www.imsglobal.org/xsd/imsqtiasi_v3p0"),
        ("identifier", name.as_str()),
        ("title", voice.texts.first(&[&titles[0], &titles[1]])),
        ("time-dependent", "false"),
        ("xml:lang", "en"),
    ];
    let score = [("identifier", "SCORE"), ("cardinality", "single"), ("base-type", "float")];
    let inside =
        [declaration, xml::empty("qti-outcome-declaration", &score), body::body(voice, &card), processing];
    text.push_str(&xml::element("qti-assessment-item", &item, &inside.concat()));
    Ok((name, text))
}

/// The identifier of an item: the card's, made a name of XML.
fn name(card: &Card) -> String {
    let card = format!("{}/{}/{}/{}", card.family, card.version, card.seed, card.sheet);
    format!("card-{}", uuid5(&format!("urn:stepboard:{card}")))
}
