//! Dry: which wait holds in this room, whether a recoat window is open, what still fits into the day.

use super::waiting::{decided, hours, inside, passed, set_day, stated, time_of};
use crate::bench::Facts;
use crate::bench::drying::told;
use crate::card::question::{After, Ask, Item, Question, Tempt};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::quantity::{HOURS_A_DAY, Measure, Unit};
use crate::rules::drying::Modelled;
use crate::rules::drying::by_the_clock;
use crate::rules::drying::factors::uncapped;
use crate::rules::drying::job_step::JobStep;
use crate::rules::drying::recoat::{RecoatVerdict, window};
use crate::rules::drying::waits::{Told, Wait, earliest};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::term::{Filler, Term};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};

pub(super) const ALL: &[&Question] = &[
    &FILLER_WAIT,
    &READY_YET,
    &WAIT_IN_ROOM,
    &RECOAT_NOW,
    &NEXT_STEP_CLOCK,
    &COATS_TODAY,
    &LONGER_THAN_SHEET,
];

/// Twice and half: what is guessed where the factor is not worked out.
const OUTRIGHT: f64 = 2.0;

/// When may the filled body be sealed? Misconceptions: wait not scaled for cold, credit for warmth, another filler's
/// wait, the floor taken for the sheet's wait.
const FILLER_WAIT: Question = Question {
    id: "filler-wait",
    settle: inside,
    ask: Ask::Number { answer: filler_wait, tempt: filler_wait_tempts, unit: Unit::Hour },
    after: After::is("sealed-wet-filler").above("time-lost"),
};

fn filler_wait(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    facts.term::<Filler>("filler")?;
    Ok(decided(earliest(Wait::FillerToNext, &told(facts)?, world.sheet)?)?
        .map(|found| hours(found.hours.get())))
}

fn filler_wait_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let Ok(mine) = told(facts) else { return Vec::new() };
    let mut tempts = room_tempts(Wait::FillerToNext, &mine, world);
    for filler in Filler::ALL {
        let other = Told { filler: Some(*filler), ..mine };
        if let Ok(found) = earliest(Wait::FillerToNext, &other, world.sheet)
            && let Some(found) = found.answer.estimate()
            && mine.filler != Some(*filler)
        {
            tempts.push(Tempt::number(hours(found.hours.get()), "other-filler-wait"));
        }
    }
    tempts
}

/// What comes out when the room is read wrongly. Shared by the questions after a number of hours.
fn room_tempts(wait: Wait, told: &Told, world: &World<'_>) -> Vec<Tempt> {
    let Some((found, air)) = stated(wait, told, world) else { return Vec::new() };
    let (sheet_wait, free) = (found.stated.get(), uncapped(air, world.sheet));
    let scaled = |factor: f64| hours(sheet_wait * factor);
    let mut tempts = vec![
        Tempt::number(scaled(1.0), "cold-not-scaled"),
        Tempt::number(scaled(1.0 / free), "factor-upside-down"),
        Tempt::number(scaled(OUTRIGHT), "doubled-outright"),
        Tempt::number(scaled(1.0 / OUTRIGHT), "halved-outright"),
        Tempt::number(hours(found.floor.get() * found.cold), "floor-for-sheet-wait"),
    ];
    if free < 1.0 {
        tempts.insert(0, Tempt::number(scaled(free), "warm-credit-taken"));
    }
    tempts
}

/// A coat has stood for so long in this room: what now? Misconceptions: the sheet's hours taken in a cold room, warmth
/// taken as credit, a room outside the sheet overlooked, touch-dry taken for dry, warm air blown on a wet film.
const READY_YET: Question = Question {
    id: "ready-yet",
    settle: stood,
    ask: Ask::One { answer: ready, tempt: ready_tempts },
    after: After::is("solvent-pops"),
};

