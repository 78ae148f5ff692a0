//! Strategies that several laws share.

use proptest::prelude::*;
use proptest::test_runner::{RngSeed, TestRunner};
use stepboard::rules::sheet::{Held, Setting, Sheet};
use stepboard::rules::term::Term;

/// Random inputs a law in `make test`; `make long` asks for more.
pub(crate) const USUAL: u32 = 2_000;

/// Any number, so that the inputs are the same ones each time.
const SEED: u64 = 20_261_125;

/// Laws over seeded inputs, as many as are asked for.
pub(crate) fn laws() -> ProptestConfig {
    ProptestConfig {
        cases: super::inputs(USUAL),
        failure_persistence: None,
        rng_seed: RngSeed::Fixed(SEED),
        ..ProptestConfig::default()
    }
}

/// Holds a law over so many values, the same ones each time.
pub(crate) fn hold<S: Strategy>(cases: u32, strategy: &S, law: impl Fn(S::Value)) {
    let held = TestRunner::new(ProptestConfig { cases, ..laws() }).run(strategy, |value| {
        law(value);
        Ok(())
    });
    held.expect("the law holds");
}

thread_local! {
    static BASE: Sheet = super::base();
}

/// Any term of a kind.
pub(crate) fn term<T: Term + std::fmt::Debug>() -> impl Strategy<Value = T> {
    (0..T::ALL.len()).prop_map(|index| T::ALL[index])
}

/// Any sheet that its floors and ceilings allow.
pub(crate) fn sheet() -> impl Strategy<Value = Sheet> {
    proptest::collection::vec(0.0..=1.0_f64, Setting::ALL.len()).prop_map(|shares| {
        let base = BASE.with(Clone::clone);
        let held = |(setting, share): (&Setting, f64)| {
            let held = base.held(*setting);
            Held { value: held.floor + share * (held.ceiling - held.floor), ..held }
        };
        let held = Setting::ALL.iter().zip(shares).map(held).collect();
        Sheet::new(base.slug.clone(), base.coating(), held)
    })
}
