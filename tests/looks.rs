//! What the woods look like against what is known of them: content/looks.toml and content/woods.toml.

use stepboard::content::Content;
use stepboard::picture::Growth;
use stepboard::rules::wood::Porosity;

fn main_growth(porosity: Porosity) -> Growth {
    match porosity {
        Porosity::Ring => Growth::Ring,
        Porosity::SemiRing => Growth::SemiRing,
        Porosity::Diffuse => Growth::Diffuse,
        Porosity::None => Growth::Conifer,
    }
}