/// Sets the time stood to a share of the sheet's wait, so that the room decides.
fn stood(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    let Ok(wait) = facts.term::<Wait>("wait") else { return };
    let told = Told { air: Some(world.sheet.celsius(Setting::WaitReference)), ..Told::default() };
    if let Some((found, _)) = stated(wait, &told, world) {
        let share = dice.on_grid(0.6, 1.8, 0.1);
        facts.set("hours_since", passed(found.stated.get() * share));
    }
}

fn ready(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let ruling = earliest(facts.term::<Wait>("wait")?, &told(facts)?, world.sheet)?;
    let Modelled::Estimate(found) = ruling.answer else {
        return Ok(ruling.map(|_| Answer::term("change-room")));
    };
    let over = facts.hours("hours_since")? >= found.hours;
    Ok(ruling.map(|_| Answer::term(if over { "go-on" } else { "leave-it" })))
}

fn ready_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let right = |slug: &str| ready(facts, world).is_ok_and(|ruling| ruling.answer == Answer::term(slug));
    let (over, outside) = (right("go-on"), right("change-room"));
    let hours_hold = |slip| if outside { "room-outside-overlooked" } else { slip };
    let (blown, touched) = if over { ("time-lost", "finger-mark") } else { ("solvent-pops", "solvent-pops") };
    vec![
        Tempt::term("go-on", hours_hold("wait-not-over"), "solvent-pops"),
        Tempt::term("leave-it", hours_hold("wait-was-over"), "lost-day"),
        Tempt::term("change-room", "room-was-inside", "lost-day"),
        Tempt::term("blow-warm-air", "skin-taken-for-dry", blown),
        Tempt::term("touch-decides", "touch-dry-taken-for-dry", touched),
    ]
}

/// What wait goes on the tag in this room? Misconceptions: cold not scaled, warmth taken as credit, the factor turned
/// upside down, doubled or halved outright.
const WAIT_IN_ROOM: Question = Question {
    id: "wait-in-room",
    settle: inside,
    ask: Ask::One { answer: wait_in_room, tempt: wait_in_room_tempts },
    after: After::is("solvent-pops").above("time-lost"),
};

fn wait_in_room(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let ruling = earliest(facts.term::<Wait>("wait")?, &told(facts)?, world.sheet)?;
    Ok(decided(ruling)?.map(|found| Answer::Number(hours(found.hours.get()))))
}

fn wait_in_room_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let (Ok(wait), Ok(told)) = (facts.term::<Wait>("wait"), told(facts)) else { return Vec::new() };
    room_tempts(wait, &told, world)
}

/// May the next clear coat go on? Misconceptions: too soon because the skin is dry, every window closes, no window
/// closes, a closed window stays closed, a room outside the sheet overlooked.
const RECOAT_NOW: Question = Question {
    id: "recoat-now",
    settle: since_coat,
    ask: Ask::One { answer: recoat_now, tempt: recoat_tempts },
    after: After::is("solvent-pops"),
};

/// Sets the time since the coat near the places where the window of this sheet turns.
fn since_coat(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    /// A night, for sheets whose window never closes.
    const NIGHT_H: f64 = 14.0;
    let turns = [Setting::ClearWait, Setting::RecoatCloses, Setting::RecoatOpensAgain];
    let turns: Vec<f64> =
        turns.iter().map(|turn| world.sheet.get(*turn)).filter(|turn| *turn > 0.0).collect();
    let late = if turns.len() == 1 { Some(NIGHT_H) } else { None };
    let turns: Vec<f64> = turns.into_iter().chain(late).collect();
    if let Some(turn) = dice.pick(&turns) {
        let share = dice.on_grid(0.5, 1.7, 0.1);
        facts.set("hours_since", passed(turn * share));
    }
}

fn recoat_now(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let ruling = window(facts.hours("hours_since")?, facts.celsius("air_c")?, world.sheet)?;
    Ok(ruling.map(|verdict| Answer::term(verdict.slug())))
}

