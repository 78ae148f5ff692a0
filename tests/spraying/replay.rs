//! A run played again.

use crate::support::near;
use crate::tries::{at, path};
use stepboard::spraying::Point;
use stepboard::spraying::replay::Replay;

#[test]
fn a_run_is_played_in_its_own_time_and_long_rests_are_cut_short() {
    let off = |point: Point| Point { trigger: 0.0, ..point };
    let replay = Replay::of(&path(&[
        at(0.0, -100.0, 50.0),
        off(at(2.0, 100.0, 50.0)),
        off(at(2.5, 120.0, 50.0)),
        at(182.5, 100.0, 90.0),
        off(at(184.5, -100.0, 90.0)),
    ]));
    near(replay.lasts(), 2.0 + 0.5 + 1.0 + 2.0, 1e-9, "three minutes of rest are played in a second");
    let gun = |moment: f64| replay.at(moment).expect("it has points");
    near(gun(0.5).x, -50.0, 1e-9, "a quarter of the first stroke");
    assert_eq!((gun(0.5).trigger, gun(3.0).trigger), (1.0, 0.0));
    near(gun(4.5).x, 0.0, 1e-9, "half of the second one");
    near(gun(99.0).x, -100.0, 1e-9, "it stays where it ended");
}
