//! Filling: which faces take pore filler, when it is wiped, what lies under it, how much is filled at one go, and what a
//! second filling costs in time.

use super::drying::waits::{self, Told, Wait};
use super::sheet::{Setting, Sheet};
use super::term::{Filler, Look};
use super::verdict::{CannotJudge, Judged, Ruling};
use super::wood::{FillerNeed, Wood, filler};
use crate::quantity::{DUST, Hours, MINUTES_AN_HOUR, Measure, Unit};
use crate::terms;

terms! {
    /// What a face is to the finisher.
    Face {
        /// Wood that gets the finish.
        Sprayed = "sprayed-face",
        /// Wood that stays bare: fingerboard face, glue seats, cavities.
        Masked = "masked-face",
        /// Binding and purfling.
        Binding = "binding-face",
    }
    /// How wet filler looks on the work.
    FillerLook {
        /// The thinner still stands on it.
        Glossy = "glossy",
        /// The gloss has gone.
        Dull = "dull",
    }
    /// What filler does under a rubbed finger.
    FingerTest {
        /// It slips: too wet.
        Slips = "slips",
        /// It rolls into a ball: ready.
        Balls = "balls",
        /// It no longer moves: set.
        Hard = "hard",
    }
    /// What to do with filler that lies on the work.
    Wipe {
        /// Leave it and test again.
        Wait = "leave-and-test-again",
        /// Wipe across the grain, then lightly along it.
        Now = "wipe-across-then-along",
        /// Soften it with its own thinner and wipe across.
        Soften = "soften-then-wipe",
    }
    /// Whether a filler colours.
    FillerTone {
        /// It adds no colour.
        Neutral = "neutral-filler",
        /// It carries colour.
        Coloured = "coloured-filler",
    }
    /// The stain that lies under a filler.
    StainUnder {
        /// None.
        None = "no-stain",
        /// Dry, and the filler's thinner does not lift it.
        Fast = "stain-holds",
        /// The filler's thinner lifts it.
        Lifts = "stain-lifts",
    }
    /// What the flats between the pores are to look like.
    Flats {
        /// As they are now; only the pores take the filler's colour.
        Keep = "flats-keep-tone",
        /// They take the filler's colour too.
        Take = "flats-take-tone",
    }
    /// How a whole job is filled.
    FillPlan {
        /// Every part.
        All = "fill-all-parts",
        /// The open-grained parts only.
        OpenOnly = "fill-open-parts-only",
        /// No part: all are close-grained.
        CloseNone = "fill-none-close-grain",
        /// No part: the pores stay open.
        PoresOpen = "fill-none-pores-open",
    }
    /// What goes on before the filler.
    UnderFiller {
        /// A thin washcoat.
        Washcoat = "washcoat-under-filler",
        /// Nothing.
        Straight = "filler-straight-on",
    }
}

/// Most faces that are looked at in one batch: more than any instrument has.
const MOST_FACES: u32 = 24;

/// Whether a face is filled.
///
/// Every sprayed face of a wood that wants filler is filled, top, back and sides alike; masked wood and binding are not.
/// Source: FPL-GTR-190 ch. 16 (which woods); the faces are common practice, no source.
///
/// # Errors
/// [`CannotJudge`] when wood or look is not told and the other does not decide alone.
pub fn is_filled(face: Face, wood: Option<&Wood>, look: Option<Look>) -> Judged<bool> {
    let need = match (face, wood, look) {
        (Face::Masked, ..) => return Ok(Ruling::by("filling.bare-faces-stay-bare", false)),
        (Face::Binding, ..) => return Ok(Ruling::by("filling.binding-stays-clean", false)),
        (Face::Sprayed, Some(wood), Some(look)) => filler(wood, look),
        (Face::Sprayed, None, Some(Look::OpenPore)) => {
            return Ok(Ruling::by("wood.open-pore-look", false));
        }
        (Face::Sprayed, Some(wood), None) if wood.filler == FillerNeed::No => filler(wood, Look::LevelGloss),
        (Face::Sprayed, None, _) => return Err(CannotJudge::without("wood")),
        (Face::Sprayed, _, None) => return Err(CannotJudge::without("look")),
    };
    Ok(need.map(|need| need == FillerNeed::Yes).and("filling.every-sprayed-face"))
}