fn recoat_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let right = match recoat_now(facts, world).map(|ruling| ruling.answer) {
        Ok(Answer::Term(slug)) => RecoatVerdict::from_slug(&slug),
        _ => None,
    };
    let tempt = |verdict: &RecoatVerdict| match (verdict, right) {
        (_, Some(RecoatVerdict::OutsideModel)) => ("room-outside-overlooked", "solvent-pops"),
        (RecoatVerdict::TooSoon, _) => ("wait-was-over", "lost-day"),
        (RecoatVerdict::Open, Some(RecoatVerdict::TooSoon)) => ("touch-dry-taken-for-dry", "solvent-pops"),
        (RecoatVerdict::Open, Some(RecoatVerdict::Closed)) => ("window-thought-endless", "coat-lifts"),
        (RecoatVerdict::Open, _) => ("closing-overlooked", "lost-day"),
        (RecoatVerdict::Closed, Some(RecoatVerdict::OpenAgain)) => ("closed-for-good", "lost-day"),
        (RecoatVerdict::Closed, _) => ("every-window-closes", "lost-day"),
        (RecoatVerdict::OpenAgain, _) => ("opening-taken-early", "coat-lifts"),
        (RecoatVerdict::OutsideModel, _) => ("room-was-inside", "lost-day"),
    };
    let verdicts = RecoatVerdict::ALL.iter();
    verdicts
        .map(|verdict| {
            let (slip, after) = tempt(verdict);
            Tempt::term(verdict.slug(), slip, after)
        })
        .collect()
}

/// In how many hours can the next step begin? Misconceptions: the wait counted in working hours only, the night taken
/// as working time, cold not scaled, always tomorrow.
const NEXT_STEP_CLOCK: Question = Question {
    id: "next-step-clock",
    settle: set_day,
    ask: Ask::One { answer: next_step, tempt: next_step_tempts },
    after: After::is("solvent-pops").above("time-lost"),
};

/// The step that follows a wait: sanding after a rest, else a coat.
const fn step_after(wait: Wait) -> JobStep {
    match wait {
        Wait::Scuff | Wait::Run => JobStep::Scuff,
        _ => JobStep::Clear,
    }
}

fn next_step(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let (wait, clock) = (facts.term::<Wait>("wait")?, time_of(facts, "clock")?);
    let ruling = by_the_clock::hours_until(clock, wait, step_after(wait), &told(facts)?, world.sheet)?;
    Ok(decided(ruling)?.map(|until| Answer::Number(hours(until.get()))))
}

fn next_step_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let (Ok(wait), Ok(told), Ok(clock)) = (facts.term::<Wait>("wait"), told(facts), time_of(facts, "clock"))
    else {
        return Vec::new();
    };
    let Some((found, _)) = stated(wait, &told, world) else { return Vec::new() };
    let (opens, closes) = (world.sheet.get(Setting::DayFrom), world.sheet.get(Setting::DayTo));
    let rest = found.hours.get();
    let morning = HOURS_A_DAY - clock.get() + opens;
    let nights = libm::floor((rest - (closes - clock.get()).max(0.0)) / (closes - opens)) + 1.0;
    let worked =
        if clock.get() + rest > closes { rest + nights * (HOURS_A_DAY - closes + opens) } else { rest };
    vec![
        Tempt::number(hours(rest), "night-is-no-working-time"),
        Tempt::number(hours(found.stated.get()), "cold-not-scaled"),
        Tempt::number(hours(morning), "always-tomorrow"),
        Tempt::number(hours(morning + HOURS_A_DAY), "always-tomorrow"),
        Tempt::number(hours(worked), "wait-only-in-working-hours"),
        Tempt::number(hours(rest * OUTRIGHT), "doubled-outright"),
    ]
}

/// How many clear coats still go on today? Misconceptions: the sheet's coats a day left out, cold not scaled, thick
/// coats not counted, the end of the day left out.
const COATS_TODAY: Question = Question {
    id: "coats-fit",
    settle: set_day,
    ask: Ask::Number { answer: coats_today, tempt: coats_tempts, unit: Unit::Count },
    after: After::is("film-stays-soft").below("time-lost"),
};

