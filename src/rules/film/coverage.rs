//! Coverage: what area a litre covers, and how much an area takes.
//!
//! Solids and litres belong together: both of the mix as sprayed, or both of the material as supplied.

use crate::quantity::{Coverage, Fraction, Measure, Micrometres, Millilitres, SquareMetres, Unit};
use crate::rules::mixing;
use crate::rules::mixing::volume;
use crate::rules::verdict::{CannotJudge, Judged, Ruling};

/// A litre spread at one micrometre covers so many square metres: exact, a volume over a thickness.
const M2_A_LITRE_AT_1_UM: f64 = 1_000.0;

/// Area that a litre covers at a dry film: `1000 × solids / dry film × transfer` (published spreading-rate sheet and trade
/// column on coverage). `transfer` is the share of the solids that lands on the work.
///
/// # Errors
/// [`CannotJudge`] when the film is so thin that no litre is ever used up.
pub fn coverage(solids: Fraction, dry: Micrometres, transfer: Fraction) -> Judged<Coverage> {
    let theoretical = M2_A_LITRE_AT_1_UM * solids.get() / dry.get();
    let practical =
        Coverage::new(theoretical * transfer.get()).map_err(|_| CannotJudge::without("dry_um"))?;
    let spread = |value: f64| Measure::new(value, Unit::SquareMetreALitre, 2);
    Ok(Ruling::by("film.coverage", practical)
        .step("coverage-all-lands", "", spread(theoretical))
        .given(&[
            ("solids-supplied", mixing::percent(solids)),
            ("dry-film", Measure::new(dry.get(), Unit::Micrometre, 1)),
        ])
        .step("coverage-landed", "", spread(practical.get()))
        .given(&[
            ("coverage-all-lands", spread(theoretical)),
            ("share that lands", mixing::percent(transfer)),
        ]))
}

/// Material that an area takes at a dry film: `area × dry film / (solids × transfer)`.
///
/// # Errors
/// [`CannotJudge`] when nothing lands or the material holds no solids.
pub fn volume_for(
    area: SquareMetres,
    dry: Micrometres,
    solids: Fraction,
    transfer: Fraction,
) -> Judged<Millilitres> {
    // A square metre at one micrometre is one millilitre.
    let film = area.get() * dry.get();
    let needed = Millilitres::new(film / (solids.get() * transfer.get()))
        .map_err(|_| CannotJudge::lacking(vec!["volume_solids".to_owned(), "transfer".to_owned()]))?;
    Ok(Ruling::by("film.coverage", needed)
        .step("film-on-the-work", "", volume(Millilitres::saturating(film)))
        .given(&[
            ("area", Measure::new(area.get(), Unit::SquareMetre, 2)),
            ("dry-film", Measure::new(dry.get(), Unit::Micrometre, 1)),
        ])
        .step("material-needed", "", volume(needed))
        .given(&[
            ("film-on-the-work", volume(Millilitres::saturating(film))),
            ("solids-supplied", mixing::percent(solids)),
            ("share that lands", mixing::percent(transfer)),
        ]))
}
