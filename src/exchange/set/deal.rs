//! Which cards a set deals to a person in an attempt. They come out the same whenever they are asked for.

use super::{OwnCard, Set};
use crate::bench::FactValue;
use crate::card::{Answer, Card, Dice, Kind, families, solve};
use crate::content::{Content, FamilyInfo, Hard, Task, World};
use crate::learn::check::{Check, apart, first_dealt};
use crate::rules::sorted::sorted;
use crate::rules::term::Severity;

/// Seeds tried for a card that fits a set, for each family: a family with six tickets gives each within so many but for one
/// time in three thousand.
const TRIES: u32 = 48;
/// The fact that names the ticket of a situation.
const TICKET: &str = "ticket";

/// One card of a set.
#[derive(Debug, Clone, PartialEq)]
pub enum SetCard<'a> {
    /// One that the model asks.
    Computed(Card),
    /// One of the shop's own; its place among those, from 0.
    Own(usize, &'a OwnCard),
}

impl SetCard<'_> {
    /// The family under which it is answered.
    #[must_use]
    pub fn family(&self) -> String {
        match self {
            Self::Computed(card) => card.family.clone(),
            Self::Own(_, card) => card.id(),
        }
    }
}

/// The cards that a set deals to a person in an attempt, in order, the shop's own last. There are fewer where the families
/// give no card on that sheet.
///
/// The family asked least comes next; of those the one whose stage was asked least; then by how hard it is to be, families
/// about safety first, and else as drawn. No family comes again too soon while there are others.
#[must_use]
pub fn cards<'a>(set: &'a Set, id: &str, world: &World<'_>, person: &str, attempt: &str) -> Vec<SetCard<'a>> {
    drawn(set, id, world, person, attempt, set.task.families_of(world.content))
}

/// The cards of a worksheet: a face is sprayed at a tablet, so that other families of the set stand in the place of those that
/// are.
#[must_use]
pub fn cards_on_paper<'a>(set: &'a Set, id: &str, world: &World<'_>, code: &str) -> Vec<SetCard<'a>> {
    let mut families = set.task.families_of(world.content);
    families.retain(|family| !family.is_sprayed());
    drawn(set, id, world, "", code, families)
}

/// Whether a set has no card for paper: all of its families are sprayed, and none of its cards is the shop's own.
#[must_use]
pub fn is_all_sprayed(set: &Set, content: &Content) -> bool {
    let families = set.task.families_of(content);
    set.own_cards.is_empty() && !families.is_empty() && families.iter().all(|family| family.is_sprayed())
}

/// The cards that a set deals from some of its families.
fn drawn<'a>(
    set: &'a Set,
    id: &str,
    world: &World<'_>,
    person: &str,
    attempt: &str,
    mut drawn: Vec<&FamilyInfo>,
) -> Vec<SetCard<'a>> {
    let same = set.task.same_seed.map(|seed| format!("same-{seed}"));
    let check = match &same {
        Some(seed) => Check { set: id, person: "", attempt: seed },
        None => Check { set: id, person, attempt },
    };
    let mut dice = Dice::new(&format!("set/{}", check.seed(0, 0)));
    dice.shuffle(&mut drawn);
    let fits = |card: &Card| fits(&set.task, card, world);
    let mut dealt: Vec<Card> = Vec::new();
    while dealt.len() < usize::try_from(set.task.count).unwrap_or(usize::MAX) {
        let asked: Vec<&str> = dealt.iter().map(|card| card.family.as_str()).collect();
        let order = next(&drawn, set.task.hard, world, &asked);
        let Some(card) = first_dealt(world, &check, dealt.len(), order, TRIES, fits) else { break };
        dealt.push(card);
    }
    let own = set.own_cards.iter().enumerate().map(|(nth, card)| SetCard::Own(nth, card));
    dealt.into_iter().map(SetCard::Computed).chain(own).collect()
}

/// The families that may come next, the best first.
fn next<'a>(drawn: &[&'a FamilyInfo], hard: Hard, world: &World<'_>, asked: &[&str]) -> Vec<&'a FamilyInfo> {
    let stage_of = |id: &str| world.content.family(id).map(|family| family.stage);
    let key = |family: &FamilyInfo| {
        let times = asked.iter().filter(|one| **one == family.id).count();
        let of_stage = asked.iter().filter(|one| stage_of(one) == Some(family.stage)).count();
        let picks = families::find(&family.id).is_some_and(|one| one.kind() == Kind::ChooseOne);
        let hardness = match hard {
            Hard::Easy => !picks,
            Hard::Usual => false,
            Hard::Made => picks,
        };
        (times, of_stage, hardness, family.severity != Severity::Safety)
    };
    let keyed = apart(drawn.to_vec(), asked).into_iter().map(|family| (key(family), family));
    sorted(keyed.collect(), |a, b| a.0.cmp(&b.0)).into_iter().map(|(_, family)| family).collect()
}

/// Whether a card is on one of the tickets and as easy as it should be.
pub(super) fn fits(task: &Task, card: &Card, world: &World<'_>) -> bool {
    let on_ticket = match card.facts.0.get(TICKET) {
        Some(FactValue::Term(ticket)) if !task.tickets.is_empty() => task.tickets.contains(ticket),
        _ => true,
    };
    let told = || solve(card, world).is_some_and(|solution| solution.right != Answer::NotEnough);
    on_ticket && (task.hard != Hard::Easy || told())
}

/// The families of a set that give no card on a sheet.
pub(super) fn barren<'a>(set: &Set, world: &World<'a>) -> Vec<&'a FamilyInfo> {
    let check = Check { set: "", person: "", attempt: "" };
    let fits = |card: &Card| fits(&set.task, card, world);
    let deals = |family: &&FamilyInfo| first_dealt(world, &check, 0, [*family], TRIES, fits).is_none();
    set.task.families_of(world.content).into_iter().filter(deals).collect()
}
