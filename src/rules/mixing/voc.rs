//! VOC as applied: grams of volatile organic compound in a litre of material, and in a litre of coating without its water
//! and exempt solvent.
//!
//! Limits are set on the coating figure, emissions are summed on the material figure. An exempt solvent counts as no VOC;
//! it burns and is breathed in like any other.

use super::{Thinning, fraction};
use crate::quantity::{Density, Fraction, GramsALitre, Measure, Unit};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

/// Grams in a kilogram, millilitres in a litre.
const THOUSAND: f64 = 1_000.0;
/// Density of water in the equation of COMAR 26.11.19.02, kg/L.
const WATER_KG_L: f64 = 0.995;
/// Grams in a litre for each pound in a US gallon: 453.59237 g over 3.785411784 L, both exact (NIST Handbook 44,
/// appendix C).
pub const GRAMS_A_LITRE_PER_POUND_A_GALLON: f64 = 453.592_37 / 3.785_411_784;
/// Density that 30 TAC 115.423(1) assumes for the solvent, pounds a gallon.
const SOLVENT_LB_GAL: f64 = 7.36;
/// Solids below which the figure of material is used, pounds a gallon: an air district's guidance on VOC calculations.
const LOW_SOLIDS_LB_GAL: f64 = 1.0;

terms! {
    /// Which of the two figures a limit is read against.
    VocFigure {
        /// VOC of coating: without water and exempt solvent.
        Coating = "voc-of-coating",
        /// VOC of material: everything in the can counted.
        Material = "voc-of-material",
    }
    /// What thinning does to a VOC figure.
    VocChange {
        /// It rises.
        Rises = "voc-rises",
        /// It stays as it was.
        Stays = "voc-stays",
        /// It falls.
        Falls = "voc-falls",
    }
}

/// What a material is made of: mass of a litre and shares of the mass. What is left over is VOC (the balance of Method 24
/// and of COMAR 26.11.19.02).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Makeup {
    /// Mass of a litre.
    pub density: Density,
    /// Solids, share of the mass.
    pub solids: Fraction,
    /// Water, share of the mass.
    pub water: Fraction,
    /// Exempt solvent, share of the mass.
    pub exempt: Fraction,
}

/// Kilograms of each in one litre as applied.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Litre {
    /// Solids.
    pub solids: f64,
    /// VOC.
    pub voc: f64,
    /// Water.
    pub water: f64,
    /// Exempt solvent.
    pub exempt: f64,
}

impl Makeup {
    /// What is in one litre.
    ///
    /// # Errors
    /// [`CannotJudge`] when the shares come to more than the whole.
    pub fn litre(self) -> Result<Litre, CannotJudge> {
        /// Rounding of shares that come to the whole.
        const ROUNDING: f64 = 1e-9;
        let (solids, water, exempt) = (self.solids.get(), self.water.get(), self.exempt.get());
        let rest = 1.0 - solids - water - exempt;
        if rest < -ROUNDING {
            return Err(CannotJudge::between(&["solids", "water", "exempt"]));
        }
        let of = |share: f64| self.density.get() * share;
        Ok(Litre { solids: of(solids), voc: of(rest.max(0.0)), water: of(water), exempt: of(exempt) })
    }
}

impl Litre {
    /// A litre of this with so much thinner to it, volumes taken to add up.
    #[must_use]
    pub fn thinned(self, thinner: Self, thinning: Thinning) -> Self {
        let ratio = thinning.ratio();
        let mix = |material: f64, thinner: f64| (material + ratio * thinner) / (1.0 + ratio);
        Self {
            solids: mix(self.solids, thinner.solids),
            voc: mix(self.voc, thinner.voc),
            water: mix(self.water, thinner.water),
            exempt: mix(self.exempt, thinner.exempt),
        }
    }
}

/// A VOC figure as shown.
#[must_use]
pub const fn grams_a_litre(content: GramsALitre) -> Measure {
    Measure::new(content.get(), Unit::GramALitre, 1)
}

/// VOC of material: grams of VOC in a litre as applied.
#[must_use]
pub fn voc_of_material(litre: Litre) -> Ruling<GramsALitre> {
    let found = GramsALitre::saturating(litre.voc * THOUSAND);
    Ruling::by("mixing.voc-of-material", found).step(
        "voc-material",
        "density × (1 − solids − water − exempt)",
        grams_a_litre(found),
    )
}

