//! Cure: when levelling may begin, what keeps the gate shut, whether the day can be kept.

use super::waiting::{decided, inside, stated};
use crate::bench::Facts;
use crate::bench::drying::{ticket_time, told};
use crate::card::question::{After, Ask, Item, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::quantity::{HOURS_A_DAY, Hours, Measure, Unit};
use crate::rules::drying::factors::uncapped;
use crate::rules::drying::gate::{Finding, keeps_shut};
use crate::rules::drying::job::{self, Delivery};
use crate::rules::drying::release::{Compared, fewer_coats};
use crate::rules::drying::waits::{Earliest, Told, Wait, earliest};
use crate::rules::sheet::Setting;
use crate::rules::term::{Term, WorkClass};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};

pub(super) const ALL: &[&Question] =
    &[&LEVEL_WHEN, &HEAVY_COATS, &LEVEL_GATE, &DELIVERY_DAY, &ORDER_OF_WAITS];

/// How long from the last clear coat to levelling? Misconceptions: floor taken for the sheet's wait, cold not scaled,
/// credit for warmth, film taken linearly, another class of work.
const LEVEL_WHEN: Question = Question {
    id: "level-when",
    settle: inside,
    ask: Ask::Number { answer: level_when, tempt: level_tempts, unit: Unit::Day },
    after: After::is("shrinks-back").above("time-lost"),
};

/// A wait in days.
fn days(hours: f64) -> Measure {
    Measure::new(hours / HOURS_A_DAY, Unit::Day, 1)
}

fn level_when(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    Ok(decided(earliest(Wait::Buff, &told(facts)?, world.sheet)?)?.map(|found| days(found.hours.get())))
}

fn level_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let Ok(mine) = told(facts) else { return Vec::new() };
    let (Some((found, air)), Some(film)) = (stated(Wait::Buff, &mine, world), mine.film) else {
        return Vec::new();
    };
    let linear = (film.get() / world.sheet.get(Setting::BuildReference)).max(1.0);
    let (sheet_wait, floor) = (found.stated.get(), found.floor.get());
    let mut tempts = vec![
        Tempt::number(days(f64::max(sheet_wait, floor * linear) * found.cold), "film-taken-linearly"),
        Tempt::number(days(sheet_wait), "cold-not-scaled"),
        Tempt::number(days(floor * found.cold), "floor-for-sheet-wait"),
        Tempt::number(days(sheet_wait * found.cold), "thick-coat-not-counted"),
    ];
    let free = uncapped(air, world.sheet);
    if free < 1.0 {
        tempts.insert(0, Tempt::number(days(found.hours.get() * free), "warm-credit-taken"));
    }
    for class in WorkClass::ALL {
        let other = Told { class: Some(*class), ..mine };
        if mine.class != Some(*class)
            && let Some((found, _)) = stated(Wait::Buff, &other, world)
        {
            tempts.push(Tempt::number(days(found.hours.get()), "other-class-of-work"));
        }
    }
    tempts
}

/// The same film in a few heavy coats: how many times as long are the waits? Misconceptions: the same film dries the
/// same, time goes with the film once, each wait taken for all, fewer coats dry sooner.
const HEAVY_COATS: Question = Question {
    id: "heavy-coats",
    settle: keep,
    ask: Ask::One { answer: heavy_coats, tempt: heavy_tempts },
    after: After::is("film-stays-soft").above("time-lost"),
};

fn times(factor: f64) -> Measure {
    Measure::new(factor, Unit::Ratio, 2)
}

fn heavy_coats(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    let (light, heavy) = (facts.count("light_coats")?, facts.count("heavy_coats")?);
    let ruling = fewer_coats(light, heavy, facts.term::<Compared>("compared")?);
    Ok(ruling.map(|factor| Answer::Number(times(factor))))
}

fn heavy_tempts(facts: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let (Ok(light), Ok(heavy)) = (facts.count("light_coats"), facts.count("heavy_coats")) else {
        return Vec::new();
    };
    let each = fewer_coats(light, heavy, Compared::EachWait).answer;
    let all = fewer_coats(light, heavy, Compared::AllWaits).answer;
    vec![
        Tempt::number(times(each), "each-wait-for-all"),
        Tempt::number(times(all), "film-taken-linearly"),
        Tempt::number(times(1.0), "same-film-same-time"),
        Tempt::number(times(1.0 / all), "fewer-coats-sooner"),
        Tempt::number(times(all * each), "cube-for-square"),
    ]
}

/// What keeps the gate to levelling shut? Misconceptions: the clock alone opens it, a test alone opens it, touch-dry
/// means dry.
const LEVEL_GATE: Question = Question {
    id: "level-gate",
    settle: stood,
    ask: Ask::All { items: findings, holds: shut },
    after: After::is("shrinks-back"),
};

/// Brings the air inside the sheet and sets the time stood near the wait.
fn stood(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    inside(facts, world, dice);
    if let Some((found, _)) = told(facts).ok().and_then(|told| stated(Wait::Buff, &told, world)) {
        let share = dice.on_grid(0.5, 1.6, 0.1);
        facts.set("hours_since", libm::round(found.hours.get() * share));
    }
}

fn findings(_: &Facts, _: &World<'_>, _: &mut Dice) -> Vec<Item> {
    let slip = |finding: &Finding| match finding {
        Finding::TimeStood => "time-stood-misjudged",
        Finding::TouchDry => "touch-dry-says-nothing",
        finding if finding.fails().is_some() => "clock-alone-opens",
        _ => "passed-test-taken-as-stop",
    };
    Finding::ALL.iter().map(|finding| Item::new(finding.slug(), slip(finding))).collect()
}

