//! Pores, measured from pixels, against what is known of the woods: how wide they are and how they stand in the year.

use crate::looks::look;
use crate::measure::{PART, Picture, mean, picture, quantile};
use crate::{SEEDS, banded, window};
use stepboard_picture::Face;

#[derive(serde::Deserialize)]
struct Woods {
    wood: Vec<Wood>,
}

#[derive(serde::Deserialize)]
struct Wood {
    slug: String,
    vessel_um: Option<f32>,
}

/// Mean tangential diameter of a wood's vessels, mm: `vessel_um` of content/woods.toml, from the sources named there.
fn vessel(slug: &str) -> f32 {
    const UM: f32 = 1000.0;
    let woods: Woods =
        toml::from_str(include_str!("../../../../content/woods.toml")).expect("woods are read");
    let wood = woods.wood.into_iter().find(|wood| wood.slug == slug).expect("a wood");
    wood.vessel_um.expect("a diameter") / UM
}

/// How far the measured width may be from the mean diameter: that of one log differs from the mean of its kind by a third.
const WIDTH_TOLERANCE: f32 = 0.35;

/// A tube that is cut through its middle shows its width, on whatever face. Left out are both ashes, whose vessels touch in the
/// band of the year, so that one dash is two of them, and what is thinner than two pixels: cherry and maples.
#[test]
fn dashes_are_as_wide_as_the_vessels_on_every_face() {
    /// A dash, not a dot of a ray or a streak, mm.
    const LONG: f32 = 0.5;
    for slug in ["mahogany", "limba", "black-walnut", "white-oak", "yellow-birch"] {
        let vessel = vessel(slug);
        for face in [Face::Rift, Face::Flat, Face::Quartered] {
            let dashes =
                SEEDS.into_iter().flat_map(|seed| picture(&look(slug), face, seed, window()).dashes());
            let mut widths: Vec<f32> =
                dashes.filter(|dash| dash.length > LONG).map(|dash| dash.width).collect();
            assert!(widths.len() > 60, "{slug} {face:?}: {} dashes", widths.len());
            let width = quantile(&mut widths, 0.8);
            assert!(
                (width / vessel - 1.0).abs() < WIDTH_TOLERANCE,
                "{slug} {face:?}: {width} of {vessel} mm"
            );
        }
    }
}

/// Share of bands 0.5 mm high along a quartered face in which less than a quarter of the mean is pore.
fn empty(picture: &Picture) -> f32 {
    const BAND: usize = 10;
    let open = |band: &[f32]| band.iter().filter(|share| **share > PART).map(|_| 1.0).sum::<f32>();
    let area: Vec<f32> = picture.cover().chunks(BAND * picture.grid.columns).map(open).collect();
    let least = 0.25 * mean(&area);
    mean(&area.iter().map(|area| if *area < least { 1.0 } else { 0.0 }).collect::<Vec<f32>>())
}

/// The list of hardwood features of the International Association of Wood Anatomists (1989), 3 to 5: in a ring-porous wood the
/// large vessels stand in a ring and outside it there are hardly any; in a semi-ring-porous one they are more numerous early
/// in the year and grow fewer bit by bit; in a diffuse-porous one they are as many all through it.
#[test]
fn pores_of_walnut_grow_fewer_through_the_year() {
    let of = |slug: &str| {
        let species = look(slug);
        let bands = mean(&SEEDS.map(|seed| banded(&species, seed)));
        let empty = mean(&SEEDS.map(|seed| empty(&picture(&species, Face::Quartered, seed, window()))));
        (bands, empty)
    };
    let (walnut, gaps) = of("black-walnut");
    for ring in ["white-ash", "red-oak", "white-oak"] {
        let (_, empty) = of(ring);
        assert!(empty > gaps + 0.1, "{ring}: {empty} of it without pores, of walnut {gaps}");
    }
    for diffuse in ["mahogany", "sapele", "limba", "koa"] {
        let (bands, _) = of(diffuse);
        assert!(bands < 0.8 * walnut, "{diffuse}: {bands}, walnut {walnut}");
    }
}
