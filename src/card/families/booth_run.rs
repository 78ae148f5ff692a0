//! Running the booth: air speed read, troubles, the place of the sprayer, when the fan stops.

use crate::bench::Facts;
use crate::card::question::{After, Ask, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::quantity::MetresPerSecond;
use crate::rules::hazard::booth_air::{FaceMove, average, face_speed};
use crate::rules::hazard::booth_trouble::{Trouble, TroubleMove, trouble_move};
use crate::rules::hazard::clearing::{FanMove, fan_stop};
use crate::rules::hazard::respirator::{PlaceMove, Standing, sprayer_place};
use crate::rules::sheet::Setting;
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Question] = &[&FACE_SPEED, &FAN_STOP, &BOOTH_TROUBLE, &SPRAYER_PLACE];

/// What do the readings call for? Misconceptions: readings at the filters are the booth's; a mask makes up for slow air.
const FACE_SPEED: Question = Question {
    id: "face-speed",
    settle: off_the_limit,
    ask: Ask::One { answer: read, tempt: read_tempts },
    after: After::is("booth-fire"),
};

/// What about the fan? Misconceptions: a formula tells the time; dry to touch means no vapour.
const FAN_STOP: Question = Question {
    id: "fan-stop",
    settle: keep,
    ask: Ask::One { answer: fan, tempt: fan_tempts },
    after: After::is("booth-fire"),
};

/// What does it call for? Misconceptions: this coat first; a door makes up for a fan.
const BOOTH_TROUBLE: Question = Question {
    id: "booth-trouble",
    settle: keep,
    ask: Ask::One { answer: trouble, tempt: trouble_tempts },
    after: After::is("booth-fire"),
};

/// Where does the sprayer stand? Misconceptions: the mask makes up for it; more draw makes up for it.
const SPRAYER_PLACE: Question = Question {
    id: "sprayer-place",
    settle: keep,
    ask: Ask::One { answer: place, tempt: place_tempts },
    after: After::is("breathed-in"),
};

/// The three readings of a card.
const READINGS: [&str; 3] = ["speed_left", "speed_middle", "speed_right"];

fn readings(facts: &Facts) -> Result<Vec<MetresPerSecond>, CannotJudge> {
    let one = |key: &&str| MetresPerSecond::new(facts.number(key)?).map_err(|_| CannotJudge::without(key));
    READINGS.iter().map(one).collect()
}

/// No meter tells an average this near the limit from it.
fn off_the_limit(facts: &mut Facts, world: &World<'_>, _: &mut Dice) {
    const TOO_NEAR: f64 = 0.02;
    const NUDGE: f64 = 0.1;
    let Ok(found) = readings(facts).and_then(|all| average(&all)) else { return };
    if (found.get() - world.sheet.get(Setting::FaceSpeed)).abs() < TOO_NEAR
        && let Some(middle) = facts.maybe_number("speed_middle")
    {
        facts.set("speed_middle", middle + NUDGE);
    }
}

fn read(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let ruling = face_speed(&readings(facts)?, facts.term("read_at").ok(), world.sheet)?;
    Ok(ruling.map(|next| Answer::term(next.slug())))
}

fn read_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(FaceMove::Meets.slug(), "slow-air-overlooked", ""),
        Tempt::term(FaceMove::TooSlow.slug(), "low-spot-for-average", "time-lost"),
        Tempt::term(FaceMove::ReadAgain.slug(), "grid-was-read", "time-lost"),
        Tempt::term("mask-for-air", "mask-for-fan", ""),
        Tempt::term("nearer-the-filters", "filters-are-faster", ""),
    ]
}

fn fan(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    let ruling = fan_stop(facts.term("work_state").ok(), facts.term("left_in").ok())?;
    Ok(ruling.map(|next| Answer::term(next.slug())))
}

fn fan_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let slip = |next| match next {
        FanMove::Stop => "vapour-still-comes",
        FanMove::RunOn => "left-in-overlooked",
        FanMove::CloseFirst | FanMove::ResidueFirst => "nothing-stands-open",
    };
    let mut tempts: Vec<Tempt> =
        FanMove::ALL.iter().map(|next| Tempt::term(next.slug(), slip(*next), "")).collect();
    tempts.push(Tempt::term("off-by-formula", "formula-for-looking", ""));
    tempts.push(Tempt::term("off-when-touch-dry", "touch-dry-is-no-vapour", ""));
    tempts
}

fn trouble(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    Ok(trouble_move(facts.term::<Trouble>("trouble")?).map(|next| Answer::term(next.slug())))
}

fn trouble_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let slip = |next| match next {
        TroubleMove::GoOn => "booth-trouble-overlooked",
        TroubleMove::NewFilters => "filters-cure-all",
        TroubleMove::OutAndReport => "more-than-needed",
    };
    let mut tempts: Vec<Tempt> =
        TroubleMove::ALL.iter().map(|next| Tempt::term(next.slug(), slip(*next), "")).collect();
    tempts.push(Tempt::term("this-coat-first", "coat-before-air", ""));
    tempts.push(Tempt::term("doors-open", "door-for-fan", ""));
    tempts.push(Tempt::term("half-the-fluid", "less-spray-less-air", ""));
    tempts
}

fn place(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    Ok(sprayer_place(facts.term::<Standing>("standing")?).map(|next| Answer::term(next.slug())))
}

fn place_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(PlaceMove::Stay.slug(), "in-the-plume", ""),
        Tempt::term(PlaceMove::MoveUpstream.slug(), "clear-of-the-plume", "time-lost"),
        Tempt::term("stay-behind-mask", "mask-for-place", ""),
        Tempt::term("fan-turned-up", "draw-for-place", ""),
        Tempt::term("spray-away", "gun-turned-not-sprayer", ""),
    ]
}
