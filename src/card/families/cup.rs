//! From the cup to the gun: what a reading calls for, which strainer, and a dose of retarder that somebody poured.

use crate::bench::Facts;
use crate::bench::mixing::{told_cup, told_seconds, told_volume};
use crate::card::question::{After, Ask, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::rules::mixing::{
    Cup, CupMove, Reading, RetarderDose, Strained, StrainerMove, after_the_cup, beyond_range, reading,
    retarder_dose, retarder_most, strainer,
};
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Question] = &[&CUP_MOVE, &CUP_NEXT, &STRAINER_MESH, &RETARDER_POURED];

/// What does the reading call for? Misconceptions: a time outside the cup's range is a number; a cold mix is too thick.
const CUP_MOVE: Question = Question {
    id: "cup-move",
    settle: a_window,
    ask: Ask::One { answer: after_cup, tempt: cup_tempts },
    after: After::is("mix-off"),
};

/// Which cup of the set is next? Misconceptions: the time is a number all the same; a higher number is a finer hole; any
/// other cup will do.
const CUP_NEXT: Question = Question {
    id: "cup-next",
    settle: outside_the_range,
    ask: Ask::One { answer: next_cup, tempt: next_cup_tempts },
    after: After::is("mix-off"),
};

/// Does the strainer serve? Misconceptions: any strainer will do; once strained is strained.
const STRAINER_MESH: Question = Question {
    id: "strainer-mesh",
    settle: keep,
    ask: Ask::One { answer: strained, tempt: strained_tempts },
    after: After::is("nibs-stand-up"),
};

/// May this much retarder be in it? Misconceptions: it is counted on the thinner; more helps more against blushing.
const RETARDER_POURED: Question = Question {
    id: "retarder-poured",
    settle: some_retarder,
    ask: Ask::One { answer: poured, tempt: poured_tempts },
    after: After::is("slow-film"),
};

/// The window that the gun wants lies inside the cup's range, and the reading near it or outside the range; half of the
/// mixes have the cup's temperature.
fn a_window(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    /// Share of the cup's range at which the window begins.
    const BEGINS: f64 = 0.25;
    /// Width of the window, and how far a reading lies off its ends, in seconds.
    const WIDE: f64 = 6.0;
    const OFF: f64 = 9.0;
    /// One reading in so many lies outside the cup's range.
    const OUTSIDE_ONE_IN: u32 = 4;
    let Ok(cup) = told_cup(facts, world) else { return };
    let least = libm::round(cup.least_s + (cup.most_s - cup.least_s) * BEGINS);
    let off = dice.on_grid(-OFF, WIDE + OFF, 1.0);
    let beyond = 1.0 + off.abs();
    let seconds = match (dice.one_in(OUTSIDE_ONE_IN), dice.one_in(2)) {
        (false, _) => least + off,
        (true, true) => (cup.least_s - beyond).max(1.0),
        (true, false) => cup.most_s + beyond,
    };
    let told = [
        ("aim_from_s", least),
        ("aim_to_s", least + WIDE),
        ("seconds", seconds),
        ("cup_from_s", cup.least_s),
        ("cup_to_s", cup.most_s),
        ("cup_at_c", cup.at_c),
    ];
    for (key, value) in told {
        facts.set(key, value);
    }
    if dice.one_in(2) {
        facts.set("liquid_c", cup.at_c);
    }
}

fn after_cup(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let (cup, seconds) = (told_cup(facts, world)?, told_seconds(facts, "seconds")?);
    let ruling = match beyond_range(cup, seconds) {
        Some(ruling) => ruling,
        None => {
            let window = (told_seconds(facts, "aim_from_s")?, told_seconds(facts, "aim_to_s")?);
            after_the_cup(cup, seconds, facts.celsius("liquid_c")?, window, world.sheet)
        }
    };
    Ok(ruling.map(|next| Answer::term(next.slug())))
}

fn cup_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let slip = |next| match next {
        CupMove::FinerCup | CupMove::CoarserCup => "cup-reads-this-time",
        CupMove::RightTemperature => "temperature-is-right",
        CupMove::ThinMore | CupMove::AddMaterial => "thinned-by-a-bad-reading",
        CupMove::Strain => "reading-not-in-window",
    };
    CupMove::ALL.iter().map(|next| Tempt::term(next.slug(), slip(*next), "")).collect()
}

/// A cup of the same set.
fn of_the_set<'a>(cup: &Cup, other: Option<&'a Cup>) -> Option<&'a Cup> {
    other.filter(|other| other.series == cup.series)
}