/// A time on the sheet that is written in minutes.
fn minutes(sheet: &Sheet, setting: Setting) -> Hours {
    Hours::saturating(sheet.get(setting) / MINUTES_AN_HOUR)
}

/// A time as it is shown beside a filler.
fn in_minutes(time: Hours) -> Measure {
    Measure::new(time.get() * MINUTES_AN_HOUR, Unit::Minute, 0)
}

/// Whether filler is wiped now. The sheet's clock says when to begin testing; the finger decides.
///
/// Source: NAVEDTRA 14044 (5 to 10 minutes until the gloss is gone; a ball forms: wipe; it slips: too wet; across, then
/// along). Softening set filler with its own thinner is common practice, no source.
///
/// # Errors
/// [`CannotJudge`] when the finger test is not told and neither clock nor gloss says that it is too early.
pub fn wipe(sheet: &Sheet, stood: Hours, look: FillerLook, finger: Option<FingerTest>) -> Judged<Wipe> {
    let from = minutes(sheet, Setting::FillerWipeFrom);
    let early = stood < from || look == FillerLook::Glossy;
    let ruling = match finger {
        Some(FingerTest::Hard) => Ruling::by("filling.set-filler-is-softened", Wipe::Soften),
        _ if early => Ruling::by("filling.wait-till-dull", Wipe::Wait),
        None => return Err(CannotJudge::without("finger_test")),
        Some(FingerTest::Slips) => Ruling::by("filling.finger-ball-decides", Wipe::Wait),
        Some(FingerTest::Balls) => {
            Ruling::by("filling.finger-ball-decides", Wipe::Now).and("filling.across-then-along")
        }
    };
    Ok(ruling.step("filler-stood", "", in_minutes(stood)).step("filler-wipe-from", "", in_minutes(from)))
}

/// How many faces are filled one after the other before wiping starts with the first, so that every one is wiped off
/// inside the sheet's window. 0 when not even one face fits.
///
/// The faces are walked through minute by minute: a face is wiped when the one before it is done, and not before its own
/// window opens. Source of the window: NAVEDTRA 14044 (5 to 10 minutes); working in batches is common practice, no source.
#[must_use]
pub fn batch(sheet: &Sheet, coat_one: Hours, wipe_one: Hours) -> Ruling<u32> {
    let from = minutes(sheet, Setting::FillerWipeFrom);
    let to = minutes(sheet, Setting::FillerWipeTo);
    let fits = |faces: u32| longest_stand(faces, coat_one, wipe_one, from) <= to.get() + DUST;
    let most = (1..=MOST_FACES).take_while(|faces| fits(*faces)).last().unwrap_or(0);
    Ruling::by("filling.batch-inside-window", most)
        .step("filler-wipe-from", "", in_minutes(from))
        .step("filler-wipe-to", "", in_minutes(to))
        .step("faces-at-once", "", Measure::count(f64::from(most)))
}

/// The longest that filler stands on one of the faces until it is wiped off, in hours.
fn longest_stand(faces: u32, coat_one: Hours, wipe_one: Hours, from: Hours) -> f64 {
    let mut clock = f64::from(faces) * coat_one.get();
    let mut longest = 0.0_f64;
    for face in 1..=faces {
        let coated = f64::from(face) * coat_one.get();
        clock = clock.max(coated + from.get()) + wipe_one.get();
        longest = longest.max(clock - coated);
    }
    longest
}