/// VOC of coating: grams of VOC in a litre without its water and exempt solvent (COMAR 26.11.19.02).
///
/// # Errors
/// [`CannotJudge`] when there is exempt solvent of unknown density, or nothing is left beside water and exempt solvent.
pub fn voc_of_coating(litre: Litre, exempt: Option<Density>) -> Judged<GramsALitre> {
    let exempt_volume = if litre.exempt > 0.0 {
        litre.exempt / exempt.ok_or_else(|| CannotJudge::without("exempt_density_kg_l"))?.get()
    } else {
        0.0
    };
    let left = 1.0 - litre.water / WATER_KG_L - exempt_volume;
    let found = GramsALitre::new(litre.voc * THOUSAND / left)
        .ok()
        .filter(|_| left > 0.0)
        .ok_or_else(|| CannotJudge::between(&["water", "exempt"]))?;
    let kilograms = |name, value| (name, Measure::new(value, Unit::KilogramALitre, 3));
    let mut put_in = vec![kilograms("water", litre.water), kilograms("exempt", litre.exempt)];
    put_in
        .extend(exempt.filter(|_| litre.exempt > 0.0).map(|density| kilograms("its density", density.get())));
    Ok(Ruling::by("mixing.voc-of-coating", found)
        .step("coating-left", "1 − water / 0.995 − exempt / its density", Measure::new(left, Unit::Ratio, 3))
        .given(&put_in)
        .step("voc-coating", "VOC / what is left", grams_a_litre(found))
        .given(&[
            ("VOC", Measure::new(litre.voc * THOUSAND, Unit::GramALitre, 1)),
            ("what is left", Measure::new(left, Unit::Ratio, 3)),
        ]))
}

/// VOC for a litre of solids, from VOC of coating: C / (1 − C/D) with the solvent density D that 30 TAC 115.423(1)
/// assumes.
///
/// # Errors
/// [`CannotJudge`] when the coating would be all solvent.
pub fn voc_of_solids(coating: GramsALitre) -> Judged<GramsALitre> {
    let left = 1.0 - coating.get() / (SOLVENT_LB_GAL * GRAMS_A_LITRE_PER_POUND_A_GALLON);
    let found = GramsALitre::new(coating.get() / left)
        .ok()
        .filter(|_| left > 0.0)
        .ok_or_else(|| CannotJudge::without("voc_of_coating"))?;
    Ok(Ruling::by("mixing.voc-of-solids", found)
        .step("voc-solids", "C / (1 − C / 882)", grams_a_litre(found))
        .given(&[("C", grams_a_litre(coating))]))
}

/// Which figure a limit is read against: of coating, but of material for a coating low in solids.
#[must_use]
pub fn figure_for_limit(litre: Litre) -> Ruling<VocFigure> {
    let solids = GramsALitre::saturating(litre.solids * THOUSAND);
    let low = solids.get() < LOW_SOLIDS_LB_GAL * GRAMS_A_LITRE_PER_POUND_A_GALLON;
    let answer = if low { VocFigure::Material } else { VocFigure::Coating };
    Ruling::by("mixing.voc-low-solids", answer).step("solids-litre", "", grams_a_litre(solids))
}

/// What thinning does to one of the two figures.
///
/// # Errors
/// As [`voc_of_coating`].
pub fn change_by_thinning(
    figure: VocFigure,
    material: Litre,
    thinner: Litre,
    thinning: Thinning,
    exempt: Option<Density>,
) -> Judged<VocChange> {
    /// Share of the figure that counts as no change: rounding.
    const SAME: f64 = 1e-6;
    let of = |litre| match figure {
        VocFigure::Material => Ok(voc_of_material(litre)),
        VocFigure::Coating => voc_of_coating(litre, exempt),
    };
    let before = of(material)?;
    let after = of(material.thinned(thinner, thinning))?;
    let (was, is) = (before.answer.get(), after.answer.get());
    let answer = if (is - was).abs() <= SAME * was {
        VocChange::Stays
    } else if is > was {
        VocChange::Rises
    } else {
        VocChange::Falls
    };
    Ok(Ruling::by("mixing.voc-exempt-is-not-safe", answer)
        .step("voc-before", "", grams_a_litre(before.answer))
        .step("voc-after", "", grams_a_litre(after.answer))
        .resting_on(&after))
}

/// A thinner that is all of one kind: so much of its mass exempt solvent, so much water, the rest VOC.
#[must_use]
pub fn thinner_of(density: Density, exempt: Fraction, water: Fraction) -> Makeup {
    Makeup { density, solids: fraction(0.0), water, exempt }
}
