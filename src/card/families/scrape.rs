//! Scraping the binding: what it needs before colour, when it is scraped, the order of the work round it.

use crate::bench::Facts;
use crate::card::question::{After, Ask, Item, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::{ColourPlan, Ticket, World};
use crate::rules::binding::{self, LastLaid, Preparing, Scraping};
use crate::rules::term::{Binding, Term};
use crate::rules::verdict::Judged;

pub(super) const ALL: &[&Question] = &[&WHEN_TO_SCRAPE, &TRIM_BEFORE_COLOUR, &SCRAPE_ORDER];

/// Is the binding scraped now? Misconceptions: any time will do; clear build protects while one scrapes; every ticket
/// has something to scrape.
const WHEN_TO_SCRAPE: Question = Question {
    id: "when-to-scrape",
    settle: keep,
    ask: Ask::One { answer: when_to_scrape, tempt: when_to_scrape_slips },
    after: After::is("ledge-at-binding"),
};

/// What does the binding need before colour? Misconceptions: pale wood behaves like plastic; glue is scraped off later
/// with the colour.
const TRIM_BEFORE_COLOUR: Question = Question {
    id: "trim-before-colour",
    settle: bare_is_not_sealed,
    ask: Ask::One { answer: trim_before_colour, tempt: trim_before_colour_slips },
    after: After::is("stained-binding"),
};

/// Put the work round the binding in order. Misconceptions: scrape last; inspect before scraping; level through colour.
const SCRAPE_ORDER: Question = Question {
    id: "scrape-order",
    settle: keep,
    ask: Ask::Order { items: steps, accepts },
    after: After::is("ledge-at-binding"),
};

/// Whether stain, colour or shading comes to lie on the binding.
fn coloured(ticket: &Ticket) -> bool {
    ticket.shaded || ticket.colour != ColourPlan::Natural
}

fn when_to_scrape(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let ticket = world.ticket(facts.slug("ticket")?)?;
    // Without colour on a binding nothing is scraped whatever was laid last, and through a build it is too late, dry or not.
    let scraped = ticket.binding != Binding::None && coloured(ticket);
    let last = if scraped { facts.term("last_laid")? } else { LastLaid::Colour };
    let dry = !scraped || last == LastLaid::Build || facts.yes("touch_dry")?;
    let ruling = binding::scraping(ticket.binding, coloured(ticket), last, dry, world.sheet);
    Ok(ruling.map(|answer| Answer::term(answer.slug())))
}

fn when_to_scrape_slips(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(Scraping::Now.slug(), "scraping-has-its-place", "ledge-at-binding"),
        Tempt::term(Scraping::ProtectiveFirst.slug(), "protective-clear-misplaced", "ledge-at-binding"),
        Tempt::term(Scraping::WaitDry.slug(), "waiting-alone-helps-not", "ledge-at-binding"),
        Tempt::term(Scraping::TooLate.slug(), "not-yet-too-late", "stained-binding"),
        Tempt::term(Scraping::Nothing.slug(), "binding-on-ticket-overlooked", "stained-binding"),
    ]
}

fn trim_before_colour(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let ticket = world.ticket(facts.slug("ticket")?)?;
    // Levelling comes first, taped or not; and only pale wood that colour comes to lie on has to be sealed.
    let levelled = facts.yes("binding_levelled")?;
    let colours = levelled && coloured(ticket) && !facts.yes("binding_masked")?;
    let sealed = colours && ticket.binding == Binding::Wood && facts.yes("binding_sealed")?;
    let ruling = binding::preparing(ticket.binding, colours, levelled, sealed);
    Ok(ruling.map(|answer| Answer::term(answer.slug())))
}

fn trim_before_colour_slips(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(Preparing::ColourOver.slug(), "trim-not-ready", "stained-binding"),
        Tempt::term(Preparing::SealFirst.slug(), "sealer-not-what-it-lacks", "glue-shows-at-binding"),
        Tempt::term(Preparing::LevelFirst.slug(), "already-levelled", "glue-shows-at-binding"),
        Tempt::term(Preparing::Nothing.slug(), "binding-on-ticket-overlooked", "stained-binding"),
    ]
}

/// Nobody seals a binding that was not levelled yet.
fn bare_is_not_sealed(facts: &mut Facts, _: &World<'_>, _: &mut Dice) {
    if facts.maybe_slug("binding_levelled") == Some("no") {
        facts.set_term("binding_sealed", "no");
    }
}

/// Operations on one card.
const TO_ORDER: usize = 5;

fn steps(facts: &Facts, world: &World<'_>, dice: &mut Dice) -> Vec<Item> {
    let ticket = facts.maybe_slug("ticket").and_then(|slug| world.content.ticket(slug));
    let mut all = binding::trim_steps(ticket.is_some_and(coloured));
    dice.shuffle(&mut all);
    all.iter().take(TO_ORDER).map(|step| Item::new(step.slug(), "")).collect()
}

fn accepts(_: &Facts, world: &World<'_>, order: &[String]) -> Judged<bool> {
    binding::accepts(order, world.sheet)
}
