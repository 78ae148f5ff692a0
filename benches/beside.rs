//! Times the same figures that `tests/compare/beside.py` times with general-purpose libraries: a line each, its name and the
//! nanoseconds one takes.
#![allow(missing_docs, reason = "a benchmark is no interface")]
#![allow(clippy::disallowed_methods, reason = "a benchmark reads the clock")]

use std::hint::black_box;
use std::time::Instant;
use stepboard::content::Content;
use stepboard::learn::items::{Scores, items, reliability};
use stepboard::quantity::{Celsius, Pascals, RelativeHumidity, Seconds};
use stepboard::rules::air;
use stepboard::rules::optics::difference::ciede2000;
use stepboard::rules::optics::lab::Lab;

/// Times the whole list is gone through; the quickest counts.
const ROUNDS: u32 = 30;

/// 20 temperatures by 50 humidities, as the script has them.
fn rooms() -> Vec<(Celsius, RelativeHumidity)> {
    let celsius = |n: u32| Celsius::saturating(15.0 + f64::from(n));
    let humidity = |n: u32| RelativeHumidity::saturating(20.0 + f64::from(n));
    (0..20).flat_map(|t| (0..50).map(move |rh| (celsius(t), humidity(rh)))).collect()
}

/// 1,000 pairs of colours, the second a little off the first, as the script has them.
fn colours() -> Vec<(Lab, Lab)> {
    let lab = |l, a, b| Lab::new(l, a, b).expect("a colour");
    let pair = |n: u32| {
        let n = f64::from(n);
        let (l, a, b) = (20.0 + n * 0.06, n * 0.1 - 50.0, 40.0 - n * 0.07);
        (lab(l, a, b), lab(l + 1.5, a + 2.0, b - 1.0))
    };
    (0..1_000).map(pair).collect()
}

/// 700 readings of one cup, as the script has them.
fn readings() -> Vec<Seconds> {
    (0..700).map(|n| Seconds::saturating(30.0 + f64::from(n) * 0.1)).collect()
}

/// 200 people by 100 items, right where the script has it right too.
fn answers() -> Scores {
    let right = |person: u32, item: u32| {
        (person * 31 + item * 17 + person * item * 7) % 100 < 30 + person / 4 + item % 20
    };
    let row = |person: u32| (0..100).map(|item| Some(right(person, item))).collect();
    Scores::new((0..200).map(row).collect()).expect("rows of one length")
}

fn time<T, R>(name: &str, list: &[T], one: impl Fn(&T) -> R) {
    let mut best = f64::MAX;
    for _ in 0..ROUNDS {
        let start = Instant::now();
        for item in list {
            black_box(one(black_box(item)));
        }
        let count = u32::try_from(list.len()).expect("a short list");
        best = best.min(start.elapsed().as_secs_f64() * 1e9 / f64::from(count));
    }
    println!("{name}\t{best:.1}");
}

fn main() {
    let (rooms, sea) = (rooms(), Pascals::saturating(air::SEA_LEVEL_PA));
    time("dew point", &rooms, |(t, rh)| air::dew_point(*t, *rh));
    time("wet bulb", &rooms, |(t, rh)| air::wet_bulb(*t, *rh, sea));
    time("humidity ratio", &rooms, |(t, rh)| air::humidity_ratio(*t, *rh, sea));
    time("colour difference", &colours(), |(one, other)| ciede2000(*one, *other));
    let content = Content::embedded().expect("the build script checked it");
    let cup = content.cups.iter().find(|cup| cup.slug == "iso-4").expect("the cup ships");
    let analysis = |scores: &Scores| (items(scores), reliability(scores, 60.0));
    time("item analysis, 200 by 100", &[answers()], analysis);
    time("cup conversion", &readings(), |seconds| cup.viscosity(*seconds));
}