/// What goes on before the filler.
///
/// Sources: a seal keeps the filler's colour in the pores (trade articles on filling); a handbook lays filler on dry
/// stain with nothing between (FPL-GTR-190 ch. 16); filler as stain on raw wood (trade articles). That the stain must
/// not dissolve in the filler's thinner is common practice, no source. The sheet may ask for a washcoat every time.
///
/// # Errors
/// [`CannotJudge`] when stain or flats are not told and decide.
pub fn under_filler(
    sheet: &Sheet,
    tone: FillerTone,
    stain: Option<StainUnder>,
    flats: Option<Flats>,
) -> Judged<UnderFiller> {
    if stain == Some(StainUnder::Lifts) {
        return Ok(Ruling::by("filling.lifting-stain-is-locked", UnderFiller::Washcoat));
    }
    let coloured = tone == FillerTone::Coloured;
    if coloured && flats == Some(Flats::Keep) {
        return Ok(Ruling::by("filling.coloured-filler-over-washcoat", UnderFiller::Washcoat));
    }
    let stain = stain.ok_or_else(|| CannotJudge::without("stain_under"))?;
    if coloured {
        flats.ok_or_else(|| CannotJudge::without("flats"))?;
        return Ok(Ruling::by("filling.filler-may-stain", UnderFiller::Straight));
    }
    Ok(if stain == StainUnder::Fast && sheet.is_on(Setting::WashcoatBeforeFill) {
        Ruling::by("filling.shop-washcoat", UnderFiller::Washcoat)
    } else {
        Ruling::by("filling.neutral-filler-straight-on", UnderFiller::Straight)
    })
}

/// The sheet's wait of a filler at the reference temperature.
///
/// # Errors
/// [`CannotJudge`] when the sheet states none.
pub fn wait(sheet: &Sheet, filler: Filler) -> Result<Hours, CannotJudge> {
    let told = Told { filler: Some(filler), ..Told::default() };
    Ok(sheet.hours(waits::setting(Wait::FillerToNext, &told)?))
}

/// Hours from the first filling to the first coat when the pores are filled twice, at the reference temperature: the
/// first filling dries by its own wait, and the full wait starts again with the second.
///
/// Source: common practice, no source; the waits are the sheet's.
///
/// # Errors
/// [`CannotJudge`] when the sheet states no wait.
pub fn filled_twice(sheet: &Sheet, filler: Filler) -> Judged<Hours> {
    const FILLINGS: f64 = 2.0;
    let once = wait(sheet, filler)?;
    let both = Hours::saturating(once.get() * FILLINGS);
    Ok(Ruling::by("filling.second-filling-waits-again", both)
        .step("filler-wait", "", Measure::new(once.get(), Unit::Hour, 1))
        .step("both-fillings", "t = 2 t₁", Measure::new(both.get(), Unit::Hour, 1))
        .given(&[("t₁", Measure::new(once.get(), Unit::Hour, 1))]))
}

/// How a job of several woods is filled; parts for which either way is accepted count as filled.
///
/// Source: FPL-GTR-190 ch. 16 (which woods); an open-pore look leaves every pore open.
///
/// # Errors
/// [`CannotJudge`] when a wood decides and is not told.
pub fn plan(woods: &[Option<&Wood>], look: Look) -> Judged<FillPlan> {
    if look == Look::OpenPore {
        return Ok(Ruling::by("wood.open-pore-look", FillPlan::PoresOpen));
    }
    let (mut open, mut close) = (0_usize, 0_usize);
    for wood in woods {
        let wood = wood.ok_or_else(|| CannotJudge::without("wood"))?;
        if filler(wood, look).answer == FillerNeed::No { close += 1 } else { open += 1 }
    }
    Ok(match (open, close) {
        (0, _) => Ruling::by("wood.close-grain-no-filler", FillPlan::CloseNone),
        (_, 0) => Ruling::by("wood.open-grain-filler", FillPlan::All).and("filling.darkens-and-shows-pores"),
        _ => Ruling::by("filling.each-part-by-its-wood", FillPlan::OpenOnly)
            .and("filling.darkens-and-shows-pores"),
    })
}
