//! What each operation leaves on the board.

/// The state of a band's finished part: each has had everything before it in this list.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Surface {
    /// Planed and sanded: pale, dull, pores open.
    Sanded,
    /// Stained: brown, the empty pores paler than the wood round them.
    Stained,
    /// Pores filled dark.
    Filled,
    /// Sealed: deeper, with a first soft glow of the lamp.
    Sealed,
    /// Transparent colour laid over the sealer; the binding is under it.
    Coloured,
    /// The end shaded dark.
    Shaded,
    /// The binding scraped clean of colour.
    Scraped,
    /// Clear coats as sprayed: bright and uneven.
    Cleared,
    /// Cured: calmer, shrunk a little into the pores.
    Cured,
    /// Levelled and buffed: the lamp has hard edges.
    Buffed,
}

impl Surface {
    /// Every surface, first operation first.
    pub const ALL: [Self; 10] = [
        Self::Sanded,
        Self::Stained,
        Self::Filled,
        Self::Sealed,
        Self::Coloured,
        Self::Shaded,
        Self::Scraped,
        Self::Cleared,
        Self::Cured,
        Self::Buffed,
    ];

    /// What the surface is made of.
    pub(super) const fn coat(self) -> Coat {
        let bare = Coat {
            stain: 0.0,
            pores: Pores::Open,
            wet: false,
            colour: 0.0,
            shade: 0.0,
            binding: Binding::None,
            film: None,
        };
        let stained = Coat { stain: 0.78, pores: Pores::Pale, ..bare };
        let filled = Coat { stain: 1.05, pores: Pores::Filled, ..bare };
        let sealed = Coat { wet: true, film: Some(SEALER), ..filled };
        let coloured = Coat { colour: 0.42, binding: Binding::Coated, film: Some(COLOUR), ..sealed };
        let shaded = Coat { shade: 1.0, ..coloured };
        let scraped = Coat { binding: Binding::Bare, ..shaded };
        match self {
            Self::Sanded => bare,
            Self::Stained => stained,
            Self::Filled => filled,
            Self::Sealed => sealed,
            Self::Coloured => coloured,
            Self::Shaded => shaded,
            Self::Scraped => scraped,
            Self::Cleared => Coat { film: Some(CLEAR), ..scraped },
            Self::Cured => Coat { film: Some(CURED), ..scraped },
            Self::Buffed => Coat { film: Some(BUFFED), ..scraped },
        }
    }
}

/// How the pores look.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Pores {
    /// Open grooves in bare wood.
    Open,
    /// Open grooves that the stain did not take in.
    Pale,
    /// Level, with dark filler.
    Filled,
}

/// How the strip of binding at the end of the board looks.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Binding {
    /// Not there.
    None,
    /// Under the colour.
    Coated,
    /// Scraped clean.
    Bare,
}

/// A surface in layers, from the wood up.
#[derive(Clone, Copy)]
pub(super) struct Coat {
    /// Optical build of the stain.
    pub(super) stain: f32,
    pub(super) pores: Pores,
    /// Under a film, which deepens the wood.
    pub(super) wet: bool,
    /// Optical build of the transparent colour.
    pub(super) colour: f32,
    /// Share of the full shading at the end.
    pub(super) shade: f32,
    pub(super) binding: Binding,
    pub(super) film: Option<Film>,
}

/// How a film mirrors; lengths in millimetres on the board.
#[derive(Clone, Copy)]
pub(super) struct Film {
    /// Share of the mirrored light that is not scattered.
    pub(super) clear: f32,
    /// How far the lamp's edge is blurred.
    pub(super) blur: f32,
    /// How far unevenness moves the lamp's edge.
    pub(super) wave: f32,
    /// Length of that unevenness.
    pub(super) wave_length: f32,
    /// How far a pore moves it.
    pub(super) pore: f32,
}

const SEALER: Film = Film { clear: 0.34, blur: 13.0, wave: 2.0, wave_length: 3.0, pore: 4.0 };
const COLOUR: Film = Film { clear: 0.44, blur: 6.0, wave: 1.6, wave_length: 2.4, pore: 2.0 };
const CLEAR: Film = Film { clear: 1.0, blur: 1.2, wave: 1.5, wave_length: 6.5, pore: 0.5 };
const CURED: Film = Film { clear: 1.0, blur: 0.7, wave: 0.8, wave_length: 5.0, pore: 1.8 };
const BUFFED: Film = Film { clear: 1.0, blur: 0.14, wave: 0.25, wave_length: 30.0, pore: 0.0 };