/// A time off the end of the cup's range, on a side where the set has another cup.
fn outside_the_range(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    /// How far off, as a share of the range's end: far enough to see, near enough for the next cup.
    const NEAREST: f64 = 0.05;
    const FARTHEST: f64 = 0.20;
    const STEP: f64 = 0.01;
    let Ok(cup) = told_cup(facts, world) else { return };
    let set = &world.content.cups;
    let off = dice.on_grid(NEAREST, FARTHEST, STEP);
    let finer = of_the_set(cup, cup.finer(set)).is_some();
    let coarser = of_the_set(cup, cup.coarser(set)).is_some();
    let seconds = if finer && (!coarser || dice.one_in(2)) {
        libm::floor(cup.least_s * (1.0 - off))
    } else {
        libm::ceil(cup.most_s * (1.0 + off))
    };
    for (key, value) in [("seconds", seconds), ("cup_from_s", cup.least_s), ("cup_to_s", cup.most_s)] {
        facts.set(key, value);
    }
}

fn next_cup(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let (cup, seconds) = (told_cup(facts, world)?, told_seconds(facts, "seconds")?);
    let ruling = reading(cup, seconds, &world.content.cups);
    let next = match ruling.answer {
        Reading::Holds(_) => Some(cup),
        Reading::Finer(next) | Reading::Coarser(next) => next,
    };
    let slug = &next.ok_or_else(|| CannotJudge::without("cup"))?.slug;
    Ok(ruling.map(|_| Answer::term(slug)))
}

/// The cups of the set, but for those that would read the liquid too.
fn next_cup_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let Ok(cup) = told_cup(facts, world) else { return Vec::new() };
    let thin = told_seconds(facts, "seconds").map(|seconds| seconds < cup.range().0).ok();
    let end = thin.map(|thin| if thin { cup.thinnest() } else { cup.thickest() });
    let reads_too = |other: &Cup| end.is_some_and(|end| (other.thinnest()..=other.thickest()).contains(&end));
    let tempt = |other: &Cup| {
        let slip = if other.slug == cup.slug {
            "time-outside-is-a-number"
        } else if thin == Some(other.thinnest() < cup.thinnest()) {
            "cup-skipped"
        } else {
            "cup-numbers-reversed"
        };
        Tempt::term(&other.slug, slip, "")
    };
    let set = world.content.cups.iter().filter(|other| other.series == cup.series);
    set.filter(|other| other.slug == cup.slug || !reads_too(other)).map(tempt).collect()
}

fn strained(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let mesh = facts.micrometres("mesh_um")?;
    let ruling = strainer(mesh, facts.term::<Strained>("strained")?, world.sheet);
    Ok(ruling.map(|next| Answer::term(next.slug())))
}

fn strained_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(StrainerMove::Serves.slug(), "any-strainer-serves", ""),
        Tempt::term(StrainerMove::Finer.slug(), "mesh-was-fine-enough", "time-lost"),
        Tempt::term(StrainerMove::Again.slug(), "strained-at-the-right-time", "time-lost"),
        Tempt::term("gun-filter-does-it", "gun-filter-for-strainer", ""),
        Tempt::term("let-it-settle", "settling-for-straining", ""),
    ]
}

/// The retarder that somebody poured: within the sheet's share, at it, or over it.
fn some_retarder(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    /// Shares of what the sheet allows that are met in a shop: common practice, no source.
    const POURED: [f64; 7] = [0.5, 0.75, 0.9, 1.0, 1.25, 1.5, 2.0];
    if let (Ok(batch), Some(share)) = (told_volume(facts, "batch_ml"), dice.pick(&POURED)) {
        let poured = retarder_most(batch, world.sheet).answer.get() * share;
        facts.set("retarder_ml", libm::floor(poured));
    }
}

fn poured(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let (retarder, batch) = (told_volume(facts, "retarder_ml")?, told_volume(facts, "batch_ml")?);
    Ok(retarder_dose(retarder, batch, world.sheet).map(|dose| Answer::term(dose.slug())))
}

fn poured_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(RetarderDose::Within.slug(), "retarder-by-eye", ""),
        Tempt::term(RetarderDose::Over.slug(), "retarder-within-after-all", "time-lost"),
        Tempt::term("retarder-top-up", "more-retarder-more-safety", ""),
        Tempt::term("retarder-none-left", "retarder-always-harms", "time-lost"),
    ]
}
