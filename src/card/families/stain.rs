//! Stain: what goes under it, on which woods, when its colour is judged, which grit takes fuzz off.

use crate::bench::Facts;
use crate::card::question::{After, Ask, Item, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::quantity::{Measure, Unit};
use crate::rules::sheet::Setting;
use crate::rules::staining::{self, ColourCall, ColourState, Fuzz, Ground, Method, Route, Seen, Way};
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged};
use crate::rules::wood::{PoreSize, Wood, WoodTrouble};

pub(super) const ALL: &[&Question] =
    &[&STAIN_GROUND, &STAIN_WASHCOAT, &STAIN_ROUTES, &STAIN_JUDGE, &STAIN_FUZZ];

/// How does colour get on this ground? Misconceptions: seal before every stain, stain soaks through a seal coat, a
/// washcoat for every wood, more stain cures a shut wood, finer sanding stops blotches.
const STAIN_GROUND: Question = Question {
    id: "stain-ground",
    settle: keep,
    ask: Ask::One { answer: ground, tempt: ground_tempts },
    after: After::is("stain-blotch"),
};

fn ground(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let method = facts.maybe_slug("method").and_then(Method::from_slug);
    let wood = facts.maybe_slug("wood").map(|slug| world.wood(slug)).transpose()?;
    let ruling = staining::colour_on(facts.term::<Ground>("ground")?, method, wood)?;
    Ok(ruling.map(|way| Answer::term(way.slug())))
}

fn ground_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(Way::Stain.slug(), "ground-overlooked", ""),
        Tempt::term(Way::WashcoatFirst.slug(), "washcoat-for-all", "weak-stain"),
        Tempt::term(Way::InFilm.slug(), "film-colour-for-all", "flat-figure"),
        Tempt::term("seal-then-wipe", "seal-before-every-stain", "weak-stain"),
        Tempt::term("flood-and-leave", "more-stain-cures", ""),
    ]
}

/// Which woods want a washcoat under wiped stain? Misconceptions: open grain wants it, soft or close grain never does.
const STAIN_WASHCOAT: Question = Question {
    id: "stain-washcoat",
    settle: keep,
    ask: Ask::All { items: woods, holds: wants_washcoat },
    after: After::is("stain-blotch"),
};

/// Woods that are stained: oily ones keep their own colour.
fn woods(_: &Facts, world: &World<'_>, dice: &mut Dice) -> Vec<Item> {
    let stained = |wood: &&Wood| !wood.trouble.contains(&WoodTrouble::Oily);
    let mut woods: Vec<&Wood> = world.content.woods.iter().filter(stained).collect();
    dice.shuffle(&mut woods);
    woods.into_iter().map(|wood| Item::new(&wood.slug, washcoat_slip(wood))).collect()
}

fn washcoat_slip(wood: &Wood) -> &'static str {
    if wood.trouble.contains(&WoodTrouble::Blotching) {
        "blotching-overlooked"
    } else if wood.pores == PoreSize::Large {
        "open-grain-blotches"
    } else {
        "every-close-grain-blotches"
    }
}

fn wants_washcoat(facts: &Facts, world: &World<'_>, slug: &str) -> Judged<bool> {
    Ok(staining::wants_washcoat(world.wood(slug)?, facts.term::<Method>("method")?))
}

/// Which routes are sound on this wood? Misconceptions: bare blotching wood wiped, oil on oily wood, stain over a seal.
const STAIN_ROUTES: Question = Question {
    id: "stain-routes",
    settle: keep,
    ask: Ask::All { items: routes, holds: route_holds },
    after: After::is("stain-blotch"),
};

fn routes(_: &Facts, _: &World<'_>, _: &mut Dice) -> Vec<Item> {
    let slip = |route: Route| match route {
        Route::SprayDyeBare => "spray-wants-sealer",
        Route::WipeDyeBare => "dye-never-blotches",
        Route::WipeOilBare => "oil-on-any-wood",
        Route::WipeDyeWashcoat => "washcoat-is-full-seal",
        Route::WipeDyeSealed => "seal-before-every-stain",
        Route::ToneOverSeal => "film-colour-refused",
    };
    Route::ALL.iter().map(|route| Item::new(route.slug(), slip(*route))).collect()
}

fn route_holds(facts: &Facts, world: &World<'_>, slug: &str) -> Judged<bool> {
    let route = Route::from_slug(slug).ok_or_else(|| CannotJudge::without("route"))?;
    Ok(staining::route_holds(route, world.wood(facts.slug("wood")?)?))
}

/// What does this look at the colour tell? Misconceptions: wet colour is final, dry colour is final, film can pale it.
const STAIN_JUDGE: Question = Question {
    id: "stain-judge",
    settle: keep,
    ask: Ask::One { answer: judge, tempt: judge_tempts },
    after: After::is("colour-off"),
};

fn judge(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    let seen = facts.maybe_slug("seen").and_then(Seen::from_slug);
    let ruling = staining::judge_colour(facts.term::<ColourState>("colour_state")?, seen)?;
    Ok(ruling.map(|call| Answer::term(call.slug())))
}

fn judge_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(ColourCall::GoOn.slug(), "judged-too-early", ""),
        Tempt::term(ColourCall::Deepen.slug(), "pale-dry-stain-deepened", "too-dark"),
        Tempt::term(ColourCall::Hold.slug(), "wet-look-taken-for-final", "lost-hour"),
        Tempt::term(ColourCall::TrialClear.slug(), "clear-over-wet-stain", "dye-bleed"),
        Tempt::term(ColourCall::DryFirst.slug(), "dry-stain-waited-on", "lost-hour"),
        Tempt::term("stain-again-now", "pale-dry-stain-deepened", "too-dark"),
    ]
}

/// Which grit takes the fuzz off? Misconceptions: finer is better, the scuffing grit on bare wood, dye sanded.
const STAIN_FUZZ: Question = Question {
    id: "stain-fuzz",
    settle: keep,
    ask: Ask::Number { answer: fuzz, tempt: fuzz_tempts, unit: Unit::Grit },
    after: After::is("stain-cut").above("time-lost-sanding"),
};

fn fuzz(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    Ok(staining::fuzz_grit(world.sheet, facts.term::<Fuzz>("fuzz")?))
}

fn fuzz_tempts(_: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let grit = |setting| Measure::new(world.sheet.get(setting), Unit::Grit, 0);
    vec![
        Tempt::number(grit(Setting::LastGrit), "dye-sanded-like-wood"),
        Tempt::number(grit(Setting::ScuffGrit), "bare-wood-scuffed"),
        Tempt::number(grit(Setting::LevelGrit), "finer-is-better"),
    ]
}