fn coats_today(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    let clock = time_of(facts, "clock")?;
    let coat = facts.micrometres("coat_um")?;
    let ruling = by_the_clock::coats_today(clock, Some(coat), Some(facts.celsius("air_c")?), world.sheet)?;
    Ok(decided(ruling)?.map(|found| Measure::count(f64::from(found.coats))))
}

fn coats_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let (Ok(clock), Ok(mine)) = (time_of(facts, "clock"), told(facts)) else { return Vec::new() };
    let mine = Told { film: facts.micrometres("coat_um").ok(), ..mine };
    let Some((found, _)) = stated(Wait::ClearToClear, &mine, world) else { return Vec::new() };
    let counted = |between: f64, sheet: &Sheet| {
        Measure::count(f64::from(by_the_clock::count_coats(clock.get(), between, sheet).coats))
    };
    let most = world.sheet.held(Setting::CoatsADay).ceiling;
    let uncounted = world.sheet.with(Setting::CoatsADay, most);
    let any_number = uncounted.map_or(0.0, |sheet| counted(found.hours.get(), &sheet).value);
    vec![
        Tempt::number(counted(found.stated.get(), world.sheet), "cold-not-scaled"),
        Tempt::number(counted(found.stated.get() * found.cold, world.sheet), "thick-coat-not-counted"),
        Tempt::number(Measure::count(any_number), "coats-a-day-left-out"),
        Tempt::number(Measure::count(world.sheet.get(Setting::CoatsADay)), "day-thought-endless"),
    ]
}

/// Which of these waits are longer here than the sheet says? Misconceptions: cold not scaled, thick film not counted,
/// every wait thought to go by film, a slightly thick film thought to lengthen a generous wait.
const LONGER_THAN_SHEET: Question = Question {
    id: "longer-than-sheet",
    settle: off_reference,
    ask: Ask::All { items: waits, holds: longer },
    after: After::is("solvent-pops"),
};

/// A room within a degree of the sheet's reference is made colder or warmer, so that rounding a reading decides nothing.
fn off_reference(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    /// Kelvin from the reference.
    const NEAR: f64 = 1.0;
    /// Kelvin by which the room is moved.
    const AWAY: f64 = 2.5;
    /// One room in so many is made colder.
    const COLDER_ONE_IN: u32 = 2;
    let reference = world.sheet.get(Setting::WaitReference);
    if let Some(air) = facts.maybe_number("air_c")
        && (air - reference).abs() <= NEAR
    {
        let moved = if dice.one_in(COLDER_ONE_IN) { -AWAY } else { AWAY };
        facts.set("air_c", air + moved);
    }
}

fn waits(facts: &Facts, world: &World<'_>, _: &mut Dice) -> Vec<Item> {
    let cold = facts.celsius("air_c").is_ok_and(|air| uncapped(air, world.sheet) > 1.0);
    let slip = |wait: &Wait| match wait {
        _ if cold => "cold-not-scaled",
        Wait::ClearToClear | Wait::Buff => "film-weighed-wrongly",
        _ => "film-lengthens-few",
    };
    let asked = [
        Wait::WashcoatToNext,
        Wait::SealToNext,
        Wait::ColourToColour,
        Wait::ClearToClear,
        Wait::Scuff,
        Wait::Buff,
    ];
    asked.iter().map(|wait| Item::new(wait.slug(), slip(wait))).collect()
}

fn longer(facts: &Facts, world: &World<'_>, slug: &str) -> Judged<bool> {
    let wait = Wait::from_slug(slug).ok_or_else(|| CannotJudge::without("wait"))?;
    let film = match wait {
        Wait::ClearToClear => Some(facts.micrometres("coat_um")?),
        Wait::Buff => Some(facts.micrometres("build_um")?),
        _ => None,
    };
    let ruling = decided(earliest(wait, &Told { film, ..told(facts)? }, world.sheet)?)?;
    // The waits stand side by side, so that each is shown under its own name, as long as it is here.
    let Ruling { answer: found, rules, .. } = ruling;
    let named = Ruling { answer: found.hours > found.stated, rules, working: Vec::new() };
    Ok(named.step(wait.slug(), "", hours(found.hours.get())))
}
