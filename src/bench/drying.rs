//! Drying: earliest times, job time, recoat windows, the release curve.

use super::{Calculation, Facts, Gives, Needs, Outcome};
use crate::content::{Binding, ColourPlan, Ticket, World};
use crate::quantity::{Biot, Celsius, Fourier, HOURS_A_DAY, Hours, Measure, Micrometres, Unit};
use crate::rules::drying::job::{self, JobOutline, JobTime};
use crate::rules::drying::waits::{self, Earliest, StainKind, Told, Wait};
use crate::rules::drying::{BUILD, Modelled, recoat, release};
use crate::rules::film;
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::term::{Look, Term};
use crate::rules::verdict::{CannotJudge, Judged};
use crate::rules::wood::{self, FillerNeed};

pub(super) const ALL: &[&Calculation] = &[&EARLIEST, &JOB_TIME, &RECOAT, &RELEASED];

const VERDICT: Gives = Gives::Term { key: "verdict", among: &["estimate", "outside-model"] };

const EARLIEST: Calculation = Calculation {
    name: "earliest",
    needs: &[
        Needs::must("wait"),
        Needs::may("class"),
        Needs::may("filler"),
        Needs::may("stain_kind"),
        Needs::must("air_c"),
        Needs::may("coat_um"),
        Needs::may("build_um"),
    ],
    gives: &[
        Gives::Number { key: "value", unit: Unit::Hour },
        Gives::Term { key: "verdict", among: &["estimate", "outside-model", RANGE] },
        Gives::Number { key: "from", unit: Unit::Hour },
        Gives::Number { key: "to", unit: Unit::Hour },
        Gives::Number { key: "sheet_wait", unit: Unit::Hour },
        Gives::Number { key: "floor", unit: Unit::Hour },
        Gives::Number { key: "cold_factor", unit: Unit::Ratio },
        Gives::Number { key: "thickness_factor", unit: Unit::Ratio },
        Gives::Term { key: "tests", among: &["no-tests", "smell-nail-powder"] },
    ],
    run: earliest,
};

const JOB_TIME: Calculation = Calculation {
    name: "job-time",
    needs: &[Needs::must("ticket"), Needs::may("air_c")],
    gives: &[
        Gives::Number { key: "value", unit: Unit::Hour },
        VERDICT,
        Gives::Number { key: "days", unit: Unit::Day },
        Gives::Number { key: "waiting", unit: Unit::Hour },
        Gives::Number { key: "last_wait", unit: Unit::Hour },
        Gives::Term { key: "delivery", among: &["in-time", "late"] },
    ],
    run: job_time,
};

const RECOAT: Calculation = Calculation {
    name: "recoat",
    needs: &[Needs::must("hours_since"), Needs::must("air_c")],
    gives: &[Gives::Term {
        key: "verdict",
        among: &["too-soon", "open", "closed", "open-again", "outside-model"],
    }],
    run: recoat,
};

const RELEASED: Calculation = Calculation {
    name: "released",
    needs: &[Needs::must("fo"), Needs::may("biot")],
    gives: &[Gives::Number { key: "value", unit: Unit::Ratio }],
    run: released,
};

/// What the facts tell of the work that dries.
///
/// # Errors
/// [`CannotJudge`] naming a fact that is told but is no value of its kind.
pub(crate) fn told(facts: &Facts) -> Result<Told, CannotJudge> {
    fn optional<T>(
        facts: &Facts,
        key: &str,
        read: impl Fn(&Facts, &str) -> Result<T, CannotJudge>,
    ) -> Result<Option<T>, CannotJudge> {
        facts.0.contains_key(key).then(|| read(facts, key)).transpose()
    }
    // Between clear coats the film is that of one coat; told as the clear laid so far, the wait is never too short.
    let one_coat = facts.maybe_slug("wait") == Some(Wait::ClearToClear.slug());
    let film = if one_coat && facts.0.contains_key("coat_um") { "coat_um" } else { "build_um" };
    Ok(Told {
        class: optional(facts, "class", Facts::term)?,
        filler: optional(facts, "filler", Facts::term)?,
        stain: optional(facts, "stain_kind", Facts::term)?,
        air: optional(facts, "air_c", Facts::celsius)?,
        film: optional(facts, film, Facts::micrometres)?,
    })
}

/// The verdict where the film is not told: from the thinnest to the heaviest build that a shop lays.
const RANGE: &str = "range-by-film";

fn earliest(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let (wait, told) = (facts.term::<Wait>("wait")?, told(facts)?);
    let ruling = match waits::earliest(wait, &told, world.sheet) {
        Err(cannot) if wait == Wait::Buff && cannot.missing == [BUILD] => {
            return range(&told, world.sheet);
        }
        judged => judged?,
    };
    Ok(ruling.map(|answer| {
        let outcome = Outcome::default().term("verdict", answer.verdict().slug());
        answer.estimate().map_or(outcome.clone(), |found| wait_outcome(outcome, &found))
    }))
}