fn shut(facts: &Facts, world: &World<'_>, slug: &str) -> Judged<bool> {
    let finding = Finding::from_slug(slug).ok_or_else(|| CannotJudge::without("wait"))?;
    keeps_shut(finding, facts.hours("hours_since").ok(), &told(facts)?, world.sheet)
}

/// Can this ticket make its day? Misconceptions: the last wait forgotten, the coats before it forgotten, warmth and
/// touch taken as shortcuts.
const DELIVERY_DAY: Question = Question {
    id: "delivery-day",
    settle: days_left,
    ask: Ask::One { answer: delivery, tempt: delivery_tempts },
    after: After::is("shrinks-back"),
};

/// Tells the class of the ticket and sets the days left near the time that the job takes.
fn days_left(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    /// Days left at the least.
    const LEAST: f64 = 2.0;
    let ticket = facts.slug("ticket").ok().and_then(|slug| world.content.ticket(slug));
    if let Some(ticket) = ticket {
        facts.set_term("class", ticket.class.slug());
        facts.set("clear_coats", f64::from(ticket.clear_coats));
    }
    let mut at_reference = facts.clone();
    at_reference.set("air_c", world.sheet.get(Setting::WaitReference));
    let time = ticket_time(&at_reference, world).ok().and_then(|ruling| ruling.answer.estimate());
    if let Some(time) = time {
        let total = time.schedule.total.get() / HOURS_A_DAY;
        let last = time.before_levelling.map_or(total, |wait| wait.hours.get() / HOURS_A_DAY);
        let between = f64::midpoint(total, last);
        let left = match dice.below(3) {
            0 => last * dice.on_grid(0.5, 0.9, 0.1),
            1 => between,
            _ => total * dice.on_grid(1.1, 1.9, 0.1) + 1.0,
        };
        facts.set("days_left", libm::round(left).max(LEAST));
    }
}

fn delivery(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    facts.number("air_c")?;
    let left = Hours::new(facts.number("days_left")? * HOURS_A_DAY)
        .map_err(|_| CannotJudge::without("days_left"))?;
    let ruling: Ruling<Delivery> = job::delivery(ticket_time(facts, world)?, left);
    Ok(ruling.map(|verdict| Answer::term(verdict.slug())))
}

fn delivery_tempts(_: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let mut tempts = vec![
        Tempt::term(Delivery::InTime.slug(), "chain-not-added-up", "shrinks-back"),
        Tempt::term(Delivery::LateByLastWait.slug(), "last-wait-misjudged", "lost-day"),
        Tempt::term(Delivery::LateByWholeChain.slug(), "chain-misjudged", "lost-day"),
        Tempt::term(Delivery::OutsideModel.slug(), "room-was-inside", "lost-day"),
        Tempt::term("level-when-touch-dry", "touch-dry-taken-for-dry", "shrinks-back"),
    ];
    if !world.sheet.is_on(Setting::WarmCredit) {
        tempts.push(Tempt::term("warm-to-save-time", "warm-credit-taken", "shrinks-back"));
    }
    tempts
}

/// Put the waits in order, shortest first. Misconceptions: every filler waits alike, a run waits as long as a coat.
const ORDER_OF_WAITS: Question = Question {
    id: "order-of-waits",
    settle: keep,
    ask: Ask::Order { items: some_waits, accepts: rising },
    after: After::is("lost-day"),
};

/// Waits of different length: of equal ones the first drawn is shown.
fn some_waits(facts: &Facts, world: &World<'_>, dice: &mut Dice) -> Vec<Item> {
    /// Waits on one card.
    const SHOWN: usize = 4;
    let mut waits =
        [Wait::FillerToNext, Wait::StainToNext, Wait::SealToNext, Wait::Scuff, Wait::Run, Wait::Buff];
    dice.shuffle(&mut waits);
    let mut lengths: Vec<Hours> = Vec::new();
    let mut shown = Vec::new();
    for wait in waits {
        let length = at_reference(wait, facts, world).map(|ruling| ruling.answer.hours);
        if shown.len() == SHOWN || length.as_ref().is_ok_and(|length| lengths.contains(length)) {
            continue;
        }
        lengths.extend(length.ok());
        shown.push(Item::new(wait.slug(), ""));
    }
    shown
}

/// A wait in a room at the sheet's own reference temperature.
fn at_reference(wait: Wait, facts: &Facts, world: &World<'_>) -> Judged<Earliest> {
    let told = Told { air: Some(world.sheet.celsius(Setting::WaitReference)), ..told(facts)? };
    decided(earliest(wait, &told, world.sheet)?)
}

fn rising(facts: &Facts, world: &World<'_>, order: &[String]) -> Judged<bool> {
    let mut gathered = Ruling::by("drying.stated-wait", true);
    let mut last = 0.0;
    for slug in order {
        let wait = Wait::from_slug(slug).ok_or_else(|| CannotJudge::without("wait"))?;
        let ruling = at_reference(wait, facts, world)?;
        let hours = ruling.answer.hours.get();
        for rule in &ruling.rules {
            gathered = gathered.and(rule.0);
        }
        gathered = gathered.step(wait.slug(), "", Measure::new(hours, Unit::Hour, 1));
        gathered.answer &= hours >= last;
        last = hours;
    }
    Ok(gathered)
}
