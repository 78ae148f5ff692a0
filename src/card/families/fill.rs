//! Fill: which woods and which faces want filler, when it is wiped, what lies under it, how much at one go.

use crate::bench::Facts;
use crate::card::question::{After, Ask, Item, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::{Ticket, World};
use crate::quantity::{Hours, Measure, Unit};
use crate::rules::filling::{
    self, Face, FillPlan, FillerLook, FillerTone, FingerTest, Flats, StainUnder, UnderFiller, Wipe,
};
use crate::rules::sheet::Setting;
use crate::rules::term::{Filler, Look, Term};
use crate::rules::verdict::{CannotJudge, Judged};
use crate::rules::wood::{FillerNeed, PoreSize, Porosity, Wood, filler};

pub(super) const ALL: &[&Question] =
    &[&WANTS_FILLER, &FILL_FACES, &FILL_WIPE, &FILL_UNDER, &FILL_BATCH, &FILL_TWICE, &FILL_PLAN];

/// Which of these woods want filler? Misconceptions: diffuse-porous means small-pored; soft means open.
const WANTS_FILLER: Question = Question {
    id: "wants-filler",
    settle: keep,
    ask: Ask::All { items: woods, holds: wants },
    after: After::is("grain-sink"),
};

/// Woods whose answer is plain, three of each kind of pore at most.
fn woods(_: &Facts, world: &World<'_>, dice: &mut Dice) -> Vec<Item> {
    let mut plain: Vec<&Wood> =
        world.content.woods.iter().filter(|wood| wood.filler != FillerNeed::Optional).collect();
    dice.shuffle(&mut plain);
    plain.into_iter().map(|wood| Item::new(&wood.slug, slip(wood))).collect()
}

/// What is misread where this wood is filled and should not be, or the other way round.
pub(super) fn slip(wood: &Wood) -> &'static str {
    match (wood.pores, wood.porosity) {
        (PoreSize::Large, Porosity::Diffuse) => "diffuse-means-small",
        (PoreSize::Large, _) => "open-pores-overlooked",
        (PoreSize::Small, _) => "close-grain-filled",
        (PoreSize::None, _) => "conifer-has-pores",
    }
}

fn wants(facts: &Facts, world: &World<'_>, slug: &str) -> Judged<bool> {
    let ruling = filler(world.wood(slug)?, facts.term::<Look>("look")?);
    Ok(ruling.map(|need| need == FillerNeed::Yes))
}

/// Which faces of this body are filled? Misconceptions: all of a body alike, only what shows, bare faces too.
const FILL_FACES: Question = Question {
    id: "fill-faces",
    settle: keep,
    ask: Ask::All { items: faces, holds: is_filled },
    after: After::is("grain-sink"),
};

/// Each face with what it is, and the fact that tells its wood.
const FACES: [(&str, Face, &str); 7] = [
    ("top-face", Face::Sprayed, "top_wood"),
    ("back-face", Face::Sprayed, "body_wood"),
    ("side-faces", Face::Sprayed, "body_wood"),
    ("neck-heel", Face::Sprayed, "body_wood"),
    ("binding-edge", Face::Binding, "body_wood"),
    ("cavity-floor", Face::Masked, "body_wood"),
    ("bridge-seat", Face::Masked, "top_wood"),
];

fn faces(facts: &Facts, world: &World<'_>, _: &mut Dice) -> Vec<Item> {
    let misread = |face: Face, key: &str| match face {
        Face::Masked => "bare-face-filled",
        Face::Binding => "binding-filled",
        Face::Sprayed => facts.maybe_slug(key).and_then(|slug| world.content.wood(slug)).map_or("", slip),
    };
    FACES.iter().map(|(slug, face, key)| Item::new(slug, misread(*face, key))).collect()
}

fn is_filled(facts: &Facts, world: &World<'_>, slug: &str) -> Judged<bool> {
    let (_, face, key) =
        FACES.iter().find(|(name, ..)| *name == slug).ok_or_else(|| CannotJudge::without("face"))?;
    let wood = facts.maybe_slug(key).map(|slug| world.wood(slug)).transpose()?;
    let look = facts.maybe_slug("look").and_then(Look::from_slug);
    filling::is_filled(*face, wood, look)
}