/// The wait before levelling by the film, which is not told: for no more than the reference build, and for the heaviest
/// build that a sheet may name as one.
fn range(told: &Told, sheet: &Sheet) -> Judged<Outcome> {
    let build = sheet.held(Setting::BuildReference);
    let over = |film: f64| {
        waits::earliest(Wait::Buff, &Told { film: Some(Micrometres::saturating(film)), ..*told }, sheet)
    };
    let (least, most) = (over(build.value)?, over(build.ceiling)?);
    let (Modelled::Estimate(from), Modelled::Estimate(to)) = (least.answer, most.answer) else {
        return Ok(least.map(|answer| Outcome::default().term("verdict", answer.verdict().slug())));
    };
    let outcome = Outcome::default()
        .term("verdict", RANGE)
        .number("from", hours(from.hours))
        .number("to", hours(to.hours));
    Ok(most.map(|_| outcome.term("tests", "smell-nail-powder")))
}

fn wait_outcome(outcome: Outcome, found: &Earliest) -> Outcome {
    outcome
        .number("value", hours(found.hours))
        .number("sheet_wait", hours(found.stated))
        .number("floor", hours(found.floor))
        .number("cold_factor", Measure::new(found.cold, Unit::Ratio, 3))
        .number("thickness_factor", Measure::new(found.thickness, Unit::Ratio, 3))
        .term("tests", if found.tests.is_empty() { "no-tests" } else { "smell-nail-powder" })
}

fn hours(time: Hours) -> Measure {
    Measure::new(time.get(), Unit::Hour, 1)
}

/// What of a ticket decides how long its job takes on a sheet.
///
/// # Errors
/// [`CannotJudge`] when a wood of the ticket is not known.
pub(crate) fn outline(ticket: &Ticket, world: &World<'_>) -> Result<JobOutline, CannotJudge> {
    /// Thin passes of colour in the film, one way and across. Common practice, no source.
    const COLOUR_PASSES: u32 = 3;
    let filled = |wood: &str| {
        let need = wood::filler(world.wood(wood)?, ticket.look).answer;
        Ok(need == FillerNeed::Yes || (need == FillerNeed::Optional && ticket.look == Look::LevelGloss))
    };
    let in_film = matches!(ticket.colour, ColourPlan::Solid | ColourPlan::Transparent);
    Ok(JobOutline {
        parts_filled: ticket
            .parts
            .iter()
            .map(|part| filled(&part.wood))
            .collect::<Result<_, CannotJudge>>()?,
        stain: (ticket.colour == ColourPlan::Stained).then_some(StainKind::Dye),
        colour_passes: if in_film { COLOUR_PASSES } else { 0 },
        shaded: ticket.shaded,
        binding: ticket.binding != Binding::None,
        clear_coats: ticket.clear_coats,
        coat: film::sheet_coat(world.sheet).answer,
        class: ticket.class,
        filler: ticket.filler,
        rubbed: ticket.look.is_rubbed_out(ticket.class),
    })
}

/// The time plan of a ticket; without air, at the sheet's reference temperature.
///
/// # Errors
/// [`CannotJudge`] when ticket or wood is not known.
pub(crate) fn ticket_time(facts: &Facts, world: &World<'_>) -> Judged<Modelled<JobTime>> {
    let ticket = world.ticket(facts.slug("ticket")?)?;
    let air = facts.maybe_number("air_c").map(Celsius::saturating);
    job::job_time(&outline(ticket, world)?, air, world.sheet)
}

fn job_time(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let days = f64::from(world.ticket(facts.slug("ticket")?)?.days);
    let ruling = ticket_time(facts, world)?;
    Ok(ruling.map(|answer| {
        let outcome = Outcome::default().term("verdict", answer.verdict().slug());
        let Some(found) = answer.estimate() else { return outcome };
        let total = found.schedule.total;
        let outcome = match &found.before_levelling {
            Some(wait) => outcome.number("last_wait", hours(wait.hours)),
            None => outcome,
        };
        outcome
            .number("value", hours(total))
            .number("days", Measure::new(total.get() / HOURS_A_DAY, Unit::Day, 1))
            .number("waiting", hours(found.schedule.waiting))
            .term("delivery", if total.get() <= days * HOURS_A_DAY { "in-time" } else { "late" })
    }))
}

fn recoat(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let ruling = recoat::window(facts.hours("hours_since")?, facts.celsius("air_c")?, world.sheet)?;
    Ok(ruling.map(|verdict| Outcome::default().term("verdict", verdict.slug())))
}

fn released(facts: &Facts, _: &World<'_>) -> Judged<Outcome> {
    let fo = Fourier::saturating(facts.number("fo")?);
    let ruling = match facts.maybe_number("biot") {
        Some(biot) => release::released_with_resistance(fo, Biot::saturating(biot)),
        None => release::released(fo),
    };
    Ok(ruling.map(|share| Outcome::value(Measure::new(share.get(), Unit::Ratio, 3))))
}
