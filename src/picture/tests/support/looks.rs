//! The woods that ship.

use stepboard_picture::Species;

#[derive(serde::Deserialize)]
struct Looks {
    look: Vec<Look>,
}

#[derive(serde::Deserialize)]
struct Look {
    slug: String,
    species: Species,
}

/// Every look, by its slug.
pub(crate) fn looks() -> Vec<(String, Species)> {
    let looks: Looks =
        toml::from_str(include_str!("../../../../content/looks.toml")).expect("looks are read");
    looks.look.into_iter().map(|look| (look.slug, look.species)).collect()
}

/// The look of that slug.
pub(crate) fn look(slug: &str) -> Species {
    looks().into_iter().find(|(name, _)| name == slug).map(|(_, species)| species).expect("a look")
}
