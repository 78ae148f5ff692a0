//! The finish room: what can light vapour, how dust is taken up, what stands round a booth.

use crate::bench::Facts;
use crate::card::question::{After, Ask, Item, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::quantity::{MM_A_METRE, Millimetres};
use crate::rules::hazard::dust::{DustMove, dust_move};
use crate::rules::hazard::sparks::{SparkPlace, SparkSource, has_to_go};
use crate::rules::hazard::surroundings::{Around, BoothFault, booth_fault};
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Question] = &[&SPARKS, &DUST_AWAY, &ROUND_THE_BOOTH];

/// What has to go before anyone sprays? Misconceptions: out of sight is far enough; a telephone is no flame.
const SPARKS: Question = Question {
    id: "sparks-away",
    settle: keep,
    ask: Ask::All { items: sources, holds: goes },
    after: After::is("booth-fire"),
};

/// How is it taken up? Misconceptions: low pressure is safe; a dry broom is enough.
const DUST_AWAY: Question = Question {
    id: "dust-away",
    settle: keep,
    ask: Ask::One { answer: taken_up, tempt: dust_tempts },
    after: After::is("breathed-in"),
};

/// What is wrong round this booth? Misconceptions: a partition does not count; any exhaust will do.
const ROUND_THE_BOOTH: Question = Question {
    id: "round-the-booth",
    settle: keep,
    ask: Ask::All { items: faults, holds: fault },
    after: After::is("booth-fire"),
};

/// Things near the booth: slug, what they are, the fact that tells where they stand.
const SOURCES: [(&str, SparkSource, &str); 4] = [
    ("the-grinder", SparkSource::FlameOrSpark, "grinder_place"),
    ("the-heater", SparkSource::HotSurface, "heater_place"),
    ("the-lamp", SparkSource::PortableLamp, "lamp_place"),
    ("the-telephone", SparkSource::Telephone, "telephone_place"),
];

fn sources(_: &Facts, _: &World<'_>, _: &mut Dice) -> Vec<Item> {
    let slip = |source| match source {
        SparkSource::FlameOrSpark => "spark-distance",
        SparkSource::HotSurface | SparkSource::PortableLamp => "heat-and-lamps",
        SparkSource::Telephone | SparkSource::RatedLamp => "telephone-is-a-spark",
    };
    SOURCES.iter().map(|(slug, source, _)| Item::new(slug, slip(*source))).collect()
}

fn metres(facts: &Facts, key: &str) -> Result<Millimetres, CannotJudge> {
    Millimetres::new(facts.number(key)? * MM_A_METRE).map_err(|_| CannotJudge::without(key))
}

fn goes(facts: &Facts, _: &World<'_>, slug: &str) -> Judged<bool> {
    let found = SOURCES.iter().find(|(one, ..)| *one == slug);
    let (_, source, place) = found.ok_or_else(|| CannotJudge::without("source"))?;
    let place = facts.term::<SparkPlace>(place)?;
    has_to_go(*source, place, metres(facts, "grinder_m").ok(), facts.term("spray_phase").ok())
}

fn taken_up(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    Ok(dust_move(facts.term("dust_on")?).map(|next| Answer::term(next.slug())))
}

fn dust_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let slip = |next| match next {
        DustMove::Vacuum => "one-way-for-all",
        DustMove::ScrapeDamp => "damp-on-the-wrong-place",
        DustMove::VacuumTack => "tack-is-for-work",
    };
    let mut tempts: Vec<Tempt> =
        DustMove::ALL.iter().map(|next| Tempt::term(next.slug(), slip(*next), "")).collect();
    tempts.push(Tempt::term("air-line-low", "low-pressure-is-safe", ""));
    tempts.push(Tempt::term("dry-broom", "dust-blown-about", ""));
    tempts.push(Tempt::term("steel-scraper-dry", "steel-sparks-forgotten", "booth-fire"));
    tempts
}

fn faults(_: &Facts, _: &World<'_>, _: &mut Dice) -> Vec<Item> {
    let slip = |fault| match fault {
        BoothFault::NoClearSpace => "three-feet-round",
        BoothFault::OtherWork => "partition-counts",
        BoothFault::NoDeflector => "small-face-needs-none",
        BoothFault::SharedExhaust => "any-exhaust-will-do",
    };
    BoothFault::ALL.iter().map(|fault| Item::new(fault.slug(), slip(*fault))).collect()
}

fn fault(facts: &Facts, _: &World<'_>, slug: &str) -> Judged<bool> {
    let fault = BoothFault::from_slug(slug).ok_or_else(|| CannotJudge::without("fault"))?;
    let told = |key, slug| facts.maybe_slug(key).map(|one| one == slug);
    let face = match (metres(facts, "width_m"), metres(facts, "height_m")) {
        (Ok(width), Ok(height)) => Some((width, height)),
        _ => None,
    };
    let at = Around {
        clear: metres(facts, "clear_m").ok(),
        other_work: metres(facts, "other_work_m").ok(),
        partition: told("partition", "partition-stands"),
        face,
        deflector: told("deflector", "deflector-hangs"),
        exhaust: facts.term("exhaust").ok(),
    };
    booth_fault(fault, at)
}