/// Is it time to wipe? Misconceptions: the clock alone, the gloss alone, along the grain, set filler scrubbed or sanded.
const FILL_WIPE: Question = Question {
    id: "fill-wipe",
    settle: fit_finger,
    ask: Ask::One { answer: wipe, tempt: wipe_tempts },
    after: After::is("filler-haze"),
};

/// Glossy filler slips under a finger; filler that has set has stood longer than the sheet's window, other filler not.
fn fit_finger(facts: &mut Facts, world: &World<'_>, _: &mut Dice) {
    let (stood, closes) =
        (facts.maybe_number("stood_min").unwrap_or_default(), world.sheet.get(Setting::FillerWipeTo));
    if facts.maybe_slug("finger_test") == Some(FingerTest::Hard.slug()) {
        facts.set_term("filler_look", FillerLook::Dull.slug());
        facts.set("stood_min", stood + closes);
        return;
    }
    facts.set("stood_min", stood.min(closes));
    if facts.maybe_slug("filler_look") == Some(FillerLook::Glossy.slug()) {
        facts.set_term("finger_test", FingerTest::Slips.slug());
    }
}

fn wipe(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let finger = facts.maybe_slug("finger_test").and_then(FingerTest::from_slug);
    let look = facts.term::<FillerLook>("filler_look")?;
    let ruling = filling::wipe(world.sheet, minutes(facts, "stood_min")?, look, finger)?;
    Ok(ruling.map(|wipe| Answer::term(wipe.slug())))
}

fn wipe_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(Wipe::Now.slug(), "clock-before-finger", "pore-pulled"),
        Tempt::term(Wipe::Wait.slug(), "filler-left-too-long", ""),
        Tempt::term(Wipe::Soften.slug(), "thinner-on-good-filler", "pore-pulled"),
        Tempt::term("wipe-along-only", "wiped-along", "pore-pulled"),
        Tempt::term("sand-it-off-later", "filler-sanded-off", ""),
    ]
}

/// A time that is told in minutes.
fn minutes(facts: &Facts, key: &str) -> Result<Hours, CannotJudge> {
    let hours = Unit::Minute.convert(facts.number(key)?, Unit::Hour);
    hours.and_then(|hours| Hours::new(hours).ok()).ok_or_else(|| CannotJudge::without(key))
}

/// What goes between stain and filler? Misconceptions: always, never, a sealer that shuts the pores, sanded stain.
const FILL_UNDER: Question = Question {
    id: "fill-under",
    settle: keep,
    ask: Ask::One { answer: under, tempt: under_tempts },
    after: After::is("filler-haze"),
};

fn under(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let stain = facts.maybe_slug("stain_under").and_then(StainUnder::from_slug);
    let flats = facts.maybe_slug("flats").and_then(Flats::from_slug);
    let ruling = filling::under_filler(world.sheet, facts.term::<FillerTone>("filler_tone")?, stain, flats)?;
    Ok(ruling.map(|under| Answer::term(under.slug())))
}

fn under_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(UnderFiller::Washcoat.slug(), "washcoat-every-time", "wrong-tone"),
        Tempt::term(UnderFiller::Straight.slug(), "filler-colours-flats", ""),
        Tempt::term("two-seal-coats-under", "sealer-shuts-pores", "grain-sink"),
        Tempt::term("scuff-colour-under", "bare-stain-sanded", "stain-cut"),
    ]
}

/// How many faces at one go? Misconceptions: wiping takes no time, the window counted for the whole batch, its start.
const FILL_BATCH: Question = Question {
    id: "fill-batch",
    settle: keep,
    ask: Ask::Number { answer: batch, tempt: batch_tempts, unit: Unit::Count },
    after: After::is("filler-haze").below("lost-hour"),
};

fn batch(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    let ruling =
        filling::batch(world.sheet, minutes(facts, "coat_face_min")?, minutes(facts, "wipe_face_min")?);
    Ok(ruling.map(|faces| Measure::count(f64::from(faces))))
}

