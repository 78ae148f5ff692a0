//! Times the same figures that `tests/compare/beside.py` times with general-purpose libraries: a line each, its name and the
//! nanoseconds one takes.
#![allow(missing_docs, reason = "a benchmark is no interface")]

use std::hint::black_box;
use std::time::Instant;
use stepboard::quantity::{Celsius, Pascals, RelativeHumidity};
use stepboard::rules::air;

/// Times the whole list is gone through; the quickest counts.
const ROUNDS: u32 = 30;

/// 20 temperatures by 50 humidities, as the script has them.
fn rooms() -> Vec<(Celsius, RelativeHumidity)> {
    let celsius = |n: u32| Celsius::saturating(15.0 + f64::from(n));
    let humidity = |n: u32| RelativeHumidity::saturating(20.0 + f64::from(n));
    (0..20).flat_map(|t| (0..50).map(move |rh| (celsius(t), humidity(rh)))).collect()
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
}
