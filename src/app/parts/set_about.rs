//! What a scenario set is, before it is taken or begun.

use super::{Picture, icon};
use crate::app::state::Shop;
use crate::content::{PassRule, Purpose, World};
use crate::device::clock;
use crate::exchange::CarriedSheet;
use crate::exchange::set::{CountsNot, Set, Validity, cards, counts_for, counts_not, minutes_of};
use crate::learn::check::COMPETENCIES_MOST;
use crate::rules::term::Term;
use yew::prelude::*;

/// The facts of a set, its note and who made it.
pub(in crate::app) fn set_about(shop: &Shop, id: &str, set: &Set, validity: Validity) -> Html {
    let task = &set.task;
    let asks = asks(shop, set);
    let row = |key: &'static str, told: AttrValue| {
        html! { <div {key} hidden={told.is_empty()}><dt>{ shop.say(&format!("sets.about.{key}")) }</dt><dd>{ told }</dd></div> }
    };
    let told_when = match task.purpose {
        Purpose::Practise => "sets.purpose.practise.told",
        Purpose::Check => "sets.purpose.check.told",
    };
    let same = if task.same_seed.is_some() { "sets.seeds.same.told" } else { "sets.seeds.own.told" };
    let made = [("by", set.by.clone()), ("at", clock::local(&set.at))];
    let own = [("n", set.own_cards.len().to_string())];
    html! {
        <div key="about" class="set-about">
            <p key="validity" class={classes!("set-validity", validity.slug())} hidden={validity == Validity::Open}>{ icon(Picture::NotEnough) }{ validity_told(shop, set, validity) }</p>
            <p key="note" class="kraft set-note" hidden={set.note.is_empty()}>{ &set.note }</p>
            <dl key="facts" class="said">
                { row("length", length(shop, id, set)) }
                { row("asks", asks) }
                { row("kind", format!("{} {}", shop.say(told_when), shop.say(same)).into()) }
                { row("hard", shop.say(&format!("sets.hard.{}.told", task.hard.slug()))) }
                { row("pass", pass(shop, set)) }
                { row("sheet", carried_sheet(shop, &set.sheet)) }
                { row("days", days(shop, set)) }
                { row("own", if set.own_cards.is_empty() { AttrValue::default() } else { shop.say_with("sets.about.own-told", &own) }) }
            </dl>
            <p key="made" class="note" hidden={set.by.is_empty()}>{ shop.say_with("sets.about.made", &made) }</p>
        </div>
    }
}

/// What a set asks about, in a line.
pub(in crate::app) fn asks(shop: &Shop, set: &Set) -> AttrValue {
    let task = &set.task;
    let stages = task.stages.iter().map(|stage| shop.stage(*stage).to_string());
    let competencies =
        task.competencies.iter().map(|slug| shop.text(&format!("competency.{slug}")).to_string());
    let families = task.families.iter().map(|id| shop.family_title(id).to_string());
    let mut all: Vec<String> = stages.chain(competencies).chain(families).collect();
    let more = all.len().saturating_sub(ASKED_MOST);
    if more > 1 {
        all.truncate(ASKED_MOST);
        all.push(shop.say_with("sets.about.more", &[("n", more.to_string())]).to_string());
    }
    let tickets: Vec<String> =
        task.tickets.iter().map(|slug| shop.text(&format!("ticket.{slug}")).to_string()).collect();
    if !tickets.is_empty() {
        let told = [("tickets", tickets.join(", "))];
        all.push(shop.say_with("sets.about.on-tickets", &told).to_string());
    }
    all.join(", ").into()
}

/// Things asked about that are told by name.
const ASKED_MOST: usize = 6;

/// How many cards, and how long they take.
fn length(shop: &Shop, id: &str, set: &Set) -> AttrValue {
    let Ok(sheet) = set.sheet_of(shop.content()) else { return AttrValue::default() };
    let world = World { content: shop.content(), sheet: &sheet };
    let dealt = cards(set, id, &world, "", "");
    let told = [("n", dealt.len().to_string()), ("minutes", minutes_of(&dealt, &world).to_string())];
    shop.say_with("sets.about.cards", &told)
}

/// When it is passed.
pub(in crate::app) fn pass(shop: &Shop, set: &Set) -> AttrValue {
    let Some(PassRule { right, safety }) = set.task.pass else { return shop.say("sets.pass.none.told") };
    let told = [("right", right.to_string()), ("of", set.count().to_string())];
    shop.say_with(if safety { "sets.pass.safety.told" } else { "sets.pass.right.told" }, &told)
}

/// What a sheet is called that a file carries.
pub(in crate::app) fn carried_sheet(shop: &Shop, sheet: &CarriedSheet) -> AttrValue {
    match sheet {
        CarriedSheet::Ships(name) => shop.text(&format!("sheet.{}", name.slug)),
        CarriedSheet::Own(own) => {
            let told = [("name", own.name.clone()), ("edition", own.edition.to_string())];
            shop.say_with("sets.about.own-sheet", &told)
        }
    }
}

fn days(shop: &Shop, set: &Set) -> AttrValue {
    let day = |day: Option<crate::record::LocalDate>| day.map(clock::local_day).unwrap_or_default();
    let told = [("from", day(set.from)), ("until", day(set.until))];
    match (set.from, set.until) {
        (None, None) => AttrValue::default(),
        (Some(_), None) => shop.say_with("sets.days.from.told", &told),
        (None, Some(_)) => shop.say_with("sets.days.until.told", &told),
        (Some(_), Some(_)) => shop.say_with("sets.days.both.told", &told),
    }
}

/// For which competencies a set counts as evidence; where for none, why.
pub(in crate::app) fn counts_told(shop: &Shop, set: &Set) -> AttrValue {
    let why = counts_not(set, shop.content());
    if why.is_empty() {
        let counts = counts_for(set, shop.content());
        let names = counts.iter().map(|one| shop.text(&format!("competency.{}", one.slug)).to_string());
        return shop.say_with("sets.counts", &[("names", names.collect::<Vec<_>>().join(", "))]);
    }
    let most = [("most", COMPETENCIES_MOST.to_string())];
    let told = |one: &CountsNot| shop.say_with(&format!("sets.counts-not.{}", one.slug()), &most).to_string();
    let why = why.iter().map(told).collect::<Vec<_>>().join("; ");
    shop.say_with("sets.counts-nothing", &[("why", why)])
}

/// Why a set cannot be begun, or that it can.
pub(in crate::app) fn validity_told(shop: &Shop, set: &Set, validity: Validity) -> AttrValue {
    let day = match validity {
        Validity::NotYet => set.from,
        _ => set.until,
    };
    let told = [("day", day.map(clock::local_day).unwrap_or_default())];
    shop.say_with(&format!("sets.validity.{}", validity.slug()), &told)
}
