//! Laws of hazards over many random inputs: dilution air falls as the explosive limit rises, sums are linear, no average
//! passes a ceiling, and no air speed ever lowers the demand for a respirator.

mod support;

use proptest::prelude::*;
use stepboard::quantity::{
    AirFlow, AirVolume, ExplosiveLimit, Fraction, Hours, MetresPerSecond, Millilitres, Millimetres,
    MolarMass, PartsPerMillion,
};
use stepboard::rules::hazard::Solvent;
use stepboard::rules::hazard::booth_air::{FaceMove, ReadingPlace, face_flow, face_speed, governing_flow};
use stepboard::rules::hazard::cartridge::{CartridgeMove, Smell, cartridge_move};
use stepboard::rules::hazard::clearing::well_mixed_decay;
use stepboard::rules::hazard::dilution::{air_a_gallon, dilution_air, mixed_lel, vapour_at};
use stepboard::rules::hazard::exposure::{
    Ceilings, Exposure, Reading, by_mass, by_volume, ceiling, exposure_sum, fire_meter, mixture,
    shift_average,
};
use stepboard::rules::hazard::respirator::{Demand, Evaluation, Standing, respirator_demand};
use stepboard::rules::hazard::sparks::{SparkPlace, SparkSource, SprayPhase, has_to_go};
use stepboard::rules::hazard::store::shift_need;
use support::any::{laws, sheet, term};
use support::content;

/// Rounding of a chain of divisions.
const DUST: f64 = 1e-9;

thread_local! {
    static SOLVENTS: &'static [Solvent] = Box::leak(content().solvents.into_boxed_slice());
}

fn solvent() -> impl Strategy<Value = &'static Solvent> {
    let all = SOLVENTS.with(|all| *all);
    (0..all.len()).prop_map(move |index| &all[index])
}

fn lel() -> impl Strategy<Value = ExplosiveLimit> {
    (0.1..=50.0).prop_map(|value| ExplosiveLimit::new(value).expect("in range"))
}

fn ppm() -> impl Strategy<Value = PartsPerMillion> {
    (0.0..=5_000.0).prop_map(|value| PartsPerMillion::new(value).expect("in range"))
}

fn limit() -> impl Strategy<Value = PartsPerMillion> {
    (1.0..=5_000.0).prop_map(|value| PartsPerMillion::new(value).expect("in range"))
}

fn share() -> impl Strategy<Value = Fraction> {
    (0.01..=1.0).prop_map(|value| Fraction::new(value).expect("in range"))
}

fn speed() -> impl Strategy<Value = MetresPerSecond> {
    (0.0..=20.0).prop_map(|value| MetresPerSecond::new(value).expect("in range"))
}

fn side() -> impl Strategy<Value = Millimetres> {
    (0.0..=10_000.0).prop_map(|value| Millimetres::new(value).expect("in range"))
}

fn ml() -> impl Strategy<Value = Millilitres> {
    (0.0..=20_000.0).prop_map(|value| Millilitres::new(value).expect("in range"))
}

fn air() -> impl Strategy<Value = AirFlow> {
    (0.0..=5_000.0).prop_map(|value| AirFlow::new(value).expect("in range"))
}

fn hours() -> impl Strategy<Value = Hours> {
    (0.0..=40.0).prop_map(|value| Hours::new(value).expect("in range"))
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= DUST * (1.0 + b.abs())
}

