//! The published default parameters of the model with 21 parameters, in its order. They were fitted to very many answers
//! of many people; none is ours.

use super::Grade;

/// Days of stability after the first answer, by its grade (parameters 0 to 3).
pub(super) const fn first_stability(grade: Grade) -> f64 {
    match grade {
        Grade::Missed => 0.212,
        Grade::Shaky => 1.2931,
        Grade::Steady => 2.3065,
        Grade::Solid => 8.2956,
    }
}

/// Difficulty after a first answer that was missed (4).
pub(super) const FIRST_DIFFICULTY: f64 = 6.4133;
/// How fast the first difficulty falls with the grade, per grade (5).
pub(super) const FIRST_DIFFICULTY_RATE: f64 = 0.8334;
/// How much one grade off `Steady` moves the difficulty (6).
pub(super) const DIFFICULTY_STEP: f64 = 3.0194;
/// Share by which difficulty returns to its easiest start at each answer (7).
pub(super) const DIFFICULTY_RETURN: f64 = 0.001;
/// Logarithm of the growth of stability by a right answer (8).
pub(super) const GROWTH: f64 = 1.8722;
/// Exponent by which growth slows as stability rises (9).
pub(super) const GROWTH_SATURATION: f64 = 0.1666;
/// How much more grows what was nearer to being forgotten (10).
pub(super) const GROWTH_BY_FORGETTING: f64 = 0.796;
/// Scale of stability after a miss (11).
pub(super) const MISS_SCALE: f64 = 1.4835;
/// Exponent of difficulty in it (12).
pub(super) const MISS_BY_DIFFICULTY: f64 = 0.0614;
/// Exponent of the stability before (13).
pub(super) const MISS_BY_STABILITY: f64 = 0.2629;
/// How much more is left of what was nearer to being forgotten (14).
pub(super) const MISS_BY_FORGETTING: f64 = 1.6483;
/// Share of the growth that a `Shaky` answer earns (15).
pub(super) const SHAKY_SHARE: f64 = 0.6014;
/// Times the growth that a `Solid` answer earns (16).
pub(super) const SOLID_TIMES: f64 = 1.8729;
/// How fast stability changes within one day, per grade (17).
pub(super) const SAME_DAY_RATE: f64 = 0.5425;
/// Shift of the grade in it (18).
pub(super) const SAME_DAY_SHIFT: f64 = 0.0912;
/// Exponent by which a change within one day slows as stability rises (19).
pub(super) const SAME_DAY_SATURATION: f64 = 0.0658;
/// Exponent of the curve of forgetting (20).
pub(super) const DECAY: f64 = 0.1542;