fn batch_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let (Ok(coat), Ok(wipe)) = (facts.number("coat_face_min"), facts.number("wipe_face_min")) else {
        return Vec::new();
    };
    let from = world.sheet.get(Setting::FillerWipeFrom);
    let to = world.sheet.get(Setting::FillerWipeTo);
    let whole = |number: f64| Measure::count(libm::floor(number));
    vec![
        Tempt::number(whole(to / coat), "wiping-takes-no-time"),
        Tempt::number(whole(to / (coat + wipe)), "window-for-whole-batch"),
        Tempt::number(whole(from / coat), "window-closes-at-start"),
    ]
}

/// Hours from the first filling to the first coat when it is filled twice. Misconceptions: one wait is enough, half a
/// wait for the thin second filling, the wait of another filler.
const FILL_TWICE: Question = Question {
    id: "fill-twice",
    settle: keep,
    ask: Ask::Number { answer: twice, tempt: twice_tempts, unit: Unit::Hour },
    after: After::is("grey-pore").above("time-lost"),
};

fn twice(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    let ruling = filling::filled_twice(world.sheet, facts.term::<Filler>("filler")?)?;
    Ok(ruling.map(|hours| Measure::new(hours.get(), Unit::Hour, 1)))
}

fn twice_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    /// A wait and half of it.
    const AND_A_HALF: f64 = 1.5;
    let hours = |number: f64| Measure::new(number, Unit::Hour, 1);
    let told = facts.term::<Filler>("filler").ok();
    let mut tempts: Vec<Tempt> = told
        .and_then(|filler| filling::wait(world.sheet, filler).ok())
        .map(Hours::get)
        .into_iter()
        .flat_map(|once| {
            [
                Tempt::number(hours(once), "second-filling-free"),
                Tempt::number(hours(once * AND_A_HALF), "second-filling-half"),
            ]
        })
        .collect();
    let others = Filler::ALL.iter().filter(|filler| Some(**filler) != told);
    tempts.extend(others.filter_map(|filler| {
        let both = filling::filled_twice(world.sheet, *filler).ok()?.answer.get();
        Some(Tempt::number(hours(both), "other-filler-wait"))
    }));
    tempts
}

/// How is a job with a changed wood filled? Misconceptions: all parts alike, the plan of the ordered wood kept, pores
/// closed by sealer, a look that was not ordered.
const FILL_PLAN: Question = Question {
    id: "fill-plan",
    settle: changed_ticket,
    ask: Ask::One { answer: plan, tempt: plan_tempts },
    after: After::is("grain-sink"),
};

/// A ticket of this shop for a top and other parts, with the wood of the top and the look.
fn changed_ticket(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    // The first part is a top, and there are others.
    let tops = |ticket: &Ticket| {
        ticket.parts.len() > 1 && ticket.parts.first().is_some_and(|part| part.slug == "top")
    };
    let jobs: Vec<_> =
        world.content.tickets.iter().filter(|ticket| world.does(ticket) && tops(ticket)).collect();
    if let Some(ticket) = dice.pick(&jobs) {
        facts.set_term("ticket", &ticket.slug);
        facts.set_term("look", ticket.look.slug());
        if let Some(part) = ticket.parts.first() {
            facts.set_term("top_wood", &part.wood);
        }
    }
}

fn plan(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let wood = |key| facts.maybe_slug(key).map(|slug| world.wood(slug)).transpose();
    let woods = [wood("top_wood")?, wood("body_wood")?];
    Ok(filling::plan(&woods, facts.term::<Look>("look")?)?.map(|plan| Answer::term(plan.slug())))
}

fn plan_tempts(facts: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let pores_open = facts.maybe_slug("look") == Some(Look::OpenPore.slug());
    let mut tempts = vec![
        Tempt::term(FillPlan::All.slug(), "all-parts-alike", "lost-hour"),
        Tempt::term(FillPlan::OpenOnly.slug(), "ordered-wood-kept", ""),
        Tempt::term(FillPlan::PoresOpen.slug(), "look-not-ordered", ""),
        Tempt::term("seal-fills-the-rest", "sealer-closes-pores", ""),
    ];
    if !pores_open {
        tempts.push(Tempt::term(FillPlan::CloseNone.slug(), "open-pores-overlooked", ""));
    }
    tempts
}