proptest! {
    #![proptest_config(laws())]

    /// A higher explosive limit, or a larger share of it, never asks for more air; it is linear in the vapour.
    #[test]
    fn dilution_air_falls_as_the_explosive_limit_rises(a in lel(), b in lel(), vapour in 0.1..=100.0, part in share(), other in share()) {
        let (low, high) = if a <= b { (a, b) } else { (b, a) };
        let needs = |lel, share| air_a_gallon(lel, vapour, share);
        prop_assert!(needs(high, part) <= needs(low, part));
        let (small, large) = if part <= other { (part, other) } else { (other, part) };
        prop_assert!(needs(a, large) <= needs(a, small));
        prop_assert!(near(air_a_gallon(a, 2.0 * vapour, part), 2.0 * needs(a, part)));
        prop_assert!(vapour_at(low, part) <= vapour_at(high, part));
    }

    /// The lowest limit never asks for less air than the table's; more liquid never for less; a stricter share for more.
    #[test]
    fn dilution_air_of_a_solvent_is_the_cautious_one(solvent in solvent(), a in ml(), b in ml(), sheet in sheet()) {
        let (less, more) = if a <= b { (a, b) } else { (b, a) };
        match (dilution_air(solvent, less, &sheet), dilution_air(solvent, more, &sheet)) {
            (Ok(less), Ok(more)) => {
                prop_assert!(less.answer.air <= more.answer.air);
                for one in [&less, &more] {
                    prop_assert!(one.answer.table.is_none_or(|table| table.get() <= one.answer.air.get() * (1.0 + DUST)));
                }
                prop_assert!(solvent.lel.iter().all(|one| one.percent >= less.answer.lel));
            }
            (less, more) => prop_assert!(less.is_err() && more.is_err() && solvent.table.is_none()),
        }
    }

    /// A mixed vapour burns between the limits of its parts.
    #[test]
    fn a_mixed_vapour_lies_between_its_parts(a in lel(), b in lel(), part in 0.0..=1.0) {
        let part = Fraction::new(part).expect("in range");
        let rest = Fraction::saturating(1.0 - part.get());
        let found = mixed_lel(&[(part, a), (rest, b)]).expect("a whole").get();
        let (low, high) = (a.get().min(b.get()), a.get().max(b.get()));
        prop_assert!(found >= low * (1.0 - DUST) && found <= high * (1.0 + DUST));
        prop_assert!(mixed_lel(&[(Fraction::saturating(0.4), a), (Fraction::saturating(0.4), b)]).is_err());
    }

    /// ppm to mg/m3 and back is the same number.
    #[test]
    fn volume_and_mass_turn_back_into_one_another(vapour in ppm(), mass in 1.0..=1_000.0) {
        let mass = MolarMass::new(mass).expect("in range");
        prop_assert!(near(by_volume(by_mass(vapour, mass), mass).get(), vapour.get()));
    }

    /// The sum is linear in each content, and never under any one share.
    #[test]
    fn the_sum_of_a_mixture_is_linear(a in ppm(), b in ppm(), la in limit(), lb in limit()) {
        let sum = |a: f64, b: f64| {
            mixture(&[(PartsPerMillion::saturating(a), la), (PartsPerMillion::saturating(b), lb)]).answer
        };
        let (a, b) = (a.get(), b.get());
        prop_assert!(near(sum(2.0 * a, b) - sum(a, b), sum(a, 0.0)));
        prop_assert!(near(sum(a, b), sum(a, 0.0) + sum(0.0, b)));
        prop_assert!(sum(a, b) >= sum(a, 0.0));
    }

    /// No average, however low, shows that a ceiling was kept; an average over a ceiling passes it.
    #[test]
    fn a_passing_average_never_passes_a_ceiling(solvent in solvent(), average in ppm(), peak in proptest::option::of(ppm())) {
        let found = ceiling(&Reading { solvent, average, peak }).answer;
        match (solvent.lowest_ceiling(), peak) {
            (None, _) if solvent.limits.rel_ceiling_mg.is_some() => prop_assert_eq!(found, Ceilings::NotShown),
            (None, _) => prop_assert_eq!(found, Ceilings::None),
            (Some(limit), peak) => {
                let highest = peak.map_or(average.get(), |peak| peak.get().max(average.get()));
                prop_assert_eq!(found == Ceilings::Passed, highest > limit.get() + DUST);
                prop_assert_eq!(found == Ceilings::NotShown, peak.is_none() && highest <= limit.get() + DUST);
            }
        }
    }

    /// A worse reading never gives a better verdict, and only short-term readings give a clean one where there are ceilings.
    #[test]
    fn more_vapour_never_gives_a_better_verdict(a in solvent(), b in solvent(), x in ppm(), y in ppm(), more in 0.0..=500.0) {
        let judged = |x: f64| {
            let readings = [
                Reading { solvent: a, average: PartsPerMillion::saturating(x), peak: None },
                Reading { solvent: b, average: y, peak: None },
            ];
            exposure_sum(&readings).expect("readings").answer
        };
        let rank = |found: Option<Exposure>| match found {
            Some(Exposure::WithinLimits) => 0,
            Some(Exposure::WithinAverages) => 1,
            None => 2,
            Some(Exposure::OverRecommended) => 3,
            Some(Exposure::OverLimit) => 4,
        };
        let alone = exposure_sum(&[Reading { solvent: a, average: x, peak: None }]).expect("a reading").answer;
        prop_assert!(rank(alone.verdict) <= rank(judged(x.get()).verdict), "one more solvent never softens it");
        let (low, high) = (judged(x.get()), judged(x.get() + more));
        prop_assert!(rank(low.verdict) <= rank(high.verdict));
        prop_assert!(low.sum_pel <= high.sum_pel && low.sum_rel <= high.sum_rel);
        let ceilings = a.lowest_ceiling().is_some() || b.lowest_ceiling().is_some();
        prop_assert!(!(ceilings && high.verdict == Some(Exposure::WithinLimits)));
        let unlimited = a.limits.pel.is_none() || b.limits.pel.is_none();
        let over = matches!(high.verdict, None | Some(Exposure::OverRecommended | Exposure::OverLimit));
        prop_assert!(!unlimited || over, "no limit is no permission");
    }

    /// A recommended limit that stands only in mg/m³ is never taken as kept, whatever else is in the air and whatever was
    /// read, nothing included: the verdict is none, or over another limit.
    #[test]
    fn a_limit_in_milligrams_is_never_taken_as_kept(
        a in solvent(), b in solvent(), x in ppm(), y in ppm(), peak in proptest::option::of(ppm()), clean in any::<bool>(),
    ) {
        let x = if clean { PartsPerMillion::saturating(0.0) } else { x };
        let readings = [Reading { solvent: a, average: x, peak }, Reading { solvent: b, average: y, peak }];
        for readings in [&readings[..1], &readings] {
            let found = exposure_sum(readings).expect("readings").answer;
            let weighed: Vec<_> = readings.iter().filter(|one| one.solvent.limits.in_mg()).collect();
            let kept = matches!(found.verdict, Some(Exposure::WithinLimits | Exposure::WithinAverages));
            prop_assert!(weighed.is_empty() || !kept);
            prop_assert!(weighed.iter().all(|one| found.in_mg.contains(&one.solvent.slug)));
            prop_assert_eq!(weighed.len(), found.in_mg.len());
        }
    }

    /// The average of a shift lies between nothing and the highest reading; longer in it never lowers it.
    #[test]
    fn the_average_of_a_shift_stays_under_its_highest(a in ppm(), b in ppm(), long in 0.0..=4.0, short in 0.0..=4.0, less in 0.0..=1.0) {
        let spell = |hours: f64| Hours::new(hours).expect("a time");
        let average = |hours: f64| shift_average(&[(a, spell(hours)), (b, spell(short))]).expect("8 hours").answer;
        prop_assert!(average(long).get() <= a.get().max(b.get()) * (1.0 + DUST));
        prop_assert!(average(long * less) <= average(long));
        prop_assert!(shift_average(&[(a, spell(8.1))]).is_err());
    }

    /// Air through the booth never lowers the demand for a respirator: the speed decides nothing at all.
    #[test]
    fn air_speed_never_lowers_the_respirator_demand(
        slow in speed(), fast in speed(), evaluation in term::<Evaluation>(), standing in proptest::option::of(term::<Standing>()),
    ) {
        let demand = |air| respirator_demand(air, evaluation, standing).map(|ruling| ruling.answer);
        prop_assert_eq!(demand(slow), demand(fast));
        let dropped = demand(fast) == Ok(Demand::AsWritten);
        prop_assert!(!dropped || (evaluation == Evaluation::ClearedInWriting && standing != Some(Standing::Downstream)));
    }

    /// Faster air never turns a met rule into a missed one; readings elsewhere never meet it.
    #[test]
    fn faster_air_never_fails_the_velocity_rule(a in speed(), b in speed(), more in 0.0..=1.0, at in term::<ReadingPlace>(), sheet in sheet()) {
        let read = |add: f64| {
            let all = [a, b].map(|one| MetresPerSecond::saturating(one.get() + add));
            face_speed(&all, Some(at), &sheet).expect("readings").answer
        };
        if read(0.0) == FaceMove::Meets {
            prop_assert_eq!(read(more), FaceMove::Meets);
        }
        prop_assert_eq!(at == ReadingPlace::Face, read(0.0) != FaceMove::ReadAgain);
        prop_assert!(face_speed(&[a], None, &sheet).is_err() && face_speed(&[], Some(at), &sheet).is_err());
    }

    /// The larger flow governs, and flow grows with each side of the face.
    #[test]
    fn flows_grow_and_the_larger_governs(width in side(), height in side(), air_speed in speed(), other in air(), wider in 1.0..=2.0) {
        let face = face_flow(width, height, air_speed).answer;
        let grown = face_flow(Millimetres::saturating(width.get() * wider), height, air_speed).answer;
        prop_assert!(grown >= face);
        let governing = governing_flow(face, other).answer;
        prop_assert!(governing >= face && governing >= other && (governing == face || governing == other));
        prop_assert_eq!(governing, governing_flow(other, face).answer);
    }

    /// A meter for explosive vapour never clears the air, and more vapour is never less dangerous.
    #[test]
    fn a_meter_never_clears_the_air(lel in lel(), low in share(), high in share(), limit in limit(), idlh in limit()) {
        use stepboard::rules::hazard::exposure::Breathed;
        let rank = |found| match found {
            Breathed::NotShown => 0,
            Breathed::OverLimit => 1,
            Breathed::DangerousAtOnce => 2,
        };
        let (low, high) = if low <= high { (low, high) } else { (high, low) };
        let told = |share| rank(fire_meter(lel, share, limit, idlh).answer);
        prop_assert!(told(low) <= told(high));
    }

    /// More air clears sooner, a lower share later: and none of it is a clearance time.
    #[test]
    fn decay_falls_with_air_and_rises_with_what_is_left(space in 0.1..=1_000.0, a in air(), b in air(), low in share(), high in share()) {
        let space = AirVolume::new(space).expect("in range");
        let (low, high) = if low <= high { (low, high) } else { (high, low) };
        let (slow, fast) = if a <= b { (a, b) } else { (b, a) };
        if let (Ok(long), Ok(short)) = (well_mixed_decay(space, slow, low), well_mixed_decay(space, fast, low)) {
            prop_assert!(short.answer <= long.answer);
        }
        if let (Ok(long), Ok(short)) = (well_mixed_decay(space, fast, low), well_mixed_decay(space, fast, high)) {
            prop_assert!(short.answer <= long.answer);
        }
    }

    /// Longer use never makes worn cartridges serve again, and smell always means out.
    #[test]
    fn longer_use_never_keeps_a_cartridge(plan in hours(), used in hours(), more in hours(), spell in hours()) {
        let longer = Hours::saturating(used.get() + more.get());
        let told = |used, smell| cartridge_move(Some(plan), Some(used), Some(spell), smell).expect("known").answer;
        if told(longer, Smell::None) == CartridgeMove::Keep {
            prop_assert_eq!(told(used, Smell::None), CartridgeMove::Keep);
        }
        prop_assert_eq!(told(used, Smell::Solvent), CartridgeMove::Leave);
    }

    /// A spark farther off is never worse, and a partition keeps any off.
    #[test]
    fn distance_never_makes_a_spark_worse(source in term::<SparkSource>(), a in side(), b in side(), phase in term::<SprayPhase>()) {
        let (near, far) = if a <= b { (a, b) } else { (b, a) };
        let goes = |place, distance| has_to_go(source, place, Some(distance), Some(phase)).expect("known").answer;
        prop_assert!(goes(SparkPlace::Open, near) || !goes(SparkPlace::Open, far));
        prop_assert!(!goes(SparkPlace::Partition, near));
        prop_assert!(goes(SparkPlace::Inside, near) || !goes(SparkPlace::Open, near));
    }

    /// What is in the room already is never brought in again.
    #[test]
    fn stock_in_the_room_lowers_what_is_brought(pieces in 1_u32..=50, coats in 1_u32..=6, a_coat in ml(), a in ml(), b in ml()) {
        let need = |stock| shift_need(f64::from(pieces), f64::from(coats), a_coat, stock).answer;
        let (less, more) = if a <= b { (a, b) } else { (b, a) };
        prop_assert!(need(more) <= need(less));
    }
}
